/* What the files about jobs share; nobody else includes this. */
#ifndef LOGBOOK_JOB_INSIDE_H
#define LOGBOOK_JOB_INSIDE_H

#include "logbook/happening.h"
#include "logbook/inside.h"
#include "logbook/job.h"
#include "logbook/job_template.h"
#include "logbook/removal.h"

/* ERR_CONFLICT when it rests or is closed. */
gboolean job_at_work(const struct job *job, GError **err);

GArray *job_aims(struct book *b, gint64 job, GError **err); /* struct aim */
GArray *job_steps(struct book *b, gint64 job, GError **err); /* struct step */
GArray *job_removals(struct book *b, gint64 job, GError **err); /* struct removal */

/* The templates that a job came from, which the catalogue still has; const struct job_template *, of t. */
GPtrArray *job_templates_of(const struct job_templates *t, const struct job *job);
/* The lines of the due list that a task of a template is on this boat: one for each engine where that is so, or for the one named;
 * int. */
GArray *job_tasks_named(const struct due_list *l, const GArray *engines, const char *name, const char *engine);

/* What is off or open while a job is under way: paths (char *) as a set. */
struct job_opening {
	GHashTable *paths; /* path -> struct fitting *, of fittings */
	GArray *fittings; /* all of the boat */
	GArray *worked; /* gint64, fittings of its aims */
	gint64 fitting; /* what the job opens first of all, or works at; NONE */
	gint64 kind; /* of the boat, words_boat_kind */
	gint64 minutes; /* to open and close all that, each thing once */
	gboolean drive; /* the drive is among it */
};
gboolean job_opening_read(struct book *b, const struct job *job, struct job_opening *o, GError **err);
void job_opening_clear(struct job_opening *o);

/* Whether the drive is off before one gets at a fitting. */
gboolean job_task_behind_drive(const struct job_opening *o, gint64 fitting);

/* Within a transaction, once something is off or done in a job behind the drive: record that the drive was off, once a job. */
gboolean job_record_opening(struct book *b, const struct job *job, const struct job_opening *o, gboolean *recorded, GError **err);

/* Within a transaction: another aim; one of the two keys is NONE. */
gboolean job_put_aim(struct book *b, const struct job *job, gint64 task, gint64 finding, GError **err);

#endif
