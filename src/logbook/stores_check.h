/* What a row of the stores must be, typed or imported. */
#ifndef LOGBOOK_STORES_CHECK_H
#define LOGBOOK_STORES_CHECK_H

#include "logbook/stores.h"

gboolean item_check(const struct item *i, GError **err);
/* A quantity above nothing, a price not below it, days in their order and none ahead of today but what is expected, a currency of
 * three capitals. */
gboolean lot_check(const struct lot *l, gint64 today, GError **err);

/* The stores as a whole: numbers that replace each other in a circle, or one of another item; more taken out of a lot than was in
 * it, or before it arrived.  What is wrong goes through say; FALSE and *err when they can't be read. */
gboolean stores_check(struct book *b, void (*say)(void *user, const char *text), void *user, GError **err);

#endif
