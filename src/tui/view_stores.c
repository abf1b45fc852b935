/* The stores: what lies where and how old it is, what the coming opportunity wants, and what it all cost. */
#include "tui/stores_view.h"

#include "tui/cost_plot.h"

static void
open_stores(struct app *a, void *data, gint64 subject)
{
	struct stores_data *d = data;

	(void)a, (void)subject;
	for (int f = 0; f < STORES_FACES; f++)
		list_init(&d->list[f]);
}

static void
let_go(struct stores_data *d)
{
	g_clear_pointer(&d->cost, g_array_unref);
	costs_clear(&d->costs[0]);
	costs_clear(&d->costs[1]);
	g_clear_pointer(&d->wants, wants_free);
}

static void
clear_stores(void *data)
{
	struct stores_data *d = data;

	let_go(d);
	for (int f = 0; f < STORES_FACES; f++)
		list_clear(&d->list[f]);
}

static gboolean
load_stores(struct app *a, void *data, GError **err)
{
	struct stores_data *d = data;
	const struct due_ask ask = { app_today(a), NONE };

	for (int f = 0; f < STORES_FACES; f++)
		list_begin(&d->list[f]);
	let_go(d);
	d->book = a->book;
	d->today = app_today(a);
	if (a->boat.id == NONE)
		return TRUE;
	if (!book_costs(a->book, &a->boat, COST_SEASON, NONE, &d->costs[0], err)
	    || !book_costs(a->book, &a->boat, COST_FITTING, NONE, &d->costs[1], err)
	    || !(d->wants = book_wants(a->book, &a->boat, &ask, err)))
		return FALSE;
	d->cost = cost_rows(a->book, &d->costs[0], &d->costs[1]);
	stores_fill_rows(d);
	return TRUE;
}

static gboolean
show_whole(struct app *a, const struct stores_data *d)
{
	g_autofree char *title = stores_row_title(d);

	if (!title)
		return FALSE;
	app_page(a, title, stores_row_story(d));
	return TRUE;
}

/* A task that wants something, and no item is linked to it. */
static gboolean
act_loose(struct app *a, const struct stores_data *d, enum act act)
{
	if (act != ACT_NEED)
		return FALSE;
	form_open(a, &form_need_of_task, list_row(&d->list[d->face])->key);
	return TRUE;
}

static const struct form_kind *
form_of(enum act act)
{
	static const struct { enum act act; const struct form_kind *form; } forms[] = {
		{ ACT_CHANGE, &form_item_again }, { ACT_CAME, &form_lot },  { ACT_HERE, &form_arrived },
		{ ACT_TAKE, &form_take },	  { ACT_TALLY, &form_count }, { ACT_NEED, &form_need },
		{ ACT_NUMBER, &form_number },
	};

	for (guint i = 0; i < G_N_ELEMENTS(forms); i++)
		if (forms[i].act == act)
			return forms[i].form;
	return NULL;
}

static gboolean
act_stores(struct app *a, void *data, enum act act)
{
	struct stores_data *d = data;
	const struct form_kind *form = form_of(act);

	if (act == ACT_FACE || act == ACT_FACE_BACK)
		d->face = (enum stores_face)((d->face + (act == ACT_FACE ? 1 : STORES_FACES - 1)) % STORES_FACES);
	else if (act == ACT_ADD)
		form_open(a, &form_item, NONE);
	else if (act == ACT_OPEN)
		return show_whole(a, d);
	else if (form && stores_loose(d))
		return act_loose(a, d, act);
	else if (form && stores_selected(d))
		form_open(a, form, stores_selected(d)->id);
	else
		return FALSE;
	return TRUE;
}

static struct list *
list_of(void *data)
{
	struct stores_data *d = data;

	return &d->list[d->face];
}

const struct view_kind view_stores = {
	.where = IN_STORES,
	.size = sizeof(struct stores_data),
	.open = open_stores,
	.load = load_stores,
	.draw = stores_draw,
	.act = act_stores,
	.list = list_of,
	.parts = stores_parts,
	.clear = clear_stores,
};
