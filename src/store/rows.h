/* Records in and out of the file, all kinds alike. */
#ifndef STORE_ROWS_H
#define STORE_ROWS_H

#include "store/cells.h"

/* The statements of records.sql and lists.sql for a kind of record. */
enum sql_id sql_all(enum record r);	/* in people's order */
enum sql_id sql_walk(enum record r);	/* by key: quickest */
enum sql_id sql_of_boat(enum record r);	/* parameter 1: boat; SQL_COUNT for what hangs on none: rates, places */

/* Insert, or update the row with that key.  Between db_begin and db_commit.  ERR_INPUT when a required field is
 * unknown, ERR_NOT_FOUND when it refers to what is not there, ERR_CONFLICT when another has its name. */
gboolean row_put(struct db *db, enum record r, const void *record, GError **err);
/* record was initialised: what it held is freed.  ERR_NOT_FOUND when there is no such row. */
gboolean row_get(struct db *db, enum record r, gint64 id, void *record, GError **err);
/* ERR_CONFLICT, saying what, while something refers to the row; ERR_NOT_FOUND when it is not there. */
gboolean row_drop(struct db *db, enum record r, gint64 id, GError **err);

/* A key for a new row of the command under way: 24 bits of the journal entry to be written, so that keys follow the
 * order of entry and rows are appended; then 39 bits from a random start, so that two copies of a logbook never
 * meet. */
gint64 row_new_key(struct db *db);

/* Many new rows of one kind within a command.  Their changes go to the journal without passing through memory, and
 * cost about what the rows themselves do.  expected: about how many rows, 0 when not known; for many rows into an
 * empty table the indexes are made, and references checked, at the end, and rows of that kind alone may be put until
 * then.  Close before db_commit; after a failure close, then db_rollback. */
struct bulk;
struct bulk *bulk_open(struct db *db, enum record r, gint64 expected, GError **err);
/* Errors as row_put; a key twice is an ERR_CONFLICT. */
gboolean bulk_put(struct bulk *b, const void *record, GError **err);
gboolean bulk_close(struct bulk *b, GError **err);

#endif
