/* Between the files of the command stores. */
#ifndef CLI_CMD_STORES_H
#define CLI_CMD_STORES_H

#include "cli/cli.h"
#include "logbook/stores.h"

/* What is typed behind a word of the command is recorded; words counts from the one after it. */
typedef gboolean stores_act(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err);

stores_act stores_add, stores_set, stores_number, stores_bought, stores_ordered, stores_here, stores_took, stores_counted,
	stores_need;

#endif
