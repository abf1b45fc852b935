#include "store/journal.h"

#include "base/err.h"
#include "store/apply.h"
#include "store/cells.h"
#include "store/entry.h"
#include "store/inside.h"
#include "store/spool.h"

#include <string.h>

static void
entry_free(gpointer entry)
{
	entry_clear(entry);
	g_free(entry);
}

/* Newest first, an undo or redo is met before what it took back; one that was itself taken back counts no more. */
static void
note_undone(GHashTable *by, struct entry *e)
{
	struct entry *undo = g_hash_table_lookup(by, &e->seq);

	if (undo)
		e->undone_by = undo->seq;
	if (e->undone_by != NONE)
		return;
	if (e->undoes != NONE)
		g_hash_table_insert(by, &e->undoes, e);
	if (e->redoes != NONE)
		g_hash_table_insert(by, &e->redoes, e);
}

GPtrArray *
journal_list(struct db *db, int limit, GError **err)
{
	GPtrArray *list = g_ptr_array_new_with_free_func(entry_free);
	g_autoptr(GHashTable) by = g_hash_table_new(g_int64_hash, g_int64_equal);
	struct cells *c = cells_open(db, SQL_ENTRIES_NEWEST_FIRST);

	while ((limit <= 0 || list->len < (guint)limit) && cells_next(c)) {
		struct entry *e = g_new0(struct entry, 1);

		entry_read(c, e);
		note_undone(by, e);
		g_ptr_array_add(list, e);
	}
	if (cells_close(c, err))
		return list;
	g_ptr_array_free(list, TRUE);
	return NULL;
}

static gboolean
last_seq(struct db *db, gint64 *seq, GError **err)
{
	if (!db_ask(db, SQL_LAST_ENTRY, seq, err))
		return FALSE;
	if (*seq == NONE)
		*seq = 0;
	return TRUE;
}

/* The newest entry whose changes still stand.  An undo and all that it spans cancel out: go on before what it took
 * back. */
static gboolean
newest_standing(struct db *db, struct entry *e, GError **err)
{
	gint64 seq;

	if (!last_seq(db, &seq, err))
		return FALSE;
	while (seq > 0) {
		if (!entry_get(db, seq, e, err))
			return FALSE;
		if (e->undoes == NONE)
			return TRUE;
		seq = MIN(e->undoes, seq) - 1;
	}
	return err_set(err, ERR_NOT_FOUND, "there is nothing to undo");
}

/* The newest undo that nothing but redone undos came after. */
static gboolean
newest_undo(struct db *db, struct entry *e, GError **err)
{
	gint64 seq;

	if (!last_seq(db, &seq, err))
		return FALSE;
	while (seq > 0) {
		if (!entry_get(db, seq, e, err))
			return FALSE;
		if (e->undoes != NONE)
			return TRUE;
		if (e->redoes == NONE)
			break;
		seq = MIN(e->redoes, seq) - 1;
	}
	return err_set(err, ERR_NOT_FOUND, "there is nothing to redo");
}

/* What the command did that this entry repeats or takes back, however often it went to and fro. */
static gboolean
original_words(struct db *db, const struct entry *e, char **what, GError **err)
{
	struct entry first = { .seq = e->seq, .undoes = e->undoes, .redoes = e->redoes };
	gboolean ok = TRUE;

	*what = g_strdup(e->what);
	while (ok && (first.undoes != NONE || first.redoes != NONE)) {
		gint64 next = first.undoes != NONE ? first.undoes : first.redoes;

		ok = next < first.seq ? entry_get(db, next, &first, err)
			: err_set(err, ERR_STORE, "entry %" G_GINT64_FORMAT " makes no sense", first.seq);
		if (ok) {
			g_free(*what);
			*what = g_strdup(first.what);
		}
	}
	entry_clear(&first);
	return ok;
}

/* Its hash fits, and its tables are the present ones. */
static gboolean
trusted(struct db *db, const struct entry *e, struct changes_in *in, GError **err)
{
	guint8 sum[SUM_BYTES], hash[SUM_BYTES];
	gboolean good;

	if (e->schema != db->schema)
		return err_set(err, ERR_CONFLICT, "entry %" G_GINT64_FORMAT " (%s) was written before the logbook was"
			       " brought to schema %d, and can't be taken back or repeated any more", e->seq, e->what,
			       db->schema);
	if (!changes_sum(db, in, sum, &good, err))
		return FALSE;
	entry_hash(e, sum, hash);
	return (good && !memcmp(hash, e->hash, SUM_BYTES)) || entry_damaged(e, err);
}

static gboolean
inverse_of(struct db *db, const struct entry *e, struct spool *inverse, GError **err)
{
	struct changes_in in;
	gboolean ok;
	int rc;

	if (!changes_open(db, e->seq, &in, err))
		return FALSE;
	ok = trusted(db, e, &in, err);
	if (ok) {
		rc = sqlite3changeset_invert_strm(changes_input, &in, spool_output, inverse);
		ok = spool_good(inverse, err) && (rc == SQLITE_OK || db_fail(db, rc, err));
	}
	changes_close(&in);
	return ok;
}

static gboolean
write_inverse(struct db *db, const struct entry *e, const struct entry_head *head, struct spool *s, GError **err)
{
	struct entry new = { .at = head->at, .undoes = NONE, .redoes = NONE };
	gboolean ok = TRUE, redo = e->undoes != NONE;
	g_autofree char *what = NULL;

	if (redo)
		new.redoes = e->seq;
	else
		new.undoes = e->seq;
	if (head->what)
		new.what = g_strdup(head->what);
	else if ((ok = original_words(db, e, &what, err)))
		new.what = g_strdup_printf("%s: %s", redo ? "redo" : "undo", what);
	new.who = g_strdup(head->who ? head->who : "");
	new.device = g_strdup(head->device ? head->device : "");
	ok = ok && entry_append(db, &new, s, err);
	entry_clear(&new);
	return ok;
}

/* As for a bulk import: the inverse of one reaches all over the indexes. */
static void
widen_cache(struct db *db, const struct spool *s)
{
	if (spool_size(s) > SPOOL_MEMORY)
		db_exec(db, SQL_CACHE_BULK, NULL);
}

static gboolean
apply_inverse(struct db *db, const struct entry *e, const struct entry_head *head, GError **err)
{
	struct spool *inverse = db_spool(db);
	gboolean ok = inverse_of(db, e, inverse, err);

	widen_cache(db, inverse);
	spool_rewind(inverse);
	ok = ok && (apply_changes(db, spool_input, inverse, err)
		    || err_prefix(err, "\"%s\" can't be %s: ", e->what, e->undoes != NONE ? "repeated" : "undone"))
		&& write_inverse(db, e, head, inverse, err) && db_commit_bare(db, err);
	spool_free(inverse);
	db_exec(db, SQL_CACHE_USUAL, NULL);
	return ok;
}

static gboolean
step_back(struct db *db, gboolean (*find)(struct db *, struct entry *, GError **), const struct entry_head *head,
	  gint64 *seq, GError **err)
{
	struct entry e = { 0 };
	gboolean ok;

	if (!db_begin_bare(db, err))
		return FALSE;
	ok = find(db, &e, err) && apply_inverse(db, &e, head, err);
	if (ok && seq)
		*seq = e.seq;
	db_rollback(db);
	entry_clear(&e);
	return ok;
}

gboolean
journal_undo(struct db *db, const struct entry_head *head, gint64 *seq, GError **err)
{
	return step_back(db, newest_standing, head, seq, err);
}

gboolean
journal_redo(struct db *db, const struct entry_head *head, gint64 *seq, GError **err)
{
	return step_back(db, newest_undo, head, seq, err);
}
