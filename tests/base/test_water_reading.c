#include "base/amount.h"
#include "base/err.h"

#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

static const struct {
	const char *text;
	enum water_scale scale;
	double value, celsius;
	gboolean compensated;
} readings[] = {
	{ "18 PSU", WATER_SALINITY, 18, (double)NAN, FALSE },
	{ " 0,5psu ", WATER_SALINITY, .5, (double)NAN, FALSE },
	{ "12 ppt", WATER_SALINITY, 12, (double)NAN, FALSE },
	{ "35‰", WATER_SALINITY, 35, (double)NAN, FALSE },
	{ "42 mS/cm at 18 C", WATER_CONDUCTIVITY, 42, 18, FALSE },
	{ "42mS/cm @ 64.4F", WATER_CONDUCTIVITY, 42, 18, FALSE },
	{ "4.2 S/m at 18 °C", WATER_CONDUCTIVITY, 42, 18, FALSE },
	{ "42 dS/m at -1 C", WATER_CONDUCTIVITY, 42, -1, FALSE },
	{ "480 uS/cm at 10 C", WATER_CONDUCTIVITY, .48, 10, FALSE },
	{ "480 µS/cm compensated", WATER_CONDUCTIVITY, .48, (double)NAN, TRUE },
	{ "1.018 at 15 C", WATER_GRAVITY, 1.018, 15, FALSE },
	{ "1.018 SG at 59 F", WATER_GRAVITY, 1.018, 15, FALSE },
};

START_TEST(a_reading_keeps_its_scale)
{
	struct water_reading r;
	GError *err = NULL;

	ck_assert_msg(water_reading_parse(readings[_i].text, &r, &err), "%s", err ? err->message : "?");
	ck_assert_int_eq(r.scale, readings[_i].scale);
	ck_assert_double_eq_tol(r.value, readings[_i].value, 1e-12);
	if (isnan(readings[_i].celsius))
		ck_assert(isnan(r.celsius));
	else
		ck_assert_double_eq_tol(r.celsius, readings[_i].celsius, 1e-12);
	ck_assert_int_eq(r.compensated, readings[_i].compensated);
}
END_TEST

static const struct {
	const char *text, *words;
} wrong[] = {
	{ "", "nothing was given" },
	{ "salty", "a number is wanted" },
	{ "18", "of what? write a salinity such as 18 PSU" },
	{ "1.018", "of what?" },
	{ "1.018 SG", "of what?" },
	{ "1,018 at 15 C", "write it without the comma" },
	{ "-3 PSU", "negative" },
	{ "18 PSU at 15 C", "\"at 15 C\" is left over" },
	{ "12 knots", "\"knots\" is left over" },
	{ "42 mS at 18 C", "mS/cm, uS/cm or S/m" },
	{ "42 mS/inch at 18 C", "mS/cm, uS/cm or S/m" },
	{ "42 mS/cm", "at what temperature" },
	{ "42 mS/cm today", "left over" },
	{ "42 mS/cm compensated twice", "left over" },
	{ "42 mS/cm at 18", "on which scale" },
	{ "1.018 at noon", "a number is wanted" },
};

START_TEST(what_is_wrong_is_told_and_nothing_is_altered)
{
	struct water_reading r = { WATER_GRAVITY, 7, 8, TRUE };
	GError *err = NULL;

	ck_assert(!water_reading_parse(wrong[_i].text, &r, &err));
	ck_assert_int_eq(err->code, ERR_INPUT);
	ck_assert_msg(strstr(err->message, wrong[_i].words) != NULL, "%s: %s", wrong[_i].text, err->message);
	ck_assert(r.scale == WATER_GRAVITY && r.value > 6 && r.celsius > 7 && r.compensated);
	g_error_free(err);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("base/water_reading");
	TCase *tc = tcase_create("readings");
	SRunner *sr = srunner_create(s);
	int failed;

	tcase_add_loop_test(tc, a_reading_keeps_its_scale, 0, G_N_ELEMENTS(readings));
	tcase_add_loop_test(tc, what_is_wrong_is_told_and_nothing_is_altered, 0, G_N_ELEMENTS(wrong));
	suite_add_tcase(s, tc);
	srunner_run_all(sr, CK_ENV);
	failed = srunner_ntests_failed(sr);
	srunner_free(sr);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
