/* What the journal tells of the making of a logbook: what was corrected, and how long after its day a thing was put on record. */
#ifndef LOGBOOK_CORRECTIONS_H
#define LOGBOOK_CORRECTIONS_H

#include "logbook/book.h"
#include "store/journal.h"

/* Each change of the entries in force, oldest first: what was taken back, and each undo and redo itself, is left out. */
typedef void book_change(void *user, const struct book_entry *e, const struct change *c);
gboolean book_each_change(struct book *b, book_change *each, void *user, GError **err);

enum { SOON_DAYS = 31 };

/* Of the whole logbook. */
struct corrections {
	gint64 entries; /* all */
	gint64 undone; /* taken back, and not brought back */
	/* Records of that kind in which what was known before was written otherwise, and those taken out; a field filled in later,
	 * a day on which something ended, and what the program works out by itself are no corrections. */
	gint64 altered[RECORD_COUNT], removed[RECORD_COUNT];
	gint64 soon[RECORD_COUNT], late[RECORD_COUNT]; /* entered within SOON_DAYS of their day; later */
};
gboolean book_corrections(struct book *b, struct corrections *c, GError **err);
/* Whether corrections of such a record are told: it says what happened on a day, and not what is planned. */
gboolean corrections_count(enum record r);

#endif
