/* plan check: whether catalogues hold together; plan --news: what a newer one changes for a boat. */
#include "cli/plan.h"

#include "base/err.h"
#include "logbook/catalogue_check.h"
#include "logbook/catalogue_news.h"

#include <stdio.h>

static char *
shipped_folder(const struct cli *c)
{
	return g_build_filename(c->data, "catalogue", NULL);
}

/* A line each, not broken, so that editors find the places. */
static void
say_all(const struct cli *c, const GPtrArray *lines)
{
	for (guint i = 0; i < lines->len; i++) {
		g_autofree char *line = g_strconcat(lines->pdata[i], "\n", NULL);

		cli_data(c, line);
	}
}

int
plan_check(const struct cli *c, const char *given, GError **err)
{
	g_autofree char *folder = given ? g_strdup(given) : shipped_folder(c);
	g_autoptr(GPtrArray) counts = g_ptr_array_new_with_free_func(g_free), problems = g_ptr_array_new_with_free_func(g_free);
	gboolean sound = catalogue_check(folder, counts, problems);

	say_all(c, sound ? counts : problems);
	if (!sound)
		err_set(err, ERR_INPUT, "%s: %u %s", folder, problems->len, problems->len == 1 ? "problem" : "problems");
	return sound ? EXIT_DONE : EXIT_DATA;
}

static gboolean
news_chosen(const struct args *a)
{
	return args_flag(a, "take-all") || args_value(a, "take") || args_value(a, "leave");
}

gboolean
plan_news_asked(const struct args *a)
{
	return args_flag(a, "news") || news_chosen(a);
}

gboolean
plan_news_looks(const struct args *a)
{
	return args_flag(a, "news") && !news_chosen(a);
}

static void
say_line(const struct cli *c, const struct news *line)
{
	static const char *const word[] = {
		[NEWS_NEW] = "new", [NEWS_CHANGED] = "changed", [NEWS_GONE] = "gone", [NEWS_YOURS] = "yours is kept:"
	};
	const char *more = line->kind == NEWS_GONE ? "the catalogue has it no more; taking that over retires it" : line->text;

	cli_say(c, 2, "%s %s: %s%s%s", word[line->kind], line->name, line->title,
		!*more ? "" : line->kind == NEWS_YOURS ? "; the catalogue would have " : "; ", more);
}

/* "edition 3 (this boat: 2)" */
static char *
edition_words(gint64 edition, gint64 has)
{
	if (edition == NONE)
		return g_strdup("without an edition");
	if (has == NONE)
		return g_strdup_printf("edition %d (this boat's is not known)", (int)edition);
	return g_strdup_printf("edition %d (this boat: %d)", (int)edition, (int)has);
}

static gboolean
list_news(const struct cli *c, struct book *b, const char *folder, const struct boat *boat, GError **err)
{
	struct news_list *n = book_news(b, folder, boat, err);
	g_autofree char *edition = n ? edition_words(n->edition, n->has) : NULL;

	if (!n)
		return FALSE;
	cli_say(c, 2, "the catalogue, %s: %u %s", edition, n->lines->len, n->lines->len == 1 ? "line" : "lines");
	for (guint i = 0; i < n->lines->len; i++)
		say_line(c, &((const struct news *)(const void *)n->lines->data)[i]);
	if (n->n_open)
		cli_say(c, 2, "splitpin plan --take NAME takes a line over, --take-all every line that is not yours, "
			"--leave NAME declines one for good");
	news_free(n);
	return TRUE;
}

gboolean
plan_news(const struct cli *c, struct book *b, struct boat *boat, const struct args *a, GError **err)
{
	g_autofree char *folder = shipped_folder(c);
	g_auto(GStrv) take = args_all(a, "take"), leave = args_all(a, "leave");
	struct news_choice choice = { take, leave, args_flag(a, "take-all"), 0, 0 };

	if (plan_news_looks(a))
		return list_news(c, b, folder, boat, err);
	if (!book_take_news(b, folder, boat, &choice, err))
		return FALSE;
	cli_say(c, 2, "%d taken over, %d left; splitpin undo takes that back", choice.taken, choice.left);
	return TRUE;
}

void
plan_hint_news(const struct cli *c, const struct boat *boat)
{
	g_autofree char *folder = shipped_folder(c);
	gint64 edition;

	if (catalogue_is_newer(folder, boat, &edition))
		cli_say(c, 2, "a newer catalogue is there, edition %d: splitpin plan --news says what it changes", (int)edition);
}
