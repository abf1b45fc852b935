#include "tui/list.h"

#include <string.h>

static struct row *
row_at(const struct list *l, int i)
{
	return &((struct row *)(void *)l->rows->data)[i];
}

static int
count(const struct list *l)
{
	return (int)l->rows->len;
}

static void
clear_row(gpointer p)
{
	g_free(((struct row *)p)->text);
}

void
list_init(struct list *l)
{
	*l = (struct list) { .rows = g_array_new(FALSE, FALSE, sizeof(struct row)), .at = -1, .was = NONE };
	l->before = g_array_new(FALSE, FALSE, sizeof(gint64));
	g_array_set_clear_func(l->rows, clear_row);
}

void
list_clear(struct list *l)
{
	g_array_unref(l->rows);
	g_array_unref(l->before);
	g_free(l->filter);
}

void
list_begin(struct list *l)
{
	const struct row *row = list_row(l);

	l->was = row ? row->key : NONE;
	g_array_set_size(l->before, 0);
	for (int i = 0; i < count(l); i++)
		g_array_append_val(l->before, row_at(l, i)->key);
	g_array_set_size(l->rows, 0);
}

void
list_add(struct list *l, gboolean heading, int index, gint64 key, char *text)
{
	struct row row = { heading, FALSE, index, key, text };

	g_array_append_val(l->rows, row);
}

/* For comparing: case and accents apart. */
static char *
plain(const char *text)
{
	g_autofree char *folded = g_utf8_casefold(text, -1), *parts = g_utf8_normalize(folded, -1, G_NORMALIZE_NFD);
	GString *out = g_string_new(NULL);

	for (const char *p = parts ? parts : folded; *p; p = g_utf8_next_char(p))
		if (!g_unichar_ismark(g_utf8_get_char(p)))
			g_string_append_unichar(out, g_utf8_get_char(p));
	return g_string_free(out, FALSE);
}

static gboolean
holds_all(const char *text, char *const *word)
{
	g_autofree char *in = plain(text);

	while (*word && strstr(in, *word))
		word++;
	return !*word;
}

/* A heading stays when a row before the next heading of its rank does; those that begin with a blank are of the lower. */
static void
hide_rows(struct list *l)
{
	g_autofree char *words = plain(l->filter ? l->filter : "");
	g_auto(GStrv) word = g_strsplit(words, " ", -1);
	gboolean below[2] = { FALSE, FALSE };

	for (int i = count(l) - 1; i >= 0; i--) {
		struct row *row = row_at(l, i);
		gboolean low = *row->text == ' ';

		row->hidden = row->heading ? !below[low] : !holds_all(row->text, word);
		if (row->heading)
			below[1] = below[low] = FALSE;
		else if (!row->hidden)
			below[0] = below[1] = TRUE;
	}
}

static gboolean
can(const struct list *l, int i)
{
	return i >= 0 && i < count(l) && !row_at(l, i)->heading && !row_at(l, i)->hidden;
}

/* The nearest row that can be selected: first onwards, then back. */
static int
nearest(const struct list *l, int i, int by)
{
	int on = i;

	while (on >= 0 && on < count(l) && !can(l, on))
		on += by;
	if (can(l, on))
		return on;
	for (on = CLAMP(i, 0, MAX(count(l) - 1, 0)); on >= 0 && on < count(l) && !can(l, on);)
		on -= by;
	return can(l, on) ? on : -1;
}

void
list_select(struct list *l, gint64 key)
{
	for (int i = 0; key != NONE && i < count(l); i++)
		if (can(l, i) && row_at(l, i)->key == key) {
			l->at = i;
			return;
		}
}

void
list_settle(struct list *l)
{
	hide_rows(l);
	l->at = nearest(l, MAX(l->at, 0), 1);
	list_select(l, l->was);
}

static gboolean
was_there(const struct list *l, gint64 key)
{
	const gint64 *before = (const void *)l->before->data;
	guint i = 0;

	while (i < l->before->len && before[i] != key)
		i++;
	return i < l->before->len;
}

void
list_settle_new(struct list *l)
{
	gint64 came = NONE;
	int n = 0;

	for (int i = 0; i < count(l); i++)
		if (!row_at(l, i)->heading && !was_there(l, row_at(l, i)->key)) {
			came = row_at(l, i)->key;
			n++;
		}
	list_settle(l);
	if (n == 1 && l->before->len)
		list_select(l, came);
}

void
list_filter(struct list *l, const char *filter)
{
	const struct row *row = list_row(l);

	l->was = row ? row->key : l->was;
	g_free(l->filter);
	l->filter = filter && *filter ? g_strdup(filter) : NULL;
	list_settle(l);
}

const struct row *
list_row(const struct list *l)
{
	return can(l, l->at) ? row_at(l, l->at) : NULL;
}

/* Rows that show, of which the selected one is the place-th. */
static int
showing(const struct list *l, int *place)
{
	int n = 0;

	*place = 0;
	for (int i = 0; i < count(l); i++) {
		if (i == l->at)
			*place = n;
		n += !row_at(l, i)->hidden;
	}
	return n;
}

static void
step(struct list *l, int by, int times)
{
	while (times-- > 0) {
		int on = l->at + by;

		while (on >= 0 && on < count(l) && !can(l, on))
			on += by;
		if (!can(l, on))
			return;
		l->at = on;
	}
}

gboolean
list_act(struct list *l, enum act act, int page)
{
	if (act < ACT_UP || act > ACT_LAST)
		return FALSE;
	if (act == ACT_UP || act == ACT_PAGE_UP)
		step(l, -1, act == ACT_UP ? 1 : MAX(page - 1, 1));
	else if (act == ACT_DOWN || act == ACT_PAGE_DOWN)
		step(l, 1, act == ACT_DOWN ? 1 : MAX(page - 1, 1));
	else
		l->at = act == ACT_FIRST ? nearest(l, 0, 1) : nearest(l, count(l) - 1, -1);
	return TRUE;
}

/* The first row that shows: the selected one stands in the middle, as far as there are rows around it. */
static int
top_of(const struct list *l, int h)
{
	int place, n = showing(l, &place), top = CLAMP(place - h / 2, 0, MAX(n - h, 0)), i = 0;

	for (; i < count(l) && (top > 0 || row_at(l, i)->hidden); i++)
		top -= !row_at(l, i)->hidden;
	return i;
}

gboolean
list_click(struct list *l, int y, int h)
{
	int i = top_of(l, h);

	for (; i < count(l) && (y > 0 || row_at(l, i)->hidden); i++)
		y -= !row_at(l, i)->hidden;
	if (!can(l, i))
		return FALSE;
	l->at = i;
	return TRUE;
}

void
list_draw(const struct list *l, const struct area *a, list_draw_row *draw_row, const void *data, const char *empty)
{
	int y = 0;

	if (l->at < 0) {
		area_wrap(a, 0, 1, STYLE_PLAIN, l->filter ? " No line holds these words: Esc shows all again." : empty);
		area_cursor(a, 0, 0);
	}
	for (int i = top_of(l, a->h); i < count(l) && y < a->h; i++) {
		const struct row *row = row_at(l, i);
		struct area line = area_part(a, y, 2, 1, a->w - 3);

		if (row->hidden)
			continue;
		draw_row(data, row, &line, i == l->at);
		if (i == l->at) {
			area_put_in(a, y, 0, 2, STYLE_SELECTED, "> ");
			area_style(a, y, 0, a->w - 1, STYLE_SELECTED);
			area_cursor(a, y, 0);
		}
		y++;
	}
}
