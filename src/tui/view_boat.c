/* The boat, fitting by fitting, and what is known of each. */
#include "tui/app_inside.h"

#include "logbook/found.h"
#include "tui/fitting_story.h"
#include "tui/form.h"
#include "tui/pane.h"

#include <string.h>

enum { BELOW = 7, STATE_W = 16, DESIGN_W = 14 };

struct boat_data {
	struct fitting_records records;
	struct list list;
};

static const struct fitting *
at(const struct boat_data *d, int i)
{
	return &((const struct fitting *)(const void *)d->records.fittings->data)[i];
}

static const struct fitting *
selected(const struct boat_data *d)
{
	const struct row *row = d->records.fittings ? list_row(&d->list) : NULL;

	return row ? at(d, row->index) : NULL;
}

static void
open_boat(struct app *a, void *data, gint64 subject)
{
	(void)a, (void)subject;
	list_init(&((struct boat_data *)data)->list);
}

static void
clear_boat(void *data)
{
	struct boat_data *d = data;

	fitting_records_clear(&d->records);
	list_clear(&d->list);
}

static gint
by_path(gconstpointer a, gconstpointer b)
{
	return strcmp(((const struct fitting *)a)->path, ((const struct fitting *)b)->path);
}

static gboolean
load_boat(struct app *a, void *data, GError **err)
{
	struct boat_data *d = data;

	if (a->boat.id == NONE)
		return TRUE;
	if (!fitting_records_read(&d->records, a->book, a->boat.id, a->due, err))
		return FALSE;
	g_array_sort(d->records.fittings, by_path);
	list_begin(&d->list);
	for (int i = 0; i < (int)d->records.fittings->len; i++)
		list_add(&d->list, FALSE, i, at(d, i)->id,
			 g_strdup_printf("%s %s %s", at(d, i)->title, at(d, i)->path, at(d, i)->variant ? at(d, i)->variant : ""));
	list_settle(&d->list);
	return TRUE;
}

static int
depth_of(const char *path)
{
	int n = 0;

	for (; (path = strchr(path, '/')); path++)
		n++;
	return n;
}

/* The most pressing of its tasks, in a word. */
static const char *
state_of(const struct boat_data *d, const struct fitting *f, enum style *style)
{
	const struct due_line *line = fitting_due(&d->records, f->id);

	*style = STYLE_PLAIN;
	if (f->retired == 1)
		return "not on this boat";
	if (!line)
		return "";
	*style = line->out.past ? STYLE_PAST : line->out.when <= OPP_MID_SEASON ? STYLE_SOON : STYLE_PLAIN;
	return line->out.past ? "past due" : word_of(&words_opportunity, line->out.when);
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct boat_data *d = data;
	const struct fitting *f = at(d, row->index);
	const struct measurement *m = fitting_reading(&d->records, f->id);
	int x = 2 * depth_of(f->path), right = line->w;
	enum style style;
	const char *state = state_of(d, f, &style);

	style = is_selected ? STYLE_SELECTED : style;
	right -= STATE_W + 1;
	area_put_in(line, 0, right + 1, STATE_W, style, state);
	if (line->w >= 70 && f->variants) {
		right -= DESIGN_W + 1;
		area_put_in(line, 0, right + 1, DESIGN_W, style, f->variant ? f->variant : "design?");
	}
	if (line->w >= 90 && m) {
		g_autofree char *read = g_strdup_printf("%s %s", m->what, m->as_read);

		right -= 24;
		area_put_in(line, 0, right + 1, 23, style, read);
	}
	if (x)
		area_put(line, 0, x - 2, STYLE_PLAIN, glyph(line->g, GLYPH_BRANCH));
	area_put_in(line, 0, x, right - x, style, f->title);
}

static struct panes
parts_of(const struct area *a)
{
	return panes_of(a, a->w / 2, BELOW);
}

static void
draw_boat(const void *data, const struct area *a)
{
	const struct boat_data *d = data;
	struct panes p = parts_of(a);
	const struct fitting *f = selected(d);
	g_autofree char *text = f ? fitting_story(&d->records, f, a->g) : g_strdup("");

	list_draw(&d->list, &p.list, draw_line, d, " No fitting is on record.");
	panes_rule(&p);
	panes_text(&p, text);
}

/* With several tasks the due list shows them, for one to be chosen. */
static void
did(struct app *a, const struct fitting *f)
{
	const struct due_line *only = NULL;
	g_autofree char *title = g_strdup(f->title);
	int n = 0;

	for (int i = 0; i < due_count(a->due); i++)
		if (due_at(a->due, i)->fitting_id == f->id) {
			only = due_at(a->due, i);
			n++;
		}
	if (n == 1)
		return form_open(a, &form_did, only->id);
	if (!n)
		return app_say(a, STYLE_PLAIN, "%s has no task", title);
	app_act(a, ACT_DUE);
	list_filter(app_list(a), title);
	app_say(a, STYLE_PLAIN, "%d tasks there: d records the one selected, Esc shows all again", n);
}

static void
retire(struct app *a, const struct fitting *f)
{
	struct fitting copy = *f;
	gboolean retired = f->retired != 1;
	g_autofree char *title = g_strdup(f->title);
	GError *err = NULL;

	if (!book_retire_fitting(a->book, &copy, retired, &err))
		return app_complain(a, err);
	app_say(a, STYLE_STRONG, "%s: %s; u takes that back", title, retired ? "not on this boat" : "on this boat again");
	app_changed(a);
}

static gboolean
act_boat(struct app *a, void *data, enum act act)
{
	struct boat_data *d = data;
	const struct fitting *f = selected(d);

	if (!f)
		return FALSE;
	if (act == ACT_OPEN)
		app_page(a, f->title, fitting_story(&d->records, f, &(struct grid) { .ascii = a->ascii }));
	else if (act == ACT_DID)
		did(a, f);
	else if (act == ACT_MEASURE)
		form_open(a, &form_measure, f->id);
	else if (act == ACT_CHANGE)
		form_open(a, &form_variant, f->id);
	else if (act == ACT_DROP)
		retire(a, f);
	else
		return FALSE;
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct boat_data *)data)->list;
}

static int
rows_of(const void *data, int h, int w, int *first)
{
	const struct area a = { NULL, 0, 0, h, w };

	(void)data;
	*first = 0;
	return parts_of(&a).list.h;
}

const struct view_kind view_boat = {
	.name = "boat",
	.where = IN_BOAT,
	.size = sizeof(struct boat_data),
	.open = open_boat,
	.load = load_boat,
	.draw = draw_boat,
	.act = act_boat,
	.list = list_of,
	.rows = rows_of,
	.clear = clear_boat,
};
