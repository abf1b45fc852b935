/* Whether a piece of work was done shortly before: greased twice, by two who did not know of each other. */
#include "logbook/service.h"

#include "base/amount.h"
#include "base/date.h"
#include "logbook/inside.h"
#include "logbook/outing.h"

/* Two services lie close within so many days, or within so many hours run; a boat that lay still is greased by the calendar
 * again, and after half a year that is no repeat. */
enum { CLOSE_DAYS = 30, CLOSE_SECONDS = 10 * 3600, FAR_DAYS = 182 };

static gboolean
is_repeatable(gint64 verb)
{
	static const char *const verbs[] = { "grease", "tighten", "change" };

	for (guint i = 0; i < G_N_ELEMENTS(verbs); i++)
		if (verb == word_index(&words_verb, verbs[i]))
			return TRUE;
	return FALSE;
}

/* The service of that task that counts and lies nearest; its id is NONE when there is none.  Clear it. */
static gboolean
find_near(struct book *b, const struct task *t, const struct service *s, struct service *near, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_SERVICES_NEAR);
	struct service one;

	record_init(RECORD_SERVICE, near);
	record_init(RECORD_SERVICE, &one);
	cells_bind(c, 1, t->id);
	cells_bind(c, 2, s->date - FAR_DAYS);
	cells_bind(c, 3, s->date + FAR_DAYS);
	while (cells_next_record(c, RECORD_SERVICE, &one)) {
		struct service was = *near;

		if (one.id == s->id || one.earliest != NONE || !service_restarts(t->rule, t->consequence, one.outcome)
		    || (near->id != NONE && ABS(one.date - s->date) > ABS(near->date - s->date)))
			continue;
		*near = one;
		one = was;
	}
	record_clear(RECORD_SERVICE, &one);
	return cells_close(c, err);
}

/* Seconds that the fitting's engine ran from the earlier of two services to the later; NONE: not one engine's hours. */
static gboolean
ran_between(struct book *b, const struct task *t, const struct service *from, const struct service *to, gint64 *ran,
	    GError **err)
{
	struct engine_hours before, after;
	struct engine e;
	gboolean ok = TRUE;

	*ran = NONE;
	if (book_engine_of(b, t, NULL, &e, NULL)) {
		ok = book_engine_hours(b, &e, from->date, &before, err) && book_engine_hours(b, &e, to->date, &after, err);
		if (ok)
			*ran = MAX(0, after.logged - MAX(to->after, 0) - before.logged + MAX(from->after, 0));
	}
	record_clear(RECORD_ENGINE, &e);
	return ok;
}

static char *
repeat_words(const struct service *near, const struct service *s, gint64 ran)
{
	gint64 days = ABS(near->date - s->date);
	char day[16], hours[HOURS_TEXT];
	g_autofree char *apart = ran != NONE   ? g_strdup_printf("%s h", hours_words(ran, hours))
			       : days == 1 ? g_strdup("1 day")
					   : g_strdup_printf("%d days", (int)days);
	gboolean before = near->date <= s->date;

	return g_strdup_printf("done %s on %s%s%s, %s %s; both are kept", before ? "already" : "again", day_words(near->date, day),
			       near->who ? " by " : "", near->who ? near->who : "", apart, before ? "ago" : "later");
}

char *
book_repeated(struct book *b, const struct service *s, GError **err)
{
	struct service near;
	struct task t;
	gint64 ran;
	gboolean ok;
	char *words = NULL;

	record_init(RECORD_TASK, &t);
	record_init(RECORD_SERVICE, &near);
	ok = row_get(b->db, RECORD_TASK, s->task, &t, err);
	if (ok && s->date != NONE && s->earliest == NONE && is_repeatable(t.verb)
	    && service_restarts(t.rule, t.consequence, s->outcome) && find_near(b, &t, s, &near, err) && near.id != NONE) {
		const struct service *from = near.date <= s->date ? &near : s, *to = from == s ? &near : s;

		if (ran_between(b, &t, from, to, &ran, err)
		    && (to->date - from->date <= CLOSE_DAYS || (ran != NONE && ran <= CLOSE_SECONDS)))
			words = repeat_words(&near, s, ran);
	}
	record_clear(RECORD_SERVICE, &near);
	record_clear(RECORD_TASK, &t);
	return words;
}
