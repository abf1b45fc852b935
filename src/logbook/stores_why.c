/* What something is taken out of the stores for. */
#include "logbook/stores_take.h"

#include "base/err.h"
#include "base/text.h"

#include <string.h>

/* What no boat has got. */
static gboolean
is_no_use(const char *why)
{
	static const char *const words[] = { "lost", "thrown", "returned", "sent back" };

	for (guint i = 0; i < G_N_ELEMENTS(words); i++)
		if (!g_ascii_strncasecmp(why, words[i], strlen(words[i])))
			return TRUE;
	return FALSE;
}

/* "bellows.renw": no blank, and a dot within. */
static gboolean
looks_like_task(const char *why)
{
	const char *dot = strchr(why, '.');

	return dot && dot > why && g_ascii_isalpha(dot[1]) && !strpbrk(why, " \t\n");
}

static gboolean
no_such_task(const char *why, const GArray *tasks, GError **err)
{
	g_autoptr(GPtrArray) names = g_ptr_array_new();
	g_autofree char *shown = text_quoted(why);
	const char *near;

	for (guint i = 0; i < tasks->len; i++)
		g_ptr_array_add(names, g_array_index(tasks, struct task, i).name);
	near = text_nearest(why, (const char *const *)names->pdata, (int)names->len);
	if (near)
		return err_set(err, ERR_NOT_FOUND, "no task is called %s; is %s meant?", shown, near);
	return err_set(err, ERR_NOT_FOUND, "no task is called %s: splitpin plan lists them; what it is for may be said in words",
		       shown);
}

/* The day's newest service of a task. */
static gboolean
find_service(struct book *b, const struct boat *boat, const char *task, struct store_take *t, GError **err)
{
	g_autoptr(GArray) tasks = book_records(b, RECORD_TASK, boat->id, err);
	g_autoptr(GArray) services = tasks ? book_records(b, RECORD_SERVICE, boat->id, err) : NULL;
	gint64 id = NONE;

	for (guint i = 0; services && i < tasks->len; i++)
		if (!strcmp(g_array_index(tasks, struct task, i).name, task))
			id = g_array_index(tasks, struct task, i).id;
	if (services && id == NONE && t->job == NONE && looks_like_task(task))
		return no_such_task(task, tasks, err);
	for (guint i = 0; services && id != NONE && i < services->len; i++) {
		const struct service *s = &g_array_index(services, struct service, i);

		if (s->task == id && s->date == t->date)
			t->service = s->id;
	}
	return services != NULL;
}

static gboolean
find_job(struct book *b, const struct boat *boat, const char *name, struct store_take *t, GError **err)
{
	g_autoptr(GArray) jobs = book_records(b, RECORD_JOB, boat->id, err);

	for (guint i = 0; jobs && i < jobs->len; i++)
		if (!strcmp(g_array_index(jobs, struct job, i).name, name))
			t->job = g_array_index(jobs, struct job, i).id;
	return jobs != NULL;
}

gboolean
store_take_why(struct book *b, const struct boat *boat, const char *why, struct store_take *t, GError **err)
{
	t->remark = why;
	t->boat = why && is_no_use(why) ? NONE : boat->id;
	t->service = t->job = NONE;
	if (!why || t->boat == NONE)
		return TRUE;
	return find_job(b, boat, why, t, err) && find_service(b, boat, why, t, err);
}
