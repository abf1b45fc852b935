#include "engine/condition.h"

#include "published.h"

#define NOT_KNOWN NAN

/* Bounds as they are printed or said in practice; each row's source stands in the table under test. */
static const struct {
	const char *what;
	double value;
	const char *unit;
	double psu;
	enum verdict verdict;
} readings[] = {
	{ "anode-left", 100, "%", NOT_KNOWN, VERDICT_GOOD },
	{ "anode-left", 75.5, "%", NOT_KNOWN, VERDICT_GOOD },
	{ "anode-left", 75, "%", NOT_KNOWN, VERDICT_WATCH },
	{ "anode-left", 51, "%", NOT_KNOWN, VERDICT_WATCH },
	{ "anode-left", 50, "%", NOT_KNOWN, VERDICT_STOP }, /* renew at half */
	{ "anode-left", 0, "%", NOT_KNOWN, VERDICT_STOP },
	{ "bearing-roughness", 0, "grade", NOT_KNOWN, VERDICT_GOOD },
	{ "bearing-roughness", 1, "grade", NOT_KNOWN, VERDICT_WATCH },
	{ "bearing-roughness", 2, "grade", NOT_KNOWN, VERDICT_STOP },
	{ "bearing-roughness", 3, "grade", NOT_KNOWN, VERDICT_STOP },
	{ "hub-roughness", 1, "grade", NOT_KNOWN, VERDICT_WATCH },
	{ "bellows-fold", 2, "grade", NOT_KNOWN, VERDICT_STOP },
	{ "gear-oil-water", 0, "%", NOT_KNOWN, VERDICT_GOOD },
	{ "gear-oil-water", .06, "%", NOT_KNOWN, VERDICT_GOOD }, /* stays dissolved */
	{ "gear-oil-water", .1, "%", NOT_KNOWN, VERDICT_WATCH },
	{ "gear-oil-water", .2, "%", NOT_KNOWN, VERDICT_WATCH },
	{ "gear-oil-water", .5, "%", NOT_KNOWN, VERDICT_STOP },
	{ "compression-spread", 10, "%", NOT_KNOWN, VERDICT_GOOD },
	{ "compression-spread", 11, "%", NOT_KNOWN, VERDICT_WATCH },
	{ "compression-spread", 25, "%", NOT_KNOWN, VERDICT_WATCH },
	{ "compression-spread", 26, "%", NOT_KNOWN, VERDICT_STOP },
	{ "steering-play", 1.5875, "mm", NOT_KNOWN, VERDICT_GOOD }, /* 1/16 in */
	{ "steering-play", 3.175, "mm", NOT_KNOWN, VERDICT_WATCH },
	{ "steering-play", 3.1749999999999998, "mm", NOT_KNOWN, VERDICT_WATCH },
	{ "steering-play", 6.35, "mm", NOT_KNOWN, VERDICT_WATCH },
	{ "steering-play", 3. / 8, "in", NOT_KNOWN, VERDICT_STOP },
	{ "belt-deflection", 12.7, "mm", NOT_KNOWN, VERDICT_GOOD },
	{ "belt-deflection", 15.875, "mm", NOT_KNOWN, VERDICT_WATCH },
	{ "belt-deflection", 19.049999999999997, "mm", NOT_KNOWN, VERDICT_WATCH }, /* 3/4 in */
	{ "belt-deflection", .75, "in", NOT_KNOWN, VERDICT_WATCH },
	{ "belt-deflection", 2, "cm", NOT_KNOWN, VERDICT_STOP },
	{ "rest-voltage", 12.65, "V", NOT_KNOWN, VERDICT_GOOD },
	{ "rest-voltage", 12.6, "V", NOT_KNOWN, VERDICT_GOOD },
	{ "rest-voltage", 12.5, "V", NOT_KNOWN, VERDICT_WATCH },
	{ "rest-voltage", 12300, "mV", NOT_KNOWN, VERDICT_WATCH },
	{ "rest-voltage", 12.2, "V", NOT_KNOWN, VERDICT_STOP },
	{ "charging-voltage", 14.2, "V", NOT_KNOWN, VERDICT_GOOD },
	{ "charging-voltage", 13.5, "V", NOT_KNOWN, VERDICT_WATCH },
	{ "charging-voltage", 13.1, "V", NOT_KNOWN, VERDICT_STOP },
	{ "charging-voltage", 14.7, "V", NOT_KNOWN, VERDICT_WATCH },
	{ "charging-voltage", 14.9, "V", NOT_KNOWN, VERDICT_STOP },
	{ "coolant-ph", 12, "pH", NOT_KNOWN, VERDICT_WATCH }, /* nothing to stop at above */
	{ "coolant-ph", 6.9, "pH", NOT_KNOWN, VERDICT_STOP },
	{ "leakage-current", .031, "A", NOT_KNOWN, VERDICT_STOP },
	{ "jet-clearance", 1, "mm", NOT_KNOWN, VERDICT_WATCH },
	{ "fuel-hose-age", 11, "a", NOT_KNOWN, VERDICT_STOP },
	{ "half-cell-aluminium-drive", -950, "mV", 35, VERDICT_GOOD },
	{ "half-cell-aluminium-drive", -900, "mV", 35, VERDICT_GOOD },
	{ "half-cell-aluminium-drive", -870, "mV", 35, VERDICT_WATCH },
	{ "half-cell-aluminium-drive", -840, "mV", 35, VERDICT_STOP },
	{ "half-cell-aluminium-drive", -1.075, "V", 35, VERDICT_WATCH },
	{ "half-cell-aluminium-drive", -1110, "mV", 30, VERDICT_STOP }, /* too much hurts aluminium too */
	{ "half-cell-steel", -900, "mV", 35, VERDICT_GOOD },
	{ "half-cell-steel", -700, "mV", 35, VERDICT_STOP },
	{ "half-cell-bronze-gear", -760, "mV", 35, VERDICT_GOOD },
	{ "half-cell-bronze", -1200, "mV", 35, VERDICT_GOOD },
	{ "half-cell-bronze", -450, "mV", 35, VERDICT_STOP },
	{ "half-cell-stainless", -600, "mV", 35, VERDICT_WATCH },
	{ "half-cell-wood", -575, "mV", 35, VERDICT_GOOD },
	{ "half-cell-wood", -700, "mV", 35, VERDICT_STOP },
};

START_TEST(each_reading_has_its_verdict)
	{
		const struct condition_kind *kind = condition_kind_of(readings[_i].what);
		struct condition_in in = { readings[_i].value, readings[_i].unit, readings[_i].psu };
		struct condition_out out;

		ck_assert_msg(kind != NULL, "%s: no such kind", readings[_i].what);
		condition_judge(kind, NULL, &in, &out);
		ck_assert_msg(out.verdict == readings[_i].verdict, "%s %g %s: verdict %d, not %d (%s)",
			      kind->what, in.value, in.unit, (int)out.verdict, (int)readings[_i].verdict,
			      kind->source);
		ck_assert_int_eq(out.unjudged, UNJUDGED_NOT);
		ck_assert_int_eq(isnan(out.passed.value) != 0, out.verdict == VERDICT_GOOD);
	}
END_TEST

static const struct {
	const char *what;
	double value;
	const char *unit;
	double psu;
	enum unjudged unjudged;
} refused[] = {
	{ "half-cell-aluminium-drive", -950, "mV", .2,
	  UNJUDGED_WATER }, /* in fresh water it reads little whatever is right */
	{ "half-cell-aluminium-drive", -950, "mV", 18, UNJUDGED_WATER },
	{ "half-cell-aluminium-drive", -950, "mV", NOT_KNOWN, UNJUDGED_WATER },
	{ "half-cell-aluminium-drive", 950, "mV", 35, UNJUDGED_SIGN },
	{ "half-cell-aluminium-drive", .95, "V", 35, UNJUDGED_SIGN },
	{ "half-cell-steel", -1701, "mV", 35, UNJUDGED_RANGE },
	{ "half-cell-steel", 1701, "mV", 35, UNJUDGED_RANGE },
	{ "half-cell-steel", -.9, "mm", 35, UNJUDGED_UNIT },
	{ "anode-left", 101, "%", NOT_KNOWN, UNJUDGED_RANGE },
	{ "anode-left", -1, "%", NOT_KNOWN, UNJUDGED_RANGE },
	{ "anode-left", 3, "mm", NOT_KNOWN, UNJUDGED_UNIT },
	{ "anode-left", NAN, "%", NOT_KNOWN, UNJUDGED_UNIT },
	{ "bearing-roughness", 4, "grade", NOT_KNOWN, UNJUDGED_RANGE },
	{ "rest-voltage", 25.2, "V", NOT_KNOWN, UNJUDGED_RANGE }, /* two batteries in a row */
};

START_TEST(some_readings_have_none)
	{
		struct condition_in in = { refused[_i].value, refused[_i].unit, refused[_i].psu };
		struct condition_out out;

		condition_judge(condition_kind_of(refused[_i].what), NULL, &in, &out);
		ck_assert_int_eq(out.verdict, VERDICT_NONE);
		ck_assert_int_eq(out.unjudged, refused[_i].unjudged);
		ck_assert(isnan(out.passed.value));
	}
END_TEST

START_TEST(the_bound_passed_is_told)
	{
		struct condition_in in = { .5, "in", NOT_KNOWN };
		struct condition_out out;

		condition_judge(condition_kind_of("steering-play"), NULL, &in, &out);
		ck_assert_double_eq_tol(out.value, 12.7, 1e-9);
		ck_assert_double_eq(out.passed.value, 6.35);
		ck_assert(out.passed.above);
		in = (struct condition_in){ 13, "V", NOT_KNOWN };
		condition_judge(condition_kind_of("charging-voltage"), NULL, &in, &out);
		ck_assert_ptr_null(condition_kind_of("no-such-thing"));
		ck_assert_double_eq(out.passed.value, 13.2);
		ck_assert(!out.passed.above);
		in = (struct condition_in){ 2, "grade", NOT_KNOWN };
		condition_judge(condition_kind_of("bearing-roughness"), NULL, &in, &out);
		ck_assert_msg(out.passed.above, "at the bound itself, too");
	}
END_TEST

START_TEST(the_manual_wins)
	{
		static const struct bands manual = { WORSE_MORE,
						     { { 0, FALSE, FALSE }, { 1, TRUE, FALSE } },
						     { { 0, FALSE, FALSE }, { 2, FALSE, FALSE } } };
		struct condition_in in = { 2.5, "mm", NOT_KNOWN };
		struct condition_out out;

		condition_judge(condition_kind_of("steering-play"), &manual, &in, &out);
		ck_assert_int_eq(out.verdict, VERDICT_STOP);
		ck_assert_double_eq(out.passed.value, 2);
	}
END_TEST

START_TEST(every_kind_is_whole)
	{
		const struct condition_kind *k = &condition_kinds[_i];
		const struct edge *watch = k->bands.watch, *stop = k->bands.stop;

		ck_assert_ptr_eq(condition_kind_of(k->what), k);
		ck_assert(!strcmp(k->standing, "published") || !strcmp(k->standing, "practice")
			  || !strcmp(k->standing, "memory"));
		ck_assert(*k->how && *k->source && k->least < k->most);
		/* One watches before one stops. */
		ck_assert_msg(!(watch[0].value < stop[0].value) && !(watch[1].value > stop[1].value), "%s",
			      k->what);
		ck_assert_msg(!(watch[0].value > watch[1].value), "%s", k->what);
		ck_assert(!isnan(stop[0].value) || !isnan(stop[1].value));
		ck_assert(k->bands.worse != WORSE_MORE || (isnan(watch[0].value) && isnan(stop[0].value)));
		ck_assert(k->bands.worse != WORSE_LESS || (isnan(watch[1].value) && isnan(stop[1].value)));
	}
END_TEST

START_TEST(further_out_is_never_better)
	{
		GRand *r = seeded("further out is never better");

		for (int k = 0; k < 5000; k++) {
			const struct condition_kind *kind =
				&condition_kinds[g_rand_int_range(r, 0, n_condition_kinds)];
			double low = MAX(kind->least, -1e4), high = MIN(kind->most, 1e4);
			double value = g_rand_double_range(r, low, high),
			       step = g_rand_double_range(r, 0, (high - low) / 10);
			struct edge passed;
			enum verdict here = bands_verdict(&kind->bands, value, &passed);

			if (kind->bands.worse == WORSE_MORE || (here != VERDICT_GOOD && value > passed.value))
				ck_assert_int_ge(bands_verdict(&kind->bands, value + step, &passed), here);
			else if (kind->bands.worse == WORSE_LESS || here != VERDICT_GOOD)
				ck_assert_int_ge(bands_verdict(&kind->bands, value - step, &passed), here);
		}
		g_rand_free(r);
	}
END_TEST

static const struct {
	double pressure[4];
	int n;
	double percent;
} cylinders[] = {
	{ { 150, 150, 150, 150 }, 4, 0 },
	{ { 135, 150, 140, 150 }, 4, 10 },
	{ { 150, 120 }, 2, 20 },
	{ { 0, 150 }, 2, 100 },
	{ { 150 }, 1, NAN },
	{ { 0, 0 }, 2, NAN },
	{ { 150, -1 }, 2, NAN },
	{ { 150, NAN }, 2, NAN },
	{ { 150, INFINITY }, 2, NAN },
	{ { 0 }, 0, NAN },
};

START_TEST(compression_is_set_against_the_best)
	{
		double percent = compression_spread(cylinders[_i].pressure, cylinders[_i].n);

		if (isnan(cylinders[_i].percent))
			ck_assert(isnan(percent));
		else
			ck_assert_double_eq_tol(percent, cylinders[_i].percent, 1e-9);
	}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Measured values are good, to be watched, or a reason to stop");
	TCase *tc = tcase_create("condition");

	suite_add_tcase(s, tc);
	tcase_add_loop_test(tc, each_reading_has_its_verdict, 0, G_N_ELEMENTS(readings));
	tcase_add_loop_test(tc, some_readings_have_none, 0, G_N_ELEMENTS(refused));
	tcase_add_test(tc, the_bound_passed_is_told);
	tcase_add_test(tc, the_manual_wins);
	tcase_add_loop_test(tc, every_kind_is_whole, 0, n_condition_kinds);
	tcase_add_test(tc, further_out_is_never_better);
	tcase_add_loop_test(tc, compression_is_set_against_the_best, 0, G_N_ELEMENTS(cylinders));
	return run_all(s);
}
