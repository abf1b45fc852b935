/* The home screen over a logbook as an SVG picture, from a real run in a pseudo-terminal of 80x24:
 *
 *	picture PROGRAM LOGBOOK >home.svg */
#include "pty.h"

#include <stdio.h>

enum { W = 80, H = 24, CELL_W = 9, CELL_H = 19, EDGE = 10 };

static void
put_text(const char *text)
{
	g_autofree char *escaped = g_markup_escape_text(text, -1);

	fputs(escaped, stdout);
}

static const char *
colour_of(const VTermScreenCell *c)
{
	static const char *const some[] = { "#1c1c1c", "#c0392b", "#2e7d32", "#8a6d00", "#1f4e9e", "#8e3a8e", "#00707a" };
	VTermColor fg = c->fg;

	return VTERM_COLOR_IS_INDEXED(&fg) && fg.indexed.idx < G_N_ELEMENTS(some) && !VTERM_COLOR_IS_DEFAULT_FG(&fg)
		? some[fg.indexed.idx] : "#1c1c1c";
}

static gboolean
same_look(const VTermScreenCell *a, const VTermScreenCell *b)
{
	return a->attrs.bold == b->attrs.bold && a->attrs.reverse == b->attrs.reverse && a->attrs.underline == b->attrs.underline
	    && vterm_color_is_equal(&a->fg, &b->fg);
}

/* From column x on, as far as the look is the same; returns the column after. */
static int
put_run(struct pty *p, int y, int x)
{
	g_autoptr(GString) text = g_string_new(NULL);
	VTermScreenCell first, c;
	int from = x;

	vterm_screen_get_cell(p->screen, (VTermPos) { y, x }, &first);
	for (c = first; x < W && same_look(&first, &c); vterm_screen_get_cell(p->screen, (VTermPos) { y, x }, &c)) {
		for (int i = 0; i < VTERM_MAX_CHARS_PER_CELL && c.chars[i]; i++)
			g_string_append_unichar(text, c.chars[i]);
		if (!c.chars[0])
			g_string_append_c(text, ' ');
		x += MAX(c.width, 1);
		if (x == W)
			break;
	}
	if (first.attrs.reverse)
		printf("<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"#1c1c1c\"/>\n", EDGE + from * CELL_W,
		       EDGE + y * CELL_H, (x - from) * CELL_W, CELL_H);
	if (strspn(text->str, " ") == text->len)
		return x;
	printf("<text x=\"%d\" y=\"%d\" textLength=\"%d\" fill=\"%s\"%s%s>", EDGE + from * CELL_W, EDGE + y * CELL_H + CELL_H - 5,
	       (x - from) * CELL_W, first.attrs.reverse ? "#fdfdf8" : colour_of(&first),
	       first.attrs.bold ? " font-weight=\"bold\"" : "", first.attrs.underline ? " text-decoration=\"underline\"" : "");
	put_text(text->str);
	puts("</text>");
	return x;
}

static char **arguments;

/* A test for the harness's sake, which fails where the program does not show what is waited for. */
START_TEST(the_picture)
{
	g_autofree char *data = g_strconcat("SPLITPIN_DATA=", g_getenv("SPLITPIN_DATA"), NULL);
	char *const env[] = { data, (char[]) { "TERM=xterm-256color" }, (char[]) { "LC_ALL=C.UTF-8" },
			      (char[]) { "HOME=/nonexistent" }, (char[]) { "TZ=UTC" }, NULL };
	char *const argv[] = { arguments[1], (char[]) { "--file" }, arguments[2], (char[]) { "--today" },
			       (char[]) { "2026-11-25" }, NULL };
	struct pty p;

	pty_start(&p, H, W, argv, env);
	pty_wants(&p, "? help");
	pty_send(&p, "/u-joint bellows: renew\r");
	pty_wants(&p, "> U-joint bellows: renew");
	pty_send(&p, "\033");
	pty_wants(&p, "Bilge: first night                   sinks");	/* the last line that is drawn */
	printf("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%d\" height=\"%d\" font-family=\"monospace\" font-size=\"15\" "
	       "xml:space=\"preserve\">\n<rect width=\"100%%\" height=\"100%%\" rx=\"6\" fill=\"#fdfdf8\"/>\n",
	       W * CELL_W + 2 * EDGE, H * CELL_H + 2 * EDGE);
	for (int y = 0; y < H; y++)
		for (int x = 0; x < W;)
			x = put_run(&p, y, x);
	puts("</svg>");
	pty_send(&p, "q");
	pty_end(&p);
	pty_clear(&p);
}
END_TEST

int
main(int argc, char **argv)
{
	Suite *s = suite_create("picture");
	TCase *tc = tcase_create("picture");
	SRunner *runner = srunner_create(s);
	int failed;

	if (argc != 3) {
		fputs("picture PROGRAM LOGBOOK\n", stderr);
		return 2;
	}
	arguments = argv;
	tcase_add_test(tc, the_picture);
	suite_add_tcase(s, tc);
	srunner_set_fork_status(runner, CK_NOFORK);
	srunner_run_all(runner, CK_SILENT);
	failed = srunner_ntests_failed(runner);
	if (failed)
		srunner_print(runner, CK_NORMAL);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
