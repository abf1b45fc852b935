#include "engine/timeline.h"

#include "boat_case.h"

/* Spans that begin up to today. */
static char *
past_spans(void)
{
	GString *text = g_string_new(NULL);
	const struct span *span;
	int n = timeline_spans(t, &span);

	for (int i = 0; i < n && span[i].from <= boat->in.today; i++) {
		g_autofree char *says = span_says(&span[i]);

		g_string_append_printf(text, "%s%s", i ? "; " : "", says);
	}
	return g_string_free(text, FALSE);
}

#define TRAILER "today 2024-06-20; from 2024-06-01; usual 04-15 10-15 trailer roof fresh; "

static const struct { const char *says, *boat, *spans; } lives[] = {
	{ "without a record the usual days hold, assumed", "today 2024-11-01; from 2024-01-01",
	  "2024-01-01 2024-04-15 ashore - assumed; 2024-04-15 2024-10-15 afloat fresh assumed; "
	  "2024-10-15 2025-04-15 ashore - assumed" },
	{ "a season on record takes the place of its year's usual days",
	  "today 2024-11-01; from 2024-01-01; season 2024-05-01 2024-09-20",
	  "2024-01-01 2024-05-01 ashore - assumed; 2024-05-01 2024-09-20 afloat fresh; "
	  "2024-09-20 2024-11-02 ashore -" },
	{ "also one that lies outside them", "today 2024-11-20; from 2024-03-01; season 2024-10-20 2024-11-15",
	  "2024-03-01 2024-10-20 ashore - assumed; 2024-10-20 2024-11-15 afloat fresh; "
	  "2024-11-15 2024-11-21 ashore -" },
	{ "the boat's year turns in mid-winter: launched the day before, it is of the old one",
	  "today 2025-06-01; from 2024-09-01; season 2025-01-13 2025-03-01",
	  "2024-09-01 2025-01-13 ashore - assumed; 2025-01-13 2025-03-01 afloat fresh; 2025-03-01 2025-04-15 ashore -; "
	  "2025-04-15 2025-10-15 afloat fresh assumed" },
	{ "and launched on that day of the new", "today 2025-06-01; from 2024-09-01; season 2025-01-14 2025-03-01",
	  "2024-09-01 2024-10-15 afloat fresh assumed; 2024-10-15 2025-01-14 ashore - assumed; "
	  "2025-01-14 2025-03-01 afloat fresh; 2025-03-01 2025-06-02 ashore -" },
	{ "a haul-out later than the next usual launch puts that off",
	  "today 2025-05-20; from 2024-10-01; season 2024-05-01 2025-05-01",
	  "2024-10-01 2025-05-01 afloat fresh; 2025-05-01 2025-10-15 afloat fresh assumed" },
	{ "a season not ended lasts, assumed, to the usual day",
	  "today 2024-06-01; from 2024-05-01; season 2024-05-01 -",
	  "2024-05-01 2024-06-02 afloat fresh" },
	{ "past that day it lasts to today", "today 2024-12-01; from 2024-05-01; season 2024-05-01 -",
	  "2024-05-01 2024-12-01 afloat fresh; 2024-12-01 2025-04-15 ashore - assumed" },
	{ "but not past the next launch", "today 2025-05-01; from 2024-05-01; season 2024-05-01 -",
	  "2024-05-01 2024-10-15 afloat fresh; 2024-10-15 2025-04-15 ashore - assumed; "
	  "2025-04-15 2025-10-15 afloat fresh assumed" },
	{ "nor into a season on record", "today 2025-03-20; from 2024-09-01; season 2024-05-01 -; "
	  "season 2025-03-10 -",
	  "2024-09-01 2024-10-15 afloat fresh; 2024-10-15 2025-03-10 ashore - assumed; "
	  "2025-03-10 2025-03-21 afloat fresh" },
	{ "a season may lie across the new year", "today 2025-01-10; from 2024-10-01; "
	  "usual 10-20 04-10 afloat ashore salt",
	  "2024-10-01 2024-10-20 ashore - assumed; 2024-10-20 2025-04-10 afloat salt assumed" },
	{ "without usual days the boat is at its berth all the year",
	  "today 2024-06-01; from 2024-01-01; usual - - afloat ashore salt",
	  "2024-01-01 2034-06-01 afloat salt assumed" },
	{ "a stay comes before the season", "today 2024-07-01; from 2024-06-01; season 2024-05-01 -; "
	  "stay 2024-06-10 2024-06-24 afloat salt",
	  "2024-06-01 2024-06-10 afloat fresh; 2024-06-10 2024-06-24 afloat salt; "
	  "2024-06-24 2024-07-02 afloat fresh" },
	{ "a stay that names no water is in the usual one",
	  "today 2024-07-01; from 2024-06-10; stay 2024-06-10 - afloat -",
	  "2024-06-10 2024-07-02 afloat fresh" },
	{ "equal stays are one span", "today 2024-07-01; from 2024-06-10; stay 2024-06-10 2024-06-20 roof -; "
	  "stay 2024-06-20 - roof salt",
	  "2024-06-10 2024-07-02 roof -" },
	{ "a stay that lasts ends with the next", "today 2024-07-01; from 2024-06-10; stay 2024-06-10 - ashore -; "
	  "stay 2024-06-20 - afloat salt",
	  "2024-06-10 2024-06-20 ashore -; 2024-06-20 2024-07-02 afloat salt" },
	{ "an outing from the trailer is a day in its water", TRAILER "run 2024-06-05 3600 0 fresh - trip",
	  "2024-06-01 2024-06-05 trailer - assumed; 2024-06-05 2024-06-06 trailer fresh; "
	  "2024-06-06 2024-10-15 trailer - assumed" },
	{ "salt not rinsed off stays on, into the winter", TRAILER "run 2024-06-05 3600 0 salt - trip",
	  "2024-06-01 2024-06-05 trailer - assumed; 2024-06-05 2024-06-06 trailer salt; "
	  "2024-06-06 2024-10-15 trailer salt film assumed" },
	{ "so does brackish water's", TRAILER "run 2024-06-19 3600 0 brackish - trip",
	  "2024-06-01 2024-06-19 trailer - assumed; 2024-06-19 2024-06-20 trailer brackish; "
	  "2024-06-20 2024-10-15 trailer salt film assumed" },
	{ "a rinse takes it off at once", TRAILER "run 2024-06-05 3600 0 salt rinsed trip",
	  "2024-06-01 2024-06-05 trailer - assumed; 2024-06-05 2024-06-06 trailer salt rinsed; "
	  "2024-06-06 2024-10-15 trailer - assumed" },
	{ "so does the next outing that is rinsed",
	  TRAILER "run 2024-06-02 0 0 salt - trip; run 2024-06-04 0 0 salt rinsed trip",
	  "2024-06-01 2024-06-02 trailer - assumed; 2024-06-02 2024-06-03 trailer salt; "
	  "2024-06-03 2024-06-04 trailer salt film assumed; 2024-06-04 2024-06-05 trailer salt rinsed; "
	  "2024-06-05 2024-10-15 trailer - assumed" },
	{ "and the next in fresh water", TRAILER "run 2024-06-01 0 0 salt - trip; run 2024-06-03 0 0 fresh - trip",
	  "2024-06-01 2024-06-02 trailer salt; 2024-06-02 2024-06-03 trailer salt film assumed; "
	  "2024-06-03 2024-06-04 trailer fresh; 2024-06-04 2024-10-15 trailer - assumed" },
	{ "salt from before the first day is still on", TRAILER "run 2024-05-20 0 0 salt - trip",
	  "2024-06-01 2024-10-15 trailer salt film assumed" },
	{ "also from the day before", TRAILER "run 2024-05-31 0 0 brackish - trip",
	  "2024-06-01 2024-10-15 trailer salt film assumed" },
	{ "two outings a day: the saltiest water, rinsed when both were",
	  TRAILER "run 2024-06-01 0 0 fresh - trip; run 2024-06-01 0 0 salt rinsed trip; "
	  "run 2024-06-02 0 0 salt rinsed trip; run 2024-06-02 0 0 brackish - trip",
	  "2024-06-01 2024-06-02 trailer salt rinsed; 2024-06-02 2024-06-03 trailer salt; "
	  "2024-06-03 2024-10-15 trailer salt film assumed" },
	{ "an outing that names no water is in the usual one", TRAILER "run 2024-06-01 0 0 - rinsed trip",
	  "2024-06-01 2024-06-02 trailer fresh rinsed; 2024-06-02 2024-10-15 trailer - assumed" },
	{ "or in that of the stay", TRAILER "stay 2024-06-01 2024-06-10 trailer salt; "
	  "run 2024-06-02 0 0 - rinsed trip",
	  "2024-06-01 2024-06-02 trailer -; 2024-06-02 2024-06-03 trailer salt rinsed; "
	  "2024-06-03 2024-06-10 trailer -; "
	  "2024-06-10 2024-10-15 trailer - assumed" },
	{ "an outing after today is not seen", TRAILER "run 2024-06-21 3600 0 salt - trip",
	  "2024-06-01 2024-10-15 trailer - assumed" },
	{ "afloat the water it lies in governs, on its day the outing's",
	  "today 2024-06-20; from 2024-06-01; run 2024-06-03 0 0 fresh - trip; run 2024-06-05 0 0 salt - trip",
	  "2024-06-01 2024-06-05 afloat fresh assumed; 2024-06-05 2024-06-06 afloat salt; "
	  "2024-06-06 2024-10-15 afloat fresh assumed" },
	{ "and the salt shows when it comes out", "today 2024-10-20; from 2024-10-12; run 2024-10-13 0 0 salt - trip",
	  "2024-10-12 2024-10-13 afloat fresh assumed; 2024-10-13 2024-10-14 afloat salt; "
	  "2024-10-14 2024-10-15 afloat fresh assumed; 2024-10-15 2025-04-15 ashore salt film assumed" },
};

START_TEST(a_life_in_spans)
{
	g_autofree char *got = NULL;

	build(lives[_i].boat);
	got = past_spans();
	ck_assert_msg(!strcmp(got, lives[_i].spans), "%s:\n%s, not\n%s", lives[_i].says, got, lives[_i].spans);
}
END_TEST

START_TEST(what_lies_ahead)
{
	static const struct { int i; const char *says; } ahead[] = {
		/* The stay goes on to the haul-out; the winter, the planned season, usual years; the salt stays on. */
		{ 1, "2024-06-02 2024-10-15 roof salt film assumed" },
		{ 2, "2024-10-15 2025-05-05 ashore salt film assumed" },
		{ 3, "2025-05-05 2025-06-06 afloat fresh assumed" },
		{ 5, "2026-04-15 2026-10-15 afloat fresh assumed" },
		{ 21, "2034-04-15 2034-06-01 afloat fresh assumed" },
	};
	const struct span *span;

	build("today 2024-06-01; from 2024-06-01; stay 2024-05-20 - roof -; season 2025-05-05 2025-06-06; "
	      "usual 04-15 10-15 afloat ashore fresh; run 2024-05-25 0 0 salt - trip");
	ck_assert_int_eq(timeline_spans(t, &span), 22);
	for (guint k = 0; k < G_N_ELEMENTS(ahead); k++) {
		g_autofree char *says = span_says(&span[ahead[k].i]);

		ck_assert_str_eq(says, ahead[k].says);
	}
}
END_TEST

/* A day of each kind, 2024-07-10 or, ahead of the launch, 2024-03-10, and what it counts as for raw water. */
static const struct {
	const char *says, *boat, *day;
	double rate;
} days[] = {
	{ "afloat in salt water", "usual - - afloat afloat salt", "2024-07-10", 2 },
	{ "afloat in brackish water", "usual - - afloat afloat brackish", "2024-07-10", 1.5 },
	{ "afloat in fresh water", "usual - - afloat afloat fresh", "2024-07-10", 1.25 },
	{ "on its trailer", "usual - - trailer trailer salt", "2024-07-10", 1 },
	{ "with salt left on", "usual - - trailer trailer salt; run 2024-07-09 0 0 salt - trip", "2024-07-10", 2 },
	{ "out in salt water", "usual - - trailer trailer salt; run 2024-07-10 0 0 salt - trip", "2024-07-10", 2 },
	{ "out and rinsed", "usual - - trailer trailer salt; run 2024-07-10 0 0 salt rinsed trip", "2024-07-10", 1.75 },
	{ "out is not afloat", "usual - - trailer trailer fresh; run 2024-07-10 0 0 fresh - trip", "2024-07-10", 1 },
	{ "under a roof in winter", "usual 04-15 10-15 afloat roof salt", "2024-03-10", 1 },
};

START_TEST(the_largest_rate_counts)
{
	gint64 day = day_at(days[_i].day);
	g_autofree char *text = g_strconcat("today 2024-08-01; from 2024-01-01; rate raw-water.salt 2; "
					    "rate raw-water.brackish 1.5; rate raw-water.afloat 1.25; "
					    "rate raw-water.rinsed 1.75; ", days[_i].boat, NULL);

	build(text);
	ck_assert_msg(fabs(timeline_days(t, MECH_RAW_WATER, day, day + 1) - days[_i].rate) < 1e-9, "%s: %g", days[_i].says,
		      timeline_days(t, MECH_RAW_WATER, day, day + 1));
	ck_assert_double_eq(timeline_days(t, MECH_WEAR, day, day + 1), 1);
	ck_assert_double_eq(timeline_days(t, MECH_NONE, day, day + 1), 1);
}
END_TEST

static struct wear_span
dry_or_wet(enum stand stand, enum water water, double celsius)
{
	return (struct wear_span) { .stand = stand, .water = water, .psu = NAN, .celsius = celsius, .air = AIR_COUNT };
}

/* Each day is what wear.c says of its place at the mean temperature of its month. */
START_TEST(a_day_wears_as_warm_as_its_month)
{
	struct wear_span july = dry_or_wet(STAND_AFLOAT, WATER_SALT, 0), january = dry_or_wet(STAND_ROOF, WATER_COUNT, 0);
	gint64 summer = day_at("2024-07-31"), winter = day_at("2024-01-31");

	build("today 2024-08-01; from 2024-01-01; usual 04-15 10-15 afloat roof salt");
	july.celsius = boat->wear.water_mean + boat->wear.water_swing * cos(2 * G_PI * (7 - boat->wear.water_warmest) / 12);
	january.celsius = boat->wear.air_mean + boat->wear.air_swing * cos(2 * G_PI * (1 - boat->wear.air_warmest) / 12);
	for (int m = MECH_CORROSION; m <= MECH_RUBBER; m++) {
		ck_assert_double_eq_tol(timeline_days(t, (enum mechanism)m, summer, summer + 1),
					wear_rate(&boat->wear, (enum mechanism)m, &july), 1e-9);
		ck_assert_double_eq_tol(timeline_days(t, (enum mechanism)m, winter, winter + 1),
					wear_rate(&boat->wear, (enum mechanism)m, &january), 1e-9);
	}
}
END_TEST

/* A place that is known wins over the word and the usual climate. */
START_TEST(a_place_has_a_water_and_a_climate_of_its_own)
{
	struct climate place = { .psu = 8, .air = AIR_C5 };
	struct wear_span span = dry_or_wet(STAND_AFLOAT, WATER_BRACKISH, 25), dry = dry_or_wet(STAND_ASHORE, WATER_COUNT, 30);
	gint64 day = day_at("2024-07-10");

	for (int i = 0; i < 12; i++) {
		place.water.in[i] = 25;
		place.dry.in[i] = 30;
	}
	span.psu = 8;
	span.air = dry.air = AIR_C5;
	boat_text_init(boat);
	boat_text_read(boat, "today 2024-08-01; from 2024-01-01; usual - - ashore ashore fresh; "
			     "stay 2024-07-01 2024-07-20 afloat brackish; stay 2024-07-20 2024-07-30 ashore brackish");
	boat->stay[0].climate = boat->stay[1].climate = &place;
	boat_timeline(boat, t);
	for (int m = MECH_CORROSION; m <= MECH_RUBBER; m++) {
		ck_assert_double_eq_tol(timeline_days(t, (enum mechanism)m, day, day + 1),
					wear_rate(&boat->wear, (enum mechanism)m, &span), 1e-9);
		ck_assert_double_eq_tol(timeline_days(t, (enum mechanism)m, day + 15, day + 16),
					wear_rate(&boat->wear, (enum mechanism)m, &dry), 1e-9);
	}
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("A boat's life is spans of exposure, and the worst condition of each gives its wear");
	TCase *tc = add_case(s, "spans");

	tcase_add_loop_test(tc, a_life_in_spans, 0, G_N_ELEMENTS(lives));
	tcase_add_test(tc, what_lies_ahead);
	tc = add_case(s, "rates");
	tcase_add_loop_test(tc, the_largest_rate_counts, 0, G_N_ELEMENTS(days));
	tcase_add_test(tc, a_day_wears_as_warm_as_its_month);
	tcase_add_test(tc, a_place_has_a_water_and_a_climate_of_its_own);
	return run_suite(s);
}
