/* What a shell test can't reach of the interface that both front ends see. */
#include "logbook/book.h"

#include "base/err.h"
#include "logbook/outing.h"
#include "open.h"

/* ---- finding ---- */

static const struct { const char *words, *name; } found_tasks[] = {
	{ "gimbal-bearing.grease", "gimbal-bearing.grease" },
	{ "GIMBAL-BEARING.GREASE", "gimbal-bearing.grease" },
	{ "shift-cable bellows", "bellows-shift.renew" },
	{ "transom core", "transom-core.sound" },
	{ "core transom", "transom-core.sound" },
	{ "Transom core: sound", "transom-core.sound" },
	{ "  transom   core ", "transom-core.sound" },
};

START_TEST(a_task_is_found_by_its_words)
{
	g_autoptr(GError) err = NULL;
	struct task t;

	open_demo();
	for (guint i = 0; i < G_N_ELEMENTS(found_tasks); i++) {
		ck_assert_msg(book_find_task(book, boat.id, found_tasks[i].words, &t, &err), "%s", err ? err->message : "?");
		ck_assert_str_eq(t.name, found_tasks[i].name);
		record_clear(RECORD_TASK, &t);
	}
}
END_TEST

/* Every task is found by its own name, although others' names and titles hold the same words; so is every fitting. */
START_TEST(a_whole_name_is_never_ambiguous)
{
	g_autoptr(GArray) tasks = NULL, fittings = NULL;

	open_demo();
	tasks = book_records(book, RECORD_TASK, boat.id, NULL);
	fittings = book_records(book, RECORD_FITTING, boat.id, NULL);
	ck_assert_uint_gt(tasks->len, 80);
	for (guint i = 0; i < tasks->len; i++) {
		const struct task *want = &((const struct task *)(const void *)tasks->data)[i];
		struct task t;

		ck_assert_msg(book_find_task(book, boat.id, want->name, &t, NULL), "%s", want->name);
		ck_assert_int_eq(t.id, want->id);
		record_clear(RECORD_TASK, &t);
	}
	for (guint i = 0; i < fittings->len; i++) {
		const struct fitting *want = &((const struct fitting *)(const void *)fittings->data)[i];
		struct fitting f;

		ck_assert_msg(book_find_fitting(book, boat.id, want->path, &f, NULL), "%s", want->path);
		ck_assert_int_eq(f.id, want->id);
		record_clear(RECORD_FITTING, &f);
	}
}
END_TEST

START_TEST(a_fitting_s_whole_name_comes_before_others_that_hold_it)
{
	static const char *const names[] = { "propeller", "Propeller", "drive/propeller" };
	g_autoptr(GError) err = NULL;
	struct fitting f;

	open_plain("One");
	import_text(RECORD_FITTING, "path,title\ndrive/propeller,Propeller\ndrive/propeller-shaft,Propeller shaft\n"
				    "port/shaft,Shaft\nstarboard/shaft,Shaft\n");
	for (guint i = 0; i < G_N_ELEMENTS(names); i++) {
		ck_assert(book_find_fitting(book, boat.id, names[i], &f, NULL));
		ck_assert_str_eq(f.path, "drive/propeller");
		record_clear(RECORD_FITTING, &f);
	}
	ck_assert(!book_find_fitting(book, boat.id, "shaft", &f, &err));
	ck_assert(strstr(err->message, "port/shaft") && strstr(err->message, "starboard/shaft"));
	ck_assert(book_find_fitting(book, boat.id, "port shaft", &f, NULL));
	record_clear(RECORD_FITTING, &f);
}
END_TEST

START_TEST(words_of_several_tasks_name_the_candidates)
{
	g_autoptr(GError) err = NULL;
	struct task t;

	open_plain("One");
	import_text(RECORD_FITTING, "path,title\npump,Bilge pump\n");
	for (int i = 1; i <= 8; i++) {
		g_autofree char *name = g_strdup_printf("pump.look-%d", i);

		add_task(name, "pump");
		if (i != 3)
			continue;
		ck_assert(!book_find_task(book, boat.id, "pump", &t, &err));
		ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_INPUT));
		ck_assert_ptr_nonnull(strstr(err->message, "pump.look-1, pump.look-2, pump.look-3: name one"));
		g_clear_error(&err);
	}
	ck_assert(!book_find_task(book, boat.id, "bilge", &t, &err));
	ck_assert_ptr_nonnull(strstr(err->message, "pump.look-6, ...: name one"));
	ck_assert_ptr_null(strstr(err->message, "pump.look-7"));
	g_clear_error(&err);
	ck_assert(!book_find_task(book, boat.id, "propeller", &t, &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_NOT_FOUND));
	g_clear_error(&err);
	ck_assert(!book_find_task(book, boat.id, "", &t, &err));
	g_clear_error(&err);
	ck_assert(!book_find_task(book, boat.id, "  ", &t, &err));
	g_clear_error(&err);
	ck_assert(book_find_task(book, boat.id, "look-8 PUMP", &t, NULL));
	record_clear(RECORD_TASK, &t);
}
END_TEST

START_TEST(another_boats_tasks_are_not_found)
{
	g_autoptr(GError) err = NULL;
	struct task t;
	struct boat other;

	open_plain("One");
	import_text(RECORD_FITTING, "path,title\npump,Bilge pump\n");
	add_task("pump.look", "pump");
	open_plain("Two");
	ck_assert(!book_find_task(book, boat.id, "pump.look", &t, &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_NOT_FOUND));
	g_clear_error(&err);
	ck_assert(!book_boat(book, NULL, &other, &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_INPUT));
	ck_assert_ptr_nonnull(strstr(err->message, "One, Two"));
	g_clear_error(&err);
	ck_assert(!book_boat(book, "one", &other, &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_NOT_FOUND));
}
END_TEST

/* ---- keys ---- */

START_TEST(keys_go_both_ways)
{
	static const gint64 keys[] = { 1, 2, 12345, G_MAXINT32, G_GINT64_CONSTANT(1) << 62, G_MAXINT64 };
	static const char *const wrong[] = { "", "17", "bcdfghjklmnpqrs", "bcdfghjklmnpqrstv",
					     "aaaaaaaaaaaaaaaa", "bcdfghjklmnpqrs1",
					     " bcdfghjklmnpqrs" };
	gint64 key;

	for (guint i = 0; i < G_N_ELEMENTS(keys); i++) {
		g_autofree char *text = book_key_text(keys[i]);

		ck_assert_uint_eq(strlen(text), 16);
		ck_assert_uint_eq(strspn(text, "bcdfghjklmnpqrstvwxz"), 16);
		ck_assert(book_key(text, &key));
		ck_assert_int_eq(key, keys[i]);
	}
	for (guint i = 0; i < G_N_ELEMENTS(wrong); i++)
		ck_assert_msg(!book_key(wrong[i], &key), "%s", wrong[i]);
}
END_TEST

/* ---- the file ---- */

START_TEST(a_logbook_is_never_made_over_a_file)
{
	g_autoptr(GError) err = NULL;
	g_autofree char *text = NULL;

	ck_assert(g_file_set_contents(path, "letters", -1, NULL));
	ck_assert_ptr_null(book_create(path, &who, &err));
	ck_assert_ptr_nonnull(err);
	g_clear_error(&err);
	ck_assert_ptr_null(book_open(path, BOOK_READ, &who, &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_STORE));
	ck_assert(g_file_get_contents(path, &text, NULL, NULL));
	ck_assert_str_eq(text, "letters");
}
END_TEST

START_TEST(a_logbook_opened_for_reading_is_not_written)
{
	g_autoptr(GError) err = NULL;
	struct outing_form f = { .share = { { NULL, H, NONE } }, .n_shares = 1 };
	struct outing_said said = { 0 };
	struct book_entry e = { 0 };
	g_autoptr(GArray) before = NULL, after = NULL;

	open_plain("One");
	reopen(BOOK_READ);
	before = book_history(book, 0, NULL);
	f.boat = boat.id;
	f.instead_of = NONE;
	record_init(RECORD_OUTING, &f.what);
	f.what.date = who.today;
	ck_assert(!book_outing(book, &f, &said, &err));
	ck_assert_ptr_nonnull(err);
	g_clear_error(&err);
	outing_said_clear(&said);
	ck_assert(!book_undo(book, &e, &err));
	ck_assert_ptr_nonnull(err);
	reopen(BOOK_WRITE);
	after = book_history(book, 0, NULL);
	ck_assert_uint_eq(before->len, after->len);
}
END_TEST

START_TEST(the_journal_tells_what_undoes_what)
{
	g_autoptr(GArray) all = NULL;
	const struct book_entry *list;
	struct book_entry e = { 0 };

	open_plain("One");
	open_plain("Two");
	ck_assert(book_undo(book, &e, NULL));
	ck_assert_str_eq(e.what, "boat Two");
	book_entry_clear(&e);
	ck_assert(book_redo(book, &e, NULL));
	book_entry_clear(&e);
	ck_assert(book_undo(book, &e, NULL));
	ck_assert_str_eq(e.what, "boat Two");
	book_entry_clear(&e);
	all = book_history(book, 0, NULL);
	list = (const void *)all->data;
	ck_assert_uint_eq(all->len, 5);
	for (guint i = 0; i < 5; i++) {
		ck_assert_int_eq(list[i].seq, 5 - i);
		ck_assert_str_eq(list[i].who, "tester");
		ck_assert_str_eq(list[i].device, "desk");
		ck_assert_int_eq(list[i].at, 1795600000);
	}
	ck_assert_int_eq(list[0].undoes == NONE, 0);
	ck_assert(list[1].redoes != NONE);
	ck_assert_int_eq(list[2].undoes, 2);
	ck_assert(list[4].undone_by == NONE);
	ck_assert(list[3].undone_by != NONE);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("A logbook as both front ends see it");
	TCase *tc = tcase_create("books");

	tcase_add_test(tc, keys_go_both_ways);
	tcase_add_checked_fixture(tc, setup, teardown);
	tcase_add_test(tc, a_task_is_found_by_its_words);
	tcase_add_test(tc, a_whole_name_is_never_ambiguous);
	tcase_add_test(tc, a_fitting_s_whole_name_comes_before_others_that_hold_it);
	tcase_add_test(tc, words_of_several_tasks_name_the_candidates);
	tcase_add_test(tc, another_boats_tasks_are_not_found);
	tcase_add_test(tc, a_logbook_is_never_made_over_a_file);
	tcase_add_test(tc, a_logbook_opened_for_reading_is_not_written);
	tcase_add_test(tc, the_journal_tells_what_undoes_what);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
