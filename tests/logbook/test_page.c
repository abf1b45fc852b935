#include "logbook/page.h"

#include "logbook/outing.h"
#include "open.h"

static const struct outing *
row(const GArray *rows, guint i)
{
	return &((const struct outing *)(const void *)rows->data)[i];
}

static GArray *
page(gint64 date, gint64 id, int newer, int older)
{
	return book_outings_page(book, &(struct outings_page) { boat.id, date, id, newer, older }, NULL);
}

START_TEST(pages_are_the_log_and_newest_first)
{
	g_autoptr(GArray) all = NULL, newest = NULL, around = NULL, oldest = NULL;
	guint n, at;

	open_demo();
	all = book_records(book, RECORD_OUTING, boat.id, NULL);	/* oldest first */
	n = all->len;
	newest = page(NONE, NONE, 0, 10);
	ck_assert_uint_eq(newest->len, 10);
	for (guint i = 0; i < 10; i++)
		ck_assert(row(newest, i)->id == row(all, n - 1 - i)->id);
	at = n / 2;
	around = page(row(all, at)->date, row(all, at)->id, 5, 5);
	ck_assert_uint_eq(around->len, 10);
	for (guint i = 0; i < 10; i++)
		ck_assert(row(around, i)->id == row(all, at + 5 - i)->id);
	oldest = page(DAY_FIRST, 0, 3, 0);
	ck_assert_uint_eq(oldest->len, 3);
	for (guint i = 0; i < 3; i++)
		ck_assert(row(oldest, i)->id == row(all, 2 - i)->id);
}
END_TEST

START_TEST(pages_end_where_the_log_does)
{
	g_autoptr(GArray) none = NULL;

	open_plain("Heron");
	none = page(NONE, NONE, 10, 10);
	ck_assert_uint_eq(none->len, 0);
}
END_TEST

START_TEST(months_sum_up_to_the_whole_log)
{
	g_autoptr(GArray) all = NULL, months = NULL;
	gint64 seconds = 0;
	int outings = 0;

	open_demo();
	all = book_records(book, RECORD_OUTING, boat.id, NULL);
	months = book_hours_by_month(book, boat.id, NULL);
	for (guint i = 0; i < all->len; i++) {
		seconds += row(all, i)->hours;
		outings += row(all, i)->trip == NONE;
	}
	for (guint i = 0; i < months->len; i++) {
		const struct month_sum *m = &((const struct month_sum *)(const void *)months->data)[i];

		seconds -= m->seconds;
		outings -= m->outings;
		ck_assert(i == 0 || m[-1].year * 12 + m[-1].month < m->year * 12 + m->month);
	}
	ck_assert_int_eq(seconds, 0);
	ck_assert_int_eq(outings, 0);
}
END_TEST

static void
log_share(gint64 hours, gint64 reading)
{
	struct outing_form f = { .boat = boat.id, .instead_of = NONE, .n_shares = 1, .share = { { NULL, hours, reading } } };
	struct outing_said said = { 0 };
	g_autoptr(GError) err = NULL;

	record_init(RECORD_OUTING, &f.what);
	f.what.date = who.today;
	ck_assert_msg(book_outing(book, &f, &said, &err), "%s", err ? err->message : "?");
	outing_said_clear(&said);
}

START_TEST(the_meter_shows_its_last_reading_and_what_was_typed_since)
{
	g_autoptr(GArray) engines = NULL;
	gint64 shows;

	open_plain("Heron");
	engines = book_records(book, RECORD_ENGINE, boat.id, NULL);
	ck_assert(book_meter_shows(book, (const void *)engines->data, who.today, &shows, NULL));
	ck_assert_int_eq(shows, 100 * H);
	log_share(H, NONE);	/* on the day on which it was fitted */
	ck_assert(book_meter_shows(book, (const void *)engines->data, who.today, &shows, NULL));
	ck_assert_int_eq(shows, 101 * H);
	log_share(NONE, 102 * H);
	ck_assert(book_meter_shows(book, (const void *)engines->data, who.today, &shows, NULL));
	ck_assert_int_eq(shows, 102 * H);
	log_share(H / 2, NONE);
	ck_assert(book_meter_shows(book, (const void *)engines->data, who.today, &shows, NULL));
	ck_assert_int_eq(shows, 102 * H + H / 2);
	ck_assert(book_meter_shows(book, (const void *)engines->data, day_from_ymd(2020, 1, 1), &shows, NULL));
	ck_assert_int_eq(shows, NONE);	/* no meter yet */
}
END_TEST

START_TEST(an_outing_says_nothing_of_what_was_before_it)
{
	g_autoptr(GArray) engines = NULL, all = NULL;
	const struct engine *e;
	gint64 shows;

	open_plain("Heron");
	engines = book_records(book, RECORD_ENGINE, boat.id, NULL);
	e = (const void *)engines->data;
	log_share(NONE, 102 * H);
	log_share(NONE, 105 * H);
	log_share(H, NONE);
	all = book_records(book, RECORD_OUTING, boat.id, NULL);
	ck_assert(book_meter_before(book, e, who.today, row(all, 1)->id, &shows, NULL));
	ck_assert_int_eq(shows, 103 * H);
	ck_assert(book_meter_before(book, e, who.today, row(all, 2)->id, &shows, NULL));
	ck_assert_int_eq(shows, 105 * H);
	ck_assert(book_meter_before(book, e, who.today, NONE, &shows, NULL));
	ck_assert_int_eq(shows, 106 * H);
}
END_TEST

START_TEST(another_copy_s_change_is_noticed)
{
	g_autoptr(GError) err = NULL;
	struct book_entry entry;
	struct book *other;
	gint64 version;

	open_plain("Heron");
	version = book_version(book);
	ck_assert_int_eq(book_version(book), version);
	other = book_open(path, BOOK_WRITE, &who, &err);
	ck_assert_msg(other != NULL, "%s", err ? err->message : "?");
	ck_assert(book_undo(other, &entry, &err));
	book_entry_clear(&entry);
	book_close(other);
	ck_assert_int_ne(book_version(book), version);
}
END_TEST

START_TEST(an_entry_bears_the_time_of_its_making)
{
	g_autoptr(GArray) all = NULL;
	g_autofree char *time = NULL;

	open_plain("Heron");
	book_clock(book, who.now + 86400, who.today + 1);
	ck_assert_int_eq(book_today(book), who.today + 1);
	log_share(H, NONE);
	all = book_history(book, 1, NULL);
	ck_assert_int_eq(((const struct book_entry *)(const void *)all->data)->at, who.now + 86400);
	time = book_entry_time((const void *)all->data);
	ck_assert_str_eq(time, "2026-11-26 09:46");
}
END_TEST

START_TEST(a_record_is_found_by_its_key)
{
	struct boat found;

	open_plain("Heron");
	ck_assert(book_record(book, RECORD_BOAT, boat.id, &found, NULL));
	ck_assert_str_eq(found.name, "Heron");
	record_clear(RECORD_BOAT, &found);
	ck_assert(!book_record(book, RECORD_BOAT, 1, &found, NULL));
	record_clear(RECORD_BOAT, &found);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("What screens ask of a logbook that stays open");
	TCase *tc = tcase_create("pages");

	tcase_add_checked_fixture(tc, setup, teardown);
	tcase_add_test(tc, pages_are_the_log_and_newest_first);
	tcase_add_test(tc, pages_end_where_the_log_does);
	tcase_add_test(tc, months_sum_up_to_the_whole_log);
	tcase_add_test(tc, the_meter_shows_its_last_reading_and_what_was_typed_since);
	tcase_add_test(tc, an_outing_says_nothing_of_what_was_before_it);
	tcase_add_test(tc, another_copy_s_change_is_noticed);
	tcase_add_test(tc, an_entry_bears_the_time_of_its_making);
	tcase_add_test(tc, a_record_is_found_by_its_key);
	suite_add_tcase(s, tc);
	return run_suite(s);
}
