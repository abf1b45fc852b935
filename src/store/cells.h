/* Running a statement of the .sql files and reading its rows: whole records, or cell by cell without a copy.
 *
 *	struct cells *c = cells_open(db, SQL_DUE_RUNS);
 *	cells_bind(c, 1, boat);
 *	cells_bind(c, 2, from);
 *	while (cells_next(c))
 *		... cells_int(c, 0) ...
 *	return cells_close(c, err);
 *
 * An error ends the rows; cells_close reports it. */
#ifndef STORE_CELLS_H
#define STORE_CELLS_H

#include "model/record.h"
#include "model/words.h"
#include "store/db.h"
#include "store/sql.h"

struct cells;

/* Never NULL.  The statement is prepared once for each logbook and may be open more than once at a time. */
struct cells *cells_open(struct db *db, enum sql_id sql);
void cells_bind(struct cells *c, int parameter, gint64 value);	/* NONE is NULL */
void cells_bind_text(struct cells *c, int parameter, const char *text);	/* copied; NULL is NULL */
gboolean cells_next(struct cells *c);
/* FALSE and *err when anything went wrong since cells_open. */
gboolean cells_close(struct cells *c, GError **err);

/* Columns count from 0. */
gint64 cells_int(struct cells *c, int column);	/* NONE for NULL */
double cells_real(struct cells *c, int column);	/* NAN for NULL */
/* NONE for NULL; a word that is none of w's ends the rows. */
gint64 cells_word(struct cells *c, int column, const struct words *w);
const char *cells_text(struct cells *c, int column);	/* borrowed until the next row; NULL for NULL */
const char *cells_bytes(struct cells *c, int column, int *length);	/* the same without an end mark; quicker */

/* The columns from 0 as a record of that type, which was initialised: what it held is freed.  FALSE when a word is
 * strange; cells_close then says where. */
gboolean cells_record(struct cells *c, enum record r, void *record);
/* cells_next and cells_record. */
gboolean cells_next_record(struct cells *c, enum record r, void *record);

#endif
