#include "cli/due_text.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/outing.h"
#include "logbook/why.h"

#include <stdio.h>

static const struct option_def options[] = {
	{ "at", "DAY", "as things will stand then: a date, launch, mid-season, haul-out" },
	{ "until", "DAY", "only what is to be done by then" },
	{ "all", NULL, "every line, also what is far off or asks for nothing now" },
	{ "survey", NULL, "only what nobody knows when it was last done, and what to look at" },
	{ "csv", NULL, "as CSV" },
	{ "json", NULL, "as JSON" },
	{ "exit-code", NULL, "exit with 1 when something is past due" },
	{ NULL, NULL, NULL },
};

/* "   main 612.4 h", summed up over all of the log. */
static gboolean
add_hours(GString *out, struct book *b, gint64 boat, GError **err)
{
	g_autoptr(GArray) engines = book_records(b, RECORD_ENGINE, boat, err);

	for (guint i = 0; engines && i < engines->len; i++) {
		const struct engine *e = &((const struct engine *)(const void *)engines->data)[i];
		struct engine_hours run;
		g_autofree char *words = NULL;

		if (!book_engine_hours(b, e, book_today(b), &run, err))
			return FALSE;
		words = engine_hours_words(&run);
		g_string_append_printf(out, "   %s %s", e->name, words);
	}
	return engines != NULL;
}

struct one {
	struct cli *c;
	const struct args *a;
	struct due_list *list;
	struct due_doc *doc; /* NULL: as text */
	gboolean several; /* boats; the heads then go without engine hours, for which each whole log is read */
	int past;
};

static gboolean
one_boat(struct one *o, struct book *b, const struct boat *boat, GError **err)
{
	const char *at = args_value(o->a, "at"), *until = args_value(o->a, "until");
	struct due_ask ask = { o->c->who.today, NONE };
	g_autoptr(GString) head = NULL;
	char d[16];

	if (at && !book_day(b, boat, at, &ask.at, err))
		return err_prefix(err, "--at: ");
	if (until && !book_day(b, boat, until, &ask.until, err))
		return err_prefix(err, "--until: ");
	if (!book_due(b, boat, &ask, o->list, err))
		return FALSE;
	for (int i = 0; i < due_count(o->list); i++)
		o->past += due_at(o->list, i)->out.past;
	if (o->doc) {
		due_doc_add(o->doc, boat, o->list);
		return TRUE;
	}
	head = g_string_new(boat->name);
	if (!o->several && !add_hours(head, b, boat->id, err))
		return FALSE;
	g_string_append_printf(head, "   as of %s", day_words(ask.at, d));
	if (args_flag(o->a, "survey"))
		due_survey_text(o->c, head->str, o->list);
	else
		due_text(o->c, head->str, o->list, args_flag(o->a, "all") || until);
	return TRUE;
}

static gboolean
each_boat(struct one *o, struct book *b, GError **err)
{
	g_autoptr(GArray) boats = NULL;

	if (o->c->boat) {
		struct boat boat;
		gboolean ok;

		if (!cli_boat(o->c, b, &boat, err))
			return FALSE;
		ok = one_boat(o, b, &boat, err);
		record_clear(RECORD_BOAT, &boat);
		return ok;
	}
	boats = book_boats(b, err);
	o->several = boats && boats->len > 1;
	for (guint i = 0; boats && i < boats->len; i++) {
		if (i && !o->doc)
			putchar('\n');
		if (!one_boat(o, b, &((const struct boat *)(const void *)boats->data)[i], err))
			return FALSE;
	}
	return boats != NULL;
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	struct one o = { .c = c, .a = a };
	struct book *b;
	gboolean ok;

	if (args_flag(a, "csv") && args_flag(a, "json")) {
		err_set(err, ERR_INPUT, "--csv and --json together");
		return EXIT_USE;
	}
	b = cli_open(c, BOOK_READ, err);
	if (!b)
		return EXIT_FILE;
	if (args_flag(a, "csv") || args_flag(a, "json"))
		o.doc = due_doc_new(args_flag(a, "csv") ? DUE_CSV : DUE_JSON);
	o.list = due_list_new();
	ok = each_boat(&o, b, err);
	if (o.doc) {
		g_autofree char *text = due_doc_end(o.doc);

		if (ok)
			cli_data(c, text);
	}
	due_list_free(o.list);
	book_close(b);
	if (!ok)
		return EXIT_DATA;
	return args_flag(a, "exit-code") && o.past ? EXIT_NO : EXIT_DONE;
}

const struct command command_due = {
	"due",
	"",
	"the due list: what is to be done, when, and on what ground",
	"splitpin due --at launch\n"
	"splitpin due --until haul-out\n"
	"splitpin due --at 2027-04-15 --csv\n\n"
	"Each task stands at the last chance to do it before it falls due, in a state of the boat that the work needs. "
	"! marks what is past due. What can sink, burn or hurt is given no lateness. splitpin why TASK shows the "
	"arithmetic behind a line.",
	options,
	run, 0,
};

static const struct option_def why_options[] = {
	{ "at", "DAY", "as things will stand then" },
	{ "json", NULL, "all terms as JSON" },
	{ NULL, NULL, NULL },
};

static void
say_text(void *user, const char *text)
{
	cli_say(user, 2, "%s", text);
}

static int
print_why(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct due_ask ask = { c->who.today, NONE };
	struct due_list *l = due_list_new();
	g_autofree char *words = args_join(a, 0);
	const struct due_line *d = NULL;
	struct task t;
	gboolean ok = FALSE;

	record_init(RECORD_TASK, &t);
	if ((!args_value(a, "at") || book_day(b, boat, args_value(a, "at"), &ask.at, err))
	    && book_find_task(b, boat->id, words, &t, err)) {
		ok = book_due(b, boat, &ask, l, err);
		d = ok ? due_find(l, t.id) : NULL;
		if (ok && !d)
			ok = err_set(err, ERR_NOT_FOUND,
				     "%s is retired, or not for this boat's design: splitpin plan %s", t.name, t.name);
	}
	if (d && args_flag(a, "json")) {
		g_autofree char *text = due_why_json(l, d);

		cli_data(c, text);
	} else if (d) {
		due_why(l, d, say_text, c);
		if (t.remark)
			cli_say(c, 2, "To heed: %s.", t.remark);
	}
	record_clear(RECORD_TASK, &t);
	due_list_free(l);
	return ok ? EXIT_DONE : EXIT_DATA;
}

static int
run_why(struct cli *c, const struct args *a, GError **err)
{
	if (args_word(a, 0))
		return cli_with_boat(c, BOOK_READ, a, print_why, err);
	err_set(err, ERR_INPUT, "why what? splitpin due lists the tasks");
	return EXIT_USE;
}

const struct command command_why = {
	"why",
	"TASK",
	"the arithmetic behind a line of the due list, with its sources",
	"splitpin why bellows-ujoint.renew --at launch\n\nTASK is a name, or words that only one task has.",
	why_options,
	run_why, -1,
};
