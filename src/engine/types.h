/* The engine's words.  Their spelling for people and files is in model/words.c, in the same order. */
#ifndef ENGINE_TYPES_H
#define ENGINE_TYPES_H

/* Where the boat lies. */
enum stand { STAND_AFLOAT, STAND_TRAILER, STAND_ASHORE, STAND_ROOF, STAND_COUNT };

/* Water in words: fresh below 0.5 PSU, brackish to 30, salt from 30 (Venice System 1958, three classes made of six). */
enum water { WATER_FRESH, WATER_BRACKISH, WATER_SALT, WATER_COUNT };

/* What wears a fitting. */
enum mechanism {
	MECH_NONE,	/* printed dates, events: the rate is always 1 */
	MECH_CORROSION,
	MECH_GALVANIC,	/* anodes */
	MECH_RUBBER,
	MECH_RAW_WATER,
	MECH_FLUID,
	MECH_WEAR,
	MECH_GROWTH,
	MECH_FROST,
	MECH_COUNT
};

/* What a failure costs, worst first; the first three are never given lateness. */
enum consequence { COST_SINKS, COST_BURNS, COST_HURTS, COST_STRANDS, COST_WRECKS, COST_COSTS, CONSEQUENCE_COUNT };

/* The state of the boat that the work needs. */
enum workplace { WORK_ANYWHERE, WORK_OUT, WORK_ON_HOSE, WORK_AFLOAT, WORK_SHOP, WORKPLACE_COUNT };

/* What restarts a task's clock. */
enum clock_rule {
	CLOCK_DONE,	/* doing it */
	CLOCK_INSPECTION,	/* looking restarts the looking only; a renewal of the fitting restarts it too */
	CLOCK_RENEWAL,	/* a new part; counts from the day it was fitted */
	CLOCK_PRINTED,	/* the date made or printed on the thing; use does not count */
	CLOCK_RULE_COUNT
};

enum limit_kind {
	LIMIT_HOURS,	/* seconds of running */
	LIMIT_MONTHS,
	LIMIT_OUTINGS,
	LIMIT_SEASONS,	/* the k-th season's end after the last time */
	LIMIT_EVENT,	/* at an enum season_event each year */
	LIMIT_HAPPENING,	/* at once after something happened */
	LIMIT_FIRST_HOURS,	/* a first service: holds only until the task was done once */
	LIMIT_CONDITION,	/* when a finding or a measured value asks for it; no clock */
	LIMIT_KIND_COUNT
};

/* The fixed points of a boat's year. */
enum season_event { EVENT_LAUNCH, EVENT_FIRST_DAY, EVENT_MID_SEASON, EVENT_HAUL_OUT, EVENT_LAY_UP, SEASON_EVENT_COUNT };

/* When a task is to be done. */
enum opportunity {
	OPP_NOW,	/* something happened, or a finding asks: before the boat is used again */
	OPP_BEFORE_LAUNCH,
	OPP_FIRST_DAY,	/* the first day afloat */
	OPP_MID_SEASON,	/* a haul-out in mid-season, or sooner */
	OPP_THIS_SEASON,	/* by a date, between launch and haul-out */
	OPP_LAY_UP,	/* at haul-out or lay-up */
	OPP_NEXT_SPRING,	/* before the launch after that */
	OPP_LATER,
	OPP_EACH_OUTING,	/* part of every outing, not a line to fall due */
	OPP_ON_CONDITION,	/* only when a finding or a happening asks for it */
	OPP_NO_RECORD,	/* nobody knows when it was last done */
	OPPORTUNITY_COUNT
};

#endif
