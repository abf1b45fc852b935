#include "model/meter.h"

int
meter_derive(struct meter_row *row, int n, gint64 start)
{
	gint64 shown = start; /* after the row in hand */
	int backwards = -1;

	for (int i = 0; i < n; i++) {
		if (row[i].reading == NONE) {
			shown += row[i].hours;
			continue;
		}
		if (row[i].reading < shown && backwards < 0)
			backwards = i;
		row[i].hours = MAX(row[i].reading - shown, 0);
		shown = row[i].reading;
	}
	return backwards;
}

gint64
meter_expected(const struct meter_row *row, int n, gint64 start, gint64 day)
{
	gint64 shown = start;

	for (int i = 0; i < n && row[i].date <= day; i++)
		shown = row[i].reading == NONE ? shown + row[i].hours : row[i].reading;
	return shown;
}
