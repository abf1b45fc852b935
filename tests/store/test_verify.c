#include "fixture.h"
#include "store/inside.h"
#include "store/journal.h"
#include "store/rows.h"
#include "store/verify.h"

#include <glib/gstdio.h>
#include <stdlib.h>

static const char *path;

static void
setup(void)
{
	fixture_setup();
	path = fixture_path("boat.db");
	db_close(fixture_book("boat.db"));
}

struct found {
	GString *text;
	int stages;
};

static void
find(void *context, const char *sentence)
{
	struct found *f = context;

	g_string_append_printf(f->text, "%s\n", sentence);
}

static void
stage(void *context, const char *what, gint64 done, gint64 all)
{
	struct found *f = context;

	ck_assert(*what && done >= 0 && done <= all);
	f->stages++;
}

/* The problems, each on a line. */
static char *
problems_of(struct db *db, gint64 *n)
{
	struct found f = { g_string_new(NULL), 0 };
	const struct verify_watch watch = { find, stage, &f };
	GError *err = NULL;

	fixture_works(verify(db, &watch, n, &err), err);
	ck_assert_int_gt(f.stages, 2);
	return g_string_free(f.text, FALSE);
}

START_TEST(an_intact_logbook_has_no_problems)
{
	struct db *db = fixture_open("boat.db", _i ? DB_WRITE : DB_READ);
	g_autofree char *before = fixture_bytes(path), *after = NULL, *text = NULL;
	gint64 n;

	text = problems_of(db, &n);
	ck_assert_str_eq(text, "");
	ck_assert_int_eq(n, 0);
	db_close(db);
	after = fixture_bytes(path);
	ck_assert_str_eq(before, after);
	ck_assert_int_eq(fixture_files(), 1);
}
END_TEST

START_TEST(nobody_needs_to_watch)
{
	const struct verify_watch watch = { 0 };
	struct db *db;
	gint64 n;

	fixture_sql(path, "UPDATE outing SET hours = hours + 1");
	db = fixture_open("boat.db", DB_READ);
	ck_assert(verify(db, &watch, &n, NULL));
	ck_assert_int_eq(n, 29);
	db_close(db);
}
END_TEST

/* What was done to the file behind the logbook's back, and the sentence that names it; how many there are. */
static const struct {
	const char *sql;
	const char *sentence;
	int problems;
} tampered[] = {
	{ "UPDATE outing SET hours = 9000 WHERE id = 8000003",
	  "outing of 2024-10-07 (key bbbbbbbbbbkncdbf), hours: the file says 2.5 h, the journal says 0:28:00", 1 },
	{ "UPDATE outing SET date = date + 1 WHERE id = 8000003",
	  "outing of 2024-10-07 (key bbbbbbbbbbkncdbf), date: the file says 2024-10-08, the journal says 2024-10-07", 1 },
	{ "UPDATE outing SET remark = 'another' WHERE id = 8000003",
	  "remark: the file says \"another\", the journal says \"corrected\"", 1 },
	{ "UPDATE outing SET remark = NULL, rinsed = 0 WHERE id = 8000003",
	  "rinsed: the file says no, the journal says yes", 2 },
	{ "UPDATE outing SET place = char(27) || '[2J' WHERE id = 8000003",
	  "the file says \"\\x1b[2J\", the journal says nothing", 1 },
	{ "UPDATE rate SET value = 1.2500000000000002 WHERE id = 15000001",
	  "rate \"name 1\" (key bbbbbbbbbbsgscqc), value: the file says 1.2500000000000002, the journal says 1.25", 1 },
	{ "UPDATE service SET cost = 7 WHERE id = 12000002",
	  "cost: the file says 0.07, the journal says 2.05", 1 },
	{ "UPDATE boat SET name = 'stolen' WHERE id = 1000002",
	  "boat \"name 2\" (key bbbbbbbbbbbtgdgd), name: the file says \"stolen\"", 1 },
	{ "DELETE FROM service WHERE id = 12000005",
	  "service of 2024-10-09 (key bbbbbbbbbbpkcpbh) is in the journal, but missing from the file", 1 },
	{ "DELETE FROM outing WHERE id = 8000002; DELETE FROM outing WHERE id = 8000030",
	  "outing of 2024-11-03 (key bbbbbbbbbbkncdcs) is in the journal, but missing", 2 },
	{ "INSERT INTO season VALUES (1, 1000001, 20700, NULL, 0, NULL)",
	  "season of 2026-09-04 (key bbbbbbbbbbbbbbbc) is in the file, but not in the journal", 1 },
	{ "INSERT INTO rate VALUES (99000000, 'growth.rinsed', 1, NULL, 'memory', 's')",
	  "rate \"growth.rinsed\" (key bbbbbbbbbhsjmsqb) is in the file, but not in the journal", 1 },
	{ "PRAGMA foreign_keys = OFF; DELETE FROM meter WHERE id = 3000001",
	  "meter of 2024-10-05 (key bbbbbbbbbbdrqjqc) is in the journal, but missing", 22 },
	{ "PRAGMA foreign_keys = OFF; UPDATE part SET fitting = 5 WHERE id = 5000003",
	  "the part with the key bbbbbbbbbbgqgpgf refers to a row of fitting that is not there", 2 },
	{ "DELETE FROM entry WHERE seq = 20",
	  "(key bbbbbbbbbbkncdbf), hours: the file says", 3 },
	{ "DELETE FROM entry WHERE seq = 7",
	  "the journal goes from entry 6 to entry 8", 5 },
	{ "UPDATE entry SET what = 'nothing' WHERE seq = 12",
	  "entry 12 (nothing) was altered", 1 },
	{ "UPDATE entry SET at = at + 1 WHERE seq = 12",
	  "entry 12 (services 1 to 4) was altered", 1 },
	{ "UPDATE entry SET who = 'Lee' WHERE seq = 1",
	  "entry 1 (boats 1 to 4) was altered", 1 },
	{ "UPDATE entry SET undoes = 3 WHERE seq = 20",
	  "was altered", 1 },
	{ "UPDATE entry SET previous = zeroblob(32) WHERE seq = 12",
	  "entry 12 (services 1 to 4) does not follow", 2 },
	{ "UPDATE entry SET hash = zeroblob(32) WHERE seq = 12",
	  "entry 13 (measurements 1 to 4) does not follow", 2 },
	{ "UPDATE entry SET hash = x'00' WHERE seq = 12",
	  "does not follow", 3 },
	{ "UPDATE entry SET changeset = substr(changeset, 1, 40) WHERE seq = 16",
	  "entry 16 (outings 5 to 30) can't be repeated", 3 },
	{ "UPDATE entry SET changeset = x'' WHERE seq = 17",
	  "service of 2024-10-09 (key bbbbbbbbbbpkcpbh) is in the file, but not in the journal", 9 },
};

START_TEST(what_was_done_behind_the_journal_is_named)
{
	g_autofree char *text = NULL;
	struct db *db;
	gint64 n;

	fixture_sql(path, tampered[_i].sql);
	db = fixture_open("boat.db", DB_READ);
	text = problems_of(db, &n);
	db_close(db);
	ck_assert_msg(strstr(text, tampered[_i].sentence) != NULL, "%s:\n%s", tampered[_i].sql, text);
	ck_assert_msg(n == tampered[_i].problems, "%s: %d problems:\n%s", tampered[_i].sql, (int)n, text);
}
END_TEST

/* An entry made anew with a hash that fits is found by the entry after it. */
START_TEST(an_entry_that_was_replaced_whole_breaks_the_chain)
{
	struct db *db = fixture_open("boat.db", DB_WRITE), *other;
	g_autofree char *text = NULL, *sql = NULL;
	GError *err = NULL;
	gint64 n;

	other = db_create(fixture_path("other.db"), &err);
	fixture_works(other != NULL, err);
	for (int r = 0; r < RECORD_COUNT; r++)
		fixture_put(other, (enum record)r, 1, r == RECORD_STAY ? 5 : 4);
	db_close(other);
	db_close(db);
	sql = g_strdup_printf("ATTACH '%s' AS other; DELETE FROM entry WHERE seq = 6; INSERT INTO entry SELECT * FROM"
			      " other.entry WHERE seq = 6", fixture_path("other.db"));
	fixture_sql(path, sql);
	db = fixture_open("boat.db", DB_READ);
	text = problems_of(db, &n);
	db_close(db);
	ck_assert_msg(strstr(text, "entry 7 (seasons 1 to 4) does not follow from") != NULL, "%s", text);
	ck_assert_msg(strstr(text, "is in the journal, but missing from the file") != NULL, "%s", text);
	ck_assert_int_eq(n, 2);
}
END_TEST

/* Every row of every table, read as far as it can be, through the tables and through the covering indexes. */
static char *
raw_dump(const char *file)
{
	static const char *const tables[] = { "boat", "engine", "meter", "fitting", "part", "stay", "season", "outing",
		"happening", "task", "\"limit\"", "service", "measurement", "bound", "rate", "place",
		"climate", "entry",
		("(SELECT boat, date, engine, hours, water, rinsed, trip FROM outing INDEXED BY outing_by_boat"
		 " WHERE boat > 0)"),
		("(SELECT task, date, outcome, after, made, estimated FROM service INDEXED BY service_by_task"
		 " WHERE task > 0)") };
	GString *dump = g_string_new(NULL);
	sqlite3 *conn;
	char *sum;

	sqlite3_open_v2(file, &conn, SQLITE_OPEN_READONLY, NULL);
	for (size_t i = 0; i < G_N_ELEMENTS(tables); i++) {
		g_autofree char *sql = g_strdup_printf("SELECT * FROM %s", tables[i]);
		sqlite3_stmt *stmt = NULL;
		int rc = sqlite3_prepare_v2(conn, sql, -1, &stmt, NULL);

		while (rc == SQLITE_OK && (rc = sqlite3_step(stmt)) == SQLITE_ROW) {
			for (int c = 0; c < sqlite3_column_count(stmt); c++) {
				g_string_append_printf(dump, "|%d:", sqlite3_column_type(stmt, c));
				g_string_append_len(dump, sqlite3_column_blob(stmt, c), sqlite3_column_bytes(stmt, c));
			}
			rc = SQLITE_OK;
		}
		g_string_append_printf(dump, "\n%d\n", rc);
		sqlite3_finalize(stmt);
	}
	sqlite3_close(conn);
	/* Compared as bytes: a damaged text may hold a zero. */
	sum = g_compute_checksum_for_string(G_CHECKSUM_SHA256, dump->str, (gssize)dump->len);
	g_string_free(dump, TRUE);
	return sum;
}

/* Is the file refused, or a problem found? */
static gboolean
noticed(void)
{
	const struct verify_watch watch = { 0 };
	GError *err = NULL;
	struct db *db = db_open(path, DB_READ, &err);
	gint64 problems = 0;
	gboolean ok = db && verify(db, &watch, &problems, &err);

	db_close(db);
	g_clear_error(&err);
	return !ok || problems;
}

#define FLIPS 300

/* Most bytes of a young logbook are zero, the room that its tables have left, and the more the more tables there are: every other
 * flip is aimed at one that is not. */
static gsize
any_place(GRand *rand, const char *bytes, gsize n, gboolean in_use)
{
	gsize at;

	do
		at = (gsize)g_rand_int_range(rand, 0, (gint32)n);
	while (in_use && !bytes[at]);
	return at;
}

START_TEST(no_flipped_bit_that_alters_a_row_goes_unnoticed)
{
	g_autofree char *bytes = NULL, *intact = raw_dump(path);
	GRand *rand = g_rand_new_with_seed((guint32)_i + 1);
	int altered = 0, seen = 0;
	gsize n;

	ck_assert(g_file_get_contents(path, &bytes, &n, NULL));
	for (int i = 0; i < FLIPS; i++) {
		gsize at = any_place(rand, bytes, n, i % 2);
		char bit = (char)(1 << g_rand_int_range(rand, 0, 8));
		g_autofree char *dump = NULL;
		FILE *f = g_fopen(path, "wb");

		bytes[at] ^= bit;
		ck_assert_uint_eq(fwrite(bytes, 1, n, f), n);
		fclose(f);
		bytes[at] ^= bit;
		dump = raw_dump(path);
		if (!strcmp(dump, intact))
			continue;
		altered++;
		seen += noticed();
		ck_assert_msg(seen == altered, "seed %d, flip %d: bit %d of byte %d", _i + 1, i, bit, (int)at);
	}
	g_rand_free(rand);
	ck_assert_int_gt(altered, FLIPS / 5);
}
END_TEST

START_TEST(a_long_journal_is_played_through)
{
	struct db *db = fixture_open("boat.db", DB_WRITE);
	const struct entry_head head = fixture_head(NULL);
	g_autofree char *text = NULL;
	gint64 n;

	ck_assert_int_eq(sqlite3_exec(db->conn, "PRAGMA synchronous = OFF", NULL, NULL, NULL), SQLITE_OK);
	for (int i = 100; i < 400; i++) {
		fixture_put(db, RECORD_SERVICE, i, i);
		if (i % 3 == 0)
			ck_assert(journal_undo(db, &head, NULL, NULL));
		if (i % 6 == 0)
			ck_assert(journal_redo(db, &head, NULL, NULL));
	}
	text = problems_of(db, &n);
	ck_assert_str_eq(text, "");
	db_close(db);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("store/verify");
	TCase *tc = tcase_create("damage");
	SRunner *sr = srunner_create(s);
	int failed;

	tcase_set_timeout(tc, 300);
	tcase_add_checked_fixture(tc, setup, fixture_teardown);
	tcase_add_loop_test(tc, an_intact_logbook_has_no_problems, 0, 2);
	tcase_add_test(tc, nobody_needs_to_watch);
	tcase_add_loop_test(tc, what_was_done_behind_the_journal_is_named, 0, G_N_ELEMENTS(tampered));
	tcase_add_test(tc, an_entry_that_was_replaced_whole_breaks_the_chain);
	tcase_add_loop_test(tc, no_flipped_bit_that_alters_a_row_goes_unnoticed, 0, 4);
	tcase_add_test(tc, a_long_journal_is_played_through);
	suite_add_tcase(s, tc);
	srunner_run_all(sr, CK_NORMAL);
	failed = srunner_ntests_failed(sr);
	srunner_free(sr);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
