/* The clocks: effective days over spans, running seconds and outings over the days out, by running sums. */
#include "engine/timeline_inside.h"

#include <math.h>

/* The runs up to today, a day each. */
void
days_out_lay_out(struct timeline *t, const struct timeline_in *in)
{
	struct day_out *d;
	int *trips, n = -1;
	gint64 *seconds;

	t->columns = in->n_runs;
	g_array_set_size(t->days_out, (guint)in->n_runs);
	g_array_set_size(t->trips, (guint)in->n_runs + 1);
	g_array_set_size(t->seconds, (guint)in->n_runs * (guint)t->n_engines);
	d = ELEMENTS(t->days_out, struct day_out);
	trips = ELEMENTS(t->trips, int);
	seconds = ELEMENTS(t->seconds, gint64);
	trips[0] = 0;
	for (int i = 0; i < in->n_runs && in->run[i].date <= t->today; i++) {
		const struct run *r = &in->run[i];
		guint water = 1u << MIN(r->water, WATER_COUNT);

		if (n < 0 || d[n].date != r->date) {
			n++;
			d[n] = (struct day_out) { .date = r->date };
			trips[n + 1] = trips[n];
			for (int e = 0; e < t->n_engines; e++)
				seconds[e * t->columns + n] = 0;
		}
		d[n].waters |= (guint8)water;
		d[n].unrinsed |= (guint8)(r->rinsed ? 0 : water);
		trips[n + 1] += r->trip != 0;
		if (r->engine >= 0 && r->engine < t->n_engines)
			seconds[r->engine * t->columns + n] += MAX(r->seconds, 0);
	}
	t->n_days_out = n + 1;
}

int
span_at(const struct timeline *t, gint64 day)
{
	const gint32 *from = ELEMENTS(t->span_from, const gint32);
	int low = 0, n = t->n_spans;

	/* The one sought is among the n from low on; no branch to be guessed wrong. */
	while (n > 1) {
		int half = n / 2;

		low = from[low + half] <= day ? low + half : low;
		n -= half;
	}
	return low;
}

static double
span_rate_at(const struct timeline *t, int m, int span)
{
	return is_plain(m) ? 1 : rates_rate(t->rates, m, ELEMENTS(t->span_key, const guint32)[span]);
}

double
day_rate(const struct timeline *t, enum mechanism m, gint64 day)
{
	return span_rate_at(t, m, span_at(t, day));
}

/* Make s ready for n sums; returns the index down to which they are made already. */
static int
sums_made(const struct timeline *t, struct sums *s, int n)
{
	if (s->made == t->made)
		return s->low;
	if (s->size < (guint)n + 1) {
		s->size = MAX((guint)n + 1, 2 * s->size);
		g_free(s->sum);
		s->sum = g_new(double, s->size);
	}
	s->made = t->made;
	s->sum[n] = 0;
	return s->low = n;
}

/* Effective days up to the beginning of each span from that one on. */
static const double *
days_sums(const struct timeline *t, int m, int low)
{
	/* A cache: the answers do not depend on it. */
	struct sums *s = (struct sums *)&t->days[m];
	const gint32 *from = ELEMENTS(t->span_from, const gint32);

	for (int i = sums_made(t, s, t->n_spans); i > low; i--) {
		s->sum[i - 1] = s->sum[i] - (from[i] - from[i - 1]) * span_rate_at(t, m, i - 1);
		s->low = i - 1;
	}
	return s->sum;
}

/* Effective days up to day, on the scale of those sums; outside the spans each day is one. */
static double
days_to(const struct timeline *t, int m, gint64 day)
{
	int i;

	if (day >= t->end)
		return (double)(day - t->end);
	i = span_at(t, day);
	return days_sums(t, m, i)[i] + (double)(day - ELEMENTS(t->span_from, const gint32)[i]) *
					       (day < t->from ? m != RATED_SALT : span_rate_at(t, m, i));
}

double
timeline_days(const struct timeline *t, enum mechanism m, gint64 a, gint64 b)
{
	if (b <= a)
		return 0;
	return is_plain((int)m) ? (double)(b - a) : days_to(t, (int)m, b) - days_to(t, (int)m, a);
}

double
timeline_salt_days(const struct timeline *t, gint64 a, gint64 b)
{
	return b > a ? days_to(t, RATED_SALT, MIN(b, t->end)) - days_to(t, RATED_SALT, MIN(a, t->end)) : 0;
}

/* The first of sum[0 .. n) that is not below value; n when all are. */
static int
first_reaching(const double *sum, int n, double value)
{
	int low = 0;

	while (n > 0) {
		int half = n / 2;

		if (sum[low + half] < value) {
			low += half + 1;
			n -= half + 1;
		} else {
			n = half;
		}
	}
	return low;
}

gint64
timeline_days_reach(const struct timeline *t, enum mechanism m, gint64 a, double days)
{
	const double *sum;
	int from, i;
	double wanted = days - NEARLY, day;

	if (wanted <= 0)
		return a;
	if (is_plain((int)m)) {
		day = (double)a + ceil(wanted);
		return day > (double)t->end ? NONE : (gint64)day;
	}
	wanted += days_to(t, (int)m, a);
	if (a > t->end || wanted > 0)
		return NONE;
	from = span_at(t, a);
	sum = days_sums(t, (int)m, from);
	if (wanted <= sum[from])	/* before the first span */
		return t->from + (gint64)ceil(wanted - sum[from]);
	i = from + first_reaching(&sum[from], t->n_spans - from, wanted) - 1;
	return ELEMENTS(t->span_from, const gint32)[i] + (gint64)ceil((wanted - sum[i]) / span_rate_at(t, (int)m, i));
}

int
days_out_to(const struct timeline *t, gint64 day)
{
	const struct day_out *d = ELEMENTS(t->days_out, const struct day_out);
	int low = 0, n = t->n_days_out;

	if (!n || d[n - 1].date <= day)	/* most ask up to today */
		return n;
	while (n > 1) {
		int half = n / 2;

		low = d[low + half].date <= day ? low + half : low;
		n -= half;
	}
	return low + (d[low].date <= day);
}

/* Seconds on a day out: of one engine, or of all. */
static gint64
seconds_on(const struct timeline *t, int engine, int day)
{
	const gint64 *seconds = ELEMENTS(t->seconds, const gint64);
	gint64 all = 0;

	if (engine < t->n_engines)
		return seconds[engine * t->columns + day];
	for (int e = 0; e < t->n_engines; e++)
		all += seconds[e * t->columns + day];
	return all;
}

const double *
seconds_sums(const struct timeline *t, int engine, int rated, int low)
{
	const struct day_out *d = ELEMENTS(t->days_out, const struct day_out);
	struct sums *s;

	if (engine >= t->n_engines)
		return NULL;
	if (engine < 0)
		engine = t->n_engines;
	rated = is_plain(rated) ? MECH_NONE : rated;
	s = &ELEMENTS(t->seconds_sums, struct sums)[engine * RATED_COUNT + rated];
	for (int i = sums_made(t, s, t->n_days_out); i > low; i--) {
		double rate = rated == MECH_NONE ? 1 : rates_rate(t->rates, rated, d[i - 1].key);

		s->sum[i - 1] = s->sum[i] - (double)seconds_on(t, engine, i - 1) * rate;
		s->low = i - 1;
	}
	return s->sum;
}

static double
seconds_between(const struct timeline *t, int engine, int rated, gint64 a, gint64 b)
{
	int from = days_out_to(t, a), to = days_out_to(t, b);
	const double *sum = seconds_sums(t, engine, rated, from);

	return sum && b > a ? sum[to] - sum[from] : 0;
}

double
timeline_seconds(const struct timeline *t, int engine, enum mechanism m, gint64 a, gint64 b)
{
	return seconds_between(t, engine, (int)m, a, b);
}

double
rated_seconds(const struct timeline *t, int engine, struct rating r, gint64 a, gint64 b)
{
	double seconds = seconds_between(t, engine, r.rated, a, b);

	return r.rated == RATED_SALT ? seconds_between(t, engine, MECH_NONE, a, b) + (r.pair - 1) * seconds : seconds;
}

int
timeline_outings(const struct timeline *t, gint64 a, gint64 b)
{
	const int *trips = ELEMENTS(t->trips, const int);

	return b > a ? trips[days_out_to(t, b)] - trips[days_out_to(t, a)] : 0;
}

gint64
seconds_reached(const struct timeline *t, int engine, struct rating r, gint64 a, double seconds)
{
	const struct day_out *d = ELEMENTS(t->days_out, const struct day_out);
	int low = days_out_to(t, a), high = t->n_days_out;

	/* The first day out by the end of which they are that many. */
	while (low < high) {
		int middle = (low + high) / 2;

		if (rated_seconds(t, engine, r, a, d[middle].date) < seconds - NEARLY)
			low = middle + 1;
		else
			high = middle;
	}
	return low == t->n_days_out || engine >= t->n_engines ? NONE : d[low].date;
}

gint64
outings_reached(const struct timeline *t, gint64 a, gint64 outings)
{
	const int *trips = ELEMENTS(t->trips, const int);
	int low = days_out_to(t, a), high = t->n_days_out;
	gint64 wanted = trips[low] + outings;

	/* The first day out, by its count in trips, on which they are that many. */
	while (low < high) {
		int middle = (low + high) / 2;

		if (trips[middle + 1] < wanted)
			low = middle + 1;
		else
			high = middle;
	}
	return low == t->n_days_out ? NONE : ELEMENTS(t->days_out, const struct day_out)[low].date;
}

gint64
last_day_out_of_water(const struct timeline *t, gint64 a, gint64 b)
{
	const gint32 *from = ELEMENTS(t->span_from, const gint32);
	const guint32 *key = ELEMENTS(t->span_key, const guint32);

	for (int i = span_at(t, b); i >= 0 && from[i + 1] > a; i--)
		if (KEY_STAND(key[i]) != STAND_AFLOAT && from[i] <= b)
			return MIN(from[i + 1] - 1, b);
	return NONE;
}
