/* The strip-down list of a job: what came off, or how it stood, in order; and how it went back, in reverse. */
#ifndef LOGBOOK_REMOVAL_H
#define LOGBOOK_REMOVAL_H

#include "logbook/job.h"

struct removal_form {
	const char *line; /* as removal_parse() takes it */
	/* The line is a new thing like the last one: count, size, kind, tray, state and orientation are that one's where it does
	 * not say its own. */
	gboolean again;
	gboolean left_over; /* it came off, or lay there, and has no place: state extra */
	const char *fitting; /* whose it is, as book_find_fitting() takes it; NULL: what the job opens */
	const char *const *files; /* photos and voice notes, paths, ends with NULL; NULL: none */
	const char *who, *remark; /* NULL: who acts; none */
	/* Filled in; to be cleared by removal_form_clear(), also when it failed. */
	struct removal what;
	gint64 finding; /* that it became, when it is missing or left over; NONE */
	gboolean drive_off; /* it recorded that the drive was off: what that asks for is due */
	char *side; /* of which drive, "port"; NULL: of the only one */
};
void removal_form_clear(struct removal_form *f);

/* Write a line: the next of the list.  What is missing or left over becomes a finding that holds the launch, and an aim of
 * the job.  When it is the drive, or what only comes off behind it, the happening drive-off is recorded, once a job and drive;
 * ERR_INPUT when it is not said of which drive. */
gboolean book_job_off(struct book *b, const struct job *job, struct removal_form *f, GError **err);
/* Take the n-th thing offered by the templates, the offers of struct job_sheet: it came off.  f->line, which may be
 * NULL, says more: "5 tray 2". */
gboolean book_job_take(struct book *b, const struct job *job, int n, struct removal_form *f, GError **err);
/* What the line says takes the place of what f->what, of book_find_removal(), had; the rest stays.  Of a setting the line is
 * how it was found, word by word. */
gboolean book_job_correct(struct book *b, const struct job *job, struct removal_form *f, GError **err);
/* Take a line out, with its files; the journal keeps it. */
gboolean book_job_drop(struct book *b, const struct job *job, const struct removal *r, GError **err);
gboolean book_job_drop_each(struct book *b, const struct job *job, const GArray *lines, GError **err); /* all or none */

struct removal_back {
	gint64 count; /* how many went back; NONE: not said, then all of what is neither retainer nor plug */
	const char *left; /* as left, "same" as found; NULL: not said */
	const char *why; /* why it differs; NULL */
	const char *who; /* NULL: who acts */
	gboolean renewed; /* new ones went in, whatever the line says */
	char *note; /* filled in, the caller's: of a retainer that went back used; NULL */
	/* Filled in: of retainers or plugs that did not all go back, whatever the reason; it holds the launch, and is an aim of the
	 * job.  NONE. */
	gint64 finding;
};
/* Close a line.  ERR_INPUT, saying what is wanted: the count of retainers and plugs; how a setting, or what was found in some
 * position, is left; why, when a count or a figure is not what it was. */
gboolean book_job_back(struct book *b, const struct job *job, struct removal *r, struct removal_back *back, GError **err);

/* The line of that number in the job, or of a key; clear it, also when this fails. */
gboolean book_find_removal(struct book *b, const struct job *job, const char *text, struct removal *r, GError **err);
/* Photos and notes of a line: struct photo, clears itself. */
GArray *book_removal_files(struct book *b, gint64 removal, GError **err);

#endif
