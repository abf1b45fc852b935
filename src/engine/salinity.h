/* The water a boat lies in, from what an owner can read: conductivity meter, hydrometer, thermometer.
 *   PSS-78: Practical Salinity Scale 1978, UNESCO Technical Papers in Marine Science 44 (1983); its own
 *   range is 2 to 42 PSU and -2 to 35 C.  Below 2 PSU it is off by less than .0005 PSU, .3 % of conductivity.
 *   EOS-80: International Equation of State of Seawater 1980 at one atmosphere, the same report.
 * t68 is a temperature on the scale of 1968, which these formulas are written in; a thermometer reads t90.
 * They differ by .01 C at most here.  What cannot be is NAN, here and back. */
#ifndef ENGINE_SALINITY_H
#define ENGINE_SALINITY_H

#include "engine/types.h"

/* No more than this is taken for the water of a sea, in PSU. */
#define PSU_MOST 45.0
/* Water with next to no salt in it, as rain: the scale means nothing below. */
#define PSU_LEAST .02

double temperature_68(double t90);

/* PSS-78 itself: ratio of the conductivity to that of standard sea water (35 PSU, 15 C), 42.914 mS/cm. */
double pss78_salinity(double ratio, double t68, double dbar);
/* Back; psu below PSU_LEAST is taken as PSU_LEAST. */
double pss78_ratio(double psu, double t68, double dbar);

/* From a meter that shows what it measures; mS/cm.  NAN for a negative or impossible reading (uS/cm typed
 * as mS/cm, say), water colder than -2 or hotter than 40 C, and more than PSU_MOST. */
double salinity_of_conductivity(double ms_cm, double t90);
/* From a meter that shows its reading compensated to 25 C, as cheap ones do: which kind it is has to be
 * known, for at 10 C the two differ by two fifths. */
double salinity_of_compensated(double ms_cm_25);
/* The same water's conductivity at 25 C, and back: by the ratio of standard sea water's, close enough for
 * classes. */
double conductivity_to_25(double ms_cm, double t90);
double conductivity_from_25(double ms_cm_25, double t90);

/* Resistivity in ohm m, which anodes work against; at less than PSU_LEAST as there. */
double water_resistivity(double psu, double t90);

/* Density in kg/m3. */
double water_density(double psu, double t68);
/* Back, within [0, PSU_MOST].  Up to .5 PSU below fresh water is taken as 0: a hydrometer is read no
 * better. */
double salinity_of_density(double kg_m3, double t68);
/* Specific gravity 20/20 of a glass hydrometer read at t.  Glass grows by 25e-6 a degree (from
 * memory).  A slip of .001 is 1.3 PSU. */
double salinity_of_hydrometer(double gravity, double t68);

/* Freezing point in C; dbar 0 at the surface.  UNESCO 44. */
double water_freezing(double psu, double dbar);
/* Oxygen in mg/L of water in balance with air at one atmosphere: Benson and Krause 1984, coefficients
 * from memory, within .002 of the oceanographers' library.  Not a factor of wear: what salt does to metal
 * is conduction and chloride. */
double water_oxygen(double celsius, double psu);

/* The Venice System 1958; a bound belongs to the class above it (our convention). */
enum venice {
	VENICE_FRESH,
	VENICE_OLIGOHALINE, /* from 0.5 PSU */
	VENICE_MESOHALINE, /* from 5 */
	VENICE_POLYHALINE, /* from 18 */
	VENICE_EUHALINE, /* from 30 */
	VENICE_HYPERHALINE, /* from 40 */
	VENICE_COUNT
};
enum venice venice_class(double psu); /* VENICE_COUNT for NAN */
/* In the owner's three words: the first class is fresh, the next three are brackish, the rest
 * salt.  WATER_COUNT for NAN. */
enum water water_class(double psu);

#endif
