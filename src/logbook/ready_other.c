/* The launch check beside the tasks: findings, what happened, and what nobody said. */
#include "logbook/ready_inside.h"

#include "base/date.h"
#include "logbook/happening.h"

#include <string.h>

/* What it costs when the thing a finding is on fails: its task's, else the worst of its fitting; NONE: nobody knows. */
static gint64
finding_costs(const struct making *m, const struct finding *f)
{
	gint64 worst = NONE;

	for (int i = 0; i < due_count(m->l); i++) {
		const struct due_line *d = due_at(m->l, i);

		if (f->task == d->id)
			return d->in.consequence;
		if (f->fitting == d->fitting_id && (worst == NONE || (gint64)d->in.consequence < worst))
			worst = d->in.consequence;
	}
	return worst;
}

static enum ready_group
finding_group(const struct making *m, const struct finding *f)
{
	if (f->level == LEVEL_HOLD || (f->until != NONE && f->until < m->at))
		return READY_HOLDS;
	return f->level == LEVEL_WATCH ? READY_UNKNOWN : READY_MEND;
}

static char *
finding_why(const struct making *m, const struct finding *f)
{
	GString *why = g_string_new(NULL);
	char day[16];

	g_string_printf(why, "found on %s", day_words(f->date, day));
	if (f->until != NONE)
		g_string_append_printf(why, "; %s mended by %s", f->until < m->at ? "was to be" : "to be",
				       day_words(f->until, day));
	if (f->level == LEVEL_WATCH && f->until == NONE)
		g_string_append(why, "; to be looked at or measured again");
	if (f->proposed != NONE && f->proposed < f->level)
		g_string_append_printf(why, "; the rules propose: %s", word_of(&words_level, f->proposed));
	if (f->raised)
		g_string_append_printf(why, "; %s", f->raised);
	if (f->allowed)
		g_string_append_printf(why, "; until then: %s", f->allowed);
	return g_string_free(why, FALSE);
}

/* A day that lies ahead of today can't be right, and hides nothing. */
static gboolean
is_dated_by(const struct making *m, gint64 date)
{
	return date <= m->at || date > book_today(m->b);
}

static void
add_findings(struct making *m)
{
	const struct finding *f = (const void *)m->findings->data;

	for (guint i = 0; i < m->findings->len; i++) {
		enum ready_group group = finding_group(m, &f[i]);
		struct ready_item *item;

		if (!is_dated_by(m, f[i].date))
			continue;
		item = ready_add(m, group, group == READY_UNKNOWN ? READY_WATCH : READY_FINDING, g_strdup(f[i].words),
				 finding_why(m, &f[i]));
		item->consequence = finding_costs(m, &f[i]);
		ready_is_key(m, item, &item->finding, f[i].id);
	}
}

/* What an open happening still asks for. */
struct left {
	GString *names;
	int n, asked;
	gboolean dry; /* some of it can be done ashore */
	gint64 worst;
};

static void
count_left(const struct making *m, const struct happening *h, struct left *left)
{
	for (int i = 0; i < due_count(m->l); i++) {
		const struct due_line *d = due_at(m->l, i);

		if (!happening_asks(d, h->kind))
			continue;
		left->asked++;
		if (due_done_since(&d->in.since, h->date))
			continue;
		left->dry = left->dry || (d->in.place != WORK_AFLOAT && !happening_is_recheck(d));
		left->worst = left->worst == NONE ? d->in.consequence : MIN(left->worst, (gint64)d->in.consequence);
		if (++left->n <= 4)
			g_string_append_printf(left->names, "%s%s", left->n > 1 ? ", " : "", d->name);
	}
	if (left->n > 4)
		g_string_append_printf(left->names, " and %d more", left->n - 4);
}

static void
add_happening(struct making *m, const struct happening *h)
{
	g_autoptr(GString) names = g_string_new(NULL);
	struct left left = { .names = names, .worst = NONE };
	const char *kind = word_of(&words_happening, h->kind);
	gboolean ashore = !due_year(m->l)->afloat || due_year(m->l)->launch == m->at;
	struct ready_item *item;
	char day[16], *words = g_strdup_printf("%s on %s", kind, day_words(h->date, day));

	count_left(m, h, &left);
	if (left.n)
		item = ready_add(m, left.dry || !ashore ? READY_HOLDS : READY_MEND, READY_HAPPENING, words,
				 g_strdup_printf("%d of %d tasks that it asks for still to do: %s", left.n, left.asked,
						 names->str));
	else if (left.asked)
		item = ready_add(m, READY_MEND, READY_CLOSABLE, words,
				 g_strdup_printf("all is done that it asks for: happening %s --close", kind));
	else
		item = ready_add(m, READY_UNKNOWN, READY_HAPPENING, words,
				 g_strdup("no task of this boat asks for anything after it: look it over, then close it"));
	item->consequence = left.n ? left.worst : COST_COSTS;
	ready_is_key(m, item, &item->happening, h->id);
}

static void
add_happenings(struct making *m)
{
	const struct happening *h = (const void *)m->happenings->data;

	for (guint i = 0; i < m->happenings->len; i++)
		if (is_dated_by(m, h[i].date) && (h[i].closed == NONE || h[i].closed > m->at))
			add_happening(m, &h[i]);
}

static gboolean
has_word(const char *words, const char *word)
{
	g_auto(GStrv) all = g_strsplit(words ? words : "", " ", -1);

	return g_strv_contains((const char *const *)all, word);
}

/* Whether some task is for one design of the fitting and not for another. */
static const struct due_line *
decided_by_design(const struct making *m, const struct fitting *f, const GArray *tasks)
{
	g_auto(GStrv) all = g_strsplit(f->variants, " ", -1);
	const struct task *t = (const void *)tasks->data;

	for (guint i = 0; i < tasks->len; i++)
		for (int k = 0; t[i].fitting == f->id && t[i].variants && all[k]; k++)
			if (!has_word(t[i].variants, all[k]))
				return due_find(m->l, t[i].id);
	return NULL;
}

static gboolean
add_designs(struct making *m, GError **err)
{
	g_autoptr(GArray) tasks = book_records(m->b, RECORD_TASK, m->boat->id, err);
	const struct fitting *f = (const void *)m->fittings->data;

	for (guint i = 0; tasks && i < m->fittings->len; i++) {
		const struct due_line *d = !f[i].variant && f[i].variants && f[i].retired != 1
						 ? decided_by_design(m, &f[i], tasks) : NULL;
		struct ready_item *item;

		if (!d)
			continue;
		item = ready_add(m, READY_UNKNOWN, READY_DESIGN, g_strdup(f[i].title),
				 g_strdup_printf("which design is fitted decides what there is to do: %s", f[i].variants));
		item->consequence = d->in.consequence;
		item->name = g_strdup(f[i].path);
	}
	return tasks != NULL;
}

gboolean
ready_other(struct making *m, GError **err)
{
	add_findings(m);
	add_happenings(m);
	ready_readings_alone(m);
	if (m->r->launch == NONE)
		ready_add(m, READY_UNKNOWN, READY_NO_DATE, g_strdup("The launch"),
			  g_strdup("no day for it is in sight: splitpin season --launch DATE --planned"))
			->consequence = COST_COSTS;
	return add_designs(m, err);
}
