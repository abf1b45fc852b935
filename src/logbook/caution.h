/* Cautions: what can hurt at a piece of work, and whom to defer to. */
#ifndef LOGBOOK_CAUTION_H
#define LOGBOOK_CAUTION_H

#include <glib.h>

/* For all words of a task's cautions, separated by blanks: a sentence each and whom to defer to; the caller's.  NULL: there are
 * none. */
char *caution_words(const char *words);

#endif
