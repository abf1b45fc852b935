#include "logbook/transfer.h"

#include "base/err.h"
#include "exchange/record_csv.h"
#include "logbook/handover.h"
#include "logbook/inside.h"
#include "logbook/out_file.h"

#include <stdlib.h>

/* Names of what rows refer to, looked up once each. */
struct naming {
	struct book *b;
	enum record of; /* what is written */
	struct handover *handover; /* NULL: names and all */
	gboolean several; /* boats: a task's or fitting's name alone does not tell whose it is */
	GHashTable *name[RECORD_COUNT];
};

static const char *
name_of(void *user, enum record ref, gint64 key)
{
	struct naming *n = user;
	const char *name;

	if (ref != RECORD_BOAT && ref != RECORD_PLACE && n->several && !record_field(n->of, "boat"))
		return NULL;
	if (!n->name[ref])
		n->name[ref] = g_hash_table_new_full(g_int64_hash, g_int64_equal, g_free, g_free);
	name = g_hash_table_lookup(n->name[ref], &key);
	if (!name && (name = book_name_of(n->b, ref, key))) {
		char *kept = g_strdup(n->handover && ref == RECORD_PLACE ? handover_place(n->handover, name) : name);

		g_hash_table_insert(n->name[ref], g_memdup2(&key, sizeof key), kept);
		name = kept;
	}
	return name;
}

static gboolean
write_records(struct book *b, enum record r, struct naming *names, struct csv_out *csv, gint64 *rows, GError **err)
{
	g_autofree void *record = g_malloc(record_type(r)->size);
	struct record_out *out = record_out_new(r, csv, name_of, names);
	struct cells *c = cells_open(b->db, sql_all(r));
	gboolean ok = TRUE;

	*rows = 0;
	record_init(r, record);
	while (ok && cells_next_record(c, r, record)) {
		if (names->handover)
			handover_strip(names->handover, r, record);
		ok = record_out_row(out, record);
		++*rows;
	}
	record_clear(r, record);
	record_out_free(out);
	return cells_close(c, err);
}

static int
compare_outings(const void *x, const void *y)
{
	const struct outing *a = x, *b = y;

	return (a->id > b->id) - (a->id < b->id);
}

/* The outings of one boat's day, in the order of entry. */
static gboolean
write_day(struct record_out *out, struct outing *day, guint n)
{
	gboolean ok = TRUE;

	if (n > 1)
		qsort(day, n, sizeof *day, compare_outings);
	for (guint i = 0; ok && i < n; i++)
		ok = record_out_row(out, &day[i]);
	return ok;
}

static void
clear_outing(gpointer outing)
{
	record_clear(RECORD_OUTING, outing);
}

static gboolean
write_outings(struct book *b, struct naming *names, struct csv_out *csv, gint64 *rows, GError **err)
{
	g_autoptr(GArray) kept = g_array_new(FALSE, FALSE, sizeof(struct outing));	/* for a day, and the next */
	struct record_out *out = record_out_new(RECORD_OUTING, csv, name_of, names);
	struct cells *c = cells_open(b->db, SQL_ALL_OUTING_BY_DAY);
	struct outing *day = NULL;
	gboolean ok = TRUE;
	guint n = 0;

	*rows = 0;
	g_array_set_clear_func(kept, clear_outing);
	while (ok && cells_next(c)) {
		if (n == kept->len) {
			g_array_set_size(kept, n + 1);
			day = (void *)kept->data;
			record_init(RECORD_OUTING, &day[n]);
		}
		cells_record(c, RECORD_OUTING, &day[n]);
		if (names->handover)
			handover_strip(names->handover, RECORD_OUTING, &day[n]);
		++*rows;
		if (n && (day[n].boat != day->boat || day[n].date != day->date)) {
			struct outing next = day[n];

			ok = write_day(out, day, n);
			day[n] = day[0];
			day[0] = next;
			n = 0;
		}
		n++;
	}
	if (ok)
		write_day(out, day, n);
	record_out_free(out);
	return cells_close(c, err);
}

gboolean
book_export(struct book *b, const struct export_form *form, gint64 *rows, GError **err)
{
	struct csv_out_how how = { form->decimal_comma ? ';' : 0, form->decimal_comma, form->for_spreadsheet };
	struct naming names = { .b = b, .of = form->what };
	g_autoptr(GArray) boats = book_boats(b, err);
	struct out_file f;
	struct csv_out *csv;
	struct sink sink;
	gboolean ok;

	if (!boats || (form->without_names && !(names.handover = handover_new(b, err)))
	    || !out_file_open(&f, form->path, form->stream, err)) {
		handover_free(names.handover);
		return FALSE;
	}
	names.several = boats->len > 1;
	sink = sink_file(f.stream);
	csv = csvout_new(&sink, &how);
	ok = form->what == RECORD_OUTING ? write_outings(b, &names, csv, rows, err)
					 : write_records(b, form->what, &names, csv, rows, err);
	ok = csvout_close(csv, ok ? err : NULL) && ok;
	handover_free(names.handover);
	for (int i = 0; i < RECORD_COUNT; i++)
		g_clear_pointer(&names.name[i], g_hash_table_unref);
	return out_file_close(&f, ok, err);
}
