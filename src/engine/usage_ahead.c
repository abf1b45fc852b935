/* The days on which a number of hours will be reached: ten years laid out once, then searched for each
 * limit. */
#include "engine/usage.h"

#include "base/date.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

enum { MONTHS = 12, HORIZON_MONTHS = 120 };

/* From this day on things go evenly, to the next knot. */
struct knot {
	gint64 day;
	double mu, rate; /* hours as they count, to this day and then a day */
	double squares, squares_rate; /* the same, counting for the square of what an hour counts for */
	double year_mu, years; /* mu at the year's beginning; sum of squares of the years before */
};

struct usage_ahead {
	gint64 today, end;
	double phi, rate_spread2, year_spread2;
	GArray *knots; /* struct knot; at last one at the end */
};

#define KNOT(a, i) g_array_index((a)->knots, struct knot, (i))

struct usage_ahead *
usage_ahead_new(void)
{
	struct usage_ahead *a = g_new0(struct usage_ahead, 1);

	a->knots = g_array_new(FALSE, FALSE, sizeof(struct knot));
	return a;
}

void
usage_ahead_free(struct usage_ahead *a)
{
	g_array_free(a->knots, TRUE);
	g_free(a);
}

/* What an hour counts for on day, and to which day at most that holds; *days is moved on to the first
 * still to come. */
static double
counts_on(gint64 day, const struct usage_days **days, const struct usage_days *days_end, gint64 *until)
{
	while (*days < days_end && (*days)->to <= day)
		++*days;
	if (*days == days_end)
		return 0;
	if ((*days)->from > day) {
		*until = MIN(*until, (*days)->from);
		return 0;
	}
	*until = MIN(*until, (*days)->to);
	return (*days)->counts;
}

static struct knot
step_from(const struct knot *k, gint64 day)
{
	struct knot next = *k;
	double days = (double)(day - k->day);

	next.day = day;
	next.mu += k->rate * days;
	next.squares += k->squares_rate * days;
	return next;
}

/* The squares of the years before, as one of them ends. */
static void
begin_year(struct knot *k)
{
	k->years += (k->mu - k->year_mu) * (k->mu - k->year_mu);
	k->year_mu = k->mu;
}

void
usage_look_ahead(struct usage_ahead *a, const struct usage *usage, gint64 today,
		 const struct usage_days *days, int n)
{
	struct knot k = { .day = today };
	int year, month, mday;
	gint64 month_end;
	const struct usage_days *next = days, *days_end = days ? days + n : NULL;

	a->today = today;
	a->end = day_add_months(today, HORIZON_MONTHS);
	a->phi = usage->phi;
	a->rate_spread2 = usage->rate_spread2;
	a->year_spread2 = usage->year_spread2;
	g_array_set_size(a->knots, 0);
	day_to_ymd(today, &year, &month, &mday);
	month_end = today - mday + 1 + month_days(year, month);
	while (k.day < a->end) {
		gint64 until = MIN(a->end, month_end);
		double counts = days ? counts_on(k.day, &next, days_end, &until) : 1;

		k.rate = usage->rate[month - 1] * counts;
		k.squares_rate = k.rate * counts;
		g_array_append_val(a->knots, k);
		k = step_from(&k, until);
		if (until < month_end)
			continue;
		year += month == MONTHS;
		month = month % MONTHS + 1;
		month_end += month_days(year, month);
		if (month == usage->year_begins)
			begin_year(&k);
	}
	g_array_append_val(a->knots, k);
}

static struct knot
at_day(const struct usage_ahead *a, gint64 day)
{
	guint low = 0, high = a->knots->len;

	day = CLAMP(day, a->today, a->end);
	while (high - low > 1) {
		guint middle = (low + high) / 2;

		if (KNOT(a, middle).day <= day)
			low = middle;
		else
			high = middle;
	}
	return step_from(&KNOT(a, low), day);
}

static double
variance_at(const struct usage_ahead *a, const struct knot *k)
{
	double year = k->mu - k->year_mu;

	return a->phi * k->squares + a->rate_spread2 * k->mu * k->mu
	     + a->year_spread2 * (k->years + year * year);
}

double
usage_expected(const struct usage_ahead *a, gint64 day)
{
	return at_day(a, day).mu;
}

double
usage_variance(const struct usage_ahead *a, gint64 day)
{
	struct knot k = at_day(a, day);

	return variance_at(a, &k);
}

static double
chance_at(const struct usage_ahead *a, double remaining, const struct knot *k)
{
	double variance = variance_at(a, k);

	if (!(remaining > 0))
		return 1;
	if (!(k->mu > 0) || !(variance > 0))
		return k->mu >= remaining;
	return gsl_cdf_gamma_Q(remaining, k->mu * k->mu / variance, variance / k->mu);
}

double
usage_chance(const struct usage_ahead *a, double remaining, gint64 day)
{
	struct knot k = at_day(a, day);

	return chance_at(a, remaining, &k);
}

/* What is looked for: the first day by which the chance of remaining hours is that; z cuts it off the
 * normal curve. */
struct sought {
	double remaining, chance, z;
};

static gboolean
is_reached(const struct usage_ahead *a, const struct sought *s, const struct knot *k)
{
	return chance_at(a, s->remaining, k) >= s->chance;
}

/* How far it is from being reached, in deviations, after Wilson and Hilferty: the cube root of a gamma is
 * nearly normal. Wrong by a small part of one where the spread is less than the mean, and much where it
 * is larger. */
static double
nearly_short_by(const struct usage_ahead *a, const struct sought *s, const struct knot *k)
{
	double cv = sqrt(variance_at(a, k)) / k->mu;

	return (cbrt(s->remaining / k->mu) - 1 + cv * cv / 9) * 3 / cv - s->z;
}

/* Not to be reached by then, as can be told at little cost.  Markov's inequality where the other says
 * little. */
static gboolean
is_far(const struct usage_ahead *a, const struct sought *s, const struct knot *k)
{
	if (k->mu <= s->chance * s->remaining)
		return k->mu < s->chance * s->remaining || !(k->mu > 0);
	return k->mu * k->mu > variance_at(a, k) && nearly_short_by(a, s, k) > .5;
}

static gboolean
is_nearly_reached(const struct usage_ahead *a, const struct sought *s, const struct knot *k)
{
	return nearly_short_by(a, s, k) <= 0;
}

typedef gboolean reached_fn(const struct usage_ahead *a, const struct sought *s, const struct knot *k);

static gboolean
by_day(const struct usage_ahead *a, const struct sought *s, const struct knot *k, gint64 day,
       reached_fn *reached)
{
	struct knot at = step_from(k, day);

	return reached(a, s, &at);
}

/* Narrows (low, high] to one day: reached at high and not at low. */
static void
bisect(const struct usage_ahead *a, const struct sought *s, const struct knot *k, gint64 days[2],
       reached_fn *reached)
{
	while (days[1] - days[0] > 1) {
		gint64 middle = days[0] + (days[1] - days[0]) / 2;

		days[!!by_day(a, s, k, middle, reached)] = middle;
	}
}

/* The first day after k's, up to last, on which it is reached, as it is at last and not at k: a guess,
 * and the few steps that are left from there. */
static gint64
reach_from(const struct usage_ahead *a, const struct sought *s, const struct knot *k, gint64 last)
{
	gint64 days[2] = { k->day, last }, near[2] = { k->day, last };

	bisect(a, s, k, near, is_nearly_reached);
	for (gint64 day = MIN(near[1], last - 1), step = 1; day > days[0] && day < days[1]; step *= 2) {
		gboolean reached = by_day(a, s, k, day, is_reached);

		days[reached] = day;
		day += reached ? -step : step;
	}
	bisect(a, s, k, days, is_reached);
	return days[1];
}

/* The first knot from i on by which it is reached; beyond the last when it is by none. */
static guint
knot_reaching(const struct usage_ahead *a, const struct sought *s, guint i)
{
	while (i < a->knots->len && (is_far(a, s, &KNOT(a, i)) || !is_reached(a, s, &KNOT(a, i))))
		i++;
	return i;
}

static const struct {
	double chance, z;
} levels[] = { { .1, 1.2815515655446004 }, { .5, 0 }, { .9, -1.2815515655446004 } };

gboolean
usage_is_later(const struct usage_ahead *a, double remaining, gint64 day)
{
	struct sought s = { remaining, levels[0].chance, levels[0].z };
	struct knot k = at_day(a, day);

	if (!(remaining > 0))
		return FALSE;
	for (guint i = 1; i < a->knots->len && KNOT(a, i).day < day; i++)
		if (!is_far(a, &s, &KNOT(a, i)) && is_reached(a, &s, &KNOT(a, i)))
			return FALSE;
	return is_far(a, &s, &k) || !is_reached(a, &s, &k);
}

void
usage_reach(const struct usage_ahead *a, double remaining, gint64 calendar, struct usage_due *due)
{
	gint64 *const days[] = { &due->early, &due->likely, &due->late };
	guint knot = 1;

	for (guint i = 0; i < G_N_ELEMENTS(levels); i++) {
		struct sought s = { remaining, levels[i].chance, levels[i].z };

		*days[i] = remaining > 0 ? NONE : a->today;
		/* Knot by knot, for the chance can fall a little as a year begins or an hour comes to
		 * count for less; between two, where use is even, it rises past a level once. */
		if (remaining > 0)
			knot = knot_reaching(a, &s, knot);
		if (remaining > 0 && knot < a->knots->len)
			*days[i] = reach_from(a, &s, &KNOT(a, knot - 1), KNOT(a, knot).day);
		if (calendar != NONE && (*days[i] == NONE || calendar < *days[i]))
			*days[i] = calendar;
	}
}
