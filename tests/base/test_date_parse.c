#include "base/date.h"

#include "absurd.h"

#define TODAY "2026-11-25"
#define FORMS "write 2026-05-12, 12 may, today or -3d"
#define STEPS "a step is counted in days or weeks: write -3d or +2w"
#define NO_YEAR "write month and day without a year, such as 04-15 or 15 apr"

static gboolean
parse_today(const char *text, GError **err)
{
	gint64 day;

	return day_parse(text, day_from_ymd(2026, 11, 25), &day, err);
}

static gboolean
parse_yearday(const char *text, GError **err)
{
	gint64 mmdd;

	return yearday_parse(text, &mmdd, err);
}

static const struct {
	const char *today, *text, *day;
} taken[] = {
	{ TODAY, "2026-05-12", "2026-05-12" }, { TODAY, "  2026-05-12\t", "2026-05-12" },
	{ TODAY, "0001-01-01", "0001-01-01" }, { TODAY, "9999-12-31", "9999-12-31" },
	{ TODAY, "2024-02-29", "2024-02-29" },
	{ TODAY, "2026-5-1", "2026-05-01" }, { TODAY, "2026/05/12", "2026-05-12" },
	{ TODAY, "2026.5.12", "2026-05-12" },
	{ TODAY, "today", "2026-11-25" }, { TODAY, "Yesterday", "2026-11-24" },
	{ TODAY, "TOMORROW", "2026-11-26" },
	{ "2024-02-29", "tomorrow", "2024-03-01" }, { "2026-01-01", "yesterday", "2025-12-31" },
	{ TODAY, "-3d", "2026-11-22" }, { TODAY, "+2w", "2026-12-09" }, { TODAY, "+0d", "2026-11-25" },
	{ TODAY, " - 10 d ", "2026-11-15" }, { TODAY, "-1W", "2026-11-18" },
	{ TODAY, "13/5/2026", "2026-05-13" }, { TODAY, "5.13.2026", "2026-05-13" },
	{ TODAY, "13-5-2026", "2026-05-13" },
	{ TODAY, "13/5/26", "2026-05-13" }, { TODAY, "5/13/26", "2026-05-13" },
	{ TODAY, "5/5/26", "2026-05-05" },
	{ TODAY, "13. 5. 2026", "2026-05-13" }, { TODAY, "29/2/2024", "2024-02-29" },
	{ TODAY, "31/12/69", "2069-12-31" }, { TODAY, "31/12/70", "1970-12-31" },
	{ TODAY, "31/12/99", "1999-12-31" },
	{ TODAY, "31/12/00", "2000-12-31" }, { TODAY, "31-12-99", "1999-12-31" },
	{ TODAY, "99-12-31", "1999-12-31" },
	{ TODAY, "12 may", "2027-05-12" }, { TODAY, "may 12", "2027-05-12" },
	{ TODAY, "12 MAY", "2027-05-12" },
	{ TODAY, "12may", "2027-05-12" }, { TODAY, "12. May", "2027-05-12" },
	{ TODAY, "12-may", "2027-05-12" },
	{ TODAY, "1 sept", "2026-09-01" }, { TODAY, "1 septem", "2026-09-01" },
	{ TODAY, "1 jan", "2027-01-01" },
	{ "2026-01-05", "30 dec", "2025-12-30" }, { "2026-12-28", "2 jan", "2027-01-02" },
	{ "2026-07-02", "1 jan", "2026-01-01" }, { "2026-07-03", "1 jan", "2027-01-01" },
	{ "2024-07-02",
	  "1 jan", "2024-01-01" },	/* 183 days both ways: the earlier, for a logbook tells what was */
	{ "2025-06-01", "29 feb", "2024-02-29" }, { "2027-01-01", "29 feb", "2028-02-29" },
	{ "2024-10-01", "29 feb", "2024-02-29" },
	{ "0001-01-01", "31 dec", "0001-12-31" }, { "9999-12-31", "1 jan", "9999-01-01" },
	{ TODAY, "12 may 2026", "2026-05-12" }, { TODAY, "may 12 2026", "2026-05-12" },
	{ TODAY, "May 12, 2026", "2026-05-12" },
	{ TODAY, "12-May-2026", "2026-05-12" }, { TODAY, "12 may 26", "2026-05-12" },
	{ TODAY, "2026 may 12", "2026-05-12" },
	{ TODAY, "29 february 2024", "2024-02-29" }, { TODAY, "12 may 1970", "1970-05-12" },
	{ "0001-01-02", "yesterday", "0001-01-01" }, { "9999-12-30", "+1d", "9999-12-31" },
	{ "", "2026-05-12", "2026-05-12" }, { "", "12 may 2026", "2026-05-12" },
	{ "", "13/5/26", "2026-05-13" },
};

START_TEST(a_date_is_understood)
{
	g_autoptr(GError) err = NULL;
	char buf[DAY_TEXT];
	int y, m, d;
	gint64 today = NONE, day = NONE;

	if (sscanf(taken[_i].today, "%d-%d-%d", &y, &m, &d) == 3)
		today = day_from_ymd(y, m, d);
	ck_assert_msg(day_parse(taken[_i].text, today, &day, &err), "%s", err ? err->message : "?");
	ck_assert_str_eq(day_iso(day, buf), taken[_i].day);
}
END_TEST

static const struct {
	const char *text, *message;
} refused[] = {
	{ "5/6/24", "\"5/6/24\" can be 5 June 2024 or 6 May 2024: write 2024-06-05 or 2024-05-06" },
	{ "5.6.2024", "\"5.6.2024\" can be 5 June 2024 or 6 May 2024: write 2024-06-05 or 2024-05-06" },
	{ "05-06-24",
	  "\"05-06-24\" can be 5 June 2024, 6 May 2024 or 24 June 2005: "
	  "write 2024-06-05, 2024-05-06 or 2005-06-24" },
	{ "24-05-06", "\"24-05-06\" can be 24 May 2006 or 6 May 2024: write 2006-05-24 or 2024-05-06" },
	{ "2025-02-30", "\"2025-02-30\": February 2025 has 28 days" },
	{ "2024-02-30", "\"2024-02-30\": February 2024 has 29 days" },
	{ "31/6/2025", "\"31/6/2025\": June 2025 has 30 days" },
	{ "2/30/2025", "\"2/30/2025\": February 2025 has 28 days" },
	{ "29/2/2100", "\"29/2/2100\": February 2100 has 28 days" },
	{ "30 feb 2024", "\"30 feb 2024\": February 2024 has 29 days" },
	{ "2025-12-32", "\"2025-12-32\": December 2025 has 31 days" },
	{ "12-05-12 00:00", "\"12-05-12 00:00\" is not a date from \"00:00\" on: " FORMS },
	{ "2025-13-01", "\"2025-13-01\": there is no month 13: the months are 1 to 12" },
	{ "13/14/2025", "\"13/14/2025\": there is no month 13: the months are 1 to 12" },
	{ "2025-00-10", "\"2025-00-10\": there is no month 0: the months are 1 to 12" },
	{ "2025-01-00", "\"2025-01-00\": there is no day 0: the days begin with 1" },
	{ "0000-01-01", "\"0000-01-01\": years run from 0001 to 9999" },
	{ "30 feb", "\"30 feb\": the days of February are 1 to 29" },
	{ "0 may", "\"0 may\": the days of May are 1 to 31" },
	{ "29 feb", "\"29 feb\": which year? Write such as 2028-02-29" },
	{ "12 mai", "\"12 mai\": \"mai\" is no month: is May meant?" },
	{ "12 mayo", "\"12 mayo\": \"mayo\" is no month: is May meant?" },
	{ "12 decembre", "\"12 decembre\": \"decembre\" is no month: is December meant?" },
	{ "may june", "\"may june\" is not a date: " FORMS },
	{ "12 x may", "\"12 x may\": \"x\" is no month: write such as 12 may or 2026-05-12" },
	{ "12 foo", "\"12 foo\": \"foo\" is no month: write such as 12 may or 2026-05-12" },
	{ "12 ma", "\"12 ma\": \"ma\" is no month: is May meant?" },
	{ "sat 12 may", "\"sat 12 may\": \"sat\" is no month: write such as 12 may or 2026-05-12" },
	{ "may 2026", "\"may 2026\": which day of May? Write such as 2026-05-01" },
	{ "5/6", "\"5/6\": which year? Write the whole date, such as 2026-05-12" },
	{ "05-12", "\"05-12\": which year? Write the whole date, such as 2026-05-12" },
	{ "-3", "\"-3\": " STEPS },
	{ "+2m", "\"+2m\": " STEPS },
	{ "-3d4", "\"-3d4\": " STEPS },
	{ "+3d d", "\"+3d d\": " STEPS },
	{ "+999999999w", "\"+999999999w\" lies outside the years 0001 to 9999" },
	{ "-800000d", "\"-800000d\" lies outside the years 0001 to 9999" },
	{ "+9999999999d", "\"+9999999999d\": " STEPS },
	{ "2026-05-12T10:00:00Z",
	  "\"2026-05-12T10:00:00Z\": a date without the time is wanted: write 2026-05-12" },
	{ "2026-05-12 00:00", "\"2026-05-12 00:00\": a date without the time is wanted: write 2026-05-12" },
	{ "2026-05-12x9", "\"2026-05-12x9\" is not a date from \"x9\" on: " FORMS },
	{ "12 may 2026 10:00", "\"12 may 2026 10:00\" is not a date from \"10:00\" on: " FORMS },
	{ "2026-05-", "\"2026-05-\" is not a date from \"-\" on: " FORMS },
	{ "20260512", "\"20260512\" is not a date: " FORMS },
	{ "10000-01-01", "\"10000-01-01\" is not a date: " FORMS },
	{ "5/6/2", "\"5/6/2\" is not a date: " FORMS },
	{ "5/6-2024", "\"5/6-2024\" is not a date: " FORMS },
	{ "5,6,2024", "\"5,6,2024\" is not a date: " FORMS },
	{ "12 26 may", "\"12 26 may\" is not a date: " FORMS },
	{ "may may 12", "\"may may 12\" is not a date: " FORMS },
	{ "soon", "\"soon\" is not a date: " FORMS },
	{ "14", "\"14\" is not a date: " FORMS },
	{ "", "no date was given: " FORMS },
	{ "  ", "no date was given: " FORMS },
};

START_TEST(what_is_no_date_is_refused_with_the_reason)
{
	g_autoptr(GError) err = NULL;
	gint64 day = 77;

	ck_assert(!day_parse(refused[_i].text, day_from_ymd(2026, 11, 25), &day, &err));
	assert_harmless(refused[_i].text, err);
	ck_assert_str_eq(err->message, refused[_i].message);
	ck_assert_int_eq(day, 77);
}
END_TEST

START_TEST(without_today_nothing_that_hangs_on_it_is_taken)
{
	static const char *const hang[] = {
		"today", "yesterday", "tomorrow", "-3d", "+2w", "12 may", "may 12"
	};
	g_autoptr(GError) err = NULL;
	gint64 day = 77;

	ck_assert(!day_parse(hang[_i], NONE, &day, &err));
	assert_harmless(hang[_i], err);
	ck_assert_ptr_nonnull(
		strstr(err->message, _i < 5 ? "write the date, such as 2026-05-12" : "which year?"));
}
END_TEST

START_TEST(iso_dates_are_read_back)
{
	GRand *rand = test_rand("iso dates");

	for (int i = 0; i < 20000; i++) {
		gint64 day = g_rand_int_range(rand, (gint32)DAY_FIRST, (gint32)DAY_LAST + 1), back = NONE;
		char buf[16];

		ck_assert(day_parse(day_iso(day, buf), NONE, &back, NULL));
		ck_assert_int_eq(back, day);
		back = NONE;
		if (day >= day_from_ymd(1000, 1, 1))
			ck_assert(day_parse(day_words(day, buf), NONE, &back, NULL) && back == day);
	}
	g_rand_free(rand);
}
END_TEST

START_TEST(a_day_and_month_are_the_nearest_to_today)
{
	GRand *rand = test_rand("nearest");

	for (int i = 0; i < 5000; i++) {
		gint64 today = g_rand_int_range(rand, 0, 40000), day = NONE, other;
		int m = g_rand_int_range(rand, 1, 13), d = g_rand_int_range(rand, 1, 29), year, month, mday;
		g_autofree char *text = g_strdup_printf("%d %.3s", d, month_name(m));

		ck_assert(day_parse(text, today, &day, NULL));
		day_to_ymd(day, &year, &month, &mday);
		ck_assert(month == m && mday == d);
		for (int k = -1; k <= 1; k++) {
			other = day_from_ymd(year + k, m, d);
			ck_assert_int_le(ABS(day - today), ABS(other - today));
		}
	}
	g_rand_free(rand);
}
END_TEST

static const struct {
	const char *text;
	gint64 mmdd;
	const char *message;
} yeardays[] = {
	{ "04-15", 415, NULL }, { "15 apr", 415, NULL }, { "apr 15", 415, NULL }, { "15. April", 415, NULL },
	{ "02-29", 229, NULL }, { "29 feb", 229, NULL }, { " 12-31 ", 1231, NULL }, { "05-06", 506, NULL },
	{ "15/4", 415, NULL }, { "4/15", 415, NULL }, { "4-15", 415, NULL }, { "5/5", 505, NULL },
	{ "02-30", 0, "\"02-30\" is no day of the year: write month and day, such as 04-15" },
	{ "30 feb", 0, "\"30 feb\": the days of February are 1 to 29" },
	{ "15-04", 0, "\"15-04\": there is no month 15: write 04-15" },
	{ "1 apr", 401, NULL }, { "30 apr", 430, NULL },
	{ "4-5", 0, "\"4-5\" can be 4 May or 5 April: write 05-04 or 04-05" },
	{ "31 apr", 0, "\"31 apr\": the days of April are 1 to 30" },
	{ "0 apr", 0, "\"0 apr\": the days of April are 1 to 30" },
	{ "4/5", 0, "\"4/5\" can be 4 May or 5 April: write 05-04 or 04-05" },
	{ "13/14", 0, "\"13/14\" is no day of the year: write month and day, such as 04-15" },
	{ "4 15", 0, "\"4 15\" is no day of the year: write month and day, such as 04-15" },
	{ "999999999/4", 0, "\"999999999/4\" is no day of the year: write month and day, such as 04-15" },
	{ "2026-04-15", 0, "\"2026-04-15\" is no day of the year: " NO_YEAR },
	{ "apr 2026", 0, "\"apr 2026\" is no day of the year: " NO_YEAR },
	{ "apr", 0, "\"apr\" is no day of the year: " NO_YEAR },
	{ "15 arp", 0, "\"15 arp\": \"arp\" is no month: write such as 12 may or 2026-05-12" },
	{ "15 apirl", 0, "\"15 apirl\": \"apirl\" is no month: is April meant?" },
	{ "", 0, "\"\" is no day of the year: " NO_YEAR },
};

START_TEST(a_day_of_the_year_is_understood_or_refused)
{
	g_autoptr(GError) err = NULL;
	gint64 mmdd = 77;
	gboolean ok = yearday_parse(yeardays[_i].text, &mmdd, &err);

	if (yeardays[_i].message) {
		ck_assert(!ok);
		ck_assert_str_eq(err->message, yeardays[_i].message);
		ck_assert_int_eq(mmdd, 77);
	} else {
		ck_assert_msg(ok, "%s", err ? err->message : "?");
		ck_assert_int_eq(mmdd, yeardays[_i].mmdd);
	}
}
END_TEST

START_TEST(every_day_of_the_year_is_read_back)
{
	for (gint64 day = day_from_ymd(2024, 1, 1); day <= day_from_ymd(2024, 12, 31); day++) {
		int y, m, d;
		gint64 back = NONE;
		char buf[6];

		day_to_ymd(day, &y, &m, &d);
		ck_assert(yearday_parse(yearday_text(m * 100 + d, buf), &back, NULL));
		ck_assert_int_eq(back, m * 100 + d);
	}
}
END_TEST

START_TEST(absurd_text_is_refused_without_harm)
{
	GRand *rand = test_rand("absurd");

	assert_refuses_absurd(parse_today);
	assert_refuses_absurd(parse_yearday);
	assert_random_harmless(parse_today, "0123456789-/. ,+dwmayjunT:", rand);
	assert_random_harmless(parse_yearday, "0123-/. ,apr", rand);
	g_rand_free(rand);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("A typed date is understood, or refused with the reason");
	TCase *tc = tcase_create("typed dates");

	tcase_set_timeout(tc, 60);
	tcase_add_loop_test(tc, a_date_is_understood, 0, G_N_ELEMENTS(taken));
	tcase_add_loop_test(tc, what_is_no_date_is_refused_with_the_reason, 0, G_N_ELEMENTS(refused));
	tcase_add_loop_test(tc, without_today_nothing_that_hangs_on_it_is_taken, 0, 7);
	tcase_add_test(tc, iso_dates_are_read_back);
	tcase_add_test(tc, a_day_and_month_are_the_nearest_to_today);
	tcase_add_loop_test(tc, a_day_of_the_year_is_understood_or_refused, 0, G_N_ELEMENTS(yeardays));
	tcase_add_test(tc, every_day_of_the_year_is_read_back);
	tcase_add_test(tc, absurd_text_is_refused_without_harm);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
