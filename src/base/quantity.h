/* Quantities with their units as people write them, and the one table of units.
 *
 * Factors are those of NIST Special Publication 811 (2008), appendix B, built from what is exact by definition: 1 in is
 * 25.4 mm and 1 lb is 0.45359237 kg (yard and pound agreement of 1959), standard gravity is 9.80665 m/s2, a US gallon is
 * 231 in3, an imperial one 4.54609 L.  Keep the text that was typed beside the value: 3/8 in stays 3/8 in. */
#ifndef BASE_QUANTITY_H
#define BASE_QUANTITY_H

#include <glib.h>

enum units { UNITS_INCH, UNITS_METRIC, UNITS_COUNT };

/* What a value counts in. */
enum dimension {
	DIMENSION_LENGTH, /* mm */
	DIMENSION_TORQUE, /* N m */
	DIMENSION_PRESSURE, /* kPa; as a gauge shows it, nought at rest */
	DIMENSION_VOLUME, /* L */
	DIMENSION_MASS, /* kg */
	DIMENSION_TEMPERATURE, /* C */
	DIMENSION_WARMING, /* K: a difference of temperatures */
	DIMENSION_VOLTAGE, /* V */
	DIMENSION_CURRENT, /* A */
	DIMENSION_RESISTANCE, /* ohm */
	DIMENSION_ANGLE, /* deg */
	DIMENSION_TURNS, /* rpm */
	DIMENSION_RATE, /* times a day */
	DIMENSION_AGE, /* years */
	DIMENSION_RUNNING, /* h */
	DIMENSION_SHARE, /* % */
	DIMENSION_GRADE,
	DIMENSION_PH,
	DIMENSION_COUNT /* any of them */
};

struct quantity_unit {
	const char *name; /* as it is shown */
	enum dimension dimension;
	enum units system; /* UNITS_COUNT: both use it */
	double num, den; /* one is num / den of the dimension; of a temperature the size of a degree */
	double from; /* shown in this from such a value on; NAN: never */
	const char *also; /* other spellings, between bars */
};

/* The unit of that name or spelling; NULL: none.  Case counts only where two differ by nothing else; blanks, hyphens,
 * dots and a plural's s do not.  A quart or gallon alone is a US one. */
const struct quantity_unit *quantity_unit(const char *text);
/* A value in another unit of the same dimension; NAN when it cannot be, as of two temperatures. */
double quantity_convert(double value, const char *from, const char *to);

struct quantity {
	double low, high; /* the same when one value was given */
	const struct quantity_unit *unit; /* as typed */
	enum dimension dimension;
};

/* "60 ft-lb", "60-70 ft-lb", "4-1/2 qt", "180 in-lb to 200 in-lb", ".035 in", "-950 mV".  A bare number is refused, and
 * what is of another dimension; DIMENSION_COUNT takes all.  ERR_INPUT; *q then stays as it was. */
gboolean quantity_parse(const char *text, enum dimension dimension, struct quantity *q, GError **err);
const char *dimension_words(enum dimension dimension); /* "a torque" */
const char *dimension_unit(enum dimension dimension); /* "N·m": what its values count in */

/* A value as one system writes it: "1/4 in" where that is exact to the 64th, "81 N·m".  Rounded to what people read
 * (a length to three digits, a temperature to the degree, else to half a percent).  The caller's. */
char *quantity_in(double value, enum dimension dimension, enum units system);
/* A unit's symbol in place of the dimension: "6.35 mm (1/4 in)", the system's first.  NULL when both write it so. */
char *quantity_words(double value, const char *unit, enum units first);
/* What was typed in the other system: "81 N·m", "81-95 N·m", "0.374 in; nearest 3/8 in".  NULL when both write it so. */
char *quantity_beside(const struct quantity *q);
/* "60 ft-lb (81 N·m)"; the text alone where there is nothing to put beside it.  The caller's. */
char *quantity_both(const char *text, enum dimension dimension);

#endif
