#include "exchange/record_csv.h"

#include "base/date.h"
#include "base/err.h"
#include "exchange/cell.h"
#include "model/records.h"

#include <check.h>
#include <stdlib.h>
#include <string.h>

#define TODAY day_from_ymd(2026, 11, 25)

/* A small logbook: names of boats and engines, nothing else. */
struct names {
	int asked;	/* how often key_of was */
	GArray *taken;	/* struct outing, owned */
	enum err_code refuse;
	int refuse_from;	/* this many are taken first; -1: all */
};

static const char *
name_of(G_GNUC_UNUSED void *user, enum record ref, gint64 key)
{
	static const char *const boats[] = { "Grey Heron", "=Sum, \"of\" all" };

	if (ref == RECORD_BOAT && (key == 1 || key == 2))
		return boats[key - 1];
	if (ref == RECORD_ENGINE && (key == 11 || key == 21))
		return "main";
	return NULL;
}

/* "main" is the engine of the row's boat. */
static gboolean
key_of(void *user, enum record ref, const char *text, const void *record, gint64 *key, GError **err)
{
	struct names *n = user;
	const struct outing *o = record;

	n->asked++;
	for (*key = 1; *key <= 2 && ref == RECORD_BOAT; ++*key)
		if (!strcmp(text, name_of(NULL, ref, *key)))
			return TRUE;
	if (ref == RECORD_ENGINE && !strcmp(text, "main")) {
		*key = (o->boat == NONE ? 1 : o->boat) * 10 + 1;
		return TRUE;
	}
	return key_from_letters(text, key) || err_set(err, ERR_INPUT, "there is no \"%s\" here", text);
}

static gboolean
take_outing(void *user, void *record, G_GNUC_UNUSED gint64 line, GError **err)
{
	struct names *n = user;

	if (n->refuse_from >= 0 && (int)n->taken->len >= n->refuse_from)
		return err_set(err, n->refuse, "refused");
	g_array_append_vals(n->taken, record, 1);
	record_init(RECORD_OUTING, record);	/* its texts are ours now */
	return TRUE;
}

static void
names_init(struct names *n)
{
	*n = (struct names){ 0, g_array_new(FALSE, FALSE, sizeof(struct outing)), ERR_INPUT, -1 };
}

static void
names_clear(struct names *n)
{
	for (guint i = 0; i < n->taken->len; i++)
		record_clear(RECORD_OUTING, &g_array_index(n->taken, struct outing, i));
	g_array_unref(n->taken);
}

static gboolean
read_outings(const char *text, size_t length, struct names *n, struct csv_report *report)
{
	guint64 filled = G_GUINT64_CONSTANT(1) << record_field_index(RECORD_OUTING, "boat");
	struct record_in how = { RECORD_OUTING, TODAY, filled, key_of, take_outing, n };
	GError *err = NULL;
	struct csv_in *in = csvin_memory(text, length, "f.csv", NULL, &err);
	gboolean good;

	csvreport_init(report);
	if (!in) {
		g_ptr_array_add(report->errors, g_strdup(err->message));
		report->n_errors = 1;
		g_error_free(err);
		return FALSE;
	}
	good = record_csv_read(in, &how, report);
	csvin_free(in);
	return good;
}

/* The files under tests/data/csv */

#define FOUR "4 rows"
#define WINDOWS "save the file as UTF-8, or convert it, for example with iconv -f WINDOWS-1252 -t UTF-8"

static const struct {
	const char *file, *want;
} files[] = {
	{ "good", FOUR },
	{ "lf", FOUR },
	{ "bom-semicolon", FOUR },
	{ "sep-line", FOUR },
	{ "reordered", FOUR
	  "\ncolumn 2, \"nickname\", is not known and was left out\n1 row without anything in it was passed "
	  "over" },
	{ "header-only", "0 rows\nthere is a header but no row" },
	{ "empty",
	  "0 rows\nf.csv:1:1: the file is empty: its first line should name the columns of outings" },
	{ "latin-1", "2 rows\nf.csv:4:36: the byte 0xe4 is not UTF-8: " WINDOWS },
	{ "utf-16",
	  "0 rows\nf.csv: the text is UTF-16: save it as UTF-8, or convert it with iconv -f UTF-16 -t "
	  "UTF-8" },
	{ "nul", "0 rows\nf.csv:2:33: a NUL byte: this is no text; save the file as CSV with UTF-8" },
	{ "cut-off",
	  "1 rows\nf.csv:3:53: the quoted text that begins here never ends: the file is cut off, or a "
	  "closing "
	  "quote is missing" },
	{ "stray-quote",
	  "0 rows\nf.csv:2:29: a quote inside a field: put the whole field in quotes, and write \"\" "
	  "for each "
	  "quote in it" },
	{ "ragged",
	  "3 rows\nf.csv:6:1: this row has 5 fields, the header has 7: write the separator for empty "
	  "fields too" },
	{ "twice",
	  "0 rows\nf.csv:1:38: the column \"date\" stands twice, in columns 1 and 7: rename or remove one" },
	{ "no-date",
	  "0 rows\nf.csv:1:1: the header lacks the column \"date\": the first line names the columns, in any "
	  "order\ncolumn 1, \"dat\", is not known and was left out: is \"date\" meant?" },
};

static char *
summary(const struct csv_report *report)
{
	GString *text = g_string_new(NULL);

	g_string_append_printf(text, "%d rows", (int)report->rows);
	for (guint i = 0; i < report->errors->len; i++)
		g_string_append_printf(text, "\n%s", (char *)report->errors->pdata[i]);
	for (guint i = 0; i < report->notes->len; i++)
		g_string_append_printf(text, "\n%s", (char *)report->notes->pdata[i]);
	return g_string_free(text, FALSE);
}

static void
load(const char *name, char **bytes, size_t *n)
{
	const char *top = g_getenv("top_srcdir");
	g_autofree char *path = g_strdup_printf("%s/tests/data/csv/outings-%s.csv", top ? top : ".", name);

	ck_assert_msg(g_file_get_contents(path, bytes, n, NULL), "%s can't be read", path);
}

static void
same_four(const struct names *n)
{
	static const struct {
		gint64 day, hours, water, rinsed;
		const char *place, *remark;
	} want[] = {
		{ 2, 8640, WATER_FRESH, NONE, "Lighthouse", "first run of the year" },
		{ 9, 5400, WATER_FRESH, NONE, "north, beyond the bar", "said \"calm\"" },
		{ 16, 2520, WATER_SALT, 1, "Bucht \xC3\xA4\xE2\x82\xAC", "two\r\nlines" },
		{ 23, 10800, WATER_SALT, 0, NULL, NULL },
	};

	ck_assert_uint_eq(n->taken->len, 4);
	for (guint i = 0; i < 4; i++) {
		const struct outing *o = &g_array_index(n->taken, struct outing, i);

		ck_assert_int_eq(o->date, day_from_ymd(2026, 5, (int)want[i].day));
		ck_assert_int_eq(o->hours, want[i].hours);
		ck_assert_int_eq(o->water, want[i].water);
		ck_assert_int_eq(o->rinsed, want[i].rinsed);
		ck_assert_int_eq(o->engine, 11);
		ck_assert_int_eq(o->boat, NONE);
		ck_assert_pstr_eq(o->place, want[i].place);
		if (i != 2)
			ck_assert_pstr_eq(o->remark, want[i].remark);
	}
}

START_TEST(files_are_read_or_refused_with_the_place)
{
	g_autofree char *bytes = NULL, *got = NULL;
	struct csv_report report;
	struct names n;
	size_t length;

	load(files[_i].file, &bytes, &length);
	names_init(&n);
	ck_assert_int_eq(read_outings(bytes, length, &n, &report), report.n_errors == 0);
	got = summary(&report);
	ck_assert_msg(!strcmp(got, files[_i].want), "%s: %s", files[_i].file, got);
	if (g_str_has_prefix(files[_i].want, FOUR))
		same_four(&n);
	csvreport_clear(&report);
	names_clear(&n);
}
END_TEST

START_TEST(each_bad_cell_has_its_own_error)
{
	static const char *const place[] = { "f.csv:2:17: hours: ",
					     "f.csv:3:1: date: ",
					     "f.csv:4:21: water: ",
					     "f.csv:4:27: rinsed: ",
					     "f.csv:6:1: date: is empty, and every outing needs one",
					     "f.csv:6:2: engine: there is no \"port\" here" };
	g_autofree char *bytes = NULL;
	struct csv_report report;
	struct names n;
	size_t length;

	load("bad-cells", &bytes, &length);
	names_init(&n);
	ck_assert(!read_outings(bytes, length, &n, &report));
	ck_assert_int_eq(report.n_errors, G_N_ELEMENTS(place));
	for (guint i = 0; i < report.errors->len; i++)
		ck_assert_msg(g_str_has_prefix(report.errors->pdata[i], place[i]), "%s",
			      (char *)report.errors->pdata[i]);
	ck_assert_int_eq(report.rows, 0);
	csvreport_clear(&report);
	names_clear(&n);
}
END_TEST

/* One cell of hours, in a file of decimal points and in one of decimal commas; -1: refused. */
static const struct {
	const char *cell;
	gint64 point, comma;
} decimals[] = {
	{ "2.4", 8640, 8640 },   { "\"2,4\"", 8640, 8640 },
	{ "1.25", 4500, 4500 },  { "\"1,250\"", -1, 4500 },
	{ "1.250", 4500, -1 },   { "\"1.250,5\"", -1, -1 },
	{ "0.125", 450, 450 },   { "1250", 4500000, 4500000 },
	{ "1:15", 4500, 4500 },  { "75m", 4500, 4500 },
	{ " 2.4 ", 8640, 8640 }, { "99999.99", 359999964, 359999964 },
	{ "-1", -1, -1 },        { "1e1", -1, -1 },
	{ "\" \"", -1, -1 },
};

START_TEST(a_decimal_is_read_by_the_files_convention)
{
	for (int comma = 0; comma < 2; comma++) {
		g_autofree char *text =
			g_strdup_printf(comma ? "date;hours\n2026-01-01;\"1,5\"\n2026-01-02;%s\n"
					      : "date,hours\n2026-01-01,1.5\n2026-01-02,%s\n",
					decimals[_i].cell);
		const gint64 want = comma ? decimals[_i].comma : decimals[_i].point;
		struct csv_report report;
		struct names n;

		names_init(&n);
		ck_assert_int_eq(read_outings(text, strlen(text), &n, &report), want >= 0);
		ck_assert_int_eq(report.found.decimal_comma, comma);
		if (want >= 0)
			ck_assert_int_eq(g_array_index(n.taken, struct outing, 1).hours, want);
		csvreport_clear(&report);
		names_clear(&n);
	}
}
END_TEST

/* Unguarding needs the marking column: an ' that someone typed stays. */
START_TEST(a_guard_comes_off_only_where_it_was_put)
{
	static const char *const text[] = { "date,hours,remark\n2026-01-01,1,'=x\n",
		"guarded,date,hours,remark\n,2026-01-01,1,'=x\n" };
	static const char *const want[] = { "'=x", "=x" };
	struct csv_report report;
	struct names n;

	names_init(&n);
	ck_assert(read_outings(text[_i], strlen(text[_i]), &n, &report));
	ck_assert_str_eq(g_array_index(n.taken, struct outing, 0).remark, want[_i]);
	csvreport_clear(&report);
	names_clear(&n);
}
END_TEST

START_TEST(an_answer_is_remembered_until_the_boat_changes)
{
	static const char text[] = "engine,boat,date,hours\n"
		"main,Grey Heron,2026-01-01,1\nmain,Grey Heron,2026-01-02,1\n"
		",\"=Sum, \"\"of\"\" all\",2026-01-03,1\nmain,\"=Sum, \"\"of\"\" all\",2026-01-04,1\n"
		"main,Grey Heron,2026-01-05,1\n";
	static const gint64 engine[] = { 11, 11, NONE, 21, 11 };
	struct csv_report report;
	struct names n;

	names_init(&n);
	ck_assert(read_outings(text, strlen(text), &n, &report));
	for (guint i = 0; i < n.taken->len; i++)
		ck_assert_int_eq(g_array_index(n.taken, struct outing, i).engine, engine[i]);
	ck_assert_uint_eq(n.taken->len, 5);
	ck_assert_int_eq(n.asked, 6);
	csvreport_clear(&report);
	names_clear(&n);
}
END_TEST

START_TEST(twenty_errors_are_kept_and_all_are_counted)
{
	g_autoptr(GString) text = g_string_new("date,hours\n");
	struct csv_report report;
	struct names n;

	for (int i = 0; i < 1000; i++)
		g_string_append(text, i % 2 ? "2026-01-01,1\n" : "2026-01-01,x\n");
	names_init(&n);
	ck_assert(!read_outings(text->str, text->len, &n, &report));
	ck_assert_int_eq(report.n_errors, 500);
	ck_assert_uint_eq(report.errors->len, CSV_REPORT_ERRORS);
	ck_assert_int_eq(report.rows, 500);
	csvreport_clear(&report);
	names_clear(&n);
}
END_TEST

static const struct {
	enum err_code code;
	gint64 errors;
} refusals[] = {
	{ ERR_INPUT, 9 }, { ERR_CONFLICT, 9 }, { ERR_DOUBT, 9 }, { ERR_STORE, 1 }, { ERR_SYSTEM, 1 }
};

START_TEST(a_failing_store_ends_the_reading_and_a_bad_row_does_not)
{
	g_autoptr(GString) text = g_string_new("date,hours\n");
	struct csv_report report;
	struct names n;

	for (int i = 0; i < 10; i++)
		g_string_append(text, "2026-01-01,1\n");
	names_init(&n);
	n.refuse = refusals[_i].code;
	n.refuse_from = 1;
	ck_assert(!read_outings(text->str, text->len, &n, &report));
	ck_assert_int_eq(report.n_errors, refusals[_i].errors);
	ck_assert_str_eq(report.errors->pdata[0], "f.csv:3:1: refused");
	ck_assert_int_eq(report.rows, 1);
	csvreport_clear(&report);
	names_clear(&n);
}
END_TEST

static guint64
next(guint64 *x)
{
	*x = *x * G_GUINT64_CONSTANT(6364136223846793005) + 1442695040888963407;
	return *x >> 16;
}

START_TEST(damage_never_crashes)
{
	g_autofree char *bytes = NULL;
	guint64 x = 4711;
	gint64 rows = 0;
	size_t length;

	load("reordered", &bytes, &length);
	for (int i = 0; i < 5000; i++) {
		g_autofree char *copy = g_memdup2(bytes, length);
		const size_t n = i % 2 ? length : next(&x) % (length + 1);
		struct csv_report report;
		struct names names;

		for (int k = 0; k <= i % 4; k++)
			copy[next(&x) % length] = i & 4 ? "\",;\r\n\t\0=\xFF"[next(&x) % 9] : (char)next(&x);
		names_init(&names);
		read_outings(copy, n, &names, &report);
		ck_assert_int_eq(report.rows, names.taken->len);
		ck_assert_uint_eq(report.errors->len, MIN(report.n_errors, CSV_REPORT_ERRORS));
		rows += report.rows;
		csvreport_clear(&report);
		names_clear(&names);
	}
	ck_assert_int_gt(rows, 1000);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Records from CSV: what is wrong is named with its place");
	TCase *t = tcase_create("reading");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_loop_test(t, files_are_read_or_refused_with_the_place, 0, G_N_ELEMENTS(files));
	tcase_add_test(t, each_bad_cell_has_its_own_error);
	tcase_add_loop_test(t, a_decimal_is_read_by_the_files_convention, 0, G_N_ELEMENTS(decimals));
	tcase_add_loop_test(t, a_guard_comes_off_only_where_it_was_put, 0, 2);
	tcase_add_test(t, an_answer_is_remembered_until_the_boat_changes);
	tcase_add_test(t, twenty_errors_are_kept_and_all_are_counted);
	tcase_add_loop_test(t, a_failing_store_ends_the_reading_and_a_bad_row_does_not, 0,
			    G_N_ELEMENTS(refusals));
	tcase_add_test(t, damage_never_crashes);
	suite_add_tcase(s, t);
	srunner_run_all(runner, CK_NORMAL);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
