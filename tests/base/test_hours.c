#include "base/amount.h"

#include "absurd.h"

static gboolean
parse(const char *text, GError **err)
{
	gint64 seconds;

	return hours_parse(text, &seconds, err);
}

static const struct {
	const char *text;
	gint64 seconds;
} taken[] = {
	{ "2.4", 8640 }, { "2,4", 8640 }, { "2.4h", 8640 }, { "2.4 h", 8640 }, { "2,4 hours", 8640 },
	{ "2h24", 8640 },
	{ "2h24m", 8640 }, { "2 h 24 min", 8640 }, { "2h 24", 8640 }, { "2 hrs 24 mins", 8640 },
	{ "2:24", 8640 },
	{ "2:24:00", 8640 }, { "02:24", 8640 }, { "2:24 h", 8640 }, { "144m", 8640 }, { "144min", 8640 },
	{ "144 minutes", 8640 },
	{ "8640 s", 8640 }, { "2H24", 8640 }, { " 2.4 ", 8640 }, { "2:24:30", 8670 }, { "2h24m30s", 8670 },
	{ "2h30s", 7230 },
	{ "2h", 7200 }, { "2", 7200 }, { "0", 0 }, { "0h", 0 }, { "0:00", 0 }, { ".5", 1800 },
	{ "2h05", 7500 }, { "2h5m", 7500 },
	{ "2:05", 7500 }, { "90.5 min", 5430 }, { "614.8", 2213280 }, { "1234.5", 4444200 },
	{ "1234,5", 4444200 },
	{ "0.0001", 0 }, { "0.0002", 1 }, { "2.41", 8676 }, { "0.33", 1188 }, { "0.3333", 1200 },
	{ "2.4000000000000004", 8640 },
	{ "1.234", 4442 }, { "0,125", 450 }, { "1000:00", 3600000 },
	{ "10000000", G_GINT64_CONSTANT(36000000000) },
	{ "2 h 59 min 59 sec", 10799 },
};

START_TEST(running_hours_are_understood)
{
	g_autoptr(GError) err = NULL;
	gint64 seconds = -1;

	ck_assert_msg(hours_parse(taken[_i].text, &seconds, &err), "%s", err ? err->message : "?");
	ck_assert_int_eq(seconds, taken[_i].seconds);
}
END_TEST

#define FORMS "write 2.4, 2h24, 2:24 or 144 min"

static const struct {
	const char *text, *message;
} refused[] = {
	{ "2:75", "\"2:75\": 75 minutes are 60 or more: write 3.25 if that is meant" },
	{ "2h75", "\"2h75\": 75 minutes are 60 or more: write 3.25 if that is meant" },
	{ "2 h 144 min", "\"2 h 144 min\": 144 minutes are 60 or more: write 4.4 if that is meant" },
	{ "2:60", "\"2:60\": 60 minutes are 60 or more: write 3 if that is meant" },
	{ "2:24:60", "\"2:24:60\": 60 seconds are 60 or more: write 2:25:00 if that is meant" },
	{ "10000000h99", "\"10000000h99\": that is more than the 10000000 hours that are kept: " FORMS },
	{ "2:24:5",
	  "\"2:24:5\": minutes and seconds have two digits behind a colon: write such as 2:05 or 2:50" },
	{ "2:5", "\"2:5\": minutes and seconds have two digits behind a colon: write such as 2:05 or 2:50" },
	{ "2:245",
	  "\"2:245\": minutes and seconds have two digits behind a colon: write such as 2:05 or 2:50" },
	{ "2:2.5",
	  "\"2:2.5\": minutes and seconds have two digits behind a colon: write such as 2:05 or 2:50" },
	{ "2h5", "\"2h5\": 5 what? Write such as 2h05 or 2 h 5 min, or 2.5 for two and a half hours" },
	{ "2h245", "\"2h245\": 245 what? Write such as 2h05 or 2 h 5 min, or 2.5 for two and a half hours" },
	{ "-1", "\"-1\": running hours cannot be negative: " FORMS },
	{ "-0:30", "\"-0:30\": running hours cannot be negative: " FORMS },
	{ "\342\210\222" "2", "\"\342\210\222" "2\": running hours cannot be negative: " FORMS },
	{ "+2", "\"+2\": a number is wanted in place of \"+2\": " FORMS },
	{ "1.234,5", "\"1.234,5\": \"1.234,5\" has several points or commas: write 1234.5 if that is meant" },
	{ "1,234", "\"1,234\": \"1,234\" can be 1.234 or 1234: write it without the comma" },
	{ "2.4:30", "\"2.4:30\": a point or comma and a colon do not go together: " FORMS },
	{ "2.5h24", "\"2.5h24\": a fraction stands with one unit alone: " FORMS },
	{ "2h24.5", "\"2h24.5\": a fraction stands with one unit alone: " FORMS },
	{ "2h59.9m", "\"2h59.9m\": a fraction stands with one unit alone: " FORMS },
	{ "24m2h", "\"24m2h\": the units must become smaller: " FORMS },
	{ "2h3h", "\"2h3h\": the units must become smaller: " FORMS },
	{ "24m30", "\"24m30\": a unit is missing at the end: " FORMS },
	{ "2 24", "\"2 24\": \"24\" is left over: " FORMS },
	{ "2:", "\"2:\": a number is missing at the end: " FORMS },
	{ "2:24:", "\"2:24:\": a number is missing at the end: " FORMS },
	{ "2:24:30:10", "\"2:24:30:10\": \"10\" is left over: " FORMS },
	{ ":24", "\":24\": a number is wanted in place of \":24\": " FORMS },
	{ "2 days", "\"2 days\": \"days\" is left over: " FORMS },
	{ "2.4 x", "\"2.4 x\": \"x\" is left over: " FORMS },
	{ "h", "\"h\": a number is wanted in place of \"h\": " FORMS },
	{ "", "nothing was given: " FORMS },
	{ "10000000.001", "\"10000000.001\": that is more than the 10000000 hours that are kept: " FORMS },
	{ "10000000:01", "\"10000000:01\": that is more than the 10000000 hours that are kept: " FORMS },
	{ "99999999999999999999h",
	  "\"99999999999999999999h\": that is more than the 10000000 hours that are kept: " FORMS },
};

START_TEST(what_are_no_running_hours_is_refused_with_the_reason)
{
	g_autoptr(GError) err = NULL;
	gint64 seconds = 77;

	ck_assert(!hours_parse(refused[_i].text, &seconds, &err));
	assert_harmless(refused[_i].text, err);
	ck_assert_str_eq(err->message, refused[_i].message);
	ck_assert_int_eq(seconds, 77);
}
END_TEST

static const struct {
	gint64 seconds;
	const char *exact, *words;
} texts[] = {
	{ NONE, "", "" }, { 0, "0", "0" }, { 8640, "2.4", "2.4" }, { 8676, "2.41", "2.4" },
	{ 8670, "2:24:30", "2.4" },
	{ 7200, "2", "2" }, { 1, "0:00:01", "0" }, { 36, "0.01", "0" }, { 180, "0.05", "0.1" },
	{ 179, "0:02:59", "0" },
	{ 7380, "2.05", "2.1" }, { 3599, "0:59:59", "1" }, { 360000, "100", "100" },
	{ 2213280, "614.8", "614.8" },
	{ -8640, "-2.4", "-2.4" }, { -8670, "-2:24:30", "-2.4" }, { -1, "-0:00:01", "0" },
	{ G_MAXINT64, "2562047788015215:30:07", "2562047788015215.5" },
	{ G_MININT64 + 1, "-2562047788015215:30:07", "-2562047788015215.5" },
};

START_TEST(hours_are_written_exactly_and_for_people)
{
	char a[HOURS_TEXT], b[HOURS_TEXT];

	ck_assert_str_eq(hours_exact(texts[_i].seconds, a), texts[_i].exact);
	ck_assert_str_eq(hours_words(texts[_i].seconds, b), texts[_i].words);
}
END_TEST

/* FALSE when a whole number of seconds is not read back as it was. */
static gboolean
comes_back(gint64 seconds)
{
	char buf[HOURS_TEXT];
	gint64 back = -1;

	return hours_parse(hours_exact(seconds, buf), &back, NULL) && back == seconds;
}

START_TEST(every_whole_second_is_read_back)
{
	GRand *rand = test_rand("hours");
	gint64 most = G_GINT64_CONSTANT(3600) * HOURS_MOST;

	for (gint64 s = 0; s < 100000; s++)
		if (!comes_back(s))
			ck_abort_msg("%d s", (int)s);
	for (int i = 0; i < 50000; i++) {
		gint64 s = (gint64)(g_rand_double(rand) * (double)most);

		if (!comes_back(s))
			ck_abort_msg("%" G_GINT64_FORMAT " s", s);
	}
	ck_assert(comes_back(most) && comes_back(most - 1) && !comes_back(most + 1));
	g_rand_free(rand);
}
END_TEST

START_TEST(every_form_of_a_span_means_the_same)
{
	GRand *rand = test_rand("forms");

	for (int i = 0; i < 2000; i++) {
		int h = g_rand_int_range(rand, 0, 5000), m = g_rand_int_range(rand, 0, 60);
		gint64 want = (gint64)h * 3600 + m * 60;
		char *forms[] = {
			g_strdup_printf("%dh%02d", h, m),    g_strdup_printf("%d:%02d", h, m),
			g_strdup_printf("%d m", h * 60 + m), g_strdup_printf("%d h %d min", h, m),
			g_strdup_printf("%d:%02d:00", h, m),
		};

		for (gsize k = 0; k < G_N_ELEMENTS(forms); k++) {
			gint64 seconds = -1;

			ck_assert_msg(hours_parse(forms[k], &seconds, NULL) && seconds == want, "%s",
				      forms[k]);
			g_free(forms[k]);
		}
	}
	g_rand_free(rand);
}
END_TEST

START_TEST(absurd_text_is_refused_without_harm)
{
	GRand *rand = test_rand("absurd");

	assert_refuses_absurd(parse);
	assert_random_harmless(parse, "0123456789.,: hms-+inoursec", rand);
	g_rand_free(rand);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("Running hours are whole seconds");
	TCase *tc = tcase_create("hours");

	tcase_set_timeout(tc, 60);
	tcase_add_loop_test(tc, running_hours_are_understood, 0, G_N_ELEMENTS(taken));
	tcase_add_loop_test(tc, what_are_no_running_hours_is_refused_with_the_reason, 0,
			    G_N_ELEMENTS(refused));
	tcase_add_loop_test(tc, hours_are_written_exactly_and_for_people, 0, G_N_ELEMENTS(texts));
	tcase_add_test(tc, every_whole_second_is_read_back);
	tcase_add_test(tc, every_form_of_a_span_means_the_same);
	tcase_add_test(tc, absurd_text_is_refused_without_harm);
	suite_add_tcase(suite, tc);
	return run_suite(suite);
}
