/* Rows of which one is selected: headings are passed over, a filter leaves some out.  Scrolling follows from the selection
 * and the height alone. */
#ifndef TUI_LIST_H
#define TUI_LIST_H

#include "base/value.h"
#include "tui/grid.h"
#include "tui/keys.h"

struct row {
	gboolean heading;	/* can't be selected */
	gboolean hidden;	/* by the filter; inside */
	int index;	/* of what it shows, in the view's data; -1 */
	gint64 key;	/* by which it is found again when the list is read anew */
	char *text;	/* a heading's words; what the filter looks at; owned */
};

struct list {
	GArray *rows;	/* struct row */
	int at;	/* the row selected; -1: there is none to select */
	char *filter;	/* NULL: everything */
	gint64 was;	/* key of the row that was selected; inside */
	GArray *before;	/* gint64: the keys that there were; inside */
};

void list_init(struct list *l);
void list_clear(struct list *l);
/* Take all rows out, to add them anew; list_settle then selects again what was selected, or its neighbour. */
void list_begin(struct list *l);
/* Takes text over. */
void list_add(struct list *l, gboolean heading, int index, gint64 key, char *text);
void list_settle(struct list *l);
/* The same; but when one row came to those that there were, it is selected: what was just recorded or brought back. */
void list_settle_new(struct list *l);
/* Only rows whose text holds all words of the filter, case and accents apart, and the headings above them; NULL or "":
 * all. */
void list_filter(struct list *l, const char *filter);

const struct row *list_row(const struct list *l);	/* the selected one; NULL */
void list_select(struct list *l, gint64 key);	/* when it is there */
/* ACT_UP to ACT_LAST; page is how many rows show.  FALSE: no move, or another act. */
gboolean list_act(struct list *l, enum act act, int page);
/* A click on row y of an area of that height selects; TRUE when something was there. */
gboolean list_click(struct list *l, int y, int h);

/* Draw the rows that show; draw_row draws one, its area one line high.  The selected line gets "> " before it, the cursor
 * and STYLE_SELECTED: columns 0 and 1 are the list's.  empty: a sentence for a list without rows. */
typedef void list_draw_row(const void *data, const struct row *row, const struct area *line, gboolean selected);
void list_draw(const struct list *l, const struct area *a, list_draw_row *draw_row, const void *data, const char *empty);

#endif
