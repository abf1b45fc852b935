/* What the files about findings share; nobody else includes this. */
#ifndef LOGBOOK_FINDING_INSIDE_H
#define LOGBOOK_FINDING_INSIDE_H

#include "logbook/finding.h"
#include "logbook/inside.h"

/* What the rules say of a finding; reading NULL: none was taken with it.  Fills p anew, which held nothing. */
gboolean finding_propose(struct book *b, const struct finding *f, const struct measure_form *reading,
			 struct finding_proposal *p, GError **err);

#endif
