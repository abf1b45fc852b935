#include "store/bind.h"

#include "base/err.h"
#include "store/rows.h"

#include <math.h>
#include <string.h>

gboolean
field_unknown(const struct field *f, const void *record)
{
	if (f->kind == FIELD_TEXT)
		return !*field_text(f, readable(record));
	if (f->kind == FIELD_REAL)
		return isnan(*field_real(f, readable(record)));
	if (f->kind == FIELD_WORD)
		return !*word_of(f->words, *field_int(f, readable(record)));
	return *field_int(f, readable(record)) == NONE;
}

static void
bind_field(sqlite3_stmt *stmt, int parameter, const struct field *f, const void *record)
{
	if (field_unknown(f, record))
		sqlite3_bind_null(stmt, parameter);
	else if (f->kind == FIELD_TEXT)
		sqlite3_bind_text(stmt, parameter, *field_text(f, readable(record)), -1, SQLITE_STATIC);
	else if (f->kind == FIELD_REAL)
		sqlite3_bind_double(stmt, parameter, *field_real(f, readable(record)));
	else if (f->kind == FIELD_WORD)
		sqlite3_bind_text(stmt, parameter, word_of(f->words, *field_int(f, readable(record))), -1,
				  SQLITE_STATIC);
	else
		sqlite3_bind_int64(stmt, parameter, *field_int(f, readable(record)));
}

/* Texts are borrowed until the statement was stepped. */
static gboolean
bind_record(sqlite3_stmt *stmt, enum record r, const void *record, GError **err)
{
	const struct record_type *t = record_type(r);

	for (int i = 0; i < t->n_fields; i++) {
		if (t->field[i].required && field_unknown(&t->field[i], record))
			return err_set(err, ERR_INPUT, "this %s has no %s, which it needs", t->name, t->field[i].name);
		bind_field(stmt, i + 1, &t->field[i], record);
	}
	return TRUE;
}

/* "UNIQUE constraint failed: fitting.boat, fitting.path" -> "boat and path" */
static char *
columns_named(const char *message)
{
	const char *list = strstr(message, ": ");
	g_auto(GStrv) parts = g_strsplit(list ? list + 2 : "", ", ", -1);
	GString *words = g_string_new(NULL);

	for (int i = 0; parts[i]; i++) {
		const char *dot = strchr(parts[i], '.');

		g_string_append_printf(words, "%s%s", i ? " and " : "", dot ? dot + 1 : parts[i]);
	}
	return g_string_free(words, FALSE);
}

static gboolean
row_there(struct db *db, enum record r, gint64 id)
{
	struct cells *c = cells_open(db, sql_get(r));
	gboolean there;

	cells_bind(c, 1, id);
	there = cells_next(c);
	return cells_close(c, NULL) && there;
}

static gboolean
refers_nowhere(struct db *db, enum record r, const void *record, GError **err)
{
	const struct record_type *t = record_type(r);

	for (int i = 0; i < t->n_fields; i++) {
		const struct field *f = &t->field[i];

		if (f->kind == FIELD_REF && !field_unknown(f, record)
		    && !row_there(db, f->ref, *field_int(f, readable(record))))
			return err_set(err, ERR_NOT_FOUND, "the %s of this %s is not in the logbook", f->name, t->name);
	}
	return err_set(err, ERR_NOT_FOUND, "this %s refers to what is not in the logbook", t->name);
}

static gboolean
refused(struct db *db, int rc, enum record r, const void *record, GError **err)
{
	const char *name = record_type(r)->name;
	g_autofree char *columns = NULL;

	switch (rc) {
	case SQLITE_CONSTRAINT_FOREIGNKEY:
		return refers_nowhere(db, r, record, err);
	case SQLITE_CONSTRAINT_UNIQUE:
		columns = columns_named(sqlite3_errmsg(db->conn));
		return err_set(err, ERR_CONFLICT, "another %s has the same %s", name, columns);
	case SQLITE_CONSTRAINT_PRIMARYKEY:
	case SQLITE_CONSTRAINT_ROWID:
		return err_set(err, ERR_CONFLICT, "another %s has the same key", name);
	case SQLITE_CONSTRAINT_CHECK:
		columns = columns_named(sqlite3_errmsg(db->conn));
		return err_set(err, ERR_INPUT, "this %s breaks the rule %s", name, columns);
	default:
		return db_fail(db, rc, err);
	}
}

gboolean
run_record(struct cells *c, enum record r, const void *record, GError **err)
{
	int rc;

	if (c->err)
		return FALSE;
	if (!bind_record(c->stmt, r, record, err))
		return FALSE;
	rc = sqlite3_step(c->stmt);
	sqlite3_reset(c->stmt);
	return rc == SQLITE_DONE || refused(c->db, rc, r, record, err);
}
