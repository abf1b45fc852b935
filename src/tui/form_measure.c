/* A reading: its verdict stands there before it is recorded. */
#include "base/date.h"
#include "base/err.h"
#include "logbook/measure.h"
#include "logbook/page.h"
#include "tui/app.h"
#include "tui/form.h"

/* What a task of the fitting goes by. */
static char *
usual_what(struct app *a, gint64 fitting)
{
	for (int i = 0; i < due_count(a->due); i++) {
		const struct due_line *d = due_at(a->due, i);

		for (int k = 0; k < d->in.n_limits; k++)
			if (d->fitting_id == fitting && d->limit[k].measured)
				return g_strdup(d->limit[k].measured);
	}
	return NULL;
}

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	g_autofree char *what = usual_what(a, f->subject);
	struct fitting fitting;
	char day[DAY_TEXT];

	record_init(RECORD_FITTING, &fitting);
	if (f->subject != NONE && !book_record(a->book, RECORD_FITTING, f->subject, &fitting, err))
		return FALSE;
	f->heading = g_strdup_printf("At: %s", fitting.title ? fitting.title : "no one fitting");
	form_add(f, "what", "What", "anode-left, bearing-roughness, battery-rest, ...", what);
	form_add(f, "value", "Read", "as read, with its unit: 60 %, 3/8 in, 12.65 V", NULL);
	form_add(f, "date", "Date", "today, yesterday, 12 may, 2026-05-12", day_iso(app_today(a), day));
	form_add_choice(f, "water", "Water", &words_water, NONE, TRUE);
	form_add(f, "method", "How", "how it was read", NULL);
	form_add(f, "remark", "Remark", "^X writes it in your editor", NULL)->long_text = TRUE;
	record_clear(RECORD_FITTING, &fitting);
	if (what)
		f->at = 1;
	return TRUE;
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
	m->kind = measure_kind(form_text(f, "what"), &err);
	form_wrong(f, "what", &err);
	if (m->kind && !measure_parse(m->kind, form_text(f, "value"), &m->what.value, &err))
		form_wrong(f, "value", &err);
	if (day_parse(form_text(f, "date"), app_today(a), &m->what.date, &err) && m->what.date > app_today(a))
		err_set(&err, ERR_INPUT, "that lies ahead");
	form_wrong(f, "date", &err);
	m->what.what = m->kind ? g_strdup(m->kind->what) : NULL;
	m->what.unit = m->kind ? g_strdup(m->kind->unit) : NULL;
	m->what.as_read = g_strdup(form_text(f, "value"));
	m->what.water = form_word(f, "water");
	m->what.method = *form_text(f, "method") ? g_strdup(form_text(f, "method")) : NULL;
	m->what.remark = *form_text(f, "remark") ? g_strdup(form_text(f, "remark")) : NULL;
	return m->kind && form_field(f, "value")->wrong == NULL;
}

/* The verdict by the limits that hold there. */
static char *
verdict_of(struct app *a, const struct measure_form *m, GError **err)
{
	g_autoptr(GArray) bounds = book_records(a->book, RECORD_BOUND, a->boat.id, err);
	struct measure_limits limits;
	struct condition_out judged;
	g_autofree char *verdict = NULL, *bands = NULL, *source = NULL;

	if (!bounds)
		return NULL;
	limits = measure_limits_of(m->kind, measure_bound_on(bounds, m->kind->what, m->what.fitting));
	measure_judge(&limits, &m->what, &judged);
	verdict = measure_verdict(m->kind, &judged);
	bands = measure_bands(&limits);
	source = measure_source(&limits);
	return g_strdup_printf("%s %s: %s. Limits: %s (%s).", m->kind->what, m->what.as_read, verdict, bands, source);
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
		g_autofree char *verdict = measure_verdict(m.kind, &judged);

		app_say(a, judged.verdict == VERDICT_STOP ? STYLE_PAST : STYLE_STRONG, "%s %s: %s; u takes it back", m.kind->what,
			m.what.as_read, verdict);
	}
	record_clear(RECORD_MEASUREMENT, &m.what);
	return ok;
}

const struct form_kind form_measure = {
	.name = "measure", .title = "A reading", .button = "Enter records it", .begin = begin, .check = check, .save = save,
};
