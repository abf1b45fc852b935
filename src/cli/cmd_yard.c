/* yard: the work list for a yard, there and back. */
#include "cli/cli.h"

#include "base/err.h"
#include "base/text.h"
#include "logbook/yard.h"

#include <stdio.h>
#include <string.h>

static const struct option_def yard_options[] = {
	{ "at", "DAY", "as things will stand then: a date, launch, haul-out" },
	{ "until", "DAY", "all that is to be done by then; else what is wanted before the launch" },
	{ "task", "NAME|KEY", "only this task, or what was found by its key; may be repeated" },
	{ "mine", "NAME|KEY", "that line is the owner's to do, and stands on it anyhow; may be repeated" },
	{ "for", "WHO", "whose lines stand on it: yard (the usual), owner or both" },
	{ "sheet", "FILE", "for paper: text into a new file, - for the output" },
	{ "pdf", "FILE", "the same as PDF" },
	{ "paper", "SIZE", "of the two: A4 (the usual) or Letter" },
	{ "for-spreadsheet", NULL, "guard cells that a spreadsheet would take for a formula" },
	{ "without-name", NULL, "leave the boat's name out" },
	{ "list", NULL, "the sheets handed out, and their lines without an answer" },
	{ "dry-run", NULL, "of read: say all that would be recorded, keep nothing" },
	{ "date", "DATE", "of read: the day of answers without one" },
	{ "also", "LINE=NAME", "of read: what was done on that line was this task, too; may be repeated" },
	{ "variant", "LINE=WORD", "of read: the design that went in on that line; may be repeated" },
	{ NULL, NULL, NULL },
};

static gboolean
read_for(const struct args *a, struct yard_form *f, GError **err)
{
	const char *who = args_value(a, "for") ? args_value(a, "for") : "yard";

	f->for_yard = !strcmp(who, "yard") || !strcmp(who, "both");
	f->for_owner = !strcmp(who, "owner") || !strcmp(who, "both");
	if (!f->for_yard && !f->for_owner)
		return err_set(err, ERR_USE, "--for: \"%.20s\" is not yard, owner or both", who);
	if (f->for_owner && !args_value(a, "mine"))
		return err_set(err, ERR_USE, "--for %s: which lines are the owner's? --mine NAME, once for each", who);
	return TRUE;
}

static gboolean
read_out(const struct args *a, struct yard_out *out, GError **err)
{
	int to_output;

	out->csv = args_word(a, 0);
	out->text = args_value(a, "sheet");
	out->pdf = args_value(a, "pdf");
	out->for_spreadsheet = args_flag(a, "for-spreadsheet");
	if (!out->csv && !out->text && !out->pdf)
		out->csv = "-";
	to_output = !g_strcmp0(out->csv, "-") + !g_strcmp0(out->text, "-") + !g_strcmp0(out->pdf, "-");
	if (to_output > 1)
		return err_set(err, ERR_USE, "only one of the sheet's forms can go to the output");
	if (args_value(a, "paper") && !out->text && !out->pdf)
		return err_set(err, ERR_USE, "--paper is of --sheet and --pdf");
	return !args_value(a, "paper") || paper_size_parse(args_value(a, "paper"), &out->paper, err)
	    || err_prefix(err, "--paper: ");
}

static void
tell(const char *path, const char *what)
{
	if (path && strcmp(path, "-"))
		printf("%s written to %s\n", what, path);
}

static int
write_yard(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	g_auto(GStrv) what = args_all(a, "task"), mine = args_all(a, "mine");
	struct yard_form f = { .ask = { c->who.today, NONE }, .without_names = args_flag(a, "without-name") };
	struct yard_out out = { .modules = c->modules };
	g_autofree char *lines_words = NULL;
	struct cli_stream stream;
	int lines;
	gboolean ok;

	if (!read_for(a, &f, err) || !read_out(a, &out, err))
		return EXIT_USE;
	if ((args_value(a, "at") && !book_day(b, boat, args_value(a, "at"), &f.ask.at, err))
	    || (args_value(a, "until") && !book_day(b, boat, args_value(a, "until"), &f.ask.until, err)))
		return EXIT_DATA;
	f.what = what && *what ? what : NULL;
	f.mine = mine;
	out.stream = cli_stream_open(c, &stream);
	ok = book_yard(b, boat, &f, &out, &lines, err);
	cli_stream_close(c, &stream);
	if (!ok)
		return EXIT_DATA;
	lines_words = g_strdup_printf("%d %s for the %s", lines, lines == 1 ? "line" : "lines",
				      !f.for_yard ? "owner" : f.for_owner ? "yard and the owner" : "yard");
	tell(out.csv, lines_words);
	tell(out.text, "the sheet for paper");
	tell(out.pdf, "the sheet as PDF");
	return EXIT_DONE;
}

static void
complain(const char *words)
{
	g_autofree char *safe = text_harmless(words, FALSE);

	fprintf(stderr, "%s\n", safe);
}

static void
print_read(const struct cli *c, const struct yard_read_form *f, const struct yard_said *s)
{
	const struct yard_took *t = (const void *)s->lines->data;
	g_autofree char *costs = yard_said_costs(s);
	int refused = s->count[YARD_REFUSED];

	for (guint i = 0; i < s->lines->len; i++)
		if (t[i].state == YARD_TAKEN)
			cli_say(c, 2, "%s", t[i].words);
		else if (t[i].state == YARD_REFUSED)
			complain(t[i].words);
	if (*costs)
		printf("cost: %s\n", costs);
	cli_say(c, 2, "%d taken, %d read before, %d without an answer, %d not taken%s", s->count[YARD_TAKEN],
		s->count[YARD_AS_BEFORE], s->count[YARD_UNANSWERED], refused,
		f->dry_run ? "; nothing kept: a dry run" : "");
}

static int
read_yard(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	g_auto(GStrv) also = args_all(a, "also"), variant = args_all(a, "variant");
	struct yard_read_form f = { args_word(a, 1), args_flag(a, "dry-run"), NONE, also, variant };
	struct yard_said said = { 0 };
	int code = EXIT_DATA;

	if (!f.path)
		return err_set(err, ERR_USE, "splitpin yard read FILE: which file did the yard fill in?"), EXIT_USE;
	if (opt_date(c, a, "date", &f.date, err) && book_yard_read(b, boat, &f, &said, err)) {
		print_read(c, &f, &said);
		code = said.count[YARD_REFUSED] ? EXIT_DATA : EXIT_DONE;
	}
	yard_said_clear(&said);
	return code;
}

static int
list_yard(struct cli *c, struct book *b, const struct boat *boat, const struct args *a G_GNUC_UNUSED, GError **err)
{
	g_autofree char *text = book_yard_open(b, boat->id, err);
	g_auto(GStrv) line = g_strsplit(text ? g_strchomp(text) : "", "\n", -1);

	if (text && !*line)
		cli_say(c, 2, "no sheet was handed out");
	for (int i = 0; line[i]; i++)
		cli_say(c, 4, "%s", line[i]);
	return text ? EXIT_DONE : EXIT_DATA;
}

enum use { USE_WRITE, USE_READ, USE_LIST, USES };

/* Options of another use of the command: they would be passed over in silence. */
static gboolean
check_options(const struct args *a, enum use use, GError **err)
{
	static const char *const of[USES][12] = {
		{ "at", "until", "task", "mine", "for", "sheet", "pdf", "paper", "for-spreadsheet", "without-name", NULL },
		{ "dry-run", "date", "also", "variant", NULL },
		{ NULL },
	};
	static const char *const uses[USES] = { "writing a sheet", "yard read", "yard --list" };
	const char *much = args_word(a, use == USE_LIST ? 0 : 1);

	for (int k = 0; k < USES; k++)
		for (int i = 0; of[k][i]; i++)
			if (k != (int)use && args_flag(a, of[k][i]))
				return err_set(err, ERR_USE, "--%s is of %s", of[k][i], uses[k]);
	return use == USE_READ || !much
	    || err_set(err, ERR_USE, "\"%.40s\" is too much: splitpin yard FILE, or splitpin yard read FILE", much);
}

static int
run_yard(struct cli *c, const struct args *a, GError **err)
{
	static cli_act *const act[USES] = { write_yard, read_yard, list_yard };
	enum use use = args_flag(a, "list") ? USE_LIST : !g_strcmp0(args_word(a, 0), "read") ? USE_READ : USE_WRITE;

	if (!check_options(a, use, err))
		return EXIT_USE;
	return cli_with_boat(c, cli_list_mode(a), a, act[use], err);
}

const struct command command_yard = {
	"yard",
	"[FILE] | read FILE",
	"write the work list for a yard, and take its answers back",
	"splitpin yard list.csv --sheet list.txt --paper A4\n"
	"splitpin yard list.csv --task bellows-ujoint.renew --task gimbal-bearing.renew\n"
	"splitpin yard --pdf list.pdf --for both --mine hull.wash\n"
	"splitpin yard read filled.csv --dry-run\n\n"
	"One line a job or finding, with what is known filled in and columns left blank for the yard's answer. What comes back is "
	"matched by each line's id and number.",
	yard_options,
	run_yard, 2,
};
