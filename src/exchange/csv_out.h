/* CSV written as RFC 4180 has it: CRLF, quotes only where they are needed and doubled inside.  Exact by
 * default: csv_in.h reads back what was written, an empty field as NULL and "" as "". */
#ifndef EXCHANGE_CSV_OUT_H
#define EXCHANGE_CSV_OUT_H

#include "exchange/sink.h"

struct csv_out_how {
	char separator;	/* 0: ',' */
	gboolean decimal_comma;
	/* Put ' before a text that a spreadsheet would take for a formula (after OWASP, "CSV Injection");
	 * numbers are left alone.  guard_strip() undoes it. */
	gboolean for_spreadsheet;
};

struct csv_out;

/* Keeps a copy of the sink and of how (NULL: all defaults). */
struct csv_out *csvout_new(const struct sink *sink, const struct csv_out_how *how);
const struct csv_out_how *csvout_how(const struct csv_out *out);

/* Each writes the next field of the row. */
void csvout_text(struct csv_out *out, const char *text);	/* NULL: an empty field */
/* Nothing in it needs a quote or a guard; "": an empty field. */
void csvout_word(struct csv_out *out, const char *text);
/* Whether csvout_word would write a text as csvout_text does: to ask once of one that many rows share. */
gboolean csvout_is_plain(const struct csv_out *out, const char *text);
/* With a decimal point, which becomes a comma if so asked; "": an empty field. */
void csvout_number(struct csv_out *out, const char *text);
void csvout_int(struct csv_out *out, gint64 value);	/* NONE: an empty field */
void csvout_real(struct csv_out *out, double value);	/* exact, shortest; NAN: an empty field */

/* End the row.  FALSE once writing has failed: nothing more is written then, csvout_close() says why. */
gboolean csvout_row(struct csv_out *out);
/* A row of names, such as the columns': each a field, behind what the row has already. */
gboolean csvout_names(struct csv_out *out, const char *const *names, int n);
/* Write what is held back, flush the sink, free. */
gboolean csvout_close(struct csv_out *out, GError **err);

/* The text without the guard: without its first ' when guarding put it there. */
const char *guard_strip(const char *text);

#endif
