#include "engine/usage.h"

#include "base/date.h"
#include "published.h"

static struct usage_ahead *ahead;

static void
set_up(void)
{
	ahead = usage_ahead_new();
}

static void
tear_down(void)
{
	usage_ahead_free(ahead);
}

static gint64
day_of(const char *iso)
{
	gint64 day = NONE;

	ck_assert_msg(day_parse(iso, NONE, &day, NULL), "no day: %s", iso);
	return day;
}

START_TEST(a_lay_up_planned_has_no_running)
	{
		struct usage_prior prior;
		struct usage usage;
		struct usage_due due;
		struct usage_days days[] = { { day_of("2026-06-01"), day_of("2026-09-01"), 1 },
					     { day_of("2027-05-01"), day_of("2027-10-01"), 2 } };

		usage_prior_default(&prior, 415, 1015);
		usage_fit(&prior, NULL, 0, &usage);
		usage_look_ahead(ahead, &usage, day_of("2025-10-05"), days, 2);
		ck_assert_double_eq(usage_expected(ahead, day_of("2026-06-01")), 0);
		ck_assert_double_eq_tol(usage_expected(ahead, day_of("2027-04-30")),
					usage_hours(&usage, day_of("2026-06-01"), day_of("2026-09-01")),
					1e-9);
		ck_assert_double_eq_tol(usage_expected(ahead, day_of("2027-05-11"))
						- usage_expected(ahead, day_of("2027-05-01")),
					20 * usage.rate[4], 1e-9);
		ck_assert_double_eq(usage_chance(ahead, 1e-9, day_of("2026-06-01")), 0);
		usage_reach(ahead, 1, NONE, &due);
		ck_assert_int_gt(due.early, day_of("2026-06-01"));
		usage_reach(ahead, 150, NONE, &due); /* some 110 are to be expected in all */
		ck_assert(due.likely == NONE);
		usage_look_ahead(ahead, &usage, day_of("2025-10-05"), days, 0);
		ck_assert_double_eq(usage_expected(ahead, day_of("2035-01-01")), 0);
	}
END_TEST

static int
any_log(GRand *r, gint64 today, struct usage_interval *interval)
{
	int n = g_rand_int_range(r, 0, 20);
	gint64 day = today - g_rand_int_range(r, 400, 3000);

	for (int i = 0; i < n; i++) {
		gint64 next = day + g_rand_int_range(r, 1, 200);

		interval[i] = (struct usage_interval){
			day, next,
			g_rand_int_range(r, 0, 4) ? g_rand_double_range(r, 0, .3) * (double)(next - day) : 0,
			1
		};
		day = next + g_rand_int_range(r, 0, 2) * g_rand_int_range(r, 0, 90);
	}
	return n;
}

static int
any_days(GRand *r, gint64 today, struct usage_days *days)
{
	int n = g_rand_int_range(r, 1, 12);
	gint64 day = today - 30 + g_rand_int_range(r, 0, 200);

	for (int i = 0; i < n; i++) {
		gint64 to = day + g_rand_int_range(r, 1, 300);

		days[i] = (struct usage_days){ day, to,
					       g_rand_int_range(r, 0, 2) ? 1
									 : g_rand_double_range(r, .02, 12) };
		day = to + g_rand_int_range(r, 0, 200);
	}
	return n;
}

static gint64
any_ahead(GRand *r)
{
	struct usage_interval interval[20];
	struct usage_days days[12];
	struct usage_prior prior;
	struct usage usage;
	gint64 today = g_rand_int_range(r, 15000, 25000);
	int n_days;

	usage_prior_default(&prior, g_rand_int_range(r, 3, 6) * 100 + 15,
			    g_rand_int_range(r, 8, 12) * 100 + 1);
	prior.hours = g_rand_double_range(r, 1, 300);
	usage_fit(&prior, interval, any_log(r, today, interval), &usage);
	n_days = any_days(r, today, days);
	usage_look_ahead(ahead, &usage, today, g_rand_boolean(r) ? days : NULL, n_days);
	return today;
}

static double
any_remaining(GRand *r)
{
	return pow(10, g_rand_double_range(r, -2, 4));
}

/* Day by day, as the method is stated: the first days by which the chance is so much. */
static void
try_each(gint64 today, double remaining, struct usage_due *due)
{
	gint64 end = day_add_months(today, 120);

	*due = (struct usage_due){ NONE, NONE, NONE };
	for (gint64 day = today; day <= end && due->late == NONE; day++) {
		double chance = usage_chance(ahead, remaining, day);

		if (due->early == NONE && chance >= .1)
			due->early = day;
		if (due->likely == NONE && chance >= .5)
			due->likely = day;
		if (chance >= .9)
			due->late = day;
	}
}

START_TEST(days_are_found_as_by_trying_each)
{
	GRand *r = seeded("days are found as by trying each");

	for (int k = 0; k < 25; k++) {
		gint64 today = any_ahead(r);
		double remaining = any_remaining(r);
		struct usage_due due, tried;

		usage_reach(ahead, remaining, NONE, &due);
		try_each(today, remaining, &tried);
		ck_assert_int_eq(due.early, tried.early);
		ck_assert_int_eq(due.likely, tried.likely);
		ck_assert_int_eq(due.late, tried.late);
	}
	g_rand_free(r);
}
END_TEST

/* NONE comes last. */
static gint64
or_never(gint64 day)
{
	return day == NONE ? G_MAXINT64 : day;
}

START_TEST(late_is_not_early_and_more_is_not_sooner)
	{
		GRand *r = seeded("late is not early and more is not sooner");

		for (int k = 0; k < 100; k++) {
			any_ahead(r);
			for (int j = 0; j < 5; j++) {
				double remaining = any_remaining(r);
				struct usage_due due, more;

				usage_reach(ahead, remaining, NONE, &due);
				usage_reach(ahead, remaining * g_rand_double_range(r, 1, 1.2), NONE, &more);
				ck_assert_int_le(or_never(due.early), or_never(due.likely));
				ck_assert_int_le(or_never(due.likely), or_never(due.late));
				ck_assert_int_le(or_never(due.early), or_never(more.early));
				ck_assert_int_le(or_never(due.likely), or_never(more.likely));
				ck_assert_int_le(or_never(due.late), or_never(more.late));
			}
		}
		g_rand_free(r);
	}
END_TEST

static const struct {
	const char *says;
	double remaining, hours;
} extremes[] = {
	{ "no use at all, much remaining", 1e7, 0 },
	{ "a hair remaining", 1e-12, 50 },
	{ "all day long", 8766, 8766 },
	{ "beyond any meter", 1e300, 50 },
	{ "without end", INFINITY, 50 },
	{ "next to no use", 1, 1e-9 },
};

START_TEST(extremes_end_well)
	{
		struct usage_prior prior;
		struct usage usage;
		struct usage_due due;

		usage_prior_default(&prior, NONE, NONE);
		prior.hours = extremes[_i].hours;
		usage_fit(&prior, NULL, 0, &usage);
		usage_look_ahead(ahead, &usage, 20000, NULL, 0);
		usage_reach(ahead, extremes[_i].remaining, NONE, &due);
		ck_assert_msg(or_never(due.early) <= or_never(due.likely)
				      && or_never(due.likely) <= or_never(due.late),
			      "%s", extremes[_i].says);
		ck_assert_int_eq(due.likely == NONE, usage_expected(ahead, day_add_months(20000, 120))
							     < extremes[_i].remaining * .9);
	}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Days ahead are early, likely and late in that order");
	TCase *tc = tcase_create("ahead");

	suite_add_tcase(s, tc);
	tcase_add_checked_fixture(tc, set_up, tear_down);
	tcase_add_test(tc, a_lay_up_planned_has_no_running);
	tcase_add_test(tc, days_are_found_as_by_trying_each);
	tcase_add_test(tc, late_is_not_early_and_more_is_not_sooner);
	tcase_add_loop_test(tc, extremes_end_well, 0, G_N_ELEMENTS(extremes));
	return run_all(s);
}
