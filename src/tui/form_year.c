/* Where the boat lay, and when it went in and came out. */
#include "base/date.h"
#include "base/err.h"
#include "logbook/page.h"
#include "logbook/year.h"
#include "tui/app.h"
#include "tui/form.h"

static const char *const no_yes[] = { "no", "yes" };
static const struct words words_planned = { "planned", no_yes, 2 };

/* A date field; NONE when it is empty.  What is wrong with it is said. */
static gint64
date_of(struct app *a, struct form *f, const char *name)
{
	gint64 day = NONE;
	GError *err = NULL;

	if (*form_text(f, name) && !day_parse(form_text(f, name), app_today(a), &day, &err))
		form_wrong(f, name, &err);
	return day;
}

static gboolean
begin_stay(struct app *a, struct form *f, GError **err)
{
	struct stay s;
	char day[DAY_TEXT];
	gboolean ok = TRUE;

	record_init(RECORD_STAY, &s);
	s.date = app_today(a);
	s.stand = a->boat.berth;
	if (f->subject != NONE)
		ok = book_record(a->book, RECORD_STAY, f->subject, &s, err);
	form_add_choice(f, "stand", "Where", &words_stand, s.stand, FALSE);
	form_add(f, "date", "From", form_date_hint, day_iso(s.date, day));
	form_add(f, "until", "Until", "the day it ended; empty: it lasts", day_iso(s.until, day));
	form_add_choice(f, "water", "Water", &words_water, s.water, TRUE);
	form_add(f, "place", "Place", "which berth or yard; a known place lends its water", s.place);
	form_add_remark(f, NULL, s.remark);
	record_clear(RECORD_STAY, &s);
	return ok;
}

static void
read_stay(struct app *a, struct form *f, struct stay *s)
{
	record_init(RECORD_STAY, s);
	s->id = f->subject;
	s->boat = a->boat.id;
	s->stand = form_word(f, "stand");
	s->date = date_of(a, f, "date");
	s->until = date_of(a, f, "until");
	s->water = form_word(f, "water");
	s->place = form_said(f, "place");
	s->remark = form_said(f, "remark");
	if (!*form_text(f, "date"))
		form_refuse(f, "date", "from which day?");
	else if (s->until != NONE && s->date != NONE && s->until <= s->date)
		form_refuse(f, "until", "it ends after the day it began");
}

/* "; the stay from 3 May 2026 ends then", when one that lasts does; the caller's. */
static char *
ends_words(struct app *a, const struct stay *s)
{
	g_autoptr(GArray) all = book_records(a->book, RECORD_STAY, a->boat.id, NULL);
	char day[16];

	for (guint i = 0; all && i < all->len; i++) {
		const struct stay *o = &((const struct stay *)(const void *)all->data)[i];

		if (o->id != s->id && o->until == NONE && s->date != NONE && o->date < s->date)
			return g_strdup_printf("; the stay from %s ends then", day_words(o->date, day));
	}
	return g_strdup("");
}

static char *
check_stay(struct app *a, struct form *f)
{
	g_autofree char *ends = NULL;
	struct stay s;
	char from[16], until[16];
	char *sum;

	read_stay(a, f, &s);
	ends = ends_words(a, &s);
	sum = g_strdup_printf("%s from %s%s%s%s%s%s%s%s.", word_of(&words_stand, s.stand),
			      s.date == NONE ? "?" : day_words(s.date, from), s.until == NONE ? ", and there still" : " until ",
			      day_words(s.until, until), s.water == NONE ? "" : ", ", word_of(&words_water, s.water),
			      s.place ? ", " : "", s.place ? s.place : "", ends);
	record_clear(RECORD_STAY, &s);
	return sum;
}

static gboolean
save_stay(struct app *a, struct form *f, GError **err)
{
	struct stay s;
	char day[16];
	gboolean ok;

	read_stay(a, f, &s);
	ok = book_stay(a->book, &s, err);
	if (ok)
		app_say(a, STYLE_STRONG, "%s from %s; u takes it back", word_of(&words_stand, s.stand), day_words(s.date, day));
	record_clear(RECORD_STAY, &s);
	return ok;
}

const struct form_kind form_stay = {
	.name = "stay", .title = "A stay: where the boat lies", .button = "Enter records it",
	.begin = begin_stay, .check = check_stay, .save = save_stay,
};

static gboolean
begin_season(struct app *a, struct form *f, GError **err)
{
	struct season s;
	char day[DAY_TEXT];
	gboolean ok = TRUE;

	record_init(RECORD_SEASON, &s);
	if (f->subject != NONE)
		ok = book_record(a->book, RECORD_SEASON, f->subject, &s, err);
	form_add(f, "launch", "Launch", form_date_hint, day_iso(s.launch, day));
	form_add(f, "haul-out", "Haul-out", "the day it came out; alone, it ends the season under way", day_iso(s.haul_out, day));
	form_add_choice(f, "planned", "Planned only", &words_planned, s.planned == 1, FALSE);
	record_clear(RECORD_SEASON, &s);
	return ok;
}

static void
read_season(struct app *a, struct form *f, struct season *s)
{
	record_init(RECORD_SEASON, s);
	s->id = f->subject;
	s->boat = a->boat.id;
	s->launch = date_of(a, f, "launch");
	s->haul_out = date_of(a, f, "haul-out");
	s->planned = form_word(f, "planned");
	if (!*form_text(f, "launch") && (f->subject != NONE || !*form_text(f, "haul-out")))
		form_refuse(f, "launch", "which day did it go in, or is it to?");
	else if (s->planned != 1 && s->launch != NONE && s->launch > app_today(a))
		form_refuse(f, "launch", "that lies ahead: choose planned below");
	else if (s->planned != 1 && s->haul_out != NONE && s->haul_out > app_today(a))
		form_refuse(f, "haul-out", "that lies ahead: choose planned below");
	else if (s->launch != NONE && s->haul_out != NONE && s->haul_out <= s->launch)
		form_refuse(f, "haul-out", "it comes out after it went in");
}

/* What becomes of a season that is on record already; the caller's. */
static char *
meant_words(struct app *a, struct form *f, const struct season *s)
{
	struct season was;
	char day[16];
	char *words;

	record_init(RECORD_SEASON, &was);
	if (f->subject == NONE && !book_season_meant(a->book, a->boat.id, s->launch, s->haul_out, &was, NULL))
		was.id = NONE;
	if (f->subject == NONE && was.id == NONE && s->launch == NONE)
		form_refuse(f, "launch", "no season is under way then: type its launch, too");
	if (was.id == NONE)
		words = g_strdup("");
	else if (s->launch == NONE || was.planned != 1)
		words = g_strdup_printf(", of the season from %s", day_words(was.launch, day));
	else
		words = g_strdup_printf(", in place of the one planned from %s", day_words(was.launch, day));
	record_clear(RECORD_SEASON, &was);
	return words;
}

static char *
check_season(struct app *a, struct form *f)
{
	g_autofree char *meant = NULL;
	struct season s;
	char in[16], out[16];

	read_season(a, f, &s);
	if (s.launch == NONE && s.haul_out == NONE)
		return NULL;
	meant = meant_words(a, f, &s);
	return g_strdup_printf("%s%s%s%s%s%s%s.", s.planned == 1 ? "planned: " : "", s.launch == NONE ? "" : "launch ",
			       day_words(s.launch, in), s.launch == NONE || s.haul_out == NONE ? "" : ", ",
			       s.haul_out == NONE ? "" : "haul-out ", day_words(s.haul_out, out), meant);
}

/* What the form does not ask for stays as it is. */
static gboolean
correct_season(struct app *a, const struct season *new, GError **err)
{
	struct season s;
	gboolean ok = book_record(a->book, RECORD_SEASON, new->id, &s, err);

	s.launch = new->launch;
	s.haul_out = new->haul_out;
	s.planned = new->planned;
	ok = ok && book_correct_season(a->book, &s, err);
	record_clear(RECORD_SEASON, &s);
	return ok;
}

static gboolean
save_season(struct app *a, struct form *f, GError **err)
{
	struct season s;
	char day[16];

	read_season(a, f, &s);
	if (f->subject != NONE ? !correct_season(a, &s, err)
			       : !book_season(a->book, a->boat.id, s.launch, s.haul_out, s.planned == 1, err))
		return FALSE;
	app_say(a, STYLE_STRONG, "%s%s %s; u takes it back", s.planned == 1 ? "planned: " : "",
		s.haul_out == NONE ? "launch" : "haul-out", day_words(s.haul_out == NONE ? s.launch : s.haul_out, day));
	return TRUE;
}

const struct form_kind form_season = {
	.name = "season", .title = "A season: in and out", .button = "Enter records it",
	.begin = begin_season, .check = check_season, .save = save_season,
};
