/* The screens on a terminal. */
#ifndef TUI_TUI_H
#define TUI_TUI_H

#include "tui/app.h"

/* Until the owner quits.  FALSE and *err: the logbook can't be opened, or the terminal shows no screens (ERR_USE). */
gboolean tui_run(const struct app_start *start, GError **err);

#endif
