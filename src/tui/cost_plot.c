#include "tui/cost_plot.h"

#include "base/amount.h"

#include <string.h>

/* Of the name, of a sum; from which width on work and parts stand beside the sum of both. */
enum { NAME_LEAST = 14, NAME_MOST = 44, SUM_W = 12, SUMS_FROM_W = 76, BAR_LEAST = 4 };

static void
clear_row(gpointer r)
{
	g_free(((struct cost_row *)r)->name);
}

const char *
cost_heading(enum cost_by by)
{
	switch (by) {
	case COST_SEASON:
	case COST_YEAR:
		break;
	case COST_FITTING:
		return "BY FITTING, the dearest first";
	case COST_HOUR:
		return "WHAT AN ENGINE HOUR CAME TO";
	}
	return "BY SEASON";
}

gint64
cost_of_row(const struct cost_row *r)
{
	gint64 an_hour = cost_an_hour(r->line);

	if (r->by == COST_HOUR)
		return an_hour == NONE ? 0 : an_hour;
	return r->line->work + r->line->parts;
}

static struct cost_row *
row_at(GArray *rows, guint i)
{
	return &((struct cost_row *)(void *)rows->data)[i];
}

static void
add_rows(struct book *b, GArray *rows, enum cost_by by, const struct costs *c)
{
	for (guint i = 0; costs_line(c, i); i++) {
		const struct cost_line *l = costs_line(c, i);
		g_autofree char *name = cost_name(b, l);
		struct cost_row row = { by, l, g_strdup_printf("%s %s", name, *l->currency ? l->currency : "(no currency)"), 1 };

		g_array_append_val(rows, row);
	}
}

/* To one scale are drawn the rows of a kind and currency; nothing is converted. */
static void
scale(GArray *rows)
{
	for (guint i = 0; i < rows->len; i++)
		for (guint k = 0; k < rows->len; k++)
			if (row_at(rows, k)->by == row_at(rows, i)->by
			    && !strcmp(row_at(rows, k)->line->currency, row_at(rows, i)->line->currency))
				row_at(rows, i)->most = MAX(row_at(rows, i)->most, cost_of_row(row_at(rows, k)));
}

GArray *
cost_rows(struct book *b, const struct costs *season, const struct costs *fitting)
{
	GArray *rows = g_array_new(FALSE, FALSE, sizeof(struct cost_row));

	g_array_set_clear_func(rows, clear_row);
	add_rows(b, rows, COST_SEASON, season);
	add_rows(b, rows, COST_HOUR, season);
	add_rows(b, rows, COST_FITTING, fitting);
	scale(rows);
	return rows;
}

static int
cells(gint64 cents, gint64 most, int w)
{
	return cents <= 0 ? 0 : (int)((double)cents / (double)most * w + .5);
}

/* As many cells as the sum is worth; of them the work's share, and the rest the parts'. */
static void
draw_bar(const struct cost_row *r, const struct area *line, int x, int w, enum style style)
{
	gint64 sum = cost_of_row(r);
	int all = MIN(cells(sum, r->most, w), w), work = r->by == COST_HOUR ? all : CLAMP(cells(r->line->work, r->most, w), 0, all);

	if (!all && sum > 0)
		area_put(line, 0, x, style, glyph_level(line->g, 1));
	area_repeat(line, 0, x, work, style, glyph(line->g, GLYPH_FULL));
	area_repeat(line, 0, x + work, all - work, style, glyph(line->g, GLYPH_SHADE));
}

/* The end of a path says more than its beginning. */
static const char *
short_name(const char *name, int w)
{
	const char *slash = (int)strlen(name) > w ? strrchr(name, '/') : NULL;

	return slash ? slash + 1 : name;
}

void
draw_cost_row(const struct cost_row *r, const struct area *line, enum style style)
{
	int name_w = CLAMP(line->w / 3, NAME_LEAST, NAME_MOST), sums = line->w >= SUMS_FROM_W ? 3 : 1, bar, x = line->w;
	const gint64 sum[] = { r->line->work + r->line->parts, r->line->parts, r->line->work };
	char m[MONEY_TEXT];

	area_put_in(line, 0, 0, name_w, style, short_name(r->name, name_w));
	if (r->by == COST_HOUR) {
		x -= SUM_W;
		area_put_in(line, 0, x, -SUM_W, style, r->line->hours > 0 ? money_exact(cost_an_hour(r->line), m) : "no hours");
		x -= (sums - 1) * SUM_W;
	} else {
		for (int i = 0; i < sums; i++)
			area_put_in(line, 0, x -= SUM_W, -SUM_W, style, money_exact(sum[i], m));
	}
	bar = x - name_w - 2;
	if (bar >= BAR_LEAST)
		draw_bar(r, line, name_w + 1, bar, style == STYLE_SELECTED ? style : STYLE_WATER);
}

void
draw_cost_titles(const struct area *line)
{
	static const char *const sum[] = { "together", "parts", "work" };
	const struct { enum glyph sign; const char *word; } legend[] = { { GLYPH_FULL, "work" }, { GLYPH_SHADE, "parts" } };
	int x = 0, right = line->w;

	for (guint i = 0; i < G_N_ELEMENTS(legend); i++) {
		x += area_put(line, 0, x, STYLE_WATER, glyph(line->g, legend[i].sign)) + 1;
		x += area_put(line, 0, x, STYLE_HEAD, legend[i].word) + 2;
	}
	for (int i = 0; i < (line->w >= SUMS_FROM_W ? 3 : 1); i++)
		area_put_in(line, 0, right -= SUM_W, -SUM_W, STYLE_HEAD, sum[i]);
}
