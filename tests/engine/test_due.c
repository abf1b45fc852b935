#include "engine/due.h"

#include "boat_case.h"
#include "random_boat.h"

static struct due_out out;
static struct limit_out used[MOST_FEW];

static void
work_out(void)
{
	boat_timeline(boat, t);
	due_work_out(t, boat->in.today, &boat->task, &out, used);
}

/* A boat in fresh water, in from 15 April to 15 October, ashore on 1 March 2026; 100 h in 2024, 83 h in 2025. */
#define BOAT "today 2026-03-01; from 2020-01-01; rate raw-water.salt 2; " \
	     "run 2024-05-01 180000 0 fresh - trip; run 2024-09-01 180000 0 fresh - trip; " \
	     "run 2025-05-01 118800 0 fresh - trip; run 2025-09-01 180000 0 fresh - trip; "
#define TASK(since) "task raw-water costs anywhere done 0 " since "; "
#define DONE(day) TASK("service " day " 0 once")

static const struct { const char *says, *boat, *due; double raw, rated, allowed, share; } clocks[] = {
	{ "a month ends in the month's last day", "today 2024-02-01; from 2024-01-31;"
	  DONE("2024-01-31") "limit months 1",
	  "2024-02-29", 1, 1, 29, 1 / 29. },
	{ "two months are counted from the anchor, not chained", "today 2025-02-01; from 2025-01-31;"
	  DONE("2025-01-31") "limit months 2",
	  "2025-03-31", 1, 1, 59, 1 / 59. },
	{ "all the year in salt water at twice the wear", "today 2025-03-02; from 2025-01-01; rate raw-water.salt 2;"
	  "usual - - afloat afloat salt;" DONE("2025-01-01") "limit months 12", "2025-07-03", 60, 120, 365,
	  120 / 365. },
	{ "two seasons in fresh water and one in salt count as what they were",
	  "today 2025-04-15; from 2023-04-15; rate raw-water.salt 2; stay 2025-04-15 2025-10-15 afloat salt;"
	  DONE("2023-04-15") "limit months 36", "2025-10-15", 731, 731, 1096, 731 / 1096. },
	{ "what is printed knows no wear", "today 2025-03-02; from 2025-01-01; rate raw-water.salt 2; "
	  "usual - - afloat afloat salt;"
	  "task raw-water costs anywhere printed-date 0 made 2025-01-01 0 -; limit months 12", "2026-01-01", 60,
	  60, 365, 60 / 365. },
	{ "beyond ten years is out of sight", BOAT DONE("2026-02-01") "limit months 122", "-", 28, 28, 3712,
	  28 / 3712. },
	{ "hours are due at the reading, on the day that it was reached",
	  BOAT DONE("2024-04-20") "limit hours 360000",
	  "2024-09-01", 658800, 658800, 360000, 1.83 },
	{ "a second less is reached before", BOAT DONE("2024-04-20") "limit hours 360001", "2025-05-01", 658800,
	  658800, 360001,
	  658800 / 360001. },
	{ "a day's running was before the work", BOAT DONE("2024-05-01") "limit hours 360000", "2025-09-01",
	  478800, 478800, 360000,
	  1.33 },
	{ "but for what was run after it", BOAT TASK("service 2024-05-01 61200 once") "limit hours 360000",
	  "2025-05-01", 540000, 540000,
	  360000, 1.5 },
	{ "which may be enough", BOAT TASK("service 2024-05-01 61200 once") "limit hours 61200", "2024-05-01",
	  540000, 540000, 61200,
	  540000 / 61200. },
	{ "ahead, by what the log teaches", BOAT DONE("2025-12-01") "limit hours 36000", "2026-05-11", 0, 0,
	  36000, 0 },
	{ "with what is run already, the same", BOAT DONE("2025-08-01") "limit hours 216000", "2026-05-11", 180000, 180000,
	  216000, 180 / 216. },
	{ "in salt water hours count twice", "today 2025-06-01; from 2025-05-01; rate raw-water.salt 2; "
	  "usual - - afloat afloat salt;"
	  "run 2025-05-02 3600 0 salt - trip; run 2025-05-10 3600 0 fresh - trip;"
	  TASK("service 2025-05-01 1800 once") "limit hours 10000",
	  "2025-05-02", 9000, 14400, 10000, 1.44 },
	{ "no use on record, as of any boat", "today 2026-03-01; from 2025-01-01;"
	  DONE("2025-05-01") "limit hours 36000", "2026-05-30", 0, 0,
	  36000, 0 },
	{ "the third outing after the work", BOAT DONE("2024-05-01") "limit outings 3", "2025-09-01", 3, 3, 3, 1 },
	{ "the fourth, ahead", BOAT DONE("2024-05-01") "limit outings 4",
	  "2026-05-06", 3, 3, 4, .75 },
	{ "the second season's end after the work", BOAT DONE("2025-05-01") "limit seasons 2", "2026-10-15", 1, 1,
	  2, .5 },
	{ "the day of the haul-out is past for work done on it", BOAT DONE("2025-10-15") "limit seasons 1",
	  "2026-10-15", 0, 0, 1, 0 },
	{ "the first hours", BOAT TASK("fitted 2025-08-01 0 -") "limit first-hours 72000", "2025-09-01", 180000,
	  180000, 72000, 2.5 },
	{ "but only once", BOAT TASK("service 2025-08-01 0 once") "limit first-hours 72000", "-", 0, 0, 0, NAN },
	{ "an amount that is none counts nothing", BOAT DONE("2025-08-01") "limit months 0", "-", 0, 0, 0, NAN },
	{ "use does not count for what is printed",
	  BOAT "task none costs anywhere printed-date 0 made 2020-01-01 0 -; limit hours 36000",
	  "-", 0, 0, 0, NAN },
	{ "what is printed counts from nothing else",
	  BOAT "task none costs anywhere printed-date 0 fitted 2020-01-01 0 -; limit months 12",
	  "-", 0, 0, 0, NAN },
	{ "nobody knows since when", BOAT TASK("unknown - 0 -") "limit months 12", "-", 0, 0, 0, NAN },
	{ "an open happening is due on its day", BOAT DONE("2025-05-01") "limit happening 2025-07-07",
	  "2025-07-07", 0, 0, 0, NAN },
	{ "also when nothing else is known", BOAT TASK("unknown - 0 -") "limit happening 2025-07-07",
	  "2025-07-07", 0, 0, 0, NAN },
	{ "not one after today", BOAT DONE("2025-05-01") "limit happening 2026-07-07", "-", 0, 0, 0, NAN },
	{ "no happening, no day", BOAT DONE("2025-05-01") "limit happening -", "-", 0, 0, 0, NAN },
	{ "a reading that says stop is due on its day", BOAT DONE("2025-05-01") "limit condition 2025-07-07",
	  "2025-07-07", 0, 0, 0, NAN },
	{ "not one read after today", BOAT DONE("2025-05-01") "limit condition 2026-07-07", "-", 0, 0, 0, NAN },
	{ "a condition has no clock", BOAT DONE("2025-05-01") "limit condition", "-", 0, 0, 0, NAN },
};

static gboolean
same(double a, double b)
{
	return (isnan(a) && isnan(b)) || fabs(a - b) < 1e-9;
}

START_TEST(a_limit_falls_due)
{
	g_autofree char *says = g_strdup(clocks[_i].says);
	char day[DAY_TEXT];

	boat_text_init(boat);
	boat_text_read(boat, clocks[_i].boat);
	work_out();
	day_or_dash(used[0].due, day);
	ck_assert_msg(!strcmp(day, clocks[_i].due), "%s: %s, not %s", says, day, clocks[_i].due);
	ck_assert_msg(same(used[0].raw, clocks[_i].raw), "%s: raw %g", says, used[0].raw);
	ck_assert_msg(same(used[0].rated, clocks[_i].rated), "%s: rated %g", says, used[0].rated);
	ck_assert_msg(same(used[0].allowed, clocks[_i].allowed), "%s: allowed %g", says, used[0].allowed);
	ck_assert_msg(same(used[0].share, clocks[_i].share), "%s: share %g", says, used[0].share);
	ck_assert_int_eq(out.due, used[0].due);
	ck_assert_int_eq(used[0].governs, used[0].due != NONE);
}
END_TEST

/* Launch 15 April, mid-season 15 July, haul-out 15 October. */
static const struct { const char *event, *done, *due; } events[] = {
	{ "launch", "2025-06-01", "2026-04-15" },
	{ "launch", "2025-10-15", "2026-04-15" },	/* on the day of the haul-out: not yet for the next launch */
	{ "launch", "2025-10-16", "2027-04-15" },	/* in the winter before */
	{ "launch", "2026-02-28", "2027-04-15" },
	{ "launch", "2025-04-15", "2026-04-15" },	/* on the day */
	{ "launch", "2025-04-16", "2026-04-15" },	/* too late for that one */
	{ "launch", "2024-06-01", "2025-04-15" },	/* missed */
	{ "first-day", "2025-04-17", "2026-04-15" },
	{ "mid-season", "2025-04-15", "2025-07-15" },
	{ "mid-season", "2025-04-16", "2026-07-15" },
	{ "mid-season", "2025-07-16", "2026-07-15" },
	{ "haul-out", "2025-07-15", "2025-10-15" },
	{ "haul-out", "2025-07-16", "2026-10-15" },	/* nearer to this lay-up than mid-season */
	{ "lay-up", "2025-10-15", "2026-10-15" },
	{ "lay-up", "2025-11-20", "2026-10-15" },	/* after it, late but done */
	{ "lay-up", "2024-06-01", "2024-10-15" },
};

START_TEST(work_counts_for_the_event_that_it_leads_up_to)
{
	char day[DAY_TEXT];

	build("today 2026-03-01; from 2024-01-01; task none costs anywhere done 0 service 2024-01-01 0 once");
	boat->task.since.day = day_at(events[_i].done);
	boat->limit[0].kind = LIMIT_EVENT;
	boat->limit[0].event = (enum season_event)word_at(EVENTS, events[_i].event);
	boat->task.n_limits = 1;
	work_out();
	day_or_dash(used[0].due, day);
	ck_assert_msg(!strcmp(day, events[_i].due), "%s done %s: %s, not %s", events[_i].event, events[_i].done, day,
		      events[_i].due);
	ck_assert(isnan(used[0].share));
}
END_TEST

static const struct { const char *says, *limits; int governs; double share; } several[] = {
	{ "the first due governs", "limit months 24; limit months 12; limit hours 36000000", 1, 320 / 365. },
	{ "of two due on a day the larger share", "limit seasons 2; limit months 18", 1, 320 / 548. },
	{ "whichever stands first", "limit months 18; limit seasons 2", 0, 320 / 548. },
	{ "a share comes before none", "limit event haul-out; limit seasons 1", 1, 1 },
	{ "a due day comes before a larger share", "limit hours 300000; limit months 11", 1, 298800 / 300000. },
	{ "the first of equals", "limit months 12; limit months 12", 0, 320 / 365. },
	{ "none in sight, none governs", "limit months 1200; limit condition", -1, 320 / 36524. },
};

START_TEST(one_of_several_governs)
{
	boat_text_init(boat);
	boat_text_read(boat, BOAT "task none costs anywhere done 0 service 2025-04-15 0 once");
	boat_text_read(boat, several[_i].limits);
	work_out();
	ck_assert_msg(out.governing == several[_i].governs, "%s: %d governs", several[_i].says, out.governing);
	ck_assert_msg(same(out.share, several[_i].share), "%s: share %.6f", several[_i].says, out.share);
	for (int i = 0; i < boat->task.n_limits; i++)
		ck_assert_int_eq(used[i].governs, i == several[_i].governs);
}
END_TEST

START_TEST(a_guess_stays_a_guess)
{
	build(BOAT DONE("2025-05-01") "limit months 12");
	work_out();
	ck_assert(!out.estimated);
	boat->task.since.estimated = TRUE;
	work_out();
	ck_assert(out.estimated);
	boat->task.since.what = SINCE_UNKNOWN;
	work_out();
	ck_assert(!out.estimated);
}
END_TEST

START_TEST(due_today_is_past)
{
	build(BOAT DONE("2025-03-01") "limit months 12");
	work_out();
	ck_assert(out.past);
	build(BOAT DONE("2025-03-02") "limit months 12");
	work_out();
	ck_assert(!out.past);
}
END_TEST

START_TEST(a_sum_of_engines_is_the_sum)
{
	build("today 2025-07-01; from 2025-05-01; engines 2; run 2025-05-02 3600 0 fresh - trip;"
	      "run 2025-05-02 1800 1 fresh - -; task none costs anywhere done -1 service 2025-05-01 0 once;"
	      "limit hours 5400");
	work_out();
	ck_assert_double_eq(used[0].raw, 5400);
	ck_assert_int_eq(out.due, day_at("2025-05-02"));
}
END_TEST

/* Months since spring 2019, 1 March to 31 May, and 300 to 350 h run since a day not known. */
static const struct { const char *says, *limit; gint64 ran, ran_most; const char *early, *due, *late; } spans[] = {
	{ "months count from either end", "limit months 60", NONE, NONE, "2024-03-01", "2024-04-16", "2024-05-31" },
	{ "seasons too", "limit seasons 2", NONE, NONE, "2020-10-15", "2020-10-15", "2020-10-15" },
	{ "hours for certain reached are past", "limit hours 1080000", 1080000, 1260000, "2019-03-01", "2019-04-16",
	  "2019-05-31" },
};

START_TEST(a_baseline_known_to_a_span_gives_early_and_late_days)
{
	struct baseline *b = &boat->task.since;
	char *text = g_strconcat("today 2026-03-01; from 2019-01-01; usual 04-15 10-15 afloat ashore salt;"
				 "task none costs anywhere done 0 service 2019-05-31 0 once;", spans[_i].limit, NULL);
	char early[DAY_TEXT], due[DAY_TEXT], late[DAY_TEXT];

	build(text);
	g_free(text);
	b->earliest = day_at("2019-03-01");
	b->ran = spans[_i].ran;
	b->ran_most = spans[_i].ran_most;
	work_out();
	ck_assert_msg(!strcmp(day_or_dash(used[0].early, early), spans[_i].early) &&
		      !strcmp(day_or_dash(used[0].due, due), spans[_i].due) &&
		      !strcmp(day_or_dash(used[0].late, late), spans[_i].late),
		      "%s: %s %s %s", spans[_i].says, early, due, late);
	ck_assert(out.estimated && out.past && out.early == used[0].early && out.late == used[0].late);
}
END_TEST

START_TEST(what_hurts_is_past_by_its_early_day)
{
	build("today 2026-03-01; from 2019-01-01; usual 04-15 10-15 afloat ashore salt;"
	      "task none hurts anywhere done -1 service 2025-05-01 0 once; limit months 12");
	boat->task.since.earliest = day_at("2025-02-01");
	work_out();
	ck_assert(out.past && out.due > boat->in.today);
	boat->task.consequence = COST_COSTS;
	work_out();
	ck_assert(!out.past);
}
END_TEST

static const struct { const char *says, *task, *asked, *done, *due; gboolean now; } asking[] = {
	{ "a finding asks at once for what is far off", DONE("2025-12-01") "limit months 36", "2026-02-01", "2025-12-01",
	  "2026-02-01", TRUE },
	{ "on the day itself, too", DONE("2025-12-01") "limit months 36", "2026-03-01", "2025-12-01", "2026-03-01", TRUE },
	{ "but not before it", DONE("2025-12-01") "limit months 36", "2026-03-02", "2025-12-01", "2028-12-01", FALSE },
	{ "what was never done is asked for as well", TASK("unknown - 0 -") "limit months 36", "2026-02-01", "-",
	  "2026-02-01", TRUE },
	{ "and what no clock ever asks for", DONE("2025-12-01") "limit condition -", "2026-02-01", "2025-12-01",
	  "2026-02-01", TRUE },
	{ "work of the same day answers it", DONE("2026-02-01") "limit months 36", "2026-02-01", "2026-02-01",
	  "2029-02-01", FALSE },
	{ "and so does work after it", DONE("2026-02-10") "limit months 36", "2026-02-01", "2026-02-10", "2029-02-10",
	  FALSE },
	{ "a printed date is no day of work", "task raw-water costs anywhere printed-date 0 made 2020-01-01 0 -; limit months 120",
	  "2026-02-01", "2026-02-10", "2030-01-01", FALSE },
	{ "a limit reached before it stays the ground", DONE("2022-01-01") "limit months 36", "2026-02-01", "2022-01-01",
	  "2025-01-01", TRUE },
};

START_TEST(what_a_finding_asks_for_is_due_until_it_is_done)
{
	g_autofree char *text = g_strconcat(BOAT, asking[_i].task, NULL);
	char d[DAY_TEXT];

	build(text);
	boat->task.asked = day_at(asking[_i].asked);
	boat->task.done = day_at(asking[_i].done);
	due_work_out(t, boat->in.today, &boat->task, &out, used);
	ck_assert_msg(!strcmp(out.due == NONE ? "-" : day_iso(out.due, d), asking[_i].due), "%s: %s", asking[_i].says,
		      day_iso(out.due, d));
	ck_assert_msg((out.when == OPP_NOW) == asking[_i].now, "%s", asking[_i].says);
	ck_assert(!asking[_i].now || out.past);
	ck_assert(!asking[_i].now || out.governing < 0 || out.due < boat->task.asked);
}
END_TEST

START_TEST(splitting_a_stay_changes_nothing)
{
	GRand *r = test_rand("splitting a stay changes nothing");
	int tried = 0;

	while (tried < 300) {
		struct due_out before;

		random_task(boat, r);
		work_out();
		before = out;
		if (!split_stay(boat, r))
			continue;
		work_out();
		ck_assert_int_eq(out.due, before.due);
		ck_assert_int_eq(out.when, before.when);
		ck_assert_int_eq(out.by, before.by);
		ck_assert_double_eq_tol(out.share, before.share, 1e-12);
		tried++;
	}
	g_rand_free(r);
}
END_TEST

START_TEST(an_outing_in_salt_water_never_puts_off)
{
	GRand *r = test_rand("an outing in salt water never puts off");

	for (int k = 0; k < 500; k++) {
		struct run run = { .seconds = 3600, .engine = 0, .water = WATER_SALT, .trip = TRUE };
		gint64 before;
		double share;

		random_task(boat, r);
		work_out();
		before = out.due;
		share = out.share;
		run.date = (gint32)(boat->in.from + any(r, (int)(boat->in.today - boat->in.from) + 1));
		insert_run(boat, run);
		work_out();
		ck_assert(before == NONE || (out.due != NONE && out.due <= before));
		ck_assert_double_ge(out.share + 1e-12, share);
	}
	g_rand_free(r);
}
END_TEST

START_TEST(without_rates_months_are_the_calendar_s)
{
	GRand *r = test_rand("without rates months are the calendar's");

	for (int k = 0; k < 500; k++) {
		gint64 calendar;

		random_task(boat, r);
		boat->wear.least = boat->wear.most = 1;
		work_out();
		calendar = day_add_months(boat->task.since.day, (int)boat->limit[0].amount);
		if (calendar > day_add_months(boat->in.today, 120))
			calendar = NONE;
		ck_assert_int_eq(out.due, calendar);
	}
	g_rand_free(r);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("A task falls due when the first of its limits is reached");
	TCase *tc = add_case(s, "limits");

	tcase_add_loop_test(tc, a_limit_falls_due, 0, G_N_ELEMENTS(clocks));
	tcase_add_loop_test(tc, what_a_finding_asks_for_is_due_until_it_is_done, 0, G_N_ELEMENTS(asking));
	tcase_add_loop_test(tc, work_counts_for_the_event_that_it_leads_up_to, 0, G_N_ELEMENTS(events));
	tcase_add_loop_test(tc, one_of_several_governs, 0, G_N_ELEMENTS(several));
	tcase_add_test(tc, a_guess_stays_a_guess);
	tcase_add_loop_test(tc, a_baseline_known_to_a_span_gives_early_and_late_days, 0, G_N_ELEMENTS(spans));
	tcase_add_test(tc, what_hurts_is_past_by_its_early_day);
	tcase_add_test(tc, due_today_is_past);
	tcase_add_test(tc, a_sum_of_engines_is_the_sum);
	tc = add_case(s, "any boat");
	tcase_add_test(tc, splitting_a_stay_changes_nothing);
	tcase_add_test(tc, an_outing_in_salt_water_never_puts_off);
	tcase_add_test(tc, without_rates_months_are_the_calendar_s);
	return run_suite(s);
}
