/* stores: what lies where, what is wanted, what it cost. */
#include "cli/cmd_stores.h"
#include "cli/show.h"
#include "cli/stores_text.h"
#include "logbook/stores_story.h"

#include "base/err.h"

#include <stdio.h>
#include <string.h>

static const struct option_def options[] = {
	{ "number", "N[@SUPPLIER]", "a number of the item, and whose it is; with add and set it may be repeated" },
	{ "unit", "UNIT", "what it is counted in: L, m; else pieces" },
	{ "rubber", NULL, "it is rubber, and ages on the shelf" },
	{ "shelf", "MONTHS", "so long it may lie" },
	{ "lead", "DAYS", "from ordering to having it" },
	{ "keep", "N", "so many are always wanted on hand; 0: none" },
	{ "replaces", "OLD", "of number: the number that it takes the place of" },
	{ "price", "MONEY", "of all of it: \"12.50 EUR\"" },
	{ "supplier", "NAME", "where it was bought" },
	{ "made", "DATE", "when it was made; a month will do: 2021-09" },
	{ "place", "TEXT", "where it lies" },
	{ "date", "DATE", "the day; else today" },
	{ "expected", "DATE", "of ordered: the day it is to come" },
	{ "for", "TASK|JOB|WHY", "of took: what for; lost, thrown away, returned: for no boat" },
	{ "back", NULL, "of took: it is put back" },
	{ "on-condition", NULL, "of need: only when it is found bad" },
	{ "at", "DAY", "of want: as things will stand then" },
	{ "until", "DAY", "of want: for all that is to be done by then" },
	{ "by", "WORD", "of costs: season, fitting, hour or year" },
	{ "remark", "TEXT", "a remark" },
	{ "yes", NULL, "of took: more than there is on record, or too old, is taken" },
	{ "names", NULL, "only the items' names, a line each" },
	{ "csv", NULL, "of the list, want and costs: as CSV" },
	{ "json", NULL, "of the list, want and costs: as JSON" },
	{ NULL, NULL, NULL },
};

/* The whole list, or what is known of one item. */
static gboolean
list(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct stores *s = book_stores(b, err);
	g_autofree char *words = args_join(a, 0);
	const struct item *i = s && *words ? stores_named(c, s, words, err) : NULL;
	gboolean ok = s && (!*words || i);

	(void)boat;
	for (guint k = 0; ok && args_flag(a, "names") && stores_nth(s, k); k++)
		cli_say(c, 2, "%s", stores_nth(s, k)->what);
	if (ok && (args_flag(a, "csv") || args_flag(a, "json"))) {
		g_autofree char *text = (args_flag(a, "csv") ? stores_csv : stores_json)(s, i, c->who.today);

		cli_data(c, text);
	} else if (ok && i) {
		stores_story_text(c, b, s, i);
	} else if (ok && !args_flag(a, "names")) {
		stores_list_text(c, s);
	}
	stores_free(s);
	return ok;
}

static gboolean
want(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct due_ask ask = { c->who.today, NONE };
	struct wants *w;

	if (args_value(a, "at") && !book_day(b, boat, args_value(a, "at"), &ask.at, err))
		return err_prefix(err, "--at: ");
	if (args_value(a, "until") && !book_day(b, boat, args_value(a, "until"), &ask.until, err))
		return err_prefix(err, "--until: ");
	w = book_wants(b, boat, &ask, err);
	if (!w)
		return FALSE;
	if (args_flag(a, "csv") || args_flag(a, "json")) {
		g_autofree char *text = args_flag(a, "csv") ? wants_csv(w) : wants_json(w, boat->name);

		cli_data(c, text);
	} else {
		stores_want_text(c, boat->name, w);
	}
	wants_free(w);
	return TRUE;
}

static gboolean
read_by(const struct args *a, enum cost_by *by, GError **err)
{
	const char *word = args_value(a, "by");

	*by = COST_SEASON;
	for (guint i = 0; word && i < G_N_ELEMENTS(cost_words); i++)
		if (!strcmp(word, cost_words[i])) {
			*by = (enum cost_by)i;
			return TRUE;
		}
	return !word || err_set(err, ERR_INPUT, "--by: \"%.40s\" is none of season, fitting, hour, year", word);
}

static gboolean
costs(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct costs sums;
	enum cost_by by;

	if (!read_by(a, &by, err) || !book_costs(b, boat, by, NONE, &sums, err))
		return FALSE;
	if (args_flag(a, "csv") || args_flag(a, "json")) {
		g_autofree char *text = args_flag(a, "csv") ? costs_csv(b, &sums) : costs_json(b, &sums, boat->name);

		cli_data(c, text);
	} else {
		stores_cost_text(c, b, boat->name, &sums);
	}
	costs_clear(&sums);
	return TRUE;
}

/* The words that the command begins with; the last one is that of an item, or nothing. */
static const struct use {
	const char *word;
	stores_act *act;
	enum book_mode mode;
	guint words; /* at most so many, with its own */
	const char *options; /* that it takes, a space around each */
} uses[] = {
	{ "add", stores_add, BOOK_WRITE, 2, " number unit rubber shelf lead keep remark " },
	{ "set", stores_set, BOOK_WRITE, 2, " number unit rubber shelf lead keep remark " },
	{ "number", stores_number, BOOK_WRITE, 3, " replaces " },
	{ "bought", stores_bought, BOOK_WRITE, 3, " number price supplier made place date remark " },
	{ "ordered", stores_ordered, BOOK_WRITE, 3, " number price supplier expected date remark " },
	{ "arrived", stores_here, BOOK_WRITE, 2, " number price supplier made place date remark " },
	{ "took", stores_took, BOOK_WRITE, 3, " for back date yes " },
	{ "count", stores_counted, BOOK_WRITE, 3, " date remark " },
	{ "need", stores_need, BOOK_WRITE, 4, " on-condition " },
	{ "want", want, BOOK_READ, 1, " at until csv json " },
	{ "costs", costs, BOOK_READ, 1, " by csv json " },
	{ NULL, list, BOOK_READ, G_MAXUINT, " names csv json " },
};

static const struct use *
use_of(const char *word)
{
	const struct use *u = uses;

	while (u->word && (!word || strcmp(u->word, word)))
		u++;
	return u;
}

static gboolean
check_use(const struct use *u, const struct args *a, GError **err)
{
	for (const struct option_def *o = options; o->name; o++) {
		g_autofree char *word = g_strdup_printf(" %s ", o->name);

		if (args_flag(a, o->name) && !strstr(u->options, word))
			return err_set(err, ERR_USE, "--%s is not of splitpin stores %s", o->name, u->word ? u->word : "by itself");
	}
	if (a->words->len > u->words)
		return err_set(err, ERR_USE, "\"%.40s\" is too much: a name of several words goes in quotes",
			       args_word(a, u->words));
	return !(args_flag(a, "csv") && args_flag(a, "json")) || err_set(err, ERR_USE, "--csv and --json together");
}

static int
act(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	return use_of(args_word(a, 0))->act(c, b, boat, a, err) ? EXIT_DONE : EXIT_DATA;
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	const struct use *u = use_of(args_word(a, 0));

	if (!check_use(u, a, err))
		return EXIT_USE;
	return cli_with_boat(c, u->mode, a, act, err);
}

const struct command command_stores = {
	"stores",
	"[WORD] [ITEM] [N]",
	"parts and consumables: on hand, wanted, and what they cost",
	"splitpin stores add \"bellows, U-joint\" --number RB-103@Quay --rubber --shelf 48 --lead 14\n"
	"splitpin stores number bellows RB-204@Quay --replaces RB-103\n"
	"splitpin stores bought bellows 2 --price \"61.80 EUR\" --made 2026-05 --place \"bow locker\"\n"
	"splitpin stores ordered bellows 1 --expected 2027-03-01\n"
	"splitpin stores arrived bellows --place shed\n"
	"splitpin stores need bellows-ujoint.renew bellows\n"
	"splitpin stores took bellows 1 --for \"returned: the wrong side\"\n"
	"splitpin stores count bellows 1\n"
	"splitpin stores want --until launch\n"
	"splitpin stores costs --by hour\n\n"
	"WORD is add, set, number, bought, ordered, arrived, took, count, need, want or costs; without it what is on hand is "
	"listed, or the story of one item. ITEM is one of its numbers, also an old one, or words that only one has. Prices are "
	"of all that was bought together; currencies are never mixed.",
	options,
	run, -1,
};
