/* The jobs: those under way and those that rest, with what is off and open, for work that was selected a new
 * job or one of these, and the closed ones. */
#include "tui/job_view.h"

#include "base/date.h"
#include "logbook/page.h"
#include "tui/pane.h"

enum { BELOW = 8, NAME_W = 22, STATE_W = 24, WIDE_W = 70, KEY_NEW = 1, KEY_FOR = 2, KEY_INTO = 3 };

enum what { A_JOB, A_NEW, A_FOR, AN_INTO }; /* into: of that job */
struct jobs_row {
	enum what what;
	int at;
};

struct jobs_data {
	gint64 task, finding; /* work that was selected; NONE */
	char *work; /* in words; NULL: none */
	GPtrArray *sheets; /* struct job_sheet *, of the open ones, in the order of jobs */
	GArray *jobs; /* struct job, those with a sheet first; NULL: not read */
	GArray *rows; /* struct jobs_row */
	struct list list;
};

static void
free_sheet(gpointer s)
{
	job_sheet_free(s);
}

static void
open_jobs(struct app *a, void *data, gint64 subject)
{
	struct jobs_data *d = data;

	(void)a, (void)subject;
	d->task = d->finding = NONE;
	d->sheets = g_ptr_array_new_with_free_func(free_sheet);
	d->rows = g_array_new(FALSE, FALSE, sizeof(struct jobs_row));
	list_init(&d->list);
}

static void
clear_jobs(void *data)
{
	struct jobs_data *d = data;

	g_free(d->work);
	g_ptr_array_unref(d->sheets);
	g_clear_pointer(&d->jobs, g_array_unref);
	g_array_unref(d->rows);
	list_clear(&d->list);
}

static const struct job *
job_at(const struct jobs_data *d, int i)
{
	return &((const struct job *)(const void *)d->jobs->data)[i];
}

/* Takes text over. */
static void
add(struct jobs_data *d, enum what what, int at, gint64 key, char *text)
{
	struct jobs_row row = { what, at };

	g_array_append_val(d->rows, row);
	list_add(&d->list, FALSE, (int)d->rows->len - 1, key, text);
}

static char *
work_words(struct app *a, const struct jobs_data *d)
{
	const struct due_line *line = d->task == NONE ? NULL : due_find(a->due, d->task);
	struct finding f;
	char *words = line ? g_strdup(line->label) : NULL;

	if (d->finding == NONE)
		return words;
	if (book_record(a->book, RECORD_FINDING, d->finding, &f, NULL)) {
		g_free(words);
		words = g_strdup(f.words);
	}
	record_clear(RECORD_FINDING, &f);
	return words;
}

static gboolean
has_work(const struct jobs_data *d, const struct job_sheet *s)
{
	for (int i = 0; i < (int)s->aims->len; i++)
		if (job_aim_at(s, i)->aim.task == d->task && job_aim_at(s, i)->aim.finding == d->finding)
			return TRUE;
	return FALSE;
}

/* A new job for it, or into one that is open and has it not. */
static void
add_work(struct jobs_data *d)
{
	g_autofree char *heading = g_strdup_printf("FOR %s", d->work);

	list_add(&d->list, TRUE, -1, NONE, g_strdup(heading));
	add(d, A_FOR, 0, KEY_FOR, g_strdup("a new job for it"));
	for (int i = 0; i < (int)d->sheets->len; i++) {
		const struct job_sheet *s = d->sheets->pdata[i];

		if (s->job.paused == NONE && !has_work(d, s))
			add(d, AN_INTO, i, KEY_INTO + i, g_strdup_printf("into %s: %s", s->job.name, s->job.title));
	}
}

static void
add_jobs(struct jobs_data *d, int from, int to, const char *heading)
{
	for (int i = from; i < to; i++) {
		const struct job *j = job_at(d, i);

		if (i == from)
			list_add(&d->list, TRUE, -1, NONE, g_strdup(heading));
		add(d, A_JOB, i, j->id, g_strdup_printf("%s %s", j->name, j->title));
	}
}

/* What is open comes first: whoever asks for the jobs has most likely come back to one. */
static void
add_all(struct jobs_data *d)
{
	add_jobs(d, 0, (int)d->sheets->len, "OPEN");
	if (d->work)
		add_work(d);
	list_add(&d->list, TRUE, -1, NONE, g_strdup("NEW"));
	add(d, A_NEW, 0, KEY_NEW, g_strdup("a new job: from templates, due tasks, findings, or freely"));
	add_jobs(d, (int)d->sheets->len, (int)d->jobs->len, "CLOSED");
}

/* Where it begins: at a job that is under way, before one that rests. */
static void
select_first(struct jobs_data *d)
{
	list_act(&d->list, ACT_FIRST, 1);
	for (int i = 0; d->jobs && i < (int)d->sheets->len; i++)
		if (job_at(d, i)->paused == NONE) {
			list_select(&d->list, job_at(d, i)->id);
			return;
		}
}

static gboolean
load_jobs(struct app *a, void *data, GError **err)
{
	struct jobs_data *d = data;
	const struct row *row = list_row(&d->list);
	gint64 was = row ? row->key : NONE;

	list_begin(&d->list);
	g_array_set_size(d->rows, 0);
	g_ptr_array_set_size(d->sheets, 0);
	g_clear_pointer(&d->jobs, g_array_unref);
	g_clear_pointer(&d->work, g_free);
	if (a->boat.id == NONE)
		return TRUE;
	d->jobs = book_jobs(a->book, a->boat.id, TRUE, err);
	for (int i = 0; d->jobs && i < (int)d->jobs->len && job_at(d, i)->closed == NONE; i++) {
		struct job_sheet *s = book_job_sheet(a->book, job_at(d, i), err);

		if (!s)
			return FALSE;
		g_ptr_array_add(d->sheets, s);
	}
	if (!d->jobs)
		return FALSE;
	d->work = work_words(a, d);
	add_all(d);
	list_settle(&d->list);
	if (was == NONE)
		select_first(d);
	return TRUE;
}

void
jobs_for(struct app *a, gint64 task, gint64 finding)
{
	int depth = a->depth;
	struct jobs_data *d;
	GError *err = NULL;

	app_open(a, &view_jobs, NONE);
	if (a->depth == depth)
		return;
	d = app_data(a);
	d->task = task;
	d->finding = finding;
	if (!load_jobs(a, d, &err))
		app_complain(a, err);
	select_first(d);
}

void
jobs_select(struct app *a, gint64 job)
{
	for (int i = 0; i < a->depth; i++)
		if (a->view[i].kind == &view_jobs)
			list_select(&((struct jobs_data *)a->view[i].data)->list, job);
}

static const struct jobs_row *
row_at(const struct jobs_data *d, const struct row *row)
{
	return row && row->index >= 0 ? &((const struct jobs_row *)(const void *)d->rows->data)[row->index] : NULL;
}

/* ---- drawing ---- */

static enum style
style_of(const struct job *j)
{
	return j->closed != NONE ? STYLE_PLAIN : j->paused != NONE ? STYLE_SOON : STYLE_STRONG;
}

static void
draw_job(const struct jobs_data *d, int at, const struct area *line, gboolean is_selected)
{
	const struct job *j = job_at(d, at);
	const struct job_sheet *s = at < (int)d->sheets->len ? d->sheets->pdata[at] : NULL;
	enum style style = is_selected ? STYLE_SELECTED : style_of(j);
	g_autofree char *state = job_state_words(j), *left = s ? job_left_words(s, 0) : g_strdup("");
	int name = MIN(NAME_W, line->w / 2), state_w = line->w >= WIDE_W ? STATE_W : line->w - name;

	area_put_in(line, 0, 0, name - 1, style, j->name);
	area_put_in(line, 0, name, state_w - 1, style, state);
	if (line->w >= WIDE_W)
		area_put_in(line, 0, name + state_w, line->w - name - state_w, style, s ? left : j->title);
}

static void
draw_row(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct jobs_data *d = data;
	const struct jobs_row *r = row_at(d, row);

	if (r && r->what == A_JOB)
		draw_job(d, r->at, line, is_selected);
	else
		area_put(line, 0, 0, row->heading ? STYLE_HEAD : is_selected ? STYLE_SELECTED : STYLE_PLAIN, row->text);
}

/* The caller's. */
static char *
story_of(const struct jobs_data *d, const struct jobs_row *r)
{
	static const char new_job[] =
		"A job is work done in one go, from opening something to closing it: what to carry, the steps, what "
		"came off and how it goes back, and what proves it. It may rest for a winter, and closes when "
		"nothing is left open.";

	if (r && r->what == A_JOB && r->at < (int)d->sheets->len)
		return job_story(d->sheets->pdata[r->at]);
	if (r && r->what == A_JOB)
		return g_strdup_printf("%s\nClosed. Enter shows it as it was left.", job_at(d, r->at)->title);
	return g_strdup(r ? new_job : "");
}

static struct panes
parts_of(const void *data, const struct area *a)
{
	(void)data;
	return panes_of(a, a->w * 3 / 5, MAX(BELOW, a->h / 3));
}

static void
draw_jobs(const void *data, const struct area *a)
{
	const struct jobs_data *d = data;
	struct panes p = parts_of(data, a);
	g_autofree char *text = story_of(d, row_at(d, list_row(&d->list)));

	list_draw(&d->list, &p.list, draw_row, d, " There is no boat yet.");
	panes_rule(&p);
	if (p.pane.h)
		panes_text(&p, text);
}

/* ---- acts ---- */

static void
put_into(struct app *a, const struct jobs_data *d, int at)
{
	struct job_sheet *s = d->sheets->pdata[at];
	g_autofree char *key = d->finding == NONE ? NULL : book_key_text(d->finding);
	const struct due_line *line = d->task == NONE ? NULL : due_find(a->due, d->task);
	const char *const tasks[] = { line ? line->name : NULL, NULL }, *const findings[] = { key, NULL };
	const struct job_form more = { .tasks = tasks, .findings = findings };
	gint64 job = s->job.id;
	GError *err = NULL;

	if (!book_job_add(a->book, &s->job, &more, &err))
		return app_complain(a, err);
	app_changed(a);
	job_open(a, job);
	if (!a->message)
		app_say(a, STYLE_STRONG, "it is of this job now; u takes it out");
}

static gboolean
act_jobs(struct app *a, void *data, enum act act)
{
	struct jobs_data *d = data;
	const struct jobs_row *r = row_at(d, list_row(&d->list));

	if (!d->jobs || (act != ACT_OPEN && act != ACT_ADD))
		return FALSE;
	if (act == ACT_ADD || (r && r->what == A_NEW))
		job_pick_open(a, NONE, NONE, NONE);
	else if (r && r->what == A_FOR)
		job_pick_open(a, NONE, d->task, d->finding);
	else if (r && r->what == AN_INTO)
		put_into(a, d, r->at);
	else if (r)
		job_open(a, job_at(d, r->at)->id);
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct jobs_data *)data)->list;
}

const struct view_kind view_jobs = {
	.where = IN_JOBS,
	.size = sizeof(struct jobs_data),
	.open = open_jobs,
	.load = load_jobs,
	.draw = draw_jobs,
	.act = act_jobs,
	.list = list_of,
	.parts = parts_of,
	.clear = clear_jobs,
};
