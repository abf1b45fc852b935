/* Measured values: readings kept as they were read, held to limits, and the owner's limits out of the manual. */
#ifndef LOGBOOK_MEASURE_H
#define LOGBOOK_MEASURE_H

#include "engine/condition.h"
#include "logbook/readings.h"

/* The kind of that name, or the only one whose name holds the text ("compression").  NULL, and *err with the nearest
 * and all that it can be; or what is wrong in the file of them. */
const struct condition_kind *measure_kind(struct book *b, const char *text, GError **err);
/* Whether a kind is called exactly so; *err as above. */
gboolean measure_known(struct book *b, const char *what, GError **err);

/* A value as typed, in the kind's unit: "3/8 in", "12.65 V", "-950 mV", "60 %", "2 in/h".  A bare number is taken
 * where only one unit is likely.  For compression-spread also pressures of two cylinders or more: "150 148 120 psi".
 * ERR_INPUT when it is no number or of another unit. */
gboolean measure_parse(const struct condition_kind *kind, const char *text, double *value, GError **err);

/* The limits that hold for a value: the program's, or the owner's in their place. */
struct measure_limits {
	const struct condition_kind *kind;
	struct bands bands;
	gint64 standing; /* words_standing */
	const char *source; /* borrowed of the kind or of the owner's record */
	gboolean own;
	gint64 units; /* words_units: shown in these first, and in the other beside; NONE: in the kind's unit alone */
};
/* own: NULL when there is none. */
struct measure_limits measure_limits_of(const struct condition_kind *kind, const struct bound *own, gint64 units);
/* Of a boat's records the one that holds on a fitting: its own before that for everywhere; NULL: none. */
const struct bound *measure_bound_on(const GArray *bounds, const char *what, gint64 fitting);

/* A reading without a value is judged by its text.  Water as a word stands for a salinity in its range. */
void measure_judge(const struct measure_limits *l, const struct measurement *m, struct condition_out *j);

/* In words, each the caller's: "stop: at 50 % or below", "good", or why it is not judged; all bands of the limits,
 * "worth watching below 75 %, stop below 50 %" or "no limits"; where they come from. */
char *measure_verdict(const struct measure_limits *l, const struct condition_out *j);
char *measure_bands(const struct measure_limits *l);
char *measure_source(const struct measure_limits *l);
/* What was read, as it was typed; with a system chosen, the other beside it: "17/64 in (6.75 mm)".  kind NULL: as typed. */
char *measure_read_words(const struct condition_kind *kind, const char *as_read, gint64 units);

/* Of a boat's readings, by day and entry, the last before this one of its kind and place; NULL.  Of one that is not among
 * them all up to its day are before it. */
const struct measurement *measure_before(const GArray *readings, const struct measurement *m);
/* Whether the two were read in ways that cannot be compared, as their methods have it: cold, hot; on the hose, afloat;
 * another instrument.  What is said of one alone is another way too. */
gboolean measure_another_way(const struct measurement *m, const struct measurement *before);
/* "before: 62 % on 3 May 2026", or "read another way (at idle; before: on hose): not compared with ..."; the caller's. */
char *measure_before_words(const struct measurement *m, const struct measurement *before);

/* Of a reading of second-meter, a second gauge of one engine, how far it is from the log's own meter, and whether the two
 * drift apart by more than 2 h or 5 % since that gauge's first reading; NULL of another kind, or with *err.  The caller's. */
char *book_second_meter(struct book *b, const struct measurement *m, GError **err);

struct measure_form {
	struct measurement what; /* id: of the reading that this one corrects; NONE: a new one.  value and unit are set */
	const struct condition_kind *kind;
	gboolean sure; /* take what cannot be as it is */
};
/* ERR_DOUBT for what lies outside all that can be read, or has the wrong sign, when sure is not set.  limits->source
 * is interned. */
gboolean book_measure(struct book *b, struct measure_form *f, struct measure_limits *limits, struct condition_out *j,
		      GError **err);
/* All of it but the writing: of a reading that is put on record with something else, by book_put. */
gboolean book_measure_ready(struct book *b, struct measure_form *f, struct measure_limits *limits, struct condition_out *j,
			    GError **err);
gboolean book_drop_measurement(struct book *b, gint64 id, GError **err);

/* The owner's limits: nothing between them that contradicts the rest.  An earlier record for the same boat, fitting
 * and value is replaced. */
gboolean measure_bound_check(struct book *b, const struct bound *o, GError **err);
gint64 book_bound_key(struct book *b, gint64 boat, gint64 fitting, const char *what); /* NONE: there is none */
gboolean book_set_bound(struct book *b, struct bound *o, GError **err);
/* The program's limits again.  ERR_NOT_FOUND. */
gboolean book_drop_bound(struct book *b, gint64 boat, gint64 fitting, const char *what, GError **err);

#endif
