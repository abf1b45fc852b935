#include "logbook/job_note.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/job_inside.h"

#include <string.h>

gboolean
book_job_note(struct book *b, struct job *job, const char *notes, GError **err)
{
	char d[DAY_TEXT];

	if (job->closed != NONE)
		return err_set(err, ERR_CONFLICT, "%s was closed on %s", job->name, day_iso(job->closed, d));
	g_free(job->remark);
	job->remark = notes && notes[strspn(notes, " \t\n")] ? g_strdup(notes) : NULL;
	return book_begin(b, err) && book_end(b, book_put(b, RECORD_JOB, job, err), err, "job %s: notes", job->name);
}
