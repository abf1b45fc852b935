/* Places where boats lie: what is known of their water and air.  Stays, outings and boats name theirs by a text; one
 * that is a place's name gets what is known of that place. */
#ifndef LOGBOOK_PLACE_H
#define LOGBOOK_PLACE_H

#include "engine/wear.h"
#include "logbook/book.h"

/* All as typed; NULL: as it was, "none": no longer known. */
struct place_form {
	const char *name;
	const char *rename; /* the stays and boats that name it follow */
	const char *water, *air; /* words */
	const char *salinity; /* "18 PSU", "42 mS/cm at 18 C", "1.018 at 15 C" */
	const char *water_temp, *air_temp; /* "4 4 6 9 13 17 20 21 18 14 9 6", monthly means from January */
	const char *remark;
};

/* A reading in PSU: PSS-78 and EOS-80, engine/salinity.h. */
gboolean salinity_of_reading(const char *text, double *psu, GError **err);
/* Twelve temperatures in C, or in F with an F behind; "-" for a month that is not known. */
gboolean months_parse(const char *text, struct monthly *m, GError **err);

/* Put a place on record, or correct it.  The water follows from a salinity; ERR_CONFLICT when the word contradicts.
 * *p is the place as recorded: clear it. */
gboolean book_place(struct book *b, const struct place_form *f, struct place *p, GError **err);
/* Refused while a stay or a boat names it. */
gboolean book_drop_place(struct book *b, const char *name, GError **err);
/* ERR_NOT_FOUND, naming the nearest; *p is to be cleared. */
gboolean book_find_place(struct book *b, const char *name, struct place *p, GError **err);
gint64 book_place_key(struct book *b, const char *name); /* NONE */
/* The place's water; NONE when it is no known place, or its water is not known. */
gboolean book_place_water(struct book *b, const char *name, gint64 *water, GError **err);
gint64 book_climate_key(struct book *b, gint64 place, gint64 month); /* of that month's temperatures; NONE */
gboolean book_place_months(struct book *b, gint64 place, struct monthly *water, struct monthly *dry, GError **err);

/* Say where a boat usually lies.  A boat that is afloat in season takes the place's water for its usual one:
 * boat->water. */
gboolean book_boat_at(struct book *b, struct boat *boat, const char *place, GError **err);

/* Whether a place or a month can be; the water of a place follows from its salinity when it is not said. */
gboolean place_check(struct place *p, GError **err);
gboolean month_check(const struct climate_month *m, GError **err);

#endif
