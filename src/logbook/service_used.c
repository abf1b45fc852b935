#include "logbook/service_used.h"

#include "logbook/inside.h"

gboolean
service_fill_used(struct book *b, struct service_form *f, GError **err)
{
	struct lot l;

	if (!f->n_used || f->what.outcome != OUTCOME_RENEWED)
		return TRUE;
	if (!stores_first_lot(b, &f->used[0], f->what.date, &l, err))
		return FALSE;
	if (f->what.made == NONE)
		f->what.made = l.made;
	if (!f->part.number)
		f->part.number = g_strdup(l.number);
	record_clear(RECORD_LOT, &l);
	return TRUE;
}

static gboolean
take_one(struct book *b, const struct store_take *t, GString *out, GError **err)
{
	g_autoptr(GArray) taken = NULL;
	struct item i;

	if (!stores_take(b, t, &taken, err))
		return FALSE;
	record_init(RECORD_ITEM, &i);
	if (row_get(b->db, RECORD_ITEM, t->item, &i, err)) {
		g_autofree char *words = store_taken_words(&i, taken, t->date);

		g_string_append_printf(out, "%s%s, out of the stores: %s", out->len ? "\n" : "", i.what, words);
	}
	record_clear(RECORD_ITEM, &i);
	return TRUE;
}

/* The job that a service came of; NONE. */
static gint64
job_of(struct book *b, gint64 boat, gint64 service)
{
	g_autoptr(GArray) aims = book_records(b, RECORD_AIM, boat, NULL);

	for (guint i = 0; aims && i < aims->len; i++)
		if (g_array_index(aims, struct aim, i).service == service)
			return g_array_index(aims, struct aim, i).job;
	return NONE;
}

gboolean
service_take_used(struct book *b, const struct task *t, const struct service_form *f, char **said, GError **err)
{
	struct store_take take = { .date = f->what.date, .boat = t->boat, .job = NONE, .service = f->what.id, .sure = f->sure };
	g_autoptr(GString) out = g_string_new(NULL);

	if (!f->n_used && !f->used_none)
		return stores_retake(b, &take, err);
	if (!stores_untake(b, f->what.id, err))
		return FALSE;
	take.job = job_of(b, t->boat, f->what.id);
	for (int i = 0; i < f->n_used; i++) {
		take.item = f->used[i].item;
		take.quantity = f->used[i].quantity;
		if (!take_one(b, &take, out, err))
			return FALSE;
	}
	*said = out->len ? g_string_free(g_steal_pointer(&out), FALSE) : NULL;
	return TRUE;
}
