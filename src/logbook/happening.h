/* What a happening asks for, whether that was done since, and closing it. */
#ifndef LOGBOOK_HAPPENING_H
#define LOGBOOK_HAPPENING_H

#include "logbook/due.h"

/* Words of the cautions for what comes after it: looking at it, and the work that it asks for; NULL: none is known. */
const char *happening_cautions(gint64 kind);

/* Whether a task asks for itself after such a thing. */
gboolean happening_asks(const struct due_line *l, gint64 kind);
/* A task done after the first run that follows such a thing, and no sooner: its other limit is of first hours. */
gboolean happening_is_recheck(const struct due_line *l);
/* How many tasks such a thing on that day makes due: those that were not done after it. */
int happening_count(const struct due_list *l, gint64 kind, gint64 date);
/* The newest of an array of struct skip (by day) that passes a task over for what happened on a day; NULL: none does. */
const struct skip *happening_skip(const GArray *skips, gint64 task, gint64 date);
/* A boat's skips in the order of their days: an array that clears itself. */
GArray *book_skips(struct book *b, gint64 boat, GError **err);

/* Close the open happenings of a kind; *closed counts them.  ERR_CONFLICT, naming them, while tasks are left that were neither
 * done since nor passed over. */
gboolean book_close_happening(struct book *b, const struct boat *boat, gint64 kind, gint64 date, int *closed, GError **err);
/* Pass a task over that an open happening of that kind asks for: the happening can be closed without it, the launch check
 * still tells of it.  reason: not blank. */
gboolean book_skip_for_happening(struct book *b, const struct boat *boat, gint64 kind, const char *task, const char *reason,
				 GError **err);

#endif
