/* The due list: every task of a boat, when it is to be done, and on what ground. */
#ifndef LOGBOOK_DUE_H
#define LOGBOOK_DUE_H

#include "engine/condition.h"
#include "engine/due.h"
#include "logbook/book.h"

/* The reading that one of a task's limits goes by. */
struct due_reading {
	int limit; /* which of the line's limits */
	const struct condition_kind *kind;
	gint64 date;
	const char *as_read;
	enum verdict verdict; /* never VERDICT_NONE */
	struct edge passed; /* value NAN when good */
	gint64 standing; /* words_standing, of the limits it was held to */
	const char *source;
	gboolean another_way; /* than the one before it was it read: no trend */
	gboolean cleared; /* it said stop, and the work was done since */
	gint64 units; /* words_units, to show it in */
};

/* An open finding that asks for a task which was not done since. */
struct due_finding {
	gint64 id, task, date, level;
	const char *words; /* as typed */
};

struct due_line {
	gint64 id, fitting_id;
	const char *name; /* gimbal-bearing.grease */
	const char *label; /* "Gimbal bearing: grease" */
	const char *title, *path, *fitting; /* fitting: its title */
	const char *variant, *part, *proof, *caution; /* NULL when unknown */
	const char *figures; /* of the manuals, for its fitting: "manual p. 41: torque 60 ft-lb (81 N·m)"; NULL: none */
	const char *variants; /* the designs that the task is for; NULL: all */
	const char *off; /* what must come off first, outermost first: "drive unit, bell housing"; NULL: nothing */
	int access; /* the number of that in this list; -1: nothing */
	gint64 minutes; /* hands on; NONE unknown */
	gint64 verb;
	struct task_in in; /* as the engine saw it */
	const struct limit *limit; /* in.n_limits of them, as recorded */
	const struct limit_out *used; /* the same, worked out */
	const struct due_reading *reading; /* n_readings of them */
	int n_readings;
	gboolean no_hours; /* nothing is known of what its engine has run: its limits by hours rest */
	const struct due_finding *found; /* n_found of them, the oldest first */
	int n_found;
	struct due_out out;
};

struct due_year { /* the fixed points of the boat's year around the day asked for */
	gint64 at; /* the day asked for */
	gint64 launch, haul_out, next_launch; /* of its season, see timeline_year(); NONE: not in sight */
	gboolean afloat; /* that season is under way */
};

struct due_ask {
	gint64 at; /* the day asked for */
	gint64 until; /* leave out what is to be done later; NONE: nothing is */
};

/* Whether what counts was surely done on that day or after it: work of which the day is not known counts from the first day
 * that it can have been. */
gboolean due_done_since(const struct baseline *since, gint64 date);

/* Opaque; reused from boat to boat. */
struct due_list;
struct due_list *due_list_new(void);
void due_list_free(struct due_list *l);

/* Work the list out for one boat: by opportunity, then what must come off, then consequence and day. */
gboolean book_due(struct book *b, const struct boat *boat, const struct due_ask *ask, struct due_list *l, GError **err);
/* The list as it would stand on a day if nothing had been done after another. */
gboolean book_due_undone(struct book *b, const struct boat *boat, gint64 at, gint64 after, struct due_list *l, GError **err);
/* The boat's life from a day on, without its tasks: due_timeline() alone. */
gboolean book_life(struct book *b, const struct boat *boat, gint64 from, struct due_list *l, GError **err);
int due_count(const struct due_list *l);
const struct due_line *due_at(const struct due_list *l, int i);
const struct due_line *due_find(const struct due_list *l, gint64 task); /* NULL: not in the list */
const struct due_year *due_year(const struct due_list *l);
const struct timeline *due_timeline(const struct due_list *l);
const struct wear_table *due_rates(const struct due_list *l);

/* Minutes to open all that the lines [from, to) need open, each thing counted once. */
gint64 due_access_minutes(const struct due_list *l, int from, int to);
/* What waits for a later opportunity, needs the same access and takes no more than 20 minutes: "Gimbal bearing: inspect
 * (15 min); ..."; "" for nothing.  The caller frees it. */
char *due_while_open(const struct due_list *l, int access, enum opportunity now);

/* What a limit allows, in words: "60 months", "100 h", "each launch", "after a grounding". */
char *limit_words(const struct limit *m);
/* "found on 3 May 2026: bearing rough, growls"; the caller's. */
char *due_finding_words(const struct due_finding *f);
/* "anode-left 75 % on 13 Oct 2026, worth watching: at 75 % or below"; the caller's. */
char *due_reading_words(const struct due_reading *r);
/* Where it comes from, with its standing: "manual p. 41", "common practice, no source". */
char *limit_source(const struct limit *m);
/* The same of any source. */
char *source_words(gint64 standing, const char *source);
/* Of the lines [from, to) of one opportunity: "BEFORE LAUNCH, 15 Apr 2027" and "8 tasks, about 4 h"; the caller's. */
char *due_group_title(const struct due_list *l, int from, int to);
char *due_group_sum(const struct due_list *l, int from, int to);
/* Which part of the boat a line is of, "engine"; *rank orders them as one walks along the boat. */
const char *due_area(const struct due_line *d, int *rank);
const char *area_of_path(const char *path, int *rank); /* the same of a fitting's path */
/* The line after the last of the opportunity that line `from` is of. */
int due_group_end(const struct due_list *l, int from);
/* "first off or open: Drive unit (90 min)", of that line alone, or that nothing is; the caller's. */
char *due_access_words(const struct due_list *l, int i);
/* Whether the due day is told with a ~: it hangs on use, or on a guess. */
gboolean due_is_about(const struct due_out *out);
/* "~12 Mar 2027"; "" when it is not in sight.  Returns buf. */
const char *due_day_words(const struct due_out *out, char buf[20]);
/* Append the limits of a line in short: "100 h/12 mo". */
void due_add_limits(GString *out, const struct due_line *d);

/* A day for --at and --until: launch, haul-out, lay-up, mid-season (the coming one), or a date. */
gboolean book_day(struct book *b, const struct boat *boat, const char *text, gint64 *day, GError **err);

/* Lists for other programs: CSV (a line a task) or JSON (an object a boat). */
enum due_format { DUE_CSV, DUE_JSON };
struct due_doc;
struct due_doc *due_doc_new(enum due_format format);
void due_doc_add(struct due_doc *doc, const struct boat *boat, const struct due_list *l);
char *due_doc_end(struct due_doc *doc); /* frees doc; the text is the caller's */

#endif
