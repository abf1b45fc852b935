/* Home: the season strip, what is due and when to do it, and why. */
#include "tui/app.h"

#include "base/date.h"
#include "base/text.h"
#include "tui/due_story.h"
#include "tui/due_strip.h"
#include "tui/form.h"
#include "tui/job_view.h"
#include "tui/list.h"
#include "tui/pane.h"

#include <math.h>
#include <string.h>

enum { BELOW = 6, DAY_COLUMNS = 13, COST_COLUMNS = 9, SHARE_COLUMNS = 18 };

struct due_data {
	struct book *book;	/* the app's */
	const struct due_list *due;	/* the app's */
	struct strip strip;
	struct list list;
	gboolean no_book;
};

static void
open_due(struct app *a, void *data, gint64 subject)
{
	struct due_data *d = data;

	(void)subject;
	d->due = a->due;
	list_init(&d->list);
}

static void
clear_due(void *data)
{
	list_clear(&((struct due_data *)data)->list);
}

static void
add_group(struct due_data *d, int from, int to)
{
	g_autofree char *title = due_group_title(d->due, from, to), *sum = due_group_sum(d->due, from, to);
	gboolean by_access = due_at(d->due, from)->out.when != OPP_NO_RECORD;
	int access = -1;

	list_add(&d->list, TRUE, from, NONE, g_strdup_printf("%s: %s", title, sum));
	for (int i = from; i < to; i++) {
		const struct due_line *line = due_at(d->due, i);

		if (by_access && line->access != access) {
			g_autofree char *first = due_access_words(d->due, i);

			list_add(&d->list, TRUE, -1, NONE, g_strdup_printf("  %s", first));
		}
		access = line->access;
		list_add(&d->list, FALSE, i, line->id, g_strdup_printf("%s %s", line->label, line->name));
	}
}

/* Groups in the order of time, but what nobody knows comes before what is not for this season. */
static int
part_of(enum opportunity when)
{
	return when == OPP_NO_RECORD ? 1 : when <= OPP_LAY_UP ? 0 : 2;
}

static void
add_groups(struct due_data *d, int part)
{
	int n = due_count(d->due), to;

	for (int from = 0; from < n; from = to) {
		to = due_group_end(d->due, from);
		if (part_of(due_at(d->due, from)->out.when) == part)
			add_group(d, from, to);
	}
}

static gboolean
load_due(struct app *a, void *data, GError **err)
{
	struct due_data *d = data;

	(void)err;
	d->book = a->book;
	d->no_book = a->boat.id == NONE;
	list_begin(&d->list);
	for (int part = 0; part < 3 && !d->no_book; part++)
		add_groups(d, part);
	list_settle(&d->list);
	if (!d->no_book)
		strip_fill(&d->strip, &a->boat, d->due, app_today(a));
	return TRUE;
}

static const struct due_line *
selected(const struct due_data *d)
{
	const struct row *row = list_row(&d->list);

	return row ? due_at(d->due, row->index) : NULL;
}

static enum style
style_of(const struct due_out *out)
{
	return out->past ? STYLE_PAST : out->when <= OPP_MID_SEASON ? STYLE_SOON : STYLE_PLAIN;
}

/* When it is due, always as a word or a day. */
static const char *
day_of(const struct due_out *out, char buf[20])
{
	if (out->past)
		return "past due";
	if (out->due == NONE && out->when == OPP_NO_RECORD)
		return "no record";
	return due_day_words(out, buf);
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct due_data *d = data;
	const struct due_line *l = row->index >= 0 ? due_at(d->due, row->index) : NULL;
	enum style style;
	int x = line->w, share;
	char day[20];

	if (row->heading) {
		area_put(line, 0, 0, row->text[0] == ' ' ? STYLE_PLAIN : STYLE_HEAD, row->text);
		return;
	}
	style = is_selected ? STYLE_SELECTED : style_of(&l->out);
	share = line->w >= 70 ? SHARE_COLUMNS : 0;
	x -= share;
	if (share && l->out.when != OPP_NO_RECORD)
		area_share(line, 0, x, share, style, l->out.share);
	x -= DAY_COLUMNS;
	area_put_in(line, 0, x, DAY_COLUMNS, style, day_of(&l->out, day));
	if (line->w >= 60) {
		x -= COST_COLUMNS;
		area_put_in(line, 0, x, COST_COLUMNS, style, word_of(&words_consequence, l->in.consequence));
	}
	if (line->w >= 100) {
		g_autoptr(GString) limits = g_string_new(NULL);

		due_add_limits(limits, l);
		x -= 17;
		area_put_in(line, 0, x, 16, style, limits->str);
	}
	area_put_in(line, 0, 0, x - 1, style, l->label);
}

/* Below the strip. */
static struct panes
parts_of(const void *data, const struct area *a)
{
	int top = STRIP_ROWS + (a->h >= PANE_BELOW_H);
	struct area rest = area_part(a, top, 0, a->h - top, a->w);

	(void)data;
	return panes_of(&rest, MIN(a->w * 3 / 5, 130), MAX(BELOW, a->h / 4));
}

static void
draw_due(const void *data, const struct area *a)
{
	const struct due_data *d = data;
	const struct due_line *l = d->no_book ? NULL : selected(d);
	struct panes p = parts_of(data, a);
	g_autofree char *text = l && p.pane.h ? due_story(d->book, d->due, l) : g_strdup("");

	if (d->no_book) {
		area_wrap(a, 2, 1, STYLE_PLAIN, " There is no logbook here yet. Enter makes one; q ends the program.");
		area_cursor(a, 2, 1);
		return;
	}
	strip_draw(&d->strip, a, 0);
	list_draw(&d->list, &p.list, draw_line, d, "Nothing is due.");
	panes_rule(&p);
	panes_text(&p, text);
}

static gboolean
act_due(struct app *a, void *data, enum act act)
{
	const struct due_data *d = data;
	const struct due_line *l = d->no_book ? NULL : selected(d);

	if (d->no_book && act == ACT_OPEN) {
		form_open(a, &form_new, NONE);
		return TRUE;
	}
	if (!l)
		return FALSE;
	if (act == ACT_OPEN)
		app_page(a, l->label, due_story(d->book, d->due, l));
	else if (act == ACT_DID)
		form_open(a, &form_did, l->id);
	else if (act == ACT_MEASURE)
		form_open(a, &form_measure, l->fitting_id);
	else if (act == ACT_FOUND)
		form_open(a, &form_found, l->fitting_id);
	else if (act == ACT_JOBS)
		jobs_for(a, l->id, NONE);
	else
		return FALSE;
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct due_data *)data)->list;
}

const struct view_kind view_due = {
	.where = IN_DUE,
	.size = sizeof(struct due_data),
	.open = open_due,
	.load = load_due,
	.draw = draw_due,
	.act = act_due,
	.list = list_of,
	.parts = parts_of,
	.clear = clear_due,
};
