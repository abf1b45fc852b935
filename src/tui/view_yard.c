/* The sheets handed to a yard, the newest first, and how far each is answered. */
#include "base/date.h"
#include "tui/form.h"
#include "tui/list.h"
#include "tui/pane.h"
#include "tui/yard_page.h"

/* Of the sheet's lines below; of the day; from which width on the owner's lines are told. */
enum { BELOW = 9, DAY_W = 11, OWNERS_FROM_W = 44 };

struct yard_data {
	GArray *sheets;	/* struct yard_sheet */
	GArray *lines;	/* struct yard_shown, of all of them */
	struct list list;
};

static const struct yard_sheet *
at(const struct yard_data *d, int i)
{
	return &((const struct yard_sheet *)(const void *)d->sheets->data)[i];
}

static void
open_yard(struct app *a, void *data, gint64 subject)
{
	struct yard_data *d = data;

	(void)a;
	(void)subject;
	list_init(&d->list);
}

static void
let_go(struct yard_data *d)
{
	g_clear_pointer(&d->sheets, g_array_unref);
	g_clear_pointer(&d->lines, g_array_unref);
}

static void
clear_yard(void *data)
{
	struct yard_data *d = data;

	let_go(d);
	list_clear(&d->list);
}

static gboolean
load_yard(struct app *a, void *data, GError **err)
{
	struct yard_data *d = data;

	list_begin(&d->list);
	let_go(d);
	if (a->boat.id == NONE)
		return TRUE;
	if (!(d->lines = book_yard_all_lines(a->book, a->boat.id, err)))
		return FALSE;
	d->sheets = book_yard_sheets(a->book, a->boat.id, err);
	for (guint i = 0; d->sheets && i < d->sheets->len; i++)
		list_add(&d->list, FALSE, (int)i, at(d, (int)i)->id, yard_sheet_words(at(d, (int)i)));
	list_settle_new(&d->list);
	return d->sheets != NULL;
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct yard_sheet *s = at(data, row->index);
	enum style style = is_selected ? STYLE_SELECTED : s->answered < s->lines ? STYLE_SOON : STYLE_PLAIN;
	g_autofree char *owners = g_strdup_printf(", %d the owner's", s->owners);
	char day[16];

	area_put_in(line, 0, 0, DAY_W, style, day_words(s->date, day));
	area_printf(line, 0, DAY_W + 2, style, "%d %s, %d answered%s", s->lines, s->lines == 1 ? "line" : "lines", s->answered,
		    s->owners && line->w >= OWNERS_FROM_W ? owners : "");
}

/* The lines of a sheet, one a paragraph. */
static char *
lines_of(const struct yard_data *d, const struct yard_sheet *s)
{
	GString *out = g_string_new(NULL);

	for (guint i = 0; i < d->lines->len; i++) {
		const struct yard_shown *line = &((const struct yard_shown *)(const void *)d->lines->data)[i];
		g_autofree char *head = yard_line_head(line);

		if (line->line.sheet != s->id)
			continue;
		g_string_append_printf(out, "%s%s\n", head, line->title);
	}
	return g_string_free(out, FALSE);
}

static struct panes
parts_of(const void *data, const struct area *a)
{
	(void)data;
	return panes_of(a, a->w * 2 / 5, MAX(BELOW, a->h / 2));
}

static void
draw_yard(const void *data, const struct area *a)
{
	const struct yard_data *d = data;
	const struct row *row = d->sheets ? list_row(&d->list) : NULL;
	struct panes p = parts_of(data, a);
	g_autofree char *text = row && p.pane.h ? lines_of(d, at(d, row->index)) : NULL;

	list_draw(&d->list, &p.list, draw_line, d,
		  " No sheet was handed to a yard: a writes one, with all that is wanted before the launch.");
	panes_rule(&p);
	panes_text(&p, text ? text : "");
}

static gboolean
act_yard(struct app *a, void *data, enum act act)
{
	const struct yard_data *d = data;
	const struct row *row = d->sheets ? list_row(&d->list) : NULL;

	if (act == ACT_YARD)
		app_close(a);
	else if (act == ACT_ADD)
		form_open(a, &form_yard, NONE);
	else if (act == ACT_READ)
		form_open(a, &form_yard_read, NONE);
	else if (act == ACT_OPEN && row)
		app_open(a, &view_yard_sheet, row->key);
	else
		return FALSE;
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct yard_data *)data)->list;
}

const struct view_kind view_yard = {
	.where = IN_YARD,
	.size = sizeof(struct yard_data),
	.open = open_yard,
	.load = load_yard,
	.draw = draw_yard,
	.act = act_yard,
	.list = list_of,
	.parts = parts_of,
	.clear = clear_yard,
};
