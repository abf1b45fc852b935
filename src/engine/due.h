/* When one task falls due, and why. */
#ifndef ENGINE_DUE_H
#define ENGINE_DUE_H

#include "engine/timeline.h"

/* What counts.
 *   Months: effective days from the anchor reach the days to the anchor plus the months.  Hours: rated running.
 *   Outings and seasons: their number.  Of several limits the first due governs, of equal ones the larger share.
 *   Event: due at the first such event after the work that the work does not count for.  Work counts for the next
 *   fixed point of the boat's year when it was done after the point before it: for a launch after the haul-out, for
 *   mid-season after the launch, for a haul-out or lay-up after mid-season.
 *   One outing as the limit is no clock but part of every outing.  A printed date takes no account of use.
 *   Each limit has an early, a likely and a late day (chances of .1, .5 and .9 that it is reached by then); one that hangs
 *   on use is not looked for beyond the day on which another limit of the task is certain to come first.  An uncertain
 *   baseline counts from its first day (or the most that can have been run since) for the early one, from its last (or
 *   the least) for the late, from the middle for the likely.
 *
 * When to do it: at the last opportunity before the due day - the early one of what sinks, burns or hurts, the likely one
 * of everything else - in the state that the work needs.  Work out of the water,
 * on a hose or at a shop needs the boat out; a boat on its trailer, or hauled for a while, is out in season too.
 *   due by the coming launch (or past due, ashore)  before launch; needs it afloat, or is due at the first day afloat:
 *                                                   first day afloat
 *   due in season                                   this season by that day; needs it out: before launch, or when
 *                                                   afloat already at lay-up as a misfit
 *   due from haul-out to before the launch          at lay-up; needs it afloat: this season
 *   due from that launch to before its haul-out     next spring; needs it afloat: later
 *   past due in season                              this season, today; needs it out: at lay-up as a misfit
 * What a finding or a happening asks for is for now, past due from the day of the finding on, whatever the limits say.
 * What sinks, burns or hurts is never put off beyond its due day: past due in season it is for now, and needing the
 * boat out it is for a haul in mid-season as a misfit: by the middle of the season, or its due day if that is first.
 * Work afloat that is due in winter is for the first day afloat, as a misfit when that is after its day.
 *
 * What nobody knows since when is for a survey, and has no day.  But a chore, done again within three months unless it is
 * against growth, and work that needs the boat afloat are placed as if due today, though not as past: nobody would look that
 * up, or could. */

struct limit_in {
	enum limit_kind kind;
	gint64 amount;	/* seconds, months, outings, seasons; NONE where the kind has none */
	gint64 salt;	/* the same in salt water, where the source prints two; NONE: it prints one */
	enum season_event event;	/* LIMIT_EVENT */
	/* LIMIT_HAPPENING: the latest open day of such a thing after the last service; NONE: none */
	gint64 happened;
	/* LIMIT_CONDITION: the day of the latest reading, when that says stop and no service that counts came after it;
	 * NONE: none */
	gint64 stopped;
};

/* What the clocks count from. */
struct baseline {
	enum { SINCE_UNKNOWN, SINCE_SERVICE, SINCE_FITTED, SINCE_MADE } what;
	gint64 day;	/* NONE when unknown; where it is known to a span only, the last it can have been */
	gint64 earliest;	/* the first it can have been; NONE: known to the day */
	gint64 after;	/* seconds run on that same day after the work; 0 when not known */
	/* Seconds run since then as of the timeline's today, at least and at most, where the engine's hours tell it and
	 * not the day; NONE: by the log, from the day on. */
	gint64 ran, ran_most;
	gboolean estimated;
};

struct task_in {
	enum mechanism mechanism;
	enum consequence consequence;
	enum workplace place;
	enum clock_rule rule;
	int engine;	/* whose hours count; -1: all of them */
	struct baseline since;
	gboolean done_once;	/* a service that counts is on record: first-service limits no longer hold */
	const struct limit_in *limit;
	int n_limits;
	gint64 asked;	/* from that day on a finding that is open asks for it at once; NONE: none does */
	/* The day of the last service that counts, or on which the part went in: where it is known to a span only, the first
	 * it can have been; NONE: none is known. */
	gint64 done;
};

/* One limit's part of the answer; raw and rated are in the limit's unit (seconds, days, outings, seasons). */
struct limit_out {
	double raw, rated, allowed;	/* used so far, the same after wear rates, and what the limit allows */
	double share;	/* rated / allowed; NAN where the kind has no share or nothing is known */
	/* The day it is or was reached, likely, early and late; NONE: not in sight within ten years, or nothing known. */
	gint64 due, early, late;
	gboolean governs;
};

enum misfit { MISFIT_NONE, MISFIT_NEEDS_OUT, MISFIT_NEEDS_AFLOAT };	/* while afloat; while ashore */

struct due_out {
	enum opportunity when;
	/* The last day to do it: the opportunity's own day or the due day, whichever is first; past due, the
	 * opportunity's own day, and in season today; NONE. */
	gint64 by;
	gint64 due;	/* the likely day on which the governing limit is or was reached, or a finding began to ask; NONE */
	gint64 early, late;	/* the first of the limits' early days, and of their late ones; NONE */
	double share;	/* the largest share used; NAN when none is known */
	int governing;	/* index of that limit; -1: none, or a finding asks before any */
	gboolean past;	/* due before or on today: what sinks, burns or hurts by its early day */
	gboolean estimated;	/* the baseline was, or is known to a span only */
	enum misfit misfit;	/* needs the boat in a state that no opportunity before the due day offers */
};

/* Whether what was found on a day still asks for the task: no service that counts was done on that day or after it. */
gboolean due_asks(const struct task_in *task, gint64 found);

/* Fill *out and out_limit[0..n_limits), as things stand on a day: the timeline's today, or one after it, up to
 * the eve of which the forecast use is taken as run.  Pure. */
void due_work_out(const struct timeline *t, gint64 today, const struct task_in *task, struct due_out *out,
		  struct limit_out *out_limit);

#endif
