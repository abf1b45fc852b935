#include "engine/due.h"

#include "base/date.h"
#include "engine/opportunity.h"
#include "engine/timeline_inside.h"

#include <math.h>

struct work {
	const struct timeline *t;
	gint64 today;
	const struct task_in *task;
	enum mechanism m;
	gint64 since;	/* NONE: unknown, or of no use to this clock */
	double after;	/* seconds */
	gint64 before;	/* another limit is reached by then at the latest; NONE */
	double ran;	/* seconds run since then, when known so; else below 0 */
};

static struct work
work_of(const struct timeline *t, gint64 today, const struct task_in *task)
{
	gboolean printed = task->rule == CLOCK_PRINTED;
	struct work w = { t, today, task, printed ? MECH_NONE : task->mechanism, task->since.day, 0, NONE, -1 };

	if (task->since.what == SINCE_UNKNOWN || (printed && task->since.what != SINCE_MADE))
		w.since = NONE;
	if (task->since.after > 0)
		w.after = (double)task->since.after;
	if (task->since.ran != NONE)
		w.ran = (double)task->since.ran;
	return w;
}

static gboolean
is_span(const struct baseline *b)
{
	return (b->earliest != NONE && b->earliest < b->day) || (b->ran != NONE && b->ran_most != NONE && b->ran_most > b->ran);
}

/* The same work done as much earlier as it can have been, in halves of that: 0 as late as can be, 1 likely, 2 early. */
static struct work
work_earlier(struct work w, int halves)
{
	const struct baseline *b = &w.task->since;

	if (w.since != NONE && b->earliest != NONE && b->earliest < w.since && halves) {
		w.since -= (w.since - b->earliest) * halves / 2;
		w.after = 0;
	}
	if (b->ran != NONE && b->ran_most != NONE && b->ran_most > b->ran)
		w.ran += (double)(b->ran_most - b->ran) * halves / 2;
	return w;
}

/* Whether this limit can make the task due by itself, once it is known since when. */
static gboolean
is_clock(const struct task_in *task, const struct limit_in *l)
{
	gboolean counts = l->amount != NONE && l->amount > 0, printed = task->rule == CLOCK_PRINTED;

	switch (l->kind) {
	case LIMIT_HOURS:
		return counts && !printed;
	case LIMIT_FIRST_HOURS:
		return counts && !printed && !task->done_once;
	case LIMIT_OUTINGS:
		return counts && !printed && l->amount > 1;
	case LIMIT_MONTHS:
	case LIMIT_SEASONS:
		return counts;
	case LIMIT_EVENT:
		return l->event < SEASON_EVENT_COUNT;
	case LIMIT_HAPPENING:
	case LIMIT_CONDITION:
	case LIMIT_KIND_COUNT:
		break;
	}
	return FALSE;
}

/* Of a source's two figures, how many times as much exposure to salt counts; 1 where it prints one. */
static double
pair_of(const struct limit_in *l)
{
	return l->salt != NONE && l->salt > 0 ? (double)l->amount / (double)l->salt : 1;
}

static gint64
first_of(gint64 a, gint64 b)
{
	return a == NONE || (b != NONE && b < a) ? b : a;
}

static double
pair_days(const struct work *w, const struct limit_in *l, gint64 day)
{
	return (double)(day - w->since) + (pair_of(l) - 1) * timeline_salt_days(w->t, w->since, day);
}

/* The first day on which those reach that many; NONE: not within the timeline. */
static gint64
pair_days_reach(const struct work *w, const struct limit_in *l, double days)
{
	gint64 low = w->since, high = w->t->end;

	if (pair_days(w, l, high) < days - NEARLY)
		return NONE;
	while (low + 1 < high) {
		gint64 middle = low + (high - low) / 2;

		if (pair_days(w, l, middle) >= days - NEARLY)
			high = middle;
		else
			low = middle;
	}
	return high;
}

/* The larger of plain and effective days counts, unless slow wear may stretch an interval; and the maker's own two
 * figures before any rate of ours. */
static void
months(const struct work *w, const struct limit_in *l, struct limit_out *o)
{
	gint64 calendar = day_add_months(w->since, (int)MIN(l->amount, 120000));
	gboolean stretch = wear_rates_table(w->t->rates)->stretch > 0;

	if (calendar == NONE)
		return;
	o->allowed = (double)(calendar - w->since);
	o->raw = timeline_days(w->t, MECH_NONE, w->since, w->today);
	if (pair_of(l) != 1) {
		o->rated = pair_days(w, l, w->today);
		o->due = pair_days_reach(w, l, o->allowed);
		return;
	}
	o->rated = timeline_days(w->t, w->m, w->since, w->today);
	o->due = timeline_days_reach(w->t, w->m, w->since, o->allowed);
	if (stretch)
		return;
	o->rated = MAX(o->rated, o->raw);
	o->due = first_of(o->due, timeline_days_reach(w->t, MECH_NONE, w->since, o->allowed));
}

/* On record, or else ahead. */
static void
days_of(struct limit_out *o, const struct usage_due *ahead)
{
	gboolean on_record = o->due != NONE;

	o->early = on_record ? o->due : ahead->early;
	o->late = on_record ? o->due : ahead->late;
	o->due = on_record ? o->due : ahead->likely;
}

/* How running counts on the day of the work. */
static double
counts_then(const struct work *w, struct rating r)
{
	if (r.rated == RATED_SALT)
		return 1 + (r.pair - 1) * timeline_salt_days(w->t, w->since, w->since + 1);
	return day_rate(w->t, (enum mechanism)r.rated, w->since);
}

/* Running since the work in one way of counting: what is used, and the days on which it reaches what is allowed.  What
 * was run but is not in the log counts as what is in it does. */
static double
hours_by(const struct work *w, struct rating r, struct limit_out *o)
{
	int engine = w->task->engine;
	double after = w->after > 0 ? w->after * counts_then(w, r) : 0;
	double logged = after + rated_seconds(w->t, engine, r, w->since, w->today);
	double plain = w->after + rated_seconds(w->t, engine, PLAINLY, w->since, w->today), run = logged, excess;
	struct usage_due ahead = { NONE, NONE, NONE };

	if (w->ran >= 0)
		run = w->ran * (plain > 0 ? logged / plain : counts_then(w, r));
	excess = run - o->allowed;
	o->due = NONE;
	if (excess >= -NEARLY)
		o->due = logged - after <= excess + NEARLY ? w->since
							   : seconds_reached(w->t, engine, r, w->since, logged - after - excess);
	else
		rated_seconds_reach(w->t, engine, r, -excess, w->before, &ahead);
	days_of(o, &ahead);
	return run + rated_seconds_ahead(w->t, engine, r, w->today - 1);
}

/* Of plain running and running as it wears, the one that comes first and the larger sum hold, as for months. */
static void
hours(const struct work *w, const struct limit_in *l, struct limit_out *o)
{
	gboolean pair = l->salt != NONE && l->salt > 0;
	struct rating r = { pair ? RATED_SALT : (int)w->m, pair_of(l) };
	struct limit_out plain = { .allowed = (double)l->amount };

	o->allowed = plain.allowed;
	o->raw = hours_by(w, PLAINLY, &plain);
	o->rated = is_plain(r.rated) ? o->raw : hours_by(w, r, o);
	if (is_plain(r.rated) || (!pair && wear_rates_table(w->t->rates)->stretch <= 0)) {
		o->due = first_of(o->due, plain.due);
		o->early = first_of(o->early, plain.early);
		o->late = first_of(o->late, plain.late);
		o->rated = MAX(o->rated, o->raw);
	}
}

static void
outings(const struct work *w, const struct limit_in *l, struct limit_out *o)
{
	struct usage_due ahead = { NONE, NONE, NONE };

	o->allowed = (double)l->amount;
	o->raw = o->rated = timeline_outings(w->t, w->since, w->today);
	if (o->raw >= o->allowed)
		o->due = outings_reached(w->t, w->since, l->amount);
	else
		timeline_outings_reach(w->t, o->allowed - o->raw, w->before, &ahead);
	days_of(o, &ahead);
}

static void
seasons(const struct work *w, const struct limit_in *l, struct limit_out *o)
{
	o->allowed = (double)l->amount;
	o->raw = o->rated = season_ends(w->t, w->since, w->today);
	o->due = timeline_event(w->t, EVENT_HAUL_OUT, w->since + 1, (int)MIN(l->amount, 10000));
}

static void
event(const struct work *w, const struct limit_in *l, struct limit_out *o)
{
	o->allowed = 1;
	o->due = event_after_work(w->t, l->event, w->since);
	o->raw = o->rated = o->due != NONE && o->due <= w->today;
}

static void
limit_work_out(const struct work *w, const struct limit_in *l, struct limit_out *o)
{
	gboolean shares = TRUE, spread = FALSE;

	*o = (struct limit_out) { .share = NAN, .due = NONE, .early = NONE, .late = NONE };
	if (l->kind == LIMIT_HAPPENING && l->happened != NONE && l->happened <= w->today)
		o->due = o->early = o->late = l->happened;
	if (l->kind == LIMIT_CONDITION && l->stopped != NONE && l->stopped <= w->today)
		o->due = o->early = o->late = l->stopped;
	if (w->since == NONE || !is_clock(w->task, l))
		return;
	switch (l->kind) {
	case LIMIT_HOURS:
	case LIMIT_FIRST_HOURS:
		hours(w, l, o);
		spread = TRUE;
		break;
	case LIMIT_MONTHS:
		months(w, l, o);
		break;
	case LIMIT_OUTINGS:
		outings(w, l, o);
		spread = TRUE;
		break;
	case LIMIT_SEASONS:
		seasons(w, l, o);
		break;
	case LIMIT_EVENT:
		event(w, l, o);
		shares = FALSE;
		break;
	case LIMIT_HAPPENING:
	case LIMIT_CONDITION:
	case LIMIT_KIND_COUNT:
		break;
	}
	if (!spread && l->kind != LIMIT_HAPPENING && l->kind != LIMIT_CONDITION)
		o->early = o->late = o->due;
	if (shares && o->allowed > 0)
		o->share = o->rated / o->allowed;
}

/* One limit, early, likely and late. */
static void
limit_days(const struct work *w, const struct limit_in *l, struct limit_out *o)
{
	struct work likely = work_earlier(*w, 1), earliest = work_earlier(*w, 2);
	struct limit_out early, late;

	limit_work_out(&likely, l, o);
	if (!is_span(&w->task->since) || w->since == NONE)
		return;
	limit_work_out(&earliest, l, &early);
	limit_work_out(w, l, &late);
	/* How rated running goes over a longer stretch can outweigh that the work was earlier. */
	o->early = first_of(early.early, o->due);
	o->late = late.late == NONE || o->due == NONE ? NONE : MAX(late.late, o->due);
}

/* Whether a falls due before b, or with it and more used up. */
static gboolean
governs(const struct limit_out *a, const struct limit_out *b)
{
	if (a->due == NONE || a->due != b->due)
		return a->due != NONE && (b->due == NONE || a->due < b->due);
	return !isnan(a->share) && (isnan(b->share) || a->share > b->share + NEARLY);
}

static gboolean
is_forecast(const struct limit_in *l)
{
	return l->kind == LIMIT_HOURS || l->kind == LIMIT_FIRST_HOURS || l->kind == LIMIT_OUTINGS;
}

/* The limits that hang on use last: where another is certain to come first, there is nothing to forecast. */
static void
limits_work_out(struct work *w, struct due_out *out, struct limit_out *out_limit)
{
	const struct task_in *task = w->task;

	for (int pass = 0; pass < 2; pass++) {
		for (int i = 0; i < task->n_limits; i++) {
			if (is_forecast(&task->limit[i]) != pass)
				continue;
			limit_days(w, &task->limit[i], &out_limit[i]);
			out->early = first_of(out->early, out_limit[i].early);
			out->late = first_of(out->late, out_limit[i].late);
		}
		w->before = out->late;
	}
}

static void
what_is_asked(const struct task_in *task, const struct limit_out *out_limit, struct asked *asked)
{
	for (int i = 0; i < task->n_limits; i++) {
		const struct limit_in *l = &task->limit[i];
		gboolean happens = l->kind == LIMIT_HAPPENING || l->kind == LIMIT_CONDITION;

		asked->happened = asked->happened || (happens && out_limit[i].due != NONE);
		asked->clock = asked->clock || is_clock(task, l);
		asked->each_outing = asked->each_outing || (l->kind == LIMIT_OUTINGS && l->amount == 1);
	}
}

gboolean
due_asks(const struct task_in *task, gint64 found)
{
	return task->done == NONE || task->done < found;
}

/* What a finding asks for waits for no limit. */
static gboolean
found_asks(const struct task_in *task, gint64 today, struct due_out *out)
{
	if (task->asked == NONE || task->asked > today || !due_asks(task, task->asked))
		return FALSE;
	if (out->due == NONE || task->asked < out->due) {
		out->due = out->early = out->late = task->asked;
		out->governing = -1;
	}
	out->early = first_of(out->early, task->asked);
	out->late = first_of(out->late, task->asked);
	return TRUE;
}

void
due_work_out(const struct timeline *t, gint64 today, const struct task_in *task, struct due_out *out,
	     struct limit_out *out_limit)
{
	struct work w = work_of(t, today, task);
	struct asked asked = { .known = w.since != NONE };
	gint64 placed;

	*out = (struct due_out) { .by = NONE, .due = NONE, .early = NONE, .late = NONE, .share = NAN, .governing = -1 };
	limits_work_out(&w, out, out_limit);
	what_is_asked(task, out_limit, &asked);
	for (int i = 0; i < task->n_limits; i++) {
		const struct limit_out *o = &out_limit[i];

		out->share = fmax(out->share, o->share);
		if (o->due != NONE && (out->governing < 0 || governs(o, &out_limit[out->governing])))
			out->governing = i;
	}
	if (out->governing >= 0)
		out->due = out_limit[out->governing].due;
	asked.happened = found_asks(task, today, out) || asked.happened;
	if (out->governing >= 0)
		out_limit[out->governing].governs = TRUE;
	asked.first_day = out->governing >= 0 && task->limit[out->governing].kind == LIMIT_EVENT &&
			  task->limit[out->governing].event == EVENT_FIRST_DAY;
	placed = due_placed_by(task, out);
	out->past = placed != NONE && placed <= today;
	out->estimated = asked.known && (task->since.estimated || is_span(&task->since));
	opportunity_find(t, today, task, &asked, out);
}
