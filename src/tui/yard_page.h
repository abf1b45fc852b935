/* The screens of the yard sheet, as they open each other. */
#ifndef TUI_YARD_PAGE_H
#define TUI_YARD_PAGE_H

#include "logbook/yard.h"
#include "tui/app.h"

/* A page of what a filled sheet would do, each line with its reason; t there takes it.  The form is copied.  FALSE and *err: the
 * file can't be read, and no page is opened. */
gboolean yard_read_show(struct app *a, const struct yard_read_form *form, GError **err);

/* What is on record of a line: paragraphs, a line each; the caller's. */
char *yard_line_story(const struct yard_shown *s);
/* A line of a sheet before its words: "[x]  12  ", ticked when nothing of it is left to do, "[-]" when some is; the caller's. */
char *yard_line_head(const struct yard_shown *s);

/* A path as typed, "~/" being the home folder; the caller's. */
char *yard_path(const char *typed);

#endif
