#include "logbook/caution.h"

#include "open.h"

static void
setup_empty(void)
{
	setup();
	book = book_create(path, &who, NULL);
	ck_assert_ptr_nonnull(book);
}

/* Each word, and an authority by name that has to stand there. */
static const struct { const char *word, *authority; } named[] = {
	{ "alone", "manual" },
	{ "batteries", "ABYC E-10" },
	{ "carbon-monoxide", "coast guard's checklists" },
	{ "chemicals", "data sheet" },
	{ "disposal", "40 CFR 279" },
	{ "diving", "marina" },
	{ "fire", "33 CFR 175 subpart E" },
	{ "fuel-hose", "33 CFR 183.540" },
	{ "fuel-vapour", "33 CFR 183.610(f)" },
	{ "fuel-vapour", "33 CFR 183.620" },
	{ "fuel-vapour", "33 CFR 175.201" },
	{ "fuel-vapour", "46 CFR 25.40" },
	{ "hot-coolant", "manual" },
	{ "hydraulic-pressure", "hospital" },
	{ "ignition-protected", "33 CFR 183.410" },
	{ "launching", "yard" },
	{ "lifting-drive", "hoist" },
	{ "moving-parts", "manual" },
	{ "power-tools", "licensed electrician" },
	{ "propeller", "manual" },
	{ "shock-drowning", "NEC article 555" },
	{ "shore-power", "licensed electrician" },
	{ "stands", "yard's rules first" },
	{ "stop-and-call", "surveyor" },
	{ "trailer", "law of your state" },
};

START_TEST(each_caution_names_whom_to_defer_to)
{
	g_autofree char *unknown = NULL;
	g_autoptr(GError) err = NULL;
	g_autoptr(GPtrArray) all = caution_list(book, named[_i].word, &unknown, &err);
	const struct caution *c;

	ck_assert_msg(all && all->len == 1 && !unknown, "%s", named[_i].word);
	c = all->pdata[0];
	ck_assert_str_eq(c->word, named[_i].word);
	ck_assert_msg(strstr(c->authority, named[_i].authority) != NULL, "%s: %s", c->word, c->authority);
	ck_assert_msg(strlen(c->sentence) <= 110 && strlen(c->text) > strlen(c->sentence), "%s", c->word);
}
END_TEST

START_TEST(the_screen_gets_a_sentence_each_and_whom_to_defer_to)
{
	g_autofree char *words = caution_words(book, "propeller stands  propeller");

	ck_assert_str_eq(words, "Caution: Key out before hands come near the propeller; nobody near it when it can turn. "
				"A boat on stands can fall: chained stands on firm ground, nobody moves them but the yard. "
				"The maker's manual, local code and licensed technicians come first.");
	ck_assert_ptr_null(caution_words(book, NULL));
	ck_assert_ptr_null(caution_words(book, " "));
}
END_TEST

START_TEST(paper_gets_the_authority_of_each)
{
	g_autofree char *block = caution_block(book, "fuel-vapour hot-coolant");

	ck_assert(g_str_has_prefix(block, "Caution:\n- Petrol vapour explodes"));
	ck_assert_ptr_nonnull(strstr(block, "\n  First: 33 CFR 183.610(f)"));
	ck_assert_ptr_nonnull(strstr(block, "\n- Hot coolant scalds"));
	ck_assert(g_str_has_suffix(block, "come first.\n"));
	ck_assert_ptr_null(caution_block(book, ""));
}
END_TEST

START_TEST(an_unknown_word_is_named_and_the_others_stay)
{
	g_autofree char *words = caution_words(book, "sharks propeller ghosts"), *unknown = NULL;
	g_autoptr(GPtrArray) all = caution_list(book, "sharks propeller ghosts", &unknown, NULL);

	ck_assert_ptr_nonnull(strstr(words, "Key out"));
	ck_assert_ptr_nonnull(strstr(words, "sharks, ghosts: no caution of that name"));
	ck_assert_uint_eq(all->len, 1);
	ck_assert_str_eq(unknown, "sharks, ghosts");
}
END_TEST

START_TEST(a_file_that_cannot_be_read_is_told_instead_of_the_caution)
{
	g_autofree char *words = NULL, *block = NULL;

	who.data = folder;
	reopen(BOOK_WRITE);
	words = caution_words(book, "propeller");
	block = caution_block(book, "propeller");
	ck_assert_ptr_nonnull(strstr(words, "propeller cannot be told: "));
	ck_assert_ptr_nonnull(strstr(words, "cautions.csv"));
	ck_assert_ptr_nonnull(strstr(words, "The maker's manual"));
	ck_assert_ptr_nonnull(strstr(block, "cautions.csv"));
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("Cautions are read from their file, and never left out without a word");
	TCase *tc = tcase_create("caution");

	tcase_add_checked_fixture(tc, setup_empty, teardown);
	tcase_add_loop_test(tc, each_caution_names_whom_to_defer_to, 0, G_N_ELEMENTS(named));
	tcase_add_test(tc, the_screen_gets_a_sentence_each_and_whom_to_defer_to);
	tcase_add_test(tc, paper_gets_the_authority_of_each);
	tcase_add_test(tc, an_unknown_word_is_named_and_the_others_stay);
	tcase_add_test(tc, a_file_that_cannot_be_read_is_told_instead_of_the_caution);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
