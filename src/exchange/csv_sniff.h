/* What the first bytes of a CSV file tell about the rest: its encoding, its separator, its decimal mark. */
#ifndef EXCHANGE_CSV_SNIFF_H
#define EXCHANGE_CSV_SNIFF_H

#include <glib.h>

#define BOM "\xEF\xBB\xBF"

/* ERR_INPUT for bytes that are plainly no UTF-8 text: UTF-16, UTF-32, a ZIP archive, a database. */
gboolean sniff_text(const char *bytes, size_t n, GError **err);

/* How many of the n bytes are whole characters of UTF-8, none of them NUL. */
size_t utf8_good(const char *bytes, size_t n);
/* Whether the byte there is wrong, and does not only begin a character whose rest is still to come. */
gboolean utf8_bad(const char *bytes, size_t n);

/* The separator, ',' ';' or TAB, that stands equally often, outside quotes, in the header and the most of
 * the first 20 records; ',' when none of them stands in the header. */
char sniff_separator(const char *bytes, size_t n);
/* Whether the cells hold numbers with a decimal comma: by majority, and when that is undecided then if
 * the separator is ';', which is written where the comma is taken.  FALSE for the separator ','. */
gboolean sniff_decimal_comma(const char *bytes, size_t n, char separator);

#endif
