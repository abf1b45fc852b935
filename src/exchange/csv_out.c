#include "exchange/csv_out.h"

#include "base/amount.h"
#include "base/text.h"
#include "exchange/cell.h"
#include "exchange/csv_sniff.h"

#include <string.h>

#define BUFFER 65536

struct csv_out {
	struct sink sink;
	struct csv_out_how how;
	gboolean needs_quote[256];
	gboolean begun;	/* something was written */
	int column, empty;	/* fields of this row so far; of them empty */
	GError *error;
	size_t n;
	char buf[BUFFER];
};

struct csv_out *
csvout_new(const struct sink *sink, const struct csv_out_how *how)
{
	struct csv_out *out = g_new0(struct csv_out, 1);

	out->sink = *sink;
	if (how)
		out->how = *how;
	if (!out->how.separator)
		out->how.separator = ',';
	out->needs_quote[(unsigned char)out->how.separator] = TRUE;
	out->needs_quote['"'] = out->needs_quote['\r'] = out->needs_quote['\n'] = TRUE;
	return out;
}

const struct csv_out_how *
csvout_how(const struct csv_out *out)
{
	return &out->how;
}

static void
send(struct csv_out *out, const char *bytes, size_t n)
{
	if (n && !out->error)
		sink_write(&out->sink, bytes, n, &out->error);
}

static void
put(struct csv_out *out, const char *bytes, size_t n)
{
	if (n > BUFFER - out->n) {
		send(out, out->buf, out->n);
		out->n = 0;
		if (n > BUFFER) {
			send(out, bytes, n);
			return;
		}
	}
	memcpy(out->buf + out->n, bytes, n);
	out->n += n;
}

static void
put_char(struct csv_out *out, char c)
{
	if (out->n < BUFFER)
		out->buf[out->n++] = c;
	else
		put(out, &c, 1);
}

static void
next_field(struct csv_out *out)
{
	if (out->column++)
		put_char(out, out->how.separator);
}

static void
empty_field(struct csv_out *out)
{
	next_field(out);
	out->empty++;
}

/* After OWASP, "CSV Injection", seen in 2025: = + - @, TAB, CR, LF; the full-width = + - @ from memory. */
static gboolean
starts_formula(const char *text)
{
	if (strchr("=+-@\t\r\n", *text))
		return *text != '\0';
	return g_str_has_prefix(text, "\xEF\xBC") && strchr("\x9D\x8B\x8D\xA0", text[2]) && text[2];
}

static gboolean
needs_guard(const char *text)
{
	return starts_formula(text) || (*text == '\'' && (text[1] == '\'' || starts_formula(text + 1)));
}

const char *
guard_strip(const char *text)
{
	return *text == '\'' && (text[1] == '\'' || starts_formula(text + 1)) ? text + 1 : text;
}

static void
put_quoted(struct csv_out *out, const char *guard, const char *text, size_t n)
{
	const char *end = text + n, *quote;

	put_char(out, '"');
	put(out, guard, strlen(guard));
	while ((quote = memchr(text, '"', (size_t)(end - text)))) {
		put(out, text, (size_t)(quote + 1 - text));
		put_char(out, '"');
		text = quote + 1;
	}
	put(out, text, (size_t)(end - text));
	put_char(out, '"');
}

/* What a reader would take out of the first field of a file. */
static gboolean
starts_like_mark(const char *text)
{
	return g_str_has_prefix(text, BOM) || g_str_has_prefix(text, "sep=");
}

gboolean
csvout_is_plain(const struct csv_out *out, const char *text)
{
	gboolean quote = !*text || starts_like_mark(text) || (out->how.for_spreadsheet && needs_guard(text));

	for (const char *p = text; *p; p++)
		quote |= out->needs_quote[(unsigned char)*p];
	return !quote;
}

void
csvout_text(struct csv_out *out, const char *text)
{
	gboolean quote = FALSE;
	const char *guard = "", *p;

	if (!text) {
		empty_field(out);
		return;
	}
	next_field(out);
	for (p = text; *p; p++)
		quote |= out->needs_quote[(unsigned char)*p];
	if (out->how.for_spreadsheet && needs_guard(text))
		guard = "'";
	if (quote || p == text || (!out->begun && starts_like_mark(text))) {
		put_quoted(out, guard, text, (size_t)(p - text));
	} else {
		put(out, guard, strlen(guard));
		put(out, text, (size_t)(p - text));
	}
	out->begun = TRUE;
}

void
csvout_word(struct csv_out *out, const char *text)
{
	if (!*text) {
		empty_field(out);
		return;
	}
	next_field(out);
	put(out, text, strlen(text));
}

void
csvout_number(struct csv_out *out, const char *text)
{
	const char *point = out->how.decimal_comma ? strchr(text, '.') : NULL;
	gboolean quote = point && out->how.separator == ',';

	if (!point) {
		csvout_word(out, text);
		return;
	}
	next_field(out);
	if (quote)
		put_char(out, '"');
	put(out, text, (size_t)(point - text));
	put_char(out, ',');
	put(out, point + 1, strlen(point + 1));
	if (quote)
		put_char(out, '"');
}

void
csvout_int(struct csv_out *out, gint64 value)
{
	char digits[INT_TEXT];

	if (value == NONE) {
		empty_field(out);
		return;
	}
	next_field(out);
	put(out, digits, (size_t)int_digits(value, digits));
}

void
csvout_real(struct csv_out *out, double value)
{
	char digits[NUMBER_TEXT];

	csvout_number(out, number_exact(value, digits));
}

gboolean
csvout_row(struct csv_out *out)
{
	if (out->column == 1 && out->empty == 1)
		put(out, "\"\"", 2);	/* else it would be a blank line, which no reader takes for a row */
	put(out, "\r\n", 2);
	out->column = out->empty = 0;
	out->begun = TRUE;
	return !out->error;
}

gboolean
csvout_names(struct csv_out *out, const char *const *names, int n)
{
	for (int i = 0; i < n; i++)
		csvout_text(out, names[i]);
	return csvout_row(out);
}

gboolean
csvout_close(struct csv_out *out, GError **err)
{
	GError *error;

	send(out, out->buf, out->n);
	if (!out->error)
		sink_flush(&out->sink, &out->error);
	error = out->error;
	g_free(out);
	if (!error)
		return TRUE;
	g_propagate_error(err, error);
	return FALSE;
}
