/* Money: how a lot's price is shared out, and what a year, a season and an engine hour cost. */
#include "logbook/service.h"
#include "logbook/stores_cost.h"

#include "stores_open.h"

static void
begin(void)
{
	setup();
	open_plain("Tern");
	import_text(RECORD_FITTING, "path,title\nengine,Engine\nhull,Hull\n");
	import_text(RECORD_ITEM, "what,unit\nplug,\nhose,m\n");
}

static void
take(const char *what, gint64 quantity, const char *on, gint64 for_boat)
{
	const struct store_take t = { item_key(what), quantity, day(on), for_boat, NONE, NONE, NULL, FALSE };
	g_autoptr(GArray) taken = NULL;
	g_autoptr(GError) err = NULL;

	ck_assert_msg(book_took(book, &t, &taken, &err), "%s", err ? err->message : "?");
}

/* "334 333 333": the shares in the order of the takings. */
static char *
shares(void)
{
	struct stores *s = book_stores(book, NULL);
	g_autoptr(GArray) all = stores_shares(s);
	GString *out = g_string_new(NULL);

	for (guint i = 0; i < all->len; i++) {
		gint64 cents = g_array_index(all, gint64, i);

		g_string_append_printf(out, "%s", i ? " " : "");
		if (cents == NONE)
			g_string_append(out, "none");
		else
			g_string_append_printf(out, "%" G_GINT64_FORMAT, cents);
	}
	stores_free(s);
	return g_string_free(out, FALSE);
}

static gint64
task_key(const char *name)
{
	struct task t;
	gint64 id;

	ck_assert(book_find_task(book, boat.id, name, &t, NULL));
	id = t.id;
	record_clear(RECORD_TASK, &t);
	return id;
}

static const struct {
	const char *quantity, *price;
	gint64 each[5]; /* thousandths, up to 0 */
	const char *shares;
} shared[] = {
	{ "3", "10.00", { 1000, 1000, 1000 }, "334 333 333" },
	{ "3", "10.01", { 1000, 1000, 1000 }, "334 334 333" },
	{ "3", "10.00", { 1000, 1000 }, "334 333" }, /* what is left is served last among equals */
	{ "3", "0.02", { 1000, 1000, 1000 }, "1 1 0" },
	{ "7", "1.00", { 2000, 5000 }, "29 71" }, /* 28.57 and 71.43 */
	{ "2.5", "10.01", { 1, 2499 }, "0 1001" }, /* 0.4 and 1000.6 */
	{ "1", "0.00", { 1000 }, "0" },
	{ "1000000", "10000000000.00", { 1, 999999999 }, "1000 999999999000" },
	{ "3", "", { 1000, 1000 }, "none none" },
};

START_TEST(the_odd_cents_go_to_the_largest_remainder)
{
	g_autofree char *more = g_strdup_printf(",,,2026-06-01,%s,%s", shared[_i].price, *shared[_i].price ? "EUR" : "");
	g_autofree char *got = NULL;

	add_lot("hose", shared[_i].quantity, more);
	for (int k = 0; shared[_i].each[k]; k++)
		take("hose", shared[_i].each[k], "2026-06-02", boat.id);
	got = shares();
	ck_assert_str_eq(got, shared[_i].shares);
}
END_TEST

/* The line of a year and currency; NULL: none. */
static const struct cost_line *
line(const struct costs *c, int year, const char *currency)
{
	for (guint i = 0; costs_line(c, i); i++)
		if (costs_line(c, i)->year == year && !strcmp(costs_line(c, i)->currency, currency))
			return costs_line(c, i);
	return NULL;
}

static struct costs
costs_by(enum cost_by by)
{
	g_autoptr(GError) err = NULL;
	struct costs c;

	ck_assert_msg(book_costs(book, &boat, by, NONE, &c, &err), "%s", err ? err->message : "?");
	return c;
}

START_TEST(a_season_ends_with_its_haul_out)
{
	struct costs c;

	import_text(RECORD_SEASON, "launch,haul-out\n2026-04-20,2026-10-01\n");
	add_lot("plug", "3", ",,,2026-01-01,9.00,EUR");
	take("plug", 1000, "2026-10-01", boat.id); /* the day itself is of the season */
	take("plug", 2000, "2026-10-02", boat.id);
	c = costs_by(COST_SEASON);
	ck_assert_int_eq(line(&c, 2026, "EUR")->parts, 300);
	ck_assert_int_eq(line(&c, 2027, "EUR")->parts, 600);
	costs_clear(&c);
	c = costs_by(COST_YEAR);
	ck_assert_int_eq(line(&c, 2026, "EUR")->parts, 900);
	ck_assert_ptr_null(line(&c, 2027, "EUR"));
	costs_clear(&c);
}
END_TEST

START_TEST(currencies_stand_by_themselves)
{
	struct costs c;

	add_lot("plug", "1", ",,,2026-06-01,1.00,EUR");
	add_lot("plug", "1", ",,,2026-06-02,2.00,USD");
	add_lot("plug", "1", ",,,2026-06-03,4.00,");
	add_lot("plug", "1", ",,,2026-06-04,,");
	take("plug", 4000, "2026-06-05", boat.id);
	c = costs_by(COST_SEASON);
	ck_assert_uint_eq(c.lines->len, 3);
	ck_assert_int_eq(line(&c, 2026, "EUR")->parts, 100);
	ck_assert_int_eq(line(&c, 2026, "USD")->parts, 200);
	ck_assert_int_eq(line(&c, 2026, "")->parts, 400);
	ck_assert_int_eq(c.unknown, 1);
	costs_clear(&c);
}
END_TEST

START_TEST(what_is_lost_or_of_another_boat_is_in_no_sum)
{
	gint64 ours = boat.id;
	struct costs c;

	add_lot("plug", "3", ",,,2026-06-01,9.00,EUR");
	open_plain("Other");
	take("plug", 1000, "2026-06-02", boat.id);
	take("plug", 1000, "2026-06-02", NONE);
	ck_assert_int_ne(boat.id, ours);
	c = costs_by(COST_SEASON);
	ck_assert_int_eq(line(&c, 2026, "EUR")->parts, 300);
	ck_assert_int_eq(line(&c, 2026, "EUR")->lost, 300);
	costs_clear(&c);
	record_clear(RECORD_BOAT, &boat);
	ck_assert(book_boat(book, "Tern", &boat, NULL));
	c = costs_by(COST_SEASON);
	ck_assert_int_eq(line(&c, 2026, "EUR")->parts, 0);
	costs_clear(&c);
}
END_TEST

START_TEST(an_hour_costs_what_the_season_does_by_its_hours)
{
	static const struct { gint64 cents, seconds, hour; } cases[] = {
		{ 1000, 3 * H, 333 }, { 1001, 2 * H, 501 }, { 1, 2 * H, 1 }, { 1, 2 * H + 1, 0 },
		{ -1001, 2 * H, -500 }, { -1, 3 * H, 0 }, { -2, 3 * H, -1 }, { 500, 0, NONE }, { 150, H / 2, 300 },
	};

	for (guint i = 0; i < G_N_ELEMENTS(cases); i++) {
		const struct cost_line l = { .parts = cases[i].cents, .hours = cases[i].seconds };

		ck_assert_int_eq(cost_an_hour(&l), cases[i].hour);
	}
}
END_TEST

START_TEST(what_is_put_back_comes_off_what_it_was_for)
{
	struct store_take back = { item_key("plug"), 1000, who.today, boat.id, NONE, NONE, NULL, FALSE };
	struct service_form f = { 0 };
	struct service_said said;
	struct store_use use = { item_key("plug"), 2000 };
	g_autoptr(GError) err = NULL;
	struct costs c;

	add_due("renew", "out", "costs", 12, "2024-06-01");
	add_lot("plug", "4", ",,,2026-06-01,8.00,EUR");
	record_init(RECORD_SERVICE, &f.what);
	record_init(RECORD_PART, &f.part);
	f.what.task = task_key("renew");
	f.what.date = day("2026-06-10");
	f.used = &use;
	f.n_used = 1;
	ck_assert_msg(book_did(book, &f, &said, &err), "%s", err ? err->message : "?");
	ck_assert_msg(book_put_back(book, &back, &err), "%s", err ? err->message : "?");
	c = costs_by(COST_FITTING);
	ck_assert_uint_eq(c.lines->len, 1);
	ck_assert_int_ne(costs_line(&c, 0)->fitting, NONE);
	ck_assert_int_eq(costs_line(&c, 0)->parts, 200);
	costs_clear(&c);
	service_said_clear(&said);
	record_clear(RECORD_SERVICE, &f.what);
	record_clear(RECORD_PART, &f.part);
}
END_TEST

int
main(void)
{
	TCase *all = tcase_create("costs");
	Suite *suite = suite_create("stores_cost");

	tcase_add_checked_fixture(all, begin, teardown);
	tcase_add_loop_test(all, the_odd_cents_go_to_the_largest_remainder, 0, G_N_ELEMENTS(shared));
	tcase_add_test(all, a_season_ends_with_its_haul_out);
	tcase_add_test(all, currencies_stand_by_themselves);
	tcase_add_test(all, what_is_lost_or_of_another_boat_is_in_no_sum);
	tcase_add_test(all, an_hour_costs_what_the_season_does_by_its_hours);
	tcase_add_test(all, what_is_put_back_comes_off_what_it_was_for);
	suite_add_tcase(suite, all);
	return run_suite(suite);
}
