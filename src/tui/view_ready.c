/* The launch check: what holds the launch, what is to be mended this season, what nobody knows. */
#include "tui/app.h"

#include "base/date.h"
#include "logbook/finding.h"
#include "logbook/page.h"
#include "logbook/ready.h"
#include "tui/due_story.h"
#include "tui/form.h"
#include "tui/list.h"
#include "tui/pane.h"

#include <string.h>

/* Of the answer above, of the story below, and of the column with what a failure does. */
enum { ANSWER = 2, BELOW = 6, COST_W = 8 };

struct ready_data {
	const struct due_list *due;	/* the app's */
	struct ready *r;
	char *answer;
	struct list list;
};

static const struct ready_item *
selected(const struct ready_data *d)
{
	const struct row *row = d->r ? list_row(&d->list) : NULL;

	return row ? ready_at(d->r, row->index) : NULL;
}

static void
open_ready(struct app *a, void *data, gint64 subject)
{
	struct ready_data *d = data;

	(void)subject;
	d->due = a->due;
	list_init(&d->list);
}

static void
let_go(struct ready_data *d)
{
	g_clear_pointer(&d->r, ready_free);
	g_clear_pointer(&d->answer, g_free);
}

static void
clear_ready(void *data)
{
	struct ready_data *d = data;

	let_go(d);
	list_clear(&d->list);
}

static gint64
key_of(const struct ready_item *i, int at)
{
	gint64 key = i->task != NONE ? i->task : i->finding != NONE ? i->finding : i->happening;

	return key == NONE ? at : key;
}

static gboolean
load_ready(struct app *a, void *data, GError **err)
{
	struct ready_data *d = data;
	int group = -1;

	if (a->boat.id == NONE)
		return TRUE;
	list_begin(&d->list);	/* empty, should anything fail */
	let_go(d);
	d->r = book_ready_of(a->book, &a->boat, a->due, err);
	if (!d->r)
		return FALSE;
	d->answer = ready_answer(d->r);
	for (int i = 0; i < ready_count(d->r); i++) {
		const struct ready_item *item = ready_at(d->r, i);

		if ((int)item->group != group)
			list_add(&d->list, TRUE, -1, NONE, g_strdup(ready_heading(item->group)));
		group = (int)item->group;
		list_add(&d->list, FALSE, i, key_of(item, i), g_strdup_printf("%s %s", item->words, item->name ? item->name : ""));
	}
	list_settle(&d->list);
	return TRUE;
}

static void
draw_line(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct ready_data *d = data;
	const struct ready_item *i;
	enum style style;

	if (row->heading) {
		area_put(line, 0, 0, STYLE_HEAD, row->text);
		return;
	}
	i = ready_at(d->r, row->index);
	style = is_selected ? STYLE_SELECTED : i->group == READY_HOLDS && i->until == NONE ? STYLE_PAST : STYLE_PLAIN;
	area_put_in(line, 0, 0, COST_W, style, i->until != NONE ? "passes" : word_of(&words_consequence, i->consequence));
	area_put_in(line, 0, COST_W + 1, line->w - COST_W - 1, style, i->words);
}

static struct panes
parts_of(const void *data, const struct area *a)
{
	const struct area rest = area_part(a, ANSWER, 0, a->h - ANSWER, a->w);

	(void)data;
	return panes_of(&rest, rest.w * 3 / 5, BELOW);
}

static void
draw_ready(const void *data, const struct area *a)
{
	const struct ready_data *d = data;
	const struct ready_item *i = selected(d);
	struct panes p = parts_of(data, a);
	g_autofree char *words = i ? ready_item_words(i) : NULL, *text = NULL;

	area_put(a, 0, 1, STYLE_STRONG, d->answer ? d->answer : "");
	area_put(a, 1, 1, STYLE_PLAIN, "as far as is on record; no certificate");
	text = words ? g_strdup_printf("%s\n%s", words, ready_caveat()) : g_strdup(ready_caveat());
	list_draw(&d->list, &p.list, draw_line, d, " Nothing is on record against it.");
	panes_rule(&p);
	panes_text(&p, text);
}

static void
show_finding(struct app *a, gint64 id)
{
	struct finding f;
	GError *err = NULL;
	char *text = book_record(a->book, RECORD_FINDING, id, &f, &err) ? finding_story(a->book, &f, TRUE, &err) : NULL;

	if (text)
		app_page(a, f.words, text);
	else
		app_complain(a, err);
	record_clear(RECORD_FINDING, &f);
}

/* All that is known of it; what a happening asks for stands with the happenings. */
static void
show_whole(struct app *a, const struct ready_item *i)
{
	const struct due_line *line = i->task == NONE ? NULL : due_find(a->due, i->task);

	if (line)
		app_page(a, line->label, due_story(a->book, a->due, line));
	else if (i->finding != NONE)
		show_finding(a, i->finding);
	else if (i->happening != NONE)
		app_open(a, &view_happenings, NONE);
	else
		app_page(a, i->words, ready_item_words(i));
}

static gboolean
can_pass(const struct ready_item *i)
{
	return i->group == READY_HOLDS && i->name && i->until == NONE;
}

static gboolean
means(const void *data, enum act act)
{
	const struct ready_item *i = selected(data);

	if (act == ACT_PASS)
		return i && can_pass(i);
	if (act == ACT_DID)
		return i && i->task != NONE;
	if (act == ACT_MEND)
		return i && i->finding != NONE;
	return act != ACT_OPEN || i;
}

static void
let_pass(struct app *a, const struct ready_item *i)
{
	if (i->ground == READY_PLUGS && !i->name)
		return app_say(a, STYLE_PLAIN, "drain plugs are not let pass, they are counted in: by what stands with them");
	if (i->group != READY_HOLDS || !i->name)
		return app_say(a, STYLE_PLAIN, "only what holds the launch is let pass");
	if (i->until != NONE)
		return app_say(a, STYLE_PLAIN, "%s lets it pass already", i->who);
	form_open(a, &form_waive, key_of(i, 0));
}

static gboolean
act_ready(struct app *a, void *data, enum act act)
{
	const struct ready_item *i = selected(data);

	if (!i)
		return FALSE;
	if (act == ACT_OPEN)
		show_whole(a, i);
	else if (act == ACT_PASS)
		let_pass(a, i);
	else if (act == ACT_DID && i->task != NONE)
		form_open(a, &form_did, i->task);
	else if (act == ACT_MEND && i->finding != NONE)
		form_open(a, &form_mend, i->finding);
	else
		return FALSE;
	return TRUE;
}

static struct list *
list_of(void *data)
{
	return &((struct ready_data *)data)->list;
}

const struct view_kind view_ready = {
	.where = IN_READY,
	.size = sizeof(struct ready_data),
	.open = open_ready,
	.load = load_ready,
	.draw = draw_ready,
	.act = act_ready,
	.means = means,
	.list = list_of,
	.parts = parts_of,
	.clear = clear_ready,
};
