/* Inside the yard sheet: its lines before they are written. */
#ifndef LOGBOOK_YARD_INSIDE_H
#define LOGBOOK_YARD_INSIDE_H

#include "exchange/yard_csv.h"
#include "logbook/inside.h"
#include "logbook/yard.h"

enum yard_severity { YARD_HOLDS, YARD_MENDS, YARD_WATCHES };

struct yard_item {
	struct sheetline line;
	enum yard_severity severity;
	int opening; /* the outermost thing that must be open, in the due list; -1: nothing */
	int depth; /* how many things must be open */
	int place; /* of the part of the boat, as one walks along it */
	int order; /* as the due list and the findings have it */
	int with; /* the worst severity of what is opened with it */
	int due; /* line of the due list; -1: a finding */
	char *asks; /* a finding's: names of the tasks that it asks for; NULL */
	char *cautions; /* their words, separated by blanks; NULL: none */
	struct yard_line cells;
};

struct yard_list {
	struct book *b;
	const struct boat *boat;
	const struct yard_form *form;
	struct due_list *due;
	struct sheet sheet;
	GArray *items; /* struct yard_item */
	char *engine_hours; /* NULL: unknown, or of several engines */
	gint64 seconds; /* the same */
	const char *basis;
	gboolean one_engine;
};

/* The lines, in order and numbered, without their keys.  NULL and *err. */
struct yard_list *yard_list_new(struct book *b, const struct boat *boat, const struct yard_form *form, GError **err);
void yard_list_free(struct yard_list *y); /* NULL: nothing */
struct yard_item *yard_item(const struct yard_list *y, guint i);

/* Fill the cells of a line: of a task, of a finding. */
void yard_say_task(const struct yard_list *y, struct yard_item *item);
gboolean yard_say_finding(const struct yard_list *y, struct yard_item *item, const struct finding *f, GError **err);

/* For paper: a box to tick a line, and lines for the yard's answer. */
struct paper *yard_paper(const struct yard_list *y, enum paper_size size);

#endif
