/* How the logbook came about: what was corrected, and what was put on record long after its day. */
#include "logbook/dossier_inside.h"

#include "logbook/corrections.h"

static char *
count_words(const gint64 of[RECORD_COUNT])
{
	GString *out = g_string_new(NULL);

	for (int r = 0; r < RECORD_COUNT; r++) {
		const struct record_type *type = record_type((enum record)r);

		if (of[r])
			g_string_append_printf(out, "%s%" G_GINT64_FORMAT " %s", out->len ? ", " : "", of[r],
					       of[r] == 1 ? type->name : type->plural);
	}
	if (!out->len)
		g_string_append(out, "none");
	return g_string_free(out, FALSE);
}

gboolean
dossier_corrections(struct dossier *d, GError **err)
{
	struct corrections c;
	g_autofree char *altered = NULL, *removed = NULL, *soon = NULL, *late = NULL;

	if (!book_corrections(d->b, &c, err))
		return FALSE;
	altered = count_words(c.altered);
	removed = count_words(c.removed);
	soon = count_words(c.soon);
	late = count_words(c.late);
	dossier_head(d, "How this logbook was kept");
	dossier_prose(d, "These figures are of the whole logbook, from its first entry on.");
	dossier_say(d, 0, "Entries in the journal: %" G_GINT64_FORMAT ".", c.entries);
	dossier_say(d, 0, "Entries taken back and not brought back: %" G_GINT64_FORMAT ".", c.undone);
	dossier_say(d, 0, "Records corrected, so that something known is otherwise now than when it was entered: %s.", altered);
	dossier_say(d, 0, "Records taken out: %s.", removed);
	dossier_say(d, 0, "Put on record within %d days of the day they tell of: %s.", SOON_DAYS, soon);
	dossier_say(d, 0, "Put on record later than that, from memory, from papers or from another log: %s.", late);
	dossier_prose(d, "The old text of every correction stays in the journal: splitpin history ENTRY shows it.");
	return TRUE;
}
