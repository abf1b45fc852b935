#include "fixture.h"
#include "store/inside.h"
#include "store/migrate.h"
#include "store/rows.h"

#include <stdlib.h>

enum { OURS = 5 };	/* the schema as it is */

/* Steps of a future that does not exist: the second adds a column and changes rows, the third fails half way. */
static const char *
step(int i)
{
	static const char *const later[] = {
		"ALTER TABLE season ADD COLUMN crew TEXT; UPDATE season SET remark = 'moved'; PRAGMA user_version = 6",
		"UPDATE season SET remark = 'lost'; CREATE TABLE boat (id INTEGER); PRAGMA user_version = 7",
		"UPDATE season SET boat = 12345; PRAGMA user_version = 7",
		"UPDATE season SET remark = 'lost'",
	};

	return i < OURS ? migrations_ours()->sql(i) : later[i - OURS];
}

static const char *step_failing(int i) { return step(i); }
static const char *step_orphan(int i) { return step(i == OURS + 1 ? OURS + 2 : i); }
static const char *step_unnumbered(int i) { return step(i == OURS + 1 ? OURS + 3 : i); }

static const struct migrations to_next = { OURS + 1, step };

static gint64
seasons_moved(struct db *db)
{
	sqlite3_stmt *stmt;
	gint64 n;

	ck_assert_int_eq(sqlite3_prepare_v2(db->conn, "SELECT count(*) FROM season WHERE remark = 'moved'", -1, &stmt,
					    NULL), SQLITE_OK);
	ck_assert_int_eq(sqlite3_step(stmt), SQLITE_ROW);
	n = sqlite3_column_int64(stmt, 0);
	sqlite3_finalize(stmt);
	return n;
}

START_TEST(an_older_logbook_is_copied_aside_and_brought_up_to_date)
{
	struct db *db = fixture_book("boat.db"), *copy;
	g_autofree char *before = fixture_dump(db), *after = NULL;
	GError *err = NULL;

	fixture_works(migrate(db, &to_next, &err), err);
	ck_assert_int_eq(db_schema(db), OURS + 1);
	ck_assert_int_eq(seasons_moved(db), 4);
	copy = fixture_open("boat.db.schema-5", DB_READ);
	after = fixture_dump(copy);
	ck_assert_str_eq(before, after);
	ck_assert_int_eq(db_schema(copy), OURS);
	db_close(copy);
	fixture_works(migrate(db, &to_next, &err), err);
	ck_assert_int_eq(fixture_files(), 2);
	db_close(db);
	fixture_fails(db_open(fixture_path("boat.db"), DB_READ, &err), err, ERR_STORE, "newer splitpin (schema 6;");
}
END_TEST

START_TEST(references_are_kept_while_it_works_and_watched_again_after)
{
	struct db *db = fixture_book("boat.db");
	gint64 on = 0;
	sqlite3_stmt *stmt;

	ck_assert(migrate(db, &to_next, NULL));
	ck_assert_int_eq(sqlite3_prepare_v2(db->conn, "PRAGMA foreign_keys", -1, &stmt, NULL), SQLITE_OK);
	ck_assert_int_eq(sqlite3_step(stmt), SQLITE_ROW);
	on = sqlite3_column_int64(stmt, 0);
	sqlite3_finalize(stmt);
	ck_assert_int_eq(on, 1);
	db_close(db);
}
END_TEST

static const struct {
	struct migrations to;
	const char *words;
} failing[] = {
	{ { OURS + 2, step_failing }, "already exists" },
	{ { OURS + 2, step_orphan }, "refer to what is not there" },
	{ { OURS + 2, step_unnumbered }, "step 7 sets schema 6" },
};

START_TEST(a_step_that_fails_leaves_the_schema_before_it)
{
	struct db *db = fixture_book("boat.db");
	GError *err = NULL;

	fixture_fails(migrate(db, &failing[_i].to, &err), err, ERR_STORE, failing[_i].words);
	ck_assert_int_eq(db_schema(db), OURS + 1);
	ck_assert_int_eq(seasons_moved(db), 4);
	/* Once more: the copy made before is not overwritten. */
	fixture_fails(migrate(db, &failing[_i].to, &err), err, ERR_STORE, failing[_i].words);
	db_close(db);
	ck_assert(g_file_test(fixture_path("boat.db.schema-5"), G_FILE_TEST_EXISTS));
	ck_assert(g_file_test(fixture_path("boat.db.schema-6"), G_FILE_TEST_EXISTS));
	ck_assert_int_eq(fixture_files(), 3);
}
END_TEST

START_TEST(a_copy_never_replaces_an_earlier_one)
{
	struct db *db = fixture_book("boat.db");
	g_autofree char *text = NULL;

	ck_assert(g_file_set_contents(fixture_path("boat.db.schema-5"), "kept", -1, NULL));
	ck_assert(migrate(db, &to_next, NULL));
	db_close(db);
	ck_assert(g_file_get_contents(fixture_path("boat.db.schema-5"), &text, NULL, NULL));
	ck_assert_str_eq(text, "kept");
	db_close(fixture_open("boat.db.schema-5.2", DB_READ));
}
END_TEST

/* What the first schema held is all there, the new columns know nothing, and the file is as a new one would be. */
START_TEST(a_logbook_of_the_first_schema_is_brought_up_to_date)
{
	const struct migrations first = { 1, step };
	struct db *db = db_scratch(fixture_path("boat.db"));
	int rc;
	struct boat boat;
	struct fitting f;
	GError *err = NULL;

	fixture_works(migrate(db, &first, &err), err);
	rc = sqlite3_exec(db->conn,
		"INSERT INTO boat VALUES (1, 'Old', 'jet', 'trailer', 'roof', 'fresh', 415, 1012, NULL, NULL, 1998, NULL, 'kept');"
		"INSERT INTO fitting VALUES (2, 1, 'jet/pump', 'Pump', NULL, NULL, NULL, 1, 0, 0, NULL, 30, NULL, NULL);",
		NULL, NULL, NULL);
	ck_assert_int_eq(rc, SQLITE_OK);
	db_close(db);
	db = fixture_open("boat.db", (enum db_mode)_i);
	ck_assert_int_eq(db_schema(db), OURS);
	record_init(RECORD_BOAT, &boat);
	record_init(RECORD_FITTING, &f);
	fixture_works(row_get(db, RECORD_BOAT, 1, &boat, &err), err);
	fixture_works(row_get(db, RECORD_FITTING, 2, &f, &err), err);
	ck_assert_str_eq(boat.remark, "kept");
	ck_assert_int_eq(boat.built, 1998);
	ck_assert_int_eq(boat.edition, NONE);
	ck_assert_int_eq(boat.units, NONE);
	ck_assert_int_eq(f.off_minutes, 30);
	ck_assert_ptr_null(f.opens_with);
	record_clear(RECORD_BOAT, &boat);
	record_clear(RECORD_FITTING, &f);
	db_close(db);
	ck_assert(g_file_test(fixture_path("boat.db.schema-1"), G_FILE_TEST_EXISTS));
}
END_TEST

/* Before the stores: a job with its service is as it was, and the stores are there, empty, and can be filled. */
START_TEST(a_logbook_without_stores_gets_them)
{
	const struct migrations fourth = { 4, step };
	struct db *db = db_scratch(fixture_path("boat.db"));
	struct job job;
	struct item item;
	int rc;
	GError *err = NULL;

	fixture_works(migrate(db, &fourth, &err), err);
	rc = sqlite3_exec(db->conn,
		"INSERT INTO boat (id, name, kind, berth, winter, water, launch, haul_out)"
		" VALUES (1, 'Old', 'jet', 'trailer', 'roof', 'fresh', 415, 1012);"
		"INSERT INTO job (id, boat, name, title, opened) VALUES (2, 1, 'off-2025', 'Drive off', 20000);",
		NULL, NULL, NULL);
	ck_assert_msg(rc == SQLITE_OK, "%s", sqlite3_errmsg(db->conn));
	db_close(db);
	db = fixture_open("boat.db", DB_WRITE);
	ck_assert_int_eq(db_schema(db), OURS);
	record_init(RECORD_JOB, &job);
	record_init(RECORD_ITEM, &item);
	fixture_works(row_get(db, RECORD_JOB, 2, &job, &err), err);
	ck_assert_str_eq(job.title, "Drive off");
	rc = sqlite3_exec(db->conn,
		"INSERT INTO item (id, what) VALUES (3, 'plug');"
		"INSERT INTO lot (id, item, quantity) VALUES (4, 3, 2.0);"
		"INSERT INTO taken (id, lot, date, quantity, boat, job) VALUES (5, 4, 20001, 1.0, 1, 2);", NULL, NULL, NULL);
	ck_assert_msg(rc == SQLITE_OK, "%s", sqlite3_errmsg(db->conn));
	fixture_works(row_get(db, RECORD_ITEM, 3, &item, &err), err);
	ck_assert_str_eq(item.what, "plug");
	ck_assert_int_eq(item.shelf_months, NONE);
	record_clear(RECORD_JOB, &job);
	record_clear(RECORD_ITEM, &item);
	db_close(db);
	ck_assert(g_file_test(fixture_path("boat.db.schema-4"), G_FILE_TEST_EXISTS));
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("store/migrate");
	TCase *tc = tcase_create("steps");
	SRunner *sr = srunner_create(s);
	int failed;

	tcase_add_checked_fixture(tc, fixture_setup, fixture_teardown);
	tcase_add_test(tc, an_older_logbook_is_copied_aside_and_brought_up_to_date);
	tcase_add_test(tc, references_are_kept_while_it_works_and_watched_again_after);
	tcase_add_loop_test(tc, a_step_that_fails_leaves_the_schema_before_it, 0, G_N_ELEMENTS(failing));
	tcase_add_loop_test(tc, a_logbook_of_the_first_schema_is_brought_up_to_date, DB_READ, DB_WRITE + 1);
	tcase_add_test(tc, a_logbook_without_stores_gets_them);
	tcase_add_test(tc, a_copy_never_replaces_an_earlier_one);
	suite_add_tcase(s, tc);
	srunner_run_all(sr, CK_NORMAL);
	failed = srunner_ntests_failed(sr);
	srunner_free(sr);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
