/* A new logbook, or one more boat: only what must be known is asked. */
#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/found.h"
#include "logbook/page.h"
#include "tui/app.h"
#include "tui/form.h"

#include <glib/gstdio.h>
#include <string.h>

/* A boat that is in all the year; days of the year as month * 100 + day. */
enum { NEW_YEAR = 101, YEARS_END = 1231, BUILT_FIRST = 1800 };

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	static const char first[] = "A new logbook. What nobody knows is left empty: that is not zero.";

	(void)err;
	f->heading = g_strdup(a->book ? "One more boat in this logbook." : first);
	form_add(f, "name", "Boat's name", "as you call it", NULL);
	form_add_choice(f, "kind", "Kind", &words_boat_kind, KIND_PETROL_STERNDRIVE, FALSE);
	form_add_choice(f, "berth", "Lies in season", &words_stand, STAND_TRAILER, FALSE);
	form_add_choice(f, "winter", "And in winter", &words_stand, STAND_ROOF, FALSE);
	form_add_choice(f, "water", "Usual water", &words_water, WATER_FRESH, FALSE);
	form_add(f, "launch", "Goes in about", "a day of the year: 15 apr; empty, like the next: in all the year", "04-15");
	form_add(f, "haul-out", "Comes out about", "15 oct; empty, like the one before: in all the year", "10-15");
	form_add(f, "engines", "Engines", "one name each: main; port starboard", "main");
	form_add(f, "meter", "Meters show", "now, in that order: 412.0; 412.0 398.5; none where there is no meter", NULL);
	form_add(f, "hours", "Hours run", "only where the meters do not say so, in that order; unknown is allowed", NULL);
	form_add(f, "built", "Built", "the year; empty: unknown", NULL);
	form_add_choice(f, "bought", "Bought", &words_bought, NONE, TRUE);
	form_add(f, "fuel", "Fuel", "petrol or diesel, where the kind comes with both; empty: the usual", NULL);
	form_add(f, "with", "Also has", "trailer; of a sailing boat: shaft or saildrive; empty: not known", NULL);
	return TRUE;
}

/* The i-th of the words of a field; NULL. */
static const char *
nth(char **words, int i)
{
	return i < (int)g_strv_length(words) ? words[i] : NULL;
}

/* Figures in the order of the engines; what is not known keeps its place by a word. */
static void
read_amount(struct form *f, const char *name, const char *text, gint64 *value)
{
	static const char *const nothing[] = { "?", "-", "none", "unknown", NULL };
	GError *err = NULL;

	if (text && !g_strv_contains(nothing, text) && !hours_parse(text, value, &err))
		form_wrong(f, name, &err);
}

/* The words of a field, between blanks; a comma within one may be a decimal's. */
static char **
words_of(const struct form *f, const char *name)
{
	g_auto(GStrv) all = g_strsplit_set(form_text(f, name), " ;", -1);
	g_autoptr(GStrvBuilder) words = g_strv_builder_new();

	for (int i = 0; all[i]; i++) {
		if (g_str_has_suffix(all[i], ","))
			all[i][strlen(all[i]) - 1] = '\0';
		if (*all[i])
			g_strv_builder_add(words, all[i]);
	}
	return g_strv_builder_end(words);
}

static void
check_engines(struct form *f, const struct new_boat *n, guint engines)
{
	GError *err = NULL;

	if (!n->n_engines || engines > MAX_ENGINES)
		err_set(&err, ERR_INPUT, "a name for each engine, at most %d: main; port starboard", MAX_ENGINES);
	for (int i = 1; !err && i < n->n_engines; i++)
		for (int k = 0; !err && k < i; k++)
			if (n->engine[i].name == n->engine[k].name)
				err_set(&err, ERR_INPUT, "two engines are called %s", n->engine[i].name);
	form_wrong(f, "engines", &err);
}

static void
read_engines(struct form *f, struct new_boat *n)
{
	g_auto(GStrv) engine = words_of(f, "engines"), meter = words_of(f, "meter"), hours = words_of(f, "hours");
	GError *err = NULL;

	for (int i = 0; engine[i] && i < MAX_ENGINES; i++) {
		struct new_engine *e = &n->engine[n->n_engines++];

		*e = (struct new_engine) { g_intern_string(engine[i]), NONE, NONE, FALSE };
		read_amount(f, "meter", nth(meter, i), &e->reading);
		read_amount(f, "hours", nth(hours, i), &e->hours);
	}
	check_engines(f, n, g_strv_length(engine));
	if (g_strv_length(meter) > g_strv_length(engine))
		err_set(&err, ERR_INPUT, "more readings than engines");
	form_wrong(f, "meter", &err);
	if (g_strv_length(hours) > g_strv_length(engine))
		err_set(&err, ERR_INPUT, "more figures than engines");
	form_wrong(f, "hours", &err);
}

static void
read_day(struct form *f, const char *name, gint64 *day)
{
	GError *err = NULL;

	if (*form_text(f, name) && !yearday_parse(form_text(f, name), day, &err))
		form_wrong(f, name, &err);
}

/* Both days, or neither: then it is in from the year's first day to its last, wherever that is in season. */
static void
read_year(struct form *f, struct boat *b)
{
	GError *err = NULL;

	read_day(f, "launch", &b->launch);
	read_day(f, "haul-out", &b->haul_out);
	if (!*form_text(f, "launch") && !*form_text(f, "haul-out")) {
		b->launch = NEW_YEAR;
		b->haul_out = YEARS_END;
		b->winter = b->berth;
	} else if (!*form_text(f, "launch") || !*form_text(f, "haul-out")) {
		err_set(&err, ERR_INPUT, "both days, or neither when it is in all the year");
		form_wrong(f, *form_text(f, "launch") ? "haul-out" : "launch", &err);
	} else if (b->launch != NONE && b->launch == b->haul_out) {
		err_set(&err, ERR_INPUT, "it can't go in and come out on the same day");
		form_wrong(f, "haul-out", &err);
	}
}

static void
read_built(struct app *a, struct form *f, struct boat *b)
{
	const char *text = form_text(f, "built");
	int year, month, day;
	GError *err = NULL;

	day_to_ymd(app_today(a), &year, &month, &day);
	if (*text && count_parse(text, &b->built, &err) && (b->built < BUILT_FIRST || b->built > year))
		err_set(&err, ERR_INPUT, "a year from %d to %d", BUILT_FIRST, year);
	form_wrong(f, "built", &err);
}

static void
read_name(struct app *a, struct form *f, struct boat *b)
{
	g_autoptr(GArray) boats = a->book ? book_boats(a->book, NULL) : NULL;
	GError *err = NULL;

	b->name = g_strstrip(g_strdup(form_text(f, "name")));
	if (!*b->name)
		err_set(&err, ERR_INPUT, "a boat wants a name");
	for (guint i = 0; boats && !err && i < boats->len; i++)
		if (!strcmp(((const struct boat *)(const void *)boats->data)[i].name, b->name))
			err_set(&err, ERR_INPUT, "this logbook has a %s already", b->name);
	form_wrong(f, "name", &err);
}

/* Clear n->boat. */
static void
read_form(struct app *a, struct form *f, struct new_boat *n)
{
	*n = (struct new_boat) { 0 };
	record_init(RECORD_BOAT, &n->boat);
	read_name(a, f, &n->boat);
	n->boat.kind = form_word(f, "kind");
	n->boat.berth = form_word(f, "berth");
	n->boat.winter = form_word(f, "winter");
	n->boat.water = form_word(f, "water");
	n->from_builder = form_word(f, "bought") == BOUGHT_NEW;
	n->used = form_word(f, "bought") == BOUGHT_USED;
	read_year(f, &n->boat);
	read_built(a, f, &n->boat);
	read_engines(f, n);
}

/* "main 412 h", "port unknown hours" */
static void
add_engine_words(GString *out, const struct new_engine *e)
{
	gint64 hours = e->hours == NONE ? e->reading : e->hours;
	char h[HOURS_TEXT];

	if (hours == NONE)
		g_string_append_printf(out, "; %s, hours unknown", e->name);
	else
		g_string_append_printf(out, "; %s %s h", e->name, hours_words(hours, h));
	if (e->reading == NONE)
		g_string_append(out, ", no meter");
	else if (e->hours != NONE)
		g_string_append_printf(out, ", its meter at %s h", hours_words(e->reading, h));
}

static char *
check(struct app *a, struct form *f)
{
	GString *out = g_string_new(NULL);
	struct new_boat n;
	struct boat *b = &n.boat;

	read_form(a, f, &n);
	g_string_append_printf(out, "%s: %s, %s in %s water", *b->name ? b->name : "?", word_of(&words_boat_kind, b->kind),
			       word_of(&words_stand, b->berth), word_of(&words_water, b->water));
	if (b->launch == NEW_YEAR && b->haul_out == YEARS_END)
		g_string_append(out, " all the year");
	for (int i = 0; i < n.n_engines; i++)
		add_engine_words(out, &n.engine[i]);
	record_clear(RECORD_BOAT, b);
	return g_string_free(g_string_append_c(out, '.'), FALSE);
}

/* The book that is open, or a new one. */
static gboolean
have_book(struct app *a, GError **err)
{
	if (a->book)
		return TRUE;
	if (a->start.folder)
		g_mkdir_with_parents(a->start.folder, 0700);
	a->book = book_create(a->start.file, &a->start.who, err);
	return a->book != NULL;
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	g_autofree char *catalogue = g_build_filename(a->start.data, "catalogue", NULL);
	g_auto(GStrv) with = NULL;
	gboolean made = !a->book, ok = have_book(a, err);
	struct new_boat n;

	if (!ok)
		return FALSE;
	read_form(a, f, &n);
	n.catalogue = catalogue;
	with = words_of(f, "with");
	n.said.with = with;
	n.said.fuel = *form_text(f, "fuel") ? form_text(f, "fuel") : NULL;
	ok = book_add_boat(a->book, &n, err);
	if (ok) {
		a->boat.id = n.boat.id;
		if (n.given.tasks)
			app_say(a, STYLE_STRONG, "%s: %d tasks on %d fittings; what nobody knows stands under SURVEY", n.boat.name,
				n.given.tasks, n.given.fittings);
		else
			app_say(a, STYLE_STRONG, "%s: no catalogue is shipped for this kind yet; 6, the plan, adds tasks",
				n.boat.name);
	} else if (made) {
		g_clear_pointer(&a->book, book_close);
		g_remove(a->start.file);
	}
	record_clear(RECORD_BOAT, &n.boat);
	return ok;
}

const struct form_kind form_new = {
	.name = "new", .title = "A boat", .button = "Enter makes it", .begin = begin, .check = check, .save = save,
};
