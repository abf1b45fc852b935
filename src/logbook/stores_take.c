#include "logbook/stores_inside.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/inside.h"

#include <string.h>

static void
clear_taken(gpointer p)
{
	record_clear(RECORD_LOT, &((struct store_taken *)p)->lot);
}

/* What of it lies in a lot is to be used, and in which order. */
struct pick {
	guint at;
	gboolean stale;
	gint64 made; /* or arrived */
};

static int
fresh_first(const void *x, const void *y)
{
	const struct pick *a = x, *b = y;

	if (a->stale != b->stale)
		return a->stale - b->stale;
	if (a->made != b->made)
		return (a->made > b->made) - (a->made < b->made);
	return (a->at > b->at) - (a->at < b->at);
}

static int
stale_first(const void *x, const void *y)
{
	const struct pick *a = x, *b = y;

	return a->stale != b->stale ? b->stale - a->stale : fresh_first(x, y);
}

/* The lots of an item that were there on a day and have something left, in the order in which they are used. */
static GArray *
picks(const struct stores *s, const struct item *i, gint64 day, gboolean for_boat)
{
	GArray *all = g_array_new(FALSE, FALSE, sizeof(struct pick));

	for (guint k = 0; k < s->lots->len; k++) {
		const struct lot *l = stores_lot(s, k);
		struct pick p = { k, FALSE, l->made == NONE ? l->arrived : l->made };
		struct lot_age age;

		if (l->item != i->id || l->arrived == NONE || l->arrived > day || stores_left(s, k) <= 0)
			continue;
		lot_age(i, l, day, &age);
		p.stale = age.stale;
		g_array_append_val(all, p);
	}
	g_array_sort(all, for_boat ? fresh_first : stale_first);
	return all;
}

gboolean
store_put_taken(struct book *b, const struct store_take *t, gint64 lot, gint64 quantity, GError **err)
{
	struct taken row;
	gboolean ok;

	record_init(RECORD_TAKEN, &row);
	row.lot = lot;
	row.date = t->date;
	row.quantity = stock_real(quantity);
	row.boat = t->boat;
	row.job = t->job;
	row.service = t->service;
	row.remark = g_strdup(t->remark);
	ok = book_put(b, RECORD_TAKEN, &row, err);
	record_clear(RECORD_TAKEN, &row);
	return ok;
}

static void
copy_lot(struct lot *to, const struct lot *from)
{
	*to = *from;
	to->number = g_strdup(from->number);
	to->supplier = g_strdup(from->supplier);
	to->currency = g_strdup(from->currency);
	to->place = g_strdup(from->place);
	to->remark = g_strdup(from->remark);
}

static gboolean
take_from(struct book *b, const struct store_take *t, const struct lot *l, gint64 quantity, GArray *out, GError **err)
{
	struct store_taken one = { .quantity = quantity };

	if (!store_put_taken(b, t, l->id, quantity, err))
		return FALSE;
	copy_lot(&one.lot, l);
	g_array_append_val(out, one);
	return TRUE;
}

/* What was there and nobody had written down; remark NULL: nothing more is said of it. */
static gboolean
put_found(struct book *b, const struct store_take *t, gint64 quantity, const char *remark, struct lot *l, GError **err)
{
	record_init(RECORD_LOT, l);
	l->item = t->item;
	l->quantity = stock_real(quantity);
	l->arrived = t->date;
	l->remark = g_strconcat("found, not on record before", remark ? ": " : NULL, remark, NULL);
	return book_put(b, RECORD_LOT, l, err);
}

static gboolean
take_found(struct book *b, const struct store_take *t, gint64 quantity, GArray *out, GError **err)
{
	struct lot l;
	gboolean ok = put_found(b, t, quantity, NULL, &l, err) && take_from(b, t, &l, quantity, out, err);

	record_clear(RECORD_LOT, &l);
	return ok;
}

static gboolean
question(const struct stores *s, const struct item *i, const struct store_take *t, const GArray *all, GError **err)
{
	gint64 there = 0, fresh = 0;
	g_autofree char *wanted = item_quantity(i, t->quantity), *here = NULL, *age = NULL;
	char d[16];

	for (guint k = 0; k < all->len; k++) {
		const struct pick *p = &g_array_index(all, struct pick, k);

		there += stores_left(s, p->at);
		fresh += p->stale ? 0 : stores_left(s, p->at);
	}
	if (t->sure || fresh >= t->quantity || (t->boat == NONE && there >= t->quantity))
		return TRUE;
	here = item_quantity(i, there);
	if (there < t->quantity)
		return err_set(err, ERR_DOUBT, "%s: %s %s on hand on %s, not %s.", i->what, there ? here : "nothing",
			       there == STOCK_ONE || !there ? "is" : "are", day_words(t->date, d), wanted);
	age = lot_age_words(i, stores_lot(s, g_array_index(all, struct pick, all->len - 1).at), t->date);
	return err_set(err, ERR_DOUBT, "%s: that would take what is too old: %s.", i->what, age ? age : "");
}

static gboolean
check_day(const struct book *b, gint64 day, GError **err)
{
	char d[DAY_TEXT];

	return day <= b->who.today || err_set(err, ERR_INPUT, "%s lies ahead of today", day_iso(day, d));
}

gboolean
store_check_take(const struct book *b, const struct store_take *t, GError **err)
{
	if (t->quantity <= 0)
		return err_set(err, ERR_INPUT, "how many? more than nothing is wanted");
	return check_day(b, t->date, err);
}

static gboolean
take(struct book *b, const struct stores *s, const struct store_take *t, GArray *out, GError **err)
{
	const struct item *i = stores_item(s, t->item);
	g_autoptr(GArray) all = NULL;
	gint64 rest = t->quantity;

	if (!i)
		return err_set(err, ERR_NOT_FOUND, "there is no such item in the stores");
	all = picks(s, i, t->date, t->boat != NONE);
	if (!store_check_take(b, t, err) || !question(s, i, t, all, err))
		return FALSE;
	for (guint k = 0; rest > 0 && k < all->len; k++) {
		guint at = g_array_index(all, struct pick, k).at;
		gint64 n = MIN(rest, stores_left(s, at));

		if (!take_from(b, t, stores_lot(s, at), n, out, err))
			return FALSE;
		rest -= n;
	}
	return rest <= 0 || take_found(b, t, rest, out, err);
}

gboolean
stores_take(struct book *b, const struct store_take *t, GArray **taken, GError **err)
{
	struct stores *s = book_stores(b, err);
	gboolean ok;

	*taken = g_array_new(FALSE, FALSE, sizeof(struct store_taken));
	g_array_set_clear_func(*taken, clear_taken);
	ok = s && take(b, s, t, *taken, err);
	stores_free(s);
	if (!ok)
		g_clear_pointer(taken, g_array_unref);
	return ok;
}

char *
store_words(struct book *b, gint64 item, gint64 quantity)
{
	struct item i;
	char *words;

	record_init(RECORD_ITEM, &i);
	if (row_get(b->db, RECORD_ITEM, item, &i, NULL)) {
		g_autofree char *n = item_quantity(&i, quantity);

		words = g_strconcat(n, " ", i.what, NULL);
	} else {
		words = g_strdup("");
	}
	record_clear(RECORD_ITEM, &i);
	return words;
}

gboolean
book_took(struct book *b, const struct store_take *t, GArray **taken, GError **err)
{
	g_autofree char *words = store_words(b, t->item, t->quantity);

	*taken = NULL;
	if (!book_begin(b, err))
		return FALSE;
	if (book_end(b, stores_take(b, t, taken, err), err, "stores: took %s", words))
		return TRUE;
	g_clear_pointer(taken, g_array_unref);
	return FALSE;
}

char *
store_taken_words(const struct item *i, const GArray *taken, gint64 day)
{
	GString *out = g_string_new(NULL);

	for (guint k = 0; k < taken->len; k++) {
		const struct store_taken *t = &g_array_index(taken, struct store_taken, k);
		g_autofree char *n = item_quantity(i, t->quantity), *age = lot_age_words(i, &t->lot, day);
		const char *const parts[] = { t->lot.number, age, t->lot.place, t->lot.remark };

		g_string_append_printf(out, "%s%s", k ? "; " : "", n);
		for (guint p = 0; p < G_N_ELEMENTS(parts); p++)
			if (parts[p])
				g_string_append_printf(out, ", %s", parts[p]);
	}
	return g_string_free(out, FALSE);
}

static gboolean
count(struct book *b, const struct store_take *t, const struct store_count *c, GError **err)
{
	g_autoptr(GArray) taken = NULL;
	struct lot l;
	gboolean ok;

	if (c->more < 0)
		return stores_take(b, t, &taken, err);
	ok = put_found(b, t, c->more, c->remark, &l, err);
	record_clear(RECORD_LOT, &l);
	return ok;
}

/* What was in a lot on a day by the record: what was taken later was still there. */
static gint64
left_on(const struct stores *s, const struct lot *l, gint64 day)
{
	gint64 sum = stock_of(l->quantity);

	for (guint i = 0; i < s->taken->len; i++) {
		const struct taken *t = &g_array_index(s->taken, struct taken, i);

		sum -= t->lot == l->id && t->date <= day ? stock_of(t->quantity) : 0;
	}
	return sum;
}

static gint64
there_on(const struct stores *s, const struct item *i, gint64 day)
{
	gint64 sum = 0;

	for (guint k = 0; k < s->lots->len; k++) {
		const struct lot *l = stores_lot(s, k);

		if (l->item == i->id && l->arrived != NONE && l->arrived <= day)
			sum += left_on(s, l, day);
	}
	return sum;
}

/* What is missing on a day can't have been taken later: as much must be left of what was there. */
static gboolean
check_missing(const struct stores *s, const struct item *i, const struct store_count *c, GError **err)
{
	g_autoptr(GArray) all = picks(s, i, c->date, FALSE);
	gint64 left = 0;
	char d[16];

	for (guint k = 0; k < all->len; k++)
		left += stores_left(s, g_array_index(all, struct pick, k).at);
	return -c->more <= left
	    || err_set(err, ERR_CONFLICT, "%s: more than that was taken after %s: count what is there today", i->what,
		       day_words(c->date, d));
}

gboolean
book_counted(struct book *b, const struct item *i, struct store_count *c, GError **err)
{
	struct stores *s = check_day(b, c->date, err) ? book_stores(b, err) : NULL;
	g_autofree char *n = item_quantity(i, c->quantity);
	g_autofree char *words = g_strconcat("counted: there are ", n, c->remark ? ", " : NULL, c->remark, NULL);
	struct store_take t = { i->id, 0, c->date, NONE, NONE, NONE, words, TRUE };
	gboolean ok;

	if (!s)
		return FALSE;
	c->more = c->quantity - there_on(s, i, c->date);
	ok = check_missing(s, i, c, err);
	stores_free(s);
	t.quantity = ABS(c->more);
	if (!ok || !c->more)
		return ok;
	return book_begin(b, err)
	    && book_end(b, count(b, &t, c, err), err, "stores: counted %s %s", n, i->what);
}

gboolean
stores_first_lot(struct book *b, const struct store_use *u, gint64 day, struct lot *lot, GError **err)
{
	struct stores *s = book_stores(b, err);
	const struct item *i = s ? stores_item(s, u->item) : NULL;
	g_autoptr(GArray) all = i ? picks(s, i, day, TRUE) : NULL;

	record_init(RECORD_LOT, lot);
	if (all && all->len)
		copy_lot(lot, stores_lot(s, g_array_index(all, struct pick, 0).at));
	stores_free(s);
	return s != NULL;
}
