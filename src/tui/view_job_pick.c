/* What a job is to be for: templates, findings and due tasks to tick; several become one job, each opening counted once. */
#include "tui/job_view.h"

#include "logbook/finding.h"
#include "logbook/job_template.h"
#include "tui/form.h"

#include <string.h>

enum pick_kind { PICK_TEMPLATE, PICK_FINDING, PICK_TASK, PICK_FREE };

struct pick {
	enum pick_kind kind;
	char *name; /* of the template or task; key of the finding */
	char *title;
	char *beside; /* "270 min, two people" */
};

struct pick_data {
	gint64 into; /* the job that it is added to; NONE */
	gint64 task, finding; /* that was selected when it was opened; NONE */
	GArray *all; /* struct pick */
	GHashTable *ticked; /* of names */
	struct list list;
};

static void
clear_pick(gpointer p)
{
	struct pick *one = p;

	g_free(one->name);
	g_free(one->title);
	g_free(one->beside);
}

static const struct pick *
pick_at(const struct pick_data *d, int i)
{
	return &((const struct pick *)(const void *)d->all->data)[i];
}

static void
open_pick(struct app *a, void *data, gint64 subject)
{
	struct pick_data *d = data;

	(void)a;
	d->into = subject;
	d->task = d->finding = NONE;
	d->all = g_array_new(FALSE, FALSE, sizeof(struct pick));
	g_array_set_clear_func(d->all, clear_pick);
	d->ticked = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
	list_init(&d->list);
}

static void
clear_data(void *data)
{
	struct pick_data *d = data;

	g_array_unref(d->all);
	g_hash_table_unref(d->ticked);
	list_clear(&d->list);
}

/* Takes title and beside over. */
static void
add(struct pick_data *d, enum pick_kind kind, const char *name, char *title, char *beside)
{
	struct pick p = { kind, g_strdup(name), title, beside };

	g_array_append_val(d->all, p);
	list_add(&d->list, FALSE, (int)d->all->len - 1, (gint64)g_str_hash(name) << 2 | (gint64)kind,
		 g_strdup_printf("%s %s", title, name));
}

/* Whether a template does the task that was selected. */
static gboolean
does_it(const struct job_template *t, const struct due_line *line)
{
	g_auto(GStrv) task = g_strsplit(t->tasks, " ", -1);
	gboolean has = FALSE;

	for (int i = 0; line && task[i]; i++)
		has = has || (*task[i] && g_str_has_suffix(line->name, task[i]));
	return has;
}

static void
add_templates(struct pick_data *d, const GPtrArray *all, const struct due_line *line, gboolean fitting)
{
	gboolean any = FALSE;

	for (guint i = 0; i < all->len; i++) {
		const struct job_template *t = all->pdata[i];
		g_autofree char *min = t->minutes == NONE ? g_strdup("") : g_strdup_printf("%d min", (int)t->minutes);

		if (does_it(t, line) != fitting)
			continue;
		if (!any)
			list_add(&d->list, TRUE, -1, NONE, g_strdup(fitting ? "TEMPLATES THAT DO IT" : "TEMPLATES"));
		any = TRUE;
		add(d, PICK_TEMPLATE, t->name, g_strdup(t->title),
		    g_strdup_printf("%s%s", min, t->crew != NONE && t->crew > 1 ? ", two people" : ""));
	}
}

static gboolean
add_findings(struct app *a, struct pick_data *d, GError **err)
{
	g_autoptr(GArray) all = book_findings(a->book, a->boat.id, FALSE, err);

	for (guint i = 0; all && i < all->len; i++) {
		const struct finding *f = &((const struct finding *)(const void *)all->data)[i];
		g_autofree char *key = book_key_text(f->id);

		if (!i)
			list_add(&d->list, TRUE, -1, NONE, g_strdup("FINDINGS"));
		if (f->id == d->finding)
			g_hash_table_add(d->ticked, g_strdup(key));
		add(d, PICK_FINDING, key, g_strdup(f->words), g_strdup(word_of(&words_level, f->level)));
	}
	d->finding = NONE;
	return all != NULL;
}

static void
add_task(struct pick_data *d, const struct due_line *l)
{
	char day[20];

	add(d, PICK_TASK, l->name, g_strdup(l->label),
	    g_strdup(l->out.past                    ? "past due"
		     : l->out.when == OPP_NO_RECORD ? "no record"
						    : due_day_words(&l->out, day)));
}

static void
add_tasks(struct app *a, struct pick_data *d, const struct due_line *line)
{
	gboolean any = FALSE;

	if (line) {
		list_add(&d->list, TRUE, -1, NONE, g_strdup("THE TASK THAT WAS SELECTED"));
		add_task(d, line);
	}
	for (int i = 0; i < due_count(a->due); i++) {
		const struct due_line *l = due_at(a->due, i);

		if (l == line || (l->out.when > OPP_LAY_UP && l->out.when != OPP_NO_RECORD))
			continue;
		if (!any)
			list_add(&d->list, TRUE, -1, NONE, g_strdup("TASKS, as they are due"));
		any = TRUE;
		add_task(d, l);
	}
}

static gboolean
load_pick(struct app *a, void *data, GError **err)
{
	struct pick_data *d = data;
	struct job_templates *t = book_job_templates(a->book, err);
	g_autoptr(GPtrArray) fit = t ? book_job_templates_for(a->book, t, &a->boat, err) : NULL;
	const struct due_line *line = d->task == NONE ? NULL : due_find(a->due, d->task);
	gboolean ok;

	list_begin(&d->list);
	g_array_set_size(d->all, 0);
	if (fit && line)
		add_templates(d, fit, line, TRUE);
	if (fit)
		add_templates(d, fit, line, FALSE);
	ok = fit && add_findings(a, d, err);
	if (ok) {
		add_tasks(a, d, line);
		list_add(&d->list, TRUE, -1, NONE, g_strdup("FREELY"));
		add(d, PICK_FREE, "", g_strdup("something else, in your own words"), g_strdup(""));
	}
	job_templates_free(t);
	list_settle(&d->list);
	return ok;
}

void
job_pick_open(struct app *a, gint64 into, gint64 task, gint64 finding)
{
	const struct due_line *line = task == NONE ? NULL : due_find(a->due, task);
	int depth = a->depth;
	struct pick_data *d;
	GError *err = NULL;

	app_open(a, &view_job_pick, into);
	if (a->depth == depth)
		return;
	d = app_data(a);
	d->task = line ? task : NONE;
	d->finding = finding;
	if (line)
		g_hash_table_add(d->ticked, g_strdup(line->name));
	if (!load_pick(a, d, &err))
		app_complain(a, err);
	list_act(&d->list, ACT_FIRST, 1);
}

/* ---- what is ticked ---- */

static const struct pick_data *
shown(const struct app *a)
{
	for (int i = a->depth; i-- > 0;)
		if (a->view[i].kind == &view_job_pick)
			return a->view[i].data;
	return NULL;
}

static gboolean
is_ticked(const struct pick_data *d, const struct pick *p)
{
	return p->kind != PICK_FREE && g_hash_table_contains(d->ticked, p->name);
}

gboolean
job_picks(const struct app *a, struct job_picks *p)
{
	const struct pick_data *d = shown(a);

	if (!d)
		return FALSE;
	p->templates = g_ptr_array_new_with_free_func(g_free);
	p->tasks = g_ptr_array_new_with_free_func(g_free);
	p->findings = g_ptr_array_new_with_free_func(g_free);
	for (int i = 0; i < (int)d->all->len; i++) {
		const struct pick *one = pick_at(d, i);
		GPtrArray *of = one->kind == PICK_TEMPLATE ? p->templates
			      : one->kind == PICK_TASK     ? p->tasks
							   : p->findings;

		if (is_ticked(d, one))
			g_ptr_array_add(of, g_strdup(one->name));
	}
	g_ptr_array_add(p->templates, NULL);
	g_ptr_array_add(p->tasks, NULL);
	g_ptr_array_add(p->findings, NULL);
	return TRUE;
}

void
job_picks_clear(struct job_picks *p)
{
	g_ptr_array_unref(p->templates);
	g_ptr_array_unref(p->tasks);
	g_ptr_array_unref(p->findings);
}

char *
job_picks_words(const struct app *a)
{
	const struct pick_data *d = shown(a);
	GString *out = g_string_new(NULL);

	for (int i = 0; d && i < (int)d->all->len; i++)
		if (is_ticked(d, pick_at(d, i)))
			g_string_append_printf(out, "%s%s", out->len ? "; " : "", pick_at(d, i)->title);
	return g_string_free(out, FALSE);
}

/* ---- the view ---- */

static void
draw_row(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct pick_data *d = data;
	const struct pick *p = row->heading ? NULL : pick_at(d, row->index);
	enum style style = is_selected ? STYLE_SELECTED : STYLE_PLAIN;
	int beside = line->w >= 60 ? 20 : 0;
	g_autofree char *words = NULL;

	if (!p) {
		area_put(line, 0, 0, STYLE_HEAD, row->text);
		return;
	}
	if (is_ticked(d, p) && !is_selected)
		style = STYLE_STRONG;
	words = g_strdup_printf("%s%s", p->kind == PICK_FREE ? "    " : is_ticked(d, p) ? "[x] " : "[ ] ", p->title);
	area_put_in(line, 0, 0, line->w - beside, style, words);
	area_put_in(line, 0, line->w - beside, beside, style, p->beside);
}

static void
draw_pick(const void *data, const struct area *a)
{
	const struct pick_data *d = data;
	struct area list = area_part(a, 1, 0, a->h - 1, a->w);
	guint n = g_hash_table_size(d->ticked);

	area_printf(a, 0, 1, STYLE_STRONG, "%s %u ticked%s",
		    d->into == NONE ? "What is the job for?" : "What is added to it?", n,
		    a->w >= 70 ? "; several become one job" : "");
	list_draw(&d->list, &list, draw_row, d, " There is no boat yet.");
}

static void
tick(struct pick_data *d, const struct pick *p)
{
	if (p->kind != PICK_FREE && !g_hash_table_remove(d->ticked, p->name))
		g_hash_table_add(d->ticked, g_strdup(p->name));
}

static void
add_to_job(struct app *a, const struct pick_data *d)
{
	struct job_data *j = job_shown(a);
	struct job_picks p;
	struct job_form more;
	GError *err = NULL;
	gboolean ok;

	if (!j || !j->sheet || j->id != d->into || !job_picks(a, &p))
		return;
	more = (struct job_form){ .templates = (const char *const *)(const void *)p.templates->pdata,
				  .tasks = (const char *const *)(const void *)p.tasks->pdata,
				  .findings = (const char *const *)(const void *)p.findings->pdata };
	ok = book_job_add(a->book, &j->sheet->job, &more, &err);
	job_picks_clear(&p);
	if (!ok)
		return app_complain(a, err);
	app_close(a);
	app_say(a, STYLE_STRONG, "added; u takes it out");
	app_changed(a);
}

/* With nothing ticked it is for what is selected. */
static void
go_on(struct app *a, struct pick_data *d, const struct pick *p)
{
	if (!g_hash_table_size(d->ticked))
		tick(d, p);
	if (d->into == NONE)
		form_open(a, &form_job, NONE);
	else if (g_hash_table_size(d->ticked))
		add_to_job(a, d);
	else
		app_say(a, STYLE_PLAIN, "tick what is added to the job; n writes a note to it");
}

static gboolean
act_pick(struct app *a, void *data, enum act act)
{
	struct pick_data *d = data;
	const struct row *row = list_row(&d->list);

	if (!row || row->index < 0 || (act != ACT_TICK && act != ACT_OPEN))
		return FALSE;
	if (act == ACT_OPEN)
		go_on(a, d, pick_at(d, row->index));
	else
		tick(d, pick_at(d, row->index));
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct pick_data *)data)->list;
}

const struct view_kind view_job_pick = {
	.where = IN_PICK,
	.size = sizeof(struct pick_data),
	.open = open_pick,
	.load = load_pick,
	.draw = draw_pick,
	.act = act_pick,
	.list = list_of,
	.parts = panes_headed,
	.clear = clear_data,
};
