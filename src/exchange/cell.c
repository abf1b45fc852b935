#include "exchange/cell.h"

#include "base/date.h"

#include <string.h>

static const char *
digits_read(const char *text, gint64 *value)
{
	while (*text >= '0' && *text <= '9' && *value < G_GINT64_CONSTANT(1000000000000000))
		*value = *value * 10 + (*text++ - '0');
	return text;
}

gboolean
plain_read(const char *text, char mark, struct plain *p)
{
	const char *whole, *end, *part;

	*p = (struct plain){ 0, 0, *text == '-' };
	whole = text + p->minus;
	end = digits_read(whole, &p->digits);
	if (end == whole)
		return FALSE;
	if (*end == mark) {
		part = end + 1;
		end = digits_read(part, &p->digits);
		p->decimals = (int)(end - part);
		if (!p->decimals)
			return FALSE;
	}
	return !*end && end - whole <= 16 && p->digits < G_GINT64_CONSTANT(1000000000000000);
}

static const gint64 ten_to[] = { 1, 10, 100, 1000, 10000, 100000, 1000000, 10000000, 100000000, 1000000000,
	10000000000, 100000000000, 1000000000000, 10000000000000, 100000000000000, 1000000000000000 };

/* Both numbers are exact doubles, so that the one division rounds correctly. */
double
plain_real(const struct plain *p)
{
	double value = (double)p->digits / (double)ten_to[p->decimals];

	return p->minus ? -value : value;
}

gboolean
plain_scaled(const struct plain *p, gint64 scale, gint64 *value)
{
	gint64 unit = ten_to[p->decimals];

	if (p->digits > G_MAXINT64 / scale || p->digits * scale % unit)
		return FALSE;
	*value = p->digits * scale / unit * (p->minus ? -1 : 1);
	return TRUE;
}

static int
pair(const char *text)
{
	if (!g_ascii_isdigit(text[0]) || !g_ascii_isdigit(text[1]))
		return -1;
	return (text[0] - '0') * 10 + text[1] - '0';
}

gboolean
iso_read(const char *text, gint64 *day)
{
	int century, year, month, mday;

	if (strnlen(text, DAY_TEXT) != DAY_TEXT - 1 || text[4] != '-' || text[7] != '-')
		return FALSE;
	century = pair(text);
	year = pair(text + 2);
	month = pair(text + 5);
	mday = pair(text + 8);
	if (century < 0 || year < 0 || month < 0 || mday < 0)
		return FALSE;
	*day = day_from_ymd(century * 100 + year, month, mday);
	return *day != NONE;
}

gboolean
looks_grouped(const char *text)
{
	const char *point = strchr(text, '.'), *first = point;
	int after = 0;

	if (!point || strchr(text, ','))
		return FALSE;
	while (first > text && g_ascii_isdigit(first[-1]))
		first--;
	while (g_ascii_isdigit(point[1 + after]))
		after++;
	return point - first >= 1 && point - first <= 3 && after == 3 && *first != '0';
}
