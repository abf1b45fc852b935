/* A job: what to carry, the work with its proofs, and the strip-down list, off in order and back in reverse. */
#include "tui/job_view.h"

#include "base/err.h"
#include "logbook/caution.h"
#include "logbook/page.h"
#include "tui/pane.h"

static void
open_job(struct app *a, void *data, gint64 subject)
{
	struct job_data *d = data;

	d->book = a->book;
	d->id = subject;
	for (int f = 0; f < JOB_FACES; f++) {
		list_init(&d->list[f]);
		d->row[f] = g_array_new(FALSE, FALSE, sizeof(struct job_row));
	}
}

static void
let_go(struct job_data *d)
{
	job_sheet_free(d->sheet);
	d->sheet = NULL;
	g_clear_pointer(&d->cautions, g_ptr_array_unref);
	g_clear_pointer(&d->stores, g_ptr_array_unref);
}

static void
clear_job(void *data)
{
	struct job_data *d = data;

	let_go(d);
	for (int f = 0; f < JOB_FACES; f++) {
		list_clear(&d->list[f]);
		g_array_unref(d->row[f]);
	}
	g_free(d->typed);
}

/* FALSE, without an error: its opening was taken back. */
static gboolean
read_sheet(struct job_data *d, GError **err)
{
	g_autoptr(GError) gone = NULL;
	g_autofree char *unknown = NULL;
	struct job job;
	gboolean there = book_record(d->book, RECORD_JOB, d->id, &job, &gone);

	if (there)
		d->sheet = book_job_sheet(d->book, &job, err);
	else if (!g_error_matches(gone, ERR_DOMAIN, ERR_NOT_FOUND))
		g_propagate_error(err, g_steal_pointer(&gone));
	if (d->sheet)
		d->cautions = caution_list(d->book, d->sheet->cautions, &unknown, err);
	d->stores = d->cautions ? job_stores_words(d->book, d->sheet, err) : NULL;
	record_clear(RECORD_JOB, &job);
	return d->stores != NULL;
}

/* Where whoever comes back goes on: at the refit when it has begun, or where things have been lying for a while. */
static enum job_face
first_face(const struct job_data *d)
{
	gboolean begun = FALSE;

	for (int i = 0; i < (int)d->sheet->removals->len; i++) {
		const struct removal *r = job_removal_at(d->sheet, i);

		if (r->back != NONE)
			return FACE_REFIT;
		begun |= r->kind != REMOVAL_SETTING || r->as_found;
	}
	if (begun)
		return d->sheet->job.paused != NONE ? FACE_REFIT : FACE_OFF;
	return d->row[FACE_CARRY]->len ? FACE_CARRY : FACE_WORK;
}

static gboolean
load_job(struct app *a, void *data, GError **err)
{
	struct job_data *d = data;
	g_autoptr(GError) failed = NULL;
	gboolean there;

	(void)a;
	let_go(d);
	there = read_sheet(d, &failed);
	job_fill_rows(d);
	if (failed) {
		g_propagate_error(err, g_steal_pointer(&failed));
		return FALSE;
	}
	for (int f = 0; there && f < JOB_FACES && !d->begun; f++)
		if (f != FACE_CARRY)
			job_select_open(d, (enum job_face)f, 0);
	if (there && !d->begun)
		d->face = first_face(d);
	d->begun = d->begun || there;
	return TRUE;
}

static struct list *
list_of(void *data)
{
	struct job_data *d = data;

	return &d->list[d->face];
}

struct job_data *
job_shown(const struct app *a)
{
	for (int i = a->depth; i-- > 0;)
		if (a->view[i].kind == &view_job)
			return a->view[i].data;
	return NULL;
}

void
job_open(struct app *a, gint64 id)
{
	const struct job_sheet *s;
	g_autofree char *title = NULL;

	jobs_select(a, id);
	app_open(a, &view_job, id);
	s = a->view[a->depth - 1].kind == &view_job ? ((struct job_data *)app_data(a))->sheet : NULL;
	if (!s || s->job.closed != NONE || s->job.paused != NONE)
		return;
	title = g_strdup_printf("%s: before the work", s->job.name);
	app_heed(a, title, s->job.name, s->cautions);
}

const struct view_kind view_job = {
	.where = IN_JOB,
	.size = sizeof(struct job_data),
	.open = open_job,
	.load = load_job,
	.draw = job_draw,
	.act = job_act,
	.list = list_of,
	.parts = job_parts,
	.clear = clear_job,
};
