/* A boat's life as spans of exposure and runs of its engines, with running sums, so that the wear between
 * two days is two look-ups however many tasks ask for it. */
#ifndef ENGINE_TIMELINE_H
#define ENGINE_TIMELINE_H

#include "base/value.h"
#include "engine/types.h"

/* One engine's share of one outing. */
struct run {
	gint32 date;
	gint32 seconds;
	gint16 engine;	/* index into the boat's engines; -1: no engine ran */
	guint8 water;	/* enum water; WATER_COUNT or more: not said, so as usual there */
	gboolean rinsed : 1;
	gboolean trip : 1;	/* counts as an outing: the first or only row of it */
};

struct climate;
struct wear_table;

/* A stay or a season as recorded; to is NONE while it lasts.  [from, to)
 * One that lasts is assumed to go on after today to the next launch or haul-out. */
struct stay_in {
	gint64 from, to;
	enum stand stand;
	enum water water;	/* WATER_COUNT: not said */
	const struct climate *climate;	/* NULL: not known */
};
/* haul_out NONE: not yet out, so by the usual day, or today when that is past; planned dates are allowed.
 * The boat's year runs from mid-winter to mid-winter: a season launched in it supersedes its usual days. */
struct season_in { gint64 launch, haul_out; };

/* What holds where nothing was recorded. */
struct habit {
	enum stand berth;	/* in season */
	enum stand winter;	/* out of season */
	enum water water;
	/* Usual days of the year, month * 100 + day; NONE or equal: all the year at berth. */
	gint64 launch, haul_out;
	const struct climate *climate;	/* of the berth; NULL: not known */
};

/* The rates of a wear table, worked out for each berth when first asked for and kept from boat to boat. */
struct wear_rates;
struct wear_rates *wear_rates_new(const struct wear_table *table);	/* copies the table */
void wear_rates_free(struct wear_rates *r);
const struct wear_table *wear_rates_table(const struct wear_rates *r);

struct timeline_in {
	gint64 today;	/* the day asked for: what is past counts as recorded, what lies ahead is assumed */
	gint64 from;	/* no question reaches further back; NONE: today */
	const struct run *run;	/* ascending by date; those before from serve the forecast and the salt left on */
	int n_runs;
	const struct stay_in *stay;	/* ascending, not overlapping */
	int n_stays;
	const struct season_in *season;	/* ascending */
	int n_seasons;
	struct habit habit;
	int n_engines;
	struct wear_rates *rates;	/* outlives the timeline's use; so do the climates */
};

/* Opaque; reused from boat to boat without new allocations. */
struct timeline;
struct timeline *timeline_new(void);
void timeline_free(struct timeline *t);
/* Lay out spans from in->from to ten years past in->today.  Keeps no pointer into *in. */
void timeline_build(struct timeline *t, const struct timeline_in *in);

/* Afloat: in that water.  Not afloat, without film: WATER_COUNT while it lies there, else a day out in that water,
 * rinsed or not.  With film: ashore with the salt of an earlier outing on it (water is WATER_SALT).  coldest and
 * warmest: the monthly means, in C, of the water when in it, else of the air. */
struct span {
	gint64 from, to;
	enum stand stand;
	enum water water;
	gboolean film, rinsed, assumed;
	double coldest, warmest;
};
int timeline_spans(const struct timeline *t, const struct span **span);	/* borrowed */

/* Effective days of a mechanism over [a, b); with MECH_NONE plain days.  Slow wear counts as it is: an interval that
 * must not stretch takes the larger of plain and effective days. */
double timeline_days(const struct timeline *t, enum mechanism m, gint64 a, gint64 b);
/* The same days in salt or brackish water, or with salt left on. */
double timeline_salt_days(const struct timeline *t, gint64 a, gint64 b);
/* The first day d on which effective days over [a, d) reach days; NONE beyond the horizon. */
gint64 timeline_days_reach(const struct timeline *t, enum mechanism m, gint64 a, double days);

/* Recorded running seconds of an engine on days after a, up to and including b; rated by a mechanism (MECH_NONE:
 * plain).  engine -1: the sum of all. */
double timeline_seconds(const struct timeline *t, int engine, enum mechanism m, gint64 a, gint64 b);
/* Outings on days after a, up to b. */
int timeline_outings(const struct timeline *t, gint64 a, gint64 b);

/* Forecast, by usage.h: rates learned month by month from the days in season that the log knows, of at most five years,
 * each year back weighing .8 of the next, and a prior of 50 h on the season's days.  It is run on days in season, in the
 * usual water, not rinsed.  A day of more than 24 h is a lump that nobody logged: it says nothing of single outings.
 * Outings come whole, so half a one less is looked for.  Of an engine that is not there nothing is in sight.
 * timeline_usage: seconds a day in season over the coming year. */
double timeline_usage(const struct timeline *t, int engine);
/* The days after today by which forecast running, rated, reaches seconds, or outings their number; NONE: not in sight in
 * ten years, or hardly (a chance below .1) before that day, when one is given. */
struct usage_due;
void timeline_seconds_reach(const struct timeline *t, int engine, enum mechanism m, double seconds, gint64 before,
			    struct usage_due *due);
void timeline_outings_reach(const struct timeline *t, double outings, gint64 before, struct usage_due *due);
/* Forecast seconds between today and b. */
double timeline_seconds_ahead(const struct timeline *t, int engine, enum mechanism m, gint64 b);

/* The day of an event: the k-th (k >= 1) on or after a; k <= 0 the (1 - k)-th before a.  NONE out of range.
 * Mid-season is the middle day between launch and haul-out; lay-up is the haul-out day; first day afloat the launch. */
gint64 timeline_event(const struct timeline *t, enum season_event e, gint64 a, int k);
/* The event that is meant on a day, in the boat's year: that of the season under way, or else of the coming one; a haul-out and
 * a lay-up are those of the season launched last before that day.  Work counts for it when done after that point. */
struct event_meant {
	gint64 day;	/* NONE: there is no season */
	gint64 after;	/* as event work counts, see due.h; NONE: whenever it was */
};
void timeline_event_meant(const struct timeline *t, enum season_event e, gint64 day, struct event_meant *meant);
/* In season: from the launch day to before the haul-out. */
gboolean timeline_afloat(const struct timeline *t, gint64 day);

/* The fixed points of the boat's year around a day, as work is planned: the launch day still belongs to the winter
 * before it, the haul-out day to its season.  Under way, launch is the one that began it.  NONE: not in sight. */
struct boat_year {
	gint64 launch, haul_out, next_launch, next_haul_out;
	gboolean under_way;
};
void timeline_year(const struct timeline *t, gint64 day, struct boat_year *year);

#endif
