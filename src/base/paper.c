#include "base/paper.h"

#include "base/err.h"
#include "base/text.h"

#include <string.h>

enum { A4_ROWS = 64, LETTER_ROWS = 58 };

gboolean
paper_size_parse(const char *text, enum paper_size *size, GError **err)
{
	g_autofree char *shown = NULL;

	if (!g_ascii_strcasecmp(text, "a4")) {
		*size = PAPER_A4;
	} else if (!g_ascii_strcasecmp(text, "letter")) {
		*size = PAPER_LETTER;
	} else {
		shown = text_quoted(text);
		return err_set(err, ERR_INPUT, "%s is no paper: A4 or Letter", shown);
	}
	return TRUE;
}

struct paper *
paper_new(enum paper_size size, int columns, const char *title)
{
	struct paper *p = g_new0(struct paper, 1);

	p->size = size;
	p->columns = columns;
	p->rows = size == PAPER_A4 ? A4_ROWS : LETTER_ROWS;
	p->title = g_strdup(title);
	p->pages = g_ptr_array_new_with_free_func((GDestroyNotify)g_ptr_array_unref);
	return p;
}

void
paper_free(struct paper *p)
{
	if (!p)
		return;
	g_free(p->title);
	g_ptr_array_unref(p->pages);
	g_free(p);
}

static GPtrArray *
page_begin(struct paper *p)
{
	GPtrArray *page = g_ptr_array_new_with_free_func(g_free);

	g_ptr_array_add(p->pages, page);
	return page;
}

/* Rows for text: two at the foot are the blank one and the foot itself. */
static int
room(const struct paper *p)
{
	return p->rows - 2;
}

/* The lines of a block without the blanks at their ends; what is wider than the paper goes on below. */
static char **
lines_of(const struct paper *p, const char *block)
{
	g_autoptr(GStrvBuilder) all = g_strv_builder_new();
	g_auto(GStrv) line = g_strsplit(block, "\n", -1);

	for (int i = 0; line[i] && (line[i + 1] || *line[i]); i++) {
		const char *rest = g_strchomp(line[i]);

		do {
			gsize n = text_fits(rest, p->columns);
			g_autofree char *part = g_strndup(rest, n);

			g_strv_builder_add(all, part);
			rest += n;
		} while (*rest);
	}
	return g_strv_builder_end(all);
}

void
paper_add(struct paper *p, const char *block)
{
	g_auto(GStrv) line = lines_of(p, block);
	GPtrArray *page = p->pages->len ? p->pages->pdata[p->pages->len - 1] : page_begin(p);
	int n = (int)g_strv_length(line);

	if (page->len && (int)page->len + n > room(p) && n <= room(p))
		page = page_begin(p);
	for (int i = 0; i < n; i++) {
		if ((int)page->len == room(p))
			page = page_begin(p);
		if (page->len || *line[i])
			g_ptr_array_add(page, g_strdup(line[i]));
	}
}

void
paper_add_text(struct paper *p, const char *text, int indent)
{
	g_auto(GStrv) line = g_strsplit(text, "\n", -1);
	g_autoptr(GString) block = g_string_new(NULL);

	for (int i = 0; line[i]; i++) {
		if (i && (int)strspn(line[i], " ") < indent) {
			paper_add(p, block->str);
			g_string_truncate(block, 0);
		}
		g_string_append_printf(block, "%s\n", line[i]);
	}
	if (*block->str != '\n')
		paper_add(p, block->str);
}

void
paper_end(struct paper *p)
{
	for (guint i = 0; i < p->pages->len; i++) {
		GPtrArray *page = p->pages->pdata[i];
		g_autofree char *foot = g_strdup_printf("page %u of %u", i + 1, p->pages->len);
		int left = p->columns - text_width(foot);
		g_autofree char *title = left > 0 ? text_fit(p->title, left) : g_strdup("");

		while ((int)page->len < p->rows - 1)
			g_ptr_array_add(page, g_strdup(""));
		g_ptr_array_add(page, g_strconcat(title, foot, NULL));
	}
}

char *
paper_text(const struct paper *p)
{
	GString *out = g_string_new(NULL);

	for (guint i = 0; i < p->pages->len; i++) {
		const GPtrArray *page = p->pages->pdata[i];

		if (i)
			g_string_append_c(out, '\f');
		for (guint k = 0; k < page->len; k++)
			g_string_append_printf(out, "%s\n", (const char *)page->pdata[k]);
	}
	return g_string_free(out, FALSE);
}
