/* What was typed into a form that was not finished: kept in a file after every key, gone when it is recorded. */
#ifndef TUI_DRAFT_H
#define TUI_DRAFT_H

#include "tui/form.h"

/* Errors are passed over: a draft that can't be kept loses nothing that was recorded.  Without a->start.state none is. */
void draft_keep(struct app *a, const struct form *f);
/* Put what the draft of this form, subject and logbook holds into its fields; TRUE when there was one. */
gboolean draft_take(struct app *a, struct form *f);
void draft_drop(struct app *a, const struct form *f);

#endif
