/* The screens of jobs at every size, as text. */
#include "jobs.h"

static void
show_jobs(void)
{
	drive_off();
	off("6 nuts 5/8 tray 2");
	key('1');
	find("U-joint bellows: renew");
	key('J');
}

static void
show_pick(void)
{
	find("Shift retainers: renew");
	key('J');
	find("a new job for it");
	key(K_ENTER);
	pick("Take the drive off");
}

static void
show_form(void)
{
	show_pick();
	key(K_ENTER);
}

static void
show_carry(void)
{
	drive_off();
	find("Alignment bar");
	key(' ');
}

static void
show_work(void)
{
	drive_off();
	to_side(FACE_WORK);
	key(K_ENTER);
	key(K_ENTER);
	find("Bar enters by two fingers");
	key(K_ENTER);
	type("both ways, no force");
	record();
	find("");
	key(K_UP);
}

/* A few things off, a few settings written down. */
static void
strip(void)
{
	drive_off();
	to_side(FACE_OFF);
	key(K_ENTER);
	type("3/8 in proud");
	key(K_ENTER);
	type("neutral, jaw at 12 o'clock");
	key(K_ENTER);
	key(K_ESC);
	off("6 nuts 5/8 tray 2");
	off("2 cotters renew tray 3");
	off("bearing sleeve thick side out bag A");
	off("split pin of the bellcrank missing");
}

static void
show_off(void)
{
	strip();
	find("bearing sleeve");
	find("");
}

static void
show_line(void)
{
	strip();
	key('a');
	type("4 washers 3/4 tray 2");
}

static void
show_line_empty(void)
{
	strip();
	key('a');
}

static void
show_refit(void)
{
	strip();
	to_side(FACE_REFIT);
	find("bearing sleeve");
	key(K_ENTER);
	find("cotters");
	key(K_ENTER);
	fill("count", "1");
	fill("why", "one broke, its hole is plugged");
	record();
	find("Trim angle");
	key(K_ENTER);
	fill("left", "1/2 in proud");
	fill("why", "set by the manual, p. 41");
	record();
	find("");
	to_side(FACE_CARRY);
	to_side(FACE_REFIT);
}

static void
show_back(void)
{
	strip();
	to_side(FACE_REFIT);
	find("cotters");
	key(K_ENTER);
	type("1");
	key(K_ENTER);
}

static void
show_rest(void)
{
	strip();
	key('n');
	type("the stud at 4 o'clock is stripped: new one is ordered");
	record();
	key('z');
	type("drive in the shed, trays on the shelf above the bench");
	record();
}

static void
show_left(void)
{
	strip();
	key('c');
}

static const struct {
	const char *name;
	void (*show)(void);
} screens[] = {
	{ "jobs", show_jobs },       { "job-pick", show_pick },
	{ "form-job", show_form },   { "job-carry", show_carry },
	{ "job-work", show_work },   { "job-off", show_off },
	{ "job-line", show_line },   { "job-line-empty", show_line_empty },
	{ "job-refit", show_refit }, { "form-job-back", show_back },
	{ "job-rests", show_rest },  { "job-left", show_left },
};

START_TEST(a_screen_is_as_it_was_looked_at)
{
	screens[_i].show();
	for (int k = 0; k < GOLDENS; k++)
		same_screen(screens[_i].name, &goldens[k]);
}
END_TEST

START_TEST(any_size_is_drawn)
{
	screens[_i].show();
	for (int h = 1; h < 60; h += 3)
		for (int w = 1; w < 210; w += 7) {
			grid_size(grid, h, w);
			app_draw(app, grid);
		}
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("job_screens");
	TCase *tc = tcase_create("screens");

	tcase_add_checked_fixture(tc, demo_begin, app_end);
	tcase_set_timeout(tc, 120);
	tcase_add_loop_test(tc, a_screen_is_as_it_was_looked_at, 0, G_N_ELEMENTS(screens));
	tcase_add_loop_test(tc, any_size_is_drawn, 0, G_N_ELEMENTS(screens));
	suite_add_tcase(s, tc);
	return run_suite(s);
}
