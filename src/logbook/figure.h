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
/* Keep it, in place of one of that name there.  ERR_INPUT also without a source; ERR_DOUBT, when sure is not set, for a
 * name that is nearly a known one and for a torque that is unlikely: such as in-lb typed for ft-lb. */
gboolean book_set_figure(struct book *b, struct figure *f, gboolean sure, GError **err);
/* ERR_NOT_FOUND. */
gboolean book_drop_figure(struct book *b, const struct fitting *on, const char *what, GError **err);
gint64 book_figure_key(struct book *b, gint64 boat, gint64 fitting, const char *what); /* NONE: there is none */

/* "60 ft-lb (81 N·m)", the caller's. */
char *figure_words(const struct figure *f);

#endif
