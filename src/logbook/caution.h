/* Cautions: what can hurt at a piece of work, and whom to defer to, out of the shipped cautions.csv.  The program informs;
 * it does not certify. */
#ifndef LOGBOOK_CAUTION_H
#define LOGBOOK_CAUTION_H

#include "logbook/book.h"

struct caution {
	const char *word; /* "fuel-vapour", as tasks have it */
	const char *sentence; /* for a screen, and for paper */
	const char *text; /* the whole of it */
	const char *authority; /* what comes before it: the maker's manual, sections of law, a licensed trade */
	const char *standing, *source; /* words_standing */
};

struct cautions;

/* Of a folder of catalogues.  NULL, and *err "cautions.csv:12: what is wrong". */
struct cautions *cautions_read(const char *folder, GError **err);
void cautions_free(struct cautions *c); /* NULL: nothing */
/* Of the book's folder, read when first asked for; borrowed as long as the book is open. */
const struct cautions *book_cautions(struct book *b, GError **err);
const struct caution *cautions_find(const struct cautions *c, const char *word); /* NULL: there is none */

/* The cautions of words separated by blanks, each once, in the order of the words: an array of const struct caution *,
 * borrowed; the array is the caller's.  Words that are none of the file come back in *unknown, joined by ", ", the
 * caller's, or NULL.  NULL and *err when the file is wrong. */
GPtrArray *caution_list(struct book *b, const char *words, char **unknown, GError **err);

/* One paragraph: a sentence each, and whom to defer to; the caller's.  NULL: no words.  What cannot be told, an unknown
 * word or a wrong file, is named in it: a caution is never left out without a word. */
char *caution_words(struct book *b, const char *words);
/* For paper, a line each: every sentence, and under it what comes first.  As above otherwise. */
char *caution_block(struct book *b, const char *words);

#endif
