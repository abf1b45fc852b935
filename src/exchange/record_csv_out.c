#include "base/amount.h"
#include "base/date.h"
#include "exchange/cell.h"
#include "exchange/record_csv.h"
#include "model/words.h"

/* References mostly repeat that of the row before: the last name of each column is kept. */
struct last_name {
	gint64 key;
	GString *text;
	gboolean plain;	/* needs neither quotes nor a guard */
};

struct record_out {
	const struct record_type *type;
	struct csv_out *out;
	gboolean guarded;
	record_name_fn *name_of;
	void *user;
	struct last_name *last;	/* one a field */
};

struct record_out *
record_out_new(enum record r, struct csv_out *out, record_name_fn *name_of, void *user)
{
	struct record_out *o = g_new0(struct record_out, 1);

	o->type = record_type(r);
	o->out = out;
	o->guarded = csvout_how(out)->for_spreadsheet;
	o->name_of = name_of;
	o->user = user;
	o->last = g_new0(struct last_name, o->type->n_fields);
	for (int i = 0; i < o->type->n_fields; i++) {
		o->last[i] = (struct last_name){ NONE, g_string_new(NULL), FALSE };
		csvout_word(out, o->type->field[i].name);
	}
	if (o->guarded)
		csvout_word(out, GUARDED);
	csvout_row(out);
	return o;
}

void
record_out_free(struct record_out *o)
{
	if (!o)
		return;
	for (int i = 0; i < o->type->n_fields; i++)
		g_string_free(o->last[i].text, TRUE);
	g_free(o->last);
	g_free(o);
}

static void
write_ref(struct record_out *o, int i, gint64 key)
{
	struct last_name *last = &o->last[i];
	char letters[KEY_TEXT];
	const char *name;

	if (key != last->key) {
		name = o->name_of ? o->name_of(o->user, o->type->field[i].ref, key) : NULL;
		g_string_assign(last->text, name ? name : key_letters(key, letters));
		last->plain = csvout_is_plain(o->out, last->text->str);
		last->key = key;
	}
	if (last->plain)
		csvout_word(o->out, last->text->str);
	else
		csvout_text(o->out, last->text->str);
}

static void
write_yearday(struct csv_out *out, gint64 mmdd)
{
	const int month = (int)(mmdd / 100) % 100, day = (int)(mmdd % 100);
	const char text[] = { (char)('0' + month / 10), (char)('0' + month % 10), '-', (char)('0' + day / 10),
		(char)('0' + day % 10), '\0' };

	csvout_word(out, text);
}

static void
write_int(struct record_out *o, int i, gint64 value)
{
	char hours[HOURS_TEXT], money[MONEY_TEXT], day[DAY_TEXT], key[KEY_TEXT];
	const struct field *f = &o->type->field[i];

	if (value == NONE) {
		csvout_text(o->out, NULL);
		return;
	}
	switch (f->kind) {
	case FIELD_KEY: csvout_word(o->out, key_letters(value, key)); break;
	case FIELD_REF: write_ref(o, i, value); break;
	case FIELD_DATE: csvout_word(o->out, day_iso(value, day)); break;
	case FIELD_YEARDAY: write_yearday(o->out, value); break;
	case FIELD_HOURS: csvout_number(o->out, hours_exact(value, hours)); break;
	case FIELD_COUNT: csvout_int(o->out, value); break;
	case FIELD_CENTS: csvout_number(o->out, money_exact(value, money)); break;
	case FIELD_YES: csvout_word(o->out, value ? "yes" : "no"); break;
	case FIELD_WORD: csvout_word(o->out, word_of(f->words, value)); break;
	case FIELD_REAL:
	case FIELD_TEXT: break;	/* not integers */
	}
}

gboolean
record_out_row(struct record_out *o, const void *record)
{
	void *r = (void *)(guintptr)record;	/* the accessors serve writers too, hence not const */

	for (int i = 0; i < o->type->n_fields; i++) {
		const struct field *f = &o->type->field[i];

		if (f->kind == FIELD_TEXT)
			csvout_text(o->out, *field_text(f, r));
		else if (f->kind == FIELD_REAL)
			csvout_real(o->out, *field_real(f, r));
		else
			write_int(o, i, *field_int(f, r));
	}
	if (o->guarded)
		csvout_text(o->out, NULL);
	return csvout_row(o->out);
}
