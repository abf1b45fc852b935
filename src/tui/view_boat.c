/* The boat, fitting by fitting, and what is known of each. */
#include "tui/app.h"

#include "logbook/variant.h"
#include "tui/fitting_story.h"
#include "tui/form.h"
#include "tui/list.h"
#include "tui/pane.h"

#include <string.h>

/* Of the story below; of the columns at the right, the last of which show from a width on. */
enum { BELOW = 8, STATE_W = 16, DESIGN_W = 20, DESIGN_FROM_W = 70, READING_W = 22, READING_FROM_W = 90, PAGE_MARGIN = 4 };

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

/* Whether the first words of their paths are the same. */
static gboolean
same_side(const struct fitting *f, const struct fitting *other)
{
	gsize n = strcspn(f->path, "/");

	return n == strcspn(other->path, "/") && !strncmp(f->path, other->path, n);
}

static gboolean
load_boat(struct app *a, void *data, GError **err)
{
	struct boat_data *d = data;

	if (a->boat.id == NONE)
		return TRUE;
	if (!fitting_records_read(&d->records, a->book, a->boat.id, a->due, err))
		return FALSE;
	list_begin(&d->list);
	for (int i = 0; i < (int)d->records.fittings->len; i++) {
		const struct fitting *f = at(d, i);
		enum style style;
		g_autofree char *state = fitting_state(&d->records, f, &style), *side = fitting_side(f, d->records.fittings);

		if (side && (!i || !same_side(at(d, i - 1), f)))
			list_add(&d->list, TRUE, -1, NONE, g_steal_pointer(&side));
		list_add(&d->list, FALSE, i, f->id,
			 g_strdup_printf("%s %s %s %s", f->title, f->path, f->variant ? f->variant : "", state));
	}
	list_settle(&d->list);
	return TRUE;
}

static int
depth_of(const struct fitting *f)
{
	int n = 0;

	for (const char *p = f->path; (p = strchr(p, '/')); p++)
		n++;
	return n;
}

/* Whether nothing of its depth follows it below what they both belong to. */
static gboolean
is_last(const struct boat_data *d, int i)
{
	int depth = depth_of(at(d, i));

	for (int k = i + 1; k < (int)d->records.fittings->len && depth_of(at(d, k)) >= depth; k++)
		if (depth_of(at(d, k)) == depth)
			return depth && !same_side(at(d, i), at(d, k));
	return TRUE;
}

/* What a fitting belongs to; NULL. */
static const struct fitting *
above(const struct boat_data *d, int i)
{
	int depth = depth_of(at(d, i));

	int k = i;

	while (k >= 0 && depth_of(at(d, k)) >= depth)
		k--;
	return k < 0 || !same_side(at(d, i), at(d, k)) ? NULL : at(d, k);
}

/* On its branch; among the few that a search left, with what it belongs to instead. */
static void
draw_title(const struct boat_data *d, int i, const struct area *line, int w, enum style style)
{
	const struct fitting *f = at(d, i), *of = d->list.filter ? above(d, i) : NULL;
	g_autofree char *title = of ? g_strdup_printf("%s (%s)", f->title, of->title) : g_strdup(f->title);
	int x = d->list.filter ? 0 : 2 * depth_of(f);

	if (x)
		area_put(line, 0, x - 2, STYLE_PLAIN, glyph(line->g, is_last(d, i) ? GLYPH_LAST_BRANCH : GLYPH_BRANCH));
	area_put_in(line, 0, x, w - x, style, title);
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct boat_data *d = data;
	const struct fitting *f = row->heading ? NULL : at(d, row->index);
	enum style style;
	g_autofree char *state = f ? fitting_state(&d->records, f, &style) : NULL;
	int right = line->w - STATE_W;

	(void)is_selected;
	if (!f) {
		area_put(line, 0, 0, STYLE_HEAD, row->text);
		return;
	}
	area_put_in(line, 0, right, STATE_W, style, state);
	if (line->w >= READING_FROM_W) {
		g_autofree char *read = fitting_reading(&d->records, f);

		right -= READING_W + 1;
		area_put_in(line, 0, right, READING_W, STYLE_PLAIN, read ? read : "");
	}
	if (line->w >= DESIGN_FROM_W) {
		right -= DESIGN_W + 1;
		area_put_in(line, 0, right, DESIGN_W, STYLE_PLAIN,
			    f->variant	  ? f->variant
			    : f->variants ? "design not known"
					  : "");
	}
	draw_title(d, row->index, line, right - 1, style);
}

static struct panes
parts_of(const void *data, const struct area *a)
{
	(void)data;
	return panes_of(a, a->w / 2, BELOW);
}

static void
draw_boat(const void *data, const struct area *a)
{
	const struct boat_data *d = data;
	struct panes p = parts_of(data, a);
	const struct fitting *f = selected(d);
	g_autofree char *text = f && p.pane.h ? fitting_story(&d->records, f, a->g, p.pane.w, NULL) : g_strdup("");

	list_draw(&d->list, &p.list, draw_line, d, " No fitting is on record.");
	panes_rule(&p);
	panes_text(&p, text);
}

/* Of several tasks one is chosen first. */
static void
did(struct app *a, const struct fitting *f)
{
	const struct due_line *only = NULL;
	int n = 0;

	for (int i = 0; i < due_count(a->due); i++)
		if (due_at(a->due, i)->fitting_id == f->id) {
			only = due_at(a->due, i);
			n++;
		}
	if (n == 1)
		form_open(a, &form_did, only->id);
	else if (n)
		app_open(a, &view_work, f->id);
	else
		app_say(a, STYLE_PLAIN, "%s: %s", f->title,
			f->retired == 1 ? "not on this boat" : "no task; 6 is the plan, a adds one");
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
	app_say(a, STYLE_STRONG, "%s: %s; u %s", title, retired ? "not on this boat" : "on this boat again",
		retired ? "brings it back" : "takes that back");
	app_changed(a);
}

static void
open_story(struct app *a, const struct boat_data *d, const struct fitting *f)
{
	const struct fitting_history_ask ask = { a->boat.id, f->id, NULL, TRUE };
	GError *err = NULL;
	g_autoptr(GArray) whole = book_fitting_history(a->book, &ask, &err);

	if (!whole)
		return app_complain(a, err);
	app_page(a, f->title, fitting_story(&d->records, f, &(struct grid) { .ascii = a->ascii }, a->w - PAGE_MARGIN, whole));
}

static gboolean
act_boat(struct app *a, void *data, enum act act)
{
	struct boat_data *d = data;
	const struct fitting *f = selected(d);

	if (!f)
		return FALSE;
	if (act == ACT_OPEN)
		open_story(a, d, f);
	else if (act == ACT_DID)
		did(a, f);
	else if (act == ACT_MEASURE)
		form_open(a, &form_measure, f->id);
	else if (act == ACT_FOUND)
		form_open(a, &form_found, f->id);
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

const struct view_kind view_boat = {
	.where = IN_BOAT,
	.size = sizeof(struct boat_data),
	.open = open_boat,
	.load = load_boat,
	.draw = draw_boat,
	.act = act_boat,
	.list = list_of,
	.parts = parts_of,
	.clear = clear_boat,
};
