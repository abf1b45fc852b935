/* Checking the rows of one kind of boat, whose references were resolved by reading them. */
#include "logbook/catalogue_inside.h"

#include "base/text.h"
#include "logbook/caution.h"
#include "logbook/readings.h"

#include <string.h>

enum { TITLE_COLUMNS = 72, DEEPEST = 12 };

/* What only the maker's manual may give: torque, pressure, quantity. */
#define FIGURE \
	"[0-9][0-9.,/ -]*(ft[- ]?lbs?|in[- ]?lbs?|lbs?[- ]?ft|N[·.]?m|kgf?m|psi|k?Pa|m?bar|inHg|mmHg|lit(re|er)s?|" \
	"[Ll]|m[lL]|quarts?|qts?|gallons?|gal|pints?|fl\\.? ?oz|oz|cc|mV)\\b"

struct checking {
	const struct catalogue *c;
	const struct catalogue_names *names;
	GPtrArray *problems;
	GRegex *figure, *path, *name;
};

static G_GNUC_PRINTF(5, 6) void
expect(const struct checking *k, gboolean holds, const struct catalogue_part *p, gint64 at, const char *format, ...)
{
	const struct catalogue_from *from = catalogue_row_from(p, at);
	g_autofree char *what = NULL;
	va_list args;

	if (holds)
		return;
	va_start(args, format);
	what = g_strdup_vprintf(format, args);
	va_end(args);
	catalogue_problem(k->problems, g_strdup_printf("%s:%d: %s", from->file, (int)from->line, what));
}

static gboolean
is_among(const char *words, const char *word)
{
	g_auto(GStrv) all = g_strsplit(words ? words : "", " ", -1);

	return g_strv_contains((const char *const *)all, word);
}

/* A text of the row, which may be absent. */
static void
check_text(const struct checking *k, const struct catalogue_part *p, gint64 at, const char *column, const char *text)
{
	g_autoptr(GMatchInfo) match = NULL;
	g_autofree char *found = NULL;

	if (text && g_regex_match(k->figure, text, 0, &match))
		found = g_match_info_fetch(match, 0);
	expect(k, !found, p, at, "%s: a figure that belongs to the manual: %s", column, found);
	expect(k, !text || (!g_ascii_isspace(*text) && !g_ascii_isspace(text[strlen(text) - 1])), p, at, "%s: blanks around",
	       column);
}

/* Fittings */

static gboolean
each_of(const struct checking *k, gint64 fitting)
{
	return module_for_each(catalogue_row_from(&k->c->fittings, fitting)->stand);
}

/* Of DESIGN=PATH the path. */
static const char *
path_of_way(const char *way)
{
	const char *is = strchr(way, '=');

	return is ? is + 1 : way;
}

/* A path that another fitting names: it is there, and on a boat with twins it is clear which is meant. */
static gint64
check_named(const struct checking *k, gint64 at, const char *column, const char *path)
{
	const struct catalogue_part *p = &k->c->fittings;
	gint64 there = catalogue_find(p, path);

	expect(k, there != NONE, p, at, "%s: no fitting has the path %s", column, path);
	expect(k, there == NONE || each_of(k, at) || !each_of(k, there), p, at,
	       "%s: %s stands once for every engine, and this does not", column, path);
	return there;
}

/* Whether what one needs off, whatever its design, and that in turn, is the other. */
static gboolean
leads_to(const struct checking *k, gint64 from, gint64 to, guint depth)
{
	const char *needs = catalogue_fitting(k->c, from)->needs_off;
	g_auto(GStrv) way = g_strsplit(needs ? needs : "", " ", -1);

	for (int i = 0; way[i] && depth < DEEPEST; i++) {
		gint64 off = catalogue_find(&k->c->fittings, path_of_way(way[i]));

		if (off == to || (off != NONE && leads_to(k, off, to, depth + 1)))
			return TRUE;
	}
	return FALSE;
}

/* One way in: the first for any design, each other for the one that it names. */
static void
check_way(const struct checking *k, gint64 at, const char *way, gboolean first)
{
	const struct catalogue_part *p = &k->c->fittings;
	const struct fitting *f = catalogue_fitting(k->c, at);
	const char *path = path_of_way(way);
	g_autofree char *design = g_strndup(way, path == way ? 0 : (gsize)(path - way - 1));
	gint64 off = check_named(k, at, "needs-off", path);

	expect(k, first ? path == way : path != way && is_among(f->variants, design), p, at,
	       "needs-off: a path, and after it DESIGN=PATH for a design of the fitting, not %s", way);
	if (off != NONE)
		expect(k, catalogue_fitting(k->c, off)->off_minutes != NONE, p, off,
		       "off-minutes: wanted, since %s needs it off", f->path);
}

/* What must come off first leads to something that needs nothing, in steps that end. */
static void
check_access(const struct checking *k, gint64 at)
{
	const struct catalogue_part *p = &k->c->fittings;
	const struct fitting *f = catalogue_fitting(k->c, at);
	g_auto(GStrv) with = g_strsplit(f->opens_with ? f->opens_with : "", " ", -1);
	g_auto(GStrv) way = g_strsplit(f->needs_off ? f->needs_off : "", " ", -1);

	for (int i = 0; way[i]; i++)
		check_way(k, at, way[i], i == 0);
	expect(k, !leads_to(k, at, at, 0), p, at, "needs-off goes round in a circle: %s needs %s off", f->path, f->needs_off);
	for (int i = 0; with[i]; i++) {
		gint64 there = check_named(k, at, "opens-with", with[i]);

		expect(k, there != at, p, at, "opens-with: %s names itself", f->path);
	}
}

static void
check_fitting(const struct checking *k, gint64 at)
{
	const struct catalogue_part *p = &k->c->fittings;
	const struct fitting *f = catalogue_fitting(k->c, at);
	const char *slash = strrchr(f->path, '/');
	g_autofree char *parent = slash ? g_strndup(f->path, (gsize)(slash - f->path)) : NULL;

	expect(k, g_regex_match(k->path, f->path, 0, NULL), p, at, "%s is no path: words joined by /", f->path);
	expect(k, !parent || catalogue_find(p, parent) != NONE, p, at, "%s: its parent is missing", f->path);
	expect(k, !f->variant, p, at, "variant: a catalogue can't know which one a boat has");
	expect(k, f->engine == NONE && f->retired == NONE, p, at, "engine and retired are each boat's own");
	expect(k, f->below_waterline != NONE && f->fuel != NONE && f->rubber != NONE, p, at,
	       "below-waterline, fuel and rubber are yes or no");
	check_text(k, p, at, "title", f->title);
	check_text(k, p, at, "remark", f->remark);
	check_access(k, at);
}

/* Tasks */

static void
check_words(const struct checking *k, gint64 at, const struct task *t)
{
	const struct catalogue_part *p = &k->c->tasks;
	const struct fitting *f = catalogue_fitting(k->c, t->fitting);
	g_auto(GStrv) caution = g_strsplit(t->caution ? t->caution : "", " ", -1);
	g_auto(GStrv) variant = g_strsplit(t->variants ? t->variants : "", " ", -1);

	for (int i = 0; caution[i]; i++)
		expect(k, !k->names->cautions || cautions_find(k->names->cautions, caution[i]), p, at,
		       "caution: none is called \"%s\"", caution[i]);
	for (int i = 0; variant[i]; i++)
		expect(k, is_among(f->variants, variant[i]), p, at, "variants: %s has no design \"%s\"", f->path, variant[i]);
	check_text(k, p, at, "title", t->title);
	check_text(k, p, at, "part", t->part);
	check_text(k, p, at, "proof", t->proof);
	check_text(k, p, at, "remark", t->remark);
}

static gboolean
same_title(const struct checking *k, gint64 at)
{
	for (gint64 i = 0; i < at; i++)
		if (!strcmp(catalogue_task(k->c, i)->title, catalogue_task(k->c, at)->title))
			return TRUE;
	return FALSE;
}

static void
check_task(const struct checking *k, gint64 at)
{
	const struct catalogue_part *p = &k->c->tasks;
	const struct task *t = catalogue_task(k->c, at);
	const char *path = catalogue_fitting(k->c, t->fitting)->path, *slash = strrchr(path, '/');
	g_autofree char *begin = g_strconcat(slash ? slash + 1 : path, ".", NULL);
	gboolean renews = t->rule == CLOCK_RENEWAL || t->rule == CLOCK_PRINTED;

	expect(k, g_regex_match(k->name, t->name, 0, NULL), p, at, "%s is no name: FITTING.WORK", t->name);
	expect(k, g_str_has_prefix(t->name, begin), p, at, "%s is not named after its fitting, %s", t->name, path);
	expect(k, text_width(t->title) <= TITLE_COLUMNS, p, at, "title: wider than %d columns", TITLE_COLUMNS);
	expect(k, !same_title(k, at), p, at, "title: another task has the same");
	expect(k, t->minutes != NONE && t->minutes > 0, p, at, "minutes: wanted");
	expect(k, t->proof != NULL, p, at, "proof: wanted: nothing proves it");
	expect(k, t->rule != CLOCK_PRINTED || t->mechanism == MECH_NONE, p, at,
	       "mechanism: a printed date knows no wear");
	expect(k, renews == (t->verb == word_index(&words_verb, "renew")), p, at, "verb and rule do not agree");
	expect(k, t->retired == NONE, p, at, "retired is each boat's own");
	check_words(k, at, t);
}

/* Limits */

/* The one column that a kind of limit fills. */
static gboolean
fills_its_column(const struct limit *m)
{
	gboolean amount = m->amount != NONE, hours = m->hours != NONE, event = m->event != NONE,
		 happening = m->happening != NONE;

	switch ((enum limit_kind)m->kind) {
	case LIMIT_HOURS:
	case LIMIT_FIRST_HOURS:
		return hours && !amount && !event && !happening;
	case LIMIT_MONTHS:
	case LIMIT_OUTINGS:
	case LIMIT_SEASONS:
		return amount && !hours && !event && !happening;
	case LIMIT_EVENT:
		return event && !amount && !hours && !happening;
	case LIMIT_HAPPENING:
		return happening && !amount && !hours && !event;
	case LIMIT_CONDITION:
		return !amount && !hours && !event && !happening;
	case LIMIT_KIND_COUNT:
		break;
	}
	return FALSE;
}

static gboolean
source_fits(const struct limit *m)
{
	switch ((enum standing)m->standing) {
	case STANDING_PUBLISHED:
		return g_str_has_prefix(m->source, "published: ") && strlen(m->source) > strlen("published: ");
	case STANDING_PRACTICE:
		return g_str_has_prefix(m->source, "common practice, no source");
	case STANDING_MEMORY:
		return g_str_has_prefix(m->source, "memory, not checked");
	case STANDING_MANUAL:
	case STANDING_OWNER:
	case STANDING_ASSUMPTION:
		break; /* no catalogue's to give */
	}
	return FALSE;
}

static gboolean
same_limit(const struct limit *a, const struct limit *b)
{
	return a->task == b->task && a->kind == b->kind && a->event == b->event && a->happening == b->happening
	    && !g_strcmp0(a->measured, b->measured);
}

static gboolean
is_reading(const struct checking *k, const char *what)
{
	return !k->names->readings || readings_find(k->names->readings, what);
}

static void
check_limit(const struct checking *k, gint64 at, gboolean *has_limit)
{
	const struct catalogue_part *p = &k->c->limits;
	const struct limit *m = catalogue_limit(k->c, at);
	const char *kind = word_of(&words_limit_kind, m->kind);
	gboolean twice = FALSE;

	has_limit[m->task] = TRUE;
	for (gint64 i = at - 1; i >= 0 && catalogue_limit(k->c, i)->task == m->task; i--)
		twice = twice || same_limit(catalogue_limit(k->c, i), m);
	expect(k, !twice, p, at, "%s: the same kind of limit twice: %s", catalogue_task(k->c, m->task)->name, kind);
	expect(k, fills_its_column(m), p, at, "%s: the columns filled are not those of its kind, %s",
	       catalogue_task(k->c, m->task)->name, kind);
	expect(k, !m->measured || (m->kind == LIMIT_CONDITION && is_reading(k, m->measured)), p, at,
	       "measured: a kind of reading, for a condition, not \"%s\"", m->measured);
	expect(k, m->salt == NONE || (m->amount != NONE && m->salt <= m->amount), p, at,
	       "salt: the shorter of two figures");
	expect(k, m->salt_hours == NONE || (m->hours != NONE && m->salt_hours <= m->hours), p, at,
	       "salt-hours: the shorter of two figures");
	expect(k, source_fits(m), p, at, "source and standing do not agree: %s is \"%s\"",
	       word_of(&words_standing, m->standing), m->source);
}

void
catalogue_check_rows(const struct catalogue *c, const struct catalogue_names *names, GPtrArray *problems)
{
	struct checking k = { c, names, problems, g_regex_new(FIGURE, 0, 0, NULL),
			      g_regex_new("^[a-z][a-z0-9-]*(/[a-z][a-z0-9-]*)*$", 0, 0, NULL),
			      g_regex_new("^[a-z0-9-]+\\.[a-z-]+$", 0, 0, NULL) };
	g_autofree gboolean *has_limit = g_new0(gboolean, c->tasks.rows->len);

	for (guint i = 0; i < c->fittings.rows->len; i++)
		check_fitting(&k, i);
	for (guint i = 0; i < c->limits.rows->len; i++)
		check_limit(&k, i, has_limit);
	for (guint i = 0; i < c->tasks.rows->len; i++) {
		check_task(&k, i);
		expect(&k, has_limit[i], &c->tasks, i, "%s has no limit", catalogue_task(c, i)->name);
	}
	g_regex_unref(k.figure);
	g_regex_unref(k.path);
	g_regex_unref(k.name);
}
