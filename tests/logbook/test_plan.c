#include "logbook/plan.h"

#include "base/err.h"

#include <check.h>
#include <stdlib.h>
#include <string.h>

enum { H = 3600 };

static const struct { const char *text; enum limit_kind kind; gint64 amount; } intervals[] = {
	{ "100 h", LIMIT_HOURS, 100 * H },
	{ "100h", LIMIT_HOURS, 100 * H },
	{ "50 hours", LIMIT_HOURS, 50 * H },
	{ "1 hour", LIMIT_HOURS, H },
	{ "2.5 h", LIMIT_HOURS, 9000 },
	{ "2,5h", LIMIT_HOURS, 9000 },
	{ "2:30 h", LIMIT_HOURS, 9000 },
	{ "12 months", LIMIT_MONTHS, 12 },
	{ "1 month", LIMIT_MONTHS, 1 },
	{ "18 mo", LIMIT_MONTHS, 18 },
	{ "5 years", LIMIT_MONTHS, 60 },
	{ "1 year", LIMIT_MONTHS, 12 },
	{ "2 y", LIMIT_MONTHS, 24 },
	{ "3 outings", LIMIT_OUTINGS, 3 },
	{ "1 outing", LIMIT_OUTINGS, 1 },
	{ "2 seasons", LIMIT_SEASONS, 2 },
	{ "1 season", LIMIT_SEASONS, 1 },
	{ "  12   Months ", LIMIT_MONTHS, 12 },
};

START_TEST(an_interval_is_understood)
{
	g_autoptr(GError) err = NULL;
	struct limit m;

	record_init(RECORD_LIMIT, &m);
	ck_assert_msg(limit_parse(intervals[_i].text, &m, &err), "%s", err ? err->message : "?");
	ck_assert_int_eq(m.kind, intervals[_i].kind);
	ck_assert_int_eq(m.kind == LIMIT_HOURS ? m.hours : m.amount, intervals[_i].amount);
	ck_assert(m.kind == LIMIT_HOURS ? m.amount == NONE : m.hours == NONE);
}
END_TEST

static const char *const no_intervals[] = {
	"", " ", "h", "100", "months", "0 h", "0 months", "-1 h", "-5 years", "12 parsecs", "1.5 months", "h 100", "12 months more",
	"1e3 h", "100 hh", "1201 months", "99999999999999999999 h", "99999999999999999999 months", "\033[31m", "12 m\303\244rz",
	"2,,5 h", "1:75 h", "nan h",
};

START_TEST(what_is_no_interval_is_refused)
{
	g_autoptr(GError) err = NULL;
	struct limit m;

	record_init(RECORD_LIMIT, &m);
	ck_assert_msg(!limit_parse(no_intervals[_i], &m, &err), "%s is taken", no_intervals[_i]);
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_INPUT));
	ck_assert_uint_gt(strlen(err->message), 10);
}
END_TEST

static int
run_suite(Suite *suite)
{
	SRunner *runner = srunner_create(suite);
	int failed;

	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}

int
main(void)
{
	Suite *suite = suite_create("Intervals as they are typed");
	TCase *tc = tcase_create("intervals");

	tcase_add_loop_test(tc, an_interval_is_understood, 0, G_N_ELEMENTS(intervals));
	tcase_add_loop_test(tc, what_is_no_interval_is_refused, 0, G_N_ELEMENTS(no_intervals));
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
