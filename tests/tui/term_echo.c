/* A program that does with the terminal what the screens do, and shows what came of it: for test_term.c.
 *
 *	term_echo [--job] [TEXT]
 *
 * --job: it runs under a small shell, which tells of its stopping and lets it go on at the next line typed.  TEXT is
 * what the editor is given.  The last line is where the cursor stands; above it are the keys that came, by name.  Some
 * letters do something first: see do_key(). */
#include "tui/term.h"

#include <locale.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <termios.h>
#include <unistd.h>

struct echo {
	struct terminal *term;
	struct grid *grid;
	GString *keys;	/* their names */
	char *text, *said;
	gboolean pasting, hidden, mouse;
	int hang_ups;
};

static void
say(struct echo *e, const char *words)
{
	g_free(e->said);
	e->said = g_strdup(words);
}

static void
draw(struct echo *e)
{
	static const char *const style[STYLE_COUNT] = { "plain", "strong", "title", "head", "selected", "past", "soon",
							"water", "key", "field", "error" };
	static const char *const odd[] = { "日本", "e\314\201ą", "½ —", "\360\237\232\242" };
	struct area a;
	int h, w;

	term_size(e->term, &h, &w);
	grid_size(e->grid, h, w);
	a = grid_area(e->grid);
	area_printf(&a, 0, 0, STYLE_STRONG, "size %dx%d pid %d", h, w, (int)getpid());
	for (int i = 0; i < STYLE_COUNT; i++)
		area_put(&a, 1 + i % 6, 30 + i / 6 * 12, (enum style)i, style[i]);
	for (int i = 0; i < (int)G_N_ELEMENTS(odd); i++) {
		area_put(&a, 1 + i, 0, STYLE_PLAIN, odd[i]);
		area_put(&a, 1 + i, 10, STYLE_PLAIN, "|");
	}
	area_printf(&a, 7, 0, STYLE_PLAIN, "text [%s]", e->text);
	area_put(&a, 8, 0, STYLE_ERROR, e->said ? e->said : "");
	area_wrap(&a, 9, 0, STYLE_PLAIN, e->keys->str);
	area_put(&a, h - 1, 0, STYLE_SELECTED, "> here");
	if (!e->hidden)
		area_cursor(&a, h - 1, 0);
	term_show(e->term, e->grid);
}

static int
overflow(volatile int depth)
{
	volatile char eaten[4096];

	eaten[0] = (char)depth;
	return depth < 0 ? 0 : overflow(depth + 1) + eaten[0];
}

static void
edit(struct echo *e)
{
	g_autoptr(GError) err = NULL;
	char *text = term_edit(e->term, e->text, &err);

	if (!text)
		return say(e, err->message);
	say(e, "taken");
	g_free(e->text);
	e->text = text;
}

/* Work that ends when it is told to. */
static void
work(struct echo *e)
{
	say(e, "under way");
	draw(e);
	while (!term_stopped(e->term))
		g_usleep(1000);
	say(e, "stopped");
}

/* FALSE: the end. */
static gboolean
do_key(struct echo *e, gunichar key)
{
	switch (key) {
	case 's': raise(SIGSEGV); break;
	case 'a': abort();
	case 'o': overflow(0); break;
	case 'e': edit(e); break;
	case 'w': work(e); break;
	case 'c': e->hidden = !e->hidden; break;
	case 'm': e->mouse = !e->mouse; term_mouse(e->term, e->mouse); break;
	case 'r': term_repaint(e->term); break;
	case K_CTRL('z'): term_suspend(e->term); break;
	case 'q': return FALSE;
	}
	return TRUE;
}

static void
name_key(struct echo *e, const struct key_event *k)
{
	char buf[8];

	if (k->key == K_CLICK)
		g_string_append_printf(e->keys, "click %d,%d ", k->y, k->x);
	else if (k->key == K_PASTE || k->key == K_PASTE_END)
		g_string_append(e->keys, k->key == K_PASTE ? "<paste " : "> ");
	else if (k->key == K_RESIZE)
		g_string_append(e->keys, "anew ");
	else
		g_string_append_printf(e->keys, "%s ", key_words(k->key, buf));
}

static int
echo(char *text)
{
	struct echo e = { .keys = g_string_new("keys: "), .text = g_strdup(text), .grid = grid_new(0, 0, FALSE) };
	g_autoptr(GError) err = NULL;
	gboolean on;

	e.term = term_open(FALSE, &err);
	e.grid->ascii = e.term && term_ascii(e.term);
	for (on = e.term != NULL; on;) {
		struct key_event k;

		draw(&e);
		k = term_key(e.term, 500);
		e.hang_ups += k.key == K_HANGUP;
		if (k.key == K_PASTE || k.key == K_PASTE_END)
			e.pasting = k.key == K_PASTE;
		if (k.key != K_NONE)
			name_key(&e, &k);
		on = k.key != K_HANGUP && (e.pasting || do_key(&e, k.key));
	}
	if (e.hang_ups)
		e.hang_ups += term_key(e.term, 0).key == K_HANGUP;
	term_close(e.term);
	if (err)
		fprintf(stderr, "%s\n", err->message);
	else if (e.hang_ups)
		printf("hang-ups: %d\n", e.hang_ups);
	g_string_free(e.keys, TRUE);
	grid_free(e.grid);
	g_free(e.text);
	g_free(e.said);
	return err ? 2 : 0;
}

static void
hand_terminal_to(pid_t group)
{
	tcsetpgrp(STDIN_FILENO, group);
}

/* What a shell does for a job. */
static int
under_shell(char *text)
{
	struct termios settings;
	char line[80];
	int status;
	pid_t pid;

	tcgetattr(STDIN_FILENO, &settings);
	signal(SIGTTOU, SIG_IGN);
	pid = fork();
	if (pid == 0) {
		setpgid(0, 0);
		hand_terminal_to(getpid());
		signal(SIGTTOU, SIG_DFL);
		return echo(text);
	}
	while (waitpid(pid, &status, WUNTRACED) == pid && WIFSTOPPED(status)) {
		struct termios left;

		tcgetattr(STDIN_FILENO, &left);
		hand_terminal_to(getpgrp());
		tcsetattr(STDIN_FILENO, TCSADRAIN, &settings);
		printf("STOPPED by %s, %s\n", WSTOPSIG(status) == SIGTSTP ? "TSTP" : "STOP",
		       left.c_lflag & ICANON && left.c_lflag & ECHO ? "terminal given back" : "terminal kept");
		fflush(stdout);
		if (!fgets(line, sizeof line, stdin))
			break;
		hand_terminal_to(pid);
		kill(-pid, SIGCONT);
	}
	hand_terminal_to(getpgrp());
	printf("ENDED %d\n", WIFEXITED(status) ? WEXITSTATUS(status) : -1);
	return 0;
}

int
main(int argc, char **argv)
{
	gboolean job = argc > 1 && !strcmp(argv[1], "--job");
	char *text = argc > 1 + job ? argv[1 + job] : (char[]) { "" };

	setlocale(LC_CTYPE, "");
	return job ? under_shell(text) : echo(text);
}
