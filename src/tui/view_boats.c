/* The boats of this logbook. */
#include "tui/app.h"

#include "tui/form.h"
#include "tui/list.h"

struct boats_data {
	GArray *all;	/* struct boat */
	struct list list;
	gint64 shown;	/* the boat that the other views show */
};

static const struct boat *
at(const struct boats_data *d, int i)
{
	return &((const struct boat *)(const void *)d->all->data)[i];
}

static void
open_boats(struct app *a, void *data, gint64 subject)
{
	(void)a, (void)subject;
	list_init(&((struct boats_data *)data)->list);
}

static void
clear_boats(void *data)
{
	struct boats_data *d = data;

	g_clear_pointer(&d->all, g_array_unref);
	list_clear(&d->list);
}

static gboolean
load_boats(struct app *a, void *data, GError **err)
{
	struct boats_data *d = data;
	GArray *all;

	if (!a->book)
		return TRUE;
	if (!(all = book_boats(a->book, err)))
		return FALSE;
	g_clear_pointer(&d->all, g_array_unref);
	d->all = all;
	list_begin(&d->list);
	for (int i = 0; i < (int)d->all->len; i++)
		list_add(&d->list, FALSE, i, at(d, i)->id, g_strdup(at(d, i)->name));
	list_settle(&d->list);
	if (d->shown != a->boat.id)
		list_select(&d->list, a->boat.id);
	d->shown = a->boat.id;
	return TRUE;
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct boats_data *d = data;
	const struct boat *b = at(d, row->index);
	g_autofree char *name = g_strdup_printf("%s%s", b->name, b->id == d->shown ? ", shown now" : "");
	int w = MIN(line->w / 2, 30);

	(void)is_selected;
	area_put_in(line, 0, 0, w, STYLE_PLAIN, name);
	area_printf(line, 0, w + 1, STYLE_PLAIN, "%s, %s in %s water%s%s", word_of(&words_boat_kind, b->kind),
		    word_of(&words_stand, b->berth), word_of(&words_water, b->water), b->place ? ", " : "",
		    b->place ? b->place : "");
}

static void
draw_boats(const void *data, const struct area *a)
{
	const struct boats_data *d = data;
	struct area list = area_part(a, 1, 0, a->h - 1, a->w);

	area_put(a, 0, 1, STYLE_HEAD, "The boats of this logbook; Enter opens one, a adds one");
	list_draw(&d->list, &list, draw_line, d, " No boat is on record: a adds one.");
}

static gboolean
act_boats(struct app *a, void *data, enum act act)
{
	const struct boats_data *d = data;
	const struct row *row = list_row(&d->list);

	if (act == ACT_ADD) {
		form_open(a, &form_new, NONE);
		return TRUE;
	}
	if (act != ACT_OPEN || !row)
		return FALSE;
	a->boat.id = row->key;
	app_close(a);
	app_changed(a);
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct boats_data *)data)->list;
}

const struct view_kind view_boats = {
	.where = IN_BOATS,
	.size = sizeof(struct boats_data),
	.open = open_boats,
	.load = load_boats,
	.draw = draw_boats,
	.act = act_boats,
	.list = list_of,
	.parts = panes_headed,
	.clear = clear_boats,
};
