/* Words of a line that look misspelt. */
#include "logbook/removal_parse.h"

#include "base/text.h"

#include <string.h>

/* The word that is meant by one a letter away, or two of a long one; NULL. */
static const char *
meant_by(const char *low)
{
	static const char *const counted[] = { "cotter", "cotters",  "circlip", "circlips", "retainer", "retainers",
					       "clip",   "clips",    "plug",    "plugs",    "bolt",     "bolts",
					       "nut",    "nuts",     "stud",    "studs",    "screw",    "screws",
					       "washer", "washers" };
	/* Things of a boat that are only a letter away. */
	static const char *const known[] = { "belt", "belts", "boot", "boots", "stub", "stubs", "slip", "slug", "hut",
					     "but",  "cut",   "net",  "nit",   "out",  "flip",  "cover", "covers",
					     "cutter", "gutter", "crew", NULL };
	const char *near = strlen(low) > 2 && !g_strv_contains(known, low) ? text_nearest(low, counted, G_N_ELEMENTS(counted))
									   : NULL;

	int edits = near ? text_edits(low, near) : 0;

	return edits && edits <= (strlen(near) > 5 ? 2 : 1) ? near : NULL;
}

/* The same of what tells the state, and of a tray before its number. */
static const char *
state_meant_by(const char *low, const char *next)
{
	static const char *const states[] = { "missing", "renew", "renewed", "replace", "reuse" };
	const char *near = text_nearest(low, states, G_N_ELEMENTS(states));
	int edits = near ? text_edits(low, near) : 0;

	if (next && g_ascii_isdigit(*next) && text_edits(low, "tray") == 1)
		return "tray";
	return edits && edits <= (strlen(near) > 5 ? 2 : 1) ? near : NULL;
}

gboolean
removal_doubt(const struct removal *r, char **word, const char **meant)
{
	g_auto(GStrv) words = g_strsplit_set(r->what ? r->what : "", " ,", -1);

	for (int i = 0; words[i]; i++) {
		g_autofree char *low = g_utf8_casefold(words[i], -1);

		*meant = r->kind == REMOVAL_PART ? meant_by(low) : NULL;
		*meant = *meant ? *meant : state_meant_by(low, words[i + 1]);
		if (*meant) {
			*word = g_strdup(words[i]);
			return TRUE;
		}
	}
	return FALSE;
}
