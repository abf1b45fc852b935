#include "logbook/service.h"

#include <check.h>
#include <stdlib.h>
#include <string.h>

/* A letter a clock rule (done, inspection, renewal, printed date): + restarts, - does not, ? only where a failure
 * does not sink, burn or hurt.  After the rules in DEVELOPERS.md and splitpin(1), did. */
static const struct { enum outcome outcome; const char rules[5]; } restarts[] = {
	{ OUTCOME_DONE, "++++" },
	{ OUTCOME_GOOD, "++--" },
	{ OUTCOME_BAD, "----" },
	{ OUTCOME_RENEWED, "++++" },
	{ OUTCOME_TOPPED_UP, "----" },
	{ OUTCOME_NOT_SEEN, "----" },
	{ OUTCOME_CLAIMED, "????" },
};

START_TEST(an_outcome_restarts_what_it_should)
{
	for (int rule = 0; rule < CLOCK_RULE_COUNT; rule++)
		for (int cost = 0; cost < CONSEQUENCE_COUNT; cost++) {
			char mark = restarts[_i].rules[rule];
			gboolean grave = cost == COST_SINKS || cost == COST_BURNS || cost == COST_HURTS;
			gboolean want = mark == '+' || (mark == '?' && !grave);

			ck_assert_msg(service_restarts(rule, cost, restarts[_i].outcome) == want, "%s, %s, %s",
				      word_of(&words_outcome, restarts[_i].outcome), word_of(&words_clock_rule, rule),
				      word_of(&words_consequence, cost));
		}
}
END_TEST

START_TEST(the_usual_outcome_is_one_that_counts)
{
	for (int verb = 0; verb < words_verb.n; verb++)
		for (int rule = 0; rule < CLOCK_RULE_COUNT; rule++) {
			struct task t = { .verb = verb, .rule = rule };
			enum outcome usual = service_usual_outcome(&t);

			ck_assert_msg(service_restarts(rule, COST_SINKS, usual), "%s, %s", words_verb.word[verb],
				      words_clock_rule.word[rule]);
			ck_assert((usual == OUTCOME_RENEWED) == !strcmp(words_verb.word[verb], "renew"));
		}
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
	Suite *suite = suite_create("What restarts a clock");
	TCase *tc = tcase_create("outcomes");

	tcase_add_loop_test(tc, an_outcome_restarts_what_it_should, 0, G_N_ELEMENTS(restarts));
	tcase_add_test(tc, the_usual_outcome_is_one_that_counts);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
