/* The journal: every entry that was made, and what each changed. */
#include "form_keys.h"

#include <glib/gstdio.h>

static struct list *
entries(void)
{
	return app->view[app->depth - 1].kind->list(app_data(app));
}

static void
log_outing(const char *hours)
{
	key('o');
	type(hours);
	key(K_ENTER);
	key(K_ENTER);
}

/* So many entries after the demo's own, by another program. */
static void
add_entries(int n)
{
	g_autoptr(GError) err = NULL;
	struct task t;

	reopen(BOOK_WRITE);
	ck_assert(book_find_task(book, boat.id, "gimbal-bearing.grease", &t, &err));
	for (int i = 0; i < n; i++)
		ck_assert(book_retire_task(book, &t, t.retired != 1, &err));
	record_clear(RECORD_TASK, &t);
	g_clear_pointer(&book, book_close);
	app_idle(app);
}

START_TEST(the_newest_entry_stands_first_with_when_and_who)
{
	log_outing("2.4");
	key('7');
	ck_shows("> ");
	ck_assert_int_eq(list_row(entries())->key, 2);
	ck_shows("2  2026-11-25 09:46  tester");
	key(K_DOWN);
	ck_assert_int_eq(list_row(entries())->key, 1);
}
END_TEST

START_TEST(enter_shows_what_the_entry_changed)
{
	log_outing("2.4");
	key('7');
	key(K_ENTER);
	ck_shows("Entry 2: ");
	ck_shows("2026-11-25 09:46 UTC, by tester on desk");
	ck_shows("added");
	ck_shows("hours 2.4 h");
	key(K_ESC);
	ck_assert_int_eq(list_row(entries())->key, 2);
}
END_TEST

START_TEST(undo_from_here_is_an_entry_and_says_what_it_takes_back)
{
	log_outing("2.4");
	key('7');
	key('u');
	ck_shows("(taken back)");
	ck_shows("undo: ");
	key(K_ENTER);
	ck_shows("taken back by entry 3");
	key(K_ESC);
	key(K_UP);
	key(K_ENTER);
	ck_shows("takes back entry 2");
	ck_shows("taken out");
}
END_TEST

START_TEST(redo_from_here_says_what_it_brings_back)
{
	log_outing("2.4");
	key('7');
	key('u');
	key('r');
	ck_shows("redo: ");
	key(K_HOME);
	key(K_ENTER);
	ck_shows("brings back what was taken back by entry 3");
}
END_TEST

START_TEST(an_entry_is_not_taken_out)
{
	log_outing("2.4");
	key('7');
	key('x');
	key(K_DELETE);
	key('d');
	key('e');
	key(K_ENTER);
	ck_hides("taken back");
	ck_shows("Entry 2: ");
}
END_TEST

START_TEST(going_down_reads_on_to_the_first_entry)
{
	int at = 0;

	add_entries(430);
	key('7');
	ck_assert_int_eq(list_row(entries())->key, 431);
	ck_assert_int_lt((int)entries()->rows->len, 431);
	for (; at < 500 && list_row(entries())->key > 1; at++) {
		ck_assert_int_eq(list_row(entries())->key, 431 - at);
		key(K_DOWN);
	}
	ck_assert_int_eq(at, 430);
	key(K_DOWN);
	ck_assert_int_eq(list_row(entries())->key, 1);
}
END_TEST

START_TEST(end_is_the_first_entry_that_was_made)
{
	add_entries(430);
	key('7');
	key(K_END);
	ck_assert_int_eq(list_row(entries())->key, 1);
	ck_shows("the demo");
}
END_TEST

START_TEST(all_entries_are_searched_also_those_not_yet_read)
{
	add_entries(430);
	key('7');
	find("the demo");
	ck_assert_int_eq(list_row(entries())->key, 1);
	key(K_ENTER);
	ck_shows("Entry 1: ");
}
END_TEST

START_TEST(what_was_selected_stays_selected_when_one_is_added)
{
	add_entries(3);
	key('7');
	key(K_DOWN);
	ck_assert_int_eq(list_row(entries())->key, 3);
	add_entries(2);
	ck_assert_int_eq(list_row(entries())->key, 3);
	ck_assert_int_eq((int)entries()->rows->len, 6);
}
END_TEST

START_TEST(the_dossier_is_written_from_here_and_from_the_boat)
{
	g_autofree char *file = g_build_filename(folder, "heron.txt", NULL), *text = NULL;
	int before;

	key('7');
	before = (int)entries()->rows->len;
	key('3');
	key('D');
	ck_assert(in_form());
	key(K_ESC);
	key('7');
	key('D');
	fill("file", file);
	into("names");
	key(K_RIGHT);
	ck_will("Text into ");
	record();
	ck_shows("the dossier is written to ");
	ck_assert(g_file_get_contents(file, &text, NULL, NULL));
	ck_assert_ptr_nonnull(strstr(text, "This logbook verifies"));
	ck_assert_ptr_nonnull(strstr(text, "COSTS\n"));
	ck_assert_ptr_null(strstr(text, "Grey Heron"));
	ck_assert_int_eq((int)entries()->rows->len, before);
	key('D');
	fill("file", file);
	ck_assert_ptr_nonnull(form_field(app_data(app), "file")->wrong);
	record();
	ck_assert(in_form());
	g_remove(file);
}
END_TEST

START_TEST(the_form_of_the_dossier_is_as_it_was_looked_at)
{
	key('3');
	key('D');
	fill("file", "/nowhere/heron.pdf");
	for (int k = 0; k < GOLDENS; k++)
		same_screen("form-dossier", &goldens[k]);
	record();
	ck_shows("can't write /nowhere/heron.pdf");
	ck_assert(in_form());
}
END_TEST

START_TEST(the_history_is_as_it_was_looked_at)
{
	log_outing("2.4");
	key('7');
	key('u');
	for (int k = 0; k < GOLDENS; k++)
		same_screen("history-undone", &goldens[k]);
	key(K_UP);
	key(K_ENTER);
	ck_shows("Entry 3: ");
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("History");
	TCase *tc = tcase_create("history");

	tcase_add_checked_fixture(tc, demo_begin, app_end);
	tcase_set_timeout(tc, 60);
	tcase_add_test(tc, the_newest_entry_stands_first_with_when_and_who);
	tcase_add_test(tc, enter_shows_what_the_entry_changed);
	tcase_add_test(tc, undo_from_here_is_an_entry_and_says_what_it_takes_back);
	tcase_add_test(tc, redo_from_here_says_what_it_brings_back);
	tcase_add_test(tc, an_entry_is_not_taken_out);
	tcase_add_test(tc, going_down_reads_on_to_the_first_entry);
	tcase_add_test(tc, end_is_the_first_entry_that_was_made);
	tcase_add_test(tc, all_entries_are_searched_also_those_not_yet_read);
	tcase_add_test(tc, what_was_selected_stays_selected_when_one_is_added);
	tcase_add_test(tc, the_history_is_as_it_was_looked_at);
	tcase_add_test(tc, the_dossier_is_written_from_here_and_from_the_boat);
	tcase_add_test(tc, the_form_of_the_dossier_is_as_it_was_looked_at);
	suite_add_tcase(s, tc);
	return run_suite(s);
}
