/* A form that stands for all, over a logbook of its own. */
#ifndef TESTS_TUI_THING_H
#define TESTS_TUI_THING_H

#include "screens.h"

#include "base/err.h"

static const char *const colours[] = { "red", "green", "grey" };
static const struct words words_colour = { "colour", colours, 3 };

static int saved;	/* how often it was recorded */
static char *recorded;	/* the name then */

static inline gboolean
begin(struct app *a, struct form *f, GError **err)
{
	char day[DAY_TEXT];

	if (f->subject == 99)
		return err_set(err, ERR_NOT_FOUND, "there is no such thing");
	f->heading = g_strdup("What a form is about, in words that may go on for more than one line.");
	form_add(f, "name", "Name", "as you call it", NULL);
	form_add_choice(f, "colour", "Colour", &words_colour, NONE, TRUE);
	form_add_choice(f, "other", "Other colour", &words_colour, 0, FALSE);
	form_add(f, "date", "Date", "today, 12 may", day_iso(app_today(a), day));
	for (int i = 0; i < 8; i++)
		form_add(f, "more", "More", "one of many, to fill the screen", NULL);
	form_add(f, "remark", "Remark", "^X writes it in your editor", NULL)->long_text = TRUE;
	return TRUE;
}

static inline char *
check(struct app *a, struct form *f)
{
	GError *err = NULL;
	gint64 day;

	if (!*form_text(f, "name"))
		err_set(&err, ERR_INPUT, "a name is wanted");
	form_wrong(f, "name", &err);
	day_parse(form_text(f, "date"), app_today(a), &day, &err);
	form_wrong(f, "date", &err);
	if (strstr(form_text(f, "remark"), "bad"))
		err_set(&err, ERR_INPUT, "this is bad, and it takes some words to say so");
	form_wrong(f, "remark", &err);
	return g_strdup_printf("It will be called %s.", form_text(f, "name"));
}

/* A name that begins with "no" is refused, with "odd" doubted, with "oddno" both. */
static inline gboolean
save(struct app *a, struct form *f, GError **err)
{
	if (g_str_has_prefix(form_text(f, "name"), "no"))
		return err_set(err, ERR_INPUT, "the logbook does not take that");
	if (g_str_has_prefix(form_text(f, "name"), "odd") && !f->sure)
		return err_set(err, ERR_DOUBT, "that is an odd name.");
	if (g_str_has_prefix(form_text(f, "name"), "oddno"))
		return err_set(err, ERR_INPUT, "the logbook does not take that either");
	saved++;
	g_free(recorded);
	recorded = g_strdup(form_text(f, "name"));
	app_say(a, STYLE_STRONG, "recorded");
	return TRUE;
}

static const struct form_kind kind = {
	.name = "test", .title = "A thing", .button = "Enter records it", .begin = begin, .check = check, .save = save,
};

static inline const struct form *
form(void)
{
	ck_assert_ptr_eq(app->view[app->depth - 1].kind, &view_form);
	return app_data(app);
}

static inline gboolean
is_open(void)
{
	return app->view[app->depth - 1].kind == &view_form;
}

static inline void
open_on(gint64 subject)
{
	form_open(app, &kind, subject);
	app_draw(app, grid);
}

static inline void
set_up(void)
{
	setup();
	open_plain("Grey Heron");
	g_clear_pointer(&book, book_close);
	saved = 0;
	recorded = NULL;
	app_begin();
	open_on(NONE);
}

static inline void
tear_down(void)
{
	g_free(recorded);
	app_end();
}

static inline void
go_to(const char *name)
{
	while (form()->at == form()->n || strcmp(form()->field[form()->at].name, name))
		key(K_TAB);
}

static inline void
is(const char *name, const char *want)
{
	ck_assert_str_eq(form_text(form(), name), want);
}

static inline void
paste(const char *text)
{
	key(K_PASTE);
	for (; *text; text = g_utf8_next_char(text))
		key(*text == '\r' ? K_ENTER : g_utf8_get_char(text));
	key(K_PASTE_END);
}

/* As if the program had ended without a word, and was started again. */
static inline void
die(void)
{
	g_autoptr(GError) err = NULL;

	app_free(app);
	app = app_new(&start, 24, 80, FALSE, &err);
	ck_assert_msg(app != NULL, "%s", err ? err->message : "?");
}

#endif
