#include "engine/usage.h"

#include "base/date.h"
#include "published.h"

static struct published forecast, data;
static struct usage_ahead *ahead;

static gint64
day_of(const char *iso)
{
	gint64 day = NONE;

	ck_assert_msg(day_parse(iso, NONE, &day, NULL), "no day: %s", iso);
	return day;
}

/* The example's year: no figure of it is printed, but its rates settle for this one alone. */
static void
example_prior(struct usage_prior *prior)
{
	static const double share[12] = { 0, 0, .02, .08, .13, .17, .20, .19, .13, .06, .02, 0 };

	usage_prior_default(prior, NONE, NONE);
	memcpy(prior->share, share, sizeof share);
}

static int
example_log(struct usage_interval interval[16])
{
	struct usage_reading reading[16];

	ck_assert_int_eq(data.n, 8);
	for (int i = 0; i < data.n; i++) {
		reading[i].day = day_of(published_text(&data, i, "date"));
		reading[i].hours = published_number(&data, i, "hours");
	}
	return usage_intervals(reading, data.n, interval);
}

static void
example(struct usage *usage, gboolean logged)
{
	struct usage_interval interval[16];
	struct usage_prior prior;

	example_prior(&prior);
	usage_fit(&prior, interval, logged ? example_log(interval) : 0, usage);
}

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

#define TODAY "2025-10-05"

static double
fitted_in(const struct usage *usage, const char *days)
{
	g_auto(GStrv) ends = g_strsplit(days, "..", 2);

	return usage_hours(usage, day_of(ends[0]), day_of(ends[1]));
}

static double
figure(int i, const struct usage *usage)
{
	const char *name = published_text(&forecast, i, "name"),
		   *arg = published_text(&forecast, i, "date_or_arg");

	if (g_str_has_prefix(name, "lam_"))
		return usage->rate[atoi(arg) - 1];
	if (!strcmp(name, "annual"))
		return usage_year(usage);
	if (!strcmp(name, "phi"))
		return usage->phi;
	if (!strcmp(name, "cr2"))
		return usage->rate_spread2;
	if (g_str_has_prefix(name, "P_"))
		return usage_chance(ahead, published_number(&forecast, i, "remaining_h"), day_of(arg));
	if (g_str_has_prefix(name, "mu_"))
		return strstr(arg, "..") ? fitted_in(usage, arg) : usage_expected(ahead, day_of(arg));
	ck_abort_msg("a row of another kind: %s", name);
	return 0;
}

START_TEST(forecasts_are_as_published)
	{
		struct usage usage;
		struct usage_due due;
		char text[DAY_TEXT];
		double level = published_number(&forecast, _i, "date_or_arg");

		example(&usage, strstr(published_text(&forecast, _i, "case"), "no log") == NULL);
		usage_look_ahead(ahead, &usage, day_of(TODAY), NULL, 0);
		if (strcmp(published_text(&forecast, _i, "tolerance"), "exact")) {
			published_check(&forecast, _i, figure(_i, &usage));
			return;
		}
		usage_reach(ahead, published_number(&forecast, _i, "remaining_h"), NONE, &due);
		published_check_text(&forecast, _i,
				     day_iso(level < .3   ? due.early
					     : level < .7 ? due.likely
							  : due.late,
					     text));
	}
END_TEST

/* The table of the method's description, which gives more days than the rows. */
static const struct {
	double remaining;
	gboolean logged;
	const char *early, *likely, *late;
} table[] = {
	{ 20, TRUE, "2026-06-09", "2026-07-07", "2026-08-15" },
	{ 53, TRUE, "2026-08-20", "2027-05-22", "2027-08-05" },
	{ 100, TRUE, "2027-07-23", "2028-05-24", "2028-09-14" },
	{ 53, FALSE, "2026-07-20", "2027-04-29", "2028-05-26" },
	{ 0, TRUE, TODAY, TODAY, TODAY },
	{ -3, TRUE, TODAY, TODAY, TODAY },
	{ 520, TRUE, "2035-06-05", "", "" }, /* 469 h are expected in ten years; found by trying each day */
	{ 1000, TRUE, "", "", "" },
};

START_TEST(each_limit_has_three_days)
	{
		struct usage usage;
		struct usage_due due;
		char early[DAY_TEXT], likely[DAY_TEXT], late[DAY_TEXT];

		example(&usage, table[_i].logged);
		usage_look_ahead(ahead, &usage, day_of(TODAY), NULL, 0);
		usage_reach(ahead, table[_i].remaining, NONE, &due);
		ck_assert_str_eq(day_iso(due.early, early), table[_i].early);
		ck_assert_str_eq(day_iso(due.likely, likely), table[_i].likely);
		ck_assert_str_eq(day_iso(due.late, late), table[_i].late);
	}
END_TEST

static const struct {
	const char *calendar, *early, *likely, *late;
	double remaining;
} folds[] = {
	{ "2030-01-01", "2026-08-20", "2027-05-22", "2027-08-05", 53 },
	{ "2027-06-01", "2026-08-20", "2027-05-22", "2027-06-01", 53 },
	{ "2026-08-19", "2026-08-19", "2026-08-19", "2026-08-19", 53 },
	{ "2025-01-01", "2025-01-01", "2025-01-01", "2025-01-01", 53 },
	{ "2031-01-01", "2031-01-01", "2031-01-01", "2031-01-01", 1000 }, /* hours not in sight */
};

START_TEST(a_calendar_limit_is_folded_in)
	{
		struct usage usage;
		struct usage_due due;

		example(&usage, TRUE);
		usage_look_ahead(ahead, &usage, day_of(TODAY), NULL, 0);
		usage_reach(ahead, folds[_i].remaining, day_of(folds[_i].calendar), &due);
		ck_assert_int_eq(due.early, day_of(folds[_i].early));
		ck_assert_int_eq(due.likely, day_of(folds[_i].likely));
		ck_assert_int_eq(due.late, day_of(folds[_i].late));
	}
END_TEST

START_TEST(the_fit_settles)
	{
		struct usage usage;

		example(&usage, TRUE);
		ck_assert_int_eq(usage.rounds - 1,
				 142); /* as the method's description says; the last one moves nothing */
		example(&usage, FALSE);
		ck_assert_int_eq(usage.rounds, 1);
		ck_assert_double_eq_tol(usage_year(&usage), 50, .1); /* .01 a year for each month of none */
	}
END_TEST

START_TEST(readings_make_intervals)
	{
		static const struct usage_reading reading[] = { { 100, 10 }, { 110, 12 }, { 110, 13 },
								{ 120, 13 }, { 130, 5 },  { 140, 8 } };
		struct usage_interval interval[G_N_ELEMENTS(reading)];

		ck_assert_int_eq(usage_intervals(reading, 0, interval), 0);
		ck_assert_int_eq(usage_intervals(reading, 1, interval), 0);
		ck_assert_int_eq(usage_intervals(reading, G_N_ELEMENTS(reading), interval), 3);
		/* The last of a day's counts; none run is a record too; what went backwards is left out. */
		ck_assert_int_eq(interval[0].to, 110);
		ck_assert_double_eq(interval[0].hours, 3);
		ck_assert_double_eq(interval[1].hours, 0);
		ck_assert_int_eq(interval[2].from, 130);
		ck_assert_double_eq(interval[2].hours, 3);
	}
END_TEST

static const struct {
	gint64 launch, haul_out;
	int month;
	double share;
	int begins;
} seasons[] = {
	{ NONE, NONE, 3, 1. / 12, 1 }, /* months of the year round go by their days; see below */
	{ 415, 1015, 1, 0, 1 },          { 415, 1015, 4, 16. / 183, 1 },  { 415, 1015, 7, 31. / 183, 1 },
	{ 415, 1015, 10, 14. / 183, 1 }, { 1101, 401, 12, 31. / 151, 7 }, /* the southern summer */
	{ 1101, 401, 6, 0, 7 },          { 229, 301, 6, 1. / 12, 1 }, /* a day that most years have not */
	{ 501, 501, 5, 31. / 365, 1 },
};

START_TEST(seasons_give_shares)
	{
		struct usage_prior prior;
		double all = 0;

		usage_prior_default(&prior, seasons[_i].launch, seasons[_i].haul_out);
		for (int m = 0; m < 12; m++)
			all += prior.share[m];
		ck_assert_double_eq_tol(all, 1, 1e-12);
		ck_assert_double_eq_tol(prior.share[seasons[_i].month - 1], seasons[_i].share,
					_i ? 1e-12 : .01);
		ck_assert_int_eq(prior.year_begins, seasons[_i].begins);
	}
END_TEST

START_TEST(outings_tell_the_spread_themselves)
	{
		struct usage_prior prior;

		usage_prior_default(&prior, NONE, NONE);
		/* Of mean 3 h and relative spread .6: phi = 3 (1 + .36). */
		ck_assert_double_eq_tol(usage_phi_of_outings(&prior, 1000000, 3e6, 1e6 * 9 * 1.36), 4.08,
					1e-4);
		ck_assert_double_eq(usage_phi_of_outings(&prior, 0, 0, 0), 4);
		ck_assert_double_eq(usage_phi_of_outings(&prior, 4, 4, 4), 2.5);
		ck_assert_double_eq(usage_phi_of_outings(&prior, 1000, 100, 10), 2); /* the floor */
	}
END_TEST

/* Hours of a random log, by the day for one fit and in longer intervals for another. */
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

START_TEST(splitting_what_is_known_by_the_day_changes_nothing)
	{
		GRand *r = seeded("splitting what is known by the day changes nothing");

		for (int k = 0; k < 200; k++) {
			struct usage_prior prior;
			struct usage_interval whole = { .weight = 1 }, part[2];
			struct usage one, two;
			int year, month, mday;

			/* Hours within one month, in one piece and cut where half of the days lie. */
			whole.from = g_rand_int_range(r, 10000, 30000);
			day_to_ymd(whole.from, &year, &month, &mday);
			whole.from -= mday - 1;
			whole.to = whole.from + month_days(year, month);
			whole.hours = g_rand_double_range(r, 0, 60);
			part[0] = part[1] = whole;
			part[0].to = part[1].from =
				whole.from + g_rand_int_range(r, 1, month_days(year, month));
			part[0].hours = g_rand_double_range(r, 0, whole.hours);
			part[1].hours = whole.hours - part[0].hours;
			usage_prior_default(&prior, 415, 1015);
			usage_fit(&prior, &whole, 1, &one);
			usage_fit(&prior, part, 2, &two);
			ck_assert_int_eq(one.rounds, two.rounds);
			for (int m = 0; m < 12; m++)
				ck_assert_double_eq_tol(one.rate[m], two.rate[m], 1e-12);
		}
		g_rand_free(r);
	}
END_TEST

/* What is left over of hours over several months is shared out so that rates times days give the hours
 * again, but for the prior's weight. */
START_TEST(without_a_prior_rates_give_the_hours_back)
	{
		GRand *r = seeded("without a prior rates give the hours back");

		for (int k = 0; k < 100; k++) {
			struct usage_prior prior;
			struct usage usage;
			struct usage_interval interval = { .from = g_rand_int_range(r, 10000, 30000),
							   .weight = 1 };

			interval.to = interval.from + g_rand_int_range(r, 1, 365);
			interval.hours = g_rand_double_range(r, 5, 300);
			usage_prior_default(&prior, NONE, NONE);
			prior.years = 0;
			usage_fit(&prior, &interval, 1, &usage);
			ck_assert_double_eq_tol(usage_hours(&usage, interval.from, interval.to),
						interval.hours, .2);
		}
		g_rand_free(r);
	}
END_TEST

/* Twice the weight of each interval is each interval twice, as far as rates go. */
START_TEST(weight_is_repetition)
	{
		GRand *r = seeded("weight is repetition");

		for (int k = 0; k < 50; k++) {
			struct usage_interval heavy[20], doubled[40];
			struct usage_prior prior;
			struct usage one, two;
			int n = any_log(r, 20000, heavy);

			for (int i = 0; i < n; i++) {
				doubled[2 * i] = doubled[2 * i + 1] = heavy[i];
				heavy[i].weight = 2;
			}
			usage_prior_default(&prior, 415, 1015);
			usage_fit(&prior, heavy, n, &one);
			usage_fit(&prior, doubled, 2 * n, &two);
			for (int m = 0; m < 12; m++)
				ck_assert_double_eq_tol(one.rate[m], two.rate[m], 1e-9);
		}
		g_rand_free(r);
	}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Running ahead is told by what was run");
	TCase *tc = tcase_create("published"), *properties = tcase_create("properties");
	int failed;

	published_read(&forecast, "09_forecast.csv");
	published_read(&data, "09_data.csv");
	suite_add_tcase(s, tc);
	suite_add_tcase(s, properties);
	tcase_add_checked_fixture(tc, set_up, tear_down);
	tcase_add_loop_test(tc, forecasts_are_as_published, 0, forecast.n);
	tcase_add_loop_test(tc, each_limit_has_three_days, 0, G_N_ELEMENTS(table));
	tcase_add_loop_test(tc, a_calendar_limit_is_folded_in, 0, G_N_ELEMENTS(folds));
	tcase_add_test(tc, the_fit_settles);
	tcase_add_test(tc, readings_make_intervals);
	tcase_add_loop_test(tc, seasons_give_shares, 0, G_N_ELEMENTS(seasons));
	tcase_add_test(tc, outings_tell_the_spread_themselves);
	tcase_add_test(properties, splitting_what_is_known_by_the_day_changes_nothing);
	tcase_add_test(properties, without_a_prior_rates_give_the_hours_back);
	tcase_add_test(properties, weight_is_repetition);
	failed = run_all(s);
	published_clear(&forecast);
	published_clear(&data);
	return failed;
}
