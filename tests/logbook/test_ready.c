/* The launch check: what holds, and the ways in which one might talk it out of that. */
#include "logbook/ready.h"

#include "base/err.h"
#include "logbook/happening.h"
#include "logbook/waiver.h"
#include "open.h"

enum { IMPORT_STEPS = 4 };

struct import_step { enum record what; const char *text; };

static void
import_all(const struct import_step *step)
{
	for (int i = 0; i < IMPORT_STEPS && step[i].text; i++)
		import_text(step[i].what, step[i].text);
}

/* A boat ashore of which all is in order and on record, so that nothing holds. */
static void
open_sound(void)
{
	open_plain("Tern");
	import_text(RECORD_FITTING, "path,title,variants\nhull,Hull,\nengine,Engine,\nengine/clips,Clips,\n"
				    "engine/pump,Pump,wet dry\n");
	import_text(RECORD_TASK,
		    "name,fitting,title,verb,place,mechanism,consequence,rule,variants\n"
		    "hull.look,hull,Look,inspect,anywhere,none,sinks,inspection,\n"
		    "hull.after,hull,Look all over,inspect,anywhere,none,wrecks,inspection,\n"
		    "hull.float,hull,Watch the bilge,inspect,afloat,none,sinks,inspection,\n"
		    "engine.renew,engine,Renew,renew,anywhere,none,burns,renewal,\n"
		    "flares.renew,engine,Renew,renew,anywhere,none,hurts,printed-date,\n"
		    "clips.retainers,engine/clips,Renew,renew,anywhere,none,strands,renewal,\n"
		    "pump.look,engine/pump,Look,inspect,anywhere,none,strands,inspection,\n"
		    "pump.wet,engine/pump,Look,inspect,anywhere,none,costs,inspection,wet\n"
		    "cooling.drain,engine,Drain,change,anywhere,none,wrecks,done,\n"
		    "cooling.plugs-in,engine,Refit,inspect,anywhere,none,sinks,inspection,\n");
	import_text(RECORD_LIMIT,
		    "task,kind,amount,event,happening,standing,source\n"
		    "hull.look,months,24,,,owner,own rule\nhull.look,happening,,,grounding,owner,own rule\n"
		    "hull.after,happening,,,grounding,owner,own rule\n"
		    "hull.float,months,24,,,owner,own rule\nengine.renew,months,60,,,owner,own rule\n"
		    "flares.renew,months,42,,,owner,own rule\n"
		    "clips.retainers,happening,,,drive-off,owner,own rule\npump.look,months,24,,,owner,own rule\n"
		    "pump.wet,months,24,,,owner,own rule\n"
		    "cooling.drain,event,,lay-up,,owner,own rule\ncooling.plugs-in,event,,launch,,owner,own rule\n");
	import_text(RECORD_SERVICE,
		    "task,date,outcome,made\nhull.look,2026-11-20,good,\nhull.float,2026-09-20,good,\n"
		    "engine.renew,2026-11-20,renewed,\nflares.renew,2026-11-20,renewed,2026-06-01\npump.look,2026-11-20,good,\n"
		    "pump.wet,2026-11-20,good,\ncooling.drain,2026-11-19,done,\ncooling.plugs-in,2026-11-20,good,\n");
}

static struct ready *
check(gint64 at)
{
	g_autoptr(GError) err = NULL;
	struct ready *r = book_ready(book, &boat, at, &err);

	ck_assert_msg(r != NULL, "%s", err ? err->message : "?");
	return r;
}

static char *
all_words(const struct ready *r)
{
	GString *out = g_string_new(NULL);

	for (int i = 0; i < ready_count(r); i++) {
		const struct ready_item *item = ready_at(r, i);
		g_autofree char *words = ready_item_words(item);

		g_string_append_printf(out, "%s %s: %s\n", word_of(&words_ready_group, item->group),
				       word_of(&words_ready_ground, item->ground), words);
	}
	return g_string_free(out, FALSE);
}

static const struct ready_item *
item_of(const struct ready *r, enum ready_group group, enum ready_ground ground)
{
	for (int i = 0; i < ready_count(r); i++)
		if (ready_at(r, i)->group == group && ready_at(r, i)->ground == ground)
			return ready_at(r, i);
	return NULL;
}

START_TEST(a_boat_of_which_all_is_in_order_may_be_launched)
{
	struct ready *r;
	g_autofree char *words = NULL, *answer = NULL;

	open_sound();
	r = check(who.today);
	words = all_words(r);
	answer = ready_answer(r);
	ck_assert_msg(r->holding == 0, "%s", words);
	ck_assert_str_eq(answer, "Nothing on record holds the launch.");
	ck_assert_msg(!item_of(r, READY_MEND, READY_PAST_DUE), "%s", words);
	ready_free(r);
}
END_TEST

#define TASK_COLUMNS "name,fitting,title,verb,place,mechanism,consequence,rule"
#define STEERING TASK_COLUMNS "\nsteer.look,hull,Look,inspect,anywhere,none,hurts,inspection\n"

/* Each is a way to get a yes that is none: what is recorded, and where the check must show it. */
static const struct {
	const char *what;
	struct import_step step[IMPORT_STEPS];
	enum ready_group group;
	enum ready_ground ground;
} ways[] = {
	{ "work past due",
	  { { RECORD_TASK, STEERING },
	    { RECORD_LIMIT, "task,kind,amount,standing,source\nsteer.look,months,12,owner,own rule\n" },
	    { RECORD_SERVICE, "task,date,outcome\nsteer.look,2020-01-01,good\n" } },
	  READY_HOLDS, READY_PAST_DUE },
	{ "a design that nobody named", { { RECORD_MEASUREMENT, "date,what,as-read\n2026-11-20,note,none\n" } }, READY_UNKNOWN,
	  READY_DESIGN },
	{ "never on record",
	  { { RECORD_TASK, STEERING },
	    { RECORD_LIMIT, "task,kind,amount,standing,source\nsteer.look,months,12,owner,own rule\n" } },
	  READY_HOLDS, READY_NEVER_SEEN },
	{ "only claimed",
	  { { RECORD_TASK, STEERING },
	    { RECORD_LIMIT, "task,kind,amount,standing,source\nsteer.look,months,12,owner,own rule\n" },
	    { RECORD_SERVICE, "task,date,outcome\nsteer.look,2026-11-24,claimed\n" } },
	  READY_HOLDS, READY_CLAIMED },
	{ "claimed after it was done", { { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-24,claimed\n" } }, READY_HOLDS,
	  READY_CLAIMED },
	{ "a part on paper, and no look at it",
	  { { RECORD_TASK, STEERING },
	    { RECORD_LIMIT, "task,kind,amount,standing,source\nsteer.look,months,12,owner,own rule\n" },
	    { RECORD_PART, "fitting,what,fitted\nhull,cable,2026-11-22\n" },
	    { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-23,good\n" } },
	  READY_HOLDS, READY_CLAIMED },
	{ "a part on paper after a look at the one before it",
	  { { RECORD_PART, "fitting,what,fitted\nhull,planking,2026-11-22\n" } }, READY_HOLDS, READY_CLAIMED },
	{ "a part on paper after the one before it was found wanting",
	  { { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-21,bad\n" },
	    { RECORD_PART, "fitting,what,fitted\nhull,planking,2026-11-22\n" } }, READY_HOLDS, READY_CLAIMED },
	{ "a part of a renewal that is only claimed",
	  { { RECORD_PART, "fitting,what,fitted\nengine,hose,2026-11-23\n" },
	    { RECORD_SERVICE, "task,date,outcome\nengine.renew,2026-11-23,claimed\n" } }, READY_HOLDS, READY_CLAIMED },
	{ "a claimed renewal that would count as a look",
	  { { RECORD_TASK, TASK_COLUMNS "\nhull.paint,hull,Paint,renew,anywhere,none,costs,renewal\n" },
	    { RECORD_SERVICE, "task,date,outcome\nhull.paint,2026-11-22,claimed\n" } }, READY_HOLDS, READY_CLAIMED },
	{ "found wanting", { { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-24,bad\n" } }, READY_HOLDS, READY_BAD },
	{ "found wanting, then topped up",
	  { { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-23,bad\nhull.look,2026-11-24,topped-up\n" } }, READY_HOLDS,
	  READY_BAD },
	{ "found wanting afloat only", { { RECORD_SERVICE, "task,date,outcome\nhull.float,2026-10-10,bad\n" } }, READY_HOLDS,
	  READY_BAD },
	{ "found wanting later on the day on which it was found good",
	  { { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-24,good\n" },
	    { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-24,bad\n" } },
	  READY_HOLDS, READY_BAD },
	{ "done without its proof", { { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-24,not-seen\n" } }, READY_HOLDS,
	  READY_NOT_SEEN },
	{ "passed over in a list", { { RECORD_SKIP, "task,list,date,reason\nhull.look,lay-up,2026-11-24,no time\n" } }, READY_HOLDS,
	  READY_SKIPPED },
	{ "open, with work left", { { RECORD_HAPPENING, "date,kind\n2026-11-22,grounding\n" } }, READY_HOLDS, READY_HAPPENING },
	{ "open, with work left: the work",
	  { { RECORD_HAPPENING, "date,kind\n2026-11-22,grounding\n" } }, READY_HOLDS, READY_ASKED },
	{ "closed without its work", { { RECORD_HAPPENING, "date,kind,closed\n2026-11-22,grounding,2026-11-23\n" } }, READY_HOLDS,
	  READY_ASKED },
	{ "closed without the lighter part of its work",
	  { { RECORD_HAPPENING, "date,kind,closed\n2026-11-22,grounding,2026-11-23\n" } }, READY_MEND, READY_ASKED },
	{ "closed, the work passed over",
	  { { RECORD_HAPPENING, "date,kind,closed\n2026-11-22,grounding,2026-11-23\n" },
	    { RECORD_SKIP, "task,date,reason\nhull.look,2026-11-23,no time\nhull.after,2026-11-23,no time\n" } },
	  READY_HOLDS, READY_ASKED },
	{ "closed some day to come",
	  { { RECORD_HAPPENING, "date,kind,closed\n2026-11-22,grounding,2026-12-24\n" } }, READY_HOLDS, READY_HAPPENING },
	{ "done some day of that year, perhaps before it happened",
	  { { RECORD_HAPPENING, "date,kind,closed\n2026-11-22,grounding,2026-11-23\n" },
	    { RECORD_SERVICE, "task,date,earliest,outcome\nhull.look,2026-11-24,2026-01-01,good\n" } },
	  READY_HOLDS, READY_ASKED },
	{ "retainers after the drive was off", { { RECORD_HAPPENING, "date,kind,closed\n2026-11-22,drive-off,2026-11-23\n" } },
	  READY_HOLDS, READY_ASKED },
	{ "a date printed on it that lies ahead",
	  { { RECORD_PART, "fitting,what,fitted,made\nengine,flares,2026-11-22,2030-01-01\n" },
	    { RECORD_TASK, "name,fitting,title,verb,place,mechanism,consequence,rule\nvest.renew,engine,Renew,renew,"
			   "anywhere,none,hurts,printed-date\n" },
	    { RECORD_LIMIT, "task,kind,amount,standing,source\nvest.renew,months,60,owner,own rule\n" } },
	  READY_HOLDS, READY_GUESS },
	{ "a finding that holds", { { RECORD_FINDING, "date,words,level\n2026-11-22,crack,hold\n" } }, READY_HOLDS, READY_FINDING },
	{ "a finding to be watched until a day that is past",
	  { { RECORD_FINDING, "date,words,level,until\n2026-10-22,crack,watch,2026-11-01\n" } }, READY_HOLDS, READY_FINDING },
	{ "a finding to be mended",
	  { { RECORD_FINDING, "date,words,level\n2026-11-22,crack,mend\n" } }, READY_MEND, READY_FINDING },
	{ "a finding to be watched",
	  { { RECORD_FINDING, "date,words,level\n2026-11-22,crack,watch\n" } }, READY_UNKNOWN, READY_WATCH },
	{ "a reading that no task asks for",
	  { { RECORD_MEASUREMENT, "fitting,date,what,as-read,value,unit\nhull,2026-11-22,anode-left,10 %,10,%\n" } }, READY_HOLDS,
	  READY_READING },
	{ "a reading without a value after one that says stop",
	  { { RECORD_MEASUREMENT, "fitting,date,what,as-read,value,unit\nhull,2026-11-22,anode-left,10 %,10,%\n"
				  "hull,2026-11-23,anode-left,looks fine,,\n" } },
	  READY_HOLDS, READY_READING },
	{ "a reading without a value",
	  { { RECORD_MEASUREMENT, "fitting,date,what,as-read,value,unit\nhull,2026-11-23,anode-left,looks fine,,\n" } },
	  READY_UNKNOWN, READY_NO_VALUE },
	{ "plugs out and none in",
	  { { RECORD_MEASUREMENT, "fitting,date,what,as-read,value,unit\nengine,2026-11-22,plugs-out,7,7,\n" } }, READY_HOLDS,
	  READY_PLUGS },
	{ "fewer plugs in than out",
	  { { RECORD_MEASUREMENT, "fitting,date,what,as-read,value,unit\nengine,2026-11-22,plugs-out,7,7,\n"
				  "engine,2026-11-23,plugs-in,6,6,\n" } },
	  READY_HOLDS, READY_PLUGS },
	{ "plugs in that nobody counted",
	  { { RECORD_MEASUREMENT, "fitting,date,what,as-read,value,unit\nengine,2026-11-22,plugs-out,7,7,\n"
				  "engine,2026-11-23,plugs-in,all,,\n" } },
	  READY_HOLDS, READY_PLUGS },
	{ "plugs in before they came out",
	  { { RECORD_MEASUREMENT, "fitting,date,what,as-read,value,unit\nengine,2026-11-21,plugs-in,7,7,\n"
				  "engine,2026-11-22,plugs-out,7,7,\n" } },
	  READY_HOLDS, READY_PLUGS },
	{ "plugs of another fitting",
	  { { RECORD_MEASUREMENT, "fitting,date,what,as-read,value,unit\nengine,2026-11-22,plugs-out,7,7,\n"
				  "engine/pump,2026-11-23,plugs-in,7,7,\n" } },
	  READY_HOLDS, READY_PLUGS },
	{ "plugs out counted again, and fewer",
	  { { RECORD_MEASUREMENT, "fitting,date,what,as-read,value,unit\nengine,2026-11-22,plugs-out,7,7,\n"
				  "engine,2026-11-23,plugs-out,5,5,\nengine,2026-11-24,plugs-in,5,5,\n" } },
	  READY_HOLDS, READY_PLUGS },
	{ "plugs out where no task puts them back",
	  { { RECORD_MEASUREMENT, "fitting,date,what,as-read,value,unit\nengine/pump,2026-11-22,plugs-out,2,2,\n"
				  "engine,2026-11-23,plugs-in,2,2,\n" } },
	  READY_HOLDS, READY_PLUGS },
	{ "drained, and nobody counted", { { RECORD_SERVICE, "task,date,outcome\ncooling.drain,2026-11-24,done\n" } }, READY_HOLDS,
	  READY_PLUGS },
	{ "a task retired",
	  { { RECORD_TASK, "name,fitting,title,verb,place,mechanism,consequence,rule,retired\nhull.look,hull,Look,inspect,"
			   "anywhere,none,sinks,inspection,yes\n" } },
	  READY_UNKNOWN, READY_RETIRED },
	{ "a fitting said not to be there",
	  { { RECORD_FITTING, "path,title,retired\nhull,Hull,yes\n" } }, READY_UNKNOWN, READY_RETIRED },
	{ "a task that nothing makes due",
	  { { RECORD_TASK, STEERING } },
	  READY_UNKNOWN, READY_NO_LIMIT },
	{ "a task that only a finding asks for, and nobody has looked",
	  { { RECORD_TASK, STEERING },
	    { RECORD_LIMIT, "task,kind,standing,source\nsteer.look,condition,owner,own rule\n" } },
	  READY_UNKNOWN, READY_UNASKED },
	{ "a date from memory",
	  { { RECORD_TASK, STEERING },
	    { RECORD_LIMIT, "task,kind,amount,standing,source\nsteer.look,months,10,owner,own rule\n" },
	    { RECORD_SERVICE, "task,date,outcome,estimated\nsteer.look,2026-11-20,good,yes\n" } },
	  READY_UNKNOWN, READY_GUESS },
	{ "let pass until yesterday",
	  { { RECORD_FINDING, "date,words,level\n2026-11-02,crack,hold\n" },
	    { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-24,bad\n" },
	    { RECORD_WAIVER, "task,date,until,who,reason\nhull.look,2026-11-20,2026-11-24,Ann,soon\n" } },
	  READY_HOLDS, READY_BAD },
	{ "another thing let pass",
	  { { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-24,bad\n" },
	    { RECORD_WAIVER, "task,date,until,who,reason\nengine.renew,2026-11-20,2026-12-24,Ann,soon\n" } },
	  READY_HOLDS, READY_BAD },
};

START_TEST(it_is_not_talked_into_a_yes)
{
	const struct ready_item *item;
	g_autofree char *words = NULL;
	struct ready *r;

	open_sound();
	import_all(ways[_i].step);
	r = check(who.today);
	words = all_words(r);
	item = item_of(r, ways[_i].group, ways[_i].ground);
	ck_assert_msg(item != NULL, "%s: nothing of it in\n%s", ways[_i].what, words);
	ck_assert_msg(ways[_i].group != READY_HOLDS || (r->holding > 0 && item->until == NONE), "%s: it does not hold:\n%s",
		      ways[_i].what, words);
	ready_free(r);
}
END_TEST

/* And what settles each, so that the check can be satisfied. */
static const struct { const char *what; struct import_step step[IMPORT_STEPS]; } settled[] = {
	{ "found wanting, then good",
	  { { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-22,bad\nhull.look,2026-11-23,good\n" } } },
	{ "found wanting, and put right the same day",
	  { { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-23,bad\n" },
	    { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-23,good\n" } } },
	{ "passed over, then done",
	  { { RECORD_SKIP, "task,list,date,reason\nhull.look,lay-up,2026-11-22,no time\n" },
	    { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-23,good\n" } } },
	{ "happened, and all done",
	  { { RECORD_HAPPENING, "date,kind\n2026-11-22,grounding\n" },
	    { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-22,good\nhull.after,2026-11-23,good\n" } } },
	{ "a part on paper, then looked at",
	  { { RECORD_PART, "fitting,what,fitted\nhull,planking,2026-11-22\n" },
	    { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-22,good\nhull.float,2026-11-22,good\n" } } },
	{ "a part on paper, and a renewal that somebody saw",
	  { { RECORD_TASK, TASK_COLUMNS "\nhull.paint,hull,Paint,renew,anywhere,none,costs,renewal\n" },
	    { RECORD_PART, "fitting,what,fitted\nhull,planking,2026-11-22\n" },
	    { RECORD_SERVICE, "task,date,outcome\nhull.paint,2026-11-22,renewed\n" } } },
	{ "claimed, and looked at",
	  { { RECORD_PART, "fitting,what,fitted\nengine,hose,2026-11-22\n" },
	    { RECORD_SERVICE, "task,date,outcome\nengine.renew,2026-11-22,claimed\nengine.renew,2026-11-23,good\n"
			      "cooling.plugs-in,2026-11-23,good\n" } } },
	{ "found and mended", { { RECORD_FINDING, "date,words,level,mended\n2026-11-20,crack,hold,2026-11-21\n" } } },
	{ "as many plugs in as out",
	  { { RECORD_MEASUREMENT, "fitting,date,what,as-read,value,unit\nengine,2026-11-22,plugs-out,7,7,\n"
				  "engine,2026-11-23,plugs-in,6,6,\nengine,2026-11-23,plugs-in,7,7,\n" } } },
	{ "as many plugs in as out where no task puts them back",
	  { { RECORD_MEASUREMENT, "fitting,date,what,as-read,value,unit\nengine/pump,2026-11-22,plugs-out,2,2,\n"
				  "engine/pump,2026-11-23,plugs-in,2,2,\n" } } },
	{ "drained where no task puts plugs back",
	  { { RECORD_TASK, TASK_COLUMNS "\npump.drain,engine/pump,Drain,change,anywhere,none,wrecks,done\n" },
	    { RECORD_LIMIT, "task,kind,event,standing,source\npump.drain,event,lay-up,owner,own rule\n" },
	    { RECORD_SERVICE, "task,date,outcome\npump.drain,2026-11-24,done\n" } } },
	{ "measured again and good",
	  { { RECORD_MEASUREMENT, "fitting,date,what,as-read,value,unit\nhull,2026-11-22,anode-left,10 %,10,%\n"
				  "hull,2026-11-23,anode-left,100 %,100,%\n" } } },
	{ "let pass",
	  { { RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-24,bad\n" },
	    { RECORD_WAIVER, "task,date,until,who,reason\nhull.look,2026-11-24,2026-11-25,Ann,soon\n" } } },
};

START_TEST(what_is_put_right_holds_no_longer)
{
	g_autofree char *words = NULL;
	struct ready *r;

	open_sound();
	import_all(settled[_i].step);
	r = check(who.today);
	words = all_words(r);
	ck_assert_msg(r->holding == 0, "%s: held by\n%s", settled[_i].what, words);
	ready_free(r);
}
END_TEST

START_TEST(what_falls_due_by_the_launch_holds_it_and_what_is_afloat_only_does_not)
{
	static const char late[] = "task,kind,amount,standing,source\n"
				   "hull.look,months,3,owner,own rule\nhull.float,months,3,owner,own rule\n";
	struct ready *r;
	g_autofree char *words = NULL;

	open_sound();
	import_text(RECORD_LIMIT, late);
	r = check(who.today);
	words = all_words(r);
	ck_assert_msg(item_of(r, READY_HOLDS, READY_BY_LAUNCH) != NULL, "%s", words);
	ck_assert_int_eq(r->holding, 1);
	ready_free(r);
	r = check(day_from_ymd(2027, 4, 15));
	ck_assert_ptr_nonnull(item_of(r, READY_HOLDS, READY_PAST_DUE));
	ck_assert_str_eq(item_of(r, READY_MEND, READY_PAST_DUE)->name, "hull.float");
	ready_free(r);
}
END_TEST

START_TEST(a_waiver_marks_what_it_lets_pass_and_ends_after_its_last_day)
{
	gint64 last = day_from_ymd(2026, 12, 1);
	const struct ready_item *item;
	struct ready *r;

	open_sound();
	import_text(RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-24,bad\n");
	import_text(RECORD_WAIVER, "task,date,until,who,reason\nhull.look,2026-11-25,2026-12-01,Ann,seen by the yard\n");
	r = check(last);
	item = item_of(r, READY_HOLDS, READY_BAD);
	ck_assert_ptr_nonnull(item);
	ck_assert_int_eq(item->until, last);
	ck_assert_str_eq(item->who, "Ann");
	ck_assert_str_eq(item->reason, "seen by the yard");
	ck_assert_int_eq(r->holding, 0);
	ck_assert_int_eq(r->passed, 1);
	ready_free(r);
	r = check(last + 1);
	ck_assert_int_eq(r->holding, 1);
	ready_free(r);
}
END_TEST

/* A happening is closed when each task is done or passed over, and not before. */
START_TEST(a_happening_is_not_closed_over_what_is_left)
{
	g_autoptr(GError) err = NULL, none = NULL;
	int closed;

	open_sound();
	import_text(RECORD_HAPPENING, "date,kind\n2026-11-22,grounding\n");
	ck_assert(!book_close_happening(book, &boat, HAPPENED_GROUNDING, who.today, &closed, &err));
	ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_CONFLICT));
	ck_assert_ptr_nonnull(strstr(err->message, "hull.look"));
	ck_assert_ptr_nonnull(strstr(err->message, "hull.after"));
	import_text(RECORD_SERVICE, "task,date,outcome\nhull.look,2026-11-23,good\n");
	ck_assert(!book_skip_for_happening(book, &boat, HAPPENED_GROUNDING, "hull.after", " ", &none));
	g_clear_error(&none);
	ck_assert(!book_skip_for_happening(book, &boat, HAPPENED_GROUNDING, "hull.look", "done", &none));
	g_clear_error(&none);
	ck_assert(book_skip_for_happening(book, &boat, HAPPENED_GROUNDING, "hull.after", "no time", &none));
	ck_assert(book_close_happening(book, &boat, HAPPENED_GROUNDING, who.today, &closed, &none));
	ck_assert_int_eq(closed, 1);
}
END_TEST

/* Whatever the day, the groups come in their order, the worst first, and every task stands in one place only. */
START_TEST(the_demo_is_told_in_order_and_each_task_once)
{
	g_autoptr(GHashTable) seen = g_hash_table_new(g_str_hash, g_str_equal);
	struct ready *r;

	open_demo();
	r = check(who.today + _i * 97);
	ck_assert_int_gt(r->holding, 0);
	for (int i = 0; i < ready_count(r); i++) {
		const struct ready_item *a = ready_at(r, i), *b = ready_at(r, i + 1);

		ck_assert_ptr_nonnull(a->words);
		ck_assert_ptr_nonnull(a->why);
		ck_assert_msg(a->task == NONE || g_hash_table_add(seen, a->name), "%s stands there twice", a->name);
		if (!b || a->until != NONE || b->until != NONE)
			continue;
		ck_assert_int_le(a->group, b->group);
		ck_assert(a->group != b->group || a->consequence <= b->consequence || b->consequence == NONE);
	}
	ready_free(r);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("logbook/ready");
	TCase *cases = tcase_create("ready");

	tcase_add_checked_fixture(cases, setup, teardown);
	tcase_add_test(cases, a_boat_of_which_all_is_in_order_may_be_launched);
	tcase_add_loop_test(cases, it_is_not_talked_into_a_yes, 0, G_N_ELEMENTS(ways));
	tcase_add_loop_test(cases, what_is_put_right_holds_no_longer, 0, G_N_ELEMENTS(settled));
	tcase_add_test(cases, what_falls_due_by_the_launch_holds_it_and_what_is_afloat_only_does_not);
	tcase_add_test(cases, a_waiver_marks_what_it_lets_pass_and_ends_after_its_last_day);
	tcase_add_test(cases, a_happening_is_not_closed_over_what_is_left);
	tcase_add_loop_test(cases, the_demo_is_told_in_order_and_each_task_once, 0, 4);
	suite_add_tcase(suite, cases);
	return run_suite(suite);
}
