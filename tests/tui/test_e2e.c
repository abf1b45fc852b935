/* long: one scene a test.
 * The real program in a real pseudo-terminal. */
#include "e2e.h"

#include "logbook/yard.h"

static void
start(void)
{
	start_with(&p, "xterm-256color", "C.UTF-8", NULL, NULL);
	pty_wants(&p, "BEFORE LAUNCH");
}

static void
quit(void)
{
	int status;

	pty_send(&p, "q");
	status = pty_end(&p);
	ck_assert_msg(WIFEXITED(status) && WEXITSTATUS(status) == 0, "status %x", status);
	ck_assert(!p.alternate);
	pty_clear(&p);
}

/* The newest entry of the logbook's journal, and every check of it. */
static char *
newest(void)
{
	g_autoptr(GError) err = NULL;
	struct book *b = book_open(file, BOOK_READ, &who, &err);
	g_autoptr(GArray) all = b ? book_history(b, 1, &err) : NULL;
	char *what = all && all->len ? g_strdup(((const struct book_entry *)(const void *)all->data)[0].what) : g_strdup("");

	ck_assert_msg(b != NULL, "%s", err ? err->message : "?");
	ck_verifies(b);
	book_close(b);
	return what;
}

#define ck_newest(words) \
	do { \
		g_autofree char *newest_ = newest(); \
		ck_assert_msg(strstr(newest_, words) != NULL, "the newest entry is \"%s\"", newest_); \
	} while (0)

START_TEST(an_outing_is_logged_undone_and_in_the_file)
{
	start();
	ck_assert(p.alternate);
	pty_send(&p, "o2\r");
	pty_wants(&p, "25 Nov 2026: 2 h");
	pty_send(&p, "\r");
	pty_wants(&p, "now 614.4 h");
	ck_newest("outing 2026-11-25: 2 h");
	pty_send(&p, "u");
	pty_wants(&p, "taken back: outing");
	pty_wants(&p, "612.4 h");
	quit();
	g_free(newest());
}
END_TEST

START_TEST(a_service_is_recorded_where_the_cursor_stands)
{
	VTermScreenCell cell;
	VTermPos at;

	start();
	pty_send(&p, "/u-joint bellows: renew\r");
	pty_wants(&p, "> U-joint bellows: renew");
	pty_gone(&p, "Enter keeps it");
	at = pty_cursor(&p);
	vterm_screen_get_cell(p.screen, at, &cell);
	ck_assert(cell.chars[0] == '>' && cell.attrs.reverse);
	pty_send(&p, "d\r");
	pty_wants(&p, "> Enter records it");
	pty_send(&p, "\r");
	pty_wants(&p, "u takes it back");
	ck_newest("bellows-ujoint.renew: renewed");
	pty_send(&p, "\033");
	pty_gone(&p, "No line holds");
	quit();
}
END_TEST

START_TEST(letters_of_any_kind_are_typed_and_erased_whole)
{
	start();
	pty_send(&p, "o1\t\t");
	pty_send(&p, "\025ą日本e\314\201x");	/* ą has the number of a special key */
	pty_wants(&p, "ą日本éx");
	pty_send(&p, "\177\177\177");
	pty_gone(&p, "本");
	pty_wants(&p, "ą日");
	pty_send(&p, "\033OD\033OD*");	/* left twice, in the form that terminals send in their keypad mode */
	pty_wants(&p, "*ą日");
	pty_send(&p, "\033");
	pty_wants(&p, "what was typed is kept");
	quit();
}
END_TEST

START_TEST(the_mouse_selects_opens_and_scrolls_once_it_is_wanted)
{
	start();
	pty_send(&p, "\033[<0;5;10M\033[<0;5;10m");	/* row 10 of the screen; not wanted yet */
	pty_send(&p, "\024");
	pty_wants(&p, "mouse on");
	pty_wants(&p, "> Shift retainers: renew");
	pty_send(&p, "\033[<0;5;10M\033[<0;5;10m");
	pty_wants(&p, "> Propeller shaft: runout");
	pty_send(&p, "\033[<64;5;10M");	/* the wheel, up */
	pty_wants(&p, "> Shift retainers: renew");
	pty_send(&p, "\024");
	pty_wants(&p, "mouse off");
	quit();
}
END_TEST

START_TEST(a_form_is_resized_and_keeps_what_was_typed)
{
	static const struct { int rows, cols; } sizes[] = { { 15, 40 }, { 50, 200 }, { 16, 79 }, { 24, 80 } };

	start();
	pty_send(&p, "o3.7");
	pty_wants(&p, "3.7 h");
	for (guint i = 0; i < G_N_ELEMENTS(sizes); i++) {
		pty_resize(&p, 5, 20);
		pty_wants(&p, "needs 40x15");
		pty_resize(&p, sizes[i].rows, sizes[i].cols);
		pty_wants(&p, "25 Nov 2026: 3.7 h");
	}
	pty_send(&p, "\r\r");
	pty_wants(&p, "main 3.7 h");
	quit();
	ck_newest("3.7 h");
}
END_TEST

START_TEST(what_cannot_be_is_said_and_stays_to_be_mended)
{
	start();
	pty_send(&p, "o2.4.5\r\r");
	pty_wants(&p, "several points or commas");
	pty_send(&p, "\177\177");
	pty_wants(&p, "25 Nov 2026: 2.4 h");
	pty_send(&p, "\r\r");
	pty_wants(&p, "main 2.4 h");
	quit();
	ck_newest("2.4 h");
}
END_TEST

START_TEST(pasted_lines_neither_submit_nor_command)
{
	start();
	pty_send(&p, "\033[200~qq\rd\r\033[201~");
	pty_wants(&p, "pasted into a form only");
	pty_send(&p, "o1\t\t\025\033[200~one\rtwo\033[201~");
	pty_wants(&p, "one two");
	pty_wants(&p, "An outing");
	pty_send(&p, "\033");
	quit();
}
END_TEST

START_TEST(a_crash_gives_the_terminal_back_and_the_draft_is_there)
{
	struct termios after;
	int status;

	start();
	pty_send(&p, "o4.1");
	pty_wants(&p, "4.1 h");
	ck_assert(p.alternate);
	kill(p.pid, SIGSEGV);
	status = pty_end(&p);
	ck_assert(WIFSIGNALED(status) ? WTERMSIG(status) == SIGSEGV : WEXITSTATUS(status) != 0);	/* the sanitizers exit */
	if (WIFSIGNALED(status)) {
		tcgetattr(p.fd, &after);
		ck_assert(!p.alternate);
		ck_assert(after.c_lflag & ICANON && after.c_lflag & ECHO);
		ck_assert_ptr_nonnull(strstr(p.raw->str + p.raw->len - MIN(p.raw->len, 200), "\033[?2004l"));
	}
	pty_clear(&p);
	start();
	pty_send(&p, "o");
	pty_wants(&p, "4.1");
	pty_send(&p, "\r\r");
	pty_wants(&p, "main 4.1 h");
	quit();
}
END_TEST

START_TEST(killed_at_any_moment_nothing_recorded_is_lost)
{
	start();
	pty_send(&p, "o1\r\r");
	pty_wants(&p, "main 1 h");
	pty_send(&p, "o2.2");
	pty_wants(&p, "2.2 h");
	kill(p.pid, SIGKILL);
	pty_end(&p);
	pty_clear(&p);
	ck_newest("outing 2026-11-25: 1 h");
	start();
	pty_send(&p, "o");
	pty_wants(&p, "2.2");
	pty_send(&p, "\033");
	quit();
}
END_TEST

static const int ends[] = { SIGTERM, SIGHUP, 0 };	/* 0: the terminal goes away */

START_TEST(a_hang_up_ends_it_in_order)
{
	int status;

	start();
	pty_send(&p, "o5.5");
	pty_wants(&p, "5.5 h");
	if (ends[_i]) {
		kill(p.pid, ends[_i]);
		status = pty_end(&p);
		ck_assert(!p.alternate);
		pty_clear(&p);
	} else {
		pty_clear(&p);	/* closes it */
		ck_assert_int_eq(waitpid(p.pid, &status, 0), p.pid);
	}
	ck_assert_msg(WIFEXITED(status) && WEXITSTATUS(status) == 0, "status %x", status);
	g_free(newest());
	start();
	pty_send(&p, "o");
	pty_wants(&p, "5.5");
	pty_send(&p, "\033");
	quit();
}
END_TEST

START_TEST(it_is_suspended_and_goes_on)
{
	g_autofree char *script = g_strdup_printf("set -m; '%s' --file '%s' --today 2026-11-25; echo STOPPED; fg; echo DONE",
						  program, file);
	char *const argv[] = { (char[]) { "/bin/bash" }, (char[]) { "-c" }, script, NULL };

	start_with(&p, "xterm-256color", "C.UTF-8", NULL, argv);
	pty_wants(&p, "BEFORE LAUNCH");
	pty_send(&p, "o6.6");
	pty_wants(&p, "6.6 h");
	pty_send(&p, "\032");
	/* bash's fg brings it back at once: what it said between is among the bytes, and the form is there again. */
	while (!strstr(p.raw->str, "STOPPED"))
		ck_assert_int_eq(pty_pump(&p, PATIENCE_MS), PUMPED_BYTES);
	pty_wants(&p, "25 Nov 2026: 6.6 h");
	pty_send(&p, "\r\r");
	pty_wants(&p, "main 6.6 h");
	pty_send(&p, "q");
	pty_wants(&p, "DONE");
	pty_end(&p);
	pty_clear(&p);
}
END_TEST

START_TEST(what_one_writes_the_other_shows)
{
	struct pty other;

	start();
	start_with(&other, "xterm", "C.UTF-8", NULL, NULL);
	pty_wants(&other, "612.4 h");
	pty_send(&p, "o2\r\r");
	pty_wants(&p, "now 614.4 h");
	pty_wants(&other, "another program changed the logbook");
	pty_wants(&other, "614.4 h");
	pty_send(&other, "o1\r\r");
	pty_wants(&other, "now 615.4 h");
	pty_wants(&p, "615.4 h");
	pty_send(&other, "q");
	pty_end(&other);
	pty_clear(&other);
	quit();
}
END_TEST

START_TEST(an_editor_writes_the_long_text)
{
	g_autofree char *editor = g_strdup_printf("EDITOR=sh %s/editor.sh", folder);
	g_autofree char *script = g_build_filename(folder, "editor.sh", NULL);

	ck_assert(g_file_set_contents(script, "printf 'calm, then\\nrain' >\"$1\"\n", -1, NULL));
	start_with(&p, "xterm-256color", "C.UTF-8", editor, NULL);
	pty_wants(&p, "BEFORE LAUNCH");
	pty_send(&p, "o1\033[A\033[A");	/* up to the button, and to the remark */
	pty_wants(&p, "> Remark");
	pty_send(&p, "\030");
	pty_wants(&p, "calm, then rain");
	ck_assert(g_file_set_contents(script, "exit 3\n", -1, NULL));
	pty_send(&p, "\030");
	pty_wants(&p, "the editor ended with 3");
	pty_wants(&p, "calm, then rain");
	pty_send(&p, "\r\r");
	pty_wants(&p, "main 1 h");
	quit();
}
END_TEST

START_TEST(commands_of_the_command_line_are_run_from_the_palette)
{
	g_autofree char *sheet = g_build_filename(folder, "list.csv", NULL), *line = g_strdup_printf(":yard %s\r", sheet);

	start();
	pty_send(&p, ":work list");
	pty_wants(&p, "yard [FILE]");
	pty_send(&p, "\033");
	pty_gone(&p, "Enter takes it");
	pty_send(&p, line);
	pty_wants(&p, "\n done\n");
	ck_assert(g_file_test(sheet, G_FILE_TEST_EXISTS));
	pty_send(&p, "q:outing nonsense\r");
	pty_wants(&p, "it was refused");
	pty_send(&p, "q");
	pty_wants(&p, "BEFORE LAUNCH");
	quit();
}
END_TEST

/* A command that does not end by itself is told of while it runs, and Esc ends it. */
START_TEST(long_work_shows_that_it_goes_on_and_can_be_stopped)
{
	g_autofree char *fifo = g_build_filename(folder, "slow.csv", NULL), *line = g_strdup_printf(":import outings %s\r", fifo);
	char *const argv[] = { (char[]) { "mkfifo" }, fifo, NULL };

	ck_assert(g_spawn_sync(NULL, (char **)argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL, NULL, NULL));
	start();
	pty_send(&p, line);
	pty_wants(&p, "under way");
	pty_send(&p, "\033");
	pty_wants(&p, "nothing of it was recorded");
	pty_send(&p, "q");
	pty_wants(&p, "BEFORE LAUNCH");
	quit();
}
END_TEST

START_TEST(without_colour_no_colour_is_sent)
{
	start_with(&p, "xterm-256color", "C.UTF-8", "NO_COLOR=1", NULL);
	pty_wants(&p, "past due");
	quit();
	start_with(&p, "xterm-256color", "C.UTF-8", "NO_COLOR=1", NULL);
	pty_wants(&p, "past due");
	for (char *s = p.raw->str; (s = strstr(s, "\033[")); s += 2) {
		gsize n = strspn(s + 2, "0123456789;");

		if (s[2 + n] != 'm')
			continue;
		for (const char *c = s + 2; c < s + 2 + n; c++)
			if ((c == s + 2 || c[-1] == ';') && (*c == '3' || *c == '4') && g_ascii_isdigit(c[1]))
				ck_assert_msg(c[1] == '9', "a colour: %.*s", (int)n, s + 2);
	}
	quit();
}
END_TEST

START_TEST(a_terminal_of_ascii_gets_no_other_byte)
{
	start_with(&p, "xterm", "C", NULL, NULL);
	pty_wants(&p, "BEFORE LAUNCH");
	pty_send(&p, "2");
	pty_wants(&p, "ux Joncs");
	for (gsize i = 0; i < p.raw->len; i++)
		ck_assert_msg(!(p.raw->str[i] & 0x80), "byte %02x", (unsigned char)p.raw->str[i]);
	pty_send(&p, "q");
	pty_wants(&p, "BEFORE LAUNCH");
	quit();
}
END_TEST

static const char *const terms[] = { "xterm", "xterm-256color", "screen", "tmux-256color", "linux", "vt100", "rxvt-unicode" };

START_TEST(every_usual_terminal_shows_the_list)
{
	start_with(&p, terms[_i], "C.UTF-8", NULL, NULL);
	while (!pty_has(&p, "BEFORE LAUNCH") && !pty_has(&p, "is known as TERM"))
		ck_assert_int_eq(pty_pump(&p, PATIENCE_MS), PUMPED_BYTES);
	if (pty_has(&p, "is known as TERM")) {	/* its entry is not on this system */
		pty_end(&p);
		pty_clear(&p);
		return;
	}
	pty_send(&p, "\033[B");
	pty_send(&p, "?");
	pty_wants(&p, "Keys that hold here");
	pty_send(&p, "\033");
	pty_gone(&p, "Keys that hold here");
	pty_send(&p, "q");
	ck_assert_int_eq(pty_end(&p), 0);
	pty_clear(&p);
}
END_TEST

static const char *const no_terms[] = { "dumb", "no-such-terminal", "" };

START_TEST(what_is_no_such_terminal_gets_the_plain_list_and_a_sentence)
{
	int status;

	start_with(&p, no_terms[_i], "C.UTF-8", NULL, NULL);
	status = pty_end(&p);
	ck_assert(WIFEXITED(status) && WEXITSTATUS(status) == 0);
	ck_assert_ptr_nonnull(strstr(p.raw->str, "BEFORE LAUNCH"));
	ck_assert_ptr_nonnull(strstr(p.raw->str, "movable cursor"));
	ck_assert(!p.alternate);
	pty_clear(&p);
}
END_TEST

START_TEST(a_logbook_that_is_none_is_refused_in_words)
{
	int status;

	ck_assert(g_file_set_contents(file, "this is no logbook", -1, NULL));
	start_with(&p, "xterm", "C.UTF-8", NULL, NULL);
	status = pty_end(&p);
	ck_assert(WIFEXITED(status) && WEXITSTATUS(status) == 4);
	ck_assert(pty_has(&p, "splitpin:"));
	ck_assert(!p.alternate);
	pty_clear(&p);
}
END_TEST

/* The sheet's only line, answered; into the file. */
static void
answer_sheet(const char *filled)
{
	g_autoptr(GError) err = NULL;
	struct book *b = book_open(file, BOOK_READ, &who, &err);
	struct boat boat;
	g_autoptr(GArray) sheets = b && book_boat(b, NULL, &boat, &err) ? book_yard_sheets(b, boat.id, &err) : NULL;
	g_autoptr(GArray) lines = NULL;
	g_autofree char *id = NULL, *text = NULL;

	ck_assert_msg(sheets && sheets->len == 1, "%s", err ? err->message : "not one sheet");
	lines = book_yard_lines(b, ((const struct yard_sheet *)(const void *)sheets->data)->id, &err);
	id = book_key_text(((const struct yard_shown *)(const void *)lines->data)->line.id);
	text = g_strdup_printf("id;line_no;yard_result;yard_date\r\n%s;1;\"good; dry\";20 Nov 2026\r\n", id);
	ck_assert(g_file_set_contents(filled, text, -1, NULL));
	record_clear(RECORD_BOAT, &boat);
	book_close(b);
}

START_TEST(a_sheet_for_the_yard_is_written_and_its_answer_taken)
{
	g_autofree char *csv = g_build_filename(folder, "sheet.csv", NULL), *filled = g_build_filename(folder, "filled.csv", NULL);

	start();
	pty_send(&p, "y");
	pty_wants(&p, "No sheet was handed to a yard");
	pty_send(&p, "a");
	pty_wants(&p, "A sheet for the yard");
	pty_send(&p, "cover.inspect\t\t\t\t\x15");
	pty_send(&p, csv);
	pty_wants(&p, "1 line for the yard");
	pty_send(&p, "\r\r");
	pty_wants(&p, "1 line written to");
	ck_newest("yard sheet of 1 line");
	answer_sheet(filled);
	pty_send(&p, "i");
	pty_send(&p, filled);
	pty_send(&p, "\r\r");
	pty_wants(&p, "t takes 1 line");
	ck_newest("yard sheet of 1 line");
	pty_send(&p, "t");
	pty_wants(&p, "1 line taken; u takes it back");
	ck_newest("yard sheet filled.csv read: 1 line taken");
	pty_send(&p, "q");
	pty_wants(&p, "BEFORE LAUNCH");
	quit();
}
END_TEST

START_TEST(a_part_is_put_on_the_list_bought_and_taken)
{
	start();
	pty_send(&p, "S");
	pty_wants(&p, "Nothing is in the stores yet");
	pty_send(&p, "abellows, U-joint\tRB-204\tQuay\t\ty\t48\t14");
	pty_wants(&p, "takes 14 days to come");
	pty_send(&p, "\r\r");
	pty_wants(&p, "b says what came of it");
	ck_newest("stores: bellows, U-joint added");
	pty_send(&p, "b2\t61.80 EUR\t\t\t2026-05\tbow locker\r\r");
	pty_wants(&p, "2 of bellows, U-joint came");
	ck_newest("stores: 2 bellows, U-joint bought");
	pty_send(&p, "tlost\r\r");
	pty_wants(&p, "taken out: 1, made 2026-05");
	ck_newest("stores: took 1 bellows, U-joint");
	pty_send(&p, "u");
	pty_wants(&p, "taken back: stores: took 1 bellows, U-joint");
	pty_send(&p, "\t\t");
	pty_wants(&p, "BY SEASON");
	pty_send(&p, "q");
	pty_wants(&p, "BEFORE LAUNCH");
	quit();
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("The screens in a terminal");
	TCase *tc = tcase_create("terminal");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_checked_fixture(tc, set_up, tear_down);
	tcase_set_timeout(tc, 120);
	tcase_add_test(tc, an_outing_is_logged_undone_and_in_the_file);
	tcase_add_test(tc, a_service_is_recorded_where_the_cursor_stands);
	tcase_add_test(tc, letters_of_any_kind_are_typed_and_erased_whole);
	tcase_add_test(tc, the_mouse_selects_opens_and_scrolls_once_it_is_wanted);
	tcase_add_test(tc, a_form_is_resized_and_keeps_what_was_typed);
	tcase_add_test(tc, what_cannot_be_is_said_and_stays_to_be_mended);
	tcase_add_test(tc, pasted_lines_neither_submit_nor_command);
	tcase_add_test(tc, a_crash_gives_the_terminal_back_and_the_draft_is_there);
	tcase_add_test(tc, killed_at_any_moment_nothing_recorded_is_lost);
	tcase_add_loop_test(tc, a_hang_up_ends_it_in_order, 0, G_N_ELEMENTS(ends));
	tcase_add_test(tc, it_is_suspended_and_goes_on);
	tcase_add_test(tc, what_one_writes_the_other_shows);
	tcase_add_test(tc, an_editor_writes_the_long_text);
	tcase_add_test(tc, commands_of_the_command_line_are_run_from_the_palette);
	tcase_add_test(tc, long_work_shows_that_it_goes_on_and_can_be_stopped);
	tcase_add_test(tc, without_colour_no_colour_is_sent);
	tcase_add_test(tc, a_terminal_of_ascii_gets_no_other_byte);
	tcase_add_loop_test(tc, every_usual_terminal_shows_the_list, 0, G_N_ELEMENTS(terms));
	tcase_add_loop_test(tc, what_is_no_such_terminal_gets_the_plain_list_and_a_sentence, 0, G_N_ELEMENTS(no_terms));
	tcase_add_test(tc, a_logbook_that_is_none_is_refused_in_words);
	tcase_add_test(tc, a_sheet_for_the_yard_is_written_and_its_answer_taken);
	tcase_add_test(tc, a_part_is_put_on_the_list_bought_and_taken);
	suite_add_tcase(s, tc);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
