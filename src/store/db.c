#include "store/db.h"

#include "base/err.h"
#include "store/cells.h"
#include "store/guard.h"
#include "store/inside.h"
#include "store/migrate.h"
#include "store/spool.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

enum { PATIENCE = 5000 };

/* One thread alone calls SQLite, and nobody asks how much memory it has: no locks around either.  Counts only before the
 * first connection of the process. */
static void
set_up_library(void)
{
	sqlite3_config(SQLITE_CONFIG_SINGLETHREAD);
	sqlite3_config(SQLITE_CONFIG_MEMSTATUS, 0);
}

static struct db *
db_new(const char *path, enum db_mode mode)
{
	struct db *db = g_new0(struct db, 1);

	set_up_library();
	/* Absolute, also because SQLite could take a name that begins with "file:" for a URI. */
	db->path = g_canonicalize_filename(path, NULL);
	db->name = strrchr(db->path, '/') + 1;
	db->mode = mode;
	return db;
}

/* A file with a hot journal must be written before it can be read, so a reader too asks for write access first. */
static gboolean
connect_file(struct db *db, GError **err)
{
	int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_PRIVATECACHE | SQLITE_OPEN_EXRESCODE;
	int rc = sqlite3_open_v2(db->path, &db->conn, flags, NULL);

	return rc == SQLITE_OK || db_fail(db, rc, err);
}

/* The file is untrusted: none of its texts may call what could do harm (SQLite's "Defense Against The Dark Arts"). */
static gboolean
harden(struct db *db, GError **err)
{
	static const struct {
		int what, on;
	} config[] = {
		{ SQLITE_DBCONFIG_DEFENSIVE, 1 }, { SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0 },
		{ SQLITE_DBCONFIG_ENABLE_TRIGGER, 0 }, { SQLITE_DBCONFIG_ENABLE_VIEW, 0 },
		{ SQLITE_DBCONFIG_ENABLE_LOAD_EXTENSION, 0 }, { SQLITE_DBCONFIG_DQS_DML, 0 },
		{ SQLITE_DBCONFIG_DQS_DDL, 0 }, { SQLITE_DBCONFIG_ENABLE_FKEY, 1 },
	};

	for (size_t i = 0; i < G_N_ELEMENTS(config); i++) {
		int on = -1;

		if (sqlite3_db_config(db->conn, config[i].what, config[i].on, &on) != SQLITE_OK || on != config[i].on)
			return err_set(err, ERR_SYSTEM, "this SQLite (%s) can't be set up as a logbook needs it",
				       sqlite3_libversion());
	}
	sqlite3_limit(db->conn, SQLITE_LIMIT_ATTACHED, 1);
	db_set_patience(db, PATIENCE);
	return db_exec(db, SQL_SETTINGS, err);
}

/* Read back, since SQLite takes an unknown word, or a mode that it can't have just now, without complaint. */
static gboolean
durable(struct db *db, GError **err)
{
	struct cells *c = cells_open(db, SQL_JOURNAL_MODE);
	gboolean deleting = cells_next(c) && !g_strcmp0(cells_text(c, 0), "delete");
	gint64 sync = 0;

	if (!cells_close(c, err) || !db_ask(db, SQL_SYNCHRONOUS, &sync, err))
		return FALSE;
	if (!deleting || sync != 3)
		return err_set(err, ERR_STORE, "%s can't be written safely: SQLite refuses the journal mode DELETE with"
			       " synchronous EXTRA", db->name);
	return TRUE;
}

static gboolean
read_version(struct db *db, GError **err)
{
	gint64 version;

	if (!db_ask(db, SQL_USER_VERSION, &version, err))
		return FALSE;
	db->schema = (int)version;
	return TRUE;
}

/* A reader writes this once. */
static gboolean
bring_up_to_date(struct db *db, GError **err)
{
	enum db_mode mode = db->mode;
	gboolean ok;

	if (db->schema >= migrations_ours()->n)
		return TRUE;
	if (!guard_path(db->path, DB_WRITE, err))
		return err_prefix(err, "an older logbook (schema %d) is to be brought to schema %d: ", db->schema,
				  migrations_ours()->n);
	db->mode = DB_WRITE;
	ok = guard_pages(db, err) && durable(db, err) && migrate(db, migrations_ours(), err) && guard_schema(db, err);
	db->mode = mode;
	return ok;
}

static gboolean
open_steps(struct db *db, GError **err)
{
	return guard_path(db->path, db->mode, err) && connect_file(db, err) && guard_header(db, err)
		&& harden(db, err) && (db->mode == DB_READ || guard_pages(db, err)) && read_version(db, err)
		&& guard_schema(db, err) && bring_up_to_date(db, err)
		&& (db->mode == DB_WRITE ? durable(db, err) : db_exec(db, SQL_READ_ONLY, err));
}

struct db *
db_open(const char *path, enum db_mode mode, GError **err)
{
	struct db *db = db_new(path, mode);

	if (open_steps(db, err))
		return db;
	db_close(db);
	return NULL;
}

static gboolean
make_file(struct db *db, GError **err)
{
	int fd = g_open(db->path, O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0600);

	if (fd >= 0 && !close(fd))
		return TRUE;
	if (errno == EEXIST)
		return err_set(err, ERR_STORE, "%s is there already: nothing was changed", db->path);
	return err_set(err, ERR_STORE, "%s can't be made (%s)", db->path, g_strerror(errno));
}

struct db *
db_create(const char *path, GError **err)
{
	struct db *db = db_new(path, DB_WRITE);
	gboolean made = make_file(db, err);

	if (made && connect_file(db, err) && harden(db, err) && durable(db, err)
	    && migrate(db, migrations_ours(), err))
		return db;
	if (made)
		g_unlink(db->path);
	db_close(db);
	return NULL;
}

struct db *
db_scratch(const char *path)
{
	struct db *db = db_new("scratch", DB_WRITE);

	sqlite3_open_v2(path, &db->conn, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_NOMUTEX
			| SQLITE_OPEN_EXRESCODE, NULL);
	return db;
}

void
db_close(struct db *db)
{
	if (!db)
		return;
	if (db->conn) {
		db_rollback(db);
		cells_forget(db);
		sqlite3_close(db->conn);
	}
	g_free(db->path);
	g_free(db);
}

const char *
db_path(const struct db *db)
{
	return db->path;
}

int
db_schema(const struct db *db)
{
	return db->schema;
}

void
db_set_patience(struct db *db, int ms)
{
	sqlite3_busy_timeout(db->conn, ms);
}

gint64
db_data_version(struct db *db)
{
	gint64 version;

	return db_ask(db, SQL_DATA_VERSION, &version, NULL) ? version : NONE;
}

gboolean
db_check_home(struct db *db, GError **err)
{
	int moved = 0;

	sqlite3_file_control(db->conn, "main", SQLITE_FCNTL_HAS_MOVED, &moved);
	return !moved || db_fail(db, SQLITE_READONLY_DBMOVED, err);
}

gboolean
db_exec(struct db *db, enum sql_id sql, GError **err)
{
	int rc = sqlite3_exec(db->conn, sql_text[sql], NULL, NULL, NULL);

	return rc == SQLITE_OK || db_fail(db, rc, err);
}

gboolean
db_ask(struct db *db, enum sql_id sql, gint64 *value, GError **err)
{
	struct cells *c = cells_open(db, sql);

	*value = cells_next(c) ? cells_int(c, 0) : NONE;
	return cells_close(c, err);
}
