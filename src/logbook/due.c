#include "logbook/due_list.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/inside.h"

#include <math.h>
#include <string.h>

/* The forecast is the mean of so many seasons that have runs, and looks no further back than so many days; from a
 * winter before a day on the calendar is whole. */
enum { FORECAST_SEASONS = 5, FORECAST_DAYS = 6 * 366 };

struct due_list *
due_list_new(void)
{
	struct due_list *l = g_new0(struct due_list, 1);

	l->lines = g_array_new(FALSE, TRUE, sizeof(struct due_line));
	l->limits = g_array_new(FALSE, FALSE, sizeof(struct limit));
	l->asked = g_array_new(FALSE, FALSE, sizeof(struct limit_in));
	l->used = g_array_new(FALSE, FALSE, sizeof(struct limit_out));
	l->access = g_array_new(FALSE, FALSE, sizeof(struct access));
	l->readings = g_array_new(FALSE, FALSE, sizeof(struct due_reading));
	l->found = g_array_new(FALSE, FALSE, sizeof(struct due_finding));
	l->runs = g_array_new(FALSE, FALSE, sizeof(struct run));
	l->stays = g_array_new(FALSE, FALSE, sizeof(struct stay_in));
	l->seasons = g_array_new(FALSE, FALSE, sizeof(struct season_in));
	l->chunk = g_string_chunk_new(4096);
	l->timeline = timeline_new();
	return l;
}

void
due_list_free(struct due_list *l)
{
	g_array_unref(l->lines);
	g_array_unref(l->limits);
	g_array_unref(l->asked);
	g_array_unref(l->used);
	g_array_unref(l->readings);
	g_array_unref(l->found);
	g_array_unref(l->access);
	g_array_unref(l->runs);
	g_array_unref(l->stays);
	g_array_unref(l->seasons);
	g_string_chunk_free(l->chunk);
	timeline_free(l->timeline);
	wear_rates_free(l->rates);
	if (l->places)
		g_hash_table_unref(l->places);
	g_free(l);
}

int
due_count(const struct due_list *l)
{
	return (int)l->lines->len;
}

const struct due_line *
due_at(const struct due_list *l, int i)
{
	return &((const struct due_line *)(const void *)l->lines->data)[i];
}

const struct due_line *
due_find(const struct due_list *l, gint64 task)
{
	for (int i = 0; i < due_count(l); i++)
		if (due_at(l, i)->id == task)
			return due_at(l, i);
	return NULL;
}

gboolean
due_done_since(const struct baseline *since, gint64 date)
{
	return since->day != NONE && (since->earliest == NONE ? since->day : MIN(since->day, since->earliest)) >= date;
}

const struct due_year *
due_year(const struct due_list *l)
{
	return &l->year;
}

const struct timeline *
due_timeline(const struct due_list *l)
{
	return l->timeline;
}

const struct wear_table *
due_rates(const struct due_list *l)
{
	return wear_rates_table(l->rates);
}

static gint64
oldest_baseline(const struct due_list *l, gint64 today)
{
	gint64 from = today;

	for (int i = 0; i < due_count(l); i++)
		if (due_at(l, i)->in.since.day != NONE) {
			const struct baseline *b = &due_at(l, i)->in.since;

			from = MIN(from, b->earliest == NONE ? b->day : MIN(b->day, b->earliest));
		}
	return from;
}

/* The first of the last seasons on record that make the forecast, all of them over; NULL: they are too few. */
static const struct season_in *
forecast_season(const struct due_list *l, gint64 today)
{
	const struct season_in *s = (const void *)l->seasons->data;
	guint n = l->seasons->len;

	while (n && (s[n - 1].haul_out == NONE || s[n - 1].haul_out > today))
		n--;
	return n < FORECAST_SEASONS ? NULL : &s[n - FORECAST_SEASONS];
}

/* Whether each of those seasons has runs. */
static gboolean
forecast_whole(const struct due_list *l, const struct season_in *s)
{
	const struct run *r = (const void *)l->runs->data, *end = r + l->runs->len;

	for (int i = 0; i < FORECAST_SEASONS; i++) {
		while (r < end && r->date < s[i].launch)
			r++;
		if (r == end || r->date >= s[i].haul_out)
			return FALSE;
	}
	return TRUE;
}

/* The runs since in->from or the oldest baseline, and as far back as the forecast needs them, mostly five seasons. */
static gboolean
read_record(struct book *b, struct due_list *l, const struct boat *boat, const struct engines *e,
	    struct timeline_in *in, GError **err)
{
	gint64 oldest = MIN(oldest_baseline(l, in->today), in->from), furthest = MIN(oldest, in->today - FORECAST_DAYS);
	const struct season_in *s;

	if (!due_read_calendar(b, l, boat, furthest, err))
		return FALSE;
	s = forecast_season(l, in->today);
	in->from = s ? MAX(furthest, MIN(oldest, s->launch)) : furthest;
	if (!due_read_runs(b, l, boat, e, in->from, err))
		return FALSE;
	if (in->from == furthest || forecast_whole(l, s))
		return TRUE;
	in->from = furthest;
	g_array_set_size(l->runs, 0);
	return due_read_runs(b, l, boat, e, in->from, err);
}

static gboolean
build_timeline(struct book *b, struct due_list *l, const struct boat *boat, const struct engines *e, gint64 from,
	       GError **err)
{
	struct timeline_in in = {
		.today = MIN(b->who.today, l->year.at),
		.from = from,
		.habit = { (enum stand)boat->berth, (enum stand)boat->winter, (enum water)boat->water, boat->launch,
			   boat->haul_out, NULL },
		.n_engines = e->n,
	};

	if (!read_record(b, l, boat, e, &in, err))
		return FALSE;
	in.habit.climate = due_climate(l, boat->place, boat->water, &(gint64){ NONE });
	in.rates = l->rates;
	in.run = (const void *)l->runs->data;
	in.n_runs = (int)l->runs->len;
	in.stay = (const void *)l->stays->data;
	in.n_stays = (int)l->stays->len;
	in.season = (const void *)l->seasons->data;
	in.n_seasons = (int)l->seasons->len;
	timeline_build(l->timeline, &in);
	return TRUE;
}

static void
fix_year(struct due_list *l)
{
	struct boat_year y;

	timeline_year(l->timeline, l->year.at, &y);
	l->year.afloat = y.under_way;
	l->year.launch = y.launch;
	l->year.haul_out = y.haul_out;
	l->year.next_launch = y.next_launch;
}

/* An opportunity that comes no later than the day asked up to. */
static gboolean
wanted_by(const struct due_line *d, const struct due_year *y, gint64 until)
{
	switch (d->out.when) {
	case OPP_NOW:
	case OPP_NO_RECORD:
		return TRUE;
	case OPP_BEFORE_LAUNCH:
		return y->launch != NONE && y->launch <= until;
	case OPP_FIRST_DAY:
	case OPP_MID_SEASON:
	case OPP_THIS_SEASON:
		return d->out.by == NONE || d->out.by <= until;
	case OPP_LAY_UP:
		return y->haul_out != NONE && y->haul_out <= until;
	case OPP_NEXT_SPRING:
		return y->next_launch != NONE && y->next_launch <= until;
	case OPP_LATER:
		return d->out.due != NONE && d->out.due <= until;
	case OPP_EACH_OUTING:
	case OPP_ON_CONDITION:
	case OPPORTUNITY_COUNT:
		break;
	}
	return FALSE;
}

static void
work_out(struct due_list *l, const struct due_ask *ask)
{
	struct due_line *line = (void *)l->lines->data;
	struct limit_out *used = (void *)l->used->data;
	guint kept = 0;

	for (guint i = 0; i < l->lines->len; i++) {
		due_work_out(l->timeline, l->year.at, &line[i].in, &line[i].out, used);
		used += line[i].in.n_limits;
		if (ask->until == NONE || wanted_by(&line[i], &l->year, ask->until))
			line[kept++] = line[i];
	}
	g_array_set_size(l->lines, kept);
}

static void
empty(struct due_list *l)
{
	g_array_set_size(l->lines, 0);
	g_array_set_size(l->limits, 0);
	g_array_set_size(l->asked, 0);
	g_array_set_size(l->used, 0);
	g_array_set_size(l->readings, 0);
	g_array_set_size(l->found, 0);
	g_array_set_size(l->access, 0);
	g_array_set_size(l->runs, 0);
	g_array_set_size(l->stays, 0);
	g_array_set_size(l->seasons, 0);
	g_string_chunk_clear(l->chunk);
}

static gboolean
due_of(struct book *b, const struct boat *boat, const struct due_ask *ask, struct due_list *l, GError **err)
{
	struct engines e;

	if (!due_read_tasks(b, l, boat, &e, err) || !build_timeline(b, l, boat, &e, b->who.today, err))
		return FALSE;
	fix_year(l);
	work_out(l, ask);
	if (!due_read_access(b, l, boat->id, err))
		return FALSE;
	due_sort(l);
	return TRUE;
}

gboolean
book_due(struct book *b, const struct boat *boat, const struct due_ask *ask, struct due_list *l, GError **err)
{
	empty(l);
	l->year = (struct due_year){ .at = ask->at };
	l->known = ask->at;
	return due_of(b, boat, ask, l, err);
}

gboolean
book_due_undone(struct book *b, const struct boat *boat, gint64 at, gint64 after, struct due_list *l, GError **err)
{
	const struct due_ask ask = { at, NONE };

	empty(l);
	l->year = (struct due_year){ .at = at };
	l->known = MIN(at, after);
	return due_of(b, boat, &ask, l, err);
}

gboolean
book_life(struct book *b, const struct boat *boat, gint64 from, struct due_list *l, GError **err)
{
	struct engines e;

	empty(l);
	l->year = (struct due_year) { .at = b->who.today };
	return due_read_engines(b, boat->id, &e, err) && build_timeline(b, l, boat, &e, from, err);
}

gboolean
book_day(struct book *b, const struct boat *boat, const char *text, gint64 *day, GError **err)
{
	struct due_list *l;
	gint64 event = word_index(&words_season_event, text);
	struct engines e = { .n = 0 };
	gboolean ok;

	if (event == NONE)
		return day_parse(text, b->who.today, day, err);
	l = due_list_new();
	l->year.at = b->who.today;
	ok = build_timeline(b, l, boat, &e, b->who.today, err);
	if (ok)
		*day = timeline_event(l->timeline, (enum season_event)event, b->who.today + 1, 1);
	due_list_free(l);
	return ok && (*day != NONE || err_set(err, ERR_NOT_FOUND, "no %s is in sight", text));
}
