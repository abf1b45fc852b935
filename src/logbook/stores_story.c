#include "logbook/stores_story.h"

#include "base/amount.h"
#include "base/date.h"
#include "logbook/stores_cost.h"
#include "logbook/page.h"
#include "logbook/transfer.h"

#include <math.h>

/* ", word", when there is one. */
static void
add(GString *out, const char *word)
{
	if (word)
		g_string_append_printf(out, ", %s", word);
}

char *
stores_lot_words(const struct stores *s, guint lot, gint64 today)
{
	const struct lot *l = stores_lot(s, lot);
	const struct item none = { .shelf_months = NONE }, *known = stores_item(s, l->item), *i = known ? known : &none;
	gint64 day = l->arrived == NONE ? l->expected : l->arrived;
	g_autofree char *n = item_quantity(i, stores_left(s, lot)), *age = lot_age_words(i, l, today);
	const char *coming = l->expected < today ? ", overdue since" : ", expected";
	GString *out = g_string_new(n);
	struct lot_age old;
	char d[16];

	lot_age(i, l, today, &old);
	g_string_append(out, l->arrived == NONE ? " to come" : " on hand");
	if (day != NONE)
		g_string_append_printf(out, "%s %s", l->arrived == NONE ? coming : " since", day_words(day, d));
	add(out, l->number);
	if (l->arrived != NONE) {
		add(out, age);
		g_string_append(out, old.stale ? ": too old" : "");
	}
	add(out, l->place || l->arrived == NONE ? l->place : "place not said");
	return g_string_free(out, FALSE);
}

char *
stores_there_words(const struct stores *s, const struct item *i, gint64 today)
{
	gint64 here = stores_on_hand(s, i, NONE), fresh = stores_on_hand(s, i, today), to_come = stores_to_come(s, i);
	g_autofree char *n = item_quantity(i, here), *more = item_quantity(i, to_come), *old = item_quantity(i, here - fresh),
			*keep = item_quantity(i, isnan(i->keep) ? 0 : stock_of(i->keep));
	GString *out = g_string_new(here ? n : "none");

	if (here > fresh)
		g_string_append_printf(out, ", %s too old", old);
	if (to_come)
		g_string_append_printf(out, ", %s to come", more);
	if (!isnan(i->keep))
		g_string_append_printf(out, ", to keep %s", keep);
	return g_string_free(out, FALSE);
}

char *
stores_item_words(const struct stores *s, const struct item *i, gint64 today)
{
	g_autofree char *there = stores_there_words(s, i, today), *numbers = stores_numbers(s, i->id);

	return g_strconcat(i->what, ": ", there, numbers ? "   " : NULL, numbers, NULL);
}

static void
add_item(GString *out, const struct stores *s, const struct item *i)
{
	if (i->rubber == 1)
		g_string_append_printf(out, "rubber: it ages on the shelf%s\n",
				       i->shelf_months == NONE ? "; how long it may lie is not known" : "");
	if (i->shelf_months != NONE)
		g_string_append_printf(out, "may lie %d months\n", (int)i->shelf_months);
	if (i->lead_days == NONE)
		g_string_append(out, "how long it takes to come is not known\n");
	else
		g_string_append_printf(out, "takes %d days to come\n", (int)i->lead_days);
	if (i->remark)
		g_string_append_printf(out, "%s\n", i->remark);
	for (guint k = 0; k < s->numbers->len; k++) {
		const struct number *n = &g_array_index(s->numbers, struct number, k);

		if (n->item != i->id)
			continue;
		g_string_append_printf(out, "number %s%s%s", n->number, n->supplier ? " of " : "", n->supplier ? n->supplier : "");
		if (n->replaced_by != NONE)
			g_string_append_printf(out, ", superseded: %s is current", stores_current(s, n)->number);
		add(out, n->remark);
		g_string_append_c(out, '\n');
	}
}

static void
add_needs(GString *out, struct book *b, const struct stores *s, const struct item *i)
{
	for (guint k = 0; k < s->needs->len; k++) {
		const struct need *n = &g_array_index(s->needs, struct need, k);
		g_autofree char *words = item_quantity(i, stock_of(n->quantity));
		const char *task = n->item == i->id ? book_name_of(b, RECORD_TASK, n->task) : NULL;

		if (task)
			g_string_append_printf(out, "%s needs %s%s\n", task, words,
					       n->on_condition == 1 ? ", when it is found bad" : "");
	}
}

static void
add_money(GString *out, gint64 cents, const char *currency)
{
	char m[MONEY_TEXT];

	if (cents == NONE)
		return;
	g_string_append_printf(out, ", %s%s%s", money_exact(cents, m), currency ? " " : "", currency ? currency : "");
}

static void
add_lot(GString *out, const struct item *i, const struct lot *l)
{
	g_autofree char *n = item_quantity(i, stock_of(l->quantity));
	gint64 day = l->arrived == NONE ? l->ordered : l->arrived;
	char d[16];

	g_string_append_printf(out, "%-11s %s %s", day == NONE ? "no day" : day_words(day, d), n,
			       l->arrived == NONE ? "ordered" : "came in");
	add(out, l->number);
	add(out, l->supplier);
	add_money(out, l->price, l->currency);
	add(out, l->remark);
	g_string_append_c(out, '\n');
}

static void
add_taken(GString *out, struct book *b, const struct item *i, const struct taken *t)
{
	gint64 quantity = stock_of(t->quantity);
	g_autofree char *n = item_quantity(i, ABS(quantity));
	const char *boat = t->boat == NONE ? NULL : book_name_of(b, RECORD_BOAT, t->boat);
	char d[16];

	g_string_append_printf(out, "%-11s %s %s%s%s", day_words(t->date, d), n, quantity < 0 ? "put back" : "taken",
			       boat ? " for " : "", boat ? boat : "");
	if (t->remark) {
		g_string_append_printf(out, ": %s", t->remark);
	} else if (t->service != NONE) {
		struct service s;

		record_init(RECORD_SERVICE, &s);
		if (book_record(b, RECORD_SERVICE, t->service, &s, NULL))
			g_string_append_printf(out, ": %s", book_name_of(b, RECORD_TASK, s.task));
		record_clear(RECORD_SERVICE, &s);
	}
}

char *
stores_story(struct book *b, const struct stores *s, const struct item *i)
{
	g_autoptr(GArray) shares = stores_shares(s);
	GString *out = g_string_new(NULL);

	add_item(out, s, i);
	add_needs(out, b, s, i);
	for (guint k = 0; k < s->lots->len; k++)
		if (stores_lot(s, k)->item == i->id)
			add_lot(out, i, stores_lot(s, k));
	for (guint k = 0; k < s->taken->len; k++) {
		const struct taken *t = &g_array_index(s->taken, struct taken, k);
		const struct lot *l = stores_lot_of(s, t->lot);

		if (!l || l->item != i->id)
			continue;
		add_taken(out, b, i, t);
		add_money(out, g_array_index(shares, gint64, k), l->currency);
		g_string_append_c(out, '\n');
	}
	return g_string_free(out, FALSE);
}
