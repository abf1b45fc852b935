#include "store/spool.h"

#include "base/err.h"
#include "store/sqlite.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

struct piece {
	gsize used;
	guint8 bytes[SPOOL_MEMORY];
};

struct spool {
	char *folder;
	struct piece *piece;	/* being filled */
	int fd;	/* -1: nothing in a file yet */
	gint64 filed;
	gint64 at;	/* of spool_read */
	int failed;	/* errno */
	GChecksum *sum;
	/* Taking the sum of a large import costs as much as a tenth of it: another thread does it meanwhile. */
	GThread *summing;
	GAsyncQueue *full, *empty;	/* pieces to and from that thread; an unused one ends it */
};

struct spool *
spool_new(const char *folder)
{
	struct spool *s = g_new0(struct spool, 1);

	s->folder = g_strdup(folder);
	s->piece = g_new(struct piece, 1);
	s->piece->used = 0;
	s->fd = -1;
	s->sum = g_checksum_new(G_CHECKSUM_SHA256);
	return s;
}

static gpointer
sum_pieces(gpointer spool)
{
	struct spool *s = spool;
	struct piece *p;

	while ((p = g_async_queue_pop(s->full))->used) {
		g_checksum_update(s->sum, p->bytes, (gssize)p->used);
		p->used = 0;
		g_async_queue_push(s->empty, p);
	}
	g_free(p);
	return NULL;
}

static void
start_summing(struct spool *s)
{
	if (s->summing)
		return;
	s->full = g_async_queue_new();
	s->empty = g_async_queue_new_full(g_free);
	g_async_queue_push(s->empty, g_new0(struct piece, 1));
	s->summing = g_thread_new("sum", sum_pieces, s);
}

static void
stop_summing(struct spool *s)
{
	if (!s->summing)
		return;
	g_async_queue_push(s->full, g_new0(struct piece, 1));
	g_thread_join(g_steal_pointer(&s->summing));
	g_async_queue_unref(s->full);
	g_async_queue_unref(s->empty);
}

void
spool_free(struct spool *s)
{
	if (!s)
		return;
	stop_summing(s);
	if (s->fd >= 0)
		close(s->fd);
	g_checksum_free(s->sum);
	g_free(s->piece);
	g_free(s->folder);
	g_free(s);
}

gint64
spool_size(const struct spool *s)
{
	return s->filed + (gint64)s->piece->used;
}

/* Not in /tmp, which may lie in memory; not every file system has files without a name from the start. */
static int
nameless_file(const char *folder)
{
	g_autofree char *name = g_build_filename(folder, ".splitpin-XXXXXX", NULL);
	int fd = g_mkstemp_full(name, O_RDWR | O_CLOEXEC, 0600);

	if (fd >= 0)
		g_unlink(name);
	return fd;
}

static gboolean
write_all(int fd, const guint8 *from, gsize n)
{
	while (n) {
		gssize wrote = write(fd, from, n);

		if (wrote < 0 && errno == EINTR)
			continue;
		if (wrote <= 0)
			return FALSE;
		from += wrote;
		n -= (gsize)wrote;
	}
	return TRUE;
}

static void
flush(struct spool *s)
{
	struct piece *p = s->piece;

	if (s->fd < 0)
		s->fd = nameless_file(s->folder);
	if (s->fd < 0 || !write_all(s->fd, p->bytes, p->used))
		s->failed = errno ? errno : EIO;
	s->filed += (gint64)p->used;
	if (s->filed > SPOOL_MOST)
		s->failed = EFBIG;
	start_summing(s);
	g_async_queue_push(s->full, p);
	s->piece = g_async_queue_pop(s->empty);
}

guint8 *
spool_room(struct spool *s, gsize n)
{
	g_assert(n <= SPOOL_MEMORY);
	if (s->failed)
		s->piece->used = 0;
	else if (s->piece->used + n > SPOOL_MEMORY)
		flush(s);
	return s->piece->bytes + s->piece->used;
}

void
spool_took(struct spool *s, gsize n)
{
	s->piece->used += n;
}

gboolean
spool_good(const struct spool *s, GError **err)
{
	if (!s->failed)
		return TRUE;
	if (s->failed == EFBIG && s->filed > SPOOL_MOST)
		return err_set(err, ERR_INPUT, "this is too much for one entry: take it in several parts");
	return err_set(err, ERR_STORE, "the changes could not be kept in %s (%s): nothing was saved", s->folder,
		       g_strerror(s->failed));
}

void
spool_sum(struct spool *s, guint8 sum[SUM_BYTES])
{
	gsize n = SUM_BYTES;

	stop_summing(s);
	g_checksum_update(s->sum, s->piece->bytes, (gssize)s->piece->used);
	g_checksum_get_digest(s->sum, sum, &n);
}

void
spool_rewind(struct spool *s)
{
	s->at = 0;
}

gssize
spool_read(struct spool *s, void *to, gsize n)
{
	gssize got;

	if (s->failed)
		return -1;
	if (s->at < s->filed) {
		n = MIN(n, (gsize)(s->filed - s->at));
		got = pread(s->fd, to, n, s->at);
		if (got <= 0)
			return -1;
	} else {
		got = (gssize)MIN(n, (gsize)(spool_size(s) - s->at));
		memcpy(to, s->piece->bytes + (s->at - s->filed), (gsize)got);
	}
	s->at += got;
	return got;
}

int
spool_output(void *context, const void *from, int n)
{
	const guint8 *next = from;

	while (n > 0) {
		int part = MIN(n, SPOOL_MEMORY);

		memcpy(spool_room(context, (gsize)part), next, (gsize)part);
		spool_took(context, (gsize)part);
		next += part;
		n -= part;
	}
	return spool_good(context, NULL) ? SQLITE_OK : SQLITE_IOERR;
}

int
spool_input(void *context, void *to, int *n)
{
	gssize got = spool_read(context, to, (gsize)*n);

	*n = got < 0 ? 0 : (int)got;
	return got < 0 ? SQLITE_IOERR_READ : SQLITE_OK;
}
