#include "base/date.h"

#include "absurd.h"

#define TODAY day_from_ymd(2026, 11, 25)

static const struct {
	const char *text, *first, *last;
} taken[] = {
	{ "2019", "2019-01-01", "2019-12-31" },
	{ " 2019 ", "2019-01-01", "2019-12-31" },
	{ "2019-03", "2019-03-01", "2019-03-31" },
	{ "2020-02", "2020-02-01", "2020-02-29" },
	{ "march 2019", "2019-03-01", "2019-03-31" },
	{ "Feb 2020", "2020-02-01", "2020-02-29" },
	{ "spring 2019", "2019-03-01", "2019-05-31" },
	{ "Summer 2019", "2019-06-01", "2019-08-31" },
	{ "autumn 2019", "2019-09-01", "2019-11-30" },
	{ "fall 2019", "2019-09-01", "2019-11-30" },
	{ "2018..2019-06", "2018-01-01", "2019-06-30" },
	{ "2018-12..2019-02", "2018-12-01", "2019-02-28" },
	{ "2019-03-20..2019-06-15", "2019-03-20", "2019-06-15" },
	{ "spring 2019 .. autumn 2019", "2019-03-01", "2019-11-30" },
	{ "2019-05-12", "2019-05-12", "2019-05-12" },
	{ "12 may 2019", "2019-05-12", "2019-05-12" },
	{ "yesterday", "2026-11-24", "2026-11-24" },
	{ "12 may", "2027-05-12", "2027-05-12" }, /* the nearest year */
	{ "12/2019..2020", NULL, NULL },
};

START_TEST(a_day_remembered_roughly_is_the_days_it_can_have_been)
{
	g_autoptr(GError) err = NULL;
	gint64 first = -1, last = -1;
	gboolean ok = day_span_parse(taken[_i].text, TODAY, &first, &last, &err);
	char a[DAY_TEXT], b[DAY_TEXT];

	ck_assert_msg(ok == (taken[_i].first != NULL), "%s: %s", taken[_i].text, err ? err->message : "taken");
	if (!ok) {
		ck_assert_int_eq(first, -1);
		return;
	}
	ck_assert_str_eq(day_iso(first, a), taken[_i].first);
	ck_assert_str_eq(day_iso(last, b), taken[_i].last);
}
END_TEST

static const struct {
	const char *text, *says;
} refused[] = {
	{ "winter 2019", "write 2018-12..2019-02 or 2019-12..2020-02" },
	{ "sprang 2019", "names no part of a year" },
	{ "2019-13", "2019-13" },
	{ "2020..2019", "ends before it begins" },
	{ "", "no date" },
	{ "..2019", "no date" },
	{ "2019..", "no date" },
	{ "5/6/24", "2024-06-05" },
	{ "mai 2019", "names no part of a year" },
	{ "ma 2019", "names no part of a year" },
};

START_TEST(what_can_be_meant_in_two_ways_is_refused_with_both)
{
	g_autoptr(GError) err = NULL;
	gint64 first = -1, last = -1;

	ck_assert_msg(!day_span_parse(refused[_i].text, TODAY, &first, &last, &err), "%s", refused[_i].text);
	ck_assert_int_eq(err->code, ERR_INPUT);
	ck_assert_msg(strstr(err->message, refused[_i].says) != NULL, "%s: %s", refused[_i].text, err->message);
	ck_assert_int_eq(first, -1);
	ck_assert_int_eq(last, -1);
}
END_TEST

static gboolean
parse(const char *text, GError **err)
{
	gint64 first, last;

	return day_span_parse(text, TODAY, &first, &last, err);
}

START_TEST(absurd_text_is_refused_without_harm)
{
	GRand *rand = test_rand("absurd spans");

	assert_refuses_absurd(parse);
	assert_random_harmless(parse, "0123456789.-/ springmarch", rand);
	g_rand_free(rand);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("A day that is not known to the day");
	TCase *tc = tcase_create("spans");

	tcase_add_loop_test(tc, a_day_remembered_roughly_is_the_days_it_can_have_been, 0, G_N_ELEMENTS(taken));
	tcase_add_loop_test(tc, what_can_be_meant_in_two_ways_is_refused_with_both, 0, G_N_ELEMENTS(refused));
	tcase_add_test(tc, absurd_text_is_refused_without_harm);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
