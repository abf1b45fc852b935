/* Plain text on pages of paper: lines in a monospaced letter, blocks that stay together, "page 1 of 2" at the foot. */
#ifndef BASE_PAPER_H
#define BASE_PAPER_H

#include <glib.h>

enum paper_size { PAPER_A4, PAPER_LETTER };
/* "A4" or "Letter", case apart; ERR_INPUT. */
gboolean paper_size_parse(const char *text, enum paper_size *size, GError **err);

struct paper {
	enum paper_size size;
	int columns, rows; /* of a page; the last row is its foot */
	char *title; /* stands at the foot */
	GPtrArray *pages; /* GPtrArray of char *, the lines of a page, none longer than columns */
};

/* At six lines an inch: 64 rows on A4, 58 on Letter. */
struct paper *paper_new(enum paper_size size, int columns, const char *title);
void paper_free(struct paper *p); /* NULL: nothing */

/* Add lines, separated by newlines: on one page, when they fit on one.  Blank lines are left out at its top, and a word wider
 * than the paper is broken. */
void paper_add(struct paper *p, const char *block);
/* A whole text: a line that is indented by `indent` or more stays with the one before it. */
void paper_add_text(struct paper *p, const char *text, int indent);
/* Put the feet under the pages; nothing is added after that. */
void paper_end(struct paper *p);
/* The pages, with a form feed before each but the first; the caller's. */
char *paper_text(const struct paper *p);

#endif
