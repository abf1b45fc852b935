/* Making imported rows whole, and what follows from them once all are in. */
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

/* Not less than what was shown before, and not more than the days have hours. */
static gboolean
can_be(gint64 reading, gint64 shown, gint64 days)
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
	t->shown = can_be(o->reading, t->shown, days) && (!counted || o->hours == since) ? o->reading : NONE;
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

gboolean
import_complete(struct importing *in, void *record, GError **err)
{
	const struct field *boat = record_field(in->form->what, "boat");
	struct measurement *read = record;
	struct season *season = record;
	struct limit *limit = record;
	struct bound *bound = record;
	struct meter *meter = record;

	if (boat && *field_int(boat, record) == NONE)
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
		return ((struct stay *)record)->until == NONE
		    || ((struct stay *)record)->until > ((struct stay *)record)->date
		    || err_set(err, ERR_INPUT, "the stay ends before it begins");
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
	case RECORD_BOAT:
	case RECORD_ENGINE:
	case RECORD_FITTING:
	case RECORD_PART:
	case RECORD_TASK:
	case RECORD_SHIPPED:
	case RECORD_JOB:
	case RECORD_AIM:
	case RECORD_STEP:
	case RECORD_REMOVAL:
	case RECORD_COUNT:
		break;
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

static void
row_error(struct importing *in, gint64 line, const char *text)
{
	if (in->said->errors->len < 20)
		g_ptr_array_add(in->said->errors, line ? g_strdup_printf("%s:%d: %s", in->form->path, (int)line, text)
						       : g_strdup_printf("%s: %s", in->form->path, text));
	in->said->n_errors++;
}

/* What is wrong with a reading of the file: it goes backwards, or needs more hours than there are.  NULL: nothing. */
static char *
question_reading(const struct meter_row *r, gint64 shown, gint64 last)
{
	gint64 days = MAX(r->date - last, 1);
	const struct use use = { .expected = MAX((double)days / 10, 2), .phi = 4, .c2 = 0.3 };
	char h[HOURS_TEXT], w[HOURS_TEXT], typed[HOURS_TEXT], guess[3][16];
	g_autofree char *meant = NULL;

	if (can_be(r->reading, shown, days))
		return NULL;
	if (reading_guesses(&use, (double)shown / 3600, days, hours_exact(r->reading, typed), guess))
		meant = g_strdup_printf(": is it %s?", guess[0]);
	return g_strdup_printf(r->reading < shown ? "the reading %s h is less than %s h before it%s"
						  : "the reading %s h would be more than 24 h a day since %s h%s",
			       hours_words(r->reading, h), hours_words(shown, w), meant ? meant : "");
}

static gint
compare_lines(gconstpointer x, gconstpointer y)
{
	const struct import_line *a = x, *b = y;

	return (a->outing > b->outing) - (a->outing < b->outing);
}

/* The line that an outing was read from; 0: none of this file. */
static gint64
line_of(const struct importing *in, gint64 outing)
{
	const struct import_line wanted = { outing, 0 };
	guint at;

	if (!g_array_binary_search(in->lines, &wanted, compare_lines, &at))
		return 0;
	return ((const struct import_line *)(const void *)in->lines->data)[at].line;
}

static void
question_rows(struct importing *in, const struct meter *m, const GArray *rows)
{
	const struct meter_row *r = (const void *)rows->data;
	gint64 shown = m->start, last = m->fitted;

	for (guint i = 0; i < rows->len; i++) {
		gint64 line = line_of(in, r[i].id);
		g_autofree char *text = line ? question_reading(&r[i], shown, last) : NULL;

		if (text)
			row_error(in, line, text);
		shown = r[i].reading == NONE ? shown + r[i].hours : r[i].reading;
		last = r[i].date;
	}
}

/* Whether every row has the hours that follow from the readings already. */
static gboolean
settled(const struct meter *m, const GArray *rows)
{
	g_autoptr(GArray) derived = g_array_copy((GArray *)(guintptr)rows);
	const struct meter_row *was = (const void *)rows->data;
	struct meter_row *r = (void *)derived->data;

	meter_derive(r, (int)derived->len, m->start);
	for (guint i = 0; i < rows->len; i++)
		if (r[i].hours != was[i].hours)
			return FALSE;
	return TRUE;
}

static gboolean
settle_meter(struct importing *in, gint64 id, GError **err)
{
	struct meter m;
	g_autoptr(GArray) rows = NULL;
	gboolean ok;

	record_init(RECORD_METER, &m);
	ok = row_get(in->b->db, RECORD_METER, id, &m, err);
	rows = ok ? book_meter_rows(in->b, id, err) : NULL;
	if (rows && !in->form->sure)
		question_rows(in, &m, rows);
	ok = rows && (settled(&m, rows) || book_meter_settle(in->b, &m, TRUE, err));
	record_clear(RECORD_METER, &m);
	return ok;
}

static gboolean
settle_services(struct importing *in, GError **err)
{
	GArray *all = in->form->what == RECORD_SERVICE
			    ? book_gather(in->b, RECORD_SERVICE, SQL_SERVICES_UNPLACED, NONE, err)
			    : NULL;
	gboolean ok = in->form->what != RECORD_SERVICE || all != NULL;

	for (guint i = 0; all && ok && i < all->len; i++) {
		struct service *s = &((struct service *)(void *)all->data)[i];
		g_autoptr(GError) doubt = NULL;
		char d[DAY_TEXT];
		gint64 unlogged;

		if (book_place_service(in->b, s, in->form->sure, &unlogged, &doubt)) {
			ok = book_put(in->b, RECORD_SERVICE, s, err);
		} else if (doubt->code == ERR_DOUBT) {
			g_autofree char *text =
				g_strdup_printf("service of %s: %s --yes takes it as it is", day_iso(s->date, d), doubt->message);

			row_error(in, 0, text);
		} else {
			g_propagate_error(err, g_steal_pointer(&doubt));
			ok = FALSE;
		}
	}
	if (all)
		g_array_unref(all);
	return ok;
}

/* Stays and seasons of one boat may not overlap. */
static gboolean
check_overlaps(struct importing *in, GError **err)
{
	enum record r = in->form->what;
	g_autoptr(GArray) all = NULL;

	if (r != RECORD_STAY && r != RECORD_SEASON)
		return TRUE;
	all = book_gather(in->b, r, sql_all(r), NONE, err);
	for (guint i = 1; all && i < all->len; i++) {
		const struct stay *s = &((const struct stay *)(const void *)all->data)[i];
		const struct season *y = &((const struct season *)(const void *)all->data)[i];
		char d[DAY_TEXT];
		g_autofree char *text = NULL;

		if (r == RECORD_STAY && s[-1].boat == s->boat && (s[-1].until == NONE || s[-1].until > s->date))
			text = g_strdup_printf("the stay from %s begins before the one before it ends",
					       day_iso(s->date, d));
		if (r == RECORD_SEASON && y[-1].boat == y->boat
		    && (y[-1].haul_out == NONE || y[-1].haul_out > y->launch))
			text = g_strdup_printf("the season launched on %s begins before the one before it ends",
					       day_iso(y->launch, d));
		if (text)
			row_error(in, 0, text);
	}
	return all != NULL;
}

/* Meters that could not be followed. */
static gboolean
settle_meters(struct importing *in, GError **err)
{
	GHashTableIter i;
	gpointer value;
	gboolean ok = TRUE;

	g_array_sort(in->lines, compare_lines);
	g_hash_table_iter_init(&i, in->touched);
	while (ok && g_hash_table_iter_next(&i, NULL, &value)) {
		const struct import_meter *t = value;

		ok = t->shown != NONE || settle_meter(in, t->id, err);
	}
	return ok;
}

gboolean
import_settle(struct importing *in, GError **err)
{
	if (in->form->what == RECORD_OUTING && !settle_meters(in, err))
		return FALSE;
	return settle_services(in, err) && check_overlaps(in, err) && in->said->n_errors == 0;
}
