#include "fixture.h"

#include "store/inside.h"
#include "store/journal.h"
#include "store/rows.h"

#include <glib/gstdio.h>
#include <string.h>

static char *folder;
static GPtrArray *paths;

void
fixture_setup(void)
{
	folder = g_dir_make_tmp("splitpin-XXXXXX", NULL);
	ck_assert_ptr_nonnull(folder);
	paths = g_ptr_array_new_with_free_func(g_free);
}

void
fixture_teardown(void)
{
	GDir *dir = g_dir_open(folder, 0, NULL);
	const char *name;

	while (dir && (name = g_dir_read_name(dir)))
		g_remove(fixture_path(name));
	if (dir)
		g_dir_close(dir);
	g_rmdir(folder);
	g_ptr_array_free(paths, TRUE);
	g_free(folder);
}

const char *
fixture_path(const char *name)
{
	char *path = g_build_filename(folder, name, NULL);

	g_ptr_array_add(paths, path);
	return path;
}

int
fixture_files(void)
{
	GDir *dir = g_dir_open(folder, 0, NULL);
	int n = 0;

	while (g_dir_read_name(dir))
		n++;
	g_dir_close(dir);
	return n;
}

gint64
fixture_key(enum record r, int n)
{
	return ((gint64)r + 1) * 1000000 + n;
}

static gint64
made_up_int(const struct field *f, enum record r, int n)
{
	switch (f->kind) {
	case FIELD_KEY:
		return fixture_key(r, n);
	case FIELD_REF:
		if ((!f->required && n % 2) || (f->ref == r && n == 1))
			return NONE;
		return fixture_key(f->ref, 1);
	case FIELD_DATE:
		return 20000 + n;
	case FIELD_YEARDAY:
		return 415;
	case FIELD_HOURS:
		return 360 * n;
	case FIELD_COUNT:
	case FIELD_CENTS:
		return n % 5 || f->required ? 100 * n + 5 : NONE;
	case FIELD_YES:
		return n % 2;
	case FIELD_WORD:
		return n % f->words->n;
	case FIELD_REAL:
	case FIELD_TEXT:
		break;
	}
	return NONE;
}

void
fixture_record(enum record r, int n, void *record)
{
	const struct record_type *t = record_type(r);

	record_init(r, record);
	for (int i = 0; i < t->n_fields; i++) {
		const struct field *f = &t->field[i];

		if (f->kind == FIELD_REAL)
			*field_real(f, record) = n * 1.25;
		else if (f->kind == FIELD_TEXT && (f->required || n % 3))
			*field_text(f, record) = g_strdup_printf("%s %d", f->name, n);
		else if (f->kind != FIELD_TEXT)
			*field_int(f, record) = made_up_int(f, r, n);
	}
}

struct entry_head
fixture_head(const char *what)
{
	struct entry_head head = { what, "Kim", "laptop", 1764000000 };

	return head;
}

void
fixture_begin(struct db *db)
{
	GError *err = NULL;

	fixture_works(db_begin(db, &err), err);
}

void
fixture_commit(struct db *db, const char *what)
{
	struct entry_head head = fixture_head(what);
	gboolean changed;
	GError *err = NULL;

	fixture_works(db_commit(db, &head, &changed, &err), err);
	ck_assert(changed);
}

static void
put_rows(struct db *db, enum record r, int n1, int n2)
{
	gint64 record[FIXTURE_RECORD / sizeof(gint64)];
	GError *err = NULL;

	for (int n = n1; n <= n2; n++) {
		fixture_record(r, n, record);
		fixture_works(row_put(db, r, record, &err), err);
		record_clear(r, record);
	}
}

void
fixture_put(struct db *db, enum record r, int n1, int n2)
{
	g_autofree char *what = g_strdup_printf("%s %d to %d", record_type(r)->plural, n1, n2);

	fixture_begin(db);
	put_rows(db, r, n1, n2);
	fixture_commit(db, what);
}

static void
correct_outing(struct db *db)
{
	struct outing o;
	GError *err = NULL;

	record_init(RECORD_OUTING, &o);
	fixture_begin(db);
	fixture_works(row_get(db, RECORD_OUTING, fixture_key(RECORD_OUTING, 3), &o, &err), err);
	o.hours += 600;
	g_free(o.remark);
	o.remark = g_strdup("corrected");
	fixture_works(row_put(db, RECORD_OUTING, &o, &err), err);
	fixture_works(row_drop(db, RECORD_OUTING, fixture_key(RECORD_OUTING, 5), &err), err);
	fixture_commit(db, "correct an outing and remove one");
	record_clear(RECORD_OUTING, &o);
}

struct db *
fixture_book(const char *name)
{
	struct entry_head head = fixture_head(NULL);
	GError *err = NULL;
	struct db *db = db_create(fixture_path(name), &err);

	fixture_works(db != NULL, err);
	/* Nobody pulls the plug here, and twenty commits would wait for the disk. */
	ck_assert_int_eq(sqlite3_exec(db->conn, "PRAGMA synchronous = OFF", NULL, NULL, NULL), SQLITE_OK);
	for (int r = 0; r < RECORD_RATE; r++)
		fixture_put(db, (enum record)r, 1, 4);
	/* Kinds that came later share an entry, so that a new one does not renumber those that tests name. */
	fixture_begin(db);
	for (int r = RECORD_RATE; r < RECORD_COUNT; r++)
		put_rows(db, (enum record)r, 1, 4);
	fixture_commit(db, "rates 1 to 4");
	fixture_put(db, RECORD_OUTING, 5, 30);
	fixture_put(db, RECORD_SERVICE, 5, 12);
	correct_outing(db);
	fixture_works(journal_undo(db, &head, NULL, &err), err);
	fixture_works(journal_redo(db, &head, NULL, &err), err);
	ck_assert(db_exec(db, SQL_SETTINGS, NULL));
	return db;
}

struct db *
fixture_open(const char *name, enum db_mode mode)
{
	GError *err = NULL;
	struct db *db = db_open(fixture_path(name), mode, &err);

	fixture_works(db != NULL, err);
	return db;
}

static void
dump_cell(GString *text, struct cells *c, int column)
{
	int n;
	const char *bytes = cells_bytes(c, column, &n);

	if (bytes)
		g_string_append_len(text, bytes, n);
	else
		g_string_append(text, "NULL");
	g_string_append_c(text, '|');
}

char *
fixture_dump(struct db *db)
{
	GString *text = g_string_new(NULL);
	GError *err = NULL;

	for (int r = 0; r < RECORD_COUNT; r++) {
		struct cells *c = cells_open(db, sql_walk((enum record)r));

		g_string_append_printf(text, "%s:\n", record_type((enum record)r)->plural);
		while (cells_next(c)) {
			for (int i = 0; i < record_type((enum record)r)->n_fields; i++)
				dump_cell(text, c, i);
			g_string_append_c(text, '\n');
		}
		fixture_works(cells_close(c, &err), err);
	}
	return g_string_free(text, FALSE);
}

char *
fixture_bytes(const char *path)
{
	g_autofree char *bytes = NULL;
	gsize n;

	ck_assert(g_file_get_contents(path, &bytes, &n, NULL));
	return g_compute_checksum_for_data(G_CHECKSUM_SHA256, (const guchar *)bytes, n);
}

void
fixture_sql(const char *path, const char *sql)
{
	sqlite3 *conn;
	char *message = NULL;

	ck_assert_int_eq(sqlite3_open(path, &conn), SQLITE_OK);
	ck_assert_msg(sqlite3_exec(conn, sql, NULL, NULL, &message) == SQLITE_OK, "%s: %s", sql, message);
	sqlite3_close(conn);
}
