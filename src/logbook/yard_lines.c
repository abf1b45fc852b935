/* What a line of the yard sheet says. */
#include "logbook/yard_inside.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/text.h"
#include "logbook/caution.h"
#include "logbook/photo.h"

#include <string.h>

static void
set(struct yard_item *item, enum yard_column c, const char *text)
{
	g_free(item->cells.cell[c]);
	item->cells.cell[c] = text && *text ? g_strdup(text) : NULL;
}

static void
set_day(struct yard_item *item, enum yard_column c, gint64 day)
{
	char buf[DAY_TEXT];

	set(item, c, day == NONE ? NULL : day_iso(day, buf));
}

static void
set_number(struct yard_item *item, enum yard_column c, gint64 n)
{
	g_autofree char *text = n == NONE ? NULL : g_strdup_printf("%" G_GINT64_FORMAT, n);

	set(item, c, text);
}

/* The yard's words: do not launch, fix this season, watch. */
static const char *
severity_word(enum yard_severity s)
{
	static const char *const words[] = { "DNL", "FTS", "WATCH" };

	return words[s];
}

static enum yard_severity
severity_of(const struct due_line *d)
{
	if (d->in.consequence <= COST_HURTS && (d->out.past || d->out.when == OPP_NOW || d->out.when == OPP_NO_RECORD))
		return YARD_HOLDS;
	return d->out.past || d->in.consequence <= COST_STRANDS ? YARD_MENDS : YARD_WATCHES;
}

static int
priority(const struct due_line *d)
{
	if (d->out.when == OPP_NOW || d->out.when == OPP_BEFORE_LAUNCH || severity_of(d) == YARD_HOLDS)
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

/* What the path says of a twin: its engine, and its side. */
static void
say_side(const struct yard_list *y, struct yard_item *item, const char *path)
{
	const char *engine = y->one_engine ? "single" : "see description", *side = "n/a";

	if (g_str_has_prefix(path, "port/")) {
		engine = "port";
		side = "P";
	} else if (g_str_has_prefix(path, "starboard/")) {
		engine = "starboard";
		side = "S";
	}
	set(item, YARD_ENGINE_POSITION, engine);
	set(item, YARD_SIDE, side);
	set(item, YARD_COMPONENT_PATH, path);
}

/* What a line is without knowing more: to be quoted, at no cost. */
static void
say_boat(const struct yard_list *y, struct yard_item *item)
{
	if (!y->form->without_names)
		set(item, YARD_BOAT_NAME, y->boat->name);
	set_number(item, YARD_YEAR, y->boat->built);
	set(item, YARD_BERTH_OR_TRAILER, word_of(&words_stand, y->boat->berth));
	set(item, YARD_KEPT, word_of(&words_stand, y->boat->berth));
	set(item, YARD_WATER, word_of(&words_water, y->boat->water));
	set(item, YARD_ENGINE_HOURS, y->engine_hours ? y->engine_hours : "unknown");
	set(item, YARD_HOURS_BASIS, y->basis);
	set_day(item, YARD_DATE_LISTED, y->sheet.date);
	set(item, YARD_DONE_BY, word_of(&words_line_whose, item->line.whose));
	set(item, YARD_SEVERITY, severity_word(item->severity));
	set(item, YARD_COST_LIMIT, "0");
	set(item, YARD_AUTHORISATION, "quote only");
	set(item, YARD_TORQUE_OR_SPEC_SOURCE, "maker's manual");
}

static void
say_needed(const struct yard_list *y, struct yard_item *item, gint64 by)
{
	gint64 launch = due_year(y->due)->launch;

	set_day(item, YARD_NEEDED_BY, by == NONE ? launch : by);
	if (!item->cells.cell[YARD_NEEDED_BY])
		set(item, YARD_NEEDED_BY, "no date");
}

static void
say_caution(const struct yard_list *y, struct yard_item *item, const char *words)
{
	g_autofree char *text = words && *words ? caution_words(y->b, words) : NULL;

	item->cautions = g_strdup(words);
	set(item, YARD_CAUTION, text);
}

/* The engine's hours at the last work, where a limit by hours tells what it ran since. */
static void
say_hours_then(const struct yard_list *y, struct yard_item *item, const struct due_line *d)
{
	char buf[HOURS_TEXT];

	for (int k = 0; k < d->in.n_limits; k++)
		if (d->limit[k].kind == LIMIT_HOURS && y->seconds != NONE && d->in.since.day != NONE && !d->in.since.estimated
		    && d->used[k].raw >= 0 && d->used[k].raw <= (double)y->seconds)
			set(item, YARD_LAST_DONE_HOURS, hours_words(y->seconds - (gint64)d->used[k].raw, buf));
}

static void
say_last(const struct yard_list *y, struct yard_item *item, const struct due_line *d)
{
	char from[DAY_TEXT], to[DAY_TEXT];
	const struct baseline *s = &d->in.since;

	if (s->day != NONE && s->earliest != NONE) {
		g_autofree char *span = g_strdup_printf("%s..%s", day_iso(s->earliest, from), day_iso(s->day, to));

		set(item, YARD_LAST_DONE_DATE, span);
	} else {
		set_day(item, YARD_LAST_DONE_DATE, s->day);
	}
	say_hours_then(y, item, d);
	set(item, YARD_SOURCE, s->day == NONE ? "no record" : s->estimated ? "log, estimated" : "log");
}

/* The latest of the readings that the task goes by. */
static void
say_reading(struct yard_item *item, const struct due_line *d)
{
	const struct due_reading *r = NULL;

	for (int k = 0; k < d->n_readings; k++)
		if (!r || d->reading[k].date > r->date)
			r = &d->reading[k];
	if (!r)
		return;
	set(item, YARD_READING, r->as_read);
	set(item, YARD_UNIT, strpbrk(r->as_read, "0123456789") && !strpbrk(r->as_read, " %\"") ? r->kind->unit : NULL);
	set(item, YARD_METHOD, r->kind->what);
	set_day(item, YARD_DATE, r->date);
}

void
yard_say_task(const struct yard_list *y, struct yard_item *item)
{
	const struct due_line *d = due_at(y->due, item->due);
	g_autofree char *estimate = d->minutes == NONE ? NULL : g_strdup_printf("%.1f", (double)d->minutes / 60);
	g_autofree char *text = d->off ? g_strdup_printf("%s (first off or open: %s)", d->title, d->off) : g_strdup(d->title);

	item->severity = severity_of(d);
	say_boat(y, item);
	say_side(y, item, d->path);
	set(item, YARD_ACTION, action(d));
	set(item, YARD_DESCRIPTION, text);
	set_number(item, YARD_PRIORITY, priority(d));
	set(item, YARD_PARTS_SUPPLIED_BY, d->part ? "yard" : "none");
	set(item, YARD_PART_DESC, d->part);
	set(item, YARD_ESTIMATE_HOURS, estimate);
	set(item, YARD_PLACE_NEEDED, place_words(d->in.place));
	set(item, YARD_VERIFICATION_WANTED, d->proof);
	set(item, YARD_SEASON_EVENT, word_of(&words_opportunity, d->out.when));
	if (d->figures)
		set(item, YARD_TORQUE_OR_SPEC_SOURCE, d->figures);
	say_needed(y, item, d->out.by);
	say_last(y, item, d);
	say_reading(item, d);
	say_caution(y, item, d->caution);
}

static gboolean
say_measured(const struct yard_list *y, struct yard_item *item, const struct finding *f, GError **err)
{
	struct measurement m;
	gboolean ok = TRUE;

	set_day(item, YARD_DATE, f->date);
	if (f->measurement == NONE)
		return TRUE;
	record_init(RECORD_MEASUREMENT, &m);
	ok = row_get(y->b->db, RECORD_MEASUREMENT, f->measurement, &m, err);
	if (ok) {
		g_autofree char *method = g_strjoin("; ", m.what, m.method, NULL);

		set(item, YARD_READING, m.as_read);
		set(item, YARD_UNIT, m.as_read && strpbrk(m.as_read, " %\"") ? NULL : m.unit);
		set(item, YARD_METHOD, method);
		set_day(item, YARD_DATE, m.date);
	}
	record_clear(RECORD_MEASUREMENT, &m);
	return ok;
}

/* Their names alone: where they lie on the owner's disk is nobody's business. */
static gboolean
say_photos(const struct yard_list *y, struct yard_item *item, const struct finding *f, GError **err)
{
	g_autoptr(GArray) photos = book_photos(y->b, f->id, err);
	g_autoptr(GString) names = g_string_new(NULL);

	for (guint i = 0; photos && i < photos->len; i++) {
		g_autofree char *name = g_path_get_basename(((struct photo *)(void *)photos->data)[i].path);

		g_string_append_printf(names, "%s%s", names->len ? "; " : "", name);
	}
	set(item, YARD_PHOTO_FILE, names->str);
	return photos != NULL;
}

/* The cautions and the place that the work on its fitting needs; and what must be open. */
static void
say_fitting_work(const struct yard_list *y, struct yard_item *item, const struct finding *f)
{
	g_autoptr(GString) words = g_string_new(NULL);
	enum workplace place = WORK_ANYWHERE;

	for (int i = 0; i < due_count(y->due); i++) {
		const struct due_line *d = due_at(y->due, i);
		g_auto(GStrv) word = g_strsplit(d->caution ? d->caution : "", " ", -1);
		g_auto(GStrv) have = NULL;

		if (f->fitting == NONE || d->fitting_id != f->fitting)
			continue;
		have = g_strsplit(words->str, " ", -1);
		for (int k = 0; word[k]; k++)
			if (*word[k] && !g_strv_contains((const char *const *)have, word[k]))
				g_string_append_printf(words, "%s%s", words->len ? " " : "", word[k]);
		if (d->in.place == WORK_OUT || d->in.place == WORK_SHOP)
			place = d->in.place;
	}
	set(item, YARD_PLACE_NEEDED, place_words(place));
	say_caution(y, item, words->str);
}

gboolean
yard_say_finding(const struct yard_list *y, struct yard_item *item, const struct finding *f, GError **err)
{
	struct fitting fitting;
	gboolean ok;

	item->severity = (enum yard_severity)CLAMP(f->level, LEVEL_HOLD, LEVEL_WATCH);
	say_boat(y, item);
	record_init(RECORD_FITTING, &fitting);
	ok = f->fitting == NONE || row_get(y->b->db, RECORD_FITTING, f->fitting, &fitting, err);
	say_side(y, item, fitting.path ? fitting.path : "boat");
	record_clear(RECORD_FITTING, &fitting);
	set(item, YARD_ACTION, item->severity == YARD_WATCHES ? "inspect" : "repair");
	set(item, YARD_DESCRIPTION, f->words);
	set_number(item, YARD_PRIORITY, item->severity + 1);
	set(item, YARD_PARTS_SUPPLIED_BY, "yard");
	set(item, YARD_SEASON_EVENT,
	    item->severity == YARD_HOLDS ? word_of(&words_opportunity, OPP_BEFORE_LAUNCH) : NULL);
	set(item, YARD_SOURCE, "log");
	set(item, YARD_VERIFICATION_WANTED, "how it was left, as seen or measured");
	say_needed(y, item, f->until);
	say_fitting_work(y, item, f);
	return ok && say_measured(y, item, f, err) && say_photos(y, item, f, err);
}
