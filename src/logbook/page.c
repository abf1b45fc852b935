#include "logbook/page.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/inside.h"
#include "logbook/outing.h"

gint64
book_version(struct book *b)
{
	return db_data_version(b->db);
}

void
book_clock(struct book *b, gint64 now, gint64 today)
{
	b->who.now = now;
	b->who.today = today;
}

gboolean
book_hold(struct book *b, GError **err)
{
	return db_hold(b->db, err);
}

void
book_release(struct book *b)
{
	db_release(b->db);
}

static GArray *
rows_of(struct book *b, enum sql_id sql, const struct outings_page *page, int n, GError **err)
{
	struct cells *c = cells_open(b->db, sql);

	cells_bind(c, 1, page->boat);
	cells_bind(c, 2, page->date == NONE ? DAY_LAST : page->date);
	cells_bind(c, 3, page->date == NONE ? G_MAXINT64 : page->id);
	cells_bind(c, 4, n);
	return book_rows(c, RECORD_OUTING, err);
}

static void
turn_round(GArray *rows)
{
	struct outing *o = (void *)rows->data;

	for (guint i = 0, k = rows->len; i + 1 < k; i++) {
		struct outing swap = o[i];

		o[i] = o[--k];
		o[k] = swap;
	}
}

GArray *
book_outings_page(struct book *b, const struct outings_page *page, GError **err)
{
	GArray *rows = rows_of(b, SQL_OUTINGS_NEWER, page, page->newer, err), *older;

	if (!rows)
		return NULL;
	turn_round(rows);
	older = rows_of(b, SQL_OUTINGS_OLDER, page, page->older, err);
	if (!older) {
		g_array_unref(rows);
		return NULL;
	}
	g_array_append_vals(rows, older->data, older->len);
	g_array_set_clear_func(older, NULL);	/* its records are the page's now */
	g_array_unref(older);
	return rows;
}

gboolean
book_record(struct book *b, enum record r, gint64 id, void *record, GError **err)
{
	record_init(r, record);
	return row_get(b->db, r, id, record, err);
}

GArray *
book_hours_by_month(struct book *b, gint64 boat, GError **err)
{
	GArray *months = g_array_new(FALSE, FALSE, sizeof(struct month_sum));
	struct cells *c = cells_open(b->db, SQL_OUTINGS_BY_DAY);
	struct month_sum *last = NULL;
	int year, month, mday;

	cells_bind(c, 1, boat);
	while (cells_next(c)) {
		day_to_ymd(cells_int(c, 0), &year, &month, &mday);
		if (!last || last->year != year || last->month != month) {
			g_array_append_val(months, ((struct month_sum) { year, month, 0, 0 }));
			last = &((struct month_sum *)(void *)months->data)[months->len - 1];
		}
		last->seconds += cells_int(c, 1);
		last->outings += (int)cells_int(c, 2);
	}
	if (cells_close(c, err))
		return months;
	g_array_unref(months);
	return NULL;
}

/* The day of a meter's last reading up to a day; else that on which it was fitted. */
static gint64
last_read(struct book *b, const struct meter *m, gint64 day, gint64 without)
{
	struct cells *c = cells_open(b->db, SQL_METER_LAST);
	gint64 date;

	cells_bind(c, 1, m->id);
	cells_bind(c, 2, day);
	cells_bind(c, 3, without);
	date = book_key_found(c);
	return date == NONE ? m->fitted : date;
}

gboolean
book_meter_before(struct book *b, const struct engine *e, gint64 day, gint64 outing, gint64 *reading, GError **err)
{
	gint64 without = outing == NONE ? 0 : outing;	/* no key is 0 */
	struct meter m;
	struct cells *c;

	*reading = NONE;
	if (!book_meter_on(b, e->id, day, &m, err))
		return FALSE;
	if (m.id == NONE)
		return TRUE;
	c = cells_open(b->db, SQL_METER_SINCE);
	cells_bind(c, 1, m.id);
	cells_bind(c, 2, last_read(b, &m, day, without));
	cells_bind(c, 3, day);
	cells_bind(c, 4, without);
	*reading = m.start;
	while (cells_next(c))
		*reading = cells_int(c, 1) == NONE ? *reading + cells_int(c, 0) : cells_int(c, 1);
	record_clear(RECORD_METER, &m);
	return cells_close(c, err);
}

gboolean
book_meter_shows(struct book *b, const struct engine *e, gint64 day, gint64 *reading, GError **err)
{
	return book_meter_before(b, e, day, NONE, reading, err);
}
