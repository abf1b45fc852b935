#include "job_open.h"

static int
happenings(void)
{
	g_autoptr(GArray) all = book_records(book, RECORD_HAPPENING, boat.id, NULL);
	int n = 0;

	for (guint i = 0; i < all->len; i++)
		n += ((const struct happening *)(const void *)all->data)[i].kind == HAPPENED_DRIVE_OFF;
	return n;
}

START_TEST(the_drive_is_off_once_a_job)
{
	struct job job, other;

	start(&job, drive_off, NULL, NULL);
	off(&job, "trim angle 3/8 in proud");
	off(&job, "1 cotter pin of the propeller bag 1");
	off(&job, "6 nuts 5/8 tray 2");
	off(&job, "6 nuts of the drive unit");
	off(&job, "1 propeller");
	off(&job, "1 hose of the gimbal housing");
	ck_assert_msg(happenings() == 0, "the drive still hangs there");
	off(&job, "1 Drive unit");
	off(&job, "gimbal bearing with its carrier");
	ck_assert_int_eq(happenings(), 1);
	start(&other, NULL, NULL, "Find the leak");
	ck_assert_str_eq(other.name, "find-the-leak-2026");
	off(&other, "4 screws");
	ck_assert_msg(happenings() == 1, "that is not behind the drive");
	off(&other, "4 clamps of the U-joint bellows");
	ck_assert_msg(happenings() == 2, "it can't be reached otherwise, whatever the job is called");
	record_clear(RECORD_JOB, &job);
	record_clear(RECORD_JOB, &other);
}
END_TEST

START_TEST(work_behind_the_drive_tells_that_it_was_off)
{
	static const char *const tasks[] = { "gimbal-bearing.grease", "coupler.grease", NULL };
	struct removal_form bolts = { .line = "2 bolts 1/2", .fitting = "engine/coupler" };
	struct job grease, bolted;

	start(&grease, NULL, tasks, "Grease");
	prove(&grease, "gimbal-bearing.grease");
	ck_assert(done(&grease, "gimbal-bearing.grease"));
	ck_assert_msg(happenings() == 0, "the bearing can be greased through its housing");
	prove(&grease, "coupler.grease");
	ck_assert_msg(happenings() == 1, "nobody sees the coupler's teeth with the drive on");
	ck_assert(done(&grease, "coupler.grease"));
	ck_assert_int_eq(happenings(), 1);
	start(&bolted, NULL, NULL, "Coupler");
	ck_assert(book_job_off(book, &bolted, &bolts, NULL));
	ck_assert(bolts.drive_off && !bolts.side);
	removal_form_clear(&bolts);
	ck_assert_int_eq(happenings(), 2);
	record_clear(RECORD_JOB, &grease);
	record_clear(RECORD_JOB, &bolted);
}
END_TEST

/* The words of the offer that a line of the job is taken for; "" none. */
static char *
taken_for(const struct job *job, gint64 no)
{
	struct job_sheet *s = sheet_of(job);
	char *words = g_strdup("");

	for (guint i = 0; i < s->offers->len; i++) {
		const struct job_offer *o = &((const struct job_offer *)(const void *)s->offers->data)[i];

		if (o->line != no)
			continue;
		ck_assert_msg(!*words, "one line is two things: %s and %s", words, o->what);
		g_free(words);
		words = g_strdup(o->what);
	}
	job_sheet_free(s);
	return words;
}

START_TEST(what_is_typed_is_taken_for_what_is_offered_where_it_can_be_nothing_else)
{
	static const struct {
		const char *line, *offer;
	} lines[] = {
		{ "6 nuts 5/8 tray 2", "Mounting nuts" },
		{ "5 nuts 5/8 tray 2", "Mounting nuts" },
		{ "6 mounting nuts", "Mounting nuts" },
		{ "6 mounting nuts 16 mm", "Mounting nuts" },
		{ "6 mounting nuts 9/16", "" },
		{ "6 nuts", "" },
		{ "6 nuts of the transom 5/8", "" },
		{ "6 bolts 5/8", "" },
		{ "propeller nut 1-1/16", "Propeller nut" },
		{ "6 washers", "Washers of the mounting nuts" },
		{ "1 drive unit", "Drive unit" },
		{ "1 propeller", "" }, /* the offer is of hub and washers, too */
		{ "2 trim pins", "" }, /* there are those at the drive end, and the nuts of them */
		{ "3 cotter pins of the shift joint", "Retainers of the shift joint, count them" },
		{ "1 cotter pin of the propeller", "Cotter or tab washer of the propeller nut" },
		{ "3 cotter pins", "" },
		{ "speedometer hose", "Speedometer hose, where there is one" },
		{ "1 hose", "" },
		{ "ground straps to the drive", "Ground straps to the drive, count them" },
		{ "trim angle 3/8 in proud", "" },
		{ "mounting gasket", "Mounting gasket" },
		{ "gasket", "" },
	};

	for (guint i = 0; i < G_N_ELEMENTS(lines); i++) {
		struct job job;
		g_autofree char *offer = NULL;

		start(&job, drive_off, NULL, NULL);
		offer = taken_for(&job, off(&job, lines[i].line));
		ck_assert_msg(!strcmp(offer, lines[i].offer), "%s: taken for \"%s\", not \"%s\"", lines[i].line, offer,
			      lines[i].offer);
		record_clear(RECORD_JOB, &job);
	}
}
END_TEST

START_TEST(an_offer_is_taken_once_and_by_its_own_words_before_all)
{
	struct removal_form nuts = { .line = NULL };
	struct job job;
	gint64 typed;
	int n = 0;
	struct job_sheet *s;
	g_autofree char *first = NULL, *second = NULL, *after = NULL;

	start(&job, drive_off, NULL, NULL);
	typed = off(&job, "6 nuts 5/8");
	first = taken_for(&job, typed);
	second = taken_for(&job, off(&job, "4 nuts 5/8"));
	ck_assert_str_eq(first, "Mounting nuts");
	ck_assert_str_eq(second, "");
	s = sheet_of(&job);
	for (guint i = 0; i < s->offers->len; i++)
		if (!strcmp(((const struct job_offer *)(const void *)s->offers->data)[i].what, "Mounting nuts"))
			n = ((const struct job_offer *)(const void *)s->offers->data)[i].n;
	job_sheet_free(s);
	ck_assert_msg(book_job_take(book, &job, n, &nuts, NULL), "what was only taken for it may be something else");
	after = taken_for(&job, typed);
	ck_assert_str_eq(after, "");
	removal_form_clear(&nuts);
	ck_assert(!book_job_take(book, &job, n, &nuts, NULL));
	removal_form_clear(&nuts);
	record_clear(RECORD_JOB, &job);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("job_off");
	TCase *tc = tcase_create("off");

	tcase_add_checked_fixture(tc, setup_boat, teardown);
	tcase_add_test(tc, the_drive_is_off_once_a_job);
	tcase_add_test(tc, work_behind_the_drive_tells_that_it_was_off);
	tcase_add_test(tc, what_is_typed_is_taken_for_what_is_offered_where_it_can_be_nothing_else);
	tcase_add_test(tc, an_offer_is_taken_once_and_by_its_own_words_before_all);
	suite_add_tcase(s, tc);
	return run_suite(s);
}
