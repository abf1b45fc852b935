#include "logbook/figure.h"

#include "base/err.h"
#include "base/text.h"
#include "logbook/due_list.h"
#include "logbook/inside.h"

#include <math.h>
#include <string.h>

#define FT_LB 1.3558179483314004 /* N m: for the bounds below, which are said in ft-lb */

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

gint64
book_figure_key(struct book *b, gint64 boat, gint64 fitting, const char *what)
{
	g_autoptr(GArray) all = book_records(b, RECORD_FIGURE, boat, NULL);
	const struct figure *f = all ? (const void *)all->data : NULL;

	for (guint i = 0; f && i < all->len; i++)
		if (f[i].fitting == fitting && !strcmp(f[i].what, what))
			return f[i].id;
	return NONE;
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
	f->id = ok ? book_figure_key(b, f->boat, f->fitting, f->what) : NONE;
	ok = ok && book_begin(b, err)
	  && book_end(b, book_put(b, RECORD_FIGURE, f, err), err, "%s of %s: %s (%s)", f->what, on.path, f->as_read, f->source);
	record_clear(RECORD_FITTING, &on);
	return ok;
}

gboolean
book_drop_figure(struct book *b, const struct fitting *on, const char *what, GError **err)
{
	gint64 key = book_figure_key(b, on->boat, on->id, what);

	if (key == NONE)
		return err_set(err, ERR_NOT_FOUND, "%s has no figure \"%s\": splitpin figure lists them", on->path, what);
	return book_begin(b, err)
	    && book_end(b, row_drop(b->db, RECORD_FIGURE, key, err), err, "%s of %s taken out", what, on->path);
}

char *
figure_words(const struct figure *f)
{
	return quantity_both(f->as_read, figure_dimension(f->what));
}

gboolean
due_read_figures(struct book *b, struct due_list *l, gint64 boat, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_FIGURE, boat, err);
	const struct figure *f = all ? (const void *)all->data : NULL;
	struct due_line *line = (void *)l->lines->data;

	for (guint i = 0; f && i < l->lines->len; i++) {
		g_autoptr(GString) text = g_string_new(NULL);

		for (guint k = 0; k < all->len; k++) {
			g_autofree char *words = f[k].fitting == line[i].fitting_id ? figure_words(&f[k]) : NULL;

			if (words)
				g_string_append_printf(text, "%s%s: %s %s", text->len ? "; " : "", f[k].source, f[k].what, words);
		}
		line[i].figures = text->len ? g_string_chunk_insert(l->chunk, text->str) : NULL;
	}
	return all != NULL;
}
