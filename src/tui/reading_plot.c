#include "tui/reading_plot.h"

#include "base/date.h"
#include "base/text.h"

#include <math.h>

/* Numbers at the left, words of the limits at the right. */
enum { NUMBER_W = 11, WORD_W = 6, VALUE_ROWS = PLOT_ROWS - 1 };

struct scale {
	double least, most;
	gint64 first, last;
	struct area field;	/* where points stand */
};

static const struct plot_point *
point_at(const GArray *points, guint i)
{
	return &((const struct plot_point *)(const void *)points->data)[i];
}

gboolean
plot_is_worth_it(const GArray *points)
{
	return points->len > 1 && point_at(points, 0)->date < point_at(points, points->len - 1)->date;
}

static void
take_in(struct scale *s, double value)
{
	s->least = fmin(s->least, value);	/* NAN changes nothing */
	s->most = fmax(s->most, value);
}

static struct scale
scale_of(const struct area *a, const GArray *points, const struct measure_limits *l)
{
	struct scale s = { NAN, NAN, point_at(points, 0)->date, point_at(points, points->len - 1)->date,
			   area_part(a, 0, NUMBER_W + 1, VALUE_ROWS, a->w - NUMBER_W - 1 - WORD_W) };

	for (guint i = 0; i < points->len; i++)
		take_in(&s, point_at(points, i)->value);
	for (int above = 0; above <= 1; above++) {
		take_in(&s, l->bands.watch[above].value);
		take_in(&s, l->bands.stop[above].value);
	}
	return s;
}

static int
row_of(const struct scale *s, double value)
{
	double range = s->most - s->least;

	return range > 0 ? (int)lrint((VALUE_ROWS - 1) * (s->most - value) / range) : VALUE_ROWS / 2;
}

static int
column_of(const struct scale *s, gint64 date)
{
	return (int)((s->field.w - 1) * (date - s->first) / (s->last - s->first));
}

static void
draw_number(const struct area *a, const struct scale *s, double value, const char *unit)
{
	g_autofree char *text = g_strdup_printf("%.5g%s%s", value, *unit ? " " : "", unit);

	area_put_in(a, row_of(s, value), 0, -NUMBER_W, STYLE_PLAIN, text);
}

/* Either bound of a pair, with its number and its word. */
static void
draw_limit(const struct area *a, const struct scale *s, const struct edge *pair, enum style style, const char *word,
	   const char *unit)
{
	for (int above = 0; above <= 1; above++) {
		int y;

		if (isnan(pair[above].value))
			continue;
		y = row_of(s, pair[above].value);
		area_repeat(&s->field, y, 0, s->field.w, style, glyph(a->g, GLYPH_RULE));
		area_put_in(a, y, a->w - WORD_W + 1, WORD_W - 1, style, word);
		draw_number(a, s, pair[above].value, unit);
	}
}

/* The last one ends below the last point, or as far to the right as the two need. */
static void
draw_days(const struct area *a, const struct scale *s)
{
	char first[16], last[16];
	int from = NUMBER_W + 1, after, end;

	after = from + area_put(a, VALUE_ROWS, from, STYLE_PLAIN, day_words(s->first, first)) + 1;
	end = MAX(from + s->field.w, after + text_width(day_words(s->last, last)));
	if (end <= a->w)
		area_put_in(a, VALUE_ROWS, after, after - end, STYLE_PLAIN, last);
}

void
plot_draw(const struct area *a, const GArray *points, const struct measure_limits *l)
{
	struct scale s = scale_of(a, points, l);

	if (s.field.w < 2)
		return;
	for (int y = 0; y < VALUE_ROWS; y++)
		area_put(a, y, NUMBER_W, STYLE_PLAIN, "|");
	draw_number(a, &s, s.least, l->kind->unit);
	draw_number(a, &s, s.most, l->kind->unit);
	draw_limit(a, &s, l->bands.watch, STYLE_SOON, "watch", l->kind->unit);
	draw_limit(a, &s, l->bands.stop, STYLE_PAST, "stop", l->kind->unit);
	for (guint i = 0; i < points->len; i++) {
		const struct plot_point *p = point_at(points, i);

		area_put(&s.field, row_of(&s, p->value), column_of(&s, p->date), STYLE_STRONG, glyph(a->g, GLYPH_POINT));
	}
	draw_days(a, &s);
}
