/* Reading a CSV file of records: which rows are new, and into the file with them. */
#include "logbook/import.h"

#include "base/err.h"
#include "exchange/record_csv.h"
#include "logbook/place.h"

#include <errno.h>
#include <math.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

gboolean
record_named(const char *word, enum record *r, GError **err)
{
	g_autoptr(GString) all = g_string_new(NULL);

	for (int i = 0; i < RECORD_COUNT; i++) {
		const struct record_type *t = record_type((enum record)i);

		if (!strcmp(word, t->plural) || !strcmp(word, t->name)) {
			*r = (enum record)i;
			return TRUE;
		}
		g_string_append_printf(all, "%s%s", i ? ", " : "", t->plural);
	}
	return err_set(err, ERR_INPUT, "\"%.40s\" is no kind of record: it is one of %s", word, all->str);
}

void
import_said_clear(struct import_said *s)
{
	g_clear_pointer(&s->notes, g_ptr_array_unref);
	g_clear_pointer(&s->errors, g_ptr_array_unref);
}

/* What makes two rows the same: all fields but the key and what is worked out from others. */
static char *
signature(enum record r, void *record)
{
	const struct record_type *t = record_type(r);
	GString *out = g_string_new(NULL);
	gint64 reading = r == RECORD_OUTING ? ((struct outing *)record)->reading : NONE;

	for (int i = 1; i < t->n_fields; i++) {
		const struct field *f = &t->field[i];

		if (!strcmp(f->name, "meter") || !strcmp(f->name, "after")
		    || (reading != NONE && !strcmp(f->name, "hours")))
			continue;
		if (f->kind == FIELD_TEXT)
			g_string_append(out, *field_text(f, record) ? *field_text(f, record) : "");
		else if (f->kind == FIELD_REAL)
			g_string_append_printf(out, "%.17g", *field_real(f, record));
		else
			g_string_append_printf(out, "%" G_GINT64_FORMAT, *field_int(f, record));
		g_string_append_c(out, '\x1f');
	}
	return g_string_free(out, FALSE);
}

/* How often each row stands in the file already; NULL when there is none. */
static GHashTable *
rows_there(struct book *b, enum record r, GError **err)
{
	const struct record_type *t = record_type(r);
	g_autofree void *record = g_malloc(t->size);
	GHashTable *there = NULL;
	struct cells *c = cells_open(b->db, sql_walk(r));

	record_init(r, record);
	while (cells_next_record(c, r, record)) {
		char *text = signature(r, record);
		guint n;

		if (!there)
			there = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
		n = GPOINTER_TO_UINT(g_hash_table_lookup(there, text));
		g_hash_table_replace(there, text, GUINT_TO_POINTER(n + 1));
	}
	record_clear(r, record);
	cells_close(c, err);
	return there;
}

/* A row without a key is there already when the file holds one just like it that no row before it stood for. */
static gboolean
stands_already(struct importing *in, void *record)
{
	g_autofree char *text = NULL;
	gpointer key, n;

	if (!in->there)
		return FALSE;
	text = signature(in->form->what, record);
	if (!g_hash_table_lookup_extended(in->there, text, &key, &n) || GPOINTER_TO_UINT(n) == 0)
		return FALSE;
	g_hash_table_replace(in->there, g_strdup(text), GUINT_TO_POINTER(GPOINTER_TO_UINT(n) - 1));
	return TRUE;
}

/* Fields that the row leaves empty keep what is there: for rows known by their name alone. */
static void
keep_unsaid(enum record r, const void *old, void *record)
{
	const struct record_type *t = record_type(r);
	void *from = (void *)(guintptr)old;

	for (int i = 1; i < t->n_fields; i++) {
		const struct field *f = &t->field[i];

		if (f->kind == FIELD_TEXT && !*field_text(f, record))
			*field_text(f, record) = g_strdup(*field_text(f, from));
		else if (f->kind == FIELD_REAL && isnan(*field_real(f, record)))
			*field_real(f, record) = *field_real(f, from);
		else if (f->kind != FIELD_TEXT && f->kind != FIELD_REAL && *field_int(f, record) == NONE)
			*field_int(f, record) = *field_int(f, from);
	}
}

/* A row that the file holds, by its key or its name: the same, or a correction. */
static gboolean
take_known(struct importing *in, void *record, gboolean by_name, gboolean *known, GError **err)
{
	enum record r = in->form->what;
	g_autofree void *old = g_malloc(record_type(r)->size);
	gboolean ok = TRUE;

	record_init(r, old);
	*known = (in->there || by_name)
	      && row_get(in->b->db, r, *field_int(&record_type(r)->field[0], record), old, NULL);
	if (*known && by_name)
		keep_unsaid(r, old, record);
	/* What the row leaves out can contradict it. */
	if (*known && r == RECORD_PLACE && !place_check(record, err))
		ok = FALSE;
	else if (*known && record_equal(r, old, record))
		in->said->same++;
	else if (*known && ++in->said->altered)
		ok = row_put(in->b->db, r, record, err);
	record_clear(r, old);
	return ok;
}

static gboolean
take(void *user, void *record, gint64 line, GError **err)
{
	struct importing *in = user;
	enum record r = in->form->what;
	gint64 *id = field_int(&record_type(r)->field[0], record);
	gboolean known = FALSE, by_name = FALSE;

	in->said->rows++;
	if (!import_complete(in, record, err))
		return FALSE;
	if (*id == NONE) {
		*id = import_key_by_name(in, record);
		by_name = *id != NONE;
	}
	if (*id != NONE) {
		if (!take_known(in, record, by_name, &known, err))
			return FALSE;
		if (known)
			return TRUE;
	} else if (stands_already(in, record)) {
		in->said->same++;
		return TRUE;
	} else {
		*id = row_new_key(in->b->db);
	}
	in->said->added++;
	if (r == RECORD_OUTING && ((struct outing *)record)->reading != NONE) {
		struct import_line of = { *id, line };

		g_array_append_val(in->lines, of);
	}
	return bulk_put(in->bulk, record, err);
}

/* Engines stand in the order of their boats. */
static gint64
engine_named(const struct importing *in, gint64 boat, const char *name)
{
	const struct engine *e = (const void *)in->engines->data;
	guint i = boat == NONE ? 0 : import_first_engine(in, boat);

	for (; i < in->engines->len && (boat == NONE || e[i].boat == boat); i++)
		if (!strcmp(e[i].name, name))
			return e[i].id;
	return NONE;
}

static gint64
boat_of_row(const struct importing *in, const void *record)
{
	const struct field *f = record_field(in->form->what, "boat");
	gint64 boat = f ? *field_int(f, (void *)(guintptr)record) : NONE;

	return boat == NONE ? in->boat : boat;
}

static gint64
key_by_name(struct importing *in, enum record ref, const char *text, const void *record)
{
	gint64 boat = boat_of_row(in, record);
	struct boat found;

	if (ref == RECORD_BOAT) {
		gint64 key = book_boat(in->b, text, &found, NULL) ? found.id : NONE;

		record_clear(RECORD_BOAT, &found);
		return key;
	}
	if (ref == RECORD_ENGINE)
		return engine_named(in, boat, text);
	if (ref == RECORD_PLACE)
		return book_place_key(in->b, text);
	if (boat == NONE)
		return NONE;
	if (ref == RECORD_FITTING)
		return book_key_of(in->b, SQL_FITTING_BY_PATH, boat, text);
	return ref == RECORD_TASK ? book_key_of(in->b, SQL_TASK_BY_NAME, boat, text) : NONE;
}

/* A key that an export wrote.  Of rows of the same kind, which may come later in the file, it is taken as it is. */
static gboolean
key_there(const struct importing *in, enum record ref, const char *text, gint64 *key)
{
	g_autofree void *row = g_malloc(record_type(ref)->size);
	gboolean there;

	if (!book_key(text, key))
		return FALSE;
	if (ref == in->form->what)
		return TRUE;
	record_init(ref, row);
	there = row_get(in->b->db, ref, *key, row, NULL);
	record_clear(ref, row);
	return there;
}

static gboolean
key_of(void *user, enum record ref, const char *text, const void *record, gint64 *key, GError **err)
{
	*key = key_by_name(user, ref, text, record);
	if (*key != NONE || key_there(user, ref, text, key))
		return TRUE;
	return err_set(err, ERR_NOT_FOUND, "no %s is called \"%.60s\" in this logbook", record_type(ref)->name, text);
}

/* Fields that a file may leave out because they follow from others. */
static guint64
filled_fields(const struct importing *in)
{
	static const char *const follow[] = { "boat", "hours", "outcome", "how", "standing", "level", "digest", NULL };
	enum record r = in->form->what;
	guint64 bits = 0;

	for (int i = 0; follow[i]; i++) {
		int at = record_field_index(r, follow[i]);

		if (at >= 0 && (strcmp(follow[i], "boat") || in->boat != NONE))
			bits |= (guint64)1 << at;
	}
	return bits;
}

static void
take_report(struct csv_report *report, const struct import_form *form, struct import_said *said)
{
	for (guint i = 0; i < report->notes->len; i++)
		g_ptr_array_add(said->notes, g_strdup(report->notes->pdata[i]));
	for (guint i = 0; i < report->errors->len && said->errors->len < CSV_REPORT_ERRORS; i++)
		g_ptr_array_add(said->errors, g_strdup(report->errors->pdata[i]));
	said->n_errors += report->n_errors;
	if (report->found.separator != ',' && !form->separator)
		g_ptr_array_add(said->notes, g_strdup_printf("%s: read with %s between fields", form->path,
							     report->found.separator == '\t' ? "tabs" : "semicolons"));
	if (report->found.decimal_comma && form->decimal_comma < 0)
		g_ptr_array_add(said->notes, g_strdup_printf("%s: numbers read with a decimal comma", form->path));
}

/* About how many rows a file holds, of the kinds of which there may be many; 0: not known. */
static gint64
rows_expected(enum record r, FILE *f)
{
	enum { ROW_BYTES = 50 };
	struct stat st;

	if ((r != RECORD_OUTING && r != RECORD_SERVICE) || fstat(fileno(f), &st) || !S_ISREG(st.st_mode))
		return 0;
	return st.st_size / ROW_BYTES;
}

static gboolean
read_stream(struct importing *in, FILE *f, GError **err)
{
	const struct import_form *form = in->form;
	struct csv_in_how how = { form->separator,
				  form->decimal_comma < 0 ? DECIMAL_FOUND_OUT
				  : form->decimal_comma   ? DECIMAL_COMMA
							  : DECIMAL_POINT,
				  FALSE };
	struct record_in rows = { form->what, in->b->who.today, filled_fields(in), key_of, take, in };
	struct csv_report report;
	struct csv_in *csv = csvin_file(f, form->path, &how, err);
	gboolean ok;

	if (!csv)
		return FALSE;
	in->bulk = bulk_open(in->b->db, form->what, rows_expected(form->what, f), err);
	ok = in->bulk != NULL;
	csvreport_init(&report);
	if (ok) {
		ok = record_csv_read(csv, &rows, &report);
		take_report(&report, form, in->said);
		ok = bulk_close(in->bulk, ok ? err : NULL) && ok;
	}
	csvreport_clear(&report);
	csvin_free(csv);
	return ok;
}

static gboolean
import_stream(struct importing *in, FILE *f, GError **err)
{
	struct book *b = in->b;
	gboolean ok;

	in->there = rows_there(b, in->form->what, err);
	in->boats = book_boats(b, err);
	in->engines = book_gather(b, RECORD_ENGINE, sql_all(RECORD_ENGINE), NONE, err);
	in->meters = book_gather(b, RECORD_METER, sql_all(RECORD_METER), NONE, err);
	in->tasks =
		in->form->what == RECORD_SERVICE ? book_gather(b, RECORD_TASK, sql_all(RECORD_TASK), NONE, err) : NULL;
	in->by_task = g_hash_table_new(g_int64_hash, g_int64_equal);
	for (guint i = 0; in->tasks && i < in->tasks->len; i++)
		g_hash_table_add(in->by_task, &((struct task *)(void *)in->tasks->data)[i].id);
	in->touched = g_hash_table_new_full(g_int64_hash, g_int64_equal, NULL, g_free);
	in->lines = g_array_new(FALSE, FALSE, sizeof(struct import_line));
	in->readings = g_array_new(FALSE, FALSE, sizeof(struct service));
	ok = in->boats && in->engines && in->meters && read_stream(in, f, err) && import_settle(in, err);
	g_clear_pointer(&in->there, g_hash_table_unref);
	g_clear_pointer(&in->boats, g_array_unref);
	g_clear_pointer(&in->engines, g_array_unref);
	g_clear_pointer(&in->meters, g_array_unref);
	g_clear_pointer(&in->tasks, g_array_unref);
	g_hash_table_unref(in->by_task);
	g_hash_table_unref(in->touched);
	g_array_unref(in->lines);
	g_array_unref(in->readings);
	return ok;
}

gboolean
import_file(struct book *b, const struct import_form *form, gint64 boat, struct import_said *said, GError **err)
{
	struct importing in = { .b = b, .form = form, .boat = boat, .said = said };
	gboolean standard = !strcmp(form->path, "-"), ok;
	FILE *f = standard ? stdin : fopen(form->path, "rb");

	if (!said->notes) {
		said->notes = g_ptr_array_new_with_free_func(g_free);
		said->errors = g_ptr_array_new_with_free_func(g_free);
	}
	if (!f)
		return err_set(err, ERR_SYSTEM, "can't read %s: %s", form->path, g_strerror(errno));
	ok = import_stream(&in, f, err);
	if (!standard)
		fclose(f);
	return ok;
}

gboolean
import_whole(struct book *b, const char *path, enum record r, gint64 boat, GError **err)
{
	struct import_form form = { .what = r, .path = path, .decimal_comma = -1 };
	struct import_said said = { 0 };
	gboolean ok;

	if (!g_file_test(path, G_FILE_TEST_EXISTS))
		return TRUE;
	ok = import_file(b, &form, boat, &said, err);
	if (!ok && err && !*err)
		err_set(err, ERR_INPUT, "%s", said.errors->len ? (const char *)said.errors->pdata[0] : path);
	import_said_clear(&said);
	return ok;
}

gboolean
book_import(struct book *b, const struct import_form *form, struct import_said *said, GError **err)
{
	g_autofree char *base = g_path_get_basename(form->path);
	struct boat boat;
	gint64 key = NONE;
	gboolean ok;

	/* A file may name its boats itself; without that, one boat must be meant. */
	if (form->boat || form->what != RECORD_BOAT) {
		if (book_boat(b, form->boat, &boat, form->boat ? err : NULL))
			key = boat.id;
		else if (form->boat)
			return FALSE;
		record_clear(RECORD_BOAT, &boat);
	}
	if (!book_begin(b, err))
		return FALSE;
	ok = import_file(b, form, key, said, err);
	if (!ok && said->errors && said->errors->len && err && !*err)
		err_set(err, ERR_INPUT, "%s: %" G_GINT64_FORMAT " %s, nothing was read in", form->path, said->n_errors,
			said->n_errors == 1 ? "error" : "errors");
	if (ok && form->dry_run) {
		db_rollback(b->db);
		return TRUE;
	}
	return book_end(b, ok, err, "import of %s from %s: %" G_GINT64_FORMAT " new", record_type(form->what)->plural,
			base, said->added);
}
