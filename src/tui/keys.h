/* Keys, what they do, and where: the one table from which dispatch, the footer, the help and the manual are made. */
#ifndef TUI_KEYS_H
#define TUI_KEYS_H

#include <glib.h>

/* A key is a character, a control character, or one of these. */
enum {
	K_NONE = 0x110000,	/* beyond Unicode; no key within the time */
	K_UP, K_DOWN, K_LEFT, K_RIGHT, K_PAGE_UP, K_PAGE_DOWN, K_HOME, K_END, K_DELETE, K_BACKSPACE, K_ENTER, K_TAB,
	K_BACKTAB, K_ESC, K_F1, K_WORD_LEFT, K_WORD_RIGHT,
	K_PASTE, K_PASTE_END,	/* around pasted text */
	K_CLICK, K_WHEEL_UP, K_WHEEL_DOWN,	/* at y, x */
	K_RESIZE,	/* the terminal has another size */
	K_HANGUP,	/* the terminal is gone, or the program is to end: save drafts */
};
#define K_CTRL(letter) ((gunichar)((letter) & 31))

struct key_event {
	gunichar key;
	int y, x;	/* of the mouse */
	gboolean pasted;	/* between K_PASTE and K_PASTE_END: text, never a command */
};

/* What a key asks for.  A view takes those that mean something in it. */
enum act {
	ACT_NONE,
	ACT_UP, ACT_DOWN, ACT_PAGE_UP, ACT_PAGE_DOWN, ACT_FIRST, ACT_LAST,
	ACT_OPEN, ACT_BACK, ACT_QUIT,
	ACT_LOG,	/* an outing */
	ACT_DID,	/* a service on what is selected */
	ACT_MEASURE,	/* a reading on what is selected */
	ACT_ADD,	/* one more of what the view lists */
	ACT_STAY,	/* a stay, where seasons are listed too */
	ACT_CHANGE,	/* correct what is selected */
	ACT_DROP,	/* take what is selected out; undo brings it back */
	ACT_FOUND,	/* a finding on what is selected */
	ACT_MEND,	/* the finding selected, or opens it again */
	ACT_PHOTOS,	/* of the finding selected, in the owner's viewer */
	ACT_CLOSE,	/* the happening selected: all done that it asked for */
	ACT_TICK,	/* the line of a season's list: done today, as usual */
	ACT_PASS,	/* the same passed over; what holds the launch let pass */
	ACT_HEED,	/* cautions were read */
	ACT_DOSSIER,	/* the whole boat's story, to a file */
	ACT_READ,	/* a sheet that a yard filled in: what would be taken */
	ACT_TAKE,	/* a sheet that was read, into the log; what usually comes off next is off */
	ACT_UNDO, ACT_REDO,
	ACT_FILTER, ACT_COMMAND, ACT_HELP,
	ACT_DUE, ACT_OUTINGS, ACT_BOAT, ACT_YEAR, ACT_HAPPENINGS, ACT_FINDINGS, ACT_PLAN, ACT_HISTORY, ACT_BOATS, ACT_READY,
	ACT_SEASON,	/* the season's lists */
	ACT_YARD,	/* the sheets handed to a yard */
	ACT_JOBS,	/* the jobs; with work selected, one for it */
	ACT_FACE, ACT_FACE_BACK,	/* the next side of a job, or the one before */
	ACT_REPEAT,	/* the last line of the strip-down list once more */
	ACT_REST,	/* a job rests, or goes on */
	ACT_NOTE,	/* a note to a job */
	ACT_STORES,	/* what lies where */
	ACT_CAME, ACT_HERE,	/* something bought or ordered; what was ordered is here */
	ACT_TALLY,	/* so many are there */
	ACT_NEED,	/* a task needs what is selected */
	ACT_NUMBER,	/* one more number of an item */
	ACT_SUSPEND, ACT_REPAINT, ACT_MOUSE,
	ACT_COUNT
};

/* Where a key holds. */
enum {
	IN_DUE = 1 << 0, IN_OUTINGS = 1 << 1, IN_BOAT = 1 << 2, IN_YEAR = 1 << 3, IN_HAPPENINGS = 1 << 4, IN_PLAN = 1 << 5,
	IN_HISTORY = 1 << 6, IN_TEXT = 1 << 7,	/* a page to read: why, help, output */
	IN_FORM = 1 << 8, IN_BOATS = 1 << 9, IN_SEASON = 1 << 10,	/* a season's list */
	IN_FINDINGS = 1 << 11, IN_READY = 1 << 12,	/* the launch check */
	IN_HEED = 1 << 13,	/* cautions before work */
	IN_JOBS = 1 << 14, IN_JOB = 1 << 15,	/* all of them; one */
	IN_PICK = 1 << 16,	/* what a job is to be for */
	IN_LINE = 1 << 17,	/* a line of the strip-down list as it is typed */
	IN_YARD = 1 << 18,	/* the sheets handed to a yard, and one of them */
	IN_YARD_READ = 1 << 19,	/* what a filled one would do */
	IN_STORES = 1 << 20,	/* what lies where, what is wanted, what it cost */
	IN_LISTS = IN_DUE | IN_OUTINGS | IN_BOAT | IN_YEAR | IN_HAPPENINGS | IN_PLAN | IN_HISTORY | IN_BOATS | IN_SEASON |
		   IN_FINDINGS | IN_READY | IN_YARD | IN_YARD_READ | IN_JOBS | IN_JOB | IN_PICK |
		   IN_STORES,
	IN_TICKED = IN_SEASON | IN_JOB | IN_PICK,	/* where Space ticks */
	IN_ALL = IN_LISTS | IN_TEXT | IN_HEED,
};

struct key_binding {
	gunichar key[3];	/* any of them; 0: none */
	enum act act;
	unsigned where;
	const char *hint;	/* a word for the footer; NULL: not shown there */
	const char *help;	/* a sentence */
};
extern const struct key_binding key_table[];
extern const int key_table_length;

/* What the key means there; ACT_NONE: nothing. */
enum act key_act(gunichar key, unsigned where);
/* "Enter", "^R", "PgUp", "o"; buf holds the character. */
const char *key_words(gunichar key, char buf[8]);

#endif
