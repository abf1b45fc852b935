/* Log an outing in four keys: o, the hours or what the meter shows, Enter, Enter. */
#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/outing.h"
#include "logbook/page.h"
#include "logbook/place.h"
#include "tui/app.h"
#include "tui/form.h"

#include <string.h>

/* How far back a logged outing is looked for, to do as last time. */
enum { DAY_HOURS = 24 * 3600, LOOK_BACK = 20 };

static const char *const yes_no[] = { "no", "yes" };
static const struct words words_rinsed = { "rinsed", yes_no, 2 };
/* Fields have their engines' places as names. */
static const char *const engine_field[MAX_ENGINES] = { "engine0", "engine1", "engine2", "engine3", "engine4", "engine5" };

static GArray *
engines_of(struct app *a, GError **err)
{
	return book_records(a->book, RECORD_ENGINE, a->boat.id, err);
}

static const struct engine *
engine_at(const GArray *engines, int i)
{
	return &((const struct engine *)(const void *)engines->data)[i];
}

/* What that engine's field holds of the outing that is corrected: to the second, so that leaving it alone changes nothing. */
static char *
was_typed(const GArray *rows, gint64 engine)
{
	char h[HOURS_TEXT];

	for (guint i = 0; rows && i < rows->len; i++) {
		const struct outing *o = &((const struct outing *)(const void *)rows->data)[i];

		if (o->engine == engine && o->reading != NONE)
			return g_strdup_printf("m%s", hours_exact(o->reading, h));
		if (o->engine == engine)
			return g_strdup(hours_exact(o->hours, h));
	}
	return NULL;
}

static gboolean
add_engines(struct app *a, struct form *f, const GArray *rows, GError **err)
{
	g_autoptr(GArray) engines = engines_of(a, err);

	for (int i = 0; engines && i < MIN((int)engines->len, MAX_ENGINES); i++) {
		const struct engine *e = engine_at(engines, i);
		g_autofree char *typed = was_typed(rows, e->id);
		g_autofree char *label = engines->len > 1 ? g_strdup_printf("%s, hours", e->name) : g_strdup("Hours");

		form_add(f, engine_field[i], label, "2.4, 2h24, or what the meter shows; m8.0: surely the meter", typed);
	}
	return engines != NULL;
}

static void
add_rest(struct app *a, struct form *f, const struct outing *o)
{
	char day[DAY_TEXT];

	form_add(f, "date", "Date", form_date_hint,
		 day_iso(f->subject == NONE ? app_today(a) : o->date, day));
	form_add(f, "place", "Place", "where to; a known place lends its water", o->place);
	form_add_choice(f, "water", "Water", &words_water, o->water, TRUE);
	form_add_choice(f, "rinsed", "Rinsed after", &words_rinsed, f->subject == NONE ? NONE : o->rinsed, TRUE);
	form_add_remark(f, NULL, f->subject == NONE ? NULL : o->remark);
}

/* The outing whose place and water are tried first: the last one that somebody logged, its first engine's row. */
static const struct outing *
last_time(const GArray *newest)
{
	const struct outing *o = (const void *)newest->data;

	for (guint i = 0; i < newest->len; i++)
		if (o[i].trip == NONE && o[i].estimated != 1)
			return &o[i];
	return NULL;
}

static GArray *
newest_rows(struct app *a, GError **err)
{
	return book_outings_page(a->book, &(struct outings_page) { a->boat.id, NONE, NONE, 0, LOOK_BACK }, err);
}

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	gboolean anew = f->subject == NONE;
	g_autoptr(GArray) rows = anew ? newest_rows(a, err) : book_trip(a->book, f->subject, err);
	struct outing none;

	if (!rows || !add_engines(a, f, anew ? NULL : rows, err))
		return FALSE;
	record_init(RECORD_OUTING, &none);
	add_rest(a, f, !anew ? (const void *)rows->data : last_time(rows) ? last_time(rows) : &none);
	return TRUE;
}

/* Water that was not touched goes with the place: as last time there, else as is known of it, else as usual. */
static void
lend_water(struct app *a, struct form *f)
{
	struct form_field *water = &f->field[form_field(f, "water") - f->field];
	g_autoptr(GArray) newest = NULL;
	const struct outing *last;
	const char *place = form_text(f, "place");
	gint64 known = NONE;

	if (f->subject != NONE || water->touched || !form_field(f, "place")->touched || !(newest = newest_rows(a, NULL)))
		return;
	last = last_time(newest);
	if (last && !g_strcmp0(last->place, place))
		known = last->water;
	else if (*place)
		book_place_water(a->book, place, &known, NULL);
	if (form_word(f, "water") != known)
		edit_set(&water->edit, word_of(&words_water, known));
}

/* A reading, or hours: where both can be meant it is hours. */
static gboolean
read_share(const char *text, const struct engine *e, gint64 shown, struct outing_share *s, GError **err)
{
	gboolean surely = g_ascii_tolower(*text) == 'm' && g_ascii_isdigit(text[1]);
	gint64 value;

	*s = (struct outing_share) { g_intern_string(e->name), NONE, NONE };
	if (!hours_parse(text + surely, &value, err))
		return FALSE;
	if (surely && shown == NONE)
		return err_set(err, ERR_INPUT, "%s has no meter: type the hours", e->name);
	if (surely || (shown != NONE && value > DAY_HOURS))
		s->reading = value;
	else
		s->hours = value;
	return TRUE;
}

static void
add_share_words(GString *out, const struct outing_share *s, gint64 shown, gboolean several)
{
	char h[HOURS_TEXT], m[HOURS_TEXT], was[HOURS_TEXT];

	g_string_append(out, out->len ? "; " : "");
	if (several)
		g_string_append_printf(out, "%s ", s->engine);
	if (s->reading == NONE)
		g_string_append_printf(out, "%s h", hours_words(s->hours, h));
	if (s->reading == NONE && shown != NONE && s->hours >= shown)
		g_string_append_printf(out, " (m%s: the meter shows that)", hours_words(s->hours, h));
	if (s->reading == NONE)
		return;
	if (s->reading < shown)
		g_string_append_printf(out, "the meter at %s h, less than the %s h before", hours_words(s->reading, m),
				       hours_words(shown, was));
	else
		g_string_append_printf(out, "%s h: the meter at %s h, %s h before", hours_words(s->reading - shown, h),
				       hours_words(s->reading, m), hours_words(shown, was));
}

/* Fill the shares; say what is wrong, and in words what they come to. */
static void
read_engines(struct app *a, struct form *f, gint64 day, struct outing_form *o, GString *words)
{
	g_autoptr(GArray) engines = engines_of(a, NULL);

	for (int i = 0; engines && i < MIN((int)engines->len, MAX_ENGINES); i++) {
		const char *text = form_text(f, engine_field[i]);
		const struct engine *e = engine_at(engines, i);
		struct outing_share *s = &o->share[o->n_shares];
		GError *err = NULL;
		gint64 shown;

		if (!*text)
			continue;
		if (book_meter_before(a->book, e, day, f->subject, &shown, &err) && read_share(text, e, shown, s, &err)) {
			add_share_words(words, s, shown, engines->len > 1);
			o->n_shares++;
		}
		form_wrong(f, engine_field[i], &err);
	}
}

/* A guess that is corrected stays one as long as nobody types its hours. */
static gint64
still_estimated(struct app *a, const struct form *f)
{
	struct outing was;
	gint64 estimated = NONE;

	for (int i = 0; i < f->n; i++)
		if (f->field[i].touched && g_str_has_prefix(f->field[i].name, "engine"))
			return NONE;
	if (f->subject != NONE && book_record(a->book, RECORD_OUTING, f->subject, &was, NULL))
		estimated = was.estimated;
	if (f->subject != NONE)
		record_clear(RECORD_OUTING, &was);
	return estimated;
}

/* What the fields hold, as the logbook takes it. */
static void
read_form(struct app *a, struct form *f, struct outing_form *o, GString *words)
{
	GError *err = NULL;

	*o = (struct outing_form) { .boat = a->boat.id, .instead_of = f->subject, .sure = f->sure };
	record_init(RECORD_OUTING, &o->what);
	if (day_parse(form_text(f, "date"), app_today(a), &o->what.date, &err) && o->what.date > app_today(a))
		err_set(&err, ERR_INPUT, "that lies ahead: an outing is logged when it is over");
	form_wrong(f, "date", &err);
	read_engines(a, f, o->what.date == NONE ? app_today(a) : o->what.date, o, words);
	o->what.water = form_word(f, "water");
	o->what.rinsed = form_word(f, "rinsed");
	o->what.estimated = still_estimated(a, f);
	o->what.place = form_said(f, "place");
	o->what.remark = form_said(f, "remark");
}

static char *
check(struct app *a, struct form *f)
{
	g_autoptr(GString) words = g_string_new(NULL);
	struct outing_form o;
	char day[16];
	char *sum;

	lend_water(a, f);
	read_form(a, f, &o, words);
	sum = g_strdup_printf("%s: %s%s%s%s%s.", o.what.date == NONE ? "?" : day_words(o.what.date, day),
			      words->len ? words->str : "no engine ran", o.what.water == NONE ? "" : ", ",
			      word_of(&words_water, o.what.water), o.what.place ? ", " : "", o.what.place ? o.what.place : "");
	record_clear(RECORD_OUTING, &o.what);
	return sum;
}

static void
said(struct app *a, const struct form *f, const struct outing_said *s)
{
	g_autoptr(GString) out = g_string_new(NULL);
	char text[HOURS_TEXT];

	for (int i = 0; i < s->n; i++) {
		g_string_append(out, i ? "; " : "");
		if (!s->engine[i])
			g_string_append(out, "no engine ran");
		else
			g_string_append_printf(out, "%s %s h", s->engine[i], hours_words(s->row[i].hours, text));
		if (s->engine[i] && s->total[i] != NONE)
			g_string_append_printf(out, ", now %s h", hours_words(s->total[i], text));
	}
	app_say(a, STYLE_STRONG, "%s: %s%s%s; u takes it back", f->subject == NONE ? "logged" : "corrected", out->str,
		s->note ? "; " : "", s->note ? s->note : "");
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	g_autoptr(GString) words = g_string_new(NULL);
	struct outing_said s = { 0 };
	struct outing_form o;
	gboolean ok;

	read_form(a, f, &o, words);
	ok = book_outing(a->book, &o, &s, err);
	if (ok)
		said(a, f, &s);
	outing_said_clear(&s);
	record_clear(RECORD_OUTING, &o.what);
	return ok;
}

const struct form_kind form_outing = {
	.name = "outing", .title = "An outing", .button = "Enter logs it", .begin = begin, .check = check, .save = save,
};
