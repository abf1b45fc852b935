/* Inside the launch check: what is read once, and what its parts add. */
#ifndef LOGBOOK_READY_INSIDE_H
#define LOGBOOK_READY_INSIDE_H

#include "logbook/inside.h"
#include "logbook/readings.h"
#include "logbook/ready.h"

struct making {
	struct book *b;
	const struct boat *boat;
	const struct due_list *l;
	gint64 at;
	GArray *waivers, *skips, *happenings, *findings, *fittings, *readings, *bounds; /* records */
	const struct readings *kinds;
	struct ready *r;
};

/* Grounds gathered for one thing. */
struct grounds {
	GString *why; /* joined by "; " */
	enum ready_ground first; /* READY_GROUNDS: none */
	gboolean now; /* wanting as it is: afloat is too late */
	gboolean holds; /* holds whatever it costs */
};
void grounds_add(struct grounds *g, enum ready_ground ground, const char *format, ...) G_GNUC_PRINTF(3, 4);

/* Add an item: what the task, finding or happening is let pass by is filled in.  Takes words and why over. */
struct ready_item *ready_add(struct making *m, enum ready_group group, enum ready_ground ground, char *words, char *why);
/* The item just added is of that task, finding or happening. */
void ready_is_task(struct making *m, struct ready_item *i, gint64 task, const char *name, gint64 consequence);
void ready_is_key(struct making *m, struct ready_item *i, gint64 *which, gint64 key);

/* The parts. */
gboolean ready_tasks(struct making *m, GError **err);
gboolean ready_retired(struct making *m, GError **err);
gboolean ready_other(struct making *m, GError **err);
gboolean ready_jobs(struct making *m, GError **err);

/* What readings tell beyond a task's own limits: the worst task of a fitting tells of all that was read on it. */
void ready_readings_on(const struct making *m, const struct due_line *d, struct grounds *g);
/* Drain plugs are told with the task of their fitting that puts them back, or by themselves where there is none. */
void ready_plugs(const struct making *m, const struct due_line *d, struct grounds *g);
void ready_plugs_alone(struct making *m);
/* Readings that no task tells of. */
void ready_readings_alone(struct making *m);

#endif
