#include "tui/form_draw.h"

#include "base/text.h"
#include "tui/form.h"

enum {
	LABEL_MOST = 18, FIELD_W = 34, BESIDE_W = 76,	/* from that width on what is wrong stands beside a field */
	HEADING_ROWS = 5, HINT_ROWS = 2, SUM_ROWS = 3, REFUSED_ROWS = 6,
	SMALL_H = 14,
};

static gboolean
shows_wrong(const struct form *f, const struct form_field *field)
{
	return field->wrong && (field->touched || f->tried);
}

static void
draw_field(const struct form *f, const struct area *a, int y, int i, int label)
{
	const struct form_field *field = &f->field[i];
	gboolean here = f->at == i, wrong = shows_wrong(f, field);
	int x = label + 4, room = a->w - x - 1, w = a->w >= BESIDE_W ? MIN(FIELD_W + (a->w - BESIDE_W) / 2, room) : room;

	if (here)
		area_put(a, y, 0, STYLE_STRONG, ">");
	area_put_in(a, y, 2, label, here ? STYLE_STRONG : STYLE_PLAIN, field->label);
	if (wrong)
		area_put(a, y, x - 1, STYLE_ERROR, "!");
	if (wrong && !here && w < room - 4)
		area_put(a, y, x + w + 2, STYLE_ERROR, field->wrong);
	if (field->words && here)
		area_printf(a, y, x, STYLE_FIELD, "< %s >", edit_text(&field->edit));
	else if (field->words)
		area_put(a, y, x, STYLE_PLAIN, edit_text(&field->edit));
	else
		edit_draw(&field->edit, a, y, x, w, here);
	if (field->words && here)
		area_cursor(a, y, x + 2);
}

/* Below the fields: what is wrong with the one that is typed in; else what it takes, as far as there is room, and what
 * will be recorded. */
static void
draw_sum(const struct form *f, const struct area *a)
{
	const struct form_field *field = f->at < f->n ? &f->field[f->at] : NULL;
	const char *wrong = f->refused ? f->refused : field && shows_wrong(f, field) ? field->wrong : NULL;
	struct area none = area_part(a, 0, 0, 0, a->w), hint, below;
	g_autofree char *said = NULL;
	int y = 1;

	if (wrong) {
		said = g_strdup_printf("! %s%s", wrong, f->doubt ? " y takes it as it is, Esc goes back." : "");
		area_wrap(a, 0, 2, STYLE_ERROR, said);
		return;
	}
	hint = area_part(a, 0, 0, CLAMP(a->h - (f->sum ? area_wrap(&none, 0, 2, STYLE_PLAIN, f->sum) : 0), 1, HINT_ROWS), a->w);
	if (field && field->hint && hint.h > 1)
		y = CLAMP(area_wrap(&hint, 0, 2, STYLE_PLAIN, field->hint), 1, HINT_ROWS);
	else if (field && field->hint)
		area_put(&hint, 0, 0, STYLE_PLAIN, field->hint);
	below = area_part(a, y, 0, a->h - y, a->w);
	if (f->sum)
		area_wrap(&below, 0, 2, STYLE_PLAIN, f->sum);
}

/* Rows of the screen, and which fields show: around the one that is typed in. */
struct layout { int heading, fields, from, shown, sum, sum_h, button; };

static int
lines_of(const char *text, int w)
{
	g_autofree char *safe = text_harmless(text ? text : "", TRUE);
	g_autoptr(GString) out = g_string_new(NULL);
	int n = text != NULL;

	text_wrap(out, safe, MAX(w, 1), 0);
	for (const char *p = out->str; *p; p++)
		n += *p == '\n';
	return n;
}

/* On a small screen the heading is whole only until one goes on, so that fields have room. */
static int
heading_most(const struct form *f, int h)
{
	return h > SMALL_H ? HEADING_ROWS : f->at ? 1 : CLAMP(h - SUM_ROWS - 5, 1, HEADING_ROWS);
}

static struct layout
lay_out(const struct form *f, int h, int w)
{
	struct layout l = { .heading = MIN(lines_of(f->heading, w), heading_most(f, h)) };
	int room;

	l.fields = 1 + l.heading + (h > SMALL_H);
	l.shown = CLAMP(h - l.fields - SUM_ROWS - 2, 1, f->n);
	l.from = CLAMP(f->at - l.shown / 2, 0, f->n - l.shown);
	l.sum = l.fields + l.shown;
	room = MAX(h - l.sum, 0);
	l.sum_h = MIN(room, f->refused ? MAX(room - 1, SUM_ROWS + 1) : SUM_ROWS + 1);
	l.button = l.sum + (f->refused ? MIN(l.sum_h, REFUSED_ROWS) : l.sum_h);
	return l;
}

int
form_at_row(const struct form *f, int h, int w, int y)
{
	struct layout l = lay_out(f, h, w - 2);

	if (y >= l.fields && y < l.fields + l.shown)
		return l.from + y - l.fields;
	return y == l.button ? f->n : -1;
}

/* What is cut stands on the page of F1. */
static void
draw_heading(const struct form *f, const struct area *a, int rows)
{
	struct area heading = area_part(a, 1, 0, rows, a->w);

	if (f->heading && area_wrap(&heading, 0, 0, STYLE_PLAIN, f->heading) > rows)
		area_put(&heading, rows - 1, a->w - 2, STYLE_STRONG, " ~");
}

void
form_draw(const void *data, const struct area *screen)
{
	const struct form *f = data;
	struct area a = area_part(screen, 0, 1, screen->h, screen->w - 2), sum;
	enum style button = f->at == f->n ? STYLE_SELECTED : STYLE_PLAIN;
	struct layout l;
	int label = 0;

	if (!f->kind)
		return;
	l = lay_out(f, a.h, a.w);
	area_put(&a, 0, 0, STYLE_HEAD, f->kind->title);
	draw_heading(f, &a, l.heading);
	for (int i = 0; i < f->n; i++)
		label = MAX(label, MIN(text_width(f->field[i].label), LABEL_MOST));
	for (int i = 0; i < l.shown; i++)
		draw_field(f, &a, l.fields + i, l.from + i, label);
	sum = area_part(&a, l.sum, 0, l.sum_h, a.w);
	draw_sum(f, &sum);
	if (f->at == f->n) {
		area_put(&a, l.button, 0, button, "> ");
		area_cursor(&a, l.button, 0);
	}
	area_put(&a, l.button, 2, button, f->kind->button);
}
