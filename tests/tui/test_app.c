/* What an owner does, key by key, without a terminal. */
#include "screens.h"

#include "logbook/outing.h"

/* The newest entry of the journal in force, in words. */
static char *
newest(void)
{
	g_autoptr(GArray) all = book_history(app->book, 1, NULL);

	return g_strdup(((const struct book_entry *)(const void *)all->data)[0].what);
}

#define ck_newest(words) \
	do { \
		g_autofree char *newest_ = newest(); \
		ck_assert_msg(strstr(newest_, words) != NULL, "the newest entry is \"%s\"", newest_); \
	} while (0)

START_TEST(an_outing_is_four_keys)
{
	key('o');
	key('2');
	key(K_ENTER);
	ck_shows("25 Nov 2026: 2 h");
	key(K_ENTER);
	ck_shows("main 2 h, now 614.4 h");
	ck_newest("outing 2026-11-25: 2 h");
	key('u');
	ck_shows("taken back: outing");
	ck_shows("612.4 h");
	key('r');
	ck_shows("brought back: outing");
	ck_shows("614.4 h");
}
END_TEST

START_TEST(what_the_meter_shows_is_taken_for_that)
{
	key('o');
	type("284.6");
	ck_shows("2.4 h: the meter at 284.6 h, 282.2 h before");
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("main 2.4 h, now 614.8 h");
}
END_TEST

START_TEST(a_slip_is_questioned_and_nothing_recorded_until_y)
{
	key('o');
	type("2846");
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("y takes it as it is");
	key(K_ENTER);	/* momentum does not take it */
	ck_shows("An outing");
	ck_shows("y takes it as it is");
	ck_hides("logged:");
	key('y');
	ck_shows("logged: main");
}
END_TEST

START_TEST(what_is_wrong_is_said_beside_the_field_and_kept)
{
	key('o');
	type("2.4.5");
	key(K_ENTER);
	ck_shows("2.4.5");
	ck_shows("!");
	key(K_TAB);
	key(K_CTRL('u'));
	type("5/6/24");
	ck_shows("5/6/24");
	key(K_ENTER);
	ck_shows("2.4.5");
	ck_hides("logged");
}
END_TEST

START_TEST(what_was_typed_survives_leaving_and_dying)
{
	g_autoptr(GError) err = NULL;

	key('o');
	type("3.3");
	key(K_TAB);
	key(K_ESC);
	ck_shows("what was typed is kept");
	app_free(app);	/* as if the program had ended there */
	app = app_new(&start, 24, 80, FALSE, &err);
	key('o');
	ck_shows("3.3");
	ck_shows("^N begins anew");
	key(K_CTRL('n'));
	ck_hides("3.3");
	key(K_ESC);
	key('o');
	ck_hides("3.3");
}
END_TEST

START_TEST(what_the_due_list_needs_and_cannot_be_read_is_said_instead_of_an_empty_screen)
{
	g_autoptr(GError) err = NULL;

	app_free(app);
	start.who.data = folder;
	app = app_new(&start, 24, 80, FALSE, &err);
	ck_assert_ptr_null(app);
	ck_assert_msg(strstr(err->message, "readings.csv") != NULL, "%s", err->message);
}
END_TEST

START_TEST(why_stands_below_the_list_and_whole_on_a_page)
{
	find("U-joint bellows: renew");
	ck_shows("Last done 12 Mar 2022");
	key(K_ENTER);
	ck_shows("5 years");
	ck_shows("common practice");
	key(K_ESC);
	ck_shows("U-joint bellows: renew");
	key(K_ESC);
	ck_assert_ptr_null(view_due.list(app_data(app))->filter);	/* the filter went, the program did not */
	key(K_ESC);
	ck_shows("q ends the program");
	ck_assert_int_eq(app->wish, WISH_NONE);
	key('q');
	ck_assert_int_eq(app->wish, WISH_QUIT);
}
END_TEST

START_TEST(an_outing_is_corrected_and_taken_out)
{
	key('2');
	key('e');
	ck_shows("m282.2");
	key(K_CTRL('u'));
	type("m282.4");
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("main 1.3 h");
	key(K_DELETE);
	ck_shows("u brings it back");
	ck_shows("> 3 Oct 2026");
	key('u');
	ck_shows("> 10 Oct 2026");
	key('7');
	ck_shows("(taken back)");
}
END_TEST

START_TEST(the_whole_log_is_walked_page_by_page)
{
	g_autoptr(GArray) all = book_records(app->book, RECORD_OUTING, app->boat.id, NULL);
	int seen = 1;
	gint64 at;

	key('2');
	at = list_row(view_outings.list(app_data(app)))->key;
	for (;;) {
		key(K_DOWN);
		if (list_row(view_outings.list(app_data(app)))->key == at)
			break;
		at = list_row(view_outings.list(app_data(app)))->key;
		seen++;
	}
	ck_assert_int_eq(seen, (int)all->len);
	key(K_HOME);
	ck_shows("10 Oct 2026");
	key(K_END);
	ck_assert_int_eq(list_row(view_outings.list(app_data(app)))->key, at);
}
END_TEST

START_TEST(a_season_and_a_stay_are_recorded_and_a_stay_in_the_way_is_refused)
{
	key('4');
	key('s');
	key(K_TAB);
	key(K_CTRL('u'));
	type("2026-11-20");
	key(K_TAB);
	type("2026-11-24");
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("stay    20 Nov 2026 to 24 Nov 2026, trailer");
	key('s');
	key(K_TAB);
	key(K_CTRL('u'));
	type("2026-11-22");
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("lies in the way");
	ck_shows("2026-11-22");
	key(K_ESC);
	key(K_ESC);
	ck_hides("22 Nov 2026 to");
}
END_TEST

static int
due_now(void)
{
	int n = 0;

	for (int i = 0; i < due_count(app->due); i++)
		n += due_at(app->due, i)->out.when == OPP_NOW;
	return n;
}

START_TEST(a_grounding_makes_its_tasks_due_and_is_not_closed_before_they_are_done)
{
	int before = due_now();

	key('5');
	key('a');
	ck_shows("due for it at once");
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("grounding     open");
	ck_shows("still to do:");
	ck_assert_int_gt(due_now(), before);
	key(K_HOME);
	key('c');
	ck_shows("What is left to do");
	key('q');
	ck_assert_int_gt(due_now(), before);
	key('u');
	ck_assert_int_eq(due_now(), before);
}
END_TEST

START_TEST(an_interval_wants_a_source_and_moves_the_due_day)
{
	key('6');
	find("bellows-ujoint.renew");
	key('e');
	type("3 years");
	key(K_ENTER);
	ck_shows("wanted: where does the figure come from");
	type("manual p. 41");
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("3 years from now on");
	key('1');
	find("U-joint bellows: renew");
	ck_shows("past due");
	ck_shows("manual p. 41");
}
END_TEST

START_TEST(a_task_of_ones_own_is_due)
{
	key('6');
	key('a');
	type("Polish the bell");
	key(K_TAB);
	type("bell.polish");
	key(K_TAB);
	type("hull/bottom");
	key(K_TAB);
	type("1 months");
	key(K_TAB);
	type("own rule");
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("bell.polish is part of the plan");
	key('1');
	find("bell.polish");
	ck_shows("polish");
}
END_TEST

START_TEST(a_reading_gives_its_verdict_before_and_after)
{
	key('3');
	find("anodes");
	key('m');
	key(K_UP);
	key(K_CTRL('u'));
	type("anode-left");
	key(K_TAB);
	type("40 %");
	ck_shows("anode-left 40 %: stop");
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("anode-left 40 %: stop");
	key('1');
	ck_shows("Anodes: renew");
}
END_TEST

START_TEST(a_fitting_that_is_not_there_takes_its_tasks_along)
{
	key('3');
	find("propeller shaft");
	ck_shows("past due");
	key(K_DELETE);
	ck_shows("Propeller shaft: not on this boat");
	ck_hides("past due");
	key('u');
	ck_shows("past due");
}
END_TEST

START_TEST(the_palette_finds_commands_by_words)
{
	static const struct app_command commands[] = { { "yard", "FILE", "write the work list for a yard" }, { NULL, NULL, NULL } };

	app->start.command = commands;
	key(':');
	type("work list");
	ck_shows("write the work list for a yard");
	key(K_ENTER);
	type("list.csv");
	key(K_ENTER);
	ck_assert_int_eq(app->wish, WISH_RUN);
	ck_assert_str_eq(app->run[0], "yard");
	ck_assert_str_eq(app->run[1], "list.csv");
	app->wish = WISH_NONE;
	key(':');
	type("log an outing");
	key(K_ENTER);
	ck_shows("An outing");
}
END_TEST

START_TEST(a_command_line_that_makes_no_sense_is_refused)
{
	static const struct app_command commands[] = { { "yard", "FILE", "write the work list for a yard" }, { NULL, NULL, NULL } };

	app->start.command = commands;
	key(':');
	type("frobnicate");
	key(K_ENTER);
	ck_shows("no command holds these words");
	key(K_CTRL('u'));
	type("yard 'list");
	key(K_ENTER);
	ck_assert_int_eq(app->wish, WISH_NONE);
	ck_shows("yard");
	key(K_ESC);
	ck_shows("NOW, before");
}
END_TEST

START_TEST(pasted_text_is_never_a_command)
{
	const char *p;

	app_key(app, &(struct key_event) { .key = K_PASTE });
	for (p = "qq2.4\r"; *p; p++)
		app_key(app, &(struct key_event) { .key = *p == '\r' ? K_ENTER : (gunichar)*p });
	app_key(app, &(struct key_event) { .key = K_PASTE_END });
	app_draw(app, grid);
	ck_assert_int_eq(app->wish, WISH_NONE);
	ck_shows("pasted into a form only");
	key('o');
	app_key(app, &(struct key_event) { .key = K_PASTE });
	for (p = "1.5\r"; *p; p++)
		app_key(app, &(struct key_event) { .key = *p == '\r' ? K_ENTER : (gunichar)*p });
	app_key(app, &(struct key_event) { .key = K_PASTE_END });
	app_draw(app, grid);
	ck_shows("An outing");
	ck_shows("1.5");
}
END_TEST

START_TEST(what_another_program_changed_is_shown)
{
	struct outing_form f = { .boat = app->boat.id, .instead_of = NONE, .n_shares = 1 };
	struct outing_said said = { 0 };
	g_autoptr(GError) err = NULL;

	book = book_open(path, BOOK_WRITE, &who, &err);
	ck_assert_msg(book != NULL, "%s", err ? err->message : "?");
	record_init(RECORD_OUTING, &f.what);
	f.what.date = who.today;
	f.share[0] = (struct outing_share) { NULL, H, NONE };
	ck_assert_msg(book_outing(book, &f, &said, &err), "%s", err ? err->message : "?");
	outing_said_clear(&said);
	app_idle(app);
	app_draw(app, grid);
	ck_shows("another program changed the logbook");
	ck_shows("613.4 h");
	app_idle(app);
}
END_TEST

static void
tomorrow(gint64 *now, gint64 *today)
{
	*now = who.now + 86400;
	*today = who.today + 1;
}

START_TEST(a_new_day_begins_while_it_is_open)
{
	app->start.read_clock = tomorrow;
	app_idle(app);
	app_draw(app, grid);
	ck_shows("26 Nov 2026");
	key('o');
	key('1');
	key(K_ENTER);
	ck_shows("26 Nov 2026: 1 h");
}
END_TEST

START_TEST(a_hang_up_ends_it_with_the_draft_kept)
{
	key('o');
	type("1.7");
	key(K_HANGUP);
	ck_assert_int_eq(app->wish, WISH_QUIT);
	app->wish = WISH_NONE;
	key(K_ESC);
	key('o');
	ck_shows("1.7");
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("The screens, key by key");
	TCase *demo = tcase_create("over the demo");

	tcase_add_checked_fixture(demo, demo_begin, app_end);
	tcase_set_timeout(demo, 60);
	tcase_add_test(demo, an_outing_is_four_keys);
	tcase_add_test(demo, what_the_meter_shows_is_taken_for_that);
	tcase_add_test(demo, a_slip_is_questioned_and_nothing_recorded_until_y);
	tcase_add_test(demo, what_is_wrong_is_said_beside_the_field_and_kept);
	tcase_add_test(demo, what_was_typed_survives_leaving_and_dying);
	tcase_add_test(demo, what_the_due_list_needs_and_cannot_be_read_is_said_instead_of_an_empty_screen);
	tcase_add_test(demo, why_stands_below_the_list_and_whole_on_a_page);
	tcase_add_test(demo, an_outing_is_corrected_and_taken_out);
	tcase_add_test(demo, the_whole_log_is_walked_page_by_page);
	tcase_add_test(demo, a_season_and_a_stay_are_recorded_and_a_stay_in_the_way_is_refused);
	tcase_add_test(demo, a_grounding_makes_its_tasks_due_and_is_not_closed_before_they_are_done);
	tcase_add_test(demo, an_interval_wants_a_source_and_moves_the_due_day);
	tcase_add_test(demo, a_task_of_ones_own_is_due);
	tcase_add_test(demo, a_reading_gives_its_verdict_before_and_after);
	tcase_add_test(demo, a_fitting_that_is_not_there_takes_its_tasks_along);
	tcase_add_test(demo, the_palette_finds_commands_by_words);
	tcase_add_test(demo, a_command_line_that_makes_no_sense_is_refused);
	tcase_add_test(demo, pasted_text_is_never_a_command);
	tcase_add_test(demo, what_another_program_changed_is_shown);
	tcase_add_test(demo, a_new_day_begins_while_it_is_open);
	tcase_add_test(demo, a_hang_up_ends_it_with_the_draft_kept);
	suite_add_tcase(s, demo);
	return run_suite(s);
}
