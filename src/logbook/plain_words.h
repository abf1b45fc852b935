/* A sentence in plain words, taken apart so that alternatives of a table can be looked for in it; knowledge.h says how. */
#ifndef LOGBOOK_PLAIN_WORDS_H
#define LOGBOOK_PLAIN_WORDS_H

#include <glib.h>

struct plain_word {
	char *stem;
	gboolean denied; /* "no water": it is said not to be so */
};

/* An array of struct plain_word that clears itself. */
GArray *plain_words(const char *text);
/* Whether an alternative, "left-over", stands in it; ">12y" is met by a year or an age beyond that, in the year given. */
gboolean plain_has(const GArray *words, const char *alternative, gint64 year);

#endif
