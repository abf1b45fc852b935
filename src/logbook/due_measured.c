/* What the due list makes of measured values: a reading that says stop asks for its task at once. */
#include "logbook/due_list.h"

#include "logbook/inside.h"
#include "logbook/measure.h"
#include "logbook/units.h"
#include "logbook/why.h"

#include "base/date.h"
#include "exchange/json.h"

#include <math.h>
#include <string.h>

/* One boat's readings with what they say, and where its tasks sit. */
struct measured {
	struct due_list *l;
	GArray *readings, *bounds; /* struct measurement by day and entry; struct bound */
	struct condition_out *judged; /* of each reading */
	struct book *b;
	const struct readings *kinds;
	gint64 units;
	GHashTable *paths; /* key -> path; "" for one that is not there */
};

static gboolean
asks(const struct limit *m)
{
	return m->kind == LIMIT_CONDITION && m->measured;
}

static gboolean
any_asks(const struct due_list *l)
{
	const struct limit *m = (const void *)l->limits->data;

	for (guint i = 0; i < l->limits->len; i++)
		if (asks(&m[i]))
			return TRUE;
	return FALSE;
}

/* Whether there is a reading of anything that a limit goes by: without one the file of them need not be read. */
static gboolean
any_asked_for(const struct due_list *l, const GArray *readings)
{
	g_autoptr(GHashTable) names = g_hash_table_new(g_str_hash, g_str_equal);
	const struct limit *m = (const void *)l->limits->data;
	const struct measurement *r = (const void *)readings->data;

	for (guint i = 0; i < l->limits->len; i++)
		if (asks(&m[i]))
			g_hash_table_add(names, m[i].measured);
	for (guint i = 0; i < readings->len; i++)
		if (g_hash_table_contains(names, r[i].what))
			return TRUE;
	return FALSE;
}

static struct measure_limits
limits_for(const struct measured *s, const struct condition_kind *kind, gint64 fitting)
{
	return measure_limits_of(kind, measure_bound_on(s->bounds, kind->what, fitting), s->units);
}

static void
judge_all(struct measured *s)
{
	const struct measurement *m = (const void *)s->readings->data;

	s->judged = g_new0(struct condition_out, s->readings->len);
	for (guint i = 0; i < s->readings->len; i++) {
		const struct condition_kind *kind = readings_find(s->kinds, m[i].what);
		struct measure_limits limits;

		s->judged[i].verdict = VERDICT_NONE;
		if (!kind || m[i].date > s->l->year.at)
			continue;
		limits = limits_for(s, kind, m[i].fitting);
		measure_judge(&limits, &m[i], &s->judged[i]);
	}
}

static void
know_path(const struct measured *s, gint64 fitting, const char *path)
{
	gint64 *key = g_new(gint64, 1);

	*key = fitting;
	g_hash_table_replace(s->paths, key, (gpointer)(guintptr)path);
}

/* A fitting without a task is asked of the file, once. */
static const char *
path_of(const struct measured *s, gint64 fitting)
{
	const char *path = g_hash_table_lookup(s->paths, &fitting);
	struct fitting f;

	if (path)
		return path;
	record_init(RECORD_FITTING, &f);
	path = row_get(s->b->db, RECORD_FITTING, fitting, &f, NULL) ? g_string_chunk_insert(s->l->chunk, f.path) : "";
	record_clear(RECORD_FITTING, &f);
	know_path(s, fitting, path);
	return path;
}

/* Under the same fitting, or beside each other in one: gear oil and the seals of the case. */
static gboolean
is_near(const struct measured *s, gint64 a, gint64 b)
{
	const char *x = path_of(s, a), *y = path_of(s, b), *slash;
	gsize n;

	if (!*x || !*y)
		return FALSE;
	if (strlen(x) > strlen(y)) {
		const char *z = x;

		x = y;
		y = z;
	}
	n = strlen(x);
	if (!strncmp(x, y, n) && y[n] == '/')
		return TRUE;
	slash = strrchr(x, '/');
	n = slash ? (gsize)(slash - x) : 0;
	return slash && !strncmp(x, y, n + 1) && !strchr(y + n + 1, '/');
}

static gboolean
has_own_task(const struct measured *s, const struct measurement *m)
{
	for (guint i = 0; i < s->l->lines->len; i++) {
		const struct due_line *d = due_at(s->l, (int)i);

		if (d->fitting_id != m->fitting)
			continue;
		for (int k = 0; k < d->in.n_limits; k++)
			if (asks(&d->limit[k]) && !strcmp(d->limit[k].measured, m->what))
				return TRUE;
	}
	return FALSE;
}

/* A reading without a fitting is for every task that asks for its value; one on a fitting for the tasks there, and where
 * there are none for those near it. */
static gboolean
applies(const struct measured *s, const struct measurement *m, gint64 fitting)
{
	if (m->fitting == NONE || m->fitting == fitting)
		return TRUE;
	return is_near(s, m->fitting, fitting) && !has_own_task(s, m);
}

/* The latest reading of each place, as indexes; one of the task's own fitting, or of no place, stands for all. */
static GArray *
latest_of_places(const struct measured *s, const char *what, gint64 fitting)
{
	GArray *latest = g_array_new(FALSE, FALSE, sizeof(guint));
	const struct measurement *m = (const void *)s->readings->data;

	for (guint i = 0; i < s->readings->len; i++) {
		if (s->judged[i].verdict == VERDICT_NONE || strcmp(m[i].what, what) || !applies(s, &m[i], fitting))
			continue;
		for (guint k = latest->len; k-- > 0;)
			if (m[i].fitting == NONE || m[i].fitting == fitting
			    || m[g_array_index(latest, guint, k)].fitting == m[i].fitting)
				g_array_remove_index(latest, k);
		g_array_append_val(latest, i);
	}
	return latest;
}

/* Whether the work was done after the reading.  On the same day renewing comes after reading; a look is the one that
 * read it. */
static gboolean
done_since(const struct task_in *in, gint64 date)
{
	gboolean look = in->rule == CLOCK_INSPECTION && in->since.what == SINCE_SERVICE;

	return in->since.day != NONE && (look ? in->since.day > date : in->since.day >= date);
}

/* Of what the places say: the latest stop that stands, else the worst of the rest. */
static void
choose(const struct measured *s, struct due_line *d, int k, gint64 fitting)
{
	const struct measurement *m = (const void *)s->readings->data;
	const struct condition_kind *kind = readings_find(s->kinds, d->limit[k].measured);
	g_autoptr(GArray) latest = kind ? latest_of_places(s, kind->what, fitting) : NULL;
	const struct measurement *before;
	struct due_reading best = { .verdict = VERDICT_NONE };

	for (guint i = 0; latest && i < latest->len; i++) {
		guint at = g_array_index(latest, guint, i);
		const struct condition_out *j = &s->judged[at];
		struct measure_limits limits = limits_for(s, kind, m[at].fitting);
		gboolean cleared = j->verdict == VERDICT_STOP && done_since(&d->in, m[at].date);
		int worse = j->verdict == VERDICT_STOP && cleared ? -1 : (int)j->verdict;

		if (best.verdict != VERDICT_NONE && worse < (best.cleared ? -1 : (int)best.verdict))
			continue;
		best = (struct due_reading){ k, kind, m[at].date, NULL, j->verdict, j->passed,
					     limits.standing, NULL, FALSE, cleared, s->units };
		best.as_read = g_string_chunk_insert(s->l->chunk, m[at].as_read);
		before = measure_before(s->readings, &m[at]);
		best.another_way = before && measure_another_way(&m[at], before);
		best.source = g_string_chunk_insert(s->l->chunk, limits.source);
	}
	if (best.verdict == VERDICT_NONE)
		return;
	g_array_append_val(s->l->readings, best);
	d->n_readings++;
	if (best.verdict == VERDICT_STOP && !best.cleared)
		((struct limit_in *)(guintptr)d->in.limit)[k].stopped = best.date;
}

static void
settle(const struct measured *s)
{
	struct due_line *line = (void *)s->l->lines->data;
	const struct due_reading *r;
	guint at = 0;

	for (guint i = 0; i < s->l->lines->len; i++)
		for (int k = 0; k < line[i].in.n_limits; k++)
			if (asks(&line[i].limit[k]))
				choose(s, &line[i], k, line[i].fitting_id);
	r = (const void *)s->l->readings->data;
	for (guint i = 0; i < s->l->lines->len; at += (guint)line[i].n_readings, i++)
		line[i].reading = line[i].n_readings ? &r[at] : NULL;
}

gboolean
due_read_measured(struct book *b, struct due_list *l, gint64 boat, GError **err)
{
	g_autoptr(GArray) readings = any_asks(l) ? book_records(b, RECORD_MEASUREMENT, boat, err) : NULL, bounds = NULL;
	g_autoptr(GHashTable) paths = NULL;
	struct measured s = { .l = l, .readings = readings, .b = b, .units = NONE };

	if (!readings)
		return !any_asks(l);
	if (!any_asked_for(l, readings))
		return TRUE;
	bounds = book_records(b, RECORD_BOUND, boat, err);
	if (!bounds || !(s.kinds = book_readings(b, err)))
		return FALSE;
	paths = g_hash_table_new_full(g_int64_hash, g_int64_equal, g_free, NULL);
	s.bounds = bounds;
	s.units = book_units(b, boat);
	s.paths = paths;
	for (guint i = 0; i < l->lines->len; i++)
		know_path(&s, due_at(l, (int)i)->fitting_id, due_at(l, (int)i)->path);
	judge_all(&s);
	settle(&s);
	g_free(s.judged);
	return TRUE;
}

char *
due_reading_words(const struct due_reading *r)
{
	struct condition_out j = { .verdict = r->verdict, .passed = r->passed };
	const struct measure_limits shown = { .kind = r->kind, .units = r->units };
	g_autofree char *verdict = measure_verdict(&shown, &j), *read = measure_read_words(r->kind, r->as_read, r->units);
	char day[16];

	return g_strdup_printf("%s %s on %s, %s", r->kind->what, read, day_words(r->date, day), verdict);
}

char *
due_reading_why(const struct due_line *d, int limit)
{
	for (int i = 0; i < d->n_readings; i++) {
		const struct due_reading *r = &d->reading[i];
		g_autofree char *words = NULL, *source = NULL;

		if (r->limit != limit)
			continue;
		words = due_reading_words(r);
		source = source_words(r->standing, r->source);
		return g_strdup_printf("  Last read: %s (%s)%s%s.", words, source,
				       r->another_way ? "; read another way than before: not compared" : "",
				       r->cleared ? "; the work was done since" : "");
	}
	return NULL;
}

void
due_readings_json(struct json_out *j, const struct due_line *d)
{
	static const char *const verdicts[VERDICT_COUNT] = { "good", "watch", "stop", NULL };

	jsonout_open_array(j, "readings");
	for (int i = 0; i < d->n_readings; i++) {
		const struct due_reading *r = &d->reading[i];
		char day[DAY_TEXT];

		jsonout_open_object(j, NULL);
		jsonout_text(j, "what", r->kind->what);
		jsonout_text(j, "date", day_iso(r->date, day));
		jsonout_text(j, "as-read", r->as_read);
		jsonout_text(j, "verdict", verdicts[r->verdict]);
		jsonout_real(j, "bound", r->passed.value);
		jsonout_text(j, "unit", r->kind->unit);
		jsonout_yes(j, "done-since", r->cleared);
		jsonout_text(j, "standing", word_of(&words_standing, r->standing));
		jsonout_text(j, "source", r->source);
		jsonout_close(j);
	}
	jsonout_close(j);
}
