/* When a task is best done: the last opportunity before it falls due.  The rule stands in due.h. */
#ifndef ENGINE_OPPORTUNITY_H
#define ENGINE_OPPORTUNITY_H

#include "engine/due.h"

struct asked {
	gboolean known;	/* since when it counts */
	gboolean happened;	/* something happened, was found, or reads so that it asks for it at once */
	gboolean clock;	/* some limit makes it due in time */
	gboolean first_day;	/* what governs is the first day afloat */
	gboolean each_outing;	/* it belongs to every outing */
};

/* The day by which it is placed and past: the early one of what sinks, burns or hurts, else the likely one. */
gint64 due_placed_by(const struct task_in *task, const struct due_out *out);
/* Fill in out->when, by and misfit from out->due, early and past. */
void opportunity_find(const struct timeline *t, gint64 today, const struct task_in *task, const struct asked *asked,
		      struct due_out *out);

#endif
