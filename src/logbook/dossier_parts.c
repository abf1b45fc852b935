/* What was done to each part of the boat, as one walks along her; and what of it is found wrong and open. */
#include "logbook/dossier_inside.h"

#include "base/date.h"
#include "logbook/finding.h"
#include "logbook/waiver.h"

#include <string.h>

static char *
finding_words(struct dossier *d, const struct finding *f)
{
	const struct fitting *at = dossier_fitting(d, f->fitting);
	g_autofree char *words = dossier_text(d, f->words), *allowed = dossier_text(d, f->allowed);
	g_autofree char *title = at ? dossier_text(d, at->title) : g_strdup("the boat");
	GString *out = g_string_new(NULL);
	char day[16], until[16];

	g_string_append_printf(out, "%s: %s, found on %s: %s", word_of(&words_level, f->level), title, day_words(f->date, day),
			       words);
	if (f->makes_due)
		g_string_append_printf(out, "; asks for %s", f->makes_due);
	if (f->until != NONE)
		g_string_append_printf(out, "; to be mended by %s", day_words(f->until, until));
	if (allowed)
		g_string_append_printf(out, "; until then: %s", allowed);
	return g_string_free(out, FALSE);
}

static void
say_waiver(struct dossier *d, const struct waiver *w)
{
	g_autofree char *what = book_waiver_words(d->b, w), *told = dossier_text(d, what);
	g_autofree char *who = names_person(d->names, w->who), *reason = dossier_text(d, w->reason);
	char day[16];

	dossier_say(d, 0, "Let pass until %s by %s: %s; because %s", day_words(w->until, day), who ? who : "?", told, reason);
}

static gboolean
is_mended(const GArray *findings, gint64 key)
{
	for (EACH(struct finding, f, findings))
		if (f->id == key)
			return f->mended != NONE;
	return FALSE;
}

static void
say_waivers(struct dossier *d, const GArray *waivers, const GArray *findings)
{
	for (EACH(struct waiver, w, waivers))
		if (!is_mended(findings, w->finding))
			say_waiver(d, w);
}

gboolean
dossier_findings(struct dossier *d, GError **err)
{
	g_autoptr(GArray) all = book_findings(d->b, d->boat->id, TRUE, err);
	g_autoptr(GArray) waivers = all ? book_waivers_on(d->b, d->boat->id, d->b->who.today, err) : NULL;
	int open = 0;

	if (!waivers)
		return FALSE;
	dossier_head(d, "Found wrong and open");
	dossier_prose(d, "hold: holds the launch; mend: to be mended this season; watch: to be looked at again.");
	for (EACH(struct finding, f, all)) {
		g_autofree char *words = f->mended == NONE ? finding_words(d, f) : NULL;

		open += words != NULL;
		if (words)
			dossier_say(d, 0, "%s", words);
	}
	if (!open)
		dossier_say(d, 0, "Nothing that was put on record as found is open.");
	dossier_say(d, 0, "Mended: %d; they stand with their parts.", (int)all->len - open);
	say_waivers(d, waivers, all);
	return TRUE;
}

/* Areas in their order, and within one the tree. */
static gint
by_area(gconstpointer x, gconstpointer y)
{
	const char *a = ((const struct fitting *)x)->path, *b = ((const struct fitting *)y)->path;
	int p, q;

	area_of_path(a, &p);
	area_of_path(b, &q);
	if (p != q)
		return p < q ? -1 : 1;
	return fitting_path_order(a, b);
}

/* Events of each fitting, in their order: &key -> GPtrArray. */
static GHashTable *
events_by_fitting(const struct dossier *d)
{
	GHashTable *all = g_hash_table_new_full(g_int64_hash, g_int64_equal, NULL, (GDestroyNotify)g_ptr_array_unref);

	for (EACH(struct fitting_event, e, d->events)) {
		GPtrArray *of = g_hash_table_lookup(all, &e->fitting);

		if (!dossier_wants(d, e->date))
			continue;
		if (!of)
			g_hash_table_insert(all, (gpointer)(guintptr)&e->fitting, of = g_ptr_array_new());
		g_ptr_array_add(of, (gpointer)(guintptr)e);
	}
	return all;
}

static void
say_events(struct dossier *d, const GPtrArray *events)
{
	for (guint i = 0; i < events->len; i++) {
		g_autofree char *words = fitting_event_words(events->pdata[i], &d->tell);

		dossier_say(d, 2, "%s", words);
	}
}

static void
say_fitting(struct dossier *d, const struct fitting *f, const GPtrArray *events)
{
	g_autofree char *title = dossier_text(d, f->title), *remark = dossier_remark(d, f->remark);

	dossier_title(d, "%s (%s)%s%s%s%s%s", title, f->path,
		    f->variant || f->variants ? "; design: " : "", f->variant ? f->variant : f->variants ? "nobody knows" : "",
		    f->retired == 1 ? "; not on this boat any more" : "", remark ? "; " : "", remark ? remark : "");
	say_events(d, events);
}

static void
say_nothing_of(struct dossier *d, const GPtrArray *silent)
{
	char day[16];
	g_autofree char *label = d->form->since == NONE ? g_strdup("Nothing is on record of: ")
							: g_strdup_printf("Nothing since %s of: ", day_words(d->form->since, day));

	dossier_list(d, 0, label, silent);
}

static void
say_no_parts(struct dossier *d)
{
	dossier_head(d, "Parts of the boat");
	dossier_say(d, 0, "None is on record.");
}

gboolean
dossier_parts(struct dossier *d, GError **err G_GNUC_UNUSED)
{
	g_autoptr(GHashTable) events = events_by_fitting(d);
	g_autoptr(GPtrArray) silent = g_ptr_array_new_with_free_func(g_free);
	const char *area = NULL;
	const gint64 none = NONE;
	int rank;

	g_array_sort(d->fittings, by_area);
	for (EACH(struct fitting, f, d->fittings)) {
		const char *next = area_of_path(f->path, &rank);
		const GPtrArray *of = g_hash_table_lookup(events, &f->id);

		if (!area || strcmp(area, next)) {
			g_autofree char *heading = g_strdup_printf("Part of the boat: %s", next);

			say_nothing_of(d, silent);
			g_ptr_array_set_size(silent, 0);
			dossier_head(d, heading);
		}
		area = next;
		if (of)
			say_fitting(d, f, of);
		else if (f->retired != 1)
			g_ptr_array_add(silent, dossier_text(d, f->title));
	}
	say_nothing_of(d, silent);
	if (!d->fittings->len)
		say_no_parts(d);
	if (g_hash_table_lookup(events, &none)) {
		dossier_head(d, "Of no single part");
		say_events(d, g_hash_table_lookup(events, &none));
	}
	return TRUE;
}
