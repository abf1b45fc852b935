#include "tui/grid.h"

#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

static struct grid *g;
static struct area a;

static void
set_up(void)
{
	g = grid_new(3, 10, FALSE);
	a = grid_area(g);
}

static void
tear_down(void)
{
	grid_free(g);
}

static void
shows(const char *want)
{
	g_autofree char *text = grid_text(g);

	ck_assert_str_eq(text, want);
}

START_TEST(text_is_cut_at_the_edge_and_says_so)
{
	area_put(&a, 0, 0, STYLE_PLAIN, "0123456789");
	area_put(&a, 1, 0, STYLE_PLAIN, "0123456789x");
	area_put(&a, 2, 8, STYLE_PLAIN, "ab\303\251");
	shows("0123456789\n012345678~\n        a~\n");
}
END_TEST

START_TEST(what_lies_outside_is_not_drawn)
{
	struct area part = area_part(&a, 1, 2, 5, 50);

	ck_assert_int_eq(part.h, 2);
	ck_assert_int_eq(part.w, 8);
	area_put(&part, -1, 0, STYLE_PLAIN, "above");
	area_put(&part, 2, 0, STYLE_PLAIN, "below");
	area_put(&part, 0, 9, STYLE_PLAIN, "right");
	area_repeat(&part, 7, 0, 3, STYLE_PLAIN, "#");
	area_cursor(&part, 7, 0);
	shows("\n\n\n");
	ck_assert_int_eq(g->cursor_y, -1);
	area_cursor(&part, 1, 1);
	ck_assert(g->cursor_y == 2 && g->cursor_x == 3);
}
END_TEST

START_TEST(a_wide_character_takes_two_cells_and_is_never_halved)
{
	area_put(&a, 0, 0, STYLE_PLAIN, "日本");
	area_put(&a, 0, 1, STYLE_PLAIN, "x");
	area_put(&a, 1, 7, STYLE_PLAIN, "日本");
	area_put(&a, 2, 0, STYLE_PLAIN, "日本");
	area_put(&a, 2, 2, STYLE_PLAIN, "x");
	shows(" x本\n       日~\n日x\n");
	ck_assert_str_eq(g->cell[20 + 3].text, " ");
}
END_TEST

START_TEST(marks_stay_on_their_letter)
{
	ck_assert_int_eq(area_put(&a, 0, 0, STYLE_PLAIN, "Cafe\314\201 x"), 6);
	ck_assert_str_eq(g->cell[3].text, "e\314\201");
	area_put(&a, 1, 0, STYLE_PLAIN, "a\314\201\314\201\314\201\314\201\314\201\314\201\314\201\314\201\314\201b");
	ck_assert(g_utf8_validate(g->cell[10].text, -1, NULL));
	ck_assert_str_eq(g->cell[11].text, "b");
}
END_TEST

START_TEST(control_bytes_are_shown_and_not_sent)
{
	area_put(&a, 0, 0, STYLE_PLAIN, "\033[2J\n\t");
	shows("\\x1b[2J\n\n\n");
}
END_TEST

START_TEST(a_terminal_of_ascii_gets_nothing_else)
{
	grid_free(g);
	g = grid_new(3, 10, TRUE);
	a = grid_area(g);
	area_put(&a, 0, 0, STYLE_PLAIN, "Café 日");
	for (int i = 0; i < GLYPH_COUNT; i++)
		area_put(&a, 1, i % 9, STYLE_PLAIN, glyph(g, (enum glyph)i));
	for (int i = 0; i <= 8; i++)
		area_put(&a, 2, i, STYLE_PLAIN, glyph_level(g, i));
	for (int i = 0; i < g->h * g->w; i++)
		ck_assert_msg(g_str_is_ascii(g->cell[i].text), "cell %d: %s", i, g->cell[i].text);
	ck_assert_str_eq(g->cell[3].text, "e");
}
END_TEST

static const struct { double share; const char *shown; } shares[] = {
	{ 0, "....   0 %\n\n\n" },	 { .5, "##..  50 %\n\n\n" },   { 1.04, "#### 104 %\n\n\n" },
	{ 99, "####9900 %\n\n\n" }, { 1e9, "####9999 %\n\n\n" }, { NAN, "\n\n\n" },
};

START_TEST(a_share_is_a_bar_and_a_number)
{
	g->ascii = TRUE;
	area_share(&a, 0, 0, 10, STYLE_PLAIN, shares[_i].share);
	shows(shares[_i].shown);
}
END_TEST

START_TEST(wrapped_text_tells_where_it_ends)
{
	ck_assert_int_eq(area_wrap(&a, 0, 2, STYLE_PLAIN, "one two three four five"), 4);
	shows("one two\n  three\n  four\n");
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Cells: what is drawn stays in its place");
	TCase *tc = tcase_create("grid");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_checked_fixture(tc, set_up, tear_down);
	tcase_add_test(tc, text_is_cut_at_the_edge_and_says_so);
	tcase_add_test(tc, what_lies_outside_is_not_drawn);
	tcase_add_test(tc, a_wide_character_takes_two_cells_and_is_never_halved);
	tcase_add_test(tc, marks_stay_on_their_letter);
	tcase_add_test(tc, control_bytes_are_shown_and_not_sent);
	tcase_add_test(tc, a_terminal_of_ascii_gets_nothing_else);
	tcase_add_loop_test(tc, a_share_is_a_bar_and_a_number, 0, G_N_ELEMENTS(shares));
	tcase_add_test(tc, wrapped_text_tells_where_it_ends);
	suite_add_tcase(s, tc);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
