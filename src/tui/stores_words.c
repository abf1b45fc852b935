#include "tui/stores_view.h"

#include "base/amount.h"
#include "base/date.h"
#include "logbook/stores_story.h"
#include "tui/cost_plot.h"

#include <string.h>

char *
stores_places(const struct stores *s, const struct item *i)
{
	g_autoptr(GPtrArray) places = g_ptr_array_new();
	gboolean unsaid = FALSE;

	for (guint k = 0; stores_lot(s, k); k++) {
		const struct lot *l = stores_lot(s, k);

		if (l->item != i->id || l->arrived == NONE || stores_left(s, k) <= 0)
			continue;
		if (!l->place)
			unsaid = TRUE;
		else if (!g_ptr_array_find_with_equal_func(places, l->place, g_str_equal, NULL))
			g_ptr_array_add(places, l->place);
	}
	if (unsaid)
		g_ptr_array_add(places, (char *)(guintptr)(places->len ? "else not said" : "not said"));
	g_ptr_array_add(places, NULL);
	return g_strjoinv(", ", (char **)places->pdata);
}

char *
stores_number_words(const struct want_line *l)
{
	g_autofree char *n = item_quantity(l->item, l->want), *perhaps = item_quantity(l->item, l->perhaps);

	if (!l->want)
		return g_strdup_printf("perhaps %s", perhaps);
	return l->perhaps ? g_strdup_printf("%s, perhaps %s more", n, perhaps) : g_strdup(n);
}

char *
stores_by_words(const struct stores_data *d, const struct want_line *l, gboolean brief)
{
	char day[16];

	if (l->needed == NONE)
		return g_strdup(brief ? "" : "always to be kept");
	if (l->order_by == NONE)
		return g_strdup(brief ? "" : "how long it takes?");
	day_words(l->order_by, day);
	if (brief && l->want && l->order_by < d->today)
		return g_strdup("LATE");
	return g_strdup_printf("by %s", day);
}

char *
stores_lots_words(const struct stores *s, const struct item *i, gint64 today, gboolean ordered)
{
	GString *out = g_string_new(NULL);

	for (guint k = 0; stores_lot(s, k); k++) {
		const struct lot *l = stores_lot(s, k);
		g_autofree char *words = l->item == i->id && stores_left(s, k) ? stores_lot_words(s, k, today) : NULL,
				*key = book_key_text(l->id);

		if (!words || (ordered && l->arrived != NONE))
			continue;
		g_string_append(out, words);
		if (ordered)
			g_string_append_printf(out, "  [%s]", key);
		g_string_append_c(out, '\n');
	}
	return g_string_free(out, FALSE);
}

/* Why it is wanted, and what there is. */
static void
add_want(GString *out, const struct stores_data *d, const struct want_line *l)
{
	g_autofree char *after = item_quantity(l->item, l->too_late);
	g_autofree char *when = want_order_words(d->wants, l), *n = stores_number_words(l);
	g_autofree char *come = item_quantity(l->item, l->to_come), *fresh = item_quantity(l->item, l->fresh),
			*old = item_quantity(l->item, l->on_hand - l->fresh);

	g_string_append_printf(out, "Wanted: %s%s; %s.\n", n, l->want ? "" : ", only when it is found bad", when);
	if (l->tasks)
		g_string_append_printf(out, "For %s.\n", l->tasks);
	g_string_append_printf(out, "Fresh enough then: %s", l->fresh ? fresh : "none");
	if (l->on_hand > l->fresh)
		g_string_append_printf(out, "; too old by then: %s", old);
	if (l->to_come)
		g_string_append_printf(out, "; to come: %s", come);
	if (l->too_late)
		g_string_append_printf(out, ", too late: %s", after);
	g_string_append(out, ".\n");
}

static char *
item_story(const struct stores_data *d, const struct item *i)
{
	const struct stores *s = d->wants->stores;
	const struct want_line *l = stores_want_of(d, i);
	g_autofree char *words = stores_item_words(s, i, d->today), *lots = stores_lots_words(s, i, d->today, FALSE),
			*story = stores_story(d->book, s, i);
	GString *out = g_string_new(NULL);

	g_string_append_printf(out, "%s\n", words);
	if (l)
		add_want(out, d, l);
	g_string_append_printf(out, "%s%s", lots, story);
	return g_string_free(out, FALSE);
}

static char *
loose_story(const struct want_loose *l)
{
	char day[16];

	return g_strdup_printf("%s wants: %s%s%s.\nNo item of the stores is linked to it, so nobody knows whether one is there. "
			       "n links an item; a puts a new one on the list.",
			       l->task, l->part, l->needed == NONE ? "" : "; needed ",
			       l->needed == NONE ? "" : day_words(l->needed, day));
}

static const struct cost_row *
cost_selected(const struct stores_data *d)
{
	const struct row *row = d->wants && d->face == FACE_COSTS ? list_row(&d->list[FACE_COSTS]) : NULL;

	return row ? &((const struct cost_row *)(const void *)d->cost->data)[row->index] : NULL;
}

/* Where a price is not known, that is said and nothing is guessed. */
static void
add_unknown(GString *out, const struct stores_data *d)
{
	int n = d->costs[0].unknown;

	if (n)
		g_string_append_printf(out, "\n%d %s no price, and %s in no sum.", n, n == 1 ? "taking has" : "takings have",
				       n == 1 ? "is" : "are");
}

static char *
cost_story(const struct stores_data *d, const struct cost_row *r)
{
	const struct cost_line *l = r->line;
	GString *out = g_string_new(NULL);
	char m[MONEY_TEXT], h[HOURS_TEXT];

	g_string_append_printf(out, "%s\nWork: %s\n", r->name, money_exact(l->work, m));
	g_string_append_printf(out, "Parts taken out of the stores: %s\n", money_exact(l->parts, m));
	g_string_append_printf(out, "Together: %s\n", money_exact(l->work + l->parts, m));
	if (l->lost)
		g_string_append_printf(out, "Lost, thrown away or sent back: %s, in no sum\n", money_exact(l->lost, m));
	if (l->year && l->hours > 0)
		g_string_append_printf(out, "Engine hours: %s; ", hours_words(l->hours, h));
	if (l->year && l->hours > 0)
		g_string_append_printf(out, "so an hour came to %s\n", money_exact(cost_an_hour(l), m));
	else if (l->year)
		g_string_append(out, "No engine hours are on record in that season.\n");
	if (l->year)
		g_string_append(out, "A season is from the day after one haul-out to the next. ");
	g_string_append(out, "What lies in the stores counts when it is taken out. Each currency is by itself.");
	add_unknown(out, d);
	return g_string_free(out, FALSE);
}

char *
stores_cost_brief(const struct stores_data *d)
{
	const struct cost_line *l = cost_selected(d)->line;
	char work[MONEY_TEXT], parts[MONEY_TEXT];

	return g_strdup_printf("work %s, parts %s%s%s", money_exact(l->work, work), money_exact(l->parts, parts),
			       *l->currency ? " " : "", l->currency);
}

char *
stores_row_title(const struct stores_data *d)
{
	const struct item *i = stores_selected(d);
	const struct want_loose *l = stores_loose(d);
	const struct cost_row *r = cost_selected(d);

	return g_strdup(i ? i->what : l ? l->part : r ? r->name : NULL);
}

char *
stores_row_story(const struct stores_data *d)
{
	const struct item *i = stores_selected(d);
	const struct want_loose *l = stores_loose(d);
	const struct cost_row *r = cost_selected(d);

	if (i)
		return item_story(d, i);
	return l ? loose_story(l) : r ? cost_story(d, r) : g_strdup("");
}
