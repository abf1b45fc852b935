/* Check values, each with its source.  SP 811: NIST Special Publication 811 (2008), appendix B.8. */
#include "base/quantity.h"

#include "absurd.h"

#include <math.h>

static gboolean
parse(const char *text, GError **err)
{
	struct quantity q;

	return quantity_parse(text, DIMENSION_COUNT, &q, err);
}

static const struct {
	const char *unit, *of;
	double value, digits; /* published, and how many digits are */
} published[] = {
	{ "in", "mm", 25.4, 15 }, /* the yard and pound agreement of 1959, exact; so are the next three */
	{ "ft", "mm", 304.8, 15 },
	{ "lb", "kg", 0.45359237, 15 },
	{ "oz", "g", 28.349523125, 15 },
	{ "ft-lb", "N·m", 1.355818, 7 }, /* SP 811, "foot pound-force" */
	{ "in-lb", "N·m", 0.1129848, 7 }, /* SP 811, "pound-force inch" */
	{ "kgf·m", "N·m", 9.80665, 15 }, /* SP 811, exact */
	{ "psi", "kPa", 6.894757, 7 }, /* SP 811 */
	{ "inHg", "kPa", 3.386389, 7 }, /* SP 811, "inch of mercury, conventional" */
	{ "mmHg", "kPa", 0.1333224, 7 }, /* SP 811, "millimeter of mercury, conventional" */
	{ "bar", "kPa", 100, 15 }, /* SP 811, exact */
	{ "kgf/cm2", "kPa", 98.0665, 15 }, /* SP 811, exact */
	{ "gal", "L", 3.785412, 7 }, /* SP 811, "gallon (U.S.)"; 231 cubic inches */
	{ "qt", "L", 0.9463529, 7 }, /* SP 811, "quart (U.S. liquid)" */
	{ "pt", "L", 0.4731765, 7 }, /* SP 811, "pint (U.S. liquid)" */
	{ "fl oz", "mL", 29.57353, 7 }, /* SP 811, "ounce (U.S. fluid)" */
	{ "imp gal", "L", 4.54609, 15 }, /* SP 811, "gallon [Canadian and U.K. (Imperial)]", exact */
	{ "imp qt", "L", 1.1365225, 15 }, /* a quarter of it */
};

START_TEST(a_factor_is_the_published_one_to_its_last_digit)
{
	double got = quantity_convert(1, published[_i].unit, published[_i].of), want = published[_i].value;

	ck_assert_double_le(fabs(got - want), want * .5001 * pow(10, 1 - published[_i].digits));
	ck_assert_double_le(fabs(quantity_convert(got, published[_i].of, published[_i].unit) - 1), 1e-14);
}
END_TEST

START_TEST(one_foot_pound_is_twelve_inch_pounds)
{
	ck_assert_double_eq_tol(quantity_convert(1, "ft-lb", "in-lb"), 12, 1e-13);
	ck_assert_double_eq_tol(quantity_convert(1, "gal", "fl oz"), 128, 1e-12);
}
END_TEST

START_TEST(what_measures_something_else_is_not_converted)
{
	ck_assert(isnan(quantity_convert(1, "ft-lb", "psi")));
	ck_assert(isnan(quantity_convert(1, "F", "C")));
	ck_assert(isnan(quantity_convert(1, "furlong", "mm")));
}
END_TEST

static const struct {
	const char *text;
	enum dimension dimension;
	const char *unit;
	double low, high;
} taken[] = {
	{ "60 ft-lb", DIMENSION_TORQUE, "ft-lb", 81.349, 81.349 },
	{ "60 lb-ft", DIMENSION_TORQUE, "ft-lb", 81.349, 81.349 },
	{ "60 ft.lbs", DIMENSION_TORQUE, "ft-lb", 81.349, 81.349 },
	{ "60 Ft Lbs.", DIMENSION_TORQUE, "ft-lb", 81.349, 81.349 },
	{ "60 foot-pounds", DIMENSION_TORQUE, "ft-lb", 81.349, 81.349 },
	{ "60-70 ft-lb", DIMENSION_TORQUE, "ft-lb", 81.349, 94.907 },
	{ "60 to 70 ft-lb", DIMENSION_TORQUE, "ft-lb", 81.349, 94.907 },
	{ "60..70 ft-lb", DIMENSION_TORQUE, "ft-lb", 81.349, 94.907 },
	{ "60\342\200\223" "70 ft-lb", DIMENSION_TORQUE, "ft-lb", 81.349, 94.907 },
	{ "60 ft-lb - 70 ft-lb", DIMENSION_TORQUE, "ft-lb", 81.349, 94.907 },
	{ "120 in-lb - 15 ft-lb", DIMENSION_TORQUE, "ft-lb", 13.558, 20.337 },
	{ "180 in-lb", DIMENSION_TORQUE, "in-lb", 20.337, 20.337 },
	{ "180 inch pounds", DIMENSION_TORQUE, "in-lb", 20.337, 20.337 },
	{ "81 N·m", DIMENSION_TORQUE, "N·m", 81, 81 },
	{ "81 Nm", DIMENSION_TORQUE, "N·m", 81, 81 },
	{ "81 N.m", DIMENSION_TORQUE, "N·m", 81, 81 },
	{ "8.3 kgf·m", DIMENSION_TORQUE, "kgf·m", 81.395, 81.395 },
	{ "14 psi", DIMENSION_PRESSURE, "psi", 96.527, 96.527 },
	{ "15 inHg", DIMENSION_PRESSURE, "inHg", 50.796, 50.796 },
	{ "15\" Hg", DIMENSION_PRESSURE, "inHg", 50.796, 50.796 },
	{ "0,8-1,1 bar", DIMENSION_PRESSURE, "bar", 80, 110 },
	{ "1 kg/cm2", DIMENSION_PRESSURE, "kgf/cm2", 98.0665, 98.0665 },
	{ "-5 psi", DIMENSION_PRESSURE, "psi", -34.474, -34.474 },
	{ "5 qt", DIMENSION_VOLUME, "qt", 4.7318, 4.7318 },
	{ "4-1/2 US qt", DIMENSION_VOLUME, "qt", 4.2586, 4.2586 },
	{ "1/2 gal", DIMENSION_VOLUME, "gal", 1.8927, 1.8927 },
	{ "5 imperial quarts", DIMENSION_VOLUME, "imp qt", 5.6826, 5.6826 },
	{ "16 fl. oz.", DIMENSION_VOLUME, "fl oz", .47318, .47318 },
	{ "900 ml", DIMENSION_VOLUME, "mL", .9, .9 },
	{ "900 cc", DIMENSION_VOLUME, "mL", .9, .9 },
	{ "3 lbs", DIMENSION_MASS, "lb", 1.36078, 1.36078 },
	{ "3/8 in", DIMENSION_LENGTH, "in", 9.525, 9.525 },
	{ "1-3/8 in", DIMENSION_LENGTH, "in", 34.925, 34.925 },
	{ "1/4-3/8 in", DIMENSION_LENGTH, "in", 6.35, 9.525 },
	{ "1-1/4 - 1-3/8 in", DIMENSION_LENGTH, "in", 31.75, 34.925 },
	{ ".028-.032 in", DIMENSION_LENGTH, "in", .7112, .8128 },
	{ "18 ft 6 in", DIMENSION_LENGTH, "in", 5638.8, 5638.8 },
	{ "160 F", DIMENSION_TEMPERATURE, "F", 71.111, 71.111 },
	{ "160-170 °F", DIMENSION_TEMPERATURE, "F", 71.111, 76.667 },
	{ "10 F", DIMENSION_WARMING, "F", 5.5556, 5.5556 },
	{ "-950 mV", DIMENSION_VOLTAGE, "mV", -.95, -.95 },
	{ "10 °", DIMENSION_ANGLE, "deg", 10, 10 },
	{ "650-700 rpm", DIMENSION_TURNS, "rpm", 650, 700 },
};

START_TEST(a_quantity_is_read_as_people_write_it)
{
	g_autoptr(GError) err = NULL;
	struct quantity q;

	ck_assert_msg(quantity_parse(taken[_i].text, taken[_i].dimension, &q, &err), "%s", err ? err->message : "?");
	ck_assert_str_eq(q.unit->name, taken[_i].unit);
	ck_assert_double_eq_tol(q.low, taken[_i].low, fabs(taken[_i].low) * 1e-4);
	ck_assert_double_eq_tol(q.high, taken[_i].high, fabs(taken[_i].high) * 1e-4);
	if (taken[_i].dimension == DIMENSION_WARMING)
		return;
	ck_assert_msg(quantity_parse(taken[_i].text, DIMENSION_COUNT, &q, &err), "%s", err ? err->message : "?");
	ck_assert_int_eq(q.dimension, taken[_i].dimension);
}
END_TEST

static const struct {
	const char *text;
	enum dimension dimension;
	const char *message;
} refused[] = {
	{ "60", DIMENSION_TORQUE, "ft-lb and in-lb differ twelve times" },
	{ "60-70", DIMENSION_TORQUE, "ft-lb and in-lb differ twelve times" },
	{ "60 lb", DIMENSION_TORQUE, "lb is a weight: ft-lb and in-lb differ twelve times" },
	{ "14", DIMENSION_PRESSURE, "in which unit? psi, kPa and bar differ much" },
	{ "14 ft-lb", DIMENSION_PRESSURE, "ft-lb is a unit of torque, where a pressure is wanted" },
	{ "16 oz", DIMENSION_VOLUME, "oz is a weight: write fl oz for a volume" },
	{ "5 pecks", DIMENSION_VOLUME, "\"pecks\" is no unit known here for a volume" },
	{ "-60 ft-lb", DIMENSION_TORQUE, "a torque cannot be negative" },
	{ "70-60 ft-lb", DIMENSION_TORQUE, "write the smaller one first" },
	{ "60-70-80 ft-lb", DIMENSION_TORQUE, "\"70-80 ft-lb\": a fraction is wanted" },
	{ "ft-lb", DIMENSION_TORQUE, "a number is missing" },
	{ "tight", DIMENSION_COUNT, "a number is missing" },
	{ "60 ft-lb 5", DIMENSION_TORQUE, "in which unit?" },
	{ "1,234 psi", DIMENSION_PRESSURE, "can be 1.234 or 1234" },
	{ "10 mil", DIMENSION_LENGTH, "some a millimetre" },
	{ "10", DIMENSION_COUNT, "in which unit?" },
};

START_TEST(what_is_no_such_quantity_is_refused_with_the_reason)
{
	g_autoptr(GError) err = NULL;
	struct quantity q = { .low = -1 };

	ck_assert(!quantity_parse(refused[_i].text, refused[_i].dimension, &q, &err));
	ck_assert_msg(strstr(err->message, refused[_i].message) != NULL, "%s", err->message);
	ck_assert_double_eq(q.low, -1);
}
END_TEST

static const struct {
	const char *text;
	enum dimension dimension;
	const char *both;
} shown[] = {
	{ "60 ft-lb", DIMENSION_TORQUE, "60 ft-lb (81 N·m)" },
	{ "60-70 ft-lb", DIMENSION_TORQUE, "60-70 ft-lb (81-95 N·m)" },
	{ "81 N·m", DIMENSION_TORQUE, "81 N·m (60 ft-lb)" },
	{ "12 Nm", DIMENSION_TORQUE, "12 Nm (106 in-lb)" },
	{ "3/8 in", DIMENSION_LENGTH, "3/8 in (9.53 mm)" },
	{ "1/4\"", DIMENSION_LENGTH, "1/4\" (6.35 mm)" },
	{ "9.5 mm", DIMENSION_LENGTH, "9.5 mm (0.374 in; nearest 3/8 in)" },
	{ "6.35 mm", DIMENSION_LENGTH, "6.35 mm (1/4 in)" },
	{ "0.8 mm", DIMENSION_LENGTH, "0.8 mm (0.0315 in)" },
	{ "18 ft 6 in", DIMENSION_LENGTH, "18 ft 6 in (5.64 m)" },
	{ "14 psi", DIMENSION_PRESSURE, "14 psi (97 kPa)" },
	{ "1 bar", DIMENSION_PRESSURE, "1 bar (14.5 psi)" },
	{ "5 qt", DIMENSION_VOLUME, "5 qt (4.73 L)" },
	{ "4.7 L", DIMENSION_VOLUME, "4.7 L (4.97 qt)" },
	{ "10 fl oz", DIMENSION_VOLUME, "10 fl oz (296 mL)" },
	{ "160 F", DIMENSION_TEMPERATURE, "160 F (71 C)" },
	{ "71 C", DIMENSION_TEMPERATURE, "71 C (160 F)" },
	{ "-10 C", DIMENSION_TEMPERATURE, "-10 C (14 F)" },
	{ "10 F", DIMENSION_WARMING, "10 F (5.56 C)" }, /* 10 x 5/9, not the temperature of -12 C */
	{ "12.65 V", DIMENSION_VOLTAGE, "12.65 V" },
	{ "hand tight", DIMENSION_COUNT, "hand tight" },
};

START_TEST(the_other_system_stands_beside_what_was_typed)
{
	g_autofree char *both = quantity_both(shown[_i].text, shown[_i].dimension);

	ck_assert_str_eq(both, shown[_i].both);
}
END_TEST

START_TEST(a_limit_is_shown_in_the_chosen_system_first)
{
	g_autofree char *inch = quantity_words(6.35, "mm", UNITS_INCH), *metric = quantity_words(6.35, "mm", UNITS_METRIC),
			*thin = quantity_words(.0762, "mm", UNITS_INCH);

	ck_assert_str_eq(inch, "1/4 in (6.35 mm)");
	ck_assert_str_eq(metric, "6.35 mm (1/4 in)");
	ck_assert_str_eq(thin, "0.003 in (0.0762 mm)");
	ck_assert_ptr_null(quantity_words(12.6, "V", UNITS_INCH));
	ck_assert_ptr_null(quantity_words(1, "", UNITS_INCH));
}
END_TEST

START_TEST(case_counts_where_two_units_differ_by_nothing_else)
{
	ck_assert_str_eq(quantity_unit("MPa")->name, "MPa");
	ck_assert_str_eq(quantity_unit("mpa")->name, "MPa");
	ck_assert_str_eq(quantity_unit("M\u03a9")->name, "Mohm");
	ck_assert_str_eq(quantity_unit("m\u03a9")->name, "mohm");
	ck_assert_str_eq(quantity_unit("A")->name, "A");
	ck_assert_str_eq(quantity_unit("a")->name, "a");
}
END_TEST

START_TEST(absurd_text_is_refused_without_harm)
{
	GRand *rand = test_rand("absurd");

	assert_refuses_absurd(parse);
	assert_random_harmless(parse, "0123456789.,/- to\"'ftlbNmpsiqa%", rand);
	g_rand_free(rand);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("A quantity keeps its unit");
	TCase *tc = tcase_create("quantities");

	tcase_set_timeout(tc, 60);
	tcase_add_loop_test(tc, a_factor_is_the_published_one_to_its_last_digit, 0, G_N_ELEMENTS(published));
	tcase_add_test(tc, one_foot_pound_is_twelve_inch_pounds);
	tcase_add_test(tc, what_measures_something_else_is_not_converted);
	tcase_add_loop_test(tc, a_quantity_is_read_as_people_write_it, 0, G_N_ELEMENTS(taken));
	tcase_add_loop_test(tc, what_is_no_such_quantity_is_refused_with_the_reason, 0, G_N_ELEMENTS(refused));
	tcase_add_loop_test(tc, the_other_system_stands_beside_what_was_typed, 0, G_N_ELEMENTS(shown));
	tcase_add_test(tc, a_limit_is_shown_in_the_chosen_system_first);
	tcase_add_test(tc, case_counts_where_two_units_differ_by_nothing_else);
	tcase_add_test(tc, absurd_text_is_refused_without_harm);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
