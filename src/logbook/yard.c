#include "logbook/yard.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "exchange/yard_csv.h"
#include "logbook/inside.h"
#include "logbook/out_file.h"
#include "logbook/outing.h"

#include <string.h>

/* What every line of one sheet says alike. */
struct sheet_head {
	const struct boat *boat;
	const struct due_list *list;
	const struct yard_form *form;
	const char *engine; /* the only engine's name; NULL when there are several */
	char hours[HOURS_TEXT];
	const char *basis;
};

static void
set(struct yard_line *line, enum yard_column c, const char *text)
{
	g_free(line->cell[c]);
	line->cell[c] = text && *text ? g_strdup(text) : NULL;
}

static void
set_day(struct yard_line *line, enum yard_column c, gint64 day)
{
	char buf[DAY_TEXT];

	set(line, c, day == NONE ? NULL : day_iso(day, buf));
}

/* The yard's words: do not launch, fix this season, watch. */
static const char *
severity(const struct due_line *d)
{
	if (d->in.consequence <= COST_HURTS && (d->out.past || d->out.when == OPP_NOW || d->out.when == OPP_NO_RECORD))
		return "DNL";
	return d->out.past || d->in.consequence <= COST_STRANDS ? "FTS" : "WATCH";
}

static int
priority(const struct due_line *d)
{
	if (d->out.when == OPP_NOW || d->out.when == OPP_BEFORE_LAUNCH || !strcmp(severity(d), "DNL"))
		return 1;
	return d->out.when <= OPP_LAY_UP ? 2 : 3;
}

static const char *
action(const struct due_line *d)
{
	static const char *const words[] = { "inspect", "test", "measure", "grease", "change", "replace", "adjust" };

	return words[d->verb];
}

static const char *
place_words(enum workplace p)
{
	static const char *const words[] = { "any", "out", "on water supply", "afloat", "shop" };

	return words[p];
}

static void
say_boat(const struct sheet_head *s, struct yard_line *line)
{
	g_autofree char *year = s->boat->built == NONE ? NULL : g_strdup_printf("%d", (int)s->boat->built);

	if (!s->form->without_names)
		set(line, YARD_BOAT_NAME, s->boat->name);
	set(line, YARD_YEAR, year);
	set(line, YARD_BERTH_OR_TRAILER, word_of(&words_stand, s->boat->berth));
	set(line, YARD_KEPT, word_of(&words_stand, s->boat->berth));
	set(line, YARD_WATER, word_of(&words_water, s->boat->water));
	set(line, YARD_ENGINE_POSITION, s->engine ? "single" : "see description");
	set(line, YARD_ENGINE_HOURS, *s->hours ? s->hours : "unknown");
	set(line, YARD_HOURS_BASIS, s->basis);
}

static void
say_work(const struct due_line *d, struct yard_line *line)
{
	g_autofree char *estimate = d->minutes == NONE ? NULL : g_strdup_printf("%.1f", (double)d->minutes / 60);
	g_autofree char *text =
		d->off ? g_strdup_printf("%s (first off or open: %s)", d->title, d->off) : g_strdup(d->title);
	char number[8];

	g_snprintf(number, sizeof number, "%d", priority(d));
	set(line, YARD_COMPONENT_PATH, d->path);
	set(line, YARD_SIDE, "n/a");
	set(line, YARD_ACTION, action(d));
	set(line, YARD_DESCRIPTION, text);
	set(line, YARD_SEVERITY, severity(d));
	set(line, YARD_PRIORITY, number);
	set(line, YARD_PARTS_SUPPLIED_BY, d->part ? "yard" : "none");
	set(line, YARD_PART_DESC, d->part);
	set(line, YARD_ESTIMATE_HOURS, estimate);
	set(line, YARD_COST_LIMIT, "0");
	set(line, YARD_AUTHORISATION, "quote only");
	set(line, YARD_PLACE_NEEDED, place_words(d->in.place));
	set(line, YARD_VERIFICATION_WANTED, d->proof);
	set(line, YARD_TORQUE_OR_SPEC_SOURCE, "maker's manual");
	set(line, YARD_CAUTION, d->caution);
}

static void
say_when(const struct sheet_head *s, const struct due_line *d, struct yard_line *line)
{
	const struct due_year *y = due_year(s->list);
	gint64 by = d->out.by == NONE ? y->launch : d->out.by;

	set_day(line, YARD_DATE_LISTED, y->at);
	set_day(line, YARD_NEEDED_BY, by);
	set(line, YARD_SEASON_EVENT, word_of(&words_opportunity, d->out.when));
	set_day(line, YARD_LAST_DONE_DATE, d->in.since.day);
	set(line, YARD_SOURCE,
	    d->in.since.day == NONE ? "no record"
	    : d->in.since.estimated ? "log, estimated"
				    : "log");
}

/* What is handed over without being named: what is wanted by a day, else before the launch; and what can sink, burn
 * or hurt and nobody knows of. */
static gboolean
wanted(const struct yard_form *form, const struct due_line *d)
{
	if (form->tasks)
		return g_strv_contains((const char *const *)form->tasks, d->name);
	if (d->out.when == OPP_NO_RECORD)
		return d->in.consequence <= COST_HURTS;
	return form->ask.until != NONE || d->out.when == OPP_NOW || d->out.when == OPP_BEFORE_LAUNCH ||
	       d->out.when == OPP_FIRST_DAY || d->out.when == OPP_MID_SEASON;
}

static gboolean
write_lines(const struct sheet_head *s, struct csv_out *csv, int *lines)
{
	gboolean ok = TRUE;

	*lines = 0;
	yard_csv_header(csv);
	for (int i = 0; ok && i < due_count(s->list); i++) {
		const struct due_line *d = due_at(s->list, i);
		struct yard_line line = { { NULL } };
		g_autofree char *id = NULL, *number = NULL;

		if (!wanted(s->form, d))
			continue;
		id = book_key_text(d->id);
		number = g_strdup_printf("%d", ++*lines);
		set(&line, YARD_ID, id);
		set(&line, YARD_LINE_NO, number);
		say_boat(s, &line);
		say_work(d, &line);
		say_when(s, d, &line);
		ok = yard_csv_line(csv, &line);
		yard_line_clear(&line);
	}
	return ok;
}

static gboolean
engine_hours(struct book *b, struct sheet_head *s, GError **err)
{
	g_autoptr(GArray) engines = book_records(b, RECORD_ENGINE, s->boat->id, err);
	const struct engine *e = engines ? (const void *)engines->data : NULL;
	struct engine_hours hours;

	s->basis = "unknown";
	if (!engines || engines->len != 1)
		return engines != NULL;
	s->engine = g_intern_string(e->name);
	if (!book_engine_hours(b, e, due_year(s->list)->at, &hours, err))
		return FALSE;
	if (hours.total != NONE) {
		hours_words(hours.total, s->hours);
		s->basis = hours.estimated ? "estimated" : "meter";
	}
	return TRUE;
}

static gboolean
check_names(const struct due_list *l, char **tasks, GError **err)
{
	for (int k = 0; tasks && tasks[k]; k++) {
		int i = 0;

		while (i < due_count(l) && strcmp(due_at(l, i)->name, tasks[k]))
			i++;
		if (i == due_count(l))
			return err_set(err, ERR_NOT_FOUND, "no task is called \"%.60s\": splitpin plan lists them",
				       tasks[k]);
	}
	return TRUE;
}

gboolean
book_yard(struct book *b, const struct boat *boat, const struct yard_form *form, int *lines, GError **err)
{
	struct due_list *l = due_list_new();
	struct sheet_head s = { .boat = boat, .list = l, .form = form };
	struct csv_out_how how = { 0, FALSE, form->for_spreadsheet };
	struct out_file f;
	gboolean ok = book_due(b, boat, &form->ask, l, err) && check_names(l, form->tasks, err)
		   && engine_hours(b, &s, err) && out_file_open(&f, form->path, form->stream, err);

	if (ok) {
		struct sink sink = sink_file(f.stream);
		struct csv_out *csv = csvout_new(&sink, &how);

		ok = write_lines(&s, csv, lines);
		ok = csvout_close(csv, err) && ok;
		ok = out_file_close(&f, ok, err);
	}
	due_list_free(l);
	return ok;
}
