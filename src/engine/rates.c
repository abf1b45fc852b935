/* How fast each thing a day does to a boat wears its fittings, worked out once for each berth and kept. */
#include "engine/timeline_inside.h"

#include <math.h>
#include <string.h>

struct berth_rates {
	struct berth berth;
	struct monthly *rate[RATED_COUNT];	/* of each exposure; NULL until asked for */
};

struct wear_rates {
	struct wear_table table;
	struct monthly water, air;	/* C, where a place says nothing */
	GArray *berths;	/* struct berth_rates */
};

struct wear_rates *
wear_rates_new(const struct wear_table *table)
{
	struct wear_rates *r = g_new0(struct wear_rates, 1);

	r->table = *table;
	monthly_sine(&r->water, table->water_mean, table->water_swing, table->water_warmest);
	monthly_sine(&r->air, table->air_mean, table->air_swing, table->air_warmest);
	r->berths = g_array_new(FALSE, TRUE, sizeof(struct berth_rates));
	return r;
}

void
wear_rates_free(struct wear_rates *r)
{
	if (!r)
		return;
	for (guint i = 0; i < r->berths->len; i++)
		for (int m = 0; m < RATED_COUNT; m++)
			g_free(ELEMENTS(r->berths, struct berth_rates)[i].rate[m]);
	g_array_free(r->berths, TRUE);
	g_free(r);
}

const struct wear_table *
wear_rates_table(const struct wear_rates *r)
{
	return &r->table;
}

int
rates_berth(struct wear_rates *r, enum stand stand, enum water water, const struct climate *climate)
{
	struct berth_rates new = { .berth = { stand, water, climate } };
	guint i;

	for (i = 0; i < r->berths->len; i++) {
		const struct berth *b = &ELEMENTS(r->berths, struct berth_rates)[i].berth;

		if (b->stand == stand && b->water == water && b->climate == climate)
			return (int)i;
	}
	if (i > KEY_BERTH_MOST)	/* more places than a span can tell apart: as the first of them */
		return 0;
	g_array_append_val(r->berths, new);
	return (int)i;
}

static double
celsius_of(const struct wear_rates *r, const struct berth *b, gboolean wet, int month)
{
	const struct monthly *usual = wet ? &r->water : &r->air;
	double known = b->climate ? (wet ? b->climate->water : b->climate->dry).in[month] : NAN;

	return isnan(known) ? usual->in[month] : known;
}

static gboolean
is_dry(enum exposure e)
{
	return e == EXPOSURE_ASHORE || e == EXPOSURE_FILM;
}

/* The water that an exposure is in; of a day out that was rinsed, where the boat usually goes. */
static enum water
water_in(const struct berth *b, enum exposure e)
{
	if (is_dry(e))
		return WATER_COUNT;
	if (e == EXPOSURE_OUT_RINSED)
		return b->water == WATER_BRACKISH ? WATER_BRACKISH : WATER_SALT;
	return (enum water)(e < EXPOSURE_OUT ? e - EXPOSURE_AFLOAT : e - EXPOSURE_OUT);
}

static struct wear_span
span_of(const struct berth *b, enum exposure e)
{
	struct wear_span s = {
		.stand = e < EXPOSURE_OUT ? STAND_AFLOAT : b->stand == STAND_AFLOAT ? STAND_TRAILER : b->stand,
		.water = water_in(b, e),
		.psu = NAN,
		.air = b->climate ? b->climate->air : AIR_COUNT,
		.film = e == EXPOSURE_FILM,
		.rinsed = e == EXPOSURE_OUT_RINSED,
		.inland = b->water == WATER_FRESH,
	};

	if (b->climate && s.water == b->water)
		s.psu = b->climate->psu;
	return s;
}

/* Salt on it, in it or under it: what a second figure "in salt water" means. */
static gboolean
is_salty(enum exposure e)
{
	return e == EXPOSURE_AFLOAT + WATER_BRACKISH || e == EXPOSURE_AFLOAT + WATER_SALT
	    || e == EXPOSURE_OUT + WATER_BRACKISH || e == EXPOSURE_OUT + WATER_SALT || e == EXPOSURE_OUT_RINSED
	    || e == EXPOSURE_FILM;
}

/* Out for the day a boat's rubber is as warm as the air. */
static void
rates_in(const struct wear_rates *r, const struct berth *b, enum mechanism m, enum exposure e, struct monthly *rate)
{
	struct wear_span s = span_of(b, e);
	gboolean wet = !is_dry(e) && !(m == MECH_RUBBER && e >= EXPOSURE_OUT);
	struct monthly celsius;

	for (int month = 0; month < 12; month++)
		celsius.in[month] = celsius_of(r, b, wet, month);
	wear_monthly(&r->table, m, &s, &celsius, rate);
}

static struct monthly *
work_out(const struct wear_rates *r, const struct berth *b, int m)
{
	struct monthly *rate = g_new(struct monthly, EXPOSURE_COUNT);

	for (int e = 0; e < EXPOSURE_COUNT; e++)
		if (m == RATED_SALT)
			for (int month = 0; month < 12; month++)
				rate[e].in[month] = is_salty((enum exposure)e);
		else
			rates_in(r, b, (enum mechanism)m, (enum exposure)e, &rate[e]);
	/* What wet it with salt for a day stays on. */
	for (int water = WATER_BRACKISH; m == MECH_CORROSION && water <= WATER_SALT; water++)
		for (int month = 0; month < 12; month++)
			rate[EXPOSURE_OUT + water].in[month] =
				fmax(rate[EXPOSURE_OUT + water].in[month], rate[EXPOSURE_FILM].in[month]);
	return rate;
}

double
rates_rate(const struct wear_rates *r, int m, guint32 key)
{
	struct berth_rates *b = &ELEMENTS(r->berths, struct berth_rates)[KEY_BERTH(key)];

	if (!b->rate[m])	/* a cache: the answers do not depend on it */
		b->rate[m] = work_out(r, &b->berth, m);
	return b->rate[m][KEY_EXPOSURE(key)].in[KEY_MONTH(key)];
}

double
rates_celsius(const struct wear_rates *r, guint32 key)
{
	const struct berth_rates *b = &ELEMENTS(r->berths, struct berth_rates)[KEY_BERTH(key)];

	return celsius_of(r, &b->berth, !is_dry((enum exposure)KEY_EXPOSURE(key)), (int)KEY_MONTH(key));
}
