#include "logbook/removal_parse.h"

#include <check.h>
#include <stdlib.h>
#include <string.h>

/* As people type them: count, what, size, as found, orientation, tray; NULL: not said. */
static const struct {
	const char *line;
	enum removal_kind kind;
	gint64 count;
	const char *what, *size, *found, *way, *tray;
	enum removal_state state;
} lines[] = {
	{ "6 bolts 5/8 tray 2", REMOVAL_FASTENER, 6, "bolts", "5/8 in", NULL, NULL, "tray 2", REMOVAL_REUSE },
	{ "2x cotter pin bag 3 renew", REMOVAL_RETAINER, 2, "cotter pin", NULL, NULL, NULL, "bag 3", REMOVAL_RENEW },
	{ "trim angle 3/8 in proud", REMOVAL_SETTING, NONE, "trim angle", NULL, "3/8 in proud", NULL, NULL, REMOVAL_REUSE },
	{ "shift lever neutral", REMOVAL_SETTING, NONE, "shift lever", NULL, "neutral", NULL, NULL, REMOVAL_REUSE },
	{ "washer 3 thick side out tray 1", REMOVAL_FASTENER, NONE, "washer 3", NULL, NULL, "thick side out", "tray 1",
	  REMOVAL_REUSE },
	{ "retainer shift pin missing", REMOVAL_RETAINER, NONE, "retainer shift pin", NULL, NULL, NULL, NULL, REMOVAL_MISSING },
	{ "4 bolts M8x1.25 in tray 2", REMOVAL_FASTENER, 4, "bolts", "M8x1.25", NULL, NULL, "tray 2", REMOVAL_REUSE },
	{ "6 nuts 5/8 in tray 2", REMOVAL_FASTENER, 6, "nuts", "5/8 in", NULL, NULL, "tray 2", REMOVAL_REUSE },
	{ "6 nuts, 5/8\" deep socket, tray 2", REMOVAL_FASTENER, 6, "nuts, deep socket", "5/8 in", NULL, NULL, "tray 2",
	  REMOVAL_REUSE },
	{ "6 NUTS 5/8 Tray 2", REMOVAL_FASTENER, 6, "NUTS", "5/8 in", NULL, NULL, "Tray 2", REMOVAL_REUSE },
	{ "tray 2: 6 nuts 5/8", REMOVAL_FASTENER, 6, "nuts", "5/8 in", NULL, NULL, "tray 2", REMOVAL_REUSE },
	{ "clamp screw 4 o'clock", REMOVAL_FASTENER, NONE, "clamp screw", NULL, "4 o'clock", NULL, NULL, REMOVAL_REUSE },
	{ "bellows clamp at 4 o'clock", REMOVAL_SETTING, NONE, "bellows clamp", NULL, "4 o'clock", NULL, NULL, REMOVAL_REUSE },
	{ "bellows clamp 4 o\u2019clock", REMOVAL_SETTING, NONE, "bellows clamp", NULL, "4 o'clock", NULL, NULL, REMOVAL_REUSE },
	{ "1 drain plug 3/8 bag", REMOVAL_PLUG, 1, "drain plug", "3/8 in", NULL, NULL, "bag", REMOVAL_REUSE },
	{ "drain plugs bag 2", REMOVAL_PLUG, NONE, "drain plugs", NULL, NULL, NULL, "bag 2", REMOVAL_REUSE },
	{ "2 spark plugs", REMOVAL_PART, 2, "spark plugs", NULL, NULL, NULL, NULL, REMOVAL_REUSE },
	{ "speedo hose", REMOVAL_PART, NONE, "speedo hose", NULL, NULL, NULL, NULL, REMOVAL_REUSE },
	{ "cable end 2 1/4 in", REMOVAL_SETTING, NONE, "cable end", NULL, "2 1/4 in", NULL, NULL, REMOVAL_REUSE },
	{ "cable barrel 13 mm", REMOVAL_SETTING, NONE, "cable barrel", NULL, "13 mm", NULL, NULL, REMOVAL_REUSE },
	{ "gear forward", REMOVAL_SETTING, NONE, "gear", NULL, "forward", NULL, NULL, REMOVAL_REUSE },
	{ "trim full down", REMOVAL_SETTING, NONE, "trim", NULL, "full down", NULL, NULL, REMOVAL_REUSE },
	{ "seacock is shut", REMOVAL_SETTING, NONE, "seacock", NULL, "shut", NULL, NULL, REMOVAL_REUSE },
	{ "grease hole \"2 o'clock, seen from aft\"",
	  REMOVAL_SETTING, NONE, "grease hole", NULL, "2 o'clock, seen from aft", NULL, NULL,
	  REMOVAL_REUSE },
	{ "grease hole found at 2 o'clock", REMOVAL_SETTING, NONE, "grease hole", NULL, "2 o'clock", NULL, NULL, REMOVAL_REUSE },
	{ "12 deg trim", REMOVAL_SETTING, NONE, "trim", NULL, "12 deg", NULL, NULL, REMOVAL_REUSE },
	{ "trim 12\u00b0 down", REMOVAL_SETTING, NONE, "trim", NULL, "12 deg down", NULL, NULL, REMOVAL_REUSE },
	{ "idle screw 2 turns out", REMOVAL_FASTENER, NONE, "idle screw", NULL, "2 turns out", NULL, NULL, REMOVAL_REUSE },
	{ "anode 75%", REMOVAL_SETTING, NONE, "anode", NULL, "75 %", NULL, NULL, REMOVAL_REUSE },
	{ "3/8-16 stud 2 threads proud", REMOVAL_FASTENER, NONE, "stud", "3/8-16", "2 threads proud", NULL, NULL, REMOVAL_REUSE },
	{ "thrust washer bevel forward", REMOVAL_FASTENER, NONE, "thrust washer", NULL, NULL, "bevel forward", NULL,
	  REMOVAL_REUSE },
	{ "lip facing aft seal", REMOVAL_PART, NONE, "seal", NULL, NULL, "lip facing aft", NULL, REMOVAL_REUSE },
	{ "spacer upside down", REMOVAL_PART, NONE, "spacer", NULL, NULL, "upside down", NULL, REMOVAL_REUSE },
	{ "impeller housing arrow forward", REMOVAL_PART, NONE, "impeller housing", NULL, NULL, "arrow forward", NULL,
	  REMOVAL_REUSE },
	{ "6 lock washers", REMOVAL_FASTENER, 6, "lock washers", NULL, NULL, NULL, NULL, REMOVAL_REUSE },
	{ "tab washer propeller nut renew", REMOVAL_RETAINER, NONE, "tab washer propeller nut", NULL, NULL, NULL, NULL,
	  REMOVAL_RENEW },
	{ "1 cotter 1/8 x 1-1/2 bag 1 renew", REMOVAL_RETAINER, 1, "cotter", "1/8 x 1-1/2 in", NULL, NULL, "bag 1",
	  REMOVAL_RENEW },
	{ "4 bolts M8 x 30 tray 2", REMOVAL_FASTENER, 4, "bolts", "M8 x 30", NULL, NULL, "tray 2", REMOVAL_REUSE },
	{ "4 x bolts 3/8 x 2 in", REMOVAL_FASTENER, 4, "bolts", "3/8 x 2 in", NULL, NULL, NULL, REMOVAL_REUSE },
	{ "1 propeller nut, tray 1, finger tight", REMOVAL_FASTENER, 1, "propeller nut, finger tight", NULL, NULL, NULL, "tray 1",
	  REMOVAL_REUSE },
	{ "1 propeller nut 1-1/16", REMOVAL_FASTENER, 1, "propeller nut", "1-1/16 in", NULL, NULL, NULL, REMOVAL_REUSE },
	{ "10mm bolt x4", REMOVAL_FASTENER, 4, "bolt", "10 mm", NULL, NULL, NULL, REMOVAL_REUSE },
	{ "10 mm bolt", REMOVAL_FASTENER, NONE, "bolt", "10 mm", NULL, NULL, NULL, REMOVAL_REUSE },
	{ "two trim pins", REMOVAL_PART, 2, "trim pins", NULL, NULL, NULL, NULL, REMOVAL_REUSE },
	{ "shaft coupling 6 bolts marked with paint",
	  REMOVAL_FASTENER, 6, "shaft coupling bolts marked with paint", NULL, NULL, NULL, NULL,
	  REMOVAL_REUSE },
	{ "circlip bearing carrier ears up bag 7",
	  REMOVAL_RETAINER, NONE, "circlip bearing carrier", NULL, NULL, "ears up", "bag 7",
	  REMOVAL_REUSE },
	{ "e-ring shift rod tray A", REMOVAL_RETAINER, NONE, "e-ring shift rod", NULL, NULL, NULL, "tray A", REMOVAL_REUSE },
	{ "hose clips 2x", REMOVAL_PART, 2, "hose clips", NULL, NULL, NULL, NULL, REMOVAL_REUSE },
	{ "1 split pin jar 4", REMOVAL_RETAINER, 1, "split pin", NULL, NULL, NULL, "jar 4", REMOVAL_REUSE },
	{ "2 washers left over", REMOVAL_FASTENER, 2, "washers", NULL, NULL, NULL, NULL, REMOVAL_EXTRA },
	{ "missing as found: cotter of shift joint", REMOVAL_RETAINER, NONE, "cotter of shift joint", NULL, NULL, NULL, NULL,
	  REMOVAL_MISSING },
	{ "gasket new", REMOVAL_PART, NONE, "gasket", NULL, NULL, NULL, NULL, REMOVAL_RENEW },
	{ "hose photographed IMG_0042.jpg", REMOVAL_PART, NONE, "hose photographed IMG_0042.jpg", NULL, NULL, NULL, NULL,
	  REMOVAL_REUSE },
	{ "impeller vanes bent clockwise", REMOVAL_PART, NONE, "impeller vanes bent clockwise", NULL, NULL, NULL, NULL,
	  REMOVAL_REUSE },
	{ "starboard trim pin cap", REMOVAL_PART, NONE, "starboard trim pin cap", NULL, NULL, NULL, NULL, REMOVAL_REUSE },
	{ "2x", REMOVAL_PART, 2, NULL, NULL, NULL, NULL, NULL, REMOVAL_REUSE },
};

static void
same(const char *what, const char *got, const char *want, const char *line)
{
	ck_assert_msg(!g_strcmp0(got, want), "%s: %s is \"%s\", not \"%s\"", line, what, got ? got : "-", want ? want : "-");
}

START_TEST(a_line_is_understood_as_people_mean_it)
{
	const char *line = lines[_i].line;
	struct removal r;
	g_autoptr(GError) err = NULL;

	record_init(RECORD_REMOVAL, &r);
	ck_assert_msg(removal_parse(line, &r, &err), "%s: %s", line, err ? err->message : "?");
	same("kind", word_of(&words_removal_kind, r.kind), word_of(&words_removal_kind, lines[_i].kind), line);
	ck_assert_msg(r.count == lines[_i].count, "%s: count %d", line, (int)r.count);
	same("what", r.what, lines[_i].what, line);
	same("size", r.size, lines[_i].size, line);
	same("as found", r.as_found, lines[_i].found, line);
	same("orientation", r.orientation, lines[_i].way, line);
	same("tray", r.tray, lines[_i].tray, line);
	same("state", word_of(&words_removal_state, r.state), word_of(&words_removal_state, lines[_i].state), line);
	record_clear(RECORD_REMOVAL, &r);
}
END_TEST

/* Words that only tell where a part of the line begins; what they begin is kept. */
static gboolean
is_mark(const char *word)
{
	static const char *const marks[] = { "in", "at", "found", "is", "x", "missing", "as", "left", "over",
					     "renew", "new", NULL };

	return g_strv_contains(marks, word);
}

START_TEST(no_word_is_lost)
{
	g_autofree char *plain = g_ascii_strdown(lines[_i].line, -1), *understood = NULL, *low = NULL;
	g_auto(GStrv) word = g_strsplit_set(plain, " ,:\"", -1);
	struct removal r;

	record_init(RECORD_REMOVAL, &r);
	ck_assert(removal_parse(lines[_i].line, &r, NULL));
	understood = removal_understood(&r);
	low = g_ascii_strdown(understood, -1);
	for (int i = 0; word[i]; i++)
		if (*word[i] && g_ascii_isalpha(*word[i]) && g_str_is_ascii(word[i]) && !is_mark(word[i])
		    && g_strcmp0(word[i], "two") && word[i][1] && !g_regex_match_simple("^x[0-9]", word[i], 0, 0))
			ck_assert_msg(strstr(low, word[i]) != NULL, "%s: %s is not in \"%s\"", lines[_i].line, word[i], low);
	record_clear(RECORD_REMOVAL, &r);
}
END_TEST

static const char *const bad[] = { "",	 "   ", " , ", "\xff\xfe", "-3 nuts", "99999999999 nuts", "6 6 nuts", "1e3 nuts", NULL };

START_TEST(what_is_no_line_is_refused)
{
	GString *many = g_string_new(NULL);
	struct removal r;

	for (int i = 0; bad[i]; i++) {
		g_autoptr(GError) err = NULL;

		record_init(RECORD_REMOVAL, &r);
		ck_assert_msg(!removal_parse(bad[i], &r, &err) && err && *err->message, "%s", bad[i]);
		record_clear(RECORD_REMOVAL, &r);
	}
	for (int i = 0; i < 100; i++)
		g_string_append(many, "bolt ");
	record_init(RECORD_REMOVAL, &r);
	ck_assert(!removal_parse(many->str, &r, NULL));
	record_clear(RECORD_REMOVAL, &r);
	g_string_free(many, TRUE);
}
END_TEST

START_TEST(a_misspelt_thing_to_count_is_asked_for_and_others_are_not)
{
	static const struct {
		const char *line, *meant;
	} said[] = {
		{ "coter pin bag 1", "cotter" }, { "6 nust 5/8", "nut" },       { "2 wahsers", "washers" },
		{ "retaner of the joint", "retainer" },
		{ "6 nuts 5/8", NULL },          { "propeller", NULL },         { "belt", NULL },           { "pump cover", NULL },
		{ "1 hose", NULL },              { "drive unit", NULL },        { "gasket", NULL },         { "trim pins", NULL },
		{ "hub and washers", NULL },     { "gimbal bearing", NULL },    { "2 boots", NULL },        { "3 spacers", NULL },
	};

	for (guint i = 0; i < G_N_ELEMENTS(said); i++) {
		struct removal r;
		g_autofree char *word = NULL;
		const char *meant = NULL;
		gboolean doubt;

		record_init(RECORD_REMOVAL, &r);
		ck_assert(removal_parse(said[i].line, &r, NULL));
		doubt = removal_doubt(&r, &word, &meant);
		ck_assert_msg(doubt == (said[i].meant != NULL), "%s: %s", said[i].line, doubt ? meant : "no doubt");
		ck_assert_msg(!doubt || !strcmp(meant, said[i].meant), "%s: %s is meant", said[i].line, meant);
		record_clear(RECORD_REMOVAL, &r);
	}
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("removal_parse");
	TCase *tc = tcase_create("lines");
	SRunner *run;
	int failed;

	tcase_add_loop_test(tc, a_line_is_understood_as_people_mean_it, 0, G_N_ELEMENTS(lines));
	tcase_add_loop_test(tc, no_word_is_lost, 0, G_N_ELEMENTS(lines));
	tcase_add_test(tc, a_misspelt_thing_to_count_is_asked_for_and_others_are_not);
	tcase_add_test(tc, what_is_no_line_is_refused);
	suite_add_tcase(s, tc);
	run = srunner_create(s);
	srunner_run_all(run, CK_ENV);
	failed = srunner_ntests_failed(run);
	srunner_free(run);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
