/* What a filled sheet would do, line by line, before anything of it is taken. */
#include "base/err.h"
#include "tui/list.h"
#include "tui/pane.h"
#include "tui/yard_page.h"

#include <string.h>

/* Of the words of the selected line below. */
enum { BELOW = 7 };

struct read_data {
	struct yard_read_form form;	/* owned: path, also, variant; a dry run */
	struct yard_said said;
	char *head;
	struct list list;
};

static void
open_read(struct app *a, void *data, gint64 subject)
{
	(void)a, (void)subject;
	list_init(&((struct read_data *)data)->list);
}

static void
clear_read(void *data)
{
	struct read_data *d = data;

	g_free((char *)(guintptr)d->form.path);
	g_strfreev(d->form.also);
	g_strfreev(d->form.variant);
	yard_said_clear(&d->said);
	g_free(d->head);
	list_clear(&d->list);
}

static const struct yard_took *
at(const struct yard_said *s, guint i)
{
	return &((const struct yard_took *)(const void *)s->lines->data)[i];
}

static void
add_rows(struct read_data *d, enum yard_state state, const char *heading)
{
	if (d->said.count[state])
		list_add(&d->list, TRUE, -1, NONE, g_strdup_printf("%s: %d", heading, d->said.count[state]));
	for (guint i = 0; i < d->said.lines->len; i++)
		if (at(&d->said, i)->state == state)
			list_add(&d->list, FALSE, (int)i, (gint64)i, g_strdup(at(&d->said, i)->words));
}

/* What needs a look comes first. */
static void
show_said(struct read_data *d)
{
	g_autofree char *name = g_path_get_basename(d->form.path), *costs = yard_said_costs(&d->said);
	int taken = d->said.count[YARD_TAKEN];

	g_free(d->head);
	d->head = taken ? g_strdup_printf("A dry run, nothing is kept yet: t takes %d %s%s%s. %s", taken,
					  taken == 1 ? "line" : "lines", *costs ? ", " : "", costs, name)
			: g_strdup_printf("A dry run: there is nothing to take. %s", name);
	list_begin(&d->list);
	add_rows(d, YARD_REFUSED, "REFUSED");
	add_rows(d, YARD_TAKEN, "WILL BE TAKEN");
	add_rows(d, YARD_AS_BEFORE, "READ BEFORE, AND AS IT WAS");
	add_rows(d, YARD_UNANSWERED, "WITHOUT AN ANSWER");
	list_settle(&d->list);
}

static enum style
style_of(enum yard_state state)
{
	switch (state) {
	case YARD_REFUSED:
		return STYLE_PAST;
	case YARD_TAKEN:
		return STYLE_STRONG;
	case YARD_AS_BEFORE:
	case YARD_UNANSWERED:
	case YARD_STATES:
		break;
	}
	return STYLE_PLAIN;
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct read_data *d = data;

	area_put(line, 0, 0,
		 row->heading  ? STYLE_HEAD
		 : is_selected ? STYLE_SELECTED
			       : style_of(at(&d->said, (guint)row->index)->state),
		 row->text);
}

/* Below the head, which may be two lines long. */
static struct panes
parts_of(const void *data, const struct area *a)
{
	int head = a->w < 100 ? 2 : 1;
	struct area rest = area_part(a, head, 0, a->h - head, a->w);

	(void)data;
	return panes_of(&rest, a->w * 3 / 5, BELOW);
}

static void
draw_read(const void *data, const struct area *a)
{
	const struct read_data *d = data;
	const struct row *row = d->said.lines ? list_row(&d->list) : NULL;
	struct panes p = parts_of(data, a);
	struct area head = area_part(a, 0, 1, p.list.y - a->y, a->w - 2);

	area_wrap(&head, 0, 0, STYLE_STRONG, d->head ? d->head : "");
	list_draw(&d->list, &p.list, draw_line, d, " The file has no line.");
	panes_rule(&p);
	panes_text(&p, row ? at(&d->said, (guint)row->index)->words : "");
}

static gboolean
same(const struct yard_said *x, const struct yard_said *y)
{
	gboolean same = x->lines->len == y->lines->len;

	for (guint i = 0; same && i < x->lines->len; i++)
		same = at(x, i)->state == at(y, i)->state && !g_strcmp0(at(x, i)->words, at(y, i)->words);
	return same;
}

/* The file or the logbook may be another than when the page was made: then the page is made anew, and nothing is taken.  TRUE:
 * all is as it was shown. */
static gboolean
still_so(struct app *a, struct read_data *d, GError **err)
{
	struct yard_said now = { 0 }, was;

	if (!book_yard_read(a->book, &a->boat, &d->form, &now, err)) {
		yard_said_clear(&now);
		return FALSE;
	}
	was = d->said;
	d->said = now;
	if (!same(&was, &now)) {
		show_said(d);
		err_set(err, ERR_CONFLICT, "the file or the logbook is another by now: this is how it would be taken");
	}
	yard_said_clear(&was);
	return *err == NULL;
}

static void
take(struct app *a, struct read_data *d)
{
	struct yard_read_form form = d->form;
	struct yard_said said = { 0 };
	GError *err = NULL;
	int refused, taken;
	gboolean ok;

	if (!still_so(a, d, &err))
		return app_complain(a, err);
	if (!d->said.count[YARD_TAKEN])
		return app_say(a, STYLE_PLAIN, "there is nothing to take");
	form.dry_run = FALSE;
	ok = book_yard_read(a->book, &a->boat, &form, &said, &err);
	taken = said.count[YARD_TAKEN];
	refused = said.count[YARD_REFUSED];
	yard_said_clear(&said);
	if (!ok)
		return app_complain(a, err);
	app_say(a, refused ? STYLE_PAST : STYLE_STRONG, "%d %s taken; u takes %s back%s", taken, taken == 1 ? "line" : "lines",
		taken == 1 ? "it" : "them", refused ? "; what was refused is not in the log" : "");
	app_close(a);
	app_changed(a);
}

static gboolean
act_read(struct app *a, void *data, enum act act)
{
	struct read_data *d = data;
	const struct row *row = d->said.lines ? list_row(&d->list) : NULL;

	if (act == ACT_TAKE)
		take(a, d);
	else if (act == ACT_YARD)
		app_close(a);
	else if (act == ACT_OPEN && row)
		app_page(a, "What would be taken of this line", g_strdup(at(&d->said, (guint)row->index)->words));
	else
		return FALSE;
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct read_data *)data)->list;
}

static const struct view_kind view_yard_read = {
	.where = IN_YARD_READ,
	.size = sizeof(struct read_data),
	.open = open_read,
	.draw = draw_read,
	.act = act_read,
	.list = list_of,
	.parts = parts_of,
	.clear = clear_read,
};

gboolean
yard_read_show(struct app *a, const struct yard_read_form *form, GError **err)
{
	int depth = a->depth;
	struct read_data *d;

	app_open(a, &view_yard_read, NONE);
	if (a->depth == depth)
		return err_set(err, ERR_USE, "too many pages lie upon each other: Esc, and q closes one");
	d = app_data(a);
	d->form = *form;
	d->form.dry_run = TRUE;
	d->form.path = g_strdup(form->path);
	d->form.also = g_strdupv(form->also);
	d->form.variant = g_strdupv(form->variant);
	if (!book_yard_read(a->book, &a->boat, &d->form, &d->said, err)) {
		app_close(a);
		return FALSE;
	}
	show_said(d);
	return TRUE;
}
