/* What is off or open while a job is under way. */
#include "logbook/job_inside.h"

#include "logbook/variant.h"

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

struct fitting *
job_fitting_at(const GArray *fittings, const char *path)
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
	struct fitting *f = job_fitting_at(o->fittings, path);

	for (int depth = 0; f && depth < DEEPEST; depth++) {
		if (g_hash_table_insert(o->paths, f->path, f) && f->off_minutes != NONE)
			o->minutes += f->off_minutes;
		f = job_fitting_at(o->fittings, fitting_first_off(f));
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
		open_from(o, fitting_first_off(f));
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

static gboolean
read_boat(struct book *b, gint64 boat_id, struct job_opening *o, GError **err)
{
	struct boat boat;
	gboolean ok;

	*o = (struct job_opening){ .fitting = NONE,
				   .paths = g_hash_table_new(g_str_hash, g_str_equal),
				   .worked = g_array_new(FALSE, FALSE, sizeof(gint64)) };
	record_init(RECORD_BOAT, &boat);
	ok = row_get(b->db, RECORD_BOAT, boat_id, &boat, err);
	o->kind = boat.kind;
	record_clear(RECORD_BOAT, &boat);
	o->fittings = ok ? book_records(b, RECORD_FITTING, boat_id, err) : NULL;
	return o->fittings != NULL;
}

gboolean
job_opening_of(struct book *b, gint64 boat, const GPtrArray *of, const GArray *tasks, struct job_opening *o, GError **err)
{
	gboolean ok = read_boat(b, boat, o, err);

	for (guint i = 0; ok && i < tasks->len; i++)
		ok = open_for_task(b, o, ((const gint64 *)(const void *)tasks->data)[i], err);
	for (guint i = 0; ok && i < of->len; i++)
		open_for_template(o, of->pdata[i]);
	if (o->fitting == NONE && o->worked->len)
		o->fitting = g_array_index(o->worked, gint64, 0);
	return ok;
}

gboolean
job_opening_read(struct book *b, const struct job *job, struct job_opening *o, GError **err)
{
	struct job_templates *t = book_job_templates(b, err);
	g_autoptr(GPtrArray) of = t ? job_templates_of(t, job) : g_ptr_array_new();
	g_autoptr(GArray) aims = t ? job_aims(b, job->id, err) : NULL;
	g_autoptr(GArray) tasks = g_array_new(FALSE, FALSE, sizeof(gint64));
	gboolean ok;

	for (guint i = 0; aims && i < aims->len; i++) {
		gint64 task = ((const struct aim *)(const void *)aims->data)[i].task;

		if (task != NONE)
			g_array_append_val(tasks, task);
	}
	ok = job_opening_of(b, job->boat, of, tasks, o, aims ? err : NULL) && aims;
	job_templates_free(t);
	return ok;
}

const struct fitting *
job_opening_shared(const struct job_opening *a, const struct job_opening *b)
{
	GHashTableIter iter;
	gpointer path, fitting;

	g_hash_table_iter_init(&iter, a->paths);
	while (g_hash_table_iter_next(&iter, &path, &fitting))
		if (g_hash_table_contains(b->paths, path))
			return fitting;
	return NULL;
}

void
job_opening_clear(struct job_opening *o)
{
	g_clear_pointer(&o->paths, g_hash_table_unref);
	g_clear_pointer(&o->fittings, g_array_unref);
	g_clear_pointer(&o->worked, g_array_unref);
}
