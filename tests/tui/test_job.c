/* A job on the screen: begun, carried for, worked at, put back, rested, closed. */
#include "jobs.h"

#include "logbook/finding.h"

static void
two_lines(void)
{
	drive_off();
	off("6 nuts 5/8 tray 2");
	off("2 cotters tray 3");
}

/* ---- the beginning ---- */

START_TEST(the_cautions_come_before_the_work_once_a_day)
{
	key('J');
	key('a');
	pick("Take the drive off");
	key(K_ENTER);
	key(K_ENTER);
	ck_shows("before the work");
	key(K_ESC);
	ck_shows("OPEN");
	key(K_ENTER);
	ck_shows("before the work");
	key(K_ENTER);
	ck_shows("UNDER WAY");
	key(K_ESC);
	key(K_ENTER);
	ck_hides("before the work");
	ck_shows("[Carry");
}
END_TEST

START_TEST(templates_that_are_ticked_together_become_one_job)
{
	key('J');
	key('a');
	pick("Take the drive off");
	pick("Check the shift linkage");
	ck_shows("2 ticked");
	key(K_ENTER);
	ck_shows("Take the drive off and put it back; Check the shift linkage");
	key(K_ENTER);
	key(K_ENTER);
	ck_assert_str_eq(sheet()->job.template, "drive-off linkage-and-retainers");
}
END_TEST

START_TEST(the_task_under_the_cursor_begins_a_job_with_the_templates_that_do_it_first)
{
	find("U-joint bellows: renew");
	key('J');
	ck_shows("FOR U-joint bellows: renew");
	find("a new job for it");
	key(K_ENTER);
	ck_shows("TEMPLATES THAT DO IT");
	ck_shows("1 ticked");
	key(K_ENTER);
	key(K_ENTER);
	ck_assert_int_eq((int)sheet()->aims->len, 1);
	ck_assert_str_eq(job_aim_at(sheet(), 0)->name, "bellows-ujoint.renew");
}
END_TEST

START_TEST(the_task_under_the_cursor_goes_into_a_job_that_is_open)
{
	guint before;

	drive_off();
	before = sheet()->aims->len;
	key('1');
	find("U-joint bellows: renew");
	key('J');
	ck_shows("> drive-off-2026");
	key(K_DOWN);
	key(K_DOWN);
	ck_shows("> into drive-off-2026");
	key(K_ENTER);
	ck_assert_int_eq((int)sheet()->aims->len, (int)before + 1);
	key('1');
	key('J');
	ck_hides("into drive-off-2026");
}
END_TEST

START_TEST(a_finding_begins_a_job)
{
	key('9');
	key('a');
	fill("on", "gimbal bearing");
	fill("words", "growls in turns");
	record();
	key('J');
	ck_shows("FOR growls in turns");
	find("a new job for it");
	key(K_ENTER);
	ck_shows("1 ticked");
	key(K_ENTER);
	key(K_ENTER);
	ck_assert_int_eq((int)sheet()->aims->len, 1);
	ck_assert_int_ne(job_aim_at(sheet(), 0)->aim.finding, NONE);
}
END_TEST

START_TEST(a_job_of_ones_own_words_wants_some)
{
	key('J');
	key('a');
	find("own words");
	key(K_ENTER);
	ck_assert(in_form());
	record();
	ck_shows("what is done?");
	fill("title", "find the leak in the bow");
	record();
	ck_assert(!in_form());
	ck_assert_str_eq(sheet()->job.name, "find-the-leak-in-the-bow-2026");
}
END_TEST

START_TEST(a_job_whose_opening_was_taken_back_says_so)
{
	drive_off();
	key('u'); /* that the cautions were read is no entry to be taken back, or is one more */
	if (job_shown(app)->sheet)
		key('u');
	ck_shows("not in the log any more");
	key(K_TAB);
	key('a');
	key('c');
	key(K_CTRL('r'));
	ck_shows("UNDER WAY");
}
END_TEST

START_TEST(an_open_job_is_said_at_the_start)
{
	g_autoptr(GError) err = NULL;

	drive_off();
	app_free(app);
	app = app_new(&start, 24, 80, FALSE, &err);
	app_draw(app, grid);
	ck_shows(": J ");
	key('J');
	key(K_ENTER);
	ck_shows("drive-off-2026: Take the drive off");
}
END_TEST

/* ---- the sides ---- */

START_TEST(tab_turns_the_four_sides_and_shift_tab_turns_them_back)
{
	static const char *const shown[] = { "[Carry", "[Work", "[Strip-down", "[Refit" };

	drive_off();
	for (int i = 0; i < 4; i++) {
		ck_shows(shown[i]);
		key(K_TAB);
	}
	ck_shows(shown[0]);
	key(K_BACKTAB);
	ck_shows(shown[3]);
}
END_TEST

START_TEST(what_is_to_be_carried_begins_with_the_cautions_and_is_ticked)
{
	drive_off();
	ck_shows("> CAUTION");
	find("Mirror and light");
	key(' ');
	ck_shows("at hand");
	for (int i = 0; i < (int)sheet()->steps->len; i++)
		if (!strcmp(job_step_at(sheet(), i)->text, "Mirror and light"))
			ck_assert_int_eq(job_step_at(sheet(), i)->done, app_today(app));
	ck_shows("[x] have");
}
END_TEST

START_TEST(what_is_due_behind_the_same_opening_is_taken_in)
{
	guint before;

	drive_off();
	before = sheet()->aims->len;
	ck_assert_int_gt((int)sheet()->while_open->len, 0);
	key(K_END);
	key(K_ENTER);
	ck_assert_int_eq((int)sheet()->aims->len, (int)before + 1);
}
END_TEST

START_TEST(steps_are_ticked_one_after_the_other)
{
	drive_off();
	to_side(FACE_WORK);
	key(K_ENTER);
	key(K_ENTER);
	ck_assert_int_eq(job_step_at(sheet(), job_selected(job_shown(app))->at)->no, 3);
	ck_shows("[Work 2/");
	key('p');
	ck_assert(in_form());
	record();
	ck_shows("a reason is wanted");
	type("no battery on board");
	record();
	ck_shows("no battery on board");
	ck_assert_int_eq(job_step_at(sheet(), job_selected(job_shown(app))->at)->no, 4);
}
END_TEST

START_TEST(a_proof_says_what_was_seen_and_without_proofs_work_does_not_count)
{
	drive_off();
	to_side(FACE_WORK);
	find("Grease the splines of the engine coupler");
	key(K_ENTER);
	ck_assert(in_form());
	ck_shows("1 of 1 proofs not seen yet");
	record();
	ck_shows("it stays due");
	ck_shows("UNPROVED");
	find("Grease seen on every tooth");
	key(K_ENTER);
	ck_assert(in_form());
	type("all round");
	record();
	find("Grease seen on every tooth");
	ck_shows("seen");
	ck_shows("all round");
	find("Grease the splines of the engine coupler");
	key('d');
	record();
	for (int i = 0; i < (int)sheet()->aims->len; i++)
		if (!strcmp(job_aim_at(sheet(), i)->name, "coupler.grease"))
			ck_assert_int_eq(job_aim_at(sheet(), i)->state, AIM_DONE);
}
END_TEST

START_TEST(a_task_is_left_undone_with_a_reason)
{
	drive_off();
	to_side(FACE_WORK);
	find("Test the trim gauge");
	key('p');
	type("sender is renewed in spring");
	record();
	ck_shows("sender is renewed in spring");
	for (int i = 0; i < (int)sheet()->aims->len; i++)
		if (!strcmp(job_aim_at(sheet(), i)->name, "trim.sender"))
			ck_assert_int_eq(job_aim_at(sheet(), i)->state, AIM_UNDONE);
}
END_TEST

/* ---- the refit ---- */

START_TEST(the_refit_begins_with_the_last_thing_off_and_goes_on_by_enter_alone)
{
	drive_off();
	off("6 nuts 5/8 tray 2");
	off("drive unit");
	to_side(FACE_REFIT);
	ck_assert_str_eq(selected_line()->what, "drive unit");
	key(K_ENTER);
	ck_shows("back: 22. drive unit");
	ck_assert_int_eq(line_no(22)->back, app_today(app));
	ck_assert_str_eq(selected_line()->what, "nuts");
	key(K_ENTER);
	ck_assert_int_eq(line_no(21)->back_count, 6);
	key('u');
	ck_assert_int_eq(line_no(21)->back, NONE);
}
END_TEST

START_TEST(retainers_are_counted_in_and_a_wrong_count_wants_a_reason)
{
	two_lines();
	to_side(FACE_REFIT);
	key(K_ENTER);
	ck_assert(in_form());
	record();
	ck_shows("counted out and in");
	fill("count", "1");
	record();
	ck_shows("2 off and 1 in: what became of the rest?");
	fill("why", "one cotter broke, its hole is empty");
	record();
	ck_assert(!in_form());
	ck_assert_int_eq(line_no(22)->back_count, 1);
	ck_assert_str_eq(line_no(22)->why, "one cotter broke, its hole is empty");
}
END_TEST

START_TEST(a_retainer_of_unknown_count_is_counted_first)
{
	drive_off();
	off("split pin of the bellcrank");
	to_side(FACE_REFIT);
	key(K_ENTER);
	ck_assert(in_line());
	ck_shows("how many came off?");
	type("2x");
	key(K_ENTER);
	ck_assert_int_eq(line_no(21)->count, 2);
}
END_TEST

START_TEST(a_figure_is_left_beside_the_one_found_and_a_change_wants_a_reason)
{
	drive_off();
	to_side(FACE_OFF);
	key(K_ENTER);
	type("3/8 in proud");
	key(K_ENTER);
	key(K_ESC);
	to_side(FACE_REFIT);
	find("Trim angle");
	key(K_ENTER);
	ck_shows("as found: 3/8 in proud");
	fill("left", "1/2 in proud");
	record();
	ck_shows("found 3/8 in proud and left 1/2 in proud: why?");
	fill("left", "=");
	ck_will("left 3/8 in proud.");
	fill("left", "1/2 in proud");
	fill("why", "set by the manual, p. 41");
	record();
	ck_assert_str_eq(line_no(1)->as_left, "1/2 in proud");
	ck_assert_str_eq(line_no(1)->why, "set by the manual, p. 41");
}
END_TEST

START_TEST(a_setting_nobody_wrote_down_wants_to_know_by_what_it_was_set)
{
	drive_off();
	to_side(FACE_REFIT);
	find("Trim angle");
	key(K_ENTER);
	fill("left", "1/2 in proud");
	record();
	ck_shows("by what was it set?");
	fill("why", "the manual, p. 41");
	record();
	ck_assert_int_eq(line_no(1)->back, app_today(app));
}
END_TEST

START_TEST(a_used_retainer_that_goes_back_is_said_and_a_new_one_is_not)
{
	two_lines();
	off("2 circlips");
	to_side(FACE_REFIT);
	key(K_ENTER);
	fill("count", "2");
	into("renewed");
	key(K_RIGHT);
	record();
	ck_hides("USED AGAIN");
	ck_assert_int_eq(line_no(23)->state, REMOVAL_RENEW);
	key(K_ENTER);
	fill("count", "2");
	record();
	ck_shows("USED AGAIN");
}
END_TEST

/* ---- resting and closing ---- */

START_TEST(a_job_rests_with_where_things_lie_and_goes_on)
{
	int before;

	two_lines();
	key('z');
	record();
	ck_shows("where do things lie?");
	type("drive in the shed");
	record();
	ck_shows("RESTS since 25 Nov 2026");
	ck_shows("Things lie: drive in the shed");
	before = lines();
	key('t');
	ck_shows("z goes on with it");
	key('=');
	key(K_ENTER);
	ck_assert_int_eq(lines(), before);
	key('q');
	ck_shows("Things lie: drive in the shed");
	key(K_ENTER);
	ck_shows("[Refit"); /* whoever comes back in spring */
	key('z');
	ck_shows("it goes on. Things lie: drive in the shed");
	ck_shows("UNDER WAY");
}
END_TEST

START_TEST(notes_are_kept_and_stand_at_the_top)
{
	drive_off();
	key('n');
	type("the stud at 4 o'clock is stripped");
	record();
	ck_assert_str_eq(sheet()->job.remark, "the stud at 4 o'clock is stripped");
	ck_shows("the stud at 4 o'clock");
}
END_TEST

START_TEST(a_job_with_anything_open_does_not_close_and_says_what)
{
	two_lines();
	key('c');
	ck_shows("It can't be closed yet");
	ck_shows("2 cotters, tray 3: not put back");
	key(K_ESC);
	ck_assert_int_eq(sheet()->job.closed, NONE);
}
END_TEST

START_TEST(a_job_with_nothing_open_closes_and_is_found_among_the_closed)
{
	key('J');
	key('a');
	find("own words");
	key(K_ENTER);
	type("find the leak");
	record();
	to_side(FACE_OFF);
	off("hatch board");
	to_side(FACE_REFIT);
	key(K_ENTER);
	ck_shows("Nothing is left open");
	key('c');
	ck_shows("CLOSED 25 Nov 2026");
	key('a');
	ck_shows("nothing more is written into it");
	key('q');
	ck_shows("CLOSED");
	find("find-the-leak");
	key(K_ENTER);
	ck_shows("CLOSED 25 Nov 2026");
	key('u');
	ck_shows("UNDER WAY");
}
END_TEST

START_TEST(what_is_off_is_said_at_the_top)
{
	two_lines();
	ck_shows("2 off");
	to_side(FACE_REFIT);
	find("nuts");
	key(K_ENTER);
	ck_shows("1 off");
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("job");
	TCase *tc = tcase_create("job");

	tcase_add_checked_fixture(tc, demo_begin, app_end);
	tcase_set_timeout(tc, 60);
	tcase_add_test(tc, the_cautions_come_before_the_work_once_a_day);
	tcase_add_test(tc, templates_that_are_ticked_together_become_one_job);
	tcase_add_test(tc, the_task_under_the_cursor_begins_a_job_with_the_templates_that_do_it_first);
	tcase_add_test(tc, the_task_under_the_cursor_goes_into_a_job_that_is_open);
	tcase_add_test(tc, a_finding_begins_a_job);
	tcase_add_test(tc, a_job_of_ones_own_words_wants_some);
	tcase_add_test(tc, a_job_whose_opening_was_taken_back_says_so);
	tcase_add_test(tc, an_open_job_is_said_at_the_start);
	tcase_add_test(tc, tab_turns_the_four_sides_and_shift_tab_turns_them_back);
	tcase_add_test(tc, what_is_to_be_carried_begins_with_the_cautions_and_is_ticked);
	tcase_add_test(tc, what_is_due_behind_the_same_opening_is_taken_in);
	tcase_add_test(tc, steps_are_ticked_one_after_the_other);
	tcase_add_test(tc, a_proof_says_what_was_seen_and_without_proofs_work_does_not_count);
	tcase_add_test(tc, a_task_is_left_undone_with_a_reason);
	tcase_add_test(tc, the_refit_begins_with_the_last_thing_off_and_goes_on_by_enter_alone);
	tcase_add_test(tc, retainers_are_counted_in_and_a_wrong_count_wants_a_reason);
	tcase_add_test(tc, a_retainer_of_unknown_count_is_counted_first);
	tcase_add_test(tc, a_figure_is_left_beside_the_one_found_and_a_change_wants_a_reason);
	tcase_add_test(tc, a_setting_nobody_wrote_down_wants_to_know_by_what_it_was_set);
	tcase_add_test(tc, a_used_retainer_that_goes_back_is_said_and_a_new_one_is_not);
	tcase_add_test(tc, a_job_rests_with_where_things_lie_and_goes_on);
	tcase_add_test(tc, notes_are_kept_and_stand_at_the_top);
	tcase_add_test(tc, a_job_with_anything_open_does_not_close_and_says_what);
	tcase_add_test(tc, a_job_with_nothing_open_closes_and_is_found_among_the_closed);
	tcase_add_test(tc, what_is_off_is_said_at_the_top);
	suite_add_tcase(s, tc);
	return run_suite(s);
}
