/* What is off or open while a job is under way. */
#include "logbook/job_inside.h"

#include "base/err.h"

#include <string.h>

enum { DEEPEST = 12 };

GPtrArray *
job_templates_of(const struct job_templates *t, const struct job *job)
{
	GPtrArray *of = g_ptr_array_new();
	g_auto(GStrv) name = g_strsplit(job->template ? job->template : "", " ", -1);

	for (int i = 0; name[i]; i++)
		if (job_template_find(t, name[i]))
			g_ptr_array_add(of, (gpointer)(guintptr)job_template_find(t, name[i]));
	return of;
}

static struct fitting *
fitting_at(const GArray *fittings, const char *path)
{
	for (guint i = 0; path && i < fittings->len; i++) {
		struct fitting *f = &((struct fitting *)(void *)fittings->data)[i];

		if (!strcmp(f->path, path))
			return f;
	}
	return NULL;
}

static const struct fitting *
fitting_of(const GArray *fittings, gint64 id)
{
	for (guint i = 0; i < fittings->len; i++)
		if (((const struct fitting *)(const void *)fittings->data)[i].id == id)
			return &((const struct fitting *)(const void *)fittings->data)[i];
	return NULL;
}

/* A fitting, and all that must come off or be open before it. */
static void
open_from(struct job_opening *o, const char *path)
{
	struct fitting *f = fitting_at(o->fittings, path);

	for (int depth = 0; f && depth < DEEPEST; depth++) {
		if (g_hash_table_insert(o->paths, f->path, f) && f->off_minutes != NONE)
			o->minutes += f->off_minutes;
		f = fitting_at(o->fittings, f->needs_off);
	}
}

static gboolean
open_for_task(struct book *b, struct job_opening *o, gint64 task, GError **err)
{
	struct task t;
	const struct fitting *f;
	gboolean ok;

	record_init(RECORD_TASK, &t);
	ok = row_get(b->db, RECORD_TASK, task, &t, err);
	f = ok ? fitting_of(o->fittings, t.fitting) : NULL;
	if (f) {
		g_array_append_val(o->worked, f->id);
		open_from(o, f->needs_off);
	}
	record_clear(RECORD_TASK, &t);
	return ok;
}

/* Whether some aim is on a fitting of that side of the boat. */
static gboolean
works_at(const struct job_opening *o, const char *side, gsize length)
{
	for (guint i = 0; i < o->worked->len; i++) {
		const struct fitting *f = fitting_of(o->fittings, g_array_index(o->worked, gint64, i));

		if (f && !strncmp(f->path, side, length))
			return TRUE;
	}
	return FALSE;
}

/* What a template opens, on a boat with several engines that of each side on which something is done. */
static void
open_for_template(struct job_opening *o, const struct job_template *t)
{
	for (guint i = 0; t->opens && i < o->fittings->len; i++) {
		const struct fitting *f = &((const struct fitting *)(const void *)o->fittings->data)[i];
		g_autofree char *end = g_strconcat("/", t->opens, NULL);

		if (strcmp(f->path, t->opens)
		    && (!g_str_has_suffix(f->path, end) || !works_at(o, f->path, strlen(f->path) - strlen(t->opens))))
			continue;
		if (o->fitting == NONE)
			o->fitting = f->id;
		open_from(o, f->path);
	}
}

/* Of an outboard the lower unit is what a sterndrive's drive is: shift joint and seals part there. */
static gboolean
is_drive(const char *path, gint64 kind)
{
	return g_str_has_suffix(path, "drive/unit") || (kind == KIND_OUTBOARD && g_str_has_suffix(path, "drive/lower"));
}

static gboolean
find_drive(struct book *b, const struct job *job, struct job_opening *o, GError **err)
{
	GHashTableIter iter;
	gpointer path;
	struct boat boat;
	gboolean ok;

	record_init(RECORD_BOAT, &boat);
	ok = row_get(b->db, RECORD_BOAT, job->boat, &boat, err);
	o->kind = boat.kind;
	g_hash_table_iter_init(&iter, o->paths);
	while (ok && g_hash_table_iter_next(&iter, &path, NULL))
		o->drive |= is_drive(path, boat.kind);
	record_clear(RECORD_BOAT, &boat);
	return ok;
}

gboolean
job_opening_read(struct book *b, const struct job *job, struct job_opening *o, GError **err)
{
	struct job_templates *t = book_job_templates(b, err);
	g_autoptr(GPtrArray) of = t ? job_templates_of(t, job) : NULL;
	g_autoptr(GArray) aims = t ? job_aims(b, job->id, err) : NULL;
	gboolean ok = aims != NULL;

	*o = (struct job_opening){ .fitting = NONE,
				   .paths = g_hash_table_new(g_str_hash, g_str_equal),
				   .worked = g_array_new(FALSE, FALSE, sizeof(gint64)) };
	o->fittings = ok ? book_records(b, RECORD_FITTING, job->boat, err) : NULL;
	ok = o->fittings != NULL;
	for (guint i = 0; ok && i < aims->len; i++) {
		gint64 task = ((const struct aim *)(const void *)aims->data)[i].task;

		ok = task == NONE || open_for_task(b, o, task, err);
	}
	for (guint i = 0; ok && i < of->len; i++)
		open_for_template(o, of->pdata[i]);
	if (o->fitting == NONE && o->worked->len)
		o->fitting = g_array_index(o->worked, gint64, 0);
	job_templates_free(t);
	return ok && find_drive(b, job, o, err);
}

void
job_opening_clear(struct job_opening *o)
{
	g_clear_pointer(&o->paths, g_hash_table_unref);
	g_clear_pointer(&o->fittings, g_array_unref);
	g_clear_pointer(&o->worked, g_array_unref);
}

gboolean
job_task_behind_drive(const struct job_opening *o, gint64 fitting)
{
	const struct fitting *f = fitting_of(o->fittings, fitting);

	for (int depth = 0; f && f->needs_off && depth < DEEPEST; depth++) {
		if (is_drive(f->needs_off, o->kind))
			return TRUE;
		f = fitting_at(o->fittings, f->needs_off);
	}
	return FALSE;
}

/* The remark tells whose it is, so that a job records it once. */
gboolean
job_record_opening(struct book *b, const struct job *job, const struct job_opening *o, gboolean *recorded, GError **err)
{
	g_autoptr(GArray) all = o->drive ? book_records(b, RECORD_HAPPENING, job->boat, err) : NULL;
	g_autofree char *remark = g_strdup_printf("job %s", job->name);
	struct happening h;
	gboolean ok;

	*recorded = FALSE;
	if (!all)
		return !o->drive;
	for (guint i = 0; i < all->len; i++) {
		const struct happening *old = &((const struct happening *)(const void *)all->data)[i];

		if (old->kind == HAPPENED_DRIVE_OFF && !g_strcmp0(old->remark, remark))
			return TRUE;
	}
	record_init(RECORD_HAPPENING, &h);
	h.boat = job->boat;
	h.date = b->who.today;
	h.kind = HAPPENED_DRIVE_OFF;
	h.remark = g_steal_pointer(&remark);
	ok = *recorded = book_put(b, RECORD_HAPPENING, &h, err);
	record_clear(RECORD_HAPPENING, &h);
	return ok;
}
