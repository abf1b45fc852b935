/* The strip-down list as it is typed with greasy hands: understood, written, repeated, taken from what is offered, corrected. */
#include "jobs.h"

static void
begin(void)
{
	demo_begin();
	drive_off();
	to_side(FACE_OFF);
}

START_TEST(what_is_typed_is_understood_below_written_by_enter_and_the_next_can_be_typed)
{
	int before = lines();

	key('a');
	type("6 bolts 5/8 tray 2");
	ck_shows("6 bolts; fastener, size 5/8 in, tray 2, goes back");
	ck_assert_int_eq(lines(), before);
	key(K_ENTER);
	ck_assert_int_eq(lines(), before + 1);
	ck_assert_str_eq(last_line()->what, "bolts");
	ck_assert_int_eq(last_line()->count, 6);
	ck_assert_str_eq(last_line()->tray, "tray 2");
	ck_assert(in_line());
	type("2 washers");
	key(K_ENTER);
	ck_assert_int_eq(lines(), before + 2);
	key(K_ESC);
	ck_assert(!in_line());
	key('u');
	ck_assert_int_eq(lines(), before + 1);
}
END_TEST

START_TEST(the_drive_says_that_it_is_off_and_what_follows_does_not)
{
key('a');
type("6 nuts tray 2");
key(K_ENTER);
ck_hides("DRIVE OFF");
type("drive unit");
key(K_ENTER);
ck_shows("DRIVE OFF");
type("water-passage O-ring");
key(K_ENTER);
ck_hides("DRIVE OFF");
}
END_TEST

START_TEST(another_count_than_usual_is_said)
{
key('a');
type("5 mounting nuts 5/8");
key(K_ENTER);
ck_shows("USUAL ARE 6");
}
END_TEST

START_TEST(one_key_repeats_the_last_line)
{
	int before;

	off("6 bolts 5/8 tray 2 renew");
	before = lines();
	key('=');
	ck_assert_int_eq(lines(), before + 1);
	ck_assert_str_eq(last_line()->what, "bolts");
	ck_assert_str_eq(last_line()->size, "5/8 in");
	ck_assert_str_eq(last_line()->tray, "tray 2");
	ck_assert_int_eq(last_line()->count, 6);
	ck_assert_int_eq(last_line()->state, REMOVAL_RENEW);
}
END_TEST

START_TEST(an_equals_sign_before_a_line_repeats_all_that_the_line_does_not_say)
{
	off("6 bolts 5/8 tray 2");
	off("= tray 3");
	ck_assert_str_eq(last_line()->what, "bolts");
	ck_assert_str_eq(last_line()->tray, "tray 3");
	ck_assert_int_eq(last_line()->count, 6);
	off("=");
	ck_assert_str_eq(last_line()->tray, "tray 3");
}
END_TEST

START_TEST(one_key_takes_what_is_offered_next)
{
	const struct job_offer *first = job_offer_at(sheet(), 0), *second = job_offer_at(sheet(), 1);
	g_autofree char *what = g_strdup(first->what), *then = g_strdup(second->what);

	key('t');
	ck_assert_str_eq(last_line()->what, what);
	key('t');
	ck_assert_str_eq(last_line()->what, then);
	ck_assert(job_offer_at(sheet(), 0)->taken);
	ck_assert(job_offer_at(sheet(), 1)->taken);
}
END_TEST

START_TEST(tab_takes_what_is_offered_but_for_what_was_typed)
{
	g_autofree char *second = g_strdup(job_offer_at(sheet(), 1)->what);

	key('a');
	key(K_DOWN);
	ck_shows(second);
	type("2x tray 7");
	key(K_TAB);
	ck_assert_str_eq(last_line()->what, second);
	ck_assert_int_eq(last_line()->count, 2);
	ck_assert_str_eq(last_line()->tray, "tray 7");
	ck_assert(in_line());
}
END_TEST

START_TEST(every_offer_can_be_taken_and_then_none_is)
{
	int all = (int)sheet()->offers->len, before = lines();

	ck_assert_int_gt(all, 5);
	key('a');
	for (int i = 0; i < all; i++)
		key(K_TAB);
	ck_assert_int_eq(lines(), before + all);
	key(K_TAB);
	ck_shows("nothing is offered");
	ck_assert_int_eq(lines(), before + all);
}
END_TEST

START_TEST(a_path_behind_an_at_sign_is_a_file_of_the_line)
{
	g_autofree char *photo = g_build_filename(folder, "two words.jpg", NULL),
			*line = g_strdup_printf("6 bolts tray 2 @'%s'", photo);
	g_autoptr(GArray) files = NULL;

	ck_assert(g_file_set_contents(photo, "a picture", -1, NULL));
	key('a');
	type(line);
	ck_shows("6 bolts; fastener, tray 2, goes back");
	key(K_ENTER);
	files = book_removal_files(app->book, last_line()->id, NULL);
	ck_assert_int_eq((int)files->len, 1);
	ck_assert_str_eq(((const struct photo *)(const void *)files->data)[0].path, photo);
	g_clear_pointer(&files, g_array_unref);
	key('@'); /* alone: of the line that was written last */
	type(photo);
	key(K_ENTER);
	files = book_removal_files(app->book, last_line()->id, NULL);
	ck_assert_int_eq((int)files->len, 2);
}
END_TEST

START_TEST(a_file_that_is_not_there_is_said_and_what_was_typed_stays)
{
	int before = lines();

	key('a');
	type("6 bolts tray 2 @/nowhere/at/all.jpg");
	key(K_ENTER);
	ck_assert_int_eq(lines(), before);
	ck_shows("/nowhere/at/all.jpg");
	ck_assert(in_line());
	for (int i = 0; i < 22; i++)
		key(K_BACKSPACE);
	key(K_ENTER);
	ck_assert_int_eq(lines(), before + 1);
}
END_TEST

START_TEST(how_things_stood_is_written_down_one_after_the_other)
{
	ck_assert_int_eq(selected_line()->no, 1);
	key(K_ENTER);
	ck_assert(in_line());
	type("3/8 in proud");
	key(K_ENTER);
	ck_assert_str_eq(line_no(1)->as_found, "3/8 in proud");
	ck_assert_int_eq(selected_line()->no, 2);
	key(K_DOWN); /* passes the second over */
	type("neutral");
	key(K_ENTER);
	ck_assert_ptr_null(line_no(2)->as_found);
	ck_assert_str_eq(line_no(3)->as_found, "neutral");
	ck_assert_int_eq(selected_line()->no, 4);
	key(K_ESC);
	find("Trim angle");
	key('e'); /* what was found stands there, to be changed */
	type(" by the rule");
	key(K_ENTER);
	ck_assert_str_eq(line_no(1)->as_found, "3/8 in proud by the rule");
}
END_TEST

START_TEST(after_the_last_setting_the_line_closes)
{
	int unwritten = 0;

	for (int i = 0; i < lines(); i++)
		unwritten += job_removal_at(sheet(), i)->kind == REMOVAL_SETTING;
	key(K_ENTER);
	for (int i = 0; i < unwritten; i++) {
		ck_assert(in_line());
		type("as usual");
		key(K_ENTER);
	}
	ck_assert(!in_line());
	ck_assert_int_eq(job_next_unwritten(sheet(), 0), -1);
	ck_hides("TO WRITE");
}
END_TEST

START_TEST(a_line_is_corrected_and_what_is_not_said_stays)
{
	off("6 bolts 5/8 tray 2");
	key('e');
	type("5 tray 3");
	key(K_ENTER);
	ck_assert(!in_line());
	ck_assert_str_eq(last_line()->what, "bolts");
	ck_assert_int_eq(last_line()->count, 5);
	ck_assert_str_eq(last_line()->size, "5/8 in");
	ck_assert_str_eq(last_line()->tray, "tray 3");
	key('u');
	ck_assert_int_eq(last_line()->count, 6);
}
END_TEST

START_TEST(a_line_is_dropped_and_u_brings_it_back)
{
	int before;

	off("6 bolts 5/8 tray 2");
	before = lines();
	key('x');
	ck_assert_int_eq(lines(), before - 1);
	key('u');
	ck_assert_int_eq(lines(), before);
	ck_assert_str_eq(last_line()->what, "bolts");
}
END_TEST

START_TEST(what_was_typed_and_left_is_there_again)
{
	key('a');
	type("6 bolts 5/8");
	key(K_ESC);
	key('a');
	ck_shows("off> 6 bolts 5/8");
	type(" tray 2");
	key(K_ENTER);
	ck_assert_str_eq(last_line()->tray, "tray 2");
	key(K_ESC);
	key('a');
	ck_hides("6 bolts 5/8 tray 2; fastener");
}
END_TEST

START_TEST(nothing_and_nonsense_write_nothing)
{
	int before = lines();

	key('a');
	key(K_ENTER);
	ck_shows("nothing is typed");
	type("   ");
	key(K_ENTER);
	type("= ");
	key(K_CTRL('u'));
	type("5/8");
	key(K_ENTER);
	ck_assert(in_line());
	ck_assert_int_eq(lines(), before);
}
END_TEST

START_TEST(a_pasted_line_end_writes_nothing)
{
	int before = lines();

	key('a');
	key(K_PASTE);
	type("6 bolts");
	key(K_ENTER);
	type("x");
	key(K_PASTE_END);
	ck_assert_int_eq(lines(), before);
	ck_shows("off> 6 boltsx");
}
END_TEST

START_TEST(a_retainer_without_a_count_is_asked_for_it)
{
	off("split pin of the bellcrank");
	key('a');
	type("split pin of the lever");
	key(K_ENTER);
	ck_shows("HOW MANY?");
}
END_TEST

START_TEST(what_is_missing_holds_the_launch)
{
	key('a');
	type("split pin of the bellcrank missing");
	key(K_ENTER);
	ck_shows("HOLDS THE LAUNCH");
	key(K_ESC);
	ck_assert_int_eq(last_line()->state, REMOVAL_MISSING);
	ck_shows("MISSING");
	key('0');
	ck_shows("split pin of the bellcrank");
}
END_TEST

START_TEST(f1_shows_the_keys_of_the_line_and_it_is_still_there)
{
	key('a');
	type("6 bolts");
	key(K_F1);
	ck_shows("Take what is offered");
	key(K_ESC);
	ck_shows("off> 6 bolts");
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("job_line");
	TCase *tc = tcase_create("typing");

	tcase_add_checked_fixture(tc, begin, app_end);
	tcase_set_timeout(tc, 60);
	tcase_add_test(tc, what_is_typed_is_understood_below_written_by_enter_and_the_next_can_be_typed);
	tcase_add_test(tc, the_drive_says_that_it_is_off_and_what_follows_does_not);
	tcase_add_test(tc, another_count_than_usual_is_said);
	tcase_add_test(tc, one_key_repeats_the_last_line);
	tcase_add_test(tc, an_equals_sign_before_a_line_repeats_all_that_the_line_does_not_say);
	tcase_add_test(tc, one_key_takes_what_is_offered_next);
	tcase_add_test(tc, tab_takes_what_is_offered_but_for_what_was_typed);
	tcase_add_test(tc, every_offer_can_be_taken_and_then_none_is);
	tcase_add_test(tc, a_path_behind_an_at_sign_is_a_file_of_the_line);
	tcase_add_test(tc, a_file_that_is_not_there_is_said_and_what_was_typed_stays);
	tcase_add_test(tc, how_things_stood_is_written_down_one_after_the_other);
	tcase_add_test(tc, after_the_last_setting_the_line_closes);
	tcase_add_test(tc, a_line_is_corrected_and_what_is_not_said_stays);
	tcase_add_test(tc, a_line_is_dropped_and_u_brings_it_back);
	tcase_add_test(tc, what_was_typed_and_left_is_there_again);
	tcase_add_test(tc, nothing_and_nonsense_write_nothing);
	tcase_add_test(tc, a_pasted_line_end_writes_nothing);
	tcase_add_test(tc, a_retainer_without_a_count_is_asked_for_it);
	tcase_add_test(tc, what_is_missing_holds_the_launch);
	tcase_add_test(tc, f1_shows_the_keys_of_the_line_and_it_is_still_there);
	suite_add_tcase(s, tc);
	return run_suite(s);
}
