/* One sheet: its lines, the yard's and the owner's apart, with what came back of each. */
#include "base/date.h"
#include "base/text.h"
#include "logbook/page.h"
#include "tui/form.h"
#include "tui/list.h"
#include "tui/pane.h"
#include "tui/yard_page.h"

/* Of the line's story below; from which width on the answer stands beside a line, too. */
enum { BELOW = 7, ANSWER_FROM_W = 60 };

struct sheet_data {
	GArray *lines;	/* struct yard_shown */
	gint64 sheet;
	char *head;	/* "Sheet of 25 Nov 2026: 4 lines, 3 answered" */
	struct list list;
};

char *
yard_line_head(const struct yard_shown *s)
{
	return g_strdup_printf("%s %3d  ", s->settled && s->line.answer ? "[x]" : s->line.answer ? "[-]" : "[ ]", (int)s->line.no);
}

char *
yard_line_story(const struct yard_shown *s)
{
	GString *out = g_string_new(NULL);
	char day[16];

	g_string_append_printf(out, "Line %d, for the %s: %s%s%s%s\n", (int)s->line.no, word_of(&words_line_whose, s->line.whose),
			       s->title, s->name ? " (" : "", s->name ? s->name : "", s->name ? ")" : "");
	if (!s->line.answer)
		return g_string_free(g_string_append(out, "No answer was read yet.\n"), FALSE);
	g_string_append_printf(out, "The answer, read on %s: %s\n", day_words(s->line.answered, day),
			       s->answer ? s->answer : "its words are not on record any more");
	if (s->became)
		g_string_append_printf(out, "In the log: %s\n", s->became);
	if (!s->settled)
		g_string_append(out, "It stays open.\n");
	return g_string_free(out, FALSE);
}

static const struct yard_shown *
at(const struct sheet_data *d, int i)
{
	return &((const struct yard_shown *)(const void *)d->lines->data)[i];
}

static void
open_sheet(struct app *a, void *data, gint64 subject)
{
	struct sheet_data *d = data;

	(void)a;
	d->sheet = subject;
	list_init(&d->list);
}

static void
let_go(struct sheet_data *d)
{
	g_clear_pointer(&d->lines, g_array_unref);
	g_clear_pointer(&d->head, g_free);
}

static void
clear_sheet(void *data)
{
	struct sheet_data *d = data;

	let_go(d);
	list_clear(&d->list);
}

/* A sheet whose entry was taken back is not there. */
static gboolean
is_there(const struct app *a, struct sheet_data *d, GError **err)
{
	g_autoptr(GArray) sheets = book_yard_sheets(a->book, a->boat.id, err);

	for (guint i = 0; sheets && i < sheets->len; i++) {
		const struct yard_sheet *s = &((const struct yard_sheet *)(const void *)sheets->data)[i];
		g_autofree char *words = s->id == d->sheet ? yard_sheet_words(s) : NULL;

		if (words)
			d->head = g_strdup_printf("Sheet of %s", words);
	}
	return sheets != NULL;
}

static gboolean
load_sheet(struct app *a, void *data, GError **err)
{
	struct sheet_data *d = data;
	gint64 whose = NONE;

	list_begin(&d->list);
	let_go(d);
	if (!is_there(a, d, err) || (d->head && !(d->lines = book_yard_lines(a->book, d->sheet, err))))
		return FALSE;
	for (guint i = 0; d->lines && i < d->lines->len; i++) {
		const struct yard_shown *s = at(d, (int)i);

		if (s->line.whose != whose)
			list_add(&d->list, TRUE, -1, NONE,
				 g_strdup(s->line.whose == LINE_YARD ? "THE YARD DOES" : "THE OWNER DOES"));
		whose = s->line.whose;
		list_add(&d->list, FALSE, (int)i, s->line.id,
			 g_strdup_printf("%s %s %s", s->title, s->name ? s->name : "", s->answer ? s->answer : ""));
	}
	list_settle(&d->list);
	return TRUE;
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct yard_shown *s = row->heading ? NULL : at(data, row->index);
	g_autofree char *head = s ? yard_line_head(s) : NULL, *text = NULL;
	enum style style = is_selected ? STYLE_SELECTED : s && s->settled ? STYLE_PLAIN : STYLE_SOON;
	int half = line->w * 3 / 5;
	gboolean both = s && s->answer && line->w >= ANSWER_FROM_W;

	if (!s) {
		area_put(line, 0, 0, STYLE_HEAD, row->text);
		return;
	}
	text = g_strconcat(head, s->title, NULL);
	area_put_in(line, 0, 0, both ? half : line->w, style, text);
	if (both)
		area_put_in(line, 0, half + 1, line->w - half - 1, style, s->answer);
}

/* Below the head's line. */
static struct panes
parts_of(const void *data, const struct area *a)
{
	struct area rest = area_part(a, 1, 0, a->h - 1, a->w);

	(void)data;
	return panes_of(&rest, a->w * 3 / 5, BELOW);
}

static void
draw_sheet(const void *data, const struct area *a)
{
	const struct sheet_data *d = data;
	const struct row *row = d->lines ? list_row(&d->list) : NULL;
	struct panes p = parts_of(data, a);
	g_autofree char *text = row && p.pane.h ? yard_line_story(at(d, row->index)) : NULL;

	area_put(a, 0, 1, STYLE_STRONG, d->head ? d->head : "The sheet");
	list_draw(&d->list, &p.list, draw_line, d, " This sheet is not on record: it was taken back.");
	panes_rule(&p);
	panes_text(&p, text ? text : "");
}

static gboolean
act_sheet(struct app *a, void *data, enum act act)
{
	const struct sheet_data *d = data;
	const struct row *row = d->lines ? list_row(&d->list) : NULL;

	if (act == ACT_YARD)
		app_close(a);	/* to the sheets */
	else if (act == ACT_ADD)
		form_open(a, &form_yard, NONE);
	else if (act == ACT_READ)
		form_open(a, &form_yard_read, NONE);
	else if (act == ACT_OPEN && row)
		app_page(a, at(d, row->index)->title, yard_line_story(at(d, row->index)));
	else
		return FALSE;
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct sheet_data *)data)->list;
}

const struct view_kind view_yard_sheet = {
	.where = IN_YARD,
	.size = sizeof(struct sheet_data),
	.open = open_sheet,
	.load = load_sheet,
	.draw = draw_sheet,
	.act = act_sheet,
	.list = list_of,
	.parts = parts_of,
	.clear = clear_sheet,
};
