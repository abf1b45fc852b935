/* What an owner reads of the water a boat lies in. */
#include "base/amount.h"

#include "base/err.h"
#include "base/typed.h"

#include <math.h>

static const struct unit salts[] = { { "psu", 1, 1 }, { "ppt", 1, 1 }, { "‰", 1, 1 }, { NULL, 0, 0 } };
/* As so many thousandths of a mS. */
static const struct unit siemens[] = {
	{ "s", 1000000, 1 }, { "ds", 100000, 1 }, { "ms", 1000, 1 },
	{ "us", 1, 1 },      { "µs", 1, 1 },      { "μs", 1, 1 }, /* the micro sign, the Greek letter */
	{ NULL, 0, 0 },
};
static const struct unit lengths[] = { { "cm", 1, 1 }, { "m", 100, 1 }, { NULL, 0, 0 } };
static const struct unit gravities[] = { { "sg", 1, 1 }, { NULL, 0, 0 } };
static const struct unit at_word[] = { { "at", 1, 1 }, { "@", 1, 1 }, { NULL, 0, 0 } };
static const struct unit compensated[] = { { "compensated", 1, 1 }, { NULL, 0, 0 } };

static gboolean
temperature_behind(struct typed *t, struct water_reading *r)
{
	return temperature_parse(t->at, &r->celsius, t->err) || err_prefix(t->err, "%s: ", t->shown);
}

static gboolean
conductivity_read(struct typed *t, const struct decimal *d, const struct unit *unit, struct water_reading *r)
{
	const struct unit *length = typed_mark(t, '/') ? typed_unit(t, lengths) : NULL;

	if (!length)
		return typed_fail(t, "a conductivity is so much a length: mS/cm, uS/cm or S/m");
	r->scale = WATER_CONDUCTIVITY;
	r->value = decimal_value(d, 0) * (double)unit->num / (1000.0 * (double)length->num);
	if (typed_unit(t, compensated)) {
		r->compensated = TRUE;
		return typed_end(t);
	}
	if (typed_unit(t, at_word))
		return temperature_behind(t, r);
	if (*t->at)
		return typed_end(t);
	return typed_fail(t, "at what temperature of the water? Write such as 42 mS/cm at 18 C, or 42 mS/cm "
			     "compensated for a meter that shows its reading as at 25 C");
}

static gboolean
water_read(struct typed *t, struct water_reading *r)
{
	struct water_reading read = { WATER_SALINITY, 0, (double)NAN, FALSE };
	const struct unit *unit;
	struct decimal d;
	gboolean gravity;

	if (*t->at == '-')
		return typed_fail(t, "nothing here can be negative: %s", t->example);
	if (!typed_decimal(t, &d))
		return FALSE;
	read.value = decimal_value(&d, 0);
	if (typed_unit(t, salts)) {
		if (!typed_end(t))
			return FALSE;
	} else if ((unit = typed_unit(t, siemens))) {
		if (!conductivity_read(t, &d, unit, &read))
			return FALSE;
	} else {
		gravity = typed_unit(t, gravities) != NULL;
		if (!typed_unit(t, at_word))
			return gravity || !*t->at ? typed_fail(t, "of what? %s", t->example) : typed_end(t);
		read.scale = WATER_GRAVITY;
		if (!temperature_behind(t, &read))
			return FALSE;
	}
	*r = read;
	return TRUE;
}

gboolean
water_reading_parse(const char *text, struct water_reading *r, GError **err)
{
	struct typed t;
	gboolean ok = typed_init(&t, text,
				 "write a salinity such as 18 PSU or 12 ppt, a conductivity such as 42 mS/cm at 18 C, "
				 "or a specific gravity such as 1.018 at 15 C",
				 err)
		   && water_read(&t, r);

	typed_clear(&t);
	return ok;
}
