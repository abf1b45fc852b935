/* The season strip: the coming twelve months as one band, in season and out of it, today marked, and under it how much
 * falls due when. */
#ifndef TUI_DUE_STRIP_H
#define TUI_DUE_STRIP_H

#include "logbook/due.h"
#include "tui/grid.h"

enum { STRIP_MONTHS = 13, STRIP_ROWS = 3, STRIP_DAYS = STRIP_MONTHS * 31 };

struct strip {
	gint64 today, from;	/* from: the first of today's month */
	int begin[STRIP_MONTHS + 1];	/* of each month, in days after from */
	int month[STRIP_MONTHS];	/* 1 to 12 */
	int due[STRIP_MONTHS];	/* tasks to be done by a day of that month; what is past due counts in the first */
	guint8 in_season[STRIP_DAYS];
	gboolean afloat;	/* it lies afloat in season */
};

void strip_fill(struct strip *s, const struct boat *boat, const struct due_list *l, gint64 today);
/* The months, the band, the counts with the mark of today. */
void strip_draw(const struct strip *s, const struct area *a, int y);

#endif
