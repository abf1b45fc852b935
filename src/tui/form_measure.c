/* A reading: its verdict stands there before it is recorded. */
#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/measure.h"
#include "logbook/page.h"
#include "tui/app.h"
#include "tui/form.h"

#include <string.h>

static void
add_once(GPtrArray *names, const char *what)
{
	if (what && !g_ptr_array_find_with_equal_func(names, what, g_str_equal, NULL))
		g_ptr_array_add(names, g_strdup(what));
}

/* What can be measured on a fitting: what was read there before, the last first, and what its tasks go by.  Ends with
 * NULL; names of its own. */
static GPtrArray *
usual(struct app *a, gint64 fitting)
{
	g_autoptr(GArray) readings = book_records(a->book, RECORD_MEASUREMENT, a->boat.id, NULL);
	const struct readings *kinds = book_readings(a->book, NULL);
	GPtrArray *names = g_ptr_array_new_with_free_func(g_free);

	for (guint i = readings ? readings->len : 0; i-- > 0;) {
		const struct measurement *m = &((const struct measurement *)(const void *)readings->data)[i];

		if (m->fitting == fitting && kinds && readings_find(kinds, m->what))
			add_once(names, m->what);
	}
	for (int i = 0; i < due_count(a->due); i++) {
		const struct due_line *d = due_at(a->due, i);

		for (int k = 0; k < d->in.n_limits && d->fitting_id == fitting; k++)
			add_once(names, d->limit[k].measured);
	}
	g_ptr_array_add(names, NULL);
	return names;
}

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	g_autoptr(GPtrArray) names = usual(a, f->subject);
	g_autofree char *all = g_strjoinv(" or ", (char **)names->pdata);
	struct fitting fitting;
	char day[DAY_TEXT];

	record_init(RECORD_FITTING, &fitting);
	if (f->subject != NONE && !book_record(a->book, RECORD_FITTING, f->subject, &fitting, err)) {
		record_clear(RECORD_FITTING, &fitting);
		return FALSE;
	}
	f->heading = g_strdup_printf("At: %s%s%s", fitting.title ? fitting.title : "no one fitting",
				     *all ? "; read there: " : "", all);
	record_clear(RECORD_FITTING, &fitting);
	form_add(f, "what", "What", "part of its name will do: compression, anode, half-cell-bronze", names->pdata[0]);
	form_add(f, "value", "Read", "as read, with its unit: 60 %, 3/8 in, 12.65 V", NULL);
	form_add(f, "date", "Date", form_date_hint, day_iso(app_today(a), day));
	form_add_choice(f, "water", "Water", &words_water, NONE, TRUE)->hint =
		"that it was read in, of a half-cell; Left and Right choose, Backspace: not said";
	form_add(f, "psu", "Salinity", "of that water, where it was measured: 34 psu", NULL);
	form_add(f, "method", "How", "how it was read, and with what: infrared B, at idle, on hose", NULL);
	form_add_remark(f, NULL, NULL);
	f->at = names->pdata[0] ? 1 : 0;
	return TRUE;
}

static void
read_value(struct form *f, struct measure_form *m)
{
	GError *err = NULL;

	if (!*form_text(f, "value"))
		err_set(&err, ERR_INPUT, "wanted: what does it read?");
	else if (m->kind)
		measure_parse(m->kind, form_text(f, "value"), &m->what.value, &err);
	form_wrong(f, "value", &err);
}

/* FALSE: it cannot be read, which is said at its field.  Clear f->what either way. */
static gboolean
read_form(struct app *a, struct form *f, struct measure_form *m)
{
	GError *err = NULL;

	*m = (struct measure_form) { .sure = f->sure };
	record_init(RECORD_MEASUREMENT, &m->what);
	m->what.boat = a->boat.id;
	m->what.fitting = f->subject;
	if (!*form_text(f, "what"))
		err_set(&err, ERR_INPUT, "wanted: what was measured?");
	else
		m->kind = measure_kind(a->book, form_text(f, "what"), &err);
	form_wrong(f, "what", &err);
	read_value(f, m);
	if (day_parse(form_text(f, "date"), app_today(a), &m->what.date, &err) && m->what.date > app_today(a))
		err_set(&err, ERR_INPUT, "that lies ahead");
	form_wrong(f, "date", &err);
	if (*form_text(f, "psu"))
		salinity_parse(form_text(f, "psu"), &m->what.psu, &err);
	form_wrong(f, "psu", &err);
	m->what.what = m->kind ? g_strdup(m->kind->what) : NULL;
	m->what.unit = m->kind ? g_strdup(m->kind->unit) : NULL;
	m->what.as_read = g_strdup(form_text(f, "value"));
	m->what.water = form_word(f, "water");
	m->what.method = form_said(f, "method");
	m->what.remark = form_said(f, "remark");
	return m->kind && form_field(f, "value")->wrong == NULL;
}

/* The verdict by the limits that hold there. */
static char *
verdict_of(struct app *a, const struct measure_form *m, GError **err)
{
	g_autoptr(GArray) bounds = book_records(a->book, RECORD_BOUND, a->boat.id, err);
	struct measure_limits limits;
	struct condition_out judged;
	g_autoptr(GArray) all = book_records(a->book, RECORD_MEASUREMENT, a->boat.id, err);
	/* How it was read is asked for further down in the form: until it is said there is nothing to tell. */
	const struct measurement *before = all && m->what.method ? measure_before(all, &m->what) : NULL;
	g_autofree char *verdict = NULL, *bands = NULL, *source = NULL,
			*than = before ? measure_before_words(&m->what, before) : g_strdup(""),
			*second = book_second_meter(a->book, &m->what, NULL);

	if (!bounds)
		return NULL;
	limits = measure_limits_of(m->kind, measure_bound_on(bounds, m->kind->what, m->what.fitting), a->boat.units);
	measure_judge(&limits, &m->what, &judged);
	verdict = measure_verdict(&limits, &judged);
	bands = measure_bands(&limits);
	source = measure_source(&limits);
	return g_strdup_printf("%s %s: %s. Limits: %s (%s).%s%s%s%s", m->kind->what, m->what.as_read, verdict, bands, source,
			       before ? " " : "", than, second ? " " : "", second ? second : "");
}

static char *
check(struct app *a, struct form *f)
{
	struct measure_form m;
	char *sum = NULL;

	if (read_form(a, f, &m))
		sum = verdict_of(a, &m, NULL);
	else if (m.kind)
		sum = g_strdup_printf("%s, in %s: %s.", m.kind->what, m.kind->unit, m.kind->how);
	record_clear(RECORD_MEASUREMENT, &m.what);
	return sum;
}

/* "; due at once: Anodes: renew", as the due list is with it; "" when nothing is. */
static char *
due_at_once(struct app *a, const struct measurement *m)
{
	const struct due_ask ask = { app_today(a), NONE };
	struct due_list *l = due_list_new();
	GString *out = g_string_new(NULL);
	gboolean ok = book_due(a->book, &a->boat, &ask, l, NULL);

	for (int i = 0; ok && i < due_count(l); i++)
		for (int k = 0; k < due_at(l, i)->n_readings; k++) {
			const struct due_reading *r = &due_at(l, i)->reading[k];

			if (due_at(l, i)->fitting_id == m->fitting && r->verdict == VERDICT_STOP && !r->cleared
			    && r->date == m->date && !strcmp(r->kind->what, m->what) && !strcmp(r->as_read, m->as_read))
				g_string_append_printf(out, "%s%s", out->len ? ", " : "; due at once: ", due_at(l, i)->label);
		}
	due_list_free(l);
	return g_string_free(out, FALSE);
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	struct measure_limits limits;
	struct condition_out judged;
	struct measure_form m;
	gboolean ok;

	read_form(a, f, &m);
	ok = book_measure(a->book, &m, &limits, &judged, err);
	if (ok) {
		gboolean stop = judged.verdict == VERDICT_STOP;
		g_autofree char *verdict = measure_verdict(&limits, &judged), *due = stop ? due_at_once(a, &m.what) : g_strdup("");

		app_say(a, stop ? STYLE_PAST : STYLE_STRONG, "%s %s: %s%s; u takes it back", m.kind->what, m.what.as_read,
			verdict, due);
	}
	record_clear(RECORD_MEASUREMENT, &m.what);
	return ok;
}

const struct form_kind form_measure = {
	.name = "measure", .title = "A reading", .button = "Enter records it", .begin = begin, .check = check, .save = save,
};
