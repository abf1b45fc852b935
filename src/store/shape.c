#include "store/shape.h"

#include "store/apply.h"
#include "store/sqlite.h"

enum { UNDEFINED = 0, LONGEST = 1000000000 };

static enum shape_state
start(struct shape *s, guint8 byte)
{
	if (byte == 'T') {
		s->table = FALSE;
		s->length = 0;
		return SHAPE_COLUMNS;
	}
	if (!s->table || (byte != SQLITE_INSERT && byte != SQLITE_UPDATE && byte != SQLITE_DELETE))
		return SHAPE_BAD;
	s->op = byte;
	s->second = FALSE;
	s->column = 0;
	return SHAPE_INDIRECT;
}

/* SQLite's variable-length integer; nothing here needs more than five of its bytes. */
static gboolean
varint_done(struct shape *s, guint8 byte, gboolean *bad)
{
	s->length = s->length << 7 | (byte & 0x7f);
	*bad = s->length > LONGEST;
	return !(byte & 0x80);
}

static enum shape_state
columns(struct shape *s, guint8 byte)
{
	gboolean bad, done = varint_done(s, byte, &bad);

	if (bad)
		return SHAPE_BAD;
	if (!done)
		return SHAPE_COLUMNS;
	s->columns = (int)s->length;
	s->column = 0;
	s->named = 0;
	return s->columns > 0 && s->columns <= 64 ? SHAPE_KEYS : SHAPE_BAD;
}

static enum shape_state
keys(struct shape *s, guint8 byte)
{
	if (byte != (s->column == 0))
		return SHAPE_BAD;
	return ++s->column < s->columns ? SHAPE_KEYS : SHAPE_NAME;
}

static enum shape_state
name(struct shape *s, guint8 byte)
{
	enum record r;

	s->name[s->named++] = (char)byte;
	if (byte)
		return s->named < (int)sizeof s->name ? SHAPE_NAME : SHAPE_BAD;
	r = record_of_table(s->name);
	if (r == RECORD_COUNT || s->columns > record_type(r)->n_fields)
		return SHAPE_BAD;
	s->table = TRUE;
	return SHAPE_START;
}

/* After a value: the next column, the new values of an update, or the next row. */
static enum shape_state
next_value(struct shape *s)
{
	if (++s->column < s->columns)
		return SHAPE_TYPE;
	s->column = 0;
	if (s->op != SQLITE_UPDATE || s->second)
		return SHAPE_START;
	s->second = TRUE;
	return SHAPE_TYPE;
}

/* A key is an integer, and stands in the old values of an update alone; only an update leaves values out. */
static gboolean
type_allowed(const struct shape *s, guint8 type)
{
	if (s->column == 0)
		return type == (s->second ? UNDEFINED : SQLITE_INTEGER);
	return type <= SQLITE_NULL && (type != UNDEFINED || s->op == SQLITE_UPDATE);
}

static enum shape_state
value_type(struct shape *s, guint8 type)
{
	if (!type_allowed(s, type))
		return SHAPE_BAD;
	s->type = type;
	s->length = 0;
	s->skip = 8;
	if (type == SQLITE_INTEGER || type == SQLITE_FLOAT)
		return SHAPE_SKIP;
	return type == SQLITE_TEXT || type == SQLITE_BLOB ? SHAPE_LENGTH : next_value(s);
}

static enum shape_state
value_length(struct shape *s, guint8 byte)
{
	gboolean bad, done = varint_done(s, byte, &bad);

	if (bad)
		return SHAPE_BAD;
	if (!done)
		return SHAPE_LENGTH;
	s->skip = (gsize)s->length;
	return s->skip ? SHAPE_SKIP : next_value(s);
}

static enum shape_state
one_byte(struct shape *s, guint8 byte)
{
	switch (s->state) {
	case SHAPE_START:
		return start(s, byte);
	case SHAPE_COLUMNS:
		return columns(s, byte);
	case SHAPE_KEYS:
		return keys(s, byte);
	case SHAPE_NAME:
		return name(s, byte);
	case SHAPE_INDIRECT:
		return byte <= 1 ? SHAPE_TYPE : SHAPE_BAD;
	case SHAPE_TYPE:
		return value_type(s, byte);
	case SHAPE_LENGTH:
		return value_length(s, byte);
	case SHAPE_SKIP:
	case SHAPE_BAD:
		break;
	}
	return SHAPE_BAD;
}

void
shape_feed(struct shape *s, const guint8 *bytes, gsize n)
{
	for (gsize i = 0; i < n && s->state != SHAPE_BAD;) {
		gsize part = MIN(s->skip, n - i);

		if (s->state != SHAPE_SKIP) {
			s->state = one_byte(s, bytes[i++]);
			continue;
		}
		i += part;
		s->skip -= part;
		if (!s->skip)
			s->state = next_value(s);
	}
}

gboolean
shape_good(const struct shape *s)
{
	return s->state == SHAPE_START;
}
