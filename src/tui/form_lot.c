/* So much of an item came, or was ordered; and what was ordered is here. */
#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/stores_check.h"
#include "tui/stores_view.h"

enum way { CAME, ORDERED };
static const char *const way_list[] = { "came", "ordered" };
static const struct words words_way = { "came or ordered", way_list, G_N_ELEMENTS(way_list) };

gint64
stores_typed_quantity(struct form *f, const char *field)
{
	gint64 quantity = 0;
	GError *err = NULL;

	if (!*form_text(f, field))
		err_set(&err, ERR_INPUT, "wanted: how many?");
	else
		stock_parse(form_text(f, field), &quantity, &err);
	form_wrong(f, field, &err);
	return quantity;
}

gint64
stores_typed_day(struct app *a, struct form *f, const char *field)
{
	gint64 day = NONE;
	GError *err = NULL;

	if (*form_text(f, field) && day_parse(form_text(f, field), app_today(a), &day, &err) && day > app_today(a))
		err_set(&err, ERR_INPUT, "that lies ahead");
	form_wrong(f, field, &err);
	return day;
}

static void
add_fields(struct app *a, struct form *f, gboolean expected)
{
	char day[DAY_TEXT];

	form_add(f, "price", "Price", "of all of it together: 61.80 EUR; empty: not known", NULL);
	form_add(f, "number", "Number", "the number under which it was bought, as it is printed", NULL);
	form_add(f, "supplier", "Supplier", "where it was bought", NULL);
	form_add(f, "made", "Made", "when it was made; a month will do: 2026-05; empty: not known", NULL);
	form_add(f, "place", "Place", "where it lies: bow locker", NULL);
	form_add(f, "date", "Date", form_date_hint, day_iso(app_today(a), day));
	if (expected)
		form_add(f, "expected", "Expected", "of what was ordered: the day it is to come", NULL);
	form_add_remark(f, NULL, NULL);
}

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	const struct item *i;
	struct stores *s = stores_of_form(a, f, &i, err);

	if (!s)
		return FALSE;
	f->heading = g_strdup_printf("%s%s%s", i->what, i->unit ? ", counted in " : "", i->unit ? i->unit : "");
	form_add_choice(f, "way", "It", &words_way, CAME, FALSE);
	form_add(f, "quantity", "How many", "3, 2.5", NULL);
	add_fields(a, f, TRUE);
	f->at = 1;
	stores_free(s);
	return TRUE;
}

static void
read_price(struct form *f, struct lot *l)
{
	char currency[4] = "";
	GError *err = NULL;

	if (*form_text(f, "price"))
		money_parse(form_text(f, "price"), &l->price, currency, &err);
	form_wrong(f, "price", &err);
	l->currency = *currency ? g_strdup(currency) : NULL;
}

/* A month is known to its first day: the older, the safer. */
static void
read_made(struct app *a, struct form *f, struct lot *l)
{
	gint64 first = NONE, last = NONE;
	GError *err = NULL;

	if (*form_text(f, "made") && day_span_parse(form_text(f, "made"), app_today(a), &first, &last, &err))
		l->made = first == NONE ? last : first;
	if (l->made != NONE && l->made > app_today(a))
		err_set(&err, ERR_INPUT, "that lies ahead");
	form_wrong(f, "made", &err);
}

static void
read_common(struct app *a, struct form *f, struct lot *l)
{
	record_init(RECORD_LOT, l);
	read_price(f, l);
	read_made(a, f, l);
	l->number = form_said(f, "number");
	l->supplier = form_said(f, "supplier");
	l->place = form_said(f, "place");
	l->remark = form_said(f, "remark");
}

/* What is said of one of the two ways only. */
static void
refuse_other_way(struct form *f, gboolean came)
{
	if (came && *form_text(f, "expected"))
		form_refuse(f, "expected", "of what was ordered only: leave it empty, or choose ordered");
	if (!came && *form_text(f, "made"))
		form_refuse(f, "made", "of what came only: i says it when it is here");
	if (!came && *form_text(f, "place"))
		form_refuse(f, "place", "of what came only: i says it when it is here");
}

static void
read_form(struct app *a, struct form *f, const struct item *i, struct lot *l)
{
	gboolean came = form_word(f, "way") == CAME;
	gint64 quantity, date = stores_typed_day(a, f, "date");
	GError *err = NULL;

	read_common(a, f, l);
	quantity = stores_typed_quantity(f, "quantity");
	if (*form_text(f, "quantity") && !quantity && !form_field(f, "quantity")->wrong)
		form_refuse(f, "quantity", "more than nothing is wanted");
	l->quantity = stock_real(quantity);
	*(came ? &l->arrived : &l->ordered) = date == NONE ? app_today(a) : date;
	refuse_other_way(f, came);
	if (!came && *form_text(f, "expected"))
		day_parse(form_text(f, "expected"), app_today(a), &l->expected, &err);
	form_wrong(f, "expected", &err);
	if (!came && l->expected == NONE && i && i->lead_days != NONE)
		l->expected = l->ordered + i->lead_days;
}

static char *
sum_of(const struct item *i, const struct lot *l, gint64 today)
{
	g_autofree char *n = item_quantity(i, stock_of(l->quantity)), *age = lot_age_words(i, l, today);
	gint64 day = l->arrived == NONE ? l->ordered : l->arrived;
	GString *sum = g_string_new(n);
	char d[16];

	g_string_append_printf(sum, " %s on %s", l->arrived == NONE ? "ordered" : "came", day_words(day, d));
	if (l->arrived == NONE && l->expected != NONE)
		g_string_append_printf(sum, ", to come on %s", day_words(l->expected, d));
	if (l->arrived != NONE && age)
		g_string_append_printf(sum, "; %s", age);
	if (l->price == NONE)
		g_string_append(sum, "; without a price it is in no sum of costs");
	else if (!l->currency)
		g_string_append(sum, "; without a currency its price is summed by itself");
	return g_string_free(g_string_append_c(sum, '.'), FALSE);
}

static char *
check(struct app *a, struct form *f)
{
	const struct item *i;
	struct stores *s = stores_of_form(a, f, &i, NULL);
	struct lot l;
	char *sum;

	read_form(a, f, i, &l);
	sum = i && !form_field(f, "quantity")->wrong ? sum_of(i, &l, app_today(a)) : NULL;
	record_clear(RECORD_LOT, &l);
	stores_free(s);
	return sum;
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	const struct item *i;
	struct stores *s = stores_of_form(a, f, &i, err);
	struct lot l;
	gboolean ok;

	read_form(a, f, i, &l);
	ok = s && book_put_lot(a->book, i, &l, err);
	if (ok) {
		g_autofree char *n = item_quantity(i, stock_of(l.quantity));

		app_say(a, STYLE_STRONG, "%s of %s %s; u takes it back", n, i->what, l.arrived == NONE ? "ordered" : "came");
	}
	record_clear(RECORD_LOT, &l);
	stores_free(s);
	return ok;
}

const struct form_kind form_lot = {
	.name = "lot", .title = "Bought or ordered", .button = "Enter records it", .begin = begin, .check = check, .save = save,
};

/* ---- what was ordered is here ---- */

/* The orders of an item that are open: the first that is expected, and how many there are. */
static const struct lot *
first_order(const struct stores *s, const struct item *i, int *n)
{
	const struct lot *first = NULL;

	*n = 0;
	for (guint k = 0; stores_lot(s, k); k++) {
		const struct lot *l = stores_lot(s, k);

		if (l->item != i->id || l->arrived != NONE)
			continue;
		if (!first || (l->expected != NONE && (first->expected == NONE || l->expected < first->expected)))
			first = l;
		++*n;
	}
	return first;
}

static gboolean
begin_here(struct app *a, struct form *f, GError **err)
{
	const struct item *i;
	struct stores *s = stores_of_form(a, f, &i, err);
	g_autofree char *orders = s ? stores_lots_words(s, i, app_today(a), TRUE) : NULL;
	int n = 0;
	const struct lot *first = s ? first_order(s, i, &n) : NULL;
	g_autofree char *key = first ? book_key_text(first->id) : NULL;

	if (first) {
		g_strchomp(orders);
		f->heading = g_strdup_printf("%s: %s", i->what, g_strdelimit(orders, "\n", ';'));
		form_add(f, "order", "Order", "the letters that stand behind it above", key);
		add_fields(a, f, FALSE);
		f->at = n > 1 ? 0 : 5;	/* the place, when there is nothing to choose */
	} else if (s) {
		err_set(err, ERR_NOT_FOUND, "nothing of %s is to come: b says what came", i->what);
	}
	stores_free(s);
	return first != NULL;
}

/* The order meant; NONE. */
static gint64
read_here(struct app *a, struct form *f, struct lot *l)
{
	struct stores *s = book_stores(a->book, NULL);
	gint64 key = NONE, date = stores_typed_day(a, f, "date");
	const struct lot *order = s && book_key(form_text(f, "order"), &key) ? stores_lot_of(s, key) : NULL;

	if (!order || order->item != f->subject || order->arrived != NONE) {
		form_refuse(f, "order", "no open order of this item has these letters");
		key = NONE;
	}
	read_common(a, f, l);
	l->arrived = date == NONE ? app_today(a) : date;
	stores_free(s);
	return key;
}

static char *
check_here(struct app *a, struct form *f)
{
	struct lot l;
	char *sum, d[16];

	read_here(a, f, &l);
	sum = g_strdup_printf("It is here since %s%s%s. What is left empty stays as it was ordered.", day_words(l.arrived, d),
			      l.place ? ", and lies: " : "", l.place ? l.place : "");
	record_clear(RECORD_LOT, &l);
	return sum;
}

static gboolean
save_here(struct app *a, struct form *f, GError **err)
{
	struct lot l;
	gint64 order = read_here(a, f, &l);
	gboolean ok = book_arrived(a->book, order, &l, err);

	if (ok)
		app_say(a, STYLE_STRONG, "it is here; u takes it back");
	record_clear(RECORD_LOT, &l);
	return ok;
}

const struct form_kind form_arrived = {
	.name = "lot-here", .title = "What was ordered is here", .button = "Enter records it", .begin = begin_here,
	.check = check_here, .save = save_here,
};
