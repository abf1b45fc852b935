#include "engine/due.h"

#include "boat_case.h"

/* Work out a task and compare all that the due list shows of it. */
static void
expect(const char *says, const char *want)
{
	struct limit_out used[MOST_FEW];
	struct due_out out;
	g_autofree char *got = NULL;

	boat_timeline(boat, t);
	due_work_out(t, boat->in.today, &boat->task, &out, used);
	got = due_says(&out);
	ck_assert_msg(!strcmp(got, want), "%s: %s, not %s", says, got, want);
}

/* A limit of 12 months that falls due on that day, on a boat afloat from 15 April to 15 October. */
static const struct { const char *today, *due, *place, *cost, *when; } chances[] = {
	/* In winter: launch on 2026-04-15, haul-out on 2026-10-15, the next launch on 2027-04-15. */
	{ "2026-03-01", "2026-03-20", "anywhere", "costs", "before-launch by 2026-03-20" },
	{ "2026-03-01", "2026-03-20", "out", "costs", "before-launch by 2026-03-20" },
	{ "2026-03-01", "2026-04-15", "out", "costs", "before-launch by 2026-04-15" },
	{ "2026-03-01", "2026-03-20", "afloat", "costs", "first-day by 2026-04-15 misfit" },
	{ "2026-03-01", "2026-04-15", "afloat", "costs", "first-day by 2026-04-15" },
	{ "2026-03-01", "2026-07-01", "anywhere", "costs", "this-season by 2026-07-01" },
	{ "2026-03-01", "2026-07-01", "afloat", "sinks", "this-season by 2026-07-01" },
	{ "2026-03-01", "2026-07-01", "out", "costs", "before-launch by 2026-04-15" },
	{ "2026-03-01", "2026-07-01", "on-hose", "sinks", "before-launch by 2026-04-15" },
	{ "2026-03-01", "2026-07-01", "shop", "costs", "before-launch by 2026-04-15" },
	{ "2026-03-01", "2026-10-14", "out", "costs", "before-launch by 2026-04-15" },
	{ "2026-03-01", "2026-10-15", "out", "costs", "lay-up by 2026-10-15" },
	{ "2026-03-01", "2026-10-15", "afloat", "costs", "this-season by 2026-10-15" },
	{ "2026-03-01", "2026-12-24", "anywhere", "sinks", "lay-up by 2026-10-15" },
	{ "2026-03-01", "2026-12-24", "afloat", "sinks", "this-season by 2026-10-15" },
	{ "2026-12-01", "2027-11-30", "out", "costs", "lay-up by 2027-10-15" },
	/* Past due, in winter. */
	{ "2026-03-01", "2026-02-01", "out", "sinks", "before-launch by 2026-04-15 past" },
	{ "2026-03-01", "2026-03-01", "anywhere", "costs", "before-launch by 2026-04-15 past" },
	{ "2026-03-01", "2025-08-01", "afloat", "hurts", "first-day by 2026-04-15 past misfit" },
	/* On the day of the launch it is still before it. */
	{ "2026-04-15", "2026-04-15", "out", "sinks", "before-launch by 2026-04-15 past" },
	{ "2026-04-15", "2026-07-01", "out", "costs", "before-launch by 2026-04-15" },
	/* In season. */
	{ "2026-06-01", "2026-07-01", "anywhere", "costs", "this-season by 2026-07-01" },
	{ "2026-06-01", "2026-07-01", "afloat", "sinks", "this-season by 2026-07-01" },
	{ "2026-06-01", "2026-07-01", "out", "costs", "lay-up by 2026-07-01 misfit" },
	{ "2026-06-01", "2026-07-01", "out", "sinks", "mid-season-haul by 2026-07-01 misfit" },
	{ "2026-06-01", "2026-07-01", "out", "hurts", "mid-season-haul by 2026-07-01 misfit" },
	{ "2026-06-01", "2026-07-01", "out", "strands", "lay-up by 2026-07-01 misfit" },
	{ "2026-06-01", "2026-11-01", "out", "sinks", "lay-up by 2026-10-15" },
	{ "2026-06-01", "2026-11-01", "afloat", "sinks", "this-season by 2026-10-15" },
	{ "2026-06-01", "2027-04-15", "out", "sinks", "next-spring by 2027-04-15" },
	{ "2026-06-01", "2027-05-15", "out", "sinks", "next-spring by 2027-04-15" },
	{ "2026-06-01", "2027-05-15", "anywhere", "costs", "next-spring by 2027-04-15" },
	{ "2026-06-01", "2027-05-15", "afloat", "costs", "later by 2027-05-15" },
	/* Past due, in season. */
	{ "2026-06-01", "2026-05-01", "anywhere", "costs", "this-season by 2026-06-01 past" },
	{ "2026-06-01", "2026-05-01", "afloat", "wrecks", "this-season by 2026-06-01 past" },
	{ "2026-06-01", "2026-05-01", "out", "costs", "lay-up by 2026-10-15 past misfit" },
	{ "2026-06-01", "2026-06-01", "anywhere", "burns", "now by 2026-06-01 past" },
	{ "2026-06-01", "2026-05-01", "afloat", "hurts", "now by 2026-06-01 past" },
	{ "2026-06-01", "2026-05-01", "out", "sinks", "now by 2026-06-01 past misfit" },
	/* On the day of the haul-out. */
	{ "2026-10-15", "2026-10-01", "out", "sinks", "lay-up by 2026-10-15 past" },
	{ "2026-10-15", "2026-10-01", "afloat", "costs", "this-season by 2026-10-15 past" },
	{ "2026-10-15", "2026-12-01", "out", "costs", "lay-up by 2026-10-15" },
};

START_TEST(the_last_chance_before_it_falls_due)
{
	gint64 due = day_at(chances[_i].due), done = day_add_months(due, -12);
	char day[DAY_TEXT], says[100], want[100];
	g_auto(GStrv) words = g_strsplit(chances[_i].when, " ", 4);
	g_autofree char *task = g_strdup_printf("today %s; from 2023-01-01; "
		"task none %s %s done 0 service %s 0 once; limit months 12",
						chances[_i].today, chances[_i].cost, chances[_i].place,
							day_iso(done, day));

	g_snprintf(says, sizeof says, "today %s, due %s, %s, %s", chances[_i].today, chances[_i].due,
		chances[_i].place,
		   chances[_i].cost);
	g_snprintf(want, sizeof want, "%s by %s due %s limit 0%s%s", words[0], words[2], chances[_i].due,
		words[3] ? " " : "",
		   words[3] ? words[3] : "");
	build(task);
	expect(says, want);
}
END_TEST

#define LONG(place, months) "task none costs " place " done 0 service 2026-03-01 0 once; limit months " months

static const struct { const char *says, *boat, *want; } cases[] = {
	{ "due before the launch after next", "today 2026-03-01;" LONG("out", "15"),
	  "next-spring by 2027-04-15 due 2027-06-01 limit 0" },
	{ "due on that season's haul-out", "today 2026-03-01; season 2027-05-01 2027-06-01;" LONG("out", "15"),
	  "later by 2027-06-01 due 2027-06-01 limit 0" },
	{ "due after it", "today 2026-03-01;" LONG("anywhere", "20"), "later by 2027-11-01 due 2027-11-01 limit 0" },
	{ "not in sight", "today 2026-03-01;" LONG("anywhere", "200"), "later by - due - limit -1" },
	{ "on a trailer it is out in season too", "today 2026-03-01; usual 04-15 10-15 trailer roof fresh;"
	  LONG("out", "4"),
	  "this-season by 2026-07-01 due 2026-07-01 limit 0" },
	{ "on a trailer, past due", "today 2026-06-01; usual 04-15 10-15 trailer roof fresh; from 2025-01-01;"
	  "task none costs out done 0 service 2025-05-01 0 once; limit months 12",
	  "this-season by 2026-06-01 due 2026-05-01 limit 0 past" },
	{ "a haul in mid-season is a chance", "today 2026-06-01; from 2026-03-01; "
	  "stay 2026-06-10 2026-06-14 ashore -;" LONG("out", "4"),
	  "this-season by 2026-06-13 due 2026-07-01 limit 0" },
	{ "so it is in winter, being later than the launch",
	  "today 2026-03-01; from 2026-03-01; stay 2026-06-10 2026-06-14 ashore -;" LONG("out", "4"),
	  "this-season by 2026-06-13 due 2026-07-01 limit 0" },
	{ "all the year afloat, within the year", "today 2026-03-01; usual - - afloat afloat salt;" LONG("afloat",
	  "12"),
	  "this-season by 2027-03-01 due 2027-03-01 limit 0" },
	{ "all the year afloat, later", "today 2026-03-01; usual - - afloat afloat salt;" LONG("afloat", "13"),
	  "later by 2027-04-01 due 2027-04-01 limit 0" },
	{ "all the year afloat, out of the water", "today 2026-03-01; usual - - afloat afloat salt;" LONG("out", "6"),
	  "this-season by 2026-09-01 due 2026-09-01 limit 0 misfit" },
	{ "a happening in season", "today 2026-06-01; task none costs afloat done 0 service 2026-05-01 0 once; "
	  "limit happening 2026-05-30",
	  "now by 2026-06-01 due 2026-05-30 limit 0 past" },
	{ "a happening with nothing else known", "today 2026-11-01; task none costs out done 0 unknown - 0 -;"
	  "limit months 12; limit happening 2026-10-01", "now by 2026-11-01 due 2026-10-01 limit 1 past" },
	{ "a happening, the boat afloat", "today 2026-06-01; task none costs out done 0 service 2026-05-01 0 once;"
	  "limit happening 2026-05-30", "now by 2026-06-01 due 2026-05-30 limit 0 past misfit" },
	{ "a happening, the boat ashore", "today 2026-11-01; task none costs afloat done 0 service 2026-05-01 0 once;"
	  "limit happening 2026-05-30", "now by 2026-11-01 due 2026-05-30 limit 0 past misfit" },
	{ "a happening and a clock due before it", "today 2026-06-01; from 2025-01-01;"
	  "task none costs anywhere done 0 service 2025-05-01 0 once; limit months 12; limit happening 2026-05-30",
	  "now by 2026-06-01 due 2026-05-01 limit 0 past" },
	{ "nobody knows", "today 2026-06-01; task none sinks out done 0 unknown - 0 -; limit months 12; "
	  "limit event launch",
	  "no-record by - due - limit -1" },
	{ "nobody knows of a chore", "today 2026-06-01; task none costs anywhere inspection 0 unknown - 0 -; limit months 1",
	  "this-season by 2026-06-01 due - limit -1" },
	{ "nobody knows of a grave chore", "today 2026-06-01; task none sinks anywhere inspection 0 unknown - 0 -;"
	  "limit months 3", "now by 2026-06-01 due - limit -1" },
	{ "nobody knows of a chore, in winter", "today 2026-03-01; task none sinks anywhere inspection 0 unknown - 0 -;"
	  "limit months 1", "before-launch by 2026-04-15 due - limit -1" },
	{ "nobody knows of work afloat, in winter", "today 2026-03-01; task none sinks afloat inspection 0 unknown - 0 -;"
	  "limit months 12", "first-day by 2026-04-15 due - limit -1" },
	{ "nobody knows of work afloat", "today 2026-06-01; task none costs afloat inspection 0 unknown - 0 -;"
	  "limit event launch", "this-season by 2026-06-01 due - limit -1" },
	{ "a renewal every two months is none", "today 2026-03-01; task none costs anywhere renewal 0 unknown - 0 -;"
	  "limit months 2", "no-record by - due - limit -1" },
	{ "nobody knows what is printed on it", "today 2026-06-01; "
	  "task none sinks out printed-date 0 service 2026-01-01 0 once; limit months 12",
	  "no-record by - due - limit -1" },
	{ "each outing", "today 2026-06-01; task none costs anywhere done 0 unknown - 0 -; limit outings 1",
	  "each-outing by - due - limit -1" },
	{ "each outing, or at a launch", "today 2026-06-01; "
	  "task none costs anywhere done 0 service 2026-05-01 0 once;"
	  "limit outings 1; limit event launch", "next-spring by 2027-04-15 due 2027-04-15 limit 1" },
	{ "when something asks for it", "today 2026-06-01; task none sinks anywhere done 0 unknown - 0 -; "
	  "limit condition; limit happening -",
	  "on-condition by - due - limit -1" },
	{ "when a reading says stop, at once", "today 2026-06-01; task none wrecks anywhere done 0 service 2026-05-01 0 once;"
	  "limit condition 2026-05-30; limit months 12", "now by 2026-06-01 due 2026-05-30 limit 0 past" },
	{ "also where nobody knows since when", "today 2026-06-01; task none wrecks anywhere done 0 unknown - 0 -; "
	  "limit condition 2026-05-30", "now by 2026-06-01 due 2026-05-30 limit 0 past" },
	{ "a first service that is done", "today 2026-06-01; "
	  "task none sinks anywhere done 0 service 2026-05-01 0 once; limit first-hours 72000",
	  "on-condition by - due - limit -1" },
	{ "no limit at all", "today 2026-06-01; task none sinks anywhere done 0 service 2026-05-01 0 once",
	  "on-condition by - due - limit -1" },
	{ "at each launch, seen in winter", "today 2026-03-01; from 2025-01-01; "
	  "task none sinks out done 0 service 2025-04-10 0 once;"
	  "limit event launch", "before-launch by 2026-04-15 due 2026-04-15 limit 0" },
	{ "at each launch, seen in season", "today 2026-06-01; from 2025-01-01; "
	  "task none sinks out done 0 service 2026-04-10 0 once;"
	  "limit event launch", "next-spring by 2027-04-15 due 2027-04-15 limit 0" },
	{ "at each lay-up, seen in winter", "today 2026-03-01; from 2025-01-01; "
	  "task none wrecks anywhere done 0 service 2025-10-20 0 once;"
	  "limit event lay-up", "lay-up by 2026-10-15 due 2026-10-15 limit 0" },
	{ "on the first day afloat, seen in winter",
	  "today 2026-03-01; from 2025-01-01; task none sinks afloat done 0 service 2025-04-16 0 once;"
	  "limit event first-day", "first-day by 2026-04-15 due 2026-04-15 limit 0" },
	{ "on a first day that was missed", "today 2026-03-01; from 2024-01-01; "
	  "task none hurts anywhere done 0 service 2024-05-01 0 once; limit event first-day",
	  "first-day by 2026-04-15 due 2025-04-15 limit 0 past" },
	{ "on that day itself, which fits", "today 2026-04-15; from 2024-01-01; "
	  "task none hurts afloat done 0 service 2025-05-01 0 once; limit event first-day",
	  "first-day by 2026-04-15 due 2026-04-15 limit 0 past" },
	{ "at a lay-up that was missed", "today 2026-03-01; from 2025-01-01; "
	  "task none wrecks anywhere done 0 service 2025-05-20 0 once;"
	  "limit event lay-up", "before-launch by 2026-04-15 due 2025-10-15 limit 0 past" },
};

START_TEST(when_to_do_it)
{
	build(cases[_i].boat);
	expect(cases[_i].says, cases[_i].want);
}
END_TEST

START_TEST(a_guess_is_told)
{
	build("today 2026-03-01;" LONG("anywhere", "1"));
	boat->task.since.estimated = TRUE;
	expect("an estimated date", "before-launch by 2026-04-01 due 2026-04-01 limit 0 estimated");
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Work is put to the last opportunity before it falls due");
	TCase *tc = add_case(s, "opportunities");

	tcase_add_loop_test(tc, the_last_chance_before_it_falls_due, 0, G_N_ELEMENTS(chances));
	tcase_add_loop_test(tc, when_to_do_it, 0, G_N_ELEMENTS(cases));
	tcase_add_test(tc, a_guess_is_told);
	return run_suite(s);
}
