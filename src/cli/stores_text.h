/* The stores in words. */
#ifndef CLI_STORES_TEXT_H
#define CLI_STORES_TEXT_H

#include "cli/cli.h"
#include "logbook/service.h"
#include "logbook/stores_cost.h"
#include "logbook/stores_want.h"

/* stores_find(), and a word when the number met is superseded. */
const struct item *stores_named(const struct cli *c, const struct stores *s, const char *words, GError **err);

/* All that --used says, into the form; used is the form's as long as it is there. */
gboolean stores_used(const struct cli *c, struct book *b, const struct args *a, struct service_form *f, GArray *used, GError **err);

/* What is on hand, an item after the other; one item's story; what is wanted; what it cost. */
void stores_list_text(const struct cli *c, const struct stores *s);
void stores_story_text(const struct cli *c, struct book *b, const struct stores *s, const struct item *i);
void stores_want_text(const struct cli *c, const char *boat, const struct wants *w);
void stores_cost_text(const struct cli *c, struct book *b, const char *boat, const struct costs *costs);

#endif
