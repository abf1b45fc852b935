/* Jobs: work done in one go, from opening something to closing it.  What it is for (aims: tasks and findings), what to carry, the
 * steps and proofs, and the strip-down list (logbook/removal.h).  A job may rest for a winter; it does not close while anything of
 * it is open.  Everything is saved at once: each function that records is one transaction. */
#ifndef LOGBOOK_JOB_H
#define LOGBOOK_JOB_H

#include "logbook/book.h"
#include "logbook/service.h"

struct job_form {
	/* boat; and what is known of name, title, opened, place, who, remark.  name NULL: made of the template or the title, and
	 * the year, "drive-off-2026".  title NULL: the template's, or the first task's.  The rest is filled in. */
	struct job what;
	/* Names; names or words; keys.  Each ends with NULL, or is NULL. */
	const char *const *templates, *const *tasks, *const *findings;
	const char *engine; /* of what each engine has, the templates' lines for that one alone; NULL: for all */
};
/* Open a job.  Of its templates, those tasks become aims that the boat's design has; their lines become steps, what says the same
 * once; what is to be written down as found becomes an open line of the strip-down list.  Rechecks after the first run are no aims:
 * they fall due by themselves. */
gboolean book_job_start(struct book *b, struct job_form *f, GError **err);
/* The open jobs that have open, or take off, what this one would: better one job than two, as the access counts once.  Names, the
 * caller's, and what it is; *names NULL: there is none. */
gboolean book_job_beside(struct book *b, const struct job_form *f, char **names, char **what, GError **err);
/* More aims for a job under way: tasks, findings, and templates with their lines. */
gboolean book_job_add(struct book *b, struct job *job, const struct job_form *more, GError **err);

/* Those not closed, the oldest first; with all, behind them the closed ones, the newest first.  An array that clears itself. */
GArray *book_jobs(struct book *b, gint64 boat, gboolean all, GError **err);
/* By name, or the start of one that only one open job has; NULL: the only open one.  Clear it, also when this fails. */
gboolean book_find_job(struct book *b, gint64 boat, const char *name, struct job *job, GError **err);

enum aim_state {
	AIM_OPEN,
	AIM_UNPROVED, /* it was done, but a proof was not seen: it does not count */
	AIM_DONE,
	AIM_BAD, /* it was looked at and found wanting */
	AIM_UNDONE, /* left, with a reason */
};
const char *aim_state_words(enum aim_state state);

struct job_aim {
	struct aim aim;
	char *name; /* of the task; the key of the finding */
	char *title; /* of the task; the finding's words */
	gint64 fitting; /* that it is about; NONE */
	gint64 consequence; /* words_consequence, of the task; NONE */
	gint64 level; /* words_level, of the finding; NONE */
	enum aim_state state;
	int proofs, proved; /* steps that prove it; those seen */
};

/* What must be seen to before it can close, in the order in which it is done. */
enum job_left { LEFT_REMOVAL, LEFT_STEP, LEFT_PROOF, LEFT_AIM };
struct job_open {
	enum job_left what;
	gint64 id; /* of the record */
	gint64 no; /* of a removal or a step; NONE for an aim */
	char *words; /* "line 3, 6 bolts 5/8 in, tray 2: not put back" */
};

struct job_offer { /* what a template says comes off */
	int n; /* counts from 1, in the templates' order */
	gint64 kind; /* words_removal_kind */
	char *what, *size;
	char *metric; /* the size of another wrench; NULL */
	gint64 count;
	gboolean taken; /* a line of the list says so already */
	gint64 line; /* its number; NONE */
	gboolean sure; /* the line has its very words; else it was typed so that it can be nothing else that is offered */
};

struct job_sheet {
	struct job job;
	GArray *aims; /* struct job_aim */
	GArray *steps; /* struct step, in order */
	GArray *removals; /* struct removal, as it came off */
	GArray *open; /* struct job_open; none: it can close */
	GArray *offers; /* struct job_offer */
	GPtrArray *rechecks; /* char *, names of tasks that fall due after the first run */
	GPtrArray *while_open; /* char *, "coupler.grease, Grease ... (5 min)": due behind the same opening, and none of its aims */
	char *cautions; /* words, separated by spaces; "" none */
	gint64 access_minutes, hand_minutes; /* to open and close, each thing once; hands on.  Of those that are known */
};
/* All of a job as it stands; NULL and *err. */
struct job_sheet *book_job_sheet(struct book *b, const struct job *job, GError **err);
void job_sheet_free(struct job_sheet *s); /* NULL: nothing */
/* The next step that is open, NULL; how many things are off and not back. */
const struct step *job_next_step(const struct job_sheet *s);
int job_off_count(const struct job_sheet *s);

/* A step by its number in the job: done, with what was seen; or left undone, with a reason. */
gboolean book_job_step(struct book *b, const struct job *job, gint64 no, const char *seen, GError **err);
gboolean book_job_skip_step(struct book *b, const struct job *job, gint64 no, const char *reason, GError **err);
/* Several, all or none.  ERR_INPUT: a proof is among several, as each is seen by itself. */
gboolean book_job_step_each(struct book *b, const struct job *job, const gint64 *no, guint n, const char *seen, GError **err);
gboolean book_job_skip_each(struct book *b, const struct job *job, const gint64 *no, guint n, const char *reason, GError **err);

/* An aim by the name or words of its task, or a finding's key.  A task is recorded as book_did() does, f->what.task filled in:
 * with a proof open it is not-seen and does not count.  A finding is mended, f->what.seen being how it was left. */
gboolean book_job_done(struct book *b, const struct job *job, const char *aim, struct service_form *f, struct service_said *said,
		       GError **err);
gboolean book_job_undone(struct book *b, const struct job *job, const char *aim, const char *reason, GError **err);
/* Several, all or none. */
struct job_done {
	const char *aim;
	struct service_form *form;
	struct service_said said; /* to be cleared */
};
gboolean book_job_done_each(struct book *b, const struct job *job, struct job_done *each, guint n, GError **err);
gboolean book_job_undone_each(struct book *b, const struct job *job, const char *const *aims, const char *reason, GError **err);

/* It rests; place says where things lie.  And on again. */
gboolean book_job_pause(struct book *b, struct job *job, const char *place, GError **err);
gboolean book_job_resume(struct book *b, struct job *job, GError **err);
/* ERR_CONFLICT naming what is left, a line each, while anything is. */
gboolean book_job_close(struct book *b, struct job *job, GError **err);

/* What its open tasks need of the stores, as splitpin stores need has it, and what was taken for the job: "1 bellows, U-joint: 2 on
 * hand since 25 Nov 2026, made 2026-05, bow locker", an item each.  An array of char * that clears itself; NULL and *err. */
GPtrArray *job_stores_words(struct book *b, const struct job_sheet *s, GError **err);

/* Pages of plain text, the caller's: what to carry, its cautions first; the strip-down list, as it came off or for the refit in
 * reverse; a label for each tray or bag. */
char *job_carry_page(struct book *b, const struct job_sheet *s);
char *job_list_page(const struct job_sheet *s, gboolean refit);
char *job_labels(const struct job_sheet *s);
char *job_steps_page(const struct job_sheet *s); /* what is done, in order, with what proves it */
/* For other programs, the caller's: the jobs; the strip-down list of one; all of one. */
char *jobs_csv(struct book *b, const GArray *jobs, GError **err);
char *jobs_json(struct book *b, const GArray *jobs, GError **err);
char *job_removals_csv(const struct job_sheet *s);
char *job_json(const struct job_sheet *s);

#endif
