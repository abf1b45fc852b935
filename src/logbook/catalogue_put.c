/* A catalogue into a logbook. */
#include "logbook/catalogue_inside.h"

#include "logbook/import.h"

#include <string.h>

/* The keys that the rows of a part got in the logbook, in their order. */
struct putting {
	struct book *b;
	gint64 boat;
	GArray *fittings, *tasks;
};

static gint64
key_at(const GArray *keys, gint64 at)
{
	return ((const gint64 *)(const void *)keys->data)[at];
}

/* From places in the catalogue to keys of the logbook. */
static void
refer(const struct putting *p, enum record r, void *record, gint64 key)
{
	struct fitting *f = record;
	struct limit *m = record;
	struct task *t = record;

	*field_int(&record_type(r)->field[0], record) = key;
	if (r == RECORD_FITTING)
		f->boat = p->boat;
	else if (r == RECORD_LIMIT)
		m->task = key_at(p->tasks, m->task);
	else {
		t->boat = p->boat;
		t->fitting = key_at(p->fittings, t->fitting);
	}
}

static gboolean
put_part(struct putting *p, const struct catalogue_part *part, GArray *keys, GError **err)
{
	gsize size = record_type(part->r)->size;
	g_autofree void *record = g_malloc(size); /* its texts are the catalogue's */
	struct bulk *bulk = bulk_open(p->b->db, part->r, 0, err);
	gboolean ok = bulk != NULL;

	for (guint i = 0; ok && i < part->rows->len; i++) {
		gint64 key = row_new_key(p->b->db);

		memcpy(record, part->rows->data + i * size, size);
		refer(p, part->r, record, key);
		ok = bulk_put(bulk, record, err);
		if (keys)
			g_array_append_val(keys, key);
	}
	return bulk && bulk_close(bulk, ok ? err : NULL) && ok;
}

/* Keep what was shipped, so that what the owner changes is known. */
static gboolean
put_shipped(struct bulk *bulk, const struct putting *p, enum shipped_row what, const char *name, char *digest, GError **err)
{
	const struct shipped s = { row_new_key(p->b->db), p->boat, what, (char *)(guintptr)name, digest };
	gboolean ok = bulk_put(bulk, &s, err);

	g_free(digest);
	return ok;
}

static gboolean
put_digests(const struct putting *p, const struct catalogue *c, GError **err)
{
	struct bulk *bulk = bulk_open(p->b->db, RECORD_SHIPPED, 0, err);
	gboolean ok = bulk != NULL;

	for (guint i = 0; ok && i < c->fittings.rows->len; i++)
		ok = put_shipped(bulk, p, SHIPPED_FITTING, catalogue_fitting(c, i)->path,
				 catalogue_fitting_digest(catalogue_fitting(c, i)), err);
	for (guint i = 0; ok && i < c->tasks.rows->len; i++) {
		const struct task *t = catalogue_task(c, i);

		ok = put_shipped(bulk, p, SHIPPED_TASK, t->name,
				 catalogue_task_digest(t, catalogue_fitting(c, t->fitting)->path, c->limits.rows), err);
	}
	return bulk && bulk_close(bulk, ok ? err : NULL) && ok;
}

static gboolean
put_rows(struct book *b, const struct catalogue *c, gint64 boat, GError **err)
{
	g_autoptr(GArray) fittings = g_array_new(FALSE, FALSE, sizeof(gint64)), tasks = g_array_new(FALSE, FALSE, sizeof(gint64));
	struct putting p = { b, boat, fittings, tasks };

	return put_part(&p, &c->fittings, fittings, err) && put_part(&p, &c->tasks, tasks, err)
	    && put_part(&p, &c->limits, NULL, err) && put_digests(&p, c, err);
}

/* The rates of a logbook are its owner's: they are shipped once. */
static gboolean
put_rates(struct book *b, const char *folder, GError **err)
{
	g_autofree char *path = g_build_filename(folder, "rates.csv", NULL);
	g_autoptr(GArray) there = book_records(b, RECORD_RATE, NONE, err);

	return there && (there->len || import_whole(b, path, RECORD_RATE, NONE, err));
}

gboolean
catalogue_put(struct book *b, const char *folder, struct boat *boat, const struct catalogue_said *said,
	      struct catalogue_given *given, GError **err)
{
	GError *failed = NULL;
	char *name = catalogue_name(folder, word_of(&words_boat_kind, boat->kind), said, &failed);
	g_autoptr(GArray) engines = failed ? NULL : book_records(b, RECORD_ENGINE, boat->id, &failed);
	struct catalogue *c;
	gboolean ok;

	*given = (struct catalogue_given){ 0, 0 };
	if (failed) {
		g_propagate_error(err, failed);
		g_free(name);
		return FALSE;
	}
	g_free(boat->catalogue);
	boat->catalogue = name;
	boat->edition = name ? catalogue_edition(folder) : NONE;
	c = catalogue_for_boat(folder, boat, engines, NONE, err);
	if (!c)
		return FALSE;
	*given = (struct catalogue_given){ (int)c->fittings.rows->len, (int)c->tasks.rows->len };
	ok = put_rates(b, folder, err) && put_rows(b, c, boat->id, err)
	  && (!name || book_put(b, RECORD_BOAT, boat, err));
	catalogue_free(c);
	return ok;
}
