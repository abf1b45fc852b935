/* What the coming opportunity needs of the stores, and by when it is to be ordered.
 *
 * Of each item: what the due tasks need, and what is always to be kept, less what is on hand and fresh enough on the day it is
 * needed, less what is ordered and expected by then.  The day it is needed is that of the task's opportunity, or its early day (see
 * engine/due.h) when that comes between; of several tasks the first.  Order by: that day less the item's days of waiting. */
#ifndef LOGBOOK_STORES_WANT_H
#define LOGBOOK_STORES_WANT_H

#include "logbook/due.h"
#include "logbook/stores.h"

struct want_line {
	const struct item *item;
	char *tasks; /* "bellows-ujoint.renew, gimbal-bearing.grease (on condition)"; NULL: it is only to be kept */
	gint64 always, condition; /* what the tasks need; on condition: only when something is found bad */
	gint64 on_hand, fresh, to_come;
	gint64 too_late; /* of what is to come: expected after the day it is needed, so that more is to be got */
	gint64 want; /* to get; 0: there is enough, or it is wanted on condition only */
	gint64 perhaps; /* and so much more, should all of it be found bad */
	gint64 needed; /* day; NONE: on no certain day */
	gint64 order_by; /* NONE: not known how long it takes, or when it is needed */
	gboolean late; /* that day has passed */
};

/* A task with something to have at hand, for which no item is linked. */
struct want_loose {
	const char *task, *part;
	gint64 needed;
};

struct wants {
	struct stores *stores;
	struct due_list *due;
	GArray *lines; /* struct want_line: first to be ordered first */
	GArray *loose; /* struct want_loose */
	int no_record; /* tasks with needs or parts left out, as nobody knows when they were last done */
	char *title; /* "BEFORE LAUNCH, 15 Apr 2027" */
	gint64 today;
};
/* For the coming opportunity and what is past due; with ask->until, all by then.  NULL and *err. */
struct wants *book_wants(struct book *b, const struct boat *boat, const struct due_ask *ask, GError **err);
void wants_free(struct wants *w); /* NULL will do */
const struct want_line *wants_line(const struct wants *w, guint i); /* NULL past the last */
const struct want_loose *wants_loose(const struct wants *w, guint i);

/* "order by 12 Mar 2027", "order now: it was to be ordered by ...", "how long it takes is not known"; the caller's. */
char *want_order_words(const struct wants *w, const struct want_line *l);

/* For other programs; the caller's. */
char *wants_csv(const struct wants *w);
char *wants_json(const struct wants *w, const char *boat);

#endif
