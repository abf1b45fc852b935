#include "logbook/job_inside.h"

#include "base/date.h"
#include "base/err.h"
#include "base/text.h"

#include <string.h>

gboolean
job_at_work(const struct job *job, GError **err)
{
	char d[DAY_TEXT];

	if (job->closed != NONE)
		return err_set(err, ERR_CONFLICT, "%s was closed on %s", job->name, day_iso(job->closed, d));
	return job->paused == NONE
	    || err_set(err, ERR_CONFLICT, "%s rests since %s: splitpin job %s --resume goes on with it", job->name,
		       day_iso(job->paused, d), job->name);
}

GArray *
job_aims(struct book *b, gint64 job, GError **err)
{
	return book_gather(b, RECORD_AIM, SQL_AIMS_OF_JOB, job, err);
}

GArray *
job_steps(struct book *b, gint64 job, GError **err)
{
	return book_gather(b, RECORD_STEP, SQL_STEPS_OF_JOB, job, err);
}

GArray *
job_removals(struct book *b, gint64 job, GError **err)
{
	return book_gather(b, RECORD_REMOVAL, SQL_REMOVALS_OF_JOB, job, err);
}

static gint
open_first(gconstpointer x, gconstpointer y)
{
	const struct job *a = x, *b = y;

	if ((a->closed == NONE) != (b->closed == NONE))
		return a->closed == NONE ? -1 : 1;
	if (a->closed != b->closed)
		return a->closed > b->closed ? -1 : 1;
	return a->opened != b->opened ? (a->opened < b->opened ? -1 : 1) : strcmp(a->name, b->name);
}

GArray *
book_jobs(struct book *b, gint64 boat, gboolean all, GError **err)
{
	GArray *jobs = book_records(b, RECORD_JOB, boat, err);

	for (guint i = jobs && !all ? jobs->len : 0; i-- > 0;)
		if (((const struct job *)(const void *)jobs->data)[i].closed != NONE)
			g_array_remove_index(jobs, i);
	if (jobs)
		g_array_sort(jobs, open_first);
	return jobs;
}

/* Several open jobs are named, so that one can be typed. */
static gboolean
which_job(const GArray *jobs, const char *name, GError **err)
{
	g_autoptr(GString) open = g_string_new(NULL);
	g_autofree char *shown = text_quoted(name ? name : "");

	for (guint i = 0; i < jobs->len; i++) {
		const struct job *j = &((const struct job *)(const void *)jobs->data)[i];

		if (j->closed == NONE)
			g_string_append_printf(open, "%s%s", open->len ? ", " : "", j->name);
	}
	if (!open->len && !name)
		return err_set(err, ERR_NOT_FOUND, "no job is open: splitpin job start opens one");
	if (name)
		return err_set(err, ERR_NOT_FOUND, "no job is called %s: %s%s", shown, open->len ? "open are " : "none is open",
			       open->str);
	return err_set(err, ERR_INPUT, "which job? open are %s", open->str);
}

gboolean
book_find_job(struct book *b, gint64 boat, const char *name, struct job *job, GError **err)
{
	g_autoptr(GArray) jobs = book_jobs(b, boat, TRUE, err);
	struct job *all, *hit = NULL;
	int n = 0;

	record_init(RECORD_JOB, job);
	if (!jobs)
		return FALSE;
	all = (void *)jobs->data;
	for (guint i = 0; i < jobs->len; i++) {
		gboolean exact = name && !strcmp(all[i].name, name);

		if (!exact && (all[i].closed != NONE || (name && !g_str_has_prefix(all[i].name, name))))
			continue;
		hit = &all[i];
		n++;
		if (exact) {
			n = 1;
			break;
		}
	}
	if (n != 1 || (name && !*name))
		return which_job(jobs, name, err);
	*job = *hit;
	record_init(RECORD_JOB, hit); /* its texts are *job's now */
	return TRUE;
}

static gboolean
blank(const char *text)
{
	return !text || !text[strspn(text, " \t\n")];
}

static gboolean
write_job(struct book *b, struct job *job, const char *words, GError **err)
{
	return book_begin(b, err) && book_end(b, book_put(b, RECORD_JOB, job, err), err, "job %s %s", job->name, words);
}

gboolean
book_job_pause(struct book *b, struct job *job, const char *place, GError **err)
{
	if (!job_at_work(job, err))
		return FALSE;
	if (blank(place))
		return err_set(err, ERR_INPUT,
			       "where do things lie? the drive, the trays: whoever goes on in spring looks there");
	job->paused = b->who.today;
	g_free(job->place);
	job->place = g_strdup(place);
	return write_job(b, job, "rests", err);
}

gboolean
book_job_resume(struct book *b, struct job *job, GError **err)
{
	if (job->closed != NONE)
		return job_at_work(job, err);
	if (job->paused == NONE)
		return err_set(err, ERR_CONFLICT, "%s does not rest", job->name);
	job->paused = NONE;
	return write_job(b, job, "goes on", err);
}

gboolean
book_job_close(struct book *b, struct job *job, GError **err)
{
	struct job_sheet *s = job_at_work(job, err) ? book_job_sheet(b, job, err) : NULL;
	g_autoptr(GString) left = g_string_new(NULL);
	gboolean ok = s != NULL;

	for (guint i = 0; s && i < s->open->len; i++)
		g_string_append_printf(left, "\n  %s", ((const struct job_open *)(const void *)s->open->data)[i].words);
	if (left->len)
		ok = err_set(err, ERR_CONFLICT, "%s can't be closed; left is:%s", job->name, left->str);
	if (ok) {
		job->closed = b->who.today;
		ok = write_job(b, job, "closed", err);
	}
	job_sheet_free(s);
	return ok;
}
