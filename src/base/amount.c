#include "base/amount.h"

#include "base/text.h"
#include "base/typed.h"

#include <math.h>
#include <string.h>

#define CENTS_MOST G_GINT64_CONSTANT(1000000000000)
#define COLDEST (-273.15)
#define HOTTEST 5000.0
#define SALTIEST 45.0

/* "e-05", as programs write a very small or a very large number. */
static gboolean
exponent_read(struct typed *t, int *exponent)
{
	gboolean negative;
	struct decimal d;
	gint64 value;

	*exponent = 0;
	if (!typed_mark(t, 'e') && !typed_mark(t, 'E'))
		return TRUE;
	negative = typed_sign(t);
	if (!typed_decimal(t, &d))
		return FALSE;
	if (d.n_fraction || !decimal_scaled(&d, 1, 330, &value))
		return typed_fail(t, "the exponent is too large or no whole number: %s", t->example);
	*exponent = (int)(negative ? -value : value);
	return TRUE;
}

static gboolean
number_read(struct typed *t, double *value)
{
	gboolean negative = typed_sign(t);
	struct decimal d;
	int exponent;
	double read;

	if (!typed_decimal(t, &d) || !exponent_read(t, &exponent) || !typed_end(t))
		return FALSE;
	read = decimal_value(&d, exponent);
	if (!isfinite(read))
		return typed_fail(t, "the number is too large to be kept: %s", t->example);
	*value = negative && read > 0 ? -read : read;
	return TRUE;
}

gboolean
number_parse(const char *text, double *value, GError **err)
{
	struct typed t;
	gboolean ok =
		typed_init(&t, text, "write a number alone, such as 12.5", err) && number_read(&t, value);

	typed_clear(&t);
	return ok;
}

const char *
number_exact(double value, char buf[NUMBER_TEXT])
{
	static const char *const formats[] = { "%.15g", "%.16g", "%.17g" };

	buf[0] = '\0';
	for (gsize i = 0; isfinite(value) && i < G_N_ELEMENTS(formats); i++) {
		g_ascii_formatd(buf, NUMBER_TEXT, formats[i], value);
		if (g_ascii_strtod(buf, NULL) == value)
			break;
	}
	return buf;
}

static gboolean
count_read(struct typed *t, gint64 *value)
{
	struct decimal d;
	gint64 read;

	if (*t->at == '-')
		return typed_fail(t, "a count cannot be negative: %s", t->example);
	if (!typed_decimal(t, &d) || !typed_end(t))
		return FALSE;
	if (!decimal_scaled(&d, 1, COUNT_MOST, &read))
		return typed_fail(t, "the count is too large: at most %d is kept", COUNT_MOST);
	if (d.n_fraction && decimal_value(&d, 0) == (double)read)
		return typed_fail(t, "a whole number is wanted: write %" G_GINT64_FORMAT, read);
	if (d.n_fraction)
		return typed_fail(t, "a whole number is wanted, without a fraction: %s", t->example);
	*value = read;
	return TRUE;
}

gboolean
count_parse(const char *text, gint64 *value, GError **err)
{
	struct typed t;
	gboolean ok = typed_init(&t, text, "write a whole number, such as 12", err) && count_read(&t, value);

	typed_clear(&t);
	return ok;
}

/* Money. */

/* Three letters as capitals into currency, when they stand next; FALSE when they are no such three. */
static gboolean
currency_read(struct typed *t, char currency[4])
{
	gsize length = strcspn(t->at, " \t0123456789.,+-");
	gboolean letters = length == 3;

	if (!length || (g_ascii_ispunct(*t->at) && *t->at != '$'))
		return TRUE;
	for (gsize i = 0; i < length; i++)
		letters &= g_ascii_isalpha(t->at[i]);
	if (!letters) {
		g_autofree char *piece = g_strndup(t->at, length), *shown = text_quoted(piece);

		return typed_fail(t, "%s is no currency of three letters: %s", shown, t->example);
	}
	for (gsize i = 0; i < length; i++)
		currency[i] = g_ascii_toupper(t->at[i]);
	currency[length] = '\0';
	t->at += length;
	typed_blanks(t);
	return TRUE;
}

static gboolean
money_decimal(struct typed *t, struct decimal *d, gint64 *cents)
{
	char rounded[MONEY_TEXT];

	if (!typed_decimal(t, d))
		return FALSE;
	if (!decimal_scaled(d, 100, CENTS_MOST, cents))
		return typed_fail(t, "the sum is too large: at most 10000000000.00 is kept");
	if (d->n_fraction > 2)
		return typed_fail(t, "money has two decimals: write %s, or %.*s%.*s if that is meant",
				  money_exact(*cents, rounded), d->n_whole, d->whole, d->n_fraction,
				  d->fraction);
	return TRUE;
}

static gboolean
money_read(struct typed *t, gint64 *cents, char currency[4])
{
	char before[4] = "", behind[4] = "";
	struct decimal d;
	gboolean negative;
	gint64 read;

	if (!currency_read(t, before))
		return FALSE;
	negative = typed_sign(t);
	if (!money_decimal(t, &d, &read) || !currency_read(t, behind) || !typed_end(t))
		return FALSE;
	if (*before && *behind)
		return typed_fail(t, "two currencies, %s and %s: %s", before, behind, t->example);
	memcpy(currency, *before ? before : behind, sizeof before);
	*cents = negative ? -read : read;
	return TRUE;
}

gboolean
money_parse(const char *text, gint64 *cents, char currency[4], GError **err)
{
	struct typed t;
	gboolean ok = typed_init(&t, text, "write 12.50, USD 12.50 or 12.50 EUR", err)
		      && money_read(&t, cents, currency);

	typed_clear(&t);
	return ok;
}

const char *
money_exact(gint64 cents, char buf[MONEY_TEXT])
{
	guint64 size = cents < 0 ? -(guint64)cents : (guint64)cents;

	buf[0] = '\0';
	if (cents != NONE)
		g_snprintf(buf, MONEY_TEXT, "%s%" G_GUINT64_FORMAT ".%02d", cents < 0 ? "-" : "", size / 100,
			   (int)(size % 100));
	return buf;
}

/* Water. */

static gboolean
salinity_read(struct typed *t, double *psu)
{
	static const struct unit units[] = {
		{ "psu", 1, 1 }, { "ppt", 1, 1 }, { "‰", 1, 1 }, { NULL, 0, 0 }
	};
	struct decimal d;
	double read;

	if (*t->at == '-')
		return typed_fail(t, "salinity cannot be negative: it is 0 to 45 PSU");
	if (!typed_decimal(t, &d))
		return FALSE;
	typed_unit(t, units);
	if (!typed_end(t))
		return FALSE;
	read = decimal_value(&d, 0);
	if (read > SALTIEST)
		return typed_fail(t, "salinity is 0 to 45 PSU, and about 35 in the ocean");
	*psu = read;
	return TRUE;
}

gboolean
salinity_parse(const char *text, double *psu, GError **err)
{
	struct typed t;
	gboolean ok = typed_init(&t, text, "write the salinity such as 18 or 18 psu", err)
		   && salinity_read(&t, psu);

	typed_clear(&t);
	return ok;
}

/* C, F or K, with or without the degree sign; 0 when something else stands there. */
static char
scale_read(struct typed *t)
{
	static const struct unit degrees[] = {
		{ "°", 0, 1 }, { "deg", 0, 1 }, { "degree", 0, 1 }, { "degrees", 0, 1 }, { NULL, 0, 0 },
	};
	static const struct unit scales[] = {
		{ "c", 'C', 1 }, { "°c", 'C', 1 }, { "℃", 'C', 1 }, { "degc", 'C', 1 }, { "celsius", 'C', 1 },
		{ "f", 'F', 1 }, { "°f", 'F', 1 }, { "℉", 'F', 1 }, { "degf", 'F', 1 },
		{ "fahrenheit", 'F', 1 },
		{ "k", 'K', 1 }, { "kelvin", 'K', 1 }, { NULL, 0, 0 },
	};
	const struct unit *scale;

	typed_unit(t, degrees);
	scale = typed_unit(t, scales);
	return scale ? (char)scale->num : 0;
}

/* num / den on a scale, by one division of whole numbers so that it is rounded once. */
static double
celsius_of(char scale, gint64 num, gint64 den)
{
	if (scale == 'F')
		return (double)((num - 32 * den) * 5) / (double)(den * 9);
	if (scale == 'K')
		return (double)(num * 100 - 27315 * den) / (double)(den * 100);
	return (double)num / (double)den;
}

static gboolean
temperature_in_range(struct typed *t, double celsius)
{
	if (celsius < COLDEST)
		return typed_fail(t, "that is below absolute zero, -273.15 C: %s", t->example);
	if (celsius > HOTTEST)
		return typed_fail(t, "that is hotter than 5000 C: %s", t->example);
	return TRUE;
}

static gboolean
temperature_read(struct typed *t, double *celsius)
{
	gboolean negative = typed_sign(t);
	struct decimal d;
	gint64 num, den;
	double read;
	char scale;

	if (!typed_decimal(t, &d))
		return FALSE;
	scale = scale_read(t);
	if (!scale && !*t->at)
		return typed_fail(t, "on which scale? Write C, F or K behind the number, such as 12 C");
	if (!typed_end(t))
		return FALSE;
	if (!decimal_ratio(&d, &num, &den))
		return typed_fail(t, "that has more than 12 digits: %s", t->example);
	read = celsius_of(scale, negative ? -num : num, den);
	if (!temperature_in_range(t, read))
		return FALSE;
	*celsius = read;
	return TRUE;
}

gboolean
temperature_parse(const char *text, double *celsius, GError **err)
{
	struct typed t;
	gboolean ok = typed_init(&t, text, "write such as 12 C, 54 F or 285.15 K", err)
		   && temperature_read(&t, celsius);

	typed_clear(&t);
	return ok;
}
