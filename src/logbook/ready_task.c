/* The launch check, task by task. */
#include "logbook/ready_inside.h"

#include "base/date.h"
#include "logbook/due_list.h"
#include "logbook/happening.h"
#include "logbook/waiver.h"

#include <string.h>

static gboolean
is_grave(const struct due_line *d)
{
	return d->in.consequence <= COST_HURTS;
}

/* On the day of the launch the boat is still ashore. */
static gboolean
is_ashore(const struct making *m)
{
	return !due_year(m->l)->afloat || due_year(m->l)->launch == m->at;
}

/* Work that nobody can do before the boat is afloat can't be waited for ashore. */
static gboolean
waits_for_water(const struct making *m, const struct due_line *d)
{
	gboolean first_day = d->out.governing >= 0 && d->limit[d->out.governing].kind == LIMIT_EVENT
			  && d->limit[d->out.governing].event == EVENT_FIRST_DAY;

	return is_ashore(m) && (d->in.place == WORK_AFLOAT || first_day);
}

/* What the drive's going back asks for after the first run can't be done before it. */
static gboolean
waits_for_run(const struct making *m, const struct due_line *d, const struct grounds *g)
{
	return is_ashore(m) && g->first == READY_ASKED && happening_is_recheck(d);
}

/* What happened, or was read, is told by itself. */
static gboolean
is_clock(const struct due_line *d)
{
	enum limit_kind kind = d->out.governing < 0 ? LIMIT_KIND_COUNT : d->in.limit[d->out.governing].kind;

	return kind != LIMIT_HAPPENING && kind != LIMIT_CONDITION && kind != LIMIT_KIND_COUNT;
}

static void
by_due(const struct making *m, const struct due_line *d, struct grounds *g)
{
	gint64 since = is_grave(d) && d->out.early != NONE ? d->out.early : d->out.due;
	char day[16];

	if (d->in.since.day != NONE && d->in.since.day > m->at)
		grounds_add(g, READY_GUESS, "it counts from %s, which lies ahead: nobody knows its age",
			    day_words(d->in.since.day, day));
	else if (d->in.since.day == NONE && d->out.governing < 0 && d->out.when != OPP_EACH_OUTING
		 && d->out.when != OPP_ON_CONDITION)
		grounds_add(g, READY_NEVER_SEEN, "nobody has on record when it was last done");
	else if (d->out.past && is_clock(d))
		grounds_add(g, READY_PAST_DUE, "past due since %s", day_words(since, day));
	else if (d->out.when == OPP_BEFORE_LAUNCH && is_grave(d) && is_clock(d))
		grounds_add(g, READY_BY_LAUNCH, "due by the launch%s%s", m->r->launch == NONE ? "" : " on ",
			    day_words(m->r->launch, day));
}

/* Of the newest work what restarted nothing: a top-up says nothing, a look that found it good ends what was wanting. */
static gboolean
by_service(const struct making *m, const struct due_line *d, struct grounds *g, GError **err)
{
	struct cells *c = cells_open(m->b->db, SQL_OUTCOMES_OF_TASK);
	gint64 outcome = OUTCOME_TOPPED_UP, date = NONE;
	char day[16];

	cells_bind(c, 1, d->id);
	cells_bind(c, 2, m->at);
	while (outcome == OUTCOME_TOPPED_UP && cells_next(c)) {
		date = cells_int(c, 0);
		outcome = cells_word(c, 1, &words_outcome);
	}
	if (!cells_close(c, err))
		return FALSE;
	/* A new part went in since, unless it is the one that is claimed. */
	if (date != NONE && d->in.since.what == SINCE_FITTED && d->in.since.day >= date + (outcome == OUTCOME_CLAIMED))
		return TRUE;
	switch ((enum outcome)outcome) {
	case OUTCOME_BAD:
		grounds_add(g, READY_BAD, "found wanting on %s", day_words(date, day));
		g->now = TRUE;
		break;
	case OUTCOME_NOT_SEEN:
		grounds_add(g, READY_NOT_SEEN, "on %s what proves it was not seen", day_words(date, day));
		break;
	case OUTCOME_CLAIMED:
		if (is_grave(d))
			grounds_add(g, READY_CLAIMED, "only claimed on %s: look at it", day_words(date, day));
		break;
	case OUTCOME_DONE:
	case OUTCOME_GOOD:
	case OUTCOME_RENEWED:
	case OUTCOME_TOPPED_UP:
		break;
	}
	return TRUE;
}

/* A look that counts from the day a part went in counts only if the log has who put it in: nobody here has seen a part that came
 * with papers, or with another's log.  A boat that came new is no such part, and what a service says is said already. */
static gboolean
by_part(const struct making *m, const struct due_line *d, struct grounds *g, GError **err)
{
	const struct baseline *since = &d->in.since;
	struct cells *c;
	gboolean renewed;
	char day[16];

	if (!is_grave(d) || d->in.rule != CLOCK_INSPECTION || since->what != SINCE_FITTED || since->day == m->boat->delivered
	    || g->first <= READY_CLAIMED)
		return TRUE;
	c = cells_open(m->b->db, SQL_RENEWED_BETWEEN);
	cells_bind(c, 1, d->fitting_id);
	cells_bind(c, 2, since->day);
	cells_bind(c, 3, m->at);
	renewed = cells_next(c);
	if (!cells_close(c, err))
		return FALSE;
	if (!renewed)
		grounds_add(g, READY_CLAIMED, "it counts from a part said to be new on %s: look at it",
			    day_words(since->day, day));
	return TRUE;
}

static void
by_skip(const struct making *m, const struct due_line *d, struct grounds *g)
{
	const struct skip *s = (const void *)m->skips->data;
	char day[16];

	for (guint i = m->skips->len; i-- > 0;) {
		if (s[i].task != d->id || s[i].date > m->at)
			continue;
		if (!due_done_since(&d->in.since, s[i].date))
			grounds_add(g, READY_SKIPPED, "passed over on %s: %s", day_words(s[i].date, day), s[i].reason);
		return;
	}
}

/* The latest thing that asks for it and that it was not done after; closing it makes no difference.  What costs money only is
 * told with the happening itself as long as that is open. */
static void
by_happening(const struct making *m, const struct due_line *d, struct grounds *g)
{
	const struct happening *h = (const void *)m->happenings->data;
	char day[16];

	for (guint i = m->happenings->len; i-- > 0;) {
		gboolean closed = h[i].closed != NONE && h[i].closed <= m->at;
		gboolean together = h[i].kind == HAPPENED_DRIVE_OFF && task_can_hold(d->name, d->path, d->in.consequence);

		if (h[i].date > m->at || !happening_asks(d, h[i].kind) || due_done_since(&d->in.since, h[i].date))
			continue;
		if (!closed && !together && !is_grave(d))
			continue;
		g->holds = g->holds || together;
		grounds_add(g, READY_ASKED, "asked for since %s (%s)%s", day_words(h[i].date, day),
			    word_of(&words_happening, h[i].kind), closed ? ", closed without it" : "");
		return;
	}
}

static void
by_reading(const struct due_line *d, struct grounds *g)
{
	for (int k = 0; k < d->n_readings; k++) {
		g_autofree char *words = NULL;

		if (d->reading[k].verdict != VERDICT_STOP || d->reading[k].cleared)
			continue;
		words = due_reading_words(&d->reading[k]);
		grounds_add(g, READY_READING, "%s", words);
		g->now = TRUE;
	}
}

static void
add_task(struct making *m, enum ready_group group, enum ready_ground ground, const struct due_line *d, const char *why)
{
	struct ready_item *i = ready_add(m, group, ground, g_strdup(d->label), g_strdup(why));

	ready_is_task(m, i, d->id, d->name, d->in.consequence);
}

/* What is on nobody's calendar and was never read or done: that no finding asks for it says nothing. */
static gboolean
nobody_looked(const struct due_line *d)
{
	if (!is_grave(d) || d->out.when != OPP_ON_CONDITION || d->in.since.day != NONE || d->n_readings)
		return FALSE;
	for (int i = 0; i < d->in.n_limits; i++)
		if (d->in.limit[i].kind == LIMIT_CONDITION)
			return TRUE;
	return FALSE;
}

/* Nothing speaks against it by the log, but the log knows little. */
static void
add_doubts(struct making *m, const struct due_line *d)
{
	gint64 end = due_year(m->l)->haul_out;
	g_autofree char *why = NULL;
	char day[16];

	if (!d->in.n_limits && is_grave(d))
		return add_task(m, READY_UNKNOWN, READY_NO_LIMIT, d,
				"nothing makes it due any more: the plan holds no limit for it");
	if (nobody_looked(d))
		return add_task(m, READY_UNKNOWN, READY_UNASKED, d,
				"only a finding or a reading makes it due, and nobody has one, or the work, on record");
	for (int k = 0; k < d->n_readings; k++)
		if (d->reading[k].verdict == VERDICT_WATCH) {
			why = due_reading_words(&d->reading[k]);
			return add_task(m, READY_UNKNOWN, READY_WATCH, d, why);
		}
	if (!d->out.estimated || d->out.early == NONE || (end != NONE && d->out.early > end))
		return;
	why = g_strdup_printf("its date is a guess: it can be due as early as %s", day_words(d->out.early, day));
	add_task(m, READY_UNKNOWN, READY_GUESS, d, why);
}

static void
place(struct making *m, const struct due_line *d, const struct grounds *g)
{
	enum ready_group group = is_grave(d) || g->holds ? READY_HOLDS : READY_MEND;

	if (!g->why->len)
		return add_doubts(m, d);
	if (group == READY_HOLDS && !g->now && (waits_for_water(m, d) || waits_for_run(m, d, g)))
		group = READY_MEND;
	if (group == READY_MEND && !is_grave(d) && (g->first == READY_NEVER_SEEN || g->first == READY_GUESS))
		group = READY_UNKNOWN;
	add_task(m, group, g->first, d, g->why->str);
}

static gboolean
judge(struct making *m, const struct due_line *d, GError **err)
{
	g_autoptr(GString) why = g_string_new(NULL);
	struct grounds g = { .why = why, .first = READY_GROUNDS };

	by_due(m, d, &g);
	if (!by_service(m, d, &g, err) || !by_part(m, d, &g, err))
		return FALSE;
	by_happening(m, d, &g);
	by_reading(d, &g);
	ready_readings_on(m, d, &g);
	ready_plugs(m, d, &g);
	by_skip(m, d, &g);
	if (!why->len && d->out.when == OPP_NOW && is_grave(d))
		grounds_add(&g, READY_ASKED, "to be done before the boat is used again");
	if (g.first != READY_GROUNDS && is_ashore(m) && !g.now && is_grave(d) && waits_for_water(m, d))
		g_string_append(why, "; it can be done afloat only, on the first day");
	else if (waits_for_run(m, d, &g) && !g.now)
		g_string_append(why, "; it is done after the first run");
	place(m, d, &g);
	return TRUE;
}

gboolean
ready_tasks(struct making *m, GError **err)
{
	for (int i = 0; i < due_count(m->l); i++)
		if (!judge(m, due_at(m->l, i), err))
			return FALSE;
	ready_plugs_alone(m);
	return TRUE;
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

/* What the owner does not want is the owner's right; that it is so is said. */
gboolean
ready_retired(struct making *m, GError **err)
{
	g_autoptr(GArray) tasks = book_records(m->b, RECORD_TASK, m->boat->id, err);

	for (guint i = 0; tasks && i < tasks->len; i++) {
		const struct task *t = &((const struct task *)(const void *)tasks->data)[i];
		const struct fitting *f = fitting_of(m, t->fitting);
		gboolean none = f && f->retired == 1;
		g_autofree char *label = NULL;
		struct ready_item *item;

		if (t->consequence > COST_HURTS || (t->retired != 1 && !none))
			continue;
		label = due_label(f ? f->title : t->title, t->name);
		item = ready_add(m, READY_UNKNOWN, READY_RETIRED, g_steal_pointer(&label),
				 g_strdup(none ? "retired: by the log this boat has no such fitting"
					       : "retired: the owner does not want it"));
		ready_is_task(m, item, t->id, t->name, t->consequence);
	}
	return tasks != NULL;
}
