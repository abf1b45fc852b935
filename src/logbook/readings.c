#include "logbook/readings.h"

#include "base/err.h"
#include "logbook/inside.h"
#include "logbook/shipped.h"
#include "model/words.h"

#include <math.h>
#include <string.h>

struct readings {
	struct table *file; /* holds the texts */
	GArray *kinds; /* struct condition_kind */
	GHashTable *by_name; /* name -> the kind */
};

enum column {
	NAME, UNIT, HOW, SIDE, WATCH_BELOW, WATCH_ABOVE, WATCH_AT, STOP_BELOW, STOP_ABOVE, STOP_AT, LEAST, MOST, WATER, STANDING,
	SOURCE,
};

static const char *const columns[] = { "name", "unit", "how", "worse", "watch-below", "watch-above", "watch-at", "stop-below",
				       "stop-above", "stop-at", "least", "most", "water", "standing", "source", NULL };

void
readings_free(struct readings *r)
{
	if (!r)
		return;
	g_hash_table_unref(r->by_name);
	g_array_unref(r->kinds);
	table_free(r->file);
	g_free(r);
}

/* NAN for an empty one. */
static gboolean
take_number(const char *text, const char *column, double *value, GError **err)
{
	char *end;

	*value = NAN;
	if (!text)
		return TRUE;
	*value = g_ascii_strtod(text, &end);
	return (!*end && isfinite(*value)) || err_set(err, ERR_INPUT, "%s: \"%s\" is no number", column, text);
}

static gboolean
take_yes(const char *text, const char *column, gboolean *yes, GError **err)
{
	*yes = !strcmp(text, "yes");
	return *yes || !strcmp(text, "no") || err_set(err, ERR_INPUT, "%s: yes or no is wanted", column);
}

/* A pair of bounds: below, above and at stand side by side. */
static gboolean
take_pair(const struct table *t, guint row, enum column below, struct edge pair[2], GError **err)
{
	gboolean at;

	if (!take_number(table_cell(t, row, below), columns[below], &pair[0].value, err)
	    || !take_number(table_cell(t, row, below + 1), columns[below + 1], &pair[1].value, err)
	    || !take_yes(table_cell(t, row, below + 2), columns[below + 2], &at, err))
		return FALSE;
	pair[0].at = pair[1].at = at;
	return TRUE;
}

static gboolean
take_worse(const char *text, enum worse *worse, GError **err)
{
	static const char *const sides[] = { "more", "less", "both" };

	for (guint i = 0; i < G_N_ELEMENTS(sides); i++)
		if (!strcmp(text, sides[i])) {
			*worse = (enum worse)i;
			return TRUE;
		}
	return err_set(err, ERR_INPUT, "worse: more, less or both is wanted");
}

/* One watches before one stops; good has some room; what is worse on one side only has no bound on the other. */
static gboolean
agree(const struct condition_kind *k, GError **err)
{
	const struct edge *watch = k->bands.watch, *stop = k->bands.stop;

	if (watch[0].value < stop[0].value || watch[1].value > stop[1].value || watch[0].value > watch[1].value
	    || stop[0].value > stop[1].value)
		return err_set(err, ERR_INPUT, "%s: its limits contradict each other", k->what);
	if ((k->bands.worse == WORSE_MORE && !(isnan(watch[0].value) && isnan(stop[0].value)))
	    || (k->bands.worse == WORSE_LESS && !(isnan(watch[1].value) && isnan(stop[1].value))))
		return err_set(err, ERR_INPUT, "%s: a limit stands on the side that is not worse", k->what);
	return k->least < k->most || err_set(err, ERR_INPUT, "%s: least is to be below most", k->what);
}

static gboolean
take_texts(const struct table *t, guint row, struct condition_kind *k, GError **err)
{
	const char *water = table_cell(t, row, WATER), *unit = table_cell(t, row, UNIT);
	gint64 which = NONE;

	k->what = table_cell(t, row, NAME);
	k->unit = unit ? unit : "";
	k->how = table_cell(t, row, HOW);
	k->standing = table_cell(t, row, STANDING);
	k->source = table_cell(t, row, SOURCE);
	if (!word_parse(&words_standing, k->standing, &which, err) || (water && !word_parse(&words_water, water, &which, err)))
		return FALSE;
	k->water = water ? (enum water)which : WATER_COUNT;
	return TRUE;
}

static gboolean
take_row(struct readings *r, guint row, struct condition_kind *k, GError **err)
{
	static const int wanted[] = { NAME, HOW, SIDE, WATCH_AT, STOP_AT, LEAST, MOST, STANDING, SOURCE, -1 };
	const struct table *t = r->file;

	if (!shipped_row_is_whole(t, row, columns, wanted, err))
		return FALSE;
	if (!take_texts(t, row, k, err) || !take_worse(table_cell(t, row, SIDE), &k->bands.worse, err)
	    || !take_pair(t, row, WATCH_BELOW, k->bands.watch, err) || !take_pair(t, row, STOP_BELOW, k->bands.stop, err)
	    || !take_number(table_cell(t, row, LEAST), columns[LEAST], &k->least, err)
	    || !take_number(table_cell(t, row, MOST), columns[MOST], &k->most, err) || !agree(k, err))
		return table_prefix(t, row, err);
	if (!g_hash_table_contains(r->by_name, k->what))
		return TRUE;
	err_set(err, ERR_INPUT, "%s stands there twice", k->what);
	return table_prefix(t, row, err);
}

static gboolean
take_rows(struct readings *r, GError **err)
{
	g_array_set_size(r->kinds, table_rows(r->file));
	for (guint i = 0; i < r->kinds->len; i++) {
		struct condition_kind *k = &((struct condition_kind *)(void *)r->kinds->data)[i];

		if (!take_row(r, i, k, err))
			return FALSE;
		g_hash_table_insert(r->by_name, (gpointer)(guintptr)k->what, k);
	}
	return TRUE;
}

struct readings *
readings_read(const char *folder, GError **err)
{
	struct table *file = shipped_table(folder, "readings.csv", columns, err);
	struct readings *r;

	if (!file)
		return NULL;
	r = g_new0(struct readings, 1);
	r->file = file;
	r->kinds = g_array_new(FALSE, TRUE, sizeof(struct condition_kind));
	r->by_name = g_hash_table_new(g_str_hash, g_str_equal);
	if (!take_rows(r, err))
		g_clear_pointer(&r, readings_free);
	return r;
}

const struct readings *
book_readings(struct book *b, GError **err)
{
	g_autofree char *folder = NULL;

	if (b->readings)
		return b->readings;
	folder = book_catalogue(b);
	return b->readings = readings_read(folder, err);
}

guint
readings_count(const struct readings *r)
{
	return r->kinds->len;
}

const struct condition_kind *
readings_nth(const struct readings *r, guint i)
{
	return &((const struct condition_kind *)(const void *)r->kinds->data)[i];
}

const struct condition_kind *
readings_find(const struct readings *r, const char *what)
{
	return g_hash_table_lookup(r->by_name, what);
}
