/* The stores: kinds of parts with their numbers, what lies where and how old it is, what was taken for what.  They are the
 * logbook's, not one boat's.
 *
 * Quantities are counted in thousandths of the item's unit, so that sums are exact.  What is left of a lot is what arrived less
 * what was taken out of it. */
#ifndef LOGBOOK_STORES_H
#define LOGBOOK_STORES_H

#include "logbook/book.h"

#define STOCK_ONE 1000
#define STOCK_MOST (1000000 * (gint64)STOCK_ONE)
/* "3", "2.5", "0,75": from 0 to a million, with at most three places. */
gboolean stock_parse(const char *text, gint64 *quantity, GError **err);
#define STOCK_TEXT 24
const char *stock_text(gint64 quantity, char buf[STOCK_TEXT]); /* "2.5" */
/* Of a record, and for one; whether the record has one that can be counted so. */
gint64 stock_of(double real);
double stock_real(gint64 quantity);
gboolean stock_check(double real, gboolean signs, GError **err);

/* All of the stores as they stand; what is below points into it. */
struct stores {
	GArray *items, *numbers, *lots, *taken, *needs; /* struct item, number, lot, taken, need, in their stable order */
	GArray *left; /* gint64 of each lot: what is left of it; of one that has not arrived, what is to come */
};
struct stores *book_stores(struct book *b, GError **err);
void stores_free(struct stores *s); /* NULL will do */
const struct item *stores_nth(const struct stores *s, guint i); /* NULL past the last */
const struct item *stores_item(const struct stores *s, gint64 id);
const struct lot *stores_lot(const struct stores *s, guint i); /* NULL past the last */
const struct lot *stores_lot_of(const struct stores *s, gint64 id);
gint64 stores_left(const struct stores *s, guint lot); /* thousandths of the unit; see left above */
/* Case apart; NULL is the same as "". */
gboolean stores_same_text(const char *a, const char *b);

/* The item that the words mean: one of its numbers, old or new, of any supplier, in either case; its name; or words that all stand
 * in its name and numbers.  *by is the number met, NULL when it was none.  NULL and ERR_NOT_FOUND, or ERR_INPUT naming the
 * candidates. */
const struct item *stores_find(const struct stores *s, const char *words, const struct number **by, GError **err);
/* The number that took a number's place in the end: itself, when none did. */
const struct number *stores_current(const struct stores *s, const struct number *n);
/* "RB-204 (Quay Stores), RB-9": those that no other took the place of; NULL when it has none.  The caller's. */
char *stores_numbers(const struct stores *s, gint64 item);
/* "RB-103 is superseded: RB-204 is current"; NULL for a number that is current.  The caller's. */
char *stores_superseded(const struct stores *s, const struct number *n);
/* ERR_CONFLICT when following the numbers' replaced_by comes back to where it began. */
gboolean stores_check_chain(const struct stores *s, const struct number *n, GError **err);

/* How long a lot has lain on a day. */
struct lot_age {
	gboolean matters; /* it is rubber, or may lie for so long only */
	int months; /* since it was made; since it arrived when that is not known; -1: neither is known */
	gboolean at_least; /* nobody knows when it was made */
	gboolean stale; /* older than it may be */
};
void lot_age(const struct item *i, const struct lot *l, gint64 day, struct lot_age *age);
/* "made 2021-09, 62 months, may lie 48"; NULL when age does not matter.  The caller's. */
char *lot_age_words(const struct item *i, const struct lot *l, gint64 day);

/* Of an item: what is on hand, with fresh_on only what is not older then than it may be (NONE: all); and what is to come. */
gint64 stores_on_hand(const struct stores *s, const struct item *i, gint64 fresh_on);
gint64 stores_to_come(const struct stores *s, const struct item *i);
/* "3", "2.5 L"; the caller's. */
char *item_quantity(const struct item *i, gint64 quantity);

/* A new item, or with id another state of one; its numbers are added.  Another item of that name, and a number that another item
 * has from the same supplier, are an ERR_CONFLICT; one given twice, or of a supplier only ("@Quay"), is an ERR_INPUT.  In names,
 * numbers and places a line break becomes a blank. */
gboolean book_put_item(struct book *b, struct item *i, struct number *n, int n_numbers, GError **err);
/* A number takes the place of another one of the item, which it may have already. */
gboolean book_replace_number(struct book *b, const struct item *i, struct number *n, const char *old, GError **err);
/* Something bought or ordered; l->id and what is not said of ordered and arrived stay unknown.  ERR_INPUT for what no lot can be,
 * see lot_check. */
gboolean book_put_lot(struct book *b, const struct item *i, struct lot *l, GError **err);
/* What was ordered is here: place, made and price as far as they are said in *l; on l->arrived, NONE: today.  ERR_NOT_FOUND when
 * there is no such lot, ERR_CONFLICT when it arrived already, ERR_INPUT as for book_put_lot. */
gboolean book_arrived(struct book *b, gint64 lot, const struct lot *l, GError **err);
/* The task needs so much (thousandths of the unit) of it; 0: it no longer needs it, ERR_NOT_FOUND when it never did. */
gboolean book_put_need(struct book *b, const struct task *t, const struct item *i, gint64 quantity, gboolean on_condition,
		       GError **err);

#endif
