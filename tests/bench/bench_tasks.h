/* The tasks of every boat in a bench logbook: thirty, as a plain sterndrive has them, with invented intervals.
 * Figures are for timing only; they are nobody's advice. */
#ifndef BENCH_TASKS_H
#define BENCH_TASKS_H

#include "model/records.h"

struct bench_fitting { const char *path, *title, *needs_off; };

static const struct bench_fitting fittings[] = {
	{ "drive", "Drive unit", NULL },
	{ "drive/transom/bellows", "Bellows", "drive" },
	{ "drive/transom/gimbal-bearing", "Gimbal bearing", "drive" },
	{ "drive/upper/ujoint-shaft", "U-joint shaft", "drive" },
	{ "drive/gear-oil", "Gear oil", NULL },
	{ "drive/anodes", "Anodes of the drive", NULL },
	{ "drive/propeller", "Propeller", NULL },
	{ "drive/trim", "Trim pump and hoses", NULL },
	{ "engine/oil", "Engine oil and filter", NULL },
	{ "engine/seawater-pump", "Seawater pump", NULL },
	{ "engine/manifold", "Exhaust manifold", NULL },
	{ "engine/belt", "Drive belts", NULL },
	{ "engine/ignition", "Ignition", NULL },
	{ "engine/coupler", "Engine coupler", "drive" },
	{ "fuel/filter", "Fuel filter", NULL },
	{ "fuel/hoses", "Fuel hoses", NULL },
	{ "hull/bilge-pump", "Bilge pump", NULL },
	{ "hull/bottom", "Bottom", NULL },
	{ "hull/steering", "Steering", NULL },
	{ "safety/extinguisher", "Extinguisher", NULL },
	{ "safety/flares", "Flares", NULL },
	{ "electric/battery", "Battery", NULL },
};

struct bench_task {
	const char *name, *title;
	guint8 fitting, verb, place, mechanism, consequence, rule;
	gint16 minutes;
	gint16 hours, months, seasons;	/* limits; 0: none */
	gint8 event;	/* enum season_event, -1: none */
	gint16 done_months;	/* how often it is done; 0: never */
};

enum { INSPECT, TEST, MEASURE, GREASE, CHANGE, RENEW, TIGHTEN };	/* words_verb */

static const struct bench_task tasks[] = {
	{ "bellows.inspect", "Spread every fold and look for cracks", 1, INSPECT, WORK_OUT, MECH_RUBBER, COST_SINKS,
	  CLOCK_INSPECTION, 15, 0, 12, 0, EVENT_LAUNCH, 12 },
	{ "bellows.renew", "Renew the bellows and clamps", 1, RENEW, WORK_OUT, MECH_RUBBER, COST_SINKS, CLOCK_RENEWAL, 120, 0,
	  60, 0, -1, 60 },
	{ "gimbal-bearing.inspect", "Turn the bearing and feel for grit", 2, INSPECT, WORK_OUT, MECH_WEAR, COST_WRECKS,
	  CLOCK_INSPECTION, 5, 0, 12, 0, -1, 12 },
	{ "gimbal-bearing.grease", "Grease the bearing until fresh grease shows", 2, GREASE, WORK_OUT, MECH_WEAR,
	  COST_WRECKS, CLOCK_DONE, 5, 50, 12, 0, -1, 6 },
	{ "ujoint-shaft.grease", "Grease the crosses", 3, GREASE, WORK_OUT, MECH_WEAR, COST_WRECKS, CLOCK_DONE, 10, 100,
	  12, 0, -1, 12 },
	{ "ujoint-shaft.inspect", "Swing each cross both ways", 3, INSPECT, WORK_OUT, MECH_WEAR, COST_WRECKS,
	  CLOCK_INSPECTION, 10, 0, 0, 1, -1, 12 },
	{ "gear-oil.level", "Look at level and colour", 4, INSPECT, WORK_ANYWHERE, MECH_FLUID, COST_WRECKS,
	  CLOCK_INSPECTION, 3, 10, 1, 0, -1, 6 },
	{ "gear-oil.change", "Change the gear oil", 4, CHANGE, WORK_OUT, MECH_FLUID, COST_WRECKS, CLOCK_DONE, 45, 100, 12, 0,
	  EVENT_LAY_UP, 12 },
	{ "anodes.inspect", "Look how much is left", 5, INSPECT, WORK_OUT, MECH_GALVANIC, COST_WRECKS, CLOCK_INSPECTION, 5,
	  0, 6, 0, -1, 4 },
	{ "anodes.renew", "Renew the anodes", 5, RENEW, WORK_OUT, MECH_GALVANIC, COST_WRECKS, CLOCK_RENEWAL, 30, 0, 24, 0, -1,
	  20 },
	{ "propeller.inspect", "Look at blades and nut", 6, INSPECT, WORK_OUT, MECH_WEAR, COST_COSTS, CLOCK_INSPECTION, 3, 0,
	  0, 0, EVENT_LAUNCH, 6 },
	{ "propeller.grease", "Take it off and grease the splines", 6, GREASE, WORK_OUT, MECH_CORROSION, COST_STRANDS,
	  CLOCK_DONE, 25, 60, 12, 0, -1, 9 },
	{ "trim.level", "Look at the level of the trim fluid", 7, INSPECT, WORK_ANYWHERE, MECH_FLUID, COST_STRANDS,
	  CLOCK_INSPECTION, 5, 0, 6, 0, -1, 8 },
	{ "oil.level", "Look at the oil level", 8, INSPECT, WORK_ANYWHERE, MECH_FLUID, COST_WRECKS, CLOCK_INSPECTION, 3, 10, 0,
	  0, -1, 6 },
	{ "oil.change", "Change oil and filter", 8, CHANGE, WORK_ANYWHERE, MECH_FLUID, COST_WRECKS, CLOCK_DONE, 60, 100, 12, 0,
	  EVENT_LAY_UP, 11 },
	{ "impeller.renew", "Renew the impeller", 9, RENEW, WORK_OUT, MECH_RUBBER, COST_STRANDS, CLOCK_RENEWAL, 40, 200, 24, 0,
	  -1, 24 },
	{ "impeller.inspect", "Look at the impeller", 9, INSPECT, WORK_OUT, MECH_RUBBER, COST_STRANDS, CLOCK_INSPECTION, 20, 0,
	  0, 1, -1, 12 },
	{ "manifold.renew", "Renew the manifold", 10, RENEW, WORK_SHOP, MECH_RAW_WATER, COST_WRECKS, CLOCK_RENEWAL, 240, 0, 60,
	  0, -1, 60 },
	{ "manifold.flush", "Flush with fresh water", 10, CHANGE, WORK_ON_HOSE, MECH_RAW_WATER, COST_WRECKS, CLOCK_DONE, 15, 20,
	  0, 0, EVENT_HAUL_OUT, 6 },
	{ "belt.inspect", "Press and look for cracks", 11, INSPECT, WORK_ANYWHERE, MECH_RUBBER, COST_STRANDS, CLOCK_INSPECTION,
	  5, 50, 12, 0, -1, 7 },
	{ "ignition.renew", "Renew plugs and cap", 12, RENEW, WORK_ANYWHERE, MECH_WEAR, COST_STRANDS, CLOCK_RENEWAL, 60, 300, 36,
	  0, -1, 36 },
	{ "coupler.grease", "Grease the splines", 13, GREASE, WORK_OUT, MECH_WEAR, COST_WRECKS, CLOCK_DONE, 5, 50, 12, 0, -1,
	  12 },
	{ "fuel-filter.change", "Change the filter", 14, CHANGE, WORK_ANYWHERE, MECH_FLUID, COST_BURNS, CLOCK_DONE, 20, 100, 12, 0,
	  -1, 12 },
	{ "fuel-hoses.inspect", "Look, feel and smell along every hose", 15, INSPECT, WORK_ANYWHERE, MECH_RUBBER, COST_BURNS,
	  CLOCK_INSPECTION, 15, 0, 6, 0, EVENT_LAUNCH, 6 },
	{ "bilge-pump.test", "Let it lift water", 16, TEST, WORK_ANYWHERE, MECH_WEAR, COST_SINKS, CLOCK_DONE, 5, 0, 1, 0, -1, 6 },
	{ "bottom.clean", "Wash the bottom", 17, CHANGE, WORK_OUT, MECH_GROWTH, COST_COSTS, CLOCK_DONE, 90, 0, 0, 0,
	  EVENT_HAUL_OUT, 12 },
	{ "steering.test", "Swing it hard over both ways", 18, TEST, WORK_ANYWHERE, MECH_WEAR, COST_HURTS, CLOCK_DONE, 5, 25, 0, 0,
	  EVENT_LAUNCH, 5 },
	{ "extinguisher.inspect", "Look at the gauge and weigh it", 19, INSPECT, WORK_ANYWHERE, MECH_NONE, COST_BURNS,
	  CLOCK_INSPECTION, 5, 0, 12, 0, -1, 12 },
	{ "flares.renew", "Renew the flares", 20, RENEW, WORK_ANYWHERE, MECH_NONE, COST_HURTS, CLOCK_PRINTED, 5, 0, 42, 0, -1, 40 },
	{ "battery.load-test", "Test it under load", 21, TEST, WORK_ANYWHERE, MECH_FLUID, COST_STRANDS, CLOCK_DONE, 20, 0, 12, 0,
	  -1, 0 },
};

#endif
