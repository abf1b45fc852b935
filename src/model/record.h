/* The records of a logbook as plain structs, and one table of their fields, from which the store binds columns,
 * the CSV files get their headers, and the command line its listings. */
#ifndef MODEL_RECORD_H
#define MODEL_RECORD_H

#include "base/value.h"

#include <stddef.h>

enum record {
	RECORD_BOAT,
	RECORD_ENGINE,
	RECORD_METER,
	RECORD_FITTING,
	RECORD_PART,
	RECORD_STAY,
	RECORD_SEASON,
	RECORD_OUTING,
	RECORD_HAPPENING,
	RECORD_TASK,
	RECORD_LIMIT,
	RECORD_SERVICE,
	RECORD_MEASUREMENT,
	RECORD_BOUND,
	RECORD_RATE,
	RECORD_PLACE,
	RECORD_CLIMATE,
	RECORD_FINDING,
	RECORD_WAIVER,
	RECORD_SKIP,
	RECORD_HEEDED,
	RECORD_SHIPPED,
	RECORD_FIGURE,
	RECORD_JOB,
	RECORD_AIM,
	RECORD_STEP,
	RECORD_REMOVAL,
	RECORD_SHEET,
	RECORD_SHEETLINE,
	RECORD_ITEM,
	RECORD_NUMBER,
	RECORD_LOT,
	RECORD_TAKEN,
	RECORD_NEED,
	RECORD_PHOTO,
	RECORD_COUNT
};

enum field_kind { /* C type; file and column; CSV */
		  FIELD_KEY, /* gint64; INTEGER; sixteen letters, so that no spreadsheet takes it for a number */
		  FIELD_REF, /* gint64 key of another record; INTEGER; that record's name, or its letters */
		  FIELD_DATE, /* gint64 day number; INTEGER; ISO 8601 */
		  FIELD_YEARDAY, /* gint64 month * 100 + day; INTEGER; 04-15 */
		  FIELD_HOURS, /* gint64 seconds; INTEGER; decimal hours */
		  FIELD_COUNT, /* gint64; INTEGER; a whole number */
		  FIELD_CENTS, /* gint64; INTEGER; 12.50 */
		  FIELD_YES, /* gint64 0 or 1; INTEGER; yes, no */
		  FIELD_REAL, /* double, NAN unknown; REAL; decimal */
		  FIELD_WORD, /* gint64 index into words; TEXT; the word */
		  FIELD_TEXT, /* char *, owned, NULL unknown; TEXT; text */
};
/* Unknown is NONE in every gint64, NAN in a double, NULL in a text; NULL in the file; an empty field in CSV. */

struct words;

struct field {
	const char *name; /* CSV header */
	enum field_kind kind;
	size_t offset; /* in the record's struct */
	gboolean required;
	enum record ref; /* FIELD_REF: of what */
	const struct words *words; /* FIELD_WORD */
};

struct record_type {
	const char *name; /* table in the file: "outing" */
	const char *plural; /* CSV file and import word: "outings" */
	const struct field *field;
	int n_fields;
	size_t size; /* of the struct */
};

const struct record_type *record_type(enum record r);

/* Set every field to unknown (no freeing); free the texts and set to unknown; compare every field. */
void record_init(enum record r, void *record);
void record_clear(enum record r, void *record);
gboolean record_equal(enum record r, const void *a, const void *b);
/* The field of that CSV name; NULL when there is none. */
const struct field *record_field(enum record r, const char *name);

/* Access by field, for code that treats all records alike. */
gint64 *field_int(const struct field *f, void *record);
char **field_text(const struct field *f, void *record);
double *field_real(const struct field *f, void *record);

#endif
