/* The screens without a terminal: a logbook, a stack of views, and what one key does to them. */
#ifndef TUI_APP_H
#define TUI_APP_H

#include "logbook/due.h"
#include "tui/grid.h"
#include "tui/keys.h"
#include "tui/pane.h"

struct edit;
struct list;
struct app;

/* A view: what it shows is read into data by load, and drawn from data alone. */
struct view_kind {
	unsigned where;	/* IN_DUE, ...: which keys hold */
	gsize size;	/* of data, zeroed before open */
	void (*open)(struct app *a, void *data, gint64 subject);	/* NULL: nothing to set up */
	/* Read what it shows, again after every change; what was selected stays selected. */
	gboolean (*load)(struct app *a, void *data, GError **err);
	/* A pure function of data and the area. */
	void (*draw)(const void *data, const struct area *a);
	/* FALSE: not its act, so the screens' own meaning holds. */
	gboolean (*act)(struct app *a, void *data, enum act act);
	/* Whether an act means something on what is selected: the footer tells of no other.  NULL: all do. */
	gboolean (*means)(const void *data, enum act act);
	/* The list that moves, clicks and the filter go to; NULL: none. */
	struct list *(*list)(void *data);
	/* Where in an area the list stands, and what stands beside it; NULL: the list is all of it. */
	struct panes (*parts)(const void *data, const struct area *a);
	/* Takes keys before the table does, as forms do; FALSE: not its key.  NULL: none. */
	gboolean (*key)(struct app *a, void *data, const struct key_event *k);
	void (*clear)(void *data);
};

extern const struct view_kind view_due, view_outings, view_boat, view_year, view_happenings, view_plan, view_history, view_findings,
	view_boats, view_ready, view_text, view_form,
	view_season_lists,	/* to choose one of the season's lists */
	view_season_list,	/* one of them; the subject is an enum season_list */
	view_jobs,	/* all jobs; jobs_for() comes with work for one */
	view_job,	/* one; the subject is its key */
	view_job_line,	/* what comes off, as it is typed; over view_job */
	view_yard,	/* the sheets handed to a yard */
	view_yard_sheet,	/* one of them; the subject is its key */
	view_stores,	/* what lies where, what is wanted, what it cost */
	view_work;	/* of one fitting: its tasks, for one to be chosen */

/* A command of the command line, as the palette shows it. */
struct app_command { const char *name, *args, *summary; };

struct app_start {
	const char *program;	/* to run commands of the command line; found as a shell finds it */
	const char *file;	/* the logbook */
	const char *folder;	/* where it stands, to be made for a new one; NULL: the owner's own choice */
	const char *data;	/* the shipped catalogue's folder */
	const char *modules;	/* folder of the program's modules, for PDF; NULL: none */
	const char *state;	/* where drafts are kept; NULL: nowhere */
	const char *boat;	/* the name asked for; NULL */
	const struct app_command *command;	/* ends with a name of NULL */
	struct book_who who;
	/* What the clock says now, in seconds, and the day it is; NULL: who's stay as they are. */
	void (*read_clock)(gint64 *now, gint64 *today);
};

/* What only the terminal's side can do; the loop does it after the key that asked. */
enum app_wish { WISH_NONE, WISH_QUIT, WISH_SUSPEND, WISH_REPAINT, WISH_MOUSE, WISH_EDIT, WISH_RUN };

enum { APP_DEPTH = 12 };

struct app {
	struct app_start start;
	struct book *book;	/* NULL: there is none yet, the form for a new one stands open */
	struct boat boat;
	int n_boats;
	struct due_list *due;	/* of the boat, as of today; read anew after every change */
	gint64 seen;	/* book_version of what is shown */
	char *head, *lies;	/* "main 612.4 h"; "ashore since 12 Oct, fresh" */
	struct { const struct view_kind *kind; void *data; } view[APP_DEPTH];
	int depth;
	int h, w;
	gboolean ascii;
	char *message;	/* NULL */
	enum style message_style;
	struct edit *prompt;	/* of the filter or the palette; NULL: none */
	gboolean palette;
	int palette_at;
	gboolean pasting;
	enum app_wish wish;
	char **run;	/* WISH_RUN: words of a command line */
};

/* Open the logbook and the home screen; without a logbook the form for a new one.  NULL and *err. */
struct app *app_new(const struct app_start *start, int h, int w, gboolean ascii, GError **err);
void app_free(struct app *a);

/* Take a key.  Whatever it does to the logbook is done when this returns. */
void app_key(struct app *a, const struct key_event *k);
/* Nothing was typed for a while: notice what another program changed, and a new day. */
void app_idle(struct app *a);
/* Draw everything into the grid, whose size becomes the app's. */
void app_draw(struct app *a, struct grid *g);

/* For views and forms. */
void app_say(struct app *a, enum style style, const char *format, ...) G_GNUC_PRINTF(3, 4);
void app_complain(struct app *a, GError *err);	/* says it and frees it */
void app_open(struct app *a, const struct view_kind *kind, gint64 subject);	/* on top of the others */
void app_close(struct app *a);	/* the top one; the last stays */
void app_close_at(struct app *a, int depth);	/* one that lies under others, which stay; never the last */
/* A page of text to read; takes text over. */
void app_page(struct app *a, const char *title, char *text);
/* Over the view just opened for some work: the cautions of it that nobody has read today.  Enter puts on record that they were
 * and shows the view, Esc closes both. */
void app_heed(struct app *a, const char *title, const char *work, const char *words);
/* After something was recorded: read all views again. */
void app_changed(struct app *a);
void *app_data(struct app *a);	/* of the top view */
gint64 app_today(const struct app *a);

#endif
