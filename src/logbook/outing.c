#include "logbook/outing.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/inside.h"
#include "logbook/place.h"

#include <string.h>

void
outing_said_clear(struct outing_said *s)
{
	for (int i = 0; i < s->n; i++) {
		record_clear(RECORD_OUTING, &s->row[i]);
		g_free(s->engine[i]);
	}
	g_clear_pointer(&s->note, g_free);
	s->n = 0;
}

gboolean
book_engine_hours(struct book *b, const struct engine *e, gint64 day, struct engine_hours *h, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_ENGINE_HOURS);

	cells_bind(c, 1, e->boat);
	cells_bind(c, 2, e->id);
	cells_bind(c, 3, day);
	h->logged = cells_next(c) ? cells_int(c, 0) : 0;
	h->estimated = e->estimated == 1 || cells_int(c, 1) == 1;
	h->total = e->hours == NONE ? NONE : e->hours + h->logged;
	return cells_close(c, err);
}

char *
engine_hours_words(const struct engine_hours *h)
{
	char hours[HOURS_TEXT];

	if (h->total == NONE && !h->logged)
		return g_strdup("hours unknown");
	return g_strdup_printf("%s%s h%s", h->estimated ? "~" : "", hours_words(h->total == NONE ? h->logged : h->total, hours),
			       h->total == NONE ? " logged" : "");
}

static gboolean
check_day(struct book *b, const struct outing_form *f, GError **err)
{
	char d[DAY_TEXT], t[DAY_TEXT];
	gint64 built;

	if (f->what.date > b->who.today)
		return err_set(err, ERR_INPUT, "%s lies ahead of today, %s: an outing is logged when it is over",
			       day_iso(f->what.date, d), day_iso(b->who.today, t));
	return book_built(b, f->boat, &built, err) && built_by(built, f->what.date, err);
}

/* The row that is being corrected says nothing about what the meter showed. */
static void
leave_out(GArray *rows, gint64 id)
{
	const struct meter_row *r = (const void *)rows->data;

	for (guint i = 0; id != NONE && i < rows->len; i++)
		if (r[i].id == id) {
			g_array_remove_index(rows, i);
			return;
		}
}

/* One row: its meter, what follows from its reading, and whether that can be. */
static gboolean
settle_share(struct book *b, const struct outing_form *f, const struct outing_share *s, const struct engine *e,
	     struct outing_said *said, GError **err)
{
	struct outing *o = &said->row[said->n - 1];
	struct meter m;
	g_autoptr(GArray) rows = NULL;
	gint64 before;
	gboolean ok = FALSE;

	if (!book_meter_on(b, e->id, o->date, &m, err))
		return FALSE;
	o->engine = e->id;
	o->meter = m.id;
	o->reading = s->reading;
	o->hours = s->hours;
	if (m.id == NONE && (s->reading != NONE || book_has_meter(b, e->id))) {
		err_set(err, ERR_CONFLICT,
			"the engine %s has no meter on that day: log hours, or splitpin meter --first or "
			"--replaced puts one on record",
			e->name);
	} else if (m.id != NONE && (rows = book_meter_rows(b, m.id, err))) {
		leave_out(rows, o->id);
		before = meter_expected((void *)rows->data, (int)rows->len, m.start, o->date);
		ok = f->sure || book_question(b, e, before, o, &said->note, err);
		if (s->reading != NONE)
			o->hours = MAX(s->reading - before, 0);
	} else if (m.id == NONE) {
		ok = f->sure || book_question(b, e, NONE, o, &said->note, err);
	}
	record_clear(RECORD_METER, &m);
	return ok;
}

GArray *
book_trip(struct book *b, gint64 id, GError **err)
{
	struct outing row;
	gint64 trip;

	record_init(RECORD_OUTING, &row);
	if (!row_get(b->db, RECORD_OUTING, id, &row, err))
		return NULL;
	trip = row.trip == NONE ? id : row.trip;
	record_clear(RECORD_OUTING, &row);
	return book_gather(b, RECORD_OUTING, SQL_TRIP_ROWS, trip, err);
}

/* The key of the corrected trip's row for an engine, which no other row takes any more; NONE: a new row. */
static gint64
take_over_row(GArray *was, gint64 engine)
{
	struct outing *o = was ? (void *)was->data : NULL;

	for (guint i = 0; was && i < was->len; i++)
		if (o[i].engine == engine && o[i].id != NONE) {
			gint64 id = o[i].id;

			o[i].id = NONE;
			return id;
		}
	return NONE;
}

static gboolean
write_share(struct book *b, struct outing_form *f, int i, const struct engine *e, struct outing_said *said,
	    GError **err)
{
	struct outing *o = &said->row[said->n];
	struct meter m;
	struct engine_hours hours;
	gboolean ok;

	*o = f->what;
	o->id = take_over_row(f->was, e ? e->id : NONE);
	o->boat = f->boat;
	o->trip = said->n ? said->row[0].id : NONE;
	o->place = g_strdup(said->n ? NULL : f->what.place);
	o->remark = g_strdup(said->n ? NULL : f->what.remark);
	said->engine[said->n] = e ? g_strdup(e->name) : NULL;
	said->total[said->n++] = NONE;
	if (!e) {
		o->hours = 0;
		return book_put(b, RECORD_OUTING, o, err);
	}
	if (!settle_share(b, f, &f->share[i], e, said, err) || !book_put(b, RECORD_OUTING, o, err))
		return FALSE;
	if (!book_meter_on(b, e->id, o->date, &m, err))
		return FALSE;
	ok = m.id == NONE || book_meter_settle(b, &m, f->sure, err);
	record_clear(RECORD_METER, &m);
	ok = ok && book_engine_hours(b, e, b->who.today, &hours, err);
	said->total[said->n - 1] = ok ? hours.total : NONE;
	return ok;
}

/* A share without an engine's name stands for every engine but a generator. */
static gboolean
spread_shares(struct book *b, struct outing_form *f, GArray *engines, GError **err)
{
	struct engine *e = (void *)engines->data;
	struct outing_share all = f->share[0];
	int n = 0;

	for (int i = 0; i < f->n_shares; i++)
		if (!f->share[i].engine && (f->n_shares > 1 || (f->share[0].reading != NONE && engines->len > 1)))
			return book_engine(b, f->boat, NULL, &(struct engine){ 0 }, err);
	if (!f->n_shares || all.engine)
		return TRUE;
	for (guint i = 0; i < engines->len && n < MAX_ENGINES; i++)
		if (engines->len == 1 || strcmp(e[i].name, "generator")) {
			f->share[n] = all;
			f->share[n++].engine = e[i].name;
		}
	f->n_shares = n;
	return n > 0
	    || err_set(err, ERR_NOT_FOUND, "this boat has no engine on record: --no-engine logs an outing without");
}

static const struct engine *
named_engine(const GArray *engines, const char *name, GError **err)
{
	const struct engine *e = (const void *)engines->data;

	for (guint i = 0; i < engines->len; i++)
		if (!strcmp(e[i].name, name))
			return &e[i];
	err_set(err, ERR_NOT_FOUND, "no engine is called \"%.40s\"", name);
	return NULL;
}

static gboolean
write_outing(struct book *b, struct outing_form *f, GArray *engines, struct outing_said *said, GError **err)
{
	if (!f->n_shares)
		return write_share(b, f, 0, NULL, said, err);
	for (int i = 0; i < f->n_shares; i++) {
		const struct engine *e = named_engine(engines, f->share[i].engine, err);

		for (int k = 0; e && k < i; k++)
			if (!strcmp(f->share[k].engine, e->name))
				return err_set(err, ERR_INPUT, "the engine %s is named twice", e->name);
		if (!e || !write_share(b, f, i, e, said, err))
			return FALSE;
	}
	return TRUE;
}

/* Rows of engines that the corrected trip no longer has go; the hours of every meter that it had follow anew. */
static gboolean
settle_corrected(struct book *b, GArray *was, GError **err)
{
	struct outing *o = (void *)was->data;
	gboolean ok = TRUE;

	for (guint i = was->len; ok && i-- > 0;)
		if (o[i].id != NONE)
			ok = row_drop(b->db, RECORD_OUTING, o[i].id, err);
	for (guint i = 0; ok && i < was->len; i++) {
		struct meter m;

		record_init(RECORD_METER, &m);
		ok = o[i].meter == NONE
		  || (row_get(b->db, RECORD_METER, o[i].meter, &m, err) && book_meter_settle(b, &m, TRUE, err));
		record_clear(RECORD_METER, &m);
	}
	return ok;
}

static gboolean
write_corrected(struct book *b, struct outing_form *f, GArray *engines, struct outing_said *said, GError **err)
{
	g_autoptr(GArray) was = f->instead_of == NONE ? NULL : book_trip(b, f->instead_of, err);

	if (f->instead_of != NONE && !was)
		return FALSE;
	f->was = was;
	return write_outing(b, f, engines, said, err) && (!was || settle_corrected(b, was, err));
}

/* Water that was not said is that of the place, when it is a known one. */
static gboolean
take_place_water(struct book *b, struct outing_form *f, struct outing_said *said, GError **err)
{
	said->place_water = FALSE;
	if (f->what.water != NONE || !f->what.place)
		return TRUE;
	if (!book_place_water(b, f->what.place, &f->what.water, err))
		return FALSE;
	said->place_water = f->what.water != NONE;
	return TRUE;
}

gboolean
book_outing(struct book *b, struct outing_form *f, struct outing_said *said, GError **err)
{
	g_autoptr(GArray) engines = book_records(b, RECORD_ENGINE, f->boat, err);
	char d[DAY_TEXT], h[HOURS_TEXT];
	gboolean ok;

	said->n = 0;
	said->note = NULL;
	for (int i = 0; i < MAX_ENGINES; i++)
		record_init(RECORD_OUTING, &said->row[i]);
	if (!engines || !check_day(b, f, err) || !spread_shares(b, f, engines, err)
	    || !take_place_water(b, f, said, err) || !book_begin(b, err))
		return FALSE;
	ok = write_corrected(b, f, engines, said, err);
	return book_end(b, ok, err, "%s %s: %s h%s%s", f->instead_of == NONE ? "outing" : "outing corrected,",
			day_iso(f->what.date, d), hours_words(said->n ? said->row[0].hours : 0, h),
			f->what.remark ? ", " : "", f->what.remark ? f->what.remark : "");
}

gboolean
book_drop_outing(struct book *b, gint64 id, GError **err)
{
	g_autoptr(GArray) trip = book_trip(b, id, err);
	char d[DAY_TEXT];

	if (!trip || !book_begin(b, err))
		return FALSE;
	day_iso(((const struct outing *)(const void *)trip->data)->date, d);
	return book_end(b, settle_corrected(b, trip, err), err, "outing of %s taken out", d);
}
