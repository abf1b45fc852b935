/* Inch or metric: which system a boat's owner wants beside what was typed, and limits shown in first. */
#ifndef LOGBOOK_UNITS_H
#define LOGBOOK_UNITS_H

#include "logbook/book.h"

/* words_units; NONE: not chosen, or no such boat.  Values then stand as they were typed, and limits as they are kept. */
gint64 book_units(struct book *b, gint64 boat);
/* One journal entry; boat->units. */
gboolean book_set_units(struct book *b, struct boat *boat, gint64 units, GError **err);

#endif
