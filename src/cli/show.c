#include "cli/show.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "base/text.h"
#include "logbook/transfer.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

void
show_fit(const char *text, int columns)
{
	g_autoptr(GString) fit = g_string_new(NULL);

	text_add_fit(fit, text, columns);
	fputs(fit->str, stdout);
}

gboolean
key_parse(const char *text, gint64 *key, GError **err)
{
	if (book_key(text, key))
		return TRUE;
	return err_set(err, ERR_INPUT, "\"%.40s\" is no record's key: --list shows them, sixteen letters each", text);
}

/* One field's value for people; "" when there is none to show. */
static char *
field_words(struct book *b, const struct field *f, void *record)
{
	char buf[HOURS_TEXT];
	gint64 v = f->kind == FIELD_TEXT || f->kind == FIELD_REAL ? 0 : *field_int(f, record);
	const char *name;

	if (v == NONE)
		return g_strdup("");
	switch (f->kind) {
	case FIELD_TEXT:
		return g_strdup(*field_text(f, record) ? *field_text(f, record) : "");
	case FIELD_REAL:
		return isnan(*field_real(f, record)) ? g_strdup("") : g_strdup_printf("%g", *field_real(f, record));
	case FIELD_KEY:
		return book_key_text(v);
	case FIELD_REF:
		name = book_name_of(b, f->ref, v);
		return g_strdup(name ? name : "");
	case FIELD_DATE:
		return g_strdup(day_iso(v, buf));
	case FIELD_YEARDAY:
		return g_strdup_printf("%02d-%02d", (int)(v / 100), (int)(v % 100));
	case FIELD_HOURS:
		return g_strdup_printf("%s h", hours_words(v, buf));
	case FIELD_COUNT:
		return g_strdup_printf("%" G_GINT64_FORMAT, v);
	case FIELD_CENTS:
		return g_strdup(money_exact(v, buf));
	case FIELD_YES:
		return g_strdup(v ? f->name : "");
	case FIELD_WORD:
		return g_strdup(word_of(f->words, v));
	}
	g_assert_not_reached();
}

static void
show_record(const struct cli *c, struct book *b, const struct record_type *t, void *record)
{
	g_autoptr(GString) line = g_string_new(NULL);

	for (int i = 0; i < t->n_fields; i++) {
		const struct field *f = &t->field[i];
		g_autofree char *words =
			f->kind == FIELD_REF && f->ref == RECORD_BOAT ? g_strdup("") : field_words(b, f, record);

		if (*words)
			g_string_append_printf(line, "%s%s", line->len ? "  " : "", words);
	}
	cli_say(c, 4, "%s", line->str);
}

static const struct field *
first_date(const struct record_type *t)
{
	for (int i = 0; i < t->n_fields; i++)
		if (t->field[i].kind == FIELD_DATE)
			return &t->field[i];
	return NULL;
}

int
show_records(struct cli *c, struct book *b, enum record r, gint64 boat, const struct args *a, GError **err)
{
	return show_records_of(c, b, &(struct show_only) { r, boat, "id", NONE }, a, err);
}

int
show_records_of(struct cli *c, struct book *b, const struct show_only *only, const struct args *a, GError **err)
{
	const struct record_type *t = record_type(only->r);
	const struct field *date = first_date(t), *of = record_field(only->r, only->field);
	g_autoptr(GArray) all = NULL;
	gint64 since = NONE;

	if (!opt_date(c, a, "since", &since, err))
		return EXIT_DATA;
	all = book_records(b, only->r, only->boat, err);
	for (guint i = 0; all && i < all->len; i++) {
		void *record = all->data + i * t->size;

		if (only->key != NONE && *field_int(of, record) != only->key)
			continue;
		if (!date || since == NONE || *field_int(date, record) >= since)
			show_record(c, b, t, record);
	}
	return all ? EXIT_DONE : EXIT_FILE;
}
