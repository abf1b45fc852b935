/* dossier: the whole boat's story on pages. */
#include "cli/cli.h"

#include "base/err.h"
#include "logbook/dossier.h"

#include <stdio.h>
#include <string.h>

static const struct option_def dossier_options[] = {
	{ "text", "FILE", "as text into a new file, - (the usual) for the output" },
	{ "pdf", "FILE", "the same as PDF" },
	{ "paper", "SIZE", "A4 (the usual) or Letter" },
	{ "since", "DATE", "leave out what was before that day" },
	{ "without-names", NULL, "leave out names of people, places and the boat" },
	{ "without-costs", NULL, "leave out costs" },
	{ "without-remarks", NULL, "leave out remarks, and names of photo files" },
	{ NULL, NULL, NULL },
};

static gboolean
read_out(const struct cli *c, const struct args *a, struct dossier_out *out, GError **err)
{
	*out = (struct dossier_out){ .text = args_value(a, "text"), .pdf = args_value(a, "pdf"), .modules = c->modules };
	if (!out->text && !out->pdf)
		out->text = "-";
	if (!g_strcmp0(out->text, "-") && !g_strcmp0(out->pdf, "-"))
		return err_set(err, ERR_USE, "only one of the dossier's forms can go to the output");
	return !args_value(a, "paper") || paper_size_parse(args_value(a, "paper"), &out->paper, err)
	    || err_prefix(err, "--paper: ");
}

static void
tell(const char *path)
{
	if (path && strcmp(path, "-"))
		printf("the dossier is written to %s\n", path);
}

static int
write_dossier(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct dossier_form form = { NONE, args_flag(a, "without-names"), args_flag(a, "without-costs"),
				     args_flag(a, "without-remarks") };
	struct dossier_out out;
	struct cli_stream stream;
	gboolean ok, sound = FALSE;

	if (!read_out(c, a, &out, err))
		return EXIT_USE;
	if (!opt_date(c, a, "since", &form.since, err))
		return EXIT_DATA;
	out.stream = cli_stream_open(c, &stream);
	ok = book_dossier(b, boat, &form, &out, &sound, err);
	cli_stream_close(c, &stream);
	if (!ok)
		return EXIT_DATA;
	tell(out.text);
	tell(out.pdf);
	if (!sound)
		fputs("splitpin: this logbook does not verify, and the dossier says so first: see splitpin verify\n", stderr);
	return sound ? EXIT_DONE : EXIT_NO;
}

static int
run_dossier(struct cli *c, const struct args *a, GError **err)
{
	return cli_with_boat(c, BOOK_READ, a, write_dossier, err);
}

const struct command command_dossier = {
	"dossier",
	"",
	"the whole boat's story on pages, for a buyer, an insurer or oneself",
	"splitpin dossier --pdf grey-heron.pdf --paper A4\n"
	"splitpin dossier --text for-sale.txt --without-names --without-costs\n\n"
	"It tells what is known and what nobody knows, what was corrected in the journal, and whether the journal verifies. When "
	"it does not, page one begins with that and the exit code is 1.",
	dossier_options,
	run_dossier, 0,
};
