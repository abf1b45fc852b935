#include "exchange/csv_out.h"

#include "base/err.h"
#include "base/value.h"
#include "exchange/csv_in.h"

#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

static const struct csv_out_how exact = { 0, FALSE, FALSE };
static const struct csv_out_how semicolon = { ';', TRUE, FALSE };
static const struct csv_out_how comma_both = { ',', TRUE, FALSE };
static const struct csv_out_how guarded = { 0, FALSE, TRUE };

static struct csv_out *
into(GString *text, const struct csv_out_how *how)
{
	struct sink sink = sink_string(text);

	return csvout_new(&sink, how);
}

static const struct {
	const char *says;
	const struct csv_out_how *how;
	const char *text, *want;
} texts[] = {
	{ "a plain text stands bare", &exact, "oil", "oil" },
	{ "NULL is nothing", &exact, NULL, "" },
	{ "an empty text is two quotes", &exact, "", "\"\"" },
	{ "spaces need no quotes", &exact, " a b ", " a b " },
	{ "the separator needs quotes", &exact, "a,b", "\"a,b\"" },
	{ "another separator needs none", &exact, "a;b\tc", "a;b\tc" },
	{ "only the separator in use needs them", &semicolon, "a,b", "a,b" },
	{ "a semicolon between semicolons does", &semicolon, "a;b", "\"a;b\"" },
	{ "quotes are doubled", &exact, "5\" \"hose\"", "\"5\"\" \"\"hose\"\"\"" },
	{ "line ends need quotes", &exact, "a\r\nb\nc\rd", "\"a\r\nb\nc\rd\"" },
	{ "exact leaves a formula as it is", &exact, "=1+1", "=1+1" },
	{ "= is guarded", &guarded, "=1+1", "'=1+1" },
	{ "+ is guarded", &guarded, "+49 call", "'+49 call" },
	{ "- is guarded", &guarded, "-see note", "'-see note" },
	{ "@ is guarded", &guarded, "@SUM(A1)", "'@SUM(A1)" },
	{ "TAB is guarded", &guarded, "\t=1", "'\t=1" },
	{ "CR is guarded", &guarded, "\r=1", "\"'\r=1\"" },
	{ "LF is guarded", &guarded, "\n=1", "\"'\n=1\"" },
	{ "a guard goes inside the quotes", &guarded, "=A(1,\"x\")", "\"'=A(1,\"\"x\"\")\"" },
	{ "a full-width = is guarded", &guarded, "\xEF\xBC\x9D" "1", "'\xEF\xBC\x9D" "1" },
	{ "another full-width letter is not", &guarded, "\xEF\xBC\xA1", "\xEF\xBC\xA1" },
	{ "what looks guarded is guarded again", &guarded, "'=1", "''=1" },
	{ "two ' are guarded, so that one can be told off", &guarded, "''tis", "'''tis" },
	{ "a mere ' is not", &guarded, "'tis", "'tis" },
	{ "a formula inside is harmless", &guarded, "a=1", "a=1" },
	{ "NULL needs no guard", &guarded, NULL, "" },
	{ "nor does an empty text", &guarded, "", "\"\"" },
};

START_TEST(writing_texts)
{
	g_autoptr(GString) got = g_string_new(NULL);
	g_autofree char *want = g_strdup_printf(
		"x%c%s\r\n", texts[_i].how->separator ? texts[_i].how->separator : ',', texts[_i].want);
	struct csv_out *out = into(got, texts[_i].how);

	csvout_text(out, "x");
	csvout_text(out, texts[_i].text);
	ck_assert(csvout_row(out));
	ck_assert(csvout_close(out, NULL));
	ck_assert_msg(!strcmp(got->str, want), "%s: %s", texts[_i].says, got->str);
}
END_TEST

START_TEST(a_guard_comes_off_as_it_went_on)
{
	const char *text = texts[_i].text, *written = texts[_i].want;

	if (!text || texts[_i].how != &guarded || *written == '"')
		return;
	ck_assert_str_eq(guard_strip(written), text);
}
END_TEST

START_TEST(only_a_guard_comes_off)
{
	ck_assert_str_eq(guard_strip("'tis"), "'tis");
	ck_assert_str_eq(guard_strip("'"), "'");
	ck_assert_str_eq(guard_strip(""), "");
	ck_assert_str_eq(guard_strip("=1"), "=1");
	ck_assert_str_eq(guard_strip("'=1"), "=1");
}
END_TEST

static const struct {
	const struct csv_out_how *how;
	const char *want;
} numbers[] = {
	{ &exact, "-5,-0.5,2.4,,0,-9223372036854775807,,0.1,-0\r\n" },
	{ &guarded, "-5,-0.5,2.4,,0,-9223372036854775807,,0.1,-0\r\n" },
	{ &semicolon, "-5;-0,5;2,4;;0;-9223372036854775807;;0,1;-0\r\n" },
	{ &comma_both, "-5,\"-0,5\",\"2,4\",,0,-9223372036854775807,,\"0,1\",-0\r\n" },
};

START_TEST(numbers_are_never_guarded)
{
	g_autoptr(GString) got = g_string_new(NULL);
	struct csv_out *out = into(got, numbers[_i].how);

	csvout_int(out, -5);
	csvout_number(out, "-0.5");
	csvout_number(out, "2.4");
	csvout_int(out, NONE);
	csvout_int(out, 0);
	csvout_int(out, NONE + 1);
	csvout_real(out, (double)NAN);
	csvout_real(out, 0.1);
	csvout_real(out, -0.0);
	ck_assert(csvout_row(out));
	ck_assert(csvout_close(out, NULL));
	ck_assert_str_eq(got->str, numbers[_i].want);
}
END_TEST

START_TEST(a_lone_empty_field_is_no_blank_line)
{
	g_autoptr(GString) got = g_string_new(NULL);
	struct csv_out *out = into(got, NULL);

	csvout_text(out, NULL);
	csvout_row(out);
	csvout_word(out, "a");
	csvout_row(out);
	ck_assert(csvout_close(out, NULL));
	ck_assert_str_eq(got->str, "\"\"\r\na\r\n");
}
END_TEST

/* What a reader takes out of a file's first bytes has to survive there. */
START_TEST(the_first_field_may_look_like_a_mark)
{
	static const char *const first[] = { "\xEF\xBB\xBFx", "sep=;", "sep=" };
	g_autoptr(GString) got = g_string_new(NULL);
	struct csv_out *out = into(got, NULL);
	struct csv_row row;
	struct csv_in *in;

	csvout_text(out, first[_i]);
	csvout_row(out);
	csvout_text(out, first[_i]);
	csvout_row(out);
	ck_assert(csvout_close(out, NULL));
	in = csvin_memory(got->str, got->len, "f", NULL, NULL);
	for (int i = 0; i < 2; i++) {
		ck_assert_int_eq(csvin_next(in, &row, NULL), GOT_ROW);
		ck_assert_str_eq(row.cell[0], first[_i]);
	}
	csvin_free(in);
}
END_TEST

/* Fields of all lengths round the buffer's, of letters that stand bare, and of quotes that double. */
START_TEST(long_fields_come_back)
{
	static const size_t length[] = { 1, 65535, 65536, 65537, 200000 };
	g_autoptr(GString) got = g_string_new(NULL);
	struct csv_out *out = into(got, NULL);
	struct csv_row row;
	struct csv_in *in;

	for (size_t i = 0; i < G_N_ELEMENTS(length); i++) {
		g_autofree char *bare = g_strnfill(length[i], 'x'), *quotes = g_strnfill(length[i], '"');

		csvout_text(out, bare);
		csvout_text(out, quotes);
		csvout_text(out, NULL);
		ck_assert(csvout_row(out));
	}
	ck_assert(csvout_close(out, NULL));
	in = csvin_memory(got->str, got->len, "f", NULL, NULL);
	for (size_t i = 0; i < G_N_ELEMENTS(length); i++) {
		ck_assert_int_eq(csvin_next(in, &row, NULL), GOT_ROW);
		ck_assert_int_eq(row.n, 3);
		ck_assert_uint_eq(strspn(row.cell[0], "x"), length[i]);
		ck_assert_uint_eq(strspn(row.cell[1], "\""), length[i]);
		ck_assert_uint_eq(strlen(row.cell[1]), length[i]);
		ck_assert_ptr_null(row.cell[2]);
	}
	ck_assert_int_eq(csvin_next(in, &row, NULL), GOT_END);
	csvin_free(in);
}
END_TEST

/* Few rows fail when the file is flushed, many while they are written. */
START_TEST(a_full_disk_is_told)
{
	static const int rows[] = { 1, 100000 };
	FILE *f = fopen("/dev/full", "w");
	struct sink sink;
	struct csv_out *out;
	GError *err = NULL;
	gboolean good = TRUE;
	int i;

	if (!f)
		return;	/* not every system has it */
	sink = sink_file(f);
	out = csvout_new(&sink, NULL);
	for (i = 0; i < rows[_i] && good; i++) {
		csvout_text(out, "north of the lighthouse");
		good = csvout_row(out);
	}
	ck_assert_int_eq(good, rows[_i] == 1);
	ck_assert_int_lt(i, 10000);
	ck_assert(!csvout_close(out, &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_SYSTEM));
	ck_assert_str_eq(err->message, "can't write: No space left on device");
	g_error_free(err);
	fclose(f);
}
END_TEST

START_TEST(a_file_gets_the_same_bytes_as_a_text)
{
	g_autoptr(GString) got = g_string_new(NULL);
	g_autofree char *back = NULL;
	FILE *f = tmpfile();
	struct sink sink = sink_file(f);
	struct csv_out *to[] = { into(got, NULL), csvout_new(&sink, NULL) };

	for (int k = 0; k < 2; k++) {
		for (int i = 0; i < 20000; i++) {
			csvout_int(to[k], i);
			csvout_text(to[k], i % 3 ? "a,\"b\"" : "c");
			csvout_row(to[k]);
		}
		ck_assert(csvout_close(to[k], NULL));
	}
	ck_assert_uint_gt(got->len, 3 * 65536);
	ck_assert_int_eq(ftell(f), (long)got->len);
	rewind(f);
	back = g_malloc(got->len);
	ck_assert_uint_eq(fread(back, 1, got->len, f), got->len);
	ck_assert_mem_eq(back, got->str, got->len);
	fclose(f);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("CSV out: quotes where needed, guards where asked, and nothing lost");
	TCase *t = tcase_create("writing");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_loop_test(t, writing_texts, 0, G_N_ELEMENTS(texts));
	tcase_add_loop_test(t, a_guard_comes_off_as_it_went_on, 0, G_N_ELEMENTS(texts));
	tcase_add_test(t, only_a_guard_comes_off);
	tcase_add_loop_test(t, numbers_are_never_guarded, 0, G_N_ELEMENTS(numbers));
	tcase_add_test(t, a_lone_empty_field_is_no_blank_line);
	tcase_add_loop_test(t, the_first_field_may_look_like_a_mark, 0, 3);
	tcase_add_test(t, long_fields_come_back);
	tcase_add_loop_test(t, a_full_disk_is_told, 0, 2);
	tcase_add_test(t, a_file_gets_the_same_bytes_as_a_text);
	suite_add_tcase(s, t);
	srunner_run_all(runner, CK_NORMAL);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
