/* A catalogue as it stands on one boat: once for each engine where that is so. */
#include "logbook/catalogue_inside.h"

#include "base/err.h"

#include <string.h>

/* A row's stand on the boat: by itself, or as one of several alike. */
struct alike {
	const char *name; /* of the engine, put before paths; NULL: as the catalogue has it */
	gint64 engine; /* whose hours count; NONE: the boat's only one, or all */
};

struct expanding {
	const struct catalogue *from;
	struct catalogue *to;
	const struct alike *each; /* where a row stands that each engine has */
	int n_each;
	struct alike once;
	const struct boat *boat;
};

static void
copy_record(enum record r, const void *from, void *to)
{
	const struct record_type *t = record_type(r);

	memcpy(to, from, t->size);
	for (int i = 0; i < t->n_fields; i++)
		if (t->field[i].kind == FIELD_TEXT)
			*field_text(&t->field[i], to) = g_strdup(*field_text(&t->field[i], to));
}

/* "engine/coupler" -> "port/engine/coupler"; "Engine coupler" -> "Engine coupler, port" */
static void
put_before(char **text, const struct alike *s, char mark)
{
	char *old = *text;

	if (!s->name || !old)
		return;
	*text = mark == ',' ? g_strconcat(old, ", ", s->name, NULL) : g_strdup_printf("%s%c%s", s->name, mark, old);
	g_free(old);
}

static gboolean
stands_for_each(const struct expanding *x, gint64 fitting)
{
	return fitting != NONE && module_for_each(catalogue_row_from(&x->from->fittings, fitting)->stand);
}

static gboolean
has_fitting(const struct expanding *x, gint64 fitting)
{
	return catalogue_has(x->from, x->boat, catalogue_row_from(&x->from->fittings, fitting));
}

/* A path, or DESIGN=PATH. */
static void
prefix_way(const struct expanding *x, char **way, const struct alike *s)
{
	const char *is = strchr(*way, '='), *path = is ? is + 1 : *way;
	char *whole;

	if (!stands_for_each(x, catalogue_find(&x->from->fittings, path)))
		return;
	whole = g_strdup_printf("%.*s%s/%s", (int)(path - *way), *way, s->name, path);
	g_free(*way);
	*way = whole;
}

/* Paths that a fitting names are those of the same engine, where each has it. */
static void
prefix_paths(const struct expanding *x, char **text, const struct alike *s)
{
	g_auto(GStrv) path = g_strsplit(*text ? *text : "", " ", -1);

	if (!*text || !s->name)
		return;
	for (int i = 0; path[i]; i++)
		prefix_way(x, &path[i], s);
	g_free(*text);
	*text = g_strjoinv(" ", path);
}

static gboolean
add_fitting(struct expanding *x, gint64 at, const struct alike *s, GError **err)
{
	struct fitting f;
	gboolean ok;

	copy_record(RECORD_FITTING, catalogue_fitting(x->from, at), &f);
	put_before(&f.path, s, '/');
	put_before(&f.title, s, ',');
	prefix_paths(x, &f.needs_off, s);
	prefix_paths(x, &f.opens_with, s);
	f.engine = s->engine;
	ok = catalogue_add(&x->to->fittings, &f, catalogue_row_from(&x->from->fittings, at), err);
	record_clear(RECORD_FITTING, &f);
	return ok;
}

static gboolean
add_limits(struct expanding *x, gint64 task, GError **err)
{
	gint64 to = x->to->tasks.rows->len - 1;
	gboolean ok = TRUE;

	for (guint i = 0; ok && i < x->from->limits.rows->len; i++) {
		struct limit m;

		if (catalogue_limit(x->from, i)->task != task)
			continue;
		copy_record(RECORD_LIMIT, catalogue_limit(x->from, i), &m);
		m.task = to;
		ok = catalogue_add(&x->to->limits, &m, catalogue_row_from(&x->from->limits, i), err);
		record_clear(RECORD_LIMIT, &m);
	}
	return ok;
}

static gboolean
add_task(struct expanding *x, gint64 at, const struct alike *s, GError **err)
{
	const struct task *from = catalogue_task(x->from, at);
	g_autofree char *path = g_strdup(catalogue_fitting(x->from, from->fitting)->path);
	struct task t;
	gboolean ok;

	copy_record(RECORD_TASK, from, &t);
	put_before(&path, s, '/');
	put_before(&t.name, s, '-');
	t.fitting = catalogue_find(&x->to->fittings, path);
	ok = catalogue_add(&x->to->tasks, &t, catalogue_row_from(&x->from->tasks, at), err) && add_limits(x, at, err);
	record_clear(RECORD_TASK, &t);
	return ok;
}

/* All rows of x->from, each where it stands. */
static gboolean
expand(struct expanding *x, GError **err)
{
	gboolean ok = TRUE;

	for (guint i = 0; ok && i < x->from->fittings.rows->len; i++) {
		gboolean each = stands_for_each(x, i), there = has_fitting(x, i);

		for (int k = 0; ok && there && k < (each ? x->n_each : 1); k++)
			ok = add_fitting(x, i, each ? &x->each[k] : &x->once, err);
	}
	for (guint i = 0; ok && i < x->from->tasks.rows->len; i++) {
		gint64 fitting = catalogue_task(x->from, i)->fitting;
		gboolean each = stands_for_each(x, fitting), there = has_fitting(x, fitting);

		for (int k = 0; ok && there && k < (each ? x->n_each : 1); k++)
			ok = add_task(x, i, each ? &x->each[k] : &x->once, err);
	}
	return ok;
}

static gboolean
add_kind(struct expanding *x, const char *folder, const char *kind, const char *fuel, GError **err)
{
	struct catalogue *c = catalogue_read(folder, kind, fuel, NULL, err);
	gboolean ok;

	x->from = c;
	ok = c && expand(x, err);
	catalogue_free(c);
	return ok;
}

/* The generator's modules, of the boat's own fuel where there are such. */
static gboolean
add_generator(const struct expanding *boats, const char *folder, gint64 engine, const char *fuel, GError **err)
{
	const struct alike own = { KIND_GENERATOR, engine };
	struct expanding x = { .to = boats->to, .each = &own, .n_each = 1, .once = { NULL, engine }, .boat = boats->boat };
	g_auto(GStrv) fuels = catalogue_fuels(folder, KIND_GENERATOR, err);

	if (!fuels || !fuels[0])
		return fuels != NULL;
	return add_kind(&x, folder, KIND_GENERATOR, g_strv_contains((const char *const *)fuels, fuel) ? fuel : fuels[0], err);
}

/* Where rows stand that each propulsion engine has; *generator is NONE without one. */
static GArray *
stands_of(const GArray *engines, gint64 plain, gint64 *generator)
{
	GArray *all = g_array_new(FALSE, FALSE, sizeof(struct alike));
	const struct engine *e = (const void *)engines->data;
	struct alike *s;

	*generator = NONE;
	for (guint i = 0; i < engines->len; i++) {
		const struct alike one = { e[i].id == plain ? NULL : e[i].name, e[i].id };

		if (strcmp(e[i].name, KIND_GENERATOR))
			g_array_append_val(all, one);
		else
			*generator = e[i].id;
	}
	if (!all->len)
		g_array_append_vals(all, &(const struct alike){ NULL, NONE }, 1);
	s = (void *)all->data;
	if (all->len == 1)
		s[0] = (struct alike){ NULL, *generator == NONE ? NONE : s[0].engine };
	return all;
}

/* Where no petrol is aboard nobody is warned of its vapour by work that boats with petrol share. */
static void
no_vapour(struct catalogue *c)
{
	struct task *t = (void *)c->tasks.rows->data;

	for (guint i = 0; i < c->tasks.rows->len; i++) {
		g_auto(GStrv) word = g_strsplit(t[i].caution ? t[i].caution : "", " ", -1);
		g_autoptr(GString) left = g_string_new(NULL);

		for (int k = 0; word[k]; k++)
			if (strcmp(word[k], "fuel-vapour"))
				g_string_append_printf(left, "%s%s", left->len ? " " : "", word[k]);
		g_free(t[i].caution);
		t[i].caution = left->len ? g_strdup(left->str) : NULL;
	}
}

struct catalogue *
catalogue_for_boat(const char *folder, const struct boat *boat, const GArray *engines, gint64 plain, GError **err)
{
	g_auto(GStrv) name = g_strsplit(boat->catalogue ? boat->catalogue : word_of(&words_boat_kind, boat->kind), " ", -1);
	g_auto(GStrv) fuels = name[0] ? catalogue_fuels(folder, name[0], err) : g_new0(char *, 1);
	struct catalogue *c = fuels ? catalogue_new() : NULL;
	gint64 generator;
	g_autoptr(GArray) stands = stands_of(engines, plain, &generator);
	const struct alike *each = (const void *)stands->data;
	struct expanding x = { .to = c, .each = each, .n_each = (int)stands->len,
			       .once = { NULL, generator == NONE ? NONE : each[0].engine }, .boat = boat };
	const char *fuel;

	if (!c || !fuels[0])
		return c;
	fuel = name[1] && g_strv_contains((const char *const *)fuels, name[1]) ? name[1] : fuels[0];
	if (!add_kind(&x, folder, name[0], fuel, err)
	    || (generator != NONE && !add_generator(&x, folder, generator, fuel, err)))
		g_clear_pointer(&c, catalogue_free);
	else if (strcmp(fuel, "petrol"))
		no_vapour(c);
	return c;
}
