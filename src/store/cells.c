#include "store/cells.h"

#include "base/err.h"
#include "store/inside.h"

#include <math.h>
#include <string.h>

static struct cells *
cells_new(struct db *db, enum sql_id sql, gboolean kept)
{
	struct cells *c = g_new0(struct cells, 1);
	int rc = sqlite3_prepare_v3(db->conn, sql_text[sql], -1, SQLITE_PREPARE_PERSISTENT, &c->stmt, NULL);

	c->db = db;
	c->kept = kept;
	if (rc != SQLITE_OK)
		db_fail(db, rc, &c->err);
	return c;
}

static void
cells_free(struct cells *c)
{
	sqlite3_finalize(c->stmt);
	g_clear_error(&c->err);
	g_free(c);
}

struct cells *
cells_open(struct db *db, enum sql_id sql)
{
	struct cells *c = db->kept[sql];

	if (!c || c->open) {
		c = cells_new(db, sql, !c);
		if (c->kept && c->stmt)
			db->kept[sql] = c;
		else
			c->kept = FALSE;
	}
	c->open = TRUE;
	return c;
}

void
cells_forget(struct db *db)
{
	for (int i = 0; i < SQL_COUNT; i++)
		if (db->kept[i]) {
			g_assert(!db->kept[i]->open);
			cells_free(db->kept[i]);
			db->kept[i] = NULL;
		}
}

void
cells_bind(struct cells *c, int parameter, gint64 value)
{
	if (value == NONE)
		sqlite3_bind_null(c->stmt, parameter);
	else
		sqlite3_bind_int64(c->stmt, parameter, value);
}

void
cells_bind_text(struct cells *c, int parameter, const char *text)
{
	sqlite3_bind_text(c->stmt, parameter, text, -1, SQLITE_TRANSIENT);
}

gboolean
cells_next(struct cells *c)
{
	int rc;

	if (c->err)
		return FALSE;
	rc = sqlite3_step(c->stmt);
	if (rc == SQLITE_ROW)
		return TRUE;
	if (rc != SQLITE_DONE)
		db_fail(c->db, rc, &c->err);
	return FALSE;
}

gboolean
cells_close(struct cells *c, GError **err)
{
	gboolean ok = !c->err;

	if (c->err) {
		g_propagate_error(err, c->err);
		c->err = NULL;
	}
	c->open = FALSE;
	if (c->stmt) {
		sqlite3_reset(c->stmt);
		sqlite3_clear_bindings(c->stmt);
	}
	if (!c->kept)
		cells_free(c);
	return ok;
}

gint64
cells_int(struct cells *c, int column)
{
	gint64 value = sqlite3_column_int64(c->stmt, column); /* NULL reads as 0 */

	return value || sqlite3_column_type(c->stmt, column) != SQLITE_NULL ? value : NONE;
}

double
cells_real(struct cells *c, int column)
{
	return sqlite3_column_type(c->stmt, column) == SQLITE_NULL ? (double)NAN
		: sqlite3_column_double(c->stmt, column);
}

const char *
cells_text(struct cells *c, int column)
{
	return (const char *)sqlite3_column_text(c->stmt, column);
}

const char *
cells_bytes(struct cells *c, int column, int *length)
{
	const char *bytes = sqlite3_column_blob(c->stmt, column); /* NULL reads as nothing, as an empty text does */

	*length = bytes ? sqlite3_column_bytes(c->stmt, column) : 0;
	return bytes || sqlite3_column_type(c->stmt, column) == SQLITE_NULL ? bytes : "";
}

gint64
cells_word(struct cells *c, int column, const struct words *w)
{
	int n;
	const char *bytes = cells_bytes(c, column, &n);

	if (!bytes)
		return NONE;
	for (int i = 0; i < w->n; i++)
		if (w->word[i][0] == *bytes && !strncmp(w->word[i], bytes, (size_t)n) && !w->word[i][n])
			return i;
	if (!c->err)
		err_set(&c->err, ERR_STORE, "%s: \"%.*s\" stands where a %s should, which this splitpin does not know",
			c->db->name, MIN(n, 40), bytes, w->what);
	return NONE;
}

static char *
cell_copy(struct cells *c, int column)
{
	int n;
	const char *bytes = cells_bytes(c, column, &n);
	char *copy;

	if (!bytes)
		return NULL;
	copy = g_malloc((gsize)n + 1);
	memcpy(copy, bytes, (gsize)n);
	copy[n] = '\0';
	return copy;
}

static void
cell_read(struct cells *c, int column, const struct field *f, void *record)
{
	switch (f->kind) {
	case FIELD_TEXT:
		*field_text(f, record) = cell_copy(c, column);
		break;
	case FIELD_REAL:
		*field_real(f, record) = cells_real(c, column);
		break;
	case FIELD_WORD:
		*field_int(f, record) = cells_word(c, column, f->words);
		break;
	case FIELD_KEY:
	case FIELD_REF:
	case FIELD_DATE:
	case FIELD_YEARDAY:
	case FIELD_HOURS:
	case FIELD_COUNT:
	case FIELD_CENTS:
	case FIELD_YES:
		*field_int(f, record) = cells_int(c, column);
		break;
	}
}

gboolean
cells_record(struct cells *c, enum record r, void *record)
{
	const struct record_type *t = record_type(r);

	g_assert(sqlite3_column_count(c->stmt) >= t->n_fields);
	record_clear(r, record);
	for (int i = 0; i < t->n_fields; i++)
		/* What may be NULL mostly is: its type alone tells. */
		if (t->field[i].required || sqlite3_column_type(c->stmt, i) != SQLITE_NULL)
			cell_read(c, i, &t->field[i], record);
	return !c->err;
}

gboolean
cells_next_record(struct cells *c, enum record r, void *record)
{
	return cells_next(c) && cells_record(c, r, record);
}
