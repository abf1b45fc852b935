/* What a happening asks for, and what to beware of meanwhile: for its view and its form. */
#ifndef TUI_HAPPENING_WORDS_H
#define TUI_HAPPENING_WORDS_H

#include "logbook/due.h"

/* Cautions and whom to defer to, a paragraph; the caller's.  NULL: none is known. */
char *happening_caution(struct book *b, gint64 kind);
/* The tasks, a line each, and whether they are still to do. */
void happening_add_tasks(GString *out, const struct due_list *l, const struct happening *h);

#endif
