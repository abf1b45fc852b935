#include "logbook/stores_want.h"

#include "base/date.h"
#include "exchange/csv_out.h"
#include "exchange/json.h"

#include <math.h>
#include <string.h>

static void
clear_line(gpointer p)
{
	g_free(((struct want_line *)p)->tasks);
}

void
wants_free(struct wants *w)
{
	if (!w)
		return;
	g_array_unref(w->lines);
	g_array_unref(w->loose);
	due_list_free(w->due);
	stores_free(w->stores);
	g_free(w->title);
	g_free(w);
}

const struct want_line *
wants_line(const struct wants *w, guint i)
{
	return i < w->lines->len ? &g_array_index(w->lines, struct want_line, i) : NULL;
}

const struct want_loose *
wants_loose(const struct wants *w, guint i)
{
	return i < w->loose->len ? &g_array_index(w->loose, struct want_loose, i) : NULL;
}

/* The opportunity that comes next, of those with a time of their own; OPP_NOW: there is none before those of later years. */
static enum opportunity
coming(const struct due_list *l)
{
	enum opportunity first = OPP_LATER;

	for (int i = 0; i < due_count(l); i++) {
		enum opportunity when = due_at(l, i)->out.when;

		if (when > OPP_NOW)
			first = MIN(first, when);
	}
	if (first == OPP_LATER)
		return OPP_NOW;
	/* The launch is one day for both. */
	return first == OPP_BEFORE_LAUNCH ? OPP_FIRST_DAY : first;
}

static gint64
needed_on(const struct due_line *d, gint64 today)
{
	const struct due_out *o = &d->out;

	return !o->past && o->early != NONE && o->early > today && (o->by == NONE || o->early < o->by) ? o->early : o->by;
}

static gint64
earlier(gint64 a, gint64 b)
{
	if (a == NONE || b == NONE)
		return a == NONE ? b : a;
	return MIN(a, b);
}

static struct want_line *
line_of(struct wants *w, const struct item *i)
{
	struct want_line new = { .item = i, .needed = NONE, .order_by = NONE };

	for (guint k = 0; k < w->lines->len; k++)
		if (g_array_index(w->lines, struct want_line, k).item == i)
			return &g_array_index(w->lines, struct want_line, k);
	g_array_append_val(w->lines, new);
	return &g_array_index(w->lines, struct want_line, w->lines->len - 1);
}

static void
add_need(struct wants *w, const struct due_line *d, const struct need *n)
{
	const struct item *i = stores_item(w->stores, n->item);
	struct want_line *l = i ? line_of(w, i) : NULL;
	g_autofree char *was = l ? l->tasks : NULL;

	if (!l) /* a damaged file */
		return;
	l->tasks = g_strconcat(was ? was : "", was ? ", " : "", d->name, n->on_condition == 1 ? " (on condition)" : "", NULL);
	*(n->on_condition == 1 ? &l->condition : &l->always) += stock_of(n->quantity);
	l->needed = earlier(l->needed, needed_on(d, w->today));
}

static void
add_task(struct wants *w, const struct due_line *d)
{
	const struct want_loose loose = { d->name, d->part, needed_on(d, w->today) };
	gboolean linked = FALSE;

	for (guint k = 0; k < w->stores->needs->len; k++) {
		const struct need *n = &g_array_index(w->stores->needs, struct need, k);

		if (n->task != d->id)
			continue;
		linked = TRUE;
		if (!stores_item(w->stores, n->item)) /* a damaged file */
			continue;
		if (d->out.when == OPP_NO_RECORD)
			break;
		add_need(w, d, n);
	}
	if (d->out.when == OPP_NO_RECORD)
		w->no_record += linked || d->part;
	else if (!linked && d->part)
		g_array_append_val(w->loose, loose);
}

/* Of what was ordered, what is not expected before a day. */
static gint64
comes_after(const struct stores *s, const struct item *i, gint64 day)
{
	gint64 sum = 0;

	for (guint k = 0; day != NONE && k < s->lots->len; k++) {
		const struct lot *l = stores_lot(s, k);

		if (l->item == i->id && l->arrived == NONE && l->expected != NONE && l->expected > day)
			sum += stores_left(s, k);
	}
	return sum;
}

static void
work_out(const struct wants *w, struct want_line *l)
{
	gint64 keep = isnan(l->item->keep) ? 0 : stock_of(l->item->keep), there;

	l->on_hand = stores_on_hand(w->stores, l->item, NONE);
	l->fresh = stores_on_hand(w->stores, l->item, l->needed == NONE ? w->today : MAX(l->needed, w->today));
	l->to_come = stores_to_come(w->stores, l->item);
	l->too_late = comes_after(w->stores, l->item, l->needed);
	there = l->fresh + l->to_come - l->too_late;
	l->want = MAX(l->always + keep - there, 0);
	l->perhaps = MAX(l->always + l->condition + keep - there, 0) - l->want;
	if (l->needed == NONE || l->item->lead_days == NONE)
		return;
	l->order_by = l->needed - l->item->lead_days;
	l->late = l->order_by < w->today;
}

static int
by_order(const void *x, const void *y)
{
	const struct want_line *a = x, *b = y;
	/* How long it takes is not known: asked first. */
	gint64 m = a->order_by == NONE ? a->needed : a->order_by, n = b->order_by == NONE ? b->needed : b->order_by;

	if (!a->want != !b->want)
		return !a->want - !b->want;
	if (m != n)
		return m == NONE || (n != NONE && m > n) ? 1 : -1;
	return strcmp(a->item->what, b->item->what);
}

static void
drop_enough(struct wants *w)
{
	for (guint k = w->lines->len; k > 0; k--) {
		const struct want_line *l = wants_line(w, k - 1);

		if (!l->want && !l->perhaps)
			g_array_remove_index(w->lines, k - 1);
	}
}

static void
fill(struct wants *w, const struct due_ask *ask)
{
	enum opportunity until = ask->until == NONE ? coming(w->due) : OPP_LATER;
	int first = -1;

	for (int i = 0; i < due_count(w->due); i++) {
		const struct due_line *d = due_at(w->due, i);

		if (d->out.when > until && d->out.when != OPP_NO_RECORD && !d->out.past)
			continue;
		if (first < 0 && d->out.when > OPP_NOW && d->out.when != OPP_NO_RECORD)
			first = i;
		add_task(w, d);
	}
	for (guint i = 0; i < w->stores->items->len; i++)
		if (!isnan(stores_nth(w->stores, i)->keep))
			line_of(w, stores_nth(w->stores, i));
	for (guint i = 0; i < w->lines->len; i++)
		work_out(w, &g_array_index(w->lines, struct want_line, i));
	drop_enough(w);
	g_array_sort(w->lines, by_order);
	if (ask->until != NONE) {
		char d[16];

		w->title = g_strdup_printf("UNTIL %s", day_words(ask->until, d));
	} else {
		w->title = first < 0 ? g_strdup("NOTHING IS DUE") : due_group_title(w->due, first, due_group_end(w->due, first));
	}
}

struct wants *
book_wants(struct book *b, const struct boat *boat, const struct due_ask *ask, GError **err)
{
	struct wants *w = g_new0(struct wants, 1);

	w->today = ask->at;
	w->lines = g_array_new(FALSE, FALSE, sizeof(struct want_line));
	g_array_set_clear_func(w->lines, clear_line);
	w->loose = g_array_new(FALSE, FALSE, sizeof(struct want_loose));
	w->due = due_list_new();
	w->stores = book_stores(b, err);
	if (w->stores && book_due(b, boat, ask, w->due, err)) {
		fill(w, ask);
		return w;
	}
	wants_free(w);
	return NULL;
}

char *
want_order_words(const struct wants *w, const struct want_line *l)
{
	char d[16], n[16];

	if (l->needed == NONE)
		return g_strdup("to be kept");
	day_words(l->needed, n);
	if (l->item->lead_days == NONE)
		return g_strdup_printf("needed %s; how long it takes to come is not known", n);
	if (l->order_by < w->today)
		return g_strdup_printf("order now: by %s it was to be ordered, needed %s", day_words(l->order_by, d), n);
	return g_strdup_printf("order by %s, needed %s", day_words(l->order_by, d), n);
}

static void
csv_quantity(struct csv_out *csv, gint64 quantity)
{
	char buf[STOCK_TEXT];

	csvout_number(csv, stock_text(quantity, buf));
}

static void
csv_line(struct csv_out *csv, const struct wants *w, const struct want_line *l)
{
	g_autofree char *numbers = stores_numbers(w->stores, l->item->id);
	char d[DAY_TEXT];

	csvout_text(csv, l->item->what);
	csvout_text(csv, numbers);
	csv_quantity(csv, l->want);
	csv_quantity(csv, l->perhaps);
	csvout_text(csv, l->item->unit);
	csvout_word(csv, day_iso(l->needed, d));
	csvout_int(csv, l->item->lead_days);
	csvout_word(csv, day_iso(l->order_by, d));
	csv_quantity(csv, l->on_hand);
	csv_quantity(csv, l->on_hand - l->fresh);
	csv_quantity(csv, l->to_come);
	csvout_text(csv, l->tasks);
	csvout_word(csv, "yes");
	csvout_row(csv);
}

char *
wants_csv(const struct wants *w)
{
	static const char *const header[] = { "what", "numbers", "quantity", "perhaps", "unit", "needed", "lead-days", "order-by",
					      "on-hand", "too-old", "ordered", "tasks", "linked" };
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);
	struct csv_out *csv = csvout_new(&sink, NULL);
	char d[DAY_TEXT];

	csvout_names(csv, header, G_N_ELEMENTS(header));
	for (guint i = 0; i < w->lines->len; i++)
		csv_line(csv, w, wants_line(w, i));
	for (guint i = 0; i < w->loose->len; i++) {
		const struct want_loose *l = wants_loose(w, i);

		csvout_text(csv, l->part);
		for (int k = 0; k < 4; k++)
			csvout_text(csv, NULL);
		csvout_word(csv, day_iso(l->needed, d));
		for (int k = 0; k < 5; k++)
			csvout_text(csv, NULL);
		csvout_text(csv, l->task);
		csvout_word(csv, "no");
		csvout_row(csv);
	}
	csvout_close(csv, NULL);
	return g_string_free(text, FALSE);
}

static void
json_line(struct json_out *j, const struct wants *w, const struct want_line *l)
{
	g_autofree char *numbers = stores_numbers(w->stores, l->item->id);

	jsonout_open_object(j, NULL);
	jsonout_text(j, "what", l->item->what);
	jsonout_text(j, "numbers", numbers);
	jsonout_real(j, "quantity", stock_real(l->want));
	jsonout_real(j, "perhaps", stock_real(l->perhaps));
	jsonout_text(j, "unit", l->item->unit);
	jsonout_day(j, "needed", l->needed);
	jsonout_int(j, "lead-days", l->item->lead_days);
	jsonout_day(j, "order-by", l->order_by);
	jsonout_yes(j, "late", l->late);
	jsonout_real(j, "on-hand", stock_real(l->on_hand));
	jsonout_real(j, "too-old", stock_real(l->on_hand - l->fresh));
	jsonout_real(j, "ordered", stock_real(l->to_come));
	jsonout_text(j, "tasks", l->tasks);
	jsonout_close(j);
}

char *
wants_json(const struct wants *w, const char *boat)
{
	struct json_out *j = jsonout_new();
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);

	jsonout_next(j);
	jsonout_text(j, "boat", boat);
	jsonout_day(j, "at", w->today);
	jsonout_int(j, "without-record", w->no_record);
	jsonout_open_array(j, "wanted");
	for (guint i = 0; i < w->lines->len; i++)
		json_line(j, w, wants_line(w, i));
	jsonout_close(j);
	jsonout_open_array(j, "no-item-linked");
	for (guint i = 0; i < w->loose->len; i++) {
		jsonout_open_object(j, NULL);
		jsonout_text(j, "task", wants_loose(w, i)->task);
		jsonout_text(j, "part", wants_loose(w, i)->part);
		jsonout_day(j, "needed", wants_loose(w, i)->needed);
		jsonout_close(j);
	}
	jsonout_close(j);
	jsonout_write(j, &sink, TRUE, NULL);
	jsonout_free(j);
	return g_string_free(text, FALSE);
}
