/* What was filled in: the type and quantity of an oil or a coolant, and whether it is another than before.
 *
 * It is kept as a part of the fitting, "fluid: mineral 15W-40, 4.2 L", which no other task counts from. */
#ifndef LOGBOOK_FLUID_H
#define LOGBOOK_FLUID_H

#include "logbook/service.h"

/* Records form->filled; a change takes out what was in before, a top-up joins it.  *note gets a word, the caller's, when
 * the types differ; it stays as it is otherwise.  ERR_INPUT when the task is about no fluid, or nothing was filled in. */
gboolean fluid_fill(struct book *b, const struct task *t, const struct service_form *form, char **note, GError **err);

/* Of two texts such as "mineral 15W-40, 4.2 L": whether they name the same type, quantities, case and blanks apart.  One
 * that names no type is of any. */
gboolean fluid_same_type(const char *a, const char *b);

#endif
