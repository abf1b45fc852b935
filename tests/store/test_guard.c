#include "fixture.h"
#include "store/sqlite.h"

#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static const char *path;

static void
setup(void)
{
	fixture_setup();
	path = fixture_path("boat.db");
}

static void
book(void)
{
	db_close(fixture_book("boat.db"));
}

static void
file_of(const char *bytes, gssize n)
{
	ck_assert(g_file_set_contents(path, bytes, n, NULL));
}

/* Change bytes of an intact logbook. */
static void
patch(long at, const char *bytes, size_t n)
{
	FILE *f;

	book();
	f = g_fopen(path, "r+b");
	ck_assert_ptr_nonnull(f);
	ck_assert_int_eq(fseek(f, at, SEEK_SET), 0);
	ck_assert_uint_eq(fwrite(bytes, 1, n, f), n);
	ck_assert_int_eq(fclose(f), 0);
}

static void
sql(const char *text)
{
	book();
	fixture_sql(path, text);
}

static void make_nothing(void) { }
static void make_folder(void) { ck_assert_int_eq(g_mkdir(path, 0700), 0); }
static void make_fifo(void) { ck_assert_int_eq(mkfifo(path, 0600), 0); }
static void make_dangling(void) { ck_assert_int_eq(symlink("nowhere", path), 0); }
static void make_loop(void) { ck_assert_int_eq(symlink("boat.db", path), 0); }
static void make_empty(void) { file_of("", 0); }
static void make_text(void) { file_of("date,hours\n2026-05-01,2.4\n", -1); }
static void make_short(void) { file_of("SQLite format 3", 16); }
static void make_zeros(void) { file_of((const char[4096]){ 0 }, 4096); }
static void make_database(void) { fixture_sql(path, "CREATE TABLE outing (id INTEGER PRIMARY KEY)"); }
static void make_application(void) { sql("PRAGMA application_id = 7"); }
static void make_newer(void) { sql("PRAGMA user_version = 99"); }
static void make_unversioned(void) { sql("PRAGMA user_version = 0"); }
static void make_negative(void) { sql("PRAGMA user_version = -1"); }
static void make_write_version(void) { patch(18, "\3", 1); }
static void make_read_version(void) { patch(19, "\3", 1); }
static void make_trigger(void) { sql("CREATE TRIGGER t AFTER INSERT ON outing BEGIN DELETE FROM service; END"); }
static void make_view(void) { sql("CREATE VIEW v AS SELECT * FROM outing"); }
static void make_extra(void) { sql("CREATE TABLE notes (id INTEGER PRIMARY KEY)"); }
static void make_column(void) { sql("ALTER TABLE outing ADD COLUMN crew TEXT"); }
static void make_no_table(void) { sql("DROP TABLE measurement"); }
static void make_no_index(void) { sql("DROP INDEX outing_by_boat"); }
static void make_index(void) { sql("CREATE INDEX mine ON outing (place)"); }
static void make_schema_bytes(void) { patch(100, "\377\377\377\377\377\377\377\377", 8); }

static void
make_schema_text(void)
{
	sql("PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = 'CREATE TABLE rate' WHERE name = 'rate'");
}

static void
make_truncated(void)
{
	book();
	ck_assert_int_eq(truncate(path, 4096 + 100), 0);
}

static const struct {
	void (*make)(void);
	const char *words;
} refused[] = {
	{ make_nothing, "there is no logbook" },
	{ make_folder, "is a folder" },
	{ make_fifo, "not an ordinary file" },
	{ make_dangling, "there is no logbook" },
	{ make_loop, "can't be opened" },
	{ make_empty, "is empty" },
	{ make_text, "not an SQLite file" },
	{ make_short, "not an SQLite file" },
	{ make_zeros, "not an SQLite file" },
	{ make_database, "of another program" },
	{ make_application, "of another program" },
	{ make_newer, "was written by a newer splitpin (schema 99; this one knows 5)" },
	{ make_unversioned, "is damaged" },
	{ make_negative, "is damaged" },
	{ make_write_version, "is damaged" },
	{ make_read_version, "damaged" },
	{ make_trigger, "holds a trigger \"t\"" },
	{ make_view, "holds a view \"v\"" },
	{ make_extra, "holds the table notes, which no logbook has" },
	{ make_column, "its table outing is not as" },
	{ make_no_table, " measurement" },
	{ make_no_index, "its index outing_by_boat is missing" },
	{ make_index, "holds the index mine" },
	{ make_schema_bytes, "damaged" },
	{ make_schema_text, "damaged" },
	{ make_truncated, "damaged" },
};

START_TEST(what_is_no_sound_logbook_is_refused_and_left_as_it_was)
{
	enum db_mode mode = _i % 2 ? DB_WRITE : DB_READ;
	g_autofree char *before = NULL, *after = NULL;
	GError *err = NULL;
	int files;

	refused[_i / 2].make();
	files = fixture_files();
	if (g_file_test(path, G_FILE_TEST_IS_REGULAR))
		before = fixture_bytes(path);
	fixture_fails(db_open(path, mode, &err), err, ERR_STORE, refused[_i / 2].words);
	ck_assert_int_eq(fixture_files(), files);
	if (before) {
		after = fixture_bytes(path);
		ck_assert_str_eq(before, after);
	}
}
END_TEST

START_TEST(statistics_that_a_shell_left_behind_are_no_harm)
{
	sql("ANALYZE");
	db_close(fixture_open("boat.db", DB_WRITE));
}
END_TEST

START_TEST(a_logbook_that_someone_turned_to_another_journal_mode_is_turned_back)
{
	struct db *db;
	g_autofree char *bytes = NULL;

	sql("PRAGMA journal_mode = WAL");
	db = fixture_open("boat.db", DB_WRITE);
	fixture_put(db, RECORD_OUTING, 40, 40);
	db_close(db);
	ck_assert_int_eq(fixture_files(), 1);
	ck_assert(g_file_get_contents(path, &bytes, NULL, NULL));
	ck_assert_int_eq(bytes[18], 1);
}
END_TEST

/* Overwrite the middle of the page where a table's rows begin. */
static void
scribble(const char *table)
{
	g_autofree char *query = g_strdup_printf("SELECT rootpage FROM sqlite_schema WHERE name = '%s'", table);
	char junk[600];
	sqlite3_stmt *stmt;
	sqlite3 *conn;
	long page;

	book();
	ck_assert_int_eq(sqlite3_open(path, &conn), SQLITE_OK);
	ck_assert_int_eq(sqlite3_prepare_v2(conn, query, -1, &stmt, NULL), SQLITE_OK);
	ck_assert_int_eq(sqlite3_step(stmt), SQLITE_ROW);
	page = sqlite3_column_int(stmt, 0);
	sqlite3_finalize(stmt);
	sqlite3_close(conn);
	g_unlink(path);
	memset(junk, 0xa5, sizeof junk);
	patch((page - 1) * 4096, junk, sizeof junk);
}

START_TEST(damage_in_a_small_file_is_seen_before_it_is_written_to)
{
	GError *err = NULL;

	scribble("service");
	fixture_fails(db_open(path, DB_WRITE, &err), err, ERR_STORE, "is damaged");
	/* Reading goes on as far as it can: how else should anything be saved or verified? */
	db_close(fixture_open("boat.db", DB_READ));
}
END_TEST

START_TEST(a_name_that_looks_like_an_address_is_a_plain_file)
{
	struct db *db;
	GError *err = NULL;
	char *old = g_get_current_dir();
	g_autofree char *folder = g_path_get_dirname(path);

	ck_assert_int_eq(g_chdir(folder), 0);
	db = db_create("file:boat.db?mode=memory", &err);
	fixture_works(db != NULL, err);
	db_close(db);
	ck_assert(g_file_test(fixture_path("file:boat.db?mode=memory"), G_FILE_TEST_IS_REGULAR));
	ck_assert_int_eq(g_chdir(old), 0);
	g_free(old);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("store/guard");
	TCase *tc = tcase_create("refusals");
	SRunner *sr = srunner_create(s);
	int failed;

	tcase_add_checked_fixture(tc, setup, fixture_teardown);
	tcase_add_loop_test(tc, what_is_no_sound_logbook_is_refused_and_left_as_it_was, 0, 2 * G_N_ELEMENTS(refused));
	tcase_add_test(tc, statistics_that_a_shell_left_behind_are_no_harm);
	tcase_add_test(tc, a_logbook_that_someone_turned_to_another_journal_mode_is_turned_back);
	tcase_add_test(tc, damage_in_a_small_file_is_seen_before_it_is_written_to);
	tcase_add_test(tc, a_name_that_looks_like_an_address_is_a_plain_file);
	suite_add_tcase(s, tc);
	srunner_run_all(sr, CK_NORMAL);
	failed = srunner_ntests_failed(sr);
	srunner_free(sr);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
