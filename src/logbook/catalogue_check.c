/* Checking catalogues as a whole: the kinds, and the tables that hold for all of them. */
#include "logbook/catalogue_check.h"

#include "base/amount.h"
#include "base/err.h"
#include "engine/wear.h"
#include "exchange/table.h"
#include "logbook/catalogue_inside.h"
#include "logbook/import.h"
#include "logbook/knowledge.h"
#include "logbook/wrench.h"

#include <string.h>

/* A module that several kinds have says what is wrong with it once. */
void
catalogue_problem(GPtrArray *problems, char *text)
{
	if (g_ptr_array_find_with_equal_func(problems, text, g_str_equal, NULL))
		g_free(text);
	else
		g_ptr_array_add(problems, text);
}

/* Takes the error. */
static void
problem_error(GPtrArray *problems, GError *error)
{
	catalogue_problem(problems, g_strdup(error->message));
	g_error_free(error);
}

static void
problem_row(GPtrArray *problems, const struct table *t, guint row, GError *error)
{
	table_prefix(t, row, &error);
	problem_error(problems, error);
}

static struct table *
read_table(const char *folder, const char *file, const char *const *columns, GPtrArray *problems)
{
	g_autofree char *path = g_build_filename(folder, file, NULL);
	GError *error = NULL;
	struct table *t = table_read(path, columns, &error);

	if (!t)
		problem_error(problems, error);
	return t;
}

struct checked {
	const char *folder;
	struct catalogue_names names;
	GPtrArray *problems;
};

/* What of a kind and a fuel is checked by itself. */
static void
check_kind(const struct checked *k, const char *kind, const char *fuel, GPtrArray *counts)
{
	g_autoptr(GPtrArray) own = g_ptr_array_new_with_free_func(g_free);
	struct catalogue *c = catalogue_read(k->folder, kind, fuel, own, NULL);

	if (!c)
		return; /* kinds.csv can't be read, which is known by now */
	for (guint i = 0; i < own->len; i++)
		catalogue_problem(k->problems, g_strdup(own->pdata[i]));
	catalogue_check_rows(c, &k->names, k->problems);
	g_ptr_array_add(counts, g_strdup_printf("%s %s: %u fittings, %u tasks, %u limits", kind, fuel, c->fittings.rows->len,
						c->tasks.rows->len, c->limits.rows->len));
	catalogue_free(c);
}

enum { KIND, FUEL, MODULE, EACH };
static const char *const kind_columns[] = { "kind", "fuel", "module", "each", NULL };

static gboolean
kind_row(const struct table *t, guint i, GError **err)
{
	const char *kind = table_cell(t, i, KIND), *fuel = table_cell(t, i, FUEL), *each = table_cell(t, i, EACH);
	gint64 word;

	if (!kind || !fuel || !table_cell(t, i, MODULE))
		return err_set(err, ERR_INPUT, "kind, fuel and module are wanted");
	if (strcmp(kind, KIND_GENERATOR) && !word_parse(&words_boat_kind, kind, &word, err))
		return FALSE;
	if (strcmp(fuel, "petrol") && strcmp(fuel, "diesel"))
		return err_set(err, ERR_INPUT, "\"%.40s\" is no fuel: it is petrol or diesel", fuel);
	return word_parse(&words_module_stand, each ? each : "", &word, err);
}

/* The first row of a kind and fuel stands for all of them. */
static gboolean
is_first(const struct table *t, guint row)
{
	for (guint i = 0; i < row; i++)
		if (!g_strcmp0(table_cell(t, i, KIND), table_cell(t, row, KIND))
		    && !g_strcmp0(table_cell(t, i, FUEL), table_cell(t, row, FUEL)))
			return FALSE;
	return TRUE;
}

static void
check_kinds(const struct checked *k, GPtrArray *counts)
{
	struct table *t = read_table(k->folder, "kinds.csv", kind_columns, k->problems);

	for (guint i = 0; t && i < table_rows(t); i++) {
		GError *error = NULL;

		if (!kind_row(t, i, &error))
			problem_row(k->problems, t, i, error);
		else if (is_first(t, i))
			check_kind(k, table_cell(t, i, KIND), table_cell(t, i, FUEL), counts);
	}
	table_free(t);
}

enum { RATE_NAME, RATE_VALUE, RATE_UNIT, RATE_STANDING, RATE_SOURCE };
static const char *const rate_columns[] = { "name", "value", "unit", "standing", "source", NULL };

static const char *
rate_unit(const char *name)
{
	for (int i = 0; i < n_wear_constants; i++)
		if (!strcmp(wear_constants[i].key, name))
			return wear_constants[i].unit;
	return "";
}

static gboolean
rate_row(const struct table *t, guint i, GError **err)
{
	const char *unit = table_cell(t, i, RATE_UNIT), *standing = table_cell(t, i, RATE_STANDING),
		   *value = table_cell(t, i, RATE_VALUE);
	struct rate r = { .name = (char *)(guintptr)table_cell(t, i, RATE_NAME) };

	if (!r.name || !value || !standing || !table_cell(t, i, RATE_SOURCE))
		return err_set(err, ERR_INPUT, "name, value, standing and source are wanted");
	if (!number_parse(value, &r.value, err) || !import_rate_check(&r, err)
	    || !word_parse(&words_standing, standing, &r.standing, err))
		return FALSE;
	for (guint k = 0; k < i; k++)
		if (!g_strcmp0(table_cell(t, k, RATE_NAME), r.name))
			return err_set(err, ERR_INPUT, "%s stands twice", r.name);
	return !g_strcmp0(unit ? unit : "", rate_unit(r.name))
	    || err_set(err, ERR_INPUT, "%s: the unit is %s", r.name, *rate_unit(r.name) ? rate_unit(r.name) : "none");
}

static void
check_rates(const char *folder, GPtrArray *problems)
{
	struct table *t = read_table(folder, "rates.csv", rate_columns, problems);

	for (guint i = 0; t && i < table_rows(t); i++) {
		GError *error = NULL;

		if (!rate_row(t, i, &error))
			problem_row(problems, t, i, error);
	}
	table_free(t);
}

/* Editions are counted up, so that a newer one is known for it. */
static void
check_editions(const char *folder, GPtrArray *problems)
{
	static const char *const columns[] = { "edition", "date", "what", NULL };
	struct table *t = read_table(folder, "editions.csv", columns, problems);
	gint64 before = 0, edition;

	for (guint i = 0; t && i < table_rows(t); i++) {
		const char *text = table_cell(t, i, 0);
		GError *error = NULL;

		if (!text || !count_parse(text, &edition, NULL) || edition <= before) {
			err_set(&error, ERR_INPUT, "editions are numbers that grow: %s", text ? text : "none");
			problem_row(problems, t, i, error);
		} else {
			before = edition;
		}
	}
	table_free(t);
}

static gboolean
lies_there(const char *folder, const char *file)
{
	g_autofree char *path = g_build_filename(folder, file, NULL);

	return g_file_test(path, G_FILE_TEST_EXISTS);
}

/* Tables that may lie beside, read as the program reads them. */
static void
check_others(const char *folder, GPtrArray *problems)
{
	gboolean sizes = lies_there(folder, "wrenches.csv") || lies_there(folder, "heads.csv");
	GError *error = NULL, *other = NULL;
	struct knowledge *told = lies_there(folder, "findings.csv") ? knowledge_read(folder, &error) : NULL;
	struct wrench_book *wrenches = sizes ? wrench_book_read(folder, &other) : NULL;

	if (error)
		problem_error(problems, error);
	if (other)
		problem_error(problems, other);
	knowledge_free(told);
	wrench_book_free(wrenches);
}

gboolean
catalogue_check(const char *folder, GPtrArray *counts, GPtrArray *problems)
{
	GError *error = NULL, *other = NULL;
	struct readings *readings = lies_there(folder, "readings.csv") ? readings_read(folder, &error) : NULL;
	struct cautions *cautions = lies_there(folder, "cautions.csv") ? cautions_read(folder, &other) : NULL;
	struct checked k = { folder, { readings, cautions }, problems };

	if (error)
		problem_error(problems, error);
	if (other)
		problem_error(problems, other);
	check_kinds(&k, counts);
	check_rates(folder, problems);
	check_editions(folder, problems);
	check_others(folder, problems);
	readings_free(readings);
	cautions_free(cautions);
	return problems->len == 0;
}
