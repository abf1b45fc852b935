/* What is known of one fitting, section by section. */
#ifndef TUI_FITTING_STORY_H
#define TUI_FITTING_STORY_H

#include "logbook/due.h"
#include "tui/grid.h"

/* All records of a boat that its fittings' stories are made of. */
struct fitting_records {
	GArray *fittings, *tasks, *parts, *services, *readings, *bounds;
	const struct due_list *due;
};
gboolean fitting_records_read(struct fitting_records *r, struct book *b, gint64 boat, const struct due_list *due, GError **err);
void fitting_records_clear(struct fitting_records *r);

/* Paragraphs, a line each; g tells which signs can be shown.  The caller frees it. */
char *fitting_story(const struct fitting_records *r, const struct fitting *f, const struct grid *g);
/* The most pressing of its lines in the due list; NULL. */
const struct due_line *fitting_due(const struct fitting_records *r, gint64 fitting);
/* Its last reading; NULL. */
const struct measurement *fitting_reading(const struct fitting_records *r, gint64 fitting);

#endif
