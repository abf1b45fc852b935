/* A changeset put on a logbook, whole or not at all. */
#ifndef STORE_APPLY_H
#define STORE_APPLY_H

#include "model/record.h"
#include "store/inside.h"

/* input and context as SQLite's streaming functions want them.  Only the tables of records are touched, whatever the
 * changeset names.  ERR_CONFLICT, naming the first row that is not as the changeset expects. */
gboolean apply_changes(struct db *db, int (*input)(void *, void *, int *), void *context, GError **err);

/* The record whose table has that name; RECORD_COUNT when there is none. */
enum record record_of_table(const char *table);

#endif
