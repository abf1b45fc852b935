/* The boats of a logbook. */
#include "screens.h"

static void
two_begin(void)
{
	setup();
	open_plain("Grey Heron");
	open_plain("Dinghy");
	g_clear_pointer(&book, book_close);
	app_begin();
}

static gboolean
in_list(void)
{
	return app->view[app->depth - 1].kind == &view_boats;
}

START_TEST(of_several_boats_it_asks_which)
{
	ck_assert(in_list());
	ck_shows("Grey Heron");
	ck_shows("Dinghy");
	ck_shows("jet, trailer in fresh water");
}
END_TEST

START_TEST(enter_makes_it_the_boat_of_all_views)
{
	find("dinghy");
	key(K_ENTER);
	ck_assert(app->view[app->depth - 1].kind == &view_due);
	ck_assert_str_eq(app->boat.name, "Dinghy");
	ck_shows(" Dinghy");
	key('8');
	find("heron");
	key(K_ENTER);
	ck_assert_str_eq(app->boat.name, "Grey Heron");
	ck_hides("Dinghy");
}
END_TEST

START_TEST(the_boat_that_is_shown_is_said_and_selected)
{
	find("dinghy");
	key(K_ENTER);
	key('8');
	ck_shows("> Dinghy");
	ck_shows("shown now");
	key(K_ENTER);
	ck_assert_str_eq(app->boat.name, "Dinghy");
	key('8');
	find("heron");
	key(K_ENTER);
	key('8');
	ck_shows("> Grey Heron");
}
END_TEST

START_TEST(esc_leaves_the_boat_as_it_was)
{
	g_autofree char *name = g_strdup(app->boat.name);

	key(K_DOWN);
	key(K_ESC);
	ck_assert(!in_list());
	ck_assert_str_eq(app->boat.name, name);
}
END_TEST

START_TEST(one_more_boat_is_asked_for)
{
	key('a');
	ck_shows("One more boat");
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Boats");
	TCase *tc = tcase_create("boats");

	tcase_add_checked_fixture(tc, two_begin, app_end);
	tcase_set_timeout(tc, 60);
	tcase_add_test(tc, of_several_boats_it_asks_which);
	tcase_add_test(tc, enter_makes_it_the_boat_of_all_views);
	tcase_add_test(tc, the_boat_that_is_shown_is_said_and_selected);
	tcase_add_test(tc, esc_leaves_the_boat_as_it_was);
	tcase_add_test(tc, one_more_boat_is_asked_for);
	suite_add_tcase(s, tc);
	return run_suite(s);
}
