/* Measured values against their limits: good, worth watching, or stop. */
#ifndef ENGINE_CONDITION_H
#define ENGINE_CONDITION_H

#include "base/value.h"
#include "engine/types.h"

/* Stop: not to be launched, or not to be run, before it is put right. */
enum verdict { VERDICT_GOOD, VERDICT_WATCH, VERDICT_STOP, VERDICT_NONE, VERDICT_COUNT };

enum worse { WORSE_MORE, WORSE_LESS, WORSE_BOTH };

/* Where a band ends; past it lies the worse one, and the bound itself belongs to that when `at` says
 * so.  NAN: nowhere. */
struct edge {
	double value;
	gboolean at;
	gboolean above; /* set where it was passed: the upper one of its pair */
};

/* Of each pair the first is the lower bound (less is worse), the second the upper (more is worse). */
struct bands {
	enum worse worse;
	struct edge watch[2], stop[2];
};

/* What can be measured.  The limits hold until the maker's are typed in; one without any is judged by those alone. */
struct condition_kind {
	const char *what, *unit; /* "anode-left", "%" */
	const char *how; /* as it has to be read to be judged */
	struct bands bands;
	double least, most; /* what can be read at all */
	enum water water; /* the only water in which it can be judged; WATER_COUNT: any, or none */
	const char *standing, *source; /* "published", "practice" or "memory": of the limit to stop at */
};

/* Why there is no verdict. */
enum unjudged {
	UNJUDGED_NOT, /* there is one */
	UNJUDGED_UNIT, /* read in a unit that cannot be turned into the kind's */
	UNJUDGED_RANGE, /* cannot be: ask */
	UNJUDGED_SIGN, /* of the wrong sign, leads exchanged: ask */
	UNJUDGED_LIMITS, /* no limit is known: the manual's has to be typed in */
	UNJUDGED_WATER, /* another water, or none known: compare with the boat's own last reading only */
};

struct condition_in {
	double value;
	const char *unit;
	double psu; /* of the water it was read in; NAN: not known */
};

struct condition_out {
	enum verdict verdict;
	enum unjudged unjudged;
	double value; /* in the kind's unit; NAN when it cannot be had */
	struct edge passed; /* of the worst band; value NAN when good or not judged */
};

/* own: limits out of the manual, in the kind's unit; NULL: the kind's. */
void condition_judge(const struct condition_kind *kind, const struct bands *own,
		     const struct condition_in *in, struct condition_out *out);
/* A bare value by bands: never VERDICT_NONE but for NAN. */
enum verdict bands_verdict(const struct bands *bands, double value, struct edge *passed);

/* Percent by which the lowest cylinder lies below the highest: (highest - lowest) / highest.  NAN for
 * fewer than two, or when one is below nought or all are nought. */
double compression_spread(const double *pressure, int n);

#endif
