#include "engine/timeline.h"

#include "base/date.h"
#include "engine/timeline_inside.h"

enum { HORIZON_MONTHS = 120 };

static GArray *
array_of(guint size)
{
	return g_array_new(FALSE, FALSE, size);
}

struct timeline *
timeline_new(void)
{
	struct timeline *t = g_new0(struct timeline, 1);

	t->seasons = array_of(sizeof(struct season_day));
	t->lays = array_of(sizeof(struct lay));
	t->span_from = array_of(sizeof(gint32));
	t->span_key = array_of(sizeof(guint32));
	t->spans = array_of(sizeof(struct span));
	t->days_out = array_of(sizeof(struct day_out));
	t->trips = array_of(sizeof(int));
	t->seconds = array_of(sizeof(gint64));
	t->ahead = array_of(sizeof(struct ahead));
	t->learned = g_array_new(FALSE, TRUE, sizeof(struct learned));
	t->outlooks = g_array_new(FALSE, TRUE, sizeof(struct outlook));
	t->intervals = array_of(sizeof(struct usage_interval));
	t->days_ahead = array_of(sizeof(struct usage_days));
	t->seconds_sums = g_array_new(FALSE, TRUE, sizeof(struct sums));
	return t;
}

void
timeline_free(struct timeline *t)
{
	GArray *const all[] = { t->seasons, t->lays, t->span_from, t->span_key, t->spans,
				t->days_out, t->trips, t->seconds, t->ahead,
				t->learned, t->outlooks, t->intervals, t->days_ahead };

	forecast_free(t);
	for (guint i = 0; i < t->seconds_sums->len; i++)
		g_free(ELEMENTS(t->seconds_sums, struct sums)[i].sum);
	g_array_free(t->seconds_sums, TRUE);
	for (int m = 0; m < RATED_COUNT; m++)
		g_free(t->days[m].sum);
	for (guint i = 0; i < G_N_ELEMENTS(all); i++)
		g_array_free(all[i], TRUE);
	g_free(t);
}

/* Old sums stay where they are, out of date by their build's number. */
static void
sums_lay_out(struct timeline *t)
{
	guint n = (guint)(t->n_engines + 1) * RATED_COUNT;

	if (t->seconds_sums->len < n)
		g_array_set_size(t->seconds_sums, n);
	t->made++;
}

void
timeline_build(struct timeline *t, const struct timeline_in *in)
{
	t->today = CLAMP(in->today, DAY_FIRST, DAY_LAST - 1);
	t->end = day_add_months(t->today, HORIZON_MONTHS);
	if (t->end == NONE)
		t->end = DAY_LAST;
	t->from = in->from == NONE ? t->today : CLAMP(in->from, DAY_FIRST, t->today);
	t->start = in->n_runs ? CLAMP(in->run[0].date, DAY_FIRST, t->from) : t->from;
	t->habit = in->habit;
	t->n_engines = MAX(in->n_engines, 0);
	sums_lay_out(t);
	t->rates = in->rates;
	seasons_lay_out(t, in);
	lays_lay_out(t, in);
	days_out_lay_out(t, in);
	spans_lay_out(t);
	forecast_lay_out(t);
}

int
timeline_spans(const struct timeline *t, const struct span **span)
{
	const gint32 *from = ELEMENTS(t->span_from, const gint32);
	const guint32 *key = ELEMENTS(t->span_key, const guint32);
	struct span *last = NULL;

	for (int i = t->spans->len ? t->n_spans : 0; i < t->n_spans; i++) {
		double celsius = rates_celsius(t->rates, key[i]);
		struct span s = { from[i], from[i + 1], KEY_STAND(key[i]), KEY_WATER(key[i]),
				  KEY_EXPOSURE(key[i]) == EXPOSURE_FILM, KEY_RINSED(key[i]), KEY_ASSUMED(key[i]),
				  celsius, celsius };

		if (i && KEY_SPAN(key[i]) == KEY_SPAN(key[i - 1])) {
			last->to = s.to;
			last->coldest = MIN(last->coldest, celsius);
			last->warmest = MAX(last->warmest, celsius);
			continue;
		}
		g_array_append_val(t->spans, s);
		last = &ELEMENTS(t->spans, struct span)[t->spans->len - 1];
	}
	*span = ELEMENTS(t->spans, const struct span);
	return (int)t->spans->len;
}
