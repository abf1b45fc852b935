/* Rates of wear.  Where a law of nature or a standard says how, that; else a rule of thumb, marked as
 * such. */
#include "engine/wear.h"

#include "base/date.h"
#include "engine/salinity.h"

#include <gsl/gsl_sf_bessel.h>
#include <math.h>
#include <string.h>

#define KELVIN 273.15
#define GAS_CONSTANT 8.314462618 /* J/(mol K), CODATA 2018 */
/* Sums of products reach an amount when this little is missing. */
#define NEARLY 1e-6

#define B401 "DNV-RP-B401 Table 10-2, bare steel, 0 to 30 m"
#define ISO_9223 "ISO 9223, bounds of the class; their geometric mean is ours"
#define MANIFOLDS \
	"trade's rule of thumb; published lives of manifolds: 2 to 3 years in warm salt water, 5 to 6 in cold"
#define CONSTANT(key, unit, member, value, low, high, standing, source) \
	{ key, unit, offsetof(struct wear_table, member), value, low, high, standing, source }

const struct wear_constant wear_constants[] = {
	CONSTANT("corrosion.splash", "", splash, 2.1, 1, 5, "published",
		 "EN 1993-5 Table 4.2 and BS 6349-1-4: 1.8 to 2.2 times immersed"),
	CONSTANT("corrosion.q10", "", q10, 1.26, 1, 3, "memory",
		 "twice for 30 C in open water; DOE-HDBK-1015 1.28 to 1.87 until a film is complete"),
	CONSTANT("corrosion.celsius", "C", q10_celsius, 15, -2, 40, "assumption", "where the factor is 1"),
	CONSTANT("corrosion.fresh", "", water[WATER_FRESH], .6, .02, 5, "memory",
		 "EN 1993-5 Table 4.2, its row for fresh water: .61 of sea water"),
	CONSTANT("corrosion.brackish", "", water[WATER_BRACKISH], .8, .02, 5, "assumption",
		 "between fresh and salt; nothing published found"),
	CONSTANT("corrosion.salt", "", water[WATER_SALT], 1, .02, 5, "published",
		 "the unit: EN 1993-5 Table 4.2, immersed in sea water"),
	CONSTANT("air.c1", "um/a", air[AIR_C1], 1.3, .02, 1000, "published",
		 "ISO 9223, the upper bound of the class"),
	CONSTANT("air.c2", "um/a", air[AIR_C2], 5.70087712549569, .02, 1000, "published", ISO_9223),
	CONSTANT("air.c3", "um/a", air[AIR_C3], 35.3553390593274, .02, 1000, "published", ISO_9223),
	CONSTANT("air.c4", "um/a", air[AIR_C4], 63.2455532033676, .02, 1000, "published", ISO_9223),
	CONSTANT("air.c5", "um/a", air[AIR_C5], 126.491106406735, .02, 1000, "published", ISO_9223),
	CONSTANT("air.cx", "um/a", air[AIR_CX], 374.165738677394, .02, 1000, "published", ISO_9223),
	CONSTANT("air.sea", "um/a", sea, 35, 1, 1000, "published",
		 "CRREL LR-03-19 p. 7 and EN 1993-5 Table 4.2: steel immersed in sea water"),
	CONSTANT("air.film", "class", air_film, 4, 1, 6, "assumption",
		 "C4 to C5: outdoors at the coast, salt left on"),
	CONSTANT("air.roof", "class", air_roof, 2, 1, 6, "assumption", "C2: rinsed and under a roof"),
	CONSTANT("air.inland", "class", air_inland, 2, 1, 6, "assumption",
		 "C2: outdoors away from the sea; ISO 9223 describes it as rural, little pollution (from memory)"),
	CONSTANT("air.outdoors", "class", air_outdoors, 3, 1, 6, "assumption", "C3: rinsed and outdoors by the sea"),
	CONSTANT("anode.k", "", anode_k, .25, .01, 10, "assumption",
		 "anode to cathode resistance in sea water"),
	CONSTANT("anode.psu-fresh", "PSU", psu[WATER_FRESH], .2, PSU_LEAST, .5, "assumption",
		 "lakes and rivers"),
	CONSTANT("anode.psu-brackish", "PSU", psu[WATER_BRACKISH], 10, .5, 30, "assumption",
		 "middle of a wide class"),
	CONSTANT("anode.psu-salt", "PSU", psu[WATER_SALT], 35, 30, PSU_MOST, "published",
		 "standard sea water, PSS-78"),
	CONSTANT("anode.demand-cold", "A/m2", demand[0], .120, .001, 10, "published", B401 ", below 7 C"),
	CONSTANT("anode.demand-cool", "A/m2", demand[1], .100, .001, 10, "published", B401 ", 7 to 12 C"),
	CONSTANT("anode.demand-mild", "A/m2", demand[2], .080, .001, 10, "published", B401 ", 12 to 20 C"),
	CONSTANT("anode.demand-warm", "A/m2", demand[3], .070, .001, 10, "published", B401 ", above 20 C"),
	CONSTANT("anode.cool-from", "C", demand_celsius[0], 7, -2, 40, "published", B401),
	CONSTANT("anode.mild-above", "C", demand_celsius[1], 12, -2, 40, "published", B401),
	CONSTANT("anode.warm-above", "C", demand_celsius[2], 20, -2, 40, "published", B401),
	CONSTANT("anode.demand-one", "A/m2", demand_one, .080, .001, 10, "published",
		 B401 ", 12 to 20 C: the unit"),
	CONSTANT("rubber.energy", "kJ/mol", rubber_kj, 90, 10, 200, "published",
		 "abstract of a laboratory's report, nitrile in an air oven: 92, rounded"),
	CONSTANT("rubber.celsius", "C", rubber_celsius, 15, -20, 60, "assumption", "where the factor is 1"),
	CONSTANT("rubber.open", "", rubber_open, 1.5, 1, 10, "assumption",
		 "sun and ozone; nothing published found"),
	CONSTANT("raw-water.salt", "", raw_water.water[WATER_SALT], 2, 1, 12, "memory", MANIFOLDS),
	CONSTANT("raw-water.brackish", "", raw_water.water[WATER_BRACKISH], 1.5, 1, 12, "memory", MANIFOLDS),
	CONSTANT("raw-water.fresh", "", raw_water.water[WATER_FRESH], 1, .02, 12, "practice",
		 "what intervals presume"),
	CONSTANT("raw-water.afloat", "", raw_water.afloat, 4. / 3, 1, 12, "memory",
		 "three quarters of the interval"),
	CONSTANT("raw-water.rinsed", "", raw_water.rinsed, 4. / 3, 1, 12, "memory",
		 "three quarters of the interval when flushed each time"),
	CONSTANT("growth.salt", "", growth.water[WATER_SALT], 1, .02, 12, "assumption", "as in fresh water"),
	CONSTANT("growth.brackish", "", growth.water[WATER_BRACKISH], 1, .02, 12, "assumption",
		 "as in fresh water"),
	CONSTANT("growth.fresh", "", growth.water[WATER_FRESH], 1, .02, 12, "practice",
		 "what intervals presume"),
	CONSTANT("growth.afloat", "", growth.afloat, 2, 1, 12, "memory", "half the interval"),
	CONSTANT("growth.rinsed", "", growth.rinsed, 1, .02, 12, "assumption", "rinsing takes nothing off"),
	CONSTANT("rate.least", "", least, .02, 0, 1, "assumption", "beyond it the formulas say little"),
	CONSTANT("rate.most", "", most, 12, 1, 100, "assumption", "beyond it the formulas say little"),
	CONSTANT("rate.stretch", "", stretch, 0, 0, 1, "assumption",
		 "1 lets slow wear stretch an interval beyond what is stated; 0 never does"),
	CONSTANT("climate.water-mean", "C", water_mean, 12, -2, 40, "assumption", "temperate coast"),
	CONSTANT("climate.water-swing", "C", water_swing, 7, 0, 30, "assumption", "temperate coast"),
	CONSTANT("climate.water-warmest", "month", water_warmest, 8, 1, 12, "assumption",
		 "northern half of the earth"),
	CONSTANT("climate.air-mean", "C", air_mean, 12, -30, 40, "assumption", "temperate coast"),
	CONSTANT("climate.air-swing", "C", air_swing, 8, 0, 40, "assumption", "temperate coast"),
	CONSTANT("climate.air-warmest", "month", air_warmest, 7, 1, 12, "assumption",
		 "northern half of the earth"),
};
const int n_wear_constants = G_N_ELEMENTS(wear_constants);

static double *
value_at(struct wear_table *t, const struct wear_constant *c)
{
	return (double *)(void *)((char *)t + c->offset);
}

double *
wear_table_at(struct wear_table *t, const char *key)
{
	for (int i = 0; i < n_wear_constants; i++)
		if (!strcmp(wear_constants[i].key, key))
			return value_at(t, &wear_constants[i]);
	return NULL;
}

void
wear_table_default(struct wear_table *t)
{
	struct wear_span sea = {
		.stand = STAND_AFLOAT, .water = WATER_SALT, .psu = NAN, .celsius = 15, .air = AIR_COUNT
	};
	struct wear_span fresh = sea, dry = sea;

	fresh.water = WATER_FRESH;
	dry.stand = STAND_TRAILER;
	dry.water = WATER_COUNT;
	memset(t, 0, sizeof *t);
	for (int i = 0; i < n_wear_constants; i++)
		*value_at(t, &wear_constants[i]) = wear_constants[i].value;
	for (int m = 0; m < MECH_COUNT; m++)
		t->presumed[m] = dry;
	t->presumed[MECH_CORROSION] = fresh;
	/* Zinc is made for the sea; a fresh-water interval belongs to another metal, and the two do not
	 * compare. */
	t->presumed[MECH_GALVANIC] = sea;
}

static gboolean
is_wet(const struct wear_span *s)
{
	return s->stand == STAND_AFLOAT || ((guint)s->water < WATER_COUNT && !s->film);
}

/* The word, by the salinity where that is known. */
static enum water
water_of(const struct wear_span *s)
{
	if (!isnan(s->psu))
		return water_class(s->psu);
	return (guint)s->water < WATER_COUNT ? s->water : WATER_FRESH;
}

double
wear_psu(const struct wear_table *t, const struct wear_span *s)
{
	return isnan(s->psu) ? t->psu[water_of(s)] : s->psu;
}

enum air
wear_air(const struct wear_table *t, const struct wear_span *s)
{
	double class = s->film ? t->air_film : s->stand == STAND_ROOF ? t->air_roof
		     : s->inland ? t->air_inland : t->air_outdoors;

	return (guint)s->air < AIR_COUNT ? s->air : (enum air)(CLAMP(class, 1, AIR_COUNT) - 1);
}

static double
corrosion(const struct wear_table *t, const struct wear_span *s)
{
	double rate;

	if (!is_wet(s))
		return t->air[wear_air(t, s)] / t->sea;
	rate = t->water[water_of(s)] * (s->splash ? t->splash : 1);
	return isnan(s->celsius) ? rate : rate * pow(t->q10, (s->celsius - t->q10_celsius) / 10);
}

double
wear_anode(const struct wear_table *t, double psu)
{
	return (1 + t->anode_k) / (1 + t->anode_k * water_resistivity(psu, 15) / water_resistivity(35, 15));
}

double
wear_demand(const struct wear_table *t, double celsius)
{
	const double *from = t->demand_celsius;
	guint i = 0;	/* the table says 7 to 12, then above 12 */

	if (isnan(celsius))
		return 1;
	while (i < G_N_ELEMENTS(t->demand_celsius) && (i ? celsius > from[i] : celsius >= from[i]))
		i++;
	return t->demand[i] / t->demand_one;
}

static double
anode(const struct wear_table *t, const struct wear_span *s)
{
	return is_wet(s) ? wear_anode(t, wear_psu(t, s)) * wear_demand(t, s->celsius) : 0;
}

static double
rubber(const struct wear_table *t, const struct wear_span *s)
{
	double open = s->open ? t->rubber_open : 1;

	return isnan(s->celsius)
		     ? open
		     : open * arrhenius_sine(t->rubber_kj, s->celsius, s->swing, t->rubber_celsius);
}

static double
by_thumb(const struct wear_thumb *thumb, const struct wear_span *s)
{
	double rate;

	if (s->stand == STAND_AFLOAT)
		return fmax(thumb->water[water_of(s)], thumb->afloat);
	if (!is_wet(s))
		return s->film ? thumb->water[WATER_SALT] : 1;
	rate = thumb->water[water_of(s)];
	return s->rinsed && water_of(s) != WATER_FRESH ? fmin(rate, thumb->rinsed) : rate;
}

double
wear_raw(const struct wear_table *t, enum mechanism m, const struct wear_span *s)
{
	switch (m) {
	case MECH_CORROSION:
		return corrosion(t, s);
	case MECH_GALVANIC:
		return anode(t, s);
	case MECH_RUBBER:
		return rubber(t, s);
	case MECH_RAW_WATER:
		return by_thumb(&t->raw_water, s);
	case MECH_GROWTH:
		return by_thumb(&t->growth, s);
	case MECH_NONE:
	case MECH_FLUID:
	case MECH_WEAR:
	case MECH_FROST:
	case MECH_COUNT:
		return 1;
	}
	return 1;
}

/* What counts as 1: an interval is stated for the fitting where it sits. */
static double
presumed_rate(const struct wear_table *t, enum mechanism m, const struct wear_span *s)
{
	struct wear_span presumed = t->presumed[m];

	presumed.splash = s->splash;
	return wear_raw(t, m, &presumed);
}

static double
rate_to(const struct wear_table *t, double raw, double one)
{
	return raw > 0 ? CLAMP(one > 0 ? raw / one : raw, t->least, t->most) : raw;
}

double
wear_rate(const struct wear_table *t, enum mechanism m, const struct wear_span *s)
{
	double raw = wear_raw(t, m, s);

	return (guint)m < MECH_COUNT && raw > 0 ? rate_to(t, raw, presumed_rate(t, m, s)) : raw;
}

double
arrhenius(double kj, double celsius, double than_celsius)
{
	return exp(kj * 1000 / GAS_CONSTANT * (1 / (than_celsius + KELVIN) - 1 / (celsius + KELVIN)));
}

double
arrhenius_sine(double kj, double celsius, double swing, double than_celsius)
{
	enum { POINTS = 32 }; /* the trapezoidal rule over a whole period errs by less than doubles hold */
	double sum = 0;

	if (swing <= 0)
		return arrhenius(kj, celsius, than_celsius);
	for (int i = 0; i < POINTS; i++)
		sum += arrhenius(kj, celsius + swing * cos(2 * G_PI * i / POINTS), than_celsius);
	return sum / POINTS;
}

double
arrhenius_shortcut(double kj, double celsius, double swing, double than_celsius)
{
	double kelvin = celsius + KELVIN, b = kj * 1000 / (GAS_CONSTANT * kelvin * kelvin);

	return arrhenius(kj, celsius, than_celsius) * gsl_sf_bessel_I0(b * swing);
}

double
arrhenius_steady(double kj, double celsius, double swing)
{
	double faster = log(arrhenius_sine(kj, celsius, swing, celsius)) * GAS_CONSTANT / (kj * 1000);

	return 1 / (1 / (celsius + KELVIN) - faster) - KELVIN;
}

static gboolean
is_covered(const struct weather *w)
{
	return w->celsius >= -17.1 && w->celsius <= 28.7 && w->humidity >= 34 && w->humidity <= 93
	    && w->so2 >= .7 && w->so2 <= 150.4 && w->chloride >= .4 && w->chloride <= 760.5;
}

double
iso9223_steel(const struct weather *w)
{
	double above = w->celsius - 10, warm = (above <= 0 ? .150 : -.054) * above;

	if (!is_covered(w))
		return NAN;
	return 1.77 * pow(w->so2, .52) * exp(.020 * w->humidity + warm)
	     + .102 * pow(w->chloride, .62) * exp(.033 * w->humidity + .040 * w->celsius);
}

double
iso9223_zinc(const struct weather *w)
{
	double above = w->celsius - 10, warm = (above <= 0 ? .038 : -.071) * above;

	if (!is_covered(w))
		return NAN;
	return .0129 * pow(w->so2, .44) * exp(.046 * w->humidity + warm)
	     + .0175 * pow(w->chloride, .57) * exp(.008 * w->humidity + .085 * w->celsius);
}

enum air
iso9223_class(double um)
{
	static const double most[AIR_COUNT] = { 1.3, 25, 50, 80, 200, 700 };
	guint air = AIR_C1;

	while (air < AIR_COUNT && !(um <= most[air]))
		air++;
	return air;
}

double
iso9224_loss(double years, double exponent)
{
	return pow(years, exponent);
}

void
monthly_unknown(struct monthly *m)
{
	for (int i = 0; i < 12; i++)
		m->in[i] = NAN;
}

void
monthly_sine(struct monthly *m, double mean, double swing, double warmest)
{
	for (int i = 0; i < 12; i++)
		m->in[i] = mean + swing * cos(2 * G_PI * (i + 1 - warmest) / 12);
}

static int
leap_days_before(int year)
{
	return (year - 1) / 4 - (year - 1) / 100 + (year - 1) / 400;
}

/* From the first of January 1970, so that the sum stays small and its last digits true. */
static double
sum_since_1970(const struct monthly *m, gint64 day)
{
	int year, month, mday;
	double sum, all = 0, before = 0;

	day_to_ymd(day, &year, &month, &mday);
	for (int i = 1; i <= 12; i++) {
		all += m->in[i - 1] * month_days(1970, i);
		if (i < month)
			before += m->in[i - 1] * month_days(year, i);
	}
	sum = all * (year - 1970) + m->in[1] * (leap_days_before(year) - leap_days_before(1970));
	return sum + before + m->in[month - 1] * (mday - 1);
}

double
monthly_sum(const struct monthly *m, gint64 from, gint64 to)
{
	from = CLAMP(from, DAY_FIRST, DAY_LAST);
	to = CLAMP(to, DAY_FIRST, DAY_LAST);
	return from < to ? sum_since_1970(m, to) - sum_since_1970(m, from) : 0;
}

double
monthly_mean(const struct monthly *m, gint64 from, gint64 to)
{
	return from < to ? monthly_sum(m, from, to) / (double)(to - from) : NAN;
}

gint64
monthly_reach(const struct monthly *m, gint64 from, double amount, gint64 last)
{
	gint64 low = from, high = last;

	if (amount <= NEARLY)
		return from;
	if (!(monthly_sum(m, from, last) >= amount - NEARLY))
		return NONE;
	while (low < high) {
		gint64 middle = low + (high - low) / 2;

		if (monthly_sum(m, from, middle) >= amount - NEARLY)
			high = middle;
		else
			low = middle + 1;
	}
	return low;
}

void
wear_monthly(const struct wear_table *t, enum mechanism m, const struct wear_span *s,
	     const struct monthly *celsius, struct monthly *rate)
{
	struct wear_span in_month = *s;
	double one = presumed_rate(t, m, s);

	for (int i = 0; i < 12; i++) {
		in_month.celsius = celsius->in[i];
		rate->in[i] = rate_to(t, wear_raw(t, m, &in_month), one);
	}
}
