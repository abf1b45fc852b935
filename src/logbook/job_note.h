/* Notes to a job, as whoever works on it writes them. */
#ifndef LOGBOOK_JOB_NOTE_H
#define LOGBOOK_JOB_NOTE_H

#include "logbook/job.h"

/* They take the place of those that were there, in one transaction; NULL or blank: none.  A job that rests takes notes, a closed
 * one does not: ERR_CONFLICT. */
gboolean book_job_note(struct book *b, struct job *job, const char *notes, GError **err);

#endif
