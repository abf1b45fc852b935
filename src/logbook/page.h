/* What screens ask of a logbook that stays open: changes by others, pages of long lists, sums by the month. */
#ifndef LOGBOOK_PAGE_H
#define LOGBOOK_PAGE_H

#include "logbook/book.h"

/* A number that changes when another program has changed the file. */
gint64 book_version(struct book *b);
/* The time goes on while a book is open: entries made from now on say so. */
void book_clock(struct book *b, gint64 now, gint64 today);
/* Many reads of one state, for a book open for writing.  Between the two nothing may be recorded, and other programs wait. */
gboolean book_hold(struct book *b, GError **err);
void book_release(struct book *b);

/* A page of a boat's outings: at most `newer` rows after the place (date, id) in its log, and `older` from there back. */
struct outings_page {
	gint64 boat, date, id;	/* date NONE: from the newest; DAY_FIRST: from the oldest */
	int newer, older;
};
/* Newest first: an array of struct outing that clears itself. */
GArray *book_outings_page(struct book *b, const struct outings_page *page, GError **err);
/* A record by its key; it is to be cleared, also when this fails.  ERR_NOT_FOUND. */
gboolean book_record(struct book *b, enum record r, gint64 id, void *record, GError **err);

struct month_sum { int year, month, outings; gint64 seconds; };	/* month 1 to 12; of all engines together */
/* The months with outings, oldest first. */
GArray *book_hours_by_month(struct book *b, gint64 boat, GError **err);

/* What an engine's meter shows by the log at the end of a day: its last reading and the hours typed since.  NONE: it has no
 * meter.  */
gboolean book_meter_shows(struct book *b, const struct engine *e, gint64 day, gint64 *reading, GError **err);
/* The same as if an outing, by the key of its first row, were not in the log: what is corrected says nothing of what was
 * before it.  NONE: all of the log. */
gboolean book_meter_before(struct book *b, const struct engine *e, gint64 day, gint64 outing, gint64 *reading, GError **err);

#endif
