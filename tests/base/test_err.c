#include "base/err.h"

#include "absurd.h"

START_TEST(set_fills_domain_code_and_message)
{
	g_autoptr(GError) err = NULL;

	ck_assert(!err_set(&err, ERR_CONFLICT, "task %s is known since %d", "oil", 2019));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_CONFLICT));
	ck_assert_str_eq(err->message, "task oil is known since 2019");
}
END_TEST

START_TEST(set_without_a_place_still_says_no)
{
	ck_assert(!err_set(NULL, ERR_INPUT, "unheard"));
	ck_assert(!err_prefix(NULL, "x: "));
}
END_TEST

START_TEST(every_code_survives)
{
	static const enum err_code codes[] = { ERR_INPUT, ERR_NOT_FOUND, ERR_CONFLICT,
					       ERR_DOUBT, ERR_STORE,     ERR_SYSTEM };
	g_autoptr(GError) err = NULL;

	err_set(&err, codes[_i], "%d", _i);
	ck_assert(g_error_matches(err, ERR_DOMAIN, (int)codes[_i]));
}
END_TEST

START_TEST(prefix_goes_before_and_keeps_the_code)
{
	g_autoptr(GError) err = NULL;

	err_set(&err, ERR_STORE, "cut off");
	ck_assert(!err_prefix(&err, "%s:%d: ", "outings.csv", 12));
	ck_assert_str_eq(err->message, "outings.csv:12: cut off");
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_STORE));
}
END_TEST

START_TEST(prefix_of_no_error_makes_none)
{
	g_autoptr(GError) err = NULL;

	ck_assert(!err_prefix(&err, "x: "));
	ck_assert_ptr_null(err);
}
END_TEST

START_TEST(messages_are_utf8_whatever_they_quote)
{
	g_autoptr(GError) err = NULL;

	err_set(&err, ERR_INPUT, "\"%s\" is no place", "caf\351");
	ck_assert(g_utf8_validate(err->message, -1, NULL));
	ck_assert_str_eq(err->message, "\"caf\357\277\275\" is no place");
	err_prefix(&err, "%s: ", "\300");
	ck_assert(g_utf8_validate(err->message, -1, NULL));
	ck_assert_str_eq(err->message, "\357\277\275: \"caf\357\277\275\" is no place");
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("An error says what is wrong");
	TCase *tc = tcase_create("GError");

	tcase_set_timeout(tc, 60);
	tcase_add_test(tc, set_fills_domain_code_and_message);
	tcase_add_test(tc, set_without_a_place_still_says_no);
	tcase_add_loop_test(tc, every_code_survives, 0, 6);
	tcase_add_test(tc, prefix_goes_before_and_keeps_the_code);
	tcase_add_test(tc, prefix_of_no_error_makes_none);
	tcase_add_test(tc, messages_are_utf8_whatever_they_quote);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
