/* What was typed into a form that was not finished. */
#include "thing.h"

static int
drafts(void)
{
	GDir *dir = g_dir_open(folder, 0, NULL);
	const char *name;
	int n = 0;

	while ((name = g_dir_read_name(dir)))
		n += g_str_has_prefix(name, "draft-");
	g_dir_close(dir);
	return n;
}

/* The only one's path. */
static char *
draft(void)
{
	GDir *dir = g_dir_open(folder, 0, NULL);
	const char *name;
	char *found = NULL;

	while ((name = g_dir_read_name(dir)))
		if (g_str_has_prefix(name, "draft-"))
			found = g_build_filename(folder, name, NULL);
	g_dir_close(dir);
	ck_assert_ptr_nonnull(found);
	return found;
}

START_TEST(a_draft_comes_back_after_the_app_died)
{
	type("Bell \"=[]#\\ é");
	go_to("colour");
	key('g');
	go_to("remark");
	form_long_text_set(app, " one\n two ");
	die();
	open_on(NONE);
	ck_shows("what was typed before is here again; ^N begins anew");
	is("name", "Bell \"=[]#\\ é");
	is("colour", "green");
	is("remark", " one\n two ");
	is("other", "red");
}
END_TEST

START_TEST(leaving_keeps_a_draft_and_says_so)
{
	type("Bell");
	key(K_CTRL('c'));
	ck_assert(!is_open());
	ck_assert_int_eq(app->wish, WISH_NONE);
	ck_shows("what was typed is kept");
	open_on(NONE);
	is("name", "Bell");
	key(K_ENTER);
	key(K_ENTER);
	ck_assert_int_eq(saved, 1);
	ck_assert_int_eq(drafts(), 0);
	open_on(NONE);
	is("name", "");
	ck_hides("is here again");
}
END_TEST

START_TEST(what_equals_the_defaults_is_no_draft)
{
	key(K_RIGHT);
	key(K_ESC);
	ck_hides("is kept");
	ck_assert_int_eq(drafts(), 0);
	open_on(NONE);
	type("x");
	ck_assert_int_eq(drafts(), 1);
	key(K_BACKSPACE);
	ck_assert_int_eq(drafts(), 0);
	key(K_ESC);
	ck_hides("is kept");
}
END_TEST

START_TEST(anew_means_the_defaults_and_no_draft)
{
	type("Bell");
	go_to("date");
	key(K_CTRL('u'));
	type("12 may");
	key(K_CTRL('n'));
	is("name", "");
	is("date", "2026-11-25");
	ck_assert_int_eq(drafts(), 0);
	ck_assert_int_eq(form()->at, 0);
	key(K_ESC);
	ck_hides("is kept");
}
END_TEST

START_TEST(a_draft_is_of_one_subject_and_one_logbook)
{
	char elsewhere[] = "/nowhere/other.splitpin";

	type("Bell");
	key(K_ESC);
	open_on(7);
	is("name", "");
	key(K_ESC);
	app->start.file = elsewhere;
	open_on(NONE);
	is("name", "");
	key(K_ESC);
	app->start.file = path;
	open_on(NONE);
	is("name", "Bell");
}
END_TEST

START_TEST(what_meant_today_stays_that_day)
{
	type("Bell");
	key(K_ESC);
	app->start.who.today++;
	open_on(NONE);
	is("date", "2026-11-25");
	ck_shows("what was typed on 25 Nov 2026 is here again");
	type("s");
	key(K_ESC);
	open_on(NONE);
	is("date", "2026-11-25");
	is("name", "Bells");
	key(K_CTRL('n'));
	is("date", "2026-11-26");
}
END_TEST

START_TEST(a_draft_is_the_owners_alone)
{
	g_autofree char *inner = g_build_filename(folder, "state", NULL), *file = NULL, *was = folder;
	GStatBuf st;

	app->start.state = inner;
	type("Bell");
	ck_assert_int_eq(g_stat(inner, &st), 0);
	ck_assert_int_eq(st.st_mode & 0777, 0700);
	folder = inner;
	file = draft();
	folder = was;
	was = NULL;
	ck_assert_int_eq(g_stat(file, &st), 0);
	ck_assert_int_eq(st.st_mode & 0777, 0600);
	g_remove(file);
	g_rmdir(inner);
	app->start.state = folder;
}
END_TEST

static const char *const broken[] = {
	"", "\n\n[", "[fields", "[fields]\nname", "[fields]\nname=\xff\xfe\n", "[fields]\ncolour=plaid\n",
	"[draft]\nday=never\n[fields]\nelse=x\n",
};

START_TEST(a_broken_draft_is_passed_over)
{
	g_autofree char *file = NULL;

	type("x");
	file = draft();
	die();
	ck_assert(g_file_set_contents(file, broken[_i], -1, NULL));
	open_on(NONE);
	is("name", "");
	is("colour", "");
	ck_hides("is here again");
	type("Bell");
	key(K_ESC);
	open_on(NONE);
	is("name", "Bell");
}
END_TEST

START_TEST(what_cannot_be_kept_is_not_lost_without_a_word)
{
	g_autofree char *file = g_build_filename(path, "no-folder", NULL);

	app->start.state = _i ? file : NULL;
	type("Bell");
	key(K_ESC);
	ck_shows("can't be kept as a draft");
	ck_shows("once more leaves without it.");
	is("name", "Bell");
	type("s");
	key(K_ESC);
	ck_shows("once more leaves");
	is("name", "Bells");
	key(K_TAB);	/* what was said went off the screen */
	key(K_ESC);
	ck_shows("once more leaves");
	key(K_ESC);
	ck_assert(!is_open());
	ck_hides("is kept");
	app->start.state = folder;
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Drafts");
	TCase *tc = tcase_create("drafts");

	tcase_add_checked_fixture(tc, set_up, tear_down);
	tcase_add_test(tc, a_draft_comes_back_after_the_app_died);
	tcase_add_test(tc, leaving_keeps_a_draft_and_says_so);
	tcase_add_test(tc, what_equals_the_defaults_is_no_draft);
	tcase_add_test(tc, anew_means_the_defaults_and_no_draft);
	tcase_add_test(tc, a_draft_is_of_one_subject_and_one_logbook);
	tcase_add_test(tc, what_meant_today_stays_that_day);
	tcase_add_test(tc, a_draft_is_the_owners_alone);
	tcase_add_loop_test(tc, a_broken_draft_is_passed_over, 0, G_N_ELEMENTS(broken));
	tcase_add_loop_test(tc, what_cannot_be_kept_is_not_lost_without_a_word, 0, 2);
	suite_add_tcase(s, tc);
	return run_suite(s);
}
