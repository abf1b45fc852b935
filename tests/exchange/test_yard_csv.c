#include "exchange/yard_csv.h"

#include "exchange/csv_in.h"

#include <check.h>
#include <stdlib.h>
#include <string.h>

static void
set(struct yard_line *line, enum yard_column c, const char *text)
{
	g_free(line->cell[c]);
	line->cell[c] = g_strdup(text);
}

static void
fill_musts(struct yard_line *line)
{
	for (int c = 0; c < YARD_COLUMN_COUNT; c++)
		if (yard_column((enum yard_column)c)->use == YARD_MUST)
			set(line, (enum yard_column)c, "x");
}

static struct csv_in *
written(GString *text, const struct yard_line *line, const struct csv_out_how *how)
{
	struct sink sink = sink_string(text);
	struct csv_out *out = csvout_new(&sink, how);

	yard_csv_header(out);
	ck_assert(yard_csv_line(out, line));
	ck_assert(csvout_close(out, NULL));
	return csvin_memory(text->str, text->len, "yard.csv", NULL, NULL);
}

START_TEST(every_column_has_a_name_of_its_own_and_help)
{
	for (int c = 0; c < YARD_COLUMN_COUNT; c++) {
		const struct yard_column_def *def = yard_column((enum yard_column)c);

		ck_assert_ptr_nonnull(def->name);
		ck_assert_uint_gt(strlen(def->help), 2);
		ck_assert_uint_eq(strspn(def->name, "abcdefghijklmnopqrstuvwxyz_"), strlen(def->name));
		for (int k = 0; k < c; k++)
			ck_assert_str_ne(def->name, yard_column((enum yard_column)k)->name);
	}
	ck_assert_str_eq(yard_column(YARD_ID)->name, "id");
	ck_assert_str_eq(yard_column(YARD_LINE_NO)->name, "line_no");
}
END_TEST

START_TEST(twelve_columns_must_be_filled)
{
	struct yard_line line = { { NULL } };
	int n = 0;

	fill_musts(&line);
	ck_assert_int_eq(yard_line_lacks(&line), YARD_COLUMN_COUNT);
	for (int c = 0; c < YARD_COLUMN_COUNT; c++) {
		if (yard_column((enum yard_column)c)->use != YARD_MUST)
			continue;
		n++;
		set(&line, (enum yard_column)c, "");
		ck_assert_int_eq(yard_line_lacks(&line), c);
		set(&line, (enum yard_column)c, "x");
	}
	ck_assert_int_eq(n, 12);
	yard_line_clear(&line);
}
END_TEST

/* What the yard is to write stays empty whatever the caller put there, and what is not known too. */
START_TEST(known_columns_are_filled_and_the_yards_own_are_blank)
{
	g_autoptr(GString) text = g_string_new(NULL);
	struct yard_line line = { { NULL } };
	struct csv_row row;
	struct csv_in *in;
	int blank = 0;

	fill_musts(&line);
	set(&line, YARD_DESCRIPTION, "Growls, \"rough\"\nin turns");
	set(&line, YARD_WATER, "");
	for (int c = YARD_RESULT; c <= YARD_INITIALS; c++)
		set(&line, (enum yard_column)c, "not to be written");
	in = written(text, &line, NULL);
	ck_assert_int_eq(csvin_next(in, &row, NULL), GOT_ROW);
	ck_assert_int_eq(row.n, YARD_COLUMN_COUNT);
	for (int c = 0; c < row.n; c++)
		ck_assert_str_eq(row.cell[c], yard_column((enum yard_column)c)->name);
	ck_assert_int_eq(csvin_next(in, &row, NULL), GOT_ROW);
	for (int c = 0; c < row.n; c++) {
		const enum yard_use use = yard_column((enum yard_column)c)->use;

		ck_assert_int_eq(row.cell[c] != NULL, use == YARD_MUST);
		blank += use == YARD_BLANK;
	}
	ck_assert_int_eq(blank, 7);
	ck_assert_str_eq(row.cell[YARD_DESCRIPTION], "Growls, \"rough\"\nin turns");
	ck_assert_int_eq(csvin_next(in, &row, NULL), GOT_END);
	csvin_free(in);
	yard_line_clear(&line);
}
END_TEST

START_TEST(for_a_spreadsheet_texts_are_guarded_and_numbers_are_not)
{
	static const struct csv_out_how how = { ';', TRUE, TRUE };
	g_autoptr(GString) text = g_string_new(NULL);
	struct yard_line line = { { NULL } };
	struct csv_row row;
	struct csv_in *in;

	set(&line, YARD_READING, "-0.5");
	set(&line, YARD_ENGINE_HOURS, "612.4");
	set(&line, YARD_LAST_DONE_HOURS, "unknown");
	set(&line, YARD_COST_LIMIT, "=400");
	set(&line, YARD_DESCRIPTION, "-see 2.5");
	in = written(text, &line, &how);
	csvin_next(in, &row, NULL);
	ck_assert_int_eq(csvin_next(in, &row, NULL), GOT_ROW);
	ck_assert_str_eq(row.cell[YARD_READING], "-0,5");
	ck_assert_str_eq(row.cell[YARD_ENGINE_HOURS], "612,4");
	ck_assert_str_eq(row.cell[YARD_LAST_DONE_HOURS], "unknown");
	ck_assert_str_eq(row.cell[YARD_COST_LIMIT], "'=400");
	ck_assert_str_eq(row.cell[YARD_DESCRIPTION], "'-see 2.5");
	csvin_free(in);
	yard_line_clear(&line);
}
END_TEST

int
main(void)
{
	Suite *s =
		suite_create("The yard sheet: every column there, the known ones filled, the yard's blank");
	TCase *t = tcase_create("yard sheet");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_test(t, every_column_has_a_name_of_its_own_and_help);
	tcase_add_test(t, twelve_columns_must_be_filled);
	tcase_add_test(t, known_columns_are_filled_and_the_yards_own_are_blank);
	tcase_add_test(t, for_a_spreadsheet_texts_are_guarded_and_numbers_are_not);
	suite_add_tcase(s, t);
	srunner_run_all(runner, CK_NORMAL);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
