#include "logbook/found.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/import.h"
#include "logbook/variant.h"

#include <stdio.h>
#include <string.h>

static gboolean
add_engine(struct book *b, const struct boat *boat, const struct new_engine *n, GError **err)
{
	struct engine e;
	struct meter m;
	gboolean ok;

	record_init(RECORD_ENGINE, &e);
	record_init(RECORD_METER, &m);
	e.boat = boat->id;
	e.name = g_strdup(n->name);
	e.hours = n->hours == NONE ? n->reading : n->hours;
	e.estimated = n->estimated ? 1 : NONE;
	ok = book_put(b, RECORD_ENGINE, &e, err);
	if (ok && n->reading != NONE) {
		m.engine = e.id;
		m.fitted = boat->since;
		m.start = n->reading;
		m.engine_hours = e.hours;
		m.how = METER_FIRST;
		ok = book_put(b, RECORD_METER, &m, err);
	}
	record_clear(RECORD_ENGINE, &e);
	record_clear(RECORD_METER, &m);
	return ok;
}

/* "PATH=VARIANT" of --variant, or "PATH" of --without. */
static gboolean
apply_choice(struct book *b, gint64 boat, const char *text, gboolean without, GError **err)
{
	const char *eq = strchr(text, '=');
	g_autofree char *path = eq && !without ? g_strndup(text, (gsize)(eq - text)) : g_strdup(text);
	struct fitting f;
	gboolean ok;

	if (!eq && !without)
		return err_set(err, ERR_INPUT,
			       "--variant %s: write PATH=DESIGN, such as drive/transom/gimbal-bearing=sealed", text);
	if (!book_find_fitting(b, boat, path, &f, err))
		return FALSE;
	f.retired = without ? 1 : f.retired;
	ok = without ? book_put(b, RECORD_FITTING, &f, err) : book_put_variant(b, &f, eq + 1, err);
	record_clear(RECORD_FITTING, &f);
	return ok;
}

/* A boat bought used asks to be gone through. */
static gboolean
add_bought(struct book *b, const struct boat *boat, GError **err)
{
	struct happening h;

	record_init(RECORD_HAPPENING, &h);
	h.boat = boat->id;
	h.date = boat->since;
	h.kind = HAPPENED_BOUGHT;
	return book_put(b, RECORD_HAPPENING, &h, err);
}

static gboolean
write_boat(struct book *b, struct new_boat *n, GError **err)
{
	if (n->boat.since == NONE)
		n->boat.since = b->who.today;
	n->boat.delivered = n->from_builder ? n->boat.since : NONE;
	n->boat.id = NONE;
	if (!book_put(b, RECORD_BOAT, &n->boat, err))
		return FALSE;
	for (int i = 0; i < n->n_engines; i++)
		if (!add_engine(b, &n->boat, &n->engine[i], err))
			return FALSE;
	if (!catalogue_put(b, n->catalogue, &n->boat, &n->said, &n->given, err))
		return FALSE;
	if (n->used && !add_bought(b, &n->boat, err))
		return FALSE;
	for (int i = 0; n->variants && n->variants[i]; i++)
		if (!apply_choice(b, n->boat.id, n->variants[i], FALSE, err))
			return FALSE;
	for (int i = 0; n->without && n->without[i]; i++)
		if (!apply_choice(b, n->boat.id, n->without[i], TRUE, err))
			return FALSE;
	return TRUE;
}

gboolean
book_add_boat(struct book *b, struct new_boat *n, GError **err)
{
	char d[DAY_TEXT];
	int year, month, day;

	if (n->boat.since != NONE && n->boat.since > b->who.today)
		return err_set(err, ERR_INPUT, "--since: %s lies ahead of today", day_iso(n->boat.since, d));
	day_to_ymd(b->who.today, &year, &month, &day);
	if (n->boat.built != NONE && (n->boat.built < 1800 || n->boat.built > year))
		return err_set(err, ERR_INPUT, "--built: %d is no year from 1800 to %d", (int)n->boat.built, year);
	if (n->boat.launch / 100 == n->boat.haul_out / 100 && n->boat.launch == n->boat.haul_out)
		return err_set(err, ERR_INPUT, "launch and haul-out fall on the same day");
	return book_begin(b, err) && book_end(b, write_boat(b, n, err), err, "boat %s", n->boat.name);
}

/* The demo's files in the order in which each finds what it refers to. */
static const struct {
	const char *file;
	enum record r;
} demo_files[] = {
	{ "meters.csv", RECORD_METER },
	{ "fittings.csv", RECORD_FITTING },
	{ "seasons.csv", RECORD_SEASON },
	{ "stays.csv", RECORD_STAY },
	{ "parts.csv", RECORD_PART },
	{ "outings.csv", RECORD_OUTING },
	{ "happenings.csv", RECORD_HAPPENING },
	{ "services.csv", RECORD_SERVICE },
	{ "measurements.csv", RECORD_MEASUREMENT },
};

static gboolean
read_demo(struct book *b, const char *folder, const char *file, enum record r, gint64 boat, GError **err)
{
	g_autofree char *path = g_build_filename(folder, file, NULL);

	return import_whole(b, path, r, boat, err);
}

static gboolean
fill_demo(struct book *b, const char *data, GError **err)
{
	g_autofree char *folder = g_build_filename(data, "demo", NULL), *catalogue = g_build_filename(data, "catalogue", NULL);
	struct boat boat;
	struct catalogue_given given;
	gboolean ok = read_demo(b, folder, "boats.csv", RECORD_BOAT, NONE, err) && book_boat(b, NULL, &boat, err);

	if (!ok)
		return FALSE;
	ok = read_demo(b, folder, "engines.csv", RECORD_ENGINE, boat.id, err)
	  && catalogue_put(b, catalogue, &boat, &(const struct catalogue_said){ NULL, NULL }, &given, err);
	for (guint i = 0; ok && i < G_N_ELEMENTS(demo_files); i++)
		ok = read_demo(b, folder, demo_files[i].file, demo_files[i].r, boat.id, err);
	record_clear(RECORD_BOAT, &boat);
	return ok;
}

gboolean
book_make_demo(const char *path, const struct book_who *who, const char *data, GError **err)
{
	g_autofree char *folder = g_build_filename(data, "demo", NULL);
	struct book_who then = *who;
	struct book *b;
	gboolean ok;

	if (!g_file_test(folder, G_FILE_TEST_IS_DIR))
		return err_set(err, ERR_SYSTEM, "the demo's files are not in %s: SPLITPIN_DATA names the folder above", folder);
	/* Its story ends in November 2026, whatever day it is. */
	then.today = MAX(who->today, day_from_ymd(2026, 11, 25));
	b = book_create(path, &then, err);
	if (!b)
		return FALSE;
	ok = book_begin(b, err) && book_end(b, fill_demo(b, data, err), err, "the demo");
	book_close(b);
	if (!ok)
		remove(path);
	return ok;
}
