/* A page of text to read. */
#include "screens.h"

#include "base/text.h"

static const char story[] =
	"Renew the impeller (water-pump.renew)\n"
	"2 years (published: press summaries of an insurer's study of sinkings: 2 to 3 years)\n"
	"\n"
	"Fitted 2 Mar 2022; Schraubenschlüssel für die Küste; 冷却水ポンプの羽根車を交換し羽根の数を数える\n"
	"  indented, and a combining e\xcc\x81 in it";

static void
page(const char *text)
{
	app_page(app, "What is known", g_strdup(text));
	app_draw(app, grid);
}

static void
size(int h, int w)
{
	grid_size(grid, h, w);
	app_draw(app, grid);
}

static struct list *
lines(void)
{
	return app->view[app->depth - 1].kind->list(app_data(app));
}

static const char *
line(int i)
{
	return ((const struct row *)(const void *)lines()->rows->data)[i].text;
}

static char *
without_blanks(const char *text)
{
	GString *out = g_string_new(NULL);

	for (; *text; text++)
		if (*text != ' ' && *text != '\n')
			g_string_append_c(out, *text);
	return g_string_free(out, FALSE);
}

static gboolean
in_page(void)
{
	return app->view[app->depth - 1].kind == &view_text;
}

static void
numbered(int n)
{
	GString *out = g_string_new(NULL);

	for (int i = 1; i <= n; i++)
		g_string_append_printf(out, "number %d%s\n", i, i % 10 ? "" : " a tenth");
	page(out->str);
	g_string_free(out, TRUE);
}

START_TEST(nothing_is_lost_at_any_width)
{
	g_autofree char *want = without_blanks(story);

	page(story);
	for (int w = 40; w <= 200; w++) {
		g_autoptr(GString) all = g_string_new(NULL);
		g_autofree char *shown = NULL;

		size(24, w);
		for (int i = 0; i < (int)lines()->rows->len; i++) {
			ck_assert_msg(text_width(line(i)) <= w - 4, "%d columns: %s", w, line(i));
			g_string_append(all, line(i));
		}
		shown = without_blanks(all->str);
		ck_assert_str_eq(shown, want);
	}
}
END_TEST

START_TEST(a_word_wider_than_the_screen_goes_on_in_the_next_line)
{
	g_autofree char *word = g_strnfill(1000, 'x'), *text = g_strdup_printf("%send", word);

	page(text);
	size(24, 40);
	ck_assert_int_eq((int)lines()->rows->len, 1 + (1003 - 36 + 33) / 34);
	key(K_END);
	ck_shows("xend");
	ck_hides("~ ");
}
END_TEST

START_TEST(at_another_width_the_line_selected_holds_the_same_words)
{
	page("one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen\n"
	     "seventeen eighteen nineteen twenty");
	size(24, 40);
	while (!strstr(list_row(lines())->text, "fifteen"))
		key(K_DOWN);
	size(24, 200);
	ck_assert_ptr_nonnull(strstr(list_row(lines())->text, "fifteen"));
	size(24, 40);
	key(K_END);
	size(24, 60);
	ck_assert_ptr_nonnull(strstr(list_row(lines())->text, "twenty"));
}
END_TEST

START_TEST(the_ends_are_a_key_away_and_it_says_where_one_is)
{
	numbered(80);
	ck_shows("line 1 of 80");
	ck_hides("number 80");
	key(K_END);
	ck_shows("line 80 of 80");
	ck_shows("number 80");
	key(K_HOME);
	ck_shows("line 1 of 80");
}
END_TEST

START_TEST(page_by_page_every_line_is_met)
{
	gboolean met[81] = { FALSE };

	numbered(80);
	for (int pages = 0; pages < 10; pages++) {
		g_autofree char *frame = grid_text(grid);

		for (int i = 1; i <= 80; i++) {
			g_autofree char *words = g_strdup_printf("number %d\n", i), *tenth = g_strdup_printf("number %d a", i);

			met[i] |= strstr(frame, words) || strstr(frame, tenth);
		}
		key(K_PAGE_DOWN);
	}
	for (int i = 1; i <= 80; i++)
		ck_assert_msg(met[i], "number %d was passed over", i);
}
END_TEST

START_TEST(what_fits_is_not_counted)
{
	numbered(5);
	ck_hides("of 5");
	ck_assert_int_eq(grid->cursor_y, 2);
}
END_TEST

START_TEST(a_long_title_gives_way_to_where_one_is)
{
	g_autofree char *title = g_strnfill(200, 't'), *text = g_strnfill(4000, '\n');

	text[3998] = 'x';
	app_page(app, title, g_strdup(text));
	app_draw(app, grid);
	ck_shows("ttt~ line 1 of ");
}
END_TEST

START_TEST(only_lines_with_the_words_show_until_esc)
{
	numbered(80);
	find("TENTH");
	ck_shows("number 70 a tenth");
	ck_hides("number 71");
	key(K_ESC);
	ck_shows("number 11");
	ck_assert(in_page());
	key(K_ESC);
	ck_assert(!in_page());
}
END_TEST

START_TEST(words_that_no_line_holds_leave_the_way_back)
{
	numbered(80);
	find("eleventh");
	ck_shows("No line holds these words");
	ck_hides("line 0");
	key(K_DOWN);
	key(K_END);
	key(K_ESC);
	ck_shows("number 1");
}
END_TEST

START_TEST(hostile_text_does_nothing_to_the_terminal)
{
	page("\033[2Jgone\a\r\x9b" "31m\xff\xe2\x80\xae" "drawkcab\ttab");
	ck_shows("\\x1b[2Jgone");
	ck_shows("<U+202E>drawkcab tab");
	ck_shows("\\xff");
}
END_TEST

START_TEST(a_page_without_a_word_can_be_left)
{
	page("");
	ck_assert_int_ge(grid->cursor_y, 0);
	key(K_DOWN);
	key(K_ENTER);
	key('q');
	ck_assert(!in_page());
	page("\n\n");
	key('q');
	ck_assert(!in_page());
}
END_TEST

START_TEST(too_many_pages_are_refused_in_words)
{
	for (int i = 0; i < 2 * APP_DEPTH; i++)
		page(story);
	ck_assert_int_eq(app->depth, APP_DEPTH);
	ck_shows("too many pages");
	for (int i = 1; i < APP_DEPTH; i++)
		key('q');
	ck_assert_int_eq(app->depth, 1);
	ck_assert_int_eq(app->wish, WISH_NONE);
}
END_TEST

START_TEST(a_page_is_as_it_was_looked_at)
{
	page(story);
	for (int k = 0; k < GOLDENS; k++)
		same_screen("text", &goldens[k]);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("A page of text");
	TCase *tc = tcase_create("text");

	tcase_add_checked_fixture(tc, demo_begin, app_end);
	tcase_set_timeout(tc, 60);
	tcase_add_test(tc, nothing_is_lost_at_any_width);
	tcase_add_test(tc, a_word_wider_than_the_screen_goes_on_in_the_next_line);
	tcase_add_test(tc, at_another_width_the_line_selected_holds_the_same_words);
	tcase_add_test(tc, the_ends_are_a_key_away_and_it_says_where_one_is);
	tcase_add_test(tc, page_by_page_every_line_is_met);
	tcase_add_test(tc, what_fits_is_not_counted);
	tcase_add_test(tc, a_long_title_gives_way_to_where_one_is);
	tcase_add_test(tc, only_lines_with_the_words_show_until_esc);
	tcase_add_test(tc, words_that_no_line_holds_leave_the_way_back);
	tcase_add_test(tc, hostile_text_does_nothing_to_the_terminal);
	tcase_add_test(tc, a_page_without_a_word_can_be_left);
	tcase_add_test(tc, too_many_pages_are_refused_in_words);
	tcase_add_test(tc, a_page_is_as_it_was_looked_at);
	suite_add_tcase(s, tc);
	return run_suite(s);
}
