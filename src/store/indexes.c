#include "store/indexes.h"

#include "store/cells.h"

static gboolean
run_text(struct db *db, const char *sql, GError **err)
{
	int rc = sqlite3_exec(db->conn, sql, NULL, NULL, NULL);

	return rc == SQLITE_OK || db_fail(db, rc, err);
}

static gboolean
run_texts(struct db *db, const GPtrArray *texts, GError **err)
{
	gboolean ok = TRUE;

	for (guint i = 0; ok && i < texts->len; i++)
		ok = run_text(db, texts->pdata[i], err);
	return ok;
}

/* Names and texts are the schema's own, which was compared with ours when the file was opened. */
GPtrArray *
indexes_drop(struct db *db, const char *table, GError **err)
{
	struct cells *c = cells_open(db, SQL_INDEXES);
	g_autoptr(GPtrArray) drops = g_ptr_array_new_with_free_func(g_free);
	g_autoptr(GPtrArray) texts = g_ptr_array_new_with_free_func(g_free);

	while (cells_next(c))
		if (!table || !g_strcmp0(cells_text(c, 1), table)) {
			g_ptr_array_add(drops, g_strdup_printf("DROP INDEX %s", cells_text(c, 0)));
			g_ptr_array_add(texts, g_strdup(cells_text(c, 2)));
		}
	if (!cells_close(c, err) || !run_texts(db, drops, err))
		return NULL;
	return g_steal_pointer(&texts);
}

gboolean
indexes_make(struct db *db, const GPtrArray *texts, GError **err)
{
	return run_texts(db, texts, err);
}
