#include "tui/due_story.h"

#include "logbook/caution.h"
#include "logbook/why.h"

static void
add_paragraph(void *user, const char *text)
{
	GString *out = user;

	g_string_append_printf(out, "%s%s", out->len ? "\n" : "", text);
}

char *
due_story(struct book *b, const struct due_list *due, const struct due_line *l)
{
	GString *out = g_string_new(NULL);
	g_autofree char *more = l->access >= 0 ? due_while_open(due, l->access, l->out.when) : g_strdup("");
	g_autofree char *caution = caution_words(b, l->caution);

	due_why(due, l, add_paragraph, out);
	if (*more)
		g_string_append_printf(out, "\nWhile it is open: %s", more);
	if (l->part)
		g_string_append_printf(out, "\nTo have at hand: %s", l->part);
	if (l->proof)
		g_string_append_printf(out, "\nProof: %s", l->proof);
	if (caution)
		g_string_append_printf(out, "\n%s", caution);
	return g_string_free(out, FALSE);
}
