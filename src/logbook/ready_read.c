/* What the launch check makes of readings: those that say stop, and drain plugs counted out and in. */
#include "logbook/ready_inside.h"

#include "base/date.h"
#include "logbook/measure.h"
#include "logbook/readings.h"

#include <math.h>
#include <string.h>

/* ---- Readings that say stop ---- */

static const struct measurement *
reading(const struct making *m, guint i)
{
	return &((const struct measurement *)(const void *)m->readings->data)[i];
}

static gboolean
same_place(const struct measurement *a, const struct measurement *b)
{
	return a->fitting == b->fitting && !strcmp(a->what, b->what);
}

static struct measure_limits
limits_of(const struct making *m, const struct condition_kind *kind, const struct measurement *r)
{
	return measure_limits_of(kind, measure_bound_on(m->bounds, r->what, r->fitting), m->boat->units);
}

static void
judge(const struct making *m, const struct measurement *r, struct condition_out *j)
{
	const struct condition_kind *kind = readings_find(m->kinds, r->what);
	struct measure_limits limits;

	*j = (struct condition_out){ .verdict = VERDICT_NONE };
	if (!kind)
		return;
	limits = limits_of(m, kind, r);
	measure_judge(&limits, r, j);
}

/* Whether a later reading of the same says more: one that could not be judged hides nothing. */
static gboolean
is_outdated(const struct making *m, guint i)
{
	struct condition_out j;

	for (guint k = i + 1; k < m->readings->len; k++) {
		if (reading(m, k)->date > m->at || !same_place(reading(m, i), reading(m, k)))
			continue;
		judge(m, reading(m, k), &j);
		if (j.verdict != VERDICT_NONE)
			return TRUE;
	}
	return FALSE;
}

/* Whether the due list takes it for answered: the task that asks for it was done since, or a new part went in. */
static gboolean
is_answered(const struct making *m, const struct measurement *r)
{
	for (int i = 0; i < due_count(m->l); i++) {
		const struct due_line *d = due_at(m->l, i);

		if (d->fitting_id == r->fitting && d->in.since.what == SINCE_FITTED && d->in.since.day >= r->date)
			return TRUE;
		for (int k = 0; k < d->n_readings; k++)
			if (d->reading[k].cleared && d->reading[k].date == r->date && !strcmp(d->reading[k].kind->what, r->what))
				return TRUE;
	}
	return FALSE;
}

static gboolean
tells(const struct due_line *d, const struct measurement *r)
{
	for (int k = 0; k < d->n_readings; k++)
		if (d->reading[k].date == r->date && !strcmp(d->reading[k].kind->what, r->what))
			return TRUE;
	return FALSE;
}

/* The task whose failure costs most of those of a fitting; NULL: it has none. */
static const struct due_line *
worst_of(const struct due_list *l, gint64 fitting)
{
	const struct due_line *worst = NULL;

	for (int i = 0; i < due_count(l); i++)
		if (due_at(l, i)->fitting_id == fitting && (!worst || due_at(l, i)->in.consequence < worst->in.consequence))
			worst = due_at(l, i);
	return worst;
}

static char *
reading_words(const struct making *m, const struct measurement *r, const struct condition_out *j)
{
	struct measure_limits limits = limits_of(m, readings_find(m->kinds, r->what), r);
	g_autofree char *verdict = measure_verdict(&limits, j);
	char day[16];

	return g_strdup_printf("%s %s on %s, %s", r->what, r->as_read, day_words(r->date, day), verdict);
}

void
ready_readings_on(const struct making *m, const struct due_line *d, struct grounds *g)
{
	struct condition_out j;

	if (worst_of(m->l, d->fitting_id) != d)
		return;
	for (guint i = 0; i < m->readings->len; i++) {
		const struct measurement *r = reading(m, i);
		g_autofree char *words = NULL;

		if (r->fitting != d->fitting_id || r->date > m->at || tells(d, r))
			continue;
		judge(m, r, &j);
		if (j.verdict != VERDICT_STOP || is_outdated(m, i) || is_answered(m, r))
			continue;
		words = reading_words(m, r, &j);
		grounds_add(g, READY_READING, "%s", words);
		g->now = TRUE;
	}
}

static const struct fitting *
fitting_of(const struct making *m, gint64 id)
{
	const struct fitting *f = (const void *)m->fittings->data;

	for (guint i = 0; i < m->fittings->len; i++)
		if (f[i].id == id)
			return &f[i];
	return NULL;
}

/* Whether some task tells of it. */
static gboolean
is_told(const struct making *m, const struct measurement *r)
{
	for (int i = 0; i < due_count(m->l); i++)
		if (tells(due_at(m->l, i), r))
			return TRUE;
	return r->fitting != NONE && worst_of(m->l, r->fitting) != NULL;
}

static void
add_alone(struct making *m, const struct measurement *r, const struct condition_out *j)
{
	const struct fitting *f = fitting_of(m, r->fitting);
	gboolean stop = j->verdict == VERDICT_STOP, grave = f && (f->below_waterline == 1 || f->fuel == 1);
	enum ready_group group = !stop ? READY_UNKNOWN : grave ? READY_HOLDS : READY_MEND;
	struct ready_item *i = ready_add(m, group, stop ? READY_READING : READY_NO_VALUE, g_strdup(f ? f->title : "Boat"),
					 reading_words(m, r, j));

	i->consequence = !f ? COST_COSTS : f->below_waterline == 1 ? COST_SINKS : f->fuel == 1 ? COST_BURNS : COST_COSTS;
}

void
ready_readings_alone(struct making *m)
{
	struct condition_out j;

	for (guint i = 0; i < m->readings->len; i++) {
		const struct measurement *r = reading(m, i);
		const struct fitting *f = fitting_of(m, r->fitting);
		gboolean last = TRUE;

		if (r->date > m->at || !readings_find(m->kinds, r->what) || (f && f->retired == 1))
			continue;
		for (guint k = i + 1; last && k < m->readings->len; k++)
			last = reading(m, k)->date > m->at || !same_place(r, reading(m, k));
		judge(m, r, &j);
		if (j.verdict == VERDICT_NONE ? last : j.verdict == VERDICT_STOP && !is_told(m, r) && !is_outdated(m, i))
			add_alone(m, r, &j);
	}
}

/* ---- Drain plugs ---- */

/* How many; NAN: the reading does not tell. */
static double
plugs_of(const struct measurement *r)
{
	char *end;
	double n = r->value;

	if (isnan(n) && r->as_read) {
		n = g_ascii_strtod(r->as_read, &end);
		n = end == r->as_read || (*end && *end != ' ') ? (double)NAN : n;
	}
	return n >= 0 ? n : (double)NAN;
}

/* What one fitting's counts come to, from reading `from` on, its first: NULL when as many are in as came out, else why not.
 * Plugs taken out in two goes: the larger count stands. */
static char *
fitting_plugs(const struct making *m, guint from)
{
	const struct measurement *out = NULL, *in = NULL;
	char out_day[16], in_day[16];

	for (guint i = from; i < m->readings->len; i++) {
		const struct measurement *r = reading(m, i);

		if (r->date > m->at || r->fitting != reading(m, from)->fitting)
			continue;
		if (!strcmp(r->what, "plugs-out")) {
			out = out && plugs_of(out) > plugs_of(r) ? out : r;
			in = NULL;
		} else if (out && !strcmp(r->what, "plugs-in")) {
			in = r;
			if (plugs_of(in) == plugs_of(out))
				out = in = NULL;
		}
	}
	if (!out)
		return NULL;
	if (!in)
		return g_strdup_printf("drain plugs: %s out on %s, and none counted back in", out->as_read,
				       day_words(out->date, out_day));
	return g_strdup_printf("drain plugs: %s out on %s, %s in on %s", out->as_read, day_words(out->date, out_day), in->as_read,
			       day_words(in->date, in_day));
}

static gboolean
is_plugs_out(const struct making *m, guint i)
{
	return reading(m, i)->date <= m->at && !strcmp(reading(m, i)->what, "plugs-out");
}

static gboolean
is_first_of_fitting(const struct making *m, guint i)
{
	for (guint k = 0; k < i; k++)
		if (is_plugs_out(m, k) && reading(m, k)->fitting == reading(m, i)->fitting)
			return FALSE;
	return TRUE;
}

/* The task that puts back the plugs of a fitting. */
static gboolean
puts_plugs_back(const struct due_line *d)
{
	return g_str_has_suffix(d->name, ".plugs-in") || g_str_has_suffix(d->name, ".sea-plugs");
}

/* The day of the newest draining of that fitting at a lay-up; NONE. */
static gint64
drained_on(const struct due_list *l, gint64 fitting)
{
	gint64 day = NONE;

	for (int i = 0; i < due_count(l); i++) {
		const struct due_line *d = due_at(l, i);
		const char *dot = d->fitting_id == fitting ? strrchr(d->name, '.') : NULL;

		for (int k = 0; dot && g_str_has_prefix(dot, ".drain") && k < d->in.n_limits; k++)
			if (d->limit[k].kind == LIMIT_EVENT && d->limit[k].event == EVENT_LAY_UP
			    && d->in.since.what == SINCE_SERVICE)
				day = MAX(day, d->in.since.day);
	}
	return day;
}

/* Drained, and nobody counted: done with the task that puts the plugs back, or held. */
static char *
uncounted(const struct making *m, const struct due_line *host)
{
	gint64 day = drained_on(m->l, host->fitting_id);
	char words[16];

	if (day == NONE || due_done_since(&host->in.since, day))
		return NULL;
	for (guint i = 0; i < m->readings->len; i++)
		if (is_plugs_out(m, i) && reading(m, i)->date >= day)
			return NULL;
	return g_strdup_printf("drained on %s, and nobody counted the plugs that came out", day_words(day, words));
}

void
ready_plugs(const struct making *m, const struct due_line *d, struct grounds *g)
{
	g_autofree char *none = puts_plugs_back(d) ? uncounted(m, d) : NULL;

	if (!puts_plugs_back(d))
		return;
	if (none)
		grounds_add(g, READY_PLUGS, "%s", none);
	for (guint i = 0; i < m->readings->len; i++) {
		gboolean here = reading(m, i)->fitting == d->fitting_id && is_plugs_out(m, i) && is_first_of_fitting(m, i);
		g_autofree char *one = here ? fitting_plugs(m, i) : NULL;

		if (one)
			grounds_add(g, READY_PLUGS, "%s", one);
	}
	if (g->first == READY_PLUGS)
		g->now = g->holds = TRUE;
}

static gboolean
has_host(const struct making *m, gint64 fitting)
{
	for (int i = 0; i < due_count(m->l); i++)
		if (due_at(m->l, i)->fitting_id == fitting && puts_plugs_back(due_at(m->l, i)))
			return TRUE;
	return FALSE;
}

/* Where no task puts them back, counting them is what ends it; nobody lets an open hole pass. */
void
ready_plugs_alone(struct making *m)
{
	const struct fitting *f = (const void *)m->fittings->data;

	for (guint i = 0; i < m->readings->len; i++) {
		gboolean alone = is_plugs_out(m, i) && is_first_of_fitting(m, i) && !has_host(m, reading(m, i)->fitting);
		g_autofree char *one = alone ? fitting_plugs(m, i) : NULL;
		guint at = 0;

		while (one && at < m->fittings->len && f[at].id != reading(m, i)->fitting)
			at++;
		if (one)
			ready_add(m, READY_HOLDS, READY_PLUGS, g_strdup(at < m->fittings->len ? f[at].title : "Drain plugs"),
				  g_strdup_printf("%s; counted in they hold no more: measure plugs-in N%s%s", one,
						  at < m->fittings->len ? " --fitting " : "",
						  at < m->fittings->len ? f[at].path : ""))->consequence = COST_SINKS;
	}
}
