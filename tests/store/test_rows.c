#include "fixture.h"
#include "store/inside.h"
#include "store/rows.h"

#include <math.h>
#include <stdlib.h>

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

union any {
	struct boat boat;
	struct engine engine;
	struct meter meter;
	struct fitting fitting;
	struct part part;
	struct outing outing;
	struct task task;
	struct service service;
	struct measurement measurement;
	struct bound bound;
	struct rate rate;
	char bytes[FIXTURE_RECORD];
};

START_TEST(a_record_comes_back_as_it_was_put)
{
	enum record r = (enum record)_i;
	union any put, got;
	GError *err = NULL;

	record_init(r, &got);
	fixture_begin(db);
	for (int n = 41; n < 47; n++) {
		fixture_record(r, n, &put);
		fixture_works(row_put(db, r, &put, &err), err);
		fixture_works(row_get(db, r, fixture_key(r, n), &got, &err), err);
		ck_assert(record_equal(r, &put, &got));
		record_clear(r, &put);
	}
	fixture_commit(db, "all kinds");
	record_clear(r, &got);
}
END_TEST

START_TEST(a_record_put_again_is_altered_not_doubled)
{
	union any a;
	gint64 n;
	struct cells *c;
	GError *err = NULL;

	fixture_record(RECORD_TASK, 2, &a);
	g_free(a.task.title);
	a.task.title = g_strdup("another title");
	fixture_begin(db);
	fixture_works(row_put(db, RECORD_TASK, &a, &err), err);
	fixture_commit(db, "alter");
	record_clear(RECORD_TASK, &a);
	fixture_works(row_get(db, RECORD_TASK, fixture_key(RECORD_TASK, 2), &a, &err), err);
	ck_assert_str_eq(a.task.title, "another title");
	record_clear(RECORD_TASK, &a);
	c = cells_open(db, SQL_OF_BOAT_TASK);
	cells_bind(c, 1, fixture_key(RECORD_BOAT, 1));
	for (n = 0; cells_next(c); n++)
		;
	fixture_works(cells_close(c, &err), err);
	ck_assert_int_eq(n, 4);
}
END_TEST

/* What can't be stored, made from the 50th of a kind. */
static void no_name(union any *a) { g_clear_pointer(&a->boat.name, g_free); }
static void no_water(union any *a) { a->boat.water = NONE; }
static void strange_water(union any *a) { a->boat.water = 7; }
static void no_boat(union any *a) { a->outing.boat = 77; }
static void no_engine(union any *a) { a->outing.engine = 77; }
static void backwards(union any *a) { a->outing.hours = -1; }
static void no_date(union any *a) { a->outing.date = NONE; }
static void no_value(union any *a) { a->rate.value = (double)NAN; }

static void
same_name(union any *a)
{
	g_free(a->boat.name);
	a->boat.name = g_strdup("name 1");
}

static void
same_path(union any *a)
{
	g_free(a->fitting.path);
	a->fitting.path = g_strdup("path 2");
}

static const struct {
	enum record record;
	void (*spoil)(union any *);
	enum err_code code;
	const char *words;
} refused[] = {
	{ RECORD_BOAT, no_name, ERR_INPUT, "this boat has no name" },
	{ RECORD_BOAT, no_water, ERR_INPUT, "this boat has no water" },
	{ RECORD_BOAT, strange_water, ERR_INPUT, "this boat has no water" },
	{ RECORD_BOAT, same_name, ERR_CONFLICT, "another boat has the same name" },
	{ RECORD_FITTING, same_path, ERR_CONFLICT, "another fitting has the same boat and path" },
	{ RECORD_OUTING, no_boat, ERR_NOT_FOUND, "the boat of this outing is not in the logbook" },
	{ RECORD_OUTING, no_engine, ERR_NOT_FOUND, "the engine of this outing is not in the logbook" },
	{ RECORD_OUTING, backwards, ERR_INPUT, "this outing breaks the rule hours >= 0" },
	{ RECORD_OUTING, no_date, ERR_INPUT, "this outing has no date" },
	{ RECORD_RATE, no_value, ERR_INPUT, "this rate has no value" },
};

START_TEST(what_can_not_be_stored_is_refused_in_plain_words)
{
	enum record r = refused[_i / 2].record;
	gboolean by_bulk = _i % 2;
	struct bulk *bulk = NULL;
	union any a;
	GError *err = NULL;

	fixture_record(r, 50, &a);
	refused[_i / 2].spoil(&a);
	fixture_begin(db);
	if (by_bulk)
		bulk = bulk_open(db, r, 0, &err);
	fixture_fails(by_bulk ? bulk_put(bulk, &a, &err) : row_put(db, r, &a, &err), err, refused[_i / 2].code,
		      refused[_i / 2].words);
	if (by_bulk)
		fixture_works(bulk_close(bulk, &err), err);
	db_rollback(db);
	record_clear(r, &a);
}
END_TEST

static const struct {
	enum record record;
	const char *words;
} held[] = {
	{ RECORD_BOAT, "engines (4), fittings (4), stays (4), seasons (4), outings (29), happenings (4), tasks (4),"
			" measurements (4), bounds (4)" },
	{ RECORD_ENGINE, "meters (4), fittings (2), outings (15)" },
	{ RECORD_METER, "outings (15), services (6)" },
	{ RECORD_FITTING, "parts (4), tasks (4), measurements (2), bounds (2)" },
	{ RECORD_OUTING, "outings (15)" },
	{ RECORD_TASK, "limits (4), services (12)" },
};

START_TEST(a_row_that_others_refer_to_stays)
{
	enum record r = held[_i].record;
	union any a;
	GError *err = NULL;

	record_init(r, &a);
	fixture_begin(db);
	fixture_fails(row_drop(db, r, fixture_key(r, 1), &err), err, ERR_CONFLICT, held[_i].words);
	fixture_works(row_get(db, r, fixture_key(r, 1), &a, &err), err);
	db_rollback(db);
	record_clear(r, &a);
}
END_TEST

START_TEST(a_row_that_nothing_refers_to_goes)
{
	enum record r = (enum record)_i;
	union any a;
	GError *err = NULL;

	record_init(r, &a);
	fixture_begin(db);
	fixture_works(row_drop(db, r, fixture_key(r, 4), &err), err);
	fixture_fails(row_get(db, r, fixture_key(r, 4), &a, &err), err, ERR_NOT_FOUND, "there is no such");
	fixture_fails(row_drop(db, r, fixture_key(r, 4), &err), err, ERR_NOT_FOUND, "there is no such");
	fixture_commit(db, "remove");
}
END_TEST

START_TEST(new_keys_follow_the_order_of_entry_from_a_random_start)
{
	struct db *other = fixture_book("other.db");
	gint64 first, elsewhere;

	fixture_begin(db);
	first = row_new_key(db);
	ck_assert_int_gt(first, 0);
	ck_assert_int_eq(row_new_key(db), first + 1);
	ck_assert_int_eq(row_new_key(db), first + 2);
	db_rollback(db);
	fixture_begin(other);
	elsewhere = row_new_key(other);
	ck_assert(elsewhere > first + 1000 || elsewhere < first - 1000);
	db_rollback(other);
	db_close(other);
	fixture_put(db, RECORD_SEASON, 50, 50);
	fixture_begin(db);
	ck_assert_int_gt(row_new_key(db), first + 2);
	db_rollback(db);
}
END_TEST

START_TEST(one_statement_can_be_open_twice)
{
	struct cells *a = cells_open(db, SQL_WALK_OUTING), *b;
	int pairs = 0;

	while (cells_next(a)) {
		b = cells_open(db, SQL_WALK_OUTING);
		while (cells_next(b))
			pairs++;
		ck_assert(cells_close(b, NULL));
	}
	ck_assert(cells_close(a, NULL));
	ck_assert_int_eq(pairs, 29 * 29);
}
END_TEST

START_TEST(cells_tell_unknown_from_empty_and_zero)
{
	struct cells *c;
	union any a;
	int n;

	fixture_record(RECORD_SERVICE, 51, &a);
	g_free(a.service.seen);
	a.service.seen = g_strdup("");
	a.service.cost = 0;
	fixture_begin(db);
	ck_assert(row_put(db, RECORD_SERVICE, &a, NULL));
	fixture_commit(db, "a service");
	record_clear(RECORD_SERVICE, &a);
	c = cells_open(db, SQL_GET_SERVICE);
	cells_bind(c, 1, fixture_key(RECORD_SERVICE, 51));
	ck_assert(cells_next(c));
	ck_assert_int_eq(cells_int(c, 15), 0);
	ck_assert_int_eq(cells_int(c, 7), NONE);
	ck_assert_str_eq(cells_text(c, 12), "");
	ck_assert_str_eq(cells_bytes(c, 12, &n), "");
	ck_assert_int_eq(n, 0);
	ck_assert_ptr_null(cells_text(c, 17));
	ck_assert_ptr_null(cells_bytes(c, 17, &n));
	ck_assert(isnan(cells_real(c, 17)));
	ck_assert_int_eq(cells_word(c, 6, &words_outcome), 51 % words_outcome.n);
	ck_assert_int_eq(cells_word(c, 17, &words_outcome), NONE);
	ck_assert(!cells_next(c));
	ck_assert(cells_close(c, NULL));
}
END_TEST

START_TEST(a_word_that_nobody_knows_ends_the_rows_with_a_sentence)
{
	union any a;
	GError *err = NULL;

	db_close(db);
	fixture_sql(fixture_path("boat.db"), "UPDATE outing SET water = 'soup' WHERE id = 8000003");
	db = fixture_open("boat.db", DB_READ);
	record_init(RECORD_OUTING, &a);
	fixture_fails(row_get(db, RECORD_OUTING, 8000003, &a, &err), err, ERR_STORE,
		      "\"soup\" stands where a water should");
	record_clear(RECORD_OUTING, &a);
}
END_TEST

START_TEST(a_text_is_found_by_its_bytes_not_as_sql)
{
	struct cells *c = cells_open(db, SQL_BOAT_BY_NAME);
	union any a;

	record_init(RECORD_BOAT, &a);
	cells_bind_text(c, 1, "name 2");
	ck_assert(cells_next_record(c, RECORD_BOAT, &a));
	ck_assert_int_eq(a.boat.id, fixture_key(RECORD_BOAT, 2));
	ck_assert(cells_close(c, NULL));
	c = cells_open(db, SQL_BOAT_BY_NAME);
	cells_bind_text(c, 1, "x' OR '1'='1");
	ck_assert(!cells_next_record(c, RECORD_BOAT, &a));
	ck_assert(cells_close(c, NULL));
	record_clear(RECORD_BOAT, &a);
}
END_TEST

START_TEST(all_rows_of_a_boat_are_listed_with_it)
{
	enum record r = (enum record)_i;
	union any a;
	int of_boat = 0, all = 0;
	struct cells *c;

	if (sql_of_boat(r) == SQL_COUNT || r == RECORD_BOAT)
		return;
	record_init(r, &a);
	c = cells_open(db, sql_of_boat(r));
	cells_bind(c, 1, fixture_key(RECORD_BOAT, 1));
	while (cells_next_record(c, r, &a))
		of_boat++;
	ck_assert(cells_close(c, NULL));
	c = cells_open(db, sql_all(r));
	while (cells_next_record(c, r, &a))
		all++;
	ck_assert(cells_close(c, NULL));
	record_clear(r, &a);
	ck_assert_int_gt(all, 3);
	ck_assert_int_eq(of_boat, all);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("store/rows");
	TCase *tc = tcase_create("records");
	SRunner *sr = srunner_create(s);
	int failed;

	tcase_add_checked_fixture(tc, setup, teardown);
	tcase_add_loop_test(tc, a_record_comes_back_as_it_was_put, 0, RECORD_COUNT);
	tcase_add_test(tc, a_record_put_again_is_altered_not_doubled);
	tcase_add_loop_test(tc, what_can_not_be_stored_is_refused_in_plain_words, 0, 2 * G_N_ELEMENTS(refused));
	tcase_add_loop_test(tc, a_row_that_others_refer_to_stays, 0, G_N_ELEMENTS(held));
	tcase_add_loop_test(tc, a_row_that_nothing_refers_to_goes, 0, RECORD_COUNT);
	tcase_add_test(tc, new_keys_follow_the_order_of_entry_from_a_random_start);
	tcase_add_test(tc, one_statement_can_be_open_twice);
	tcase_add_test(tc, cells_tell_unknown_from_empty_and_zero);
	tcase_add_test(tc, a_word_that_nobody_knows_ends_the_rows_with_a_sentence);
	tcase_add_test(tc, a_text_is_found_by_its_bytes_not_as_sql);
	tcase_add_loop_test(tc, all_rows_of_a_boat_are_listed_with_it, 0, RECORD_COUNT);
	suite_add_tcase(s, tc);
	srunner_run_all(sr, CK_NORMAL);
	failed = srunner_ntests_failed(sr);
	srunner_free(sr);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
