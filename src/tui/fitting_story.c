#include "tui/fitting_story.h"

#include "base/date.h"
#include "logbook/measure.h"

#include <math.h>
#include <string.h>

enum { PLOT_W = 24 };

#define EACH(type, item, array) \
	const type *item = (const void *)(array)->data, *item##_end = item ? item + (array)->len : NULL; item != item##_end; item++

gboolean
fitting_records_read(struct fitting_records *r, struct book *b, gint64 boat, const struct due_list *due, GError **err)
{
	fitting_records_clear(r);
	r->due = due;
	return (r->fittings = book_records(b, RECORD_FITTING, boat, err)) && (r->tasks = book_records(b, RECORD_TASK, boat, err))
	    && (r->parts = book_records(b, RECORD_PART, boat, err)) && (r->services = book_records(b, RECORD_SERVICE, boat, err))
	    && (r->readings = book_records(b, RECORD_MEASUREMENT, boat, err))
	    && (r->bounds = book_records(b, RECORD_BOUND, boat, err));
}

void
fitting_records_clear(struct fitting_records *r)
{
	GArray **all[] = { &r->fittings, &r->tasks, &r->parts, &r->services, &r->readings, &r->bounds };

	for (guint i = 0; i < G_N_ELEMENTS(all); i++)
		g_clear_pointer(all[i], g_array_unref);
}

const struct due_line *
fitting_due(const struct fitting_records *r, gint64 fitting)
{
	const struct due_line *worst = NULL;

	for (int i = 0; i < due_count(r->due); i++) {
		const struct due_line *d = due_at(r->due, i);

		if (d->fitting_id == fitting && (!worst || (d->out.past && !worst->out.past)))
			worst = d;
	}
	return worst;
}

const struct measurement *
fitting_reading(const struct fitting_records *r, gint64 fitting)
{
	const struct measurement *last = NULL;

	for (EACH(struct measurement, m, r->readings))
		if (m->fitting == fitting && (!last || m->date >= last->date))
			last = m;
	return last;
}

static void
add_what(const struct fitting *f, GString *out)
{
	g_string_append_printf(out, "%s (%s)%s\n", f->title, f->path, f->retired == 1 ? ": not on this boat" : "");
	if (f->variants)
		g_string_append_printf(out, "Design: %s; there are %s\n", f->variant ? f->variant : "not known", f->variants);
	if (f->below_waterline == 1)
		g_string_append(out, "Below the waterline\n");
	if (f->needs_off)
		g_string_append_printf(out, "First off or open: %s\n", f->needs_off);
	if (f->remark)
		g_string_append_printf(out, "%s\n", f->remark);
}

static void
add_said(GString *out, const char *what, const char *said)
{
	if (said)
		g_string_append_printf(out, "%s%s", what, said);
}

static void
add_parts(const struct fitting_records *r, const struct fitting *f, GString *out)
{
	char day[16], gone[16];

	for (EACH(struct part, p, r->parts))
		if (p->fitting == f->id) {
			g_string_append(out, "Part");
			add_said(out, " ", p->what);
			add_said(out, " ", p->number);
			g_string_append_printf(out, ", fitted %s%s%s\n", day_words(p->fitted, day),
					       p->removed == NONE ? "" : ", removed ", day_words(p->removed, gone));
		}
}

static void
add_tasks(const struct fitting_records *r, const struct fitting *f, GString *out)
{
	for (EACH(struct task, t, r->tasks)) {
		const struct due_line *d = due_find(r->due, t->id);
		char day[16];

		if (t->fitting != f->id)
			continue;
		g_string_append_printf(out, "Task %s: %s", t->name, t->title);
		if (!d)
			g_string_append(out, t->retired == 1 ? " (not wanted)" : " (not for this design)");
		else
			g_string_append_printf(out, ": %s%s%s", d->out.past ? "past due, " : "",
					       d->out.due == NONE ? word_of(&words_opportunity, d->out.when) : "due ",
					       day_words(d->out.due, day));
		for (int k = 0; d && k < d->in.n_limits; k++) {
			g_autofree char *words = limit_words(&d->limit[k]), *source = limit_source(&d->limit[k]);

			g_string_append_printf(out, "; %s (%s)", words, source);
		}
		g_string_append_c(out, '\n');
	}
}

static const struct task *
task_of(const struct fitting_records *r, gint64 id)
{
	for (EACH(struct task, t, r->tasks))
		if (t->id == id)
			return t;
	return NULL;
}

static void
add_services(const struct fitting_records *r, const struct fitting *f, GString *out)
{
	for (guint i = r->services->len; i-- > 0;) {
		const struct service *s = &((const struct service *)(const void *)r->services->data)[i];
		const struct task *t = task_of(r, s->task);
		char day[16];

		if (!t || t->fitting != f->id)
			continue;
		g_string_append_printf(out, "%s%s %s: %s", s->earliest == NONE ? "" : "by ", day_words(s->date, day), t->name,
				       word_of(&words_outcome, s->outcome));
		add_said(out, "; seen: ", s->seen);
		add_said(out, "; proof: ", s->proof);
		add_said(out, "; ", s->who);
		g_string_append_c(out, '\n');
	}
}

/* Where a value stands between the least and the most of its kind's readings and limits there. */
static void
add_bar(const struct fitting_records *r, const struct measurement *of, const struct measure_limits *l, const struct grid *g,
	GString *out)
{
	double least = 0, most = 0;
	int full;

	for (EACH(struct measurement, m, r->readings))
		if (m->fitting == of->fitting && !strcmp(m->what, of->what) && !isnan(m->value)) {
			least = fmin(least, m->value);
			most = fmax(most, m->value);
		}
	for (int i = 0; i < 2; i++) {
		least = fmin(least, isnan(l->bands.stop[i].value) ? least : l->bands.stop[i].value);
		most = fmax(most, isnan(l->bands.stop[i].value) ? most : l->bands.stop[i].value);
	}
	if (isnan(of->value) || most - least < 1e-9)
		return;
	full = (int)(PLOT_W * (of->value - least) / (most - least) + .5);
	for (int i = 0; i < PLOT_W; i++)
		g_string_append(out, glyph(g, i < full ? GLYPH_FULL : GLYPH_EMPTY));
	g_string_append_c(out, ' ');
}

static void
add_readings(const struct fitting_records *r, const struct fitting *f, const struct grid *g, GString *out)
{
	const char *before = "";

	for (EACH(struct measurement, m, r->readings)) {
		const struct condition_kind *kind = condition_kind_of(m->what);
		struct measure_limits l;
		struct condition_out judged;
		char day[16];

		if (m->fitting != f->id || !kind)
			continue;
		l = measure_limits_of(kind, measure_bound_on(r->bounds, m->what, f->id));
		if (strcmp(before, m->what)) {
			g_autofree char *bands = measure_bands(&l), *source = measure_source(&l);

			g_string_append_printf(out, "Readings of %s: %s (%s)\n", m->what, bands, source);
			before = m->what;
		}
		measure_judge(&l, m, &judged);
		add_bar(r, m, &l, g, out);
		{
			g_autofree char *verdict = measure_verdict(kind, &judged);

			g_string_append_printf(out, "%s %s: %s\n", day_words(m->date, day), m->as_read, verdict);
		}
	}
}

char *
fitting_story(const struct fitting_records *r, const struct fitting *f, const struct grid *g)
{
	GString *out = g_string_new(NULL);

	add_what(f, out);
	add_parts(r, f, out);
	add_tasks(r, f, out);
	add_services(r, f, out);
	add_readings(r, f, g, out);
	return g_string_free(out, FALSE);
}
