/* Text as it is shown: UTF-8, display columns, harmless control bytes, wrapping. */
#ifndef BASE_TEXT_H
#define BASE_TEXT_H

#include <glib.h>

/* Text safe for a terminal: control characters, ESC, DEL, C1 and bidi controls as \x1b or <U+202E>, bytes
 * that are not UTF-8 as \xff; newline and tab become a space unless keep_lines.  The caller frees it. */
char *text_harmless(const char *text, gboolean keep_lines);

/* Text as an error message names it: harmless, on one line, in double quotes, cut after 40 columns by "...".
 * Always short and valid UTF-8, whatever was given.  The caller frees it. */
char *text_quoted(const char *text);

/* Display columns of UTF-8 text: combining marks 0, wide characters 2; a control character or a byte that
 * is not UTF-8 counts 1. */
int text_width(const char *text);

/* The longest start of text that fits into columns, padded with spaces to exactly columns; when cut, the last
 * column holds "~".  A control character or a byte that is not UTF-8 becomes "?".  The caller frees it. */
char *text_fit(const char *text, int columns);
/* Append text made harmless, and fitted so. */
void text_add_fit(GString *out, const char *text, int columns);

/* Digits of a whole number into buf, not ended; returns how many. */
#define INT_TEXT 20
int int_digits(gint64 value, char buf[INT_TEXT]);
void text_add_int(GString *out, gint64 n);	/* append them */

/* Bytes of the longest start of text that fits into columns; of the first character, where not even that does. */
gsize text_fits(const char *text, int columns);

/* Append text to out broken at spaces so that no line passes columns; each line but the first begins with
 * indent spaces.  What already stands on out's last line counts.  A newline in text breaks too.  A word wider
 * than the line stands alone.  Ends without a newline. */
void text_wrap(GString *out, const char *text, int columns, int indent);

/* The nearest of n words by edit distance, case apart, two letters exchanged being one edit: at most 2 edits,
 * or a third of the length, and 1 in a word of up to three letters.  NULL when none is near; of equals the
 * first. */
const char *text_nearest(const char *word, const char *const *words, int n);

/* The edits from one word to the other, counted as there. */
int text_edits(const char *a, const char *b);

/* Whether two texts are of the same words, case and blanks apart. */
gboolean text_same_words(const char *a, const char *b);

#endif
