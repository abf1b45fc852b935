#include "model/record.h"

#include <math.h>
#include <string.h>

/* char * and double are reached through void *: the table's offsets come from the structs themselves. */
gint64 *
field_int(const struct field *f, void *record)
{
	return (gint64 *)(void *)((char *)record + f->offset);
}

char **
field_text(const struct field *f, void *record)
{
	return (char **)(void *)((char *)record + f->offset);
}

double *
field_real(const struct field *f, void *record)
{
	return (double *)(void *)((char *)record + f->offset);
}

static void
set_unknown(const struct field *f, void *record)
{
	if (f->kind == FIELD_TEXT)
		*field_text(f, record) = NULL;
	else if (f->kind == FIELD_REAL)
		*field_real(f, record) = (double)NAN;
	else
		*field_int(f, record) = NONE;
}

void
record_init(enum record r, void *record)
{
	const struct record_type *t = record_type(r);

	for (int i = 0; i < t->n_fields; i++)
		set_unknown(&t->field[i], record);
}

void
record_clear(enum record r, void *record)
{
	const struct record_type *t = record_type(r);

	for (int i = 0; i < t->n_fields; i++) {
		if (t->field[i].kind == FIELD_TEXT)
			g_free(*field_text(&t->field[i], record));
		set_unknown(&t->field[i], record);
	}
}

static gboolean
field_equal(const struct field *f, void *a, void *b)
{
	double x, y;

	if (f->kind == FIELD_TEXT)
		return !g_strcmp0(*field_text(f, a), *field_text(f, b));
	if (f->kind != FIELD_REAL)
		return *field_int(f, a) == *field_int(f, b);
	x = *field_real(f, a);
	y = *field_real(f, b);
	return isnan(x) ? isnan(y) : memcmp(&x, &y, sizeof x) == 0;
}

gboolean
record_equal(enum record r, const void *a, const void *b)
{
	const struct record_type *t = record_type(r);

	for (int i = 0; i < t->n_fields; i++)
		if (!field_equal(&t->field[i], (void *)(guintptr)a, (void *)(guintptr)b))
			return FALSE;
	return TRUE;
}

const struct field *
record_field(enum record r, const char *name)
{
	const struct record_type *t = record_type(r);

	for (int i = 0; i < t->n_fields; i++)
		if (!strcmp(t->field[i].name, name))
			return &t->field[i];
	return NULL;
}
