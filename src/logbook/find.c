/* Finding what people name. */
#include "logbook/inside.h"
#include "logbook/transfer.h"

#include "base/err.h"

#include <string.h>

/* Every word of `words` stands somewhere in `text`. */
static gboolean
has_words(char **words, const char *text)
{
	g_autofree char *folded = g_utf8_casefold(text, -1);

	for (int i = 0; words[i]; i++)
		if (*words[i] && !strstr(folded, words[i]))
			return FALSE;
	return TRUE;
}

static char **
fold_words(const char *words)
{
	g_autofree char *folded = g_utf8_casefold(words, -1);

	g_strdelimit(folded, ":,", ' ');
	return g_strsplit(folded, " ", -1);
}

static gboolean
not_one(GString *near, int n, const char *what, const char *words, const char *list, GError **err)
{
	if (!n)
		return err_set(err, ERR_NOT_FOUND, "no %s is called \"%.60s\": splitpin %s lists them", what, words,
			       list);
	return err_set(err, ERR_INPUT, "\"%.60s\" can be %s%s: name one", words, near->str, n > 6 ? ", ..." : "");
}

static void
add_near(GString *near, int n, const char *name)
{
	if (n <= 6)
		g_string_append_printf(near, "%s%s", near->len ? ", " : "", name);
}

static gboolean
task_by_name(struct book *b, gint64 boat, const char *name, struct task *task)
{
	struct cells *c = cells_open(b->db, SQL_TASK_BY_NAME);
	gboolean found;

	cells_bind(c, 1, boat);
	cells_bind_text(c, 2, name);
	found = cells_next_record(c, RECORD_TASK, task);
	return cells_close(c, NULL) && found;
}

static gboolean
fitting_by_path(struct book *b, gint64 boat, const char *path, struct fitting *fitting)
{
	struct cells *c = cells_open(b->db, SQL_FITTING_BY_PATH);
	gboolean found;

	cells_bind(c, 1, boat);
	cells_bind_text(c, 2, path);
	found = cells_next_record(c, RECORD_FITTING, fitting);
	return cells_close(c, NULL) && found;
}

static GHashTable *
fitting_titles(const GArray *fittings)
{
	GHashTable *titles = g_hash_table_new(g_int64_hash, g_int64_equal);

	for (guint i = 0; i < fittings->len; i++) {
		struct fitting *f = &((struct fitting *)(void *)fittings->data)[i];

		g_hash_table_insert(titles, &f->id, f->title);
	}
	return titles;
}

gboolean
book_find_task(struct book *b, gint64 boat, const char *words, struct task *task, GError **err)
{
	g_autoptr(GArray) tasks = NULL, fittings = NULL;
	g_autoptr(GHashTable) titles = NULL;
	g_auto(GStrv) folded = fold_words(words);
	g_autoptr(GString) near = g_string_new(NULL);
	struct task *all, *hit = NULL;
	int n = 0;

	record_init(RECORD_TASK, task);
	if (task_by_name(b, boat, words, task))
		return TRUE;
	tasks = book_records(b, RECORD_TASK, boat, err);
	fittings = tasks ? book_records(b, RECORD_FITTING, boat, err) : NULL;
	if (!fittings)
		return FALSE;
	titles = fitting_titles(fittings);
	all = (void *)tasks->data;
	for (guint i = 0; *words && i < tasks->len; i++) {
		const char *title = g_hash_table_lookup(titles, &all[i].fitting);
		g_autofree char *text = g_strconcat(all[i].name, " ", all[i].title, " ", title ? title : "", NULL);

		if (!has_words(folded, text))
			continue;
		hit = &all[i];
		add_near(near, ++n, hit->name);
	}
	if (n != 1)
		return not_one(near, n, "task", words, "plan", err);
	*task = *hit;
	record_init(RECORD_TASK, hit); /* its texts are *task's now */
	return TRUE;
}

/* Whether the words are all of its name: of its title, or of the end of its path. */
static gboolean
is_called(const struct fitting *f, const char *words)
{
	const char *slash = strrchr(f->path, '/');
	g_autofree char *typed = g_utf8_casefold(words, -1), *title = g_utf8_casefold(f->title, -1);
	g_autofree char *end = g_utf8_casefold(slash ? slash + 1 : f->path, -1);

	return !strcmp(typed, title) || !strcmp(typed, end);
}

gboolean
book_find_fitting(struct book *b, gint64 boat, const char *words, struct fitting *fitting, GError **err)
{
	g_autoptr(GArray) fittings = NULL;
	g_auto(GStrv) folded = fold_words(words);
	g_autoptr(GString) near = g_string_new(NULL);
	struct fitting *all, *hit = NULL, *called = NULL;
	int n = 0, names = 0;

	record_init(RECORD_FITTING, fitting);
	if (fitting_by_path(b, boat, words, fitting))
		return TRUE;
	fittings = book_records(b, RECORD_FITTING, boat, err);
	if (!fittings)
		return FALSE;
	all = (void *)fittings->data;
	for (guint i = 0; *words && i < fittings->len; i++) {
		g_autofree char *text = g_strconcat(all[i].path, " ", all[i].title, NULL);

		if (!has_words(folded, text))
			continue;
		hit = &all[i];
		add_near(near, ++n, hit->path);
		if (is_called(hit, words))
			called = hit, names++;
	}
	if (names == 1)
		hit = called;
	else if (n != 1)
		return not_one(near, n, "fitting", words, "fitting", err);
	*fitting = *hit;
	record_init(RECORD_FITTING, hit);
	return TRUE;
}

gboolean
book_engine(struct book *b, gint64 boat, const char *name, struct engine *e, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_ENGINE, boat, err);
	g_autoptr(GString) names = g_string_new(NULL);
	struct engine *list;

	record_init(RECORD_ENGINE, e);
	if (!all)
		return FALSE;
	list = (void *)all->data;
	for (guint i = 0; i < all->len; i++) {
		g_string_append_printf(names, "%s%s", i ? ", " : "", list[i].name);
		if (name ? strcmp(list[i].name, name) : all->len != 1)
			continue;
		*e = list[i];
		record_init(RECORD_ENGINE, &list[i]);
		return TRUE;
	}
	if (!all->len)
		return err_set(err, ERR_NOT_FOUND, "this boat has no engine on record");
	if (!name)
		return err_set(err, ERR_INPUT, "which engine? %s", names->str);
	return err_set(err, ERR_NOT_FOUND, "no engine is called \"%.40s\": there is %s", name, names->str);
}

const char *
book_name_of(struct book *b, enum record r, gint64 key)
{
	static const char *const naming[RECORD_COUNT] = {
		[RECORD_BOAT] = "name",
		[RECORD_ENGINE] = "name",
		[RECORD_FITTING] = "path",
		[RECORD_TASK] = "name",
		[RECORD_PLACE] = "name",
	};
	const struct record_type *t = record_type(r);
	g_autofree void *record = NULL;

	if (!naming[r])
		return NULL;
	record = g_malloc(t->size);
	record_init(r, record);
	g_clear_pointer(&b->name, g_free);
	if (row_get(b->db, r, key, record, NULL))
		b->name = g_strdup(*field_text(record_field(r, naming[r]), record));
	record_clear(r, record);
	return b->name;
}

gboolean
book_engine_of(struct book *b, const struct task *t, const char *name, struct engine *e, GError **err)
{
	struct fitting f;
	gboolean ok;

	record_init(RECORD_ENGINE, e);
	record_init(RECORD_FITTING, &f);
	ok = name || row_get(b->db, RECORD_FITTING, t->fitting, &f, err);
	if (ok && f.engine != NONE)
		ok = row_get(b->db, RECORD_ENGINE, f.engine, e, err);
	else if (ok)
		ok = book_engine(b, t->boat, name, e, err);
	record_clear(RECORD_FITTING, &f);
	return ok;
}
