/* Modules that only some boats of a kind have: a trailer, a saildrive instead of a shaft. */
#include "logbook/catalogue_inside.h"

#include "base/err.h"
#include "exchange/table.h"
#include "logbook/inside.h"

#include <string.h>

static const char *const stands[] = { "no", "yes", "asked", "either" };
const struct words words_module_stand = { "word for each", stands, G_N_ELEMENTS(stands) };

enum { KIND, FUEL, MODULE, EACH };
static const char *const kind_columns[] = { "kind", "fuel", "module", "each", NULL };
enum { TASK, WHAT, ASK };
static const char *const question_columns[] = { "task", "what", "ask", NULL };

gboolean
module_for_each(enum module_stand stand)
{
	return stand == MODULE_EACH || stand == MODULE_EITHER;
}

/* boat.catalogue is its kind, its fuel where that is not the usual one, and the modules named. */
static gboolean
is_named(const struct boat *boat, const char *module)
{
	g_auto(GStrv) word = g_strsplit(boat->catalogue ? boat->catalogue : "", " ", -1);

	return word[0] && g_strv_contains((const char *const *)word + 1, module);
}

static gboolean
lies_on(const struct boat *boat, const char *module)
{
	return !strcmp(word_of(&words_stand, boat->berth), module) || !strcmp(word_of(&words_stand, boat->winter), module);
}

gboolean
catalogue_has(const struct catalogue *c, const struct boat *boat, const struct catalogue_from *from)
{
	if (from->stand == MODULE_ASKED)
		return is_named(boat, from->module) || lies_on(boat, from->module);
	if (from->stand != MODULE_EITHER || is_named(boat, from->module))
		return TRUE;
	for (guint i = 0; i < c->fittings.rows->len; i++) {
		const struct catalogue_from *other = catalogue_row_from(&c->fittings, i);

		if (other->stand == MODULE_EITHER && is_named(boat, other->module))
			return FALSE;
	}
	return TRUE;
}

static struct table *
read_kinds(const char *folder, GError **err)
{
	g_autofree char *path = g_build_filename(folder, "kinds.csv", NULL);

	return table_read(path, kind_columns, err);
}

/* How a module stands with a kind and fuel; NULL: the kind has none such. */
static const char *
stand_with(const struct table *kinds, const char *kind, const char *fuel, const char *module)
{
	for (guint i = 0; i < table_rows(kinds); i++)
		if (!g_strcmp0(table_cell(kinds, i, KIND), kind) && !g_strcmp0(table_cell(kinds, i, FUEL), fuel)
		    && !g_strcmp0(table_cell(kinds, i, MODULE), module))
			return table_cell(kinds, i, EACH);
	return NULL;
}

static gboolean
is_choice(const char *each)
{
	gint64 stand = word_index(&words_module_stand, each ? each : "");

	return stand == MODULE_ASKED || stand == MODULE_EITHER;
}

static gboolean
no_such(const struct table *kinds, const char *kind, const char *fuel, const char *module, GError **err)
{
	g_autoptr(GString) there = g_string_new(NULL);

	for (guint i = 0; i < table_rows(kinds); i++)
		if (!g_strcmp0(table_cell(kinds, i, KIND), kind) && !g_strcmp0(table_cell(kinds, i, FUEL), fuel)
		    && is_choice(table_cell(kinds, i, EACH)))
			g_string_append_printf(there, "%s%s", there->len ? ", " : "", table_cell(kinds, i, MODULE));
	return err_set(err, ERR_INPUT, "the catalogue has no \"%.40s\" for %s: what it leaves open is %s", module, kind,
		       there->len ? there->str : "nothing");
}

/* The words of --with after the name; what every boat of the kind has needs no word. */
static gboolean
add_modules(const char *folder, const char *kind, const char *fuel, char **with, GString *name, GError **err)
{
	struct table *kinds = read_kinds(folder, err);
	gboolean ok = kinds != NULL;

	for (int i = 0; ok && with && with[i]; i++) {
		const char *each = stand_with(kinds, kind, fuel, with[i]);

		if (!each)
			ok = no_such(kinds, kind, fuel, with[i], err);
		else if (is_choice(each))
			g_string_append_printf(name, " %s", with[i]);
	}
	table_free(kinds);
	return ok;
}

char *
catalogue_name(const char *folder, const char *kind, const struct catalogue_said *said, GError **err)
{
	g_auto(GStrv) fuels = catalogue_fuels(folder, kind, err);
	const char *fuel = said->fuel ? said->fuel : fuels ? fuels[0] : NULL;
	g_autoptr(GString) name = g_string_new(kind);
	g_autofree char *there = NULL;

	if (!fuels || !fuels[0])
		return NULL;
	if (!g_strv_contains((const char *const *)fuels, fuel)) {
		there = g_strjoinv(" or ", fuels);
		err_set(err, ERR_INPUT, "the catalogue has no %s for %s: it has %s", kind, fuel, there);
		return NULL;
	}
	if (strcmp(fuel, fuels[0]))
		g_string_append_printf(name, " %s", fuel);
	return add_modules(folder, kind, fuel, said->with, name, err) ? g_string_free(g_steal_pointer(&name), FALSE) : NULL;
}

gboolean
book_boat_with(struct book *b, const char *folder, struct boat *boat, const char *module, GError **err)
{
	const char *kind = word_of(&words_boat_kind, boat->kind);
	g_autoptr(GString) name = g_string_new(boat->catalogue ? boat->catalogue : kind);
	g_auto(GStrv) word = g_strsplit(name->str, " ", -1), fuels = catalogue_fuels(folder, kind, err);
	char *with[] = { (char *)(guintptr)module, NULL };
	const char *fuel;

	if (!fuels)
		return FALSE;
	fuel = word[1] && g_strv_contains((const char *const *)fuels, word[1]) ? word[1] : fuels[0] ? fuels[0] : "";
	if (!is_named(boat, module) && !add_modules(folder, kind, fuel, with, name, err))
		return FALSE;
	g_free(boat->catalogue);
	boat->catalogue = g_strdup(name->str);
	return book_begin(b, err) && book_end(b, book_put(b, RECORD_BOAT, boat, err), err, "%s: with %s", boat->name, module);
}

/* What is asked */

static void
clear_choice(gpointer p)
{
	struct catalogue_choice *c = p;

	g_strfreev(c->module);
	g_free(c->ask);
}

/* Whether the boat leaves it open: each module is one that only some have, and it lies on none. */
static gboolean
is_open(const struct table *kinds, const struct boat *boat, const char *fuel, char **module)
{
	for (int i = 0; module[i]; i++)
		if (!is_choice(stand_with(kinds, word_of(&words_boat_kind, boat->kind), fuel, module[i]))
		    || lies_on(boat, module[i]))
			return FALSE;
	return module[0] != NULL;
}

GArray *
catalogue_choices(const char *folder, const struct boat *boat, const char *fuel, GError **err)
{
	g_autofree char *path = g_build_filename(folder, "questions.csv", NULL);
	struct table *kinds = read_kinds(folder, err), *asked = kinds ? table_read(path, question_columns, err) : NULL;
	GArray *all = asked ? g_array_new(FALSE, FALSE, sizeof(struct catalogue_choice)) : NULL;

	if (all)
		g_array_set_clear_func(all, clear_choice);
	for (guint i = 0; all && i < table_rows(asked); i++) {
		const char *task = table_cell(asked, i, TASK), *ask = table_cell(asked, i, ASK);
		g_auto(GStrv) module = g_strsplit(task ? task : "", " ", -1);

		if (ask && !g_strcmp0(table_cell(asked, i, WHAT), QUESTION_WITH) && is_open(kinds, boat, fuel, module)) {
			struct catalogue_choice one = { g_steal_pointer(&module), g_strdup(ask) };

			g_array_append_val(all, one);
		}
	}
	table_free(asked);
	table_free(kinds);
	return all;
}
