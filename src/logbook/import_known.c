/* What an import finds in the logbook already, and the names that it must know. */
#include "logbook/import.h"

#include "base/err.h"
#include "base/text.h"
#include "engine/wear.h"
#include "logbook/figure.h"
#include "logbook/inside.h"
#include "logbook/measure.h"
#include "logbook/place.h"

#include <string.h>

gint64
import_key_by_name(struct importing *in, const void *record)
{
	const struct meter *m = record;
	const struct rate *rate = record;
	const struct bound *bound = record;
	const struct climate_month *month = record;
	const struct figure *figure = record;
	const struct task *t = record;
	const struct fitting *f = record;
	const struct engine *e = record;
	struct boat boat;
	struct cells *c;
	gint64 key;

	switch (in->form->what) {
	case RECORD_BOAT:
		key = book_boat(in->b, ((const struct boat *)record)->name, &boat, NULL) ? boat.id : NONE;
		record_clear(RECORD_BOAT, &boat);
		return key;
	case RECORD_ENGINE:
		return book_key_of(in->b, SQL_ENGINE_BY_NAME, e->boat, e->name);
	case RECORD_FITTING:
		return book_key_of(in->b, SQL_FITTING_BY_PATH, f->boat, f->path);
	case RECORD_TASK:
		return book_key_of(in->b, SQL_TASK_BY_NAME, t->boat, t->name);
	case RECORD_PLACE:
		return book_place_key(in->b, ((const struct place *)record)->name);
	case RECORD_CLIMATE:
		return book_climate_key(in->b, month->place, month->month);
	case RECORD_BOUND:
		return book_bound_key(in->b, bound->boat, bound->fitting, bound->what);
	case RECORD_FIGURE:
		return book_figure_key(in->b, figure);
	case RECORD_METER:
		c = cells_open(in->b->db, SQL_METER_FITTED);
		cells_bind(c, 1, m->engine);
		cells_bind(c, 2, m->fitted);
		return book_key_found(c);
	case RECORD_RATE:
		c = cells_open(in->b->db, SQL_RATE_FOR);
		cells_bind_text(c, 1, rate->name);
		return book_key_found(c);
	case RECORD_PART:
	case RECORD_STAY:
	case RECORD_SEASON:
	case RECORD_OUTING:
	case RECORD_HAPPENING:
	case RECORD_LIMIT:
	case RECORD_SERVICE:
	case RECORD_MEASUREMENT:
	case RECORD_FINDING:
	case RECORD_WAIVER:
	case RECORD_SKIP:
	case RECORD_PHOTO:
	case RECORD_HEEDED:
	case RECORD_SHIPPED:
	case RECORD_JOB:
	case RECORD_AIM:
	case RECORD_STEP:
	case RECORD_REMOVAL:
	case RECORD_SHEET:
	case RECORD_SHEETLINE:
	case RECORD_ITEM:
	case RECORD_NUMBER:
	case RECORD_LOT:
	case RECORD_TAKEN:
	case RECORD_NEED:
	case RECORD_COUNT:
		break;
	}
	return NONE;
}

gboolean
import_rate_check(const struct rate *r, GError **err)
{
	g_autofree const char **names = g_new(const char *, (gsize)n_wear_constants);
	g_autofree char *shown = text_quoted(r->name);
	const char *near;

	for (int i = 0; i < n_wear_constants; i++) {
		const struct wear_constant *c = &wear_constants[i];

		names[i] = c->key;
		if (strcmp(c->key, r->name))
			continue;
		return (r->value >= c->low && r->value <= c->high)
		    || err_set(err, ERR_INPUT, "%s is from %.10g to %.10g%s%s, not %.10g", c->key, c->low, c->high,
			       *c->unit ? " " : "", c->unit, r->value);
	}
	near = text_nearest(r->name, names, n_wear_constants);
	if (near)
		return err_set(err, ERR_INPUT, "no rate is called %s: is %s meant?", shown, near);
	return err_set(err, ERR_INPUT, "no rate is called %s: splitpin export rates lists them", shown);
}
