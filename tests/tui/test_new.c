/* The form for a new logbook, or one more boat. */
#include "form_keys.h"

static gboolean
there(void)
{
	return g_file_test(path, G_FILE_TEST_EXISTS);
}

static struct engine
engine(int i)
{
	g_autoptr(GArray) all = book_records(app->book, RECORD_ENGINE, app->boat.id, NULL);
	struct engine e;

	ck_assert_int_lt(i, (int)all->len);
	e = ((struct engine *)(void *)all->data)[i];
	record_init(RECORD_ENGINE, &((struct engine *)(void *)all->data)[i]);
	return e;
}

START_TEST(a_name_and_enter_enter_make_a_logbook)
{
	ck_shows("A new logbook");
	ck_assert(!there());
	type("Grey Heron");
	record();
	ck_assert(there());
	ck_assert(!in_form());
	ck_assert_str_eq(app->boat.name, "Grey Heron");
	ck_shows("tasks on");
	ck_shows("BEFORE LAUNCH");
	ck_assert_int_gt(due_count(app->due), 100);
}
END_TEST

START_TEST(its_folder_is_made_for_the_owner_alone)
{
	g_autofree char *inner = g_build_filename(folder, "in", "er", NULL), *file = g_build_filename(inner, "b.splitpin", NULL);
	GStatBuf st;

	app->start.folder = inner;
	app->start.file = file;
	type("Grey Heron");
	record();
	ck_assert(g_file_test(file, G_FILE_TEST_EXISTS));
	ck_assert_int_eq(g_stat(inner, &st), 0);
	ck_assert_int_eq(st.st_mode & 0777, 0700);
	g_clear_pointer(&app->book, book_close);
	g_remove(file);
	g_rmdir(inner);
	g_free(g_steal_pointer(&inner));
	inner = g_build_filename(folder, "in", NULL);
	g_rmdir(inner);
	app->start.file = path;
}
END_TEST

START_TEST(a_bad_day_is_refused_beside_the_field_and_kept)
{
	type("Grey Heron");
	fill("launch", "31 feb");
	record();
	ck_assert(in_form());
	ck_assert(!there());
	ck_shows("31 feb");
	ck_shows("Grey Heron");
	fill("launch", "15 oct");
	record();
	ck_shows("on the same day");
	ck_assert(!there());
	fill("launch", "");
	record();
	ck_shows("both days, or neither");
	ck_assert(!there());
}
END_TEST

START_TEST(without_days_it_is_in_all_the_year_where_it_lies)
{
	type("Grey Heron");
	into("berth");
	key('a');
	key('a');
	fill("launch", "");
	fill("haul-out", "");
	ck_will("afloat in fresh water all the year");
	record();
	ck_assert(!in_form());
	ck_assert_int_eq(app->boat.launch, 101);
	ck_assert_int_eq(app->boat.haul_out, 1231);
	ck_assert_int_eq(app->boat.winter, STAND_AFLOAT);
	ck_shows("afloat");
}
END_TEST

START_TEST(unknown_hours_stay_unknown)
{
	struct engine e;

	type("Grey Heron");
	fill("hours", "unknown");
	ck_will("main, hours unknown, no meter");
	record();
	e = engine(0);
	ck_assert_str_eq(e.name, "main");
	ck_assert_int_eq(e.hours, NONE);
	record_clear(RECORD_ENGINE, &e);
	ck_shows("hours unknown");
}
END_TEST

START_TEST(twins_have_a_figure_each)
{
	struct engine port, starboard;

	type("Two of them");
	fill("engines", "port, starboard");
	fill("meter", "412,5, none");
	fill("hours", "unknown; 398");
	ck_will("port 412.5 h; starboard 398 h, no meter");
	record();
	port = engine(0);
	starboard = engine(1);
	ck_assert_str_eq(port.name, "port");
	ck_assert_str_eq(starboard.name, "starboard");
	ck_assert_int_eq(port.hours, (gint64)(412.5 * H));
	ck_assert_int_eq(starboard.hours, 398 * H);
	record_clear(RECORD_ENGINE, &port);
	record_clear(RECORD_ENGINE, &starboard);
}
END_TEST

START_TEST(what_makes_no_sense_of_engines_is_refused)
{
	static const struct { const char *engines, *meter, *hours, *says; } bad[] = {
		{ "", "", "", "a name for each engine" },
		{ "main main", "", "", "two engines are called main" },
		{ "main", "412 398", "", "more readings than engines" },
		{ "main", "", "412 398", "more figures than engines" },
		{ "main", "4h75", "", "75" },
		{ "a b c d e f g", "", "", "at most 6" },
	};

	type("Grey Heron");
	fill("engines", bad[_i].engines);
	fill("meter", bad[_i].meter);
	fill("hours", bad[_i].hours);
	record();
	ck_assert(in_form());
	ck_assert(!there());
	ck_shows(bad[_i].says);
}
END_TEST

START_TEST(a_boat_is_not_built_tomorrow)
{
	type("Grey Heron");
	fill("built", "2027");
	record();
	ck_shows("a year from 1800 to 2026");
	ck_assert(!there());
	fill("built", "1994");
	record();
	ck_assert_int_eq(app->boat.built, 1994);
}
END_TEST

START_TEST(left_without_a_logbook_it_can_be_opened_again_and_q_ends)
{
	type("Grey");
	key(K_ESC);
	ck_assert(!in_form());
	ck_assert(!there());
	ck_shows("There is no logbook here yet");
	key(K_ENTER);
	ck_assert(in_form());
	ck_shows("Grey");
	key(K_ESC);
	key('q');
	ck_assert_int_eq(app->wish, WISH_QUIT);
}
END_TEST

START_TEST(a_logbook_that_came_meanwhile_is_not_overwritten)
{
	g_autofree char *was = NULL, *is = NULL;
	gsize n, m;

	open_plain("Other");
	g_clear_pointer(&book, book_close);
	ck_assert(g_file_get_contents(path, &was, &n, NULL));
	type("Grey Heron");
	record();
	ck_assert(in_form());
	ck_assert_str_eq(form_text(app_data(app), "name"), "Grey Heron");
	ck_assert(g_file_get_contents(path, &is, &m, NULL));
	ck_assert(n == m && !memcmp(was, is, n));
}
END_TEST

START_TEST(a_catalogue_that_cannot_be_read_leaves_no_file)
{
	g_autofree char *bad = g_build_filename(folder, "catalogue", NULL), *rates = g_build_filename(bad, "rates.csv", NULL);

	ck_assert_int_eq(g_mkdir(bad, 0700), 0);
	ck_assert(g_file_set_contents(rates, "name,value\nno,such\n", -1, NULL));
	app->start.data = folder;
	type("Grey Heron");
	record();
	ck_assert(in_form());
	ck_assert_str_eq(form_text(app_data(app), "name"), "Grey Heron");
	ck_assert(!there());
	ck_assert_ptr_null(app->book);
	g_remove(rates);
	g_rmdir(bad);
}
END_TEST

START_TEST(one_more_boat_becomes_the_boat_that_is_shown)
{
	key('8');
	key('a');
	ck_shows("One more boat");
	type("Grey Heron");
	record();
	ck_assert(in_form());
	ck_shows("this logbook has a Grey Heron already");
	fill("name", "Dinghy");
	into("kind");
	key('o');
	record();
	ck_assert(!in_form());
	ck_assert_str_eq(app->boat.name, "Dinghy");
	ck_assert_int_eq(app->boat.kind, KIND_OUTBOARD);
	ck_assert_int_eq(app->n_boats, 2);
}
END_TEST

START_TEST(the_form_is_as_it_was_looked_at)
{
	type("Grey Heron");
	for (int k = 0; k < GOLDENS; k++)
		same_screen("form-first", &goldens[k]);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("A new boat, from the screens");
	TCase *empty = tcase_create("over nothing"), *demo = tcase_create("over the demo");

	tcase_add_checked_fixture(empty, empty_begin, app_end);
	tcase_set_timeout(empty, 60);
	tcase_add_test(empty, a_name_and_enter_enter_make_a_logbook);
	tcase_add_test(empty, its_folder_is_made_for_the_owner_alone);
	tcase_add_test(empty, a_bad_day_is_refused_beside_the_field_and_kept);
	tcase_add_test(empty, without_days_it_is_in_all_the_year_where_it_lies);
	tcase_add_test(empty, unknown_hours_stay_unknown);
	tcase_add_test(empty, twins_have_a_figure_each);
	tcase_add_loop_test(empty, what_makes_no_sense_of_engines_is_refused, 0, 6);
	tcase_add_test(empty, a_boat_is_not_built_tomorrow);
	tcase_add_test(empty, left_without_a_logbook_it_can_be_opened_again_and_q_ends);
	tcase_add_test(empty, a_logbook_that_came_meanwhile_is_not_overwritten);
	tcase_add_test(empty, a_catalogue_that_cannot_be_read_leaves_no_file);
	tcase_add_test(empty, the_form_is_as_it_was_looked_at);
	suite_add_tcase(s, empty);
	tcase_add_checked_fixture(demo, demo_begin, app_end);
	tcase_set_timeout(demo, 60);
	tcase_add_test(demo, one_more_boat_becomes_the_boat_that_is_shown);
	suite_add_tcase(s, demo);
	return run_suite(s);
}
