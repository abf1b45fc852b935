#include "logbook/figure.h"

#include "base/err.h"
#include "base/text.h"
#include "logbook/due_list.h"
#include "logbook/inside.h"

#include <math.h>
#include <string.h>

#define FT_LB 1.3558179483314004 /* N m: for the bounds below, which are said in ft-lb */
#define ROUNDING .01 /* of a figure printed in both systems: 60 ft-lb and 81 N·m are one */

const char *const figure_names[] = { "torque",	  "pressure", "vacuum",	     "oil-quantity", "oil-type", "quantity",	"clearance",
				     "dimension", "gap",      "temperature", "voltage",	     "speed",	 "weight", NULL };

enum dimension
figure_dimension(const char *what)
{
	static const struct {
		const char *what;
		enum dimension dimension;
	} known[] = {
		{ "torque", DIMENSION_TORQUE },	      { "pressure", DIMENSION_PRESSURE },
		{ "vacuum", DIMENSION_PRESSURE },     { "oil-quantity", DIMENSION_VOLUME },
		{ "quantity", DIMENSION_VOLUME },     { "clearance", DIMENSION_LENGTH },
		{ "dimension", DIMENSION_LENGTH },    { "gap", DIMENSION_LENGTH },
		{ "temperature", DIMENSION_TEMPERATURE }, { "voltage", DIMENSION_VOLTAGE },
		{ "speed", DIMENSION_TURNS },	      { "weight", DIMENSION_MASS },
	};

	for (guint i = 0; i < G_N_ELEMENTS(known); i++)
		if (!strcmp(known[i].what, what))
			return known[i].dimension;
	return DIMENSION_COUNT;
}

/* FALSE only for what has to be a quantity and is none. */
static gboolean
read_quantity(const struct figure *f, struct quantity *q, GError **err)
{
	enum dimension d = figure_dimension(f->what);

	q->unit = NULL;
	return quantity_parse(f->as_read, d, q, d == DIMENSION_COUNT ? NULL : err) || d == DIMENSION_COUNT;
}

gboolean
figure_check(struct figure *f, GError **err)
{
	struct quantity q;

	if (!read_quantity(f, &q, err))
		return err_prefix(err, "%s: ", f->what);
	f->value = q.unit && q.low == q.high ? q.low : (double)NAN;
	g_free(f->unit);
	f->unit = q.unit ? g_strdup(dimension_unit(q.dimension)) : NULL;
	return TRUE;
}

/* General knowledge, from memory: what a figure of one maker's says wins. */
static gboolean
torque_is_likely(const struct figure *f, const struct fitting *on, const struct quantity *q, GError **err)
{
	gboolean in_lb = !strcmp(q->unit->name, "in-lb"), propeller = strstr(on->path, "propeller") != NULL;
	g_autofree char *shown = figure_words(f);

	if (propeller && q->high < 6 * FT_LB)
		return err_set(err, ERR_DOUBT,
			       "%s is little for a propeller's nut, which takes about 10 to 120 ft-lb (memory, not checked): is it "
			       "%s in the manual?", shown, in_lb ? "ft-lb" : "more");
	if (in_lb && q->high > 25 * FT_LB)
		return err_set(err, ERR_DOUBT,
			       "%s: manuals write in-lb up to about 15 ft-lb (memory, not checked); ft-lb would be twelve times as "
			       "much.", shown);
	if (!strcmp(q->unit->name, "ft-lb") && q->low < 3 * FT_LB)
		return err_set(err, ERR_DOUBT,
			       "%s: as little as that is written in in-lb, a twelfth of ft-lb (memory, not checked).", shown);
	if (q->high > 500 * FT_LB)
		return err_set(err, ERR_DOUBT, "%s is more than any nut of a small craft takes (memory, not checked).", shown);
	return TRUE;
}

static gboolean
question(const struct figure *f, const struct fitting *on, GError **err)
{
	const char *near = text_nearest(f->what, figure_names, (int)G_N_ELEMENTS(figure_names) - 1);
	g_autofree char *shown = text_quoted(f->what);
	struct quantity q;

	if (!g_strv_contains(figure_names, f->what) && near)
		return err_set(err, ERR_DOUBT, "%s: is \"%s\" meant?", shown, near);
	if (figure_dimension(f->what) != DIMENSION_TORQUE || !read_quantity(f, &q, NULL))
		return TRUE;
	return torque_is_likely(f, on, &q, err);
}

static gboolean
same_name(const struct figure *a, const struct figure *b)
{
	return a->fitting == b->fitting && !strcmp(a->what, b->what);
}

gint64
book_figure_key(struct book *b, const struct figure *f)
{
	g_autoptr(GArray) all = book_records(b, RECORD_FIGURE, f->boat, NULL);
	const struct figure *k = all ? (const void *)all->data : NULL;

	for (guint i = 0; k && i < all->len; i++)
		if (same_name(&k[i], f) && text_same_words(k[i].source, f->source))
			return k[i].id;
	return NONE;
}

static gboolean
differ(const struct figure *a, const struct figure *b)
{
	struct quantity p, q;
	double rounding;

	if (!read_quantity(a, &p, NULL) || !read_quantity(b, &q, NULL) || !p.unit || !q.unit || p.dimension != q.dimension)
		return !text_same_words(a->as_read, b->as_read);
	rounding = ROUNDING * fmax(fabs(p.high), fabs(q.high));
	return p.low > q.high + rounding || q.low > p.high + rounding;
}

const struct figure *
figure_against(const GArray *all, const struct figure *f)
{
	const struct figure *k = (const void *)all->data;

	for (guint i = 0; i < all->len; i++)
		if (k[i].id != f->id && same_name(&k[i], f) && differ(&k[i], f))
			return &k[i];
	return NULL;
}

gboolean
book_set_figure(struct book *b, struct figure *f, gboolean sure, GError **err)
{
	struct fitting on;
	gboolean ok;

	if (!f->source || !*f->source)
		return err_set(err, ERR_INPUT, "which manual, which page? --source \"manual p. 41\"");
	if (!figure_check(f, err))
		return FALSE;
	record_init(RECORD_FITTING, &on);
	ok = row_get(b->db, RECORD_FITTING, f->fitting, &on, err) && (sure || question(f, &on, err));
	f->id = ok ? book_figure_key(b, f) : NONE;
	ok = ok && book_begin(b, err)
	  && book_end(b, book_put(b, RECORD_FIGURE, f, err), err, "%s of %s: %s (%s)", f->what, on.path, f->as_read, f->source);
	record_clear(RECORD_FITTING, &on);
	return ok;
}

/* The one that is meant.  What it returns is of all. */
static const struct figure *
to_drop(const GArray *all, const struct fitting *on, const char *what, const char *source, GError **err)
{
	const struct figure *f = (const void *)all->data, *found = NULL;

	for (guint i = 0; i < all->len; i++) {
		if (f[i].fitting != on->id || strcmp(f[i].what, what) || (source && !text_same_words(f[i].source, source)))
			continue;
		if (found) {
			err_set(err, ERR_INPUT, "%s of %s stands in \"%s\" and in \"%s\": --source says which", what, on->path,
				found->source, f[i].source);
			return NULL;
		}
		found = &f[i];
	}
	if (!found)
		err_set(err, ERR_NOT_FOUND, "%s has no figure \"%s\"%s%s: splitpin figure lists them", on->path, what,
			source ? " from " : "", source ? source : "");
	return found;
}

gboolean
book_drop_figure(struct book *b, const struct fitting *on, const char *what, const char *source, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_FIGURE, on->boat, err);
	const struct figure *f = all ? to_drop(all, on, what, source, err) : NULL;

	return f && book_begin(b, err)
	    && book_end(b, row_drop(b->db, RECORD_FIGURE, f->id, err), err, "%s of %s taken out (%s)", what, on->path, f->source);
}

char *
figure_words(const struct figure *f)
{
	return quantity_both(f->as_read, figure_dimension(f->what));
}

/* "manual p. 41: torque 60 ft-lb (81 N·m); ...", NULL without any. */
static char *
figures_of(const GArray *all, gint64 fitting)
{
	const struct figure *f = (const void *)all->data, *other = NULL;
	GString *text = g_string_new(NULL);

	for (guint i = 0; i < all->len; i++) {
		g_autofree char *words = f[i].fitting == fitting ? figure_words(&f[i]) : NULL;

		if (!words)
			continue;
		g_string_append_printf(text, "%s%s: %s %s", text->len ? "; " : "", f[i].source, f[i].what, words);
		if (!other)
			other = figure_against(all, &f[i]);
	}
	if (other)
		g_string_append_printf(text, ". The sources differ on %s: the manual of this very design holds", other->what);
	return g_string_free(text, !text->len);
}

gboolean
due_read_figures(struct book *b, struct due_list *l, gint64 boat, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_FIGURE, boat, err);
	struct due_line *line = (void *)l->lines->data;

	for (guint i = 0; all && i < l->lines->len; i++) {
		g_autofree char *text = figures_of(all, line[i].fitting_id);

		line[i].figures = text ? g_string_chunk_insert(l->chunk, text) : NULL;
	}
	return all != NULL;
}
