#include "logbook/waiver.h"

#include "base/err.h"
#include "open.h"

static void
open_two_tasks(void)
{
	open_plain("Tern");
	import_text(RECORD_FITTING, "path,title\nhull,Hull\nengine,Engine\n");
	import_text(RECORD_TASK, "name,fitting,title,verb,place,mechanism,consequence,rule\n"
				 "hull.look,hull,Look,inspect,anywhere,none,sinks,inspection\n"
				 "engine.clean,engine,Clean,change,anywhere,none,costs,done\n");
	import_text(RECORD_FINDING, "date,words,level,mended\n2026-11-01,crack in the hull,hold,\n2026-11-02,scratch,mend,\n"
				    "2026-11-03,hole,hold,2026-11-04\n");
	import_text(RECORD_HAPPENING, "date,kind,closed\n2026-11-05,line,\n2026-11-06,grounding,2026-11-07\n");
}

/* Waive what the words mean until a day; the error's code, 0 when it was taken. */
static int
waive(const char *words, const char *reason, const char *name, gint64 until)
{
	struct waiver w;
	GError *err = NULL;
	int code;

	record_init(RECORD_WAIVER, &w);
	w.boat = boat.id;
	w.reason = g_strdup(reason);
	w.who = g_strdup(name);
	w.until = until;
	if (book_waiver_thing(book, boat.id, words, &w, &err))
		book_waive(book, &w, &err);
	code = err ? err->code + 1 : 0;
	g_clear_error(&err);
	record_clear(RECORD_WAIVER, &w);
	return code;
}

static guint
holding(gint64 day)
{
	g_autoptr(GArray) all = book_waivers_on(book, boat.id, day, NULL);

	ck_assert_ptr_nonnull(all);
	return all->len;
}

/* The key, as letters, of the k-th record of a kind. */
static char *
key_of(enum record r, guint k)
{
	g_autoptr(GArray) all = book_records(book, r, boat.id, NULL);
	const char *base = all->data;

	ck_assert_uint_lt(k, all->len);
	return book_key_text(*(const gint64 *)(const void *)(base + k * record_type(r)->size));
}

START_TEST(it_wants_a_reason_a_name_and_a_last_day_that_makes_sense)
{
	open_two_tasks();
	ck_assert_int_eq(waive("hull.look", NULL, "Ann", who.today), ERR_INPUT + 1);
	ck_assert_int_eq(waive("hull.look", " \t", "Ann", who.today), ERR_INPUT + 1);
	ck_assert_int_eq(waive("hull.look", "soon", "  ", who.today), ERR_INPUT + 1);
	ck_assert_int_eq(waive("hull.look", "soon", "Ann", NONE), ERR_INPUT + 1);
	ck_assert_int_eq(waive("hull.look", "soon", "Ann", who.today - 1), ERR_INPUT + 1);
	ck_assert_int_eq(waive("hull.look", "soon", "Ann", who.today + 367), ERR_INPUT + 1);
	ck_assert_uint_eq(holding(who.today), 0);
	ck_assert_int_eq(waive("hull.look", "soon", "Ann", who.today), 0);
	ck_assert_int_eq(waive("hull.look", "soon", "Ann", who.today + 366), 0);
}
END_TEST

START_TEST(only_what_can_hold_is_let_pass)
{
	g_autofree char *holds = NULL, *mend = NULL, *mended = NULL, *open = NULL, *closed = NULL, *other = NULL;
	struct task t;

	open_two_tasks();
	holds = key_of(RECORD_FINDING, 0);
	mend = key_of(RECORD_FINDING, 1);
	mended = key_of(RECORD_FINDING, 2);
	open = key_of(RECORD_HAPPENING, 0);
	closed = key_of(RECORD_HAPPENING, 1);
	other = key_of(RECORD_FITTING, 0);
	ck_assert_int_eq(waive("engine.clean", "soon", NULL, who.today), ERR_INPUT + 1);
	ck_assert_int_eq(waive(mend, "soon", NULL, who.today), ERR_INPUT + 1);
	ck_assert_int_eq(waive(mended, "soon", NULL, who.today), ERR_INPUT + 1);
	ck_assert_int_eq(waive(closed, "soon", NULL, who.today), ERR_INPUT + 1);
	ck_assert_int_eq(waive(other, "soon", NULL, who.today), ERR_NOT_FOUND + 1);
	ck_assert_int_eq(waive("rudder", "soon", NULL, who.today), ERR_NOT_FOUND + 1);
	ck_assert_int_eq(waive("hull.look", "soon", NULL, who.today), 0);
	ck_assert_int_eq(waive(holds, "soon", NULL, who.today), 0);
	ck_assert_int_eq(waive(open, "soon", NULL, who.today), 0);
	ck_assert_uint_eq(holding(who.today), 3);
	ck_assert(book_find_task(book, boat.id, "hull.look", &t, NULL));
	ck_assert(book_retire_task(book, &t, TRUE, NULL));
	record_clear(RECORD_TASK, &t);
	ck_assert_int_eq(waive("hull.look", "soon", NULL, who.today), ERR_INPUT + 1);
}
END_TEST

START_TEST(it_holds_from_its_first_day_to_its_last)
{
	open_two_tasks();
	ck_assert_int_eq(waive("hull.look", "soon", NULL, who.today + 10), 0);
	ck_assert_uint_eq(holding(who.today - 1), 0);
	ck_assert_uint_eq(holding(who.today), 1);
	ck_assert_uint_eq(holding(who.today + 10), 1);
	ck_assert_uint_eq(holding(who.today + 11), 0);
}
END_TEST

START_TEST(a_second_one_for_the_same_ends_the_first)
{
	g_autoptr(GArray) all = NULL;

	open_two_tasks();
	ck_assert_int_eq(waive("hull.look", "soon", NULL, who.today + 100), 0);
	ck_assert_int_eq(waive("hull.look", "sooner", NULL, who.today + 10), 0);
	ck_assert_uint_eq(holding(who.today), 1);
	ck_assert_uint_eq(holding(who.today + 50), 0);
	all = book_records(book, RECORD_WAIVER, boat.id, NULL);
	ck_assert_uint_eq(all->len, 2);
}
END_TEST

START_TEST(it_is_taken_back_by_its_key_or_by_what_it_lets_pass)
{
	g_autofree char *finding = NULL, *waiver = NULL;
	g_autoptr(GError) err = NULL;

	open_two_tasks();
	finding = key_of(RECORD_FINDING, 0);
	ck_assert(!book_take_back(book, boat.id, "hull.look", &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_NOT_FOUND));
	ck_assert_int_eq(waive("hull.look", "soon", NULL, who.today + 10), 0);
	ck_assert_int_eq(waive(finding, "soon", NULL, who.today + 10), 0);
	ck_assert(book_take_back(book, boat.id, "hull.look", NULL));
	ck_assert_uint_eq(holding(who.today), 1);
	ck_assert(!book_take_back(book, boat.id, "hull.look", NULL));
	ck_assert(book_take_back(book, boat.id, finding, NULL));
	ck_assert_uint_eq(holding(who.today), 0);
	ck_assert_int_eq(waive("hull.look", "again", NULL, who.today + 10), 0);
	waiver = key_of(RECORD_WAIVER, 2);
	ck_assert(book_take_back(book, boat.id, waiver, NULL));
	ck_assert_uint_eq(holding(who.today), 0);
}
END_TEST

/* Rows that an import must refuse: one of three references, in order, and said by somebody. */
static const struct { enum record what; const char *text; } bad_rows[] = {
	{ RECORD_WAIVER, "task,date,until,who,reason\n,2026-11-20,2026-12-01,Ann,soon\n" },
	{ RECORD_WAIVER, "task,date,until,who,reason\nhull.look,2026-11-20,2026-11-19,Ann,soon\n" },
	{ RECORD_WAIVER, "task,date,until,who,reason\nhull.look,2026-11-20,2028-11-19,Ann,soon\n" },
	{ RECORD_WAIVER, "task,date,until,who,reason\nhull.look,2026-11-20,2026-12-01,\" \",soon\n" },
	{ RECORD_WAIVER, "task,date,until,who,reason\nhull.look,2026-11-20,2026-12-01,Ann,\" \"\n" },
	{ RECORD_WAIVER, "task,date,until,who,reason\nhull.look,2026-11-26,2026-12-01,Ann,soon\n" },
	{ RECORD_WAIVER, "task,date,until,who,reason,ended\nhull.look,2026-11-20,2026-12-01,Ann,soon,2026-11-19\n" },
	{ RECORD_SKIP, "task,date,reason\nhull.look,2026-11-26,no time\n" },
	{ RECORD_SKIP, "task,date,reason\nhull.look,2026-11-20,\"  \"\n" },
	{ RECORD_HEEDED, "date,work,cautions,who\n2026-11-26,lay-up,alone,Ann\n" },
	{ RECORD_HEEDED, "date,work,cautions,who\n2026-11-20,lay-up,\" \",Ann\n" },
	{ RECORD_HEEDED, "date,work,cautions,who\n2026-11-20,lay-up,alone,\" \"\n" },
};

START_TEST(rows_that_are_not_whole_are_refused)
{
	g_autofree char *file = NULL;
	struct import_form form = { .what = bad_rows[_i].what, .decimal_comma = -1 };
	struct import_said said = { 0 };
	g_autoptr(GArray) all = NULL;

	open_two_tasks();
	file = g_build_filename(folder, "in.csv", NULL);
	form.path = file;
	form.boat = boat.name;
	ck_assert(g_file_set_contents(file, bad_rows[_i].text, -1, NULL));
	ck_assert(!book_import(book, &form, &said, NULL));
	ck_assert_int_eq(said.n_errors, 1);
	import_said_clear(&said);
	g_remove(file);
	all = book_records(book, bad_rows[_i].what, boat.id, NULL);
	ck_assert_uint_eq(all->len, 0);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("logbook/waiver");
	TCase *cases = tcase_create("waiver");

	tcase_add_checked_fixture(cases, setup, teardown);
	tcase_add_test(cases, it_wants_a_reason_a_name_and_a_last_day_that_makes_sense);
	tcase_add_test(cases, only_what_can_hold_is_let_pass);
	tcase_add_test(cases, it_holds_from_its_first_day_to_its_last);
	tcase_add_test(cases, a_second_one_for_the_same_ends_the_first);
	tcase_add_test(cases, it_is_taken_back_by_its_key_or_by_what_it_lets_pass);
	tcase_add_loop_test(cases, rows_that_are_not_whole_are_refused, 0, G_N_ELEMENTS(bad_rows));
	suite_add_tcase(suite, cases);
	return run_suite(suite);
}
