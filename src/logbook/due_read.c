/* What the due list reads: tasks, limits, the last service of each, and the boat's life. */
#include "logbook/due_list.h"

#include "engine/wear.h"
#include "logbook/inside.h"
#include "logbook/outing.h"
#include "logbook/service.h"
#include "logbook/variant.h"

#include <math.h>
#include <string.h>

/* A season or stay that began as long before a day can still matter on it. */
enum { CALENDAR_DAYS = 3 * 366 };

const char *
due_keep(struct due_list *l, struct cells *c, int column)
{
	const char *text = cells_text(c, column);

	return text ? g_string_chunk_insert(l->chunk, text) : NULL;
}

static int
engine_index(const struct engines *e, gint64 id)
{
	for (int i = 0; i < e->n; i++)
		if (e->id[i] == id)
			return i;
	return -1;
}

gboolean
due_read_engines(struct book *b, gint64 boat, struct engines *e, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_DUE_ENGINES);

	e->n = 0;
	cells_bind(c, 1, boat);
	while (cells_next(c) && e->n < (int)G_N_ELEMENTS(e->id))
		e->id[e->n++] = cells_int(c, 0);
	return cells_close(c, err);
}

static struct baseline
known_to_the_day(int what, gint64 day, gint64 after, gboolean estimated)
{
	return (struct baseline){ .what = what, .day = day, .earliest = NONE, .after = after,
				  .ran = NONE, .ran_most = NONE, .estimated = estimated };
}

static void
read_line(struct due_list *l, struct cells *c, const struct engines *e)
{
	struct due_line d = { .id = cells_int(c, 0) };
	g_autofree char *label = NULL;
	gint64 engine = cells_int(c, 17);

	d.name = due_keep(l, c, 1);
	d.title = due_keep(l, c, 2);
	d.verb = cells_word(c, 3, &words_verb);
	d.in.place = (enum workplace)cells_word(c, 4, &words_workplace);
	d.in.mechanism = (enum mechanism)cells_word(c, 5, &words_mechanism);
	d.in.consequence = (enum consequence)cells_word(c, 6, &words_consequence);
	d.in.rule = (enum clock_rule)cells_word(c, 7, &words_clock_rule);
	d.minutes = cells_int(c, 8);
	d.variants = due_keep(l, c, 9);
	d.part = due_keep(l, c, 10);
	d.proof = due_keep(l, c, 11);
	d.caution = due_keep(l, c, 12);
	d.fitting_id = cells_int(c, 13);
	d.path = due_keep(l, c, 14);
	d.fitting = due_keep(l, c, 15);
	d.variant = due_keep(l, c, 16);
	d.off = variant_first_off(cells_text(c, 18), cells_text(c, 16)); /* a path for now */
	d.in.engine = engine == NONE ? (e->n == 1 ? 0 : -1) : engine_index(e, engine);
	label = due_label(d.fitting, d.name);
	d.label = g_string_chunk_insert(l->chunk, label);
	d.in.since = known_to_the_day(SINCE_UNKNOWN, NONE, 0, FALSE);
	d.in.asked = d.in.done = NONE;
	g_array_append_val(l->lines, d);
}

static gboolean
read_lines(struct book *b, struct due_list *l, gint64 boat, const struct engines *e, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_DUE_TASKS);

	cells_bind(c, 1, boat);
	while (cells_next(c))
		if (variant_has_task(cells_text(c, 9), cells_text(c, 16)))
			read_line(l, c, e);
	return cells_close(c, err);
}

static void
read_limit(struct due_list *l, struct cells *c)
{
	struct limit m = { .id = cells_int(c, 0), .task = cells_int(c, 1) };
	struct limit_in in;
	struct limit_out none = { .due = NONE, .share = (double)NAN };
	gboolean hours;

	m.kind = cells_word(c, 2, &words_limit_kind);
	m.amount = cells_int(c, 3);
	m.hours = cells_int(c, 4);
	m.event = cells_word(c, 5, &words_season_event);
	m.happening = cells_word(c, 6, &words_happening);
	m.standing = cells_word(c, 7, &words_standing);
	m.source = (char *)(guintptr)due_keep(l, c, 8);
	m.salt = cells_int(c, 10);
	m.salt_hours = cells_int(c, 11);
	hours = m.kind == LIMIT_HOURS || m.kind == LIMIT_FIRST_HOURS;
	in.kind = (enum limit_kind)m.kind;
	in.amount = hours ? m.hours : m.amount;
	in.salt = hours ? m.salt_hours : m.salt;
	in.event = m.event == NONE ? EVENT_LAUNCH : (enum season_event)m.event;
	in.happened = in.stopped = NONE;
	m.measured = (char *)(guintptr)due_keep(l, c, 9);
	g_array_append_val(l->limits, m);
	g_array_append_val(l->asked, in);
	g_array_append_val(l->used, none);
}

/* Whether anything is known of what an engine has run: by its meter, by its owner, or by the log. */
static gboolean
knows_hours(struct book *b, gint64 engine, gboolean *known, GError **err)
{
	struct engine_hours hours = { NONE, 0, FALSE };
	struct engine e;
	gboolean ok;

	record_init(RECORD_ENGINE, &e);
	ok = row_get(b->db, RECORD_ENGINE, engine, &e, err) && book_engine_hours(b, &e, b->who.today, &hours, err);
	*known = hours.total != NONE || hours.logged > 0 || book_has_meter(b, engine);
	record_clear(RECORD_ENGINE, &e);
	return ok;
}

/* Of an engine of which nothing is known no hours are counted: none is not nought. */
static gboolean
rest_hours(struct book *b, struct due_list *l, const struct engines *e, GError **err)
{
	struct due_line *line = (void *)l->lines->data;
	struct limit_in *in = (void *)l->asked->data;
	gboolean known[G_N_ELEMENTS(e->id)], any = e->n == 0;
	int at = 0;

	for (int i = 0; i < e->n; any = any || known[i], i++)
		if (!knows_hours(b, e->id[i], &known[i], err))
			return FALSE;
	for (guint i = 0; i < l->lines->len; i++) {
		line[i].no_hours = line[i].in.engine < 0 ? !any : !known[line[i].in.engine];
		for (int k = 0; k < line[i].in.n_limits; k++, at++)
			if (line[i].no_hours && (in[at].kind == LIMIT_HOURS || in[at].kind == LIMIT_FIRST_HOURS))
				in[at].amount = NONE;
	}
	return TRUE;
}

/* Lines and limits come in the same order, by the task's name. */
static gboolean
read_limits(struct book *b, struct due_list *l, gint64 boat, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_DUE_LIMITS);
	struct due_line *line = (void *)l->lines->data;
	guint at = 0;

	cells_bind(c, 1, boat);
	while (cells_next(c)) {
		gint64 task = cells_int(c, 1);
		guint k = at;

		while (k < l->lines->len && line[k].id != task)
			k++;
		if (k == l->lines->len)
			continue; /* a task that this design has not */
		at = k;
		line[k].in.n_limits++;
		read_limit(l, c);
	}
	return cells_close(c, err);
}

/* The arrays no longer move: give each line its part of them. */
static void
share_out_limits(struct due_list *l)
{
	struct due_line *line = (void *)l->lines->data;
	int at = 0;

	for (guint i = 0; i < l->lines->len; i++) {
		line[i].limit = &((const struct limit *)(const void *)l->limits->data)[at];
		line[i].in.limit = &((const struct limit_in *)(const void *)l->asked->data)[at];
		line[i].used = &((const struct limit_out *)(const void *)l->used->data)[at];
		at += line[i].in.n_limits;
	}
}

/* Of a boat that came new from its builder nothing is older than that day; the first services are still to come. */
static void
all_new(struct due_list *l, const struct boat *boat)
{
	struct due_line *line = (void *)l->lines->data;

	for (guint i = 0; boat->delivered != NONE && boat->delivered <= l->year.at && i < l->lines->len; i++)
		line[i].in.since = known_to_the_day(line[i].in.rule == CLOCK_PRINTED ? SINCE_MADE : SINCE_FITTED, boat->delivered,
						    0, line[i].in.rule == CLOCK_PRINTED);
}

/* A part counts from the day it was fitted, for the task that renews it and for looking at it. */
static gboolean
read_parts(struct book *b, struct due_list *l, gint64 boat, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_DUE_PARTS);
	struct due_line *line = (void *)l->lines->data;

	cells_bind(c, 1, boat);
	while (cells_next(c)) {
		gint64 fitting = cells_int(c, 0), fitted = cells_int(c, 1), made = cells_int(c, 2);

		if (fitted > l->known)
			continue;
		for (guint i = 0; i < l->lines->len; i++) {
			if (line[i].fitting_id != fitting || line[i].in.rule == CLOCK_DONE)
				continue;
			line[i].in.done = fitted;
			if (line[i].in.rule == CLOCK_PRINTED)
				line[i].in.since =
					known_to_the_day(SINCE_MADE, made == NONE ? fitted : made, 0, made == NONE);
			else
				line[i].in.since = known_to_the_day(SINCE_FITTED, fitted, 0, FALSE);
		}
	}
	return cells_close(c, err);
}

static void
take_service(struct due_line *d, struct cells *c)
{
	gint64 date = cells_int(c, 0), after = cells_int(c, 2), made = cells_int(c, 3), earliest = cells_int(c, 5);
	gboolean guess = cells_int(c, 4) == 1;

	d->in.done = MAX(d->in.done, earliest == NONE ? date : earliest);
	if (d->in.rule == CLOCK_PRINTED) {
		d->in.since = known_to_the_day(SINCE_MADE, made == NONE ? date : made, 0, guess || made == NONE);
		return;
	}
	if (d->in.since.day != NONE && date < d->in.since.day)
		return;
	d->in.since = known_to_the_day(SINCE_SERVICE, date, after == NONE ? 0 : after, guess);
	d->in.since.earliest = earliest;
	d->in.since.ran = cells_int(c, 7); /* the engine's hours then, for now */
	d->in.since.ran_most = cells_int(c, 6);
}

/* From the engine's hours at the work to what it has run since. */
static gboolean
ran_since(struct book *b, struct due_list *l, const struct engines *e, struct baseline *since, int engine, GError **err)
{
	struct engine_hours now = { .total = NONE };
	struct engine record;
	gboolean ok = TRUE;

	record_init(RECORD_ENGINE, &record);
	if (engine >= 0)
		ok = row_get(b->db, RECORD_ENGINE, e->id[engine], &record, err)
		  && book_engine_hours(b, &record, MIN(b->who.today, l->year.at), &now, err);
	record_clear(RECORD_ENGINE, &record);
	since->ran = now.total == NONE ? NONE : MAX(now.total - since->ran, 0);
	since->ran_most = now.total == NONE ? NONE : MAX(now.total - since->ran_most, 0);
	return ok;
}

static gboolean
work_out_ran(struct book *b, struct due_list *l, const struct engines *e, GError **err)
{
	struct due_line *line = (void *)l->lines->data;

	for (guint i = 0; i < l->lines->len; i++)
		if (line[i].in.since.ran != NONE && !ran_since(b, l, e, &line[i].in.since, line[i].in.engine, err))
			return FALSE;
	return TRUE;
}

/* The newest service that counts, of those that are taken into account. */
static gboolean
read_services(struct book *b, struct due_list *l, GError **err)
{
	struct due_line *line = (void *)l->lines->data;

	for (guint i = 0; i < l->lines->len; i++) {
		struct due_line *d = &line[i];
		struct cells *c = cells_open(b->db, SQL_SERVICES_OF_TASK);
		gboolean found = FALSE;

		cells_bind(c, 1, d->id);
		while (!found && cells_next(c))
			found = cells_int(c, 0) <= l->known
			     && service_restarts(d->in.rule, d->in.consequence, cells_word(c, 1, &words_outcome));
		if (found) {
			d->in.done_once = TRUE;
			take_service(d, c);
		}
		if (!cells_close(c, err))
			return FALSE;
	}
	return TRUE;
}

/* A new part in a fitting restarts the looking at it, too. */
static void
renewals_restart_looking(struct due_list *l)
{
	struct due_line *line = (void *)l->lines->data;
	gint64 renew = word_index(&words_verb, "renew");

	for (guint i = 0; i < l->lines->len; i++)
		for (guint k = 0; line[i].verb == renew && line[i].in.since.what == SINCE_SERVICE && k < l->lines->len; k++)
			if (line[k].fitting_id == line[i].fitting_id && line[k].in.rule == CLOCK_INSPECTION
			    && (line[k].in.since.day == NONE || line[k].in.since.day < line[i].in.since.day)) {
				line[k].in.since = line[i].in.since;
				line[k].in.since.what = SINCE_FITTED;
				line[k].in.done = MAX(line[k].in.done, line[i].in.done);
			}
}

static gboolean
has_clock(const struct due_line *d)
{
	for (int k = 0; k < d->in.n_limits; k++)
		if (d->limit[k].kind != LIMIT_HAPPENING && d->limit[k].kind != LIMIT_CONDITION)
			return TRUE;
	return FALSE;
}

/* Of a boat bought used what nobody knows is the survey already. */
static gboolean
is_survey(const struct due_line *d, gint64 kind)
{
	return kind == HAPPENED_BOUGHT && d->in.since.day == NONE && has_clock(d);
}

/* An open happening asks anew for what was done before that day; what was done on the day was done after it. */
static gboolean
read_happenings(struct book *b, struct due_list *l, gint64 boat, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_DUE_OPEN);
	const struct due_line *line = (const void *)l->lines->data;
	struct limit_in *asked = (void *)l->asked->data;

	cells_bind(c, 1, boat);
	while (cells_next(c)) {
		gint64 date = cells_int(c, 0), kind = cells_word(c, 1, &words_happening);
		int at = 0;

		for (guint i = 0; i < l->lines->len; i++)
			for (int k = 0; k < line[i].in.n_limits; k++, at++)
				if (asked[at].kind == LIMIT_HAPPENING && line[i].limit[k].happening == kind
				    && date <= l->year.at && !is_survey(&line[i], kind) && !due_done_since(&line[i].in.since, date))
					asked[at].happened = date;
	}
	return cells_close(c, err);
}

gboolean
due_read_runs(struct book *b, struct due_list *l, const struct boat *boat, const struct engines *e, gint64 from,
	  GError **err)
{
	struct cells *c = cells_open(b->db, SQL_DUE_RUNS);

	cells_bind(c, 1, boat->id);
	cells_bind(c, 2, from);
	while (cells_next(c)) {
		gint64 water = cells_word(c, 3, &words_water);
		struct run r = { .date = (gint32)cells_int(c, 0), .seconds = (gint32)cells_int(c, 2) };

		r.engine = (gint16)engine_index(e, cells_int(c, 1));
		r.water = (guint8)(water == NONE ? boat->water : water);
		r.rinsed = cells_int(c, 4) == 1;
		r.trip = cells_int(c, 5) == NONE;
		g_array_append_val(l->runs, r);
	}
	return cells_close(c, err);
}

static gboolean
read_stays_and_seasons(struct book *b, struct due_list *l, const struct boat *boat, gint64 from, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_DUE_STAYS);

	cells_bind(c, 1, boat->id);
	while (cells_next(c)) {
		gint64 water = boat->water;
		const struct climate *climate =
			due_climate(l, cells_text(c, 4), cells_word(c, 3, &words_water), &water);
		struct stay_in s = { cells_int(c, 0), cells_int(c, 1), (enum stand)cells_word(c, 2, &words_stand),
				     (enum water)water, climate };

		g_array_append_val(l->stays, s);
	}
	if (!cells_close(c, err))
		return FALSE;
	c = cells_open(b->db, SQL_DUE_SEASONS);
	cells_bind(c, 1, boat->id);
	cells_bind(c, 2, from - CALENDAR_DAYS);
	while (cells_next(c)) {
		struct season_in s = { cells_int(c, 0), cells_int(c, 1) };

		g_array_append_val(l->seasons, s);
	}
	return cells_close(c, err);
}

/* The program's own constants, and over them what this logbook says. */
static gboolean
read_rates(struct book *b, struct due_list *l, GError **err)
{
	struct wear_table table;
	struct cells *c;

	if (l->rates)
		return TRUE; /* read already */
	wear_table_default(&table);
	c = cells_open(b->db, SQL_DUE_RATES);
	while (cells_next(c)) {
		const char *name = cells_text(c, 0);
		double *value = name ? wear_table_at(&table, name) : NULL;

		if (value)
			*value = cells_real(c, 1);
	}
	if (!cells_close(c, err))
		return FALSE;
	l->rates = wear_rates_new(&table);
	return TRUE;
}

gboolean
due_read_tasks(struct book *b, struct due_list *l, const struct boat *owner, struct engines *e, GError **err)
{
	gint64 boat = owner->id;

	if (!due_read_engines(b, boat, e, err) || !read_lines(b, l, boat, e, err) || !read_limits(b, l, boat, err))
		return FALSE;
	share_out_limits(l);
	all_new(l, owner);
	if (!read_parts(b, l, boat, err) || !read_services(b, l, err) || !work_out_ran(b, l, e, err))
		return FALSE;
	renewals_restart_looking(l);
	return rest_hours(b, l, e, err) && read_happenings(b, l, boat, err) && due_read_found(b, l, boat, err)
	    && due_read_measured(b, l, boat, err) && due_read_figures(b, l, boat, err);
}

gboolean
due_read_calendar(struct book *b, struct due_list *l, const struct boat *boat, gint64 from, GError **err)
{
	return read_rates(b, l, err) && due_read_places(b, l, err) && read_stays_and_seasons(b, l, boat, from, err);
}
