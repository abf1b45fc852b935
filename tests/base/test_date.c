/* Published checks: tests/data/published/11_dates.csv, whose last column names the source of each row.
 * ISO 8601 facts: week 1 holds 4 January, the last week holds 28 December. */
#include "base/date.h"

#include "absurd.h"

static gint64
iso(const char *text)
{
	int y = 0, m = 0, d = 0;

	ck_assert_msg(sscanf(text, "%4d-%2d-%2d", &y, &m, &d) == 3, "no ISO date: %s", text);
	return day_from_ymd(y, m, d);
}

/* The calendar, counted day by day with GLib's month lengths. */

START_TEST(every_day_from_1_to_9999_follows_the_one_before)
{
	gint64 day = DAY_FIRST;
	int wrong = 0, year, month, mday;

	for (int y = 1; y <= 9999; y++) {
		for (int m = 1; m <= 12; m++) {
			int last = g_date_get_days_in_month((GDateMonth)m, (GDateYear)y);

			wrong += month_days(y, m) != last || day_from_ymd(y, m, last + 1) != NONE;
			for (int d = 1; d <= last; d++, day++) {
				day_to_ymd(day, &year, &month, &mday);
				wrong += day_from_ymd(y, m, d) != day || year != y || month != m || mday != d;
			}
		}
	}
	ck_assert_int_eq(wrong, 0);
	ck_assert_int_eq(day, DAY_LAST + 1);
}
END_TEST

START_TEST(weeks_and_weekdays_agree_with_glib)
{
	int wrong = 0;

	for (gint64 day = iso("1890-01-01"); day < iso("2210-01-01"); day++) {
		GDate date;
		int year, month, mday, week_year;

		day_to_ymd(day, &year, &month, &mday);
		g_date_clear(&date, 1);
		g_date_set_dmy(&date, (GDateDay)mday, (GDateMonth)month, (GDateYear)year);
		wrong += day_weekday(day) != (int)g_date_get_weekday(&date);
		wrong += day_week(day, &week_year) != (int)g_date_get_iso8601_week_of_year(&date);
		wrong += ABS(week_year - year) > 1;
	}
	ck_assert_int_eq(wrong, 0);
}
END_TEST

START_TEST(week_1_holds_4_january_and_the_last_week_28_december)
{
	for (int y = 1; y <= 9999; y++) {
		int year, last;

		ck_assert_int_eq(day_week(day_from_ymd(y, 1, 4), &year), 1);
		ck_assert_int_eq(year, y);
		last = day_week(day_from_ymd(y, 12, 28), &year);
		ck_assert_int_eq(year, y);
		ck_assert(last == 52 || last == 53);
		if (y < 9999)
			ck_assert_int_eq(day_week(day_from_ymd(y, 12, 28) + 7, &year), 1);
	}
}
END_TEST

START_TEST(the_first_and_the_last_day_have_a_week)
{
	int year;

	ck_assert_int_eq(day_weekday(DAY_FIRST), 1);
	ck_assert_int_eq(day_week(DAY_FIRST, &year), 1);
	ck_assert_int_eq(year, 1);
	ck_assert_int_eq(day_weekday(DAY_LAST), 5);
	ck_assert_int_eq(day_week(DAY_LAST, &year), 52);
	ck_assert_int_eq(year, 9999);
}
END_TEST

static const struct {
	int year, month, day;
} impossible[] = {
	{ 0, 1, 1 }, { -1, 1, 1 }, { 10000, 1, 1 }, { G_MAXINT, 1, 1 }, { G_MININT, 12, 31 },
	{ 2025, 0, 1 }, { 2025, 13, 1 }, { 2025, -1, 1 }, { 2025, G_MAXINT, 1 }, { 2025, 1, 0 },
	{ 2025, 1, 32 },
	{ 2025, 1, -5 }, { 2025, 1, G_MAXINT }, { 2025, 2, 29 }, { 2024, 2, 30 }, { 1900, 2, 29 },
	{ 2100, 2, 29 },
	{ 2025, 4, 31 }, { 2025, 6, 31 }, { 2025, 9, 31 }, { 2025, 11, 31 },
};

START_TEST(what_is_no_day_has_no_number)
{
	ck_assert_int_eq(day_from_ymd(impossible[_i].year, impossible[_i].month, impossible[_i].day), NONE);
}
END_TEST

START_TEST(no_day_has_no_date_and_no_text)
{
	static const gint64 days[] = { NONE, G_MAXINT64, G_MININT64 + 1, DAY_FIRST - 1, DAY_LAST + 1 };
	int y = 5, m = 5, d = 5;
	char buf[16] = "x";

	day_to_ymd(days[_i], &y, &m, &d);
	ck_assert(y == 0 && m == 0 && d == 0);
	ck_assert_str_eq(day_iso(days[_i], buf), "");
	ck_assert_str_eq(day_words(days[_i], buf), "");
	ck_assert_int_eq(day_weekday(days[_i]), 0);
	ck_assert_int_eq(day_week(days[_i], &y), 0);
	ck_assert_int_eq(day_add_months(days[_i], 1), NONE);
	ck_assert_int_eq(day_months_between(days[_i], 0), 0);
	ck_assert_int_eq(day_months_between(0, days[_i]), 0);
}
END_TEST

static const struct {
	gint64 day;
	const char *iso, *words;
} texts[] = {
	{ 0, "1970-01-01", "1 Jan 1970" }, { -1, "1969-12-31", "31 Dec 1969" },
	{ DAY_FIRST, "0001-01-01", "1 Jan 1" }, { DAY_LAST, "9999-12-31", "31 Dec 9999" },
	{ 11016, "2000-02-29", "29 Feb 2000" }, { 20782, "2026-11-25", "25 Nov 2026" },
};

START_TEST(a_day_is_written_as_iso_8601_and_in_words)
{
	char a[DAY_TEXT], b[16];

	ck_assert_str_eq(day_iso(texts[_i].day, a), texts[_i].iso);
	ck_assert_str_eq(day_words(texts[_i].day, b), texts[_i].words);
}
END_TEST

START_TEST(months_have_names_and_lengths)
{
	ck_assert_str_eq(month_name(1), "January");
	ck_assert_str_eq(month_name(12), "December");
	ck_assert_str_eq(month_name(0), "");
	ck_assert_str_eq(month_name(13), "");
	ck_assert_int_eq(month_days(2025, 0), 0);
	ck_assert_int_eq(month_days(2025, 13), 0);
	ck_assert_int_eq(month_days(2000, 2), 29);
	ck_assert_int_eq(month_days(1900, 2), 28);
}
END_TEST

/* Months. */

static const struct {
	const char *from;
	int months;
	const char *to;	/* "" for no day */
} steps[] = {
	{ "2025-08-31", 6, "2026-02-28" }, { "2025-01-31", -2, "2024-11-30" },
	{ "2025-01-31", 0, "2025-01-31" },
	{ "0001-01-31", -1, "" }, { "0001-02-28", -1, "0001-01-28" }, { "9999-12-01", 1, "" },
	{ "9999-11-30", 1, "9999-12-30" }, { "0001-01-01", 119987, "9999-12-01" },
	{ "0001-01-01", 119988, "" },
	{ "2025-01-01", G_MAXINT, "" }, { "2025-01-01", G_MININT, "" },
};

START_TEST(months_are_added_with_the_day_clamped)
{
	char buf[DAY_TEXT];

	ck_assert_str_eq(day_iso(day_add_months(iso(steps[_i].from), steps[_i].months), buf), steps[_i].to);
}
END_TEST

static const struct {
	const char *a, *b;
	int months;
} spans[] = {
	{ "2025-01-31", "2025-02-28", 1 }, { "2025-01-31", "2025-02-27", 0 },
	{ "2025-02-28", "2025-03-31", 1 },
	{ "2025-03-31", "2025-02-28", -1 }, { "2025-03-31", "2025-02-27", -2 },
	{ "2025-03-31", "2025-03-30", -1 },
	{ "2024-02-29", "2025-02-28", 12 }, { "2024-02-29", "2028-02-28", 47 },
	{ "2024-02-29", "2028-02-29", 48 },
	{ "2025-05-05", "2025-05-05", 0 }, { "0001-01-01", "9999-12-31", 119987 },
	{ "9999-12-31", "0001-01-01", -119988 },
};

START_TEST(months_between_are_counted_down)
{
	ck_assert_int_eq(day_months_between(iso(spans[_i].a), iso(spans[_i].b)), spans[_i].months);
}
END_TEST

START_TEST(months_between_is_the_largest_step_that_does_not_pass)
{
	GRand *rand = test_rand("months");

	for (int i = 0; i < 20000; i++) {
		gint64 a = g_rand_int_range(rand, -200000, 200000),
		       b = a + g_rand_int_range(rand, -9000, 9000);
		int n = day_months_between(a, b);

		if (day_add_months(a, n) > b || day_add_months(a, n + 1) <= b)
			ck_abort_msg("from %d to %d: %d", (int)a, (int)b, n);
	}
	g_rand_free(rand);
}
END_TEST

START_TEST(one_anchor_never_drifts)
{
	gint64 anchor = iso("2025-01-31");
	int year, month, mday;

	for (int n = -1200; n <= 1200; n++) {
		day_to_ymd(day_add_months(anchor, n), &year, &month, &mday);
		ck_assert_int_eq(mday, MIN(31, month_days(year, month)));
	}
}
END_TEST

/* Days of the year. */

static const struct {
	gint64 mmdd;
	int year;
	const char *day, *text;
} yeardays[] = {
	{ 415, 2026, "2026-04-15", "04-15" }, { 229, 2024, "2024-02-29", "02-29" },
	{ 229, 2025, "2025-02-28", "02-29" },
	{ 229, 1900, "1900-02-28", "02-29" }, { 1231, 9999, "9999-12-31", "12-31" },
	{ 101, 1, "0001-01-01", "01-01" },
	{ 101, 0, "", "01-01" }, { 101, 10000, "", "01-01" }, { 230, 2024, "", "" }, { 431, 2024, "", "" },
	{ 0, 2024, "", "" }, { 100, 2024, "", "" }, { 1301, 2024, "", "" }, { 1299, 2024, "", "" },
	{ -415, 2024, "", "" },
	{ NONE, 2024, "", "" }, { G_MAXINT64, 2024, "", "" },
};

START_TEST(a_day_of_the_year_falls_in_each_year)
{
	char buf[DAY_TEXT], text[6];

	ck_assert_str_eq(day_iso(yearday_in(yeardays[_i].mmdd, yeardays[_i].year), buf), yeardays[_i].day);
	ck_assert_str_eq(yearday_text(yeardays[_i].mmdd, text), yeardays[_i].text);
}
END_TEST

/* The published rows: name, base, years, months, days, quantity, expected, tolerance, source. */

enum { NAME, BASE, YEARS, MONTHS, DAYS, QUANTITY, EXPECTED, TOLERANCE, SOURCE, COLUMNS };

/* The fields of a line in the quotes of RFC 4180, without doubled ones. */
static char **
fields_of(const char *line)
{
	GPtrArray *fields = g_ptr_array_new();
	const char *p = line;

	for (;;) {
		gboolean quoted = *p == '"';
		const char *start = p + quoted;
		gsize length = strcspn(start, quoted ? "\"" : ",");

		g_ptr_array_add(fields, g_strndup(start, length));
		p = start + length + quoted;
		if (*p != ',')
			break;
		p++;
	}
	g_ptr_array_add(fields, NULL);
	return (char **)g_ptr_array_free(fields, FALSE);
}

static char **
published_lines(void)
{
	const char *top = g_getenv("top_srcdir");
	g_autofree char *path =
		g_build_filename(top ? top : ".", "tests", "data", "published", "11_dates.csv", NULL);
	g_autofree char *text = NULL;

	ck_assert_msg(g_file_get_contents(path, &text, NULL, NULL), "cannot read %s", path);
	return g_strsplit(g_strstrip(text), "\n", -1);
}

static void
check_sum(char **row)
{
	gint64 day = iso(row[BASE]);
	g_auto(GStrv) months = g_strsplit(row[MONTHS], "+", -1);	/* "1+1" is chained */
	char buf[DAY_TEXT];

	for (char **m = months; *m; m++)
		day = day_add_months(day, atoi(row[YEARS]) * 12 + atoi(*m));
	ck_assert_str_eq(day_iso(day + atoi(row[DAYS]), buf), row[EXPECTED]);
}

/* RFC 5545 skips the months without that day, where day_add_months clamps: the others are its instances. */
static void
check_skipping(char **row, int step)
{
	g_auto(GStrv) expected = g_strsplit(row[EXPECTED], " ", -1);
	gint64 base = iso(row[BASE]);
	int base_mday, year, month, mday, found = 0;

	day_to_ymd(base, &year, &month, &base_mday);
	for (int n = 0; expected[found]; n += step) {
		char buf[DAY_TEXT];
		gint64 day = day_add_months(base, n);

		day_to_ymd(day, &year, &month, &mday);
		if (mday == base_mday)
			ck_assert_str_eq(day_iso(day, buf), expected[found++]);
		else
			ck_assert_int_eq(mday, month_days(year, month));
	}
}

static void
check_week(char **row)
{
	g_autofree char *text = NULL;
	int year, week = day_week(iso(row[BASE]), &year);

	text = g_strdup_printf("%04d-W%02d-%d", year, week, day_weekday(iso(row[BASE])));
	ck_assert_str_eq(text, row[EXPECTED]);
}

/* FALSE for a row that is about something else than dates alone. */
static gboolean
check_row(char **row)
{
	if (g_str_has_prefix(row[NAME], "season_"))
		return FALSE;	/* what a season holds is the engine's */
	if (!strcmp(row[NAME], "rfc_monthly31"))
		check_skipping(row, 1);
	else if (!strcmp(row[NAME], "rfc_yearly0229"))
		check_skipping(row, 12);
	else if (g_str_has_prefix(row[NAME], "jd_"))
		ck_assert_int_eq(iso(row[BASE]), atoi(row[EXPECTED]));
	else if (g_str_has_prefix(row[NAME], "iso_"))
		check_week(row);
	else
		check_sum(row);
	return TRUE;
}

START_TEST(published_rows_hold)
{
	g_auto(GStrv) lines = published_lines();
	int checked = 0, left = 0;

	for (char **line = lines + 1; *line; line++) {
		g_auto(GStrv) row = fields_of(*line);

		ck_assert_uint_eq(g_strv_length(row), COLUMNS);
		if (check_row(row))
			checked++;
		else
			left++;
	}
	ck_assert_int_eq(checked, 31);
	ck_assert_int_eq(left, 5);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("Days are counted as the calendar counts them");
	TCase *tc = tcase_create("dates");

	tcase_set_timeout(tc, 60);
	tcase_add_test(tc, every_day_from_1_to_9999_follows_the_one_before);
	tcase_add_test(tc, weeks_and_weekdays_agree_with_glib);
	tcase_add_test(tc, week_1_holds_4_january_and_the_last_week_28_december);
	tcase_add_test(tc, the_first_and_the_last_day_have_a_week);
	tcase_add_loop_test(tc, what_is_no_day_has_no_number, 0, G_N_ELEMENTS(impossible));
	tcase_add_loop_test(tc, no_day_has_no_date_and_no_text, 0, 5);
	tcase_add_loop_test(tc, a_day_is_written_as_iso_8601_and_in_words, 0, G_N_ELEMENTS(texts));
	tcase_add_test(tc, months_have_names_and_lengths);
	tcase_add_loop_test(tc, months_are_added_with_the_day_clamped, 0, G_N_ELEMENTS(steps));
	tcase_add_loop_test(tc, months_between_are_counted_down, 0, G_N_ELEMENTS(spans));
	tcase_add_test(tc, months_between_is_the_largest_step_that_does_not_pass);
	tcase_add_test(tc, one_anchor_never_drifts);
	tcase_add_loop_test(tc, a_day_of_the_year_falls_in_each_year, 0, G_N_ELEMENTS(yeardays));
	tcase_add_test(tc, published_rows_hold);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
