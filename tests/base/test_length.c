/* 1 in = 25.4 mm exactly: the international yard and pound agreement of 1959 (from memory). */
#include "base/amount.h"

#include "absurd.h"

static gboolean
parse(const char *text, GError **err)
{
	double mm;

	return length_parse(text, &mm, err);
}

static const struct {
	const char *text;
	double mm;
} taken[] = {
	{ "3/8 in", 9.525 }, { "3/8in", 9.525 }, { "3/8\"", 9.525 }, { "3/8 inch", 9.525 },
	{ "3/8 IN", 9.525 },
	{ "1-3/8 in", 34.925 }, { "1 3/8\"", 34.925 }, { "1 3/8 in", 34.925 }, { "1 - 3/8 in", 34.925 },
	{ "1\342\200\223" "3\342\201\204" "8 in", 34.925 }, { "1\302\275 in", 38.1 }, { "\302\275 in", 12.7 },
	{ "1/64 in", 0.396875 }, { "1/32 in", 0.79375 }, { "9/8 in", 28.575 }, { "0/8 in", 0 },
	{ ".006 in", 0.1524 }, { "0.006 in", 0.1524 }, { ",006 in", 0.1524 }, { "6 thou", 0.1524 },
	{ "0.5 thou", 0.0127 },
	{ "9.5 mm", 9.5 }, { "9,5mm", 9.5 }, { "0.15 mm", 0.15 }, { "9.525 mm", 9.525 }, { "1/2 mm", 0.5 },
	{ "12 cm", 120 }, { "6.4 m", 6400 }, { "6.4 metres", 6400 }, { "6 meters", 6000 },
	{ "2 ft", 609.6 }, { "2 feet", 609.6 }, { "1 foot", 304.8 }, { "2.5 ft", 762 }, { "1/2 ft", 152.4 },
	{ "18 ft 6 in", 5638.8 }, { "18'6\"", 5638.8 }, { "18' 6-1/2\"", 5651.5 },
	{ "18\342\200\262 6\342\200\263", 5638.8 },
	{ "18 ft 6.5 in", 5651.5 }, { "18 ft 0 in", 5486.4 }, { "18 ft 6''", 5638.8 }, { "0 mm", 0 },
	{ "10000 m", 1e7 },
	{ "25.4 mm", 25.4 }, { "1 in", 25.4 }, { "3 in", 76.2 }, { "0.1 in", 2.54 }, { "12\302\240mm", 12 },
};

START_TEST(a_length_is_the_nearest_double_of_its_exact_value)
{
	g_autoptr(GError) err = NULL;
	double mm = -1;

	ck_assert_msg(length_parse(taken[_i].text, &mm, &err), "%s", err ? err->message : "?");
	ck_assert_double_eq(mm, taken[_i].mm);
}
END_TEST

#define FORMS "write such as 3/8 in, 9.5 mm or 6 thou"

static const struct {
	const char *text, *message;
} refused[] = {
	{ "9.5", "\"9.5\": in which unit? Write mm or in behind the number, such as 9.5 mm or 3/8 in" },
	{ "3/8", "\"3/8\": in which unit? Write mm or in behind the number, such as 9.5 mm or 3/8 in" },
	{ "18 ft 6",
	  "\"18 ft 6\": in which unit? Write mm or in behind the number, such as 9.5 mm or 3/8 in" },
	{ "6 mil",
	  "\"6 mil\": some call a thousandth of an inch a mil, some a millimetre: write thou or mm" },
	{ "6 mils",
	  "\"6 mils\": some call a thousandth of an inch a mil, some a millimetre: write thou or mm" },
	{ "6 furlongs",
	  "\"6 furlongs\": \"furlongs\" is no unit of length: write mm, cm, m, in, thou or ft" },
	{ "3/0 in", "\"3/0 in\": nothing can be divided by 0: write such as 3/8 in" },
	{ "1-9/8 in", "\"1-9/8 in\": 9/8 is 1 or more: write 2-1/8 if that is meant" },
	{ "1-8/8 in", "\"1-8/8 in\": 8/8 is 1 or more: write 2-0/8 if that is meant" },
	{ "1-3 in", "\"1-3 in\": a fraction is wanted behind the whole number: write such as 1-3/8 in" },
	{ "1 3 in", "\"1 3 in\": a fraction is wanted behind the whole number: write such as 1-3/8 in" },
	{ "1.5/8 in", "\"1.5/8 in\": a fraction has whole numbers above and below: write such as 3/8 in" },
	{ "1/8.5 in", "\"1/8.5 in\": a fraction has whole numbers above and below: write such as 3/8 in" },
	{ "1.5 3/8 in", "\"1.5 3/8 in\": \"3/8 in\" is no unit of length: write mm, cm, m, in, thou or ft" },
	{ "3/ in", "\"3/ in\": a number is wanted in place of \"in\": " FORMS },
	{ "3/", "\"3/\": a number is missing at the end: " FORMS },
	{ "3/8/2 in", "\"3/8/2 in\": \"/2 in\" is no unit of length: write mm, cm, m, in, thou or ft" },
	{ "-3 mm", "\"-3 mm\": a length cannot be negative: " FORMS },
	{ "1.234,5 mm",
	  "\"1.234,5 mm\": \"1.234,5\" has several points or commas: write 1234.5 if that is meant" },
	{ "1,234 mm", "\"1,234 mm\": \"1,234\" can be 1.234 or 1234: write it without the comma" },
	{ "9.5 mm x", "\"9.5 mm x\": \"x\" is left over: " FORMS },
	{ "9.5 mm 3", "\"9.5 mm 3\": \"3\" is left over: " FORMS },
	{ "18 ft 6 mm", "\"18 ft 6 mm\": only inches go with feet: write such as 18 ft 6 in" },
	{ "18 ft 6 ft", "\"18 ft 6 ft\": only inches go with feet: write such as 18 ft 6 in" },
	{ "18 ft 6 thou", "\"18 ft 6 thou\": only inches go with feet: write such as 18 ft 6 in" },
	{ "18 ft 12 in",
	  "\"18 ft 12 in\": a foot has 12 in: write more feet and fewer inches, or inches alone" },
	{ "18.5 ft 6 in",
	  "\"18.5 ft 6 in\": only a whole number of feet goes with inches: write such as 18 ft 6 in" },
	{ "18 ft 6 in 3", "\"18 ft 6 in 3\": \"3\" is left over: " FORMS },
	{ "10001 m", "\"10001 m\": that is longer than 10 km: " FORMS },
	{ "1234567890123 mm", "\"1234567890123 mm\": that has more digits than a rule shows: " FORMS },
	{ "123456/7 in", "\"123456/7 in\": that has more digits than a rule shows: " FORMS },
	{ "mm", "\"mm\": a number is wanted in place of \"mm\": " FORMS },
	{ "", "nothing was given: " FORMS },
};

START_TEST(what_is_no_length_is_refused_with_the_reason)
{
	g_autoptr(GError) err = NULL;
	double mm = 77;

	ck_assert(!length_parse(refused[_i].text, &mm, &err));
	assert_harmless(refused[_i].text, err);
	ck_assert_str_eq(err->message, refused[_i].message);
	ck_assert_double_eq(mm, 77);
}
END_TEST

START_TEST(every_64th_of_an_inch_is_exact)
{
	/* n / 64 in = n * 0.396875 mm, and 0.396875 = 127 / 320 */
	for (int n = 1; n < 64 * 40; n++) {
		g_autofree char *text = g_strdup_printf("%d-%d/64 in", n / 64, n % 64);
		double mm = -1;

		ck_assert(length_parse(text, &mm, NULL));
		ck_assert_double_eq(mm, n * 127 / 320.0);
	}
}
END_TEST

START_TEST(decimal_millimetres_are_what_a_number_is)
{
	GRand *rand = test_rand("mm");

	for (int i = 0; i < 20000; i++) {
		g_autofree char *text = g_strdup_printf("%d.%03d mm", g_rand_int_range(rand, 0, 100000),
							g_rand_int_range(rand, 0, 1000));
		double mm = -1;

		ck_assert(length_parse(text, &mm, NULL));
		ck_assert_double_eq(mm, g_ascii_strtod(text, NULL));
	}
	g_rand_free(rand);
}
END_TEST

START_TEST(absurd_text_is_refused_without_harm)
{
	GRand *rand = test_rand("absurd");

	assert_refuses_absurd(parse);
	assert_random_harmless(parse, "0123456789.,/- \"'infthoumc", rand);
	g_rand_free(rand);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("A length keeps its fractions exact");
	TCase *tc = tcase_create("lengths");

	tcase_set_timeout(tc, 60);
	tcase_add_loop_test(tc, a_length_is_the_nearest_double_of_its_exact_value, 0, G_N_ELEMENTS(taken));
	tcase_add_loop_test(tc, what_is_no_length_is_refused_with_the_reason, 0, G_N_ELEMENTS(refused));
	tcase_add_test(tc, every_64th_of_an_inch_is_exact);
	tcase_add_test(tc, decimal_millimetres_are_what_a_number_is);
	tcase_add_test(tc, absurd_text_is_refused_without_harm);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
