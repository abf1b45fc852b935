#include "logbook/stores_check.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"

#include <math.h>
#include <string.h>

gboolean
item_check(const struct item *i, GError **err)
{
	if (i->shelf_months != NONE && (i->shelf_months < 1 || i->shelf_months > 600))
		return err_set(err, ERR_INPUT, "%d months on the shelf: it is 1 to 600", (int)i->shelf_months);
	if (i->lead_days != NONE && (i->lead_days < 0 || i->lead_days > 1000))
		return err_set(err, ERR_INPUT, "%d days from ordering to having: it is 0 to 1000", (int)i->lead_days);
	return isnan(i->keep) || i->keep == 0 || stock_check(i->keep, FALSE, err) || err_prefix(err, "to keep: ");
}

gboolean
lot_check(const struct lot *l, gint64 today, GError **err)
{
	char d[DAY_TEXT], m[MONEY_TEXT];

	if (!stock_check(l->quantity, FALSE, err))
		return FALSE;
	if (l->price != NONE && l->price < 0)
		return err_set(err, ERR_INPUT, "%s: a price is not below nothing; 0 is for what was free",
			       money_exact(l->price, m));
	if (l->currency && (strlen(l->currency) != 3 || strspn(l->currency, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != 3))
		return err_set(err, ERR_INPUT, "currency \"%.20s\": three capitals are wanted, as in EUR", l->currency);
	if (l->price == NONE && l->currency)
		return err_set(err, ERR_INPUT, "a currency without a price");
	if (l->arrived != NONE && l->arrived > today)
		return err_set(err, ERR_INPUT, "%s lies ahead of today: what is to come is ordered, and expected then",
			       day_iso(l->arrived, d));
	if (l->ordered != NONE && l->ordered > today)
		return err_set(err, ERR_INPUT, "ordered on %s, ahead of today", day_iso(l->ordered, d));
	if (l->ordered != NONE && l->expected != NONE && l->expected < l->ordered)
		return err_set(err, ERR_INPUT, "expected on %s, before it was ordered", day_iso(l->expected, d));
	if (l->made != NONE && l->made > (l->arrived == NONE ? today : l->arrived))
		return err_set(err, ERR_INPUT, "made on %s, after it arrived", day_iso(l->made, d));
	if (l->ordered != NONE && l->arrived != NONE && l->arrived < l->ordered)
		return err_set(err, ERR_INPUT, "it arrived before it was ordered, on %s", day_iso(l->ordered, d));
	return TRUE;
}

/* Whom to tell, and of what. */
struct telling {
	const struct stores *stores;
	void (*say)(void *user, const char *text);
	void *user;
};

static void
tell(const struct telling *to, char *text)
{
	to->say(to->user, text);
	g_free(text);
}

static void
check_numbers(const struct telling *to)
{
	const GArray *all = to->stores->numbers;

	for (guint i = 0; i < all->len; i++) {
		const struct number *n = &g_array_index(all, struct number, i);
		g_autoptr(GError) circle = NULL;

		if (!stores_check_chain(to->stores, n, &circle))
			tell(to, g_strdup(circle->message));
		else if (stores_current(to->stores, n)->item != n->item)
			tell(to, g_strdup_printf("%s is replaced by %s, the number of another item", n->number,
						 stores_current(to->stores, n)->number));
	}
}

/* A damaged file may have lots of an item that is gone. */
static const char *
name_of(const struct stores *s, gint64 item)
{
	const struct item *i = stores_item(s, item);

	return i && i->what ? i->what : "an item that is not there";
}

static void
check_lots(const struct telling *to)
{
	const struct stores *s = to->stores;
	char d[DAY_TEXT];

	for (guint i = 0; i < s->lots->len; i++)
		if (stores_left(s, i) < 0)
			tell(to, g_strdup_printf("%s: more is taken out of a lot than was in it",
						 name_of(s, stores_lot(s, i)->item)));
	for (guint i = 0; i < s->taken->len; i++) {
		const struct taken *t = &g_array_index(s->taken, struct taken, i);
		const struct lot *l = stores_lot_of(s, t->lot);

		if (l && (l->arrived == NONE || l->arrived > t->date))
			tell(to, g_strdup_printf("%s: taken on %s, before it arrived", name_of(s, l->item), day_iso(t->date, d)));
	}
}

gboolean
stores_check(struct book *b, void (*say)(void *user, const char *text), void *user, GError **err)
{
	struct stores *s = book_stores(b, err);
	const struct telling to = { s, say, user };

	if (!s)
		return FALSE;
	check_numbers(&to);
	check_lots(&to);
	stores_free(s);
	return TRUE;
}
