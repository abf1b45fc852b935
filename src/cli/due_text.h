/* The due list as a person reads it. */
#ifndef CLI_DUE_TEXT_H
#define CLI_DUE_TEXT_H

#include "cli/cli.h"
#include "logbook/due.h"

/* head: a line about the boat, printed first.  all: nothing is summed up in a count. */
void due_text(const struct cli *c, const char *head, const struct due_list *l, gboolean all);

/* Only what nobody knows, all of it: what to look at, and what proves that it was seen. */
void due_survey_text(const struct cli *c, const char *head, const struct due_list *l);

#endif
