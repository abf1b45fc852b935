#include "logbook/caution.h"

#include <string.h>

/* Common practice; the authorities are named where they stand, and come before all of this. */
static const struct { const char *word, *sentence; } cautions[] = {
	{ "alone", "Not alone: have someone at hand who can call for help." },
	{ "batteries", "Batteries gas and can burn: switch off, ventilate, eye protection, no tool across the poles." },
	{ "carbon-monoxide", "A running engine gives off carbon monoxide: in the open, with nobody at the stern." },
	{ "disposal", "Oil, coolant and batteries go to a collection point, never into the water or the bilge." },
	{ "fuel-vapour", "Petrol vapour explodes: no flame or spark, battery off, run the blower before starting." },
	{ "hot-coolant", "Hot coolant scalds: let it cool before a cap is opened." },
	{ "lifting-drive", "The drive is heavy: a hoist or a stand made for it, nothing and nobody underneath." },
	{ "moving-parts", "Belts and shafts catch: engine off, key out, loose clothes away." },
	{ "propeller", "Key out before hands come near the propeller; nobody near it when it can turn." },
	{ "shore-power", "Shore power kills: unplug it; work on it is a licensed electrician's." },
	{ "stands", "A boat on stands can fall: chained stands on firm ground, nobody moves them but the yard." },
	{ "trailer", "Chock the wheels; no weight on a jack alone." },
};

static const char *
caution_of(const char *word)
{
	for (guint i = 0; i < G_N_ELEMENTS(cautions); i++)
		if (!strcmp(cautions[i].word, word))
			return cautions[i].sentence;
	return NULL;
}

char *
caution_words(const char *words)
{
	g_auto(GStrv) word = g_strsplit(words ? words : "", " ", -1);
	GString *out = g_string_new("Caution:");

	for (int i = 0; word[i]; i++)
		if (caution_of(word[i]))
			g_string_append_printf(out, " %s", caution_of(word[i]));
	if (out->len == strlen("Caution:"))
		return g_string_free(out, TRUE);
	g_string_append(out, " The maker's manual, local code and licensed technicians come first.");
	return g_string_free(out, FALSE);
}
