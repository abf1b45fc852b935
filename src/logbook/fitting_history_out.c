/* The story of a fitting in words, and for other programs. */
#include "logbook/fitting_history.h"

#include "base/amount.h"
#include "base/date.h"
#include "exchange/csv_out.h"
#include "exchange/json.h"
#include "logbook/transfer.h"

#include <string.h>

const char *
fitting_event_word(enum fitting_event_kind kind)
{
	static const char *const word[FITTING_EVENTS] = {
		"design", "job",   "came-off", "noted", "taken-out", "fitted",	   "service",
		"proof",  "reading", "found",	 "mended", "let-pass", "passed-over",
	};

	return word[kind];
}

/* The slash before every other character. */
int
fitting_path_order(const char *a, const char *b)
{
	while (*a && *a == *b) {
		a++;
		b++;
	}
	return (*a == '/' ? 1 : (guchar)*a) - (*b == '/' ? 1 : (guchar)*b);
}

static void
add(GString *out, const char *before, const char *text)
{
	if (text && *text)
		g_string_append_printf(out, "%s%s", before, text);
}

static void
add_day(GString *out, const struct fitting_event *e)
{
	char day[16], from[16];

	if (e->date == NONE)
		g_string_append(out, "nobody knows when");
	else if (e->earliest != NONE)
		g_string_append_printf(out, "%s to %s", day_words(e->earliest, from), day_words(e->date, day));
	else
		g_string_append_printf(out, "%s%s", e->about ? "~" : "", day_words(e->date, day));
}

static void
add_until(GString *out, const char *before, const struct fitting_event *e)
{
	char day[16];

	if (e->until != NONE)
		g_string_append_printf(out, "%s%s", before, day_words(e->until, day));
}

/* "gimbal-bearing.grease" is told where the fitting is: what was done is enough. */
static void
add_task(GString *out, const struct fitting_event *e)
{
	const char *dot = strrchr(e->subject, '.');
	g_autofree char *work = g_strdelimit(g_strdup(dot ? dot + 1 : e->subject), "-", ' ');

	g_string_append_printf(out, ", %s", work);
}

static void
add_service(GString *out, const struct fitting_event *e)
{
	add_task(out, e);
	add(out, ": ", e->result);
	if (e->reading)
		g_string_append_printf(out, "; meter %s h", e->reading);
	add(out, "; seen: ", e->seen);
	add(out, "; proof: ", e->proof);
	if (e->unproved)
		g_string_append(out, "; no proof");
}

static void
add_reading(GString *out, const struct fitting_event *e)
{
	add(out, ", ", e->subject);
	add(out, " ", e->reading);
	add(out, ", ", e->result);
	add(out, "; ", e->seen);
	add(out, "; ", e->before);
}

static void
add_came_off(GString *out, const struct fitting_event *e)
{
	add(out, ", came off: ", e->subject);
	add(out, ", ", e->result);
	add(out, "; as found ", e->reading);
	add_until(out, "; back ", e);
	if (e->until == NONE)
		g_string_append(out, "; not back");
	add(out, "; ", e->seen);
}

/* What happened, from the comma after the day on. */
static void
add_what(GString *out, const struct fitting_event *e)
{
	switch (e->kind) {
	case EVENT_DESIGN:
		add(out, ", design put on record: ", e->result);
		add(out, ", ", e->before);
		break;
	case EVENT_JOB:
		add(out, ", job ", e->subject);
		add(out, ", ", e->result);
		add_until(out, " ", e);
		add(out, ": ", e->seen);
		break;
	case EVENT_CAME_OFF:
		add_came_off(out, e);
		break;
	case EVENT_NOTED:
		add(out, ", noted: ", e->subject);
		add(out, ", as found ", e->reading);
		add(out, "; ", e->seen);
		break;
	case EVENT_TAKEN_OUT:
		add(out, ", taken out: ", e->subject);
		break;
	case EVENT_FITTED:
		add(out, ", fitted: ", e->subject);
		add(out, "; ", e->seen);
		break;
	case EVENT_SERVICE:
		add_service(out, e);
		break;
	case EVENT_PROOF:
		add(out, ", proof ", e->result);
		add(out, ": ", e->subject);
		add(out, "; ", e->seen);
		break;
	case EVENT_READING:
		add_reading(out, e);
		break;
	case EVENT_FOUND:
		add(out, ", found: ", e->subject);
		add(out, "; ", e->result);
		add_until(out, ", to be mended by ", e);
		break;
	case EVENT_MENDED:
		add(out, ", mended: ", e->subject);
		add(out, "; left as ", e->seen);
		break;
	case EVENT_LET_PASS:
		add(out, ", let pass: ", e->subject);
		add(out, "; ", e->result);
		add_until(out, e->result ? " " : "; until ", e);
		add(out, "; because ", e->seen);
		break;
	case EVENT_PASSED_OVER:
		add_task(out, e);
		g_string_append(out, ": passed over");
		add(out, " at ", e->result);
		add(out, "; because ", e->seen);
		break;
	case FITTING_EVENTS:
		break;
	}
}

char *
fitting_event_words(const struct fitting_event *e, const struct fitting_tell *tell)
{
	GString *out = g_string_new(NULL);
	char money[MONEY_TEXT];

	add_day(out, e);
	add_what(out, e);
	add(out, "; ", e->who);
	if (e->cost != NONE && (!tell || !tell->without_costs)) {
		add(out, "; ", money_exact(e->cost, money));
		add(out, " ", e->currency);
	}
	if (!tell || !tell->without_remarks) {
		add(out, "; photos: ", e->photos);
		add(out, "; ", e->remark);
	}
	return g_string_free(out, FALSE);
}

enum { ABOUT = 3, UNPROVED = 8, COST = 13, COLUMNS = 18 };

static const char *const names[COLUMNS] = {
	"fitting", "date", "earliest", "about", "event",  "subject", "result", "until",    "unproved",
	"seen",	   "proof", "reading",	"before", "cost", "currency", "who",   "photos", "remark",
};

/* Borrowed texts; what is not known is NULL. */
struct cells {
	const char *text[COLUMNS];
	char date[DAY_TEXT], earliest[DAY_TEXT], until[DAY_TEXT], cost[MONEY_TEXT];
};

static const char *
day_or_null(gint64 day, char buf[DAY_TEXT])
{
	return day == NONE ? NULL : day_iso(day, buf);
}

static void
fill(struct book *b, const struct fitting_event *e, struct cells *c)
{
	const char *const text[COLUMNS] = {
		e->fitting == NONE ? NULL : book_name_of(b, RECORD_FITTING, e->fitting),
		day_or_null(e->date, c->date),
		day_or_null(e->earliest, c->earliest),
		e->about ? "yes" : "no",
		fitting_event_word(e->kind),
		e->subject,
		e->result,
		day_or_null(e->until, c->until),
		e->unproved ? "yes" : "no",
		e->seen,
		e->proof,
		e->reading,
		e->before,
		e->cost == NONE ? NULL : money_exact(e->cost, c->cost),
		e->currency,
		e->who,
		e->photos,
		e->remark,
	};

	memcpy(c->text, text, sizeof text);
}

static const struct fitting_event *
event_at(const GArray *events, guint i)
{
	return &((const struct fitting_event *)(const void *)events->data)[i];
}

char *
fitting_history_csv(struct book *b, const GArray *events, GError **err)
{
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);
	struct csv_out *csv = csvout_new(&sink, NULL);
	gboolean ok;

	csvout_names(csv, names, COLUMNS);
	for (guint k = 0; k < events->len; k++) {
		struct cells c;

		fill(b, event_at(events, k), &c);
		for (int i = 0; i < COLUMNS; i++)
			if (i == COST)
				csvout_number(csv, c.text[i] ? c.text[i] : "");
			else
				csvout_text(csv, c.text[i] && *c.text[i] ? c.text[i] : NULL);
		csvout_row(csv);
	}
	ok = csvout_close(csv, err);
	return g_string_free(text, !ok);
}

char *
fitting_history_json(struct book *b, const GArray *events, GError **err)
{
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);
	struct json_out *json = jsonout_new();
	gboolean ok;

	for (guint k = 0; k < events->len; k++) {
		const struct fitting_event *e = event_at(events, k);
		struct cells c;

		fill(b, e, &c);
		jsonout_next(json);
		for (int i = 0; i < COLUMNS; i++)
			if (i == UNPROVED || i == ABOUT)
				jsonout_yes(json, names[i], i == UNPROVED ? e->unproved : e->about);
			else
				jsonout_text(json, names[i], c.text[i] && *c.text[i] ? c.text[i] : NULL);
	}
	ok = jsonout_write(json, &sink, TRUE, err);
	jsonout_free(json);
	return g_string_free(text, !ok);
}
