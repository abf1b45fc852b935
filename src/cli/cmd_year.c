/* stay, season and happening: where the boat is and what came over it. */
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

static gboolean
add_season(struct cli *c, struct book *b, gint64 boat, const struct args *a, GError **err)
{
	gint64 launch = NONE, haul_out = NONE;
	char d[16];

	if (!opt_date(c, a, "launch", &launch, err) || !opt_date(c, a, "haul-out", &haul_out, err))
		return FALSE;
	if (launch == NONE && haul_out == NONE)
		return err_set(err, ERR_USE, "which day? --launch DATE, --haul-out DATE, or both");
	if (!book_season(b, boat, launch, haul_out, args_flag(a, "planned"), err))
		return FALSE;
	if (launch != NONE)
		printf("launch %s\n", day_words(launch, d));
	if (haul_out != NONE)
		printf("haul-out %s\n", day_words(haul_out, d));
	return TRUE;
}

static const struct option_def season_options[] = {
	{ "launch", "DATE", "the boat goes in" },
	{ "haul-out", "DATE", "the boat comes out" },
	{ "planned", NULL, "the dates are intended, not yet so" },
	{ "list", NULL, "list the seasons" },
	{ "since", "DATE", "with --list: from that day on" },
	{ NULL, NULL, NULL },
};

static int
season(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	if (args_flag(a, "list"))
		return show_records(c, b, RECORD_SEASON, boat->id, a, err);
	return add_season(c, b, boat->id, a, err) ? EXIT_DONE : EXIT_DATA;
}

static int
run_season(struct cli *c, const struct args *a, GError **err)
{
	return cli_with_boat(c, cli_list_mode(a), a, season, err);
}

const struct command command_season = {
	"season",
	"",
	"record launch and haul-out, or plan them",
	"splitpin season --launch 2027-04-15 --haul-out 2027-10-10 --planned\n"
	"splitpin season --haul-out today",
	season_options,
	run_season, 0,
};

static gboolean
add_happening(struct cli *c, struct book *b, gint64 boat, const struct args *a, GError **err)
{
	struct happening h;
	char d[16];
	int closed;
	gboolean ok;

	record_init(RECORD_HAPPENING, &h);
	h.boat = boat;
	h.date = c->who.today;
	if (!args_word(a, 0))
		return err_set(err, ERR_USE, "what happened? grounding, swamping, overheating, line, dry-run, ...");
	if (!word_parse(&words_happening, args_word(a, 0), &h.kind, err) || !opt_date(c, a, "date", &h.date, err))
		return FALSE;
	if (args_flag(a, "close")) {
		if (!book_close_happening(b, boat, h.kind, h.date, &closed, err))
			return FALSE;
		printf("%s closed on %s\n", word_of(&words_happening, h.kind), day_words(h.date, d));
		return TRUE;
	}
	h.remark = args_word(a, 1) ? args_join(a, 1) : NULL;
	ok = book_happening(b, &h, err);
	if (ok)
		printf("%s on %s: splitpin due shows what it asks for\n", word_of(&words_happening, h.kind),
		       day_words(h.date, d));
	record_clear(RECORD_HAPPENING, &h);
	return ok;
}

static const struct option_def happening_options[] = {
	{ "date", "DATE", "the day; else today" },
	{ "close", NULL, "all that it asked for is done" },
	{ "list", NULL, "list what happened" },
	{ "since", "DATE", "with --list: from that day on" },
	{ NULL, NULL, NULL },
};

static int
happening(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	if (args_flag(a, "list"))
		return show_records(c, b, RECORD_HAPPENING, boat->id, a, err);
	return add_happening(c, b, boat->id, a, err) ? EXIT_DONE : EXIT_DATA;
}

static int
run_happening(struct cli *c, const struct args *a, GError **err)
{
	return cli_with_boat(c, cli_list_mode(a), a, happening, err);
}

const struct command command_happening = {
	"happening",
	"KIND [REMARK]",
	"record a grounding, overheating, line in the propeller, ...",
	"splitpin happening grounding \"touched the bar at idle\"\n\n"
	"What a happening asks for falls due at once and stays due until each task is done.",
	happening_options,
	run_happening, -1,
};
