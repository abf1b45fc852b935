/* Inside the due list: what due.c fills in and the others read. */
#ifndef LOGBOOK_DUE_LIST_H
#define LOGBOOK_DUE_LIST_H

#include "logbook/due.h"

/* What must come off or be open for a fitting, and what that needs itself. */
struct access {
	const char *path, *words; /* "Drive unit, Bell housing", outermost first */
	gint64 minutes; /* of this one alone; NONE: unknown */
	int outer; /* index; -1: nothing */
};

/* One list's memory: kept from boat to boat. */
struct due_list {
	GArray *lines; /* struct due_line */
	GArray *limits; /* struct limit, of all lines in order; texts in chunk */
	GArray *asked; /* struct limit_in, the same order */
	GArray *used; /* struct limit_out, the same order */
	GStringChunk *chunk; /* all texts */
	GArray *readings; /* struct due_reading, of all lines in order */
	GArray *found; /* struct due_finding, of all lines in order */
	GArray *runs, *stays, *seasons;
	struct timeline *timeline;
	struct wear_rates *rates; /* NULL: not read yet */
	GArray *access; /* struct access */
	GHashTable *places; /* by name; NULL: not read yet */
	struct due_year year;
	gint64 known; /* what was done after that day is left out of account */
};

/* What the engines of the boat are called by their place in this table. */
struct engines {
	gint64 id[16];
	int n;
};

struct cells;
/* A text of a row, kept as long as the list; NULL for NULL. */
const char *due_keep(struct due_list *l, struct cells *c, int column);
gboolean due_read_engines(struct book *b, gint64 boat, struct engines *e, GError **err);
/* Tasks that the boat's design has, with their limits and what they count from; and the boat's engines. */
gboolean due_read_tasks(struct book *b, struct due_list *l, const struct boat *owner, struct engines *e, GError **err);
/* What open findings ask for. */
gboolean due_read_found(struct book *b, struct due_list *l, gint64 boat, GError **err);
/* The readings that the condition limits go by, and what they stop. */
gboolean due_read_measured(struct book *b, struct due_list *l, gint64 boat, GError **err);
/* The figures of the manuals, as words. */
gboolean due_read_figures(struct book *b, struct due_list *l, gint64 boat, GError **err);
struct json_out;
/* The readings of a line as an array; the sentence on that of one limit, the caller's: NULL when there is none. */
void due_readings_json(struct json_out *j, const struct due_line *d);
/* The findings that ask for a line as an array. */
void due_found_json(struct json_out *j, const struct due_line *d);
char *due_reading_why(const struct due_line *d, int limit);
/* What must come off first for each line. */
gboolean due_read_access(struct book *b, struct due_list *l, gint64 boat, GError **err);
/* Rates, and the stays and seasons that matter from a day on. */
gboolean due_read_calendar(struct book *b, struct due_list *l, const struct boat *boat, gint64 from, GError **err);
/* What is known of the places, once for a logbook; and of the one of that name, NULL: nothing.  *water becomes the word
 * said or, with NONE, the place's; else it stays. */
gboolean due_read_places(struct book *b, struct due_list *l, GError **err);
const struct climate *due_climate(const struct due_list *l, const char *place, gint64 said, gint64 *water);
/* Outings from a day on. */
gboolean due_read_runs(struct book *b, struct due_list *l, const struct boat *boat, const struct engines *e,
		       gint64 from, GError **err);

/* "Gimbal bearing: grease", from the fitting's title and the end of the task's name. */
char *due_label(const char *fitting, const char *name);
/* Order by opportunity, then what must come off together (the worst of it first), then consequence and day. */
void due_sort(struct due_list *l);

#endif
