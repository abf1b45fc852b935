/* A form: fields that are checked as one types, a sentence that says what will be recorded, and Enter, Enter. */
#ifndef TUI_FORM_H
#define TUI_FORM_H

#include "tui/edit.h"

struct app;
struct form;
struct words;

enum { FORM_FIELDS = 16 };

struct form_field {
	const char *name;	/* in drafts: "hours" */
	char *label;	/* "Hours"; owned */
	const char *hint;	/* while one is in it: "2.4, 2h24, or what the meter shows" */
	const struct words *words;	/* a choice: Left and Right go through them, letters find one; NULL: any text */
	gboolean long_text;	/* ^X opens it in the editor */
	gboolean optional_word;	/* a choice that may be left empty */
	struct edit edit;
	char *given;	/* the default; owned, inside */
	char *wrong;	/* what is wrong with it; NULL: nothing.  Shown once it was touched or all was to be recorded */
	gboolean touched;	/* typed in */
};

struct form_kind {
	const char *name;	/* of its drafts: "outing" */
	const char *title;	/* "An outing" */
	const char *button;	/* "Enter logs it" */
	/* Set up the fields with form_add, defaults in them.  FALSE and *err: it can't be opened. */
	gboolean (*begin)(struct app *a, struct form *f, GError **err);
	/* What is wrong with what the fields hold: form_wrong(f, "date", ...) for each; and the sentence of what will be
	 * recorded (NULL: none), the caller's.  Called after every key; it must not write to the logbook. */
	char *(*check)(struct app *a, struct form *f);
	/* Record it, in one command.  FALSE and *err: everything stays as typed.  With ERR_DOUBT the form asks, and calls
	 * again with f->sure set.  What was done goes to app_say; a view that it opens stays when the form goes. */
	gboolean (*save)(struct app *a, struct form *f, GError **err);
	/* When it is recorded and the form is gone: on to what was made, f->made.  NULL: back to where it was opened. */
	void (*then)(struct app *a, gint64 made);
};

struct form {
	const struct form_kind *kind;
	struct form_field field[FORM_FIELDS];
	int n, at;	/* at == n: on the button */
	gint64 subject;	/* what it is about: a task, a fitting, a record that is corrected; NONE */
	gint64 made;	/* set by save, for then */
	char *heading;	/* what it is about in words, under the title; NULL; owned */
	char *sum;	/* from check */
	char *refused;	/* why save refused it; NULL */
	gboolean doubt;	/* refused as implausible: y takes it as it is */
	gboolean sure;	/* take what is implausible as it is */
	gboolean tried;	/* it was to be recorded once: all that is wrong shows */
	gboolean unkept;	/* no draft could be kept: Esc once more leaves without one */
};

/* Open a form over what is on the screen; a draft of it that was not finished comes back, and is said so. */
void form_open(struct app *a, const struct form_kind *kind, gint64 subject);

/* The long text of the top form's field, for the editor; borrowed.  And as it came back. */
const char *form_long_text(struct app *a);
void form_long_text_set(struct app *a, const char *text);

struct form_field *form_add(struct form *f, const char *name, const char *label, const char *hint, const char *text);
struct form_field *form_add_choice(struct form *f, const char *name, const char *label, const struct words *words,
				   gint64 value, gboolean optional);
const struct form_field *form_field(const struct form *f, const char *name);
const char *form_text(const struct form *f, const char *name);	/* borrowed; "" when there is no such field */
char *form_said(const struct form *f, const char *name);	/* a copy, the caller's; NULL when it is empty */
gint64 form_word(const struct form *f, const char *name);	/* index; NONE when empty or no such word */
/* Say what is wrong with a field; takes *err over and sets it to NULL.  With err NULL or *err NULL nothing is. */
void form_wrong(struct form *f, const char *name, GError **err);
void form_refuse(struct form *f, const char *name, const char *what);	/* the same in words of one's own */

/* What any date takes; and a field for a long remark. */
extern const char form_date_hint[];
void form_add_remark(struct form *f, const char *hint, const char *text);	/* hint NULL: how to write it */

extern const struct form_kind form_outing, form_did, form_measure, form_stay, form_season, form_happening, form_limit, form_mend,
	form_found, form_found_on_outing, form_found_again,	/* of a fitting; an outing; a finding that is corrected */
	form_task, form_variant, form_new,
	form_job,	/* a job for what was picked */
	form_rest, form_note,	/* of the job on the screen: it rests; notes to it */
	form_seen, form_step_undone, form_aim_undone,	/* a step or aim of that job */
	form_back,	/* a line of its strip-down list goes back */
	form_waive,	/* of a task, finding or happening by its key */
	form_dossier,	/* the whole boat's story, to a file */
	form_yard, form_yard_read,	/* a sheet for a yard; and one that came back filled in */
	form_item, form_item_again,	/* of the stores: a new one; one that is corrected */
	form_lot, form_arrived, form_take, form_count, form_number,	/* of an item by its key */
	form_need, form_need_of_task,	/* of an item; of a task */
	form_pass;	/* a task of the season's list on the screen, passed over */

#endif
