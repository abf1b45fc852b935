/* Measured values as they are typed. */
#include "logbook/measure.h"

#include "base/amount.h"
#include "base/err.h"
#include "base/quantity.h"
#include "base/text.h"

#include <math.h>
#include <string.h>

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
		{ "a", "9 years" },	    { "C", "160 F or 71 C" },     { "K", "20 F or 11 C" },
		{ "kPa", "45 psi or 310 kPa" }, { "L", "4.2 L or 4.5 qt" },  { "mL", "300 mL" },
		{ "rpm", "4400 rpm" },	    { "h", "598.2 h" },
	};

	if (!strcmp(kind->what, "compression-spread"))
		return "150 148 120 151 psi, or 20 %";
	for (guint i = 0; i < G_N_ELEMENTS(of); i++)
		if (!strcmp(of[i][0], kind->unit))
			return of[i][1];
	return kind->least == 0 && kind->most >= 10 ? "3" : "0.03";
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

/* Thousandths are as likely as wholes: -0.95 is volts, and taken for millivolts it would say the contrary.  So are degrees
 * of either kind, and the units of pressure and volume of either side of an ocean. */
static gboolean
of_two_units(const struct condition_kind *kind)
{
	static const char *const units_of_two[] = { "mV", "mA", "C", "K", "kPa", "L", "mL", NULL };

	return g_strv_contains(units_of_two, kind->unit);
}

static gboolean
parse_amount(const struct condition_kind *kind, const char *text, double *value, GError **err)
{
	const char *typed = after_number(text);
	g_autofree char *number = g_strstrip(g_strndup(text, (gsize)(typed - text))), *rest = g_strstrip(g_strdup(typed));
	const struct quantity_unit *unit = quantity_unit(rest);
	struct condition_in in = { NAN, unit ? unit->name : kind->unit, NAN };
	struct condition_out out;

	if (!*rest && *number && of_two_units(kind)) {
		g_autofree char *shown = text_quoted(text);

		return err_set(err, ERR_INPUT, "%s of what?  %s is read in %s: write %s", shown, kind->what, kind->unit,
			       example(kind));
	}
	if (!*number || (*rest && !unit))
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
	const char *typed = after_number(text);
	g_autofree char *rest = g_strstrip(g_strdup(typed)), *row = g_strndup(text, (gsize)(typed - text));
	g_auto(GStrv) word = g_strsplit_set(row, " \t", -1);
	const struct quantity_unit *unit = quantity_unit(rest);
	gboolean is_pressure = !*rest || (unit && unit->dimension == DIMENSION_PRESSURE);
	int n = 0;

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
