#include "logbook/season_order.h"

#include "base/err.h"
#include "exchange/table.h"

#include <string.h>

enum { LIST, SECTION, HEADING, MATCH, NOTE, STANDING, SOURCE };
static const char *const columns[] = { "list", "section", "heading", "match", "note", "standing", "source", NULL };

/* One word of a row's match. */
struct match {
	struct season_row row;
	char *text;
	GPatternSpec *pattern; /* of names; NULL: a path */
	char *source;
};

struct season_order {
	struct table *table; /* NULL: there is none */
	GArray *matches; /* struct match */
};

static void
clear_match(gpointer p)
{
	struct match *m = p;

	g_clear_pointer(&m->pattern, g_pattern_spec_free);
	g_free(m->text);
	g_free(m->source);
}

void
season_order_free(struct season_order *o)
{
	if (!o)
		return;
	g_array_unref(o->matches);
	table_free(o->table);
	g_free(o);
}

static const struct match *
match_at(const struct season_order *o, guint i)
{
	return &((const struct match *)(const void *)o->matches->data)[i];
}

static void
take_words(struct season_order *o, const struct season_row *row, const char *words, gint64 standing, const char *source)
{
	g_auto(GStrv) word = g_strsplit(words, " ", -1);
	int paths = -1;

	for (int i = 0; word[i]; i++) {
		gboolean names = strchr(word[i], '.') || strchr(word[i], '*');
		struct match m = { .row = *row, .text = g_strdup(word[i]),
				   .source = row->note && source ? source_words(standing, source) : NULL };

		paths = paths < 0 && !names ? i : paths;
		m.row.place = names ? i : paths;
		m.row.source = m.source;
		m.pattern = names ? g_pattern_spec_new(word[i]) : NULL;
		if (*word[i])
			g_array_append_val(o->matches, m);
		else
			clear_match(&m);
	}
}

static gboolean
take_row(struct season_order *o, guint i, enum season_list wanted, GError **err)
{
	const char *list = table_cell(o->table, i, LIST), *match = table_cell(o->table, i, MATCH);
	const char *standing = table_cell(o->table, i, STANDING);
	struct season_row row = { .rank = (int)i, .section = table_cell(o->table, i, SECTION),
				  .heading = table_cell(o->table, i, HEADING), .note = table_cell(o->table, i, NOTE) };
	gint64 index, of = NONE;

	if (!word_parse(&words_season_list, list ? list : "", &index, err)
	    || (standing && !word_parse(&words_standing, standing, &of, err)))
		return table_prefix(o->table, i, err);
	if (!row.section || !row.heading || !match) {
		err_set(err, ERR_INPUT, "section, heading and match can't be empty");
		return table_prefix(o->table, i, err);
	}
	if (index == (gint64)wanted)
		take_words(o, &row, match, of, table_cell(o->table, i, SOURCE));
	return TRUE;
}

struct season_order *
season_order_read(const char *data, enum season_list list, GError **err)
{
	g_autofree char *path = data ? g_build_filename(data, "catalogue", "lists.csv", NULL) : NULL;
	struct season_order *o = g_new0(struct season_order, 1);
	gboolean ok = TRUE;

	o->matches = g_array_new(FALSE, FALSE, sizeof(struct match));
	g_array_set_clear_func(o->matches, clear_match);
	if (!path || !g_file_test(path, G_FILE_TEST_EXISTS))
		return o;
	o->table = table_read(path, columns, err);
	for (guint i = 0; o->table && ok && i < table_rows(o->table); i++)
		ok = take_row(o, i, list, err);
	if (o->table && ok)
		return o;
	season_order_free(o);
	return NULL;
}

/* Without the side of a twin: "port/engine" and "port-engine" are the engine. */
static const char *
without_side(const char *text, char after)
{
	static const char *const sides[] = { "port", "starboard" };

	for (guint i = 0; i < G_N_ELEMENTS(sides); i++)
		if (g_str_has_prefix(text, sides[i]) && text[strlen(sides[i])] == after)
			return text + strlen(sides[i]) + 1;
	return text;
}

static gboolean
takes(const struct match *m, const char *name, const char *path)
{
	gsize n = strlen(m->text);

	if (m->pattern)
		return g_pattern_spec_match_string(m->pattern, name);
	return !strncmp(path, m->text, n) && (!path[n] || path[n] == '/');
}

const struct season_row *
season_order_row(const struct season_order *o, const char *name, const char *path)
{
	const char *bare = without_side(path, '/');
	const char *plain = bare == path ? name : without_side(name, '-');

	for (guint i = 0; i < o->matches->len; i++)
		if (!strcmp(match_at(o, i)->text, plain))
			return &match_at(o, i)->row;
	for (guint i = 0; i < o->matches->len; i++)
		if (takes(match_at(o, i), plain, bare))
			return &match_at(o, i)->row;
	return NULL;
}

gboolean
season_order_names(const struct season_order *o, const char *name, const char *path)
{
	const char *plain = without_side(path, '/') == path ? name : without_side(name, '-');

	for (guint i = 0; i < o->matches->len; i++)
		if (!strcmp(match_at(o, i)->text, plain))
			return TRUE;
	return FALSE;
}
