#include "logbook/year.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/inside.h"

static gboolean
end_lasting(struct book *b, GArray *all, const struct stay *s, GError **err)
{
	struct stay *old = (void *)all->data;
	char d[DAY_TEXT], e[DAY_TEXT];

	for (guint i = 0; i < all->len; i++) {
		gint64 until = old[i].until == NONE ? G_MAXINT64 : old[i].until;

		if (old[i].id == s->id || until <= s->date || (s->until != NONE && old[i].date >= s->until))
			continue;
		if (old[i].until != NONE || old[i].date >= s->date)
			return err_set(err, ERR_CONFLICT, "the stay from %s to %s lies in the way",
				       day_iso(old[i].date, d),
				       old[i].until == NONE ? "today" : day_iso(old[i].until, e));
		old[i].until = s->date;
		if (!book_put(b, RECORD_STAY, &old[i], err))
			return FALSE;
	}
	return TRUE;
}

gboolean
book_stay(struct book *b, struct stay *s, GError **err)
{
	g_autoptr(GArray) all = NULL;
	char d[DAY_TEXT];

	if (s->until != NONE && s->until <= s->date)
		return err_set(err, ERR_INPUT, "a stay from %s can't end before the next day", day_iso(s->date, d));
	all = book_records(b, RECORD_STAY, s->boat, err);
	if (!all || !book_begin(b, err))
		return FALSE;
	return book_end(b, end_lasting(b, all, s, err) && book_put(b, RECORD_STAY, s, err), err, "%s from %s",
			word_of(&words_stand, s->stand), day_iso(s->date, d));
}

/* The season that the dates belong to: open, planned for the same year, or launched the same day. */
static struct season *
same_season(GArray *all, gint64 launch, gint64 haul_out)
{
	struct season *s = (void *)all->data;
	gint64 day = launch == NONE ? haul_out : launch;
	int year, y, m, d;

	day_to_ymd(day, &year, &m, &d);
	for (guint i = all->len; i-- > 0;) {
		gboolean open = s[i].haul_out == NONE || s[i].planned == 1;

		day_to_ymd(s[i].launch, &y, &m, &d);
		if (launch == NONE ? open && s[i].launch <= haul_out && haul_out - s[i].launch < 550
				   : s[i].launch == launch || (s[i].planned == 1 && y == year))
			return &s[i];
	}
	return NULL;
}

static gboolean
season_clear_of_others(const GArray *all, const struct season *s, GError **err)
{
	const struct season *o = (const void *)all->data;
	gint64 until = s->haul_out == NONE ? s->launch : s->haul_out;
	char d[DAY_TEXT];

	for (guint i = 0; i < all->len; i++)
		if (o[i].id != s->id && o[i].launch <= until
		    && (o[i].haul_out == NONE ? o[i].launch : o[i].haul_out) >= s->launch)
			return err_set(err, ERR_CONFLICT, "the season launched on %s lies in the way",
				       day_iso(o[i].launch, d));
	return TRUE;
}

/* Write a season, its dates seen to. */
static gboolean
write_season(struct book *b, const GArray *all, struct season *s, GError **err)
{
	char d[DAY_TEXT];

	if (s->haul_out != NONE && s->haul_out <= s->launch)
		return err_set(err, ERR_INPUT, "haul-out comes after the launch on %s", day_iso(s->launch, d));
	return season_clear_of_others(all, s, err) && book_put(b, RECORD_SEASON, s, err);
}

static gboolean
not_ahead(const struct book *b, gint64 day, gboolean planned, GError **err)
{
	char d[DAY_TEXT];

	return planned || day <= b->who.today
	    || err_set(err, ERR_INPUT, "%s lies ahead of today: planned records what is intended", day_iso(day, d));
}

gboolean
book_season(struct book *b, gint64 boat, gint64 launch, gint64 haul_out, gboolean planned, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_SEASON, boat, err);
	struct season fresh, *s;
	char d[DAY_TEXT];
	gint64 day = launch == NONE ? haul_out : launch;

	if (!all)
		return FALSE;
	if (!not_ahead(b, MAX(launch, haul_out), planned, err))
		return FALSE;
	s = same_season(all, launch, haul_out);
	if (!s && launch == NONE)
		return err_set(err, ERR_CONFLICT, "no season is under way on %s: give --launch as well",
			       day_iso(haul_out, d));
	if (!s) {
		record_init(RECORD_SEASON, &fresh);
		fresh.boat = boat;
		s = &fresh;
	}
	s->launch = launch == NONE ? s->launch : launch;
	s->haul_out = haul_out == NONE ? s->haul_out : haul_out;
	s->planned = planned;
	return book_begin(b, err)
	    && book_end(b, write_season(b, all, s, err), err, "%s%s %s", planned ? "planned " : "",
			launch == NONE ? "haul-out" : "launch", day_iso(day, d));
}

gboolean
book_season_meant(struct book *b, gint64 boat, gint64 launch, gint64 haul_out, struct season *s, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_SEASON, boat, err);
	struct season *found = all ? same_season(all, launch, haul_out) : NULL;

	record_init(RECORD_SEASON, s);
	if (!found)
		return all != NULL;
	*s = *found;
	record_init(RECORD_SEASON, found);	/* its text is the caller's now */
	return TRUE;
}

gboolean
book_correct_season(struct book *b, struct season *s, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_SEASON, s->boat, err);
	char d[DAY_TEXT];

	return all && not_ahead(b, MAX(s->launch, s->haul_out), s->planned == 1, err) && book_begin(b, err)
	    && book_end(b, write_season(b, all, s, err), err, "season of %s corrected", day_iso(s->launch, d));
}

gboolean
book_drop_dated(struct book *b, enum record r, gint64 id, gint64 date, GError **err)
{
	char d[DAY_TEXT];

	return book_begin(b, err)
	    && book_end(b, row_drop(b->db, r, id, err), err, "%s of %s taken out", record_type(r)->name, day_iso(date, d));
}

gboolean
book_happening(struct book *b, struct happening *h, GError **err)
{
	char d[DAY_TEXT];

	if (h->date > b->who.today)
		return err_set(err, ERR_INPUT, "%s lies ahead of today", day_iso(h->date, d));
	return book_begin(b, err)
	    && book_end(b, book_put(b, RECORD_HAPPENING, h, err), err, "%s on %s", word_of(&words_happening, h->kind),
			day_iso(h->date, d));
}
