/* What the owner of a boat new to the log remembers of its past: the few questions that change most, out of the shipped
 * questions.csv. */
#ifndef LOGBOOK_KNOWN_H
#define LOGBOOK_KNOWN_H

#include "logbook/book.h"

struct known_question {
	gint64 task; /* of the boat; NONE: asked is a design */
	gint64 fitting; /* of which the design is asked; NONE */
	gboolean made; /* asked is the date made or printed; else when it was done */
	char *ask; /* "When was the engine oil last changed" */
};

/* Those that fit the boat's tasks and designs, a design only while nobody said it, in the order of the file: an array that
 * clears itself. */
GArray *book_questions(struct book *b, const struct boat *boat, GError **err);
/* Record what is known: "2019", "spring 2021", "2018..2019-06", from memory, so as an estimate; or one of the designs. */
gboolean book_known(struct book *b, const struct known_question *q, const char *when, GError **err);

#endif
