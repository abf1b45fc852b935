#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "base/text.h"
#include "exchange/cell.h"
#include "exchange/record_csv.h"
#include "model/words.h"

#include <math.h>
#include <string.h>

#define FIELDS_MAX 64
#define NAME_MAX_KEPT 64

/* References mostly repeat that of the row before: the last answer of each column is kept. */
struct last_key {
	gboolean filled;
	char text[NAME_MAX_KEPT];
	gint64 key;
};

struct reading {
	struct csv_in *in;
	const struct record_in *how;
	const struct record_type *type;
	struct csv_report *report;
	char mark;	/* decimal */
	int column[FIELDS_MAX];	/* of each field in the file; -1: not there */
	struct last_key last[FIELDS_MAX];
	void *record;
};

void
csvreport_init(struct csv_report *report)
{
	*report = (struct csv_report){ .errors = g_ptr_array_new_with_free_func(g_free),
		.notes = g_ptr_array_new_with_free_func(g_free) };
}

void
csvreport_clear(struct csv_report *report)
{
	g_clear_pointer(&report->errors, g_ptr_array_unref);
	g_clear_pointer(&report->notes, g_ptr_array_unref);
}

int
record_field_index(enum record r, const char *name)
{
	const struct field *f = record_field(r, name);

	return f ? (int)(f - record_type(r)->field) : -1;
}

static G_GNUC_PRINTF(2, 3) void
note(struct csv_report *report, const char *format, ...)
{
	va_list args;

	va_start(args, format);
	g_ptr_array_add(report->notes, g_strdup_vprintf(format, args));
	va_end(args);
}

/* Takes the error. */
static void
add_error(struct csv_report *report, GError *error)
{
	if (report->n_errors++ < CSV_REPORT_ERRORS)
		g_ptr_array_add(report->errors, g_strdup(error->message));
	g_error_free(error);
}

/* Takes the error, which gets the place of a column. */
static void
add_error_at(struct reading *r, int column, GError *error)
{
	csvin_prefix(r->in, column, &error);
	add_error(r->report, error);
}

/* Header */

/* " Below_Waterline" -> "below-waterline"; the caller frees it. */
static char *
header_name(const char *cell)
{
	return g_strdelimit(g_strstrip(g_ascii_strdown(cell ? cell : "", -1)), "_ ", '-');
}

static void
unknown_column(struct reading *r, int column, const char *name, const char *cell)
{
	const char *names[FIELDS_MAX], *near;
	g_autofree char *shown = text_harmless(cell ? cell : "", FALSE);

	for (int i = 0; i < r->type->n_fields; i++)
		names[i] = r->type->field[i].name;
	if (!*name) {
		note(r->report, "column %d has no name and was left out", column + 1);
		return;
	}
	near = text_nearest(name, names, r->type->n_fields);
	if (near && r->column[record_field_index(r->how->r, near)] < 0)
		note(r->report, "column %d, \"%.40s\", is not known and was left out: is \"%s\" meant?",
		     column + 1, shown, near);
	else
		note(r->report, "column %d, \"%.40s\", is not known and was left out", column + 1, shown);
}

static gboolean
match_column(struct reading *r, int column, const char *name)
{
	int i = record_field_index(r->how->r, name);
	GError *error = NULL;

	if (!strcmp(name, GUARDED)) {
		r->report->guarded = TRUE;
		return TRUE;
	}
	if (i < 0)
		return FALSE;
	if (r->column[i] >= 0) {
		err_set(&error, ERR_INPUT,
			"the column \"%s\" stands twice, in columns %d and %d: rename or remove one", name,
			r->column[i] + 1, column + 1);
		add_error_at(r, column, error);
		return TRUE;
	}
	r->column[i] = column;
	return TRUE;
}

static gboolean
must_have(const struct reading *r, int i)
{
	const struct field *f = &r->type->field[i];

	return f->required && f->kind != FIELD_KEY && !(r->how->filled >> i & 1);
}

static void
missing_columns(struct reading *r)
{
	g_autoptr(GString) missing = g_string_new(NULL);
	GError *error = NULL;
	int n = 0;

	for (int i = 0; i < r->type->n_fields; i++) {
		if (r->column[i] >= 0 || !must_have(r, i))
			continue;
		g_string_append_printf(missing, "%s\"%s\"", n++ ? ", " : "", r->type->field[i].name);
	}
	if (!n)
		return;
	err_set(&error, ERR_INPUT,
		"the header lacks the column%s %s: the first line names the columns, in any order",
		n == 1 ? "" : "s", missing->str);
	add_error_at(r, 0, error);
}

static void
read_header(struct reading *r, const struct csv_row *row)
{
	gboolean known[CSVIN_COLUMNS_MAX];

	for (int i = 0; i < r->type->n_fields; i++)
		r->column[i] = -1;
	for (int c = 0; c < row->n; c++) {
		g_autofree char *name = header_name(row->cell[c]);

		known[c] = match_column(r, c, name);
	}
	for (int c = 0; c < row->n; c++) {
		g_autofree char *name = header_name(row->cell[c]);

		if (!known[c])
			unknown_column(r, c, name, row->cell[c]);
	}
	missing_columns(r);
}

/* Cells */

static gboolean
bad_cell(const char *text, const char *wanted, GError **err)
{
	g_autofree char *shown = text_harmless(text, FALSE);

	return err_set(err, ERR_INPUT, "\"%.40s\" %s", shown, wanted);
}

static gboolean
read_yes(const char *text, gint64 *value, GError **err)
{
	static const char *const yes[] = { "yes", "y", "true", "1" }, *const no[] = { "no", "n", "false",
										      "0" };

	for (size_t i = 0; i < G_N_ELEMENTS(yes); i++) {
		if (!g_ascii_strcasecmp(text, yes[i]))
			return (*value = 1, TRUE);
		if (!g_ascii_strcasecmp(text, no[i]))
			return (*value = 0, TRUE);
	}
	return bad_cell(text, "is neither yes nor no", err);
}

static gboolean
read_money(const char *text, gint64 *cents, GError **err)
{
	char currency[4];

	if (!money_parse(text, cents, currency, err))
		return FALSE;
	return !*currency
	    || bad_cell(text, "names a currency, which has a column of its own: write the number alone", err);
}

static gboolean
read_ref(struct reading *r, int i, const char *text, gint64 *key, GError **err)
{
	struct last_key *last = &r->last[i];

	if (last->filled && !strcmp(text, last->text)) {
		*key = last->key;
		return TRUE;
	}
	/* "main" is another engine once the boat is another: later columns ask anew. */
	for (int k = i; k < r->type->n_fields; k++)
		r->last[k].filled = FALSE;
	if (!r->how->key_of(r->how->user, r->type->field[i].ref, text, r->record, key, err))
		return FALSE;
	last->key = *key;
	last->filled = g_strlcpy(last->text, text, sizeof last->text) < sizeof last->text;
	return TRUE;
}

/* The plain forms, without any allocation; FALSE: try read_slowly(). */
static gboolean
read_quickly(struct reading *r, const struct field *f, const char *text, gint64 *value)
{
	struct plain p;

	switch (f->kind) {
	case FIELD_KEY: return key_from_letters(text, value);
	case FIELD_DATE: return iso_read(text, value);
	case FIELD_HOURS: return plain_read(text, r->mark, &p) && !p.minus && p.decimals <= 2 &&
				p.digits < 10000000 && plain_scaled(&p, 3600, value);
	case FIELD_COUNT:
		return plain_read(text, r->mark, &p) && !p.decimals && !p.minus && p.digits <= COUNT_MOST
		    && plain_scaled(&p, 1, value);
	case FIELD_CENTS: return plain_read(text, r->mark, &p) && !p.minus && p.digits < 10000000 &&
				plain_scaled(&p, 100, value);
	case FIELD_WORD: *value = word_index(f->words, text); return *value != NONE;
	case FIELD_YES: *value = !strcmp(text, "yes"); return *value || !strcmp(text, "no");
	case FIELD_REF:
	case FIELD_YEARDAY:
	case FIELD_REAL:
	case FIELD_TEXT: break;
	}
	return FALSE;
}

static gboolean
read_slowly(struct reading *r, const struct field *f, const char *text, gint64 *value, GError **err)
{
	switch (f->kind) {
	case FIELD_KEY:
		return key_from_letters(text, value)
		    || bad_cell(text, "is no key: sixteen letters as an export wrote them, or nothing", err);
	case FIELD_DATE: return day_parse(text, r->how->today, value, err);
	case FIELD_YEARDAY: return yearday_parse(text, value, err);
	case FIELD_HOURS: return hours_parse(text, value, err);
	case FIELD_COUNT: return count_parse(text, value, err);
	case FIELD_CENTS: return read_money(text, value, err);
	case FIELD_YES: return read_yes(text, value, err);
	case FIELD_WORD: return word_parse(f->words, text, value, err);
	case FIELD_REF:
	case FIELD_REAL:
	case FIELD_TEXT: break;	/* not read here */
	}
	return FALSE;
}

static gboolean
is_decimal(enum field_kind kind)
{
	return kind == FIELD_HOURS || kind == FIELD_COUNT || kind == FIELD_CENTS || kind == FIELD_REAL;
}

/* The parsers take a point and a comma alike, and doubt "1,234".  In a file of decimal commas it is
 * clear, and "1.234" is what is in doubt. */
static gboolean
clear_decimal(const struct reading *r, const struct field *f, char *text, GError **err)
{
	if (r->mark != ',' || !is_decimal(f->kind))
		return TRUE;
	if (looks_grouped(text))
		return bad_cell(
			text,
			"may be a thousand and more, or a decimal: write no mark for thousands, and a comma "
			"for decimals",
			err);
	if (!strchr(text, '.'))
		g_strdelimit(text, ",", '.');
	return TRUE;
}

static gboolean
read_real(const struct reading *r, const struct field *f, const char *text, double *value, GError **err)
{
	g_autofree char *bare = NULL;
	struct plain p;

	if (plain_read(text, r->mark, &p)) {
		*value = plain_real(&p);
		return TRUE;
	}
	bare = g_strstrip(g_strdup(text));
	return !*bare || (clear_decimal(r, f, bare, err) && number_parse(bare, value, err));
}

static gboolean
read_int(struct reading *r, int i, const char *text, gint64 *value, GError **err)
{
	const struct field *f = &r->type->field[i];
	g_autofree char *bare = NULL;

	if (f->kind == FIELD_REF)
		return read_ref(r, i, text, value, err);
	if (read_quickly(r, f, text, value))
		return TRUE;
	*value = NONE;
	bare = g_strstrip(g_strdup(text));
	if (!*bare)
		return TRUE;
	return clear_decimal(r, f, bare, err) && read_slowly(r, f, bare, value, err);
}

static gboolean
is_unknown(const struct field *f, void *record)
{
	if (f->kind == FIELD_TEXT)
		return !*field_text(f, record);
	return f->kind == FIELD_REAL ? isnan(*field_real(f, record)) : *field_int(f, record) == NONE;
}

static gboolean
read_cell(struct reading *r, int i, const char *text, GError **err)
{
	const struct field *f = &r->type->field[i];

	if (text) {
		if (r->report->guarded && (f->kind == FIELD_TEXT || f->kind == FIELD_REF))
			text = guard_strip(text);
		if (f->kind == FIELD_TEXT)
			*field_text(f, r->record) = g_strdup(text);
		else if (f->kind == FIELD_REAL ? !read_real(r, f, text, field_real(f, r->record), err)
					       : !read_int(r, i, text, field_int(f, r->record), err))
			return FALSE;
	}
	if (is_unknown(f, r->record) && must_have(r, i))
		return err_set(err, ERR_INPUT, "is empty, and every %s needs one", r->type->name);
	return TRUE;
}

/* Rows */

static gboolean
fill_record(struct reading *r, const struct csv_row *row)
{
	gboolean good = TRUE;
	GError *error = NULL;

	for (int i = 0; i < r->type->n_fields; i++) {
		const int column = r->column[i];

		if (read_cell(r, i, column < 0 ? NULL : row->cell[column], &error))
			continue;
		good = FALSE;
		err_prefix(&error, "%s: ", r->type->field[i].name);
		add_error_at(r, column, g_steal_pointer(&error));
	}
	return good;
}

static gboolean
all_empty(const struct csv_row *row)
{
	for (int i = 0; i < row->n; i++)
		if (row->cell[i] && *row->cell[i])
			return FALSE;
	return TRUE;
}

static void
read_record(struct reading *r, const struct csv_row *row, gboolean *stop)
{
	GError *error = NULL;

	if (all_empty(row)) {
		r->report->empty_rows++;
		return;
	}
	if (fill_record(r, row)) {
		if (r->how->take(r->how->user, r->record, row->line, &error)) {
			r->report->rows++;
		} else {
			*stop = error->code == ERR_STORE || error->code == ERR_SYSTEM;
			add_error_at(r, 0, error);
		}
	}
	record_clear(r->how->r, r->record);
}

static void
read_rows(struct reading *r)
{
	gboolean stop = FALSE;

	while (!stop) {
		GError *error = NULL;
		struct csv_row row;

		switch (csvin_next(r->in, &row, &error)) {
		case GOT_ROW: read_record(r, &row, &stop); break;
		case GOT_RAGGED: add_error(r->report, error); break;
		case GOT_BROKEN: add_error(r->report, error); return;
		case GOT_END: return;
		}
	}
}

static void
read_all(struct reading *r)
{
	GError *error = NULL;
	struct csv_row row;

	switch (csvin_next(r->in, &row, &error)) {
	case GOT_ROW: read_header(r, &row); break;
	case GOT_END:
		err_set(&error, ERR_INPUT, "the file is empty: its first line should name the columns of %s",
			r->type->plural);
		add_error_at(r, 0, error);
		break;
	case GOT_RAGGED:
	case GOT_BROKEN: add_error(r->report, error); break;
	}
	if (r->report->n_errors)
		return;
	read_rows(r);
	if (r->report->empty_rows)
		note(r->report, "%" G_GINT64_FORMAT " row%s without anything in %s passed over",
		     r->report->empty_rows, r->report->empty_rows == 1 ? "" : "s",
		     r->report->empty_rows == 1 ? "it was" : "them were");
	if (!r->report->rows && !r->report->n_errors)
		note(r->report, "there is a header but no row");
}

gboolean
record_csv_read(struct csv_in *in, const struct record_in *how, struct csv_report *report)
{
	struct reading r = { .in = in, .how = how, .type = record_type(how->r), .report = report };

	g_assert(r.type->n_fields <= FIELDS_MAX);
	report->found = *csvin_found(in);
	r.mark = report->found.decimal_comma ? ',' : '.';
	r.record = g_malloc(r.type->size);
	record_init(how->r, r.record);
	read_all(&r);
	g_free(r.record);
	return !report->n_errors;
}
