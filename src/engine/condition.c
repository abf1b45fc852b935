#include "engine/condition.h"

#include "base/quantity.h"

#include <math.h>
#include <string.h>

#define NOWHERE { NAN, FALSE, FALSE }

/* Values are typed in other units and come back by a rounded factor: 3/4 in is 19.049999999999997 mm. */
#define ROUNDING 1e-9

static gboolean
is_past(const struct edge *b, double value, gboolean above)
{
	double by = above ? value - b->value : b->value - value,
	       rounding = ROUNDING * fmax(1, fabs(b->value));

	/* False for a bound that is nowhere. */
	return b->at ? by >= -rounding : by > rounding;
}

enum verdict
bands_verdict(const struct bands *bands, double value, struct edge *passed)
{
	const struct {
		const struct edge *bound;
		enum verdict verdict;
	} worst_first[] = { { bands->stop, VERDICT_STOP }, { bands->watch, VERDICT_WATCH } };

	*passed = (struct edge)NOWHERE;
	if (isnan(value))
		return VERDICT_NONE;
	for (guint i = 0; i < G_N_ELEMENTS(worst_first); i++)
		for (guint above = 0; above <= 1; above++) {
			if (bands->worse == (above ? WORSE_LESS : WORSE_MORE))
				continue;
			if (is_past(&worst_first[i].bound[above], value, above)) {
				*passed = worst_first[i].bound[above];
				passed->above = above != 0;
				return worst_first[i].verdict;
			}
		}
	return VERDICT_GOOD;
}

/* NAN when one cannot be turned into the other.  Temperatures have a zero of their own; K is for differences of them alone. */
static double
converted(double value, const char *from, const char *to)
{
	static const struct {
		const char *from, *to;
		double factor, zero;
	} temperatures[] = { { "F", "C", 5. / 9, 32 }, { "F", "K", 5. / 9, 0 }, { "C", "K", 1, 0 } };

	for (guint i = 0; i < G_N_ELEMENTS(temperatures); i++)
		if (!strcmp(temperatures[i].from, from) && !strcmp(temperatures[i].to, to))
			return (value - temperatures[i].zero) * temperatures[i].factor;
	return quantity_convert(value, from, to);
}

static gboolean
has_limits(const struct bands *b)
{
	return !isnan(b->watch[0].value) || !isnan(b->watch[1].value) || !isnan(b->stop[0].value) || !isnan(b->stop[1].value);
}

static enum unjudged
cannot_be_judged(const struct condition_kind *kind, const struct bands *bands, double value, double psu)
{
	double rounding = ROUNDING * fmax(fabs(kind->least), fabs(kind->most));

	if (isnan(value))
		return UNJUDGED_UNIT;
	if (kind->most <= 0 && value > 0 && -value >= kind->least)
		return UNJUDGED_SIGN;
	if (value < kind->least - rounding || value > kind->most + rounding)
		return UNJUDGED_RANGE;
	if (kind->water == WATER_SALT && !(psu >= 30))
		return UNJUDGED_WATER;
	return has_limits(bands) ? UNJUDGED_NOT : UNJUDGED_LIMITS;
}

void
condition_judge(const struct condition_kind *kind, const struct bands *own, const struct condition_in *in,
		struct condition_out *out)
{
	const struct bands *bands = own ? own : &kind->bands;

	out->passed = (struct edge)NOWHERE;
	out->value = converted(in->value, in->unit, kind->unit);
	out->unjudged = cannot_be_judged(kind, bands, out->value, in->psu);
	out->verdict = VERDICT_NONE;
	if (out->unjudged == UNJUDGED_NOT)
		out->verdict = bands_verdict(bands, out->value, &out->passed);
}

double
compression_spread(const double *pressure, int n)
{
	double lowest = INFINITY, highest = -INFINITY;

	for (int i = 0; i < n; i++) {
		if (!(pressure[i] >= 0) || isinf(pressure[i]))
			return NAN;
		lowest = fmin(lowest, pressure[i]);
		highest = fmax(highest, pressure[i]);
	}
	return n >= 2 && highest > 0 ? 100 * (highest - lowest) / highest : NAN;
}
