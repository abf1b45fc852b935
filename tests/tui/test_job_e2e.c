/* long: one job from its start to its end, with all that goes wrong on the way.
 * The drive off in November and on in April, by the real program's keys alone, with its end by force in the middle. */
#include "e2e.h"

#include "logbook/job.h"
#include "logbook/removal.h"

static void
start(const char *today, const char *shows)
{
	char *const argv[] = {
		program, (char[]){ "--file" }, file, (char[]){ "--today" }, (char *)(guintptr)today, NULL
	};

	start_with(&p, "xterm-256color", "C.UTF-8", NULL, argv);
	pty_wants(&p, shows);
}

static void
quit(void)
{
	int status;

	pty_send(&p, "1");
	pty_wants(&p, "tasks due");
	pty_send(&p, "q");
	status = pty_end(&p);
	ck_assert_msg(WIFEXITED(status) && WEXITSTATUS(status) == 0, "status %x", status);
	pty_clear(&p);
}

/* The power is gone. */
static void
cut(void)
{
	ck_assert_int_eq(kill(p.pid, SIGKILL), 0);
	pty_end(&p);
	pty_clear(&p);
}

/* The job as it is in the file, whose every check holds; the caller's. */
static struct job_sheet *
in_file(void)
{
	g_autoptr(GError) err = NULL;
	struct book *b = book_open(file, BOOK_READ, &who, &err);
	struct job_sheet *s = NULL;
	struct boat boat;
	struct job job;

	ck_assert_msg(b && book_boat(b, NULL, &boat, &err), "%s", err ? err->message : "?");
	ck_assert_msg(book_find_job(b, boat.id, "drive-off-2026", &job, &err), "%s", err ? err->message : "?");
	s = book_job_sheet(b, &job, &err);
	ck_assert_msg(s != NULL, "%s", err ? err->message : "?");
	ck_verifies(b);
	record_clear(RECORD_JOB, &job);
	record_clear(RECORD_BOAT, &boat);
	book_close(b);
	return s;
}

/* How many lines are on the list; of the last, how many came off. */
static int
lines_in_file(gint64 *count)
{
	struct job_sheet *s = in_file();
	int n = (int)s->removals->len;

	*count = n ? ((const struct removal *)(const void *)s->removals->data)[n - 1].count : NONE;
	job_sheet_free(s);
	return n;
}

#define wants_count(side, n) \
	do { \
		g_autofree char *words_ = \
			g_strdup_printf("[%s %d%s", side, n, strcmp(side, "Strip-down") ? "/" : "]"); \
		pty_wants(&p, words_); \
	} while (0)

static void
begin_job(void)
{
	start("2026-11-25", "BEFORE LAUNCH");
	pty_send(&p, "Ja");
	pty_wants(&p, "What is the job for?");
	pty_send(&p, "/Take the drive off\r");
	pty_wants(&p, "> [ ] Take the drive off");
	pty_send(&p, " ");
	pty_wants(&p, "1 ticked");
	pty_send(&p, "\r");
	pty_wants(&p, "> Enter opens it");
	pty_send(&p, "\r");
	pty_wants(&p, "before the work");
	pty_send(&p, "\r");
	pty_wants(&p, "[Carry 0/");
}

/* How it stood, and what came off; in the middle the power is cut with a line half typed. */
static void
strip_down(void)
{
	gint64 count;
	int settings = lines_in_file(&count);

	pty_send(&p, "\t\t");
	pty_wants(&p, "[Strip-down");
	pty_send(&p, "\r");
	pty_wants(&p, "how does it stand now?");
	for (int i = 0; i < settings; i++) {
		g_autofree char *words = g_strdup_printf("mark %d by the rule\r", i + 1),
				*said = g_strdup_printf("found mark %d by", i + 1);

		pty_send(&p, words);
		pty_wants(&p, said);
	}
	pty_gone(&p, "Enter write it");
	pty_send(&p, "a");
	pty_wants(&p, "off>");
	pty_send(&p, "6 nuts 5/8 tray 2\r");
	wants_count("Strip-down", settings + 1);
	pty_send(&p, "2 cotters renew tray 3\r");
	wants_count("Strip-down", settings + 2);
	pty_send(&p, "4 wash");
	pty_wants(&p, "4 wash");
	cut();
	ck_assert_int_eq(lines_in_file(&count), settings + 2);
	ck_assert_int_eq(count, 2);
	start("2026-11-25", ": J ");
	pty_send(&p, "J");
	pty_wants(&p, "2 off");
	pty_send(&p, "\r");
	pty_wants(&p, "[Strip-down");
	pty_send(&p, "a");
	pty_wants(&p, "off>");
	pty_send(&p, "4 washers tray 2\r");
	wants_count("Strip-down", settings + 3);
	pty_send(&p, "drive unit @/nowhere.jpg\r");
	pty_wants(&p, "/nowhere.jpg");
	pty_send(&p, "\025drive unit\r");
	wants_count("Strip-down", settings + 4);
	pty_send(&p, "\033");
	pty_gone(&p, "Enter write it");
}

static void
rest_for_the_winter(void)
{
	pty_send(&p, "z");
	pty_wants(&p, "The job rests");
	pty_send(&p, "drive in the shed, trays on the shelf\r\r");
	pty_wants(&p, "RESTS since 25 Nov 2026");
	quit();
	start("2027-04-10", ": J ");
	pty_send(&p, "J/drive-off\r\r");
	pty_wants(&p, "Things lie: drive in the shed, trays on the shelf");
	pty_wants(&p, "[Refit 0/");
	pty_send(&p, "z");
	pty_wants(&p, "before the work");
	pty_send(&p, "\r");
	pty_wants(&p, "UNDER WAY");
	pty_wants(&p, "4 off");
}

/* The drive and the washers by Enter alone; of two cotters one went in, and the form is cut off before it says why. */
static void
put_back(void)
{
	pty_wants(&p, "drive unit");
	pty_send(&p, "\r");
	wants_count("Refit", 1);
	pty_send(&p, "\r");
	wants_count("Refit", 2);
	pty_send(&p, "\r");
	pty_wants(&p, "It goes back");
	pty_send(&p, "1\r");
	pty_wants(&p, "2 off and 1 in: what became of the rest?");
	pty_send(&p, "one broke");
	pty_wants(&p, "one broke");
	cut();
	start("2027-04-10", ": J ");
	pty_send(&p, "J\r");
	wants_count("Refit", 2);
	pty_send(&p, "\r");
	pty_wants(&p, "what was typed before is here again");
	pty_wants(&p, "one broke");
	pty_send(&p, "\033");
	pty_wants(&p, "STILL TO GO BACK");
	pty_send(&p, "j\r"); /* the nuts, and the cotters are forgotten */
	wants_count("Refit", 3);
	pty_send(&p, "c");
	pty_wants(&p, "It can't be closed yet");
	pty_wants(&p, "2 cotters, tray 3: not put back");
	pty_send(&p, "\033");
	pty_wants(&p, "STILL TO GO BACK");
	pty_send(&p, "\r");
	pty_wants(&p, "one broke");
	pty_send(&p, "\r");
	pty_wants(&p, "> Enter closes the line");
	pty_send(&p, "\r");
	wants_count("Refit", 4);
}

/* Every figure is as it was found, but for one. */
static void
compare_settings(void)
{
	gint64 count;
	int all = lines_in_file(&count);

	for (int i = 4; i < all; i++) {
		pty_send(&p, "\r");
		pty_wants(&p, "It goes back");
		if (i == 10) {
			pty_send(&p, "1/2 in proud\r");
			pty_wants(&p, "left 1/2 in proud: why?");
			pty_send(&p, "set by the manual, p. 41\r");
		} else {
			pty_send(&p, "=\r");
		}
		pty_wants(&p, "> Enter closes the line");
		pty_send(&p, "\r");
		wants_count("Refit", i + 1);
	}
}

/* Which of them comes first. */
static const char *
wants_any(const char *const *words)
{
	for (int ms = 0; ms < PATIENCE_MS;) {
		for (int i = 0; words[i]; i++)
			if (pty_has(&p, words[i]))
				return words[i];
		ms += pty_pump(&p, TURN_MS) == PUMPED_NOTHING ? TURN_MS : 0;
	}
	pty_wants(&p, words[0]);
	return words[0];
}

/* Steps are ticked by Enter; proofs and tasks are asked about. */
static void
work(void)
{
	struct job_sheet *s = in_file();
	int all = (int)s->aims->len;

	for (guint i = 0; i < s->steps->len; i++)
		all += ((const struct step *)(const void *)s->steps->data)[i].kind >= STEP_STATE;
	job_sheet_free(s);
	pty_send(&p, "\t\t");
	wants_count("Work", 0);
	for (int n = 0; n < all; n++) {
		g_autofree char *ticked = g_strdup_printf("[Work %d/", n + 1);
		const char *what;

		pty_send(&p, "\r");
		what = wants_any((const char *const[]){ ticked, "A proof was seen", "Work done", "Left as", NULL });
		if (what == ticked)
			continue;
		pty_send(&p, *what == 'L' ? "the other one found and in\r" : "\r"); /* what did not go back is missing */
		pty_wants(&p, *what == 'A' ? "> Enter: it was seen" : "> Enter records it");
		pty_send(&p, "\r");
		pty_wants(&p, ticked);
	}
}

START_TEST(the_drive_comes_off_in_november_and_goes_on_in_april_from_the_screen_alone)
{
	struct job_sheet *s;
	const struct removal *r;
	int changed = 0, wrong = 0;

	begin_job();
	strip_down();
	rest_for_the_winter();
	put_back();
	compare_settings();
	work();
	pty_send(&p, "c");
	pty_wants(&p, "CLOSED 10 Apr 2027");
	quit();
	s = in_file();
	ck_assert_int_eq(s->job.closed, day_from_ymd(2027, 4, 10));
	ck_assert_int_eq((int)s->open->len, 0);
	r = (const void *)s->removals->data;
	for (guint i = 0; i < s->removals->len; i++) {
		ck_assert_int_eq(r[i].back, day_from_ymd(2027, 4, 10));
		changed += r[i].as_found && g_strcmp0(r[i].as_found, r[i].as_left) && r[i].why;
		wrong += r[i].count != NONE && r[i].count != r[i].back_count && r[i].why;
	}
	ck_assert_int_eq(changed, 1);
	ck_assert_int_eq(wrong, 1);
	for (guint i = 0; i < s->aims->len; i++) {
		const struct job_aim *a = &((const struct job_aim *)(const void *)s->aims->data)[i];

		ck_assert_msg(a->state == AIM_DONE, "%s: %s", a->name, aim_state_words(a->state));
	}
	job_sheet_free(s);
}
END_TEST

/* What is typed in a job whose strip-down list shows, what is seen of it, and what is seen of it when the power came back. */
static const struct {
	const char *keys, *then, *after;
} cuts[] = {
	{ "\t\t\r3/8 in proud\r", "1. Trim angle at rest; setting, found", "3/8 in proud" },
	{ "a6 nuts 5/8 tray 2\r", "21. 6 nuts;", "1 off" },
	{ "=", "22. 6 nuts;", "2 off" },
	{ "t", "23. 1 Cotter", "3 off" },
	{ "/tray 2\re5 tray 4\r", "21. 5 nuts;", "3 off" },
	{ "/tray 4\rx", "taken out", "2 off" },
	{ "\t\t\t\r", "[Work 1/", "2 off" },
	{ "nthe stud is stripped\r\r", "noted", "2 off" },
	{ "zin the shed\r\r", "RESTS since", "Things lie: in the shed" },
	{ "z", "it goes on", "UNDER WAY" },
	{ "\t\r1\r\r", "USED AGAIN", "1 off" },
};

START_TEST(what_was_done_before_the_power_went_is_there_when_it_is_back)
{
	begin_job();
	for (guint i = 0; i < G_N_ELEMENTS(cuts); i++) {
		pty_send(&p, cuts[i].keys);
		pty_wants(&p, cuts[i].then);
		cut();
		job_sheet_free(in_file());
		start("2026-11-25", ": J ");
		pty_send(&p, "J/drive-off\r\r");
		pty_wants(&p, "Tab ->");
		pty_wants(&p, cuts[i].after);
	}
	quit();
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Job, end to end");
	TCase *tc = tcase_create("job");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_checked_fixture(tc, set_up, tear_down);
	tcase_set_timeout(tc, 300);
	tcase_add_test(tc, the_drive_comes_off_in_november_and_goes_on_in_april_from_the_screen_alone);
	tcase_add_test(tc, what_was_done_before_the_power_went_is_there_when_it_is_back);
	suite_add_tcase(s, tc);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
