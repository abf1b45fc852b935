/* The real program in a pseudo-terminal, over a demo logbook in a folder of its own; included once by each test that does that. */
#ifndef TESTS_TUI_E2E_H
#define TESTS_TUI_E2E_H

#include "pty.h"

#include "logbook/book.h"

#include <stdio.h>

static char *folder, *file, *program;
static struct pty p;
static struct book_who who;

static const char *
top(void)
{
	return g_getenv("top_srcdir") ? g_getenv("top_srcdir") : ".";
}

static void
set_up(void)
{
	g_autofree char *data = g_build_filename(top(), "share", NULL);
	g_autoptr(GError) err = NULL;

	who = (struct book_who) { "tester", "desk", 1795600000, day_from_ymd(2026, 11, 25), g_getenv("SPLITPIN_DATA") };
	folder = g_dir_make_tmp("splitpin-e2e-XXXXXX", NULL);
	file = g_build_filename(folder, "boat.splitpin", NULL);
	program = g_canonicalize_filename(g_getenv("SPLITPIN") ? g_getenv("SPLITPIN") : "splitpin", NULL);
	ck_assert_msg(book_make_demo(file, &who, data, &err), "%s", err ? err->message : "?");
}

static void
remove_all(const char *path)
{
	GDir *dir = g_file_test(path, G_FILE_TEST_IS_DIR) ? g_dir_open(path, 0, NULL) : NULL;
	const char *name;

	while (dir && (name = g_dir_read_name(dir))) {
		g_autofree char *inside = g_build_filename(path, name, NULL);

		remove_all(inside);
	}
	if (dir)
		g_dir_close(dir);
	g_remove(path);
}

static void
tear_down(void)
{
	remove_all(folder);
	g_free(folder);
	g_free(file);
	g_free(program);
}

/* Start argv with TERM, LC_ALL and one more setting; NULL: the screens over the demo. */
static void
start_with(struct pty *on, const char *term, const char *locale, const char *more, char *const *argv)
{
	g_auto(GStrv) env = g_new0(char *, 9);
	char *const usual[] = { program, (char[]) { "--file" }, file, (char[]) { "--today" }, (char[]) { "2026-11-25" }, NULL };
	int n = 0;

	env[n++] = g_strdup_printf("HOME=%s", folder);
	env[n++] = g_strdup_printf("XDG_STATE_HOME=%s/state", folder);
	env[n++] = g_strdup_printf("SPLITPIN_DATA=%s/share", top());
	env[n++] = g_strdup_printf("PATH=%s", g_getenv("PATH"));
	env[n++] = g_strdup("TZ=UTC");
	env[n++] = g_strdup_printf("LC_ALL=%s", locale);
	env[n++] = g_strdup_printf("TERM=%s", term);
	env[n++] = g_strdup(more ? more : "X=");
	pty_start(on, 24, 80, argv ? argv : usual, env);
}

static void
say_problem(void *user, const char *line)
{
	(void)user;
	printf("%s\n", line);
}

/* Every check of the logbook holds. */
static void
ck_verifies(struct book *b)
{
	g_autoptr(GError) err = NULL;
	int problems = 0;

	ck_assert(book_verify(b, say_problem, NULL, &problems, &err));
	ck_assert_int_eq(problems, 0);
}

#endif
