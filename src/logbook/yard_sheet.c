/* The yard sheet on paper: what is to be done, and where the yard writes what it did. */
#include "logbook/yard_inside.h"

#include "base/date.h"
#include "base/text.h"
#include "logbook/caution.h"

#include <string.h>

enum { COLUMNS = 80, INDENT = 9 }; /* INDENT: of "[ ]  12  " */

static void
put(GString *out, int indent, const char *text)
{
	g_autofree char *safe = text_harmless(text, TRUE);

	text_wrap(out, safe, COLUMNS, indent);
	g_string_append_c(out, '\n');
}

static void
rule(GString *out)
{
	for (int i = 0; i < COLUMNS; i++)
		g_string_append_c(out, '-');
	g_string_append_c(out, '\n');
}

/* "listed 26 Nov 2026", and of another day than that: ", as things will stand on 15 Apr 2027"; the caller's. */
static char *
listed_words(const struct yard_list *y)
{
	gint64 at = due_year(y->due)->at, written = y->sheet.date;
	char day[16], then[16];

	if (at == written)
		return g_strdup_printf("listed %s", day_words(written, day));
	return g_strdup_printf("listed %s, as things %s on %s", day_words(written, day), at > written ? "will stand" : "stood",
			       day_words(at, then));
}

static void
put_head(const struct yard_list *y, struct paper *p)
{
	g_autoptr(GString) out = g_string_new(NULL);
	g_autofree char *first = NULL, *second = NULL, *listed = listed_words(y);

	first = g_strdup_printf("%s%sWork for the yard, %s", y->form->without_names ? "" : y->boat->name,
				y->form->without_names ? "" : "   ", listed);
	second = g_strdup_printf("Engine hours: %s (%s). In season: %s, %s water.", y->engine_hours ? y->engine_hours : "unknown",
				 y->basis, word_of(&words_stand, y->boat->berth), word_of(&words_water, y->boat->water));
	put(out, 2, first);
	put(out, 2, second);
	put(out, 2, "DNL: do not launch before it is done. FTS: fix it this season. WATCH: look at it. Nothing is authorised: "
		    "quote each line first.");
	rule(out);
	paper_add(p, out->str);
}

/* Each word once, of all lines. */
static char *
all_cautions(const struct yard_list *y)
{
	g_autoptr(GHashTable) seen = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
	GString *all = g_string_new(NULL);

	for (guint i = 0; i < y->items->len; i++) {
		const char *words = yard_item(y, i)->cautions;
		g_auto(GStrv) word = g_strsplit(words ? words : "", " ", -1);

		for (int k = 0; word[k]; k++)
			if (*word[k] && g_hash_table_add(seen, g_strdup(word[k])))
				g_string_append_printf(all, "%s%s", all->len ? " " : "", word[k]);
	}
	return g_string_free(all, FALSE);
}

static void
put_cautions(const struct yard_list *y, struct paper *p)
{
	g_autofree char *words = all_cautions(y), *block = *words ? caution_block(y->b, words) : NULL;
	g_auto(GStrv) line = g_strsplit(block ? g_strchomp(block) : "", "\n", -1);
	g_autoptr(GString) out = g_string_new("");

	if (!block)
		return;
	for (int i = 0; line[i]; i++)
		put(out, 2 + (int)strspn(line[i], " "), line[i]);
	rule(out);
	paper_add(p, out->str);
}

/* What was typed may end its sentence itself. */
static void
end_sentence(GString *out)
{
	if (out->len && !strchr(".!?", out->str[out->len - 1]))
		g_string_append_c(out, '.');
}

/* A sentence of a cell: "Parts: bellows and two clamps."; nothing for an empty one. */
static void
tell(GString *out, const char *before, const char *text, const char *after)
{
	if (!text || !*text)
		return;
	g_string_append_printf(out, " %s%s%s", before, text, after);
	end_sentence(out);
}

static void
tell_last(GString *out, char *const *cell)
{
	g_autofree char *by = g_strdup_printf(" (%s)", cell[YARD_SOURCE] ? cell[YARD_SOURCE] : "unknown");

	if (cell[YARD_LAST_DONE_DATE])
		tell(out, "Last done: ", cell[YARD_LAST_DONE_DATE], by);
	else if (cell[YARD_METHOD] == NULL && cell[YARD_DATE])
		tell(out, "Found: ", cell[YARD_DATE], "");
	if (cell[YARD_READING]) {
		g_autofree char *read = g_strdup_printf("%s %s%s%s on %s", cell[YARD_METHOD], cell[YARD_READING],
							cell[YARD_UNIT] ? " " : "", cell[YARD_UNIT] ? cell[YARD_UNIT] : "",
							cell[YARD_DATE]);

		tell(out, "Read: ", read, "");
	}
}

/* What the yard fills in: a box of the line, and blanks of one width under each other. */
static void
put_answer(GString *out)
{
	static const char blank[] = "______________________________";

	g_string_append_printf(out, "%*sresult %.30s hours %.7s cost %.12s\n", INDENT, "", blank, blank, blank);
	g_string_append_printf(out, "%*snotes  %.19s meter %.7s date %.7s by %.7s\n", INDENT, "", blank, blank, blank, blank);
}

/* What is to be done; what must be open for it stands at the line that it depends on. */
static const char *
description(const struct yard_list *y, const struct yard_item *item)
{
	char *const *cell = item->cells.cell;

	return item->due >= 0 && cell[YARD_DEPENDS_ON_LINE] ? due_at(y->due, item->due)->title : cell[YARD_DESCRIPTION];
}

static void
put_item(const struct yard_list *y, const struct yard_item *item, struct paper *p)
{
	char *const *cell = item->cells.cell;
	g_autoptr(GString) out = g_string_new(NULL), what = g_string_new(description(y, item));
	g_autofree char *head = g_strdup_printf("[ ] %3d  %-5s %s: %s, by %s%s%s", (int)item->line.no, cell[YARD_SEVERITY],
						cell[YARD_ACTION], cell[YARD_COMPONENT_PATH], cell[YARD_NEEDED_BY],
						cell[YARD_DEPENDS_ON_LINE] ? ", after line " : "",
						cell[YARD_DEPENDS_ON_LINE] ? cell[YARD_DEPENDS_ON_LINE] : "");
	g_autofree char *indented = NULL;

	end_sentence(what);
	tell(what, "Parts: ", cell[YARD_PART_DESC], "");
	tell(what, "To be proved: ", cell[YARD_VERIFICATION_WANTED], "");
	tell_last(what, cell);
	tell(what, "Photos: ", cell[YARD_PHOTO_FILE], "");
	indented = g_strdup_printf("%*s%s", INDENT, "", what->str);
	put(out, INDENT, head);
	put(out, INDENT, indented);
	put_answer(out);
	paper_add(p, out->str);
}

struct paper *
yard_paper(const struct yard_list *y, enum paper_size size)
{
	g_autofree char *title = y->form->without_names ? g_strdup("Work for the yard")
							: g_strdup_printf("%s: work for the yard", y->boat->name);
	g_autofree char *safe = text_harmless(title, FALSE);
	struct paper *p = paper_new(size, COLUMNS, safe);
	gint64 whose = NONE;

	put_head(y, p);
	put_cautions(y, p);
	for (guint i = 0; i < y->items->len; i++) {
		const struct yard_item *item = yard_item(y, i);

		if (item->line.whose != whose && y->form->for_yard && y->form->for_owner)
			paper_add(p, item->line.whose == LINE_OWNER ? "\nTHE OWNER DOES" : "THE YARD DOES");
		whose = item->line.whose;
		put_item(y, item, p);
	}
	paper_end(p);
	return p;
}
