/* Whether a wrench of one system of units does for a hexagon of the other.
 *
 * A hexagon s across its flats, in an opening w, turns by 30 deg - arccos(cos 30 deg * w / s) before its corners bite.
 * All in mm. */
#ifndef ENGINE_WRENCH_H
#define ENGINE_WRENCH_H

#include <glib.h>

/* Of a head across its flats, or of a wrench's opening. */
struct hex_limits {
	double nominal, least, most;
};

/* The hexagons of the table: inch sizes to ASME B18.2.1 and B18.2.2, metric ones to ISO 272 with the tolerances of ISO
 * 4759-1.  What tables of the trade repeat was used, and memory: the standards themselves were not read. */
gboolean wrench_inch_head(double mm, struct hex_limits *head); /* FALSE: no such size */
struct hex_limits wrench_metric_head(double mm);
/* ASME B18.2.2's rule: from 1.005 w + .001 in, .005 w + .004 in wide. */
struct hex_limits wrench_inch_opening(double mm);
/* Nominal and .04 to .24 mm, above 19 mm to .36 mm: ISO 691 from memory, not checked. */
struct hex_limits wrench_metric_opening(double mm);

enum wrench_fit {
	WRENCH_FITS, /* every wrench goes onto every head, and turns hardly more than the right one */
	WRENCH_BINDS, /* a wrench at its smallest does not go onto a head at its largest, or a painted one */
	WRENCH_LOOSE, /* goes on, and turns too far before it bites: corners get rounded */
	WRENCH_REFUSES /* not even a wrench at its largest goes onto a head at its largest */
};

struct wrench_play {
	enum wrench_fit fit;
	double degrees; /* free turn of the largest wrench on the smallest head; 0 when it refuses */
};
/* Loose is ours: by more than 1.25 % of the size, where a right tool's play is about doubled. */
struct wrench_play wrench_play(const struct hex_limits *head, const struct hex_limits *opening);
double wrench_turn(double across, double opening); /* degrees; 0 when the opening is no larger, 30 when it slips round */

enum wrench_verdict {
	WRENCH_EITHER, /* for each other */
	WRENCH_INCH_DOES, /* the inch wrench on the metric head only */
	WRENCH_METRIC_DOES, /* the metric wrench on the inch head only */
	WRENCH_INCH_LIGHT, /* so, for what is hardly tight */
	WRENCH_METRIC_LIGHT,
	WRENCH_NEITHER
};

struct wrench_pair {
	double inch, metric; /* nominal sizes */
	double difference; /* metric less inch */
	struct wrench_play metric_on_inch, inch_on_metric;
	enum wrench_verdict verdict;
};
/* What binds is taken for a fit where the sizes differ by less than half a percent.  Nothing of an inch and more is
 * lightly tightened, and nothing that is out by 3 %.  FALSE: no such inch size. */
gboolean wrench_judge(double inch, double metric, struct wrench_pair *pair);

#endif
