/* CSV as RFC 4180 has it, read strictly and in pieces of 64 KiB: quotes must be right, spaces belong to
 * the field, any of the three line ends is taken, a byte order mark is stripped, blank lines are skipped.
 * Nothing is repaired. */
#ifndef EXCHANGE_CSV_IN_H
#define EXCHANGE_CSV_IN_H

#include <glib.h>
#include <stdio.h>

#define CSVIN_FIELD_MAX (1 << 20)	/* bytes of one field */
#define CSVIN_RECORD_MAX (4 << 20)	/* bytes of one record */
#define CSVIN_COLUMNS_MAX 256

enum csv_decimal { DECIMAL_FOUND_OUT, DECIMAL_POINT, DECIMAL_COMMA };

struct csv_in_how {
	char separator;	/* 0: that of a first line "sep=;", else found out from the first records */
	enum csv_decimal decimal;
	gboolean any_width;	/* rows need not be as long as the first */
};

struct csv_found {
	char separator;
	gboolean decimal_comma;
	gboolean bom;
};

struct csv_row {
	const char *const *cell;	/* NULL: an empty field; "" stood as two quotes */
	int n;
	gint64 line;	/* on which it begins, from 1 */
};

struct csv_in;

/* name is for messages.  Borrows the stream or the bytes; how may be NULL.  NULL and ERR_INPUT for what
 * is plainly no text, ERR_SYSTEM when it can't be read. */
struct csv_in *csvin_file(FILE *f, const char *name, const struct csv_in_how *how, GError **err);
struct csv_in *csvin_memory(const char *bytes, size_t n, const char *name, const struct csv_in_how *how,
			    GError **err);
void csvin_free(struct csv_in *in);

const struct csv_found *csvin_found(const struct csv_in *in);

enum csv_got {
	GOT_ROW,
	GOT_RAGGED,	/* a row with more or fewer fields than the first, and *err; reading can go on */
	GOT_END,
	GOT_BROKEN,	/* and *err; the rest can't be read */
};
/* The next row, whose cells hold until the next call.  Messages begin with file:line:column. */
enum csv_got csvin_next(struct csv_in *in, struct csv_row *row, GError **err);

/* Where the i-th field of the row in hand begins: its line, and its column in characters, both from 1. */
void csvin_place(const struct csv_in *in, int i, gint64 *line, gint64 *column);
/* Put "file:line:column: " of that field before a message; returns FALSE. */
gboolean csvin_prefix(const struct csv_in *in, int i, GError **err);

#endif
