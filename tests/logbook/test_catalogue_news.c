/* Editions: what a newer catalogue changes, and that what the owner changed is never overwritten. */
#include "tests/logbook/small_catalogue.h"

#include "logbook/catalogue_news.h"

#include "base/err.h"

static struct news_list *
news(void)
{
	g_autoptr(GError) err = NULL;
	struct news_list *n = book_news(book, files, &boat, &err);

	ck_assert_msg(n != NULL, "%s", err ? err->message : "?");
	return n;
}

static int
news_count(void)
{
	struct news_list *n = news();
	int lines = (int)n->lines->len;

	news_free(n);
	return lines;
}

/* The kind of news of that name; -1: there is none. */
static int
news_kind(const char *name)
{
	struct news_list *n = news();
	int kind = -1;

	for (guint i = 0; i < n->lines->len; i++) {
		const struct news *line = &((const struct news *)(const void *)n->lines->data)[i];

		if (!strcmp(line->name, name))
			kind = (int)line->kind;
	}
	news_free(n);
	return kind;
}

static void
choose(const char *take, const char *leave, gboolean all)
{
	char *takes[] = { (char *)(guintptr)take, NULL }, *leaves[] = { (char *)(guintptr)leave, NULL };
	struct news_choice choice = { takes, leaves, all, 0, 0 };
	g_autoptr(GError) err = NULL;

	ck_assert_msg(book_take_news(book, files, &boat, &choice, &err), "%s", err ? err->message : "?");
}

static void
again(void)
{
	record_clear(RECORD_BOAT, &boat);
	ck_assert(book_boat(book, NULL, &boat, NULL));
}

/* A task's months. */
static gint64
months_of(const char *name)
{
	g_autoptr(GArray) limits = NULL;
	gint64 months = NONE;
	struct task t;

	ck_assert(book_find_task(book, boat.id, name, &t, NULL));
	limits = book_limits(book, t.id, NULL);
	for (guint i = 0; i < limits->len; i++)
		if (((const struct limit *)(const void *)limits->data)[i].kind == LIMIT_MONTHS)
			months = ((const struct limit *)(const void *)limits->data)[i].amount;
	record_clear(RECORD_TASK, &t);
	return months;
}

static void
set_months(const char *name, gint64 months)
{
	struct limit m;
	struct task t;
	g_autoptr(GError) err = NULL;

	record_init(RECORD_LIMIT, &m);
	m.kind = LIMIT_MONTHS;
	m.amount = months;
	m.standing = STANDING_OWNER;
	m.source = g_strdup("own rule");
	ck_assert(book_find_task(book, boat.id, name, &t, &err));
	ck_assert(book_set_limits(book, &t, &m, 1, &err));
	record_clear(RECORD_TASK, &t);
	record_clear(RECORD_LIMIT, &m);
}

static gboolean
is_retired(const char *name)
{
	gboolean retired;
	struct task t;

	ck_assert(book_find_task(book, boat.id, name, &t, NULL));
	retired = t.retired == 1;
	record_clear(RECORD_TASK, &t);
	return retired;
}

/* The pump is renewed every so many months, the plug is looked at by hours alone, and a seacock comes. */
static void
write_edition_2(int months)
{
	g_autofree char *limits = g_strdup_printf("pump.inspect,hours,,100," SOURCE "pump.renew,months,%d,," SOURCE, months);

	write_file("", "editions.csv", "edition,date,what\n1,2026-01-01,First\n2,2026-06-01,Second\n");
	write_module("hull",
		     "hull,Hull,,yes,no,no,,\nhull/plug,Drain plug,,yes,no,no,,\nhull/seacock,Seacock,,yes,no,no,,\n",
		     "plug.inspect,hull/plug,See that the plug is in,inspect,out,none,sinks,inspection,1,plug in hand\n"
		     "seacock.test,hull/seacock,Turn the seacock,test,anywhere,none,sinks,done,2,it turns\n",
		     "plug.inspect,hours,,10," SOURCE "seacock.test,months,6,," SOURCE);
	write_module("engine",
		     "engine,Engine,,no,no,no,,\nengine/cover,Cover,,no,no,no,,5\n"
		     "engine/pump,Pump,plain greasable,no,no,yes,engine/cover,\n",
		     "pump.inspect,engine/pump,Look at the pump,inspect,anywhere,none,costs,inspection,5,no drip\n"
		     "pump.renew,engine/pump,Renew the pump,renew,anywhere,none,costs,renewal,30,no drip\n",
		     limits);
}

START_TEST(the_same_edition_is_no_news)
{
	gint64 edition;

	made(NULL, twins);
	ck_assert_int_eq(news_count(), 0);
	ck_assert(!catalogue_is_newer(files, &boat, &edition));
}
END_TEST

START_TEST(a_newer_edition_is_told_line_by_line)
{
	gint64 edition;

	made(NULL, one);
	write_edition_2(12);
	ck_assert(catalogue_is_newer(files, &boat, &edition));
	ck_assert_int_eq(edition, 2);
	ck_assert_int_eq(news_count(), 4);
	ck_assert_int_eq(news_kind("hull/seacock"), NEWS_NEW);
	ck_assert_int_eq(news_kind("seacock.test"), NEWS_NEW);
	ck_assert_int_eq(news_kind("plug.inspect"), NEWS_CHANGED);
	ck_assert_int_eq(news_kind("pump.renew"), NEWS_CHANGED);
	ck_assert_int_eq(months_of("pump.renew"), 24);
}
END_TEST

START_TEST(what_was_taken_is_as_the_catalogue_has_it_and_no_news_any_more)
{
	gint64 edition;

	made(NULL, one);
	write_edition_2(12);
	choose(NULL, NULL, TRUE);
	ck_assert_int_eq(months_of("pump.renew"), 12);
	ck_assert_int_eq(months_of("plug.inspect"), NONE);
	ck_assert_int_eq(months_of("seacock.test"), 6);
	ck_assert_int_eq(news_count(), 0);
	again();
	ck_assert_int_eq(boat.edition, 2);
	ck_assert(!catalogue_is_newer(files, &boat, &edition));
}
END_TEST

START_TEST(what_the_owner_changed_is_never_overwritten)
{
	made(NULL, one);
	set_months("pump.renew", 18);
	write_edition_2(12);
	ck_assert_int_eq(news_kind("pump.renew"), NEWS_YOURS);
	choose(NULL, NULL, TRUE);
	ck_assert_int_eq(months_of("pump.renew"), 18);
	ck_assert_int_eq(news_kind("pump.renew"), -1);
	/* Nor by the edition after that. */
	write_edition_2(6);
	again();
	ck_assert_int_eq(news_kind("pump.renew"), NEWS_YOURS);
	choose(NULL, NULL, TRUE);
	ck_assert_int_eq(months_of("pump.renew"), 18);
}
END_TEST

START_TEST(what_is_the_owners_cannot_be_taken_by_name)
{
	char *take[] = { (char *)(guintptr)"pump.renew", NULL };
	struct news_choice choice = { .take = take };
	g_autoptr(GError) err = NULL;

	made(NULL, one);
	set_months("pump.renew", 18);
	write_edition_2(12);
	ck_assert(!book_take_news(book, files, &boat, &choice, &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_CONFLICT));
	ck_assert_int_eq(months_of("pump.renew"), 18);
}
END_TEST

START_TEST(a_name_that_is_no_news_is_refused)
{
	char *take[] = { (char *)(guintptr)"pump.inspect", NULL };
	struct news_choice choice = { .take = take };
	g_autoptr(GError) err = NULL;

	made(NULL, one);
	write_edition_2(12);
	ck_assert(!book_take_news(book, files, &boat, &choice, &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_NOT_FOUND));
	ck_assert_int_eq(news_count(), 4);
}
END_TEST

START_TEST(a_new_task_brings_its_fitting)
{
	struct fitting f;

	made(NULL, one);
	write_edition_2(12);
	choose("seacock.test", NULL, FALSE);
	ck_assert(has_task("seacock.test"));
	ck_assert(book_find_fitting(book, boat.id, "hull/seacock", &f, NULL));
	record_clear(RECORD_FITTING, &f);
	ck_assert_int_eq(news_kind("hull/seacock"), -1);
	ck_assert_int_eq(news_count(), 2);
	ck_assert_int_eq(months_of("pump.renew"), 24);
	again();
	ck_assert_int_eq(boat.edition, 1);
}
END_TEST

START_TEST(what_was_left_is_declined_for_good)
{
	made(NULL, one);
	write_edition_2(12);
	choose(NULL, "seacock.test", FALSE);
	ck_assert_int_eq(news_kind("seacock.test"), -1);
	choose(NULL, "pump.renew", TRUE);
	ck_assert(!has_task("seacock.test"));
	ck_assert_int_eq(months_of("pump.renew"), 24);
	ck_assert_int_eq(news_count(), 0);
}
END_TEST

START_TEST(one_undo_takes_all_of_it_back)
{
	struct book_entry e;

	made(NULL, one);
	write_edition_2(12);
	choose(NULL, NULL, TRUE);
	ck_assert(book_undo(book, &e, NULL));
	book_entry_clear(&e);
	again();
	ck_assert_int_eq(boat.edition, 1);
	ck_assert_int_eq(months_of("pump.renew"), 24);
	ck_assert(!has_task("seacock.test"));
	ck_assert_int_eq(news_count(), 4);
}
END_TEST

START_TEST(what_was_retired_stays_retired)
{
	struct task t;

	made(NULL, one);
	ck_assert(book_find_task(book, boat.id, "pump.renew", &t, NULL));
	ck_assert(book_retire_task(book, &t, TRUE, NULL));
	record_clear(RECORD_TASK, &t);
	write_edition_2(12);
	choose(NULL, NULL, TRUE);
	ck_assert_int_eq(months_of("pump.renew"), 12);
	ck_assert(is_retired("pump.renew"));
}
END_TEST

START_TEST(a_task_that_is_gone_is_retired_when_that_is_taken_over)
{
	made(NULL, one);
	write_edition_2(24);
	write_module("hull", "hull,Hull,,yes,no,no,,\n", "", "");
	ck_assert_int_eq(news_kind("plug.inspect"), NEWS_GONE);
	choose("plug.inspect", NULL, FALSE);
	ck_assert(is_retired("plug.inspect"));
	ck_assert_int_eq(news_kind("plug.inspect"), -1);
}
END_TEST

START_TEST(a_fitting_that_is_gone_is_retired_when_that_is_taken_over)
{
	struct fitting f;

	made(NULL, one);
	write_edition_2(24);
	write_module("hull", "hull,Hull,,yes,no,no,,\n", "", "");
	ck_assert_int_eq(news_kind("hull/plug"), NEWS_GONE);
	ck_assert_int_eq(news_count(), 2);
	choose("hull/plug", NULL, TRUE);
	ck_assert(book_find_fitting(book, boat.id, "hull/plug", &f, NULL));
	ck_assert_int_eq(f.retired, 1);
	record_clear(RECORD_FITTING, &f);
	ck_assert_int_eq(news_count(), 0);
}
END_TEST

START_TEST(a_fitting_with_work_of_the_owners_is_not_gone)
{
	made(NULL, one);
	write_edition_2(24);
	set_months("plug.inspect", 3);
	write_module("hull", "hull,Hull,,yes,no,no,,\n", "", "");
	ck_assert_int_eq(news_count(), 0);
}
END_TEST

START_TEST(an_engine_that_comes_later_brings_its_own_and_leaves_the_first_its_names)
{
	struct fitting f;
	g_autoptr(GArray) engines = NULL;

	made(NULL, one);
	import_text(RECORD_ENGINE, "name\nstarboard\n");
	ck_assert_int_eq(news_kind("starboard-pump.renew"), NEWS_NEW);
	ck_assert_int_eq(news_kind("main-pump.renew"), -1);
	ck_assert_int_eq(news_kind("pump.renew"), -1);
	choose(NULL, NULL, TRUE);
	ck_assert_int_eq(news_count(), 0);
	/* Each counts its own hours now. */
	engines = book_records(book, RECORD_ENGINE, boat.id, NULL);
	for (guint i = 0; i < engines->len; i++) {
		const struct engine *e = &((const struct engine *)(const void *)engines->data)[i];
		const char *on = strcmp(e->name, "main") ? "starboard/engine/pump" : "engine/pump";

		ck_assert(book_find_fitting(book, boat.id, on, &f, NULL));
		ck_assert_str_eq(f.path, on);
		ck_assert_int_eq(f.engine, e->id);
		record_clear(RECORD_FITTING, &f);
	}
}
END_TEST

START_TEST(a_task_that_is_gone_can_stay)
{
	made(NULL, one);
	write_edition_2(24);
	write_module("hull", "hull,Hull,,yes,no,no,,\n", "", "");
	choose(NULL, "plug.inspect", FALSE);
	ck_assert(!is_retired("plug.inspect"));
	ck_assert_int_eq(news_count(), 0);
}
END_TEST

START_TEST(of_twins_each_has_its_line)
{
	made(NULL, twins);
	write_edition_2(12);
	ck_assert_int_eq(news_kind("port-pump.renew"), NEWS_CHANGED);
	choose("port-pump.renew", "starboard-pump.renew", FALSE);
	ck_assert_int_eq(months_of("port-pump.renew"), 12);
	ck_assert_int_eq(months_of("starboard-pump.renew"), 24);
}
END_TEST

START_TEST(the_designs_and_what_is_not_there_are_no_change)
{
	struct fitting f;

	made(NULL, one);
	import_text(RECORD_FITTING, "path,title,variant,retired\nengine/pump,Pump,plain,\nhull/plug,Drain plug,,yes\n");
	write_edition_2(12);
	ck_assert_int_eq(news_kind("engine/pump"), -1);
	choose(NULL, NULL, TRUE);
	ck_assert(book_find_fitting(book, boat.id, "engine/pump", &f, NULL));
	ck_assert_str_eq(f.variant, "plain");
	record_clear(RECORD_FITTING, &f);
	ck_assert(book_find_fitting(book, boat.id, "hull/plug", &f, NULL));
	ck_assert_int_eq(f.retired, 1);
	record_clear(RECORD_FITTING, &f);
}
END_TEST

/* A logbook of a program that kept no digests: the same rows by import. */
START_TEST(from_before_what_is_alike_was_shipped_and_the_rest_is_the_owners)
{
	gint64 edition;

	write_file("", "kinds.csv", "kind,fuel,module,each\njet,petrol,hull,no\n");
	made(NULL, one);
	write_catalogue();
	import_text(RECORD_BOAT, "name,kind,berth,winter,water,launch,haul-out,catalogue\n"
				 "Heron,inboard,afloat,ashore,fresh,04-15,10-15,inboard\n");
	again();
	import_text(RECORD_FITTING,
		    "path,title,below-waterline,fuel,rubber\nhull,Hull,yes,no,no\nhull/plug,Drain plug,yes,no,no\n");
	import_text(RECORD_TASK,
		    "name,fitting,title,verb,place,mechanism,consequence,rule,minutes,proof\n"
		    "plug.inspect,hull/plug,See that the plug is in,inspect,out,none,sinks,inspection,9,plug in hand\n");
	ck_assert(catalogue_is_newer(files, &boat, &edition));
	ck_assert_int_eq(news_kind("hull/plug"), -1);
	ck_assert_int_eq(news_kind("plug.inspect"), NEWS_YOURS);
	ck_assert_int_eq(news_kind("pump.renew"), NEWS_NEW);
	choose(NULL, NULL, TRUE);
	again();
	ck_assert(!catalogue_is_newer(files, &boat, &edition));
	ck_assert_int_eq(news_count(), 0);
	/* What was alike changes with the next edition. */
	write_edition_2(12);
	ck_assert_int_eq(news_kind("pump.renew"), NEWS_CHANGED);
	ck_assert_int_eq(news_kind("plug.inspect"), NEWS_YOURS);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("Editions of a catalogue");
	TCase *tc = tcase_create("news");

	tcase_add_checked_fixture(tc, begin, end);
	tcase_add_test(tc, the_same_edition_is_no_news);
	tcase_add_test(tc, a_newer_edition_is_told_line_by_line);
	tcase_add_test(tc, what_was_taken_is_as_the_catalogue_has_it_and_no_news_any_more);
	tcase_add_test(tc, what_the_owner_changed_is_never_overwritten);
	tcase_add_test(tc, what_is_the_owners_cannot_be_taken_by_name);
	tcase_add_test(tc, a_name_that_is_no_news_is_refused);
	tcase_add_test(tc, a_new_task_brings_its_fitting);
	tcase_add_test(tc, what_was_left_is_declined_for_good);
	tcase_add_test(tc, one_undo_takes_all_of_it_back);
	tcase_add_test(tc, what_was_retired_stays_retired);
	tcase_add_test(tc, a_task_that_is_gone_is_retired_when_that_is_taken_over);
	tcase_add_test(tc, a_fitting_that_is_gone_is_retired_when_that_is_taken_over);
	tcase_add_test(tc, a_fitting_with_work_of_the_owners_is_not_gone);
	tcase_add_test(tc, an_engine_that_comes_later_brings_its_own_and_leaves_the_first_its_names);
	tcase_add_test(tc, a_task_that_is_gone_can_stay);
	tcase_add_test(tc, of_twins_each_has_its_line);
	tcase_add_test(tc, the_designs_and_what_is_not_there_are_no_change);
	tcase_add_test(tc, from_before_what_is_alike_was_shipped_and_the_rest_is_the_owners);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
