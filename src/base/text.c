#include "base/text.h"

#include <string.h>

#define NOT_UTF8 ((gunichar)-1)
#define QUOTED_COLUMNS 40
#define QUOTED_CHARACTERS 80	/* combining marks take no column, and there may be thousands */
#define WORD_MOST 64

/* The character at *p, or NOT_UTF8 for a byte that begins none; *p moves behind it. */
static gunichar
next_char(const char **p)
{
	gunichar c = g_utf8_get_char_validated(*p, -1);

	if (c == (gunichar)-1 || c == (gunichar)-2) {
		(*p)++;
		return NOT_UTF8;
	}
	*p = g_utf8_next_char(*p);
	return c;
}

static gboolean
is_between(gunichar c, gunichar first, gunichar last)
{
	return c >= first && c <= last;
}

/* C1 controls, what turns or breaks the line (bidi, separators), and characters that nobody can see. */
static gboolean
is_hidden_control(gunichar c)
{
	return is_between(c, 0x80, 0x9f) || c == 0x61c || c == 0x200e || c == 0x200f
	    || is_between(c, 0x2028, 0x202e) || is_between(c, 0x2066, 0x206f) || c == 0xfeff
	    || is_between(c, 0xfff9, 0xfffb) || is_between(c, 0xe0000, 0xe007f);
}

static gboolean
is_ascii_control(gunichar c)
{
	return c < 0x20 || c == 0x7f;
}

/* Append the character that stands from p to end in a form that a terminal only shows. */
static void
append_harmless(GString *out, gunichar c, const char *p, const char *end)
{
	if (c == NOT_UTF8 || is_ascii_control(c))
		g_string_append_printf(out, "\\x%02x", (unsigned char)*p);
	else if (is_hidden_control(c))
		g_string_append_printf(out, "<U+%04X>", c);
	else
		g_string_append_len(out, p, end - p);
}

/* Printable ASCII from end to end: as most text is, and then a byte is a column and nothing can do harm. */
static gboolean
is_plain(const char *text)
{
	while (*text >= 0x20 && *text < 0x7f)
		text++;
	return !*text;
}

char *
text_harmless(const char *text, gboolean keep_lines)
{
	GString *out;
	const char *p = text;

	if (is_plain(text))
		return g_strdup(text);
	out = g_string_sized_new(strlen(text) + 16);
	while (*p) {
		const char *start = p;
		gunichar c = next_char(&p);

		if (c == '\n' || c == '\t')
			g_string_append_c(out, keep_lines ? (char)c : ' ');
		else if (c == '\r' && *p == '\n')
			continue;	/* a line end as other systems write it */
		else
			append_harmless(out, c, start, p);
	}
	return g_string_free(out, FALSE);
}

static int
char_width(gunichar c)
{
	if (c == NOT_UTF8 || is_ascii_control(c) || is_between(c, 0x80, 0x9f))
		return 1;
	if (c < 0x7f)
		return 1;
	if (g_unichar_iszerowidth(c))
		return 0;
	return g_unichar_iswide(c) ? 2 : 1;
}

static int
width_until(const char *p, const char *end)
{
	int width = 0;

	while (p < end)
		width += char_width(next_char(&p));
	return width;
}

int
text_width(const char *text)
{
	return width_until(text, text + strlen(text));
}

char *
text_quoted(const char *text)
{
	g_autoptr(GString) piece = g_string_new(NULL);
	GString *out = g_string_new("\"");
	const char *p = text;
	int columns = 0;

	for (int n = 0; *p; n++) {
		const char *start = p;
		gunichar c = next_char(&p);

		g_string_truncate(piece, 0);
		append_harmless(piece, c, start, p);
		columns += text_width(piece->str);
		if (columns > QUOTED_COLUMNS || n >= QUOTED_CHARACTERS) {
			g_string_append(out, "...");
			break;
		}
		g_string_append_len(out, piece->str, (gssize)piece->len);
	}
	g_string_append_c(out, '"');
	return g_string_free(out, FALSE);
}

static void
pad(GString *out, int spaces)
{
	for (int i = 0; i < spaces; i++)
		g_string_append_c(out, ' ');
}

char *
text_fit(const char *text, int columns)
{
	GString *out = g_string_sized_new((gsize)MAX(columns, 0) + 8);
	const char *p = text;
	gsize kept = 0;	/* bytes of the longest start that leaves a column for "~" */
	int at = 0, kept_at = 0;

	if (is_plain(text) && strlen(text) <= (gsize)MAX(columns, 0)) {
		g_string_append(out, text);
		pad(out, columns - (int)out->len);
		return g_string_free(out, FALSE);
	}
	while (*p && columns > 0) {
		const char *start = p;
		gunichar c = next_char(&p);
		int width = char_width(c);

		if (at + width > columns) {
			g_string_truncate(out, kept);
			pad(out, columns - 1 - kept_at);
			g_string_append_c(out, '~');
			return g_string_free(out, FALSE);
		}
		if (c == NOT_UTF8 || is_ascii_control(c) || is_between(c, 0x80, 0x9f))
			g_string_append_c(out, '?');
		else
			g_string_append_len(out, start, p - start);
		at += width;
		if (at < columns) {
			kept = out->len;
			kept_at = at;
		}
	}
	pad(out, columns - at);
	return g_string_free(out, FALSE);
}

void
text_add_fit(GString *out, const char *text, int columns)
{
	g_autofree char *safe = NULL, *fit = NULL;

	if (is_plain(text) && strlen(text) <= (gsize)MAX(columns, 0)) {
		gsize n = strlen(text);

		g_string_append_len(out, text, (gssize)n);
		pad(out, columns - (int)n);
		return;
	}
	safe = text_harmless(text, FALSE);
	fit = text_fit(safe, columns);
	g_string_append(out, fit);
}

int
int_digits(gint64 value, char buf[INT_TEXT])
{
	guint64 left = value < 0 ? 0 - (guint64)value : (guint64)value;
	char back[INT_TEXT];
	int n = 0, len = 0;

	do
		back[n++] = (char)('0' + left % 10);
	while (left /= 10);
	if (value < 0)
		buf[len++] = '-';
	while (n > 0)
		buf[len++] = back[--n];
	return len;
}

void
text_add_int(GString *out, gint64 n)
{
	char digits[INT_TEXT];

	g_string_append_len(out, digits, int_digits(n, digits));
}

/* Where text_wrap stands in out. */
struct wrap {
	GString *out;
	int columns, indent;
	int at;	/* column in out's last line */
	int breaks;	/* newlines read and not yet written, so that none ends the text */
	gboolean bare;	/* nothing but the indent stands on the line */
};

static void
wrap_break(struct wrap *w, int lines)
{
	for (int i = 0; i < lines; i++)
		g_string_append_c(w->out, '\n');
	pad(w->out, w->indent);
	w->at = w->indent;
	w->bare = TRUE;
}

static void
wrap_word(struct wrap *w, int spaces, const char *word, gsize length)
{
	int width = width_until(word, word + length);
	gboolean fits;

	if (w->breaks)
		wrap_break(w, w->breaks);
	w->breaks = 0;
	fits = w->at + spaces + width <= w->columns;
	if (!fits && !w->bare)
		wrap_break(w, 1);
	if (fits) {
		pad(w->out, spaces);
		w->at += spaces;
	}
	g_string_append_len(w->out, word, (gssize)length);
	w->at += width;
	w->bare = FALSE;
}

gsize
text_fits(const char *text, int columns)
{
	const char *end = *text ? g_utf8_next_char(text) : text;

	for (const char *next = end; *end; end = next) {
		g_autofree char *start = NULL;

		next = g_utf8_next_char(end);
		start = g_strndup(text, (gsize)(next - text));
		if (text_width(start) > columns)
			break;
	}
	return (gsize)(end - text);
}

void
text_wrap(GString *out, const char *text, int columns, int indent)
{
	const char *line = strrchr(out->str, '\n');
	struct wrap w = { .out = out, .columns = MAX(columns, 1) };
	gsize spaces, length;

	w.indent = CLAMP(indent, 0, w.columns - 1);
	w.at = text_width(line ? line + 1 : out->str);
	w.bare = w.at == 0;
	for (const char *p = text; *p; p += length) {
		if (*p == '\n') {
			w.breaks++;
			length = 1;
			continue;
		}
		spaces = strspn(p, " \t");
		p += spaces;
		length = strcspn(p, " \t\n");
		if (length)
			wrap_word(&w, (int)MIN(spaces, (gsize)w.columns), p, length);
	}
}

/* The word's characters in lower case; -1 when it is not UTF-8 or too long to be a slip of the fingers. */
static int
lower_chars(const char *word, gunichar chars[WORD_MOST])
{
	int n = 0;

	while (*word) {
		gunichar c = next_char(&word);

		if (c == NOT_UTF8 || n == WORD_MOST)
			return -1;
		chars[n++] = g_unichar_tolower(c);
	}
	return n;
}

/* Optimal string alignment: insert, delete, replace, exchange two neighbours, each counts 1. */
static int
edit_distance(const gunichar *a, int n_a, const gunichar *b, int n_b)
{
	int rows[3][WORD_MOST + 1];	/* before the last, the last, this one */

	for (int j = 0; j <= n_b; j++)
		rows[0][j] = j;
	for (int i = 1; i <= n_a; i++) {
		int *this = rows[i % 3], *last = rows[(i + 2) % 3], *before = rows[(i + 1) % 3];

		this[0] = i;
		for (int j = 1; j <= n_b; j++) {
			int best = last[j - 1] + (a[i - 1] != b[j - 1]);

			best = MIN(best, MIN(last[j], this[j - 1]) + 1);
			if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
				best = MIN(best, before[j - 2] + 1);
			this[j] = best;
		}
	}
	return rows[n_a % 3][n_b];
}

const char *
text_nearest(const char *word, const char *const *words, int n)
{
	gunichar typed[WORD_MOST], other[WORD_MOST];
	int n_typed = lower_chars(word, typed), n_other, distance, limit, best;
	const char *nearest = NULL;

	if (n_typed < 1)
		return NULL;
	limit = n_typed <= 3 ? 1 : MAX(2, n_typed / 3);
	best = MIN(limit + 1, n_typed);	/* with every letter changed nothing is left of the word */
	for (int i = 0; i < n; i++) {
		n_other = lower_chars(words[i], other);
		if (n_other < 1)
			continue;
		distance = edit_distance(typed, n_typed, other, n_other);
		if (distance < best) {
			best = distance;
			nearest = words[i];
		}
	}
	return nearest;
}

int
text_edits(const char *a, const char *b)
{
	gunichar x[WORD_MOST], y[WORD_MOST];
	int n = lower_chars(a, x), m = lower_chars(b, y);

	return edit_distance(x, n, y, m);
}

gboolean
text_same_words(const char *a, const char *b)
{
	g_autofree char *x = g_utf8_casefold(a, -1), *y = g_utf8_casefold(b, -1);
	g_auto(GStrv) p = g_strsplit_set(x, " \t", -1), q = g_strsplit_set(y, " \t", -1);
	int i = 0, k = 0;

	for (;;) {
		while (p[i] && !*p[i])
			i++;
		while (q[k] && !*q[k])
			k++;
		if (!p[i] || !q[k])
			return p[i] == q[k];
		if (strcmp(p[i++], q[k++]))
			return FALSE;
	}
}
