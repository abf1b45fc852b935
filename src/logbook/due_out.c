/* The due list and its reasons for other programs. */
#include "logbook/due_list.h"
#include "logbook/why.h"

#include "base/date.h"
#include "exchange/csv_out.h"
#include "engine/wear.h"
#include "exchange/json.h"

#include <math.h>

struct due_doc {
	enum due_format format;
	GString *text;
	struct csv_out *csv;
	struct json_out *json;
};

struct due_doc *
due_doc_new(enum due_format format)
{
	static const char *const header[] = { "boat", "task", "title", "fitting", "when",  "by",     "due",	"early",
					      "late", "past", "share", "fails",	  "place", "limits", "last-done", "needs-off" };
	struct due_doc *doc = g_new0(struct due_doc, 1);
	struct sink sink;

	doc->format = format;
	doc->text = g_string_new(NULL);
	if (format == DUE_JSON) {
		doc->json = jsonout_new();
		return doc;
	}
	sink = sink_string(doc->text);
	doc->csv = csvout_new(&sink, NULL);
	for (guint i = 0; i < G_N_ELEMENTS(header); i++)
		csvout_text(doc->csv, header[i]);
	csvout_row(doc->csv);
	return doc;
}

static void
csv_line(struct csv_out *csv, const char *boat, const struct due_line *d)
{
	g_autoptr(GString) limits = g_string_new(NULL);
	char day[DAY_TEXT], share[16] = "";

	due_add_limits(limits, d);
	if (!isnan(d->out.share))
		g_snprintf(share, sizeof share, "%.4f", d->out.share);
	csvout_text(csv, boat);
	csvout_text(csv, d->name);
	csvout_text(csv, d->title);
	csvout_text(csv, d->path);
	csvout_word(csv, word_of(&words_opportunity, d->out.when));
	csvout_word(csv, day_iso(d->out.by, day));
	csvout_word(csv, day_iso(d->out.due, day));
	csvout_word(csv, day_iso(d->out.early, day));
	csvout_word(csv, day_iso(d->out.late, day));
	csvout_word(csv, d->out.past ? "yes" : "no");
	csvout_number(csv, share);
	csvout_word(csv, word_of(&words_consequence, d->in.consequence));
	csvout_word(csv, word_of(&words_workplace, d->in.place));
	csvout_text(csv, limits->str);
	csvout_word(csv, day_iso(d->in.since.day, day));
	csvout_text(csv, d->off);
	csvout_row(csv);
}

static void
json_limit(struct json_out *j, const struct due_line *d, const struct limit *m, const struct limit_out *u)
{
	gboolean hours = m->kind == LIMIT_HOURS || m->kind == LIMIT_FIRST_HOURS;
	g_autofree char *words = limit_words(m);
	double unit = hours ? 3600 : 1;
	gboolean counted = !hours || !d->no_hours; /* unknown is no nought */

	jsonout_open_object(j, NULL);
	jsonout_text(j, "limit", words);
	jsonout_text(j, "kind", word_of(&words_limit_kind, m->kind));
	jsonout_text(j, "unit", hours ? "h" : m->kind == LIMIT_MONTHS ? "days" : word_of(&words_limit_kind, m->kind));
	if (m->salt != NONE || m->salt_hours != NONE)
		jsonout_real(j, "salt-counts", hours ? (double)m->hours / (double)m->salt_hours
						     : (double)m->amount / (double)m->salt);
	jsonout_real(j, "used", counted ? u->raw / unit : NAN);
	jsonout_real(j, "rated", counted ? u->rated / unit : NAN);
	jsonout_real(j, "allowed", counted ? u->allowed / unit : NAN);
	jsonout_real(j, "share", u->share);
	jsonout_day(j, "due", u->due);
	jsonout_day(j, "early", u->early);
	jsonout_day(j, "late", u->late);
	jsonout_yes(j, "governs", u->governs);
	jsonout_text(j, "measured", m->measured);
	jsonout_text(j, "standing", word_of(&words_standing, m->standing));
	jsonout_text(j, "source", m->source);
	jsonout_close(j);
}

static void
json_members(struct json_out *j, const struct due_line *d)
{
	jsonout_text(j, "task", d->name);
	jsonout_text(j, "title", d->title);
	jsonout_text(j, "fitting", d->path);
	jsonout_text(j, "when", word_of(&words_opportunity, d->out.when));
	jsonout_day(j, "by", d->out.by);
	jsonout_day(j, "due", d->out.due);
	jsonout_day(j, "early", d->out.early);
	jsonout_day(j, "late", d->out.late);
	jsonout_yes(j, "past", d->out.past);
	jsonout_real(j, "share", d->out.share);
	jsonout_yes(j, "estimated", d->out.estimated);
	jsonout_yes(j, "misfit", d->out.misfit != MISFIT_NONE);
	jsonout_text(j, "fails", word_of(&words_consequence, d->in.consequence));
	jsonout_text(j, "place", word_of(&words_workplace, d->in.place));
	jsonout_text(j, "mechanism", word_of(&words_mechanism, d->in.mechanism));
	jsonout_int(j, "minutes", d->minutes);
	jsonout_day(j, "last-done", d->in.since.day);
	jsonout_text(j, "needs-off", d->off);
	jsonout_open_array(j, "limits");
	for (int i = 0; i < d->in.n_limits; i++)
		json_limit(j, d, &d->limit[i], &d->used[i]);
	jsonout_close(j);
	due_readings_json(j, d);
	due_found_json(j, d);
}

void
due_doc_add(struct due_doc *doc, const struct boat *boat, const struct due_list *l)
{
	if (doc->csv) {
		for (int i = 0; i < due_count(l); i++)
			csv_line(doc->csv, boat->name, due_at(l, i));
		return;
	}
	jsonout_next(doc->json);
	jsonout_text(doc->json, "boat", boat->name);
	jsonout_day(doc->json, "at", l->year.at);
	jsonout_day(doc->json, "launch", l->year.launch);
	jsonout_day(doc->json, "haul-out", l->year.haul_out);
	jsonout_open_array(doc->json, "tasks");
	for (int i = 0; i < due_count(l); i++) {
		jsonout_open_object(doc->json, NULL);
		json_members(doc->json, due_at(l, i));
		jsonout_close(doc->json);
	}
	jsonout_close(doc->json);
}

static void
json_text(struct json_out *j, GString *text)
{
	struct sink sink = sink_string(text);

	jsonout_write(j, &sink, TRUE, NULL);
	jsonout_free(j);
}

char *
due_doc_end(struct due_doc *doc)
{
	GString *text = doc->text;

	if (doc->csv)
		csvout_close(doc->csv, NULL);
	else
		json_text(doc->json, text);
	g_free(doc);
	return g_string_free(text, FALSE);
}

static void
json_rate(void *user, const struct wear_constant *c, double value)
{
	struct json_out *j = user;

	jsonout_open_object(j, NULL);
	jsonout_text(j, "name", c->key);
	jsonout_real(j, "value", value);
	jsonout_text(j, "unit", c->unit);
	jsonout_text(j, "standing", value == c->value ? c->standing : "owner");
	jsonout_text(j, "source", value == c->value ? c->source : "the rates of this logbook");
	jsonout_close(j);
}

char *
due_why_json(const struct due_list *l, const struct due_line *d)
{
	struct json_out *j = jsonout_new();
	g_autoptr(GArray) terms = due_terms(l, d);
	GString *text = g_string_new(NULL);

	jsonout_next(j);
	json_members(j, d);
	jsonout_day(j, "at", l->year.at);
	jsonout_real(j, "hours-a-day-ahead", d->no_hours ? (double)NAN : timeline_usage(l->timeline, d->in.engine) / 3600);
	jsonout_open_array(j, "exposure");
	for (guint i = 0; i < terms->len; i++) {
		const struct due_term *t = &((const struct due_term *)(const void *)terms->data)[i];

		jsonout_open_object(j, NULL);
		jsonout_text(j, "place", word_of(&words_stand, t->stand));
		jsonout_text(j, "water", t->water == WATER_COUNT ? NULL : word_of(&words_water, t->water));
		jsonout_int(j, "days", t->days);
		jsonout_yes(j, "salt-left-on", t->film);
		jsonout_yes(j, "rinsed", t->rinsed);
		jsonout_real(j, "coldest", t->coldest);
		jsonout_real(j, "warmest", t->warmest);
		jsonout_real(j, "rate", t->effective / (double)t->days);
		jsonout_yes(j, "assumed", t->assumed);
		jsonout_close(j);
	}
	jsonout_close(j);
	jsonout_open_array(j, "rates");
	due_rates_of(l, d->in.mechanism, json_rate, j);
	jsonout_close(j);
	json_text(j, text);
	return g_string_free(text, FALSE);
}
