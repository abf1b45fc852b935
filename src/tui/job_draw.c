/* How a job looks: where it stands, which side of it shows, and its rows, each with its state as a word before it. */
#include "tui/job_view.h"

#include "base/date.h"
#include "base/text.h"
#include "logbook/caution.h"
#include "logbook/removal_parse.h"
#include "tui/pane.h"

#include <string.h>

enum {
	BELOW = 6,
	STATE_W = 10,
	COLUMNS_W = 90,
	COUNT_W = 9, /* from that width on found and left stand side by side */
	NOTE_H = PANE_BELOW_H + 4,
	ROOMY_W = 160,
	SMALL_W = 60,
	SMALL_H = 8,
	SMALL_ROWS = 2,
};

static const char *const face_words[JOB_FACES] = { "Carry", "Work", "Strip-down", "Refit" };

/* ---- above ---- */

/* Notes show where that leaves room for a pane; they are a row of what to carry, too. */
static gboolean
shows_notes(const struct job *j, int h)
{
	return j->remark && h >= NOTE_H + (j->paused != NONE);
}

static int
head_rows(const struct job_data *d, int h)
{
	return 3 + (d->sheet->job.paused != NONE) + shows_notes(&d->sheet->job, h);
}

/* "12/38", how much of a side is settled. */
static char *
face_count(const struct job_data *d, enum job_face face)
{
	const struct job_sheet *s = d->sheet;
	int n = 0, all = 0;

	if (face == FACE_OFF)
		return g_strdup_printf(" %u", s->removals->len);
	if (face == FACE_REFIT) {
		for (int i = 0; i < (int)s->removals->len; i++)
			n += job_removal_at(s, i)->back != NONE;
		return g_strdup_printf(" %d/%u", n, s->removals->len);
	}
	for (int i = 0; i < (int)s->steps->len; i++) {
		const struct step *p = job_step_at(s, i);

		if ((p->kind < STEP_STATE) != (face == FACE_CARRY))
			continue;
		all++;
		n += p->done != NONE || p->seen;
	}
	for (int i = 0; face == FACE_WORK && i < (int)s->aims->len; i++, all++)
		n += job_aim_at(s, i)->state != AIM_OPEN && job_aim_at(s, i)->state != AIM_UNPROVED;
	return g_strdup_printf(" %d/%d", n, all);
}

static void
draw_faces(const struct job_data *d, const struct area *a, int y)
{
	gboolean counts = a->w >= 60;
	int x = 0;

	for (int f = 0; f < JOB_FACES; f++) {
		g_autofree char *count = counts ? face_count(d, (enum job_face)f) : g_strdup("");
		g_autofree char *words = g_strdup_printf(f == (int)d->face ? "[%s%s]" : " %s%s ", face_words[f], count);

		x += area_put(a, y, x, f == (int)d->face ? STYLE_STRONG : STYLE_PLAIN, words);
	}
	if (x + 7 < a->w)
		area_put(a, y, x + 1, STYLE_KEY, "Tab ->");
}

static void
draw_head(const struct job_data *d, const struct area *screen)
{
	const struct job *j = &d->sheet->job;
	struct area a = area_part(screen, 0, 1, screen->h, screen->w - 2);
	g_autofree char *state = job_state_words(j), *left = job_left_words(d->sheet, a.w);
	g_autofree char *title = g_strdup_printf("%s: %s", j->name, j->title),
			*rests = g_strdup_printf("z goes on with it. Things lie: %s", j->place);
	struct area first = area_part(&a, 0, 0, 1, a.w - text_width(state) - 1);
	int y = 3;

	area_put(&first, 0, 0, STYLE_HEAD, title);
	area_put(&a, 0, a.w - text_width(state), STYLE_STRONG, state);
	area_put(&a, 1, 0, d->sheet->open->len ? STYLE_SOON : STYLE_STRONG, left);
	draw_faces(d, &a, 2);
	if (j->paused != NONE)
		area_put(&a, y++, 0, STYLE_STRONG, rests);
	if (shows_notes(j, screen->h)) {
		g_autofree char *note = g_strdup_printf("Notes: %s", j->remark);

		area_put(&a, y, 0, STYLE_PLAIN, note);
	}
}

/* ---- rows ---- */

struct look {
	const char *state;
	enum style style;
}; /* of a row */

static struct look
step_look(const struct step *p)
{
	if (p->done == NONE && p->seen)
		return (struct look){ "left", STYLE_SOON };
	if (p->kind == STEP_PROOF)
		return p->done == NONE ? (struct look){ "NOT SEEN", STYLE_STRONG }
				       : (struct look){ "seen", STYLE_PLAIN };
	if (p->kind < STEP_STATE)
		return p->done == NONE ? (struct look){ "[ ]", STYLE_PLAIN } : (struct look){ "[x] have", STYLE_PLAIN };
	return p->done == NONE ? (struct look){ "TO DO", STYLE_STRONG } : (struct look){ "done", STYLE_PLAIN };
}

static struct look
aim_look(const struct job_aim *a)
{
	switch (a->state) {
	case AIM_OPEN:
		return (struct look){ "OPEN", STYLE_STRONG };
	case AIM_UNPROVED:
		return (struct look){ "UNPROVED", STYLE_SOON };
	case AIM_BAD:
		return (struct look){ "BAD", STYLE_PAST };
	case AIM_UNDONE:
		return (struct look){ "left", STYLE_SOON };
	case AIM_DONE:
		break;
	}
	return (struct look){ "done", STYLE_PLAIN };
}

static struct look
removal_look(const struct removal *r, enum job_face face)
{
	if (r->back != NONE)
		return (struct look){ r->kind == REMOVAL_SETTING ? "set" : "back", STYLE_PLAIN };
	if (r->kind == REMOVAL_SETTING && !r->as_found)
		return (struct look){ "TO WRITE", STYLE_SOON };
	if (r->kind == REMOVAL_SETTING)
		return (struct look){ face == FACE_REFIT ? "TO SET" : "stood",
				      face == FACE_REFIT ? STYLE_STRONG : STYLE_PLAIN };
	if (r->state == REMOVAL_MISSING)
		return (struct look){ "MISSING", STYLE_PAST };
	return r->state == REMOVAL_EXTRA ? (struct look){ "LEFT OVER", STYLE_PAST }
					 : (struct look){ "OFF", STYLE_STRONG };
}

/* Columns of "found" and of "left" in a line of that width. */
static int
found_w(int w)
{
	return (w - STATE_W - COUNT_W) / 4;
}

/* Side by side: what, as found, as left, how many are off and in. */
static void
draw_removal_wide(const struct removal *r, const struct area *line, enum style style, const char *words)
{
	int x = line->w - COUNT_W, found = found_w(line->w);
	char count[32] = "";

	if (r->count != NONE && r->back_count != NONE)
		g_snprintf(count, sizeof count, "%d / %d", (int)r->count, (int)r->back_count);
	else if (r->count != NONE)
		g_snprintf(count, sizeof count, "%d / -", (int)r->count);
	area_put_in(line, 0, x, COUNT_W, style, count);
	x -= found + 1;
	area_put_in(line, 0, x, found, style, r->as_left ? r->as_left : r->as_found && r->back == NONE ? "-" : "");
	x -= found + 1;
	area_put_in(line, 0, x, found, style, r->as_found ? r->as_found : "");
	area_put_in(line, 0, STATE_W, x - STATE_W - 1, style, words);
}

static void
draw_removal(const struct removal *r, const struct area *line, enum style style)
{
	static const char *const states[] = { "", ", RENEW", "", "" };
	g_autofree char *words = job_line_words(r);
	GString *out = g_string_new(words);

	if (line->w < COLUMNS_W && r->as_found)
		g_string_append_printf(out, ": %s", r->as_found);
	if (line->w < COLUMNS_W && r->as_left)
		g_string_append_printf(out, " -> %s", r->as_left);
	if (r->back == NONE && r->tray)
		g_string_append_printf(out, ", %s", r->tray);
	if (r->back == NONE)
		g_string_append(out, states[r->state]);
	if (line->w < COLUMNS_W && r->back != NONE && r->back_count != NONE)
		g_string_append_printf(out, ", %d in", (int)r->back_count);
	if (r->orientation)
		g_string_append_printf(out, ", %s", r->orientation);
	if (line->w >= COLUMNS_W)
		draw_removal_wide(r, line, style, out->str);
	else
		area_put_in(line, 0, STATE_W, line->w - STATE_W, style, out->str);
	g_string_free(out, TRUE);
}

static struct look
look_of(const struct job_data *d, const struct job_row *r)
{
	switch (r->kind) {
	case ROW_NOTE:
		return (struct look){ "note", STYLE_STRONG };
	case ROW_TIME:
		return (struct look){ "time", STYLE_PLAIN };
	case ROW_STORES:
		return (struct look){ "stores", STYLE_PLAIN };
	case ROW_CAUTION:
		return (struct look){ "CAUTION", STYLE_PLAIN };
	case ROW_STEP:
		return step_look(job_step_at(d->sheet, r->at));
	case ROW_WHILE:
		return (struct look){ "due", STYLE_PLAIN };
	case ROW_AIM:
		return aim_look(job_aim_at(d->sheet, r->at));
	case ROW_REMOVAL:
		return removal_look(job_removal_at(d->sheet, r->at), d->face);
	case ROW_OFFER:
		break;
	}
	return (struct look){ job_offer_at(d->sheet, r->at)->taken ? "perhaps" : "usual", STYLE_PLAIN };
}

static char *
offer_words(const struct job_offer *o)
{
	g_autofree char *words = job_offer_words(o);

	return o->taken ? g_strdup_printf("%s: line %d?", words, (int)o->line) : g_steal_pointer(&words);
}

/* The caller's. */
static char *
row_words(const struct job_data *d, const struct job_row *r, const char *text)
{
	const struct step *p = r->kind == ROW_STEP ? job_step_at(d->sheet, r->at) : NULL;
	const struct job_aim *a = r->kind == ROW_AIM ? job_aim_at(d->sheet, r->at) : NULL;

	if (r->kind == ROW_OFFER)
		return offer_words(job_offer_at(d->sheet, r->at));
	if (p && p->kind >= STEP_STATE)
		return g_strdup_printf("%d. %s%s%s%s", (int)p->no, p->on_condition == 1 ? "Where it is so: " : "",
				       p->text, p->seen ? ": " : "", p->seen ? p->seen : "");
	if (a)
		return g_strdup_printf("%s%s%s", a->title, a->aim.reason ? ": " : "",
				       a->aim.reason ? a->aim.reason : "");
	return g_strdup(text);
}

static void
draw_row(const void *data, const struct row *row, const struct area *line, gboolean is_selected)
{
	const struct job_data *d = data;
	const struct job_row *r = job_row_at(d, row);
	g_autofree char *words = NULL;
	struct look look;

	if (!r) {
		area_put(line, 0, 0, STYLE_HEAD, row->text);
		return;
	}
	look = look_of(d, r);
	look.style = is_selected ? STYLE_SELECTED : look.style;
	area_put_in(line, 0, 0, STATE_W, look.style, look.state);
	if (r->kind == ROW_REMOVAL) {
		draw_removal(job_removal_at(d->sheet, r->at), line, look.style);
		return;
	}
	words = row_words(d, r, row->text);
	area_put_in(line, 0, STATE_W, line->w - STATE_W, look.style, words);
}

struct panes
job_parts(const void *data, const struct area *a)
{
	const struct job_data *d = data;
	int top = d->sheet ? head_rows(d, a->h) : 0;
	struct area rest = area_part(a, top, 0, a->h - top, a->w);
	struct panes p;

	p = panes_of(&rest, a->w >= ROOMY_W ? a->w * 2 / 3 : a->w * 3 / 5, MAX(BELOW, a->h / 4));
	if (!p.pane.h && a->w < SMALL_W && rest.h >= SMALL_H)
		p.list.h -= SMALL_ROWS;
	return p;
}

/* On a screen without room for a pane the words of the selected row, whole. */
static void
draw_small(const struct job_data *d, const struct job_row *r, const struct panes *p, const struct area *a)
{
	struct area below = area_part(a, p->list.y + p->list.h - a->y, 1, SMALL_ROWS, a->w - 2);
	const struct row *row = list_row(&d->list[d->face]);
	g_autofree char *words = r->kind == ROW_REMOVAL ? removal_understood(job_removal_at(d->sheet, r->at))
							: row_words(d, r, row->text);

	if (p->list.y + p->list.h < a->y + a->h)
		area_wrap(&below, 0, 1, STYLE_STRONG, words);
}

static gboolean
shows_top(const struct list *l, int h)
{
	return (int)l->rows->len <= h || l->at <= h / 2;
}

/* Titles of the columns, over the list of the strip-down or the refit. */
static void
draw_columns(const struct panes *p)
{
	struct area l = area_part(&p->list, 0, 2, 1, p->list.w - 3);
	int x = l.w - COUNT_W, found = found_w(l.w);

	area_put_in(&l, 0, x, COUNT_W, STYLE_HEAD, "off / in");
	area_put_in(&l, 0, x - found - 1, found, STYLE_HEAD, "left");
	area_put_in(&l, 0, x - 2 * found - 2, found, STYLE_HEAD, "found");
}

static const char *const nothing[JOB_FACES] = {
	" Nothing is known to carry: a adds a template, a task or a finding to the job.",
	" No steps: a adds a template, a task or a finding to the job.",
	" Nothing is off. a writes down what comes off, or how something stands, in one line: 6 bolts 5/8 tray 2.",
	" Nothing is off, so nothing goes back.",
};

void
job_draw(const void *data, const struct area *a)
{
	const struct job_data *d = data;
	const struct job_row *r = job_selected(d);
	struct panes p = job_parts(d, a);
	g_autofree char *text = r && p.pane.h ? job_row_story(d, r) : g_strdup("");

	if (!d->sheet) {
		area_wrap(a, 1, 1, STYLE_PLAIN,
			  " This job is not in the log any more: it was taken back. Esc leaves, ^R brings it back.");
		area_cursor(a, 1, 1);
		return;
	}
	draw_head(d, a);
	list_draw(&d->list[d->face], &p.list, draw_row, d, nothing[d->face]);
	if (p.list.w >= COLUMNS_W + 3 && d->face >= FACE_OFF && d->sheet->removals->len
	    && shows_top(&d->list[d->face], p.list.h))
		draw_columns(&p);
	panes_rule(&p);
	if (p.pane.h)
		panes_text_by(&p, text, "Right");
	else if (r)
		draw_small(d, r, &p, a);
}
