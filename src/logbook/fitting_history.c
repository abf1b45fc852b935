#include "logbook/fitting_history.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/each.h"
#include "logbook/corrections.h"
#include "logbook/inside.h"
#include "logbook/measure.h"
#include "logbook/removal.h"
#include "logbook/units.h"
#include "logbook/waiver.h"

#include <string.h>

/* Records by key, of those arrays that others refer to. */
struct gathering {
	struct book *b;
	const struct fitting_history_ask *ask;
	GArray *record[RECORD_COUNT]; /* NULL: not read */
	GHashTable *by_key; /* &key -> record */
	GHashTable *photos; /* &key of what they are of -> GString */
	GArray *events;
	GError *err; /* the first */
};

static void
clear_event(gpointer p)
{
	struct fitting_event *e = p;
	char **const text[] = { &e->subject, &e->result, &e->seen,   &e->proof,	  &e->reading,
				&e->before,  &e->who,	 &e->currency, &e->photos, &e->remark };

	for (guint i = 0; i < G_N_ELEMENTS(text); i++)
		g_clear_pointer(text[i], g_free);
}

static const void *
find(const struct gathering *g, gint64 key)
{
	return key == NONE ? NULL : g_hash_table_lookup(g->by_key, &key);
}

static gboolean
read_records(struct gathering *g)
{
	static const enum record wanted[] = {
		RECORD_FITTING, RECORD_TASK, RECORD_SERVICE, RECORD_FINDING, RECORD_PART, RECORD_MEASUREMENT, RECORD_BOUND,
		RECORD_WAIVER, RECORD_SKIP, RECORD_PHOTO, RECORD_JOB, RECORD_AIM, RECORD_STEP, RECORD_REMOVAL,
	};

	for (guint i = 0; i < G_N_ELEMENTS(wanted); i++) {
		enum record r = wanted[i];
		gsize size = record_type(r)->size;

		if (!(g->record[r] = book_records(g->b, r, g->ask->boat, &g->err)))
			return FALSE;
		for (guint k = 0; k < g->record[r]->len; k++) {
			gpointer record = g->record[r]->data + k * size;

			g_hash_table_insert(g->by_key, field_int(&record_type(r)->field[0], record), record);
		}
	}
	return TRUE;
}

static char *
text_of(const struct gathering *g, const char *text)
{
	return names_in(g->ask->names, text);
}

/* The next event, when it is of a fitting that is asked for; NULL. */
static struct fitting_event *
add(struct gathering *g, enum fitting_event_kind kind, gint64 fitting, gint64 id, gint64 date)
{
	struct fitting_event e = { .kind = kind, .date = date, .earliest = NONE, .fitting = fitting, .id = id, .until = NONE,
				   .cost = NONE };

	if (g->ask->fitting != NONE && fitting != g->ask->fitting)
		return NULL;
	g_array_append_val(g->events, e);
	return &((struct fitting_event *)(void *)g->events->data)[g->events->len - 1];
}

static char *
photos_of(const struct gathering *g, gint64 key)
{
	const GString *names = g_hash_table_lookup(g->photos, &key);

	return names ? text_of(g, names->str) : NULL;
}

static void
free_string(gpointer s)
{
	g_string_free(s, TRUE);
}

static void
gather_photos(struct gathering *g)
{
	for (EACH(struct photo, p, g->record[RECORD_PHOTO])) {
		const gint64 *of = p->finding != NONE ? &p->finding : p->service != NONE ? &p->service : &p->removal;
		GString *names = g_hash_table_lookup(g->photos, of);
		g_autofree char *file = g_path_get_basename(p->path);

		if (!names)
			g_hash_table_insert(g->photos, (gpointer)(guintptr)of, names = g_string_new(NULL));
		g_string_append_printf(names, "%s%s", names->len ? ", " : "", file);
	}
}

static void
gather_parts(struct gathering *g)
{
	for (EACH(struct part, p, g->record[RECORD_PART]))
		for (int out = 0; out <= (p->removed != NONE); out++) {
			struct fitting_event *e = add(g, out ? EVENT_TAKEN_OUT : EVENT_FITTED, p->fitting, p->id,
						      out ? p->removed : p->fitted);
			g_autofree char *what = NULL;
			char day[16];

			if (!e)
				continue;
			what = g_strdup_printf("%s%s%s", p->what, p->number ? ", " : "", p->number ? p->number : "");
			e->subject = text_of(g, what);
			if (!out && p->made != NONE)
				e->seen = g_strdup_printf("made %s", day_words(p->made, day));
			e->remark = out ? NULL : text_of(g, p->remark);
		}
}

static void
gather_services(struct gathering *g)
{
	for (EACH(struct service, v, g->record[RECORD_SERVICE])) {
		const struct task *t = find(g, v->task);
		struct fitting_event *e = add(g, EVENT_SERVICE, t->fitting, v->id, v->date);
		char hours[HOURS_TEXT];

		if (!e)
			continue;
		e->earliest = v->earliest;
		e->about = v->estimated == 1;
		e->subject = g_strdup(t->name);
		e->result = g_strdup(word_of(&words_outcome, v->outcome));
		e->seen = text_of(g, v->seen);
		e->proof = text_of(g, v->proof);
		e->unproved = t->proof && !v->seen && !v->proof && v->outcome != OUTCOME_BAD;
		e->reading = v->reading == NONE ? NULL : g_strdup(hours_words(v->reading, hours));
		e->who = names_person(g->ask->names, v->who);
		e->cost = v->cost;
		e->currency = g_strdup(v->currency);
		e->photos = photos_of(g, v->id);
		e->remark = text_of(g, v->remark);
	}
}

static void
fill_reading(struct gathering *g, struct fitting_event *e, const struct measurement *m, const struct readings *kinds, gint64 units)
{
	const struct condition_kind *kind = readings_find(kinds, m->what);
	const struct measurement *before = measure_before(g->record[RECORD_MEASUREMENT], m);

	e->subject = g_strdup(m->what);
	e->reading = measure_read_words(kind, m->as_read, units);
	if (kind) {
		struct measure_limits l =
			measure_limits_of(kind, measure_bound_on(g->record[RECORD_BOUND], m->what, m->fitting), units);
		struct condition_out judged;

		measure_judge(&l, m, &judged);
		e->result = measure_verdict(&l, &judged);
	}
	e->seen = m->method ? text_of(g, m->method) : NULL;
	e->before = before ? measure_before_words(m, before) : NULL;
	e->remark = text_of(g, m->remark);
}

static gboolean
gather_readings(struct gathering *g)
{
	const struct readings *kinds = g->record[RECORD_MEASUREMENT]->len ? book_readings(g->b, &g->err) : NULL;
	gint64 units = book_units(g->b, g->ask->boat);

	for (EACH(struct measurement, m, g->record[RECORD_MEASUREMENT])) {
		struct fitting_event *e = kinds ? add(g, EVENT_READING, m->fitting, m->id, m->date) : NULL;

		if (e)
			fill_reading(g, e, m, kinds, units);
	}
	return !g->err;
}

static void
gather_findings(struct gathering *g)
{
	for (EACH(struct finding, f, g->record[RECORD_FINDING])) {
		struct fitting_event *e = add(g, EVENT_FOUND, f->fitting, f->id, f->date);

		if (!e)
			continue;
		e->subject = text_of(g, f->words);
		e->result = g_strdup_printf("%s%s", word_of(&words_level, f->level), f->mended == NONE ? ", still open" : "");
		e->until = f->mended == NONE ? f->until : NONE;
		e->who = names_person(g->ask->names, f->who);
		e->photos = photos_of(g, f->id);
		e->remark = text_of(g, f->remark);
		if (f->mended == NONE)
			continue;
		e = add(g, EVENT_MENDED, f->fitting, f->id, f->mended);
		e->subject = text_of(g, f->words);
		e->result = g_strdup("mended");
		e->seen = text_of(g, f->left_as);
	}
}

/* The fitting that a task or a finding is about. */
static gint64
fitting_of(const struct gathering *g, gint64 task, gint64 finding)
{
	const struct task *t = find(g, task);
	const struct finding *f = find(g, finding);

	return t ? t->fitting : f ? f->fitting : NONE;
}

static void
gather_passed(struct gathering *g)
{
	for (EACH(struct waiver, w, g->record[RECORD_WAIVER])) {
		struct fitting_event *e = add(g, EVENT_LET_PASS, fitting_of(g, w->task, w->finding), w->id, w->date);
		g_autofree char *what = e ? book_waiver_words(g->b, w) : NULL;

		if (!e)
			continue;
		e->subject = text_of(g, what);
		e->result = g_strdup(w->ended == NONE ? NULL : "taken back");
		e->until = w->ended == NONE ? w->until : w->ended;
		e->seen = text_of(g, w->reason);
		e->who = names_person(g->ask->names, w->who);
	}
	for (EACH(struct skip, s, g->record[RECORD_SKIP])) {
		const struct task *t = find(g, s->task);
		struct fitting_event *e = add(g, EVENT_PASSED_OVER, t->fitting, s->id, s->date);

		if (!e)
			continue;
		e->subject = g_strdup(t->name);
		e->result = g_strdup(s->list == NONE ? NULL : word_of(&words_season_list, s->list));
		e->seen = text_of(g, s->reason);
		e->who = names_person(g->ask->names, s->who);
	}
}

/* "gimbal-bearing.grease: done"; a finding by its words. */
static char *
aim_words(const struct gathering *g, const struct aim *a)
{
	const struct task *t = find(g, a->task);
	const struct finding *f = find(g, a->finding);
	const struct service *v = find(g, a->service);
	g_autofree char *whole = g_strdup_printf(
		"%s: %s%s%s", t ? t->name : f ? f->words : "?",
		a->undone != NONE	     ? "left undone"
		: v			     ? word_of(&words_outcome, v->outcome)
		: f && f->mended != NONE     ? "mended"
					     : "open",
		a->reason ? ", " : "", a->reason ? a->reason : "");

	return text_of(g, whole);
}

/* A job once for each fitting that one of its aims, or a line of its list, is about. */
static struct fitting_event *
job_event(struct gathering *g, GHashTable *told, const struct job *j, gint64 fitting)
{
	guint at = GPOINTER_TO_UINT(g_hash_table_lookup(told, &fitting));
	struct fitting_event *e;
	char day[16];

	if (at)
		return &((struct fitting_event *)(void *)g->events->data)[at - 1];
	e = add(g, EVENT_JOB, fitting, j->id, j->opened);
	if (!e)
		return NULL;
	g_hash_table_insert(told, g_memdup2(&fitting, sizeof fitting), GUINT_TO_POINTER(g->events->len));
	e->subject = text_of(g, j->name);
	e->result = j->closed != NONE ? g_strdup("closed")
		  : j->paused != NONE ? g_strdup_printf("open, rests since %s", day_words(j->paused, day))
				      : g_strdup("open");
	e->until = j->closed;
	e->who = names_person(g->ask->names, j->who);
	e->remark = text_of(g, j->remark);
	return e;
}

static void
gather_jobs(struct gathering *g)
{
	for (EACH(struct job, j, g->record[RECORD_JOB])) {
		g_autoptr(GHashTable) told = g_hash_table_new_full(g_int64_hash, g_int64_equal, g_free, NULL);

		for (EACH(struct aim, a, g->record[RECORD_AIM])) {
			gint64 of = fitting_of(g, a->task, a->finding);
			struct fitting_event *e = a->job == j->id ? job_event(g, told, j, of) : NULL;
			g_autofree char *words = e ? aim_words(g, a) : NULL, *before = e ? e->seen : NULL;

			if (e)
				e->seen = g_strdup_printf("%s%s%s", before ? before : "", before ? "; " : "", words);
		}
		for (EACH(struct removal, r, g->record[RECORD_REMOVAL]))
			if (r->job == j->id)
				job_event(g, told, j, r->fitting);
	}
}

static void
gather_proofs(struct gathering *g)
{
	for (EACH(struct step, p, g->record[RECORD_STEP])) {
		const struct job *j = find(g, p->job);
		struct fitting_event *e = NULL;

		if (p->kind == STEP_PROOF && (p->done != NONE || p->seen))
			e = add(g, EVENT_PROOF, fitting_of(g, p->task, NONE), p->id,
				p->done != NONE ? p->done : j->closed != NONE ? j->closed : j->opened);
		if (!e)
			continue;
		e->subject = text_of(g, p->text);
		e->result = g_strdup(p->done != NONE ? "seen" : "not seen");
		e->seen = text_of(g, p->seen);
		e->who = names_person(g->ask->names, p->who);
	}
}

/* "5 back, as left 3/8 in: one was cracked" */
static char *
back_words(const struct gathering *g, const struct removal *r)
{
	g_autoptr(GString) out = g_string_new(NULL);

	if (r->back_count != NONE)
		g_string_append_printf(out, "%d back", (int)r->back_count);
	if (r->as_left)
		g_string_append_printf(out, "%sas left %s", out->len ? ", " : "", r->as_left);
	if (r->why)
		g_string_append_printf(out, "%s%s", out->len ? ": " : "", r->why);
	return out->len ? text_of(g, out->str) : NULL;
}

static void
gather_removals(struct gathering *g)
{
	for (EACH(struct removal, r, g->record[RECORD_REMOVAL])) {
		gboolean setting = r->kind == REMOVAL_SETTING, blank = setting && !r->as_found && r->back == NONE;
		struct fitting_event *e = blank ? NULL : add(g, setting ? EVENT_NOTED : EVENT_CAME_OFF, r->fitting, r->id, r->off);
		g_autofree char *count = e && r->count != NONE ? g_strdup_printf("%d ", (int)r->count) : g_strdup("");
		g_autofree char *what = e ? g_strdup_printf("%s%s%s%s", count, r->what, r->size ? " " : "", r->size ? r->size : "")
					  : NULL;

		if (!e)
			continue;
		e->subject = text_of(g, what);
		e->result = g_strdup(r->state == REMOVAL_REUSE ? NULL : word_of(&words_removal_state, r->state));
		e->reading = text_of(g, r->as_found);
		e->until = r->back;
		e->seen = back_words(g, r);
		e->who = names_person(g->ask->names, r->who);
		e->photos = photos_of(g, r->id);
		e->remark = text_of(g, r->remark);
	}
}

enum { SECONDS_A_DAY = 86400 };

static void
note_design(void *user, const struct book_entry *entry, const struct change *c)
{
	struct gathering *g = user;
	const struct fitting *before = c->before, *after = c->after;
	struct fitting_event *e;

	if (c->record != RECORD_FITTING || !after || !after->variant || !find(g, c->id))
		return;
	e = add(g, EVENT_DESIGN, c->id, entry->seq, entry->at / SECONDS_A_DAY);
	if (!e)
		return;
	e->result = g_strdup(after->variant);
	e->before = before && before->variant ? g_strdup_printf("before: %s", before->variant) : NULL;
}

static int
in_order(gconstpointer x, gconstpointer y)
{
	const struct fitting_event *a = x, *b = y;

	if (a->date != b->date)
		return a->date < b->date ? -1 : 1; /* NONE is the least of all */
	if (a->kind != b->kind)
		return a->kind < b->kind ? -1 : 1;
	return (a->id > b->id) - (a->id < b->id);
}

static gboolean
gather(struct gathering *g)
{
	if (!read_records(g))
		return FALSE;
	gather_photos(g);
	gather_parts(g);
	gather_services(g);
	gather_findings(g);
	gather_passed(g);
	gather_jobs(g);
	gather_proofs(g);
	gather_removals(g);
	return gather_readings(g) && (!g->ask->designs || book_each_change(g->b, note_design, g, &g->err));
}

GArray *
book_fitting_history(struct book *b, const struct fitting_history_ask *ask, GError **err)
{
	struct gathering g = { .b = b, .ask = ask };
	gboolean ok;

	g.by_key = g_hash_table_new(g_int64_hash, g_int64_equal);
	g.photos = g_hash_table_new_full(g_int64_hash, g_int64_equal, NULL, free_string);
	g.events = g_array_new(FALSE, FALSE, sizeof(struct fitting_event));
	g_array_set_clear_func(g.events, clear_event);
	ok = gather(&g);
	g_array_sort(g.events, in_order);
	g_hash_table_unref(g.photos);
	g_hash_table_unref(g.by_key);
	for (int r = 0; r < RECORD_COUNT; r++)
		g_clear_pointer(&g.record[r], g_array_unref);
	if (ok)
		return g.events;
	g_array_unref(g.events);
	g_propagate_error(err, g.err);
	return NULL;
}
