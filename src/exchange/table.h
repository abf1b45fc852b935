/* A small table of texts out of a CSV file, read whole: for the knowledge that is shipped and that an owner may edit. */
#ifndef EXCHANGE_TABLE_H
#define EXCHANGE_TABLE_H

#include <glib.h>

struct table;

/* Read a file that has at least the columns named, which end with NULL; others are left out, and their order is free.
 * NULL and *err, "file:line: what is wrong", for one that is not there, is no CSV, or has rows of another width. */
struct table *table_read(const char *path, const char *const *columns, GError **err);
/* The same of a file that another program wrote, with commas or semicolons, a decimal point or comma: of the columns the first
 * `must` are wanted, and of the others those that are not there are empty. */
struct table *table_read_foreign(const char *path, const char *const *columns, int must, GError **err);
void table_free(struct table *t); /* NULL: nothing */

guint table_rows(const struct table *t);
/* The text in the k-th column named, borrowed; NULL where the field is empty. */
const char *table_cell(const struct table *t, guint row, int column);
/* In which line of the file a row begins. */
gint64 table_line(const struct table *t, guint row);
/* Put "file:line: " of that row before a message; returns FALSE. */
gboolean table_prefix(const struct table *t, guint row, GError **err);

#endif
