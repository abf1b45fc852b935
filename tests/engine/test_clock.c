#include "engine/timeline.h"

#include "boat_case.h"
#include "random_boat.h"

/* 183 days from launch to haul-out every year. */
#define SALT_2025 "today 2026-03-01; from 2023-04-15; rate raw-water.salt 2; stay 2025-04-15 2025-10-15 afloat salt; "

static const struct { const char *from, *to; double days; const char *reached; } ages[] = {
	{ "2023-04-15", "2023-10-15", 183, "2023-10-15" },
	{ "2023-04-15", "2025-04-15", 731, "2025-04-15" },
	{ "2025-04-15", "2025-04-16", 2, "2025-04-16" },
	{ "2025-04-01", "2025-05-01", 14 + 32, "2025-05-01" },
	{ "2023-04-15", "2026-03-01", 1051 + 183, "2026-03-01" },
	{ "2025-04-15", "2026-04-15", 365 + 183, "2026-04-15" },
	{ "2025-06-01", "2025-06-01", 0, "2025-06-01" },
	{ "2025-06-02", "2025-06-01", 0, "2025-06-02" },
	{ "2023-04-10", "2023-04-20", 10, "2023-04-20" },	/* before the first day each day is one */
	{ "2036-02-27", "2036-03-04", 6, "-" },	/* ten years ahead end on 2036-03-01 */
};

START_TEST(days_count_as_what_they_were)
{
	gint64 a = day_at(ages[_i].from), b = day_at(ages[_i].to);
	char day[DAY_TEXT];

	build(SALT_2025);
	ck_assert_double_eq_tol(timeline_days(t, MECH_RAW_WATER, a, b), ages[_i].days, 1e-9);
	ck_assert_double_eq_tol(timeline_days(t, MECH_NONE, a, b), (double)MAX(b - a, 0), 1e-9);
	ck_assert_str_eq(day_or_dash(timeline_days_reach(t, MECH_RAW_WATER, a, ages[_i].days), day), ages[_i].reached);
	ck_assert_str_eq(day_or_dash(timeline_days_reach(t, MECH_FLUID, a, (double)(b - a)), day), ages[_i].reached);
}
END_TEST

START_TEST(a_part_of_a_day_takes_the_whole)
{
	build(SALT_2025);
	/* 365 from the launch of 2025 at two a day: 182 days give 364. */
	ck_assert_int_eq(timeline_days_reach(t, MECH_RAW_WATER, day_at("2025-04-15"), 365), day_at("2025-10-15"));
	ck_assert_int_eq(timeline_days_reach(t, MECH_RAW_WATER, day_at("2025-04-15"), 364), day_at("2025-10-14"));
	ck_assert_int_eq(timeline_days_reach(t, MECH_NONE, day_at("2025-04-15"), 0.5), day_at("2025-04-16"));
}
END_TEST

START_TEST(before_the_first_day_a_day_is_a_day)
{
	build("today 2025-03-02; from 2025-01-01; rate raw-water.salt 2; usual - - afloat afloat salt");
	ck_assert_double_eq(timeline_days(t, MECH_RAW_WATER, day_at("2024-12-22"), day_at("2025-01-02")), 12);
	ck_assert_int_eq(timeline_days_reach(t, MECH_RAW_WATER, day_at("2024-12-22"), 5), day_at("2024-12-27"));
	ck_assert_int_eq(timeline_days_reach(t, MECH_RAW_WATER, day_at("2024-12-22"), 14), day_at("2025-01-03"));
}
END_TEST

#define TWINS "today 2024-08-01; from 2024-05-01; engines 2; rate raw-water.salt 2; rate raw-water.rinsed 1.5; " \
	      "usual 04-15 10-15 trailer roof fresh; " \
	      "run 2024-05-01 3600 0 salt - trip; run 2024-05-01 7200 1 salt - -; " \
	      "run 2024-05-04 1800 0 fresh - trip; run 2024-06-01 3600 1 salt rinsed trip; " \
	      "run 2024-06-01 0 -1 salt rinsed trip; run 2024-08-02 9999 0 fresh - trip"

static const struct { int engine; enum mechanism m; const char *a, *b; double seconds; } running[] = {
	{ 0, MECH_NONE, "2024-04-30", "2024-08-01", 5400 },
	{ 1, MECH_NONE, "2024-04-30", "2024-08-01", 10800 },
	{ -1, MECH_NONE, "2024-04-30", "2024-08-01", 16200 },
	{ 0, MECH_NONE, "2024-05-01", "2024-08-01", 1800 },	/* a day's own running is before it ends */
	{ 0, MECH_NONE, "2024-05-01", "2024-05-03", 0 },
	{ 0, MECH_NONE, "2024-08-01", "2024-05-01", 0 },
	{ 0, MECH_NONE, "2024-04-30", "2025-01-01", 5400 },	/* what is after today has not been */
	{ 0, MECH_RAW_WATER, "2024-04-30", "2024-08-01", 9000 },
	{ 1, MECH_RAW_WATER, "2024-04-30", "2024-08-01", 19800 },
	{ -1, MECH_RAW_WATER, "2024-04-30", "2024-08-01", 28800 },
	{ 0, MECH_WEAR, "2024-04-30", "2024-08-01", 5400 },
	{ 2, MECH_NONE, "2024-04-30", "2024-08-01", 0 },	/* no such engine */
};

START_TEST(seconds_count_where_they_were_run)
{
	gint64 a = day_at(running[_i].a), b = day_at(running[_i].b);
	double seconds;

	build(TWINS);
	seconds = timeline_seconds(t, running[_i].engine, running[_i].m, a, b);
	ck_assert_double_eq_tol(seconds, running[_i].seconds, 1e-9);
}
END_TEST

START_TEST(outings_are_counted_once)
{
	build(TWINS);
	ck_assert_int_eq(timeline_outings(t, day_at("2024-04-30"), day_at("2024-08-01")), 4);
	ck_assert_int_eq(timeline_outings(t, day_at("2024-05-01"), day_at("2024-08-01")), 3);
	ck_assert_int_eq(timeline_outings(t, day_at("2024-06-01"), day_at("2024-08-01")), 0);
	ck_assert_int_eq(timeline_outings(t, day_at("2024-08-01"), day_at("2024-05-01")), 0);
}
END_TEST

/* Span by span. */
static double
days_over_spans(enum mechanism m, gint64 a, gint64 b)
{
	const struct span *s;
	int n = timeline_spans(t, &s);
	double days = 0;

	for (int i = 0; i < n; i++) {
		gint64 from = MAX(a, s[i].from), to = MIN(b, s[i].to);

		if (from < to)
			days += timeline_days(t, m, from, to);
	}
	return days;
}

START_TEST(clocks_agree_with_spans_and_turn_round)
{
	GRand *r = test_rand("clocks agree with spans and turn round");

	random_boat(boat, r);
	for (int k = 0; k < 3000; k++) {
		enum mechanism m = (enum mechanism)any(r, MECH_COUNT);
		gint64 a, b, reached;
		double days, wanted = any(r, 4000) + any(r, 4) / 4.;

		if (k % 10 == 0) {
			random_boat(boat, r);
			boat_timeline(boat, t);
		}
		a = boat->in.from + any(r, (int)(boat->in.today - boat->in.from) + 1);
		b = a + any(r, (int)(boat->in.today - a) + 3650);
		days = timeline_days(t, m, a, b);
		ck_assert_double_eq_tol(days, days_over_spans(m, a, b), 1e-6);
		if (m != MECH_CORROSION && m != MECH_GALVANIC && m != MECH_RUBBER)
			ck_assert_double_ge(days + 1e-6, (double)(b - a));
		reached = timeline_days_reach(t, m, a, wanted);
		if (reached == NONE) {
			ck_assert_double_lt(timeline_days(t, m, a, day_add_months(boat->in.today, 120)), wanted);
			continue;
		}
		ck_assert_double_ge(timeline_days(t, m, a, reached) + 1e-5, wanted);
		ck_assert(reached == a || timeline_days(t, m, a, reached - 1) < wanted);
	}
	g_rand_free(r);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Clocks run as fast as the boat wore");
	TCase *tc = add_case(s, "days");

	tcase_add_loop_test(tc, days_count_as_what_they_were, 0, G_N_ELEMENTS(ages));
	tcase_add_test(tc, a_part_of_a_day_takes_the_whole);
	tcase_add_test(tc, before_the_first_day_a_day_is_a_day);
	tcase_add_test(tc, clocks_agree_with_spans_and_turn_round);
	tc = add_case(s, "use");
	tcase_add_loop_test(tc, seconds_count_where_they_were_run, 0, G_N_ELEMENTS(running));
	tcase_add_test(tc, outings_are_counted_once);
	return run_suite(s);
}
