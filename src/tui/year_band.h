/* A year drawn: where the boat lay and in what water, month by month, and what its days count as for each thing that
 * wears. */
#ifndef TUI_YEAR_BAND_H
#define TUI_YEAR_BAND_H

#include "engine/timeline.h"
#include "tui/grid.h"

struct year_band {
	const struct timeline *life;
	gint64 from;	/* nothing is on record before that day */
	gint64 today;
	int year;
};

/* The months, the band, its letters and what they mean, and below it the wear and where it lay, as far as there is room. */
void year_draw(const struct year_band *b, const struct area *a);

/* Where it lay and what the days [from, to) count as for wear, a line each, for a page. */
void year_add_days(GString *out, const struct timeline *life, gint64 from, gint64 to);

#endif
