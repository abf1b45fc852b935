/* Whether the drive is off: what work and what came off tell of it, and on whose side. */
#include "logbook/job_inside.h"

#include "base/err.h"
#include "logbook/variant.h"

#include <string.h>

enum { DEEPEST = 12 };

/* Of an outboard the lower unit is what a sterndrive's drive is: shift joint and seals part there. */
static const char *
drive_path(const struct job_opening *o)
{
	return o->kind == KIND_OUTBOARD ? "drive/lower" : "drive/unit";
}

static gboolean
is_drive(const struct job_opening *o, const char *path)
{
	const char *end = drive_path(o);
	gsize n = strlen(path), m = strlen(end);

	return n >= m && !strcmp(path + n - m, end) && (n == m || path[n - m - 1] == '/');
}

/* The drive that is off before one gets at a fitting, or that is the fitting; NULL: none. */
static const struct fitting *
drive_before(const struct job_opening *o, const struct fitting *f)
{
	for (int depth = 0; f && depth < DEEPEST; depth++) {
		if (is_drive(o, f->path))
			return f;
		f = job_fitting_at(o->fittings, fitting_first_off(f));
	}
	return NULL;
}

char *
job_drive_side(const struct job_opening *o, const struct fitting *drive)
{
	gsize more = strlen(drive->path) - strlen(drive_path(o));

	return more ? g_strndup(drive->path, more - 1) : NULL;
}

int
job_sides(const struct job_opening *o)
{
	GHashTableIter iter;
	gpointer path;
	int n = 0;

	g_hash_table_iter_init(&iter, o->paths);
	while (g_hash_table_iter_next(&iter, &path, NULL))
		n += is_drive(o, path);
	return MAX(n, 1);
}

/* ---- what came off ---- */

/* A title without what follows its comma, and words, both folded, without the side or an article. */
static char *
plain(const char *words, const char *side)
{
	const char *const skip[] = { "the", "old", side, NULL };
	g_autofree char *low = g_utf8_casefold(words, -1);
	g_auto(GStrv) word = g_strsplit_set(low, " \t", -1);
	GString *out = g_string_new(NULL);

	for (int i = 0; word[i]; i++)
		if (*word[i] && !(side ? g_strv_contains(skip, word[i]) : !strcmp(word[i], "the") || !strcmp(word[i], "old")))
			g_string_append_printf(out, "%s%s", out->len ? " " : "", word[i]);
	return g_string_free(out, FALSE);
}

static gboolean
follows(const char *rest)
{
	static const char *const more[] = { ",", " with ", " and ", " (" };

	for (guint i = 0; i < G_N_ELEMENTS(more); i++)
		if (g_str_has_prefix(rest, more[i]))
			return TRUE;
	return !*rest;
}

/* Whether words name a thing by its title, "gimbal bearing with its carrier"; or what holds it, "clamps of the U-joint bellows". */
static gboolean
names(const char *words, const char *title, gint64 kind)
{
	g_autofree char *first = g_strndup(title, strcspn(title, ",")), *low = g_utf8_casefold(first, -1);
	g_autofree char *of = g_strconcat(" of ", low, NULL);

	if (g_str_has_prefix(words, low))
		return follows(words + strlen(low));
	return kind != REMOVAL_PART && g_str_has_suffix(words, of);
}

static gboolean
is_called_drive(const char *words, gint64 kind)
{
	static const char *const stern[] = { "drive", "drive unit", "drive leg", "outdrive", "sterndrive", "stern drive", NULL };
	static const char *const out[] = { "lower unit", "gear case", "gearcase", NULL };

	return g_strv_contains(kind == KIND_OUTBOARD ? out : stern, words);
}

/* Whether the line tells that the drive is off, were it the fitting that it is about. */
static gboolean
tells(const struct job_opening *o, const struct removal *r, const struct fitting *f, const struct fitting *drive)
{
	g_autofree char *side = job_drive_side(o, drive), *words = plain(r->what, side);

	if (f == drive)
		return r->kind == REMOVAL_PART && (is_called_drive(words, o->kind) || names(words, f->title, r->kind));
	return names(words, f->title, r->kind);
}

static gboolean
says(const char *words, const char *side)
{
	g_autofree char *low = g_utf8_casefold(words, -1), *side_low = g_utf8_casefold(side, -1);
	g_auto(GStrv) word = g_strsplit_set(low, " ,\t", -1);

	return g_strv_contains((const char *const *)word, side_low);
}

/* Of the drives that it can be that of the side in the line's words or remark; else that the job is about. */
static gboolean
choose(const struct job_opening *o, const struct removal *r, GPtrArray *can, const struct fitting **drive, GError **err)
{
	g_autoptr(GString) sides = g_string_new(NULL);
	int about = 0;

	for (guint i = 0; i < can->len; i++) {
		const struct fitting *f = can->pdata[i];
		g_autofree char *side = job_drive_side(o, f);

		if (!side || can->len == 1 || says(r->what, side) || (r->remark && says(r->remark, side))) {
			*drive = f;
			return TRUE;
		}
		if (g_hash_table_contains(o->paths, f->path)) {
			*drive = f;
			about++;
		}
		g_string_append_printf(sides, "%s%s", sides->len ? " or " : "", side);
	}
	return !can->len || about == 1
	    || err_set(err, ERR_INPUT, "%s: of which drive? write %s into the line", r->what, sides->str);
}

gboolean
job_drive_of_line(const struct job_opening *o, const struct removal *r, gboolean fitting_said, const struct fitting **drive,
		  GError **err)
{
	g_autoptr(GPtrArray) can = g_ptr_array_new();

	*drive = NULL;
	if (r->kind == REMOVAL_SETTING || r->state == REMOVAL_EXTRA || !r->what)
		return TRUE;
	for (guint i = 0; i < o->fittings->len; i++) {
		const struct fitting *f = &((const struct fitting *)(const void *)o->fittings->data)[i];
		const struct fitting *before = drive_before(o, f);
		gboolean it = before != NULL;

		if (fitting_said)
			it = it && f->id == r->fitting && (f != before || r->kind == REMOVAL_PART);
		else
			it = it && tells(o, r, f, before);
		if (it && !g_ptr_array_find(can, before, NULL))
			g_ptr_array_add(can, (gpointer)(guintptr)before);
	}
	return choose(o, r, can, drive, err);
}

/* ---- what was worked on ---- */

/* What is shipped without the caution for a heavy drive can be done with it on, as a gimbal bearing is greased through the
 * fitting on its housing. */
static gboolean
can_stay_on(const struct job_opening *o, const struct task *t)
{
	g_auto(GStrv) caution = g_strsplit(t->caution ? t->caution : "", " ", -1);

	return o->kind != KIND_OUTBOARD && t->caution && !g_strv_contains((const char *const *)caution, "lifting-drive");
}

const struct fitting *
job_drive_of_task(const struct job_opening *o, const struct task *t)
{
	for (guint i = 0; i < o->fittings->len; i++) {
		const struct fitting *f = &((const struct fitting *)(const void *)o->fittings->data)[i];

		if (f->id == t->fitting)
			return is_drive(o, f->path) || can_stay_on(o, t) ? NULL : drive_before(o, f);
	}
	return NULL;
}

/* The remark tells whose it is, so that a job records it once for each drive. */
gboolean
job_record_drive_off(struct book *b, const struct job *job, const struct job_opening *o, const struct fitting *drive,
		     gboolean *recorded, GError **err)
{
	g_autoptr(GArray) all = drive ? book_records(b, RECORD_HAPPENING, job->boat, err) : NULL;
	g_autofree char *side = drive ? job_drive_side(o, drive) : NULL;
	g_autofree char *remark = g_strdup_printf("job %s%s%s", job->name, side ? ", " : "", side ? side : "");
	struct happening h;
	gboolean ok;

	*recorded = FALSE;
	if (!all)
		return !drive;
	for (guint i = 0; i < all->len; i++) {
		const struct happening *old = &((const struct happening *)(const void *)all->data)[i];

		if (old->kind == HAPPENED_DRIVE_OFF && !g_strcmp0(old->remark, remark))
			return TRUE;
	}
	record_init(RECORD_HAPPENING, &h);
	h.boat = job->boat;
	h.date = b->who.today;
	h.kind = HAPPENED_DRIVE_OFF;
	h.remark = g_steal_pointer(&remark);
	ok = *recorded = book_put(b, RECORD_HAPPENING, &h, err);
	record_clear(RECORD_HAPPENING, &h);
	return ok;
}
