/* What the templates say comes off, and which lines of the strip-down list say that it did.
 *
 * A line that was typed is taken for an offer when it is of the same kind and names the same thing, says nothing that the offer
 * does not say, has no other size, and can be no other offer; its noun alone is too little, without the size, the count or another
 * word.  So "6 nuts 5/8" are the mounting nuts where no other nuts are of 5/8.  In doubt an offer stays open: a tick too few costs
 * a look, one too many costs a cotter. */
#include "logbook/job_inside.h"

#include <string.h>

static struct job_offer *
offer_at(const struct job_sheet *s, guint i)
{
	return &((struct job_offer *)(void *)s->offers->data)[i];
}

static const struct removal *
removal_at(const struct job_sheet *s, guint i)
{
	return &((const struct removal *)(const void *)s->removals->data)[i];
}

void
job_add_offer(struct job_sheet *s, const struct template_line *l)
{
	struct job_offer o = { .n = (int)s->offers->len + 1, .kind = l->strip, .count = l->count, .line = NONE };

	for (guint i = 0; i < s->offers->len; i++)
		if (!strcmp(offer_at(s, i)->what, l->text))
			return;
	o.what = g_strdup(l->text);
	o.size = l->inch ? g_strdup_printf("%s in", l->inch) : l->metric ? g_strdup_printf("%s mm", l->metric) : NULL;
	o.metric = l->inch && l->metric ? g_strdup_printf("%s mm", l->metric) : NULL;
	g_array_append_val(s->offers, o);
}

/* ---- words ---- */

static gboolean
is_small(const char *word)
{
	static const char *const small[] = { "a",  "an", "and", "at",   "both", "each", "from", "in", "its",
					     "of", "on", "or",  "old",  "new",  "the",  "to",   "with", NULL };

	return g_strv_contains(small, word);
}

/* "nuts" -> "nut" */
static void
singular(char *word)
{
	gsize n = strlen(word);

	if (n > 3 && word[n - 1] == 's' && word[n - 2] != 's')
		word[n - 1] = '\0';
}

/* The words that say something, in their order, folded and of one; ends with NULL. */
static char **
words_of(const char *text)
{
	g_autofree char *low = g_utf8_casefold(text, -1);
	char **word = g_strsplit_set(low, " ,.;()\t", -1);
	int n = 0;

	for (int i = 0; word[i]; i++) {
		singular(word[i]);
		if (!*word[i] || is_small(word[i]))
			g_free(word[i]);
		else
			word[n++] = word[i];
	}
	word[n] = NULL;
	return word;
}

/* An offer without "where there is one" and "count them"; the caller's. */
static char *
thing(const char *text)
{
	static const char *const beside[] = { ", where ", ", count ", ", loosened", ", drawn", ", both " };
	gsize n = strlen(text);

	for (guint i = 0; i < G_N_ELEMENTS(beside); i++) {
		const char *at = strstr(text, beside[i]);

		n = at ? MIN(n, (gsize)(at - text)) : n;
	}
	return g_strndup(text, n);
}

/* Retainers and plugs have many names: theirs are no more than their kind. */
static gboolean
is_kind_word(gint64 kind, const char *word)
{
	static const char *const retainers[] = { "cotter",   "pin",      "split",    "split-pin", "clip",       "circlip",
						 "r-clip",   "e-clip",   "e-ring",   "ring",      "snap",       "snap-ring",
						 "retainer", "tab",      "washer",   "roll-pin",  "tab-washer", "lock",
						 "wire",     "lockwire", "lock-wire", NULL };
	static const char *const plugs[] = { "plug", NULL };

	return (kind == REMOVAL_RETAINER && g_strv_contains(retainers, word))
	    || (kind == REMOVAL_PLUG && g_strv_contains(plugs, word));
}

/* Whether the words are among others; how many there are that tell one thing from the other, *n. */
static gboolean
are_within(char **words, gint64 kind, char **among, int *n)
{
	*n = 0;
	for (int i = 0; words[i]; i++) {
		if (is_kind_word(kind, words[i]))
			continue;
		if (!g_strv_contains((const char *const *)among, words[i]))
			return FALSE;
		++*n;
	}
	return TRUE;
}

/* What a phrase is about: "nut" of "nuts of the trim pins", of "mounting nuts", and of "bolts or nuts of the pump". */
static gboolean
is_about(const char *phrase, const char *noun)
{
	g_autofree char *low = g_utf8_casefold(phrase, -1);
	g_auto(GStrv) part = NULL;
	char *of = strstr(low, " of ");

	if (of)
		*of = '\0';
	part = g_strsplit(low, " or ", -1);
	for (int i = 0; part[i]; i++) {
		g_auto(GStrv) word = words_of(part[i]);
		guint n = g_strv_length(word);

		if (n && !strcmp(word[n - 1], noun))
			return TRUE;
	}
	return FALSE;
}

static gboolean
is_same_thing(const struct removal *r, const char *offered)
{
	g_autofree char *low = g_utf8_casefold(r->what, -1);
	g_auto(GStrv) word = NULL;
	char *of = strstr(low, " of ");
	guint n;

	if (of)
		*of = '\0';
	word = words_of(low);
	n = g_strv_length(word);
	return n && is_about(offered, word[n - 1]);
}

/* ---- lines and offers ---- */

enum fit { FIT_NOT, FIT_PERHAPS, FIT_WORDS, FIT_SIZE }; /* too little is said; it is; and it is of the same size */

static enum fit
fit_of(const struct removal *r, const struct job_offer *o)
{
	g_autofree char *offered = thing(o->what);
	g_auto(GStrv) said = words_of(r->what), named = words_of(offered);
	gboolean several = strchr(offered, ',') || strstr(offered, " and ");
	gboolean sized = r->size && (o->size || o->metric);
	gboolean same = sized && (!g_strcmp0(r->size, o->size) || !g_strcmp0(r->size, o->metric));
	gboolean counted = r->count != NONE && r->count > 1 && r->count == o->count;
	gboolean named_by_kind = r->kind == REMOVAL_RETAINER || r->kind == REMOVAL_PLUG;
	int n, all;

	if (r->kind != o->kind || (sized && !same) || !are_within(said, r->kind, named, &n))
		return FIT_NOT;
	/* Of several things in one offer all must be there. */
	if (several ? !are_within(named, NONE, said, &all) : !named_by_kind && !is_same_thing(r, offered))
		return FIT_NOT;
	if (!same && !counted && n < (named_by_kind ? 1 : 2) && !are_within(named, NONE, said, &all))
		return FIT_PERHAPS;
	return same ? FIT_SIZE : FIT_WORDS;
}

/* The only offer that a line can be; NULL: none, or several. */
static struct job_offer *
meant(const struct job_sheet *s, const struct removal *r)
{
	struct job_offer *hit[FIT_SIZE + 1] = { NULL };
	int n[FIT_SIZE + 1] = { 0 };

	for (guint i = 0; i < s->offers->len; i++) {
		enum fit fit = fit_of(r, offer_at(s, i));

		hit[fit] = offer_at(s, i);
		n[fit]++;
	}
	if (n[FIT_SIZE])
		return n[FIT_SIZE] == 1 ? hit[FIT_SIZE] : NULL;
	return n[FIT_WORDS] == 1 && !n[FIT_PERHAPS] ? hit[FIT_WORDS] : NULL;
}

void
job_take_offers(struct job_sheet *s, int sides)
{
	for (guint i = 0; i < s->offers->len; i++) {
		struct job_offer *o = offer_at(s, i);
		int n = 0;

		for (guint k = 0; k < s->removals->len; k++)
			if (!strcmp(removal_at(s, k)->what, o->what)) {
				o->line = removal_at(s, k)->no;
				n++;
			}
		o->taken = o->sure = n >= sides;
	}
	for (guint k = 0; k < s->removals->len; k++) {
		const struct removal *r = removal_at(s, k);
		struct job_offer *o = r->kind == REMOVAL_SETTING || r->state == REMOVAL_EXTRA ? NULL : meant(s, r);

		if (!o || o->line != NONE)
			continue;
		o->line = r->no;
		o->taken = sides == 1;
	}
}
