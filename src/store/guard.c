#include "store/guard.h"

#include "base/err.h"
#include "store/cells.h"
#include "store/migrate.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* Offsets in SQLite's file header (its file-format document, section 1.3). */
enum { AT_PAGE_SIZE = 16, AT_WRITE_VERSION = 18, AT_USER_VERSION = 60, AT_APPLICATION = 68, HEADER = 100 };

#define APPLICATION 0x53706c74	/* "Splt"; the same in the first migration */
/* quick_check takes some 15 ms for this many. */
#define SMALL_PAGES 2000

/* The folder too: the journal is made in it, where the file itself is if path is a link. */
static gboolean
writable(const char *path, GError **err)
{
	g_autofree char *real = realpath(path, NULL);
	g_autofree char *folder = g_path_get_dirname(real ? real : path);

	if (g_access(path, W_OK))
		return err_set(err, ERR_STORE, "%s can be read but not written (%s)", path, g_strerror(errno));
	if (g_access(folder, W_OK))
		return err_set(err, ERR_STORE, "%s can't be written, because its folder can't (%s)", path,
			       g_strerror(errno));
	return TRUE;
}

gboolean
guard_path(const char *path, enum db_mode mode, GError **err)
{
	GStatBuf st;

	if (g_stat(path, &st) && errno == ENOENT)
		return err_set(err, ERR_STORE, "there is no logbook %s", path);
	if (g_stat(path, &st))
		return err_set(err, ERR_STORE, "%s can't be opened (%s)", path, g_strerror(errno));
	if (S_ISDIR(st.st_mode))
		return err_set(err, ERR_STORE, "%s is a folder, not a logbook", path);
	if (!S_ISREG(st.st_mode))
		return err_set(err, ERR_STORE, "%s is not an ordinary file, so it is no logbook", path);
	if (!st.st_size)
		return err_set(err, ERR_STORE, "%s is empty: it is no logbook", path);
	if (g_access(path, R_OK))
		return err_set(err, ERR_STORE, "%s can't be read (%s)", path, g_strerror(errno));
	return mode == DB_READ || writable(path, err);
}

static guint32
big_endian(const guint8 *at)
{
	return (guint32)at[0] << 24 | (guint32)at[1] << 16 | (guint32)at[2] << 8 | at[3];
}

static sqlite3_file *
file_of(struct db *db)
{
	sqlite3_file *file = NULL;

	sqlite3_file_control(db->conn, "main", SQLITE_FCNTL_FILE_POINTER, &file);
	return file && file->pMethods ? file : NULL;
}

static gboolean
header_read(struct db *db, guint8 header[HEADER])
{
	sqlite3_file *file = file_of(db);

	memset(header, 0, HEADER);
	return file && file->pMethods->xRead(file, header, HEADER, 0) == SQLITE_OK;
}

gboolean
guard_header(struct db *db, GError **err)
{
	guint8 header[HEADER];

	if (!header_read(db, header) || memcmp(header, "SQLite format 3", 16))
		return err_set(err, ERR_STORE, "%s is no logbook: it is not an SQLite file", db->path);
	if (big_endian(header + AT_APPLICATION) != APPLICATION)
		return err_set(err, ERR_STORE, "%s is an SQLite file of another program, no logbook", db->path);
	db->schema = (int)big_endian(header + AT_USER_VERSION);
	if (db->schema > migrations_ours()->n)
		return err_set(err, ERR_STORE, "%s was written by a newer splitpin (schema %d; this one knows %d)",
			       db->path, db->schema, migrations_ours()->n);
	if (db->schema < 1 || header[AT_WRITE_VERSION] < 1 || header[AT_WRITE_VERSION] > 2)
		return err_set(err, ERR_STORE, "%s is damaged: its header makes no sense", db->path);
	return TRUE;
}

static gint64
page_count(struct db *db)
{
	guint8 header[HEADER];
	sqlite3_int64 size = 0;
	sqlite3_file *file = file_of(db);
	gint64 page;

	if (!file || file->pMethods->xFileSize(file, &size) != SQLITE_OK || !header_read(db, header))
		return 0;
	page = header[AT_PAGE_SIZE] << 8 | header[AT_PAGE_SIZE + 1];
	return size / MAX(page, 512);
}

gboolean
guard_pages(struct db *db, GError **err)
{
	g_autofree char *found = NULL;
	struct cells *c;

	if (page_count(db) > SMALL_PAGES)
		return TRUE;
	c = cells_open(db, SQL_QUICK_CHECK);
	if (cells_next(c))
		found = g_strdup(cells_text(c, 0));
	if (!cells_close(c, err))
		return FALSE;
	if (g_strcmp0(found, "ok"))
		return err_set(err, ERR_STORE, "%s is damaged (%s): restore a backup, or see what `splitpin verify`"
			       " finds; nothing was written to it", db->path, found ? found : "unreadable");
	return TRUE;
}

static gboolean
foreign_object(struct db *db, struct cells *c, GError **err)
{
	const char *type = cells_text(c, 0);

	if (g_strcmp0(type, "trigger") && g_strcmp0(type, "view"))
		return TRUE;
	return err_set(err, ERR_STORE, "%s holds a %s \"%s\", which no logbook has: it is not trusted", db->path,
		       type, cells_text(c, 1));
}

char *
guard_schema_hash(struct db *db, GError **err)
{
	g_autoptr(GChecksum) sum = g_checksum_new(G_CHECKSUM_SHA256);
	struct cells *c = cells_open(db, SQL_SCHEMA_ROWS);
	gboolean ok = TRUE;

	while (ok && cells_next(c)) {
		ok = foreign_object(db, c, err);
		for (int i = 0; i < 4; i++) {
			int n;
			const char *bytes = cells_bytes(c, i, &n);

			g_checksum_update(sum, (const guchar *)(bytes ? bytes : ""), n);
			g_checksum_update(sum, (const guchar *)"", 1);
		}
	}
	if (!cells_close(c, ok ? err : NULL) || !ok)
		return NULL;
	return g_strdup(g_checksum_get_string(sum));
}

/* Kept here because making the tables anew in memory for a comparison costs more than the due list does. */
static const char *const known[] = {
	"fdb13aaa36d58e9da2e23bb3a273537abdbd9405a9506ea2fcea4a81029569d6",
	"58473a3ff1f9514cc26ae0d7b6bcf5c8af8af3bea30a8fcdc06bf994a0d0353c",
	"c7db11df6e0c31405195a318cba97f236ed080fa873e9cdd8408e37b8bcd8008",
	"cc3a9dfaa70b4a6d94ec830a0e2734cfc1e02a4c54ff7ea161510cddb15c4529",
	"e1ea2c11cec030745f844d27f3ed2b28d20187abcf8074eac883d43a559cf57e",
};

const char *
guard_known_hash(int version)
{
	return version >= 1 && version <= (int)G_N_ELEMENTS(known) ? known[version - 1] : "";
}

/* "table outing" -> its text, as it should be. */
static GHashTable *
schema_expected(int version)
{
	GHashTable *texts = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
	struct db *model = db_scratch(":memory:");
	struct cells *c;

	for (int i = 0; i < version; i++)
		migrate_step(model, migrations_ours(), i, NULL);
	c = cells_open(model, SQL_SCHEMA_ROWS);
	while (cells_next(c))
		g_hash_table_insert(texts, g_strdup_printf("%s %s", cells_text(c, 0), cells_text(c, 1)),
				    g_strdup(cells_text(c, 3)));
	cells_close(c, NULL);
	db_close(model);
	return texts;
}

static gboolean
row_as_expected(struct db *db, GHashTable *expected, struct cells *c, GError **err)
{
	g_autofree char *name = g_strdup_printf("%s %s", cells_text(c, 0), cells_text(c, 1));
	const char *text = g_hash_table_lookup(expected, name);

	if (!text)
		return err_set(err, ERR_STORE, "%s holds the %s, which no logbook has: it is not trusted", db->path,
			       name);
	if (g_strcmp0(text, cells_text(c, 3)))
		return err_set(err, ERR_STORE, "%s is damaged or was changed by another program: its %s is not as"
			       " splitpin makes it", db->path, name);
	g_hash_table_remove(expected, name);
	return TRUE;
}

/* Name the difference.  (None: this program's own hash is out of date, which a test finds.) */
static gboolean
schema_compare(struct db *db, GError **err)
{
	g_autoptr(GHashTable) expected = schema_expected(db->schema);
	struct cells *c = cells_open(db, SQL_SCHEMA_ROWS);
	gboolean ok = TRUE;
	GHashTableIter left;
	gpointer name;

	while (ok && cells_next(c))
		ok = row_as_expected(db, expected, c, err);
	if (!cells_close(c, ok ? err : NULL) || !ok)
		return FALSE;
	g_hash_table_iter_init(&left, expected);
	if (g_hash_table_iter_next(&left, &name, NULL))
		return err_set(err, ERR_STORE, "%s is damaged: its %s is missing", db->path, (char *)name);
	return TRUE;
}

gboolean
guard_schema(struct db *db, GError **err)
{
	g_autofree char *hash = guard_schema_hash(db, err);

	if (!hash)
		return FALSE;
	return !strcmp(hash, guard_known_hash(db->schema)) || schema_compare(db, err);
}
