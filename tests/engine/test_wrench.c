/* The table of the trade, and the formula by which its angles are worked out. */
#include "engine/wrench.h"

#include <check.h>
#include <math.h>
#include <stdlib.h>

#include "published.h"

/* Angles as the trade's table prints them, 0 where a tool binds or does not go on.  It names no limits for each, and ours
 * are from memory: within two degrees they have to agree. */
static const struct {
	int num, den; /* inches */
	double metric;
	enum wrench_fit metric_on_inch;
	double metric_degrees;
	enum wrench_fit inch_on_metric;
	double inch_degrees;
	enum wrench_verdict verdict;
	double difference;
} pairs[] = {
	{ 5, 16, 8, WRENCH_FITS, 7, WRENCH_FITS, 5, WRENCH_EITHER, .06 },
	{ 3, 8, 10, WRENCH_LOOSE, 12, WRENCH_REFUSES, 0, WRENCH_NEITHER, .47 },
	{ 7, 16, 11, WRENCH_BINDS, 0, WRENCH_FITS, 5, WRENCH_INCH_DOES, -.11 },
	{ 1, 2, 13, WRENCH_LOOSE, 7, WRENCH_REFUSES, 0, WRENCH_METRIC_LIGHT, .30 },
	{ 9, 16, 14, WRENCH_REFUSES, 0, WRENCH_LOOSE, 6, WRENCH_INCH_LIGHT, -.29 },
	{ 5, 8, 16, WRENCH_FITS, 5, WRENCH_BINDS, 0, WRENCH_METRIC_DOES, .12 },
	{ 11, 16, 17, WRENCH_REFUSES, 0, WRENCH_LOOSE, 7, WRENCH_INCH_LIGHT, -.46 },
	{ 11, 16, 18, WRENCH_LOOSE, 8, WRENCH_REFUSES, 0, WRENCH_NEITHER, .54 },
	{ 3, 4, 19, WRENCH_BINDS, 0, WRENCH_FITS, 4, WRENCH_EITHER, -.05 },
	{ 13, 16, 21, WRENCH_LOOSE, 6, WRENCH_REFUSES, 0, WRENCH_METRIC_LIGHT, .36 },
	{ 7, 8, 22, WRENCH_BINDS, 0, WRENCH_FITS, 4, WRENCH_INCH_DOES, -.22 },
	{ 15, 16, 24, WRENCH_FITS, 4, WRENCH_BINDS, 0, WRENCH_METRIC_DOES, .19 },
	{ 17, 16, 27, WRENCH_FITS, 4, WRENCH_FITS, 3, WRENCH_EITHER, .01 },
	{ 9, 8, 29, WRENCH_LOOSE, 6, WRENCH_REFUSES, 0, WRENCH_NEITHER, .42 },
	{ 5, 4, 32, WRENCH_FITS, 4, WRENCH_BINDS, 0, WRENCH_METRIC_DOES, .25 },
	{ 23, 16, 36, WRENCH_REFUSES, 0, WRENCH_LOOSE, 6, WRENCH_NEITHER, -.51 },
	{ 3, 2, 38, WRENCH_BINDS, 0, WRENCH_FITS, 3, WRENCH_EITHER, -.10 },
};

static void
check_play(const struct wrench_play *got, enum wrench_fit fit, double degrees)
{
	ck_assert_int_eq(got->fit, fit);
	if (fit == WRENCH_FITS || fit == WRENCH_LOOSE)
		ck_assert_double_eq_tol(got->degrees, degrees, 2);
}

START_TEST(a_pair_is_judged_as_the_trade_has_it)
{
	struct wrench_pair p;

	ck_assert(wrench_judge(pairs[_i].num * 25.4 / pairs[_i].den, pairs[_i].metric, &p));
	ck_assert_double_eq_tol(p.difference, pairs[_i].difference, .0101);
	check_play(&p.metric_on_inch, pairs[_i].metric_on_inch, pairs[_i].metric_degrees);
	check_play(&p.inch_on_metric, pairs[_i].inch_on_metric, pairs[_i].inch_degrees);
	ck_assert_int_eq(p.verdict, pairs[_i].verdict);
}
END_TEST

/* The corner of the hexagon, turned by that angle, touches the opening's flat: geometry by another way. */
START_TEST(at_the_angle_the_corner_touches_the_flat)
{
	for (double opening = 10.01; opening < 11.5; opening += .01) {
		double corner = 10 / sqrt(3), turned = (30 - wrench_turn(10, opening)) * acos(-1) / 180;

		ck_assert_double_eq_tol(corner * cos(turned), opening / 2, 1e-9);
	}
	ck_assert_double_eq(wrench_turn(10, 10), 0);
	ck_assert_double_eq(wrench_turn(10, 9.9), 0);
	ck_assert_double_eq(wrench_turn(10, 10 * 2 / sqrt(3) + 1e-9), 30);
}
END_TEST

START_TEST(the_right_wrench_goes_on_every_head_and_bites_within_7_degrees)
{
	for (guint i = 0; i < G_N_ELEMENTS(pairs); i++) {
		double inch = pairs[i].num * 25.4 / pairs[i].den;
		struct hex_limits head, opening = wrench_inch_opening(inch);
		struct wrench_play p;

		ck_assert(wrench_inch_head(inch, &head));
		p = wrench_play(&head, &opening);
		ck_assert_int_eq(p.fit, WRENCH_FITS);
		ck_assert_double_le(p.degrees, 7);
		head = wrench_metric_head(pairs[i].metric);
		opening = wrench_metric_opening(pairs[i].metric);
		p = wrench_play(&head, &opening);
		ck_assert_int_eq(p.fit, WRENCH_FITS);
		ck_assert_double_le(p.degrees, 7);
	}
}
END_TEST

START_TEST(an_unknown_inch_size_has_no_verdict)
{
	struct wrench_pair p;

	ck_assert(!wrench_judge(16, 16, &p));
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("A wrench fits, binds, is loose, or does not go on");
	TCase *tc = tcase_create("wrenches");

	tcase_add_loop_test(tc, a_pair_is_judged_as_the_trade_has_it, 0, G_N_ELEMENTS(pairs));
	tcase_add_test(tc, at_the_angle_the_corner_touches_the_flat);
	tcase_add_test(tc, the_right_wrench_goes_on_every_head_and_bites_within_7_degrees);
	tcase_add_test(tc, an_unknown_inch_size_has_no_verdict);
	suite_add_tcase(suite, tc);
	return run_all(suite);
}
