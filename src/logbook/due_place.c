/* What the due list knows of the places where boats lie: read once for a logbook, whatever boat is asked for. */
#include "logbook/due_list.h"

#include "engine/salinity.h"
#include "engine/wear.h"
#include "logbook/inside.h"

#include <math.h>

/* A word that was said wins over the place's salinity: then the same climate without it counts. */
struct due_place {
	struct climate whole, by_word;
	enum water water; /* WATER_COUNT: not known */
};

static gboolean
read_places(struct book *b, struct due_list *l, GHashTable *by_key, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_DUE_PLACES);

	while (cells_next(c)) {
		struct due_place *p = g_new(struct due_place, 1);
		gint64 water = cells_word(c, 2, &words_water), air = cells_word(c, 4, &words_air);
		gint64 key = cells_int(c, 0);

		p->whole.psu = cells_real(c, 3);
		p->whole.air = air == NONE ? AIR_COUNT : (enum air)air;
		monthly_unknown(&p->whole.water);
		monthly_unknown(&p->whole.dry);
		p->water = water == NONE ? water_class(p->whole.psu) : (enum water)water;
		g_hash_table_insert(l->places, g_strdup(cells_text(c, 1)), p);
		g_hash_table_insert(by_key, g_memdup2(&key, sizeof key), p);
	}
	return cells_close(c, err);
}

static gboolean
read_months(struct book *b, GHashTable *by_key, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_DUE_CLIMATES);

	while (cells_next(c)) {
		gint64 key = cells_int(c, 0), month = cells_int(c, 1);
		struct due_place *p = g_hash_table_lookup(by_key, &key);

		if (p && month >= 1 && month <= 12) {
			p->whole.water.in[month - 1] = cells_real(c, 2);
			p->whole.dry.in[month - 1] = cells_real(c, 3);
		}
	}
	return cells_close(c, err);
}

gboolean
due_read_places(struct book *b, struct due_list *l, GError **err)
{
	g_autoptr(GHashTable) by_key = NULL;
	GHashTableIter i;
	gpointer value;

	if (l->places)
		return TRUE;
	l->places = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
	by_key = g_hash_table_new_full(g_int64_hash, g_int64_equal, g_free, NULL);
	if (!read_places(b, l, by_key, err) || (g_hash_table_size(by_key) && !read_months(b, by_key, err)))
		return FALSE;
	g_hash_table_iter_init(&i, l->places);
	while (g_hash_table_iter_next(&i, NULL, &value)) {
		struct due_place *p = value;

		p->by_word = p->whole;
		p->by_word.psu = (double)NAN;
	}
	return TRUE;
}

const struct climate *
due_climate(const struct due_list *l, const char *place, gint64 said, gint64 *water)
{
	const struct due_place *p = place && l->places ? g_hash_table_lookup(l->places, place) : NULL;

	if (said != NONE)
		*water = said;
	else if (p && p->water != WATER_COUNT)
		*water = p->water;
	if (!p)
		return NULL;
	return said == NONE || said == (gint64)p->water ? &p->whole : &p->by_word;
}
