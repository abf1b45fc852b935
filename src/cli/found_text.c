#include "cli/found_text.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/page.h"

#include <stdio.h>

gboolean
found_show(const struct cli *c, struct book *b, const struct finding *f, GError **err)
{
	g_autofree char *story = finding_story(b, f, TRUE, err), *key = book_key_text(f->id);
	g_auto(GStrv) line = g_strsplit(story ? story : "", "\n", -1);

	for (int i = 0; line[i]; i++)
		if (*line[i])
			cli_say(c, 4, "%s%s", i ? "  " : "", line[i]);
	if (story)
		cli_say(c, 4, "  finding %s", key);
	return story != NULL;
}

static void
add_facts(GString *out, const struct finding *f)
{
	char day[16];

	if (f->proposed != NONE && f->proposed < f->level)
		g_string_append_printf(out, "; proposed was %s", word_of(&words_level, f->proposed));
	if (f->makes_due)
		g_string_append_printf(out, "; makes due %s", f->makes_due);
	if (f->until != NONE)
		g_string_append_printf(out, "; by %s", day_words(f->until, day));
	if (f->allowed)
		g_string_append_printf(out, "; until then %s", f->allowed);
	if (f->mended != NONE)
		g_string_append_printf(out, "; mended on %s, left as %s", day_words(f->mended, day), f->left_as ? f->left_as : "?");
}

/* "hold   3 May 2026  Gimbal bearing: rough, growls in turns (2nd season)", and what hangs on it. */
static void
list_line(const struct cli *c, struct book *b, const struct finding *f, int season)
{
	g_autofree char *key = book_key_text(f->id);
	g_autoptr(GString) facts = g_string_new(key);
	struct fitting on;
	char day[16], carried[16];

	record_init(RECORD_FITTING, &on);
	if (f->fitting != NONE)
		book_record(b, RECORD_FITTING, f->fitting, &on, NULL);
	finding_season_words(season, carried);
	cli_say(c, 7, "%-6s %s%s%s: %s%s%s%s", f->mended == NONE ? word_of(&words_level, f->level) : "mended",
		day_words(f->date, day), on.title ? ", " : "", on.title ? on.title : "", f->words, *carried ? " (" : "", carried,
		*carried ? ")" : "");
	add_facts(facts, f);
	cli_say(c, 9, "       %s", facts->str);
	record_clear(RECORD_FITTING, &on);
}

static gboolean
print_list(const struct cli *c, struct book *b, const struct boat *boat, const GArray *findings, GError **err)
{
	g_autoptr(GArray) seasons = book_records(b, RECORD_SEASON, boat->id, err);
	const struct finding *f = (const void *)findings->data;

	for (guint i = 0; seasons && i < findings->len; i++)
		list_line(c, b, &f[i], finding_season(&f[i], seasons, book_today(b)));
	if (seasons && !findings->len)
		cli_say(c, 2, "nothing is on record as found and open");
	return seasons != NULL;
}

static gboolean
print_data(const struct cli *c, char *text)
{
	if (text)
		cli_data(c, text);
	g_free(text);
	return text != NULL;
}

gboolean
found_list(const struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	gboolean csv = args_flag(a, "csv"), json = args_flag(a, "json");
	g_autoptr(GArray) all = NULL;
	gint64 since = NONE;

	if (csv && json)
		return err_set(err, ERR_USE, "--csv and --json together");
	if (!opt_date(c, a, "since", &since, err) || !(all = book_findings(b, boat->id, args_flag(a, "all"), err)))
		return FALSE;
	for (guint i = all->len; i-- > 0;)
		if (since != NONE && ((const struct finding *)(const void *)all->data)[i].date < since)
			g_array_remove_index(all, i);
	if (csv || json)
		return print_data(c, csv ? findings_csv(b, all, err) : findings_json(b, all, err));
	return print_list(c, b, boat, all, err);
}
