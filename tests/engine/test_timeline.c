#include "engine/timeline.h"

#include "boat_case.h"
#include "random_boat.h"

/* Spans that begin up to today. */
static char *
past_spans(void)
{
	GString *text = g_string_new(NULL);
	const struct span *span;
	int n = timeline_spans(t, &span);

	for (int i = 0; i < n && span[i].from <= boat->in.today; i++) {
		g_autofree char *says = span_says(&span[i]);

		g_string_append_printf(text, "%s%s", i ? "; " : "", says);
	}
	return g_string_free(text, FALSE);
}

#define SALTY "today 2024-08-01; from 2024-05-01; engines 2; rate raw-water.salt 2; " \
	      "usual 04-15 10-15 trailer roof fresh; run 2024-05-01 3600 0 salt - trip; " \
	      "run 2024-05-01 7200 1 salt - -; run 2024-06-01 3600 1 fresh - trip"

/* Seconds and days at the wear of raw water, in one figure. */
static double
wear(void)
{
	return timeline_seconds(t, -1, MECH_RAW_WATER, 0, boat->in.today) +
	       timeline_days(t, MECH_RAW_WATER, boat->in.from, boat->in.today);
}

START_TEST(a_boat_leaves_nothing_to_the_next)
{
	const double salty = 2 * (3600 + 7200) + 3600 + (2 * 31 + 61);

	build(SALTY);
	ck_assert_double_eq_tol(wear(), salty, 1e-9);
	build("today 2020-08-01; from 2010-05-01; rate raw-water.afloat 1.5; run 2015-06-01 7777 0 salt - trip");
	ck_assert_double_eq_tol(timeline_seconds(t, 0, MECH_RAW_WATER, 0, boat->in.today), 7777 * 1.5, 1e-9);
	ck_assert_int_eq(timeline_outings(t, 0, boat->in.today), 1);
	build(SALTY);
	ck_assert_double_eq_tol(wear(), salty, 1e-9);
}
END_TEST

START_TEST(spans_leave_no_gap)
{
	const size_t fields = offsetof(struct span, assumed) + sizeof(gboolean) - offsetof(struct span, stand);
	GRand *r = test_rand("spans leave no gap");

	for (int k = 0; k < 300; k++) {
		const struct span *s;
		int n;

		random_boat(boat, r);
		boat_timeline(boat, t);
		n = timeline_spans(t, &s);
		ck_assert_int_eq(s[0].from, boat->in.from);
		ck_assert_int_eq(s[n - 1].to, day_add_months(boat->in.today, 120));
		for (int i = 0; i < n; i++) {
			ck_assert_int_lt(s[i].from, s[i].to);
			ck_assert(!i || s[i].from == s[i - 1].to);
			ck_assert_msg(!i || memcmp(&s[i].stand, &s[i - 1].stand, fields), "equal spans side by side");
		}
	}
	g_rand_free(r);
}
END_TEST

START_TEST(the_order_within_a_day_does_not_matter)
{
	GRand *r = test_rand("the order within a day does not matter");

	for (int k = 0; k < 300; k++) {
		g_autofree char *before = NULL, *after = NULL;

		random_boat(boat, r);
		boat_timeline(boat, t);
		before = past_spans();
		for (int i = 1; i < boat->in.n_runs; i++)
			if (boat->run[i].date == boat->run[i - 1].date) {
				struct run swap = boat->run[i];

				boat->run[i] = boat->run[i - 1];
				boat->run[i - 1] = swap;
			}
		boat_timeline(boat, t);
		after = past_spans();
		ck_assert_str_eq(before, after);
	}
	g_rand_free(r);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("A timeline has no gap, and forgets the boat before");
	TCase *tc = add_case(s, "any boat");

	tcase_add_test(tc, spans_leave_no_gap);
	tcase_add_test(tc, the_order_within_a_day_does_not_matter);
	tcase_add_test(tc, a_boat_leaves_nothing_to_the_next);
	return run_suite(s);
}
