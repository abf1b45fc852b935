#include "cli/season_text.h"

#include "base/date.h"
#include "logbook/caution.h"

#include <stdio.h>
#include <string.h>

enum { INDENT = 9 };

void
season_say_line(const struct cli *c, const struct season_work *w, guint i)
{
	static const char box[] = { ' ', 'x', '-' };
	const struct season_line *line = season_line(w, i);
	const struct due_line *d = line->due;
	char day[16];

	cli_say(c, INDENT, "%4u [%c] %s (%s, %s, %s%s)", i + 1, box[line->state], d->title, d->name,
		word_of(&words_workplace, d->in.place), word_of(&words_consequence, d->in.consequence),
		d->out.when == OPP_NO_RECORD ? ", no record" : "");
	if (line->state == SEASON_OPEN)
		return;
	cli_say(c, INDENT, "%*s%s %s%s%s%s%s", INDENT, "",
		line->state == SEASON_PASSED  ? "passed over, still due:"
		: line->service == NONE	      ? "a new part went in"
					      : "done",
		day_words(line->when, day), line->who ? ", " : "", line->who ? line->who : "", line->words ? ": " : "",
		line->words ? line->words : "");
}

static gboolean
differs(const char *a, const char *b)
{
	return g_strcmp0(a, b) != 0;
}

/* What is said before line i when it begins a section, another note, or wants something else off first. */
static void
say_before(const struct cli *c, const struct season_work *w, const struct season_line *line, const struct season_line *last)
{
	gboolean section = !last || strcmp(last->section, line->section) != 0;

	if (section) {
		g_autofree char *heading = g_utf8_strup(line->heading, -1);

		putchar('\n');
		cli_say(c, 2, "%s", heading);
	}
	if (line->note && (section || differs(last->note, line->note)))
		cli_say(c, 2, "  %s%s%s%s", line->note, line->source ? " (" : "", line->source ? line->source : "",
			line->source ? ")" : "");
	if (line->due->off && (section || differs(last->due->off, line->due->off))) {
		g_autofree char *first = due_access_words(w->due, line->at);

		cli_say(c, INDENT, "     %s", first);
	}
}

static void
say_head(const struct cli *c, struct book *b, const struct boat *boat, const struct season_work *w)
{
	g_autofree char *head = season_head(w), *words = season_cautions(w), *caution = caution_block(b, words);
	g_auto(GStrv) line = g_strsplit(caution ? g_strchomp(caution) : "", "\n", -1);

	cli_say(c, 2, "%s   %s", boat->name, head);
	if (*line)
		putchar('\n');
	for (int i = 0; line[i]; i++)
		cli_say(c, 2 + (int)strspn(line[i], " "), "%s", line[i]);
}

void
season_text(const struct cli *c, struct book *b, const struct boat *boat, const struct season_work *w, gboolean open_only)
{
	const char *list = word_of(&words_season_list, (gint64)w->list);
	const struct season_line *last = NULL;

	say_head(c, b, boat, w);
	for (guint i = 0; i < season_lines(w); i++) {
		const struct season_line *line = season_line(w, i);

		if (open_only && line->state == SEASON_DONE)
			continue;
		say_before(c, w, line, last);
		season_say_line(c, w, i);
		last = line;
	}
	if (!season_lines(w)) {
		puts("\nNothing stands on this list.");
		return;
	}
	if (!last) {
		puts("\nAll of it is done.");
		return;
	}
	putchar('\n');
	cli_say(c, 2, "Done: splitpin season %s --tick N. Passed over: --skip N --reason TEXT. What this boat has not: splitpin "
		"plan TASK --retire.", list);
}
