/* What a boat has of what templates of jobs speak of: its kind tells neither petrol from diesel nor one design from another. */
#include "logbook/job_inside.h"

#include "logbook/variant.h"

#include <string.h>

/* A name as the templates have it: "coupler.grease" of port-coupler.grease, "drive/unit" of port/drive/unit. */
static void
add_name(GHashTable *names, const GArray *engines, const char *name)
{
	g_hash_table_add(names, g_strdup(name));
	for (guint i = 0; i < engines->len; i++) {
		const char *engine = ((const struct engine *)(const void *)engines->data)[i].name;
		gsize n = strlen(engine);

		if (g_str_has_prefix(name, engine) && (name[n] == '-' || name[n] == '/'))
			g_hash_table_add(names, g_strdup(name + n + 1));
	}
}

static const struct fitting *
fitting_of(const GArray *fittings, gint64 id)
{
	for (guint i = 0; i < fittings->len; i++)
		if (((const struct fitting *)(const void *)fittings->data)[i].id == id)
			return &((const struct fitting *)(const void *)fittings->data)[i];
	return NULL;
}

/* A task that its owner does not want is there all the same; one of another design, or of what this boat has not, is not. */
static void
add_task(struct job_has *has, const GArray *engines, const GArray *fittings, const struct task *t)
{
	const struct fitting *f = fitting_of(fittings, t->fitting);

	if (f && f->retired != 1 && variant_has_task(t->variants, f->variant)) {
		add_name(has->tasks, engines, t->name);
		has->vapour |= t->caution && strstr(t->caution, "fuel-vapour");
	}
}

gboolean
job_has_read(struct book *b, gint64 boat, struct job_has *has, GError **err)
{
	g_autoptr(GArray) engines = book_records(b, RECORD_ENGINE, boat, err);
	g_autoptr(GArray) fittings = engines ? book_records(b, RECORD_FITTING, boat, err) : NULL;
	g_autoptr(GArray) tasks = fittings ? book_records(b, RECORD_TASK, boat, err) : NULL;

	*has = (struct job_has){ g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL),
				 g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL), FALSE };
	for (guint i = 0; tasks && i < fittings->len; i++) {
		const struct fitting *f = &((const struct fitting *)(const void *)fittings->data)[i];

		if (f->retired != 1)
			add_name(has->fittings, engines, f->path);
	}
	for (guint i = 0; tasks && i < tasks->len; i++)
		add_task(has, engines, fittings, &((const struct task *)(const void *)tasks->data)[i]);
	return tasks != NULL;
}

void
job_has_clear(struct job_has *has)
{
	g_clear_pointer(&has->tasks, g_hash_table_unref);
	g_clear_pointer(&has->fittings, g_hash_table_unref);
}

const char *
job_has_not(const struct job_has *has, const struct job_template *t)
{
	if (t->opens && !g_hash_table_contains(has->fittings, t->opens))
		return t->opens;
	return t->needs && !g_hash_table_contains(has->tasks, t->needs) ? t->needs : NULL;
}

gboolean
job_has_line(const struct job_has *has, const struct template_line *l)
{
	return (!l->needs || g_hash_table_contains(has->tasks, l->needs))
	    && (!l->task || g_hash_table_contains(has->tasks, l->task));
}

GPtrArray *
book_job_templates_for(struct book *b, const struct job_templates *t, const struct boat *boat, GError **err)
{
	struct job_has has;
	GPtrArray *fit = job_has_read(b, boat->id, &has, err) ? g_ptr_array_new() : NULL;

	for (guint i = 0; fit && i < job_templates_count(t); i++)
		if (job_template_fits(job_template_at(t, i), boat->kind) && !job_has_not(&has, job_template_at(t, i)))
			g_ptr_array_add(fit, (gpointer)(guintptr)job_template_at(t, i));
	job_has_clear(&has);
	return fit;
}
