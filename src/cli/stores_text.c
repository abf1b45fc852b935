#include "cli/stores_text.h"

#include "base/amount.h"
#include "base/text.h"
#include "logbook/stores_story.h"

#include <stdio.h>
#include <string.h>

const struct item *
stores_named(const struct cli *c, const struct stores *s, const char *words, GError **err)
{
	const struct number *by;
	const struct item *i = stores_find(s, words, &by, err);
	g_autofree char *old = i && by ? stores_superseded(s, by) : NULL;

	if (old)
		cli_say(c, 2, "%s", old);
	return i;
}

static void
say_lots(const struct cli *c, const struct stores *s, const struct item *i)
{
	for (guint k = 0; k < s->lots->len; k++) {
		g_autofree char *words = NULL, *key = NULL;

		if (stores_lot(s, k)->item != i->id || stores_left(s, k) == 0)
			continue;
		words = stores_lot_words(s, k, c->who.today);
		key = book_key_text(stores_lot(s, k)->id);
		cli_say(c, 6, "    %s  [%s]", words, key);
	}
}

void
stores_list_text(const struct cli *c, const struct stores *s)
{
	for (guint k = 0; stores_nth(s, k); k++) {
		g_autofree char *words = stores_item_words(s, stores_nth(s, k), c->who.today);

		cli_say(c, 4, "%s", words);
		say_lots(c, s, stores_nth(s, k));
	}
	if (!stores_nth(s, 0))
		cli_say(c, 2, "Nothing is in the stores yet: splitpin stores add \"bellows, U-joint\" --number N --rubber");
}

void
stores_story_text(const struct cli *c, struct book *b, const struct stores *s, const struct item *i)
{
	g_autofree char *words = stores_item_words(s, i, c->who.today), *story = stores_story(b, s, i);
	g_auto(GStrv) line = g_strsplit(story, "\n", -1);

	cli_say(c, 4, "%s", words);
	for (int k = 0; line[k] && *line[k]; k++)
		cli_say(c, 6, "    %s", line[k]);
	say_lots(c, s, i);
}

static void
say_want(const struct cli *c, const struct wants *w, const struct want_line *l)
{
	g_autofree char *numbers = stores_numbers(w->stores, l->item->id), *n = item_quantity(l->item, l->want),
			*perhaps = item_quantity(l->item, l->perhaps), *when = want_order_words(w, l),
			*old = item_quantity(l->item, l->on_hand - l->fresh), *here = item_quantity(l->item, l->fresh),
			*come = item_quantity(l->item, l->to_come), *late = item_quantity(l->item, l->too_late);

	cli_say(c, 4, "%c %s%s%s%s  %s%s%s", l->late && l->want ? '!' : ' ', l->want ? n : "",
		l->want && l->perhaps ? ", " : "", l->perhaps ? "perhaps " : "", l->perhaps ? perhaps : "", l->item->what,
		numbers ? "   " : "", numbers ? numbers : "");
	cli_say(c, 6, "      %s", when);
	if (l->tasks)
		cli_say(c, 6, "      for %s", l->tasks);
	if (l->on_hand || l->to_come)
		cli_say(c, 6, "      on hand %s%s%s%s%s", l->fresh ? here : "none",
			l->on_hand > l->fresh ? ", and too old by then " : "", l->on_hand > l->fresh ? old : "",
			l->to_come ? ", to come " : "", l->to_come ? come : "");
	if (l->too_late)
		cli_say(c, 6, "      ordered, but too late for that: %s", late);
}

void
stores_want_text(const struct cli *c, const char *boat, const struct wants *w)
{
	cli_say(c, 2, "%s   %s", boat, w->title);
	for (guint i = 0; wants_line(w, i); i++)
		say_want(c, w, wants_line(w, i));
	if (!wants_line(w, 0))
		cli_say(c, 2, "  Nothing is wanted of the items in the stores.");
	if (wants_loose(w, 0))
		puts("\nNo item is linked to what these want; splitpin stores need TASK ITEM does it:");
	for (guint i = 0; wants_loose(w, i); i++)
		cli_say(c, 4, "  %s: %s", wants_loose(w, i)->task, wants_loose(w, i)->part);
	if (w->no_record)
		cli_say(c, 2, "\n%d %s with parts left out: nobody knows when %s last done. splitpin due --survey lists them.",
			w->no_record, w->no_record == 1 ? "task" : "tasks", w->no_record == 1 ? "it was" : "they were");
}

/* A table's row: the name, then figures to the right. */
static void
say_row(const char *name, const char *const cell[], int n)
{
	g_autofree char *fit = text_fit(name, 24);

	fputs(fit, stdout);
	for (int i = 0; i < n; i++)
		printf(" %12s", cell[i]);
	putchar('\n');
}

/* The end of a path says more than its beginning. */
static const char *
short_path(const char *path)
{
	const char *slash = strlen(path) > 19 ? strrchr(path, '/') : NULL;

	return slash ? slash + 1 : path;
}

static void
say_cost(struct book *b, const struct costs *costs, const struct cost_line *l)
{
	g_autofree char *name = cost_name(b, l), *safe = text_harmless(name, FALSE),
			*left = g_strdup_printf("%s %s", short_path(safe), *l->currency ? l->currency : "(none)");
	char m[5][MONEY_TEXT], h[HOURS_TEXT];
	const char *const sums[] = { money_exact(l->work, m[0]), money_exact(l->parts, m[1]), money_exact(l->work + l->parts, m[2]),
				     money_exact(l->lost, m[3]) };
	const char *const hours[] = { sums[2], hours_words(l->hours, h), money_exact(cost_an_hour(l), m[4]) };

	if (costs->by == COST_HOUR)
		say_row(left, hours, 3);
	else
		say_row(left, sums, costs->by == COST_YEAR ? 3 : 4);
}

void
stores_cost_text(const struct cli *c, struct book *b, const char *boat, const struct costs *costs)
{
	static const char *const sums[] = { "work", "parts", "together", "lost" };
	static const char *const hours[] = { "together", "hours", "an hour" };

	cli_say(c, 2, "%s   costs by %s, each currency by itself", boat, cost_words[costs->by]);
	if (costs->by == COST_HOUR)
		say_row("", hours, 3);
	else
		say_row("", sums, costs->by == COST_YEAR ? 3 : 4);
	for (guint i = 0; costs_line(costs, i); i++)
		say_cost(b, costs, costs_line(costs, i));
	if (!costs_line(costs, 0))
		puts("  No cost is on record.");
	if (costs->unknown)
		cli_say(c, 2, "%d %s no price, and %s in no sum.", costs->unknown,
			costs->by == COST_YEAR ? (costs->unknown == 1 ? "lot has" : "lots have")
					       : (costs->unknown == 1 ? "taking has" : "takings have"),
			costs->unknown == 1 ? "is" : "are");
}
