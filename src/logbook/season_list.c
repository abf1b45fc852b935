#include "logbook/season_list.h"

#include "base/date.h"
#include "base/err.h"
#include "engine/timeline.h"
#include "logbook/inside.h"
#include "logbook/season_order.h"

#include <string.h>

static const char also_due[] = "also-due", also_due_heading[] = "Also due";

struct season_work *
season_work_new(void)
{
	struct season_work *w = g_new0(struct season_work, 1);

	w->lines = g_array_new(FALSE, TRUE, sizeof(struct season_line));
	w->due = due_list_new();
	w->undone = due_list_new();
	w->chunk = g_string_chunk_new(1024);
	return w;
}

void
season_work_free(struct season_work *w)
{
	if (!w)
		return;
	g_array_unref(w->lines);
	due_list_free(w->due);
	due_list_free(w->undone);
	g_string_chunk_free(w->chunk);
	g_free(w);
}

guint
season_lines(const struct season_work *w)
{
	return w->lines->len;
}

const struct season_line *
season_line(const struct season_work *w, guint i)
{
	return &((const struct season_line *)(const void *)w->lines->data)[i];
}

/* The sea trial belongs to the launch as the first day afloat does. */
static enum season_event
event_of(enum season_list list)
{
	static const enum season_event events[SEASON_LISTS] = { EVENT_LAUNCH,	EVENT_FIRST_DAY, EVENT_MID_SEASON,
								EVENT_HAUL_OUT, EVENT_LAY_UP,	 EVENT_FIRST_DAY };

	return events[list];
}

/* What a task's limits say of when it is wanted. */
struct asks {
	gboolean event[SEASON_EVENT_COUNT];
	gboolean other_clock; /* hours, months, outings, seasons */
	gboolean happens; /* only after something happened */
};

static struct asks
asks_of(const struct due_line *d)
{
	struct asks a = { .happens = d->in.n_limits > 0 };

	for (int i = 0; i < d->in.n_limits; i++) {
		const struct limit_in *l = &d->in.limit[i];

		if (l->kind == LIMIT_EVENT)
			a.event[l->event] = TRUE;
		else
			a.other_clock = a.other_clock || (l->kind != LIMIT_HAPPENING && l->kind != LIMIT_CONDITION);
		a.happens = a.happens && l->kind == LIMIT_HAPPENING;
	}
	return a;
}

/* Whether it is the event of another list, and nothing sooner, that makes it due. */
static gboolean
by_other_event(const struct due_line *d, enum season_event event)
{
	const struct limit_in *l = d->out.governing < 0 ? NULL : &d->in.limit[d->out.governing];

	return l && l->kind == LIMIT_EVENT && l->event != event;
}

static gboolean
for_commissioning(const struct due_line *d, const struct asks *a)
{
	gboolean unknown = d->out.when == OPP_NO_RECORD && a->other_clock;

	return d->out.when == OPP_NOW || d->out.when == OPP_BEFORE_LAUNCH || a->event[EVENT_LAUNCH] || unknown;
}

static gboolean
for_first_day(const struct due_line *d, const struct asks *a)
{
	gboolean unknown = d->out.when == OPP_NO_RECORD && a->other_clock && d->in.place == WORK_AFLOAT;

	return d->out.when == OPP_FIRST_DAY || a->event[EVENT_FIRST_DAY] || unknown;
}

/* Of a line as it would stand if nothing of the list had been done. */
static gboolean
is_for(enum season_list list, const struct due_line *d)
{
	struct asks a = asks_of(d);

	switch (list) {
	case LIST_COMMISSIONING:
		return for_commissioning(d, &a);
	case LIST_FIRST_DAY:
		return for_first_day(d, &a);
	case LIST_MID_SEASON:
		return d->out.when == OPP_MID_SEASON || a.event[EVENT_MID_SEASON];
	case LIST_HAUL_OUT:
		return a.event[EVENT_HAUL_OUT];
	case LIST_LAY_UP:
		return a.event[EVENT_LAY_UP] || (d->out.when == OPP_LAY_UP && !by_other_event(d, EVENT_LAY_UP));
	case LIST_SEA_TRIAL:
	case SEASON_LISTS:
		break;
	}
	return FALSE;
}

const char *
season_state_word(enum season_state state)
{
	static const char *const words[] = { "open", "done", "passed-over" };

	return words[state];
}

/* What the sorting of lines goes by. */
struct ranked {
	struct season_line line;
	int rank, place; /* of the section, and in it */
	int worst; /* consequence of what stands in the section behind the same access */
};

static void
add_line(struct season_work *w, GArray *ranked, const struct season_order *o, int at)
{
	const struct due_line *d = due_at(w->due, at);
	const struct season_row *row = season_order_row(o, d->name, d->path);
	struct ranked r = { { .at = at, .due = d, .service = NONE, .skip = NONE, .when = NONE, .section = also_due,
			      .heading = also_due_heading },
			    G_MAXINT, 0, CONSEQUENCE_COUNT };

	if (row) {
		r.rank = row->rank;
		r.place = row->place;
		r.line.section = g_string_chunk_insert_const(w->chunk, row->section);
		r.line.heading = g_string_chunk_insert_const(w->chunk, row->heading);
		r.line.note = row->note ? g_string_chunk_insert_const(w->chunk, row->note) : NULL;
		r.line.source = row->source ? g_string_chunk_insert_const(w->chunk, row->source) : NULL;
	}
	g_array_append_val(ranked, r);
}

/* What the autumn's events ask for is caught up with in spring where it was not done.  Done in autumn, it was done for them. */
static gboolean
was_for_autumn(const struct season_work *w, const struct due_line *undone, const struct due_line *d)
{
	gint64 half = w->day == NONE ? NONE : w->after + (w->day - w->after) / 2;

	return w->list == LIST_COMMISSIONING && half != NONE && by_other_event(undone, EVENT_LAUNCH)
	    && !asks_of(undone).event[EVENT_LAUNCH] && d->in.since.day != NONE && d->in.since.day > w->after
	    && d->in.since.day <= half;
}

/* What has no time of its own is on the lists that name it; what has one, on those that it falls to.  Nothing falls to a sea
 * trial. */
static gboolean
is_named(const struct season_work *w, const struct due_line *undone, const struct season_order *o)
{
	gboolean timeless = undone->out.when == OPP_EACH_OUTING || undone->out.when == OPP_ON_CONDITION;

	return (timeless || w->list == LIST_SEA_TRIAL) && !asks_of(undone).happens
	    && season_order_names(o, undone->name, undone->path);
}

static void
gather(struct season_work *w, GArray *ranked, const struct season_order *o)
{
	for (int i = 0; i < due_count(w->due); i++) {
		const struct due_line *d = due_at(w->due, i), *undone = due_find(w->undone, d->id);

		if (undone && ((is_for(w->list, undone) && !was_for_autumn(w, undone, d)) || is_named(w, undone, o)))
			add_line(w, ranked, o, i);
	}
}

static const char *
off_of(const struct ranked *r)
{
	return r->line.due->off ? r->line.due->off : "";
}

static void
find_worst(GArray *ranked)
{
	struct ranked *r = (void *)ranked->data;

	for (guint i = 0; i < ranked->len; i++)
		for (guint k = 0; k < ranked->len; k++)
			if (r[k].rank == r[i].rank && !strcmp(off_of(&r[k]), off_of(&r[i])))
				r[i].worst = MIN(r[i].worst, (int)r[k].line.due->in.consequence);
}

static int
compare(gconstpointer x, gconstpointer y)
{
	const struct ranked *a = x, *b = y;
	int d = a->rank < b->rank ? -1 : a->rank > b->rank;

	d = d ? d : a->worst - b->worst;
	d = d ? d : strcmp(off_of(a), off_of(b));
	d = d ? d : a->place - b->place;
	d = d ? d : (int)a->line.due->in.consequence - (int)b->line.due->in.consequence;
	return d ? d : strcmp(a->line.due->name, b->line.due->name);
}

/* The first day that the work can have been done. */
static gint64
first_day(const struct service *s)
{
	return s->earliest == NONE ? s->date : s->earliest;
}

static const char *
keep(struct season_work *w, const char *text)
{
	return text && *text ? g_string_chunk_insert(w->chunk, text) : NULL;
}

static void
take_service(struct season_work *w, struct season_line *line, const struct service *s)
{
	const char *both = s->seen && s->proof ? "; " : "";
	g_autofree char *words = g_strdup_printf("%s%s%s", s->seen ? s->seen : "", both, s->proof ? s->proof : "");

	line->state = SEASON_DONE;
	line->service = s->id;
	line->when = s->date;
	line->words = keep(w, words);
	line->who = keep(w, s->who);
}

/* The newest that counts for the list. */
static void
tick(struct season_work *w, struct season_line *line, const GArray *services, gint64 today)
{
	const struct task_in *in = &line->due->in;
	const struct service *s = (const void *)services->data, *found = NULL;

	for (guint i = 0; i < services->len; i++)
		if (s[i].task == line->due->id && first_day(&s[i]) > w->after && s[i].date <= today
		    && service_restarts(in->rule, in->consequence, s[i].outcome) && (!found || s[i].date >= found->date))
			found = &s[i];
	if (found) {
		take_service(w, line, found);
	} else if (in->since.what == SINCE_FITTED && in->since.day > w->after) {
		line->state = SEASON_DONE;
		line->when = in->since.day;
	}
}

/* The latest pass-over, unless it was done on that day or later. */
static void
pass(struct season_work *w, struct season_line *line, const GArray *skips, gint64 today)
{
	const struct skip *s = (const void *)skips->data, *found = NULL;

	for (guint i = 0; i < skips->len; i++)
		if (s[i].task == line->due->id && s[i].list == (gint64)w->list && s[i].date > w->after && s[i].date <= today
		    && (!found || s[i].date > found->date || (s[i].date == found->date && s[i].id > found->id)))
			found = &s[i];
	if (!found || (line->state == SEASON_DONE && line->when >= found->date))
		return;
	line->state = SEASON_PASSED;
	line->service = NONE;
	line->skip = found->id;
	line->when = found->date;
	line->words = keep(w, found->reason);
	line->who = keep(w, found->who);
}

static gboolean
find_states(struct book *b, struct season_work *w, gint64 boat, GError **err)
{
	g_autoptr(GArray) services = book_records(b, RECORD_SERVICE, boat, err);
	g_autoptr(GArray) skips = services ? book_records(b, RECORD_SKIP, boat, err) : NULL;

	w->done = w->passed = 0;
	for (guint i = 0; skips && i < w->lines->len; i++) {
		struct season_line *line = &((struct season_line *)(void *)w->lines->data)[i];

		tick(w, line, services, b->who.today);
		pass(w, line, skips, b->who.today);
		w->done += line->state == SEASON_DONE;
		w->passed += line->state == SEASON_PASSED;
	}
	return skips != NULL;
}

/* Which event the list is of, and from when work counts for it. */
static void
find_days(struct season_work *w, gint64 today)
{
	struct event_meant meant;

	timeline_event_meant(due_timeline(w->due), event_of(w->list), today, &meant);
	w->day = meant.day;
	w->after = meant.day == NONE ? day_add_months(today, -12) : meant.after == NONE ? DAY_FIRST : meant.after;
}

/* The day as of which the list stands: before the event at the latest, so that what was late then does not leave it.  The day of
 * the launch still belongs to the winter; on that of the haul-out all that is late is for lay-up, also what that has no part in. */
static gint64
as_of(const struct season_work *w, gint64 today)
{
	gboolean closing = w->list == LIST_HAUL_OUT || w->list == LIST_LAY_UP;

	return w->day == NONE ? today : MIN(today, w->day - closing);
}

gboolean
book_season_work(struct book *b, const struct boat *boat, enum season_list list, struct season_work *w, GError **err)
{
	const gint64 today = b->who.today;
	const struct due_ask ask = { today, NONE };
	g_autoptr(GArray) ranked = g_array_new(FALSE, TRUE, sizeof(struct ranked));
	struct season_order *o;

	g_array_set_size(w->lines, 0);
	g_string_chunk_clear(w->chunk);
	w->list = list;
	w->boat = boat->id;
	if (!book_due(b, boat, &ask, w->due, err))
		return FALSE;
	find_days(w, today);
	if (!book_due_undone(b, boat, as_of(w, today), w->after, w->undone, err))
		return FALSE;
	o = season_order_read(b->who.data, list, err);
	if (!o)
		return FALSE;
	gather(w, ranked, o);
	season_order_free(o);
	find_worst(ranked);
	g_array_sort(ranked, compare);
	for (guint i = 0; i < ranked->len; i++)
		g_array_append_val(w->lines, ((struct ranked *)(void *)ranked->data)[i].line);
	return find_states(b, w, boat->id, err);
}

char *
season_cautions(const struct season_work *w)
{
	g_autoptr(GHashTable) seen = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
	GString *out = g_string_new(NULL);

	for (guint i = 0; i < w->lines->len; i++) {
		const char *words = season_line(w, i)->due->caution;
		g_auto(GStrv) word = g_strsplit(words ? words : "", " ", -1);

		for (int k = 0; word[k]; k++)
			if (*word[k] && g_hash_table_add(seen, g_strdup(word[k])))
				g_string_append_printf(out, "%s%s", out->len ? " " : "", word[k]);
	}
	return g_string_free(out, FALSE);
}

const char *
season_list_title(enum season_list list)
{
	static const char *const titles[SEASON_LISTS] = { "Commissioning", "First day afloat", "Mid-season",
							  "Haul-out",	   "Lay-up",	       "Sea trial" };

	return titles[list];
}

char *
season_head(const struct season_work *w)
{
	static const char *const of[SEASON_LISTS] = { "launch ", "", "", "", "haul-out ", "launch " };
	g_autofree char *passed = w->passed ? g_strdup_printf(", %d passed over", w->passed) : g_strdup("");
	char day[16];

	return g_strdup_printf("%s, %s%s: %d of %u done%s", season_list_title(w->list), w->day == NONE ? "since " : of[w->list],
			       day_words(w->day == NONE ? w->after : w->day, day), w->done, w->lines->len, passed);
}

enum season_list
season_next(const struct due_list *l)
{
	const struct due_year *y = due_year(l);
	struct event_meant closing, middle;

	if (y->launch == NONE)
		return LIST_COMMISSIONING;
	timeline_event_meant(due_timeline(l), EVENT_LAY_UP, y->at, &closing);
	timeline_event_meant(due_timeline(l), EVENT_MID_SEASON, y->at, &middle);
	if (y->afloat)
		return y->at <= middle.day ? LIST_MID_SEASON : LIST_HAUL_OUT;
	if (y->at == y->launch)
		return LIST_FIRST_DAY;
	return closing.day <= y->at && y->at - closing.day < y->launch - y->at ? LIST_LAY_UP : LIST_COMMISSIONING;
}

gint64
season_list_day(const struct due_list *l, enum season_list list)
{
	struct event_meant meant;

	timeline_event_meant(due_timeline(l), event_of(list), due_year(l)->at, &meant);
	return meant.day;
}

static gboolean
in_time(const struct season_work *w, gint64 date, GError **err)
{
	char d[DAY_TEXT], since[DAY_TEXT];

	return date > w->after
	    || err_set(err, ERR_INPUT, "%s does not count for this list: it takes what is done after %s. splitpin did records "
		       "other work", day_iso(date, d), day_iso(w->after, since));
}

gboolean
book_season_tick(struct book *b, const struct season_work *w, const struct season_tick *t, struct service_said *said, GError **err)
{
	struct service_form f = { .dated = TRUE };
	gboolean ok;

	*said = (struct service_said) { .hours = NONE };
	record_init(RECORD_SERVICE, &f.what);
	record_init(RECORD_PART, &f.part);
	f.what.task = t->task;
	f.what.date = t->date;
	f.what.seen = g_strdup(t->seen);
	f.what.proof = g_strdup(t->proof);
	f.what.who = g_strdup(t->who);
	ok = in_time(w, t->date, err) && book_did(b, &f, said, err);
	record_clear(RECORD_SERVICE, &f.what);
	record_clear(RECORD_PART, &f.part);
	return ok;
}

static const struct season_line *
line_of(const struct season_work *w, gint64 task)
{
	for (guint i = 0; i < w->lines->len; i++)
		if (season_line(w, i)->due->id == task)
			return season_line(w, i);
	return NULL;
}

static gboolean
may_pass(struct book *b, const struct season_work *w, const struct skip *s, GError **err)
{
	const struct season_line *line = line_of(w, s->task);
	char d[DAY_TEXT];

	if (!line)
		return err_set(err, ERR_NOT_FOUND, "that task is not on this list");
	if (line->state == SEASON_DONE && line->when >= s->date)
		return err_set(err, ERR_CONFLICT, "%s was done on %s", line->due->name, day_iso(line->when, d));
	if (s->date > b->who.today)
		return err_set(err, ERR_INPUT, "%s lies ahead of today", day_iso(s->date, d));
	if (!s->reason || !s->reason[strspn(s->reason, " \t\n")])
		return err_set(err, ERR_INPUT, "why is it passed over? a reason is wanted");
	return in_time(w, s->date, err);
}

gboolean
book_season_pass(struct book *b, const struct season_work *w, struct skip *s, GError **err)
{
	if (!may_pass(b, w, s, err))
		return FALSE;
	s->boat = w->boat;
	s->list = (gint64)w->list;
	return book_begin(b, err)
	    && book_end(b, book_put(b, RECORD_SKIP, s, err), err, "%s: %s passed over", word_of(&words_season_list, s->list),
			line_of(w, s->task)->due->name);
}
