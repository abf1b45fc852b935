/* What follows from imported rows once all are in. */
#include "logbook/import.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "engine/plausible.h"
#include "logbook/service_span.h"
#include "logbook/stores_check.h"

static void
row_error(struct importing *in, gint64 line, const char *text)
{
	if (in->said->errors->len < 20)
		g_ptr_array_add(in->said->errors, line ? g_strdup_printf("%s:%d: %s", in->form->path, (int)line, text)
						       : g_strdup_printf("%s: %s", in->form->path, text));
	in->said->n_errors++;
}

/* What is wrong with a reading of the file: it goes backwards, or needs more hours than there are.  NULL: nothing. */
static char *
question_reading(const struct meter_row *r, gint64 shown, gint64 last)
{
	gint64 days = MAX(r->date - last, 1);
	const struct use use = { .expected = MAX((double)days / 10, 2), .phi = 4, .c2 = 0.3 };
	char h[HOURS_TEXT], w[HOURS_TEXT], typed[HOURS_TEXT], guess[3][16];
	g_autofree char *meant = NULL;

	if (import_can_be(r->reading, shown, days))
		return NULL;
	if (reading_guesses(&use, (double)shown / 3600, days, hours_exact(r->reading, typed), guess))
		meant = g_strdup_printf(": is it %s?", guess[0]);
	return g_strdup_printf(r->reading < shown ? "the reading %s h is less than %s h before it%s"
						  : "the reading %s h would be more than 24 h a day since %s h%s",
			       hours_words(r->reading, h), hours_words(shown, w), meant ? meant : "");
}

static gint
compare_lines(gconstpointer x, gconstpointer y)
{
	const struct import_line *a = x, *b = y;

	return (a->outing > b->outing) - (a->outing < b->outing);
}

/* The line that an outing was read from; 0: none of this file. */
static gint64
line_of(const struct importing *in, gint64 outing)
{
	const struct import_line wanted = { outing, 0 };
	guint at;

	if (!g_array_binary_search(in->lines, &wanted, compare_lines, &at))
		return 0;
	return ((const struct import_line *)(const void *)in->lines->data)[at].line;
}

static void
question_rows(struct importing *in, const struct meter *m, const GArray *rows)
{
	const struct meter_row *r = (const void *)rows->data;
	gint64 shown = m->start, last = m->fitted;

	for (guint i = 0; i < rows->len; i++) {
		gint64 line = line_of(in, r[i].id);
		g_autofree char *text = line ? question_reading(&r[i], shown, last) : NULL;

		if (text)
			row_error(in, line, text);
		shown = r[i].reading == NONE ? shown + r[i].hours : r[i].reading;
		last = r[i].date;
	}
}

/* Whether every row has the hours that follow from the readings already. */
static gboolean
settled(const struct meter *m, const GArray *rows)
{
	g_autoptr(GArray) derived = g_array_copy((GArray *)(guintptr)rows);
	const struct meter_row *was = (const void *)rows->data;
	struct meter_row *r = (void *)derived->data;

	meter_derive(r, (int)derived->len, m->start);
	for (guint i = 0; i < rows->len; i++)
		if (r[i].hours != was[i].hours)
			return FALSE;
	return TRUE;
}

static gboolean
settle_meter(struct importing *in, gint64 id, GError **err)
{
	struct meter m;
	g_autoptr(GArray) rows = NULL;
	gboolean ok;

	record_init(RECORD_METER, &m);
	ok = row_get(in->b->db, RECORD_METER, id, &m, err);
	rows = ok ? book_meter_rows(in->b, id, err) : NULL;
	if (rows && !in->form->sure)
		question_rows(in, &m, rows);
	ok = rows && (settled(&m, rows) || book_meter_settle(in->b, &m, TRUE, err));
	record_clear(RECORD_METER, &m);
	return ok;
}

static gboolean
settle_services(struct importing *in, GError **err)
{
	GArray *all = in->form->what == RECORD_SERVICE
			    ? book_gather(in->b, RECORD_SERVICE, SQL_SERVICES_UNPLACED, NONE, err)
			    : NULL;
	gboolean ok = in->form->what != RECORD_SERVICE || all != NULL;

	for (guint i = 0; all && ok && i < all->len; i++) {
		struct service *s = &((struct service *)(void *)all->data)[i];
		g_autoptr(GError) doubt = NULL;
		char d[DAY_TEXT];
		gint64 unlogged;

		if (book_place_service(in->b, s, in->form->sure, &unlogged, &doubt)) {
			ok = book_put(in->b, RECORD_SERVICE, s, err);
		} else if (doubt->code == ERR_DOUBT) {
			g_autofree char *text =
				g_strdup_printf("service of %s: %s --yes takes it as it is", day_iso(s->date, d), doubt->message);

			row_error(in, 0, text);
		} else {
			g_propagate_error(err, g_steal_pointer(&doubt));
			ok = FALSE;
		}
	}
	if (all)
		g_array_unref(all);
	return ok;
}

/* Stays and seasons of one boat may not overlap. */
static gboolean
check_overlaps(struct importing *in, GError **err)
{
	enum record r = in->form->what;
	g_autoptr(GArray) all = NULL;

	if (r != RECORD_STAY && r != RECORD_SEASON)
		return TRUE;
	all = book_gather(in->b, r, sql_all(r), NONE, err);
	for (guint i = 1; all && i < all->len; i++) {
		const struct stay *s = &((const struct stay *)(const void *)all->data)[i];
		const struct season *y = &((const struct season *)(const void *)all->data)[i];
		char d[DAY_TEXT];
		g_autofree char *text = NULL;

		if (r == RECORD_STAY && s[-1].boat == s->boat && (s[-1].until == NONE || s[-1].until > s->date))
			text = g_strdup_printf("the stay from %s begins before the one before it ends",
					       day_iso(s->date, d));
		if (r == RECORD_SEASON && y[-1].boat == y->boat
		    && (y[-1].haul_out == NONE || y[-1].haul_out > y->launch))
			text = g_strdup_printf("the season launched on %s begins before the one before it ends",
					       day_iso(y->launch, d));
		if (text)
			row_error(in, 0, text);
	}
	return all != NULL;
}

static void
stores_error(void *user, const char *text)
{
	row_error(user, 0, text);
}

static gboolean
check_stores(struct importing *in, GError **err)
{
	enum record r = in->form->what;

	return (r != RECORD_NUMBER && r != RECORD_LOT && r != RECORD_TAKEN) || stores_check(in->b, stores_error, in, err);
}

/* Meters that could not be followed. */
static gboolean
settle_meters(struct importing *in, GError **err)
{
	GHashTableIter i;
	gpointer value;
	gboolean ok = TRUE;

	g_array_sort(in->lines, compare_lines);
	g_hash_table_iter_init(&i, in->touched);
	while (ok && g_hash_table_iter_next(&i, NULL, &value)) {
		const struct import_meter *t = value;

		ok = t->shown != NONE || settle_meter(in, t->id, err);
	}
	return ok;
}

gboolean
import_settle(struct importing *in, GError **err)
{
	if (in->form->what == RECORD_OUTING && !settle_meters(in, err))
		return FALSE;
	return settle_services(in, err) && check_overlaps(in, err) && check_stores(in, err) && in->said->n_errors == 0;
}
