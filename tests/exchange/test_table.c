#include "exchange/table.h"

#include "base/err.h"

#include <check.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>

static const char *const columns[] = { "name", "value", NULL };

static struct table *
of(const char *text, GError **err)
{
	struct table *t;

	ck_assert(g_file_set_contents("small.csv", text, -1, NULL));
	t = table_read("small.csv", columns, err);
	g_remove("small.csv");
	return t;
}

START_TEST(columns_are_found_by_name_and_others_left_out)
{
	struct table *t = of("value,remark,name\n1,one,first\n,\"none, or not\",second\n", NULL);

	ck_assert_ptr_nonnull(t);
	ck_assert_uint_eq(table_rows(t), 2);
	ck_assert_str_eq(table_cell(t, 0, 0), "first");
	ck_assert_str_eq(table_cell(t, 0, 1), "1");
	ck_assert_str_eq(table_cell(t, 1, 0), "second");
	ck_assert_ptr_null(table_cell(t, 1, 1));
	table_free(t);
}
END_TEST

START_TEST(a_message_says_file_and_line)
{
	struct table *t = of("name,value\na,1\n\nb,2\n", NULL);
	GError *err = NULL;

	err_set(&err, ERR_INPUT, "wrong");
	ck_assert(!table_prefix(t, 1, &err));
	ck_assert_str_eq(err->message, "small.csv:4: wrong");
	g_clear_error(&err);
	table_free(t);
}
END_TEST

static const struct {
	const char *text, *says;
} wrong[] = {
	{ "", "empty" },
	{ "name,amount\na,1\n", "small.csv:1: the column \"value\" is missing" },
	{ "name,value\na\n", "small.csv:2" },
	{ "name,value\na,\"1\n", "small.csv:2" },
};

START_TEST(what_is_no_such_table_is_refused)
{
	GError *err = NULL;

	ck_assert_ptr_null(of(wrong[_i].text, &err));
	ck_assert_ptr_nonnull(strstr(err->message, wrong[_i].says));
	g_clear_error(&err);
}
END_TEST

START_TEST(a_file_that_is_not_there_is_named)
{
	GError *err = NULL;

	ck_assert_ptr_null(table_read("nowhere/none.csv", columns, &err));
	ck_assert_ptr_nonnull(strstr(err->message, "nowhere/none.csv"));
	g_clear_error(&err);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("table");
	TCase *t = tcase_create("table");
	SRunner *r;
	int failed;

	tcase_add_test(t, columns_are_found_by_name_and_others_left_out);
	tcase_add_test(t, a_message_says_file_and_line);
	tcase_add_loop_test(t, what_is_no_such_table_is_refused, 0, G_N_ELEMENTS(wrong));
	tcase_add_test(t, a_file_that_is_not_there_is_named);
	suite_add_tcase(s, t);
	r = srunner_create(s);
	srunner_run_all(r, CK_ENV);
	failed = srunner_ntests_failed(r);
	srunner_free(r);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
