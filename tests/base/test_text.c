#include "base/text.h"

#include "absurd.h"

static const struct {
	const char *text, *line, *lines;	/* without and with keep_lines */
} harmless[] = {
	{ "", "", "" },
	{ "plain text", "plain text", "plain text" },
	{ "été ½ °C 日本 🚢", "été ½ °C 日本 🚢", "été ½ °C 日本 🚢" },
	{ "a\nb\tc", "a b c", "a\nb\tc" },
	{ "a\r\nb", "a b", "a\nb" },
	{ "over\rwritten", "over\\x0dwritten", "over\\x0dwritten" },
	{ "\033[31mred", "\\x1b[31mred", "\\x1b[31mred" },
	{ "\001\010\177", "\\x01\\x08\\x7f", "\\x01\\x08\\x7f" },
	{ "\302\233" "31m", "<U+009B>31m", "<U+009B>31m" },	/* CSI as one C1 control */
	{ "\233" "31m", "\\x9b31m", "\\x9b31m" },	/* the same byte alone is not UTF-8 */
	{ "a\342\200\256b", "a<U+202E>b", "a<U+202E>b" },	/* right-to-left override */
	{ "\342\201\246x\342\201\251", "<U+2066>x<U+2069>", "<U+2066>x<U+2069>" },	/* isolates */
	{ "\342\200\217\330\234", "<U+200F><U+061C>", "<U+200F><U+061C>" },
	{ "a\342\200\250b", "a<U+2028>b", "a<U+2028>b" },	/* line separator */
	{ "\357\273\277x", "<U+FEFF>x", "<U+FEFF>x" },
	{ "\363\240\201\201", "<U+E0041>", "<U+E0041>" },	/* invisible tag */
	{ "caf\351", "caf\\xe9", "caf\\xe9" },
	{ "\300\200\355\240\200", "\\xc0\\x80\\xed\\xa0\\x80", "\\xc0\\x80\\xed\\xa0\\x80" },
	{ "cut \342\200", "cut \\xe2\\x80", "cut \\xe2\\x80" },
	{ "שלום", "שלום", "שלום" },
};

START_TEST(text_is_made_harmless)
{
	g_autofree char *line = text_harmless(harmless[_i].text, FALSE);
	g_autofree char *lines = text_harmless(harmless[_i].text, TRUE);

	ck_assert_str_eq(line, harmless[_i].line);
	ck_assert_str_eq(lines, harmless[_i].lines);
}
END_TEST

START_TEST(random_bytes_become_harmless)
{
	GRand *rand = test_rand("harmless");

	for (int i = 0; i < 5000; i++) {
		g_autofree char *out = NULL, *again = NULL;
		char text[40];
		int n = g_rand_int_range(rand, 0, (gint32)sizeof text);

		for (int k = 0; k < n; k++)
			text[k] = (char)g_rand_int_range(rand, 1, 256);
		text[n] = '\0';
		out = text_harmless(text, FALSE);
		if (!g_utf8_validate(out, -1, NULL))
			ck_abort_msg("not UTF-8: %s", out);
		for (const char *p = out; *p; p = g_utf8_next_char(p))
			if (g_unichar_iscntrl(g_utf8_get_char(p)))
				ck_abort_msg("a control character in: %s", out);
		again = text_harmless(out, FALSE);
		ck_assert_str_eq(out, again);
	}
	g_rand_free(rand);
}
END_TEST

static const struct {
	const char *text;
	int width;
} widths[] = {
	{ "", 0 },          { "abc", 3 },  { "é", 1 },
	{ "e\314\201", 1 }, /* composed, and with a combining accent */
	{ "日本", 4 },      { "한국", 4 }, { "🚢", 2 },
	{ "°½→─█⣿", 6 },    { "שלום", 4 }, { "a\342\200\213b", 2 }, /* U+200B */
	{ "\377\377", 2 },  { "a\tb", 3 }, { "\302\233", 1 },
};

START_TEST(width_counts_display_columns)
{
	ck_assert_int_eq(text_width(widths[_i].text), widths[_i].width);
}
END_TEST

static const struct {
	const char *text;
	int columns;
	const char *fitted;
} fits[] = {
	{ "", 0, "" }, { "", 3, "   " }, { "abc", 0, "" }, { "abc", -4, "" }, { "abc", 1, "~" },
	{ "a", 1, "a" },
	{ "abc", 3, "abc" }, { "abc", 5, "abc  " }, { "abcd", 3, "ab~" },
	{ "日本語", 6, "日本語" }, { "日本語", 5, "日本~" }, { "日本語", 4, "日 ~" }, { "日本語", 2, " ~" }, { "日", 1, "~" },
	{ "e\314\201e\314\201e\314\201", 3, "e\314\201e\314\201e\314\201" },
	{ "e\314\201e\314\201e\314\201", 2, "e\314\201~" },	/* the accent stays with its letter */
	{ "abc\314\201", 3, "abc\314\201" },	/* nothing is cut */
	{ "a\nb", 3, "a?b" }, { "a\377b", 4, "a?b " },
};

START_TEST(text_fits_columns_exactly)
{
	g_autofree char *out = text_fit(fits[_i].text, fits[_i].columns);

	ck_assert_str_eq(out, fits[_i].fitted);
	ck_assert_int_eq(text_width(out), MAX(fits[_i].columns, 0));
}
END_TEST

static const struct {
	const char *before, *text;
	int columns, indent;
	const char *wrapped;
} wraps[] = {
	{ "", "", 10, 2, "" },
	{ "", "one two three", 80, 2, "one two three" },
	{ "", "one two three", 7, 0, "one two\nthree" },
	{ "", "one two three", 8, 2, "one two\n  three" },
	{ "", "one two three", 6, 2, "one\n  two\n  three" },
	{ "", "a verylongwordhere b", 6, 1, "a\n verylongwordhere\n b" },
	{ "", "verylongwordhere", 6, 3, "verylongwordhere" },
	{ "", "one  two", 80, 0, "one  two" },
	{ "", "one      two", 7, 0, "one\ntwo" },
	{ "", "  lead", 80, 0, "  lead" },
	{ "", "trail   ", 80, 0, "trail" },
	{ "", "a\nb", 80, 2, "a\n  b" },
	{ "", "a\n\nb\n", 80, 2, "a\n\n  b" },
	{ "", "\na", 80, 0, "\na" },
	{ "why: ", "one two", 80, 5, "why: one two" },
	{ "why: ", "one two", 8, 5, "why: one\n     two" },
	{ "why: ", "onetwothree", 8, 2, "why: \n  onetwothree" },
	{ "x\n", "one two", 4, 1, "x\none\n two" },
	{ "long before\n", "one two", 7, 1, "long before\none two" },
	{ "", "日本 日本 日本", 9, 0, "日本 日本\n日本" },
	{ "", "a b", 0, 7, "a\nb" },
	{ "", "a\302\240b c", 3, 0, "a\302\240b\nc" },	/* a no-break space is none */
};

START_TEST(text_wraps_at_spaces)
{
	g_autoptr(GString) out = g_string_new(wraps[_i].before);

	text_wrap(out, wraps[_i].text, wraps[_i].columns, wraps[_i].indent);
	ck_assert_str_eq(out->str, wraps[_i].wrapped);
}
END_TEST

START_TEST(no_wrapped_line_is_too_wide_and_no_word_is_lost)
{
	GRand *rand = test_rand("wrap");

	for (int i = 0; i < 2000; i++) {
		g_autoptr(GString) text = g_string_new(NULL), out = g_string_new(NULL);
		g_auto(GStrv) lines = NULL;
		int columns = g_rand_int_range(rand, 12, 60), indent = g_rand_int_range(rand, 0, 4);

		for (int k = g_rand_int_range(rand, 0, 40); k > 0; k--) {
			for (int n = g_rand_int_range(rand, 1, 8); n > 0; n--)
				g_string_append(text, g_rand_boolean(rand) ? "x" : "é");
			g_string_append_c(text, ' ');
		}
		text_wrap(out, text->str, columns, indent);
		lines = g_strsplit(out->str, "\n", -1);
		for (char **line = lines; *line; line++) {
			ck_assert_int_le(text_width(*line), columns);
			ck_assert(!g_str_has_suffix(*line, " "));
		}
		g_strdelimit(out->str, "\n", ' ');
		for (char *p = strstr(out->str, "  "); p; p = strstr(out->str, "  "))
			memmove(p, p + 1, strlen(p));
		g_strstrip(text->str);
		ck_assert_str_eq(out->str, text->str);
	}
	g_rand_free(rand);
}
END_TEST

static const char *const commands[] = { "new", "outing", "stay",   "season", "happening",
					"due", "did",    "export", "étage" };

static const struct {
	const char *word, *nearest;
} nearests[] = {
	{ "outing", "outing" }, { "outign", "outing" }, { "outng", "outing" }, { "OUTINGS", "outing" },
	{ "seeson", "season" }, { "hapening", "happening" }, { "hapning", "happening" },
	{ "happenniggs", "happening" },
	{ "deu", "due" }, { "dut", "due" }, { "nwe", "new" }, { "ÉTAGE", "étage" }, { "etage", "étage" },
	{ "saesno", "season" }, { "saesnox", NULL },	/* two and three edits */
	{ "", NULL }, { "x", NULL }, { "xx", NULL }, { "foo", NULL }, { "dog", NULL }, { "import", "export" },
	{ "windlass", NULL }, { "\377", NULL }, { "out\377ng", NULL },
};

START_TEST(the_nearest_word_is_found)
{
	const char *found = text_nearest(nearests[_i].word, commands, G_N_ELEMENTS(commands));

	if (nearests[_i].nearest)
		ck_assert_pstr_eq(found, nearests[_i].nearest);
	else
		ck_assert_msg(!found, "\"%s\" taken for %s", nearests[_i].word, found);
}
END_TEST

START_TEST(an_endless_word_is_near_to_nothing)
{
	g_autofree char *text = repeated("outing", 2000), *typed = NULL;
	const char *list[] = { text, text };

	ck_assert_ptr_null(text_nearest(text, commands, G_N_ELEMENTS(commands)));
	ck_assert_ptr_null(text_nearest("outing", NULL, 0));
	text[64] = '\0';	/* the longest that is compared */
	list[0] = text;
	typed = g_strdup(text);
	typed[63] = 'x';
	ck_assert_ptr_eq(text_nearest(typed, list, 2), text);
}
END_TEST

static const struct {
	const char *text, *quoted;
} quotes[] = {
	{ "", "\"\"" },
	{ "2:75", "\"2:75\"" },
	{ "a\nb\033", "\"a\\x0ab\\x1b\"" },
	{ "caf\351", "\"caf\\xe9\"" },
	{ "1234567890123456789012345678901234567890", "\"1234567890123456789012345678901234567890\"" },
	{ "12345678901234567890123456789012345678901", "\"1234567890123456789012345678901234567890...\"" },
	{ "123456789012345678901234567890123456789\033", "\"123456789012345678901234567890123456789...\"" },
};

START_TEST(a_message_quotes_a_short_piece)
{
	g_autofree char *out = text_quoted(quotes[_i].text);

	ck_assert_str_eq(out, quotes[_i].quoted);
}
END_TEST

START_TEST(a_quote_of_many_accents_is_short)
{
	g_autofree char *text = repeated("\314\201", 10000), *out = text_quoted(text);

	ck_assert_uint_lt(strlen(out), 200);
	ck_assert(g_utf8_validate(out, -1, NULL));
}
END_TEST

static const struct {
	const char *a, *b;
	gboolean same;
} pairs[] = {
	{ "manual p. 41", " Manual  P. 41 ", TRUE },
	{ "manual p. 41", "manual p. 42", FALSE },
	{ "manual p. 41", "manual p.", FALSE },
	{ "manual p. 41", "manualp. 41", FALSE },
	{ "", "  ", TRUE },
	{ "", "manual", FALSE },
};

START_TEST(the_same_words_whatever_their_case_and_blanks)
{
	ck_assert_int_eq(text_same_words(pairs[_i].a, pairs[_i].b), pairs[_i].same);
	ck_assert_int_eq(text_same_words(pairs[_i].b, pairs[_i].a), pairs[_i].same);
}
END_TEST

static const gint64 numbers[] = { 0, 7, -7, 10, 1234567890, G_MAXINT64, G_MININT64 };

START_TEST(digits_of_whole_numbers)
{
	g_autofree char *want = g_strdup_printf("%" G_GINT64_FORMAT, numbers[_i]);
	char buf[INT_TEXT];
	int n = int_digits(numbers[_i], buf);

	ck_assert_int_eq(n, (int)strlen(want));
	ck_assert_mem_eq(buf, want, (size_t)n);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("Text is shown without harm and in its columns");
	TCase *tc = tcase_create("text");

	tcase_set_timeout(tc, 60);
	tcase_add_loop_test(tc, text_is_made_harmless, 0, G_N_ELEMENTS(harmless));
	tcase_add_test(tc, random_bytes_become_harmless);
	tcase_add_loop_test(tc, width_counts_display_columns, 0, G_N_ELEMENTS(widths));
	tcase_add_loop_test(tc, text_fits_columns_exactly, 0, G_N_ELEMENTS(fits));
	tcase_add_loop_test(tc, text_wraps_at_spaces, 0, G_N_ELEMENTS(wraps));
	tcase_add_test(tc, no_wrapped_line_is_too_wide_and_no_word_is_lost);
	tcase_add_loop_test(tc, the_nearest_word_is_found, 0, G_N_ELEMENTS(nearests));
	tcase_add_test(tc, an_endless_word_is_near_to_nothing);
	tcase_add_loop_test(tc, a_message_quotes_a_short_piece, 0, G_N_ELEMENTS(quotes));
	tcase_add_test(tc, a_quote_of_many_accents_is_short);
	tcase_add_loop_test(tc, the_same_words_whatever_their_case_and_blanks, 0, G_N_ELEMENTS(pairs));
	tcase_add_loop_test(tc, digits_of_whole_numbers, 0, G_N_ELEMENTS(numbers));
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
