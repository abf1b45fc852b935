#include "store/apply.h"

#include "base/err.h"
#include "base/key.h"

struct applying {
	GError *conflict;
	gboolean strange;	/* it names a table that is no record's */
};

enum record
record_of_table(const char *table)
{
	int r;

	for (r = 0; r < RECORD_COUNT; r++)
		if (!g_strcmp0(table, record_type((enum record)r)->name))
			break;
	return (enum record)r;
}

static int
wanted(void *context, const char *table)
{
	struct applying *a = context;
	gboolean ours = record_of_table(table) != RECORD_COUNT;

	a->strange |= !ours;
	return ours;
}

static gint64
key_of(sqlite3_changeset_iter *i, int op)
{
	sqlite3_value *key = NULL;

	if (op == SQLITE_INSERT)
		sqlite3changeset_new(i, 0, &key);
	else
		sqlite3changeset_old(i, 0, &key);
	return key ? sqlite3_value_int64(key) : NONE;
}

static const char *
conflict_words(int why)
{
	switch (why) {
	case SQLITE_CHANGESET_DATA:
		return "was changed since";
	case SQLITE_CHANGESET_NOTFOUND:
		return "is no longer there";
	case SQLITE_CHANGESET_CONFLICT:
		return "is there already";
	default:
		return "breaks a rule of the logbook";
	}
}

static int
on_conflict(void *context, int why, sqlite3_changeset_iter *i)
{
	struct applying *a = context;
	const char *table;
	int columns, op, indirect;
	char key[KEY_TEXT];

	if (a->conflict)
		return SQLITE_CHANGESET_ABORT;
	if (why == SQLITE_CHANGESET_FOREIGN_KEY) {
		err_set(&a->conflict, ERR_CONFLICT, "something else in the logbook refers to what would be removed");
		return SQLITE_CHANGESET_ABORT;
	}
	sqlite3changeset_op(i, &table, &columns, &op, &indirect);
	err_set(&a->conflict, ERR_CONFLICT, "the %s with the key %s %s", table,
		key_letters(key_of(i, op), key), conflict_words(why));
	return SQLITE_CHANGESET_ABORT;
}

gboolean
apply_changes(struct db *db, int (*input)(void *, void *, int *), void *context, GError **err)
{
	struct applying a = { NULL, FALSE };
	int rc = sqlite3changeset_apply_strm(db->conn, input, context, wanted, on_conflict, &a);

	if (a.conflict) {
		g_propagate_error(err, a.conflict);
		return FALSE;
	}
	if (a.strange)
		return err_set(err, ERR_STORE, "the journal of %s names a table that no logbook has", db->name);
	return rc == SQLITE_OK || db_fail(db, rc, err);
}
