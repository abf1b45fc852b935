/* Running hours drawn: a row of months for each year, and a bar a year.  An array of struct month_sum, oldest first. */
#ifndef TUI_HOURS_PLOT_H
#define TUI_HOURS_PLOT_H

#include "logbook/page.h"
#include "tui/grid.h"

/* The names of the months, and below them this year's and those of the years before it, each with its hours. */
void draw_hours_by_month(const GArray *months, gint64 today, const struct area *a, int years);
/* Newest first, as many as there is room for: hours, outings and a bar. */
void draw_hours_by_year(const GArray *months, gint64 today, const struct area *a);

#endif
