#include "logbook/variant.h"

#include "base/err.h"
#include "logbook/inside.h"

#include <string.h>

gboolean
variant_has_task(const char *variants, const char *variant)
{
	gsize n;

	if (!variants || !variant)
		return TRUE;
	n = strlen(variant);
	for (const char *p = variants; (p = strstr(p, variant)); p += n)
		if ((p == variants || p[-1] == ' ') && (p[n] == ' ' || !p[n]))
			return TRUE;
	return FALSE;
}

const char *
variant_first_off(const char *needs_off, const char *variant)
{
	g_auto(GStrv) way = g_strsplit(needs_off ? needs_off : "", " ", -1);
	g_autofree char *design = g_strconcat(variant ? variant : "", "=", NULL);

	for (int i = 1; variant && way[0] && way[i]; i++)
		if (g_str_has_prefix(way[i], design))
			return g_intern_string(way[i] + strlen(design));
	return way[0] ? g_intern_string(way[0]) : NULL;
}

const char *
fitting_first_off(const struct fitting *f)
{
	return variant_first_off(f->needs_off, f->variant);
}

char *
fitting_side(const struct fitting *f, const GArray *fittings)
{
	const char *slash = strchr(f->path, '/');
	g_autofree char *first = slash ? g_strndup(f->path, (gsize)(slash - f->path)) : NULL;

	for (guint i = 0; first && i < fittings->len; i++)
		if (!strcmp(((const struct fitting *)(const void *)fittings->data)[i].path, first))
			return NULL;
	return g_steal_pointer(&first);
}

char *
variant_words(const char *variants)
{
	g_auto(GStrv) all = g_strsplit(variants ? variants : "", " ", -1);

	return g_strjoinv(", ", all);
}

static void
add_task(GString *out, const char *word, const struct task *t)
{
	gboolean first = !strstr(out->str, word);

	g_string_append_printf(out, "%s%s%s", first ? (out->len ? ". " : "") : "; ", first ? word : "", t->title);
}

char *
book_variant_changes(struct book *b, const struct fitting *f, const char *variant, GError **err)
{
	g_autoptr(GArray) tasks = book_records(b, RECORD_TASK, f->boat, err);
	GString *out = tasks ? g_string_new(NULL) : NULL;

	for (int comes = 1; comes >= 0; comes--)
		for (guint i = 0; tasks && i < tasks->len; i++) {
			const struct task *t = &((const struct task *)(const void *)tasks->data)[i];
			gboolean was = variant_has_task(t->variants, f->variant), will = variant_has_task(t->variants, variant);

			if (t->fitting == f->id && t->retired != 1 && was != will && will == comes)
				add_task(out, comes ? "Comes: " : "Goes: ", t);
		}
	return out ? g_string_free(out, FALSE) : NULL;
}

gboolean
book_check_variant(const struct fitting *f, const char *variant, GError **err)
{
	g_autofree char *words = variant_words(f->variants);

	if (!f->variants || (*variant && !strchr(variant, ' ') && variant_has_task(f->variants, variant)))
		return TRUE;
	return err_set(err, ERR_INPUT, "%s has no design \"%.40s\": it is one of %s", f->path, variant, words);
}

gboolean
book_put_variant(struct book *b, struct fitting *f, const char *variant, GError **err)
{
	if (!book_check_variant(f, variant, err))
		return FALSE;
	g_free(f->variant);
	f->variant = g_strdup(variant);
	return book_put(b, RECORD_FITTING, f, err);
}

gboolean
book_set_variant(struct book *b, struct fitting *f, const char *variant, GError **err)
{
	return book_begin(b, err) && book_end(b, book_put_variant(b, f, variant, err), err, "%s is %s", f->path, variant);
}

gboolean
book_retire_fitting(struct book *b, struct fitting *f, gboolean retired, GError **err)
{
	f->retired = retired ? 1 : NONE;
	return book_begin(b, err)
	    && book_end(b, book_put(b, RECORD_FITTING, f, err), err, "%s: %s", f->path,
			retired ? "none on this boat" : "fitted");
}
