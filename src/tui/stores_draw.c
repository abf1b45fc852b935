/* How the stores look: which side shows, a line of titles or what it is about, and the rows. */
#include "tui/stores_view.h"

#include "base/text.h"
#include "logbook/stores_story.h"
#include "tui/cost_plot.h"

enum {
	HEAD = 2, BELOW = 8, SMALL_ROWS = 2, SMALL_H = 9,	/* above the list; of the pane below it; of the words below it */
	COLUMNS_W = 60,	/* from that width on all columns of what is there stand side by side */
	HERE_W = 6, OLD_W = 8, COME_W = 8, PLACE_W = 13, PLACE_WIDE_W = 24, WIDE_W = 100, WANT_W = 16, WANT_SMALL_W = 12,
	STATE_W = 8, BY_W = 20,
};

struct panes
stores_parts(const void *data, const struct area *a)
{
	struct area rest = area_part(a, HEAD, 0, a->h - HEAD, a->w);
	struct panes p = panes_of(&rest, a->w * 3 / 5, MAX(BELOW, a->h / 3));

	(void)data;
	if (!p.pane.h && rest.h >= SMALL_H)
		p.list.h -= SMALL_ROWS;
	return p;
}

/* ---- above ---- */

/* "3, 1 late". */
static char *
wanted_count(const struct stores_data *d)
{
	int n = 0, late = 0;

	for (guint i = 0; wants_line(d->wants, i); i++) {
		n += wants_line(d->wants, i)->want > 0;
		late += wants_line(d->wants, i)->want > 0 && wants_line(d->wants, i)->late;
	}
	return late ? g_strdup_printf(" %d, %d late", n, late) : g_strdup_printf(" %d", n);
}

static void
draw_faces(const struct stores_data *d, const struct area *a)
{
	static const char *const face_words[STORES_FACES] = { "Stores", "Wanted", "Costs" };
	g_autofree char *there = g_strdup_printf(" %u", d->wants->stores->items->len), *wanted = wanted_count(d);
	const char *const count[STORES_FACES] = { there, wanted, "" };
	int x = 1;

	for (int f = 0; f < STORES_FACES; f++) {
		g_autofree char *words = g_strdup_printf(f == (int)d->face ? "[%s%s]" : " %s%s ", face_words[f], count[f]);

		x += area_put(a, 0, x, f == (int)d->face ? STYLE_STRONG : STYLE_PLAIN, words);
	}
	if (x + 8 < a->w)
		area_put(a, 0, x + 1, STYLE_KEY, "Tab ->");
}

/* Where the columns of what is there begin, for a line of that width. */
struct columns { int here, old, come, place, place_w, want, want_w; };

static struct columns
columns_of(int w)
{
	struct columns c = { .want_w = w < COLUMNS_W ? WANT_SMALL_W : WANT_W, .place_w = w < WIDE_W ? PLACE_W : PLACE_WIDE_W };

	c.want = w - c.want_w;
	c.place = c.want - c.place_w - 1;
	c.come = c.place - COME_W - 2;
	c.old = c.come - OLD_W;
	c.here = w < COLUMNS_W ? c.want - HERE_W - 2 : c.old - HERE_W;
	return c;
}

static void
draw_titles(const struct area *line)
{
	struct columns c = columns_of(line->w);

	area_put_in(line, 0, c.here, -HERE_W, STYLE_HEAD, "here");
	if (line->w >= COLUMNS_W) {
		area_put_in(line, 0, c.old, -OLD_W, STYLE_HEAD, "too old");
		area_put_in(line, 0, c.come, -COME_W, STYLE_HEAD, "to come");
		area_put_in(line, 0, c.place, c.place_w, STYLE_HEAD, "lies");
	}
	area_put_in(line, 0, c.want, c.want_w, STYLE_HEAD, "wanted");
}

/* What the wants are for, and what they leave out. */
static void
draw_wanted_head(const struct stores_data *d, const struct area *line)
{
	g_autofree char *out = d->wants->no_record
		? g_strdup_printf("; %d %s left out: nobody knows when last done", d->wants->no_record,
				  d->wants->no_record == 1 ? "task" : "tasks")
		: g_strdup("");
	g_autofree char *words = g_strconcat(d->wants->title, out, NULL);

	area_put(line, 0, 0, STYLE_HEAD, words);
}

static void
draw_head(const struct stores_data *d, const struct area *a, const struct panes *p)
{
	struct area line = area_part(a, 1, 2, 1, (d->face == FACE_WANTED ? a->w : p->list.w) - 3);

	draw_faces(d, a);
	switch (d->face) {
	case FACE_THERE:
		if (stores_nth(d->wants->stores, 0))
			draw_titles(&line);
		return;
	case FACE_WANTED:
		return draw_wanted_head(d, &line);
	case FACE_COSTS:
		if (d->cost->len)
			draw_cost_titles(&line);
		return;
	case STORES_FACES:
		return;
	}
}

/* ---- rows ---- */

/* "2 by 12 Mar 2027", "2 LATE", "perhaps 1"; "" for nothing. */
static char *
want_words(const struct stores_data *d, const struct want_line *l, int w)
{
	g_autofree char *n = l ? item_quantity(l->item, l->want ? l->want : l->perhaps) : NULL,
			*by = l ? stores_by_words(d, l, TRUE) : NULL, *words = NULL;

	if (!l)
		return g_strdup("");
	if (!l->want)
		return g_strdup_printf("perhaps %s", n);
	words = g_strconcat(n, *by ? " " : "", by, NULL);
	return text_width(words) <= w ? g_steal_pointer(&words) : g_steal_pointer(&n);
}

static enum style
item_style(const struct item *i, const struct stores_data *d, const struct want_line *l)
{
	const struct stores *s = d->wants->stores;

	if (l && l->want && l->late)
		return STYLE_PAST;
	return stores_on_hand(s, i, NONE) > stores_on_hand(s, i, d->today) || (l && l->want) ? STYLE_SOON : STYLE_PLAIN;
}

static void
draw_item(const struct stores_data *d, const struct item *i, const struct area *line, gboolean is_selected)
{
	const struct stores *s = d->wants->stores;
	const struct want_line *l = stores_want_of(d, i);
	struct columns c = columns_of(line->w);
	gint64 all = stores_on_hand(s, i, NONE), stale = all - stores_on_hand(s, i, d->today), come = stores_to_come(s, i);
	g_autofree char *here = item_quantity(i, all), *old = item_quantity(i, stale), *more = item_quantity(i, come),
			*want = want_words(d, l, c.want_w), *places = stores_places(s, i);
	enum style style = is_selected ? STYLE_SELECTED : item_style(i, d, l);

	area_put_in(line, 0, 0, c.here - 1, style, i->what);
	area_put_in(line, 0, c.here, -HERE_W, style, all ? here : "none");
	if (line->w >= COLUMNS_W) {
		area_put_in(line, 0, c.old, -OLD_W, style, stale ? old : "");
		area_put_in(line, 0, c.come, -COME_W, style, come ? more : "");
		area_put_in(line, 0, c.place, c.place_w, style, places);
	}
	area_put_in(line, 0, c.want, c.want_w, style, want);
}

static void
draw_wanted(const struct stores_data *d, guint i, const struct area *line, gboolean is_selected)
{
	const struct want_line *l = wants_line(d->wants, i);
	const struct want_loose *loose = l ? NULL : wants_loose(d->wants, i - d->wants->lines->len);
	enum style style = is_selected ? STYLE_SELECTED : !l || !l->want ? STYLE_PLAIN : l->late ? STYLE_PAST : STYLE_SOON;
	g_autofree char *n = l ? stores_number_words(l) : NULL, *by = l ? stores_by_words(d, l, FALSE) : g_strdup("");
	g_autofree char *words = l ? g_strdup_printf("%s  %s", l->item->what, n)
				   : g_strdup_printf("%s, for %s", loose->part, loose->task);
	int right = l && line->w >= COLUMNS_W - 6 ? BY_W : 0;

	area_put_in(line, 0, 0, STATE_W, style, !l ? "no item" : !l->want ? "if bad" : l->late ? "LATE" : "get");
	area_put_in(line, 0, STATE_W, line->w - STATE_W - right, style, words);
	if (right)
		area_put_in(line, 0, line->w - right, right, style, by);
}

static void
draw_row(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct stores_data *d = data;

	if (row->heading)
		area_put(line, 0, 0, STYLE_HEAD, row->text);
	else if (d->face == FACE_THERE)
		draw_item(d, stores_nth(d->wants->stores, (guint)row->index), line, is_selected);
	else if (d->face == FACE_WANTED)
		draw_wanted(d, (guint)row->index, line, is_selected);
	else
		draw_cost_row(&((const struct cost_row *)(const void *)d->cost->data)[row->index], line,
			      is_selected ? STYLE_SELECTED : STYLE_PLAIN);
}

/* On a screen without room for a pane, the most of what is selected. */
static void
draw_small(const struct stores_data *d, const struct panes *p, const struct area *a)
{
	struct area below = area_part(a, HEAD + p->list.h, 1, SMALL_ROWS, a->w - 2);
	const struct item *i = d->face == FACE_THERE ? stores_selected(d) : NULL;
	const struct want_line *l = stores_wanted(d);
	const struct want_loose *loose = stores_loose(d);
	g_autofree char *there = i ? stores_there_words(d->wants->stores, i, d->today) : NULL,
			*places = i ? stores_places(d->wants->stores, i) : NULL, *words = NULL;

	if (i)
		words = g_strdup_printf("%s%s%s", there, *places ? "; lies: " : "", places);
	else if (l)
		words = want_order_words(d->wants, l);
	else if (loose)
		words = g_strdup_printf("for %s", loose->task);
	else if (d->face == FACE_COSTS && list_row(&d->list[FACE_COSTS]))
		words = stores_cost_brief(d);
	if (words && p->list.h + HEAD < a->h)
		area_wrap(&below, 0, 1, STYLE_STRONG, words);
}

static const char *const nothing[STORES_FACES] = {
	(" Nothing is in the stores yet. a puts a kind of part on the list; then b says what came of it or was ordered, and n "
	 "which task needs it."),
	" Nothing is wanted of the stores. n on an item says which task needs it; how many are always kept is said with e.",
	" No cost is on record. What a service cost counts as work, and what is taken out of a lot with a price as parts.",
};

void
stores_draw(const void *data, const struct area *a)
{
	const struct stores_data *d = data;
	struct panes p = stores_parts(data, a);
	g_autofree char *story = d->wants && p.pane.h ? stores_row_story(d) : NULL;

	if (!d->wants) {
		area_wrap(a, 1, 1, STYLE_PLAIN, " There is no boat yet.");
		area_cursor(a, 1, 1);
		return;
	}
	draw_head(d, a, &p);
	list_draw(&d->list[d->face], &p.list, draw_row, d, nothing[d->face]);
	panes_rule(&p);
	if (p.pane.h)
		panes_text(&p, story);
	else
		draw_small(d, &p, a);
}
