/* Happenings on the screen: what they make due, until when, and what to beware of. */
#include "form_keys.h"

#include "logbook/service.h"

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

/* Whether an open happening of that kind makes it due, by the due list itself. */
static gboolean
asks_now(const struct due_line *d, gint64 kind)
{
	for (int k = 0; k < d->in.n_limits; k++)
		if (d->limit[k].kind == LIMIT_HAPPENING && d->limit[k].happening == kind && d->in.limit[k].happened != NONE)
			return TRUE;
	return FALSE;
}

static int
asked(gint64 kind)
{
	int n = 0;

	for (int i = 0; i < due_count(app->due); i++)
		n += asks_now(due_at(app->due, i), kind);
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

/* Record that all was done on a day that the happenings of a kind ask for. */
static void
do_all(gint64 kind)
{
	for (int n = 0; asked(kind); n++) {
		struct service_form form = { .what = { .date = app_today(app) } };
		struct service_said said = { 0 };
		g_autoptr(GError) err = NULL;

		ck_assert_int_lt(n, 50);
		record_init(RECORD_SERVICE, &form.what);
		record_init(RECORD_PART, &form.part);
		form.what.date = app_today(app);
		form.dated = TRUE;
		for (int i = 0; i < due_count(app->due) && form.what.task == NONE; i++)
			if (asks_now(due_at(app->due, i), kind))
				form.what.task = due_at(app->due, i)->id;
		ck_assert_msg(book_did(app->book, &form, &said, &err), "%s", err ? err->message : "?");
		service_said_clear(&said);
		record_clear(RECORD_SERVICE, &form.what);
		record_clear(RECORD_PART, &form.part);
		app_changed(app);
	}
}

START_TEST(a_grounding_makes_its_tasks_due_until_they_are_done)
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
	key('u');
	ck_assert_int_eq(asked(HAPPENED_GROUNDING), 0);
	ck_hides("25 Nov 2026 grounding");
}
END_TEST

START_TEST(one_is_not_closed_over_what_is_left_and_says_all_of_it)
{
	g_autofree char *words = NULL;
	int n;

	key('5');
	key('a');
	n = told();
	record();
	key('c');
	words = g_strdup_printf("still asks for %d tasks", n);
	ck_shows("What is left to do");
	ck_shows(words);
	ck_shows("--skip TASK");
	key('q');
	ck_shows("grounding     open");
	ck_assert_int_eq(asked(HAPPENED_GROUNDING), n);
	do_all(HAPPENED_GROUNDING);
	key('c');
	ck_shows("grounding: closed; u opens it again");
	key('u');
	ck_shows("grounding     open");
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
	key(K_ENTER);	/* past the cautions */
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
	do_all(HAPPENED_LINE);
	find("line open");
	key('c');
	ck_shows("line: closed, all 2 that were open");
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

START_TEST(cautions_are_read_once_a_day_before_the_work)
{
	g_autoptr(GArray) read = NULL;

	key('5');
	add("grounding", "today");
	record();
	key(K_ENTER);
	ck_shows("Caution:");
	ck_hides("still to do");
	ck_shows("Enter read, go on");
	key(K_ESC);	/* back, without the work */
	ck_shows("grounding     open");
	key(K_ENTER);
	ck_shows("Enter read, go on");
	key(K_ENTER);
	ck_shows("on record for today");
	ck_shows("grounding on 25 Nov 2026, open");
	ck_shows("still to do");
	key('q');
	key(K_ENTER);
	ck_hides("Enter read, go on");
	ck_shows("grounding on 25 Nov 2026, open");
	read = book_records(app->book, RECORD_HEEDED, app->boat.id, NULL);
	ck_assert_uint_eq(read->len, 1);
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
	tcase_add_test(demo, a_grounding_makes_its_tasks_due_until_they_are_done);
	tcase_add_test(demo, one_is_not_closed_over_what_is_left_and_says_all_of_it);
	tcase_add_test(demo, cautions_are_read_once_a_day_before_the_work);
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
