/* long: one scene a test.
 * The terminal as the screens take and give it back, seen through term_echo, which says by name what keys came. */
#include "pty.h"

static char *folder, *program;
static struct pty p;

static void
set_up(void)
{
	const char *top = g_getenv("top_builddir");
	g_autofree char *echo = g_build_filename(top ? top : ".", "tests/tui/term_echo", NULL);

	folder = g_dir_make_tmp("splitpin-term-XXXXXX", NULL);
	program = g_canonicalize_filename(echo, NULL);
}

static void
tear_down(void)
{
	GDir *dir = g_dir_open(folder, 0, NULL);
	const char *name;

	while ((name = g_dir_read_name(dir))) {
		g_autofree char *path = g_build_filename(folder, name, NULL);

		g_remove(path);
	}
	g_dir_close(dir);
	ck_assert_int_eq(g_rmdir(folder), 0);
	g_free(folder);
	g_free(program);
}

/* more: settings besides the usual ones, each "NAME=value", one a line; they come before those. */
static void
start_with(const char *more, char *const *argv)
{
	g_auto(GStrv) given = g_strsplit(more, "\n", -1);
	g_autoptr(GPtrArray) env = g_ptr_array_new_with_free_func(g_free);
	char *const usual[] = { program, NULL };

	for (int i = 0; given[i]; i++)
		g_ptr_array_add(env, g_strdup(given[i]));
	g_ptr_array_add(env, g_strdup_printf("HOME=%s", folder));
	g_ptr_array_add(env, g_strdup_printf("TMPDIR=%s", folder));
	g_ptr_array_add(env, g_strdup_printf("PATH=%s", g_getenv("PATH")));
	g_ptr_array_add(env, g_strdup("TZ=UTC"));
	if (!strstr(more, "LC_ALL="))
		g_ptr_array_add(env, g_strdup("LC_ALL=C.UTF-8"));
	if (!strstr(more, "TERM="))
		g_ptr_array_add(env, g_strdup("TERM=xterm-256color"));
	g_ptr_array_add(env, NULL);
	pty_start(&p, 24, 80, argv ? argv : usual, (char *const *)env->pdata);
}

static void
start(void)
{
	start_with("", NULL);
	pty_wants(&p, "> here");
}

static void
start_job(const char *more)
{
	char *const argv[] = { program, (char[]) { "--job" }, (char[]) { "calm" }, NULL };

	start_with(more, argv);
	pty_wants(&p, "> here");
}

static void
quit(void)
{
	int status;

	pty_send(&p, "q");
	status = pty_end(&p);
	ck_assert_msg(WIFEXITED(status) && WEXITSTATUS(status) == 0, "status %x", status);
	pty_clear(&p);
}

/* Of what was sent, that which came last begins so. */
static gboolean
last_sent(const char *one, const char *other)
{
	const char *at = g_strrstr(p.raw->str, one), *than = g_strrstr(p.raw->str, other);

	return at && (!than || at > than);
}

static gboolean
as_before(void)
{
	struct termios now;

	tcgetattr(p.fd, &now);
	return now.c_lflag == p.before.c_lflag && now.c_iflag == p.before.c_iflag && now.c_oflag == p.before.c_oflag;
}

static VTermScreenCell
cell_at(int y, int x)
{
	VTermScreenCell cell;

	vterm_screen_get_cell(p.screen, (VTermPos) { y, x }, &cell);
	return cell;
}

/* The process that shows the screen, which is not always the one that was started. */
static pid_t
shown_pid(void)
{
	g_autofree char *text = pty_text(&p);
	const char *at = strstr(text, "pid ");

	ck_assert_ptr_nonnull(at);
	return (pid_t)g_ascii_strtoll(at + strlen("pid "), NULL, 10);
}

/* Wait for bytes of which nothing is to be seen on the screen. */
static void
wants_bytes(const char *bytes)
{
	while (!strstr(p.raw->str, bytes))
		ck_assert_msg(pty_pump(&p, PATIENCE_MS) == PUMPED_BYTES, "never sent: %s", bytes + 1);
}

START_TEST(it_takes_a_second_screen_and_gives_the_terminal_back)
{
	int status;

	start_with("", NULL);
	pty_wants(&p, "> here");
	ck_assert(p.alternate && !as_before());
	ck_assert(last_sent("\033[?2004h", "\033[?2004l"));
	ck_assert(pty_cursor(&p).row == 23 && pty_cursor(&p).col == 0);
	pty_send(&p, "q");
	status = pty_end(&p);
	ck_assert_int_eq(status, 0);
	ck_assert(!p.alternate);
	ck_assert(last_sent("\033[?2004l", "\033[?2004h"));
	ck_assert(last_sent("\033[?25h", "\033[?25l"));
	pty_clear(&p);
}
END_TEST

static const struct { char key[2]; int sig; } crash[] = { { "s", SIGSEGV }, { "a", SIGABRT }, { "o", SIGSEGV } };

START_TEST(a_crash_gives_it_back_and_is_still_a_crash)
{
	struct termios now;
	int status;

	start();
	pty_send(&p, "mc");	/* the mouse, and no cursor */
	pty_wants(&p, "keys: m c");
	pty_send(&p, crash[_i].key);
	status = pty_end(&p);
	ck_assert_msg(WIFSIGNALED(status) && WTERMSIG(status) == crash[_i].sig, "status %x", status);
	ck_assert(!p.alternate);
	ck_assert(last_sent("\033[?2004l", "\033[?2004h"));
	ck_assert(last_sent("\033[?1000l", "\033[?1006;1000h"));
	ck_assert(last_sent("\033[?25h", "\033[?25l"));
	tcgetattr(p.fd, &now);
	ck_assert(now.c_lflag & ICANON && now.c_lflag & ECHO && now.c_lflag & ISIG);
	pty_clear(&p);
}
END_TEST

static const int ends[] = { SIGTERM, SIGHUP, SIGINT };

START_TEST(an_end_is_told_once_and_it_gives_it_back)
{
	start();
	kill(p.pid, ends[_i]);
	pty_wants(&p, "hang-ups: 1");
	ck_assert(!p.alternate);
	ck_assert_int_eq(pty_end(&p), 0);
	pty_clear(&p);
}
END_TEST

START_TEST(a_terminal_that_goes_away_is_an_end)
{
	int status;

	start();
	pty_clear(&p);	/* closes it */
	ck_assert_int_eq(waitpid(p.pid, &status, 0), p.pid);
	ck_assert_msg(WIFEXITED(status) && WEXITSTATUS(status) == 0, "status %x", status);
}
END_TEST

START_TEST(pasted_text_is_between_its_marks)
{
	start();
	pty_send(&p, "\033[200~q\rsa\033[201~x");
	pty_wants(&p, "keys: <paste q Enter s a > x");
	quit();
}
END_TEST

static const struct { const char *bytes, *name; } sent[] = {
	{ "\033OA", "Up" },	  { "\033[A", "Up" },	      { "\033OD", "Left" },	{ "\033[C", "Right" },
	{ "\033OB", "Down" },	  { "\033[5~", "PgUp" },      { "\033[6~", "PgDn" },	{ "\033OH", "Home" },
	{ "\033[H", "Home" },	  { "\033OF", "End" },	      { "\033[F", "End" },	{ "\033[3~", "Del" },
	{ "\177", "Backspace" },  { "\r", "Enter" },	      { "\n", "Enter" },	{ "\t", "Tab" },
	{ "\033[Z", "Shift-Tab" }, { "\033OP", "F1" },	      { "\033", "Esc" },	{ "\033[1;5D", "Ctrl-Left" },
	{ "\033b", "Ctrl-Left" }, { "\033[1;5C", "Ctrl-Right" }, { "\033f", "Ctrl-Right" }, { "\003", "^C" },
	{ "\034", "^\\" },	  { "\023", "^S" },	      { "\021", "^Q" },		{ "\026", "^V" },
	{ "ą", "ą" },		  { "ć", "ć" },	      { "日", "日" },		{ "\360\237\232\242", "\360\237\232\242" },
};

START_TEST(a_key_comes_by_its_name_and_a_letter_as_itself)
{
	g_autofree char *words = g_strdup_printf("keys: %s x", sent[_i].name);

	start();
	pty_send(&p, sent[_i].bytes);
	if (!strcmp(sent[_i].name, "Esc"))
		pty_wants(&p, "keys: Esc");	/* with nothing after it */
	pty_send(&p, "x");
	pty_wants(&p, words);
	quit();
}
END_TEST

static const char *const unknown[] = { "\033[15;2q", "\033[>0;95;0c", "\033Oq", "\033[<0;5;3M" };

START_TEST(a_key_that_nobody_knows_is_none)
{
	start();
	pty_send(&p, unknown[_i]);
	pty_send(&p, "x");
	pty_wants(&p, "keys: x");
	quit();
}
END_TEST

START_TEST(esc_and_keys_in_one_go_are_all_told)
{
	start();
	pty_send(&p, "\033x");
	pty_wants(&p, "keys: Esc x");
	pty_send(&p, "\033\033OA");
	pty_wants(&p, "keys: Esc x Esc Up");
	quit();
}
END_TEST

START_TEST(bytes_that_are_no_letter_swallow_no_key)
{
	start();
	pty_send(&p, "\303x\351\033OA\342\202ą\377\r");
	pty_wants(&p, "keys: x Up ą Enter");
	quit();
}
END_TEST

START_TEST(wide_and_marked_letters_shift_nothing)
{
	start();
	for (int y = 1; y <= 4; y++)
		ck_assert_msg(cell_at(y, 10).chars[0] == '|', "row %d", y);
	ck_assert(cell_at(1, 0).chars[0] == 0x65e5 && cell_at(1, 0).width == 2 && cell_at(1, 2).chars[0] == 0x672c);
	ck_assert(cell_at(2, 1).chars[0] == 0x105);
	quit();
}
END_TEST

START_TEST(another_size_is_told_and_shown_whole)
{
	static const struct { int rows, cols; const char *words; } size[] = {
		{ 15, 40, "size 15x40" }, { 3, 12, "size 3x12" }, { 60, 200, "size 60x200" }, { 24, 80, "size 24x80" },
	};

	start();
	for (guint i = 0; i < G_N_ELEMENTS(size); i++) {
		pty_resize(&p, size[i].rows, size[i].cols);
		pty_wants(&p, size[i].words);
		pty_wants(&p, "> here");
		ck_assert_int_eq(pty_cursor(&p).row, size[i].rows - 1);
	}
	pty_wants(&p, "keys: anew anew anew anew");
	ck_assert(cell_at(1, 10).chars[0] == '|');
	quit();
}
END_TEST

START_TEST(the_size_is_the_terminals_whatever_the_settings_say)
{
	start_with("LINES=10\nCOLUMNS=20", NULL);
	pty_wants(&p, "size 24x80");
	quit();
}
END_TEST

START_TEST(the_cursor_hides_and_comes_back)
{
	start();
	pty_send(&p, "c");
	wants_bytes("\033[?25l");
	g_string_truncate(p.raw, 0);
	pty_send(&p, "c");
	wants_bytes("\033[?25h");
	pty_wants(&p, "keys: c c");
	ck_assert_int_eq(pty_cursor(&p).row, 23);
	quit();
}
END_TEST

START_TEST(a_repaint_sends_all_of_it)
{
	start();
	pty_send(&p, "x");
	pty_wants(&p, "keys: x");
	g_string_truncate(p.raw, 0);
	pty_send(&p, "r");
	pty_wants(&p, "keys: x r");
	wants_bytes("size 24x80");
	quit();
}
END_TEST

/* The numbers of what was sent to set looks, in order, as " 1; 39; 49;". */
static char *
looks_sent(void)
{
	GString *out = g_string_new(" ");

	for (const char *s = p.raw->str; (s = strstr(s, "\033[")); s += 2) {
		gsize n = strspn(s + 2, "0123456789;");

		if (s[2 + n] == 'm')
			g_string_append_printf(out, "%.*s;", (int)n, s + 2);
	}
	g_string_replace(out, ";", "; ", 0);
	return g_string_free(out, FALSE);
}

START_TEST(colours_are_the_first_six_and_nothing_is_dim)
{
	static const char *const never[] = { " 2;", " 30;", " 37;", " 38;", " 4", " 9", " 10" };
	g_autofree char *looks = NULL, *rest = NULL;

	start();
	looks = looks_sent();
	ck_assert_msg(strstr(looks, " 31;") && strstr(looks, " 36;") && strstr(looks, " 7;"), "%s", looks);
	g_auto(GStrv) parts = g_strsplit(looks, " 49;", -1);
	g_auto(GStrv) underlined = NULL;

	rest = g_strjoinv("", parts);
	underlined = g_strsplit(rest, " 4;", -1);
	g_free(rest);
	rest = g_strjoinv("", underlined);
	for (guint i = 0; i < G_N_ELEMENTS(never); i++)
		ck_assert_msg(!strstr(rest, never[i]), "%s in %s", never[i], rest);
	ck_assert(cell_at(5, 30).attrs.reverse);	/* selected */
	ck_assert(cell_at(6, 30).attrs.bold && cell_at(6, 30).fg.indexed.idx == 1);	/* past */
	quit();
}
END_TEST

START_TEST(without_colour_weight_and_lines_are_left)
{
	g_autofree char *looks = NULL;

	start_with("NO_COLOR=1", NULL);
	pty_wants(&p, "> here");
	pty_send(&p, "x");
	pty_wants(&p, "keys: x");
	looks = looks_sent();
	for (const char *s = looks; (s = strpbrk(s, "34")); s++)
		ck_assert_msg(s[-1] != ' ' || !g_ascii_isdigit(s[1]) || s[1] == '9', "a colour in %s", looks);
	ck_assert(cell_at(5, 30).attrs.reverse && cell_at(6, 30).attrs.bold && cell_at(4, 30).attrs.underline);
	quit();
}
END_TEST

START_TEST(an_empty_wish_for_no_colour_is_none)
{
	start_with("NO_COLOR=", NULL);
	pty_wants(&p, "> here");
	ck_assert_int_eq(cell_at(6, 30).fg.indexed.idx, 1);
	quit();
}
END_TEST

START_TEST(a_locale_of_ascii_gets_and_gives_nothing_else)
{
	start_with("LC_ALL=C", NULL);
	pty_wants(&p, "> here");
	pty_wants(&p, "ea");
	pty_send(&p, "é日x");
	pty_wants(&p, "keys: x");
	for (gsize i = 0; i < p.raw->len; i++)
		ck_assert_msg(!(p.raw->str[i] & 0x80), "byte %02x", (unsigned char)p.raw->str[i]);
	for (int y = 1; y <= 4; y++)
		ck_assert_msg(cell_at(y, 10).chars[0] == '|', "row %d", y);
	quit();
}
END_TEST

static const char *const refused[] = { "TERM=dumb", "TERM=no-such-terminal", "TERM=", "TERM=../../etc/passwd", "NO_TERM=" };

START_TEST(what_can_show_no_screens_gets_a_sentence)
{
	int status;

	start_with(refused[_i], NULL);
	status = pty_end(&p);
	ck_assert_msg(WIFEXITED(status) && WEXITSTATUS(status) == 2, "status %x", status);
	ck_assert_ptr_nonnull(strstr(p.raw->str, "splitpin due"));
	ck_assert_ptr_nonnull(strstr(p.raw->str, "splitpin help"));
	ck_assert_ptr_null(strchr(p.raw->str, '\033'));
	pty_clear(&p);
}
END_TEST

static const char *const elsewhere[] = { "</dev/null", "| cat" };

START_TEST(nothing_but_a_sentence_goes_into_a_pipe)
{
	g_autofree char *script = g_strdup_printf("'%s' %s", program, elsewhere[_i]);
	char *const argv[] = { (char[]) { "/bin/sh" }, (char[]) { "-c" }, script, NULL };

	start_with("", argv);
	pty_wants(&p, "the screens need a terminal");
	pty_end(&p);
	ck_assert_ptr_null(strchr(p.raw->str, '\033'));
	pty_clear(&p);
}
END_TEST

static const struct { const char *term; gboolean second_screen; } terminals[] = {
	{ "xterm", TRUE },	   { "xterm-256color", TRUE }, { "screen", TRUE }, { "screen-256color", TRUE },
	{ "tmux-256color", TRUE }, { "rxvt-unicode", TRUE },   { "linux", FALSE }, { "vt100", FALSE },
	{ "vt220", FALSE },
};

START_TEST(every_usual_terminal_is_taken_and_given_back)
{
	g_autofree char *setting = g_strdup_printf("TERM=%s", terminals[_i].term), *left = NULL;

	start_with(setting, NULL);
	while (!pty_has(&p, "> here") && !pty_has(&p, "is known as TERM"))
		ck_assert_int_eq(pty_pump(&p, PATIENCE_MS), PUMPED_BYTES);
	if (pty_has(&p, "> here")) {	/* else its entry is not on this system */
		ck_assert_int_eq(p.alternate, terminals[_i].second_screen);
		pty_send(&p, "\033[B");
		pty_wants(&p, "keys: Down");
		pty_send(&p, "ą\033OA");
		pty_wants(&p, "keys: Down ą Up");
		pty_send(&p, "q");
	}
	pty_end(&p);
	left = pty_text(&p);
	if (!terminals[_i].second_screen) {
		ck_assert_ptr_null(strstr(p.raw->str, "\033[?1049"));
		ck_assert_ptr_null(strstr(p.raw->str, "\033[?2004"));
		ck_assert_str_eq(g_strchomp(g_strchug(left)), "");
		ck_assert_int_eq(pty_cursor(&p).row, 23);
	}
	pty_clear(&p);
}
END_TEST

START_TEST(a_crash_without_a_second_screen_leaves_the_last_line)
{
	int status;

	start_with("TERM=vt100", NULL);
	pty_wants(&p, "> here");
	pty_send(&p, "s");
	status = pty_end(&p);
	ck_assert(WIFSIGNALED(status));
	ck_assert(pty_cursor(&p).row == 23 && pty_cursor(&p).col == 0);
	pty_clear(&p);
}
END_TEST

START_TEST(the_mouse_is_asked_for_when_wanted)
{
	start();
	ck_assert_ptr_null(strstr(p.raw->str, "1000h"));
	pty_send(&p, "m");
	wants_bytes("\033[?1006;1000h");
	pty_send(&p, "\033[<0;5;3M");
	pty_wants(&p, "keys: m click 2,4");
	pty_send(&p, "\033[<0;5;3m");
	pty_send(&p, "\033[<65;1;1M");
	pty_wants(&p, "keys: m click 2,4 wheel");
	pty_send(&p, "m");
	wants_bytes("\033[?1006;1000l");
	quit();
}
END_TEST

static void
write_script(const char *name, const char *text)
{
	g_autofree char *path = g_build_filename(folder, name, NULL);

	ck_assert(g_file_set_contents(path, text, -1, NULL));
}

static int
files_in_folder(void)
{
	GDir *dir = g_dir_open(folder, 0, NULL);
	int n = 0;

	while (g_dir_read_name(dir))
		n++;
	g_dir_close(dir);
	return n;
}

/* The editor is a script; what is in it does the editing. */
static void
start_with_editor(const char *script)
{
	g_autofree char *more = g_strdup_printf("VISUAL=sh %s/ed --flag\nEDITOR=false", folder);

	write_script("ed", script);
	start_job(more);
}

static void
quit_job(void)
{
	pty_send(&p, "q");
	pty_wants(&p, "ENDED 0");
	ck_assert_int_eq(pty_end(&p), 0);
	pty_clear(&p);
}

START_TEST(an_editor_with_arguments_writes_the_text)
{
	start_with_editor("test \"$1\" = --flag && test \"$(stat -c %a \"$2\")\" = 600 && grep -qx calm \"$2\" &&\n"
			  "printf 'then rain\\n\\n' >\"$2\"\n");
	pty_send(&p, "e");
	pty_wants(&p, "text [then rain]");
	pty_wants(&p, "taken");
	pty_wants(&p, "> here");
	ck_assert(p.alternate && last_sent("\033[?2004h", "\033[?2004l"));
	ck_assert_int_eq(files_in_folder(), 1);
	quit_job();
}
END_TEST

START_TEST(an_editor_that_fails_changes_nothing)
{
	start_with_editor("echo nonsense >\"$2\"; exit 3\n");
	pty_send(&p, "e");
	pty_wants(&p, "the editor ended with 3");
	pty_wants(&p, "text [calm]");
	ck_assert_int_eq(files_in_folder(), 1);
	quit_job();
}
END_TEST

START_TEST(an_editor_that_is_not_there_changes_nothing)
{
	start_job("EDITOR=/no/such/editor");
	pty_send(&p, "e");
	pty_wants(&p, "the editor ended with 127");
	pty_wants(&p, "text [calm]");
	quit_job();
}
END_TEST

START_TEST(what_is_no_text_is_kept_aside)
{
	start_with_editor("printf 'caf\\351' >\"$2\"\n");
	pty_send(&p, "e");
	pty_wants(&p, "the editor wrote what is no UTF-8");
	pty_wants(&p, "text [calm]");
	ck_assert_int_eq(files_in_folder(), 2);
	quit_job();
}
END_TEST

START_TEST(an_interrupt_is_the_editors_alone)
{
	start_with_editor("trap 'echo sunny >\"$2\"; exit 0' INT; echo EDITING; while :; do read line; done\n");
	pty_send(&p, "e");
	pty_wants(&p, "EDITING");
	ck_assert(!p.alternate);
	pty_send(&p, "\003");
	pty_wants(&p, "text [sunny]");
	quit_job();
}
END_TEST

static const char *const stops[] = { "kill -TSTP 0", "kill -TSTP $$" };	/* both, and itself only */

START_TEST(an_editor_that_stops_gives_the_shell_its_turn)
{
	g_autofree char *script = g_strdup_printf("%s; echo back >\"$2\"\n", stops[_i]);

	start_with_editor(script);
	pty_send(&p, "e");
	pty_wants(&p, "STOPPED by TSTP, terminal given back");
	pty_send(&p, "fg\r");
	pty_wants(&p, "text [back]");
	quit_job();
}
END_TEST

START_TEST(it_stops_for_the_shell_and_goes_on)
{
	start_job("");
	pty_send(&p, "x\032");
	pty_wants(&p, "STOPPED by TSTP, terminal given back");
	ck_assert(!p.alternate);
	ck_assert(last_sent("\033[?2004l", "\033[?2004h"));
	pty_send(&p, "fg\r");
	pty_wants(&p, "keys: x ^Z");
	ck_assert(p.alternate);
	pty_send(&p, "y");
	pty_wants(&p, "keys: x ^Z y");	/* nothing came of going on itself */
	ck_assert(last_sent("\033[?2004h", "\033[?2004l"));
	quit_job();
}
END_TEST

static const int stopping[] = { SIGTSTP, SIGSTOP };

START_TEST(stopped_from_elsewhere_it_goes_on_too)
{
	start_job("");
	kill(shown_pid(), stopping[_i]);
	wants_bytes("STOPPED");
	pty_send(&p, "fg\r");
	wants_bytes("fg");
	pty_wants(&p, "keys: anew");
	pty_wants(&p, "> here");
	ck_assert(p.alternate && last_sent("\033[?2004h", "\033[?2004l"));
	pty_send(&p, "y");
	pty_wants(&p, "keys: anew y");
	pty_gone(&p, "STOPPED");
	quit_job();
}
END_TEST

START_TEST(a_size_that_changed_meanwhile_is_the_first_shown)
{
	start_job("");
	pty_send(&p, "\032");
	pty_wants(&p, "STOPPED");
	pty_resize(&p, 15, 40);
	g_string_truncate(p.raw, 0);
	pty_send(&p, "fg\r");
	pty_wants(&p, "size 15x40");
	ck_assert_ptr_null(strstr(p.raw->str, "size 24x80"));
	pty_wants(&p, "> here");
	ck_assert_int_eq(pty_cursor(&p).row, 14);
	quit_job();
}
END_TEST

/* A session of its own has no shell to come back from. */
START_TEST(without_a_shell_it_does_not_stop)
{
	start();
	pty_send(&p, "\032y");
	pty_wants(&p, "keys: ^Z y");
	quit();
}
END_TEST

static const char *const stop_keys[] = { "\033", "\003" };

START_TEST(work_is_stopped_and_other_keys_are_kept)
{
	start();
	pty_send(&p, "w");
	pty_wants(&p, "under way");
	pty_send(&p, "1234567890ąbdfghijkl");
	pty_send(&p, stop_keys[_i]);
	pty_wants(&p, "stopped");
	pty_wants(&p, "keys: w 1 2 3 4 5 6 7 8 9 0 ą b d f g h i j k l");
	quit();
}
END_TEST

START_TEST(an_end_during_work_is_not_lost)
{
	start();
	pty_send(&p, "w");
	pty_wants(&p, "under way");
	kill(p.pid, SIGTERM);
	pty_wants(&p, "hang-ups: 1");
	ck_assert_int_eq(pty_end(&p), 0);
	pty_clear(&p);
}
END_TEST

static TCase *
looks_and_keys(void)
{
	TCase *tc = tcase_create("looks and keys");

	tcase_add_test(tc, pasted_text_is_between_its_marks);
	tcase_add_loop_test(tc, a_key_comes_by_its_name_and_a_letter_as_itself, 0, G_N_ELEMENTS(sent));
	tcase_add_loop_test(tc, a_key_that_nobody_knows_is_none, 0, G_N_ELEMENTS(unknown));
	tcase_add_test(tc, esc_and_keys_in_one_go_are_all_told);
	tcase_add_test(tc, bytes_that_are_no_letter_swallow_no_key);
	tcase_add_test(tc, wide_and_marked_letters_shift_nothing);
	tcase_add_test(tc, another_size_is_told_and_shown_whole);
	tcase_add_test(tc, the_size_is_the_terminals_whatever_the_settings_say);
	tcase_add_test(tc, the_cursor_hides_and_comes_back);
	tcase_add_test(tc, a_repaint_sends_all_of_it);
	tcase_add_test(tc, colours_are_the_first_six_and_nothing_is_dim);
	tcase_add_test(tc, without_colour_weight_and_lines_are_left);
	tcase_add_test(tc, an_empty_wish_for_no_colour_is_none);
	tcase_add_test(tc, a_locale_of_ascii_gets_and_gives_nothing_else);
	tcase_add_test(tc, the_mouse_is_asked_for_when_wanted);
	tcase_add_loop_test(tc, work_is_stopped_and_other_keys_are_kept, 0, G_N_ELEMENTS(stop_keys));
	return tc;
}

static TCase *
taking_and_giving(void)
{
	TCase *tc = tcase_create("taking and giving back");

	tcase_add_test(tc, it_takes_a_second_screen_and_gives_the_terminal_back);
	tcase_add_loop_test(tc, a_crash_gives_it_back_and_is_still_a_crash, 0, G_N_ELEMENTS(crash));
	tcase_add_loop_test(tc, an_end_is_told_once_and_it_gives_it_back, 0, G_N_ELEMENTS(ends));
	tcase_add_test(tc, a_terminal_that_goes_away_is_an_end);
	tcase_add_test(tc, an_end_during_work_is_not_lost);
	tcase_add_loop_test(tc, what_can_show_no_screens_gets_a_sentence, 0, G_N_ELEMENTS(refused));
	tcase_add_loop_test(tc, nothing_but_a_sentence_goes_into_a_pipe, 0, G_N_ELEMENTS(elsewhere));
	tcase_add_loop_test(tc, every_usual_terminal_is_taken_and_given_back, 0, G_N_ELEMENTS(terminals));
	tcase_add_test(tc, a_crash_without_a_second_screen_leaves_the_last_line);
	return tc;
}

static TCase *
other_programs(void)
{
	TCase *tc = tcase_create("the editor and the shell");

	tcase_add_test(tc, an_editor_with_arguments_writes_the_text);
	tcase_add_test(tc, an_editor_that_fails_changes_nothing);
	tcase_add_test(tc, an_editor_that_is_not_there_changes_nothing);
	tcase_add_test(tc, what_is_no_text_is_kept_aside);
	tcase_add_test(tc, an_interrupt_is_the_editors_alone);
	tcase_add_loop_test(tc, an_editor_that_stops_gives_the_shell_its_turn, 0, G_N_ELEMENTS(stops));
	tcase_add_test(tc, it_stops_for_the_shell_and_goes_on);
	tcase_add_loop_test(tc, stopped_from_elsewhere_it_goes_on_too, 0, G_N_ELEMENTS(stopping));
	tcase_add_test(tc, a_size_that_changed_meanwhile_is_the_first_shown);
	tcase_add_test(tc, without_a_shell_it_does_not_stop);
	return tc;
}

int
main(void)
{
	Suite *s = suite_create("The terminal");
	TCase *const parts[] = { looks_and_keys(), taking_and_giving(), other_programs() };
	SRunner *runner = srunner_create(s);
	int failed;

	for (guint i = 0; i < G_N_ELEMENTS(parts); i++) {
		tcase_add_checked_fixture(parts[i], set_up, tear_down);
		tcase_set_timeout(parts[i], 120);
		suite_add_tcase(s, parts[i]);
	}
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
