/* A file written for other programs: whole, or not there; never over one that is. */
#ifndef LOGBOOK_OUT_FILE_H
#define LOGBOOK_OUT_FILE_H

#include <glib.h>
#include <stdio.h>

struct out_file {
	FILE *stream;
	const char *path; /* NULL: the stream is the caller's */
};

/* Without a path, or with "-", to the caller's stream.  What failed can be closed. */
gboolean out_file_open(struct out_file *f, const char *path, FILE *stream, GError **err);
/* What was written so far is with the system: FALSE and *err, when the disk is full or nobody reads on. */
gboolean out_file_flush(const struct out_file *f, GError **err);
/* With ok FALSE, or when not all could be written, the file is taken away again; returns whether it stays. */
gboolean out_file_close(struct out_file *f, gboolean ok, GError **err);

#endif
