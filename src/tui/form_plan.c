/* Change a task's interval, or add a task of one's own: each wants its source. */
#include "base/amount.h"
#include "base/err.h"
#include "logbook/due.h"
#include "logbook/page.h"
#include "logbook/plan.h"
#include "tui/app.h"
#include "tui/form.h"

#include <string.h>

static const char intervals[] = "100 h, 12 months, 5 years, 3 outings; 12 months/6 months: the second in salt";

/* Manual or owner, as the source begins, when the standing was not said. */
static gint64
standing_of(const struct form *f)
{
	gint64 said = form_word(f, "standing");

	if (said != NONE)
		return said;
	return g_ascii_strncasecmp(form_text(f, "source"), "manual", 6) ? STANDING_OWNER : STANDING_MANUAL;
}

static void
add_source(struct form *f)
{
	form_add(f, "source", "Source", "where the figure comes from: manual p. 41", NULL);
	form_add_choice(f, "standing", "Standing", &words_standing, NONE, TRUE);
}

/* Clear m either way. */
static void
read_limit(struct form *f, struct limit *m)
{
	GError *err = NULL;

	record_init(RECORD_LIMIT, m);
	if (!interval_parse(form_text(f, "every"), m, &err))
		form_wrong(f, "every", &err);
	if (!*form_text(f, "source"))
		form_refuse(f, "source", "wanted: where does the figure come from? manual p. 41");
	m->standing = standing_of(f);
	m->source = form_said(f, "source");
}

static const struct limit *
limit_at(const GArray *all, guint i)
{
	return &((const struct limit *)(const void *)all->data)[i];
}

/* "60 months, after grounding" */
static char *
limits_now(const GArray *all)
{
	GString *out = g_string_new(NULL);

	for (guint i = 0; i < all->len; i++) {
		g_autofree char *words = limit_words(limit_at(all, i));

		g_string_append_printf(out, "%s%s", i ? ", " : "", words);
	}
	return g_string_free(out, FALSE);
}

static gboolean
begin_limit(struct app *a, struct form *f, GError **err)
{
	g_autoptr(GArray) all = book_limits(a->book, f->subject, err);
	struct task t;
	gboolean ok;

	if (!all)
		return FALSE;
	ok = book_record(a->book, RECORD_TASK, f->subject, &t, err);
	if (ok) {
		g_autofree char *now = limits_now(all);

		f->heading = g_strdup_printf("%s. Now: %s. The maker's manual comes before every other source.", t.title,
					     *now ? now : "no interval");
	}
	form_add(f, "every", "Every", intervals, NULL);
	add_source(f);
	record_clear(RECORD_TASK, &t);
	return ok;
}

/* "3 years (manual p. 41) in place of 5 years (published)"; a limit of another kind stands beside it. */
static char *
old_and_new(const GArray *all, const struct limit *m)
{
	g_autofree char *words = limit_words(m), *source = limit_source(m);

	for (guint i = 0; i < all->len; i++)
		if (limit_at(all, i)->kind == m->kind) {
			g_autofree char *was = limit_words(limit_at(all, i));

			return g_strdup_printf("%s (%s) in place of %s (%s).", words, source, was,
					       word_of(&words_standing, limit_at(all, i)->standing));
		}
	return g_strdup_printf("%s (%s)%s.", words, source, all->len ? " besides what holds now" : "");
}

static char *
check_limit(struct app *a, struct form *f)
{
	g_autoptr(GArray) all = book_limits(a->book, f->subject, NULL);
	struct limit m;
	char *sum = NULL;

	read_limit(f, &m);
	if (all && !form_field(f, "every")->wrong && m.source)
		sum = old_and_new(all, &m);
	record_clear(RECORD_LIMIT, &m);
	return sum;
}

static gboolean
save_limit(struct app *a, struct form *f, GError **err)
{
	struct limit m;
	struct task t;
	gboolean ok;

	read_limit(f, &m);
	ok = book_record(a->book, RECORD_TASK, f->subject, &t, err) && book_set_limits(a->book, &t, &m, 1, err);
	if (ok)
		app_say(a, STYLE_STRONG, "%s: %s from now on; u takes it back", t.name, form_text(f, "every"));
	record_clear(RECORD_TASK, &t);
	record_clear(RECORD_LIMIT, &m);
	return ok;
}

const struct form_kind form_limit = {
	.name = "limit", .title = "How often", .button = "Enter records it",
	.begin = begin_limit, .check = check_limit, .save = save_limit,
};

static gboolean
begin_task(struct app *a, struct form *f, GError **err)
{
	(void)a, (void)err;
	form_add(f, "title", "What to do", "Clean the bilge", NULL);
	form_add(f, "name", "Short name", "bilge.clean", NULL);
	form_add(f, "fitting", "On what", "a fitting: a path, or words that only one has", NULL);
	form_add(f, "every", "Every", intervals, NULL);
	add_source(f);
	form_add_choice(f, "verb", "Kind of work", &words_verb, word_index(&words_verb, "inspect"), FALSE);
	form_add_choice(f, "consequence", "A failure", &words_consequence, COST_COSTS, FALSE);
	form_add_choice(f, "place", "Boat must be", &words_workplace, WORK_ANYWHERE, FALSE);
	form_add_choice(f, "mechanism", "Worn by", &words_mechanism, MECH_NONE, FALSE);
	form_add(f, "minutes", "Minutes", "hands on; empty: not known", NULL);
	form_add(f, "proof", "Proof", "what proves that it was done", NULL);
	return TRUE;
}

static gboolean
is_taken(struct app *a, const char *name)
{
	struct task t;
	gboolean taken = book_find_task(a->book, a->boat.id, name, &t, NULL) && !strcmp(t.name, name);

	record_clear(RECORD_TASK, &t);
	return taken;
}

/* Clear t and m either way. */
static void
read_task(struct app *a, struct form *f, struct task *t, struct limit *m)
{
	const char *fitting = form_text(f, "fitting"), *minutes = form_text(f, "minutes");
	struct fitting found;
	GError *err = NULL;

	read_limit(f, m);
	record_init(RECORD_TASK, t);
	record_init(RECORD_FITTING, &found);
	t->boat = a->boat.id;
	t->title = g_strdup(form_text(f, "title"));
	t->name = g_strdup(form_text(f, "name"));
	t->verb = form_word(f, "verb");
	t->place = form_word(f, "place");
	t->mechanism = form_word(f, "mechanism");
	t->consequence = form_word(f, "consequence");
	t->rule = CLOCK_DONE;
	t->proof = form_said(f, "proof");
	if (!*t->title)
		form_refuse(f, "title", "what is to be done?");
	if (!*t->name)
		form_refuse(f, "name", "a name to call it by: bilge.clean");
	else if (is_taken(a, t->name))
		form_refuse(f, "name", "the plan has a task of that name already");
	if (*minutes && !count_parse(minutes, &t->minutes, &err))
		form_wrong(f, "minutes", &err);
	if (!*fitting)
		form_refuse(f, "fitting", "on what is it done? 3 lists the boat's fittings");
	else if (book_find_fitting(a->book, a->boat.id, fitting, &found, &err))
		t->fitting = found.id;
	form_wrong(f, "fitting", &err);
	record_clear(RECORD_FITTING, &found);
}

static char *
check_task(struct app *a, struct form *f)
{
	g_autofree char *every = NULL;
	struct task t;
	struct limit m;
	char *sum;

	read_task(a, f, &t, &m);
	if (!form_field(f, "every")->wrong)
		every = limit_words(&m);
	sum = g_strdup_printf("%s: %s; a failure %s.", *t.title ? t.title : "?", every ? every : "how often?",
			      word_of(&words_consequence, t.consequence));
	record_clear(RECORD_TASK, &t);
	record_clear(RECORD_LIMIT, &m);
	return sum;
}

static gboolean
save_task(struct app *a, struct form *f, GError **err)
{
	struct task t;
	struct limit m;
	gboolean ok;

	read_task(a, f, &t, &m);
	ok = book_add_task(a->book, &t, &m, 1, err);
	if (ok)
		app_say(a, STYLE_STRONG, "%s is part of the plan; u takes it back", t.name);
	record_clear(RECORD_TASK, &t);
	record_clear(RECORD_LIMIT, &m);
	return ok;
}

const struct form_kind form_task = {
	.name = "task", .title = "A task of your own", .button = "Enter adds it",
	.begin = begin_task, .check = check_task, .save = save_task,
};
