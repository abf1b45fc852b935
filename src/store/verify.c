#include "store/verify.h"

#include "base/err.h"
#include "base/key.h"
#include "store/apply.h"
#include "store/cells.h"
#include "store/compare.h"
#include "store/entry.h"
#include "store/indexes.h"
#include "store/inside.h"
#include "store/migrate.h"

#include <stdarg.h>
#include <string.h>

struct verifying {
	struct db *db;
	struct db *replay;
	const struct verify_watch *watch;
	gint64 problems;
	GPtrArray *indexes;	/* those of the scratch database, which are not needed for playing */
	gboolean replayed;	/* so far every entry could be played */
	gint64 last;	/* newest entry */
	guint8 chain[SUM_BYTES];	/* hash of the entry before */
};

static void G_GNUC_PRINTF(2, 3)
problem(struct verifying *v, const char *format, ...)
{
	g_autofree char *sentence = NULL;
	va_list args;

	va_start(args, format);
	sentence = g_strdup_vprintf(format, args);
	va_end(args);
	v->problems++;
	if (v->watch->problem)
		v->watch->problem(v->watch->context, sentence);
}

/* What the file's own damage keeps from being read is a problem found, not a failure to look. */
static void
problem_error(struct verifying *v, const char *where, GError *error)
{
	problem(v, "%s: %s", where, error->message);
	g_error_free(error);
}

static void
progress(struct verifying *v, const char *what, gint64 done, gint64 all)
{
	if (v->watch->progress)
		v->watch->progress(v->watch->context, what, done, all);
}

static void
check_pages(struct verifying *v)
{
	struct cells *c = cells_open(v->db, SQL_INTEGRITY_CHECK);
	GError *error = NULL;

	progress(v, "pages", 0, 1);
	while (cells_next(c))
		if (g_strcmp0(cells_text(c, 0), "ok"))
			problem(v, "SQLite finds: %s", cells_text(c, 0));
	if (!cells_close(c, &error))
		problem_error(v, "SQLite's check stopped", error);
}

static void
check_references(struct verifying *v)
{
	struct cells *c = cells_open(v->db, SQL_FOREIGN_KEY_CHECK);
	GError *error = NULL;

	progress(v, "references", 0, 1);
	while (cells_next(c)) {
		gint64 row = cells_int(c, 1);
		const char *from = cells_text(c, 0);
		char key[KEY_TEXT];

		if (!g_strcmp0(from, "entry"))
			problem(v, "entry %" G_GINT64_FORMAT " refers to an entry that is not there", row);
		else
			problem(v, "the %s with the key %s refers to a row of %s that is not there", from ? from : "?",
				key_letters(row, key), cells_text(c, 2));
	}
	if (!cells_close(c, &error))
		problem_error(v, "the references can't be checked", error);
}

static void
check_link(struct verifying *v, const struct entry *e, gboolean hashes, gint64 expected)
{
	if (e->seq != expected)
		problem(v, "the journal goes from entry %" G_GINT64_FORMAT " to entry %" G_GINT64_FORMAT
			": what was between is missing", expected - 1, e->seq);
	else if (!hashes || memcmp(e->previous, v->chain, SUM_BYTES))
		problem(v, "entry %" G_GINT64_FORMAT " (%s) does not follow from the entry before: one of the two was"
			" altered", e->seq, e->what);
	memcpy(v->chain, e->hash, SUM_BYTES);
}

/* A migration finds the indexes as it expects them. */
static gboolean
schema_step(struct verifying *v, GError **err)
{
	if (v->indexes && !indexes_make(v->replay, v->indexes, err))
		return FALSE;
	g_clear_pointer(&v->indexes, g_ptr_array_unref);
	if (!migrate_step(v->replay, migrations_ours(), v->replay->schema, err))
		return FALSE;
	v->indexes = indexes_drop(v->replay, NULL, err);
	return v->indexes != NULL;
}

/* Bring the scratch database to the schema that the entry was written in. */
static gboolean
schema_follow(struct verifying *v, gint64 schema, GError **err)
{
	for (; v->replay->schema < MIN(schema, migrations_ours()->n); v->replay->schema++)
		if (!schema_step(v, err))
			return FALSE;
	return TRUE;
}

/* good: the changeset is well formed. */
static void
replay_entry(struct verifying *v, const struct entry *e, struct changes_in *in, gboolean good)
{
	g_autofree char *where = NULL;
	GError *error = NULL;

	if (!v->replayed)
		return;
	if (!good)
		err_set(&error, ERR_STORE, "its changes are damaged");
	else if (schema_follow(v, e->schema, &error) && apply_changes(v->replay, changes_input, in, &error))
		return;
	where = g_strdup_printf("entry %" G_GINT64_FORMAT " (%s) can't be repeated", e->seq, e->what);
	problem_error(v, where, error);
	v->replayed = FALSE;
}

static void
check_entry(struct verifying *v, const struct entry *e)
{
	guint8 sum[SUM_BYTES], hash[SUM_BYTES];
	struct changes_in in = { 0 };
	GError *error = NULL;
	gboolean good;

	if (changes_open(v->db, e->seq, &in, &error) && changes_sum(v->db, &in, sum, &good, &error)) {
		entry_hash(e, sum, hash);
		if (memcmp(hash, e->hash, SUM_BYTES))
			problem(v, "entry %" G_GINT64_FORMAT " (%s) was altered: its hash does not fit", e->seq,
				e->what);
		replay_entry(v, e, &in, good);
	} else {
		problem_error(v, "an entry of the journal can't be read", error);
		v->replayed = FALSE;
	}
	changes_close(&in);
}

static void
check_journal(struct verifying *v)
{
	struct cells *c = cells_open(v->db, SQL_ENTRIES_OLDEST_FIRST);
	struct entry e = { 0 };
	gint64 expected = 1;
	GError *error = NULL;

	while (cells_next(c)) {
		gboolean hashes = entry_read(c, &e);

		progress(v, "journal", e.seq, v->last);
		check_link(v, &e, hashes, expected);
		check_entry(v, &e);
		expected = e.seq + 1;
	}
	entry_clear(&e);
	if (!cells_close(c, &error)) {
		problem_error(v, "the journal can't be read to its end", error);
		v->replayed = FALSE;
	}
}

static void
difference(void *context, const char *sentence)
{
	problem(context, "%s", sentence);
}

static gboolean
compare_rows(struct verifying *v, GError **err)
{
	GError *error = NULL;

	if (!v->replayed || !schema_follow(v, v->db->schema, &error)) {
		problem(v, "the rows were not compared with the journal, because the journal can't be repeated whole");
		g_clear_error(&error);
		return TRUE;
	}
	for (int r = 0; r < RECORD_COUNT; r++) {
		progress(v, record_type((enum record)r)->plural, r, RECORD_COUNT);
		if (!compare_tables(v->db, v->replay, (enum record)r, difference, v, err))
			return FALSE;
	}
	return TRUE;
}

static struct db *
empty_replay(GError **err)
{
	struct db *replay = db_scratch("");

	if (db_exec(replay, SQL_SCRATCH, err))
		return replay;
	db_close(replay);
	return NULL;
}

gboolean
verify(struct db *db, const struct verify_watch *watch, gint64 *problems, GError **err)
{
	struct verifying v = { .db = db, .watch = watch, .replayed = TRUE };
	gboolean ok;

	*problems = 0;
	if (!db_hold(db, err))
		return FALSE;
	v.replay = empty_replay(err);
	ok = v.replay != NULL;
	if (ok) {
		check_pages(&v);
		check_references(&v);
		if (!db_ask(db, SQL_LAST_ENTRY, &v.last, NULL))
			v.last = 0;
		check_journal(&v);
		ok = compare_rows(&v, err);
	}
	g_clear_pointer(&v.indexes, g_ptr_array_unref);
	db_close(v.replay);
	db_release(db);
	*problems = v.problems;
	return ok;
}
