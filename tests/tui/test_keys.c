/* The table of keys: nothing in it contradicts the rest, and the manual has all of it. */
#include "tui/keys.h"

#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const enum act harmful[] = { ACT_DROP, ACT_QUIT };

static gboolean
is_harmful(enum act act)
{
	for (guint i = 0; i < G_N_ELEMENTS(harmful); i++)
		if (harmful[i] == act)
			return TRUE;
	return FALSE;
}

START_TEST(no_key_means_two_things_in_one_view)
{
	for (int i = 0; i < key_table_length; i++)
		for (int k = 0; k < i; k++)
			for (int x = 0; x < 9; x++) {
				gunichar key = key_table[i].key[x / 3];
				char name[8];

				if (key && key == key_table[k].key[x % 3])
					ck_assert_msg(!(key_table[i].where & key_table[k].where), "%s", key_words(key, name));
			}
}
END_TEST

START_TEST(no_slip_of_shift_does_harm)
{
	for (unsigned where = 1; where <= IN_STORES; where <<= 1)
		for (gunichar c = 'a'; c <= 'z'; c++) {
			enum act small = key_act(c, where), large = key_act(c - 32, where);

			if (small != ACT_NONE && large != ACT_NONE)
				ck_assert_msg(is_harmful(small) == is_harmful(large), "%c", (char)c);
		}
}
END_TEST

START_TEST(escape_never_ends_the_program_and_enter_never_destroys)
{
	for (unsigned where = 1; where <= IN_STORES; where <<= 1) {
		ck_assert(!is_harmful(key_act(K_ESC, where)));
		ck_assert(!is_harmful(key_act(K_ENTER, where)));
	}
}
END_TEST

START_TEST(every_list_moves_helps_and_goes_back)
{
	static const struct { gunichar key; enum act act; } all[] = {
		{ K_UP, ACT_UP }, { 'j', ACT_DOWN }, { K_PAGE_DOWN, ACT_PAGE_DOWN }, { 'G', ACT_LAST }, { '?', ACT_HELP },
		{ K_F1, ACT_HELP }, { 'q', ACT_QUIT }, { K_ESC, ACT_BACK }, { 'u', ACT_UNDO }, { K_CTRL('r'), ACT_REDO },
		{ K_CTRL('z'), ACT_SUSPEND }, { ':', ACT_COMMAND }, { '/', ACT_FILTER },
	};

	for (unsigned where = 1; where <= IN_STORES; where <<= 1)
		for (guint i = 0; (where & IN_LISTS) && i < G_N_ELEMENTS(all); i++)
			ck_assert_int_eq(key_act(all[i].key, where), all[i].act);
}
END_TEST

/* Names of the views as the page has them, in the order of IN_DUE, ... */
static const char *const view[] = {
	"due", "outings", "boat", "seasons and stays", "happenings", "plan", "history", "pages to read", "forms", "boats",
	"season lists", "findings", "launch check", "cautions", "jobs", "job", "what a job is for", "lines",
	"yard sheets", "yard reading", "stores",
};

static char *
manual(void)
{
	const char *top = g_getenv("top_srcdir");
	g_autofree char *path = g_build_filename(top ? top : ".", "man", "splitpin-keys.7", NULL), *text = NULL;

	ck_assert_msg(g_file_get_contents(path, &text, NULL, NULL), "%s", path);
	return g_steal_pointer(&text);
}

static void
add_views(GString *out, unsigned where)
{
	const char *before = "";

	for (guint i = 0; i < G_N_ELEMENTS(view); i++)
		if (where & 1u << i) {
			g_string_append_printf(out, "%s%s", before, view[i]);
			before = ", ";
		}
}

static int
views_in(unsigned where)
{
	int n = 0;

	for (guint i = 0; i < G_N_ELEMENTS(view); i++)
		n += (where >> i) & 1;
	return n;
}

/* Where a key holds, as the page says it: nothing when everywhere, or in forms, which have a table of their own. */
static char *
where_words(const struct key_binding *b)
{
	GString *out = g_string_new(NULL);
	/* What holds in every list and in forms holds while a line is typed, too. */
	unsigned where = b->where & ~(unsigned)(b->where == IN_LINE ? 0 : IN_FORM | IN_LINE);
	unsigned all = where & IN_TEXT ? IN_ALL : IN_LISTS, not = all & ~where;

	if (!where || (where & IN_ALL) == IN_ALL)
		return g_string_free(out, FALSE);
	if (views_in(not) < 4) {
		g_string_append_printf(out, "%s%s", all == IN_ALL ? "Everywhere" : "In every list", not ? " but in " : "");
		add_views(out, not);
	} else {
		g_string_append(out, "In ");
		add_views(out, where);
	}
	return g_string_free(g_string_append(out, ".\n"), FALSE);
}

/* A row of the table as the page has it: its keys, its sentences, and where it holds. */
static char *
entry_of(const struct key_binding *b)
{
	g_auto(GStrv) sentence = g_strsplit(b->help, ". ", -1);
	g_autofree char *help = g_strjoinv(".\n", sentence), *where = where_words(b);
	GString *out = g_string_new(".It");
	char name[8];

	for (guint k = 0; k < G_N_ELEMENTS(b->key) && b->key[k]; k++)
		g_string_append_printf(out, " %s", key_words(b->key[k], name));
	g_string_append_printf(out, "\n%s\n%s", help, where);
	return g_string_free(out, FALSE);
}

START_TEST(the_manual_has_every_key_with_its_sentence_and_where_it_holds)
{
	const struct key_binding *b = &key_table[_i];
	g_autofree char *page = manual(), *entry = entry_of(b);
	const char *forms = strstr(page, ".Ss Forms"), *found = strstr(page, entry);

	ck_assert_ptr_nonnull(forms);
	ck_assert_msg(found != NULL, "splitpin-keys(7) has no entry\n%s", entry);
	found += strlen(entry);
	ck_assert_msg(!strncmp(found, ".It", 3) || !strncmp(found, ".El", 3), "splitpin-keys(7) says more than\n%s", entry);
	ck_assert_msg((found > forms) == (b->where == IN_FORM), "splitpin-keys(7) has this in the other table:\n%s", entry);
}
END_TEST

/* The table's rows and nothing else stand in the two lists. */
START_TEST(the_manual_has_no_key_that_is_not_there)
{
	g_autofree char *page = manual();
	const char *p = strstr(page, ".Ss Keys"), *end = strstr(page, ".Ss Palette");
	int items = 0;

	ck_assert(p && end && p < end);
	while ((p = strstr(p, "\n.It")) && p < end) {
		items++;
		p++;
	}
	ck_assert_int_eq(items, key_table_length);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Keys");
	TCase *tc = tcase_create("keys");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_test(tc, no_key_means_two_things_in_one_view);
	tcase_add_test(tc, no_slip_of_shift_does_harm);
	tcase_add_test(tc, escape_never_ends_the_program_and_enter_never_destroys);
	tcase_add_test(tc, every_list_moves_helps_and_goes_back);
	tcase_add_loop_test(tc, the_manual_has_every_key_with_its_sentence_and_where_it_holds, 0, key_table_length);
	tcase_add_test(tc, the_manual_has_no_key_that_is_not_there);
	suite_add_tcase(s, tc);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
