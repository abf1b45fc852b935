#include "base/paper.h"

#include "base/err.h"

#include <check.h>
#include <stdlib.h>
#include <string.h>

/* The lines of one page, of which nothing may be longer than the columns. */
static const GPtrArray *
page(const struct paper *p, guint i)
{
	const GPtrArray *lines = p->pages->pdata[i];

	ck_assert_uint_eq(lines->len, (guint)p->rows);
	return lines;
}

static const char *
line(const struct paper *p, guint on, guint i)
{
	return page(p, on)->pdata[i];
}

START_TEST(a_block_stays_on_one_page)
{
	struct paper *p = paper_new(PAPER_LETTER, 40, "Boat");
	int before = p->rows - 5;

	for (int i = 0; i < before; i++)
		paper_add(p, "a line");
	paper_add(p, "\nfirst\nsecond\nthird\nfourth");
	paper_end(p);
	ck_assert_uint_eq(p->pages->len, 2);
	ck_assert_str_eq(line(p, 0, (guint)before), "");
	ck_assert_str_eq(line(p, 1, 0), "first");
	ck_assert_str_eq(line(p, 1, 3), "fourth");
	paper_free(p);
}
END_TEST

START_TEST(a_word_wider_than_the_paper_is_broken_and_nothing_of_it_lost)
{
	struct paper *p = paper_new(PAPER_A4, 4, "");

	paper_add(p, "  abcdefghi\n\n\xc3\xb6\xc3\xa4\xe6\xb0\xb4\xe6\xb0\xb4z   \n");
	paper_end(p);
	ck_assert_str_eq(line(p, 0, 0), "  ab");
	ck_assert_str_eq(line(p, 0, 1), "cdef");
	ck_assert_str_eq(line(p, 0, 2), "ghi");
	ck_assert_str_eq(line(p, 0, 3), "");
	ck_assert_str_eq(line(p, 0, 4), "\xc3\xb6\xc3\xa4\xe6\xb0\xb4");
	ck_assert_str_eq(line(p, 0, 5), "\xe6\xb0\xb4z");
	paper_free(p);
}
END_TEST

START_TEST(a_block_longer_than_a_page_is_broken_and_nothing_of_it_lost)
{
	struct paper *p = paper_new(PAPER_A4, 40, "Boat");
	g_autoptr(GString) all = g_string_new(NULL);
	g_autofree char *text = NULL;

	for (int i = 0; i < 2 * p->rows; i++)
		g_string_append_printf(all, "line %d\n", i);
	paper_add(p, all->str);
	paper_end(p);
	ck_assert_uint_eq(p->pages->len, 3);
	text = paper_text(p);
	for (int i = 0; i < 2 * p->rows; i++) {
		g_autofree char *wanted = g_strdup_printf("line %d\n", i);

		ck_assert_ptr_nonnull(strstr(text, wanted));
	}
	paper_free(p);
}
END_TEST

START_TEST(each_page_says_which_of_how_many_it_is)
{
	struct paper *p = paper_new(PAPER_A4, 30, "A boat with a name that is much too long");
	g_autofree char *text = NULL;

	for (int i = 0; i < p->rows; i++)
		paper_add(p, "a line");
	paper_end(p);
	ck_assert(g_str_has_suffix(line(p, 0, (guint)p->rows - 1), "page 1 of 2"));
	ck_assert(g_str_has_suffix(line(p, 1, (guint)p->rows - 1), "page 2 of 2"));
	ck_assert_uint_eq(strlen(line(p, 1, (guint)p->rows - 1)), 30);
	text = paper_text(p);
	ck_assert_ptr_nonnull(strchr(text, '\f'));
	ck_assert_ptr_eq(strchr(text, '\f'), strrchr(text, '\f'));
	paper_free(p);
}
END_TEST

START_TEST(of_a_whole_text_what_is_indented_stays_with_the_line_before)
{
	struct paper *p = paper_new(PAPER_A4, 40, "");
	g_autoptr(GString) all = g_string_new(NULL);

	for (int i = 0; i < p->rows - 4; i++)
		g_string_append(all, "one\n");
	g_string_append(all, "head\n    tail\n    end\n");
	paper_add_text(p, all->str, 4);
	paper_end(p);
	ck_assert_uint_eq(p->pages->len, 2);
	ck_assert_str_eq(line(p, 1, 0), "head");
	ck_assert_str_eq(line(p, 1, 2), "    end");
	paper_free(p);
}
END_TEST

START_TEST(paper_has_two_sizes)
{
	enum paper_size size = PAPER_A4;
	GError *err = NULL;

	ck_assert(paper_size_parse("letter", &size, NULL) && size == PAPER_LETTER);
	ck_assert(paper_size_parse("a4", &size, NULL) && size == PAPER_A4);
	ck_assert(!paper_size_parse("A5", &size, &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_INPUT));
	g_clear_error(&err);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("Pages of paper");
	TCase *tc = tcase_create("paper");
	SRunner *runner = srunner_create(suite);
	int failed;

	tcase_add_test(tc, a_block_stays_on_one_page);
	tcase_add_test(tc, a_block_longer_than_a_page_is_broken_and_nothing_of_it_lost);
	tcase_add_test(tc, a_word_wider_than_the_paper_is_broken_and_nothing_of_it_lost);
	tcase_add_test(tc, each_page_says_which_of_how_many_it_is);
	tcase_add_test(tc, of_a_whole_text_what_is_indented_stays_with_the_line_before);
	tcase_add_test(tc, paper_has_two_sizes);
	suite_add_tcase(suite, tc);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
