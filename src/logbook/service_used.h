/* What a service took of the stores. */
#ifndef LOGBOOK_SERVICE_USED_H
#define LOGBOOK_SERVICE_USED_H

#include "logbook/service.h"

/* Of what was renewed: number and date made, where none is said, from the lot that is used first. */
gboolean service_fill_used(struct book *b, struct service_form *f, GError **err);
/* Take it, within the command that records the service, and the job's that it is part of.  Corrected, it takes that instead of what
 * it took before; with nothing said of it, what it took goes to its day.  ERR_DOUBT as of stores_take(), or when it would be taken
 * before it arrived. */
gboolean service_take_used(struct book *b, const struct task *t, const struct service_form *f, char **said, GError **err);

#endif
