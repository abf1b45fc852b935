/* Putting back what was taken out of the stores, and correcting what a service took. */
#include "logbook/stores_inside.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/inside.h"
#include "logbook/page.h"
#include "logbook/transfer.h"

#include <string.h>

static const struct taken *
taken_at(const struct stores *s, guint i)
{
	return &g_array_index(s->taken, struct taken, i);
}

static gboolean
same_use(const struct taken *a, const struct taken *b)
{
	return a->lot == b->lot && a->boat == b->boat && a->job == b->job && a->service == b->service
	    && !g_strcmp0(a->remark, b->remark);
}

/* Whether something was taken for what is said, in the same words or as a part of that task's work or that job. */
static gboolean
is_for(struct book *b, const struct taken *x, const struct store_take *t)
{
	struct service s;
	gboolean of_task;

	if (t->boat == NONE || !t->remark || !g_strcmp0(x->remark, t->remark) || (t->job != NONE && x->job == t->job))
		return TRUE;
	if (x->service == NONE)
		return FALSE;
	record_init(RECORD_SERVICE, &s);
	of_task = book_record(b, RECORD_SERVICE, x->service, &s, NULL)
	       && !strcmp(book_name_of(b, RECORD_TASK, s.task), t->remark);
	record_clear(RECORD_SERVICE, &s);
	return of_task;
}

static int
newest_first(const void *x, const void *y)
{
	const struct taken *a = *(const struct taken *const *)x, *b = *(const struct taken *const *)y;

	if (a->date != b->date)
		return a->date < b->date ? 1 : -1;
	return (a->id < b->id) - (a->id > b->id);
}

/* What was taken of the item by that day, the newest first, and of each use only the newest. */
static GPtrArray *
uses(struct book *b, const struct stores *s, const struct store_take *t)
{
	g_autoptr(GPtrArray) all = g_ptr_array_new();
	GPtrArray *each = g_ptr_array_new();

	for (guint i = 0; i < s->taken->len; i++) {
		const struct taken *x = taken_at(s, i);

		if (x->quantity > 0 && x->date <= t->date && x->boat == t->boat && stores_lot_of(s, x->lot)->item == t->item
		    && is_for(b, x, t))
			g_ptr_array_add(all, (gpointer)(guintptr)x);
	}
	g_ptr_array_sort(all, newest_first);
	for (guint i = 0; i < all->len; i++) {
		gboolean there = FALSE;

		for (guint k = 0; k < each->len && !there; k++)
			there = same_use(each->pdata[k], all->pdata[i]);
		if (!there)
			g_ptr_array_add(each, all->pdata[i]);
	}
	return each;
}

/* What was out of it at the end of a day. */
static gint64
out_on(const struct stores *s, const struct taken *use, gint64 day)
{
	gint64 sum = 0;

	for (guint i = 0; i < s->taken->len; i++)
		if (same_use(taken_at(s, i), use) && taken_at(s, i)->date <= day)
			sum += stock_of(taken_at(s, i)->quantity);
	return sum;
}

/* So much can come back on a day: it was out then, and did not come back on a later one. */
static gint64
still_out(const struct stores *s, const struct taken *use, gint64 day)
{
	gint64 least = out_on(s, use, day);

	for (guint i = 0; i < s->taken->len; i++)
		if (same_use(taken_at(s, i), use) && taken_at(s, i)->date > day)
			least = MIN(least, out_on(s, use, taken_at(s, i)->date));
	return least;
}

/* What comes back was for what it was taken for, so that this costs nothing in the end. */
static gboolean
put_back(struct book *b, const struct stores *s, const struct store_take *t, GError **err)
{
	g_autofree char *words = store_words(b, t->item, t->quantity);
	g_autoptr(GPtrArray) each = uses(b, s, t);
	gint64 rest = t->quantity;

	for (guint i = 0; i < each->len && rest > 0; i++) {
		const struct taken *use = each->pdata[i];
		struct store_take back = *t;
		gint64 n = MIN(rest, still_out(s, use, t->date));

		back.job = use->job;
		back.service = use->service;
		back.remark = use->remark;
		if (n > 0 && !store_put_taken(b, &back, use->lot, -n, err))
			return FALSE;
		rest -= MAX(n, 0);
	}
	return rest == 0
	    || err_set(err, ERR_CONFLICT, "less than %s was taken%s: splitpin stores count records what is there", words,
		       t->remark && t->boat != NONE ? " for that" : "");
}

gboolean
book_put_back(struct book *b, const struct store_take *t, GError **err)
{
	struct stores *s = store_check_take(b, t, err) ? book_stores(b, err) : NULL;
	g_autofree char *words = s ? store_words(b, t->item, t->quantity) : NULL;
	gboolean ok = s && book_begin(b, err) && book_end(b, put_back(b, s, t, err), err, "stores: %s put back", words);

	stores_free(s);
	return ok;
}

gboolean
stores_untake(struct book *b, gint64 service, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_TAKEN, NONE, err);
	gboolean ok = all != NULL;

	for (guint i = 0; ok && i < all->len; i++) {
		const struct taken *t = &g_array_index(all, struct taken, i);

		ok = t->service != service || row_drop(b->db, RECORD_TAKEN, t->id, err);
	}
	return ok;
}

static gboolean
retake(struct book *b, const struct stores *s, struct taken *x, const struct store_take *t, GError **err)
{
	const struct lot *l = stores_lot_of(s, x->lot);
	char d[16];

	/* What was put back later stays so. */
	if (x->date == t->date || (x->quantity < 0 && x->date > t->date))
		return TRUE;
	if (l->arrived != NONE && l->arrived > t->date)
		return t->sure
		    || err_set(err, ERR_DOUBT, "%s, which it took, came in on %s, after that day.", stores_item(s, l->item)->what,
			       day_words(l->arrived, d));
	x->date = t->date;
	return book_put(b, RECORD_TAKEN, x, err);
}

gboolean
stores_retake(struct book *b, const struct store_take *t, GError **err)
{
	struct stores *s = book_stores(b, err);
	gboolean ok = s != NULL;

	for (guint i = 0; ok && i < s->taken->len; i++) {
		struct taken *x = &g_array_index(s->taken, struct taken, i);

		ok = x->service != t->service || retake(b, s, x, t, err);
	}
	stores_free(s);
	return ok;
}
