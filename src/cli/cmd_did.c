#include "cli/cli.h"
#include "cli/show.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/service.h"

#include <stdio.h>
#include <string.h>

static const struct option_def options[] = {
	{ "date", "DATE", "the day it was done; else today. Not known to the day: 2019, \"spring 2019\", 2018..2019-06" },
	{ "hours", "HOURS", "what the engine had run then, where the day is not known: 320, 300..350" },
	{ "meter", "READING", "what the hour meter showed" },
	{ "engine", "NAME", "whose meter, on a boat with several engines" },
	{ "outcome", "WORD", "done, good, bad, renewed, topped-up, not-seen or claimed; else as the task says" },
	{ "seen", "TEXT", "what was seen" },
	{ "proof", "TEXT", "what proves it: fresh grease seen, photo, receipt" },
	{ "by", "NAME", "who did it; else --who" },
	{ "made", "DATE", "date printed on what went in" },
	{ "number", "TEXT", "number of the part that went in" },
	{ "variant", "WORD", "design of the part that went in: greasable, sealed, ..." },
	{ "cost", "MONEY", "what it cost: 12.50, EUR 12.50" },
	{ "estimated", NULL, "the date is from memory" },
	{ "yes", NULL, "take an unlikely reading as it is" },
	{ "instead-of", "ID", "correct that service: the old one stays in the history" },
	{ "list", NULL, "list the services: of TASK, or of all" },
	{ "since", "DATE", "with --list: from that day on" },
	{ NULL, NULL, NULL },
};

static gboolean
read_texts(struct cli *c, const struct args *a, struct service_form *f, GError **err)
{
	const char *cost = args_value(a, "cost");
	char currency[4] = "";

	f->what.seen = g_strdup(args_value(a, "seen"));
	f->what.proof = g_strdup(args_value(a, "proof"));
	f->what.who = g_strdup(args_value(a, "by") ? args_value(a, "by") : c->who.name);
	f->part.number = g_strdup(args_value(a, "number"));
	f->variant = args_value(a, "variant");
	f->engine = args_value(a, "engine");
	if (cost && !money_parse(cost, &f->what.cost, currency, err))
		return err_prefix(err, "--cost: ");
	if (*currency)
		f->what.currency = g_strdup(currency);
	return TRUE;
}

/* The day or days, and the hours, as far as they are known. */
static gboolean
read_when(const struct cli *c, const struct args *a, struct service_form *f, GError **err)
{
	const char *date = args_value(a, "date"), *hours = args_value(a, "hours");
	struct service *s = &f->what;

	s->date = c->who.today;
	f->dated = date != NULL;
	if (date && !day_span_parse(date, c->who.today, &s->earliest, &s->date, err))
		return err_prefix(err, "--date: ");
	if (s->earliest == s->date)
		s->earliest = NONE;
	else if (s->earliest != NONE && s->earliest <= c->who.today)
		s->date = MIN(s->date, c->who.today);
	return !hours || hours_span_parse(hours, &s->hours_least, &s->hours_most, err) || err_prefix(err, "--hours: ");
}

static gboolean
read_form(struct cli *c, const struct args *a, struct service_form *f, GError **err)
{
	const char *id = args_value(a, "instead-of");

	record_init(RECORD_SERVICE, &f->what);
	record_init(RECORD_PART, &f->part);
	f->sure = args_flag(a, "yes");
	if (args_flag(a, "estimated"))
		f->what.estimated = 1;
	return (!id || key_parse(id, &f->what.id, err)) && read_when(c, a, f, err)
	    && opt_date(c, a, "made", &f->what.made, err) && opt_hours(a, "meter", &f->what.reading, err)
	    && opt_word(a, "outcome", &words_outcome, &f->what.outcome, err) && read_texts(c, a, f, err);
}

static void
said(const struct cli *c, const struct task *t, const struct service *w, const struct service_said *s)
{
	char d[16], from[16], h[HOURS_TEXT];

	cli_say(c, 2, "%s: %s %s%s%s%s%s%s%s", t->name, word_of(&words_outcome, w->outcome),
		w->earliest == NONE ? "on " : "between ", day_words(w->earliest, from),
		w->earliest == NONE ? "" : " and ", day_words(w->date, d),
		s->hours == NONE ? "" : " at ", s->hours == NONE ? "" : hours_words(s->hours, h),
		s->hours == NONE ? "" : " h");
	if (s->unlogged)
		cli_say(c, 2, "  the meter showed %s h that no outing tells of: put into the log as not logged",
			hours_words(s->unlogged, h));
	if (!s->counts)
		cli_say(c, 2, "  it stays due: %s", s->why_not);
}

static gboolean
record_did(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct service_form f = { 0 };
	struct service_said s = { 0 };
	struct task t;
	g_autofree char *words = args_join(a, 0);
	gboolean ok = FALSE;

	if (!*words)
		return err_set(err, ERR_USE, "which task? splitpin due lists them");
	if (!book_find_task(b, boat->id, words, &t, err))
		return FALSE;
	if (read_form(c, a, &f, err)) {
		f.what.task = t.id;
		ok = book_did(b, &f, &s, err);
		if (ok)
			said(c, &t, &f.what, &s);
	}
	service_said_clear(&s);
	record_clear(RECORD_SERVICE, &f.what);
	record_clear(RECORD_PART, &f.part);
	record_clear(RECORD_TASK, &t);
	return ok;
}

/* Of the task that the words mean, or of all. */
static int
list_did(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	g_autofree char *words = args_join(a, 0);
	struct task t;
	int code;

	if (!*words)
		return show_records(c, b, RECORD_SERVICE, boat->id, a, err);
	if (!book_find_task(b, boat->id, words, &t, err))
		return EXIT_DATA;
	code = show_records_of(c, b, &(struct show_only) { RECORD_SERVICE, boat->id, "task", t.id }, a, err);
	record_clear(RECORD_TASK, &t);
	return code;
}

static int
did(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	if (args_flag(a, "list"))
		return list_did(c, b, boat, a, err);
	return record_did(c, b, boat, a, err) ? EXIT_DONE : EXIT_DATA;
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	return cli_with_boat(c, cli_list_mode(a), a, did, err);
}

const struct command command_did = {
	"did",
	"TASK",
	"record work done: what was seen, what proves it, who",
	"splitpin did gimbal-bearing.grease --meter 612.4 --proof \"fresh grease seen\"\n"
	"splitpin did bellows-ujoint.renew --date \"12 mar\" --number RB-204 --cost 85.00 --by yard\n\n"
	"TASK is a name, or words that only one task has: splitpin did grease gimbal. A look that found the thing good "
	"restarts the looking, never the renewal; a top-up restarts nothing; grease that was not seen coming out does not "
	"count.",
	options,
	run, -1,
};
