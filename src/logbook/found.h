/* A new boat: its engines, meters, fittings and tasks from the catalogue of its kind. */
#ifndef LOGBOOK_FOUND_H
#define LOGBOOK_FOUND_H

#include "logbook/book.h"
#include "logbook/catalogue.h"

enum { MAX_ENGINES = 6 };

struct new_engine {
	const char *name;
	gint64 reading; /* what its meter shows now; NONE: no meter */
	gint64 hours; /* what the engine has run; NONE: as the meter shows, or unknown */
	gboolean estimated;
};

struct new_boat {
	struct boat boat; /* id is filled in */
	struct new_engine engine[MAX_ENGINES];
	int n_engines;
	const char *catalogue; /* folder of the catalogues */
	struct catalogue_said said;
	gboolean from_builder; /* new on boat.since: nothing is older */
	gboolean used; /* it asks to be gone through */
	char **variants; /* "PATH=VARIANT", NULL-ended; NULL: none known */
	char **without; /* fittings that it does not have */
	struct catalogue_given given; /* set */
};

gboolean book_add_boat(struct book *b, struct new_boat *n, GError **err);

/* A meter that took the place of another, or was reset: counts from m->fitted, showing m->start then; engine_hours is
 * worked out from the log up to that day.  With how METER_FIRST the log's beginning moves back to that day and
 * reading; what ran until the old beginning becomes one row, not logged. */
gboolean book_add_meter(struct book *b, gint64 boat, const char *engine, struct meter *m, GError **err);

#endif
