/* The log of outings, a page of it at a time, and the hours by month and by year. */
#include "tui/app.h"

#include "base/amount.h"
#include "base/date.h"
#include "logbook/outing.h"
#include "logbook/page.h"
#include "tui/form.h"
#include "tui/hours_plot.h"
#include "tui/list.h"
#include "tui/pane.h"

#include <string.h>

/* Rows read on either side of the selected one, how near to their end more are read, and how many for a search. */
enum { PAGE = 150, EDGE = 20, SEARCH = 20000 };
/* The plots, beside the list or below it. */
enum { LIST_W = 100, BELOW = 6 };

struct outings_data {
	GArray *rows;	/* struct outing, newest first */
	GArray *months;	/* struct month_sum */
	GArray *engines;	/* struct engine */
	struct list list;
	gint64 today;
	gboolean more_newer, more_older;	/* the log goes on beyond the rows that were read */
};

static const struct outing *
row_at(const struct outings_data *d, int i)
{
	return &((const struct outing *)(const void *)d->rows->data)[i];
}

static const struct outing *
selected(const struct outings_data *d)
{
	const struct row *row = list_row(&d->list);

	return row ? row_at(d, row->index) : NULL;
}

static void
open_outings(struct app *a, void *data, gint64 subject)
{
	(void)a, (void)subject;
	list_init(&((struct outings_data *)data)->list);
}

static void
clear_rows(struct outings_data *d)
{
	g_clear_pointer(&d->rows, g_array_unref);
	g_clear_pointer(&d->months, g_array_unref);
	g_clear_pointer(&d->engines, g_array_unref);
}

static void
clear_outings(void *data)
{
	clear_rows(data);
	list_clear(&((struct outings_data *)data)->list);
}

static gint64
trip_of(const struct outing *o)
{
	return o->trip == NONE ? o->id : o->trip;
}

/* The row of a trip's first engine, which holds the words; the row itself where the page ends between the two. */
static int
first_row(const struct outings_data *d, int i)
{
	const struct outing *o = row_at(d, i);

	for (int k = i + 1; o->trip != NONE && k < (int)d->rows->len && row_at(d, k)->date == o->date; k++)
		if (row_at(d, k)->id == o->trip)
			return k;
	return i;
}

static void
add_line(struct outings_data *d, int i, const struct outing *first)
{
	const struct outing *o = row_at(d, i);
	char day[DAY_TEXT];

	list_add(&d->list, FALSE, i, o->id, g_strdup_printf("%s %s %s %s", day_iso(o->date, day), first->place ? first->place : "",
							     first->remark ? first->remark : "", word_of(&words_water, o->water)));
}

/* Takes the rows over.  The log has the newest first; of one outing's, the first engine's line leads.  came: an outing
 * was logged since they were read. */
static void
take_rows(struct outings_data *d, GArray *rows, gboolean came)
{
	list_begin(&d->list);
	if (d->rows)
		g_array_unref(d->rows);
	d->rows = rows;
	for (int i = 0; i < (int)rows->len; i++) {
		const struct outing *o = row_at(d, i);

		if (first_row(d, i) != i)
			continue;
		add_line(d, i, o);
		for (int k = i - 1; k >= 0 && row_at(d, k)->date == o->date; k--)
			if (row_at(d, k)->trip == o->id)
				add_line(d, k, o);
	}
	if (came)
		list_settle_new(&d->list);
	else
		list_settle(&d->list);
}

/* So many rows around the selected one, or from the newest. */
static gboolean
read_page(struct app *a, struct outings_data *d, int rows_each_way, gboolean came, GError **err)
{
	const struct outing *o = d->rows ? selected(d) : NULL;
	const struct outings_page page = { a->boat.id, o ? o->date : NONE, o ? o->id : NONE, rows_each_way, rows_each_way };
	GArray *rows = book_outings_page(a->book, &page, err);

	if (!rows)
		return FALSE;
	take_rows(d, rows, came);
	d->more_newer = d->list.at + MAX_ENGINES >= rows_each_way;
	d->more_older = (int)rows->len - d->list.at + MAX_ENGINES >= rows_each_way;
	return TRUE;
}

static int
outings_in(const GArray *months)
{
	const struct month_sum *m = (const void *)months->data;
	int n = 0;

	for (guint i = 0; i < months->len; i++)
		n += m[i].outings;
	return n;
}

static gboolean
load_outings(struct app *a, void *data, GError **err)
{
	struct outings_data *d = data;
	int were;

	if (a->boat.id == NONE)
		return TRUE;
	d->today = app_today(a);
	were = d->months ? outings_in(d->months) : G_MAXINT;
	g_clear_pointer(&d->months, g_array_unref);
	g_clear_pointer(&d->engines, g_array_unref);
	d->months = book_hours_by_month(a->book, a->boat.id, err);
	d->engines = d->months ? book_records(a->book, RECORD_ENGINE, a->boat.id, err) : NULL;
	return d->engines
	    && read_page(a, d, d->list.filter ? SEARCH : PAGE, !d->list.filter && outings_in(d->months) > were, err);
}

static const struct engine *
engine_of(const struct outings_data *d, gint64 id)
{
	const struct engine *e = (const void *)d->engines->data;

	for (guint i = 0; i < d->engines->len; i++)
		if (e[i].id == id)
			return &e[i];
	return NULL;
}

static char *
hours_of(const struct outing *o)
{
	char h[HOURS_TEXT];

	if (o->engine == NONE)
		return g_strdup("no engine");
	hours_words(o->hours, h);
	return g_strdup_printf("%s%s%s h", o->estimated == 1 ? "~" : "", h, strchr(h, '.') ? "" : ".0");
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct outings_data *d = data;
	const struct outing *o = row_at(d, row->index);
	g_autofree char *hours = hours_of(o);
	const struct engine *e = engine_of(d, o->engine);
	gboolean several = d->engines->len > 1, wide = line->w >= 70, roomy = line->w >= (several ? 81 : 70);
	char day[16], m[HOURS_TEXT];
	int x = 0;

	(void)is_selected;
	if (first_row(d, row->index) == row->index)
		area_put_in(line, 0, x, 11, STYLE_PLAIN, day_words(o->date, day));
	x += 12;
	if (several) {
		area_put_in(line, 0, x, 10, STYLE_PLAIN, e ? e->name : "");
		x += 11;
	}
	area_put_in(line, 0, x, -9, STYLE_PLAIN, hours);
	x += 11;
	if (roomy && o->reading != NONE)
		area_printf(line, 0, x, STYLE_PLAIN, "meter %s", hours_words(o->reading, m));
	x += roomy ? 15 : 0;
	if (wide) {
		area_put_in(line, 0, x, 9, STYLE_PLAIN, word_of(&words_water, o->water));
		area_put_in(line, 0, x + 10, 7, STYLE_PLAIN, o->rinsed == 1 ? "rinsed" : "");
		x += 18;
	}
	if (o->place || o->remark) {
		g_autofree char *text = g_strdup_printf("%s%s%s", o->place ? o->place : "", o->place && o->remark ? ": " : "",
							o->remark ? o->remark : "");

		area_put(line, 0, x, STYLE_PLAIN, text);
	}
}

static struct panes
parts_of(const void *data, const struct area *a)
{
	(void)data;
	return panes_of(a, MIN(a->w * 11 / 20, LIST_W), BELOW);
}

static void
draw_outings(const void *data, const struct area *a)
{
	const struct outings_data *d = data;
	struct panes p = parts_of(data, a);
	struct area months = p.pane, years;
	const char *together;

	list_draw(&d->list, &p.list, draw_line, d, " No outing is on record: o logs one.");
	panes_rule(&p);
	if (!p.pane.h || !d->months)
		return;
	together = d->engines->len > 1 ? ", all engines together" : "";
	if (p.rule.h) {
		if (*together)
			area_printf(&p.rule, 0, 1, STYLE_HEAD, " hours by month%s ", together);
		years = area_part(&p.pane, 4, 0, p.pane.h - 4, p.pane.w);
		draw_hours_by_month(d->months, d->today, &months, 3);
	} else {
		years = area_part(&p.pane, 9, 0, p.pane.h - 9, p.pane.w);
		months = area_part(&p.pane, 1, 0, 6, p.pane.w);
		area_printf(&p.pane, 0, 1, STYLE_HEAD, "Hours by month%s", together);
		draw_hours_by_month(d->months, d->today, &months, 5);
		area_put(&p.pane, 8, 1, STYLE_HEAD, "Year to year");
	}
	draw_hours_by_year(d->months, d->today, &years);
}

/* What an engine ran and has: "main: 2.4 h; the meter showed 614.8 h; 614.8 h at the end of that day". */
static gboolean
add_engine_words(struct app *a, const struct outings_data *d, const struct outing *o, GString *out, GError **err)
{
	const struct engine *e = engine_of(d, o->engine);
	g_autofree char *hours = hours_of(o);
	struct engine_hours after = { .total = NONE };
	char h[HOURS_TEXT];

	if (e && !book_engine_hours(a->book, e, o->date, &after, err))
		return FALSE;
	g_string_append_printf(out, "%s%s%s%s", e ? e->name : "", e ? ": " : "", hours,
			       o->estimated == 1 ? ", estimated or not logged" : "");
	if (o->reading != NONE)
		g_string_append_printf(out, "; the meter showed %s h", hours_words(o->reading, h));
	if (after.total != NONE)
		g_string_append_printf(out, "; %s%s h at the end of that day", after.estimated ? "about " : "",
				       hours_words(after.total, h));
	g_string_append_c(out, '\n');
	return TRUE;
}

static void
add_rest_words(const struct outing *o, GString *out)
{
	g_string_append_printf(out, "water: %s\n", o->water == NONE ? "as usual there" : word_of(&words_water, o->water));
	g_string_append_printf(out, "rinsed: %s\n", o->rinsed == NONE ? "not said" : o->rinsed ? "yes" : "no");
	if (o->place)
		g_string_append_printf(out, "place: %s\n", o->place);
	if (o->remark)
		g_string_append_printf(out, "%s\n", o->remark);
}

/* All that is on record of an outing, as a page. */
static void
show_whole(struct app *a, const struct outings_data *d, const struct outing *o)
{
	GError *err = NULL;
	g_autoptr(GArray) trip = book_trip(a->book, o->id, &err);
	g_autoptr(GString) out = g_string_new(NULL);
	const struct outing *row;
	g_autofree char *title = NULL;
	char day[16];

	for (guint i = 0; !err && i < trip->len; i++)
		add_engine_words(a, d, &((const struct outing *)(const void *)trip->data)[i], out, &err);
	if (err)
		return app_complain(a, err);
	row = (const void *)trip->data;
	add_rest_words(row, out);
	title = g_strdup_printf("Outing of %s", day_words(row->date, day));
	app_page(a, title, g_strdup(out->str));
}

static void
drop(struct app *a, const struct outing *o)
{
	GError *err = NULL;
	char day[16];

	day_words(o->date, day);
	if (!book_drop_outing(a->book, o->id, &err))
		return app_complain(a, err);
	app_say(a, STYLE_STRONG, "the outing of %s is out of the log; u brings it back", day);
	app_changed(a);
}

/* To the newest or the oldest of the whole log, not of the page. */
static void
go_to_end(struct app *a, struct outings_data *d, gboolean oldest)
{
	const struct outings_page page = { a->boat.id, oldest ? DAY_FIRST : NONE, 0, oldest ? 2 * PAGE : 0, oldest ? 0 : 2 * PAGE };
	GError *err = NULL;
	GArray *rows = book_outings_page(a->book, &page, &err);

	if (!rows)
		return app_complain(a, err);
	take_rows(d, rows, FALSE);
	d->more_newer = oldest && rows->len >= 2 * PAGE;
	d->more_older = !oldest && rows->len >= 2 * PAGE;
	list_act(&d->list, oldest ? ACT_LAST : ACT_FIRST, 1);
}

static gboolean
near_the_edge(const struct outings_data *d)
{
	return (d->more_newer && d->list.at < EDGE) || (d->more_older && d->list.at + EDGE > (int)d->rows->len);
}

static gboolean
move_on(struct app *a, struct outings_data *d, enum act act)
{
	const struct area body = { NULL, 0, 0, a->h - 3, a->w };
	GError *err = NULL;

	if ((act == ACT_FIRST || act == ACT_LAST) && !d->list.filter)
		go_to_end(a, d, act == ACT_LAST);
	else
		list_act(&d->list, act, parts_of(d, &body).list.h);
	if (near_the_edge(d) && !d->list.filter && !read_page(a, d, PAGE, FALSE, &err))
		app_complain(a, err);
	return TRUE;
}

/* A search is of more than a page; FALSE: the search itself is the screens'. */
static gboolean
look_further(struct app *a, struct outings_data *d)
{
	GError *err = NULL;

	if (!read_page(a, d, SEARCH, FALSE, &err))
		app_complain(a, err);
	return FALSE;
}

static gboolean
act_outings(struct app *a, void *data, enum act act)
{
	struct outings_data *d = data;
	const struct outing *o = d->rows ? selected(d) : NULL;

	if (act == ACT_ADD) {
		form_open(a, &form_outing, NONE);
		return TRUE;
	}
	if (!o)
		return FALSE;
	if (act == ACT_FILTER)
		return look_further(a, d);
	if (act >= ACT_UP && act <= ACT_LAST)
		return move_on(a, d, act);
	if (act == ACT_OPEN)
		show_whole(a, d, o);
	else if (act == ACT_FOUND)
		form_open(a, &form_found_on_outing, trip_of(o));
	else if (act == ACT_CHANGE)
		form_open(a, &form_outing, trip_of(o));
	else if (act == ACT_DROP)
		drop(a, o);
	else
		return FALSE;
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct outings_data *)data)->list;
}

const struct view_kind view_outings = {
	.where = IN_OUTINGS,
	.size = sizeof(struct outings_data),
	.open = open_outings,
	.load = load_outings,
	.draw = draw_outings,
	.act = act_outings,
	.list = list_of,
	.parts = parts_of,
	.clear = clear_outings,
};
