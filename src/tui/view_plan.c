/* The plan: every task of the boat, how often, and on whose word. */
#include "tui/app.h"

#include "logbook/caution.h"
#include "logbook/plan.h"
#include "logbook/variant.h"
#include "tui/form.h"
#include "tui/list.h"
#include "tui/pane.h"

#include <string.h>

/* Of the list at the width of a common terminal; from WIDE_W on there is room for the standing too. */
enum { BELOW = 7, LIMITS_W = 22, WIDE_W = 100, STANDING_W = 11 };

struct plan_data {
	struct book *book;	/* the app's */
	const struct due_list *due;	/* the app's */
	GArray *tasks, *limits, *fittings;
	struct list list;
};

static const struct task *
at(const struct plan_data *d, int i)
{
	return &((const struct task *)(const void *)d->tasks->data)[i];
}

static const struct task *
selected(const struct plan_data *d)
{
	const struct row *row = d->tasks ? list_row(&d->list) : NULL;

	return row ? at(d, row->index) : NULL;
}

static const struct fitting *
fitting_of(const struct plan_data *d, const struct task *t)
{
	const struct fitting *f = (const void *)d->fittings->data;

	for (guint i = 0; i < d->fittings->len; i++)
		if (f[i].id == t->fitting)
			return &f[i];
	return NULL;
}

static void
open_plan(struct app *a, void *data, gint64 subject)
{
	struct plan_data *d = data;

	(void)subject;
	d->due = a->due;
	list_init(&d->list);
}

static void
clear_records(struct plan_data *d)
{
	g_clear_pointer(&d->tasks, g_array_unref);
	g_clear_pointer(&d->limits, g_array_unref);
	g_clear_pointer(&d->fittings, g_array_unref);
}

static void
clear_plan(void *data)
{
	clear_records(data);
	list_clear(&((struct plan_data *)data)->list);
}

static const char *
path_of(const struct plan_data *d, int i)
{
	const struct fitting *f = fitting_of(d, at(d, i));

	return f ? f->path : "";
}

static int
by_fitting(gconstpointer x, gconstpointer y, gpointer data)
{
	int a = *(const int *)x, b = *(const int *)y, c = strcmp(path_of(data, a), path_of(data, b));

	return c ? c : strcmp(at(data, a)->name, at(data, b)->name);
}

static void
list_all(struct plan_data *d)
{
	g_autoptr(GArray) order = g_array_new(FALSE, FALSE, sizeof(int));
	gint64 fitting = NONE;

	for (int i = 0; i < (int)d->tasks->len; i++)
		g_array_append_val(order, i);
	g_array_sort_with_data(order, by_fitting, d);
	list_begin(&d->list);
	for (guint k = 0; k < order->len; k++) {
		int i = ((const int *)(const void *)order->data)[k];
		const struct fitting *f = fitting_of(d, at(d, i));

		if (at(d, i)->fitting != fitting)
			list_add(&d->list, TRUE, -1, NONE, g_strdup(f ? f->title : "?"));
		fitting = at(d, i)->fitting;
		list_add(&d->list, FALSE, i, at(d, i)->id,
			 g_strdup_printf("%s %s %s", at(d, i)->title, at(d, i)->name, f ? f->title : ""));
	}
	list_settle(&d->list);
}

static gboolean
load_plan(struct app *a, void *data, GError **err)
{
	struct plan_data *d = data, read = { 0 };

	d->book = a->book;
	if (a->boat.id == NONE)
		return TRUE;
	if (!(read.tasks = book_records(a->book, RECORD_TASK, a->boat.id, err))
	    || !(read.limits = book_records(a->book, RECORD_LIMIT, a->boat.id, err))
	    || !(read.fittings = book_records(a->book, RECORD_FITTING, a->boat.id, err))) {
		clear_records(&read);	/* what was read before still shows */
		return FALSE;
	}
	clear_records(d);
	d->tasks = read.tasks;
	d->limits = read.limits;
	d->fittings = read.fittings;
	list_all(d);
	return TRUE;
}

/* "100 h, 12 months" */
static char *
limits_of(const struct plan_data *d, const struct task *t)
{
	const struct limit *m = (const void *)d->limits->data;
	GString *out = g_string_new(NULL);

	for (guint i = 0; i < d->limits->len; i++)
		if (m[i].task == t->id) {
			g_autofree char *words = limit_words(&m[i]);

			g_string_append_printf(out, "%s%s", out->len ? ", " : "", words);
		}
	return g_string_free(out, FALSE);
}

/* What stands in the way of its falling due, in words; NULL: nothing. */
static const char *
rests(const struct plan_data *d, const struct task *t)
{
	const struct fitting *f = fitting_of(d, t);

	if (t->retired == 1)
		return "not wanted";
	if (due_find(d->due, t->id))
		return NULL;
	return f && f->retired == 1 ? "rests: no such fitting" : "rests: another design";
}

/* On whose word the first of its limits stands. */
static const char *
standing_of(const struct plan_data *d, const struct task *t)
{
	const struct limit *m = (const void *)d->limits->data;

	for (guint i = 0; i < d->limits->len; i++)
		if (m[i].task == t->id)
			return word_of(&words_standing, m[i].standing);
	return "";
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct plan_data *d = data;
	const struct task *t = row->index >= 0 ? at(d, row->index) : NULL;
	g_autofree char *limits = t ? limits_of(d, t) : NULL;
	int standing = line->w >= WIDE_W ? STANDING_W : 0, right = line->w - standing - MAX(LIMITS_W, line->w / 3);

	(void)is_selected;
	if (row->heading) {
		area_put(line, 0, 0, STYLE_HEAD, row->text);
		return;
	}
	area_put_in(line, 0, 0, right - 1, STYLE_PLAIN, t->title);
	area_put_in(line, 0, right, line->w - right - standing - !!standing, STYLE_PLAIN, rests(d, t) ? rests(d, t) : limits);
	if (standing)
		area_put(line, 0, line->w - standing, STYLE_PLAIN, standing_of(d, t));
}

/* Every limit with where it comes from, a line each. */
static void
add_limits(GString *out, const struct plan_data *d, const struct task *t)
{
	const struct limit *m = (const void *)d->limits->data;

	for (guint i = 0; i < d->limits->len; i++)
		if (m[i].task == t->id) {
			g_autofree char *words = limit_words(&m[i]), *source = limit_source(&m[i]);

			g_string_append_printf(out, "%s (%s)\n", words, source);
		}
}

/* Where it is done, what must come off first, and how long each takes. */
static void
add_work(GString *out, const struct plan_data *d, const struct task *t)
{
	const struct due_line *line = due_find(d->due, t->id);
	const struct fitting *f = fitting_of(d, t);

	g_string_append_printf(out, "The boat: %s", word_of(&words_workplace, t->place));
	if (line && line->off)
		g_string_append_printf(out, "; first off or open: %s", line->off);
	else if (!line && f && f->needs_off)
		g_string_append_printf(out, "; first off or open: %s", fitting_first_off(f));
	if (t->minutes != NONE)
		g_string_append_printf(out, "; hands on %d min", (int)t->minutes);
	g_string_append_c(out, '\n');
}

static char *
story(const struct plan_data *d, const struct task *t)
{
	GString *out = g_string_new(NULL);
	g_autofree char *caution = caution_words(d->book, t->caution);

	g_string_append_printf(out, "%s (%s)%s%s\n", t->title, t->name, rests(d, t) ? ": " : "", rests(d, t) ? rests(d, t) : "");
	add_limits(out, d, t);
	add_work(out, d, t);
	g_string_append_printf(out, "A failure %s; worn by %s; restarts when: %s\n", word_of(&words_consequence, t->consequence),
			       word_of(&words_mechanism, t->mechanism), word_of(&words_clock_rule, t->rule));
	if (t->part)
		g_string_append_printf(out, "To have at hand: %s\n", t->part);
	if (t->proof)
		g_string_append_printf(out, "Proof: %s\n", t->proof);
	if (caution)
		g_string_append_printf(out, "%s\n", caution);
	return g_string_free(out, FALSE);
}

static struct panes
parts_of(const void *data, const struct area *a)
{
	(void)data;
	return panes_of(a, a->w * 3 / 5, BELOW);
}

static void
draw_plan(const void *data, const struct area *a)
{
	const struct plan_data *d = data;
	struct panes p = parts_of(data, a);
	const struct task *t = selected(d);
	g_autofree char *text = t && p.pane.h ? story(d, t) : g_strdup("");

	list_draw(&d->list, &p.list, draw_line, d, " There is no task: a adds one.");
	panes_rule(&p);
	panes_text(&p, text);
}

static void
retire(struct app *a, const struct task *t)
{
	struct task copy = *t;
	gboolean retired = t->retired != 1;
	g_autofree char *name = g_strdup(t->name);
	GError *err = NULL;

	if (!book_retire_task(a->book, &copy, retired, &err))
		return app_complain(a, err);
	app_say(a, STYLE_STRONG, "%s: %s; u takes that back", name, retired ? "not wanted any more" : "wanted again");
	app_changed(a);
}

static gboolean
act_plan(struct app *a, void *data, enum act act)
{
	struct plan_data *d = data;
	const struct task *t = selected(d);

	if (act == ACT_ADD) {
		form_open(a, &form_task, NONE);
		return TRUE;
	}
	if (!t)
		return FALSE;
	if (act == ACT_OPEN)
		app_page(a, t->name, story(d, t));
	else if (act == ACT_DID)
		form_open(a, &form_did, t->id);
	else if (act == ACT_CHANGE)
		form_open(a, &form_limit, t->id);
	else if (act == ACT_DROP)
		retire(a, t);
	else
		return FALSE;
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct plan_data *)data)->list;
}

const struct view_kind view_plan = {
	.where = IN_PLAN,
	.size = sizeof(struct plan_data),
	.open = open_plan,
	.load = load_plan,
	.draw = draw_plan,
	.act = act_plan,
	.list = list_of,
	.parts = parts_of,
	.clear = clear_plan,
};
