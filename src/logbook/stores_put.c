/* Recording in the stores: items, numbers, lots, what tasks need. */
#include "logbook/stores.h"

#include "base/date.h"
#include "base/err.h"
#include "base/text.h"
#include "logbook/inside.h"
#include "logbook/stores_check.h"

#include <string.h>

/* Names, numbers and places stand in lists, a line each. */
static void
one_line(char *text)
{
	if (text)
		g_strdelimit(text, "\n\r\t\v\f", ' ');
}

/* "@Quay": whose it is, and no number. */
static gboolean
check_number(struct number *n, GError **err)
{
	g_autofree char *shown = text_quoted(n->number ? n->number : "");

	one_line(n->number);
	one_line(n->supplier);
	return !n->number || *n->number != '@'
	    || err_set(err, ERR_INPUT, "%s is no number: it is wanted as in RB-204@SUPPLIER", shown);
}

static gboolean
check_numbers(struct number *n, int n_numbers, GError **err)
{
	for (int k = 0; k < n_numbers; k++) {
		if (!check_number(&n[k], err))
			return FALSE;
		for (int o = 0; o < k; o++)
			if (stores_same_text(n[o].number, n[k].number)
			    && (!n[k].supplier || stores_same_text(n[o].supplier, n[k].supplier)))
				return err_set(err, ERR_INPUT, "number %s is given twice", n[k].number);
	}
	return TRUE;
}

/* Another item of that name. */
static gboolean
check_name(const struct stores *s, const struct item *i, GError **err)
{
	for (guint k = 0; k < s->items->len; k++) {
		const struct item *o = stores_nth(s, k);

		if (o->id != i->id && i->what && stores_same_text(o->what, i->what))
			return err_set(err, ERR_CONFLICT, "%s is in the stores already: splitpin stores set changes it", o->what);
	}
	return TRUE;
}

/* The number of that text that the item has, of that supplier, or of any when none is said; *err when it is another item's, and the
 * suppliers do not tell the two apart. */
static const struct number *
number_there(const struct stores *s, const struct number *n, GError **err)
{
	for (guint k = 0; k < s->numbers->len; k++) {
		const struct number *o = &g_array_index(s->numbers, struct number, k);
		const struct item *of = stores_item(s, o->item);
		gboolean mine = o->item == n->item;

		if (!stores_same_text(o->number, n->number)
		    || (n->supplier && (o->supplier || mine) && !stores_same_text(o->supplier, n->supplier)))
			continue;
		if (!mine)
			err_set(err, ERR_CONFLICT, "%s is already the number of %s: say whose it is, as in %s@SUPPLIER", o->number,
				of ? of->what : "an item that is not there", o->number);
		return o;
	}
	return NULL;
}

static gboolean
write_item(struct book *b, const struct stores *s, struct item *i, struct number *n, int n_numbers, GError **err)
{
	g_autoptr(GError) taken = NULL;

	if (!book_put(b, RECORD_ITEM, i, err))
		return FALSE;
	for (int k = 0; k < n_numbers; k++) {
		n[k].item = i->id;
		if (number_there(s, &n[k], &taken) && !taken)
			continue;
		if (taken) {
			g_propagate_error(err, g_steal_pointer(&taken));
			return FALSE;
		}
		if (!book_put(b, RECORD_NUMBER, &n[k], err))
			return FALSE;
	}
	return TRUE;
}

gboolean
book_put_item(struct book *b, struct item *i, struct number *n, int n_numbers, GError **err)
{
	struct stores *s = check_numbers(n, n_numbers, err) ? book_stores(b, err) : NULL;
	gboolean new = i->id == NONE, ok;

	if (!s)
		return FALSE;
	one_line(i->what);
	if (i->what)
		g_strstrip(i->what);
	ok = item_check(i, err) && check_name(s, i, err) && book_begin(b, err)
	  && book_end(b, write_item(b, s, i, n, n_numbers, err), err, "stores: %s%s", i->what ? i->what : "",
		      new ? " added" : "");
	stores_free(s);
	return ok;
}

/* The one number of the item with that text. */
static struct number *
number_named(struct stores *s, const struct item *i, const char *text, GError **err)
{
	struct number *hit = NULL;
	g_autofree char *numbers = stores_numbers(s, i->id);

	for (guint k = 0; k < s->numbers->len; k++) {
		struct number *n = &g_array_index(s->numbers, struct number, k);

		if (n->item != i->id || !stores_same_text(n->number, text))
			continue;
		if (hit) {
			err_set(err, ERR_CONFLICT, "%s is the number of two suppliers: say whose is replaced, as in %s@%s",
				n->number, n->number, n->supplier ? n->supplier : hit->supplier);
			return NULL;
		}
		hit = n;
	}
	if (!hit)
		err_set(err, ERR_NOT_FOUND, "%s has no number \"%.40s\"%s%s", i->what, text, numbers ? ": it has " : "",
			numbers ? numbers : "");
	return hit;
}

/* The same of "NUMBER@SUPPLIER". */
static struct number *
number_meant(struct stores *s, const struct item *i, const char *text, GError **err)
{
	const char *at = strrchr(text, '@');

	for (guint k = 0; at && k < s->numbers->len; k++) {
		struct number *n = &g_array_index(s->numbers, struct number, k);
		g_autofree char *number = g_strndup(text, (gsize)(at - text));

		if (n->item == i->id && stores_same_text(n->number, number) && stores_same_text(n->supplier, at + 1))
			return n;
	}
	return number_named(s, i, text, err);
}

static void
lot_one_line(struct lot *l)
{
	one_line(l->number);
	one_line(l->supplier);
	one_line(l->place);
}

static gboolean
write_replaced(struct book *b, struct number *n, struct number *old, GError **err)
{
	if (n->id == NONE && !book_put(b, RECORD_NUMBER, n, err))
		return FALSE;
	old->replaced_by = n->id;
	return book_put(b, RECORD_NUMBER, old, err);
}

static gboolean
replace(struct book *b, struct stores *s, struct number *n, struct number *old, GError **err)
{
	g_autoptr(GError) taken = NULL;
	const struct number *there = number_there(s, n, &taken);

	if (taken) {
		g_propagate_error(err, g_steal_pointer(&taken));
		return FALSE;
	}
	if (there)
		n->id = there->id;
	if (there == old)
		return err_set(err, ERR_CONFLICT, "%s does not take its own place", old->number);
	if (there && stores_current(s, there) == old)
		return err_set(err, ERR_CONFLICT, "%s took the place of %s: numbers that replace each other in a circle",
			       old->number, there->number);
	if (old->replaced_by != NONE && old->replaced_by != n->id)
		return err_set(err, ERR_CONFLICT, "%s has %s in its place: say what replaces that one", old->number,
			       stores_current(s, old)->number);
	return book_begin(b, err)
	    && book_end(b, write_replaced(b, n, old, err), err, "stores: %s takes the place of %s", n->number, old->number);
}

gboolean
book_replace_number(struct book *b, const struct item *i, struct number *n, const char *old, GError **err)
{
	struct stores *s = check_number(n, err) ? book_stores(b, err) : NULL;
	struct number *was = s ? number_meant(s, i, old, err) : NULL;
	gboolean ok;

	n->item = i->id;
	ok = was && replace(b, s, n, was, err);
	stores_free(s);
	return ok;
}

gboolean
book_put_lot(struct book *b, const struct item *i, struct lot *l, GError **err)
{
	g_autofree char *n = NULL;

	l->item = i->id;
	lot_one_line(l);
	if (!lot_check(l, b->who.today, err))
		return FALSE;
	n = item_quantity(i, stock_of(l->quantity));
	return book_begin(b, err)
	    && book_end(b, book_put(b, RECORD_LOT, l, err), err, "stores: %s %s %s", n, i->what,
			l->arrived == NONE ? "ordered" : "bought");
}

static void
say_text(char **to, const char *from)
{
	if (!from)
		return;
	g_free(*to);
	*to = g_strdup(from);
}

static gboolean
arrive(struct book *b, struct lot *was, const struct lot *l, GError **err)
{
	char d[DAY_TEXT];

	if (was->arrived != NONE)
		return err_set(err, ERR_CONFLICT, "it arrived on %s already", day_iso(was->arrived, d));
	was->arrived = l->arrived == NONE ? b->who.today : l->arrived;
	was->made = l->made == NONE ? was->made : l->made;
	if (l->price != NONE) {
		was->price = l->price;
		g_clear_pointer(&was->currency, g_free);
		was->currency = g_strdup(l->currency);
	}
	say_text(&was->place, l->place);
	say_text(&was->number, l->number);
	say_text(&was->supplier, l->supplier);
	say_text(&was->remark, l->remark);
	lot_one_line(was);
	return lot_check(was, b->who.today, err) && book_begin(b, err)
	    && book_end(b, book_put(b, RECORD_LOT, was, err), err, "stores: an order arrived");
}

gboolean
book_arrived(struct book *b, gint64 lot, const struct lot *l, GError **err)
{
	struct lot was;
	gboolean ok;

	record_init(RECORD_LOT, &was);
	ok = row_get(b->db, RECORD_LOT, lot, &was, err) && arrive(b, &was, l, err);
	record_clear(RECORD_LOT, &was);
	return ok;
}

gboolean
book_put_need(struct book *b, const struct task *t, const struct item *i, gint64 quantity, gboolean on_condition, GError **err)
{
	struct stores *s = book_stores(b, err);
	g_autofree char *n = item_quantity(i, quantity);
	struct need need;
	gboolean ok;

	if (!s)
		return FALSE;
	record_init(RECORD_NEED, &need);
	for (guint k = 0; k < s->needs->len && need.id == NONE; k++)
		if (g_array_index(s->needs, struct need, k).task == t->id && g_array_index(s->needs, struct need, k).item == i->id)
			need.id = g_array_index(s->needs, struct need, k).id;
	stores_free(s);
	if (!quantity && need.id == NONE)
		return err_set(err, ERR_NOT_FOUND, "%s needs no %s: there is nothing to take away", t->name, i->what);
	need.item = i->id;
	need.task = t->id;
	need.quantity = stock_real(quantity);
	need.on_condition = on_condition ? 1 : NONE;
	ok = book_begin(b, err)
	  && book_end(b, quantity ? book_put(b, RECORD_NEED, &need, err) : row_drop(b->db, RECORD_NEED, need.id, err), err,
		      "stores: %s needs %s %s", t->name, quantity ? n : "no", i->what);
	record_clear(RECORD_NEED, &need);
	return ok;
}
