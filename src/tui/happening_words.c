#include "tui/happening_words.h"

#include "base/date.h"
#include "logbook/caution.h"
#include "logbook/happening.h"

char *
happening_caution(struct book *b, gint64 kind)
{
	return caution_words(b, happening_cautions(kind));
}

void
happening_add_tasks(GString *out, const struct due_list *l, const struct happening *h)
{
	const char *not_done = h->closed == NONE ? "still to do" : "not done since, by the log";
	gsize before = out->len;
	char day[16];

	for (int i = 0; i < due_count(l); i++) {
		const struct due_line *d = due_at(l, i);

		if (!happening_asks(d, h->kind))
			continue;
		if (due_done_since(&d->in.since, h->date))
			g_string_append_printf(out, "done since, %s: %s\n", day_words(d->in.since.day, day), d->label);
		else
			g_string_append_printf(out, "%s: %s\n", not_done, d->label);
	}
	if (out->len == before)
		g_string_append(out, "No task of this boat asks for anything after such a thing.\n");
}
