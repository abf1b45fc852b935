#include "logbook/catalogue_inside.h"

#include "base/err.h"
#include "base/text.h"
#include "exchange/record_csv.h"
#include "exchange/table.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

enum { KIND_KIND, KIND_FUEL, KIND_MODULE, KIND_EACH };
static const char *const kind_columns[] = { "kind", "fuel", "module", "each", NULL };

/* The parts */

static void
clear_fitting(gpointer record)
{
	record_clear(RECORD_FITTING, record);
}

static void
clear_task(gpointer record)
{
	record_clear(RECORD_TASK, record);
}

static void
clear_limit(gpointer record)
{
	record_clear(RECORD_LIMIT, record);
}

static void
part_init(struct catalogue_part *p, enum record r, GDestroyNotify clear)
{
	p->r = r;
	p->rows = g_array_new(FALSE, FALSE, (guint)record_type(r)->size);
	g_array_set_clear_func(p->rows, clear);
	p->from = g_array_new(FALSE, FALSE, sizeof(struct catalogue_from));
	p->by_name = r == RECORD_LIMIT ? NULL : g_hash_table_new(g_str_hash, g_str_equal);
}

static void
part_free(struct catalogue_part *p)
{
	g_array_unref(p->rows);
	g_array_unref(p->from);
	g_clear_pointer(&p->by_name, g_hash_table_unref);
}

struct catalogue *
catalogue_new(void)
{
	struct catalogue *c = g_new0(struct catalogue, 1);

	part_init(&c->fittings, RECORD_FITTING, clear_fitting);
	part_init(&c->tasks, RECORD_TASK, clear_task);
	part_init(&c->limits, RECORD_LIMIT, clear_limit);
	return c;
}

void
catalogue_free(struct catalogue *c)
{
	if (!c)
		return;
	part_free(&c->fittings);
	part_free(&c->tasks);
	part_free(&c->limits);
	g_free(c);
}

gint64
catalogue_find(const struct catalogue_part *p, const char *name)
{
	guint at = GPOINTER_TO_UINT(g_hash_table_lookup(p->by_name, name));

	return at ? (gint64)at - 1 : NONE;
}

const struct catalogue_from *
catalogue_row_from(const struct catalogue_part *p, gint64 at)
{
	return &((const struct catalogue_from *)(const void *)p->from->data)[at];
}

const struct fitting *
catalogue_fitting(const struct catalogue *c, gint64 at)
{
	return &((const struct fitting *)(const void *)c->fittings.rows->data)[at];
}

const struct task *
catalogue_task(const struct catalogue *c, gint64 at)
{
	return &((const struct task *)(const void *)c->tasks.rows->data)[at];
}

const struct limit *
catalogue_limit(const struct catalogue *c, gint64 at)
{
	return &((const struct limit *)(const void *)c->limits.rows->data)[at];
}

static const char *
name_of(enum record r, const void *record)
{
	return r == RECORD_FITTING ? ((const struct fitting *)record)->path : ((const struct task *)record)->name;
}

gboolean
catalogue_add(struct catalogue_part *p, void *record, const struct catalogue_from *from, GError **err)
{
	gint64 there = p->by_name ? catalogue_find(p, name_of(p->r, record)) : NONE;
	const struct catalogue_from *first = there == NONE ? NULL : catalogue_row_from(p, there);

	if (first)
		return err_set(err, ERR_INPUT, "%s stands twice: in %s:%d as well", name_of(p->r, record), first->file,
			       (int)first->line);
	*field_int(&record_type(p->r)->field[0], record) = p->rows->len;
	g_array_append_vals(p->rows, record, 1);
	g_array_append_vals(p->from, from, 1);
	if (p->by_name)
		g_hash_table_insert(p->by_name, (gpointer)(guintptr)name_of(p->r, record), GUINT_TO_POINTER(p->rows->len));
	record_init(p->r, record); /* its texts are the part's now */
	return TRUE;
}

/* The modules */

struct reading {
	struct catalogue *c;
	struct catalogue_part *part; /* that the file in hand belongs to */
	struct catalogue_from from; /* of the row in hand */
	GPtrArray *problems;
	gboolean strict; /* what would merely be left out is wrong as well */
	const char *folder;
	const struct table *kinds;
	GHashTable *names; /* of all rows, wrong ones too; NULL: not asked yet */
};

enum { LEFT_OUT = -1 }; /* a reference to a row that is wrong: it is told of once, where it stands */

static gboolean
is_kind(const struct table *kinds, guint i, const char *kind, const char *fuel)
{
	return !g_strcmp0(table_cell(kinds, i, KIND_KIND), kind) && !g_strcmp0(table_cell(kinds, i, KIND_FUEL), fuel);
}

static void
gather_names(struct reading *in, const char *module, const char *file, const char *column)
{
	const char *const columns[] = { column, NULL };
	g_autofree char *path = g_build_filename(in->folder, module, file, NULL);
	struct table *t = table_read(path, columns, NULL);

	for (guint i = 0; t && i < table_rows(t); i++)
		if (table_cell(t, i, 0))
			g_hash_table_add(in->names, g_strdup(table_cell(t, i, 0)));
	table_free(t);
}

/* Whether some row has that name, though it was not taken. */
static gboolean
was_left_out(struct reading *in, const char *name)
{
	if (!in->names) {
		in->names = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
		for (guint i = 0; i < table_rows(in->kinds); i++)
			if (table_cell(in->kinds, i, KIND_MODULE)) {
				gather_names(in, table_cell(in->kinds, i, KIND_MODULE), "fittings.csv", "path");
				gather_names(in, table_cell(in->kinds, i, KIND_MODULE), "tasks.csv", "name");
			}
	}
	return g_hash_table_contains(in->names, name);
}

static gboolean
key_of(void *user, enum record ref, const char *text, const void *record, gint64 *key, GError **err)
{
	struct reading *in = user;
	const struct catalogue_part *p = ref == RECORD_FITTING ? &in->c->fittings : &in->c->tasks;
	g_autofree char *shown = text_quoted(text);

	(void)record;
	*key = ref == RECORD_FITTING || ref == RECORD_TASK ? catalogue_find(p, text) : NONE;
	if (*key == NONE && in->problems->len && was_left_out(in, text))
		*key = LEFT_OUT;
	return *key != NONE || err_set(err, ERR_NOT_FOUND, "no %s of this kind's modules is called %s",
				       record_type(ref)->name, shown);
}

static gboolean
take(void *user, void *record, gint64 line, GError **err)
{
	struct reading *in = user;
	enum record r = in->part->r;

	in->from.line = line;
	if ((r == RECORD_TASK && ((struct task *)record)->fitting == LEFT_OUT)
	    || (r == RECORD_LIMIT && ((struct limit *)record)->task == LEFT_OUT))
		return TRUE;
	return catalogue_add(in->part, record, &in->from, err);
}

static void
take_report(struct reading *in, const struct csv_report *report)
{
	for (guint i = 0; i < report->errors->len; i++)
		g_ptr_array_add(in->problems, g_strdup(report->errors->pdata[i]));
	if (report->n_errors > report->errors->len)
		g_ptr_array_add(in->problems, g_strdup_printf("%s: and %d problems more", in->from.file,
							      (int)(report->n_errors - report->errors->len)));
	/* A column that nobody reads is a word misspelt, or a catalogue of a newer program. */
	for (guint i = 0; in->strict && i < report->notes->len; i++)
		if (g_str_has_prefix(report->notes->pdata[i], "column "))
			g_ptr_array_add(in->problems, g_strdup_printf("%s:1: %s", in->from.file, (char *)report->notes->pdata[i]));
}

static void
read_stream(struct reading *in, FILE *f)
{
	static const struct csv_in_how how = { .separator = ',', .decimal = DECIMAL_POINT };
	enum record r = in->part->r;
	int boat = record_field_index(r, "boat");
	struct record_in rows = { r, NONE, boat < 0 ? 0 : (guint64)1 << boat, key_of, take, in };
	g_autoptr(GError) error = NULL;
	struct csv_report report;
	struct csv_in *csv = csvin_file(f, in->from.file, &how, &error);

	if (!csv) {
		g_ptr_array_add(in->problems, g_strdup(error->message));
		return;
	}
	csvreport_init(&report);
	record_csv_read(csv, &rows, &report);
	take_report(in, &report);
	csvreport_clear(&report);
	csvin_free(csv);
}

static void
read_file(struct reading *in, const char *folder, const char *module, enum module_stand stand)
{
	g_autofree char *name = g_strdup_printf("%s/%s.csv", module, record_type(in->part->r)->plural),
			*path = g_build_filename(folder, name, NULL);
	FILE *f = fopen(path, "rb");

	in->from = (struct catalogue_from){ g_intern_string(name), g_intern_string(module), 0, stand };
	if (f) {
		read_stream(in, f);
		fclose(f);
	} else {
		g_ptr_array_add(in->problems, g_strdup_printf("%s: %s: kinds.csv names the module %s", name, g_strerror(errno),
							      module));
	}
}

/* A word that is none is told of by the check. */
static enum module_stand
stand_of(const char *each)
{
	gint64 stand = word_index(&words_module_stand, each ? each : "");

	return stand == NONE ? MODULE_ONCE : (enum module_stand)stand;
}

/* The fittings of all modules come before their tasks, and those before the limits: a module's task may be done on
 * another's fitting. */
static void
read_modules(struct reading *in, const char *kind, const char *fuel)
{
	const struct table *kinds = in->kinds;
	struct catalogue_part *const part[] = { &in->c->fittings, &in->c->tasks, &in->c->limits };

	for (guint p = 0; p < G_N_ELEMENTS(part); p++)
		for (guint i = 0; i < table_rows(kinds); i++) {
			const char *module = table_cell(kinds, i, KIND_MODULE);

			in->part = part[p];
			if (module && is_kind(kinds, i, kind, fuel))
				read_file(in, in->folder, module, stand_of(table_cell(kinds, i, KIND_EACH)));
		}
}

static struct table *
read_kinds(const char *folder, GError **err)
{
	g_autofree char *path = g_build_filename(folder, "kinds.csv", NULL);

	return table_read(path, kind_columns, err);
}

struct catalogue *
catalogue_read(const char *folder, const char *kind, const char *fuel, GPtrArray *problems, GError **err)
{
	g_autoptr(GPtrArray) own = g_ptr_array_new_with_free_func(g_free);
	struct table *kinds = read_kinds(folder, err);
	struct reading in = { .problems = problems ? problems : own, .strict = problems != NULL, .folder = folder,
			      .kinds = kinds };

	if (!kinds)
		return NULL;
	in.c = catalogue_new();
	read_modules(&in, kind, fuel);
	g_clear_pointer(&in.names, g_hash_table_unref);
	table_free(kinds);
	if (own->len) {
		err_set(err, ERR_INPUT, "the catalogue is not right: %s", (const char *)own->pdata[0]);
		g_clear_pointer(&in.c, catalogue_free);
	}
	return in.c;
}

char **
catalogue_fuels(const char *folder, const char *kind, GError **err)
{
	g_autofree char *path = g_build_filename(folder, "kinds.csv", NULL);
	g_autoptr(GPtrArray) fuels = g_ptr_array_new();
	struct table *kinds;

	if (!g_file_test(path, G_FILE_TEST_EXISTS))
		return g_new0(char *, 1);
	kinds = read_kinds(folder, err);
	if (!kinds)
		return NULL;
	for (guint i = 0; i < table_rows(kinds); i++) {
		const char *fuel = table_cell(kinds, i, KIND_FUEL);

		if (fuel && !g_strcmp0(table_cell(kinds, i, KIND_KIND), kind)
		    && !g_ptr_array_find_with_equal_func(fuels, fuel, g_str_equal, NULL))
			g_ptr_array_add(fuels, g_strdup(fuel));
	}
	table_free(kinds);
	g_ptr_array_add(fuels, NULL);
	return (char **)g_ptr_array_free(g_steal_pointer(&fuels), FALSE);
}

gint64
catalogue_edition(const char *folder)
{
	static const char *const columns[] = { "edition", NULL };
	g_autofree char *path = g_build_filename(folder, "editions.csv", NULL);
	struct table *t = g_file_test(path, G_FILE_TEST_EXISTS) ? table_read(path, columns, NULL) : NULL;
	const char *last = t && table_rows(t) ? table_cell(t, table_rows(t) - 1, 0) : NULL;
	gint64 edition = last ? g_ascii_strtoll(last, NULL, 10) : 0;

	table_free(t);
	return edition > 0 ? edition : NONE;
}
