#include "logbook/happening.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/inside.h"

#include <string.h>

/* Common practice. */
static const char *const beware[] = {
	[HAPPENED_GROUNDING] = "propeller stands",
	[HAPPENED_SWAMPING] = "fuel-vapour batteries",
	[HAPPENED_OVERHEATING] = "hot-coolant",
	[HAPPENED_LINE] = "propeller",
	[HAPPENED_DRY_RUN] = "hot-coolant moving-parts",
	[HAPPENED_FLOODED_BILGE] = "fuel-vapour batteries shore-power",
	[HAPPENED_BAD_FUEL] = "fuel-vapour disposal",
	[HAPPENED_DRIVE_OFF] = "lifting-drive",
	[HAPPENED_POWER_LOSS] = "fuel-vapour batteries",
	[HAPPENED_MILKY_OIL] = "disposal",
	[HAPPENED_VIBRATION] = "propeller moving-parts",
	[HAPPENED_OTHER] = NULL,
};

const char *
happening_cautions(gint64 kind)
{
	return kind >= 0 && kind < (gint64)G_N_ELEMENTS(beware) ? beware[kind] : NULL;
}

gboolean
happening_asks(const struct due_line *l, gint64 kind)
{
	for (int k = 0; k < l->in.n_limits; k++)
		if (l->limit[k].kind == LIMIT_HAPPENING && l->limit[k].happening == kind)
			return TRUE;
	return FALSE;
}

gboolean
happening_is_recheck(const struct due_line *l)
{
	gboolean first = FALSE, asked = FALSE;

	for (int k = 0; k < l->in.n_limits; k++) {
		first |= l->limit[k].kind == LIMIT_FIRST_HOURS;
		asked |= l->limit[k].kind == LIMIT_HAPPENING;
	}
	return first && asked;
}

int
happening_count(const struct due_list *l, gint64 kind, gint64 date)
{
	int n = 0;

	for (int i = 0; i < due_count(l); i++)
		n += happening_asks(due_at(l, i), kind) && !due_done_since(&due_at(l, i)->in.since, date);
	return n;
}

GArray *
book_skips(struct book *b, gint64 boat, GError **err)
{
	return book_records(b, RECORD_SKIP, boat, err);
}

const struct skip *
happening_skip(const GArray *skips, gint64 task, gint64 date)
{
	const struct skip *s = (const void *)skips->data;

	for (guint i = skips->len; i-- > 0;)
		if (s[i].task == task && s[i].list == NONE && s[i].date >= date)
			return &s[i];
	return NULL;
}

/* The boat's open happenings; NULL and *err. */
static GArray *
open_ones(struct book *b, gint64 boat, GError **err)
{
	return book_gather(b, RECORD_HAPPENING, SQL_HAPPENINGS_OPEN, boat, err);
}

/* The tasks left to do, by their names, after one that happened. */
static void
add_left(GString *out, const struct due_list *l, const GArray *skips, const struct happening *h, int *n)
{
	for (int i = 0; i < due_count(l); i++) {
		const struct due_line *d = due_at(l, i);

		if (!happening_asks(d, h->kind) || due_done_since(&d->in.since, h->date) || happening_skip(skips, d->id, h->date))
			continue;
		if (++*n <= 5)
			g_string_append_printf(out, "%s%s", *n > 1 ? ", " : "", d->name);
	}
	if (*n > 5)
		g_string_append_printf(out, " and %d more", *n - 5);
}

static gboolean
nothing_left(struct book *b, const struct boat *boat, const struct happening *h, const struct due_list *l, GError **err)
{
	g_autoptr(GArray) skips = book_skips(b, boat->id, err);
	g_autoptr(GString) left = g_string_new(NULL);
	char d[16];
	int n = 0;

	if (!skips)
		return FALSE;
	add_left(left, l, skips, h, &n);
	return !n
	    || err_set(err, ERR_CONFLICT,
		       "the %s of %s still asks for %d %s: %s. Each is done, or passed over with a reason: happening %s "
		       "--skip TASK --reason TEXT",
		       word_of(&words_happening, h->kind), day_words(h->date, d), n, n == 1 ? "task" : "tasks", left->str,
		       word_of(&words_happening, h->kind));
}

/* The due list as of today, for what was done. */
static struct due_list *
list_today(struct book *b, const struct boat *boat, GError **err)
{
	struct due_list *l = due_list_new();

	if (book_due(b, boat, &(struct due_ask){ b->who.today, NONE }, l, err))
		return l;
	due_list_free(l);
	return NULL;
}

static gboolean
close_all(struct book *b, const struct boat *boat, gint64 kind, gint64 date, int *closed, GError **err)
{
	g_autoptr(GArray) all = open_ones(b, boat->id, err);
	struct due_list *l = all ? list_today(b, boat, err) : NULL;
	struct happening *h = l ? (void *)all->data : NULL;
	gboolean ok = l != NULL;

	for (guint i = 0; ok && i < all->len; i++)
		if (h[i].kind == kind && h[i].date <= date) {
			h[i].closed = date;
			ok = nothing_left(b, boat, &h[i], l, err) && book_put(b, RECORD_HAPPENING, &h[i], err);
			++*closed;
		}
	if (l)
		due_list_free(l);
	return ok && (*closed || err_set(err, ERR_NOT_FOUND, "no %s is open", word_of(&words_happening, kind)));
}

gboolean
book_close_happening(struct book *b, const struct boat *boat, gint64 kind, gint64 date, int *closed, GError **err)
{
	char d[DAY_TEXT];

	*closed = 0;
	if (date > b->who.today)
		return err_set(err, ERR_INPUT, "%s lies ahead of today", day_iso(date, d));
	return book_begin(b, err)
	    && book_end(b, close_all(b, boat, kind, date, closed, err), err, "%s closed", word_of(&words_happening, kind));
}

/* Whether an open happening of the kind asks for the task, and it was not done since. */
static gboolean
still_asked(struct book *b, const struct boat *boat, gint64 kind, const struct task *t, GError **err)
{
	g_autoptr(GArray) all = open_ones(b, boat->id, err);
	struct due_list *l = all ? list_today(b, boat, err) : NULL;
	const struct due_line *d = l ? due_find(l, t->id) : NULL;
	const struct happening *h = all ? (const void *)all->data : NULL;
	gboolean asked = FALSE, ok = l != NULL;

	for (guint i = 0; d && i < all->len; i++)
		asked = asked || (h[i].kind == kind && happening_asks(d, kind) && !due_done_since(&d->in.since, h[i].date));
	if (l)
		due_list_free(l);
	return ok && (asked || err_set(err, ERR_CONFLICT, "no open %s asks for %s", word_of(&words_happening, kind), t->name));
}

gboolean
book_skip_for_happening(struct book *b, const struct boat *boat, gint64 kind, const char *task, const char *reason, GError **err)
{
	struct skip s;
	struct task t;
	gboolean ok;

	if (!reason || !reason[strspn(reason, " \t\n")])
		return err_set(err, ERR_INPUT, "why is it passed over? a reason is wanted");
	if (!book_find_task(b, boat->id, task, &t, err))
		return FALSE;
	record_init(RECORD_SKIP, &s);
	s.boat = boat->id;
	s.task = t.id;
	s.date = b->who.today;
	s.reason = g_strdup(reason);
	s.who = g_strdup(b->who.name);
	ok = still_asked(b, boat, kind, &t, err) && book_begin(b, err)
	  && book_end(b, book_put(b, RECORD_SKIP, &s, err), err, "%s: %s passed over", word_of(&words_happening, kind), t.name);
	record_clear(RECORD_SKIP, &s);
	record_clear(RECORD_TASK, &t);
	return ok;
}
