#include "fixture.h"
#include "store/inside.h"
#include "store/rows.h"
#include "store/shape.h"

#include <stdlib.h>

/* A changeset of every kind of record, with rows added, altered and removed, as SQLite records it. */
static guint8 *changes;
static int size;

static void
record_changes(void)
{
	struct db *db;
	sqlite3_session *session;
	void *bytes;

	fixture_setup();
	db = fixture_book("boat.db");
	ck_assert_int_eq(sqlite3session_create(db->conn, "main", &session), SQLITE_OK);
	for (int r = 0; r < RECORD_COUNT; r++)
		ck_assert_int_eq(sqlite3session_attach(session, record_type((enum record)r)->name), SQLITE_OK);
	for (int r = 0; r < RECORD_COUNT; r++)
		fixture_put(db, (enum record)r, 41, 42);
	fixture_begin(db);
	ck_assert(row_drop(db, RECORD_SERVICE, fixture_key(RECORD_SERVICE, 2), NULL));
	ck_assert(row_drop(db, RECORD_MEASUREMENT, fixture_key(RECORD_MEASUREMENT, 2), NULL));
	fixture_commit(db, "remove");
	ck_assert_int_eq(sqlite3_exec(db->conn, "UPDATE outing SET hours = 5, remark = NULL; UPDATE rate SET value = 2",
				      NULL, NULL, NULL), SQLITE_OK);
	ck_assert_int_eq(sqlite3session_changeset(session, &size, &bytes), SQLITE_OK);
	sqlite3session_delete(session);
	db_close(db);
	fixture_teardown();
	changes = g_memdup2(bytes, (gsize)size);
	sqlite3_free(bytes);
}

static void
teardown(void)
{
	g_free(changes);
}

static gboolean
good(const guint8 *bytes, int n)
{
	struct shape s = { 0 };

	shape_feed(&s, bytes, (gsize)n);
	return shape_good(&s);
}

/* How many rows SQLite reads; -1 when it finds the changeset corrupt. */
static int
rows_read(guint8 *bytes, int n)
{
	sqlite3_changeset_iter *i;
	int rows = 0;

	ck_assert_int_eq(sqlite3changeset_start(&i, n, bytes), SQLITE_OK);
	while (sqlite3changeset_next(i) == SQLITE_ROW)
		rows++;
	return sqlite3changeset_finalize(i) == SQLITE_OK ? rows : -1;
}

START_TEST(what_sqlite_records_is_well_formed)
{
	ck_assert_int_gt(rows_read(changes, size), 50);
	ck_assert(good(changes, size));
	ck_assert(good(changes, 0));
}
END_TEST

START_TEST(it_does_not_matter_in_which_pieces_the_bytes_come)
{
	struct shape s = { 0 };

	for (int at = 0; at < size; at += 1 + at % 13)
		shape_feed(&s, changes + at, (gsize)MIN(1 + at % 13, size - at));
	ck_assert(shape_good(&s));
}
END_TEST

START_TEST(a_changeset_cut_off_is_good_only_between_rows)
{
	int whole = 0;

	for (int n = 1; n < size; n++)
		if (good(changes, n)) {
			whole++;
			ck_assert_int_ge(rows_read(changes, n), 0);
		}
	/* After each row but the last, and after each table's head. */
	ck_assert_int_eq(whole, rows_read(changes, size) - 1 + RECORD_COUNT);
}
END_TEST

START_TEST(whatever_is_taken_for_well_formed_sqlite_can_read)
{
	static const guint8 turns[] = { 1, 2, 4, 8, 16, 32, 64, 128, 255 };
	int refused = 0, taken = 0;

	for (int at = 0; at < size; at++) {
		guint8 turn = turns[at % (int)sizeof turns];

		changes[at] ^= turn;
		if (good(changes, size)) {
			taken++;
			ck_assert_msg(rows_read(changes, size) >= 0, "byte %d turned by %d", at, turn);
		} else {
			refused++;
		}
		changes[at] ^= turn;
	}
	ck_assert_int_gt(refused, size / 8);
	ck_assert_int_gt(taken, size / 8);
}
END_TEST

/* Heads and rows that a stranger might write. */
static const struct {
	const char *bytes;
	int n;
} strange[] = {
	{ "T\13\1\0\0\0\0\0\0\0\0\0\0entry\0", 19 },	/* the journal itself */
	{ "T\6\1\0\0\0\0\0rate\0", 13 },	/* fine: a head */
	{ "T\6\0\1\0\0\0\0rate\0", 13 },	/* another key */
	{ "T\6\1\1\0\0\0\0rate\0", 13 },	/* two keys */
	{ "T\7\1\0\0\0\0\0\0rate\0", 14 },	/* too many columns */
	{ "T\0rate\0", 7 },	/* none */
	{ "T\377\377\377\377\377\377\377\377\377", 10 },	/* more than can be */
	{ "T\6\1\0\0\0\0\0ratexxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx\0", 44 },
	{ "\22\0\1\0\0\0\0\0\0\0\1", 11 },	/* a row of no table */
	{ "T\6\1\0\0\0\0\0rate\0\22\0\5", 16 },	/* no key */
	{ "T\6\1\0\0\0\0\0rate\0\22\2", 15 },	/* neither direct nor indirect */
	{ "T\6\1\0\0\0\0\0rate\0\22\0\1\0\0\0\0\0\0\0\1\0", 25 },	/* a value left out of a new row */
	{ "T\6\1\0\0\0\0\0rate\0\22\0\1\0\0\0\0\0\0\0\1\6", 25 },	/* no such type */
	{ "T\6\1\0\0\0\0\0rate\0\22\0\1\0\0\0\0\0\0\0\1\3\377\377\377\377\377\377", 30 },	/* a text without end */
	{ "T\6\1\0\0\0\0\0rate\0X", 14 },	/* no such operation */
};

START_TEST(what_only_looks_like_a_changeset_is_refused)
{
	ck_assert_int_eq(good((const guint8 *)strange[_i].bytes, strange[_i].n), _i == 1);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("store/shape");
	TCase *tc = tcase_create("changesets");
	SRunner *sr = srunner_create(s);
	int failed;

	tcase_set_timeout(tc, 60);
	tcase_add_unchecked_fixture(tc, record_changes, teardown);
	tcase_add_test(tc, what_sqlite_records_is_well_formed);
	tcase_add_test(tc, it_does_not_matter_in_which_pieces_the_bytes_come);
	tcase_add_test(tc, a_changeset_cut_off_is_good_only_between_rows);
	tcase_add_test(tc, whatever_is_taken_for_well_formed_sqlite_can_read);
	tcase_add_loop_test(tc, what_only_looks_like_a_changeset_is_refused, 0, G_N_ELEMENTS(strange));
	suite_add_tcase(s, tc);
	srunner_run_all(sr, CK_NORMAL);
	failed = srunner_ntests_failed(sr);
	srunner_free(sr);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
