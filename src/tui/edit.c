#include "tui/edit.h"

#include "base/text.h"

#include <string.h>

enum { UNDONE_MOST = 100 };

void
edit_init(struct edit *e, const char *text)
{
	*e = (struct edit) { .text = g_string_new(text), .undone = g_ptr_array_new_with_free_func(g_free) };
	e->at = e->text->len;
}

void
edit_clear(struct edit *e)
{
	g_string_free(e->text, TRUE);
	g_ptr_array_unref(e->undone);
	g_free(e->cut);
}

const char *
edit_text(const struct edit *e)
{
	return e->text->str;
}

static void
remember(struct edit *e)
{
	if (e->undone->len == UNDONE_MOST)
		g_ptr_array_remove_index(e->undone, 0);
	g_ptr_array_add(e->undone, g_strdup(e->text->str));
	e->typing = FALSE;
}

void
edit_set(struct edit *e, const char *text)
{
	if (!strcmp(text, e->text->str))
		return;
	remember(e);
	g_string_assign(e->text, text);
	e->at = e->text->len;
}

static gboolean
is_mark(const char *p)
{
	return *p && g_unichar_iszerowidth(g_utf8_get_char(p));
}

/* A character and the marks on it go together. */
static const char *
past(const char *p)
{
	if (*p)
		p = g_utf8_next_char(p);
	while (is_mark(p))
		p = g_utf8_next_char(p);
	return p;
}

static gsize
after(const struct edit *e, gsize at)
{
	return (gsize)(past(e->text->str + at) - e->text->str);
}

static gsize
before(const struct edit *e, gsize at)
{
	const char *start = e->text->str, *p = start + at;

	if (at)
		p = g_utf8_prev_char(p);
	while (p > start && is_mark(p))
		p = g_utf8_prev_char(p);
	return (gsize)(p - start);
}

static gboolean
in_word(const struct edit *e, gsize at)
{
	return g_unichar_isalnum(g_utf8_get_char(e->text->str + at));
}

static gsize
word_before(const struct edit *e)
{
	gsize at = e->at;

	while (at && !in_word(e, before(e, at)))
		at = before(e, at);
	while (at && in_word(e, before(e, at)))
		at = before(e, at);
	return at;
}

static gsize
word_after(const struct edit *e)
{
	gsize at = e->at;

	while (at < e->text->len && !in_word(e, at))
		at = after(e, at);
	while (at < e->text->len && in_word(e, at))
		at = after(e, at);
	return at;
}

static void
erase(struct edit *e, gsize from, gsize to, gboolean keep)
{
	if (from == to)
		return;
	remember(e);
	if (keep) {
		g_free(e->cut);
		e->cut = g_strndup(e->text->str + from, to - from);
	}
	g_string_erase(e->text, (gssize)from, (gssize)(to - from));
	e->at = from;
}

/* The character before the cursor and the accents that follow become one, where there is one; the cursor comes to stand
 * behind them. */
static void
compose(struct edit *e)
{
	gsize from = before(e, e->at), to = after(e, from);
	g_autofree char *piece = g_strndup(e->text->str + from, to - from);
	g_autofree char *composed = g_utf8_normalize(piece, -1, G_NORMALIZE_NFC);

	g_string_erase(e->text, (gssize)from, (gssize)(to - from));
	g_string_insert(e->text, (gssize)from, composed);
	e->at = from + strlen(composed);
}

static gboolean
insert(struct edit *e, const char *text)
{
	if (e->text->len + strlen(text) > EDIT_MOST)
		return TRUE;
	if (!e->typing)
		remember(e);
	g_string_insert(e->text, (gssize)e->at, text);
	e->at += strlen(text);
	e->typing = TRUE;
	if (is_mark(text) || is_mark(e->text->str + e->at))
		compose(e);
	return TRUE;
}

/* Not controls, nor what turns the line or nobody sees; nor a mark that has nothing to stand on. */
static gboolean
may_enter(const struct edit *e, const char *text)
{
	g_autofree char *shown = text_harmless(text, FALSE);

	return !strcmp(shown, text) && (e->at > 0 || !is_mark(text));
}

static gboolean
type(struct edit *e, const struct key_event *k)
{
	char text[7];
	gunichar c = k->key;

	if (k->pasted && (c == K_ENTER || c == K_TAB || c == '\n' || c == '\r' || c == '\t'))
		c = ' ';
	if (!c || !g_unichar_validate(c))
		return FALSE;
	text[g_unichar_to_utf8(c, text)] = '\0';
	return may_enter(e, text) && insert(e, text);
}

static gboolean
undo(struct edit *e)
{
	if (!e->undone->len)
		return TRUE;
	g_string_assign(e->text, g_ptr_array_index(e->undone, e->undone->len - 1));
	g_ptr_array_set_size(e->undone, (int)e->undone->len - 1);
	e->at = e->text->len;
	e->typing = FALSE;
	return TRUE;
}

static gboolean
go(struct edit *e, gsize at)
{
	e->at = at;
	e->typing = FALSE;
	return TRUE;
}

gboolean
edit_key(struct edit *e, const struct key_event *k)
{
	if (k->pasted)
		return type(e, k);
	switch (k->key) {
	case K_LEFT: case K_CTRL('b'): return go(e, before(e, e->at));
	case K_RIGHT: case K_CTRL('f'): return go(e, after(e, e->at));
	case K_WORD_LEFT: return go(e, word_before(e));
	case K_WORD_RIGHT: return go(e, word_after(e));
	case K_HOME: case K_CTRL('a'): return go(e, 0);
	case K_END: case K_CTRL('e'): return go(e, e->text->len);
	case K_BACKSPACE: case K_CTRL('h'): case 127: erase(e, before(e, e->at), e->at, FALSE); return TRUE;
	case K_DELETE: case K_CTRL('d'): erase(e, e->at, after(e, e->at), FALSE); return TRUE;
	case K_CTRL('k'): erase(e, e->at, e->text->len, TRUE); return TRUE;
	case K_CTRL('u'): erase(e, 0, e->at, TRUE); return TRUE;
	case K_CTRL('w'): erase(e, word_before(e), e->at, TRUE); return TRUE;
	case K_CTRL('y'): e->typing = FALSE; return !e->cut || insert(e, e->cut);
	case K_CTRL('_'): return undo(e);
	}
	return type(e, k);
}

/* As the grid will show it, so that columns can be counted. */
static char *
as_shown(const struct grid *g, const char *text)
{
	g_autofree char *safe = text_harmless(text, FALSE);

	return g->ascii ? g_str_to_ascii(safe, "C") : g_steal_pointer(&safe);
}

void
edit_draw(const struct edit *e, const struct area *a, int y, int x, int w, gboolean typed)
{
	g_autofree char *before_it = g_strndup(e->text->str, e->at);
	g_autofree char *left = as_shown(a->g, before_it), *right = as_shown(a->g, e->text->str + e->at);
	g_autofree char *all = g_strconcat(left, right, NULL);
	const char *shown = all, *next;
	int column = typed ? text_width(left) : 0;

	/* A column stays for the cursor behind the last character. */
	for (; column >= MAX(w, 1); shown = next) {
		g_autofree char *first = NULL;

		next = past(shown);
		first = g_strndup(shown, (gsize)(next - shown));
		column -= text_width(first);
	}
	area_put_in(a, y, x, w, typed ? STYLE_FIELD : STYLE_PLAIN, shown);
	if (typed)
		area_cursor(a, y, x + column);
}
