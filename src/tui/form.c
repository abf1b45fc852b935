#include "tui/form.h"

#include "base/date.h"
#include "base/err.h"
#include "model/words.h"
#include "tui/app.h"
#include "tui/draft.h"
#include "tui/form_draw.h"

#include <string.h>

/* Of one character. */
enum { MOST_BYTES = 6 };

struct form_field *
form_add(struct form *f, const char *name, const char *label, const char *hint, const char *text)
{
	struct form_field *field = &f->field[f->n];

	g_assert(f->n < FORM_FIELDS);
	*field = (struct form_field) { .name = name, .label = g_strdup(label), .hint = hint };
	edit_init(&field->edit, text ? text : "");
	field->given = g_strdup(text ? text : "");
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

char *
form_said(const struct form *f, const char *name)
{
	const char *text = form_text(f, name);

	return *text ? g_strdup(text) : NULL;
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

void
form_refuse(struct form *f, const char *name, const char *what)
{
	GError *err = NULL;

	err_set(&err, ERR_INPUT, "%s", what);
	form_wrong(f, name, &err);
}

const char form_date_hint[] = "today, yesterday, 12 may, 2026-05-12";

void
form_add_remark(struct form *f, const char *hint, const char *text)
{
	form_add(f, "remark", "Remark", hint ? hint : "^X writes it in your editor", text)->long_text = TRUE;
}

static void
clear_fields(struct form *f)
{
	for (int i = 0; i < f->n; i++) {
		edit_clear(&f->field[i].edit);
		g_free(f->field[i].label);
		g_free(f->field[i].given);
		g_free(f->field[i].wrong);
	}
	g_clear_pointer(&f->heading, g_free);
	g_clear_pointer(&f->sum, g_free);
	g_clear_pointer(&f->refused, g_free);
	f->n = f->at = 0;
	f->tried = f->doubt = f->unkept = FALSE;
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

/* A date in it may have been meant from that day on: "yesterday". */
static void
take_draft(struct app *a, struct form *f)
{
	char words[16];
	gint64 day;

	if (!draft_take(a, f, &day))
		return;
	check(a, f);
	if (day == app_today(a))
		app_say(a, STYLE_STRONG, "what was typed before is here again; ^N begins anew");
	else
		app_say(a, STYLE_STRONG, "what was typed on %s is here again; ^N begins anew", day_words(day, words));
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
	} else {
		take_draft(a, f);
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
	const struct form_kind *kind = f->kind;
	int depth = a->depth;
	GError *err = NULL;

	f->tried = TRUE;
	check(a, f);
	f->at = first_wrong(f);
	if (f->at < f->n)
		return FALSE;
	if (kind->save(a, f, &err)) {
		gint64 made = f->made;

		draft_drop(a, f);
		app_close_at(a, depth - 1);
		app_changed(a);
		if (kind->then)
			kind->then(a, made);
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

/* What can't be kept is lost only when that was said, and Esc is pressed again. */
static void
leave(struct app *a, struct form *f)
{
	gboolean wanted = draft_wanted(f), unkept = f->unkept;
	g_autoptr(GError) err = NULL;

	if (!draft_keep(a, f, &err) && !unkept) {
		f->unkept = TRUE;
		f->refused = g_strdup_printf("What was typed can't be kept as a draft: %s. Esc once more leaves without it.",
					     err->message);
		return;
	}
	app_close(a);
	if (wanted && !unkept)
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
		return;
	}
	app_say(a, STYLE_PLAIN, "as it was at first");
}

static void
touch(struct app *a, struct form *f, struct form_field *field)
{
	field->touched = TRUE;
	draft_keep(a, f, NULL);	/* where that can't be, leaving says so */
	check(a, f);
}

static void
choose(struct app *a, struct form *f, const char *word)
{
	struct form_field *field = &f->field[f->at];

	if (!strcmp(word, edit_text(&field->edit)))
		return;
	edit_set(&field->edit, word);
	touch(a, f, field);
}

/* The word by steps from the one there, round and round. */
static void
step(struct app *a, struct form *f, int by)
{
	const struct words *words = f->field[f->at].words;
	gint64 at = word_index(words, edit_text(&f->field[f->at].edit));

	if (at == NONE)
		at = by < 0 ? 0 : -1;
	choose(a, f, words->word[(at + by + words->n) % words->n]);
}

/* The next word that begins with the letter. */
static void
find_letter(struct app *a, struct form *f, gunichar letter)
{
	const struct words *words = f->field[f->at].words;
	gint64 at = word_index(words, edit_text(&f->field[f->at].edit));

	at = at == NONE ? -1 : at;
	for (int k = 1; k <= words->n; k++) {
		const char *word = words->word[(at + k) % words->n];

		if ((gunichar)*word == g_unichar_tolower(letter)) {
			choose(a, f, word);
			return;
		}
	}
}

static gboolean
choice_key(struct app *a, struct form *f, const struct key_event *k)
{
	struct form_field *field = &f->field[f->at];

	if (k->pasted)	/* its letters would choose this and that */
		return FALSE;
	if (k->key == K_LEFT)
		step(a, f, -1);
	else if (k->key == K_RIGHT || k->key == ' ')
		step(a, f, 1);
	else if ((k->key == K_BACKSPACE || k->key == K_DELETE || k->key == 127) && field->optional_word)
		choose(a, f, "");
	else if (k->key < K_NONE && g_unichar_isalpha(k->key))
		find_letter(a, f, k->key);
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
	else if (k->key < K_NONE && k->key >= ' ' && field->edit.text->len + MOST_BYTES > EDIT_MOST)
		app_say(a, STYLE_ERROR, "the line is full: nothing more was taken");
	return TRUE;
}

/* FALSE: it is for the field. */
static gboolean
form_key(struct app *a, struct form *f, gunichar key)
{
	switch (key) {
	case K_ENTER: enter(a, f); return TRUE;
	case K_ESC: case K_CTRL('c'): leave(a, f); return TRUE;
	case K_TAB: case K_DOWN: case K_WHEEL_DOWN: f->at = f->at < f->n ? f->at + 1 : 0; return TRUE;
	case K_BACKTAB: case K_UP: case K_WHEEL_UP: f->at = f->at ? f->at - 1 : f->n; return TRUE;
	case K_CTRL('n'): anew(a, f); return TRUE;
	}
	return FALSE;
}

/* Only y takes what was doubted; Enter is no answer and is asked again. */
static void
answer(struct app *a, struct form *f, gunichar key)
{
	if (key == K_ESC || key == K_CTRL('c')) {
		f->at = 0;
	} else if (key == 'y') {
		f->sure = TRUE;
		if (!save(a, f))
			f->sure = FALSE;
	} else {
		form_key(a, f, key);
	}
}

static void
forget_said(struct form *f)
{
	g_clear_pointer(&f->refused, g_free);
	f->doubt = f->unkept = FALSE;
}

/* A click goes to a field or the button; a second one on the button presses it.  It answers no question. */
static void
click(struct app *a, struct form *f, int y)
{
	int at = form_at_row(f, a->h - 3, a->w, y - 1);

	if (f->doubt || at < 0)
		return;
	forget_said(f);
	if (at == f->n && f->at == f->n)
		enter(a, f);
	else
		f->at = at;
}

static gboolean
key(struct app *a, void *data, const struct key_event *k)
{
	struct form *f = data;
	gboolean doubt, unkept;

	if (k->key == K_CLICK) {
		click(a, f, k->y);
		return TRUE;
	}
	if (!k->pasted && (k->key == K_HANGUP || k->key == K_CTRL('z') || k->key == K_CTRL('l') || k->key == K_F1))
		return FALSE;
	doubt = f->doubt && !k->pasted;
	unkept = f->unkept;
	forget_said(f);
	f->unkept = unkept && (k->key == K_ESC || k->key == K_CTRL('c'));
	if (doubt)
		answer(a, f, k->key);
	else if ((k->pasted || !form_key(a, f, k->key)) && f->at < f->n)
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
	g_autofree char *composed = g_utf8_normalize(text, -1, G_NORMALIZE_NFC);
	struct form *f = app_data(a);

	edit_set(&f->field[f->at].edit, composed);
	touch(a, f, &f->field[f->at]);
}

const struct view_kind view_form = {
	.where = IN_FORM, .size = sizeof(struct form), .load = load, .draw = form_draw, .key = key, .clear = clear,
};
