/* The one path to the schema: steps that are only ever added to. */
#ifndef STORE_MIGRATE_H
#define STORE_MIGRATE_H

#include "store/inside.h"

struct migrations {
	int n;
	const char *(*sql)(int i);	/* step i makes schema i + 1 and sets user_version itself */
};

const struct migrations *migrations_ours(void);

/* One step in the transaction that is open, or none. */
gboolean migrate_step(struct db *db, const struct migrations *m, int i, GError **err);

/* From db->schema to the last.  Each step is a transaction of its own, with references checked before it ends;
 * before the first one that changes an existing logbook, a copy is laid beside it ("boat.db.schema-1"). */
gboolean migrate(struct db *db, const struct migrations *m, GError **err);

#endif
