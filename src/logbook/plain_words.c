#include "logbook/plain_words.h"

#include <stdlib.h>
#include <string.h>

/* Between the word that denies and the one denied there may stand one. */
enum { DENIAL_REACHES = 2, STEM_LEAST = 3 };

static void
clear_word(gpointer data)
{
	g_free(((struct plain_word *)data)->stem);
}

static void
take_end_off(GString *word)
{
	static const struct {
		const char *end, *instead;
	} ends[] = { { "ies", "y" }, { "ing", "" }, { "ed", "" }, { "es", "" }, { "s", "" } };

	for (guint i = 0; i < G_N_ELEMENTS(ends); i++) {
		gsize cut = strlen(ends[i].end), n = word->len;

		if (!g_str_has_suffix(word->str, ends[i].end) || n < cut + STEM_LEAST
		    || (cut == 1 && word->str[n - 2] == 's'))
			continue;
		g_string_truncate(word, n - cut);
		g_string_append(word, ends[i].instead);
		return;
	}
}

static char *
stem_of(const char *word, gssize n)
{
	g_autofree char *folded = g_utf8_casefold(word, n);
	GString *stem = g_string_new(folded);

	take_end_off(stem);
	if (stem->len > STEM_LEAST && stem->str[stem->len - 1] == 'e')
		g_string_truncate(stem, stem->len - 1);
	if (stem->len > STEM_LEAST && stem->str[stem->len - 1] == stem->str[stem->len - 2])
		g_string_truncate(stem, stem->len - 1);
	return g_string_free(stem, FALSE);
}

static gboolean
denies(const char *stem)
{
	static const char *const all[] = { "no", "not", "never", "without", "non", "noth", "nor", NULL };

	return g_strv_contains(all, stem);
}

/* Letters and digits are apart: 14y is 14 and y. */
static int
class_of(gunichar c)
{
	return g_unichar_isalpha(c) || c == '\'' || c == 0x2019 ? 1 : g_unichar_isdigit(c) ? 2 : 0;
}

/* Where one part of a sentence ends, and with it what was denied. */
static gboolean
is_break(const char *p, const char *end)
{
	return g_strstr_len(p, end - p, ",") || g_strstr_len(p, end - p, ";") || g_strstr_len(p, end - p, ".")
	    || g_strstr_len(p, end - p, ":");
}

/* "doesn't", with either apostrophe. */
static gboolean
is_nt(const char *from, const char *to)
{
	return to[-1] == 't'
	    && ((to - from > 2 && to[-2] == '\'') || (to - from > 4 && !strncmp(to - 4, "\342\200\231", 3)));
}

static void
add_word(GArray *words, const char *from, const char *to, int *reach)
{
	struct plain_word w = { is_nt(from, to) ? g_strdup("not") : stem_of(from, to - from), FALSE };

	if (!strcmp(w.stem, "but") || !strcmp(w.stem, "and"))
		*reach = 0;
	w.denied = *reach > 0;
	*reach = denies(w.stem) ? DENIAL_REACHES : MAX(*reach - 1, 0);
	g_array_append_val(words, w);
}

GArray *
plain_words(const char *text)
{
	GArray *words = g_array_new(FALSE, FALSE, sizeof(struct plain_word));
	const char *p = text, *end;
	int reach = 0;

	g_array_set_clear_func(words, clear_word);
	while (*p) {
		int class = class_of(g_utf8_get_char(p));

		for (end = p; *end && class_of(g_utf8_get_char(end)) == class;)
			end = g_utf8_next_char(end);
		if (class)
			add_word(words, p, end, &reach);
		else if (is_break(p, end))
			reach = 0;
		p = end;
	}
	return words;
}

static const struct plain_word *
word_at(const GArray *words, guint i)
{
	return &((const struct plain_word *)(const void *)words->data)[i];
}

static gboolean
is_age(const GArray *words, guint i, gint64 more_than, gint64 year)
{
	static const char *const units[] = { "year", "yr", "yrs", "y", NULL };
	gint64 n = g_ascii_strtoll(word_at(words, i)->stem, NULL, 10);
	const char *unit = i + 1 < words->len ? word_at(words, i + 1)->stem : "";

	if (n >= 1950 && n <= year)
		return n + more_than < year;
	return n > more_than && n < 1950 && g_strv_contains(units, unit);
}

static gboolean
stands_at(const GArray *words, guint at, const GArray *alternative)
{
	for (guint i = 0; i < alternative->len; i++)
		if (at + i >= words->len || strcmp(word_at(words, at + i)->stem, word_at(alternative, i)->stem))
			return FALSE;
	return alternative->len && (!word_at(words, at)->denied || denies(word_at(alternative, 0)->stem));
}

gboolean
plain_has(const GArray *words, const char *alternative, gint64 year)
{
	gint64 age = *alternative == '>' ? g_ascii_strtoll(alternative + 1, NULL, 10) : -1;
	g_autoptr(GArray) wanted = plain_words(alternative);

	for (guint i = 0; i < words->len; i++)
		if (age >= 0 ? is_age(words, i, age, year) : stands_at(words, i, wanted))
			return TRUE;
	return FALSE;
}
