/* A record into the parameters of an ADD_ or PUT_ statement, and what SQLite's refusal of it means. */
#ifndef STORE_BIND_H
#define STORE_BIND_H

#include "model/record.h"
#include "store/inside.h"

/* The table's accessors want a record that may be written; here it is only read. */
static inline void *
readable(const void *record)
{
	return (void *)(guintptr)record;
}

/* Nothing was recorded there, so that NULL is stored. */
gboolean field_unknown(const struct field *f, const void *record);

/* Run c, an ADD_ or PUT_ statement, for this record.  Errors as row_put. */
gboolean run_record(struct cells *c, enum record r, const void *record, GError **err);

/* Those statements. */
enum sql_id sql_add(enum record r);
enum sql_id sql_get(enum record r);

/* One row's insertion in SQLite's changeset format, from the end of which it returns; at most change_most bytes. */
gsize change_most(enum record r, const void *record);
guint8 *change_insert(guint8 *at, enum record r, const void *record);
/* The table's head, which stands before its rows; at most CHANGE_HEAD bytes. */
#define CHANGE_HEAD 128
guint8 *change_head(guint8 *at, enum record r);

#endif
