#include "logbook/heed.h"

#include "logbook/inside.h"

static void
add_words(GHashTable *set, const char *words)
{
	g_auto(GStrv) word = g_strsplit(words, " ", -1);

	for (int i = 0; word[i]; i++)
		if (*word[i])
			g_hash_table_add(set, g_strdup(word[i]));
}

/* The words read today before that work; NULL on failure. */
static GHashTable *
heeded_today(struct book *b, gint64 boat, const char *work, GError **err)
{
	g_autoptr(GHashTable) set = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
	struct cells *c = cells_open(b->db, SQL_HEEDED_ON);

	cells_bind(c, 1, boat);
	cells_bind(c, 2, b->who.today);
	cells_bind_text(c, 3, work);
	while (cells_next(c))
		add_words(set, cells_text(c, 0));
	return cells_close(c, err) ? g_steal_pointer(&set) : NULL;
}

char *
book_unheeded(struct book *b, gint64 boat, const char *work, const char *words, GError **err)
{
	g_auto(GStrv) word = g_strsplit(words ? words : "", " ", -1);
	g_autoptr(GHashTable) read = heeded_today(b, boat, work, err);
	GString *left;

	if (!read)
		return NULL;
	left = g_string_new(NULL);
	for (int i = 0; word[i]; i++)
		if (*word[i] && g_hash_table_add(read, g_strdup(word[i])))
			g_string_append_printf(left, "%s%s", left->len ? " " : "", word[i]);
	return g_string_free(left, FALSE);
}

gboolean
book_heed(struct book *b, gint64 boat, const char *work, const char *words, GError **err)
{
	struct heeded h;
	gboolean ok;

	record_init(RECORD_HEEDED, &h);
	h.boat = boat;
	h.date = b->who.today;
	h.work = g_strdup(work);
	h.cautions = book_unheeded(b, boat, work, words, err);
	h.who = g_strdup(b->who.name);
	ok = h.cautions
	  && (!*h.cautions
	      || (book_begin(b, err)
		  && book_end(b, book_put(b, RECORD_HEEDED, &h, err), err, "%s: cautions read", work)));
	record_clear(RECORD_HEEDED, &h);
	return ok;
}
