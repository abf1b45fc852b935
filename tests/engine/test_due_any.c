#include "engine/due.h"

#include "boat_case.h"
#include "random_boat.h"

#define HOUR G_GINT64_CONSTANT(3600)

enum { AHEAD = 30, APART = 120 };

static struct due_out out;
static struct limit_out used[MOST_FEW];

static void
work_out(void)
{
	boat_timeline(boat, t);
	due_work_out(t, boat->in.today, &boat->task, &out, used);
}

static gint64
or_never(gint64 day)
{
	return day == NONE ? G_MAXINT64 : day;
}

/* A task of up to three limits of any kind, of which the day or the hours are known, or a span. */
static void
any_task(GRand *r)
{
	struct baseline *b = &boat->task.since;

	random_task(boat, r);
	boat->task.engine = any(r, 3) - 1;
	boat->task.n_limits = 1 + any(r, 3);
	for (int i = 0; i < boat->task.n_limits; i++) {
		struct limit_in *l = &boat->limit[i];

		*l = (struct limit_in) { (enum limit_kind)any(r, LIMIT_KIND_COUNT), 1 + any(r, 30), NONE,
					 (enum season_event)any(r, SEASON_EVENT_COUNT), NONE, NONE };
		if (l->kind == LIMIT_HOURS || l->kind == LIMIT_FIRST_HOURS)
			l->amount *= 5 * HOUR;
		if (l->kind <= LIMIT_MONTHS && !any(r, 4))
			l->salt = MAX(l->amount / 2, 1);
	}
	if (any(r, 2))
		b->earliest = b->day - any(r, 400);
	if (!any(r, 3)) {
		b->ran = any(r, 100) * HOUR;
		b->ran_most = b->ran + any(r, 50) * HOUR;
	}
}

START_TEST(early_comes_before_likely_and_that_before_late)
{
	GRand *r = test_rand("early comes before likely and that before late");

	for (int k = 0; k < 600; k++) {
		gint64 today;

		any_task(r);
		boat_timeline(boat, t);
		today = boat->in.today + (any(r, 2) ? any(r, 500) : 0);
		due_work_out(t, today, &boat->task, &out, used);
		ck_assert_int_le(or_never(out.early), or_never(out.due));
		ck_assert(out.early != NONE || out.late == NONE);
		for (int i = 0; i < boat->task.n_limits; i++) {
			ck_assert_int_le(or_never(used[i].early), or_never(used[i].due));
			ck_assert_int_le(or_never(used[i].due), or_never(used[i].late));
			ck_assert_int_le(or_never(out.early), or_never(used[i].early));
			ck_assert_int_le(or_never(out.late), or_never(used[i].late));
		}
		ck_assert_int_eq(out.past, or_never(boat->task.consequence <= COST_HURTS ? out.early : out.due) <= today);
	}
	g_rand_free(r);
}
END_TEST

/* The running of the task's engine, past and expected, up to some days ahead. */
static void
running(double seconds[AHEAD])
{
	int engine = boat->task.engine;
	enum mechanism m = boat->task.mechanism;
	double so_far = timeline_seconds(t, engine, m, boat->task.since.day, boat->in.today);

	for (int i = 0; i < AHEAD; i++)
		seconds[i] = so_far + timeline_seconds_ahead(t, engine, m, boat->in.today + i * APART);
}

/* An outing more.  Its date is not before the first on record, or days without use would come in. */
static gboolean
one_more_run(GRand *r)
{
	struct run run = { .seconds = 3600 + any(r, 20000), .engine = (gint16)any(r, 2), .trip = TRUE };
	gint64 first;

	if (!boat->in.n_runs)
		return FALSE;
	first = MAX(boat->task.since.day + 1, boat->run[0].date);
	if (first > boat->in.today)
		return FALSE;
	run.date = (gint32)first + any(r, (int)(boat->in.today - first) + 1);
	insert_run(boat, run);
	return TRUE;
}

/* More has been run and more is expected, on whatever day one asks.  The likely day of what is not yet reached is the
 * median of an uneven sum, below its mean: an outing longer than most makes the hours ahead less even too, and may put
 * that day off, but no further than it was uncertain. */
START_TEST(more_running_never_puts_off)
{
	GRand *r = test_rand("more running never puts off");

	for (int k = 0; k < 400; k++) {
		double before[AHEAD], after[AHEAD];
		struct due_out had;
		double share;

		random_task(boat, r);
		boat->task.engine = any(r, 3) - 1;
		boat->limit[0].kind = any(r, 4) ? LIMIT_HOURS : LIMIT_OUTINGS;
		boat->limit[0].amount = 2 + any(r, 50);
		if (boat->limit[0].kind == LIMIT_HOURS)
			boat->limit[0].amount *= 4 * HOUR;
		work_out();
		running(before);
		had = out;
		share = used[0].share;
		if (!one_more_run(r))
			continue;
		work_out();
		running(after);
		ck_assert_double_ge(used[0].share, share);
		for (int i = 0; i < AHEAD; i++)
			ck_assert_double_ge(after[i], before[i] * (1 - 1e-12));
		ck_assert_int_le(or_never(out.due), or_never(had.due <= boat->in.today ? had.due : had.late));
	}
	g_rand_free(r);
}
END_TEST

START_TEST(the_order_of_a_day_s_runs_is_of_no_matter)
{
	GRand *r = test_rand("the order of a day's runs is of no matter");

	for (int k = 0; k < 200; k++) {
		struct due_out before;
		struct limit_out had[MOST_FEW];

		any_task(r);
		for (int i = 1; i < boat->in.n_runs; i++)
			if (!any(r, 3))
				boat->run[i].date = boat->run[i - 1].date;
		work_out();
		before = out;
		memcpy(had, used, sizeof had);
		for (int i = 1; i < boat->in.n_runs; i++)
			if (boat->run[i].date == boat->run[i - 1].date && any(r, 2)) {
				struct run run = boat->run[i];

				boat->run[i] = boat->run[i - 1];
				boat->run[i - 1] = run;
			}
		work_out();
		ck_assert(out.when == before.when && out.by == before.by && out.due == before.due);
		ck_assert(out.early == before.early && out.late == before.late);
		for (int i = 0; i < boat->task.n_limits; i++)
			ck_assert(used[i].raw == had[i].raw && used[i].rated == had[i].rated);
	}
	g_rand_free(r);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("What holds of the due days of any boat");
	TCase *tc = add_case(s, "any boat");

	tcase_add_test(tc, early_comes_before_likely_and_that_before_late);
	tcase_add_test(tc, more_running_never_puts_off);
	tcase_add_test(tc, the_order_of_a_day_s_runs_is_of_no_matter);
	return run_suite(s);
}
