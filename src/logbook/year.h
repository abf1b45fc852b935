/* Where the boat lies, its seasons, and what happened to it. */
#ifndef LOGBOOK_YEAR_H
#define LOGBOOK_YEAR_H

#include "logbook/book.h"

/* A stay from s->date on: one that lasts ends there.  Overlap with another stay is a conflict.  With its id: corrected. */
gboolean book_stay(struct book *b, struct stay *s, GError **err);
/* Launch, haul-out, or both; a launch date of a planned season that comes true takes its place. */
gboolean book_season(struct book *b, gint64 boat, gint64 launch, gint64 haul_out, gboolean planned, GError **err);
/* The season on record that such dates belong to: the one to end, or planned, or launched that day; clear it, also when this
 * fails.  Its id is NONE: there is none. */
gboolean book_season_meant(struct book *b, gint64 boat, gint64 launch, gint64 haul_out, struct season *s, GError **err);
gboolean book_correct_season(struct book *b, struct season *s, GError **err);	/* s->id says which */
gboolean book_happening(struct book *b, struct happening *h, GError **err);
/* Take a stay, a season or a happening out of the log; date is for the journal's words. */
gboolean book_drop_dated(struct book *b, enum record r, gint64 id, gint64 date, GError **err);

#endif
