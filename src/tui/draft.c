#include "tui/draft.h"

#include "tui/app.h"

#include <glib/gstdio.h>

#define GROUP "draft"

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

void
draft_keep(struct app *a, const struct form *f)
{
	g_autofree char *path = path_of(a, f), *text = NULL;
	g_autoptr(GKeyFile) keys = g_key_file_new();
	gsize length;

	if (!path)
		return;
	for (int i = 0; i < f->n; i++)
		if (f->field[i].touched)
			g_key_file_set_string(keys, GROUP, f->field[i].name, edit_text(&f->field[i].edit));
	text = g_key_file_to_data(keys, &length, NULL);
	g_mkdir_with_parents(a->start.state, 0700);
	g_file_set_contents_full(path, text, (gssize)length, G_FILE_SET_CONTENTS_CONSISTENT, 0600, NULL);
}

gboolean
draft_take(struct app *a, struct form *f)
{
	g_autofree char *path = path_of(a, f);
	g_autoptr(GKeyFile) keys = g_key_file_new();
	gboolean any = FALSE;

	if (!path || !g_key_file_load_from_file(keys, path, G_KEY_FILE_NONE, NULL))
		return FALSE;
	for (int i = 0; i < f->n; i++) {
		g_autofree char *text = g_key_file_get_string(keys, GROUP, f->field[i].name, NULL);

		if (!text)
			continue;
		edit_set(&f->field[i].edit, text);
		f->field[i].touched = any = TRUE;
	}
	return any;
}

void
draft_drop(struct app *a, const struct form *f)
{
	g_autofree char *path = path_of(a, f);

	if (path)
		g_remove(path);
}
