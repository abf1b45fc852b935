#include "logbook/waiver.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/inside.h"

#include <string.h>

static gboolean
is_blank(const char *text)
{
	return !text || !text[strspn(text, " \t\n")];
}

gboolean
waiver_check(const struct waiver *w, GError **err)
{
	char d[DAY_TEXT], from[DAY_TEXT];

	if ((w->finding != NONE) + (w->task != NONE) + (w->happening != NONE) != 1)
		return err_set(err, ERR_INPUT, "what is let pass? one finding, task or happening");
	if (is_blank(w->who))
		return err_set(err, ERR_INPUT, "who answers for it? a name is wanted");
	if (is_blank(w->reason))
		return err_set(err, ERR_INPUT, "why may it pass? a reason is wanted");
	if (w->until == NONE)
		return err_set(err, ERR_INPUT, "until when? a last day is wanted");
	if (w->until < w->date)
		return err_set(err, ERR_INPUT, "%s lies before %s: the last day is that day or later", day_iso(w->until, d),
			       day_iso(w->date, from));
	return w->until - w->date <= WAIVER_DAYS
	    || err_set(err, ERR_INPUT, "%s is more than a year off: let it pass for a season, and look again",
		       day_iso(w->until, d));
}

gboolean
task_can_hold(const char *name, const char *path, gint64 consequence)
{
	return consequence <= COST_HURTS || strstr(name, "retainer") || strstr(name, "linkage")
	    || (path && (strstr(path, "retainer") || strstr(path, "linkage")));
}

static gboolean
task_thing(struct book *b, gint64 boat, const char *words, struct waiver *w, GError **err)
{
	struct task t;
	struct fitting f;
	gboolean ok;

	if (!book_find_task(b, boat, words, &t, err))
		return FALSE;
	record_init(RECORD_FITTING, &f);
	ok = row_get(b->db, RECORD_FITTING, t.fitting, &f, err);
	if (ok && (t.retired == 1 || f.retired == 1))
		ok = err_set(err, ERR_INPUT, "%s is retired: it holds nothing", t.name);
	else if (ok && !task_can_hold(t.name, f.path, t.consequence))
		ok = err_set(err, ERR_INPUT, "%s does not hold the launch: there is nothing to let pass", t.name);
	w->task = t.id;
	record_clear(RECORD_FITTING, &f);
	record_clear(RECORD_TASK, &t);
	return ok;
}

/* Whether a finding of that key is there; *err also for one that can't hold. */
static gboolean
finding_thing(struct book *b, gint64 boat, gint64 key, gboolean *found, GError **err)
{
	struct finding f;
	gboolean ok = TRUE;

	record_init(RECORD_FINDING, &f);
	*found = row_get(b->db, RECORD_FINDING, key, &f, NULL) && f.boat == boat;
	if (*found && f.mended != NONE)
		ok = err_set(err, ERR_INPUT, "that finding is mended: it holds nothing");
	else if (*found && f.level != LEVEL_HOLD && f.until == NONE)
		ok = err_set(err, ERR_INPUT, "that finding does not hold the launch: there is nothing to let pass");
	record_clear(RECORD_FINDING, &f);
	return ok;
}

static gboolean
happening_thing(struct book *b, gint64 boat, gint64 key, gboolean *found, GError **err)
{
	struct happening h;
	gboolean ok = TRUE;

	record_init(RECORD_HAPPENING, &h);
	*found = row_get(b->db, RECORD_HAPPENING, key, &h, NULL) && h.boat == boat;
	if (*found && h.closed != NONE)
		ok = err_set(err, ERR_INPUT, "that is closed: what it asked for is let pass task by task");
	record_clear(RECORD_HAPPENING, &h);
	return ok;
}

gboolean
book_waiver_thing(struct book *b, gint64 boat, const char *words, struct waiver *w, GError **err)
{
	gboolean found;
	gint64 key;

	w->finding = w->task = w->happening = NONE;
	if (!book_key(words, &key))
		return task_thing(b, boat, words, w, err);
	if (!finding_thing(b, boat, key, &found, err))
		return FALSE;
	if (found) {
		w->finding = key;
		return TRUE;
	}
	if (!happening_thing(b, boat, key, &found, err))
		return FALSE;
	w->happening = key;
	return found || err_set(err, ERR_NOT_FOUND, "no finding and no happening has the key %s: splitpin ready shows them", words);
}

GArray *
book_waivers_on(struct book *b, gint64 boat, gint64 day, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_WAIVERS_ON);

	cells_bind(c, 1, boat);
	cells_bind(c, 2, day);
	return book_rows(c, RECORD_WAIVER, err);
}

const struct waiver *
waiver_of(const GArray *waivers, gint64 finding, gint64 task, gint64 happening)
{
	const struct waiver *w = (const void *)waivers->data;

	for (guint i = 0; i < waivers->len; i++)
		if (w[i].finding == finding && w[i].task == task && w[i].happening == happening)
			return &w[i];
	return NULL;
}

/* End those that hold today for the same thing; *ended counts them. */
static gboolean
end_same(struct book *b, const struct waiver *w, int *ended, GError **err)
{
	g_autoptr(GArray) all = book_waivers_on(b, w->boat, b->who.today, err);
	struct waiver *old = all ? (void *)all->data : NULL;

	*ended = 0;
	for (guint i = 0; all && i < all->len; i++) {
		if (old[i].finding != w->finding || old[i].task != w->task || old[i].happening != w->happening)
			continue;
		old[i].ended = b->who.today;
		++*ended;
		if (!book_put(b, RECORD_WAIVER, &old[i], err))
			return FALSE;
	}
	return all != NULL;
}

gboolean
book_waive(struct book *b, struct waiver *w, GError **err)
{
	g_autofree char *what = NULL;
	char d[DAY_TEXT];
	int ended;

	w->id = w->ended = NONE;
	w->date = b->who.today;
	w->who = w->who ? w->who : g_strdup(b->who.name);
	if (!waiver_check(w, err))
		return FALSE;
	what = book_waiver_words(b, w);
	return book_begin(b, err)
	    && book_end(b, end_same(b, w, &ended, err) && book_put(b, RECORD_WAIVER, w, err), err, "%s let pass until %s", what,
			day_iso(w->until, d));
}

/* What the words mean, also when it can't hold any more: what was let pass may have been mended since. */
static void
thing_meant(struct book *b, gint64 boat, const char *words, struct waiver *w)
{
	struct task t;
	gint64 key;

	if (book_key(words, &key)) {
		struct finding f;

		record_init(RECORD_FINDING, &f);
		*(row_get(b->db, RECORD_FINDING, key, &f, NULL) ? &w->finding : &w->happening) = key;
		record_clear(RECORD_FINDING, &f);
	} else if (book_find_task(b, boat, words, &t, NULL)) {
		w->task = t.id;
		record_clear(RECORD_TASK, &t);
	}
}

gboolean
book_take_back(struct book *b, gint64 boat, const char *words, GError **err)
{
	g_autofree char *what = NULL;
	struct waiver w;
	gint64 key;
	gboolean ok;
	int ended = 0;

	record_init(RECORD_WAIVER, &w);
	if (!book_key(words, &key) || !row_get(b->db, RECORD_WAIVER, key, &w, NULL) || w.boat != boat) {
		record_clear(RECORD_WAIVER, &w);
		record_init(RECORD_WAIVER, &w);
		w.boat = boat;
		thing_meant(b, boat, words, &w);
	}
	what = book_waiver_words(b, &w);
	ok = book_begin(b, err);
	if (ok) {
		ok = end_same(b, &w, &ended, err)
		  && (ended || err_set(err, ERR_NOT_FOUND, "nothing is let pass by %s: splitpin ready --waivers lists what is",
				       words));
		ok = book_end(b, ok, err, "%s: let pass no longer", what);
	}
	record_clear(RECORD_WAIVER, &w);
	return ok;
}

char *
book_waiver_words(struct book *b, const struct waiver *w)
{
	struct finding f;
	struct happening h;
	struct task t;
	char *words = NULL, d[16];

	record_init(RECORD_FINDING, &f);
	record_init(RECORD_HAPPENING, &h);
	record_init(RECORD_TASK, &t);
	if (w->finding != NONE && row_get(b->db, RECORD_FINDING, w->finding, &f, NULL))
		words = g_strdup(f.words);
	else if (w->happening != NONE && row_get(b->db, RECORD_HAPPENING, w->happening, &h, NULL))
		words = g_strdup_printf("%s on %s", word_of(&words_happening, h.kind), day_words(h.date, d));
	else if (w->task != NONE && row_get(b->db, RECORD_TASK, w->task, &t, NULL))
		words = g_strdup(t.name);
	record_clear(RECORD_FINDING, &f);
	record_clear(RECORD_HAPPENING, &h);
	record_clear(RECORD_TASK, &t);
	return words ? words : g_strdup("nothing");
}
