/* What running lies ahead: monthly rates learned from the log, and the days on which a number of hours
 * will be reached, early, likely and late.  No chance in it: the same log gives the same days.
 *   Rates: expectation-maximisation for Poisson counts known only in sum over intervals, with a gamma prior.
 *   Spread: hours ahead are taken as gamma with mean mu and variance V by moments,
 *      V = phi mu + c_r^2 mu^2 + c_y^2 (sum over years of mu_y^2):
 *   single outings, an uncertain rate, good and bad seasons.
 * Cost in instructions: a fit 75,000 for ten years of months, and where intervals go over several months
 * some 150 for each of them in each round, of which there are hundreds; to look ten years ahead 20,000; a
 * limit 30,000, half of them in about ten evaluations of the gamma distribution.  A limit allocates
 * nothing, a fit once. */
#ifndef ENGINE_USAGE_H
#define ENGINE_USAGE_H

#include "base/value.h"

/* Hours run on the days [from, to). */
struct usage_interval {
	gint64 from, to;
	double hours;
	double weight; /* how much it counts, 1 in full: recent seasons may count more than old ones */
};

struct usage_reading {
	gint64 day;
	double hours;
};
/* The intervals between ascending readings of one meter, as if never replaced; of a day's several the
 * last counts.  What goes backwards is left out: ask about it before.  Returns how many; room for n - 1. */
int usage_intervals(const struct usage_reading *reading, int n, struct usage_interval *interval);

/* What is presumed of a boat of which little is known. */
struct usage_prior {
	double share[12]; /* of a year's hours in each month; sums to 1; 0 in lay-up */
	double days[12]; /* of a year in each month, on which they are run */
	double hours; /* a year */
	double years; /* of log that it weighs as much as */
	double phi, phi_weight; /* hours; intervals that it weighs as much as */
	double year_spread; /* c_y, relative, from season to season */
	int year_begins; /* month 1 to 12 in which hardly anyone is out: 1 in the north */
};
/* 50 h a year, weighing half a year; phi 4 h as of outings of 3 h with a spread of .6, weighing 4
 * intervals; a quarter from season to season: all assumptions.  Shares by usage_season, over all days. */
void usage_prior_default(struct usage_prior *prior, gint64 launch, gint64 haul_out);
/* The same for intervals of days in season only: the hours are run on the season's days.  A month outside
 * it has one day, on top of the year's hours: should a season once reach into it, it is used alike. */
void usage_prior_in_season(struct usage_prior *prior, gint64 launch, gint64 haul_out);
/* Equal shares for each day from the launch to the day before the haul-out, days of the year as month *
 * 100 + day; equal the year round when they are the same or one is NONE. */
void usage_season(double share[12], gint64 launch, gint64 haul_out);

struct usage {
	double rate[12]; /* hours a day in each month */
	double phi; /* hours: what an interval's hours vary by, over their mean */
	double rate_spread2, year_spread2; /* c_r^2, c_y^2 */
	int year_begins;
	int rounds; /* that the fit took */
};
void usage_fit(const struct usage_prior *prior, const struct usage_interval *interval, int n,
	       struct usage *usage);
double usage_year(const struct usage *usage); /* hours in a year of 365.25 days */
/* Fitted hours on the days [from, to). */
double usage_hours(const struct usage *usage, gint64 from, gint64 to);

/* phi from single outings instead, as far as they are on record: their squares over their sum, by the
 * prior's weight. */
double usage_phi_of_outings(const struct usage_prior *prior, int n, double sum, double sum_of_squares);
void usage_set_phi(struct usage *usage, double phi); /* the uncertainty of the rates goes with it */

/* Days on which the boat may be used, and what an hour of running then counts for (1, or a rate of wear). */
struct usage_days {
	gint64 from, to;
	double counts;
};

/* Ten years ahead, laid out once for many limits; reused from boat to boat without new allocations. */
struct usage_ahead;
struct usage_ahead *usage_ahead_new(void);
void usage_ahead_free(struct usage_ahead *a);
/* days ascending, not overlapping; on other days there is no running.  NULL: all days, an hour counting
 * for one. */
void usage_look_ahead(struct usage_ahead *a, const struct usage *usage, gint64 today,
		      const struct usage_days *days, int n);
/* Hours (as they count) expected from today to before day, the variance of that, and the chance that they
 * reach remaining by then. */
double usage_expected(const struct usage_ahead *a, gint64 day);
double usage_variance(const struct usage_ahead *a, gint64 day);
double usage_chance(const struct usage_ahead *a, double remaining, gint64 day);

/* The first days by which the chance is .1, .5 and .9; NONE: not in sight within ten years.  The day
 * itself does not count yet: what is reached by its beginning. */
struct usage_due {
	gint64 early, likely, late;
};
/* Whether the chance is below .1 up to that day: at little cost where it is far off. */
gboolean usage_is_later(const struct usage_ahead *a, double remaining, gint64 day);
/* Today when nothing remains.  calendar: the day on which it is due whatever was run; NONE: there is none. */
void usage_reach(const struct usage_ahead *a, double remaining, gint64 calendar, struct usage_due *due);

#endif
