#include "store/compare.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/key.h"
#include "base/text.h"
#include "store/rows.h"

#include <string.h>

struct comparing {
	struct cells *file, *replay;
	const struct record_type *type;
	void (*differ)(void *, const char *);
	void *context;
};

static gboolean
cell_equal(struct cells *a, struct cells *b, int column)
{
	int type = sqlite3_column_type(a->stmt, column), n, m;
	const char *x, *y;
	double p, q;

	if (type != sqlite3_column_type(b->stmt, column))
		return FALSE;
	if (type == SQLITE_NULL)
		return TRUE;
	if (type == SQLITE_INTEGER)
		return sqlite3_column_int64(a->stmt, column) == sqlite3_column_int64(b->stmt, column);
	if (type == SQLITE_FLOAT) {
		p = sqlite3_column_double(a->stmt, column);
		q = sqlite3_column_double(b->stmt, column);
		return !memcmp(&p, &q, sizeof p);
	}
	x = cells_bytes(a, column, &n);
	y = cells_bytes(b, column, &m);
	return n == m && !memcmp(x, y, (size_t)n);
}

static char *
int_words(const struct field *f, gint64 value)
{
	char hours[HOURS_TEXT], money[MONEY_TEXT], day[DAY_TEXT], key[KEY_TEXT];
	/* What a damaged file holds may be no day at all. */
	gboolean plausible = value > -800000 && value < 3000000;

	if (f->kind == FIELD_DATE && plausible)
		return g_strdup(day_iso(value, day));
	if (f->kind == FIELD_HOURS && value >= 0)
		return g_strdup_printf(strchr(hours_exact(value, hours), ':') ? "%s" : "%s h", hours);
	if (f->kind == FIELD_CENTS && value >= 0)
		return g_strdup(money_exact(value, money));
	if (f->kind == FIELD_YES && (value == 0 || value == 1))
		return g_strdup(value ? "yes" : "no");
	if (f->kind == FIELD_KEY || f->kind == FIELD_REF)
		return g_strdup(key_letters(value, key));
	return g_strdup_printf("%" G_GINT64_FORMAT, value);
}

static char *
cell_words(struct cells *c, int column, const struct field *f)
{
	g_autofree char *text = NULL, *harmless = NULL;
	int n, type = sqlite3_column_type(c->stmt, column);
	const char *bytes;

	if (type == SQLITE_NULL)
		return g_strdup("nothing");
	if (type == SQLITE_INTEGER)
		return int_words(f, sqlite3_column_int64(c->stmt, column));
	if (type == SQLITE_FLOAT)
		return g_strdup_printf("%.17g", sqlite3_column_double(c->stmt, column));
	bytes = cells_bytes(c, column, &n);
	text = g_strndup(bytes, (gsize)MIN(n, 200));
	harmless = text_harmless(text, FALSE);
	return g_strdup_printf("\"%s\"", harmless);
}

/* "outing of 2026-05-12 (key bbbbbcmrpkcfrssp)", as exports show it */
static char *
row_words(const struct comparing *p, struct cells *c)
{
	GString *words = g_string_new(p->type->name);
	char key[KEY_TEXT];

	for (int i = 1; i < p->type->n_fields; i++) {
		const struct field *f = &p->type->field[i];
		g_autofree char *cell = NULL;

		if (strcmp(f->name, "name") && strcmp(f->name, "path") && f->kind != FIELD_DATE)
			continue;
		cell = cell_words(c, i, f);
		g_string_append_printf(words, f->kind == FIELD_DATE ? " of %s" : " %s", cell);
		break;
	}
	g_string_append_printf(words, " (key %s)", key_letters(cells_int(c, 0), key));
	return g_string_free(words, FALSE);
}

static void
say(const struct comparing *p, char *sentence)
{
	p->differ(p->context, sentence);
	g_free(sentence);
}

static void
compare_row(const struct comparing *p)
{
	for (int i = 1; i < p->type->n_fields; i++)
		if (!cell_equal(p->file, p->replay, i)) {
			const struct field *f = &p->type->field[i];
			g_autofree char *row = row_words(p, p->replay);
			g_autofree char *now = cell_words(p->file, i, f);
			g_autofree char *then = cell_words(p->replay, i, f);

			say(p, g_strdup_printf("%s, %s: the file says %s, the journal says %s", row, f->name, now,
					       then));
		}
}

static void
one_sided(const struct comparing *p, struct cells *c, const char *format)
{
	g_autofree char *row = row_words(p, c);

	say(p, g_strdup_printf("%s %s", row, format));
}

/* Both are in the order of their keys, none of which is the largest number there is. */
static void
walk(const struct comparing *p)
{
	gboolean in_file = cells_next(p->file), in_replay = cells_next(p->replay);

	while ((in_file || in_replay) && !p->file->err) {
		gint64 a = in_file ? cells_int(p->file, 0) : G_MAXINT64;
		gint64 b = in_replay ? cells_int(p->replay, 0) : G_MAXINT64;

		if (a == b)
			compare_row(p);
		else if (a < b)
			one_sided(p, p->file, "is in the file, but not in the journal");
		else
			one_sided(p, p->replay, "is in the journal, but missing from the file");
		if (a <= b)
			in_file = cells_next(p->file);
		if (b <= a)
			in_replay = cells_next(p->replay);
	}
}

gboolean
compare_tables(struct db *file, struct db *replay, enum record r, void (*differ)(void *, const char *), void *context,
	       GError **err)
{
	struct comparing p = { cells_open(file, sql_walk(r)), cells_open(replay, sql_walk(r)), record_type(r), differ,
		context };
	GError *damage = NULL;

	walk(&p);
	if (!cells_close(p.file, &damage)) {
		say(&p, g_strdup_printf("the %s can't be read to their end: %s", p.type->plural, damage->message));
		g_error_free(damage);
	}
	return cells_close(p.replay, err);
}
