/* A job that is being opened, or gets more to do; for job_start.c and job_steps.c alone. */
#ifndef LOGBOOK_JOB_STARTING_H
#define LOGBOOK_JOB_STARTING_H

#include "logbook/job_inside.h"

struct starting {
	struct book *b;
	struct job *job;
	const struct job_form *form;
	struct boat boat;
	struct due_list *due;
	struct job_has has;
	struct job_templates *templates;
	GPtrArray *of; /* const struct job_template *, that were asked for */
	GArray *engines;
	GArray *tasks, *findings; /* gint64, that become aims */
	GHashTable *said; /* what steps and settings say, so that each stands there once */
	gint64 step, line; /* the last numbers given */
};

/* Whether nothing of that kind says so yet; from then on something does. */
gboolean starting_news(struct starting *s, gint64 kind, const char *text, gint64 task);
/* Within a transaction: the job, its aims, steps and lines. */
gboolean starting_write(struct starting *s, GError **err);

#endif
