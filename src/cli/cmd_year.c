/* stay: where the boat lies. */
#include "cli/cli.h"
#include "cli/show.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/year.h"

#include <stdio.h>

static gboolean
add_stay(struct cli *c, struct book *b, gint64 boat, const struct args *a, GError **err)
{
	struct stay s;
	char d[16];
	gboolean ok;

	record_init(RECORD_STAY, &s);
	s.boat = boat;
	s.date = c->who.today;
	if (!args_word(a, 0))
		return err_set(err, ERR_USE, "where? afloat, trailer, ashore or roof");
	if (!word_parse(&words_stand, args_word(a, 0), &s.stand, err) || !opt_date(c, a, "date", &s.date, err)
	    || !opt_date(c, a, "until", &s.until, err) || !opt_word(a, "water", &words_water, &s.water, err))
		return FALSE;
	s.place = g_strdup(args_value(a, "place"));
	s.remark = args_word(a, 1) ? args_join(a, 1) : NULL;
	ok = book_stay(b, &s, err);
	if (ok)
		printf("%s from %s\n", word_of(&words_stand, s.stand), day_words(s.date, d));
	record_clear(RECORD_STAY, &s);
	return ok;
}

static const struct option_def stay_options[] = {
	{ "date", "DATE", "first day; else today" },
	{ "until", "DATE", "the day it ends; else it lasts" },
	{ "water", "WATER", "fresh, brackish or salt; else that of a known place, else the boat's usual" },
	{ "place", "TEXT", "which berth or yard; splitpin place says what is known of it" },
	{ "list", NULL, "list the stays" },
	{ "since", "DATE", "with --list: from that day on" },
	{ NULL, NULL, NULL },
};

static int
stay(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	if (args_flag(a, "list"))
		return show_records(c, b, RECORD_STAY, boat->id, a, err);
	return add_stay(c, b, boat->id, a, err) ? EXIT_DONE : EXIT_DATA;
}

static int
run_stay(struct cli *c, const struct args *a, GError **err)
{
	return cli_with_boat(c, cli_list_mode(a), a, stay, err);
}

const struct command command_stay = {
	"stay",
	"PLACE [REMARK]",
	"record where the boat lies: afloat, trailer, ashore or roof",
	"splitpin stay afloat --water salt --date 2026-08-02 --until 2026-08-16 --place \"town mooring\"\n\n"
	"Days without a stay follow the boat's seasons and its usual berth.",
	stay_options,
	run_stay, -1,
};
