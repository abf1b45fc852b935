#include "logbook/job_template.h"

#include "base/err.h"
#include "base/text.h"
#include "logbook/shipped.h"

#include <string.h>

enum { NAME, TITLE, KINDS, TASKS, NEEDS, OPENS, PLACE, CREW, MINUTES, CAUTIONS, REMARK, JOB_STANDING, JOB_SOURCE };
static const char *const job_columns[] = { "name",    "title",    "kinds",  "tasks",    "needs",  "opens",  "place", "crew",
					   "minutes", "cautions", "remark", "standing", "source", NULL };
enum { JOB, KIND, STRIP, WHEN, TEXT, INCH, METRIC, COUNT, TASK, LINE_NEEDS, STANDING, SOURCE };
static const char *const line_columns[] = { "job",    "kind",  "strip", "when",     "text",   "inch",
					    "metric", "count", "task",  "needs", "standing", "source", NULL };

struct job_templates {
	struct table *jobs, *lines; /* NULL: there is none */
	GArray *all; /* struct job_template */
};

void
job_templates_free(struct job_templates *t)
{
	if (!t)
		return;
	for (guint i = 0; i < t->all->len; i++)
		g_array_unref(job_template_at(t, i)->lines);
	g_array_unref(t->all);
	table_free(t->jobs);
	table_free(t->lines);
	g_free(t);
}

guint
job_templates_count(const struct job_templates *t)
{
	return t->all->len;
}

const struct job_template *
job_template_at(const struct job_templates *t, guint i)
{
	return &((const struct job_template *)(const void *)t->all->data)[i];
}

const struct job_template *
job_template_find(const struct job_templates *t, const char *name)
{
	for (guint i = 0; i < t->all->len; i++)
		if (!strcmp(job_template_at(t, i)->name, name))
			return job_template_at(t, i);
	return NULL;
}

gboolean
job_template_fits(const struct job_template *t, gint64 kind)
{
	g_auto(GStrv) kinds = g_strsplit(t->kinds, " ", -1);

	return g_strv_contains((const char *const *)kinds, word_of(&words_boat_kind, kind));
}

/* A whole number, or an empty cell, which is NONE. */
static gboolean
take_count(const char *text, const char *column, gint64 *count, GError **err)
{
	guint64 n;

	*count = NONE;
	if (!text)
		return TRUE;
	if (!g_ascii_string_to_unsigned(text, 10, 1, 100000, &n, NULL))
		return err_set(err, ERR_INPUT, "%s: \"%.20s\" is no whole number", column, text);
	*count = (gint64)n;
	return TRUE;
}

static gboolean
take_job(struct job_templates *t, guint i, GError **err)
{
	static const int wanted[] = { NAME, TITLE, KINDS, TASKS, JOB_STANDING, JOB_SOURCE, -1 };
	const struct table *in = t->jobs;
	struct job_template job;

	if (!shipped_row_is_whole(in, i, job_columns, wanted, err))
		return FALSE;
	job = (struct job_template){ .name = table_cell(in, i, NAME),
				     .title = table_cell(in, i, TITLE),
				     .kinds = table_cell(in, i, KINDS),
				     .tasks = table_cell(in, i, TASKS),
				     .needs = table_cell(in, i, NEEDS),
				     .opens = table_cell(in, i, OPENS),
				     .cautions = table_cell(in, i, CAUTIONS),
				     .remark = table_cell(in, i, REMARK),
				     .source = table_cell(in, i, JOB_SOURCE),
				     .place = NONE };
	if ((table_cell(in, i, PLACE) && !word_parse(&words_workplace, table_cell(in, i, PLACE), &job.place, err))
	    || !take_count(table_cell(in, i, CREW), "crew", &job.crew, err)
	    || !take_count(table_cell(in, i, MINUTES), "minutes", &job.minutes, err)
	    || (job_template_find(t, job.name) && !err_set(err, ERR_INPUT, "%s stands there twice", job.name)))
		return table_prefix(in, i, err);
	job.lines = g_array_new(FALSE, FALSE, sizeof(struct template_line));
	g_array_append_val(t->all, job);
	return TRUE;
}

static gboolean
take_kind(const char *text, gint64 *kind, GError **err)
{
	if (!strcmp(text, "found"))
		*kind = TEMPLATE_FOUND;
	else if (!strcmp(text, "off"))
		*kind = TEMPLATE_OFF;
	else
		return word_parse(&words_step_kind, text, kind, err);
	return TRUE;
}

static gboolean
take_line(struct job_templates *t, guint i, GError **err)
{
	static const int wanted[] = { JOB, KIND, TEXT, STANDING, SOURCE, -1 };
	const struct table *in = t->lines;
	const struct job_template *of;
	struct template_line l;

	if (!shipped_row_is_whole(in, i, line_columns, wanted, err))
		return FALSE;
	l = (struct template_line){ .strip = NONE,
				    .text = table_cell(in, i, TEXT),
				    .on_condition = !g_strcmp0(table_cell(in, i, WHEN), "condition"),
				    .inch = table_cell(in, i, INCH),
				    .metric = table_cell(in, i, METRIC),
				    .task = table_cell(in, i, TASK),
				    .needs = table_cell(in, i, LINE_NEEDS),
				    .source = table_cell(in, i, SOURCE) };
	of = job_template_find(t, table_cell(in, i, JOB));
	if ((!of && !err_set(err, ERR_INPUT, "no job is called %.40s", table_cell(in, i, JOB)))
	    || !take_kind(table_cell(in, i, KIND), &l.kind, err)
	    || !take_count(table_cell(in, i, COUNT), "count", &l.count, err)
	    || (table_cell(in, i, STRIP) && !word_parse(&words_removal_kind, table_cell(in, i, STRIP), &l.strip, err)))
		return table_prefix(in, i, err);
	g_array_append_val(of->lines, l);
	return TRUE;
}

static gboolean
take_all(struct job_templates *t, const char *folder, GError **err)
{
	t->jobs = shipped_table(folder, "jobs.csv", job_columns, err);
	t->lines = t->jobs ? shipped_table(folder, "job-lines.csv", line_columns, err) : NULL;
	for (guint i = 0; t->lines && i < table_rows(t->jobs); i++)
		if (!take_job(t, i, err))
			return FALSE;
	for (guint i = 0; t->lines && i < table_rows(t->lines); i++)
		if (!take_line(t, i, err))
			return FALSE;
	return t->lines != NULL;
}

/* A folder without templates has none, which is no fault: an owner may do without. */
struct job_templates *
book_job_templates(struct book *b, GError **err)
{
	g_autofree char *folder = book_catalogue(b);
	g_autofree char *path = folder ? g_build_filename(folder, "jobs.csv", NULL) : NULL;
	struct job_templates *t = g_new0(struct job_templates, 1);

	t->all = g_array_new(FALSE, FALSE, sizeof(struct job_template));
	if (!path || !g_file_test(path, G_FILE_TEST_EXISTS) || take_all(t, folder, err))
		return t;
	job_templates_free(t);
	return NULL;
}

char *
template_line_words(const struct template_line *l)
{
	GString *out = g_string_new(NULL);

	if (l->count != NONE && l->count > 1)
		g_string_append_printf(out, "%d x ", (int)l->count);
	g_string_append(out, l->text);
	if (l->inch)
		g_string_append_printf(out, ", %s in", l->inch);
	if (l->metric)
		g_string_append_printf(out, "%s%s mm", l->inch ? " or " : ", ", l->metric);
	return g_string_free(out, FALSE);
}
