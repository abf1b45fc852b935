/* What `plan` does with the shipped catalogues. */
#ifndef CLI_PLAN_H
#define CLI_PLAN_H

#include "cli/cli.h"

/* plan check [FOLDER]: whether the catalogues hold together; an exit code.  Without a FOLDER the shipped ones. */
int plan_check(const struct cli *c, const char *folder, GError **err);

/* plan --news, --take, --leave: what a newer catalogue changes for the boat. */
gboolean plan_news_asked(const struct args *a);
gboolean plan_news_looks(const struct args *a); /* and nothing is changed */
gboolean plan_news(const struct cli *c, struct book *b, struct boat *boat, const struct args *a, GError **err);
/* A line about it at the end of the plan, when a newer edition is there. */
void plan_hint_news(const struct cli *c, const struct boat *boat);

#endif
