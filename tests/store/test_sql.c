#include "fixture.h"
#include "store/guard.h"
#include "store/inside.h"
#include "store/migrate.h"
#include "store/rows.h"

#include <stdlib.h>
#include <string.h>

/* Statements that may read a table from end to end, and why. */
static const struct {
	const char *name;	/* a whole name, or its beginning with * */
	const char *why;
} whole_tables[] = {
	{ "WALK_*", "compares or exports every row" },
	{ "ALL_*", "exports every row" },
	{ "ENTRIES_*", "lists or checks the journal" },
	{ "DUE_RATES", "a handful" },
	{ "DUE_PLACES", "a handful" },
	{ "DUE_CLIMATES", "twelve rows a place" },
	{ "REFERS_TO_PLACE", "boats: a handful, and only to remove a place" },
	{ "SCHEMA_ROWS", "the schema" },
	{ "INDEXES", "the schema" },
	{ "FOREIGN_KEY_CHECK_OF", "every row of a large import, once" },
};

static struct db *db;

static void
setup(void)
{
	db = db_scratch(":memory:");
	for (int i = 0; i < migrations_ours()->n; i++)
		ck_assert(migrate_step(db, migrations_ours(), i, NULL));
}

static void
teardown(void)
{
	db_close(db);
}

static gboolean
is_schema(int sql)
{
	return g_str_has_prefix(sql_name[sql], "SCHEMA_") && g_ascii_isdigit(sql_name[sql][7]);
}

static gboolean
may_scan(const char *name)
{
	for (size_t i = 0; i < G_N_ELEMENTS(whole_tables); i++)
		if (g_pattern_match_simple(whole_tables[i].name, name))
			return TRUE;
	return FALSE;
}

/* The plan's lines, each after a newline. */
static char *
plan_of(int sql)
{
	g_autofree char *explain = g_strconcat("EXPLAIN QUERY PLAN ", sql_text[sql], NULL);
	GString *plan = g_string_new(NULL);
	sqlite3_stmt *stmt;

	ck_assert_msg(sqlite3_prepare_v2(db->conn, explain, -1, &stmt, NULL) == SQLITE_OK, "%s: %s", sql_name[sql],
		      sqlite3_errmsg(db->conn));
	while (sqlite3_step(stmt) == SQLITE_ROW)
		g_string_append_printf(plan, "\n%s", (const char *)sqlite3_column_text(stmt, 3));
	sqlite3_finalize(stmt);
	return g_string_free(plan, FALSE);
}

START_TEST(every_statement_prepares)
{
	const char *next = sql_text[_i];
	sqlite3_stmt *stmt;

	ck_assert_msg(!strstr(sql_text[_i], "--"), "%s: a comment came along", sql_name[_i]);
	for (int n = 0; *next && !is_schema(_i); n++) {
		ck_assert_msg(sqlite3_prepare_v2(db->conn, next, -1, &stmt, &next) == SQLITE_OK, "%s: %s", sql_name[_i],
			      sqlite3_errmsg(db->conn));
		ck_assert_msg(stmt || n, "%s is empty", sql_name[_i]);
		sqlite3_finalize(stmt);
	}
}
END_TEST

START_TEST(no_statement_reads_a_whole_table_unless_listed)
{
	g_autofree char *plan = NULL;

	if (is_schema(_i) || may_scan(sql_name[_i]))
		return;
	plan = plan_of(_i);
	ck_assert_msg(!strstr(plan, "\nSCAN"), "%s:%s", sql_name[_i], plan);
	ck_assert_msg(!strstr(plan, "AUTOMATIC"), "%s:%s", sql_name[_i], plan);
}
END_TEST

/* Asked thousands of times for one due list. */
static const struct {
	enum sql_id sql;
	const char *words;
} hot[] = {
	{ SQL_SERVICES_OF_TASK, "USING COVERING INDEX service_by_task" },
	{ SQL_DUE_RUNS, "USING COVERING INDEX outing_by_boat" },
	{ SQL_ENGINE_HOURS, "USING COVERING INDEX outing_by_boat" },
	{ SQL_LIMITS_OF_TASK, "USING COVERING INDEX limit_by_task" },
};

START_TEST(a_hot_statement_needs_one_index_and_no_sorting)
{
	g_autofree char *plan = plan_of(hot[_i].sql);

	ck_assert_msg(strstr(plan, hot[_i].words) != NULL, "%s:%s", sql_name[hot[_i].sql], plan);
	ck_assert_msg(!strstr(plan, "TEMP B-TREE"), "%s:%s", sql_name[hot[_i].sql], plan);
}
END_TEST

static const char *
type_of(const struct field *f)
{
	return f->kind == FIELD_REAL ? "REAL" : f->kind == FIELD_TEXT || f->kind == FIELD_WORD ? "TEXT" : "INTEGER";
}

START_TEST(the_columns_of_each_table_are_the_fields_of_its_record)
{
	const struct record_type *t = record_type((enum record)_i);
	g_autofree char *sql = g_strdup_printf("SELECT name, type, \"notnull\", pk FROM pragma_table_info('%s')",
					       t->name);
	sqlite3_stmt *stmt;
	int i = 0;

	ck_assert_int_eq(sqlite3_prepare_v2(db->conn, sql, -1, &stmt, NULL), SQLITE_OK);
	for (; sqlite3_step(stmt) == SQLITE_ROW; i++) {
		const struct field *f = &t->field[i];
		g_autofree char *column = g_strdelimit(g_strdup(f->name), "-", '_');

		ck_assert_int_lt(i, t->n_fields);
		ck_assert_str_eq((const char *)sqlite3_column_text(stmt, 0), column);
		ck_assert_str_eq((const char *)sqlite3_column_text(stmt, 1), type_of(f));
		ck_assert_msg(sqlite3_column_int(stmt, 2) == (f->required && f->kind != FIELD_KEY), "%s.%s", t->name,
			      f->name);
		ck_assert_int_eq(sqlite3_column_int(stmt, 3), f->kind == FIELD_KEY);
	}
	ck_assert_int_eq(i, t->n_fields);
	sqlite3_finalize(stmt);
}
END_TEST

/* What all boats of a logbook share. */
static gboolean
r_of_no_boat(enum record r)
{
	return r == RECORD_RATE || r == RECORD_PLACE || r == RECORD_CLIMATE || r == RECORD_ITEM || r == RECORD_NUMBER
	    || r == RECORD_LOT || r == RECORD_TAKEN;
}

static void
named_for(enum sql_id sql, const char *begin, enum record r)
{
	g_autofree char *name = g_strconcat(begin, record_type(r)->name, NULL);
	g_autofree char *upper = g_ascii_strup(name, -1);

	ck_assert_str_eq(sql_name[sql], upper);
}

START_TEST(each_record_has_its_own_statements)
{
	enum record r = (enum record)_i;

	named_for(sql_all(r), "ALL_", r);
	named_for(sql_walk(r), "WALK_", r);
	if (!r_of_no_boat(r))
		named_for(sql_of_boat(r), "OF_BOAT_", r);
	else
		ck_assert_int_eq(sql_of_boat(r), SQL_COUNT);
}
END_TEST

START_TEST(the_hash_of_the_schema_that_the_program_knows_is_up_to_date)
{
	g_autofree char *hash = guard_schema_hash(db, NULL);

	ck_assert_str_eq(guard_known_hash(migrations_ours()->n), hash);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("store/sql");
	TCase *tc = tcase_create("statements");
	SRunner *sr = srunner_create(s);
	int failed;

	tcase_add_unchecked_fixture(tc, setup, teardown);
	tcase_add_loop_test(tc, every_statement_prepares, 0, SQL_COUNT);
	tcase_add_loop_test(tc, no_statement_reads_a_whole_table_unless_listed, 0, SQL_COUNT);
	tcase_add_loop_test(tc, a_hot_statement_needs_one_index_and_no_sorting, 0, G_N_ELEMENTS(hot));
	tcase_add_loop_test(tc, the_columns_of_each_table_are_the_fields_of_its_record, 0, RECORD_COUNT);
	tcase_add_loop_test(tc, each_record_has_its_own_statements, 0, RECORD_COUNT);
	tcase_add_test(tc, the_hash_of_the_schema_that_the_program_knows_is_up_to_date);
	suite_add_tcase(s, tc);
	srunner_run_all(sr, CK_NORMAL);
	failed = srunner_ntests_failed(sr);
	srunner_free(sr);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
