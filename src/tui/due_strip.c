#include "tui/due_strip.h"

#include "base/date.h"

/* Columns of a month, and of the legend at the right. */
enum { LEAST = 3, MOST = 10, LEGEND = 14 };

void
strip_fill(struct strip *s, const struct boat *boat, const struct due_list *l, gint64 today)
{
	const struct timeline *t = due_timeline(l);
	int year, month, mday;

	day_to_ymd(today, &year, &month, &mday);
	*s = (struct strip) { .today = today, .from = today - mday + 1, .afloat = boat->berth == STAND_AFLOAT };
	for (int i = 0; i < STRIP_MONTHS; i++) {
		s->month[i] = (month - 1 + i) % 12 + 1;
		s->begin[i + 1] = (int)(day_add_months(s->from, i + 1) - s->from);
	}
	for (int d = 0; d < s->begin[STRIP_MONTHS]; d++)
		s->in_season[d] = timeline_afloat(t, s->from + d) != FALSE;
	for (int i = 0; i < due_count(l); i++) {
		const struct due_out *out = &due_at(l, i)->out;
		int m = 0;

		if (out->by == NONE || out->when >= OPP_EACH_OUTING || out->by >= s->from + s->begin[STRIP_MONTHS])
			continue;
		while (out->by >= s->from + s->begin[m + 1])
			m++;
		s->due[m]++;
	}
}

static int
column_of(const struct strip *s, int w, int day)
{
	int m = 0;

	while (m + 1 < STRIP_MONTHS && day >= s->begin[m + 1])
		m++;
	return m * w + (day - s->begin[m]) * w / (s->begin[m + 1] - s->begin[m]);
}

static void
draw_month(const struct strip *s, const struct area *a, int y, int m, int w)
{
	int days = s->begin[m + 1] - s->begin[m], x = 1 + m * w;
	char name[4] = "";

	g_strlcpy(name, month_name(s->month[m]), sizeof name);
	area_put(a, y, x, STYLE_PLAIN, name);
	for (int i = 0; i < w; i++) {
		gboolean in = s->in_season[s->begin[m] + (i * days + days / 2) / w];

		area_put(a, y + 1, x + i, in ? STYLE_WATER : STYLE_PLAIN, glyph(a->g, in ? GLYPH_AFLOAT : GLYPH_ASHORE));
	}
}

void
strip_draw(const struct strip *s, const struct area *a, int y)
{
	int room = a->w - 1 - LEGEND, w = room / STRIP_MONTHS > LEAST ? MIN(room / STRIP_MONTHS, MOST) : (a->w - 1) / STRIP_MONTHS;
	int now = 1 + column_of(s, w, (int)(s->today - s->from)), legend = 2 + STRIP_MONTHS * w;

	for (int m = 0; m < STRIP_MONTHS; m++) {
		draw_month(s, a, y, m, w);
		if (s->due[m])
			area_printf(a, y + 2, m ? 1 + m * w : now + 1, STYLE_STRONG, "%d", s->due[m]);
	}
	area_put(a, y + 2, now, STYLE_STRONG, glyph(a->g, GLYPH_TODAY));
	if (a->w - legend < LEGEND - 3)
		return;
	area_printf(a, y, legend, STYLE_WATER, "%s %s", glyph(a->g, GLYPH_AFLOAT), s->afloat ? "afloat" : "in season");
	area_printf(a, y + 1, legend, STYLE_PLAIN, "%s %s", glyph(a->g, GLYPH_ASHORE), s->afloat ? "ashore" : "laid up");
	area_put(a, y + 2, legend, STYLE_PLAIN, "tasks due");
}
