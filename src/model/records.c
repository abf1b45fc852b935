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
	{ "edition", FIELD_COUNT, offsetof(struct boat, edition), FALSE, RECORD_COUNT, NULL },
	{ "units", FIELD_WORD, offsetof(struct boat, units), FALSE, RECORD_COUNT, &words_units },
	{ "delivered", FIELD_DATE, offsetof(struct boat, delivered), FALSE, RECORD_COUNT, NULL },
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
	{ "opens-with", FIELD_TEXT, offsetof(struct fitting, opens_with), FALSE, RECORD_COUNT, NULL },
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
	{ "state", FIELD_TEXT, offsetof(struct task, state), FALSE, RECORD_COUNT, NULL },
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

static const struct field finding_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct finding, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct finding, boat), TRUE, RECORD_BOAT, NULL },
	{ "fitting", FIELD_REF, offsetof(struct finding, fitting), FALSE, RECORD_FITTING, NULL },
	{ "task", FIELD_REF, offsetof(struct finding, task), FALSE, RECORD_TASK, NULL },
	{ "outing", FIELD_REF, offsetof(struct finding, outing), FALSE, RECORD_OUTING, NULL },
	{ "measurement", FIELD_REF, offsetof(struct finding, measurement), FALSE, RECORD_MEASUREMENT, NULL },
	{ "date", FIELD_DATE, offsetof(struct finding, date), TRUE, RECORD_COUNT, NULL },
	{ "words", FIELD_TEXT, offsetof(struct finding, words), TRUE, RECORD_COUNT, NULL },
	{ "level", FIELD_WORD, offsetof(struct finding, level), TRUE, RECORD_COUNT, &words_level },
	{ "proposed", FIELD_WORD, offsetof(struct finding, proposed), FALSE, RECORD_COUNT, &words_level },
	{ "raised", FIELD_TEXT, offsetof(struct finding, raised), FALSE, RECORD_COUNT, NULL },
	{ "rule", FIELD_TEXT, offsetof(struct finding, rule), FALSE, RECORD_COUNT, NULL },
	{ "makes-due", FIELD_TEXT, offsetof(struct finding, makes_due), FALSE, RECORD_COUNT, NULL },
	{ "until", FIELD_DATE, offsetof(struct finding, until), FALSE, RECORD_COUNT, NULL },
	{ "allowed", FIELD_TEXT, offsetof(struct finding, allowed), FALSE, RECORD_COUNT, NULL },
	{ "who", FIELD_TEXT, offsetof(struct finding, who), FALSE, RECORD_COUNT, NULL },
	{ "mended", FIELD_DATE, offsetof(struct finding, mended), FALSE, RECORD_COUNT, NULL },
	{ "service", FIELD_REF, offsetof(struct finding, service), FALSE, RECORD_SERVICE, NULL },
	{ "left-as", FIELD_TEXT, offsetof(struct finding, left_as), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct finding, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field waiver_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct waiver, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct waiver, boat), TRUE, RECORD_BOAT, NULL },
	{ "finding", FIELD_REF, offsetof(struct waiver, finding), FALSE, RECORD_FINDING, NULL },
	{ "task", FIELD_REF, offsetof(struct waiver, task), FALSE, RECORD_TASK, NULL },
	{ "happening", FIELD_REF, offsetof(struct waiver, happening), FALSE, RECORD_HAPPENING, NULL },
	{ "date", FIELD_DATE, offsetof(struct waiver, date), TRUE, RECORD_COUNT, NULL },
	{ "until", FIELD_DATE, offsetof(struct waiver, until), TRUE, RECORD_COUNT, NULL },
	{ "who", FIELD_TEXT, offsetof(struct waiver, who), TRUE, RECORD_COUNT, NULL },
	{ "reason", FIELD_TEXT, offsetof(struct waiver, reason), TRUE, RECORD_COUNT, NULL },
	{ "ended", FIELD_DATE, offsetof(struct waiver, ended), FALSE, RECORD_COUNT, NULL },
};

static const struct field skip_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct skip, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct skip, boat), TRUE, RECORD_BOAT, NULL },
	{ "task", FIELD_REF, offsetof(struct skip, task), TRUE, RECORD_TASK, NULL },
	{ "list", FIELD_WORD, offsetof(struct skip, list), FALSE, RECORD_COUNT, &words_season_list },
	{ "date", FIELD_DATE, offsetof(struct skip, date), TRUE, RECORD_COUNT, NULL },
	{ "reason", FIELD_TEXT, offsetof(struct skip, reason), TRUE, RECORD_COUNT, NULL },
	{ "who", FIELD_TEXT, offsetof(struct skip, who), FALSE, RECORD_COUNT, NULL },
};

static const struct field photo_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct photo, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct photo, boat), TRUE, RECORD_BOAT, NULL },
	{ "finding", FIELD_REF, offsetof(struct photo, finding), FALSE, RECORD_FINDING, NULL },
	{ "service", FIELD_REF, offsetof(struct photo, service), FALSE, RECORD_SERVICE, NULL },
	{ "path", FIELD_TEXT, offsetof(struct photo, path), TRUE, RECORD_COUNT, NULL },
	{ "digest", FIELD_TEXT, offsetof(struct photo, digest), TRUE, RECORD_COUNT, NULL },
	{ "date", FIELD_DATE, offsetof(struct photo, date), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct photo, remark), FALSE, RECORD_COUNT, NULL },
	{ "removal", FIELD_REF, offsetof(struct photo, removal), FALSE, RECORD_REMOVAL, NULL },
};

static const struct field heeded_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct heeded, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct heeded, boat), TRUE, RECORD_BOAT, NULL },
	{ "date", FIELD_DATE, offsetof(struct heeded, date), TRUE, RECORD_COUNT, NULL },
	{ "work", FIELD_TEXT, offsetof(struct heeded, work), TRUE, RECORD_COUNT, NULL },
	{ "cautions", FIELD_TEXT, offsetof(struct heeded, cautions), TRUE, RECORD_COUNT, NULL },
	{ "who", FIELD_TEXT, offsetof(struct heeded, who), TRUE, RECORD_COUNT, NULL },
};

static const struct field shipped_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct shipped, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct shipped, boat), TRUE, RECORD_BOAT, NULL },
	{ "what", FIELD_WORD, offsetof(struct shipped, what), TRUE, RECORD_COUNT, &words_shipped },
	{ "name", FIELD_TEXT, offsetof(struct shipped, name), TRUE, RECORD_COUNT, NULL },
	{ "digest", FIELD_TEXT, offsetof(struct shipped, digest), TRUE, RECORD_COUNT, NULL },
};

static const struct field figure_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct figure, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct figure, boat), TRUE, RECORD_BOAT, NULL },
	{ "fitting", FIELD_REF, offsetof(struct figure, fitting), TRUE, RECORD_FITTING, NULL },
	{ "what", FIELD_TEXT, offsetof(struct figure, what), TRUE, RECORD_COUNT, NULL },
	{ "as-read", FIELD_TEXT, offsetof(struct figure, as_read), TRUE, RECORD_COUNT, NULL },
	{ "value", FIELD_REAL, offsetof(struct figure, value), FALSE, RECORD_COUNT, NULL },
	{ "unit", FIELD_TEXT, offsetof(struct figure, unit), FALSE, RECORD_COUNT, NULL },
	{ "source", FIELD_TEXT, offsetof(struct figure, source), TRUE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct figure, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field job_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct job, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct job, boat), TRUE, RECORD_BOAT, NULL },
	{ "name", FIELD_TEXT, offsetof(struct job, name), TRUE, RECORD_COUNT, NULL },
	{ "title", FIELD_TEXT, offsetof(struct job, title), TRUE, RECORD_COUNT, NULL },
	{ "template", FIELD_TEXT, offsetof(struct job, template), FALSE, RECORD_COUNT, NULL },
	{ "opened", FIELD_DATE, offsetof(struct job, opened), TRUE, RECORD_COUNT, NULL },
	{ "paused", FIELD_DATE, offsetof(struct job, paused), FALSE, RECORD_COUNT, NULL },
	{ "closed", FIELD_DATE, offsetof(struct job, closed), FALSE, RECORD_COUNT, NULL },
	{ "place", FIELD_TEXT, offsetof(struct job, place), FALSE, RECORD_COUNT, NULL },
	{ "who", FIELD_TEXT, offsetof(struct job, who), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct job, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field aim_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct aim, id), TRUE, RECORD_COUNT, NULL },
	{ "job", FIELD_REF, offsetof(struct aim, job), TRUE, RECORD_JOB, NULL },
	{ "task", FIELD_REF, offsetof(struct aim, task), FALSE, RECORD_TASK, NULL },
	{ "finding", FIELD_REF, offsetof(struct aim, finding), FALSE, RECORD_FINDING, NULL },
	{ "service", FIELD_REF, offsetof(struct aim, service), FALSE, RECORD_SERVICE, NULL },
	{ "undone", FIELD_DATE, offsetof(struct aim, undone), FALSE, RECORD_COUNT, NULL },
	{ "reason", FIELD_TEXT, offsetof(struct aim, reason), FALSE, RECORD_COUNT, NULL },
};

static const struct field step_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct step, id), TRUE, RECORD_COUNT, NULL },
	{ "job", FIELD_REF, offsetof(struct step, job), TRUE, RECORD_JOB, NULL },
	{ "no", FIELD_COUNT, offsetof(struct step, no), TRUE, RECORD_COUNT, NULL },
	{ "kind", FIELD_WORD, offsetof(struct step, kind), TRUE, RECORD_COUNT, &words_step_kind },
	{ "text", FIELD_TEXT, offsetof(struct step, text), TRUE, RECORD_COUNT, NULL },
	{ "done", FIELD_DATE, offsetof(struct step, done), FALSE, RECORD_COUNT, NULL },
	{ "seen", FIELD_TEXT, offsetof(struct step, seen), FALSE, RECORD_COUNT, NULL },
	{ "who", FIELD_TEXT, offsetof(struct step, who), FALSE, RECORD_COUNT, NULL },
	{ "task", FIELD_REF, offsetof(struct step, task), FALSE, RECORD_TASK, NULL },
	{ "on-condition", FIELD_YES, offsetof(struct step, on_condition), FALSE, RECORD_COUNT, NULL },
};

static const struct field removal_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct removal, id), TRUE, RECORD_COUNT, NULL },
	{ "job", FIELD_REF, offsetof(struct removal, job), TRUE, RECORD_JOB, NULL },
	{ "no", FIELD_COUNT, offsetof(struct removal, no), TRUE, RECORD_COUNT, NULL },
	{ "kind", FIELD_WORD, offsetof(struct removal, kind), TRUE, RECORD_COUNT, &words_removal_kind },
	{ "what", FIELD_TEXT, offsetof(struct removal, what), TRUE, RECORD_COUNT, NULL },
	{ "count", FIELD_COUNT, offsetof(struct removal, count), FALSE, RECORD_COUNT, NULL },
	{ "size", FIELD_TEXT, offsetof(struct removal, size), FALSE, RECORD_COUNT, NULL },
	{ "as-found", FIELD_TEXT, offsetof(struct removal, as_found), FALSE, RECORD_COUNT, NULL },
	{ "orientation", FIELD_TEXT, offsetof(struct removal, orientation), FALSE, RECORD_COUNT, NULL },
	{ "tray", FIELD_TEXT, offsetof(struct removal, tray), FALSE, RECORD_COUNT, NULL },
	{ "state", FIELD_WORD, offsetof(struct removal, state), TRUE, RECORD_COUNT, &words_removal_state },
	{ "fitting", FIELD_REF, offsetof(struct removal, fitting), FALSE, RECORD_FITTING, NULL },
	{ "off", FIELD_DATE, offsetof(struct removal, off), TRUE, RECORD_COUNT, NULL },
	{ "back", FIELD_DATE, offsetof(struct removal, back), FALSE, RECORD_COUNT, NULL },
	{ "back-count", FIELD_COUNT, offsetof(struct removal, back_count), FALSE, RECORD_COUNT, NULL },
	{ "as-left", FIELD_TEXT, offsetof(struct removal, as_left), FALSE, RECORD_COUNT, NULL },
	{ "why", FIELD_TEXT, offsetof(struct removal, why), FALSE, RECORD_COUNT, NULL },
	{ "who", FIELD_TEXT, offsetof(struct removal, who), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct removal, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field sheet_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct sheet, id), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct sheet, boat), TRUE, RECORD_BOAT, NULL },
	{ "date", FIELD_DATE, offsetof(struct sheet, date), TRUE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct sheet, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field sheetline_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct sheetline, id), TRUE, RECORD_COUNT, NULL },
	{ "sheet", FIELD_REF, offsetof(struct sheetline, sheet), TRUE, RECORD_SHEET, NULL },
	{ "no", FIELD_COUNT, offsetof(struct sheetline, no), TRUE, RECORD_COUNT, NULL },
	{ "task", FIELD_REF, offsetof(struct sheetline, task), FALSE, RECORD_TASK, NULL },
	{ "finding", FIELD_REF, offsetof(struct sheetline, finding), FALSE, RECORD_FINDING, NULL },
	{ "whose", FIELD_WORD, offsetof(struct sheetline, whose), TRUE, RECORD_COUNT, &words_line_whose },
	{ "answer", FIELD_TEXT, offsetof(struct sheetline, answer), FALSE, RECORD_COUNT, NULL },
	{ "answered", FIELD_DATE, offsetof(struct sheetline, answered), FALSE, RECORD_COUNT, NULL },
	{ "service", FIELD_REF, offsetof(struct sheetline, service), FALSE, RECORD_SERVICE, NULL },
};

static const struct field item_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct item, id), TRUE, RECORD_COUNT, NULL },
	{ "what", FIELD_TEXT, offsetof(struct item, what), TRUE, RECORD_COUNT, NULL },
	{ "unit", FIELD_TEXT, offsetof(struct item, unit), FALSE, RECORD_COUNT, NULL },
	{ "rubber", FIELD_YES, offsetof(struct item, rubber), FALSE, RECORD_COUNT, NULL },
	{ "shelf-months", FIELD_COUNT, offsetof(struct item, shelf_months), FALSE, RECORD_COUNT, NULL },
	{ "lead-days", FIELD_COUNT, offsetof(struct item, lead_days), FALSE, RECORD_COUNT, NULL },
	{ "keep", FIELD_REAL, offsetof(struct item, keep), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct item, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field number_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct number, id), TRUE, RECORD_COUNT, NULL },
	{ "item", FIELD_REF, offsetof(struct number, item), TRUE, RECORD_ITEM, NULL },
	{ "number", FIELD_TEXT, offsetof(struct number, number), TRUE, RECORD_COUNT, NULL },
	{ "supplier", FIELD_TEXT, offsetof(struct number, supplier), FALSE, RECORD_COUNT, NULL },
	{ "replaced-by", FIELD_REF, offsetof(struct number, replaced_by), FALSE, RECORD_NUMBER, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct number, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field lot_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct lot, id), TRUE, RECORD_COUNT, NULL },
	{ "item", FIELD_REF, offsetof(struct lot, item), TRUE, RECORD_ITEM, NULL },
	{ "quantity", FIELD_REAL, offsetof(struct lot, quantity), TRUE, RECORD_COUNT, NULL },
	{ "number", FIELD_TEXT, offsetof(struct lot, number), FALSE, RECORD_COUNT, NULL },
	{ "supplier", FIELD_TEXT, offsetof(struct lot, supplier), FALSE, RECORD_COUNT, NULL },
	{ "price", FIELD_CENTS, offsetof(struct lot, price), FALSE, RECORD_COUNT, NULL },
	{ "currency", FIELD_TEXT, offsetof(struct lot, currency), FALSE, RECORD_COUNT, NULL },
	{ "ordered", FIELD_DATE, offsetof(struct lot, ordered), FALSE, RECORD_COUNT, NULL },
	{ "expected", FIELD_DATE, offsetof(struct lot, expected), FALSE, RECORD_COUNT, NULL },
	{ "arrived", FIELD_DATE, offsetof(struct lot, arrived), FALSE, RECORD_COUNT, NULL },
	{ "made", FIELD_DATE, offsetof(struct lot, made), FALSE, RECORD_COUNT, NULL },
	{ "place", FIELD_TEXT, offsetof(struct lot, place), FALSE, RECORD_COUNT, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct lot, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field taken_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct taken, id), TRUE, RECORD_COUNT, NULL },
	{ "lot", FIELD_REF, offsetof(struct taken, lot), TRUE, RECORD_LOT, NULL },
	{ "date", FIELD_DATE, offsetof(struct taken, date), TRUE, RECORD_COUNT, NULL },
	{ "quantity", FIELD_REAL, offsetof(struct taken, quantity), TRUE, RECORD_COUNT, NULL },
	{ "boat", FIELD_REF, offsetof(struct taken, boat), FALSE, RECORD_BOAT, NULL },
	{ "job", FIELD_REF, offsetof(struct taken, job), FALSE, RECORD_JOB, NULL },
	{ "service", FIELD_REF, offsetof(struct taken, service), FALSE, RECORD_SERVICE, NULL },
	{ "remark", FIELD_TEXT, offsetof(struct taken, remark), FALSE, RECORD_COUNT, NULL },
};

static const struct field need_fields[] = {
	{ "id", FIELD_KEY, offsetof(struct need, id), TRUE, RECORD_COUNT, NULL },
	{ "item", FIELD_REF, offsetof(struct need, item), TRUE, RECORD_ITEM, NULL },
	{ "task", FIELD_REF, offsetof(struct need, task), TRUE, RECORD_TASK, NULL },
	{ "quantity", FIELD_REAL, offsetof(struct need, quantity), TRUE, RECORD_COUNT, NULL },
	{ "on-condition", FIELD_YES, offsetof(struct need, on_condition), FALSE, RECORD_COUNT, NULL },
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
		TYPE(RECORD_FINDING, finding, "findings", finding_fields),
		TYPE(RECORD_WAIVER, waiver, "waivers", waiver_fields),
		TYPE(RECORD_SKIP, skip, "skips", skip_fields),
		TYPE(RECORD_PHOTO, photo, "photos", photo_fields),
		TYPE(RECORD_HEEDED, heeded, "heeded", heeded_fields),
		TYPE(RECORD_SHIPPED, shipped, "shipped", shipped_fields),
		TYPE(RECORD_FIGURE, figure, "figures", figure_fields),
		TYPE(RECORD_JOB, job, "jobs", job_fields),
		TYPE(RECORD_AIM, aim, "aims", aim_fields),
		TYPE(RECORD_STEP, step, "steps", step_fields),
		TYPE(RECORD_REMOVAL, removal, "removals", removal_fields),
		TYPE(RECORD_SHEET, sheet, "sheets", sheet_fields),
		TYPE(RECORD_SHEETLINE, sheetline, "sheet-lines", sheetline_fields),
		TYPE(RECORD_ITEM, item, "items", item_fields),
		TYPE(RECORD_NUMBER, number, "numbers", number_fields),
		TYPE(RECORD_LOT, lot, "lots", lot_fields),
		TYPE(RECORD_TAKEN, taken, "taken", taken_fields),
		TYPE(RECORD_NEED, need, "needs", need_fields),
	};

	return &types[r];
}
