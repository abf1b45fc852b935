/* A second gauge that counts one engine's hours, at the helm or in the engine's computer.  The meter of the log is the master;
 * what the other shows is a reading, and how far the two are apart is told. */
#include "logbook/measure.h"

#include "base/date.h"
#include "logbook/inside.h"
#include "logbook/outing.h"
#include "logbook/page.h"

#include <math.h>
#include <string.h>

/* Hours by which two gauges may drift apart unremarked, and as a share of what was run; both are read to a tenth. */
#define GROWN_HOURS 2.0
#define GROWN_SHARE 0.05
#define READ_TO 0.2

/* The engine of the fitting that it was read on, or the boat's only one.  FALSE: not told. */
static gboolean
engine_of(struct book *b, const struct measurement *m, struct engine *e)
{
	struct fitting f;
	gboolean ok;

	record_init(RECORD_FITTING, &f);
	ok = m->fitting == NONE || row_get(b->db, RECORD_FITTING, m->fitting, &f, NULL);
	if (ok && f.engine != NONE)
		ok = row_get(b->db, RECORD_ENGINE, f.engine, e, NULL);
	else
		ok = ok && book_engine(b, m->boat, NULL, e, NULL);
	record_clear(RECORD_FITTING, &f);
	return ok;
}

/* Hours by the log at the end of a day: of the engine, else as its meter shows.  NAN: neither is known. */
static gboolean
master_hours(struct book *b, const struct engine *e, gint64 day, double *hours, GError **err)
{
	struct engine_hours run;
	gint64 shows = NONE;

	if (!book_engine_hours(b, e, day, &run, err) || (run.total == NONE && !book_meter_shows(b, e, day, &shows, err)))
		return FALSE;
	if (run.total != NONE)
		shows = run.total;
	*hours = shows == NONE ? NAN : (double)shows / 3600;
	return TRUE;
}

/* The first reading of the same gauge on record, from which its difference is reckoned; NULL: this is it. */
static const struct measurement *
first_of_gauge(const GArray *readings, const struct measurement *m)
{
	const struct measurement *r = (const void *)readings->data;

	for (guint i = 0; i < readings->len && r[i].date <= m->date; i++)
		if (r[i].id != m->id && r[i].fitting == m->fitting && !strcmp(r[i].what, m->what) && !isnan(r[i].value)
		    && !measure_another_way(&r[i], m))
			return &r[i];
	return NULL;
}

static char *
words(double apart, double master, const struct measurement *first, double first_apart, double run)
{
	g_autoptr(GString) out = g_string_new(NULL);
	double grown = fabs(apart - first_apart);
	char day[16];

	g_string_append_printf(out, "%.1f h %s the log's own meter, which has %.1f h", fabs(apart), apart < 0 ? "below" : "above",
			       master);
	if (first)
		g_string_append_printf(out, "; on %s it was %.1f h %s", day_words(first->date, day), fabs(first_apart),
				       first_apart < 0 ? "below" : "above");
	if (first && (grown > GROWN_HOURS || (grown > READ_TO && grown > GROWN_SHARE * run)))
		g_string_append_printf(out, ". They drift apart: %.1f h in %.1f h run, so one of the two counts wrong", grown, run);
	return g_string_free(g_steal_pointer(&out), FALSE);
}

char *
book_second_meter(struct book *b, const struct measurement *m, GError **err)
{
	g_autoptr(GArray) readings = NULL;
	const struct measurement *first;
	struct engine e;
	double now, then = NAN;
	char *told = NULL;

	if (g_strcmp0(m->what, "second-meter") || isnan(m->value))
		return NULL;
	record_init(RECORD_ENGINE, &e);
	if (!engine_of(b, m, &e)) {
		told = g_strdup("not compared: which engine's? Read it on a fitting of that engine");
	} else if (master_hours(b, &e, m->date, &now, err) && (readings = book_records(b, RECORD_MEASUREMENT, m->boat, err))) {
		first = first_of_gauge(readings, m);
		if (isnan(now))
			told = g_strdup("not compared: of this engine the log has no hours");
		else if (!first || master_hours(b, &e, first->date, &then, err))
			told = words(m->value - now, now, first, first ? first->value - then : m->value - now, now - then);
	}
	record_clear(RECORD_ENGINE, &e);
	return told;
}
