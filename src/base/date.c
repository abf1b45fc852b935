#include "base/date.h"

#define LAST_YEAR 9999

static const char *const month_names[12] = {
	"January", "February", "March", "April", "May", "June",
	"July", "August", "September", "October", "November", "December",
};

const char *
month_name(int month)
{
	return month >= 1 && month <= 12 ? month_names[month - 1] : "";
}

int
month_named(const char *letters, int length)
{
	for (int m = 1; length >= 3 && m <= 12; m++)
		if (length <= (int)strlen(month_name(m)) && !g_ascii_strncasecmp(month_name(m), letters, (gsize)length))
			return m;
	return 0;
}

int
month_days(int year, int month)
{
	static const int last[12] = { 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 };
	gboolean leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;

	if (month < 1 || month > 12)
		return 0;
	return month == 2 && leap ? 29 : last[month - 1];
}

/* Years are counted from 1 March, so that the leap day ends one; any 400 of them are 146,097 days. */
gint64
day_from_ymd(int year, int month, int day)
{
	int y, shifted, day_of_year;

	if (year < 1 || year > LAST_YEAR || day < 1 || day > month_days(year, month))
		return NONE;
	y = month > 2 ? year : year - 1;
	shifted = month > 2 ? month - 3 : month + 9;
	day_of_year = (153 * shifted + 2) / 5 + day - 1;
	return (gint64)y * 365 + y / 4 - y / 100 + y / 400 + day_of_year - 719468;
}

void
day_to_ymd(gint64 day, int *year, int *month, int *mday)
{
	int days, era, of_era, year_of_era, of_year, shifted;

	*year = *month = *mday = 0;
	if (day < DAY_FIRST || day > DAY_LAST)
		return;
	days = (int)day + 719468;
	era = days / 146097;
	of_era = days % 146097;
	year_of_era = (of_era - of_era / 1460 + of_era / 36524 - of_era / 146096) / 365;
	of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
	shifted = (5 * of_year + 2) / 153;
	*mday = of_year - (153 * shifted + 2) / 5 + 1;
	*month = shifted < 10 ? shifted + 3 : shifted - 9;
	*year = era * 400 + year_of_era + (*month <= 2);
}

int
day_weekday(gint64 day)
{
	/* 0001-01-01 is a Monday. */
	return day < DAY_FIRST || day > DAY_LAST ? 0 : (int)((day - DAY_FIRST) % 7) + 1;
}

int
day_week(gint64 day, int *year)
{
	int y, month, mday;
	gint64 thursday;

	*year = 0;
	if (day < DAY_FIRST || day > DAY_LAST)
		return 0;
	/* A week belongs to the year of its Thursday. */
	thursday = MIN(day - day_weekday(day) + 4, DAY_LAST);
	day_to_ymd(thursday, &y, &month, &mday);
	*year = y;
	return (int)((thursday - day_from_ymd(y, 1, 1)) / 7) + 1;
}

gint64
day_add_months(gint64 day, int n)
{
	int year, month, mday;
	gint64 months;

	day_to_ymd(day, &year, &month, &mday);
	if (!year)
		return NONE;
	months = (gint64)year * 12 + month - 1 + n;
	if (months < 12 || months / 12 > LAST_YEAR)
		return NONE;
	year = (int)(months / 12);
	month = (int)(months % 12) + 1;
	return day_from_ymd(year, month, MIN(mday, month_days(year, month)));
}

int
day_months_between(gint64 a, gint64 b)
{
	int year_a, month_a, mday_a, year_b, month_b, mday_b, n;

	day_to_ymd(a, &year_a, &month_a, &mday_a);
	day_to_ymd(b, &year_b, &month_b, &mday_b);
	if (!year_a || !year_b)
		return 0;
	n = (year_b - year_a) * 12 + month_b - month_a;
	return MIN(mday_a, month_days(year_b, month_b)) <= mday_b ? n : n - 1;
}

static char *
put_digits(char *at, int value, int digits)
{
	for (int i = digits - 1; i >= 0; i--) {
		at[i] = (char)('0' + value % 10);
		value /= 10;
	}
	return at + digits;
}

const char *
day_iso(gint64 day, char buf[DAY_TEXT])
{
	int year, month, mday;
	char *at = buf;

	day_to_ymd(day, &year, &month, &mday);
	if (year) {
		at = put_digits(at, year, 4);
		*at++ = '-';
		at = put_digits(at, month, 2);
		*at++ = '-';
		at = put_digits(at, mday, 2);
	}
	*at = '\0';
	return buf;
}

const char *
day_words(gint64 day, char buf[16])
{
	int year, month, mday;
	char *at = buf;

	day_to_ymd(day, &year, &month, &mday);
	if (year) {
		at = put_digits(at, mday, mday < 10 ? 1 : 2);
		*at++ = ' ';
		memcpy(at, month_name(month), 3);
		at[3] = ' ';
		at = put_digits(at + 4, year, year < 10 ? 1 : year < 100 ? 2 : year < 1000 ? 3 : 4);
	}
	*at = '\0';
	return buf;
}

gint64
yearday_in(gint64 mmdd, int year)
{
	int month, day;

	if (mmdd < 101 || mmdd > 1231 || year < 1 || year > LAST_YEAR)
		return NONE;
	month = (int)mmdd / 100;
	day = (int)mmdd % 100;
	if (month == 2 && day == 29)
		day = month_days(year, 2);
	return day_from_ymd(year, month, day);
}

const char *
yearday_text(gint64 mmdd, char buf[6])
{
	char *at = buf;

	if (yearday_in(mmdd, 2000) != NONE) {
		at = put_digits(at, (int)mmdd / 100, 2);
		*at++ = '-';
		at = put_digits(at, (int)mmdd % 100, 2);
	}
	*at = '\0';
	return buf;
}
