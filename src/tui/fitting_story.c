#include "tui/fitting_story.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/each.h"
#include "logbook/figure.h"
#include "logbook/finding.h"
#include "logbook/measure.h"
#include "logbook/units.h"
#include "logbook/variant.h"
#include "tui/reading_plot.h"

#include <math.h>
#include <string.h>

/* What comes off first follows from fitting to fitting; a ring of them ends here. */
enum { DEEPEST = 8 };

/* A section is a function of the story, which adds paragraphs to it; sections below lists them. */
struct story {
	const struct fitting_records *r;
	const struct fitting *f;
	const struct grid *g;
	int w;
	const GArray *whole; /* NULL: the services alone */
	GString *out;
};

static gint
by_tree(gconstpointer x, gconstpointer y)
{
	return fitting_path_order(((const struct fitting *)x)->path, ((const struct fitting *)y)->path);
}

gboolean
fitting_records_read(struct fitting_records *r, struct book *b, gint64 boat, const struct due_list *due, GError **err)
{
	struct fitting_records read = { .due = due, .units = book_units(b, boat) };
	const struct fitting_history_ask all = { boat, NONE, NULL, FALSE };

	if (!(read.fittings = book_records(b, RECORD_FITTING, boat, err)) || !(read.tasks = book_records(b, RECORD_TASK, boat, err))
	    || !(read.parts = book_records(b, RECORD_PART, boat, err))
	    || !(read.events = book_fitting_history(b, &all, err))
	    || !(read.readings = book_records(b, RECORD_MEASUREMENT, boat, err))
	    || !(read.bounds = book_records(b, RECORD_BOUND, boat, err)) || !(read.findings = book_findings(b, boat, TRUE, err))
	    || !(read.figures = book_records(b, RECORD_FIGURE, boat, err))) {
		fitting_records_clear(&read);
		return FALSE;
	}
	if (read.readings->len && !(read.kinds = book_readings(b, err))) {
		fitting_records_clear(&read);
		return FALSE;
	}
	g_array_sort(read.fittings, by_tree);
	fitting_records_clear(r);
	*r = read;
	return TRUE;
}

void
fitting_records_clear(struct fitting_records *r)
{
	GArray **all[] = { &r->fittings, &r->tasks, &r->parts, &r->events, &r->readings, &r->bounds, &r->findings, &r->figures };

	for (guint i = 0; i < G_N_ELEMENTS(all); i++)
		g_clear_pointer(all[i], g_array_unref);
}

char *
due_state(const struct due_line *d, enum style *style)
{
	if (d->out.past) {
		*style = STYLE_PAST;
		return g_strdup("past due");
	}
	*style = d->out.when <= OPP_MID_SEASON ? STYLE_SOON : STYLE_PLAIN;
	return g_strdelimit(g_strdup(word_of(&words_opportunity, d->out.when)), "-", ' ');
}

/* What is past due before all, and what nobody knows before what can wait. */
static int
urgency(const struct due_out *out)
{
	static const int of[OPPORTUNITY_COUNT] = {
		[OPP_NOW] = 1, [OPP_BEFORE_LAUNCH] = 2, [OPP_FIRST_DAY] = 3, [OPP_MID_SEASON] = 4, [OPP_THIS_SEASON] = 5,
		[OPP_LAY_UP] = 6, [OPP_NO_RECORD] = 7, [OPP_NEXT_SPRING] = 8, [OPP_LATER] = 9, [OPP_EACH_OUTING] = 10,
		[OPP_ON_CONDITION] = 11,
	};

	return out->past ? 0 : of[out->when];
}

char *
fitting_state(const struct fitting_records *r, const struct fitting *f, enum style *style)
{
	const struct due_line *worst = NULL;

	*style = STYLE_PLAIN;
	if (f->retired == 1)
		return g_strdup("not on this boat");
	for (int i = 0; i < due_count(r->due); i++) {
		const struct due_line *d = due_at(r->due, i);

		if (d->fitting_id == f->id && (!worst || urgency(&d->out) < urgency(&worst->out)))
			worst = d;
	}
	return worst ? due_state(worst, style) : g_strdup("");
}

static struct measure_limits
limits_on(const struct fitting_records *r, const struct condition_kind *kind, gint64 fitting)
{
	return measure_limits_of(kind, measure_bound_on(r->bounds, kind->what, fitting), r->units);
}

/* "60 %, stop: at 50 % or below"; of a value that the program does not know what was read alone. */
static char *
reading_words(const struct fitting_records *r, const struct measurement *m)
{
	const struct condition_kind *kind = readings_find(r->kinds, m->what);
	g_autofree char *verdict = NULL, *read = measure_read_words(kind, m->as_read, r->units);

	if (kind) {
		struct measure_limits l = limits_on(r, kind, m->fitting);
		struct condition_out judged;

		measure_judge(&l, m, &judged);
		verdict = measure_verdict(&l, &judged);
	}
	return g_strdup_printf("%s%s%s", read, verdict ? ", " : "", verdict ? verdict : "");
}

char *
fitting_reading(const struct fitting_records *r, const struct fitting *f)
{
	const struct measurement *last = NULL;
	char *words;

	for (EACH(struct measurement, m, r->readings))
		if (m->fitting == f->id)
			last = m;	/* they are in the order of their days */
	if (!last)
		return NULL;
	words = reading_words(r, last);
	words[strcspn(words, ":")] = '\0';
	return words;
}

static void
add(struct story *s, const char *before, const char *text)
{
	if (text && *text)
		g_string_append_printf(s->out, "%s%s", before, text);
}

static const struct fitting *
fitting_at(const struct fitting_records *r, const char *path)
{
	for (EACH(struct fitting, f, r->fittings))
		if (path && !strcmp(f->path, path))
			return f;
	return NULL;
}

/* "First off or open: drive unit (90 min), bell housing (60 min)", outermost first. */
static void
add_first_off(struct story *s)
{
	g_autoptr(GString) chain = g_string_new(NULL);
	const struct fitting *off = s->f;

	for (int i = 0; i < DEEPEST && (off = fitting_at(s->r, fitting_first_off(off))); i++) {
		g_autofree char *time = off->off_minutes == NONE ? g_strdup("")
								 : g_strdup_printf(" (%d min)", (int)off->off_minutes);
		g_autofree char *one = g_strdup_printf("%s%s%s", off->title, time, chain->len ? ", then " : "");

		g_string_prepend(chain, one);
	}
	if (chain->len)
		g_string_append_printf(s->out, "First off or open: %s\n", chain->str);
	else if (s->f->needs_off)
		g_string_append_printf(s->out, "First off or open: %s\n", fitting_first_off(s->f));
	if (s->f->off_minutes != NONE)
		g_string_append_printf(s->out, "Off or open, and back: %d min\n", (int)s->f->off_minutes);
}

static void
add_what(struct story *s)
{
	const struct fitting *f = s->f;
	g_auto(GStrv) design = g_strsplit(f->variants ? f->variants : "", " ", -1);
	g_autofree char *designs = g_strjoinv(", ", design);

	g_string_append_printf(s->out, "%s (%s)\n", f->title, f->path);
	if (f->retired == 1)
		g_string_append(s->out, "Not on this boat: its tasks rest. Del takes it on again.\n");
	if (f->variants)
		g_string_append_printf(s->out, "Design: %s; there are %s\n", f->variant ? f->variant : "nobody knows, e says it",
				       designs);
	else if (f->variant)
		g_string_append_printf(s->out, "Design: %s\n", f->variant);
	if (f->below_waterline == 1)
		g_string_append(s->out, "Below the waterline\n");
	if (f->fuel == 1)
		g_string_append(s->out, "Carries fuel\n");
	if (f->rubber == 1)
		g_string_append(s->out, "Of rubber\n");
	add_first_off(s);
	if (f->remark)
		g_string_append_printf(s->out, "%s\n", f->remark);
}

static void
add_part(struct story *s, const struct part *p)
{
	char fitted[16], made[16], removed[16];

	g_string_append_printf(s->out, "%s%s", p->removed == NONE ? "" : "Before: ", p->what ? p->what : "a part");
	add(s, ", ", p->number);
	add(s, "; fitted ", day_words(p->fitted, fitted));
	add(s, "; out since ", day_words(p->removed, removed));
	add(s, "; made ", day_words(p->made, made));
	add(s, "; ", p->remark);
	g_string_append_c(s->out, '\n');
}

/* What is in it now, and what was before. */
static void
add_parts(struct story *s)
{
	int n = 0;

	for (int gone = 0; gone <= 1; gone++)
		for (EACH(struct part, p, s->r->parts))
			if (p->fitting == s->f->id && (p->removed != NONE) == gone) {
				g_string_append(s->out, n++ ? "" : "\nFITTED\n");
				add_part(s, p);
			}
}

/* What the manuals say of it. */
static void
add_figures(struct story *s)
{
	int n = 0;

	for (EACH(struct figure, f, s->r->figures))
		if (f->fitting == s->f->id) {
			g_autofree char *words = figure_words(f);

			g_string_append_printf(s->out, "%s%s: %s (%s)", n++ ? "" : "\nFIGURES OF THE MANUAL\n", f->what, words,
					       f->source);
			add(s, "; ", f->remark);
			if (figure_against(s->r->figures, f))
				add(s, "; differs from ", figure_against(s->r->figures, f)->source);
			g_string_append_c(s->out, '\n');
		}
}

/* When, and each limit with whose word it is. */
static void
add_due(struct story *s, const struct due_line *d)
{
	const char *about = due_is_about(&d->out) ? "~" : "";
	enum style style;
	g_autofree char *state = due_state(d, &style);
	char day[16];

	g_string_append_printf(s->out, "%s: %s", d->title, state);
	if (d->out.due != NONE)
		g_string_append_printf(s->out, ", due %s%s", about, day_words(d->out.due, day));
	g_string_append_c(s->out, '\n');
	for (int i = 0; i < d->in.n_limits; i++) {
		g_autofree char *words = limit_words(&d->limit[i]), *source = limit_source(&d->limit[i]);

		g_string_append_printf(s->out, "  %s (%s)\n", words, source);
	}
}

static void
add_tasks(struct story *s)
{
	int n = 0;

	for (int i = 0; i < due_count(s->r->due); i++)
		if (due_at(s->r->due, i)->fitting_id == s->f->id) {
			g_string_append(s->out, n++ ? "" : "\nWORK\n");
			add_due(s, due_at(s->r->due, i));
		}
	for (EACH(struct task, t, s->r->tasks))
		if (t->fitting == s->f->id && !due_find(s->r->due, t->id))
			g_string_append_printf(s->out, "%s%s: %s\n", n++ ? "" : "\nWORK\n", t->title,
					       t->retired == 1	    ? "not wanted"
					       : s->f->retired == 1 ? "rests"
								    : "of another design");
}

/* What is open first, the worst of it before all. */
static void
add_findings(struct story *s)
{
	char day[16], mended[16];
	int n = 0;

	for (EACH(struct finding, f, s->r->findings)) {
		if (f->fitting != s->f->id)
			continue;
		g_string_append_printf(s->out, "%s%s, %s: %s", n++ ? "" : "\nFOUND\n", day_words(f->date, day),
				       f->mended == NONE ? word_of(&words_level, f->level) : "mended", f->words);
		add(s, "; makes due ", f->mended == NONE ? f->makes_due : NULL);
		add(s, "; put right ", day_words(f->mended, mended));
		add(s, ", left as ", f->left_as);
		g_string_append_c(s->out, '\n');
	}
}

static void
add_event(struct story *s, const struct fitting_event *e, const char *heading)
{
	g_autofree char *words = fitting_event_words(e, NULL);

	g_string_append_printf(s->out, "%s%s\n", heading, words);
}

/* Services, newest first; or all that ever was, as it came. */
static void
add_done(struct story *s)
{
	const GArray *events = s->whole ? s->whole : s->r->events;
	int told = 0;

	for (guint k = 0; k < events->len; k++) {
		guint i = s->whole ? k : events->len - 1 - k;
		const struct fitting_event *e = &((const struct fitting_event *)(const void *)events->data)[i];

		if (s->whole)
			add_event(s, e, told++ ? "" : "\nTHE WHOLE STORY\n");
		else if (e->fitting == s->f->id && e->kind == EVENT_SERVICE)
			add_event(s, e, told++ ? "" : "\nDONE\n");
	}
}

static void
add_drawn(struct story *s, const GArray *points, const struct measure_limits *l)
{
	struct grid *g = grid_new(PLOT_ROWS, CLAMP(s->w, 0, PLOT_MOST_W), s->g->ascii);
	struct area a = grid_area(g);
	g_autofree char *drawn = NULL;

	plot_draw(&a, points, l);
	drawn = grid_text(g);
	g_string_append(s->out, drawn);
	grid_free(g);
}

static void
add_plot(struct story *s, const struct measure_limits *l)
{
	g_autoptr(GArray) points = g_array_new(FALSE, FALSE, sizeof(struct plot_point));

	for (EACH(struct measurement, m, s->r->readings)) {
		struct condition_out judged = { .value = NAN };
		struct plot_point p = { m->date, NAN };

		if (m->fitting == s->f->id && !strcmp(m->what, l->kind->what))
			measure_judge(l, m, &judged);
		p.value = judged.value;
		if (!isnan(p.value))
			g_array_append_val(points, p);
	}
	if (plot_is_worth_it(points))
		add_drawn(s, points, l);
}

/* All readings of one value, newest first, under their limits and their plot. */
static void
add_readings_of(struct story *s, const char *what)
{
	const struct condition_kind *kind = readings_find(s->r->kinds, what);
	const GArray *all = s->r->readings;
	const struct measurement *before;
	char day[16];

	g_string_append_printf(s->out, "\nMEASURED: %s\n", what);
	if (kind) {
		struct measure_limits l = limits_on(s->r, kind, s->f->id);
		g_autofree char *bands = measure_bands(&l), *source = measure_source(&l);

		g_string_append_printf(s->out, "Limits: %s (%s)\n", bands, source);
		add_plot(s, &l);
	}
	for (guint i = s->whole ? 0 : all->len; i-- > 0;) { /* the whole story has them too */
		const struct measurement *m = &((const struct measurement *)(const void *)all->data)[i];
		g_autofree char *words = NULL;

		if (m->fitting != s->f->id || strcmp(m->what, what))
			continue;
		words = reading_words(s->r, m);
		g_string_append_printf(s->out, "%s: %s", day_words(m->date, day), words);
		add(s, "; ", m->method);
		if ((before = measure_before(all, m)) && measure_another_way(m, before))
			add(s, "; ", "read another way than before: not compared");
		add(s, "; ", m->remark);
		g_string_append_c(s->out, '\n');
	}
}

static void
add_readings(struct story *s)
{
	g_autoptr(GPtrArray) told = g_ptr_array_new();

	for (EACH(struct measurement, m, s->r->readings))
		if (m->fitting == s->f->id && !g_ptr_array_find_with_equal_func(told, m->what, g_str_equal, NULL)) {
			g_ptr_array_add(told, m->what);
			add_readings_of(s, m->what);
		}
}

char *
fitting_story(const struct fitting_records *r, const struct fitting *f, const struct grid *g, int w, const GArray *whole)
{
	static void (*const sections[])(struct story *) = {
		add_what, add_findings, add_parts, add_figures, add_tasks, add_readings, add_done,
	};
	struct story s = { r, f, g, w, whole, g_string_new(NULL) };

	for (guint i = 0; i < G_N_ELEMENTS(sections); i++)
		sections[i](&s);
	return g_string_free(s.out, FALSE);
}
