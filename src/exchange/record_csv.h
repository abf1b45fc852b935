/* Records as rows of CSV and back, by the field table alone: a header of field names, then a row a
 * record.
 *
 * An export for a spreadsheet has one more column, the last, empty, and named "guarded": it says that
 * texts may bear a guarding ' in front, which reading takes off again.  A file without that column keeps
 * each ' it has. */
#ifndef EXCHANGE_RECORD_CSV_H
#define EXCHANGE_RECORD_CSV_H

#include "exchange/csv_in.h"
#include "exchange/csv_out.h"
#include "model/record.h"

#define GUARDED "guarded"

/* Writing */

struct record_out;

/* The name of a record referred to, borrowed until the next call; NULL: its key's letters are written
 * instead. */
typedef const char *record_name_fn(void *user, enum record ref, gint64 key);

/* Writes the header.  Borrows out; name_of may be NULL. */
struct record_out *record_out_new(enum record r, struct csv_out *out, record_name_fn *name_of, void *user);
/* FALSE once writing has failed; csvout_close() says why. */
gboolean record_out_row(struct record_out *o, const void *record);
void record_out_free(struct record_out *o);

/* Reading */

#define CSV_REPORT_ERRORS 20

struct csv_report {
	gint64 rows;	/* taken */
	gint64 empty_rows;	/* passed over, since all their fields are empty */
	gint64 n_errors;
	GPtrArray *errors;	/* the first of them, "file:line:column: what is wrong and what is right" */
	GPtrArray *notes;	/* what is worth knowing though not wrong */
	struct csv_found found;
	gboolean guarded;
};

void csvreport_init(struct csv_report *report);
void csvreport_clear(struct csv_report *report);

struct record_in {
	enum record r;
	gint64 today;	/* for dates such as "12 may" */
	/* Bit i: the caller fills the i-th field where the file does not, though it is required.  The
	 * record's own key is never asked of a file. */
	guint64 filled;
	/* The key of what a cell names: a name, or letters (key_from_letters()).  `record` has the
	 * references before this one in the field table, and nothing else that the answer may depend on:
	 * answers are remembered. */
	gboolean (*key_of)(void *user, enum record ref, const char *text, const void *record, gint64 *key,
			   GError **err);
	/* Take a record; its texts are freed afterwards unless they were set to NULL.  FALSE: the row is
	 * wrong, and with ERR_STORE or ERR_SYSTEM reading stops there. */
	gboolean (*take)(void *user, void *record, gint64 line, GError **err);
	void *user;
};

/* Read everything.  Rows that are right are taken even after one that was wrong, so that one reading
 * tells of all errors: who wants all or nothing undoes them.  TRUE when nothing was wrong. */
gboolean record_csv_read(struct csv_in *in, const struct record_in *how, struct csv_report *report);

/* The number of a field in its record's table, for `filled`; -1 when there is none of that name. */
int record_field_index(enum record r, const char *name);

#endif
