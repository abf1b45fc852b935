/* long: the form of a boat is told where it is read.
 * A boat for the engine, read from lines of text, so that a test's table shows all of it:
 *
 *	today 2026-11-25			the day asked for
 *	from 2020-01-01				the first day; the day asked for without
 *	usual 04-15 10-15 afloat ashore fresh	launch, haul-out, berth, winter, water; this without
 *	engines 1				1 without
 *	rate raw-water.salt 2			a constant of wear; those of raw water and growth are 1 without
 *	stay 2024-05-01 2024-06-01 afloat salt	- for a stay that lasts, a water not said
 *	season 2024-04-20 2024-10-10		- for not yet out
 *	run 2024-05-05 9000 0 salt rinsed trip	seconds, engine; - for a water not said, not rinsed, no trip
 *
 * and of a task:
 *
 *	task corrosion strands out done 0 service 2024-05-01 3600 once 2024-03-01 36000 72000
 *		mechanism, consequence, place, rule, engine, since what and when, seconds run after, done once; -
 *		and may be: the earliest day, seconds run since then at least and at most; -
 *	limit months 12
 *		also months 12 salt 6, hours (in seconds), first-hours, outings, seasons, event launch,
 *		happening 2024-07-01, condition [2024-07-01]
 * Lines end with a line end or a semicolon. */
#ifndef TESTS_ENGINE_BOAT_TEXT_H
#define TESTS_ENGINE_BOAT_TEXT_H

#include "boat_words.h"
#include "engine/wear.h"

enum { MOST_RUNS = 4000, MOST_FEW = 64 };

struct boat_text {
	struct timeline_in in;
	struct wear_table wear;
	struct run run[MOST_RUNS];
	struct stay_in stay[MOST_FEW];
	struct season_in season[MOST_FEW];
	struct task_in task;
	struct limit_in limit[MOST_FEW];
};

static inline void
limit_line(struct boat_text *b, char **w)
{
	struct limit_in *l = &b->limit[b->task.n_limits++];

	*l = (struct limit_in) { (enum limit_kind)word_at(LIMITS, w[1]), NONE, NONE, EVENT_LAUNCH, NONE, NONE };
	if (l->kind == LIMIT_EVENT)
		l->event = (enum season_event)word_at(EVENTS, w[2]);
	else if (l->kind == LIMIT_HAPPENING || l->kind == LIMIT_CONDITION)
		*(l->kind == LIMIT_HAPPENING ? &l->happened : &l->stopped) = w[2] ? day_at(w[2]) : NONE;
	else
		l->amount = g_ascii_strtoll(w[2], NULL, 10);
	if (l->amount != NONE && w[3] && !strcmp(w[3], "salt"))
		l->salt = g_ascii_strtoll(w[4], NULL, 10);
}

static inline gint64
number_at(const char *word)
{
	return strcmp(word, "-") ? g_ascii_strtoll(word, NULL, 10) : NONE;
}

static inline void
task_line(struct boat_text *b, char **w)
{
	b->task = (struct task_in) {
		.mechanism = (enum mechanism)word_at(MECHANISMS, w[1]),
		.consequence = (enum consequence)word_at(CONSEQUENCES, w[2]),
		.place = (enum workplace)word_at(PLACES, w[3]),
		.rule = (enum clock_rule)word_at(RULES, w[4]),
		.engine = (int)strtol(w[5], NULL, 10),
		.since = { .day = day_at(w[7]), .after = g_ascii_strtoll(w[8], NULL, 10), .earliest = NONE,
			   .ran = NONE, .ran_most = NONE },
		.done_once = !strcmp(w[9], "once"),
		.asked = NONE, .done = NONE,
		.limit = b->limit,
	};
	b->task.since.what = (int)word_at(SINCES, w[6]);
	if (!w[10])
		return;
	b->task.since.earliest = day_at(w[10]);
	b->task.since.ran = number_at(w[11]);
	b->task.since.ran_most = number_at(w[12]);
}

static inline void
run_line(struct boat_text *b, char **w)
{
	b->run[b->in.n_runs++] = (struct run) {
		.date = (gint32)day_at(w[1]),
		.seconds = (gint32)strtol(w[2], NULL, 10),
		.engine = (gint16)strtol(w[3], NULL, 10),
		.water = (guint8)water_at(w[4]),
		.rinsed = !strcmp(w[5], "rinsed"),
		.trip = !strcmp(w[6], "trip"),
	};
}

static inline void
usual_line(struct boat_text *b, char **w)
{
	b->in.habit = (struct habit) {
		.launch = yearday_at(w[1]),
		.haul_out = yearday_at(w[2]),
		.berth = stand_at(w[3]),
		.winter = stand_at(w[4]),
		.water = water_at(w[5]),
	};
}

static inline void
set_rate(struct boat_text *b, const char *name, double value)
{
	double *rate = wear_table_at(&b->wear, name);

	if (!rate)
		wrong(name);
	*rate = value;
}

/* Words of one line. */
static inline void
boat_line(struct boat_text *b, char **w)
{
	struct timeline_in *in = &b->in;

	if (!strcmp(w[0], "today"))
		in->today = day_at(w[1]);
	else if (!strcmp(w[0], "from"))
		in->from = day_at(w[1]);
	else if (!strcmp(w[0], "usual"))
		usual_line(b, w);
	else if (!strcmp(w[0], "engines"))
		in->n_engines = (int)strtol(w[1], NULL, 10);
	else if (!strcmp(w[0], "rate"))
		set_rate(b, w[1], g_ascii_strtod(w[2], NULL));
	else if (!strcmp(w[0], "stay"))
		b->stay[in->n_stays++] = (struct stay_in) { day_at(w[1]), day_at(w[2]), stand_at(w[3]),
							    water_at(w[4]), NULL };
	else if (!strcmp(w[0], "season"))
		b->season[in->n_seasons++] = (struct season_in) { day_at(w[1]), day_at(w[2]) };
	else if (!strcmp(w[0], "run"))
		run_line(b, w);
	else if (!strcmp(w[0], "task"))
		task_line(b, w);
	else if (!strcmp(w[0], "limit"))
		limit_line(b, w);
	else if (*w[0])
		wrong(w[0]);
}

/* Of memory that was all 0, or was used before. */
static inline void
boat_text_init(struct boat_text *b)
{
	wear_rates_free(b->in.rates);
	memset(b, 0, sizeof *b);
	b->in.from = NONE;
	b->in.n_engines = 1;
	b->in.habit = (struct habit) { STAND_AFLOAT, STAND_ASHORE, WATER_FRESH, 415, 1015, NULL };
	b->in.run = b->run;
	b->in.stay = b->stay;
	b->in.season = b->season;
	wear_table_default(&b->wear);
	for (int i = 0; i < n_wear_constants; i++)
		if (g_str_has_prefix(wear_constants[i].key, "raw-water.") || g_str_has_prefix(wear_constants[i].key, "growth."))
			set_rate(b, wear_constants[i].key, 1);
	b->task.limit = b->limit;
}

static inline void
boat_text_read(struct boat_text *b, const char *text)
{
	g_auto(GStrv) lines = g_strsplit_set(text, ";\n", -1);

	for (int i = 0; lines[i]; i++) {
		g_auto(GStrv) words = g_strsplit(g_strstrip(lines[i]), " ", -1);

		if (words[0])
			boat_line(b, words);
	}
}

/* Its timeline, with rates of its own, which the timeline needs as long as it is asked. */
static inline void
boat_timeline(struct boat_text *b, struct timeline *t)
{
	wear_rates_free(b->in.rates);
	b->in.rates = wear_rates_new(&b->wear);
	timeline_build(t, &b->in);
}

#endif
