/* The sheet for the ramp: plain text for paper. */
#include "cli/season_text.h"

#include "base/date.h"
#include "base/text.h"
#include "logbook/caution.h"
#include "logbook/readings.h"

#include <string.h>

enum { BOX = SHEET_INDENT }; /* columns of "  12 [ ] " */

struct page {
	struct book *b;
	GString *out;
	int columns;
};

/* A paragraph, its first line after `first`, the others indented. */
static void
put(const struct page *p, int indent, const char *first, const char *text)
{
	g_autofree char *whole = g_strconcat(first, text, NULL), *safe = text_harmless(whole, TRUE);

	text_wrap(p->out, safe, p->columns, indent);
	g_string_append_c(p->out, '\n');
}

static void
rule(const struct page *p, char c)
{
	for (int i = 0; i < p->columns; i++)
		g_string_append_c(p->out, c);
	g_string_append_c(p->out, '\n');
}

/* "Date: ________", filled to the page's edge. */
static void
blank(const struct page *p, const char *label)
{
	int at = text_width(label) + 1;

	g_string_append_printf(p->out, "%s ", label);
	for (; at < p->columns; at++)
		g_string_append_c(p->out, '_');
	g_string_append_c(p->out, '\n');
}

static void
put_cautions(const struct page *p, const struct season_work *w)
{
	g_autofree char *words = season_cautions(w), *caution = caution_block(p->b, words);

	g_auto(GStrv) line = g_strsplit(caution ? g_strchomp(caution) : "", "\n", -1);

	if (!caution)
		return;
	for (int i = 0; line[i]; i++)
		put(p, 2 + (int)strspn(line[i], " "), "", line[i]);
	rule(p, '-');
}

/* Names of the parts to have at hand, each once. */
static void
put_parts(const struct page *p, const struct season_work *w)
{
	g_autoptr(GHashTable) seen = g_hash_table_new(g_str_hash, g_str_equal);

	for (guint i = 0; i < season_lines(w); i++) {
		const struct season_line *line = season_line(w, i);

		if (line->state == SEASON_DONE || !line->due->part || !g_hash_table_add(seen, (gpointer)(guintptr)line->due->part))
			continue;
		if (g_hash_table_size(seen) == 1)
			put(p, 0, "", "TO HAVE AT HAND");
		put(p, 6, "  [ ] ", line->due->part);
	}
}

/* "anode-left: ________ %", with the unit where one is known. */
static char *
reading_line(struct book *b, const char *what)
{
	const struct readings *all = book_readings(b, NULL);
	const struct condition_kind *kind = all ? readings_find(all, what) : NULL;
	gboolean unit = kind && *kind->unit;

	return g_strdup_printf("%*s%s: ________%s%s", BOX, "", what, unit ? " " : "", unit ? kind->unit : "");
}

/* A line to write a reading on, for each that a task's limits go by and that the page has not yet asked for here. */
static void
put_measured(const struct page *p, const struct due_line *d, GHashTable *seen)
{
	for (int k = 0; k < d->in.n_limits; k++) {
		const char *what = d->limit[k].kind == LIMIT_CONDITION ? d->limit[k].measured : NULL;

		if (what && g_hash_table_add(seen, (gpointer)(guintptr)what)) {
			g_autofree char *line = reading_line(p->b, what);

			put(p, BOX, "", line);
		}
	}
}

/* What is looked at may be read; what is measured is, by whichever task of the fitting goes by it. */
static void
put_readings(const struct page *p, const struct season_work *w, const struct due_line *d)
{
	g_autoptr(GHashTable) seen = g_hash_table_new(g_str_hash, g_str_equal);
	gboolean measure = d->verb == word_index(&words_verb, "measure");

	if (measure || d->verb == word_index(&words_verb, "inspect") || d->verb == word_index(&words_verb, "test"))
		put_measured(p, d, seen);
	for (int i = 0; measure && i < due_count(w->due); i++)
		if (due_at(w->due, i)->fitting_id == d->fitting_id)
			put_measured(p, due_at(w->due, i), seen);
	if (measure && !g_hash_table_size(seen))
		put(p, BOX, "", "         read: ________");
}

static void
put_line(const struct page *p, const struct season_work *w, const struct season_line *line, guint number)
{
	static const char *const box[] = { "[ ]", "[x]", "[-]" };
	const struct due_line *d = line->due;
	g_autofree char *first = g_strdup_printf("%4u %s ", number, box[line->state]);
	g_autofree char *title = g_strconcat(d->title, d->out.when == OPP_NO_RECORD ? " (no record of it)" : NULL, NULL);
	g_autofree char *proof = d->proof ? g_strdup_printf("%*sseen: %s", BOX, "", d->proof) : NULL;
	char day[16];

	put(p, BOX, first, title);
	if (line->state == SEASON_DONE) {
		g_string_append_printf(p->out, "%*sdone %s\n", BOX, "", day_words(line->when, day));
		return;
	}
	if (line->state == SEASON_PASSED) {
		g_autofree char *why = g_strdup_printf("%*spassed over %s: %s", BOX, "", day_words(line->when, day), line->words);

		put(p, BOX, "", why);
	}
	if (proof)
		put(p, BOX, "", proof);
	put_readings(p, w, d);
}

static void
put_section(const struct page *p, const struct season_line *line, const struct season_line *last)
{
	g_autofree char *heading = g_utf8_strup(line->heading, -1);

	if (!last || strcmp(last->section, line->section)) {
		g_string_append_c(p->out, '\n');
		put(p, 2, "", heading);
	} else if (!g_strcmp0(last->note, line->note)) {
		return;
	}
	if (line->note) {
		g_autofree char *note = g_strdup_printf("%s%s%s%s", line->note, line->source ? " (" : "",
							line->source ? line->source : "", line->source ? ")" : "");

		put(p, 2, "  ", note);
	}
}

static void
put_lines(const struct page *p, const struct season_work *w)
{
	g_autoptr(GHashTable) opened = g_hash_table_new(g_str_hash, g_str_equal);
	const struct season_line *last = NULL;

	for (guint i = 0; i < season_lines(w); i++) {
		const struct season_line *line = season_line(w, i);
		const char *off = line->due->off;

		put_section(p, line, last);
		last = line;
		if (off && line->state != SEASON_DONE && g_hash_table_add(opened, (gpointer)(guintptr)off)) {
			g_autofree char *first = due_access_words(w->due, line->at);

			put(p, BOX, "     [ ] ", first);
		}
		put_line(p, w, line, i + 1);
	}
}

char *
season_sheet(struct book *b, const struct boat *boat, const struct season_work *w, int columns)
{
	struct page p = { b, g_string_new(NULL), columns };
	g_autofree char *list = season_head(w), *head = g_strdup_printf("%s   %s", boat->name, list);

	put(&p, 2, "", head);
	g_string_append_c(p.out, '\n');
	blank(&p, "Date:");
	blank(&p, "Engine hours:");
	blank(&p, "Name:");
	rule(&p, '-');
	put_cautions(&p, w);
	put_parts(&p, w);
	put_lines(&p, w);
	if (!season_lines(w))
		put(&p, 2, "\n", "Nothing stands on this list.");
	g_string_append_c(p.out, '\n');
	rule(&p, '-');
	put(&p, 2, "", "Passed over, and why:");
	for (int i = 0; i < 3; i++)
		blank(&p, "  ");
	return g_string_free(p.out, FALSE);
}
