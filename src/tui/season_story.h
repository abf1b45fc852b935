/* All that is known of one line of a season's list; and the list that is on the screen. */
#ifndef TUI_SEASON_STORY_H
#define TUI_SEASON_STORY_H

#include "logbook/season_list.h"

struct app;

/* What to do, where, and what to beware of; what must come off first and what to do while there; what to have at hand and what
 * proves it; what was said; why it is due: paragraphs, a line each.  The caller frees it. */
char *season_story(struct book *b, const struct season_work *w, const struct season_line *line);

/* The topmost of the views that are open; NULL: none is. */
const struct season_work *season_shown(const struct app *a);

#endif
