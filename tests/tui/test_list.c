#include "tui/list.h"

#include <check.h>
#include <stdlib.h>
#include <string.h>

static struct list l;
static struct grid *g;

/* A heading, or an item whose key is its place. */
static void
fill(const char *const *text, int n)
{
	list_begin(&l);
	for (int i = 0; i < n; i++)
		list_add(&l, text[i][0] == '#' || text[i][0] == ' ', i, text[i][0] == '#' ? NONE : i, g_strdup(text[i]));
	list_settle(&l);
}

static const char *const boat[] = { "#DRIVE", " behind the drive", "Bellows: renew", "Gimbal bearing: grease", "#HULL",
				    "Café table: oil", "Drain plug: inspect" };

static void
set_up(void)
{
	list_init(&l);
	g = grid_new(6, 30, TRUE);
	fill(boat, G_N_ELEMENTS(boat));
}

static void
tear_down(void)
{
	list_clear(&l);
	grid_free(g);
}

static void
draw_row(const void *data, const struct row *row, const struct area *line, gboolean selected)
{
	(void)data, (void)selected;
	area_put(line, 0, 0, STYLE_PLAIN, row->text);
}

static void
shows(int h, const char *want)
{
	struct area a = { g, 0, 0, h, 30 };
	g_autofree char *text = NULL;

	grid_clear(g);
	list_draw(&l, &a, draw_row, NULL, "nothing");
	text = grid_text(g);
	ck_assert_msg(g_str_has_prefix(text, want), "%s\nand not\n%s", text, want);
}

START_TEST(headings_are_passed_over)
{
	ck_assert_str_eq(list_row(&l)->text, "Bellows: renew");
	list_act(&l, ACT_DOWN, 5);
	list_act(&l, ACT_DOWN, 5);
	ck_assert_str_eq(list_row(&l)->text, "Café table: oil");
	list_act(&l, ACT_UP, 5);
	list_act(&l, ACT_UP, 5);
	list_act(&l, ACT_UP, 5);
	ck_assert_str_eq(list_row(&l)->text, "Bellows: renew");
	list_act(&l, ACT_LAST, 5);
	ck_assert_str_eq(list_row(&l)->text, "Drain plug: inspect");
	list_act(&l, ACT_PAGE_UP, 3);
	ck_assert_str_eq(list_row(&l)->text, "Gimbal bearing: grease");
	ck_assert(!list_act(&l, ACT_OPEN, 5));
}
END_TEST

START_TEST(a_filter_leaves_the_headings_of_what_it_finds)
{
	list_filter(&l, "GREASE gimb");
	shows(6, "  #DRIVE\n   behind the drive\n> Gimbal bearing: grease\n\n");
	list_filter(&l, "cafe");
	shows(6, "  #HULL\n> Cafe table: oil\n\n");
	list_filter(&l, "keel");
	ck_assert_ptr_null(list_row(&l));
	shows(6, " No line holds");
	list_filter(&l, "");
	ck_assert_ptr_nonnull(list_row(&l));
}
END_TEST

START_TEST(what_was_selected_comes_back_when_the_filter_goes)
{
	list_select(&l, 3);
	list_filter(&l, "e");
	ck_assert_str_eq(list_row(&l)->text, "Gimbal bearing: grease");
	list_filter(&l, "keel");
	list_filter(&l, NULL);
	ck_assert_str_eq(list_row(&l)->text, "Gimbal bearing: grease");
	list_filter(&l, "drain");	/* leaves the selected one out */
	ck_assert_str_eq(list_row(&l)->text, "Drain plug: inspect");
	ck_assert(!list_act(&l, ACT_NONE, 5));
	list_act(&l, ACT_UP, 5);
	ck_assert_str_eq(list_row(&l)->text, "Drain plug: inspect");
}
END_TEST

/* However one came there: the frame is that of the selection alone. */
START_TEST(scrolling_follows_from_the_selection_and_the_height)
{
	for (gint64 k = 2; k < 7; k++) {
		struct area a = { g, 0, 0, 3, 30 };
		g_autofree char *down = NULL, *up = NULL;

		if (k == 4)
			continue;
		list_act(&l, ACT_FIRST, 3);
		list_select(&l, k);
		grid_clear(g);
		list_draw(&l, &a, draw_row, NULL, "");
		down = grid_text(g);
		list_act(&l, ACT_LAST, 3);
		list_select(&l, k);
		grid_clear(g);
		list_draw(&l, &a, draw_row, NULL, "");
		up = grid_text(g);
		ck_assert_str_eq(up, down);
	}
	list_select(&l, 3);
	shows(3, "  Bellows: renew\n> Gimbal bearing: grease\n  #HULL\n");
}
END_TEST

START_TEST(what_was_selected_stays_selected_when_read_anew)
{
	static const char *const fewer[] = { "#DRIVE", "new", "Bellows: renew", "Gimbal bearing: grease" };

	list_select(&l, 3);
	fill(fewer, 4);
	ck_assert_str_eq(list_row(&l)->text, "Gimbal bearing: grease");
	list_act(&l, ACT_LAST, 5);
	fill(boat, 3);
	ck_assert_str_eq(list_row(&l)->text, "Bellows: renew");	/* its neighbour */
	fill(boat, 0);
	ck_assert_ptr_null(list_row(&l));
	shows(6, "nothing");
	ck_assert_int_eq(g->cursor_y, 0);
}
END_TEST

/* Items whose keys are the first letters of their texts. */
static void
fill_new(const char *letters)
{
	list_begin(&l);
	for (int i = 0; letters[i]; i++)
		list_add(&l, FALSE, i, letters[i], g_strndup(&letters[i], 1));
	list_settle_new(&l);
}

START_TEST(the_one_row_that_came_is_selected)
{
	fill_new("bd");
	list_act(&l, ACT_FIRST, 5);
	fill_new("bcd");
	ck_assert_str_eq(list_row(&l)->text, "c");
	fill_new("bd");
	ck_assert_str_eq(list_row(&l)->text, "d");	/* its neighbour */
	fill_new("abcd");
	ck_assert_str_eq(list_row(&l)->text, "d");	/* of several none */
}
END_TEST

START_TEST(the_selected_row_is_in_sight_with_the_cursor_on_it)
{
	for (int h = 1; h <= 6; h++)
		for (list_act(&l, ACT_FIRST, 1); l.at < 6; list_act(&l, ACT_DOWN, 1)) {
			struct area a = { g, 0, 0, h, 30 };

			grid_clear(g);
			list_draw(&l, &a, draw_row, NULL, "");
			ck_assert(g->cursor_y >= 0 && g->cursor_y < h);
			ck_assert_str_eq(g->cell[g->cursor_y * 30].text, ">");
			ck_assert_int_eq(g->cell[g->cursor_y * 30 + 5].style, STYLE_SELECTED);
			ck_assert(list_click(&l, g->cursor_y, h));
		}
}
END_TEST

START_TEST(a_click_selects_what_lies_there)
{
	ck_assert(list_click(&l, 3, 6));
	ck_assert_str_eq(list_row(&l)->text, "Gimbal bearing: grease");
	ck_assert(!list_click(&l, 0, 6));
	ck_assert(!list_click(&l, 50, 6));
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Lists: one row is selected, and in sight");
	TCase *tc = tcase_create("list");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_checked_fixture(tc, set_up, tear_down);
	tcase_add_test(tc, headings_are_passed_over);
	tcase_add_test(tc, a_filter_leaves_the_headings_of_what_it_finds);
	tcase_add_test(tc, what_was_selected_comes_back_when_the_filter_goes);
	tcase_add_test(tc, scrolling_follows_from_the_selection_and_the_height);
	tcase_add_test(tc, what_was_selected_stays_selected_when_read_anew);
	tcase_add_test(tc, the_one_row_that_came_is_selected);
	tcase_add_test(tc, the_selected_row_is_in_sight_with_the_cursor_on_it);
	tcase_add_test(tc, a_click_selects_what_lies_there);
	suite_add_tcase(s, tc);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
