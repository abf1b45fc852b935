#define _GNU_SOURCE	/* fopencookie */
#include "exchange/csv_in.h"

#include "base/err.h"

#include <check.h>
#include <stdlib.h>
#include <string.h>

/* Rows as lines of "a|b|-", where - is NULL, then what ended the reading if it was an error. */
static void
render(struct csv_in *in, GString *out)
{
	GError *err = NULL;
	struct csv_row row;
	enum csv_got got;

	while ((got = csvin_next(in, &row, &err)) == GOT_ROW || got == GOT_RAGGED) {
		for (int i = 0; i < row.n; i++)
			g_string_append_printf(out, "%s%s", i ? "|" : "", row.cell[i] ? row.cell[i] : "-");
		g_string_append(out, "\n");
		if (got == GOT_RAGGED)
			g_string_append_printf(out, "%s\n", err->message);
		g_clear_error(&err);
	}
	ck_assert_int_eq(got == GOT_BROKEN, err != NULL);
	if (err)
		g_string_append(out, err->message);
	g_clear_error(&err);
}

static char *
render_memory(const char *bytes, size_t n, const struct csv_in_how *how)
{
	GString *out = g_string_new(NULL);
	GError *err = NULL;
	struct csv_in *in = csvin_memory(bytes, n, "f.csv", how, &err);

	if (in)
		render(in, out);
	else
		g_string_append(out, err->message);
	g_clear_error(&err);
	csvin_free(in);
	return g_string_free(out, FALSE);
}

static char *
render_file(const char *bytes, size_t n)
{
	GString *out = g_string_new(NULL);
	GError *err = NULL;
	FILE *f = tmpfile();
	struct csv_in *in;

	ck_assert_ptr_nonnull(f);
	ck_assert_uint_eq(fwrite(bytes, 1, n, f), n);
	rewind(f);
	in = csvin_file(f, "f.csv", NULL, &err);
	if (in)
		render(in, out);
	else
		g_string_append(out, err->message);
	g_clear_error(&err);
	csvin_free(in);
	fclose(f);
	return g_string_free(out, FALSE);
}

#define BYTES(s) s, sizeof s - 1

static const struct {
	const char *says, *bytes;
	size_t n;
	const char *want;
} reads[] = {
	{ "nothing at all gives no row", BYTES(""), "" },
	{ "a header alone is one row", BYTES("date,hours\r\n"), "date|hours\n" },
	{ "CRLF ends a row", BYTES("a,b\r\n1,2\r\n"), "a|b\n1|2\n" },
	{ "LF ends a row", BYTES("a,b\n1,2\n"), "a|b\n1|2\n" },
	{ "a lone CR ends a row", BYTES("a,b\r1,2\r"), "a|b\n1|2\n" },
	{ "a lone CR ends a row with quotes", BYTES("a,\"b\"\r1,\"2\r3\"\r"), "a|b\n1|2\r3\n" },
	{ "the last row needs no line end", BYTES("a,b\n1,2"), "a|b\n1|2\n" },
	{ "the last row in quotes needs no line end", BYTES("a,b\n1,\"2\""), "a|b\n1|2\n" },
	{ "a last separator leaves an empty field", BYTES("a,b\n1,"), "a|b\n1|-\n" },
	{ "blank lines are skipped", BYTES("\n\r\na,b\n\n\r\n1,2\n\n"), "a|b\n1|2\n" },
	{ "empty is NULL and two quotes are an empty text", BYTES("a,b,c\n,\"\",\n"), "a|b|c\n-||-\n" },
	{ "spaces belong to the field", BYTES("a,b\n 1 ,\" 2 \"\n"), "a|b\n 1 | 2 \n" },
	{ "doubled quotes, separators and line ends stand in quotes",
	  BYTES("a,b\n\"say \"\"hi\"\"\",\"x,y\r\nz\"\n"), "a|b\nsay \"hi\"|x,y\r\nz\n" },
	{ "a blank line in quotes stays", BYTES("a,b\n1,\"x\n\ny\"\n"), "a|b\n1|x\n\ny\n" },
	{ "a byte order mark is stripped",
	  BYTES("\xEF\xBB\xBF"
		"a,b\n1,2\n"),
	  "a|b\n1|2\n" },
	{ "a byte order mark before a quote is stripped", BYTES("\xEF\xBB\xBF\"a\",b\n1,2\n"), "a|b\n1|2\n" },
	{ "a byte order mark alone is nothing", BYTES("\xEF\xBB\xBF"), "" },
	{ "semicolons are found", BYTES("a;b\n1,5;2\n"), "a|b\n1,5|2\n" },
	{ "tabs are found", BYTES("a\tb\n1,5\t2;3\n"), "a|b\n1,5|2;3\n" },
	{ "semicolons in quotes don't count", BYTES("a,b\n\"1;2;3\",4\n"), "a|b\n1;2;3|4\n" },
	{ "commas in each row's text don't hide the semicolons", BYTES("date;remark\n1;a, b\n2;c, d\n"),
	  "date|remark\n1|a, b\n2|c, d\n" },
	{ "a line sep= is obeyed and no row", BYTES("sep=;\r\na,b;c\r\n1;2\r\n"), "a,b|c\n1|2\n" },
	{ "a line sep= after a byte order mark too", BYTES("\xEF\xBB\xBFsep=\t\na\tb\n"), "a|b\n" },
	{ "a header that begins with sep= but goes on is a header", BYTES("sep=;x,b\n1,2\n"),
	  "sep=;x|b\n1|2\n" },
	{ "letters of every width pass", BYTES("a,b\n\xC3\xA9,\xE6\x97\xA5\xF0\x9F\x9A\xA2\n"),
	  "a|b\n\xC3\xA9|\xE6\x97\xA5\xF0\x9F\x9A\xA2\n" },
	{ "a row too short is told, and reading goes on", BYTES("a,b,c\n1,2\n3,4,5\n"),
	  "a|b|c\n1|2\nf.csv:2:1: this row has 2 fields, the header has 3: write the separator for "
	  "empty fields too\n"
	  "3|4|5\n" },
	{ "a row too long is told with its first line", BYTES("a,b\n\n\"x\ny\",2,3\n4,5\n"),
	  "a|b\nx\ny|2|3\nf.csv:3:1: this row has 3 fields, the header has 2: a text that holds the "
	  "separator must stand "
	  "in quotes\n4|5\n" },
	{ "a file cut off in quotes is told where they began", BYTES("a,b\n1,\"xy\nz"),
	  "a|b\nf.csv:2:3: the quoted text that begins here never ends: the file is cut off, or a "
	  "closing quote is missing" },
	{ "a quote inside a field is told", BYTES("a,b\n\xC3\xA9,5\" hose\n"),
	  "a|b\nf.csv:2:4: a quote inside a field: put the whole field in quotes, and write \"\" for "
	  "each quote in it" },
	{ "text after a closing quote is told", BYTES("a,b\n1,\"x\"y\n"),
	  "a|b\nf.csv:2:6: text after a closing quote: write \"\" for each quote inside a quoted field" },
	{ "a space after a closing quote is told", BYTES("a,b\n\"x\" ,1\n"),
	  "a|b\nf.csv:2:4: text after a closing quote: write \"\" for each quote inside a quoted field" },
	{ "a NUL byte is refused where it stands", BYTES("a,b\n1,x\0y\n"),
	  "a|b\nf.csv:2:4: a NUL byte: this is no text; save the file as CSV with UTF-8" },
	{ "another encoding is refused where it shows", BYTES("a,b\n1,caf\xE9\n"),
	  "a|b\nf.csv:2:6: the byte 0xe9 is not UTF-8: save the file as UTF-8, or convert it, for "
	  "example with "
	  "iconv -f WINDOWS-1252 -t UTF-8" },
	{ "an encoded surrogate is refused", BYTES("a,b\n1,\xED\xA0\x80\n"),
	  "a|b\nf.csv:2:3: the byte 0xed is not UTF-8: save the file as UTF-8, or convert it, for "
	  "example with "
	  "iconv -f WINDOWS-1252 -t UTF-8" },
	{ "a letter cut off at the end is refused", BYTES("a,b\n1,\xE6\x97"),
	  "a|b\nf.csv:2:3: the byte 0xe6 is not UTF-8: save the file as UTF-8, or convert it, for "
	  "example with "
	  "iconv -f WINDOWS-1252 -t UTF-8" },
	{ "UTF-16 with its mark is refused",
	  BYTES("\xFF\xFE"
		"a\0,\0"),
	  "f.csv: the text is UTF-16: save it as UTF-8, or convert it with iconv -f UTF-16 -t UTF-8" },
	{ "UTF-16 the other way round is refused", BYTES("\xFE\xFF\0a\0,"),
	  "f.csv: the text is UTF-16: save it as UTF-8, or convert it with iconv -f UTF-16 -t UTF-8" },
	{ "UTF-16 without its mark is refused", BYTES("a\0,\0b\0"),
	  "f.csv: the text is UTF-16: save it as UTF-8, or convert it with iconv -f UTF-16 -t UTF-8" },
	{ "a spreadsheet's own file is refused", BYTES("PK\3\4\x14\0\6"),
	  "f.csv: this is a ZIP archive, perhaps a spreadsheet's own file: open it in the spreadsheet "
	  "and save it as CSV "
	  "with UTF-8" },
	{ "a logbook is refused", BYTES("SQLite format 3\0\x10\0"),
	  "f.csv: this is a database, perhaps a logbook, and not a CSV file" },
};

START_TEST(reading)
{
	g_autofree char *memory = render_memory(reads[_i].bytes, reads[_i].n, NULL);
	g_autofree char *file = render_file(reads[_i].bytes, reads[_i].n);

	ck_assert_msg(!strcmp(memory, reads[_i].want), "%s:\n%s", reads[_i].says, memory);
	ck_assert_str_eq(file, memory);
}
END_TEST

static const struct {
	const char *bytes;
	struct csv_in_how how;
	struct csv_found want;
} finds[] = {
	{ "a,b\n1.5,2\n", { 0, DECIMAL_FOUND_OUT, FALSE }, { ',', FALSE, FALSE } },
	{ "a,b\n\"1,5\",2\n", { 0, DECIMAL_FOUND_OUT, FALSE }, { ',', FALSE, FALSE } },
	{ "a;b\n1,5;2\n", { 0, DECIMAL_FOUND_OUT, FALSE }, { ';', TRUE, FALSE } },
	{ "a;b\n1.5;2\n", { 0, DECIMAL_FOUND_OUT, FALSE }, { ';', FALSE, FALSE } },
	{ "a;b\n1;2\n", { 0, DECIMAL_FOUND_OUT, FALSE }, { ';', TRUE, FALSE } },
	{ "a\tb\n1,5\t2\n", { 0, DECIMAL_FOUND_OUT, FALSE }, { '\t', TRUE, FALSE } },
	{ "a\tb\n1\t2\n", { 0, DECIMAL_FOUND_OUT, FALSE }, { '\t', FALSE, FALSE } },
	{ "a;b\n-1,5;5.13.2026\n", { 0, DECIMAL_FOUND_OUT, FALSE }, { ';', TRUE, FALSE } },
	{ "a\n1\n", { 0, DECIMAL_FOUND_OUT, FALSE }, { ',', FALSE, FALSE } },
	{ "\xEF\xBB\xBF" "a;b\n", { 0, DECIMAL_FOUND_OUT, FALSE }, { ';', TRUE, TRUE } },
	{ "sep=,\na;b\n", { 0, DECIMAL_FOUND_OUT, FALSE }, { ',', FALSE, FALSE } },
	{ "a,b;c\n", { ';', DECIMAL_POINT, FALSE }, { ';', FALSE, FALSE } },
	{ "sep=,\na,b;c\n", { ';', DECIMAL_FOUND_OUT, FALSE }, { ';', TRUE, FALSE } },
	{ "a,b\n", { 0, DECIMAL_COMMA, FALSE }, { ',', TRUE, FALSE } },
};

START_TEST(finding_out)
{
	struct csv_in *in =
		csvin_memory(finds[_i].bytes, strlen(finds[_i].bytes), "f.csv", &finds[_i].how, NULL);

	ck_assert_int_eq(csvin_found(in)->separator, finds[_i].want.separator);
	ck_assert_int_eq(csvin_found(in)->decimal_comma, finds[_i].want.decimal_comma);
	ck_assert_int_eq(csvin_found(in)->bom, finds[_i].want.bom);
	csvin_free(in);
}
END_TEST

START_TEST(places_are_lines_and_characters)
{
	static const char text[] = "\xEF\xBB\xBF" "a,b,c\n\n\xC3\xA9\xC3\xA9,\"x\r\ny,\"\"\",z\n1,2,3\n";
	static const gint64 want[][3][2] = { { { 1, 1 }, { 1, 3 }, { 1, 5 } },
		{ { 3, 1 }, { 3, 4 }, { 4, 7 } }, { { 5, 1 }, { 5, 3 }, { 5, 5 } } };
	struct csv_in *in = csvin_memory(BYTES(text), "f.csv", NULL, NULL);
	gint64 line, column;
	struct csv_row row;

	for (int r = 0; r < 3; r++) {
		ck_assert_int_eq(csvin_next(in, &row, NULL), GOT_ROW);
		ck_assert_int_eq(row.line, want[r][0][0]);
		for (int i = 0; i < row.n; i++) {
			csvin_place(in, i, &line, &column);
			ck_assert_int_eq(line, want[r][i][0]);
			ck_assert_int_eq(column, want[r][i][1]);
		}
	}
	csvin_free(in);
}
END_TEST

/* Filler of whole rows puts each byte of a nasty record at the end of the first chunk of 64 KiB once. */
START_TEST(a_chunk_may_end_anywhere)
{
	static const char nasty[] = "\"\xC3\xA9\"\"\r\n\",\xF0\x9F\x9A\xA2,\"\"\r\n\r\nx,,\"y\"\r\n";
	static const char want[] = "\xC3\xA9\"\r\n|\xF0\x9F\x9A\xA2|\nx|-|y\n";

	for (size_t before = 65536 - sizeof nasty; before <= 65536; before++) {
		g_autoptr(GString) text = g_string_new("a,b,c\r\n");
		g_autofree char *got = NULL;

		while (text->len + 9 + 9 < before)
			g_string_append(text, "12,34,5\r\n");
		while (text->len + 2 < before)
			g_string_insert_c(text, 0, 'a');
		g_string_append(text, "\r\n");
		g_string_append(text, nasty);
		got = render_memory(text->str, text->len, NULL);
		ck_assert_msg(g_str_has_suffix(got, want), "%zu: %s", before, got + strlen(got) - 60);
	}
}
END_TEST

/* A file that never ends: a head, then one text over and over. */
struct endless {
	const char *head, *text;
	size_t at;
	gsize given;
};

static ssize_t
give(void *cookie, char *buf, size_t n)
{
	struct endless *e = cookie;

	for (size_t i = 0; i < n; i++) {
		if (*e->head) {
			buf[i] = *e->head++;
			continue;
		}
		buf[i] = e->text[e->at++];
		if (!e->text[e->at])
			e->at = 0;
	}
	e->given += n;
	return (ssize_t)n;
}

static const struct {
	const char *head, *text, *want;
} endless[] = {
	{ "", "a", "f.csv:1:1: the line is longer than 4 MiB: this is hardly a CSV file" },
	{ "a,b\n", "ab,", "f.csv:2:1: the line is longer than 4 MiB: this is hardly a CSV file" },
	{ "\"", "a", "f.csv:1:1: the line is longer than 4 MiB: this is hardly a CSV file" },
	{ "a,b\n\n1,\"", "x\n",
	  "f.csv:3:3: the field that begins here is longer than 1 MiB: is its closing quote missing?" },
	{ "a\n\"x\n", "\",\"y\n", "f.csv:259:1: more than 256 fields in one row" },
	{ "a,b\n", "1,2\n", "a row and a row" },
};

START_TEST(an_endless_file_fails_early)
{
	struct endless e = { endless[_i].head, endless[_i].text, 0, 0 };
	FILE *f = fopencookie(&e, "r", (cookie_io_functions_t){ .read = give });
	struct csv_in *in = csvin_file(f, "f.csv", NULL, NULL);
	enum csv_got got = GOT_ROW;
	GError *err = NULL;
	struct csv_row row;

	for (int i = 0; i < 1000 && got == GOT_ROW; i++)
		got = csvin_next(in, &row, &err);
	if (got == GOT_ROW)	/* rows without end need not fail */
		err_set(&err, ERR_INPUT, "a row and a row");
	ck_assert_str_eq(err->message, endless[_i].want);
	ck_assert_uint_lt(e.given, 8 << 20);
	g_error_free(err);
	csvin_free(in);
	fclose(f);
}
END_TEST

START_TEST(a_row_of_too_many_fields_is_refused)
{
	g_autoptr(GString) most = g_string_new("1");
	g_autofree char *good = NULL, *bad = NULL, *quoted = NULL;

	for (int i = 1; i < CSVIN_COLUMNS_MAX; i++)
		g_string_append(most, ",1");
	good = render_memory(most->str, most->len, NULL);
	ck_assert_int_eq(good[strlen(good) - 1], '\n');
	g_string_append(most, ",1");
	bad = render_memory(most->str, most->len, NULL);
	ck_assert_str_eq(bad, "f.csv:1:1: more than 256 fields in one row");
	g_string_append(most, ",\"1\"");
	quoted = render_memory(most->str, most->len, NULL);
	ck_assert_str_eq(quoted, bad);
}
END_TEST

START_TEST(a_folder_can_not_be_read)
{
	FILE *f = fopen("/", "r");
	GError *err = NULL;

	ck_assert_ptr_nonnull(f);
	ck_assert_ptr_null(csvin_file(f, "folder", NULL, &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_SYSTEM));
	ck_assert(g_str_has_prefix(err->message, "folder: can't be read: "));
	g_error_free(err);
	fclose(f);
}
END_TEST

/* Read to the end whatever comes; what holds for any input is asserted.  Returns the number of rows. */
static int
swallow(const char *bytes, size_t n)
{
	struct csv_in *in = csvin_memory(bytes, n, "f.csv", NULL, NULL);
	enum csv_got got = in ? GOT_ROW : GOT_BROKEN;
	gint64 line, column, lines_before = 0;
	struct csv_row row;
	int rows = 0;

	while (got == GOT_ROW || got == GOT_RAGGED) {
		got = csvin_next(in, &row, NULL);
		if (got == GOT_END || got == GOT_BROKEN)
			break;
		rows++;
		ck_assert_int_gt(row.line, lines_before);
		lines_before = row.line;
		ck_assert_int_ge(row.n, 1);
		for (int i = 0; i < row.n; i++)
			ck_assert(!row.cell[i] || g_utf8_validate(row.cell[i], -1, NULL));
		csvin_place(in, row.n - 1, &line, &column);
		ck_assert(line >= row.line && column >= 1);
	}
	csvin_free(in);
	ck_assert_int_le((size_t)rows, n);
	return rows;
}

static const char sample[] =
	"\xEF\xBB\xBF" "date,hours,place,remark\r\n"
	"2026-05-02,2.4,\"Lighthouse, north\",\"said \"\"calm\"\"\"\r\n"
	"2026-05-09,1:30,,\"two\r\nlines\"\r\n\r\n"
	"2026-05-16,0.7,Bucht \xC3\xA4\xE2\x82\xAC\xF0\x9F\x9A\xA2,\"\"\r\n";

START_TEST(every_beginning_of_a_file_ends)
{
	int before = 0;

	for (size_t n = 0; n < sizeof sample; n++) {	/* copied, so that a read past the end is seen */
		g_autofree char *copy = g_memdup2(sample, MAX(n, 1));
		int rows = swallow(copy, n);

		ck_assert_int_ge(rows + 1, before);	/* a row whose quotes are cut is lost, no more */
		before = rows;
	}
	ck_assert_int_eq(before, 4);
}
END_TEST

START_TEST(random_damage_never_crashes)
{
	guint64 x = 20261125;
	int rows = 0;

	for (int i = 0; i < 5000; i++) {
		g_autofree char *copy = g_memdup2(sample, sizeof sample);
		size_t n = sizeof sample - 1;

		for (int k = 0; k <= i % 4; k++) {
			x = x * G_GUINT64_CONSTANT(6364136223846793005) + 1442695040888963407;
			copy[(x >> 33) % n] = i & 1 ? "\",;\r\n\t\0=\xFF"[(x >> 20) % 9] : (char)(x >> 24);
		}
		rows += swallow(copy, n);
	}
	ck_assert_int_gt(rows, 5000);	/* most of it was still read */
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("CSV in: RFC 4180 is read strictly, and every error has its place");
	TCase *t = tcase_create("reading");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_loop_test(t, reading, 0, G_N_ELEMENTS(reads));
	tcase_add_loop_test(t, finding_out, 0, G_N_ELEMENTS(finds));
	tcase_add_test(t, places_are_lines_and_characters);
	tcase_add_test(t, a_chunk_may_end_anywhere);
	tcase_add_loop_test(t, an_endless_file_fails_early, 0, G_N_ELEMENTS(endless));
	tcase_add_test(t, a_row_of_too_many_fields_is_refused);
	tcase_add_test(t, a_folder_can_not_be_read);
	tcase_add_test(t, every_beginning_of_a_file_ends);
	tcase_add_test(t, random_damage_never_crashes);
	suite_add_tcase(s, t);
	srunner_run_all(runner, CK_NORMAL);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
