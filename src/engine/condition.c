#include "engine/condition.h"

#include <math.h>
#include <string.h>

/* The bound itself is worse, or what lies past it only. */
#define AT(x) { x, TRUE, FALSE }
#define PAST(x) { x, FALSE, FALSE }
#define NOWHERE { NAN, FALSE, FALSE }
#define MORE(watch, stop) { WORSE_MORE, { NOWHERE, watch }, { NOWHERE, stop } }
#define LESS(watch, stop) { WORSE_LESS, { watch, NOWHERE }, { stop, NOWHERE } }
#define BOTH(low, high, stop_low, stop_high) { WORSE_BOTH, { low, high }, { stop_low, stop_high } }

#define SCALE "common practice, no source: what is rough, cracked or loose goes; the scale is ours"
#define GRADE(what, how) \
	{ what, "grade", how, MORE(AT(1), AT(2)), 0, 3, WATER_COUNT, "practice", SCALE }
#define KIND(what, unit, how, bands, least, most, standing, source) \
	{ what, unit, how, bands, least, most, WATER_COUNT, standing, source }
#define MEMORY "memory, not checked; the manual's figure wins"

/* Half-cell, silver/silver-chloride in sea water: more negative is more protected, too much harms paint,
 * wood, aluminium. What bands are not printed: 50 mV to either side of a range are watched, as is printed
 * for aluminium drives. */
#define CELL_HOW \
	"silver/silver-chloride half-cell in sea water, settled, shore power as noted, a day after new anodes"
#define CELL(what, low, high, stop_low, stop_high, source) \
	{ "half-cell-" what, "mV", CELL_HOW, { WORSE_BOTH, { low, high }, { stop_low, stop_high } }, -1700, \
	  0, WATER_SALT, "published", source }
#define SELLERS "anode sellers' table of small-craft practice"

const struct condition_kind condition_kinds[] = {
	KIND("anode-left", "%", "thickness and width, or weight; the worst one", LESS(AT(75), AT(50)), 0, 100,
	     "published",
	     "boat owners' association and an engine maker's manual: renew at half; one seller: 60 % worn"),
	GRADE("bearing-roughness",
	      "finger in the bearing, turned slowly, then fast: 1 one faint notch, 2 gritty, 3 grinding"),
	GRADE("hub-roughness", "spun and rocked: 1 a faint notch, 2 rough or loose, 3 grinding"),
	GRADE("hose-hardness", "squeezed and bent: 1 firm, 2 hard, spongy or cracked, 3 split or wet"),
	GRADE("bellows-fold", "folds opened: 1 set, dry or lightly crazed, 2 a crack in a fold, 3 cut"),
	GRADE("spline-wear", "felt: 1 rounded, 2 worn to an edge, 3 twisted"),
	GRADE("propeller-damage", "1 small nicks, 2 bent blade, 3 a piece missing"),
	GRADE("drain-debris", "magnet or plug: 1 fine slivers, 2 chips, 3 pieces"),
	KIND("gear-oil-water", "%", "settled a day in a clear jar: layer by the whole, haze .1",
	     MORE(PAST(.06), PAST(.2)), 0, 100, "published",
	     "oil laboratories: to .06 % dissolved, haze above; a classification society: harm from .1"),
	KIND("compression-spread", "%", "all plugs out, throttle open, warm, battery charged",
	     MORE(PAST(10), PAST(25)), 0, 100, "published",
	     "car makers' manuals: lowest 75 or 70 % of highest, the stricter taken; a club: within 10 %"),
	KIND("steering-play", "mm", "drive swung by hand, wheel held, at the propeller shaft",
	     MORE(AT(3.175), PAST(6.35)), 0, 300, "memory", MEMORY ": 1/8 and 1/4 in"),
	KIND("steering-angle", "deg", "rim of the wheel, before the drive moves", MORE(AT(10), PAST(15)), 0,
	     360, "memory", MEMORY),
	KIND("rudder-play", "mm", "rocked at the blade", MORE(PAST(0), PAST(3.175)), 0, 300, "memory",
	     MEMORY ": 1/8 in"),
	KIND("shaft-runout", "mm", "indicator at the shaft's end, turned by hand, total",
	     MORE(PAST(.1016), PAST(.2032)), 0, 50, "memory", MEMORY ": .004 and .008 in"),
	KIND("coupling-gap", "mm", "feeler at four clock positions, afloat", MORE(PAST(.0762), PAST(.127)), 0,
	     25, "published", "an owners' club: .003 in; owners quote .002 to .004"),
	KIND("jet-clearance", "mm", "feeler between impeller tip and ring", MORE(PAST(.508), PAST(1.)), 0, 25,
	     "published", "small jet makers' manuals: at most 1.0 mm"),
	KIND("belt-deflection", "mm", "thumb, moderately, on the longest run", MORE(PAST(13), PAST(19.05)), 0,
	     100, "memory", "engine makers' manuals: 13 mm, one 16; from what on it is too much: " MEMORY),
	KIND("pin-wear", "mm", "caliper, worst spot against the end", MORE(AT(.127), PAST(.381)), 0, 50,
	     "memory", MEMORY ": .005 and .015 in"),
	KIND("trim-creep", "mm/h", "drive up, marked, an hour", MORE(PAST(0), PAST(50.8)), 0, 2000, "memory",
	     MEMORY ": 2 in"),
	KIND("propeller-hub-slip", "deg", "witness mark, hub to barrel", MORE(PAST(0), PAST(10)), 0, 360,
	     "memory", MEMORY),
	KIND("rest-voltage", "V", "12 V lead-acid, six hours or more off charge, no load",
	     LESS(PAST(12.6), AT(12.2)), 6, 14, "published",
	     "a battery supplier's table at 80 F: 12.65, 12.45, 12.24, 12.06 V are 100, 75, 50, 25 %"),
	KIND("cranking-voltage", "V", "12 V, while cranking, five seconds", LESS(PAST(10), PAST(9.6)), 0, 14,
	     "memory", MEMORY),
	KIND("charging-voltage", "V", "12 V, at 1,500 rpm, warm",
	     BOTH(PAST(13.8), PAST(14.6), PAST(13.2), PAST(14.8)), 6, 20, "memory", MEMORY),
	KIND("gravity-spread", "", "hydrometer, best cell less worst", MORE(AT(.030), AT(.050)), 0, .3,
	     "memory", MEMORY),
	KIND("bonding-resistance", "ohm", "fitting to engine negative", MORE(PAST(1), PAST(2)), 0, 1e9,
	     "published", "two boating magazines: at most 1 ohm"),
	KIND("leakage-current", "mA", "clamp around all conductors of the shore cord", MORE(AT(5), PAST(30)),
	     0, 1e5, "published",
	     "30 mA trips a shore-power leakage breaker; 100 mA is named as deadly in fresh water"),
	KIND("coolant-ph", "pH", "strip", BOTH(PAST(7.5), PAST(10.5), PAST(7), NOWHERE), 0, 14, "memory",
	     MEMORY),
	KIND("gland-drops", "/min", "packing gland, running", MORE(PAST(3), PAST(10)), 0, 10000, "published",
	     "an association of boat owners: 2 to 3 running, none at rest; one list: at most 2"),
	KIND("fuel-hose-age", "a", "year printed on it", MORE(AT(8), PAST(10)), 0, 100, "published",
	     "an insurer's notice: over 10 years suspect, over 20 to be renewed whatever it looks like"),
	KIND("bilge-cycles", "/d", "runs of the pump in a day afloat", MORE(AT(2), PAST(5)), 0, 100000,
	     "memory", MEMORY),
	CELL("steel", PAST(-1050), PAST(-800), PAST(-1100), PAST(-750),
	     "EN 12473 as a calculation site gives it; " SELLERS),
	CELL("aluminium", PAST(-1050), PAST(-900), PAST(-1100), PAST(-850), SELLERS ": -900 to -1100"),
	CELL("aluminium-drive", PAST(-1050), PAST(-900), PAST(-1100), PAST(-850), SELLERS ": -900 to -1050"),
	CELL("bronze-gear", PAST(-1000), PAST(-750), PAST(-1050), PAST(-700),
	     SELLERS ": -750 to -1000; an article: -550 to -1100"),
	CELL("bronze", NOWHERE, PAST(-550), NOWHERE, PAST(-500),
	     SELLERS ": -550; EN 12473 (memory): -450 to -600"),
	CELL("stainless", NOWHERE, PAST(-750), NOWHERE, PAST(-500),
	     SELLERS ": -750; EN 12473 (memory): -300 to -600 by alloy"),
	CELL("wood", PAST(-600), PAST(-550), PAST(-650), PAST(-500),
	     SELLERS ": -550 to -600, alkali attacks the timber"),
};
const int n_condition_kinds = G_N_ELEMENTS(condition_kinds);

const struct condition_kind *
condition_kind_of(const char *what)
{
	for (int i = 0; i < n_condition_kinds; i++)
		if (!strcmp(condition_kinds[i].what, what))
			return &condition_kinds[i];
	return NULL;
}

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

/* NAN when one cannot be turned into the other. */
static double
converted(double value, const char *from, const char *to)
{
	static const struct {
		const char *from, *to;
		double factor;
	} units[] = {
		{ "V", "mV", 1000 }, { "mV", "V", .001 }, { "in", "mm", 25.4 },
		{ "cm", "mm", 10 },  { "A", "mA", 1000 }, { "mohm", "ohm", .001 },
	};

	if (!strcmp(from, to))
		return value;
	for (guint i = 0; i < G_N_ELEMENTS(units); i++)
		if (!strcmp(units[i].from, from) && !strcmp(units[i].to, to))
			return value * units[i].factor;
	return NAN;
}

static enum unjudged
cannot_be_judged(const struct condition_kind *kind, double value, double psu)
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
	return UNJUDGED_NOT;
}

void
condition_judge(const struct condition_kind *kind, const struct bands *own, const struct condition_in *in,
		struct condition_out *out)
{
	out->passed = (struct edge)NOWHERE;
	out->value = converted(in->value, in->unit, kind->unit);
	out->unjudged = cannot_be_judged(kind, out->value, in->psu);
	out->verdict = VERDICT_NONE;
	if (out->unjudged == UNJUDGED_NOT)
		out->verdict = bands_verdict(own ? own : &kind->bands, out->value, &out->passed);
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
