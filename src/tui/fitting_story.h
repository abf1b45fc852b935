/* What is known of one fitting, section by section. */
#ifndef TUI_FITTING_STORY_H
#define TUI_FITTING_STORY_H

#include "logbook/due.h"
#include "logbook/fitting_history.h"
#include "logbook/readings.h"
#include "tui/grid.h"

/* All records of a boat that its fittings' stories are made of; of the log of outings none. */
struct fitting_records {
	GArray *fittings;	/* in the order of the tree */
	GArray *tasks, *parts, *readings, *bounds, *findings, *figures;
	GArray *events; /* struct fitting_event, of all of them */
	gint64 units; /* words_units; NONE */
	const struct due_list *due;
	const struct readings *kinds; /* NULL: nothing was read on this boat */
};
/* On failure what was read before stays. */
gboolean fitting_records_read(struct fitting_records *r, struct book *b, gint64 boat, const struct due_list *due, GError **err);
void fitting_records_clear(struct fitting_records *r);

/* Paragraphs, a line each, its plots drawn in w columns with the signs that g shows.  The caller frees it.  At its end stand the
 * services, newest first; or, with its events given, all of them as they came. */
char *fitting_story(const struct fitting_records *r, const struct fitting *f, const struct grid *g, int w, const GArray *whole);

/* How things stand: "past due", "before launch", "not on this boat", "" without a task; the caller's.  And its look. */
char *fitting_state(const struct fitting_records *r, const struct fitting *f, enum style *style);
/* "60 %, worth watching": the last reading there; NULL: none; the caller's. */
char *fitting_reading(const struct fitting_records *r, const struct fitting *f);
/* "past due", "before launch": when a line is to be done; the caller's.  And its look. */
char *due_state(const struct due_line *d, enum style *style);

#endif
