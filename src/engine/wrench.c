#include "engine/wrench.h"

#include <math.h>

#define INCH 25.4
#define LOOSE 1.0125
#define SAME 1.005
#define LIGHTLY 1.03
#define HEAVY 25.4 /* mm across flats */

/* Across flats in inches: the largest, and the smallest of bolt and nut, to three decimals as they are printed.
 * 1-1/16, 1-1/4 and 1-7/16 are of the heavy series. */
static const struct {
	double nominal, least;
} inch_heads[] = {
	{ 1. / 4, .244 },    { 5. / 16, .305 },   { 3. / 8, .367 },    { 7. / 16, .428 }, { 1. / 2, .489 },
	{ 9. / 16, .551 },   { 5. / 8, .612 },    { 11. / 16, .675 },  { 3. / 4, .736 },  { 13. / 16, .798 },
	{ 7. / 8, .861 },    { 15. / 16, .922 },  { 17. / 16, 1.031 }, { 9. / 8, 1.100 }, { 5. / 4, 1.212 },
	{ 21. / 16, 1.285 }, { 23. / 16, 1.394 }, { 3. / 2, 1.469 },
};

gboolean
wrench_inch_head(double mm, struct hex_limits *head)
{
	for (guint i = 0; i < G_N_ELEMENTS(inch_heads); i++) {
		double nominal = inch_heads[i].nominal * INCH;

		if (fabs(nominal - mm) > 1e-6)
			continue;
		*head = (struct hex_limits){ nominal, inch_heads[i].least * INCH, nominal };
		return TRUE;
	}
	return FALSE;
}

/* h13 up to 32 mm, h14 above, as for bolts of grades A and B. */
struct hex_limits
wrench_metric_head(double mm)
{
	static const struct {
		double up_to, below;
	} tolerance[] = { { 6, .18 }, { 10, .22 }, { 18, .27 }, { 30, .33 }, { 32, .39 }, { 50, .62 }, { 80, .74 } };
	guint i = 0;

	while (i + 1 < G_N_ELEMENTS(tolerance) && mm > tolerance[i].up_to)
		i++;
	return (struct hex_limits){ mm, mm - tolerance[i].below, mm };
}

struct hex_limits
wrench_inch_opening(double mm)
{
	double least = 1.005 * mm + .001 * INCH;

	return (struct hex_limits){ mm, least, least + .005 * mm + .004 * INCH };
}

struct hex_limits
wrench_metric_opening(double mm)
{
	return (struct hex_limits){ mm, mm + .04, mm + (mm > 19 ? .36 : .24) };
}

double
wrench_turn(double across, double opening)
{
	double flat = cos(G_PI / 6) * opening / across;

	if (opening <= across)
		return 0;
	return flat >= 1 ? 30 : 30 - acos(flat) * 180 / G_PI;
}

struct wrench_play
wrench_play(const struct hex_limits *head, const struct hex_limits *opening)
{
	struct wrench_play p = { WRENCH_FITS, wrench_turn(head->least, opening->most) };

	if (opening->most < head->most)
		p = (struct wrench_play){ WRENCH_REFUSES, 0 };
	else if (opening->least < head->most)
		p.fit = WRENCH_BINDS;
	else if (opening->nominal > LOOSE * head->nominal)
		p.fit = WRENCH_LOOSE;
	return p;
}

static enum wrench_verdict
verdict(const struct wrench_pair *p)
{
	enum wrench_fit m = p->metric_on_inch.fit, i = p->inch_on_metric.fit;
	double smaller = fmin(p->inch, p->metric), larger = fmax(p->inch, p->metric);
	gboolean binds_little = larger < SAME * smaller, light = larger < LIGHTLY * smaller && smaller < HEAVY;

	if ((m == WRENCH_FITS || (m == WRENCH_BINDS && binds_little)) && (i == WRENCH_FITS || (i == WRENCH_BINDS && binds_little)))
		return WRENCH_EITHER;
	if (m == WRENCH_FITS)
		return WRENCH_METRIC_DOES;
	if (i == WRENCH_FITS)
		return WRENCH_INCH_DOES;
	if (m == WRENCH_LOOSE && light)
		return WRENCH_METRIC_LIGHT;
	return i == WRENCH_LOOSE && light ? WRENCH_INCH_LIGHT : WRENCH_NEITHER;
}

gboolean
wrench_judge(double inch, double metric, struct wrench_pair *pair)
{
	struct hex_limits inch_head, metric_head = wrench_metric_head(metric);
	const struct hex_limits inch_wrench = wrench_inch_opening(inch), metric_wrench = wrench_metric_opening(metric);

	if (!wrench_inch_head(inch, &inch_head))
		return FALSE;
	*pair = (struct wrench_pair){ inch, metric, metric - inch, wrench_play(&inch_head, &metric_wrench),
				      wrench_play(&metric_head, &inch_wrench), WRENCH_NEITHER };
	pair->verdict = verdict(pair);
	return TRUE;
}
