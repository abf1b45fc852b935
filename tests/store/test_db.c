#include "fixture.h"
#include "store/inside.h"
#include "store/rows.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

START_TEST(a_new_logbook_is_one_file_that_only_its_owner_may_read)
{
	GError *err = NULL;
	struct db *db = db_create(fixture_path("boat.db"), &err);
	g_autofree char *bytes = NULL;
	GStatBuf st;

	fixture_works(db != NULL, err);
	ck_assert_int_eq(db_schema(db), 5);
	ck_assert_str_eq(db_path(db), fixture_path("boat.db"));
	db_close(db);
	ck_assert_int_eq(g_stat(fixture_path("boat.db"), &st), 0);
	ck_assert_int_eq(st.st_mode & 0777, 0600);
	ck_assert_int_eq(fixture_files(), 1);
	ck_assert(g_file_get_contents(fixture_path("boat.db"), &bytes, NULL, NULL));
	ck_assert_int_eq(memcmp(bytes + 68, "Splt", 4), 0);
	ck_assert_int_eq(memcmp(bytes + 60, "\0\0\0\5", 4), 0);
	db_close(fixture_open("boat.db", DB_WRITE));
	ck_assert_int_eq(fixture_files(), 1);
}
END_TEST

START_TEST(a_new_logbook_never_replaces_anything)
{
	const char *path = fixture_path("boat.db");
	GError *err = NULL;

	ck_assert(g_file_set_contents(path, "my notes", -1, NULL));
	fixture_fails(db_create(path, &err), err, ERR_STORE, "is there already");
	ck_assert_int_eq(symlink("nowhere", fixture_path("link")), 0);
	fixture_fails(db_create(fixture_path("link"), &err), err, ERR_STORE, "is there already");
	ck_assert_int_eq(g_mkdir(fixture_path("dir"), 0700), 0);
	fixture_fails(db_create(fixture_path("dir"), &err), err, ERR_STORE, "is there already");
	ck_assert_int_eq(fixture_files(), 3);
	fixture_fails(db_create(fixture_path("none/boat.db"), &err), err, ERR_STORE, "can't be made (No such file");
}
END_TEST

static void
limit_file_size(rlim_t bytes)
{
	struct rlimit limit;

	signal(SIGXFSZ, SIG_IGN);
	ck_assert_int_eq(getrlimit(RLIMIT_FSIZE, &limit), 0);
	limit.rlim_cur = bytes;
	ck_assert_int_eq(setrlimit(RLIMIT_FSIZE, &limit), 0);
}

START_TEST(a_new_logbook_that_does_not_fit_is_removed_again)
{
	GError *err = NULL;

	limit_file_size(20000);
	fixture_fails(db_create(fixture_path("boat.db"), &err), err, ERR_STORE, "largest size");
	limit_file_size(RLIM_INFINITY);
	ck_assert_int_eq(fixture_files(), 0);
}
END_TEST

START_TEST(the_connection_is_set_up_for_files_of_strangers_and_for_durable_writing)
{
	static const struct {
		const char *pragma;
		const char *value;
	} wanted[] = {
		{ "PRAGMA foreign_keys", "1" }, { "PRAGMA synchronous", "3" }, { "PRAGMA journal_mode", "delete" },
		{ "PRAGMA cell_size_check", "1" }, { "PRAGMA mmap_size", "0" }, { "PRAGMA trusted_schema", "0" },
	};
	struct db *db = fixture_book("boat.db");
	sqlite3_stmt *stmt;

	for (size_t i = 0; i < G_N_ELEMENTS(wanted); i++) {
		ck_assert_int_eq(sqlite3_prepare_v2(db->conn, wanted[i].pragma, -1, &stmt, NULL), SQLITE_OK);
		ck_assert_int_eq(sqlite3_step(stmt), SQLITE_ROW);
		ck_assert_msg(!g_strcmp0((const char *)sqlite3_column_text(stmt, 0), wanted[i].value), "%s",
			      wanted[i].pragma);
		sqlite3_finalize(stmt);
	}
	ck_assert_int_ne(sqlite3_prepare_v2(db->conn, "SELECT \"nothing\"", -1, &stmt, NULL), SQLITE_OK);
	ck_assert_int_ne(sqlite3_exec(db->conn, "PRAGMA writable_schema = ON; DELETE FROM sqlite_schema", NULL, NULL,
				      NULL), SQLITE_OK);
	db_close(db);
}
END_TEST

START_TEST(a_link_to_a_logbook_opens_it)
{
	struct db *db = fixture_book("boat.db");
	g_autofree char *before = fixture_dump(db), *after = NULL;

	db_close(db);
	ck_assert_int_eq(symlink("boat.db", fixture_path("link.db")), 0);
	db = fixture_open("link.db", DB_WRITE);
	after = fixture_dump(db);
	ck_assert_str_eq(before, after);
	fixture_put(db, RECORD_OUTING, 40, 40);
	db_close(db);
	ck_assert_int_eq(fixture_files(), 2);
}
END_TEST

/* Work in a child that must end well. */
static void
in_child(void (*work)(void))
{
	pid_t child = fork();
	int status;

	if (!child) {
		work();
		_exit(0);
	}
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert_int_eq(status, 0);
}

/* The superuser may write anything. */
static void
become_nobody(void)
{
	if (!geteuid())
		ck_assert_int_eq(setuid(65534), 0);
}

static void
read_but_not_write(void)
{
	GError *err = NULL;
	struct db *db;

	become_nobody();
	db = fixture_open("boat.db", DB_READ);
	g_free(fixture_dump(db));
	db_close(db);
	ck_assert(!db_open(fixture_path("boat.db"), DB_WRITE, &err));
	ck_assert_msg(strstr(err->message, "Permission denied") != NULL, "%s", err->message);
	g_clear_error(&err);
}

START_TEST(what_may_not_be_written_can_still_be_read)
{
	g_autofree char *folder = g_path_get_dirname(fixture_path("boat.db"));

	db_close(fixture_book("boat.db"));
	ck_assert_int_eq(g_chmod(fixture_path("boat.db"), _i == 0 ? 0444 : 0666), 0);
	ck_assert_int_eq(g_chmod(folder, _i == 1 ? 0555 : 0777), 0);
	in_child(read_but_not_write);
	ck_assert_int_eq(g_chmod(folder, 0700), 0);
	ck_assert_int_eq(fixture_files(), 1);
}
END_TEST

static void
read_not_at_all(void)
{
	GError *err = NULL;

	become_nobody();
	fixture_fails(db_open(fixture_path("boat.db"), DB_READ, &err), err, ERR_STORE, "can't be read (Permission");
}

START_TEST(a_file_that_may_not_be_read_is_refused)
{
	g_autofree char *folder = g_path_get_dirname(fixture_path("boat.db"));

	db_close(fixture_book("boat.db"));
	ck_assert_int_eq(g_chmod(fixture_path("boat.db"), 0200), 0);
	ck_assert_int_eq(g_chmod(folder, 0755), 0);
	in_child(read_not_at_all);
}
END_TEST

START_TEST(a_logbook_open_for_reading_takes_no_command)
{
	GError *err = NULL;
	struct db *db;

	db_close(fixture_book("boat.db"));
	db = fixture_open("boat.db", DB_READ);
	fixture_fails(db_begin(db, &err), err, ERR_STORE, "reading only");
	db_close(db);
}
END_TEST

START_TEST(a_command_that_changes_nothing_leaves_no_entry)
{
	struct db *db = fixture_book("boat.db");
	g_autofree char *before = NULL, *after = NULL;
	struct entry_head head = fixture_head("nothing");
	gboolean changed = TRUE;
	struct boat boat;
	GError *err = NULL;

	before = fixture_bytes(db_path(db));
	fixture_record(RECORD_BOAT, 1, &boat);
	fixture_begin(db);
	fixture_works(row_put(db, RECORD_BOAT, &boat, &err), err);
	fixture_works(db_commit(db, &head, &changed, &err), err);
	ck_assert(!changed);
	record_clear(RECORD_BOAT, &boat);
	after = fixture_bytes(db_path(db));
	ck_assert_str_eq(before, after);
	db_close(db);
}
END_TEST

START_TEST(a_command_rolled_back_leaves_nothing)
{
	struct db *db = fixture_book("boat.db");
	g_autofree char *before = fixture_dump(db), *after = NULL;
	GError *err = NULL;

	fixture_begin(db);
	fixture_works(row_drop(db, RECORD_OUTING, fixture_key(RECORD_OUTING, 9), &err), err);
	db_rollback(db);
	after = fixture_dump(db);
	ck_assert_str_eq(before, after);
	fixture_put(db, RECORD_OUTING, 40, 40);
	db_close(db);
}
END_TEST

static void
put_long_remark(struct db *db, int n)
{
	struct outing o;
	GError *err = NULL;

	fixture_record(RECORD_OUTING, n, &o);
	g_free(o.remark);
	o.remark = g_strnfill(100000, 'x');
	fixture_works(row_put(db, RECORD_OUTING, &o, &err), err);
	record_clear(RECORD_OUTING, &o);
}

START_TEST(a_file_that_can_not_grow_keeps_what_it_held)
{
	struct db *db = fixture_book("boat.db");
	g_autofree char *before = fixture_dump(db), *after = NULL;
	struct entry_head head = fixture_head("too much");
	GStatBuf st;
	GError *err = NULL;

	ck_assert_int_eq(g_stat(db_path(db), &st), 0);
	limit_file_size((rlim_t)st.st_size + 8192);
	fixture_begin(db);
	put_long_remark(db, 50);
	fixture_fails(db_commit(db, &head, NULL, &err), err, ERR_STORE, "nothing was saved");
	after = fixture_dump(db);
	ck_assert_str_eq(before, after);
	limit_file_size(RLIM_INFINITY);
	fixture_put(db, RECORD_OUTING, 60, 61);
	db_close(db);
	ck_assert_int_eq(fixture_files(), 1);
}
END_TEST

START_TEST(a_write_that_fails_within_a_command_undoes_all_of_it)
{
	struct db *db = fixture_book("boat.db");
	g_autofree char *before = fixture_dump(db), *after = NULL;
	struct entry_head head = fixture_head("too much");
	GError *err = NULL;

	/* As if the disk had failed: the transaction is gone, and the command does not know. */
	fixture_begin(db);
	put_long_remark(db, 50);
	ck_assert(!db_fail(db, SQLITE_FULL, &err));
	ck_assert_str_eq(err->message, "the disk is full, boat.db could not be written: nothing was saved");
	g_clear_error(&err);
	fixture_fails(db_commit(db, &head, NULL, &err), err, ERR_STORE, "nothing was saved");
	after = fixture_dump(db);
	ck_assert_str_eq(before, after);
	db_close(db);
}
END_TEST

START_TEST(after_a_failed_sync_the_logbook_wants_to_be_opened_again)
{
	struct db *db = fixture_book("boat.db");
	GError *err = NULL;

	fixture_begin(db);
	ck_assert(!db_fail(db, SQLITE_IOERR_FSYNC, NULL));
	db_rollback(db);
	fixture_fails(db_begin(db, &err), err, ERR_STORE, "open it again first");
	db_close(db);
}
END_TEST

START_TEST(a_logbook_moved_deleted_or_replaced_under_us_is_not_written)
{
	struct db *db = fixture_book("boat.db");
	GError *err = NULL;

	fixture_works(db_check_home(db, &err), err);
	if (_i == 0)
		ck_assert_int_eq(g_rename(db_path(db), fixture_path("elsewhere.db")), 0);
	else
		ck_assert_int_eq(g_unlink(db_path(db)), 0);
	if (_i == 2)
		ck_assert(g_file_set_contents(db_path(db), "another", -1, NULL));
	fixture_fails(db_check_home(db, &err), err, ERR_STORE, "moved, deleted or replaced");
	fixture_fails(db_begin(db, &err), err, ERR_STORE, "moved, deleted or replaced");
	db_close(db);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("store/db");
	TCase *tc = tcase_create("file");
	SRunner *sr = srunner_create(s);
	int failed;

	tcase_add_checked_fixture(tc, fixture_setup, fixture_teardown);
	tcase_add_test(tc, a_new_logbook_is_one_file_that_only_its_owner_may_read);
	tcase_add_test(tc, a_new_logbook_never_replaces_anything);
	tcase_add_test(tc, a_new_logbook_that_does_not_fit_is_removed_again);
	tcase_add_test(tc, the_connection_is_set_up_for_files_of_strangers_and_for_durable_writing);
	tcase_add_test(tc, a_link_to_a_logbook_opens_it);
	tcase_add_loop_test(tc, what_may_not_be_written_can_still_be_read, 0, 2);
	tcase_add_test(tc, a_file_that_may_not_be_read_is_refused);
	tcase_add_test(tc, a_logbook_open_for_reading_takes_no_command);
	tcase_add_test(tc, a_command_that_changes_nothing_leaves_no_entry);
	tcase_add_test(tc, a_command_rolled_back_leaves_nothing);
	tcase_add_test(tc, a_file_that_can_not_grow_keeps_what_it_held);
	tcase_add_test(tc, a_write_that_fails_within_a_command_undoes_all_of_it);
	tcase_add_test(tc, after_a_failed_sync_the_logbook_wants_to_be_opened_again);
	tcase_add_loop_test(tc, a_logbook_moved_deleted_or_replaced_under_us_is_not_written, 0, 3);
	suite_add_tcase(s, tc);
	srunner_run_all(sr, CK_NORMAL);
	failed = srunner_ntests_failed(sr);
	srunner_free(sr);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
