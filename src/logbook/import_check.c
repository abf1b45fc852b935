/* Making imported rows whole. */
#include "logbook/import.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "engine/plausible.h"
#include "logbook/figure.h"
#include "logbook/place.h"
#include "logbook/measure.h"
#include "logbook/photo.h"
#include "logbook/service.h"
#include "logbook/service_span.h"
#include "logbook/stores_check.h"

#include <string.h>

guint
import_first_engine(const struct importing *in, gint64 boat)
{
	const struct engine *e = (const void *)in->engines->data;
	guint low = 0, high = in->engines->len;

	while (low < high) {
		guint middle = (low + high) / 2;

		if (e[middle].boat < boat)
			low = middle + 1;
		else
			high = middle;
	}
	return low;
}

static const struct engine *
only_engine(const struct importing *in, gint64 boat)
{
	guint i = import_first_engine(in, boat);
	const struct engine *e = &((const struct engine *)(const void *)in->engines->data)[i];

	if (i == in->engines->len || e->boat != boat || (i + 1 < in->engines->len && e[1].boat == boat))
		return NULL;
	return e;
}

/* The meter of an engine that counts on a day; NULL: none.  They stand in the order of engine and day. */
static const struct meter *
meter_on(const struct importing *in, gint64 engine, gint64 day)
{
	const struct meter *m = (const void *)in->meters->data;
	guint low = 0, high = in->meters->len;

	while (low < high) {
		guint middle = (low + high) / 2;

		if (m[middle].engine < engine || (m[middle].engine == engine && m[middle].fitted <= day))
			low = middle + 1;
		else
			high = middle;
	}
	return low && m[low - 1].engine == engine ? &m[low - 1] : NULL;
}

static gboolean
has_meter(const struct importing *in, gint64 engine)
{
	return meter_on(in, engine, G_MAXINT32) != NULL;
}

static struct import_meter *
touch_meter(struct importing *in, gint64 id)
{
	const struct meter *m = (const void *)in->meters->data;
	struct import_meter *t = g_hash_table_lookup(in->touched, &id);

	if (t)
		return t;
	t = g_new(struct import_meter, 1);
	*t = (struct import_meter){ id, NONE, NONE };
	for (guint i = 0; i < in->meters->len && !in->there; i++)
		if (m[i].id == id)
			*t = (struct import_meter){ id, m[i].fitted, m[i].start };
	g_hash_table_insert(in->touched, &t->id, t);
	return t;
}

gboolean
import_can_be(gint64 reading, gint64 shown, gint64 days)
{
	return reading >= shown && reading - shown <= (24 * days + 1) * 3600;
}

/* The hours that follow from a reading, as long as there were no rows before, new ones come in the order in which the
 * meter's log will have them, and no reading is in doubt; else they are worked out at the end. */
static void
follow_meter(struct import_meter *t, struct outing *o, gboolean counted)
{
	gint64 days, since;

	if (t->shown != NONE && (o->date < t->date || (o->date == t->date && o->id != NONE)))
		t->shown = NONE;
	if (t->shown == NONE)
		return; /* and perhaps no day to count from */
	days = MAX(o->date - t->date, 1);
	t->date = o->date;
	if (o->reading == NONE) {
		t->shown += o->hours;
		return;
	}
	since = o->reading - t->shown;
	t->shown = import_can_be(o->reading, t->shown, days) && (!counted || o->hours == since) ? o->reading : NONE;
	if (!counted)
		o->hours = MAX(since, 0);
}

static gboolean
meter_of_row(struct importing *in, gint64 engine, gint64 date, gint64 reading, gint64 *meter, GError **err)
{
	const struct meter *m;
	char d[DAY_TEXT];

	if (*meter == NONE && engine != NONE) {
		m = meter_on(in, engine, date);
		if (!m && (reading != NONE || has_meter(in, engine)))
			return err_set(err, ERR_CONFLICT,
				       "no meter counts on %s: splitpin meter --first sets when the log begins",
				       day_iso(date, d));
		*meter = m ? m->id : NONE;
	}
	if (*meter != NONE)
		touch_meter(in, *meter);
	return TRUE;
}

static gboolean
complete_outing(struct importing *in, struct outing *o, GError **err)
{
	const struct engine *only;
	gboolean counted = o->hours != NONE;

	if (!import_not_ahead(in, o->date, err))
		return FALSE;
	if (o->engine == NONE && (o->reading != NONE || (o->hours != NONE && o->hours > 0))) {
		only = only_engine(in, o->boat);
		if (!only)
			return err_set(err, ERR_INPUT, "which engine? the boat has not just one");
		o->engine = only->id;
	}
	if (o->hours == NONE && o->reading == NONE && o->engine != NONE)
		return err_set(err, ERR_INPUT, "neither hours nor a reading: one of them is wanted");
	if (!counted)
		o->hours = 0;
	if (o->hours > 24 * 3600 && o->reading == NONE && !in->form->sure)
		return err_set(err, ERR_DOUBT, "%.1f h in one day: --yes takes it as it is", (double)o->hours / 3600);
	if (!meter_of_row(in, o->engine, o->date, o->reading, &o->meter, err))
		return FALSE;
	if (o->meter != NONE)
		follow_meter(touch_meter(in, o->meter), o, counted);
	return TRUE;
}

/* The year in which a boat was built; NONE. */
static gint64
built(const struct importing *in, gint64 boat)
{
	const struct boat *all = (const void *)in->boats->data;

	for (guint i = 0; i < in->boats->len; i++)
		if (all[i].id == boat)
			return all[i].built;
	return NONE;
}

static gboolean
complete_service(struct importing *in, struct service *s, GError **err)
{
	const struct task *t = g_hash_table_lookup(in->by_task, &s->task);
	const struct engine *only = t ? only_engine(in, t->boat) : NULL;

	if (!t)
		return err_set(err, ERR_NOT_FOUND, "its task is not in this logbook");
	if (!import_not_ahead(in, s->date, err) || !built_by(built(in, t->boat), s->date, err))
		return FALSE;
	if (s->made != NONE && s->made > s->date)
		return err_set(err, ERR_INPUT, "made after the day of the work");
	if (!service_span_check(s, err))
		return FALSE;
	if (s->outcome == NONE)
		s->outcome = service_usual_outcome(t);
	if (s->reading == NONE)
		return TRUE;
	if (s->meter == NONE && !only)
		return err_set(err, ERR_INPUT, "whose reading? the boat has not just one engine: give the meter's key");
	return meter_of_row(in, only ? only->id : NONE, s->date, s->reading, &s->meter, err);
}

static gboolean
complete_finding(struct importing *in, struct finding *f, GError **err)
{
	if (f->level == NONE)
		f->level = f->proposed == NONE ? LEVEL_MEND : f->proposed;
	if (!import_not_ahead(in, f->date, err) || !import_not_ahead(in, f->mended, err)
	    || !built_by(built(in, f->boat), f->date, err))
		return FALSE;
	if (f->mended != NONE && f->mended < f->date)
		return err_set(err, ERR_INPUT, "mended before it was found");
	return f->until == NONE || f->until >= f->date || err_set(err, ERR_INPUT, "to be mended before it was found");
}

static gboolean
complete_photo(struct importing *in, struct photo *p, GError **err)
{
	if ((p->finding != NONE) + (p->service != NONE) + (p->removal != NONE) != 1)
		return err_set(err, ERR_INPUT, "a photo shows a finding, a service or a removal: one of them is wanted");
	if (!p->digest && p->path && !(p->digest = photo_digest(p->path, err)))
		return FALSE;
	return import_not_ahead(in, p->date, err);
}

static gboolean
complete_taken(const struct importing *in, const struct taken *t, GError **err)
{
	return import_not_ahead(in, t->date, err) && stock_check(t->quantity, TRUE, err);
}

static gboolean
stay_check(const struct stay *s, GError **err)
{
	return s->until == NONE || s->until > s->date || err_set(err, ERR_INPUT, "the stay ends before it begins");
}

static gboolean
aim_check(const struct aim *a, GError **err)
{
	return (a->task != NONE) != (a->finding != NONE)
	    || err_set(err, ERR_INPUT, "a job's aim is a task or a finding: one of them is wanted");
}

static gboolean
sheetline_check(const struct sheetline *l, GError **err)
{
	return (l->task != NONE) != (l->finding != NONE)
	    || err_set(err, ERR_INPUT, "a line of a sheet is for a task or for a finding: one of them is wanted");
}

gboolean
import_complete(struct importing *in, void *record, GError **err)
{
	const struct field *boat = record_field(in->form->what, "boat");
	struct measurement *read = record;
	struct season *season = record;
	struct limit *limit = record;
	struct bound *bound = record;
	struct meter *meter = record;

	/* Where it may be empty, that says something: what was taken of the stores for no boat. */
	if (boat && boat->required && *field_int(boat, record) == NONE)
		*field_int(boat, record) = in->boat;
	switch (in->form->what) {
	case RECORD_OUTING:
		return complete_outing(in, record, err);
	case RECORD_SERVICE:
		return complete_service(in, record, err);
	case RECORD_HAPPENING:
		return import_not_ahead(in, ((struct happening *)record)->date, err);
	case RECORD_MEASUREMENT:
		return import_not_ahead(in, read->date, err);
	case RECORD_SEASON:
		return season->haul_out == NONE || season->haul_out > season->launch
		    || err_set(err, ERR_INPUT, "haul-out is not after the launch");
	case RECORD_STAY:
		return stay_check(record, err);
	case RECORD_METER:
		meter->how = meter->how == NONE ? METER_REPLACED : meter->how;
		return import_not_ahead(in, meter->fitted, err);
	case RECORD_LIMIT:
		limit->standing = limit->standing == NONE ? STANDING_OWNER : limit->standing;
		return !limit->measured || measure_known(in->b, limit->measured, err);
	case RECORD_PLACE:
		return place_check(record, err);
	case RECORD_CLIMATE:
		return month_check(record, err);
	case RECORD_FINDING:
		return complete_finding(in, record, err);
	case RECORD_PHOTO:
		return complete_photo(in, record, err);
	case RECORD_BOUND:
		bound->standing = bound->standing == NONE ? STANDING_OWNER : bound->standing;
		return measure_bound_check(in->b, bound, err);
	case RECORD_FIGURE:
		return figure_check(record, err);
	case RECORD_ITEM:
		return item_check(record, err);
	case RECORD_LOT:
		return lot_check(record, in->b->who.today, err);
	case RECORD_TAKEN:
		return complete_taken(in, record, err);
	case RECORD_NEED:
		return stock_check(((struct need *)record)->quantity, FALSE, err);
	case RECORD_BOAT:
	case RECORD_ENGINE:
	case RECORD_FITTING:
	case RECORD_PART:
	case RECORD_TASK:
	case RECORD_SHIPPED:
	case RECORD_JOB:
	case RECORD_STEP:
	case RECORD_REMOVAL:
	case RECORD_NUMBER:
	case RECORD_SHEET:
	case RECORD_COUNT:
		break;
	case RECORD_AIM:
		return aim_check(record, err);
	case RECORD_SHEETLINE:
		return sheetline_check(record, err);
	case RECORD_WAIVER:
		return import_waiver_check(in, record, err);
	case RECORD_SKIP:
		return import_skip_check(in, record, err);
	case RECORD_HEEDED:
		return import_heeded_check(in, record, err);
	case RECORD_RATE:
		return import_rate_check(record, err);
	}
	return TRUE;
}
