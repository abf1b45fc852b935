/* The stores on the screen: what is there, what is wanted, what it cost, and the forms that change it. */
#include "stores_keys.h"

START_TEST(an_empty_store_says_how_to_begin)
{
	key('S');
	ck_shows("[Stores 0]");
	ck_shows("Nothing is in the stores yet. a puts a kind of part on the list");
	key('t');
	ck_shows("nothing is selected for that here");
	key(K_TAB);
	ck_shows("Nothing is wanted of the stores. n on an item says which task needs it");
	key(K_TAB);
	ck_shows("No cost is on record.");
	key(K_TAB);
	ck_shows("[Stores 0]");
	key(K_BACKTAB);
	ck_shows("[Costs]");
}
END_TEST

START_TEST(an_item_goes_on_the_list_and_is_found_under_its_numbers)
{
	const struct item *i;
	struct stores *s;

	key('S');
	key('a');
	ck_will("How long it takes to come is not known");
	key(K_ESC);
	add_item("bellows, U-joint", "RB-103", "14");
	ck_shows("bellows, U-joint is on the list; b says what came of it");
	ck_shows("> bellows, U-joint");
	s = named("rb-103", &i);
	ck_assert_int_eq(i->rubber, 1);
	ck_assert_int_eq(i->shelf_months, 48);
	ck_assert_int_eq(i->lead_days, 14);
	stores_free(s);
	key('p');
	fill("number", "RB-204");
	fill("replaces", "RB-103");
	ck_will("RB-204 takes the place of RB-103");
	record();
	key(K_ENTER);
	ck_shows("number RB-103 of Quay, superseded: RB-204 is current");
	key(K_ESC);
	key('e');
	fill("keep", "2");
	fill("rubber", "n");
	fill("shelf", "");
	record();
	ck_shows("bellows, U-joint is corrected");
	s = named("rb-204", &i);
	ck_assert_int_eq(stock_of(i->keep), 2 * STOCK_ONE);
	ck_assert_int_eq(i->rubber, 0);
	ck_assert_int_eq(i->shelf_months, NONE);
	stores_free(s);
	key('u');
	ck_hides("to keep 2");
}
END_TEST

START_TEST(what_an_item_can_not_be_is_said_at_its_field)
{
	static const char *const bad[][2] = { { "shelf", "0" }, { "shelf", "four" }, { "lead", "2000" }, { "keep", "-1" } };
	guint items;

	key('S');
	add_item("impeller kit", "RK-7", "10");
	items = n_of(RECORD_ITEM);
	ck_assert_uint_eq(items, 1);
	key('a');
	fill("supplier", "Quay");
	for (guint i = 0; i < G_N_ELEMENTS(bad); i++) {
		fill(bad[i][0], bad[i][1]);
		ck_assert_msg(form_field(app_data(app), bad[i][0])->wrong != NULL, "%s %s", bad[i][0], bad[i][1]);
		fill(bad[i][0], "");
	}
	ck_assert_ptr_nonnull(form_field(app_data(app), "number")->wrong);
	ck_assert_ptr_nonnull(form_field(app_data(app), "what")->wrong);
	fill("what", "Impeller Kit");
	fill("supplier", "");
	record();
	ck_assert(in_form());
	ck_shows("is in the stores already");
	ck_assert_uint_eq(n_of(RECORD_ITEM), items);
}
END_TEST

START_TEST(what_came_lies_somewhere_and_what_is_too_old_is_told)
{
	key('S');
	add_item("bellows, U-joint", "RB-204", "14");
	key('b');
	fill("quantity", "2");
	fill("made", "2021-09");
	ck_will("made 2021-09, 62 months, may lie 48");
	ck_will("without a price it is in no sum of costs");
	fill("expected", "2027-03-01");
	ck_assert_ptr_nonnull(form_field(app_data(app), "expected")->wrong);
	fill("expected", "");
	fill("place", "bow locker");
	record();
	ck_shows("2 of bellows, U-joint came; u takes it back");
	ck_shows("bellows, U-joint: 2, 2 too old");
	ck_shows("bow locker");
	add_lot("came", "1.5", "12 USD", "2026-05", "shed");
	ck_assert_int_eq(on_hand("bellows"), 3500);
	ck_shows("bow locker, ~");
	ck_shows("made 2026-05, 6 months, may lie 48, shed");
	key('u');
	ck_assert_int_eq(on_hand("bellows"), 2000);
}
END_TEST

START_TEST(what_was_ordered_is_to_come_until_it_is_here)
{
	key('S');
	add_item("bellows, U-joint", "RB-204", "14");
	key('i');
	ck_shows("nothing of bellows, U-joint is to come: b says what came");
	add_lot("ordered", "3", "60 USD", "", "");
	ck_shows("bellows, U-joint: none, 3 to come");
	ck_shows("expected 9 Dec 2026");
	ck_assert_int_eq(on_hand("bellows"), 0);
	key('i');
	fill("order", "bbbb");
	ck_assert_ptr_nonnull(form_field(app_data(app), "order")->wrong);
	key(K_CTRL('n'));
	fill("place", "bow locker");
	ck_will("It is here since 25 Nov 2026, and lies: bow locker");
	record();
	ck_assert(!in_form());
	ck_assert_int_eq(on_hand("bellows"), 3000);
	ck_shows("3 on hand since 25 Nov 2026");
	ck_assert_uint_eq(n_of(RECORD_LOT), 1);
}
END_TEST

START_TEST(what_is_taken_is_for_a_task_a_job_or_nobody_and_goes_back)
{
	fill_stores();
	find("impeller");
	key('t');
	fill("for", "lost overboard");
	ck_will("for no boat: in no sum of costs. What is too old comes first.");
	record();
	ck_assert_int_eq(on_hand("impeller"), 1000);
	key('t');
	fill("quantity", "2");
	ck_will("for Grey Heron.");
	record();
	ck_assert(in_form());
	ck_shows("1 is on hand");
	key('y');
	ck_assert(!in_form());
	ck_assert_int_eq(on_hand("impeller"), 0);
	key('t');
	fill("way", "p");
	fill("quantity", "5");
	record();
	ck_shows("was taken");
	ck_assert(in_form());
	fill("quantity", "2");
	record();
	ck_assert(!in_form());
	ck_shows("put back: 2");
	ck_assert_int_eq(on_hand("impeller"), 2000);
}
END_TEST

START_TEST(what_is_too_old_is_taken_only_when_that_is_sure)
{
	fill_stores();
	find("bellows");
	key('t');
	fill("for", "bellows-ujoint.renew");
	record();
	ck_assert(in_form());
	ck_shows("too old");
	ck_assert_int_eq(on_hand("bellows"), 1000);
	key('y');
	ck_assert_int_eq(on_hand("bellows"), 0);
}
END_TEST

START_TEST(a_count_says_what_it_changes_before_and_after)
{
	guint taken;

	fill_stores();
	taken = n_of(RECORD_TAKEN);
	find("impeller");
	key('c');
	fill("quantity", "2");
	ck_will("As it stands on record");
	fill("quantity", "5");
	ck_will("3 more than on record");
	fill("quantity", "0");
	ck_will("2 less than on record");
	record();
	ck_shows("2 less than on record; u takes the count back");
	ck_assert_int_eq(on_hand("impeller"), 0);
	ck_assert_uint_eq(n_of(RECORD_TAKEN), taken + 1);
	key('c');
	record();
	ck_shows("wanted: how many?");
}
END_TEST

/* Which row of the frame holds the words; -1. */
static int
row_of(const char *words)
{
	g_autofree char *text = grid_text(grid);
	const char *p = strstr(text, words);
	int y = 0;

	for (const char *c = text; p && c < p; c++)
		y += *c == '\n';
	return p ? y : -1;
}

START_TEST(what_is_late_to_order_leads_and_says_so)
{
	fill_stores();
	key('S');
	ck_shows("1 late");
	key(K_TAB);
	ck_shows("BEFORE LAUNCH, 15 Apr 2027");
	ck_shows("LATE    bellows, U-joint  2");
	ck_shows("by 24 Aug 2026");
	ck_assert_int_lt(row_of("LATE: order now"), row_of("NO ITEM IS LINKED"));
	ck_shows("order now: by 24 Aug 2026 it was to be ordered");
	ck_shows("For bellows-ujoint.renew.");
	ck_shows("to come: 1, too late: 1.");
	key('n');
	fill("task", "bellows-ujoint.renew");
	fill("quantity", "0");
	ck_will("bellows-ujoint.renew no longer needs bellows, U-joint.");
	record();
	ck_hides("LATE");
	key('u');
	ck_shows("LATE    bellows, U-joint");
}
END_TEST

START_TEST(what_may_be_found_bad_is_wanted_perhaps)
{
	fill_stores();
	find("anode");
	key('n');
	fill("task", "gimbal-bearing.grease");
	fill("quantity", "3");
	fill("when", "w");
	ck_will("gimbal-bearing.grease needs 3 anode set, when it is found bad.");
	record();
	ck_shows("perhaps 2");
	key(K_TAB);
	find("anode set");
	ck_shows("PERHAPS: only when it is found bad");
	ck_shows("if bad  anode set  perhaps 2");
	ck_shows("Wanted: perhaps 2, only when it is found bad; order by ");
}
END_TEST

START_TEST(a_task_that_no_item_is_linked_to_gets_one)
{
	const struct item *i;
	struct stores *s;

	fill_stores();
	key(K_TAB);
	find("gimbal-bearing.grease");
	ck_shows("gimbal-bearing.grease wants: ");
	key('t');
	ck_shows("nothing is selected for that here");
	key('n');
	fill("item", "no such");
	key(K_ENTER);
	ck_assert_ptr_nonnull(form_field(app_data(app), "item")->wrong);
	fill("item", "RA-31");
	ck_will("gimbal-bearing.grease needs 1 anode set.");
	record();
	ck_assert(!in_form());
	key(K_ESC);
	ck_hides("for gimbal-bearing.grease");
	s = named("anode", &i);
	ck_assert_uint_eq(s->needs->len, 3);
	stores_free(s);
}
END_TEST

/* How many of the sign stand in the first row that holds the words. */
static int
signs_in(const char *words, const char *sign)
{
	g_autofree char *text = grid_text(grid);
	const char *p = strstr(text, words), *end = p ? strchr(p, '\n') : NULL;
	int n = 0;

	ck_assert_msg(p && end, "no %s on:\n%s", words, text);
	for (; (p = strstr(p, sign)) && p < end; p += strlen(sign))
		n++;
	return n;
}

START_TEST(costs_are_bars_of_work_and_parts_each_currency_by_itself)
{
	fill_stores();
	find("anode");
	key('t');
	record();
	add_lot("came", "1", "10 EUR", "", "shed");
	key('t');
	record();
	key(K_ESC);
	key(K_TAB);
	grid_size(grid, 50, 200);
	key(K_TAB);
	ck_shows("BY SEASON");
	/* The season after the haul-out of October 2026: parts alone, and in EUR alone a whole bar. */
	ck_shows("2027 USD");
	ck_assert_int_eq(signs_in("2027 USD", "█"), 0);
	ck_assert_int_gt(signs_in("2027 USD", "▒"), 0);
	ck_assert_int_gt(signs_in("2027 EUR", "▒"), signs_in("2027 USD", "▒"));
	ck_assert_int_gt(signs_in("2022 USD", "█"), signs_in("2025 USD", "█"));
	find("2027 USD");
	ck_shows("Parts taken out of the stores: 90.00");
	ck_shows("No engine hours are on record in that season.");
	key(K_ENTER);
	ck_shows("Together: 90.00");
	key(K_ESC);
	find("drive/anodes USD");
	ck_shows("Parts taken out of the stores: 45.00");
	find("2027 USD");
	key(K_HOME);
	grid->ascii = TRUE;
	key(K_CTRL('l'));
	ck_assert_int_gt(signs_in("> 2027 USD", "="), 0);
	ck_shows("# work  = parts");
}
END_TEST

START_TEST(what_has_no_price_is_in_no_sum_and_that_is_said)
{
	fill_stores();
	find("impeller");
	key('t');
	record();
	key(K_ESC);
	key(K_BACKTAB);
	find("2026");
	ck_shows("1 taking has no price, and is in no sum.");
}
END_TEST

START_TEST(the_story_of_an_item_stands_below_beside_and_on_a_page)
{
	fill_stores();
	find("anode");
	ck_shows("anode set: 1   RA-31 (Quay)");
	key(K_ENTER);
	ck_shows("25 Nov 2026 2 came in, 90.00 USD");
	ck_shows("25 Nov 2026 1 taken for Grey Heron: anodes.renew, 45.00 USD");
	key(K_ESC);
	grid_size(grid, 50, 200);
	key(K_CTRL('l'));
	ck_shows("1 taken for Grey Heron");
}
END_TEST

static void
see_stores(void)
{
	fill_stores();
	find("bellows");
	key(K_ESC);
	key(K_CTRL('l'));
}

static void
see_wanted(void)
{
	see_stores();
	key(K_TAB);
	key(K_HOME);
}

static void
see_costs(void)
{
	see_wanted();
	key(K_TAB);
}

static void
see_story(void)
{
	see_stores();
	key(K_ENTER);
}

static void
see_empty(void)
{
	key('S');
}

static void
see_item_form(void)
{
	see_stores();
	key('e');
}

static void
see_lot_form(void)
{
	see_stores();
	key('b');
	fill("quantity", "2");
	fill("made", "2021-09");
}

static void
see_take_form(void)
{
	see_stores();
	key('t');
	fill("for", "thrown away");
}

static void
see_count_form(void)
{
	see_stores();
	key('c');
	fill("quantity", "0");
}

static const struct { const char *name; void (*go)(void); } screens[] = {
	{ "stores", see_stores },	  { "stores-wanted", see_wanted },  { "stores-costs", see_costs },
	{ "stores-story", see_story },	  { "stores-empty", see_empty },    { "form-item", see_item_form },
	{ "form-lot", see_lot_form },	  { "form-take", see_take_form },   { "form-count", see_count_form },
};

START_TEST(the_screens_are_as_they_were)
{
	screens[_i].go();
	for (int k = 0; k < GOLDENS; k++)
		same_screen(screens[_i].name, &goldens[k]);
}
END_TEST

/* A boat without a plan. */
static void
bare_begin(void)
{
	setup();
	open_plain("Grey Heron");
	g_clear_pointer(&book, book_close);
	app_begin();
}

int
main(void)
{
	Suite *s = suite_create("The stores on the screen");
	TCase *bare = tcase_create("no plan"), *tc = tcase_create("stores");

	tcase_add_checked_fixture(bare, bare_begin, app_end);
	tcase_add_test(bare, an_empty_store_says_how_to_begin);
	suite_add_tcase(s, bare);
	tcase_add_checked_fixture(tc, demo_begin, app_end);
	tcase_set_timeout(tc, 120);
	tcase_add_test(tc, an_item_goes_on_the_list_and_is_found_under_its_numbers);
	tcase_add_test(tc, what_an_item_can_not_be_is_said_at_its_field);
	tcase_add_test(tc, what_came_lies_somewhere_and_what_is_too_old_is_told);
	tcase_add_test(tc, what_was_ordered_is_to_come_until_it_is_here);
	tcase_add_test(tc, what_is_taken_is_for_a_task_a_job_or_nobody_and_goes_back);
	tcase_add_test(tc, what_is_too_old_is_taken_only_when_that_is_sure);
	tcase_add_test(tc, a_count_says_what_it_changes_before_and_after);
	tcase_add_test(tc, what_is_late_to_order_leads_and_says_so);
	tcase_add_test(tc, what_may_be_found_bad_is_wanted_perhaps);
	tcase_add_test(tc, a_task_that_no_item_is_linked_to_gets_one);
	tcase_add_test(tc, costs_are_bars_of_work_and_parts_each_currency_by_itself);
	tcase_add_test(tc, what_has_no_price_is_in_no_sum_and_that_is_said);
	tcase_add_test(tc, the_story_of_an_item_stands_below_beside_and_on_a_page);
	tcase_add_loop_test(tc, the_screens_are_as_they_were, 0, G_N_ELEMENTS(screens));
	suite_add_tcase(s, tc);
	return run_suite(s);
}
