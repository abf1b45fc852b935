#include "store/rows.h"

#include "base/err.h"
#include "store/bind.h"
#include "store/inside.h"

#define STATEMENTS(R, of_boat, refers) \
	[RECORD_##R] = { SQL_ADD_##R, SQL_PUT_##R, SQL_GET_##R, SQL_DROP_##R, SQL_ALL_##R, SQL_WALK_##R, of_boat, \
			 refers }

struct statements {
	enum sql_id add, put, get, drop, all, walk, of_boat, refers;
};

static const struct statements *
statements_of(enum record r)
{
	static const struct statements of[RECORD_COUNT] = {
		STATEMENTS(BOAT, SQL_OF_BOAT_BOAT, SQL_REFERS_TO_BOAT),
		STATEMENTS(ENGINE, SQL_OF_BOAT_ENGINE, SQL_REFERS_TO_ENGINE),
		STATEMENTS(METER, SQL_OF_BOAT_METER, SQL_REFERS_TO_METER),
		STATEMENTS(FITTING, SQL_OF_BOAT_FITTING, SQL_REFERS_TO_FITTING),
		STATEMENTS(PART, SQL_OF_BOAT_PART, SQL_COUNT),
		STATEMENTS(STAY, SQL_OF_BOAT_STAY, SQL_COUNT),
		STATEMENTS(SEASON, SQL_OF_BOAT_SEASON, SQL_COUNT),
		STATEMENTS(OUTING, SQL_OF_BOAT_OUTING, SQL_REFERS_TO_OUTING),
		STATEMENTS(HAPPENING, SQL_OF_BOAT_HAPPENING, SQL_REFERS_TO_HAPPENING),
		STATEMENTS(TASK, SQL_OF_BOAT_TASK, SQL_REFERS_TO_TASK),
		STATEMENTS(LIMIT, SQL_OF_BOAT_LIMIT, SQL_COUNT),
		STATEMENTS(SERVICE, SQL_OF_BOAT_SERVICE, SQL_REFERS_TO_SERVICE),
		STATEMENTS(MEASUREMENT, SQL_OF_BOAT_MEASUREMENT, SQL_REFERS_TO_MEASUREMENT),
		STATEMENTS(BOUND, SQL_OF_BOAT_BOUND, SQL_COUNT),
		STATEMENTS(RATE, SQL_COUNT, SQL_COUNT),
		STATEMENTS(PLACE, SQL_COUNT, SQL_REFERS_TO_PLACE),
		STATEMENTS(CLIMATE, SQL_COUNT, SQL_COUNT),
		STATEMENTS(FINDING, SQL_OF_BOAT_FINDING, SQL_REFERS_TO_FINDING),
		STATEMENTS(WAIVER, SQL_OF_BOAT_WAIVER, SQL_COUNT),
		STATEMENTS(SKIP, SQL_OF_BOAT_SKIP, SQL_COUNT),
		STATEMENTS(PHOTO, SQL_OF_BOAT_PHOTO, SQL_COUNT),
		STATEMENTS(HEEDED, SQL_OF_BOAT_HEEDED, SQL_COUNT),
		STATEMENTS(SHIPPED, SQL_OF_BOAT_SHIPPED, SQL_COUNT),
		STATEMENTS(FIGURE, SQL_OF_BOAT_FIGURE, SQL_COUNT),
		STATEMENTS(JOB, SQL_OF_BOAT_JOB, SQL_REFERS_TO_JOB),
		STATEMENTS(AIM, SQL_OF_BOAT_AIM, SQL_COUNT),
		STATEMENTS(STEP, SQL_OF_BOAT_STEP, SQL_COUNT),
		STATEMENTS(REMOVAL, SQL_OF_BOAT_REMOVAL, SQL_REFERS_TO_REMOVAL),
		STATEMENTS(SHEET, SQL_OF_BOAT_SHEET, SQL_REFERS_TO_SHEET),
		STATEMENTS(SHEETLINE, SQL_OF_BOAT_SHEETLINE, SQL_COUNT),
		STATEMENTS(ITEM, SQL_COUNT, SQL_REFERS_TO_ITEM),
		STATEMENTS(NUMBER, SQL_COUNT, SQL_REFERS_TO_NUMBER),
		STATEMENTS(LOT, SQL_COUNT, SQL_REFERS_TO_LOT),
		STATEMENTS(TAKEN, SQL_COUNT, SQL_COUNT),
		STATEMENTS(NEED, SQL_OF_BOAT_NEED, SQL_COUNT),
	};

	return &of[r];
}

enum sql_id
sql_all(enum record r)
{
	return statements_of(r)->all;
}

enum sql_id
sql_walk(enum record r)
{
	return statements_of(r)->walk;
}

enum sql_id
sql_of_boat(enum record r)
{
	return statements_of(r)->of_boat;
}

enum sql_id
sql_add(enum record r)
{
	return statements_of(r)->add;
}

enum sql_id
sql_get(enum record r)
{
	return statements_of(r)->get;
}

gboolean
row_put(struct db *db, enum record r, const void *record, GError **err)
{
	struct cells *c = cells_open(db, statements_of(r)->put);
	gboolean ok;

	g_assert(db->writing);
	ok = run_record(c, r, record, err);
	return cells_close(c, err && *err ? NULL : err) && ok;
}

static gboolean
not_found(enum record r, GError **err)
{
	return err_set(err, ERR_NOT_FOUND, "there is no such %s in the logbook", record_type(r)->name);
}

gboolean
row_get(struct db *db, enum record r, gint64 id, void *record, GError **err)
{
	struct cells *c = cells_open(db, statements_of(r)->get);
	gboolean found;

	cells_bind(c, 1, id);
	found = cells_next_record(c, r, record);
	if (!cells_close(c, err))
		return FALSE;
	return found || not_found(r, err);
}

/* "12 outings and 1 services"; NULL when nothing does. */
static char *
what_refers(struct db *db, enum record r, gint64 id)
{
	enum sql_id sql = statements_of(r)->refers;
	g_autoptr(GString) words = g_string_new(NULL);
	struct cells *c;

	if (sql == SQL_COUNT)
		return NULL;
	c = cells_open(db, sql);
	cells_bind(c, 1, id);
	while (cells_next(c))
		if (cells_int(c, 1) > 0)
			g_string_append_printf(words, "%s%s (%" G_GINT64_FORMAT ")", words->len ? ", " : "",
					       cells_text(c, 0), cells_int(c, 1));
	cells_close(c, NULL);
	return words->len ? g_strdup(words->str) : NULL;
}

gboolean
row_drop(struct db *db, enum record r, gint64 id, GError **err)
{
	g_autofree char *refers = what_refers(db, r, id);
	struct cells *c;

	g_assert(db->writing);
	if (refers)
		return err_set(err, ERR_CONFLICT, "this %s can't be removed while it has: %s", record_type(r)->name,
			       refers);
	c = cells_open(db, statements_of(r)->drop);
	cells_bind(c, 1, id);
	cells_next(c);
	if (!cells_close(c, err))
		return FALSE;
	return sqlite3_changes(db->conn) > 0 || not_found(r, err);
}

gint64
row_new_key(struct db *db)
{
	enum { ENTRY_BITS = 24, OWN_BITS = 39 };
	const gint64 own = ((gint64)1 << OWN_BITS) - 1;
	gint64 seq = 0, start;

	if (!db->next_key) {
		db_ask(db, SQL_ENTRIES, &seq, NULL);
		sqlite3_randomness(sizeof start, &start);
		/* The upper half of the 39 bits stays free to count on in. */
		db->next_key = ((seq + 1) & (((gint64)1 << ENTRY_BITS) - 1)) << OWN_BITS | (start & own >> 1) | 1;
	}
	return db->next_key++;
}
