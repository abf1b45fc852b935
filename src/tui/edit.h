/* A line of text as it is typed: by whole characters with their accents, in display columns.  No terminal. */
#ifndef TUI_EDIT_H
#define TUI_EDIT_H

#include "tui/grid.h"
#include "tui/keys.h"

/* Most bytes that a line takes: more is refused, and nothing is lost. */
enum { EDIT_MOST = 4000 };

struct edit {
	GString *text;	/* UTF-8 */
	gsize at;	/* byte offset of the cursor, at the beginning of a character */
	GPtrArray *undone;	/* earlier texts, of this field alone; inside */
	char *cut;	/* what ^K, ^U and ^W took last */
	gboolean typing;	/* the last key put a character in: undo takes the run back at once */
};

void edit_init(struct edit *e, const char *text);	/* the cursor at its end */
void edit_clear(struct edit *e);
void edit_set(struct edit *e, const char *text);	/* can be undone in the field */
const char *edit_text(const struct edit *e);	/* borrowed until the next key */

/* Take a key: characters, pasted ones too (line ends and tabs become spaces), Left, Right, words, Home, End, ^A ^E ^B ^F,
 * Backspace, Delete, ^D, ^K to the end, ^U to the beginning, ^W a word back, ^Y put back, ^_ undo in the field.
 * FALSE: not its key. */
gboolean edit_key(struct edit *e, const struct key_event *k);

/* Draw into w columns; where it is typed in, as a field, scrolled sideways so that the hardware cursor shows. */
void edit_draw(const struct edit *e, const struct area *a, int y, int x, int w, gboolean typed);

#endif
