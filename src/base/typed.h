/* Reading a typed amount piece by piece; for the parsers of amount.h alone. */
#ifndef BASE_TYPED_H
#define BASE_TYPED_H

#include <glib.h>

#define TYPED_MOST 100	/* bytes; no amount is longer */

struct typed {
	char *plain;	/* the text without blanks around, its typographic signs as ASCII; owned */
	char *shown;	/* the text as messages name it; owned */
	const char *at;	/* in plain: what is still to be read */
	const char *example;	/* what would be right: "write 2.4, 2h24 or 2:24" */
	GError **err;
};

/* FALSE and *err filled when there is nothing, too much, or no text; typed_clear is due either way. */
gboolean typed_init(struct typed *t, const char *text, const char *example, GError **err);
void typed_clear(struct typed *t);

/* Fill *err with the text, ": " and the message; returns FALSE. */
gboolean typed_fail(struct typed *t, const char *format, ...) G_GNUC_PRINTF(2, 3);

/* Digits with at most one point or comma among them, pointing into plain. */
struct decimal {
	const char *whole, *fraction;
	int n_whole, n_fraction;
};

void typed_blanks(struct typed *t);
gboolean typed_mark(struct typed *t, char mark);	/* when it stands there; blanks behind too */
gboolean typed_sign(struct typed *t);	/* read + or -; TRUE for - */
/* Refuses grouping (1.234,5) and what can be grouping (1,234). */
gboolean typed_decimal(struct typed *t, struct decimal *d);
gboolean typed_end(struct typed *t);	/* fails when something is left over */

/* A table of units ends with a NULL name.  What multiplies a number of them is num / den. */
struct unit {
	const char *name;
	gint64 num, den;
};

/* The unit that stands next, case apart; NULL and nothing read when none of the table does. */
const struct unit *typed_unit(struct typed *t, const struct unit *units);

double decimal_value(const struct decimal *d, int exponent);	/* times 10 to the exponent */
/* The number times scale, rounded half up, exactly; FALSE when it passes most. */
gboolean decimal_scaled(const struct decimal *d, gint64 scale, gint64 most, gint64 *result);
/* The number as num / den; FALSE with more than 12 digits, which a double could not divide exactly. */
gboolean decimal_ratio(const struct decimal *d, gint64 *num, gint64 *den);

/* A decimal, a fraction, or a whole number and a fraction: "9.5", "3/8", "1-3/8", "1 3/8". */
gboolean typed_ratio(struct typed *t, gint64 *num, gint64 *den);

#endif
