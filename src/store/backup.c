#include "store/backup.h"

#include "base/err.h"
#include "store/inside.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

static gboolean
fail_file(const char *what, const char *path, int why, GError **err)
{
	return err_set(err, ERR_SYSTEM, "%s %s: %s", what, path, g_strerror(why));
}

/* A failure in the new file is not the logbook's. */
static gboolean
copy_failed(struct db *db, sqlite3 *to, int rc, const char *path, GError **err)
{
	int why = sqlite3_system_errno(to);

	if ((rc & 0xff) == SQLITE_FULL || why == ENOSPC)
		return err_set(err, ERR_SYSTEM, "the disk is full: %s was not made", path);
	if ((rc & 0xff) == SQLITE_IOERR && why)
		return fail_file("can't write", path, why, err);
	return db_fail(db, rc, err);
}

static int
copy_pages(sqlite3 *from, sqlite3 *to)
{
	sqlite3_backup *b = sqlite3_backup_init(to, "main", from, "main");

	if (!b)
		return sqlite3_extended_errcode(to);
	sqlite3_backup_step(b, -1);
	return sqlite3_backup_finish(b);
}

static gboolean
copy_into(struct db *db, const char *temp, const char *path, GError **err)
{
	sqlite3 *to = NULL;
	int rc = sqlite3_open_v2(temp, &to, SQLITE_OPEN_READWRITE | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE, NULL);
	gboolean ok;

	/* The file is thrown away unless all goes well, and synced once at the end. */
	if (rc == SQLITE_OK)
		rc = sqlite3_exec(to, sql_text[SQL_SCRATCH], NULL, NULL, NULL);
	if (rc == SQLITE_OK)
		rc = copy_pages(db->conn, to);
	ok = rc == SQLITE_OK || copy_failed(db, to, rc, path, err);
	sqlite3_close(to);
	return ok;
}

static gboolean
sync_path(const char *path, int flags, GError **err)
{
	int fd = g_open(path, flags | O_CLOEXEC, 0);
	gboolean ok = fd >= 0 && !fsync(fd);
	int why = errno;

	if (fd >= 0)
		close(fd);
	return ok || fail_file("can't bring to the disk:", path, why, err);
}

static int
rename_new(const char *from, const char *to)
{
#ifdef RENAME_NOREPLACE
	if (!renameat2(AT_FDCWD, from, AT_FDCWD, to, RENAME_NOREPLACE))
		return 0;
	if (errno == EEXIST)
		return -1;
#endif
	if (!link(from, to))
		return g_unlink(from);
	if (errno == EEXIST)
		return -1;
	/* Neither of the two on this file system (some sticks): look first, and hope that nobody is as quick. */
	if (g_file_test(to, G_FILE_TEST_EXISTS | G_FILE_TEST_IS_SYMLINK)) {
		errno = EEXIST;
		return -1;
	}
	return g_rename(from, to);
}

static gboolean
show(const char *temp, const char *path, const char *folder, GError **err)
{
	if (!rename_new(temp, path))
		return sync_path(folder, O_RDONLY | O_DIRECTORY, err);
	if (errno == EEXIST)
		return err_set(err, ERR_SYSTEM, "%s is there already: nothing was written", path);
	return fail_file("can't make", path, errno, err);
}

gboolean
db_backup(struct db *db, const char *path, GError **err)
{
	g_autofree char *whole = g_canonicalize_filename(path, NULL);
	g_autofree char *folder = g_path_get_dirname(whole);
	g_autofree char *temp = g_build_filename(folder, ".splitpin-XXXXXX", NULL);
	int fd;

	if (g_file_test(whole, G_FILE_TEST_EXISTS | G_FILE_TEST_IS_SYMLINK))
		return err_set(err, ERR_SYSTEM, "%s is there already: nothing was written", path);
	fd = g_mkstemp_full(temp, O_RDWR | O_CLOEXEC, 0600);
	if (fd < 0)
		return fail_file("can't make", path, errno, err);
	close(fd);
	if (copy_into(db, temp, path, err) && sync_path(temp, O_RDWR, err) && show(temp, whole, folder, err))
		return TRUE;
	g_unlink(temp);
	return FALSE;
}
