#include "store/migrate.h"

#include "base/err.h"
#include "store/backup.h"
#include "store/cells.h"

#include <glib/gstdio.h>

static const char *
our_step(int i)
{
	/* Append only: the place in this list is the number kept in the file. */
	static const enum sql_id steps[] = { SQL_SCHEMA_1, SQL_SCHEMA_2, SQL_SCHEMA_3, SQL_SCHEMA_4, SQL_SCHEMA_5 };

	G_STATIC_ASSERT(G_N_ELEMENTS(steps) == 5);
	return sql_text[steps[i]];
}

const struct migrations *
migrations_ours(void)
{
	static const struct migrations ours = { 5, our_step };

	return &ours;
}

gboolean
migrate_step(struct db *db, const struct migrations *m, int i, GError **err)
{
	int rc = sqlite3_exec(db->conn, m->sql(i), NULL, NULL, NULL);

	return rc == SQLITE_OK || db_fail(db, rc, err);
}

static gboolean
references_hold(struct db *db, GError **err)
{
	struct cells *c = cells_open(db, SQL_FOREIGN_KEY_CHECK);
	gboolean broken = cells_next(c);
	g_autofree char *table = broken ? g_strdup(cells_text(c, 0)) : NULL;

	if (!cells_close(c, err))
		return FALSE;
	return !broken || err_set(err, ERR_STORE, "%s: rows of %s refer to what is not there", db->name, table);
}

static gboolean
step_whole(struct db *db, const struct migrations *m, int i, GError **err)
{
	gint64 version;

	if (!db_begin_bare(db, err))
		return FALSE;
	if (migrate_step(db, m, i, err) && references_hold(db, err) && db_ask(db, SQL_USER_VERSION, &version, err)
	    && (version == i + 1 || err_set(err, ERR_STORE, "step %d sets schema %d", i + 1, (int)version))
	    && db_commit_bare(db, err)) {
		db->schema = i + 1;
		return TRUE;
	}
	db_rollback(db);
	return FALSE;
}

/* boat.db.schema-1, or boat.db.schema-1.2 and so on when that is taken. */
static gboolean
copy_aside(struct db *db, GError **err)
{
	g_autofree char *copy = g_strdup_printf("%s.schema-%d", db->path, db->schema);

	for (int i = 2; g_file_test(copy, G_FILE_TEST_EXISTS); i++) {
		g_free(copy);
		copy = g_strdup_printf("%s.schema-%d.%d", db->path, db->schema, i);
	}
	return db_backup(db, copy, err);
}

gboolean
migrate(struct db *db, const struct migrations *m, GError **err)
{
	gboolean ok = TRUE;

	if (db->schema >= m->n)
		return TRUE;
	if (db->schema > 0 && !copy_aside(db, err))
		return FALSE;
	/* Off while tables are made anew under the same name; it can't be changed within a transaction. */
	if (!db_exec(db, SQL_FOREIGN_KEYS_OFF, err))
		return FALSE;
	while (ok && db->schema < m->n)
		ok = step_whole(db, m, db->schema, err);
	return db_exec(db, SQL_FOREIGN_KEYS_ON, ok ? err : NULL) && ok;
}
