/* long: one struct a kind of record, each field said once.
 * Every kind of record.  Field order here, in records.c, and in the schema is one and the same (a test compares). */
#ifndef MODEL_RECORDS_H
#define MODEL_RECORDS_H

#include "model/record.h"
#include "model/words.h"

struct boat {
	gint64 id;
	char *name;
	gint64 kind; /* words_boat_kind */
	gint64 berth; /* words_stand: where it lies in season */
	gint64 winter; /* words_stand: where it lies out of season */
	gint64 water; /* words_water: usual */
	gint64 launch, haul_out; /* usual days of the year */
	char *place; /* where it usually lies: a place's name */
	gint64 since; /* the first day that this log knows of the boat */
	gint64 built; /* year */
	char *catalogue; /* that its tasks came from: the kind of boat it is for */
	char *remark;
	gint64 edition; /* of that catalogue */
	gint64 units; /* words_units: shown beside what was typed; NONE: inch where inches were typed, and so on */
	gint64 delivered; /* day on which all of it was new; NONE: bought used, or not known */
};

struct engine {
	gint64 id, boat;
	char *name; /* main, port, starboard, generator */
	gint64 hours; /* running seconds before the log began; NONE: unknown */
	gint64 estimated; /* 1: that figure is a guess */
	char *remark;
};

/* A reading r of this meter is engine seconds  engine_hours + r - start. */
struct meter {
	gint64 id, engine;
	gint64 fitted; /* day from which it counts */
	gint64 start; /* its reading on that day */
	gint64 engine_hours; /* the engine's seconds at that moment; NONE: unknown, so only differences are known */
	gint64 how; /* words_meter_how */
	char *remark;
};

struct fitting {
	gint64 id, boat;
	char *path; /* drive/transom/gimbal-bearing, unique in the boat */
	char *title; /* "Gimbal bearing" */
	gint64 engine; /* whose hours count for it; NONE: the boat's only one, or all */
	char *variant; /* greasable, sealed, ...; NULL: not known */
	char *variants; /* those there are, separated by spaces */
	gint64 below_waterline, fuel, rubber; /* yes or no */
	char *needs_off; /* path of what must come off or be open first, then DESIGN=PATH of other ways; the chain follows */
	gint64 off_minutes; /* to take it off, or open it, and put it back */
	gint64 retired; /* 1: this boat has none */
	char *remark;
	char *opens_with; /* paths of what costs almost nothing extra once this is off or open, separated by spaces */
};

struct part {
	gint64 id, fitting;
	char *what; /* "bellows, U-joint" */
	char *number; /* as typed */
	gint64 fitted, removed, made; /* days */
	char *remark;
};

struct stay {
	gint64 id, boat;
	gint64 date, until; /* from, and the day it ended; NONE: lasts */
	gint64 stand, water;
	char *place, *remark;
};

struct season {
	gint64 id, boat;
	gint64 launch, haul_out; /* haul_out NONE: still afloat */
	gint64 planned; /* 1: dates intended, not yet so */
	char *remark;
};

/* One engine's share of one outing.  What was typed is kept: hours, or a meter's reading from which hours follow. */
struct outing {
	gint64 id, boat;
	gint64 date;
	gint64 engine; /* NONE: no engine ran */
	gint64 hours; /* seconds run */
	gint64 water; /* words_water; NONE: as usual */
	gint64 rinsed; /* 1, 0, NONE: not said */
	gint64 trip; /* NONE: a row of its own; else the id of the outing that this engine's row belongs to */
	gint64 meter, reading; /* reading in seconds as the meter showed it afterwards; NONE: hours were typed */
	gint64 estimated; /* 1: a guess, or hours that nobody logged found by a later reading */
	char *place, *remark;
};

struct happening {
	gint64 id, boat;
	gint64 date;
	gint64 kind; /* words_happening */
	gint64 closed; /* day on which all it asked for was done; NONE: open */
	char *remark;
};

struct task {
	gint64 id, boat;
	char *name; /* gimbal-bearing.grease, unique in the boat */
	gint64 fitting;
	char *title; /* "Grease the gimbal bearing until fresh grease shows" */
	gint64 verb, place, mechanism, consequence,
		rule; /* words_verb .workplace .mechanism .consequence .clock_rule */
	gint64 minutes; /* hands on, access not counted */
	char *variants; /* variants of the fitting that it exists for, separated by spaces; NULL: all */
	char *part; /* what to have at hand: "bellows and two clamps"; NULL: nothing */
	char *proof; /* what proves it: "fresh grease seen" */
	char *caution; /* key words of the cautions it needs, separated by spaces */
	gint64 retired; /* 1: not wanted on this boat */
	char *remark;
	char *state; /* what the boat must be in beyond the workplace: key-out, cold, ..., separated by spaces */
};

struct limit {
	gint64 id, task;
	gint64 kind; /* words_limit_kind */
	gint64 amount; /* months, outings, seasons; NONE for hours and kinds without */
	gint64 hours; /* seconds, for hours and first-hours */
	gint64 salt, salt_hours; /* the same in salt water, where the source prints two figures */
	gint64 event, happening; /* words_season_event, words_happening */
	char *measured; /* condition: the measured value that asks for it; NULL: a finding only */
	gint64 standing; /* words_standing */
	char *source; /* "manual p. 41", "published: insurer's claims study 2014", "common practice" */
};

struct service {
	gint64 id, task;
	gint64 date; /* or the last day that it can have been */
	gint64 earliest; /* the first day that it can have been; NONE: it was that day */
	gint64 hours_least, hours_most; /* what the engine had run then, where the day is not known */
	gint64 outcome; /* words_outcome */
	gint64 meter, reading; /* as the meter showed; NONE: not noted */
	gint64 after; /* seconds run later that same day */
	gint64 made; /* date printed on what went in */
	gint64 estimated; /* 1: the date is from memory */
	char *seen, *proof, *who;
	gint64 cost; /* cents */
	char *currency, *remark;
};

struct measurement {
	gint64 id, boat, fitting;
	gint64 date;
	char *what; /* anode-left, bearing-roughness, ... */
	char *as_read; /* "3/8 in" */
	double value; /* in unit */
	char *unit;
	gint64 water; /* words_water: that it was read in */
	double psu; /* its salinity */
	char *method, *remark;
};

/* A mooring, harbour or yard that several boats and stays may name. */
struct place {
	gint64 id;
	char *name;
	gint64 water; /* words_water; agrees with the salinity */
	double salinity; /* PSU */
	char *as_read; /* "42 mS/cm at 18 C" */
	gint64 air; /* words_air */
	char *remark;
};

struct climate_month {
	gint64 id, place;
	gint64 month; /* 1 to 12 */
	double water, air; /* C, monthly means */
};

/* The owner's limits of a measured value, in its kind's unit; NAN: as the program has it. */
struct bound {
	gint64 id, boat;
	gint64 fitting; /* NONE: wherever it is measured */
	char *what;
	double watch_below, watch_above, stop_below, stop_above;
	gint64 standing;
	char *source;
};

struct rate {
	gint64 id;
	char *name; /* corrosion.salt: of wear_constants */
	double value;
	char *unit;
	gint64 standing;
	char *source;
};

/* What was seen wrong.  Open until it is mended. */
struct finding {
	gint64 id, boat;
	gint64 fitting, task, outing, measurement; /* what it was found on, at, and by; NONE: not said */
	gint64 date;
	char *words; /* as typed */
	gint64 level, proposed; /* words_level */
	char *raised; /* why the rules raised it */
	char *rule; /* of the catalogue, that it met */
	char *makes_due; /* names of the tasks that it asks for at once, separated by spaces */
	gint64 until; /* day by which it is to be mended */
	char *allowed; /* what may be done with it until then */
	char *who;
	gint64 mended; /* day; NONE: open */
	gint64 service; /* that mended it */
	char *left_as, *remark;
};

/* What holds the launch, let pass for a while; one of finding, task and happening says what. */
struct waiver {
	gint64 id, boat, finding, task, happening;
	gint64 date, until; /* first and last day */
	char *who, *reason;
	gint64 ended; /* taken back on that day */
};

/* A task of a list, passed over: it stays due. */
struct skip {
	gint64 id, boat, task;
	gint64 list; /* words_season_list; NONE: of what happened */
	gint64 date;
	char *reason, *who;
};

struct photo {
	gint64 id, boat, finding, service; /* one of the two, or of these and removal */
	char *path; /* of the file; one that was typed is made whole, from the root on */
	char *digest; /* SHA-256 of the file's bytes then, in hexadecimal */
	gint64 date; /* it was taken */
	char *remark;
	gint64 removal; /* of the strip-down list */
};

/* Cautions read before a piece of work, once a day. */
struct heeded {
	gint64 id, boat, date;
	char *work; /* a list's name, a task's, a happening */
	char *cautions; /* their words, separated by spaces */
	char *who;
};

/* A row of the catalogue as it was taken over. */
struct shipped {
	gint64 id, boat;
	gint64 what; /* words_shipped */
	char *name; /* path, or name */
	char *digest; /* of the row, a task's with its limits */
};

/* A figure out of the boat's own manuals. */
struct figure {
	gint64 id, boat, fitting;
	char *what; /* torque, oil-quantity, ... */
	char *as_read; /* "60 ft-lb" */
	double value; /* in unit */
	char *unit;
	char *source; /* "manual p. 41" */
	char *remark;
};

/* Work done in one go, from opening to closing; paused, it waits for another winter. */
struct job {
	gint64 id;
	gint64 boat;
	char *name; /* short, unique in the boat: drive-off-2026 */
	char *title; /* for people */
	char *template; /* of the catalogue, that its steps came from */
	gint64 opened; /* day */
	gint64 paused; /* day since which it rests; NONE: it does not */
	gint64 closed; /* day; NONE: open */
	char *place; /* where things lie: the trays, the drive */
	char *who;
	char *remark;
};

/* What a job is for: a task or a finding. */
struct aim {
	gint64 id;
	gint64 job;
	gint64 task; /* one of these two */
	gint64 finding;
	gint64 service; /* that came of it */
	gint64 undone; /* day on which it was left undone */
	char *reason; /* why */
};

/* A line of a job: a tool or part to carry, a step, a proof. */
struct step {
	gint64 id;
	gint64 job;
	gint64 no; /* order in the job */
	gint64 kind; /* words_step_kind */
	char *text;
	gint64 done; /* day; NONE: open */
	char *seen; /* what was seen; while it is open, why it is left undone */
	char *who;
	gint64 task; /* that it does, or proves */
	gint64 on_condition; /* 1: only when found bad */
};

/* The strip-down list: what came off, or how something stood, and how it went back. */
struct removal {
	gint64 id;
	gint64 job;
	gint64 no; /* order in which it came off */
	gint64 kind; /* words_removal_kind */
	char *what; /* 6 bolts is count and what */
	gint64 count; /* how many came off; NONE: it is no thing to count */
	char *size; /* of tool or fastener, as typed: 5/8 in */
	char *as_found; /* figure or position: 3/8 in proud, 4 o'clock */
	char *orientation; /* which way round */
	char *tray; /* tray or bag */
	gint64 state; /* words_removal_state */
	gint64 fitting; /* whose it is */
	gint64 off; /* day */
	gint64 back; /* day it went back; NONE: not yet */
	gint64 back_count; /* how many went back */
	char *as_left; /* figure or position */
	char *why; /* why it differs from what was found */
	char *who;
	char *remark;
};

/* A sheet handed to a yard. */
struct sheet {
	gint64 id;
	gint64 boat;
	gint64 date; /* day */
	char *remark;
};

/* A line of a sheet, and what came back. */
struct sheetline {
	gint64 id;
	gint64 sheet;
	gint64 no; /* as printed */
	gint64 task; /* one of these two */
	gint64 finding;
	gint64 whose; /* words_line_whose */
	char *answer; /* SHA-256 of what the yard filled in, when it was read */
	gint64 answered; /* day */
	gint64 service; /* that came of it */
};

/* A kind of part or consumable. */
struct item {
	gint64 id;
	char *what; /* "bellows, U-joint" */
	char *unit; /* L, m; NULL: pieces */
	gint64 rubber; /* 1: it ages on the shelf */
	gint64 shelf_months; /* months that it may lie */
	gint64 lead_days; /* days from ordering to having */
	double keep; /* quantity always wanted on hand */
	char *remark;
};

/* Numbers of an item, each as typed. */
struct number {
	gint64 id;
	gint64 item;
	char *number;
	char *supplier; /* whose number it is */
	gint64 replaced_by; /* the number that took its place */
	char *remark;
};

/* So much of an item, bought together. */
struct lot {
	gint64 id;
	gint64 item;
	double quantity; /* that arrived, or was ordered */
	char *number; /* under which it was bought, as typed */
	char *supplier;
	gint64 price; /* cents, of all of it */
	char *currency; /* ISO 4217 */
	gint64 ordered; /* day */
	gint64 expected; /* day */
	gint64 arrived; /* day; NONE: not yet */
	gint64 made; /* day of manufacture */
	char *place; /* where it lies */
	char *remark;
};

/* Taken out of a lot. */
struct taken {
	gint64 id;
	gint64 lot;
	gint64 date; /* day */
	double quantity; /* below zero: put back */
	gint64 boat; /* for which; NONE: lost, thrown away, sent back */
	gint64 job;
	gint64 service;
	char *remark;
};

/* What a task needs of an item. */
struct need {
	gint64 id;
	gint64 item;
	gint64 task;
	double quantity;
	gint64 on_condition; /* 1: only when found bad */
};

#endif
