/* Every view and form at every size, as text. */
#include "screens.h"

static void
set_due(void)
{
	key('1');
}
static void
set_outings(void)
{
	key('2');
}
static void
set_boat(void)
{
	key('3');
	find("gimbal bearing");
}
static void
set_year(void)
{
	key('4');
	key(K_DOWN);
}
static void
set_happenings(void)
{
	key('5');
}
static void
set_plan(void)
{
	key('6');
	find("impeller");
}
static void
set_history(void)
{
	key('7');
}
static void
set_boats(void)
{
	key('8');
}
static void
set_why(void)
{
	find("U-joint bellows: renew");
	key(K_ENTER);
}
static void
set_help(void)
{
	key('?');
}
static void
set_palette(void)
{
	key(':');
	type("log");
}
static void
set_form_outing(void)
{
	key('o');
	type("2.4");
}
static void
set_form_did(void)
{
	find("U-joint bellows: renew");
	key('d');
	key(K_ENTER);
}
static void
set_form_measure(void)
{
	key('3');
	find("anodes");
	key('m');
	key(K_UP);
	key(K_CTRL('u'));
	type("anode-left");
	key(K_DOWN);
	type("45 %");
}
static void
set_form_wrong(void)
{
	key('o');
	type("2.4.5");
	key(K_ENTER);
}
static void
set_form_new(void)
{
	key('8');
	key('a');
}

static const struct { const char *name; void (*set)(void); } screens[] = {
	{ "due", set_due },		  { "outings", set_outings },	      { "boat", set_boat },
	{ "year", set_year },		  { "happenings", set_happenings },   { "plan", set_plan },
	{ "history", set_history },	  { "boats", set_boats },	      { "why", set_why },
	{ "help", set_help },		  { "palette", set_palette },	      { "form-outing", set_form_outing },
	{ "form-did", set_form_did },	  { "form-measure", set_form_measure }, { "form-wrong", set_form_wrong },
	{ "form-new", set_form_new },
};

START_TEST(a_screen_is_as_it_was_looked_at)
{
	screens[_i].set();
	for (int k = 0; k < GOLDENS; k++)
		same_screen(screens[_i].name, &goldens[k]);
}
END_TEST

START_TEST(any_size_is_drawn)
{
	screens[_i].set();
	for (int h = 1; h < 60; h += 3)
		for (int w = 1; w < 210; w += 7) {
			grid_size(grid, h, w);
			app_draw(app, grid);
			if (h < 15 || w < 40) {
				g_autofree char *frame = grid_text(grid);

				ck_assert_msg(w < 19 || strstr(frame, "needs 40x15"), "%s", frame);
			}
		}
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Screens");
	TCase *tc = tcase_create("screens");

	tcase_add_checked_fixture(tc, demo_begin, app_end);
	tcase_set_timeout(tc, 120);
	tcase_add_loop_test(tc, a_screen_is_as_it_was_looked_at, 0, G_N_ELEMENTS(screens));
	tcase_add_loop_test(tc, any_size_is_drawn, 0, G_N_ELEMENTS(screens));
	suite_add_tcase(s, tc);
	return run_suite(s);
}
