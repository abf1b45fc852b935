/* What was found wrong: open, the worst first, and below that what was mended. */
#include "tui/app.h"

#include "base/date.h"
#include "logbook/finding.h"
#include "logbook/page.h"
#include "tui/form.h"
#include "tui/job_view.h"
#include "tui/list.h"
#include "tui/pane.h"

/* Of the story below; of the columns: level, day, season from a width on. */
enum { BELOW = 8, LEVEL_W = 6, DAY_W = 11, SEASON_W = 11, SEASON_FROM_W = 60, WORDS_AT = LEVEL_W + DAY_W + 2 };

struct findings_data {
	struct book *book;	/* the app's */
	GArray *all;	/* struct finding, as listed */
	GArray *seasons, *fittings;
	gint64 today;
	struct list list;
};

static const struct finding *
at(const struct findings_data *d, int i)
{
	return &((const struct finding *)(const void *)d->all->data)[i];
}

static const struct finding *
selected(const struct findings_data *d)
{
	const struct row *row = d->all ? list_row(&d->list) : NULL;

	return row ? at(d, row->index) : NULL;
}

static const char *
title_of(const struct findings_data *d, const struct finding *f)
{
	const struct fitting *all = (const void *)d->fittings->data;

	for (guint i = 0; i < d->fittings->len; i++)
		if (all[i].id == f->fitting)
			return all[i].title;
	return "";
}

static void
open_findings(struct app *a, void *data, gint64 subject)
{
	(void)a, (void)subject;
	list_init(&((struct findings_data *)data)->list);
}

static void
let_go(struct findings_data *d)
{
	g_clear_pointer(&d->all, g_array_unref);
	g_clear_pointer(&d->seasons, g_array_unref);
	g_clear_pointer(&d->fittings, g_array_unref);
}

static void
clear_findings(void *data)
{
	struct findings_data *d = data;

	let_go(d);
	list_clear(&d->list);
}

static gboolean
load_findings(struct app *a, void *data, GError **err)
{
	struct findings_data *d = data;

	if (a->boat.id == NONE)
		return TRUE;
	list_begin(&d->list);	/* empty, should anything fail */
	let_go(d);
	d->book = a->book;
	d->today = app_today(a);
	if (!(d->seasons = book_records(a->book, RECORD_SEASON, a->boat.id, err))
	    || !(d->fittings = book_records(a->book, RECORD_FITTING, a->boat.id, err))
	    || !(d->all = book_findings(a->book, a->boat.id, TRUE, err)))
		return FALSE;
	for (int i = 0; i < (int)d->all->len; i++) {
		const struct finding *f = at(d, i);

		if (f->mended != NONE && (!i || at(d, i - 1)->mended == NONE))
			list_add(&d->list, TRUE, -1, NONE, g_strdup("MENDED"));
		list_add(&d->list, FALSE, i, f->id, g_strdup_printf("%s %s %s", word_of(&words_level, f->level), title_of(d, f),
								    f->words));
	}
	list_settle_new(&d->list);
	return TRUE;
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct findings_data *d = data;
	const struct finding *f;
	enum style style;
	int right = line->w >= SEASON_FROM_W ? SEASON_W + 1 : 0;
	g_autofree char *words = NULL;
	char day[16], season[16];

	if (row->heading) {
		area_put(line, 0, 0, STYLE_HEAD, row->text);
		return;
	}
	f = at(d, row->index);
	style = is_selected			       ? STYLE_SELECTED
		: f->mended == NONE && f->level == LEVEL_HOLD ? STYLE_PAST
		: f->mended == NONE && f->level == LEVEL_MEND ? STYLE_SOON
							      : STYLE_PLAIN;
	area_put_in(line, 0, 0, LEVEL_W, style, f->mended == NONE ? word_of(&words_level, f->level) : "mended");
	area_put_in(line, 0, LEVEL_W + 1, DAY_W, style, day_words(f->mended == NONE ? f->date : f->mended, day));
	words = g_strdup_printf("%s: %s", title_of(d, f), f->words);
	area_put_in(line, 0, WORDS_AT, line->w - WORDS_AT - right, style, words);
	if (right)
		area_put_in(line, 0, line->w - SEASON_W, -SEASON_W, style,
			    finding_season_words(finding_season(f, d->seasons, d->today), season));
}

static struct panes
parts_of(const void *data, const struct area *a)
{
	(void)data;
	return panes_of(a, a->w * 3 / 5, BELOW);
}

static void
draw_findings(const void *data, const struct area *a)
{
	const struct findings_data *d = data;
	const struct finding *f = selected(d);
	struct panes p = parts_of(data, a);
	g_autofree char *text = f && p.pane.h ? finding_story(d->book, f, FALSE, NULL) : NULL;

	list_draw(&d->list, &p.list, draw_line, d, " Nothing was found wrong, by the log: a records what was seen.");
	panes_rule(&p);
	panes_text(&p, text ? text : "");
}

static void
show_whole(struct app *a, const struct findings_data *d, const struct finding *f)
{
	GError *err = NULL;
	char *text = finding_story(a->book, f, TRUE, &err);

	if (!text)
		return app_complain(a, err);
	app_page(a, title_of(d, f), text);
}

static void
mend_or_reopen(struct app *a, const struct finding *f)
{
	struct finding again;
	GError *err = NULL;

	if (f->mended == NONE)
		return form_open(a, &form_mend, f->id);
	if (book_record(a->book, RECORD_FINDING, f->id, &again, &err) && book_reopen(a->book, &again, &err)) {
		app_say(a, STYLE_STRONG, "open again: %s; u takes that back", again.words);
		app_changed(a);
	} else {
		app_complain(a, err);
	}
	record_clear(RECORD_FINDING, &again);
}

static void
drop(struct app *a, const struct finding *f)
{
	GError *err = NULL;

	if (!book_drop_finding(a->book, f, &err))
		return app_complain(a, err);
	app_say(a, STYLE_STRONG, "taken out; u brings it back");
	app_changed(a);
}

/* The command does it; the screens stay as they are meanwhile. */
static void
photos(struct app *a, const struct finding *f)
{
	g_autofree char *key = book_key_text(f->id);
	const char *const words[] = { "found", "--view", key, NULL };

	g_strfreev(a->run);
	a->run = g_strdupv((char **)(guintptr)words);
	a->wish = WISH_RUN;
}

static gboolean
act_findings(struct app *a, void *data, enum act act)
{
	const struct findings_data *d = data;
	const struct finding *f = selected(d);

	if (act == ACT_ADD) {
		form_open(a, &form_found, NONE);
		return TRUE;
	}
	if (!f)
		return FALSE;
	if (act == ACT_OPEN)
		show_whole(a, d, f);
	else if (act == ACT_MEND)
		mend_or_reopen(a, f);
	else if (act == ACT_CHANGE)
		form_open(a, &form_found_again, f->id);
	else if (act == ACT_PHOTOS)
		photos(a, f);
	else if (act == ACT_DROP)
		drop(a, f);
	else if (act == ACT_JOBS)
		jobs_for(a, NONE, f->mended == NONE ? f->id : NONE);
	else
		return FALSE;
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct findings_data *)data)->list;
}

const struct view_kind view_findings = {
	.where = IN_FINDINGS,
	.size = sizeof(struct findings_data),
	.open = open_findings,
	.load = load_findings,
	.draw = draw_findings,
	.act = act_findings,
	.list = list_of,
	.parts = parts_of,
	.clear = clear_findings,
};
