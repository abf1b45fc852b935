#include "exchange/json.h"

#include "base/date.h"
#include "base/err.h"
#include "base/value.h"

#include <jansson.h>
#include <math.h>

#define DEPTH 18

struct json_out {
	json_t *open[DEPTH];	/* the list, an object in it, what is nested; borrowed but for the first */
	int depth;	/* index of the innermost */
};

struct json_out *
jsonout_new(void)
{
	struct json_out *out = g_new0(struct json_out, 1);

	out->open[0] = json_array();
	return out;
}

void
jsonout_free(struct json_out *out)
{
	if (!out)
		return;
	json_decref(out->open[0]);
	g_free(out);
}

/* Takes the value. */
static void
add(struct json_out *out, const char *name, json_t *value)
{
	json_t *into = out->open[out->depth];

	g_assert(json_is_array(into) == !name);
	if (name)
		json_object_set_new(into, name, value);
	else
		json_array_append_new(into, value);
}

static void
nest(struct json_out *out, const char *name, json_t *value)
{
	g_assert(out->depth + 1 < DEPTH);
	add(out, name, value);
	out->open[++out->depth] = value;
}

void
jsonout_next(struct json_out *out)
{
	out->depth = 0;
	nest(out, NULL, json_object());
}

void
jsonout_text(struct json_out *out, const char *name, const char *text)
{
	g_autofree char *valid =
		text && !g_utf8_validate(text, -1, NULL) ? g_utf8_make_valid(text, -1) : NULL;

	add(out, name, text ? json_string(valid ? valid : text) : json_null());
}

void
jsonout_day(struct json_out *out, const char *name, gint64 day)
{
	char d[DAY_TEXT];

	jsonout_text(out, name, day == NONE ? NULL : day_iso(day, d));
}

void
jsonout_int(struct json_out *out, const char *name, gint64 value)
{
	add(out, name, value == NONE ? json_null() : json_integer(value));
}

void
jsonout_real(struct json_out *out, const char *name, double value)
{
	add(out, name, isfinite(value) ? json_real(value) : json_null());
}

void
jsonout_yes(struct json_out *out, const char *name, gint64 value)
{
	add(out, name, value == NONE ? json_null() : json_boolean(value));
}

void
jsonout_null(struct json_out *out, const char *name)
{
	add(out, name, json_null());
}

void
jsonout_open_object(struct json_out *out, const char *name)
{
	nest(out, name, json_object());
}

void
jsonout_open_array(struct json_out *out, const char *name)
{
	nest(out, name, json_array());
}

void
jsonout_close(struct json_out *out)
{
	g_assert(out->depth > 1);
	out->depth--;
}

struct dump {
	const struct sink *sink;
	GError **err;
};

static int
dump_bytes(const char *bytes, size_t n, void *user)
{
	struct dump *d = user;

	return sink_write(d->sink, bytes, n, d->err) ? 0 : -1;
}

/* jansson hands over a few bytes at a time, so that they are gathered first. */
gboolean
jsonout_write(const struct json_out *out, const struct sink *sink, gboolean indented, GError **err)
{
	g_autoptr(GString) text = g_string_new(NULL);
	const struct sink gather = sink_string(text);
	struct dump d = { &gather, err };

	json_dump_callback(out->open[0], dump_bytes, &d,
			   (indented ? JSON_INDENT(2) : JSON_COMPACT) | JSON_REAL_PRECISION(15));
	g_string_append_c(text, '\n');
	return sink_write(sink, text->str, text->len, err) && sink_flush(sink, err);
}
