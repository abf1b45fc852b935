#include "logbook/fluid.h"

#include "base/date.h"
#include "base/err.h"
#include "base/quantity.h"
#include "engine/types.h"
#include "logbook/inside.h"

#include <string.h>

#define FLUID "fluid: " /* how such a part's name begins; FLUIDS_OF_FITTING and others in queries.sql know it too */

/* What is left of the parts between ", " without the quantities. */
static char *
type_of(const char *text)
{
	g_autofree char *small = g_utf8_casefold(text, -1);
	g_auto(GStrv) piece = g_strsplit(small, ", ", -1);
	GString *type = g_string_new(NULL);
	struct quantity q;

	for (int i = 0; piece[i]; i++) {
		g_auto(GStrv) word = g_strsplit_set(g_strstrip(piece[i]), " \t\n", -1);

		if (quantity_parse(piece[i], DIMENSION_VOLUME, &q, NULL))
			continue;
		for (int k = 0; word[k]; k++)
			if (*word[k])
				g_string_append_printf(type, "%s%s", type->len ? " " : "", word[k]);
	}
	return g_string_free(type, FALSE);
}

gboolean
fluid_same_type(const char *a, const char *b)
{
	g_autofree char *x = type_of(a), *y = type_of(b);

	return !*x || !*y || !strcmp(x, y);
}

/* Whether all of it was changed; else it was topped up. */
static gboolean
is_change(const struct task *t, const struct service *s, gboolean *change, GError **err)
{
	gboolean replaces = t->verb == word_index(&words_verb, "change") || t->verb == word_index(&words_verb, "renew");

	if (t->mechanism != MECH_FLUID)
		return err_set(err, ERR_INPUT, "%s is no work on a fluid: nothing is filled in there", t->name);
	*change = replaces && service_restarts(t->rule, t->consequence, s->outcome);
	if (*change || s->outcome == OUTCOME_TOPPED_UP)
		return TRUE;
	return err_set(err, ERR_INPUT, "nothing was filled in where the outcome is %s: topped-up is meant?",
		       word_of(&words_outcome, s->outcome));
}

static gboolean
settle_before(struct book *b, struct part *before, struct part *now, gboolean change, GError **err)
{
	if (before->fitted != NONE && before->fitted > now->fitted) {
		now->removed = now->removed == NONE ? before->fitted : MIN(now->removed, before->fitted);
		return TRUE;
	}
	if (!change)
		return TRUE;
	before->removed = now->fitted;
	return book_put(b, RECORD_PART, before, err);
}

gboolean
fluid_fill(struct book *b, const struct task *t, const struct service_form *form, char **note, GError **err)
{
	g_autoptr(GArray) in = NULL;
	const struct part *other = NULL;
	struct part now, *p;
	gboolean change, ok = TRUE;
	char day[16];

	if (!is_change(t, &form->what, &change, err) || !(in = book_gather(b, RECORD_PART, SQL_FLUIDS_OF_FITTING, t->fitting, err)))
		return FALSE;
	record_init(RECORD_PART, &now);
	now.fitting = t->fitting;
	now.fitted = form->what.date;
	now.what = g_strconcat(FLUID, form->filled, NULL);
	p = (void *)in->data;
	for (guint i = 0; ok && i < in->len; i++) {
		if (!fluid_same_type(p[i].what + strlen(FLUID), form->filled) && p[i].fitted <= now.fitted)
			other = &p[i];
		ok = settle_before(b, &p[i], &now, change, err);
	}
	if (ok && other)
		*note = g_strdup_printf("last time it was %s (%s): do not mix types; drain fully", other->what + strlen(FLUID),
					other->fitted == NONE ? "day unknown" : day_words(other->fitted, day));
	ok = ok && book_put(b, RECORD_PART, &now, err);
	record_clear(RECORD_PART, &now);
	return ok;
}
