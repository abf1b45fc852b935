#include "tui/keys.h"

/* An outing is logged, undone and looked up from every list. */
const struct key_binding key_table[] = {
	{ { ' ', K_ENTER }, ACT_TICK, IN_SEASON, "tick", "Tick the selected work: done today, as usual; u takes it back." },
	{ { 'p' }, ACT_PASS, IN_SEASON, "pass over", "Pass the selected work over: asks why, and it stays due." },
	{ { 'p' }, ACT_PASS, IN_READY, "let pass",
	  "Let what holds the launch pass: by a name, with a reason, until a day." },
	{ { K_ENTER }, ACT_HEED, IN_HEED, "read, go on", "The cautions were read: put that on record, and go on to the work." },
	{ { 'o' }, ACT_LOG, IN_ALL & ~(unsigned)IN_BOATS, "outing", "Log an outing: the hours, or what the meter shows." },
	{ { 'd' }, ACT_DID, IN_DUE | IN_BOAT | IN_PLAN | IN_SEASON | IN_READY, "did it",
	  "Record that the selected work was done." },
	{ { K_RIGHT, 'l' }, ACT_OPEN, IN_SEASON, "open", "All that is known of the selected work." },
	{ { K_ENTER, K_RIGHT, 'l' }, ACT_OPEN, IN_LISTS & ~(unsigned)IN_SEASON, "open",
	  "Open what is selected: why it is due, all that is known of it." },
	{ { 'm' }, ACT_MEASURE, IN_DUE | IN_BOAT | IN_SEASON, "measure", "Record a reading: play, anode, compression, oil." },
	{ { 'f' }, ACT_FOUND, IN_DUE | IN_BOAT | IN_OUTINGS, "found", "Record what was seen wrong, on what is selected." },
	{ { 'm' }, ACT_MEND, IN_FINDINGS | IN_READY, "mend", "It is put right, or with one that was mended, it is not after all." },
	{ { 'p' }, ACT_PHOTOS, IN_FINDINGS, "photos", "Open the photo files of the selected finding in your viewer." },
	{ { 'a', '+' }, ACT_ADD, IN_OUTINGS | IN_YEAR | IN_HAPPENINGS | IN_PLAN | IN_BOATS | IN_FINDINGS, "add",
	  "Add one to what is listed here." },
	{ { 's' }, ACT_STAY, IN_YEAR, "stay", "Record where the boat lies; a adds a season, or what is selected." },
	{ { 'e' }, ACT_CHANGE, IN_OUTINGS | IN_BOAT | IN_YEAR | IN_PLAN | IN_FINDINGS, "edit",
	  "Correct what is selected; the old stays in the history." },
	{ { K_DELETE, 'x' }, ACT_DROP, IN_OUTINGS | IN_BOAT | IN_YEAR | IN_HAPPENINGS | IN_PLAN | IN_FINDINGS, "take out",
	  "Take out what is selected; u brings it back." },
	{ { 'c' }, ACT_CLOSE, IN_HAPPENINGS, "close", "Close a happening: all that it asked for is done." },
	{ { '/' }, ACT_FILTER, IN_ALL, "search", "Show only lines that hold these words; Esc shows all again." },
	{ { ':' }, ACT_COMMAND, IN_ALL, "command", "Find any command by words, or type one as on the command line." },
	{ { '?', K_F1 }, ACT_HELP, IN_ALL, "help", "The keys that hold here." },
	{ { 'q' }, ACT_QUIT, IN_ALL, "quit", "Back; from the due list, end." },
	{ { 'w' }, ACT_SEASON, IN_DUE | IN_YEAR | IN_SEASON, "season lists",
	  "The season's lists: commissioning, first day afloat, mid-season, haul-out, lay-up, sea trial." },
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
	{ { K_PAGE_DOWN, K_CTRL('f') }, ACT_PAGE_DOWN, IN_SEASON, NULL, "Down a page." },
	{ { K_PAGE_DOWN, K_CTRL('f'), ' ' }, ACT_PAGE_DOWN, IN_ALL & ~(unsigned)IN_SEASON, NULL, "Down a page." },
	{ { K_HOME, 'g' }, ACT_FIRST, IN_ALL, NULL, "To the first line." },
	{ { K_END, 'G' }, ACT_LAST, IN_ALL, NULL, "To the last line." },
	{ { K_CTRL('z') }, ACT_SUSPEND, IN_ALL | IN_FORM, NULL, "Back to the shell for a while; fg returns." },
	{ { K_CTRL('l') }, ACT_REPAINT, IN_ALL | IN_FORM, NULL, "Draw the screen anew." },
	{ { K_CTRL('t') }, ACT_MOUSE, IN_ALL, NULL, "Mouse on or off; with it on, hold Shift to select text." },
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
