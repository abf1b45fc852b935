/* Every key in every view, at random: KEYS (100,000) of them, SEED=number repeats a run. */
#include "tui/app.h"

#include "base/date.h"
#include "logbook/page.h"
#include "logbook/transfer.h"
#include "tui/edit.h"

#include <check.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <stdlib.h>

static char *folder, *file, *home;
static struct app_start start;

static void
set_up(void)
{
	const char *top = g_getenv("top_srcdir");
	g_autofree char *share = g_build_filename(top ? top : ".", "share", NULL);
	static char *data;
	GError *err = NULL;

	data = g_canonicalize_filename(share, NULL);
	folder = g_dir_make_tmp("splitpin-keys-XXXXXX", NULL);
	file = g_build_filename(folder, "boat.splitpin", NULL);
	start = (struct app_start) {
		.program = "splitpin",
		.file = file,
		.data = data,
		.state = folder,
		.who = { "tester", "here", 1795600000, day_from_ymd(2026, 11, 25), data },
	};
	home = g_get_current_dir();
	ck_assert_int_eq(g_chdir(folder), 0); /* what keys have written goes with it */
	ck_assert_msg(book_make_demo(file, &start.who, data, &err), "%s", err ? err->message : "");
}

static void
remove_all(const char *path)
{
	GDir *dir = g_dir_open(path, 0, NULL);
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
	ck_assert_int_eq(g_chdir(home), 0);
	remove_all(folder);
	g_free(home);
	g_free(file);
	g_free(folder);
}

/* Keys that lead on come more often than any one letter. */
static struct key_event
any_key(GRand *r)
{
	static const gunichar often[] = { K_ENTER, K_ENTER, K_TAB, K_DOWN, K_DOWN, 'y', 'u', 'o', 'd', '2', '.', '5', K_RIGHT };
	struct key_event k = { .key = K_NONE };

	switch (g_rand_int_range(r, 0, 6)) {
	case 0: k.key = often[g_rand_int_range(r, 0, G_N_ELEMENTS(often))]; break;
	case 1: {
		const struct key_binding *b = &key_table[g_rand_int_range(r, 0, key_table_length)];

		k.key = b->key[0];
		break;
	}
	case 2: k.key = (gunichar)g_rand_int_range(r, 1, 128); break;
	case 3: k.key = (gunichar)g_rand_int_range(r, K_UP, K_HANGUP); break;
	case 4: k.key = (gunichar)g_rand_int_range(r, '0', '9' + 1); break;
	case 5: k.key = (gunichar)(g_rand_int_range(r, 0, 20) ? g_rand_int_range(r, 'a', 'z' + 1) : 0x301); break;
	}
	k.y = g_rand_int_range(r, 0, 60);
	k.x = g_rand_int_range(r, 0, 100);
	return k;
}

static gint64
entries(struct app *a)
{
	g_autoptr(GArray) newest = book_history(a->book, 1, NULL);

	return newest && newest->len ? ((const struct book_entry *)(const void *)newest->data)[0].seq : 0;
}

static void
say_problem(void *user, const char *line)
{
	(void)user;
	printf("%s\n", line);
}

static struct app *
begin(struct grid *g)
{
	GError *err = NULL;
	struct app *a = app_new(&start, g->h, g->w, g->ascii, &err);

	ck_assert_msg(a != NULL, "%s", err ? err->message : "");
	return a;
}

static gboolean
in_form(const struct app *a)
{
	return a->view[a->depth - 1].kind == &view_form;
}

/* What only a terminal could do is passed over; leaving begins again. */
static struct app *
grant(struct app *a, struct grid *g)
{
	enum app_wish wish = a->wish;

	a->wish = WISH_NONE;
	if (wish != WISH_QUIT)
		return a;
	app_free(a);
	return begin(g);
}

START_TEST(no_key_anywhere_crashes_or_loses_an_entry)
{
	const char *given = g_getenv("SEED"), *many = g_getenv("KEYS");
	guint32 seed = given ? (guint32)strtoul(given, NULL, 10) : g_random_int();
	GRand *r = g_rand_new_with_seed(seed);
	struct grid *g = grid_new(24, 80, FALSE);
	struct app *a = begin(g);
	gint64 seen = entries(a), first = seen;
	int problems = 0;

	printf("any key: SEED=%u\n", seed);
	fflush(stdout);
	for (int n = many ? atoi(many) : 100000; n > 0; n--) {
		struct key_event k = any_key(r);

		if (k.key == '/' && in_form(a))
			k.key = '.';	/* no path typed at random leads out of the folder */
		app_key(a, &k);
		a = grant(a, g);
		if (n % 1000 == 0)
			grid_size(g, g_rand_int_range(r, 1, 60), g_rand_int_range(r, 1, 210));
		if (n % 3 == 0)
			app_draw(a, g);
		if (n % 500 == 0) {
			ck_assert_int_ge(entries(a), seen);
			seen = entries(a);
		}
	}
	ck_assert_int_gt(entries(a), first);
	ck_assert(book_verify(a->book, say_problem, NULL, &problems, NULL));
	ck_assert_int_eq(problems, 0);
	app_free(a);
	grid_free(g);
	g_rand_free(r);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Any key in any view");
	TCase *tc = tcase_create("keys");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_checked_fixture(tc, set_up, tear_down);
	tcase_set_timeout(tc, 1800);
	tcase_add_test(tc, no_key_anywhere_crashes_or_loses_an_entry);
	suite_add_tcase(s, tc);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
