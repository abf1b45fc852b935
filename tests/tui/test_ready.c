/* The launch check on the screen: its answer, what each line says, and letting pass. */
#include "form_keys.h"

#include "logbook/ready.h"

/* How many things hold by the check itself, as of the day shown. */
static int
holding(void)
{
	g_autoptr(GError) err = NULL;
	struct ready *r = book_ready(app->book, &app->boat, app_today(app), &err);
	int n = r ? r->holding : -1;

	ck_assert_msg(r != NULL, "%s", err ? err->message : "?");
	ready_free(r);
	return n;
}

/* The first line says so many. */
static void
ck_answer(int n)
{
	g_autofree char *words = g_strdup_printf("Hold the launch: %d things", n);

	ck_shows(words);
}

START_TEST(a_key_shows_the_answer_its_reasons_and_what_it_is_worth)
{
	key('0');
	ck_answer(holding());
	ck_shows("as far as is on record; no certificate");
	ck_shows("HOLDS THE LAUNCH");
	find("bilge-pump.test");
	ck_shows("past due since 12 Aug 2026 (bilge-pump.test)");
	ck_shows("certifies nothing");
	key(K_ENTER);
	ck_shows("Bilge pump: test");
	key('q');
	ck_shows("HOLDS THE LAUNCH");
}
END_TEST

START_TEST(what_is_done_holds_no_longer)
{
	int n;

	key('0');
	n = holding();
	find("fuel.leak-test");
	key('d');
	ck_assert(in_form());
	record();
	ck_answer(n - 1);
	ck_assert_int_eq(holding(), n - 1);
	key('u');
	ck_answer(n);
}
END_TEST

START_TEST(letting_pass_wants_a_reason_and_a_day_and_marks_the_line)
{
	int n;

	key('0');
	n = holding();
	find("bilge-pump.test");
	key('p');
	ck_assert(in_form());
	ck_shows("Whoever lets it pass answers for it");
	record();
	ck_assert(in_form());
	ck_shows("a reason is wanted");
	fill("reason", "a new one lies ready");
	fill("until", "2026-11-24");
	record();
	ck_assert(in_form());
	ck_shows("that day is past");
	fill("until", "2029-01-01");
	record();
	ck_shows("more than a year off");
	fill("until", "2026-12-01");
	ck_will("Let pass until 1 Dec 2026 by tester.");
	record();
	ck_assert(!in_form());
	ck_answer(n - 1);
	find("bilge-pump.test");
	ck_shows("1 Dec 2026 by tester: a new one lies ready");
	ck_shows("passes");
	key('p');
	ck_shows("tester lets it pass already");
	key('u');
	ck_answer(n);
}
END_TEST

START_TEST(a_finding_and_what_happened_are_let_pass_and_opened_too)
{
	int n;

	find("gear-oil.change");
	key('f');
	fill("words", "milky");
	record();
	key('0');
	n = holding();
	find("milky");
	key(K_ENTER);
	ck_shows("Makes due");
	key('q');
	key('p');
	fill("reason", "changed on Friday");
	fill("until", "2026-12-01");
	record();
	ck_assert_int_eq(holding(), n - 1);
	find("drive-off on 22 Mar 2025");
	key('p');
	fill("reason", "the yard has the list");
	fill("until", "2026-12-01");
	record();
	ck_assert_int_eq(holding(), n - 2);
	key(K_ENTER);
	ck_shows("drive-off     open");
}
END_TEST

START_TEST(what_does_not_hold_is_not_let_pass)
{
	key('0');
	find("batteries.rest-voltage");
	key('p');
	ck_assert(!in_form());
	ck_shows("only what holds the launch is let pass");
}
END_TEST

static void
open_empty(void)
{
	setup();
	open_plain("Skiff");
	book_close(book);
	book = NULL;
	app_begin();
}

START_TEST(a_boat_without_anything_against_it_is_told_so_with_the_caveat)
{
	key('0');
	ck_shows("Nothing on record holds the launch.");
	ck_shows("certifies nothing");
	key('p');
	key('d');
	key(K_ENTER);
	ck_shows("Nothing on record holds the launch.");
}
END_TEST

static void
set_ready(void)
{
	key('0');
}

static void
set_waive(void)
{
	key('0');
	find("bilge-pump.test");
	key('p');
}

static void
set_heed(void)
{
	key('5');
	find("vibration");
	key(K_ENTER);
}

static const struct { const char *name; void (*set)(void); } screens[] = {
	{ "ready", set_ready }, { "form-waive", set_waive }, { "heed", set_heed },
};

START_TEST(a_screen_is_as_it_was_looked_at)
{
	screens[_i].set();
	for (int k = 0; k < GOLDENS; k++)
		same_screen(screens[_i].name, &goldens[k]);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Launch check");
	TCase *demo = tcase_create("demo"), *bare = tcase_create("bare");

	tcase_add_checked_fixture(demo, demo_begin, app_end);
	tcase_add_test(demo, a_key_shows_the_answer_its_reasons_and_what_it_is_worth);
	tcase_add_test(demo, what_is_done_holds_no_longer);
	tcase_add_test(demo, letting_pass_wants_a_reason_and_a_day_and_marks_the_line);
	tcase_add_test(demo, a_finding_and_what_happened_are_let_pass_and_opened_too);
	tcase_add_test(demo, what_does_not_hold_is_not_let_pass);
	tcase_add_loop_test(demo, a_screen_is_as_it_was_looked_at, 0, G_N_ELEMENTS(screens));
	suite_add_tcase(s, demo);
	tcase_add_checked_fixture(bare, open_empty, app_end);
	tcase_add_test(bare, a_boat_without_anything_against_it_is_told_so_with_the_caveat);
	suite_add_tcase(s, bare);
	return run_suite(s);
}
