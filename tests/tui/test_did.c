/* Recording work done from the screens: what moves the due day, and what doesn't. */
#include "form_keys.h"

static void
did(const char *task)
{
	find(task);
	key('d');
}

static void
choose(const char *word)
{
	const struct form *f = app_data(app);

	into("outcome");
	for (int i = 0; i < words_outcome.n && strcmp(form_text(f, "outcome"), word); i++)
		key(K_RIGHT);
	ck_assert_str_eq(form_text(f, "outcome"), word);
}

/* The due list's line of a task by its name. */
static const struct due_line *
line(const char *name)
{
	for (int i = 0; i < due_count(app->due); i++)
		if (!strcmp(due_at(app->due, i)->name, name))
			return due_at(app->due, i);
	ck_abort_msg("no task %s", name);
}

static struct service
newest(void)
{
	g_autoptr(GArray) all = book_records(app->book, RECORD_SERVICE, app->boat.id, NULL);
	struct service *s = (void *)all->data, newest = { 0 };
	guint at = 0;

	ck_assert(all->len > 0);
	for (guint i = 1; i < all->len; i++)
		at = s[i].id > s[at].id ? i : at;
	newest = s[at];
	record_init(RECORD_SERVICE, &s[at]);
	return newest;
}

static guint
services(void)
{
	g_autoptr(GArray) all = book_records(app->book, RECORD_SERVICE, app->boat.id, NULL);

	return all->len;
}

START_TEST(three_keys_on_the_line_move_the_due_day_five_years_on)
{
	gint64 due = line("bellows-ujoint.renew")->out.due;

	did("U-joint bellows: renew");
	record();
	ck_assert(!in_form());
	ck_shows("U-joint bellows: renew: renewed; u takes it back");
	ck_assert_int_gt(line("bellows-ujoint.renew")->out.due, due + 4 * 365);
	key('u');
	ck_assert_int_eq(line("bellows-ujoint.renew")->out.due, due);
}
END_TEST

START_TEST(who_and_today_are_filled_in)
{
	struct service s;

	did("U-joint bellows: renew");
	record();
	s = newest();
	ck_assert_str_eq(s.who, "tester");
	ck_assert_int_eq(s.date, who.today);
	ck_assert_int_eq(s.earliest, NONE);
	ck_assert_int_eq(s.reading, NONE);
	ck_assert_int_eq(s.outcome, OUTCOME_RENEWED);
	record_clear(RECORD_SERVICE, &s);
}
END_TEST

START_TEST(grease_that_was_not_seen_leaves_the_task_due)
{
	gint64 due = line("gimbal-bearing.grease")->out.due;

	did("Gimbal bearing: grease");
	choose("not-seen");
	ck_shows("It stays due: that does not");
	record();
	ck_shows("it stays due:");
	ck_assert_int_eq(line("gimbal-bearing.grease")->out.due, due);
}
END_TEST

START_TEST(every_outcome_says_before_what_it_does_after)
{
	const char *word = words_outcome.word[_i];
	gboolean counts;

	did("Gimbal bearing: grease");
	choose(word);
	counts = !on_screen("It stays due");
	record();
	ck_assert_msg(!in_form(), "%s", word);
	ck_assert(counts != on_screen("it stays due:"));
}
END_TEST

START_TEST(a_wrong_date_is_refused_beside_the_field_and_kept)
{
	guint before = services();

	did("Gimbal bearing: grease");
	into("seen");
	type("dry");
	into("date");
	type("5/6/24");
	record();
	ck_assert(in_form());
	ck_shows("5/6/24");
	ck_shows("dry");
	ck_shows("5 June 2024 or 6 May 2024");
	into("date");
	type("tomorrow");
	ck_shows("work is recorded when it is done");
	record();
	ck_assert_int_eq(services(), before);
	into("date");
	type("20 nov");
	record();
	ck_assert(!in_form());
	ck_assert_int_eq(services(), before + 1);
}
END_TEST

START_TEST(a_day_that_is_not_known_is_taken_as_a_span)
{
	struct service s;

	did("Gimbal bearing: grease");
	into("date");
	type("spring 2019");
	ck_shows("between 1 Mar 2019 and 31 May 2019");
	record();
	s = newest();
	ck_assert_int_eq(s.earliest, day_from_ymd(2019, 3, 1));
	ck_assert_int_eq(s.date, day_from_ymd(2019, 5, 31));
	record_clear(RECORD_SERVICE, &s);
}
END_TEST

START_TEST(a_year_that_is_not_over_ends_today)
{
	did("Gimbal bearing: grease");
	into("date");
	type("2026");
	ck_shows("between 1 Jan 2026 and 25 Nov 2026");
	record();
	ck_assert(!in_form());
}
END_TEST

START_TEST(the_meter_says_the_hours_and_its_hint_the_last_reading)
{
	struct service s;

	did("Gimbal bearing: grease");
	into("meter0");
	ck_shows("by the log 282.2 h now");
	type("282.2");
	ck_shows("the meter at 282.2 h");
	record();
	ck_shows("done at 612.4 h");
	s = newest();
	ck_assert_int_eq(s.reading, (gint64)(282.2 * H));
	record_clear(RECORD_SERVICE, &s);
}
END_TEST

START_TEST(a_reading_belongs_to_one_day)
{
	did("Gimbal bearing: grease");
	into("date");
	type("2025");
	into("meter0");
	type("282");
	ck_shows("a reading belongs to one day");
	record();
	ck_assert(in_form());
}
END_TEST

START_TEST(a_slip_of_the_meter_is_questioned)
{
	guint before = services();

	did("Gimbal bearing: grease");
	into("meter0");
	type("2822");
	record();
	ck_shows("y takes it as it is");
	key(K_ENTER);
	ck_assert_int_eq(services(), before);
	key('y');
	ck_assert_int_eq(services(), before + 1);
	key('7');
	key('u');
	ck_assert_int_eq(services(), before);
}
END_TEST

START_TEST(hours_that_no_outing_tells_of_are_said_to_go_into_the_log)
{
	did("Gimbal bearing: grease");
	into("meter0");
	type("283.2");
	record();
	grid_size(grid, 24, 120);
	app_draw(app, grid);
	ck_shows("1 h that no outing tells of went into the log");
}
END_TEST

START_TEST(work_done_shortly_before_is_told_before_it_is_recorded_again)
{
	grid_size(grid, 24, 120);
	did("Gimbal bearing: grease");
	record();
	did("Gimbal bearing: grease");
	ck_shows("It was done already on 25 Nov 2026 by tester");
	record();
	ck_assert(!in_form());
	ck_shows("done already on 25 Nov 2026 by tester");
}
END_TEST

START_TEST(another_oil_than_before_is_told)
{
	grid_size(grid, 24, 120);
	did("Engine oil: change");
	into("filled");
	type("mineral 15W-40, 4.2 L");
	record();
	did("Engine oil: change");
	into("filled");
	type("synthetic");
	record();
	grid_size(grid, 24, 200);
	app_draw(app, grid);
	ck_shows("last time it was mineral 15W-40, 4.2 L (25 Nov 2026): do not mix types");
}
END_TEST

START_TEST(what_the_proof_asks_for_is_the_hint)
{
	did("U-joint bellows: renew");
	ck_shows("Caution:");
	ck_shows("local code and licensed technicians come first");
	into("proof");
	ck_shows("clamps in their grooves, seen all round; bilge dry after a day afloat or a");
}
END_TEST

START_TEST(the_caution_is_whole_on_a_page_when_the_screen_is_small)
{
	grid_size(grid, 15, 40);
	did("U-joint bellows: renew");
	ck_shows("Caution: The drive is heavy");
	ck_shows(" ~\n");
	grid_size(grid, 24, 80);
	key(K_F1);
	ck_shows("local code and licensed technicians come first");
	key(K_ESC);
	ck_assert(in_form());
}
END_TEST

START_TEST(a_number_without_a_part_is_not_lost_but_asked_about)
{
	did("U-joint bellows: renew");
	into("number");
	type("RB-204");
	choose("good");
	record();
	ck_assert(in_form());
	ck_shows("no part went in");
	choose("renewed");
	record();
	ck_assert(!in_form());
}
END_TEST

START_TEST(a_design_is_one_of_those_there_are)
{
	struct fitting f;

	did("U-joint bellows: renew");
	into("variant");
	type("woollen");
	ck_shows("it is one of:");
	record();
	ck_shows("woollen");
	ck_assert(in_form());
	key(K_CTRL('u'));
	type("nose-compressed");
	record();
	record_init(RECORD_FITTING, &f);
	ck_assert(book_record(app->book, RECORD_FITTING, line("bellows-ujoint.renew")->fitting_id, &f, NULL));
	ck_assert_str_eq(f.variant, "nose-compressed");
	record_clear(RECORD_FITTING, &f);
}
END_TEST

START_TEST(made_later_than_fitted_is_refused)
{
	did("U-joint bellows: renew");
	into("date");
	type("2026-05-01");
	into("made");
	type("2026-06-01");
	ck_shows("after the day of the work");
	record();
	ck_assert(in_form());
}
END_TEST

START_TEST(money_comes_with_its_currency_or_without)
{
	struct service s;

	did("U-joint bellows: renew");
	into("cost");
	type("about 85");
	record();
	ck_assert(in_form());
	into("cost");
	type("EUR 85");
	record();
	s = newest();
	ck_assert_int_eq(s.cost, 8500);
	ck_assert_str_eq(s.currency, "EUR");
	record_clear(RECORD_SERVICE, &s);
}
END_TEST

START_TEST(of_two_engines_one_meter_says_the_hours)
{
	struct service s;

	type("Two of them");
	into("engines");
	type("port starboard");
	into("meter");
	type("412 398");
	record();
	did("Steering: inspect");
	into("meter0");
	type("412");
	into("meter1");
	ck_shows("Meter, starboard");
	ck_shows("by the log 398 h now");
	type("398");
	ck_shows("one meter is enough: port has been given");
	into("meter0");
	record();
	ck_shows("at 398 h");
	s = newest();
	ck_assert_int_eq(s.reading, 398 * H);
	record_clear(RECORD_SERVICE, &s);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Work done, from the screens");
	TCase *tc = tcase_create("did"), *twins = tcase_create("two engines");

	tcase_add_checked_fixture(tc, demo_begin, app_end);
	tcase_set_timeout(tc, 60);
	tcase_add_test(tc, three_keys_on_the_line_move_the_due_day_five_years_on);
	tcase_add_test(tc, who_and_today_are_filled_in);
	tcase_add_test(tc, grease_that_was_not_seen_leaves_the_task_due);
	tcase_add_loop_test(tc, every_outcome_says_before_what_it_does_after, 0, words_outcome.n);
	tcase_add_test(tc, a_wrong_date_is_refused_beside_the_field_and_kept);
	tcase_add_test(tc, a_day_that_is_not_known_is_taken_as_a_span);
	tcase_add_test(tc, a_year_that_is_not_over_ends_today);
	tcase_add_test(tc, the_meter_says_the_hours_and_its_hint_the_last_reading);
	tcase_add_test(tc, a_reading_belongs_to_one_day);
	tcase_add_test(tc, a_slip_of_the_meter_is_questioned);
	tcase_add_test(tc, hours_that_no_outing_tells_of_are_said_to_go_into_the_log);
	tcase_add_test(tc, work_done_shortly_before_is_told_before_it_is_recorded_again);
	tcase_add_test(tc, another_oil_than_before_is_told);
	tcase_add_test(tc, what_the_proof_asks_for_is_the_hint);
	tcase_add_test(tc, the_caution_is_whole_on_a_page_when_the_screen_is_small);
	tcase_add_test(tc, a_number_without_a_part_is_not_lost_but_asked_about);
	tcase_add_test(tc, a_design_is_one_of_those_there_are);
	tcase_add_test(tc, made_later_than_fitted_is_refused);
	tcase_add_test(tc, money_comes_with_its_currency_or_without);
	suite_add_tcase(s, tc);
	tcase_add_checked_fixture(twins, empty_begin, app_end);
	tcase_set_timeout(twins, 60);
	tcase_add_test(twins, of_two_engines_one_meter_says_the_hours);
	suite_add_tcase(s, twins);
	return run_suite(s);
}
