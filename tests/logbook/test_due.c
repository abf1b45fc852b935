#include "logbook/due.h"

#include "base/err.h"
#include "logbook/why.h"
#include "open.h"

#include <math.h>

static const struct { struct limit limit; const char *words; } limit_texts[] = {
	{ { .salt = NONE, .salt_hours = NONE, .kind = LIMIT_HOURS, .hours = 100 * H, .amount = NONE }, "100 h" },
	{ { .salt = NONE, .salt_hours = NONE, .kind = LIMIT_HOURS, .hours = 9000, .amount = NONE }, "2.5 h" },
	{ { .salt = NONE, .salt_hours = NONE, .kind = LIMIT_MONTHS, .amount = 1 }, "1 month" },
	{ { .salt = NONE, .salt_hours = NONE, .kind = LIMIT_MONTHS, .amount = 12 }, "12 months" },
	{ { .salt = NONE, .salt_hours = NONE, .kind = LIMIT_MONTHS, .amount = 18 }, "18 months" },
	{ { .salt = NONE, .salt_hours = NONE, .kind = LIMIT_MONTHS, .amount = 60 }, "5 years" },
	{ { .kind = LIMIT_MONTHS, .amount = 12, .salt = 6, .salt_hours = NONE }, "12 months, 6 months in salt water" },
	{ { .kind = LIMIT_HOURS, .hours = 100 * H, .salt = NONE, .salt_hours = 50 * H }, "100 h, 50 h in salt water" },
	{ { .salt = NONE, .salt_hours = NONE, .kind = LIMIT_OUTINGS, .amount = 1 }, "each outing" },
	{ { .salt = NONE, .salt_hours = NONE, .kind = LIMIT_OUTINGS, .amount = 3 }, "3 outings" },
	{ { .salt = NONE, .salt_hours = NONE, .kind = LIMIT_SEASONS, .amount = 1 }, "each season" },
	{ { .salt = NONE, .salt_hours = NONE, .kind = LIMIT_SEASONS, .amount = 2 }, "2 seasons" },
	{ { .salt = NONE, .salt_hours = NONE, .kind = LIMIT_EVENT, .event = EVENT_HAUL_OUT }, "each haul-out" },
	{ { .salt = NONE, .salt_hours = NONE, .kind = LIMIT_HAPPENING, .happening = HAPPENED_DRY_RUN }, "after dry-run" },
	{ { .salt = NONE, .salt_hours = NONE, .kind = LIMIT_FIRST_HOURS, .hours = 20 * H }, "first at 20 h" },
	{ { .salt = NONE, .salt_hours = NONE, .kind = LIMIT_CONDITION }, "on condition" },
};

START_TEST(a_limit_is_told_in_words)
{
	g_autofree char *words = limit_words(&limit_texts[_i].limit);

	ck_assert_str_eq(words, limit_texts[_i].words);
}
END_TEST

static const struct { enum standing standing; const char *source, *words; } sources[] = {
	{ STANDING_MANUAL, "manual p. 41", "manual p. 41" },
	{ STANDING_MANUAL, "engine handbook, p. 12", "manual: engine handbook, p. 12" },
	{ STANDING_PUBLISHED, "published: a study", "published: a study" },
	{ STANDING_PRACTICE, "common practice, no source", "common practice, no source" },
	{ STANDING_OWNER, "own rule", "owner: own rule" },
	{ STANDING_MEMORY, "memory, not checked", "memory, not checked" },
	{ STANDING_ASSUMPTION, "a guess", "assumption: a guess" },
};

START_TEST(a_limit_names_where_it_comes_from)
{
	struct limit m = { .standing = sources[_i].standing, .source = (char *)(guintptr)sources[_i].source };
	g_autofree char *words = limit_source(&m);

	ck_assert_str_eq(words, sources[_i].words);
}
END_TEST

static void
check_terms(struct due_list *l, const struct due_line *d)
{
	g_autoptr(GArray) terms = due_terms(l, d);
	gint64 days = 0, elapsed = d->in.since.day == NONE ? 0 : MAX(due_year(l)->at - d->in.since.day, 0);
	double rated = 0;

	for (guint i = 0; i < terms->len; i++) {
		const struct due_term *t = &((const struct due_term *)(const void *)terms->data)[i];

		ck_assert_int_gt(t->days, 0);
		ck_assert_double_ge(t->effective, 0);
		ck_assert_double_le(t->coldest, t->warmest);
		days += t->days;
		rated += t->effective;
	}
	ck_assert_msg(days == elapsed, "%s: terms of %d days, %d have gone by", d->name, (int)days, (int)elapsed);
	for (int i = 0; i < d->in.n_limits; i++)
		if (d->limit[i].kind == LIMIT_MONTHS && !isnan(d->used[i].share) && d->in.rule != CLOCK_PRINTED) {
			double counted = fmax(rated, (double)days);	/* slow wear stretches nothing */

			ck_assert_msg(d->limit[i].salt != NONE || fabs(counted - d->used[i].rated) < 1e-3,
				      "%s: terms of %f rated days, not %f", d->name, counted, d->used[i].rated);
			ck_assert_msg(fabs((double)days - d->used[i].raw) < 1e-9, "%s", d->name);
		}
}

START_TEST(the_terms_add_up_to_the_days_gone_by)
{
	static const int days[][3] = { { 2026, 11, 25 }, { 2027, 4, 15 }, { 2026, 7, 1 }, { 2023, 8, 12 }, { 2031, 1, 1 } };
	struct due_ask ask = { day_from_ymd(days[_i][0], days[_i][1], days[_i][2]), NONE };
	struct due_list *l = due_list_new();
	g_autoptr(GError) err = NULL;
	int known = 0;

	open_demo();
	ck_assert_msg(book_due(book, &boat, &ask, l, &err), "%s", err ? err->message : "?");
	ck_assert_int_gt(due_count(l), 80);
	for (int i = 0; i < due_count(l); i++) {
		const struct due_line *d = due_at(l, i);

		ck_assert_ptr_eq(due_find(l, d->id), d);
		known += d->in.since.day != NONE;
		check_terms(l, d);
	}
	ck_assert_int_gt(known, 50);
	due_list_free(l);
}
END_TEST

/* The list is used anew for boat after boat. */
START_TEST(a_list_used_again_keeps_nothing)
{
	struct due_ask ask = { who.today, NONE };
	struct due_list *l = due_list_new(), *fresh = due_list_new();
	struct boat heron;
	int n;

	open_demo();
	heron = boat;
	record_init(RECORD_BOAT, &boat);
	open_plain("Two");
	ck_assert(book_due(book, &heron, &ask, l, NULL));
	n = due_count(l);
	ck_assert(book_due(book, &boat, &ask, l, NULL));
	ck_assert_int_eq(due_count(l), 0);
	ck_assert(book_due(book, &heron, &ask, l, NULL));
	ck_assert(book_due(book, &heron, &ask, fresh, NULL));
	ck_assert_int_eq(due_count(l), n);
	for (int i = 0; i < n; i++) {
		ck_assert_str_eq(due_at(l, i)->name, due_at(fresh, i)->name);
		ck_assert_int_eq(due_at(l, i)->out.due, due_at(fresh, i)->out.due);
	}
	due_list_free(l);
	due_list_free(fresh);
	record_clear(RECORD_BOAT, &heron);
}
END_TEST

/* Grave before light, and what hides behind the same disassembly stands together. */
START_TEST(the_list_is_in_its_order)
{
	struct due_ask ask = { day_from_ymd(2027, 4, 15), NONE };
	struct due_list *l = due_list_new();

	open_demo();
	ck_assert(book_due(book, &boat, &ask, l, NULL));
	for (int i = 1; i < due_count(l); i++) {
		const struct due_line *a = due_at(l, i - 1), *b = due_at(l, i);

		ck_assert_int_le(a->out.when, b->out.when);
		if (a->out.when != b->out.when)
			continue;
		if (!g_strcmp0(a->off, b->off) || a->out.when == OPP_NO_RECORD)
			ck_assert_msg(a->in.consequence <= b->in.consequence, "%s before %s", a->name, b->name);
		if (a->out.when == OPP_NO_RECORD || !g_strcmp0(a->off, b->off))
			continue;
		for (int k = i + 1; k < due_count(l) && due_at(l, k)->out.when == a->out.when; k++)
			ck_assert_msg(g_strcmp0(due_at(l, k)->off, a->off), "%s stands apart", due_at(l, k)->name);
	}
	due_list_free(l);
}
END_TEST

START_TEST(a_day_can_be_an_event)
{
	static const struct { const char *text; int y, m, d; } days[] = {
		{ "launch", 2027, 4, 15 },   { "first-day", 2027, 4, 15 },  { "haul-out", 2027, 10, 10 },
		{ "lay-up", 2027, 10, 10 },  { "mid-season", 2027, 7, 13 }, { "2027-02-28", 2027, 2, 28 },
		{ "tomorrow", 2026, 11, 26 }, { "+2w", 2026, 12, 9 },	    { "Launch", 2027, 4, 15 },
	};
	g_autoptr(GError) err = NULL;
	gint64 day;

	open_demo();
	for (guint i = 0; i < G_N_ELEMENTS(days); i++) {
		ck_assert_msg(book_day(book, &boat, days[i].text, &day, &err), "%s", err ? err->message : "?");
		ck_assert_msg(day == day_from_ymd(days[i].y, days[i].m, days[i].d), "%s", days[i].text);
	}
	ck_assert(!book_day(book, &boat, "spring", &day, &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_INPUT));
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("The due list");
	TCase *words = tcase_create("words"), *lists = tcase_create("lists");

	tcase_add_loop_test(words, a_limit_is_told_in_words, 0, G_N_ELEMENTS(limit_texts));
	tcase_add_loop_test(words, a_limit_names_where_it_comes_from, 0, G_N_ELEMENTS(sources));
	tcase_add_checked_fixture(lists, setup, teardown);
	tcase_add_loop_test(lists, the_terms_add_up_to_the_days_gone_by, 0, 5);
	tcase_add_test(lists, a_list_used_again_keeps_nothing);
	tcase_add_test(lists, the_list_is_in_its_order);
	tcase_add_test(lists, a_day_can_be_an_event);
	suite_add_tcase(suite, words);
	suite_add_tcase(suite, lists);
	return run_suite(suite);
}
