#include "logbook/inside.h"

#include "base/date.h"
#include "base/err.h"
#include "base/text.h"
#include "exchange/cell.h"
#include "logbook/caution.h"
#include "logbook/knowledge.h"
#include "logbook/readings.h"
#include "store/backup.h"
#include "store/verify.h"

#include <stdarg.h>
#include <string.h>

static struct book *
book_of(struct db *db, const struct book_who *who)
{
	struct book *b;

	if (!db)
		return NULL;
	b = g_new0(struct book, 1);
	b->db = db;
	b->who = *who;
	return b;
}

struct book *
book_open(const char *path, enum book_mode mode, const struct book_who *who, GError **err)
{
	struct book *b;

	if (!g_file_test(path, G_FILE_TEST_EXISTS)) {
		err_set(err, ERR_STORE, "there is no logbook %s: splitpin new makes one, --file names another", path);
		return NULL;
	}
	b = book_of(db_open(path, mode == BOOK_WRITE ? DB_WRITE : DB_READ, err), who);
	/* One state for the whole answer, and one lock instead of one a statement. */
	if (b && mode == BOOK_READ && !db_hold(b->db, err)) {
		book_close(b);
		return NULL;
	}
	return b;
}

struct book *
book_create(const char *path, const struct book_who *who, GError **err)
{
	return book_of(db_create(path, err), who);
}

void
book_close(struct book *b)
{
	if (!b)
		return;
	db_close(b->db);
	g_free(b->name);
	readings_free(b->readings);
	cautions_free(b->cautions);
	knowledge_free(b->knowledge);
	g_free(b);
}

gint64
book_today(const struct book *b)
{
	return b->who.today;
}

char *
book_key_text(gint64 key)
{
	char buf[KEY_TEXT];

	return g_strdup(key_letters(key, buf));
}

gboolean
book_key(const char *text, gint64 *key)
{
	return key_from_letters(text, key);
}

gboolean
book_begin(struct book *b, GError **err)
{
	return db_begin(b->db, err);
}

gboolean
book_end(struct book *b, gboolean ok, GError **err, const char *format, ...)
{
	struct entry_head head = { NULL, b->who.name, b->who.device, b->who.now };
	g_autofree char *what = NULL;
	va_list ap;

	if (!ok) {
		db_rollback(b->db);
		return FALSE;
	}
	va_start(ap, format);
	what = g_strdup_vprintf(format, ap);
	va_end(ap);
	head.what = what;
	return db_commit(b->db, &head, NULL, err);
}

gboolean
book_put(struct book *b, enum record r, void *record, GError **err)
{
	const struct record_type *t = record_type(r);
	gint64 *id = field_int(&t->field[0], record);

	for (int i = 0; i < t->n_fields; i++) {
		const char *text = t->field[i].kind == FIELD_TEXT ? *field_text(&t->field[i], record) : NULL;

		if (t->field[i].required && text && !text[strspn(text, " \t\n")])
			return err_set(err, ERR_INPUT, "%s: it can't be empty", t->field[i].name);
		if (text && !g_utf8_validate(text, -1, NULL))
			return err_set(err, ERR_INPUT, "%s: this is no UTF-8 text", t->field[i].name);
	}
	if (*id == NONE)
		*id = row_new_key(b->db);
	return row_put(b->db, r, record, err);
}

/* A GArray clears its elements by a function of the element alone. */
#define CLEARER(name, r) \
	static void clear_##name(gpointer p) { record_clear(r, p); }
CLEARER(boat, RECORD_BOAT)
CLEARER(engine, RECORD_ENGINE)
CLEARER(meter, RECORD_METER)
CLEARER(fitting, RECORD_FITTING)
CLEARER(part, RECORD_PART)
CLEARER(stay, RECORD_STAY)
CLEARER(season, RECORD_SEASON)
CLEARER(outing, RECORD_OUTING)
CLEARER(happening, RECORD_HAPPENING)
CLEARER(task, RECORD_TASK)
CLEARER(limit, RECORD_LIMIT)
CLEARER(service, RECORD_SERVICE)
CLEARER(measurement, RECORD_MEASUREMENT)
CLEARER(bound, RECORD_BOUND)
CLEARER(rate, RECORD_RATE)
CLEARER(place, RECORD_PLACE)
CLEARER(climate, RECORD_CLIMATE)
CLEARER(finding, RECORD_FINDING)
CLEARER(waiver, RECORD_WAIVER)
CLEARER(skip, RECORD_SKIP)
CLEARER(photo, RECORD_PHOTO)
CLEARER(heeded, RECORD_HEEDED)
CLEARER(shipped, RECORD_SHIPPED)
CLEARER(figure, RECORD_FIGURE)
CLEARER(job, RECORD_JOB)
CLEARER(aim, RECORD_AIM)
CLEARER(step, RECORD_STEP)
CLEARER(removal, RECORD_REMOVAL)
CLEARER(sheet, RECORD_SHEET)
CLEARER(sheetline, RECORD_SHEETLINE)
CLEARER(item, RECORD_ITEM)
CLEARER(number, RECORD_NUMBER)
CLEARER(lot, RECORD_LOT)
CLEARER(taken, RECORD_TAKEN)
CLEARER(need, RECORD_NEED)

GArray *
book_rows(struct cells *c, enum record r, GError **err)
{
	static const GDestroyNotify clear[RECORD_COUNT] = {
		[RECORD_BOAT] = clear_boat, [RECORD_ENGINE] = clear_engine, [RECORD_METER] = clear_meter,
		[RECORD_FITTING] = clear_fitting, [RECORD_PART] = clear_part, [RECORD_STAY] = clear_stay,
		[RECORD_SEASON] = clear_season, [RECORD_OUTING] = clear_outing, [RECORD_HAPPENING] = clear_happening,
		[RECORD_TASK] = clear_task, [RECORD_LIMIT] = clear_limit, [RECORD_SERVICE] = clear_service,
		[RECORD_MEASUREMENT] = clear_measurement, [RECORD_BOUND] = clear_bound, [RECORD_RATE] = clear_rate,
		[RECORD_PLACE] = clear_place, [RECORD_CLIMATE] = clear_climate, [RECORD_FINDING] = clear_finding,
		[RECORD_WAIVER] = clear_waiver, [RECORD_SKIP] = clear_skip, [RECORD_PHOTO] = clear_photo,
		[RECORD_HEEDED] = clear_heeded, [RECORD_SHIPPED] = clear_shipped, [RECORD_FIGURE] = clear_figure,
		[RECORD_JOB] = clear_job, [RECORD_AIM] = clear_aim, [RECORD_STEP] = clear_step, [RECORD_REMOVAL] = clear_removal,
		[RECORD_SHEET] = clear_sheet, [RECORD_SHEETLINE] = clear_sheetline,
		[RECORD_ITEM] = clear_item, [RECORD_NUMBER] = clear_number, [RECORD_LOT] = clear_lot, [RECORD_TAKEN] = clear_taken,
		[RECORD_NEED] = clear_need,
	};
	gsize size = record_type(r)->size;
	GArray *all = g_array_new(FALSE, FALSE, (guint)size);
	g_autofree void *record = g_malloc(size);

	g_array_set_clear_func(all, clear[r]);
	record_init(r, record);
	while (cells_next_record(c, r, record)) {
		g_array_append_vals(all, record, 1);
		record_init(r, record);
	}
	record_clear(r, record);
	if (cells_close(c, err))
		return all;
	g_array_unref(all);
	return NULL;
}

GArray *
book_gather(struct book *b, enum record r, enum sql_id sql, gint64 key, GError **err)
{
	struct cells *c = cells_open(b->db, sql);

	if (key != NONE)
		cells_bind(c, 1, key);
	return book_rows(c, r, err);
}

GArray *
book_records(struct book *b, enum record r, gint64 boat, GError **err)
{
	enum sql_id sql = sql_of_boat(r);

	return sql == SQL_COUNT ? book_gather(b, r, sql_all(r), NONE, err) : book_gather(b, r, sql, boat, err);
}

GArray *
book_boats(struct book *b, GError **err)
{
	return book_gather(b, RECORD_BOAT, sql_all(RECORD_BOAT), NONE, err);
}

static gboolean
only_boat(struct book *b, struct boat *boat, GError **err)
{
	g_autoptr(GArray) all = book_boats(b, err);
	g_autoptr(GString) names = NULL;
	struct boat *list;

	if (!all)
		return FALSE;
	if (!all->len)
		return err_set(err, ERR_NOT_FOUND, "this logbook holds no boat: splitpin boat NAME adds one");
	list = (void *)all->data;
	if (all->len > 1) {
		names = g_string_new(list[0].name);
		for (guint i = 1; i < all->len && i < 8; i++)
			g_string_append_printf(names, ", %s", list[i].name);
		return err_set(err, ERR_INPUT, "which boat? --boat %s%s", names->str, all->len > 8 ? ", ..." : "");
	}
	*boat = list[0];
	record_init(RECORD_BOAT, &list[0]); /* its texts are *boat's now */
	return TRUE;
}

gint64
book_key_found(struct cells *c)
{
	gint64 key = cells_next(c) ? cells_int(c, 0) : NONE;

	return cells_close(c, NULL) ? key : NONE;
}

gint64
book_key_of(struct book *b, enum sql_id sql, gint64 boat, const char *name)
{
	struct cells *c = cells_open(b->db, sql);

	cells_bind(c, 1, boat);
	cells_bind_text(c, 2, name);
	return book_key_found(c);
}

gboolean
book_built(struct book *b, gint64 boat, gint64 *year, GError **err)
{
	struct boat record;
	gboolean ok;

	record_init(RECORD_BOAT, &record);
	ok = row_get(b->db, RECORD_BOAT, boat, &record, err);
	*year = record.built;
	record_clear(RECORD_BOAT, &record);
	return ok;
}

gboolean
built_by(gint64 year, gint64 day, GError **err)
{
	char d[DAY_TEXT];

	return year == NONE || day >= day_from_ymd((int)year, 1, 1)
	    || err_set(err, ERR_INPUT, "%s is before the boat was built, in %d", day_iso(day, d), (int)year);
}

gboolean
book_boat(struct book *b, const char *name, struct boat *boat, GError **err)
{
	struct cells *c;
	gboolean found;

	record_init(RECORD_BOAT, boat);
	if (!name)
		return only_boat(b, boat, err);
	c = cells_open(b->db, SQL_BOAT_BY_NAME);
	cells_bind_text(c, 1, name);
	found = cells_next_record(c, RECORD_BOAT, boat);
	if (!cells_close(c, err))
		return FALSE;
	return found
	    || err_set(err, ERR_NOT_FOUND, "this logbook holds no boat \"%s\": splitpin boat lists them", name);
}

gboolean
book_verify(struct book *b, void (*say)(void *user, const char *line), void *user, int *problems, GError **err)
{
	struct verify_watch watch = { say, NULL, user };
	gint64 n = 0;
	gboolean ok;

	db_release(b->db);
	ok = verify(b->db, &watch, &n, err);
	*problems = (int)MIN(n, G_MAXINT);
	return ok;
}

gboolean
book_backup(struct book *b, const char *path, GError **err)
{
	db_release(b->db);
	return db_backup(b->db, path, err);
}
