/* ready: the launch check, and letting pass what it holds. */
#include "cli/cli.h"
#include "cli/show.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/ready.h"
#include "logbook/waiver.h"

#include <stdio.h>

/* Lines of a group that are shown without being asked for: what matters most comes first. */
enum { HOLD_LINES = 8, OTHER_LINES = 4 };

static const struct option_def options[] = {
	{ "at", "DAY", "as things will stand then: a date, launch" },
	{ "all", NULL, "every line" },
	{ "csv", NULL, "as CSV" },
	{ "json", NULL, "as JSON" },
	{ "waive", "NAME", "let pass what holds: a task, or the key of a finding or happening" },
	{ "reason", "TEXT", "with --waive: why" },
	{ "until", "DATE", "with --waive: the last day" },
	{ "waivers", NULL, "list what was let pass" },
	{ "take-back", "NAME", "let it pass no longer: what holds, or the waiver's key" },
	{ NULL, NULL, NULL },
};

static void
say_item(const struct cli *c, const struct ready_item *i)
{
	g_autofree char *words = ready_item_words(i);

	cli_say(c, 10, "  %-7s %s", i->consequence == NONE ? "?" : word_of(&words_consequence, i->consequence), words);
}

/* Each of them counts; one survey answers all. */
static void
say_sum(const struct cli *c, const struct ready *r, enum ready_group group, enum ready_ground ground)
{
	int n = ready_count_of(r, group, ground);
	g_autofree char *words = n ? ready_sum_words(ground, n) : NULL;

	if (words)
		cli_say(c, 10, "          %s", words);
}

static void
say_group(const struct cli *c, const struct ready *r, enum ready_group group, gboolean all)
{
	int most = all ? G_MAXINT : group == READY_HOLDS ? HOLD_LINES : OTHER_LINES, n = 0;
	gboolean any = FALSE;

	for (int i = 0; i < ready_count(r); i++) {
		const struct ready_item *item = ready_at(r, i);

		if (item->group != group)
			continue;
		if (!any)
			printf("\n%s\n", ready_heading(group));
		any = TRUE;
		if ((all || !ready_summed_up(item)) && n++ < most)
			say_item(c, item);
	}
	if (!all) {
		say_sum(c, r, group, READY_NEVER_SEEN);
		say_sum(c, r, group, READY_UNASKED);
		say_sum(c, r, group, READY_RETIRED);
	}
	if (n > most)
		printf("          %d more: ready --all\n", n - most);
}

static void
say_all(const struct cli *c, const struct boat *boat, const struct ready *r, gboolean all)
{
	g_autofree char *answer = ready_answer(r);
	char at[16], launch[16];

	cli_say(c, 2, "%s", answer);
	cli_say(c, 2, "%s   as of %s%s%s", boat->name, day_words(r->at, at), r->launch == NONE ? "" : "   launch ",
		day_words(r->launch, launch));
	for (int g = 0; g < READY_GROUPS; g++)
		say_group(c, r, (enum ready_group)g, all);
	putchar('\n');
	cli_say(c, 0, "%s", ready_caveat());
}

static int
check(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	gint64 at = c->who.today;
	struct ready *r;
	g_autofree char *text = NULL;
	int code;

	if (args_value(a, "at") && !book_day(b, boat, args_value(a, "at"), &at, err)) {
		err_prefix(err, "--at: ");
		return EXIT_DATA;
	}
	r = book_ready(b, boat, at, err);
	if (!r)
		return EXIT_DATA;
	if (args_flag(a, "csv") || args_flag(a, "json")) {
		text = args_flag(a, "csv") ? ready_csv(r, boat) : ready_json(r, boat);
		cli_data(c, text);
	} else {
		say_all(c, boat, r, args_flag(a, "all"));
	}
	code = r->holding ? EXIT_NO : EXIT_DONE;
	ready_free(r);
	return code;
}

gboolean
waive_thing(struct cli *c, struct book *b, gint64 boat, const char *thing, const struct args *a, GError **err)
{
	struct waiver w;
	char day[16];
	gboolean ok;

	record_init(RECORD_WAIVER, &w);
	w.boat = boat;
	w.reason = g_strdup(args_value(a, "reason"));
	ok = opt_date(c, a, "until", &w.until, err) && book_waiver_thing(b, boat, thing, &w, err)
	  && book_waive(b, &w, err);
	if (ok) {
		g_autofree char *what = book_waiver_words(b, &w);

		cli_say(c, 2, "let pass until %s by %s: %s. It is not mended by that.", day_words(w.until, day), w.who, what);
	}
	record_clear(RECORD_WAIVER, &w);
	return ok;
}

static int
waive(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	return waive_thing(c, b, boat->id, args_value(a, "waive"), a, err) ? EXIT_DONE : EXIT_DATA;
}

static int
take_back(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	(void)c;
	if (!book_take_back(b, boat->id, args_value(a, "take-back"), err))
		return EXIT_DATA;
	puts("let pass no longer");
	return EXIT_DONE;
}

static const char *
state_of(const struct waiver *w, gint64 today)
{
	return w->ended != NONE ? "taken back" : w->until < today ? "over" : "holds";
}

static int
list(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_WAIVER, boat->id, err);

	(void)a;
	for (guint i = 0; all && i < all->len; i++) {
		const struct waiver *w = &((const struct waiver *)(const void *)all->data)[i];
		g_autofree char *key = book_key_text(w->id), *what = book_waiver_words(b, w);
		char from[16], until[16];

		cli_say(c, 4, "%s  %s to %s, %s: %s; %s: %s", key, day_words(w->date, from), day_words(w->until, until),
			state_of(w, c->who.today), what, w->who, w->reason);
	}
	if (all && !all->len)
		puts("nothing was let pass");
	return all ? EXIT_DONE : EXIT_DATA;
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	static const char *const apart[] = { "csv", "json", "waive", "waivers", "take-back" };
	int n = 0;

	for (guint i = 0; i < G_N_ELEMENTS(apart); i++)
		n += args_value(a, apart[i]) != NULL;
	if (n > 1) {
		err_set(err, ERR_USE, "one of --csv, --json, --waive, --waivers and --take-back at a time");
		return EXIT_USE;
	}
	if (args_value(a, "waive"))
		return cli_with_boat(c, BOOK_WRITE, a, waive, err);
	if (args_value(a, "take-back"))
		return cli_with_boat(c, BOOK_WRITE, a, take_back, err);
	return cli_with_boat(c, BOOK_READ, a, args_flag(a, "waivers") ? list : check, err);
}

const struct command command_ready = {
	"ready",
	"",
	"what holds the launch, what is to be mended, what nobody knows",
	"splitpin ready --at launch\n"
	"splitpin ready --waive linkage.inspect --reason \"seen by the yard, paper follows\" --until 2027-05-01\n\n"
	"What can sink, burn or hurt holds the launch when it is past due or nobody has it on record; so do findings of that "
	"level, what happened and is not done with, and drain plugs that nobody counted. Exits with 1 when something holds. It "
	"tells what is on record and certifies nothing.",
	options,
	run, 0,
};
