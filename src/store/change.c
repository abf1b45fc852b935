/* SQLite's changeset format (the comment "RECORD FORMAT" and "CHANGESET FORMAT" in its sqlite3session.c): a table's
 * head is 'T', the number of columns, a byte for each that is 1 in the key, the name and a zero; a row is the
 * operation, a zero for "direct", and for each column a type byte with its value. */
#include "store/bind.h"

#include "model/words.h"

#include <string.h>

/* Type bytes are SQLite's own: 1 integer, 2 real, 3 text, 5 NULL; integers and reals have 8 bytes, texts a length. */
enum { VALUE = 1 + 8, VARINT = 9 };

/* SQLite's variable-length integer: 7 bits a byte, most significant first; lengths stay below 2^31. */
static guint8 *
put_varint(guint8 *at, guint32 value)
{
	guint8 turned[5];
	int n = 0;

	do
		turned[n++] = (guint8)(value & 0x7f);
	while (value >>= 7);
	while (n-- > 0)
		*at++ = (guint8)(turned[n] | (n ? 0x80 : 0));
	return at;
}

static guint8 *
put_eight(guint8 *at, guint8 type, guint64 bits)
{
	guint64 big = GUINT64_TO_BE(bits);

	*at++ = type;
	memcpy(at, &big, sizeof big);
	return at + sizeof big;
}

static guint8 *
put_text(guint8 *at, const char *text)
{
	gsize n = strlen(text);

	*at++ = SQLITE_TEXT;
	at = put_varint(at, (guint32)n);
	memcpy(at, text, n);
	return at + n;
}

static guint8 *
put_real(guint8 *at, double value)
{
	guint64 bits;

	memcpy(&bits, &value, sizeof bits);
	return put_eight(at, SQLITE_FLOAT, bits);
}

static guint8 *
put_field(guint8 *at, const struct field *f, const void *record)
{
	if (field_unknown(f, record)) {
		*at = SQLITE_NULL;
		return at + 1;
	}
	if (f->kind == FIELD_TEXT)
		return put_text(at, *field_text(f, readable(record)));
	if (f->kind == FIELD_WORD)
		return put_text(at, word_of(f->words, *field_int(f, readable(record))));
	if (f->kind == FIELD_REAL)
		return put_real(at, *field_real(f, readable(record)));
	return put_eight(at, SQLITE_INTEGER, (guint64)*field_int(f, readable(record)));
}

gsize
change_most(enum record r, const void *record)
{
	const struct record_type *t = record_type(r);
	gsize most = 2 + (gsize)t->n_fields * (VALUE + VARINT);

	for (int i = 0; i < t->n_fields; i++)
		if (t->field[i].kind == FIELD_TEXT && *field_text(&t->field[i], readable(record)))
			most += strlen(*field_text(&t->field[i], readable(record)));
		else if (t->field[i].kind == FIELD_WORD)
			most += strlen(word_of(t->field[i].words, *field_int(&t->field[i], readable(record))));
	return most;
}

guint8 *
change_head(guint8 *at, enum record r)
{
	const struct record_type *t = record_type(r);
	gsize n = strlen(t->name) + 1;

	*at++ = 'T';
	at = put_varint(at, (guint32)t->n_fields);
	for (int i = 0; i < t->n_fields; i++)
		*at++ = t->field[i].kind == FIELD_KEY;
	memcpy(at, t->name, n);
	return at + n;
}

guint8 *
change_insert(guint8 *at, enum record r, const void *record)
{
	const struct record_type *t = record_type(r);

	*at++ = SQLITE_INSERT;
	*at++ = 0;
	for (int i = 0; i < t->n_fields; i++)
		at = put_field(at, &t->field[i], record);
	return at;
}
