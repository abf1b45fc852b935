#include "store/db.h"

#include "base/err.h"
#include "store/cells.h"
#include "store/entry.h"
#include "store/inside.h"
#include "store/spool.h"

gboolean
db_hold(struct db *db, GError **err)
{
	return db_exec(db, SQL_BEGIN_READ, err);
}

void
db_release(struct db *db)
{
	if (!db->writing && !sqlite3_get_autocommit(db->conn))
		db_exec(db, SQL_ROLLBACK, NULL);
}

gboolean
db_begin_bare(struct db *db, GError **err)
{
	g_assert(!db->writing);
	if (db->mode == DB_READ)
		return err_set(err, ERR_STORE, "%s is open for reading only", db->name);
	if (db->dead)
		return err_set(err, ERR_STORE, "%s could not be written to the disk before: open it again first",
			       db->name);
	if (!db_check_home(db, err) || !db_exec(db, SQL_BEGIN_WRITE, err))
		return FALSE;
	db->writing = TRUE;
	return TRUE;
}

/* Tables are named one by one: the journal itself must not be recorded. */
static int
record_changes(struct db *db)
{
	int rc = sqlite3session_create(db->conn, "main", &db->session);

	for (int r = 0; rc == SQLITE_OK && r < RECORD_COUNT; r++)
		rc = sqlite3session_attach(db->session, record_type((enum record)r)->name);
	return rc;
}

gboolean
db_begin(struct db *db, GError **err)
{
	int rc;

	if (!db_begin_bare(db, err))
		return FALSE;
	rc = record_changes(db);
	if (rc == SQLITE_OK)
		return TRUE;
	db_fail(db, rc, err);
	db_rollback(db);
	return FALSE;
}

static void
forget_changes(struct db *db)
{
	g_clear_pointer(&db->session, sqlite3session_delete);
	g_clear_pointer(&db->spool, spool_free);
	db->spooled = 0;
	db->spool_table = RECORD_COUNT;
	db->next_key = 0;
}

void
db_rollback(struct db *db)
{
	forget_changes(db);
	if (!sqlite3_get_autocommit(db->conn))
		sqlite3_exec(db->conn, sql_text[SQL_ROLLBACK], NULL, NULL, NULL);
	db->writing = FALSE;
}

gboolean
db_commit_bare(struct db *db, GError **err)
{
	int rc;

	/* A failed write has rolled back; a COMMIT would then say no more than that there is no transaction. */
	if (sqlite3_get_autocommit(db->conn))
		return err_set(err, ERR_STORE, "a write to %s failed: nothing was saved", db->name);
	rc = sqlite3_exec(db->conn, sql_text[SQL_COMMIT], NULL, NULL, NULL);
	if (rc != SQLITE_OK)
		return db_fail(db, rc, err);
	db->writing = FALSE;
	return TRUE;
}

/* Does it alter or remove a row that a bulk import may have added in this same command? */
static gboolean
overlaps(const struct db *db, int n, void *changes)
{
	sqlite3_changeset_iter *i;
	gboolean found = FALSE;

	if (sqlite3changeset_start(&i, n, changes) != SQLITE_OK)
		return TRUE;
	while (!found && sqlite3changeset_next(i) == SQLITE_ROW) {
		const char *table;
		int columns, op, indirect;

		sqlite3changeset_op(i, &table, &columns, &op, &indirect);
		for (int r = 0; r < RECORD_COUNT && op != SQLITE_INSERT; r++)
			found |= (db->spooled >> r & 1) && !g_strcmp0(table, record_type((enum record)r)->name);
	}
	sqlite3changeset_finalize(i);
	return found;
}

struct spool *
db_spool(const struct db *db)
{
	g_autofree char *folder = g_path_get_dirname(sqlite3_db_filename(db->conn, "main"));

	return spool_new(folder);
}

/* Each row may stand in a changeset only once, else its inverse would not fit. */
static int
merge_changes(struct db *db, int n, void *changes)
{
	struct spool *merged = db_spool(db);
	sqlite3_changegroup *group = NULL;
	int rc = sqlite3changegroup_new(&group);

	spool_rewind(db->spool);
	if (rc == SQLITE_OK)
		rc = sqlite3changegroup_add_strm(group, spool_input, db->spool);
	if (rc == SQLITE_OK)
		rc = sqlite3changegroup_add(group, n, changes);
	if (rc == SQLITE_OK)
		rc = sqlite3changegroup_output_strm(group, spool_output, merged);
	sqlite3changegroup_delete(group);
	spool_free(db->spool);
	db->spool = merged;
	return rc;
}

/* All changes of the command into db->spool. */
static int
gather_changes(struct db *db)
{
	void *changes = NULL;
	int n = 0, rc = sqlite3session_changeset(db->session, &n, &changes);

	g_clear_pointer(&db->session, sqlite3session_delete);
	if (!db->spool)
		db->spool = db_spool(db);
	if (rc == SQLITE_OK && n) {
		if (db->spooled && overlaps(db, n, changes))
			rc = merge_changes(db, n, changes);
		else
			rc = spool_output(db->spool, changes, n);
	}
	sqlite3_free(changes);
	return rc;
}

static gboolean
gather(struct db *db, GError **err)
{
	int rc = gather_changes(db);

	return spool_good(db->spool, err) && (rc == SQLITE_OK || db_fail(db, rc, err));
}

static gboolean
write_entry(struct db *db, const struct entry_head *head, GError **err)
{
	struct entry e = { .at = head->at, .undoes = NONE, .redoes = NONE };
	gboolean ok;

	e.who = g_strdup(head->who ? head->who : "");
	e.device = g_strdup(head->device ? head->device : "");
	e.what = g_strdup(head->what ? head->what : "");
	ok = entry_append(db, &e, db->spool, err);
	entry_clear(&e);
	return ok;
}

gboolean
db_commit(struct db *db, const struct entry_head *head, gboolean *changed, GError **err)
{
	gboolean any, ok;

	g_assert(db->writing && !db->bulks);
	if (changed)
		*changed = FALSE;
	if (sqlite3_get_autocommit(db->conn)) {
		db_rollback(db);
		return err_set(err, ERR_STORE, "a write to %s failed: nothing was saved", db->name);
	}
	ok = gather(db, err);
	any = ok && spool_size(db->spool) > 0;
	if (any)
		ok = write_entry(db, head, err) && db_commit_bare(db, err);
	if (changed)
		*changed = any && ok;
	db_rollback(db);
	return ok;
}
