#include "logbook/place.h"

#include "base/amount.h"
#include "base/err.h"
#include "base/text.h"
#include "engine/salinity.h"
#include "logbook/inside.h"

#include <math.h>
#include <string.h>

/* No monthly mean of a sea, a lake or its air is beyond these. */
static const struct range {
	const char *what;
	double low, high;
} ranges[] = { { "water", -2, 40 }, { "air", -60, 50 } };
enum { OF_WATER, OF_AIR };

static gboolean
is_none(const char *text)
{
	return !g_ascii_strcasecmp(text, "none");
}

gboolean
salinity_of_reading(const char *text, double *psu, GError **err)
{
	struct water_reading r;
	double found = (double)NAN;

	if (!water_reading_parse(text, &r, err))
		return FALSE;
	switch (r.scale) {
	case WATER_SALINITY:
		found = r.value <= PSU_MOST ? r.value : (double)NAN;
		break;
	case WATER_CONDUCTIVITY:
		found = r.compensated ? salinity_of_compensated(r.value) : salinity_of_conductivity(r.value, r.celsius);
		break;
	case WATER_GRAVITY:
		found = salinity_of_hydrometer(r.value, temperature_68(r.celsius));
		break;
	}
	if (!isnan(r.celsius) && (r.celsius < -2 || r.celsius > 40))
		return err_set(err, ERR_INPUT, "%s: the water is from -2 to 40 C when it is read", text);
	if (isnan(found) && r.scale == WATER_GRAVITY)
		return err_set(err, ERR_INPUT,
			       "%s: no water from 0 to %g PSU weighs that; fresh water is about 1.000, the "
			       "ocean about 1.025",
			       text, PSU_MOST);
	if (isnan(found) && r.scale == WATER_CONDUCTIVITY)
		return err_set(err, ERR_INPUT, "%s: more than %g PSU; the ocean has about 50 mS/cm: are uS/cm meant?",
			       text, PSU_MOST);
	if (isnan(found))
		return err_set(err, ERR_INPUT, "%s: salinity is 0 to %g PSU, and about 35 in the ocean", text,
			       PSU_MOST);
	/* A thousandth is finer than any reading, and reads well in a file. */
	*psu = round(found * 1000) / 1000;
	return TRUE;
}

static gboolean
in_range(double celsius, int of, gboolean scale_said, GError **err)
{
	const struct range *r = &ranges[of];

	if (isnan(celsius) || (celsius >= r->low && celsius <= r->high))
		return TRUE;
	return err_set(err, ERR_INPUT, "a month's mean of the %s is from %g to %g C, not %.4g%s", r->what, r->low,
		       r->high, celsius, scale_said ? "" : ": degrees Fahrenheit are written with F behind them");
}

/* One word of the twelve: "4", "39F", "-". */
static gboolean
month_parse(const char *word, gboolean fahrenheit, double *celsius, GError **err)
{
	g_autofree char *number = g_strdup(word);
	gsize n = strlen(number);
	double read;

	*celsius = (double)NAN;
	if (!strcmp(word, "-") || !strcmp(word, "?"))
		return TRUE;
	if (g_ascii_isalpha(number[n - 1])) {
		if (!strchr("CcFf", number[n - 1]))
			return err_set(err, ERR_INPUT, "\"%.20s\": write C or F behind the numbers", word);
		fahrenheit = g_ascii_toupper(number[n - 1]) == 'F';
		number[n - 1] = '\0';
	}
	if (!number_parse(number, &read, err))
		return FALSE;
	/* A hundredth is finer than any monthly mean. */
	*celsius = fahrenheit ? round((read - 32) * 500 / 9) / 100 : read;
	return TRUE;
}

gboolean
months_parse(const char *text, struct monthly *m, GError **err)
{
	g_autofree char *copy = g_strdup(text);
	g_auto(GStrv) words = NULL;
	g_autoptr(GStrvBuilder) kept = g_strv_builder_new();
	g_auto(GStrv) month = NULL;
	gboolean fahrenheit;
	guint n;

	if (!g_utf8_validate(text, -1, NULL))
		return err_set(err, ERR_INPUT, "this is no UTF-8 text");
	words = g_strsplit_set(g_strstrip(copy), " \t;", -1);
	for (int i = 0; words[i]; i++)
		if (*words[i])
			g_strv_builder_add(kept, words[i]);
	month = g_strv_builder_end(kept);
	n = g_strv_length(month);
	fahrenheit = n && !g_ascii_strcasecmp(month[n - 1], "F");
	if (n && (fahrenheit || !g_ascii_strcasecmp(month[n - 1], "C")))
		n--;
	if (n != G_N_ELEMENTS(m->in))
		return err_set(err, ERR_INPUT,
			       "%u %s: twelve are wanted, from January on, with - for one that is not known", n,
			       n == 1 ? "number" : "numbers");
	for (guint i = 0; i < n; i++)
		if (!month_parse(month[i], fahrenheit, &m->in[i], err))
			return err_prefix(err, "month %u: ", i + 1);
	return TRUE;
}

gboolean
place_check(struct place *p, GError **err)
{
	enum water follows;

	if (isnan(p->salinity))
		return TRUE;
	if (p->salinity < 0 || p->salinity > PSU_MOST)
		return err_set(err, ERR_INPUT, "salinity is 0 to %g PSU, and about 35 in the ocean", PSU_MOST);
	follows = water_class(p->salinity);
	if (p->water != NONE && p->water != (gint64)follows)
		return err_set(err, ERR_CONFLICT,
			       "%s contradicts %.3g PSU, which is %s: fresh is below 0.5, brackish below 30",
			       word_of(&words_water, p->water), p->salinity, word_of(&words_water, follows));
	p->water = follows;
	return TRUE;
}

gboolean
month_check(const struct climate_month *m, GError **err)
{
	if (m->month < 1 || m->month > 12)
		return err_set(err, ERR_INPUT, "month: it is 1 to 12");
	return in_range(m->water, OF_WATER, TRUE, err) && in_range(m->air, OF_AIR, TRUE, err);
}

static gboolean
place_named(struct book *b, const char *name, struct place *p, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_PLACE_BY_NAME);

	record_init(RECORD_PLACE, p);
	cells_bind_text(c, 1, name);
	cells_next_record(c, RECORD_PLACE, p);
	return cells_close(c, err);
}

gint64
book_place_key(struct book *b, const char *name)
{
	struct place p;
	gint64 id = place_named(b, name, &p, NULL) ? p.id : NONE;

	record_clear(RECORD_PLACE, &p);
	return id;
}

gboolean
book_place_water(struct book *b, const char *name, gint64 *water, GError **err)
{
	struct place p;
	gboolean ok = place_named(b, name, &p, err);

	*water = p.water;
	record_clear(RECORD_PLACE, &p);
	return ok;
}

gboolean
book_find_place(struct book *b, const char *name, struct place *p, GError **err)
{
	g_autoptr(GPtrArray) names = g_ptr_array_new();
	g_autoptr(GArray) all = NULL;
	g_autofree char *shown = text_quoted(name);
	const char *near;

	if (!place_named(b, name, p, err))
		return FALSE;
	if (p->id != NONE)
		return TRUE;
	all = book_records(b, RECORD_PLACE, NONE, err);
	if (!all)
		return FALSE;
	for (guint i = 0; i < all->len; i++)
		g_ptr_array_add(names, ((const struct place *)(const void *)all->data)[i].name);
	near = text_nearest(name, (const char *const *)names->pdata, (int)names->len);
	if (near)
		return err_set(err, ERR_NOT_FOUND, "no place is called %s: is \"%s\" meant?", shown, near);
	return err_set(err, ERR_NOT_FOUND,
		       "no place is called %s: splitpin place NAME --water WATER puts one on record", shown);
}

static gboolean
take_word(const char *text, const char *option, const struct words *w, gint64 *value, GError **err)
{
	if (text && is_none(text))
		*value = NONE;
	else if (text && !word_parse(w, text, value, err))
		return err_prefix(err, "%s: ", option);
	return TRUE;
}

static void
take_text(const char *text, char **value)
{
	if (!text)
		return;
	g_free(*value);
	*value = is_none(text) ? NULL : g_strdup(text);
}

/* A new salinity brings its water along; a new word must agree with the salinity on record. */
static gboolean
take_water(const struct place_form *f, struct place *p, GError **err)
{
	if (f->salinity) {
		take_text(f->salinity, &p->as_read);
		p->salinity = (double)NAN;
		if (p->as_read && !salinity_of_reading(p->as_read, &p->salinity, err))
			return err_prefix(err, "--salinity: ");
		if (p->as_read)
			p->water = NONE;
	}
	return take_word(f->water, "--water", &words_water, &p->water, err) && place_check(p, err);
}

static gboolean
take_months(const char *text, const char *option, int of, struct monthly *m, GError **err)
{
	gboolean scale_said = text && strpbrk(text, "CcFf");

	if (!text)
		return TRUE;
	if (is_none(text)) {
		monthly_unknown(m);
		return TRUE;
	}
	if (!months_parse(text, m, err))
		return err_prefix(err, "%s: ", option);
	for (guint i = 0; i < G_N_ELEMENTS(m->in); i++)
		if (!in_range(m->in[i], of, scale_said, err))
			return err_prefix(err, "%s: ", option);
	return TRUE;
}

gboolean
book_place_months(struct book *b, gint64 place, struct monthly *water, struct monthly *dry, GError **err)
{
	g_autoptr(GArray) all = book_gather(b, RECORD_CLIMATE, SQL_CLIMATE_OF_PLACE, place, err);

	monthly_unknown(water);
	monthly_unknown(dry);
	for (guint i = 0; all && i < all->len; i++) {
		const struct climate_month *m = &((const struct climate_month *)(const void *)all->data)[i];

		if (m->month >= 1 && m->month <= 12) {
			water->in[m->month - 1] = m->water;
			dry->in[m->month - 1] = m->air;
		}
	}
	return all != NULL;
}

gint64
book_climate_key(struct book *b, gint64 place, gint64 month)
{
	struct cells *c = cells_open(b->db, SQL_CLIMATE_FOR);

	cells_bind(c, 1, place);
	cells_bind(c, 2, month);
	return book_key_found(c);
}

static gboolean
write_months(struct book *b, gint64 place, const struct monthly *water, const struct monthly *dry, GError **err)
{
	for (int i = 0; i < 12; i++) {
		struct climate_month m = { book_climate_key(b, place, i + 1), place, i + 1, water->in[i], dry->in[i] };
		gboolean known = !isnan(m.water) || !isnan(m.air), ok = TRUE;

		if (known)
			ok = book_put(b, RECORD_CLIMATE, &m, err);
		else if (m.id != NONE)
			ok = row_drop(b->db, RECORD_CLIMATE, m.id, err);
		if (!ok)
			return FALSE;
	}
	return TRUE;
}

/* Stays and boats name the place by its name. */
static gboolean
followers_renamed(struct book *b, const char *from, const char *to, GError **err)
{
	g_autoptr(GArray) boats = book_boats(b, err);
	struct boat *boat = boats ? (void *)boats->data : NULL;

	for (guint i = 0; boats && i < boats->len; i++) {
		g_autoptr(GArray) stays = book_records(b, RECORD_STAY, boat[i].id, err);
		struct stay *s = stays ? (void *)stays->data : NULL;

		if (!stays)
			return FALSE;
		for (guint k = 0; k < stays->len; k++)
			if (!g_strcmp0(s[k].place, from)) {
				take_text(to, &s[k].place);
				if (!book_put(b, RECORD_STAY, &s[k], err))
					return FALSE;
			}
		if (!g_strcmp0(boat[i].place, from)) {
			take_text(to, &boat[i].place);
			if (!book_put(b, RECORD_BOAT, &boat[i], err))
				return FALSE;
		}
	}
	return boats != NULL;
}

static gboolean
check_name(struct book *b, const char *name, GError **err)
{
	if (is_none(name) || !name[strspn(name, " \t\n")])
		return err_set(err, ERR_INPUT, "a place wants a name");
	if (!g_utf8_validate(name, -1, NULL))
		return err_set(err, ERR_INPUT, "name: this is no UTF-8 text");
	return book_place_key(b, name) == NONE || err_set(err, ERR_CONFLICT, "there is a place \"%s\" already", name);
}

static gboolean
write_place(struct book *b, struct place *p, const struct place_form *f, GError **err)
{
	struct monthly water, dry;

	if (f->rename && !followers_renamed(b, f->name, f->rename, err))
		return FALSE;
	if (!book_put(b, RECORD_PLACE, p, err))
		return FALSE;
	if (!f->water_temp && !f->air_temp)
		return TRUE;
	return book_place_months(b, p->id, &water, &dry, err)
	    && take_months(f->water_temp, "--water-temp", OF_WATER, &water, err)
	    && take_months(f->air_temp, "--air-temp", OF_AIR, &dry, err) && write_months(b, p->id, &water, &dry, err);
}

gboolean
book_place(struct book *b, const struct place_form *f, struct place *p, GError **err)
{
	if (f->rename) {
		if (!book_find_place(b, f->name, p, err))
			return FALSE;
	} else if (!place_named(b, f->name, p, err)) {
		return FALSE;
	}
	if (p->id == NONE && !check_name(b, f->name, err))
		return FALSE;
	if (f->rename && !check_name(b, f->rename, err))
		return err_prefix(err, "--rename: ");
	g_free(p->name);
	p->name = g_strdup(f->rename ? f->rename : f->name);
	take_text(f->remark, &p->remark);
	if (!take_word(f->air, "--air", &words_air, &p->air, err) || !take_water(f, p, err) || !book_begin(b, err))
		return FALSE;
	return book_end(b, write_place(b, p, f, err), err, "place %s%s%s", f->name, f->rename ? " is now " : "",
			f->rename ? f->rename : "");
}

static gboolean
drop_place(struct book *b, const struct place *p, GError **err)
{
	g_autoptr(GArray) months = book_gather(b, RECORD_CLIMATE, SQL_CLIMATE_OF_PLACE, p->id, err);

	for (guint i = 0; months && i < months->len; i++)
		if (!row_drop(b->db, RECORD_CLIMATE, ((const struct climate_month *)(const void *)months->data)[i].id,
			      err))
			return FALSE;
	return months && row_drop(b->db, RECORD_PLACE, p->id, err);
}

gboolean
book_drop_place(struct book *b, const char *name, GError **err)
{
	struct place p;
	gboolean ok;

	ok = book_find_place(b, name, &p, err) && book_begin(b, err)
	  && book_end(b, drop_place(b, &p, err), err, "place %s taken out", name);
	record_clear(RECORD_PLACE, &p);
	return ok;
}

gboolean
book_boat_at(struct book *b, struct boat *boat, const char *place, GError **err)
{
	struct place p;

	record_init(RECORD_PLACE, &p);
	if (!is_none(place) && !book_find_place(b, place, &p, err))
		return FALSE;
	take_text(place, &boat->place);
	if (boat->berth == STAND_AFLOAT && p.water != NONE)
		boat->water = p.water;
	record_clear(RECORD_PLACE, &p);
	return book_begin(b, err)
	    && book_end(b, book_put(b, RECORD_BOAT, boat, err), err, "%s lies at %s", boat->name, place);
}
