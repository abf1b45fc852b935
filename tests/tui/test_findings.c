/* Findings on the screen: recorded on what is selected, listed worst first, mended, and what they make due. */
#include "form_keys.h"

#include "logbook/finding.h"

/* Through the form over the selected line. */
static void
found(const char *words)
{
	key('f');
	fill("words", words);
	record();
	ck_assert(!in_form());
}

/* Whether the due list has a task for now that a finding asks for. */
static gboolean
asked(const char *task)
{
	for (int i = 0; i < due_count(app->due); i++)
		if (!strcmp(due_at(app->due, i)->name, task))
			return due_at(app->due, i)->n_found && due_at(app->due, i)->out.when == OPP_NOW;
	return FALSE;
}

START_TEST(a_finding_on_a_fitting_makes_due_what_its_rule_asks_for)
{
	key('3');
	find("drive/gear-oil");
	key('f');
	ck_assert_str_eq(form_text(app_data(app), "on"), "drive/gear-oil");
	fill("words", "milky");
	ck_will("hold: Water is in it");
	ck_will("Makes due: case-seals.pressure-test");
	ck_assert(!asked("case-seals.pressure-test"));
	record();
	ck_shows("hold: milky; due at once: case-seals.pressure-test");
	ck_assert(asked("case-seals.pressure-test"));
	key('u');
	ck_assert(!asked("case-seals.pressure-test"));
}
END_TEST

START_TEST(home_says_which_finding_asks)
{
	find("gear-oil.change");
	found("milky");
	key(K_ENTER);
	ck_shows("Asked for at once by what was found on 25 Nov 2026: milky");
}
END_TEST

START_TEST(the_list_is_worst_first_and_tells_the_selected_one)
{
	g_autofree char *frame = NULL;

	key('3');
	find("drive/propeller");
	found("one blade nicked");
	find("drive/gear-oil");
	found("milky");
	key('9');
	frame = grid_text(grid);
	ck_assert_msg(strstr(frame, "Gear oil: milky") < strstr(frame, "one blade nicked"), "%s", frame);
	key('g');
	ck_shows("hold: the boat is not launched");
	ck_shows("Makes due: case-seals.pressure-test");
}
END_TEST

START_TEST(mending_wants_words_and_is_taken_back)
{
	key('3');
	find("drive/gear-oil");
	found("milky");
	key('9');
	key('m');
	key(K_ENTER);
	ck_shows("nothing said is never good");
	fill("left", "new seals, oil clear");
	record();
	ck_shows("mended: milky; u opens it again");
	ck_shows("MENDED");
	ck_assert(!asked("case-seals.pressure-test"));
	key('m');
	ck_shows("open again: milky");
	ck_assert(asked("case-seals.pressure-test"));
	key('u');
	ck_assert(!asked("case-seals.pressure-test"));
}
END_TEST

START_TEST(a_sentence_without_a_fitting_finds_it_or_says_what_it_can_be)
{
	key('9');
	key('a');
	fill("words", "gimbal bearing rough");
	ck_will("mend: ");
	fill("words", "lamp out");
	key(K_ENTER);
	ck_shows("on what?");
	fill("on", "gimbal bearing");
	record();
	ck_shows("lamp out");
}
END_TEST

START_TEST(it_is_corrected_with_what_was_said_before)
{
	key('3');
	find("drive/gear-oil");
	found("milky");
	key('9');
	key('e');
	ck_assert_str_eq(form_text(app_data(app), "words"), "milky");
	fill("words", "milky at the top");
	record();
	ck_shows("milky at the top");
	key('x');
	ck_shows("taken out");
	ck_hides("milky at the top");
	key('u');
	ck_shows("milky at the top");
}
END_TEST

START_TEST(found_on_an_outing_has_its_day)
{
	key('2');
	key('f');
	ck_assert_str_ne(form_text(app_data(app), "date"), "2026-11-25");
	fill("on", "gimbal bearing");
	fill("words", "growls");
	record();
	key('9');
	ck_shows("On the outing of");
}
END_TEST

START_TEST(the_fitting_s_story_shows_what_was_found_on_it)
{
	key('3');
	find("drive/gear-oil");
	found("milky");
	key(K_ENTER);
	ck_shows("FOUND");
	ck_shows("25 Nov 2026, hold: milky");
}
END_TEST

START_TEST(photos_are_opened_by_the_command_and_a_file_that_is_not_there_is_refused)
{
	g_autofree char *photo = g_build_filename(folder, "oil.jpg", NULL);

	key('3');
	find("drive/gear-oil");
	key('f');
	fill("words", "milky");
	fill("photo", photo);
	record();
	ck_assert(in_form());
	ck_assert(g_file_set_contents(photo, "x", 1, NULL));
	record();
	ck_assert(!in_form());
	key('9');
	key(K_ENTER);
	ck_shows("Photo: ");
	key('q');
	key('p');
	ck_assert_int_eq(app->wish, WISH_RUN);
	ck_assert_str_eq(app->run[0], "found");
	ck_assert_str_eq(app->run[1], "--view");
}
END_TEST

static void
set_findings(void)
{
	key('3');
	find("drive/propeller");
	found("one blade nicked");
	find("drive/gear-oil");
	found("milky");
	key('9');
	key('g');
}

static void
set_form_found(void)
{
	key('3');
	find("drive/gear-oil");
	key('f');
	fill("words", "milky");
}

static const struct { const char *name; void (*set)(void); } screens[] = {
	{ "findings", set_findings },
	{ "form-found", set_form_found },
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
	Suite *s = suite_create("Findings");
	TCase *tc = tcase_create("findings");

	tcase_add_checked_fixture(tc, demo_begin, app_end);
	tcase_add_test(tc, a_finding_on_a_fitting_makes_due_what_its_rule_asks_for);
	tcase_add_test(tc, home_says_which_finding_asks);
	tcase_add_test(tc, the_list_is_worst_first_and_tells_the_selected_one);
	tcase_add_test(tc, mending_wants_words_and_is_taken_back);
	tcase_add_test(tc, a_sentence_without_a_fitting_finds_it_or_says_what_it_can_be);
	tcase_add_test(tc, it_is_corrected_with_what_was_said_before);
	tcase_add_test(tc, found_on_an_outing_has_its_day);
	tcase_add_test(tc, the_fitting_s_story_shows_what_was_found_on_it);
	tcase_add_test(tc, photos_are_opened_by_the_command_and_a_file_that_is_not_there_is_refused);
	tcase_add_loop_test(tc, a_screen_is_as_it_was_looked_at, 0, G_N_ELEMENTS(screens));
	suite_add_tcase(s, tc);
	return run_suite(s);
}
