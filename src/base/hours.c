/* Running hours as text. */
#include "base/amount.h"

#include "base/err.h"
#include "base/text.h"
#include "base/typed.h"

#include <string.h>

#define HOUR 3600
#define MINUTE 60
#define SECONDS_MOST (G_GINT64_CONSTANT(3600) * HOURS_MOST)

static const struct unit hour_units[] = {
	{ "h", HOUR, 1 }, { "hr", HOUR, 1 }, { "hrs", HOUR, 1 }, { "hour", HOUR, 1 }, { "hours", HOUR, 1 },
	{ NULL, 0, 0 },
};

static const struct unit time_units[] = {
	{ "h", HOUR, 1 }, { "hr", HOUR, 1 }, { "hrs", HOUR, 1 }, { "hour", HOUR, 1 }, { "hours", HOUR, 1 },
	{ "m", MINUTE, 1 }, { "min", MINUTE, 1 }, { "mins", MINUTE, 1 }, { "minute", MINUTE, 1 },
	{ "minutes", MINUTE, 1 }, { "s", 1, 1 }, { "sec", 1, 1 }, { "secs", 1, 1 }, { "second", 1, 1 },
	{ "seconds", 1, 1 }, { NULL, 0, 0 },
};

static gboolean
too_long(struct typed *t)
{
	return typed_fail(t, "that is more than the %d hours that are kept: %s", HOURS_MOST, t->example);
}

/* Add count of a unit to *sum, rounded to the second. */
static gboolean
add(struct typed *t, const struct decimal *count, gint64 unit, gint64 *sum)
{
	gint64 seconds;

	if (!decimal_scaled(count, unit, SECONDS_MOST, &seconds) || *sum + seconds > SECONDS_MOST)
		return too_long(t);
	*sum += seconds;
	return TRUE;
}

/* 60 minutes or seconds and more are either a slip or the next larger unit. */
static gboolean
too_many(struct typed *t, const struct decimal *count, gint64 unit, gint64 sum)
{
	char meant[HOURS_TEXT];
	const char *name = unit == MINUTE ? "minutes" : "seconds";

	if (!add(t, count, unit, &sum))
		return FALSE;
	return typed_fail(t, "%.*s %s are 60 or more: write %s if that is meant", count->n_whole,
			  count->whole, name, hours_exact(sum, meant));
}

/* "24" or "24:30" behind the hours and their colon. */
static gboolean
clock_read(struct typed *t, gint64 *sum)
{
	struct decimal part;
	gint64 value;

	for (gint64 unit = MINUTE; unit >= 1; unit /= 60) {
		if (!typed_decimal(t, &part))
			return FALSE;
		if (part.n_fraction || part.n_whole != 2)
			return typed_fail(
				t,
				"minutes and seconds have two digits behind a colon: write such as 2:05 or "
				"2:50");
		if (!decimal_scaled(&part, 1, 59, &value))
			return too_many(t, &part, unit, *sum);
		if (!add(t, &part, unit, sum))
			return FALSE;
		if (!typed_mark(t, ':'))
			break;
	}
	typed_unit(t, hour_units);
	return TRUE;
}

/* The unit behind a number: the one that stands there; hours for the first, minutes for two digits behind. */
static gint64
unit_read(struct typed *t, const struct decimal *count, gint64 last)
{
	const struct unit *unit = typed_unit(t, time_units);

	if (unit)
		return unit->num;
	if (*t->at)
		return 0;
	if (!last)
		return HOUR;
	return last == HOUR && count->n_whole == 2 ? MINUTE : 0;
}

static gboolean
no_unit(struct typed *t, const struct decimal *count, gint64 last)
{
	if (*t->at)
		return typed_end(t);
	if (last == HOUR)
		return typed_fail(
			t, "%.*s what? Write such as 2h05 or 2 h 5 min, or 2.5 for two and a half hours",
			count->n_whole, count->whole);
	return typed_fail(t, "a unit is missing at the end: %s", t->example);
}

/* "2.4", "2h24", "144 min", "2 h 24 min 30 s": numbers with ever smaller units; the last may be left out. */
static gboolean
parts_read(struct typed *t, struct decimal *count, gint64 *sum)
{
	gint64 last = 0, unit, value;

	for (;;) {
		unit = unit_read(t, count, last);
		if (!unit)
			return no_unit(t, count, last);
		if (last && unit >= last)
			return typed_fail(t, "the units must become smaller: %s", t->example);
		if (count->n_fraction && (last || *t->at))
			return typed_fail(t, "a fraction stands with one unit alone: %s", t->example);
		if (last && !decimal_scaled(count, 1, 59, &value))
			return too_many(t, count, unit, *sum);
		if (!add(t, count, unit, sum))
			return FALSE;
		last = unit;
		if (!g_ascii_isdigit(*t->at))
			return TRUE;
		if (!typed_decimal(t, count))
			return FALSE;
	}
}

static gboolean
hours_read(struct typed *t, gint64 *seconds)
{
	struct decimal first;
	gint64 sum = 0;
	gboolean ok;

	if (*t->at == '-')
		return typed_fail(t, "running hours cannot be negative: %s", t->example);
	if (!typed_decimal(t, &first))
		return FALSE;
	if (!typed_mark(t, ':'))
		ok = parts_read(t, &first, &sum);
	else if (first.n_fraction)
		ok = typed_fail(t, "a point or comma and a colon do not go together: %s", t->example);
	else
		ok = add(t, &first, HOUR, &sum) && clock_read(t, &sum);
	if (!ok || !typed_end(t))
		return FALSE;
	*seconds = sum;
	return TRUE;
}

gboolean
hours_parse(const char *text, gint64 *seconds, GError **err)
{
	struct typed t;
	gboolean ok =
		typed_init(&t, text, "write 2.4, 2h24, 2:24 or 144 min", err) && hours_read(&t, seconds);

	typed_clear(&t);
	return ok;
}

gboolean
hours_span_parse(const char *text, gint64 *least, gint64 *most, GError **err)
{
	const char *dots = strstr(text, "..");
	g_autofree char *first = dots ? g_strndup(text, (gsize)(dots - text)) : g_strdup(text);
	g_autofree char *shown = text_quoted(text);
	gint64 a, b;

	if (!hours_parse(first, &a, err))
		return FALSE;
	b = a;
	if (dots && !hours_parse(dots + 2, &b, err))
		return FALSE;
	if (a > b)
		return err_set(err, ERR_INPUT, "%s: the first figure is more than the second", shown);
	*least = a;
	*most = b;
	return TRUE;
}

static guint64
size_of(gint64 seconds)
{
	return seconds < 0 ? -(guint64)seconds : (guint64)seconds;
}

/* Hundredths of hours, without needless zeros behind the point.  Not by printf: every row of an export has some. */
static const char *
hundredths_text(guint64 hundredths, gboolean negative, char buf[HOURS_TEXT])
{
	char *at = buf;
	int rest = (int)(hundredths % 100);

	if (negative && hundredths)
		*at++ = '-';
	at += int_digits((gint64)(hundredths / 100), at);
	if (rest) {
		*at++ = '.';
		*at++ = (char)('0' + rest / 10);
	}
	if (rest % 10)
		*at++ = (char)('0' + rest % 10);
	*at = '\0';
	return buf;
}

const char *
hours_exact(gint64 seconds, char buf[HOURS_TEXT])
{
	guint64 size = size_of(seconds);

	buf[0] = '\0';
	if (seconds == NONE)
		return buf;
	if (size % 36 == 0)
		return hundredths_text(size / 36, seconds < 0, buf);
	g_snprintf(buf, HOURS_TEXT, "%s%" G_GUINT64_FORMAT ":%02d:%02d", seconds < 0 ? "-" : "", size / HOUR,
		   (int)(size % HOUR / MINUTE), (int)(size % MINUTE));
	return buf;
}

const char *
hours_words(gint64 seconds, char buf[HOURS_TEXT])
{
	buf[0] = '\0';
	if (seconds == NONE)
		return buf;
	return hundredths_text((size_of(seconds) + 180) / 360 * 10, seconds < 0, buf);
}
