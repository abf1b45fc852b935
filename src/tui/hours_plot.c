#include "tui/hours_plot.h"

#include "base/date.h"

/* Beside the months: the year before them and its sum behind. */
enum { YEAR_W = 14 };

static const struct month_sum *
month_of(const GArray *months, int year, int month)
{
	const struct month_sum *m = (const void *)months->data;

	for (guint i = 0; i < months->len; i++)
		if (m[i].year == year && m[i].month == month)
			return &m[i];
	return NULL;
}

static gint64
most_in_a_month(const GArray *months, int from)
{
	const struct month_sum *m = (const void *)months->data;
	gint64 most = 1;

	for (guint i = 0; i < months->len; i++)
		if (m[i].year >= from)
			most = MAX(most, m[i].seconds);
	return most;
}

static struct month_sum
year_of(const GArray *months, int year)
{
	const struct month_sum *m = (const void *)months->data;
	struct month_sum sum = { .year = year };

	for (guint i = 0; i < months->len; i++)
		if (m[i].year == year) {
			sum.seconds += m[i].seconds;
			sum.outings += m[i].outings;
		}
	return sum;
}

static void
draw_year(const GArray *months, const struct area *a, int y, int year, int w, gint64 most)
{
	struct month_sum all = year_of(months, year);
	char text[32];
	double hours;

	area_printf(a, y, 1, STYLE_STRONG, "%d", year);
	for (int m = 1; m <= 12; m++) {
		const struct month_sum *sum = month_of(months, year, m);

		if (!sum)
			continue;
		area_repeat(a, y, 6 + (m - 1) * w, 1, STYLE_WATER,
			    glyph_level(a->g, sum->seconds ? 1 + (int)(7 * sum->seconds / most) : 0));
		hours = (double)sum->seconds / 3600;
		g_snprintf(text, sizeof text, "%.*f", w > 4 && hours < 99.95, hours);
		area_put_in(a, y, 7 + (m - 1) * w, w - 1, STYLE_PLAIN, text);
	}
	if (!all.outings)
		area_put(a, y, 6, STYLE_PLAIN, "none on record");
	else if (a->w >= 6 + 12 * w + 7)
		area_printf(a, y, 6 + 12 * w, STYLE_STRONG, "%7.1f h", (double)all.seconds / 3600);
}

void
draw_hours_by_month(const GArray *months, gint64 today, const struct area *a, int years)
{
	int year, month, mday, w = MIN((a->w - YEAR_W) / 12, 8);

	day_to_ymd(today, &year, &month, &mday);
	for (int m = 1; m <= 12 && w > 2; m++) {
		char name[4];

		g_strlcpy(name, month_name(m), sizeof name);
		area_put(a, 0, 6 + (m - 1) * w, STYLE_PLAIN, name);
	}
	for (int i = 0; i < years && w > 2; i++)
		draw_year(months, a, i + 1, year - i, w, most_in_a_month(months, year - years + 1));
}

void
draw_hours_by_year(const GArray *months, gint64 today, const struct area *a)
{
	const struct month_sum *m = (const void *)months->data;
	int first = months->len ? m[0].year : 0, last, month, mday;
	gint64 most = 1;

	day_to_ymd(today, &last, &month, &mday);
	for (int year = first; first && year <= last; year++)
		most = MAX(most, year_of(months, year).seconds);
	for (int i = 0; first && last - i >= first && i < a->h; i++) {
		struct month_sum all = year_of(months, last - i);
		int bar = MAX(a->w - 34, 0);

		area_printf(a, i, 1, STYLE_STRONG, "%d", all.year);
		if (!all.outings) {
			area_put(a, i, 8, STYLE_PLAIN, "none on record");
			continue;
		}
		area_printf(a, i, 6, STYLE_PLAIN, "%7.1f h %4d %s", (double)all.seconds / 3600, all.outings,
			    all.outings == 1 ? "outing" : "outings");
		area_repeat(a, i, 30, (int)(bar * all.seconds / most), STYLE_WATER, glyph(a->g, GLYPH_FULL));
	}
}
