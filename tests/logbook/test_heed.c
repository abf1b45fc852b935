#include "logbook/heed.h"

#include "open.h"

static void
check_unheeded(const char *work, const char *words, const char *expected)
{
	g_autoptr(GError) err = NULL;
	g_autofree char *left = book_unheeded(book, boat.id, work, words, &err);

	ck_assert_msg(left != NULL, "%s", err ? err->message : "?");
	ck_assert_str_eq(left, expected);
}

static void
heed(const char *work, const char *words)
{
	g_autoptr(GError) err = NULL;

	ck_assert_msg(book_heed(book, boat.id, work, words, &err), "%s", err ? err->message : "?");
}

static guint
rows(void)
{
	g_autoptr(GArray) all = book_records(book, RECORD_HEEDED, boat.id, NULL);

	ck_assert_ptr_nonnull(all);
	return all->len;
}

START_TEST(a_caution_is_unread_until_it_is_read_and_then_for_that_day_alone)
{
	open_plain("Tern");
	check_unheeded("lay-up", "alone trailer", "alone trailer");
	heed("lay-up", "trailer");
	check_unheeded("lay-up", "alone trailer", "alone");
	heed("lay-up", "alone trailer");
	check_unheeded("lay-up", "alone trailer", "");
	who.today++;
	reopen(BOOK_WRITE);
	check_unheeded("lay-up", "alone trailer", "alone trailer");
}
END_TEST

START_TEST(what_was_read_before_one_work_is_unread_before_another)
{
	open_plain("Tern");
	heed("lay-up", "alone");
	check_unheeded("commissioning", "alone", "alone");
	check_unheeded("grounding", "alone", "alone");
}
END_TEST

START_TEST(what_was_read_on_one_boat_is_unread_on_another)
{
	open_plain("Tern");
	heed("lay-up", "alone");
	open_plain("Plover");
	check_unheeded("lay-up", "alone", "alone");
}
END_TEST

START_TEST(one_word_within_another_is_not_the_other)
{
	open_plain("Tern");
	heed("grounding", "stands");
	check_unheeded("grounding", "stand stands stands-off", "stand stands-off");
}
END_TEST

START_TEST(nothing_to_read_writes_nothing_and_reading_twice_writes_once)
{
	open_plain("Tern");
	check_unheeded("grounding", NULL, "");
	check_unheeded("grounding", "", "");
	heed("grounding", NULL);
	ck_assert_uint_eq(rows(), 0);
	heed("grounding", "alone alone");
	heed("grounding", "alone");
	ck_assert_uint_eq(rows(), 1);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("logbook/heed");
	TCase *cases = tcase_create("heed");

	tcase_add_checked_fixture(cases, setup, teardown);
	tcase_add_test(cases, a_caution_is_unread_until_it_is_read_and_then_for_that_day_alone);
	tcase_add_test(cases, what_was_read_before_one_work_is_unread_before_another);
	tcase_add_test(cases, what_was_read_on_one_boat_is_unread_on_another);
	tcase_add_test(cases, one_word_within_another_is_not_the_other);
	tcase_add_test(cases, nothing_to_read_writes_nothing_and_reading_twice_writes_once);
	suite_add_tcase(suite, cases);
	return run_suite(suite);
}
