#include "base/quantity.h"

#include "base/amount.h"
#include "base/text.h"
#include "base/typed.h"

#include <math.h>
#include <string.h>

#define LBF (0.45359237 * 9.80665) /* newtons in a pound of force */
#define KGF 9.80665
#define GALLON (231 * 16.387064e-3) /* litres in 231 cubic inches */
#define INHG 3.386389 /* kPa, "conventional" in SP 811 */
#define MMHG 0.1333224
#define NEVER NAN

#define INCH UNITS_INCH
#define METRIC UNITS_METRIC
#define BOTH UNITS_COUNT

static const struct quantity_unit units[] = {
	{ "mm", DIMENSION_LENGTH, METRIC, 1, 1, 0, "millimetre|millimeter" },
	{ "cm", DIMENSION_LENGTH, METRIC, 10, 1, NEVER, "centimetre|centimeter" },
	{ "m", DIMENSION_LENGTH, METRIC, 1000, 1, 1000, "metre|meter" },
	{ "in", DIMENSION_LENGTH, INCH, 254, 10, 0, "inch|inches|\"|''" },
	{ "ft", DIMENSION_LENGTH, INCH, 3048, 10, 1000, "foot|feet|'" },
	{ "thou", DIMENSION_LENGTH, INCH, 254, 10000, NEVER, "" },
	/* Below about 15 ft-lb a shop reads a smaller wrench, in in-lb. */
	{ "ft-lb", DIMENSION_TORQUE, INCH, .3048 * LBF, 1, 20, "lb-ft|ft-lbf|lbf-ft|foot-pound|pound-foot|pound-feet" },
	{ "in-lb", DIMENSION_TORQUE, INCH, .0254 * LBF, 1, 0, "lb-in|in-lbf|lbf-in|inch-pound|pound-inch" },
	{ "N·m", DIMENSION_TORQUE, METRIC, 1, 1, 0, "Nm|newton-metre|newton-meter" },
	{ "kgf·m", DIMENSION_TORQUE, METRIC, KGF, 1, NEVER, "kgfm|kgm|mkg|mkgf|kpm" },
	{ "kgf·cm", DIMENSION_TORQUE, METRIC, KGF, 100, NEVER, "kgfcm|kgcm" },
	{ "psi", DIMENSION_PRESSURE, INCH, LBF, 25.4 * 25.4 / 1000, 0, "psig|lb/in2|lbf/in2|lb/sq in" },
	{ "inHg", DIMENSION_PRESSURE, INCH, INHG, 1, NEVER, "in of mercury|\"Hg|inches Hg" },
	{ "kPa", DIMENSION_PRESSURE, METRIC, 1, 1, 0, "" },
	{ "bar", DIMENSION_PRESSURE, METRIC, 100, 1, NEVER, "" },
	{ "mbar", DIMENSION_PRESSURE, METRIC, 1, 10, NEVER, "hPa|millibar" },
	{ "MPa", DIMENSION_PRESSURE, METRIC, 1000, 1, NEVER, "" },
	{ "mmHg", DIMENSION_PRESSURE, METRIC, MMHG, 1, NEVER, "" },
	{ "kgf/cm2", DIMENSION_PRESSURE, METRIC, KGF * 10, 1, NEVER, "kg/cm2|kg/cm²|kgf/cm²" },
	{ "mL", DIMENSION_VOLUME, METRIC, 1, 1000, 0, "cc|cm3|cm³|millilitre|milliliter" },
	{ "L", DIMENSION_VOLUME, METRIC, 1, 1, 1, "litre|liter|ltr|dm3" },
	{ "fl oz", DIMENSION_VOLUME, INCH, GALLON, 128, 0, "US fl oz|fluid ounce" },
	{ "pt", DIMENSION_VOLUME, INCH, GALLON, 8, NEVER, "US pt|pint|US pint" },
	{ "qt", DIMENSION_VOLUME, INCH, GALLON, 4, .45, "US qt|quart|US quart" },
	{ "gal", DIMENSION_VOLUME, INCH, GALLON, 1, 15, "US gal|gallon|US gallon" },
	{ "imp pt", DIMENSION_VOLUME, INCH, 4.54609, 8, NEVER, "imperial pint|UK pt|UK pint" },
	{ "imp qt", DIMENSION_VOLUME, INCH, 4.54609, 4, NEVER, "imperial quart|imp quart|UK qt|UK quart" },
	{ "imp gal", DIMENSION_VOLUME, INCH, 4.54609, 1, NEVER, "imperial gallon|imp gallon|UK gal|UK gallon" },
	{ "g", DIMENSION_MASS, METRIC, 1, 1000, 0, "gram|gramme" },
	{ "kg", DIMENSION_MASS, METRIC, 1, 1, 1, "kilo|kilogram|kilogramme" },
	{ "oz", DIMENSION_MASS, INCH, .45359237, 16, 0, "ounce" },
	{ "lb", DIMENSION_MASS, INCH, .45359237, 1, .45, "pound" },
	{ "C", DIMENSION_TEMPERATURE, METRIC, 1, 1, -INFINITY, "°C|℃|degC|celsius" },
	{ "F", DIMENSION_TEMPERATURE, INCH, 5, 9, -INFINITY, "°F|℉|degF|fahrenheit" },
	{ "K", DIMENSION_TEMPERATURE, BOTH, 1, 1, NEVER, "kelvin" },
	{ "V", DIMENSION_VOLTAGE, BOTH, 1, 1, NEVER, "volt" },
	{ "mV", DIMENSION_VOLTAGE, BOTH, 1, 1000, NEVER, "millivolt" },
	{ "A", DIMENSION_CURRENT, BOTH, 1, 1, NEVER, "amp|ampere" },
	{ "mA", DIMENSION_CURRENT, BOTH, 1, 1000, NEVER, "milliamp" },
	{ "ohm", DIMENSION_RESISTANCE, BOTH, 1, 1, NEVER, "\u03a9|\u2126" },
	{ "mohm", DIMENSION_RESISTANCE, BOTH, 1, 1000, NEVER, "m\u03a9|m\u2126" },
	{ "kohm", DIMENSION_RESISTANCE, BOTH, 1000, 1, NEVER, "k\u03a9|k\u2126" },
	{ "Mohm", DIMENSION_RESISTANCE, BOTH, 1e6, 1, NEVER, "M\u03a9|M\u2126" },
	{ "deg", DIMENSION_ANGLE, BOTH, 1, 1, NEVER, "degree|°" },
	{ "rpm", DIMENSION_TURNS, BOTH, 1, 1, NEVER, "r/min|1/min" },
	{ "/min", DIMENSION_RATE, BOTH, 1440, 1, NEVER, "drops/min|a minute" },
	{ "/d", DIMENSION_RATE, BOTH, 1, 1, NEVER, "/day|a day" },
	{ "h", DIMENSION_RUNNING, BOTH, 1, 1, NEVER, "hour|hrs" },
	{ "a", DIMENSION_AGE, BOTH, 1, 1, NEVER, "y|year" },
	{ "%", DIMENSION_SHARE, BOTH, 1, 1, NEVER, "percent" },
	{ "grade", DIMENSION_GRADE, BOTH, 1, 1, NEVER, "" },
	{ "pH", DIMENSION_PH, BOTH, 1, 1, NEVER, "" },
};

static const struct {
	const char *words, *write;
	const char *bare; /* why a number alone will not do */
	gboolean signs; /* can lie below nought */
} dimensions[DIMENSION_COUNT + 1] = {
	[DIMENSION_LENGTH] = { "a length", "3/8 in or 9.5 mm", "", FALSE },
	[DIMENSION_TORQUE] = { "a torque", "60 ft-lb, 180 in-lb or 81 N·m", "ft-lb and in-lb differ twelve times: ", FALSE },
	[DIMENSION_PRESSURE] = { "a pressure", "14 psi, 97 kPa, 1 bar or 15 inHg", "psi, kPa and bar differ much: ", TRUE },
	[DIMENSION_VOLUME] = { "a volume", "5 qt, 16 fl oz or 4.7 L", "quarts, gallons and litres differ: ", FALSE },
	[DIMENSION_MASS] = { "a weight", "3 lb, 12 oz or 1.4 kg", "", FALSE },
	[DIMENSION_TEMPERATURE] = { "a temperature", "160 F or 71 C", "F and C differ: ", TRUE },
	[DIMENSION_WARMING] = { "a difference of temperatures", "10 F or 5.6 C", "a degree F is 5/9 of a degree C: ", TRUE },
	[DIMENSION_VOLTAGE] = { "a voltage", "12.65 V or -950 mV", "", TRUE },
	[DIMENSION_CURRENT] = { "a current", "5 A or 30 mA", "", TRUE },
	[DIMENSION_RESISTANCE] = { "a resistance", "0.5 ohm", "", FALSE },
	[DIMENSION_ANGLE] = { "an angle", "10 deg", "", TRUE },
	[DIMENSION_TURNS] = { "a speed of turning", "650-700 rpm", "", FALSE },
	[DIMENSION_RATE] = { "a rate", "3 /min or 2 /d", "", FALSE },
	[DIMENSION_AGE] = { "an age", "9 years", "", FALSE },
	[DIMENSION_RUNNING] = { "running hours", "598.2 h", "", FALSE },
	[DIMENSION_SHARE] = { "a share", "60 %", "", TRUE },
	[DIMENSION_GRADE] = { "a grade", "1 grade", "", FALSE },
	[DIMENSION_PH] = { "an acidity", "8.5 pH", "", FALSE },
	[DIMENSION_COUNT] = { "a value with its unit", "60 ft-lb, 14 psi, 5 qt or 3/8 in", "", TRUE },
};

const char *
dimension_words(enum dimension dimension)
{
	return dimensions[dimension].words;
}

const char *
dimension_unit(enum dimension dimension)
{
	if (dimension == DIMENSION_WARMING)
		dimension = DIMENSION_TEMPERATURE;
	for (guint i = 0; i < G_N_ELEMENTS(units); i++)
		if (units[i].dimension == dimension && units[i].num == units[i].den)
			return units[i].name;
	return NULL;
}

/* Units. */

/* Without what people put between the parts of a unit, each in his own way. */
static void
add_plain(GString *out, const char *text, gsize length)
{
	for (const char *p = text; p < text + length; p = g_utf8_next_char(p)) {
		gunichar c = g_utf8_get_char(p);

		if (c != ' ' && c != '\t' && c != '-' && c != '.' && c != '*' && c != 0xb7 && c != 0x22c5 && c != 0x2022)
			g_string_append_unichar(out, c);
	}
}

static gboolean
is_spelled(const char *text, const char *name, gsize length, gboolean caseless, GString *plain)
{
	g_string_truncate(plain, 0);
	add_plain(plain, name, length);
	if (caseless ? g_ascii_strncasecmp(text, plain->str, plain->len) : strncmp(text, plain->str, plain->len))
		return FALSE;
	text += plain->len;
	return !*text || (plain->len > 1 && g_ascii_tolower(text[0]) == 's' && !text[1]);
}

static gboolean
is_called(const char *text, const struct quantity_unit *u, gboolean caseless, GString *plain)
{
	if (is_spelled(text, u->name, strlen(u->name), caseless, plain))
		return TRUE;
	for (const char *p = u->also; *p;) {
		gsize length = strcspn(p, "|");

		if (is_spelled(text, p, length, caseless, plain))
			return TRUE;
		p += length + (p[length] == '|');
	}
	return FALSE;
}

const struct quantity_unit *
quantity_unit(const char *text)
{
	g_autoptr(GString) typed = g_string_new(NULL), plain = g_string_new(NULL);

	if (!g_utf8_validate(text, -1, NULL))
		return NULL;
	add_plain(typed, text, strlen(text));
	for (int caseless = 0; typed->len && caseless <= 1; caseless++)
		for (guint i = 0; i < G_N_ELEMENTS(units); i++)
			if (is_called(typed->str, &units[i], caseless, plain))
				return &units[i];
	return NULL;
}

double
quantity_convert(double value, const char *from, const char *to)
{
	const struct quantity_unit *f, *t;

	if (!strcmp(from, to))
		return value;
	f = quantity_unit(from);
	t = quantity_unit(to);
	if (!f || !t || f->dimension != t->dimension || f->dimension == DIMENSION_TEMPERATURE)
		return NAN;
	return value * (f->num * t->den) / (f->den * t->num);
}

/* Reading. */

/* Behind the last number; the 2 of kg/cm2 is none. */
static const char *
unit_at(const char *text)
{
	const char *at = text;

	for (const char *p = text; *p; p++) {
		if (!g_ascii_isdigit(*p) || (p > text && (g_ascii_isalpha(p[-1]) || p[-1] == '/')))
			continue;
		while (g_ascii_isdigit(*p) || *p == '.' || *p == ',' || (*p == '/' && g_ascii_isdigit(p[1])))
			p++;
		at = p--;
	}
	return at + strspn(at, " \t");
}

/* Where "to", ".." or a hyphen stands between two values, and how long it is; NULL: there is one value.  The hyphen of
 * 1-3/8 is no such. */
static const char *
between(const char *text, gsize *length)
{
	const char *p;

	for (p = strpbrk(text, "0123456789"); p && *p; p++) {
		const char *next = p + 1 + strspn(p + 1, " \t");
		gsize digits = strspn(next, "0123456789.,");

		*length = g_str_has_prefix(p, " to ") ? 4 : g_str_has_prefix(p, "..") ? 2 : *p == '-' && digits ? 1 : 0;
		if (*length > 1 || (*length && (next[digits] != '/' || memchr(text, '/', (gsize)(p - text)))))
			return p;
	}
	return NULL;
}

static gboolean
refuse_unit(struct typed *t, const char *unit, enum dimension d)
{
	const struct quantity_unit *u = quantity_unit(unit);
	g_autofree char *shown = text_quoted(unit);

	if (!*unit)
		return typed_fail(t, "in which unit? %swrite %s", dimensions[d].bare, dimensions[d].write);
	if (u && d == DIMENSION_VOLUME && !strcmp(u->name, "oz"))
		return typed_fail(t, "oz is a weight: write fl oz for a volume");
	if (u && d == DIMENSION_TORQUE && u->dimension == DIMENSION_MASS)
		return typed_fail(t, "%s is a weight: ft-lb and in-lb differ twelve times, write which", u->name);
	if (u)
		return typed_fail(t, "%s is a unit of %s, where %s is wanted: write %s", u->name,
				  strchr(dimensions[u->dimension].words, ' ') + 1, dimensions[d].words, dimensions[d].write);
	return typed_fail(t, "%s is no unit known here for %s: write %s", shown, dimensions[d].words, dimensions[d].write);
}

static gboolean
measures(const struct quantity_unit *u, enum dimension d)
{
	if (!u || d == DIMENSION_COUNT)
		return u != NULL;
	return u->dimension == (d == DIMENSION_WARMING ? DIMENSION_TEMPERATURE : d);
}

/* One value whose unit stands behind it. */
static gboolean
read_value(struct typed *t, enum dimension d, double *value)
{
	const struct quantity_unit *u;
	gboolean negative = *t->at == '-';
	gint64 num, den;

	if (d == DIMENSION_LENGTH)
		return length_parse(t->plain, value, t->err);
	if (d == DIMENSION_TEMPERATURE)
		return temperature_parse(t->plain, value, t->err);
	if (negative && !dimensions[d].signs)
		return typed_fail(t, "%s cannot be negative: write %s", dimensions[d].words, dimensions[d].write);
	typed_sign(t);
	if (!typed_ratio(t, &num, &den))
		return FALSE;
	u = quantity_unit(t->at);
	if (!measures(u, d))
		return refuse_unit(t, t->at, d);
	*value = (double)(negative ? -num : num) * u->num / ((double)den * u->den);
	return TRUE;
}

/* unit: of the other end, for one that has none. */
static gboolean
read_end(const char *text, const char *unit, enum dimension d, double *value, GError **err)
{
	g_autofree char *alone = g_strchomp(g_strdup_printf("%s %s", text, *unit_at(text) ? "" : unit)),
			*example = g_strdup_printf("write %s", dimensions[d].write);
	struct typed t;
	gboolean ok = typed_init(&t, alone, example, err) && read_value(&t, d, value);

	typed_clear(&t);
	return ok;
}

static gboolean
read_ends(struct typed *t, enum dimension d, struct quantity *q)
{
	gsize length = 0;
	const char *mark = between(t->plain, &length), *second = mark ? mark + length : t->plain, *unit = unit_at(second);
	g_autofree char *first = mark ? g_strndup(t->plain, (gsize)(mark - t->plain)) : NULL;
	struct quantity read = { .unit = quantity_unit(unit), .dimension = d };

	if (!strpbrk(t->plain, "0123456789"))
		return typed_fail(t, "a number is missing: %s", t->example);
	if (d != DIMENSION_LENGTH && !measures(read.unit, d))
		return refuse_unit(t, unit, d);
	if (d == DIMENSION_COUNT)
		read.dimension = read.unit->dimension;
	if (!read_end(second, "", read.dimension, &read.high, t->err))
		return FALSE;
	read.low = read.high;
	if (first && !read_end(first, unit, read.dimension, &read.low, t->err))
		return FALSE;
	if (read.low > read.high)
		return typed_fail(t, "the first is more than the second: write the smaller one first");
	*q = read;
	return TRUE;
}

gboolean
quantity_parse(const char *text, enum dimension dimension, struct quantity *q, GError **err)
{
	g_autofree char *example = g_strdup_printf("write %s", dimensions[dimension].write);
	struct typed t;
	gboolean ok = typed_init(&t, text, example, err) && read_ends(&t, dimension, q);

	typed_clear(&t);
	return ok;
}

/* Showing. */

#define SMALLEST 64 /* parts of an inch on a rule */

/* The fewest digits that are near enough; half up, where a double lies a hair below. */
static void
add_number(GString *out, double value, enum dimension d)
{
	double shown = value * (1 + 1e-12), rounded = shown;
	char buf[G_ASCII_DTOSTR_BUF_SIZE], format[] = "%.1g";

	if (d == DIMENSION_TEMPERATURE) {
		rounded = round(shown);
	} else {
		for (char n = d == DIMENSION_LENGTH ? '3' : '1'; n <= '4'; n++) {
			format[2] = n;
			rounded = g_ascii_strtod(g_ascii_formatd(buf, sizeof buf, format, shown), NULL);
			if (d == DIMENSION_LENGTH || fabs(rounded - shown) <= .005 * fabs(shown))
				break;
		}
	}
	g_string_append(out, g_ascii_formatd(buf, sizeof buf, "%.10g", rounded + 0.));
}

/* "1-3/8 in" of so many 64ths. */
static void
add_fraction(GString *out, int parts)
{
	int whole = parts / SMALLEST, top = parts % SMALLEST, below = SMALLEST;

	while (top && top % 2 == 0) {
		top /= 2;
		below /= 2;
	}
	if (whole)
		g_string_append_printf(out, "%d%s", whole, top ? "-" : "");
	if (top)
		g_string_append_printf(out, "%d/%d", top, below);
	g_string_append(out, " in");
}

static const struct quantity_unit *
unit_shown(double value, enum dimension d, enum units system)
{
	const struct quantity_unit *best = NULL;

	if (d == DIMENSION_WARMING)
		d = DIMENSION_TEMPERATURE;
	for (guint i = 0; i < G_N_ELEMENTS(units); i++)
		if (units[i].dimension == d && units[i].system == system && fabs(value) >= units[i].from
		    && (!best || units[i].from > best->from))
			best = &units[i];
	return best;
}

static double
in_unit(double value, enum dimension d, const struct quantity_unit *u)
{
	double in = value * u->den / u->num;

	return d == DIMENSION_TEMPERATURE && u->system == UNITS_INCH ? in + 32 : in;
}

char *
quantity_in(double value, enum dimension dimension, enum units system)
{
	const struct quantity_unit *u = unit_shown(value, dimension, system);
	GString *out;
	double parts;

	if (!u)
		return NULL;
	out = g_string_new(NULL);
	parts = value * SMALLEST / 25.4;
	if (dimension == DIMENSION_LENGTH && !strcmp(u->name, "in") && parts >= .5 && fabs(parts - round(parts)) < 1e-6) {
		add_fraction(out, (int)round(parts));
	} else {
		add_number(out, in_unit(value, dimension, u), dimension);
		g_string_append_printf(out, " %s", u->name);
	}
	return g_string_free(out, FALSE);
}

char *
quantity_words(double value, const char *unit, enum units first)
{
	const struct quantity_unit *u = quantity_unit(unit);
	g_autofree char *inch = NULL, *metric = NULL;

	if (!u || u->system == UNITS_COUNT || isnan(value))
		return NULL;
	if (u->dimension != DIMENSION_TEMPERATURE)
		value = value * u->num / u->den;
	inch = quantity_in(value, u->dimension, UNITS_INCH);
	metric = quantity_in(value, u->dimension, UNITS_METRIC);
	return first == UNITS_INCH ? g_strdup_printf("%s (%s)", inch, metric) : g_strdup_printf("%s (%s)", metric, inch);
}

/* What a rule in inches shows nearest; nothing for what no rule measures. */
static void
add_nearest(GString *out, double mm)
{
	double parts = mm * SMALLEST / 25.4;

	if (mm < 3 || mm > 51 || fabs(parts - round(parts)) < 1e-6)
		return;
	g_string_append(out, "; nearest ");
	add_fraction(out, (int)round(parts));
}

char *
quantity_beside(const struct quantity *q)
{
	enum units other = q->unit->system == UNITS_INCH ? UNITS_METRIC : UNITS_INCH;
	const struct quantity_unit *u = q->unit->system == UNITS_COUNT ? NULL : unit_shown(q->high, q->dimension, other);
	GString *out;

	if (!u)
		return NULL;
	out = g_string_new(NULL);
	if (q->low == q->high) {
		g_autofree char *one = quantity_in(q->high, q->dimension, other);

		g_string_append(out, one);
		if (q->dimension == DIMENSION_LENGTH && other == UNITS_INCH)
			add_nearest(out, q->high);
		return g_string_free(out, FALSE);
	}
	add_number(out, in_unit(q->low, q->dimension, u), q->dimension);
	g_string_append(out, q->low < 0 ? " to " : "-");
	add_number(out, in_unit(q->high, q->dimension, u), q->dimension);
	g_string_append_printf(out, " %s", u->name);
	return g_string_free(out, FALSE);
}

char *
quantity_both(const char *text, enum dimension dimension)
{
	struct quantity q;
	g_autofree char *beside = quantity_parse(text, dimension, &q, NULL) ? quantity_beside(&q) : NULL;

	return beside ? g_strdup_printf("%s (%s)", text, beside) : g_strdup(text);
}
