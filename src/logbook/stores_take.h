/* Taking things out of the stores, and counting them. */
#ifndef LOGBOOK_STORES_TAKE_H
#define LOGBOOK_STORES_TAKE_H

#include "logbook/stores.h"

/* For a boat the oldest lot that is fresh on that day comes first, and what is too old is taken only when that is sure; what is
 * lost, thrown away or sent back comes from what is too old first.  More than there is is an ERR_DOUBT: with sure the rest is put
 * on record as a lot of its own, found and of unknown price, so that nothing falls below zero. */
struct store_take {
	gint64 item, quantity, date;
	gint64 boat; /* NONE: lost, thrown away, sent back */
	gint64 job, service; /* NONE: of none */
	const char *remark; /* NULL: none */
	gboolean sure;
};
/* Out of one lot. */
struct store_taken {
	struct lot lot; /* as it was */
	gint64 quantity;
};
/* Both give the lots that it came from, an array of struct store_taken that clears itself; *taken is NULL when they fail. */
gboolean book_took(struct book *b, const struct store_take *t, GArray **taken, GError **err);
/* The same within a command that is under way. */
gboolean stores_take(struct book *b, const struct store_take *t, GArray **taken, GError **err);
/* What it is for, of a take with its date: the exact name of a task, whose service on that day it becomes part of; of a job;
 * beginning with lost, thrown, returned or sent back: for no boat; else any words, or NULL.  t->remark borrows them.  One word with
 * a dot in it is meant for a task: ERR_NOT_FOUND, naming the nearest, when the boat has none of that name. */
gboolean store_take_why(struct book *b, const struct boat *boat, const char *why, struct store_take *t, GError **err);
/* "2 made 2024-03, from the bow locker; ..."; the caller's. */
char *store_taken_words(const struct item *i, const GArray *taken, gint64 day);

/* Put back what was taken of an item by that day, the newest first: of what that boat took, with a remark only what was for that;
 * or with NONE of what was lost, thrown away or sent back.  It goes back to the lot that it came from, and off the service and
 * the job that it was for.  ERR_CONFLICT when less was taken; ERR_INPUT for nothing, or a day ahead of today. */
gboolean book_put_back(struct book *b, const struct store_take *t, GError **err);

struct store_count {
	gint64 quantity, date; /* so many are there on that day */
	const char *remark; /* NULL: none; it goes with what is missing, and with what is found */
	gint64 more; /* filled in: than was on record; below zero: what is missing */
};
/* What is missing was taken by nobody knows whom, what is over becomes a lot of its own, of unknown price.  What was taken after
 * that day was still there on it; ERR_CONFLICT when more is missing than is left now, ERR_INPUT for a day ahead of today. */
gboolean book_counted(struct book *b, const struct item *i, struct store_count *c, GError **err);

/* What `did` takes for a service. */
struct store_use {
	gint64 item, quantity;
};
/* The lot that a use begins with, to copy number and date made from; lot->id NONE when there is none. */
gboolean stores_first_lot(struct book *b, const struct store_use *u, gint64 day, struct lot *lot, GError **err);
/* Undo what a service took before: it is corrected. */
gboolean stores_untake(struct book *b, gint64 service, GError **err);
/* Or what it took, t->service, goes to its day, t->date.  ERR_DOUBT when something came in later; with sure that keeps its day. */
gboolean stores_retake(struct book *b, const struct store_take *t, GError **err);

#endif
