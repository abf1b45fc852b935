/* What keys do to a job. */
#include "tui/job_view.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/caution.h"
#include "logbook/removal_parse.h"
#include "tui/form.h"

#include <string.h>

gboolean
job_can(struct app *a, const struct job_data *d)
{
	const struct job *j = d->sheet ? &d->sheet->job : NULL;
	char day[16];

	if (j && j->closed != NONE)
		app_say(a, STYLE_PLAIN, "closed on %s: nothing more is written into it", day_words(j->closed, day));
	else if (j && j->paused != NONE)
		app_say(a, STYLE_STRONG, "it rests since %s: z goes on with it", day_words(j->paused, day));
	return j && j->closed == NONE && j->paused == NONE;
}

/* Where as many as usual are not there; NULL: there are.  The caller's. */
static char *
other_count(const struct job_sheet *s, const struct removal *r)
{
	for (int i = 0; s && i < (int)s->offers->len; i++) {
		const struct job_offer *o = job_offer_at(s, i);

		if (o->line == r->no && o->count != NONE && r->count != NONE && o->count != r->count)
			return g_strdup_printf("USUAL ARE %d: ", (int)o->count);
	}
	return NULL;
}

void
job_say_written(struct app *a, const struct removal_form *f)
{
	const struct removal *r = &f->what;
	const struct job_data *d = job_shown(a);
	g_autofree char *words = removal_understood(r), *first = NULL;

	if (f->finding != NONE)
		first = g_strdup("HOLDS THE LAUNCH until put right: ");
	else if (r->count == NONE && (r->kind == REMOVAL_RETAINER || r->kind == REMOVAL_PLUG))
		first = g_strdup("HOW MANY? it is counted out and in: ");
	else if (f->drive_off)
		first = g_strdup_printf("%s%sDRIVE OFF, what that asks for is due: ", f->side ? f->side : "",
					f->side ? " " : "");
	else if ((first = other_count(d ? d->sheet : NULL, r)))
		;
	else if (r->kind == REMOVAL_RETAINER && r->state == REMOVAL_REUSE)
		first = g_strdup("a retainer is renewed, not used again: ");
	app_say(a, STYLE_STRONG, "%s%d. %s", first ? first : "", (int)r->no, words);
}

/* Written down, or said why not. */
static void
written(struct app *a, gboolean ok, struct removal_form *f, GError *err)
{
	if (ok) {
		app_changed(a);
		job_say_written(a, f);
	} else {
		app_complain(a, err);
	}
	removal_form_clear(f);
}

static void
take_offer(struct app *a, struct job_data *d, int at)
{
	struct removal_form f = { .line = NULL };
	GError *err = NULL;
	gboolean ok;

	if (at < 0)
		return app_say(a, STYLE_PLAIN, "nothing more is offered: a writes down what comes off");
	ok = book_job_take(a->book, &d->sheet->job, job_offer_at(d->sheet, at)->n, &f, &err);
	written(a, ok, &f, err);
	if (ok && (at = job_next_offer(d->sheet, at)) >= 0 && d->face == FACE_OFF)
		job_select_open(d, FACE_OFF, list_row(&d->list[FACE_OFF]) ? d->list[FACE_OFF].at : 0);
}

/* "reuse" says nothing new, so that all is as in the line before. */
static void
repeat(struct app *a, struct job_data *d)
{
	struct removal_form f = { .line = "reuse", .again = TRUE };
	GError *err = NULL;
	gboolean ok = book_job_off(a->book, &d->sheet->job, &f, &err);

	written(a, ok, &f, err);
}

/* ---- steps and aims ---- */

static void
tick_step(struct app *a, struct job_data *d, const struct step *p)
{
	enum job_face face = d->face;
	int from = d->list[face].at + 1;
	GError *err = NULL;
	char day[16];

	if (p->kind == STEP_PROOF)
		return form_open(a, &form_seen, p->id);
	if (p->done != NONE)
		return app_say(a, STYLE_PLAIN, "that is done since %s; p: it is not, after all",
			       day_words(p->done, day));
	if (!book_job_step(a->book, &d->sheet->job, p->no, NULL, &err))
		return app_complain(a, err);
	app_say(a, STYLE_STRONG, "%s; u takes it back", face == FACE_CARRY ? "that is at hand" : "done");
	app_changed(a);
	job_select_open(d, face, from);
}

static void
do_aim(struct app *a, const struct job_aim *aim)
{
	if (aim->state == AIM_DONE || aim->state == AIM_BAD)
		return app_say(a, STYLE_PLAIN, "that is %s; u takes the last entry back", aim_state_words(aim->state));
	if (aim->aim.finding != NONE)
		return form_open(a, &form_mend, aim->aim.finding);
	form_open(a, &form_did, aim->aim.task);
	if (!a->message && aim->proved < aim->proofs)
		app_say(a, STYLE_STRONG, "%d of %d proofs not seen yet: so it will not count",
			aim->proofs - aim->proved, aim->proofs);
}

static const struct job_aim *
aim_of(const struct job_data *d, gint64 task)
{
	for (int i = 0; d && d->sheet && i < (int)d->sheet->aims->len; i++)
		if (job_aim_at(d->sheet, i)->aim.task == task)
			return job_aim_at(d->sheet, i);
	return NULL;
}

gboolean
job_did(struct app *a, struct service_form *f, struct service_said *said, GError **err)
{
	struct job_data *d = job_shown(a);
	const struct job_aim *aim = aim_of(d, f->what.task);

	return aim ? book_job_done(a->book, &d->sheet->job, aim->name, f, said, err) : book_did(a->book, f, said, err);
}

static void
take_in(struct app *a, struct job_data *d, const char *words)
{
	g_autofree char *name = g_strndup(words, strcspn(words, ","));
	const char *const tasks[] = { name, NULL };
	const struct job_form more = { .tasks = tasks };
	GError *err = NULL;

	if (!book_job_add(a->book, &d->sheet->job, &more, &err))
		return app_complain(a, err);
	app_say(a, STYLE_STRONG, "%s is of the job now; u takes it out", name);
	app_changed(a);
}

/* ---- the refit ---- */

/* Whether a line closes without anything to be asked. */
static gboolean
goes_back_plainly(const struct removal *r)
{
	return r->kind != REMOVAL_SETTING && r->kind != REMOVAL_RETAINER && r->kind != REMOVAL_PLUG && !r->as_found
	    && (r->state == REMOVAL_REUSE || r->state == REMOVAL_RENEW);
}

static void
put_back(struct app *a, struct job_data *d, const struct removal *r)
{
	struct removal_back k = { .count = NONE };
	struct removal line;
	g_autofree char *words = job_line_words(r), *no = g_strdup_printf("%d", (int)r->no);
	GError *err = NULL;
	gboolean ok;

	if ((r->kind == REMOVAL_RETAINER || r->kind == REMOVAL_PLUG) && r->count == NONE) {
		job_line_open(a, r->id);
		return app_say(a, STYLE_STRONG, "how many %s? count them by the parts list, then: 2x",
			       r->state == REMOVAL_MISSING ? "belong there" : "came off");
	}
	if (!goes_back_plainly(r))
		return form_open(a, &form_back, r->id);
	ok = book_find_removal(a->book, &d->sheet->job, no, &line, &err)
	  && book_job_back(a->book, &d->sheet->job, &line, &k, &err);
	record_clear(RECORD_REMOVAL, &line);
	g_free(k.note);
	if (!ok)
		return app_complain(a, err);
	app_say(a, STYLE_STRONG, "back: %s; u takes it off again", words);
	app_changed(a);
	job_select_open(d, FACE_REFIT, 0);
}

static void
drop(struct app *a, struct job_data *d, const struct removal *r)
{
	g_autofree char *words = job_line_words(r);
	GError *err = NULL;

	if (!book_job_drop(a->book, &d->sheet->job, r, &err))
		return app_complain(a, err);
	app_say(a, STYLE_STRONG, "taken out: %s; u brings it back", words);
	app_changed(a);
}

/* ---- the job ---- */

static void
rest_or_go_on(struct app *a, struct job_data *d)
{
	struct job *job = &d->sheet->job;
	g_autofree char *place = g_strdup(job->place), *title = g_strdup_printf("%s: before the work", job->name);
	GError *err = NULL;

	if (job->closed != NONE) {
		job_can(a, d);
		return;
	}
	if (job->paused == NONE)
		return form_open(a, &form_rest, d->id);
	if (!book_job_resume(a->book, job, &err))
		return app_complain(a, err);
	app_say(a, STYLE_STRONG, "it goes on. Things lie: %s", place ? place : "nobody said where");
	app_changed(a);
	if (d->sheet)
		app_heed(a, title, d->sheet->job.name, d->sheet->cautions);
}

static void
close_job(struct app *a, struct job_data *d)
{
	g_autoptr(GString) left = g_string_new(NULL);
	GError *err = NULL;

	for (guint i = 0; i < d->sheet->open->len; i++)
		g_string_append_printf(left, "%s\n",
				       ((const struct job_open *)(const void *)d->sheet->open->data)[i].words);
	if (left->len) {
		app_page(a, "It can't be closed yet. Still open is:", g_strdup(left->str));
		return;
	}
	if (!book_job_close(a->book, &d->sheet->job, &err))
		return app_complain(a, err);
	for (guint i = 0; i < d->sheet->rechecks->len; i++)
		g_string_append_printf(left, "%s%s", i ? ", " : ". After the first run, due by themselves: ",
				       (const char *)d->sheet->rechecks->pdata[i]);
	app_say(a, STYLE_STRONG, "closed: everything is back, counted and proved, or told why not%s", left->str);
	app_changed(a);
}

void
job_go_on(struct app *a, gint64 made)
{
	struct job_data *d = a->view[a->depth - 1].kind == &view_job ? app_data(a) : NULL;

	(void)made;
	if (d && d->sheet)
		job_select_open(d, d->face, d->list[d->face].at + 1);
}

/* ---- dispatch ---- */

static void
show_row(struct app *a, const struct job_data *d, const struct job_row *r)
{
	char *text = r->kind == ROW_CAUTION ? caution_block(a->book, d->sheet->cautions) : job_row_story(d, r);

	app_page(a, d->sheet->job.name, text ? text : g_strdup(""));
}

static void
tick(struct app *a, struct job_data *d, const struct job_row *r)
{
	const struct removal *line = r->kind == ROW_REMOVAL ? job_removal_at(d->sheet, r->at) : NULL;

	if (r->kind <= ROW_CAUTION || (line && line->back != NONE))
		return show_row(a, d, r);
	if (!job_can(a, d))
		return;
	switch (r->kind) {
	case ROW_STEP:
		return tick_step(a, d, job_step_at(d->sheet, r->at));
	case ROW_AIM:
		return do_aim(a, job_aim_at(d->sheet, r->at));
	case ROW_WHILE:
		return take_in(a, d, d->sheet->while_open->pdata[r->at]);
	case ROW_OFFER:
		return take_offer(a, d, r->at);
	case ROW_REMOVAL:
		return d->face == FACE_REFIT ? put_back(a, d, line) : job_line_open(a, line->id);
	case ROW_NOTE:
	case ROW_TIME:
	case ROW_STORES:
	case ROW_CAUTION:
		break;
	}
}

static void
pass(struct app *a, struct job_data *d, const struct job_row *r)
{
	if (!job_can(a, d))
		return;
	if (r->kind == ROW_STEP)
		form_open(a, &form_step_undone, job_step_at(d->sheet, r->at)->id);
	else if (r->kind == ROW_AIM)
		form_open(a, &form_aim_undone, job_aim_at(d->sheet, r->at)->aim.id);
	else
		app_say(a, STYLE_PLAIN,
			"steps, proofs and tasks can be left undone; of a line, say why when it is closed");
}

/* What needs a row. */
static gboolean
act_on_row(struct app *a, struct job_data *d, const struct job_row *r, enum act act)
{
	const struct removal *line = r->kind == ROW_REMOVAL ? job_removal_at(d->sheet, r->at) : NULL;

	if (act == ACT_OPEN)
		show_row(a, d, r);
	else if (act == ACT_TICK || (act == ACT_DID && (r->kind == ROW_STEP || r->kind == ROW_AIM)))
		tick(a, d, r);
	else if (act == ACT_PASS)
		pass(a, d, r);
	else if (act == ACT_CHANGE && line && job_can(a, d))
		job_line_open(a, line->id);
	else if (act == ACT_DROP && line && job_can(a, d))
		drop(a, d, line);
	else
		return FALSE;
	return TRUE;
}

/* The refit always begins at the top. */
static void
turn(struct job_data *d, int by)
{
	d->face = (enum job_face)(((int)d->face + by + JOB_FACES) % JOB_FACES);
	if (d->face == FACE_REFIT)
		job_select_open(d, FACE_REFIT, 0);
}

/* What is of the whole job. */
static gboolean
act_on_job(struct app *a, struct job_data *d, enum act act)
{
	gboolean listed = d->face == FACE_OFF || d->face == FACE_REFIT;

	if (act == ACT_FACE || act == ACT_FACE_BACK)
		turn(d, act == ACT_FACE ? 1 : -1);
	else if (act == ACT_REST)
		rest_or_go_on(a, d);
	else if (act == ACT_NOTE && d->sheet->job.closed == NONE)
		form_open(a, &form_note, d->id);
	else if (act != ACT_NOTE && act != ACT_ADD && act != ACT_REPEAT && act != ACT_TAKE && act != ACT_CLOSE)
		return FALSE;
	else if (!job_can(a, d))
		return TRUE;
	else if (act == ACT_ADD && listed)
		job_line_open(a, NONE);
	else if (act == ACT_ADD)
		job_pick_open(a, d->id, NONE, NONE);
	else if (act != ACT_CLOSE && d->face != FACE_OFF)
		app_say(a, STYLE_PLAIN, "that is written on the strip-down list: Tab");
	else if (act == ACT_REPEAT)
		repeat(a, d);
	else if (act == ACT_TAKE)
		take_offer(a, d, job_next_offer(d->sheet, 0));
	else
		close_job(a, d);
	return TRUE;
}

gboolean
job_act(struct app *a, void *data, enum act act)
{
	struct job_data *d = data;
	const struct job_row *r = job_selected(d);

	if (!d->sheet)
		return FALSE;
	return act_on_job(a, d, act) || (r && act_on_row(a, d, r, act));
}
