/* season: launch and haul-out, and the season's work as guided lists. */
#include "cli/cli.h"
#include "cli/season_text.h"
#include "cli/show.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/out_file.h"
#include "logbook/paper_pdf.h"
#include "logbook/year.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

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
	{ "tick", "N|TASK", "of a list: that was done, with the usual outcome; may be repeated" },
	{ "seen", "TEXT", "with one --tick: what was seen" },
	{ "proof", "TEXT", "with one --tick: what proves it" },
	{ "skip", "N|TASK", "of a list: passed over, it stays due; may be repeated" },
	{ "reason", "TEXT", "with --skip: why" },
	{ "date", "DATE", "with --tick and --skip: the day; else today" },
	{ "open", NULL, "of a list: only what is open" },
	{ "csv", NULL, "the list as CSV" },
	{ "json", NULL, "the list as JSON" },
	{ "width", "N", "of the sheet: columns of a page, 40 to 200; else 72" },
	{ "out", "FILE", "the sheet into a new file" },
	{ "pdf", "FILE", "the sheet as PDF into a new file" },
	{ "paper", "SIZE", "of the PDF: A4 (the usual) or Letter" },
	{ NULL, NULL, NULL },
};

/* What a number or words mean: the place of a line of the list. */
static gboolean
find_line(struct book *b, const struct season_work *w, const char *text, guint *at, GError **err)
{
	const char *list = word_of(&words_season_list, (gint64)w->list);
	struct task t;
	gint64 task;

	if (!season_lines(w))
		return err_set(err, ERR_NOT_FOUND, "nothing stands on the list %s", list);
	if (*text && strspn(text, "0123456789") == strlen(text)) {
		guint64 n = g_ascii_strtoull(text, NULL, 10);

		*at = (guint)n - 1;
		return (n > 0 && n <= season_lines(w))
		    || err_set(err, ERR_NOT_FOUND, "the list %s has lines 1 to %u, no %s", list, season_lines(w), text);
	}
	if (!book_find_task(b, w->boat, text, &t, err))
		return FALSE;
	task = t.id;
	for (*at = 0; *at < season_lines(w) && season_line(w, *at)->due->id != task;)
		++*at;
	if (*at == season_lines(w))
		err_set(err, ERR_NOT_FOUND, "%s is not on the list %s: splitpin did records other work", t.name, list);
	record_clear(RECORD_TASK, &t);
	return *at < season_lines(w);
}

/* All lines that an option names, before anything is recorded. */
static GArray *
find_lines(struct book *b, const struct season_work *w, const struct args *a, const char *option, GError **err)
{
	GArray *lines = g_array_new(FALSE, FALSE, sizeof(guint));
	const char *text;
	guint at;

	for (int k = 0; (text = args_nth(a, option, k)); k++) {
		if (!find_line(b, w, text, &at, err)) {
			err_prefix(err, "--%s: ", option);
			g_array_unref(lines);
			return NULL;
		}
		g_array_append_val(lines, at);
	}
	return lines;
}

static void
tell_tick(const struct cli *c, const struct season_line *line, const struct season_tick *t, const struct service_said *said)
{
	char d[16];

	cli_say(c, 2, "%s: done on %s", line->due->name, day_words(t->date, d));
	if (!said->counts)
		cli_say(c, 2, "  it stays open: %s", said->why_not);
	else if (line->due->proof && !t->seen && !t->proof)
		cli_say(c, 2, "  what proves it: %s; --seen and --proof keep that", line->due->proof);
}

static gboolean
tick_line(struct cli *c, struct book *b, const struct season_work *w, const struct args *a, const struct season_line *line,
	  GError **err)
{
	struct season_tick t = { line->due->id, c->who.today, args_value(a, "seen"), args_value(a, "proof"), c->who.name };
	struct service_said said = { 0 };
	gboolean ok = opt_date(c, a, "date", &t.date, err) && book_season_tick(b, w, &t, &said, err);

	if (ok)
		tell_tick(c, line, &t, &said);
	service_said_clear(&said);
	return ok;
}

static gboolean
skip_line(struct cli *c, struct book *b, const struct season_work *w, const struct args *a, const struct season_line *line,
	  GError **err)
{
	struct skip s;
	char d[16];
	gboolean ok;

	record_init(RECORD_SKIP, &s);
	s.task = line->due->id;
	s.date = c->who.today;
	s.reason = g_strdup(args_value(a, "reason"));
	s.who = g_strdup(c->who.name);
	ok = opt_date(c, a, "date", &s.date, err) && book_season_pass(b, w, &s, err);
	if (ok)
		cli_say(c, 2, "%s: passed over on %s, and still due: %s", line->due->name, day_words(s.date, d), s.reason);
	record_clear(RECORD_SKIP, &s);
	return ok;
}

/* What the options want recorded, a line an entry of the journal. */
static gboolean
record_lines(struct cli *c, struct book *b, const struct season_work *w, const struct args *a, GError **err)
{
	g_autoptr(GArray) ticks = find_lines(b, w, a, "tick", err);
	g_autoptr(GArray) skips = ticks ? find_lines(b, w, a, "skip", err) : NULL;
	gboolean ok = skips != NULL;

	for (guint i = 0; ok && i < ticks->len; i++)
		ok = tick_line(c, b, w, a, season_line(w, g_array_index(ticks, guint, i)), err);
	for (guint i = 0; ok && i < skips->len; i++)
		ok = skip_line(c, b, w, a, season_line(w, g_array_index(skips, guint, i)), err);
	return ok;
}

/* Options that want another beside them. */
static gboolean
check_use(const struct args *a, GError **err)
{
	gboolean tick = args_flag(a, "tick"), skip = args_flag(a, "skip");

	if ((args_flag(a, "seen") || args_flag(a, "proof")) && (!tick || args_nth(a, "tick", 1)))
		return err_set(err, ERR_USE, "--seen and --proof are of one --tick");
	if (skip && !args_flag(a, "reason"))
		return err_set(err, ERR_USE, "--skip wants --reason: why is it passed over?");
	if (args_flag(a, "reason") && !skip)
		return err_set(err, ERR_USE, "--reason is of --skip");
	if (args_flag(a, "date") && !tick && !skip)
		return err_set(err, ERR_USE, "--date is of --tick and --skip");
	return TRUE;
}

static gboolean
show_list(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, struct season_work *w, GError **err)
{
	g_autofree char *head = NULL;

	if (args_flag(a, "tick") || args_flag(a, "skip")) {
		if (!record_lines(c, b, w, a, err) || !book_season_work(b, boat, w->list, w, err))
			return FALSE;
		head = season_head(w);
		cli_say(c, 2, "%s", head);
	} else if (args_flag(a, "csv") || args_flag(a, "json")) {
		g_autofree char *text = args_flag(a, "csv") ? season_csv(w) : season_json(w, boat->name);

		cli_data(c, text);
	} else {
		season_text(c, b, boat, w, args_flag(a, "open"));
	}
	return TRUE;
}

static int
guided(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct season_work *w = season_work_new();
	gint64 list;
	gboolean ok = word_parse(&words_season_list, args_word(a, 0), &list, err)
		   && book_season_work(b, boat, (enum season_list)list, w, err) && show_list(c, b, boat, a, w, err);

	season_work_free(w);
	return ok ? EXIT_DONE : EXIT_DATA;
}

/* The list named, or the one that comes next. */
static gboolean
list_of_sheet(struct cli *c, struct book *b, const struct boat *boat, const char *word, gint64 *list, GError **err)
{
	const struct due_ask ask = { c->who.today, NONE };
	struct due_list *l;
	gboolean ok;

	if (word)
		return word_parse(&words_season_list, word, list, err);
	l = due_list_new();
	ok = book_due(b, boat, &ask, l, err);
	if (ok)
		*list = (gint64)season_next(l);
	due_list_free(l);
	return ok;
}

static gboolean
put_sheet(const struct cli *c, const char *path, const char *text, GError **err)
{
	struct out_file f;
	gboolean ok;

	if (!path || !strcmp(path, "-")) {
		cli_data(c, text);
		return TRUE;
	}
	if (!out_file_open(&f, path, NULL, err))
		return FALSE;
	ok = fputs(text, f.stream) >= 0;
	if (!out_file_close(&f, ok, err))
		return (err && *err) || err_set(err, ERR_SYSTEM, "can't write %s", path);
	cli_say(c, 2, "the sheet is in %s", path);
	return TRUE;
}

/* The same lines on pages. */
static gboolean
put_pdf(const struct cli *c, const struct args *a, const char *text, int columns, GError **err)
{
	const char *path = args_value(a, "pdf"), *size = args_value(a, "paper");
	enum paper_size on = PAPER_A4;
	g_autofree char *title = g_strndup(text, strcspn(text, "\n"));
	struct paper *p;
	struct out_file f;
	gboolean ok;

	if ((size && !paper_size_parse(size, &on, err)) || !out_file_open(&f, path, stdout, err))
		return FALSE;
	p = paper_new(on, columns, title);
	paper_add_text(p, text, SHEET_INDENT);
	paper_end(p);
	ok = out_file_close(&f, paper_pdf(p, c->modules, f.stream, err), err);
	paper_free(p);
	if (ok && f.path)
		cli_say(c, 2, "the sheet is in %s", path);
	return ok;
}

static int
sheet(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	gint64 list = NONE, width = SHEET_USUAL;
	struct season_work *w = season_work_new();
	gboolean ok = opt_count(a, "width", &width, err) && list_of_sheet(c, b, boat, args_word(a, 1), &list, err);

	if (ok && (width < SHEET_LEAST || width > SHEET_MOST))
		ok = err_set(err, ERR_INPUT, "--width: %d columns; it is %d to %d", (int)width, SHEET_LEAST, SHEET_MOST);
	ok = ok && book_season_work(b, boat, (enum season_list)list, w, err);
	if (ok) {
		g_autofree char *text = season_sheet(b, boat, w, (int)width);

		ok = ((args_flag(a, "pdf") && !args_flag(a, "out")) || put_sheet(c, args_value(a, "out"), text, err))
		  && (!args_flag(a, "pdf") || put_pdf(c, a, text, (int)width, err));
	}
	season_work_free(w);
	return ok ? EXIT_DONE : EXIT_DATA;
}

static int
season(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	if (args_flag(a, "list"))
		return show_records(c, b, RECORD_SEASON, boat->id, a, err);
	return add_season(c, b, boat->id, a, err) ? EXIT_DONE : EXIT_DATA;
}

/* Options that are of another use of the command than the one meant: they would be passed over in silence. */
static gboolean
check_options(const struct args *a, GError **err)
{
	static const char *const of[3][12] = {
		{ "launch", "haul-out", "planned", "list", "since", NULL },
		{ "tick", "seen", "proof", "skip", "reason", "date", "open", "csv", "json", NULL },
		{ "width", "out", "pdf", "paper", NULL },
	};
	static const char *const uses[3] = { "launch and haul-out", "a list, as in season commissioning", "season sheet" };
	const char *word = args_word(a, 0), *list = word && !strcmp(word, "sheet") ? args_word(a, 1) : word;
	int use = !word ? 0 : list == word ? 1 : 2;
	gint64 index;

	for (int k = 0; k < 3; k++)
		for (int i = 0; of[k][i]; i++)
			if (k != use && args_flag(a, of[k][i]))
				return err_set(err, ERR_USE, "--%s is of %s", of[k][i], uses[k]);
	if (list && !word_parse(&words_season_list, list, &index, err))
		return FALSE;
	if (use == 1 && args_word(a, 1))
		return err_set(err, ERR_USE, "\"%.40s\" is too much: splitpin season %.40s", args_word(a, 1), word);
	if (args_flag(a, "csv") && args_flag(a, "json"))
		return err_set(err, ERR_USE, "--csv and --json together");
	if (args_flag(a, "paper") && !args_flag(a, "pdf"))
		return err_set(err, ERR_USE, "--paper is of --pdf");
	return use != 1 || check_use(a, err);
}

static int
run_season(struct cli *c, const struct args *a, GError **err)
{
	const char *word = args_word(a, 0);
	gboolean writes = args_flag(a, "tick") || args_flag(a, "skip");

	if (!check_options(a, err))
		return EXIT_USE;
	if (!word)
		return cli_with_boat(c, cli_list_mode(a), a, season, err);
	if (!strcmp(word, "sheet"))
		return cli_with_boat(c, BOOK_READ, a, sheet, err);
	return cli_with_boat(c, writes ? BOOK_WRITE : BOOK_READ, a, guided, err);
}

const struct command command_season = {
	"season",
	"[LIST | sheet [LIST]]",
	"launch and haul-out; the season's work as a list to tick off",
	"splitpin season --launch 2027-04-15 --haul-out 2027-10-10 --planned\n"
	"splitpin season --haul-out today\n"
	"splitpin season commissioning\n"
	"splitpin season commissioning --tick 3 --seen \"fresh grease\"\n"
	"splitpin season commissioning --skip 4 --reason \"no grease gun on board\"\n"
	"splitpin season sheet lay-up --out lay-up.txt\n\n"
	"LIST is commissioning, first-day, mid-season, haul-out, lay-up or sea-trial. Each tick is a service, so a list goes on on "
	"any day. What is passed over stays open and due. The sheet is for paper; without LIST it is the one that comes next.",
	season_options,
	run_season, 2,
};
