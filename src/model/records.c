#include "model/records.h"

/* name, kind, place in the struct, required, and what it refers to or which words it takes */
static const struct field boat_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct boat, id), TRUE, RECORD_COUNT, NULL },
	{ "name", FIELD_TEXT, offsetof(struct boat, name), TRUE, RECORD_COUNT, NULL },
	{ "kind", FIELD_WORD, offsetof(struct boat, kind), TRUE, RECORD_COUNT, &words_boat_kind },
	{ "berth", FIELD_WORD, offsetof(struct boat, berth), TRUE, RECORD_COUNT, &words_stand },
	{ "winter", FIELD_WORD, offsetof(struct boat, winter), TRUE, RECORD_COUNT, &words_stand },
	{ "water", FIELD_WORD, offsetof(struct boat, water), TRUE, RECORD_COUNT, &words_water },
	{ "launch", FIELD_YEARDAY, offsetof(struct boat, launch), TRUE, RECORD_COUNT, NULL },
	{ "haul-out", FIELD_YEARDAY, offsetof(struct boat, haul_out), TRUE, RECORD_COUNT, NULL },
	{ "place", FIELD_TEXT, offsetof(struct boat, place), FALSE, RECORD_COUNT, NULL },
	{ "since", FIELD_DATE, offsetof(struct boat, since), FALSE, RECORD_COUNT, NULL },
	{ "built", FIELD_COUNT, offsetof(struct boat, built), FALSE, RECORD_COUNT, NULL },
	{ "catalogue", FIELD_TEXT, offsetof(struct boat, catalogue), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct boat, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field engine_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct engine, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct engine, boat), TRUE, RECORD_BOAT, NULL },
	{ "name", FIELD_TEXT, offsetof(struct engine, name), TRUE, RECORD_COUNT, NULL },
	{ "hours", FIELD_HOURS, offsetof(struct engine, hours), FALSE, RECORD_COUNT, NULL },
	{ "estimated", FIELD_YES, offsetof(struct engine, estimated), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct engine, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field meter_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct meter, id), TRUE, RECORD_COUNT, NULL },
	{ "engine", FIELD_REF, offsetof(struct meter, engine), TRUE, RECORD_ENGINE, NULL },
	{ "fitted", FIELD_DATE, offsetof(struct meter, fitted), TRUE, RECORD_COUNT, NULL },
	{ "start", FIELD_HOURS, offsetof(struct meter, start), TRUE, RECORD_COUNT, NULL },
	{ "engine-hours", FIELD_HOURS, offsetof(struct meter, engine_hours), FALSE, RECORD_COUNT, NULL },
	{ "how", FIELD_WORD, offsetof(struct meter, how), TRUE, RECORD_COUNT, &words_meter_how },
	{ "remark", FIELD_TEXT, offsetof(struct meter, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field fitting_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct fitting, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct fitting, boat), TRUE, RECORD_BOAT, NULL },
	{ "path", FIELD_TEXT, offsetof(struct fitting, path), TRUE, RECORD_COUNT, NULL },
	{ "title", FIELD_TEXT, offsetof(struct fitting, title), TRUE, RECORD_COUNT, NULL },
	{ "engine", FIELD_REF, offsetof(struct fitting, engine), FALSE, RECORD_ENGINE, NULL },
	{ "variant", FIELD_TEXT, offsetof(struct fitting, variant), FALSE, RECORD_COUNT, NULL },
	{ "variants", FIELD_TEXT, offsetof(struct fitting, variants), FALSE, RECORD_COUNT, NULL },
	{ "below-waterline", FIELD_YES, offsetof(struct fitting, below_waterline), FALSE, RECORD_COUNT, NULL },
	{ "fuel", FIELD_YES, offsetof(struct fitting, fuel), FALSE, RECORD_COUNT, NULL },
	{ "rubber", FIELD_YES, offsetof(struct fitting, rubber), FALSE, RECORD_COUNT, NULL },
	{ "needs-off", FIELD_TEXT, offsetof(struct fitting, needs_off), FALSE, RECORD_COUNT, NULL },
	{ "off-minutes", FIELD_COUNT, offsetof(struct fitting, off_minutes), FALSE, RECORD_COUNT, NULL },
	{ "retired", FIELD_YES, offsetof(struct fitting, retired), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct fitting, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field part_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct part, id), TRUE, RECORD_COUNT, NULL },
	{ "fitting", FIELD_REF, offsetof(struct part, fitting), TRUE, RECORD_FITTING, NULL },
	{ "what", FIELD_TEXT, offsetof(struct part, what), TRUE, RECORD_COUNT, NULL },
	{ "number", FIELD_TEXT, offsetof(struct part, number), FALSE, RECORD_COUNT, NULL },
	{ "fitted", FIELD_DATE, offsetof(struct part, fitted), FALSE, RECORD_COUNT, NULL },
	{ "removed", FIELD_DATE, offsetof(struct part, removed), FALSE, RECORD_COUNT, NULL },
	{ "made", FIELD_DATE, offsetof(struct part, made), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct part, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field stay_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct stay, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct stay, boat), TRUE, RECORD_BOAT, NULL },
	{ "date", FIELD_DATE, offsetof(struct stay, date), TRUE, RECORD_COUNT, NULL },
	{ "until", FIELD_DATE, offsetof(struct stay, until), FALSE, RECORD_COUNT, NULL },
	{ "stand", FIELD_WORD, offsetof(struct stay, stand), TRUE, RECORD_COUNT, &words_stand },
	{ "water", FIELD_WORD, offsetof(struct stay, water), FALSE, RECORD_COUNT, &words_water },
	{ "place", FIELD_TEXT, offsetof(struct stay, place), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct stay, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field season_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct season, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct season, boat), TRUE, RECORD_BOAT, NULL },
	{ "launch", FIELD_DATE, offsetof(struct season, launch), TRUE, RECORD_COUNT, NULL },
	{ "haul-out", FIELD_DATE, offsetof(struct season, haul_out), FALSE, RECORD_COUNT, NULL },
	{ "planned", FIELD_YES, offsetof(struct season, planned), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct season, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field outing_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct outing, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct outing, boat), TRUE, RECORD_BOAT, NULL },
	{ "date", FIELD_DATE, offsetof(struct outing, date), TRUE, RECORD_COUNT, NULL },
	{ "engine", FIELD_REF, offsetof(struct outing, engine), FALSE, RECORD_ENGINE, NULL },
	{ "hours", FIELD_HOURS, offsetof(struct outing, hours), TRUE, RECORD_COUNT, NULL },
	{ "water", FIELD_WORD, offsetof(struct outing, water), FALSE, RECORD_COUNT, &words_water },
	{ "rinsed", FIELD_YES, offsetof(struct outing, rinsed), FALSE, RECORD_COUNT, NULL },
	{ "trip", FIELD_REF, offsetof(struct outing, trip), FALSE, RECORD_OUTING, NULL },
	{ "meter", FIELD_REF, offsetof(struct outing, meter), FALSE, RECORD_METER, NULL },
	{ "reading", FIELD_HOURS, offsetof(struct outing, reading), FALSE, RECORD_COUNT, NULL },
	{ "estimated", FIELD_YES, offsetof(struct outing, estimated), FALSE, RECORD_COUNT, NULL },
	{ "place", FIELD_TEXT, offsetof(struct outing, place), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct outing, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field happening_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct happening, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct happening, boat), TRUE, RECORD_BOAT, NULL },
	{ "date", FIELD_DATE, offsetof(struct happening, date), TRUE, RECORD_COUNT, NULL },
	{ "kind", FIELD_WORD, offsetof(struct happening, kind), TRUE, RECORD_COUNT, &words_happening },
	{ "closed", FIELD_DATE, offsetof(struct happening, closed), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct happening, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field task_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct task, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct task, boat), TRUE, RECORD_BOAT, NULL },
	{ "name", FIELD_TEXT, offsetof(struct task, name), TRUE, RECORD_COUNT, NULL },
	{ "fitting", FIELD_REF, offsetof(struct task, fitting), TRUE, RECORD_FITTING, NULL },
	{ "title", FIELD_TEXT, offsetof(struct task, title), TRUE, RECORD_COUNT, NULL },
	{ "verb", FIELD_WORD, offsetof(struct task, verb), TRUE, RECORD_COUNT, &words_verb },
	{ "place", FIELD_WORD, offsetof(struct task, place), TRUE, RECORD_COUNT, &words_workplace },
	{ "mechanism", FIELD_WORD, offsetof(struct task, mechanism), TRUE, RECORD_COUNT, &words_mechanism },
	{ "consequence", FIELD_WORD, offsetof(struct task, consequence), TRUE, RECORD_COUNT, &words_consequence },
	{ "rule", FIELD_WORD, offsetof(struct task, rule), TRUE, RECORD_COUNT, &words_clock_rule },
	{ "minutes", FIELD_COUNT, offsetof(struct task, minutes), FALSE, RECORD_COUNT, NULL },
	{ "variants", FIELD_TEXT, offsetof(struct task, variants), FALSE, RECORD_COUNT, NULL },
	{ "part", FIELD_TEXT, offsetof(struct task, part), FALSE, RECORD_COUNT, NULL },
	{ "proof", FIELD_TEXT, offsetof(struct task, proof), FALSE, RECORD_COUNT, NULL },
	{ "caution", FIELD_TEXT, offsetof(struct task, caution), FALSE, RECORD_COUNT, NULL },
	{ "retired", FIELD_YES, offsetof(struct task, retired), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct task, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field limit_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct limit, id), TRUE, RECORD_COUNT, NULL },
	{ "task", FIELD_REF, offsetof(struct limit, task), TRUE, RECORD_TASK, NULL },
	{ "kind", FIELD_WORD, offsetof(struct limit, kind), TRUE, RECORD_COUNT, &words_limit_kind },
	{ "amount", FIELD_COUNT, offsetof(struct limit, amount), FALSE, RECORD_COUNT, NULL },
	{ "hours", FIELD_HOURS, offsetof(struct limit, hours), FALSE, RECORD_COUNT, NULL },
	{ "salt", FIELD_COUNT, offsetof(struct limit, salt), FALSE, RECORD_COUNT, NULL },
	{ "salt-hours", FIELD_HOURS, offsetof(struct limit, salt_hours), FALSE, RECORD_COUNT, NULL },
	{ "event", FIELD_WORD, offsetof(struct limit, event), FALSE, RECORD_COUNT, &words_season_event },
	{ "happening", FIELD_WORD, offsetof(struct limit, happening), FALSE, RECORD_COUNT, &words_happening },
	{ "measured", FIELD_TEXT, offsetof(struct limit, measured), FALSE, RECORD_COUNT, NULL },
	{ "standing", FIELD_WORD, offsetof(struct limit, standing), TRUE, RECORD_COUNT, &words_standing },
	{ "source", FIELD_TEXT, offsetof(struct limit, source), TRUE, RECORD_COUNT, NULL },
};

static const struct field service_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct service, id), TRUE, RECORD_COUNT, NULL },
	{ "task", FIELD_REF, offsetof(struct service, task), TRUE, RECORD_TASK, NULL },
	{ "date", FIELD_DATE, offsetof(struct service, date), TRUE, RECORD_COUNT, NULL },
	{ "earliest", FIELD_DATE, offsetof(struct service, earliest), FALSE, RECORD_COUNT, NULL },
	{ "hours-least", FIELD_HOURS, offsetof(struct service, hours_least), FALSE, RECORD_COUNT, NULL },
	{ "hours-most", FIELD_HOURS, offsetof(struct service, hours_most), FALSE, RECORD_COUNT, NULL },
	{ "outcome", FIELD_WORD, offsetof(struct service, outcome), TRUE, RECORD_COUNT, &words_outcome },
	{ "meter", FIELD_REF, offsetof(struct service, meter), FALSE, RECORD_METER, NULL },
	{ "reading", FIELD_HOURS, offsetof(struct service, reading), FALSE, RECORD_COUNT, NULL },
	{ "after", FIELD_HOURS, offsetof(struct service, after), FALSE, RECORD_COUNT, NULL },
	{ "made", FIELD_DATE, offsetof(struct service, made), FALSE, RECORD_COUNT, NULL },
	{ "estimated", FIELD_YES, offsetof(struct service, estimated), FALSE, RECORD_COUNT, NULL },
	{ "seen", FIELD_TEXT, offsetof(struct service, seen), FALSE, RECORD_COUNT, NULL },
	{ "proof", FIELD_TEXT, offsetof(struct service, proof), FALSE, RECORD_COUNT, NULL },
	{ "who", FIELD_TEXT, offsetof(struct service, who), FALSE, RECORD_COUNT, NULL },
	{ "cost", FIELD_CENTS, offsetof(struct service, cost), FALSE, RECORD_COUNT, NULL },
	{ "currency", FIELD_TEXT, offsetof(struct service, currency), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct service, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field measurement_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct measurement, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct measurement, boat), TRUE, RECORD_BOAT, NULL },
	{ "fitting", FIELD_REF, offsetof(struct measurement, fitting), FALSE, RECORD_FITTING, NULL },
	{ "date", FIELD_DATE, offsetof(struct measurement, date), TRUE, RECORD_COUNT, NULL },
	{ "what", FIELD_TEXT, offsetof(struct measurement, what), TRUE, RECORD_COUNT, NULL },
	{ "as-read", FIELD_TEXT, offsetof(struct measurement, as_read), TRUE, RECORD_COUNT, NULL },
	{ "value", FIELD_REAL, offsetof(struct measurement, value), FALSE, RECORD_COUNT, NULL },
	{ "unit", FIELD_TEXT, offsetof(struct measurement, unit), FALSE, RECORD_COUNT, NULL },
	{ "water", FIELD_WORD, offsetof(struct measurement, water), FALSE, RECORD_COUNT, &words_water },
	{ "psu", FIELD_REAL, offsetof(struct measurement, psu), FALSE, RECORD_COUNT, NULL },
	{ "method", FIELD_TEXT, offsetof(struct measurement, method), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct measurement, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field bound_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct bound, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct bound, boat), TRUE, RECORD_BOAT, NULL },
	{ "fitting", FIELD_REF, offsetof(struct bound, fitting), FALSE, RECORD_FITTING, NULL },
	{ "what", FIELD_TEXT, offsetof(struct bound, what), TRUE, RECORD_COUNT, NULL },
	{ "watch-below", FIELD_REAL, offsetof(struct bound, watch_below), FALSE, RECORD_COUNT, NULL },
	{ "watch-above", FIELD_REAL, offsetof(struct bound, watch_above), FALSE, RECORD_COUNT, NULL },
	{ "stop-below", FIELD_REAL, offsetof(struct bound, stop_below), FALSE, RECORD_COUNT, NULL },
	{ "stop-above", FIELD_REAL, offsetof(struct bound, stop_above), FALSE, RECORD_COUNT, NULL },
	{ "standing", FIELD_WORD, offsetof(struct bound, standing), TRUE, RECORD_COUNT, &words_standing },
	{ "source", FIELD_TEXT, offsetof(struct bound, source), TRUE, RECORD_COUNT, NULL },
};

static const struct field rate_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct rate, id), TRUE, RECORD_COUNT, NULL },
	{ "name", FIELD_TEXT, offsetof(struct rate, name), TRUE, RECORD_COUNT, NULL },
	{ "value", FIELD_REAL, offsetof(struct rate, value), TRUE, RECORD_COUNT, NULL },
	{ "unit", FIELD_TEXT, offsetof(struct rate, unit), FALSE, RECORD_COUNT, NULL },
	{ "standing", FIELD_WORD, offsetof(struct rate, standing), TRUE, RECORD_COUNT, &words_standing },
	{ "source", FIELD_TEXT, offsetof(struct rate, source), TRUE, RECORD_COUNT, NULL },
};

static const struct field place_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct place, id), TRUE, RECORD_COUNT, NULL },
	{ "name", FIELD_TEXT, offsetof(struct place, name), TRUE, RECORD_COUNT, NULL },
	{ "water", FIELD_WORD, offsetof(struct place, water), FALSE, RECORD_COUNT, &words_water },
	{ "salinity", FIELD_REAL, offsetof(struct place, salinity), FALSE, RECORD_COUNT, NULL },
	{ "as-read", FIELD_TEXT, offsetof(struct place, as_read), FALSE, RECORD_COUNT, NULL },
	{ "air", FIELD_WORD, offsetof(struct place, air), FALSE, RECORD_COUNT, &words_air },
	{ "remark", FIELD_TEXT, offsetof(struct place, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field climate_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct climate_month, id), TRUE, RECORD_COUNT, NULL },
	{ "place", FIELD_REF, offsetof(struct climate_month, place), TRUE, RECORD_PLACE, NULL },
	{ "month", FIELD_COUNT, offsetof(struct climate_month, month), TRUE, RECORD_COUNT, NULL },
	{ "water", FIELD_REAL, offsetof(struct climate_month, water), FALSE, RECORD_COUNT, NULL },
	{ "air", FIELD_REAL, offsetof(struct climate_month, air), FALSE, RECORD_COUNT, NULL },
};

#define TYPE(r, one, many, fields) [r] = { #one, many, fields, G_N_ELEMENTS(fields), sizeof(struct one) }

const struct record_type *
record_type(enum record r)
{
	static const struct record_type types[RECORD_COUNT] = {
		TYPE(RECORD_BOAT, boat, "boats", boat_fields),
		TYPE(RECORD_ENGINE, engine, "engines", engine_fields),
		TYPE(RECORD_METER, meter, "meters", meter_fields),
		TYPE(RECORD_FITTING, fitting, "fittings", fitting_fields),
		TYPE(RECORD_PART, part, "parts", part_fields),
		TYPE(RECORD_STAY, stay, "stays", stay_fields),
		TYPE(RECORD_SEASON, season, "seasons", season_fields),
		TYPE(RECORD_OUTING, outing, "outings", outing_fields),
		TYPE(RECORD_HAPPENING, happening, "happenings", happening_fields),
		TYPE(RECORD_TASK, task, "tasks", task_fields),
		TYPE(RECORD_LIMIT, limit, "limits", limit_fields),
		TYPE(RECORD_SERVICE, service, "services", service_fields),
		TYPE(RECORD_MEASUREMENT, measurement, "measurements", measurement_fields),
		TYPE(RECORD_BOUND, bound, "bounds", bound_fields),
		TYPE(RECORD_RATE, rate, "rates", rate_fields),
		TYPE(RECORD_PLACE, place, "places", place_fields),
		[RECORD_CLIMATE] = { "climate", "climates", climate_fields, G_N_ELEMENTS(climate_fields),
				     sizeof(struct climate_month) },
	};

	return &types[r];
}
