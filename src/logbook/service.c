#include "logbook/service.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/fluid.h"
#include "logbook/inside.h"
#include "logbook/plan.h"
#include "logbook/service_span.h"
#include "logbook/outing.h"
#include "logbook/service_used.h"
#include "logbook/transfer.h"
#include "logbook/variant.h"

#include <string.h>

#define NOT_LOGGED "not logged" /* remark of hours that a reading showed and no outing told of */

void
service_said_clear(struct service_said *s)
{
	g_clear_pointer(&s->why_not, g_free);
	g_clear_pointer(&s->repeated, g_free);
	g_clear_pointer(&s->mixed, g_free);
	g_clear_pointer(&s->used, g_free);
}

enum outcome
service_usual_outcome(const struct task *t)
{
	if (t->verb == word_index(&words_verb, "renew"))
		return OUTCOME_RENEWED;
	return t->rule == CLOCK_INSPECTION ? OUTCOME_GOOD : OUTCOME_DONE;
}

gboolean
service_restarts(gint64 rule, gint64 consequence, gint64 outcome)
{
	switch ((enum outcome)outcome) {
	case OUTCOME_DONE:
	case OUTCOME_RENEWED:
		return TRUE;
	case OUTCOME_GOOD:
		return rule == CLOCK_DONE || rule == CLOCK_INSPECTION;
	case OUTCOME_CLAIMED:
		return consequence > COST_HURTS;
	case OUTCOME_BAD:
	case OUTCOME_TOPPED_UP:
	case OUTCOME_NOT_SEEN:
		break;
	}
	return FALSE;
}

static const char *
why_not(const struct task *t, gint64 outcome)
{
	switch ((enum outcome)outcome) {
	case OUTCOME_BAD:
		return "what was found wanting stays wanting until it is put right";
	case OUTCOME_TOPPED_UP:
		return "a top-up restarts nothing";
	case OUTCOME_NOT_SEEN:
		return t->proof ? t->proof : "what was not seen does not count";
	case OUTCOME_GOOD:
		return "a look that found it good does not move the renewal";
	case OUTCOME_CLAIMED:
		return "a failure can sink, burn or hurt: what was only claimed is looked at first";
	case OUTCOME_DONE:
	case OUTCOME_RENEWED:
		break;
	}
	return "";
}

static gboolean
check_date(struct book *b, const struct task *t, const struct service *s, GError **err)
{
	char d[DAY_TEXT];
	gint64 built;

	if (s->date > b->who.today)
		return err_set(err, ERR_INPUT, "%s lies ahead of today: work is recorded when it is done",
			       day_iso(s->date, d));
	if (s->reading != NONE && (s->earliest != NONE || s->hours_most != NONE))
		return err_set(err, ERR_INPUT, "a reading of the meter belongs to one day: leave it out, or say the day");
	if (s->made != NONE && s->made > s->date)
		return err_set(err, ERR_INPUT, "made on %s, after the day of the work", day_iso(s->made, d));
	return book_built(b, t->boat, &built, err) && built_by(built, s->date, err);
}

static gboolean
hours_on(struct book *b, const struct engine *e, gint64 date, gint64 *hours, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_ENGINE_HOURS_ON);

	cells_bind(c, 1, e->boat);
	cells_bind(c, 2, e->id);
	cells_bind(c, 3, date);
	*hours = cells_next(c) ? cells_int(c, 0) : 0;
	return cells_close(c, err);
}

/* Hours that the meter showed and no outing tells of become a row of their own, so that every sum holds. */
static gboolean
log_unlogged(struct book *b, const struct engine *e, const struct meter *m, const struct service *s, gint64 seconds,
	     GError **err)
{
	struct outing o;
	gboolean ok;

	record_init(RECORD_OUTING, &o);
	o.boat = e->boat;
	o.date = s->date;
	o.engine = e->id;
	o.meter = m->id;
	o.reading = s->reading;
	o.hours = seconds;
	o.estimated = 1;
	o.remark = g_strdup(NOT_LOGGED);
	ok = book_put(b, RECORD_OUTING, &o, err) && book_meter_settle(b, m, TRUE, err);
	record_clear(RECORD_OUTING, &o);
	return ok;
}

/* A reading that is corrected takes the hours back that it alone put into the log. */
static gboolean
withdraw_unlogged(struct book *b, const struct service *old, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_UNLOGGED_BY_SERVICE);
	struct meter m;
	gint64 row;
	gboolean ok;

	cells_bind(c, 1, old->meter);
	cells_bind(c, 2, old->date);
	cells_bind(c, 3, old->reading);
	cells_bind_text(c, 4, NOT_LOGGED);
	cells_bind(c, 5, old->id);
	row = cells_next(c) ? cells_int(c, 0) : NONE;
	if (!cells_close(c, err) || row == NONE)
		return row == NONE;
	record_init(RECORD_METER, &m);
	ok = row_drop(b->db, RECORD_OUTING, row, err) && row_get(b->db, RECORD_METER, old->meter, &m, err)
	  && book_meter_settle(b, &m, TRUE, err);
	record_clear(RECORD_METER, &m);
	return ok;
}

struct placing {
	struct book *b;
	const struct engine *e;
	const struct meter *m;
	gboolean sure;
};

/* What the meter showed at the end of that day, and what was run on it; FALSE with ERR_DOUBT when the reading can hardly be. */
static gboolean
look(const struct placing *p, const struct service *s, gint64 *shown, gint64 *that_day, GError **err)
{
	g_autoptr(GArray) rows = book_meter_rows(p->b, p->m->id, err);
	g_autofree char *note = NULL;
	struct outing asked;

	if (!rows || !hours_on(p->b, p->e, s->date, that_day, err))
		return FALSE;
	*shown = meter_expected((void *)rows->data, (int)rows->len, p->m->start, s->date);
	if (p->sure || (s->reading <= *shown && *shown - s->reading <= *that_day))
		return TRUE;
	record_init(RECORD_OUTING, &asked);
	asked.boat = p->e->boat;
	asked.date = s->date;
	asked.reading = s->reading;
	return book_question(p->b, p->e, *shown, &asked, &note, err);
}

static gboolean
place(const struct placing *p, struct service *s, gint64 *unlogged, GError **err)
{
	gint64 shown, that_day;

	if (!look(p, s, &shown, &that_day, err))
		return FALSE;
	s->after = CLAMP(shown - s->reading, 0, that_day);
	if (s->reading <= shown)
		return TRUE;
	*unlogged = s->reading - shown;
	return log_unlogged(p->b, p->e, p->m, s, *unlogged, err);
}

gboolean
book_place_service(struct book *b, struct service *s, gboolean sure, gint64 *unlogged, GError **err)
{
	struct engine e;
	struct meter m;
	gboolean ok;

	*unlogged = 0;
	record_init(RECORD_METER, &m);
	record_init(RECORD_ENGINE, &e);
	ok = row_get(b->db, RECORD_METER, s->meter, &m, err) && row_get(b->db, RECORD_ENGINE, m.engine, &e, err)
	  && place(&(struct placing){ b, &e, &m, sure }, s, unlogged, err);
	record_clear(RECORD_METER, &m);
	record_clear(RECORD_ENGINE, &e);
	return ok;
}

/* The engine that a task's hours are of, and its meter on that day. */
struct metered {
	struct engine e;
	struct meter m;
};

static gboolean
meter_of(struct book *b, const struct task *t, const char *engine, gint64 day, struct metered *on, GError **err)
{
	record_init(RECORD_METER, &on->m);
	return book_engine_of(b, t, engine, &on->e, err) && book_meter_on(b, on->e.id, day, &on->m, err)
	    && (on->m.id != NONE
		|| err_set(err, ERR_CONFLICT, "the engine %s has no meter on that day: leave the reading out", on->e.name));
}

static void
metered_clear(struct metered *on)
{
	record_clear(RECORD_METER, &on->m);
	record_clear(RECORD_ENGINE, &on->e);
}

gboolean
book_reading_fits(struct book *b, const struct task *t, const struct service *s, GError **err)
{
	struct metered on;
	gint64 shown, that_day;
	gboolean ok = meter_of(b, t, NULL, s->date, &on, err)
		   && look(&(struct placing){ b, &on.e, &on.m, FALSE }, s, &shown, &that_day, err);

	metered_clear(&on);
	return ok;
}

static gboolean
take_reading(struct book *b, const struct task *t, struct service_form *f, struct service_said *said, GError **err)
{
	struct metered on;
	struct engine_hours hours;
	gboolean ok;

	if (f->what.reading == NONE)
		return TRUE;
	ok = meter_of(b, t, f->engine, f->what.date, &on, err);
	f->what.meter = on.m.id;
	ok = ok && book_place_service(b, &f->what, f->sure, &said->unlogged, err)
	  && book_engine_hours(b, &on.e, f->what.date, &hours, err);
	if (ok && hours.total != NONE)
		said->hours = hours.total - f->what.after;
	metered_clear(&on);
	return ok;
}

/* Renewing a fitting ends one part and starts the next; a renewal that is corrected has its part already. */
static gboolean
fit_part(struct book *b, const struct task *t, struct service_form *f, gint64 corrected, GError **err)
{
	g_autoptr(GArray) old = book_gather(b, RECORD_PART, SQL_PARTS_OF_FITTING, t->fitting, err);
	struct part *p;

	if (!old)
		return FALSE;
	p = (void *)old->data;
	for (guint i = 0; i < old->len; i++) {
		if (corrected != NONE && p[i].fitted == corrected) {
			f->part.id = p[i].id;
			continue;
		}
		/* What is written down late went out when the next one went in. */
		if (p[i].fitted != NONE && p[i].fitted > f->what.date) {
			f->part.removed = f->part.removed == NONE ? p[i].fitted : MIN(f->part.removed, p[i].fitted);
			continue;
		}
		p[i].removed = f->what.date;
		if (!book_put(b, RECORD_PART, &p[i], err))
			return FALSE;
	}
	f->part.fitting = t->fitting;
	f->part.fitted = f->what.date;
	f->part.made = f->what.made;
	f->part.what = f->part.what ? f->part.what : g_strdup(t->part ? t->part : t->title);
	return book_put(b, RECORD_PART, &f->part, err);
}

/* What was taken for a renewal was none: its part was never fitted, and the one before was never removed. */
static gboolean
unfit_part(struct book *b, const struct task *t, gint64 corrected, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_PART, t->boat, err);

	for (guint i = 0; all && i < all->len; i++) {
		struct part *p = &((struct part *)(void *)all->data)[i];
		gboolean ok = TRUE;

		if (p->fitting != t->fitting)
			continue;
		if (p->removed == corrected) {
			p->removed = NONE;
			ok = book_put(b, RECORD_PART, p, err);
		} else if (p->removed == NONE && p->fitted == corrected) {
			ok = row_drop(b->db, RECORD_PART, p->id, err);
		}
		if (!ok)
			return FALSE;
	}
	return all != NULL;
}

/* Of old, the service that is corrected, id and date are NONE when this is a new one. */
static gboolean
write_did(struct book *b, const struct task *t, struct service_form *f, const struct service *old,
	  struct service_said *said, GError **err)
{
	gboolean same = old->reading == f->what.reading && old->date == f->what.date && !f->engine;
	struct fitting fitting;
	gint64 corrected = old->date;
	gboolean ok;

	if (old->meter != NONE && old->reading != NONE && !same && !withdraw_unlogged(b, old, err))
		return FALSE;
	if (!take_reading(b, t, f, said, err) || !book_put(b, RECORD_SERVICE, &f->what, err))
		return FALSE;
	if (f->what.outcome == OUTCOME_RENEWED ? !fit_part(b, t, f, corrected, err)
					       : corrected != NONE && !unfit_part(b, t, corrected, err))
		return FALSE;
	if (f->filled && !fluid_fill(b, t, f, &said->mixed, err))
		return FALSE;
	record_init(RECORD_FITTING, &fitting);
	ok = !f->variant
	  || (row_get(b->db, RECORD_FITTING, t->fitting, &fitting, err) && book_put_variant(b, &fitting, f->variant, err));
	record_clear(RECORD_FITTING, &fitting);
	return ok && (!f->also || f->also(b, f->what.id, f->user, err)) && service_take_used(b, t, f, &said->used, err);
}

gboolean
book_put_did(struct book *b, struct service_form *f, struct service_said *said, GError **err)
{
	struct task t;
	struct service old;
	gboolean ok;

	*said = (struct service_said){ .hours = NONE };
	record_init(RECORD_TASK, &t);
	record_init(RECORD_SERVICE, &old);
	if (!row_get(b->db, RECORD_TASK, f->what.task, &t, err))
		return FALSE;
	if (f->what.outcome == NONE)
		f->what.outcome = service_usual_outcome(&t);
	said->counts = service_restarts(t.rule, t.consequence, f->what.outcome);
	if (!said->counts)
		said->why_not = g_strdup(why_not(&t, f->what.outcome));
	ok = service_span_place(b, &t, f->engine, f->dated, &f->what, err) && service_fill_used(b, f, err)
	  && check_date(b, &t, &f->what, err)
	  && (f->what.id == NONE || row_get(b->db, RECORD_SERVICE, f->what.id, &old, err)) && write_did(b, &t, f, &old, said, err);
	record_clear(RECORD_SERVICE, &old);
	record_clear(RECORD_TASK, &t);
	return ok;
}

gboolean
book_did(struct book *b, struct service_form *f, struct service_said *said, GError **err)
{
	char d[DAY_TEXT];
	gboolean ok;

	*said = (struct service_said){ .hours = NONE };
	if (!book_begin(b, err))
		return FALSE;
	ok = book_put_did(b, f, said, err);
	ok = book_end(b, ok, err, "%s: %s on %s", ok ? book_name_of(b, RECORD_TASK, f->what.task) : "",
		      word_of(&words_outcome, f->what.outcome), day_iso(f->what.date, d));
	if (ok)
		said->repeated = book_repeated(b, &f->what, NULL);
	return ok;
}

enum { YEARS_END_MONTHS = 144 };

gboolean
book_made(struct book *b, const struct task *t, const char *text, gint64 *made, GError **err)
{
	g_autoptr(GArray) limits = book_limits(b, t->id, err);
	const struct limit *m = limits ? (const void *)limits->data : NULL;
	gint64 first, last;
	gboolean to_its_end = FALSE;

	if (!limits || !day_span_parse(text, b->who.today, &first, &last, err))
		return FALSE;
	for (guint i = 0; i < limits->len; i++)
		to_its_end = to_its_end
			  || (t->rule == CLOCK_PRINTED && m[i].kind == LIMIT_MONTHS && m[i].amount >= YEARS_END_MONTHS);
	*made = to_its_end ? MAX(first, MIN(last, b->who.today)) : first;
	return TRUE;
}
