/* Whether a reading can be right, and what was probably meant. */
#ifndef ENGINE_PLAUSIBLE_H
#define ENGINE_PLAUSIBLE_H

#include "base/value.h"

enum doubt {
	DOUBT_NONE,
	DOUBT_NOTE,	/* unusual, probability below 1e-3: worth a word */
	DOUBT_ASK,	/* below 1e-6: ask */
	DOUBT_BACKWARDS,	/* less than the reading before */
	DOUBT_IMPOSSIBLE,	/* more than 24 h a day */
};

struct use {
	double expected;	/* hours expected in the gap */
	double phi;	/* hours, spread of single outings: 4 when nothing is known */
	double c2;	/* relative variance of the rate: 0.075 to 0.3 */
};

/* P(H >= hours) and P(H <= hours) of a gamma by moments, shape k = mu / (phi + c2 mu), scale phi + c2 mu. */
double use_upper(const struct use *u, double hours);
double use_lower(const struct use *u, double hours);

/* Judge hours run over days.  Source of bounds: judgement; 24 h a day plus 1 is arithmetic.  Little use is doubted
 * only where 10 h or more were expected, and none at all never. */
enum doubt reading_doubt(const struct use *u, double hours, gint64 days);

/* At most three readings that a single slip of the typed text could have meant, best first, as text: one
 * character deleted, two exchanged, one digit or point put in or changed; between previous and previous + 24 h a day,
 * with one decimal at most.  Returns how many.  `typed` holds digits and at most one point. */
int reading_guesses(const struct use *u, double previous, gint64 days, const char *typed, char guess[3][16]);
/* The order among them: log of the gamma density of the hours, plus log of 4 for a slipped point, 2 for an exchange. */
double guess_score(const struct use *u, double hours, gboolean point, gboolean exchange);

/* How far value stands out of the n in x: .6745 (value - median) / median absolute deviation; beyond 3.5 is flagged
 * (Iglewicz and Hoaglin 1993, after NIST/SEMATECH e-Handbook 1.3.5.17).  NAN with fewer than 5, or most equal. */
double outlier_z(const double *x, int n, double value);

/* Is it failing more often?  gap: times between n failures, the last failure ending the record.  Laplace's U, beyond
 * 1.96 for worse; the power law's exponent n / sum ln(T_n / T_i), above 1 for worse, and its scale n / T_n^exponent. */
double laplace_u(const double *gap, int n);
void power_law(const double *gap, int n, double *exponent, double *scale);

#endif
