/* long: the one place where the parts of the timeline meet.
 * Inside the timeline: what timeline.c holds together and its neighbours fill in and read. */
#ifndef ENGINE_TIMELINE_INSIDE_H
#define ENGINE_TIMELINE_INSIDE_H

#include "engine/timeline.h"
#include "engine/usage.h"
#include "engine/wear.h"

/* What is summed up: each mechanism's wear, and the days on which salt is in play. */
enum { RATED_SALT = MECH_COUNT, RATED_COUNT };

/* How running counts: by a mechanism, or, with RATED_SALT, pair times where salt is in play and once elsewhere. */
struct rating { int rated; double pair; };
#define PLAINLY ((struct rating) { MECH_NONE, 1 })

/* Effective days and seconds are sums of products: they reach a limit when this little is missing. */
#define NEARLY 1e-6

/* What a day does to a fitting, of which a rate follows.  The first three, and the next, in the order of enum water. */
enum exposure {
	EXPOSURE_AFLOAT,
	EXPOSURE_OUT = EXPOSURE_AFLOAT + WATER_COUNT,	/* a day out of a boat that does not lie afloat */
	EXPOSURE_OUT_RINSED = EXPOSURE_OUT + WATER_COUNT,
	EXPOSURE_ASHORE,
	EXPOSURE_FILM,	/* ashore with salt left on */
	EXPOSURE_COUNT
};

struct season_day { gint64 launch, haul_out; gboolean known, known_out; };	/* known: recorded */

/* A stretch without outings: where the boat lies, in what water, and what water an outing that names none is in. */
struct lay {
	gint64 from, to;
	enum stand stand;
	enum water water;	/* of an outing; afloat the water it lies in too */
	gboolean assumed;
	const struct climate *climate;
	int berth;
};

/* A day with outings. */
struct day_out {
	gint32 date;
	guint8 waters, unrinsed;	/* bits 1 << enum water, WATER_COUNT for "not said" */
	guint32 key;	/* of the span that the day is */
};

struct ahead { gint64 from, to; guint32 key; };	/* days in season to come, of one month, and how they are used */
struct learned { guint64 made; struct usage usage; };	/* of one engine, when asked for */
struct outlook { guint64 made; gboolean plain; double pair; struct usage_ahead *ahead; };	/* plain: as for MECH_NONE */

/* Running sums, 0 at the end and falling towards the beginning; made when asked for, from the end down to index low,
 * since most questions reach back a short way. */
struct sums { double *sum; guint size; guint64 made; int low; };

/* A span in short: exposure, stand, water, rinsed and assumed in one number, equal for spans that merge; and what else
 * its rates hang on, the berth and the month. */
#define KEY(exposure, stand, water, rinsed, assumed) \
	((guint)(exposure) | (guint)(stand) << 4 | (guint)(water) << 6 | (guint)(rinsed) << 8 | (guint)(assumed) << 9)
#define KEY_EXPOSURE(key) ((key) & 15u)
#define KEY_STAND(key) ((key) >> 4 & 3u)
#define KEY_WATER(key) ((key) >> 6 & 3u)
#define KEY_RINSED(key) ((key) >> 8 & 1u)
#define KEY_ASSUMED(key) ((key) >> 9 & 1u)
#define KEY_SPAN(key) ((key) & 1023u)	/* those together */
#define KEY_AT(berth, month) ((guint)(month) << 10 | (guint)(berth) << 14)
#define KEY_MONTH(key) ((key) >> 10 & 15u)	/* from 0 */
#define KEY_BERTH(key) ((key) >> 14)
#define KEY_BERTH_MOST 65535u

struct timeline {
	gint64 today, start, from, end;	/* start: from, or the first outing if earlier */
	struct habit habit;
	gboolean all_year;	/* there are no seasons: always under way */
	int n_engines, columns;	/* of seconds: one for each engine */
	guint64 made;	/* counts the builds */
	struct wear_rates *rates;	/* borrowed */
	GArray *seasons;	/* struct season_day */
	GArray *lays;	/* struct lay */
	int n_spans;
	GArray *span_from;	/* gint32: the first day of each span, and at last the end */
	GArray *span_key;	/* guint32 */
	GArray *spans;	/* struct span: the same, made when asked for */
	int n_days_out;
	GArray *days_out;	/* struct day_out */
	GArray *trips;	/* int: outings up to each day out, one more than there are days */
	GArray *seconds;	/* gint64: by engine, then day out */
	GArray *ahead;	/* struct ahead */
	GArray *learned;	/* struct learned: by engine, then all engines, then outings */
	GArray *outlooks;	/* struct outlook: the same, then what is rated */
	GArray *intervals, *days_ahead;	/* struct usage_interval, usage_days: room to make those in */
	struct sums days[RATED_COUNT];	/* over spans */
	GArray *seconds_sums;	/* struct sums, over days out: by engine and at last all engines, then what is rated */
};

#define ELEMENTS(array, type) ((type *)(void *)(array)->data)

/* season.c */
void seasons_lay_out(struct timeline *t, const struct timeline_in *in);
/* The next launch or haul-out; the end without one. */
gint64 season_boundary_after(const struct timeline *t, gint64 day);
/* The first event that work done on that day does not count for. */
gint64 event_after_work(const struct timeline *t, enum season_event e, gint64 done);
int season_ends(const struct timeline *t, gint64 a, gint64 b);	/* haul-outs on days after a, up to b */

/* Where a boat lies, as far as its wear hangs on it. */
struct berth { enum stand stand; enum water water; const struct climate *climate; };

/* rates.c */
int rates_berth(struct wear_rates *r, enum stand stand, enum water water, const struct climate *climate);
double rates_rate(const struct wear_rates *r, int rated, guint32 key);
double rates_celsius(const struct wear_rates *r, guint32 key);
/* Every rate is 1. */
static inline gboolean
is_plain(int rated)
{
	return rated == MECH_NONE || rated == MECH_FLUID || rated == MECH_WEAR || rated == MECH_FROST;
}

/* The months that a walk along ascending days has come to. */
struct months { gint64 from, to; int month, year; };	/* of the month: first day, first after it, from 0 */
void months_begin(struct months *m, gint64 day);
void months_next(struct months *m);

/* exposure.c */
void lays_lay_out(struct timeline *t, const struct timeline_in *in);
void spans_lay_out(struct timeline *t);

/* clock.c */
void days_out_lay_out(struct timeline *t, const struct timeline_in *in);
int span_at(const struct timeline *t, gint64 day);	/* index; the first or last one outside */
double day_rate(const struct timeline *t, enum mechanism m, gint64 day);
/* Recorded running on days after a, up to b. */
double rated_seconds(const struct timeline *t, int engine, struct rating r, gint64 a, gint64 b);
int days_out_to(const struct timeline *t, gint64 day);	/* how many days out there are up to that day */
/* Sums up to the beginning of each day out from day low on; NULL: no such engine. */
const double *seconds_sums(const struct timeline *t, int engine, int rated, int low);
/* The day on which recorded running after a reached seconds, or outings their number; NONE: not yet. */
gint64 seconds_reached(const struct timeline *t, int engine, struct rating r, gint64 a, double seconds);
gint64 outings_reached(const struct timeline *t, gint64 a, gint64 outings);
/* The last day in [a, b] on which the boat does not lie afloat; NONE: it does all the time. */
gint64 last_day_out_of_water(const struct timeline *t, gint64 a, gint64 b);

/* forecast.c */
void forecast_lay_out(struct timeline *t);
void forecast_free(struct timeline *t);
/* Forecast seconds between today and b; and the days on which they reach that many, as timeline_seconds_reach(). */
double rated_seconds_ahead(const struct timeline *t, int engine, struct rating r, gint64 b);
void rated_seconds_reach(const struct timeline *t, int engine, struct rating r, double seconds, gint64 before,
			 struct usage_due *due);

#endif
