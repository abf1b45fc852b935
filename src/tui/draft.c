#include "tui/draft.h"

#include "base/date.h"
#include "base/err.h"
#include "model/words.h"
#include "tui/app.h"

#include <glib/gstdio.h>
#include <string.h>

#define DRAFT "draft"
#define DAY "day"
#define FIELDS "fields"

/* NULL: none is kept. */
static char *
path_of(const struct app *a, const struct form *f)
{
	g_autofree char *file = g_canonicalize_filename(a->start.file, NULL);
	g_autofree char *what = g_strdup_printf("%s\n%s\n%" G_GINT64_FORMAT, file, f->kind->name, f->subject);
	g_autofree char *sum = g_compute_checksum_for_string(G_CHECKSUM_SHA256, what, -1);
	g_autofree char *name = g_strdup_printf("draft-%s-%.16s", f->kind->name, sum);

	return a->start.state ? g_build_filename(a->start.state, name, NULL) : NULL;
}

static gboolean
differs(const struct form_field *field)
{
	return field->touched && strcmp(edit_text(&field->edit), field->given) != 0;
}

gboolean
draft_wanted(const struct form *f)
{
	for (int i = 0; i < f->n; i++)
		if (differs(&f->field[i]))
			return TRUE;
	return FALSE;
}

/* A default of today is what the owner saw, and another day tomorrow: it is kept, too. */
static char *
in_words(const struct app *a, const struct form *f)
{
	g_autoptr(GKeyFile) keys = g_key_file_new();
	char today[DAY_TEXT];

	day_iso(app_today(a), today);
	g_key_file_set_string(keys, DRAFT, DAY, today);
	for (int i = 0; i < f->n; i++) {
		const char *text = edit_text(&f->field[i].edit);

		if (differs(&f->field[i]) || !strcmp(text, today))
			g_key_file_set_string(keys, FIELDS, f->field[i].name, text);
	}
	return g_key_file_to_data(keys, NULL, NULL);
}

/* In one go, without waiting for the disk: a crash of the program leaves the old draft or the new one. */
static gboolean
write_file(const char *path, const char *text, GError **err)
{
	g_autofree char *made = g_strconcat(path, ".new", NULL);

	if (!g_file_set_contents_full(made, text, -1, G_FILE_SET_CONTENTS_NONE, 0600, err))
		return FALSE;
	if (g_rename(made, path) == 0)
		return TRUE;
	g_remove(made);
	return err_set(err, ERR_SYSTEM, "%s can't be written", path);
}

gboolean
draft_keep(struct app *a, const struct form *f, GError **err)
{
	g_autofree char *path = path_of(a, f), *text = NULL;

	if (!draft_wanted(f)) {
		draft_drop(a, f);
		return TRUE;
	}
	if (!path)
		return err_set(err, ERR_SYSTEM, "there is no folder for drafts");
	g_mkdir_with_parents(a->start.state, 0700);
	text = in_words(a, f);
	return write_file(path, text, err);
}

/* What no longer is one of a choice's words stays out. */
static gboolean
take_field(GKeyFile *keys, struct form_field *field)
{
	g_autofree char *text = g_key_file_get_string(keys, FIELDS, field->name, NULL);

	if (!text || (field->words && *text && word_index(field->words, text) == NONE))
		return FALSE;
	edit_set(&field->edit, text);
	field->touched = TRUE;
	return TRUE;
}

gboolean
draft_take(struct app *a, struct form *f, gint64 *day)
{
	g_autofree char *path = path_of(a, f), *typed_on = NULL;
	g_autoptr(GKeyFile) keys = g_key_file_new();
	gboolean any = FALSE;

	if (!path || !g_key_file_load_from_file(keys, path, G_KEY_FILE_NONE, NULL))
		return FALSE;
	for (int i = 0; i < f->n; i++)
		any |= take_field(keys, &f->field[i]);
	typed_on = g_key_file_get_string(keys, DRAFT, DAY, NULL);
	if (!typed_on || !day_parse(typed_on, app_today(a), day, NULL))
		*day = app_today(a);
	return any;
}

void
draft_drop(struct app *a, const struct form *f)
{
	g_autofree char *path = path_of(a, f);

	if (path)
		g_remove(path);
}
