#include "tui/term.h"

#include "base/err.h"
#include "tui/editor.h"
#include "tui/term_signals.h"

#include <curses.h>
#include <langinfo.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <term.h>
#include <unistd.h>
#include <wchar.h>

enum { ESC = 27, ESC_MS = 25, BYTES = 256, CODE_PASTE = KEY_MAX + 1, CODE_PASTE_END, CODE_WORD_LEFT, CODE_WORD_RIGHT };

struct terminal {
	SCREEN *screen;
	gboolean colour, mouse, ascii;
	const char *paste_on, *paste_off;	/* NULL: the terminal knows nothing of pasting */
	struct grid *shown;	/* as curses has it */
	mbstate_t letter;	/* of which some bytes have come */
	GArray *kept;	/* struct key_event: typed while work was under way */
};

static const char *
capability(const char *name)
{
	const char *text = tigetstr(name);

	return text && text != (const char *)-1 ? text : NULL;
}

/* A capability without its "$<5/>", which asks a slow terminal for patience. */
static void
gather(GString *out, const char *text)
{
	for (const char *p = text ? text : ""; *p; p++)
		if (p[0] == '$' && p[1] == '<' && strchr(p, '>'))
			p = strchr(p, '>');
		else
			g_string_append_c(out, *p);
}

/* What gives the terminal back when nothing else can be called any more. */
static void
catch_signals(const struct terminal *t)
{
	g_autoptr(GString) out = g_string_new(NULL);

	gather(out, t->paste_off);
	gather(out, capability("kmous") && t->paste_off ? "\033[?1000l\033[?1006l" : NULL);
	gather(out, capability("sgr0"));
	gather(out, t->colour ? capability("op") : NULL);
	gather(out, capability("rmkx"));
	gather(out, capability("cnorm"));
	if (capability("rmcup")) {
		gather(out, capability("rmcup"));
	} else {
		gather(out, tiparm(capability("cup"), LINES - 1, 0));
		gather(out, "\r\n");
	}
	signals_catch(out->str, out->len);
}

static void
set_paste(const struct terminal *t, gboolean on)
{
	if (!t->paste_on)
		return;
	putp(on ? t->paste_on : t->paste_off);
	fflush(stdout);
}

/* The look of each style: an accent of the first six colours, which light and dark terminals both show, and an attribute
 * that says the same without it. */
static const struct { short colour; attr_t with, without; } look[STYLE_COUNT] = {
	[STYLE_PLAIN] = { -1, A_NORMAL, A_NORMAL },
	[STYLE_STRONG] = { -1, A_BOLD, A_BOLD },
	[STYLE_TITLE] = { -1, A_REVERSE | A_BOLD, A_REVERSE | A_BOLD },
	[STYLE_HEAD] = { -1, A_BOLD | A_UNDERLINE, A_BOLD | A_UNDERLINE },
	[STYLE_SELECTED] = { -1, A_REVERSE, A_REVERSE },
	[STYLE_PAST] = { COLOR_RED, A_BOLD, A_BOLD },
	[STYLE_SOON] = { COLOR_MAGENTA, A_NORMAL, A_NORMAL },
	[STYLE_WATER] = { COLOR_CYAN, A_BOLD, A_BOLD },
	[STYLE_KEY] = { -1, A_BOLD, A_BOLD },
	[STYLE_FIELD] = { -1, A_UNDERLINE, A_UNDERLINE },
	[STYLE_ERROR] = { COLOR_RED, A_BOLD, A_BOLD },
};

static void
begin_colour(struct terminal *t)
{
	const char *none = getenv("NO_COLOR");

	t->colour = has_colors() && !(none && *none) && start_color() == OK && use_default_colors() == OK;
	for (short i = 0; t->colour && i < STYLE_COUNT; i++)
		init_pair((short)(i + 1), look[i].colour, -1);
}

/* Keys that curses has no code for, and the other form of those that a terminal may send either way. */
static void
define_keys(void)
{
	static const struct { const char *bytes; int code; } known[] = {
		{ "\033[1;5D", CODE_WORD_LEFT }, { "\033[1;5C", CODE_WORD_RIGHT }, { "\033[1;3D", CODE_WORD_LEFT },
		{ "\033[1;3C", CODE_WORD_RIGHT }, { "\033b", CODE_WORD_LEFT },	   { "\033f", CODE_WORD_RIGHT },
		{ "\033[A", KEY_UP }, { "\033[B", KEY_DOWN }, { "\033[C", KEY_RIGHT }, { "\033[D", KEY_LEFT },
		{ "\033OA", KEY_UP }, { "\033OB", KEY_DOWN }, { "\033OC", KEY_RIGHT }, { "\033OD", KEY_LEFT },
		{ "\033[H", KEY_HOME }, { "\033[F", KEY_END }, { "\033OH", KEY_HOME }, { "\033OF", KEY_END },
		{ "\033[200~", CODE_PASTE },	  { "\033[201~", CODE_PASTE_END },
	};
	static const struct { const char *name; int code; } named[] = {
		{ "kLFT5", CODE_WORD_LEFT }, { "kRIT5", CODE_WORD_RIGHT }, { "PS", CODE_PASTE }, { "PE", CODE_PASTE_END },
	};

	for (guint i = 0; i < G_N_ELEMENTS(known); i++)
		define_key(known[i].bytes, known[i].code);
	for (guint i = 0; i < G_N_ELEMENTS(named); i++)
		if (capability(named[i].name))
			define_key(capability(named[i].name), named[i].code);
}

/* Many an entry is silent about pasting though the terminal knows it, and one that does not lets the request pass.  Only a
 * terminal with a second screen is asked: others are consoles, or older than pasting. */
static void
find_paste(struct terminal *t)
{
	if (!capability("smcup"))
		return;
	t->paste_on = capability("BE") && capability("BD") ? capability("BE") : "\033[?2004h";
	t->paste_off = capability("BE") && capability("BD") ? capability("BD") : "\033[?2004l";
}

/* Every key as a key: no signals from ^C, ^Z and ^\, no stopping of the output by ^S. */
static void
begin_keys(void)
{
	raw();
	noecho();
	nonl();
	keypad(stdscr, TRUE);
	intrflush(stdscr, FALSE);
}

struct terminal *
term_open(gboolean mouse, GError **err)
{
	static const char plain[] = "splitpin due, splitpin outing and the others (splitpin help) work without";
	const char *name = getenv("TERM");
	struct terminal *t;
	TERMINAL *probed;
	int known;

	if (!isatty(STDIN_FILENO) || !isatty(STDOUT_FILENO) || !name || !*name || !strcmp(name, "dumb")) {
		err_set(err, ERR_USE, "the screens need a terminal with a movable cursor; %s", plain);
		return NULL;
	}
	if (setupterm(NULL, STDOUT_FILENO, &known) != OK || !capability("cup")) {
		err_set(err, ERR_USE, "no terminal with a movable cursor is known as TERM=%.40s; %s", name, plain);
		return NULL;
	}
	t = g_new0(struct terminal, 1);
	signals_keep_settings();
	use_tioctl(TRUE);
	probed = cur_term;
	t->screen = newterm(NULL, stdout, stdin);
	del_curterm(probed);
	if (!t->screen) {
		g_free(t);
		err_set(err, ERR_USE, "the terminal can't be taken over; %s", plain);
		return NULL;
	}
	if (!getenv("ESCDELAY"))
		set_escdelay(ESC_MS);
	t->shown = grid_new(0, 0, FALSE);
	t->kept = g_array_new(FALSE, FALSE, sizeof(struct key_event));
	t->ascii = g_ascii_strcasecmp(nl_langinfo(CODESET), "UTF-8") != 0;
	begin_keys();
	begin_colour(t);
	define_keys();
	find_paste(t);
	catch_signals(t);
	set_paste(t, TRUE);
	term_mouse(t, mouse);
	return t;
}

void
term_close(struct terminal *t)
{
	if (!t)
		return;
	term_mouse(t, FALSE);
	set_paste(t, FALSE);
	if (!capability("smcup")) {
		erase();
		refresh();
	}
	endwin();
	signals_leave();
	delscreen(t->screen);
	grid_free(t->shown);
	g_array_free(t->kept, TRUE);
	g_free(t);
}

void
term_size(const struct terminal *t, int *h, int *w)
{
	(void)t;
	getmaxyx(stdscr, *h, *w);
}

gboolean
term_ascii(const struct terminal *t)
{
	return t->ascii;
}

static void
put_cell(const struct terminal *t, int y, int x, const struct cell *c)
{
	wchar_t text[CCHARW_MAX + 1] = L" ";
	attr_t attributes = t->colour ? look[c->style].with : look[c->style].without;
	const char *p = c->text;
	cchar_t shown;
	int n = 0;

	for (; *p && n < CCHARW_MAX; p = g_utf8_next_char(p))
		text[n++] = (wchar_t)g_utf8_get_char(p);
	text[MAX(n, 1)] = L'\0';
	setcchar(&shown, text, attributes, t->colour ? (short)(c->style + 1) : 0, NULL);
	mvadd_wch(y, x, &shown);
}

/* While it sends, curses lets go of a SIGTSTP that comes. */
static void
draw_changes(void)
{
	signals_hold_stop(TRUE);
	refresh();
	signals_hold_stop(FALSE);
}

/* Only what changed is given to curses, each cell at its own place, so that one of which curses thinks another width shifts
 * nothing. */
void
term_show(struct terminal *t, const struct grid *g)
{
	if (t->shown->h != g->h || t->shown->w != g->w) {
		grid_size(t->shown, g->h, g->w);
		erase();
	}
	for (int i = 0; i < g->h * g->w; i++) {
		struct cell *was = &t->shown->cell[i];
		const struct cell *c = &g->cell[i];

		if (was->style == c->style && !strcmp(was->text, c->text))
			continue;
		*was = *c;
		if (*c->text)
			put_cell(t, i / g->w, i % g->w, c);
	}
	curs_set(g->cursor_y >= 0);
	if (g->cursor_y >= 0)
		move(g->cursor_y, g->cursor_x);
	draw_changes();
}

void
term_repaint(struct terminal *t)
{
	(void)t;
	clearok(curscr, TRUE);
}

void
term_mouse(struct terminal *t, gboolean on)
{
	t->mouse = on;
	mousemask(on ? BUTTON1_CLICKED | BUTTON1_PRESSED | BUTTON4_PRESSED | BUTTON5_PRESSED : 0, NULL);
	mouseinterval(0);
}

/* The rest of a sequence, to its last byte. */
static void
skip_rest(void)
{
	int c, n = 0;

	timeout(0);
	do
		c = getch();
	while (c != ERR && (c < '@' || c > '~') && ++n < 32);
}

/* A key that nobody knows comes as Esc and more: its letters are no commands.  FALSE: it is Esc alone. */
static gboolean
skip_unknown(void)
{
	int c;

	timeout(0);
	c = getch();
	if (c == '[' || c == 'O') {
		skip_rest();
		return TRUE;
	}
	if (c != ERR)
		ungetch(c);
	return FALSE;
}

static struct key_event
mouse_event(const struct terminal *t)
{
	struct key_event k = { .key = K_NONE };
	MEVENT m;

	if (!t->mouse)
		skip_rest();
	if (!t->mouse || getmouse(&m) != OK)
		return k;
	k.y = m.y;
	k.x = m.x;
	if (m.bstate & BUTTON4_PRESSED)
		k.key = K_WHEEL_UP;
	else if (m.bstate & BUTTON5_PRESSED)
		k.key = K_WHEEL_DOWN;
	else
		k.key = K_CLICK;
	return k;
}

static struct key_event
special(const struct terminal *t, int code)
{
	static const struct { int code; gunichar key; } keys[] = {
		{ KEY_UP, K_UP }, { KEY_DOWN, K_DOWN }, { KEY_LEFT, K_LEFT }, { KEY_RIGHT, K_RIGHT }, { KEY_PPAGE, K_PAGE_UP },
		{ KEY_NPAGE, K_PAGE_DOWN }, { KEY_HOME, K_HOME }, { KEY_END, K_END }, { KEY_DC, K_DELETE },
		{ KEY_BACKSPACE, K_BACKSPACE }, { KEY_ENTER, K_ENTER }, { KEY_BTAB, K_BACKTAB }, { KEY_F(1), K_F1 },
		{ CODE_WORD_LEFT, K_WORD_LEFT }, { CODE_WORD_RIGHT, K_WORD_RIGHT }, { CODE_PASTE, K_PASTE },
		{ CODE_PASTE_END, K_PASTE_END }, { KEY_RESIZE, K_RESIZE },
	};

	if (code == KEY_MOUSE)
		return mouse_event(t);
	for (guint i = 0; i < G_N_ELEMENTS(keys); i++)
		if (keys[i].code == code)
			return (struct key_event) { .key = keys[i].key };
	return (struct key_event) { .key = K_NONE };
}

static gunichar
plain(wchar_t c)
{
	switch (c) {
	case 0: return K_NONE;
	case '\r': case '\n': return K_ENTER;
	case '\t': return K_TAB;
	case ESC: return K_ESC;
	case 127: return K_BACKSPACE;
	}
	return g_unichar_validate((gunichar)c) ? (gunichar)c : K_NONE;
}

/* TRUE when byte ended a letter.  Our own, as get_wch() swallows the keys that follow bytes which are no letter. */
static gboolean
end_letter(struct terminal *t, int byte, wchar_t *letter)
{
	char c = (char)byte;
	gboolean begun = !mbsinit(&t->letter);
	size_t n = mbrtowc(letter, &c, 1, &t->letter);

	if (n == (size_t)-1) {
		t->letter = (mbstate_t) { 0 };
		return begun && end_letter(t, byte, letter);
	}
	return n != (size_t)-2;
}

static void
give_back(struct terminal *t)
{
	gboolean mouse = t->mouse;

	term_mouse(t, FALSE);
	t->mouse = mouse;
	set_paste(t, FALSE);
	endwin();
}

static void
take_again(struct terminal *t)
{
	struct winsize size;

	/* Cells for a size that changed while another job had the terminal are not shown first. */
	if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_row && is_term_resized(size.ws_row, size.ws_col)) {
		resizeterm(size.ws_row, size.ws_col);
		erase();
	}
	clearok(curscr, TRUE);
	draw_changes();
	set_paste(t, TRUE);
	term_mouse(t, t->mouse);
	signals_forget_stops();
}

void
term_suspend(struct terminal *t)
{
	give_back(t);
	signals_stop();
	take_again(t);
}

/* K_RESIZE after a stop, too: the cells are to be looked at anew. */
static gboolean
told_by_signal(struct terminal *t, struct key_event *k)
{
	switch (signals_told()) {
	case TOLD_NOTHING: return FALSE;
	case TOLD_END: k->key = K_HANGUP; return TRUE;
	case TOLD_STOP: term_suspend(t); break;
	case TOLD_RETURN:
		give_back(t);
		take_again(t);
		break;
	}
	k->key = K_RESIZE;
	return TRUE;
}

static struct key_event
read_key(struct terminal *t, int ms)
{
	struct key_event k = { .key = K_NONE };
	wchar_t letter = 0;
	int c;

	if (told_by_signal(t, &k))
		return k;
	timeout(ms);
	do
		c = getch();
	while (c >= 0 && c < BYTES && !end_letter(t, c, &letter));
	if (c == ERR && !told_by_signal(t, &k) && signals_terminal_gone())
		k.key = K_HANGUP;
	if (c == ERR)
		return k;
	if (c == KEY_RESIZE)
		grid_size(t->shown, 0, 0);	/* curses cut its cells or added to them */
	if (c >= BYTES)
		return special(t, c);
	k.key = letter == ESC && skip_unknown() ? K_NONE : plain(letter);
	return k;
}

struct key_event
term_key(struct terminal *t, int ms)
{
	struct key_event k;

	if (!t->kept->len)
		return read_key(t, ms);
	k = g_array_index(t->kept, struct key_event, 0);
	g_array_remove_index(t->kept, 0);
	return k;
}

gboolean
term_stopped(struct terminal *t)
{
	for (;;) {
		struct key_event k = read_key(t, 0);

		if (k.key == K_NONE)
			return FALSE;
		if (k.key == K_ESC || k.key == K_CTRL('c'))
			return TRUE;
		g_array_append_val(t->kept, k);
		if (k.key == K_HANGUP)
			return TRUE;
	}
}

char *
term_edit(struct terminal *t, const char *text, GError **err)
{
	char *edited;

	give_back(t);
	edited = editor_text(text, err);
	take_again(t);
	return edited;
}
