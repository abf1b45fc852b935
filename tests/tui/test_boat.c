/* The boat as a tree of fittings, the story of each, and what is recorded from there. */
#include "form_keys.h"

#include "logbook/figure.h"

static gboolean
in_view(const struct view_kind *kind)
{
	return app->view[app->depth - 1].kind == kind;
}

static void
ck_wrong(const char *name, const char *words)
{
	const char *wrong = form_field(app_data(app), name)->wrong;

	ck_assert_msg(wrong && strstr(wrong, words), "%s", wrong ? wrong : "(nothing)");
}

static int
entries(void)
{
	g_autoptr(GArray) all = book_history(app->book, 0, NULL);

	return (int)all->len;
}

static void
fitting(const char *words)
{
	key('3');
	find(words);
}

/* At a size with room for the whole story. */
static void
wide(void)
{
	grid_size(grid, 60, 200);
	app_draw(app, grid);
}

static const struct due_line *
due(const char *name)
{
	for (int i = 0; i < due_count(app->due); i++)
		if (!strcmp(due_at(app->due, i)->name, name))
			return due_at(app->due, i);
	return NULL;
}

START_TEST(each_fitting_stands_below_what_it_belongs_to)
{
	static const char *const order[] = {
		"> Boat as a whole", "  Drive ", "├ Trim pump", "├ Trim cylinders", "└ Trim anchor pins", "├ Upper unit",
		"└ U-joint shaft", "  Electrical",
	};
	g_autofree char *frame = NULL;
	const char *at;

	key('3');
	grid_size(grid, 140, 119);
	app_draw(app, grid);
	at = frame = grid_text(grid);
	for (guint i = 0; i < G_N_ELEMENTS(order); i++) {
		at = strstr(at, order[i]);
		ck_assert_msg(at != NULL, "%s is not where it belongs", order[i]);
	}
}
END_TEST

START_TEST(a_fitting_says_the_worst_of_its_tasks_as_a_word)
{
	ck_assert(due("gimbal-bearing.grease")->out.past && !due("gimbal-bearing.renew")->out.past);
	fitting("gimbal-bearing");
	ck_shows("past due");
	ck_assert(!due("bellows-ujoint.renew")->out.past);
	fitting("bellows-ujoint");
	ck_shows("before launch");
}
END_TEST

START_TEST(a_search_finds_a_fitting_and_names_what_it_belongs_to)
{
	fitting("gimbal bearing");
	ck_shows("> Gimbal bearing (Transom assembly)");
	ck_hides("Trim pump");
	key(K_ESC);
	ck_shows("Hinge pins");
	ck_shows("Gimbal bearing ");
}
END_TEST

START_TEST(a_search_finds_by_state)
{
	fitting("past due");
	ck_shows("past due");
	ck_hides("before launch");
}
END_TEST

START_TEST(a_story_tells_what_it_is_what_is_in_it_and_what_was_done)
{
	wide();
	fitting("drive/transom/bellows-ujoint");
	ck_shows("U-joint bellows (drive/transom/bellows-ujoint)");
	ck_shows("Design: bell-housing-clamped; there are bell-housing-clamped, nose-compressed");
	ck_shows("Below the waterline");
	ck_shows("Of rubber");
	ck_shows("First off or open: Drive unit (90 min), then Bell housing (60 min)");
	ck_shows("bellows, U-joint, demo-101; fitted 12 Mar 2022; made 1 Sep 2021; With two new clamps");
	ck_shows("Before: bellows, U-joint; out since 12 Mar 2022");
	ck_shows("Renew the U-joint bellows and both clamps: before launch, due");
	ck_shows("5 years (published");
	ck_shows("12 Mar 2022, renew: renewed");
}
END_TEST

START_TEST(a_story_tells_the_manuals_figures_in_both_systems)
{
	struct fitting on;
	struct figure f;

	wide();
	ck_assert(book_find_fitting(app->book, app->boat.id, "drive/propeller", &on, NULL));
	record_init(RECORD_FIGURE, &f);
	f.boat = app->boat.id;
	f.fitting = on.id;
	f.what = g_strdup("torque");
	f.as_read = g_strdup("60 ft-lb");
	f.source = g_strdup("manual p. 41");
	ck_assert(book_set_figure(app->book, &f, FALSE, NULL));
	record_clear(RECORD_FIGURE, &f);
	record_clear(RECORD_FITTING, &on);
	fitting("drive/propeller");
	ck_shows("FIGURES OF THE MANUAL");
	ck_shows("torque: 60 ft-lb (81 N·m) (manual p. 41)");
	fitting("drive/anodes");
	ck_hides("FIGURES OF THE MANUAL");
}
END_TEST

START_TEST(work_of_another_design_is_told_and_not_due)
{
	wide();
	fitting("drive/upper/ujoint-shaft");
	ck_shows(": of another design");
}
END_TEST

START_TEST(enter_opens_the_story_as_a_page)
{
	fitting("drive/anodes");
	key(K_ENTER);
	ck_assert(in_view(&view_text));
	ck_shows("Anodes (drive/anodes)");
	key(K_END);
	ck_shows("measure: ");
	key(K_ESC);
	ck_assert(in_view(&view_boat));
}
END_TEST

START_TEST(a_reading_by_keys_gives_its_verdict_and_stands_in_the_story)
{
	int before = entries();

	fitting("drive/anodes");
	key('m');
	ck_assert(in_form());
	type("60 %");
	ck_will("anode-left 60 %: worth watching: at 75 % or below. Limits: worth watching at 75 % or below, stop at 50 %");
	ck_assert_int_eq(entries(), before);
	record();
	ck_assert(!in_form());
	ck_assert_int_eq(entries(), before + 1);
	ck_shows("anode-left 60 %: worth watching: at 75 % or below");
	wide();
	ck_shows("25 Nov 2026: 60 %, worth watching: at 75 % or below");
	ck_shows("60 %, worth watching");
	key('u');
	ck_hides("25 Nov 2026: 60 %");
}
END_TEST

START_TEST(a_stop_is_said_before_and_with_the_work_that_it_makes_due_after)
{
	ck_assert_ptr_nonnull(due("anodes.renew"));
	ck_assert(due("anodes.renew")->out.when != OPP_NOW);
	fitting("drive/anodes");
	key('m');
	type("45 %");
	ck_will("stop: at 50 % or below");
	wide();
	record();
	ck_shows("anode-left 45 %: stop: at 50 % or below; due at once: Anodes: renew");
	ck_assert(due("anodes.renew")->out.past || due("anodes.renew")->out.when <= OPP_BEFORE_LAUNCH);
}
END_TEST

START_TEST(a_value_in_another_unit_is_refused_beside_its_field_and_kept)
{
	int before = entries();

	fitting("drive/anodes");
	key('m');
	type("45 mm");
	record();
	ck_assert(in_form());
	ck_wrong("value", "is no reading of anode-left: write 60 %");
	ck_shows("is no reading of anode-left: write 60 %");
	ck_shows("45 mm");
	ck_assert_int_eq(entries(), before);
}
END_TEST

START_TEST(nothing_typed_is_no_reading)
{
	fitting("drive/anodes");
	key('m');
	record();
	ck_assert(in_form());
	ck_shows("wanted: what does it read?");
	fill("what", "nonsense");
	ck_wrong("what", "is no measured value");
	fill("date", "tomorrow");
	ck_wrong("date", "ahead");
	fill("psu", "99");
	ck_wrong("psu", "99");
}
END_TEST

START_TEST(what_can_hardly_be_is_asked_about_and_taken_by_y)
{
	int before = entries();

	fitting("drive/anodes");
	key('m');
	type("160 %");
	record();
	ck_assert(in_form());
	ck_shows("can hardly be");
	key('y');
	ck_assert(!in_form());
	ck_assert_int_eq(entries(), before + 1);
}
END_TEST

START_TEST(a_half_cell_is_judged_by_the_water_that_was_said)
{
	fitting("drive/anodes");
	key('m');
	fill("what", "half-cell-aluminium-drive");
	fill("value", "-950 mV");
	ck_will("not judged: the limits hold in salt water only");
	into("water");
	type("s");
	ck_will("-950 mV: good");
	key(K_BACKSPACE);
	fill("psu", "34 psu");
	ck_will("-950 mV: good");
	record();
	ck_shows("half-cell-aluminium-drive -950 mV: good");
}
END_TEST

START_TEST(what_a_fitting_is_measured_by_is_filled_in)
{
	fitting("electrical/batteries");
	key('m');
	ck_assert_str_eq(form_text(app_data(app), "what"), "rest-voltage");
}
END_TEST

START_TEST(a_readings_draft_comes_back)
{
	fitting("drive/anodes");
	key('m');
	type("60 %");
	key(K_ESC);
	ck_assert(!in_form());
	key('m');
	ck_assert_str_eq(form_text(app_data(app), "value"), "60 %");
}
END_TEST

START_TEST(what_the_boat_does_not_have_rests_and_undo_brings_it_back)
{
	ck_assert_ptr_nonnull(due("gimbal-bearing.grease"));
	fitting("gimbal-bearing");
	key(K_DELETE);
	ck_shows("Gimbal bearing: not on this boat; u brings it back");
	ck_assert_ptr_null(due("gimbal-bearing.grease"));
	key('d');
	ck_assert(!in_form());
	ck_shows("Gimbal bearing: not on this boat");
	key('u');
	ck_assert_ptr_nonnull(due("gimbal-bearing.grease"));
	ck_shows("past due");
	key(K_DELETE);
	key(K_DELETE);
	ck_shows("on this boat again; u takes that back");
	ck_assert_ptr_nonnull(due("gimbal-bearing.grease"));
}
END_TEST

START_TEST(of_several_tasks_one_is_chosen_and_recorded)
{
	const struct form *f;
	int before = entries();

	fitting("gimbal-bearing");
	key('d');
	ck_assert(in_view(&view_work));
	ck_shows("Gimbal bearing: which work was done?");
	find("inspect");
	key(K_ENTER);
	ck_assert(in_view(&view_text));
	key(K_ESC);
	key('d');
	ck_assert(in_form());
	f = app_data(app);
	ck_assert(f->kind == &form_did);
	ck_assert(f->subject == due("gimbal-bearing.inspect")->id);
	record();
	ck_assert_int_eq(entries(), before + 1);
	ck_assert(in_view(&view_boat));
}
END_TEST

START_TEST(one_task_needs_no_choice)
{
	fitting("bellows-ujoint");
	key('d');
	ck_assert(in_form());
	ck_assert(((const struct form *)app_data(app))->kind == &form_did);
}
END_TEST

START_TEST(without_a_task_it_says_so)
{
	fitting("drive/unit");
	key('d');
	ck_assert(in_view(&view_boat));
	ck_shows("Drive unit: no task");
}
END_TEST

START_TEST(another_design_says_which_tasks_go_and_takes_them)
{
	ck_assert_ptr_nonnull(due("gimbal-bearing.grease"));
	fitting("gimbal-bearing");
	key('e');
	fill("variant", "sealed");
	ck_will("Gimbal bearing: sealed in place of greasable. Goes: Grease the gimbal bearing until fresh grease shows.");
	record();
	ck_shows("Gimbal bearing: sealed; u takes it back");
	ck_assert_ptr_null(due("gimbal-bearing.grease"));
	key('e');
	fill("variant", "greasable");
	ck_will("Comes: Grease the gimbal bearing until fresh grease shows.");
	key(K_ESC);
	key('u');
	ck_assert_ptr_nonnull(due("gimbal-bearing.grease"));
}
END_TEST

START_TEST(a_design_that_there_is_not_is_refused_and_kept)
{
	int before = entries();

	fitting("gimbal-bearing");
	key('e');
	fill("variant", "square");
	record();
	ck_assert(in_form());
	ck_shows("has no design \"square\"");
	ck_shows("greasable, sealed");
	ck_assert_int_eq(entries(), before);
}
END_TEST

START_TEST(a_fitting_of_one_design_opens_no_form)
{
	fitting("drive/unit");
	key('e');
	ck_assert(in_view(&view_boat));
	ck_shows("Drive unit comes in one design only");
}
END_TEST

static void
set_tree(void)
{
	key('3');
	for (int i = 0; i < 7; i++)
		key(K_DOWN);
}
static void
set_story(void)
{
	fitting("drive/anodes");
	key(K_ENTER);
	for (int i = 0; i < 200 && !on_screen("THE WHOLE STORY"); i++)	/* below the plot */
		key(K_DOWN);
}
static void
set_work(void)
{
	fitting("gimbal-bearing");
	key('d');
}
static void
set_variant(void)
{
	fitting("gimbal-bearing");
	key('e');
	fill("variant", "sealed");
}

static const struct { const char *name; void (*set)(void); } screens[] = {
	{ "boat-tree", set_tree }, { "boat-story", set_story }, { "boat-work", set_work }, { "form-variant", set_variant },
};

START_TEST(a_screen_is_as_it_was_looked_at)
{
	for (int k = 0; k < GOLDENS; k++) {
		grid->ascii = goldens[k].ascii;
		grid_size(grid, goldens[k].h, goldens[k].w);
		app_draw(app, grid);
		screens[_i].set();
		same_screen(screens[_i].name, &goldens[k]);
		while (app->depth > 1)
			app_close(app);
	}
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Boat");
	TCase *tc = tcase_create("boat");

	tcase_add_checked_fixture(tc, demo_begin, app_end);
	tcase_set_timeout(tc, 60);
	tcase_add_test(tc, each_fitting_stands_below_what_it_belongs_to);
	tcase_add_test(tc, a_fitting_says_the_worst_of_its_tasks_as_a_word);
	tcase_add_test(tc, a_search_finds_a_fitting_and_names_what_it_belongs_to);
	tcase_add_test(tc, a_search_finds_by_state);
	tcase_add_test(tc, a_story_tells_what_it_is_what_is_in_it_and_what_was_done);
	tcase_add_test(tc, a_story_tells_the_manuals_figures_in_both_systems);
	tcase_add_test(tc, work_of_another_design_is_told_and_not_due);
	tcase_add_test(tc, enter_opens_the_story_as_a_page);
	tcase_add_test(tc, a_reading_by_keys_gives_its_verdict_and_stands_in_the_story);
	tcase_add_test(tc, a_stop_is_said_before_and_with_the_work_that_it_makes_due_after);
	tcase_add_test(tc, a_value_in_another_unit_is_refused_beside_its_field_and_kept);
	tcase_add_test(tc, nothing_typed_is_no_reading);
	tcase_add_test(tc, what_can_hardly_be_is_asked_about_and_taken_by_y);
	tcase_add_test(tc, a_half_cell_is_judged_by_the_water_that_was_said);
	tcase_add_test(tc, what_a_fitting_is_measured_by_is_filled_in);
	tcase_add_test(tc, a_readings_draft_comes_back);
	tcase_add_test(tc, what_the_boat_does_not_have_rests_and_undo_brings_it_back);
	tcase_add_test(tc, of_several_tasks_one_is_chosen_and_recorded);
	tcase_add_test(tc, one_task_needs_no_choice);
	tcase_add_test(tc, without_a_task_it_says_so);
	tcase_add_test(tc, another_design_says_which_tasks_go_and_takes_them);
	tcase_add_test(tc, a_design_that_there_is_not_is_refused_and_kept);
	tcase_add_test(tc, a_fitting_of_one_design_opens_no_form);
	tcase_add_loop_test(tc, a_screen_is_as_it_was_looked_at, 0, G_N_ELEMENTS(screens));
	suite_add_tcase(s, tc);
	return run_suite(s);
}
