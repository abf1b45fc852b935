#include "cli/cli.h"
#include "cli/show.h"
#include "cli/stores_text.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/finding.h"
#include "logbook/page.h"
#include "logbook/service.h"
#include "logbook/variant.h"

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
	{ "made", "DATE", "date printed on what went in: a day, or a year alone" },
	{ "number", "TEXT", "number of the part that went in" },
	{ "used", "ITEM[=N]", "what it took of the stores, from the oldest lot that is fresh; may be repeated. none: nothing" },
	{ "filled", "TEXT", "oil or coolant that went in, type and quantity: \"mineral 15W-40, 4.2 L\"" },
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
	f->filled = args_value(a, "filled");
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
	    && opt_hours(a, "meter", &f->what.reading, err)
	    && opt_word(a, "outcome", &words_outcome, &f->what.outcome, err) && read_texts(c, a, f, err);
}

static gboolean
read_made(struct book *b, const struct task *t, const struct args *a, struct service_form *f, GError **err)
{
	const char *made = args_value(a, "made");

	return !made || book_made(b, t, made, &f->what.made, err) || err_prefix(err, "--made: ");
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
	if (s->repeated)
		cli_say(c, 2, "  %s", s->repeated);
	if (s->mixed)
		cli_say(c, 2, "  %s", s->mixed);
	if (s->used)
		cli_say(c, 4, "  %s", s->used);
}

/* What went in may be of another design than what came out, and that decides which tasks there are: *answer is asked for
 * where somebody can be asked, else the design stays as it is, and how to say it is told. */
static gboolean
ask_design(const struct cli *c, const struct fitting *f, char *answer, int size, GError **err)
{
	g_autofree char *designs = variant_words(f->variants), *ask = NULL;

	*answer = '\0';
	if (!c->ask) {
		cli_say(c, 2, "  the design %s%s; if another went in: --variant %s", f->variant ? "stays " : "is not known",
			f->variant ? f->variant : "", designs);
		return TRUE;
	}
	ask = f->variant ? g_strdup_printf("Which design went in? %s; Enter: %s as before", designs, f->variant)
			 : g_strdup_printf("Which design went in? %s; Enter: not known", designs);
	return (cli_ask(ask, "", answer, size) || err_set(err, ERR_INPUT, "broken off: nothing was recorded"))
	    && (!*answer || book_check_variant(f, answer, err));
}

/* The design of what went in, as asked or given; *changes is what that brings and takes away, NULL for nothing. */
static gboolean
read_design(const struct cli *c, struct book *b, const struct task *t, struct service_form *form, char **changes, GError **err)
{
	gint64 outcome = form->what.outcome == NONE ? (gint64)service_usual_outcome(t) : form->what.outcome;
	struct fitting f;
	char answer[64];
	gboolean ok;

	*changes = NULL;
	record_init(RECORD_FITTING, &f);
	ok = book_record(b, RECORD_FITTING, t->fitting, &f, err);
	if (ok && !form->variant && outcome == OUTCOME_RENEWED && f.variants && strchr(f.variants, ' ')) {
		ok = ask_design(c, &f, answer, sizeof answer, err);
		form->variant = ok && *answer ? g_intern_string(answer) : NULL;
	}
	if (ok && form->variant && book_check_variant(&f, form->variant, NULL))
		*changes = book_variant_changes(b, &f, form->variant, NULL);
	record_clear(RECORD_FITTING, &f);
	return ok;
}

/* Findings that asked for this work are closed by their owner, who says how it was left. */
static gboolean
say_findings(const struct cli *c, struct book *b, const struct task *t, GError **err)
{
	g_autoptr(GArray) all = book_findings_for(b, t->boat, t->name, err);

	for (guint i = 0; all && i < all->len; i++) {
		const struct finding *f = &((const struct finding *)(const void *)all->data)[i];
		g_autofree char *key = book_key_text(f->id);

		cli_say(c, 4, "  a finding asked for this, \"%s\": when it is put right, splitpin found --mend %s \"as left\"",
			f->words, key);
	}
	return all != NULL;
}

static gboolean
record_did(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct service_form f = { 0 };
	struct service_said s = { 0 };
	struct task t;
	g_autofree char *words = args_join(a, 0), *changes = NULL;
	g_autoptr(GArray) used = g_array_new(FALSE, FALSE, sizeof(struct store_use));
	gboolean ok = FALSE;

	if (!*words)
		return err_set(err, ERR_USE, "which task? splitpin due lists them");
	if (!book_find_task(b, boat->id, words, &t, err))
		return FALSE;
	if (read_form(c, a, &f, err) && read_made(b, &t, a, &f, err) && stores_used(c, b, a, &f, used, err)
	    && read_design(c, b, &t, &f, &changes, err)) {
		f.what.task = t.id;
		ok = book_did(b, &f, &s, err);
		if (ok)
			said(c, &t, &f.what, &s);
		ok = ok && say_findings(c, b, &t, err);
		if (ok && changes && *changes)
			cli_say(c, 2, "  %s it is. %s.", f.variant, changes);
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
