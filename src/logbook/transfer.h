/* Records in and out as CSV, and the demo logbook. */
#ifndef LOGBOOK_TRANSFER_H
#define LOGBOOK_TRANSFER_H

#include "logbook/book.h"

#include <stdio.h>

struct import_form {
	enum record what;
	const char *path; /* "-": standard input */
	const char *boat; /* for files without a boat column; NULL: the only one */
	gboolean dry_run; /* check everything, keep nothing */
	gboolean sure; /* take implausible readings as they are */
	char separator; /* 0: found out */
	int decimal_comma; /* 1, 0, -1: found out */
};

struct import_said {
	gint64 rows, added, same, altered; /* read; new; already there just so; there but otherwise */
	GPtrArray *notes; /* char *: how the file was read, columns left out */
	GPtrArray *errors; /* char *: file:line:column: what is wrong; at most 20 */
	gint64 n_errors;
};
void import_said_clear(struct import_said *s);

/* All or nothing.  FALSE with said->errors filled when rows are wrong. */
gboolean book_import(struct book *b, const struct import_form *form, struct import_said *said, GError **err);

struct export_form {
	enum record what;
	const char *path; /* an existing file is not written over; NULL: to the stream */
	FILE *stream;
	gboolean for_spreadsheet; /* guard cells that a spreadsheet would take for a formula */
	gboolean without_names; /* as logbook/handover.h has it */
	gboolean decimal_comma; /* semicolons between fields and a comma in numbers */
};
gboolean book_export(struct book *b, const struct export_form *form, gint64 *rows, GError **err);

/* The record that a word names ("outings"); FALSE and *err. */
gboolean record_named(const char *word, enum record *r, GError **err);

/* A record's name for people (a boat's, a task's, ...); NULL when it has none.  Borrowed until the next call. */
const char *book_name_of(struct book *b, enum record r, gint64 key);

/* A new logbook at path from the demo files under data/demo. */
gboolean book_make_demo(const char *path, const struct book_who *who, const char *data, GError **err);

#endif
