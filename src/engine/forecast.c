/* What use lies ahead: rates learned from the log month by month, on the days in season to come. */
#include "base/date.h"
#include "engine/timeline_inside.h"

#include <math.h>

/* Seasons further back say nothing of the next; each year back weighs this much less than the one after it: an
 * assumption. */
enum { RECORD_YEARS = 5, DAY_HOURS = 24 };
#define YEAR_WEIGHT .8
#define HOUR 3600.

/* Outings are counted as the hours of one engine more: each counts for one, so nothing varies but their number, and 50 h
 * a year in outings of 3 h are 17. */
#define OUTINGS(t) ((t)->n_engines + 1)
static const double outings_a_year = 50 / 3.;

static int
row_of(const struct timeline *t, int engine)
{
	return engine < 0 ? t->n_engines : engine;
}

static int
engine_of(const struct timeline *t, int row)
{
	return row == t->n_engines ? -1 : row;
}

/* Days in season from a to b, month by month, as outings then go: from where the boat lies, in the water usual there.
 * *lay is the first stretch that can hold them, *month the month. */
static void
add_ahead(struct timeline *t, gint64 a, gint64 b, guint *lay, struct months *month)
{
	const struct lay *l = ELEMENTS(t->lays, const struct lay);

	while (*lay < t->lays->len && l[*lay].to <= a)
		++*lay;
	for (guint i = *lay; i < t->lays->len && l[i].from < b; i++) {
		enum exposure base = l[i].stand == STAND_AFLOAT ? EXPOSURE_AFLOAT : EXPOSURE_OUT;
		gint64 to = MIN(b, l[i].to);
		struct ahead ahead;

		for (gint64 day = MAX(a, l[i].from); day < to; day = ahead.to) {
			while (month->to <= day)
				months_next(month);
			ahead = (struct ahead) { day, MIN(to, month->to),
						 KEY(base + (guint)l[i].water, l[i].stand, l[i].water, FALSE, FALSE) |
							 KEY_AT(l[i].berth, month->month) };
			g_array_append_val(t->ahead, ahead);
		}
	}
}

static double
ahead_rate(const struct timeline *t, int rated, const struct ahead *a)
{
	return is_plain(rated) ? 1 : rates_rate(t->rates, rated, a->key);
}

void
forecast_lay_out(struct timeline *t)
{
	const struct season_day *s = ELEMENTS(t->seasons, const struct season_day);
	gint64 tomorrow = t->today + 1;
	struct months month;
	guint lay = 0, n = (guint)t->n_engines + 2;

	months_begin(&month, tomorrow);
	g_array_set_size(t->ahead, 0);
	if (t->all_year)
		add_ahead(t, tomorrow, t->end, &lay, &month);
	for (guint i = 0; i < t->seasons->len; i++)
		if (s[i].haul_out > tomorrow)
			add_ahead(t, MAX(s[i].launch, tomorrow), s[i].haul_out, &lay, &month);
	if (t->learned->len < n) {
		g_array_set_size(t->learned, n);
		g_array_set_size(t->outlooks, n * RATED_COUNT);
	}
}

/* The running of an engine, or the outings, up to the i-th day out, from some day on. */
struct record {
	const double *seconds;	/* NULL: outings */
	const int *trips;
};

static double
amount_to(const struct timeline *t, const struct record *r, gint64 day)
{
	int i = days_out_to(t, day);

	return r->seconds ? r->seconds[i] / HOUR : r->trips[i];
}

/* One interval for each month, a month without use among them. */
static void
add_months(const struct timeline *t, const struct record *r, gint64 from, gint64 to)
{
	double before = from < to ? amount_to(t, r, from - 1) : 0;
	struct months month;

	months_begin(&month, from);
	for (; from < to; from = month.from) {
		struct usage_interval u = { .from = from, .to = MIN(to, month.to) };
		double after = amount_to(t, r, u.to - 1);

		u.hours = after - before;
		u.weight = pow(YEAR_WEIGHT, (double)((t->today - from) / 366));
		g_array_append_val(t->intervals, u);
		before = after;
		months_next(&month);
	}
}

/* The first day that the log knows: that of the first run, or the launch on record before it. */
static gint64
record_from(const struct timeline *t)
{
	const struct season_day *s = ELEMENTS(t->seasons, const struct season_day);
	gint64 first = ELEMENTS(t->days_out, const struct day_out)[0].date;

	for (guint i = 0; i < t->seasons->len; i++)
		if (s[i].known && s[i].launch < first && first < s[i].haul_out)
			return s[i].launch;
	return first;
}

/* The days in season that the log knows, up to today. */
static void
intervals_lay_out(const struct timeline *t, int row)
{
	const struct season_day *s = ELEMENTS(t->seasons, const struct season_day);
	struct record r = { NULL, ELEMENTS(t->trips, const int) };
	gint64 from;

	g_array_set_size(t->intervals, 0);
	if (!t->n_days_out)
		return;
	from = MAX(record_from(t), day_add_months(t->today, -12 * RECORD_YEARS));
	if (row < OUTINGS(t))
		r.seconds = seconds_sums(t, engine_of(t, row), MECH_NONE, days_out_to(t, from - 1));
	if (t->all_year)
		add_months(t, &r, from, t->today + 1);
	for (guint i = 0; i < t->seasons->len && s[i].launch <= t->today; i++)
		add_months(t, &r, MAX(from, s[i].launch), MIN(t->today + 1, s[i].haul_out));
}

/* The spread of single outings, a day each.  A day of more than its hours is a lump that nobody logged day by day.  Of
 * none, what is usual: months without an outing do not show that outings are even. */
static void
phi_by_outings(const struct timeline *t, int row, const struct usage_prior *prior, struct usage *usage)
{
	int from = days_out_to(t, day_add_months(t->today, -12 * RECORD_YEARS)), n = 0;
	const double *sum = seconds_sums(t, engine_of(t, row), MECH_NONE, from);
	double all = 0, squares = 0;

	for (int i = from; i < t->n_days_out; i++) {
		double hours = (sum[i + 1] - sum[i]) / HOUR;

		if (hours <= 0 || hours > DAY_HOURS)
			continue;
		n++;
		all += hours;
		squares += hours * hours;
	}
	usage_set_phi(usage, usage_phi_of_outings(prior, n, all, squares));
}

static const struct usage *
learned(const struct timeline *t, int row)
{
	/* A cache: the answers do not depend on it. */
	struct learned *l = &ELEMENTS(t->learned, struct learned)[row];
	struct usage_prior prior;

	if (l->made == t->made)
		return &l->usage;
	l->made = t->made;
	usage_prior_in_season(&prior, t->all_year ? NONE : t->habit.launch, t->all_year ? NONE : t->habit.haul_out);
	if (row == OUTINGS(t)) {
		prior.hours = outings_a_year;
		prior.phi = 1;
	}
	intervals_lay_out(t, row);
	usage_fit(&prior, ELEMENTS(t->intervals, const struct usage_interval), (int)t->intervals->len, &l->usage);
	if (row < OUTINGS(t))
		phi_by_outings(t, row, &prior, &l->usage);
	return &l->usage;
}

/* The days in season to come, as running on them counts. */
static void
days_lay_out(const struct timeline *t, struct rating r)
{
	const struct ahead *a = ELEMENTS(t->ahead, const struct ahead);

	g_array_set_size(t->days_ahead, 0);
	for (guint i = 0; i < t->ahead->len; i++) {
		struct usage_days d = { a[i].from, a[i].to, ahead_rate(t, r.rated, &a[i]) };

		if (r.rated == RATED_SALT)
			d.counts = 1 + (r.pair - 1) * d.counts;
		g_array_append_val(t->days_ahead, d);
	}
}

static gboolean
counts_plainly(const struct timeline *t)
{
	const struct usage_days *d = ELEMENTS(t->days_ahead, const struct usage_days);
	guint i = 0;

	while (i < t->days_ahead->len && d[i].counts >= 1 && d[i].counts <= 1)
		i++;
	return i == t->days_ahead->len;
}

static const struct usage_ahead *
outlook(const struct timeline *t, int row, struct rating r)
{
	static const struct usage_days none;	/* NULL would stand for all days */
	struct outlook *o = &ELEMENTS(t->outlooks, struct outlook)[row * RATED_COUNT + r.rated];

	if (o->made != t->made || (r.rated == RATED_SALT && o->pair != r.pair)) {
		o->made = t->made;
		o->pair = r.pair;
		days_lay_out(t, r);
		o->plain = r.rated != MECH_NONE && counts_plainly(t);
		if (!o->ahead && !o->plain)
			o->ahead = usage_ahead_new();
		if (!o->plain)
			usage_look_ahead(o->ahead, learned(t, row), t->today + 1,
					 t->days_ahead->len ? ELEMENTS(t->days_ahead, const struct usage_days) : &none,
					 (int)t->days_ahead->len);
	}
	return o->plain ? outlook(t, row, PLAINLY) : o->ahead;
}

void
forecast_free(struct timeline *t)
{
	for (guint i = 0; i < t->outlooks->len; i++)
		if (ELEMENTS(t->outlooks, struct outlook)[i].ahead)
			usage_ahead_free(ELEMENTS(t->outlooks, struct outlook)[i].ahead);
}

/* -1 are all of them, where there is one. */
static gboolean
has_engine(const struct timeline *t, int engine)
{
	return engine < t->n_engines && t->n_engines > 0;
}

double
timeline_usage(const struct timeline *t, int engine)
{
	const struct ahead *a = ELEMENTS(t->ahead, const struct ahead);
	gint64 year = day_add_months(t->today, 12) + 1, days = 0;

	if (!has_engine(t, engine))
		return 0;
	for (guint i = 0; i < t->ahead->len && a[i].from < year; i++)
		days += MIN(a[i].to, year) - a[i].from;
	return days ? HOUR * usage_expected(outlook(t, row_of(t, engine), PLAINLY), year) / (double)days : 0;
}

/* A day beyond which it need not be known: NONE for none. */
static void
reach(const struct usage_ahead *a, gint64 today, double much, gint64 before, struct usage_due *due)
{
	*due = (struct usage_due) { NONE, NONE, NONE };
	if (before != NONE && (before <= today || usage_is_later(a, much, before)))
		return;
	usage_reach(a, MAX(much, NEARLY), NONE, due);
}

void
rated_seconds_reach(const struct timeline *t, int engine, struct rating r, double seconds, gint64 before,
		    struct usage_due *due)
{
	*due = (struct usage_due) { NONE, NONE, NONE };
	if (has_engine(t, engine))
		reach(outlook(t, row_of(t, engine), is_plain(r.rated) ? PLAINLY : r), t->today, seconds / HOUR, before, due);
}

void
timeline_seconds_reach(const struct timeline *t, int engine, enum mechanism m, double seconds, gint64 before,
		       struct usage_due *due)
{
	rated_seconds_reach(t, engine, (struct rating) { (int)m, 1 }, seconds, before, due);
}

void
timeline_outings_reach(const struct timeline *t, double outings, gint64 before, struct usage_due *due)
{
	/* They come whole: of a smooth sum a half less, as in every continuity correction. */
	reach(outlook(t, OUTINGS(t), PLAINLY), t->today, outings - .5, before, due);
}

double
rated_seconds_ahead(const struct timeline *t, int engine, struct rating r, gint64 b)
{
	if (b <= t->today || !has_engine(t, engine))
		return 0;
	return HOUR * usage_expected(outlook(t, row_of(t, engine), is_plain(r.rated) ? PLAINLY : r), b + 1);
}

double
timeline_seconds_ahead(const struct timeline *t, int engine, enum mechanism m, gint64 b)
{
	return rated_seconds_ahead(t, engine, (struct rating) { (int)m, 1 }, b);
}
