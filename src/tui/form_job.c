/* A job is opened for what was picked; it rests; notes to it. */
#include "base/date.h"
#include "base/err.h"
#include "logbook/job_note.h"
#include "logbook/page.h"
#include "tui/form.h"
#include "tui/job_view.h"

#include <string.h>

/* ---- opening ---- */

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	g_autoptr(GArray) engines = book_records(a->book, RECORD_ENGINE, a->boat.id, err);
	g_autofree char *words = job_picks_words(a);
	char day[DAY_TEXT];

	if (!engines)
		return FALSE;
	f->heading = *words ? g_strdup_printf("For: %s", words)
			    : g_strdup("In your own words; work can be added to it later.");
	form_add(f, "title", "What is done",
		 *words ? "empty: as the template or the task says" : "find the leak in the bow", NULL);
	form_add(f, "name", "Name", "short, of letters and digits; empty: made of the above and the year", NULL);
	if (engines->len > 1)
		form_add(f, "engine", "Side", "the engine's name, for that side alone; empty: all", NULL);
	form_add(f, "date", "Begun", form_date_hint, day_iso(app_today(a), day));
	form_add_remark(f, NULL, NULL);
	f->at = *words ? f->n : 0; /* nothing need be said */
	return TRUE;
}

static gint64
read_day(struct app *a, struct form *f)
{
	gint64 day = NONE;
	GError *err = NULL;

	if (day_parse(form_text(f, "date"), app_today(a), &day, &err) && day > app_today(a))
		err_set(&err, ERR_INPUT, "that lies ahead: a job is opened when it begins");
	form_wrong(f, "date", &err);
	return day;
}

static char *
check(struct app *a, struct form *f)
{
	g_autofree char *words = job_picks_words(a);
	const char *title = form_text(f, "title");
	gint64 opened = read_day(a, f);
	char day[16];

	if (!*words && !title[strspn(title, " ")])
		form_refuse(f, "title", "what is done? a few words");
	return g_strdup_printf("A job, begun on %s: %s", opened == NONE ? "?" : day_words(opened, day),
			       *title ? title : words);
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	struct job_picks p = { NULL, NULL, NULL };
	gboolean picked = job_picks(a, &p), ok;
	const char *engine = form_text(f, "engine");
	struct job_form j = { .engine = *engine ? engine : NULL };

	if (picked) {
		j.templates = (const char *const *)(const void *)p.templates->pdata;
		j.tasks = (const char *const *)(const void *)p.tasks->pdata;
		j.findings = (const char *const *)(const void *)p.findings->pdata;
	}
	record_init(RECORD_JOB, &j.what);
	j.what.boat = a->boat.id;
	j.what.title = form_said(f, "title");
	j.what.name = form_said(f, "name");
	j.what.remark = form_said(f, "remark");
	j.what.opened = read_day(a, f);
	ok = book_job_start(a->book, &j, err);
	if (ok)
		app_say(a, STYLE_STRONG, "%s is open; u takes it back", j.what.name);
	f->made = j.what.id;
	record_clear(RECORD_JOB, &j.what);
	if (picked)
		job_picks_clear(&p);
	return ok;
}

/* What it was picked from has done its work. */
static void
on_to_job(struct app *a, gint64 made)
{
	g_autofree char *said = g_strdup(a->message);

	while (a->depth > 1 && a->view[a->depth - 1].kind == &view_job_pick)
		app_close(a);
	job_open(a, made);
	if (said && !a->message)
		app_say(a, STYLE_STRONG, "%s", said);
}

const struct form_kind form_job = {
	.name = "job",
	.title = "A job",
	.button = "Enter opens it",
	.begin = begin,
	.check = check,
	.save = save,
	.then = on_to_job,
};

/* ---- of the job on the screen ---- */

/* Of the screen; NULL and *err when it is gone. */
static struct job_sheet *
sheet_of(const struct app *a, GError **err)
{
	const struct job_data *d = job_shown(a);

	if (!d || !d->sheet)
		err_set(err, ERR_NOT_FOUND, "the job is not open any more");
	return d ? d->sheet : NULL;
}

static gboolean
begin_rest(struct app *a, struct form *f, GError **err)
{
	const struct job_sheet *s = sheet_of(a, err);
	g_autofree char *left = s ? job_left_words(s, G_MAXINT) : NULL;

	if (!s)
		return FALSE;
	f->heading = g_strdup_printf("%s: %s. It is found again under J, as it stands now.", s->job.name, left);
	form_add(f, "place", "Things lie", "the drive in the shed, trays 1 to 6 on the shelf above the bench",
		 s->job.place)
		->long_text = TRUE;
	return TRUE;
}

static char *
check_rest(struct app *a, struct form *f)
{
	const char *place = form_text(f, "place");

	(void)a;
	if (!place[strspn(place, " \n")])
		form_refuse(f, "place", "where do things lie? whoever goes on in spring looks there");
	return g_strdup_printf("It rests. Things lie: %s", place);
}

static gboolean
save_rest(struct app *a, struct form *f, GError **err)
{
	struct job_sheet *s = sheet_of(a, err);
	gboolean ok = s && book_job_pause(a->book, &s->job, form_text(f, "place"), err);

	if (ok)
		app_say(a, STYLE_STRONG, "it rests; z goes on with it");
	return ok;
}

const struct form_kind form_rest = {
	.name = "job-rest",
	.title = "The job rests",
	.button = "Enter lets it rest",
	.begin = begin_rest,
	.check = check_rest,
	.save = save_rest,
};

static gboolean
begin_note(struct app *a, struct form *f, GError **err)
{
	const struct job_sheet *s = sheet_of(a, err);

	if (!s)
		return FALSE;
	f->heading = g_strdup_printf("%s: %s", s->job.name, s->job.title);
	form_add(f, "notes", "Notes", "what whoever goes on should know; ^X writes it in your editor", s->job.remark)
		->long_text = TRUE;
	return TRUE;
}

static char *
check_note(struct app *a, struct form *f)
{
	(void)a, (void)f;
	return NULL;
}

static gboolean
save_note(struct app *a, struct form *f, GError **err)
{
	struct job_sheet *s = sheet_of(a, err);
	gboolean ok = s && book_job_note(a->book, &s->job, form_text(f, "notes"), err);

	if (ok)
		app_say(a, STYLE_STRONG, "noted; u takes it back");
	return ok;
}

const struct form_kind form_note = {
	.name = "job-note",
	.title = "Notes to the job",
	.button = "Enter keeps them",
	.begin = begin_note,
	.check = check_note,
	.save = save_note,
};
