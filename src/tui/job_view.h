/* A job on the screen: what the files of its view share.  Its strip-down list has two sides, off in order and back in reverse;
 * before them stand what to carry, and the work with its proofs. */
#ifndef TUI_JOB_VIEW_H
#define TUI_JOB_VIEW_H

#include "logbook/job.h"
#include "logbook/removal.h"
#include "tui/app.h"
#include "tui/list.h"

enum job_face { FACE_CARRY, FACE_WORK, FACE_OFF, FACE_REFIT, JOB_FACES };

enum job_row_kind {
	ROW_NOTE, /* the job's notes */
	ROW_TIME, /* what it takes */
	ROW_STORES, /* of data's stores */
	ROW_CAUTION, /* of data's cautions */
	ROW_STEP, /* of the sheet's steps, tools and parts among them; and so on */
	ROW_WHILE,
	ROW_AIM,
	ROW_REMOVAL,
	ROW_OFFER,
};
struct job_row {
	enum job_row_kind kind;
	int at;
};

struct job_data {
	struct book *book; /* the app's */
	gint64 id;
	struct job_sheet *sheet; /* NULL: the job is not in the log any more */
	GPtrArray *cautions; /* const struct caution *, borrowed */
	GPtrArray *stores; /* job_stores_words() */
	enum job_face face;
	struct list list[JOB_FACES]; /* of rows, indices into */
	GArray *row[JOB_FACES]; /* struct job_row */
	gboolean begun; /* the first open line of each face was selected once */
	char *typed; /* a line that was begun and left; NULL */
};

/* Rows (job_rows.c). */
void job_fill_rows(struct job_data *d);
const struct job_row *job_row_at(const struct job_data *d, const struct row *row); /* NULL: a heading, or nothing */
const struct job_row *job_selected(const struct job_data *d); /* of the face that shows; NULL */
gboolean job_row_open(const struct job_data *d, const struct job_row *r); /* something is still to be done about it */
/* On a face, select the first open row from an index on, then from the top; with none everything stays. */
void job_select_open(struct job_data *d, enum job_face face, int from);
const struct step *job_step_at(const struct job_sheet *s, int i);
const struct job_aim *job_aim_at(const struct job_sheet *s, int i);
const struct removal *job_removal_at(const struct job_sheet *s, int i);
const struct job_offer *job_offer_at(const struct job_sheet *s, int i);
/* The first offer that is not taken, from one on, then from the top; -1: all are. */
int job_next_offer(const struct job_sheet *s, int from);
/* The first setting of which nobody has written down how it stands, from a line on, then from the top; -1: there is none. */
int job_next_unwritten(const struct job_sheet *s, int from);

/* Words (job_story.c), the caller's. */
char *job_state_words(const struct job *j); /* "UNDER WAY", "RESTS since 12 Dec 2026", "CLOSED 3 Apr 2027" */
/* "3 off and not back, 2 proofs not seen", and what of it must be for so many columns in short. */
char *job_left_words(const struct job_sheet *s, int columns);
char *job_minutes_words(const struct job_sheet *s);
char *job_story(const struct job_sheet *s); /* where it stands: paragraphs, a line each */
char *job_offer_words(const struct job_offer *o); /* "6 Mounting nuts 5/8 in" */
char *job_row_story(const struct job_data *d, const struct job_row *r); /* all that is known of a row */
char *job_line_words(const struct removal *r); /* "12. 6 nuts 5/8 in" */

/* Drawing (job_draw.c): data is a struct job_data. */
void job_draw(const void *data, const struct area *a);
struct panes;
struct panes job_parts(const void *data, const struct area *a);

/* Deeds (job_deeds.c). */
gboolean job_act(struct app *a, void *data, enum act act);
/* Whether it can be worked at; else why not is said. */
gboolean job_can(struct app *a, const struct job_data *d);
/* After a form over a job: the next row that is open is selected.  made: of no meaning here. */
void job_go_on(struct app *a, gint64 made);
/* After a line was written: what was understood, and what it asks for. */
void job_say_written(struct app *a, const struct removal_form *f);

/* The topmost of the jobs that are open on the screen; NULL: none is. */
struct job_data *job_shown(const struct app *a);
/* A job over what is on the screen, and before it the cautions that nobody has read today before that job. */
void job_open(struct app *a, gint64 id);
/* The jobs, first of all for work that was selected: a task, or a finding; NONE. */
void jobs_for(struct app *a, gint64 task, gint64 finding);
void jobs_select(struct app *a, gint64 job); /* where the jobs are open below */
/* The line to type into, over the job: a new one, or, by its key, what takes the place of one. */
void job_line_open(struct app *a, gint64 removal);
/* As book_did(); but what is an aim of the job on the screen is done in that job. */
gboolean job_did(struct app *a, struct service_form *f, struct service_said *said, GError **err);

/* What to make a job of (view_job_pick.c), or to add to a job by its key; NONE: a new one.  A task or finding is ticked. */
void job_pick_open(struct app *a, gint64 into, gint64 task, gint64 finding);
struct job_picks {
	GPtrArray *templates, *tasks, *findings;
}; /* char *, names and keys, each ended by NULL */
/* Those ticked in the view on the screen; FALSE: there is none.  Clear them. */
gboolean job_picks(const struct app *a, struct job_picks *p);
void job_picks_clear(struct job_picks *p);
/* "Take the drive off and put it back; Gimbal bearing: grease"; the caller's, "" nothing. */
char *job_picks_words(const struct app *a);
extern const struct view_kind view_job_pick;

#endif
