/* The yard sheet on the screen: written, read as a dry run, taken, taken back. */
#include "form_keys.h"

#include "logbook/finding.h"
#include "logbook/yard.h"

static char *
in_folder(const char *name)
{
	return g_build_filename(folder, name, NULL);
}

static guint
n_of(enum record r)
{
	g_autoptr(GArray) all = book_records(app->book, r, app->boat.id, NULL);

	return all->len;
}

/* A finding and four tasks, one of them the owner's, by the form. */
static void
write_sheet(void)
{
	g_autofree char *csv = in_folder("sheet.csv");

	key('9');
	key('a');
	fill("on", "drive/transom/gimbal-bearing");
	fill("words", "rough, growls in turns");
	fill("level", "h");
	fill("date", "2026-11-10");
	record();
	key('y');
	ck_shows("No sheet was handed to a yard");
	key('a');
	fill("what", "bellows-ujoint.renew gimbal-bearing.grease, steering.cable-grease");
	fill("mine", "cover.inspect");
	fill("for", "b");
	fill("csv", csv);
	ck_will("3 lines for the yard, 1 line for the owner.");
	record();
	ck_assert(!in_form());
	ck_shows("4 lines written to ");
}

/* The file as the yard gave it back: an answer a line, NULL for none, each with its costs and the meter. */
static void
write_answers(const char *const *result)
{
	g_autoptr(GArray) sheets = book_yard_sheets(app->book, app->boat.id, NULL);
	const struct yard_sheet *sheet = (const void *)sheets->data;
	g_autoptr(GArray) lines = book_yard_lines(app->book, sheet->id, NULL);
	g_autoptr(GString) text = g_string_new("line_no;id;yard_result;yard_cost;yard_date;yard_initials;yard_meter\n");
	g_autofree char *file = in_folder("filled.csv");

	for (guint i = 0; i < lines->len; i++) {
		const struct yard_shown *s = &((const struct yard_shown *)(const void *)lines->data)[i];
		g_autofree char *id = book_key_text(s->line.id);

		if (result[i])
			g_string_append_printf(text, "%d;%s;\"%s\";12,50 EUR;2026-11-20;JW;\n", (int)s->line.no, id, result[i]);
		else
			g_string_append_printf(text, "%d;%s;;;;;\n", (int)s->line.no, id);
	}
	ck_assert(g_file_set_contents(file, text->str, -1, NULL));
}

static const char *const answers[] = { "done; fresh grease all round", "not done, no parts", "splendid", NULL };

static void
read_answers(void)
{
	g_autofree char *file = in_folder("filled.csv");

	key('i');
	fill("file", file);
	ck_will("Nothing is recorded yet");
	record();
}

static void
see_dry_run(void)
{
	write_sheet();
	write_answers(answers);
	read_answers();
}

START_TEST(a_sheet_is_written_and_its_lines_stand_with_whose_they_are)
{
	g_autofree char *csv = in_folder("sheet.csv");

	write_sheet();
	ck_assert(g_file_test(csv, G_FILE_TEST_EXISTS));
	ck_shows("> 25 Nov 2026  4 lines, 0 answered, 1 the owner's");
	key(K_ENTER);
	ck_shows("THE YARD DOES");
	ck_shows("THE OWNER DOES");
	ck_shows("No answer was read yet.");
	key('y');
	key('u');
	ck_shows("taken back: yard sheet of 4 lines");
	ck_shows("No sheet was handed to a yard");
	key('y');
	ck_hides("No sheet was handed to a yard");
}
END_TEST

START_TEST(a_file_that_is_there_or_a_name_that_is_none_is_said_at_its_field)
{
	g_autofree char *there = in_folder("there.csv");

	ck_assert(g_file_set_contents(there, "x", 1, NULL));
	key('y');
	key('a');
	fill("csv", there);
	ck_shows("that is there already");
	fill("csv", "");
	ck_shows("wanted: the name of a file");
	fill("what", "no.such");
	key(K_ENTER);
	ck_shows("no task and no open finding is called");
	fill("what", "cover.inspect");
	fill("mine", "no.such");
	key(K_ENTER);
	ck_assert_str_eq(form_field(app_data(app), "what")->wrong ? "wrong" : "right", "right");
	ck_assert_ptr_nonnull(form_field(app_data(app), "mine")->wrong);
	fill("mine", "cover.inspect");
	key(K_ENTER);
	ck_shows("nothing of that kind is wanted");
	ck_assert_uint_eq(n_of(RECORD_SHEET), 0);
}
END_TEST

START_TEST(a_dry_run_comes_first_with_every_line_and_keeps_nothing)
{
	guint services, skips;

	write_sheet();
	services = n_of(RECORD_SERVICE);
	skips = n_of(RECORD_SKIP);
	write_answers(answers);
	read_answers();
	ck_assert(!in_form());
	ck_shows("A dry run, nothing is kept yet: t takes 2 lines, 12.50 EUR. filled.csv");
	ck_shows("REFUSED: 1");
	ck_shows("\"splendid\" is not known");
	ck_shows("WILL BE TAKEN: 2");
	ck_shows("WITHOUT AN ANSWER: 1");
	ck_assert_uint_eq(n_of(RECORD_SERVICE), services);
	key(K_DOWN);
	key(K_ENTER);
	ck_shows("What would be taken of this line");
	key(K_ESC);
	key(K_ESC);
	ck_shows("0 answered");
	ck_assert_uint_eq(n_of(RECORD_SERVICE), services);
	ck_assert_uint_eq(n_of(RECORD_SKIP), skips);
}
END_TEST

START_TEST(t_takes_it_u_takes_it_back_and_reading_again_changes_nothing)
{
	guint services;

	see_dry_run();
	services = n_of(RECORD_SERVICE);
	key('t');
	ck_shows("2 lines taken; u takes them back; what was refused is not in the log");
	ck_shows("4 lines, 2 answered");
	ck_assert_uint_eq(n_of(RECORD_SERVICE), services + 1);
	read_answers();
	ck_shows("READ BEFORE, AND AS IT WAS: 2");
	ck_shows("there is nothing to take");
	key('t');
	ck_shows("there is nothing to take");
	ck_assert_uint_eq(n_of(RECORD_SERVICE), services + 1);
	key(K_ESC);
	key('u');
	ck_shows("taken back: yard sheet filled.csv read: 2 lines taken");
	ck_shows("4 lines, 0 answered");
	ck_assert_uint_eq(n_of(RECORD_SERVICE), services);
}
END_TEST

START_TEST(what_changed_after_the_page_is_shown_again_before_it_is_taken)
{
	static const char *const others[] = { "worn; no grease came", NULL, NULL, NULL };
	guint services, findings;

	see_dry_run();
	services = n_of(RECORD_SERVICE);
	findings = n_of(RECORD_FINDING);
	write_answers(others);
	key('t');
	ck_shows("the file or the logbook is another by now");
	ck_shows("t takes 1 line");
	ck_assert_uint_eq(n_of(RECORD_SERVICE), services);
	key('t');
	ck_shows("1 line taken");
	ck_assert_uint_eq(n_of(RECORD_SERVICE), services + 1);
	ck_assert_uint_eq(n_of(RECORD_FINDING), findings + 1);
}
END_TEST

START_TEST(what_can_not_be_read_is_said_and_the_form_stays)
{
	g_autofree char *file = in_folder("filled.csv");

	key('y');
	key('i');
	record();
	ck_shows("which file did the yard fill in?");
	ck_assert(g_file_set_contents(file, "id,line_no\nx,1\n", -1, NULL));
	fill("file", file);
	record();
	ck_assert(in_form());
	ck_shows("the column \"yard_result\" is missing");
	key(K_ESC);
	ck_shows("No sheet was handed to a yard");
}
END_TEST

static void
see_list(void)
{
	see_dry_run();
	key('t');
	key(K_CTRL('l'));
}

static void
see_sheet(void)
{
	see_list();
	key(K_ENTER);
}

static void
see_form(void)
{
	key('y');
	key('a');
	type("cover.inspect bellows-ujoint.renew");	/* what is wanted by itself grows with the catalogue */
}

static void
see_read_form(void)
{
	key('y');
	key('i');
	fill("date", "20 nov");
}

static const struct { const char *name; void (*go)(void); } screens[] = {
	{ "yard", see_list },		    { "yard-sheet", see_sheet }, { "yard-read", see_dry_run }, { "form-yard", see_form },
	{ "form-yard-read", see_read_form },
};

START_TEST(the_screens_are_as_they_were)
{
	screens[_i].go();
	for (int k = 0; k < GOLDENS; k++)
		same_screen(screens[_i].name, &goldens[k]);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("The yard sheet on the screen");
	TCase *tc = tcase_create("yard");

	tcase_add_checked_fixture(tc, demo_begin, app_end);
	tcase_set_timeout(tc, 120);
	tcase_add_test(tc, a_sheet_is_written_and_its_lines_stand_with_whose_they_are);
	tcase_add_test(tc, a_file_that_is_there_or_a_name_that_is_none_is_said_at_its_field);
	tcase_add_test(tc, a_dry_run_comes_first_with_every_line_and_keeps_nothing);
	tcase_add_test(tc, t_takes_it_u_takes_it_back_and_reading_again_changes_nothing);
	tcase_add_test(tc, what_changed_after_the_page_is_shown_again_before_it_is_taken);
	tcase_add_test(tc, what_can_not_be_read_is_said_and_the_form_stays);
	tcase_add_loop_test(tc, the_screens_are_as_they_were, 0, G_N_ELEMENTS(screens));
	suite_add_tcase(s, tc);
	return run_suite(s);
}
