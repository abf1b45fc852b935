#include "store/rows.h"

#include "base/err.h"
#include "store/bind.h"
#include "store/indexes.h"
#include "store/inside.h"
#include "store/spool.h"

/* From so many rows on it is quicker to make the indexes of an empty table at the end. */
#define MANY 20000

struct bulk {
	struct db *db;
	enum record record;
	struct cells *add;
	GPtrArray *indexes;	/* texts of those to be made at the end; NULL: they are kept up */
	gboolean unlinked;	/* references are checked at the end, not row by row */
};

static gboolean
table_empty(struct db *db, enum record r)
{
	struct cells *c = cells_open(db, sql_walk(r));
	gboolean empty = !cells_next(c);

	return cells_close(c, NULL) && empty;
}

/* SQLite drops no index while any statement is reading. */
static gboolean
nobody_reads(struct db *db)
{
	sqlite3_stmt *stmt = NULL;

	while ((stmt = sqlite3_next_stmt(db->conn, stmt)))
		if (sqlite3_stmt_busy(stmt))
			return FALSE;
	return TRUE;
}

/* Inside a transaction the pragma would do nothing.  This does, and is safe as long as no reference is DEFERRABLE: there
 * is no count of open ones that it could upset. */
static void
enforce_references(struct db *db, int on)
{
	sqlite3_db_config(db->conn, SQLITE_DBCONFIG_ENABLE_FKEY, on, NULL);
}

/* SQLite opens and searches each table that a row refers to anew for every row, which costs more than the row itself.
 * One pass over the table at the end finds the same. */
static gboolean
check_references(struct bulk *b, GError **err)
{
	const char *name = record_type(b->record)->name;
	struct cells *c;
	gboolean good = TRUE;

	if (!b->unlinked)
		return TRUE;
	enforce_references(b->db, 1);
	b->unlinked = FALSE;
	c = cells_open(b->db, SQL_FOREIGN_KEY_CHECK_OF);
	cells_bind_text(c, 1, name);
	if (cells_next(c))
		good = err_set(err, ERR_NOT_FOUND, "the %s of this %s is not in the logbook", cells_text(c, 0), name);
	return cells_close(c, good ? err : NULL) && good;
}

/* Sorting takes as much memory as the cache may: give that back first. */
static gboolean
make_indexes(struct bulk *b, GError **err)
{
	return !b->indexes || (db_exec(b->db, SQL_CACHE_USUAL, err) && indexes_make(b->db, b->indexes, err));
}

static void
bulk_free(struct bulk *b)
{
	if (b->add)
		cells_close(b->add, NULL);
	if (b->indexes)
		g_ptr_array_free(b->indexes, TRUE);
	if (b->unlinked)
		enforce_references(b->db, 1);
	if (!--b->db->bulks)
		db_exec(b->db, SQL_CACHE_USUAL, NULL);
	g_free(b);
}

struct bulk *
bulk_open(struct db *db, enum record r, gint64 expected, GError **err)
{
	struct bulk *b = g_new0(struct bulk, 1);

	g_assert(db->writing);
	b->db = db;
	b->record = r;
	if (!db->bulks++)
		db_exec(db, SQL_CACHE_BULK, NULL);
	if (!db->spool)
		db->spool = db_spool(db);
	if (expected >= MANY && db->bulks == 1 && table_empty(db, r) && nobody_reads(db)) {
		b->indexes = indexes_drop(db, record_type(r)->name, err);
		if (!b->indexes) {
			bulk_free(b);
			return NULL;
		}
		b->unlinked = TRUE;
		enforce_references(db, 0);
	}
	b->add = cells_open(db, sql_add(r));
	return b;
}

static void
spool_head(struct bulk *b)
{
	struct db *db = b->db;
	guint8 *at;

	if ((db->spooled >> b->record & 1) && db->spool_table == (int)b->record)
		return;
	at = spool_room(db->spool, CHANGE_HEAD);
	spool_took(db->spool, (gsize)(change_head(at, b->record) - at));
	G_STATIC_ASSERT(RECORD_COUNT <= 64);
	db->spooled |= G_GUINT64_CONSTANT(1) << b->record;
	db->spool_table = (int)b->record;
}

static void
spool_row(struct bulk *b, const void *record)
{
	struct spool *s = b->db->spool;
	gsize most = change_most(b->record, record);
	guint8 *at;

	spool_head(b);
	if (most <= SPOOL_MEMORY) {
		at = spool_room(s, most);
		spool_took(s, (gsize)(change_insert(at, b->record, record) - at));
	} else {
		g_autofree guint8 *large = g_malloc(most);

		spool_output(s, large, (int)(change_insert(large, b->record, record) - large));
	}
}

gboolean
bulk_put(struct bulk *b, const void *record, GError **err)
{
	gboolean ok;

	/* The session would keep every row in memory. */
	sqlite3session_enable(b->db->session, 0);
	ok = run_record(b->add, b->record, record, err);
	sqlite3session_enable(b->db->session, 1);
	if (!ok)
		return FALSE;
	spool_row(b, record);
	return spool_good(b->db->spool, err);
}

gboolean
bulk_close(struct bulk *b, GError **err)
{
	gboolean ok = cells_close(b->add, err);

	b->add = NULL;
	ok = ok && check_references(b, err) && make_indexes(b, err);
	bulk_free(b);
	return ok;
}
