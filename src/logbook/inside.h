/* What the files of logbook/ share about an open book; nobody else includes this. */
#ifndef LOGBOOK_INSIDE_H
#define LOGBOOK_INSIDE_H

#include "logbook/book.h"
#include "model/meter.h"
#include "store/cells.h"
#include "store/db.h"
#include "store/rows.h"

struct book {
	struct db *db;
	struct book_who who;
	char *name; /* last answer of book_name_of */
	/* What is shipped; NULL: not asked for yet. */
	struct readings *readings;
	struct cautions *cautions;
	struct knowledge *knowledge;
};

gboolean book_begin(struct book *b, GError **err);
/* Commit with the entry's words when ok, else roll back; returns whether it was kept. */
gboolean book_end(struct book *b, gboolean ok, GError **err, const char *format, ...) G_GNUC_PRINTF(4, 5);

/* Give a record its key when it has none, and write it. */
gboolean book_put(struct book *b, enum record r, void *record, GError **err);

/* Gather the whole records of a statement that is open, and close it. */
GArray *book_rows(struct cells *c, enum record r, GError **err);
/* Run a statement of one key and gather whole records. */
GArray *book_gather(struct book *b, enum record r, enum sql_id sql, gint64 key, GError **err);
/* The key that a statement of (boat, name) finds; NONE. */
gint64 book_key_of(struct book *b, enum sql_id sql, gint64 boat, const char *name);

/* The first key that a statement finds, which this closes; NONE. */
gint64 book_key_found(struct cells *c);

/* The year in which a boat was built, NONE; and whether a day can be a day of a boat of that year. */
gboolean book_built(struct book *b, gint64 boat, gint64 *year, GError **err);
gboolean built_by(gint64 year, gint64 day, GError **err);

/* A boat's engine by name; NULL: its only one.  ERR_NOT_FOUND. */
gboolean book_engine(struct book *b, gint64 boat, const char *name, struct engine *e, GError **err);
/* The engine whose hours count for a task: that of the name; NULL: the fitting's, or the boat's only one. */
gboolean book_engine_of(struct book *b, const struct task *t, const char *name, struct engine *e, GError **err);

/* The meter that counts on a day; m->id is NONE when there is none. */
gboolean book_meter_on(struct book *b, gint64 engine, gint64 day, struct meter *m, GError **err);
gboolean book_has_meter(struct book *b, gint64 engine);
/* The rows of a meter's log; and after a change, the hours that follow from its readings written anew. */
GArray *book_meter_rows(struct book *b, gint64 meter, GError **err);
gboolean book_meter_settle(struct book *b, const struct meter *m, gboolean sure, GError **err);
/* Put a service's reading into its day: s->after, what ran after the work that day; hours that no outing tells of
 * become an outing of their own, *unlogged seconds.  ERR_DOUBT as book_question. */
gboolean book_place_service(struct book *b, struct service *s, gboolean sure, gint64 *unlogged, GError **err);
/* Whether a reading of work on a task, s->reading on s->date, can be: ERR_DOUBT as book_question, or there is no such meter. */
gboolean book_reading_fits(struct book *b, const struct task *t, const struct service *s, GError **err);

/* book_did(), book_finding() and book_mend() within a command that is under way. */
struct service_form;
struct service_said;
struct finding_form;
struct finding_proposal;
gboolean book_put_did(struct book *b, struct service_form *form, struct service_said *said, GError **err);
gboolean book_put_finding(struct book *b, struct finding_form *form, struct finding_proposal *p, GError **err);
gboolean book_put_mend(struct book *b, struct finding *f, gint64 day, const char *left_as, GError **err);

/* Question an outing's reading or hours: ERR_DOUBT with the likely right figure.  `before` is what the meter showed
 * before it, NONE without a meter.  *note gets a word on what is only unusual. */
gboolean book_question(struct book *b, const struct engine *e, gint64 before, const struct outing *o, char **note,
		       GError **err);

#endif
