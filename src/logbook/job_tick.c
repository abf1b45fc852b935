/* Steps and proofs of a job: done, or left undone with a reason. */
#include "logbook/job_inside.h"

#include "base/err.h"

/* Within a transaction: what was done behind the drive was done with it off. */
static gboolean
open_by_step(struct book *b, const struct job *job, const struct step *s, GError **err)
{
	struct job_opening o;
	struct task t;
	gboolean ok, recorded;

	if (s->done == NONE || s->task == NONE)
		return TRUE;
	record_init(RECORD_TASK, &t);
	ok = job_opening_read(b, job, &o, err) && row_get(b->db, RECORD_TASK, s->task, &t, err)
	  && job_record_drive_off(b, job, &o, job_drive_of_task(&o, &t), &recorded, err);
	job_opening_clear(&o);
	record_clear(RECORD_TASK, &t);
	return ok;
}

static struct step *
step_of(GArray *steps, const struct job *job, gint64 no, GError **err)
{
	for (guint i = 0; i < steps->len; i++)
		if (((struct step *)(void *)steps->data)[i].no == no)
			return &((struct step *)(void *)steps->data)[i];
	err_set(err, ERR_NOT_FOUND, "%s has no step %" G_GINT64_FORMAT, job->name, no);
	return NULL;
}

/* How they are ticked. */
struct tick {
	gint64 done; /* day; NONE: left undone */
	const char *seen; /* or why not */
	gboolean several;
};

static gboolean
put_step(struct book *b, const struct job *job, struct step *s, const struct tick *t, GError **err)
{
	/* A proof is what somebody saw, each by itself: a stroke over many sees nothing. */
	if (t->several && t->done != NONE && s->kind == STEP_PROOF)
		return err_set(err, ERR_INPUT, "step %d is a proof, %s: that is seen, and ticked, by itself", (int)s->no, s->text);
	s->done = t->done;
	g_free(s->seen);
	s->seen = t->seen && t->seen[strspn(t->seen, " \t\n")] ? g_strdup(t->seen) : NULL;
	g_free(s->who);
	s->who = g_strdup(b->who.name);
	return book_put(b, RECORD_STEP, s, err) && open_by_step(b, job, s, err);
}

/* "12", "12, 13"; in the journal. */
static void
add_number(GString *out, gint64 no)
{
	g_string_append_printf(out, "%s%" G_GINT64_FORMAT, out->len ? ", " : "", no);
}

static gboolean
put_steps(struct book *b, const struct job *job, const gint64 *no, guint n, const struct tick *t, GError **err)
{
	g_autoptr(GArray) steps = job_at_work(job, err) ? job_steps(b, job->id, err) : NULL;
	g_autoptr(GString) numbers = g_string_new(NULL);
	struct step *s = NULL;
	gboolean ok = TRUE;

	if (!steps || !book_begin(b, err))
		return FALSE;
	for (guint i = 0; ok && i < n; i++) {
		s = step_of(steps, job, no[i], err);
		ok = s && put_step(b, job, s, t, err);
		add_number(numbers, no[i]);
	}
	return book_end(b, ok, err, "job %s, step %s%s%s%s", job->name, numbers->str, t->done == NONE ? " left undone" : "",
			n == 1 && s ? ": " : "", n == 1 && s ? s->text : "");
}

gboolean
book_job_step_each(struct book *b, const struct job *job, const gint64 *no, guint n, const char *seen, GError **err)
{
	return put_steps(b, job, no, n, &(struct tick){ b->who.today, seen, n > 1 }, err);
}

gboolean
book_job_skip_each(struct book *b, const struct job *job, const gint64 *no, guint n, const char *reason, GError **err)
{
	if (!reason || !reason[strspn(reason, " \t\n")])
		return err_set(err, ERR_INPUT, "why is it left undone? a reason is wanted");
	return put_steps(b, job, no, n, &(struct tick){ NONE, reason, n > 1 }, err);
}

gboolean
book_job_step(struct book *b, const struct job *job, gint64 no, const char *seen, GError **err)
{
	return book_job_step_each(b, job, &no, 1, seen, err);
}

gboolean
book_job_skip_step(struct book *b, const struct job *job, gint64 no, const char *reason, GError **err)
{
	return book_job_skip_each(b, job, &no, 1, reason, err);
}
