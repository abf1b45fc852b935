/* What the tests of the stores do by keys, and how they ask what is on record. */
#ifndef TESTS_TUI_STORES_KEYS_H
#define TESTS_TUI_STORES_KEYS_H

#include "form_keys.h"

#include "logbook/stores.h"

/* The item of that name, as on record; it points into the stores, which are the caller's. */
static inline struct stores *
named(const char *what, const struct item **i)
{
	struct stores *s = book_stores(app->book, NULL);

	*i = stores_find(s, what, NULL, NULL);
	ck_assert_msg(*i != NULL, "%s is not in the stores", what);
	return s;
}

static inline gint64
on_hand(const char *what)
{
	const struct item *i;
	struct stores *s = named(what, &i);
	gint64 n = stores_on_hand(s, i, NONE);

	stores_free(s);
	return n;
}

static inline guint
n_of(enum record r)
{
	g_autoptr(GArray) all = book_records(app->book, r, NONE, NULL);

	return all->len;
}

static inline void
add_item(const char *what, const char *number, const char *lead)
{
	key('a');
	fill("what", what);
	fill("number", number);
	fill("supplier", "Quay");
	fill("rubber", "y");
	fill("shelf", "48");
	fill("lead", lead);
	record();
	ck_assert(!in_form());
}

static inline void
add_lot(const char *way, const char *quantity, const char *price, const char *made, const char *place)
{
	key('b');
	fill("way", way);
	fill("quantity", quantity);
	fill("price", price);
	fill("made", made);
	fill("place", place);
	record();
	ck_assert(!in_form());
}

static inline void
add_need(const char *task, const char *quantity)
{
	key('n');
	fill("task", task);
	fill("quantity", quantity);
	record();
	ck_assert(!in_form());
}

/* Bellows of which one is too old and one is to come, late; oil that is there; an impeller without a price. */
static inline void
fill_stores(void)
{
	key('S');
	add_item("bellows, U-joint", "RB-204", "200");
	add_lot("came", "1", "61.80 USD", "2021-09", "bow locker");
	add_lot("ordered", "1", "", "", "");
	add_need("bellows-ujoint.renew", "2");
	add_item("impeller kit", "RK-7", "10");
	add_lot("came", "2", "", "2026-05", "shed");
	add_need("seawater-pump.renew", "1");
	add_item("anode set", "RA-31", "30");
	add_lot("came", "2", "90 USD", "", "shed");
	key('t');
	fill("for", "anodes.renew");
	record();
	ck_assert(!in_form());
}

#endif
