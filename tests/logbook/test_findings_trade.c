/* What owners find, in their words, on a boat as it is made new: how grave it is, and what then stands in the due list. */
#include "logbook/finding.h"

#include "open.h"

#include "logbook/due.h"

static void
open_new(enum stand berth, int engines)
{
	g_autofree char *catalogue = g_build_filename(data_folder(), "catalogue", NULL);
	struct new_boat n = { .engine = { { "main", 100 * H, NONE, FALSE } }, .n_engines = engines, .catalogue = catalogue };
	g_autoptr(GError) err = NULL;

	if (engines == 2) {
		n.engine[0].name = "port";
		n.engine[1] = (struct new_engine){ "starboard", 90 * H, NONE, FALSE };
	}
	setup();
	who.data = data_folder();
	book = book_create(path, &who, &err);
	ck_assert_msg(book != NULL, "%s", err ? err->message : "?");
	record_init(RECORD_BOAT, &n.boat);
	n.boat.name = g_strdup("Tern");
	n.boat.kind = KIND_PETROL_STERNDRIVE;
	n.boat.berth = berth;
	n.boat.winter = STAND_ASHORE;
	n.boat.water = WATER_SALT;
	n.boat.launch = 415;
	n.boat.haul_out = 1015;
	n.boat.since = day_from_ymd(2026, 1, 1);
	ck_assert_msg(book_add_boat(book, &n, &err), "%s", err ? err->message : "?");
	record_clear(RECORD_BOAT, &n.boat);
	ck_assert(book_boat(book, NULL, &boat, &err));
}

/* due: a task that stands in the due list for now because of it; NULL: none is asked for. */
static const struct {
	const char *on, *words;
	enum level ashore, afloat;
	const char *due;
} cases[] = {
	{ "drive/transom/gimbal-bearing", "rough by hand, growls in tight turns", LEVEL_MEND, LEVEL_MEND,
	  "bellows-inside.inspect" },
	{ "drive/transom/gimbal-bearing", "rough, and it has play", LEVEL_HOLD, LEVEL_HOLD, "bellows-inside.inspect" },
	{ "drive/transom/bellows-inside", "water stands in it, rubber looks fine", LEVEL_HOLD, LEVEL_HOLD,
	  "mounting-gasket.renew" },
	{ "drive/transom/bellows-ujoint", "a crack in one fold, does not go through", LEVEL_MEND, LEVEL_HOLD,
	  "bellows-ujoint.renew" },
	{ "drive/transom/bellows-ujoint", "cut by barnacles", LEVEL_HOLD, LEVEL_HOLD, "bellows-ujoint.renew" },
	{ "drive/transom/bellows-ujoint", "age unknown, bought used, looks good", LEVEL_MEND, LEVEL_HOLD, "bellows-ujoint.renew" },
	{ "drive/transom/bellows", "a clamp is rusted through", LEVEL_HOLD, LEVEL_HOLD, "bellows.clamps" },
	{ "drive/shift/linkage", "retainer missing on the pin", LEVEL_HOLD, LEVEL_HOLD, "retainers.renew" },
	{ "drive/trim/trim-pins", "corroded, no longer turns", LEVEL_MEND, LEVEL_MEND, "trim-pins.renew" },
	{ "drive/trim/trim-pins", "aft pin bent", LEVEL_HOLD, LEVEL_HOLD, "trim-pins.renew" },
	{ "drive/mounting-gasket", "o-ring of the water passage flattened", LEVEL_HOLD, LEVEL_HOLD, "mounting-gasket.renew" },
	{ "drive/gear-oil", "milky", LEVEL_HOLD, LEVEL_HOLD, "case-seals.pressure-test" },
	{ "drive/gear-oil", "a few drops of water before the oil, oil clear", LEVEL_MEND, LEVEL_MEND, "gear-oil.water" },
	{ "drive/gear-oil", "fine silver paste on the magnet", LEVEL_WATCH, LEVEL_WATCH, NULL },
	{ "drive/gear-oil", "chips on the magnet", LEVEL_HOLD, LEVEL_HOLD, NULL },
	{ "drive/propeller-shaft", "fishing line behind it, oil clear", LEVEL_MEND, LEVEL_MEND, "gear-oil.water" },
	{ "drive/anodes", "half gone", LEVEL_MEND, LEVEL_HOLD, "anodes.renew" },
	{ "drive/anodes", "hardly wasted after a year in salt water", LEVEL_MEND, LEVEL_MEND, "bonding.test" },
	{ "drive/anodes", "gone in six weeks", LEVEL_MEND, LEVEL_HOLD, "anodes.renew" },
	{ "engine/alignment", "bar goes only half way", LEVEL_HOLD, LEVEL_HOLD, "alignment.measure" },
	{ "drive/transom/gimbal-ring", "moves on its shaft, half an inch at the drive", LEVEL_HOLD, LEVEL_HOLD,
	  "gimbal-ring.play" },
	{ "drive/shift/shift-cable", "stiff, stalls when put into gear", LEVEL_MEND, LEVEL_MEND, "shift-cable.measure" },
	{ "engine/exhaust/risers", "elbow weeping rust at its gasket", LEVEL_MEND, LEVEL_MEND, "spark-plugs.inspect" },
	{ "engine/exhaust/risers", "elbow weeping at the gasket, a plug is wet", LEVEL_HOLD, LEVEL_HOLD, "spark-plugs.inspect" },
	{ "engine/exhaust/exhaust-hoses", "rust and a black streak at the clamp", LEVEL_HOLD, LEVEL_HOLD, NULL },
	{ "hull/bilge", "smells of fuel", LEVEL_HOLD, LEVEL_HOLD, "vapour.sniff" },
	{ "fuel/fuel-hoses", "stiff, 14 years old, dry", LEVEL_MEND, LEVEL_MEND, "fuel-hoses.renew" },
	{ "fuel/fuel-hoses", "soft, and wet to the rag", LEVEL_HOLD, LEVEL_HOLD, "fuel-hoses.renew" },
	{ "engine/cooling/seawater-pump", "vane missing, one piece not found", LEVEL_HOLD, LEVEL_HOLD, "seawater-pump.renew" },
	{ "fuel/blower", "runs, but no air at the vent", LEVEL_HOLD, LEVEL_HOLD, "blower.test" },
	{ "hull/bilge/bilge-pump", "runs every 20 minutes at the dock", LEVEL_MEND, LEVEL_HOLD, "bilge-pump.test" },
	{ "engine/cooling", "nothing came out of the block drain", LEVEL_HOLD, LEVEL_HOLD, NULL },
	{ "engine/cooling", "a plug left over in spring", LEVEL_HOLD, LEVEL_HOLD, NULL },
	{ "safety/extinguishers", "from 2012, gauge green", LEVEL_HOLD, LEVEL_HOLD, "extinguishers.renew" },
	{ "drive/transom/gimbal-bearing", "greased, no fresh grease seen", LEVEL_MEND, LEVEL_MEND, NULL },
	{ "engine/starter", "smoke from it, a car part is fitted", LEVEL_HOLD, LEVEL_HOLD, NULL },
	{ "drive/unit", "spare nut left over after the refit", LEVEL_HOLD, LEVEL_HOLD, "linkage.inspect" },
};

static void
check_due(gint64 finding, const char *due, const char *words)
{
	struct due_list *l = due_list_new();
	const struct due_ask ask = { who.today, NONE };
	gboolean there = FALSE;

	ck_assert(book_due(book, &boat, &ask, l, NULL));
	for (int i = 0; i < due_count(l); i++) {
		const struct due_line *d = due_at(l, i);

		for (int k = 0; k < d->n_found; k++) {
			ck_assert_int_eq(d->found[k].id, finding);
			ck_assert_msg(d->out.when == OPP_NOW && d->out.past, "%s: %s waits", words, d->name);
			there = there || (due && !strcmp(d->name, due));
		}
	}
	ck_assert_msg(there || !due, "%s: %s is not due", words, due ? due : "");
	due_list_free(l);
}

static void
find_it(int i, enum stand berth)
{
	struct finding_form form = { .measured = NULL };
	struct finding_proposal p;
	struct fitting on;
	g_autoptr(GError) err = NULL;
	enum level want = berth == STAND_AFLOAT ? cases[i].afloat : cases[i].ashore;

	open_new(berth, 1);
	ck_assert_msg(book_find_fitting(book, boat.id, cases[i].on, &on, &err), "%s", err ? err->message : "?");
	record_init(RECORD_FINDING, &form.what);
	form.what.boat = boat.id;
	form.what.fitting = on.id;
	form.what.words = g_strdup(cases[i].words);
	ck_assert_msg(book_finding(book, &form, &p, &err), "%s", err ? err->message : "?");
	ck_assert_msg(form.what.level == want, "%s: %s (%s)", cases[i].words, word_of(&words_level, form.what.level), p.why);
	check_due(form.what.id, cases[i].due, cases[i].words);
	finding_proposal_clear(&p);
	record_clear(RECORD_FINDING, &form.what);
	record_clear(RECORD_FITTING, &on);
	teardown();
}

START_TEST(on_a_trailer)
{
	find_it(_i, STAND_TRAILER);
}
END_TEST

START_TEST(afloat_and_unattended)
{
	find_it(_i, STAND_AFLOAT);
}
END_TEST

/* On a boat with twins: what is due at once, and what is not; NULL: nothing is left out. */
static const struct { const char *on, *words, *due, *not_due; } sides[] = {
	{ "starboard/drive/gear-oil", "milky", "starboard-gear-oil.change", "port-gear-oil.change" },
	{ "port/drive/transom/gimbal-bearing", "rough and growls", "port-alignment.measure", "starboard-alignment.measure" },
	{ "hull/bilge/bilge-pump", "runs every hour, on the starboard side it is wet", "starboard-bellows.inspect",
	  "port-bellows.inspect" },
	{ "hull/bilge/bilge-pump", "runs every hour", "port-bellows.inspect", NULL },
	{ "hull/bilge/bilge-pump", "runs every hour", "starboard-bellows.inspect", NULL },
	{ "hull/bilge/bilge-pump", "runs every hour", "bilge.rate", NULL },
};

START_TEST(what_it_makes_due_is_of_the_side_where_it_was_found)
{
	struct finding_form form = { .measured = NULL };
	struct finding_proposal p;
	struct fitting on;
	g_autoptr(GError) err = NULL;
	g_auto(GStrv) names = NULL;

	open_new(STAND_TRAILER, 2);
	ck_assert_msg(book_find_fitting(book, boat.id, sides[_i].on, &on, &err), "%s", err ? err->message : "?");
	record_init(RECORD_FINDING, &form.what);
	form.what.boat = boat.id;
	form.what.fitting = on.id;
	form.what.words = g_strdup(sides[_i].words);
	ck_assert_msg(book_finding(book, &form, &p, &err), "%s", err ? err->message : "?");
	names = g_strsplit(p.makes_due ? p.makes_due : "", " ", -1);
	ck_assert_msg(g_strv_contains((const char *const *)names, sides[_i].due), "makes due %s", p.makes_due);
	ck_assert_msg(!sides[_i].not_due || !g_strv_contains((const char *const *)names, sides[_i].not_due), "makes due %s",
		      p.makes_due);
	check_due(form.what.id, sides[_i].due, sides[_i].words);
	finding_proposal_clear(&p);
	record_clear(RECORD_FINDING, &form.what);
	record_clear(RECORD_FITTING, &on);
	teardown();
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("findings of the trade");
	TCase *tc = tcase_create("what owners find");

	tcase_add_loop_test(tc, on_a_trailer, 0, G_N_ELEMENTS(cases));
	tcase_add_loop_test(tc, afloat_and_unattended, 0, G_N_ELEMENTS(cases));
	tcase_add_loop_test(tc, what_it_makes_due_is_of_the_side_where_it_was_found, 0, G_N_ELEMENTS(sides));
	suite_add_tcase(s, tc);
	return run_suite(s);
}
