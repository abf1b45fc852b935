#include "model/meter.h"

#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { H = 3600, MOST = 40, TURNS = 2000 };

/* The seed is printed; SEED=number repeats a run. */
static GRand *
seeded(const char *what)
{
	const char *given = g_getenv("SEED");
	guint32 seed = given ? (guint32)strtoul(given, NULL, 10) : g_random_int();

	printf("%s: SEED=%u\n", what, seed);
	fflush(stdout);
	return g_rand_new_with_seed(seed);
}

#define R(day, reading) { 0, day, 0, (reading) * H }
#define T(day, hours) { 0, day, (hours) * H, NONE }

/* Rows, and the hours of each that follow; a meter that starts at 100. */
static const struct {
	struct meter_row row[6];
	int n;
	gint64 hours[6];
	int backwards;
	gint64 end;	/* what it shows at last */
} cases[] = {
	{ { R(1, 102), R(2, 105) }, 2, { 2, 3 }, -1, 105 },
	{ { T(1, 2), T(2, 3) }, 2, { 2, 3 }, -1, 105 },
	{ { T(1, 1), R(2, 105), T(3, 2) }, 3, { 1, 4, 2 }, -1, 107 },
	{ { R(1, 100) }, 1, { 0 }, -1, 100 },	/* a reading without any running */
	{ { T(1, 6), R(2, 105) }, 2, { 6, 0 }, 1, 105 },	/* more typed than the meter shows */
	{ { R(1, 99), R(2, 98), R(3, 103) }, 3, { 0, 0, 5 }, 0, 103 },	/* the first of them is told */
	{ { R(1, 110), R(2, 104), R(3, 112) }, 3, { 10, 0, 8 }, 1, 112 },
	{ { R(1, 102), R(1, 103), T(1, 1), R(1, 105) }, 4, { 2, 1, 1, 1 }, -1, 105 },	/* one day's in their order */
	{ { T(1, 0) }, 0, { 0 }, -1, 100 },
};

START_TEST(hours_follow_from_readings)
{
	struct meter_row row[6];

	memcpy(row, cases[_i].row, sizeof row);
	ck_assert_int_eq(meter_derive(row, cases[_i].n, 100 * H), cases[_i].backwards);
	for (int i = 0; i < cases[_i].n; i++)
		ck_assert_int_eq(row[i].hours, cases[_i].hours[i] * H);
	ck_assert_int_eq(meter_expected(row, cases[_i].n, 100 * H, 1000), cases[_i].end * H);
	ck_assert_int_eq(meter_expected(row, cases[_i].n, 100 * H, 0), 100 * H);
}
END_TEST

/* A log as it ran: what the meter truly showed at the end of each row. */
struct log { struct meter_row row[MOST]; gint64 shown[MOST], start; int n; };

static void
random_log(GRand *rand, struct log *l)
{
	gint64 at, day = 0;

	l->n = g_rand_int_range(rand, 1, MOST);
	l->start = at = g_rand_int_range(rand, 0, 1000 * H);
	for (int i = 0; i < l->n; i++) {
		gint64 ran = g_rand_int_range(rand, 0, 6) ? g_rand_int_range(rand, 0, 8 * H) : 0;

		day += g_rand_int_range(rand, 0, 3);	/* several a day, too */
		at += ran;
		l->shown[i] = at;
		l->row[i] = (struct meter_row) { i + 1, day, ran, g_rand_boolean(rand) ? at : NONE };
	}
}

/* Forget the hours that follow from readings. */
static void
forget(struct log *l)
{
	for (int i = 0; i < l->n; i++)
		if (l->row[i].reading != NONE)
			l->row[i].hours = 17;
}

START_TEST(what_truly_ran_is_found_again)
{
	GRand *rand = seeded("what ran");

	for (int turn = 0; turn < TURNS; turn++) {
		struct log l, was;
		gint64 sum;

		random_log(rand, &l);
		was = l;
		forget(&l);
		ck_assert_int_eq(meter_derive(l.row, l.n, l.start), -1);
		sum = l.start;
		for (int i = 0; i < l.n; i++) {
			ck_assert_int_eq(l.row[i].hours, was.row[i].hours);
			sum += l.row[i].hours;
			/* The sums telescope: at each row they are what the meter showed. */
			ck_assert_int_eq(sum, l.shown[i]);
		}
		ck_assert_int_eq(meter_expected(l.row, l.n, l.start, G_MAXINT64), sum);
	}
	g_rand_free(rand);
}
END_TEST

/* Typed hours that were forgotten, or written down twice, between two readings: the readings outweigh them. */
START_TEST(readings_outweigh_what_was_typed_before_them)
{
	GRand *rand = seeded("outweigh");

	for (int turn = 0; turn < TURNS; turn++) {
		struct log l;
		gint64 sum;
		int last = -1;

		random_log(rand, &l);
		forget(&l);
		for (int i = 0; i < l.n; i++) {
			if (l.row[i].reading == NONE)
				l.row[i].hours = l.row[i].hours * g_rand_int_range(rand, 0, 2);	/* less than ran */
			else
				last = i;
		}
		ck_assert_int_eq(meter_derive(l.row, l.n, l.start), -1);
		sum = l.start;
		for (int i = 0; i <= last; i++)
			sum += l.row[i].hours;
		ck_assert_int_eq(sum, last < 0 ? l.start : l.row[last].reading);
		for (int i = last + 1; i < l.n; i++)
			sum += l.row[i].hours;
		ck_assert_int_eq(meter_expected(l.row, l.n, l.start, G_MAXINT64), sum);
	}
	g_rand_free(rand);
}
END_TEST

/* In which order the typed rows between two readings stand does not count for any reading, nor for the end. */
START_TEST(the_order_of_typed_rows_does_not_count)
{
	GRand *rand = seeded("order");

	for (int turn = 0; turn < TURNS; turn++) {
		struct log l, mixed;

		random_log(rand, &l);
		for (int i = 0; i < l.n; i++)
			l.row[i].date = 0;
		mixed = l;
		for (int k = 0; k < 3 * l.n; k++) {
			int i = g_rand_int_range(rand, 0, l.n), j = i + 1;
			struct meter_row swap;

			if (j >= l.n || mixed.row[i].reading != NONE || mixed.row[j].reading != NONE)
				continue;
			swap = mixed.row[i];
			mixed.row[i] = mixed.row[j];
			mixed.row[j] = swap;
		}
		forget(&l);
		forget(&mixed);
		ck_assert_int_eq(meter_derive(l.row, l.n, l.start), meter_derive(mixed.row, mixed.n, mixed.start));
		for (int i = 0; i < l.n; i++)
			if (l.row[i].reading != NONE)
				ck_assert_int_eq(l.row[i].hours, mixed.row[i].hours);
		ck_assert_int_eq(meter_expected(l.row, l.n, l.start, 0), meter_expected(mixed.row, mixed.n, mixed.start, 0));
	}
	g_rand_free(rand);
}
END_TEST

/* Whatever was typed: no hours below nothing, a second time changes nothing, and the first row that goes backwards is
 * the one told. */
START_TEST(nonsense_does_no_harm)
{
	GRand *rand = seeded("nonsense");

	for (int turn = 0; turn < TURNS; turn++) {
		struct log l, once;
		int told, first = -1;
		gint64 shown;

		random_log(rand, &l);
		for (int i = 0; i < l.n; i++)
			if (l.row[i].reading != NONE && !g_rand_int_range(rand, 0, 3))
				l.row[i].reading = g_rand_int_range(rand, 0, 2000 * H);
		told = meter_derive(l.row, l.n, l.start);
		once = l;
		shown = l.start;
		for (int i = 0; i < l.n; i++) {
			ck_assert_int_ge(l.row[i].hours, 0);
			if (l.row[i].reading != NONE && l.row[i].reading < shown && first < 0)
				first = i;
			shown = l.row[i].reading == NONE ? shown + l.row[i].hours : l.row[i].reading;
		}
		ck_assert_int_eq(told, first);
		ck_assert_int_eq(meter_derive(l.row, l.n, l.start), told);
		ck_assert_mem_eq(l.row, once.row, sizeof l.row[0] * (gsize)l.n);
	}
	g_rand_free(rand);
}
END_TEST

START_TEST(what_the_meter_shows_at_the_end_of_a_day)
{
	GRand *rand = seeded("a day's end");

	for (int turn = 0; turn < TURNS; turn++) {
		struct log l;

		random_log(rand, &l);
		for (gint64 day = -1; day <= l.row[l.n - 1].date + 1; day++) {
			gint64 want = l.start;

			for (int i = 0; i < l.n && l.row[i].date <= day; i++)
				want = l.shown[i];
			ck_assert_int_eq(meter_expected(l.row, l.n, l.start, day), want);
		}
	}
	g_rand_free(rand);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("Hours follow from what a meter showed");
	TCase *tc = tcase_create("meters");
	SRunner *runner;
	int failed;

	tcase_add_loop_test(tc, hours_follow_from_readings, 0, G_N_ELEMENTS(cases));
	tcase_add_test(tc, what_truly_ran_is_found_again);
	tcase_add_test(tc, readings_outweigh_what_was_typed_before_them);
	tcase_add_test(tc, the_order_of_typed_rows_does_not_count);
	tcase_add_test(tc, nonsense_does_no_harm);
	tcase_add_test(tc, what_the_meter_shows_at_the_end_of_a_day);
	suite_add_tcase(suite, tc);
	runner = srunner_create(suite);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
