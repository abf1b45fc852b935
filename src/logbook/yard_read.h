/* Inside the reading of a filled sheet: one line of it, matched and understood. */
#ifndef LOGBOOK_YARD_READ_H
#define LOGBOOK_YARD_READ_H

#include "logbook/inside.h"
#include "logbook/yard.h"
#include "logbook/yard_answer.h"

struct yard_row {
	struct book *b;
	const struct boat *boat;
	struct sheetline line;
	struct sheet sheet;
	struct yard_answer answer;
	gint64 date; /* of the work */
	struct task task; /* id NONE: the line is a finding's */
	struct finding finding;
	GArray *also; /* gint64, tasks done with it */
	const char *variant; /* NULL: as before */
};

/* "yard sheet of 2026-11-25, line 3 (KEY OF THE SHEET): ", with which begins what is kept of a line's answer; the caller's. */
char *yard_mark(const struct sheet *sheet, const struct sheetline *line);

/* Whether it can be taken: nothing is written. */
gboolean yard_may_take(struct yard_row *r, GError **err);
/* Into the log, within a command that is under way; *t says what, and what it cost. */
gboolean yard_take(struct yard_row *r, struct yard_took *t, GError **err);

#endif
