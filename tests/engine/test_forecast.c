#include "engine/timeline.h"

#include "engine/usage.h"

#include "boat_case.h"
#include "random_boat.h"

#define EMPTY "today 2026-03-01; from 2020-01-01;"
#define SEASON(year, seconds) "run " year "-05-01 " seconds " 0 fresh - trip; run " year "-07-01 " seconds " 0 fresh - trip;"
#define LOGGED EMPTY SEASON("2024", "180000") SEASON("2025", "180000")

/* Hours in the coming season of 183 days. */
static const struct { const char *says, *boat; double least, most; } uses[] = {
	{ "no record: as is presumed of any boat", EMPTY, 45, 51 },
	{ "a hundred hours a season on record pull towards them", LOGGED, 75, 100 },
	{ "a season without use is data", EMPTY "season 2023-04-15 2023-10-15; run 2023-05-01 36000 0 fresh - trip;", 5, 25 },
	{ "what was run out of season does not count", LOGGED "run 2025-12-01 3600000 0 fresh - trip;", 75, 100 },
	{ "six years back do not count", "today 2026-03-01; from 2018-01-01;" SEASON("2018", "36000000") SEASON("2025", "0"),
	  1, 15 },
};

START_TEST(use_is_learned_from_the_seasons_on_record)
{
	double hours;

	build(uses[_i].boat);
	hours = timeline_seconds_ahead(t, 0, MECH_NONE, day_at("2026-12-31")) / 3600;
	ck_assert_msg(hours >= uses[_i].least && hours <= uses[_i].most, "%s: %g h", uses[_i].says, hours);
	ck_assert_double_eq_tol(timeline_usage(t, 0) / 3600, hours / 183, 1e-9);
}
END_TEST

/* In season from 15 April to 15 October, 183 days; nothing known, 50 h a year, weighing half a year. */
#define PRIOR(days) (.5 * 50 * (days) / 183)
#define MAY(year) "run " year "-05-01 64800 0 fresh - trip; run " year "-05-20 46800 0 fresh - trip; "	/* 18 h and 13 h */

/* Hours a day expected in May 2026; years back count 1, .8, .64, .512, .4096. */
static const struct { const char *says, *boat; double rate; } rates[] = {
	{ "no record: what is presumed", "today 2026-03-01", 50. / 183 },
	{ "one May of 31 h beside it", "today 2026-03-01; from 2024-01-01;" MAY("2025"),
	  (PRIOR(31) + 31) / (15.5 + 31) },
	{ "a year back counts less", "today 2026-03-01; from 2023-01-01;" MAY("2024") MAY("2025"),
	  (PRIOR(31) + 31 * 1.8) / (15.5 + 31 * 1.8) },
	{ "a May without use is a record, too", "today 2026-03-01; from 2023-01-01;" MAY("2024")
	  "run 2025-06-01 3600 0 fresh - trip", (PRIOR(31) + 31 * .8) / (15.5 + 31 * 1.8) },
	{ "what lies before the log is none", "today 2026-03-01; from 2020-01-01; run 2025-06-20 3600 0 fresh - trip",
	  50. / 183 },
	{ "it begins with the first run", "today 2026-03-01; from 2020-01-01; run 2025-05-22 3600 0 fresh - trip",
	  (PRIOR(31) + 1) / (15.5 + 10) },
	{ "or with the recorded season that the first run lies in", "today 2026-03-01; from 2020-01-01;"
	  "season 2025-05-11 2025-10-15; run 2025-07-20 3600 0 fresh - trip", PRIOR(31) / (15.5 + 21) },
	{ "what lies more than five years back counts nothing", "today 2026-06-01; from 2018-01-01;" MAY("2020")
	  "run 2020-06-10 3600 0 fresh - trip; season 2021-06-01 2021-10-01; season 2022-06-01 2022-10-01; "
	  "season 2023-06-01 2023-10-01; season 2024-06-01 2024-10-01; season 2025-06-01 2025-10-01; "
	  "season 2026-06-01 2026-10-01; season 2027-05-01 2027-10-01", 50. / 183 },
	{ "what was run out of season counts nothing", "today 2026-03-01; from 2024-01-01; season 2025-05-01 2025-05-16;"
	  "run 2025-05-02 3600 0 fresh - trip; run 2025-05-20 90000 0 fresh - trip", (PRIOR(31) + 1) / (15.5 + 15) },
	{ "of the season under way up to today", "today 2026-05-15; from 2026-01-01; run 2026-04-30 0 0 fresh - trip;"
	  "run 2026-05-02 72000 0 fresh - trip", (PRIOR(31) + 20) / (15.5 + 15) },
	{ "all the year", "today 2026-03-01; from 2024-01-01; usual - - afloat afloat fresh;" MAY("2025"),
	  (.5 * 50 * 31 / 365 + 31) / (15.5 + 31) },
	{ "a month that is not usually in season is used like the others, once it is",
	  "today 2026-03-01; usual 06-01 09-01 afloat ashore fresh; season 2026-05-01 2026-09-01", 50. / 92 },
};

START_TEST(rates_are_learned_by_the_month)
{
	gint64 year = 2026;
	double hours;

	build(rates[_i].boat);
	if (boat->in.today > day_at("2026-05-31"))
		year = 2027;
	hours = timeline_seconds_ahead(t, 0, MECH_NONE, day_from_ymd((int)year, 5, 31))
	      - timeline_seconds_ahead(t, 0, MECH_NONE, MAX(boat->in.today, day_from_ymd((int)year, 5, 1) - 1));
	hours /= 3600 * (double)(day_from_ymd((int)year, 6, 1) - MAX(boat->in.today + 1, day_from_ymd((int)year, 5, 1)));
	ck_assert_msg(fabs(hours - rates[_i].rate) < 1e-9, "%s: %g h a day, not %g", rates[_i].says, hours, rates[_i].rate);
}
END_TEST

START_TEST(an_engine_that_is_not_there_runs_no_hours)
{
	struct usage_due due;

	build("today 2026-03-01; engines 0");
	for (int engine = -1; engine < 2; engine++) {
		timeline_seconds_reach(t, engine, MECH_NONE, 1, NONE, &due);
		ck_assert(due.early == NONE && due.likely == NONE && due.late == NONE);
		ck_assert_double_eq(timeline_seconds_ahead(t, engine, MECH_NONE, boat->in.today + 999), 0);
	}
}
END_TEST

/* A lump of hours that nobody logged says nothing of single outings. */
START_TEST(a_lump_of_hours_does_not_widen_the_spread)
{
	struct usage_due lump, outings;

	build("today 2026-03-01; from 2024-01-01; run 2025-05-05 3600 0 fresh - trip; run 2025-05-06 108000 0 fresh - -");
	timeline_seconds_reach(t, 0, MECH_NONE, 30 * 3600, NONE, &lump);
	build("today 2026-03-01; from 2024-01-01; run 2025-05-05 3600 0 fresh - trip; run 2025-05-06 36000 0 fresh - trip;"
	      "run 2025-05-07 36000 0 fresh - trip; run 2025-05-08 36000 0 fresh - trip");
	timeline_seconds_reach(t, 0, MECH_NONE, 30 * 3600, NONE, &outings);
	ck_assert_int_gt(lump.early, outings.early);
	ck_assert_int_lt(lump.late, outings.late);
}
END_TEST

START_TEST(it_is_run_in_season_only)
{
	build(LOGGED "season 2026-05-01 2026-05-11;");
	ck_assert_double_eq(timeline_seconds_ahead(t, 0, MECH_NONE, day_at("2026-04-30")), 0);
	ck_assert_double_eq(timeline_seconds_ahead(t, 0, MECH_NONE, day_at("2026-05-10")),
			    timeline_seconds_ahead(t, 0, MECH_NONE, day_at("2027-04-14")));
}
END_TEST

START_TEST(hard_wear_brings_it_near)
{
	struct usage_due plain, hard;

	build(LOGGED "rate raw-water.salt 2; usual 04-15 10-15 afloat ashore salt");
	timeline_seconds_reach(t, 0, MECH_NONE, 360000, NONE, &plain);
	timeline_seconds_reach(t, 0, MECH_RAW_WATER, 360000, NONE, &hard);
	ck_assert_int_lt(hard.likely, plain.likely);
	timeline_seconds_reach(t, 0, MECH_FLUID, 360000, NONE, &hard);
	ck_assert_int_eq(hard.likely, plain.likely);
}
END_TEST

START_TEST(nothing_is_forecast_where_another_limit_comes_first)
{
	struct usage_due due;

	build(LOGGED);
	timeline_seconds_reach(t, 0, MECH_NONE, 3600000, day_at("2026-06-01"), &due);
	ck_assert(due.early == NONE && due.likely == NONE && due.late == NONE);
	timeline_seconds_reach(t, 0, MECH_NONE, 36000, day_at("2026-10-01"), &due);
	ck_assert(due.early != NONE);
}
END_TEST

START_TEST(outings_ahead_are_counted)
{
	struct usage_due few, many;

	build(LOGGED);
	timeline_outings_reach(t, 3, NONE, &few);
	timeline_outings_reach(t, 12, NONE, &many);
	ck_assert(few.likely != NONE && few.early <= few.likely && few.likely <= few.late && few.likely < many.likely);
}
END_TEST

START_TEST(early_comes_before_likely_and_late)
{
	GRand *r = test_rand("early comes before likely and late");

	for (int k = 0; k < 200; k++) {
		struct usage_due due, more;
		double seconds = g_rand_double_range(r, 1, 2e6);
		enum mechanism m = (enum mechanism)any(r, MECH_COUNT);

		random_boat(boat, r);
		boat_timeline(boat, t);
		timeline_seconds_reach(t, -1, m, seconds, NONE, &due);
		timeline_seconds_reach(t, -1, m, seconds * 1.3, NONE, &more);
		ck_assert(due.likely == NONE || (due.early != NONE && due.early <= due.likely));
		ck_assert(due.late == NONE || (due.likely != NONE && due.likely <= due.late));
		ck_assert(more.likely == NONE || (due.likely != NONE && due.likely <= more.likely));
		ck_assert(due.early == NONE || due.early > boat->in.today);
	}
	g_rand_free(r);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Use ahead is learned from past seasons, and run in season");
	TCase *tc = add_case(s, "ahead");

	tcase_add_loop_test(tc, use_is_learned_from_the_seasons_on_record, 0, G_N_ELEMENTS(uses));
	tcase_add_loop_test(tc, rates_are_learned_by_the_month, 0, G_N_ELEMENTS(rates));
	tcase_add_test(tc, an_engine_that_is_not_there_runs_no_hours);
	tcase_add_test(tc, a_lump_of_hours_does_not_widen_the_spread);
	tcase_add_test(tc, it_is_run_in_season_only);
	tcase_add_test(tc, hard_wear_brings_it_near);
	tcase_add_test(tc, nothing_is_forecast_where_another_limit_comes_first);
	tcase_add_test(tc, outings_ahead_are_counted);
	tcase_add_test(tc, early_comes_before_likely_and_late);
	return run_suite(s);
}
