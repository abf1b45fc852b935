#include "cli/cli.h"
#include "cli/show.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/outing.h"

#include <stdio.h>
#include <string.h>

static const struct option_def options[] = {
	{ "date", "DATE", "day of the outing; else today" },
	{ "meter", "[ENGINE=]READING", "what the hour meter shows now; the hours follow from it" },
	{ "hours", "[ENGINE=]HOURS", "hours run, for boats with several engines" },
	{ "no-engine", NULL, "no engine ran" },
	{ "water", "WATER", "fresh, brackish or salt; else that of a known place, else the boat's usual" },
	{ "rinsed", NULL, "flushed or rinsed with fresh water afterwards" },
	{ "not-rinsed", NULL, "not rinsed" },
	{ "place", "TEXT", "where to; a known place lends its water" },
	{ "estimated", NULL, "the hours are a guess" },
	{ "yes", NULL, "take an unlikely reading as it is" },
	{ "instead-of", "ID", "correct that outing: the old one stays in the history" },
	{ "drop", "ID", "take that outing out of the log" },
	{ "list", NULL, "list the outings, newest last" },
	{ "since", "DATE", "with --list: from that day on" },
	{ NULL, NULL, NULL },
};

static gboolean
share_add(struct outing_form *f, const char *text, gboolean meter, GError **err)
{
	const char *eq = strchr(text, '=');
	struct outing_share *s = &f->share[f->n_shares];
	gint64 *value = meter ? &s->reading : &s->hours;

	if (f->n_shares == MAX_ENGINES)
		return err_set(err, ERR_INPUT, "more than %d engines", MAX_ENGINES);
	*s = (struct outing_share){ NULL, NONE, NONE };
	if (eq) {
		g_autofree char *name = g_strndup(text, (gsize)(eq - text));

		s->engine = g_intern_string(name);
	}
	if (!hours_parse(eq ? eq + 1 : text, value, err))
		return FALSE;
	f->n_shares++;
	return TRUE;
}

static gboolean
read_shares(const struct args *a, struct outing_form *f, guint *remark, GError **err)
{
	const char *v;

	*remark = 0;
	for (int k = 0; (v = args_nth(a, "meter", k)); k++)
		if (!share_add(f, v, TRUE, err))
			return err_prefix(err, "--meter: ");
	for (int k = 0; (v = args_nth(a, "hours", k)); k++)
		if (!share_add(f, v, FALSE, err))
			return err_prefix(err, "--hours: ");
	if (f->n_shares || args_flag(a, "no-engine"))
		return TRUE;
	if (!args_word(a, 0))
		return err_set(err, ERR_USE,
			       "how many hours? splitpin outing 2.4h, or --meter 614.8, or --no-engine");
	*remark = 1;
	return share_add(f, args_word(a, 0), FALSE, err);
}

static void
said(const struct outing_said *s)
{
	char d[16], h[HOURS_TEXT], t[HOURS_TEXT];

	for (int i = 0; i < s->n; i++) {
		printf("%s", day_words(s->row[i].date, d));
		if (s->engine[i])
			printf("  %s  %s h", s->engine[i], hours_words(s->row[i].hours, h));
		if (s->engine[i] && s->total[i] != NONE)
			printf(", now %s h", hours_words(s->total[i], t));
		putchar('\n');
	}
	if (s->place_water)
		printf("in %s water, as that place has\n", word_of(&words_water, s->row[0].water));
	if (s->note)
		printf("%s\n", s->note);
}

static gboolean
read_form(struct cli *c, const struct args *a, struct outing_form *f, GError **err)
{
	guint remark;
	const char *id = args_value(a, "instead-of");

	record_init(RECORD_OUTING, &f->what);
	f->what.date = c->who.today;
	f->instead_of = NONE;
	f->sure = args_flag(a, "yes");
	if (args_flag(a, "rinsed") && args_flag(a, "not-rinsed"))
		return err_set(err, ERR_USE, "--rinsed and --not-rinsed together");
	if (args_flag(a, "rinsed") || args_flag(a, "not-rinsed"))
		f->what.rinsed = args_flag(a, "rinsed");
	if (args_flag(a, "estimated"))
		f->what.estimated = 1;
	if (!opt_date(c, a, "date", &f->what.date, err) || !opt_word(a, "water", &words_water, &f->what.water, err)
	    || (id && !key_parse(id, &f->instead_of, err)) || !read_shares(a, f, &remark, err))
		return FALSE;
	f->what.place = g_strdup(args_value(a, "place"));
	if (args_word(a, remark))
		f->what.remark = args_join(a, remark);
	return TRUE;
}

static int
log_or_list(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct outing_form f = { .boat = boat->id };
	struct outing_said s = { 0 };
	gboolean ok;

	if (args_flag(a, "list"))
		return show_records(c, b, RECORD_OUTING, boat->id, a, err);
	ok = read_form(c, a, &f, err) && book_outing(b, &f, &s, err);
	if (ok)
		said(&s);
	outing_said_clear(&s);
	record_clear(RECORD_OUTING, &f.what);
	return ok ? EXIT_DONE : EXIT_DATA;
}

static int
drop_one(struct cli *c, const char *text, GError **err)
{
	struct book *b = cli_open(c, BOOK_WRITE, err);
	gint64 id;
	gboolean ok;

	if (!b)
		return EXIT_FILE;
	ok = key_parse(text, &id, err) && book_drop_outing(b, id, err);
	book_close(b);
	if (!ok)
		return EXIT_DATA;
	puts("taken out of the log; splitpin undo brings it back");
	return EXIT_DONE;
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	if (args_value(a, "drop"))
		return drop_one(c, args_value(a, "drop"), err);
	return cli_with_boat(c, cli_list_mode(a), a, log_or_list, err);
}

const struct command command_outing = {
	"outing",
	"[HOURS] [REMARK]",
	"log a trip: hours run, or what the meter shows",
	"splitpin outing 2.4h \"to the lighthouse\"\n"
	"splitpin outing --meter 614.8 --water salt --rinsed\n"
	"splitpin outing --meter port=614.8 --meter starboard=602.1\n\n"
	"Hours are written 2.4, 2,4, 2h24, 2:24 or 144m. A reading that can hardly be right is questioned, with what was "
	"probably meant; --yes takes it as it is.",
	options,
	run, -1,
};
