/* lists.csv: the sections of a season's list, and which of them takes a task.  A row's match is words separated by blanks: with a
 * dot or a star a name of tasks, or a pattern of names; else a path and what lies below it.  A row that names a task in full
 * takes it, else the first that matches.  In a row names and patterns go in the order in which they are written, and what its
 * paths take goes where the first of them stands.  Of twins the side ("port/", "port-") is left aside. */
#ifndef LOGBOOK_SEASON_ORDER_H
#define LOGBOOK_SEASON_ORDER_H

#include "logbook/due.h"

struct season_order;

struct season_row {
	int rank; /* its place in the file */
	int place; /* in the row, of what took the task */
	const char *section, *heading, *note; /* borrowed; the note may be NULL */
	const char *source; /* of the note, with its standing; NULL: none */
};

/* Of the folder of what is shipped; without that file, or with NULL, there are no sections.  NULL and *err for a wrong one. */
struct season_order *season_order_read(const char *data, enum season_list list, GError **err);
void season_order_free(struct season_order *o);
/* The row that takes a task, by its name and the path of its fitting; NULL: none does. */
const struct season_row *season_order_row(const struct season_order *o, const char *name, const char *path);
/* Whether a row names the task in full. */
gboolean season_order_names(const struct season_order *o, const char *name, const char *path);

#endif
