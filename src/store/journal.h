/* The journal of a logbook: one entry for each command that changed anything, each with its changes, chained by
 * hashes.  Undo and redo are entries too: nothing that was written is lost. */
#ifndef STORE_JOURNAL_H
#define STORE_JOURNAL_H

#include "model/record.h"
#include "store/db.h"

struct entry {
	gint64 seq;	/* 1, 2, 3, ... */
	gint64 at;	/* UTC seconds */
	char *who, *device, *what;
	gint64 schema;	/* of the file when it was written */
	gint64 undoes;	/* the entry whose inverse this is; NONE */
	gint64 redoes;	/* the undoing entry whose inverse this is; NONE */
	gint64 undone_by;	/* the entry that took it back; NONE.  Filled by journal_list */
	gint64 size;	/* bytes of its changes */
	guint8 previous[32], hash[32];
};

/* The newest limit entries, newest first; all for 0.  An array of struct entry *, which it frees. */
GPtrArray *journal_list(struct db *db, int limit, GError **err);

/* Take back the newest entry that is not itself taken back, as a new entry; its number in *seq (may be NULL).
 * Again and again it goes further back.  ERR_NOT_FOUND when there is none left, ERR_CONFLICT when the rows are not as
 * that entry left them (nothing is changed then).  head->what may be NULL. */
gboolean journal_undo(struct db *db, const struct entry_head *head, gint64 *seq, GError **err);
/* Take back the newest undo.  ERR_NOT_FOUND when there is none, or another command came after it. */
gboolean journal_redo(struct db *db, const struct entry_head *head, gint64 *seq, GError **err);

enum change_kind { CHANGE_ADDED, CHANGE_ALTERED, CHANGE_REMOVED };

struct change {
	enum record record;
	enum change_kind kind;
	gint64 id;
	guint64 fields;	/* bit i: field i of record_type(record) differs; every bit when added or removed */
	/* Records in which those fields and the key are filled; before is NULL when added, after when removed. */
	const void *before, *after;
};

/* Call each for every row that an entry changed. */
gboolean journal_changes(struct db *db, gint64 seq, void (*each)(void *context, const struct change *),
			 void *context, GError **err);

#endif
