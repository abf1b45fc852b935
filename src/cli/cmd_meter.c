#include "cli/cli.h"
#include "cli/show.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/found.h"

#include <stdio.h>

static const struct option_def options[] = {
	{ "replaced", "READING", "a new meter was fitted, showing this" },
	{ "reset", "READING", "the meter was set to this" },
	{ "estimated", "READING", "the meter was dead; hours from here on are guesses until it reads this" },
	{ "first", "READING", "what the meter showed on --date, when the log is to begin earlier than it did" },
	{ "date", "DATE", "the day; else today" },
	{ "engine", "NAME", "whose meter, on a boat with several engines" },
	{ "list", NULL, "list the meters" },
	{ "since", "DATE", "with --list: from that day on" },
	{ NULL, NULL, NULL },
};

static gboolean
add_meter(struct cli *c, struct book *b, gint64 boat, const struct args *a, GError **err)
{
	static const enum meter_how how[] = { METER_REPLACED, METER_RESET, METER_ESTIMATED, METER_FIRST };
	struct meter m;
	char d[16], h[HOURS_TEXT];
	gboolean ok;

	record_init(RECORD_METER, &m);
	m.fitted = c->who.today;
	for (int i = 0; i < 4; i++) {
		if (!opt_hours(a, options[i].name, &m.start, err))
			return FALSE;
		if (m.start != NONE && m.how == NONE)
			m.how = how[i];
	}
	if (m.start == NONE)
		return err_set(err, ERR_USE, "what became of the meter? --replaced READING or --reset READING");
	ok = opt_date(c, a, "date", &m.fitted, err) && book_add_meter(b, boat, args_value(a, "engine"), &m, err);
	if (ok) {
		printf("meter %s on %s", word_of(&words_meter_how, m.how), day_words(m.fitted, d));
		printf(", showing %s h", hours_words(m.start, h));
		if (m.engine_hours != NONE)
			printf("; the engine has %s h", hours_words(m.engine_hours, h));
		putchar('\n');
	}
	record_clear(RECORD_METER, &m);
	return ok;
}

static gboolean
lists(const struct args *a)
{
	return args_flag(a, "list") || !a->names->len;
}

static int
meter(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	if (lists(a))
		return show_records(c, b, RECORD_METER, boat->id, a, err);
	return add_meter(c, b, boat->id, a, err) ? EXIT_DONE : EXIT_DATA;
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	return cli_with_boat(c, lists(a) ? BOOK_READ : BOOK_WRITE, a, meter, err);
}

const struct command command_meter = {
	"meter",
	"",
	"list the hour meters, or record one replaced or reset",
	"splitpin meter --replaced 0.0 --date 2021-06-03\n\n"
	"An engine's hours are a timeline of meters, so that a new meter loses nothing.",
	options,
	run, 0,
};
