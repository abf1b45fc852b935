/* plan: the tasks and their limits. */
#include "cli/plan.h"
#include "cli/show.h"

#include "base/amount.h"
#include "base/err.h"
#include "base/text.h"
#include "logbook/caution.h"
#include "logbook/due.h"
#include "logbook/measure.h"
#include "logbook/plan.h"
#include "logbook/variant.h"

#include <stdio.h>
#include <string.h>

enum { MAX_LIMITS = 16 };

static const struct option_def options[] = {
	{ "every", "INTERVAL",
	  "100 h, 12 months, 5 years, 3 outings, 2 seasons; 12 months/6 months: the second in salt water; may be repeated" },
	{ "at", "EVENT", "each launch, first-day, mid-season, haul-out or lay-up; may be repeated" },
	{ "after", "HAPPENING", "at once after a grounding, overheating, ...; may be repeated" },
	{ "measured", "WHAT", "at once when a reading of it says stop: anode-left, ...; may be repeated" },
	{ "first", "HOURS", "a first service at so many hours" },
	{ "source", "TEXT", "where the figure comes from: \"manual p. 41\"" },
	{ "standing", "WORD",
	  "manual, published, practice, memory or owner; else manual or owner, as the source begins" },
	{ "drop", "KIND", "take away the limits of a kind: hours, months, event, ..." },
	{ "retire", NULL, "this boat does not want the task" },
	{ "restore", NULL, "it does again" },
	{ "add", "NAME", "a task of your own: bilge.clean" },
	{ "fitting", "PATH", "with --add: what it is done on" },
	{ "verb", "WORD", "with --add: inspect, test, measure, grease, change, renew or tighten" },
	{ "where", "WORD", "with --add: anywhere, out, on-hose, afloat or shop" },
	{ "cost", "WORD", "with --add: what a failure does: sinks, burns, hurts, strands, wrecks or costs" },
	{ "mechanism", "WORD", "with --add: what wears it" },
	{ "rule", "WORD", "with --add: what restarts it: done, inspection, renewal or printed-date" },
	{ "minutes", "N", "with --add: how long it takes" },
	{ "names", NULL, "only the tasks' names, a line each" },
	{ "news", NULL, "what a newer catalogue changes for this boat" },
	{ "take", "NAME", "take a line of --news over; may be repeated" },
	{ "take-all", NULL, "take every line over that is not your own" },
	{ "leave", "NAME", "decline a line of --news for good; may be repeated" },
	{ NULL, NULL, NULL },
};

struct limits {
	struct limit m[MAX_LIMITS];
	int n;
};

static struct limit *
next_limit(struct limits *all, enum limit_kind kind, GError **err)
{
	if (all->n == MAX_LIMITS) {
		err_set(err, ERR_INPUT, "more than %d limits at once", MAX_LIMITS);
		return NULL;
	}
	record_init(RECORD_LIMIT, &all->m[all->n]);
	all->m[all->n].kind = kind;
	return &all->m[all->n++];
}

static gboolean
read_limits(struct book *b, const struct args *a, struct limits *all, GError **err)
{
	const char *v;
	struct limit *m;

	for (int k = 0; (v = args_nth(a, "every", k)); k++)
		if (!(m = next_limit(all, LIMIT_HOURS, err)) || !interval_parse(v, m, err))
			return err_prefix(err, "--every: ");
	for (int k = 0; (v = args_nth(a, "at", k)); k++)
		if (!(m = next_limit(all, LIMIT_EVENT, err)) || !word_parse(&words_season_event, v, &m->event, err))
			return err_prefix(err, "--at: ");
	for (int k = 0; (v = args_nth(a, "after", k)); k++)
		if (!(m = next_limit(all, LIMIT_HAPPENING, err))
		    || !word_parse(&words_happening, v, &m->happening, err))
			return err_prefix(err, "--after: ");
	for (int k = 0; (v = args_nth(a, "measured", k)); k++)
		if (!(m = next_limit(all, LIMIT_CONDITION, err)) || !measure_known(b, v, err))
			return err_prefix(err, "--measured: ");
		else
			m->measured = g_strdup(v);
	for (int k = 0; (v = args_nth(a, "first", k)); k++)
		if (!(m = next_limit(all, LIMIT_FIRST_HOURS, err)) || !hours_parse(v, &m->hours, err))
			return err_prefix(err, "--first: ");
	return TRUE;
}

static gboolean
give_source(const struct args *a, struct limits *all, GError **err)
{
	const char *source = args_value(a, "source");
	gint64 standing;

	if (all->n && !source)
		return err_set(err, ERR_INPUT,
			       "--source is wanted: where does the figure come from? --source \"manual p. 41\"");
	if (!opt_standing(a, &standing, err))
		return FALSE;
	for (int i = 0; i < all->n; i++) {
		all->m[i].standing = standing;
		all->m[i].source = g_strdup(source);
	}
	return TRUE;
}

static gboolean
add_task(struct book *b, gint64 boat, const struct args *a, struct limits *all, GError **err)
{
	struct task t;
	struct fitting f;
	gboolean ok;

	if (!args_value(a, "fitting") || !args_word(a, 0))
		return err_set(err, ERR_INPUT,
			       "splitpin plan --add bilge.clean --fitting hull/bilge \"Clean the bilge\"");
	record_init(RECORD_TASK, &t);
	t.boat = boat;
	t.verb = word_index(&words_verb, "inspect");
	t.place = WORK_ANYWHERE;
	t.mechanism = MECH_NONE;
	t.consequence = COST_COSTS;
	t.rule = CLOCK_DONE;
	if (!opt_word(a, "verb", &words_verb, &t.verb, err) || !opt_word(a, "where", &words_workplace, &t.place, err)
	    || !opt_word(a, "cost", &words_consequence, &t.consequence, err)
	    || !opt_word(a, "mechanism", &words_mechanism, &t.mechanism, err)
	    || !opt_word(a, "rule", &words_clock_rule, &t.rule, err) || !opt_count(a, "minutes", &t.minutes, err)
	    || !book_find_fitting(b, boat, args_value(a, "fitting"), &f, err))
		return FALSE;
	t.name = g_strdup(args_value(a, "add"));
	t.fitting = f.id;
	t.title = args_join(a, 0);
	ok = book_add_task(b, &t, all->m, all->n, err);
	if (ok)
		printf("%s added with %d %s\n", t.name, all->n, all->n == 1 ? "limit" : "limits");
	record_clear(RECORD_TASK, &t);
	record_clear(RECORD_FITTING, &f);
	return ok;
}

static gboolean
change_task(struct book *b, struct task *t, const struct args *a, struct limits *all, GError **err)
{
	gint64 kind = NONE;

	if (!opt_word(a, "drop", &words_limit_kind, &kind, err) || (kind != NONE && !book_drop_limits(b, t, kind, err)))
		return FALSE;
	if (args_flag(a, "retire") || args_flag(a, "restore"))
		return book_retire_task(b, t, args_flag(a, "retire"), err);
	return !all->n || book_set_limits(b, t, all->m, all->n, err);
}

static gboolean
show_task(const struct cli *c, struct book *b, const struct task *t, GError **err)
{
	g_autoptr(GArray) limits = book_records(b, RECORD_LIMIT, t->boat, err);
	g_autofree char *caution = caution_words(b, t->caution);

	if (!limits)
		return FALSE;
	cli_say(c, 2, "%s%s", t->name, t->retired == 1 ? "  (retired)" : "");
	cli_say(c, 2, "  %s", t->title);
	cli_say(c, 2, "  a failure %s; %s; worn by %s; restarts when: %s", word_of(&words_consequence, t->consequence),
		word_of(&words_workplace, t->place), word_of(&words_mechanism, t->mechanism),
		word_of(&words_clock_rule, t->rule));
	if (t->proof)
		cli_say(c, 2, "  proved by: %s", t->proof);
	if (t->part)
		cli_say(c, 2, "  to have at hand: %s", t->part);
	if (caution)
		cli_say(c, 2, "  %s", caution);
	for (guint i = 0; i < limits->len; i++) {
		const struct limit *m = &((const struct limit *)(const void *)limits->data)[i];
		g_autofree char *words = limit_words(m), *source = limit_source(m);

		if (m->task == t->id)
			cli_say(c, 6, "  %s (%s)", words, source);
	}
	return TRUE;
}

static gboolean
list_tasks(struct cli *c, struct book *b, const struct boat *boat, gboolean names, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_TASK, boat->id, err);

	for (guint i = 0; all && i < all->len; i++) {
		const struct task *t = &((const struct task *)(const void *)all->data)[i];

		if (names) {
			puts(t->name);
			continue;
		}
		show_fit(t->name, 34);
		fputc(t->retired == 1 ? '-' : ' ', stdout);
		show_fit(t->title, c->columns - 36);
		putchar('\n');
	}
	if (all && !names)
		plan_hint_news(c, boat);
	return all != NULL;
}

static gboolean
one_task(struct cli *c, struct book *b, gint64 boat, const struct args *a, struct limits *all, GError **err)
{
	g_autofree char *words = args_join(a, 0);
	struct task t;
	gboolean ok;

	if (!book_find_task(b, boat, words, &t, err))
		return FALSE;
	ok = change_task(b, &t, a, all, err) && show_task(c, b, &t, err);
	record_clear(RECORD_TASK, &t);
	return ok;
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	gboolean names = args_flag(a, "names"), look = a->names->len == 0 || names || plan_news_looks(a);
	struct limits all = { .n = 0 };
	struct book *b;
	struct boat boat;
	gboolean ok = FALSE;

	if (!g_strcmp0(args_word(a, 0), "check") && !args_value(a, "add"))
		return plan_check(c, args_word(a, 1), err);
	b = cli_open(c, look ? BOOK_READ : BOOK_WRITE, err);
	if (!b)
		return EXIT_FILE;
	if (cli_boat(c, b, &boat, err)) {
		if (!read_limits(b, a, &all, err) || !give_source(a, &all, err))
			ok = FALSE;
		else if (args_value(a, "add"))
			ok = add_task(b, boat.id, a, &all, err);
		else if (plan_news_asked(a))
			ok = plan_news(c, b, &boat, a, err);
		else
			ok = args_word(a, 0) ? one_task(c, b, boat.id, a, &all, err) : list_tasks(c, b, &boat, names, err);
		record_clear(RECORD_BOAT, &boat);
	}
	for (int i = 0; i < all.n; i++)
		record_clear(RECORD_LIMIT, &all.m[i]);
	book_close(b);
	return ok ? EXIT_DONE : EXIT_DATA;
}

const struct command command_plan = {
	"plan",
	"[TASK | check [FOLDER]]",
	"the tasks of this boat: show, add, retire, change an interval",
	"splitpin plan\n"
	"splitpin plan bellows-ujoint.renew\n"
	"splitpin plan gimbal-bearing.grease --every \"50 h\" --source \"manual p. 41\"\n"
	"splitpin plan --add bilge.clean --fitting hull/bilge --every \"12 months\" --source \"own rule\" \"Clean the bilge\"\n"
	"splitpin plan check my-catalogue\n"
	"splitpin plan --news\n\n"
	"The maker's manual wins over every figure shipped: type its value and page. No torque, oil quantity or pressure is "
	"shipped. check reads the shipped catalogues, or those of a FOLDER, and says all that is wrong with them.",
	options,
	run, -1,
};

static const struct option_def fitting_options[] = {
	{ "variant", "WORD", "the design that this boat has" },
	{ "none", NULL, "this boat has no such fitting: its tasks rest" },
	{ "fitted", NULL, "it has one after all" },
	{ "names", NULL, "only the paths, a line each" },
	{ NULL, NULL, NULL },
};

static void
print_fitting(const struct cli *c, const struct fitting *f)
{
	int depth = 0;

	for (const char *p = f->path; *p; p++)
		depth += *p == '/';
	printf("%*s", depth * 2, "");
	show_fit(f->title, MAX(c->columns / 2 - 2 - depth * 2, 8));
	printf(" %s%s%s%s\n", f->path, f->variant ? "  " : "", f->variant ? f->variant : "",
	       f->retired == 1 ? "  (none)" : "");
}

static gboolean
list_fittings(const struct cli *c, struct book *b, gint64 boat, gboolean names, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_FITTING, boat, err);

	g_autofree char *before = NULL;

	for (guint i = 0; all && i < all->len; i++) {
		const struct fitting *f = &((const struct fitting *)(const void *)all->data)[i];
		char *side = fitting_side(f, all);

		if (!names && side && g_strcmp0(side, before) != 0) {
			show_fit(side, text_width(side));
			putchar('\n');
		}
		g_free(before);
		before = side;
		if (names)
			puts(f->path);
		else
			print_fitting(c, f);
	}
	return all != NULL;
}

static gboolean
one_fitting(const struct cli *c, struct book *b, gint64 boat, const struct args *a, GError **err)
{
	const char *variant = args_value(a, "variant");
	g_autofree char *changes = NULL;
	struct fitting f;
	gboolean ok = TRUE;

	if (!book_find_fitting(b, boat, args_word(a, 0), &f, err))
		return FALSE;
	if (args_flag(a, "none") || args_flag(a, "fitted"))
		ok = book_retire_fitting(b, &f, args_flag(a, "none"), err);
	changes = variant ? book_variant_changes(b, &f, variant, NULL) : NULL;
	if (ok && variant)
		ok = book_set_variant(b, &f, variant, err);
	if (ok) {
		print_fitting(c, &f);
		if (f.variants)
			cli_say(c, 2, "  designs: %s", f.variants);
		if (f.needs_off)
			cli_say(c, 2, "  first off or open: %s", fitting_first_off(&f));
		if (changes && *changes)
			cli_say(c, 2, "  %s.", changes);
	}
	record_clear(RECORD_FITTING, &f);
	return ok;
}

static int
fitting(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	gboolean ok = args_word(a, 0) ? one_fitting(c, b, boat->id, a, err)
				      : list_fittings(c, b, boat->id, args_flag(a, "names"), err);

	return ok ? EXIT_DONE : EXIT_DATA;
}

static int
run_fitting(struct cli *c, const struct args *a, GError **err)
{
	gboolean look = !a->names->len || args_flag(a, "names");

	return cli_with_boat(c, look ? BOOK_READ : BOOK_WRITE, a, fitting, err);
}

const struct command command_fitting = {
	"fitting",
	"[PATH]",
	"the tree of fittings: show it, or say which design this boat has",
	"splitpin fitting\n"
	"splitpin fitting drive/transom/gimbal-bearing --variant sealed\n\n"
	"The design decides which tasks exist: a sealed bearing has no grease task.",
	fitting_options,
	run_fitting, 1,
};
