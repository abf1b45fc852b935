#include "tui/season_story.h"

#include "base/date.h"
#include "logbook/caution.h"
#include "logbook/why.h"

static void
add_paragraph(void *user, const char *text)
{
	g_string_append_printf(user, "\n%s", text);
}

/* What was said when it was done or passed over. */
static void
add_state(GString *out, const struct season_line *line)
{
	static const char *const words[] = { "", "Done", "Passed over, and still due," };
	char day[16];

	if (line->state == SEASON_OPEN)
		return;
	g_string_append_printf(out, "\n%s %s%s%s%s%s", words[line->state], day_words(line->when, day), line->who ? ", " : "",
			       line->who ? line->who : "", line->words ? ": " : "", line->words ? line->words : "");
	if (line->state == SEASON_DONE && line->service == NONE)
		g_string_append(out, " (a new part went in)");
}

char *
season_story(struct book *b, const struct season_work *w, const struct season_line *line)
{
	const struct due_line *d = line->due;
	g_autofree char *caution = caution_words(b, d->caution), *first = due_access_words(w->due, line->at);
	g_autofree char *more = d->access >= 0 ? due_while_open(w->due, d->access, d->out.when) : g_strdup("");
	GString *out = g_string_new(NULL);

	g_string_append_printf(out, "%s. Place: %s, %s. A failure %s.", d->title, word_of(&words_workplace, d->in.place), first,
			       word_of(&words_consequence, d->in.consequence));
	if (caution)
		g_string_append_printf(out, "\n%s", caution);
	add_state(out, line);
	if (*more)
		g_string_append_printf(out, "\nWhile it is open: %s", more);
	if (d->part)
		g_string_append_printf(out, "\nTo have at hand: %s", d->part);
	if (d->proof)
		g_string_append_printf(out, "\nProof: %s", d->proof);
	if (line->note)
		g_string_append_printf(out, "\n%s: %s%s%s%s", line->heading, line->note, line->source ? " (" : "",
				       line->source ? line->source : "", line->source ? ")" : "");
	due_why(w->due, d, add_paragraph, out);
	return g_string_free(out, FALSE);
}
