#include "exchange/record_csv.h"

#include "base/date.h"
#include "base/err.h"
#include "exchange/cell.h"
#include "model/records.h"

#include <check.h>
#include <stdlib.h>
#include <string.h>

#define TODAY day_from_ymd(2026, 11, 25)

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

/* Random records of every kind */

static guint64
next(guint64 *x)
{
	*x = *x * G_GUINT64_CONSTANT(6364136223846793005) + 1442695040888963407;
	return *x >> 16;
}

static char *
some_text(guint64 *x)
{
	static const char *const piece[] = { "oil",          " ",  ",", "\"",  "\r\n",
					     "\n",           "'",  "=", "-",   "\xC3\xA4",
					     "\xE2\x82\xAC", "\t", ";", "1.5", "\xF0\x9F\x9A\xA2",
					     "\x1b" };
	GString *text = g_string_new(NULL);

	for (guint64 n = next(x) % 5; n; n--)
		g_string_append(text, piece[next(x) % G_N_ELEMENTS(piece)]);
	return g_string_free(text, FALSE);
}

static double
some_real(guint64 *x)
{
	static const double edge[] = {
		0,     0.1,     -0.5,    1e-9, 1e22, 1.0 / 3, 123456789.125, 5e-324, 1.7976931348623157e308,
		1.234, -12.345, 1.234e-7
	};

	return next(x) % 2 ? edge[next(x) % G_N_ELEMENTS(edge)]
			   : (double)(gint64)(next(x) % 2000001) / 1000 - 1000;
}

static gint64
some_int(const struct field *f, guint64 *x)
{
	switch (f->kind) {
	case FIELD_KEY: return (gint64)(next(x) * next(x) >> 1);
	case FIELD_REF:
		return f->ref == RECORD_BOAT ? 1 + (gint64)(next(x) % 2) : (gint64)(next(x) | 1 << 20);
	case FIELD_DATE: return (gint64)(next(x) % 40000) - 10000;
	case FIELD_YEARDAY: return (gint64)(next(x) % 12 + 1) * 100 + (gint64)(next(x) % 28) + 1;
	case FIELD_HOURS: return (gint64)(next(x) % 3 ? next(x) % 1000 * 36 : next(x) % 5000000);
	case FIELD_COUNT: return (gint64)(next(x) % 5000);
	case FIELD_CENTS: return (gint64)(next(x) % 1000000) - 1000;
	case FIELD_YES: return (gint64)(next(x) % 2);
	case FIELD_WORD: return (gint64)(next(x) % (guint64)f->words->n);
	case FIELD_REAL:
	case FIELD_TEXT: break;
	}
	return NONE;
}

static void
some_record(enum record r, void *record, guint64 *x)
{
	const struct record_type *t = record_type(r);

	record_init(r, record);
	for (int i = 0; i < t->n_fields; i++) {
		const struct field *f = &t->field[i];

		if (!f->required && next(x) % 4 == 0)
			continue;
		if (f->kind == FIELD_TEXT)
			*field_text(f, record) = some_text(x);
		else if (f->kind == FIELD_REAL)
			*field_real(f, record) = some_real(x);
		else
			*field_int(f, record) = some_int(f, x);
	}
}

/* Take records back and compare each with what was written. */
struct back {
	enum record r;
	gboolean named;	/* references to boats by name */
	const char *written;	/* the records, one after another */
	size_t at;
	int different;
};

static gboolean
key_back(void *user, enum record ref, const char *text, G_GNUC_UNUSED const void *record, gint64 *key,
	 GError **err)
{
	struct back *b = user;

	for (*key = 1; *key <= 2 && ref == RECORD_BOAT && b->named; ++*key)
		if (!strcmp(text, name_of(NULL, ref, *key)))
			return TRUE;
	return key_from_letters(text, key) || err_set(err, ERR_INPUT, "there is no \"%s\" here", text);
}

static gboolean
take_back(void *user, void *record, G_GNUC_UNUSED gint64 line, G_GNUC_UNUSED GError **err)
{
	struct back *b = user;

	b->different += !record_equal(b->r, b->written + b->at, record);
	b->at += record_type(b->r)->size;
	return TRUE;
}

static const struct csv_out_how ways[] = {
	{ ',', FALSE, FALSE }, { ';', TRUE, FALSE }, { '\t', TRUE, FALSE },
	{ ',', TRUE, FALSE },  { ',', FALSE, TRUE }, { ';', TRUE, TRUE },
};

#define MANY 200

/* Some kinds are written with names, the rest with letters alone. */
static gboolean
is_named(enum record r)
{
	return r == RECORD_OUTING || r == RECORD_STAY;
}

static void
write_many(enum record r, const struct csv_out_how *way, char *records, GString *text)
{
	const size_t size = record_type(r)->size;
	struct sink sink = sink_string(text);
	struct csv_out *out = csvout_new(&sink, way);
	struct record_out *o = record_out_new(r, out, is_named(r) ? name_of : NULL, NULL);
	guint64 x = 7 + (guint64)r;

	for (int i = 0; i < MANY; i++) {
		some_record(r, records + (size_t)i * size, &x);
		ck_assert(record_out_row(o, records + (size_t)i * size));
	}
	record_out_free(o);
	ck_assert(csvout_close(out, NULL));
}

START_TEST(every_kind_of_record_comes_back_equal)
{
	const enum record r = (enum record)(_i % RECORD_COUNT);
	const struct csv_out_how *way = &ways[_i / RECORD_COUNT];
	const size_t size = record_type(r)->size;
	const struct csv_in_how forced = { way->separator, way->decimal_comma ? DECIMAL_COMMA : DECIMAL_POINT,
					   FALSE };
	g_autoptr(GString) text = g_string_new(NULL);
	g_autofree char *records = g_malloc0(size * MANY);
	struct back b = { r, is_named(r), records, 0, 0 };
	struct record_in how = { r, TODAY, 0, key_back, take_back, &b };
	struct csv_report report;
	struct csv_in *in;

	write_many(r, way, records, text);
	in = csvin_memory(text->str, text->len, "f.csv", &forced, NULL);
	csvreport_init(&report);
	record_csv_read(in, &how, &report);
	ck_assert_msg(report.n_errors == 0, "%s", report.n_errors ? (char *)report.errors->pdata[0] : "");
	ck_assert_int_eq(report.rows, MANY);
	ck_assert_int_eq(b.different, 0);
	ck_assert_int_eq(report.guarded, way->for_spreadsheet);
	ck_assert_uint_eq(report.notes->len, 0);
	csvreport_clear(&report);
	csvin_free(in);
	for (int i = 0; i < MANY; i++)
		record_clear(r, records + (size_t)i * size);
}
END_TEST

static const struct csv_out_how written_how[] = { { 0, FALSE, FALSE }, { ';', TRUE, TRUE } };
static const char *const written[] = {
	"id,boat,date,engine,hours,water,rinsed,trip,meter,reading,estimated,place,remark\r\n"
	"bbbbbbbbbbbbbbbc,\"=Sum, \"\"of\"\" all\",2026-05-02,main,2.4,salt,yes,,bbbbbbbbbbbbbbcb,"
	"612:24:30,no,@dock,\r\n"
	"bbbbbbbbbbbbbbbd,,,,,,,,,,,,\"\"\r\n",
	"id;boat;date;engine;hours;water;rinsed;trip;meter;reading;estimated;place;remark;guarded\r\n"
	"bbbbbbbbbbbbbbbc;\"'=Sum, \"\"of\"\" all\";2026-05-02;main;2,4;salt;yes;;bbbbbbbbbbbbbbcb;"
	"612:24:30;no;'@dock;;\r\n"
	"bbbbbbbbbbbbbbbd;;;;;;;;;;;;\"\";\r\n",
};

START_TEST(outings_are_written_as_documented)
{
	g_autoptr(GString) got = g_string_new(NULL);
	struct sink sink = sink_string(got);
	struct csv_out *out = csvout_new(&sink, &written_how[_i]);
	struct record_out *o = record_out_new(RECORD_OUTING, out, name_of, NULL);
	char place[] = "@dock", empty[] = "";
	struct outing a;

	record_init(RECORD_OUTING, &a);
	a.id = 1;
	a.boat = 2;
	a.date = day_from_ymd(2026, 5, 2);
	a.engine = 21;
	a.hours = 8640;
	a.water = WATER_SALT;
	a.rinsed = 1;
	a.estimated = 0;
	a.meter = 16;
	a.reading = 612 * 3600 + 24 * 60 + 30;
	a.place = place;
	record_out_row(o, &a);
	record_init(RECORD_OUTING, &a);
	a.id = 2;
	a.remark = empty;
	record_out_row(o, &a);
	record_out_free(o);
	ck_assert(csvout_close(out, NULL));
	ck_assert_str_eq(got->str, written[_i]);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("Records as CSV: what is written is read back equal");
	TCase *t = tcase_create("writing");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_loop_test(t, every_kind_of_record_comes_back_equal, 0, RECORD_COUNT * G_N_ELEMENTS(ways));
	tcase_add_loop_test(t, outings_are_written_as_documented, 0, G_N_ELEMENTS(written));
	suite_add_tcase(s, t);
	srunner_run_all(runner, CK_NORMAL);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
