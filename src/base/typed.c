#include "base/typed.h"

#include "base/err.h"
#include "base/text.h"

#include <string.h>

#define RATIO_DIGITS 12

/* Signs that typographers and word processors put in place of ASCII. */
static const struct sign {
	gunichar c;
	const char *plain;
} signs[] = {
	{ 0x00a0, " " }, { 0x2009, " " }, { 0x202f, " " },	/* no-break, thin */
	{ 0x2212, "-" }, { 0x2013, "-" },	/* minus, en dash */
	{ 0x2032, "'" }, { 0x2019, "'" }, { 0x2033, "\"" }, { 0x201d, "\"" },	/* primes, quotes */
	{ 0x2044, "/" }, { 0x00bc, " 1/4" }, { 0x00bd, " 1/2" }, { 0x00be, " 3/4" },
	{ 0x215b, " 1/8" }, { 0x215c, " 3/8" }, { 0x215d, " 5/8" }, { 0x215e, " 7/8" },
};

static char *
plain_of(const char *text)
{
	GString *out = g_string_new(NULL);

	for (const char *p = text; *p; p = g_utf8_next_char(p)) {
		gunichar c = g_utf8_get_char(p);
		gsize i = 0;

		while (i < G_N_ELEMENTS(signs) && signs[i].c != c)
			i++;
		if (i < G_N_ELEMENTS(signs))
			g_string_append(out, signs[i].plain);
		else
			g_string_append_unichar(out, c);
	}
	return g_strstrip(g_string_free(out, FALSE));
}

gboolean
typed_init(struct typed *t, const char *text, const char *example, GError **err)
{
	*t = (struct typed){ .example = example, .err = err, .shown = text_quoted(text) };
	if (strlen(text) > TYPED_MOST)
		return err_set(err, ERR_INPUT, "%s is too long: %s", t->shown, example);
	if (!g_utf8_validate(text, -1, NULL))
		return err_set(err, ERR_INPUT, "%s is not UTF-8 text: %s", t->shown, example);
	t->plain = plain_of(text);
	t->at = t->plain;
	if (!*t->plain)
		return err_set(err, ERR_INPUT, "nothing was given: %s", example);
	return TRUE;
}

void
typed_clear(struct typed *t)
{
	g_free(t->plain);
	g_free(t->shown);
	*t = (struct typed){ 0 };
}

gboolean
typed_fail(struct typed *t, const char *format, ...)
{
	g_autofree char *message = NULL;
	va_list ap;

	va_start(ap, format);
	message = g_strdup_vprintf(format, ap);
	va_end(ap);
	return err_set(t->err, ERR_INPUT, "%s: %s", t->shown, message);
}

void
typed_blanks(struct typed *t)
{
	while (*t->at == ' ' || *t->at == '\t')
		t->at++;
}

gboolean
typed_mark(struct typed *t, char mark)
{
	if (*t->at != mark)
		return FALSE;
	t->at++;
	typed_blanks(t);
	return TRUE;
}

gboolean
typed_sign(struct typed *t)
{
	if (typed_mark(t, '-'))
		return TRUE;
	typed_mark(t, '+');
	return FALSE;
}

static int
take_digits(struct typed *t)
{
	const char *start = t->at;

	while (g_ascii_isdigit(*t->at))
		t->at++;
	return (int)(t->at - start);
}

static gboolean
is_separator(char c)
{
	return c == '.' || c == ',';
}

static gboolean
three_digits(const char *s)
{
	return g_ascii_isdigit(s[0]) && g_ascii_isdigit(s[1]) && g_ascii_isdigit(s[2])
	    && !g_ascii_isdigit(s[3]);
}

/* "1.234,5", "1,234,567": tell the number that is meant when the grouping is regular.  The last separator is
 * the decimal one when it differs from the first. */
static gboolean
grouped(struct typed *t, const char *start)
{
	g_autoptr(GString) write = g_string_new(NULL);
	const char *end = start, *last = NULL;
	gboolean regular = TRUE;
	int lead = 0;	/* digits before the first separator */

	for (; g_ascii_isdigit(*end) || is_separator(*end); end++) {
		if (is_separator(*end)) {
			lead = last ? lead : (int)(end - start);
			last = end;
		}
	}
	for (const char *p = start; p < end; p++) {
		if (g_ascii_isdigit(*p))
			g_string_append_c(write, *p);
		else if (p == last && *p != start[lead])
			g_string_append_c(write, '.');
		else
			regular &= *p == start[lead] && three_digits(p + 1);
	}
	if (!regular || lead < 1 || lead > 3 || last == end - 1)
		return typed_fail(t, "\"%.*s\" has several points or commas: %s", (int)(end - start), start,
				  t->example);
	return typed_fail(t, "\"%.*s\" has several points or commas: write %s if that is meant",
			  (int)(end - start), start, write->str);
}

/* "1,234" is 1234 to one reader and 1.234 to another; "0,125" and "12,50" are clear. */
static gboolean
can_be_grouped(const struct decimal *d)
{
	return d->n_fraction == 3 && d->fraction[-1] == ',' && d->n_whole >= 1 && d->n_whole <= 3
	    && d->whole[0] != '0';
}

gboolean
typed_decimal(struct typed *t, struct decimal *d)
{
	const char *start = t->at;

	*d = (struct decimal){ .whole = start, .n_whole = take_digits(t), .fraction = "" };
	if (is_separator(*t->at)) {
		t->at++;
		d->fraction = t->at;
		d->n_fraction = take_digits(t);
		if (d->n_whole && !d->n_fraction && !is_separator(*t->at))
			return typed_fail(t, "a digit is missing behind \"%.*s\": %s", (int)(t->at - start),
					  start, t->example);
	}
	if (!d->n_whole && !d->n_fraction) {
		g_autofree char *piece = text_quoted(start);

		if (!*start)
			return typed_fail(t, "a number is missing at the end: %s", t->example);
		return typed_fail(t, "a number is wanted in place of %s: %s", piece, t->example);
	}
	if (is_separator(*t->at))
		return grouped(t, start);
	if (can_be_grouped(d))
		return typed_fail(t, "\"%.*s\" can be %.*s.%.*s or %.*s%.*s: write it without the comma",
				  (int)(t->at - start), start, d->n_whole, d->whole, d->n_fraction,
				  d->fraction, d->n_whole, d->whole, d->n_fraction, d->fraction);
	typed_blanks(t);
	return TRUE;
}

gboolean
typed_end(struct typed *t)
{
	g_autofree char *rest = NULL;

	if (!*t->at)
		return TRUE;
	rest = text_quoted(t->at);
	return typed_fail(t, "%s is left over: %s", rest, t->example);
}

const struct unit *
typed_unit(struct typed *t, const struct unit *units)
{
	gsize length = strcspn(t->at, " \t0123456789.,:/+-");

	for (const struct unit *u = units; u->name; u++) {
		if (strlen(u->name) == length && !g_ascii_strncasecmp(u->name, t->at, length)) {
			t->at += length;
			typed_blanks(t);
			return u;
		}
	}
	return NULL;
}

double
decimal_value(const struct decimal *d, int exponent)
{
	char buf[TYPED_MOST + 32];	/* digits are never more than the text's bytes */

	g_snprintf(buf, sizeof buf, "%.*s.%.*se%d", d->n_whole, d->whole, d->n_fraction, d->fraction,
		   exponent);
	return g_ascii_strtod(buf, NULL);
}

gboolean
decimal_scaled(const struct decimal *d, gint64 scale, gint64 most, gint64 *result)
{
	gint64 whole = 0, twice = 0;

	for (int i = 0; i < d->n_whole; i++) {
		whole = whole * 10 + (d->whole[i] - '0');
		if (whole > most)
			return FALSE;
	}
	/* floor(2 x scale x fraction), a digit at a time from the last: nested floors are the floor of all */
	for (int i = d->n_fraction - 1; i >= 0; i--)
		twice = (twice + 2 * scale * (d->fraction[i] - '0')) / 10;
	*result = whole * scale + (twice + 1) / 2;
	return *result <= most;
}

gboolean
decimal_ratio(const struct decimal *d, gint64 *num, gint64 *den)
{
	if (d->n_whole + d->n_fraction > RATIO_DIGITS)
		return FALSE;
	*num = 0;
	*den = 1;
	for (int i = 0; i < d->n_whole; i++)
		*num = *num * 10 + (d->whole[i] - '0');
	for (int i = 0; i < d->n_fraction; i++) {
		*num = *num * 10 + (d->fraction[i] - '0');
		*den *= 10;
	}
	return TRUE;
}

/* Fractions. */

static gboolean
too_many_digits(struct typed *t)
{
	return typed_fail(t, "that has more digits than a rule shows: %s", t->example);
}

static gboolean
whole_read(struct typed *t, gint64 *value)
{
	struct decimal d;

	if (!typed_decimal(t, &d))
		return FALSE;
	if (d.n_fraction)
		return typed_fail(t, "a fraction has whole numbers above and below: write such as 3/8 in");
	return decimal_scaled(&d, 1, 99999, value) || too_many_digits(t);
}

/* The part below the stroke; adds top / it to the whole number in *num. */
static gboolean
below_read(struct typed *t, gint64 top, gint64 *num, gint64 *den)
{
	gint64 below = 0;

	if (!whole_read(t, &below))
		return FALSE;
	if (below == 0)
		return typed_fail(t, "nothing can be divided by 0: write such as 3/8 in");
	*num = *num * below + top;
	*den = below;
	return TRUE;
}

/* "3/8" behind the whole number of "1-3/8". */
static gboolean
mixed_read(struct typed *t, gint64 *num, gint64 *den)
{
	gint64 top = 0;

	if (!whole_read(t, &top))
		return FALSE;
	if (!typed_mark(t, '/'))
		return typed_fail(t, "a fraction is wanted behind the whole number: write such as 1-3/8 in");
	if (!below_read(t, top, num, den))
		return FALSE;
	if (top >= *den)
		return typed_fail(t, "%d/%d is 1 or more: write %d-%d/%d if that is meant", (int)top, (int)*den,
				  (int)(*num / *den), (int)(*num % *den), (int)*den);
	return TRUE;
}

gboolean
typed_ratio(struct typed *t, gint64 *num, gint64 *den)
{
	struct decimal d;
	gint64 top;

	if (!typed_decimal(t, &d))
		return FALSE;
	if (!decimal_ratio(&d, num, den))
		return too_many_digits(t);
	if (d.n_fraction && *t->at == '/')
		return typed_fail(t, "a fraction has whole numbers above and below: write such as 3/8 in");
	if (d.n_fraction || (*t->at != '/' && *t->at != '-' && !g_ascii_isdigit(*t->at)))
		return TRUE;
	if (!decimal_scaled(&d, 1, 99999, &top))
		return too_many_digits(t);
	if (typed_mark(t, '/')) {
		*num = 0;
		return below_read(t, top, num, den);
	}
	typed_mark(t, '-');
	return mixed_read(t, num, den);
}
