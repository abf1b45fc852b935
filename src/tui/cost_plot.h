/* What it cost, drawn: a row each with a bar of work and parts; of engine hours a bar of what one came to. */
#ifndef TUI_COST_PLOT_H
#define TUI_COST_PLOT_H

#include "logbook/stores_cost.h"
#include "tui/grid.h"

struct cost_row {
	enum cost_by by;	/* never COST_YEAR */
	const struct cost_line *line;	/* of the sums that it was made of */
	char *name;	/* "2026 EUR", "Drive unit bellows EUR"; owned */
	gint64 most;	/* the most of a row of its kind and currency, to which bars are drawn; at least 1 */
};

/* Rows of what was summed by season and by fitting: an array of struct cost_row that clears itself. */
GArray *cost_rows(struct book *b, const struct costs *season, const struct costs *fitting);
/* Above the rows of a kind: "BY SEASON". */
const char *cost_heading(enum cost_by by);
gint64 cost_of_row(const struct cost_row *r);	/* cents, for which its bar stands */
void draw_cost_row(const struct cost_row *r, const struct area *line, enum style style);
/* What the two signs of a bar mean, and what the sums beside it are, over rows of the same width. */
void draw_cost_titles(const struct area *line);

#endif
