#include "fixture.h"
#include "store/apply.h"
#include "store/inside.h"
#include "store/journal.h"
#include "store/rows.h"
#include "store/spool.h"

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

static const struct entry_head nobody = { NULL, "Kim", "laptop", 1764000100 };

static void
reopen(void)
{
	db_close(db);
	db = fixture_open("boat.db", DB_WRITE);
}

/* Undo all, one after another, then redo all: at each step the logbook is what it was after that many commands. */
START_TEST(undo_goes_back_to_the_beginning_and_redo_returns)
{
	g_autoptr(GPtrArray) states = g_ptr_array_new_with_free_func(g_free);
	GError *err = NULL;
	gint64 seq, last = 0;

	g_ptr_array_add(states, fixture_dump(db));
	while (journal_undo(db, &nobody, &seq, NULL)) {
		ck_assert(!last || seq < last);
		last = seq;
		g_ptr_array_add(states, fixture_dump(db));
		if (_i)
			reopen();
	}
	fixture_fails(journal_undo(db, &nobody, &seq, &err), err, ERR_NOT_FOUND, "nothing to undo");
	ck_assert_int_eq(states->len, RECORD_RATE + 1 + 4);
	ck_assert_ptr_null(strstr(states->pdata[states->len - 1], "|"));
	for (guint i = states->len - 1; i-- > 0;) {
		g_autofree char *now = NULL;

		fixture_works(journal_redo(db, &nobody, NULL, &err), err);
		now = fixture_dump(db);
		ck_assert_str_eq(now, states->pdata[i]);
		if (_i)
			reopen();
	}
	fixture_fails(journal_redo(db, &nobody, NULL, &err), err, ERR_NOT_FOUND, "nothing to redo");
}
END_TEST

START_TEST(a_new_command_after_an_undo_ends_what_can_be_redone)
{
	GError *err = NULL;

	fixture_works(journal_undo(db, &nobody, NULL, &err), err);
	fixture_works(journal_undo(db, &nobody, NULL, &err), err);
	fixture_works(journal_redo(db, &nobody, NULL, &err), err);
	fixture_put(db, RECORD_OUTING, 60, 60);
	fixture_fails(journal_redo(db, &nobody, NULL, &err), err, ERR_NOT_FOUND, "nothing to redo");
	fixture_works(journal_undo(db, &nobody, NULL, &err), err);
	fixture_works(journal_undo(db, &nobody, NULL, &err), err);
}
END_TEST

START_TEST(the_journal_says_what_took_back_what)
{
	static const struct {
		gint64 seq;
		const char *what;
		gint64 undoes, redoes, undone_by;
	} wanted[] = {
		{ 22, "undo: services 5 to 12", 17, NONE, NONE },
		{ 21, "undo: correct an outing and remove one", 20, NONE, NONE },
		{ 20, "redo: correct an outing and remove one", NONE, 19, 21 },
		/* 18 was taken back by 19, which 20 took back, which 21 took back: so it is 19 that stands. */
		{ 19, "undo: correct an outing and remove one", 18, NONE, NONE },
		{ 18, "correct an outing and remove one", NONE, NONE, 19 },
		{ 17, "services 5 to 12", NONE, NONE, 22 },
		{ 16, "outings 5 to 30", NONE, NONE, NONE },
	};
	GPtrArray *list;

	ck_assert(journal_undo(db, &nobody, NULL, NULL));
	ck_assert(journal_undo(db, &nobody, NULL, NULL));
	list = journal_list(db, G_N_ELEMENTS(wanted), NULL);
	ck_assert_int_eq(list->len, G_N_ELEMENTS(wanted));
	for (size_t i = 0; i < G_N_ELEMENTS(wanted); i++) {
		const struct entry *e = list->pdata[i];

		ck_assert_int_eq(e->seq, wanted[i].seq);
		ck_assert_str_eq(e->what, wanted[i].what);
		ck_assert_int_eq(e->undoes, wanted[i].undoes);
		ck_assert_int_eq(e->redoes, wanted[i].redoes);
		ck_assert_int_eq(e->undone_by, wanted[i].undone_by);
		ck_assert_str_eq(e->who, "Kim");
		ck_assert_str_eq(e->device, "laptop");
		ck_assert_int_eq(e->schema, 5);
	}
	g_ptr_array_free(list, TRUE);
	list = journal_list(db, 0, NULL);
	ck_assert_int_eq(list->len, 22);
	g_ptr_array_free(list, TRUE);
}
END_TEST

START_TEST(own_words_can_be_given_to_an_undo)
{
	struct entry_head head = fixture_head("slip of the finger");
	GPtrArray *list;

	ck_assert(journal_undo(db, &head, NULL, NULL));
	list = journal_list(db, 1, NULL);
	ck_assert_str_eq(((const struct entry *)list->pdata[0])->what, "slip of the finger");
	g_ptr_array_free(list, TRUE);
}
END_TEST

static const struct {
	const char *sql;	/* done behind the logbook's back */
	enum err_code code;
	const char *words;
} spoilt[] = {
	{ "UPDATE outing SET hours = 1 WHERE id = 8000003", ERR_CONFLICT,
	  "outing with the key bbbbbbbbbbkncdbf was changed since" },
	{ "PRAGMA foreign_keys = OFF; DELETE FROM outing WHERE id = 8000003", ERR_CONFLICT,
	  "outing with the key bbbbbbbbbbkncdbf is no longer there" },
	{ "INSERT INTO outing (id, boat, date, hours) VALUES (8000005, 1000001, 1, 1)", ERR_CONFLICT,
	  "outing with the key bbbbbbbbbbkncdbh is there already" },
	{ "UPDATE entry SET schema = 0 WHERE seq = 20", ERR_CONFLICT, "before the logbook was brought to schema 5" },
	{ "UPDATE entry SET what = 'x' WHERE seq = 20", ERR_STORE, "entry 20 (x) is damaged" },
	{ "UPDATE entry SET changeset = x'54' WHERE seq = 20", ERR_STORE, "is damaged" },
	{ "UPDATE entry SET hash = x'00' WHERE seq = 20", ERR_STORE, "is damaged" },
};

START_TEST(an_undo_that_does_not_fit_changes_nothing)
{
	g_autofree char *before = NULL, *after = NULL;
	GError *err = NULL;

	db_close(db);
	fixture_sql(fixture_path("boat.db"), spoilt[_i].sql);
	db = fixture_open("boat.db", DB_WRITE);
	before = fixture_bytes(db_path(db));
	fixture_fails(journal_undo(db, &nobody, NULL, &err), err, spoilt[_i].code, spoilt[_i].words);
	after = fixture_bytes(db_path(db));
	ck_assert_str_eq(before, after);
}
END_TEST

START_TEST(a_changeset_reaches_no_table_but_those_of_records)
{
	/* A row inserted into "entry": 11 columns, all NULL but the key. */
	static const guint8 changes[] = { 'T', 11, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 'e', 'n', 't', 'r', 'y', 0,
		SQLITE_INSERT, 0, 1, 0, 0, 0, 0, 0, 0, 0, 99, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5 };
	struct spool *s = db_spool(db);
	GError *err = NULL;

	spool_output(s, changes, sizeof changes);
	spool_rewind(s);
	fixture_fails(apply_changes(db, spool_input, s, &err), err, ERR_STORE, "names a table that no logbook has");
	spool_free(s);
}
END_TEST

struct seen {
	int added, altered, removed;
};

static void
see_change(void *context, const struct change *c)
{
	struct seen *seen = context;
	const struct outing *before = c->before, *after = c->after;

	ck_assert_int_eq(c->record, RECORD_OUTING);
	if (c->kind == CHANGE_ALTERED) {
		ck_assert_int_eq(c->id, fixture_key(RECORD_OUTING, 3));
		ck_assert_int_eq(before->id, c->id);
		ck_assert_int_eq(after->id, c->id);
		ck_assert_uint_eq(c->fields, 1 << 4 | 1 << 12);
		ck_assert_int_eq(before->hours, 1080);
		ck_assert_int_eq(after->hours, 1680);
		ck_assert_ptr_null(before->remark);
		ck_assert_str_eq(after->remark, "corrected");
		ck_assert_int_eq(after->date, NONE);
		seen->altered++;
	} else if (c->kind == CHANGE_REMOVED) {
		ck_assert_int_eq(c->id, fixture_key(RECORD_OUTING, 5));
		ck_assert_ptr_null(after);
		ck_assert_uint_eq(c->fields, (1 << 13) - 1);
		ck_assert_int_eq(before->date, 20005);
		ck_assert_int_eq(before->water, 5 % 3);
		ck_assert_str_eq(before->place, "place 5");
		seen->removed++;
	} else {
		ck_assert_ptr_null(before);
		ck_assert_int_eq(after->id, c->id);
		ck_assert_str_eq(after->place ? after->place : "", after->date % 3 == 20000 % 3 ? "" : after->place);
		seen->added++;
	}
}

START_TEST(the_changes_of_an_entry_can_be_read)
{
	struct seen seen = { 0 };
	GError *err = NULL;

	fixture_works(journal_changes(db, 18, see_change, &seen, &err), err);
	ck_assert_int_eq(seen.altered, 1);
	ck_assert_int_eq(seen.removed, 1);
	ck_assert_int_eq(seen.added, 0);
	fixture_works(journal_changes(db, 16, see_change, &seen, &err), err);
	ck_assert_int_eq(seen.added, 26);
	fixture_fails(journal_changes(db, 99, see_change, &seen, &err), err, ERR_NOT_FOUND, "no entry 99");
}
END_TEST

/* The same by a stack of whole states: what undo and redo should do, told in the plainest way. */
struct model {
	GPtrArray *done, *undone;	/* dumps: before each standing command; after each undone one */
};

static void
random_command(GRand *rand)
{
	struct outing o;
	int n = g_rand_int_range(rand, 1, 40);
	GError *err = NULL;
	struct entry_head head = fixture_head("random");

	fixture_record(RECORD_OUTING, n, &o);
	o.trip = NONE;
	o.hours = g_rand_int_range(rand, 0, 100000);
	fixture_begin(db);
	if (g_rand_boolean(rand) || n < 5 || !row_drop(db, RECORD_OUTING, o.id, NULL))
		fixture_works(row_put(db, RECORD_OUTING, &o, &err), err);
	fixture_works(db_commit(db, &head, NULL, &err), err);
	record_clear(RECORD_OUTING, &o);
}

static void
step_model(struct model *m, GRand *rand)
{
	g_autofree char *before = fixture_dump(db), *after = NULL;
	int what = g_rand_int_range(rand, 0, 5);
	gboolean ok = TRUE;

	if (what < 2) {
		random_command(rand);
		after = fixture_dump(db);
		if (!strcmp(before, after))
			return;
		g_ptr_array_add(m->done, g_steal_pointer(&before));
		g_ptr_array_set_size(m->undone, 0);
		return;
	}
	ok = what < 4 ? journal_undo(db, &nobody, NULL, NULL) : journal_redo(db, &nobody, NULL, NULL);
	ck_assert_int_eq(ok, (what < 4 ? m->done : m->undone)->len > 0);
	if (!ok)
		return;
	after = fixture_dump(db);
	if (what < 4) {
		ck_assert_str_eq(after, m->done->pdata[m->done->len - 1]);
		g_ptr_array_set_size(m->done, (int)m->done->len - 1);
		g_ptr_array_add(m->undone, g_steal_pointer(&before));
	} else {
		ck_assert_str_eq(after, m->undone->pdata[m->undone->len - 1]);
		g_ptr_array_set_size(m->undone, (int)m->undone->len - 1);
		g_ptr_array_add(m->done, g_steal_pointer(&before));
	}
}

START_TEST(commands_undo_and_redo_in_any_order_agree_with_a_stack_of_states)
{
	GRand *rand = g_rand_new_with_seed((guint32)_i + 1);
	struct model m = { g_ptr_array_new_with_free_func(g_free), g_ptr_array_new_with_free_func(g_free) };
	GError *err = NULL;

	/* From a state with nothing to undo but what the model saw. */
	db_close(db);
	db = db_create(fixture_path("fresh.db"), &err);
	fixture_works(db != NULL, err);
	ck_assert_int_eq(sqlite3_exec(db->conn, "PRAGMA synchronous = OFF", NULL, NULL, NULL), SQLITE_OK);
	for (int r = RECORD_BOAT; r <= RECORD_METER; r++) {
		g_ptr_array_add(m.done, fixture_dump(db));
		fixture_put(db, (enum record)r, 1, 2);
	}
	for (int i = 0; i < 60 && m.done->len > 2; i++)
		step_model(&m, rand);
	g_ptr_array_free(m.done, TRUE);
	g_ptr_array_free(m.undone, TRUE);
	g_rand_free(rand);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("store/journal");
	TCase *tc = tcase_create("undo and history");
	SRunner *sr = srunner_create(s);
	int failed;

	tcase_set_timeout(tc, 60);
	tcase_add_checked_fixture(tc, setup, teardown);
	tcase_add_loop_test(tc, undo_goes_back_to_the_beginning_and_redo_returns, 0, 2);
	tcase_add_test(tc, a_new_command_after_an_undo_ends_what_can_be_redone);
	tcase_add_test(tc, the_journal_says_what_took_back_what);
	tcase_add_test(tc, own_words_can_be_given_to_an_undo);
	tcase_add_loop_test(tc, an_undo_that_does_not_fit_changes_nothing, 0, G_N_ELEMENTS(spoilt));
	tcase_add_test(tc, a_changeset_reaches_no_table_but_those_of_records);
	tcase_add_test(tc, the_changes_of_an_entry_can_be_read);
	tcase_add_loop_test(tc, commands_undo_and_redo_in_any_order_agree_with_a_stack_of_states, 0, 8);
	suite_add_tcase(s, tc);
	srunner_run_all(sr, CK_NORMAL);
	failed = srunner_ntests_failed(sr);
	srunner_free(sr);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
