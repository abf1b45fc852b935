/* A season's list as a person reads it, and for paper. */
#ifndef CLI_SEASON_TEXT_H
#define CLI_SEASON_TEXT_H

#include "cli/cli.h"
#include "logbook/season_list.h"

enum { SHEET_LEAST = 40, SHEET_MOST = 200, SHEET_USUAL = 72 }; /* columns of a page */
enum { SHEET_INDENT = 9 }; /* what is indented so far belongs to the line before it */

/* By sections, with numbers and what was done; open_only: what is still open, its numbers kept. */
void season_text(const struct cli *c, struct book *b, const struct boat *boat, const struct season_work *w, gboolean open_only);
/* One line of it. */
void season_say_line(const struct cli *c, const struct season_work *w, guint i);
/* For the ramp: cautions first, boxes to tick, lines for what is read, and what to have at hand; the caller's. */
char *season_sheet(struct book *b, const struct boat *boat, const struct season_work *w, int columns);

#endif
