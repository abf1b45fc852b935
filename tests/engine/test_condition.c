#include "engine/condition.h"

#include "published.h"

#define NOT_KNOWN NAN

/* The bound itself is worse, or what lies past it only. */
#define AT(x) { x, TRUE, FALSE }
#define PAST(x) { x, FALSE, FALSE }
#define NOWHERE PAST(NAN)
#define MORE(watch, stop) { WORSE_MORE, { NOWHERE, watch }, { NOWHERE, stop } }
#define LESS(watch, stop) { WORSE_LESS, { watch, NOWHERE }, { stop, NOWHERE } }
#define BOTH(low, high, stop_low, stop_high) { WORSE_BOTH, { low, high }, { stop_low, stop_high } }
#define KIND(what, unit, bands, least, most, water) { what, unit, "how", bands, least, most, water, "memory", "source" }

/* Some of each shape; those that are shipped are tested where they are read. */
static const struct condition_kind kinds[] = {
	KIND("anode-left", "%", LESS(AT(75), AT(50)), 0, 100, WATER_COUNT),
	KIND("bearing-roughness", "grade", MORE(AT(1), AT(2)), 0, 3, WATER_COUNT),
	KIND("steering-play", "mm", MORE(AT(3.175), PAST(6.35)), 0, 300, WATER_COUNT),
	KIND("charging-voltage", "V", BOTH(PAST(13.8), PAST(14.6), PAST(13.2), PAST(14.8)), 6, 20, WATER_COUNT),
	KIND("rest-voltage", "V", LESS(PAST(12.6), AT(12.2)), 6, 14, WATER_COUNT),
	KIND("half-cell-aluminium-drive", "mV", BOTH(PAST(-1050), PAST(-900), PAST(-1100), PAST(-850)), -1700, 0, WATER_SALT),
	KIND("half-cell-steel", "mV", BOTH(PAST(-1050), PAST(-800), PAST(-1100), PAST(-750)), -1700, 0, WATER_SALT),
	KIND("coolant-ph", "pH", BOTH(PAST(7.5), PAST(10.5), PAST(7), NOWHERE), 0, 14, WATER_COUNT),
	KIND("temperature", "C", MORE(PAST(80), PAST(90)), -20, 150, WATER_COUNT),
	KIND("difference", "K", MORE(PAST(10), PAST(20)), 0, 150, WATER_COUNT),
	KIND("oil-pressure", "kPa", LESS(NOWHERE, NOWHERE), 0, 2000, WATER_COUNT),
};

static const struct condition_kind *
kind_of(const char *what)
{
	for (guint i = 0; i < G_N_ELEMENTS(kinds); i++)
		if (!strcmp(kinds[i].what, what))
			return &kinds[i];
	ck_abort_msg("%s: no such kind", what);
}

static const struct {
	const char *what;
	double value;
	const char *unit;
	double psu;
	enum verdict verdict;
} readings[] = {
	{ "anode-left", 75.5, "%", NOT_KNOWN, VERDICT_GOOD },
	{ "anode-left", 75, "%", NOT_KNOWN, VERDICT_WATCH },
	{ "anode-left", 50, "%", NOT_KNOWN, VERDICT_STOP },
	{ "bearing-roughness", 1, "grade", NOT_KNOWN, VERDICT_WATCH },
	{ "steering-play", 3.1749999999999998, "mm", NOT_KNOWN, VERDICT_WATCH },
	{ "steering-play", 6.35, "mm", NOT_KNOWN, VERDICT_WATCH },
	{ "steering-play", 3. / 8, "in", NOT_KNOWN, VERDICT_STOP },
	{ "steering-play", .5, "cm", NOT_KNOWN, VERDICT_WATCH },
	{ "charging-voltage", 14200, "mV", NOT_KNOWN, VERDICT_GOOD },
	{ "half-cell-steel", -.9, "V", 35, VERDICT_GOOD },
	{ "half-cell-steel", -700, "mV", 30, VERDICT_STOP },
	{ "temperature", 176, "F", NOT_KNOWN, VERDICT_GOOD }, /* 80 C */
	{ "temperature", 177, "F", NOT_KNOWN, VERDICT_WATCH },
	{ "temperature", 91, "C", NOT_KNOWN, VERDICT_STOP },
	{ "difference", 18, "F", NOT_KNOWN, VERDICT_GOOD }, /* 10 K */
	{ "difference", 37, "F", NOT_KNOWN, VERDICT_STOP },
	{ "difference", 11, "C", NOT_KNOWN, VERDICT_WATCH },
};

START_TEST(each_reading_has_its_verdict)
	{
		const struct condition_kind *kind = kind_of(readings[_i].what);
		struct condition_in in = { readings[_i].value, readings[_i].unit, readings[_i].psu };
		struct condition_out out;

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
	{ "oil-pressure", 45, "psi", NOT_KNOWN, UNJUDGED_LIMITS }, /* the manual's alone */
	{ "temperature", 20, "K", NOT_KNOWN, UNJUDGED_UNIT }, /* a difference is no temperature */
};

START_TEST(some_readings_have_none)
	{
		struct condition_in in = { refused[_i].value, refused[_i].unit, refused[_i].psu };
		struct condition_out out;

		condition_judge(kind_of(refused[_i].what), NULL, &in, &out);
		ck_assert_int_eq(out.verdict, VERDICT_NONE);
		ck_assert_int_eq(out.unjudged, refused[_i].unjudged);
		ck_assert(isnan(out.passed.value));
	}
END_TEST

START_TEST(the_bound_passed_is_told)
	{
		struct condition_in in = { .5, "in", NOT_KNOWN };
		struct condition_out out;

		condition_judge(kind_of("steering-play"), NULL, &in, &out);
		ck_assert_double_eq_tol(out.value, 12.7, 1e-9);
		ck_assert_double_eq(out.passed.value, 6.35);
		ck_assert(out.passed.above);
		in = (struct condition_in){ 13, "V", NOT_KNOWN };
		condition_judge(kind_of("charging-voltage"), NULL, &in, &out);
		ck_assert_double_eq(out.passed.value, 13.2);
		ck_assert(!out.passed.above);
		in = (struct condition_in){ 2, "grade", NOT_KNOWN };
		condition_judge(kind_of("bearing-roughness"), NULL, &in, &out);
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

		condition_judge(kind_of("steering-play"), &manual, &in, &out);
		ck_assert_int_eq(out.verdict, VERDICT_STOP);
		ck_assert_double_eq(out.passed.value, 2);
	}
END_TEST

START_TEST(further_out_is_never_better)
	{
		GRand *r = seeded("further out is never better");

		for (int k = 0; k < 5000; k++) {
			const struct condition_kind *kind =
				&kinds[g_rand_int_range(r, 0, G_N_ELEMENTS(kinds))];
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
	tcase_add_test(tc, further_out_is_never_better);
	tcase_add_loop_test(tc, compression_is_set_against_the_best, 0, G_N_ELEMENTS(cylinders));
	return run_all(s);
}
