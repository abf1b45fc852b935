/* Seasons and stays: the year drawn, and what it was for each thing that wears. */
#include "tui/app.h"

#include "base/date.h"
#include "logbook/year.h"
#include "tui/form.h"
#include "tui/list.h"
#include "tui/pane.h"
#include "tui/year_band.h"

/* The year's band, beside the list or below it; from that width on a row has all its words. */
enum { LIST_W = 76, BELOW = 9, WIDE = 60 };

struct year_data {
	GArray *seasons, *stays;	/* struct season, struct stay */
	struct due_list *life;	/* its timeline reaches back to all of them */
	struct list list;
	gint64 today, from;	/* from: the first day that the timeline tells of */
};

/* Rows of stays have their index behind those of the seasons. */
static const struct season *
season_at(const struct year_data *d, int i)
{
	return i < (int)d->seasons->len ? &((const struct season *)(const void *)d->seasons->data)[i] : NULL;
}

static const struct stay *
stay_at(const struct year_data *d, int i)
{
	return &((const struct stay *)(const void *)d->stays->data)[i - (int)d->seasons->len];
}

static gint64
date_at(const struct year_data *d, int i)
{
	return season_at(d, i) ? season_at(d, i)->launch : stay_at(d, i)->date;
}

static void
open_year(struct app *a, void *data, gint64 subject)
{
	struct year_data *d = data;

	(void)a, (void)subject;
	list_init(&d->list);
	d->life = due_list_new();
}

static void
clear_year(void *data)
{
	struct year_data *d = data;

	list_clear(&d->list);
	due_list_free(d->life);
	g_clear_pointer(&d->seasons, g_array_unref);
	g_clear_pointer(&d->stays, g_array_unref);
}

/* "177 days, 51.5 h, 36 outings"; in a narrow place without the outings. */
static char *
used_words(const struct year_data *d, gint64 from, gint64 until, gboolean wide)
{
	const struct timeline *t = due_timeline(d->life);
	int days = (int)(until - from), outings = timeline_outings(t, from - 1, until);
	double hours = timeline_seconds(t, -1, MECH_NONE, from - 1, until) / 3600;

	if (!wide)
		return g_strdup_printf("%d %s, %.1f h", days, days == 1 ? "day" : "days", hours);
	return g_strdup_printf("%d %s, %.1f h, %d %s", days, days == 1 ? "day" : "days", hours, outings,
			       outings == 1 ? "outing" : "outings");
}

/* In a narrow place without the day on which it ended. */
static char *
season_words(const struct year_data *d, const struct season *s, gboolean wide)
{
	char in[16], out[16];
	gboolean planned = s->planned == 1;
	const char *until = s->haul_out != NONE ? day_words(s->haul_out, out) : planned ? "?" : "now";
	g_autofree char *used = planned ? g_strdup("planned")
					: used_words(d, s->launch, s->haul_out == NONE ? d->today : s->haul_out, wide);

	if (wide)
		return g_strdup_printf("season  %s to %s, %s", day_words(s->launch, in), until, used);
	return g_strdup_printf("season %s%s, %s", day_words(s->launch, in), s->haul_out == NONE && !planned ? " to now" : "", used);
}

static char *
stay_words(const struct stay *s, gboolean wide)
{
	char from[16], until[16];
	g_autofree char *lay = g_strdup_printf("%s%s%s%s%s", word_of(&words_stand, s->stand), s->water == NONE ? "" : ", ",
					       word_of(&words_water, s->water), s->place ? ", " : "", s->place ? s->place : "");

	if (wide)
		return g_strdup_printf("stay    %s to %s, %s", day_words(s->date, from),
				       s->until == NONE ? "now" : day_words(s->until, until), lay);
	return g_strdup_printf("stay   %s%s, %s", day_words(s->date, from), s->until == NONE ? " to now" : "", lay);
}

static char *
row_words(const struct year_data *d, int i, gboolean wide)
{
	return season_at(d, i) ? season_words(d, season_at(d, i), wide) : stay_words(stay_at(d, i), wide);
}

static int
later_first(gconstpointer x, gconstpointer y, gpointer data)
{
	gint64 a = date_at(data, *(const int *)x), b = date_at(data, *(const int *)y);

	return a < b ? 1 : a > b ? -1 : *(const int *)x - *(const int *)y;
}

/* What is on record, the latest first. */
static GArray *
in_order(struct year_data *d)
{
	GArray *order = g_array_new(FALSE, FALSE, sizeof(int));

	for (int i = 0; i < (int)(d->seasons->len + d->stays->len); i++) {
		g_array_append_val(order, i);
		d->from = MIN(d->from, date_at(d, i));
	}
	g_array_sort_with_data(order, later_first, d);
	return order;
}

static void
list_all(struct year_data *d, const GArray *order)
{
	for (guint k = 0; k < order->len; k++) {
		int i = ((const int *)(const void *)order->data)[k];

		list_add(&d->list, FALSE, i, season_at(d, i) ? season_at(d, i)->id : stay_at(d, i)->id, row_words(d, i, TRUE));
	}
	list_settle_new(&d->list);
}

static gboolean
load_year(struct app *a, void *data, GError **err)
{
	struct year_data *d = data;
	g_autoptr(GArray) order = NULL;

	if (a->boat.id == NONE)
		return TRUE;
	list_begin(&d->list);	/* empty, should anything fail */
	g_clear_pointer(&d->seasons, g_array_unref);
	g_clear_pointer(&d->stays, g_array_unref);
	d->today = d->from = app_today(a);
	if (a->boat.since != NONE)
		d->from = MIN(d->from, a->boat.since);
	if (!(d->seasons = book_records(a->book, RECORD_SEASON, a->boat.id, err))
	    || !(d->stays = book_records(a->book, RECORD_STAY, a->boat.id, err)))
		return FALSE;
	order = in_order(d);
	if (!book_life(a->book, &a->boat, d->from, d->life, err))
		return FALSE;
	list_all(d, order);
	return TRUE;
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean selected)
{
	g_autofree char *narrow = line->w < WIDE ? row_words(data, row->index, FALSE) : NULL;

	(void)selected;
	area_put(line, 0, 0, STYLE_PLAIN, narrow ? narrow : row->text);
}

static struct panes
parts_of(const void *data, const struct area *a)
{
	(void)data;
	return panes_of(a, LIST_W, BELOW);
}

static void
draw_pane(const struct year_data *d, const struct area *a)
{
	const struct row *row = list_row(&d->list);
	struct year_band band = { .life = due_timeline(d->life), .from = d->from, .today = d->today };
	int month, mday;

	day_to_ymd(row ? date_at(d, row->index) : d->today, &band.year, &month, &mday);
	year_draw(&band, a);
}

static void
draw_year(const void *data, const struct area *a)
{
	const struct year_data *d = data;
	struct panes p = parts_of(data, a);

	if (!d->seasons || !d->stays)
		return;
	list_draw(&d->list, &p.list, draw_line, d, " No season and no stay is on record: a adds one.");
	panes_rule(&p);
	if (p.pane.h)
		draw_pane(d, &p.pane);
}

static void
drop(struct app *a, const struct year_data *d, int i)
{
	gboolean season = season_at(d, i) != NULL;
	g_autofree char *words = row_words(d, i, TRUE);
	GError *err = NULL;

	if (!book_drop_dated(a->book, season ? RECORD_SEASON : RECORD_STAY, season ? season_at(d, i)->id : stay_at(d, i)->id,
			     date_at(d, i), &err))
		return app_complain(a, err);
	app_say(a, STYLE_STRONG, "taken out: %s; u brings it back", words);
	app_changed(a);
}

/* All that is known of a season or a stay: how long, how much it was used, and what that counts as. */
static void
show_whole(struct app *a, const struct year_data *d, int i)
{
	const struct season *season = season_at(d, i);
	const char *remark = season ? season->remark : stay_at(d, i)->remark;
	gint64 from = date_at(d, i), until = season ? season->haul_out : stay_at(d, i)->until;
	g_autofree char *words = row_words(d, i, TRUE);
	GString *out = g_string_new(words);

	until = until == NONE ? d->today : MIN(until, d->today);
	if (!season && from < until) {
		g_autofree char *used = used_words(d, from, until, TRUE);

		g_string_append_printf(out, "\n%s", used);
	}
	g_string_append_printf(out, "\n%s\n", remark ? remark : "no remark");
	if (from > d->today || (season && season->planned == 1))
		g_string_append(out, "It is not so yet: nothing has worn.\n");
	else
		year_add_days(out, due_timeline(d->life), from, until);
	app_page(a, season ? "A season" : "A stay", g_string_free(out, FALSE));
}

static gboolean
act_year(struct app *a, void *data, enum act act)
{
	const struct year_data *d = data;
	const struct row *row = list_row(&d->list);
	gboolean stay = row && !season_at(d, row->index);

	if (act == ACT_ADD) {
		form_open(a, stay ? &form_stay : &form_season, NONE);
		return TRUE;
	}
	if (act == ACT_STAY) {
		form_open(a, &form_stay, NONE);
		return TRUE;
	}
	if (!row)
		return FALSE;
	if (act == ACT_OPEN)
		show_whole(a, d, row->index);
	else if (act == ACT_CHANGE)
		form_open(a, stay ? &form_stay : &form_season, row->key);
	else if (act == ACT_DROP)
		drop(a, d, row->index);
	else
		return FALSE;
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct year_data *)data)->list;
}

const struct view_kind view_year = {
	.where = IN_YEAR,
	.size = sizeof(struct year_data),
	.open = open_year,
	.load = load_year,
	.draw = draw_year,
	.act = act_year,
	.list = list_of,
	.parts = parts_of,
	.clear = clear_year,
};
