/* Amounts as people write them: running hours, lengths, money, salinity, temperature.
 * A parser that fails fills *err with what is wrong, where in the text, and what would be right, and leaves
 * the result as it was.  Blanks around are ignored; no-break spaces, a true minus and primes will do. */
#ifndef BASE_AMOUNT_H
#define BASE_AMOUNT_H

#include "base/value.h"

#include <glib.h>

/* A decimal number, point or comma ("12.5", "12,5", "-3", ".5", "1e-05"); grouping such as 1.234,5 is
 * refused, and so is 1,234 in every parser here, for it can be 1.234 and 1234; 1.234 is a decimal. */
gboolean number_parse(const char *text, double *value, GError **err);
#define NUMBER_TEXT 32
/* The shortest text that number_parse reads back to the same value; "" when it is not finite. */
const char *number_exact(double value, char buf[NUMBER_TEXT]);

/* A whole number from 0 to COUNT_MOST, so that it fits an int. */
#define COUNT_MOST 1000000000
gboolean count_parse(const char *text, gint64 *value, GError **err);

/* Running hours in whole seconds: 2.4, 2,4, 2h24, 2h, 2:24, 2:24:30, 144m, "2 h 24 min".  Not negative, at
 * most HOURS_MOST; 2:5 and 2:75 are refused. */
#define HOURS_MOST 10000000
gboolean hours_parse(const char *text, gint64 *seconds, GError **err);
/* "300..350", or one figure for both. */
gboolean hours_span_parse(const char *text, gint64 *least, gint64 *most, GError **err);
#define HOURS_TEXT 32
/* Exact, and read back by hours_parse when it takes them: "2", "2.4" or "2.41" when that is exact, else
 * "2:24:30"; "" for NONE. */
const char *hours_exact(gint64 seconds, char buf[HOURS_TEXT]);
/* Rounded to a tenth, for people: "2.4", "100"; "" for NONE. */
const char *hours_words(gint64 seconds, char buf[HOURS_TEXT]);

/* A length: 3/8 in, 1-3/8 in, 1 3/8", .006 in, 6 thou, 9.5 mm, 2 ft, 18 ft 6 in.  In millimetres (1 in is
 * 25.4 mm exactly), rounded once; keep the text beside it, for 3/8 in stays 3/8 in.  A bare number is
 * refused: the unit is asked for.  Not negative, at most 10 km. */
gboolean length_parse(const char *text, double *mm, GError **err);

/* Money in whole cents: 12, 12.5, 12.50, 12,50, "USD 12.50", "12.50 EUR", -12.50 for money back.  currency
 * is "" when none was named, else three capitals.  At most 10,000,000,000.00 either way. */
gboolean money_parse(const char *text, gint64 *cents, char currency[4], GError **err);
#define MONEY_TEXT 32
const char *money_exact(gint64 cents, char buf[MONEY_TEXT]);	/* "12.50"; "" for NONE */

/* Salinity in PSU: "18", "18 psu", "18 ppt"; the words fresh, brackish and salt are for the model, not here.
 * 0 to 45, else ERR_INPUT. */
gboolean salinity_parse(const char *text, double *psu, GError **err);

/* What was read of a water, not yet converted: "18 PSU", "12 ppt"; "42 mS/cm at 18 C", "480 uS/cm compensated" of a
 * meter that shows its reading as at 25 C; "1.018 at 15 C", the specific gravity on a hydrometer.  A bare number is
 * refused.  Ranges are for who converts it. */
enum water_scale { WATER_SALINITY, WATER_CONDUCTIVITY, WATER_GRAVITY };
struct water_reading {
	enum water_scale scale;
	double value; /* PSU, mS/cm, or relative to fresh water */
	double celsius; /* of the water then; NAN: not said */
	gboolean compensated;
};
gboolean water_reading_parse(const char *text, struct water_reading *r, GError **err);

/* A temperature: "12 C", "54 F", "12 °C", "285.15 K"; a bare number is refused, and what is below absolute
 * zero or above 5000 °C.  In degrees Celsius, rounded once. */
gboolean temperature_parse(const char *text, double *celsius, GError **err);

#endif
