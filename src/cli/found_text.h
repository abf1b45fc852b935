/* Findings as found prints them. */
#ifndef CLI_FOUND_TEXT_H
#define CLI_FOUND_TEXT_H

#include "cli/cli.h"
#include "logbook/finding.h"

/* One finding whole. */
gboolean found_show(const struct cli *c, struct book *b, const struct finding *f, GError **err);
/* --list, with --all, --since, --csv, --json. */
gboolean found_list(const struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err);
/* Record a finding from the command's words and options, and say what follows from it. */
gboolean found_record(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err);

#endif
