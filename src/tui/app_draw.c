#include "tui/app_inside.h"

#include "base/date.h"
#include "base/text.h"
#include "logbook/page.h"

enum { LEAST_H = 15, LEAST_W = 40 };

/* The boat's line: what it is called, what it has run, where it lies, and today, as far as there is room. */
static void
draw_head(const struct app *a, const struct area *s)
{
	char day[16];
	int x, date = s->w - text_width(day_words(app_today(a), day)) - 1;
	struct area left = area_part(s, 0, 0, 1, MAX(date - 1, 0));

	area_repeat(s, 0, 0, s->w, STYLE_TITLE, " ");
	x = 1 + area_put(&left, 0, 1, STYLE_TITLE, a->boat.name ? a->boat.name : "splitpin");
	if (a->boat.name && a->head && x + 3 + text_width(a->head) <= left.w)
		x += 3 + area_put(&left, 0, x + 3, STYLE_TITLE, a->head);
	if (a->boat.name && a->lies && x + 3 + text_width(a->lies) <= left.w)
		area_put(&left, 0, x + 3, STYLE_TITLE, a->lies);
	area_put(s, 0, date, STYLE_TITLE, day);
}

/* Hints of the keys that hold here; help comes first among those that must stay. */
static void
draw_foot(const struct app *a, const struct area *s)
{
	static const char help[] = "? help", form_help[] = "F1 help";
	const char *last = app_kind(a)->where & (IN_FORM | IN_LINE) ? form_help : help;
	int x = 1, room = s->w - (int)strlen(last) - 3;
	char buf[8];

	if (a->prompt) {
		area_put(s, s->h - 1, 1, STYLE_KEY, a->palette ? "Enter takes it  Up Down choose  Esc leaves"
							       : "Enter keeps it  Esc shows all again");
		return;
	}
	for (int i = 0; i < key_table_length; i++) {
		const struct key_binding *b = &key_table[i];
		const char *key = key_words(b->key[0], buf);

		if (!b->hint || !(b->where & app_kind(a)->where) || b->act == ACT_HELP)
			continue;
		if (app_kind(a)->means && !app_kind(a)->means(a->view[a->depth - 1].data, b->act))
			continue;
		if (x + (int)strlen(key) + 1 + (int)strlen(b->hint) > room)
			break;
		x += area_put(s, s->h - 1, x, STYLE_KEY, key) + 1;
		x += area_put(s, s->h - 1, x, STYLE_PLAIN, b->hint) + 2;
	}
	x += area_put(s, s->h - 1, x, STYLE_KEY, app_kind(a)->where & (IN_FORM | IN_LINE) ? "F1" : "?") + 1;
	area_put(s, s->h - 1, x, STYLE_PLAIN, "help");
}

static void
take_size(struct app *a, const struct grid *g)
{
	gboolean same = a->h == g->h && a->w == g->w;
	GError *err = NULL;

	a->h = g->h;
	a->w = g->w;
	a->ascii = g->ascii;
	for (int i = 0; i < a->depth && !same; i++)
		if (a->view[i].kind->where & (IN_TEXT | IN_HEED) && !a->view[i].kind->load(a, a->view[i].data, &err))
			app_complain(a, err);
}

void
app_draw(struct app *a, struct grid *g)
{
	const struct view_kind *kind = app_kind(a);
	struct area s, body;

	take_size(a, g);
	grid_clear(g);
	s = grid_area(g);
	if (g->h < LEAST_H || g->w < LEAST_W) {
		area_printf(&s, 0, 0, STYLE_PLAIN, "%dx%d: needs %dx%d", g->w, g->h, LEAST_W, LEAST_H);
		area_cursor(&s, 0, 0);
		return;
	}
	draw_head(a, &s);
	body = area_part(&s, 1, 0, g->h - 3, g->w);
	kind->draw(app_data(a), &body);
	if (a->message)
		area_put(&s, g->h - 2, 1, a->message_style, a->message);
	draw_foot(a, &s);
	if (a->prompt)
		prompt_draw(a, &s);
}
