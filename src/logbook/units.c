#include "logbook/units.h"

#include "logbook/inside.h"

gint64
book_units(struct book *b, gint64 boat)
{
	struct boat row;
	gint64 units = NONE;

	record_init(RECORD_BOAT, &row);
	if (row_get(b->db, RECORD_BOAT, boat, &row, NULL))
		units = row.units;
	record_clear(RECORD_BOAT, &row);
	return units;
}

gboolean
book_set_units(struct book *b, struct boat *boat, gint64 units, GError **err)
{
	boat->units = units;
	return book_begin(b, err)
	    && book_end(b, book_put(b, RECORD_BOAT, boat, err), err, "%s in %s units", boat->name, word_of(&words_units, units));
}
