#include "logbook/knowledge.h"

#include "open.h"

#include "logbook/plain_words.h"

static struct knowledge *shipped;

static void
load(void)
{
	g_autoptr(GError) err = NULL;
	g_autofree char *catalogues = catalogue_folder();

	shipped = knowledge_read(catalogues, &err);
	ck_assert_msg(shipped != NULL, "%s", err ? err->message : "?");
}

static void
unload(void)
{
	knowledge_free(shipped);
}

static void
tell(const char *sentence, const char *on, gboolean afloat, guint consequences, struct finding_told *told)
{
	const struct finding_ask ask = { sentence, on, consequences, afloat, day_from_ymd(2026, 11, 25) };

	knowledge_tell(shipped, &ask, told);
}

/* What owners write, on which fitting, how grave it is on a trailer and afloat unattended, and one task that it makes due. */
static const struct {
	const char *sentence, *path;
	enum level ashore, afloat;
	const char *due; /* "" for none */
} cases[] = {
	{ "Rough, and it growls when I turn", "drive/transom/gimbal-bearing", LEVEL_MEND, LEVEL_MEND, "ujoint-shaft.inspect" },
	{ "gimbal bearing rough with play", "drive/transom", LEVEL_HOLD, LEVEL_HOLD, "bellows-inside.inspect" },
	{ "Water stood inside, though the rubber is like new", "drive/transom/bellows-inside", LEVEL_HOLD, LEVEL_HOLD,
	  "mounting-gasket.renew" },
	{ "there's a crack in one fold, it does not go through", "drive/transom/bellows-ujoint", LEVEL_MEND, LEVEL_HOLD,
	  "bellows-ujoint.renew" },
	{ "barnacles have cut the rubber", "drive/transom/bellows", LEVEL_HOLD, LEVEL_HOLD, "bellows-ujoint.renew" },
	{ "Looks fine but nobody knows how old; bought the boat in spring", "drive/transom/bellows", LEVEL_MEND, LEVEL_HOLD,
	  "bellows-ujoint.renew" },
	{ "clamp is rusted through", "drive/transom/bellows", LEVEL_HOLD, LEVEL_HOLD, "bellows.clamps" },
	{ "one clamp sits half off its lip", "drive/transom/bellows-shift", LEVEL_HOLD, LEVEL_HOLD, "bellows.clamps" },
	{ "The little cotter on the shift pin is gone", "drive/shift/linkage", LEVEL_HOLD, LEVEL_HOLD, "retainers.renew" },
	{ "aft pin corroded and doesn't turn any more", "drive/trim/trim-pins", LEVEL_MEND, LEVEL_MEND, "trim-pins.renew" },
	{ "trim pin is bent", "drive/trim", LEVEL_HOLD, LEVEL_HOLD, "trim-pins.renew" },
	{ "water passage o-ring pressed flat, damp around it", "drive/unit", LEVEL_HOLD, LEVEL_HOLD, "mounting-gasket.renew" },
	{ "Oil came out milky", "drive/gear-oil", LEVEL_HOLD, LEVEL_HOLD, "case-seals.pressure-test" },
	{ "a few drops of water ran out first, then clear oil", "drive/gear-oil", LEVEL_MEND, LEVEL_MEND, "gear-oil.water" },
	{ "fine grey paste on the magnet", "drive/gear-oil", LEVEL_WATCH, LEVEL_WATCH, "" },
	{ "Two chips stuck to the magnet!", "drive/gear-oil", LEVEL_HOLD, LEVEL_HOLD, "" },
	{ "fishing line behind the prop, oil is clear", "drive/propeller", LEVEL_MEND, LEVEL_MEND, "gear-oil.water" },
	{ "about half of it is left", "drive/anodes", LEVEL_MEND, LEVEL_HOLD, "anodes.renew" },
	{ "after a year in salt water hardly wasted", "drive/anodes", LEVEL_MEND, LEVEL_MEND, "potential.measure" },
	{ "all of them gone within six weeks", "drive/anodes", LEVEL_MEND, LEVEL_HOLD, "shore-power.leakage" },
	{ "the bar goes in only half way", "engine/alignment", LEVEL_HOLD, LEVEL_HOLD, "mounts.tighten" },
	{ "wheel held, the drive swings half an inch and the ring moves on its shaft", "drive/transom/gimbal-ring", LEVEL_HOLD,
	  LEVEL_HOLD, "steering.inspect" },
	{ "cable got stiff, she stalls going into gear", "drive/shift/shift-cable", LEVEL_MEND, LEVEL_MEND, "lower-cable.renew" },
	{ "port elbow weeps rust at its gasket", "engine/exhaust/risers", LEVEL_MEND, LEVEL_MEND, "block.compression" },
	{ "elbow weeping at the gasket, and number three plug is wet", "engine/exhaust/risers", LEVEL_HOLD, LEVEL_HOLD,
	  "spark-plugs.inspect" },
	{ "rust and a black streak below the hose clamp", "engine/exhaust/exhaust-hoses", LEVEL_HOLD, LEVEL_HOLD,
	  "exhaust.inspect" },
	{ "it smells of petrol down in the bilge", "hull/bilge", LEVEL_HOLD, LEVEL_HOLD, "vapour.sniff" },
	{ "stiff, dry, 14 years old", "fuel/fuel-hoses", LEVEL_MEND, LEVEL_MEND, "fuel-hoses.renew" },
	{ "soft, and the rag came away wet", "fuel/fuel-hoses", LEVEL_HOLD, LEVEL_HOLD, "fuel-hoses.renew" },
	{ "one vane missing and I could not find the piece", "engine/cooling/seawater-pump", LEVEL_HOLD, LEVEL_HOLD,
	  "seawater-pump.renew" },
	{ "you hear it run, but no air at the vent", "fuel/blower", LEVEL_HOLD, LEVEL_HOLD, "blower.test" },
	{ "At the dock the pump kicks in every 20 minutes", "hull/bilge/bilge-pump", LEVEL_MEND, LEVEL_HOLD, "bilge.rate" },
	{ "nothing came out of the drain on the port side of the block", "engine/cooling", LEVEL_HOLD, LEVEL_HOLD,
	  "cooling.drain" },
	{ "one plug left over after I closed everything in spring", "engine/cooling", LEVEL_HOLD, LEVEL_HOLD, "cooling.plugs-in" },
	{ "stamped 2012, gauge still in the green", "safety/extinguishers", LEVEL_HOLD, LEVEL_HOLD, "extinguishers.renew" },
	{ "pumped ten strokes, no fresh grease seen", "drive/transom/gimbal-bearing", LEVEL_MEND, LEVEL_MEND,
	  "gimbal-bearing.inspect" },
	{ "smokes when cranking; someone put in one from a car", "engine/starter", LEVEL_HOLD, LEVEL_HOLD, "starter.inspect" },
	{ "put the drive back and have a nut left over", "drive/unit", LEVEL_HOLD, LEVEL_HOLD, "linkage.inspect" },
	/* Twins, and other kinds of boat. */
	{ "Oil came out milky", "starboard/drive/gear-oil", LEVEL_HOLD, LEVEL_HOLD, "case-seals.pressure-test" },
	{ "streaming, cannot be counted", "port/shaft/seal", LEVEL_HOLD, LEVEL_HOLD, "bilge-pump.test" },
	{ "four drips a minute under way", "shaft/seal", LEVEL_WATCH, LEVEL_WATCH, "" },
	{ "sensor found water between the rubbers", "saildrive/diaphragm", LEVEL_HOLD, LEVEL_HOLD, "diaphragm.renew" },
	{ "looks like milk", "saildrive/leg-oil", LEVEL_HOLD, LEVEL_HOLD, "leg-seals.renew" },
	{ "oil milky on the dipstick", "starboard/shaft/gearbox", LEVEL_HOLD, LEVEL_HOLD, "gearbox.change" },
	{ "half gone", "saildrive/leg-anode", LEVEL_MEND, LEVEL_HOLD, "leg-anode.renew" },
	{ "half gone", "jet/jet-anodes", LEVEL_MEND, LEVEL_HOLD, "jet-anodes.renew" },
	{ "two bolts had backed off", "shaft/coupling", LEVEL_HOLD, LEVEL_HOLD, "coupling.tighten" },
	{ "shaft knocks in it, play all round", "shaft/cutless", LEVEL_MEND, LEVEL_MEND, "cutless.renew" },
	{ "hairline crack at the foot", "shaft/strut", LEVEL_HOLD, LEVEL_HOLD, "strut.inspect" },
	{ "hose is soft near the clamp", "shaft/log", LEVEL_HOLD, LEVEL_HOLD, "log.inspect" },
	{ "leading edges nicked and rounded", "jet/impeller", LEVEL_MEND, LEVEL_MEND, "impeller.measure" },
	{ "two stones and weed behind the bars", "jet/grate", LEVEL_MEND, LEVEL_MEND, "grate.clear" },
	{ "dripping at the shaft", "jet/hull-seal", LEVEL_HOLD, LEVEL_HOLD, "hull-seal.inspect" },
	{ "growls when I turn it", "jet/pump-bearing", LEVEL_HOLD, LEVEL_HOLD, "pump-bearing.turn" },
	{ "clip of the pivot pin is gone", "jet/bucket", LEVEL_HOLD, LEVEL_HOLD, "bucket.retainers" },
	{ "a cotter fell out", "rig/turnbuckles", LEVEL_HOLD, LEVEL_HOLD, "turnbuckles.inspect" },
	{ "one strand broken at the swage", "rig/standing-rigging", LEVEL_HOLD, LEVEL_HOLD, "standing-rigging.renew" },
	{ "brown stain below it, wet after rain", "rig/chainplates", LEVEL_MEND, LEVEL_MEND, "chainplates.inspect" },
	{ "a crack at the hole", "rig/chainplates", LEVEL_HOLD, LEVEL_HOLD, "standing-rigging.inspect" },
	{ "the joint smiles at the front edge", "hull/keel-bolts", LEVEL_HOLD, LEVEL_HOLD, "keel-bolts.root" },
	{ "rusty nuts, dry bilge", "hull/keel-bolts", LEVEL_MEND, LEVEL_MEND, "keel-bolts.inspect" },
	{ "one screw is loose", "drive/bracket", LEVEL_HOLD, LEVEL_HOLD, "bracket.tighten" },
	{ "stamped 2016", "safety/extinguishers", LEVEL_WATCH, LEVEL_WATCH, "" },
	{ "printed 2004", "fuel/fuel-hoses", LEVEL_HOLD, LEVEL_HOLD, "fuel-hoses.renew" },
};

static gboolean
names(const char *list, const char *name)
{
	g_auto(GStrv) all = g_strsplit(list ? list : "", " ", -1);

	return g_strv_contains((const char *const *)all, name);
}

START_TEST(what_owners_write_meets_its_rule)
{
	for (int afloat = 0; afloat <= 1; afloat++) {
		enum level wanted = afloat ? cases[_i].afloat : cases[_i].ashore;
		struct finding_told told;

		tell(cases[_i].sentence, cases[_i].path, afloat, 0, &told);
		ck_assert_msg(told.rule != NULL, "%s: no rule is met", cases[_i].sentence);
		ck_assert_msg(told.level == (gint64)wanted, "%s: %s, level %d, not %d", cases[_i].sentence, told.rule->id,
			      (int)told.level, (int)wanted);
		if (!afloat || cases[_i].ashore == cases[_i].afloat)
			ck_assert_msg(!*cases[_i].due || names(told.rule->makes_due, cases[_i].due), "%s: %s makes due %s",
				      cases[_i].sentence, told.rule->id, told.rule->makes_due);
		ck_assert_ptr_eq(knowledge_rule(shipped, told.rule->id), told.rule);
		finding_told_clear(&told);
	}
}
END_TEST

static const struct { const char *sentence, *path; } harmless[] = {
	{ "smooth, no play, no growl", "drive/transom/gimbal-bearing" },
	{ "no water inside", "drive/transom/bellows-inside" },
	{ "not cracked and never wet", "drive/transom/bellows" },
	{ "clear, without a drop of water", "drive/gear-oil" },
	{ "stamped 2024, gauge green", "safety/extinguishers" },
	{ "no smell of fuel", "fuel/vapour" },
	{ "new in 2022", "fuel/fuel-hoses" },
	{ "looked at it", NULL },
	{ "", "drive" },
};

START_TEST(what_is_denied_is_no_finding)
{
	struct finding_told told;

	tell(harmless[_i].sentence, harmless[_i].path, TRUE, 0, &told);
	ck_assert_msg(!told.rule, "%s: %s", harmless[_i].sentence, told.rule ? told.rule->id : "");
	finding_told_clear(&told);
}
END_TEST

START_TEST(without_a_rule_the_words_speak)
{
	struct finding_told told;

	tell("a little pitted, and the bolts are chafed", "hull/cover", FALSE, 0, &told);
	ck_assert_ptr_null(told.rule);
	ck_assert_uint_eq(told.words->len, 2);
	ck_assert_int_eq(told.level, LEVEL_MEND);
	finding_told_clear(&told);
	tell("pitted", "hull/cover", FALSE, 1U << COST_COSTS, &told);
	ck_assert_int_eq(told.level, LEVEL_WATCH);
	finding_told_clear(&told);
	tell("pitted", "hull/cover", FALSE, 1U << COST_SINKS, &told);
	ck_assert_int_eq(told.level, LEVEL_MEND);
	finding_told_clear(&told);
	tell("it hums a tune", "hull/cover", FALSE, 1U << COST_SINKS, &told);
	ck_assert_int_eq(told.level, NONE);
	finding_told_clear(&told);
}
END_TEST

START_TEST(a_term_of_two_words_is_not_its_words)
{
	struct finding_told told;

	tell("the nut was finger tight", "hull/cover", FALSE, 0, &told);
	ck_assert_uint_eq(told.words->len, 1);
	ck_assert_int_eq(told.level, LEVEL_MEND);
	finding_told_clear(&told);
	tell("it is tight", "hull/cover", FALSE, 0, &told);
	ck_assert_int_eq(told.level, LEVEL_WATCH);
	finding_told_clear(&told);
	tell("cracked, many a crack", "hull/cover", FALSE, 0, &told);
	ck_assert_int_eq(told.level, LEVEL_MEND);
	ck_assert_uint_ge(told.words->len, 1);
	finding_told_clear(&told);
}
END_TEST

static const struct { const char *typed, *word; } fluids[] = {
	{ "it weeps", "weeping" }, { "seeps a bit", "seeping" }, { "drips", "dripping" }, { "it streams in", "streaming" },
};

START_TEST(how_much_a_leak_is_has_its_definition)
{
	struct finding_told told;
	const struct trade_word *w;

	tell(fluids[_i].typed, "hull", FALSE, 0, &told);
	ck_assert_uint_eq(told.words->len, 1);
	w = told.words->pdata[0];
	ck_assert_str_eq(w->word, fluids[_i].word);
	ck_assert_str_eq(w->family, "fluid");
	ck_assert_int_gt(strlen(w->meaning), 10);
	finding_told_clear(&told);
}
END_TEST

static const struct {
	const char *text, *alternative;
	gboolean has;
} texts[] = {
	{ "It LEAKED", "leaking", TRUE },	    { "the batteries", "battery", TRUE },    { "leakage", "leak", FALSE },
	{ "dripping", "drip", TRUE },		    { "no leak", "leak", FALSE },	     { "no real leak", "leak", FALSE },
	{ "no noise but a leak", "leak", TRUE },    { "not dry, it leaks", "leak", TRUE },   { "doesn't leak", "leak", FALSE },
	{ "does\342\200\231nt... doesn\342\200\231t leak", "leak", FALSE },
	{ "one was left over", "left-over", TRUE }, { "left and over", "left-over", FALSE }, { "no air at all", "no-air", TRUE },
	{ "14 years old", ">10y", TRUE },	    { "14y", ">10y", TRUE },		     { "10 years", ">10y", FALSE },
	{ "from 2015", ">10y", TRUE },		    { "from 2016", ">10y", FALSE },	     { "2000 rpm", ">30y", FALSE },
	{ "14 hours", ">10y", FALSE },		    { "", "leak", FALSE },		     { "leak", "", FALSE },
};

START_TEST(words_are_compared_as_documented)
{
	g_autoptr(GArray) words = plain_words(texts[_i].text);

	ck_assert_msg(plain_has(words, texts[_i].alternative, 2026) == texts[_i].has, "%s: %s", texts[_i].text,
		      texts[_i].alternative);
}
END_TEST

START_TEST(a_wrong_file_is_named_with_its_line)
{
	g_autofree char *catalogue = g_build_filename(folder, "catalogue", NULL);
	g_autofree char *file = g_build_filename(catalogue, "findings.csv", NULL);
	g_autoptr(GError) err = NULL;

	ck_assert_int_eq(g_mkdir(catalogue, 0700), 0);
	ck_assert(g_file_set_contents(file,
				      "id,fitting,words,without,level,raised,limit,makes-due,why,standing,source\n"
				      "a,hull,leak,,grave,,,,because,practice,none\n",
				      -1, NULL));
	ck_assert_ptr_null(knowledge_read(catalogue, &err));
	ck_assert_msg(g_str_has_prefix(err->message, "findings.csv:2: ") && strstr(err->message, "hold, mend, watch"), "%s",
		      err->message);
	g_remove(file);
	g_rmdir(catalogue);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("A finding in plain words meets the rule that the trade has for it");
	TCase *tc = tcase_create("shipped");

	tcase_add_checked_fixture(tc, load, unload);
	tcase_add_loop_test(tc, what_owners_write_meets_its_rule, 0, G_N_ELEMENTS(cases));
	tcase_add_loop_test(tc, what_is_denied_is_no_finding, 0, G_N_ELEMENTS(harmless));
	tcase_add_test(tc, without_a_rule_the_words_speak);
	tcase_add_test(tc, a_term_of_two_words_is_not_its_words);
	tcase_add_loop_test(tc, how_much_a_leak_is_has_its_definition, 0, G_N_ELEMENTS(fluids));
	tcase_add_loop_test(tc, words_are_compared_as_documented, 0, G_N_ELEMENTS(texts));
	suite_add_tcase(suite, tc);
	tc = tcase_create("wrong");
	tcase_add_checked_fixture(tc, setup, teardown);
	tcase_add_test(tc, a_wrong_file_is_named_with_its_line);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
