/* Logbooks of a known size for the bench, the same ones on every machine:
 *
 *	make_logbook S|M|L FILE [OUTINGS.csv]
 *
 * S: 1 boat, 10 years, 400 outings.  M: 5 boats, 40 years, 10,000.  L: 1,000 boats, 25 years, 1,000,000.  With
 * OUTINGS.csv the outings go there, as a person would type them, and the logbook holds neither outings nor services.
 * S and M have keys as rows get them that are entered one by one, L as after one import of each kind. */
#include "bench_tasks.h"

#include "base/amount.h"
#include "base/date.h"
#include "store/db.h"
#include "store/rows.h"

#include <stdio.h>
#include <string.h>

struct shape { const char *name; int boats, years, outings; gboolean one_by_one; };

static const struct shape shapes[] = {
	{ "S", 1, 10, 400, TRUE },
	{ "M", 5, 40, 2000, TRUE },
	{ "L", 1000, 25, 1000, FALSE },
};

enum { LAST_YEAR = 2025, N_FITTINGS = G_N_ELEMENTS(fittings), N_TASKS = G_N_ELEMENTS(tasks) };
/* What rows may hang on one boat, and the parts of its life that draw their chances apart. */
enum { ROOM = 1 << 16, CHANCE_BOAT = 1, CHANCE_SEASON, CHANCE_OUTING, CHANCE_SERVICE, CHANCE_KEY };

struct maker {
	const struct shape *shape;
	struct db *db;
	struct bulk *bulk;
	FILE *csv;	/* NULL: outings go to the logbook */
	GError *err;
};

/* splitmix64 (Vigna 2015, public domain): the next of a sequence, whatever the state began as. */
static guint64
next_random(guint64 *state)
{
	guint64 z = *state += G_GUINT64_CONSTANT(0x9e3779b97f4a7c15);

	z = (z ^ z >> 30) * G_GUINT64_CONSTANT(0xbf58476d1ce4e5b9);
	z = (z ^ z >> 27) * G_GUINT64_CONSTANT(0x94d049bb133111eb);
	return z ^ z >> 31;
}

static guint64
chances(int what, int boat, int part)
{
	guint64 state = (guint64)what << 48 | (guint64)boat << 16 | (guint64)part;

	return next_random(&state);
}

static int
below(guint64 *state, int n)
{
	return (int)(next_random(state) % (guint64)n);
}

/* Keys as the store gives them: 24 bits of the journal entry that wrote the row, 39 bits from some number on. */
static gint64
key(const struct maker *m, enum record r, int boat, int i)
{
	gint64 entry = (gint64)r + 1, start = ((gint64)boat << 16) + i;

	if (m->shape->one_by_one && (r == RECORD_OUTING || r == RECORD_SERVICE)) {
		entry = 100 + (gint64)i * 64 + boat * 2 + (r == RECORD_OUTING);
		start = 0;
	}
	start += (gint64)(chances(CHANCE_KEY, (int)(entry & 0xffff), (int)(entry >> 16)) >> 26);
	return (entry << 39) + start;
}

static void
put(struct maker *m, const void *record)
{
	if (!m->err)
		bulk_put(m->bulk, record, &m->err);
}

static char *
text(const char *s)
{
	return (char *)(guintptr)s;
}

static gboolean
reads_meter(int boat)
{
	return boat % 3 == 2;
}

static int
first_year(const struct maker *m)
{
	return LAST_YEAR + 1 - m->shape->years;
}

static void
make_boat(struct maker *m, int boat)
{
	guint64 chance = chances(CHANCE_BOAT, boat, 0);
	struct boat b;
	char name[32];

	record_init(RECORD_BOAT, &b);
	g_snprintf(name, sizeof name, "Grey Heron %03d", boat + 1);
	b.id = key(m, RECORD_BOAT, boat, 0);
	b.name = name;
	b.kind = KIND_PETROL_STERNDRIVE;
	b.berth = below(&chance, 5) < 2 ? STAND_TRAILER : STAND_AFLOAT;
	b.winter = STAND_ASHORE;
	b.water = below(&chance, 5) < 3 ? WATER_FRESH : below(&chance, 2) ? WATER_BRACKISH : WATER_SALT;
	b.launch = 415;
	b.haul_out = 1010;
	b.since = day_from_ymd(first_year(m), 1, 1);
	put(m, &b);
}

static void
make_engine(struct maker *m, int boat)
{
	struct engine e;

	record_init(RECORD_ENGINE, &e);
	e.id = key(m, RECORD_ENGINE, boat, 0);
	e.boat = key(m, RECORD_BOAT, boat, 0);
	e.name = text("main");
	e.hours = 0;
	put(m, &e);
}

static void
make_meter(struct maker *m, int boat)
{
	struct meter h;

	if (!reads_meter(boat))
		return;
	record_init(RECORD_METER, &h);
	h.id = key(m, RECORD_METER, boat, 0);
	h.engine = key(m, RECORD_ENGINE, boat, 0);
	h.fitted = day_from_ymd(first_year(m), 1, 1);
	h.start = h.engine_hours = 0;
	h.how = METER_FIRST;
	put(m, &h);
}

static void
season_of(const struct maker *m, int boat, int year, struct season *s)
{
	guint64 chance = chances(CHANCE_SEASON, boat, year);

	record_init(RECORD_SEASON, s);
	s->id = key(m, RECORD_SEASON, boat, year);
	s->boat = key(m, RECORD_BOAT, boat, 0);
	s->launch = day_from_ymd(first_year(m) + year, 4, 8) + below(&chance, 20);
	s->haul_out = day_from_ymd(first_year(m) + year, 10, 3) + below(&chance, 20);
}

static void
make_seasons(struct maker *m, int boat)
{
	struct season s;

	for (int year = 0; year < m->shape->years; year++) {
		season_of(m, boat, year, &s);
		put(m, &s);
	}
}

/* Two or three fortnights in salt water. */
static void
make_stays(struct maker *m, int boat)
{
	int n = 2 + boat % 2;
	struct season season;
	struct stay s;

	for (int i = 0; i < n; i++) {
		season_of(m, boat, (2 * i + 1) * m->shape->years / (2 * n), &season);
		record_init(RECORD_STAY, &s);
		s.id = key(m, RECORD_STAY, boat, i);
		s.boat = season.boat;
		s.date = season.launch + 80;
		s.until = s.date + 14;
		s.stand = STAND_AFLOAT;
		s.water = WATER_SALT;
		s.place = text("Pelican Sound, a mooring");
		put(m, &s);
	}
}

static void
make_fittings(struct maker *m, int boat)
{
	struct fitting f;

	for (int i = 0; i < N_FITTINGS; i++) {
		record_init(RECORD_FITTING, &f);
		f.id = key(m, RECORD_FITTING, boat, i);
		f.boat = key(m, RECORD_BOAT, boat, 0);
		f.path = text(fittings[i].path);
		f.title = text(fittings[i].title);
		f.needs_off = text(fittings[i].needs_off);
		put(m, &f);
	}
}

static void
make_tasks(struct maker *m, int boat)
{
	struct task t;

	for (int i = 0; i < N_TASKS; i++) {
		record_init(RECORD_TASK, &t);
		t.id = key(m, RECORD_TASK, boat, i);
		t.boat = key(m, RECORD_BOAT, boat, 0);
		t.fitting = key(m, RECORD_FITTING, boat, tasks[i].fitting);
		t.name = text(tasks[i].name);
		t.title = text(tasks[i].title);
		t.verb = tasks[i].verb;
		t.place = tasks[i].place;
		t.mechanism = tasks[i].mechanism;
		t.consequence = tasks[i].consequence;
		t.rule = tasks[i].rule;
		t.minutes = tasks[i].minutes;
		t.part = text(tasks[i].verb == RENEW ? "the new part, gaskets and clamps" : NULL);
		t.proof = text("seen good all round");
		put(m, &t);
	}
}

static void
make_limit(struct maker *m, int boat, int i, struct limit *l)
{
	l->id = key(m, RECORD_LIMIT, boat, i);
	l->standing = STANDING_OWNER;
	l->source = text("invented for the bench");
	put(m, l);
}

static void
make_limits(struct maker *m, int boat)
{
	struct limit l;
	int n = 0;

	for (int i = 0; i < N_TASKS; i++) {
		const struct bench_task *t = &tasks[i];
		const struct { enum limit_kind kind; gint64 amount, hours, event; } limit[] = {
			{ LIMIT_HOURS, NONE, t->hours ? t->hours * 3600 : NONE, NONE },
			{ LIMIT_MONTHS, t->months ? t->months : NONE, NONE, NONE },
			{ LIMIT_SEASONS, t->seasons ? t->seasons : NONE, NONE, NONE },
			{ LIMIT_EVENT, NONE, NONE, t->event < 0 ? NONE : t->event },
		};

		for (guint k = 0; k < G_N_ELEMENTS(limit); k++) {
			if (limit[k].amount == NONE && limit[k].hours == NONE && limit[k].event == NONE)
				continue;
			record_init(RECORD_LIMIT, &l);
			l.task = key(m, RECORD_TASK, boat, i);
			l.kind = limit[k].kind;
			l.amount = limit[k].amount;
			l.hours = limit[k].hours;
			l.event = limit[k].event;
			make_limit(m, boat, n++, &l);
		}
	}
}

static gint64
usual_outcome(const struct bench_task *t)
{
	return t->verb == RENEW ? OUTCOME_RENEWED : t->rule == CLOCK_INSPECTION ? OUTCOME_GOOD : OUTCOME_DONE;
}

/* Every task about as often as it is wanted, one in thirty found bad. */
static void
make_services(struct maker *m, int boat)
{
	gint64 begin = day_from_ymd(first_year(m), 3, 1), end = day_from_ymd(LAST_YEAR, 11, 30);
	int n = 0;

	for (int i = 0; i < N_TASKS; i++) {
		const struct bench_task *t = &tasks[i];
		guint64 chance = chances(CHANCE_SERVICE, boat, i);
		int usual = t->done_months * 30;
		struct service s;

		for (gint64 day = begin; usual && day <= end; day += usual * 3 / 4 + below(&chance, usual / 2) + 1) {
			record_init(RECORD_SERVICE, &s);
			s.id = key(m, RECORD_SERVICE, boat, n++);
			s.task = key(m, RECORD_TASK, boat, i);
			s.date = day;
			s.outcome = below(&chance, 30) ? usual_outcome(t) : OUTCOME_BAD;
			s.made = t->rule == CLOCK_PRINTED ? day - 90 : NONE;
			s.who = text("owner");
			s.seen = text(below(&chance, 8) ? NULL : "a little worn, good for another season");
			put(m, &s);
		}
	}
}

static void
csv_outing(struct maker *m, const struct outing *o, int boat)
{
	const char *remark = o->remark ? o->remark : "", *quote = strchr(remark, ',') ? "\"" : "";
	char day[DAY_TEXT], hours[HOURS_TEXT];

	hours_exact(o->reading == NONE ? o->hours : o->reading, hours);
	fprintf(m->csv, "Grey Heron %03d,%s,main,%s,%s,%s,%s,%s,%s%s%s\r\n", boat + 1, day_iso(o->date, day),
		o->reading == NONE ? hours : "", o->reading == NONE ? "" : hours, word_of(&words_water, o->water),
		o->rinsed == NONE ? "" : "yes", o->place ? o->place : "", quote, remark, quote);
}

static void
make_outing(struct maker *m, int boat, int i, gint64 day, gint64 *shown)
{
	static const char *const place[] = { "Otter Bay", "the narrows", "Pelican Sound", "Long Reach light" };
	static const char *const remark[] = { "ran well", "windy, back early", "a little slow to start: watch the battery" };
	guint64 chance = chances(CHANCE_OUTING, boat, i);
	struct outing o;

	record_init(RECORD_OUTING, &o);
	o.id = key(m, RECORD_OUTING, boat, i);
	o.boat = key(m, RECORD_BOAT, boat, 0);
	o.engine = key(m, RECORD_ENGINE, boat, 0);
	o.date = day;
	o.hours = 360 * (3 + below(&chance, 12) + below(&chance, 12));
	*shown += o.hours;
	if (reads_meter(boat)) {
		o.meter = key(m, RECORD_METER, boat, 0);
		o.reading = *shown;
	}
	if (!below(&chance, 12))
		o.water = WATER_SALT;
	if (!below(&chance, 6))
		o.rinsed = 1;
	if (!below(&chance, 2))
		o.place = text(place[below(&chance, G_N_ELEMENTS(place))]);
	if (!below(&chance, 5))
		o.remark = text(remark[below(&chance, G_N_ELEMENTS(remark))]);
	if (m->csv)
		csv_outing(m, &o, boat);
	else
		put(m, &o);
}

/* As many days of each season as it takes, each as likely as another (Knuth, volume 2, 3.4.2, algorithm S). */
static void
make_outings(struct maker *m, int boat)
{
	int a_year = m->shape->outings / m->shape->years, n = 0;
	gint64 shown = 0;
	struct season s;

	for (int year = 0; year < m->shape->years; year++) {
		guint64 chance = chances(CHANCE_OUTING, boat, ROOM - 1 - year);
		int wanted = a_year;

		season_of(m, boat, year, &s);
		for (gint64 day = s.launch; day < s.haul_out; day++)
			if (below(&chance, (int)(s.haul_out - day)) < wanted) {
				make_outing(m, boat, n++, day, &shown);
				wanted--;
			}
	}
}

static void
make_all(struct maker *m, enum record r, int a_boat, void make(struct maker *m, int boat))
{
	struct bulk *b = m->err ? NULL : bulk_open(m->db, r, (gint64)a_boat * m->shape->boats, &m->err);

	if (!b)
		return;
	m->bulk = b;
	for (int boat = 0; boat < m->shape->boats; boat++)
		make(m, boat);
	bulk_close(b, m->err ? NULL : &m->err);
}

static void
make_everything(struct maker *m)
{
	make_all(m, RECORD_BOAT, 1, make_boat);
	make_all(m, RECORD_ENGINE, 1, make_engine);
	make_all(m, RECORD_METER, 1, make_meter);
	make_all(m, RECORD_SEASON, m->shape->years, make_seasons);
	make_all(m, RECORD_STAY, 2, make_stays);
	make_all(m, RECORD_FITTING, N_FITTINGS, make_fittings);
	make_all(m, RECORD_TASK, N_TASKS, make_tasks);
	make_all(m, RECORD_LIMIT, N_TASKS, make_limits);
	if (m->csv) {
		fputs("boat,date,engine,hours,reading,water,rinsed,place,remark\r\n", m->csv);
		for (int boat = 0; boat < m->shape->boats; boat++)
			make_outings(m, boat);
		return;
	}
	make_all(m, RECORD_SERVICE, N_TASKS * m->shape->years, make_services);
	make_all(m, RECORD_OUTING, m->shape->outings, make_outings);
}

static gboolean
make_logbook(struct maker *m, const char *path)
{
	const struct entry_head head = { "logbook for the bench", "bench", "bench", 1774000000 };
	gboolean ok;

	m->db = db_create(path, &m->err);
	ok = m->db && db_begin(m->db, &m->err);
	if (ok) {
		make_everything(m);
		ok = !m->err && db_commit(m->db, &head, NULL, &m->err);
	}
	db_close(m->db);
	return ok;
}

int
main(int argc, char **argv)
{
	struct maker m = { 0 };
	gboolean ok;

	for (guint i = 0; argc > 2 && i < G_N_ELEMENTS(shapes); i++)
		if (!strcmp(argv[1], shapes[i].name))
			m.shape = &shapes[i];
	if (!m.shape) {
		fputs("make_logbook S|M|L FILE [OUTINGS.csv]\n", stderr);
		return 2;
	}
	m.csv = argc > 3 ? fopen(argv[3], "wb") : NULL;
	ok = (argc < 4 || m.csv) && make_logbook(&m, argv[2]);
	if (m.csv)
		ok = !fclose(m.csv) && ok;
	if (!ok)
		fprintf(stderr, "make_logbook: %s\n", m.err ? m.err->message : "can't write");
	g_clear_error(&m.err);
	return !ok;
}
