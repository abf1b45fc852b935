/* What the boat cost. */
#include "logbook/dossier_inside.h"

#include "base/amount.h"
#include "logbook/stores_cost.h"

#include <string.h>

static const char *
currency_of(const struct cost_line *l)
{
	return *l->currency ? l->currency : "without a currency";
}

/* "2022: work 845.60 USD, parts out of the stores 12.00 USD" */
static void
say_line(struct dossier *d, const char *name, const struct cost_line *l)
{
	char work[MONEY_TEXT], parts[MONEY_TEXT];

	if (l->work && l->parts)
		dossier_say(d, 0, "%s: work %s %s, parts out of the stores %s %s", name, money_exact(l->work, work), currency_of(l),
			    money_exact(l->parts, parts), currency_of(l));
	else if (l->work)
		dossier_say(d, 0, "%s: work %s %s", name, money_exact(l->work, work), currency_of(l));
	else if (l->parts)
		dossier_say(d, 0, "%s: parts out of the stores %s %s", name, money_exact(l->parts, parts), currency_of(l));
}

static gint
by_currency(gconstpointer x, gconstpointer y)
{
	return strcmp(((const struct cost_line *)x)->currency, ((const struct cost_line *)y)->currency);
}

/* Of all years, a line a currency: struct cost_line. */
static GArray *
sums_of(const struct costs *c)
{
	GArray *sums = g_array_new(FALSE, FALSE, sizeof(struct cost_line));

	for (guint i = 0; costs_line(c, i); i++) {
		const struct cost_line *l = costs_line(c, i);
		struct cost_line *sum = NULL;

		for (guint k = 0; k < sums->len && !sum; k++)
			if (!by_currency(&g_array_index(sums, struct cost_line, k), l))
				sum = &g_array_index(sums, struct cost_line, k);
		if (!sum) {
			g_array_append_val(sums, *l);
			continue;
		}
		sum->work += l->work;
		sum->parts += l->parts;
	}
	g_array_sort(sums, by_currency);
	return sums;
}

static void
say_all(struct dossier *d, const struct costs *c)
{
	g_autoptr(GArray) sums = sums_of(c);
	g_autoptr(GString) out = g_string_new(NULL);
	char money[MONEY_TEXT];

	for (guint i = 0; i < sums->len; i++) {
		const struct cost_line *l = &g_array_index(sums, struct cost_line, i);

		if (l->work + l->parts)
			g_string_append_printf(out, "%s%s %s", out->len ? "; " : "", money_exact(l->work + l->parts, money),
					       currency_of(l));
	}
	dossier_say(d, 0, "In all: %s.", out->len ? out->str : "no cost is on record");
}

gboolean
dossier_costs(struct dossier *d, GError **err)
{
	struct costs costs;
	int with = 0, without = 0;

	if (d->form->without_costs)
		return TRUE;
	if (!book_costs(d->b, d->boat, COST_SEASON, d->form->since, &costs, err))
		return FALSE;
	for (EACH(struct service, v, d->services))
		if (dossier_wants(d, v->date))
			*(v->cost == NONE ? &without : &with) += 1;
	dossier_head(d, "Costs");
	dossier_prose(d, "A year begins on the day after the haul-out: work of the winter counts with the summer that it was for.");
	for (guint i = 0; costs_line(&costs, i); i++) {
		g_autofree char *name = cost_name(d->b, costs_line(&costs, i));

		say_line(d, name, costs_line(&costs, i));
	}
	say_all(d, &costs);
	dossier_prose(d, "%d %s a cost on record, %d %s none: what those cost is not known. What a yard asked for mending a "
			  "finding stands in the finding's remark and is in no sum.", with,
		      with == 1 ? "service has" : "services have", without, without == 1 ? "has" : "have");
	if (costs.unknown)
		dossier_prose(d, "Of %d %s out of the stores nobody knows the price.", costs.unknown,
			      costs.unknown == 1 ? "thing taken" : "things taken");
	costs_clear(&costs);
	return TRUE;
}
