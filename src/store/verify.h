/* Is a logbook what was written into it? */
#ifndef STORE_VERIFY_H
#define STORE_VERIFY_H

#include "store/db.h"

struct verify_watch {
	void (*problem)(void *context, const char *sentence);	/* may be NULL */
	/* what is being looked at, and how far of how much; may be NULL */
	void (*progress)(void *context, const char *what, gint64 done, gint64 all);
	void *context;
};

/* Looks for damage by SQLite's own check, at the references between rows, at the chain of hashes from entry to
 * entry, and plays the whole journal into an empty scratch database to compare every row: each difference is
 * named, with what the file says and what the journal says.  Memory does not grow with the file.
 * TRUE when all that could be looked at was, with the number of problems; FALSE when it could not be done. */
gboolean verify(struct db *db, const struct verify_watch *watch, gint64 *problems, GError **err);

#endif
