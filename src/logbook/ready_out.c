/* The launch check in words, as CSV and as JSON. */
#include "logbook/ready.h"

#include "base/date.h"
#include "exchange/csv_out.h"
#include "exchange/json.h"

static const char *const groups[] = { "hold", "mend", "unknown" };
static const char *const grounds[] = { "finding", "happening", "job", "plugs", "reading", "bad", "not-seen", "claimed", "asked",
				       "past-due", "by-launch", "skipped", "never-seen", "closable", "watch", "guess",
				       "design", "no-limit", "unasked", "retired", "no-date", "no-value" };
G_STATIC_ASSERT(G_N_ELEMENTS(groups) == READY_GROUPS && G_N_ELEMENTS(grounds) == READY_GROUNDS);
const struct words words_ready_group = { "group", groups, READY_GROUPS };
const struct words words_ready_ground = { "ground", grounds, READY_GROUNDS };

char *
ready_answer(const struct ready *r)
{
	if (r->holding)
		return g_strdup_printf("Hold the launch: %d %s", r->holding, r->holding == 1 ? "thing" : "things");
	if (r->passed)
		return g_strdup_printf("Nothing on record holds the launch but what was let pass: %d %s.", r->passed,
				       r->passed == 1 ? "thing" : "things");
	return g_strdup("Nothing on record holds the launch.");
}

const char *
ready_caveat(void)
{
	return "This tells what is on record and certifies nothing: the maker's manual, local code, a licensed technician and "
	       "your own eyes come first.";
}

const char *
ready_heading(enum ready_group group)
{
	switch (group) {
	case READY_HOLDS:
		return "HOLDS THE LAUNCH";
	case READY_MEND:
		return "TO BE MENDED THIS SEASON";
	case READY_UNKNOWN:
		return "NOT KNOWN";
	case READY_GROUPS:
		break;
	}
	g_assert_not_reached();
}

char *
ready_item_words(const struct ready_item *i)
{
	g_autoptr(GString) out = g_string_new(NULL);
	char day[16];

	g_string_printf(out, "%s: %s", i->words, i->why);
	if (i->name)
		g_string_append_printf(out, " (%s)", i->name);
	if (i->until != NONE)
		g_string_append_printf(out, "; let pass until %s by %s: %s", day_words(i->until, day), i->who, i->reason);
	return g_string_free(g_steal_pointer(&out), FALSE);
}

gboolean
ready_summed_up(const struct ready_item *i)
{
	return i->until == NONE && (i->ground == READY_NEVER_SEEN || i->ground == READY_RETIRED || i->ground == READY_UNASKED);
}

char *
ready_sum_words(enum ready_ground ground, int n)
{
	if (ground == READY_RETIRED)
		return g_strdup_printf("%d %s retired that can sink, burn or hurt: ready --all", n,
				       n == 1 ? "task is" : "tasks are");
	if (ground == READY_UNASKED)
		return g_strdup_printf("%d %s that only a finding asks for, and nobody has looked: ready --all", n,
				       n == 1 ? "task" : "tasks");
	return g_strdup_printf("%d %s nobody has on record: one survey, splitpin due --survey", n, n == 1 ? "task" : "tasks");
}

char *
ready_csv(const struct ready *r, const struct boat *boat)
{
	static const char *const header[] = { "boat", "group", "ground", "fails", "name", "what", "why", "until", "who", "reason" };
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);
	struct csv_out *csv = csvout_new(&sink, NULL);
	char day[DAY_TEXT];

	csvout_names(csv, header, G_N_ELEMENTS(header));
	for (int i = 0; i < ready_count(r); i++) {
		const struct ready_item *item = ready_at(r, i);

		csvout_text(csv, boat->name);
		csvout_word(csv, word_of(&words_ready_group, item->group));
		csvout_word(csv, word_of(&words_ready_ground, item->ground));
		csvout_word(csv, word_of(&words_consequence, item->consequence));
		csvout_text(csv, item->name);
		csvout_text(csv, item->words);
		csvout_text(csv, item->why);
		csvout_word(csv, day_iso(item->until, day));
		csvout_text(csv, item->who);
		csvout_text(csv, item->reason);
		csvout_row(csv);
	}
	csvout_close(csv, NULL);
	return g_string_free(text, FALSE);
}

static void
json_item(struct json_out *j, const struct ready_item *i)
{
	char day[DAY_TEXT];

	jsonout_open_object(j, NULL);
	jsonout_text(j, "group", word_of(&words_ready_group, i->group));
	jsonout_text(j, "ground", word_of(&words_ready_ground, i->ground));
	jsonout_text(j, "fails", i->consequence == NONE ? NULL : word_of(&words_consequence, i->consequence));
	jsonout_text(j, "name", i->name);
	jsonout_text(j, "what", i->words);
	jsonout_text(j, "why", i->why);
	jsonout_text(j, "until", i->until == NONE ? NULL : day_iso(i->until, day));
	jsonout_text(j, "who", i->who);
	jsonout_text(j, "reason", i->reason);
	jsonout_close(j);
}

char *
ready_json(const struct ready *r, const struct boat *boat)
{
	struct json_out *j = jsonout_new();
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);
	char day[DAY_TEXT];

	jsonout_next(j);
	jsonout_text(j, "boat", boat->name);
	jsonout_text(j, "at", day_iso(r->at, day));
	jsonout_text(j, "launch", r->launch == NONE ? NULL : day_iso(r->launch, day));
	jsonout_yes(j, "holds", r->holding > 0);
	jsonout_int(j, "holding", r->holding);
	jsonout_int(j, "let-pass", r->passed);
	jsonout_text(j, "caveat", ready_caveat());
	jsonout_open_array(j, "items");
	for (int i = 0; i < ready_count(r); i++)
		json_item(j, ready_at(r, i));
	jsonout_close(j);
	jsonout_write(j, &sink, TRUE, NULL);
	jsonout_free(j);
	return g_string_free(text, FALSE);
}
