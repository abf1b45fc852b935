/* A page to read: why a task is due, what is known of a thing, what a command said. */
#include "tui/app.h"

#include "base/text.h"
#include "logbook/caution.h"
#include "logbook/heed.h"
#include "tui/list.h"

/* Columns of the list's own, and a blank at the edge; of further lines of a paragraph. */
enum { MARGIN = 4, INDENT = 2 };

struct text_data {
	char *title, *text;
	char *work, *words;	/* of a page of cautions: what work, and their words; else NULL */
	struct list list;	/* its lines as they are wrapped */
};

static void
open_text(struct app *a, void *data, gint64 subject)
{
	(void)a, (void)subject;
	list_init(&((struct text_data *)data)->list);
}

static void
clear_text(void *data)
{
	struct text_data *d = data;

	list_clear(&d->list);
	g_free(d->title);
	g_free(d->text);
	g_free(d->work);
	g_free(d->words);
}

/* A line, or where a word is wider than the screen, several.  Each is known by its place: the characters before it, blanks
 * apart, and the line ends, which stay the same at any width. */
static void
add_line(struct text_data *d, const char *line, int paragraph, int columns, gint64 *place)
{
	int indent = 0;

	do {
		gsize n = text_fits(line, columns - indent);
		char *part = g_strdup_printf("%*s%.*s", indent, "", (int)n, line);

		list_add(&d->list, FALSE, paragraph, *place, part);
		for (const char *p = part; *p; p = g_utf8_next_char(p))
			*place += *p != ' ';
		line += n;
		indent = INDENT;
	} while (*line);
}

static void
add_paragraph(struct text_data *d, const char *text, int i, int columns, gint64 *place)
{
	g_autoptr(GString) out = g_string_new(NULL);
	g_auto(GStrv) line = NULL;

	text_wrap(out, text, columns, INDENT);
	line = g_strsplit(out->str, "\n", -1);
	for (int k = 0; line[k]; k++)
		add_line(d, line[k], i, columns, place);
	if (!line[0])
		add_line(d, "", i, columns, place);
	++*place;
}

/* At another width the line selected is that which holds what the one before began with. */
static gboolean
load_text(struct app *a, void *data, GError **err)
{
	struct text_data *d = data;
	const struct row *row = list_row(&d->list);
	g_autofree char *safe = text_harmless(d->text ? d->text : "", TRUE);
	g_auto(GStrv) paragraph = g_strsplit(g_strchomp(safe), "\n", -1);
	gint64 was = row ? row->key : 0, place = 0, key = 0;

	(void)err;
	list_begin(&d->list);
	for (int i = 0; paragraph[i]; i++)
		add_paragraph(d, paragraph[i], i, MAX(a->w - MARGIN, INDENT + 1), &place);
	list_settle(&d->list);
	for (guint i = 0; i < d->list.rows->len; i++) {
		gint64 at = ((const struct row *)(const void *)d->list.rows->data)[i].key;

		key = at <= was ? at : key;
	}
	list_select(&d->list, key);
	return TRUE;
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean selected)
{
	(void)data, (void)selected;
	area_put(line, 0, 0, STYLE_PLAIN, row->text);
}

static void
draw_text(const void *data, const struct area *a)
{
	const struct text_data *d = data;
	struct area list = area_part(a, 1, 0, a->h - 1, a->w), title = area_part(a, 0, 1, 1, a->w - 2);

	if ((int)d->list.rows->len > list.h && d->list.at >= 0) {
		g_autofree char *at = g_strdup_printf("line %d of %d", d->list.at + 1, (int)d->list.rows->len);
		int w = text_width(at);

		area_put(&title, 0, title.w - w, STYLE_PLAIN, at);
		title.w -= w + 1;
	}
	area_put(&title, 0, 0, STYLE_HEAD, d->title ? d->title : "");
	list_draw(&d->list, &list, draw_line, d, "");
}

/* Cautions are put on record as read, or the work behind them is left. */
static gboolean
act_heed(struct app *a, void *data, enum act act)
{
	const struct text_data *d = data;
	GError *err = NULL;

	if (act == ACT_HEED) {
		if (!book_heed(a->book, a->boat.id, d->work, d->words, &err)) {
			app_complain(a, err);
			return TRUE;
		}
		app_say(a, STYLE_PLAIN, "read, and on record for today");
		app_close(a);
		app_changed(a);
		return TRUE;
	}
	if (d->list.filter || (act != ACT_BACK && act != ACT_QUIT))
		return FALSE;
	app_close(a);
	app_close(a);
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct text_data *)data)->list;
}

const struct view_kind view_text = {
	.where = IN_TEXT,
	.size = sizeof(struct text_data),
	.open = open_text,
	.load = load_text,
	.draw = draw_text,
	.list = list_of,
	.parts = panes_headed,
	.clear = clear_text,
};

static const struct view_kind view_heed = {
	.where = IN_HEED,
	.size = sizeof(struct text_data),
	.open = open_text,
	.load = load_text,
	.draw = draw_text,
	.act = act_heed,
	.list = list_of,
	.parts = panes_headed,
	.clear = clear_text,
};

/* A page of one of the two kinds, with its text, which it takes over; NULL: there was no room for it. */
static struct text_data *
open_page(struct app *a, const struct view_kind *kind, const char *title, char *text)
{
	int depth = a->depth;
	struct text_data *d;

	app_open(a, kind, NONE);
	if (a->depth == depth) {
		g_free(text);
		return NULL;
	}
	d = app_data(a);
	d->title = g_strdup(title);
	d->text = text;
	load_text(a, d, NULL);
	return d;
}

void
app_heed(struct app *a, const char *title, const char *work, const char *words)
{
	GError *err = NULL;
	char *unread = book_unheeded(a->book, a->boat.id, work, words, &err);
	g_autofree char *cautions = unread && *unread ? caution_block(a->book, unread) : NULL;
	struct text_data *d = NULL;

	if (err)
		app_complain(a, err);
	else if (cautions)
		d = open_page(a, &view_heed, title,
			      g_strdup_printf("%s\nEnter: read, and on to the work. Esc: back, without it.", cautions));
	if (!d) {
		g_free(unread);
		return;
	}
	d->work = g_strdup(work);
	d->words = unread;
}

void
app_page(struct app *a, const char *title, char *text)
{
	open_page(a, &view_text, title, text);
}
