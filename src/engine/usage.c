/* What is learned from a log of running hours. */
#include "engine/usage.h"

#include "base/date.h"

#include <math.h>
#include <string.h>

enum { MONTHS = 12, MOST_ROUNDS = 5000 };

/* A rate is never nought, or no log could raise it. */
#define LEAST_RATE 1e-4
#define SETTLED 1e-13
/* Intervals of less than this many hours expected say nothing of the spread. */
#define LEAST_HOURS .5

static const double usual_days[MONTHS] = { 31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 };

/* How many days lie in each month, and over how many months they go. */
static int
days_by_month(gint64 from, gint64 to, double days[MONTHS])
{
	int year, month, mday, n = 0;
	gint64 end;

	for (int m = 0; m < MONTHS; m++)
		days[m] = 0;
	if (from < DAY_FIRST || to > DAY_LAST || from >= to)
		return 0;
	day_to_ymd(from, &year, &month, &mday);
	for (end = from - mday + 1; from < to; n++) {
		gint64 until;

		end += month_days(year, month);
		until = MIN(to, end);
		days[month - 1] += (double)(until - from);
		from = until;
		year += month == MONTHS;
		month = month % MONTHS + 1;
	}
	return n;
}

static double
expected(const double rate[MONTHS], const double days[MONTHS])
{
	double hours = 0;

	for (int m = 0; m < MONTHS; m++)
		hours += rate[m] * days[m];
	return hours;
}

int
usage_intervals(const struct usage_reading *reading, int n, struct usage_interval *interval)
{
	int found = 0, last = -1;

	for (int i = 0; i < n; i++) {
		if (i + 1 < n && reading[i + 1].day == reading[i].day)
			continue;
		if (last >= 0 && reading[i].hours >= reading[last].hours)
			interval[found++] =
				(struct usage_interval){ reading[last].day, reading[i].day,
							 reading[i].hours - reading[last].hours, 1 };
		last = i;
	}
	return found;
}

/* Days of that month before a day of the year. */
static int
days_before(gint64 yearday, int month, int length)
{
	if (yearday / 100 != month)
		return yearday / 100 > month ? length : 0;
	return MIN((int)(yearday % 100) - 1, length);
}

/* Days of a common year in season; returns their sum. */
static double
season_days(double days[MONTHS], gint64 launch, gint64 haul_out)
{
	gboolean all_year = launch == NONE || haul_out == NONE || launch == haul_out;
	double all = 0;

	for (int m = 0; m < MONTHS; m++) {
		int length = month_days(1970, m + 1);
		int in = all_year ? length
				  : days_before(haul_out, m + 1, length) - days_before(launch, m + 1, length)
					    + (launch > haul_out ? length : 0);

		days[m] = in;
		all += in;
	}
	return all;
}

void
usage_season(double share[12], gint64 launch, gint64 haul_out)
{
	double all = season_days(share, launch, haul_out);

	/* None between 29 February and 1 March. */
	for (int m = 0; m < MONTHS; m++)
		share[m] = all > 0 ? share[m] / all : 1. / MONTHS;
}

void
usage_prior_default(struct usage_prior *prior, gint64 launch, gint64 haul_out)
{
	*prior = (struct usage_prior){
		.hours = 50, .years = .5, .phi = 4, .phi_weight = 4, .year_spread = .25, .year_begins = 1
	};
	usage_season(prior->share, launch, haul_out);
	memcpy(prior->days, usual_days, sizeof usual_days);
	/* A season that runs over New Year is one of the southern summer. */
	if (launch != NONE && haul_out != NONE && launch > haul_out)
		prior->year_begins = 7;
}

void
usage_prior_in_season(struct usage_prior *prior, gint64 launch, gint64 haul_out)
{
	double all;

	usage_prior_default(prior, launch, haul_out);
	all = season_days(prior->days, launch, haul_out);
	for (int m = 0; m < MONTHS && all > 0; m++) {
		prior->days[m] = fmax(prior->days[m], 1);
		prior->share[m] = prior->days[m] / all;
	}
	if (!(all > 0))
		memcpy(prior->days, usual_days, sizeof usual_days);
}

/* Hours known only as a sum over several months. */
struct stretch {
	double hours, days[MONTHS];
};

struct log {
	double hours[MONTHS], days[MONTHS]; /* hours known by the month, the prior's among them; all days */
	double all; /* hours logged */
	struct stretch *stretch;
	int n;
};

static void
log_read(struct log *log, const struct usage_prior *prior, const struct usage_interval *interval, int n)
{
	for (int m = 0; m < MONTHS; m++) {
		log->hours[m] = prior->years * prior->hours * prior->share[m];
		log->days[m] = prior->years * prior->days[m];
	}
	for (int i = 0; i < n; i++) {
		struct stretch *s = &log->stretch[log->n];
		gboolean several = days_by_month(interval[i].from, interval[i].to, s->days) > 1;

		s->hours = interval[i].weight * interval[i].hours;
		log->all += s->hours;
		log->n += several;
		for (int m = 0; m < MONTHS; m++) {
			log->days[m] += interval[i].weight * s->days[m];
			if (!several && s->days[m] > 0)
				log->hours[m] += s->hours;
		}
	}
}

/* Share out what is known in sum by the rates so far, and take the rates of that; how far they moved. */
static double
round_of(const struct log *log, double rate[MONTHS])
{
	double hours[MONTHS], moved = 0;

	for (int m = 0; m < MONTHS; m++)
		hours[m] = log->hours[m];
	for (int i = 0; i < log->n; i++) {
		const struct stretch *s = &log->stretch[i];
		double scale = s->hours / expected(rate, s->days);

		for (int m = 0; m < MONTHS; m++)
			hours[m] += scale * rate[m] * s->days[m];
	}
	for (int m = 0; m < MONTHS; m++) {
		double new = log->days[m] > 0 ? fmax(LEAST_RATE, hours[m] / log->days[m]) : LEAST_RATE;

		moved = fmax(moved, fabs(new - rate[m]));
		rate[m] = new;
	}
	return moved;
}

static double
phi_of(const struct usage_prior *prior, double n, double sum)
{
	double weight = prior->phi_weight + n;

	return fmax(prior->phi / 2,
		    weight > 0 ? (prior->phi_weight * prior->phi + sum) / weight : prior->phi);
}

static double
phi_of_intervals(const struct usage_prior *prior, const struct usage *usage,
		 const struct usage_interval *interval, int n)
{
	double sum = 0;
	int counted = 0;

	for (int i = 0; i < n; i++) {
		double mu = usage_hours(usage, interval[i].from, interval[i].to),
		       off = interval[i].hours - mu;

		if (mu < LEAST_HOURS)
			continue;
		sum += off * off / mu;
		counted++;
	}
	return phi_of(prior, counted, sum);
}

double
usage_phi_of_outings(const struct usage_prior *prior, int n, double sum, double sum_of_squares)
{
	return sum > 0 ? phi_of(prior, n, n * sum_of_squares / sum) : phi_of(prior, 0, 0);
}

void
usage_set_phi(struct usage *usage, double phi)
{
	usage->rate_spread2 *= phi / usage->phi;
	usage->phi = phi;
}

void
usage_fit(const struct usage_prior *prior, const struct usage_interval *interval, int n, struct usage *usage)
{
	g_autofree struct stretch *stretch = g_new(struct stretch, (gsize)n + 1);
	struct log log = { .stretch = stretch };
	double weight;

	for (int m = 0; m < MONTHS; m++)
		usage->rate[m] = fmax(LEAST_RATE, prior->hours * prior->share[m] / prior->days[m]);
	log_read(&log, prior, interval, n);
	usage->rounds = 1;
	while (round_of(&log, usage->rate) >= SETTLED && usage->rounds < MOST_ROUNDS)
		usage->rounds++;
	usage->phi = phi_of_intervals(prior, usage, interval, n);
	weight = log.all + prior->years * prior->hours;
	usage->rate_spread2 = weight > 0 ? usage->phi / weight : 1;
	usage->year_spread2 = prior->year_spread * prior->year_spread;
	usage->year_begins = prior->year_begins;
}

double
usage_year(const struct usage *usage)
{
	return expected(usage->rate, usual_days);
}

double
usage_hours(const struct usage *usage, gint64 from, gint64 to)
{
	double days[MONTHS];

	days_by_month(from, to, days);
	return expected(usage->rate, days);
}
