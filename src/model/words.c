#include "model/words.h"

#include "base/err.h"
#include "base/text.h"

#define WORDS(name, says, ...) \
	static const char *const name##_list[] = { __VA_ARGS__ }; \
	const struct words name = { says, name##_list, G_N_ELEMENTS(name##_list) }

WORDS(words_boat_kind, "kind of boat", "petrol-sterndrive", "diesel-sterndrive", "inboard", "outboard", "jet", "sail");
WORDS(words_stand, "place", "afloat", "trailer", "ashore", "roof");
WORDS(words_water, "water", "fresh", "brackish", "salt");
WORDS(words_air, "class of air", "c1", "c2", "c3", "c4", "c5", "cx");
WORDS(words_mechanism, "mechanism", "none", "corrosion", "galvanic", "rubber", "raw-water", "fluid", "wear", "growth",
      "frost");
WORDS(words_consequence, "consequence", "sinks", "burns", "hurts", "strands", "wrecks", "costs");
WORDS(words_workplace, "workplace", "anywhere", "out", "on-hose", "afloat", "shop");
WORDS(words_clock_rule, "clock rule", "done", "inspection", "renewal", "printed-date");
WORDS(words_limit_kind, "kind of limit", "hours", "months", "outings", "seasons", "event", "happening", "first-hours",
      "condition");
WORDS(words_season_event, "season event", "launch", "first-day", "mid-season", "haul-out", "lay-up");
WORDS(words_opportunity, "opportunity", "now", "before-launch", "first-day", "mid-season-haul", "this-season",
      "lay-up", "next-spring", "later", "each-outing", "on-condition", "no-record");
WORDS(words_meter_how, "reason for a meter", "first", "replaced", "reset", "estimated");
WORDS(words_outcome, "outcome", "done", "good", "bad", "renewed", "topped-up", "not-seen", "claimed");
WORDS(words_standing, "standing", "manual", "published", "practice", "memory", "owner", "assumption");
WORDS(words_happening, "happening", "grounding", "swamping", "overheating", "line", "dry-run", "flooded-bilge",
      "bad-fuel", "silt", "drive-off", "new-berth", "bought", "power-loss", "milky-oil", "vibration", "other");
WORDS(words_level, "level", "hold", "mend", "watch");
WORDS(words_season_list, "season list", "commissioning", "first-day", "mid-season", "haul-out", "lay-up", "sea-trial");
WORDS(words_bought, "state when bought", "new", "used");
WORDS(words_units, "system of units", "inch", "metric");
WORDS(words_shipped, "shipped row", "fitting", "task");
WORDS(words_step_kind, "kind of step", "tool", "part", "consumable", "state", "step", "proof");
WORDS(words_removal_kind, "kind of line", "part", "fastener", "retainer", "plug", "setting");
WORDS(words_removal_state, "state", "reuse", "renew", "missing", "extra");
WORDS(words_line_whose, "side", "owner", "yard");
WORDS(words_verb, "verb", "inspect", "test", "measure", "grease", "change", "renew", "tighten");

gint64
word_index(const struct words *w, const char *text)
{
	for (int i = 0; i < w->n; i++)
		if (!g_ascii_strcasecmp(w->word[i], text))
			return i;
	return NONE;
}

gboolean
word_parse(const struct words *w, const char *text, gint64 *index, GError **err)
{
	g_autoptr(GString) all = NULL;
	g_autofree char *shown = NULL;
	const char *near;

	*index = word_index(w, text);
	if (*index != NONE)
		return TRUE;
	near = text_nearest(text, w->word, w->n);
	shown = text_harmless(text, FALSE);
	if (near)
		return err_set(err, ERR_INPUT, "\"%.40s\" is no %s: is \"%s\" meant?", shown, w->what, near);
	all = g_string_new(w->word[0]);
	for (int i = 1; i < w->n; i++)
		g_string_append_printf(all, ", %s", w->word[i]);
	return err_set(err, ERR_INPUT, "\"%.40s\" is no %s: it is one of %s", shown, w->what, all->str);
}

const char *
word_of(const struct words *w, gint64 index)
{
	return index >= 0 && index < w->n ? w->word[index] : "";
}
