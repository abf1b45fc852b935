/* The plan: which tasks a boat has, how often, and on whose word. */
#ifndef LOGBOOK_PLAN_H
#define LOGBOOK_PLAN_H

#include "logbook/book.h"

/* An interval as typed: "100 h", "12 months", "5 years", "3 outings", "2 seasons".  Fills kind and amount or hours. */
gboolean limit_parse(const char *text, struct limit *m, GError **err);

/* The same, or the two figures that a source prints, elsewhere and in salt water: "12 months/6 months". */
gboolean interval_parse(const char *text, struct limit *m, GError **err);

/* A task's limits as they stand: an array of struct limit that clears itself. */
GArray *book_limits(struct book *b, gint64 task, GError **err);
/* Limits of a task: those of the same kind (and event or happening) are replaced, others stay.  Each wants a source. */
gboolean book_set_limits(struct book *b, const struct task *t, struct limit *m, int n, GError **err);
/* Take away the limits of a kind. */
gboolean book_drop_limits(struct book *b, const struct task *t, gint64 kind, GError **err);
/* A task of the owner's own; t->id and the limits' are filled in. */
gboolean book_add_task(struct book *b, struct task *t, struct limit *m, int n, GError **err);
gboolean book_retire_task(struct book *b, struct task *t, gboolean retired, GError **err);

#endif
