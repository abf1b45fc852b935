#include "logbook/handover.h"

#include "base/err.h"
#include "logbook/import.h"
#include "logbook/inside.h"
#include "logbook/service.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>

struct handover {
	GHashTable *place; /* name -> "place 1" */
	GHashTable *task; /* key -> struct clock */
};

struct clock {
	gint64 rule, consequence;
};

/* Of every record of a kind, the name of a place in it. */
static gboolean
number_places(struct book *b, struct handover *h, enum record r, const char *name, GError **err)
{
	g_autofree void *record = g_malloc(record_type(r)->size);
	const struct field *f = record_field(r, name);
	struct cells *c = cells_open(b->db, sql_all(r));

	record_init(r, record);
	while (cells_next_record(c, r, record)) {
		const char *place = *field_text(f, record);

		if (place && !g_hash_table_contains(h->place, place))
			g_hash_table_insert(h->place, g_strdup(place),
					    g_strdup_printf("place %u", g_hash_table_size(h->place) + 1));
	}
	record_clear(r, record);
	return cells_close(c, err);
}

static gboolean
know_clocks(struct book *b, struct handover *h, GError **err)
{
	struct cells *c = cells_open(b->db, sql_all(RECORD_TASK));
	struct task t;

	record_init(RECORD_TASK, &t);
	while (cells_next_record(c, RECORD_TASK, &t)) {
		struct clock clock = { t.rule, t.consequence };

		g_hash_table_insert(h->task, g_memdup2(&t.id, sizeof t.id), g_memdup2(&clock, sizeof clock));
	}
	record_clear(RECORD_TASK, &t);
	return cells_close(c, err);
}

struct handover *
handover_new(struct book *b, GError **err)
{
	struct handover *h = g_new(struct handover, 1);

	h->place = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
	h->task = g_hash_table_new_full(g_int64_hash, g_int64_equal, g_free, g_free);
	if (number_places(b, h, RECORD_PLACE, "name", err) && number_places(b, h, RECORD_BOAT, "place", err)
	    && number_places(b, h, RECORD_STAY, "place", err) && number_places(b, h, RECORD_OUTING, "place", err)
	    && know_clocks(b, h, err))
		return h;
	handover_free(h);
	return NULL;
}

void
handover_free(struct handover *h)
{
	if (!h)
		return;
	g_hash_table_unref(h->place);
	g_hash_table_unref(h->task);
	g_free(h);
}

const char *
handover_place(const struct handover *h, const char *name)
{
	return g_hash_table_lookup(h->place, name);
}

static void
replace(char **text, const char *by)
{
	g_free(*text);
	*text = g_strdup(by);
}

static void
claim(const struct handover *h, struct service *s)
{
	const struct clock *clock = g_hash_table_lookup(h->task, &s->task);

	if (clock && service_restarts(clock->rule, clock->consequence, s->outcome))
		s->outcome = OUTCOME_CLAIMED;
}

void
handover_strip(const struct handover *h, enum record r, void *record)
{
	const struct record_type *type = record_type(r);

	for (int i = 0; i < type->n_fields; i++) {
		const struct field *f = &type->field[i];
		char **text = f->kind == FIELD_TEXT ? field_text(f, record) : NULL;

		if (!text || !*text)
			continue;
		if (!strcmp(f->name, "who")) {
			replace(text, f->required ? "owner before" : NULL);
		} else if (!strcmp(f->name, "place") || (r == RECORD_PLACE && !strcmp(f->name, "name"))) {
			replace(text, handover_place(h, *text));
		} else if (r == RECORD_PHOTO && !strcmp(f->name, "path")) {
			g_autofree char *file = g_path_get_basename(*text);

			replace(text, file);
		}
	}
	if (r == RECORD_SERVICE)
		claim(h, record);
}

static char *
file_of(const char *folder, enum record r)
{
	g_autofree char *name = g_strconcat(record_type(r)->plural, ".csv", NULL);

	return g_build_filename(folder, name, NULL);
}

gboolean
book_export_all(struct book *b, const struct export_form *form, gint64 *rows, GError **err)
{
	gboolean ok = TRUE;
	gint64 n;

	*rows = 0;
	if (g_mkdir(form->path, 0777))
		return err_set(err, ERR_SYSTEM, "can't make the folder %s: %s", form->path, g_strerror(errno));
	for (int r = 0; ok && r < RECORD_COUNT; r++) {
		g_autofree char *path = file_of(form->path, (enum record)r);
		struct export_form one = *form;

		one.what = (enum record)r;
		one.path = path;
		ok = book_export(b, &one, &n, err);
		*rows += ok ? n : 0;
	}
	for (int r = 0; !ok && r < RECORD_COUNT; r++) {
		g_autofree char *path = file_of(form->path, (enum record)r);

		g_unlink(path);
	}
	if (!ok)
		g_rmdir(form->path);
	return ok;
}

/* The only boat, whose the rows are that name none; NONE: there are several, and keys say whose. */
static gint64
only_boat(struct book *b)
{
	struct boat boat;
	gint64 key = book_boat(b, NULL, &boat, NULL) ? boat.id : NONE;

	record_clear(RECORD_BOAT, &boat);
	return key;
}

/* The kinds stand in an order in which each finds what it refers to. */
static gboolean
read_folder(struct book *b, const char *folder, gint64 *rows, GError **err)
{
	gboolean ok = TRUE;

	for (int r = 0; ok && r < RECORD_COUNT; r++) {
		g_autofree char *path = file_of(folder, (enum record)r);
		struct import_form form = { .what = (enum record)r, .path = path, .sure = TRUE, .decimal_comma = -1 };
		struct import_said said = { 0 };

		if (r != RECORD_BOAT && !g_file_test(path, G_FILE_TEST_EXISTS))
			continue;
		ok = import_file(b, &form, r == RECORD_BOAT ? NONE : only_boat(b), &said, err);
		*rows += said.rows;
		if (!ok && said.errors && said.errors->len && err && !*err)
			err_set(err, ERR_INPUT, "%s", (const char *)said.errors->pdata[0]);
		import_said_clear(&said);
	}
	return ok;
}

gboolean
book_make_from(const char *path, const struct book_who *who, const char *folder, gint64 *rows, GError **err)
{
	g_autofree char *name = g_path_get_basename(folder);
	struct book *b = book_create(path, who, err);
	gboolean ok;

	*rows = 0;
	if (!b)
		return FALSE;
	ok = book_begin(b, err) && book_end(b, read_folder(b, folder, rows, err), err, "the records of %s", name);
	book_close(b);
	if (!ok)
		remove(path);
	return ok;
}
