/* Jobs on the command line: what is shown of them, and what each option records. */
#ifndef CLI_JOB_TEXT_H
#define CLI_JOB_TEXT_H

#include "cli/cli.h"
#include "logbook/job.h"

/* A page of plain text, line by line at the output's width. */
void job_say_page(const struct cli *c, const char *text);
/* The jobs, open and resting ones, or all; the templates that fit the boat. */
gboolean job_say_jobs(const struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err);
gboolean job_say_templates(const struct cli *c, struct book *b, const struct boat *boat, gboolean names, GError **err);
/* Where a job stands: the next step, what is off, what is open. */
void job_say_state(const struct cli *c, const struct job_sheet *s);
/* The numbers of the lines, or else of the steps and proofs, that are open. */
void job_say_numbers(const struct job_sheet *s, gboolean lines);
/* What the templates say comes off. */
void job_say_offers(const struct cli *c, const struct job_sheet *s);
/* Which of them a line that was just written is taken for. */
void job_say_taken(const struct cli *c, const struct job_sheet *s, const struct removal *r);

/* job start. */
gboolean job_start(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err);

/* What to do next, after each step and thing done. */
gboolean job_say_next(const struct cli *c, struct book *b, const struct job *job, GError **err);

/* --step and --skip-step, of numbers and ranges; --close, which asks at a terminal for the steps that are not ticked. */
gboolean job_step(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err);
gboolean job_skip_step(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err);
gboolean job_close(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err);

/* What an option of a job does. */
struct job_deed {
	const char *option;
	enum book_mode mode;
	gboolean (*act)(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err);
};
extern const struct job_deed job_records[]; /* those that record; ends with a NULL option */

#endif
