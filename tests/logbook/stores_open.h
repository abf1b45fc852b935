/* What the tests of the stores begin with: items, lots and needs, and days as they are written. */
#ifndef TESTS_LOGBOOK_STORES_OPEN_H
#define TESTS_LOGBOOK_STORES_OPEN_H

#include "logbook/stores_take.h"

#include "open.h"

static inline gint64
day(const char *text)
{
	gint64 d = NONE;

	ck_assert(day_parse(text, who.today, &d, NULL));
	return d;
}

/* An item's key, by its name. */
static inline gint64
item_key(const char *what)
{
	struct stores *s = book_stores(book, NULL);
	const struct item *i = s ? stores_find(s, what, NULL, NULL) : NULL;
	gint64 id;

	ck_assert_msg(i != NULL, "no item %s", what);
	id = i->id;
	stores_free(s);
	return id;
}

/* A lot of an item; more: made,ordered,expected,arrived,price,currency. */
static inline void
add_lot(const char *what, const char *quantity, const char *more)
{
	g_autofree char *key = book_key_text(item_key(what));
	g_autofree char *text = g_strdup_printf("item,quantity,made,ordered,expected,arrived,price,currency\n%s,%s,%s\n", key,
						quantity, more);

	import_text(RECORD_LOT, text);
}

static inline void
add_need(const char *task, const char *what, gint64 quantity, gboolean on_condition)
{
	struct stores *s = book_stores(book, NULL);
	g_autoptr(GError) err = NULL;
	struct task t;

	ck_assert_msg(book_find_task(book, boat.id, task, &t, &err), "%s", err ? err->message : "?");
	ck_assert_msg(book_put_need(book, &t, stores_find(s, what, NULL, NULL), quantity, on_condition, &err), "%s",
		      err ? err->message : "?");
	record_clear(RECORD_TASK, &t);
	stores_free(s);
}

/* A task on the engine, due so many months after it was done: "2026-06-01", or since a first day, "2026-06-01,2026-04-01". */
static inline void
add_due(const char *name, const char *place, const char *consequence, int months, const char *done)
{
	g_autofree char *task = g_strdup_printf("name,fitting,title,verb,place,mechanism,consequence,rule\n"
						"%s,engine,Do it,renew,%s,none,%s,renewal\n", name, place, consequence);
	g_autofree char *limit = g_strdup_printf("task,kind,amount,standing,source\n%s,months,%d,owner,own rule\n", name, months);
	g_autofree char *service = g_strdup_printf("task,outcome,date,earliest\n%s,renewed,%s%s\n", name, done,
						   strchr(done, ',') ? "" : ",");

	import_text(RECORD_TASK, task);
	import_text(RECORD_LIMIT, limit);
	import_text(RECORD_SERVICE, service);
}

#endif
