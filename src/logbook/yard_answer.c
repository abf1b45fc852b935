#include "logbook/yard_answer.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "base/text.h"
#include "exchange/csv_out.h"

#include <string.h>

static const struct {
	const char *words;
	enum yard_verdict verdict;
} table[] = {
	{ "done", SAYS_DONE }, { "carried out", SAYS_DONE }, { "completed", SAYS_DONE },
	{ "renewed", SAYS_RENEWED }, { "replaced", SAYS_RENEWED }, { "changed", SAYS_RENEWED }, { "new", SAYS_RENEWED },
	{ "fitted", SAYS_RENEWED },
	{ "good", SAYS_GOOD }, { "ok", SAYS_GOOD }, { "sound", SAYS_GOOD }, { "no fault found", SAYS_GOOD },
	{ "bad", SAYS_BAD }, { "worn", SAYS_BAD }, { "failed", SAYS_BAD }, { "not ok", SAYS_BAD },
	{ "topped up", SAYS_TOPPED_UP },
	{ "not done", SAYS_NOT_DONE }, { "left", SAYS_NOT_DONE }, { "declined", SAYS_NOT_DONE },
	{ "waiting for parts", SAYS_NOT_DONE }, { "quote", SAYS_NOT_DONE }, { "quoted", SAYS_NOT_DONE },
};

static const char *const columns[] = { "yard_result", "yard_hours", "yard_cost", "yard_notes", "yard_date", "yard_initials",
				       "yard_meter",  "currency" };

/* Between the word and what was seen; a dash with blanks around, too, in the three ways in which it is written. */
#define MARKS ":;,.(\n\r"
static const char *const dashes[] = { " - ", " \xe2\x80\x93 ", " \xe2\x80\x94 " };

void
yard_answer_clear(struct yard_answer *a)
{
	g_clear_pointer(&a->result, g_free);
	g_clear_pointer(&a->seen, g_free);
	g_clear_pointer(&a->notes, g_free);
	g_clear_pointer(&a->initials, g_free);
}

/* Without blanks around and a spreadsheet's guard; NULL for nothing. */
static char *
tidy(const char *cell)
{
	char *text = g_strstrip(g_strdup(cell ? guard_strip(cell) : ""));

	if (*text)
		return text;
	g_free(text);
	return NULL;
}

gboolean
yard_answered(const char *const cell[ANSWER_CELLS])
{
	for (int i = 0; i < ANSWER_CURRENCY; i++) {
		g_autofree char *text = tidy(cell[i]);

		if (text)
			return TRUE;
	}
	return FALSE;
}

static gboolean
bad_column(enum yard_cell c, GError **err)
{
	return err_prefix(err, "%s: ", columns[c]);
}

/* Bytes of the word before a mark; *behind: those before what was seen. */
static gsize
word_bytes(const char *result, gsize *behind)
{
	gsize n = strcspn(result, MARKS);

	*behind = n;
	for (guint i = 0; i < G_N_ELEMENTS(dashes); i++) {
		const char *dash = strstr(result, dashes[i]);

		if (!dash || (gsize)(dash - result) > n)
			continue;
		n = (gsize)(dash - result);
		*behind = n + strlen(dashes[i]);
	}
	*behind += strspn(result + *behind, MARKS " -");
	return n;
}

static gboolean
read_result(struct yard_answer *a, GError **err)
{
	gsize behind, n = word_bytes(a->result ? a->result : "", &behind);
	g_autofree char *word = g_strndup(a->result ? a->result : "", n), *shown = NULL;

	if (!a->result)
		return err_set(err, ERR_INPUT, "yard_result: empty, though the line is answered: done, renewed, good, bad, "
					       "topped up or not done");
	g_strdelimit(g_strchomp(word), "-_", ' ');
	for (guint i = 0; i < G_N_ELEMENTS(table); i++) {
		if (g_ascii_strcasecmp(table[i].words, word))
			continue;
		a->verdict = table[i].verdict;
		a->seen = tidy(a->result + behind);
		if (a->seen && a->result[n] == '(' && g_str_has_suffix(a->seen, ")"))
			a->seen[strlen(a->seen) - 1] = '\0';
		return TRUE;
	}
	shown = text_quoted(a->result);
	return err_set(err, ERR_INPUT,
		       "yard_result: %s is not known: done, renewed, good, bad, topped up or not done, and behind a ; what was "
		       "seen",
		       shown);
}

/* Three letters of ASCII: three bytes would take a sign that is one character, too. */
static gboolean
is_currency(const char *said)
{
	return strlen(said) == 3 && g_ascii_isalpha(said[0]) && g_ascii_isalpha(said[1]) && g_ascii_isalpha(said[2]);
}

static gboolean
read_cost(struct yard_answer *a, const char *cost, const char *said, GError **err)
{
	if (!cost)
		return TRUE;
	if (!money_parse(cost, &a->cost, a->currency, err))
		return bad_column(ANSWER_COST, err);
	if (a->cost < 0)
		return err_set(err, ERR_INPUT, "yard_cost: \"%.20s\" is less than nothing; money back goes into yard_notes", cost);
	if (!said)
		return TRUE;
	if (!is_currency(said)) {
		g_autofree char *shown = text_quoted(said);

		return err_set(err, ERR_INPUT, "currency: three letters, as USD, not %s", shown);
	}
	if (*a->currency && g_ascii_strcasecmp(a->currency, said))
		return err_set(err, ERR_INPUT, "yard_cost: in %s, and the sheet is in %s", a->currency, said);
	if (!*a->currency)
		for (int i = 0; i < 3; i++)
			a->currency[i] = g_ascii_toupper(said[i]);
	return TRUE;
}

gboolean
yard_answer_read(const char *const cell[ANSWER_CELLS], gint64 today, struct yard_answer *a, GError **err)
{
	g_autofree char *hours = tidy(cell[ANSWER_HOURS]), *cost = tidy(cell[ANSWER_COST]), *date = tidy(cell[ANSWER_DATE]),
			*meter = tidy(cell[ANSWER_METER]), *currency = tidy(cell[ANSWER_CURRENCY]);
	char day[DAY_TEXT];

	*a = (struct yard_answer){ .hours = NONE, .cost = NONE, .meter = NONE, .date = NONE };
	a->result = tidy(cell[ANSWER_RESULT]);
	a->notes = tidy(cell[ANSWER_NOTES]);
	a->initials = tidy(cell[ANSWER_INITIALS]);
	if (!read_result(a, err) || !read_cost(a, cost, currency, err))
		return FALSE;
	if (hours && !hours_parse(hours, &a->hours, err))
		return bad_column(ANSWER_HOURS, err);
	if (meter && !hours_parse(meter, &a->meter, err))
		return bad_column(ANSWER_METER, err);
	/* "yesterday" was so on the day on which it was written, and nobody knows that. */
	if (date && !day_parse(date, NONE, &a->date, err))
		return bad_column(ANSWER_DATE, err);
	if (a->date != NONE && a->date > today)
		return err_set(err, ERR_INPUT, "yard_date: %s lies ahead of today", day_iso(a->date, day));
	return TRUE;
}

const char *
yard_verdict_words(enum yard_verdict v)
{
	static const char *const words[] = { "done", "renewed", "good", "bad", "topped up", "not done" };

	return words[v];
}

char *
yard_answer_digest(const struct yard_answer *a)
{
	char hours[HOURS_TEXT], cost[MONEY_TEXT], day[DAY_TEXT];
	const char *said[] = { yard_verdict_words(a->verdict), a->seen, hours_exact(a->hours, hours), money_exact(a->cost, cost),
			       a->currency, a->notes, a->date == NONE ? "" : day_iso(a->date, day), a->initials };
	g_autoptr(GString) all = g_string_new(NULL);

	for (guint i = 0; i < G_N_ELEMENTS(said); i++)
		g_string_append_printf(all, "%s\x1f", said[i] ? said[i] : "");
	if (a->meter != NONE)
		g_string_append_printf(all, "%s\x1f", hours_exact(a->meter, hours));
	return g_compute_checksum_for_string(G_CHECKSUM_SHA256, all->str, (gssize)all->len);
}

char *
yard_answer_words(const struct yard_answer *a, unsigned with)
{
	GString *out = g_string_new(a->result);
	char hours[HOURS_TEXT], money[MONEY_TEXT];

	if (a->hours != NONE)
		g_string_append_printf(out, "; %s h", hours_words(a->hours, hours));
	if (with & WITH_METER && a->meter != NONE)
		g_string_append_printf(out, "; meter %s h", hours_exact(a->meter, hours));
	if (with & WITH_COST && a->cost != NONE)
		g_string_append_printf(out, "; %s%s%s", money_exact(a->cost, money), *a->currency ? " " : "", a->currency);
	if (a->notes)
		g_string_append_printf(out, "; %s", a->notes);
	return g_string_free(out, FALSE);
}
