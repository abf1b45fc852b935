/* The season's work as guided lists: commissioning, the first day afloat, the look in mid-season, haul-out, lay-up, sea trial.
 * A list is worked out of what is on record and of nothing else, so it goes on on any day and on any machine.
 *
 * What stands on one: tasks of the boat's design that have the list's event among their limits; what the due list has for that
 * opportunity, or had before it was done; and tasks that lists.csv names in full and that have no time of their own, for the sea
 * trial also those that have.  What nobody knows is for commissioning, unless it is asked for at other events only.  What haul-out
 * or lay-up ask for and was not done then is for commissioning, too; done in the first half of the winter, it was done for those.
 *
 * What is done: a service that counts, on a day after the fixed point of the boat's year before the list's event (see
 * event_meant; a boat without seasons: within the last twelve months), the whole of its span; a new part counts as the looking at
 * it.  What was passed over since that point, and not done since, stays open and due.
 *
 * Order: the sections of lists.csv (logbook/season_order.h); within one by what must come off first, what opens together together
 * and the worst first, as in the due list; then by consequence and name.  What no section takes comes last. */
#ifndef LOGBOOK_SEASON_LIST_H
#define LOGBOOK_SEASON_LIST_H

#include "logbook/due.h"
#include "logbook/service.h"

enum season_state { SEASON_OPEN, SEASON_DONE, SEASON_PASSED };
const char *season_state_word(enum season_state state); /* open, done, passed-over: shown, never stored */

struct season_line {
	int at; /* the line of the due list */
	const struct due_line *due; /* the same: task, label, title, place, what must come off, proof, part, caution, why due */
	const char *section, *heading; /* of lists.csv; "also-due" and its heading for what no row took */
	const char *note, *source; /* of the row that took it, the source with its standing; NULL: none */
	enum season_state state;
	gint64 service; /* that ticked it; NONE: it was a new part */
	gint64 skip; /* that it was passed over by */
	gint64 when; /* day of either */
	const char *words, *who; /* the reason, or what was seen and proved; who said so; NULL: nothing */
};

/* Opaque but for what is named; reused from list to list. */
struct season_work {
	enum season_list list;
	gint64 boat;
	gint64 day; /* of the list's event; NONE: the boat has no seasons */
	gint64 after; /* work counts for it when done after that day */
	int done, passed;
	GArray *lines; /* struct season_line */
	struct due_list *due; /* as of today */
	struct due_list *undone; /* inside */
	GStringChunk *chunk; /* inside */
};
struct season_work *season_work_new(void);
void season_work_free(struct season_work *w);
gboolean book_season_work(struct book *b, const struct boat *boat, enum season_list list, struct season_work *w, GError **err);
guint season_lines(const struct season_work *w);
const struct season_line *season_line(const struct season_work *w, guint i);
/* The words of all cautions that its lines need, each once; the caller's. */
char *season_cautions(const struct season_work *w);

/* "Commissioning". */
const char *season_list_title(enum season_list list);
/* The whole list for other programs: CSV, a line a task, or JSON; the caller's. */
char *season_csv(const struct season_work *w);
char *season_json(const struct season_work *w, const char *boat);

/* "Commissioning, launch 15 Apr 2027: 12 of 31 done, 2 passed over"; the caller's. */
char *season_head(const struct season_work *w);
/* The list that comes next by the boat's year: lay-up until half of the winter is over, then commissioning, the first day on the
 * day of the launch, mid-season up to its day, haul-out up to its. */
enum season_list season_next(const struct due_list *l);
/* The day of a list's event, by the boat's year; NONE. */
gint64 season_list_day(const struct due_list *l, enum season_list list);

/* Tick a line: the work was done, with the usual outcome.  It is book_did() and nothing else. */
struct season_tick {
	gint64 task, date;
	const char *seen, *proof, *who; /* NULL: not said */
};
gboolean book_season_tick(struct book *b, const struct season_work *w, const struct season_tick *t, struct service_said *said,
			  GError **err);
/* Pass a line over: it stays open and due.  s: task, date, reason, who; the rest is filled in.  A reason that is blank, a day that
 * is none of the list's, and what is done already are refused. */
gboolean book_season_pass(struct book *b, const struct season_work *w, struct skip *s, GError **err);

#endif
