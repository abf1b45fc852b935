/* The yard sheet as CSV: one row a job line, every column always there, the yard's own ones left blank. */
#ifndef EXCHANGE_YARD_CSV_H
#define EXCHANGE_YARD_CSV_H

#include "exchange/csv_out.h"

enum yard_column {
	YARD_ID, YARD_LINE_NO, YARD_DONE_BY,
	YARD_BOAT_NAME, YARD_HULL_ID, YARD_LENGTH_FT, YARD_YEAR,
	YARD_BERTH_OR_TRAILER, YARD_ACCESS_NOTE, YARD_KEYS_WHERE, YARD_BATTERY_STATE,
	YARD_DATE_LISTED, YARD_OWNER_CONTACT,
	YARD_ENGINE_POSITION, YARD_ENGINE_MODEL, YARD_ENGINE_SERIAL, YARD_DRIVE_SERIAL,
	YARD_ENGINE_HOURS, YARD_HOURS_BASIS,
	YARD_WATER, YARD_KEPT,
	YARD_COMPONENT_PATH, YARD_SIDE, YARD_ACTION, YARD_DESCRIPTION, YARD_SYMPTOM_WHEN,
	YARD_SEVERITY, YARD_PRIORITY,
	YARD_READING, YARD_UNIT, YARD_METHOD, YARD_DATE,
	YARD_PHOTO_FILE, YARD_ALREADY_DONE_BY_OWNER, YARD_DO_NOT_DO, YARD_ASK_BEFORE,
	YARD_PARTS_SUPPLIED_BY, YARD_PART_DESC, YARD_QTY, YARD_PART_STATE, YARD_FLUIDS_TYPES,
	YARD_ESTIMATE_HOURS, YARD_COST_LIMIT, YARD_CURRENCY, YARD_AUTHORISATION,
	YARD_NEEDED_BY, YARD_SEASON_EVENT, YARD_PLACE_NEEDED, YARD_DEPENDS_ON_LINE,
	YARD_LAST_DONE_DATE, YARD_LAST_DONE_HOURS, YARD_SOURCE,
	YARD_TORQUE_OR_SPEC_SOURCE, YARD_RETURN_OLD_PARTS, YARD_VERIFICATION_WANTED,
	YARD_RESULT, YARD_HOURS, YARD_COST, YARD_NOTES, YARD_RESULT_DATE, YARD_INITIALS, YARD_METER,
	YARD_CAUTION,
	YARD_COLUMN_COUNT
};

enum yard_use {
	YARD_MAY,	/* filled in when known */
	YARD_MUST,	/* a line without it is sent back */
	YARD_BLANK,	/* for the yard to fill in: always written empty */
};

struct yard_column_def {
	const char *name;	/* header */
	enum yard_use use;
	gboolean number;	/* a decimal with a point, when it looks like one */
	const char *help;
};

const struct yard_column_def *yard_column(enum yard_column c);

/* Texts owned by the line; NULL: not known. */
struct yard_line {
	char *cell[YARD_COLUMN_COUNT];
};
void yard_line_clear(struct yard_line *line);

/* The first column that must not be empty and is; YARD_COLUMN_COUNT: none. */
enum yard_column yard_line_lacks(const struct yard_line *line);

/* The header, then a row a line in the order given. */
void yard_csv_header(struct csv_out *out);
gboolean yard_csv_line(struct csv_out *out, const struct yard_line *line);	/* FALSE: see csvout_row() */

#endif
