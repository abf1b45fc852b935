/* Inside the import: reading one file of records within a command that is under way. */
#ifndef LOGBOOK_IMPORT_H
#define LOGBOOK_IMPORT_H

#include "logbook/inside.h"
#include "logbook/transfer.h"

/* Read form->path into boat (NONE: the file must say); the caller began the command and ends it.  FALSE with
 * said->errors filled when rows are wrong, or *err when it could not be read at all. */
gboolean import_file(struct book *b, const struct import_form *form, gint64 boat, struct import_said *said,
		     GError **err);

/* The same of a file of our own, where the first wrong row is the error; a file that is not there adds nothing. */
gboolean import_whole(struct book *b, const char *path, enum record r, gint64 boat, GError **err);

/* A meter with new rows, followed from row to row. */
struct import_meter {
	gint64 id;
	gint64 date; /* of its last row; at first the day it was fitted */
	gint64 shown; /* seconds, after that row; NONE: it can't be followed, and import_settle looks at all its rows */
};

struct import_line { gint64 outing, line; };

struct importing {
	struct book *b;
	const struct import_form *form;
	gint64 boat; /* for rows that do not say; NONE */
	struct bulk *bulk;
	struct import_said *said;
	GHashTable *there; /* text of a row without its key -> count; NULL: the table was empty */
	GArray *boats, *engines, *meters, *tasks; /* of all boats, for look-ups */
	GHashTable *by_task; /* of tasks, by their keys */
	GHashTable *touched; /* struct import_meter, of meters with new rows, by their keys */
	GArray *lines; /* struct import_line of each outing with a reading */
	GArray *readings; /* struct service with readings to be placed */
};

/* Make a row of that kind whole and check it: defaults, the meter of its day.  FALSE: the row is wrong. */
gboolean import_complete(struct importing *in, void *record, GError **err);
/* Whether a rate is one that the program knows, and its value makes sense. */
gboolean import_rate_check(const struct rate *r, GError **err);
/* Not after today; NONE is not. */
gboolean import_not_ahead(const struct importing *in, gint64 date, GError **err);
/* Whether a waiver, a skip and cautions read are whole: no day ahead, and nothing blank that somebody must have said. */
gboolean import_waiver_check(const struct importing *in, const struct waiver *w, GError **err);
gboolean import_skip_check(const struct importing *in, const struct skip *s, GError **err);
gboolean import_heeded_check(const struct importing *in, const struct heeded *h, GError **err);
/* The key of the row that has this one's name: a boat, engine, fitting, task, meter of that day, rate.  NONE. */
gint64 import_key_by_name(struct importing *in, const void *record);
/* Where the engines of a boat begin among in->engines. */
guint import_first_engine(const struct importing *in, gint64 boat);
/* Whether a meter can show that reading so many days after it showed the other (seconds): not less, and no more than the days
 * have hours. */
gboolean import_can_be(gint64 reading, gint64 shown, gint64 days);
/* After the last row: hours from readings, services among the outings, overlaps.  Errors go to said. */
gboolean import_settle(struct importing *in, GError **err);

#endif
