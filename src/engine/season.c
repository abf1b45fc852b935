/* The calendar of the boat's year: seasons recorded, planned and assumed. */
#include "base/date.h"
#include "engine/timeline_inside.h"

/* Years laid out before the first day, so that an event before an anchor is found. */
enum { YEARS_BEFORE = 2, YEARS_AFTER = 2 };

static gint64
usual_launch(const struct habit *h, int year)
{
	return yearday_in(h->launch, year);
}

/* The haul-out of the season that is launched in that year; it may fall into the next. */
static gint64
usual_haul_out(const struct habit *h, int year)
{
	return yearday_in(h->haul_out, h->haul_out > h->launch ? year : year + 1);
}

/* The middle of the winter before the season of that year. */
static gint64
mid_winter(const struct habit *h, int year)
{
	gint64 haul_out = usual_haul_out(h, year - 1);

	return haul_out + (usual_launch(h, year) - haul_out) / 2;
}

static int
year_of(gint64 day)
{
	int year, month, mday;

	day_to_ymd(CLAMP(day, DAY_FIRST, DAY_LAST), &year, &month, &mday);
	return year;
}

/* The first such day of the year after day. */
static gint64
usual_after(gint64 mmdd, gint64 day)
{
	gint64 this_year = yearday_in(mmdd, year_of(day)), next = yearday_in(mmdd, year_of(day) + 1);

	return this_year > day ? this_year : next == NONE ? DAY_LAST : next;
}

/* When a season that nobody ended is taken to end: on the first usual day after its launch; where that is past and
 * the next season, usual or recorded, has not come, the boat is still afloat, so today. */
static gint64
assumed_haul_out(const struct timeline *t, gint64 launch, gint64 next_launch)
{
	gint64 usual, next;

	if (t->all_year)
		return MAX(t->end, launch);
	usual = usual_after(t->habit.haul_out, launch);
	next = MIN(next_launch, usual_after(t->habit.launch, usual - 1));
	return usual < t->today && t->today < next ? t->today : usual;
}

static void
add_recorded(struct timeline *t, const struct timeline_in *in, int i)
{
	const struct season_in *s = &in->season[i];
	struct season_day d = { s->launch, s->haul_out, TRUE, s->haul_out != NONE };
	gint64 next = i + 1 < in->n_seasons ? in->season[i + 1].launch : G_MAXINT64;

	if (d.launch < DAY_FIRST || d.launch > DAY_LAST)
		return;
	if (!d.known_out)
		d.haul_out = assumed_haul_out(t, d.launch, next);
	d.haul_out = MAX(MIN(d.haul_out, next), d.launch);
	g_array_append_val(t->seasons, d);
}

static void
add_usual(struct timeline *t, const struct timeline_in *in, int i, int year)
{
	struct season_day d = { usual_launch(&t->habit, year), usual_haul_out(&t->habit, year), FALSE, FALSE };

	if (t->seasons->len)
		d.launch = MAX(d.launch, ELEMENTS(t->seasons, struct season_day)[t->seasons->len - 1].haul_out);
	if (i < in->n_seasons)
		d.haul_out = MIN(d.haul_out, in->season[i].launch);
	if (d.launch < d.haul_out)
		g_array_append_val(t->seasons, d);
}

void
seasons_lay_out(struct timeline *t, const struct timeline_in *in)
{
	const struct habit *h = &t->habit;
	int last = MIN(year_of(t->end) + YEARS_AFTER, 9998), i = 0;

	g_array_set_size(t->seasons, 0);
	t->all_year = h->launch == h->haul_out || yearday_in(h->launch, 2000) == NONE ||
		      yearday_in(h->haul_out, 2000) == NONE;
	for (int year = MAX(year_of(t->start) - YEARS_BEFORE, 2); !t->all_year && year <= last; year++) {
		gint64 turn = mid_winter(h, year), next = mid_winter(h, year + 1);

		while (i < in->n_seasons && in->season[i].launch < turn)
			add_recorded(t, in, i++);
		if (i == in->n_seasons || in->season[i].launch >= next)
			add_usual(t, in, i, year);
	}
	while (i < in->n_seasons)
		add_recorded(t, in, i++);
	t->all_year = t->all_year && !t->seasons->len;
}

static gint64
event_in(const struct season_day *s, enum season_event e)
{
	switch (e) {
	case EVENT_LAUNCH:
	case EVENT_FIRST_DAY:
		return s->launch;
	case EVENT_MID_SEASON:
		return s->launch + (s->haul_out - s->launch) / 2;
	case EVENT_HAUL_OUT:
	case EVENT_LAY_UP:
		return s->haul_out;
	case SEASON_EVENT_COUNT:
		break;
	}
	g_assert_not_reached();
}

/* The first season whose event falls on day or after it. */
static int
event_from(const struct timeline *t, enum season_event e, gint64 day)
{
	const struct season_day *season = ELEMENTS(t->seasons, const struct season_day);
	int low = 0, high = (int)t->seasons->len;

	while (low < high) {
		int middle = (low + high) / 2;

		if (event_in(&season[middle], e) < day)
			low = middle + 1;
		else
			high = middle;
	}
	return low;
}

static gint64
event_day(const struct timeline *t, enum season_event e, gint64 season)
{
	gint64 day;

	if (season < 0 || season >= (gint64)t->seasons->len)
		return NONE;
	day = event_in(&ELEMENTS(t->seasons, const struct season_day)[season], e);
	return day > t->end ? NONE : day;
}

gint64
timeline_event(const struct timeline *t, enum season_event e, gint64 a, int k)
{
	return event_day(t, e, (gint64)event_from(t, e, a) + k - 1);
}

/* The fixed point of the boat's year before that event of that season. */
static gint64
point_before(const struct season_day *s, enum season_event e, int season)
{
	switch (e) {
	case EVENT_LAUNCH:
	case EVENT_FIRST_DAY:
		return season ? s[season - 1].haul_out : NONE;
	case EVENT_MID_SEASON:
		return s[season].launch;
	case EVENT_HAUL_OUT:
	case EVENT_LAY_UP:
		return event_in(&s[season], EVENT_MID_SEASON);
	case SEASON_EVENT_COUNT:
		break;
	}
	g_assert_not_reached();
}

gint64
event_after_work(const struct timeline *t, enum season_event e, gint64 done)
{
	const struct season_day *s = ELEMENTS(t->seasons, const struct season_day);
	int i = event_from(t, e, done);

	if (i < (int)t->seasons->len && done > point_before(s, e, i))
		i = event_from(t, e, event_in(&s[i], e) + 1);
	return event_day(t, e, i);
}

void
timeline_event_meant(const struct timeline *t, enum season_event e, gint64 day, struct event_meant *meant)
{
	const struct season_day *s = ELEMENTS(t->seasons, const struct season_day);
	gboolean closing = e == EVENT_HAUL_OUT || e == EVENT_LAY_UP;
	int i = closing ? MAX(event_from(t, EVENT_LAUNCH, day) - 1, 0) : event_from(t, EVENT_HAUL_OUT, day);

	*meant = (struct event_meant) { NONE, NONE };
	if (i >= (int)t->seasons->len)
		return;
	meant->day = event_in(&s[i], e);
	meant->after = point_before(s, e, i);
}

gboolean
timeline_afloat(const struct timeline *t, gint64 day)
{
	guint i = (guint)event_from(t, EVENT_HAUL_OUT, day + 1);

	return t->all_year ||
	       (i < t->seasons->len && ELEMENTS(t->seasons, const struct season_day)[i].launch <= day);
}

void
timeline_year(const struct timeline *t, gint64 day, struct boat_year *year)
{
	int i = event_from(t, EVENT_HAUL_OUT, day);

	year->launch = event_day(t, EVENT_LAUNCH, i);
	year->haul_out = event_day(t, EVENT_HAUL_OUT, i);
	year->next_launch = event_day(t, EVENT_LAUNCH, i + 1);
	year->next_haul_out = event_day(t, EVENT_HAUL_OUT, i + 1);
	year->under_way = t->all_year || (year->launch != NONE && year->launch < day);
}

gint64
season_boundary_after(const struct timeline *t, gint64 day)
{
	gint64 launch = timeline_event(t, EVENT_LAUNCH, day + 1, 1);
	gint64 out = timeline_event(t, EVENT_HAUL_OUT, day + 1, 1);

	if (launch == NONE || out == NONE)
		return launch == NONE && out == NONE ? t->end : MAX(launch, out);
	return MIN(launch, out);
}

int
season_ends(const struct timeline *t, gint64 a, gint64 b)
{
	return MAX(0, event_from(t, EVENT_HAUL_OUT, b + 1) - event_from(t, EVENT_HAUL_OUT, a + 1));
}
