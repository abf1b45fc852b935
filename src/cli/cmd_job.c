/* job: work done in one go, what came off, and how it went back. */
#include "cli/job_text.h"

#include "base/err.h"

#include <string.h>

static const struct option_def options[] = {
	{ "template", "NAME", "with start: a template; several may be given" },
	{ "task", "TASK", "with start: a task that it is for; several may be given" },
	{ "finding", "KEY", "with start: a finding that it is for; several may be given" },
	{ "name", "NAME", "with start: its name; else made of the template, or the title, and the year" },
	{ "carry", NULL, "all tools and parts to carry, and the cautions, before starting" },
	{ "off", "LINE", "that came off, or stood so: \"6 bolts 5/8 tray 2\", \"trim angle 3/8 in proud\"" },
	{ "again", "LINE", "the same as the last line, but for what this says" },
	{ "left-over", "LINE", "that is left over, and nobody knows of what" },
	{ "offers", NULL, "what usually comes off, with numbers" },
	{ "take", "N", "that one of what is offered came off; --as says what differs" },
	{ "correct", "N", "line N is as --as says; what that does not say stays" },
	{ "as", "LINE", "with --take and --correct: how it is" },
	{ "drop", "N", "take line N out; several may be given" },
	{ "photo", "FILE", "with a line: a photo or a voice note; several may be given" },
	{ "fitting", "FITTING", "with a line: what it belongs to" },
	{ "list", NULL, "the strip-down list as it came off" },
	{ "refit", NULL, "the list in reverse, with blanks for how it is left" },
	{ "labels", NULL, "a label for each tray or bag" },
	{ "steps", NULL, "the steps in their order, and what is seen before the work counts" },
	{ "back", "N", "line N went back" },
	{ "count", "N", "with --back: how many; wanted of retainers and plugs" },
	{ "left", "TEXT", "with --back: how it is left" },
	{ "why", "TEXT", "with --back: why that differs from how it was found" },
	{ "renewed", NULL, "with --back: new ones went in" },
	{ "step", "N", "step N, or the open steps N-M, are done; of a proof it was seen; several may be given" },
	{ "skip-step", "N", "step N, or the open steps N-M, are left undone, with --reason; several may be given" },
	{ "seen", "TEXT", "with --step and --done: what was seen; of a finding, how it was left" },
	{ "done", "TASK", "that task is done, or that finding put right; several may be given" },
	{ "undone", "TASK", "that task or finding is left undone, with --reason; several may be given" },
	{ "reason", "TEXT", "why it is left undone" },
	{ "date", "DATE", "with start and --done: the day; else today" },
	{ "meter", "READING", "with --done: what the hour meter showed" },
	{ "engine", "NAME", "with start: that side alone; with --done: whose meter" },
	{ "outcome", "WORD", "with --done: as for did; else as the task says" },
	{ "number", "TEXT", "with --done: number of the part that went in" },
	{ "made", "DATE", "with --done: date printed on what went in" },
	{ "used", "ITEM[=N]", "with --done: what it took of the stores; may be repeated" },
	{ "yes", NULL, "with --done: take an unlikely reading, or what is too old, as it is" },
	{ "by", "NAME", "who did it; else --who" },
	{ "remark", "TEXT", "with start and a line: a remark" },
	{ "add-template", "NAME", "a template more" },
	{ "add-task", "TASK", "a task more" },
	{ "add-finding", "KEY", "a finding more" },
	{ "pause", "PLACE", "it rests; where things lie" },
	{ "resume", NULL, "it goes on" },
	{ "close", NULL, "it is finished; refused while anything is open" },
	{ "all", NULL, "without NAME: the closed jobs, too" },
	{ "names", NULL, "only the names of the jobs or templates; with --list or --steps the numbers of what is open" },
	{ "csv", NULL, "the jobs, or with --list the strip-down list, as CSV" },
	{ "json", NULL, "the jobs, or all of one, as JSON" },
	{ NULL, NULL, NULL },
};

static gboolean
say_sheet(const struct cli *c, struct book *b, const struct job_sheet *s, const struct args *a)
{
	g_autofree char *page = NULL;

	if (args_flag(a, "names")) {
		job_say_numbers(s, args_flag(a, "list"));
		return TRUE;
	}
	if (args_flag(a, "offers")) {
		job_say_offers(c, s);
		return TRUE;
	}
	if (args_flag(a, "csv") || args_flag(a, "json")) {
		page = args_flag(a, "csv") ? job_removals_csv(s) : job_json(s);
		cli_data(c, page);
		return TRUE;
	}
	if (args_flag(a, "carry"))
		page = job_carry_page(b, s);
	else if (args_flag(a, "list") || args_flag(a, "refit"))
		page = job_list_page(s, args_flag(a, "refit"));
	else if (args_flag(a, "labels"))
		page = job_labels(s);
	else if (args_flag(a, "steps"))
		page = job_steps_page(s);
	if (page)
		job_say_page(c, page);
	else
		job_say_state(c, s);
	return TRUE;
}

static gboolean
show(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	struct job_sheet *s = book_job_sheet(b, job, err);
	gboolean ok = s && say_sheet(c, b, s, a);

	job_sheet_free(s);
	return ok;
}

static const struct job_deed shows[] = {
	{ "carry", BOOK_READ, show }, { "offers", BOOK_READ, show }, { "list", BOOK_READ, show },
	{ "refit", BOOK_READ, show }, { "labels", BOOK_READ, show }, { "steps", BOOK_READ, show }, { NULL, BOOK_READ, NULL },
};

/* What is asked for of one job; *n counts what was. */
static const struct job_deed *
deed_of(const struct args *a, int *n)
{
	const struct job_deed *const tables[] = { shows, job_records };
	const struct job_deed *found = NULL;

	*n = 0;
	for (guint t = 0; t < G_N_ELEMENTS(tables); t++)
		for (const struct job_deed *d = tables[t]; d->option; d++)
			if (args_value(a, d->option) && (!found || found->act != d->act || found->act == show)) {
				found = d;
				++*n;
			}
	return found;
}

static int
job(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	const char *word = args_word(a, 0);
	struct job one;
	int n;
	const struct job_deed *d = deed_of(a, &n);
	gboolean ok;

	if (word && !strcmp(word, "start"))
		return job_start(c, b, boat, a, err) ? EXIT_DONE : EXIT_DATA;
	if (word && !strcmp(word, "templates"))
		return job_say_templates(c, b, boat, args_flag(a, "names"), err) ? EXIT_DONE : EXIT_DATA;
	if (!word && !d)
		return job_say_jobs(c, b, boat, a, err) ? EXIT_DONE : EXIT_DATA;
	ok = book_find_job(b, boat->id, word, &one, err) && (d ? d->act : show)(c, b, &one, a, err);
	record_clear(RECORD_JOB, &one);
	return ok ? EXIT_DONE : EXIT_DATA;
}

static gboolean
has_names(const struct args *a, const struct job_deed *d)
{
	const char *word = args_word(a, 0);

	return d ? !strcmp(d->option, "list") || !strcmp(d->option, "steps") : !word || !strcmp(word, "templates");
}

/* Of two lines in one command the first would be lost. */
static gboolean
check_once(const struct args *a, GError **err)
{
	static const char *const often[] = { "template", "task", "finding", "drop", "photo", "step", "skip-step", "done", "undone",
					     "add-template", "add-task", "add-finding", "used", NULL };

	for (const struct option_def *o = options; o->name; o++)
		if (o->arg && !g_strv_contains(often, o->name) && args_nth(a, o->name, 1))
			return err_set(err, ERR_USE, "--%s stands there twice: one of them a command", o->name);
	return TRUE;
}

/* Options that are of another use than the one meant would be passed over in silence. */
static gboolean
check_options(const struct args *a, const struct job_deed *d, gboolean starts, GError **err)
{
	static const struct {
		const char *option, *of;
	} needs[] = { { "count", "back" },   { "left", "back" },      { "why", "back" },    { "renewed", "back" },
		      { "meter", "done" },   { "outcome", "done" },   { "number", "done" }, { "made", "done" },
		      { "yes", "done" },     { "used", "done" },      { "template", "start" },
		      { "task", "start" },   { "finding", "start" },  { "name", "start" } };
	const char *by = starts ? "start" : d ? d->option : "";

	for (guint i = 0; i < G_N_ELEMENTS(needs); i++)
		if (args_flag(a, needs[i].option) && strcmp(by, needs[i].of))
			return err_set(err, ERR_USE, "--%s is of %s%s", needs[i].option,
				       strcmp(needs[i].of, "start") ? "--" : "job ", needs[i].of);
	if (args_flag(a, "used") && args_nth(a, "done", 1))
		return err_set(err, ERR_USE, "--used is of one task: --done each of them by itself");
	if (args_flag(a, "names") && !has_names(a, d))
		return err_set(err, ERR_USE, "--names is of the jobs, the templates, --list and --steps");
	if (args_flag(a, "csv") && args_flag(a, "json"))
		return err_set(err, ERR_USE, "--csv and --json together");
	if (args_flag(a, "engine") && strcmp(by, "start") && strcmp(by, "done"))
		return err_set(err, ERR_USE, "--engine is of job start and --done");
	if (args_flag(a, "as") && strcmp(by, "take") && strcmp(by, "correct"))
		return err_set(err, ERR_USE, "--as is of --take and --correct");
	if (args_flag(a, "reason") && strcmp(by, "undone") && strcmp(by, "skip-step"))
		return err_set(err, ERR_USE, "--reason is of --undone and --skip-step");
	if (args_flag(a, "seen") && strcmp(by, "done") && strcmp(by, "step"))
		return err_set(err, ERR_USE, "--seen is of --step and --done");
	return TRUE;
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	const char *word = args_word(a, 0);
	gboolean starts = word && !strcmp(word, "start");
	int n;
	const struct job_deed *d = deed_of(a, &n);

	if (n > 1 || (starts && n)) {
		err_set(err, ERR_USE, "one thing at a time: start, or one of --off, --back, --step, --done, --close and so on");
		return EXIT_USE;
	}
	if (!starts && args_word(a, 1)) {
		err_set(err, ERR_USE, "\"%.40s\" is too much; a line is one word, in quotes", args_word(a, 1));
		return EXIT_USE;
	}
	if (!check_once(a, err) || !check_options(a, d, starts, err))
		return EXIT_USE;
	return cli_with_boat(c, starts || d ? (starts ? BOOK_WRITE : d->mode) : BOOK_READ, a, job, err);
}

const struct command command_job = {
	"job",
	"[start [TITLE] | templates | NAME]",
	"take it apart and put it back: what came off, how it went back",
	"splitpin job templates\n"
	"splitpin job start --template drive-off --template linkage-and-retainers\n"
	"splitpin job --carry\n"
	"splitpin job --off \"6 nuts 5/8 tray 2\" --photo nuts.jpg\n"
	"splitpin job --pause \"drive in the shed, trays on the shelf\"\n"
	"splitpin job --refit\n"
	"splitpin job --back 23 --count 6\n"
	"splitpin job --step 39-76\n"
	"splitpin job --step 101 --seen \"no drip\"\n"
	"splitpin job --done mounting-gasket.renew --meter 640.2 --used gasket\n"
	"splitpin job --close\n\n"
	"Without a word it lists the jobs that are open or rest. With only one of them NAME may be left out; the beginning of a "
	"name will do. What came off is written in one line, in any order: how many, what, its size, how it was found, which way "
	"round, which tray, and renew or missing. Retainers and plugs are counted out and in. A figure or a count that is not as "
	"it was wants --why. What is missing or left over is a finding that holds the launch. Without its proofs seen, work does "
	"not count. A job closes when every line is back, every step and proof ticked and every task done, or told why not.",
	options,
	run, -1,
};
