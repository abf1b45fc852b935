/* The launch check of jobs that are not closed: what is off, what was not counted back, what is undone. */
#include "logbook/job_inside.h"
#include "logbook/ready_inside.h"

#include "base/date.h"

/* What holds a job open on the day. */
struct tally {
	int off, unequal, retainers, unwritten; /* things, lines, lines, positions */
	int grave, aims; /* tasks and findings that are open; those that sink, burn or hurt, or hold the launch */
	gint64 worst; /* words_consequence of all that it is for; NONE: not known */
};

static void
tally_removal(const struct making *m, const struct removal *r, struct tally *t)
{
	gboolean back = r->back != NONE && r->back <= m->at;

	if (r->off > m->at)
		return;
	if (!back && r->kind == REMOVAL_SETTING && !r->as_found)
		t->unwritten++;
	else if (!back)
		t->off++;
	else if (r->count != NONE && r->back_count != NONE && r->count != r->back_count)
		t->unequal++;
	t->retainers += r->kind == REMOVAL_RETAINER && (!back || r->state == REMOVAL_REUSE);
}

static gboolean
is_settled(struct book *b, const struct aim *a)
{
	struct service s;
	struct finding f;
	gboolean settled = a->undone != NONE;

	record_init(RECORD_SERVICE, &s);
	record_init(RECORD_FINDING, &f);
	if (a->service != NONE && row_get(b->db, RECORD_SERVICE, a->service, &s, NULL))
		settled = settled || s.outcome != OUTCOME_NOT_SEEN;
	if (a->finding != NONE && row_get(b->db, RECORD_FINDING, a->finding, &f, NULL))
		settled = settled || f.mended != NONE;
	record_clear(RECORD_SERVICE, &s);
	record_clear(RECORD_FINDING, &f);
	return settled;
}

static void
tally_aim(const struct making *m, const struct aim *a, struct tally *t)
{
	const struct due_line *d = a->task == NONE ? NULL : due_find(m->l, a->task);

	if (d)
		t->worst = t->worst == NONE ? (gint64)d->in.consequence : MIN(t->worst, (gint64)d->in.consequence);
	if (is_settled(m->b, a))
		return;
	t->aims++;
	t->grave += d && d->in.consequence <= COST_HURTS;
}

static void
add_part(GString *why, int n, const char *one, const char *several)
{
	if (n)
		g_string_append_printf(why, "; %d %s", n, n == 1 ? one : several);
}

static char *
tally_words(const struct job *j, const struct tally *t)
{
	GString *why = g_string_new(NULL);
	char day[16];

	g_string_printf(why, "%s %s", j->paused == NONE ? "under way since" : "it rests since",
			day_words(j->paused == NONE ? j->opened : j->paused, day));
	add_part(why, t->off, "thing not put back", "things not put back");
	add_part(why, t->unequal, "count unequal", "counts unequal");
	add_part(why, t->retainers, "line of retainers not renewed and counted in",
		 "lines of retainers not renewed and counted in");
	add_part(why, t->unwritten, "position not written down", "positions not written down");
	add_part(why, t->aims, "thing that it is for not done", "things that it is for not done");
	return g_string_free(why, FALSE);
}

static gboolean
add_job(struct making *m, const struct job *j, GError **err)
{
	g_autoptr(GArray) aims = job_aims(m->b, j->id, err), lines = aims ? job_removals(m->b, j->id, err) : NULL;
	struct tally t = { .worst = NONE };
	struct ready_item *item;
	gboolean holds;

	for (guint i = 0; lines && i < lines->len; i++)
		tally_removal(m, &((const struct removal *)(const void *)lines->data)[i], &t);
	for (guint i = 0; lines && i < aims->len; i++)
		tally_aim(m, &((const struct aim *)(const void *)aims->data)[i], &t);
	if (!lines)
		return FALSE;
	holds = t.off || t.unequal || t.retainers || t.grave;
	item = ready_add(m, holds ? READY_HOLDS : READY_MEND, READY_JOB, g_strdup(j->title), tally_words(j, &t));
	item->consequence = t.worst;
	item->name = g_strdup_printf("job %s", j->name);
	return TRUE;
}

gboolean
ready_jobs(struct making *m, GError **err)
{
	g_autoptr(GArray) jobs = book_jobs(m->b, m->boat->id, TRUE, err);
	const struct job *j = jobs ? (const void *)jobs->data : NULL;

	for (guint i = 0; jobs && i < jobs->len; i++)
		if (j[i].opened <= m->at && (j[i].closed == NONE || j[i].closed > m->at) && !add_job(m, &j[i], err))
			return FALSE;
	return jobs != NULL;
}
