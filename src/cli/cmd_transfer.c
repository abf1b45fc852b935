/* import and export: CSV in and out. */
#include "cli/cli.h"

#include "base/err.h"
#include "logbook/handover.h"

#include <stdio.h>
#include <string.h>

static const struct option_def import_options[] = {
	{ "dry-run", NULL, "check everything, keep nothing" },
	{ "yes", NULL, "take unlikely readings as they are" },
	{ "separator", "CHAR", "comma, semicolon or tab; else found out" },
	{ "decimal", "CHAR", "point or comma; else found out" },
	{ NULL, NULL, NULL },
};

static gboolean
read_char(const struct args *a, const char *name, const char *const word[], const char value[], char *out, GError **err)
{
	const char *v = args_value(a, name);

	for (int i = 0; v && word[i]; i++)
		if (!strcmp(v, word[i]) || (v[0] == value[i] && !v[1])) {
			*out = value[i];
			return TRUE;
		}
	return !v || err_set(err, ERR_INPUT, "--%s: \"%.20s\" is not %s or %s", name, v, word[0], word[1]);
}

static gboolean
read_import(const struct cli *c, const struct args *a, struct import_form *f, GError **err)
{
	static const char *const separators[] = { "comma", "semicolon", "tab", NULL }, *const marks[] = { "point",
													  "comma",
													  NULL };
	char mark = 0;

	f->path = args_word(a, 1);
	f->boat = c->boat;
	f->dry_run = args_flag(a, "dry-run");
	f->sure = args_flag(a, "yes");
	f->decimal_comma = -1;
	if (!f->path)
		return err_set(err, ERR_INPUT, "splitpin import outings FILE.csv (- reads standard input)");
	if (!record_named(args_word(a, 0), &f->what, err)
	    || !read_char(a, "separator", separators, ",;\t", &f->separator, err)
	    || !read_char(a, "decimal", marks, ".,", &mark, err))
		return FALSE;
	if (mark)
		f->decimal_comma = mark == ',';
	return TRUE;
}

static void
print_import(const struct import_form *f, const struct import_said *s, gboolean ok)
{
	for (guint i = 0; s->notes && i < s->notes->len; i++)
		fprintf(stderr, "%s\n", (const char *)s->notes->pdata[i]);
	for (guint i = 0; s->errors && i < s->errors->len; i++)
		fprintf(stderr, "%s\n", (const char *)s->errors->pdata[i]);
	if (s->errors && s->n_errors > s->errors->len)
		fprintf(stderr, "and %" G_GINT64_FORMAT " more errors\n", s->n_errors - s->errors->len);
	if (ok)
		printf("%" G_GINT64_FORMAT " %s read: %" G_GINT64_FORMAT " new, %" G_GINT64_FORMAT
		       " altered, %" G_GINT64_FORMAT " there already%s\n",
		       s->rows, s->rows == 1 ? "row" : "rows", s->added, s->altered, s->same,
		       f->dry_run ? "; nothing kept: a dry run" : "");
}

static int
run_import(struct cli *c, const struct args *a, GError **err)
{
	struct import_form f = { .separator = 0 };
	struct import_said s = { 0 };
	struct book *b;
	gboolean ok;

	if (!args_word(a, 0)) {
		err_set(err, ERR_INPUT, "splitpin import outings FILE.csv; splitpin-csv(5) describes the files");
		return EXIT_USE;
	}
	if (!read_import(c, a, &f, err))
		return EXIT_USE;
	b = cli_open(c, BOOK_WRITE, err);
	if (!b)
		return EXIT_FILE;
	ok = book_import(b, &f, &s, err);
	print_import(&f, &s, ok);
	import_said_clear(&s);
	book_close(b);
	return ok ? EXIT_DONE : EXIT_DATA;
}

const struct command command_import = {
	"import",
	"RECORDS FILE",
	"read outings, services, stays, ... from a CSV file, all or nothing",
	"splitpin import outings log.csv --dry-run\n"
	"splitpin import services paper.csv\n\n"
	"RECORDS is boats, engines, meters, fittings, parts, stays, seasons, outings, happenings, tasks, limits, services, "
	"measurements, bounds, rates, places or climates. Columns go by their names in the first line, in any order.",
	import_options,
	run_import, 2,
};

static const struct option_def export_options[] = {
	{ "for-spreadsheet", NULL, "guard cells that a spreadsheet would take for a formula" },
	{ "decimal-comma", NULL, "semicolons between fields, a comma in numbers" },
	{ "without-names", NULL, "for who buys the boat: no names of people and places, services as claimed" },
	{ NULL, NULL, NULL },
};

static int
run_export(struct cli *c, const struct args *a, GError **err)
{
	struct export_form f = { .path = args_word(a, 1) };
	struct cli_stream stream;
	struct book *b;
	gint64 rows;
	gboolean ok, all;

	f.for_spreadsheet = args_flag(a, "for-spreadsheet");
	f.decimal_comma = args_flag(a, "decimal-comma");
	f.without_names = args_flag(a, "without-names");
	all = args_word(a, 0) && !strcmp(args_word(a, 0), "everything");
	if (!args_word(a, 0)) {
		err_set(err, ERR_INPUT, "splitpin export outings [FILE.csv]; without a file to the output");
		return EXIT_USE;
	}
	if (all && !f.path) {
		err_set(err, ERR_INPUT, "splitpin export everything FOLDER: which folder is to be made?");
		return EXIT_USE;
	}
	if (!all && !record_named(args_word(a, 0), &f.what, err))
		return EXIT_USE;
	b = cli_open(c, BOOK_READ, err);
	if (!b)
		return EXIT_FILE;
	f.stream = cli_stream_open(c, &stream);
	ok = all ? book_export_all(b, &f, &rows, err) : book_export(b, &f, &rows, err);
	cli_stream_close(c, &stream);
	book_close(b);
	if (ok && f.path)
		printf("%" G_GINT64_FORMAT " %s written to %s\n", rows, all ? "records" : args_word(a, 0), f.path);
	return ok ? EXIT_DONE : EXIT_FILE;
}

const struct command command_export = {
	"export",
	"RECORDS [FILE]",
	"write outings, services, ... as CSV",
	"splitpin export outings log.csv\n"
	"splitpin export everything handed-over --without-names\n"
	"splitpin export services --for-spreadsheet > services.csv\n\n"
	"Without --for-spreadsheet the file is exact: importing it gives the same records. \"everything\" makes a folder with a "
	"file a kind of record, of which splitpin new --from makes a logbook. Remarks are written as they are: look through them "
	"before you hand them on.",
	export_options,
	run_export, 2,
};
