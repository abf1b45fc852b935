/* What a row of a catalogue says, in few letters: so that a logbook knows whether its owner, or a newer edition, changed
 * it.  What is each boat's own (which design, whose hours, whether it is there) is left out, and so is what a row leaves
 * empty: a column that comes later changes no digest. */
#include "logbook/catalogue_inside.h"

#include <string.h>

enum { DIGEST_LETTERS = 32 };

gboolean
catalogue_says(const struct field *f)
{
	return f->kind != FIELD_KEY && f->kind != FIELD_REF && strcmp(f->name, "retired") && strcmp(f->name, "variant");
}

char *
catalogue_cell(const struct field *f, const void *record)
{
	void *r = (void *)(guintptr)record;
	gint64 value = f->kind == FIELD_TEXT ? 0 : *field_int(f, r);

	if (f->kind == FIELD_TEXT)
		return g_strdup(*field_text(f, r) ? *field_text(f, r) : "");
	if (value == NONE)
		return g_strdup("");
	if (f->kind == FIELD_WORD)
		return g_strdup(word_of(f->words, value));
	if (f->kind == FIELD_YES)
		return g_strdup(value ? "yes" : "no");
	return g_strdup_printf("%" G_GINT64_FORMAT, value);
}

static char *
row_text(enum record r, const void *record)
{
	const struct record_type *t = record_type(r);
	GString *out = g_string_new(NULL);

	for (int i = 0; i < t->n_fields; i++) {
		g_autofree char *cell = catalogue_says(&t->field[i]) ? catalogue_cell(&t->field[i], record) : g_strdup("");

		if (*cell)
			g_string_append_printf(out, "%s=%s\x1f", t->field[i].name, cell);
	}
	return g_string_free(out, FALSE);
}

static char *
digest_of(const char *text)
{
	char *digest = g_compute_checksum_for_string(G_CHECKSUM_SHA256, text, -1);

	digest[DIGEST_LETTERS] = '\0';
	return digest;
}

char *
catalogue_fitting_digest(const struct fitting *f)
{
	g_autofree char *text = row_text(RECORD_FITTING, f);

	return digest_of(text);
}

static gint
compare_texts(gconstpointer a, gconstpointer b)
{
	return strcmp(*(const char *const *)a, *(const char *const *)b);
}

char *
catalogue_task_digest(const struct task *t, const char *path, const GArray *limits)
{
	g_autoptr(GPtrArray) texts = g_ptr_array_new_with_free_func(g_free);
	g_autofree char *own = row_text(RECORD_TASK, t), *all = NULL, *whole = NULL;

	for (guint i = 0; i < limits->len; i++) {
		const struct limit *m = &((const struct limit *)(const void *)limits->data)[i];

		if (m->task == t->id)
			g_ptr_array_add(texts, row_text(RECORD_LIMIT, m));
	}
	g_ptr_array_sort(texts, compare_texts);
	g_ptr_array_add(texts, NULL);
	all = g_strjoinv("\x1e", (char **)texts->pdata);
	whole = g_strconcat(own, path, "\x1e", all, NULL);
	return digest_of(whole);
}
