/* Rows of the journal: their hash, reading and writing them.
 *
 * hash = SHA-256 over, in this order, integers as 8 bytes, most significant first (NULL: 0x8000000000000000), texts
 * as their length in bytes (an integer) and their UTF-8 bytes:
 *	previous (32 bytes), seq, at, schema, undoes, redoes (integers), who, device, what (texts),
 *	length of the changeset (an integer), SHA-256 of the changeset (32 bytes)
 * previous = hash of the entry before; 32 zero bytes in the first. */
#ifndef STORE_ENTRY_H
#define STORE_ENTRY_H

#include "store/cells.h"
#include "store/inside.h"
#include "store/journal.h"
#include "store/spool.h"

/* The columns of the statements ENTRY and ENTRIES_...; FALSE when a hash has not 32 bytes. */
gboolean entry_read(struct cells *c, struct entry *e);
void entry_clear(struct entry *e);
/* ERR_NOT_FOUND when there is no such entry. */
gboolean entry_get(struct db *db, gint64 seq, struct entry *e, GError **err);

void entry_hash(const struct entry *e, const guint8 sum[SUM_BYTES], guint8 hash[SUM_BYTES]);

/* Fails, with the sentence for an entry that is not what was written. */
gboolean entry_damaged(const struct entry *e, GError **err);

/* Write e with the changeset in s into the transaction that is open; fills seq, schema, previous, size and hash. */
gboolean entry_append(struct db *db, struct entry *e, struct spool *s, GError **err);

/* The changeset of an entry, read piece by piece. */
struct changes_in {
	sqlite3_blob *blob;
	int at, size;
};
gboolean changes_open(struct db *db, gint64 seq, struct changes_in *in, GError **err);
void changes_rewind(struct changes_in *in);
void changes_close(struct changes_in *in);
/* As SQLite's streaming functions want it; context is a struct changes_in. */
int changes_input(void *context, void *to, int *n);
/* SHA-256 of the whole, and whether it is well formed; only then may it be given to SQLite (shape.h). */
gboolean changes_sum(struct db *db, struct changes_in *in, guint8 sum[SUM_BYTES], gboolean *good, GError **err);

#endif
