/* Items and lots in words, for both front ends. */
#ifndef LOGBOOK_STORES_STORY_H
#define LOGBOOK_STORES_STORY_H

#include "logbook/stores.h"

/* "bellows, U-joint: 5, 2 too old, 1 to come   RB-204 (Quay)"; the caller's. */
char *stores_item_words(const struct stores *s, const struct item *i, gint64 today);
/* "none", "5, 2 too old, 1 to come, to keep 2"; the caller's. */
char *stores_there_words(const struct stores *s, const struct item *i, gint64 today);
/* "2 on hand since 25 Nov 2026, made 2021-09, 62 months, may lie 48: too old, bow locker",
 * "1 to come, expected 9 Dec 2026", or "overdue since" that day when it has passed; the caller's. */
char *stores_lot_words(const struct stores *s, guint lot, gint64 today);
/* What is known of an item, its numbers, what needs it, what came and what went, a line each; the caller's. */
char *stores_story(struct book *b, const struct stores *s, const struct item *i);

/* What is on hand and to come, lot by lot, and items of which there is none, for other programs; only: that item, NULL: all.  The
 * caller's. */
char *stores_csv(const struct stores *s, const struct item *only, gint64 today);
char *stores_json(const struct stores *s, const struct item *only, gint64 today);

#endif
