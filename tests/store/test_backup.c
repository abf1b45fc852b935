#include "fixture.h"
#include "store/backup.h"
#include "store/inside.h"
#include "store/rows.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <unistd.h>

static struct db *db;

static void
setup(void)
{
	fixture_setup();
	db = fixture_book("boat.db");
}

static void
teardown(void)
{
	db_close(db);
	fixture_teardown();
}

START_TEST(a_backup_is_a_whole_logbook)
{
	g_autofree char *before = fixture_dump(db), *after = NULL;
	struct db *copy;
	GStatBuf st;
	GError *err = NULL;

	fixture_works(db_backup(db, fixture_path("copy.db"), &err), err);
	ck_assert_int_eq(fixture_files(), 2);
	ck_assert_int_eq(g_stat(fixture_path("copy.db"), &st), 0);
	ck_assert_int_eq(st.st_mode & 0777, 0600);
	copy = fixture_open("copy.db", DB_WRITE);
	after = fixture_dump(copy);
	ck_assert_str_eq(before, after);
	fixture_put(copy, RECORD_OUTING, 40, 40);
	db_close(copy);
	g_free(after);
	after = fixture_dump(db);
	ck_assert_str_eq(before, after);
}
END_TEST

START_TEST(a_backup_can_be_made_while_reading_and_from_a_logbook_open_for_reading)
{
	struct cells *c;
	GError *err = NULL;

	db_close(db);
	db = fixture_open("boat.db", DB_READ);
	c = cells_open(db, SQL_WALK_OUTING);
	ck_assert(cells_next(c));
	fixture_works(db_backup(db, fixture_path("copy.db"), &err), err);
	ck_assert(cells_next(c));
	ck_assert(cells_close(c, NULL));
	db_close(fixture_open("copy.db", DB_READ));
}
END_TEST

static void make_file(void) { ck_assert(g_file_set_contents(fixture_path("copy.db"), "mine", -1, NULL)); }
static void make_folder(void) { ck_assert_int_eq(g_mkdir(fixture_path("copy.db"), 0700), 0); }
static void make_link(void) { ck_assert_int_eq(symlink("nowhere", fixture_path("copy.db")), 0); }
static void make_self(void) { ck_assert_int_eq(link(fixture_path("boat.db"), fixture_path("copy.db")), 0); }

START_TEST(a_backup_never_replaces_anything)
{
	static void (*const make[])(void) = { make_file, make_folder, make_link, make_self };
	g_autofree char *before = fixture_bytes(fixture_path("boat.db")), *after = NULL;
	GError *err = NULL;

	make[_i]();
	fixture_fails(db_backup(db, fixture_path("copy.db"), &err), err, ERR_SYSTEM, "is there already");
	fixture_fails(db_backup(db, fixture_path("boat.db"), &err), err, ERR_SYSTEM, "is there already");
	after = fixture_bytes(fixture_path("boat.db"));
	ck_assert_str_eq(before, after);
	ck_assert_int_eq(fixture_files(), 2);
}
END_TEST

START_TEST(a_backup_into_no_folder_says_so)
{
	GError *err = NULL;

	fixture_fails(db_backup(db, fixture_path("none/copy.db"), &err), err, ERR_SYSTEM, "No such file");
}
END_TEST

START_TEST(a_backup_that_does_not_fit_leaves_nothing_behind)
{
	struct rlimit limit;
	GError *err = NULL;

	signal(SIGXFSZ, SIG_IGN);
	ck_assert_int_eq(getrlimit(RLIMIT_FSIZE, &limit), 0);
	limit.rlim_cur = 50000;
	ck_assert_int_eq(setrlimit(RLIMIT_FSIZE, &limit), 0);
	fixture_fails(db_backup(db, fixture_path("copy.db"), &err), err, ERR_SYSTEM, "copy.db");
	ck_assert_int_eq(fixture_files(), 1);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("store/backup");
	TCase *tc = tcase_create("copies");
	SRunner *sr = srunner_create(s);
	int failed;

	tcase_add_checked_fixture(tc, setup, teardown);
	tcase_add_test(tc, a_backup_is_a_whole_logbook);
	tcase_add_test(tc, a_backup_can_be_made_while_reading_and_from_a_logbook_open_for_reading);
	tcase_add_loop_test(tc, a_backup_never_replaces_anything, 0, 4);
	tcase_add_test(tc, a_backup_into_no_folder_says_so);
	tcase_add_test(tc, a_backup_that_does_not_fit_leaves_nothing_behind);
	suite_add_tcase(s, tc);
	srunner_run_all(sr, CK_NORMAL);
	failed = srunner_ntests_failed(sr);
	srunner_free(sr);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
