#include "logbook/removal_tokens.h"

#include "model/words.h"

#include <string.h>

static gboolean
is_one_of(const char *low, const char *const *words)
{
	return g_strv_contains(words, low);
}

/* Signs of a typesetter, or of a phone, as a keyboard has them. */
static char *
plain_signs(const char *line)
{
	static const char *const signs[][2] = { { "\u2019", "'" },     { "\u2018", "'" },   { "\u201c", "\"" },
						{ "\u201d", "\"" },    { "\u2033", "\"" },  { "\u00bd", "1/2" },
						{ "\u00bc", "1/4" },   { "\u00be", "3/4" }, { "\u00d7", "x" },
						{ "\u00b0", " deg " }, { "\u2013", "-" },   { "\t", " " } };
	GString *out = g_string_new(line);

	for (guint i = 0; i < G_N_ELEMENTS(signs); i++)
		g_string_replace(out, signs[i][0], signs[i][1], 0);
	return g_string_free(out, FALSE);
}

static gboolean
add(struct tokens *t, const char *from, gsize length, gboolean quoted)
{
	struct token *k = &t->at[t->n];

	if (length > 1 && from[length - 1] == ':')
		length--;
	if (!length)
		return TRUE;
	if (t->n == MOST_TOKENS)
		return FALSE;
	k->text = g_strndup(from, length);
	k->low = g_utf8_casefold(k->text, -1);
	k->quoted = quoted;
	k->used = FALSE;
	t->n++;
	return TRUE;
}

/* "5/8in" and "75%" are a number and its unit. */
static gboolean
add_word(struct tokens *t, const char *from, gsize length)
{
	static const char *const units[] = { "in", "inch", "inches", "mm", "cm", "deg", "%", NULL };
	gsize number = strspn(from, "0123456789./-");
	g_autofree char *word = g_strndup(from, length), *unit = NULL;

	if (!number || number >= length || !g_ascii_isdigit(*from))
		return add(t, from, length, FALSE);
	unit = g_ascii_strdown(word + number, -1);
	if (!is_one_of(unit, units))
		return add(t, from, length, FALSE);
	return add(t, from, number, FALSE) && add(t, from + number, length - number, FALSE);
}

gboolean
tokens_read(const char *line, struct tokens *t)
{
	g_autofree char *plain = plain_signs(line);
	const char *p = plain;
	gboolean ok = TRUE, comma = FALSE;

	memset(t, 0, sizeof *t);
	while (ok && *p) {
		gsize length = strcspn(p, " ,;\"");
		int first = t->n;

		ok = add_word(t, p, length);
		p += length;
		if (*p == '"' && p > plain && g_ascii_isdigit(p[-1])) {
			ok = ok && add(t, "in", 2, FALSE);
		} else if (*p == '"') {
			gsize inside = strcspn(p + 1, "\"");

			ok = ok && add(t, p + 1, inside, TRUE);
			p += p[1 + inside] ? inside + 1 : inside;
		}
		if (t->n > first)
			t->at[first].comma = comma;
		comma = *p == ',' || *p == ';' || (comma && t->n == first);
		p += *p != '\0';
	}
	return ok;
}

void
tokens_clear(struct tokens *t)
{
	for (int i = 0; i < t->n; i++) {
		g_free(t->at[i].text);
		g_free(t->at[i].low);
	}
}

gboolean
token_free(const struct tokens *t, int i)
{
	return i >= 0 && i < t->n && !t->at[i].used && !t->at[i].quoted;
}

gboolean
token_is(const struct tokens *t, int i, const char *const *words)
{
	return token_free(t, i) && is_one_of(t->at[i].low, words);
}

char *
tokens_take(struct tokens *t, int from, int to)
{
	GString *out = g_string_new(NULL);

	for (int i = from; i < to; i++) {
		g_string_append_printf(out, "%s%s", out->len ? " " : "", t->at[i].text);
		t->at[i].used = TRUE;
	}
	return g_string_free(out, FALSE);
}

char *
tokens_rest(const struct tokens *t)
{
	GString *out = g_string_new(NULL);
	gboolean comma = FALSE;

	for (int i = 0; i < t->n; i++) {
		comma = comma || t->at[i].comma;
		if (t->at[i].used)
			continue;
		g_string_append_printf(out, "%s%s", !out->len ? "" : comma ? ", " : " ", t->at[i].text);
		comma = FALSE;
	}
	if (out->len)
		return g_string_free(out, FALSE);
	g_string_free(out, TRUE);
	return NULL;
}

/* One of the words, or several of them. */
static gboolean
stands(const struct tokens *t, int i, const char *const *words)
{
	g_autofree char *one = NULL;
	gsize length;

	if (i < 0 || i >= t->n || t->at[i].quoted)
		return FALSE;
	one = g_strdup(t->at[i].low);
	if (is_one_of(one, words))
		return TRUE;
	length = strlen(one);
	if (length > 3 && one[length - 1] == 's')
		one[length - 1] = '\0';
	return is_one_of(one, words);
}

static gboolean
is_retainer(const struct tokens *t, int i)
{
	static const char *const alone[] = { "cotter",    "splitpin",  "split-pin", "rollpin",    "roll-pin",
					     "clip",      "circlip",   "r-clip",    "e-clip",     "e-ring",
					     "snap-ring", "snapring",  "retainer",  "tab-washer", "tabwasher",
					     "lockwire",  "lock-wire", "hairpin",   NULL };
	static const char *const before[] = { "split", "roll", "spring", "tab", "lock", "locking", "snap", "e", NULL };
	static const char *const after[] = { "pin", "washer", "tab", "ring", "wire", NULL };
	static const char *const hose[] = { "hose", NULL };

	if (stands(t, i, alone))
		return !stands(t, i - 1, hose);
	/* A lock washer only springs; a lock tab, a lock wire and a tab washer hold. */
	if (!stands(t, i, before) || !stands(t, i + 1, after))
		return FALSE;
	return !(g_str_has_prefix(t->at[i].low, "lock") || g_str_has_prefix(t->at[i].low, "spring"))
	    || !g_str_has_prefix(t->at[i + 1].low, "washer");
}

static gboolean
is_plug(const struct tokens *t, int i)
{
	static const char *const words[] = { "plug", "drain", NULL }, *const fire[] = { "spark", "glow", NULL };

	return stands(t, i, words) && !stands(t, i - 1, fire);
}

static gboolean
is_fastener(const struct tokens *t, int i)
{
	static const char *const words[] = { "bolt",     "nut",     "stud",   "screw",      "washer", "capscrew",
					     "setscrew", "locknut", "u-bolt", "lockwasher", NULL };

	return stands(t, i, words);
}

gint64
tokens_kind(const struct tokens *t)
{
	static const struct {
		enum removal_kind kind;
		gboolean (*is)(const struct tokens *t, int i);
	} kinds[] = { { REMOVAL_RETAINER, is_retainer }, { REMOVAL_PLUG, is_plug }, { REMOVAL_FASTENER, is_fastener } };

	for (guint k = 0; k < G_N_ELEMENTS(kinds); k++)
		for (int i = 0; i < t->n; i++)
			if (kinds[k].is(t, i))
				return (gint64)kinds[k].kind;
	return NONE;
}

gboolean
tokens_counted_at(const struct tokens *t, int i)
{
	return is_retainer(t, i) || is_plug(t, i) || is_fastener(t, i);
}

gboolean
tokens_clamp(const struct tokens *t)
{
	static const char *const words[] = { "clamp", "hose-clamp", NULL };

	for (int i = 0; i < t->n; i++)
		if (stands(t, i, words))
			return TRUE;
	return FALSE;
}

gboolean
tokens_setting(const struct tokens *t)
{
	static const char *const words[] = { "lever",     "gear",     "shift",    "trim",           "throttle", "seacock",
					     "valve",     "switch",   "rudder",   "tiller",         "helm",     "wheel",
					     "jaw",       "selector", "cable",    "travel",         "barrel",   "angle",
					     "sender",    "mark",     "position", "slot",           "hole",     "gap",
					     "clearance", "level",    "colour",   "color",          "breaker",  "control",
					     "tilt",      "tension",  "play",     NULL };

	for (int i = 0; i < t->n; i++)
		if (stands(t, i, words))
			return TRUE;
	return FALSE;
}
