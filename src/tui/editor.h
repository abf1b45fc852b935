/* The owner's editor. */
#ifndef TUI_EDITOR_H
#define TUI_EDITOR_H

#include <glib.h>

/* Text as $VISUAL, else $EDITOR, which may hold arguments, else vi, leaves it, on the terminal as it is and through a private
 * file; blanks at its end are cut off.  Meanwhile ^C and ^\ are the editor's alone, and ^Z stops both.  The caller's to free;
 * NULL and *err when the editor failed or wrote no text. */
char *editor_text(const char *text, GError **err);

#endif
