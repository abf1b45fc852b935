#include "logbook/knowledge.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/inside.h"
#include "logbook/plain_words.h"
#include "logbook/shipped.h"
#include "model/words.h"

#include <string.h>

/* A rule, and what it is met by. */
struct row {
	struct finding_rule rule;
	char **fitting; /* beginnings of paths, or words for the fitting; NULL: any */
	char ***group; /* of each one alternative has to be there; ends with NULL */
	char **without; /* none of these may */
};

struct knowledge {
	struct table *findings, *words; /* hold the texts */
	GArray *rows; /* struct row */
	GArray *known; /* struct trade_word */
};

enum finding_column { ID, FITTING, WORDS, WITHOUT, LEVEL, RAISED, LIMIT, MAKES_DUE, WHY, STANDING, SOURCE };

static const char *const finding_columns[] = { "id",	"fitting",   "words", "without",  "level",  "raised",
					       "limit", "makes-due", "why",   "standing", "source", NULL };

enum word_column { WORD, FAMILY, MEANING, WORD_LEVEL, WORD_STANDING, WORD_SOURCE };

static const char *const word_columns[] = { "word", "family", "meaning", "level", "standing", "source", NULL };

static void
clear_row(gpointer data)
{
	struct row *r = data;

	g_strfreev(r->fitting);
	g_strfreev(r->without);
	for (int i = 0; r->group && r->group[i]; i++)
		g_strfreev(r->group[i]);
	g_free(r->group);
}

void
knowledge_free(struct knowledge *k)
{
	if (!k)
		return;
	if (k->rows)
		g_array_unref(k->rows);
	if (k->known)
		g_array_unref(k->known);
	table_free(k->findings);
	table_free(k->words);
	g_free(k);
}

/* NULL for an empty cell. */
static char **
split_cell(const char *text)
{
	return text ? g_strsplit(text, " ", -1) : NULL;
}

/* "vane piece + missing lost": two groups. */
static char ***
split_groups(const char *text)
{
	g_auto(GStrv) part = g_strsplit(text, " + ", -1);
	guint n = g_strv_length(part);
	char ***group = g_new0(char **, n + 1);

	for (guint i = 0; i < n; i++)
		group[i] = split_cell(part[i]);
	return group;
}

/* An empty cell is NONE. */
static gboolean
take_word(const char *text, const struct words *list, gint64 *index, GError **err)
{
	*index = NONE;
	return !text || word_parse(list, text, index, err);
}

static gboolean
take_rule(const struct table *t, guint i, struct finding_rule *r, GError **err)
{
	static const int wanted[] = { ID, WORDS, LEVEL, WHY, STANDING, SOURCE, -1 };
	gint64 standing;

	if (!shipped_row_is_whole(t, i, finding_columns, wanted, err))
		return FALSE;
	*r = (struct finding_rule){ .id = table_cell(t, i, ID), .limit = table_cell(t, i, LIMIT),
				    .makes_due = table_cell(t, i, MAKES_DUE), .why = table_cell(t, i, WHY),
				    .standing = table_cell(t, i, STANDING), .source = table_cell(t, i, SOURCE) };
	if (!take_word(table_cell(t, i, LEVEL), &words_level, &r->level, err)
	    || !take_word(table_cell(t, i, RAISED), &words_level, &r->raised, err)
	    || !take_word(r->standing, &words_standing, &standing, err))
		return table_prefix(t, i, err);
	return TRUE;
}

static gboolean
take_findings(struct knowledge *k, GError **err)
{
	const struct table *t = k->findings;

	for (guint i = 0; i < table_rows(t); i++) {
		struct row r = { .fitting = NULL };

		if (!take_rule(t, i, &r.rule, err))
			return FALSE;
		if (knowledge_rule(k, r.rule.id)) {
			err_set(err, ERR_INPUT, "%s stands there twice", r.rule.id);
			return table_prefix(t, i, err);
		}
		r.fitting = split_cell(table_cell(t, i, FITTING));
		r.group = split_groups(table_cell(t, i, WORDS));
		r.without = split_cell(table_cell(t, i, WITHOUT));
		g_array_append_val(k->rows, r);
	}
	return TRUE;
}

static gboolean
take_words(struct knowledge *k, GError **err)
{
	static const int wanted[] = { WORD, FAMILY, MEANING, WORD_STANDING, WORD_SOURCE, -1 };
	const struct table *t = k->words;

	for (guint i = 0; i < table_rows(t); i++) {
		struct trade_word w = { table_cell(t, i, WORD), table_cell(t, i, FAMILY), table_cell(t, i, MEANING), NONE };
		gint64 standing;

		if (!shipped_row_is_whole(t, i, word_columns, wanted, err))
			return FALSE;
		if (!take_word(table_cell(t, i, WORD_LEVEL), &words_level, &w.level, err)
		    || !take_word(table_cell(t, i, WORD_STANDING), &words_standing, &standing, err))
			return table_prefix(t, i, err);
		g_array_append_val(k->known, w);
	}
	return TRUE;
}

struct knowledge *
knowledge_read(const char *folder, GError **err)
{
	struct knowledge *k = g_new0(struct knowledge, 1);

	k->rows = g_array_new(FALSE, FALSE, sizeof(struct row));
	g_array_set_clear_func(k->rows, clear_row);
	k->known = g_array_new(FALSE, FALSE, sizeof(struct trade_word));
	if (!(k->findings = shipped_table(folder, "findings.csv", finding_columns, err)) || !take_findings(k, err)
	    || !(k->words = shipped_table(folder, "words.csv", word_columns, err)) || !take_words(k, err))
		g_clear_pointer(&k, knowledge_free);
	return k;
}

const struct knowledge *
book_knowledge(struct book *b, GError **err)
{
	g_autofree char *folder = NULL;

	if (b->knowledge)
		return b->knowledge;
	folder = book_catalogue(b);
	return b->knowledge = knowledge_read(folder, err);
}

static const struct row *
row_at(const struct knowledge *k, guint i)
{
	return &((const struct row *)(const void *)k->rows->data)[i];
}

const struct finding_rule *
knowledge_rule(const struct knowledge *k, const char *id)
{
	for (guint i = 0; i < k->rows->len; i++)
		if (!strcmp(row_at(k, i)->rule.id, id))
			return &row_at(k, i)->rule;
	return NULL;
}

/* What a rule is set against. */
struct said {
	const char *path; /* without the side of a twin; "" for none */
	GArray *sentence, *place; /* struct plain_word: of what was typed, of the path */
	gint64 year;
};

static const char *
without_side(const char *path)
{
	static const char *const sides[] = { "port/", "starboard/" };

	for (guint i = 0; path && i < G_N_ELEMENTS(sides); i++)
		if (g_str_has_prefix(path, sides[i]))
			return path + strlen(sides[i]);
	return path ? path : "";
}

static gboolean
is_within(const char *path, const char *beginning)
{
	gsize n = strlen(beginning);

	return !strncmp(path, beginning, n) && (!path[n] || path[n] == '/');
}

static gboolean
is_about(const struct row *r, const struct said *s)
{
	if (!r->fitting)
		return TRUE;
	for (char **f = r->fitting; *f; f++)
		if (is_within(s->path, *f)
		    || (!strchr(*f, '/') && (plain_has(s->place, *f, s->year) || plain_has(s->sentence, *f, s->year))))
			return TRUE;
	return FALSE;
}

static gboolean
any_stands(char **alternative, const GArray *words, gint64 year)
{
	for (char **a = alternative; a && *a; a++)
		if (plain_has(words, *a, year))
			return TRUE;
	return FALSE;
}

static gboolean
is_met(const struct row *r, const struct said *s)
{
	if (!is_about(r, s) || any_stands(r->without, s->sentence, s->year) || any_stands(r->without, s->place, s->year))
		return FALSE;
	for (char ***g = r->group; *g; g++)
		if (!any_stands(*g, s->sentence, s->year))
			return FALSE;
	return TRUE;
}

static void
find_rule(const struct knowledge *k, const struct said *s, gboolean afloat, struct finding_told *told)
{
	for (guint i = 0; i < k->rows->len; i++) {
		const struct row *r = row_at(k, i);
		gint64 level = afloat && r->rule.raised != NONE ? r->rule.raised : r->rule.level;

		if ((told->rule && level >= told->level) || !is_met(r, s))
			continue;
		told->rule = &r->rule;
		told->level = level;
	}
}

/* As a rule of the catalogue names it: "finger-tight". */
static char *
alternative_of(const struct trade_word *w)
{
	return g_strdelimit(g_strdup(w->word), " ", '-');
}

/* Whether a longer term that stands in the sentence, too, holds this word: "finger tight" is not "tight". */
static gboolean
is_part_of_another(const struct knowledge *k, const char *word, const struct said *s)
{
	const struct trade_word *w = (const void *)k->known->data;
	gboolean found = FALSE;

	for (guint i = 0; i < k->known->len && !found && !strchr(word, '-'); i++) {
		g_autofree char *longer = strchr(w[i].word, ' ') ? alternative_of(&w[i]) : NULL;
		g_autoptr(GArray) within = longer && plain_has(s->sentence, longer, s->year) ? plain_words(w[i].word) : NULL;

		found = within && plain_has(within, word, s->year);
	}
	return found;
}

static void
find_words(const struct knowledge *k, const struct said *s, struct finding_told *told)
{
	const struct trade_word *w = (const void *)k->known->data;

	for (guint i = 0; i < k->known->len; i++) {
		g_autofree char *alternative = alternative_of(&w[i]);

		if (!plain_has(s->sentence, alternative, s->year) || is_part_of_another(k, alternative, s))
			continue;
		g_ptr_array_add(told->words, (gpointer)(guintptr)&w[i]);
		if (!told->rule && w[i].level != NONE && (told->level == NONE || w[i].level < told->level))
			told->level = w[i].level;
	}
}

void
knowledge_tell(const struct knowledge *k, const struct finding_ask *ask, struct finding_told *told)
{
	const char *path = without_side(ask->path);
	struct said s = { path, plain_words(ask->sentence), plain_words(path), 0 };
	guint grave = 1U << COST_SINKS | 1U << COST_BURNS | 1U << COST_HURTS;
	int year, month, day;

	day_to_ymd(ask->today, &year, &month, &day);
	s.year = year;
	*told = (struct finding_told){ NULL, g_ptr_array_new(), NONE };
	find_rule(k, &s, ask->afloat, told);
	find_words(k, &s, told);
	if (!told->rule && told->words->len && (ask->consequences & grave) && (told->level == NONE || told->level > LEVEL_MEND))
		told->level = LEVEL_MEND;
	g_array_unref(s.sentence);
	g_array_unref(s.place);
}

void
finding_told_clear(struct finding_told *told)
{
	g_clear_pointer(&told->words, g_ptr_array_unref);
}
