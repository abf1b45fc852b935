/* Seasons and stays on the screen: what is recorded by keys, what is refused, and what the year's drawing says. */
#include "form_keys.h"

#include "logbook/year.h"

static void
set_field(const char *text)
{
	key(K_CTRL('u'));
	type(text);
}

static void
form_season_open(void)
{
	key('4');
	find("season");
	key('a');
	ck_shows("A season: in and out");
}

static GArray *
records(enum record r)
{
	return book_records(app->book, r, app->boat.id, NULL);
}

static const struct season *
season_from(const GArray *all, gint64 launch)
{
	for (guint i = 0; i < all->len; i++) {
		const struct season *s = &((const struct season *)(const void *)all->data)[i];

		if (s->launch == launch)
			return s;
	}
	return NULL;
}

START_TEST(a_launch_turns_the_state_of_the_boat_and_u_turns_it_back)
{
	ck_shows("under a roof since 12 Oct 2026");
	form_season_open();
	type("today");
	ck_shows("launch 25 Nov 2026.");
	record();
	ck_shows("launch 25 Nov 2026; u takes it back");
	ck_shows("season  25 Nov 2026 to now");
	ck_shows("on the trailer since 25 Nov 2026");
	key('u');
	ck_shows("under a roof since 12 Oct 2026");
	ck_hides("25 Nov 2026 to now");
}
END_TEST

START_TEST(a_haul_out_alone_ends_the_season_under_way)
{
	form_season_open();
	type("yesterday");
	record();
	key('a');
	key(K_TAB);
	type("today");
	ck_shows("haul-out 25 Nov 2026, of the season from 24 Nov 2026");
	record();
	ck_shows("season  24 Nov 2026 to 25 Nov 2026, 1 day");
}
END_TEST

START_TEST(a_haul_out_without_a_season_is_refused_beside_the_field)
{
	form_season_open();
	key(K_TAB);
	type("today");
	key(K_ENTER);
	ck_shows("no season is under way");
	ck_shows("today");
}
END_TEST

START_TEST(what_lies_ahead_is_planned_and_says_whose_place_it_takes)
{
	form_season_open();
	type("2027-04-20");
	key(K_ENTER);
	ck_shows("that lies ahead");
	key(K_TAB);
	key(K_TAB);
	key('y');
	ck_shows("planned: launch 20 Apr 2027, in place of the one planned from 15 Apr 2027");
	record();
	ck_shows("season  20 Apr 2027 to 10 Oct 2027, planned");
	ck_hides("15 Apr 2027");
	key('u');
	ck_shows("season  15 Apr 2027 to 10 Oct 2027, planned");
}
END_TEST

START_TEST(a_date_that_can_be_read_twice_is_refused_and_kept)
{
	form_season_open();
	type("5/6/24");
	key(K_ENTER);
	ck_shows("5/6/24");
	ck_shows("2024-05-06");
	ck_shows("2024-06-05");
}
END_TEST

START_TEST(a_season_in_the_way_is_named_and_nothing_typed_is_lost)
{
	form_season_open();
	type("2026-05-01");
	record();
	ck_shows("the season launched on 2026-04-18 lies in the way");
	ck_shows("2026-05-01");
	key(K_ESC);
	ck_hides("1 May 2026");
}
END_TEST

START_TEST(a_correction_changes_what_was_typed_and_keeps_the_remark)
{
	gint64 day = day_from_ymd(2021, 5, 16);
	const struct season *s;

	key('4');
	find("15 May 2021");
	key('e');
	set_field("2021-05-16");
	record();
	{
		g_autoptr(GArray) all = records(RECORD_SEASON);

		s = season_from(all, day);
		ck_assert_ptr_nonnull(s);
		ck_assert_str_eq(s->remark, "Late: waited for the new meter and for the ramp to be mended");
		ck_assert_int_eq(s->haul_out, day_from_ymd(2021, 10, 9));
	}
	key('u');
	{
		g_autoptr(GArray) all = records(RECORD_SEASON);

		ck_assert_ptr_null(season_from(all, day));
		ck_assert_ptr_nonnull(season_from(all, day - 1));
	}
}
END_TEST

START_TEST(an_overlapping_stay_is_refused_in_place_and_mended_there)
{
	key('4');
	key('s');
	key(K_TAB);
	set_field("2025-07-25");
	key(K_TAB);
	type("2025-07-28");
	record();
	ck_shows("the stay from 2025-07-19 to 2025-08-02 lies in the way");
	ck_shows("2025-07-25");
	ck_shows("2025-07-28");
	key(K_TAB);
	key(K_TAB);
	set_field("2025-08-10");
	key(K_TAB);
	set_field("2025-08-12");
	record();
	ck_shows("stay    10 Aug 2025 to 12 Aug 2025, trailer");
}
END_TEST

START_TEST(a_stay_that_ends_before_it_begins_is_refused_beside_the_field)
{
	key('4');
	key('s');
	key(K_TAB);
	set_field("2026-11-20");
	key(K_TAB);
	type("2026-11-20");
	ck_shows("it ends after the day it began");
}
END_TEST

START_TEST(a_stay_that_lasts_ends_where_the_next_begins_and_the_sum_says_so)
{
	key('4');
	key('s');
	key(K_TAB);
	set_field("2026-11-10");
	record();
	ck_shows("stay    10 Nov 2026 to now, trailer");
	ck_shows("on the trailer since 10 Nov 2026");
	key('s');
	key('a');
	ck_shows("the stay from 10 Nov 2026 ends then");
	record();
	ck_shows("stay    10 Nov 2026 to 25 Nov 2026, trailer");
	ck_shows("stay    25 Nov 2026 to now, a");
	key('u');
	ck_shows("stay    10 Nov 2026 to now, trailer");
	ck_hides("stay    25 Nov 2026 to now");
}
END_TEST

START_TEST(a_stay_is_corrected_and_taken_out_and_comes_back)
{
	key('4');
	find("otter bay");
	key('e');
	key(K_TAB);
	key(K_TAB);
	set_field("2025-08-03");
	record();
	ck_shows("19 Jul 2025 to 3 Aug 2025");
	key(K_DELETE);
	ck_shows("taken out: stay");
	ck_hides("Otter Bay, guest buoy\n");
	key('u');
	ck_shows("19 Jul 2025 to 3 Aug 2025");
	key('u');
	ck_shows("19 Jul 2025 to 2 Aug 2025");
}
END_TEST

/* By the log itself, row by row. */
static void
season_sums(gint64 from, gint64 until, int *outings, double *hours)
{
	g_autoptr(GArray) all = records(RECORD_OUTING);

	*outings = 0;
	*hours = 0;
	for (guint i = 0; i < all->len; i++) {
		const struct outing *o = &((const struct outing *)(const void *)all->data)[i];

		if (o->date < from || o->date > until)
			continue;
		*outings += o->trip == NONE;
		*hours += (double)o->hours / 3600;
	}
}

START_TEST(the_hours_and_outings_of_a_season_are_those_of_its_days)
{
	g_autoptr(GArray) all = records(RECORD_SEASON);
	int outings;
	double hours;

	key('4');
	grid_size(grid, 60, 200);
	app_draw(app, grid);
	for (guint i = 0; i < all->len; i++) {
		const struct season *s = &((const struct season *)(const void *)all->data)[i];
		g_autofree char *words = NULL;

		if (s->planned == 1)
			continue;
		season_sums(s->launch, s->haul_out, &outings, &hours);
		words = g_strdup_printf("%d days, %.1f h, %d outings", (int)(s->haul_out - s->launch), hours, outings);
		ck_shows(words);
	}
}
END_TEST

START_TEST(the_year_says_which_water_what_is_assumed_and_what_is_not_on_record)
{
	key('4');
	find("pelican sound");
	ck_shows("sss");
	key(K_ESC);
	find("18 Apr 2026");
	ck_shows("assumed");
	ck_shows("the 328 days of 2026 so far count as");
	key(K_ESC);
	find("5 May 2018");
	ck_shows("not on record");
	ck_shows("the 297 days of 2018 on record, 56 of them assumed, count as");
	key(K_ESC);
	find("planned");
	ck_shows("2027 lies ahead: nothing has worn yet");
}
END_TEST

/* The rate that a page tells of a mechanism. */
static double
rate_on_page(const char *mechanism)
{
	g_autofree char *frame = grid_text(grid);
	const char *line = strstr(frame, mechanism), *x = line ? strstr(line, ", x ") : NULL;

	ck_assert_msg(x != NULL, "no rate of %s on:\n%s", mechanism, frame);
	return g_ascii_strtod(x + 4, NULL);
}

START_TEST(a_stay_opens_whole_and_salt_water_wears_more_than_fresh)
{
	double salt, fresh;

	key('4');
	find("pelican sound");
	key(K_ENTER);
	ck_shows("A fortnight in salt water");
	ck_shows("Lay: afloat 14 days; salt in play on 14");
	salt = rate_on_page("corrosion:");
	key('q');
	key(K_ESC);
	find("otter bay");
	key(K_ENTER);
	ck_shows("Lay: afloat 14 days; salt in play on 0");
	fresh = rate_on_page("corrosion:");
	ck_assert_msg(salt > fresh, "salt %g, fresh %g", salt, fresh);
}
END_TEST

START_TEST(what_is_planned_opens_without_wear)
{
	key('4');
	find("planned");
	key(K_ENTER);
	ck_shows("It is not so yet");
	ck_hides("corrosion");
}
END_TEST

START_TEST(a_boat_without_seasons_and_stays_says_what_to_do)
{
	open_plain("Skiff");
	book_close(book);
	book = NULL;
	app_begin();
	key('4');
	ck_shows("No season and no stay is on record: a adds one.");
	ck_shows("the 328 days of 2026 so far, 328 of them assumed, count as");
	key(K_ENTER);
	key('e');
	key(K_DELETE);
	key('a');
	ck_shows("A season: in and out");
	key(K_ESC);
	key('s');
	ck_shows("A stay: where the boat lies");
}
END_TEST

static void
set_season(void)
{
	form_season_open();
	type("2027-04-20");
	key(K_ENTER);
}

static void
set_stay(void)
{
	key('4');
	key('s');
}

static void
set_page(void)
{
	key('4');
	find("pelican sound");
	key(K_ENTER);
}

static const struct { const char *name; void (*set)(void); } screens[] = {
	{ "form-season", set_season }, { "form-stay", set_stay }, { "year-stay", set_page },
};

START_TEST(a_screen_is_as_it_was_looked_at)
{
	screens[_i].set();
	for (int k = 0; k < GOLDENS; k++)
		same_screen(screens[_i].name, &goldens[k]);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Seasons and stays");
	TCase *demo = tcase_create("demo"), *bare = tcase_create("bare");

	tcase_add_checked_fixture(demo, demo_begin, app_end);
	tcase_add_test(demo, a_launch_turns_the_state_of_the_boat_and_u_turns_it_back);
	tcase_add_test(demo, a_haul_out_alone_ends_the_season_under_way);
	tcase_add_test(demo, a_haul_out_without_a_season_is_refused_beside_the_field);
	tcase_add_test(demo, what_lies_ahead_is_planned_and_says_whose_place_it_takes);
	tcase_add_test(demo, a_date_that_can_be_read_twice_is_refused_and_kept);
	tcase_add_test(demo, a_season_in_the_way_is_named_and_nothing_typed_is_lost);
	tcase_add_test(demo, a_correction_changes_what_was_typed_and_keeps_the_remark);
	tcase_add_test(demo, an_overlapping_stay_is_refused_in_place_and_mended_there);
	tcase_add_test(demo, a_stay_that_ends_before_it_begins_is_refused_beside_the_field);
	tcase_add_test(demo, a_stay_that_lasts_ends_where_the_next_begins_and_the_sum_says_so);
	tcase_add_test(demo, a_stay_is_corrected_and_taken_out_and_comes_back);
	tcase_add_test(demo, the_hours_and_outings_of_a_season_are_those_of_its_days);
	tcase_add_test(demo, the_year_says_which_water_what_is_assumed_and_what_is_not_on_record);
	tcase_add_test(demo, a_stay_opens_whole_and_salt_water_wears_more_than_fresh);
	tcase_add_test(demo, what_is_planned_opens_without_wear);
	tcase_add_loop_test(demo, a_screen_is_as_it_was_looked_at, 0, G_N_ELEMENTS(screens));
	suite_add_tcase(s, demo);
	tcase_add_checked_fixture(bare, setup, app_end);
	tcase_add_test(bare, a_boat_without_seasons_and_stays_says_what_to_do);
	suite_add_tcase(s, bare);
	return run_suite(s);
}
