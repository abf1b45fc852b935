/* The season's lists, to choose one: that which comes next is selected. */
#include "tui/app.h"

#include "base/date.h"
#include "engine/timeline.h"
#include "tui/list.h"
#include "tui/season_story.h"

struct lists_data {
	const struct due_list *due;	/* the app's */
	struct list list;
	gboolean begun;	/* the coming one was selected once */
};

static void
open_lists(struct app *a, void *data, gint64 subject)
{
	struct lists_data *d = data;

	(void)subject;
	d->due = a->due;
	list_init(&d->list);
}

static void
clear_lists(void *data)
{
	list_clear(&((struct lists_data *)data)->list);
}

static gboolean
load_lists(struct app *a, void *data, GError **err)
{
	struct lists_data *d = data;
	enum season_list next;

	(void)err;
	list_begin(&d->list);
	if (a->boat.id == NONE)
		return TRUE;
	next = season_next(d->due);
	list_add(&d->list, TRUE, -1, NONE, g_strdup("Which list of the season?"));
	for (int i = 0; i < SEASON_LISTS; i++) {
		gint64 day = season_list_day(d->due, (enum season_list)i);
		char words[16];

		list_add(&d->list, FALSE, i, i,
			 g_strdup_printf("%-17s %-12s%s", season_list_title((enum season_list)i),
					 day == NONE ? "" : day_words(day, words), i == (int)next ? " comes next" : ""));
	}
	list_settle(&d->list);
	if (!d->begun)
		list_select(&d->list, (gint64)next);
	d->begun = TRUE;
	return TRUE;
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	(void)data;
	area_put(line, 0, 0, row->heading ? STYLE_HEAD : is_selected ? STYLE_SELECTED : STYLE_PLAIN, row->text);
}

static void
draw_lists(const void *data, const struct area *a)
{
	list_draw(&((const struct lists_data *)data)->list, a, draw_line, data, " There is no boat yet.");
}

/* The list, and over it the cautions that come before its work. */
static void
open_one(struct app *a, enum season_list list)
{
	const struct season_work *w;
	g_autofree char *words = NULL, *title = g_strdup_printf("%s: before the work", season_list_title(list));

	app_open(a, &view_season_list, (gint64)list);
	w = season_shown(a);
	words = w ? season_cautions(w) : NULL;
	if (words)
		app_heed(a, title, word_of(&words_season_list, (gint64)list), words);
}

static gboolean
act_lists(struct app *a, void *data, enum act act)
{
	const struct row *row = list_row(&((struct lists_data *)data)->list);

	if (!row || act != ACT_OPEN)
		return FALSE;
	open_one(a, (enum season_list)row->key);
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct lists_data *)data)->list;
}

const struct view_kind view_season_lists = {
	.where = IN_HISTORY,	/* where a list is read and opened, and no more */
	.size = sizeof(struct lists_data),
	.open = open_lists,
	.load = load_lists,
	.draw = draw_lists,
	.act = act_lists,
	.list = list_of,
	.clear = clear_lists,
};
