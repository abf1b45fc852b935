/* Findings in words: for the command line and the screens. */
#include "logbook/finding_inside.h"

#include "base/date.h"
#include "logbook/due.h"
#include "logbook/knowledge.h"
#include "logbook/photo.h"
#include "logbook/transfer.h"

#include <string.h>

int
finding_season(const struct finding *f, const GArray *seasons, gint64 day)
{
	gint64 end = f->mended == NONE ? day : MIN(f->mended, day);
	int n = 1;

	for (guint i = 0; i < seasons->len; i++) {
		gint64 launch = ((const struct season *)(const void *)seasons->data)[i].launch;

		n += launch > f->date && launch <= end;
	}
	return n;
}

const char *
finding_season_words(int season, char buf[16])
{
	static const char *const end[] = { "th", "st", "nd", "rd" };
	int last = season % 10;

	*buf = '\0';
	if (season > 1)
		g_snprintf(buf, 16, "%d%s season", season, last > 3 || season % 100 / 10 == 1 ? "th" : end[last]);
	return buf;
}

static void
add_place(GString *out, struct book *b, const struct finding *f)
{
	char day[16];

	g_string_append_printf(out, "%s, found on %s", book_name_of(b, RECORD_FITTING, f->fitting), day_words(f->date, day));
	if (f->task != NONE)
		g_string_append_printf(out, " at %s", book_name_of(b, RECORD_TASK, f->task));
	if (f->who)
		g_string_append_printf(out, " by %s", f->who);
	g_string_append_c(out, '\n');
}

/* The reading it was found by, and the outing it was found on. */
static gboolean
add_origin(GString *out, struct book *b, const struct finding *f, GError **err)
{
	struct measurement m;
	struct outing o;
	char day[16];
	gboolean ok = TRUE;

	record_init(RECORD_MEASUREMENT, &m);
	record_init(RECORD_OUTING, &o);
	if (f->measurement != NONE && (ok = row_get(b->db, RECORD_MEASUREMENT, f->measurement, &m, err)))
		g_string_append_printf(out, "Measured: %s %s\n", m.what, m.as_read);
	if (ok && f->outing != NONE && (ok = row_get(b->db, RECORD_OUTING, f->outing, &o, err)))
		g_string_append_printf(out, "On the outing of %s%s%s\n", day_words(o.date, day), o.place ? ", " : "",
				       o.place ? o.place : "");
	record_clear(RECORD_MEASUREMENT, &m);
	record_clear(RECORD_OUTING, &o);
	return ok;
}

static const char *
level_means(gint64 level)
{
	switch ((enum level)level) {
	case LEVEL_HOLD:
		return "hold: the boat is not launched, and not used, before this is put right or let pass by name";
	case LEVEL_MEND:
		return "mend: to be put right this season";
	case LEVEL_WATCH:
		return "watch: to be looked at again, and worse than now it is mended";
	}
	return "";
}

/* The level and its ground; an owner who took it lighter than proposed can read so. */
static gboolean
add_level(GString *out, struct book *b, const struct finding *f, GError **err)
{
	const struct knowledge *k = f->rule ? book_knowledge(b, err) : NULL;
	const struct finding_rule *r = k ? knowledge_rule(k, f->rule) : NULL;

	if (f->rule && !k)
		return FALSE;
	g_string_append_printf(out, "%s\n", level_means(f->level));
	if (f->proposed != NONE && f->proposed != f->level)
		g_string_append_printf(out, "Proposed was %s; the owner %s it\n", word_of(&words_level, f->proposed),
				       f->level > f->proposed ? "lowered" : "raised");
	if (f->raised)
		g_string_append_printf(out, "Raised: %s\n", f->raised);
	if (r) {
		g_autofree char *source = source_words(word_index(&words_standing, r->standing), r->source);

		g_string_append_printf(out, "Why: %s (%s)\n", r->why, source);
	}
	return TRUE;
}

/* The day of the latest work on a task from the day of the finding on; NONE. */
static gboolean
done_since(struct book *b, const struct finding *f, const char *name, gint64 *day, GError **err)
{
	gint64 task = book_key_of(b, SQL_TASK_BY_NAME, f->boat, name);
	struct cells *c;
	g_autoptr(GArray) done = NULL;

	*day = NONE;
	if (task == NONE)
		return TRUE;
	c = cells_open(b->db, SQL_SERVICES_BETWEEN);
	cells_bind(c, 1, task);
	cells_bind(c, 2, f->date);
	cells_bind(c, 3, b->who.today);
	done = book_rows(c, RECORD_SERVICE, err);
	if (done && done->len)
		*day = ((const struct service *)(const void *)done->data)->date;
	return done != NULL;
}

static gboolean
add_makes_due(GString *out, struct book *b, const struct finding *f, GError **err)
{
	g_auto(GStrv) name = g_strsplit(f->makes_due ? f->makes_due : "", " ", -1);
	g_autoptr(GString) open = g_string_new(NULL), worked = g_string_new(NULL);
	char day[16];
	gint64 done;

	for (int i = 0; name[i]; i++) {
		if (!done_since(b, f, name[i], &done, err))
			return FALSE;
		if (done == NONE)
			g_string_append_printf(open, "%s%s", open->len ? ", " : "", name[i]);
		else
			g_string_append_printf(worked, "%s%s on %s", worked->len ? ", " : "", name[i], day_words(done, day));
	}
	if (open->len)
		g_string_append_printf(out, "Makes due: %s\n", open->str);
	if (worked->len)
		g_string_append_printf(out, "Worked on since: %s\n", worked->str);
	return TRUE;
}

static gboolean
add_photos(GString *out, struct book *b, const struct finding *f, gboolean files, GError **err)
{
	g_autoptr(GArray) all = book_photos(b, f->id, err);

	for (guint i = 0; all && i < all->len; i++) {
		const struct photo *p = &((const struct photo *)(const void *)all->data)[i];
		const char *state = files ? photo_state_words(photo_state(p)) : "";

		g_string_append_printf(out, "Photo: %s%s%s\n", p->path, *state ? ": " : "", state);
	}
	return all != NULL;
}

static gboolean
add_carried(GString *out, struct book *b, const struct finding *f, GError **err)
{
	g_autoptr(GArray) seasons = book_records(b, RECORD_SEASON, f->boat, err);
	char season[16];

	if (seasons && *finding_season_words(finding_season(f, seasons, b->who.today), season))
		g_string_append_printf(out, "Carried over: %s\n", season);
	return seasons != NULL;
}

static void
add_end(GString *out, struct book *b, const struct finding *f)
{
	struct service s;
	char day[16];

	if (f->until != NONE)
		g_string_append_printf(out, "To be mended by %s\n", day_words(f->until, day));
	if (f->allowed)
		g_string_append_printf(out, "Until then: %s\n", f->allowed);
	if (f->remark)
		g_string_append_printf(out, "%s\n", f->remark);
	if (f->mended == NONE)
		return;
	record_init(RECORD_SERVICE, &s);
	g_string_append_printf(out, "Mended on %s, left as %s", day_words(f->mended, day), f->left_as ? f->left_as : "?");
	if (f->service != NONE && row_get(b->db, RECORD_SERVICE, f->service, &s, NULL))
		g_string_append_printf(out, "; by %s on %s", book_name_of(b, RECORD_TASK, s.task), day_words(s.date, day));
	g_string_append_c(out, '\n');
	record_clear(RECORD_SERVICE, &s);
}

char *
finding_story(struct book *b, const struct finding *f, gboolean files, GError **err)
{
	GString *out = g_string_new(NULL);
	gboolean ok;

	g_string_append_printf(out, "%s\n", f->words);
	add_place(out, b, f);
	ok = add_level(out, b, f, err) && add_origin(out, b, f, err) && add_makes_due(out, b, f, err)
	  && add_carried(out, b, f, err) && add_photos(out, b, f, files, err);
	add_end(out, b, f);
	return g_string_free(out, !ok);
}
