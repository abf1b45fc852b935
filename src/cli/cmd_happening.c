/* happening: what came over the boat, the list that it makes, and closing it. */
#include "cli/cli.h"
#include "cli/show.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/caution.h"
#include "logbook/happening.h"
#include "logbook/year.h"

#include <stdio.h>

static const struct option_def options[] = {
	{ "date", "DATE", "the day; else today" },
	{ "close", NULL, "all that it asked for is done, or passed over" },
	{ "skip", "TASK", "pass a task over that it asks for; the launch check still tells of it" },
	{ "reason", "TEXT", "with --skip: why" },
	{ "list", NULL, "list what happened" },
	{ "since", "DATE", "with --list: from that day on" },
	{ NULL, NULL, NULL },
};

static void
say_task(const struct cli *c, const struct due_line *d)
{
	cli_say(c, 10, "  %-7s %s: %s", word_of(&words_consequence, d->in.consequence), d->name, d->title);
}

/* Cautions first, then the tasks in the order of the due list: what must come off together stands together. */
static void
say_list(const struct cli *c, struct book *b, const struct due_list *l, gint64 kind, gint64 date)
{
	g_autofree char *caution = caution_words(b, happening_cautions(kind));
	int access = -1, n = happening_count(l, kind, date);

	if (caution)
		cli_say(c, 2, "%s", caution);
	if (!n)
		puts("No task of this boat asks for anything after it that is not done: look it over, then close it.");
	else
		printf("%d %s due at once:\n", n, n == 1 ? "task is" : "tasks are");
	for (int i = 0; i < due_count(l); i++) {
		const struct due_line *d = due_at(l, i);

		if (!happening_asks(d, kind) || due_done_since(&d->in.since, date))
			continue;
		if (d->access != access) {
			g_autofree char *first = due_access_words(l, i);

			cli_say(c, 4, "  %s", first);
		}
		access = d->access;
		say_task(c, d);
	}
}

static gboolean
close_kind(struct book *b, const struct boat *boat, gint64 kind, gint64 date, GError **err)
{
	char d[16];
	int closed;

	if (!book_close_happening(b, boat, kind, date, &closed, err))
		return FALSE;
	printf("%s closed on %s\n", word_of(&words_happening, kind), day_words(date, d));
	return TRUE;
}

static gboolean
add(struct cli *c, struct book *b, const struct boat *boat, struct happening *h, GError **err)
{
	struct due_list *l = due_list_new();
	char d[16];
	gboolean ok = book_happening(b, h, err);

	if (ok) {
		printf("%s on %s\n", word_of(&words_happening, h->kind), day_words(h->date, d));
		ok = book_due(b, boat, &(struct due_ask){ c->who.today, NONE }, l, err);
	}
	if (ok)
		say_list(c, b, l, h->kind, h->date);
	due_list_free(l);
	return ok;
}

static gboolean
skip(struct book *b, const struct boat *boat, gint64 kind, const struct args *a, GError **err)
{
	const char *task = args_value(a, "skip");

	if (!book_skip_for_happening(b, boat, kind, task, args_value(a, "reason"), err))
		return FALSE;
	printf("passed over: %s; splitpin ready still tells of it\n", task);
	return TRUE;
}

static gboolean
act(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct happening h;
	gboolean ok;

	record_init(RECORD_HAPPENING, &h);
	h.boat = boat->id;
	h.date = c->who.today;
	if (!args_word(a, 0))
		return err_set(err, ERR_USE, "what happened? grounding, swamping, overheating, line, dry-run, ...");
	if (!word_parse(&words_happening, args_word(a, 0), &h.kind, err) || !opt_date(c, a, "date", &h.date, err))
		return FALSE;
	if (args_flag(a, "close"))
		return close_kind(b, boat, h.kind, h.date, err);
	if (args_value(a, "skip"))
		return skip(b, boat, h.kind, a, err);
	h.remark = args_word(a, 1) ? args_join(a, 1) : NULL;
	ok = add(c, b, boat, &h, err);
	record_clear(RECORD_HAPPENING, &h);
	return ok;
}

static int
happening(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	if (args_flag(a, "list"))
		return show_records(c, b, RECORD_HAPPENING, boat->id, a, err);
	return act(c, b, boat, a, err) ? EXIT_DONE : EXIT_DATA;
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	return cli_with_boat(c, cli_list_mode(a), a, happening, err);
}

const struct command command_happening = {
	"happening",
	"KIND [REMARK]",
	"record a grounding, overheating, line in the propeller, ...",
	"splitpin happening grounding \"touched the bar at idle\"\n"
	"splitpin happening grounding --skip propeller-shaft.runout --reason \"no dial gauge; the yard does it\"\n"
	"splitpin happening grounding --close\n\n"
	"What a happening asks for falls due at once and stays due until each task is done. It is closed when all are done, or "
	"passed over with a reason.",
	options,
	run, -1,
};
