#include "logbook/removal_parse.h"

#include "base/err.h"
#include "base/text.h"
#include "logbook/removal_tokens.h"

#include <string.h>

typedef const char *const word_list[];

static word_list lengths = { "in", "inch", "inches", "mm", "cm", NULL };
static word_list measures = { "deg",    "degrees", "%",       "percent", "turn",  "turns", "thread", "threads", "click",
			      "clicks", "notch",   "notches", "tooth",   "teeth", "flat",  "flats",  NULL };
static word_list stances = { "proud", "deep",  "high",    "low", "out",  "recessed", "up", "down",
			     "above", "below", "forward", "aft", "back", "left",     NULL };

static void
take_text(char **field, char *text)
{
	g_free(*field);
	*field = text;
}

static gboolean
is_number(const char *text)
{
	return *text && strlen(text) <= 6 && !text[strspn(text, "0123456789")];
}

/* ---- tray, state ---- */

/* "2", "12", "a", "two": what a tray or a bag is told by. */
static gboolean
is_label(const struct tokens *t, int i)
{
	static word_list words = { "one",  "two",   "three", "four", "five",  "six",   "seven", "eight",  "nine", "ten",
				   "left", "right", "red",   "blue", "green", "white", "black", "yellow", NULL };

	return token_free(t, i)
	    && (is_number(t->at[i].low) || strlen(t->at[i].low) == 1 || token_is(t, i, words)
		|| (strlen(t->at[i].low) <= 3 && strpbrk(t->at[i].low, "0123456789")));
}

static void
take_tray(struct tokens *t, struct removal *r)
{
	static word_list alone = { "tray", "bag", NULL }, with = { "tray", "bag", "box", "tin", "jar", "cup", "tub", NULL };
	static word_list into = { "in", "into", "to", NULL };

	for (int i = 0; i < t->n; i++) {
		gboolean labelled = token_is(t, i, with) && is_label(t, i + 1);

		if (!labelled && !(token_is(t, i, alone) && i == t->n - 1))
			continue;
		r->tray = tokens_take(t, i, i + 1 + labelled);
		if (i > 0 && token_is(t, i - 1, into))
			t->at[i - 1].used = TRUE;
		return;
	}
}

static void
take_state(struct tokens *t, struct removal *r)
{
	static word_list renew = { "renew", "renewed", "replace", NULL }, new = { "new", NULL };
	static word_list missing = { "missing", "gone", "lost", NULL }, extra = { "leftover", "left-over", "extra", NULL };
	static word_list left = { "left", NULL }, over = { "over", NULL }, as = { "as", NULL }, found = { "found", NULL };
	static word_list reuse = { "reuse", "re-use", "reused", NULL };
	int last = t->n - 1;

	r->state = REMOVAL_REUSE;
	while (last >= 0 && t->at[last].used)
		last--;
	for (int i = 0; i < t->n; i++) {
		int words = token_is(t, i, left) && token_is(t, i + 1, over) ? 2 : 1;

		if (token_is(t, i, renew) || (i == last && token_is(t, i, new)))
			r->state = REMOVAL_RENEW;
		else if (token_is(t, i, missing))
			r->state = REMOVAL_MISSING;
		else if (words == 2 || token_is(t, i, extra))
			r->state = REMOVAL_EXTRA;
		else if (!token_is(t, i, reuse))
			continue;
		if (r->state == REMOVAL_MISSING && token_is(t, i + 1, as) && token_is(t, i + 2, found))
			words = 3;
		g_free(tokens_take(t, i, i + words));
		return;
	}
}

/* ---- count ---- */

static gint64
number_word(const char *low)
{
	static const char *const words[] = { "one",   "two",   "three", "four", "five",   "six",
					     "seven", "eight", "nine",  "ten",  "eleven", "twelve" };

	for (guint i = 0; i < G_N_ELEMENTS(words); i++)
		if (!strcmp(low, words[i]))
			return i + 1;
	return NONE;
}

/* "2x" and "x2". */
static gint64
times(const char *low)
{
	g_autofree char *digits = g_strdup(low[0] == 'x' ? low + 1 : low);
	gsize n = strlen(digits);

	if (low[0] != 'x') {
		if (!n || digits[n - 1] != 'x')
			return NONE;
		digits[n - 1] = '\0';
	}
	return is_number(digits) ? g_ascii_strtoll(digits, NULL, 10) : NONE;
}

static void
take_count(struct tokens *t, struct removal *r)
{
	static word_list by = { "x", NULL };
	int i = 0;

	while (i < t->n && t->at[i].used)
		i++;
	for (int k = i + 1; k + 1 < t->n; k++)
		if (token_free(t, k) && is_number(t->at[k].low) && tokens_counted_at(t, k + 1))
			i = k;
	if (token_free(t, i) && !token_is(t, i + 1, lengths) && !token_is(t, i + 1, measures)) {
		const char *low = t->at[i].low;

		r->count = is_number(low) ? g_ascii_strtoll(low, NULL, 10) : number_word(low);
		if (r->count != NONE)
			g_free(tokens_take(t, i, i + 1 + token_is(t, i + 1, by)));
	}
	for (i = 0; i < t->n && r->count == NONE; i++)
		if (token_free(t, i) && times(t->at[i].low) != NONE) {
			r->count = times(t->at[i].low);
			t->at[i].used = TRUE;
		}
}

/* ---- figures ---- */

/* 5/8, 1-1/16 */
static gboolean
is_fraction(const char *text)
{
	return g_regex_match_simple("^([0-9]{1,3}-)?[0-9]{1,3}/[0-9]{1,3}$", text, 0, 0);
}

static gboolean
is_decimal(const char *text)
{
	return g_regex_match_simple("^[0-9]{0,5}[.][0-9]{1,4}$", text, 0, 0);
}

static gboolean
is_thread(const char *text)
{
	return g_regex_match_simple(
		"^(m[0-9]{1,2}(x[0-9]{1,3}([.][0-9]+)?){0,2}|#[0-9]{1,2}(-[0-9]{2})?|[0-9]{1,2}/[0-9]{1,2}-[0-9]{1,2}"
		"|[0-9]{1,2}-(24|28|32|40))$",
		text, 0, 0);
}

struct figure_at {
	int end; /* the token behind it; 0: none stands there */
	gboolean found; /* it says how something stands */
	gboolean unit;
};

/* "x 30" behind the size of a bolt or a pin is its length: how many tokens. */
static int
length_at(const struct tokens *t, int i)
{
	static word_list by = { "x", NULL };

	if (!token_is(t, i, by) || !token_free(t, i + 1))
		return 0;
	return is_number(t->at[i + 1].low) || is_fraction(t->at[i + 1].low) || is_decimal(t->at[i + 1].low) ? 2 : 0;
}

/* A figure, its unit, and how it stands, from token i on. */
static struct figure_at
figure_at(const struct tokens *t, int i)
{
	struct figure_at f = { i, FALSE, FALSE };
	static word_list tools = { "socket", "wrench", "spanner", NULL };
	gboolean whole;

	if (!token_free(t, i))
		return (struct figure_at){ 0, FALSE, FALSE };
	if (is_thread(t->at[i].low))
		return (struct figure_at){ i + 1 + length_at(t, i + 1), FALSE, TRUE };
	whole = is_number(t->at[i].low);
	if (whole && token_free(t, i + 1) && is_fraction(t->at[i + 1].low))
		f.end++, whole = FALSE;
	else if (!whole && !is_fraction(t->at[i].low) && !is_decimal(t->at[i].low))
		return (struct figure_at){ 0, FALSE, FALSE };
	f.end++;
	f.end += length_at(t, f.end);
	f.found = token_is(t, f.end, measures);
	f.unit = f.found || token_is(t, f.end, lengths);
	f.end += f.unit;
	if (whole && !f.unit)
		return (struct figure_at){ 0, FALSE, FALSE };
	if (token_is(t, f.end, stances) && !token_is(t, f.end + 1, tools)) {
		f.found = TRUE;
		f.end++;
	}
	return f;
}

/* A fraction without a unit is one of an inch. */
static char *
figure_text(struct tokens *t, int i, const struct figure_at *f)
{
	int last = f->end - 1;
	g_autofree char *text = NULL;

	if (!f->unit && !f->found && is_fraction(t->at[last].low)) {
		text = tokens_take(t, i, f->end);
		return g_strconcat(text, " in", NULL);
	}
	if (!f->unit && f->found && is_fraction(t->at[last - 1].low)) {
		g_autofree char *stance = g_strdup(t->at[last].text);

		text = tokens_take(t, i, last);
		t->at[last].used = TRUE;
		return g_strdup_printf("%s in %s", text, stance);
	}
	return tokens_take(t, i, f->end);
}

static void
take_figures(struct tokens *t, struct removal *r)
{
	gboolean counted = r->count != NONE || tokens_kind(t) != NONE;

	for (int i = 0; i < t->n; i++) {
		struct figure_at f = figure_at(t, i);
		gboolean found = f.found || !counted;

		if (!f.end || (found ? r->as_found != NULL : r->size != NULL))
			continue;
		take_text(found ? &r->as_found : &r->size, figure_text(t, i, &f));
		i = f.end - 1;
	}
}

/* ---- how it was found ---- */

static void
take_oclock(struct tokens *t, struct removal *r)
{
	static word_list mark = { "o'clock", "oclock", "o-clock", NULL }, o = { "o", NULL }, clock = { "clock", NULL };

	for (int i = 0; i + 1 < t->n && !r->as_found; i++) {
		int words = token_is(t, i + 1, mark) ? 2 : token_is(t, i + 1, o) && token_is(t, i + 2, clock) ? 3 : 0;
		const char *hour = t->at[i].low;

		if (words && token_free(t, i) && g_regex_match_simple("^(1[0-2]|[1-9])(:[0-5][0-9])?$", hour, 0, 0)) {
			r->as_found = g_strdup_printf("%s o'clock", t->at[i].text);
			g_free(tokens_take(t, i, i + words));
		}
	}
}

static void
take_quoted(struct tokens *t, struct removal *r)
{
	for (int i = 0; i < t->n && !r->as_found; i++)
		if (t->at[i].quoted)
			r->as_found = tokens_take(t, i, i + 1);
}

/* "at", "found", "found at", "is", and all that follows up to what was understood already. */
static void
take_after_at(struct tokens *t, struct removal *r)
{
	static word_list begin = { "at", "found", "is", NULL }, more = { "at", NULL };

	for (int i = 1; i < t->n; i++) {
		int from = i + 1 + (token_is(t, i, begin) && token_is(t, i + 1, more)), to = from;

		if (!token_is(t, i, begin))
			continue;
		while (token_free(t, to))
			to++;
		if (to > from && !r->as_found)
			r->as_found = tokens_take(t, from, to);
		else if (from >= t->n || !t->at[from].used)
			continue;
		g_free(tokens_take(t, i, from));
		return;
	}
}

/* The words that end the line of a lever or a valve. */
static void
take_position(struct tokens *t, struct removal *r)
{
	static word_list positions = { "neutral", "forward", "reverse",  "ahead",    "astern", "open",      "shut",
				       "closed",  "on",      "off",      "up",       "down",   "full",      "half",
				       "fully",   "centred", "centered", "straight", "level",  "amidships", "in",
				       "out",     "empty",   "dry",      "aft",      NULL };
	int from = t->n, to;

	if (r->as_found || r->count != NONE || tokens_kind(t) != NONE || !tokens_setting(t))
		return;
	while (from > 0 && t->at[from - 1].used)
		from--;
	to = from;
	while (from > 1 && token_is(t, from - 1, positions))
		from--;
	if (from < to)
		r->as_found = tokens_take(t, from, to);
}

/* ---- orientation ---- */

static void
take_orientation(struct tokens *t, struct removal *r)
{
	static word_list adjectives = { "thick",   "thin",     "flat",    "open",   "closed",  "shiny",  "round",
					"rounded", "bevelled", "beveled", "cupped", "concave", "marked", "stamped",
					"printed", "long",     "short",   "sharp",  "painted", "sealed", NULL };
	static word_list nouns = { "side",  "end",     "face",  "lip",    "lips",  "head",    "heads",   "edge",
				   "bevel", "chamfer", "arrow", "arrows", "dot",   "dots",    "letters", "numbers",
				   "logo",  "ears",    "legs",  "upside", "marks", "opening", NULL };
	static word_list links = { "facing", "faces", "pointing", "points", "to", "towards", "toward", NULL };
	static word_list towards = { "to", "towards", "toward", NULL };
	static word_list directions = { "in",     "out",     "up",      "down",     "forward",   "fwd",     "front",
					"aft",    "back",    "rear",    "port",     "starboard", "inboard", "outboard",
					"inward", "inwards", "outward", "outwards", "left",      "right",   "top",
					"bottom", "inside",  "outside", "upwards",  "downwards", NULL };

	for (int i = 0; i < t->n && !r->orientation; i++) {
		int at = i, told = 0;

		while (token_is(t, at, adjectives))
			at++, told++;
		if (token_is(t, at, nouns))
			at++, told++;
		if (token_is(t, at, links))
			at++, told++;
		if (told && (token_is(t, at, directions) || (token_is(t, at - 1, towards) && at - 1 > i && token_free(t, at))))
			r->orientation = tokens_take(t, i, at + 1);
	}
}

static void
take_last_direction(struct tokens *t, struct removal *r)
{
	static word_list directions = { "up",      "down",      "forward", "fwd",      "aft",
					"upwards", "downwards", "inboard", "outboard", NULL };
	int last = t->n - 1;

	while (last > 0 && t->at[last].used)
		last--;
	if (!r->orientation && last > 0 && token_is(t, last, directions))
		r->orientation = tokens_take(t, last, last + 1);
}

static gint64
kind_of(const struct tokens *t, const struct removal *r)
{
	gint64 named = tokens_kind(t);

	if (named != NONE)
		return named;
	if (r->count != NONE && tokens_clamp(t))
		return REMOVAL_FASTENER;
	return r->count == NONE && r->as_found ? REMOVAL_SETTING : REMOVAL_PART;
}

/* A number that is left at the head of the name was to be a count. */
static gboolean
name_check(const char *what, GError **err)
{
	if (!what || !g_regex_match_simple("^[-+]?[0-9][0-9.,e+]*( |$)", what, 0, 0))
		return TRUE;
	return err_set(err, ERR_INPUT, "\"%.40s\": a count is one whole number from 1 to 999999, and a size has its unit", what);
}

gboolean
removal_parse(const char *line, struct removal *r, GError **err)
{
	struct tokens t;
	gboolean ok;

	if (!line || !g_utf8_validate(line, -1, NULL))
		return err_set(err, ERR_INPUT, "this is no UTF-8 text");
	ok = tokens_read(line, &t);
	if (!ok)
		err_set(err, ERR_INPUT, "a line of the list has %d words at most: put the rest into --remark", MOST_TOKENS);
	else if (!t.n)
		ok = err_set(err, ERR_INPUT, "what came off? \"6 bolts 5/8 tray 2\", \"trim angle 3/8 in proud\"");
	if (ok) {
		take_quoted(&t, r);
		take_tray(&t, r);
		take_state(&t, r);
		take_oclock(&t, r);
		take_count(&t, r);
		take_orientation(&t, r);
		take_after_at(&t, r);
		take_figures(&t, r);
		take_position(&t, r);
		take_last_direction(&t, r);
		r->kind = kind_of(&t, r);
		r->what = tokens_rest(&t);
		ok = name_check(r->what, err);
	}
	tokens_clear(&t);
	return ok;
}

char *
removal_words(const struct removal *r)
{
	GString *out = g_string_new(NULL);

	if (r->count != NONE)
		g_string_append_printf(out, "%" G_GINT64_FORMAT " ", r->count);
	g_string_append(out, r->what ? r->what : "");
	if (r->size)
		g_string_append_printf(out, r->what && strchr(r->what, ',') ? ", %s" : " %s", r->size);
	return g_string_free(out, FALSE);
}

char *
removal_understood(const struct removal *r)
{
	static const char *const states[] = { "goes back", "to be renewed", "missing", "left over" };
	GString *out = g_string_new(NULL);

	if (r->count != NONE)
		g_string_append_printf(out, "%" G_GINT64_FORMAT " ", r->count);
	g_string_append_printf(out, "%s; %s", r->what ? r->what : "", word_of(&words_removal_kind, r->kind));
	if (r->count == NONE && (r->kind == REMOVAL_RETAINER || r->kind == REMOVAL_PLUG))
		g_string_append(out, ", count not said");
	if (r->size)
		g_string_append_printf(out, ", size %s", r->size);
	if (r->as_found)
		g_string_append_printf(out, ", found %s", r->as_found);
	if (r->orientation)
		g_string_append_printf(out, ", %s", r->orientation);
	if (r->tray)
		g_string_append_printf(out, ", %s", r->tray);
	if (r->kind != REMOVAL_SETTING || r->state != REMOVAL_REUSE)
		g_string_append_printf(out, ", %s", states[r->state]);
	return g_string_free(out, FALSE);
}
