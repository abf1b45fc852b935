/* What the files about taking out of the stores share. */
#ifndef LOGBOOK_STORES_INSIDE_H
#define LOGBOOK_STORES_INSIDE_H

#include "logbook/stores_take.h"

/* More than nothing, and not ahead of today. */
gboolean store_check_take(const struct book *b, const struct store_take *t, GError **err);
/* A row of what is taken out of a lot, within a transaction; below zero: put back. */
gboolean store_put_taken(struct book *b, const struct store_take *t, gint64 lot, gint64 quantity, GError **err);
/* "2 bellows, U-joint"; the caller's. */
char *store_words(struct book *b, gint64 item, gint64 quantity);

#endif
