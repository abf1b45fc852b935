/* Civil dates as day numbers: days since 1970-01-01, no clock, no time zone, no locale. */
#ifndef BASE_DATE_H
#define BASE_DATE_H

#include "base/value.h"

#include <glib.h>

#define DAY_TEXT 11	/* "2026-11-25" and its end */
#define DAY_FIRST G_GINT64_CONSTANT(-719162)	/* 0001-01-01 */
#define DAY_LAST G_GINT64_CONSTANT(2932896)	/* 9999-12-31 */

/* The day number of a civil date; NONE when there is no such day.  Years 1 to 9999. */
gint64 day_from_ymd(int year, int month, int day);
/* All three are 0 for NONE and for a day outside those years. */
void day_to_ymd(gint64 day, int *year, int *month, int *mday);

/* ISO 8601: 1 Monday to 7 Sunday; week 1 to 53 and the year it belongs to. */
int day_weekday(gint64 day);
int day_week(gint64 day, int *year);

/* day plus n months (n may be negative), the day of the month clamped to the month's last.
 * Always from the anchor, never from an earlier result.  RFC 5545 3.3.10 skips where this clamps.
 * NONE for NONE and outside the years 1 to 9999. */
gint64 day_add_months(gint64 day, int n);

/* Whole months from a to b, rounded down: the largest n with day_add_months(a, n) <= b.
 * 0 when one of them is no day. */
int day_months_between(gint64 a, gint64 b);

/* "January"; how many days a month has.  "" and 0 when there is no such month. */
const char *month_name(int month);
int month_days(int year, int month);
/* 1 to 12 by the first three letters or more of its name, in either case; 0 when length letters name none. */
int month_named(const char *letters, int length);

/* ISO 8601 into buf; returns buf.  NONE gives an empty text. */
const char *day_iso(gint64 day, char buf[DAY_TEXT]);
/* "25 Nov 2026" for people. */
const char *day_words(gint64 day, char buf[16]);

/* A typed date: ISO 8601, today, yesterday, tomorrow, -3d, +2w, "12 may" and "may 12" (the year that
 * lies nearest to today), "12 may 2026", 13/5/2026 and 5.13.2026 where only one reading exists.  Where two do
 * (5/6/24) ERR_INPUT names both.  A two-digit year is taken in 1970..2069.  With today NONE, whatever
 * hangs on today is refused. */
gboolean day_parse(const char *text, gint64 today, gint64 *day, GError **err);

/* A day that may not be known to the day: whatever day_parse takes, and "2019", "2019-03", "march 2019", "spring 2019"
 * (of the north: March to May), and two of these as "2018..2019-06", both counted.  The first and the last day that it
 * can be. */
gboolean day_span_parse(const char *text, gint64 today, gint64 *first, gint64 *last, GError **err);

/* A day that returns each year: "04-15", "15 apr".  As month * 100 + day.  02-29 is allowed. */
gboolean yearday_parse(const char *text, gint64 *mmdd, GError **err);
/* That day in a year; 02-29 is the 28th in a common year. */
gint64 yearday_in(gint64 mmdd, int year);
const char *yearday_text(gint64 mmdd, char buf[6]);	/* "04-15"; "" for NONE */

#endif
