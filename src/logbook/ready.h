/* The launch check of one boat: what holds the launch, what is to be mended this season, and what nobody knows.  It tells what
 * is on record and certifies nothing. */
#ifndef LOGBOOK_READY_H
#define LOGBOOK_READY_H

#include "logbook/due.h"

enum ready_group { READY_HOLDS, READY_MEND, READY_UNKNOWN, READY_GROUPS };

/* Why an item is there: of several the first of these. */
enum ready_ground {
	READY_FINDING, /* open */
	READY_HAPPENING, /* open, and not all done that it asks for */
	READY_JOB, /* open, or it rests, and something of it is off, unequal or undone */
	READY_PLUGS, /* drain plugs out that nobody counted back in */
	READY_READING, /* the last one says stop */
	READY_BAD, /* last looked at, it was found wanting */
	READY_NOT_SEEN, /* last done without seeing the proof */
	READY_CLAIMED, /* only told by somebody else */
	READY_ASKED, /* by what happened, and not done since */
	READY_PAST_DUE,
	READY_BY_LAUNCH, /* due by the coming launch, or that day */
	READY_SKIPPED, /* passed over with a reason, and not done since */
	READY_NEVER_SEEN, /* nobody has on record when it was last done */
	READY_CLOSABLE, /* all is done that a happening asked for: it can be closed */
	READY_WATCH, /* to be measured again */
	READY_GUESS, /* its date is a guess, and may hide a due day of this season */
	READY_DESIGN, /* which design is fitted decides, and nobody said */
	READY_NO_LIMIT, /* a task that nothing makes due any more */
	READY_UNASKED, /* only a finding or a reading makes it due, and there is none: nobody has looked, by the log */
	READY_RETIRED, /* a task that the owner does not want */
	READY_NO_DATE, /* no launch is in sight */
	READY_NO_VALUE, /* read, but it could not be judged */
	READY_GROUNDS
};
extern const struct words words_ready_group, words_ready_ground; /* hold mend unknown; finding happening plugs ... */

struct ready_item {
	enum ready_group group;
	enum ready_ground ground;
	gint64 consequence; /* words_consequence; NONE: not known, which counts as the worst */
	char *words; /* "Bellows: inspect" */
	char *why; /* "past due since 15 Apr 2027; passed over on 20 Apr 2027: no time" */
	char *name; /* by which it is waived or looked up: a task's name, a finding's or happening's key; NULL: nothing */
	gint64 task, finding, happening; /* one of them, or all NONE */
	gint64 until; /* let pass until; NONE: it is not */
	char *who, *reason; /* of that */
};

struct ready {
	gint64 at;
	gint64 launch; /* the coming one, or that of the season under way; NONE: not in sight */
	GArray *item; /* struct ready_item: by group, what is let pass last, the worst first */
	int holding; /* that hold the launch and are not let pass */
	int passed; /* that would hold it and are let pass */
};

/* As things stand on a day.  NULL and *err. */
struct ready *book_ready(struct book *b, const struct boat *boat, gint64 at, GError **err);
/* The same out of a due list that is there, of its day and with all its lines. */
struct ready *book_ready_of(struct book *b, const struct boat *boat, const struct due_list *l, GError **err);
void ready_free(struct ready *r);

const struct ready_item *ready_at(const struct ready *r, int i); /* NULL past the last */
int ready_count(const struct ready *r);
/* How many items of a group, not let pass, are told as one line; and the grounds of which that is so: what nobody has on
 * record, and what is retired. */
int ready_count_of(const struct ready *r, enum ready_group group, enum ready_ground ground);
gboolean ready_summed_up(const struct ready_item *i);

/* The caller's: the answer, "Hold the launch: 7 things"; the caveat that goes with every answer; a group's heading; and an item
 * in a sentence, "Bellows: inspect: past due since 15 Apr 2027 (bellows.inspect)". */
char *ready_answer(const struct ready *r);
const char *ready_caveat(void);
const char *ready_heading(enum ready_group group);
char *ready_item_words(const struct ready_item *i);
/* "23 tasks nobody has on record: one survey, splitpin due --survey"; the caller's. */
char *ready_sum_words(enum ready_ground ground, int n);

/* For other programs; the caller's. */
char *ready_csv(const struct ready *r, const struct boat *boat);
char *ready_json(const struct ready *r, const struct boat *boat);

#endif
