#include "logbook/found.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/import.h"

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

/* One file of a catalogue, whose path is taken over; a file that is not there adds nothing. */
static gboolean
read_part(struct book *b, char *file, enum record r, gint64 boat, int *rows, GError **err)
{
	g_autofree char *path = file;
	struct import_form form = { .what = r, .path = path, .decimal_comma = -1 };
	struct import_said said = { 0 };
	gboolean ok = TRUE;

	if (!g_file_test(path, G_FILE_TEST_EXISTS))
		return TRUE;
	ok = import_file(b, &form, boat, &said, err);
	if (!ok && err && !*err)
		err_set(err, ERR_INPUT, "%s", said.errors->len ? (const char *)said.errors->pdata[0] : path);
	if (rows)
		*rows = (int)said.rows;
	import_said_clear(&said);
	return ok;
}

gboolean
book_read_catalogue(struct book *b, const char *catalogue, const struct boat *boat, int *fittings, int *tasks,
		    GError **err)
{
	g_autofree char *folder = g_build_filename(catalogue, word_of(&words_boat_kind, boat->kind), NULL);

	*fittings = *tasks = 0;
	return read_part(b, g_build_filename(catalogue, "rates.csv", NULL), RECORD_RATE, NONE, NULL, err)
	    && read_part(b, g_build_filename(folder, "fittings.csv", NULL), RECORD_FITTING, boat->id, fittings, err)
	    && read_part(b, g_build_filename(folder, "tasks.csv", NULL), RECORD_TASK, boat->id, tasks, err)
	    && read_part(b, g_build_filename(folder, "limits.csv", NULL), RECORD_LIMIT, boat->id, NULL, err);
}

gboolean
book_check_variant(const struct fitting *f, const char *variant, GError **err)
{
	g_auto(GStrv) all = g_strsplit(f->variants ? f->variants : "", " ", -1);

	if (!all[0] || g_strv_contains((const char *const *)all, variant))
		return TRUE;
	return err_set(err, ERR_INPUT, "%s has no design \"%.40s\": it is one of %s", f->path, variant, f->variants);
}

static gboolean
set_variant(struct book *b, struct fitting *f, const char *variant, GError **err)
{
	if (!book_check_variant(f, variant, err))
		return FALSE;
	g_free(f->variant);
	f->variant = g_strdup(variant);
	return book_put(b, RECORD_FITTING, f, err);
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
	ok = without ? book_put(b, RECORD_FITTING, &f, err) : set_variant(b, &f, eq + 1, err);
	record_clear(RECORD_FITTING, &f);
	return ok;
}

static gboolean
write_boat(struct book *b, struct new_boat *n, GError **err)
{
	if (n->boat.since == NONE)
		n->boat.since = b->who.today;
	n->boat.id = NONE;
	if (!book_put(b, RECORD_BOAT, &n->boat, err))
		return FALSE;
	for (int i = 0; i < n->n_engines; i++)
		if (!add_engine(b, &n->boat, &n->engine[i], err))
			return FALSE;
	if (!book_read_catalogue(b, n->catalogue, &n->boat, &n->n_fittings, &n->n_tasks, err))
		return FALSE;
	if (n->n_tasks && !n->boat.catalogue) {
		n->boat.catalogue = g_strdup(word_of(&words_boat_kind, n->boat.kind));
		if (!book_put(b, RECORD_BOAT, &n->boat, err))
			return FALSE;
	}
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

gboolean
book_set_variant(struct book *b, struct fitting *f, const char *variant, GError **err)
{
	return book_begin(b, err) && book_end(b, set_variant(b, f, variant, err), err, "%s is %s", f->path, variant);
}

gboolean
book_retire_fitting(struct book *b, struct fitting *f, gboolean retired, GError **err)
{
	f->retired = retired ? 1 : NONE;
	return book_begin(b, err)
	    && book_end(b, book_put(b, RECORD_FITTING, f, err), err, "%s: %s", f->path,
			retired ? "none on this boat" : "fitted");
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
fill_demo(struct book *b, const char *data, GError **err)
{
	g_autofree char *folder = g_build_filename(data, "demo", NULL),
			*catalogue = g_build_filename(data, "catalogue", NULL);
	struct boat boat;
	int n, m;
	gboolean ok = read_part(b, g_build_filename(folder, "boats.csv", NULL), RECORD_BOAT, NONE, NULL, err)
		   && book_boat(b, NULL, &boat, err);

	if (!ok)
		return FALSE;
	ok = read_part(b, g_build_filename(folder, "engines.csv", NULL), RECORD_ENGINE, boat.id, NULL, err)
	  && book_read_catalogue(b, catalogue, &boat, &n, &m, err);
	for (guint i = 0; ok && i < G_N_ELEMENTS(demo_files); i++)
		ok = read_part(b, g_build_filename(folder, demo_files[i].file, NULL), demo_files[i].r, boat.id, NULL, err);
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
