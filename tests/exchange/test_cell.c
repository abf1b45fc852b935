#include "exchange/cell.h"

#include "base/amount.h"
#include "base/date.h"

#include <check.h>
#include <stdlib.h>
#include <string.h>

static guint64
next(guint64 *x)
{
	*x = *x * G_GUINT64_CONSTANT(6364136223846793005) + 1442695040888963407;
	return *x >> 16;
}

/* The quick forms agree with the parsers that people's input goes through. */
START_TEST(the_quick_way_reads_what_the_parsers_read)
{
	guint64 x = 99;

	for (int i = 0; i < 20000; i++) {
		static const int tens[] = { 1, 10, 100, 1000 };
		const int n = (int)(next(&x) % 4);
		g_autofree char *text = g_strdup_printf("%d.%0*d", (int)(next(&x) % 2000), n,
							(int)(next(&x) % 1000) % tens[n]);
		gint64 quick, slow, day;
		struct plain p;
		char currency[4], iso[DAY_TEXT];
		double real;

		if (!n)
			*strchr(text, '.') = '\0';
		ck_assert(plain_read(text, '.', &p));
		ck_assert(number_parse(text, &real, NULL));
		ck_assert_double_eq(plain_real(&p), real);
		ck_assert(hours_parse(text, &slow, NULL));
		if (plain_scaled(&p, 3600, &quick))
			ck_assert_int_eq(quick, slow);
		if (money_parse(text, &slow, currency, NULL) && plain_scaled(&p, 100, &quick))
			ck_assert_int_eq(quick, slow);
		day = (gint64)(next(&x) % 80000) - 30000;
		ck_assert(iso_read(day_iso(day, iso), &quick));
		ck_assert_int_eq(quick, day);
	}
}
END_TEST

static const struct {
	const char *text;
	gboolean read;
	struct plain want;
} plains[] = {
	{ "0", TRUE, { 0, 0, FALSE } },
	{ "12.50", TRUE, { 1250, 2, FALSE } },
	{ "-0.5", TRUE, { 5, 1, TRUE } },
	{ "007", TRUE, { 7, 0, FALSE } },
	{ "999999999999999", TRUE, { G_GINT64_CONSTANT(999999999999999), 0, FALSE } },
	{ "1.00000000000001", TRUE, { G_GINT64_CONSTANT(100000000000001), 14, FALSE } },
	{ "1000000000000000", FALSE, { 0, 0, FALSE } },
	{ "", FALSE, { 0, 0, FALSE } },
	{ "-", FALSE, { 0, 0, FALSE } },
	{ ".5", FALSE, { 0, 0, FALSE } },
	{ "5.", FALSE, { 0, 0, FALSE } },
	{ "1,5", FALSE, { 0, 0, FALSE } },
	{ "1.2.3", FALSE, { 0, 0, FALSE } },
	{ " 1", FALSE, { 0, 0, FALSE } },
	{ "1e5", FALSE, { 0, 0, FALSE } },
	{ "+1", FALSE, { 0, 0, FALSE } },
	{ "--1", FALSE, { 0, 0, FALSE } },
	{ "1.000000000000000", FALSE, { 0, 0, FALSE } },
};

START_TEST(plain_decimals_and_nothing_else)
{
	struct plain p;

	ck_assert_msg(plain_read(plains[_i].text, '.', &p) == plains[_i].read, "%s", plains[_i].text);
	if (!plains[_i].read)
		return;
	ck_assert_int_eq(p.digits, plains[_i].want.digits);
	ck_assert_int_eq(p.decimals, plains[_i].want.decimals);
	ck_assert_int_eq(p.minus, plains[_i].want.minus);
}
END_TEST

START_TEST(days_that_are_none_are_left_to_the_parser)
{
	static const char *const none[] = { "2026-02-30", "2025-02-29",  "2026-13-01",
					    "2026-5-02",  "2026-05-02 ", "2026/05/02",
					    "",           "0000-01-01",  "2026-05-0x" };
	gint64 day;

	ck_assert(iso_read("2024-02-29", &day));
	ck_assert(!iso_read(none[_i], &day));
}
END_TEST

START_TEST(only_a_thousand_looks_grouped)
{
	static const char *const grouped[] = { "1.234", "12.345", "-123.456", "1.234 EUR" };
	static const char *const clear[] = { "0.125", "1.25", "1.2345", "1234.567", "1.234,5",
					     "1234",  "",     "2:24",   ".500" };

	for (size_t i = 0; i < G_N_ELEMENTS(grouped); i++)
		ck_assert_msg(looks_grouped(grouped[i]), "%s", grouped[i]);
	for (size_t i = 0; i < G_N_ELEMENTS(clear); i++)
		ck_assert_msg(!looks_grouped(clear[i]), "%s", clear[i]);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Cells: the quick reading agrees with the careful one");
	TCase *t = tcase_create("cells");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_test(t, the_quick_way_reads_what_the_parsers_read);
	tcase_add_loop_test(t, plain_decimals_and_nothing_else, 0, G_N_ELEMENTS(plains));
	tcase_add_loop_test(t, days_that_are_none_are_left_to_the_parser, 0, 9);
	tcase_add_test(t, only_a_thousand_looks_grouped);
	suite_add_tcase(s, t);
	srunner_run_all(runner, CK_NORMAL);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
