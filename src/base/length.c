/* Lengths as text. */
#include "base/amount.h"

#include "base/text.h"
#include "base/typed.h"

#define LONGEST 1e7	/* mm */
#define MOST_FEET 100000

/* How many millimetres; 1 in = 25.4 mm exactly since the yard and pound agreement of 1959. */
static const struct unit length_units[] = {
	{ "mm", 1, 1 }, { "millimetre", 1, 1 }, { "millimetres", 1, 1 }, { "millimeter", 1, 1 },
	{ "millimeters", 1, 1 }, { "cm", 10, 1 }, { "m", 1000, 1 }, { "metre", 1000, 1 },
	{ "metres", 1000, 1 },
	{ "meter", 1000, 1 }, { "meters", 1000, 1 }, { "in", 254, 10 }, { "inch", 254, 10 },
	{ "inches", 254, 10 },
	{ "\"", 254, 10 }, { "''", 254, 10 }, { "ft", 3048, 10 }, { "foot", 3048, 10 }, { "feet", 3048, 10 },
	{ "'", 3048, 10 }, { "thou", 254, 10000 }, { NULL, 0, 0 },
};

struct ratio {
	gint64 num, den;
};

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

/* The part below the stroke; adds top / it to r. */
static gboolean
below_read(struct typed *t, gint64 top, struct ratio *r)
{
	gint64 below = 0;

	if (!whole_read(t, &below))
		return FALSE;
	if (below == 0)
		return typed_fail(t, "nothing can be divided by 0: write such as 3/8 in");
	*r = (struct ratio){ r->num * below + top, below };
	return TRUE;
}

/* "3/8" behind the whole number of "1-3/8". */
static gboolean
mixed_read(struct typed *t, struct ratio *r)
{
	gint64 top = 0;

	if (!whole_read(t, &top))
		return FALSE;
	if (!typed_mark(t, '/'))
		return typed_fail(t, "a fraction is wanted behind the whole number: write such as 1-3/8 in");
	if (!below_read(t, top, r))
		return FALSE;
	if (top >= r->den)
		return typed_fail(t, "%d/%d is 1 or more: write %d-%d/%d if that is meant", (int)top,
				  (int)r->den, (int)(r->num / r->den), (int)(r->num % r->den), (int)r->den);
	return TRUE;
}

/* A decimal, a fraction, or a whole number and a fraction. */
static gboolean
ratio_read(struct typed *t, struct ratio *r)
{
	struct decimal d;
	gint64 top;

	if (!typed_decimal(t, &d))
		return FALSE;
	if (!decimal_ratio(&d, &r->num, &r->den))
		return too_many_digits(t);
	if (d.n_fraction && *t->at == '/')
		return typed_fail(t, "a fraction has whole numbers above and below: write such as 3/8 in");
	if (d.n_fraction || (*t->at != '/' && *t->at != '-' && !g_ascii_isdigit(*t->at)))
		return TRUE;
	if (!decimal_scaled(&d, 1, 99999, &top))
		return too_many_digits(t);
	if (typed_mark(t, '/')) {
		r->num = 0;
		return below_read(t, top, r);
	}
	typed_mark(t, '-');
	return mixed_read(t, r);
}

static const struct unit *
unit_read(struct typed *t)
{
	static const struct unit doubtful[] = { { "mil", 1, 1 }, { "mils", 1, 1 }, { NULL, 0, 0 } };
	const struct unit *unit = typed_unit(t, length_units);
	g_autofree char *rest = NULL;

	if (unit)
		return unit;
	if (!*t->at)
		typed_fail(t, "in which unit? Write mm or in behind the number, such as 9.5 mm or 3/8 in");
	else if (typed_unit(t, doubtful))
		typed_fail(t, "some call a thousandth of an inch a mil, some a millimetre: write thou or mm");
	else {
		rest = text_quoted(t->at);
		typed_fail(t, "%s is no unit of length: write mm, cm, m, in, thou or ft", rest);
	}
	return NULL;
}

/* "6 in" behind "18 ft": the sum in inches. */
static gboolean
inches_read(struct typed *t, struct ratio *r, const struct unit **unit)
{
	gint64 feet = r->num;

	if (r->den != 1 || feet > MOST_FEET)
		return typed_fail(t,
				  "only a whole number of feet goes with inches: write such as 18 ft 6 in");
	if (!ratio_read(t, r))
		return FALSE;
	*unit = unit_read(t);
	if (!*unit)
		return FALSE;
	if ((*unit)->num != 254 || (*unit)->den != 10)
		return typed_fail(t, "only inches go with feet: write such as 18 ft 6 in");
	if (r->num >= 12 * r->den)
		return typed_fail(t, "a foot has 12 in: write more feet and fewer inches, or inches alone");
	r->num += feet * 12 * r->den;
	return TRUE;
}

static gboolean
length_read(struct typed *t, double *mm)
{
	const struct unit *unit;
	struct ratio r;
	double read;

	if (*t->at == '-')
		return typed_fail(t, "a length cannot be negative: %s", t->example);
	if (!ratio_read(t, &r))
		return FALSE;
	unit = unit_read(t);
	if (!unit)
		return FALSE;
	if (unit->num == 3048 && g_ascii_isdigit(*t->at) && !inches_read(t, &r, &unit))
		return FALSE;
	if (!typed_end(t))
		return FALSE;
	read = (double)r.num * (double)unit->num / ((double)r.den * (double)unit->den);
	if (read > LONGEST)
		return typed_fail(t, "that is longer than 10 km: %s", t->example);
	*mm = read;
	return TRUE;
}

gboolean
length_parse(const char *text, double *mm, GError **err)
{
	struct typed t;
	gboolean ok =
		typed_init(&t, text, "write such as 3/8 in, 9.5 mm or 6 thou", err) && length_read(&t, mm);

	typed_clear(&t);
	return ok;
}
