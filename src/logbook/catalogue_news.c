#include "logbook/catalogue_news.h"

#include "base/err.h"
#include "logbook/catalogue_work.h"
#include "logbook/due.h"

#include <string.h>

static void
clear_news(gpointer p)
{
	g_clear_pointer(&((struct news *)p)->text, g_free);
}

void
news_free(struct news_list *n)
{
	struct news_work *w;

	if (!n)
		return;
	w = n->work;
	g_clear_pointer(&w->catalogue, catalogue_free);
	g_clear_pointer(&w->fittings, g_array_unref);
	g_clear_pointer(&w->tasks, g_array_unref);
	g_clear_pointer(&w->limits, g_array_unref);
	g_clear_pointer(&w->shipped, g_array_unref);
	g_clear_pointer(&w->by_name, g_hash_table_unref);
	g_array_unref(n->lines);
	g_free(w);
	g_free(n);
}

/* By name: paths have no dot, and names of tasks have one. */

struct there {
	struct fitting *fitting;
	struct task *task;
	struct shipped *shipped;
};

static struct there *
there_of(struct news_work *w, const char *name)
{
	struct there *t = g_hash_table_lookup(w->by_name, name);

	if (!t) {
		t = g_new0(struct there, 1);
		g_hash_table_insert(w->by_name, (gpointer)(guintptr)name, t);
	}
	return t;
}

static void
index_rows(struct news_work *w)
{
	struct fitting *f = (void *)w->fittings->data;
	struct task *t = (void *)w->tasks->data;
	struct shipped *s = (void *)w->shipped->data;

	for (guint i = 0; i < w->fittings->len; i++)
		there_of(w, f[i].path)->fitting = &f[i];
	for (guint i = 0; i < w->tasks->len; i++)
		there_of(w, t[i].name)->task = &t[i];
	for (guint i = 0; i < w->shipped->len; i++)
		there_of(w, s[i].name)->shipped = &s[i];
}

struct fitting *
news_fitting(const struct news_work *w, const char *path)
{
	const struct there *t = g_hash_table_lookup(w->by_name, path);

	return t ? t->fitting : NULL;
}

struct task *
news_task(const struct news_work *w, const char *name)
{
	const struct there *t = g_hash_table_lookup(w->by_name, name);

	return t ? t->task : NULL;
}

struct shipped *
news_shipped(const struct news_work *w, const char *name)
{
	const struct there *t = g_hash_table_lookup(w->by_name, name);

	return t ? t->shipped : NULL;
}

/* What changes */

static void
add_sentence(GString *out, const char *format, ...) G_GNUC_PRINTF(2, 3);

static void
add_sentence(GString *out, const char *format, ...)
{
	va_list args;

	if (out->len)
		g_string_append(out, "; ");
	va_start(args, format);
	g_string_append_vprintf(out, format, args);
	va_end(args);
}

static void
add_fields(GString *out, enum record r, const void *was, const void *is)
{
	const struct record_type *t = record_type(r);

	for (int i = 0; i < t->n_fields; i++) {
		const struct field *f = &t->field[i];
		g_autofree char *old = catalogue_says(f) ? catalogue_cell(f, was) : NULL;
		g_autofree char *new = old ? catalogue_cell(f, is) : NULL;

		if (old && strcmp(old, new))
			add_sentence(out, "%s: %s, was %s", f->name, *new ? new : "nothing", *old ? old : "nothing");
	}
}

/* Limits of a task in one array that the other has not alike. */
static void
add_limits(GString *out, const char *word, gint64 task, const GArray *in, gint64 other, const GArray *not_in)
{
	const struct limit *a = (const void *)in->data, *b = (const void *)not_in->data;

	for (guint i = 0; i < in->len; i++) {
		g_autofree char *words = a[i].task == task ? limit_words(&a[i]) : NULL,
				*source = words ? limit_source(&a[i]) : NULL;
		gboolean same = FALSE;

		for (guint k = 0; words && !same && k < not_in->len; k++) {
			g_autofree char *others = b[k].task == other ? limit_words(&b[k]) : NULL,
					*from = others ? limit_source(&b[k]) : NULL;

			same = others && !strcmp(words, others) && !strcmp(source, from);
		}
		if (words && !same)
			add_sentence(out, "%s %s (%s)", word, words, source);
	}
}

static char *
task_text(const struct news_work *w, const struct task *has, const struct task *ships)
{
	GString *out = g_string_new(NULL);
	const GArray *shipped = w->catalogue->limits.rows;

	if (has) {
		const char *path = catalogue_fitting(w->catalogue, ships->fitting)->path;
		const struct fitting *on = news_fitting(w, path);

		add_fields(out, RECORD_TASK, has, ships);
		if (!on || on->id != has->fitting)
			add_sentence(out, "fitting: %s", path);
	}
	add_limits(out, "now", ships->id, shipped, has ? has->id : NONE, w->limits);
	if (has)
		add_limits(out, "no longer", has->id, w->limits, ships->id, shipped);
	return g_string_free(out, FALSE);
}

/* Lines */

static void
add_line(struct news_list *n, struct news line)
{
	g_array_append_val(n->lines, line);
	n->n_open += line.kind != NEWS_YOURS;
}

/* What becomes of a row of the catalogue, by the digests of what the boat has (NULL: nothing) and of what was shipped;
 * FALSE: there is no news of it. */
static gboolean
news_of(const char *has, const struct shipped *shipped, const char *ships, enum news_kind *kind)
{
	if (shipped && !strcmp(shipped->digest, ships))
		return FALSE; /* known, and taken, changed or left since */
	if (!has) {
		*kind = NEWS_NEW;
		return !shipped; /* what was shipped before and is not there was left, or taken out */
	}
	*kind = shipped && !strcmp(shipped->digest, has) ? NEWS_CHANGED : NEWS_YOURS;
	return strcmp(has, ships) != 0;
}

char *
news_fitting_digest(const struct news_work *w, const char *path)
{
	const struct fitting *f = news_fitting(w, path);

	return f ? catalogue_fitting_digest(f) : NULL;
}

static const char *
path_of(const struct news_work *w, gint64 fitting)
{
	const struct fitting *f = (const void *)w->fittings->data;

	for (guint i = 0; i < w->fittings->len; i++)
		if (f[i].id == fitting)
			return f[i].path;
	return "";
}

char *
news_task_digest(const struct news_work *w, const char *name)
{
	const struct task *t = news_task(w, name);

	return t ? catalogue_task_digest(t, path_of(w, t->fitting), w->limits) : NULL;
}

static void
add_fittings(struct news_list *n)
{
	const struct news_work *w = n->work;

	for (guint i = 0; i < w->catalogue->fittings.rows->len; i++) {
		const struct fitting *f = catalogue_fitting(w->catalogue, i), *on = news_fitting(w, f->path);
		g_autofree char *has = news_fitting_digest(w, f->path), *ships = catalogue_fitting_digest(f);
		GString *text = g_string_new(NULL);
		enum news_kind kind;

		if (on)
			add_fields(text, RECORD_FITTING, on, f);
		if (news_of(has, news_shipped(w, f->path), ships, &kind))
			add_line(n, (struct news){ kind, SHIPPED_FITTING, f->path, f->title, g_string_free(text, FALSE) });
		else
			g_string_free(text, TRUE);
	}
}

static void
add_tasks(struct news_list *n)
{
	const struct news_work *w = n->work;

	for (guint i = 0; i < w->catalogue->tasks.rows->len; i++) {
		const struct task *t = catalogue_task(w->catalogue, i);
		const char *path = catalogue_fitting(w->catalogue, t->fitting)->path;
		g_autofree char *has = news_task_digest(w, t->name),
				*ships = catalogue_task_digest(t, path, w->catalogue->limits.rows);
		enum news_kind kind;

		if (news_of(has, news_shipped(w, t->name), ships, &kind))
			add_line(n, (struct news){ kind, SHIPPED_TASK, t->name, t->title,
						   task_text(w, news_task(w, t->name), t) });
	}
}

/* A task as it was shipped, which the catalogue no longer has. */
static gboolean
is_gone(const struct news_work *w, const struct task *t)
{
	const struct shipped *s = t->retired == 1 ? NULL : news_shipped(w, t->name);
	g_autofree char *has = s ? news_task_digest(w, t->name) : NULL;

	return s && catalogue_find(&w->catalogue->tasks, t->name) == NONE && !strcmp(has, s->digest);
}

/* A fitting as it was shipped, on which no work is left that the owner may want. */
static gboolean
is_fitting_gone(const struct news_work *w, const struct fitting *f)
{
	const struct shipped *s = f->retired == 1 ? NULL : news_shipped(w, f->path);
	const struct task *t = (const void *)w->tasks->data;
	g_autofree char *has = s ? news_fitting_digest(w, f->path) : NULL;

	if (!s || catalogue_find(&w->catalogue->fittings, f->path) != NONE || strcmp(has, s->digest) != 0)
		return FALSE;
	for (guint i = 0; i < w->tasks->len; i++)
		if (t[i].fitting == f->id && t[i].retired != 1 && !is_gone(w, &t[i]))
			return FALSE;
	return TRUE;
}

static void
add_gone(struct news_list *n)
{
	const struct news_work *w = n->work;
	const struct fitting *f = (const void *)w->fittings->data;
	const struct task *t = (const void *)w->tasks->data;

	for (guint i = 0; i < w->fittings->len; i++)
		if (is_fitting_gone(w, &f[i]))
			add_line(n, (struct news){ NEWS_GONE, SHIPPED_FITTING, f[i].path, f[i].title, g_strdup("") });
	for (guint i = 0; i < w->tasks->len; i++)
		if (is_gone(w, &t[i]))
			add_line(n, (struct news){ NEWS_GONE, SHIPPED_TASK, t[i].name, t[i].title, g_strdup("") });
}

/* Of several engines the one that was alone when the boat got its catalogue, so that its rows have no side: NONE, there is
 * none such.  Rows that say no engine's are then those of the first that the logbook had. */
static gint64
plain_engine(const struct news_work *w, const GArray *engines)
{
	const struct fitting *f = news_fitting(w, "engine");
	const struct engine *e = (const void *)engines->data;
	gint64 first = NONE;

	for (guint i = 0; f && i < engines->len; i++)
		if (strcmp(e[i].name, KIND_GENERATOR) != 0 && (first == NONE || e[i].id < first))
			first = e[i].id;
	return f && f->engine != NONE ? f->engine : first;
}

struct news_list *
book_news(struct book *b, const char *folder, const struct boat *boat, GError **err)
{
	struct news_list *n = g_new0(struct news_list, 1);
	struct news_work *w = n->work = g_new0(struct news_work, 1);
	g_autoptr(GArray) engines = book_records(b, RECORD_ENGINE, boat->id, err);

	n->lines = g_array_new(FALSE, FALSE, sizeof(struct news));
	g_array_set_clear_func(n->lines, clear_news);
	n->edition = catalogue_edition(folder);
	n->has = boat->edition;
	w->by_name = g_hash_table_new_full(g_str_hash, g_str_equal, NULL, g_free);
	if (!engines || !(w->fittings = book_records(b, RECORD_FITTING, boat->id, err))
	    || !(w->tasks = book_records(b, RECORD_TASK, boat->id, err))
	    || !(w->limits = book_records(b, RECORD_LIMIT, boat->id, err))
	    || !(w->shipped = book_records(b, RECORD_SHIPPED, boat->id, err))) {
		news_free(n);
		return NULL;
	}
	index_rows(w);
	w->catalogue = catalogue_for_boat(folder, boat, engines, plain_engine(w, engines), err);
	if (!w->catalogue) {
		news_free(n);
		return NULL;
	}
	/* Without a catalogue for the kind nothing is gone: there is nothing to compare with. */
	if (w->catalogue->tasks.rows->len) {
		add_fittings(n);
		add_tasks(n);
		add_gone(n);
	}
	return n;
}

gboolean
catalogue_is_newer(const char *folder, const struct boat *boat, gint64 *edition)
{
	*edition = boat->catalogue ? catalogue_edition(folder) : NONE;
	return *edition != NONE && (boat->edition == NONE || boat->edition < *edition);
}
