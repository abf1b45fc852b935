#include "logbook/measure.h"

#include "base/date.h"
#include "base/err.h"
#include "base/quantity.h"
#include "base/text.h"
#include "logbook/due.h"
#include "logbook/inside.h"
#include "logbook/units.h"

#include <math.h>
#include <string.h>

static GPtrArray *
kinds_with(const struct readings *r, const char *text)
{
	GPtrArray *all = g_ptr_array_new();
	g_autofree char *low = g_ascii_strdown(text, -1);

	for (guint i = 0; i < readings_count(r); i++)
		if (strstr(readings_nth(r, i)->what, low))
			g_ptr_array_add(all, (gpointer)(guintptr)readings_nth(r, i)->what);
	return all;
}

static gboolean
no_kind(const struct readings *r, const char *text, const GPtrArray *near, GError **err)
{
	g_autoptr(GPtrArray) every = kinds_with(r, "");
	g_autofree char *shown = text_quoted(text);
	g_autoptr(GString) names = g_string_new(NULL);
	const char *nearest = text_nearest(text, (const char *const *)every->pdata, (int)every->len);

	for (guint i = 0; i < near->len; i++)
		g_string_append_printf(names, "%s%s", i ? ", " : "", (const char *)near->pdata[i]);
	if (near->len > 1)
		return err_set(err, ERR_INPUT, "%s can be %s: name one", shown, names->str);
	if (nearest)
		return err_set(err, ERR_INPUT, "%s is no measured value: is \"%s\" meant? splitpin measure --kinds lists them",
			       shown, nearest);
	return err_set(err, ERR_INPUT, "%s is no measured value: splitpin measure --kinds lists them", shown);
}

const struct condition_kind *
measure_kind(struct book *b, const char *text, GError **err)
{
	const struct readings *r = book_readings(b, err);
	const struct condition_kind *kind = r ? readings_find(r, text) : NULL;
	g_autoptr(GPtrArray) near = r && !kind && *text ? kinds_with(r, text) : g_ptr_array_new();

	if (!kind && near->len == 1)
		kind = readings_find(r, near->pdata[0]);
	if (r && !kind)
		no_kind(r, text, near, err);
	return kind;
}

gboolean
measure_known(struct book *b, const char *what, GError **err)
{
	const struct readings *r = book_readings(b, err);
	g_autoptr(GPtrArray) none = g_ptr_array_new();

	return r && (readings_find(r, what) || no_kind(r, what, none, err));
}

/* The owner's bounds of one side.  One to stop at that comes before the program's to watch puts that out of force. */
static void
take_over(struct bands *bands, gboolean above, double watch, double stop)
{
	struct edge *w = &bands->watch[above], *s = &bands->stop[above];

	if (isnan(watch) && isnan(stop))
		return;
	if (bands->worse == (above ? WORSE_LESS : WORSE_MORE))
		bands->worse = WORSE_BOTH;
	if (!isnan(stop))
		*s = (struct edge){ stop, FALSE, FALSE };
	if (!isnan(watch))
		*w = (struct edge){ watch, FALSE, FALSE };
	else if (above ? w->value > s->value : w->value < s->value)
		*w = (struct edge){ NAN, FALSE, FALSE };
}

struct measure_limits
measure_limits_of(const struct condition_kind *kind, const struct bound *own, gint64 units)
{
	struct measure_limits l = { kind, kind->bands, word_index(&words_standing, kind->standing), kind->source, FALSE,
				    units };

	if (!own)
		return l;
	take_over(&l.bands, FALSE, own->watch_below, own->stop_below);
	take_over(&l.bands, TRUE, own->watch_above, own->stop_above);
	l.standing = own->standing;
	l.source = own->source;
	l.own = TRUE;
	return l;
}

const struct bound *
measure_bound_on(const GArray *bounds, const char *what, gint64 fitting)
{
	const struct bound *o = (const void *)bounds->data, *everywhere = NULL;

	for (guint i = 0; i < bounds->len; i++) {
		if (strcmp(o[i].what, what))
			continue;
		if (fitting != NONE && o[i].fitting == fitting)
			return &o[i];
		if (o[i].fitting == NONE)
			everywhere = &o[i];
	}
	return everywhere;
}

/* A word stands for any salinity in its range. */
static double
salinity_of(const struct measurement *m)
{
	static const double of_word[WATER_COUNT] = { 0, 15, 35 };

	if (!isnan(m->psu))
		return m->psu;
	return m->water == NONE ? (double)NAN : of_word[m->water];
}

void
measure_judge(const struct measure_limits *l, const struct measurement *m, struct condition_out *j)
{
	struct condition_in in = { m->value, m->unit ? m->unit : l->kind->unit, salinity_of(m) };

	if (isnan(in.value) && measure_parse(l->kind, m->as_read, &in.value, NULL))
		in.unit = l->kind->unit;
	condition_judge(l->kind, &l->bands, &in, j);
}

static char *
amount_words(double value, const char *unit, gint64 units)
{
	char *both = units == NONE ? NULL : quantity_words(value, unit, (enum units)units);

	if (both)
		return both;
	if (!strcmp(unit, "grade"))
		return g_strdup_printf("grade %g", value);
	if (!strcmp(unit, "a"))
		return g_strdup_printf("%.6g years", value);
	if (!strcmp(unit, "C"))
		return g_strdup_printf("%.4g C (%.0f F)", value, value * 9 / 5 + 32);
	if (!strcmp(unit, "K"))
		return g_strdup_printf("%.4g C (%.0f F) apart", value, value * 9 / 5);
	return g_strdup_printf("%.6g%s%s", value, *unit ? " " : "", unit);
}

static char *
edge_words(const struct edge *e, gboolean above, const struct measure_limits *l)
{
	g_autofree char *amount = amount_words(e->value, l->kind->unit, l->units);

	if (e->at)
		return g_strdup_printf("at %s or %s", amount, above ? "above" : "below");
	return g_strdup_printf("%s %s", above ? "above" : "below", amount);
}

static char *
not_judged(const struct measure_limits *l, const struct condition_out *j)
{
	const struct condition_kind *kind = l->kind;
	g_autofree char *least = amount_words(kind->least, kind->unit, l->units),
			*most = amount_words(kind->most, kind->unit, l->units);

	switch (j->unjudged) {
	case UNJUDGED_UNIT:
		return g_strdup_printf("not judged: this is no value in %s", *kind->unit ? kind->unit : "a plain number");
	case UNJUDGED_RANGE:
		return g_strdup_printf("not judged: it lies outside %s to %s, which is all that can be read", least, most);
	case UNJUDGED_SIGN:
		return g_strdup("not judged: it has the wrong sign, as with the leads exchanged");
	case UNJUDGED_LIMITS:
		return g_strdup("not judged: no limit is known; type in the manual's, with where they stand");
	case UNJUDGED_WATER:
		return g_strdup("not judged: the limits hold in salt water only (30 PSU or more), and this was read in "
				"another or none is said; compare it with this boat's own earlier readings there");
	case UNJUDGED_NOT:
		break;
	}
	return g_strdup("not judged");
}

char *
measure_verdict(const struct measure_limits *l, const struct condition_out *j)
{
	g_autofree char *edge = NULL;

	if (j->verdict == VERDICT_NONE)
		return not_judged(l, j);
	if (j->verdict == VERDICT_GOOD)
		return g_strdup("good");
	edge = edge_words(&j->passed, j->passed.above, l);
	return g_strdup_printf("%s: %s", j->verdict == VERDICT_STOP ? "stop" : "worth watching", edge);
}

static void
add_bands(GString *out, const struct measure_limits *l, const struct edge *pair, const char *word)
{
	gboolean first = TRUE;

	for (int above = 0; above <= 1; above++) {
		g_autofree char *edge = isnan(pair[above].value) ? NULL : edge_words(&pair[above], above, l);

		if (!edge)
			continue;
		if (first)
			g_string_append_printf(out, "%s%s ", out->len ? ", " : "", word);
		g_string_append_printf(out, "%s%s", first ? "" : " or ", edge);
		first = FALSE;
	}
}

char *
measure_bands(const struct measure_limits *l)
{
	GString *out = g_string_new(NULL);

	add_bands(out, l, l->bands.watch, "worth watching");
	add_bands(out, l, l->bands.stop, "stop");
	if (!out->len)
		g_string_append(out, "no limits");
	return g_string_free(out, FALSE);
}

char *
measure_source(const struct measure_limits *l)
{
	return source_words(l->standing, l->source);
}

char *
measure_read_words(const struct condition_kind *kind, const char *as_read, gint64 units)
{
	const struct quantity_unit *unit = kind && units != NONE ? quantity_unit(kind->unit) : NULL;

	if (!unit)
		return g_strdup(as_read);
	/* 50 F above another temperature is 28 C more, and not 10 C. */
	return quantity_both(as_read, strcmp(unit->name, "K") ? unit->dimension : DIMENSION_WARMING);
}

static gboolean
question(const struct measure_form *f, const struct condition_out *j, GError **err)
{
	g_autofree char *read = text_quoted(f->what.as_read), *least = amount_words(f->kind->least, f->kind->unit, NONE),
			*most = amount_words(f->kind->most, f->kind->unit, NONE),
			*turned = amount_words(-j->value, f->kind->unit, NONE);

	if (j->unjudged == UNJUDGED_RANGE)
		return err_set(err, ERR_DOUBT, "%s can hardly be: %s is read from %s to %s.", read,
			       f->kind->what, least, most);
	if (j->unjudged == UNJUDGED_SIGN)
		return err_set(err, ERR_DOUBT,
			       "%s is above nought, and a metal in water reads below it: were the leads exchanged, and is "
			       "%s meant?",
			       read, turned);
	return TRUE;
}

static gboolean
check_day(struct book *b, const struct measurement *m, GError **err)
{
	char d[DAY_TEXT], t[DAY_TEXT];
	gint64 built;

	if (m->date > b->who.today)
		return err_set(err, ERR_INPUT, "%s lies ahead of today, %s", day_iso(m->date, d), day_iso(b->who.today, t));
	return book_built(b, m->boat, &built, err) && built_by(built, m->date, err);
}

/* What is corrected has to be a reading of this boat. */
static gboolean
check_corrected(struct book *b, const struct measurement *m, GError **err)
{
	struct measurement was;
	gboolean ok;

	if (m->id == NONE)
		return TRUE;
	record_init(RECORD_MEASUREMENT, &was);
	ok = row_get(b->db, RECORD_MEASUREMENT, m->id, &was, err)
	  && (was.boat == m->boat || err_set(err, ERR_CONFLICT, "that reading is another boat's"));
	record_clear(RECORD_MEASUREMENT, &was);
	return ok;
}

gboolean
book_measure_ready(struct book *b, struct measure_form *f, struct measure_limits *limits, struct condition_out *j, GError **err)
{
	struct measurement *m = &f->what;
	g_autoptr(GArray) bounds = NULL;

	if (!measure_parse(f->kind, m->as_read, &m->value, err) || !check_day(b, m, err) || !check_corrected(b, m, err))
		return FALSE;
	bounds = book_records(b, RECORD_BOUND, m->boat, err);
	if (!bounds)
		return FALSE;
	g_free(m->what);
	m->what = g_strdup(f->kind->what);
	g_free(m->unit);
	m->unit = g_strdup(*f->kind->unit ? f->kind->unit : NULL);
	*limits = measure_limits_of(f->kind, measure_bound_on(bounds, m->what, m->fitting), book_units(b, m->boat));
	limits->source = g_intern_string(limits->source);
	measure_judge(limits, m, j);
	return f->sure || question(f, j, err);
}

gboolean
book_measure(struct book *b, struct measure_form *f, struct measure_limits *limits, struct condition_out *j,
	     GError **err)
{
	struct measurement *m = &f->what;
	char d[DAY_TEXT];

	if (!book_measure_ready(b, f, limits, j, err))
		return FALSE;
	return book_begin(b, err)
	    && book_end(b, book_put(b, RECORD_MEASUREMENT, m, err), err, "%s %s on %s", m->what, m->as_read,
			day_iso(m->date, d));
}

gboolean
book_drop_measurement(struct book *b, gint64 id, GError **err)
{
	struct measurement m;
	char d[DAY_TEXT];
	gboolean ok;

	record_init(RECORD_MEASUREMENT, &m);
	ok = row_get(b->db, RECORD_MEASUREMENT, id, &m, err) && book_begin(b, err)
	  && book_end(b, row_drop(b->db, RECORD_MEASUREMENT, id, err), err, "%s %s of %s taken out", m.what, m.as_read,
		      day_iso(m.date, d));
	record_clear(RECORD_MEASUREMENT, &m);
	return ok;
}

/* Stop lies no nearer to good than watch; good has some room. */
gboolean
measure_bound_check(struct book *b, const struct bound *o, GError **err)
{
	const struct readings *r = book_readings(b, err);
	const struct condition_kind *kind = r ? readings_find(r, o->what) : NULL;
	const struct edge *watch, *stop;
	struct measure_limits l;
	g_autofree char *all = NULL;

	if (!kind)
		return r && measure_known(b, o->what, err);
	if (isnan(o->watch_below) && isnan(o->watch_above) && isnan(o->stop_below) && isnan(o->stop_above))
		return err_set(err, ERR_INPUT, "%s: no limit is given", o->what);
	l = measure_limits_of(kind, o, NONE);
	watch = l.bands.watch;
	stop = l.bands.stop;
	if (!(watch[0].value < stop[0].value) && !(watch[1].value > stop[1].value) && !(watch[0].value > watch[1].value)
	    && !(stop[0].value > stop[1].value))
		return TRUE;
	all = measure_bands(&l);
	return err_set(err, ERR_INPUT, "%s: these limits contradict each other: %s", o->what, all);
}

gint64
book_bound_key(struct book *b, gint64 boat, gint64 fitting, const char *what)
{
	struct cells *c = cells_open(b->db, SQL_BOUND_FOR);

	cells_bind(c, 1, boat);
	cells_bind_text(c, 2, what);
	cells_bind(c, 3, fitting);
	return book_key_found(c);
}

gboolean
book_set_bound(struct book *b, struct bound *o, GError **err)
{
	if (!measure_bound_check(b, o, err))
		return FALSE;
	o->id = book_bound_key(b, o->boat, o->fitting, o->what);
	return book_begin(b, err)
	    && book_end(b, book_put(b, RECORD_BOUND, o, err), err, "limits of %s (%s)", o->what, o->source);
}

gboolean
book_drop_bound(struct book *b, gint64 boat, gint64 fitting, const char *what, GError **err)
{
	gint64 key = book_bound_key(b, boat, fitting, what);

	if (key == NONE)
		return err_set(err, ERR_NOT_FOUND, "%s has no limits of your own%s", what,
			       fitting == NONE ? "" : " on that fitting");
	return book_begin(b, err)
	    && book_end(b, row_drop(b->db, RECORD_BOUND, key, err), err, "limits of %s as the program has them", what);
}
