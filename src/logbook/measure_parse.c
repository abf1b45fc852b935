/* Measured values as they are typed. */
#include "logbook/measure.h"

#include "base/amount.h"
#include "base/err.h"
#include "base/text.h"

#include <math.h>
#include <string.h>

static const struct {
	const char *typed, *unit; /* as condition_judge knows it */
} units[] = {
	{ "V", "V" },          { "volt", "V" },       { "volts", "V" },     { "mV", "mV" },       { "A", "A" },
	{ "mA", "mA" },        { "ohm", "ohm" },      { "ohms", "ohm" },    { "\u03a9", "ohm" },  { "\u2126", "ohm" },
	{ "mohm", "mohm" },    { "m\u03a9", "mohm" }, { "%", "%" },         { "percent", "%" },   { "deg", "deg" },
	{ "degrees", "deg" },  { "\u00b0", "deg" },   { "grade", "grade" }, { "pH", "pH" },       { "/min", "/min" },
	{ "drops/min", "/min" }, { "/d", "/d" },      { "/day", "/d" },     { "a day", "/d" },    { "a", "a" },
	{ "y", "a" },          { "year", "a" },       { "years", "a" },
};

/* NULL: no unit of the table. */
static const char *
unit_of(const char *typed)
{
	for (int caseless = 0; caseless <= 1; caseless++)
		for (guint i = 0; i < G_N_ELEMENTS(units); i++)
			if (caseless ? !g_ascii_strcasecmp(typed, units[i].typed) : !strcmp(typed, units[i].typed))
				return units[i].unit;
	return NULL;
}

static gboolean
is_length(const struct condition_kind *kind)
{
	return !strcmp(kind->unit, "mm") || !strcmp(kind->unit, "mm/h");
}

static const char *
example(const struct condition_kind *kind)
{
	static const char *const of[][2] = {
		{ "mm", "1/8 in or 3 mm" }, { "mm/h", "2 in/h or 50 mm/h" }, { "mV", "-950 mV" },
		{ "V", "12.65 V" },	    { "mA", "5 mA" },		     { "ohm", "0.5 ohm" },
		{ "%", "60 %" },	    { "grade", "1" },		     { "deg", "10 deg" },
		{ "pH", "8.5 pH" },	    { "/min", "3 /min" },	     { "/d", "2 /d" },
		{ "a", "9 years" },
	};

	if (!strcmp(kind->what, "compression-spread"))
		return "150 148 120 151 psi, or 20 %";
	for (guint i = 0; i < G_N_ELEMENTS(of); i++)
		if (!strcmp(of[i][0], kind->unit))
			return of[i][1];
	return "0.03";
}

static gboolean
refuse(const struct condition_kind *kind, const char *text, GError **err)
{
	g_autofree char *shown = text_quoted(text);

	return err_set(err, ERR_INPUT, "%s is no reading of %s: write %s", shown, kind->what, example(kind));
}

/* Where the number ends and the unit begins. */
static const char *
after_number(const char *text)
{
	const char *p = text;

	for (; *p; p = g_utf8_next_char(p)) {
		gunichar c = g_utf8_get_char(p);

		if (!(c < 128 && (g_ascii_isdigit((char)c) || strchr("+-., ", (int)c))) && c != 0x2212
		    && !g_unichar_isspace(c))
			break;
	}
	return p;
}

static gboolean
parse_length(const struct condition_kind *kind, const char *text, double *value, GError **err)
{
	g_autofree char *length = g_strstrip(g_strdup(text));

	if (!strcmp(kind->unit, "mm/h")) {
		if (g_str_has_suffix(length, "/h"))
			length[strlen(length) - 2] = '\0';
		else if (g_str_has_suffix(length, " an hour"))
			length[strlen(length) - 8] = '\0';
		else
			return refuse(kind, text, err);
	}
	if (length_parse(length, value, err))
		return TRUE;
	return err_prefix(err, "%s is read as %s: ", kind->what, example(kind));
}

static gboolean
parse_amount(const struct condition_kind *kind, const char *text, double *value, GError **err)
{
	const char *typed = after_number(text);
	g_autofree char *number = g_strstrip(g_strndup(text, (gsize)(typed - text))), *rest = g_strstrip(g_strdup(typed));
	struct condition_in in = { NAN, *rest ? unit_of(rest) : kind->unit, NAN };
	struct condition_out out;

	/* Thousandths are as likely as wholes: -0.95 is volts, and taken for millivolts it would say the contrary. */
	if (!*rest && *number && (!strcmp(kind->unit, "mV") || !strcmp(kind->unit, "mA"))) {
		g_autofree char *shown = text_quoted(text);

		return err_set(err, ERR_INPUT, "%s of what?  %s is read in %s: write %s", shown, kind->what, kind->unit,
			       example(kind));
	}
	if (!*number || !in.unit)
		return refuse(kind, text, err);
	if (!number_parse(number, &in.value, err))
		return err_prefix(err, "%s: ", kind->what);
	condition_judge(kind, NULL, &in, &out);
	if (isnan(out.value))
		return refuse(kind, text, err);
	*value = out.value;
	return TRUE;
}

/* "150 148 120 151 psi": 0 when it is not such a row of pressures. */
static int
pressures(const char *text, double *pressure, int most)
{
	static const char *const known[] = { "", "psi", "bar", "kPa", "MPa", "kg/cm2" };
	const char *typed = after_number(text);
	g_autofree char *rest = g_strstrip(g_strdup(typed)), *row = g_strndup(text, (gsize)(typed - text));
	g_auto(GStrv) word = g_strsplit_set(row, " \t", -1);
	int n = 0;
	gboolean is_pressure = FALSE;

	for (guint i = 0; i < G_N_ELEMENTS(known); i++)
		is_pressure = is_pressure || !g_ascii_strcasecmp(rest, known[i]);
	for (int i = 0; is_pressure && word[i]; i++) {
		if (!*word[i])
			continue;
		if (n == most || !number_parse(word[i], &pressure[n], NULL))
			return 0;
		n++;
	}
	return n;
}

gboolean
measure_parse(const struct condition_kind *kind, const char *text, double *value, GError **err)
{
	double pressure[24], spread;
	int n;

	if (!g_utf8_validate(text, -1, NULL))
		return err_set(err, ERR_INPUT, "this is no UTF-8 text");
	if (is_length(kind))
		return parse_length(kind, text, value, err);
	n = strcmp(kind->what, "compression-spread") ? 0 : pressures(text, pressure, G_N_ELEMENTS(pressure));
	if (n < 2)
		return parse_amount(kind, text, value, err);
	spread = compression_spread(pressure, n);
	if (isnan(spread))
		return refuse(kind, text, err);
	*value = spread;
	return TRUE;
}
