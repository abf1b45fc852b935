/* The whole story of a fitting, one event after the other: what went in and came out, services, readings, findings and how they
 * ended, what was let pass or passed over, jobs and what they took off.  The command line, the screens and the dossier tell it
 * from here. */
#ifndef LOGBOOK_FITTING_HISTORY_H
#define LOGBOOK_FITTING_HISTORY_H

#include "logbook/names.h"

/* In the order in which those of one day are told. */
enum fitting_event_kind {
	EVENT_DESIGN, /* its design was put on record: the day is that of the entry */
	EVENT_JOB, /* a job on it was opened */
	EVENT_CAME_OFF, /* a line of a strip-down list */
	EVENT_NOTED, /* the same of how something stood */
	EVENT_TAKEN_OUT, /* a part */
	EVENT_FITTED, /* a part, or a fluid filled in */
	EVENT_SERVICE,
	EVENT_PROOF, /* a proof of a job: seen, or why not */
	EVENT_READING,
	EVENT_FOUND,
	EVENT_MENDED,
	EVENT_LET_PASS, /* a waiver */
	EVENT_PASSED_OVER, /* a skip */
	FITTING_EVENTS
};
const char *fitting_event_word(enum fitting_event_kind kind); /* "came-off": in CSV and JSON */

/* What does not belong to a kind of event, or is not known, is NONE or NULL. */
struct fitting_event {
	enum fitting_event_kind kind;
	gint64 date, earliest; /* day, or the last that it can have been, and then the first; date NONE: nobody knows */
	gboolean about; /* the day is from memory */
	gint64 fitting; /* NONE: of no single one */
	gint64 id; /* of the record that says so; of a design its entry's number */
	char *subject; /* name of the task, kind of reading, part, name of the job; of a finding its words */
	char *result; /* outcome, level, verdict, state, design */
	gint64 until; /* a waiver's last day; of a job or a line of its list, the day it was closed */
	char *seen; /* what was seen, how it was left, why; in words */
	char *proof; /* on record */
	gboolean unproved; /* its task asks for a proof, and neither that nor what was seen is on record */
	char *reading; /* as read; of a service what the meter showed, in hours */
	char *before; /* how a reading stands to the one before */
	char *who;
	gint64 cost; /* cents */
	char *currency;
	char *photos; /* names of files, without their folders, with commas between */
	char *remark;
};

struct fitting_history_ask {
	gint64 boat;
	gint64 fitting; /* NONE: of all, and what belongs to none */
	const struct names *names; /* NULL: as they are */
	gboolean designs; /* also when designs were put on record: reads the whole journal */
};
/* In order of time, what has no day first: an array of struct fitting_event that clears itself. */
GArray *book_fitting_history(struct book *b, const struct fitting_history_ask *ask, GError **err);

/* Paths in the order of the tree, as strcmp() has it: a fitting is followed by what belongs to it. */
int fitting_path_order(const char *a, const char *b);

/* What of an event is told. */
struct fitting_tell {
	gboolean without_costs, without_remarks;
};
/* "12 Mar 2022, renew: renewed; meter 402.5 h; seen: ...", on one line; the caller's.  tell NULL: all of it. */
char *fitting_event_words(const struct fitting_event *e, const struct fitting_tell *tell);

/* For other programs: a row or an object an event, the caller's.  NULL and *err. */
char *fitting_history_csv(struct book *b, const GArray *events, GError **err);
char *fitting_history_json(struct book *b, const GArray *events, GError **err);

#endif
