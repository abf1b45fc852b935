/* A changeset on its way into the journal: in memory while it is small, else in a file without a name beside the
 * logbook.  Its SHA-256 is taken as it grows. */
#ifndef STORE_SPOOL_H
#define STORE_SPOOL_H

#include <glib.h>

#define SUM_BYTES 32	/* of SHA-256 */
#define SPOOL_MEMORY 1048576	/* larger ones go to the file */
#define SPOOL_MOST 900000000	/* SQLite takes no value of 1,000,000,000 bytes */

struct spool;

struct spool *spool_new(const char *folder);
void spool_free(struct spool *s);	/* NULL is fine */

/* Room for n more bytes in a row (n at most SPOOL_MEMORY), to be written there and then counted by spool_took. */
guint8 *spool_room(struct spool *s, gsize n);
void spool_took(struct spool *s, gsize n);
gint64 spool_size(const struct spool *s);

/* FALSE when a write to the file failed or the whole grew past SPOOL_MOST; the first failure stays. */
gboolean spool_good(const struct spool *s, GError **err);

/* The sum of all bytes; nothing may be written after it, and it is asked for once. */
void spool_sum(struct spool *s, guint8 sum[SUM_BYTES]);
/* The next n bytes at most, from the start at first; 0 at the end, -1 on failure. */
gssize spool_read(struct spool *s, void *to, gsize n);
void spool_rewind(struct spool *s);

/* The same two as SQLite's streaming functions want them; context is the spool. */
int spool_output(void *context, const void *from, int n);
int spool_input(void *context, void *to, int *n);

#endif
