/* Figures out of the boat's own manuals: torques, quantities, pressures, gaps.  None is shipped. */
#ifndef LOGBOOK_FIGURE_H
#define LOGBOOK_FIGURE_H

#include "base/quantity.h"
#include "logbook/book.h"

/* What a figure of that name counts in; DIMENSION_COUNT: anything, text too. */
enum dimension figure_dimension(const char *what);
/* Names that are likely, "torque", "oil-type", ...; ends with NULL. */
extern const char *const figure_names[];

/* Work out value and unit from what was read: one value in the dimension's own unit, NAN for a range or a text.
 * ERR_INPUT for what is no such quantity, or a torque or pressure without its unit. */
gboolean figure_check(struct figure *f, GError **err);
/* Keep it, in place of one of that name there from the same source: another source's stays beside it.  ERR_INPUT also
 * without a source; ERR_DOUBT, when sure is not set, for a name that is nearly a known one and for a torque that is
 * unlikely: such as in-lb typed for ft-lb. */
gboolean book_set_figure(struct book *b, struct figure *f, gboolean sure, GError **err);
/* source NULL: the only one of that name.  ERR_NOT_FOUND; ERR_INPUT when several sources have it and none is named. */
gboolean book_drop_figure(struct book *b, const struct fitting *on, const char *what, const char *source, GError **err);
/* The row of a fitting, name and source of f; NONE: there is none. */
gint64 book_figure_key(struct book *b, const struct figure *f);

/* One of all (struct figure) that says otherwise of the same fitting: its range shares no value with f's, to a hundredth
 * (81 N·m is 60 ft-lb rounded), or its text is another.  NULL: none.  Borrowed. */
const struct figure *figure_against(const GArray *all, const struct figure *f);

/* "60 ft-lb (81 N·m)", the caller's. */
char *figure_words(const struct figure *f);

#endif
