#include "engine/wear.h"

#include "base/date.h"
#include "engine/salinity.h"
#include "published.h"

static struct published exposure;
static struct wear_table table;

static void
set_up(void)
{
	wear_table_default(&table);
}

/* The year of the example: 183 days afloat in salt water of 17 C, a week ashore with the salt left on,
 * the rest rinsed and under a roof at 6 C. */
static const struct {
	double days;
	struct wear_span span;
} example[] = {
	{ 183, { .stand = STAND_AFLOAT, .water = WATER_SALT, .psu = NAN, .celsius = 17, .air = AIR_COUNT } },
	{ 7,
	  { .stand = STAND_TRAILER,
	    .water = WATER_COUNT,
	    .psu = NAN,
	    .celsius = 12,
	    .air = AIR_COUNT,
	    .film = TRUE } },
	{ 175, { .stand = STAND_ROOF, .water = WATER_COUNT, .psu = NAN, .celsius = 6, .air = AIR_COUNT } },
};

static double
example_year(enum mechanism m)
{
	double days = 0;

	for (guint i = 0; i < G_N_ELEMENTS(example); i++)
		days += example[i].days * wear_raw(&table, m, &example[i].span);
	return days;
}

static double
air_figure(int i, const char *name)
{
	struct weather w = { published_number(&exposure, i, "T"), published_number(&exposure, i, "RH"),
			     published_number(&exposure, i, "Pd"), published_number(&exposure, i, "Sd") };

	return g_str_has_prefix(name, "steel_") ? iso9223_steel(&w) : iso9223_zinc(&w);
}

static double
figure(int i, const char *name)
{
	double kj = published_number(&exposure, i, "Ea");

	if (g_str_has_prefix(name, "steel_") || g_str_has_prefix(name, "zinc_"))
		return air_figure(i, name);
	if (g_str_has_prefix(name, "iso9224_"))
		return iso9224_loss(g_ascii_strtod(name + strlen("iso9224_"), NULL), .523);
	if (g_str_has_prefix(name, "DO_"))
		return water_oxygen(published_number(&exposure, i, "T"), published_number(&exposure, i, "S"));
	if (g_str_has_prefix(name, "span"))
		return wear_raw(&table, strstr(name, "fcorr") ? MECH_CORROSION : MECH_RUBBER,
				&example[name[4] - '0'].span);
	if (g_str_has_prefix(name, "year_"))
		return example_year(!strcmp(name, "year_Acorr") ? MECH_CORROSION : MECH_RUBBER);
	if (!strcmp(name, "Ea_q10_2"))
		return log(2) / log(arrhenius(1, 30, 20));
	if (!strcmp(name, "arr_sin_I0"))
		return arrhenius_shortcut(kj, 12, 8, 20);
	if (!strcmp(name, "arr_sin_exact"))
		return arrhenius_sine(kj, 12, 8, 20);
	if (!strcmp(name, "arr_sin_Teff"))
		return arrhenius_steady(kj, 12, 8);
	ck_assert_msg(g_str_has_prefix(name, "arr_"), "a row of another kind: %s", name);
	return arrhenius(kj, 30, 20);
}

START_TEST(exposure_is_as_published)
	{
		static const char *const classes[] = { "C1", "C2", "C3", "C4", "C5", "CX", ">CX" };
		const char *name = published_text(&exposure, _i, "name");

		if (g_str_has_prefix(name, "cat_"))
			published_check_text(
				&exposure, _i,
				classes[iso9223_class(g_ascii_strtod(name + strlen("cat_"), NULL))]);
		else
			published_check(&exposure, _i, figure(_i, name));
	}
END_TEST

/* (1 + k) / (1 + k rho / rho sea), k = .25, 15 C, resistivities of the oceanographers' library gsw
 * 3.6.16, which below 2 PSU follow an extension of the scale. */
static const struct {
	double psu, factor, tolerance;
} anodes[] = {
	{ 38, 1.01434884149511, 1e-7 },  { 35, 1, 1e-7 },
	{ 30, .971202232791585, 1e-7 },  { 18, .858350343061429, 1e-7 },
	{ 7, .598252914459765, 1e-7 },   { 2, .276468631981753, 2e-4 },
	{ .5, .0880710369509751, 2e-4 }, { .2, .0378490202477188, 2e-4 },
};

START_TEST(anodes_work_as_the_water_conducts)
	{
		ck_assert_double_eq_tol(wear_anode(&table, anodes[_i].psu), anodes[_i].factor,
					anodes[_i].tolerance);
	}
END_TEST

#define AFLOAT(w, t) \
	{ \
		.stand = STAND_AFLOAT, .water = WATER_##w, .psu = NAN, .celsius = t, .air = AIR_COUNT \
	}
#define DRY(s) \
	{ \
		.stand = STAND_##s, .water = WATER_COUNT, .psu = NAN, .celsius = 15, .air = AIR_COUNT \
	}
#define OUT(w, ...) \
	{ \
		.stand = STAND_TRAILER, .water = WATER_##w, .psu = NAN, .celsius = 15, .air = AIR_COUNT, \
		__VA_ARGS__ \
	}

/* DNV-RP-B401 Table 10-2 over its .080 A/m2; air: means of ISO 9223's bounds over 35 um; the rest: the
 * defaults. */
static const struct {
	const char *says;
	enum mechanism m;
	struct wear_span span;
	double raw, rate;
} spans[] = {
	{ "corrosion presumes fresh water", MECH_CORROSION, AFLOAT(FRESH, 15), .6, 1 },
	{ "salt water", MECH_CORROSION, AFLOAT(SALT, 15), 1, 1 / .6 },
	{ "brackish water ten degrees warmer", MECH_CORROSION, AFLOAT(BRACKISH, 25), .8 * 1.26,
	  .8 * 1.26 / .6 },
	{ "of no known temperature", MECH_CORROSION, AFLOAT(BRACKISH, NAN), .8, .8 / .6 },
	{ "a day out, rinsed: wet all the same", MECH_CORROSION, OUT(SALT, .rinsed = TRUE), 1, 1 / .6 },
	{ "salt left on", MECH_CORROSION, OUT(SALT, .film = TRUE), 1.807016, 1.807016 / .6 },
	{ "outdoors", MECH_CORROSION, DRY(ASHORE), 1.010153, 1.010153 / .6 },
	{ "under a roof", MECH_CORROSION, DRY(ROOF), .162882, .162882 / .6 },
	{ "in known air",
	  MECH_CORROSION,
	  { .stand = STAND_ASHORE, .water = WATER_COUNT, .psu = NAN, .air = AIR_C1 },
	  1.3 / 35,
	  1.3 / 35 / .6 },
	{ "a fitting at the waterline: its interval presumes that",
	  MECH_CORROSION,
	  { .stand = STAND_AFLOAT, .water = WATER_SALT, .psu = NAN, .celsius = 15, .splash = TRUE },
	  2.1,
	  1 / .6 },
	{ "measured salinity wins over the word",
	  MECH_CORROSION,
	  { .stand = STAND_AFLOAT, .water = WATER_SALT, .psu = .3, .celsius = 15 },
	  .6,
	  1 },
	{ "anodes presume the sea", MECH_GALVANIC, AFLOAT(SALT, 15), 1, 1 },
	{ "warm water asks less of them", MECH_GALVANIC, AFLOAT(SALT, 20.1), .07 / .08, .07 / .08 },
	{ "to 20", MECH_GALVANIC, AFLOAT(SALT, 20), 1, 1 },
	{ "to 12", MECH_GALVANIC, AFLOAT(SALT, 12), 1.25, 1.25 },
	{ "from 7", MECH_GALVANIC, AFLOAT(SALT, 7), 1.25, 1.25 },
	{ "cold", MECH_GALVANIC, AFLOAT(SALT, 6.9), 1.5, 1.5 },
	{ "they rest ashore", MECH_GALVANIC, DRY(ASHORE), 0, 0 },
	{ "with salt left on too", MECH_GALVANIC, OUT(SALT, .film = TRUE), 0, 0 },
	{ "rubber does not mind salt", MECH_RUBBER, AFLOAT(SALT, 15), 1, 1 },
	{ "it minds the sun", MECH_RUBBER, OUT(COUNT, .open = TRUE), 1.5, 1.5 },
	{ "raw water, salt", MECH_RAW_WATER, OUT(SALT, .rinsed = FALSE), 2, 2 },
	{ "raw water, flushed", MECH_RAW_WATER, OUT(SALT, .rinsed = TRUE), 4. / 3, 4. / 3 },
	{ "raw water, flushed in vain", MECH_RAW_WATER, OUT(FRESH, .rinsed = TRUE), 1, 1 },
	{ "raw water, salt left in", MECH_RAW_WATER, OUT(SALT, .film = TRUE), 2, 2 },
	{ "raw water, afloat: the larger, not the product", MECH_RAW_WATER, AFLOAT(BRACKISH, 15), 1.5, 1.5 },
	{ "raw water, afloat in fresh", MECH_RAW_WATER, AFLOAT(FRESH, 15), 4. / 3, 4. / 3 },
	{ "raw water, dry", MECH_RAW_WATER, DRY(TRAILER), 1, 1 },
	{ "growth afloat", MECH_GROWTH, AFLOAT(FRESH, 15), 2, 2 },
	{ "growth ashore", MECH_GROWTH, DRY(ASHORE), 1, 1 },
	{ "printed dates", MECH_NONE, AFLOAT(SALT, 30), 1, 1 },
	{ "fluids", MECH_FLUID, AFLOAT(SALT, 30), 1, 1 },
	{ "frost", MECH_FROST, AFLOAT(SALT, 30), 1, 1 },
	{ "wear", MECH_WEAR, AFLOAT(SALT, 30), 1, 1 },
};

START_TEST(each_span_wears_as_it_is)
	{
		double raw = wear_raw(&table, spans[_i].m, &spans[_i].span),
		       rate = wear_rate(&table, spans[_i].m, &spans[_i].span);

		ck_assert_msg(fabs(raw - spans[_i].raw) < 1e-6, "%s: %.9g, not %.9g", spans[_i].says, raw,
			      spans[_i].raw);
		ck_assert_msg(fabs(rate - spans[_i].rate) < 2e-6, "%s: rate %.9g, not %.9g", spans[_i].says,
			      rate, spans[_i].rate);
	}
END_TEST

START_TEST(rates_are_cut_where_they_say_little)
	{
		struct wear_span sea = AFLOAT(SALT, 15), lake = AFLOAT(FRESH, 15);

		table.presumed[MECH_GALVANIC] = lake;
		ck_assert_double_eq(wear_rate(&table, MECH_GALVANIC, &sea), 12);
		table.presumed[MECH_GALVANIC] = sea;
		lake.psu = PSU_LEAST;
		ck_assert_double_eq(wear_rate(&table, MECH_GALVANIC, &lake), .02);
		*wear_table_at(&table, "rate.least") = .001;
		ck_assert_double_lt(wear_rate(&table, MECH_GALVANIC, &lake), .01);
	}
END_TEST

START_TEST(every_constant_has_a_source_and_can_be_changed)
	{
		const struct wear_constant *c = &wear_constants[_i];

		ck_assert_double_eq(*wear_table_at(&table, c->key), c->value);
		ck_assert_msg(c->low <= c->value && c->value <= c->high, "%s lies outside its range", c->key);
		ck_assert_msg(!strcmp(c->standing, "published") || !strcmp(c->standing, "practice")
				      || !strcmp(c->standing, "memory") || !strcmp(c->standing, "assumption"),
			      "%s: %s", c->key, c->standing);
		ck_assert_int_gt((int)strlen(c->source), 3);
		for (int i = 0; i < _i; i++) {
			ck_assert_str_ne(c->key, wear_constants[i].key);
			ck_assert_uint_ne(c->offset, wear_constants[i].offset);
		}
		ck_assert_ptr_null(wear_table_at(&table, "no such"));
	}
END_TEST

/* The first and last place inside the standard's range of temperature, humidity, SO2 and chloride, and
 * outside. */
static const struct {
	struct weather w;
	gboolean inside;
} places[] = {
	{ { -17.1, 34, .7, .4 }, TRUE },  { { 28.7, 93, 150.4, 760.5 }, TRUE },
	{ { -17.2, 34, .7, .4 }, FALSE }, { { 28.8, 80, 2, 300 }, FALSE },
	{ { 10, 33, 2, 300 }, FALSE },    { { 10, 94, 2, 300 }, FALSE },
	{ { 10, 80, .6, 300 }, FALSE },   { { 10, 80, 151, 300 }, FALSE },
	{ { 10, 80, 2, .3 }, FALSE },     { { 10, 80, 2, 761 }, FALSE },
	{ { NAN, 80, 2, 300 }, FALSE },
};

START_TEST(the_standard_holds_within_its_range)
	{
		ck_assert_int_eq(!isnan(iso9223_steel(&places[_i].w)), places[_i].inside);
		ck_assert_int_eq(!isnan(iso9223_zinc(&places[_i].w)), places[_i].inside);
	}
END_TEST

static gint64
ymd(int year, int month, int day)
{
	return day_from_ymd(year, month, day);
}

START_TEST(months_add_up)
	{
		struct monthly m = { { 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12 } };

		ck_assert_double_eq_tol(monthly_sum(&m, ymd(2025, 1, 31), ymd(2025, 2, 2)), 1 + 2, 1e-9);
		ck_assert_double_eq_tol(monthly_sum(&m, ymd(2024, 2, 1), ymd(2024, 3, 1)), 29 * 2, 1e-9);
		ck_assert_double_eq_tol(monthly_sum(&m, ymd(2100, 2, 1), ymd(2100, 3, 1)), 28 * 2, 1e-9);
		ck_assert_double_eq_tol(monthly_sum(&m, ymd(1968, 2, 28), ymd(1968, 3, 2)), 2 * 2 + 3, 1e-9);
		ck_assert_double_eq(monthly_sum(&m, ymd(2025, 3, 2), ymd(2025, 3, 2)), 0);
		ck_assert_double_eq(monthly_sum(&m, ymd(2025, 3, 2), ymd(2025, 3, 1)), 0);
		ck_assert_double_eq_tol(monthly_mean(&m, ymd(2025, 6, 30), ymd(2025, 7, 2)), 6.5, 1e-9);
		ck_assert(isnan(monthly_mean(&m, ymd(2025, 3, 2), ymd(2025, 3, 2))));
		ck_assert_int_eq(monthly_reach(&m, ymd(2025, 1, 31), 3, ymd(2025, 12, 31)), ymd(2025, 2, 2));
		ck_assert_int_eq(monthly_reach(&m, ymd(2025, 1, 31), 2.5, ymd(2025, 12, 31)),
				 ymd(2025, 2, 2));
		ck_assert_int_eq(monthly_reach(&m, ymd(2025, 1, 31), 0, ymd(2025, 12, 31)), ymd(2025, 1, 31));
		ck_assert_int_eq(monthly_reach(&m, ymd(2025, 1, 31), 1e9, ymd(2025, 12, 31)), NONE);
	}
END_TEST

START_TEST(the_sine_is_warmest_where_it_says)
	{
		struct monthly m;

		monthly_sine(&m, 12, 8, 7);
		ck_assert_double_eq_tol(m.in[6], 20, 1e-12);
		ck_assert_double_eq_tol(m.in[0], 4, 1e-12);
		ck_assert_double_eq_tol(m.in[3], 12, 1e-12);
	}
END_TEST

static struct wear_span
any_span(GRand *r)
{
	struct wear_span s = { .stand = (enum stand)g_rand_int_range(r, 0, STAND_COUNT),
			       .water = (enum water)g_rand_int_range(r, 0, WATER_COUNT + 1),
			       .psu = NAN,
			       .celsius = g_rand_double_range(r, -2, 30),
			       .swing = g_rand_int_range(r, 0, 8),
			       .air = AIR_COUNT };

	s.film = g_rand_boolean(r);
	s.rinsed = g_rand_boolean(r);
	s.splash = g_rand_boolean(r);
	s.open = g_rand_boolean(r);
	if (s.water < WATER_COUNT && g_rand_boolean(r))
		s.psu = g_rand_double_range(r, 0, 42);
	return s;
}

START_TEST(saltier_is_never_slower)
	{
		GRand *r = seeded("saltier is never slower");

		for (int k = 0; k < 3000; k++) {
			struct wear_span fresher = any_span(r), saltier = fresher;
			enum mechanism m = (enum mechanism)g_rand_int_range(r, 0, MECH_COUNT);

			if (fresher.water >= WATER_SALT)
				continue;
			saltier.water++;
			saltier.psu += g_rand_double_range(r, 0, 3);
			ck_assert_double_ge(wear_rate(&table, m, &saltier), wear_rate(&table, m, &fresher));
			fresher.film =
				FALSE; /* and salt left on is never slower than the same place without */
			fresher.water = saltier.water = WATER_COUNT;
			saltier.film = TRUE;
			ck_assert_double_ge(wear_rate(&table, m, &saltier), wear_rate(&table, m, &fresher));
		}
		g_rand_free(r);
	}
END_TEST

START_TEST(warmer_corrodes_and_hardens_faster)
	{
		GRand *r = seeded("warmer corrodes and hardens faster");

		for (int k = 0; k < 3000; k++) {
			struct wear_span cooler = any_span(r), warmer = cooler;

			warmer.celsius += g_rand_double_range(r, 0, 5);
			ck_assert_double_ge(wear_rate(&table, MECH_CORROSION, &warmer),
					    wear_rate(&table, MECH_CORROSION, &cooler));
			ck_assert_double_ge(wear_rate(&table, MECH_RUBBER, &warmer),
					    wear_rate(&table, MECH_RUBBER, &cooler));
			ck_assert_double_le(wear_rate(&table, MECH_GALVANIC, &warmer),
					    wear_rate(&table, MECH_GALVANIC, &cooler));
			warmer.celsius = cooler.celsius;
			warmer.swing = cooler.swing + 1;
			ck_assert_double_ge(wear_rate(&table, MECH_RUBBER, &warmer),
					    wear_rate(&table, MECH_RUBBER, &cooler));
		}
		g_rand_free(r);
	}
END_TEST

START_TEST(splitting_a_span_changes_nothing)
	{
		GRand *r = seeded("splitting a span changes nothing");
		struct monthly celsius, rate;

		monthly_sine(&celsius, 12, 8, 7);
		for (int k = 0; k < 1000; k++) {
			struct wear_span s = any_span(r);
			gint64 from = g_rand_int_range(r, -20000, 40000),
			       to = from + g_rand_int_range(r, 1, 5000);
			gint64 cut = g_rand_int_range(r, (int)from, (int)to + 1);
			double whole, day_by_day = 0;

			wear_monthly(&table, (enum mechanism)g_rand_int_range(r, 0, MECH_COUNT), &s, &celsius,
				     &rate);
			whole = monthly_sum(&rate, from, to);
			ck_assert_double_eq_tol(monthly_sum(&rate, from, cut) + monthly_sum(&rate, cut, to),
						whole, 1e-8);
			for (gint64 day = from; day < to; day++) {
				int year, month, mday;

				day_to_ymd(day, &year, &month, &mday);
				day_by_day += rate.in[month - 1];
			}
			ck_assert_double_eq_tol(day_by_day, whole, 1e-7);
			if (whole > 0) {
				gint64 reached = monthly_reach(&rate, from, whole, to);

				ck_assert_double_ge(monthly_sum(&rate, from, reached), whole - 1e-5);
				ck_assert(monthly_sum(&rate, from, reached - 1) < whole - 1e-7);
			}
		}
		g_rand_free(r);
	}
END_TEST

/* What is shipped for owners to change is what the program has by itself. */
START_TEST(the_shipped_table_is_that_of_the_program)
{
	const char *top = g_getenv("top_srcdir");
	g_autofree char *path = g_build_filename(top ? top : ".", "share/catalogue/rates.csv", NULL);
	g_autofree char *text = NULL;
	g_auto(GStrv) lines = NULL;

	ck_assert_msg(g_file_get_contents(path, &text, NULL, NULL), "%s", path);
	lines = g_strsplit(text, "\n", -1);
	for (int i = 0; i < n_wear_constants; i++) {
		const struct wear_constant *c = &wear_constants[i];
		g_auto(GStrv) cells = lines[i + 1] ? g_strsplit(lines[i + 1], ",", 5) : NULL;

		ck_assert_msg(cells && g_strv_length(cells) == 5 && !strcmp(cells[0], c->key), "%s: line %d", c->key, i + 2);
		ck_assert_double_eq(g_ascii_strtod(cells[1], NULL), c->value);
		ck_assert_str_eq(cells[2], c->unit);
		ck_assert_str_eq(cells[3], c->standing);
	}
	ck_assert_str_eq(lines[n_wear_constants + 1], "");
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Wear goes by water, warmth, air and sun");
	TCase *tc = tcase_create("published"), *properties = tcase_create("properties");
	int failed;

	published_read(&exposure, "08_exposure.csv");
	suite_add_tcase(s, tc);
	suite_add_tcase(s, properties);
	tcase_add_checked_fixture(tc, set_up, NULL);
	tcase_add_checked_fixture(properties, set_up, NULL);
	tcase_add_loop_test(tc, exposure_is_as_published, 0, exposure.n);
	tcase_add_loop_test(tc, anodes_work_as_the_water_conducts, 0, G_N_ELEMENTS(anodes));
	tcase_add_loop_test(tc, each_span_wears_as_it_is, 0, G_N_ELEMENTS(spans));
	tcase_add_test(tc, rates_are_cut_where_they_say_little);
	tcase_add_loop_test(tc, every_constant_has_a_source_and_can_be_changed, 0, n_wear_constants);
	tcase_add_test(tc, the_shipped_table_is_that_of_the_program);
	tcase_add_loop_test(tc, the_standard_holds_within_its_range, 0, G_N_ELEMENTS(places));
	tcase_add_test(properties, months_add_up);
	tcase_add_test(properties, the_sine_is_warmest_where_it_says);
	tcase_add_test(properties, saltier_is_never_slower);
	tcase_add_test(properties, warmer_corrodes_and_hardens_faster);
	tcase_add_test(properties, splitting_a_span_changes_nothing);
	failed = run_all(s);
	published_clear(&exposure);
	return failed;
}
