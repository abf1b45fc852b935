/* A list as JSON: an array of objects, each with members by name, values or nested objects and arrays. */
#ifndef EXCHANGE_JSON_H
#define EXCHANGE_JSON_H

#include "exchange/sink.h"

struct json_out;

struct json_out *jsonout_new(void);
void jsonout_free(struct json_out *out);

/* Begin the next object of the list; what was open is closed. */
void jsonout_next(struct json_out *out);

/* Members of the innermost open object, in the order written; in an open array the name is NULL.  Bytes of
 * a text that are not UTF-8 become U+FFFD. */
void jsonout_text(struct json_out *out, const char *name, const char *text);	/* NULL: null */
void jsonout_int(struct json_out *out, const char *name, gint64 value);	/* NONE: null */
void jsonout_day(struct json_out *out, const char *name, gint64 day);	/* ISO 8601; NONE: null */
void jsonout_real(struct json_out *out, const char *name, double value);	/* not finite: null */
void jsonout_yes(struct json_out *out, const char *name, gint64 value);	/* 0: false; NONE: null; else true */
void jsonout_null(struct json_out *out, const char *name);

/* Nest; at most 16 deep.  Every open one wants its close. */
void jsonout_open_object(struct json_out *out, const char *name);
void jsonout_open_array(struct json_out *out, const char *name);
void jsonout_close(struct json_out *out);

/* UTF-8, reals with 15 digits, and a newline at the end; in one line, or indented by two spaces. */
gboolean jsonout_write(const struct json_out *out, const struct sink *sink, gboolean indented, GError **err);

#endif
