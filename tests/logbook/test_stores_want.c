/* What is wanted of the stores, and by which day it is to be ordered: the days are worked out by hand.  The boat is afloat from 15
 * April to 15 October; today is 25 November 2026. */
#include "logbook/stores_want.h"

#include "stores_open.h"

static struct wants *wants;

/* She lies afloat in season, so that work out of the water is done before. */
static void
keep_afloat(void)
{
	g_autofree char *key = book_key_text(boat.id);
	g_autofree char *text = g_strdup_printf("id,name,kind,berth,winter,water,launch,haul-out,since\n"
						"%s,Tern,jet,afloat,roof,fresh,04-15,10-15,2026-01-01\n", key);

	import_text(RECORD_BOAT, text);
	record_clear(RECORD_BOAT, &boat);
	ck_assert(book_boat(book, "Tern", &boat, NULL));
	ck_assert_int_eq(boat.berth, STAND_AFLOAT);
}

static void
begin(void)
{
	setup();
	open_plain("Tern");
	keep_afloat();
	import_text(RECORD_FITTING, "path,title\nengine,Engine\n");
	import_text(RECORD_ITEM, "what,unit,rubber,shelf-months,lead-days,keep\n"
				 "bellows,,1,48,14,\nhose,m,,,30,\ngasket,,,,,\nspare,,,,7,2\nfuse,,,,0,\n");
	wants = NULL;
}

static void
end(void)
{
	wants_free(wants);
	teardown();
}

/* For the coming opportunity; or all until a day. */
static void
ask(const char *until)
{
	const struct due_ask how = { who.today, until ? day(until) : NONE };
	g_autoptr(GError) err = NULL;

	wants_free(wants);
	wants = book_wants(book, &boat, &how, &err);
	ck_assert_msg(wants != NULL, "%s", err ? err->message : "?");
}

static const struct want_line *
want(const char *what)
{
	for (guint i = 0; wants_line(wants, i); i++)
		if (!strcmp(wants_line(wants, i)->item->what, what))
			return wants_line(wants, i);
	return NULL;
}

static void
is_day(gint64 is, const char *text)
{
	char d[DAY_TEXT];

	ck_assert_str_eq(is == NONE ? "none" : day_iso(is, d), text);
}

START_TEST(work_out_of_the_water_is_needed_by_the_launch_before_its_day)
{
	/* A year from 1 June 2026 is in the season of 2027, and then it is afloat: 15 April less 14 days. */
	add_due("ashore", "out", "costs", 12, "2026-06-01");
	add_need("ashore", "bellows", STOCK_ONE, FALSE);
	ask(NULL);
	ck_assert_ptr_nonnull(want("bellows"));
	is_day(want("bellows")->needed, "2027-04-15");
	is_day(want("bellows")->order_by, "2027-04-01");
	ck_assert(!want("bellows")->late);
	ck_assert_int_eq(want("bellows")->want, STOCK_ONE);
	ck_assert_str_eq(want("bellows")->tasks, "ashore");
}
END_TEST

START_TEST(work_anywhere_is_needed_on_its_own_day_in_season)
{
	add_due("afloat", "anywhere", "costs", 12, "2026-06-01");
	add_need("afloat", "hose", 2500, FALSE);
	ask("2027-12-31");
	is_day(want("hose")->needed, "2027-06-01");
	is_day(want("hose")->order_by, "2027-05-02"); /* 30 days before */
	ck_assert_int_eq(want("hose")->want, 2500);
}
END_TEST

START_TEST(what_can_sink_is_needed_by_its_early_day)
{
	/* Done in the spring of 2022, 1 March to 31 May: five years are over on 1 March 2027 at the earliest. */
	add_due("seal", "out", "sinks", 60, "2022-05-31,2022-03-01");
	add_need("seal", "bellows", STOCK_ONE, FALSE);
	ask(NULL);
	is_day(want("bellows")->needed, "2027-03-01");
	is_day(want("bellows")->order_by, "2027-02-15");
}
END_TEST

START_TEST(of_several_tasks_the_first_day_counts_and_their_needs_add_up)
{
	add_due("ashore", "out", "costs", 12, "2026-06-01");
	add_due("seal", "out", "sinks", 60, "2022-05-31,2022-03-01");
	add_due("look", "out", "costs", 12, "2026-05-01");
	add_need("ashore", "bellows", STOCK_ONE, FALSE);
	add_need("seal", "bellows", 2 * STOCK_ONE, FALSE);
	add_need("look", "bellows", 4 * STOCK_ONE, TRUE);
	ask(NULL);
	is_day(want("bellows")->needed, "2027-03-01");
	ck_assert_int_eq(want("bellows")->want, 3 * STOCK_ONE);
	ck_assert_int_eq(want("bellows")->perhaps, 4 * STOCK_ONE);
	ck_assert_ptr_nonnull(strstr(want("bellows")->tasks, "look (on condition)"));
	/* What is there is for what is sure. */
	add_lot("bellows", "5", "2026-09-01,,,2026-10-01,,");
	ask(NULL);
	ck_assert_int_eq(want("bellows")->want, 0);
	ck_assert_int_eq(want("bellows")->perhaps, 2 * STOCK_ONE);
}
END_TEST

START_TEST(what_is_too_old_on_that_day_is_wanted_anew)
{
	add_due("ashore", "out", "costs", 12, "2026-06-01");
	add_need("ashore", "bellows", STOCK_ONE, FALSE);
	/* 48 months from 14 April 2023 end the day before the launch; from the 15th, on it. */
	add_lot("bellows", "1", "2023-04-14,,,2026-10-01,,");
	ask(NULL);
	ck_assert_int_eq(want("bellows")->on_hand, STOCK_ONE);
	ck_assert_int_eq(want("bellows")->fresh, 0);
	ck_assert_int_eq(want("bellows")->want, STOCK_ONE);
	add_lot("bellows", "1", "2023-04-15,,,2026-10-01,,");
	ask(NULL);
	ck_assert_ptr_null(want("bellows"));
}
END_TEST

START_TEST(what_is_ordered_counts_when_it_comes_in_time)
{
	add_due("ashore", "out", "costs", 12, "2026-06-01");
	add_need("ashore", "hose", 3000, FALSE);
	add_lot("hose", "1", ",2026-11-01,2027-04-15,,,");
	add_lot("hose", "1", ",2026-11-01,2027-04-16,,,");
	add_lot("hose", "0.5", ",2026-11-01,,,,");
	ask(NULL);
	ck_assert_int_eq(want("hose")->to_come, 2500);
	ck_assert_int_eq(want("hose")->too_late, 1000);
	ck_assert_int_eq(want("hose")->want, 1500);
}
END_TEST

START_TEST(the_day_to_order_has_passed)
{
	g_autofree char *words = NULL;

	/* Past due since 1 May 2026: needed at once.  Something that takes no days is to be ordered today, and that is not late. */
	add_due("old", "out", "costs", 12, "2025-05-01");
	add_need("old", "bellows", STOCK_ONE, FALSE);
	add_need("old", "fuse", STOCK_ONE, FALSE);
	ask(NULL);
	is_day(want("bellows")->needed, "2027-04-15");
	who.today = day("2027-04-02");
	reopen(BOOK_WRITE);
	ask(NULL);
	is_day(want("bellows")->order_by, "2027-04-01");
	ck_assert(want("bellows")->late);
	is_day(want("fuse")->order_by, "2027-04-15");
	ck_assert(!want("fuse")->late);
	words = want_order_words(wants, want("bellows"));
	ck_assert_str_eq(words, "order now: by 1 Apr 2027 it was to be ordered, needed 15 Apr 2027");
	/* First to be ordered first. */
	ck_assert_ptr_eq(wants_line(wants, 0), want("bellows"));
}
END_TEST

START_TEST(days_that_nobody_knows_are_not_made_up)
{
	g_autofree char *words = NULL, *keep = NULL;

	add_due("ashore", "out", "costs", 12, "2026-06-01");
	add_need("ashore", "gasket", STOCK_ONE, FALSE);
	ask(NULL);
	is_day(want("gasket")->order_by, "none");
	words = want_order_words(wants, want("gasket"));
	ck_assert_str_eq(words, "needed 15 Apr 2027; how long it takes to come is not known");
	/* What is only to be kept is needed on no day. */
	is_day(want("spare")->needed, "none");
	is_day(want("spare")->order_by, "none");
	ck_assert_int_eq(want("spare")->want, 2 * STOCK_ONE);
	ck_assert_ptr_null(want("spare")->tasks);
	keep = want_order_words(wants, want("spare"));
	ck_assert_str_eq(keep, "to be kept");
}
END_TEST

START_TEST(what_is_to_be_kept_is_not_what_work_uses_up)
{
	add_due("ashore", "out", "costs", 12, "2026-06-01");
	add_need("ashore", "spare", STOCK_ONE, FALSE);
	add_lot("spare", "2", ",,,2026-10-01,,");
	ask(NULL);
	ck_assert_int_eq(want("spare")->want, STOCK_ONE);
	add_lot("spare", "1", ",,,2026-10-01,,");
	ask(NULL);
	ck_assert_ptr_null(want("spare"));
}
END_TEST

START_TEST(what_is_due_later_is_not_wanted_yet)
{
	add_due("later", "out", "costs", 120, "2026-06-01");
	add_need("later", "bellows", STOCK_ONE, FALSE);
	ask(NULL);
	ck_assert_ptr_null(want("bellows"));
	ask("2036-12-31");
	ck_assert_ptr_nonnull(want("bellows"));
}
END_TEST

START_TEST(work_that_nobody_knows_the_last_time_of_is_counted_not_guessed)
{
	add_task("unknown", "engine");
	add_need("unknown", "bellows", STOCK_ONE, FALSE);
	ask(NULL);
	ck_assert_ptr_null(want("bellows"));
	ck_assert_int_eq(wants->no_record, 1);
}
END_TEST

int
main(void)
{
	TCase *all = tcase_create("wanted");
	Suite *suite = suite_create("stores_want");

	tcase_add_checked_fixture(all, begin, end);
	tcase_add_test(all, work_out_of_the_water_is_needed_by_the_launch_before_its_day);
	tcase_add_test(all, work_anywhere_is_needed_on_its_own_day_in_season);
	tcase_add_test(all, what_can_sink_is_needed_by_its_early_day);
	tcase_add_test(all, of_several_tasks_the_first_day_counts_and_their_needs_add_up);
	tcase_add_test(all, what_is_too_old_on_that_day_is_wanted_anew);
	tcase_add_test(all, what_is_ordered_counts_when_it_comes_in_time);
	tcase_add_test(all, the_day_to_order_has_passed);
	tcase_add_test(all, days_that_nobody_knows_are_not_made_up);
	tcase_add_test(all, what_is_to_be_kept_is_not_what_work_uses_up);
	tcase_add_test(all, what_is_due_later_is_not_wanted_yet);
	tcase_add_test(all, work_that_nobody_knows_the_last_time_of_is_counted_not_guessed);
	suite_add_tcase(suite, all);
	return run_suite(suite);
}
