/* What was typed into a form that was not finished: kept in a file after every key, gone when it is recorded. */
#ifndef TUI_DRAFT_H
#define TUI_DRAFT_H

#include "tui/form.h"

/* Keep what was typed and differs from the defaults; with nothing of that, no draft.  FALSE and *err: it can't be kept;
 * without a->start.state none can. */
gboolean draft_keep(struct app *a, const struct form *f, GError **err);
/* Put what the draft of this form, subject and logbook holds into its fields; TRUE when there was one, and the day it was
 * typed. */
gboolean draft_take(struct app *a, struct form *f, gint64 *day);
void draft_drop(struct app *a, const struct form *f);
/* Whether any field differs from its default because somebody typed. */
gboolean draft_wanted(const struct form *f);

#endif
