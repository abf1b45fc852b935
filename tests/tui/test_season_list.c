/* The season's lists on the screen: chosen, ticked off, passed over, taken back, and taken up again where they were left. */
#include "form_keys.h"

#include "logbook/season_list.h"

static struct season_work *
work_of(enum season_list list)
{
	struct season_work *w = season_work_new();
	g_autoptr(GError) err = NULL;

	ck_assert_msg(book_season_work(app->book, &app->boat, list, w, &err), "%s", err ? err->message : "?");
	return w;
}

static int
done(void)
{
	struct season_work *w = work_of(LIST_COMMISSIONING);
	int n = w->done;

	season_work_free(w);
	return n;
}

/* On 10 March 2027, five weeks before the launch. */
static void
spring_begin(void)
{
	setup();
	who.today = day_from_ymd(2027, 3, 10);
	open_demo();
	book_close(book);
	book = NULL;
	app_begin();
}

static void
open_commissioning(void)
{
	key('w');
	ck_shows("> Commissioning");
	key(K_ENTER);
	ck_shows("Commissioning: before the work");
	ck_shows("Caution");
	key(K_ENTER);
	ck_shows("on record for today");
	key(K_CTRL('l'));	/* the message goes with the next key */
	ck_shows("Commissioning, launch 15 Apr 2027: ");
}

START_TEST(the_work_is_not_reached_before_its_cautions_were_read)
{
	key('w');
	key(K_ENTER);
	ck_shows("Commissioning: before the work");
	key(K_ESC);
	ck_hides("Commissioning, launch 15 Apr 2027: ");
	key(K_ENTER);
	ck_shows("Commissioning: before the work");
	key(K_ENTER);
	ck_shows("Commissioning, launch 15 Apr 2027: ");
}
END_TEST

static const struct row *
selected(void)
{
	return list_row(app->view[app->depth - 1].kind->list(app_data(app)));
}

START_TEST(the_list_that_comes_next_is_offered_first_and_the_first_open_line_is_selected)
{
	struct season_work *w;

	open_commissioning();
	w = work_of(LIST_COMMISSIONING);
	ck_assert_int_ge(selected()->index, 0);
	for (int i = 0; i < selected()->index; i++)
		ck_assert_int_ne(season_line(w, (guint)i)->state, SEASON_OPEN);
	ck_assert_int_eq(season_line(w, (guint)selected()->index)->state, SEASON_OPEN);
	season_work_free(w);
}
END_TEST

START_TEST(a_tick_goes_on_to_the_next_open_line_and_u_takes_it_back)
{
	gint64 first;
	int before = done();

	open_commissioning();
	first = selected()->key;
	key(' ');
	ck_assert_int_eq(done(), before + 1);
	ck_shows("done; u takes it back");
	ck_assert(selected()->key != first);
	key(K_ENTER);
	ck_assert_int_eq(done(), before + 2);
	key('u');
	key('u');
	ck_assert_int_eq(done(), before);
}
END_TEST

START_TEST(what_is_done_is_not_ticked_twice)
{
	gint64 first;
	int before;

	open_commissioning();
	first = selected()->key;
	key(' ');
	before = done();
	list_select(app->view[app->depth - 1].kind->list(app_data(app)), first);
	key(' ');
	ck_shows("done on 10 Mar 2027");
	key('p');
	ck_shows("that is done");
	ck_assert_int_eq(done(), before);
}
END_TEST

START_TEST(leaving_and_coming_back_goes_on_at_the_first_open_line)
{
	gint64 second;

	open_commissioning();
	key(' ');
	second = selected()->key;
	key('q');
	key('q');
	key('w');
	key(K_ENTER);
	ck_hides("before the work");	/* its cautions were read today */
	ck_assert(selected()->key == second);
}
END_TEST

START_TEST(passing_over_asks_why_and_the_line_stays_due)
{
	struct season_work *w;
	gint64 task;
	int before = done();

	open_commissioning();
	task = selected()->key;
	key('p');
	ck_shows("Passed over");
	record();
	ck_shows("a reason is wanted");
	fill("reason", "waits for the yard");
	ck_will("It stays due.");
	record();
	ck_assert(!in_form());
	ck_shows("passed over, and still due; u takes it back");
	ck_shows("1 passed over");
	ck_shows("[-] ");
	ck_assert_int_eq(done(), before);
	w = work_of(LIST_COMMISSIONING);
	for (guint i = 0; i < season_lines(w); i++)
		if (season_line(w, i)->due->id == task)
			ck_assert_str_eq(season_line(w, i)->words, "waits for the yard");
	season_work_free(w);
	list_select(app->view[app->depth - 1].kind->list(app_data(app)), task);
	key(' ');
	ck_assert_int_eq(done(), before + 1);
	ck_hides("passed over,");
}
END_TEST

START_TEST(d_opens_the_whole_form_and_the_list_has_what_it_says)
{
	int before = done();

	open_commissioning();
	key('d');
	ck_assert(in_form());
	fill("seen", "all sound");
	record();
	ck_assert_int_eq(done(), before + 1);
	ck_shows("Commissioning, launch");
}
END_TEST

START_TEST(right_shows_all_that_is_known_of_the_line)
{
	open_commissioning();
	key(K_RIGHT);
	ck_shows("A failure ");
	key(K_ESC);
	ck_shows("Commissioning, launch");
}
END_TEST

START_TEST(every_list_opens_and_w_leads_back_to_the_choice)
{
	key('4');
	key('w');
	for (int i = 0; i < SEASON_LISTS; i++) {
		key(K_HOME);
		for (int k = 0; k < i; k++)
			key(K_DOWN);
		key(K_ENTER);
		ck_shows(season_list_title((enum season_list)i));
		if (on_screen("before the work"))
			key(K_ESC);
		key('w');
		ck_shows("Which list of the season?");
	}
}
END_TEST

static const struct { const char *name; void (*go)(void); } screens[] = {
	{ "season-lists", NULL }, { "season-list", open_commissioning },
};

START_TEST(the_screens_are_as_they_were)
{
	const struct golden *g = &goldens[_i % GOLDENS];

	if (screens[_i / GOLDENS].go)
		screens[_i / GOLDENS].go();
	else
		key('w');
	same_screen(screens[_i / GOLDENS].name, g);
}
END_TEST

START_TEST(the_form_of_passing_over_is_as_it_was)
{
	open_commissioning();
	key('p');
	type("waits for the yard");
	same_screen("form-pass", &goldens[_i]);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("season_list");
	TCase *tc = tcase_create("lists");

	tcase_add_checked_fixture(tc, spring_begin, app_end);
	tcase_set_timeout(tc, 60);
	tcase_add_test(tc, the_list_that_comes_next_is_offered_first_and_the_first_open_line_is_selected);
	tcase_add_test(tc, a_tick_goes_on_to_the_next_open_line_and_u_takes_it_back);
	tcase_add_test(tc, what_is_done_is_not_ticked_twice);
	tcase_add_test(tc, the_work_is_not_reached_before_its_cautions_were_read);
	tcase_add_test(tc, leaving_and_coming_back_goes_on_at_the_first_open_line);
	tcase_add_test(tc, passing_over_asks_why_and_the_line_stays_due);
	tcase_add_test(tc, d_opens_the_whole_form_and_the_list_has_what_it_says);
	tcase_add_test(tc, right_shows_all_that_is_known_of_the_line);
	tcase_add_test(tc, every_list_opens_and_w_leads_back_to_the_choice);
	tcase_add_loop_test(tc, the_screens_are_as_they_were, 0, GOLDENS * (int)G_N_ELEMENTS(screens));
	tcase_add_loop_test(tc, the_form_of_passing_over_is_as_it_was, 0, GOLDENS);
	suite_add_tcase(s, tc);
	return run_suite(s);
}
