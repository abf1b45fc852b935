/* What the tests of forms do by keys. */
#ifndef TESTS_TUI_FORM_KEYS_H
#define TESTS_TUI_FORM_KEYS_H

#include "screens.h"

/* Into the field of that name; a text is emptied. */
static inline void
into(const char *name)
{
	const struct form *f = app_data(app);

	for (int i = 0; i <= f->n && (f->at == f->n || strcmp(f->field[f->at].name, name)); i++)
		key(K_TAB);
	ck_assert_msg(f->at < f->n, "no field %s", name);
	if (!f->field[f->at].words)
		key(K_CTRL('u'));
}

static inline void
fill(const char *name, const char *text)
{
	into(name);
	type(text);
}

/* To the button, and press it. */
static inline void
record(void)
{
	key(K_ENTER);
	key(K_ENTER);
}

static inline gboolean
in_form(void)
{
	return app->view[app->depth - 1].kind == &view_form;
}

/* The sentence of what will be recorded. */
static inline void
ck_will(const char *words)
{
	const struct form *f = app_data(app);

	ck_assert_msg(f->sum && strstr(f->sum, words), "%s", f->sum ? f->sum : "(nothing)");
}

#endif
