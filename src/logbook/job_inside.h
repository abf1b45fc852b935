/* What the files about jobs share; nobody else includes this. */
#ifndef LOGBOOK_JOB_INSIDE_H
#define LOGBOOK_JOB_INSIDE_H

#include "logbook/finding.h"
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

/* What the boat has of what templates name, on whichever side; with no petrol aboard, no task warns of its vapour. */
struct job_has {
	GHashTable *tasks, *fittings; /* names, paths (char *) as sets */
	gboolean vapour;
};
gboolean job_has_read(struct book *b, gint64 boat, struct job_has *has, GError **err); /* to be cleared, also when it fails */
void job_has_clear(struct job_has *has);
/* The fitting or task for want of which a template is not for the boat; NULL: it is.  And whether a line is. */
const char *job_has_not(const struct job_has *has, const struct job_template *t);
gboolean job_has_line(const struct job_has *has, const struct template_line *l);

/* What is off or open while a job is under way: paths (char *) as a set. */
struct job_opening {
	GHashTable *paths; /* path -> struct fitting *, of fittings */
	GArray *fittings; /* all of the boat */
	GArray *worked; /* gint64, fittings of its aims */
	gint64 fitting; /* what the job opens first of all, or works at; NONE */
	gint64 kind; /* of the boat, words_boat_kind */
	gint64 minutes; /* to open and close all that, each thing once */
};
gboolean job_opening_read(struct book *b, const struct job *job, struct job_opening *o, GError **err);
/* The same of templates (const struct job_template *) and tasks (gint64) that are no job yet. */
gboolean job_opening_of(struct book *b, gint64 boat, const GPtrArray *of, const GArray *tasks, struct job_opening *o, GError **err);
/* Something that both open; NULL: nothing. */
const struct fitting *job_opening_shared(const struct job_opening *a, const struct job_opening *b);
void job_opening_clear(struct job_opening *o);

struct fitting *job_fitting_at(const GArray *fittings, const char *path); /* NULL: none, or no path */

/* The drive that is off when a line of the strip-down list was written: it is the drive, or what only comes off behind it, by its
 * fitting where that was said, else by its words.  NULL: it tells nothing of a drive.  ERR_INPUT: that can be several. */
gboolean job_drive_of_line(const struct job_opening *o, const struct removal *r, gboolean fitting_said,
			   const struct fitting **drive, GError **err);
/* The drive that is off when a task is done; NULL: none has to be. */
const struct fitting *job_drive_of_task(const struct job_opening *o, const struct task *t);
/* "port" of port/drive/unit; NULL: the boat has but one.  The caller's. */
char *job_drive_side(const struct job_opening *o, const struct fitting *drive);
/* Within a transaction: record that the drive was off, once a job for each drive; of NULL, nothing. */
gboolean job_record_drive_off(struct book *b, const struct job *job, const struct job_opening *o, const struct fitting *drive,
			      gboolean *recorded, GError **err);

/* How many of the boat's drives, or sides, a job opens; 1 at least. */
int job_sides(const struct job_opening *o);

/* Another offer; and, once all are there, which lines of the list take them, of several sides when each has its own. */
void job_add_offer(struct job_sheet *s, const struct template_line *l);
void job_take_offers(struct job_sheet *s, int sides);

/* What is missing or left over of a line holds the launch until its owner says how that ended.  f has its words, and what is
 * written with it; its finding is cleared. */
gboolean job_find_wanting(struct book *b, const struct job *job, const struct removal *r, struct finding_form *f, GError **err);

/* Within a transaction: another aim; one of the two keys is NONE. */
gboolean job_put_aim(struct book *b, const struct job *job, gint64 task, gint64 finding, GError **err);

#endif
