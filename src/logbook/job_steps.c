/* What opening a job writes: its aims, the steps that its templates and tasks ask for, and what is to be written down as found. */
#include "logbook/job_starting.h"

#include <string.h>

/* "port" of port-coupler.grease, which is the template's coupler.grease; NULL: it is none of that. */
static const char *
side_of(const char *task, const GArray *engines, const char *name)
{
	for (guint e = 0; e < engines->len; e++) {
		const char *engine = ((const struct engine *)(const void *)engines->data)[e].name;
		gsize n = strlen(engine);

		if (g_str_has_prefix(task, engine) && task[n] == '-' && !strcmp(task + n + 1, name))
			return engine;
	}
	return NULL;
}

GArray *
job_tasks_named(const struct due_list *l, const GArray *engines, const char *name, const char *engine)
{
	GArray *at = g_array_new(FALSE, FALSE, sizeof(int));

	for (int i = 0; i < due_count(l); i++) {
		const char *side = side_of(due_at(l, i)->name, engines, name);

		if (!strcmp(due_at(l, i)->name, name) || (side && (!engine || !strcmp(side, engine))))
			g_array_append_val(at, i);
	}
	return at;
}

gboolean
job_put_aim(struct book *b, const struct job *job, gint64 task, gint64 finding, GError **err)
{
	struct aim a;

	record_init(RECORD_AIM, &a);
	a.job = job->id;
	a.task = task;
	a.finding = finding;
	return book_put(b, RECORD_AIM, &a, err);
}

gboolean
starting_news(struct starting *s, gint64 kind, const char *text, gint64 task)
{
	return g_hash_table_add(s->said, g_strdup_printf("%d %" G_GINT64_FORMAT " %s", (int)kind, task, text));
}

/* "chocked" in a sentence; a word that an owner's own task has stands as it is. */
static char *
state_words(const char *state)
{
	static const char *const known[][2] = {
		{ "key-out", "Key and lanyard out, in the pocket of whoever works there" },
		{ "battery-off", "Battery cable or main switch off" },
		{ "cold", "Engine cold" },
		{ "drained", "Cooling drained" },
		{ "fuel-safe", "No fuel vapour: aired, sniffed, no flame and no spark near" },
		{ "chocked", "Wheels chocked and tongue propped, or stands that hold" },
		{ "drive-blocked", "Drive blocked, so that it can't drop or swing" },
		{ "engine-running", "Engine running, and a clear way to its switch" },
	};

	for (guint i = 0; i < G_N_ELEMENTS(known); i++)
		if (!strcmp(known[i][0], state))
			return g_strdup(known[i][1]);
	return g_strdup(state);
}

static gboolean
put_step(struct starting *s, struct step *step, GError **err)
{
	gboolean ok = TRUE;

	/* Carried once for all tasks; but each task has its own steps and proofs. */
	if (starting_news(s, step->kind, step->text, step->kind == STEP_STEP || step->kind == STEP_PROOF ? step->task : NONE)) {
		step->job = s->job->id;
		step->no = ++s->step;
		ok = book_put(s->b, RECORD_STEP, step, err);
	}
	record_clear(RECORD_STEP, step);
	return ok;
}

static gboolean
put_template_step(struct starting *s, const struct template_line *l, const struct due_line *d, const char *side, GError **err)
{
	struct step step;
	g_autofree char *text = l->kind == STEP_STATE ? state_words(l->text) : template_line_words(l);

	record_init(RECORD_STEP, &step);
	step.kind = l->kind;
	step.text = side ? g_strdup_printf("%s, %s", text, side) : g_steal_pointer(&text);
	step.on_condition = l->on_condition ? 1 : NONE;
	step.task = d ? d->id : NONE;
	return put_step(s, &step, err);
}

/* Of a task that each engine has there is a step for each; of one that the boat has not there is none, nor of a recheck. */
static gboolean
put_template_line(struct starting *s, const struct template_line *l, GError **err)
{
	gboolean once = !l->task || l->kind == STEP_STATE || l->kind == STEP_TOOL || l->kind == STEP_CONSUMABLE;
	g_autoptr(GArray) at = once ? NULL : job_tasks_named(s->due, s->engines, l->task, s->form->engine);

	if (once)
		return put_template_step(s, l, NULL, NULL, err);
	for (guint i = 0; i < at->len; i++) {
		const struct due_line *d = due_at(s->due, g_array_index(at, int, i));
		gsize more = strlen(d->name) - strlen(l->task);
		g_autofree char *side = more ? g_strndup(d->name, more - 1) : NULL;

		if (!happening_is_recheck(d) && !put_template_step(s, l, d, side, err))
			return FALSE;
	}
	return TRUE;
}

static gboolean
put_found_line(struct starting *s, const struct template_line *l, gint64 fitting, GError **err)
{
	struct removal r;
	gboolean ok = TRUE;

	record_init(RECORD_REMOVAL, &r);
	if (starting_news(s, TEMPLATE_FOUND, l->text, NONE)) {
		r.job = s->job->id;
		r.no = ++s->line;
		r.kind = REMOVAL_SETTING;
		r.state = REMOVAL_REUSE;
		r.what = g_strdup(l->text);
		r.fitting = fitting;
		r.off = s->job->opened;
		ok = book_put(s->b, RECORD_REMOVAL, &r, err);
	}
	record_clear(RECORD_REMOVAL, &r);
	return ok;
}

/* The lines of one kind, of one template after the other. */
static gboolean
put_lines(struct starting *s, gint64 kind, gint64 fitting, GError **err)
{
	for (guint i = 0; i < s->of->len; i++) {
		const GArray *lines = ((const struct job_template *)s->of->pdata[i])->lines;

		for (guint k = 0; k < lines->len; k++) {
			const struct template_line *l = &((const struct template_line *)(const void *)lines->data)[k];

			if (l->kind == kind && job_has_line(&s->has, l)
			    && !(kind == TEMPLATE_FOUND ? put_found_line(s, l, fitting, err) : put_template_line(s, l, err)))
				return FALSE;
		}
	}
	return TRUE;
}

/* What a task itself says of what to carry, in what state the boat must be, and what proves it. */
static gboolean
put_task_step(struct starting *s, gint64 kind, const struct task *t, const char *text, GError **err)
{
	struct step step;

	record_init(RECORD_STEP, &step);
	step.kind = kind;
	step.task = t->id;
	step.text = kind == STEP_STATE ? state_words(text) : g_strdup(text);
	return put_step(s, &step, err);
}

static gboolean
is_proved(struct starting *s, gint64 task)
{
	GHashTableIter iter;
	gpointer said;
	g_autofree char *begin = g_strdup_printf("%d %" G_GINT64_FORMAT " ", STEP_PROOF, task);

	g_hash_table_iter_init(&iter, s->said);
	while (g_hash_table_iter_next(&iter, &said, NULL))
		if (g_str_has_prefix(said, begin))
			return TRUE;
	return FALSE;
}

static gboolean
put_task_lines(struct starting *s, gint64 kind, GError **err)
{
	for (guint i = 0; i < s->tasks->len; i++) {
		struct task t;
		g_auto(GStrv) state = NULL;
		gboolean ok;

		record_init(RECORD_TASK, &t);
		ok = row_get(s->b->db, RECORD_TASK, g_array_index(s->tasks, gint64, i), &t, err);
		state = g_strsplit(t.state ? t.state : "", " ", -1);
		for (int k = 0; ok && kind == STEP_STATE && state[k]; k++)
			ok = !*state[k] || put_task_step(s, kind, &t, state[k], err);
		/* Templates say which parts a job needs, sooner than each of its tasks. */
		if (ok && kind == STEP_PART && t.part && !s->of->len)
			ok = put_task_step(s, kind, &t, t.part, err);
		if (ok && kind == STEP_PROOF && t.proof && !is_proved(s, t.id))
			ok = put_task_step(s, kind, &t, t.proof, err);
		record_clear(RECORD_TASK, &t);
		if (!ok)
			return FALSE;
	}
	return TRUE;
}

gboolean
starting_write(struct starting *s, GError **err)
{
	static const gint64 order[] = { STEP_STATE, STEP_TOOL, STEP_PART, STEP_CONSUMABLE, STEP_STEP, STEP_PROOF };
	struct job_opening o;
	gboolean ok = book_put(s->b, RECORD_JOB, s->job, err);

	for (guint i = 0; ok && i < s->tasks->len; i++)
		ok = job_put_aim(s->b, s->job, g_array_index(s->tasks, gint64, i), NONE, err);
	for (guint i = 0; ok && i < s->findings->len; i++)
		ok = job_put_aim(s->b, s->job, NONE, g_array_index(s->findings, gint64, i), err);
	if (!ok)
		return FALSE;
	ok = job_opening_read(s->b, s->job, &o, err) && put_lines(s, TEMPLATE_FOUND, o.fitting, err);
	job_opening_clear(&o);
	for (guint i = 0; ok && i < G_N_ELEMENTS(order); i++)
		ok = put_lines(s, order[i], NONE, err) && put_task_lines(s, order[i], err);
	return ok;
}
