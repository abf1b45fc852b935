/* A day that is not known to the day, as people remember it. */
#include "base/date.h"

#include "base/err.h"
#include "base/text.h"

#include <string.h>

struct span {
	gint64 first, last;
};

/* n months of a year from the first on. */
static struct span
months_of(int year, int first, int n)
{
	gint64 from = day_from_ymd(year, first, 1), to = day_add_months(from, n);

	return (struct span){ from, to == NONE ? NONE : to - 1 };
}

/* The year that a text ends with, standing alone or behind a blank; -1: none.  *before is what stands before it. */
static int
year_at_end(const char *text, char **before)
{
	gsize n = strlen(text);
	int year = 0;

	*before = NULL;
	if (n < 4 || (n > 4 && text[n - 5] != ' '))
		return -1;
	for (const char *p = text + n - 4; *p; p++) {
		if (!g_ascii_isdigit(*p))
			return -1;
		year = year * 10 + (*p - '0');
	}
	*before = g_strstrip(g_strndup(text, n - 4));
	return year;
}

/* "spring", "march", "" before a year. */
static gboolean
named_span(const char *text, const char *name, int year, struct span *s, GError **err)
{
	static const struct { const char *name; int month; } seasons[] = {
		{ "spring", 3 }, { "summer", 6 }, { "autumn", 9 }, { "fall", 9 },
	};
	g_autofree char *shown = text_quoted(text);
	int month = month_named(name, (int)strlen(name));

	*s = months_of(year, 1, 12);
	if (!*name)
		return TRUE;
	if (!g_ascii_strcasecmp(name, "winter"))
		return err_set(err, ERR_INPUT, "%s can be the winter before or after that summer: write %04d-12..%04d-02 "
			       "or %04d-12..%04d-02", shown, year - 1, year, year, year + 1);
	for (gsize i = 0; i < G_N_ELEMENTS(seasons); i++)
		if (!g_ascii_strcasecmp(name, seasons[i].name)) {
			*s = months_of(year, seasons[i].month, 3);
			return TRUE;
		}
	if (month) {
		*s = months_of(year, month, 1);
		return TRUE;
	}
	return err_set(err, ERR_INPUT, "%s names no part of a year: write 2019, 2019-03, march 2019, spring 2019 or "
		       "2019-03-20..2019-06-15", shown);
}

/* "2019-03"; 0 when it is none. */
static int
iso_month(const char *text, int *year)
{
	int month;

	for (int i = 0; i < 7; i++)
		if (i == 4 ? text[i] != '-' : !g_ascii_isdigit(text[i]))
			return 0;
	*year = (int)g_ascii_strtoll(text, NULL, 10);
	month = (int)g_ascii_strtoll(text + 5, NULL, 10);
	return text[7] || month < 1 || month > 12 ? 0 : month;
}

static gboolean
one_span(const char *text, gint64 today, struct span *s, GError **err)
{
	g_autofree char *name = NULL;
	int year, month = iso_month(text, &year);

	if (month) {
		*s = months_of(year, month, 1);
		return TRUE;
	}
	year = year_at_end(text, &name);
	if (year >= 1 && (!*name || !strpbrk(name, "0123456789")))
		return named_span(text, name, year, s, err);
	if (!day_parse(text, today, &s->first, err))
		return FALSE;
	s->last = s->first;
	return TRUE;
}

gboolean
day_span_parse(const char *text, gint64 today, gint64 *first, gint64 *last, GError **err)
{
	g_autofree char *all = g_strstrip(g_strdup(text)), *shown = text_quoted(text);
	char *dots = strstr(all, "..");
	struct span a, b;

	if (dots) {
		*dots = '\0';
		g_strchomp(all);
	}
	if (!one_span(all, today, &a, err))
		return FALSE;
	b = a;
	if (dots && !one_span(g_strchug(dots + 2), today, &b, err))
		return FALSE;
	if (a.first == NONE || b.last == NONE)
		return err_set(err, ERR_INPUT, "%s lies outside the years 0001 to 9999", shown);
	if (a.first > b.last)
		return err_set(err, ERR_INPUT, "%s ends before it begins", shown);
	*first = a.first;
	*last = b.last;
	return TRUE;
}
