/* A list with more about the selected row beside it, where there is the width, or else below it. */
#ifndef TUI_PANE_H
#define TUI_PANE_H

#include "tui/grid.h"

/* Below: so many rows, from a height of PANE_BELOW_H on. */
enum { PANE_BESIDE_W = 120, PANE_BELOW_H = 17 };

struct panes {
	struct area list, pane;	/* the pane's height is 0 where there is no room for one */
	struct area rule;	/* the row between them; without height: the pane stands beside */
};
/* list_w: of the list, where they stand side by side. */
struct panes panes_of(const struct area *a, int list_w, int below);
/* A list alone, below a line of head; data is not looked at: it is a view's parts. */
struct panes panes_headed(const void *data, const struct area *a);
/* The rule between them. */
void panes_rule(const struct panes *p);
/* Paragraphs, a line each, as far as there is room; what is cut is said. */
void panes_text(const struct panes *p, const char *text);
void panes_text_by(const struct panes *p, const char *text, const char *key);	/* where it is not Enter that shows all of it */

#endif
