#include "tui/edit.h"

#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static struct edit e;

static void
set_up(void)
{
	edit_init(&e, "");
}

static void
tear_down(void)
{
	edit_clear(&e);
}

static void
press(gunichar k)
{
	edit_key(&e, &(struct key_event) { .key = k });
}

static void
type(const char *text)
{
	for (; *text; text = g_utf8_next_char(text))
		press(g_utf8_get_char(text));
}

/* The text with a | where the cursor is. */
static void
is(const char *want)
{
	g_autofree char *left = g_strndup(edit_text(&e), e.at);
	g_autofree char *shown = g_strconcat(left, "|", edit_text(&e) + e.at, NULL);

	ck_assert_str_eq(shown, want);
}

START_TEST(keys_move_and_erase_by_whole_characters)
{
	type("bow 日本");
	press(K_LEFT);
	is("bow 日|本");
	press(K_BACKSPACE);
	is("bow |本");
	press(K_HOME);
	press(K_DELETE);
	is("|ow 本");
	press(K_WORD_RIGHT);
	is("ow| 本");
	press(K_CTRL('k'));
	is("ow|");
	press(K_CTRL('y'));
	is("ow 本|");
	press(K_CTRL('w'));
	is("ow |");
	press(K_CTRL('u'));
	is("|");
}
END_TEST

START_TEST(an_accent_stays_on_its_letter)
{
	type("Cafe\314\201 x");
	ck_assert_str_eq(edit_text(&e), "Caf\303\251 x");	/* composed as it came */
	edit_set(&e, "q\314\201x");	/* nothing to compose it into */
	press(K_HOME);
	press(K_RIGHT);
	is("q\314\201|x");
	press(K_BACKSPACE);
	is("|x");
}
END_TEST

START_TEST(a_letter_put_before_an_accent_takes_it)
{
	edit_set(&e, "\314\201x");	/* as a logbook may hold it */
	press(K_HOME);
	type("q");
	is("q\314\201|x");
	press(K_CTRL('u'));
	press(0x301);	/* on nothing */
	is("|x");
	edit_set(&e, "\314\201");
	press(K_HOME);
	type("e");
	is("\303\251|");
}
END_TEST

static const gunichar unseen[] = { 1, 0x1b, '\t', 0x7f, 0x85, 0x200e, 0x202e, 0x2028, 0x2066, 0xfeff, 0xe0041, 0xd800, 0x110000 };

START_TEST(what_turns_the_line_or_cannot_be_seen_never_enters)
{
	type("ab");
	press(K_HOME);
	press(unseen[_i]);
	edit_key(&e, &(struct key_event) { .key = unseen[_i], .pasted = unseen[_i] != '\t' });
	ck_assert_str_eq(edit_text(&e), "ab");
}
END_TEST

START_TEST(what_was_cut_is_put_back_where_the_cursor_is)
{
	type("one two three");
	press(K_WORD_LEFT);
	press(K_CTRL('w'));
	is("one |three");
	press(K_CTRL('y'));
	is("one two |three");
	press(K_END);
	press(K_CTRL('y'));
	is("one two threetwo |");
	press(K_CTRL('_'));
	is("one two three|");
}
END_TEST

START_TEST(pasted_lines_become_one_and_no_control_byte_enters)
{
	for (const char *p = "one\r\ttwo\033x"; *p; p++)
		edit_key(&e, &(struct key_event) { .key = *p == '\r' ? K_ENTER : (gunichar)*p, .pasted = TRUE });
	is("one  twox|");
	ck_assert(!edit_key(&e, &(struct key_event) { .key = 1, .pasted = TRUE }));
	ck_assert(!edit_key(&e, &(struct key_event) { .key = K_UP }));
}
END_TEST

START_TEST(undo_takes_a_run_of_typing_back_at_once)
{
	type("abc");
	press(K_LEFT);
	type("x");
	press(K_CTRL('_'));
	ck_assert_str_eq(edit_text(&e), "abc");
	press(K_CTRL('_'));
	ck_assert_str_eq(edit_text(&e), "");
	press(K_CTRL('_'));
	is("|");
}
END_TEST

START_TEST(a_line_that_is_full_loses_nothing)
{
	g_autofree char *full = g_strnfill(EDIT_MOST, 'x');

	edit_set(&e, full);
	type("y");
	press(K_CTRL('y'));
	ck_assert_str_eq(edit_text(&e), full);
}
END_TEST

static const struct { int w; const char *text; int back; const char *shown; int column; } scrolls[] = {
	{ 6, "abc", 0, "abc\n", 3 },	 { 6, "abcdef", 0, "bcdef\n", 5 }, { 6, "abcdefgh", 8, "abcde~\n", 0 },
	{ 5, "日本海", 0, "本海\n", 4 }, { 5, "日本海", 1, "日本~\n", 4 }, { 1, "abc", 0, "\n", 0 },
};

START_TEST(the_cursor_is_always_in_sight)
{
	struct grid *g = grid_new(1, 10, FALSE);
	struct area a = grid_area(g);
	g_autofree char *text = NULL;

	edit_set(&e, scrolls[_i].text);
	for (int i = 0; i < scrolls[_i].back; i++)
		press(K_LEFT);
	edit_draw(&e, &a, 0, 0, scrolls[_i].w, TRUE);
	text = grid_text(g);
	ck_assert_str_eq(text, scrolls[_i].shown);
	ck_assert_int_eq(g->cursor_x, scrolls[_i].column);
	grid_free(g);
}
END_TEST

static const struct { gboolean ascii; const char *text; int column; } columns[] = {
	{ FALSE, "\303\251\346\227\245q\314\201", 4 },
	{ TRUE, "\303\251\302\275\346\227\245", 7 },	/* e 1/2 ? */
	{ FALSE, "a\342\200\256b", 10 },	/* a<U+202E>b */
	{ FALSE, "a\nb", 3 },
};

START_TEST(the_cursor_stands_behind_what_the_screen_shows)
{
	struct grid *g = grid_new(1, 20, columns[_i].ascii);
	struct area a = grid_area(g);
	g_autofree char *text = NULL;

	edit_set(&e, columns[_i].text);
	edit_draw(&e, &a, 0, 0, 20, TRUE);
	text = grid_text(g);
	*strchr(text, '\n') = '\0';
	ck_assert_msg(g->cursor_x == columns[_i].column && g_utf8_strlen(text, -1) >= 2, "%d in %s", g->cursor_x, text);
	ck_assert_int_eq(g->cursor_x, columns[_i].ascii ? (int)strlen(text) : columns[_i].column);
	grid_free(g);
}
END_TEST

START_TEST(any_keys_leave_whole_text_and_the_cursor_between_characters)
{
	static const gunichar some[] = { 'a', ' ', 0xe9, 0x301, 0x65e5, 0x1f6a2, K_LEFT, K_RIGHT, K_HOME, K_END, K_BACKSPACE,
					 K_DELETE, K_WORD_LEFT, K_WORD_RIGHT, 11, 21, 23, 25, 31, 0x200d };
	const char *given = g_getenv("SEED");
	guint32 seed = given ? (guint32)strtoul(given, NULL, 10) : g_random_int();
	GRand *r = g_rand_new_with_seed(seed);

	printf("any keys: SEED=%u\n", seed);
	for (int i = 0; i < 20000; i++) {
		press(some[g_rand_int_range(r, 0, G_N_ELEMENTS(some))]);
		ck_assert(g_utf8_validate(edit_text(&e), -1, NULL));
		ck_assert_uint_le(e.at, e.text->len);
		ck_assert((edit_text(&e)[e.at] & 0xc0) != 0x80);
		ck_assert(!e.at || !g_unichar_iszerowidth(g_utf8_get_char(edit_text(&e) + e.at)));
	}
	g_rand_free(r);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("A line as it is typed");
	TCase *tc = tcase_create("edit");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_checked_fixture(tc, set_up, tear_down);
	tcase_add_test(tc, keys_move_and_erase_by_whole_characters);
	tcase_add_test(tc, an_accent_stays_on_its_letter);
	tcase_add_test(tc, a_letter_put_before_an_accent_takes_it);
	tcase_add_loop_test(tc, what_turns_the_line_or_cannot_be_seen_never_enters, 0, G_N_ELEMENTS(unseen));
	tcase_add_test(tc, what_was_cut_is_put_back_where_the_cursor_is);
	tcase_add_loop_test(tc, the_cursor_stands_behind_what_the_screen_shows, 0, G_N_ELEMENTS(columns));
	tcase_add_test(tc, pasted_lines_become_one_and_no_control_byte_enters);
	tcase_add_test(tc, undo_takes_a_run_of_typing_back_at_once);
	tcase_add_test(tc, a_line_that_is_full_loses_nothing);
	tcase_add_loop_test(tc, the_cursor_is_always_in_sight, 0, G_N_ELEMENTS(scrolls));
	tcase_add_test(tc, any_keys_leave_whole_text_and_the_cursor_between_characters);
	suite_add_tcase(s, tc);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
