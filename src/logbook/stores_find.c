/* Items by any of their numbers, or by words; and the numbers that took the place of others. */
#include "logbook/stores.h"

#include "base/err.h"
#include "base/text.h"

#include <string.h>

static const struct number *
number_nth(const struct stores *s, guint i)
{
	return i < s->numbers->len ? &g_array_index(s->numbers, struct number, i) : NULL;
}

static const struct number *
number_of(const struct stores *s, gint64 id)
{
	for (guint i = 0; i < s->numbers->len; i++)
		if (number_nth(s, i)->id == id)
			return number_nth(s, i);
	return NULL;
}

const struct number *
stores_current(const struct stores *s, const struct number *n)
{
	/* A file written by something else may hold a circle: no chain is longer than all numbers. */
	for (guint i = 0; i < s->numbers->len && n->replaced_by != NONE; i++) {
		const struct number *next = number_of(s, n->replaced_by);

		if (!next)
			break;
		n = next;
	}
	return n;
}

gboolean
stores_check_chain(const struct stores *s, const struct number *n, GError **err)
{
	const struct number *last = stores_current(s, n);

	return last->replaced_by == NONE
	    || err_set(err, ERR_CONFLICT, "%s would in the end take its own place: numbers that replace each other in a circle",
		       n->number);
}

gboolean
stores_same_text(const char *a, const char *b)
{
	g_autofree char *x = g_utf8_casefold(a ? a : "", -1), *y = g_utf8_casefold(b ? b : "", -1);

	return !strcmp(x, y);
}

static void
add_number(GString *out, const struct number *n)
{
	g_string_append_printf(out, "%s%s", out->len ? ", " : "", n->number);
	if (n->supplier)
		g_string_append_printf(out, " (%s)", n->supplier);
}

char *
stores_numbers(const struct stores *s, gint64 item)
{
	g_autoptr(GString) out = g_string_new(NULL);

	for (guint i = 0; i < s->numbers->len; i++)
		if (number_nth(s, i)->item == item && number_nth(s, i)->replaced_by == NONE)
			add_number(out, number_nth(s, i));
	return out->len ? g_string_free(g_steal_pointer(&out), FALSE) : NULL;
}

char *
stores_superseded(const struct stores *s, const struct number *n)
{
	if (n->replaced_by == NONE)
		return NULL;
	return g_strdup_printf("%s is superseded: %s is current", n->number, stores_current(s, n)->number);
}

/* The item with that very number, or that very name.  Two items with one number are told apart by words alone. */
static const struct item *
find_exact(const struct stores *s, const char *words, const struct number **by)
{
	const struct item *hit = NULL;

	for (guint i = 0; i < s->items->len; i++)
		if (stores_same_text(stores_nth(s, i)->what, words))
			return stores_nth(s, i);
	for (guint i = 0; i < s->numbers->len; i++) {
		const struct number *n = number_nth(s, i);

		if (!stores_same_text(n->number, words))
			continue;
		if (hit && hit->id != n->item)
			return NULL;
		hit = stores_item(s, n->item);
		*by = n;
	}
	return hit;
}

static gboolean
has_words(char **words, const char *text)
{
	g_autofree char *folded = g_utf8_casefold(text, -1);

	for (int i = 0; words[i]; i++)
		if (*words[i] && !strstr(folded, words[i]))
			return FALSE;
	return TRUE;
}

/* What an item is looked for in: its name and all its numbers. */
static char *
searched(const struct stores *s, const struct item *i)
{
	GString *text = g_string_new(i->what);

	for (guint k = 0; k < s->numbers->len; k++)
		if (number_nth(s, k)->item == i->id)
			g_string_append_printf(text, " %s", number_nth(s, k)->number);
	return g_string_free(text, FALSE);
}

const struct item *
stores_find(const struct stores *s, const char *words, const struct number **by, GError **err)
{
	g_autofree char *folded = g_utf8_casefold(words, -1), *shown = text_quoted(words);
	g_auto(GStrv) word = g_strsplit(g_strdelimit(folded, ",;", ' '), " ", -1);
	g_autoptr(GString) near = g_string_new(NULL);
	const struct number *met = NULL;
	const struct item *hit = NULL;
	int n = 0;

	if (by)
		*by = NULL;
	hit = *words ? find_exact(s, words, &met) : NULL;
	if (hit) {
		if (by)
			*by = met;
		return hit;
	}
	for (guint i = 0; *words && i < s->items->len; i++) {
		g_autofree char *text = searched(s, stores_nth(s, i));

		if (!has_words(word, text))
			continue;
		hit = stores_nth(s, i);
		if (++n <= 6)
			g_string_append_printf(near, "%s%s", near->len ? "; " : "", hit->what);
	}
	if (n == 1)
		return hit;
	if (n)
		err_set(err, ERR_INPUT, "%s can be %s%s: name one", shown, near->str, n > 6 ? "; ..." : "");
	else
		err_set(err, ERR_NOT_FOUND, "no item of the stores is called %s: splitpin stores lists them, stores add makes one",
			shown);
	return NULL;
}
