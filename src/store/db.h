/* A logbook file: making, opening, and writing to it one command at a time.  SQLite stays behind this header. */
#ifndef STORE_DB_H
#define STORE_DB_H

#include <glib.h>

struct db;

enum db_mode { DB_READ, DB_WRITE };

/* Who wrote a journal entry, with what, and when. */
struct entry_head {
	const char *what;	/* in words; NULL for undo and redo: made from what is undone */
	const char *who;
	const char *device;
	gint64 at;	/* UTC seconds since 1970 */
};

/* A new logbook, mode 0600, open for writing.  Never over a file that is there; removed again if it fails. */
struct db *db_create(const char *path, GError **err);

/* An existing logbook.  Whatever is no logbook of ours, damaged, or newer than this program is refused with
 * ERR_STORE and left as it was.  An older one is brought up to date, after a copy of it was laid beside it.
 * DB_WRITE wants a file and a folder that can be written, and looks through a small file for damage first. */
struct db *db_open(const char *path, enum db_mode mode, GError **err);
/* Rolls back what was not committed.  NULL is fine. */
void db_close(struct db *db);

const char *db_path(const struct db *db);	/* absolute; borrowed */
int db_schema(const struct db *db);	/* user_version of the file */

/* How long to wait for another process that holds the file: 5,000 ms unless set. */
void db_set_patience(struct db *db, int ms);

/* A number that changes when another process has changed the file. */
gint64 db_data_version(struct db *db);
/* The file opened still lies at its path: neither moved, deleted nor replaced; else ERR_STORE. */
gboolean db_check_home(struct db *db, GError **err);

/* Many reads of one and the same state, and without a lock taken for each; other processes wait to commit. */
gboolean db_hold(struct db *db, GError **err);
void db_release(struct db *db);

/* One command: db_begin, changes, then db_commit or db_rollback.  Commit writes the changes and their journal
 * entry in one transaction; when nothing changed it writes nothing, and *changed (may be NULL) says so.  A failed
 * commit has rolled back.  After a full disk or a failed write everything since db_begin is gone already;
 * db_rollback is then harmless.  A file locked for longer than the patience gives ERR_STORE naming who holds it. */
gboolean db_begin(struct db *db, GError **err);
gboolean db_commit(struct db *db, const struct entry_head *head, gboolean *changed, GError **err);
void db_rollback(struct db *db);

#endif
