#include "logbook/stores_take.h"

#include "base/err.h"
#include "logbook/stores_story.h"
#include "stores_open.h"

static struct stores *stores;

static void
look_again(void)
{
	stores_free(stores);
	stores = book_stores(book, NULL);
	ck_assert_ptr_nonnull(stores);
}

static void
begin(void)
{
	setup();
	open_plain("Tern");
	import_text(RECORD_ITEM, "what,unit,rubber,shelf-months,lead-days\nbellows,,1,48,14\nhose,m,,,\n");
	look_again();
}

static void
end(void)
{
	g_clear_pointer(&stores, stores_free);
	teardown();
}

static const struct item *
item(const char *what)
{
	const struct item *i = stores_find(stores, what, NULL, NULL);

	ck_assert_msg(i != NULL, "no item %s", what);
	return i;
}

/* The code of the error that there was, -1 for none. */
static int
code_of(gboolean ok, GError **err)
{
	int code = ok ? -1 : (*err)->code;

	ck_assert(ok == (*err == NULL));
	g_clear_error(err);
	return code;
}

static int
number(const char *of, const char *text, const char *supplier, const char *replaces)
{
	struct number n;
	struct item same = *item(of);
	GError *err = NULL;
	int code;

	record_init(RECORD_NUMBER, &n);
	n.number = g_strdup(text);
	n.supplier = g_strdup(supplier);
	same.what = g_strdup(same.what);
	code = code_of(replaces ? book_replace_number(book, &same, &n, replaces, &err) : book_put_item(book, &same, &n, 1, &err),
		       &err);
	g_free(same.what);
	record_clear(RECORD_NUMBER, &n);
	look_again();
	return code;
}

static int
lot(const char *of, gint64 quantity, const char *arrived, const char *made)
{
	GError *err = NULL;
	struct lot l;
	int code;

	record_init(RECORD_LOT, &l);
	l.quantity = stock_real(quantity);
	l.arrived = day(arrived);
	l.made = made ? day(made) : NONE;
	code = code_of(book_put_lot(book, item(of), &l, &err), &err);
	record_clear(RECORD_LOT, &l);
	look_again();
	return code;
}

static int
take(const char *of, gint64 quantity, const char *on, gint64 for_boat, gboolean sure)
{
	struct store_take t = { item(of)->id, quantity, day(on), for_boat, NONE, NONE, NULL, sure };
	g_autoptr(GArray) taken = NULL;
	GError *err = NULL;
	int code = code_of(book_took(book, &t, &taken, &err), &err);

	look_again();
	return code;
}

static gint64
there(const char *of)
{
	return stores_on_hand(stores, item(of), NONE);
}

START_TEST(an_item_is_found_by_any_of_its_numbers_as_typed)
{
	const struct number *by;

	ck_assert_int_eq(number("bellows", "RB-103", "Quay", NULL), -1);
	ck_assert_int_eq(number("bellows", "rb 103/A", "Pier", NULL), -1);
	ck_assert_int_eq(number("hose", "RB-103", "Pier", NULL), -1);
	ck_assert_int_eq(number("bellows", "RB-204", "Quay", "RB-103"), -1);
	ck_assert_int_eq(number("bellows", "RB-305", "Quay", "RB-204"), -1);

	ck_assert_str_eq(stores_find(stores, "RB 103/a", &by, NULL)->what, "bellows");
	ck_assert_str_eq(by->number, "rb 103/A");
	ck_assert_ptr_null(stores_superseded(stores, by));
	ck_assert_str_eq(stores_find(stores, "rb-204", &by, NULL)->what, "bellows");
	ck_assert_str_eq(stores_current(stores, by)->number, "RB-305");
	g_autofree char *old = stores_superseded(stores, by), *numbers = stores_numbers(stores, item("bellows")->id);

	ck_assert_str_eq(old, "RB-204 is superseded: RB-305 is current");
	ck_assert(strstr(numbers, "RB-305 (Quay)") && strstr(numbers, "rb 103/A (Pier)") && !strstr(numbers, "RB-103"));
}
END_TEST

START_TEST(a_number_that_can_be_two_items_is_asked_about)
{
	GError *err = NULL;

	number("bellows", "RB-103", "Quay", NULL);
	number("hose", "RB-103", "Pier", NULL);
	ck_assert_ptr_null(stores_find(stores, "RB-103", NULL, &err));
	ck_assert_int_eq(err->code, ERR_INPUT);
	ck_assert(strstr(err->message, "bellows") && strstr(err->message, "hose"));
	g_clear_error(&err);
	ck_assert_ptr_null(stores_find(stores, "RB-999", NULL, &err));
	ck_assert_int_eq(err->code, ERR_NOT_FOUND);
	g_clear_error(&err);
	/* Of the same supplier, and of one that is not said, it is refused. */
	ck_assert_int_eq(number("hose", "rb-103", "quay", NULL), ERR_CONFLICT);
	ck_assert_int_eq(number("hose", "RB-204", "Quay", NULL), -1);
	ck_assert_int_eq(number("bellows", "RB-204", NULL, NULL), ERR_CONFLICT);
}
END_TEST

START_TEST(numbers_never_replace_each_other_in_a_circle)
{
	number("bellows", "RB-1", NULL, NULL);
	number("bellows", "RB-2", NULL, "RB-1");
	number("bellows", "RB-3", NULL, "RB-2");
	guint n = stores->numbers->len;

	ck_assert_int_eq(number("bellows", "RB-1", NULL, "RB-3"), ERR_CONFLICT);
	ck_assert_int_eq(number("bellows", "RB-1", NULL, "RB-1"), ERR_CONFLICT);
	ck_assert_int_eq(number("bellows", "RB-4", NULL, "RB-2"), ERR_CONFLICT);
	ck_assert_int_eq(number("bellows", "RB-4", NULL, "RB-9"), ERR_NOT_FOUND);
	ck_assert_uint_eq(stores->numbers->len, n);
	for (guint i = 0; i < n; i++)
		ck_assert(stores_check_chain(stores, &g_array_index(stores->numbers, struct number, i), NULL));
}
END_TEST

START_TEST(rubber_ages_from_the_day_it_was_made)
{
	struct lot_age age;
	const struct lot *l;

	lot("bellows", STOCK_ONE, "2026-06-01", "2022-11-25");
	l = stores_lot(stores, 0);
	lot_age(item("bellows"), l, day("2026-11-25"), &age);
	ck_assert(age.matters && !age.at_least && !age.stale);
	ck_assert_int_eq(age.months, 48);
	lot_age(item("bellows"), l, day("2026-11-25") + 1, &age);
	ck_assert(age.stale);
	ck_assert_int_eq(stores_on_hand(stores, item("bellows"), day("2026-11-25")), STOCK_ONE);
	ck_assert_int_eq(stores_on_hand(stores, item("bellows"), day("2026-11-25") + 1), 0);
	ck_assert_int_eq(there("bellows"), STOCK_ONE);
	/* What is no rubber lies as long as one likes. */
	lot("hose", STOCK_ONE, "2026-06-01", "1990-01-01");
	for (guint i = 0; stores_lot(stores, i); i++)
		if (stores_lot(stores, i)->item == item("hose")->id)
			lot_age(item("hose"), stores_lot(stores, i), who.today, &age);
	ck_assert(!age.matters && !age.stale);
}
END_TEST

START_TEST(an_unknown_date_made_is_said_and_counts_from_when_it_came)
{
	g_autofree char *words = NULL;
	struct lot_age age;

	lot("bellows", STOCK_ONE, "2026-06-25", NULL);
	lot_age(item("bellows"), stores_lot(stores, 0), who.today, &age);
	ck_assert(age.at_least && !age.stale);
	ck_assert_int_eq(age.months, 5);
	words = lot_age_words(item("bellows"), stores_lot(stores, 0), who.today);
	ck_assert_ptr_nonnull(strstr(words, "nobody knows when it was made"));
}
END_TEST

START_TEST(a_boat_gets_the_oldest_that_is_fresh_and_what_is_lost_was_too_old)
{
	lot("bellows", 2 * STOCK_ONE, "2026-06-01", "2020-01-01"); /* too old */
	lot("bellows", 2 * STOCK_ONE, "2026-06-02", "2026-05-01");
	lot("bellows", 2 * STOCK_ONE, "2026-06-03", "2025-05-01");
	ck_assert_int_eq(take("bellows", 3 * STOCK_ONE, "2026-11-20", boat.id, FALSE), -1);
	for (guint i = 0; stores_lot(stores, i); i++) {
		const struct lot *l = stores_lot(stores, i);
		gint64 left = l->made == day("2020-01-01") ? 2 : l->made == day("2025-05-01") ? 0 : 1;

		ck_assert_int_eq(stores_left(stores, i), left * STOCK_ONE);
	}
	/* One is fresh: two would take an old one, which nobody does without a yes. */
	ck_assert_int_eq(take("bellows", 2 * STOCK_ONE, "2026-11-20", boat.id, FALSE), ERR_DOUBT);
	ck_assert_int_eq(there("bellows"), 3 * STOCK_ONE);
	ck_assert_int_eq(take("bellows", 2 * STOCK_ONE, "2026-11-20", NONE, FALSE), -1);
	ck_assert_int_eq(stores_on_hand(stores, item("bellows"), who.today), STOCK_ONE);
	ck_assert_int_eq(there("bellows"), STOCK_ONE);
}
END_TEST

START_TEST(nothing_is_taken_before_it_came_and_nothing_falls_below_zero)
{
	lot("hose", 2500, "2026-11-10", NULL);
	ck_assert_int_eq(take("hose", STOCK_ONE, "2026-11-09", boat.id, FALSE), ERR_DOUBT);
	ck_assert_int_eq(take("hose", 2501, "2026-11-10", boat.id, FALSE), ERR_DOUBT);
	ck_assert_int_eq(take("hose", STOCK_ONE, "2026-11-26", boat.id, TRUE), ERR_INPUT);
	ck_assert_int_eq(take("hose", 0, "2026-11-10", boat.id, TRUE), ERR_INPUT);
	ck_assert_int_eq(there("hose"), 2500);
	ck_assert_int_eq(take("hose", 2750, "2026-11-10", boat.id, TRUE), -1);
	ck_assert_int_eq(there("hose"), 0);
	for (guint i = 0; stores_lot(stores, i); i++)
		ck_assert_int_ge(stores_left(stores, i), 0);
}
END_TEST

static int
put_back_on(const char *on, const char *of, gint64 quantity, gint64 of_boat)
{
	struct store_take t = { item(of)->id, quantity, day(on), of_boat, NONE, NONE, NULL, FALSE };
	GError *err = NULL;
	int code = code_of(book_put_back(book, &t, &err), &err);

	look_again();
	return code;
}

static int
put_back(const char *of, gint64 quantity, gint64 of_boat)
{
	return put_back_on("today", of, quantity, of_boat);
}

START_TEST(as_much_is_put_back_as_was_taken)
{
	lot("hose", 3000, "2026-11-10", NULL);
	take("hose", 1500, "2026-11-11", boat.id, FALSE);
	take("hose", 500, "2026-11-11", NONE, FALSE);
	ck_assert_int_eq(put_back("hose", 1501, boat.id), ERR_CONFLICT);
	ck_assert_int_eq(there("hose"), 1000);
	ck_assert_int_eq(put_back("hose", 750, boat.id), -1);
	ck_assert_int_eq(put_back("hose", 500, NONE), -1);
	ck_assert_int_eq(there("hose"), 2250);
	ck_assert_int_eq(put_back("hose", 751, boat.id), ERR_CONFLICT);
}
END_TEST

START_TEST(nothing_is_put_back_before_it_was_taken_nor_twice)
{
	lot("hose", 3000, "2026-11-10", NULL);
	take("hose", 1000, "2026-11-12", boat.id, FALSE);
	take("hose", 1000, "2026-11-15", boat.id, FALSE);
	ck_assert_int_eq(put_back_on("2020-01-01", "hose", 1000, boat.id), ERR_CONFLICT);
	ck_assert_int_eq(put_back_on("2026-11-11", "hose", 1000, boat.id), ERR_CONFLICT);
	ck_assert_int_eq(put_back_on("2026-11-14", "hose", 1001, boat.id), ERR_CONFLICT);
	ck_assert_int_eq(put_back_on("2026-11-20", "hose", 1500, boat.id), -1);
	/* Of the first one half is out still, whichever day is named. */
	ck_assert_int_eq(put_back_on("2026-11-13", "hose", 501, boat.id), ERR_CONFLICT);
	ck_assert_int_eq(put_back_on("2026-11-13", "hose", 500, boat.id), -1);
	ck_assert_int_eq(there("hose"), 3000);
}
END_TEST

/* What a count that day finds more than on record; the code of the error in *code. */
static gint64
count(gint64 quantity, const char *on, int *code)
{
	struct store_count c = { quantity, day(on), NULL, 0 };
	GError *err = NULL;

	*code = code_of(book_counted(book, item("hose"), &c, &err), &err);
	look_again();
	return c.more;
}

START_TEST(a_count_is_held_against_what_was_there_that_day)
{
	int code;

	lot("hose", 5000, "2026-11-01", NULL);
	take("hose", 1000, "2026-11-20", boat.id, FALSE);
	ck_assert_int_eq(count(5000, "2026-11-10", &code), 0);
	ck_assert_int_eq(code, -1);
	ck_assert_int_eq(there("hose"), 4000);
	ck_assert_int_eq(count(4500, "2026-11-10", &code), -500);
	ck_assert_int_eq(there("hose"), 3500);
	ck_assert_int_eq(count(3750, "2026-11-25", &code), 250);
	ck_assert_int_eq(there("hose"), 3750);
	/* 4.5 were there, and 1 was taken later: 0.5 can't have been all. */
	count(500, "2026-11-10", &code);
	ck_assert_int_eq(code, ERR_CONFLICT);
	ck_assert_int_eq(there("hose"), 3750);
}
END_TEST

START_TEST(a_quantity_is_counted_exactly_or_refused)
{
	static const struct { const char *text; gint64 is; } ok[] = {
		{ "0", 0 }, { "0.1", 100 }, { "0,75", 750 }, { "1000000", STOCK_MOST },
	};
	static const char *const bad[] = { "", "-1", "1.2345", "1000001", "2 m", "nan", "1e9" };
	char buf[STOCK_TEXT];
	gint64 n;

	for (guint i = 0; i < G_N_ELEMENTS(ok); i++) {
		ck_assert(stock_parse(ok[i].text, &n, NULL));
		ck_assert_int_eq(n, ok[i].is);
		ck_assert(stock_parse(stock_text(n, buf), &n, NULL));
		ck_assert_int_eq(n, ok[i].is);
	}
	for (guint i = 0; i < G_N_ELEMENTS(bad); i++)
		ck_assert_msg(!stock_parse(bad[i], &n, NULL), "%s is taken", bad[i]);
	/* Ten tenths are one. */
	lot("hose", STOCK_ONE, "2026-11-01", NULL);
	for (int i = 0; i < 10; i++)
		ck_assert_int_eq(take("hose", 100, "2026-11-02", boat.id, FALSE), -1);
	ck_assert_int_eq(there("hose"), 0);
}
END_TEST

static int
priced(const char *of, gint64 cents)
{
	GError *err = NULL;
	struct lot l;
	int code;

	record_init(RECORD_LOT, &l);
	l.quantity = 1;
	l.arrived = who.today;
	l.price = cents;
	code = code_of(book_put_lot(book, item(of), &l, &err), &err);
	record_clear(RECORD_LOT, &l);
	return code;
}

START_TEST(a_lot_that_can_not_be_is_refused_and_leaves_nothing)
{
	ck_assert_int_eq(lot("hose", 0, "2026-11-01", NULL), ERR_INPUT);
	ck_assert_int_eq(lot("hose", STOCK_ONE, "2026-11-26", NULL), ERR_INPUT);
	ck_assert_int_eq(lot("hose", STOCK_ONE, "2026-11-01", "2026-11-02"), ERR_INPUT);
	ck_assert_int_eq(priced("hose", -1), ERR_INPUT);
	ck_assert_ptr_null(stores_lot(stores, 0));
}
END_TEST

int
main(void)
{
	TCase *all = tcase_create("stores");
	Suite *suite = suite_create("stores");

	tcase_add_checked_fixture(all, begin, end);
	tcase_add_test(all, an_item_is_found_by_any_of_its_numbers_as_typed);
	tcase_add_test(all, a_number_that_can_be_two_items_is_asked_about);
	tcase_add_test(all, numbers_never_replace_each_other_in_a_circle);
	tcase_add_test(all, rubber_ages_from_the_day_it_was_made);
	tcase_add_test(all, an_unknown_date_made_is_said_and_counts_from_when_it_came);
	tcase_add_test(all, a_boat_gets_the_oldest_that_is_fresh_and_what_is_lost_was_too_old);
	tcase_add_test(all, nothing_is_taken_before_it_came_and_nothing_falls_below_zero);
	tcase_add_test(all, as_much_is_put_back_as_was_taken);
	tcase_add_test(all, nothing_is_put_back_before_it_was_taken_nor_twice);
	tcase_add_test(all, a_count_is_held_against_what_was_there_that_day);
	tcase_add_test(all, a_quantity_is_counted_exactly_or_refused);
	tcase_add_test(all, a_lot_that_can_not_be_is_refused_and_leaves_nothing);
	suite_add_tcase(suite, all);
	return run_suite(suite);
}
