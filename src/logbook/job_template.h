/* Templates of jobs, out of the shipped jobs.csv and job-lines.csv: what a piece of work is for, what to carry, what to write
 * down as found, what comes off, the steps, and what proves it. */
#ifndef LOGBOOK_JOB_TEMPLATE_H
#define LOGBOOK_JOB_TEMPLATE_H

#include "logbook/book.h"

/* The kinds of a line: those of words_step_kind become steps of a job; the two others lines of its strip-down list. */
enum template_kind { TEMPLATE_FOUND = STEP_PROOF + 1, TEMPLATE_OFF };

struct template_line {
	gint64 kind; /* words_step_kind, or enum template_kind */
	gint64 strip; /* words_removal_kind, of what comes off; else NONE */
	gboolean on_condition; /* only when found bad, or where it is so */
	const char *text;
	const char *inch, *metric; /* sizes of a wrench; NULL: none */
	gint64 count; /* NONE: not known, or nothing to count */
	const char *task; /* that it does, or proves; NULL.  The line is of no boat without it */
	const char *needs; /* a task without which a boat has no use for the line, as one of petrol only; NULL */
	const char *source; /* with its standing */
};

struct job_template {
	const char *name, *title;
	const char *kinds; /* words of words_boat_kind, separated by spaces */
	const char *tasks; /* names, separated by spaces */
	const char *needs; /* the task without which it is not of a boat; NULL */
	const char *opens; /* path of what comes off or is opened; NULL: nothing */
	gint64 place; /* words_workplace */
	gint64 crew, minutes; /* people; all in all.  NONE: not known */
	const char *cautions, *remark, *source;
	GArray *lines; /* struct template_line */
};

struct job_templates;
/* Of the book's folder of catalogues.  NULL, and *err "jobs.csv:12: what is wrong". */
struct job_templates *book_job_templates(struct book *b, GError **err);
void job_templates_free(struct job_templates *t); /* NULL: nothing */
guint job_templates_count(const struct job_templates *t);
const struct job_template *job_template_at(const struct job_templates *t, guint i);
const struct job_template *job_template_find(const struct job_templates *t, const char *name); /* NULL: there is none */
/* Whether it is for a kind of boat. */
gboolean job_template_fits(const struct job_template *t, gint64 kind);

/* Those for a boat: of its kind, with what they open and the task that they need.  const struct job_template *, of t. */
GPtrArray *book_job_templates_for(struct book *b, const struct job_templates *t, const struct boat *boat, GError **err);

/* A line with its count and sizes: "2 x Wedges of wood", "Wrench, 9/16 in or 14 mm"; the caller's. */
char *template_line_words(const struct template_line *l);

#endif
