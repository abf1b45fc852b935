/* What happened to the boat, and what it still asks for. */
#include "tui/app.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/happening.h"
#include "logbook/year.h"
#include "tui/form.h"
#include "tui/happening_words.h"
#include "tui/list.h"
#include "tui/pane.h"

/* Columns of the day, the kind and the state; a remark with less room than that is left to the page. */
enum { BELOW = 7, DAY_W = 11, KIND_W = 13, STATE_W = 6, REMARK_AT = DAY_W + KIND_W + STATE_W + 3, REMARK_LEAST = 10 };

struct happenings_data {
	struct book *book;	/* the app's */
	GArray *all;	/* struct happening, oldest first */
	const struct due_list *due;
	struct list list;
};

static const struct happening *
at(const struct happenings_data *d, int i)
{
	return &((const struct happening *)(const void *)d->all->data)[i];
}

static void
open_happenings(struct app *a, void *data, gint64 subject)
{
	struct happenings_data *d = data;

	(void)subject;
	d->due = a->due;
	list_init(&d->list);
}

static void
clear_happenings(void *data)
{
	struct happenings_data *d = data;

	g_clear_pointer(&d->all, g_array_unref);
	list_clear(&d->list);
}

static gboolean
load_happenings(struct app *a, void *data, GError **err)
{
	struct happenings_data *d = data;

	if (a->boat.id == NONE)
		return TRUE;
	d->book = a->book;
	list_begin(&d->list);	/* empty, should anything fail */
	g_clear_pointer(&d->all, g_array_unref);
	d->all = book_records(a->book, RECORD_HAPPENING, a->boat.id, err);
	if (!d->all)
		return FALSE;
	for (int i = (int)d->all->len - 1; i >= 0; i--)
		list_add(&d->list, FALSE, i, at(d, i)->id, g_strdup_printf("%s %s %s", word_of(&words_happening, at(d, i)->kind),
									      at(d, i)->closed == NONE ? "open" : "closed",
									      at(d, i)->remark ? at(d, i)->remark : ""));
	list_settle_new(&d->list);
	return TRUE;
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct happening *h = at(data, row->index);
	enum style style = is_selected ? STYLE_SELECTED : h->closed == NONE ? STYLE_PAST : STYLE_PLAIN;
	char day[16];

	area_put_in(line, 0, 0, DAY_W, style, day_words(h->date, day));
	area_put_in(line, 0, DAY_W + 1, KIND_W, style, word_of(&words_happening, h->kind));
	area_put_in(line, 0, DAY_W + KIND_W + 2, STATE_W, style, h->closed == NONE ? "open" : "closed");
	if (line->w >= REMARK_AT + REMARK_LEAST)
		area_put(line, 0, REMARK_AT, style, h->remark ? h->remark : "");
}

/* What it asks for, before that what to beware of while doing it. */
static char *
story(const struct happenings_data *d, const struct happening *h)
{
	GString *out = g_string_new(NULL);
	g_autofree char *caution = happening_caution(d->book, h->kind);

	if (caution)
		g_string_append_printf(out, "%s\n", caution);
	happening_add_tasks(out, d->due, h);
	return g_string_free(out, FALSE);
}

static void
show_whole(struct app *a, const struct happenings_data *d, const struct happening *h)
{
	g_autofree char *text = story(d, h), *title = NULL;
	char day[16], closed[16];

	title = g_strdup_printf("%s on %s, %s%s", word_of(&words_happening, h->kind), day_words(h->date, day),
				h->closed == NONE ? "open" : "closed on ", day_words(h->closed, closed));
	app_page(a, title, g_strdup_printf("%s\n%s", h->remark ? h->remark : "no remark", text));
	if (h->closed == NONE)
		app_heed(a, title, word_of(&words_happening, h->kind), happening_cautions(h->kind));
}

static struct panes
parts_of(const void *data, const struct area *a)
{
	(void)data;
	return panes_of(a, a->w * 3 / 5, BELOW);
}

static void
draw_happenings(const void *data, const struct area *a)
{
	const struct happenings_data *d = data;
	const struct row *row = d->all ? list_row(&d->list) : NULL;
	struct panes p = parts_of(data, a);
	g_autofree char *text = row && p.pane.h ? story(d, at(d, row->index)) : g_strdup("");

	list_draw(&d->list, &p.list, draw_line, d, " Nothing is on record: a adds what happened.");
	panes_rule(&p);
	panes_text(&p, text);
}

/* What is left may be more than a line. */
static void
say_left(struct app *a, GError *err)
{
	if (!g_error_matches(err, ERR_DOMAIN, ERR_CONFLICT))
		return app_complain(a, err);
	app_say(a, STYLE_ERROR, "it stays open");
	app_page(a, "What is left to do", g_strdup(err->message));
	g_error_free(err);
}

static void
close_it(struct app *a, const struct happening *h)
{
	gint64 kind = h->kind;
	GError *err = NULL;
	int closed;

	if (h->closed != NONE)
		return app_say(a, STYLE_PLAIN, "that is closed already");
	if (!book_close_happening(a->book, &a->boat, kind, app_today(a), &closed, &err))
		return say_left(a, err);
	if (closed > 1)
		app_say(a, STYLE_STRONG, "%s: closed, all %d that were open; u opens them again", word_of(&words_happening, kind),
			closed);
	else
		app_say(a, STYLE_STRONG, "%s: closed; u opens it again", word_of(&words_happening, kind));
	app_changed(a);
}

static void
drop(struct app *a, const struct happening *h)
{
	GError *err = NULL;

	if (!book_drop_dated(a->book, RECORD_HAPPENING, h->id, h->date, &err))
		return app_complain(a, err);
	app_say(a, STYLE_STRONG, "taken out; u brings it back");
	app_changed(a);
}

static gboolean
act_happenings(struct app *a, void *data, enum act act)
{
	const struct happenings_data *d = data;
	const struct row *row = list_row(&d->list);

	if (act == ACT_ADD) {
		form_open(a, &form_happening, NONE);
		return TRUE;
	}
	if (!row)
		return FALSE;
	if (act == ACT_OPEN)
		show_whole(a, d, at(d, row->index));
	else if (act == ACT_CLOSE)
		close_it(a, at(d, row->index));
	else if (act == ACT_DROP)
		drop(a, at(d, row->index));
	else
		return FALSE;
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct happenings_data *)data)->list;
}

const struct view_kind view_happenings = {
	.where = IN_HAPPENINGS,
	.size = sizeof(struct happenings_data),
	.open = open_happenings,
	.load = load_happenings,
	.draw = draw_happenings,
	.act = act_happenings,
	.list = list_of,
	.parts = parts_of,
	.clear = clear_happenings,
};
