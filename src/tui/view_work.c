/* The tasks of one fitting: to choose the one that was done. */
#include "tui/app.h"

#include "base/date.h"
#include "tui/due_story.h"
#include "tui/fitting_story.h"
#include "tui/form.h"
#include "tui/job_view.h"
#include "tui/list.h"
#include "tui/pane.h"

enum { BELOW = 7, STATE_W = 16, DAY_W = 13, WIDE_W = 60 };

struct work_data {
	struct book *book;	/* the app's */
	const struct due_list *due;	/* the app's */
	gint64 fitting;
	struct list list;
};

static const struct due_line *
selected(const struct work_data *d)
{
	const struct row *row = list_row(&d->list);

	return row ? due_find(d->due, row->key) : NULL;
}

static void
open_work(struct app *a, void *data, gint64 subject)
{
	struct work_data *d = data;

	d->due = a->due;
	d->fitting = subject;
	list_init(&d->list);
}

static void
clear_work(void *data)
{
	list_clear(&((struct work_data *)data)->list);
}

static gboolean
load_work(struct app *a, void *data, GError **err)
{
	struct work_data *d = data;

	(void)err;
	d->book = a->book;
	list_begin(&d->list);
	for (int i = 0; i < due_count(d->due); i++) {
		const struct due_line *l = due_at(d->due, i);

		if (l->fitting_id != d->fitting)
			continue;
		if (!d->list.rows->len)
			list_add(&d->list, TRUE, -1, NONE, g_strdup_printf("%s: which work was done?", l->fitting));
		list_add(&d->list, FALSE, i, l->id, g_strdup_printf("%s %s", l->title, l->name));
	}
	list_settle(&d->list);
	return TRUE;
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct work_data *d = data;
	const struct due_line *l = row->heading ? NULL : due_find(d->due, row->key);
	g_autofree char *state = NULL;
	enum style style;
	char day[20];
	int right = line->w - STATE_W;

	(void)is_selected;
	if (!l) {
		area_put(line, 0, 0, STYLE_HEAD, row->text);
		return;
	}
	state = due_state(l, &style);
	area_put_in(line, 0, right, STATE_W, style, state);
	if (line->w >= WIDE_W) {
		right -= DAY_W + 1;
		area_put_in(line, 0, right, DAY_W, style, due_day_words(&l->out, day));
	}
	area_put_in(line, 0, 0, right - 1, style, l->title);
}

static struct panes
parts_of(const void *data, const struct area *a)
{
	(void)data;
	return panes_of(a, a->w / 2, BELOW);
}

static void
draw_work(const void *data, const struct area *a)
{
	const struct work_data *d = data;
	const struct due_line *l = selected(d);
	struct panes p = parts_of(data, a);
	g_autofree char *text = l && p.pane.h ? due_story(d->book, d->due, l) : g_strdup("");

	list_draw(&d->list, &p.list, draw_line, d, " It has no tasks.");
	panes_rule(&p);
	panes_text(&p, text);
}

static gboolean
act_work(struct app *a, void *data, enum act act)
{
	const struct work_data *d = data;
	const struct due_line *l = selected(d);

	if (!l)
		return FALSE;
	if (act == ACT_OPEN) {
		app_page(a, l->label, due_story(d->book, d->due, l));
	} else if (act == ACT_MEASURE) {
		form_open(a, &form_measure, l->fitting_id);
	} else if (act == ACT_JOBS) {
		jobs_for(a, l->id, NONE);
	} else if (act == ACT_DID) {
		gint64 task = l->id;

		app_close(a);	/* done with choosing; data is gone with it */
		form_open(a, &form_did, task);
	} else {
		return FALSE;
	}
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct work_data *)data)->list;
}

const struct view_kind view_work = {
	.where = IN_DUE,
	.size = sizeof(struct work_data),
	.open = open_work,
	.load = load_work,
	.draw = draw_work,
	.act = act_work,
	.list = list_of,
	.parts = parts_of,
	.clear = clear_work,
};
