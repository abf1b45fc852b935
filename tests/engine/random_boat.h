/* Boats at random, for what must hold of any. */
#ifndef TESTS_ENGINE_RANDOM_BOAT_H
#define TESTS_ENGINE_RANDOM_BOAT_H

#include "boat_text.h"

/* The seed is printed; SEED=number repeats a run. */
static inline GRand *
test_rand(const char *what)
{
	const char *given = g_getenv("SEED");
	guint32 seed = given ? (guint32)strtoul(given, NULL, 10) : g_random_int();

	printf("%s: SEED=%u\n", what, seed);
	fflush(stdout);
	return g_rand_new_with_seed(seed);
}

static inline int
any(GRand *r, int below)
{
	return g_rand_int_range(r, 0, below);
}

static inline void
random_rates(struct boat_text *b, GRand *r)
{
	static const double some[] = { 1, 1.25, 4. / 3, 1.5, 2 };

	static const char *const names[] = { "brackish", "fresh", "afloat", "rinsed" };

	/* Salt wears most, whatever else. */
	set_rate(b, "raw-water.salt", 2);
	set_rate(b, "growth.salt", 2);
	for (guint i = 0; i < G_N_ELEMENTS(names); i++) {
		g_autofree char *raw_water = g_strconcat("raw-water.", names[i], NULL);
		g_autofree char *growth = g_strconcat("growth.", names[i], NULL);

		set_rate(b, raw_water, some[any(r, G_N_ELEMENTS(some))]);
		set_rate(b, growth, some[any(r, G_N_ELEMENTS(some))]);
	}
	set_rate(b, "raw-water.fresh", 1);	/* what both presume */
	set_rate(b, "growth.fresh", 1);
}

static inline void
random_runs(struct boat_text *b, GRand *r)
{
	int day = (int)b->in.from;

	for (int n = any(r, 200); n > 0 && day < b->in.today; n--) {
		b->run[b->in.n_runs++] = (struct run) {
			.date = day,
			.seconds = any(r, 20000),
			.engine = (gint16)(any(r, 3) - 1),
			.water = (guint8)any(r, WATER_COUNT + 1),
			.rinsed = any(r, 2),
			.trip = TRUE,
		};
		day += any(r, 3) ? any(r, 20) : any(r, 200);
	}
}

static inline void
random_places(struct boat_text *b, GRand *r)
{
	gint64 day = b->in.from + any(r, 500);

	while (day < b->in.today && any(r, 4) && b->in.n_stays < 20) {
		b->stay[b->in.n_stays++] = (struct stay_in) {
			.from = day,
			.to = day + 1 + any(r, 90),
			.stand = (enum stand)any(r, STAND_COUNT),
			.water = (enum water)any(r, WATER_COUNT + 1),
		};
		day = b->stay[b->in.n_stays - 1].to + any(r, 200);
	}
	day = b->in.from + any(r, 500);
	while (day < b->in.today && any(r, 4) && b->in.n_seasons < 20) {
		b->season[b->in.n_seasons++] = (struct season_in) { day, day + 30 + any(r, 200) };
		day = b->season[b->in.n_seasons - 1].haul_out + 60 + any(r, 400);
	}
}

static inline void
random_boat(struct boat_text *b, GRand *r)
{
	boat_text_init(b);
	b->in.today = 15000 + any(r, 8000);
	b->in.from = b->in.today - any(r, 3000);
	b->in.n_engines = 2;
	b->in.habit.berth = (enum stand)any(r, STAND_COUNT);
	b->in.habit.winter = (enum stand)any(r, STAND_COUNT);
	b->in.habit.water = (enum water)any(r, WATER_COUNT);
	random_rates(b, r);
	random_runs(b, r);
	random_places(b, r);
}

/* A task of months on a random boat. */
static inline void
random_task(struct boat_text *b, GRand *r)
{
	random_boat(b, r);
	b->task = (struct task_in) {
		.mechanism = (enum mechanism)any(r, MECH_COUNT),
		.place = (enum workplace)any(r, WORKPLACE_COUNT),
		.consequence = (enum consequence)any(r, CONSEQUENCE_COUNT),
		.since = { .earliest = NONE, .ran = NONE, .ran_most = NONE },
		.asked = NONE, .done = NONE,
		.limit = b->limit,
		.n_limits = 1,
	};
	b->task.since.what = SINCE_SERVICE;
	b->task.since.day = b->in.from + any(r, (int)(b->in.today - b->in.from) + 1);
	b->limit[0] = (struct limit_in) { LIMIT_MONTHS, 1 + any(r, 100), NONE, EVENT_LAUNCH, NONE, NONE };
}

/* Put a run in at its place among the others. */
static inline void
insert_run(struct boat_text *b, struct run run)
{
	int i = b->in.n_runs++;

	for (; i > 0 && b->run[i - 1].date > run.date; i--)
		b->run[i] = b->run[i - 1];
	b->run[i] = run;
}

/* Cut a stay in two that say the same; FALSE when none can be. */
static inline gboolean
split_stay(struct boat_text *b, GRand *r)
{
	int n = b->in.n_stays, i = n ? any(r, n) : 0;
	int length = n ? (int)(b->stay[i].to - b->stay[i].from) : 0;

	if (length < 2)
		return FALSE;
	memmove(&b->stay[i + 1], &b->stay[i], (size_t)(n - i) * sizeof b->stay[0]);
	b->stay[i].to = b->stay[i + 1].from = b->stay[i].from + 1 + any(r, length - 1);
	b->in.n_stays++;
	return TRUE;
}

#endif
