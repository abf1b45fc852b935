#include "fixture.h"
#include "store/entry.h"
#include "store/guard.h"
#include "store/inside.h"
#include "store/journal.h"
#include "store/rows.h"
#include "store/verify.h"

#include <signal.h>
#include <stdlib.h>
#include <sys/resource.h>

static struct db *db;
static const struct entry_head nobody = { NULL, "Kim", "laptop", 1764000100 };

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


static void
put_many(struct bulk *bulk, enum record r, int from, int to)
{
	gint64 record[FIXTURE_RECORD / sizeof(gint64)];
	GError *err = NULL;

	for (int n = from; n <= to; n++) {
		fixture_record(r, n, record);
		fixture_works(bulk_put(bulk, record, &err), err);
		record_clear(r, record);
	}
}

/* One command that imports the records from..to. */
static void
import(enum record r, int from, int to, gint64 expected)
{
	struct bulk *bulk;
	GError *err = NULL;

	fixture_begin(db);
	bulk = bulk_open(db, r, expected, &err);
	fixture_works(bulk != NULL, err);
	put_many(bulk, r, from, to);
	fixture_works(bulk_close(bulk, &err), err);
	fixture_commit(db, "import");
}

/* The changeset of the newest entry. */
static GByteArray *
newest_changes(void)
{
	GByteArray *bytes = g_byte_array_new();
	struct changes_in in;
	gint64 seq;
	int n;

	ck_assert(db_ask(db, SQL_LAST_ENTRY, &seq, NULL));
	ck_assert(changes_open(db, seq, &in, NULL));
	do {
		guint8 piece[4096];

		n = sizeof piece;
		ck_assert_int_eq(changes_input(&in, piece, &n), SQLITE_OK);
		g_byte_array_append(bytes, piece, (guint)n);
	} while (n);
	changes_close(&in);
	return bytes;
}

START_TEST(a_row_imported_leaves_byte_for_byte_the_changes_that_sqlite_would_record)
{
	enum record r = (enum record)(_i / 3);
	int n = 41 + _i % 3;
	GByteArray *ours, *theirs;

	fixture_put(db, r, n, n);
	theirs = newest_changes();
	ck_assert(journal_undo(db, &nobody, NULL, NULL));
	import(r, n, n, 0);
	ours = newest_changes();
	ck_assert_uint_eq(ours->len, theirs->len);
	ck_assert_mem_eq(ours->data, theirs->data, ours->len);
	g_byte_array_unref(ours);
	g_byte_array_unref(theirs);
}
END_TEST

static void
there_and_back(void)
{
	g_autofree char *after = fixture_dump(db), *again = NULL;
	gint64 problems = -1;
	const struct verify_watch watch = { 0 };
	GError *err = NULL;

	fixture_works(journal_undo(db, &nobody, NULL, &err), err);
	fixture_works(journal_redo(db, &nobody, NULL, &err), err);
	again = fixture_dump(db);
	ck_assert_str_eq(after, again);
	fixture_works(verify(db, &watch, &problems, &err), err);
	ck_assert_int_eq(problems, 0);
	fixture_works(guard_schema(db, &err), err);
}

static void
undone_is(const char *before)
{
	g_autofree char *now = NULL;
	GError *err = NULL;

	there_and_back();
	fixture_works(journal_undo(db, &nobody, NULL, &err), err);
	now = fixture_dump(db);
	ck_assert_str_eq(before, now);
}

START_TEST(an_import_is_undone_as_one_command)
{
	g_autofree char *before = fixture_dump(db);

	import((enum record)_i, 41, 54, 0);
	undone_is(before);
	ck_assert_int_eq(fixture_files(), 1);
}
END_TEST

/* More changes than are kept in memory: into a full table, and into an empty one, whose indexes are made at the end. */
START_TEST(a_large_import_is_undone_too)
{
	g_autofree char *before = NULL, *hash = guard_schema_hash(db, NULL), *after = NULL;

	ck_assert_int_eq(sqlite3_exec(db->conn, "PRAGMA synchronous = OFF", NULL, NULL, NULL), SQLITE_OK);
	for (int i = 0; i < 6 && _i; i++)
		ck_assert(journal_undo(db, &nobody, NULL, NULL));
	before = fixture_dump(db);
	ck_assert_int_eq(strstr(before, "measurements:\nbounds:") != NULL, _i);
	import(_i ? RECORD_MEASUREMENT : RECORD_OUTING, 101, 21000, 21000);
	after = guard_schema_hash(db, NULL);
	ck_assert_str_eq(hash, after);
	undone_is(before);
	ck_assert_int_eq(fixture_files(), 1);
}
END_TEST

START_TEST(rows_imported_may_be_altered_and_removed_in_the_same_command)
{
	g_autofree char *before = fixture_dump(db);
	struct bulk *bulk;
	struct outing o;
	GError *err = NULL;

	fixture_begin(db);
	bulk = bulk_open(db, RECORD_OUTING, 0, &err);
	put_many(bulk, RECORD_OUTING, 101, 120);
	/* While the import is open, other changes are recorded all the same. */
	fixture_record(RECORD_OUTING, 103, &o);
	o.hours = 7;
	fixture_works(row_put(db, RECORD_OUTING, &o, &err), err);
	record_clear(RECORD_OUTING, &o);
	put_many(bulk, RECORD_OUTING, 121, 125);
	fixture_works(bulk_close(bulk, &err), err);
	fixture_works(row_drop(db, RECORD_OUTING, fixture_key(RECORD_OUTING, 104), &err), err);
	fixture_works(row_drop(db, RECORD_SERVICE, fixture_key(RECORD_SERVICE, 2), &err), err);
	fixture_commit(db, "import and mend");
	undone_is(before);
}
END_TEST

START_TEST(several_imports_may_be_open_in_one_command)
{
	g_autofree char *before = fixture_dump(db);
	struct bulk *outings, *services;
	GError *err = NULL;

	fixture_begin(db);
	outings = bulk_open(db, RECORD_OUTING, 0, &err);
	services = bulk_open(db, RECORD_SERVICE, 0, &err);
	for (int n = 101; n < 110; n++) {
		put_many(outings, RECORD_OUTING, n, n);
		put_many(services, RECORD_SERVICE, n, n);
	}
	fixture_works(bulk_close(outings, &err), err);
	fixture_works(bulk_close(services, &err), err);
	fixture_commit(db, "two files");
	undone_is(before);
}
END_TEST

START_TEST(a_text_longer_than_the_memory_for_changes_comes_through)
{
	g_autofree char *before = fixture_dump(db);
	struct bulk *bulk;
	struct outing o;
	GError *err = NULL;

	fixture_record(RECORD_OUTING, 101, &o);
	g_free(o.remark);
	o.remark = g_strnfill(2500000, 'y');
	fixture_begin(db);
	bulk = bulk_open(db, RECORD_OUTING, 0, &err);
	put_many(bulk, RECORD_OUTING, 102, 104);
	fixture_works(bulk_put(bulk, &o, &err), err);
	put_many(bulk, RECORD_OUTING, 105, 107);
	fixture_works(bulk_close(bulk, &err), err);
	fixture_commit(db, "long");
	record_clear(RECORD_OUTING, &o);
	undone_is(before);
}
END_TEST

START_TEST(an_import_that_fails_leaves_nothing)
{
	g_autofree char *before = fixture_bytes(db_path(db)), *after = NULL;
	struct bulk *bulk;
	struct outing o;
	GError *err = NULL;

	fixture_begin(db);
	bulk = bulk_open(db, RECORD_OUTING, _i ? 50000 : 0, &err);
	put_many(bulk, RECORD_OUTING, 101, 110);
	fixture_record(RECORD_OUTING, 105, &o);
	fixture_fails(bulk_put(bulk, &o, &err), err, ERR_CONFLICT, "another outing has the same key");
	record_clear(RECORD_OUTING, &o);
	bulk_close(bulk, NULL);
	db_rollback(db);
	after = fixture_bytes(db_path(db));
	ck_assert_str_eq(before, after);
	fixture_put(db, RECORD_OUTING, 101, 102);
}
END_TEST

static void
refer_nowhere(enum record r, void *record)
{
	const struct field *f = record_type(r)->field;

	while (f->kind != FIELD_REF || field_int(f, record)[0] == NONE)
		f++;
	*field_int(f, record) = 12345;
}

/* Whether references are checked at the end, of many rows into an empty table, or row by row. */
START_TEST(a_row_that_refers_to_what_is_not_there_is_refused_also_among_many)
{
	gint64 record[FIXTURE_RECORD / sizeof(gint64)];
	gint64 expected = _i ? 50000 : 0;
	struct bulk *bulk;
	GError *err = NULL;

	for (int i = 0; i < 6; i++)
		ck_assert(journal_undo(db, &nobody, NULL, NULL));
	fixture_begin(db);
	bulk = bulk_open(db, RECORD_MEASUREMENT, expected, &err);
	put_many(bulk, RECORD_MEASUREMENT, 101, 110);
	fixture_record(RECORD_MEASUREMENT, 111, record);
	refer_nowhere(RECORD_MEASUREMENT, record);
	if (expected) {
		fixture_works(bulk_put(bulk, record, &err), err);
		fixture_fails(bulk_close(bulk, &err), err, ERR_NOT_FOUND, "of this measurement is not in the logbook");
	} else {
		fixture_fails(bulk_put(bulk, record, &err), err, ERR_NOT_FOUND, "is not in the logbook");
		fixture_works(bulk_close(bulk, &err), err);
	}
	fixture_fails(row_put(db, RECORD_MEASUREMENT, record, &err), err, ERR_NOT_FOUND, "is not in the logbook");
	record_clear(RECORD_MEASUREMENT, record);
	db_rollback(db);
}
END_TEST

START_TEST(an_import_that_the_disk_can_not_hold_leaves_nothing)
{
	g_autofree char *before = fixture_dump(db), *after = NULL;
	struct entry_head head = fixture_head("import");
	struct rlimit limit;
	struct bulk *bulk;
	gint64 record[FIXTURE_RECORD / sizeof(gint64)];
	gboolean ok = TRUE;
	GError *err = NULL;

	signal(SIGXFSZ, SIG_IGN);
	ck_assert_int_eq(getrlimit(RLIMIT_FSIZE, &limit), 0);
	limit.rlim_cur = 1500000;
	ck_assert_int_eq(setrlimit(RLIMIT_FSIZE, &limit), 0);
	fixture_begin(db);
	bulk = bulk_open(db, RECORD_OUTING, 0, &err);
	for (int n = 101; ok && n < 40000; n++) {
		fixture_record(RECORD_OUTING, n, record);
		ok = bulk_put(bulk, record, &err);
		record_clear(RECORD_OUTING, record);
	}
	ok = bulk_close(bulk, ok ? &err : NULL) && ok;
	fixture_fails(ok && db_commit(db, &head, NULL, &err), err, ERR_STORE, "nothing was saved");
	db_rollback(db);
	after = fixture_dump(db);
	ck_assert_str_eq(before, after);
	ck_assert_int_eq(fixture_files(), 1);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("store/bulk");
	TCase *tc = tcase_create("imports");
	SRunner *sr = srunner_create(s);
	int failed;

	tcase_set_timeout(tc, 120);
	tcase_add_checked_fixture(tc, setup, teardown);
	tcase_add_loop_test(tc, a_row_imported_leaves_byte_for_byte_the_changes_that_sqlite_would_record, 0,
			    3 * RECORD_COUNT);
	tcase_add_loop_test(tc, an_import_is_undone_as_one_command, 0, RECORD_COUNT);
	tcase_add_loop_test(tc, a_large_import_is_undone_too, 0, 2);
	tcase_add_test(tc, rows_imported_may_be_altered_and_removed_in_the_same_command);
	tcase_add_test(tc, several_imports_may_be_open_in_one_command);
	tcase_add_test(tc, a_text_longer_than_the_memory_for_changes_comes_through);
	tcase_add_loop_test(tc, an_import_that_fails_leaves_nothing, 0, 2);
	tcase_add_loop_test(tc, a_row_that_refers_to_what_is_not_there_is_refused_also_among_many, 0, 2);
	tcase_add_test(tc, an_import_that_the_disk_can_not_hold_leaves_nothing);
	suite_add_tcase(s, tc);
	srunner_run_all(sr, CK_NORMAL);
	failed = srunner_ntests_failed(sr);
	srunner_free(sr);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
