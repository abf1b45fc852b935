/* Outings, and the hours that follow from what a meter showed. */
#ifndef LOGBOOK_OUTING_H
#define LOGBOOK_OUTING_H

#include "logbook/found.h"

struct outing_share {
	const char *engine; /* NULL: the only one, or every engine of the boat but a generator */
	gint64 hours, reading; /* one of the two, in seconds */
};

struct outing_form {
	gint64 boat;
	struct outing what; /* date, water, rinsed, estimated, place, remark; the rest is filled in */
	struct outing_share share[MAX_ENGINES];
	int n_shares; /* 0: no engine ran */
	GArray *was; /* for inside use: the rows of the trip that is corrected */
	gint64 instead_of; /* id of an outing that this one corrects; NONE: a new one */
	gboolean sure; /* take implausible readings as they are */
};

struct outing_said {
	struct outing row[MAX_ENGINES]; /* as recorded */
	char *engine[MAX_ENGINES];
	gint64 total[MAX_ENGINES]; /* the engine's hours now; NONE: unknown */
	int n;
	gboolean place_water; /* the water was not said and is the place's */
	char *note; /* something unusual worth a word; NULL */
};
void outing_said_clear(struct outing_said *s);

/* ERR_DOUBT with the likely right figure when the reading can hardly be right and form->sure is not set. */
gboolean book_outing(struct book *b, struct outing_form *form, struct outing_said *said, GError **err);
gboolean book_drop_outing(struct book *b, gint64 id, GError **err);
/* The rows of the trip that an outing's row belongs to, one an engine: an array of struct outing that clears itself. */
GArray *book_trip(struct book *b, gint64 id, GError **err);

/* An engine's running seconds at the end of a day. */
struct engine_hours {
	gint64 total; /* NONE when what it ran before the log is unknown */
	gint64 logged; /* what the log itself holds */
	gboolean estimated;
};
gboolean book_engine_hours(struct book *b, const struct engine *e, gint64 day, struct engine_hours *h, GError **err);
/* "~612.4 h", "3 h logged" where the total is unknown, "hours unknown"; the caller's. */
char *engine_hours_words(const struct engine_hours *h);

#endif
