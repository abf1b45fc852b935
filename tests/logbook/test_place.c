#include "logbook/place.h"

#include "../engine/published.h"
#include "base/err.h"
#include "engine/salinity.h"
#include "logbook/due_list.h"
#include "logbook/outing.h"
#include "logbook/year.h"
#include "open.h"

static struct published rows;

static void
put(const struct place_form *f)
{
	struct place p;
	g_autoptr(GError) err = NULL;

	ck_assert_msg(book_place(book, f, &p, &err), "%s", err ? err->message : "?");
	record_clear(RECORD_PLACE, &p);
}

static void
refused(const struct place_form *f, int code, const char *words)
{
	struct place p;
	g_autoptr(GError) err = NULL;

	ck_assert(!book_place(book, f, &p, &err));
	ck_assert_int_eq(err->code, code);
	ck_assert_msg(strstr(err->message, words) != NULL, "%s", err->message);
	record_clear(RECORD_PLACE, &p);
}

static gint64
water_of(const char *name)
{
	gint64 water = NONE;

	ck_assert(book_place_water(book, name, &water, NULL));
	return water;
}

/* The rows that an owner's meter can show: at the surface, by conductivity or in PSU. */
START_TEST(a_reading_becomes_the_published_salinity)
{
	double c = published_number(&rows, _i, "C_mS_cm"), t90 = published_number(&rows, _i, "t90"), psu = -1;
	double most = MAX(published_number(&rows, _i, "tolerance"), .0005); /* kept to a thousandth */
	g_autofree char *text = NULL;
	g_autoptr(GError) err = NULL;

	if (isnan(c))
		return;
	text = g_strdup_printf("%g mS/cm at %g C", c, t90);
	ck_assert_msg(salinity_of_reading(text, &psu, &err), "%s", err ? err->message : "?");
	ck_assert_msg(fabs(psu - published_number(&rows, _i, "expected")) <= most * 1.0001, "%s: %.6f", text, psu);
}
END_TEST

START_TEST(the_water_follows_from_the_salinity_by_the_published_classes)
{
	static const char *const class_of[] = { "fresh", "oligohaline", "mesohaline", "polyhaline", "euhaline",
						"hyperhaline" };
	static const enum water water[] = { WATER_FRESH, WATER_BRACKISH, WATER_BRACKISH, WATER_BRACKISH, WATER_SALT,
					    WATER_SALT };
	g_autofree char *text = NULL;
	int k = 0;

	if (strcmp(published_text(&rows, _i, "quantity"), "class"))
		return;
	while (strcmp(class_of[k], published_text(&rows, _i, "expected")))
		ck_assert_int_lt(++k, (int)G_N_ELEMENTS(class_of));
	open_plain("Heron");
	text = g_strdup_printf("%s PSU", published_text(&rows, _i, "S"));
	put(&(struct place_form) { .name = "quay", .salinity = text });
	ck_assert_int_eq(water_of("quay"), water[k]);
}
END_TEST

/* Back through EOS-80 to the weight that was read: the hydrometer is of glass and marked at 20 C. */
START_TEST(a_hydrometer_is_read_by_the_density_of_its_water)
{
	static const struct { double gravity, celsius; } read[] = {
		{ 1.018, 15 }, { 1.025, 20 }, { 1.0, 20 }, { 1.01, 4 }
	};
	double psu = -1, t68 = temperature_68(read[_i].celsius), weighs;
	g_autofree char *text = g_strdup_printf("%g at %g C", read[_i].gravity, read[_i].celsius);
	g_autoptr(GError) err = NULL;

	ck_assert_msg(salinity_of_reading(text, &psu, &err), "%s", err ? err->message : "?");
	weighs = water_density(psu, t68) / water_density(0, 20) / (1 - 25e-6 * (t68 - 20));
	ck_assert_double_eq_tol(weighs, read[_i].gravity, 2e-6);
}
END_TEST

static const struct { const char *text, *words; } impossible[] = {
	{ "46 PSU", "0 to 45 PSU" },
	{ "42000 mS/cm at 18 C", "are uS/cm meant" },
	{ "42 mS/cm at 60 C", "-2 to 40 C" },
	{ "1.1 at 15 C", "fresh water is about 1.000" },
	{ ".9 at 15 C", "fresh water is about 1.000" },
	{ "1018 at 15 C", "fresh water is about 1.000" },
};

START_TEST(a_reading_that_cannot_be_is_refused)
{
	double psu = -1;
	g_autoptr(GError) err = NULL;

	ck_assert(!salinity_of_reading(impossible[_i].text, &psu, &err));
	ck_assert_msg(strstr(err->message, impossible[_i].words) != NULL, "%s", err->message);
	ck_assert(psu < 0);
}
END_TEST

START_TEST(months_are_twelve_in_either_scale)
{
	struct monthly c, f;

	ck_assert(months_parse("4 4 6 9 13 17 20 21 18 14 9 -", &c, NULL));
	ck_assert(months_parse("39,2 39.2 42.8 48.2 55.4 62.6 68 69.8 64.4 57.2 48.2 - F", &f, NULL));
	for (int i = 0; i < 11; i++)
		ck_assert_double_eq_tol(c.in[i], f.in[i], .005);
	ck_assert(isnan(c.in[11]) && isnan(f.in[11]));
	ck_assert(months_parse("4 4 6 9 13 17 20 21C 18 14 9 50F", &c, NULL));
	ck_assert_double_eq_tol(c.in[11], 10, .005);
}
END_TEST

static const struct { const char *text, *words; } not_months[] = {
	{ "", "0 numbers: twelve" },
	{ "1 2 3 4 5 6 7 8 9 10 11", "11 numbers: twelve" },
	{ "1 2 3 4 5 6 7 8 9 10 11 12 13 C", "13 numbers: twelve" },
	{ "1 2 3 4 5 6 7 8 9 10 11 12K", "C or F" },
	{ "1 2 3 x 5 6 7 8 9 10 11 12", "month 4" },
};

START_TEST(what_is_no_year_of_months_is_refused)
{
	struct monthly m;
	g_autoptr(GError) err = NULL;

	ck_assert(!months_parse(not_months[_i].text, &m, &err));
	ck_assert_msg(strstr(err->message, not_months[_i].words) != NULL, "%s", err->message);
}
END_TEST

START_TEST(a_word_may_not_contradict_the_salinity)
{
	open_plain("Heron");
	refused(&(struct place_form) { .name = "quay", .salinity = "12 ppt", .water = "salt" }, ERR_CONFLICT,
		"salt contradicts 12 PSU, which is brackish");
	ck_assert_int_eq(book_place_key(book, "quay"), NONE);
	put(&(struct place_form) { .name = "quay", .salinity = "12 ppt", .water = "brackish" });
	refused(&(struct place_form) { .name = "quay", .water = "fresh" }, ERR_CONFLICT, "12 PSU");
	put(&(struct place_form) { .name = "quay", .salinity = "0.2 PSU" });
	ck_assert_int_eq(water_of("quay"), WATER_FRESH);
	put(&(struct place_form) { .name = "quay", .salinity = "none", .water = "salt" });
	ck_assert_int_eq(water_of("quay"), WATER_SALT);
}
END_TEST

START_TEST(a_months_mean_out_of_range_is_refused)
{
	open_plain("Heron");
	refused(&(struct place_form) { .name = "quay", .water_temp = "39 39 43 48 55 62 68 70 64 57 48 43" },
		ERR_INPUT, "F behind them");
	refused(&(struct place_form) { .name = "quay", .air_temp = "-61 0 0 0 0 0 0 0 0 0 0 0" }, ERR_INPUT,
		"-60 to 50 C");
	ck_assert_int_eq(book_place_key(book, "quay"), NONE);
}
END_TEST

static void
lie_at(const char *place, gint64 water, int from, int until)
{
	struct stay s;
	g_autoptr(GError) err = NULL;

	record_init(RECORD_STAY, &s);
	s.boat = boat.id;
	s.date = day_from_ymd(2026, from, 1);
	s.until = day_from_ymd(2026, until, 1);
	s.stand = STAND_AFLOAT;
	s.water = water;
	s.place = g_strdup(place);
	ck_assert_msg(book_stay(book, &s, &err), "%s", err ? err->message : "?");
	record_clear(RECORD_STAY, &s);
}

START_TEST(a_stay_at_a_known_place_has_its_climate)
{
	struct due_list *l = due_list_new();
	const struct stay_in *s;

	open_plain("Heron");
	put(&(struct place_form) { .name = "quay", .salinity = "12 ppt", .air = "c4",
				   .water_temp = "4 4 6 9 13 17 20 21 18 14 9 -" });
	put(&(struct place_form) { .name = "pond", .air_temp = "1 2 3 4 5 6 7 8 9 10 11 12" });
	lie_at("quay", NONE, 1, 2);
	lie_at("quay", WATER_SALT, 2, 3);
	lie_at("pond", NONE, 3, 4);
	lie_at("nowhere", NONE, 4, 5);
	ck_assert(due_read_calendar(book, l, &boat, day_from_ymd(2026, 1, 1), NULL));
	ck_assert_int_eq(l->stays->len, 4);
	s = (const void *)l->stays->data;
	ck_assert_int_eq(s[0].water, WATER_BRACKISH);
	ck_assert_double_eq_tol(s[0].climate->psu, 12, 1e-9);
	ck_assert_int_eq(s[0].climate->air, AIR_C4);
	ck_assert_double_eq_tol(s[0].climate->water.in[7], 21, 1e-9);
	ck_assert(isnan(s[0].climate->water.in[11]) && isnan(s[0].climate->dry.in[0]));
	/* The word said wins: the place's salinity is another water's. */
	ck_assert_int_eq(s[1].water, WATER_SALT);
	ck_assert(isnan(s[1].climate->psu));
	ck_assert_double_eq_tol(s[1].climate->water.in[7], 21, 1e-9);
	ck_assert_int_eq(s[2].water, boat.water);
	ck_assert(isnan(s[2].climate->psu));
	ck_assert_int_eq(s[2].climate->air, AIR_COUNT);
	ck_assert_double_eq_tol(s[2].climate->dry.in[11], 12, 1e-9);
	ck_assert_ptr_null(s[3].climate);
	ck_assert_int_eq(s[3].water, boat.water);
	due_list_free(l);
}
END_TEST

START_TEST(what_names_a_place_follows_its_new_name)
{
	g_autoptr(GArray) stays = NULL;
	g_autoptr(GError) err = NULL;

	open_plain("Heron");
	put(&(struct place_form) { .name = "quay", .water = "salt" });
	put(&(struct place_form) { .name = "pond" });
	lie_at("quay", NONE, 1, 2);
	ck_assert(book_boat_at(book, &boat, "quay", NULL));
	refused(&(struct place_form) { .name = "quay", .rename = "pond" }, ERR_CONFLICT, "already");
	put(&(struct place_form) { .name = "quay", .rename = "old quay" });
	ck_assert_int_eq(book_place_key(book, "quay"), NONE);
	stays = book_records(book, RECORD_STAY, boat.id, NULL);
	ck_assert_str_eq(((const struct stay *)(const void *)stays->data)[0].place, "old quay");
	record_clear(RECORD_BOAT, &boat);
	ck_assert(book_boat(book, NULL, &boat, NULL));
	ck_assert_str_eq(boat.place, "old quay");
	ck_assert(!book_drop_place(book, "old quay", &err));
	ck_assert_msg(strstr(err->message, "stays (1), boats (1)") != NULL, "%s", err->message);
	ck_assert(book_drop_place(book, "pond", NULL));
}
END_TEST

START_TEST(an_outing_takes_the_water_of_a_known_place)
{
	static const struct { const char *place; gint64 said, water; } trips[] = {
		{ "quay", NONE, WATER_SALT }, { "quay", WATER_FRESH, WATER_FRESH }, { "pond", NONE, NONE },
		{ "nowhere", NONE, NONE },
	};

	open_plain("Heron");
	put(&(struct place_form) { .name = "quay", .water = "salt" });
	put(&(struct place_form) { .name = "pond", .air = "c2" });
	for (guint i = 0; i < G_N_ELEMENTS(trips); i++) {
		struct outing_form f = { .boat = boat.id, .share = { { NULL, H, NONE } }, .n_shares = 1,
					  .instead_of = NONE };
		struct outing_said said = { 0 };

		record_init(RECORD_OUTING, &f.what);
		f.what.date = day_from_ymd(2026, 8, 1 + (int)i);
		f.what.place = g_strdup(trips[i].place);
		f.what.water = trips[i].said;
		ck_assert(book_outing(book, &f, &said, NULL));
		ck_assert_int_eq(said.row[0].water, trips[i].water);
		ck_assert_int_eq(said.place_water, trips[i].said == NONE && trips[i].water != NONE);
		outing_said_clear(&said);
		record_clear(RECORD_OUTING, &f.what);
	}
}
END_TEST

START_TEST(a_boat_afloat_takes_the_places_water_for_its_usual_one)
{
	open_plain("Heron");
	put(&(struct place_form) { .name = "quay", .water = "salt" });
	ck_assert(book_boat_at(book, &boat, "quay", NULL));
	ck_assert_int_eq(boat.water, WATER_FRESH); /* on its trailer it is run where it is usually run */
	boat.berth = STAND_AFLOAT;
	ck_assert(book_boat_at(book, &boat, "quay", NULL));
	ck_assert_int_eq(boat.water, WATER_SALT);
	ck_assert(!book_boat_at(book, &boat, "quai", NULL));
	ck_assert(book_boat_at(book, &boat, "none", NULL));
	ck_assert_ptr_null(boat.place);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("logbook/place");
	TCase *t = tcase_create("places");
	int failed;

	published_read(&rows, "07_salinity.csv");
	tcase_add_checked_fixture(t, setup, teardown);
	tcase_add_loop_test(t, a_reading_becomes_the_published_salinity, 0, rows.n);
	tcase_add_loop_test(t, the_water_follows_from_the_salinity_by_the_published_classes, 0, rows.n);
	tcase_add_loop_test(t, a_hydrometer_is_read_by_the_density_of_its_water, 0, 4);
	tcase_add_loop_test(t, a_reading_that_cannot_be_is_refused, 0, G_N_ELEMENTS(impossible));
	tcase_add_test(t, months_are_twelve_in_either_scale);
	tcase_add_loop_test(t, what_is_no_year_of_months_is_refused, 0, G_N_ELEMENTS(not_months));
	tcase_add_test(t, a_word_may_not_contradict_the_salinity);
	tcase_add_test(t, a_months_mean_out_of_range_is_refused);
	tcase_add_test(t, a_stay_at_a_known_place_has_its_climate);
	tcase_add_test(t, what_names_a_place_follows_its_new_name);
	tcase_add_test(t, an_outing_takes_the_water_of_a_known_place);
	tcase_add_test(t, a_boat_afloat_takes_the_places_water_for_its_usual_one);
	suite_add_tcase(s, t);
	failed = run_suite(s);
	published_clear(&rows);
	return failed;
}
