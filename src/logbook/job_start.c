/* Opening a job: what templates, tasks and findings make of it. */
#include "logbook/job_starting.h"

#include "base/date.h"
#include "base/err.h"
#include "base/text.h"
#include "logbook/finding.h"

#include <string.h>

enum { LONGEST_NAME = 40 };

static gboolean
has_key(const GArray *keys, gint64 key)
{
	for (guint i = 0; i < keys->len; i++)
		if (((const gint64 *)(const void *)keys->data)[i] == key)
			return TRUE;
	return FALSE;
}

static void
want(GArray *keys, gint64 key)
{
	if (!has_key(keys, key))
		g_array_append_val(keys, key);
}

/* ": is drive-off meant?", of those for the boat; or where they are listed.  The caller's. */
static char *
template_near(struct starting *s, const char *name)
{
	g_autoptr(GPtrArray) fit = book_job_templates_for(s->b, s->templates, &s->boat, NULL);
	g_autoptr(GPtrArray) names = g_ptr_array_new();
	const char *near;

	for (guint i = 0; fit && i < fit->len; i++)
		g_ptr_array_add(names, (gpointer)(guintptr)((const struct job_template *)fit->pdata[i])->name);
	near = text_nearest(name, (const char *const *)names->pdata, (int)names->len);
	return near ? g_strdup_printf(": is %s meant?", near) : g_strdup(": splitpin job templates lists them");
}

static gboolean
no_template(struct starting *s, const char *name, GError **err)
{
	g_autofree char *shown = text_quoted(name), *near = template_near(s, name);

	return err_set(err, ERR_NOT_FOUND, "no template is called %s%s", shown, near);
}

static gboolean
take_template(struct starting *s, const char *name, GError **err)
{
	const struct job_template *t = job_template_find(s->templates, name);
	g_auto(GStrv) task = g_strsplit(t ? t->tasks : "", " ", -1);

	if (!t)
		return no_template(s, name, err);
	if (!job_template_fits(t, s->boat.kind))
		return err_set(err, ERR_CONFLICT, "the template %s is not for a boat of the kind %s", name,
			       word_of(&words_boat_kind, s->boat.kind));
	if (job_has_not(&s->has, t))
		return err_set(err, ERR_CONFLICT, "the template %s is not for this boat, which has no %s", name,
			       job_has_not(&s->has, t));
	g_ptr_array_add(s->of, (gpointer)(guintptr)t);
	for (int i = 0; task[i]; i++) {
		g_autoptr(GArray) at = job_tasks_named(s->due, s->engines, task[i], s->form->engine);

		for (guint k = 0; k < at->len; k++) {
			const struct due_line *d = due_at(s->due, g_array_index(at, int, k));

			if (!happening_is_recheck(d))
				want(s->tasks, d->id);
		}
	}
	return TRUE;
}

static gboolean
take_task(struct starting *s, const char *words, GError **err)
{
	struct task t;

	if (!book_find_task(s->b, s->job->boat, words, &t, err))
		return FALSE;
	want(s->tasks, t.id);
	if (!s->job->title)
		s->job->title = g_strdup(t.title);
	record_clear(RECORD_TASK, &t);
	return TRUE;
}

static gboolean
take_finding(struct starting *s, const char *key, GError **err)
{
	struct finding f;
	char d[DAY_TEXT];
	gboolean ok = book_find_finding(s->b, s->job->boat, key, &f, err);

	if (ok && f.mended != NONE)
		ok = err_set(err, ERR_CONFLICT, "that finding was mended on %s", day_iso(f.mended, d));
	if (ok)
		want(s->findings, f.id);
	if (ok && !s->job->title)
		s->job->title = g_strdup(f.words);
	record_clear(RECORD_FINDING, &f);
	return ok;
}

static gboolean
take_each(struct starting *s, const char *const *words, gboolean (*take)(struct starting *, const char *, GError **),
	  GError **err)
{
	for (int i = 0; words && words[i]; i++)
		if (!take(s, words[i], err))
			return FALSE;
	return TRUE;
}

static gboolean
has_engine(const GArray *engines, const char *name)
{
	for (guint i = 0; i < engines->len; i++)
		if (!strcmp(((const struct engine *)(const void *)engines->data)[i].name, name))
			return TRUE;
	return FALSE;
}

static gboolean
take_form(struct starting *s, GError **err)
{
	const struct due_ask ask = { s->b->who.today, NONE };

	s->templates = book_job_templates(s->b, err);
	s->engines = s->templates ? book_records(s->b, RECORD_ENGINE, s->job->boat, err) : NULL;
	if (s->engines && s->form->engine && !has_engine(s->engines, s->form->engine))
		return err_set(err, ERR_NOT_FOUND, "no engine is called \"%.40s\"", s->form->engine);
	if (!s->engines || !row_get(s->b->db, RECORD_BOAT, s->job->boat, &s->boat, err)
	    || !book_due(s->b, &s->boat, &ask, s->due, err) || !job_has_read(s->b, s->job->boat, &s->has, err)
	    || !take_each(s, s->form->templates, take_template, err))
		return FALSE;
	/* An empty job of that name would be found out in the cold, by the boat. */
	if (!s->of->len && s->job->title && job_template_find(s->templates, s->job->title))
		return err_set(err, ERR_INPUT, "%s is a template: splitpin job start --template %s opens a job by it",
			       s->job->title, s->job->title);
	if (!s->job->title && s->of->len)
		s->job->title = g_strdup(((const struct job_template *)s->of->pdata[0])->title);
	return take_each(s, s->form->tasks, take_task, err) && take_each(s, s->form->findings, take_finding, err);
}

/* "Find the leak in the bow" -> "find-the-leak-in-the-bow" */
static char *
slug(const char *title)
{
	GString *out = g_string_new(NULL);

	for (const char *p = title; *p && out->len < LONGEST_NAME - 8; p++)
		if (g_ascii_isalnum(*p))
			g_string_append_c(out, g_ascii_tolower(*p));
		else if (out->len && out->str[out->len - 1] != '-')
			g_string_append_c(out, '-');
	if (out->len && out->str[out->len - 1] == '-')
		g_string_truncate(out, out->len - 1);
	return g_string_free(out, FALSE);
}

static gboolean
is_taken(const GArray *jobs, const char *name)
{
	for (guint i = 0; i < jobs->len; i++)
		if (!strcmp(((const struct job *)(const void *)jobs->data)[i].name, name))
			return TRUE;
	return FALSE;
}

static gboolean
settle_name(struct starting *s, GError **err)
{
	g_autoptr(GArray) jobs = book_jobs(s->b, s->job->boat, TRUE, err);
	g_autofree char *begin = NULL;
	int year, month, day;

	if (!jobs)
		return FALSE;
	if (s->job->name) {
		if (!*s->job->name || strlen(s->job->name) > LONGEST_NAME
		    || !g_regex_match_simple("^[A-Za-z0-9][A-Za-z0-9._-]*$", s->job->name, 0, 0)
		    || !strcmp(s->job->name, "start") || !strcmp(s->job->name, "templates"))
			return err_set(err, ERR_INPUT, "a job's name is letters, digits, - . and _, at most %d: drive-off-2026",
				       LONGEST_NAME);
		return !is_taken(jobs, s->job->name)
		    || err_set(err, ERR_CONFLICT, "a job of this boat is called %s already", s->job->name);
	}
	begin = s->of->len ? g_strdup(((const struct job_template *)s->of->pdata[0])->name) : slug(s->job->title);
	day_to_ymd(s->job->opened, &year, &month, &day);
	s->job->name = g_strdup_printf("%s-%d", *begin ? begin : "job", year);
	for (int i = 2; is_taken(jobs, s->job->name); i++) {
		g_free(s->job->name);
		s->job->name = g_strdup_printf("%s-%d-%d", *begin ? begin : "job", year, i);
	}
	return TRUE;
}

static gboolean
settle(struct starting *s, GError **err)
{
	struct job *job = s->job;
	char d[DAY_TEXT];

	job->opened = job->opened == NONE ? s->b->who.today : job->opened;
	if (job->opened > s->b->who.today)
		return err_set(err, ERR_INPUT, "%s lies ahead of today: a job is opened when it begins",
			       day_iso(job->opened, d));
	if (!job->who)
		job->who = g_strdup(s->b->who.name);
	if (!job->title || !job->title[strspn(job->title, " \t\n")])
		return err_set(err, ERR_INPUT, "what is done? a template, a task, a finding, or a title in words");
	return settle_name(s, err);
}

/* The templates' names, those that were there first. */
static void
join_templates(struct starting *s)
{
	g_autoptr(GString) names = g_string_new(s->job->template ? s->job->template : "");
	g_auto(GStrv) there = g_strsplit(names->str, " ", -1);

	for (guint i = 0; i < s->of->len; i++) {
		const char *name = ((const struct job_template *)s->of->pdata[i])->name;

		if (!g_strv_contains((const char *const *)there, name))
			g_string_append_printf(names, "%s%s", names->len ? " " : "", name);
	}
	g_free(s->job->template);
	s->job->template = names->len ? g_strdup(names->str) : NULL;
}

static void
begin(struct starting *s, struct book *b, struct job *job, const struct job_form *form)
{
	*s = (struct starting){ .b = b, .job = job, .form = form };
	record_init(RECORD_BOAT, &s->boat);
	s->due = due_list_new();
	s->of = g_ptr_array_new();
	s->tasks = g_array_new(FALSE, FALSE, sizeof(gint64));
	s->findings = g_array_new(FALSE, FALSE, sizeof(gint64));
	s->said = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
}

static void
end(struct starting *s)
{
	record_clear(RECORD_BOAT, &s->boat);
	due_list_free(s->due);
	g_ptr_array_unref(s->of);
	g_array_unref(s->tasks);
	g_array_unref(s->findings);
	g_hash_table_unref(s->said);
	g_clear_pointer(&s->engines, g_array_unref);
	job_has_clear(&s->has);
	job_templates_free(s->templates);
}

gboolean
book_job_start(struct book *b, struct job_form *f, GError **err)
{
	struct starting s;
	gboolean ok;

	begin(&s, b, &f->what, f);
	ok = take_form(&s, err) && settle(&s, err);
	if (ok) {
		join_templates(&s);
		ok = book_begin(b, err)
		  && book_end(b, starting_write(&s, err), err, "job %s opened: %s", f->what.name, f->what.title);
	}
	end(&s);
	return ok;
}

/* What the job has already, so that nothing of it comes twice. */
static gboolean
read_what_is_there(struct starting *s, GError **err)
{
	g_autoptr(GArray) aims = job_aims(s->b, s->job->id, err), steps = aims ? job_steps(s->b, s->job->id, err) : NULL;
	g_autoptr(GArray) lines = steps ? job_removals(s->b, s->job->id, err) : NULL;

	for (guint i = 0; lines && i < aims->len; i++) {
		const struct aim *a = &((const struct aim *)(const void *)aims->data)[i];

		for (guint k = s->tasks->len; k-- > 0;)
			if (g_array_index(s->tasks, gint64, k) == a->task)
				g_array_remove_index(s->tasks, k);
		for (guint k = s->findings->len; k-- > 0;)
			if (g_array_index(s->findings, gint64, k) == a->finding)
				g_array_remove_index(s->findings, k);
	}
	for (guint i = 0; lines && i < steps->len; i++) {
		const struct step *p = &((const struct step *)(const void *)steps->data)[i];

		starting_news(s, p->kind, p->text, p->kind == STEP_STEP || p->kind == STEP_PROOF ? p->task : NONE);
		s->step = MAX(s->step, p->no);
	}
	for (guint i = 0; lines && i < lines->len; i++) {
		const struct removal *r = &((const struct removal *)(const void *)lines->data)[i];

		starting_news(s, TEMPLATE_FOUND, r->what, NONE);
		s->line = MAX(s->line, r->no);
	}
	return lines != NULL;
}

gboolean
book_job_add(struct book *b, struct job *job, const struct job_form *more, GError **err)
{
	struct starting s;
	gboolean ok = job_at_work(job, err);

	begin(&s, b, job, more);
	ok = ok && take_form(&s, err) && read_what_is_there(&s, err);
	if (ok) {
		join_templates(&s);
		ok = book_begin(b, err) && book_end(b, starting_write(&s, err), err, "job %s: more to do", job->name);
	}
	end(&s);
	return ok;
}

static gboolean
add_beside(struct starting *s, const struct job_opening *mine, GString *names, char **what, GError **err)
{
	g_autoptr(GArray) jobs = book_jobs(s->b, s->job->boat, FALSE, err);
	gboolean ok = jobs != NULL;

	for (guint i = 0; ok && i < jobs->len; i++) {
		const struct job *j = &((const struct job *)(const void *)jobs->data)[i];
		const struct fitting *shared;
		struct job_opening o;

		ok = job_opening_read(s->b, j, &o, err);
		shared = ok ? job_opening_shared(mine, &o) : NULL;
		if (shared && !*what)
			*what = g_strdup(shared->title);
		if (shared)
			g_string_append_printf(names, "%s%s", names->len ? ", " : "", j->name);
		job_opening_clear(&o);
	}
	return ok;
}

gboolean
book_job_beside(struct book *b, const struct job_form *f, char **names, char **what, GError **err)
{
	g_autoptr(GString) all = g_string_new(NULL);
	struct job_opening mine;
	struct starting s;
	struct job job;
	gboolean ok;

	*names = *what = NULL;
	record_init(RECORD_JOB, &job);
	job.boat = f->what.boat;
	begin(&s, b, &job, f);
	ok = take_form(&s, err);
	if (ok) {
		ok = job_opening_of(b, job.boat, s.of, s.tasks, &mine, err) && add_beside(&s, &mine, all, what, err);
		job_opening_clear(&mine);
	}
	end(&s);
	record_clear(RECORD_JOB, &job);
	if (ok && all->len)
		*names = g_strdup(all->str);
	return ok;
}
