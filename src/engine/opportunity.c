#include "engine/opportunity.h"

#include "base/date.h"
#include "engine/timeline_inside.h"

#define NEVER G_MAXINT64

enum need { NEED_NOTHING, NEED_OUT, NEED_AFLOAT };

struct when {
	const struct timeline *t;
	gint64 today;
	struct boat_year year;	/* NEVER instead of NONE */
	enum need need;
	gboolean grave;	/* sinks, burns or hurts */
	gboolean first_day;	/* it is due at the first day afloat */
	gint64 due;	/* early or likely */
};

static enum need
need_of(enum workplace place)
{
	switch (place) {
	case WORK_OUT:
	case WORK_ON_HOSE:
	case WORK_SHOP:
		return NEED_OUT;
	case WORK_AFLOAT:
		return NEED_AFLOAT;
	case WORK_ANYWHERE:
	case WORKPLACE_COUNT:
		break;
	}
	return NEED_NOTHING;
}

static gint64
or_never(gint64 day)
{
	return day == NONE ? NEVER : day;
}

static void
set(const struct when *w, struct due_out *out, enum opportunity when, gint64 by, gboolean misfit)
{
	out->when = when;
	out->by = by == NEVER ? NONE : by;
	out->misfit = !misfit ? MISFIT_NONE : w->need == NEED_OUT ? MISFIT_NEEDS_OUT : MISFIT_NEEDS_AFLOAT;
}

/* Whether the boat is in the state that the work needs on some day of [a, b], in season; *last is the last of them. */
static gboolean
offered(const struct when *w, gint64 a, gint64 b, gint64 *last)
{
	gint64 out = w->need == NEED_OUT ? last_day_out_of_water(w->t, a, b) : b;

	*last = out == NONE ? b : out;
	return out != NONE;
}

static void
place_past(const struct when *w, struct due_out *out)
{
	const struct boat_year *y = &w->year;
	gboolean afloat = w->need == NEED_AFLOAT;
	gint64 last;

	if (!y->under_way && (afloat || (w->first_day && w->need == NEED_NOTHING)))
		set(w, out, OPP_FIRST_DAY, y->launch, afloat && w->due < y->launch);
	else if (!y->under_way)
		set(w, out, OPP_BEFORE_LAUNCH, y->launch, FALSE);
	else if (w->today == y->haul_out)
		set(w, out, afloat ? OPP_THIS_SEASON : OPP_LAY_UP, w->today, FALSE);
	else if (w->grave)
		set(w, out, OPP_NOW, w->today, !offered(w, w->today, w->today, &last));
	else if (offered(w, w->today, w->today, &last))
		set(w, out, OPP_THIS_SEASON, w->today, FALSE);
	else if (y->haul_out == NEVER)
		set(w, out, OPP_THIS_SEASON, w->today, TRUE);
	else
		set(w, out, OPP_LAY_UP, y->haul_out, TRUE);
}

/* The middle of the season when that comes before it is due. */
static gint64
mid_season(const struct when *w)
{
	gint64 middle = timeline_event(w->t, EVENT_MID_SEASON, w->today + 1, 1);

	return middle == NONE ? w->due : MIN(middle, w->due);
}

/* Due after today and before the coming haul-out, or that of the season under way. */
static void
place_in_season(const struct when *w, struct due_out *out)
{
	const struct boat_year *y = &w->year;
	gint64 due = w->due, last;

	if (offered(w, y->under_way ? w->today : y->launch + 1, due, &last))
		set(w, out, OPP_THIS_SEASON, last, FALSE);
	else if (!y->under_way)
		set(w, out, OPP_BEFORE_LAUNCH, y->launch, FALSE);
	else if (w->grave)
		set(w, out, OPP_MID_SEASON, mid_season(w), TRUE);
	else if (y->haul_out == NEVER)
		set(w, out, OPP_THIS_SEASON, due, TRUE);
	else
		set(w, out, OPP_LAY_UP, due, TRUE);
}

static void
place_ahead(const struct when *w, struct due_out *out)
{
	const struct boat_year *y = &w->year;
	gint64 due = w->due;
	gboolean afloat = w->need == NEED_AFLOAT;

	if (y->haul_out == NEVER && due > day_add_months(w->today, 12))
		set(w, out, OPP_LATER, due, FALSE);
	else if (!y->under_way && due <= y->launch && (afloat || (w->first_day && due == y->launch && w->need == NEED_NOTHING)))
		set(w, out, OPP_FIRST_DAY, y->launch, due < y->launch);
	else if (!y->under_way && due <= y->launch)
		set(w, out, OPP_BEFORE_LAUNCH, due, FALSE);
	else if (due < y->haul_out)
		place_in_season(w, out);
	else if (due < y->next_launch)
		set(w, out, afloat ? OPP_THIS_SEASON : OPP_LAY_UP, y->haul_out, FALSE);
	else if (due == y->next_launch || (due < y->next_haul_out && !afloat))
		set(w, out, OPP_NEXT_SPRING, y->next_launch, FALSE);
	else
		set(w, out, OPP_LATER, due, FALSE);
}

/* What is done again within so many months is not looked up but done. */
enum { CHORE_MONTHS = 3 };

static gboolean
is_chore(const struct task_in *task)
{
	if ((task->rule != CLOCK_DONE && task->rule != CLOCK_INSPECTION) || task->mechanism == MECH_GROWTH)
		return FALSE;	/* what grows does so afloat, and perhaps never was */
	for (int i = 0; i < task->n_limits; i++)
		if (task->limit[i].kind == LIMIT_MONTHS && task->limit[i].amount > 0 && task->limit[i].amount <= CHORE_MONTHS)
			return TRUE;
	return FALSE;
}

/* Whether the lack of a record leads to work rather than to a survey: a chore is due, and what needs the boat afloat waits
 * for that. */
static gboolean
unknown_is_due(const struct task_in *task, const struct asked *asked)
{
	return !asked->known && !asked->each_outing && (is_chore(task) || need_of(task->place) == NEED_AFLOAT);
}

static void
place_unknown(struct when *w, struct due_out *out)
{
	w->due = w->year.under_way ? w->today : w->year.launch;	/* no misfit: nothing was put off */
	place_past(w, out);
}

gint64
due_placed_by(const struct task_in *task, const struct due_out *out)
{
	return task->consequence <= COST_HURTS ? out->early : out->due;
}

void
opportunity_find(const struct timeline *t, gint64 today, const struct task_in *task, const struct asked *asked,
		 struct due_out *out)
{
	struct when w = { .t = t, .today = today, .need = need_of(task->place), .due = due_placed_by(task, out),
			  .first_day = asked->first_day };
	gint64 last;

	if (!asked->happened && !asked->clock) {
		out->when = asked->each_outing ? OPP_EACH_OUTING : OPP_ON_CONDITION;
		return;
	}
	if (!asked->happened && (!asked->known || w.due == NONE) && !unknown_is_due(task, asked)) {
		out->when = asked->each_outing ? OPP_EACH_OUTING : asked->known ? OPP_LATER : OPP_NO_RECORD;
		return;
	}
	w.grave = task->consequence <= COST_HURTS;
	timeline_year(t, today, &w.year);
	w.year.launch = or_never(w.year.launch);
	w.year.haul_out = or_never(w.year.haul_out);
	w.year.next_launch = or_never(w.year.next_launch);
	w.year.next_haul_out = or_never(w.year.next_haul_out);
	if (asked->happened)
		set(&w, out, OPP_NOW, today, w.need == NEED_AFLOAT ? !w.year.under_way : !offered(&w, today, today, &last));
	else if (!asked->known)
		place_unknown(&w, out);
	else if (out->past)
		place_past(&w, out);
	else
		place_ahead(&w, out);
}
