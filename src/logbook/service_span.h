/* Work of which the day is not known. */
#ifndef LOGBOOK_SERVICE_SPAN_H
#define LOGBOOK_SERVICE_SPAN_H

#include "logbook/book.h"

/* Whether the bounds of a service agree with each other. */
gboolean service_span_check(const struct service *s, GError **err);

/* Bring a service's hours and days together: where only hours are known (dated FALSE), date and earliest become the
 * days between which the log has the engine at those hours; before the log, since the boat was built.  engine NULL:
 * the only one.  ERR_CONFLICT when nobody knows what the engine ran before the log. */
gboolean service_span_place(struct book *b, const struct task *t, const char *engine, gboolean dated, struct service *s,
			    GError **err);

#endif
