/* How hours follow from what a meter showed. */
#ifndef MODEL_METER_H
#define MODEL_METER_H

#include "base/value.h"

/* One row of a meter's log, in the order of day and entry. */
struct meter_row {
	gint64 id, date;
	gint64 hours; /* seconds; worked out where there is a reading */
	gint64 reading; /* seconds; NONE: the hours were typed */
};

/* Give every row with a reading the seconds between it and the reading before (at first start), less the hours typed
 * in between; never below 0.  Returns the first row whose reading is less than what came before it, -1 when none is. */
int meter_derive(struct meter_row *row, int n, gint64 start);

/* What the meter shows at the end of a day: the last reading up to it and the hours typed since. */
gint64 meter_expected(const struct meter_row *row, int n, gint64 start, gint64 day);

#endif
