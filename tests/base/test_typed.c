#include "base/typed.h"

#include "absurd.h"

static const struct {
	const char *text;
	gint64 scale, result;	/* -1: larger than 1000000 */
} scaled[] = {
	{ "2.4", 3600, 8640 }, { "2,4", 3600, 8640 }, { "0", 3600, 0 }, { ".5", 3600, 1800 },
	{ "2.41", 3600, 8676 },
	{ "2.0001", 3600, 7200 }, { "2.0002", 3600, 7201 },	/* 0.36 and 0.72 s */
	{ "0.00013888888888888888888", 3600,
	  0 }, { "0.00013888888888888888889", 3600, 1 },	/* around half a second */
	{ "0.0125", 3600, 45 }, { "0.0001388", 3600, 0 }, { "0.0001389", 3600, 1 },
	{ "12.50", 100, 1250 }, { "12.5", 100, 1250 }, { "0.005", 100, 1 },
	{ "0.00499999999999999999999", 100, 0 },
	{ "0.995", 100, 100 }, { "1.005", 100, 101 },	/* as a double it is below */
	{ "2.4000000000000004", 3600, 8640 }, { "2.3333333333333335", 3600, 8400 },
	{ "0.99999999999999999", 1, 1 },
	{ "1000000", 1, 1000000 }, { "1000000.4", 1, 1000000 }, { "1000000.5", 1, -1 }, { "1000001", 1, -1 },
	{ "10001", 100, -1 }, { "99999999999999999999999999999", 3600, -1 },
	{ "0000000000000000000000000000002", 1, 2 },
};

START_TEST(decimals_are_scaled_exactly_and_rounded_half_up)
{
	struct typed t;
	struct decimal d;
	gint64 result = -1;

	ck_assert(typed_init(&t, scaled[_i].text, "", NULL) && typed_decimal(&t, &d) && typed_end(&t));
	ck_assert_int_eq(decimal_scaled(&d, scaled[_i].scale, 1000000, &result), scaled[_i].result >= 0);
	if (scaled[_i].result >= 0)
		ck_assert_int_eq(result, scaled[_i].result);
	typed_clear(&t);
}
END_TEST

static const struct {
	const char *text;
	gint64 num, den;	/* 0: too many digits */
} ratios[] = {
	{ "3", 3, 1 }, { "0.006", 6, 1000 }, { ".006", 6, 1000 }, { "9.5", 95, 10 },
	{ "123456.789012", 123456789012, 1000000 },
	{ "123456.7890123", 0, 0 }, { "1234567890123", 0, 0 },
};

START_TEST(decimals_are_ratios_of_whole_numbers)
{
	struct typed t;
	struct decimal d;
	gint64 num = 0, den = 0;

	ck_assert(typed_init(&t, ratios[_i].text, "", NULL) && typed_decimal(&t, &d) && typed_end(&t));
	ck_assert_int_eq(decimal_ratio(&d, &num, &den), ratios[_i].den > 0);
	if (ratios[_i].den)
		ck_assert(num == ratios[_i].num && den == ratios[_i].den);
	typed_clear(&t);
}
END_TEST

#define SEVERAL "has several points or commas"

static const struct {
	const char *text, *message;
} refused[] = {
	{ "1.234,5", "\"1.234,5\": \"1.234,5\" " SEVERAL ": write 1234.5 if that is meant" },
	{ "1,234.5", "\"1,234.5\": \"1,234.5\" " SEVERAL ": write 1234.5 if that is meant" },
	{ "1,234,567", "\"1,234,567\": \"1,234,567\" " SEVERAL ": write 1234567 if that is meant" },
	{ "1.234.567,89",
	  "\"1.234.567,89\": \"1.234.567,89\" " SEVERAL ": write 1234567.89 if that is meant" },
	{ "1.2.3", "\"1.2.3\": \"1.2.3\" " SEVERAL ": write 12" },
	{ "1..5", "\"1..5\": \"1..5\" " SEVERAL ": write 12" },
	{ "1234,567.8", "\"1234,567.8\": \"1234,567.8\" " SEVERAL ": write 12" },
	{ "1,234.567,8", "\"1,234.567,8\": \"1,234.567,8\" " SEVERAL ": write 12" },
	{ "1,234.", "\"1,234.\": \"1,234.\" " SEVERAL ": write 12" },
	{ ".5.", "\".5.\": \".5.\" " SEVERAL ": write 12" },
	{ "1,234", "\"1,234\": \"1,234\" can be 1.234 or 1234: write it without the comma" },
	{ "12,500", "\"12,500\": \"12,500\" can be 12.500 or 12500: write it without the comma" },
	{ "12.", "\"12.\": a digit is missing behind \"12.\": write 12" },
	{ "12,", "\"12,\": a digit is missing behind \"12,\": write 12" },
	{ ".", "\".\": a number is wanted in place of \".\": write 12" },
	{ "x", "\"x\": a number is wanted in place of \"x\": write 12" },
	{ "12 x", "\"12 x\": \"x\" is left over: write 12" },
	{ "12 13", "\"12 13\": \"13\" is left over: write 12" },
	{ "12'500", "\"12'500\": \"'500\" is left over: write 12" },
	{ "12\377", "\"12\\xff\" is not UTF-8 text: write 12" },
	{ "", "nothing was given: write 12" },
	{ " \t \302\240", "nothing was given: write 12" },
};

START_TEST(what_is_no_decimal_is_refused_with_the_piece)
{
	g_autoptr(GError) err = NULL;
	struct typed t;
	struct decimal d;

	ck_assert(!(typed_init(&t, refused[_i].text, "write 12", &err) && typed_decimal(&t, &d)
		    && typed_end(&t)));
	ck_assert_str_eq(err->message, refused[_i].message);
	typed_clear(&t);
}
END_TEST

static const struct {
	const char *text;
	double value;
} clear_commas[] = {
	{ "0,125", 0.125 }, { "00,125", 0.125 }, { "1234,567", 1234.567 }, { "12,50", 12.5 },
	{ "1,2345", 1.2345 },
	{ "1.234", 1.234 }, { ",125", 0.125 }, { ".5", 0.5 }, { " 12 ", 12 },
};

START_TEST(one_comma_is_a_decimal_comma_where_it_cannot_group)
{
	g_autoptr(GError) err = NULL;
	struct typed t;
	struct decimal d;

	ck_assert_msg(typed_init(&t, clear_commas[_i].text, "", &err) && typed_decimal(&t, &d)
			      && typed_end(&t),
		      "%s", err ? err->message : "?");
	ck_assert_double_eq(decimal_value(&d, 0), clear_commas[_i].value);
	typed_clear(&t);
}
END_TEST

static const struct {
	const char *text, *plain;
} plains[] = {
	{ "12\302\240mm", "12 mm" }, { "\342\210\222" "3", "-3" }, { "1\302\275", "1 1/2" },
	{ "\342\205\234 in", "3/8 in" },
	{ "5\342\200\262 6\342\200\263", "5' 6\"" }, { "1\342\200\223" "3\342\201\204" "8", "1-3/8" },
	{ "  x  ", "x" },
	{ "12 °C", "12 °C" },
};

START_TEST(typographic_signs_become_plain)
{
	struct typed t;

	ck_assert(typed_init(&t, plains[_i].text, "", NULL));
	ck_assert_str_eq(t.plain, plains[_i].plain);
	typed_clear(&t);
}
END_TEST

START_TEST(a_unit_is_read_whole_or_not_at_all)
{
	static const struct unit units[] = { { "m", 1, 1 }, { "min", 2, 1 }, { "°C", 3, 1 }, { NULL, 0, 0 } };
	static const struct {
		const char *text;
		gint64 unit;
		const char *rest;
	} rows[] = {
		{ "min", 2, "" }, { "M", 1, "" }, { "minx", 0, "minx" }, { "mi", 0, "mi" }, { "m 3", 1, "3" },
		{ "m3", 1, "3" },
		{ "°c", 3, "" }, { "min/m", 2, "/m" }, { "3m", 0, "3m" },
	};
	const struct unit *found;
	struct typed t;

	ck_assert(typed_init(&t, rows[_i].text, "", NULL));
	found = typed_unit(&t, units);
	ck_assert_int_eq(found ? found->num : 0, rows[_i].unit);
	ck_assert_str_eq(t.at, rows[_i].rest);
	typed_clear(&t);
}
END_TEST

START_TEST(scaling_agrees_with_whole_numbers)
{
	GRand *rand = test_rand("scaling");

	for (int i = 0; i < 20000; i++) {
		/* whole + digits / 10^n, times scale, rounded half up, in integers */
		gint64 whole = g_rand_int_range(rand, 0, 100000), scale = g_rand_int_range(rand, 1, 4000),
		       power = 1, digits, result = -1;
		int n = g_rand_int_range(rand, 1, 8);
		g_autofree char *text = NULL;
		struct typed t;
		struct decimal d;

		for (int k = 0; k < n; k++)
			power *= 10;
		digits = g_rand_int_range(rand, 0, (gint32)power);
		text = g_strdup_printf("%d.%0*d", (int)whole, n, (int)digits);
		ck_assert(typed_init(&t, text, "", NULL) && typed_decimal(&t, &d));
		ck_assert(decimal_scaled(&d, scale, G_MAXINT64 / 100000, &result));
		ck_assert_int_eq(result, whole * scale + (2 * digits * scale + power) / (2 * power));
		typed_clear(&t);
	}
	g_rand_free(rand);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("A typed number is read exactly");
	TCase *tc = tcase_create("typed");

	tcase_set_timeout(tc, 60);
	tcase_add_loop_test(tc, decimals_are_scaled_exactly_and_rounded_half_up, 0, G_N_ELEMENTS(scaled));
	tcase_add_loop_test(tc, decimals_are_ratios_of_whole_numbers, 0, G_N_ELEMENTS(ratios));
	tcase_add_loop_test(tc, what_is_no_decimal_is_refused_with_the_piece, 0, G_N_ELEMENTS(refused));
	tcase_add_loop_test(tc, one_comma_is_a_decimal_comma_where_it_cannot_group, 0,
			    G_N_ELEMENTS(clear_commas));
	tcase_add_loop_test(tc, typographic_signs_become_plain, 0, G_N_ELEMENTS(plains));
	tcase_add_loop_test(tc, a_unit_is_read_whole_or_not_at_all, 0, 9);
	tcase_add_test(tc, scaling_agrees_with_whole_numbers);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
