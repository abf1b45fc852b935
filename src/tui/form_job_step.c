/* A proof was seen; a step or a task of a job is left undone, and why. */
#include "base/err.h"
#include "logbook/page.h"
#include "tui/form.h"
#include "tui/job_view.h"

#include <string.h>

/* The step or aim of the job on the screen that the form is about; NULL and *err. */
static const struct step *
step_of(const struct app *a, const struct form *f, GError **err)
{
	const struct job_data *d = job_shown(a);

	for (int i = 0; d && d->sheet && i < (int)d->sheet->steps->len; i++)
		if (job_step_at(d->sheet, i)->id == f->subject)
			return job_step_at(d->sheet, i);
	err_set(err, ERR_NOT_FOUND, "that step is not on the screen any more");
	return NULL;
}

static const struct job_aim *
aim_of(const struct app *a, const struct form *f, GError **err)
{
	const struct job_data *d = job_shown(a);

	for (int i = 0; d && d->sheet && i < (int)d->sheet->aims->len; i++)
		if (job_aim_at(d->sheet, i)->aim.id == f->subject)
			return job_aim_at(d->sheet, i);
	err_set(err, ERR_NOT_FOUND, "that task is not on the screen any more");
	return NULL;
}

static gboolean
begin_seen(struct app *a, struct form *f, GError **err)
{
	const struct step *p = step_of(a, f, err);

	if (!p)
		return FALSE;
	f->heading = g_strdup_printf("%d. %s", (int)p->no, p->text);
	form_add(f, "seen", "What was seen",
		 "fresh grease all round; no drip after 15 min; a figure. Not seen? Esc, then p", p->seen)
		->long_text = TRUE;
	return TRUE;
}

static char *
check_seen(struct app *a, struct form *f)
{
	const struct step *p = step_of(a, f, NULL);
	const char *seen = form_text(f, "seen");

	return p ? g_strdup_printf("Proof %d was seen%s%s", (int)p->no, *seen ? ": " : ".", seen) : NULL;
}

static gboolean
save_seen(struct app *a, struct form *f, GError **err)
{
	const struct step *p = step_of(a, f, err);
	gboolean ok = p && book_job_step(a->book, &job_shown(a)->sheet->job, p->no, form_text(f, "seen"), err);

	if (ok)
		app_say(a, STYLE_STRONG, "seen, and on record; u takes it back");
	return ok;
}

const struct form_kind form_seen = {
	.name = "job-seen",
	.title = "A proof was seen",
	.button = "Enter: it was seen",
	.begin = begin_seen,
	.check = check_seen,
	.save = save_seen,
	.then = job_go_on,
};

static void
add_reason(struct form *f, const char *what)
{
	f->heading = g_strdup(what);
	form_add(f, "reason", "Why", "why it is left undone: no part, waits for the yard", NULL);
}

static gboolean
begin_step_undone(struct app *a, struct form *f, GError **err)
{
	const struct step *p = step_of(a, f, err);

	if (p)
		add_reason(f, p->text);
	return p != NULL;
}

static gboolean
begin_aim_undone(struct app *a, struct form *f, GError **err)
{
	const struct job_aim *aim = aim_of(a, f, err);
	g_autofree char *what = aim ? g_strdup_printf("%s. It stays as due as it was.", aim->title) : NULL;

	if (aim)
		add_reason(f, what);
	return aim != NULL;
}

static char *
check_reason(struct app *a, struct form *f)
{
	const char *reason = form_text(f, "reason");

	(void)a;
	if (!reason[strspn(reason, " ")])
		form_refuse(f, "reason", "a reason is wanted");
	return g_strdup_printf("Left undone: %s", reason);
}

static gboolean
save_step_undone(struct app *a, struct form *f, GError **err)
{
	const struct step *p = step_of(a, f, err);
	gboolean ok = p && book_job_skip_step(a->book, &job_shown(a)->sheet->job, p->no, form_text(f, "reason"), err);

	if (ok)
		app_say(a, STYLE_STRONG, "left undone; u takes it back");
	return ok;
}

static gboolean
save_aim_undone(struct app *a, struct form *f, GError **err)
{
	const struct job_aim *aim = aim_of(a, f, err);
	gboolean ok =
		aim && book_job_undone(a->book, &job_shown(a)->sheet->job, aim->name, form_text(f, "reason"), err);

	if (ok)
		app_say(a, STYLE_STRONG, "left undone, and as due as it was; u takes it back");
	return ok;
}

const struct form_kind form_step_undone = {
	.name = "job-step-undone",
	.title = "Left undone",
	.button = "Enter records it",
	.begin = begin_step_undone,
	.check = check_reason,
	.save = save_step_undone,
	.then = job_go_on,
};

const struct form_kind form_aim_undone = {
	.name = "job-aim-undone",
	.title = "Left undone",
	.button = "Enter records it",
	.begin = begin_aim_undone,
	.check = check_reason,
	.save = save_aim_undone,
	.then = job_go_on,
};
