/* Happenings on the screen: what they make due, until when, and what to beware of. */
#include "form_keys.h"

static void
choose(const char *kind)
{
	while (strcmp(form_text(app_data(app), "kind"), kind))
		key(K_RIGHT);
}

static void
add(const char *kind, const char *date)
{
	key('a');
	choose(kind);
	key(K_TAB);
	key(K_CTRL('u'));
	type(date);
}

/* Tasks that an open happening of that kind makes due, by the due list itself. */
static int
asked(gint64 kind)
{
	int n = 0;

	for (int i = 0; i < due_count(app->due); i++) {
		const struct due_line *d = due_at(app->due, i);
		gboolean any = FALSE;

		for (int k = 0; k < d->in.n_limits; k++)
			any = any || (d->limit[k].kind == LIMIT_HAPPENING && d->limit[k].happening == kind &&
				      d->in.limit[k].happened != NONE);
		n += any;
	}
	return n;
}

/* The number that the form's sum told before it was recorded. */
static int
told(void)
{
	g_autofree char *frame = grid_text(grid);
	const char *on = strstr(frame, " due for it at once"), *at = on;

	ck_assert_msg(on != NULL, "no number on:\n%s", frame);
	while (at > frame && at[-1] != ':')
		at--;
	return (int)g_ascii_strtoll(at, NULL, 10);
}

START_TEST(a_grounding_makes_its_tasks_due_and_closing_it_ends_that)
{
	int n;

	ck_assert_int_eq(asked(HAPPENED_GROUNDING), 0);
	key('5');
	key('a');
	n = told();
	ck_assert_int_gt(n, 0);
	record();
	ck_assert_int_eq(asked(HAPPENED_GROUNDING), n);
	ck_shows("grounding     open");
	ck_shows("still to do:");
	key('c');
	ck_shows("grounding: closed; u opens it again");
	ck_assert_int_eq(asked(HAPPENED_GROUNDING), 0);
	key('u');
	ck_shows("grounding     open");
	ck_assert_int_eq(asked(HAPPENED_GROUNDING), n);
	key('u');
	ck_assert_int_eq(asked(HAPPENED_GROUNDING), 0);
	ck_hides("25 Nov 2026 grounding");
}
END_TEST

START_TEST(work_done_after_it_is_not_counted_and_shows_as_done)
{
	int late, n;

	key('5');
	key('a');
	late = told();
	key(K_ESC);
	add("grounding", "2021-07-01");
	n = told();
	ck_assert_int_lt(n, late);
	record();
	ck_assert_int_eq(asked(HAPPENED_GROUNDING), n);
	find("grounding open");
	key(K_ENTER);
	ck_shows("grounding on 1 Jul 2021, open");
	ck_shows("done since, ");
}
END_TEST

START_TEST(closing_one_closes_all_of_its_kind_and_says_so)
{
	key('5');
	add("line", "2026-07-01");
	record();
	add("line", "2026-08-01");
	record();
	find("line open");
	key('c');
	ck_shows("line: closed, all 2 that were open");
	ck_assert_int_eq(asked(HAPPENED_LINE), 0);
	key(K_ESC);
	find("line closed");
	key('c');
	ck_shows("that is closed already");
}
END_TEST

START_TEST(a_caution_stands_before_the_tasks_where_it_can_hurt)
{
	static const struct { const char *kind, *words; } hurts[] = {
		{ "swamping", "Petrol vapour explodes" }, { "flooded-bilge", "Petrol vapour explodes" },
		{ "bad-fuel", "Petrol vapour explodes" }, { "power-loss", "Petrol vapour explodes" },
		{ "overheating", "Hot coolant scalds" },  { "dry-run", "Hot coolant scalds" },
		{ "line", "Key out" },			  { "grounding", "Key out" },
		{ "drive-off", "The drive is heavy" },	  { "vibration", "Key out" },
	};

	key('5');
	for (guint i = 0; i < G_N_ELEMENTS(hurts); i++) {
		g_autofree char *frame = NULL;

		add(hurts[i].kind, "today");
		ck_shows(hurts[i].words);
		record();
		ck_shows(hurts[i].words);
		key(K_ENTER);
		ck_shows("Caution:");
		frame = grid_text(grid);
		ck_assert_msg(!strstr(frame, "still to do") || strstr(frame, "Caution:") < strstr(frame, "still to do"), "%s",
			      frame);
		key('q');
		key('u');
	}
}
END_TEST

START_TEST(what_lies_ahead_is_refused_and_the_text_kept)
{
	key('5');
	add("swamping", "2026-11-26");
	key(K_TAB);
	type("a wake over the stern");
	record();
	ck_shows("that lies ahead");
	ck_shows("2026-11-26");
	ck_shows("a wake over the stern");
	ck_shows("swamping");
}
END_TEST

START_TEST(one_is_taken_out_and_comes_back)
{
	int n = asked(HAPPENED_VIBRATION);

	ck_assert_int_gt(n, 0);
	key('5');
	find("vibration");
	key(K_DELETE);
	ck_shows("u brings it back");
	ck_assert_int_eq(asked(HAPPENED_VIBRATION), 0);
	key('u');
	ck_assert_int_eq(asked(HAPPENED_VIBRATION), n);
}
END_TEST

START_TEST(one_opens_whole)
{
	key('5');
	find("overheating");
	key(K_ENTER);
	ck_shows("overheating on 18 Jul 2026, closed on ");
	ck_shows("Weed over the intake, alarm came on, stopped within a minute");
}
END_TEST

START_TEST(what_asks_for_nothing_says_so)
{
	key('5');
	add("other", "today");
	ck_assert_int_eq(told(), 0);
	record();
	ck_shows("No task of this boat asks for anything");
}
END_TEST

START_TEST(a_boat_to_which_nothing_happened_says_what_to_do)
{
	open_plain("Skiff");
	book_close(book);
	book = NULL;
	app_begin();
	key('5');
	ck_shows("Nothing is on record: a adds what happened.");
	key(K_ENTER);
	key('c');
	key(K_DELETE);
	key('a');
	ck_shows("Something happened");
}
END_TEST

static void
set_form(void)
{
	key('5');
	add("flooded-bilge", "today");
}

static void
set_page(void)
{
	key('5');
	find("grounding");
	key(K_ENTER);
}

static const struct { const char *name; void (*set)(void); } screens[] = {
	{ "form-happening", set_form }, { "happening", set_page },
};

START_TEST(a_screen_is_as_it_was_looked_at)
{
	screens[_i].set();
	for (int k = 0; k < GOLDENS; k++)
		same_screen(screens[_i].name, &goldens[k]);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Happenings");
	TCase *demo = tcase_create("demo"), *bare = tcase_create("bare");

	tcase_add_checked_fixture(demo, demo_begin, app_end);
	tcase_add_test(demo, a_grounding_makes_its_tasks_due_and_closing_it_ends_that);
	tcase_add_test(demo, work_done_after_it_is_not_counted_and_shows_as_done);
	tcase_add_test(demo, closing_one_closes_all_of_its_kind_and_says_so);
	tcase_add_test(demo, a_caution_stands_before_the_tasks_where_it_can_hurt);
	tcase_add_test(demo, what_lies_ahead_is_refused_and_the_text_kept);
	tcase_add_test(demo, one_is_taken_out_and_comes_back);
	tcase_add_test(demo, one_opens_whole);
	tcase_add_test(demo, what_asks_for_nothing_says_so);
	tcase_add_loop_test(demo, a_screen_is_as_it_was_looked_at, 0, G_N_ELEMENTS(screens));
	suite_add_tcase(s, demo);
	tcase_add_checked_fixture(bare, setup, app_end);
	tcase_add_test(bare, a_boat_to_which_nothing_happened_says_what_to_do);
	suite_add_tcase(s, bare);
	return run_suite(s);
}
