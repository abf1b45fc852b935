/* Whether a folder of catalogues holds together. */
#ifndef LOGBOOK_CATALOGUE_CHECK_H
#define LOGBOOK_CATALOGUE_CHECK_H

#include <glib.h>

/* Read every kind of boat in kinds.csv, and what lies beside it.  counts gets a line a kind and fuel, "jet petrol: 98
 * fittings, 120 tasks, 310 limits", problems a line each, "file:line: what is wrong" (both of char *, owned).  TRUE when
 * there is no problem. */
gboolean catalogue_check(const char *folder, GPtrArray *counts, GPtrArray *problems);

#endif
