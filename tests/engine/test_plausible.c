#include "engine/plausible.h"

#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* 12_plausibility.csv: computed with scipy's gamma and again in C with GSL; modified z after Iglewicz and Hoaglin
 * (NIST/SEMATECH e-Handbook 1.3.5.17); laplace and crow: published test values of a reliability library. */
enum { NAME, MU, PHI, C2, DH, QUANTITY, EXPECTED, TOLERANCE, SOURCE, COLUMNS };

/* A field may stand in quotes; none here holds a quote. */
static char **
fields(const char *line)
{
	GPtrArray *all = g_ptr_array_new();

	while (all->len < COLUMNS) {
		gboolean quoted = *line == '"';
		const char *end = strchr(line + quoted, quoted ? '"' : ',');

		g_ptr_array_add(all, end ? g_strndup(line + quoted,
			(gsize)(end - line) - quoted) : g_strdup(line + quoted));
		line = end ? end + 1 + (quoted && end[1] == ',') : "";
	}
	g_ptr_array_add(all, NULL);
	return (char **)g_ptr_array_free(all, FALSE);
}

static char **
published_lines(void)
{
	const char *top = g_getenv("top_srcdir");
	g_autofree char *path = g_build_filename(top ? top : ".", "tests", "data", "published",
		"12_plausibility.csv", NULL);
	g_autofree char *text = NULL;

	ck_assert_msg(g_file_get_contents(path, &text, NULL, NULL), "cannot read %s", path);
	return g_strsplit(g_strstrip(text), "\n", -1);
}

static int
numbers(const char *text, double *x)
{
	g_auto(GStrv) all = g_strsplit(text, " ", -1);
	int n = 0;

	for (; all[n]; n++)
		x[n] = g_ascii_strtod(all[n], NULL);
	return n;
}

static double
first_guess_score(const struct use *u, const char *typed)
{
	char guess[3][16];
	double hours;

	ck_assert_int_gt(reading_guesses(u, 447, 30, typed, guess), 0);
	hours = g_ascii_strtod(guess[0], NULL) - 447;
	/* What slipped in each: a digit too many, no point, a digit too many, two exchanged. */
	return guess_score(u, hours, !strcmp(typed, "4571"), !strcmp(typed, "547.0"));
}

static void
check_guesses(const struct use *u, const char *typed, const char *expected)
{
	char guess[3][16];
	g_autofree char *got = NULL;

	ck_assert_int_eq(reading_guesses(u, 447, 30, typed, guess), 3);
	got = g_strjoin(" ", guess[0], guess[1], guess[2], NULL);
	ck_assert_str_eq(got, expected);
}

static double
number_of(char **row, const struct use *u)
{
	static const double a_day[] = { .17, .29, .02, .27, .18, .05, .32, 2.9 };
	double gap[40], exponent, scale;
	int n;

	if (g_str_has_prefix(row[NAME], "up_"))
		return use_upper(u, g_ascii_strtod(row[DH], NULL));
	if (g_str_has_prefix(row[NAME], "lo_"))
		return use_lower(u, g_ascii_strtod(row[DH], NULL));
	if (g_str_has_prefix(row[NAME], "mz_"))
		return outlier_z(a_day, G_N_ELEMENTS(a_day), g_ascii_strtod(row[DH], NULL));
	if (g_str_has_prefix(row[NAME], "fixscore_"))
		return first_guess_score(u, row[NAME] + strlen("fixscore_"));
	ck_assert_msg(g_str_has_suffix(row[NAME], "_pub"), "a row of another kind: %s", row[NAME]);
	n = numbers("104 131 1597 59 4 503 157 6 118 173 114 62 101 216 106 140 1 102 3 393 96 232 89 61 37 293 7 "
		"165 87 99", gap);
	power_law(gap, n, &exponent, &scale);
	if (!strcmp(row[NAME], "laplace_pub"))
		return laplace_u(gap, n);
	return !strcmp(row[NAME], "crow_beta_pub") ? exponent : scale;
}

static void
check_number(char **row, const struct use *u)
{
	double got = number_of(row, u), want = g_ascii_strtod(row[EXPECTED], NULL);

	ck_assert_msg(fabs(got - want) <= g_ascii_strtod(row[TOLERANCE], NULL), "%s: %.15g, not %.15g", row[NAME], got,
		      want);
}

START_TEST(published_figures)
{
	g_auto(GStrv) lines = published_lines();
	int n = 0;

	for (; lines[n + 1]; n++) {
		g_auto(GStrv) row = fields(lines[n + 1]);
		struct use u = { g_ascii_strtod(row[MU], NULL), g_ascii_strtod(row[PHI], NULL),
			g_ascii_strtod(row[C2], NULL) };

		if (!strcmp(row[TOLERANCE], "exact"))
			check_guesses(&u, row[NAME] + strlen("fix_"), row[EXPECTED]);
		else
			check_number(row, &u);
	}
	ck_assert_int_eq(n, 27);
}
END_TEST

static const struct { const char *says; double expected, hours; gint64 days; enum doubt doubt; } doubts[] = {
	{ "as expected", 13.9, 13.9, 60, DOUBT_NONE },
	{ "twice as much, probability .021", 13.9, 30, 60, DOUBT_NONE },
	{ "three times, 5.7e-4", 13.9, 45, 60, DOUBT_NOTE },
	{ "six times, 2.2e-9", 13.9, 90, 60, DOUBT_ASK },
	{ "little, 1.5e-3", 13.9, 2, 60, DOUBT_NONE },
	{ "very little where much was expected", 13.9, .5, 60, DOUBT_NOTE },
	{ "very little where little was expected", 9, .1, 60, DOUBT_NONE },
	{ "no use is always possible", 13.9, 0, 60, DOUBT_NONE },
	{ "backwards", 13.9, -.1, 60, DOUBT_BACKWARDS },
	{ "24 h a day and one", 25, 25, 1, DOUBT_NONE },
	{ "more", 25, 25.1, 1, DOUBT_IMPOSSIBLE },
	{ "an hour on the same day", 0, 1, 0, DOUBT_ASK },
	{ "two hours on the same day", 0, 2, 0, DOUBT_IMPOSSIBLE },
	{ "an hour in a winter without expectation", 0, 1, 150, DOUBT_NONE },
	{ "thirty", 0, 30, 150, DOUBT_ASK },
};

START_TEST(a_reading_is_doubted)
{
	struct use u = { doubts[_i].expected, 2, .075 };
	enum doubt got = reading_doubt(&u, doubts[_i].hours, doubts[_i].days);

	ck_assert_msg(got == doubts[_i].doubt, "%s: %d, not %d", doubts[_i].says, (int)got, (int)doubts[_i].doubt);
}
END_TEST

static const struct { const char *says, *typed; double previous; gint64 days; const char *guesses; } slips[] = {
	{ "nothing of nothing", "", 3, 1, "" },
	{ "no text that is no number", "12x", 10, 10, "" },
	{ "none of minus", "-12", 10, 10, "" },
	{ "two points may be one too many", "45.7.1", 450, 30, "457.1" },
	{ "a text too long for a meter", "123456789012345", 10, 10, "" },
	{ "none that would be less than before", "100", 999, 1, "1007 1006 1008" },
	{ "none beyond 24 h a day", "9", 100, 10, "" },
	{ "nothing can have run in no time, but nothing", "44", 447, 0, "447" },
	{ "no nought before a number", "05", 0, 10, "5 15 25" },
};

START_TEST(a_slip_is_guessed_at)
{
	struct use u = { 10.5, 2, .075 };
	char guess[3][16];
	int n = reading_guesses(&u, slips[_i].previous, slips[_i].days, slips[_i].typed, guess);
	g_autofree char *got = g_strjoin(" ", n > 0 ? guess[0] : "", n > 1 ? guess[1] : "", n > 2 ? guess[2] : "",
		NULL);

	g_strchomp(got);
	ck_assert_msg(!strcmp(got, slips[_i].guesses), "%s: %s, not %s", slips[_i].says, got, slips[_i].guesses);
}
END_TEST

START_TEST(every_guess_is_one_slip_from_a_reading)
{
	struct use u = { 10.5, 4, .3 };
	char guess[3][16];

	/* What was meant lies among the guesses when its last digit was doubled and use was as expected. */
	for (int meant = 1000; meant < 1200; meant += 7) {
		g_autofree char *typed = g_strdup_printf("%d%d", meant, meant % 10);
		int n = reading_guesses(&u, meant - 8, 30, typed, guess), found = 0;

		for (int i = 0; i < n; i++) {
			double value = g_ascii_strtod(guess[i], NULL);

			ck_assert(value >= meant - 8 && value <= meant - 8 + 720);
			ck_assert_int_le(abs((int)strlen(guess[i]) - (int)strlen(typed)), 1);
			found += fabs(value - meant) < 1e-9;
		}
		ck_assert_msg(found == 1, "%d was not found for %s", meant, typed);
	}
}
END_TEST

START_TEST(without_expectation_chance_is_a_point)
{
	struct use none = { 0, 2, .075 }, sure = { 5, 0, 0 };

	ck_assert_double_eq(use_upper(&none, 0), 1);
	ck_assert_double_eq(use_upper(&none, .1), 0);
	ck_assert_double_eq(use_lower(&none, 0), 1);
	ck_assert_double_eq(use_upper(&sure, 5), 1);
	ck_assert_double_eq(use_upper(&sure, 5.1), 0);
	ck_assert_double_eq(use_lower(&sure, 4.9), 0);
	ck_assert_double_eq(guess_score(&sure, 5, TRUE, FALSE), 0);
}
END_TEST

START_TEST(too_few_say_nothing)
{
	static const double four[] = { 1, 2, 3, 99 }, equal[] = { 2, 2, 2, 2, 99 }, six[] = { 1, 2, 3, 4, 5, 6 };
	double exponent, scale;

	ck_assert(isnan(outlier_z(four, 4, 99)));
	ck_assert(isnan(outlier_z(equal, 5, 99)));
	ck_assert_double_eq_tol(outlier_z(six, 6, 3.5 + 1.5), .6745, 1e-12);	/* median 3.5, deviation 1.5 */
	ck_assert(isnan(laplace_u(four, 1)));
	power_law(four, 1, &exponent, &scale);
	ck_assert(isnan(exponent) && isnan(scale));
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("A reading that cannot be right is questioned, with what was probably meant");
	TCase *tc = tcase_create("readings");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_test(tc, published_figures);
	tcase_add_loop_test(tc, a_reading_is_doubted, 0, G_N_ELEMENTS(doubts));
	tcase_add_loop_test(tc, a_slip_is_guessed_at, 0, G_N_ELEMENTS(slips));
	tcase_add_test(tc, every_guess_is_one_slip_from_a_reading);
	tcase_add_test(tc, without_expectation_chance_is_a_point);
	tcase_add_test(tc, too_few_say_nothing);
	suite_add_tcase(s, tc);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
