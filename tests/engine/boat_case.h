/* What every test of the engine begins with: one boat and its timeline. */
#ifndef TESTS_ENGINE_BOAT_CASE_H
#define TESTS_ENGINE_BOAT_CASE_H

#include "boat_text.h"

#include <check.h>

/* The boat of the test and its timeline. */
static struct boat_text *boat;
static struct timeline *t;

static inline void
set_up(void)
{
	boat = g_new0(struct boat_text, 1);
	t = timeline_new();
}

static inline void
tear_down(void)
{
	timeline_free(t);
	wear_rates_free(boat->in.rates);
	g_free(boat);
}

static inline void
build(const char *text)
{
	boat_text_init(boat);
	boat_text_read(boat, text);
	boat_timeline(boat, t);
}

static inline TCase *
add_case(Suite *s, const char *name)
{
	TCase *tc = tcase_create(name);

	tcase_add_checked_fixture(tc, set_up, tear_down);
	suite_add_tcase(s, tc);
	return tc;
}

static inline int
run_suite(Suite *suite)
{
	SRunner *runner = srunner_create(suite);
	int failed;

	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}

#endif
