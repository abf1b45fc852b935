#include "tui/form.h"

#include "base/err.h"
#include "base/text.h"
#include "model/words.h"
#include "tui/app.h"
#include "tui/draft.h"

#include <string.h>

enum { LABEL_MOST = 18, BESIDE_W = 76, FIELD_W = 34, HEADING_ROWS = 5, HINT_ROWS = 2, SUM_ROWS = 3, SMALL_H = 14 };

struct form_field *
form_add(struct form *f, const char *name, const char *label, const char *hint, const char *text)
{
	struct form_field *field = &f->field[f->n];

	g_assert(f->n < FORM_FIELDS);
	*field = (struct form_field) { .name = name, .label = g_strdup(label), .hint = hint };
	edit_init(&field->edit, text ? text : "");
	f->n++;
	return field;
}

struct form_field *
form_add_choice(struct form *f, const char *name, const char *label, const struct words *words, gint64 value,
		gboolean optional)
{
	const char *hint = optional ? "Left and Right choose; Backspace: not said" : "Left and Right choose, a letter finds";
	struct form_field *field = form_add(f, name, label, hint, word_of(words, value));

	field->words = words;
	field->optional_word = optional;
	return field;
}

const struct form_field *
form_field(const struct form *f, const char *name)
{
	for (int i = 0; i < f->n; i++)
		if (!strcmp(f->field[i].name, name))
			return &f->field[i];
	return NULL;
}

const char *
form_text(const struct form *f, const char *name)
{
	const struct form_field *field = form_field(f, name);

	return field ? edit_text(&field->edit) : "";
}

gint64
form_word(const struct form *f, const char *name)
{
	const struct form_field *field = form_field(f, name);

	return field && field->words ? word_index(field->words, edit_text(&field->edit)) : NONE;
}

void
form_wrong(struct form *f, const char *name, GError **err)
{
	for (int i = 0; err && *err && i < f->n; i++)
		if (!strcmp(f->field[i].name, name) && !f->field[i].wrong)
			f->field[i].wrong = g_strdup((*err)->message);
	g_clear_error(err);
}

static void
clear_fields(struct form *f)
{
	for (int i = 0; i < f->n; i++) {
		edit_clear(&f->field[i].edit);
		g_free(f->field[i].label);
		g_free(f->field[i].wrong);
	}
	g_clear_pointer(&f->heading, g_free);
	g_clear_pointer(&f->sum, g_free);
	g_clear_pointer(&f->refused, g_free);
	f->n = f->at = 0;
	f->tried = f->doubt = FALSE;
}

static void
clear(void *data)
{
	clear_fields(data);
}

static void
check(struct app *a, struct form *f)
{
	for (int i = 0; i < f->n; i++)
		g_clear_pointer(&f->field[i].wrong, g_free);
	g_free(f->sum);
	f->sum = f->kind->check ? f->kind->check(a, f) : NULL;
}

static gboolean
load(struct app *a, void *data, GError **err)
{
	struct form *f = data;

	(void)err;
	if (f->kind)
		check(a, f);
	return TRUE;
}

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	clear_fields(f);
	if (!f->kind->begin(a, f, err))
		return FALSE;
	check(a, f);
	return TRUE;
}

void
form_open(struct app *a, const struct form_kind *kind, gint64 subject)
{
	int depth = a->depth;
	GError *err = NULL;
	struct form *f;

	app_open(a, &view_form, subject);
	if (a->depth == depth)
		return;
	f = app_data(a);
	f->kind = kind;
	f->subject = subject;
	if (!begin(a, f, &err)) {
		app_close(a);
		app_complain(a, err);
	} else if (draft_take(a, f)) {
		check(a, f);
		app_say(a, STYLE_STRONG, "what was typed before is here again; ^N begins anew");
	}
}

static int
first_wrong(const struct form *f)
{
	int i = 0;

	while (i < f->n && !f->field[i].wrong)
		i++;
	return i;
}

/* TRUE: recorded, and the form is gone. */
static gboolean
save(struct app *a, struct form *f)
{
	GError *err = NULL;

	f->tried = TRUE;
	check(a, f);
	f->at = first_wrong(f);
	if (f->at < f->n)
		return FALSE;
	if (f->kind->save(a, f, &err)) {
		draft_drop(a, f);
		app_close(a);
		app_changed(a);
		return TRUE;
	}
	f->doubt = g_error_matches(err, ERR_DOMAIN, ERR_DOUBT);
	f->refused = g_strdup(err->message);
	g_clear_error(&err);
	return FALSE;
}

static void
enter(struct app *a, struct form *f)
{
	if (f->at == f->n) {
		save(a, f);
		return;
	}
	f->tried = TRUE;
	f->at = first_wrong(f);
}

static gboolean
any_touched(const struct form *f)
{
	for (int i = 0; i < f->n; i++)
		if (f->field[i].touched)
			return TRUE;
	return FALSE;
}

static void
leave(struct app *a, struct form *f)
{
	gboolean kept = any_touched(f) && a->start.state;

	if (a->depth == 1)
		return;
	app_close(a);
	if (kept)
		app_say(a, STYLE_PLAIN, "what was typed is kept: it is there when you open this again");
}

static void
anew(struct app *a, struct form *f)
{
	GError *err = NULL;

	draft_drop(a, f);
	if (!begin(a, f, &err)) {
		app_close(a);
		app_complain(a, err);
	}
}

static void
touch(struct app *a, struct form *f, struct form_field *field)
{
	field->touched = TRUE;
	draft_keep(a, f);
	check(a, f);
}

/* The word by steps from the one there; by 0 the next that begins with the letter. */
static void
choose(struct app *a, struct form *f, int by, gunichar letter)
{
	struct form_field *field = &f->field[f->at];
	int n = field->words->n, at = (int)word_index(field->words, edit_text(&field->edit));
	gboolean empty = word_index(field->words, edit_text(&field->edit)) == NONE;

	at = empty ? (by < 0 ? 0 : -1) : at;
	if (by) {
		at = (at + by + n) % n;
	} else {
		for (int k = 1; k <= n; k++)
			if ((gunichar)field->words->word[(at + k + n) % n][0] == g_unichar_tolower(letter)) {
				at = (at + k + n) % n;
				break;
			}
		if (at < 0)
			return;
	}
	edit_set(&field->edit, field->words->word[at]);
	touch(a, f, field);
}

static gboolean
choice_key(struct app *a, struct form *f, const struct key_event *k)
{
	struct form_field *field = &f->field[f->at];

	if (k->key == K_LEFT)
		choose(a, f, -1, 0);
	else if (k->key == K_RIGHT || k->key == ' ')
		choose(a, f, 1, 0);
	else if ((k->key == K_BACKSPACE || k->key == K_DELETE || k->key == 127) && field->optional_word) {
		edit_set(&field->edit, "");
		touch(a, f, field);
	} else if (k->key < K_NONE && g_unichar_isalpha(k->key))
		choose(a, f, 0, k->key);
	else
		return FALSE;
	return TRUE;
}

static gboolean
field_key(struct app *a, struct form *f, const struct key_event *k)
{
	struct form_field *field = &f->field[f->at];
	g_autofree char *was = NULL;

	if (field->words)
		return choice_key(a, f, k);
	if (k->key == K_CTRL('x') && field->long_text && !k->pasted) {
		a->wish = WISH_EDIT;
		return TRUE;
	}
	was = g_strdup(edit_text(&field->edit));
	if (!edit_key(&field->edit, k))
		return FALSE;
	if (strcmp(was, edit_text(&field->edit)))
		touch(a, f, field);
	return TRUE;
}

static gboolean
key(struct app *a, void *data, const struct key_event *k)
{
	struct form *f = data;
	gboolean doubt = f->doubt;

	if (k->key == K_HANGUP || k->key == K_CTRL('z') || k->key == K_CTRL('l') || k->key == K_F1)
		return FALSE;
	if (doubt && k->key == K_ENTER)
		return TRUE;	/* momentum is no answer */
	g_clear_pointer(&f->refused, g_free);
	f->doubt = FALSE;
	if (k->pasted)
		return f->at < f->n ? field_key(a, f, k) : TRUE;
	if (doubt && k->key == 'y') {
		f->sure = TRUE;
		if (!save(a, f))
			f->sure = FALSE;
		return TRUE;
	}
	switch (k->key) {
	case K_ENTER: enter(a, f); return TRUE;
	case K_ESC: case K_CTRL('c'):
		if (doubt)
			f->at = 0;
		else
			leave(a, f);
		return TRUE;
	case K_TAB: case K_DOWN: f->at = f->at < f->n ? f->at + 1 : 0; return TRUE;
	case K_BACKTAB: case K_UP: f->at = f->at ? f->at - 1 : f->n; return TRUE;
	case K_CTRL('n'): anew(a, f); return TRUE;
	}
	if (f->at < f->n)
		field_key(a, f, k);
	return TRUE;
}

const char *
form_long_text(struct app *a)
{
	struct form *f = app_data(a);

	return edit_text(&f->field[f->at].edit);
}

void
form_long_text_set(struct app *a, const char *text)
{
	struct form *f = app_data(a);

	edit_set(&f->field[f->at].edit, text);
	touch(a, f, &f->field[f->at]);
}

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
	g_autofree char *wrong = field && shows_wrong(f, field) ? g_strdup_printf("! %s", field->wrong) : NULL;
	g_autofree char *asked = f->doubt ? g_strdup_printf("! %s y takes it as it is, Esc goes back.", f->refused) : NULL;
	struct area none = area_part(a, 0, 0, 0, a->w), hint, below;
	int y = 1;

	if (asked || f->refused || wrong) {
		area_wrap(a, 0, 2, STYLE_ERROR, asked ? asked : f->refused ? f->refused : wrong);
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

/* What it is about, from row 1 on; on a small screen whole only until one goes on, so that fields have room.  What is cut
 * stands on the page of F1. */
static int
draw_heading(const struct form *f, const struct area *a)
{
	int most = a->h > SMALL_H ? HEADING_ROWS : f->at ? 1 : CLAMP(a->h - SUM_ROWS - 5, 1, HEADING_ROWS), rows;
	struct area heading = area_part(a, 1, 0, most, a->w);

	rows = f->heading ? area_wrap(&heading, 0, 0, STYLE_PLAIN, f->heading) : 0;
	if (rows > most)
		area_put(&heading, most - 1, a->w - 2, STYLE_STRONG, " ~");
	return MIN(rows, most);
}

static void
draw(const void *data, const struct area *screen)
{
	const struct form *f = data;
	struct area a = area_part(screen, 0, 1, screen->h, screen->w - 2), sum;
	int y, label = 0, shown, from;

	if (!f->kind)
		return;
	area_put(&a, 0, 0, STYLE_HEAD, f->kind->title);
	y = 1 + draw_heading(f, &a) + (a.h > SMALL_H);
	for (int i = 0; i < f->n; i++)
		label = MAX(label, MIN(text_width(f->field[i].label), LABEL_MOST));
	shown = CLAMP(a.h - y - SUM_ROWS - 2, 1, f->n);
	from = CLAMP(f->at - shown / 2, 0, f->n - shown);
	for (int i = 0; i < shown; i++)
		draw_field(f, &a, y++, from + i, label);
	sum = area_part(&a, y, 0, f->refused ? MAX(a.h - y - 1, SUM_ROWS + 1) : SUM_ROWS + 1, a.w);
	draw_sum(f, &sum);
	y += f->refused ? MIN(sum.h, 6) : sum.h;
	if (f->at == f->n) {
		area_put(&a, y, 0, STYLE_SELECTED, "> ");
		area_cursor(&a, y, 0);
	}
	area_put(&a, y, 2, f->at == f->n ? STYLE_SELECTED : STYLE_PLAIN, f->kind->button);
}

const struct view_kind view_form = {
	.name = "form", .where = IN_FORM, .size = sizeof(struct form), .load = load, .draw = draw, .key = key, .clear = clear,
};
