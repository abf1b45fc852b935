/* A screen as a grid of cells, and areas of it to draw in: no terminal.  What is put outside an area is cut off. */
#ifndef TUI_GRID_H
#define TUI_GRID_H

#include <glib.h>

/* What a cell means; the terminal gives it a look.  Meaning is never in the style alone. */
enum style {
	STYLE_PLAIN,
	STYLE_STRONG,	/* said with weight */
	STYLE_TITLE,	/* the boat's line, a view's name */
	STYLE_HEAD,	/* above a group of lines */
	STYLE_SELECTED,	/* the line that keys act on */
	STYLE_PAST,	/* past due, or stop */
	STYLE_SOON,	/* due at the coming opportunity, or worth watching */
	STYLE_WATER,	/* afloat */
	STYLE_KEY,	/* a key in a hint */
	STYLE_FIELD,	/* where one types */
	STYLE_ERROR,	/* what is wrong with what was typed */
	STYLE_COUNT
};

/* Signs with a form in ASCII. */
enum glyph {
	GLYPH_AFLOAT, GLYPH_ASHORE, GLYPH_TODAY, GLYPH_RULE, GLYPH_FULL, GLYPH_EMPTY, GLYPH_BRANCH, GLYPH_LAST_BRANCH,
	GLYPH_POINT,
	GLYPH_SHADE,	/* beside GLYPH_FULL, in one bar */
	GLYPH_COUNT
};

/* One character with its combining marks, as UTF-8; "" in the right half of a wide one and where nothing is. */
struct cell {
	char text[15];
	guint8 style;
};

struct grid {
	int h, w;
	gboolean ascii;	/* the terminal shows nothing else */
	int cursor_y, cursor_x;	/* -1: nowhere */
	struct cell *cell;	/* h * w */
};

struct grid *grid_new(int h, int w, gboolean ascii);
void grid_free(struct grid *g);
void grid_size(struct grid *g, int h, int w);	/* and empty it */
void grid_clear(struct grid *g);
/* The lines without blanks at their ends; the caller frees it. */
char *grid_text(const struct grid *g);

const char *glyph(const struct grid *g, enum glyph which);
/* Eighths of a block, 0 to 8; in ASCII five steps. */
const char *glyph_level(const struct grid *g, int eighths);

struct area {
	struct grid *g;
	int y, x, h, w;
};
struct area grid_area(struct grid *g);
/* Part of an area, cut to lie inside it; h or w may come out as 0. */
struct area area_part(const struct area *a, int y, int x, int h, int w);

/* Text made harmless from a place on, up to the area's edge: cut, the last column holds "~".  Returns the columns used.
 * Rows below 0 and beyond h are no error: nothing is drawn. */
int area_put(const struct area *a, int y, int x, enum style style, const char *text);
/* The same in exactly w columns, filled with blanks; negative w: to the right. */
void area_put_in(const struct area *a, int y, int x, int w, enum style style, const char *text);
int area_printf(const struct area *a, int y, int x, enum style style, const char *format, ...) G_GNUC_PRINTF(5, 6);
/* Wrapped at the area's width from row y on, further lines indented; returns the first row after it. */
int area_wrap(const struct area *a, int y, int indent, enum style style, const char *text);
/* One sign w times. */
void area_repeat(const struct area *a, int y, int x, int w, enum style style, const char *sign);
/* Give what is there another style. */
void area_style(const struct area *a, int y, int x, int w, enum style style);
void area_cursor(const struct area *a, int y, int x);
/* "########-- 104 %" in w columns: how much of a limit is used; share may pass 1, NAN shows nothing. */
void area_share(const struct area *a, int y, int x, int w, enum style style, double share);

#endif
