/* What a job needs of the stores: what is there, and where. */
#include "logbook/job_inside.h"
#include "logbook/stores_story.h"

/* What a job needs of an item. */
struct want {
	const struct item *item;
	gint64 always, condition, taken;
};

static struct want *
want_of(GArray *all, const struct item *i)
{
	const struct want new = { .item = i };

	for (guint k = 0; k < all->len; k++)
		if (g_array_index(all, struct want, k).item == i)
			return &g_array_index(all, struct want, k);
	g_array_append_val(all, new);
	return &g_array_index(all, struct want, all->len - 1);
}

static gboolean
is_to_do(const struct job_sheet *s, gint64 task)
{
	for (guint i = 0; i < s->aims->len; i++) {
		const struct job_aim *a = &g_array_index(s->aims, struct job_aim, i);

		if (a->aim.task == task && (a->state == AIM_OPEN || a->state == AIM_UNPROVED))
			return TRUE;
	}
	return FALSE;
}

/* What its open tasks need; and what lies ready for the job, taken out and not yet of any work done. */
static GArray *
wants_of(const struct stores *st, const struct job_sheet *s)
{
	GArray *all = g_array_new(FALSE, FALSE, sizeof(struct want));

	for (guint i = 0; i < st->needs->len; i++) {
		const struct need *n = &g_array_index(st->needs, struct need, i);
		struct want *w = is_to_do(s, n->task) ? want_of(all, stores_item(st, n->item)) : NULL;

		if (w)
			*(n->on_condition == 1 ? &w->condition : &w->always) += stock_of(n->quantity);
	}
	for (guint i = 0; i < st->taken->len; i++) {
		const struct taken *t = &g_array_index(st->taken, struct taken, i);

		if (t->job == s->job.id && t->service == NONE)
			want_of(all, stores_item(st, stores_lot_of(st, t->lot)->item))->taken += stock_of(t->quantity);
	}
	return all;
}

/* "2 bellows, U-joint, perhaps 1 more" */
static void
add_wanted(GString *out, const struct want *w)
{
	g_autofree char *always = item_quantity(w->item, w->always), *condition = item_quantity(w->item, w->condition);

	if (w->always)
		g_string_append_printf(out, "%s ", always);
	else if (w->condition)
		g_string_append_printf(out, "perhaps %s ", condition);
	g_string_append(out, w->item->what);
	if (w->always && w->condition)
		g_string_append_printf(out, ", perhaps %s more", condition);
}

static char *
want_words(const struct stores *st, const struct want *w, gint64 today)
{
	GString *out = g_string_new(NULL);
	g_autofree char *taken = item_quantity(w->item, w->taken);
	gint64 fresh = stores_on_hand(st, w->item, today), rest = w->always - w->taken;
	const char *between = ": ";

	add_wanted(out, w);
	if (w->taken > 0) {
		g_string_append_printf(out, "%staken for this job: %s", between, taken);
		between = "; ";
	}
	if (fresh < rest) {
		g_autofree char *here = item_quantity(w->item, fresh);

		g_string_append_printf(out, "%sTOO FEW, %s on hand%s", between, fresh ? here : "none",
				       stores_on_hand(st, w->item, NONE) > fresh ? " that is not too old" : "");
		between = "; ";
	}
	for (guint k = 0; stores_lot(st, k); k++) {
		g_autofree char *words = NULL;

		if (stores_lot(st, k)->item != w->item->id || !stores_left(st, k))
			continue;
		words = stores_lot_words(st, k, today);
		g_string_append_printf(out, "%s%s", between, words);
		between = "; ";
	}
	if (*between == ':')
		g_string_append(out, ": none on hand");
	return g_string_free(out, FALSE);
}

GPtrArray *
job_stores_words(struct book *b, const struct job_sheet *s, GError **err)
{
	struct stores *st = book_stores(b, err);
	g_autoptr(GArray) all = st ? wants_of(st, s) : NULL;
	GPtrArray *out = st ? g_ptr_array_new_with_free_func(g_free) : NULL;

	for (guint i = 0; all && i < all->len; i++) {
		const struct want *w = &g_array_index(all, struct want, i);

		if (w->always || w->condition || w->taken > 0)
			g_ptr_array_add(out, want_words(st, w, b->who.today));
	}
	stores_free(st);
	return out;
}
