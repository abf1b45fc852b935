/* A command's words and options, taken apart by a table. */
#ifndef CLI_ARGS_H
#define CLI_ARGS_H

#include "base/value.h"

struct option_def {
	const char *name; /* without the dashes */
	const char *arg; /* "DATE"; NULL for a flag */
	const char *help; /* one line */
};

struct args {
	GPtrArray *words; /* char *, borrowed from argv */
	GPtrArray *names, *values; /* options as they came; a flag's value is "" */
};

void args_clear(struct args *a);
/* Take argv[1..] apart: options of both tables (each ends with a NULL name) in any order among the words; "--"
 * ends the options.  With stop_at_word everything from the first word on is left: *rest is its index. */
gboolean args_parse(struct args *a, int argc, char **argv, const struct option_def *const tables[2], int *rest,
		    GError **err);

const char *args_value(const struct args *a, const char *name); /* the last one given; NULL when none */
gboolean args_flag(const struct args *a, const char *name);
/* The k-th (from 0) value of a repeated option; NULL past the last. */
const char *args_nth(const struct args *a, const char *name, int k);
/* All of them; the caller's, as GStrv. */
char **args_all(const struct args *a, const char *name);
const char *args_word(const struct args *a, guint i); /* NULL past the last */
/* The words from i on, joined by spaces; the caller frees it. */
char *args_join(const struct args *a, guint i);

#endif
