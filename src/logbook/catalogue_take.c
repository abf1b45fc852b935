/* Taking over, or leaving, what a newer catalogue brings. */
#include "logbook/catalogue_work.h"

#include "base/err.h"
#include "logbook/inside.h"

#include <string.h>

struct taking {
	struct book *b;
	struct boat *boat;
	const struct news_list *n;
	GHashTable *keys; /* path -> gint64 of a fitting that was added in this command */
	GHashTable *done; /* names of what was taken or left */
	struct news_choice *choice;
};

/* What the catalogue says goes into a row; what is the boat's own stays.  Texts of `to` are its own. */
static void
copy_said(enum record r, const void *from, void *to)
{
	const struct record_type *t = record_type(r);

	for (int i = 0; i < t->n_fields; i++) {
		const struct field *f = &t->field[i];

		if (!catalogue_says(f))
			continue;
		if (f->kind == FIELD_TEXT) {
			g_free(*field_text(f, to));
			*field_text(f, to) = g_strdup(*field_text(f, (void *)(guintptr)from));
		} else {
			*field_int(f, to) = *field_int(f, (void *)(guintptr)from);
		}
	}
}

static gboolean
put_fitting(struct taking *k, gint64 at, gint64 *key, GError **err)
{
	const struct fitting *ships = catalogue_fitting(k->n->work->catalogue, at), *has = news_fitting(k->n->work, ships->path);
	struct fitting f;
	gboolean ok;

	record_init(RECORD_FITTING, &f);
	if (has) {
		f = (struct fitting){ .id = has->id, .boat = has->boat, .engine = has->engine, .retired = has->retired,
				      .variant = g_strdup(has->variant) };
	} else {
		f.boat = k->boat->id;
		f.engine = ships->engine;
	}
	copy_said(RECORD_FITTING, ships, &f);
	ok = book_put(k->b, RECORD_FITTING, &f, err);
	*key = f.id;
	record_clear(RECORD_FITTING, &f);
	return ok;
}

/* The fitting that a task is done on; one that the boat has not comes with it, once. */
static gboolean
fitting_for(struct taking *k, gint64 at, gint64 *key, GError **err)
{
	const char *path = catalogue_fitting(k->n->work->catalogue, at)->path;
	const struct fitting *has = news_fitting(k->n->work, path);
	gint64 *added = g_hash_table_lookup(k->keys, path);

	*key = has ? has->id : added ? *added : NONE;
	if (*key != NONE)
		return TRUE;
	if (!put_fitting(k, at, key, err))
		return FALSE;
	added = g_new(gint64, 1);
	*added = *key;
	g_hash_table_insert(k->keys, (gpointer)(guintptr)path, added);
	g_hash_table_add(k->done, (gpointer)(guintptr)path);
	return TRUE;
}

static gboolean
put_limits(struct taking *k, gint64 from, gint64 task, GError **err)
{
	const struct catalogue *c = k->n->work->catalogue;
	const GArray *old = k->n->work->limits;
	gboolean ok = TRUE;

	for (guint i = 0; ok && i < old->len; i++) {
		const struct limit *m = &((const struct limit *)(const void *)old->data)[i];

		ok = m->task != task || row_drop(k->b->db, RECORD_LIMIT, m->id, err);
	}
	for (guint i = 0; ok && i < c->limits.rows->len; i++) {
		struct limit m = *catalogue_limit(c, i); /* its texts are the catalogue's */

		if (m.task != from)
			continue;
		m.id = NONE;
		m.task = task;
		ok = book_put(k->b, RECORD_LIMIT, &m, err);
	}
	return ok;
}

static gboolean
put_task(struct taking *k, gint64 at, GError **err)
{
	const struct task *ships = catalogue_task(k->n->work->catalogue, at), *has = news_task(k->n->work, ships->name);
	struct task t;
	gboolean ok;

	record_init(RECORD_TASK, &t);
	t.boat = k->boat->id;
	if (has) {
		t.id = has->id;
		t.retired = has->retired;
	}
	copy_said(RECORD_TASK, ships, &t);
	ok = fitting_for(k, ships->fitting, &t.fitting, err) && book_put(k->b, RECORD_TASK, &t, err)
	  && put_limits(k, at, t.id, err);
	record_clear(RECORD_TASK, &t);
	return ok;
}

static gboolean
retire(struct taking *k, const struct news *line, GError **err)
{
	struct fitting *f = news_fitting(k->n->work, line->name);
	struct task *t = news_task(k->n->work, line->name);

	if (line->what == SHIPPED_FITTING) {
		f->retired = 1;
		return book_put(k->b, RECORD_FITTING, f, err);
	}
	t->retired = 1;
	return book_put(k->b, RECORD_TASK, t, err);
}

/* An engine that was alone has company now: what was the boat's counts its hours, and not all. */
static gboolean
say_whose(struct taking *k, GError **err)
{
	const struct catalogue *c = k->n->work->catalogue;
	gboolean ok = TRUE;

	for (guint i = 0; ok && k->choice->taken && i < c->fittings.rows->len; i++) {
		const struct fitting *ships = catalogue_fitting(c, i);
		struct fitting *has = news_fitting(k->n->work, ships->path);

		if (has && has->engine == NONE && ships->engine != NONE) {
			has->engine = ships->engine;
			ok = book_put(k->b, RECORD_FITTING, has, err);
		}
	}
	return ok;
}

static gboolean
take_line(struct taking *k, const struct news *line, GError **err)
{
	const struct catalogue *c = k->n->work->catalogue;
	gint64 key;

	k->choice->taken++;
	if (line->kind == NEWS_GONE)
		return retire(k, line, err);
	if (line->what == SHIPPED_TASK)
		return put_task(k, catalogue_find(&c->tasks, line->name), err);
	return fitting_for(k, catalogue_find(&c->fittings, line->name), &key, err)
	    && (line->kind == NEWS_NEW || put_fitting(k, catalogue_find(&c->fittings, line->name), &key, err));
}

static const struct news *
line_named(const struct news_list *n, const char *name)
{
	for (guint i = 0; i < n->lines->len; i++) {
		const struct news *line = &((const struct news *)(const void *)n->lines->data)[i];

		if (!strcmp(line->name, name))
			return line;
	}
	return NULL;
}

static gboolean
is_among(char **names, const char *name)
{
	return names && g_strv_contains((const char *const *)names, name);
}

static gboolean
check_names(const struct news_list *n, char **names, gboolean take, GError **err)
{
	for (int i = 0; names && names[i]; i++) {
		const struct news *line = line_named(n, names[i]);

		if (!line)
			return err_set(err, ERR_NOT_FOUND, "\"%.60s\" is no news of the catalogue: plan --news lists them",
				       names[i]);
		if (take && line->kind == NEWS_YOURS)
			return err_set(err, ERR_CONFLICT, "%s was changed on this boat, and that is kept", names[i]);
	}
	return TRUE;
}

/* What is taken, and what is left; *settled when nothing stays open. */
static gboolean
do_lines(struct taking *k, gboolean *settled, GError **err)
{
	int open = 0;

	for (guint i = 0; i < k->n->lines->len; i++) {
		const struct news *line = &((const struct news *)(const void *)k->n->lines->data)[i];
		gboolean leave = is_among(k->choice->leave, line->name),
			 take = !leave && line->kind != NEWS_YOURS && (k->choice->all || is_among(k->choice->take, line->name));

		if (take && !take_line(k, line, err))
			return FALSE;
		k->choice->left += leave;
		if (take || leave)
			g_hash_table_add(k->done, (gpointer)(guintptr)line->name);
	}
	for (guint i = 0; i < k->n->lines->len; i++) {
		const struct news *line = &((const struct news *)(const void *)k->n->lines->data)[i];

		open += line->kind != NEWS_YOURS && !g_hash_table_contains(k->done, line->name);
	}
	*settled = open == 0;
	return TRUE;
}

/* That this is how the catalogue has a row now is known: it is news no more, taken or not. */
static gboolean
know(struct taking *k, enum shipped_row what, const char *name, char *digest, GError **err)
{
	const struct shipped *there = news_shipped(k->n->work, name);
	struct shipped s = { there ? there->id : NONE, k->boat->id, what, (char *)(guintptr)name, digest };
	gboolean ok = (there && !strcmp(there->digest, digest)) || book_put(k->b, RECORD_SHIPPED, &s, err);

	g_free(digest);
	return ok;
}

/* What was taken or left is known, and all of it once nothing is open. */
static gboolean
know_done(struct taking *k, gboolean all, GError **err)
{
	const struct catalogue *c = k->n->work->catalogue;
	gboolean ok = TRUE;

	for (guint i = 0; ok && i < c->fittings.rows->len; i++) {
		const struct fitting *f = catalogue_fitting(c, i);

		if (all || g_hash_table_contains(k->done, f->path))
			ok = know(k, SHIPPED_FITTING, f->path, catalogue_fitting_digest(f), err);
	}
	for (guint i = 0; ok && i < c->tasks.rows->len; i++) {
		const struct task *t = catalogue_task(c, i);

		if (all || g_hash_table_contains(k->done, t->name))
			ok = know(k, SHIPPED_TASK, t->name,
				  catalogue_task_digest(t, catalogue_fitting(c, t->fitting)->path, c->limits.rows), err);
	}
	return ok;
}

/* A task that is gone and was taken out, or left, is the boat's own business from now on. */
static gboolean
forget_gone(struct taking *k, GError **err)
{
	gboolean ok = TRUE;

	for (guint i = 0; ok && i < k->n->lines->len; i++) {
		const struct news *line = &((const struct news *)(const void *)k->n->lines->data)[i];

		if (line->kind == NEWS_GONE && g_hash_table_contains(k->done, line->name))
			ok = row_drop(k->b->db, RECORD_SHIPPED, news_shipped(k->n->work, line->name)->id, err);
	}
	return ok;
}

static gboolean
put_edition(struct taking *k, GError **err)
{
	if (!k->boat->catalogue)
		k->boat->catalogue = g_strdup(word_of(&words_boat_kind, k->boat->kind));
	k->boat->edition = k->n->edition;
	return book_put(k->b, RECORD_BOAT, k->boat, err);
}

static gboolean
write_choice(struct taking *k, GError **err)
{
	gboolean settled;

	return do_lines(k, &settled, err) && say_whose(k, err) && know_done(k, settled, err) && forget_gone(k, err)
	    && (!settled || put_edition(k, err));
}

gboolean
book_take_news(struct book *b, const char *folder, struct boat *boat, struct news_choice *choice, GError **err)
{
	struct news_list *n = book_news(b, folder, boat, err);
	struct taking k = { b, boat, n, NULL, NULL, choice };
	gboolean ok;

	choice->taken = choice->left = 0;
	if (!n)
		return FALSE;
	k.keys = g_hash_table_new_full(g_str_hash, g_str_equal, NULL, g_free);
	k.done = g_hash_table_new(g_str_hash, g_str_equal);
	ok = check_names(n, choice->take, TRUE, err) && check_names(n, choice->leave, FALSE, err) && book_begin(b, err);
	if (ok) {
		ok = write_choice(&k, err);
		ok = book_end(b, ok, err, "catalogue: %d taken, %d left", choice->taken, choice->left);
	}
	g_hash_table_unref(k.keys);
	g_hash_table_unref(k.done);
	news_free(n);
	return ok;
}
