/* The yard sheet: the work list handed to a yard, on paper and as CSV, and what the yard wrote on it taken back into the log. */
#ifndef LOGBOOK_YARD_H
#define LOGBOOK_YARD_H

#include "base/paper.h"
#include "logbook/due.h"

#include <stdio.h>

struct yard_form {
	struct due_ask ask;
	/* Names of tasks and keys of open findings; NULL: what is to be done by ask.until, else before the launch, what can sink,
	 * burn or hurt and nobody knows of, and every open finding. */
	char **what;
	char **mine; /* what the owner does, of those or besides them; NULL: nothing */
	gboolean for_yard, for_owner; /* whose lines stand on it, the yard's first */
	gboolean without_names; /* leave out the boat's name */
};

/* Where it goes; a file that exists is not written over, "-" is the stream. */
struct yard_out {
	const char *csv, *text, *pdf; /* NULL: not wanted */
	FILE *stream;
	gboolean for_spreadsheet;
	enum paper_size paper;
	const char *modules; /* folder of the program's modules */
};

/* Write a sheet and keep it on record with its lines, by whose keys it can be read back: one entry of the journal.  *lines: how
 * many it has.
 *
 * Order: what holds the launch first, then what is to be mended this season, then what is to be watched; of each first what needs
 * nothing open, by the parts of the boat, then what does.  Lines behind the same opening stay together, in the order in which one
 * gets at them, where the worst of them stands.  A line depends on the first behind its opening, a finding on the work that it asks
 * for. */
gboolean book_yard(struct book *b, const struct boat *boat, const struct yard_form *form, const struct yard_out *out, int *lines,
		   GError **err);

/* How many lines such a sheet would have, by enum line_whose; nothing is written. */
gboolean book_yard_count(struct book *b, const struct boat *boat, const struct yard_form *form, int lines[2], GError **err);

/* A sheet that was handed out. */
struct yard_sheet {
	gint64 id, date;
	int lines, owners, answered; /* owners: of the lines, those that the owner does */
};
/* All of a boat's, the newest first: an array of struct yard_sheet.  NULL and *err. */
GArray *book_yard_sheets(struct book *b, gint64 boat, GError **err);
char *yard_sheet_words(const struct yard_sheet *s); /* "25 Nov 2026: 4 lines, 3 answered"; the caller's */

/* A line of it, and what came of it. */
struct yard_shown {
	struct sheetline line; /* answer NULL: none yet */
	char *name, *title; /* of its task; a finding has no name, and its words */
	char *answer; /* as the yard wrote it, "replaced; 2.5 h; see the photo"; NULL: none, or it stands nowhere any more */
	char *became; /* "renewed on 20 Nov 2026 by JW, all folds sound, 85.00 EUR", as the log has it now; NULL: no answer */
	gboolean settled; /* nothing of it is left to do: the work counts, the finding is mended */
};
/* An array of them that clears itself; NULL and *err. */
GArray *book_yard_lines(struct book *b, gint64 sheet, GError **err);
GArray *book_yard_all_lines(struct book *b, gint64 boat, GError **err); /* of all its sheets; line.sheet says which */
/* The sheets, a line each, and under it the lines without an answer; the caller's.  "" for none; NULL and *err. */
char *book_yard_open(struct book *b, gint64 boat, GError **err);

/* What a yard can answer in yard_result.  Any of the words of its kind, case apart, alone or before what was seen: "done; fresh
 * grease all round", "replaced: all folds sound".
 *   done            done, carried out, completed
 *   renewed         renewed, replaced, changed, new, fitted
 *   good            good, ok, sound, no fault found
 *   bad             bad, worn, failed, not ok
 *   topped-up       topped up
 *   not done        not done, left, declined, waiting for parts, quote, quoted */
struct yard_read_form {
	const char *path; /* of the filled CSV */
	gboolean dry_run; /* say all, keep nothing */
	gint64 date; /* of answers without one; NONE: such an answer is not taken */
	char **also; /* "3=NAME": what was done on line 3 was that task, too; NULL: nothing */
	char **variant; /* "3=WORD": the design that line 3 put in */
};

enum yard_state { YARD_TAKEN, YARD_AS_BEFORE, YARD_UNANSWERED, YARD_REFUSED, YARD_STATES };
struct yard_took {
	enum yard_state state;
	/* "line 3, gimbal-bearing.grease: done on 20 Nov 2026 by JW, 85.00 EUR"; refused: "list.csv:4: why"; else which line */
	char *words;
	gint64 cost; /* cents that were put on record; NONE */
	char currency[4]; /* "" not said */
};
struct yard_said {
	GArray *lines; /* struct yard_took, as the file has them */
	int count[YARD_STATES];
};
void yard_said_clear(struct yard_said *s);
char *yard_said_costs(const struct yard_said *s); /* sums of what was put on record: "85.00 EUR, 12.00"; "" none; the caller's */

/* Take a filled sheet back, one entry of the journal: lines are matched by key and number and by nothing else.
 * A task becomes a service: claimed, unless the result tells what was seen.  What is bad is so whatever the result tells, and opens
 * a finding on the fitting.  The meter's reading stands in the service if it can be so, else in its remark.  Not done, the task is
 * passed over and stays due.  A finding is mended, but one that holds the launch only by what was seen; else what was answered
 * goes into its remark, and so does the cost of a finding without a task.
 * A line that does not match, cannot be understood, or was answered otherwise before is refused, and the others are taken; what
 * was read before, just so, changes nothing.  FALSE and *err when nothing could be read, or written. */
gboolean book_yard_read(struct book *b, const struct boat *boat, const struct yard_read_form *form, struct yard_said *said,
			GError **err);

#endif
