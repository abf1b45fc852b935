/* Twins, generators and fuels. */
#include "tests/logbook/small_catalogue.h"

#include "logbook/catalogue_check.h"

#include "base/err.h"
#include "logbook/variant.h"

/* Engines */

static int
count(enum record r)
{
	g_autoptr(GArray) all = book_records(book, r, boat.id, NULL);

	return (int)all->len;
}

/* The name of the engine whose hours count for a fitting; "" for none said; the caller's. */
static char *
engine_of(const char *fitting)
{
	g_autoptr(GArray) engines = book_records(book, RECORD_ENGINE, boat.id, NULL);
	char *name = g_strdup("");
	struct fitting f;

	ck_assert_msg(book_find_fitting(book, boat.id, fitting, &f, NULL), "no fitting %s", fitting);
	ck_assert_str_eq(f.path, fitting);
	for (guint i = 0; i < engines->len; i++) {
		const struct engine *e = &((const struct engine *)(const void *)engines->data)[i];

		if (e->id == f.engine) {
			g_free(name);
			name = g_strdup(e->name);
		}
	}
	record_clear(RECORD_FITTING, &f);
	return name;
}

static void
ck_engine(const char *fitting, const char *engine)
{
	g_autofree char *name = engine_of(fitting);

	ck_assert_str_eq(name, engine);
}

START_TEST(with_one_engine_names_are_as_they_are)
{
	made(NULL, one);
	ck_assert_str_eq(boat.catalogue, "inboard");
	ck_assert_int_eq(boat.edition, 1);
	ck_engine("engine/pump", "");
	ck_engine("hull/plug", "");
	ck_assert(has_task("pump.inspect"));
	ck_assert_int_eq(count(RECORD_FITTING), 5);
	ck_assert_int_eq(count(RECORD_TASK), 3);
	ck_assert_int_eq(count(RECORD_LIMIT), 4);
	ck_assert_int_eq(count(RECORD_SHIPPED), 8);
}
END_TEST

START_TEST(twins_have_an_engine_each_and_one_hull)
{
	struct fitting f;

	made(NULL, twins);
	ck_engine("port/engine/pump", "port");
	ck_engine("starboard/engine/pump", "starboard");
	ck_engine("hull/plug", "");
	ck_assert(has_task("port-pump.inspect") && has_task("starboard-pump.inspect") && !has_task("pump.inspect"));
	ck_assert(has_task("plug.inspect"));
	ck_assert_int_eq(count(RECORD_FITTING), 8);
	ck_assert(book_find_fitting(book, boat.id, "starboard/engine/pump", &f, NULL));
	ck_assert_str_eq(f.title, "Pump, starboard");
	ck_assert_str_eq(f.needs_off, "starboard/engine/cover");
	record_clear(RECORD_FITTING, &f);
}
END_TEST

START_TEST(what_twins_have_each_stands_below_a_word_that_is_no_fitting)
{
	g_autoptr(GArray) all = NULL;
	int sides = 0;

	made(NULL, twins);
	all = book_records(book, RECORD_FITTING, boat.id, NULL);
	for (guint i = 0; i < all->len; i++) {
		const struct fitting *f = &((const struct fitting *)(const void *)all->data)[i];
		g_autofree char *side = fitting_side(f, all);

		ck_assert_msg((side != NULL) == (strstr(f->path, "engine") != NULL), "%s below %s", f->path, side);
		ck_assert(!side || g_str_has_prefix(f->path, side));
		sides += side != NULL;
	}
	ck_assert_int_eq(sides, 6);
}
END_TEST

START_TEST(a_generator_brings_its_tasks_and_takes_no_hours_of_the_drive)
{
	made(NULL, with_generator);
	ck_engine("engine/pump", "main");
	ck_engine("hull/plug", "main");
	ck_engine("generator", "generator");
	ck_assert(has_task("generator.listen") && has_task("pump.inspect"));
}
END_TEST

START_TEST(twins_with_a_generator_mix_no_hours)
{
	made(NULL, twins_and_generator);
	ck_engine("port/engine/pump", "port");
	ck_engine("starboard/engine/pump", "starboard");
	ck_engine("generator", "generator");
	ck_engine("hull/plug", "port");
	ck_assert(!has_task("generator-pump.inspect"));
}
END_TEST

/* Fuels and kinds */

START_TEST(another_fuel_is_kept_with_the_catalogue)
{
	made("petrol", one);
	ck_assert_str_eq(boat.catalogue, "inboard petrol");
	ck_assert(has_task("vapour.sniff"));
}
END_TEST

START_TEST(the_usual_fuel_has_no_vapour)
{
	made("diesel", one);
	ck_assert_str_eq(boat.catalogue, "inboard");
	ck_assert(!has_task("vapour.sniff"));
}
END_TEST

START_TEST(a_fuel_that_there_is_not_is_refused)
{
	g_autoptr(GError) err = NULL;

	ck_assert(!make("steam", one, &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_INPUT));
	ck_assert_ptr_nonnull(strstr(err->message, "diesel or petrol"));
}
END_TEST

START_TEST(a_kind_without_a_catalogue_makes_a_boat_without_tasks)
{
	write_file("", "kinds.csv", "kind,fuel,module,each\njet,petrol,hull,no\n");
	made(NULL, one);
	ck_assert_ptr_null(boat.catalogue);
	ck_assert_int_eq(boat.edition, NONE);
	ck_assert_int_eq(count(RECORD_TASK), 0);
}
END_TEST

START_TEST(a_wrong_row_makes_no_boat_and_is_named)
{
	g_autoptr(GError) err = NULL;

	write_module("hull", "hull,Hull,,yes,no,no,,\nhull/plug,Drain plug,,perhaps,no,no,,\n", "", "");
	ck_assert(!make(NULL, one, &err));
	ck_assert_msg(strstr(err->message, "hull/fittings.csv:3:") != NULL, "%s", err->message);
	ck_assert_int_eq(count(RECORD_BOAT), 0);
}
END_TEST

START_TEST(the_small_catalogue_is_sound)
{
	g_autoptr(GPtrArray) counts = g_ptr_array_new_with_free_func(g_free), problems = g_ptr_array_new_with_free_func(g_free);

	ck_assert_msg(catalogue_check(files, counts, problems), "%s", (const char *)problems->pdata[0]);
	ck_assert_uint_eq(counts->len, 3);
	ck_assert_str_eq(counts->pdata[0], "inboard diesel: 5 fittings, 3 tasks, 4 limits");
}
END_TEST

START_TEST(rates_that_the_owner_changed_stay_when_a_boat_is_added)
{
	g_autoptr(GArray) rates = NULL;

	made(NULL, one);
	import_text(RECORD_RATE, "name,value,standing,source\nraw-water.salt,3,owner,own\n");
	open_plain("Dinghy");
	rates = book_records(book, RECORD_RATE, NONE, NULL);
	ck_assert_uint_eq(rates->len, 1);
	ck_assert_double_eq(((const struct rate *)(const void *)rates->data)->value, 3);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("Catalogues in a logbook");
	TCase *tc = tcase_create("engines and fuels");

	tcase_add_checked_fixture(tc, begin, end);
	tcase_add_test(tc, with_one_engine_names_are_as_they_are);
	tcase_add_test(tc, twins_have_an_engine_each_and_one_hull);
	tcase_add_test(tc, what_twins_have_each_stands_below_a_word_that_is_no_fitting);
	tcase_add_test(tc, a_generator_brings_its_tasks_and_takes_no_hours_of_the_drive);
	tcase_add_test(tc, twins_with_a_generator_mix_no_hours);
	tcase_add_test(tc, another_fuel_is_kept_with_the_catalogue);
	tcase_add_test(tc, the_usual_fuel_has_no_vapour);
	tcase_add_test(tc, a_fuel_that_there_is_not_is_refused);
	tcase_add_test(tc, a_kind_without_a_catalogue_makes_a_boat_without_tasks);
	tcase_add_test(tc, a_wrong_row_makes_no_boat_and_is_named);
	tcase_add_test(tc, the_small_catalogue_is_sound);
	tcase_add_test(tc, rates_that_the_owner_changed_stay_when_a_boat_is_added);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
