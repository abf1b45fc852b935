/* The terminal: cells out, keys in.  Everything that knows of curses is behind this header, in term_curses.c. */
#ifndef TUI_TERM_H
#define TUI_TERM_H

#include "tui/grid.h"
#include "tui/keys.h"

struct terminal;

/* Takes the terminal over; only one at a time.  NULL and *err (ERR_USE) when it is none that can show screens: no
 * terminal, TERM unset, unknown or without a movable cursor.  Colours by what it can do and NO_COLOR.  From here on
 * a crash, too, gives the terminal back as it was. */
struct terminal *term_open(gboolean mouse, GError **err);
void term_close(struct terminal *t);	/* NULL is fine */

void term_size(const struct terminal *t, int *h, int *w);
gboolean term_ascii(const struct terminal *t);	/* the locale's letters are no UTF-8 */
/* Show the cells, of the terminal's size; only what changed is sent. */
void term_show(struct terminal *t, const struct grid *g);
void term_repaint(struct terminal *t);	/* the next term_show sends everything */
void term_mouse(struct terminal *t, gboolean on);

/* The next key, or after ms K_NONE.  K_HANGUP comes once for SIGHUP, SIGTERM or SIGINT, and for a terminal that is gone;
 * K_RESIZE also when the program was stopped from elsewhere and goes on. */
struct key_event term_key(struct terminal *t, int ms);
/* The same without waiting, for work that can be stopped: TRUE when Esc or ^C was typed; other keys are kept. */
gboolean term_stopped(struct terminal *t);

/* Give the terminal back, stop as ^Z does, take it again on return. */
void term_suspend(struct terminal *t);
/* Text in $VISUAL, $EDITOR or vi, from a private file.  The new text, the caller's; NULL and *err when the editor failed:
 * nothing changed. */
char *term_edit(struct terminal *t, const char *text, GError **err);

#endif
