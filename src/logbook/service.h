/* Work done on a task, and what that restarts. */
#ifndef LOGBOOK_SERVICE_H
#define LOGBOOK_SERVICE_H

#include "logbook/book.h"

struct service_form {
	struct service what; /* task, date, outcome (NONE: as the verb suggests), reading, made, seen, ... */
	struct part part; /* number and made of what went in, when something was renewed */
	const char *variant; /* design of what went in; NULL: as before */
	const char *engine; /* whose meter was read; NULL: the fitting's, or the only one */
	gboolean dated; /* a day was said; else one follows from the hours, when those were */
	gboolean sure;
};

struct service_said {
	gboolean counts; /* it restarts the task's clock */
	char *why_not; /* else why not */
	gint64 hours; /* the engine's hours at the work; NONE: unknown */
	gint64 unlogged; /* seconds that the reading showed and no outing told of; 0 none */
};
void service_said_clear(struct service_said *s);

gboolean book_did(struct book *b, struct service_form *form, struct service_said *said, GError **err);

/* Whether a service of that outcome restarts the clock of a task of that rule and consequence. */
gboolean service_restarts(gint64 rule, gint64 consequence, gint64 outcome);

/* The outcome when none was said: renewed, good or done, as the task's verb and rule have it. */
enum outcome service_usual_outcome(const struct task *task);

#endif
