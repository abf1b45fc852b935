/* Record that a task was done: what was seen, what proves it, who. */
#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/caution.h"
#include "logbook/found.h"
#include "logbook/page.h"
#include "logbook/service.h"
#include "logbook/variant.h"
#include "tui/app.h"
#include "tui/form.h"
#include "tui/job_view.h"

#include <string.h>

/* Meters' fields have their engines' places as names. */
static const char *const meter_field[MAX_ENGINES] = { "meter0", "meter1", "meter2", "meter3", "meter4", "meter5" };

/* The engines whose meter can have been read at the work: the fitting's own, or any. */
static gboolean
add_meters(struct app *a, struct form *f, const struct fitting *fitting, GError **err)
{
	g_autoptr(GArray) engines = book_records(a->book, RECORD_ENGINE, a->boat.id, err);
	const struct engine *e = engines ? (const void *)engines->data : NULL;
	char h[HOURS_TEXT];
	gint64 shows;

	for (int i = 0; engines && i < MIN((int)engines->len, MAX_ENGINES); i++) {
		g_autofree char *hint = NULL, *label = NULL;

		if (fitting->engine != NONE && e[i].id != fitting->engine)
			continue;
		if (!book_meter_shows(a->book, &e[i], app_today(a), &shows, err))
			return FALSE;
		if (shows == NONE)
			continue;
		hint = g_strdup_printf("what it showed then; by the log %s h now; empty: not read", hours_words(shows, h));
		label = engines->len > 1 ? g_strdup_printf("Meter, %s", e[i].name) : g_strdup("Meter showed");
		form_add(f, meter_field[i], label, g_intern_string(hint), NULL);
	}
	return engines != NULL;
}

static void
add_fields(struct app *a, struct form *f, const struct task *t, const struct fitting *fitting)
{
	gboolean renews = service_usual_outcome(t) == OUTCOME_RENEWED || t->rule >= CLOCK_RENEWAL;

	form_add_choice(f, "outcome", "Outcome", &words_outcome, service_usual_outcome(t), FALSE);
	form_add(f, "seen", "Seen", "what was seen; ^X writes it in your editor", NULL)->long_text = TRUE;
	form_add(f, "proof", "Proof", t->proof ? g_intern_string(t->proof) : "what proves it: photo, receipt", NULL);
	form_add(f, "who", "Done by", "a name, or the yard's", a->start.who.name);
	if (renews) {
		form_add(f, "number", "Part number", "of what went in, as printed", NULL);
		form_add(f, "made", "Made on", "the date printed on what went in", NULL);
	}
	if (t->mechanism == MECH_FLUID)
		form_add(f, "filled", "Filled with", "type and quantity of what went in: mineral 15W-40, 4.2 L", NULL);
	if (renews && fitting->variants)
		form_add(f, "variant", "Design fitted", g_intern_string(fitting->variants), fitting->variant);
	form_add(f, "cost", "Cost", "12.50, EUR 12.50", NULL);
	form_add_remark(f, NULL, NULL);
}

static char *
heading(struct app *a, const struct task *t)
{
	g_autofree char *caution = caution_words(a->book, t->caution);

	return g_strdup_printf("%s.%s%s%s%s%s%s", t->title, caution ? " " : "", caution ? caution : "", t->proof ? " Proof: " : "",
			       t->proof ? t->proof : "", t->remark ? ". To heed: " : "", t->remark ? t->remark : "");
}

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	struct fitting fitting;
	struct task t;
	char day[DAY_TEXT];
	gboolean ok;

	record_init(RECORD_FITTING, &fitting);
	ok = book_record(a->book, RECORD_TASK, f->subject, &t, err)
	  && book_record(a->book, RECORD_FITTING, t.fitting, &fitting, err);
	if (ok) {
		f->heading = heading(a, &t);
		form_add(f, "date", "Date", "today, 12 may; not to the day: 2019, spring 2019", day_iso(app_today(a), day));
		ok = add_meters(a, f, &fitting, err);
	}
	if (ok)
		add_fields(a, f, &t, &fitting);
	record_clear(RECORD_FITTING, &fitting);
	record_clear(RECORD_TASK, &t);
	return ok;
}

static void
read_when(struct app *a, struct form *f, struct service *s)
{
	const char *made = form_text(f, "made");
	GError *err = NULL;

	if (day_span_parse(form_text(f, "date"), app_today(a), &s->earliest, &s->date, &err) && s->earliest > app_today(a))
		err_set(&err, ERR_INPUT, "that lies ahead: work is recorded when it is done");
	form_wrong(f, "date", &err);
	if (s->earliest == s->date)
		s->earliest = NONE;
	else
		s->date = MIN(s->date, app_today(a));
	if (*made && day_parse(made, app_today(a), &s->made, &err) && s->date != NONE && s->made > s->date)
		err_set(&err, ERR_INPUT, "that is after the day of the work");
	form_wrong(f, "made", &err);
}

/* One engine's reading is enough, and says that day's hours. */
static void
read_meter(struct app *a, struct form *f, struct service_form *s)
{
	g_autoptr(GArray) engines = book_records(a->book, RECORD_ENGINE, a->boat.id, NULL);

	for (int i = 0; engines && i < MIN((int)engines->len, MAX_ENGINES); i++) {
		const char *text = form_text(f, meter_field[i]);
		GError *err = NULL;

		if (!*text)
			continue;
		if (s->engine)
			err_set(&err, ERR_INPUT, "one meter is enough: %s has been given", s->engine);
		else if (hours_parse(text, &s->what.reading, &err) && s->what.earliest != NONE)
			err_set(&err, ERR_INPUT, "a reading belongs to one day: leave it out, or say the day");
		s->engine = g_intern_string(((const struct engine *)(const void *)engines->data)[i].name);
		form_wrong(f, meter_field[i], &err);
	}
}

/* A number and a design are of a part that went in; else they would be lost, or change what is fitted. */
static void
read_part(struct form *f, struct service_form *s)
{
	static const char none_went_in[] = "no part went in: the outcome is renewed, or this stays as it was";
	const struct form_field *design = form_field(f, "variant");
	gboolean renewed = s->what.outcome == OUTCOME_RENEWED;
	GError *err = NULL;

	s->filled = *form_text(f, "filled") ? g_intern_string(form_text(f, "filled")) : NULL;
	s->part.number = form_said(f, "number");
	if (s->part.number && !renewed)
		err_set(&err, ERR_INPUT, none_went_in);
	form_wrong(f, "number", &err);
	if (design && *form_text(f, "variant") && (renewed || design->touched)) {
		s->variant = g_intern_string(form_text(f, "variant"));
		if (!renewed)
			err_set(&err, ERR_INPUT, none_went_in);
		else if (strchr(s->variant, ' ') || !variant_has_task(design->hint, s->variant))
			err_set(&err, ERR_INPUT, "it is one of: %s", design->hint);
	}
	form_wrong(f, "variant", &err);
}

/* What the fields hold; clear what and part. */
static void
read_form(struct app *a, struct form *f, struct service_form *s)
{
	const char *cost = form_text(f, "cost");
	char currency[4] = "";
	GError *err = NULL;

	*s = (struct service_form) { .dated = TRUE, .sure = f->sure };
	record_init(RECORD_SERVICE, &s->what);
	record_init(RECORD_PART, &s->part);
	s->what.task = f->subject;
	s->what.outcome = form_word(f, "outcome");
	read_when(a, f, &s->what);
	read_meter(a, f, s);
	read_part(f, s);
	s->what.seen = form_said(f, "seen");
	s->what.proof = form_said(f, "proof");
	s->what.who = form_said(f, "who");
	s->what.remark = form_said(f, "remark");
	if (*cost && !money_parse(cost, &s->what.cost, currency, &err))
		form_wrong(f, "cost", &err);
	s->what.currency = *currency ? g_strdup(currency) : NULL;
}

static void
clear_form(struct service_form *s)
{
	record_clear(RECORD_SERVICE, &s->what);
	record_clear(RECORD_PART, &s->part);
}

/* "on 12 May 2026", "between 1 Mar 2019 and 31 May 2019" */
static char *
when_words(const struct service *s)
{
	char from[16], day[16];

	if (s->date == NONE)
		return g_strdup("on ?");
	day_words(s->date, day);
	return s->earliest == NONE ? g_strdup_printf("on %s", day)
				   : g_strdup_printf("between %s and %s", day_words(s->earliest, from), day);
}

/* What another design than that on record brings and takes away; NULL: nothing.  The caller's. */
static char *
design_changes(struct app *a, const struct service_form *s)
{
	struct fitting f;
	struct task t;
	char *changes = NULL;

	record_init(RECORD_FITTING, &f);
	if (s->variant && book_record(a->book, RECORD_TASK, s->what.task, &t, NULL)) {
		if (book_record(a->book, RECORD_FITTING, t.fitting, &f, NULL) && book_check_variant(&f, s->variant, NULL))
			changes = book_variant_changes(a->book, &f, s->variant, NULL);
		record_clear(RECORD_FITTING, &f);
		record_clear(RECORD_TASK, &t);
	}
	if (changes && !*changes)
		g_clear_pointer(&changes, g_free);
	return changes;
}

static char *
check(struct app *a, struct form *f)
{
	const struct due_line *line = due_find(a->due, f->subject);
	g_autofree char *when = NULL, *changes = NULL, *repeated = NULL;
	GString *sum = g_string_new(line ? line->label : "This task");
	struct service_form s;
	char h[HOURS_TEXT];

	read_form(a, f, &s);
	when = when_words(&s.what);
	changes = design_changes(a, &s);
	repeated = book_repeated(a->book, &s.what, NULL);
	g_string_append_printf(sum, ": %s %s", word_of(&words_outcome, s.what.outcome), when);
	if (s.what.reading != NONE)
		g_string_append_printf(sum, ", the meter at %s h", hours_words(s.what.reading, h));
	g_string_append(sum, !line || service_restarts(line->in.rule, line->in.consequence, s.what.outcome)
		? ". Its interval begins anew." : ". It stays due: that does not restart its interval.");
	if (changes)
		g_string_append_printf(sum, " %s.", changes);
	if (repeated)
		g_string_append_printf(sum, " It was %s.", repeated);
	clear_form(&s);
	return g_string_free(sum, FALSE);
}

static void
say(struct app *a, const char *label, const struct service *what, const struct service_said *s)
{
	g_autoptr(GString) out = g_string_new(NULL);
	char h[HOURS_TEXT];

	g_string_append_printf(out, "%s: %s", label, word_of(&words_outcome, what->outcome));
	if (s->hours != NONE)
		g_string_append_printf(out, " at %s h", hours_words(s->hours, h));
	if (!s->counts)
		g_string_append_printf(out, "; it stays due: %s", s->why_not);
	if (s->unlogged)
		g_string_append_printf(out, "; %s h that no outing tells of went into the log", hours_words(s->unlogged, h));
	if (s->repeated)
		g_string_append_printf(out, "; %s", s->repeated);
	if (s->mixed)
		g_string_append_printf(out, "; %s", s->mixed);
	app_say(a, STYLE_STRONG, "%s; u takes it back", out->str);
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	const struct due_line *line = due_find(a->due, f->subject);
	struct service_said said = { .hours = NONE };
	struct service_form s;
	gboolean ok;

	read_form(a, f, &s);
	ok = job_did(a, &s, &said, err);
	if (ok)
		say(a, line ? line->label : "recorded", &s.what, &said);
	service_said_clear(&said);
	clear_form(&s);
	return ok;
}

const struct form_kind form_did = {
	.name = "did", .title = "Work done", .button = "Enter records it", .begin = begin, .check = check, .save = save,
	.then = job_go_on,
};
