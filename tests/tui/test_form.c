/* How every form behaves, by one that stands for all. */
#include "thing.h"

START_TEST(tab_and_arrows_go_round_all_fields_and_the_button)
{
	int n = form()->n;

	for (int i = 1; i <= n; i++) {
		key(i % 2 ? K_TAB : K_DOWN);
		ck_assert_int_eq(form()->at, i);
	}
	ck_shows("> Enter records it");
	key(K_TAB);
	ck_assert_int_eq(form()->at, 0);
	key(K_BACKTAB);
	ck_assert_int_eq(form()->at, n);
	key(K_UP);
	ck_assert_int_eq(form()->at, n - 1);
}
END_TEST

START_TEST(enter_goes_to_what_is_wrong_then_to_the_button_and_then_records)
{
	ck_hides("a name is wanted");	/* nobody was there yet */
	go_to("date");
	key(K_ENTER);
	ck_assert_int_eq(form()->at, 0);
	ck_shows("! a name is wanted");
	type("Bell");
	ck_hides("a name is wanted");
	ck_shows("It will be called Bell.");
	key(K_ENTER);
	ck_assert_int_eq(form()->at, form()->n);
	ck_assert_int_eq(saved, 0);
	key(K_ENTER);
	ck_assert_int_eq(saved, 1);
	ck_assert(!is_open());
	ck_shows("recorded");
}
END_TEST

START_TEST(what_is_wrong_shows_beside_its_field_also_from_elsewhere)
{
	go_to("date");
	type("x");
	ck_shows("! ");
	go_to("name");
	for (int y = 0; y < grid->h; y++) {
		g_autofree char *frame = grid_text(grid);
		g_auto(GStrv) line = g_strsplit(frame, "\n", -1);

		if (strstr(line[y], "Date"))
			ck_assert_msg(strstr(line[y], "!2026-11-25x") && strlen(line[y]) > 60, "%s", line[y]);
	}
}
END_TEST

START_TEST(a_refused_form_keeps_every_text)
{
	type("no");
	go_to("colour");
	key('g');
	go_to("remark");
	type("a long story");
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("! the logbook does not take that");
	ck_assert_int_eq(saved, 0);
	is("name", "no");
	is("colour", "green");
	is("remark", "a long story");
	go_to("name");
	ck_hides("does not take that");
	type("r");
	key(K_HOME);
	key(K_DELETE);
	key(K_ENTER);
	key(K_ENTER);
	ck_assert_str_eq(recorded, "or");
}
END_TEST

START_TEST(a_doubt_is_answered_by_y_alone)
{
	type("odd");
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("that is an odd name. y takes it as it is, Esc goes back.");
	key(K_ENTER);
	key(K_CLICK);
	ck_shows("y takes it as it is");
	paste("y");
	ck_assert_int_eq(saved, 0);
	ck_assert_int_eq(form()->at, form()->n);
	key('y');	/* the question is gone */
	ck_assert_int_eq(saved, 0);
	key(K_ENTER);
	key(K_ESC);
	ck_assert_int_eq(form()->at, 0);
	is("name", "odd");
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("y takes it as it is");
	key('y');
	ck_assert_int_eq(saved, 1);
	ck_assert(!is_open());
}
END_TEST

START_TEST(a_yes_holds_for_one_doubt_only)
{
	type("oddno");
	key(K_ENTER);
	key(K_ENTER);
	key('y');
	ck_shows("! the logbook does not take that either");
	key(K_UP);
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("y takes it as it is");
	ck_assert_int_eq(saved, 0);
}
END_TEST

START_TEST(a_choice_is_made_by_arrows_and_letters)
{
	go_to("colour");
	is("colour", "");
	key(K_RIGHT);
	is("colour", "red");
	key(K_LEFT);
	is("colour", "grey");
	key(' ');
	is("colour", "red");
	key('g');
	is("colour", "green");
	key('G');
	is("colour", "grey");
	key('z');
	is("colour", "grey");
	ck_shows("< grey >");
	key(K_BACKSPACE);
	is("colour", "");
	go_to("other");
	key(K_DELETE);
	is("other", "red");	/* it wants one */
}
END_TEST

START_TEST(pasted_text_fills_one_field_and_records_nothing)
{
	paste("Bell\rand rope\r");
	is("name", "Bell and rope ");
	ck_assert_int_eq(form()->at, 0);
	go_to("colour");
	paste("green\r");
	is("colour", "");	/* its letters would choose this and that */
	key(K_UP);
	key(K_ENTER);
	ck_assert_int_eq(form()->at, form()->n);
	paste("\r\ry");
	paste("\003\032\014");
	ck_assert_int_eq(saved, 0);
	ck_assert_int_eq(app->wish, WISH_NONE);
	ck_assert(is_open());
}
END_TEST

START_TEST(letters_that_are_commands_elsewhere_are_text_here)
{
	type("?q:/u1");
	is("name", "?q:/u1");
	key(K_F1);
	ck_assert(!is_open());
	key(K_ESC);
	is("name", "?q:/u1");
	key(K_CTRL('l'));
	ck_assert_int_eq(app->wish, WISH_REPAINT);
	key(K_CTRL('z'));
	ck_assert_int_eq(app->wish, WISH_SUSPEND);
	key(K_RESIZE);
	is("name", "?q:/u1");
}
END_TEST

START_TEST(a_full_line_says_so_and_loses_nothing)
{
	g_autofree char *full = g_strnfill(EDIT_MOST, 'x');

	go_to("remark");
	form_long_text_set(app, full);
	ck_hides("the line is full");
	key('y');
	ck_shows("the line is full");
	is("remark", full);
}
END_TEST

START_TEST(the_editor_gets_a_long_text_and_gives_it_back)
{
	key(K_CTRL('x'));
	ck_assert_int_eq(app->wish, WISH_NONE);	/* a name is no story */
	go_to("remark");
	type("once");
	key(K_CTRL('x'));
	ck_assert_int_eq(app->wish, WISH_EDIT);
	ck_assert_str_eq(form_long_text(app), "once");
	form_long_text_set(app, "once upon\na Cafe\314\201");
	is("remark", "once upon\na Caf\303\251");
	key(K_CTRL('_'));
	is("remark", "once");
}
END_TEST

START_TEST(a_form_that_cannot_begin_says_why_and_is_not_there)
{
	key(K_ESC);
	open_on(99);
	ck_assert(!is_open());
	ck_shows("there is no such thing");
}
END_TEST

/* The line of the screen where the cursor is. */
static char *
cursor_line(void)
{
	g_autofree char *frame = grid_text(grid);
	g_auto(GStrv) line = g_strsplit(frame, "\n", -1);

	ck_assert_int_ge(grid->cursor_y, 0);
	return g_strdup(line[grid->cursor_y]);
}

START_TEST(a_click_goes_to_what_lies_there)
{
	for (int i = 0; i <= form()->n; i++) {
		int y = grid->cursor_y;

		key(K_TAB);
		app_key(app, &(struct key_event) { .key = K_CLICK, .y = y, .x = 5 });
		ck_assert_int_eq(form()->at, i);
		key(K_TAB);
	}
	app_key(app, &(struct key_event) { .key = K_CLICK, .y = 0 });
	ck_assert_int_eq(form()->at, 0);
	type("Bell");
	key(K_UP);
	app_key(app, &(struct key_event) { .key = K_CLICK, .y = grid->cursor_y });
	ck_assert_int_eq(saved, 1);
}
END_TEST

static const struct { int h, w; } sizes[] = { { 15, 40 }, { 15, 80 }, { 24, 40 }, { 24, 80 }, { 25, 76 }, { 50, 200 } };

START_TEST(every_field_can_be_reached_and_seen_with_what_is_wrong)
{
	grid_size(grid, sizes[_i].h, sizes[_i].w);
	app_draw(app, grid);
	for (int i = 0; i < form()->n; i++) {
		g_autofree char *line = cursor_line();

		ck_assert_msg(strstr(line, form()->field[i].label) && strchr(line, '>'), "%s", line);
		if (!strcmp(form()->field[i].name, "remark")) {
			type("bad");
			ck_shows("! this is bad");
			ck_shows("to say so");
		}
		key(K_TAB);
	}
	ck_shows("> Enter records it");
	key(K_ENTER);
	ck_shows("! a name is wanted");
}
END_TEST

START_TEST(any_size_is_drawn)
{
	type("日本 Cafe");
	for (int h = 1; h < 40; h++)
		for (int w = 1; w < 120; w += 1 + w / 40) {
			grid_size(grid, h, w);
			key(w % 3 ? K_TAB : K_UP);
			ck_assert_int_lt(grid->cursor_y, h);
			ck_assert_int_lt(grid->cursor_x, w);
		}
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("A form");
	TCase *tc = tcase_create("keys");

	tcase_add_checked_fixture(tc, set_up, tear_down);
	tcase_add_test(tc, tab_and_arrows_go_round_all_fields_and_the_button);
	tcase_add_test(tc, enter_goes_to_what_is_wrong_then_to_the_button_and_then_records);
	tcase_add_test(tc, what_is_wrong_shows_beside_its_field_also_from_elsewhere);
	tcase_add_test(tc, a_refused_form_keeps_every_text);
	tcase_add_test(tc, a_doubt_is_answered_by_y_alone);
	tcase_add_test(tc, a_yes_holds_for_one_doubt_only);
	tcase_add_test(tc, a_choice_is_made_by_arrows_and_letters);
	tcase_add_test(tc, pasted_text_fills_one_field_and_records_nothing);
	tcase_add_test(tc, letters_that_are_commands_elsewhere_are_text_here);
	tcase_add_test(tc, a_full_line_says_so_and_loses_nothing);
	tcase_add_test(tc, the_editor_gets_a_long_text_and_gives_it_back);
	tcase_add_test(tc, a_form_that_cannot_begin_says_why_and_is_not_there);
	tcase_add_test(tc, a_click_goes_to_what_lies_there);
	tcase_add_loop_test(tc, every_field_can_be_reached_and_seen_with_what_is_wrong, 0, G_N_ELEMENTS(sizes));
	tcase_add_test(tc, any_size_is_drawn);
	suite_add_tcase(s, tc);
	return run_suite(s);
}
