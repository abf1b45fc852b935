/* What the files of the catalogue share; nobody else includes this. */
#ifndef LOGBOOK_CATALOGUE_INSIDE_H
#define LOGBOOK_CATALOGUE_INSIDE_H

#include "logbook/catalogue.h"
#include "logbook/caution.h"
#include "logbook/readings.h"

struct catalogue *catalogue_new(void);
/* Take a record over, whose texts are the part's then; ERR_INPUT when its name is there already. */
gboolean catalogue_add(struct catalogue_part *p, void *record, const struct catalogue_from *from, GError **err);

/* Whether a field is the catalogue's to say, and what it says, "" for nothing; the caller's. */
gboolean catalogue_says(const struct field *f);
char *catalogue_cell(const struct field *f, const void *record);
/* Digests of what a catalogue says of a fitting; of a task on the fitting of that path, with those of the limits whose
 * task is its id.  The caller's. */
char *catalogue_fitting_digest(const struct fitting *f);
char *catalogue_task_digest(const struct task *t, const char *path, const GArray *limits);

/* Add a problem, whose text is taken, unless it is known. */
void catalogue_problem(GPtrArray *problems, char *text);
/* What is wrong with the rows of a kind, beyond what reading them finds.  Of what tells readings and cautions NULL: it can't
 * be read, and their names are not checked. */
struct catalogue_names {
	const struct readings *readings;
	const struct cautions *cautions;
};
void catalogue_check_rows(const struct catalogue *c, const struct catalogue_names *names, GPtrArray *problems);

#endif
