#include "tui/grid.h"

#include "base/text.h"

#include <math.h>
#include <string.h>

struct grid *
grid_new(int h, int w, gboolean ascii)
{
	struct grid *g = g_new0(struct grid, 1);

	g->ascii = ascii;
	grid_size(g, h, w);
	return g;
}

void
grid_free(struct grid *g)
{
	if (!g)
		return;
	g_free(g->cell);
	g_free(g);
}

void
grid_size(struct grid *g, int h, int w)
{
	g->h = MAX(h, 0);
	g->w = MAX(w, 0);
	g_free(g->cell);
	g->cell = g_new(struct cell, (gsize)g->h * (gsize)g->w + 1);
	grid_clear(g);
}

void
grid_clear(struct grid *g)
{
	for (int i = 0; i < g->h * g->w; i++)
		g->cell[i] = (struct cell) { " ", STYLE_PLAIN };
	g->cursor_y = g->cursor_x = -1;
}

static struct cell *
row_of(const struct grid *g, int y)
{
	return &g->cell[(gsize)y * (gsize)g->w];
}

char *
grid_text(const struct grid *g)
{
	GString *out = g_string_new(NULL);

	for (int y = 0; y < g->h; y++) {
		gsize from = out->len;

		for (int x = 0; x < g->w; x++)
			g_string_append(out, row_of(g, y)[x].text);
		while (out->len > from && out->str[out->len - 1] == ' ')
			g_string_truncate(out, out->len - 1);
		g_string_append_c(out, '\n');
	}
	return g_string_free(out, FALSE);
}

const char *
glyph(const struct grid *g, enum glyph which)
{
	static const char *const sign[GLYPH_COUNT][2] = {
		[GLYPH_AFLOAT] = { "≈", "~" },
		[GLYPH_ASHORE] = { "┄", "-" },
		[GLYPH_TODAY] = { "▲", "^" },
		[GLYPH_RULE] = { "─", "-" },
		[GLYPH_FULL] = { "█", "#" },
		[GLYPH_EMPTY] = { "·", "." },
		[GLYPH_BRANCH] = { "├ ", "|-" },
		[GLYPH_LAST_BRANCH] = { "└ ", "`-" },
		[GLYPH_POINT] = { "•", "*" },
		[GLYPH_SHADE] = { "▒", "=" },
	};

	return sign[which][g->ascii];
}

const char *
glyph_level(const struct grid *g, int eighths)
{
	static const char *const block[] = { " ", "▁", "▂", "▃", "▄", "▅", "▆", "▇", "█" };
	static const char *const plain[] = { " ", ".", ".", ":", ":", "=", "=", "#", "#" };
	int i = CLAMP(eighths, 0, 8);

	return g->ascii ? plain[i] : block[i];
}

struct area
grid_area(struct grid *g)
{
	return (struct area) { g, 0, 0, g->h, g->w };
}

struct area
area_part(const struct area *a, int y, int x, int h, int w)
{
	int top = CLAMP(y, 0, a->h), left = CLAMP(x, 0, a->w);
	int bottom = CLAMP(y + h, top, a->h), right = CLAMP(x + w, left, a->w);

	return (struct area) { a->g, a->y + top, a->x + left, bottom - top, right - left };
}

/* What a terminal without UTF-8 shows in its place. */
static char *
as_shown(const struct grid *g, const char *text)
{
	char *safe = text_harmless(text, FALSE), *ascii;

	if (!g->ascii || g_str_is_ascii(safe))
		return safe;
	ascii = g_str_to_ascii(safe, "C");
	g_free(safe);
	return ascii;
}

struct piece { const char *text; int n, columns; };	/* of a text: one character with its marks */

static struct piece
piece_at(const char *s)
{
	const char *p = g_utf8_next_char(s);
	gunichar c = g_utf8_get_char(s);

	while (*p && g_unichar_iszerowidth(g_utf8_get_char(p)))
		p = g_utf8_next_char(p);
	return (struct piece) { s, (int)(p - s), g_unichar_iszerowidth(c) ? 0 : g_unichar_iswide(c) ? 2 : 1 };
}

/* A wide character that is overwritten by half leaves a blank. */
static void
cell_set(const struct grid *g, int y, int x, enum style style, struct piece p)
{
	struct cell *c = row_of(g, y);

	if (!*c[x].text && x > 0)
		strcpy(c[x - 1].text, " ");
	for (int i = x + p.columns; i < g->w && !*c[i].text; i++)
		strcpy(c[i].text, " ");
	c[x].style = (guint8)style;
	while (p.n >= (int)sizeof c[x].text)	/* marks upon marks: the last ones go */
		p.n = (int)(g_utf8_find_prev_char(p.text, p.text + p.n) - p.text);
	memcpy(c[x].text, p.text, (gsize)p.n);
	c[x].text[p.n] = '\0';
	if (p.columns == 2)
		c[x + 1] = (struct cell) { "", (guint8)style };
}

/* From column x to before column end; returns the column after. */
static int
put(const struct area *a, int y, int x, int end, enum style style, const char *text)
{
	g_autofree char *shown = as_shown(a->g, text);
	struct piece p;

	if (y < 0 || y >= a->h || x < 0)
		return x;
	for (const char *s = shown; *s; s += p.n) {
		p = piece_at(s);
		if (!p.columns)
			continue;
		if (x + p.columns > end || (x + p.columns == end && s[p.n] && text_width(s + p.n) > 0)) {
			if (x < end)
				cell_set(a->g, a->y + y, a->x + x++, style, (struct piece) { "~", 1, 1 });
			break;
		}
		cell_set(a->g, a->y + y, a->x + x, style, p);
		x += p.columns;
	}
	return x;
}

int
area_put(const struct area *a, int y, int x, enum style style, const char *text)
{
	return put(a, y, x, a->w, style, text) - x;
}

void
area_put_in(const struct area *a, int y, int x, int w, enum style style, const char *text)
{
	int end = MIN(x + ABS(w), a->w), from = w < 0 ? MAX(x, end - text_width(text)) : x;

	if (x < from)
		area_repeat(a, y, x, from - x, style, " ");
	from = put(a, y, from, end, style, text);
	if (from < end)
		area_repeat(a, y, from, end - from, style, " ");
}

int
area_printf(const struct area *a, int y, int x, enum style style, const char *format, ...)
{
	g_autofree char *text = NULL;
	va_list ap;

	va_start(ap, format);
	text = g_strdup_vprintf(format, ap);
	va_end(ap);
	return area_put(a, y, x, style, text);
}

int
area_wrap(const struct area *a, int y, int indent, enum style style, const char *text)
{
	g_autoptr(GString) out = g_string_new(NULL);
	g_autofree char *safe = text_harmless(text, TRUE);
	g_auto(GStrv) lines = NULL;

	text_wrap(out, safe, MAX(a->w, 1), MIN(indent, MAX(a->w - 1, 0)));
	lines = g_strsplit(out->str, "\n", -1);
	for (int i = 0; lines[i]; i++)
		area_put(a, y++, 0, style, lines[i]);
	return y;
}

void
area_repeat(const struct area *a, int y, int x, int w, enum style style, const char *sign)
{
	for (int end = MIN(x + w, a->w); x < end && y >= 0 && y < a->h; x++)
		if (x >= 0)
			cell_set(a->g, a->y + y, a->x + x, style, (struct piece) { sign, (int)strlen(sign), 1 });
}

void
area_style(const struct area *a, int y, int x, int w, enum style style)
{
	for (int end = MIN(x + w, a->w); x < end && y >= 0 && y < a->h; x++)
		if (x >= 0)
			row_of(a->g, a->y + y)[a->x + x].style = (guint8)style;
}

void
area_cursor(const struct area *a, int y, int x)
{
	if (y < 0 || y >= a->h || x < 0 || x >= a->w)
		return;
	a->g->cursor_y = a->y + y;
	a->g->cursor_x = a->x + x;
}

void
area_share(const struct area *a, int y, int x, int w, enum style style, double share)
{
	int bar = w - 6, full;

	if (isnan(share))
		return;
	full = bar > 0 ? (int)CLAMP(share * bar + .5, 0, bar) : 0;
	if (bar > 0) {
		area_repeat(a, y, x, full, style, glyph(a->g, GLYPH_FULL));
		area_repeat(a, y, x + full, bar - full, style, glyph(a->g, GLYPH_EMPTY));
	}
	area_printf(a, y, x + MAX(bar, 0), style, "%4.0f %%", CLAMP(100 * share, -999, 9999));
}
