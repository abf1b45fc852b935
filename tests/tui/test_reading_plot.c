/* Readings over time in cells. */
#include "tui/reading_plot.h"

#include <check.h>
#include <math.h>
#include <stdlib.h>

static const struct condition_kind anode_left = {
	.what = "anode-left", .unit = "%", .most = 100, .water = WATER_COUNT, .standing = "published", .source = "",
	.bands = { WORSE_LESS, { { 75, TRUE, FALSE }, { .value = NAN } }, { { 50, TRUE, FALSE }, { .value = NAN } } },
};

START_TEST(a_plot_marks_readings_and_limits_with_their_numbers)
{
	static const struct plot_point read[] = { { 0, 100 }, { 50, 80 }, { 100, 40 } };
	g_autoptr(GArray) points = g_array_new(FALSE, FALSE, sizeof(struct plot_point));
	struct measure_limits l = measure_limits_of(&anode_left, NULL, NONE);
	struct grid *g = grid_new(PLOT_ROWS, 40, TRUE);
	struct area a = grid_area(g);
	g_autofree char *drawn = NULL;

	g_array_append_vals(points, read, 1);
	ck_assert(!plot_is_worth_it(points));
	g_array_append_vals(points, read + 1, 2);
	ck_assert(plot_is_worth_it(points));
	plot_draw(&a, points, &l);
	drawn = grid_text(g);
	ck_assert_str_eq(drawn, "      100 %|*\n"
				"           |\n"
				"       75 %|----------*----------- watch\n"
				"           |\n"
				"       50 %|---------------------- stop\n"
				"       40 %|                     *\n"
				"            1 Jan 1970 11 Apr 1970\n");
	grid_free(g);
}
END_TEST

START_TEST(a_plot_of_one_value_has_no_range_and_is_drawn)
{
	static const struct plot_point read[] = { { 0, 0 }, { 9, 0 } };
	g_autoptr(GArray) points = g_array_new(FALSE, FALSE, sizeof(struct plot_point));
	struct measure_limits l = measure_limits_of(&anode_left, NULL, NONE);

	l.bands.watch[0].value = l.bands.stop[0].value = NAN;
	g_array_append_vals(points, read, 2);
	for (int w = 0; w < 60; w++) {
		struct grid *g = grid_new(PLOT_ROWS, w, FALSE);
		struct area a = grid_area(g);

		plot_draw(&a, points, &l);
		grid_free(g);
	}
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Reading plot");
	SRunner *runner = srunner_create(s);
	TCase *tc = tcase_create("plot");
	int failed;

	tcase_add_test(tc, a_plot_marks_readings_and_limits_with_their_numbers);
	tcase_add_test(tc, a_plot_of_one_value_has_no_range_and_is_drawn);
	suite_add_tcase(s, tc);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
