#include "exchange/table.h"

#include "base/err.h"
#include "exchange/csv_in.h"

#include <errno.h>
#include <string.h>

struct table {
	char *name; /* of the file */
	int n; /* columns named */
	int at[CSVIN_COLUMNS_MAX]; /* where each stands in the file */
	GArray *lines; /* gint64, of each row */
	GPtrArray *cells; /* n a row */
	GStringChunk *texts;
};

void
table_free(struct table *t)
{
	if (!t)
		return;
	g_free(t->name);
	g_array_unref(t->lines);
	g_ptr_array_unref(t->cells);
	g_string_chunk_free(t->texts);
	g_free(t);
}

static gboolean
take_header(struct table *t, const struct csv_row *row, const char *const *columns, int must, GError **err)
{
	for (int k = 0; columns[k]; k++) {
		t->at[k] = -1;
		for (int i = 0; i < row->n; i++) {
			if (!row->cell[i] || strcmp(row->cell[i], columns[k]))
				continue;
			if (t->at[k] >= 0)
				return err_set(err, ERR_INPUT, "%s:%d: two columns are called \"%s\"", t->name, (int)row->line,
					       columns[k]);
			t->at[k] = i;
		}
		if (t->at[k] < 0 && k < must)
			return err_set(err, ERR_INPUT, "%s:%d: the column \"%s\" is missing", t->name, (int)row->line,
				       columns[k]);
		t->n++;
	}
	return TRUE;
}

static void
take_row(struct table *t, const struct csv_row *row)
{
	g_array_append_val(t->lines, row->line);
	for (int k = 0; k < t->n; k++) {
		const char *text = t->at[k] < 0 ? NULL : row->cell[t->at[k]];

		g_ptr_array_add(t->cells, text ? g_string_chunk_insert_const(t->texts, text) : NULL);
	}
}

static gboolean
read_all(struct table *t, struct csv_in *in, const char *const *columns, int must, GError **err)
{
	struct csv_row row;
	enum csv_got got = csvin_next(in, &row, err);

	if (got == GOT_END)
		return err_set(err, ERR_INPUT, "%s: empty, where a header is wanted", t->name);
	if (got != GOT_ROW || !take_header(t, &row, columns, must, err))
		return FALSE;
	while ((got = csvin_next(in, &row, err)) == GOT_ROW)
		take_row(t, &row);
	return got == GOT_END;
}

static struct table *
read_file(const char *path, const struct csv_in_how *how, const char *const *columns, int must, GError **err)
{
	struct table *t;
	struct csv_in *in;
	FILE *f = fopen(path, "rb");
	gboolean ok;

	if (!f) {
		err_set(err, ERR_SYSTEM, "%s: %s", path, g_strerror(errno));
		return NULL;
	}
	t = g_new0(struct table, 1);
	t->name = g_path_get_basename(path);
	t->lines = g_array_new(FALSE, FALSE, sizeof(gint64));
	t->cells = g_ptr_array_new();
	t->texts = g_string_chunk_new(4096);
	in = csvin_file(f, t->name, how, err);
	ok = in && read_all(t, in, columns, must, err);
	if (in)
		csvin_free(in);
	fclose(f);
	if (!ok)
		g_clear_pointer(&t, table_free);
	return t;
}

struct table *
table_read(const char *path, const char *const *columns, GError **err)
{
	static const struct csv_in_how how = { .separator = ',', .decimal = DECIMAL_POINT };

	return read_file(path, &how, columns, CSVIN_COLUMNS_MAX, err);
}

struct table *
table_read_foreign(const char *path, const char *const *columns, int must, GError **err)
{
	return read_file(path, NULL, columns, must, err);
}

guint
table_rows(const struct table *t)
{
	return t->lines->len;
}

const char *
table_cell(const struct table *t, guint row, int column)
{
	return g_ptr_array_index(t->cells, row * (guint)t->n + (guint)column);
}

gint64
table_line(const struct table *t, guint row)
{
	return g_array_index(t->lines, gint64, row);
}

gboolean
table_prefix(const struct table *t, guint row, GError **err)
{
	return err_prefix(err, "%s:%d: ", t->name, (int)table_line(t, row));
}
