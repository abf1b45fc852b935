/* The stores on the screen, as the files of their view share them: what is there, what is wanted, what it cost. */
#ifndef TUI_STORES_VIEW_H
#define TUI_STORES_VIEW_H

#include "logbook/stores_cost.h"
#include "logbook/stores_want.h"
#include "tui/app.h"
#include "tui/form.h"
#include "tui/list.h"
#include "tui/pane.h"

enum stores_face { FACE_THERE, FACE_WANTED, FACE_COSTS, STORES_FACES };

struct stores_data {
	struct book *book;	/* the app's */
	gint64 today;
	struct wants *wants;	/* for the coming opportunity, and in it the stores; NULL: not read */
	struct costs costs[2];	/* COST_SEASON, COST_FITTING */
	GArray *cost;	/* struct cost_row (cost_plot.h), as listed */
	enum stores_face face;
	struct list list[STORES_FACES];	/* indices into the items; the wanted lines and after them the loose ones; the costs */
};

/* Rows (stores_rows.c), anew from what was read. */
void stores_fill_rows(struct stores_data *d);
/* Of the face that shows; all three NULL when nothing of that kind is selected. */
const struct item *stores_selected(const struct stores_data *d);
const struct want_line *stores_wanted(const struct stores_data *d);
const struct want_loose *stores_loose(const struct stores_data *d);
/* What is wanted of an item; NULL: nothing. */
const struct want_line *stores_want_of(const struct stores_data *d, const struct item *i);

/* Words (stores_words.c), the caller's. */
char *stores_places(const struct stores *s, const struct item *i);	/* "bow locker, shed"; "not said" */
char *stores_number_words(const struct want_line *l);	/* "2, perhaps 1 more", "perhaps 2" */
char *stores_by_words(const struct stores_data *d, const struct want_line *l, gboolean brief);	/* "LATE, by 12 Mar 2027" */
char *stores_lots_words(const struct stores *s, const struct item *i, gint64 today, gboolean ordered);	/* a line each */
char *stores_cost_brief(const struct stores_data *d);	/* of the costs selected: "work 99.50, parts 0.00 EUR" */
char *stores_row_title(const struct stores_data *d);	/* of what is selected */
char *stores_row_story(const struct stores_data *d);	/* all that is known of it: paragraphs, a line each */

/* Drawing (stores_draw.c): data is a struct stores_data. */
void stores_draw(const void *data, const struct area *a);
struct panes stores_parts(const void *data, const struct area *a);

/* The item that a form was opened with, in the stores as they stand, which are the caller's; NULL and *err. */
struct stores *stores_of_form(struct app *a, const struct form *f, const struct item **i, GError **err);
/* How many, as typed; what is wrong is said at the field.  Nothing typed is wrong, too. */
gint64 stores_typed_quantity(struct form *f, const char *field);
/* A day that may be left empty (NONE), and does not lie ahead. */
gint64 stores_typed_day(struct app *a, struct form *f, const char *field);

#endif
