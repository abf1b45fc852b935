#include "exchange/sink.h"

#include "base/err.h"

#include <errno.h>

static gboolean
file_failed(GError **err)
{
	return err_set(err, ERR_SYSTEM, "can't write: %s", g_strerror(errno));
}

static gboolean
file_write(void *user, const char *bytes, size_t n, GError **err)
{
	errno = 0;
	return fwrite(bytes, 1, n, user) == n || file_failed(err);
}

static gboolean
file_flush(void *user, GError **err)
{
	errno = 0;
	if (fflush(user))
		return file_failed(err);
	return !ferror(user)
	    || err_set(err, ERR_SYSTEM, "can't write: an earlier part did not reach the file");
}

static gboolean
string_write(void *user, const char *bytes, size_t n, G_GNUC_UNUSED GError **err)
{
	g_string_append_len(user, bytes, (gssize)n);
	return TRUE;
}

struct sink
sink_file(FILE *f)
{
	return (struct sink){ file_write, file_flush, f };
}

struct sink
sink_string(GString *text)
{
	return (struct sink){ string_write, NULL, text };
}

gboolean
sink_write(const struct sink *s, const char *bytes, size_t n, GError **err)
{
	return s->write(s->user, bytes, n, err);
}

gboolean
sink_flush(const struct sink *s, GError **err)
{
	return !s->flush || s->flush(s->user, err);
}
