/* Jobs for other programs. */
#include "logbook/job_inside.h"

#include "base/date.h"
#include "exchange/csv_out.h"
#include "exchange/json.h"

static const struct job *
job_at(const GArray *jobs, guint i)
{
	return &((const struct job *)(const void *)jobs->data)[i];
}

static const char *
state_of(const struct job *j)
{
	return j->closed != NONE ? "closed" : j->paused != NONE ? "paused" : "open";
}

char *
jobs_csv(struct book *b, const GArray *jobs, GError **err)
{
	static const char *const names[] = { "job",    "title", "template", "opened", "paused",
					     "closed", "state", "place",    "off",    "open" };
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);
	struct csv_out *csv = csvout_new(&sink, NULL);
	gboolean ok = TRUE;

	csvout_names(csv, names, G_N_ELEMENTS(names));
	for (guint i = 0; ok && i < jobs->len; i++) {
		const struct job *j = job_at(jobs, i);
		struct job_sheet *s = book_job_sheet(b, j, err);
		const gint64 day[] = { j->opened, j->paused, j->closed };
		char d[DAY_TEXT];

		ok = s != NULL;
		if (!ok)
			break;
		csvout_text(csv, j->name);
		csvout_text(csv, j->title);
		csvout_text(csv, j->template);
		for (guint k = 0; k < G_N_ELEMENTS(day); k++)
			csvout_word(csv, day_iso(day[k], d));
		csvout_word(csv, state_of(j));
		csvout_text(csv, j->place);
		csvout_int(csv, job_off_count(s));
		csvout_int(csv, s->open->len);
		csvout_row(csv);
		job_sheet_free(s);
	}
	csvout_close(csv, NULL);
	return g_string_free(text, !ok);
}

static void
json_job(struct json_out *j, const struct job_sheet *s)
{
	jsonout_text(j, "job", s->job.name);
	jsonout_text(j, "title", s->job.title);
	jsonout_text(j, "template", s->job.template);
	jsonout_day(j, "opened", s->job.opened);
	jsonout_day(j, "paused", s->job.paused);
	jsonout_day(j, "closed", s->job.closed);
	jsonout_text(j, "state", state_of(&s->job));
	jsonout_text(j, "place", s->job.place);
	jsonout_int(j, "off", job_off_count(s));
	jsonout_int(j, "open", s->open->len);
}

char *
jobs_json(struct book *b, const GArray *jobs, GError **err)
{
	struct json_out *j = jsonout_new();
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);
	gboolean ok = TRUE;

	for (guint i = 0; ok && i < jobs->len; i++) {
		struct job_sheet *s = book_job_sheet(b, job_at(jobs, i), err);

		ok = s != NULL;
		if (!ok)
			break;
		jsonout_next(j);
		json_job(j, s);
		job_sheet_free(s);
	}
	jsonout_write(j, &sink, TRUE, NULL);
	jsonout_free(j);
	return g_string_free(text, !ok);
}

char *
job_removals_csv(const struct job_sheet *s)
{
	static const char *const names[] = { "number",      "kind", "what",  "count", "size", "as-found",
					     "orientation", "tray", "state", "off",   "back", "back-count",
					     "as-left",     "why",  "who",   "remark" };
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);
	struct csv_out *csv = csvout_new(&sink, NULL);

	csvout_names(csv, names, G_N_ELEMENTS(names));
	for (guint i = 0; i < s->removals->len; i++) {
		const struct removal *r = &((const struct removal *)(const void *)s->removals->data)[i];
		char d[DAY_TEXT];

		csvout_int(csv, r->no);
		csvout_word(csv, word_of(&words_removal_kind, r->kind));
		csvout_text(csv, r->what);
		csvout_int(csv, r->count);
		csvout_text(csv, r->size);
		csvout_text(csv, r->as_found);
		csvout_text(csv, r->orientation);
		csvout_text(csv, r->tray);
		csvout_word(csv, word_of(&words_removal_state, r->state));
		csvout_word(csv, day_iso(r->off, d));
		csvout_word(csv, day_iso(r->back, d));
		csvout_int(csv, r->back_count);
		csvout_text(csv, r->as_left);
		csvout_text(csv, r->why);
		csvout_text(csv, r->who);
		csvout_text(csv, r->remark);
		csvout_row(csv);
	}
	csvout_close(csv, NULL);
	return g_string_free(text, FALSE);
}

static void
json_removals(struct json_out *j, const struct job_sheet *s)
{
	jsonout_open_array(j, "list");
	for (guint i = 0; i < s->removals->len; i++) {
		const struct removal *r = &((const struct removal *)(const void *)s->removals->data)[i];

		jsonout_open_object(j, NULL);
		jsonout_int(j, "number", r->no);
		jsonout_text(j, "kind", word_of(&words_removal_kind, r->kind));
		jsonout_text(j, "what", r->what);
		jsonout_int(j, "count", r->count);
		jsonout_text(j, "size", r->size);
		jsonout_text(j, "as-found", r->as_found);
		jsonout_text(j, "orientation", r->orientation);
		jsonout_text(j, "tray", r->tray);
		jsonout_text(j, "state", word_of(&words_removal_state, r->state));
		jsonout_day(j, "off", r->off);
		jsonout_day(j, "back", r->back);
		jsonout_int(j, "back-count", r->back_count);
		jsonout_text(j, "as-left", r->as_left);
		jsonout_text(j, "why", r->why);
		jsonout_text(j, "who", r->who);
		jsonout_text(j, "remark", r->remark);
		jsonout_close(j);
	}
	jsonout_close(j);
}

static void
json_steps(struct json_out *j, const struct job_sheet *s)
{
	jsonout_open_array(j, "steps");
	for (guint i = 0; i < s->steps->len; i++) {
		const struct step *p = &((const struct step *)(const void *)s->steps->data)[i];

		jsonout_open_object(j, NULL);
		jsonout_int(j, "number", p->no);
		jsonout_text(j, "kind", word_of(&words_step_kind, p->kind));
		jsonout_text(j, "text", p->text);
		jsonout_yes(j, "on-condition", p->on_condition == 1);
		jsonout_day(j, "done", p->done);
		jsonout_text(j, "seen", p->seen);
		jsonout_close(j);
	}
	jsonout_close(j);
}

static void
json_aims(struct json_out *j, const struct job_sheet *s)
{
	jsonout_open_array(j, "aims");
	for (guint i = 0; i < s->aims->len; i++) {
		const struct job_aim *a = &((const struct job_aim *)(const void *)s->aims->data)[i];

		jsonout_open_object(j, NULL);
		jsonout_text(j, a->aim.task != NONE ? "task" : "finding", a->name);
		jsonout_text(j, "title", a->title);
		jsonout_text(j, "state", aim_state_words(a->state));
		jsonout_int(j, "proofs", a->proofs);
		jsonout_int(j, "proved", a->proved);
		jsonout_text(j, "reason", a->aim.reason);
		jsonout_close(j);
	}
	jsonout_close(j);
}

char *
job_json(const struct job_sheet *s)
{
	struct json_out *j = jsonout_new();
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);

	jsonout_next(j);
	json_job(j, s);
	json_aims(j, s);
	json_steps(j, s);
	json_removals(j, s);
	jsonout_open_array(j, "left");
	for (guint i = 0; i < s->open->len; i++)
		jsonout_text(j, NULL, ((const struct job_open *)(const void *)s->open->data)[i].words);
	jsonout_close(j);
	jsonout_write(j, &sink, TRUE, NULL);
	jsonout_free(j);
	return g_string_free(text, FALSE);
}
