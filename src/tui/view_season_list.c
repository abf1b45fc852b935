/* One of the season's lists: ticked off line by line, and taken up again where it was left. */
#include "tui/app.h"

#include "base/date.h"
#include "base/text.h"
#include "tui/form.h"
#include "tui/list.h"
#include "tui/pane.h"
#include "tui/season_story.h"

#include <string.h>

/* Below the head; columns of the place and of what a failure does, from that width on. */
enum { BELOW = 7, PLACE_W = 9, COST_W = 8, WIDE_W = 70 };

struct season_data {
	struct book *book;	/* the app's */
	struct season_work *work;
	enum season_list which;
	struct list list;
	char *head;	/* NULL: it could not be read */
	gboolean begun;	/* the first open line was selected once */
};

static void
open_list(struct app *a, void *data, gint64 subject)
{
	struct season_data *d = data;

	d->book = a->book;
	d->work = season_work_new();
	d->which = (enum season_list)subject;
	list_init(&d->list);
}

static void
clear_list(void *data)
{
	struct season_data *d = data;

	list_clear(&d->list);
	season_work_free(d->work);
	g_free(d->head);
}

const struct season_work *
season_shown(const struct app *a)
{
	for (int i = a->depth; i-- > 0;)
		if (a->view[i].kind == &view_season_list)
			return ((const struct season_data *)a->view[i].data)->work;
	return NULL;
}

/* Headings of the section and of what must come off first, where line i begins one. */
static void
add_headings(struct season_data *d, guint i)
{
	const struct season_line *line = season_line(d->work, i), *last = i ? season_line(d->work, i - 1) : NULL;
	gboolean section = !last || strcmp(last->section, line->section) != 0;

	if (section)
		list_add(&d->list, TRUE, -1, NONE, g_strdup(line->heading));
	if (line->due->off && (section || g_strcmp0(last->due->off, line->due->off))) {
		g_autofree char *first = due_access_words(d->work->due, line->at);

		list_add(&d->list, TRUE, -1, NONE, g_strdup_printf("  %s", first));
	}
}

/* Select the first open line from i on, else from the top; where none is open all stays as it is. */
static void
select_open(struct season_data *d, guint from)
{
	guint n = season_lines(d->work);

	for (guint k = 0; k < n; k++) {
		const struct season_line *line = season_line(d->work, (from + k) % n);

		if (line->state == SEASON_OPEN) {
			list_select(&d->list, line->due->id);
			return;
		}
	}
}

static gboolean
load_list(struct app *a, void *data, GError **err)
{
	struct season_data *d = data;

	g_clear_pointer(&d->head, g_free);
	list_begin(&d->list);
	if (a->boat.id == NONE)
		return TRUE;
	if (!book_season_work(a->book, &a->boat, d->which, d->work, err))
		return FALSE;
	for (guint i = 0; i < season_lines(d->work); i++) {
		const struct due_line *l = season_line(d->work, i)->due;

		add_headings(d, i);
		list_add(&d->list, FALSE, (int)i, l->id, g_strdup_printf("%s %s %s", l->title, l->name, l->fitting));
	}
	list_settle(&d->list);
	if (!d->begun)
		select_open(d, 0);
	d->begun = TRUE;
	d->head = season_head(d->work);
	return TRUE;
}

static const struct season_line *
selected(const struct season_data *d)
{
	const struct row *row = list_row(&d->list);

	return row && row->index >= 0 && (guint)row->index < season_lines(d->work) ? season_line(d->work, (guint)row->index) : NULL;
}

static enum style
style_of(const struct season_line *line)
{
	switch (line->state) {
	case SEASON_DONE:
		return STYLE_PLAIN;
	case SEASON_PASSED:
		return STYLE_SOON;
	case SEASON_OPEN:
		break;
	}
	return line->due->out.past ? STYLE_PAST : STYLE_STRONG;
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	static const char *const box[] = { "[ ] ", "[x] ", "[-] " };
	const struct season_data *d = data;
	const struct season_line *l = row->heading ? NULL : season_line(d->work, (guint)row->index);
	g_autofree char *text = NULL;
	enum style style;
	int x = line->w;

	if (!l) {
		area_put(line, 0, 0, row->text[0] == ' ' ? STYLE_PLAIN : STYLE_HEAD, row->text);
		return;
	}
	style = is_selected ? STYLE_SELECTED : style_of(l);
	if (line->w >= WIDE_W) {
		x -= COST_W;
		area_put_in(line, 0, x, COST_W, style, word_of(&words_consequence, l->due->in.consequence));
		x -= PLACE_W;
		area_put_in(line, 0, x, PLACE_W, style, word_of(&words_workplace, l->due->in.place));
	}
	text = g_strdup_printf("%s%s%s%s", box[l->state], l->due->title, l->state == SEASON_PASSED ? ": " : "",
			       l->state == SEASON_PASSED ? l->words : "");
	area_put_in(line, 0, 0, x - 1, style, text);
}

/* Below the head's line. */
static struct panes
parts_of(const void *data, const struct area *a)
{
	struct area rest = area_part(a, 1, 0, a->h - 1, a->w);

	(void)data;
	return panes_of(&rest, a->w * 3 / 5, MAX(BELOW, a->h / 3));
}

/* How far it is, whole or in short. */
static void
draw_head(const struct season_data *d, const struct area *a)
{
	const struct season_work *w = d->work;

	if (!d->head)
		area_put(a, 0, 1, STYLE_STRONG, season_list_title(d->which));
	else if (text_width(d->head) < a->w - 1)
		area_put(a, 0, 1, STYLE_STRONG, d->head);
	else if (w->passed)
		area_printf(a, 0, 1, STYLE_STRONG, "%s: %d/%u, %d passed over", season_list_title(d->which), w->done,
			    season_lines(w), w->passed);
	else
		area_printf(a, 0, 1, STYLE_STRONG, "%s: %d of %u done", season_list_title(d->which), w->done, season_lines(w));
}

static void
draw_list(const void *data, const struct area *a)
{
	const struct season_data *d = data;
	const struct season_line *line = d->head ? selected(d) : NULL;
	struct panes p = parts_of(data, a);
	g_autofree char *text = line && p.pane.h ? season_story(d->book, d->work, line) : g_strdup("");

	draw_head(d, a);
	list_draw(&d->list, &p.list, draw_line, d, " Nothing stands on this list.");
	panes_rule(&p);
	panes_text_by(&p, text, "Right");
}

/* Today, with the usual outcome; then on to the next that is open. */
static void
tick(struct app *a, struct season_data *d, const struct season_line *line, guint at)
{
	struct season_tick t = { line->due->id, app_today(a), NULL, NULL, a->start.who.name };
	g_autofree char *label = g_strdup(line->due->label), *proof = g_strdup(line->due->proof);
	struct service_said said;
	GError *err = NULL;
	char day[16];

	if (line->state == SEASON_DONE)
		return app_say(a, STYLE_PLAIN, "done on %s: d records it once more", day_words(line->when, day));
	if (!book_season_tick(a->book, d->work, &t, &said, &err))
		return app_complain(a, err);
	if (!said.counts)
		app_say(a, STYLE_STRONG, "%s: it stays open: %s", label, said.why_not);
	else
		app_say(a, STYLE_STRONG, "%s: done; u takes it back%s%s", label, proof ? "; d keeps the proof: " : "",
			proof ? proof : "");
	service_said_clear(&said);
	app_changed(a);
	select_open(d, at + 1);
}

static gboolean
act_list(struct app *a, void *data, enum act act)
{
	struct season_data *d = data;
	const struct season_line *line = d->head ? selected(d) : NULL;

	if (act == ACT_SEASON) {
		app_close(a);	/* to the lists, or to where it was opened */
		return TRUE;
	}
	if (!line)
		return FALSE;
	if (act == ACT_TICK) {
		tick(a, d, line, (guint)list_row(&d->list)->index);
	} else if (act == ACT_OPEN) {
		app_page(a, line->due->label, season_story(a->book, d->work, line));
	} else if (act == ACT_DID) {
		form_open(a, &form_did, line->due->id);
	} else if (act == ACT_PASS && line->state == SEASON_DONE) {
		app_say(a, STYLE_PLAIN, "that is done: u takes the last entry back");
	} else if (act == ACT_PASS) {
		form_open(a, &form_pass, line->due->id);
	} else if (act == ACT_MEASURE) {
		form_open(a, &form_measure, line->due->fitting_id);
	} else {
		return FALSE;
	}
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct season_data *)data)->list;
}

const struct view_kind view_season_list = {
	.where = IN_SEASON,
	.size = sizeof(struct season_data),
	.open = open_list,
	.load = load_list,
	.draw = draw_list,
	.act = act_list,
	.list = list_of,
	.parts = parts_of,
	.clear = clear_list,
};
