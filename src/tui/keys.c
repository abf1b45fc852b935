#include "tui/keys.h"

/* An outing is logged, undone and looked up from every list. */
const struct key_binding key_table[] = {
	{ { ' ', K_ENTER }, ACT_TICK, IN_SEASON, "tick", "Tick the selected work: done today, as usual; u takes it back." },
	{ { K_ENTER, ' ' }, ACT_TICK, IN_JOB, "do it",
	  "The selected line is carried, done, seen, written down, taken from what is offered, or put back." },
	{ { ' ' }, ACT_TICK, IN_PICK, "tick", "Tick what the job is to be for; several things become one job." },
	{ { K_ENTER, K_RIGHT }, ACT_OPEN, IN_PICK, "go on",
	  "Go on with what is ticked, or with the selected line alone." },
	{ { K_TAB }, ACT_FACE, IN_JOB, "side",
	  "The next side of the job: what to carry, the work, the strip-down list, the refit." },
	{ { 'a', '+' }, ACT_ADD, IN_JOB, "write", "Write down what comes off; on the sides of carrying and work, add work." },
	{ { '=' }, ACT_REPEAT, IN_JOB, "again", "The last line of the strip-down list once more." },
	{ { 't' }, ACT_TAKE, IN_JOB, "take", "What usually comes off next is off: write it down." },
	{ { 'p' }, ACT_PASS, IN_JOB, "leave", "Leave the selected step or task undone: asks why." },
	{ { 'z' }, ACT_REST, IN_JOB, "rest", "Let the job rest, with where things lie; a job that rests goes on." },
	{ { 'c' }, ACT_CLOSE, IN_JOB, "close", "Close the job; while anything is open, say what." },
	{ { 'n' }, ACT_NOTE, IN_JOB, "note", "Notes to the job." },
	{ { K_BACKTAB }, ACT_FACE_BACK, IN_JOB, NULL, "The side of the job before." },
	{ { K_TAB }, ACT_FACE, IN_STORES, "side", "The next side of the stores: what is there, what is wanted, what it cost." },
	{ { 't' }, ACT_TAKE, IN_STORES, "take out",
	  "Take the selected item out of the stores: for a task, a job, or lost; or put it back." },
	{ { 'b' }, ACT_CAME, IN_STORES, "bought", "Something of the selected item came, or was ordered." },
	{ { 'c' }, ACT_TALLY, IN_STORES, "count", "So many of the selected item are there." },
	{ { 'n' }, ACT_NEED, IN_STORES, "need", "A task needs the selected item." },
	{ { 'i' }, ACT_HERE, IN_STORES, "is here", "What was ordered of the selected item is here." },
	{ { 'p' }, ACT_NUMBER, IN_STORES, "number", "One more number of the selected item, or one that takes another's place." },
	{ { K_BACKTAB }, ACT_FACE_BACK, IN_STORES, NULL, "The side of the stores before." },
	{ { 'p' }, ACT_PASS, IN_SEASON, "pass over", "Pass the selected work over: asks why, and it stays due." },
	{ { 'p' }, ACT_PASS, IN_READY, "let pass",
	  "Let what holds the launch pass: by a name, with a reason, until a day." },
	{ { K_ENTER }, ACT_HEED, IN_HEED, "read, go on", "The cautions were read: put that on record, and go on to the work." },
	{ { 't' }, ACT_TAKE, IN_YARD_READ, "take", "Take into the log what this page says would be taken; u takes it back." },
	{ { 'o' }, ACT_LOG, IN_ALL & ~(unsigned)IN_BOATS, "outing", "Log an outing: the hours, or what the meter shows." },
	{ { 'd' }, ACT_DID, IN_DUE | IN_BOAT | IN_PLAN | IN_SEASON | IN_READY | IN_JOB, "did it",
	  "Record that the selected work was done." },
	{ { K_RIGHT, 'l' }, ACT_OPEN, IN_SEASON | IN_JOB, "open", "All that is known of the selected work." },
	{ { K_ENTER, K_RIGHT, 'l' }, ACT_OPEN, IN_LISTS & ~(unsigned)IN_TICKED, "open",
	  "Open what is selected: why it is due, all that is known of it." },
	{ { 'm' }, ACT_MEASURE, IN_DUE | IN_BOAT | IN_SEASON, "measure", "Record a reading: play, anode, compression, oil." },
	{ { 'f' }, ACT_FOUND, IN_DUE | IN_BOAT | IN_OUTINGS, "found", "Record what was seen wrong, on what is selected." },
	{ { 'm' }, ACT_MEND, IN_FINDINGS | IN_READY, "mend", "It is put right, or with one that was mended, it is not after all." },
	{ { 'J' }, ACT_JOBS, IN_DUE | IN_FINDINGS, "job", "A job for what is selected, new or open; and all jobs." },
	{ { 'J' }, ACT_JOBS, IN_ALL & ~(unsigned)(IN_DUE | IN_FINDINGS), NULL, "The jobs: what is off, and where each stands." },
	{ { 'p' }, ACT_PHOTOS, IN_FINDINGS, "photos", "Open the photo files of the selected finding in your viewer." },
	{ { 'a', '+' }, ACT_ADD,
	  IN_OUTINGS | IN_YEAR | IN_HAPPENINGS | IN_PLAN | IN_BOATS | IN_FINDINGS | IN_YARD | IN_JOBS | IN_STORES, "add",
	  "Add one to what is listed here." },
	{ { 'i' }, ACT_READ, IN_YARD, "read in", "Read a sheet that the yard filled in: first a page says what would be taken." },
	{ { 's' }, ACT_STAY, IN_YEAR, "stay", "Record where the boat lies; a adds a season, or what is selected." },
	{ { 'e' }, ACT_CHANGE, IN_OUTINGS | IN_BOAT | IN_YEAR | IN_PLAN | IN_FINDINGS | IN_JOB | IN_STORES, "edit",
	  "Correct what is selected; the old stays in the history." },
	{ { K_DELETE, 'x' }, ACT_DROP, IN_OUTINGS | IN_BOAT | IN_YEAR | IN_HAPPENINGS | IN_PLAN | IN_FINDINGS | IN_JOB, "take out",
	  "Take out what is selected; u brings it back." },
	{ { 'D' }, ACT_DOSSIER, IN_BOAT | IN_HISTORY, NULL,
	  "Write the whole boat's story to a file, as text or PDF, for a buyer, an insurer or yourself." },
	{ { 'c' }, ACT_CLOSE, IN_HAPPENINGS, "close", "Close a happening: all that it asked for is done." },
	{ { '/' }, ACT_FILTER, IN_ALL, "search", "Show only lines that hold these words; Esc shows all again." },
	{ { ':' }, ACT_COMMAND, IN_ALL, "command", "Find any command by words, or type one as on the command line." },
	{ { '?', K_F1 }, ACT_HELP, IN_ALL, "help", "The keys that hold here." },
	{ { 'q' }, ACT_QUIT, IN_ALL, "quit", "Back; from the due list, end." },
	{ { 'w' }, ACT_SEASON, IN_DUE | IN_YEAR | IN_SEASON, "season lists",
	  "The season's lists: commissioning, first day afloat, mid-season, haul-out, lay-up, sea trial." },
	{ { 'y' }, ACT_YARD, IN_ALL, NULL, "The sheets handed to a yard: write one, read one that was filled in." },
	{ { 'S' }, ACT_STORES, IN_ALL, NULL, "The stores: what lies where and how old it is, what is wanted, what it cost." },
	{ { K_ESC, K_LEFT, 'h' }, ACT_BACK, IN_ALL, NULL, "Back to where you came from; it never ends the program." },
	{ { 'u' }, ACT_UNDO, IN_ALL, "undo", "Take the last entry back, also one of another day." },
	{ { K_CTRL('r'), 'r' }, ACT_REDO, IN_ALL, NULL, "Bring back what was taken back last." },
	{ { '1' }, ACT_DUE, IN_ALL, NULL, "What is due, and when to do it." },
	{ { '2' }, ACT_OUTINGS, IN_ALL, NULL, "Outings, and hours by month and year." },
	{ { '3' }, ACT_BOAT, IN_ALL, NULL, "The boat, fitting by fitting." },
	{ { '4' }, ACT_YEAR, IN_ALL, NULL, "Seasons and stays: where the boat lay, and in what water." },
	{ { '5' }, ACT_HAPPENINGS, IN_ALL, NULL, "What happened to the boat." },
	{ { '6' }, ACT_PLAN, IN_ALL, NULL, "The plan: tasks and limits with their sources." },
	{ { '7' }, ACT_HISTORY, IN_ALL, NULL, "Every entry that was made." },
	{ { '8' }, ACT_BOATS, IN_ALL, NULL, "Another boat of this logbook, or one more." },
	{ { '9' }, ACT_FINDINGS, IN_ALL, NULL, "What was found wrong, the worst first." },
	{ { '0' }, ACT_READY, IN_ALL, NULL, "The launch check: what holds the launch, and what nobody knows." },
	{ { K_UP, 'k', K_WHEEL_UP }, ACT_UP, IN_ALL, NULL, "Up a line." },
	{ { K_DOWN, 'j', K_WHEEL_DOWN }, ACT_DOWN, IN_ALL, NULL, "Down a line." },
	{ { K_PAGE_UP, K_CTRL('b') }, ACT_PAGE_UP, IN_ALL, NULL, "Up a page." },
	{ { K_PAGE_DOWN, K_CTRL('f') }, ACT_PAGE_DOWN, IN_TICKED, NULL, "Down a page." },
	{ { K_PAGE_DOWN, K_CTRL('f'), ' ' }, ACT_PAGE_DOWN, IN_ALL & ~(unsigned)IN_TICKED, NULL, "Down a page." },
	{ { K_HOME, 'g' }, ACT_FIRST, IN_ALL, NULL, "To the first line." },
	{ { K_END, 'G' }, ACT_LAST, IN_ALL, NULL, "To the last line." },
	{ { K_CTRL('z') }, ACT_SUSPEND, IN_ALL | IN_FORM | IN_LINE, NULL, "Back to the shell for a while; fg returns." },
	{ { K_CTRL('l') }, ACT_REPAINT, IN_ALL | IN_FORM | IN_LINE, NULL, "Draw the screen anew." },
	{ { K_CTRL('t') }, ACT_MOUSE, IN_ALL, NULL, "Mouse on or off; with it on, hold Shift to select text." },
	{ { K_ENTER }, ACT_NONE, IN_LINE, "write it", "Write the line down; the next can be typed at once." },
	{ { K_TAB }, ACT_NONE, IN_LINE, "take", "Take what is offered, but for what was typed; of how things stood, the next." },
	{ { K_UP, K_DOWN }, ACT_NONE, IN_LINE, "another", "Another of what is offered, or of what is still to be written down." },
	{ { '=' }, ACT_NONE, IN_LINE, NULL, "At the beginning of a line: as the last one, but for what follows." },
	{ { '@' }, ACT_NONE, IN_LINE, NULL, "Before a path: a photo or a voice note of what the line says." },
	{ { K_ESC, K_CTRL('c') }, ACT_NONE, IN_LINE, "leave", "Leave; what was typed is there again with a." },
	{ { K_F1 }, ACT_HELP, IN_LINE, NULL, "The keys that hold while a line is typed." },
	{ { K_TAB, K_DOWN }, ACT_NONE, IN_FORM, "next", "To the next field; Shift-Tab or Up to the one before." },
	{ { K_ENTER }, ACT_NONE, IN_FORM, "done", "All typed: on to the button, or to what is wrong; on the button, record it." },
	{ { K_ESC, K_CTRL('c') }, ACT_NONE, IN_FORM, "leave", "Leave; what was typed is kept as a draft." },
	{ { K_LEFT, K_RIGHT }, ACT_NONE, IN_FORM, NULL,
	  "In a choice the one before or after; in a text, along it. Ctrl goes by words." },
	{ { K_CTRL('n') }, ACT_NONE, IN_FORM, NULL, "Begin anew: forget what was typed." },
	{ { K_CTRL('x') }, ACT_NONE, IN_FORM, NULL, "A long text in your editor ($VISUAL, $EDITOR)." },
	{ { K_CTRL('u') }, ACT_NONE, IN_FORM, NULL, "Clear to the beginning; ^K to the end, ^W a word, ^Y puts back, ^_ undoes." },
	{ { K_F1 }, ACT_HELP, IN_FORM, "help", "The keys that hold in a form." },
};
const int key_table_length = G_N_ELEMENTS(key_table);

enum act
key_act(gunichar key, unsigned where)
{
	for (int i = 0; i < key_table_length; i++)
		for (guint k = 0; k < G_N_ELEMENTS(key_table[i].key) && key_table[i].key[k]; k++)
			if (key_table[i].key[k] == key && key_table[i].where & where)
				return key_table[i].act;
	return ACT_NONE;
}

const char *
key_words(gunichar key, char buf[8])
{
	static const char *const name[] = {
		[K_UP - K_NONE] = "Up", [K_DOWN - K_NONE] = "Down", [K_LEFT - K_NONE] = "Left", [K_RIGHT - K_NONE] = "Right",
		[K_PAGE_UP - K_NONE] = "PgUp", [K_PAGE_DOWN - K_NONE] = "PgDn", [K_HOME - K_NONE] = "Home",
		[K_END - K_NONE] = "End", [K_DELETE - K_NONE] = "Del", [K_BACKSPACE - K_NONE] = "Backspace",
		[K_ENTER - K_NONE] = "Enter", [K_TAB - K_NONE] = "Tab", [K_BACKTAB - K_NONE] = "Shift-Tab",
		[K_ESC - K_NONE] = "Esc", [K_F1 - K_NONE] = "F1", [K_WORD_LEFT - K_NONE] = "Ctrl-Left",
		[K_WORD_RIGHT - K_NONE] = "Ctrl-Right", [K_WHEEL_UP - K_NONE] = "wheel", [K_WHEEL_DOWN - K_NONE] = "wheel",
	};

	if (key >= K_NONE)
		return key - K_NONE < G_N_ELEMENTS(name) && name[key - K_NONE] ? name[key - K_NONE] : "";
	if (key == ' ')
		return "Space";
	if (key < ' ') {
		buf[0] = '^';
		buf[1] = (char)(key + '@');
		buf[2] = '\0';
		return buf;
	}
	buf[g_unichar_to_utf8(key, buf)] = '\0';
	return buf;
}
