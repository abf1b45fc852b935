/* Cautions read before a piece of work: shown once a day for each work, and put on record. */
#ifndef LOGBOOK_HEED_H
#define LOGBOOK_HEED_H

#include "logbook/book.h"

/* work: a season list's word, a task's or a job's name, or a happening's word.  words: of cautions, separated by blanks; NULL:
 * none. */

/* Those of the words that nobody has read today before that work, each once, in the order given: the caller's, "" none.  NULL
 * and *err when the logbook can't be read. */
char *book_unheeded(struct book *b, gint64 boat, const char *work, const char *words, GError **err);
/* Put on record that they were read; what was on record today already is not written again. */
gboolean book_heed(struct book *b, gint64 boat, const char *work, const char *words, GError **err);

#endif
