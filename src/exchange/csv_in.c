#include "exchange/csv_in.h"

#include "base/err.h"
#include "exchange/csv_sniff.h"

#include <csv.h>
#include <errno.h>
#include <string.h>

#define CHUNK 65536

/* buf holds the record in hand from its first byte, so that places in it are worked out only when asked for:
 *   0 <= record <= at <= good <= len, where at is always the begin of a physical line. */
struct csv_in {
	FILE *file;	/* else memory */
	const char *memory;
	size_t memory_left;
	gboolean eof;
	char *name;
	struct csv_found found;
	gboolean any_width;

	char *buf;
	size_t size, len;
	size_t good;	/* so far it is UTF-8 without NUL */
	size_t at;	/* so far it was parsed */
	size_t record;	/* here the record in hand begins */
	size_t next_lf, next_cr, next_quote;	/* the first at or after `at`, or as far as was looked */
	gint64 line, record_line;	/* of at, of record */

	struct csv_parser parser;
	gboolean open;	/* the parser is within a record */
	gboolean row_ended;
	gboolean too_many;
	GString *text;	/* the fields of a row that went through the parser, each with its end */
	size_t offset[CSVIN_COLUMNS_MAX];	/* of each in text; G_MAXSIZE: NULL */
	const char *cell[CSVIN_COLUMNS_MAX];
	int n, width;	/* fields of the row in hand, of the first row */
};

static int
no_space(G_GNUC_UNUSED unsigned char c)
{
	return 0;
}

static void *
capped_realloc(void *old, size_t n)
{
	return n > CSVIN_FIELD_MAX ? NULL : g_realloc(old, n);
}

static gint64
characters(const char *p, size_t n)
{
	gint64 count = 0;

	for (size_t i = 0; i < n; i++)
		count += ((unsigned char)p[i] & 0xC0) != 0x80;
	return count;
}

/* Put the place of a byte of the line in hand before the message. */
static gboolean
broken_at(const struct csv_in *in, size_t byte, GError **err)
{
	return err_prefix(err, "%s:%" G_GINT64_FORMAT ":%" G_GINT64_FORMAT ": ", in->name, in->line,
			  characters(in->buf + in->at, byte - in->at) + 1);
}

/* Reading */

static gboolean
read_more(struct csv_in *in, GError **err)
{
	size_t n;

	if (in->file) {
		errno = 0;
		n = fread(in->buf + in->len, 1, CHUNK, in->file);
		if (n < CHUNK && ferror(in->file))
			return err_set(err, ERR_SYSTEM, "%s: can't be read: %s", in->name, g_strerror(errno));
	} else {
		n = MIN(in->memory_left, CHUNK);
		memcpy(in->buf + in->len, in->memory, n);
		in->memory += n;
		in->memory_left -= n;
	}
	in->eof = n < CHUNK;
	in->len += n;
	in->good += utf8_good(in->buf + in->good, in->len - in->good);
	return TRUE;
}

static gboolean
too_long(struct csv_in *in, GError **err)
{
	if (in->open)
		err_set(err, ERR_INPUT,
			"the record that begins on line %" G_GINT64_FORMAT " is longer than %d MiB: "
			"is a closing quote missing?",
			in->record_line, CSVIN_RECORD_MAX >> 20);
	else
		err_set(err, ERR_INPUT, "the line is longer than %d MiB: this is hardly a CSV file",
			CSVIN_RECORD_MAX >> 20);
	return broken_at(in, in->at, err);
}

/* Drop what came before the record in hand, and read a chunk behind it. */
static gboolean
refill(struct csv_in *in, GError **err)
{
	size_t gone = in->record;

	if (in->len - gone > CSVIN_RECORD_MAX)
		return too_long(in, err);
	if (gone)
		memmove(in->buf, in->buf + gone, in->len - gone);
	in->len -= gone;
	in->good -= gone;
	in->at -= gone;
	in->record = 0;
	in->next_lf -= MIN(gone, in->next_lf);
	in->next_cr -= MIN(gone, in->next_cr);
	in->next_quote -= MIN(gone, in->next_quote);
	if (in->size - in->len < CHUNK + 1) {
		in->size = in->len + in->len / 2 + CHUNK + 1;
		in->buf = g_realloc(in->buf, in->size);
	}
	return read_more(in, err);
}

static gboolean
not_text(const struct csv_in *in, GError **err)
{
	unsigned char byte = (unsigned char)in->buf[in->good];

	if (!byte)
		err_set(err, ERR_INPUT, "a NUL byte: this is no text; save the file as CSV with UTF-8");
	else
		err_set(err, ERR_INPUT,
			"the byte 0x%02x is not UTF-8: save the file as UTF-8, or convert it, for example "
			"with iconv -f WINDOWS-1252 -t UTF-8",
			byte);
	return broken_at(in, in->good, err);
}

/* The first c at or after `at`, or good when there is none yet; *next spares looking twice. */
static size_t
find(const struct csv_in *in, size_t *next, char c)
{
	size_t from = MAX(*next, in->at);
	const char *p;

	if (from < in->good && in->buf[from] == c)
		return *next = from;
	p = memchr(in->buf + from, c, in->good - from);
	return *next = p ? (size_t)(p - in->buf) : in->good;
}

/* The end of the physical line at `at`, its line end included; 0 while it is not all there. */
static size_t
line_end(struct csv_in *in)
{
	size_t lf = find(in, &in->next_lf, '\n'), cr = find(in, &in->next_cr, '\r');

	if (cr < lf && cr + 1 < in->good)
		return cr + 1 + (in->buf[cr + 1] == '\n');
	if (lf < in->good && lf < cr)
		return lf + 1;
	return in->eof && in->good == in->len ? in->len : 0;
}

/* Rows */

/* The common case, a line without quotes, is split where it lies. */
static void
split_plain(struct csv_in *in, size_t end)
{
	char *p = in->buf + in->at, *cell = p, *last = in->buf + end;
	const char separator = in->found.separator;

	if (last > p && last[-1] == '\n')
		last--;
	if (last > p && last[-1] == '\r')
		last--;
	for (;; p++) {
		if (p < last && *p != separator)
			continue;
		if (in->n == CSVIN_COLUMNS_MAX) {
			in->too_many = TRUE;
			return;
		}
		in->cell[in->n++] = p > cell ? cell : NULL;
		if (p == last)
			break;
		*p = '\0';
		cell = p + 1;
	}
	*last = '\0';
	in->row_ended = TRUE;
}

static void
take_field(void *bytes, size_t n, void *user)
{
	struct csv_in *in = user;

	if (in->n == CSVIN_COLUMNS_MAX) {
		in->too_many = TRUE;
		return;
	}
	in->offset[in->n++] = bytes ? in->text->len : G_MAXSIZE;
	if (bytes)
		g_string_append_len(in->text, bytes, (gssize)n + 1);	/* CSV_APPEND_NULL put an end there */
}

static void
take_row(G_GNUC_UNUSED int c, void *user)
{
	struct csv_in *in = user;

	for (int i = 0; i < in->n; i++)
		in->cell[i] = in->offset[i] == G_MAXSIZE ? NULL : in->text->str + in->offset[i];
	in->row_ended = TRUE;
}

static gboolean
parse_failed(struct csv_in *in, size_t byte, GError **err)
{
	gint64 line, column;

	if (csv_error(&in->parser) == CSV_EPARSE) {
		if (in->buf[byte] == '"')
			err_set(err, ERR_INPUT,
				"a quote inside a field: put the whole field in quotes, and write \"\" "
				"for each quote in it");
		else
			err_set(err, ERR_INPUT,
				"text after a closing quote: write \"\" for each quote inside a quoted "
				"field");
		return broken_at(in, byte, err);
	}
	csvin_place(in, in->n, &line, &column);
	return err_set(err, ERR_INPUT,
		       "%s:%" G_GINT64_FORMAT ":%" G_GINT64_FORMAT ": the field that begins here is longer "
		       "than %d MiB: is its closing quote missing?",
		       in->name, line, column, CSVIN_FIELD_MAX >> 20);
}

static gboolean
parse_quoted(struct csv_in *in, size_t end, GError **err)
{
	size_t n = end - in->at, got;

	in->open = TRUE;
	got = csv_parse(&in->parser, in->buf + in->at, n, take_field, take_row, in);
	if (got != n)
		return parse_failed(in, in->at + got, err);
	in->open = !in->row_ended;
	return TRUE;
}

static gboolean
take_line(struct csv_in *in, size_t end, GError **err)
{
	if (!in->open && (in->buf[in->at] == '\n' || in->buf[in->at] == '\r'))
		in->record = end;	/* a blank line */
	else if (!in->open && find(in, &in->next_quote, '"') >= end)
		split_plain(in, end);
	else if (!parse_quoted(in, end, err))
		return FALSE;
	if (in->too_many) {
		err_set(err, ERR_INPUT, "more than %d fields in one row", CSVIN_COLUMNS_MAX);
		return broken_at(in, in->at, err);
	}
	in->at = end;
	in->line++;
	if (in->record == end)
		in->record_line = in->line;
	return TRUE;
}

static gboolean
take_end(struct csv_in *in, GError **err)
{
	gint64 line, column;

	if (!in->open || !csv_fini(&in->parser, take_field, take_row, in)) {
		in->open = FALSE;
		return TRUE;
	}
	csvin_place(in, in->n, &line, &column);
	return err_set(err, ERR_INPUT,
		       "%s:%" G_GINT64_FORMAT ":%" G_GINT64_FORMAT ": the quoted text that begins here never "
		       "ends: the file is cut off, or a closing quote is missing",
		       in->name, line, column);
}

/* A row, or the end without one. */
static gboolean
read_row(struct csv_in *in, GError **err)
{
	while (!in->row_ended) {
		size_t end = line_end(in);

		if (end > in->at) {
			if (!take_line(in, end, err))
				return FALSE;
		} else if (utf8_bad(in->buf + in->good, in->len - in->good)
			   || (in->eof && in->good < in->len)) {
			return not_text(in, err);
		} else if (in->eof) {
			return take_end(in, err);
		} else if (!refill(in, err)) {
			return FALSE;
		}
	}
	return TRUE;
}

static enum csv_got
ragged(const struct csv_in *in, GError **err)
{
	err_set(err, ERR_INPUT, "%s:%" G_GINT64_FORMAT ":1: this row has %d field%s, the header has %d: %s",
		in->name, in->record_line, in->n, in->n == 1 ? "" : "s", in->width,
		in->n > in->width ? "a text that holds the separator must stand in quotes"
				  : "write the separator for empty fields too");
	return GOT_RAGGED;
}

enum csv_got
csvin_next(struct csv_in *in, struct csv_row *row, GError **err)
{
	in->record = in->at;
	in->record_line = in->line;
	in->row_ended = FALSE;
	in->n = 0;
	g_string_truncate(in->text, 0);
	if (!read_row(in, err))
		return GOT_BROKEN;
	if (!in->row_ended)
		return GOT_END;
	*row = (struct csv_row){ in->cell, in->n, in->record_line };
	if (!in->width)
		in->width = in->n;
	return in->n == in->width || in->any_width ? GOT_ROW : ragged(in, err);
}

void
csvin_place(const struct csv_in *in, int i, gint64 *line, gint64 *column)
{
	const char *p = in->buf + in->record, *start = p, *end = in->buf + in->len;
	gboolean quoted = FALSE;

	*line = in->record_line;
	for (; p < end && i > 0; p++) {
		if (*p == '"')
			quoted = !quoted;
		else if (!quoted && (*p == in->found.separator || !*p))	/* split_plain() puts ends there */
			i--;
		else if (*p == '\n' || (*p == '\r' && p + 1 < end && p[1] != '\n')) {
			++*line;
			start = p + 1;
		}
	}
	*column = characters(start, (size_t)(p - start)) + 1;
}

gboolean
csvin_prefix(const struct csv_in *in, int i, GError **err)
{
	gint64 line, column;

	csvin_place(in, i, &line, &column);
	return err_prefix(err, "%s:%" G_GINT64_FORMAT ":%" G_GINT64_FORMAT ": ", in->name, line, column);
}

const struct csv_found *
csvin_found(const struct csv_in *in)
{
	return &in->found;
}

/* Opening */

/* A first line "sep=;", which some spreadsheets write and want. */
static void
take_separator_line(struct csv_in *in)
{
	const char *p = in->buf + in->at;
	size_t n = in->good - in->at;

	if (n < 5 || memcmp(p, "sep=", 4) != 0 || !strchr(",;\t|", p[4])
	    || (n > 5 && p[5] != '\n' && p[5] != '\r'))
		return;
	in->found.separator = p[4];
	in->at += n > 6 && p[5] == '\r' && p[6] == '\n' ? 7 : MIN(n, 6);
	in->line += n > 5;
}

static gboolean
begin(struct csv_in *in, const struct csv_in_how *how, GError **err)
{
	if (!refill(in, err))
		return FALSE;
	if (!sniff_text(in->buf, in->len, err))
		return err_prefix(err, "%s: ", in->name);
	in->found.bom = in->good >= 3 && !memcmp(in->buf, BOM, 3);
	in->at = in->found.bom ? 3 : 0;
	take_separator_line(in);
	if (how->separator)
		in->found.separator = how->separator;
	else if (!in->found.separator)
		in->found.separator = sniff_separator(in->buf + in->at, in->good - in->at);
	in->found.decimal_comma = how->decimal == DECIMAL_COMMA ||
		(how->decimal == DECIMAL_FOUND_OUT &&
		 sniff_decimal_comma(in->buf + in->at, in->good - in->at, in->found.separator));
	csv_set_delim(&in->parser, (unsigned char)in->found.separator);
	return TRUE;
}

static struct csv_in *
opened(struct csv_in *in, const char *name, const struct csv_in_how *how, GError **err)
{
	static const struct csv_in_how find_out = { 0, DECIMAL_FOUND_OUT, FALSE };

	in->name = g_strdup(name);
	in->line = 1;
	in->text = g_string_new(NULL);
	in->any_width = how && how->any_width;
	csv_init(&in->parser, CSV_STRICT | CSV_STRICT_FINI | CSV_EMPTY_IS_NULL | CSV_APPEND_NULL);
	csv_set_space_func(&in->parser, no_space);
	csv_set_realloc_func(&in->parser, capped_realloc);
	csv_set_free_func(&in->parser, g_free);
	csv_set_blk_size(&in->parser, 4096);
	if (begin(in, how ? how : &find_out, err))
		return in;
	csvin_free(in);
	return NULL;
}

struct csv_in *
csvin_file(FILE *f, const char *name, const struct csv_in_how *how, GError **err)
{
	struct csv_in *in = g_new0(struct csv_in, 1);

	in->file = f;
	return opened(in, name, how, err);
}

struct csv_in *
csvin_memory(const char *bytes, size_t n, const char *name, const struct csv_in_how *how, GError **err)
{
	struct csv_in *in = g_new0(struct csv_in, 1);

	in->memory = bytes;
	in->memory_left = n;
	return opened(in, name, how, err);
}

void
csvin_free(struct csv_in *in)
{
	if (!in)
		return;
	csv_free(&in->parser);
	g_string_free(in->text, TRUE);
	g_free(in->buf);
	g_free(in->name);
	g_free(in);
}
