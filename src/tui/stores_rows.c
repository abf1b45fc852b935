#include "tui/stores_view.h"

#include "tui/cost_plot.h"

static void
fill_there(struct stores_data *d)
{
	const struct stores *s = d->wants->stores;

	for (guint i = 0; stores_nth(s, i); i++) {
		const struct item *item = stores_nth(s, i);
		g_autofree char *numbers = stores_numbers(s, item->id), *places = stores_places(s, item);

		list_add(&d->list[FACE_THERE], FALSE, (int)i, item->id,
			 g_strdup_printf("%s %s %s", item->what, numbers ? numbers : "", places));
	}
}

/* What is late leads; what is wanted only when something is found bad comes last. */
enum want_rank { WANT_LATE, WANT_SOON, WANT_PERHAPS, WANT_RANKS };
static const char *const want_heading[WANT_RANKS] = {
	"LATE: order now, the day to order by has passed",
	"TO GET",
	"PERHAPS: only when it is found bad",
};

static enum want_rank
rank_of(const struct want_line *l)
{
	if (!l->want)
		return WANT_PERHAPS;
	return l->late ? WANT_LATE : WANT_SOON;
}

static void
fill_rank(struct stores_data *d, enum want_rank rank)
{
	struct list *list = &d->list[FACE_WANTED];
	gboolean begun = FALSE;

	for (guint i = 0; wants_line(d->wants, i); i++) {
		const struct want_line *l = wants_line(d->wants, i);

		if (rank_of(l) != rank)
			continue;
		if (!begun)
			list_add(list, TRUE, -1, NONE, g_strdup(want_heading[rank]));
		begun = TRUE;
		list_add(list, FALSE, (int)i, l->item->id, g_strdup_printf("%s %s", l->item->what, l->tasks ? l->tasks : ""));
	}
}

/* Of a task in the due list, by its name. */
static gint64
task_key(const struct wants *w, const char *name)
{
	for (int i = 0; i < due_count(w->due); i++)
		if (!g_strcmp0(due_at(w->due, i)->name, name))
			return due_at(w->due, i)->id;
	return NONE;
}

static void
fill_wanted(struct stores_data *d)
{
	struct list *list = &d->list[FACE_WANTED];

	for (int rank = 0; rank < WANT_RANKS; rank++)
		fill_rank(d, (enum want_rank)rank);
	for (guint i = 0; wants_loose(d->wants, i); i++) {
		const struct want_loose *l = wants_loose(d->wants, i);

		if (!i)
			list_add(list, TRUE, -1, NONE, g_strdup("NO ITEM IS LINKED to what these want: n links one"));
		list_add(list, FALSE, (int)(d->wants->lines->len + i), task_key(d->wants, l->task),
			 g_strdup_printf("%s %s", l->part, l->task));
	}
}

/* It stays the same while others come and go. */
static gint64
cost_key(const struct cost_row *r)
{
	return ((gint64)r->by << 32) + g_str_hash(r->name);
}

static void
fill_costs(struct stores_data *d)
{
	const struct cost_row *row = (const void *)d->cost->data;

	for (guint i = 0; i < d->cost->len; i++) {
		if (!i || row[i].by != row[i - 1].by)
			list_add(&d->list[FACE_COSTS], TRUE, -1, NONE, g_strdup(cost_heading(row[i].by)));
		list_add(&d->list[FACE_COSTS], FALSE, (int)i, cost_key(&row[i]), g_strdup(row[i].name));
	}
}

void
stores_fill_rows(struct stores_data *d)
{
	fill_there(d);
	fill_wanted(d);
	fill_costs(d);
	list_settle_new(&d->list[FACE_THERE]);
	list_settle(&d->list[FACE_WANTED]);
	list_settle(&d->list[FACE_COSTS]);
}

/* The index of what is selected on a face; -1. */
static int
selected_on(const struct stores_data *d, enum stores_face face)
{
	const struct row *row = d->wants && d->face == face ? list_row(&d->list[face]) : NULL;

	return row ? row->index : -1;
}

const struct want_line *
stores_wanted(const struct stores_data *d)
{
	int i = selected_on(d, FACE_WANTED);

	return i < 0 ? NULL : wants_line(d->wants, (guint)i);
}

const struct want_loose *
stores_loose(const struct stores_data *d)
{
	int i = selected_on(d, FACE_WANTED);

	return i < 0 || wants_line(d->wants, (guint)i) ? NULL : wants_loose(d->wants, (guint)i - d->wants->lines->len);
}

const struct item *
stores_selected(const struct stores_data *d)
{
	int i = selected_on(d, FACE_THERE);
	const struct want_line *l = stores_wanted(d);

	return i >= 0 ? stores_nth(d->wants->stores, (guint)i) : l ? l->item : NULL;
}

const struct want_line *
stores_want_of(const struct stores_data *d, const struct item *i)
{
	for (guint k = 0; wants_line(d->wants, k); k++)
		if (wants_line(d->wants, k)->item == i)
			return wants_line(d->wants, k);
	return NULL;
}
