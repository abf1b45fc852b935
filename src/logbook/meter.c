/* Meters: which counts when, what follows from a reading, and whether it can be right. */
#include "logbook/inside.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "engine/plausible.h"
#include "logbook/outing.h"

gboolean
book_meter_on(struct book *b, gint64 engine, gint64 day, struct meter *m, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_METER_ON);
	gboolean found;

	record_init(RECORD_METER, m);
	cells_bind(c, 1, engine);
	cells_bind(c, 2, day);
	found = cells_next_record(c, RECORD_METER, m);
	if (!found)
		m->id = NONE;
	return cells_close(c, err);
}

gboolean
book_has_meter(struct book *b, gint64 engine)
{
	struct meter m;
	gboolean has = book_meter_on(b, engine, G_MAXINT32, &m, NULL) && m.id != NONE;

	record_clear(RECORD_METER, &m);
	return has;
}

GArray *
book_meter_rows(struct book *b, gint64 meter, GError **err)
{
	GArray *rows = g_array_new(FALSE, FALSE, sizeof(struct meter_row));
	struct cells *c = cells_open(b->db, SQL_METER_ROWS);

	cells_bind(c, 1, meter);
	while (cells_next(c)) {
		struct meter_row r = { cells_int(c, 0), cells_int(c, 1), cells_int(c, 2), cells_int(c, 3) };

		g_array_append_val(rows, r);
	}
	if (cells_close(c, err))
		return rows;
	g_array_unref(rows);
	return NULL;
}

static gboolean
set_hours(struct book *b, const struct meter_row *r, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_OUTING_SET_HOURS);

	cells_bind(c, 1, r->id);
	cells_bind(c, 2, r->hours);
	cells_next(c);
	return cells_close(c, err);
}

/* A reading that had hours to itself, and would now lie below what was run before it.  -1: none.  What was taken as it
 * is once has none, and is not questioned again. */
static int
pushed_back(const struct meter_row *was, const struct meter_row *now, int n, gint64 start)
{
	gint64 shown = start;

	for (int i = 0; i < n; i++) {
		if (now[i].reading != NONE && now[i].reading < shown && was[i].hours > 0)
			return i;
		shown = now[i].reading == NONE ? shown + now[i].hours : now[i].reading;
	}
	return -1;
}

gboolean
book_meter_settle(struct book *b, const struct meter *m, gboolean sure, GError **err)
{
	g_autoptr(GArray) before = book_meter_rows(b, m->id, err), rows = NULL;
	const struct meter_row *was;
	struct meter_row *r;
	char d[DAY_TEXT], h[HOURS_TEXT];
	int wrong;

	if (!before)
		return FALSE;
	rows = g_array_copy(before);
	was = (const void *)before->data;
	r = (void *)rows->data;
	meter_derive(r, (int)rows->len, m->start);
	wrong = sure ? -1 : pushed_back(was, r, (int)rows->len, m->start);
	if (wrong >= 0)
		return err_set(err, ERR_DOUBT,
			       "the reading %s h of %s would then be less than what was run before it: a meter "
			       "replaced or reset is recorded by splitpin meter.",
			       hours_words(r[wrong].reading, h), day_iso(r[wrong].date, d));
	for (guint i = 0; i < rows->len; i++)
		if (r[i].hours != was[i].hours && !set_hours(b, &r[i], err))
			return FALSE;
	return TRUE;
}

/* What is usual for this engine: hours a day over two years before, and the spread of single outings. */
static gboolean
usual_use(struct book *b, const struct engine *e, gint64 day, gint64 days, struct use *u, GError **err)
{
	enum { WINDOW = 730, SHRINK = 4 }; /* days; outings' weight of the spread taken for granted */
	struct cells *c = cells_open(b->db, SQL_ENGINE_OUTINGS_IN);
	double n, hours, squares;

	cells_bind(c, 1, e->boat);
	cells_bind(c, 2, e->id);
	cells_bind(c, 3, day - WINDOW);
	cells_bind(c, 4, day);
	n = cells_next(c) ? (double)cells_int(c, 0) : 0;
	hours = n > 0 ? (double)cells_int(c, 1) / 3600 : 0;
	squares = n > 0 ? (double)cells_int(c, 2) / 3600 : 0; /* of hours */
	*u = (struct use){ .phi = 4, .c2 = 0.3 };
	if (n > 0 && hours > 0)
		u->phi = (4 * SHRINK + squares / hours * n) / (SHRINK + n);
	/* An outing of the usual length is always possible, and what the season's rate gives for a longer gap. */
	u->expected = n > 0 ? MAX(hours / n, hours / WINDOW * 2 * (double)days) : MAX(4.0, (double)days * 0.5);
	return cells_close(c, err);
}

/* An outing as it is judged: hours over days, and what was typed. */
struct judged {
	struct use use;
	gint64 before; /* what the meter showed; NONE when hours were typed */
	gint64 days;
	double hours;
	char typed[HOURS_TEXT];
	char guess[3][16]; /* what may have been meant */
	int n_guesses;
};

static gboolean
ask(const struct judged *j, enum doubt doubt, GError **err)
{
	const char *days = j->days == 1 ? "day" : "days";
	g_autoptr(GString) also = g_string_new(NULL);
	char was[HOURS_TEXT];

	for (int i = 0; i < j->n_guesses; i++)
		g_string_append_printf(also, "%s%s", i ? i == j->n_guesses - 1 ? " or " : ", " : " Is it ",
				       j->guess[i]);
	if (j->n_guesses)
		g_string_append(also, "?");
	if (doubt == DOUBT_BACKWARDS)
		return err_set(err, ERR_DOUBT,
			       "the meter showed %s h before, so %s h would be backwards.%s A meter replaced or reset "
			       "is recorded by splitpin meter.",
			       hours_words(j->before, was), j->typed, also->str);
	if (doubt == DOUBT_IMPOSSIBLE)
		return err_set(err, ERR_DOUBT,
			       "%s h would be %.1f h in %d %s, more than there are.%s",
			       j->typed, j->hours, (int)j->days, days, also->str);
	return err_set(err, ERR_DOUBT,
		       "%s h would be %.1f h in %d %s, where about %.1f are usual.%s", j->typed,
		       j->hours, (int)j->days, days, j->use.expected, also->str);
}

/* Unusual, but a slip of the pen would make it usual: that is worth a question. */
static gboolean
looks_slipped(const struct judged *j)
{
	double from = j->before == NONE ? 0 : (double)j->before / 3600;

	return j->n_guesses > 0 && use_upper(&j->use, g_ascii_strtod(j->guess[0], NULL) - from) > 0.05;
}

static gboolean
judge(struct judged *j, char **note, GError **err)
{
	enum doubt doubt = reading_doubt(&j->use, j->hours, j->days);

	if (doubt == DOUBT_NONE)
		return TRUE;
	j->n_guesses =
		reading_guesses(&j->use, j->before == NONE ? 0 : (double)j->before / 3600, j->days, j->typed, j->guess);
	if (doubt != DOUBT_NOTE || looks_slipped(j))
		return ask(j, doubt, err);
	g_free(*note);
	*note = g_strdup_printf("%.1f h in %d %s is more than usual", j->hours, (int)j->days,
				j->days == 1 ? "day" : "days");
	return TRUE;
}

/* Hours typed for the day, with those of its other outings: no day has more than 25, on which the clocks are set back. */
static gboolean
fits_day(struct book *b, const struct engine *e, const struct outing *o, struct judged *j, GError **err)
{
	enum { LONGEST_DAY = 25 * 3600 };
	struct cells *c = cells_open(b->db, SQL_ENGINE_TYPED_BESIDE);
	gint64 beside;

	cells_bind(c, 1, o->boat);
	cells_bind(c, 2, e->id);
	cells_bind(c, 3, o->date);
	cells_bind(c, 4, o->id == NONE ? 0 : o->id); /* no key is 0 */
	beside = cells_next(c) ? cells_int(c, 0) : 0;
	if (!cells_close(c, err))
		return FALSE;
	if (o->hours + beside <= LONGEST_DAY || !beside)
		return TRUE;
	j->hours = (double)(o->hours + beside) / 3600;
	return ask(j, DOUBT_IMPOSSIBLE, err);
}

gboolean
book_question(struct book *b, const struct engine *e, gint64 before, const struct outing *o, char **note, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_ENGINE_LAST_DAY);
	struct judged j = { .before = o->reading == NONE ? NONE : before };
	gint64 last;

	cells_bind(c, 1, o->boat);
	cells_bind(c, 2, e->id);
	cells_bind(c, 3, o->date);
	last = cells_next(c) ? cells_int(c, 0) : NONE;
	if (!cells_close(c, err))
		return FALSE;
	/* Typed hours are one day's; a reading may hold all that ran since the last row.  A log's first reading has no
	 * day to count from: what ran before it is not this log's to question. */
	if (o->reading != NONE && last == NONE && o->reading >= before)
		return TRUE;
	j.days = o->reading == NONE || last == NONE ? 1 : MAX(o->date - last, 1);
	j.hours = (double)(o->reading == NONE ? o->hours : o->reading - before) / 3600;
	hours_exact(o->reading == NONE ? o->hours : o->reading, j.typed);
	if (o->reading == NONE && !fits_day(b, e, o, &j, err))
		return FALSE;
	return usual_use(b, e, o->date, j.days, &j.use, err) && judge(&j, note, err);
}

/* Outings of the meter before, on days after the new one was fitted, are the new one's; their readings can't be. */
static gboolean
take_over(struct book *b, const struct meter *before, const struct meter *m, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_METER_READING_AFTER);
	char d[DAY_TEXT];
	gint64 day;

	cells_bind(c, 1, before->id);
	cells_bind(c, 2, m->fitted);
	day = cells_next(c) ? cells_int(c, 0) : NONE;
	if (!cells_close(c, err))
		return FALSE;
	if (day != NONE)
		return err_set(err, ERR_CONFLICT, "the meter before has a reading on %s: correct that outing first",
			       day_iso(day, d));
	c = cells_open(b->db, SQL_METER_MOVE);
	cells_bind(c, 1, before->id);
	cells_bind(c, 2, m->fitted);
	cells_bind(c, 3, m->id);
	cells_next(c);
	return cells_close(c, err) && book_meter_settle(b, before, TRUE, err);
}

static gboolean
add_meter(struct book *b, const struct engine *e, struct meter *m, GError **err)
{
	struct meter before;
	char d[DAY_TEXT];
	struct engine_hours hours = { NONE, 0, FALSE };
	gboolean ok = book_meter_on(b, e->id, G_MAXINT32, &before, err);

	if (ok && before.id != NONE && before.fitted > m->fitted)
		ok = err_set(err, ERR_CONFLICT, "a later meter was fitted on %s: meters are recorded in their order",
			     day_iso(before.fitted, d));
	/* The engine's hours up to that day; what runs on the day itself is the old meter's. */
	ok = ok && book_engine_hours(b, e, m->fitted, &hours, err);
	m->engine_hours = hours.total;
	ok = ok && book_put(b, RECORD_METER, m, err) && (before.id == NONE || take_over(b, &before, m, err));
	record_clear(RECORD_METER, &before);
	return ok;
}

/* What ran between the new beginning and the old one, as one row that the old beginning's reading closes. */
static gboolean
begin_earlier(struct book *b, struct engine *e, const struct meter *m, GError **err)
{
	struct meter first;
	struct outing gap;
	char d[DAY_TEXT];
	gboolean ok = book_meter_on(b, e->id, G_MAXINT32, &first, err);

	record_init(RECORD_OUTING, &gap);
	if (ok && (first.id == NONE || first.how != METER_FIRST))
		ok = err_set(err, ERR_CONFLICT,
			     "only the first meter's beginning can be moved, and before another took its place");
	if (ok && (m->fitted >= first.fitted || m->start > first.start))
		ok = err_set(err, ERR_CONFLICT,
			     "the log begins on %s: an earlier day and a reading not above that one are wanted",
			     day_iso(first.fitted, d));
	if (ok) {
		gap.boat = e->boat;
		gap.engine = e->id;
		gap.date = first.fitted;
		gap.meter = first.id;
		gap.reading = first.start;
		gap.hours = first.start - m->start;
		gap.estimated = 1;
		gap.remark = g_strdup("not logged");
		e->hours = e->hours == NONE ? NONE : MAX(e->hours - gap.hours, 0);
		first.fitted = m->fitted;
		first.start = m->start;
		first.engine_hours = e->hours;
		ok = book_put(b, RECORD_METER, &first, err) && book_put(b, RECORD_ENGINE, e, err)
		  && (!gap.hours || book_put(b, RECORD_OUTING, &gap, err)) && book_meter_settle(b, &first, TRUE, err);
	}
	record_clear(RECORD_OUTING, &gap);
	record_clear(RECORD_METER, &first);
	return ok;
}

gboolean
book_add_meter(struct book *b, gint64 boat, const char *engine, struct meter *m, GError **err)
{
	struct engine e;
	char d[DAY_TEXT];
	gboolean ok;

	if (m->fitted > b->who.today)
		return err_set(err, ERR_INPUT, "%s lies ahead of today", day_iso(m->fitted, d));
	if (!book_engine(b, boat, engine, &e, err))
		return FALSE;
	m->engine = e.id;
	ok = book_begin(b, err)
	  && book_end(b, m->how == METER_FIRST ? begin_earlier(b, &e, m, err) : add_meter(b, &e, m, err), err,
		      "meter of %s, %s on %s", e.name, word_of(&words_meter_how, m->how), day_iso(m->fitted, d));
	record_clear(RECORD_ENGINE, &e);
	return ok;
}
