#include "logbook/finding.h"

#include "open.h"

#include "logbook/due.h"
#include "logbook/photo.h"
#include "logbook/service.h"

#include <math.h>

/* A fitting of each sort, each with a look; the seal sinks the boat, the lamp costs money. */
static void
setup_boat(void)
{
	setup();
	who.data = data_folder();
	open_plain("Plain Jane");
	import_text(RECORD_FITTING, "path,title,below-waterline,fuel\nseal,Odd seal,yes,no\ntank,Odd tank,no,yes\n"
				    "lamp,Odd lamp,no,no\n");
	add_task("seal.look", "seal");
	add_task("tank.look", "tank");
	import_text(RECORD_TASK, "name,fitting,title,verb,place,mechanism,consequence,rule\n"
				 "lamp.look,lamp,Look at it,inspect,anywhere,none,costs,inspection\n"
				 "seal.renew,seal,Renew it,renew,anywhere,none,sinks,renewal\n");
}

static void
form_on(struct finding_form *form, const char *fitting, const char *words, gint64 date)
{
	struct fitting f;
	g_autoptr(GError) err = NULL;

	*form = (struct finding_form) { .measured = NULL };
	record_init(RECORD_FINDING, &form->what);
	form->what.boat = boat.id;
	ck_assert_msg(book_find_fitting(book, boat.id, fitting, &f, &err), "%s", err ? err->message : "?");
	form->what.fitting = f.id;
	record_clear(RECORD_FITTING, &f);
	form->what.words = g_strdup(words);
	form->what.date = date;
}

/* Record it; f is the record, to be cleared. */
static void
record_form(struct finding_form *form, struct finding *f)
{
	struct finding_proposal p;
	g_autoptr(GError) err = NULL;

	ck_assert_msg(book_finding(book, form, &p, &err), "%s", err ? err->message : "?");
	ck_assert_int_eq(form->what.proposed, p.level);
	finding_proposal_clear(&p);
	*f = form->what;
}

static void
found(const char *fitting, const char *words, gint64 date, struct finding *f)
{
	struct finding_form form;

	form_on(&form, fitting, words, date);
	record_form(&form, f);
}

static void
refused(struct finding_form *form, const char *because)
{
	struct finding_proposal p;
	g_autoptr(GError) err = NULL;
	g_autoptr(GArray) all = NULL;

	ck_assert(!book_finding(book, form, &p, &err));
	ck_assert_msg(strstr(err->message, because) != NULL, "%s", err->message);
	finding_proposal_clear(&p);
	record_clear(RECORD_FINDING, &form->what);
	all = book_findings(book, boat.id, TRUE, NULL);
	ck_assert_int_eq(all->len, 0);
}

static const struct { const char *says, *on, *words; enum level level; const char *raised; } raised[] = {
	{ "words alone give their level", "lamp", "pitted", LEVEL_WATCH, NULL },
	{ "below the waterline it is one up", "seal", "bent", LEVEL_HOLD, "below the waterline" },
	{ "and so it is where fuel is", "tank", "bent", LEVEL_HOLD, "it carries fuel" },
	{ "what nobody knows is to be mended", "lamp", "frobnicated", LEVEL_MEND, NULL },
	{ "and is raised like any other", "seal", "frobnicated", LEVEL_HOLD, "below the waterline" },
	{ "what was not seen holds where it can sink the boat", "seal", "could not see it", LEVEL_HOLD, "not inspected" },
	{ "in any words", "tank", "no access behind the panel", LEVEL_HOLD, "not inspected" },
	{ "but not where it costs money only", "lamp", "could not see it", LEVEL_MEND, NULL },
};

START_TEST(rules_raise_what_is_found)
{
	struct finding f;

	found(raised[_i].on, raised[_i].words, NONE, &f);
	ck_assert_msg(f.level == raised[_i].level, "%s: %s", raised[_i].says, word_of(&words_level, f.level));
	ck_assert_msg(raised[_i].raised ? f.raised && strstr(f.raised, raised[_i].raised) != NULL : !f.raised, "%s: %s",
		      raised[_i].says, f.raised ? f.raised : "not raised");
	ck_assert_int_eq(f.date, who.today);
	ck_assert_str_eq(f.who, "tester");
	record_clear(RECORD_FINDING, &f);
}
END_TEST

static const struct { const char *says, *then, *now, *measured_then, *measured_now; enum level level; } trends[] = {
	{ "a wetter word than before", "weeping", "seeping", NULL, NULL, LEVEL_MEND },
	{ "the same word again", "weeping", "weeping", NULL, NULL, LEVEL_WATCH },
	{ "a drier word", "seeping", "weeping", NULL, NULL, LEVEL_WATCH },
	{ "more play than before", "pitted", "pitted", "steering-play 1 mm", "steering-play 1.2 mm", LEVEL_MEND },
	{ "less play", "pitted", "pitted", "steering-play 1.2 mm", "steering-play 1 mm", LEVEL_WATCH },
	{ "less left of what less is worse of", "pitted", "pitted", "anode-left 90 %", "anode-left 80 %", LEVEL_MEND },
	{ "values of two kinds cannot be compared", "pitted", "pitted", "anode-left 90 %", "steering-play 1 mm", LEVEL_WATCH },
};

START_TEST(two_watches_of_which_the_second_is_worse_are_to_be_mended)
{
	struct finding_form form;
	struct finding first, second;

	form_on(&form, "lamp", trends[_i].then, day_from_ymd(2026, 6, 1));
	form.measured = trends[_i].measured_then;
	form.what.level = LEVEL_WATCH;
	record_form(&form, &first);
	form_on(&form, "lamp", trends[_i].now, day_from_ymd(2026, 9, 1));
	form.measured = trends[_i].measured_now;
	record_form(&form, &second);
	ck_assert_msg(second.level == trends[_i].level, "%s: %s", trends[_i].says, word_of(&words_level, second.level));
	ck_assert_int_eq(second.level == LEVEL_MEND, second.raised && strstr(second.raised, "watched before") != NULL);
	record_clear(RECORD_FINDING, &first);
	record_clear(RECORD_FINDING, &second);
}
END_TEST

START_TEST(the_owner_s_level_is_taken_and_the_proposed_one_kept)
{
	struct finding_form form;
	struct finding f;
	g_autofree char *story = NULL;

	form_on(&form, "seal", "bent", NONE);
	form.what.level = LEVEL_WATCH;
	record_form(&form, &f);
	ck_assert_int_eq(f.level, LEVEL_WATCH);
	ck_assert_int_eq(f.proposed, LEVEL_HOLD);
	story = finding_story(book, &f, TRUE, NULL);
	ck_assert_msg(strstr(story, "Proposed was hold; the owner lowered it") != NULL, "%s", story);
	record_clear(RECORD_FINDING, &f);
}
END_TEST

START_TEST(what_cannot_be_is_refused_and_nothing_is_kept)
{
	static const char *const nowhere[] = { "/nowhere/at/all.jpg", NULL };
	struct finding_form form;

	form_on(&form, "lamp", "bent", who.today + 1);
	refused(&form, "ahead of today");
	form_on(&form, "lamp", "bent", who.today);
	form.what.until = who.today - 1;
	refused(&form, "wrong way round");
	form_on(&form, "lamp", "  ", who.today);
	refused(&form, "can't be empty");
	form_on(&form, "lamp", "bent", who.today);
	form.what.fitting = NONE;
	refused(&form, "on what?");
	form_on(&form, "lamp", "bent", who.today);
	form.what.makes_due = g_strdup("lamp.polish");
	refused(&form, "lamp.polish");
	form_on(&form, "lamp", "bent", who.today);
	form.photos = nowhere;
	refused(&form, "can't be read");
	form_on(&form, "lamp", "bent", who.today);
	form.measured = "steering-play";
	refused(&form, "what it reads");
	form_on(&form, "lamp", "bent", who.today);
	form.measured = "anode-left 400 %";
	refused(&form, "measured: ");
}
END_TEST

START_TEST(a_reading_is_recorded_with_it_and_undone_with_it)
{
	struct finding_form form;
	struct finding f;
	struct book_entry e = { 0 };
	g_autoptr(GArray) readings = NULL, findings = NULL;
	g_autoptr(GError) err = NULL;

	form_on(&form, "lamp", "bent", NONE);
	form.measured = "steering-play 2 mm";
	record_form(&form, &f);
	readings = book_records(book, RECORD_MEASUREMENT, boat.id, NULL);
	ck_assert_int_eq(readings->len, 1);
	ck_assert_int_eq(((struct measurement *)(void *)readings->data)->id, f.measurement);
	ck_assert_double_eq(((struct measurement *)(void *)readings->data)->value, 2);
	ck_assert(book_undo(book, &e, &err));
	ck_assert_msg(strstr(e.what, "lamp found: bent") != NULL, "%s", e.what);
	book_entry_clear(&e);
	g_array_unref(readings);
	readings = book_records(book, RECORD_MEASUREMENT, boat.id, NULL);
	findings = book_findings(book, boat.id, TRUE, NULL);
	ck_assert_int_eq(readings->len, 0);
	ck_assert_int_eq(findings->len, 0);
	record_clear(RECORD_FINDING, &f);
}
END_TEST

/* Whether the task is for now because a finding asks. */
static gboolean
asked(const char *task)
{
	struct due_list *l = due_list_new();
	const struct due_ask ask = { who.today, NONE };
	gboolean is = FALSE;

	ck_assert(book_due(book, &boat, &ask, l, NULL));
	for (int i = 0; i < due_count(l); i++)
		if (!strcmp(due_at(l, i)->name, task))
			is = due_at(l, i)->n_found && due_at(l, i)->out.when == OPP_NOW;
	due_list_free(l);
	return is;
}

static void
did(const char *task, gint64 date, enum outcome outcome)
{
	struct service_form form = { .dated = TRUE };
	struct service_said s = { .why_not = NULL };
	struct task t;
	g_autoptr(GError) err = NULL;

	ck_assert(book_find_task(book, boat.id, task, &t, &err));
	record_init(RECORD_SERVICE, &form.what);
	record_init(RECORD_PART, &form.part);
	form.what.task = t.id;
	form.what.date = date;
	form.what.outcome = outcome;
	ck_assert_msg(book_did(book, &form, &s, &err), "%s", err ? err->message : "?");
	service_said_clear(&s);
	record_clear(RECORD_SERVICE, &form.what);
	record_clear(RECORD_PART, &form.part);
	record_clear(RECORD_TASK, &t);
}

START_TEST(what_it_makes_due_is_due_until_it_is_done)
{
	struct finding_form form;
	struct finding f;
	g_autoptr(GError) err = NULL;

	did("lamp.look", day_from_ymd(2026, 6, 1), OUTCOME_GOOD);
	form_on(&form, "seal", "bent", day_from_ymd(2026, 7, 1));
	form.what.makes_due = g_strdup("lamp.look seal.renew");
	record_form(&form, &f);
	ck_assert(asked("lamp.look") && asked("seal.renew"));
	ck_assert(!asked("seal.look"));
	did("lamp.look", day_from_ymd(2026, 7, 2), OUTCOME_BAD);
	ck_assert(asked("lamp.look"));
	did("lamp.look", day_from_ymd(2026, 7, 2), OUTCOME_GOOD);
	ck_assert(!asked("lamp.look") && asked("seal.renew"));
	did("seal.renew", day_from_ymd(2026, 7, 1), OUTCOME_RENEWED);
	ck_assert(!asked("seal.renew"));
	ck_assert_msg(book_mend(book, &f, day_from_ymd(2026, 7, 3), "dry", &err), "%s", err ? err->message : "?");
	ck_assert_int_ne(f.service, NONE);
	record_clear(RECORD_FINDING, &f);
}
END_TEST

START_TEST(mending_ends_the_asking_and_reopening_begins_it_again)
{
	struct finding_form form;
	struct finding f, again;
	g_autoptr(GArray) open = NULL;
	g_autofree char *key = NULL;
	g_autoptr(GError) err = NULL;

	form_on(&form, "seal", "bent", NONE);
	form.what.makes_due = g_strdup("lamp.look");
	record_form(&form, &f);
	ck_assert(!book_mend(book, &f, who.today, " ", &err) && strstr(err->message, "how was it left?"));
	g_clear_error(&err);
	ck_assert(!book_mend(book, &f, who.today - 1, "dry", &err));
	g_clear_error(&err);
	ck_assert(book_mend(book, &f, who.today, "dry", &err));
	ck_assert_int_eq(f.service, NONE);
	ck_assert(!asked("lamp.look"));
	open = book_findings(book, boat.id, FALSE, NULL);
	ck_assert_int_eq(open->len, 0);
	ck_assert(!book_mend(book, &f, who.today, "dry", &err) && strstr(err->message, "already"));
	key = book_key_text(f.id);
	ck_assert(book_find_finding(book, boat.id, key + 8, &again, NULL));
	ck_assert_str_eq(again.left_as, "dry");
	ck_assert(book_reopen(book, &again, NULL));
	ck_assert(asked("lamp.look"));
	ck_assert(book_drop_finding(book, &again, NULL));
	ck_assert(!asked("lamp.look"));
	record_clear(RECORD_FINDING, &again);
	record_clear(RECORD_FINDING, &f);
}
END_TEST

START_TEST(the_worst_comes_first_and_of_equals_the_oldest)
{
	static const char *const want[] = { "streaming", "bent old", "bent", "pitted" };
	struct finding f;
	g_autoptr(GArray) all = NULL;

	found("lamp", "pitted", day_from_ymd(2026, 5, 1), &f);
	record_clear(RECORD_FINDING, &f);
	found("lamp", "bent", day_from_ymd(2026, 6, 1), &f);
	record_clear(RECORD_FINDING, &f);
	found("lamp", "bent old", day_from_ymd(2026, 5, 1), &f);
	record_clear(RECORD_FINDING, &f);
	found("seal", "streaming", day_from_ymd(2026, 7, 1), &f);
	record_clear(RECORD_FINDING, &f);
	all = book_findings(book, boat.id, FALSE, NULL);
	ck_assert_int_eq(all->len, G_N_ELEMENTS(want));
	for (guint i = 0; i < all->len; i++)
		ck_assert_str_eq(((struct finding *)(void *)all->data)[i].words, want[i]);
}
END_TEST

START_TEST(seasons_begun_since_are_counted)
{
	static const struct { const char *from, *to, *mended; int season; const char *words; } lives[] = {
		{ "2024-06-01", "2024-11-01", NULL, 1, "" },		{ "2024-06-01", "2025-05-01", NULL, 2, "2nd season" },
		{ "2024-06-01", "2026-05-01", NULL, 3, "3rd season" },	{ "2024-04-15", "2024-05-01", NULL, 1, "" },
		{ "2024-06-01", "2026-05-01", "2025-05-01", 2, "2nd season" },
	};
	g_autoptr(GArray) seasons = NULL;
	char buf[16];

	import_text(RECORD_SEASON, "launch,haul-out\n2024-04-15,2024-10-01\n2025-04-15,2025-10-01\n2026-04-15,2026-10-01\n"
				   "2027-04-15,2027-10-01\n");
	seasons = book_records(book, RECORD_SEASON, boat.id, NULL);
	for (guint i = 0; i < G_N_ELEMENTS(lives); i++) {
		struct finding f = { .mended = NONE };
		gint64 to;

		ck_assert(day_parse(lives[i].from, NONE, &f.date, NULL) && day_parse(lives[i].to, NONE, &to, NULL));
		ck_assert(!lives[i].mended || day_parse(lives[i].mended, NONE, &f.mended, NULL));
		ck_assert_int_eq(finding_season(&f, seasons, to), lives[i].season);
		ck_assert_str_eq(finding_season_words(lives[i].season, buf), lives[i].words);
	}
	ck_assert_str_eq(finding_season_words(4, buf), "4th season");
	ck_assert_str_eq(finding_season_words(11, buf), "11th season");
	ck_assert_str_eq(finding_season_words(22, buf), "22nd season");
}
END_TEST

START_TEST(a_photo_is_known_by_its_bytes)
{
	/* FIPS 180-2, appendix B.1: of the three letters abc. */
	static const char abc[] = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
	g_autofree char *file = g_build_filename(folder, "seal.jpg", NULL);
	const char *const files[] = { file, NULL };
	struct finding_form form;
	struct finding f;
	g_autoptr(GArray) photos = NULL;
	const struct photo *p;

	ck_assert(g_file_set_contents(file, "abc", 3, NULL));
	form_on(&form, "seal", "bent", NONE);
	form.photos = files;
	record_form(&form, &f);
	photos = book_photos(book, f.id, NULL);
	ck_assert_int_eq(photos->len, 1);
	p = (const void *)photos->data;
	ck_assert_str_eq(p->digest, abc);
	ck_assert_int_eq(photo_state(p), PHOTO_AS_IT_WAS);
	ck_assert(g_file_set_contents(file, "abd", 3, NULL));
	ck_assert_int_eq(photo_state(p), PHOTO_CHANGED);
	g_remove(file);
	ck_assert_int_eq(photo_state(p), PHOTO_GONE);
	ck_assert(book_drop_finding(book, &f, NULL));
	record_clear(RECORD_FINDING, &f);
}
END_TEST

static const struct { const char *sentence, *path; } meant[] = {
	{ "odd seal weeping", "seal" }, { "The lamp flickers.", "lamp" }, { "seals wet", "seal" },
	{ "lamp beside the tank is out", NULL }, { "something rattles", NULL }, { "odd noise", NULL },
};

START_TEST(a_sentence_names_its_fitting_or_asks)
{
	g_autoptr(GPtrArray) near = g_ptr_array_new_with_free_func(g_free);
	g_autoptr(GError) err = NULL;
	struct fitting f;
	gboolean ok = book_fitting_meant(book, boat.id, meant[_i].sentence, near, &f, &err);

	ck_assert_int_eq(ok, meant[_i].path != NULL);
	if (ok)
		ck_assert_str_eq(f.path, meant[_i].path);
	else
		ck_assert(strstr(err->message, "on what?") != NULL);
	record_clear(RECORD_FITTING, &f);
}
END_TEST

START_TEST(a_correction_keeps_how_it_ended_and_its_photos)
{
	struct finding_form form;
	struct finding f, was;
	g_autoptr(GArray) all = NULL;

	found("lamp", "bent", day_from_ymd(2026, 6, 1), &was);
	ck_assert(book_mend(book, &was, day_from_ymd(2026, 6, 2), "straight", NULL));
	form_on(&form, "lamp", "bent at the foot", day_from_ymd(2026, 6, 1));
	form.what.id = was.id;
	record_form(&form, &f);
	all = book_findings(book, boat.id, TRUE, NULL);
	ck_assert_int_eq(all->len, 1);
	ck_assert_str_eq(((struct finding *)(void *)all->data)->words, "bent at the foot");
	ck_assert_str_eq(((struct finding *)(void *)all->data)->left_as, "straight");
	record_clear(RECORD_FINDING, &f);
	record_clear(RECORD_FINDING, &was);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("finding");
	TCase *tc = tcase_create("findings");

	tcase_add_checked_fixture(tc, setup_boat, teardown);
	tcase_add_loop_test(tc, rules_raise_what_is_found, 0, G_N_ELEMENTS(raised));
	tcase_add_loop_test(tc, two_watches_of_which_the_second_is_worse_are_to_be_mended, 0, G_N_ELEMENTS(trends));
	tcase_add_test(tc, the_owner_s_level_is_taken_and_the_proposed_one_kept);
	tcase_add_test(tc, what_cannot_be_is_refused_and_nothing_is_kept);
	tcase_add_test(tc, a_reading_is_recorded_with_it_and_undone_with_it);
	tcase_add_test(tc, what_it_makes_due_is_due_until_it_is_done);
	tcase_add_test(tc, mending_ends_the_asking_and_reopening_begins_it_again);
	tcase_add_test(tc, the_worst_comes_first_and_of_equals_the_oldest);
	tcase_add_test(tc, seasons_begun_since_are_counted);
	tcase_add_test(tc, a_photo_is_known_by_its_bytes);
	tcase_add_loop_test(tc, a_sentence_names_its_fitting_or_asks, 0, G_N_ELEMENTS(meant));
	tcase_add_test(tc, a_correction_keeps_how_it_ended_and_its_photos);
	suite_add_tcase(s, tc);
	return run_suite(s);
}
