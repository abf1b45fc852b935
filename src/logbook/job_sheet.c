/* All of a job as it stands, and what is left of it. */
#include "logbook/job_inside.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/removal_parse.h"
#include "logbook/variant.h"

#include <string.h>

const char *
aim_state_words(enum aim_state state)
{
	static const char *const words[] = { "open", "done, but not proved", "done", "found wanting", "left undone" };

	return words[state];
}

static void
clear_aim(gpointer p)
{
	struct job_aim *a = p;

	record_clear(RECORD_AIM, &a->aim);
	g_free(a->name);
	g_free(a->title);
}

static void
clear_open(gpointer p)
{
	g_free(((struct job_open *)p)->words);
}

static void
clear_offer(gpointer p)
{
	struct job_offer *o = p;

	g_free(o->what);
	g_free(o->size);
	g_free(o->metric);
}

static GArray *
new_array(gsize size, GDestroyNotify clear)
{
	GArray *a = g_array_new(FALSE, TRUE, (guint)size);

	g_array_set_clear_func(a, clear);
	return a;
}

void
job_sheet_free(struct job_sheet *s)
{
	if (!s)
		return;
	record_clear(RECORD_JOB, &s->job);
	g_array_unref(s->aims);
	g_clear_pointer(&s->steps, g_array_unref);
	g_clear_pointer(&s->removals, g_array_unref);
	g_array_unref(s->open);
	g_array_unref(s->offers);
	g_ptr_array_unref(s->rechecks);
	g_ptr_array_unref(s->while_open);
	g_free(s->cautions);
	g_free(s);
}

static const struct step *
step_at(const struct job_sheet *s, guint i)
{
	return &((const struct step *)(const void *)s->steps->data)[i];
}

static const struct removal *
removal_at(const struct job_sheet *s, guint i)
{
	return &((const struct removal *)(const void *)s->removals->data)[i];
}

static const struct job_aim *
aim_at(const struct job_sheet *s, guint i)
{
	return &((const struct job_aim *)(const void *)s->aims->data)[i];
}

/* ---- aims ---- */

static gboolean
read_task_aim(struct book *b, struct job_sheet *s, struct job_aim *a, GError **err)
{
	struct task t;
	struct service did;
	gboolean ok;

	record_init(RECORD_TASK, &t);
	record_init(RECORD_SERVICE, &did);
	ok = row_get(b->db, RECORD_TASK, a->aim.task, &t, err)
	  && (a->aim.service == NONE || row_get(b->db, RECORD_SERVICE, a->aim.service, &did, err));
	a->name = g_steal_pointer(&t.name);
	a->title = g_steal_pointer(&t.title);
	a->fitting = t.fitting;
	a->consequence = t.consequence;
	if (a->aim.undone != NONE)
		a->state = AIM_UNDONE;
	else if (a->aim.service != NONE)
		a->state = did.outcome == OUTCOME_NOT_SEEN ? AIM_UNPROVED : did.outcome == OUTCOME_BAD ? AIM_BAD : AIM_DONE;
	for (guint i = 0; i < s->steps->len; i++) {
		const struct step *p = step_at(s, i);

		if (p->kind != STEP_PROOF || p->task != a->aim.task)
			continue;
		a->proofs++;
		a->proved += p->done != NONE;
	}
	record_clear(RECORD_TASK, &t);
	record_clear(RECORD_SERVICE, &did);
	return ok;
}

static gboolean
read_finding_aim(struct book *b, struct job_aim *a, GError **err)
{
	struct finding f;
	gboolean ok;

	record_init(RECORD_FINDING, &f);
	ok = row_get(b->db, RECORD_FINDING, a->aim.finding, &f, err);
	a->name = book_key_text(a->aim.finding);
	a->title = g_steal_pointer(&f.words);
	a->fitting = f.fitting;
	a->level = f.level;
	a->state = f.mended != NONE ? AIM_DONE : a->aim.undone != NONE ? AIM_UNDONE : AIM_OPEN;
	record_clear(RECORD_FINDING, &f);
	return ok;
}

static gboolean
read_aims(struct book *b, struct job_sheet *s, GError **err)
{
	g_autoptr(GArray) aims = job_aims(b, s->job.id, err);

	for (guint i = 0; aims && i < aims->len; i++) {
		struct aim *from = &((struct aim *)(void *)aims->data)[i];
		struct job_aim a = { .aim = *from, .fitting = NONE, .consequence = NONE, .level = NONE };
		gboolean ok;

		record_init(RECORD_AIM, from); /* its texts are a's now */
		ok = a.aim.task != NONE ? read_task_aim(b, s, &a, err) : read_finding_aim(b, &a, err);
		g_array_append_val(s->aims, a);
		if (!ok)
			return FALSE;
	}
	return aims != NULL;
}

/* ---- what is left ---- */

static void
add_open(struct job_sheet *s, enum job_left what, gint64 id, gint64 no, char *words)
{
	struct job_open o = { what, id, no, words };

	g_array_append_val(s->open, o);
}

/* The last thing that came off goes back first. */
static void
list_removals(struct job_sheet *s)
{
	for (guint i = s->removals->len; i-- > 0;) {
		const struct removal *r = removal_at(s, i);
		g_autofree char *words = removal_words(r);

		if (r->back == NONE)
			add_open(s, LEFT_REMOVAL, r->id, r->no,
				 g_strdup_printf(
					 "line %d, %s%s%s: %s", (int)r->no, words, r->tray ? ", " : "", r->tray ? r->tray : "",
					 r->kind != REMOVAL_SETTING ? r->state == REMOVAL_EXTRA ? "left over" : "not put back"
					 : r->as_found              ? "how it is left is not written down"
								    : "how it stands is not written down"));
	}
}

static gboolean
is_undone(const struct job_sheet *s, gint64 task)
{
	for (guint i = 0; task != NONE && i < s->aims->len; i++)
		if (aim_at(s, i)->aim.task == task)
			return aim_at(s, i)->state == AIM_UNDONE;
	return FALSE;
}

/* What is only done where something is found bad is nobody's to tick. */
static void
list_steps(struct job_sheet *s, gint64 kind)
{
	for (guint i = 0; i < s->steps->len; i++) {
		const struct step *p = step_at(s, i);

		if (p->kind != kind || p->done != NONE || p->seen || p->on_condition == 1 || is_undone(s, p->task))
			continue;
		add_open(s, kind == STEP_PROOF ? LEFT_PROOF : LEFT_STEP, p->id, p->no,
			 g_strdup_printf("step %d, %s%s", (int)p->no, kind == STEP_PROOF ? "proof: " : "", p->text));
	}
}

static void
list_aims(struct job_sheet *s)
{
	for (guint i = 0; i < s->aims->len; i++) {
		const struct job_aim *a = aim_at(s, i);

		if (a->state == AIM_OPEN || a->state == AIM_UNPROVED)
			add_open(s, LEFT_AIM, a->aim.id, NONE,
				 g_strdup_printf("%s, %s: %s", a->name, a->title, aim_state_words(a->state)));
	}
}

/* What the boat must be in before the start is nobody's next step once work goes on. */
static gboolean
is_begun(const struct job_sheet *s)
{
	for (guint i = 0; i < s->steps->len; i++)
		if ((step_at(s, i)->kind == STEP_STEP || step_at(s, i)->kind == STEP_PROOF) && step_at(s, i)->done != NONE)
			return TRUE;
	return FALSE;
}

const struct step *
job_next_step(const struct job_sheet *s)
{
	gboolean begun = is_begun(s);

	for (guint i = 0; i < s->steps->len; i++) {
		const struct step *p = step_at(s, i);

		if ((p->kind == STEP_STEP || p->kind == STEP_PROOF || (p->kind == STEP_STATE && !begun)) && p->done == NONE
		    && !p->seen && !is_undone(s, p->task))
			return p;
	}
	return NULL;
}

int
job_off_count(const struct job_sheet *s)
{
	int n = 0;

	for (guint i = 0; i < s->removals->len; i++)
		n += removal_at(s, i)->back == NONE && removal_at(s, i)->kind != REMOVAL_SETTING;
	return n;
}

/* ---- what the catalogue and the due list say of it ---- */

static void
add_words(GHashTable *seen, GString *out, const char *words)
{
	g_auto(GStrv) word = g_strsplit(words ? words : "", " ", -1);

	for (int i = 0; word[i]; i++)
		if (*word[i] && g_hash_table_add(seen, g_strdup(word[i])))
			g_string_append_printf(out, "%s%s", out->len ? " " : "", word[i]);
}

static gboolean
is_aim(const struct job_sheet *s, gint64 task)
{
	for (guint i = 0; i < s->aims->len; i++)
		if (aim_at(s, i)->aim.task == task)
			return TRUE;
	return FALSE;
}

static gboolean
is_worth_it(const struct due_line *d)
{
	switch (d->out.when) {
	case OPP_NOW:
	case OPP_BEFORE_LAUNCH:
	case OPP_FIRST_DAY:
	case OPP_MID_SEASON:
	case OPP_THIS_SEASON:
	case OPP_LAY_UP:
	case OPP_NEXT_SPRING:
	case OPP_NO_RECORD:
		return TRUE;
	case OPP_LATER:
		return d->out.share >= .5;
	case OPP_EACH_OUTING:
	case OPP_ON_CONDITION:
	case OPPORTUNITY_COUNT:
		break;
	}
	return FALSE;
}

static const char *
needs_off(const struct job_opening *o, const char *path)
{
	for (guint i = 0; i < o->fittings->len; i++) {
		const struct fitting *f = &((const struct fitting *)(const void *)o->fittings->data)[i];

		if (!strcmp(f->path, path))
			return fitting_first_off(f);
	}
	return NULL;
}

/* Minutes and cautions of its aims, and what else is behind the same opening. */
static void
take_due(struct job_sheet *s, const struct due_list *l, const struct job_opening *o, GHashTable *seen, GString *cautions)
{
	for (int i = 0; i < due_count(l); i++) {
		const struct due_line *d = due_at(l, i);
		const char *off = needs_off(o, d->path);

		if (is_aim(s, d->id)) {
			s->hand_minutes += d->minutes == NONE ? 0 : d->minutes;
			add_words(seen, cautions, d->caution);
		} else if (off && g_hash_table_contains(o->paths, off) && is_worth_it(d) && !happening_is_recheck(d)) {
			g_autofree char *minutes =
				d->minutes == NONE ? g_strdup("") : g_strdup_printf(" (%d min)", (int)d->minutes);

			g_ptr_array_add(s->while_open, g_strdup_printf("%s, %s%s", d->name, d->title, minutes));
		}
	}
}

/* A recheck of the port drive is of a job that does something on the port side. */
static gboolean
is_on_its_side(const struct job_sheet *s, const struct due_line *d, const char *name)
{
	gsize more = strlen(d->name) - strlen(name);

	for (guint i = 0; more && i < s->aims->len; i++)
		if (!strncmp(aim_at(s, i)->name, d->name, more))
			return TRUE;
	return !more;
}

static void
take_rechecks(struct job_sheet *s, const struct due_list *l, const GArray *engines, const struct job_template *t)
{
	g_auto(GStrv) name = g_strsplit(t->tasks, " ", -1);

	for (int i = 0; name[i]; i++) {
		g_autoptr(GArray) at = job_tasks_named(l, engines, name[i], NULL);

		for (guint k = 0; k < at->len; k++) {
			const struct due_line *d = due_at(l, g_array_index(at, int, k));

			if (happening_is_recheck(d) && !is_aim(s, d->id) && is_on_its_side(s, d, name[i])
			    && !g_ptr_array_find_with_equal_func(s->rechecks, d->name, g_str_equal, NULL))
				g_ptr_array_add(s->rechecks, g_strdup(d->name));
		}
	}
}

static void
take_template(struct job_sheet *s, const struct job_has *has, const struct job_template *t)
{
	for (guint i = 0; i < t->lines->len; i++) {
		const struct template_line *l = &((const struct template_line *)(const void *)t->lines->data)[i];

		if (l->kind == TEMPLATE_OFF && job_has_line(has, l))
			job_add_offer(s, l);
	}
}

static gboolean
read_knowledge(struct book *b, struct job_sheet *s, const struct job_opening *o, struct due_list *l, GError **err)
{
	struct job_templates *t = book_job_templates(b, err);
	g_autoptr(GPtrArray) of = t ? job_templates_of(t, &s->job) : NULL;
	g_autoptr(GArray) engines = t ? book_records(b, RECORD_ENGINE, s->job.boat, err) : NULL;
	g_autoptr(GHashTable) seen = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
	GString *cautions = g_string_new(NULL);
	struct job_has has = { 0 };
	gboolean ok = engines && job_has_read(b, s->job.boat, &has, err);

	/* Where no petrol is aboard nobody is warned of its vapour. */
	if (ok && !has.vapour)
		g_hash_table_add(seen, g_strdup("fuel-vapour"));
	for (guint i = 0; ok && i < of->len; i++) {
		const struct job_template *one = of->pdata[i];

		take_template(s, &has, one);
		take_rechecks(s, l, engines, one);
		add_words(seen, cautions, one->cautions);
	}
	job_take_offers(s, job_sides(o));
	if (ok)
		take_due(s, l, o, seen, cautions);
	s->cautions = g_string_free(cautions, FALSE);
	job_has_clear(&has);
	job_templates_free(t);
	return ok;
}

static gboolean
read_around(struct book *b, struct job_sheet *s, GError **err)
{
	const struct due_ask ask = { b->who.today, NONE };
	struct due_list *l = due_list_new();
	struct job_opening o;
	struct boat boat;
	gboolean ok;

	record_init(RECORD_BOAT, &boat);
	ok = row_get(b->db, RECORD_BOAT, s->job.boat, &boat, err) && book_due(b, &boat, &ask, l, err);
	if (ok) {
		ok = job_opening_read(b, &s->job, &o, err) && read_knowledge(b, s, &o, l, err);
		s->access_minutes = o.minutes;
		job_opening_clear(&o);
	}
	record_clear(RECORD_BOAT, &boat);
	due_list_free(l);
	return ok;
}

struct job_sheet *
book_job_sheet(struct book *b, const struct job *job, GError **err)
{
	struct job_sheet *s = g_new0(struct job_sheet, 1);

	record_init(RECORD_JOB, &s->job);
	s->aims = new_array(sizeof(struct job_aim), clear_aim);
	s->open = new_array(sizeof(struct job_open), clear_open);
	s->offers = new_array(sizeof(struct job_offer), clear_offer);
	s->rechecks = g_ptr_array_new_with_free_func(g_free);
	s->while_open = g_ptr_array_new_with_free_func(g_free);
	s->steps = row_get(b->db, RECORD_JOB, job->id, &s->job, err) ? job_steps(b, job->id, err) : NULL;
	s->removals = s->steps ? job_removals(b, job->id, err) : NULL;
	if (!s->removals || !read_aims(b, s, err) || !read_around(b, s, err)) {
		job_sheet_free(s);
		return NULL;
	}
	list_removals(s);
	list_steps(s, STEP_STEP);
	list_steps(s, STEP_PROOF);
	list_aims(s);
	return s;
}
