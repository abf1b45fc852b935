/* long: the way there and back is one story, told on the same small boat. */
#include "yard_open.h"

#include "base/err.h"
#include "logbook/yard_answer.h"

START_TEST(what_holds_comes_first_and_one_opening_stays_together)
{
	open_tern();
	g_autofree char *text = write_sheet(NULL, FALSE);

	ck_assert_int_lt(line_of("hull.plug").no, line_of("engine.clean").no);
	ck_assert_int_lt(line_of("crack").no, line_of("engine.clean").no);
	ck_assert_int_eq(ABS(line_of("belt.renew").no - line_of("belt.look").no) <= 2, 1);
	ck_assert_int_lt(line_of("belt.renew").no, line_of("engine.clean").no);
	ck_assert_ptr_nonnull(strstr(text, "Tern"));
	ck_assert_uint_eq(n_of(RECORD_SHEET), 1);
	ck_assert_uint_eq(n_of(RECORD_SHEETLINE), 6);
}
END_TEST

START_TEST(the_owners_lines_come_last_and_only_when_wanted)
{
	char name[] = "hull.plug", *mine[] = { name, NULL };

	open_tern();
	g_autofree char *yards = write_sheet(mine, FALSE);
	ck_assert_uint_eq(n_of(RECORD_SHEETLINE), 5);
	g_autofree char *both = write_sheet(mine, TRUE);

	ck_assert_uint_eq(n_of(RECORD_SHEETLINE), 11);
	ck_assert_int_eq(line_of("hull.plug").no, 6);
	ck_assert_int_eq(line_of("hull.plug").whose, LINE_OWNER);
	ck_assert_ptr_null(strstr(yards, "Renew the plug"));
	ck_assert_ptr_nonnull(strstr(both, ",owner,"));
}
END_TEST

START_TEST(an_answer_becomes_a_service_and_is_claimed_unless_something_was_seen)
{
	open_tern();
	g_autofree G_GNUC_UNUSED char *text = write_sheet(NULL, FALSE);
	const struct service *s;
	GArray *all;

	begin_file();
	fill("hull.plug", "replaced; new washer", "12.50 EUR");
	fill("engine.clean", "Done", "7");
	fill("belt.look", "worn", "");
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE }), 0);
	counts(3, 0, 0);
	all = book_records(book, RECORD_SERVICE, boat.id, NULL);
	s = (const void *)all->data;
	ck_assert_uint_eq(all->len, 3);
	for (guint i = 0; i < all->len; i++) {
		const char *task = book_name_of(book, RECORD_TASK, s[i].task);

		ck_assert_int_eq(s[i].outcome, !strcmp(task, "hull.plug") ? OUTCOME_RENEWED
					       : !strcmp(task, "belt.look") ? OUTCOME_BAD : OUTCOME_CLAIMED);
		ck_assert_int_eq(s[i].cost, !strcmp(task, "hull.plug") ? 1250 : !strcmp(task, "belt.look") ? NONE : 700);
		ck_assert_str_eq(s[i].who, "JW");
		ck_assert_int_eq(s[i].date, day_from_ymd(2026, 11, 20));
	}
	g_array_unref(all);
	end();
}
END_TEST

START_TEST(a_second_reading_changes_nothing_and_another_answer_is_a_conflict)
{
	g_autofree G_GNUC_UNUSED char *first = NULL;

	open_tern();
	g_autofree G_GNUC_UNUSED char *text = write_sheet(NULL, FALSE);

	begin_file();
	fill("engine.clean", "\"done, all of it\"", "\"12,50\"");
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE }), 0);
	counts(1, 0, 0);
	end();
	begin_file();
	fill("engine.clean", "\"done, all of it\"", "12.5");
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE }), 0);
	counts(0, 1, 0);
	end();
	begin_file();
	fill("engine.clean", "\"done, all of it\"", "13");
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE }), 0);
	counts(0, 0, 1);
	ck_assert_ptr_nonnull(strstr(((struct yard_took *)(void *)said.lines->data)->words, "filled.csv:2: line"));
	ck_assert_uint_eq(n_of(RECORD_SERVICE), 1);
	end();
}
END_TEST

START_TEST(what_holds_is_mended_only_by_what_was_seen)
{
	g_autoptr(GArray) open = NULL;

	open_tern();
	g_autofree G_GNUC_UNUSED char *text = write_sheet(NULL, FALSE);

	begin_file();
	fill("crack", "done", "");
	fill("belt squeals", "done", "40");
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE }), 0);
	counts(2, 0, 0);
	open = book_findings(book, boat.id, FALSE, NULL);
	ck_assert_uint_eq(open->len, 1);
	ck_assert_str_eq(((struct finding *)(void *)open->data)->words, "crack");
	ck_assert_ptr_nonnull(strstr(((struct finding *)(void *)open->data)->remark, "done"));
	end();
}
END_TEST

START_TEST(what_was_not_done_stays_due_with_the_reason)
{
	g_autoptr(GArray) skips = NULL;

	open_tern();
	g_autofree G_GNUC_UNUSED char *text = write_sheet(NULL, FALSE);

	begin_file();
	fill("engine.clean", "not done: no parts", "");
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE }), 0);
	skips = book_records(book, RECORD_SKIP, boat.id, NULL);
	ck_assert_uint_eq(skips->len, 1);
	ck_assert_ptr_nonnull(strstr(((struct skip *)(void *)skips->data)->reason, "no parts"));
	ck_assert_uint_eq(n_of(RECORD_SERVICE), 0);
	end();
}
END_TEST

START_TEST(one_line_can_be_two_tasks_and_mend_a_finding)
{
	static char *also[] = { NULL, NULL };
	g_autoptr(GArray) services = NULL;
	g_autofree char *map = NULL;

	open_tern();
	g_autofree G_GNUC_UNUSED char *text = write_sheet(NULL, FALSE);

	map = g_strdup_printf("%d=belt.renew", (int)line_of("belt squeals").no);
	also[0] = map;
	begin_file();
	fill("belt squeals", "replaced; runs quiet", "40.10 EUR");
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE, .also = also }), 0);
	services = book_records(book, RECORD_SERVICE, boat.id, NULL);
	ck_assert_uint_eq(services->len, 1);
	ck_assert_int_eq(((struct service *)(void *)services->data)->cost, 4010);
	/* Of a line that is not answered it would be passed over in silence. */
	end();
	begin_file();
	fill("engine.clean", "done", "");
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE, .also = also }), ERR_NOT_FOUND + 1);
	ck_assert_uint_eq(n_of(RECORD_SERVICE), 1);
	end();
}
END_TEST

START_TEST(a_design_that_went_in_is_kept)
{
	static char *variant[] = { NULL, NULL };
	struct fitting f;
	g_autofree char *map = NULL, *wrong = NULL;

	open_tern();
	g_autofree G_GNUC_UNUSED char *text = write_sheet(NULL, FALSE);

	wrong = g_strdup_printf("%d=golden", (int)line_of("engine.clean").no);
	map = g_strdup_printf("%d=sealed", (int)line_of("engine.clean").no);
	begin_file();
	fill("engine.clean", "done; clean", "");
	variant[0] = wrong;
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE, .variant = variant }), 0);
	counts(0, 0, 1);
	variant[0] = map;
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE, .variant = variant }), 0);
	counts(1, 0, 0);
	ck_assert(book_find_fitting(book, boat.id, "engine", &f, NULL));
	ck_assert_str_eq(f.variant, "sealed");
	record_clear(RECORD_FITTING, &f);
	end();
}
END_TEST

/* The finding that an answer opened; its texts are the caller's. */
static struct finding
found_bad(const char *words)
{
	g_autoptr(GArray) open = book_findings(book, boat.id, FALSE, NULL);
	struct finding none;

	record_init(RECORD_FINDING, &none);
	for (guint i = 0; i < open->len; i++) {
		struct finding *f = &((struct finding *)(void *)open->data)[i];

		if (!strcmp(f->words, words)) {
			struct finding found = *f;

			record_init(RECORD_FINDING, f);
			return found;
		}
	}
	ck_abort_msg("no finding \"%s\"", words);
	return none;
}

START_TEST(what_is_bad_is_found_on_its_fitting_at_its_task_of_the_level_proposed)
{
	struct finding f;
	g_autoptr(GArray) services = NULL;
	guint before;

	open_tern();
	g_autofree G_GNUC_UNUSED char *text = write_sheet(NULL, FALSE);

	before = n_of(RECORD_FINDING);
	begin_file();
	fill("belt.look", "worn; cracked across", "");
	for (int i = 0; i < 2; i++)
		ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE }), 0);
	counts(0, 1, 0);
	ck_assert_uint_eq(n_of(RECORD_FINDING), before + 1);
	f = found_bad("cracked across");
	ck_assert_str_eq(book_name_of(book, RECORD_TASK, f.task), "belt.look");
	ck_assert_str_eq(book_name_of(book, RECORD_FITTING, f.fitting), "engine/belt");
	ck_assert_int_eq(f.date, day_from_ymd(2026, 11, 20));
	ck_assert_int_eq(f.level, f.proposed);
	ck_assert_int_eq(f.mended, NONE);
	ck_assert_ptr_nonnull(strstr(f.remark, "yard sheet of "));
	services = book_records(book, RECORD_SERVICE, boat.id, NULL);
	ck_assert_uint_eq(services->len, 1);
	ck_assert_int_eq(((const struct service *)(const void *)services->data)->date, f.date);
	record_clear(RECORD_FINDING, &f);
	end();
}
END_TEST

START_TEST(a_sheet_shows_each_line_with_its_answer_and_what_became_of_it)
{
	g_autoptr(GArray) sheets = NULL, shown = NULL;
	const struct yard_sheet *sheet;

	open_tern();
	g_autofree G_GNUC_UNUSED char *text = write_sheet(NULL, FALSE);

	begin_file();
	fill("hull.plug", "replaced; new washer", "12.50 EUR");
	fill("engine.clean", "not done: no parts", "");
	fill("belt squeals", "done", "40 EUR");
	fill("belt.look", "worn; cracked", "");
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE }), 0);
	sheets = book_yard_sheets(book, boat.id, NULL);
	ck_assert_uint_eq(sheets->len, 1);
	sheet = (const void *)sheets->data;
	ck_assert_int_eq(sheet->lines, 6);
	ck_assert_int_eq(sheet->answered, 4);
	shown = book_yard_lines(book, sheet->id, NULL);
	ck_assert_uint_eq(shown->len, 6);
	for (guint i = 0; i < shown->len; i++) {
		const struct yard_shown *s = &((const struct yard_shown *)(const void *)shown->data)[i];

		if (!g_strcmp0(s->name, "hull.plug")) {
			ck_assert_str_eq(s->answer, "replaced; new washer");
			ck_assert_str_eq(s->became, "renewed on 20 Nov 2026 by JW, new washer, 12.50 EUR");
			ck_assert(s->settled);
		} else if (!g_strcmp0(s->name, "engine.clean")) {
			ck_assert_str_eq(s->answer, "not done: no parts");
			ck_assert(!s->settled);
		} else if (!g_strcmp0(s->name, "belt.look")) {
			ck_assert_ptr_nonnull(strstr(s->became, "; found: cracked ("));
			ck_assert(!s->settled);
		} else if (!s->name && !strcmp(s->title, "belt squeals")) {
			ck_assert_str_eq(s->answer, "done; 40.00 EUR");
			ck_assert(s->settled);
		} else {
			ck_assert_ptr_null(s->answer);
			ck_assert_ptr_null(s->became);
		}
	}
	end();
}
END_TEST

START_TEST(what_the_owner_does_stands_on_it_wanted_or_not)
{
	char name[] = "engine.clean", *mine[] = { name, NULL };
	struct yard_form form = { .mine = mine, .for_yard = TRUE, .for_owner = TRUE };
	int n[2], without[2];

	open_tern();
	form.ask = (struct due_ask){ who.today, NONE };
	ck_assert(book_yard_count(book, &boat, &form, n, NULL));
	ck_assert_int_eq(n[LINE_OWNER], 1);
	form.mine = NULL;
	ck_assert(book_yard_count(book, &boat, &form, without, NULL));
	ck_assert_int_eq(without[LINE_OWNER], 0);
	ck_assert_uint_eq(n_of(RECORD_SHEET), 0);
}
END_TEST

START_TEST(what_does_not_match_is_listed_and_the_rest_is_taken)
{
	open_tern();
	g_autofree G_GNUC_UNUSED char *text = write_sheet(NULL, FALSE), *key = NULL, *other = NULL;

	key = book_key_text(line_of("hull.plug").id);
	other = book_key_text(boat.id);
	begin_file();
	g_string_append_printf(file_text, "JW,%s,x,%d,done,,2026-11-20\n", key, (int)line_of("hull.plug").no + 1);
	g_string_append_printf(file_text, "JW,%s,x,1,done,,2026-11-20\n", other);
	g_string_append(file_text, "JW,,x,1,done,,2026-11-20\n,,,,,,\nJW,nonsense,x,1,done,,2026-11-20\n");
	fill("engine.clean", "done", "");
	fill("belt.look", "splendid", "");
	fill("belt.renew", "done", "1\xe2\x82\xac");
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE }), 0);
	counts(1, 0, 6);
	ck_assert_uint_eq(n_of(RECORD_SERVICE), 1);
	end();
}
END_TEST

START_TEST(another_boats_line_is_not_taken)
{
	open_tern();
	g_autofree G_GNUC_UNUSED char *text = write_sheet(NULL, FALSE);

	begin_file();
	fill("engine.clean", "done", "");
	open_plain("Gull");
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE }), 0);
	counts(0, 0, 1);
	end();
}
END_TEST

START_TEST(a_dry_run_says_the_same_and_keeps_nothing)
{
	open_tern();
	g_autofree G_GNUC_UNUSED char *text = write_sheet(NULL, FALSE), *dry = NULL;

	begin_file();
	fill("engine.clean", "done", "3");
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE, .dry_run = TRUE }), 0);
	dry = g_strdup(((struct yard_took *)(void *)said.lines->data)->words);
	ck_assert_uint_eq(n_of(RECORD_SERVICE), 0);
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE }), 0);
	ck_assert_str_eq(((struct yard_took *)(void *)said.lines->data)->words, dry);
	ck_assert_uint_eq(n_of(RECORD_SERVICE), 1);
	end();
}
END_TEST

static const struct {
	const char *text, *seen;
	enum yard_verdict verdict; /* YARD_VERDICTS: it is refused */
} results[] = {
	{ "done", NULL, SAYS_DONE }, { " DONE. ", NULL, SAYS_DONE },
	{ "Carried out: bar by two fingers", "bar by two fingers", SAYS_DONE },
	{ "replaced - all folds sound", "all folds sound", SAYS_RENEWED }, { "new (two clamps)", "two clamps", SAYS_RENEWED },
	{ "new \xe2\x80\x93 two - clamps", "two - clamps", SAYS_RENEWED }, { "done\nfresh grease", "fresh grease", SAYS_DONE },
	{ "not done \xe2\x80\x94 no parts", "no parts", SAYS_NOT_DONE },
	{ "not-done", NULL, SAYS_NOT_DONE }, { "not ok", NULL, SAYS_BAD }, { "ok", NULL, SAYS_GOOD },
	{ "'good", NULL, YARD_VERDICTS }, { "not good", NULL, YARD_VERDICTS }, { "done well", NULL, YARD_VERDICTS },
	{ "", NULL, YARD_VERDICTS }, { "topped_up", NULL, SAYS_TOPPED_UP },
};

START_TEST(a_result_is_one_of_the_words_known_and_what_was_seen)
{
	const char *cell[ANSWER_CELLS] = { results[_i].text, NULL, NULL, "a note" };
	struct yard_answer a;
	GError *err = NULL;
	gboolean ok = yard_answer_read(cell, who.today, &a, &err);

	ck_assert_int_eq(ok, results[_i].verdict != YARD_VERDICTS);
	ck_assert_int_eq(err != NULL, !ok);
	if (ok) {
		ck_assert_int_eq(a.verdict, results[_i].verdict);
		ck_assert_pstr_eq(a.seen, results[_i].seen);
	}
	g_clear_error(&err);
	yard_answer_clear(&a);
}
END_TEST

START_TEST(a_task_or_a_design_said_twice_for_a_line_is_refused_and_the_rest_is_taken)
{
	static const char *const twice[][3] = { { "also", "belt.renew", "belt.renew" },
						{ "also", "engine.clean", NULL },
						{ "variant", "plain", "sealed" } };

	open_tern();
	g_autofree G_GNUC_UNUSED char *text = write_sheet(NULL, FALSE);
	int no = (int)line_of("engine.clean").no;

	for (guint i = 0; i < G_N_ELEMENTS(twice); i++) {
		g_autofree char *first = g_strdup_printf("%d=%s", no, twice[i][1]);
		g_autofree char *second = twice[i][2] ? g_strdup_printf("%d=%s", no, twice[i][2]) : NULL;
		char *given[] = { first, second, NULL };
		gboolean also = !strcmp(twice[i][0], "also");

		begin_file();
		fill("engine.clean", "done; clean", "");
		if (!i)
			fill("hull.plug", "replaced; new washer", "");
		ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE, .also = also ? given : NULL,
								    .variant = also ? NULL : given }), 0);
		counts(!i, 0, 1);
		ck_assert_uint_eq(n_of(RECORD_SERVICE), 1);
		end();
	}
}
END_TEST

START_TEST(a_design_of_what_comes_in_one_only_is_refused)
{
	g_autofree char *map = NULL;
	char *variant[] = { NULL, NULL };

	open_tern();
	g_autofree G_GNUC_UNUSED char *text = write_sheet(NULL, FALSE);

	variant[0] = map = g_strdup_printf("%d=golden", (int)line_of("hull.plug").no);
	begin_file();
	fill("hull.plug", "replaced; new washer", "");
	ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE, .variant = variant }), 0);
	counts(0, 0, 1);
	end();
}
END_TEST

/* What was answered on a task's line of each sheet, the newest first. */
static char *
answers_of(const char *name)
{
	g_autoptr(GArray) all = book_yard_all_lines(book, boat.id, NULL);
	GString *out = g_string_new(NULL);

	for (guint i = all->len; i-- > 0;) {
		const struct yard_shown *s = &((const struct yard_shown *)(const void *)all->data)[i];

		if (!g_strcmp0(s->name, name))
			g_string_append_printf(out, "%s|", s->answer ? s->answer : "");
	}
	return g_string_free(out, FALSE);
}

/* The same line of two sheets of one day, passed over twice. */
static void
pass_over_twice(void)
{
	static const char *const result[] = { "not done: no parts", "not done: no time" };

	open_tern();
	for (int i = 0; i < 2; i++) {
		g_autofree G_GNUC_UNUSED char *text = write_sheet(NULL, FALSE);

		begin_file();
		fill("engine.clean", result[i], "");
		ck_assert_int_eq(read_file((struct yard_read_form){ .date = NONE }), 0);
		counts(1, 0, 0);
		end();
	}
}

START_TEST(two_sheets_of_one_day_keep_their_answers_apart)
{
	pass_over_twice();
	g_autofree char *answers = answers_of("engine.clean");

	ck_assert_ptr_nonnull(strstr(answers, "no parts|"));
	ck_assert_ptr_nonnull(strstr(answers, "no time|"));
}
END_TEST

static const struct {
	const char *cost, *currency;
	gboolean good;
} costs[] = {
	{ "12.50", "usd", TRUE }, { "12.50 USD", "USD", TRUE }, { "12.50", "\xe2\x82\xac", FALSE }, { "12.50", "U$D", FALSE },
	{ "12.50", "US", FALSE }, { "12.50", "12D", FALSE }, { "-12.50", NULL, FALSE }, { "0", NULL, TRUE },
};

START_TEST(a_currency_is_three_letters_and_a_cost_is_not_less_than_nothing)
{
	const char *cell[ANSWER_CELLS] = { [ANSWER_RESULT] = "done", [ANSWER_COST] = costs[_i].cost,
					   [ANSWER_CURRENCY] = costs[_i].currency };
	struct yard_answer a;
	GError *err = NULL;

	ck_assert_int_eq(yard_answer_read(cell, who.today, &a, &err), costs[_i].good);
	ck_assert_int_eq(err != NULL, !costs[_i].good);
	g_clear_error(&err);
	yard_answer_clear(&a);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("The yard sheet");
	TCase *tc = tcase_create("there and back");

	tcase_add_checked_fixture(tc, setup, teardown);
	tcase_add_test(tc, what_holds_comes_first_and_one_opening_stays_together);
	tcase_add_test(tc, the_owners_lines_come_last_and_only_when_wanted);
	tcase_add_test(tc, an_answer_becomes_a_service_and_is_claimed_unless_something_was_seen);
	tcase_add_test(tc, a_second_reading_changes_nothing_and_another_answer_is_a_conflict);
	tcase_add_test(tc, what_holds_is_mended_only_by_what_was_seen);
	tcase_add_test(tc, what_was_not_done_stays_due_with_the_reason);
	tcase_add_test(tc, one_line_can_be_two_tasks_and_mend_a_finding);
	tcase_add_test(tc, a_design_that_went_in_is_kept);
	tcase_add_test(tc, what_is_bad_is_found_on_its_fitting_at_its_task_of_the_level_proposed);
	tcase_add_test(tc, a_sheet_shows_each_line_with_its_answer_and_what_became_of_it);
	tcase_add_test(tc, what_the_owner_does_stands_on_it_wanted_or_not);
	tcase_add_test(tc, what_does_not_match_is_listed_and_the_rest_is_taken);
	tcase_add_test(tc, another_boats_line_is_not_taken);
	tcase_add_test(tc, a_dry_run_says_the_same_and_keeps_nothing);
	tcase_add_loop_test(tc, a_result_is_one_of_the_words_known_and_what_was_seen, 0, G_N_ELEMENTS(results));
	tcase_add_test(tc, a_task_or_a_design_said_twice_for_a_line_is_refused_and_the_rest_is_taken);
	tcase_add_test(tc, a_design_of_what_comes_in_one_only_is_refused);
	tcase_add_test(tc, two_sheets_of_one_day_keep_their_answers_apart);
	tcase_add_loop_test(tc, a_currency_is_three_letters_and_a_cost_is_not_less_than_nothing, 0, G_N_ELEMENTS(costs));
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
