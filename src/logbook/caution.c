#include "logbook/caution.h"

#include "base/err.h"
#include "logbook/inside.h"
#include "logbook/shipped.h"
#include "model/words.h"

#include <string.h>

struct cautions {
	struct table *file; /* holds the texts */
	GHashTable *by_word; /* word -> struct caution */
};

enum column { WORD, SENTENCE, TEXT, AUTHORITY, STANDING, SOURCE };

static const char *const columns[] = { "word", "sentence", "text", "authority", "standing", "source", NULL };

void
cautions_free(struct cautions *c)
{
	if (!c)
		return;
	g_hash_table_unref(c->by_word);
	table_free(c->file);
	g_free(c);
}

static gboolean
take_row(struct cautions *c, guint row, GError **err)
{
	static const int wanted[] = { WORD, SENTENCE, TEXT, AUTHORITY, STANDING, SOURCE, -1 };
	const struct table *t = c->file;
	struct caution *one;
	gint64 standing;

	if (!shipped_row_is_whole(t, row, columns, wanted, err))
		return FALSE;
	if (!word_parse(&words_standing, table_cell(t, row, STANDING), &standing, err))
		return table_prefix(t, row, err);
	if (g_hash_table_contains(c->by_word, table_cell(t, row, WORD))) {
		err_set(err, ERR_INPUT, "%s stands there twice", table_cell(t, row, WORD));
		return table_prefix(t, row, err);
	}
	one = g_new(struct caution, 1);
	*one = (struct caution){ table_cell(t, row, WORD),	table_cell(t, row, SENTENCE), table_cell(t, row, TEXT),
				 table_cell(t, row, AUTHORITY), table_cell(t, row, STANDING), table_cell(t, row, SOURCE) };
	g_hash_table_insert(c->by_word, (gpointer)(guintptr)one->word, one);
	return TRUE;
}

struct cautions *
cautions_read(const char *folder, GError **err)
{
	struct table *file = shipped_table(folder, "cautions.csv", columns, err);
	struct cautions *c;

	if (!file)
		return NULL;
	c = g_new(struct cautions, 1);
	c->file = file;
	c->by_word = g_hash_table_new_full(g_str_hash, g_str_equal, NULL, g_free);
	for (guint i = 0; i < table_rows(file); i++)
		if (!take_row(c, i, err)) {
			cautions_free(c);
			return NULL;
		}
	return c;
}

const struct cautions *
book_cautions(struct book *b, GError **err)
{
	g_autofree char *folder = NULL;

	if (b->cautions)
		return b->cautions;
	folder = book_catalogue(b);
	return b->cautions = cautions_read(folder, err);
}

const struct caution *
cautions_find(const struct cautions *c, const char *word)
{
	return g_hash_table_lookup(c->by_word, word);
}

GPtrArray *
caution_list(struct book *b, const char *words, char **unknown, GError **err)
{
	const struct cautions *c = book_cautions(b, err);
	g_auto(GStrv) word = g_strsplit(words ? words : "", " ", -1);
	g_autoptr(GString) strange = g_string_new(NULL);
	GPtrArray *all = c ? g_ptr_array_new() : NULL;

	*unknown = NULL;
	for (int i = 0; c && word[i]; i++) {
		const struct caution *one = cautions_find(c, word[i]);

		if (one && !g_ptr_array_find(all, one, NULL))
			g_ptr_array_add(all, (gpointer)(guintptr)one);
		else if (!one && *word[i])
			g_string_append_printf(strange, "%s%s", strange->len ? ", " : "", word[i]);
	}
	if (strange->len)
		*unknown = g_strdup(strange->str);
	return all;
}

/* Both forms go through the same: what is known by `each`, then what is not in plain words. */
static char *
told(struct book *b, const char *words, const char *begin, void (*each)(GString *out, const struct caution *c), const char *end)
{
	GString *out = g_string_new(begin);
	g_autoptr(GPtrArray) all = NULL;
	g_autofree char *unknown = NULL;
	g_autoptr(GError) err = NULL;

	if (!words || !words[strspn(words, " ")])
		return g_string_free(out, TRUE);
	all = caution_list(b, words, &unknown, &err);
	for (guint i = 0; all && i < all->len; i++)
		each(out, all->pdata[i]);
	if (!all)
		g_string_append_printf(out, " %s cannot be told: %s.", words, err->message);
	if (unknown)
		g_string_append_printf(out, " %s: no caution of that name stands in cautions.csv.", unknown);
	return g_string_free(g_string_append(out, end), FALSE);
}

static void
add_sentence(GString *out, const struct caution *c)
{
	g_string_append_printf(out, " %s", c->sentence);
}

char *
caution_words(struct book *b, const char *words)
{
	return told(b, words, "Caution:", add_sentence,
		    " The maker's manual, local code and licensed technicians come first.");
}

static void
add_lines(GString *out, const struct caution *c)
{
	g_string_append_printf(out, "\n- %s\n  First: %s.", c->sentence, c->authority);
}

char *
caution_block(struct book *b, const char *words)
{
	return told(b, words, "Caution:", add_lines, "\nThe maker's manual, local code and licensed technicians come first.\n");
}
