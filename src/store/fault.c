#include "store/inside.h"

#include "base/err.h"
#include "store/holder.h"

#include <errno.h>

static const char *
unsaved(const struct db *db)
{
	return db->writing ? ": nothing was saved" : "";
}

/* SQLite rolls back by itself after some of these, not all. */
static void
give_up(struct db *db, int rc)
{
	if (rc == SQLITE_IOERR_FSYNC || rc == SQLITE_IOERR_DIR_FSYNC)
		db->dead = TRUE;
	if (!sqlite3_get_autocommit(db->conn))
		sqlite3_exec(db->conn, sql_text[SQL_ROLLBACK], NULL, NULL, NULL);
}

static gboolean
fail_locked(struct db *db, GError **err)
{
	g_autofree char *who = holder_words(db->path);

	return err_set(err, ERR_STORE, "%s is being %s: try again when it is done", db->name, who);
}

/* SQLite's own figure is errno after it had tidied up; that of the file is the failed call's. */
static int
errno_of(struct db *db)
{
	int why = 0;

	sqlite3_file_control(db->conn, "main", SQLITE_FCNTL_LAST_ERRNO, &why);
	return why ? why : sqlite3_system_errno(db->conn);
}

static gboolean
fail_disk(struct db *db, int rc, GError **err)
{
	int why = errno_of(db);

	give_up(db, rc);
	if (rc == SQLITE_FULL || why == ENOSPC || why == EDQUOT)
		return err_set(err, ERR_STORE, "the disk is full, %s could not be written%s", db->name, unsaved(db));
	if (why == EFBIG)
		return err_set(err, ERR_STORE, "%s has reached the largest size that is allowed here%s", db->name,
			       unsaved(db));
	return err_set(err, ERR_STORE, "%s could not be read or written (%s)%s", db->name,
		       why ? g_strerror(why) : sqlite3_errstr(rc), unsaved(db));
}

static gboolean
fail_readonly(struct db *db, int rc, GError **err)
{
	if (rc == SQLITE_READONLY_DBMOVED)
		return err_set(err, ERR_STORE, "%s was moved, deleted or replaced while it was open%s", db->name,
			       unsaved(db));
	if (rc == SQLITE_READONLY_ROLLBACK || rc == SQLITE_READONLY_RECOVERY)
		return err_set(err, ERR_STORE, "a program was stopped while it wrote %s: open it once where it can be"
			       " written, so that the unfinished change can be taken back", db->name);
	return err_set(err, ERR_STORE, "%s can be read but not written%s", db->name, unsaved(db));
}

gboolean
db_fail(struct db *db, int rc, GError **err)
{
	switch (rc & 0xff) {
	case SQLITE_BUSY:
	case SQLITE_LOCKED:
		return fail_locked(db, err);
	case SQLITE_FULL:
	case SQLITE_IOERR:
		return fail_disk(db, rc, err);
	case SQLITE_READONLY:
		return fail_readonly(db, rc, err);
	case SQLITE_CANTOPEN:
		return err_set(err, ERR_STORE, "%s or its journal beside it can't be opened (%s)%s", db->name,
			       g_strerror(sqlite3_system_errno(db->conn)), unsaved(db));
	case SQLITE_CORRUPT:
	case SQLITE_NOTADB:
		return err_set(err, ERR_STORE, "%s is damaged (%s): restore a backup, or see what `splitpin verify`"
			       " finds", db->name, sqlite3_errmsg(db->conn));
	case SQLITE_TOOBIG:
		return err_set(err, ERR_STORE, "this is too much for one entry of %s: take it in several parts",
			       db->name);
	case SQLITE_NOMEM:
		give_up(db, rc);
		return err_set(err, ERR_SYSTEM, "out of memory%s", unsaved(db));
	default:
		return err_set(err, ERR_STORE, "%s: %s", db->name, sqlite3_errmsg(db->conn));
	}
}
