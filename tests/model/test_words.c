#include "model/words.h"

#include "base/err.h"
#include "engine/wear.h"

#include <check.h>
#include <stdlib.h>
#include <string.h>

/* Every table of words, how many its enum has, and its first and last word, which pin the order. */
static const struct {
	const struct words *words;
	int n;
	const char *first, *last;
} tables[] = {
	{ &words_boat_kind, KIND_SAIL + 1, "petrol-sterndrive", "sail" },
	{ &words_stand, STAND_COUNT, "afloat", "roof" },
	{ &words_water, WATER_COUNT, "fresh", "salt" },
	{ &words_air, AIR_COUNT, "c1", "cx" },
	{ &words_mechanism, MECH_COUNT, "none", "frost" },
	{ &words_consequence, CONSEQUENCE_COUNT, "sinks", "costs" },
	{ &words_workplace, WORKPLACE_COUNT, "anywhere", "shop" },
	{ &words_clock_rule, CLOCK_RULE_COUNT, "done", "printed-date" },
	{ &words_limit_kind, LIMIT_KIND_COUNT, "hours", "condition" },
	{ &words_season_event, SEASON_EVENT_COUNT, "launch", "lay-up" },
	{ &words_opportunity, OPPORTUNITY_COUNT, "now", "no-record" },
	{ &words_meter_how, METER_ESTIMATED + 1, "first", "estimated" },
	{ &words_outcome, OUTCOME_CLAIMED + 1, "done", "claimed" },
	{ &words_standing, STANDING_ASSUMPTION + 1, "manual", "assumption" },
	{ &words_happening, HAPPENED_OTHER + 1, "grounding", "other" },
	{ &words_verb, 7, "inspect", "tighten" },
};

START_TEST(each_table_is_as_long_as_its_enum)
{
	const struct words *w = tables[_i].words;

	ck_assert_int_eq(w->n, tables[_i].n);
	ck_assert_str_eq(w->word[0], tables[_i].first);
	ck_assert_str_eq(w->word[w->n - 1], tables[_i].last);
	ck_assert(w->what && *w->what);
}
END_TEST

START_TEST(words_go_both_ways)
{
	const struct words *w = tables[_i].words;

	for (int k = 0; k < w->n; k++) {
		g_autofree char *loud = g_ascii_strup(w->word[k], -1);
		gint64 index = NONE;

		ck_assert_int_eq(word_index(w, w->word[k]), k);
		ck_assert_int_eq(word_index(w, loud), k);
		ck_assert_str_eq(word_of(w, k), w->word[k]);
		ck_assert(word_parse(w, w->word[k], &index, NULL));
		ck_assert_int_eq(index, k);
	}
	ck_assert_str_eq(word_of(w, NONE), "");
	ck_assert_str_eq(word_of(w, -1), "");
	ck_assert_str_eq(word_of(w, w->n), "");
	ck_assert(word_index(w, "") == NONE);
	ck_assert(word_index(w, "certainly-none-of-them") == NONE);
}
END_TEST

/* They are typed, and stand in files: small letters and hyphens, no two alike. */
START_TEST(words_are_plain_and_differ)
{
	const struct words *w = tables[_i].words;

	for (int k = 0; k < w->n; k++) {
		ck_assert_uint_eq(strspn(w->word[k], "abcdefghijklmnopqrstuvwxyz-12345"), strlen(w->word[k]));
		ck_assert_uint_gt(strlen(w->word[k]), 1);
		for (int j = 0; j < k; j++)
			ck_assert_str_ne(w->word[k], w->word[j]);
	}
}
END_TEST

/* A letter too many. */
START_TEST(a_slip_is_answered_by_the_word_meant)
{
	const struct words *w = tables[_i].words;

	for (int k = 0; k < w->n; k++) {
		g_autofree char *typed = g_strdup_printf("%cx%s", w->word[k][0], w->word[k] + 1);
		g_autofree char *meant = g_strdup_printf("is \"%s\" meant?", w->word[k]);
		g_autoptr(GError) err = NULL;
		gint64 index = 7;

		ck_assert(!word_parse(w, typed, &index, &err));
		ck_assert(index == NONE);
		ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_INPUT));
		ck_assert_msg(strstr(err->message, meant) != NULL, "%s", err->message);
		ck_assert(strstr(err->message, w->what) != NULL);
	}
}
END_TEST

START_TEST(what_is_far_from_all_is_answered_by_the_list)
{
	const struct words *w = tables[_i].words;
	g_autoptr(GError) err = NULL;
	gint64 index;

	ck_assert(!word_parse(w, "zzzzzzzzzzzzzzzz", &index, &err));
	for (int k = 0; k < w->n; k++)
		ck_assert_msg(strstr(err->message, w->word[k]) != NULL, "%s lacks %s", err->message, w->word[k]);
}
END_TEST

START_TEST(what_was_typed_is_shown_harmlessly)
{
	static const char *const typed[] = { "\033[31m", "caf\351", "a\nb", "\302\233", "\342\200\256" };
	g_autoptr(GError) err = NULL;
	gint64 index;

	ck_assert(!word_parse(&words_water, typed[_i], &index, &err));
	ck_assert(g_utf8_validate(err->message, -1, NULL));
	for (const char *p = err->message; *p; p = g_utf8_next_char(p))
		ck_assert(!g_unichar_iscntrl(g_utf8_get_char(p)) && g_utf8_get_char(p) != 0x202e);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("Words for enums");
	TCase *tc = tcase_create("words");
	SRunner *runner;
	int n = G_N_ELEMENTS(tables), failed;

	tcase_add_loop_test(tc, each_table_is_as_long_as_its_enum, 0, n);
	tcase_add_loop_test(tc, words_go_both_ways, 0, n);
	tcase_add_loop_test(tc, words_are_plain_and_differ, 0, n);
	tcase_add_loop_test(tc, a_slip_is_answered_by_the_word_meant, 0, n);
	tcase_add_loop_test(tc, what_is_far_from_all_is_answered_by_the_list, 0, n);
	tcase_add_loop_test(tc, what_was_typed_is_shown_harmlessly, 0, 5);
	suite_add_tcase(suite, tc);
	runner = srunner_create(suite);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
