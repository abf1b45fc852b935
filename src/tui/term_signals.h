/* Signals while the screens hold the terminal.  What a handler must reach is kept in term_signals.c: the one place in the
 * program with variables at file scope that change, for a handler is given nothing but the signal's number. */
#ifndef TUI_TERM_SIGNALS_H
#define TUI_TERM_SIGNALS_H

#include <glib.h>

/* Take the signals over, the terminal's settings being those to come back to.  From here on a crash writes bytes, which are
 * copied, puts the settings back, and then ends the program as it would have. */
void signals_catch(const char *bytes, gsize n);
void signals_leave(void);
/* The settings that a crash puts back: those of now. */
void signals_keep_settings(void);

enum signals_told {
	TOLD_NOTHING,
	TOLD_END,	/* SIGHUP, SIGTERM or SIGINT: the program is to end */
	TOLD_STOP,	/* SIGTSTP from elsewhere: do as for ^Z */
	TOLD_RETURN,	/* stopped and gone on unasked: the terminal may look like anything */
};
/* What came since the last time; it is told once. */
enum signals_told signals_told(void);
gboolean signals_terminal_gone(void);	/* which may come without a signal */
/* Stop with the whole job, as ^Z does; returns when the job goes on.  A process that no shell watches goes on at once. */
void signals_stop(void);
/* While on, a SIGTSTP waits. */
void signals_hold_stop(gboolean on);
/* Stopping and going on, up to here, were somebody else's. */
void signals_forget_stops(void);

#endif
