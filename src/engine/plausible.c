/* Readings that cannot be right, those that probably are not, and what was probably meant. */
#include "engine/plausible.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_sf_gamma.h>
#include <math.h>
#include <string.h>

/* Judgement: what is worth a word, what a question, and from what use expected too little is noticed. */
#define NOTE_BELOW 1e-3
#define ASK_BELOW 1e-6
#define LITTLE_FROM 10.0
/* Use is possible on any day; as hours a day. */
#define LEAST_USE 1e-4

static double
scale_of(const struct use *u)
{
	return u->phi + u->c2 * u->expected;
}

/* With no use expected, or no spread, the gamma is a point. */
static gboolean
is_point(const struct use *u)
{
	return !(u->expected > 0) || !(scale_of(u) > 0);
}

double
use_upper(const struct use *u, double hours)
{
	if (is_point(u))
		return u->expected >= hours;
	return hours > 0 ? gsl_cdf_gamma_Q(hours, u->expected / scale_of(u), scale_of(u)) : 1;
}

double
use_lower(const struct use *u, double hours)
{
	if (is_point(u))
		return u->expected <= hours;
	return hours > 0 ? gsl_cdf_gamma_P(hours, u->expected / scale_of(u), scale_of(u)) : 0;
}

enum doubt
reading_doubt(const struct use *u, double hours, gint64 days)
{
	double gap = (double)MAX(days, 0), upper;
	struct use use = { fmax(u->expected, gap * LEAST_USE), u->phi, u->c2 };

	if (hours < 0)
		return DOUBT_BACKWARDS;
	if (hours > 24 * gap + 1)
		return DOUBT_IMPOSSIBLE;
	upper = use_upper(&use, hours);
	if (upper < ASK_BELOW)
		return DOUBT_ASK;
	if (upper < NOTE_BELOW)
		return DOUBT_NOTE;
	if (hours > 0 && use.expected >= LITTLE_FROM && use_lower(&use, hours) < NOTE_BELOW)
		return DOUBT_NOTE;
	return DOUBT_NONE;
}

double
guess_score(const struct use *u, double hours, gboolean point, gboolean exchange)
{
	double scale = scale_of(u), shape = u->expected / scale, x = fmax(hours, .05);
	double density;

	if (is_point(u))
		return -fabs(hours - u->expected);
	density = (shape - 1) * log(x / scale) - x / scale - log(scale) - gsl_sf_lngamma(shape);
	return density + log(point ? 4 : exchange ? 2 : 1);
}

struct guess { char text[16]; double value, score; };

/* The best so far, no two of the same value. */
struct guesses {
	const struct use *use;
	double previous, most;	/* the range that a reading can lie in */
	struct guess best[4];	/* one more than is wanted, to put a new one into */
	int n;
};

/* A number as a meter shows it: no needless nought before, a digit on both sides of the point, one decimal at most. */
static gboolean
reads_as_meter(const char *text, double *value)
{
	const char *point = strchr(text, '.');

	if (!*text || (text[0] == '0' && g_ascii_isdigit(text[1])))
		return FALSE;
	if (point && (point == text || strlen(point) != 2 || point[1] == '.'))
		return FALSE;
	*value = g_ascii_strtod(text, NULL);
	return TRUE;
}

static void
forget(struct guesses *g, int i)
{
	g->n--;
	memmove(&g->best[i], &g->best[i + 1], (size_t)(g->n - i) * sizeof g->best[0]);
}

static void
consider(struct guesses *g, const char *text, gboolean point, gboolean exchange)
{
	struct guess new;
	int at = 0;

	if (!reads_as_meter(text, &new.value) || new.value < g->previous || new.value > g->most)
		return;
	new.score = guess_score(g->use, new.value - g->previous, point, exchange);
	for (int i = 0; i < g->n; i++)
		if (fabs(g->best[i].value - new.value) < 1e-9) {
			if (g->best[i].score >= new.score)
				return;
			forget(g, i);
			break;
		}
	while (at < g->n && g->best[at].score >= new.score)
		at++;
	if (at == 3)
		return;
	g_strlcpy(new.text, text, sizeof new.text);
	memmove(&g->best[at + 1], &g->best[at], (size_t)(MIN(g->n, 3) - at) * sizeof g->best[0]);
	g->best[at] = new;
	g->n = MIN(g->n + 1, 3);
}

/* One character left out, changed, or exchanged with the next. */
static void
edits_at(struct guesses *g, const char *typed, size_t i)
{
	char text[16];
	size_t n = strlen(typed);

	g_strlcpy(text, typed, sizeof text);
	memmove(text + i, text + i + 1, n - i);
	consider(g, text, typed[i] == '.', FALSE);
	for (const char *c = "0123456789."; *c; c++) {
		g_strlcpy(text, typed, sizeof text);
		text[i] = *c;
		if (*c != typed[i])
			consider(g, text, *c == '.' || typed[i] == '.', FALSE);
	}
	if (i + 1 < n && typed[i] != typed[i + 1]) {
		g_strlcpy(text, typed, sizeof text);
		text[i] = typed[i + 1];
		text[i + 1] = typed[i];
		consider(g, text, text[i] == '.' || text[i + 1] == '.', TRUE);
	}
}

/* One character put in before the i-th. */
static void
insertions_at(struct guesses *g, const char *typed, size_t i)
{
	char text[16];

	for (const char *c = "0123456789."; *c; c++) {
		memcpy(text, typed, i);
		text[i] = *c;
		g_strlcpy(text + i + 1, typed + i, sizeof text - i - 1);
		consider(g, text, *c == '.', FALSE);
	}
}

int
reading_guesses(const struct use *u, double previous, gint64 days, const char *typed, char guess[3][16])
{
	struct guesses g = { .use = u, .previous = previous, .most = previous + 24 * (double)MAX(days, 0) };
	size_t n = strlen(typed);

	if (!n || n > 14 || strspn(typed, "0123456789.") != n)
		return 0;
	for (size_t i = 0; i < n; i++)
		edits_at(&g, typed, i);
	for (size_t i = 0; i <= n; i++)
		insertions_at(&g, typed, i);
	for (int i = 0; i < g.n; i++)
		g_strlcpy(guess[i], g.best[i].text, sizeof guess[i]);
	return g.n;
}

static double
median(double *x, int n)
{
	for (int i = 1; i < n; i++)	/* few values: insertion sort */
		for (int j = i; j > 0 && x[j - 1] > x[j]; j--) {
			double swap = x[j];

			x[j] = x[j - 1];
			x[j - 1] = swap;
		}
	return n % 2 ? x[n / 2] : (x[n / 2 - 1] + x[n / 2]) / 2;
}

double
outlier_z(const double *x, int n, double value)
{
	g_autofree double *copy = NULL;
	double middle, spread;

	if (n < 5)
		return NAN;
	copy = g_memdup2(x, (gsize)n * sizeof *x);
	middle = median(copy, n);
	for (int i = 0; i < n; i++)
		copy[i] = fabs(x[i] - middle);
	spread = median(copy, n);
	return spread > 0 ? .6745 * (value - middle) / spread : NAN;
}

double
laplace_u(const double *gap, int n)
{
	double at = 0, sum = 0;

	if (n < 2)
		return NAN;
	for (int i = 0; i < n; i++) {
		at += gap[i];
		sum += i < n - 1 ? at : 0;
	}
	return (sum / (n - 1) - at / 2) / (at * sqrt(1. / (12. * (n - 1))));
}

void
power_law(const double *gap, int n, double *exponent, double *scale)
{
	double all = 0, at = 0, logs = 0;

	*exponent = *scale = NAN;
	for (int i = 0; i < n; i++)
		all += gap[i];
	for (int i = 0; i < n; i++) {
		at += gap[i];
		logs += log(all / at);
	}
	if (!(logs > 0))
		return;
	*exponent = n / logs;
	*scale = n / pow(all, *exponent);
}
