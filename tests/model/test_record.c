#include "model/records.h"

#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* The C structs, whose sizes the table must agree with. */
static const struct { size_t size; int fields; const char *name, *plural; } structs[RECORD_COUNT] = {
	[RECORD_BOAT] = { sizeof(struct boat), 16, "boat", "boats" },
	[RECORD_ENGINE] = { sizeof(struct engine), 6, "engine", "engines" },
	[RECORD_METER] = { sizeof(struct meter), 7, "meter", "meters" },
	[RECORD_FITTING] = { sizeof(struct fitting), 15, "fitting", "fittings" },
	[RECORD_PART] = { sizeof(struct part), 8, "part", "parts" },
	[RECORD_STAY] = { sizeof(struct stay), 8, "stay", "stays" },
	[RECORD_SEASON] = { sizeof(struct season), 6, "season", "seasons" },
	[RECORD_OUTING] = { sizeof(struct outing), 13, "outing", "outings" },
	[RECORD_HAPPENING] = { sizeof(struct happening), 6, "happening", "happenings" },
	[RECORD_TASK] = { sizeof(struct task), 18, "task", "tasks" },
	[RECORD_LIMIT] = { sizeof(struct limit), 12, "limit", "limits" },
	[RECORD_SERVICE] = { sizeof(struct service), 18, "service", "services" },
	[RECORD_MEASUREMENT] = { sizeof(struct measurement), 12, "measurement", "measurements" },
	[RECORD_BOUND] = { sizeof(struct bound), 10, "bound", "bounds" },
	[RECORD_RATE] = { sizeof(struct rate), 6, "rate", "rates" },
	[RECORD_PLACE] = { sizeof(struct place), 7, "place", "places" },
	[RECORD_CLIMATE] = { sizeof(struct climate_month), 5, "climate", "climates" },
	[RECORD_FINDING] = { sizeof(struct finding), 20, "finding", "findings" },
	[RECORD_WAIVER] = { sizeof(struct waiver), 10, "waiver", "waivers" },
	[RECORD_SKIP] = { sizeof(struct skip), 7, "skip", "skips" },
	[RECORD_PHOTO] = { sizeof(struct photo), 9, "photo", "photos" },
	[RECORD_HEEDED] = { sizeof(struct heeded), 6, "heeded", "heeded" },
	[RECORD_SHIPPED] = { sizeof(struct shipped), 5, "shipped", "shipped" },
	[RECORD_FIGURE] = { sizeof(struct figure), 9, "figure", "figures" },
	[RECORD_JOB] = { sizeof(struct job), 11, "job", "jobs" },
	[RECORD_AIM] = { sizeof(struct aim), 7, "aim", "aims" },
	[RECORD_STEP] = { sizeof(struct step), 10, "step", "steps" },
	[RECORD_REMOVAL] = { sizeof(struct removal), 19, "removal", "removals" },
	[RECORD_SHEET] = { sizeof(struct sheet), 4, "sheet", "sheets" },
	[RECORD_SHEETLINE] = { sizeof(struct sheetline), 9, "sheetline", "sheet-lines" },
	[RECORD_ITEM] = { sizeof(struct item), 8, "item", "items" },
	[RECORD_NUMBER] = { sizeof(struct number), 6, "number", "numbers" },
	[RECORD_LOT] = { sizeof(struct lot), 13, "lot", "lots" },
	[RECORD_TAKEN] = { sizeof(struct taken), 8, "taken", "taken" },
	[RECORD_NEED] = { sizeof(struct need), 5, "need", "needs" },
};

static void *
new_record(enum record r)
{
	void *record = g_malloc(record_type(r)->size);

	record_init(r, record);
	return record;
}

static void
free_record(enum record r, void *record)
{
	record_clear(r, record);
	g_free(record);
}

/* Give a field some value, the same for the same seed. */
static void
fill(const struct field *f, void *record, int seed)
{
	if (f->kind == FIELD_TEXT)
		*field_text(f, record) = g_strdup_printf("%s %d", f->name, seed);
	else if (f->kind == FIELD_REAL)
		*field_real(f, record) = seed + 0.25;
	else
		*field_int(f, record) = seed;
}

START_TEST(the_table_covers_the_struct)
{
	const struct record_type *t = record_type((enum record)_i);
	size_t at = 0;

	ck_assert_uint_eq(t->size, structs[_i].size);
	ck_assert_int_eq(t->n_fields, structs[_i].fields);
	ck_assert_str_eq(t->name, structs[_i].name);
	ck_assert_str_eq(t->plural, structs[_i].plural);
	for (int i = 0; i < t->n_fields; i++) {
		ck_assert_msg(t->field[i].offset == at, "%s.%s", t->name, t->field[i].name);
		at += t->field[i].kind == FIELD_TEXT ? sizeof(char *) : sizeof(gint64);
	}
	ck_assert_uint_eq(at, t->size);
}
END_TEST

START_TEST(each_field_is_well_described)
{
	const struct record_type *t = record_type((enum record)_i);

	ck_assert_str_eq(t->field[0].name, "id");
	ck_assert_int_eq(t->field[0].kind, FIELD_KEY);
	for (int i = 0; i < t->n_fields; i++) {
		const struct field *f = &t->field[i];

		ck_assert_uint_eq(strspn(f->name, "abcdefghijklmnopqrstuvwxyz-"), strlen(f->name));
		ck_assert_msg((f->kind == FIELD_WORD) == (f->words != NULL), "%s.%s", t->name, f->name);
		ck_assert_msg((f->kind == FIELD_REF) == (f->ref < RECORD_COUNT), "%s.%s", t->name, f->name);
		ck_assert_msg((f->kind == FIELD_KEY) == (i == 0), "%s.%s", t->name, f->name);
		ck_assert_ptr_eq(record_field((enum record)_i, f->name), f);
	}
	ck_assert_ptr_null(record_field((enum record)_i, "colour"));
	ck_assert_ptr_null(record_field((enum record)_i, ""));
}
END_TEST

START_TEST(a_new_record_knows_nothing)
{
	const struct record_type *t = record_type((enum record)_i);
	void *a = new_record((enum record)_i), *b = new_record((enum record)_i);

	for (int i = 0; i < t->n_fields; i++) {
		const struct field *f = &t->field[i];

		if (f->kind == FIELD_TEXT)
			ck_assert_ptr_null(*field_text(f, a));
		else if (f->kind == FIELD_REAL)
			ck_assert(isnan(*field_real(f, a)));
		else
			ck_assert(*field_int(f, a) == NONE);
	}
	ck_assert(record_equal((enum record)_i, a, b));
	free_record((enum record)_i, a);
	free_record((enum record)_i, b);
}
END_TEST

/* One field after the other: it alone makes two records differ, in either direction, and no other field sees it. */
START_TEST(each_field_makes_a_difference)
{
	enum record r = (enum record)_i;
	const struct record_type *t = record_type(r);

	for (int i = 0; i < t->n_fields; i++) {
		void *a = new_record(r), *b = new_record(r);

		for (int k = 0; k < t->n_fields; k++) {
			fill(&t->field[k], a, k + 1);
			fill(&t->field[k], b, k + 1);
		}
		ck_assert_msg(record_equal(r, a, b), "%s", t->name);
		if (t->field[i].kind == FIELD_TEXT)
			g_clear_pointer(field_text(&t->field[i], b), g_free);
		fill(&t->field[i], b, 1000);
		ck_assert_msg(!record_equal(r, a, b) && !record_equal(r, b, a), "%s.%s", t->name, t->field[i].name);
		free_record(r, a);
		free_record(r, b);
	}
}
END_TEST

START_TEST(a_cleared_record_knows_nothing)
{
	enum record r = (enum record)_i;
	const struct record_type *t = record_type(r);
	void *a = new_record(r), *blank = new_record(r);

	for (int k = 0; k < t->n_fields; k++)
		fill(&t->field[k], a, k);
	ck_assert(!record_equal(r, a, blank));
	record_clear(r, a);
	ck_assert(record_equal(r, a, blank));
	record_clear(r, a);	/* twice does no harm */
	free_record(r, a);
	free_record(r, blank);
}
END_TEST

START_TEST(unknown_is_neither_zero_nor_empty)
{
	struct measurement a, b;

	record_init(RECORD_MEASUREMENT, &a);
	record_init(RECORD_MEASUREMENT, &b);
	b.value = 0;
	ck_assert(!record_equal(RECORD_MEASUREMENT, &a, &b));
	a.value = -0.0;
	ck_assert(!record_equal(RECORD_MEASUREMENT, &a, &b));
	a.value = 0;
	ck_assert(record_equal(RECORD_MEASUREMENT, &a, &b));
	a.date = 0;
	ck_assert(!record_equal(RECORD_MEASUREMENT, &a, &b));
	b.date = 0;
	a.unit = g_strdup("");
	ck_assert(!record_equal(RECORD_MEASUREMENT, &a, &b));
	record_clear(RECORD_MEASUREMENT, &a);
	record_clear(RECORD_MEASUREMENT, &b);
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("Records and the table of their fields");
	TCase *tc = tcase_create("records");
	SRunner *runner;
	int failed;

	tcase_add_loop_test(tc, the_table_covers_the_struct, 0, RECORD_COUNT);
	tcase_add_loop_test(tc, each_field_is_well_described, 0, RECORD_COUNT);
	tcase_add_loop_test(tc, a_new_record_knows_nothing, 0, RECORD_COUNT);
	tcase_add_loop_test(tc, each_field_makes_a_difference, 0, RECORD_COUNT);
	tcase_add_loop_test(tc, a_cleared_record_knows_nothing, 0, RECORD_COUNT);
	tcase_add_test(tc, unknown_is_neither_zero_nor_empty);
	suite_add_tcase(suite, tc);
	runner = srunner_create(suite);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
