/* Lengths as text. */
#include "base/amount.h"

#include "base/quantity.h"
#include "base/text.h"
#include "base/typed.h"

#include <string.h>

#define LONGEST 1e7	/* mm */
#define MOST_FEET 100000

struct ratio {
	gint64 num, den;
};

static const struct quantity_unit *
unit_read(struct typed *t)
{
	static const struct unit doubtful[] = { { "mil", 1, 1 }, { "mils", 1, 1 }, { NULL, 0, 0 } };
	g_autofree char *word = g_strndup(t->at, strcspn(t->at, " \t0123456789.,:/+-")), *rest = NULL;
	const struct quantity_unit *unit = quantity_unit(word);

	if (unit && unit->dimension == DIMENSION_LENGTH) {
		t->at += strlen(word);
		typed_blanks(t);
		return unit;
	}
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
inches_read(struct typed *t, struct ratio *r, const struct quantity_unit **unit)
{
	gint64 feet = r->num;

	if (r->den != 1 || feet > MOST_FEET)
		return typed_fail(t,
				  "only a whole number of feet goes with inches: write such as 18 ft 6 in");
	if (!typed_ratio(t, &r->num, &r->den))
		return FALSE;
	*unit = unit_read(t);
	if (!*unit)
		return FALSE;
	if (strcmp((*unit)->name, "in"))
		return typed_fail(t, "only inches go with feet: write such as 18 ft 6 in");
	if (r->num >= 12 * r->den)
		return typed_fail(t, "a foot has 12 in: write more feet and fewer inches, or inches alone");
	r->num += feet * 12 * r->den;
	return TRUE;
}

static gboolean
length_read(struct typed *t, double *mm)
{
	const struct quantity_unit *unit;
	struct ratio r;
	double read;

	if (*t->at == '-')
		return typed_fail(t, "a length cannot be negative: %s", t->example);
	if (!typed_ratio(t, &r.num, &r.den))
		return FALSE;
	unit = unit_read(t);
	if (!unit)
		return FALSE;
	if (!strcmp(unit->name, "ft") && g_ascii_isdigit(*t->at) && !inches_read(t, &r, &unit))
		return FALSE;
	if (!typed_end(t))
		return FALSE;
	read = (double)r.num * unit->num / ((double)r.den * unit->den);
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
