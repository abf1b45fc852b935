#include "store/journal.h"

#include "base/err.h"
#include "store/apply.h"
#include "store/bind.h"
#include "store/entry.h"

static char *
value_copy(sqlite3_value *v)
{
	const void *bytes = sqlite3_value_blob(v);

	return g_strndup(bytes ? bytes : "", (gsize)sqlite3_value_bytes(v));
}

static void
value_read(sqlite3_value *v, const struct field *f, void *record)
{
	g_autofree char *word = NULL;

	if (sqlite3_value_type(v) == SQLITE_NULL)
		return;
	if (f->kind == FIELD_TEXT) {
		g_free(*field_text(f, record));
		*field_text(f, record) = value_copy(v);
	} else if (f->kind == FIELD_REAL) {
		*field_real(f, record) = sqlite3_value_double(v);
	} else if (f->kind == FIELD_WORD) {
		word = value_copy(v);
		*field_int(f, record) = word_index(f->words, word);
	} else {
		*field_int(f, record) = sqlite3_value_int64(v);
	}
}

struct reading {
	sqlite3_changeset_iter *i;
	struct change change;
	void *before, *after;	/* records */
	int columns;
};

typedef int side(sqlite3_changeset_iter *, int, sqlite3_value **);

/* Fill the record from one side of the row; the bits of the columns that it has. */
static guint64
side_read(struct reading *r, side *get, void *record)
{
	const struct record_type *t = record_type(r->change.record);
	guint64 fields = 0;

	record_init(r->change.record, record);
	for (int i = 0; i < MIN(r->columns, t->n_fields); i++) {
		sqlite3_value *v = NULL;

		if (get(r->i, i, &v) != SQLITE_OK || !v)
			continue;
		value_read(v, &t->field[i], record);
		fields |= (guint64)1 << i;
	}
	return fields;
}

static void
row_read(struct reading *r, int op)
{
	struct change *c = &r->change;
	const struct field *key = &record_type(c->record)->field[0];
	gsize size = record_type(c->record)->size;

	r->before = op == SQLITE_INSERT ? NULL : g_malloc0(size);
	r->after = op == SQLITE_DELETE ? NULL : g_malloc0(size);
	if (r->before)
		c->fields = side_read(r, sqlite3changeset_old, r->before);
	if (r->after)
		c->fields = side_read(r, sqlite3changeset_new, r->after);
	c->id = *field_int(key, r->before ? r->before : r->after);
	if (r->after)
		*field_int(key, r->after) = c->id;
	c->kind = op == SQLITE_INSERT ? CHANGE_ADDED : op == SQLITE_DELETE ? CHANGE_REMOVED : CHANGE_ALTERED;
	c->before = r->before;
	c->after = r->after;
}

static void
row_free(struct reading *r)
{
	if (r->before)
		record_clear(r->change.record, r->before);
	if (r->after)
		record_clear(r->change.record, r->after);
	g_clear_pointer(&r->before, g_free);
	g_clear_pointer(&r->after, g_free);
}

static int
rows_read(struct changes_in *in, void (*each)(void *, const struct change *), void *context)
{
	struct reading r = { 0 };
	int rc = sqlite3changeset_start_strm(&r.i, changes_input, in), ended;

	if (rc != SQLITE_OK)
		return rc;
	while ((rc = sqlite3changeset_next(r.i)) == SQLITE_ROW) {
		const char *table;
		int op, indirect;

		sqlite3changeset_op(r.i, &table, &r.columns, &op, &indirect);
		r.change.record = record_of_table(table);
		if (r.change.record == RECORD_COUNT)
			continue;
		row_read(&r, op);
		each(context, &r.change);
		row_free(&r);
	}
	ended = sqlite3changeset_finalize(r.i);
	return rc == SQLITE_DONE ? ended : rc;
}

gboolean
journal_changes(struct db *db, gint64 seq, void (*each)(void *context, const struct change *), void *context,
		GError **err)
{
	struct entry e = { 0 };
	struct changes_in in = { 0 };
	gboolean good, ok = entry_get(db, seq, &e, err) && changes_open(db, seq, &in, err);
	guint8 sum[SUM_BYTES];

	ok = ok && changes_sum(db, &in, sum, &good, err);
	if (ok && !good)
		ok = entry_damaged(&e, err);
	if (ok) {
		int rc = rows_read(&in, each, context);

		ok = rc == SQLITE_OK || db_fail(db, rc, err);
	}
	changes_close(&in);
	entry_clear(&e);
	return ok;
}
