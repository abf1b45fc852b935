/* What the files of store/ share about an open logbook; nobody else includes this. */
#ifndef STORE_INSIDE_H
#define STORE_INSIDE_H

#include "store/db.h"
#include "store/sql.h"
#include "store/sqlite.h"

struct spool;

struct cells {
	struct db *db;
	sqlite3_stmt *stmt;
	GError *err;	/* the first; no more rows after it */
	gboolean kept, open;
};

struct db {
	sqlite3 *conn;
	char *path;	/* absolute */
	const char *name;	/* its last part, for messages */
	enum db_mode mode;
	int schema;
	gboolean writing;	/* between db_begin and db_commit or db_rollback */
	gboolean dead;	/* a sync failed: what the disk holds is not known until the file is opened again */
	sqlite3_session *session;	/* records the changes of a command */
	struct spool *spool;	/* the changes that bulk imports record by themselves; NULL: none */
	guint64 spooled;	/* one bit for each enum record in it */
	int spool_table;	/* the enum record that its next row belongs to; RECORD_COUNT: none yet */
	int bulks;	/* open bulk imports */
	gint64 next_key;	/* of this command; 0: not yet drawn */
	struct cells *kept[SQL_COUNT];	/* prepared at first use */
};

/* Run every statement of a text of file.sql. */
gboolean db_exec(struct db *db, enum sql_id sql, GError **err);
/* The first column of the first row, in *value. */
gboolean db_ask(struct db *db, enum sql_id sql, gint64 *value, GError **err);

/* Turn SQLite's answer into a sentence; rolls back when the disk failed.  Returns FALSE. */
gboolean db_fail(struct db *db, int rc, GError **err);
/* Finalize every kept statement; none may be open. */
void cells_forget(struct db *db);
/* A database without a schema to work in: ":memory:", or "" for a file that is gone when closed. */
struct db *db_scratch(const char *path);

/* An empty one beside the file. */
struct spool *db_spool(const struct db *db);

/* Begin without a session, for changes whose changeset is already there. */
gboolean db_begin_bare(struct db *db, GError **err);
/* Commit what db_begin_bare began. */
gboolean db_commit_bare(struct db *db, GError **err);

#endif
