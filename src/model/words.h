/* Words stored and shown for each enum: one table both ways. */
#ifndef MODEL_WORDS_H
#define MODEL_WORDS_H

#include "base/quantity.h" /* enum units */
#include "base/value.h"
#include "engine/types.h"

struct words {
	const char *what; /* "water": for messages */
	const char *const *word;
	int n;
};

/* Index of a word, NONE when it is not one of them.  Case does not count. */
gint64 word_index(const struct words *w, const char *text);
/* The same for people: ERR_INPUT names the words allowed and the nearest. */
gboolean word_parse(const struct words *w, const char *text, gint64 *index, GError **err);
/* "" for NONE. */
const char *word_of(const struct words *w, gint64 index);

enum boat_kind { KIND_PETROL_STERNDRIVE, KIND_DIESEL_STERNDRIVE, KIND_INBOARD, KIND_OUTBOARD, KIND_JET, KIND_SAIL };
enum meter_how { METER_FIRST, METER_REPLACED, METER_RESET, METER_ESTIMATED };
enum outcome {
	OUTCOME_DONE, /* the work was done as the task says */
	OUTCOME_GOOD, /* looked at, found good */
	OUTCOME_BAD, /* looked at, found wanting: restarts nothing */
	OUTCOME_RENEWED, /* a new part went in */
	OUTCOME_TOPPED_UP, /* restarts nothing */
	OUTCOME_NOT_SEEN, /* greased, but no fresh grease seen; or no proof: restarts nothing */
	OUTCOME_CLAIMED, /* told by someone else, without proof: never enough where failure sinks, burns or hurts */
};
enum standing { STANDING_MANUAL, STANDING_PUBLISHED, STANDING_PRACTICE, STANDING_MEMORY, STANDING_OWNER, STANDING_ASSUMPTION };
enum happening_kind {
	HAPPENED_GROUNDING,
	HAPPENED_SWAMPING,
	HAPPENED_OVERHEATING,
	HAPPENED_LINE,
	HAPPENED_DRY_RUN,
	HAPPENED_FLOODED_BILGE,
	HAPPENED_BAD_FUEL,
	HAPPENED_SILT,
	HAPPENED_DRIVE_OFF,
	HAPPENED_NEW_BERTH,
	HAPPENED_BOUGHT,
	HAPPENED_POWER_LOSS,
	HAPPENED_MILKY_OIL,
	HAPPENED_VIBRATION,
	HAPPENED_OTHER
};
enum level { LEVEL_HOLD, LEVEL_MEND, LEVEL_WATCH }; /* the launch is held; mended this season; measured again */
enum season_list { LIST_COMMISSIONING, LIST_FIRST_DAY, LIST_MID_SEASON, LIST_HAUL_OUT, LIST_LAY_UP, LIST_SEA_TRIAL, SEASON_LISTS };
enum bought { BOUGHT_NEW, BOUGHT_USED };
enum step_kind { STEP_TOOL, STEP_PART, STEP_CONSUMABLE, STEP_STATE, STEP_STEP, STEP_PROOF };
enum removal_kind { REMOVAL_PART, REMOVAL_FASTENER, REMOVAL_RETAINER, REMOVAL_PLUG, REMOVAL_SETTING };
enum removal_state { REMOVAL_REUSE, REMOVAL_RENEW, REMOVAL_MISSING, REMOVAL_EXTRA }; /* missing as found; left over afterwards */
enum line_whose { LINE_OWNER, LINE_YARD };
enum verb { VERB_INSPECT, VERB_TEST, VERB_MEASURE, VERB_GREASE, VERB_CHANGE, VERB_RENEW, VERB_TIGHTEN };
enum shipped_row { SHIPPED_FITTING, SHIPPED_TASK };

extern const struct words words_boat_kind; /* petrol-sterndrive diesel-sterndrive inboard outboard jet sail */
extern const struct words words_stand; /* afloat trailer ashore roof */
extern const struct words words_water; /* fresh brackish salt */
extern const struct words words_air; /* c1 c2 c3 c4 c5 cx */
extern const struct words words_mechanism; /* none corrosion galvanic rubber raw-water fluid wear growth frost */
extern const struct words words_consequence; /* sinks burns hurts strands wrecks costs */
extern const struct words words_workplace; /* anywhere out on-hose afloat shop */
extern const struct words words_clock_rule; /* done inspection renewal printed-date */
extern const struct words words_limit_kind; /* hours months outings seasons event happening first-hours condition */
extern const struct words words_season_event; /* launch first-day mid-season haul-out lay-up */
extern const struct words
	words_opportunity; /* now before-launch this-season lay-up next-spring later each-outing on-condition no-record */
extern const struct words words_meter_how; /* first replaced reset estimated */
extern const struct words words_outcome; /* done good bad renewed topped-up not-seen claimed */
extern const struct words words_standing; /* manual published practice memory owner assumption */
extern const struct words words_happening; /* grounding swamping overheating line dry-run flooded-bilge bad-fuel silt
						   drive-off new-berth bought power-loss milky-oil vibration other */
extern const struct words words_level; /* hold mend watch */
extern const struct words words_season_list; /* commissioning first-day mid-season haul-out lay-up sea-trial */
extern const struct words words_bought; /* new used */
extern const struct words words_units; /* inch metric */
extern const struct words words_shipped; /* fitting task */
extern const struct words words_step_kind; /* tool part consumable state step proof */
extern const struct words words_removal_kind; /* part fastener retainer plug setting */
extern const struct words words_removal_state; /* reuse renew missing extra */
extern const struct words words_line_whose; /* owner yard */
extern const struct words words_verb; /* inspect test measure grease change renew tighten */

#endif
