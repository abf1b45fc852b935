/* Where the boat lies, its seasons, and what happened to it. */
#ifndef LOGBOOK_YEAR_H
#define LOGBOOK_YEAR_H

#include "logbook/book.h"

/* A stay from s->date on: one that lasts ends there.  Overlap with another stay is a conflict. */
gboolean book_stay(struct book *b, struct stay *s, GError **err);
/* Launch, haul-out, or both; a launch date of a planned season that comes true takes its place. */
gboolean book_season(struct book *b, gint64 boat, gint64 launch, gint64 haul_out, gboolean planned, GError **err);
gboolean book_happening(struct book *b, struct happening *h, GError **err);
/* Close the open happenings of a kind; *closed counts them. */
gboolean book_close_happening(struct book *b, gint64 boat, gint64 kind, gint64 date, int *closed, GError **err);

#endif
