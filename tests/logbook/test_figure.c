#include "logbook/figure.h"

#include "open.h"

#include "base/err.h"

#include "logbook/due.h"
#include "logbook/units.h"

#include <math.h>

static const struct {
	const char *path, *what, *text;
	int code; /* enum err_code; -1: kept */
	double value; /* NAN: none */
	const char *unit, *words;
} figures[] = {
	{ "drive/propeller", "torque", "60 ft-lb", -1, 81.349, "N·m", "60 ft-lb (81 N·m)" },
	{ "drive/propeller", "torque", "60-70 ft-lb", -1, NAN, "N·m", "60-70 ft-lb (81-95 N·m)" },
	{ "drive/propeller", "torque", "81 Nm", -1, 81, "N·m", "81 Nm (60 ft-lb)" },
	{ "drive/propeller", "torque", "60", ERR_INPUT, NAN, NULL, NULL },
	{ "drive/propeller", "torque", "60 psi", ERR_INPUT, NAN, NULL, NULL },
	{ "drive/propeller", "torque", "hand tight", ERR_INPUT, NAN, NULL, NULL },
	{ "drive/propeller", "torque", "60 in-lb", ERR_DOUBT, NAN, NULL, NULL },
	{ "drive/propeller", "torqe", "60 ft-lb", ERR_DOUBT, NAN, NULL, NULL },
	{ "engine/mounts", "torque", "480 in-lb", ERR_DOUBT, NAN, NULL, NULL },
	{ "engine/mounts", "torque", "2 ft-lb", ERR_DOUBT, NAN, NULL, NULL },
	{ "engine/mounts", "torque", "4000 ft-lb", ERR_DOUBT, NAN, NULL, NULL },
	{ "engine/mounts", "torque", "120 in-lb", -1, 13.558, "N·m", "120 in-lb (13.6 N·m)" },
	{ "engine/block", "oil-type", "SAE 25W-40", -1, NAN, NULL, "SAE 25W-40" },
	{ "engine/block", "oil-quantity", "5 qt", -1, 4.7318, "L", "5 qt (4.73 L)" },
	{ "engine/block", "oil-quantity", "5", ERR_INPUT, NAN, NULL, NULL },
	{ "engine/block", "pressure", "30-60 psi", -1, NAN, "kPa", "30-60 psi (207-414 kPa)" },
	{ "engine/block", "pressure", "30", ERR_INPUT, NAN, NULL, NULL },
	{ "engine/block", "gap", ".035 in", -1, .889, "mm", ".035 in (0.889 mm)" },
	{ "engine/block", "firing order", "1-8-4-3-6-5-7-2", -1, NAN, NULL, "1-8-4-3-6-5-7-2" },
};

static void
begin(void)
{
	g_autoptr(GError) err = NULL;

	ck_assert_msg(book_make_demo(path, &who, data_folder(), &err), "%s", err ? err->message : "?");
	reopen(BOOK_WRITE);
	ck_assert(book_boat(book, NULL, &boat, &err));
}

static gboolean
keep(const char *where, const char *what, const char *text, const char *source, struct figure *f, GError **err)
{
	struct fitting on;

	ck_assert(book_find_fitting(book, boat.id, where, &on, NULL));
	record_init(RECORD_FIGURE, f);
	f->boat = boat.id;
	f->fitting = on.id;
	f->what = g_strdup(what);
	f->as_read = g_strdup(text);
	f->source = g_strdup(source);
	record_clear(RECORD_FITTING, &on);
	return book_set_figure(book, f, FALSE, err);
}

static guint
kept(void)
{
	g_autoptr(GArray) all = book_records(book, RECORD_FIGURE, boat.id, NULL);

	return all->len;
}

START_TEST(a_figure_is_kept_as_typed_and_refused_or_questioned_else)
{
	g_autoptr(GError) err = NULL;
	g_autofree char *words = NULL;
	struct figure f;
	gboolean ok;

	begin();
	ok = keep(figures[_i].path, figures[_i].what, figures[_i].text, "manual p. 41", &f, &err);
	ck_assert_msg(ok == (figures[_i].code < 0), "%s", err ? err->message : "it was kept");
	if (!ok) {
		ck_assert_msg(g_error_matches(err, ERR_DOMAIN, figures[_i].code), "%s", err->message);
		ck_assert_uint_eq(kept(), 0);
	} else {
		words = figure_words(&f);
		ck_assert_str_eq(words, figures[_i].words);
		ck_assert_str_eq(f.as_read, figures[_i].text);
		ck_assert_int_eq(isnan(f.value), isnan(figures[_i].value));
		ck_assert(isnan(f.value) || fabs(f.value - figures[_i].value) < 1e-3);
		ck_assert_int_eq(f.unit != NULL, figures[_i].unit != NULL);
		ck_assert(!f.unit || !strcmp(f.unit, figures[_i].unit));
	}
	record_clear(RECORD_FIGURE, &f);
}
END_TEST

START_TEST(without_a_source_nothing_is_kept)
{
	g_autoptr(GError) err = NULL;
	struct figure f;

	begin();
	ck_assert(!keep("drive/propeller", "torque", "60 ft-lb", NULL, &f, &err));
	ck_assert_msg(strstr(err->message, "which manual, which page?") != NULL, "%s", err->message);
	ck_assert_uint_eq(kept(), 0);
	record_clear(RECORD_FIGURE, &f);
}
END_TEST

START_TEST(a_newer_figure_takes_the_place_of_the_older_of_its_source_and_can_be_taken_out)
{
	g_autoptr(GError) err = NULL;
	struct fitting on;
	struct figure f;

	begin();
	ck_assert(keep("drive/propeller", "torque", "60 ft-lb", "manual p. 41", &f, NULL));
	record_clear(RECORD_FIGURE, &f);
	ck_assert(keep("drive/propeller", "torque", "70 ft-lb", "Manual  p. 41", &f, NULL));
	record_clear(RECORD_FIGURE, &f);
	ck_assert_uint_eq(kept(), 1);
	ck_assert(keep("drive/propeller", "torque", "60 ft-lb", "other manual p. 7", &f, NULL));
	record_clear(RECORD_FIGURE, &f);
	ck_assert(keep("drive/propeller", "oil-type", "none", "manual p. 42", &f, NULL));
	record_clear(RECORD_FIGURE, &f);
	ck_assert_uint_eq(kept(), 3);
	ck_assert(book_find_fitting(book, boat.id, "drive/propeller", &on, NULL));
	ck_assert(!book_drop_figure(book, &on, "torque", NULL, &err));
	ck_assert_msg(g_error_matches(err, ERR_DOMAIN, ERR_INPUT), "%s", err->message);
	ck_assert_uint_eq(kept(), 3);
	ck_assert(book_drop_figure(book, &on, "torque", "manual p. 41", NULL));
	ck_assert(book_drop_figure(book, &on, "torque", NULL, NULL));
	ck_assert(!book_drop_figure(book, &on, "torque", NULL, NULL));
	ck_assert_uint_eq(kept(), 1);
	record_clear(RECORD_FITTING, &on);
}
END_TEST

/* What two sources say of one figure, and whether they contradict each other. */
static const struct {
	const char *what, *one, *other;
	gboolean differ;
} sources[] = {
	{ "torque", "60 ft-lb", "80 ft-lb", TRUE },
	{ "torque", "60 ft-lb", "81 N·m", FALSE },
	{ "torque", "60-70 ft-lb", "65 ft-lb", FALSE },
	{ "torque", "60-70 ft-lb", "100-110 N·m", TRUE },
	{ "temperature", "160 F", "71 C", FALSE },
	{ "temperature", "-26 F", "-40 C", TRUE },
	{ "oil-quantity", "5 qt", "4.73 L", FALSE },
	{ "oil-quantity", "5 qt", "5 L", TRUE },
	{ "oil-type", "SAE 25W-40", "sae  25w-40", FALSE },
	{ "oil-type", "SAE 25W-40", "SAE 30", TRUE },
};

START_TEST(what_two_sources_say_is_kept_and_differs_beyond_rounding)
{
	struct figure f;

	begin();
	ck_assert(keep("drive/propeller", sources[_i].what, sources[_i].one, "manual p. 41", &f, NULL));
	record_clear(RECORD_FIGURE, &f);
	ck_assert(keep("drive/propeller", sources[_i].what, sources[_i].other, "other manual p. 7", &f, NULL));
	{
		g_autoptr(GArray) all = book_records(book, RECORD_FIGURE, boat.id, NULL);
		const struct figure *other = figure_against(all, &f);

		ck_assert_uint_eq(all->len, 2);
		ck_assert_int_eq(other != NULL, sources[_i].differ);
		ck_assert(!other || !strcmp(other->source, "manual p. 41"));
	}
	record_clear(RECORD_FIGURE, &f);
}
END_TEST

START_TEST(a_due_line_tells_the_figures_of_its_fitting_alone)
{
	struct due_list *l = due_list_new();
	struct due_ask ask = { who.today, NONE };
	struct figure f;
	int n = 0;

	begin();
	ck_assert(keep("engine/mounts", "torque", "60 ft-lb", "manual p. 41", &f, NULL));
	ck_assert(book_due(book, &boat, &ask, l, NULL));
	for (int i = 0; i < due_count(l); i++) {
		const struct due_line *d = due_at(l, i);

		ck_assert_int_eq(d->figures != NULL, d->fitting_id == f.fitting);
		if (d->figures) {
			ck_assert_str_eq(d->figures, "manual p. 41: torque 60 ft-lb (81 N·m)");
			n++;
		}
	}
	ck_assert_int_gt(n, 0);
	record_clear(RECORD_FIGURE, &f);
	due_list_free(l);
}
END_TEST

START_TEST(units_are_chosen_for_a_boat_and_taken_back)
{
	struct book_entry e;

	begin();
	ck_assert_int_eq(book_units(book, boat.id), NONE);
	ck_assert(book_set_units(book, &boat, UNITS_METRIC, NULL));
	ck_assert_int_eq(book_units(book, boat.id), UNITS_METRIC);
	ck_assert(book_undo(book, &e, NULL));
	book_entry_clear(&e);
	ck_assert_int_eq(book_units(book, boat.id), NONE);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Figures of the manual are kept with their unit and page");
	TCase *tc = tcase_create("figures");

	suite_add_tcase(s, tc);
	tcase_add_checked_fixture(tc, setup, teardown);
	tcase_add_loop_test(tc, a_figure_is_kept_as_typed_and_refused_or_questioned_else, 0, G_N_ELEMENTS(figures));
	tcase_add_test(tc, without_a_source_nothing_is_kept);
	tcase_add_test(tc, a_newer_figure_takes_the_place_of_the_older_of_its_source_and_can_be_taken_out);
	tcase_add_loop_test(tc, what_two_sources_say_is_kept_and_differs_beyond_rounding, 0, G_N_ELEMENTS(sources));
	tcase_add_test(tc, a_due_line_tells_the_figures_of_its_fitting_alone);
	tcase_add_test(tc, units_are_chosen_for_a_boat_and_taken_back);
	return run_suite(s);
}
