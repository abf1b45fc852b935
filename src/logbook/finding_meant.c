/* Which fitting a sentence is about. */
#include "logbook/finding_inside.h"

#include "base/err.h"
#include "logbook/plain_words.h"

#include <string.h>

enum { WHOLE = 100, NEAREST = 6 }; /* a name that stands there whole counts more than words of others */

struct candidate {
	int score;
	const struct fitting *f;
};

static gboolean
stands_in(const GArray *sentence, const char *stem)
{
	const struct plain_word *w = (const void *)sentence->data;

	for (guint i = 0; i < sentence->len; i++)
		if (!strcmp(w[i].stem, stem))
			return TRUE;
	return FALSE;
}

/* Of a name's words those that stand in the sentence; *all: whether each does. */
static int
hits(const GArray *sentence, const char *name, gboolean *all)
{
	static const char *const small[] = { "and", "of", "the", "in", "at", "a", "or", "to", NULL };
	g_autoptr(GArray) words = plain_words(name);
	int n = 0;

	*all = TRUE;
	for (guint i = 0; i < words->len; i++) {
		const char *stem = ((const struct plain_word *)(const void *)words->data)[i].stem;
		gboolean there = !g_strv_contains(small, stem) && stands_in(sentence, stem);

		n += there;
		*all = *all && (there || g_strv_contains(small, stem));
	}
	*all = *all && n;
	return n;
}

static int
score_of(const GArray *sentence, const struct fitting *f)
{
	const char *end = strrchr(f->path, '/') ? strrchr(f->path, '/') + 1 : f->path;
	gboolean title, name, path;
	int n_title = hits(sentence, f->title, &title), n_name = hits(sentence, end, &name),
	    n_path = hits(sentence, f->path, &path), whole = MAX(title ? n_title : 0, name ? n_name : 0);

	return WHOLE * whole + MAX(n_title, n_path);
}

static gint
best_first(gconstpointer x, gconstpointer y)
{
	const struct candidate *a = x, *b = y;

	return a->score != b->score ? b->score - a->score : strcmp(a->f->path, b->f->path);
}

static gboolean
not_one(const GArray *all, GPtrArray *near, GError **err)
{
	g_autoptr(GString) names = g_string_new(NULL);

	for (guint i = 0; i < all->len && i < NEAREST; i++) {
		const struct fitting *f = ((const struct candidate *)(const void *)all->data)[i].f;

		g_ptr_array_add(near, g_strdup(f->title));
		g_ptr_array_add(near, g_strdup(f->path));
		g_string_append_printf(names, "%s%s", i ? ", " : "", f->path);
	}
	if (!names->len)
		return err_set(err, ERR_INPUT, "on what? these words name no fitting of this boat: splitpin fitting lists them");
	return err_set(err, ERR_INPUT, "on what? these words can be about %s: name one", names->str);
}

gboolean
book_fitting_meant(struct book *b, gint64 boat, const char *sentence, GPtrArray *near, struct fitting *f, GError **err)
{
	g_autoptr(GArray) fittings = book_records(b, RECORD_FITTING, boat, err), words = plain_words(sentence),
			  all = g_array_new(FALSE, FALSE, sizeof(struct candidate));
	const struct candidate *c;
	struct fitting *hit;

	record_init(RECORD_FITTING, f);
	for (guint i = 0; fittings && i < fittings->len; i++) {
		struct candidate one = { 0, &((const struct fitting *)(const void *)fittings->data)[i] };

		one.score = one.f->retired == 1 ? 0 : score_of(words, one.f);
		if (one.score)
			g_array_append_val(all, one);
	}
	if (!fittings)
		return FALSE;
	g_array_sort(all, best_first);
	c = (const void *)all->data;
	if (!all->len || c[0].score < WHOLE || (all->len > 1 && c[1].score == c[0].score))
		return not_one(all, near, err);
	hit = &((struct fitting *)(void *)fittings->data)[c[0].f - (const struct fitting *)(const void *)fittings->data];
	*f = *hit;
	record_init(RECORD_FITTING, hit); /* its texts are *f's now */
	return TRUE;
}
