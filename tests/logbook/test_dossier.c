#include "logbook/dossier.h"

#include "logbook/corrections.h"
#include "logbook/finding.h"
#include "logbook/fitting_history.h"
#include "logbook/outing.h"
#include "logbook/year.h"
#include "open.h"

/* A boat without a catalogue, with one task. */
static void
open_tern(void)
{
	open_plain("Tern");
	import_text(RECORD_FITTING, "path,title,variants\nengine,Engine,plain sealed\nengine/belt,Belt,\nhull,Hull,\n");
	import_text(RECORD_TASK, "name,fitting,title,verb,place,mechanism,consequence,rule,proof\n"
				 "belt.renew,engine/belt,Renew the belt,renew,anywhere,rubber,costs,renewal,no squeal\n");
}

static char *
dossier(const struct dossier_form *form)
{
	g_autofree char *file = g_build_filename(folder, "dossier.txt", NULL);
	struct dossier_out out = { .text = file };
	GError *err = NULL;
	gboolean sound = FALSE;
	char *text;

	ck_assert_msg(book_dossier(book, &boat, form, &out, &sound, &err), "%s", err ? err->message : "?");
	ck_assert(sound);
	ck_assert(g_file_get_contents(file, &text, NULL, NULL));
	g_remove(file);
	for (char *p = text; *p; p++)
		if (*p == '\n' || *p == '\f')
			*p = ' ';
	for (char *p = text, *q = text; (*q = *p); p++)
		if (*p != ' ' || p[1] != ' ')
			q++;
	return text;
}

static void
ck_says(const char *text, const char *words)
{
	ck_assert_msg(strstr(text, words) != NULL, "\"%s\" is not in: %s", words, text);
}

static void
outing(int month, int mday, gint64 hours, gint64 reading)
{
	struct outing_form f = { .boat = boat.id, .instead_of = NONE, .n_shares = 1, .share = { { NULL, hours, reading } } };
	struct outing_said said = { 0 };
	g_autoptr(GError) err = NULL;

	record_init(RECORD_OUTING, &f.what);
	f.what.date = day_from_ymd(2026, month, mday);
	ck_assert_msg(book_outing(book, &f, &said, &err), "%s", err ? err->message : "?");
	outing_said_clear(&said);
	record_clear(RECORD_OUTING, &f.what);
}

static struct corrections
corrections(void)
{
	struct corrections c;
	g_autoptr(GError) err = NULL;

	ck_assert_msg(book_corrections(book, &c, &err), "%s", err ? err->message : "?");
	return c;
}

START_TEST(a_name_is_the_same_wherever_it_stands)
{
	g_autofree char *ann = NULL, *ann_lee = NULL, *place = NULL, *text = NULL, *her = NULL, *stranger = NULL;
	struct names *n;

	open_tern();
	import_text(RECORD_SERVICE, "task,date,outcome,who\nbelt.renew,2026-02-01,renewed,Ann\n"
				    "belt.renew,2026-02-02,renewed,Ann Lee\nbelt.renew,2026-02-03,renewed,owner\n");
	import_text(RECORD_STAY, "date,stand,place\n2026-01-02,ashore,Mud (North)\n");
	n = names_new(book, NULL);
	ck_assert_ptr_nonnull(n);
	ann = names_person(n, "Ann");
	ann_lee = names_person(n, "Ann Lee");
	place = names_place(n, "Mud (North)");
	text = names_in(n, "Ann Lee and Ann at Mud (North), with Tern; Annette stays, the owner too");
	her = g_strdup_printf("%s and %s at %s, with the boat; Annette stays, the owner too", ann_lee, ann, place);
	ck_assert_str_ne(ann, ann_lee);
	ck_assert_str_eq(text, her);
	stranger = names_person(n, "Nobody Yet");
	ck_assert_ptr_null(stranger);
	names_free(n);
}
END_TEST

START_TEST(without_names_asked_for_texts_are_as_they_are)
{
	g_autofree char *who_did = names_person(NULL, "Ann"), *text = names_in(NULL, "Ann"), *nothing = names_in(NULL, NULL);

	ck_assert_str_eq(who_did, "Ann");
	ck_assert_str_eq(text, "Ann");
	ck_assert_ptr_null(nothing);
}
END_TEST

START_TEST(what_ended_or_was_filled_in_is_no_correction)
{
	struct finding_form f = { 0 };
	struct finding_proposal p;
	struct stay s;
	struct fitting hull;
	struct corrections c;

	open_tern();
	ck_assert(book_find_fitting(book, boat.id, "hull", &hull, NULL));
	record_init(RECORD_FINDING, &f.what);
	f.what.fitting = hull.id;
	record_clear(RECORD_FITTING, &hull);
	f.what.boat = boat.id;
	f.what.words = g_strdup("crack");
	f.what.date = who.today;
	f.what.level = LEVEL_WATCH;
	ck_assert(book_finding(book, &f, &p, NULL));
	ck_assert(book_mend(book, &f.what, who.today, "filled", NULL));
	finding_proposal_clear(&p);
	record_clear(RECORD_FINDING, &f.what);
	for (int k = 0; k < 2; k++) {
		record_init(RECORD_STAY, &s);
		s.boat = boat.id;
		s.date = who.today - 20 + 5 * k;
		s.stand = STAND_ASHORE;
		ck_assert(book_stay(book, &s, NULL));
		record_clear(RECORD_STAY, &s);
	}
	ck_assert(book_season(book, boat.id, day_from_ymd(2027, 4, 1), NONE, TRUE, NULL));
	ck_assert(book_season(book, boat.id, day_from_ymd(2027, 4, 9), NONE, TRUE, NULL));
	c = corrections();
	for (int r = 0; r < RECORD_COUNT; r++)
		ck_assert_msg(!c.altered[r] && !c.removed[r], "%s", record_type((enum record)r)->name);
	ck_assert_int_eq(c.undone, 0);
}
END_TEST

START_TEST(hours_that_follow_from_a_reading_are_no_correction)
{
	struct corrections c;

	open_tern();
	outing(6, 10, NONE, 112 * H);
	outing(6, 5, NONE, 105 * H);
	c = corrections();
	ck_assert_int_eq(c.altered[RECORD_OUTING], 0);
	ck_assert_int_eq(c.late[RECORD_OUTING], 2);
}
END_TEST

START_TEST(what_was_corrected_taken_out_or_taken_back_is_counted)
{
	g_autoptr(GArray) all = NULL;
	struct outing *first;
	struct book_entry e = { 0 };
	struct corrections c;

	open_tern();
	outing(11, 10, 2 * H, NONE);
	outing(11, 11, 3 * H, NONE);
	outing(11, 12, 4 * H, NONE);
	ck_assert(book_undo(book, &e, NULL));
	book_entry_clear(&e);
	all = book_records(book, RECORD_OUTING, boat.id, NULL);
	ck_assert_int_eq(all->len, 2);
	first = (void *)all->data;
	{
		struct outing_form f = { .boat = boat.id, .instead_of = first->id, .n_shares = 1,
					 .share = { { NULL, 5 * H, NONE } } };
		struct outing_said said = { 0 };

		record_init(RECORD_OUTING, &f.what);
		f.what.date = first->date;
		ck_assert(book_outing(book, &f, &said, NULL));
		outing_said_clear(&said);
	}
	ck_assert(book_drop_outing(book, first[1].id, NULL));
	c = corrections();
	ck_assert_int_eq(c.undone, 1);
	ck_assert_int_eq(c.altered[RECORD_OUTING], 1);
	ck_assert_int_eq(c.removed[RECORD_OUTING], 1);
	ck_assert_int_eq(c.soon[RECORD_OUTING], 2);
	ck_assert_int_eq(c.late[RECORD_OUTING], 0);
}
END_TEST

START_TEST(what_was_brought_back_is_not_counted_as_taken_back)
{
	struct book_entry e = { 0 };

	open_tern();
	outing(11, 10, 2 * H, NONE);
	ck_assert(book_undo(book, &e, NULL));
	book_entry_clear(&e);
	ck_assert(book_redo(book, &e, NULL));
	book_entry_clear(&e);
	ck_assert_int_eq(corrections().undone, 0);
	ck_assert_int_eq(corrections().soon[RECORD_OUTING], 1);
}
END_TEST

START_TEST(without_a_season_on_record_the_years_are_told)
{
	const struct dossier_form form = { .since = NONE };
	g_autofree char *text = NULL;

	open_tern();
	outing(6, 10, 2 * H, NONE);
	outing(7, 10, H / 2, NONE);
	text = dossier(&form);
	ck_says(text, "2026, no season on record 2 outings; main 2.5 h");
	ck_says(text, "before this log: 100 h");
}
END_TEST

START_TEST(what_nobody_knows_is_said)
{
	const struct dossier_form form = { .since = NONE };
	g_autofree char *text = NULL;

	open_tern();
	import_text(RECORD_PART, "fitting,what\nengine/belt,V-belt\n");
	import_text(RECORD_SERVICE, "task,date,outcome,cost\nbelt.renew,2026-02-01,claimed,\n");
	text = dossier(&form);
	ck_says(text, "Which design it is: Engine.");
	ck_says(text, "When it was fitted: V-belt (Belt).");
	ck_says(text, "nobody knows when, fitted: V-belt");
	ck_says(text, "Of 1 service on record 1 was only told by somebody (claimed), of 1 the proof that the work asks for is not "
		      "on record");
	ck_says(text, "1 Feb 2026, renew: claimed; no proof");
	ck_says(text, "0 services have a cost on record, 1 has none: what those cost is not known.");
	ck_says(text, "Nothing is on record of: Hull.");
}
END_TEST

START_TEST(a_dossier_changes_nothing)
{
	const struct dossier_form form = { NONE, TRUE, TRUE, TRUE };
	g_autofree char *text = NULL, *before = NULL, *after = NULL;
	gint64 first = NONE, last = NONE, at;

	open_tern();
	ck_assert(book_entry_hash(book, &first, &at, &before, NULL));
	text = dossier(&form);
	ck_says(text, before);
	ck_assert(book_entry_hash(book, &last, &at, &after, NULL));
	ck_assert_int_eq(first, last);
	ck_assert_str_eq(before, after);
	outing(11, 10, 2 * H, NONE); /* the logbook can be written to again */
}
END_TEST

START_TEST(another_boats_story_is_not_told)
{
	const struct dossier_form form = { NONE, TRUE, FALSE, FALSE };
	g_autofree char *text = NULL;

	open_tern();
	open_plain("Plover");
	import_text(RECORD_FITTING, "path,title\nmast,Mast\n");
	text = dossier(&form);
	ck_says(text, "Mast");
	ck_assert_ptr_null(strstr(text, "Belt"));
	ck_assert_ptr_null(strstr(text, "Tern"));
	ck_assert_ptr_null(strstr(text, "Plover"));
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("The dossier");
	TCase *tc = tcase_create("the whole story");

	tcase_add_checked_fixture(tc, setup, teardown);
	tcase_add_test(tc, a_name_is_the_same_wherever_it_stands);
	tcase_add_test(tc, without_names_asked_for_texts_are_as_they_are);
	tcase_add_test(tc, what_ended_or_was_filled_in_is_no_correction);
	tcase_add_test(tc, hours_that_follow_from_a_reading_are_no_correction);
	tcase_add_test(tc, what_was_corrected_taken_out_or_taken_back_is_counted);
	tcase_add_test(tc, what_was_brought_back_is_not_counted_as_taken_back);
	tcase_add_test(tc, without_a_season_on_record_the_years_are_told);
	tcase_add_test(tc, what_nobody_knows_is_said);
	tcase_add_test(tc, a_dossier_changes_nothing);
	tcase_add_test(tc, another_boats_story_is_not_told);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
