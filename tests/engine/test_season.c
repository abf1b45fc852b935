#include "engine/timeline.h"

#include "boat_case.h"
#include "published.h"

#define YEARS "today 2025-06-01; from 2024-01-01; season 2025-05-01 2025-09-01"

static const struct { enum season_event e; const char *a; int k; const char *day; } events[] = {
	{ EVENT_LAUNCH, "2024-01-01", 1, "2024-04-15" },
	{ EVENT_LAUNCH, "2024-04-15", 1, "2024-04-15" },
	{ EVENT_LAUNCH, "2024-04-16", 1, "2025-05-01" },
	{ EVENT_FIRST_DAY, "2024-04-16", 2, "2026-04-15" },
	{ EVENT_MID_SEASON, "2024-01-01", 1, "2024-07-15" },	/* 91 of 183 days after 15 April */
	{ EVENT_MID_SEASON, "2025-01-01", 1, "2025-07-01" },	/* 61 of 123 after 1 May */
	{ EVENT_HAUL_OUT, "2025-01-01", 1, "2025-09-01" },
	{ EVENT_LAY_UP, "2025-01-01", 2, "2026-10-15" },
	{ EVENT_LAUNCH, "2025-05-01", 0, "2024-04-15" },
	{ EVENT_LAUNCH, "2025-05-02", 0, "2025-05-01" },
	{ EVENT_LAUNCH, "2025-05-02", -1, "2024-04-15" },
	{ EVENT_HAUL_OUT, "2024-01-01", 0, "2023-10-15" },	/* before the first day too */
	{ EVENT_HAUL_OUT, "2024-01-01", -9, "-" },
	{ EVENT_LAUNCH, "2025-06-01", 10, "2035-04-15" },
	{ EVENT_LAUNCH, "2025-06-01", 11, "-" },
	{ EVENT_HAUL_OUT, "2035-01-01", 1, "-" },	/* after the ten years */
};

START_TEST(events_of_the_year)
{
	char day[DAY_TEXT];

	build(YEARS);
	day_or_dash(timeline_event(t, events[_i].e, day_at(events[_i].a), events[_i].k), day);
	ck_assert_str_eq(day, events[_i].day);
}
END_TEST

static const struct { const char *day; const char *launch, *haul_out, *next_launch,
	*next_haul_out; gboolean under_way, afloat; } years[] = {
	{ "2025-04-30", "2025-05-01", "2025-09-01", "2026-04-15", "2026-10-15", FALSE, FALSE },
	{ "2025-05-01", "2025-05-01", "2025-09-01", "2026-04-15", "2026-10-15", FALSE, TRUE },
	{ "2025-05-02", "2025-05-01", "2025-09-01", "2026-04-15", "2026-10-15", TRUE, TRUE },
	{ "2025-08-31", "2025-05-01", "2025-09-01", "2026-04-15", "2026-10-15", TRUE, TRUE },
	{ "2025-09-01", "2025-05-01", "2025-09-01", "2026-04-15", "2026-10-15", TRUE, FALSE },
	{ "2025-09-02", "2026-04-15", "2026-10-15", "2027-04-15", "2027-10-15", FALSE, FALSE },
	{ "2035-06-01", "2035-04-15", "-", "-", "-", TRUE, TRUE },
};

START_TEST(the_year_around_a_day)
{
	struct boat_year year;

	build(YEARS);
	timeline_year(t, day_at(years[_i].day), &year);
	ck_assert_int_eq(year.launch, day_at(years[_i].launch));
	ck_assert_int_eq(year.haul_out, day_at(years[_i].haul_out));
	ck_assert_int_eq(year.next_launch, day_at(years[_i].next_launch));
	ck_assert_int_eq(year.next_haul_out, day_at(years[_i].next_haul_out));
	ck_assert_int_eq(year.under_way, years[_i].under_way);
	ck_assert_int_eq(timeline_afloat(t, day_at(years[_i].day)), years[_i].afloat);
}
END_TEST

/* On a day: the event of the season that goes on or comes, a closing one of the season launched before; and from when work
 * counts for it. */
static const struct { enum season_event e; const char *on, *day, *after; } meant[] = {
	{ EVENT_LAUNCH, "2025-03-01", "2025-05-01", "2024-10-15" },
	{ EVENT_LAUNCH, "2025-05-01", "2025-05-01", "2024-10-15" },
	{ EVENT_LAUNCH, "2025-08-01", "2025-05-01", "2024-10-15" },
	{ EVENT_LAUNCH, "2025-09-01", "2025-05-01", "2024-10-15" },
	{ EVENT_LAUNCH, "2025-09-02", "2026-04-15", "2025-09-01" },
	{ EVENT_FIRST_DAY, "2025-09-02", "2026-04-15", "2025-09-01" },
	{ EVENT_MID_SEASON, "2025-03-01", "2025-07-01", "2025-05-01" },
	{ EVENT_MID_SEASON, "2025-08-01", "2025-07-01", "2025-05-01" },
	{ EVENT_HAUL_OUT, "2025-05-01", "2024-10-15", "2024-07-15" },
	{ EVENT_HAUL_OUT, "2025-05-02", "2025-09-01", "2025-07-01" },
	{ EVENT_LAY_UP, "2025-12-24", "2025-09-01", "2025-07-01" },
	{ EVENT_LAY_UP, "2026-04-15", "2025-09-01", "2025-07-01" },
};

START_TEST(the_event_that_is_meant_on_a_day)
{
	struct event_meant m;
	char day[DAY_TEXT];

	build(YEARS);
	timeline_event_meant(t, meant[_i].e, day_at(meant[_i].on), &m);
	day_or_dash(m.day, day);
	ck_assert_str_eq(day, meant[_i].day);
	day_or_dash(m.after, day);
	ck_assert_str_eq(day, meant[_i].after);
}
END_TEST

START_TEST(all_the_year_is_one_season)
{
	struct boat_year year;
	struct event_meant m;

	build("today 2025-06-01; from 2024-01-01; usual 05-01 05-01 afloat ashore salt");
	timeline_year(t, day_at("2025-06-01"), &year);
	ck_assert(year.under_way);
	ck_assert_int_eq(year.haul_out, NONE);
	ck_assert(timeline_afloat(t, day_at("2025-01-01")));
	ck_assert_int_eq(timeline_event(t, EVENT_LAUNCH, day_at("2025-01-01"), 1), NONE);
	timeline_event_meant(t, EVENT_LAUNCH, day_at("2025-06-01"), &m);
	ck_assert_int_eq(m.day, NONE);
}
END_TEST

/* The rows "in season" of the published dates say both ends belong to it; here the day after the last is the haul-out. */
START_TEST(a_day_is_in_season_as_published)
{
	struct published dates;
	int n = 0;

	published_read(&dates, "11_dates.csv");
	for (int i = 0; i < dates.n; i++) {
		g_auto(GStrv) name = g_strsplit(published_text(&dates, i, "name"), "_", -1);
		g_autofree char *text = NULL;
		long first, last;
		gint64 after;
		int y, m, d;

		if (strcmp(name[0], "season"))
			continue;
		first = strtol(name[2], NULL, 10);
		last = strtol(name[3], NULL, 10);
		after = day_from_ymd((int)strtol(name[1], NULL, 10), (int)last / 100, (int)last % 100) + 1;
		day_to_ymd(after, &y, &m, &d);
		text = g_strdup_printf("today 2025-06-01; from 2023-01-01; usual %02ld-%02ld %02d-%02d afloat ashore fresh",
				       first / 100, first % 100, m, d);
		build(text);
		published_check_text(&dates, i, timeline_afloat(t, day_at(name[1])) ? "true" : "false");
		n++;
	}
	ck_assert_int_eq(n, 5);
	published_clear(&dates);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("The boat's year has its fixed points, recorded, planned or usual");
	TCase *tc = add_case(s, "the year");

	tcase_add_loop_test(tc, events_of_the_year, 0, G_N_ELEMENTS(events));
	tcase_add_loop_test(tc, the_year_around_a_day, 0, G_N_ELEMENTS(years));
	tcase_add_loop_test(tc, the_event_that_is_meant_on_a_day, 0, G_N_ELEMENTS(meant));
	tcase_add_test(tc, all_the_year_is_one_season);
	tcase_add_test(tc, a_day_is_in_season_as_published);
	return run_suite(s);
}
