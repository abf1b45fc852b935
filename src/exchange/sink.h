/* Where written bytes go: a stream or a text in memory. */
#ifndef EXCHANGE_SINK_H
#define EXCHANGE_SINK_H

#include <glib.h>
#include <stdio.h>

struct sink {
	gboolean (*write)(void *user, const char *bytes, size_t n, GError **err);
	gboolean (*flush)(void *user, GError **err);	/* NULL: nothing is held back */
	void *user;
};

/* A borrowed stream; flush makes sure that nothing waits in its buffer, and reports what went wrong
 * (ERR_SYSTEM). */
struct sink sink_file(FILE *f);
/* Appends to a borrowed string; never fails. */
struct sink sink_string(GString *text);

gboolean sink_write(const struct sink *s, const char *bytes, size_t n, GError **err);
gboolean sink_flush(const struct sink *s, GError **err);

#endif
