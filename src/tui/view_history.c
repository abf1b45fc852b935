/* The journal: every entry that was made, newest first, and what each changed. */
#include "tui/app.h"

#include "tui/list.h"

/* From WHOLE_W on a line has room for all there is to say. */
enum { PAGE = 200, EDGE = 20, WHOLE = 0, WHOLE_W = 76 };

struct history_data {
	GArray *all;	/* struct book_entry */
	struct list list;
	int wanted;	/* entries to read; WHOLE: all of them */
};

static const struct book_entry *
at(const struct history_data *d, int i)
{
	return &((const struct book_entry *)(const void *)d->all->data)[i];
}

static void
open_history(struct app *a, void *data, gint64 subject)
{
	struct history_data *d = data;

	(void)a, (void)subject;
	list_init(&d->list);
	d->wanted = PAGE;
}

static void
clear_history(void *data)
{
	struct history_data *d = data;

	g_clear_pointer(&d->all, g_array_unref);
	list_clear(&d->list);
}

static gboolean
load_history(struct app *a, void *data, GError **err)
{
	struct history_data *d = data;
	GArray *all;

	if (!a->book)
		return TRUE;
	if (!(all = book_history(a->book, d->wanted, err)))
		return FALSE;
	g_clear_pointer(&d->all, g_array_unref);
	d->all = all;
	list_begin(&d->list);
	for (int i = 0; i < (int)d->all->len; i++)
		list_add(&d->list, FALSE, i, at(d, i)->seq,
			 g_strdup_printf("%s %s", at(d, i)->what, at(d, i)->who ? at(d, i)->who : ""));
	list_settle(&d->list);
	return TRUE;
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct book_entry *e = at(data, row->index);
	g_autofree char *time = book_entry_time(e), *number = g_strdup_printf("%d", (int)e->seq);
	int x = 0;

	(void)is_selected;
	area_put_in(line, 0, x, -6, STYLE_PLAIN, number);
	x += 8;
	if (line->w >= 60) {
		area_put_in(line, 0, x, 17, STYLE_PLAIN, time);
		x += 18;
	}
	if (line->w + 3 >= WHOLE_W) {
		area_put_in(line, 0, x, 10, STYLE_PLAIN, e->who ? e->who : "");
		x += 11;
	}
	area_printf(line, 0, x, STYLE_PLAIN, "%s%s", e->undone_by == NONE ? "" : "(taken back) ", e->what);
}

static void
draw_history(const void *data, const struct area *a)
{
	const struct history_data *d = data;
	struct area list = area_part(a, 1, 0, a->h - 1, a->w);

	area_put(a, 0, 1, STYLE_HEAD, a->w < WHOLE_W ? "History: Enter tells what changed"
			: "History, times in UTC; Enter: what an entry changed; u undoes the newest");
	list_draw(&d->list, &list, draw_line, d, " Nothing was recorded yet.");
}

static void
add_line(void *user, const char *line)
{
	g_string_append_printf(user, "%s\n", line);
}

static void
add_entry(GString *out, const char *words, gint64 seq)
{
	if (seq != NONE)
		g_string_append_printf(out, "%s entry %" G_GINT64_FORMAT "\n", words, seq);
}

static void
show_whole(struct app *a, const struct book_entry *e)
{
	g_autofree char *title = g_strdup_printf("Entry %d: %s", (int)e->seq, e->what), *time = book_entry_time(e);
	GString *out = g_string_new(NULL);
	GError *err = NULL;

	g_string_append_printf(out, "%s UTC, by %s on %s\n", time, e->who ? e->who : "?", e->device ? e->device : "?");
	add_entry(out, "takes back", e->undoes);
	add_entry(out, "brings back what was taken back by", e->redoes);
	add_entry(out, "taken back by", e->undone_by);
	if (!book_history_entry(a->book, e->seq, add_line, out, &err)) {
		g_string_free(out, TRUE);
		return app_complain(a, err);
	}
	app_page(a, title, g_string_free(out, FALSE));
}

static void
read_on(struct app *a, struct history_data *d, int wanted)
{
	int was = d->wanted;
	GError *err = NULL;

	if (!d->all || was == WHOLE || (int)d->all->len < was)
		return;
	d->wanted = wanted;
	if (load_history(a, d, &err))
		return;
	d->wanted = was;
	app_complain(a, err);
}

/* Older entries are read as the selection comes near to them, and all before they are searched or the last is asked for. */
static gboolean
act_history(struct app *a, void *data, enum act act)
{
	struct history_data *d = data;
	const struct row *row = list_row(&d->list);

	if (act == ACT_OPEN && row) {
		show_whole(a, at(d, row->index));
		return TRUE;
	}
	if (act == ACT_FILTER || act == ACT_LAST)
		read_on(a, d, WHOLE);
	if (!list_act(&d->list, act, a->h - 4))
		return FALSE;
	if (d->list.at + EDGE > (int)d->list.rows->len)
		read_on(a, d, d->wanted + PAGE);
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct history_data *)data)->list;
}

const struct view_kind view_history = {
	.where = IN_HISTORY,
	.size = sizeof(struct history_data),
	.open = open_history,
	.load = load_history,
	.draw = draw_history,
	.act = act_history,
	.list = list_of,
	.parts = panes_headed,
	.clear = clear_history,
};
