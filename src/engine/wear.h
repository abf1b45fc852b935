/* How fast a span of a boat's life wears a fitting, by what wears it, where it lay, in what water and how
 * warm. */
#ifndef ENGINE_WEAR_H
#define ENGINE_WEAR_H

#include "base/value.h"
#include "engine/types.h"

#include <stddef.h>

/* Corrosivity of the air, ISO 9223; AIR_COUNT: not said, or worse than all. */
enum air { AIR_C1, AIR_C2, AIR_C3, AIR_C4, AIR_C5, AIR_CX, AIR_COUNT };

/* One state of a fitting.  Wet: the boat lies afloat, or it is a day out (water said, no film). */
struct wear_span {
	enum stand stand;
	enum water water; /* WATER_COUNT: lies dry */
	double psu; /* of that water; NAN: by the word.  It wins over the word */
	double celsius; /* mean of the water when wet, else of the air */
	double swing; /* the temperature goes that much up and down about its mean, as a sine; 0: steady */
	enum air air; /* when dry, as the place is known to be; AIR_COUNT: by film and stand */
	gboolean film; /* dry, with salt left on: of an outing that was not rinsed off */
	gboolean rinsed; /* a day out in salt or brackish water, rinsed the same day */
	gboolean inland; /* dry, and the water it is usually in is fresh */
	gboolean splash; /* the fitting sits where it is wet and dry by turns */
	gboolean open; /* the fitting stands in the sun */
};

/* Factors by rule of thumb, for what no formula is known: of those that hold the largest counts, never
 * their product. */
struct wear_thumb {
	double water[WATER_COUNT], afloat, rinsed;
};

/* Everything that can be changed.  Names, defaults, standing and source of each are in wear_constants. */
struct wear_table {
	/* Corrosion relative to bare steel in sea water of 15 C. */
	double splash; /* where it is wet and dry by turns */
	double q10, q10_celsius; /* for 10 degrees more; where it is 1 */
	double water[WATER_COUNT];
	double air[AIR_COUNT]; /* um a year: the middle of the class */
	double sea; /* um a year that are 1 */
	double air_film, air_roof, air_inland, air_outdoors; /* 1 for C1 to 6 for CX, of a boat that lies dry */

	/* Anodes relative to sea water of 15 C. */
	double anode_k; /* resistance of the anode in sea water to that of what it protects */
	double psu[WATER_COUNT]; /* of a water known by its word only */
	double demand[4], demand_celsius[3]; /* A/m2 of bare steel: up to each temperature, and above */
	double demand_one; /* A/m2 that are 1 */

	/* Rubber relative to 15 C, covered. */
	double rubber_kj, rubber_celsius; /* activation energy; where it is 1 */
	double rubber_open; /* in the sun */

	struct wear_thumb raw_water, growth;
	double least, most; /* what a rate is cut to */
	double stretch; /* 1: slow wear may stretch an interval beyond what is stated; 0: it never does */

	/* Monthly means where a place has none: a sine over the year. */
	double water_mean, water_swing, water_warmest, air_mean, air_swing, air_warmest;

	/* What a stated interval presumes, where the rate is 1: to be changed by assignment. */
	struct wear_span presumed[MECH_COUNT];
};

/* One constant: its key, unit, default, the range that makes sense, and where it is from.  Standing is one of
 * "published", "practice", "memory" (known, not checked again) and "assumption" (ours). */
struct wear_constant {
	const char *key, *unit;
	size_t offset; /* of a double in struct wear_table */
	double value, low, high;
	const char *standing, *source;
};
extern const struct wear_constant wear_constants[];
extern const int n_wear_constants;

void wear_table_default(struct wear_table *t);
/* Where a constant stands in a table; NULL when there is none of that key. */
double *wear_table_at(struct wear_table *t, const char *key);

/* Before it is set against what the interval presumes and cut: against sea water of 15 C (corrosion,
 * anodes), 15 C covered (rubber), fresh water (raw water, growth).  Anodes that lie dry: 0.  All others:
 * 1. */
double wear_raw(const struct wear_table *t, enum mechanism m, const struct wear_span *s);
/* Relative to what the stated interval presumes, within [least, most]; 0 stays 0.  Whether less than 1
 * may stretch an interval is for the owner to say: until then count the larger of plain and effective
 * days since the service. */
double wear_rate(const struct wear_table *t, enum mechanism m, const struct wear_span *s);

/* The parts, for an explanation. */
double wear_anode(const struct wear_table *t, double psu); /* of the water alone */
double wear_demand(const struct wear_table *t, double celsius); /* of the temperature alone */
enum air wear_air(const struct wear_table *t, const struct wear_span *s);
double wear_psu(const struct wear_table *t, const struct wear_span *s);

/* Arrhenius: how much faster at one temperature than at another, kj of activation energy. */
double arrhenius(double kj, double celsius, double than_celsius);
/* The same over temperatures that go up and down by swing as a sine: exactly, by the usual shortcut I0(b
 * swing) with b = E / (R T^2), and the steady temperature that does the same. */
double arrhenius_sine(double kj, double celsius, double swing, double than_celsius);
double arrhenius_shortcut(double kj, double celsius, double swing, double than_celsius);
double arrhenius_steady(double kj, double celsius, double swing);

/* ISO 9223:2012, first-year loss in um of carbon steel and zinc: yearly means of temperature (-17.1 to
 * 28.7 C) and relative humidity (34 to 93 %), deposition of SO2 (.7 to 150.4 mg/m2 d) and chloride (.4 to
 * 760.5); NAN outside. */
struct weather {
	double celsius, humidity, so2, chloride;
};
double iso9223_steel(const struct weather *w);
double iso9223_zinc(const struct weather *w);
/* The class of a first-year loss of carbon steel; a bound belongs to the class below it.  AIR_COUNT:
 * beyond all. */
enum air iso9223_class(double um);
/* ISO 9224: loss after years relative to the first, up to 20; exponent .523 steel, .813 zinc (cautious:
 * .575, .873). */
double iso9224_loss(double years, double exponent);

/* Twelve values that hold month by month: temperatures, or rates. */
struct monthly {
	double in[12];
};
/* What is known of the place where a boat lies. */
struct climate {
	double psu; /* of its water; NAN: by the word */
	enum air air; /* AIR_COUNT: by film and stand */
	struct monthly water, dry; /* C; a month that is NAN: the table's default */
};
void monthly_unknown(struct monthly *m); /* NAN all the year */
/* A sine with its top in the middle of a month 1 to 12. */
void monthly_sine(struct monthly *m, double mean, double swing, double warmest);
/* Sum over the days [from, to), 0 without any: of rates, effective days.  Parts add up to the whole. */
double monthly_sum(const struct monthly *m, gint64 from, gint64 to);
double monthly_mean(const struct monthly *m, gint64 from, gint64 to); /* NAN without days */
/* The first day d from which on the sum over [from, d) is amount; NONE beyond last. */
gint64 monthly_reach(const struct monthly *m, gint64 from, double amount, gint64 last);
/* Rates of a span that goes on through the year, at each month's temperature. */
void wear_monthly(const struct wear_table *t, enum mechanism m, const struct wear_span *s,
		  const struct monthly *celsius, struct monthly *rate);

#endif
