/* What every parser must refuse without harm, and random texts, for the tests of base/. */
#ifndef TESTS_BASE_ABSURD_H
#define TESTS_BASE_ABSURD_H

#include "base/err.h"

#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef gboolean (*parse_func)(const char *text, GError **err);

/* The seed is printed; SEED=number repeats a run. */
static inline GRand *
test_rand(const char *what)
{
	const char *given = g_getenv("SEED");
	guint32 seed = given ? (guint32)strtoul(given, NULL, 10) : g_random_int();

	printf("%s: SEED=%u\n", what, seed);
	fflush(stdout);
	return g_rand_new_with_seed(seed);
}

/* A message must be short, UTF-8 and free of control characters, whatever was typed. */
static inline void
assert_harmless(const char *text, const GError *err)
{
	ck_assert_msg(g_error_matches(err, ERR_DOMAIN, ERR_INPUT), "no ERR_INPUT for: %.60s", text);
	ck_assert_msg(g_utf8_validate(err->message, -1, NULL), "no UTF-8 for %zu bytes typed", strlen(text));
	ck_assert_msg(g_utf8_strlen(err->message, -1) < 400, "message too long: %s", err->message);
	for (const char *p = err->message; *p; p = g_utf8_next_char(p))
		if (g_unichar_iscntrl(g_utf8_get_char(p)))
			ck_abort_msg("control character in: %s", err->message);
}

static inline void
assert_refuses(parse_func parse, const char *text)
{
	g_autoptr(GError) err = NULL;

	ck_assert_msg(!parse(text, &err), "taken: %.60s", text);
	assert_harmless(text, err);
	ck_assert_msg(!parse(text, NULL), "taken without an error to fill: %.60s", text);
}

static inline char *
repeated(const char *piece, int times)
{
	GString *out = g_string_new(NULL);

	for (int i = 0; i < times; i++)
		g_string_append(out, piece);
	return g_string_free(out, FALSE);
}

static inline void
assert_refuses_absurd(parse_func parse)
{
	static const char *const texts[] = {
		"", " ", "\t\n", "-", "+", ".", ",", ":", "/", "\"", "'", "%s%n%d", "\\", "x", "NaN", "inf",
		"0x10", "1e999", "1,2,3,4,5", "1 2 3 4 5 6 7 8", "--3", "3--", "2026-05-12-", "12;13",
		/* controls, ESC, C1, right-to-left, combining marks, a byte order mark, blanks inside */
		"\001\002\003", "\033[2J", "\302\233", "\342\200\256" "21", "a\314\201\314\201",
		"\357\273\277" "12x", "12 \302\240 \302\240 x",
		/* not UTF-8: stray bytes, overlong, a surrogate, beyond Unicode, cut off */
		"\377\376", "12\200", "\300\200", "\355\240\200", "\364\220\200\200", "\303",
	};
	static const char *const pieces[] = {
		"9", "1.", "a", " ", "-", "\377", "\314\201", "\360\237\232\242", "0",
	};

	for (gsize i = 0; i < G_N_ELEMENTS(texts); i++)
		assert_refuses(parse, texts[i]);
	for (gsize i = 0; i < G_N_ELEMENTS(pieces); i++) {
		g_autofree char *text = repeated(pieces[i], 10000);

		assert_refuses(parse, text);
	}
}

/* Random texts of the characters that mean something to a parser, and some that mean nothing. */
static inline void
assert_random_harmless(parse_func parse, const char *alphabet, GRand *rand)
{
	int letters = (int)strlen(alphabet);

	for (int i = 0; i < 10000; i++) {
		g_autoptr(GError) err = NULL;
		char text[24];
		int n = g_rand_int_range(rand, 0, (gint32)sizeof text);

		for (int k = 0; k < n; k++)
			text[k] = g_rand_int_range(rand, 0, 40) ? alphabet[g_rand_int_range(rand, 0, letters)]
								: (char)g_rand_int_range(rand, 1, 256);
		text[n] = '\0';
		if (!parse(text, &err))
			assert_harmless(text, err);
		else if (err)
			ck_abort_msg("taken and complained of: %s", text);
	}
}

/* Runs the suite; the value for main to return. */
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
