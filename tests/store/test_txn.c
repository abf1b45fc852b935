#include "fixture.h"
#include "store/holder.h"
#include "store/inside.h"
#include "store/journal.h"
#include "store/rows.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

/* A child that opens the logbook, does something, says so (at_once: before it is done), and waits until it is told to
 * end or is killed. */
struct other {
	pid_t pid;
	int to, from;
};

static void
other_end(struct other *o, int signal)
{
	int status;

	if (signal)
		kill(o->pid, signal);
	else
		ck_assert_int_eq(write(o->to, "x", 1), 1);
	close(o->to);
	close(o->from);
	ck_assert_int_eq(waitpid(o->pid, &status, 0), o->pid);
	ck_assert_int_eq(status, signal);
}

static struct other
other_start(void (*work)(struct db *), gboolean at_once)
{
	int down[2], up[2];
	struct other o;
	char byte;

	ck_assert_int_eq(pipe(down), 0);
	ck_assert_int_eq(pipe(up), 0);
	o.pid = fork();
	if (!o.pid) {
		struct db *db = fixture_open("boat.db", DB_WRITE);

		close(down[1]);
		close(up[0]);
		if (!at_once)
			work(db);
		if (write(up[1], "x", 1) != 1)
			_exit(1);
		if (at_once)
			work(db);
		_exit(read(down[0], &byte, 1) == 1 ? 0 : 1);
	}
	close(down[0]);
	close(up[1]);
	o.to = down[1];
	o.from = up[0];
	ck_assert_int_eq(read(o.from, &byte, 1), 1);
	return o;
}

static void
hold_writing(struct db *db)
{
	fixture_begin(db);
}

static void
hold_reading(struct db *db)
{
	struct cells *c = cells_open(db, SQL_WALK_OUTING);

	ck_assert(cells_next(c));
}

static void
setup(void)
{
	fixture_setup();
	db_close(fixture_book("boat.db"));
}

START_TEST(a_second_writer_is_told_who_holds_the_logbook)
{
	struct other o = other_start(hold_writing, FALSE);
	struct db *db = fixture_open("boat.db", DB_WRITE);
	g_autofree char *comm = NULL, *words = NULL;
	GError *err = NULL;

	ck_assert(g_file_get_contents("/proc/self/comm", &comm, NULL, NULL));
	words = g_strdup_printf("boat.db is being written by %s (process %d): try again when it is done",
				g_strchomp(comm), (int)o.pid);
	db_set_patience(db, 1);
	fixture_fails(db_begin(db, &err), err, ERR_STORE, words);
	other_end(&o, 0);
	fixture_begin(db);
	db_rollback(db);
	db_close(db);
}
END_TEST

START_TEST(a_commit_that_a_reader_holds_up_says_so_and_changes_nothing)
{
	struct other o = other_start(hold_reading, FALSE);
	struct db *db = fixture_open("boat.db", DB_WRITE);
	g_autofree char *before = fixture_dump(db), *after = NULL, *words = NULL;
	struct entry_head head = fixture_head("wait");
	GError *err = NULL;

	words = g_strdup_printf("(process %d)", (int)o.pid);
	db_set_patience(db, 1);
	fixture_begin(db);
	fixture_works(row_drop(db, RECORD_OUTING, fixture_key(RECORD_OUTING, 9), &err), err);
	fixture_fails(db_commit(db, &head, NULL, &err), err, ERR_STORE, words);
	other_end(&o, 0);
	after = fixture_dump(db);
	ck_assert_str_eq(before, after);
	fixture_put(db, RECORD_OUTING, 40, 40);
	db_close(db);
}
END_TEST

START_TEST(the_holder_of_a_free_file_is_not_made_up)
{
	g_autofree char *words = holder_words(fixture_path("boat.db"));

	ck_assert_str_eq(words, "written by another program");
}
END_TEST

START_TEST(reading_goes_on_while_another_process_writes)
{
	struct other o = other_start(hold_writing, FALSE);
	struct db *db = fixture_open("boat.db", DB_READ);

	db_set_patience(db, 1);
	g_free(fixture_dump(db));
	db_close(db);
	other_end(&o, 0);
}
END_TEST

static void
change_much(struct db *db)
{
	GError *err = NULL;

	/* So little cache that changed pages reach the file before the commit. */
	sqlite3_exec(db->conn, "PRAGMA cache_size = 2", NULL, NULL, NULL);
	fixture_begin(db);
	for (int n = 100; n < 600; n++) {
		gint64 record[FIXTURE_RECORD / sizeof(gint64)];

		fixture_record(RECORD_SERVICE, n, record);
		fixture_works(row_put(db, RECORD_SERVICE, record, &err), err);
		record_clear(RECORD_SERVICE, record);
	}
	fixture_works(row_drop(db, RECORD_OUTING, fixture_key(RECORD_OUTING, 9), &err), err);
}

START_TEST(a_process_killed_within_a_command_leaves_the_logbook_as_it_was)
{
	struct db *db = fixture_open("boat.db", DB_READ);
	g_autofree char *dump = fixture_dump(db), *bytes = fixture_bytes(db_path(db)), *after = NULL;
	struct other o;

	db_close(db);
	o = other_start(change_much, FALSE);
	other_end(&o, SIGKILL);
	after = fixture_bytes(fixture_path("boat.db"));
	ck_assert_str_ne(bytes, after);
	ck_assert(g_file_test(fixture_path("boat.db-journal"), G_FILE_TEST_EXISTS));
	db = fixture_open("boat.db", _i ? DB_WRITE : DB_READ);
	g_free(after);
	after = fixture_dump(db);
	ck_assert_str_eq(dump, after);
	db_close(db);
	ck_assert_int_eq(fixture_files(), 1);
}
END_TEST

static void
read_unfinished(struct db *unused)
{
	GError *err = NULL;

	(void)unused;
	if (!geteuid())
		ck_assert_int_eq(setuid(65534), 0);
	fixture_fails(db_open(fixture_path("boat.db"), DB_READ, &err), err, ERR_STORE, "was stopped while it wrote");
}

START_TEST(an_unfinished_change_where_nothing_can_be_written_is_explained)
{
	g_autofree char *folder = g_path_get_dirname(fixture_path("boat.db"));
	struct other o = other_start(change_much, FALSE);
	pid_t child;
	int status;

	other_end(&o, SIGKILL);
	ck_assert_int_eq(g_chmod(fixture_path("boat.db"), 0444), 0);
	ck_assert_int_eq(g_chmod(fixture_path("boat.db-journal"), 0444), 0);
	ck_assert_int_eq(g_chmod(folder, 0555), 0);
	child = fork();
	if (!child) {
		read_unfinished(NULL);
		_exit(0);
	}
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert_int_eq(status, 0);
	ck_assert_int_eq(g_chmod(folder, 0700), 0);
}
END_TEST

/* A command of one outing, as often as it takes. */
static void
write_outings(struct db *db, int from, int to)
{
	db_set_patience(db, 60000);
	for (int n = from; n <= to; n++)
		fixture_put(db, RECORD_OUTING, n, n);
}

static void
write_first(struct db *db)
{
	write_outings(db, 1001, 1030);
}

static void
write_second(struct db *db)
{
	write_outings(db, 2001, 2030);
}

START_TEST(two_writers_take_turns_and_lose_nothing)
{
	struct db *db = fixture_open("boat.db", DB_READ);
	struct other p = other_start(write_first, TRUE), q = other_start(write_second, TRUE);
	gint64 entries;

	other_end(&p, 0);
	other_end(&q, 0);
	ck_assert(db_ask(db, SQL_LAST_ENTRY, &entries, NULL));
	ck_assert_int_eq(entries, 20 + 60);
	for (int n = 1; n <= 30; n++) {
		struct outing outing;
		GError *err = NULL;

		record_init(RECORD_OUTING, &outing);
		fixture_works(row_get(db, RECORD_OUTING, fixture_key(RECORD_OUTING, 1000 + n), &outing, &err), err);
		fixture_works(row_get(db, RECORD_OUTING, fixture_key(RECORD_OUTING, 2000 + n), &outing, &err), err);
		record_clear(RECORD_OUTING, &outing);
	}
	db_close(db);
}
END_TEST

START_TEST(a_change_by_another_process_is_noticed)
{
	struct db *db = fixture_open("boat.db", DB_READ);
	gint64 before = db_data_version(db);
	struct other o;

	ck_assert_int_eq(db_data_version(db), before);
	o = other_start(write_first, FALSE);
	other_end(&o, 0);
	ck_assert_int_ne(db_data_version(db), before);
	db_close(db);
}
END_TEST

START_TEST(many_reads_see_one_state_while_held)
{
	struct db *db = fixture_open("boat.db", DB_READ);
	struct other o;
	GError *err = NULL;

	fixture_works(db_hold(db, &err), err);
	g_free(fixture_dump(db));
	o = other_start(hold_writing, FALSE);
	g_free(fixture_dump(db));
	other_end(&o, 0);
	db_release(db);
	db_release(db);
	ck_assert(sqlite3_get_autocommit(db->conn));
	db_close(db);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("store/txn");
	TCase *tc = tcase_create("processes");
	SRunner *sr = srunner_create(s);
	int failed;

	tcase_set_timeout(tc, 60);
	tcase_add_checked_fixture(tc, setup, fixture_teardown);
	tcase_add_test(tc, a_second_writer_is_told_who_holds_the_logbook);
	tcase_add_test(tc, a_commit_that_a_reader_holds_up_says_so_and_changes_nothing);
	tcase_add_test(tc, the_holder_of_a_free_file_is_not_made_up);
	tcase_add_test(tc, reading_goes_on_while_another_process_writes);
	tcase_add_loop_test(tc, a_process_killed_within_a_command_leaves_the_logbook_as_it_was, 0, 2);
	tcase_add_test(tc, an_unfinished_change_where_nothing_can_be_written_is_explained);
	tcase_add_test(tc, two_writers_take_turns_and_lose_nothing);
	tcase_add_test(tc, a_change_by_another_process_is_noticed);
	tcase_add_test(tc, many_reads_see_one_state_while_held);
	suite_add_tcase(s, tc);
	srunner_run_all(sr, CK_NORMAL);
	failed = srunner_ntests_failed(sr);
	srunner_free(sr);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
