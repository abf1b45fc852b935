/* The kinds of readings, out of the shipped readings.csv: what can be measured, in which unit, how, and its limits.  The file
 * is read once a book, when the first of them is asked for. */
#ifndef LOGBOOK_READINGS_H
#define LOGBOOK_READINGS_H

#include "engine/condition.h"
#include "logbook/book.h"

struct readings;

/* Of a folder of catalogues.  NULL, and *err "readings.csv:12: what is wrong". */
struct readings *readings_read(const char *folder, GError **err);
void readings_free(struct readings *r); /* NULL: nothing */
/* Of the book's folder, borrowed: they hold as long as the book is open. */
const struct readings *book_readings(struct book *b, GError **err);

/* In the order of the file. */
guint readings_count(const struct readings *r);
const struct condition_kind *readings_nth(const struct readings *r, guint i);
/* The kind that is called exactly so; NULL: there is none. */
const struct condition_kind *readings_find(const struct readings *r, const char *what);

#endif
