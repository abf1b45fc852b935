/* What a job is for: done, or left undone with a reason. */
#include "logbook/job_inside.h"

#include "base/date.h"
#include "base/err.h"
#include "base/text.h"
#include "logbook/finding.h"

#include <string.h>

/* The aim that the words mean: a task's name, words that only one task of the job has, or a finding's key. */
static struct job_aim *
find_aim(const struct job_sheet *s, const char *text, GError **err)
{
	g_autofree char *low = g_utf8_casefold(text, -1), *shown = text_quoted(text);
	g_auto(GStrv) word = g_strsplit_set(low, " :,", -1);
	struct job_aim *all = (void *)s->aims->data, *hit = NULL;
	int n = 0;

	for (guint i = 0; i < s->aims->len; i++) {
		g_autofree char *about = g_strconcat(all[i].name, " ", all[i].title, NULL),
				*folded = g_utf8_casefold(about, -1);
		gboolean has = *low != '\0';

		if (!strcmp(all[i].name, text))
			return &all[i];
		if (all[i].aim.finding != NONE)
			has = *low && (g_str_has_prefix(all[i].name, low) || g_str_has_suffix(all[i].name, low));
		for (int k = 0; all[i].aim.task != NONE && word[k]; k++)
			has = has && strstr(folded, word[k]);
		hit = has ? &all[i] : hit;
		n += has;
	}
	if (n == 1)
		return hit;
	if (n)
		err_set(err, ERR_INPUT, "%s can be %d things that %s is for: name one", shown, n, s->job.name);
	else
		err_set(err, ERR_NOT_FOUND, "%s is for no task or finding like %s: splitpin job %s shows them", s->job.name,
			shown, s->job.name);
	return NULL;
}

/* What goes with a service of a job. */
struct doing {
	const struct job *job;
	struct aim *aim;
	struct job_opening opening;
};

/* Within the transaction of the service. */
static gboolean
link_service(struct book *b, gint64 service, void *user, GError **err)
{
	struct doing *d = user;
	struct task t;
	gboolean recorded, ok;

	d->aim->service = service;
	d->aim->undone = NONE;
	g_clear_pointer(&d->aim->reason, g_free);
	record_init(RECORD_TASK, &t);
	ok = row_get(b->db, RECORD_TASK, d->aim->task, &t, err) && book_put(b, RECORD_AIM, d->aim, err)
	  && job_record_drive_off(b, d->job, &d->opening, job_drive_of_task(&d->opening, &t), &recorded, err);
	record_clear(RECORD_TASK, &t);
	return ok;
}

/* The retainers that went back used: their renewal is not done. */
static gboolean
is_retainers(const char *task)
{
	return g_str_has_suffix(task, "retainers.renew");
}

static int
used_again(const struct job_sheet *s)
{
	int n = 0;

	for (guint i = 0; i < s->removals->len; i++) {
		const struct removal *r = &((const struct removal *)(const void *)s->removals->data)[i];

		n += r->kind == REMOVAL_RETAINER && r->state == REMOVAL_REUSE && r->back != NONE && r->back_count > 0;
	}
	return n;
}

/* Why the work does not count, the caller's; NULL: it does.  *proof is what was seen. */
static char *
unproved(const struct job_sheet *s, const struct job_aim *a, GString *proof)
{
	for (guint i = 0; i < s->steps->len; i++) {
		const struct step *p = &((const struct step *)(const void *)s->steps->data)[i];

		if (p->kind != STEP_PROOF || p->task != a->aim.task)
			continue;
		if (p->done == NONE)
			return g_strdup_printf("not proved: step %d, %s", (int)p->no, p->text);
		g_string_append_printf(proof, "%s%s%s%s", proof->len ? "; " : "", p->text, p->seen ? ": " : "",
				       p->seen ? p->seen : "");
	}
	if (is_retainers(a->name) && used_again(s))
		return g_strdup_printf("%d of the list went back used: retainers are renewed", used_again(s));
	return NULL;
}

static gboolean
do_task(struct book *b, struct job_sheet *s, struct job_aim *a, struct service_form *f, struct service_said *said, GError **err)
{
	struct doing d = { .job = &s->job, .aim = &a->aim };
	g_autoptr(GString) proof = g_string_new(NULL);
	g_autofree char *why = unproved(s, a, proof);
	gboolean ok;

	f->what.task = a->aim.task;
	f->what.date = f->what.date == NONE ? b->who.today : f->what.date;
	if (!f->what.who)
		f->what.who = g_strdup(b->who.name);
	if (why && f->what.outcome != OUTCOME_BAD)
		f->what.outcome = OUTCOME_NOT_SEEN;
	if (!why && !f->what.proof && proof->len)
		f->what.proof = g_strdup(proof->str);
	f->also = link_service;
	f->user = &d;
	ok = job_opening_read(b, &s->job, &d.opening, err) && book_put_did(b, f, said, err);
	if (ok && why && !said->counts) {
		g_free(said->why_not);
		said->why_not = g_steal_pointer(&why);
	}
	job_opening_clear(&d.opening);
	return ok;
}

static gboolean
mend(struct book *b, const struct job_aim *a, const struct service_form *f, GError **err)
{
	struct finding found;
	gboolean ok;

	record_init(RECORD_FINDING, &found);
	ok = row_get(b->db, RECORD_FINDING, a->aim.finding, &found, err)
	  && book_put_mend(b, &found, f->what.date == NONE ? b->who.today : f->what.date, f->what.seen, err);
	record_clear(RECORD_FINDING, &found);
	return ok;
}

/* Within a transaction; the sheet is read anew for each, so that what is done a second time is refused.  words: the journal's. */
static gboolean
put_done(struct book *b, const struct job *job, struct job_done *d, GString *words, GError **err)
{
	struct job_sheet *s = book_job_sheet(b, job, err);
	struct job_aim *a = s ? find_aim(s, d->aim, err) : NULL;
	const struct service_form *f = d->form;
	char day[DAY_TEXT];
	gboolean ok = a != NULL;

	d->said = (struct service_said){ .hours = NONE };
	if (ok && f->what.date != NONE && f->what.date < job->opened)
		ok = err_set(err, ERR_INPUT, "%s was opened on %s: work of a day before belongs to splitpin did", job->name,
			     day_iso(job->opened, day));
	/* Corrected is what was recorded of it, so that it does not stand in the log twice. */
	if (ok && a->aim.task != NONE && a->state != AIM_OPEN && a->state != AIM_UNDONE && a->state != AIM_UNPROVED)
		ok = err_set(err, ERR_CONFLICT, "%s is %s already: splitpin did --instead-of corrects it", a->name,
			     aim_state_words(a->state));
	ok = ok && (a->aim.task != NONE ? do_task(b, s, a, d->form, &d->said, err) : mend(b, a, f, err));
	if (ok)
		g_string_append_printf(words, "%s%s %s", words->len ? ", " : "", a->aim.task != NONE ? a->name : a->title,
				       a->aim.task != NONE ? word_of(&words_outcome, f->what.outcome) : "mended");
	job_sheet_free(s);
	return ok;
}

gboolean
book_job_done_each(struct book *b, const struct job *job, struct job_done *each, guint n, GError **err)
{
	g_autoptr(GString) words = g_string_new(NULL);
	gboolean ok = job_at_work(job, err) && book_begin(b, err);

	if (!ok)
		return FALSE;
	for (guint i = 0; ok && i < n; i++)
		ok = put_done(b, job, &each[i], words, err);
	ok = book_end(b, ok, err, "job %s: %s", job->name, words->str);
	for (guint i = 0; ok && i < n; i++)
		if (each[i].form->what.task != NONE)
			each[i].said.repeated = book_repeated(b, &each[i].form->what, NULL);
	return ok;
}

gboolean
book_job_done(struct book *b, const struct job *job, const char *aim, struct service_form *f, struct service_said *said,
	      GError **err)
{
	struct job_done one = { .aim = aim, .form = f, .said = { .hours = NONE } };
	gboolean ok = book_job_done_each(b, job, &one, 1, err);

	*said = one.said;
	return ok;
}

static gboolean
put_undone(struct book *b, const struct job *job, const char *aim, const char *reason, GError **err)
{
	struct job_sheet *s = book_job_sheet(b, job, err);
	struct job_aim *a = s ? find_aim(s, aim, err) : NULL;
	gboolean ok = a != NULL;

	if (ok && (a->state == AIM_DONE || a->state == AIM_BAD))
		ok = err_set(err, ERR_CONFLICT, "%s is %s already", a->name, aim_state_words(a->state));
	if (ok) {
		a->aim.undone = b->who.today;
		g_free(a->aim.reason);
		a->aim.reason = g_strdup(reason);
		ok = book_put(b, RECORD_AIM, &a->aim, err);
	}
	job_sheet_free(s);
	return ok;
}

gboolean
book_job_undone_each(struct book *b, const struct job *job, const char *const *aims, const char *reason, GError **err)
{
	g_autofree char *names = g_strjoinv(", ", (char **)(guintptr)aims);
	gboolean ok = TRUE;

	if (!job_at_work(job, err))
		return FALSE;
	if (!reason || !reason[strspn(reason, " \t\n")])
		return err_set(err, ERR_INPUT, "why is it left undone? a reason is wanted");
	if (!book_begin(b, err))
		return FALSE;
	for (int i = 0; ok && aims[i]; i++)
		ok = put_undone(b, job, aims[i], reason, err);
	return book_end(b, ok, err, "job %s: %s left undone, %s", job->name, names, reason);
}

gboolean
book_job_undone(struct book *b, const struct job *job, const char *aim, const char *reason, GError **err)
{
	const char *const one[] = { aim, NULL };

	return book_job_undone_each(b, job, one, reason, err);
}
