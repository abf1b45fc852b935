/* Tables of the folder of what is shipped with the program, which an owner may edit. */
#ifndef LOGBOOK_SHIPPED_H
#define LOGBOOK_SHIPPED_H

#include "exchange/table.h"
#include "logbook/book.h"

/* The file of that name in a folder of catalogues, read as table_read does.  A folder of NULL is an error. */
struct table *shipped_table(const char *folder, const char *file, const char *const *columns, GError **err);
/* Whether a row has all columns of wanted, which ends with -1; *err "file:line: column: ...". */
gboolean shipped_row_is_whole(const struct table *t, guint row, const char *const *columns, const int *wanted, GError **err);

/* The folder of catalogues that is shipped; the caller's.  NULL: none is known. */
char *book_catalogue(const struct book *b);

#endif
