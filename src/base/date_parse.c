/* Dates as people type them: the text is cut into pieces, and the pieces may have several readings. */
#include "base/date.h"

#include "base/err.h"
#include "base/text.h"

#include <string.h>

struct piece {
	const char *at;
	int length;
	int number;	/* -1 for a word */
};

struct pieces {
	struct piece p[3];
	int n;
	char mark[2];	/* what stands behind a piece: one of - / . or a comma, else a blank */
	const char *stop;	/* where the text stops making sense; its end when it does not */
};

struct reading {
	int year, month, day;
};

static const char *
skip_blanks(const char *s)
{
	while (*s == ' ' || *s == '\t')
		s++;
	return s;
}

/* A run of digits or letters; NULL when there is none at s. */
static const char *
take_piece(const char *s, struct piece *p)
{
	*p = (struct piece){ .at = s, .number = g_ascii_isdigit(*s) ? 0 : -1 };
	for (; p->number >= 0 ? g_ascii_isdigit(*s) : g_ascii_isalpha(*s); s++) {
		if (++p->length > 9)
			return NULL;
		if (p->number >= 0)
			p->number = p->number * 10 + (*s - '0');
	}
	return p->length ? s : NULL;
}

/* FALSE when anything else than up to three pieces and single marks between them stands in the text. */
static gboolean
cut(const char *text, struct pieces *ps)
{
	const char *s = skip_blanks(text), *next;

	*ps = (struct pieces){ .stop = s };
	while (*s) {
		next = ps->n < 3 ? take_piece(s, &ps->p[ps->n]) : NULL;
		if (!next)
			return FALSE;
		s = skip_blanks(next);
		ps->stop = s;
		if (ps->n++ < 2 && *s) {
			ps->mark[ps->n - 1] = strchr("-/.,", *s) ? *s++ : ' ';
			s = skip_blanks(s);
			if (!*s)
				return FALSE;
		}
	}
	return ps->n > 0;
}

static int
piece_month(const struct piece *p)
{
	return p->number >= 0 ? 0 : month_named(p->at, p->length);
}

static gboolean
piece_is(const struct piece *p, const char *word)
{
	return p->length == (int)strlen(word) && !g_ascii_strncasecmp(p->at, word, (gsize)p->length);
}

/* The year that a piece names; -1 when it has neither two nor four digits. */
static int
piece_year(const struct piece *p)
{
	if (p->number >= 0 && p->length == 4)
		return p->number;
	if (p->number < 0 || p->length != 2)
		return -1;
	return p->number < 70 ? 2000 + p->number : 1900 + p->number;
}

static gboolean
not_a_date(const char *text, const struct pieces *ps, GError **err)
{
	g_autofree char *shown = text_quoted(text), *stop = NULL;

	if (!*skip_blanks(text))
		return err_set(err, ERR_INPUT, "no date was given: write 2026-05-12, 12 may, today or -3d");
	if (!*ps->stop || ps->stop == skip_blanks(text))
		return err_set(err, ERR_INPUT, "%s is not a date: write 2026-05-12, 12 may, today or -3d",
			       shown);
	stop = text_quoted(ps->stop);
	return err_set(err, ERR_INPUT, "%s is not a date from %s on: write 2026-05-12, 12 may, today or -3d",
		       shown, stop);
}

static gboolean
no_such_month(const char *text, const struct piece *p, GError **err)
{
	g_autofree char *shown = text_quoted(text), *word = g_strndup(p->at, (gsize)p->length);
	const char *months[12], *near;

	for (int i = 0; i < 12; i++)
		months[i] = month_name(i + 1);
	near = text_nearest(word, months, 12);
	if (near)
		return err_set(err, ERR_INPUT, "%s: \"%s\" is no month: is %s meant?", shown, word, near);
	return err_set(err, ERR_INPUT, "%s: \"%s\" is no month: write such as 12 may or 2026-05-12", shown,
		       word);
}

/* Say why r is no day of the calendar. */
static gboolean
no_such_day(const char *text, const struct reading *r, GError **err)
{
	g_autofree char *shown = text_quoted(text);

	if (r->year < 1)
		return err_set(err, ERR_INPUT, "%s: years run from 0001 to 9999", shown);
	if (r->month < 1 || r->month > 12)
		return err_set(err, ERR_INPUT, "%s: there is no month %d: the months are 1 to 12", shown,
			       r->month);
	if (r->day < 1)
		return err_set(err, ERR_INPUT, "%s: there is no day 0: the days begin with 1", shown);
	return err_set(err, ERR_INPUT, "%s: %s %d has %d days", shown, month_name(r->month), r->year,
		       month_days(r->year, r->month));
}

static gboolean
take_reading(const char *text, const struct reading *r, gint64 *day, GError **err)
{
	gint64 found = day_from_ymd(r->year, r->month, r->day);

	if (found == NONE)
		return no_such_day(text, r, err);
	*day = found;
	return TRUE;
}

/* "2026-05-12", "13/5/2026", "5.13.26": every reading that three numbers of their lengths can have. */
static int
number_readings(const struct pieces *ps, struct reading r[3])
{
	const struct piece *p = ps->p;
	int a = p[0].number, b = p[1].number, c = p[2].number, n = 0, year = piece_year(&p[2]);

	if (ps->mark[0] != ps->mark[1] || !strchr("-/.", ps->mark[0]) || p[1].length > 2)
		return 0;
	if (p[0].length == 4 && p[2].length <= 2) {
		r[n++] = (struct reading){ a, b, c };
	} else if (p[0].length <= 2 && year >= 0) {
		r[n++] = (struct reading){ year, b, a };
		r[n++] = (struct reading){ year, a, b };
		/* With dashes a short year may come first, as in ISO 8601 before 2004. */
		if (ps->mark[0] == '-' && p[0].length == 2 && p[2].length == 2)
			r[n++] = (struct reading){ piece_year(&p[0]), b, c };
	}
	return n;
}

/* Keep the readings that are days of the calendar, each day once. */
static int
possible_readings(const struct reading *all, int n_all, gint64 day[3])
{
	int n = 0;

	for (int i = 0; i < n_all; i++) {
		gint64 d = day_from_ymd(all[i].year, all[i].month, all[i].day);
		gboolean known = d == NONE;

		for (int k = 0; k < n; k++)
			known |= day[k] == d;
		if (!known)
			day[n++] = d;
	}
	return n;
}

static gboolean
two_readings(const char *text, const gint64 *day, int n, GError **err)
{
	g_autofree char *shown = text_quoted(text);
	g_autoptr(GString) can = g_string_new(NULL), write = g_string_new(NULL);
	char iso[DAY_TEXT];

	for (int i = 0; i < n; i++) {
		const char *join = i == 0 ? "" : i == n - 1 ? " or " : ", ";
		int year, month, mday;

		day_to_ymd(day[i], &year, &month, &mday);
		g_string_append_printf(can, "%s%d %s %d", join, mday, month_name(month), year);
		g_string_append_printf(write, "%s%s", join, day_iso(day[i], iso));
	}
	return err_set(err, ERR_INPUT, "%s can be %s: write %s", shown, can->str, write->str);
}

static gboolean
numbers_parse(const char *text, const struct pieces *ps, gint64 *day, GError **err)
{
	struct reading r[3];
	gint64 possible[3];
	int n = number_readings(ps, r), n_possible = possible_readings(r, n, possible), best = 0;

	if (n == 0)
		return not_a_date(text, ps, err);
	if (n_possible > 1)
		return two_readings(text, possible, n_possible, err);
	if (n_possible == 1) {
		*day = possible[0];
		return TRUE;
	}
	/* "31/2/2025" is better told about its February than about a month 31. */
	while (best < n - 1 && (r[best].month < 1 || r[best].month > 12))
		best++;
	return no_such_day(text, &r[best], err);
}

/* "12 may 2026", "may 12, 2026", "2026 may 12". */
static gboolean
named_parse(const char *text, const struct pieces *ps, gint64 *day, GError **err)
{
	const struct piece *p = ps->p;
	int word = p[0].number < 0 ? 0 : 1, month = piece_month(&p[word]);
	gboolean year_first = p[0].length == 4 && word == 1;
	const struct piece *y = year_first ? &p[0] : &p[2], *d = year_first ? &p[2] : &p[1 - word];
	struct reading r = { piece_year(y), month, d->number };

	if (!month && p[word].number < 0)
		return no_such_month(text, &p[word], err);
	if (!month || r.year < 0 || d->number < 0 || d->length > 2)
		return not_a_date(text, ps, err);
	return take_reading(text, &r, day, err);
}

/* "29 feb" near 2026 is neither 2024 nor 2028 without a guess; every other day has a nearest year. */
static gboolean
nearest_year(const char *text, gint64 today, struct reading r, gint64 *day, GError **err)
{
	g_autofree char *shown = text_quoted(text);
	gint64 best = NONE;
	int this_year, month, mday;

	day_to_ymd(today, &this_year, &month, &mday);
	if (r.day < 1 || r.day > month_days(2000, r.month))
		return err_set(err, ERR_INPUT, "%s: the days of %s are 1 to %d", shown, month_name(r.month),
			       month_days(2000, r.month));
	for (r.year = this_year - 1; this_year && r.year <= this_year + 1; r.year++) {
		gint64 d = day_from_ymd(r.year, r.month, r.day);

		if (d != NONE && (best == NONE || ABS(d - today) < ABS(best - today)))
			best = d;
	}
	if (best == NONE)
		return err_set(err, ERR_INPUT, "%s: which year? Write such as 2028-%02d-%02d", shown, r.month,
			       r.day);
	*day = best;
	return TRUE;
}

/* "12 may", "may 12", and what is left over of a date: "may 2026", "5/6". */
static gboolean
two_pieces_parse(const char *text, const struct pieces *ps, gint64 today, gint64 *day, GError **err)
{
	g_autofree char *shown = text_quoted(text);
	int word = ps->p[0].number < 0 ? 0 : 1, month = piece_month(&ps->p[word]);
	const struct piece *d = &ps->p[1 - word];

	if (ps->p[word].number >= 0 && d->length <= 2 && ps->p[word].length <= 2)
		return err_set(err, ERR_INPUT, "%s: which year? Write the whole date, such as 2026-05-12",
			       shown);
	if (ps->p[word].number >= 0 || d->number < 0)
		return not_a_date(text, ps, err);
	if (!month)
		return no_such_month(text, &ps->p[word], err);
	if (d->length == 4)
		return err_set(err, ERR_INPUT, "%s: which day of %s? Write such as %04d-%02d-01", shown,
			       month_name(month), d->number, month);
	if (d->length > 2)
		return not_a_date(text, ps, err);
	return nearest_year(text, today, (struct reading){ 0, month, d->number }, day, err);
}

static gboolean
shifted(const char *text, gint64 today, gint64 days, gint64 *day, GError **err)
{
	g_autofree char *shown = text_quoted(text);

	if (today < DAY_FIRST || today > DAY_LAST)
		return err_set(err, ERR_INPUT,
			       "%s needs to know what day it is: write the date, such as 2026-05-12", shown);
	if (today + days < DAY_FIRST || today + days > DAY_LAST)
		return err_set(err, ERR_INPUT, "%s lies outside the years 0001 to 9999", shown);
	*day = today + days;
	return TRUE;
}

/* "-3d", "+2w". */
static gboolean
relative_parse(const char *text, gint64 today, gint64 *day, GError **err)
{
	g_autofree char *shown = text_quoted(text);
	const char *s = skip_blanks(text);
	int sign = *s == '-' ? -1 : 1;
	struct piece number = { 0 }, unit = { 0 };

	s = take_piece(skip_blanks(s + 1), &number);
	s = s && number.number >= 0 ? take_piece(skip_blanks(s), &unit) : NULL;
	if (!s || *skip_blanks(s) || unit.number >= 0 || (!piece_is(&unit, "d") && !piece_is(&unit, "w")))
		return err_set(err, ERR_INPUT, "%s: a step is counted in days or weeks: write -3d or +2w",
			       shown);
	return shifted(text, today, (gint64)sign * number.number * (piece_is(&unit, "w") ? 7 : 1), day, err);
}

static gboolean
word_day_parse(const char *text, const struct pieces *ps, gint64 today, gint64 *day, GError **err)
{
	if (piece_is(&ps->p[0], "today"))
		return shifted(text, today, 0, day, err);
	if (piece_is(&ps->p[0], "yesterday"))
		return shifted(text, today, -1, day, err);
	if (piece_is(&ps->p[0], "tomorrow"))
		return shifted(text, today, 1, day, err);
	return not_a_date(text, ps, err);
}

/* The date that a text begins with when a time of day follows, as spreadsheets write it; else NONE. */
static gint64
day_before_time(const char *text)
{
	struct piece y, m, d;
	const char *s = take_piece(skip_blanks(text), &y);

	s = s && y.length == 4 && *s == '-' ? take_piece(s + 1, &m) : NULL;
	s = s && *s == '-' ? take_piece(s + 1, &d) : NULL;
	if (!s || (*s != 'T' && *s != 't' && *s != ' ') || !g_ascii_isdigit(s[1]))
		return NONE;
	return day_from_ymd(y.number, m.number, d.number);
}

gboolean
day_parse(const char *text, gint64 today, gint64 *day, GError **err)
{
	struct pieces ps;
	gboolean whole = cut(text, &ps);
	char iso[DAY_TEXT];
	const char *start = skip_blanks(text);

	if (*start == '-' || *start == '+')
		return relative_parse(text, today, day, err);
	if (day_before_time(text) != NONE) {
		g_autofree char *shown = text_quoted(text);

		return err_set(err, ERR_INPUT, "%s: a date without the time is wanted: write %s", shown,
			       day_iso(day_before_time(text), iso));
	}
	if (!whole)
		return not_a_date(text, &ps, err);
	if (ps.n == 1)
		return word_day_parse(text, &ps, today, day, err);
	if (ps.n == 2)
		return two_pieces_parse(text, &ps, today, day, err);
	if (ps.p[0].number >= 0 && ps.p[1].number >= 0 && ps.p[2].number >= 0)
		return numbers_parse(text, &ps, day, err);
	return named_parse(text, &ps, day, err);
}

/* "04-15" is month and day, as in ISO 8601; other numbers must have one reading only. */
static gboolean
yearday_numbers(const char *text, const struct pieces *ps, gint64 *mmdd, GError **err)
{
	g_autofree char *shown = text_quoted(text);
	int a = ps->p[0].number, b = ps->p[1].number;
	gboolean iso = ps->mark[0] == '-' && ps->p[0].length == 2 && ps->p[1].length == 2;
	gboolean month_first = day_from_ymd(2000, a, b) != NONE, day_first = day_from_ymd(2000, b, a) != NONE;
	char one[6], two[6];

	if (!strchr("-/.", ps->mark[0]) || ps->p[0].length > 2 || ps->p[1].length > 2
	    || (!month_first && !day_first))
		return err_set(err, ERR_INPUT, "%s is no day of the year: write month and day, such as 04-15",
			       shown);
	if (iso && !month_first)
		return err_set(err, ERR_INPUT, "%s: there is no month %d: write %s", shown, a,
			       yearday_text(b * 100 + a, one));
	if (!iso && month_first && day_first && a != b)
		return err_set(err, ERR_INPUT, "%s can be %d %s or %d %s: write %s or %s", shown, a,
			       month_name(b), b, month_name(a), yearday_text(b * 100 + a, one),
			       yearday_text(a * 100 + b, two));
	*mmdd = month_first ? a * 100 + b : b * 100 + a;
	return TRUE;
}

gboolean
yearday_parse(const char *text, gint64 *mmdd, GError **err)
{
	g_autofree char *shown = text_quoted(text);
	struct pieces ps;
	gboolean two = cut(text, &ps) && ps.n == 2;
	int word = ps.p[0].number < 0 ? 0 : 1, month = piece_month(&ps.p[word]);
	const struct piece *d = &ps.p[1 - word];

	if (two && ps.p[word].number >= 0)
		return yearday_numbers(text, &ps, mmdd, err);
	if (two && d->number >= 0 && !month)
		return no_such_month(text, &ps.p[word], err);
	if (!two || d->number < 0 || d->length > 2)
		return err_set(err, ERR_INPUT,
			       "%s is no day of the year: write month and day without a year, such as "
			       "04-15 or 15 apr",
			       shown);
	if (d->number < 1 || d->number > month_days(2000, month))
		return err_set(err, ERR_INPUT, "%s: the days of %s are 1 to %d", shown, month_name(month),
			       month_days(2000, month));
	*mmdd = month * 100 + d->number;
	return TRUE;
}
