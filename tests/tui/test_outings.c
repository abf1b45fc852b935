/* The log of outings and the form of one. */
#include "form_keys.h"

#include "logbook/outing.h"
#include "logbook/place.h"
#include "tui/hours_plot.h"

static const char *
held(const char *name)
{
	return form_text(app_data(app), name);
}

static void
recorded(void)
{
	record();
	ck_assert_ptr_ne(app->view[app->depth - 1].kind, &view_form);
}

static void
log_hours(const char *hours, const char *place, const char *remark)
{
	key('o');
	fill("engine0", hours);
	fill("place", place);
	fill("remark", remark);
	recorded();
}

/* The boat's rows, oldest first. */
static GArray *
rows(void)
{
	return book_records(app->book, RECORD_OUTING, app->boat.id, NULL);
}

static const struct outing *
row(const GArray *all, int i)
{
	return &((const struct outing *)(const void *)all->data)[i < 0 ? (int)all->len + i : i];
}

static void
ck_newest(const char *words)
{
	g_autoptr(GArray) all = book_history(app->book, 1, NULL);
	const char *what = ((const struct book_entry *)(const void *)all->data)->what;

	ck_assert_msg(strstr(what, words) != NULL, "the newest entry is \"%s\"", what);
}

/* A boat with two engines, whose meters show 100 h and 5 h. */
static void
twin_begin(void)
{
	struct new_boat n = { .engine = { { "port", 100 * H, NONE, FALSE }, { "starboard", 5 * H, NONE, FALSE } }, .n_engines = 2 };
	g_autoptr(GError) err = NULL;

	setup();
	n.catalogue = folder;
	book = book_create(path, &who, &err);
	ck_assert_msg(book != NULL, "%s", err ? err->message : "?");
	record_init(RECORD_BOAT, &n.boat);
	n.boat.name = g_strdup("Pair of Herons");
	n.boat.kind = KIND_JET;
	n.boat.berth = STAND_TRAILER;
	n.boat.winter = STAND_ROOF;
	n.boat.water = WATER_FRESH;
	n.boat.launch = 415;
	n.boat.haul_out = 1015;
	n.boat.since = day_from_ymd(2026, 1, 1);
	ck_assert_msg(book_add_boat(book, &n, &err), "%s", err ? err->message : "?");
	record_clear(RECORD_BOAT, &n.boat);
	book_close(book);
	book = NULL;
	app_begin();
}

static void
log_pair(const char *port, const char *starboard, const char *place, const char *remark)
{
	key('o');
	fill("engine0", port);
	fill("engine1", starboard);
	fill("place", place);
	fill("remark", remark);
	recorded();
}

START_TEST(a_remark_corrected_leaves_the_hours_to_the_second)
{
	g_autoptr(GArray) before = NULL, after = NULL;

	log_hours("1:07:31", "Otter Bay", "one");
	before = rows();
	ck_assert_int_eq(row(before, -1)->hours, H + 7 * 60 + 31);
	key('2');
	key(K_HOME);
	key('e');
	fill("remark", "two");
	recorded();
	ck_shows("corrected: main");
	after = rows();
	ck_assert_int_eq(after->len, before->len);
	ck_assert(row(after, -1)->id == row(before, -1)->id);
	ck_assert_int_eq(row(after, -1)->hours, H + 7 * 60 + 31);
	ck_assert_str_eq(row(after, -1)->remark, "two");
	ck_newest("outing corrected");
	key('u');
	g_array_unref(after);
	after = rows();
	ck_assert_str_eq(row(after, -1)->remark, "one");
}
END_TEST

START_TEST(what_was_just_logged_is_selected)
{
	key('2');
	key(K_END);
	key(K_HOME);
	log_hours("1.7", "Long Reach", "");
	ck_shows("> 25 Nov 2026     1.7 h");
	key('u');
	key('r');
	ck_shows("> 25 Nov 2026     1.7 h");
}
END_TEST

START_TEST(what_is_corrected_is_not_what_was_before_it)
{
	key('2');
	key('e');
	ck_assert_str_eq(held("engine0"), "m282.2");
	ck_shows("1.1 h: the meter at 282.2 h, 281.1 h before");
}
END_TEST

START_TEST(a_guess_stays_one_until_its_hours_are_typed)
{
	struct outing_form f = { .boat = app->boat.id, .instead_of = NONE, .n_shares = 1, .share = { { NULL, 2 * H, NONE } } };
	struct outing_said said = { 0 };
	g_autoptr(GArray) all = NULL;

	record_init(RECORD_OUTING, &f.what);
	f.what.date = who.today;
	f.what.estimated = 1;
	ck_assert(book_outing(app->book, &f, &said, NULL));
	outing_said_clear(&said);
	app_changed(app);
	key('2');
	key(K_HOME);
	ck_shows("~2.0 h");
	key('e');
	fill("remark", "out of memory");
	recorded();
	ck_shows("~2.0 h");
	key('e');
	fill("engine0", "1.5");
	recorded();
	ck_hides("~1.5 h");
	all = rows();
	ck_assert_int_ne(row(all, -1)->estimated, 1);
}
END_TEST

START_TEST(the_next_outing_begins_as_the_last_one_was)
{
	key('o');
	ck_assert_str_eq(held("place"), "Otter Bay");
	ck_assert_str_eq(held("date"), "2026-11-25");
	ck_assert_str_eq(held("engine0"), "");
	ck_shows("no engine ran");
	recorded();
	ck_shows("no engine ran");
	key('2');
	key(K_HOME);
	ck_shows("no engine");
}
END_TEST

START_TEST(the_water_goes_with_the_place_until_it_is_said)
{
	struct place_form known = { .name = "Pelican Sound", .water = "salt" };
	struct place p;

	ck_assert(book_place(app->book, &known, &p, NULL));
	record_clear(RECORD_PLACE, &p);
	key('o');
	fill("place", "Pelican Sound");
	ck_assert_str_eq(held("water"), "salt");
	fill("place", "Kettle Point");
	ck_assert_str_eq(held("water"), "");
	into("water");
	type("b");
	ck_assert_str_eq(held("water"), "brackish");
	fill("place", "Pelican Sound");
	ck_assert_str_eq(held("water"), "brackish");
	ck_shows("brackish, Pelican Sound.");
	recorded();
	key('o');	/* as last time, and there again */
	ck_assert_str_eq(held("water"), "brackish");
	fill("place", "Kettle Point");
	ck_assert_str_eq(held("water"), "");
	fill("place", "Pelican Sound");
	ck_assert_str_eq(held("water"), "brackish");
}
END_TEST

START_TEST(an_outing_shows_whole_with_what_the_engine_had_then)
{
	key('2');
	key(K_ENTER);
	ck_shows("Outing of 10 Oct 2026");
	ck_shows("main: 1.1 h; the meter showed 282.2 h; about 612.4 h at the end of that day");
	ck_shows("place: Otter Bay");
	ck_shows("Last one; hauled out on Monday");
}
END_TEST

START_TEST(a_bad_figure_leaves_the_log_as_it_is)
{
	static const char *const bad[] = { "2.4.5", "-1", "2h75", "m", "mm5", "1e5", "99999999", "two", "m9999999" };
	g_autoptr(GArray) before = rows(), after = NULL;

	key('o');
	for (gsize i = 0; i < G_N_ELEMENTS(bad); i++) {
		fill("engine0", bad[i]);
		key(K_ENTER);
		key(K_ENTER);
		ck_assert_str_eq(held("engine0"), bad[i]);
		ck_shows("!");
	}
	fill("engine0", "1");
	fill("date", "26 nov 2026");
	key(K_ENTER);
	ck_shows("that lies ahead");
	after = rows();
	ck_assert_int_eq(after->len, before->len);
}
END_TEST

START_TEST(an_unlikely_figure_is_asked_about_in_the_screen_s_own_words)
{
	g_autoptr(GArray) before = rows(), after = NULL;

	key('o');
	type("2846");
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("Is it 284.6, 286");
	ck_shows("or 284? y takes it as it is, Esc goes back.");
	ck_hides("--yes");
	key(K_ESC);
	after = rows();
	ck_assert_int_eq(after->len, before->len);
	key(K_CTRL('u'));
	type("284.6");
	recorded();
	ck_shows("main 2.4 h, now 614.8 h");
}
END_TEST

START_TEST(hours_are_read_as_people_write_them)
{
	static const char *const same[] = { "2.4", "2,4", "2h24", "2:24", "144m", "144 min", "m284.6", "M284.6", "284.6" };

	key('o');
	for (gsize i = 0; i < G_N_ELEMENTS(same); i++) {
		fill("engine0", same[i]);
		ck_shows("25 Nov 2026: 2.4 h");
	}
}
END_TEST

START_TEST(the_lines_of_one_outing_stand_together)
{
	const char *port, *starboard;
	g_autofree char *frame = NULL;

	log_pair("2.4", "2.3", "Otter Bay", "calm");
	log_pair("1.5", "1.6", "Long Reach", "");
	key('2');
	key(K_HOME);
	frame = grid_text(grid);
	port = strstr(frame, "> 25 Nov 2026 port           1.5 h");
	starboard = strstr(frame, "              starboard      1.6 h");
	ck_assert_msg(port && starboard && port < starboard, "%s", frame);
	ck_shows("hours by month, all engines together");
	find("otter");
	ck_shows("2.4 h");
	ck_shows("2.3 h");
	ck_hides("1.6 h");
}
END_TEST

START_TEST(the_second_engine_s_line_is_the_same_outing)
{
	g_autoptr(GArray) all = NULL;

	log_pair("2.4", "2.3", "Otter Bay", "calm");
	key('o');
	ck_assert_str_eq(held("place"), "Otter Bay");
	key(K_ESC);
	key('2');
	key(K_HOME);
	key(K_DOWN);
	ck_shows(">             starboard");
	key(K_ENTER);
	ck_shows("port: 2.4 h");
	ck_shows("starboard: 2.3 h");
	ck_shows("place: Otter Bay");
	key(K_ESC);
	key('e');
	ck_assert_str_eq(held("place"), "Otter Bay");
	ck_assert_str_eq(held("remark"), "calm");
	ck_assert_str_eq(held("engine0"), "2.4");
	fill("engine1", "2.2");
	recorded();
	all = rows();
	ck_assert_int_eq(all->len, 2);
	ck_assert_str_eq(row(all, 0)->place, "Otter Bay");
	ck_assert_str_eq(row(all, 0)->remark, "calm");
	ck_assert_int_eq(row(all, 1)->hours, 7920);
}
END_TEST

START_TEST(an_outing_goes_with_all_its_engines_and_comes_back_with_them)
{
	log_pair("2.4", "2.3", "Otter Bay", "calm");
	key('2');
	key(K_HOME);
	key(K_DOWN);
	key(K_DELETE);
	ck_shows("the outing of 25 Nov 2026 is out of the log; u brings it back");
	ck_shows("No outing is on record");
	key('u');
	ck_shows("25 Nov 2026 port           2.4 h");
	ck_shows("starboard      2.3 h");
}
END_TEST

START_TEST(what_may_be_hours_or_a_reading_is_taken_for_hours_and_said)
{
	key('o');
	fill("engine0", "102");	/* more than a day has: the meter */
	fill("engine1", "7.5");
	ck_will("port 2 h: the meter at 102 h, 100 h before; starboard 7.5 h (m7.5: the meter shows that).");
	fill("engine1", "m7.5");
	ck_will("starboard 2.5 h: the meter at 7.5 h, 5 h before.");
	fill("engine1", "2.5");
	ck_will("starboard 2.5 h.");
}
END_TEST

START_TEST(one_engine_alone_may_have_run)
{
	g_autoptr(GArray) all = NULL;

	key('o');
	fill("engine1", "0.4");
	recorded();
	ck_shows("starboard 0.4 h, now 5.4 h");
	all = rows();
	ck_assert_int_eq(all->len, 1);
}
END_TEST

START_TEST(a_log_of_two_engines_looks_as_it_was_looked_at)
{
	log_pair("2.4", "2.3", "Otter Bay", "calm");
	log_pair("m104.4", "m10.1", "Long Reach", "");
	key('2');
	key(K_HOME);
	for (int k = 0; k < GOLDENS; k++)
		same_screen("outings-pair", &goldens[k]);
}
END_TEST

START_TEST(months_of_many_hours_stay_apart)
{
	g_autoptr(GArray) months = g_array_new(FALSE, FALSE, sizeof(struct month_sum));
	struct grid *g = grid_new(3, 80, TRUE);
	struct area a = grid_area(g);
	g_autofree char *text = NULL;

	for (int m = 5; m <= 7; m++)
		g_array_append_val(months, ((struct month_sum) { 2026, m, 30, (100 + m) * H + 1000 }));
	draw_hours_by_month(months, day_from_ymd(2026, 11, 25), &a, 1);
	text = grid_text(g);
	ck_assert_msg(strstr(text, "#105 #106 #107") != NULL, "%s", text);
	ck_assert_msg(strstr(text, "318.8 h") != NULL, "%s", text);
	grid_free(g);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Outings on the screen");
	TCase *demo = tcase_create("over the demo"), *twin = tcase_create("two engines");

	tcase_add_checked_fixture(demo, demo_begin, app_end);
	tcase_set_timeout(demo, 60);
	tcase_add_test(demo, a_remark_corrected_leaves_the_hours_to_the_second);
	tcase_add_test(demo, what_was_just_logged_is_selected);
	tcase_add_test(demo, what_is_corrected_is_not_what_was_before_it);
	tcase_add_test(demo, a_guess_stays_one_until_its_hours_are_typed);
	tcase_add_test(demo, the_next_outing_begins_as_the_last_one_was);
	tcase_add_test(demo, the_water_goes_with_the_place_until_it_is_said);
	tcase_add_test(demo, an_outing_shows_whole_with_what_the_engine_had_then);
	tcase_add_test(demo, a_bad_figure_leaves_the_log_as_it_is);
	tcase_add_test(demo, an_unlikely_figure_is_asked_about_in_the_screen_s_own_words);
	tcase_add_test(demo, hours_are_read_as_people_write_them);
	suite_add_tcase(s, demo);
	tcase_add_checked_fixture(twin, twin_begin, app_end);
	tcase_add_test(twin, the_lines_of_one_outing_stand_together);
	tcase_add_test(twin, the_second_engine_s_line_is_the_same_outing);
	tcase_add_test(twin, an_outing_goes_with_all_its_engines_and_comes_back_with_them);
	tcase_add_test(twin, what_may_be_hours_or_a_reading_is_taken_for_hours_and_said);
	tcase_add_test(twin, one_engine_alone_may_have_run);
	tcase_add_test(twin, a_log_of_two_engines_looks_as_it_was_looked_at);
	tcase_add_test(twin, months_of_many_hours_stay_apart);
	suite_add_tcase(s, twin);
	return run_suite(s);
}
