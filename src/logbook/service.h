/* Work done on a task, and what that restarts. */
#ifndef LOGBOOK_SERVICE_H
#define LOGBOOK_SERVICE_H

#include "logbook/stores_take.h"

struct service_form {
	struct service what; /* task, date, outcome (NONE: as the verb suggests), reading, made, seen, ... */
	struct part part; /* number and made of what went in, when something was renewed */
	const char *variant; /* design of what went in; NULL: as before */
	const char *filled; /* type and quantity of the fluid that went in, "mineral 15W-40, 4.2 L"; NULL: not said */
	const char *engine; /* whose meter was read; NULL: the fitting's, or the only one */
	/* n_used of them: what it took of the stores; the first gives number and date made, where none is said.  Corrected, it took
	 * that instead of what it took before. */
	const struct store_use *used;
	int n_used;
	gboolean used_none; /* corrected: what it took before is put back */
	gboolean dated; /* a day was said; else one follows from the hours, when those were */
	gboolean sure;
	/* Writes what belongs to it in the same transaction, its key given; NULL: nothing does. */
	gboolean (*also)(struct book *b, gint64 service, void *user, GError **err);
	void *user;
};

struct service_said {
	gboolean counts; /* it restarts the task's clock */
	char *why_not; /* else why not */
	gint64 hours; /* the engine's hours at the work; NONE: unknown */
	gint64 unlogged; /* seconds that the reading showed and no outing told of; 0 none */
	char *repeated; /* as book_repeated(), once it is recorded */
	char *used; /* what was taken of the stores, lot by lot, a line an item; NULL: nothing */
	char *mixed; /* another fluid than before went in; NULL: not so */
};
void service_said_clear(struct service_said *s);

/* A date made or printed on a thing, as typed: a day, or "2019", "spring 2021", of which the first day counts; of what may be
 * kept for twelve years or more, as extinguishers are, the last (33 CFR 175 subpart E: to 31 December of the 12th year). */
gboolean book_made(struct book *b, const struct task *t, const char *text, gint64 *made, GError **err);

gboolean book_did(struct book *b, struct service_form *form, struct service_said *said, GError **err);

/* Whether a service of that outcome restarts the clock of a task of that rule and consequence. */
gboolean service_restarts(gint64 rule, gint64 consequence, gint64 outcome);

/* Of greasing, tightening and changing: "done already on 3 Apr 2026 by Yard, 4.2 h ago; both are kept", when another
 * service that counts lies within 30 days, or 10 hours run and half a year; NULL otherwise.  The caller's. */
char *book_repeated(struct book *b, const struct service *s, GError **err);

/* The outcome when none was said: renewed, good or done, as the task's verb and rule have it. */
enum outcome service_usual_outcome(const struct task *task);

#endif
