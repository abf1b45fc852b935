/* Values as the text of one CSV cell, exact both ways, and the quick reading of the plain forms that most
 * cells have. */
#ifndef EXCHANGE_CELL_H
#define EXCHANGE_CELL_H

#include "base/key.h"
#include "base/value.h"

/* A plain decimal: an optional minus, 1 to 15 digits in all, at most one mark with a digit on both sides. */
struct plain {
	gint64 digits;	/* all digits as one number, never negative */
	int decimals;	/* how many of them stand after the mark */
	gboolean minus;
};
/* FALSE means only that text is not of that form. */
gboolean plain_read(const char *text, char mark, struct plain *p);
double plain_real(const struct plain *p);	/* correctly rounded */
/* The value times scale, when that is exactly a whole number. */
gboolean plain_scaled(const struct plain *p, gint64 scale, gint64 *value);

/* YYYY-MM-DD as a day number; FALSE means only that text is not of that form, or that there is no such
 * day. */
gboolean iso_read(const char *text, gint64 *day);

/* "1.234" in a file whose decimal mark is the comma: a thousand or one and a bit, nobody knows. */
gboolean looks_grouped(const char *text);

#endif
