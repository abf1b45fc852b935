/* stores: what is recorded. */
#include "cli/cmd_stores.h"
#include "cli/show.h"
#include "cli/stores_text.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/stores_take.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* An item by the word at that place, and the number of it at the next. */
struct named {
	struct stores *stores;
	const struct item *item;
	gint64 quantity;
};

static gboolean
read_named(struct cli *c, struct book *b, const struct args *a, struct named *n, GError **err)
{
	const char *item = args_word(a, 1), *quantity = args_word(a, 2);

	*n = (struct named){ NULL, NULL, 0 };
	if (!item)
		return err_set(err, ERR_USE, "which item? splitpin stores lists them");
	if (quantity && !stock_parse(quantity, &n->quantity, err))
		return err_prefix(err, "how many: ");
	n->stores = book_stores(b, err);
	n->item = n->stores ? stores_named(c, n->stores, item, err) : NULL;
	return n->item != NULL;
}

static gboolean
want_quantity(const struct args *a, GError **err)
{
	return args_word(a, 2) || err_set(err, ERR_USE, "how many? splitpin stores %s ITEM N", args_word(a, 0));
}

/* "N" or "N@SUPPLIER". */
static void
read_number(const char *text, struct number *n)
{
	const char *at = strrchr(text, '@');
	gboolean two = at && at > text && at[1];

	record_init(RECORD_NUMBER, n);
	n->number = two ? g_strndup(text, (gsize)(at - text)) : g_strdup(text);
	n->supplier = two ? g_strdup(at + 1) : NULL;
}

static gboolean
read_item(const struct args *a, struct item *i, GError **err)
{
	const char *keep = args_value(a, "keep");
	gint64 quantity;

	if (keep && !stock_parse(keep, &quantity, err))
		return err_prefix(err, "--keep: ");
	if (keep)
		i->keep = quantity ? stock_real(quantity) : (double)NAN;
	if (args_flag(a, "rubber"))
		i->rubber = 1;
	if (args_value(a, "unit")) {
		g_free(i->unit);
		i->unit = *args_value(a, "unit") ? g_strdup(args_value(a, "unit")) : NULL;
	}
	if (args_value(a, "remark")) {
		g_free(i->remark);
		i->remark = g_strdup(args_value(a, "remark"));
	}
	return opt_count(a, "shelf", &i->shelf_months, err) && opt_count(a, "lead", &i->lead_days, err);
}

static gboolean
put_item(struct cli *c, struct book *b, const struct args *a, struct item *i, GError **err)
{
	g_autofree struct number *n = NULL;
	int n_numbers = 0;
	gboolean ok;

	while (args_nth(a, "number", n_numbers))
		n_numbers++;
	n = g_new(struct number, (gsize)n_numbers + 1);
	for (int k = 0; k < n_numbers; k++)
		read_number(args_nth(a, "number", k), &n[k]);
	ok = read_item(a, i, err) && book_put_item(b, i, n, n_numbers, err);
	for (int k = 0; k < n_numbers; k++)
		record_clear(RECORD_NUMBER, &n[k]);
	if (ok)
		cli_say(c, 2, "%s: in the stores' list%s", i->what,
			i->lead_days == NONE ? "; how long it takes to come: --lead DAYS" : "");
	return ok;
}

gboolean
stores_add(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct item i;
	gboolean ok;

	(void)boat;
	if (!args_word(a, 1))
		return err_set(err, ERR_USE, "what is it? splitpin stores add \"bellows, U-joint\"");
	record_init(RECORD_ITEM, &i);
	i.what = g_strdup(args_word(a, 1));
	ok = put_item(c, b, a, &i, err);
	record_clear(RECORD_ITEM, &i);
	return ok;
}

gboolean
stores_set(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct named n;
	struct item i;
	gboolean ok = read_named(c, b, a, &n, err);

	(void)boat;
	if (ok) {
		i = *n.item;
		i.what = g_strdup(i.what);
		i.unit = g_strdup(i.unit);
		i.remark = g_strdup(i.remark);
		ok = put_item(c, b, a, &i, err);
		record_clear(RECORD_ITEM, &i);
	}
	stores_free(n.stores);
	return ok;
}

gboolean
stores_number(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	const char *old = args_value(a, "replaces"), *new = args_word(a, 2);
	const struct item *item;
	struct stores *s;
	struct number n;
	gboolean ok;

	(void)boat;
	if (!new || !args_word(a, 1))
		return err_set(err, ERR_USE, "which number? splitpin stores number ITEM NEW [--replaces OLD]");
	s = book_stores(b, err);
	item = s ? stores_named(c, s, args_word(a, 1), err) : NULL;
	if (!item) {
		stores_free(s);
		return FALSE;
	}
	read_number(new, &n);
	if (old) {
		ok = book_replace_number(b, item, &n, old, err);
	} else {
		struct item same = *item;

		ok = book_put_item(b, &same, &n, 1, err);
	}
	if (ok)
		cli_say(c, 2, "%s: %s%s%s%s", item->what, n.number, old ? " takes the place of " : "", old ? old : "",
			old ? "" : " is one of its numbers");
	record_clear(RECORD_NUMBER, &n);
	stores_free(s);
	return ok;
}

/* A month is known to its first day: the older, the safer. */
static gboolean
read_made(const struct cli *c, const struct args *a, gint64 *made, GError **err)
{
	const char *text = args_value(a, "made");
	gint64 first, last;

	if (!text)
		return TRUE;
	if (!day_span_parse(text, c->who.today, &first, &last, err))
		return err_prefix(err, "--made: ");
	*made = first == NONE ? last : first;
	return TRUE;
}

static gboolean
read_lot(const struct cli *c, const struct args *a, struct lot *l, GError **err)
{
	const char *price = args_value(a, "price");
	char currency[4] = "";

	if (price && !money_parse(price, &l->price, currency, err))
		return err_prefix(err, "--price: ");
	l->currency = *currency ? g_strdup(currency) : NULL;
	l->number = g_strdup(args_value(a, "number"));
	l->supplier = g_strdup(args_value(a, "supplier"));
	l->place = g_strdup(args_value(a, "place"));
	l->remark = g_strdup(args_value(a, "remark"));
	return read_made(c, a, &l->made, err);
}

static void
say_here(const struct cli *c, struct book *b, gint64 id)
{
	struct stores *s = book_stores(b, NULL);
	const struct item *i = s ? stores_item(s, id) : NULL;
	g_autofree char *here = i ? item_quantity(i, stores_on_hand(s, i, NONE)) : NULL,
			*come = i ? item_quantity(i, stores_to_come(s, i)) : NULL;

	if (i && stores_to_come(s, i))
		cli_say(c, 2, "%s: %s on hand, %s to come", i->what, here, come);
	else if (i)
		cli_say(c, 2, "%s: %s on hand", i->what, here);
	stores_free(s);
}

/* Bought by a number, without another being said, it is of that one, as it is typed on record. */
static void
number_met(const struct named *n, const struct args *a, struct lot *l)
{
	const struct number *by = NULL;

	if (!l->number && stores_find(n->stores, args_word(a, 1), &by, NULL) && by)
		l->number = g_strdup(by->number);
}

static gboolean
put_lot(struct cli *c, struct book *b, const struct args *a, gboolean here, GError **err)
{
	gint64 date = c->who.today;
	struct named n = { 0 };
	struct lot l;
	gboolean ok;

	record_init(RECORD_LOT, &l);
	ok = want_quantity(a, err) && read_named(c, b, a, &n, err) && opt_date(c, a, "date", &date, err)
	  && opt_date(c, a, "expected", &l.expected, err) && read_lot(c, a, &l, err);
	if (ok) {
		number_met(&n, a, &l);
		l.quantity = stock_real(n.quantity);
		*(here ? &l.arrived : &l.ordered) = date;
		if (!here && l.expected == NONE && n.item->lead_days != NONE)
			l.expected = date + n.item->lead_days;
		ok = book_put_lot(b, n.item, &l, err);
	}
	if (ok)
		say_here(c, b, n.item->id);
	record_clear(RECORD_LOT, &l);
	stores_free(n.stores);
	return ok;
}

gboolean
stores_bought(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	(void)boat;
	return put_lot(c, b, a, TRUE, err);
}

gboolean
stores_ordered(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	(void)boat;
	return put_lot(c, b, a, FALSE, err);
}

/* The order that is meant: by its key, or the only one of the item. */
static gboolean
find_order(struct cli *c, const struct stores *s, const char *text, const struct lot **order, GError **err)
{
	g_autoptr(GString) keys = g_string_new(NULL);
	const struct item *i;
	gint64 key;
	int n = 0;

	*order = book_key(text, &key) ? stores_lot_of(s, key) : NULL;
	if (*order)
		return TRUE;
	i = stores_named(c, s, text, err);
	for (guint k = 0; i && k < s->lots->len; k++) {
		const struct lot *l = stores_lot(s, k);
		g_autofree char *word = book_key_text(l->id);

		if (l->item != i->id || l->arrived != NONE)
			continue;
		*order = l;
		g_string_append_printf(keys, "%s%s", n++ ? ", " : "", word);
	}
	if (n > 1)
		return err_set(err, ERR_INPUT, "which order of %s? name its key: %s", i->what, keys->str);
	return n == 1 || (i && err_set(err, ERR_NOT_FOUND, "nothing of %s is to come: splitpin stores bought records what came",
				       i->what));
}

gboolean
stores_here(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	const struct lot *order = NULL;
	struct stores *s;
	struct lot l;
	gboolean ok;

	(void)boat;
	if (!args_word(a, 1))
		return err_set(err, ERR_USE, "what arrived? splitpin stores arrived ITEM");
	record_init(RECORD_LOT, &l);
	s = book_stores(b, err);
	ok = s && find_order(c, s, args_word(a, 1), &order, err) && opt_date(c, a, "date", &l.arrived, err)
	  && read_lot(c, a, &l, err) && book_arrived(b, order->id, &l, err);
	if (ok)
		say_here(c, b, order->item);
	record_clear(RECORD_LOT, &l);
	stores_free(s);
	return ok;
}

static gboolean
took(struct cli *c, struct book *b, const struct named *n, const struct store_take *t, GError **err)
{
	g_autoptr(GArray) taken = NULL;
	g_autofree char *words = NULL;

	if (!book_took(b, t, &taken, err))
		return FALSE;
	words = store_taken_words(n->item, taken, t->date);
	cli_say(c, 2, "%s, out of the stores: %s", n->item->what, words);
	return TRUE;
}

gboolean
stores_took(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct store_take t = { .date = c->who.today, .boat = boat->id, .job = NONE, .service = NONE, .sure = args_flag(a, "yes") };
	struct named n = { 0 };
	gboolean ok = want_quantity(a, err) && read_named(c, b, a, &n, err) && opt_date(c, a, "date", &t.date, err)
		   && store_take_why(b, boat, args_value(a, "for"), &t, err);

	if (ok) {
		t.item = n.item->id;
		t.quantity = n.quantity;
		ok = args_flag(a, "back") ? book_put_back(b, &t, err) : took(c, b, &n, &t, err);
	}
	if (ok)
		say_here(c, b, n.item->id);
	stores_free(n.stores);
	return ok;
}

gboolean
stores_counted(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct store_count t = { 0, c->who.today, args_value(a, "remark"), 0 };
	struct named n = { 0 };
	gboolean ok = want_quantity(a, err) && read_named(c, b, a, &n, err) && opt_date(c, a, "date", &t.date, err);

	(void)boat;
	t.quantity = n.quantity;
	ok = ok && book_counted(b, n.item, &t, err);
	if (ok) {
		g_autofree char *off = item_quantity(n.item, ABS(t.more));

		cli_say(c, 2, "%s: %s%s", n.item->what, t.more ? off : "as on record",
			t.more < 0   ? " missing, taken off the record"
			: t.more > 0 ? " more than on record, put on it without a price"
				     : "");
	}
	stores_free(n.stores);
	return ok;
}

/* What the task needs of the item already; NULL: nothing. */
static const struct need *
need_there(const struct stores *s, const struct task *t, const struct item *i)
{
	for (guint k = 0; k < s->needs->len; k++) {
		const struct need *n = &g_array_index(s->needs, struct need, k);

		if (n->task == t->id && n->item == i->id)
			return n;
	}
	return NULL;
}

gboolean
stores_need(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct stores *s;
	const struct item *i = NULL;
	const struct need *was;
	struct task t;
	gint64 quantity = STOCK_ONE;
	gboolean ok, on_condition = args_flag(a, "on-condition");

	if (!args_word(a, 2))
		return err_set(err, ERR_USE, "which task needs what? splitpin stores need TASK ITEM [N]");
	if (args_word(a, 3) && !stock_parse(args_word(a, 3), &quantity, err))
		return err_prefix(err, "how many: ");
	if (!book_find_task(b, boat->id, args_word(a, 1), &t, err))
		return FALSE;
	s = book_stores(b, err);
	i = s ? stores_named(c, s, args_word(a, 2), err) : NULL;
	was = i && !args_word(a, 3) ? need_there(s, &t, i) : NULL;
	if (was) {
		quantity = stock_of(was->quantity);
		on_condition = on_condition || was->on_condition == 1;
	}
	ok = i && book_put_need(b, &t, i, quantity, on_condition, err);
	if (ok) {
		g_autofree char *n = item_quantity(i, quantity);

		cli_say(c, 2, "%s needs %s of %s%s", t.name, quantity ? n : "none", i->what,
			quantity && on_condition ? ", when it is found bad" : "");
	}
	record_clear(RECORD_TASK, &t);
	stores_free(s);
	return ok;
}
