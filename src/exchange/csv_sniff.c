#include "exchange/csv_sniff.h"

#include "base/err.h"

#include <string.h>

#define RECORDS 20

static gboolean
begins(const char *bytes, size_t n, const char *with, size_t length)
{
	return n >= length && !memcmp(bytes, with, length);
}

gboolean
sniff_text(const char *bytes, size_t n, GError **err)
{
	if (begins(bytes, n, "\xFF\xFE", 2) || begins(bytes, n, "\xFE\xFF", 2) ||
	    (n >= 4 && !bytes[0] != !bytes[1] && !bytes[2] == !bytes[0] && !bytes[3] == !bytes[1]))
		return err_set(err, ERR_INPUT, "the text is UTF-16: save it as UTF-8, or convert it with "
			       "iconv -f UTF-16 -t UTF-8");
	if (begins(bytes, n, "\0\0\xFE\xFF", 4))
		return err_set(err, ERR_INPUT, "the text is UTF-32: save it as UTF-8, or convert it with "
			       "iconv -f UTF-32 -t UTF-8");
	if (begins(bytes, n, "PK\3\4", 4))
		return err_set(err, ERR_INPUT,
			       "this is a ZIP archive, perhaps a spreadsheet's own file: open it in "
			       "the spreadsheet and save it as CSV with UTF-8");
	if (begins(bytes, n, "SQLite format 3", 16))
		return err_set(err, ERR_INPUT, "this is a database, perhaps a logbook, and not a CSV file");
	return TRUE;
}

/* Eight bytes at a time while all of them are ASCII and none is NUL. */
static size_t
ascii_run(const char *bytes, size_t n)
{
	const guint64 ones = G_GUINT64_CONSTANT(0x0101010101010101), tops = ones << 7;
	size_t i = 0;
	guint64 v;

	for (; i + sizeof v <= n; i += sizeof v) {
		memcpy(&v, bytes + i, sizeof v);
		if ((v | (v - ones)) & tops)
			break;
	}
	while (i < n && bytes[i] > 0 && !(bytes[i] & 0x80))
		i++;
	return i;
}

size_t
utf8_good(const char *bytes, size_t n)
{
	size_t i = 0;

	while ((i += ascii_run(bytes + i, n - i)) < n) {
		gunichar c = bytes[i] ? g_utf8_get_char_validated(bytes + i, (gssize)(n - i)) : (gunichar)-1;

		if (c == (gunichar)-1 || c == (gunichar)-2)
			break;
		i += (size_t)(g_utf8_next_char(bytes + i) - (bytes + i));
	}
	return i;
}

gboolean
utf8_bad(const char *bytes, size_t n)
{
	return n && (!*bytes || g_utf8_get_char_validated(bytes, (gssize)n) == (gunichar)-1);
}

/* How often the separator stands outside quotes in each of the first records; returns the number of
 * records. */
static int
count_in_records(const char *p, const char *end, char separator, int count[RECORDS])
{
	gboolean quoted = FALSE, blank = TRUE;
	int record = 0;

	memset(count, 0, RECORDS * sizeof *count);
	for (; p < end && record < RECORDS; p++) {
		if (*p == '"')
			quoted = !quoted;
		if (!quoted && (*p == '\n' || *p == '\r')) {
			record += !blank;
			blank = TRUE;
			continue;
		}
		blank = FALSE;
		count[record] += !quoted && *p == separator;
	}
	return record;
}

/* Records that agree with the header weigh most, then the number of columns. */
static int
separator_score(const char *bytes, size_t n, char separator)
{
	int count[RECORDS], records, agree = 0;

	records = count_in_records(bytes, bytes + n, separator, count);
	for (int i = 0; i < records; i++)
		agree += count[i] == count[0];
	return count[0] ? agree * 1000 + MIN(count[0], 999) : 0;
}

char
sniff_separator(const char *bytes, size_t n)
{
	static const char candidate[] = { ',', ';', '\t' };
	char best = ',';
	int best_score = 0;

	for (size_t i = 0; i < sizeof candidate; i++) {
		int score = separator_score(bytes, n, candidate[i]);

		if (score > best_score) {
			best_score = score;
			best = candidate[i];
		}
	}
	return best;
}

/* The mark of a cell that is wholly digits, one mark, digits; else 0. */
static char
decimal_mark(const char *cell, size_t n)
{
	char mark = 0;

	if (n && *cell == '-') {
		cell++;
		n--;
	}
	for (size_t i = 0; i < n; i++) {
		if (g_ascii_isdigit(cell[i]))
			continue;
		if (mark || !i || i + 1 == n || (cell[i] != ',' && cell[i] != '.'))
			return 0;
		mark = cell[i];
	}
	return mark;
}

gboolean
sniff_decimal_comma(const char *bytes, size_t n, char separator)
{
	const char *cell = bytes, *end = bytes + n;
	int commas = 0, points = 0;

	if (separator == ',')
		return FALSE;
	for (const char *p = bytes; p < end; p++) {
		if (*p != separator && *p != '"' && *p != '\n' && *p != '\r')
			continue;
		commas += decimal_mark(cell, (size_t)(p - cell)) == ',';
		points += decimal_mark(cell, (size_t)(p - cell)) == '.';
		cell = p + 1;
	}
	return commas != points ? commas > points : separator == ';';
}
