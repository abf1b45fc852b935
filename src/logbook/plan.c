#include "logbook/plan.h"

#include "base/amount.h"
#include "base/err.h"
#include "logbook/due.h"
#include "logbook/inside.h"

#include <string.h>

/* The units an interval can have, and what one of them counts as. */
static const struct {
	const char *word;
	enum limit_kind kind;
	int times;
} units[] = {
	{ "h", LIMIT_HOURS, 1 },         { "hour", LIMIT_HOURS, 1 },      { "hours", LIMIT_HOURS, 1 },
	{ "mo", LIMIT_MONTHS, 1 },       { "month", LIMIT_MONTHS, 1 },    { "months", LIMIT_MONTHS, 1 },
	{ "y", LIMIT_MONTHS, 12 },       { "year", LIMIT_MONTHS, 12 },    { "years", LIMIT_MONTHS, 12 },
	{ "outing", LIMIT_OUTINGS, 1 },  { "outings", LIMIT_OUTINGS, 1 }, { "season", LIMIT_SEASONS, 1 },
	{ "seasons", LIMIT_SEASONS, 1 },
};

gboolean
limit_parse(const char *text, struct limit *m, GError **err)
{
	g_autofree char *clean = g_strstrip(g_strdup(text)), *number = NULL;
	gsize digits = strspn(clean, "0123456789.,:");
	const char *unit = clean + digits;

	while (*unit == ' ')
		unit++;
	number = g_strndup(clean, digits);
	for (guint i = 0; i < G_N_ELEMENTS(units); i++) {
		if (g_ascii_strcasecmp(unit, units[i].word))
			continue;
		m->kind = units[i].kind;
		if (m->kind == LIMIT_HOURS)
			return hours_parse(number, &m->hours, err)
			    && (m->hours > 0 || err_set(err, ERR_INPUT, "\"%s\": more than nothing is wanted", text));
		if (!count_parse(number, &m->amount, err))
			return FALSE;
		if (m->amount < 1 || m->amount > 1200)
			return err_set(err, ERR_INPUT, "\"%s\": 1 to 1200 is wanted", text);
		m->amount *= units[i].times;
		return TRUE;
	}
	return err_set(err, ERR_INPUT, "\"%.40s\" is no interval: 100 h, 12 months, 5 years, 3 outings or 2 seasons",
		       text);
}

gboolean
interval_parse(const char *text, struct limit *m, GError **err)
{
	const char *slash = strchr(text, '/');
	g_autofree char *first = slash ? g_strndup(text, (gsize)(slash - text)) : g_strdup(text);
	struct limit salt;

	record_init(RECORD_LIMIT, &salt);
	if (!limit_parse(first, m, err) || (slash && !limit_parse(slash + 1, &salt, err)))
		return FALSE;
	if (!slash)
		return TRUE;
	if (salt.kind != m->kind || (m->kind != LIMIT_HOURS && m->kind != LIMIT_MONTHS))
		return err_set(err, ERR_INPUT, "two figures are both in hours or both in months or years: 12 months/6 months");
	if (salt.amount > m->amount || salt.hours > m->hours)
		return err_set(err, ERR_INPUT, "the second figure is that in salt water, the shorter of the two");
	m->salt = salt.amount;
	m->salt_hours = salt.hours;
	return TRUE;
}

/* The same question asked of the task: what a new limit takes the place of. */
static gboolean
replaces(const struct limit *new, const struct limit *old)
{
	return new->kind == old->kind && (new->kind != LIMIT_EVENT || new->event == old->event)
	    && (new->kind != LIMIT_HAPPENING || new->happening == old->happening)
	    && (new->kind != LIMIT_CONDITION || !g_strcmp0(new->measured, old->measured));
}

GArray *
book_limits(struct book *b, gint64 task, GError **err)
{
	return book_gather(b, RECORD_LIMIT, SQL_LIMITS_OF_TASK, task, err);
}

static gboolean
write_limits(struct book *b, gint64 task, struct limit *m, int n, GError **err)
{
	g_autoptr(GArray) old = book_limits(b, task, err);
	const struct limit *o;

	if (!old)
		return FALSE;
	o = (const void *)old->data;
	for (int i = 0; i < n; i++) {
		m[i].task = task;
		for (guint k = 0; k < old->len && m[i].id == NONE; k++)
			if (replaces(&m[i], &o[k]))
				m[i].id = o[k].id;
		if (!book_put(b, RECORD_LIMIT, &m[i], err))
			return FALSE;
	}
	return TRUE;
}

gboolean
book_set_limits(struct book *b, const struct task *t, struct limit *m, int n, GError **err)
{
	g_autofree char *first = n ? limit_words(&m[0]) : g_strdup("nothing");

	return book_begin(b, err)
	    && book_end(b, write_limits(b, t->id, m, n, err), err, "%s: %s (%s)", t->name, first, n ? m[0].source : "");
}

gboolean
book_drop_limits(struct book *b, const struct task *t, gint64 kind, GError **err)
{
	g_autoptr(GArray) old = book_limits(b, t->id, err);
	gboolean ok = TRUE;
	int n = 0;

	if (!old || !book_begin(b, err))
		return FALSE;
	for (guint i = 0; ok && i < old->len; i++) {
		const struct limit *m = &((const struct limit *)(const void *)old->data)[i];

		if (m->kind == kind && ++n)
			ok = row_drop(b->db, RECORD_LIMIT, m->id, err);
	}
	if (ok && !n)
		ok = err_set(err, ERR_NOT_FOUND, "%s has no limit by %s", t->name, word_of(&words_limit_kind, kind));
	return book_end(b, ok, err, "%s: no longer by %s", t->name, word_of(&words_limit_kind, kind));
}

gboolean
book_add_task(struct book *b, struct task *t, struct limit *m, int n, GError **err)
{
	if (!n)
		return err_set(err, ERR_INPUT, "a task wants a limit: --every \"12 months\" --source \"...\"");
	return book_begin(b, err)
	    && book_end(b, book_put(b, RECORD_TASK, t, err) && write_limits(b, t->id, m, n, err), err, "task %s added",
			t->name);
}

gboolean
book_retire_task(struct book *b, struct task *t, gboolean retired, GError **err)
{
	t->retired = retired ? 1 : NONE;
	return book_begin(b, err)
	    && book_end(b, book_put(b, RECORD_TASK, t, err), err, "%s %s", t->name, retired ? "retired" : "restored");
}
