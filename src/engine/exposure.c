/* The boat's life as spans of exposure: where it lies, overlaid with its days out and the salt they leave on it. */
#include "base/date.h"
#include "engine/timeline_inside.h"

#define BIT(n) (1u << (n))

void
months_begin(struct months *m, gint64 day)
{
	int mday;

	day_to_ymd(day, &m->year, &m->month, &mday);
	m->from = day - mday + 1;
	m->to = m->from + month_days(m->year, m->month);
	m->month--;
}

void
months_next(struct months *m)
{
	m->month = (m->month + 1) % 12;
	m->year += !m->month;
	m->from = m->to;
	m->to += month_days(m->year, m->month + 1);
}

static enum water
water_or(enum water said, enum water usual)
{
	if ((guint)said < WATER_COUNT)
		return said;
	return (guint)usual < WATER_COUNT ? usual : WATER_FRESH;
}

/* Where the walk along the days has come to. */
struct place { int stay, season; };

static gint64
stay_end(const struct timeline *t, const struct timeline_in *in, int i)
{
	const struct stay_in *s = &in->stay[i];
	gint64 next = i + 1 < in->n_stays ? in->stay[i + 1].from : G_MAXINT64;

	if (s->to == NONE)
		return next < G_MAXINT64 ? next : season_boundary_after(t, MAX(t->today, s->from));
	return MIN(s->to, next);
}

/* How the boat lies on day by its seasons, up to lay->to at most. */
static void
lay_by_season(const struct timeline *t, gint64 day, int season, struct lay *lay)
{
	const struct season_day *s = ELEMENTS(t->seasons, const struct season_day);
	gboolean more = season < (int)t->seasons->len;

	lay->water = water_or(t->habit.water, WATER_FRESH);
	lay->climate = t->habit.climate;
	if (t->all_year || (more && s[season].launch <= day)) {
		lay->stand = t->habit.berth;
		lay->assumed = t->all_year || !s[season].known;
		lay->to = more ? MIN(lay->to, s[season].haul_out) : lay->to;
		return;
	}
	lay->stand = t->habit.winter;
	lay->assumed = !season || !s[season - 1].known_out;
	lay->to = more ? MIN(lay->to, s[season].launch) : lay->to;
}

static void
lay_from(const struct timeline *t, const struct timeline_in *in, gint64 day, struct place *at, struct lay *lay)
{
	while (at->stay < in->n_stays && stay_end(t, in, at->stay) <= day)
		at->stay++;
	while (at->season < (int)t->seasons->len &&
	       ELEMENTS(t->seasons, const struct season_day)[at->season].haul_out <= day)
		at->season++;
	lay->from = day;
	lay->to = day <= t->today ? MIN(t->today + 1, t->end) : t->end;
	if (at->stay < in->n_stays && in->stay[at->stay].from <= day) {
		const struct stay_in *s = &in->stay[at->stay];

		lay->to = MIN(lay->to, stay_end(t, in, at->stay));
		lay->stand = s->stand;
		lay->water = water_or(s->water, t->habit.water);
		lay->climate = s->climate ? s->climate : t->habit.climate;
		lay->assumed = FALSE;
	} else {
		if (at->stay < in->n_stays)
			lay->to = MIN(lay->to, in->stay[at->stay].from);
		lay_by_season(t, day, at->season, lay);
	}
	lay->assumed = lay->assumed || day > t->today;
}

void
lays_lay_out(struct timeline *t, const struct timeline_in *in)
{
	struct place at = { 0, 0 };
	struct lay lay;

	g_array_set_size(t->lays, 0);
	for (gint64 day = t->start; day < t->end; day = lay.to) {
		lay_from(t, in, day, &at, &lay);
		lay.berth = rates_berth(t->rates, lay.stand, lay.water, lay.climate);
		g_array_append_val(t->lays, lay);
	}
}

/* The spans as they are made, one after another without a gap and none over a month's end, in arrays that are large
 * enough. */
struct maker {
	gint64 from;	/* what lies before is not kept */
	gint32 *span_from;
	guint32 *key;
	int n;
	struct months month;
	gboolean film;	/* salt is left on by now */
};

static inline void
add_span(struct maker *k, gint64 from, gint64 to, guint32 key)
{
	for (from = MAX(from, k->from); from < to; from = k->month.to) {
		guint32 in_month;

		while (k->month.to <= from)
			months_next(&k->month);
		in_month = key | KEY_AT(0, k->month.month);
		if (!k->n || k->key[k->n - 1] != in_month) {
			k->span_from[k->n] = (gint32)from;
			k->key[k->n++] = in_month;
		}
	}
}

static guint32
lying(const struct lay *l, gboolean film)
{
	guint32 at = KEY_AT(l->berth, 0);

	if (l->stand == STAND_AFLOAT)
		return at | KEY(EXPOSURE_AFLOAT + l->water, l->stand, l->water, FALSE, l->assumed);
	return at | (film ? KEY(EXPOSURE_FILM, l->stand, WATER_SALT, FALSE, l->assumed)
			  : KEY(EXPOSURE_ASHORE, l->stand, WATER_COUNT, FALSE, l->assumed));
}

/* Waters where one was not said: the usual one. */
static inline guint
with_usual(guint waters, guint usual)
{
	return waters | (waters >> WATER_COUNT & 1u) << usual;
}

/* A day of several outings is in the saltiest of their waters, and rinsed when each that left salt was. */
static inline guint32
out_for_the_day(const struct lay *l, const struct day_out *d, gboolean *film)
{
	static const guint8 saltiest[1 << WATER_COUNT] = {
		WATER_FRESH, WATER_FRESH, WATER_BRACKISH, WATER_BRACKISH,
		WATER_SALT, WATER_SALT, WATER_SALT, WATER_SALT,
	};
	guint fresh = BIT(WATER_FRESH), salty = BIT(WATER_BRACKISH) | BIT(WATER_SALT);
	guint water = saltiest[with_usual(d->waters, l->water) & (fresh | salty)];
	gboolean rinsed = !(with_usual(d->unrinsed, l->water) & (water ? salty : fresh));

	guint32 at = KEY_AT(l->berth, 0);

	*film = water && !rinsed;
	if (l->stand == STAND_AFLOAT)
		return at | KEY(EXPOSURE_AFLOAT + water, l->stand, water, FALSE, FALSE);
	return at | KEY(water && rinsed ? EXPOSURE_OUT_RINSED : EXPOSURE_OUT + water, l->stand, water, rinsed, FALSE);
}

/* One stretch and its days out, of which the first is day i; returns the first day out after it. */
static int
lay_over(struct timeline *t, struct maker *k, struct months *month, const struct lay *l, int i)
{
	struct day_out *d = ELEMENTS(t->days_out, struct day_out);
	const guint32 lies[] = { lying(l, FALSE), lying(l, TRUE) };
	gint64 done = l->from;

	for (; i < t->n_days_out && d[i].date < l->to; i++) {
		gboolean before = k->film;
		guint32 key = out_for_the_day(l, &d[i], &k->film);

		while (month->to <= d[i].date)
			months_next(month);
		d[i].key = key | KEY_AT(0, month->month);
		if (KEY_EXPOSURE(key) == KEY_EXPOSURE(lies[before]))	/* afloat, in the same water */
			continue;
		add_span(k, done, d[i].date, lies[before]);
		add_span(k, d[i].date, d[i].date + 1, key);
		done = d[i].date + 1;
	}
	add_span(k, done, l->to, lies[k->film]);
	return i;
}

void
spans_lay_out(struct timeline *t)
{
	guint months = (guint)((t->end - t->from) / 28 + 2), most = t->lays->len + 2 * (guint)t->n_days_out + months;
	struct maker k = { .from = t->from };
	struct months month;
	int day_out = 0;

	g_array_set_size(t->span_from, most + 1);
	g_array_set_size(t->span_key, most + 1);
	k.span_from = ELEMENTS(t->span_from, gint32);
	k.key = ELEMENTS(t->span_key, guint32);
	months_begin(&month, t->start);
	months_begin(&k.month, t->from);
	for (guint i = 0; i < t->lays->len; i++)
		day_out = lay_over(t, &k, &month, &ELEMENTS(t->lays, struct lay)[i], day_out);
	k.span_from[k.n] = (gint32)t->end;
	t->n_spans = k.n;
	g_array_set_size(t->spans, 0);
}
