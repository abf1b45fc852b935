#include "job_open.h"

#include "logbook/finding.h"
#include "logbook/job_template.h"
#include "logbook/photo.h"
#include "logbook/ready.h"

/* How much of that kind is left. */
static int
left_of(const struct job *job, enum job_left what)
{
	struct job_sheet *s = sheet_of(job);
	int n = 0;

	for (guint i = 0; i < s->open->len; i++)
		n += ((const struct job_open *)(const void *)s->open->data)[i].what == what;
	job_sheet_free(s);
	return n;
}

START_TEST(a_template_becomes_aims_steps_and_what_is_to_be_written_down)
{
	struct job job, second;
	struct job_sheet *s;

	start(&job, drive_off, NULL, NULL);
	ck_assert_str_eq(job.name, "drive-off-2026");
	s = sheet_of(&job);
	ck_assert(aim(s, "mounting-gasket.renew") && aim(s, "retainers.renew") && aim(s, "alignment.measure"));
	ck_assert_msg(!aim(s, "mounting-nuts.recheck"), "a recheck after the first run can't be done in the job");
	ck_assert_uint_eq(s->rechecks->len, 2);
	ck_assert_int_eq(saying(s, "rechecked") + saying(s, "checked again"), 0);
	ck_assert_int_eq(saying(s, "5/8 in or 16 mm"), 1);
	ck_assert_uint_gt(s->removals->len, 15);
	ck_assert_uint_gt(s->offers->len, 10);
	for (guint i = 0; i < s->removals->len; i++) {
		const struct removal *r = &((const struct removal *)(const void *)s->removals->data)[i];

		ck_assert(r->kind == REMOVAL_SETTING && !r->as_found && r->back == NONE);
	}
	ck_assert_msg(!job_off_count(s), "nothing came off until somebody says so");
	job_sheet_free(s);
	start(&second, drive_off, NULL, NULL);
	ck_assert_str_eq(second.name, "drive-off-2026-2");
	record_clear(RECORD_JOB, &job);
	record_clear(RECORD_JOB, &second);
}
END_TEST

START_TEST(jobs_behind_the_same_opening_join_into_one)
{
	static const char *const both[] = { "drive-off", "linkage-and-retainers", NULL };
	struct job one, joined;
	struct job_sheet *a, *b;

	start(&one, drive_off, NULL, NULL);
	start(&joined, both, NULL, NULL);
	a = sheet_of(&one);
	b = sheet_of(&joined);
	ck_assert_msg(b->access_minutes == a->access_minutes, "the drive is taken off once: %d and %d min", (int)a->access_minutes,
		      (int)b->access_minutes);
	ck_assert(b->hand_minutes > a->hand_minutes);
	ck_assert_int_eq(saying(b, "Rags"), 1);
	ck_assert_int_eq(saying(b, "each seen seated"), 1);
	ck_assert(aim(b, "linkage.grease") && !aim(a, "linkage.grease"));
	ck_assert_msg(b->while_open->len > 0, "the bearing behind the drive is offered");
	job_sheet_free(a);
	job_sheet_free(b);
	record_clear(RECORD_JOB, &one);
	record_clear(RECORD_JOB, &joined);
}
END_TEST

START_TEST(a_task_brings_its_own_proof)
{
	static const char *const tasks[] = { "gimbal-bearing.grease", NULL };
	struct job job;
	struct job_sheet *s;

	start(&job, NULL, tasks, NULL);
	s = sheet_of(&job);
	ck_assert_int_eq(aim(s, "gimbal-bearing.grease")->proofs, 1);
	job_sheet_free(s);
	ck_assert_msg(!done(&job, "gimbal-bearing.grease"), "grease that nobody saw does not count");
	ck_assert_int_eq(state_of(&job, "gimbal-bearing.grease"), AIM_UNPROVED);
	prove(&job, "gimbal-bearing.grease");
	ck_assert(done(&job, "gimbal-bearing.grease"));
	ck_assert_int_eq(state_of(&job, "gimbal-bearing.grease"), AIM_DONE);
	record_clear(RECORD_JOB, &job);
}
END_TEST

START_TEST(what_went_back_is_counted_and_as_it_was_or_told_why)
{
	struct job job;
	gint64 nuts, pins, plug, trim, washer;

	start(&job, NULL, NULL, "Odd job");
	nuts = off(&job, "6 nuts 5/8 tray 2");
	pins = off(&job, "2 cotter pins bag 3 renew");
	plug = off(&job, "drain plugs bag 1");
	trim = off(&job, "trim angle 3/8 in proud");
	washer = off(&job, "1 washer \"3/16 in thick\"");
	expect_back("6 off and 5 back", back(&job, nuts, 5, NULL, NULL));
	expect_back(NULL, back(&job, nuts, 5, NULL, "one stud stripped, a new nut is on order"));
	expect_back("closed already", back(&job, nuts, 6, NULL, NULL));
	expect_back("how many are in", back(&job, pins, NONE, NULL, NULL));
	expect_back("2 off and 3 back", back(&job, pins, 3, NULL, NULL));
	expect_back(NULL, back(&job, pins, 2, NULL, NULL));
	expect_back("how many came off is not known", back(&job, plug, 2, NULL, NULL));
	expect_back("how is it left", back(&job, trim, NONE, NULL, NULL));
	expect_back("found 3/8 in proud and left 1/2 in proud", back(&job, trim, NONE, "1/2 in proud", NULL));
	expect_back("no thing to count", back(&job, trim, 1, "3/8 in proud", NULL));
	expect_back(NULL, back(&job, trim, NONE, "3/8  IN proud", NULL));
	expect_back("how is it left", back(&job, washer, 1, NULL, NULL));
	expect_back(NULL, back(&job, washer, 1, "1/4 in thick", "a thicker one by the manual, p. 41"));
	record_clear(RECORD_JOB, &job);
}
END_TEST

START_TEST(a_line_is_repeated_and_corrected)
{
	struct removal_form again = { .line = "6 washers", .again = TRUE }, right = { .line = "5 tray 3" };
	struct job job;
	gint64 no;

	start(&job, NULL, NULL, "Odd job");
	off(&job, "6 nuts 5/8 tray 2");
	ck_assert(book_job_off(book, &job, &again, NULL));
	ck_assert_str_eq(again.what.what, "washers");
	ck_assert_str_eq(again.what.size, "5/8 in");
	ck_assert_str_eq(again.what.tray, "tray 2");
	no = again.what.no;
	removal_form_clear(&again);
	ck_assert(book_find_removal(book, &job, no == 2 ? "2" : "?", &right.what, NULL));
	ck_assert(book_job_correct(book, &job, &right, NULL));
	ck_assert_int_eq(right.what.count, 5);
	ck_assert_str_eq(right.what.what, "washers");
	ck_assert_str_eq(right.what.tray, "tray 3");
	removal_form_clear(&right);
	record_clear(RECORD_JOB, &job);
}
END_TEST

START_TEST(a_retainer_that_went_back_used_is_not_renewed)
{
	struct job job;
	gint64 pins;

	start(&job, drive_off, NULL, NULL);
	pins = off(&job, "2 cotter pins of the shift joint bag 3");
	expect_back(NULL, back(&job, pins, 2, NULL, NULL));
	prove(&job, "retainers.renew");
	ck_assert(!done(&job, "retainers.renew"));
	ck_assert_int_eq(state_of(&job, "retainers.renew"), AIM_UNPROVED);
	record_clear(RECORD_JOB, &job);
}
END_TEST

START_TEST(what_is_missing_or_left_over_holds_the_launch_until_it_is_put_right)
{
	struct removal_form over = { .line = "2 washers 3/8", .left_over = TRUE };
	g_autoptr(GArray) found = NULL;
	g_autofree char *key = NULL;
	struct job job;

	start(&job, drive_off, NULL, NULL);
	off(&job, "1 retainer shift pin missing");
	ck_assert(book_job_off(book, &job, &over, NULL));
	removal_form_clear(&over);
	found = book_findings(book, boat.id, FALSE, NULL);
	ck_assert_uint_eq(found->len, 2);
	for (guint i = 0; i < found->len; i++)
		ck_assert_int_eq(((const struct finding *)(const void *)found->data)[i].level, LEVEL_HOLD);
	key = book_key_text(((const struct finding *)(const void *)found->data)[0].id);
	ck_assert_int_eq(state_of(&job, key), AIM_OPEN);
	done(&job, key);
	ck_assert_int_eq(state_of(&job, key), AIM_DONE);
	record_clear(RECORD_JOB, &job);
}
END_TEST

static gboolean
holds(const char *title)
{
	struct ready *r = book_ready(book, &boat, who.today, NULL);
	gboolean holding = FALSE;

	for (int i = 0; i < ready_count(r); i++) {
		const struct ready_item *item = ready_at(r, i);

		holding |= item->ground == READY_JOB && item->group == READY_HOLDS && !strcmp(item->words, title);
	}
	ready_free(r);
	return holding;
}

START_TEST(it_rests_for_a_winter_and_closes_when_nothing_is_left)
{
	struct job job, found;
	g_autoptr(GError) err = NULL;
	gint64 nuts;

	start(&job, NULL, NULL, "Odd job");
	ck_assert(!holds("Odd job"));
	nuts = off(&job, "6 nuts 5/8 tray 2");
	ck_assert(holds("Odd job"));
	ck_assert(!book_job_pause(book, &job, " ", NULL));
	ck_assert(book_job_pause(book, &job, "drive in the shed", NULL));
	ck_assert(holds("Odd job"));
	expect_back("rests", back(&job, nuts, 6, NULL, NULL));
	ck_assert(!book_job_close(book, &job, NULL));
	reopen(BOOK_WRITE);
	ck_assert(book_find_job(book, boat.id, NULL, &found, NULL));
	ck_assert_str_eq(found.place, "drive in the shed");
	ck_assert(book_job_resume(book, &found, NULL));
	ck_assert(!book_job_close(book, &found, &err));
	ck_assert_msg(strstr(err->message, "6 nuts 5/8 in, tray 2: not put back") != NULL, "%s", err->message);
	expect_back(NULL, back(&found, nuts, 6, NULL, NULL));
	ck_assert(book_job_close(book, &found, NULL));
	ck_assert(!holds("Odd job"));
	ck_assert(!book_job_resume(book, &found, NULL));
	record_clear(RECORD_JOB, &found);
	record_clear(RECORD_JOB, &job);
}
END_TEST

START_TEST(an_aim_left_undone_wants_a_reason_and_takes_its_proofs_with_it)
{
	static const char *const tasks[] = { "gimbal-bearing.grease", NULL };
	struct job job;

	start(&job, NULL, tasks, NULL);
	ck_assert(!book_job_undone(book, &job, "gimbal", "", NULL));
	ck_assert(!book_job_undone(book, &job, "nonsense", "no time", NULL));
	ck_assert(!book_job_close(book, &job, NULL));
	ck_assert(book_job_undone(book, &job, "gimbal", "no grease gun", NULL));
	ck_assert(book_job_close(book, &job, NULL));
	record_clear(RECORD_JOB, &job);
}
END_TEST

START_TEST(steps_are_ticked_together_but_proofs_one_by_one)
{
	struct job job;
	struct job_sheet *s;
	g_autoptr(GArray) steps = g_array_new(FALSE, FALSE, sizeof(gint64));
	g_autoptr(GError) err = NULL;
	gint64 proof = NONE, wrong[2];

	start(&job, drive_off, NULL, NULL);
	s = sheet_of(&job);
	for (guint i = 0; i < s->open->len; i++) {
		const struct job_open *o = &((const struct job_open *)(const void *)s->open->data)[i];

		if (o->what == LEFT_STEP)
			g_array_append_val(steps, o->no);
		proof = o->what == LEFT_PROOF ? o->no : proof;
	}
	job_sheet_free(s);
	ck_assert_uint_gt(steps->len, 20);
	wrong[0] = g_array_index(steps, gint64, 0);
	wrong[1] = proof;
	ck_assert(!book_job_step_each(book, &job, wrong, 2, NULL, &err));
	ck_assert_msg(strstr(err->message, "is a proof") != NULL, "%s", err->message);
	wrong[1] = 9999;
	ck_assert(!book_job_step_each(book, &job, wrong, 2, NULL, NULL));
	ck_assert_int_eq(left_of(&job, LEFT_STEP), (int)steps->len);
	ck_assert(book_job_step_each(book, &job, (const gint64 *)(const void *)steps->data, steps->len - 1, NULL, NULL));
	ck_assert_int_eq(left_of(&job, LEFT_STEP), 1);
	ck_assert(book_job_skip_step(book, &job, g_array_index(steps, gint64, steps->len - 1), "no need", NULL));
	ck_assert_int_eq(left_of(&job, LEFT_STEP), 0);
	record_clear(RECORD_JOB, &job);
}
END_TEST

START_TEST(a_file_is_known_by_its_bytes)
{
	g_autofree char *file = g_build_filename(folder, "note.ogg", NULL);
	const char *const files[] = { file, NULL }, *const none[] = { "/nowhere/at/all.jpg", NULL };
	struct removal_form f = { .line = "6 nuts", .files = files }, bad = { .line = "6 nuts", .files = none };
	g_autoptr(GArray) kept = NULL;
	struct job job;

	ck_assert(g_file_set_contents(file, "sound", -1, NULL));
	start(&job, NULL, NULL, "Odd job");
	ck_assert(book_job_off(book, &job, &f, NULL));
	kept = book_removal_files(book, f.what.id, NULL);
	ck_assert_uint_eq(kept->len, 1);
	ck_assert_int_eq(photo_state((const struct photo *)(const void *)kept->data), PHOTO_AS_IT_WAS);
	ck_assert_msg(!book_job_off(book, &job, &bad, NULL), "a file that is not there is refused, and its line with it");
	ck_assert(book_job_drop(book, &job, &f.what, NULL));
	removal_form_clear(&bad);
	removal_form_clear(&f);
	record_clear(RECORD_JOB, &job);
	g_remove(file);
}
END_TEST

START_TEST(every_shipped_template_can_be_begun_on_its_boats)
{
	g_autoptr(GError) err = NULL;
	struct job_templates *t = book_job_templates(book, &err);
	int n = 0;

	ck_assert_msg(t != NULL, "%s", err ? err->message : "?");
	for (guint i = 0; i < job_templates_count(t); i++) {
		const char *const one[] = { job_template_at(t, i)->name, NULL };
		struct job job;
		struct job_sheet *s;

		if (!job_template_fits(job_template_at(t, i), boat.kind))
			continue;
		start(&job, one, NULL, NULL);
		s = sheet_of(&job);
		ck_assert_msg(s->aims->len > 0 && s->steps->len > 0, "%s is for nothing", one[0]);
		for (guint k = 0; k < s->aims->len; k++) {
			const struct job_aim *a = &((const struct job_aim *)(const void *)s->aims->data)[k];

			ck_assert_msg(a->state == AIM_OPEN, "%s: %s", one[0], a->name);
		}
		job_sheet_free(s);
		record_clear(RECORD_JOB, &job);
		n++;
	}
	ck_assert_int_gt(n, 10);
	job_templates_free(t);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("job");
	TCase *tc = tcase_create("jobs");

	tcase_add_checked_fixture(tc, setup_boat, teardown);
	tcase_add_test(tc, a_template_becomes_aims_steps_and_what_is_to_be_written_down);
	tcase_add_test(tc, jobs_behind_the_same_opening_join_into_one);
	tcase_add_test(tc, a_task_brings_its_own_proof);
	tcase_add_test(tc, what_went_back_is_counted_and_as_it_was_or_told_why);
	tcase_add_test(tc, a_line_is_repeated_and_corrected);
	tcase_add_test(tc, a_retainer_that_went_back_used_is_not_renewed);
	tcase_add_test(tc, what_is_missing_or_left_over_holds_the_launch_until_it_is_put_right);
	tcase_add_test(tc, it_rests_for_a_winter_and_closes_when_nothing_is_left);
	tcase_add_test(tc, an_aim_left_undone_wants_a_reason_and_takes_its_proofs_with_it);
	tcase_add_test(tc, steps_are_ticked_together_but_proofs_one_by_one);
	tcase_add_test(tc, a_file_is_known_by_its_bytes);
	tcase_add_test(tc, every_shipped_template_can_be_begun_on_its_boats);
	suite_add_tcase(s, tc);
	return run_suite(s);
}
