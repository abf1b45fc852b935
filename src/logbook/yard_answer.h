/* What a yard wrote on one line of the sheet. */
#ifndef LOGBOOK_YARD_ANSWER_H
#define LOGBOOK_YARD_ANSWER_H

#include "base/value.h"

#include <glib.h>

enum yard_verdict { SAYS_DONE, SAYS_RENEWED, SAYS_GOOD, SAYS_BAD, SAYS_TOPPED_UP, SAYS_NOT_DONE, YARD_VERDICTS };

enum yard_cell {
	ANSWER_RESULT, ANSWER_HOURS, ANSWER_COST, ANSWER_NOTES, ANSWER_DATE, ANSWER_INITIALS, ANSWER_METER,
	ANSWER_CURRENCY, /* of the sheet */
	ANSWER_CELLS
};

struct yard_answer {
	enum yard_verdict verdict;
	char *result; /* as typed */
	char *seen; /* what follows the word; NULL: nothing */
	gint64 hours, cost; /* of labour, seconds; cents; NONE: not said */
	gint64 meter; /* what the engine's showed, seconds; NONE: not said */
	char currency[4]; /* "" not said */
	char *notes, *initials; /* NULL: none */
	gint64 date; /* NONE: not said */
};
void yard_answer_clear(struct yard_answer *a);

/* Whether the yard wrote anything; the currency is the owner's. */
gboolean yard_answered(const char *const cell[ANSWER_CELLS]);
/* Texts of cells, NULL empty, a spreadsheet's guard on them or not.  FALSE, with *err naming the column, for what is not
 * understood. */
gboolean yard_answer_read(const char *const cell[ANSWER_CELLS], gint64 today, struct yard_answer *a, GError **err);

/* SHA-256 of what it says, in hexadecimal: the same however a spreadsheet wrote dates and decimals.  The caller's. */
char *yard_answer_digest(const struct yard_answer *a);
const char *yard_verdict_words(enum yard_verdict v);
/* "replaced; 2.5 h; see the photo", with more or not; the caller's. */
enum { WITH_COST = 1 << 0, WITH_METER = 1 << 1 };
char *yard_answer_words(const struct yard_answer *a, unsigned with);

#endif
