#include "store/entry.h"

#include "base/err.h"
#include "store/shape.h"

#include <string.h>

enum { PIECE = 1 << 18, PARAM_CHANGESET = 11 };

void
entry_clear(struct entry *e)
{
	g_clear_pointer(&e->who, g_free);
	g_clear_pointer(&e->device, g_free);
	g_clear_pointer(&e->what, g_free);
}

static gboolean
read_hash(struct cells *c, int column, guint8 to[SUM_BYTES])
{
	int n;
	const char *bytes = cells_bytes(c, column, &n);

	memset(to, 0, SUM_BYTES);
	if (!bytes || n != SUM_BYTES)
		return FALSE;
	memcpy(to, bytes, SUM_BYTES);
	return TRUE;
}

gboolean
entry_read(struct cells *c, struct entry *e)
{
	entry_clear(e);
	e->seq = cells_int(c, 0);
	e->at = cells_int(c, 1);
	e->who = g_strdup(cells_text(c, 2));
	e->device = g_strdup(cells_text(c, 3));
	e->what = g_strdup(cells_text(c, 4));
	e->schema = cells_int(c, 5);
	e->undoes = cells_int(c, 6);
	e->redoes = cells_int(c, 7);
	e->size = cells_int(c, 10);
	e->undone_by = NONE;
	return read_hash(c, 8, e->previous) & read_hash(c, 9, e->hash);
}

gboolean
entry_get(struct db *db, gint64 seq, struct entry *e, GError **err)
{
	struct cells *c = cells_open(db, SQL_ENTRY);
	gboolean found;

	cells_bind(c, 1, seq);
	found = cells_next(c);
	if (found)
		entry_read(c, e);
	if (!cells_close(c, err))
		return FALSE;
	return found || err_set(err, ERR_NOT_FOUND, "the journal has no entry %" G_GINT64_FORMAT, seq);
}

static void
hash_int(GChecksum *sum, gint64 value)
{
	guint64 big = GUINT64_TO_BE((guint64)value);

	g_checksum_update(sum, (const guchar *)&big, sizeof big);
}

static void
hash_text(GChecksum *sum, const char *text)
{
	gsize n = text ? strlen(text) : 0;

	hash_int(sum, (gint64)n);
	g_checksum_update(sum, (const guchar *)(text ? text : ""), (gssize)n);
}

void
entry_hash(const struct entry *e, const guint8 sum[SUM_BYTES], guint8 hash[SUM_BYTES])
{
	g_autoptr(GChecksum) all = g_checksum_new(G_CHECKSUM_SHA256);
	gsize n = SUM_BYTES;

	g_checksum_update(all, e->previous, SUM_BYTES);
	hash_int(all, e->seq);
	hash_int(all, e->at);
	hash_int(all, e->schema);
	hash_int(all, e->undoes);
	hash_int(all, e->redoes);
	hash_text(all, e->who);
	hash_text(all, e->device);
	hash_text(all, e->what);
	hash_int(all, e->size);
	g_checksum_update(all, sum, SUM_BYTES);
	g_checksum_get_digest(all, hash, &n);
}

gboolean
entry_damaged(const struct entry *e, GError **err)
{
	return err_set(err, ERR_STORE, "entry %" G_GINT64_FORMAT " (%s) is damaged: see what `splitpin verify` finds",
		       e->seq, e->what ? e->what : "");
}

static gboolean
follow_last(struct db *db, struct entry *e, GError **err)
{
	struct cells *c = cells_open(db, SQL_LAST_ENTRY);
	gboolean good = TRUE;

	e->seq = 1;
	memset(e->previous, 0, SUM_BYTES);
	if (cells_next(c)) {
		e->seq = cells_int(c, 0) + 1;
		good = read_hash(c, 1, e->previous);
	}
	if (!cells_close(c, err))
		return FALSE;
	return good || err_set(err, ERR_STORE, "the last entry of %s is damaged: see what `splitpin verify` finds",
			       db->name);
}

static void
bind_int_or_null(sqlite3_stmt *stmt, int parameter, gint64 value)
{
	if (value == NONE)
		sqlite3_bind_null(stmt, parameter);
	else
		sqlite3_bind_int64(stmt, parameter, value);
}

static int
insert_row(struct db *db, const struct entry *e, const void *changeset)
{
	sqlite3_stmt *stmt;
	int rc = sqlite3_prepare_v2(db->conn, sql_text[SQL_ADD_ENTRY], -1, &stmt, NULL);

	if (rc != SQLITE_OK)
		return rc;
	sqlite3_bind_int64(stmt, 1, e->seq);
	sqlite3_bind_int64(stmt, 2, e->at);
	sqlite3_bind_text(stmt, 3, e->who, -1, SQLITE_STATIC);
	sqlite3_bind_text(stmt, 4, e->device, -1, SQLITE_STATIC);
	sqlite3_bind_text(stmt, 5, e->what, -1, SQLITE_STATIC);
	sqlite3_bind_int64(stmt, 6, e->schema);
	bind_int_or_null(stmt, 7, e->undoes);
	bind_int_or_null(stmt, 8, e->redoes);
	sqlite3_bind_blob(stmt, 9, e->previous, SUM_BYTES, SQLITE_STATIC);
	sqlite3_bind_blob(stmt, 10, e->hash, SUM_BYTES, SQLITE_STATIC);
	if (changeset)
		sqlite3_bind_blob(stmt, PARAM_CHANGESET, changeset, (int)e->size, SQLITE_STATIC);
	else
		sqlite3_bind_zeroblob(stmt, PARAM_CHANGESET, (int)e->size);
	sqlite3_step(stmt);
	return sqlite3_finalize(stmt);
}

/* Row first, bytes after, so that a large import is never in memory as a whole. */
static int
insert_in_pieces(struct db *db, const struct entry *e, struct spool *s)
{
	g_autofree guint8 *piece = g_malloc(PIECE);
	sqlite3_blob *blob = NULL;
	gssize n = 0;
	int rc = insert_row(db, e, NULL);

	if (rc == SQLITE_OK)
		rc = sqlite3_blob_open(db->conn, "main", "entry", "changeset", e->seq, 1, &blob);
	spool_rewind(s);
	for (int at = 0; rc == SQLITE_OK && at < e->size; at += (int)n) {
		n = spool_read(s, piece, PIECE);
		rc = n > 0 ? sqlite3_blob_write(blob, piece, (int)n, at) : SQLITE_IOERR_READ;
	}
	sqlite3_blob_close(blob);
	return rc;
}

static int
insert_at_once(struct db *db, const struct entry *e, struct spool *s)
{
	g_autofree guint8 *all = g_malloc((gsize)e->size + 1);

	spool_rewind(s);
	for (gint64 at = 0; at < e->size;) {
		gssize n = spool_read(s, all + at, (gsize)(e->size - at));

		if (n <= 0)
			return SQLITE_IOERR_READ;
		at += n;
	}
	return insert_row(db, e, all);
}

gboolean
entry_append(struct db *db, struct entry *e, struct spool *s, GError **err)
{
	guint8 sum[SUM_BYTES];
	int rc;

	if (!spool_good(s, err) || !follow_last(db, e, err))
		return FALSE;
	e->schema = db->schema;
	e->size = spool_size(s);
	spool_sum(s, sum);
	entry_hash(e, sum, e->hash);
	rc = e->size > SPOOL_MEMORY ? insert_in_pieces(db, e, s) : insert_at_once(db, e, s);
	return rc == SQLITE_OK || db_fail(db, rc, err);
}

gboolean
changes_open(struct db *db, gint64 seq, struct changes_in *in, GError **err)
{
	int rc = sqlite3_blob_open(db->conn, "main", "entry", "changeset", seq, 0, &in->blob);

	in->at = 0;
	in->size = rc == SQLITE_OK ? sqlite3_blob_bytes(in->blob) : 0;
	return rc == SQLITE_OK || db_fail(db, rc, err);
}

void
changes_rewind(struct changes_in *in)
{
	in->at = 0;
}

void
changes_close(struct changes_in *in)
{
	sqlite3_blob_close(in->blob);
	in->blob = NULL;
}

int
changes_input(void *context, void *to, int *n)
{
	struct changes_in *in = context;
	int part = MIN(*n, in->size - in->at);
	int rc = part > 0 ? sqlite3_blob_read(in->blob, to, part, in->at) : SQLITE_OK;

	*n = part;
	in->at += part;
	return rc;
}

gboolean
changes_sum(struct db *db, struct changes_in *in, guint8 sum[SUM_BYTES], gboolean *good, GError **err)
{
	struct shape shape = { 0 };
	g_autoptr(GChecksum) all = g_checksum_new(G_CHECKSUM_SHA256);
	g_autofree guint8 *piece = g_malloc(PIECE);
	gsize length = SUM_BYTES;
	int n, rc;

	changes_rewind(in);
	do {
		n = PIECE;
		rc = changes_input(in, piece, &n);
		if (rc != SQLITE_OK)
			break;
		g_checksum_update(all, piece, n);
		shape_feed(&shape, piece, (gsize)n);
	} while (n > 0);
	g_checksum_get_digest(all, sum, &length);
	*good = shape_good(&shape);
	changes_rewind(in);
	return rc == SQLITE_OK || db_fail(db, rc, err);
}
