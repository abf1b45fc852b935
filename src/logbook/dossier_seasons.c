/* The boat's years: where she lay, how much she was out, and what happened. */
#include "logbook/dossier_inside.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"

#include <string.h>

static void
clear_season(gpointer p)
{
	struct season_sum *s = p;

	g_free(s->seconds);
}

static struct season_sum *
season_at(const struct dossier *d, guint i)
{
	return &((struct season_sum *)(void *)d->seasons->data)[i];
}

static void
add_season(struct dossier *d, gint64 from, gint64 to, const struct season *season)
{
	struct season_sum s = { .from = from, .to = to, .season = season };

	s.seconds = g_new0(gint64, d->engines->len + 1);
	g_array_append_val(d->seasons, s);
}

/* From one launch to the next; without a season on record the years of the calendar. */
static void
divide(struct dossier *d)
{
	const struct season *before = NULL;
	int year, last, month, mday;

	for (EACH(struct season, s, d->seasons_on_record)) {
		if (s->planned == 1 || s->launch > d->b->who.today)
			continue;
		add_season(d, before ? before->launch : DAY_FIRST, s->launch, before);
		before = s;
	}
	if (before) {
		add_season(d, before->launch, DAY_LAST, before);
		return;
	}
	day_to_ymd(d->boat->since == NONE ? d->b->who.today : d->boat->since, &year, &month, &mday);
	day_to_ymd(d->b->who.today, &last, &month, &mday);
	add_season(d, DAY_FIRST, day_from_ymd(year, 1, 1), NULL);
	for (; year <= last; year++)
		add_season(d, day_from_ymd(year, 1, 1), day_from_ymd(year + 1, 1, 1), NULL);
}

/* That of a day; the last for what lies ahead. */
static struct season_sum *
season_of(const struct dossier *d, gint64 day)
{
	guint i = 0;

	while (i + 1 < d->seasons->len && day >= season_at(d, i)->to)
		i++;
	return season_at(d, i);
}

static guint
engine_index(const struct dossier *d, gint64 key)
{
	const struct engine *e = (const void *)d->engines->data;
	guint i = 0;

	while (i < d->engines->len && e[i].id != key)
		i++;
	return i;
}

static void
add_engine(struct dossier *d, const struct outing *o, struct season_sum *s)
{
	guint i = engine_index(d, o->engine);
	struct engine_sum *sum = &d->engine[i];

	if (i == d->engines->len)
		return;
	sum->seconds += o->hours;
	if (o->estimated == 1)
		sum->guessed += o->hours;
	if (o->reading != NONE) {
		sum->reading = o->reading;
		sum->read = o->date;
	}
	s->seconds[i] += o->hours;
}

/* Rows of other engines belong to the trip that is counted. */
static void
add_outing(struct dossier *d, const struct outing *o)
{
	struct season_sum *s = season_of(d, o->date);
	gint64 water = o->water == NONE ? d->boat->water : o->water;

	add_engine(d, o, s);
	if (o->trip != NONE)
		return;
	s->outings++;
	s->guesses += o->estimated == 1;
	s->still += o->engine == NONE;
	s->water[o->water == NONE ? 3 : o->water]++;
	if (water == NONE || water == WATER_FRESH)
		return;
	s->salty++;
	s->rinsed += o->rinsed == 1;
	s->not_said += o->rinsed == NONE;
}

/* One row in memory at a time. */
static gboolean
read_outings(struct dossier *d, GError **err)
{
	struct cells *c = cells_open(d->b->db, sql_of_boat(RECORD_OUTING));
	struct outing o;

	cells_bind(c, 1, d->boat->id);
	record_init(RECORD_OUTING, &o);
	while (cells_next_record(c, RECORD_OUTING, &o))
		add_outing(d, &o);
	record_clear(RECORD_OUTING, &o);
	return cells_close(c, err);
}

gboolean
dossier_read_seasons(struct dossier *d, GError **err)
{
	d->seasons = g_array_new(FALSE, FALSE, sizeof(struct season_sum));
	g_array_set_clear_func(d->seasons, clear_season);
	d->engine = g_new0(struct engine_sum, d->engines->len + 1);
	for (guint i = 0; i < d->engines->len; i++)
		d->engine[i].reading = d->engine[i].read = NONE;
	divide(d);
	return read_outings(d, err);
}

/* "Season of 2018, launched 5 May 2018, hauled out 13 Oct 2018"; "Before the first season on record"; "2024" */
static char *
season_title(const struct dossier *d, const struct season_sum *s)
{
	char from[16], to[16];
	int year, month, mday;

	if (s->season) {
		day_to_ymd(s->season->launch, &year, &month, &mday);
		return g_strdup_printf("Season of %d: launched %s, %s%s", year, day_words(s->season->launch, from),
				       s->season->haul_out == NONE ? "no haul-out on record" : "hauled out ",
				       day_words(s->season->haul_out, to));
	}
	if (s->from == DAY_FIRST)
		return g_strdup(d->seasons->len && season_at(d, d->seasons->len - 1)->season
					? "Before the first season on record" : "Earlier");
	day_to_ymd(s->from, &year, &month, &mday);
	return g_strdup_printf("%d, no season on record", year);
}

static char *
outings_words(const struct dossier *d, const struct season_sum *s)
{
	GString *out = g_string_new(s->outings ? NULL : "no outing is on record");
	char hours[HOURS_TEXT];
	guint i = 0;

	if (!s->outings)
		return g_string_free(out, FALSE);
	g_string_append_printf(out, "%d %s", s->outings, s->outings == 1 ? "outing" : "outings");
	for (EACH(struct engine, e, d->engines)) {
		g_string_append_printf(out, "; %s %s h", e->name, hours_words(s->seconds[i], hours));
		i++;
	}
	if (s->still)
		g_string_append_printf(out, "; %d without an engine", s->still);
	if (s->guesses)
		g_string_append_printf(out, "; of these %d guessed, or shown only by a later reading", s->guesses);
	return g_string_free(out, FALSE);
}

static char *
water_words(const struct dossier *d, const struct season_sum *s)
{
	GString *out = g_string_new("water: ");
	gsize begin = out->len;

	if (s->water[3])
		g_string_append_printf(out, "as usual (%s) %d", word_of(&words_water, d->boat->water), s->water[3]);
	for (int w = 0; w < 3; w++)
		if (s->water[w])
			g_string_append_printf(out, "%s%s %d", out->len > begin ? ", " : "", word_of(&words_water, w), s->water[w]);
	if (s->salty)
		g_string_append_printf(out, "; rinsed after %d of %d in salt or brackish water, not said of %d", s->rinsed,
				       s->salty, s->not_said);
	return g_string_free(out, FALSE);
}

static void
say_stay(struct dossier *d, const struct stay *s)
{
	g_autofree char *place = names_place(d->names, s->place), *remark = dossier_remark(d, s->remark);
	char from[16], to[16];

	dossier_say(d, 2, "lay from %s %s%s: %s%s%s%s%s%s%s", day_words(s->date, from), s->until == NONE ? "on" : "to ",
		    day_words(s->until, to), word_of(&words_stand, s->stand), s->water == NONE ? "" : ", ",
		    word_of(&words_water, s->water), place ? ", " : "", place ? place : "", remark ? "; " : "",
		    remark ? remark : "");
}

static void
say_happening(struct dossier *d, const struct happening *h)
{
	g_autofree char *remark = dossier_remark(d, h->remark);
	char day[16], closed[16];

	dossier_say(d, 2, "happened on %s: %s, %s%s%s%s", day_words(h->date, day), word_of(&words_happening, h->kind),
		    h->closed == NONE ? "what it asks for is not all done" : "all that it asked for done by ",
		    day_words(h->closed, closed), remark ? "; " : "", remark ? remark : "");
}

static gboolean
is_in(const struct season_sum *s, gint64 day)
{
	return day >= s->from && day < s->to;
}

static int
count_in(const struct season_sum *s, const GArray *stays, const GArray *happenings)
{
	int n = s->outings;

	for (EACH(struct stay, stay, stays))
		n += is_in(s, stay->date);
	for (EACH(struct happening, h, happenings))
		n += is_in(s, h->date);
	return n;
}

gboolean
dossier_seasons(struct dossier *d, GError **err)
{
	g_autoptr(GArray) stays = book_records(d->b, RECORD_STAY, d->boat->id, err);
	g_autoptr(GArray) happenings = stays ? book_records(d->b, RECORD_HAPPENING, d->boat->id, err) : NULL;
	int told = 0;

	dossier_head(d, "Seasons");
	for (guint i = 0; happenings && i < d->seasons->len; i++) {
		const struct season_sum *s = season_at(d, i);
		g_autofree char *title = season_title(d, s), *outings = outings_words(d, s), *water = water_words(d, s);

		if (!dossier_wants(d, s->to - 1) || (!s->season && !count_in(s, stays, happenings)))
			continue;
		told++;
		dossier_title(d, "%s", title);
		dossier_say(d, 2, "%s", outings);
		if (s->outings)
			dossier_say(d, 2, "%s", water);
		for (EACH(struct stay, stay, stays))
			if (is_in(s, stay->date))
				say_stay(d, stay);
		for (EACH(struct happening, h, happenings))
			if (is_in(s, h->date))
				say_happening(d, h);
	}
	if (!told)
		dossier_prose(d, "Nothing is on record: no season, no outing, no stay and nothing that happened.");
	return happenings != NULL;
}
