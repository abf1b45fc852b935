/* long: a sentence each of what a list is, and of what ticks it */
/* The season's lists: what stands on one, in which order, and what is done, passed over or open, from the records alone. */
#include "logbook/season_list.h"
#include "logbook/variant.h"

#include "base/err.h"
#include "logbook/year.h"
#include "open.h"

static struct season_work *work;
static char *catalogue, *lists;

/* A boat on a trailer, in the water from 15 April to 15 October, in its own folder of what is shipped. */
static void
set_up(void)
{
	setup();
	work = season_work_new();
	catalogue = g_build_filename(folder, "catalogue", NULL);
	lists = g_build_filename(catalogue, "lists.csv", NULL);
	ck_assert_int_eq(g_mkdir(catalogue, 0700), 0);
	who.data = folder;
	who.today = day_from_ymd(2027, 3, 1);
	open_plain("Plain Jane");
	import_text(RECORD_FITTING, "path,title,variants,variant,needs_off\n"
				    "engine,Engine,,,\n"
				    "engine/cooling,Cooling,raw-water closed,,\n"
				    "fuel,Fuel,,,\n"
				    "drive,Drive,,,\n"
				    "drive/inside,Inside,,,drive\n"
				    "drive/leg,Leg,,,\n"
				    "hull,Hull,,,\n");
}

static void
tear_down(void)
{
	season_work_free(work);
	g_remove(lists);
	g_rmdir(catalogue);
	g_free(lists);
	g_free(catalogue);
	teardown();
}

static void
add(const char *name, const char *fitting, const char *more, const char *limit)
{
	g_autofree char *task = g_strdup_printf("name,fitting,title,verb,place,mechanism,consequence,rule,variants\n"
						"%s,%s,Do %s,%s\n", name, fitting, name, more);
	g_autofree char *limits = g_strdup_printf("task,kind,amount,event,happening,standing,source\n%s,%s,owner,own rule\n", name,
						  limit);

	import_text(RECORD_TASK, task);
	import_text(RECORD_LIMIT, limits);
}

#define LOOK "inspect,anywhere,none,costs,inspection,"
#define LAUNCH "event,,launch,"

static void
write_lists(const char *text)
{
	g_autofree char *all = g_strconcat("list,section,heading,place,match,note,standing,source\n", text, NULL);

	ck_assert(g_file_set_contents(lists, all, -1, NULL));
}

static void
read_list(enum season_list list)
{
	g_autoptr(GError) err = NULL;

	ck_assert_msg(book_season_work(book, &boat, list, work, &err), "%s", err ? err->message : "?");
}

static const struct season_line *
line_of(const char *name)
{
	for (guint i = 0; i < season_lines(work); i++)
		if (!strcmp(season_line(work, i)->due->name, name))
			return season_line(work, i);
	return NULL;
}

static void
ck_order(const char *want)
{
	g_autoptr(GString) got = g_string_new(NULL);

	for (guint i = 0; i < season_lines(work); i++)
		g_string_append_printf(got, "%s%s", i ? " " : "", season_line(work, i)->due->name);
	ck_assert_str_eq(got->str, want);
}

static gint64
key_of(const char *name)
{
	g_autoptr(GError) err = NULL;
	struct task t;
	gint64 key;

	ck_assert_msg(book_find_task(book, boat.id, name, &t, &err), "%s", err ? err->message : "?");
	key = t.id;
	record_clear(RECORD_TASK, &t);
	return key;
}

static void
tick_on(const char *name, gint64 day)
{
	struct season_tick t = { key_of(name), day, NULL, "seen", "tester" };
	struct service_said said;
	g_autoptr(GError) err = NULL;

	ck_assert_msg(book_season_tick(book, work, &t, &said, &err), "%s", err ? err->message : "?");
	service_said_clear(&said);
}

static gboolean
pass_on(const char *name, gint64 day, const char *why, GError **err)
{
	struct skip s;
	gboolean ok;

	record_init(RECORD_SKIP, &s);
	s.task = key_of(name);
	s.date = day;
	s.reason = g_strdup(why);
	s.who = g_strdup("tester");
	ok = book_season_pass(book, work, &s, err);
	record_clear(RECORD_SKIP, &s);
	return ok;
}

/* As another program on another day has it. */
static void
again_on(gint64 day)
{
	who.today = day;
	reopen(BOOK_WRITE);
	read_list(work->list);
}

START_TEST(a_list_has_what_its_event_asks_for)
{
	static const char *const events[] = { "launch", "first-day", "mid-season", "haul-out", "lay-up" };

	for (guint i = 0; i < G_N_ELEMENTS(events); i++) {
		g_autofree char *name = g_strdup_printf("at.%s", events[i]), *limit = g_strdup_printf("event,,%s,", events[i]);

		add(name, "hull", LOOK, limit);
	}
	for (guint i = 0; i < G_N_ELEMENTS(events); i++) {
		g_autofree char *name = g_strdup_printf("at.%s", events[i]);

		read_list((enum season_list)i);
		ck_order(name);
	}
	read_list(LIST_SEA_TRIAL);
	ck_assert_uint_eq(season_lines(work), 0);
}
END_TEST

START_TEST(what_the_due_list_has_for_an_opportunity_is_on_its_list)
{
	add("unknown.age", "hull", LOOK, "months,60,,");
	add("due.spring", "hull", LOOK, "months,12,,");
	add("due.winter", "hull", LOOK, "months,12,,");
	add("due.later", "hull", LOOK, "months,60,,");
	add("after.grounding", "hull", LOOK, "happening,,,grounding");
	import_text(RECORD_SERVICE, "task,date,outcome\ndue.spring,2026-04-01,good\ndue.winter,2026-12-01,good\n"
				    "due.later,2026-04-01,good\n");
	read_list(LIST_COMMISSIONING);
	ck_assert_ptr_nonnull(line_of("unknown.age"));
	ck_assert_ptr_nonnull(line_of("due.spring"));
	ck_assert_ptr_null(line_of("due.later"));
	ck_assert_ptr_null(line_of("after.grounding"));
	import_text(RECORD_HAPPENING, "date,kind\n2027-02-01,grounding\n");
	read_list(LIST_COMMISSIONING);
	ck_assert_ptr_nonnull(line_of("after.grounding"));
	again_on(day_from_ymd(2027, 9, 1));
	read_list(LIST_LAY_UP);
	ck_assert_ptr_nonnull(line_of("due.winter"));
	ck_assert_ptr_null(line_of("unknown.age"));
}
END_TEST

START_TEST(the_event_of_another_list_is_not_asked_for_before_anyone_knows)
{
	add("winter.drain", "engine", LOOK, "event,,lay-up,");
	read_list(LIST_COMMISSIONING);
	ck_assert_ptr_null(line_of("winter.drain"));
}
END_TEST

START_TEST(what_lay_up_left_undone_is_caught_up_with_in_spring_and_what_it_did_is_not_told_again)
{
	add("oil.change", "engine", LOOK, "event,,lay-up,");
	add("oil.filter", "engine", LOOK, "event,,lay-up,");
	import_text(RECORD_SERVICE, "task,date,outcome\noil.change,2025-10-20,done\noil.filter,2025-10-20,done\n"
				    "oil.filter,2026-10-20,done\n");
	read_list(LIST_COMMISSIONING);
	ck_order("oil.change");
}
END_TEST

START_TEST(lists_csv_gives_the_order_of_sections_and_within_one_what_must_come_off_and_what_it_costs)
{
	add("start.first", "engine", LOOK, LAUNCH);
	add("plugs.in", "engine/cooling", LOOK, LAUNCH);
	add("hose.wipe", "fuel", LOOK, LAUNCH);
	add("leg.paint", "drive/leg", LOOK, LAUNCH);
	add("leg.oil", "drive/leg", "inspect,anywhere,none,wrecks,inspection,", LAUNCH);
	add("inside.look", "drive/inside", "inspect,anywhere,none,hurts,inspection,", LAUNCH);
	add("inside.grease", "drive/inside", LOOK, LAUNCH);
	add("rest.one", "hull", LOOK, LAUNCH);
	write_lists("commissioning,1,Drain plugs,out,*.in,\"Count them.\",practice,\"common practice, no source\"\n"
		    "commissioning,2,Drive,out,drive,,,\n"
		    "commissioning,3,Fuel,out,fuel engine/tank,,,\n"
		    "lay-up,1,Not this one,out,hull,,,\n"
		    "commissioning,4,First start,out,start.first engine,,,\n");
	read_list(LIST_COMMISSIONING);
	ck_order("plugs.in inside.look inside.grease leg.oil leg.paint hose.wipe start.first rest.one");
	ck_assert_str_eq(line_of("plugs.in")->heading, "Drain plugs");
	ck_assert_str_eq(line_of("plugs.in")->note, "Count them.");
	ck_assert_str_eq(line_of("plugs.in")->source, "common practice, no source");
	ck_assert_str_eq(line_of("rest.one")->heading, "Also due");
}
END_TEST

START_TEST(names_go_as_they_are_written_and_a_full_one_wins)
{
	add("oil.look", "engine", LOOK, LAUNCH);
	add("oil.change", "engine", LOOK, LAUNCH);
	add("engine.start", "engine", LOOK, LAUNCH);
	add("belt.look", "engine", "inspect,anywhere,none,sinks,inspection,", LAUNCH);
	add("cover.shut", "engine", "inspect,anywhere,none,sinks,inspection,", LAUNCH);
	write_lists("commissioning,1,Cold,out,oil.* engine cover.shut,,,\n"
		    "commissioning,2,Warm,out,engine.start oil.change,,,\n");
	read_list(LIST_COMMISSIONING);
	ck_order("oil.look belt.look cover.shut engine.start oil.change");
	ck_assert_str_eq(line_of("oil.change")->heading, "Warm");
}
END_TEST

START_TEST(a_twin_goes_where_its_kind_goes)
{
	import_text(RECORD_FITTING, "path,title\nport/engine,\"Engine, port\"\nstarboard/engine,\"Engine, starboard\"\n"
				    "portly,Portly\n");
	add("port-oil.look", "port/engine", LOOK, LAUNCH);
	add("starboard-oil.look", "starboard/engine", LOOK, LAUNCH);
	add("port-holes.look", "portly", LOOK, LAUNCH);
	write_lists("commissioning,1,Oil,out,oil.look,,,\ncommissioning,2,Engine,out,engine,,,\n");
	read_list(LIST_COMMISSIONING);
	ck_assert_str_eq(line_of("port-oil.look")->heading, "Oil");
	ck_assert_str_eq(line_of("starboard-oil.look")->heading, "Oil");
	ck_assert_str_eq(line_of("port-holes.look")->heading, "Also due");
}
END_TEST

START_TEST(a_task_without_a_time_of_its_own_is_on_the_lists_that_name_it)
{
	add("trial.idle", "engine", LOOK, "condition,,,");
	add("vapour.sniff", "fuel", LOOK, "outings,1,,");
	add("hose.renew", "fuel", LOOK, "months,120,,");
	add("after.swamping", "hull", LOOK, "happening,,,swamping");
	import_text(RECORD_SERVICE, "task,date,outcome\nhose.renew,2026-04-01,renewed\n");
	write_lists("sea-trial,1,Trial,afloat,trial.idle vapour.*,,,\n"
		    "commissioning,1,Start,out,vapour.sniff hose.renew trial.* after.swamping,,,\n");
	read_list(LIST_SEA_TRIAL);
	ck_order("trial.idle");
	read_list(LIST_COMMISSIONING);
	ck_order("vapour.sniff");
}
END_TEST

START_TEST(a_wrong_row_of_lists_csv_is_refused_by_its_line)
{
	static const struct { const char *row, *say; } wrong[] = {
		{ "autumn,1,Oil,out,engine,,,\n", "lists.csv:2: " },
		{ "lay-up,1,Oil,out,,,,\n", "lists.csv:2: section, heading and match can't be empty" },
		{ "lay-up,1,Oil,out,engine,Note.,hearsay,\n", "lists.csv:2: " },
	};

	for (guint i = 0; i < G_N_ELEMENTS(wrong); i++) {
		g_autoptr(GError) err = NULL;

		write_lists(wrong[i].row);
		ck_assert(!book_season_work(book, &boat, LIST_LAY_UP, work, &err));
		ck_assert_msg(strstr(err->message, wrong[i].say) != NULL, "%s", err->message);
	}
}
END_TEST

START_TEST(the_cooling_decides_how_it_is_laid_up)
{
	static const struct { const char *variant, *want; } all[] = {
		{ "raw-water", "cooling.drain" }, { "closed", "cooling.drain-sea-side" },
	};
	g_autoptr(GError) err = NULL;
	struct fitting f;

	add("cooling.drain", "engine/cooling", LOOK "raw-water", "event,,lay-up,");
	add("cooling.drain-sea-side", "engine/cooling", LOOK "closed", "event,,lay-up,");
	add("cooling.old", "engine/cooling", LOOK, "event,,lay-up,");
	for (guint i = 0; i < G_N_ELEMENTS(all); i++) {
		struct task t;

		ck_assert(book_find_fitting(book, boat.id, "engine/cooling", &f, &err));
		ck_assert(book_set_variant(book, &f, all[i].variant, &err));
		record_clear(RECORD_FITTING, &f);
		if (i == 0) {
			ck_assert(book_find_task(book, boat.id, "cooling.old", &t, &err));
			ck_assert(book_retire_task(book, &t, TRUE, &err));
			record_clear(RECORD_TASK, &t);
		}
		read_list(LIST_LAY_UP);
		ck_order(all[i].want);
	}
}
END_TEST

START_TEST(a_tick_is_a_service_and_the_list_goes_on_on_another_day)
{
	add("one.look", "hull", LOOK, LAUNCH);
	add("two.look", "hull", LOOK, LAUNCH);
	add("three.look", "hull", LOOK, "months,12,,");
	read_list(LIST_COMMISSIONING);
	ck_assert_int_eq(work->done, 0);
	tick_on("one.look", who.today);
	again_on(day_from_ymd(2027, 3, 20));
	ck_assert_int_eq(work->done, 1);
	ck_assert_int_eq(line_of("one.look")->state, SEASON_DONE);
	ck_assert_str_eq(line_of("one.look")->words, "seen");
	ck_assert_str_eq(line_of("one.look")->who, "tester");
	ck_assert_int_eq(line_of("two.look")->state, SEASON_OPEN);
	tick_on("two.look", day_from_ymd(2027, 3, 19));
	tick_on("three.look", who.today);
	again_on(day_from_ymd(2027, 6, 1));
	ck_assert_msg(work->done == 3 && season_lines(work) == 3, "%d of %u", work->done, season_lines(work));
	/* The next spring's begins anew. */
	again_on(day_from_ymd(2027, 11, 1));
	ck_assert_int_eq(work->done, 0);
	ck_assert_ptr_nonnull(line_of("one.look"));
}
END_TEST

/* The engine's rule: for the launch what is done after the haul-out before it, for lay-up after mid-season. */
static const struct { enum season_list list; int month, day; gboolean counts; } rules[] = {
	{ LIST_COMMISSIONING, 10, 15, FALSE }, { LIST_COMMISSIONING, 10, 16, TRUE }, { LIST_LAY_UP, 7, 15, FALSE },
	{ LIST_LAY_UP, 7, 16, TRUE }, { LIST_LAY_UP, 12, 1, TRUE },
};

START_TEST(work_counts_for_a_list_from_the_fixed_point_before_its_event)
{
	add("look.launch", "hull", LOOK, LAUNCH);
	add("look.winter", "hull", LOOK, "event,,lay-up,");
	read_list(rules[_i].list);
	if (rules[_i].counts) {
		tick_on(season_line(work, 0)->due->name, day_from_ymd(2026, rules[_i].month, rules[_i].day));
		read_list(rules[_i].list);
		ck_assert_int_eq(work->done, 1);
	} else {
		struct season_tick t = { season_line(work, 0)->due->id, day_from_ymd(2026, rules[_i].month, rules[_i].day), NULL,
					 NULL, NULL };
		struct service_said said;
		g_autoptr(GError) err = NULL;

		ck_assert(!book_season_tick(book, work, &t, &said, &err));
		ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_INPUT));
	}
}
END_TEST

START_TEST(what_was_found_wanting_or_may_have_been_done_before_leaves_the_line_open)
{
	add("bad.look", "hull", LOOK, LAUNCH);
	add("span.look", "hull", LOOK, LAUNCH);
	import_text(RECORD_SERVICE, "task,date,earliest,outcome\nbad.look,2027-02-01,,bad\nspan.look,2027-02-01,2026-09-01,good\n");
	read_list(LIST_COMMISSIONING);
	ck_assert_int_eq(line_of("bad.look")->state, SEASON_OPEN);
	ck_assert_int_eq(line_of("span.look")->state, SEASON_OPEN);
}
END_TEST

START_TEST(a_new_part_counts_as_the_looking_at_it)
{
	add("leg.look", "drive/leg", LOOK, LAUNCH);
	add("leg.renew", "drive/leg", "renew,anywhere,none,costs,renewal,", "months,60,,");
	import_text(RECORD_SERVICE, "task,date,outcome\nleg.renew,2027-02-01,renewed\n");
	read_list(LIST_COMMISSIONING);
	ck_assert_int_eq(line_of("leg.look")->state, SEASON_DONE);
	ck_assert(line_of("leg.look")->service == NONE);
	ck_assert_int_eq(line_of("leg.renew")->state, SEASON_DONE);
}
END_TEST

START_TEST(what_is_passed_over_says_why_and_stays_open_and_due_until_it_is_done)
{
	g_autoptr(GError) err = NULL;

	add("one.look", "hull", LOOK, "months,12,,");
	import_text(RECORD_SERVICE, "task,date,outcome\none.look,2025-04-01,good\n");
	read_list(LIST_COMMISSIONING);
	ck_assert_msg(pass_on("one.look", who.today, "no light on board", &err), "%s", err ? err->message : "?");
	again_on(day_from_ymd(2027, 3, 5));
	ck_assert_int_eq(line_of("one.look")->state, SEASON_PASSED);
	ck_assert_str_eq(line_of("one.look")->words, "no light on board");
	ck_assert(line_of("one.look")->due->out.past);
	ck_assert_int_eq(work->passed, 1);
	ck_assert_int_eq(work->done, 0);
	/* Of another list it says nothing. */
	read_list(LIST_SEA_TRIAL);
	ck_assert_int_eq(work->passed, 0);
	read_list(LIST_COMMISSIONING);
	tick_on("one.look", who.today);
	read_list(LIST_COMMISSIONING);
	ck_assert_int_eq(line_of("one.look")->state, SEASON_DONE);
	ck_assert_int_eq(work->passed, 0);
}
END_TEST

START_TEST(passing_over_wants_a_reason_a_line_that_is_open_and_a_day_of_the_list)
{
	static const char *const blank[] = { NULL, "", "  \n" };
	g_autoptr(GError) err = NULL;

	add("one.look", "hull", LOOK, LAUNCH);
	add("other.look", "hull", LOOK, "event,,lay-up,");
	read_list(LIST_COMMISSIONING);
	for (guint i = 0; i < G_N_ELEMENTS(blank); i++) {
		g_clear_error(&err);
		ck_assert(!pass_on("one.look", who.today, blank[i], &err));
		ck_assert_msg(strstr(err->message, "a reason is wanted") != NULL, "%s", err->message);
	}
	g_clear_error(&err);
	ck_assert(!pass_on("other.look", who.today, "why", &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_NOT_FOUND));
	g_clear_error(&err);
	ck_assert(!pass_on("one.look", who.today + 1, "why", &err));
	g_clear_error(&err);
	ck_assert(!pass_on("one.look", day_from_ymd(2026, 10, 15), "why", &err));
	tick_on("one.look", who.today);
	read_list(LIST_COMMISSIONING);
	g_clear_error(&err);
	ck_assert(!pass_on("one.look", who.today, "why", &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_CONFLICT));
}
END_TEST

static const struct { int month, day; enum season_list next; } nexts[] = {
	{ 1, 1, LIST_LAY_UP },	 { 2, 1, LIST_COMMISSIONING }, { 4, 14, LIST_COMMISSIONING }, { 4, 15, LIST_FIRST_DAY },
	{ 4, 16, LIST_MID_SEASON }, { 7, 15, LIST_MID_SEASON },	  { 7, 16, LIST_HAUL_OUT },	 { 10, 15, LIST_HAUL_OUT },
	{ 10, 16, LIST_LAY_UP },
};

START_TEST(the_list_that_comes_next_follows_from_the_boats_year)
{
	who.today = day_from_ymd(2026, nexts[_i].month, nexts[_i].day);
	reopen(BOOK_WRITE);
	read_list(LIST_COMMISSIONING);
	ck_assert_str_eq(season_list_title(season_next(work->due)), season_list_title(nexts[_i].next));
}
END_TEST

START_TEST(the_head_says_how_far_it_is)
{
	g_autofree char *none = NULL, *some = NULL;

	add("one.look", "hull", LOOK, LAUNCH);
	add("two.look", "hull", LOOK, LAUNCH);
	read_list(LIST_COMMISSIONING);
	none = season_head(work);
	ck_assert_str_eq(none, "Commissioning, launch 15 Apr 2027: 0 of 2 done");
	tick_on("one.look", who.today);
	ck_assert(pass_on("two.look", who.today, "waits", NULL));
	read_list(LIST_COMMISSIONING);
	some = season_head(work);
	ck_assert_str_eq(some, "Commissioning, launch 15 Apr 2027: 1 of 2 done, 1 passed over");
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("season_list");
	TCase *tc = tcase_create("lists");

	tcase_add_checked_fixture(tc, set_up, tear_down);
	tcase_add_test(tc, a_list_has_what_its_event_asks_for);
	tcase_add_test(tc, what_the_due_list_has_for_an_opportunity_is_on_its_list);
	tcase_add_test(tc, the_event_of_another_list_is_not_asked_for_before_anyone_knows);
	tcase_add_test(tc, what_lay_up_left_undone_is_caught_up_with_in_spring_and_what_it_did_is_not_told_again);
	tcase_add_test(tc, lists_csv_gives_the_order_of_sections_and_within_one_what_must_come_off_and_what_it_costs);
	tcase_add_test(tc, names_go_as_they_are_written_and_a_full_one_wins);
	tcase_add_test(tc, a_twin_goes_where_its_kind_goes);
	tcase_add_test(tc, a_task_without_a_time_of_its_own_is_on_the_lists_that_name_it);
	tcase_add_test(tc, a_wrong_row_of_lists_csv_is_refused_by_its_line);
	tcase_add_test(tc, the_cooling_decides_how_it_is_laid_up);
	tcase_add_test(tc, a_tick_is_a_service_and_the_list_goes_on_on_another_day);
	tcase_add_loop_test(tc, work_counts_for_a_list_from_the_fixed_point_before_its_event, 0, G_N_ELEMENTS(rules));
	tcase_add_test(tc, what_was_found_wanting_or_may_have_been_done_before_leaves_the_line_open);
	tcase_add_test(tc, a_new_part_counts_as_the_looking_at_it);
	tcase_add_test(tc, what_is_passed_over_says_why_and_stays_open_and_due_until_it_is_done);
	tcase_add_test(tc, passing_over_wants_a_reason_a_line_that_is_open_and_a_day_of_the_list);
	tcase_add_loop_test(tc, the_list_that_comes_next_follows_from_the_boats_year, 0, G_N_ELEMENTS(nexts));
	tcase_add_test(tc, the_head_says_how_far_it_is);
	suite_add_tcase(s, tc);
	return run_suite(s);
}
