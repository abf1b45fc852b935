#include "logbook/out_file.h"

#include "base/err.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <unistd.h>

gboolean
out_file_open(struct out_file *f, const char *path, FILE *stream, GError **err)
{
	int fd;

	*f = (struct out_file){ stream, path && strcmp(path, "-") ? path : NULL };
	if (!f->path)
		return TRUE;
	fd = open(path, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
	f->stream = fd < 0 ? NULL : fdopen(fd, "wb");
	if (f->stream)
		return TRUE;
	f->path = NULL; /* what is there is not taken away when this is closed */
	if (errno == EEXIST)
		return err_set(err, ERR_SYSTEM, "%s is there already, and is not written over", path);
	return err_set(err, ERR_SYSTEM, "can't write %s: %s", path, g_strerror(errno));
}

static gboolean
cant_write(const struct out_file *f, GError **err)
{
	return err_set(err, ERR_SYSTEM, "can't write %s: %s", f->path ? f->path : "the output", g_strerror(errno));
}

gboolean
out_file_flush(const struct out_file *f, GError **err)
{
	return !f->stream || !fflush(f->stream) || cant_write(f, err);
}

gboolean
out_file_close(struct out_file *f, gboolean ok, GError **err)
{
	int wrong;

	if (!f->path)
		return ok;
	if (ok && (fflush(f->stream) || fsync(fileno(f->stream))))
		ok = cant_write(f, err);
	wrong = fclose(f->stream);
	if (ok && wrong)
		ok = cant_write(f, err);
	if (!ok)
		unlink(f->path);
	return ok;
}
