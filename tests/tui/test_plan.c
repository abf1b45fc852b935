/* The plan: intervals with their sources, tasks of one's own, and what is not wanted. */
#include "logbook/variant.h"
#include "form_keys.h"

static gint64
task_id(const char *name)
{
	g_autoptr(GError) err = NULL;
	struct task t;
	gint64 id;

	ck_assert_msg(book_find_task(app->book, app->boat.id, name, &t, &err), "%s", err ? err->message : "?");
	id = t.id;
	record_clear(RECORD_TASK, &t);
	return id;
}

static const struct due_line *
due(const char *name)
{
	return due_find(app->due, task_id(name));
}

/* The limit of that kind, as recorded; the words of its source are the caller's. */
static char *
source_of(const char *name, enum limit_kind kind, gint64 *standing)
{
	g_autoptr(GArray) all = book_limits(app->book, task_id(name), NULL);

	for (guint i = 0; i < all->len; i++) {
		const struct limit *m = &((const struct limit *)(const void *)all->data)[i];

		*standing = m->standing;
		if (m->kind == kind)
			return g_strdup(m->source);
	}
	return NULL;
}

static int
entries(void)
{
	g_autoptr(GArray) all = book_history(app->book, 0, NULL);

	return (int)all->len;
}

static void
change(const char *name)
{
	key('6');
	find(name);
	key('e');
	ck_assert(in_form());
}

START_TEST(an_interval_without_a_source_is_refused_and_kept)
{
	int before = entries();

	change("bellows-ujoint.renew");
	fill("every", "3 years");
	record();
	ck_assert(in_form());
	ck_shows("wanted: where does the figure come from");
	ck_shows("3 years");
	ck_assert_int_eq(entries(), before);
}
END_TEST

START_TEST(an_interval_with_its_source_moves_the_due_day_and_undo_moves_it_back)
{
	gint64 was = due("bellows-ujoint.renew")->out.due, standing;
	g_autofree char *source = NULL;

	change("bellows-ujoint.renew");
	fill("every", "3 years");
	fill("source", "manual p. 41");
	record();
	ck_assert(!in_form());
	source = source_of("bellows-ujoint.renew", LIMIT_MONTHS, &standing);
	ck_assert_str_eq(source, "manual p. 41");
	ck_assert_int_eq(standing, STANDING_MANUAL);
	ck_assert_int_lt(due("bellows-ujoint.renew")->out.due, was - 500);
	ck_shows("3 years (manual p. 41)");
	key('u');
	ck_assert_int_eq(due("bellows-ujoint.renew")->out.due, was);
}
END_TEST

START_TEST(the_form_says_what_was_and_what_will_be)
{
	change("bellows-ujoint.renew");
	ck_shows("Now: 5 years");
	fill("every", "3 years");
	fill("source", "manual p. 41");
	ck_will("3 years (manual p. 41) in place of 5 years (published).");
}
END_TEST

START_TEST(an_interval_of_another_kind_stands_beside_those_there_are)
{
	change("bellows-ujoint.renew");
	fill("every", "300 h");
	fill("source", "own rule");
	ck_will("besides what holds now");
	record();
	ck_shows("300 h (owner: own rule)");
	ck_shows("5 years (published");
}
END_TEST

START_TEST(the_interval_of_a_task_that_is_not_wanted_is_still_known)
{
	key('6');
	find("bellows-ujoint.renew");
	key('x');
	key('e');
	ck_shows("Now: 5 years");
}
END_TEST

START_TEST(an_interval_that_makes_no_sense_is_refused_beside_its_field)
{
	static const struct { const char *typed, *says; } bad[] = {
		{ "", "!" },		    { "100", "100" },
		{ "5 fortnights", "5 fortnights" }, { "0 h", "more than nothing" },
		{ "0 months", "1 to 1200" },    { "6 months/12 months", "the shorter of the two" },
		{ "100 h/6 months", "both in hours" },
	};
	int before = entries();

	change("bellows-ujoint.renew");
	fill("every", bad[_i].typed);
	fill("source", "manual p. 41");
	record();
	ck_assert(in_form());
	ck_shows(bad[_i].says);
	ck_shows("manual p. 41");
	ck_assert_int_eq(entries(), before);
}
END_TEST

START_TEST(the_standing_follows_the_source_until_one_says_otherwise)
{
	g_autofree char *source = NULL;
	gint64 standing;

	change("bellows-ujoint.renew");
	fill("every", "3 years");
	fill("source", "the yard said so");
	into("standing");
	key('m');
	key('m');
	record();
	source = source_of("bellows-ujoint.renew", LIMIT_MONTHS, &standing);
	ck_assert_str_eq(source, "the yard said so");
	ck_assert_int_eq(standing, STANDING_MEMORY);
}
END_TEST

START_TEST(both_figures_show_where_salt_water_halves_one)
{
	change("gimbal-bearing.grease");
	fill("every", "10 months/4 months");
	fill("source", "manual p. 12");
	ck_will("10 months, 4 months in salt water (manual p. 12) in place of 12 months, 6 months in salt water");
	record();
	ck_shows("10 months, 4 months in salt water (manual p. 12)");
}
END_TEST

START_TEST(the_pane_tells_what_sources_say_that_differ)
{
	key('6');
	find("bellows-ujoint.renew");
	ck_shows("other published figures run from 2 to 6 years");
}
END_TEST

START_TEST(enter_opens_all_of_it)
{
	key('6');
	find("bellows-ujoint.renew");
	key(K_ENTER);
	ck_assert(app->view[app->depth - 1].kind == &view_text);
	ck_shows("first off or open: ");
	ck_shows("A failure sinks");
	ck_shows("Proof: ");
	ck_shows("Caution: ");
	ck_shows("technicians come first");
}
END_TEST

static void
fill_task(void)
{
	fill("title", "Polish the bell");
	fill("name", "bell.polish");
	fill("fitting", "hull/bottom");
	fill("every", "1 months");
	fill("source", "own rule");
}

START_TEST(a_task_of_ones_own_falls_due_and_undo_takes_it_out)
{
	g_autoptr(GError) err = NULL;
	struct task t;

	key('6');
	key('a');
	fill_task();
	into("consequence");
	key('h');
	fill("minutes", "15");
	fill("proof", "one sees oneself in it");
	ck_will("Polish the bell");
	ck_will("a failure hurts");
	record();
	ck_assert(!in_form());
	ck_assert_ptr_nonnull(due("bell.polish"));
	ck_assert_int_eq(due("bell.polish")->minutes, 15);
	ck_assert_int_eq(due("bell.polish")->in.consequence, COST_HURTS);
	find("bell.polish");
	ck_shows("hands on 15 min");
	ck_shows("Proof: one sees oneself in it");
	ck_shows("1 month (owner: own rule)");
	key('u');
	ck_assert(!book_find_task(app->book, app->boat.id, "bell.polish", &t, &err));
	record_clear(RECORD_TASK, &t);
}
END_TEST

START_TEST(what_a_task_lacks_is_said_and_nothing_is_recorded)
{
	static const struct { const char *field, *typed, *says; } lacks[] = {
		{ "title", "", "what is to be done" },	      { "name", "", "a name to call it by" },
		{ "fitting", "", "on what is it done" },      { "fitting", "no such thing", "no such thing" },
		{ "every", "now and then", "now and then" },  { "source", "", "where does the figure come from" },
		{ "minutes", "a while", "a while" },	      { "name", "bellows-ujoint.renew", "already" },
	};
	int before = entries();

	key('6');
	key('a');
	fill_task();
	fill(lacks[_i].field, lacks[_i].typed);
	record();
	ck_assert(in_form());
	ck_shows(lacks[_i].says);
	ck_assert_int_eq(entries(), before);
	if (strcmp(lacks[_i].field, "title"))
		ck_shows("Polish the bell");
}
END_TEST

START_TEST(what_is_not_wanted_is_said_and_falls_due_no_more)
{
	key('6');
	find("bellows-ujoint.renew");
	ck_hides("not wanted");
	key('x');
	ck_shows("not wanted any more; u takes that back");
	ck_assert_ptr_null(due("bellows-ujoint.renew"));
	key(K_DOWN);
	ck_shows("bellows-ujoint.renew): not wanted");
	key('x');
	ck_shows("wanted again");
	ck_assert_ptr_nonnull(due("bellows-ujoint.renew"));
	key('x');
	key('u');
	ck_assert_ptr_nonnull(due("bellows-ujoint.renew"));
	key(K_DOWN);
	ck_hides("not wanted");
}
END_TEST

START_TEST(a_task_for_another_design_rests_and_says_so)
{
	g_autoptr(GError) err = NULL;
	struct fitting f;

	ck_assert(book_find_fitting(app->book, app->boat.id, "drive/transom/gimbal-bearing", &f, &err));
	key('6');
	find("gimbal-bearing.grease");
	ck_hides("rests");
	ck_assert(book_set_variant(app->book, &f, "sealed", &err));
	app_changed(app);
	app_draw(app, grid);
	ck_shows("rests: another design");
	ck_assert(book_retire_fitting(app->book, &f, TRUE, &err));
	app_changed(app);
	app_draw(app, grid);
	ck_shows("rests: no such fitting");
	record_clear(RECORD_FITTING, &f);
}
END_TEST

START_TEST(a_service_is_recorded_from_the_plan)
{
	key('6');
	find("bellows-ujoint.renew");
	key('d');
	ck_assert(in_form());
	ck_shows("U-joint bellows");
}
END_TEST

static void
set_plan(void)
{
	key('6');
	find("gimbal-bearing");
	key('x');
	key(K_DOWN);
}
static void
set_limit(void)
{
	change("gimbal-bearing.grease");
	fill("every", "10 months/4 months");
	fill("source", "manual p. 12");
}
static void
set_task(void)
{
	key('6');
	key('a');
	fill_task();
}
static void
set_task_wrong(void)
{
	set_task();
	fill("fitting", "bellow");
	fill("every", "now and then");
	record();
}

static const struct { const char *name; void (*set)(void); } screens[] = {
	{ "plan-rests", set_plan },
	{ "form-limit", set_limit },
	{ "form-task", set_task },
	{ "form-task-wrong", set_task_wrong },
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
	Suite *s = suite_create("The plan");
	TCase *tc = tcase_create("plan");

	tcase_add_checked_fixture(tc, demo_begin, app_end);
	tcase_set_timeout(tc, 60);
	tcase_add_test(tc, an_interval_without_a_source_is_refused_and_kept);
	tcase_add_test(tc, an_interval_with_its_source_moves_the_due_day_and_undo_moves_it_back);
	tcase_add_test(tc, the_form_says_what_was_and_what_will_be);
	tcase_add_test(tc, an_interval_of_another_kind_stands_beside_those_there_are);
	tcase_add_test(tc, the_interval_of_a_task_that_is_not_wanted_is_still_known);
	tcase_add_loop_test(tc, an_interval_that_makes_no_sense_is_refused_beside_its_field, 0, 7);
	tcase_add_test(tc, the_standing_follows_the_source_until_one_says_otherwise);
	tcase_add_test(tc, both_figures_show_where_salt_water_halves_one);
	tcase_add_test(tc, the_pane_tells_what_sources_say_that_differ);
	tcase_add_test(tc, enter_opens_all_of_it);
	tcase_add_test(tc, a_task_of_ones_own_falls_due_and_undo_takes_it_out);
	tcase_add_loop_test(tc, what_a_task_lacks_is_said_and_nothing_is_recorded, 0, 8);
	tcase_add_test(tc, what_is_not_wanted_is_said_and_falls_due_no_more);
	tcase_add_test(tc, a_task_for_another_design_rests_and_says_so);
	tcase_add_test(tc, a_service_is_recorded_from_the_plan);
	tcase_add_loop_test(tc, a_screen_is_as_it_was_looked_at, 0, G_N_ELEMENTS(screens));
	suite_add_tcase(s, tc);
	return run_suite(s);
}
