/* The list of the stores for other programs. */
#include "logbook/stores_story.h"

#include "base/date.h"
#include "exchange/csv_out.h"
#include "exchange/json.h"

#include <math.h>

/* A line of the list: a lot, or an item of which nothing is there or to come. */
struct line {
	const struct item *item;
	const struct lot *lot; /* NULL: none */
	gint64 left;
	struct lot_age age;
};

static GArray *
lines_of(const struct stores *s, const struct item *only, gint64 today)
{
	GArray *all = g_array_new(FALSE, FALSE, sizeof(struct line));

	for (guint i = 0; stores_nth(s, i); i++) {
		struct line l = { .item = stores_nth(s, i), .age.months = -1 };
		gboolean any = FALSE;

		if (only && only != l.item)
			continue;
		for (guint k = 0; stores_lot(s, k); k++) {
			struct line of = { l.item, stores_lot(s, k), stores_left(s, k), { 0 } };

			if (of.lot->item != l.item->id || !of.left)
				continue;
			lot_age(l.item, of.lot, today, &of.age);
			g_array_append_val(all, of);
			any = TRUE;
		}
		if (!any)
			g_array_append_val(all, l);
	}
	return all;
}

static gint64
months_of(const struct line *l)
{
	return l->age.months < 0 ? NONE : l->age.months;
}

char *
stores_csv(const struct stores *s, const struct item *only, gint64 today)
{
	static const char *const header[] = { "what",	 "numbers", "quantity", "unit",	  "arrived", "expected",
					      "made",	 "months",  "too-old",	"place",  "keep",    "lot" };
	g_autoptr(GArray) all = lines_of(s, only, today);
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);
	struct csv_out *csv = csvout_new(&sink, NULL);
	char d[DAY_TEXT], n[STOCK_TEXT];

	csvout_names(csv, header, G_N_ELEMENTS(header));
	for (guint i = 0; i < all->len; i++) {
		const struct line *l = &g_array_index(all, struct line, i);
		const struct lot none = { .arrived = NONE, .expected = NONE, .made = NONE }, *lot = l->lot ? l->lot : &none;
		g_autofree char *numbers = stores_numbers(s, l->item->id), *key = l->lot ? book_key_text(lot->id) : NULL;

		csvout_text(csv, l->item->what);
		csvout_text(csv, numbers);
		csvout_number(csv, stock_text(l->left, n));
		csvout_text(csv, l->item->unit);
		csvout_word(csv, day_iso(lot->arrived, d));
		csvout_word(csv, lot->arrived == NONE ? day_iso(lot->expected, d) : "");
		csvout_word(csv, day_iso(lot->made, d));
		csvout_int(csv, months_of(l));
		csvout_word(csv, !l->lot ? "" : l->age.stale ? "yes" : "no");
		csvout_text(csv, lot->place);
		csvout_number(csv, isnan(l->item->keep) ? "" : stock_text(stock_of(l->item->keep), n));
		csvout_text(csv, key);
		csvout_row(csv);
	}
	csvout_close(csv, NULL);
	return g_string_free(text, FALSE);
}

static void
json_lot(struct json_out *j, const struct line *l)
{
	g_autofree char *key = book_key_text(l->lot->id);

	jsonout_text(j, "lot", key);
	jsonout_day(j, "arrived", l->lot->arrived);
	jsonout_day(j, "expected", l->lot->arrived == NONE ? l->lot->expected : NONE);
	jsonout_day(j, "made", l->lot->made);
	jsonout_int(j, "months", months_of(l));
	jsonout_yes(j, "too-old", l->age.stale);
	jsonout_text(j, "place", l->lot->place);
}

char *
stores_json(const struct stores *s, const struct item *only, gint64 today)
{
	g_autoptr(GArray) all = lines_of(s, only, today);
	struct json_out *j = jsonout_new();
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);

	for (guint i = 0; i < all->len; i++) {
		const struct line *l = &g_array_index(all, struct line, i);
		g_autofree char *numbers = stores_numbers(s, l->item->id);

		jsonout_next(j);
		jsonout_text(j, "what", l->item->what);
		jsonout_text(j, "numbers", numbers);
		jsonout_real(j, "quantity", stock_real(l->left));
		jsonout_text(j, "unit", l->item->unit);
		jsonout_real(j, "keep", l->item->keep);
		if (l->lot)
			json_lot(j, l);
	}
	jsonout_write(j, &sink, TRUE, NULL);
	jsonout_free(j);
	return g_string_free(text, FALSE);
}
