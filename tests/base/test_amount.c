#include "base/amount.h"

#include "absurd.h"

#include <math.h>

static gboolean
parse_number(const char *text, GError **err)
{
	double value;

	return number_parse(text, &value, err);
}

static gboolean
parse_count(const char *text, GError **err)
{
	gint64 value;

	return count_parse(text, &value, err);
}

static gboolean
parse_money(const char *text, GError **err)
{
	gint64 cents;
	char currency[4];

	return money_parse(text, &cents, currency, err);
}

static gboolean
parse_salinity(const char *text, GError **err)
{
	double psu;

	return salinity_parse(text, &psu, err);
}

static gboolean
parse_temperature(const char *text, GError **err)
{
	double celsius;

	return temperature_parse(text, &celsius, err);
}

static const struct {
	const char *text;
	double value;
} numbers[] = {
	{ "12.5", 12.5 }, { "12,5", 12.5 }, { "-3", -3 }, { ".5", 0.5 }, { ",5", 0.5 }, { "-.5", -0.5 },
	{ "+3", 3 }, { "0", 0 },
	{ "-0", 0 }, { " 7 ", 7 }, { "1.234", 1.234 }, { "1e-05", 1e-5 }, { "1E-05", 1e-5 },
	{ "2.5e3", 2500 }, { "1e300", 1e300 },
	{ "0.1", 0.1 }, { "123456789.123456789", 123456789.123456789 }, { "0.30000000000000004", 0.1 + 0.2 },
	{ "\342\210\222" "3", -3 }, { "007", 7 },
};

START_TEST(a_number_is_understood)
{
	g_autoptr(GError) err = NULL;
	double value = 77;

	ck_assert_msg(number_parse(numbers[_i].text, &value, &err), "%s", err ? err->message : "?");
	ck_assert_double_eq(value, numbers[_i].value);
}
END_TEST

#define A_NUMBER "write a number alone, such as 12.5"
#define A_COUNT "write a whole number, such as 12"
#define MONEY "write 12.50, USD 12.50 or 12.50 EUR"
#define SALINITY "write the salinity such as 18 or 18 psu"
#define TEMPERATURE "write such as 12 C, 54 F or 285.15 K"

static const struct {
	parse_func parse;
	const char *text, *message;
} refused[] = {
	{ parse_number, "1.234,5",
	  "\"1.234,5\": \"1.234,5\" has several points or commas: write 1234.5 if that is meant" },
	{ parse_number, "1,234", "\"1,234\": \"1,234\" can be 1.234 or 1234: write it without the comma" },
	{ parse_number, "12 mm", "\"12 mm\": \"mm\" is left over: " A_NUMBER },
	{ parse_number, "1 234", "\"1 234\": \"234\" is left over: " A_NUMBER },
	{ parse_number, "12.", "\"12.\": a digit is missing behind \"12.\": " A_NUMBER },
	{ parse_number, "1e", "\"1e\": a number is missing at the end: " A_NUMBER },
	{ parse_number, "1e2.5", "\"1e2.5\": the exponent is too large or no whole number: " A_NUMBER },
	{ parse_number, "1e999", "\"1e999\": the exponent is too large or no whole number: " A_NUMBER },
	{ parse_number, "1e309", "\"1e309\": the number is too large to be kept: " A_NUMBER },
	{ parse_number, "--3", "\"--3\": a number is wanted in place of \"-3\": " A_NUMBER },
	{ parse_number, "nan", "\"nan\": a number is wanted in place of \"nan\": " A_NUMBER },
	{ parse_number, "twelve", "\"twelve\": a number is wanted in place of \"twelve\": " A_NUMBER },
	{ parse_number, "", "nothing was given: " A_NUMBER },
	{ parse_count, "-1", "\"-1\": a count cannot be negative: " A_COUNT },
	{ parse_count, "1.5", "\"1.5\": a whole number is wanted, without a fraction: " A_COUNT },
	{ parse_count, "12.0", "\"12.0\": a whole number is wanted: write 12" },
	{ parse_count, "0.7", "\"0.7\": a whole number is wanted, without a fraction: " A_COUNT },
	{ parse_count, "1,000", "\"1,000\": \"1,000\" can be 1.000 or 1000: write it without the comma" },
	{ parse_count, "1000000001", "\"1000000001\": the count is too large: at most 1000000000 is kept" },
	{ parse_count, "99999999999999999999",
	  "\"99999999999999999999\": the count is too large: at most 1000000000 is kept" },
	{ parse_count, "12 x", "\"12 x\": \"x\" is left over: " A_COUNT },
	{ parse_count, "1e3", "\"1e3\": \"e3\" is left over: " A_COUNT },
	{ parse_money, "12.505",
	  "\"12.505\": money has two decimals: write 12.51, or 12505 if that is meant" },
	{ parse_money, "12.500",
	  "\"12.500\": money has two decimals: write 12.50, or 12500 if that is meant" },
	{ parse_money, "12,500",
	  "\"12,500\": \"12,500\" can be 12.500 or 12500: write it without the comma" },
	{ parse_money, "1,250.00",
	  "\"1,250.00\": \"1,250.00\" has several points or commas: write 1250.00 if that is meant" },
	{ parse_money, "$12.50", "\"$12.50\": \"$\" is no currency of three letters: " MONEY },
	{ parse_money, "12.50 €", "\"12.50 €\": \"€\" is no currency of three letters: " MONEY },
	{ parse_money, "12.50 euro", "\"12.50 euro\": \"euro\" is no currency of three letters: " MONEY },
	{ parse_money, "USD 12 EUR", "\"USD 12 EUR\": two currencies, USD and EUR: " MONEY },
	{ parse_money, "USD", "\"USD\": a number is missing at the end: " MONEY },
	{ parse_money, "12 USD 3", "\"12 USD 3\": \"3\" is left over: " MONEY },
	{ parse_money, "12/3", "\"12/3\": \"/3\" is left over: " MONEY },
	{ parse_money, "10000000000.01",
	  "\"10000000000.01\": the sum is too large: at most 10000000000.00 is kept" },
	{ parse_money, "", "nothing was given: " MONEY },
	{ parse_salinity, "46", "\"46\": salinity is 0 to 45 PSU, and about 35 in the ocean" },
	{ parse_salinity, "-1", "\"-1\": salinity cannot be negative: it is 0 to 45 PSU" },
	{ parse_salinity, "salt", "\"salt\": a number is wanted in place of \"salt\": " SALINITY },
	{ parse_salinity, "18 ppm", "\"18 ppm\": \"ppm\" is left over: " SALINITY },
	{ parse_salinity, "18 psu 3", "\"18 psu 3\": \"3\" is left over: " SALINITY },
	{ parse_temperature, "12",
	  "\"12\": on which scale? Write C, F or K behind the number, such as 12 C" },
	{ parse_temperature, "12 °",
	  "\"12 °\": on which scale? Write C, F or K behind the number, such as 12 C" },
	{ parse_temperature, "12 X", "\"12 X\": \"X\" is left over: " TEMPERATURE },
	{ parse_temperature, "12 C 3", "\"12 C 3\": \"3\" is left over: " TEMPERATURE },
	{ parse_temperature, "-274 C", "\"-274 C\": that is below absolute zero, -273.15 C: " TEMPERATURE },
	{ parse_temperature, "-1 K", "\"-1 K\": that is below absolute zero, -273.15 C: " TEMPERATURE },
	{ parse_temperature, "5001 C", "\"5001 C\": that is hotter than 5000 C: " TEMPERATURE },
	{ parse_temperature, "1.0000000000001 C",
	  "\"1.0000000000001 C\": that has more than 12 digits: " TEMPERATURE },
	{ parse_temperature, "C", "\"C\": a number is wanted in place of \"C\": " TEMPERATURE },
};

START_TEST(what_is_no_amount_is_refused_with_the_reason)
{
	g_autoptr(GError) err = NULL;

	ck_assert(!refused[_i].parse(refused[_i].text, &err));
	assert_harmless(refused[_i].text, err);
	ck_assert_str_eq(err->message, refused[_i].message);
}
END_TEST

START_TEST(a_refused_amount_leaves_the_result_alone)
{
	double value = 77;
	gint64 whole = 77;
	char currency[4] = "QQQ";

	ck_assert(!number_parse("x", &value, NULL) && !salinity_parse("46", &value, NULL));
	ck_assert(!temperature_parse("-300 C", &value, NULL) && !number_parse("3 4", &value, NULL));
	ck_assert_double_eq(value, 77);
	ck_assert(!count_parse("3.5", &whole, NULL) && !money_parse("USD 3 4", &whole, currency, NULL));
	ck_assert_int_eq(whole, 77);
	ck_assert_str_eq(currency, "QQQ");
}
END_TEST

/* Random bits that are a finite double. */
static double
any_double(GRand *rand)
{
	union {
		guint64 bits;
		double value;
	} u;

	do
		u.bits = (guint64)g_rand_int(rand) << 32 | g_rand_int(rand);
	while (!isfinite(u.value));
	return u.value;
}

START_TEST(every_finite_number_is_read_back)
{
	GRand *rand = test_rand("numbers");
	char buf[NUMBER_TEXT];

	for (int i = 0; i < 50000; i++) {
		double value = i % 2 ? any_double(rand) : g_rand_int_range(rand, -99999, 99999) / 1e3;
		double back = 77;

		if (!number_parse(number_exact(value, buf), &back, NULL) || back != value)
			ck_abort_msg("%.17g as %s", value, buf);
	}
	g_rand_free(rand);
}
END_TEST

static const struct {
	double value;
	const char *text;
} number_texts[] = {
	{ 0, "0" }, { 12.5, "12.5" }, { 0.1, "0.1" }, { 0.1 + 0.2, "0.30000000000000004" }, { -3, "-3" },
	{ 1e-5, "1e-05" },
	{ 35, "35" }, { 1e300, "1e+300" }, { NAN, "" }, { INFINITY, "" }, { -INFINITY, "" },
};

START_TEST(a_number_is_written_as_short_as_it_goes)
{
	char buf[NUMBER_TEXT];

	ck_assert_str_eq(number_exact(number_texts[_i].value, buf), number_texts[_i].text);
}
END_TEST

static const struct {
	const char *text;
	gint64 value;
} counts[] = {
	{ "0", 0 }, { "12", 12 }, { " 12 ", 12 }, { "007", 7 }, { "2019", 2019 },
	{ "1000000000", COUNT_MOST },
};

START_TEST(a_count_is_understood)
{
	gint64 value = -1;

	ck_assert(count_parse(counts[_i].text, &value, NULL));
	ck_assert_int_eq(value, counts[_i].value);
}
END_TEST

static const struct {
	const char *text;
	gint64 cents;
	const char *currency;
} sums[] = {
	{ "12", 1200, "" }, { "12.5", 1250, "" }, { "12.50", 1250, "" }, { "12,50", 1250, "" },
	{ "12,5", 1250, "" },
	{ "USD 12.50", 1250, "USD" }, { "12.50 EUR", 1250, "EUR" }, { "12.50EUR", 1250, "EUR" },
	{ "usd12", 1200, "USD" },
	{ ".05", 5, "" }, { "0.29", 29, "" }, { "0", 0, "" }, { "-12.50", -1250, "" },
	{ "USD -12.50", -1250, "USD" },
	{ "-12.50 USD", -1250, "USD" }, { "1234,56", 123456, "" },
	{ "10000000000", G_GINT64_CONSTANT(1000000000000), "" },
	{ "12\302\240EUR", 1200, "EUR" },
};

START_TEST(money_is_whole_cents)
{
	g_autoptr(GError) err = NULL;
	gint64 cents = -77;
	char currency[4] = "???";

	ck_assert_msg(money_parse(sums[_i].text, &cents, currency, &err), "%s", err ? err->message : "?");
	ck_assert_int_eq(cents, sums[_i].cents);
	ck_assert_str_eq(currency, sums[_i].currency);
}
END_TEST

START_TEST(every_sum_is_read_back)
{
	GRand *rand = test_rand("money");
	char buf[MONEY_TEXT], currency[4];

	for (int i = 0; i < 50000; i++) {
		gint64 cents = i < 20000 ? i - 10000 : (gint64)g_rand_double_range(rand, -1e12, 1e12);
		gint64 back = NONE;

		if (!money_parse(money_exact(cents, buf), &back, currency, NULL) || back != cents)
			ck_abort_msg("%s", buf);
	}
	ck_assert_str_eq(money_exact(NONE, buf), "");
	ck_assert_str_eq(money_exact(G_MAXINT64, buf), "92233720368547758.07");
	ck_assert_str_eq(money_exact(-5, buf), "-0.05");
	ck_assert_str_eq(money_exact(0, buf), "0.00");
	g_rand_free(rand);
}
END_TEST

static const struct {
	parse_func parse;
	const char *text;
	double value;
} waters[] = {
	{ parse_salinity, "18", 18 }, { parse_salinity, "18 psu", 18 }, { parse_salinity, "18 ppt", 18 },
	{ parse_salinity, "18 PSU", 18 }, { parse_salinity, "35 ‰", 35 }, { parse_salinity, "0", 0 },
	{ parse_salinity, "0,5", 0.5 }, { parse_salinity, "45", 45 },
	{ parse_temperature, "12 C", 12 }, { parse_temperature, "12C", 12 },
	{ parse_temperature, "12 °C", 12 },
	{ parse_temperature, "12\302\240°C", 12 }, { parse_temperature, "12 ° C", 12 },
	{ parse_temperature, "12 deg C", 12 },
	{ parse_temperature, "12.5 celsius", 12.5 }, { parse_temperature, "12 ℃", 12 },
	{ parse_temperature, "-3 C", -3 },
	{ parse_temperature, "\342\210\222" "3 C", -3 }, { parse_temperature, "+3 C", 3 },
	{ parse_temperature, "32 F", 0 }, { parse_temperature, "212 °F", 100 },
	{ parse_temperature, "54 F", 110 / 9.0 },
	{ parse_temperature, "-40 F", -40 }, { parse_temperature, "0 f", -160 / 9.0 },
	{ parse_temperature, "98.6 F", 37 },
	{ parse_temperature, "285.15 K", 12 }, { parse_temperature, "0 K", -273.15 },
	{ parse_temperature, "-273.15 C", -273.15 },
	{ parse_temperature, "-459.67 F", -273.15 }, { parse_temperature, "288,65 kelvin", 15.5 },
	{ parse_temperature, "5000 C", 5000 },
};

START_TEST(salinity_and_temperature_are_exact)
{
	g_autoptr(GError) err = NULL;
	double value = -999;
	gboolean ok = waters[_i].parse == parse_salinity ? salinity_parse(waters[_i].text, &value, &err)
							 : temperature_parse(waters[_i].text, &value, &err);

	ck_assert_msg(ok, "%s", err ? err->message : "?");
	ck_assert_double_eq(value, waters[_i].value);
}
END_TEST

static const struct {
	parse_func parse;
	const char *alphabet;
} parsers[] = {
	{ parse_number, "0123456789.,-+eE " }, { parse_count, "0123456789.,- " },
	{ parse_money, "0123456789.,-USDeur $" },
	{ parse_salinity, "0123456789.,-psutp " }, { parse_temperature, "0123456789.,-CFKdeg \302\260" },
};

START_TEST(absurd_text_is_refused_without_harm)
{
	GRand *rand = test_rand("absurd");

	assert_refuses_absurd(parsers[_i].parse);
	assert_random_harmless(parsers[_i].parse, parsers[_i].alphabet, rand);
	g_rand_free(rand);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("An amount is read exactly or refused with the reason");
	TCase *tc = tcase_create("amounts");

	tcase_set_timeout(tc, 60);
	tcase_add_loop_test(tc, a_number_is_understood, 0, G_N_ELEMENTS(numbers));
	tcase_add_loop_test(tc, what_is_no_amount_is_refused_with_the_reason, 0, G_N_ELEMENTS(refused));
	tcase_add_test(tc, a_refused_amount_leaves_the_result_alone);
	tcase_add_test(tc, every_finite_number_is_read_back);
	tcase_add_loop_test(tc, a_number_is_written_as_short_as_it_goes, 0, G_N_ELEMENTS(number_texts));
	tcase_add_loop_test(tc, a_count_is_understood, 0, G_N_ELEMENTS(counts));
	tcase_add_loop_test(tc, money_is_whole_cents, 0, G_N_ELEMENTS(sums));
	tcase_add_test(tc, every_sum_is_read_back);
	tcase_add_loop_test(tc, salinity_and_temperature_are_exact, 0, G_N_ELEMENTS(waters));
	tcase_add_loop_test(tc, absurd_text_is_refused_without_harm, 0, G_N_ELEMENTS(parsers));
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
