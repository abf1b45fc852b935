/* Readings of one value over time, drawn into cells: a point each, the limits as lines, numbers at the left. */
#ifndef TUI_READING_PLOT_H
#define TUI_READING_PLOT_H

#include "logbook/measure.h"
#include "tui/grid.h"

enum { PLOT_ROWS = 7, PLOT_MOST_W = 72 };

struct plot_point {
	gint64 date;
	double value;	/* in the kind's unit, never NAN */
};

/* An array of struct plot_point, oldest first.  FALSE: there is nothing to see in them, being fewer than two days. */
gboolean plot_is_worth_it(const GArray *points);
/* PLOT_ROWS rows of the area: values, and below them the first day and the last.  Of a limit that is passed by lying at it
 * and one that is passed beyond it the line is the same. */
void plot_draw(const struct area *a, const GArray *points, const struct measure_limits *l);

#endif
