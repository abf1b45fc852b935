#include "tui/happening_words.h"

#include "base/date.h"
#include "logbook/caution.h"

/* Words of caution for what comes after each: looking at it, and the work that it asks for. */
static const char *const beware[] = {
	[HAPPENED_GROUNDING] = "propeller stands",
	[HAPPENED_SWAMPING] = "fuel-vapour batteries",
	[HAPPENED_OVERHEATING] = "hot-coolant",
	[HAPPENED_LINE] = "propeller",
	[HAPPENED_DRY_RUN] = "hot-coolant moving-parts",
	[HAPPENED_FLOODED_BILGE] = "fuel-vapour batteries shore-power",
	[HAPPENED_BAD_FUEL] = "fuel-vapour disposal",
	[HAPPENED_DRIVE_OFF] = "lifting-drive",
	[HAPPENED_POWER_LOSS] = "fuel-vapour batteries",
	[HAPPENED_MILKY_OIL] = "disposal",
	[HAPPENED_VIBRATION] = "propeller moving-parts",
	[HAPPENED_OTHER] = NULL,
};

char *
happening_caution(gint64 kind)
{
	return kind >= 0 && kind < (gint64)G_N_ELEMENTS(beware) ? caution_words(beware[kind]) : NULL;
}

static gboolean
asks_for(const struct due_line *l, gint64 kind)
{
	for (int k = 0; k < l->in.n_limits; k++)
		if (l->limit[k].kind == LIMIT_HAPPENING && l->limit[k].happening == kind)
			return TRUE;
	return FALSE;
}

/* As the due list has it: work on the same day came after it. */
static gboolean
done_after(const struct due_line *l, gint64 date)
{
	return l->in.since.day != NONE && l->in.since.day >= date;
}

int
happening_asks(const struct due_list *l, gint64 kind, gint64 date)
{
	int n = 0;

	for (int i = 0; i < due_count(l); i++)
		n += asks_for(due_at(l, i), kind) && !done_after(due_at(l, i), date);
	return n;
}

void
happening_add_tasks(GString *out, const struct due_list *l, const struct happening *h)
{
	const char *not_done = h->closed == NONE ? "still to do" : "not done since, by the log";
	gsize before = out->len;
	char day[16];

	for (int i = 0; i < due_count(l); i++) {
		const struct due_line *d = due_at(l, i);

		if (!asks_for(d, h->kind))
			continue;
		if (done_after(d, h->date))
			g_string_append_printf(out, "done since, %s: %s\n", day_words(d->in.since.day, day), d->label);
		else
			g_string_append_printf(out, "%s: %s\n", not_done, d->label);
	}
	if (out->len == before)
		g_string_append(out, "No task of this boat asks for anything after such a thing.\n");
}
