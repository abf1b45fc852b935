/* Work of which the day is not known, but about when, or at what running hours. */
#include "logbook/service_span.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/inside.h"
#include "logbook/outing.h"

gboolean
service_span_check(const struct service *s, GError **err)
{
	char a[DAY_TEXT], b[DAY_TEXT], x[HOURS_TEXT], y[HOURS_TEXT];

	if (s->earliest != NONE && s->earliest > s->date)
		return err_set(err, ERR_INPUT, "the earliest day, %s, lies after the last, %s", day_iso(s->earliest, a),
			       day_iso(s->date, b));
	if ((s->hours_least == NONE) != (s->hours_most == NONE))
		return err_set(err, ERR_INPUT, "of the hours the least and the most are wanted, or neither");
	if (s->hours_least != NONE && s->hours_least > s->hours_most)
		return err_set(err, ERR_INPUT, "the least hours, %s, are more than the most, %s",
			       hours_exact(s->hours_least, x), hours_exact(s->hours_most, y));
	return TRUE;
}

/* The days between which the engine's hours, start before the log, lay within the service's. */
static gboolean
days_of_hours(struct book *b, const struct engine *e, struct service *s, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_DUE_RUNS);
	gint64 total = e->hours, first = NONE, last = NONE, log = NONE;

	cells_bind(c, 1, e->boat);
	cells_bind(c, 2, DAY_FIRST);
	while (cells_next(c)) {
		gint64 day = cells_int(c, 0);

		if (cells_int(c, 1) != e->id)
			continue;
		log = log == NONE ? day : log;
		if (total <= s->hours_most)
			last = day;
		total += cells_int(c, 2);
		if (first == NONE && total >= s->hours_least)
			first = day;
	}
	if (!cells_close(c, err))
		return FALSE;
	s->date = total <= s->hours_most || last == NONE ? b->who.today : last;
	s->earliest = s->hours_least < e->hours ? NONE : first;
	if (s->hours_most < e->hours && log != NONE)
		s->date = log;
	return TRUE;
}

static gboolean
earliest_of_boat(struct book *b, const struct task *t, struct service *s, GError **err)
{
	gint64 built;

	if (!book_built(b, t->boat, &built, err))
		return FALSE;
	if (built == NONE)
		return err_set(err, ERR_INPUT, "those hours lie before this log, and nobody knows since when: say about "
			       "which days, --date 2015..2019, or when the boat was built, splitpin boat --built YEAR");
	s->earliest = day_from_ymd((int)built, 1, 1);
	return TRUE;
}

gboolean
service_span_place(struct book *b, const struct task *t, const char *engine, gboolean dated, struct service *s,
		   GError **err)
{
	struct engine_hours now = { .total = NONE };
	struct engine e;
	char h[HOURS_TEXT];
	gboolean ok;

	if (!service_span_check(s, err))
		return FALSE;
	if (s->hours_most == NONE)
		return TRUE;
	if (!book_engine_of(b, t, engine, &e, err))
		return FALSE;
	ok = book_engine_hours(b, &e, b->who.today, &now, err);
	if (ok && (now.total == NONE || e.hours == NONE))
		ok = err_set(err, ERR_CONFLICT, "what %s has run in all is not known: say about which days instead, "
			     "--date \"spring 2019\"", e.name);
	else if (ok && s->hours_most > now.total)
		ok = err_set(err, ERR_INPUT, "%s has run %s h by now: the work can't have been done later", e.name,
			     hours_words(now.total, h));
	ok = ok && (dated || days_of_hours(b, &e, s, err));
	if (ok && !dated && s->hours_least < e.hours)
		ok = earliest_of_boat(b, t, s, err);
	record_clear(RECORD_ENGINE, &e);
	return ok;
}
