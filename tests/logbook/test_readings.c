#include "logbook/readings.h"

#include "open.h"

#include "base/err.h"
#include "logbook/due.h"
#include "logbook/measure.h"

#include <math.h>

#define NOT_KNOWN NAN

static struct readings *shipped;

static void
load(void)
{
	g_autoptr(GError) err = NULL;
	g_autofree char *catalogues = catalogue_folder();

	shipped = readings_read(catalogues, &err);
	ck_assert_msg(shipped != NULL, "%s", err ? err->message : "?");
}

static void
unload(void)
{
	readings_free(shipped);
}

static const struct condition_kind *
kind_of(const char *what)
{
	return readings_find(shipped, what);
}

/* Bounds as they are printed or said in practice; each row's source stands in the file. */
static const struct {
	const char *what;
	double value;
	const char *unit;
	double psu;
	enum verdict verdict;
} readings[] = {
	{ "anode-left", 100, "%", NOT_KNOWN, VERDICT_GOOD },
	{ "anode-left", 75.5, "%", NOT_KNOWN, VERDICT_GOOD },
	{ "anode-left", 75, "%", NOT_KNOWN, VERDICT_WATCH },
	{ "anode-left", 51, "%", NOT_KNOWN, VERDICT_WATCH },
	{ "anode-left", 50, "%", NOT_KNOWN, VERDICT_STOP }, /* renew at half */
	{ "anode-left", 0, "%", NOT_KNOWN, VERDICT_STOP },
	{ "bearing-roughness", 0, "grade", NOT_KNOWN, VERDICT_GOOD },
	{ "bearing-roughness", 1, "grade", NOT_KNOWN, VERDICT_WATCH },
	{ "bearing-roughness", 2, "grade", NOT_KNOWN, VERDICT_STOP },
	{ "bearing-roughness", 3, "grade", NOT_KNOWN, VERDICT_STOP },
	{ "hub-roughness", 1, "grade", NOT_KNOWN, VERDICT_WATCH },
	{ "bellows-fold", 2, "grade", NOT_KNOWN, VERDICT_STOP },
	{ "gear-oil-water", 0, "%", NOT_KNOWN, VERDICT_GOOD },
	{ "gear-oil-water", .06, "%", NOT_KNOWN, VERDICT_GOOD }, /* stays dissolved */
	{ "gear-oil-water", .1, "%", NOT_KNOWN, VERDICT_WATCH },
	{ "gear-oil-water", .2, "%", NOT_KNOWN, VERDICT_WATCH },
	{ "gear-oil-water", .5, "%", NOT_KNOWN, VERDICT_STOP },
	{ "compression-spread", 10, "%", NOT_KNOWN, VERDICT_GOOD },
	{ "compression-spread", 11, "%", NOT_KNOWN, VERDICT_WATCH },
	{ "compression-spread", 25, "%", NOT_KNOWN, VERDICT_WATCH },
	{ "compression-spread", 26, "%", NOT_KNOWN, VERDICT_STOP },
	{ "steering-play", 1.5875, "mm", NOT_KNOWN, VERDICT_GOOD }, /* 1/16 in */
	{ "steering-play", 3.175, "mm", NOT_KNOWN, VERDICT_WATCH },
	{ "steering-play", 3.1749999999999998, "mm", NOT_KNOWN, VERDICT_WATCH },
	{ "steering-play", 6.35, "mm", NOT_KNOWN, VERDICT_WATCH },
	{ "steering-play", 3. / 8, "in", NOT_KNOWN, VERDICT_STOP },
	{ "belt-deflection", 12.7, "mm", NOT_KNOWN, VERDICT_GOOD },
	{ "belt-deflection", 15.875, "mm", NOT_KNOWN, VERDICT_WATCH },
	{ "belt-deflection", 19.049999999999997, "mm", NOT_KNOWN, VERDICT_WATCH }, /* 3/4 in */
	{ "belt-deflection", .75, "in", NOT_KNOWN, VERDICT_WATCH },
	{ "belt-deflection", 2, "cm", NOT_KNOWN, VERDICT_STOP },
	{ "rest-voltage", 12.65, "V", NOT_KNOWN, VERDICT_GOOD },
	{ "rest-voltage", 12.6, "V", NOT_KNOWN, VERDICT_GOOD },
	{ "rest-voltage", 12.5, "V", NOT_KNOWN, VERDICT_WATCH },
	{ "rest-voltage", 12300, "mV", NOT_KNOWN, VERDICT_WATCH },
	{ "rest-voltage", 12.2, "V", NOT_KNOWN, VERDICT_STOP },
	{ "charging-voltage", 14.2, "V", NOT_KNOWN, VERDICT_GOOD },
	{ "charging-voltage", 13.5, "V", NOT_KNOWN, VERDICT_WATCH },
	{ "charging-voltage", 13.1, "V", NOT_KNOWN, VERDICT_STOP },
	{ "charging-voltage", 14.7, "V", NOT_KNOWN, VERDICT_WATCH },
	{ "charging-voltage", 14.9, "V", NOT_KNOWN, VERDICT_STOP },
	{ "coolant-ph", 12, "pH", NOT_KNOWN, VERDICT_WATCH }, /* nothing to stop at above */
	{ "coolant-ph", 6.9, "pH", NOT_KNOWN, VERDICT_STOP },
	{ "leakage-current", .031, "A", NOT_KNOWN, VERDICT_STOP },
	{ "jet-clearance", 1, "mm", NOT_KNOWN, VERDICT_WATCH },
	{ "fuel-hose-age", 11, "a", NOT_KNOWN, VERDICT_STOP },
	{ "half-cell-aluminium-drive", -950, "mV", 35, VERDICT_GOOD },
	{ "half-cell-aluminium-drive", -900, "mV", 35, VERDICT_GOOD },
	{ "half-cell-aluminium-drive", -870, "mV", 35, VERDICT_WATCH },
	{ "half-cell-aluminium-drive", -840, "mV", 35, VERDICT_STOP },
	{ "half-cell-aluminium-drive", -1.075, "V", 35, VERDICT_WATCH },
	{ "half-cell-aluminium-drive", -1110, "mV", 30, VERDICT_STOP }, /* too much hurts aluminium too */
	{ "half-cell-steel", -900, "mV", 35, VERDICT_GOOD },
	{ "half-cell-steel", -700, "mV", 35, VERDICT_STOP },
	{ "half-cell-bronze-gear", -760, "mV", 35, VERDICT_GOOD },
	{ "half-cell-bronze", -1200, "mV", 35, VERDICT_GOOD },
	{ "half-cell-bronze", -450, "mV", 35, VERDICT_STOP },
	{ "half-cell-stainless", -600, "mV", 35, VERDICT_WATCH },
	{ "half-cell-wood", -575, "mV", 35, VERDICT_GOOD },
	{ "half-cell-wood", -700, "mV", 35, VERDICT_STOP },
	{ "coolant-freezing", -34, "F", NOT_KNOWN, VERDICT_GOOD },
	{ "coolant-freezing", -20, "F", NOT_KNOWN, VERDICT_WATCH },
	{ "coolant-freezing", 0, "F", NOT_KNOWN, VERDICT_STOP },
	{ "riser-temperature-difference", 20, "F", NOT_KNOWN, VERDICT_GOOD },
	{ "riser-temperature-difference", 12, "C", NOT_KNOWN, VERDICT_WATCH },
	{ "riser-temperature-difference", 41, "F", NOT_KNOWN, VERDICT_STOP },
	{ "engine-temperature-raw", 150, "F", NOT_KNOWN, VERDICT_GOOD },
	{ "engine-temperature-raw", 180, "F", NOT_KNOWN, VERDICT_WATCH },
	{ "engine-temperature-raw", 185, "F", NOT_KNOWN, VERDICT_STOP },
	{ "hub-temperature", 51, "F", NOT_KNOWN, VERDICT_STOP }, { "bilge-rate", 4, "qt", NOT_KNOWN, VERDICT_WATCH },
	{ "bilge-rate", 5, "qt", NOT_KNOWN, VERDICT_STOP },
	{ "strut-bearing-play", 1. / 32, "in", NOT_KNOWN, VERDICT_WATCH },
	{ "strut-bearing-play", 3. / 64, "in", NOT_KNOWN, VERDICT_STOP },
	{ "extinguisher-age", 12, "a", NOT_KNOWN, VERDICT_WATCH },  { "extinguisher-age", 13, "a", NOT_KNOWN, VERDICT_STOP },
	{ "gland-drops-at-rest", 1, "/min", NOT_KNOWN, VERDICT_WATCH }, { "vanes-missing", 1, "", NOT_KNOWN, VERDICT_STOP },
	{ "water-drained", 0, "mL", NOT_KNOWN, VERDICT_STOP },	    { "alignment-bar", 2, "grade", NOT_KNOWN, VERDICT_STOP },
};

START_TEST(each_reading_has_its_verdict)
	{
		const struct condition_kind *kind = kind_of(readings[_i].what);
		struct condition_in in = { readings[_i].value, readings[_i].unit, readings[_i].psu };
		struct condition_out out;

		ck_assert_msg(kind != NULL, "%s: no such kind", readings[_i].what);
		condition_judge(kind, NULL, &in, &out);
		ck_assert_msg(out.verdict == readings[_i].verdict, "%s %g %s: verdict %d, not %d (%s)",
			      kind->what, in.value, in.unit, (int)out.verdict, (int)readings[_i].verdict,
			      kind->source);
		ck_assert_int_eq(out.unjudged, UNJUDGED_NOT);
		ck_assert_int_eq(isnan(out.passed.value) != 0, out.verdict == VERDICT_GOOD);
	}
END_TEST

static const struct {
	const char *what;
	double value;
	const char *unit;
	double psu;
	enum unjudged unjudged;
} refused[] = {
	{ "half-cell-aluminium-drive", -950, "mV", .2,
	  UNJUDGED_WATER }, /* in fresh water it reads little whatever is right */
	{ "half-cell-aluminium-drive", -950, "mV", 18, UNJUDGED_WATER },
	{ "half-cell-aluminium-drive", -950, "mV", NOT_KNOWN, UNJUDGED_WATER },
	{ "half-cell-aluminium-drive", 950, "mV", 35, UNJUDGED_SIGN },
	{ "half-cell-aluminium-drive", .95, "V", 35, UNJUDGED_SIGN },
	{ "half-cell-steel", -1701, "mV", 35, UNJUDGED_RANGE },
	{ "half-cell-steel", 1701, "mV", 35, UNJUDGED_RANGE },
	{ "half-cell-steel", -.9, "mm", 35, UNJUDGED_UNIT },
	{ "anode-left", 101, "%", NOT_KNOWN, UNJUDGED_RANGE },
	{ "anode-left", -1, "%", NOT_KNOWN, UNJUDGED_RANGE },
	{ "anode-left", 3, "mm", NOT_KNOWN, UNJUDGED_UNIT },
	{ "anode-left", NAN, "%", NOT_KNOWN, UNJUDGED_UNIT },
	{ "bearing-roughness", 4, "grade", NOT_KNOWN, UNJUDGED_RANGE },
	{ "rest-voltage", 25.2, "V", NOT_KNOWN, UNJUDGED_RANGE }, /* two batteries in a row */
	{ "oil-pressure", 45, "psi", NOT_KNOWN, UNJUDGED_LIMITS }, { "plugs-out", 7, "", NOT_KNOWN, UNJUDGED_LIMITS },
	{ "coolant-freezing", 20, "K", NOT_KNOWN, UNJUDGED_UNIT },
};

START_TEST(some_readings_have_none)
	{
		struct condition_in in = { refused[_i].value, refused[_i].unit, refused[_i].psu };
		struct condition_out out;

		condition_judge(kind_of(refused[_i].what), NULL, &in, &out);
		ck_assert_int_eq(out.verdict, VERDICT_NONE);
		ck_assert_int_eq(out.unjudged, refused[_i].unjudged);
		ck_assert(isnan(out.passed.value));
	}
END_TEST

START_TEST(every_kind_is_whole)
	{
		for (guint i = 0; i < readings_count(shipped); i++) {
			const struct condition_kind *k = readings_nth(shipped, i);
			const struct edge *watch = k->bands.watch, *stop = k->bands.stop;
			gboolean none = isnan(watch[0].value) && isnan(watch[1].value) && isnan(stop[0].value)
				     && isnan(stop[1].value);

			ck_assert_ptr_eq(readings_find(shipped, k->what), k);
			ck_assert(!strcmp(k->standing, "published") || !strcmp(k->standing, "practice")
				  || !strcmp(k->standing, "memory"));
			ck_assert(*k->how && *k->source && k->least < k->most);
			/* One watches before one stops. */
			ck_assert_msg(!(watch[0].value < stop[0].value) && !(watch[1].value > stop[1].value), "%s", k->what);
			ck_assert_msg(!(watch[0].value > watch[1].value), "%s", k->what);
			ck_assert(k->bands.worse != WORSE_MORE || (isnan(watch[0].value) && isnan(stop[0].value)));
			ck_assert(k->bands.worse != WORSE_LESS || (isnan(watch[1].value) && isnan(stop[1].value)));
			ck_assert_msg(none == (strstr(k->source, "no limit can be shipped") != NULL), "%s", k->what);
			/* Pressure is the manual's. */
			ck_assert_msg(none || strcmp(k->unit, "kPa"), "%s", k->what);
		}
	}
END_TEST

START_TEST(further_out_is_never_better)
	{
		GRand *r = g_rand_new_with_seed(20261125);

		for (int k = 0; k < 5000; k++) {
			const struct condition_kind *kind =
				readings_nth(shipped, (guint)g_rand_int_range(r, 0, (gint32)readings_count(shipped)));
			double low = MAX(kind->least, -1e4), high = MIN(kind->most, 1e4);
			double value = g_rand_double_range(r, low, high),
			       step = g_rand_double_range(r, 0, (high - low) / 10);
			struct edge passed;
			enum verdict here = bands_verdict(&kind->bands, value, &passed);

			if (kind->bands.worse == WORSE_MORE || (here != VERDICT_GOOD && value > passed.value))
				ck_assert_int_ge(bands_verdict(&kind->bands, value + step, &passed), here);
			else if (kind->bands.worse == WORSE_LESS || here != VERDICT_GOOD)
				ck_assert_int_ge(bands_verdict(&kind->bands, value - step, &passed), here);
		}
		g_rand_free(r);
	}
END_TEST

static void
spoil(const char *from, const char *to)
{
	g_autofree char *file = g_build_filename(data_folder(), "catalogue", "readings.csv", NULL);
	g_autofree char *catalogue = g_build_filename(folder, "catalogue", NULL);
	g_autofree char *copy = g_build_filename(catalogue, "readings.csv", NULL);
	g_autofree char *text = NULL;
	g_autoptr(GString) changed = NULL;

	ck_assert(g_file_get_contents(file, &text, NULL, NULL));
	changed = g_string_new(text);
	ck_assert_int_eq(g_string_replace(changed, from, to, 1), 1);
	ck_assert_int_eq(g_mkdir(catalogue, 0700), 0);
	ck_assert(g_file_set_contents(copy, changed->str, -1, NULL));
}

static void
unspoil(void)
{
	g_autofree char *catalogue = g_build_filename(folder, "catalogue", NULL);
	g_autofree char *copy = g_build_filename(catalogue, "readings.csv", NULL);

	g_remove(copy);
	g_rmdir(catalogue);
}

static const struct {
	const char *from, *to, *said;
} wrong[] = {
	{ ",more,", ",worse,", "readings.csv:2: worse: more, less or both is wanted" },
	{ ",0,3,,practice,", ",nought,3,,practice,", "least: \"nought\" is no number" },
	{ ",,1,yes,,2,yes,", ",,3,yes,,2,yes,", "contradict each other" },
	{ ",,1,yes,,2,yes,", ",1,,yes,,2,yes,", "the side that is not worse" },
	{ ",,1,yes,,2,yes,", ",,1,perhaps,,2,yes,", "watch-at: yes or no is wanted" },
	{ ",practice,", ",hearsay,", "standing" },
	{ "bearing-play,", "bearing-roughness,", "readings.csv:3: bearing-roughness stands there twice" },
	{ "name,unit,", "named,unit,", "readings.csv:1: the column \"name\" is missing" },
	{ "bearing-play,grade,", ",grade,", "readings.csv:3: name: it can't be empty" },
};

START_TEST(a_wrong_file_is_named_with_its_line)
	{
		g_autofree char *catalogue = g_build_filename(folder, "catalogue", NULL);
		g_autoptr(GError) err = NULL;

		spoil(wrong[_i].from, wrong[_i].to);
		ck_assert_ptr_null(readings_read(catalogue, &err));
		ck_assert_msg(strstr(err->message, wrong[_i].said) != NULL, "%s", err->message);
		unspoil();
	}
END_TEST

START_TEST(without_a_folder_it_says_so)
	{
		g_autoptr(GError) err = NULL;

		ck_assert_ptr_null(readings_read(NULL, &err));
		ck_assert_int_eq(err->code, ERR_SYSTEM);
		ck_assert_ptr_nonnull(strstr(err->message, "SPLITPIN_DATA"));
	}
END_TEST

static gboolean
due_is_worked_out(GError **err)
{
	struct due_ask ask = { who.today, NONE };
	struct due_list *l = due_list_new();
	gboolean ok = book_due(book, &boat, &ask, l, err);

	due_list_free(l);
	return ok;
}

static void
drop_all_readings(void)
{
	g_autoptr(GArray) all = book_records(book, RECORD_MEASUREMENT, boat.id, NULL);
	const struct measurement *m = (const void *)all->data;

	ck_assert_int_gt(all->len, 0);
	for (guint i = 0; i < all->len; i++)
		ck_assert(book_drop_measurement(book, m[i].id, NULL));
}

START_TEST(the_due_list_needs_the_file_only_for_readings_that_limits_go_by)
	{
		g_autoptr(GError) err = NULL;

		open_demo();
		spoil(",more,", ",worse,");
		who.data = folder;
		reopen(BOOK_WRITE);
		ck_assert(!due_is_worked_out(&err));
		ck_assert_msg(g_str_has_prefix(err->message, "readings.csv:2: "), "%s", err->message);
		g_clear_error(&err);
		drop_all_readings();
		ck_assert_msg(due_is_worked_out(&err), "%s", err ? err->message : "?");
		import_text(RECORD_MEASUREMENT, "date,what,as-read,fitting\n2026-11-01,steering-effort,1,\n");
		ck_assert_msg(due_is_worked_out(&err), "%s", err ? err->message : "?");
		unspoil();
		ck_assert_ptr_null(measure_kind(book, "anode-left", &err));
		who.data = data_folder();
		reopen(BOOK_WRITE);
		ck_assert_ptr_nonnull(measure_kind(book, "anode-left", NULL));
	}
END_TEST

int
main(void)
{
	Suite *s = suite_create("The kinds of readings are read from their file, and judged by published bounds");
	TCase *tc = tcase_create("shipped");

	suite_add_tcase(s, tc);
	tcase_add_checked_fixture(tc, load, unload);
	tcase_add_loop_test(tc, each_reading_has_its_verdict, 0, G_N_ELEMENTS(readings));
	tcase_add_loop_test(tc, some_readings_have_none, 0, G_N_ELEMENTS(refused));
	tcase_add_test(tc, every_kind_is_whole);
	tcase_add_test(tc, further_out_is_never_better);
	tc = tcase_create("wrong");
	suite_add_tcase(s, tc);
	tcase_add_checked_fixture(tc, setup, teardown);
	tcase_add_loop_test(tc, a_wrong_file_is_named_with_its_line, 0, G_N_ELEMENTS(wrong));
	tcase_add_test(tc, without_a_folder_it_says_so);
	tcase_add_test(tc, the_due_list_needs_the_file_only_for_readings_that_limits_go_by);
	return run_suite(s);
}
