/* Wrenches of inch and metric sizes that do for each other, and the heads of metric threads: what the catalogue says,
 * with the play that engine/wrench.h works out. */
#ifndef LOGBOOK_WRENCH_H
#define LOGBOOK_WRENCH_H

#include "engine/wrench.h"
#include "model/words.h"

struct wrench_row {
	const char *inch, *metric; /* as written: "5/8", "16" */
	struct wrench_pair pair;
	const char *verdict, *source;
	gint64 standing; /* words_standing */
};

/* Across flats of a bolt's head by the standards it can be made to. */
struct head_row {
	const char *thread; /* "M10" */
	const char *iso, *din, *jis; /* mm */
	const char *source;
	gint64 standing;
};

struct wrench_book;
/* catalogue: the folder.  NULL and *err, "wrenches.csv:12: what is wrong"; so too when the table says of a wrench that it
 * fits or not, and the arithmetic says otherwise.  Rows are borrowed of it. */
struct wrench_book *wrench_book_read(const char *catalogue, GError **err);
void wrench_book_free(struct wrench_book *w); /* NULL: nothing */
const GArray *wrench_rows(const struct wrench_book *w); /* struct wrench_row, smallest first */
const GArray *wrench_heads(const struct wrench_book *w); /* struct head_row */

/* What someone holds or wants to turn: "5/8", "5/8 in", "16 mm", "M10".  A bare whole number is refused. */
struct wrench_size {
	double mm; /* NAN: a thread */
	gboolean metric; /* as typed */
	const struct head_row *thread;
};
/* ERR_INPUT for what is no size, ERR_NOT_FOUND for a thread that the table does not have. */
gboolean wrench_size_parse(const struct wrench_book *w, const char *text, struct wrench_size *size, GError **err);
/* Whether a row is about that size. */
gboolean wrench_is_of(const struct wrench_row *row, const struct wrench_size *size);

/* "fits, turns up to 5 deg", "will not go on".  The caller's. */
char *wrench_play_words(const struct wrench_play *play);
/* "fits", "binds", "loose", "no". */
const char *wrench_fit_word(enum wrench_fit fit);

/* For other programs; size NULL: all of them.  The caller's. */
char *wrench_csv(const struct wrench_book *w, const struct wrench_size *size);
char *wrench_json(const struct wrench_book *w, const struct wrench_size *size);
/* The heads; only NULL: all of them. */
char *heads_csv(const struct wrench_book *w, const struct head_row *only);
char *heads_json(const struct wrench_book *w, const struct head_row *only);

#endif
