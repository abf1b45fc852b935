/* Is a changeset well formed?  SQLite's own reader may loop for ever or read astray on one that is not (seen with
 * 3.40.1), so that nothing of a file reaches it before it was looked through here. */
#ifndef STORE_SHAPE_H
#define STORE_SHAPE_H

#include "model/record.h"

enum shape_state {
	SHAPE_START,	/* 'T', or the operation of a row */
	SHAPE_COLUMNS,	/* number of columns */
	SHAPE_KEYS,	/* a byte for each column */
	SHAPE_NAME,	/* of the table, to the zero */
	SHAPE_INDIRECT,
	SHAPE_TYPE,	/* of a value */
	SHAPE_LENGTH,	/* of a text or blob */
	SHAPE_SKIP,	/* bytes of a value */
	SHAPE_BAD
};

/* All zero at first. */
struct shape {
	enum shape_state state;
	guint8 type, op;
	gboolean second;	/* the new values of an update */
	int columns, column;
	char name[24];	/* of the table so far */
	int named;
	gboolean table;	/* a whole head was seen */
	guint64 length;
	gsize skip;
};

/* The next bytes. */
void shape_feed(struct shape *s, const guint8 *bytes, gsize n);
/* Everything so far was well formed and is complete: only tables of records, keys alone as keys, each row whole. */
gboolean shape_good(const struct shape *s);

#endif
