#include "logbook/stores.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/inside.h"

#include <math.h>
#include <string.h>

gint64
stock_of(double real)
{
	return (gint64)llround(real * STOCK_ONE);
}

double
stock_real(gint64 quantity)
{
	return (double)quantity / STOCK_ONE;
}

gboolean
stock_check(double real, gboolean signs, GError **err)
{
	if (isnan(real))
		return err_set(err, ERR_INPUT, "how many? a quantity is wanted");
	if (fabs(real) > (double)STOCK_MOST / STOCK_ONE)
		return err_set(err, ERR_INPUT, "%.10g: a quantity is at most a million", real);
	if (!signs && real < 0)
		return err_set(err, ERR_INPUT, "%.10g: a quantity is not below nothing", real);
	if (fabs(real * STOCK_ONE - (double)stock_of(real)) > 1e-6)
		return err_set(err, ERR_INPUT, "%.10g: a quantity has at most three places", real);
	return stock_of(real) != 0 || err_set(err, ERR_INPUT, "a quantity of nothing: more is wanted");
}

gboolean
stock_parse(const char *text, gint64 *quantity, GError **err)
{
	double real;

	if (!number_parse(text, &real, err))
		return FALSE;
	if (real != 0 && !stock_check(real, FALSE, err))
		return FALSE;
	*quantity = stock_of(real);
	return TRUE;
}

const char *
stock_text(gint64 quantity, char buf[STOCK_TEXT])
{
	char number[NUMBER_TEXT];

	g_strlcpy(buf, number_exact(stock_real(quantity), number), STOCK_TEXT);
	return buf;
}

char *
item_quantity(const struct item *i, gint64 quantity)
{
	char buf[STOCK_TEXT];

	return g_strconcat(stock_text(quantity, buf), i->unit ? " " : "", i->unit ? i->unit : "", NULL);
}

void
stores_free(struct stores *s)
{
	if (!s)
		return;
	g_clear_pointer(&s->items, g_array_unref);
	g_clear_pointer(&s->numbers, g_array_unref);
	g_clear_pointer(&s->lots, g_array_unref);
	g_clear_pointer(&s->taken, g_array_unref);
	g_clear_pointer(&s->needs, g_array_unref);
	g_clear_pointer(&s->left, g_array_unref);
	g_free(s);
}

static int
by_id(const void *a, const void *b)
{
	const struct lot *const *x = a, *const *y = b;

	return ((*x)->id > (*y)->id) - ((*x)->id < (*y)->id);
}

/* Where a lot stands among the lots, by its key; G_MAXUINT when a damaged file has no such lot. */
static guint
lot_at(const struct stores *s, GPtrArray *sorted, gint64 id)
{
	guint low = 0, high = sorted->len;

	while (low < high) {
		guint middle = (low + high) / 2;

		if (((const struct lot *)sorted->pdata[middle])->id < id)
			low = middle + 1;
		else
			high = middle;
	}
	if (low == sorted->len || ((const struct lot *)sorted->pdata[low])->id != id)
		return G_MAXUINT;
	return (guint)((const struct lot *)sorted->pdata[low] - (const struct lot *)(const void *)s->lots->data);
}

static void
work_out_left(struct stores *s)
{
	g_autoptr(GPtrArray) sorted = g_ptr_array_new();

	for (guint i = 0; i < s->lots->len; i++) {
		const struct lot *l = stores_lot(s, i);
		gint64 left = stock_of(l->quantity);

		g_ptr_array_add(sorted, (gpointer)(guintptr)l);
		g_array_append_val(s->left, left);
	}
	g_ptr_array_sort(sorted, by_id);
	for (guint i = 0; i < s->taken->len; i++) {
		const struct taken *t = &g_array_index(s->taken, struct taken, i);
		guint at = lot_at(s, sorted, t->lot);

		if (at != G_MAXUINT)
			g_array_index(s->left, gint64, at) -= stock_of(t->quantity);
	}
}

struct stores *
book_stores(struct book *b, GError **err)
{
	struct stores *s = g_new0(struct stores, 1);

	s->items = book_records(b, RECORD_ITEM, NONE, err);
	s->numbers = s->items ? book_records(b, RECORD_NUMBER, NONE, err) : NULL;
	s->lots = s->numbers ? book_records(b, RECORD_LOT, NONE, err) : NULL;
	s->taken = s->lots ? book_records(b, RECORD_TAKEN, NONE, err) : NULL;
	s->needs = s->taken ? book_gather(b, RECORD_NEED, sql_all(RECORD_NEED), NONE, err) : NULL;
	if (!s->needs) {
		stores_free(s);
		return NULL;
	}
	s->left = g_array_new(FALSE, FALSE, sizeof(gint64));
	work_out_left(s);
	return s;
}

const struct item *
stores_nth(const struct stores *s, guint i)
{
	return i < s->items->len ? &g_array_index(s->items, struct item, i) : NULL;
}

const struct item *
stores_item(const struct stores *s, gint64 id)
{
	for (guint i = 0; i < s->items->len; i++)
		if (stores_nth(s, i)->id == id)
			return stores_nth(s, i);
	return NULL;
}

const struct lot *
stores_lot(const struct stores *s, guint i)
{
	return i < s->lots->len ? &g_array_index(s->lots, struct lot, i) : NULL;
}

const struct lot *
stores_lot_of(const struct stores *s, gint64 id)
{
	for (guint i = 0; i < s->lots->len; i++)
		if (stores_lot(s, i)->id == id)
			return stores_lot(s, i);
	return NULL;
}

gint64
stores_left(const struct stores *s, guint lot)
{
	return g_array_index(s->left, gint64, lot);
}

static gint64
day_made(const struct lot *l)
{
	if (l->made != NONE)
		return l->made;
	return l->arrived;
}

void
lot_age(const struct item *i, const struct lot *l, gint64 day, struct lot_age *age)
{
	gint64 made = day_made(l);

	age->matters = i->rubber == 1 || i->shelf_months != NONE;
	age->months = made == NONE ? -1 : MAX(day_months_between(made, day), 0);
	age->at_least = l->made == NONE;
	age->stale = i->shelf_months != NONE && made != NONE && day_add_months(made, (int)i->shelf_months) < day;
}

char *
lot_age_words(const struct item *i, const struct lot *l, gint64 day)
{
	g_autoptr(GString) out = g_string_new(NULL);
	struct lot_age age;
	char made[DAY_TEXT];

	lot_age(i, l, day, &age);
	if (!age.matters)
		return NULL;
	if (l->made == NONE)
		g_string_append(out, "nobody knows when it was made");
	else
		g_string_append_printf(out, "made %.7s", day_iso(l->made, made));
	if (age.months >= 0)
		g_string_append_printf(out, ", %s%d months", age.at_least ? "here " : "", age.months);
	if (i->shelf_months != NONE)
		g_string_append_printf(out, ", may lie %d", (int)i->shelf_months);
	return g_string_free(g_steal_pointer(&out), FALSE);
}

gint64
stores_on_hand(const struct stores *s, const struct item *i, gint64 fresh_on)
{
	gint64 sum = 0;

	for (guint k = 0; k < s->lots->len; k++) {
		const struct lot *l = stores_lot(s, k);
		struct lot_age age;

		if (l->item != i->id || l->arrived == NONE)
			continue;
		lot_age(i, l, fresh_on == NONE ? l->arrived : fresh_on, &age);
		if (fresh_on == NONE || !age.stale)
			sum += stores_left(s, k);
	}
	return sum;
}

gint64
stores_to_come(const struct stores *s, const struct item *i)
{
	gint64 sum = 0;

	for (guint k = 0; k < s->lots->len; k++)
		if (stores_lot(s, k)->item == i->id && stores_lot(s, k)->arrived == NONE)
			sum += stores_left(s, k);
	return sum;
}
