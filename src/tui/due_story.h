/* All that is known of one line of the due list. */
#ifndef TUI_DUE_STORY_H
#define TUI_DUE_STORY_H

#include "logbook/due.h"

/* Why it is due, what else is worth doing while it is open, what proves it, and what to beware of: paragraphs, a line
 * each.  The caller frees it. */
char *due_story(struct book *b, const struct due_list *due, const struct due_line *l);

#endif
