#include "logbook/measure.h"

#include "open.h"

#include "logbook/due.h"

#include <math.h>

static void
setup_empty(void)
{
	setup();
	book = book_create(path, &who, NULL);
	ck_assert_ptr_nonnull(book);
}

static const struct condition_kind *
kind_of(const char *what)
{
	return readings_find(book_readings(book, NULL), what);
}

static const struct {
	const char *what, *text;
	double value; /* NAN: refused */
} typed[] = {
	{ "anode-left", "60 %", 60 },
	{ "anode-left", "60", 60 },
	{ "anode-left", "60 percent", 60 },
	{ "anode-left", "60 mm", NAN },
	{ "anode-left", "", NAN },
	{ "anode-left", "%", NAN },
	{ "steering-play", "3/64 in", 1.190625 },
	{ "steering-play", "1/8\"", 3.175 },
	{ "steering-play", "3 mm", 3 },
	{ "steering-play", "3", NAN },
	{ "steering-play", "3 V", NAN },
	{ "trim-creep", "2 in/h", 50.8 },
	{ "trim-creep", "2 in an hour", 50.8 },
	{ "trim-creep", "2 in", NAN },
	{ "rest-voltage", "12.65 V", 12.65 },
	{ "rest-voltage", "12,65V", 12.65 },
	{ "rest-voltage", "12650 mv", 12.65 },
	{ "rest-voltage", "12.65", 12.65 },
	{ "rest-voltage", "12.65 A", NAN },
	{ "half-cell-steel", "-950 mV", -950 },
	{ "half-cell-steel", "\u2212950 mV", -950 },
	{ "half-cell-steel", "-0.95 V", -950 },
	{ "half-cell-steel", "-950", NAN },
	{ "leakage-current", "0.02 A", 20 },
	{ "leakage-current", "5", NAN },
	{ "bonding-resistance", "0.4 \u03a9", .4 },
	{ "bonding-resistance", "400 mohm", .4 },
	{ "fuel-hose-age", "9 years", 9 },
	{ "gravity-spread", ".03", .03 },
	{ "bearing-roughness", "2 grade", 2 },
	{ "gland-drops", "3 drops/min", 3 },
	{ "coolant-ph", "8.5 pH", 8.5 },
	{ "riser-temperature-difference", "36 F", 20 },
	{ "riser-temperature-difference", "20", NAN },
	{ "coolant-freezing", "-40 F", -40 },
	{ "coolant-freezing", "-37 \u00b0C", -37 },
	{ "coolant-freezing", "-37", NAN },
	{ "oil-pressure", "100 psi", 689.4757293168361 }, /* NIST SP 811: 6.894757293168361 kPa */
	{ "oil-pressure", "45", NAN },
	{ "bilge-rate", "2 L", 2 },
	{ "plugs-out", "7", 7 },
	{ "full-throttle", "4400 rpm", 4400 },
	{ "compression-spread", "150 148 120 151 psi", 100. * 31 / 151 },
	{ "compression-spread", "10,2 10,1 9,9 bar", 100 * (10.2 - 9.9) / 10.2 },
	{ "compression-spread", "150 120", 20 },
	{ "compression-spread", "12 %", 12 },
	{ "compression-spread", "150 psi", NAN },
	{ "compression-spread", "150 148 volts", NAN },
	{ "compression-spread", "0 0 psi", NAN },
};

START_TEST(a_value_is_read_in_the_units_of_the_trade)
{
	g_autoptr(GError) err = NULL;
	double value = 77;
	gboolean ok = measure_parse(kind_of(typed[_i].what), typed[_i].text, &value, &err);

	ck_assert_msg(ok == !isnan(typed[_i].value), "%s %s: %s", typed[_i].what, typed[_i].text, err ? err->message : "");
	if (ok)
		ck_assert_double_eq_tol(value, typed[_i].value, 1e-9);
	else
		ck_assert_double_eq(value, 77);
}
END_TEST

static const struct {
	const char *typed, *what; /* NULL: refused */
} names[] = {
	{ "anode-left", "anode-left" }, { "anode", "anode-left" }, { "Compression", "compression-spread" },
	{ "half-cell-bronze", "half-cell-bronze" }, { "half-cell", NULL }, { "nothing", NULL }, { "", NULL },
};

START_TEST(a_kind_is_found_by_part_of_its_name)
{
	g_autoptr(GError) err = NULL;
	const struct condition_kind *kind = measure_kind(book, names[_i].typed, &err);

	ck_assert_int_eq(kind != NULL, names[_i].what != NULL);
	ck_assert_int_eq(err == NULL, kind != NULL);
	if (kind)
		ck_assert_str_eq(kind->what, names[_i].what);
}
END_TEST

static struct bound
own(const char *what, double watch_below, double stop_below, double watch_above, double stop_above)
{
	struct bound o = { .fitting = NONE, .what = (char *)(guintptr)what, .watch_below = watch_below,
			   .watch_above = watch_above, .stop_below = stop_below, .stop_above = stop_above,
			   .standing = STANDING_MANUAL, .source = (char *)(guintptr)"manual p. 41" };

	return o;
}

START_TEST(limits_of_the_owner_take_the_place_of_ours_side_by_side)
{
	struct bound o = own("anode-left", NAN, 80, NAN, NAN);
	struct measure_limits l = measure_limits_of(kind_of("anode-left"), &o, NONE);

	ck_assert(l.own);
	ck_assert_int_eq(l.standing, STANDING_MANUAL);
	ck_assert_double_eq(l.bands.stop[0].value, 80);
	ck_assert(!l.bands.stop[0].at);
	ck_assert_msg(isnan(l.bands.watch[0].value), "75 would come after the stop");
	o = own("anode-left", NAN, 40, NAN, NAN);
	l = measure_limits_of(kind_of("anode-left"), &o, NONE);
	ck_assert_double_eq(l.bands.watch[0].value, 75);
	o = own("anode-left", NAN, NAN, 90, NAN);
	l = measure_limits_of(kind_of("anode-left"), &o, NONE);
	ck_assert_int_eq(l.bands.worse, WORSE_BOTH);
	ck_assert_double_eq(l.bands.stop[0].value, 50);
}
END_TEST

static const struct {
	const char *what;
	double watch_below, stop_below, watch_above, stop_above;
	gboolean good;
} bounds[] = {
	{ "anode-left", 70, 60, NAN, NAN, TRUE },  { "anode-left", 60, 70, NAN, NAN, FALSE },
	{ "anode-left", 40, NAN, NAN, NAN, FALSE }, { "anode-left", NAN, NAN, NAN, NAN, FALSE },
	{ "steering-play", NAN, NAN, 2, 4, TRUE }, { "steering-play", NAN, NAN, 5, 4, FALSE },
	{ "charging-voltage", 14, NAN, 13.9, NAN, FALSE }, { "anode-lift", 70, 60, NAN, NAN, FALSE },
};

START_TEST(limits_that_contradict_each_other_are_refused)
{
	struct bound o = own(bounds[_i].what, bounds[_i].watch_below, bounds[_i].stop_below, bounds[_i].watch_above,
			     bounds[_i].stop_above);
	g_autoptr(GError) err = NULL;

	ck_assert_int_eq(measure_bound_check(book, &o, &err), bounds[_i].good);
	ck_assert_int_eq(err == NULL, bounds[_i].good);
}
END_TEST

/* Which places stop the bearing's renewal of the demo's boat: readings as rows, and what the due list says. */
#define BEARING "drive/transom/gimbal-bearing"
static const struct {
	const char *readings;
	enum opportunity when;
	const char *due;
} stories[] = {
	{ "", OPP_ON_CONDITION, NULL },
	{ "2026-11-01,bearing-roughness,2,\n", OPP_NOW, "2026-11-01" },
	{ "2026-11-01,bearing-roughness,2," BEARING "\n", OPP_NOW, "2026-11-01" },
	{ "2026-11-01,bearing-roughness,1," BEARING "\n", OPP_ON_CONDITION, NULL },
	{ "2026-11-01,bearing-roughness,2," BEARING "\n2026-11-02,bearing-roughness,3," BEARING "\n", OPP_NOW, "2026-11-02" },
	{ "2026-11-01,bearing-roughness,2,\n2026-11-02,bearing-roughness,0," BEARING "\n", OPP_ON_CONDITION, NULL },
	{ "2026-11-01,bearing-roughness,2," BEARING "\n2026-11-02,bearing-roughness,0,\n", OPP_ON_CONDITION, NULL },
	{ "2026-11-02,bearing-roughness,0," BEARING "\n2026-11-01,bearing-roughness,2," BEARING "\n", OPP_ON_CONDITION, NULL },
	/* Not judged: it clears nothing. */
	{ "2026-11-01,bearing-roughness,2," BEARING "\n2026-11-02,bearing-roughness,9," BEARING "\n", OPP_NOW, "2026-11-01" },
	{ "2026-11-01,bearing-roughness,2 mm," BEARING "\n", OPP_ON_CONDITION, NULL },
	/* Beside it in the same assembly; in another one; and the good one of another place, which clears nothing. */
	{ "2026-11-01,bearing-roughness,2,drive/transom/swivel-shaft\n", OPP_NOW, "2026-11-01" },
	{ "2026-11-01,bearing-roughness,2,trailer/hubs\n", OPP_ON_CONDITION, NULL },
	{ "2026-11-01,bearing-roughness,2,drive/transom/swivel-shaft\n2026-11-02,bearing-roughness,0,drive/transom\n",
	  OPP_NOW, "2026-11-01" },
};

START_TEST(the_latest_reading_of_each_place_decides)
{
	g_autofree char *text = g_strconcat("date,what,as-read,fitting\n", stories[_i].readings, NULL);
	struct due_ask ask = { 0, NONE };
	struct due_list *l = due_list_new();
	const struct due_line *d = NULL;
	char day[DAY_TEXT];
	g_autoptr(GError) err = NULL;

	open_demo();
	ask.at = who.today;
	if (*stories[_i].readings)
		import_text(RECORD_MEASUREMENT, text);
	ck_assert_msg(book_due(book, &boat, &ask, l, &err), "%s", err ? err->message : "?");
	for (int i = 0; i < due_count(l); i++)
		if (!strcmp(due_at(l, i)->name, "gimbal-bearing.renew"))
			d = due_at(l, i);
	ck_assert_ptr_nonnull(d);
	ck_assert_int_eq(d->out.when, stories[_i].when);
	ck_assert_str_eq(day_iso(d->out.due, day), stories[_i].due ? stories[_i].due : "");
	due_list_free(l);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("Measured values are kept as read, judged, and ask for their tasks");
	TCase *tc = tcase_create("typed");

	tcase_add_checked_fixture(tc, setup_empty, teardown);
	tcase_add_loop_test(tc, a_value_is_read_in_the_units_of_the_trade, 0, G_N_ELEMENTS(typed));
	tcase_add_loop_test(tc, a_kind_is_found_by_part_of_its_name, 0, G_N_ELEMENTS(names));
	tcase_add_test(tc, limits_of_the_owner_take_the_place_of_ours_side_by_side);
	tcase_add_loop_test(tc, limits_that_contradict_each_other_are_refused, 0, G_N_ELEMENTS(bounds));
	suite_add_tcase(suite, tc);
	tc = tcase_create("due");
	tcase_add_checked_fixture(tc, setup, teardown);
	tcase_add_loop_test(tc, the_latest_reading_of_each_place_decides, 0, G_N_ELEMENTS(stories));
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
