#include "exchange/yard_csv.h"

#include "exchange/cell.h"

/* The columns and which must be filled: common practice of yards and owners, no source.  `id` is ours: a
 * sheet that comes back is matched by it and the line number, never by text. */
static const struct yard_column_def columns[YARD_COLUMN_COUNT] = {
	[YARD_ID] = { "id", YARD_MAY, FALSE,
		      "the line's key: leave it as it is, so that the sheet can be read back" },
	[YARD_LINE_NO] = { "line_no", YARD_MUST, TRUE,
			   "the line's number, for talking about it on the phone" },
	[YARD_DONE_BY] = { "done_by", YARD_MAY, FALSE, "yard or owner" },
	[YARD_BOAT_NAME] = { "boat_name", YARD_MAY, FALSE, "the boat; may be left out on purpose" },
	[YARD_HULL_ID] = { "hull_id", YARD_MAY, FALSE,
			   "hull identification number; may be left out on purpose" },
	[YARD_LENGTH_FT] = { "length_ft", YARD_MAY, TRUE, "length over all in feet" },
	[YARD_YEAR] = { "year", YARD_MAY, TRUE, "year built" },
	[YARD_BERTH_OR_TRAILER] = { "berth_or_trailer", YARD_MAY, FALSE, "where the boat lies" },
	[YARD_ACCESS_NOTE] = { "access_note", YARD_MAY, FALSE, "how to get at and into the boat" },
	[YARD_KEYS_WHERE] = { "keys_where", YARD_MAY, FALSE, "where the keys are" },
	[YARD_BATTERY_STATE] = { "battery_state", YARD_MAY, FALSE, "charged, flat, disconnected, taken out" },
	[YARD_DATE_LISTED] = { "date_listed", YARD_MAY, FALSE, "day on which the list was written" },
	[YARD_OWNER_CONTACT] = { "owner_contact", YARD_MAY, FALSE, "how to reach the owner" },
	[YARD_ENGINE_POSITION] = { "engine_position", YARD_MUST, FALSE, "single, port or starboard" },
	[YARD_ENGINE_MODEL] = { "engine_model_as_owner_writes", YARD_MAY, FALSE, "as on the plate" },
	[YARD_ENGINE_SERIAL] = { "engine_serial", YARD_MAY, FALSE, "as on the plate" },
	[YARD_DRIVE_SERIAL] = { "drive_serial", YARD_MAY, FALSE, "as on the plate" },
	[YARD_ENGINE_HOURS] = { "engine_hours", YARD_MUST, TRUE, "running hours, or unknown" },
	[YARD_HOURS_BASIS] = { "hours_basis", YARD_MAY, FALSE, "meter, estimated or unknown" },
	[YARD_WATER] = { "water", YARD_MAY, FALSE, "salt, brackish or fresh" },
	[YARD_KEPT] = { "kept", YARD_MAY, FALSE, "moored, on a trailer, ashore" },
	[YARD_COMPONENT_PATH] = { "component_path", YARD_MUST, FALSE,
				  "where in the boat's tree of fittings" },
	[YARD_SIDE] = { "side", YARD_MAY, FALSE, "P port, S starboard, C centre, n/a" },
	[YARD_ACTION] = { "action", YARD_MUST, FALSE,
			  "inspect, test, measure, adjust, replace, repair, quote only" },
	[YARD_DESCRIPTION] = { "description", YARD_MUST, FALSE, "one sentence in plain words" },
	[YARD_SYMPTOM_WHEN] = { "symptom_when", YARD_MAY, FALSE,
				"cold or hot, engine speed, turn, trim, since when" },
	[YARD_SEVERITY] = { "severity", YARD_MUST, FALSE, "DNL do not launch, FTS fix this season, WATCH" },
	[YARD_PRIORITY] = { "priority", YARD_MUST, TRUE,
			    "1 before launch, 2 this season, 3 when convenient" },
	[YARD_READING] = { "reading", YARD_MAY, TRUE, "what was measured" },
	[YARD_UNIT] = { "unit", YARD_MAY, FALSE, "of the reading" },
	[YARD_METHOD] = { "method", YARD_MAY, FALSE, "how it was measured" },
	[YARD_DATE] = { "date", YARD_MAY, FALSE, "when it was measured" },
	[YARD_PHOTO_FILE] = { "photo_file", YARD_MAY, FALSE, "names of photographs" },
	[YARD_ALREADY_DONE_BY_OWNER] = { "already_done_by_owner", YARD_MAY, FALSE,
					 "what is apart, and how it arrives" },
	[YARD_DO_NOT_DO] = { "do_not_do", YARD_MAY, FALSE, "what is not to be done" },
	[YARD_ASK_BEFORE] = { "ask_before", YARD_MAY, FALSE, "what needs a call first" },
	[YARD_PARTS_SUPPLIED_BY] = { "parts_supplied_by", YARD_MUST, FALSE, "owner or yard" },
	[YARD_PART_DESC] = { "part_desc", YARD_MAY, FALSE, "which parts" },
	[YARD_QTY] = { "qty", YARD_MAY, TRUE, "how many" },
	[YARD_PART_STATE] = { "part_state", YARD_MAY, FALSE, "wanted, on hand or ordered" },
	[YARD_FLUIDS_TYPES] = { "fluids_types", YARD_MAY, FALSE,
				"types of oil, gear oil, coolant, as the manual names them" },
	[YARD_ESTIMATE_HOURS] = { "estimate_hours", YARD_MAY, TRUE, "the owner's idea of the labour" },
	[YARD_COST_LIMIT] = { "cost_limit", YARD_MUST, TRUE, "stop and ask at this cost" },
	[YARD_CURRENCY] = { "currency", YARD_MAY, FALSE, "of the limit" },
	[YARD_AUTHORISATION] = { "authorisation", YARD_MUST, FALSE, "quote only, up to limit, go" },
	[YARD_NEEDED_BY] = { "needed_by", YARD_MUST, FALSE, "date" },
	[YARD_SEASON_EVENT] = { "season_event", YARD_MAY, FALSE, "launch, mid-season, haul-out, lay-up" },
	[YARD_PLACE_NEEDED] = { "place_needed", YARD_MAY, FALSE, "out, afloat or shop" },
	[YARD_DEPENDS_ON_LINE] = { "depends_on_line", YARD_MAY, TRUE, "the line that must be done before" },
	[YARD_LAST_DONE_DATE] = { "last_done_date", YARD_MAY, FALSE, "day, season or year" },
	[YARD_LAST_DONE_HOURS] = { "last_done_hours", YARD_MAY, TRUE, "engine hours then" },
	[YARD_SOURCE] = { "source", YARD_MAY, FALSE, "how that is known: logged, remembered, told" },
	[YARD_TORQUE_OR_SPEC_SOURCE] = { "torque_or_spec_source", YARD_MAY, FALSE, "the manual's page" },
	[YARD_RETURN_OLD_PARTS] = { "return_old_parts", YARD_MAY, FALSE, "yes or no" },
	[YARD_VERIFICATION_WANTED] = { "verification_wanted", YARD_MAY, FALSE,
				       "what is to be proved at the end" },
	[YARD_RESULT] = { "yard_result", YARD_BLANK, FALSE, "for the yard: what was found and done" },
	[YARD_HOURS] = { "yard_hours", YARD_BLANK, FALSE, "for the yard: labour" },
	[YARD_COST] = { "yard_cost", YARD_BLANK, FALSE, "for the yard: cost" },
	[YARD_NOTES] = { "yard_notes", YARD_BLANK, FALSE, "for the yard: anything else" },
	[YARD_RESULT_DATE] = { "yard_date", YARD_BLANK, FALSE, "for the yard: day of the work" },
	[YARD_INITIALS] = { "yard_initials", YARD_BLANK, FALSE, "for the yard: who did it" },
	[YARD_METER] = { "yard_meter", YARD_BLANK, FALSE, "for the yard: what the engine's hour meter showed" },
	[YARD_CAUTION] = { "caution", YARD_MAY, FALSE, "what makes the boat safe to work on, or does not" },
};

const struct yard_column_def *
yard_column(enum yard_column c)
{
	return &columns[c];
}

void
yard_line_clear(struct yard_line *line)
{
	for (int c = 0; c < YARD_COLUMN_COUNT; c++)
		g_clear_pointer(&line->cell[c], g_free);
}

static gboolean
is_empty(const char *text)
{
	return !text || !*text;
}

enum yard_column
yard_line_lacks(const struct yard_line *line)
{
	int c = 0;

	while (c < YARD_COLUMN_COUNT && (columns[c].use != YARD_MUST || !is_empty(line->cell[c])))
		c++;
	return (enum yard_column)c;
}

void
yard_csv_header(struct csv_out *out)
{
	for (int c = 0; c < YARD_COLUMN_COUNT; c++)
		csvout_word(out, columns[c].name);
	csvout_row(out);
}

gboolean
yard_csv_line(struct csv_out *out, const struct yard_line *line)
{
	for (int c = 0; c < YARD_COLUMN_COUNT; c++) {
		const char *text = line->cell[c];
		struct plain p;

		if (columns[c].use == YARD_BLANK || is_empty(text))
			csvout_text(out, NULL);
		else if (columns[c].number && plain_read(text, '.', &p))
			csvout_number(out, text);
		else
			csvout_text(out, text);
	}
	return csvout_row(out);
}
