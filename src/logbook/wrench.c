#include "logbook/wrench.h"

#include "base/amount.h"
#include "base/err.h"
#include "base/text.h"
#include "exchange/csv_out.h"
#include "exchange/json.h"
#include "exchange/table.h"

#include <math.h>
#include <string.h>

#define LARGEST 150 /* mm across flats: a mistyped one is beyond it */

struct wrench_book {
	struct table *pairs, *heads;
	GArray *row, *head;
};

void
wrench_book_free(struct wrench_book *w)
{
	if (!w)
		return;
	table_free(w->pairs);
	table_free(w->heads);
	g_array_unref(w->row);
	g_array_unref(w->head);
	g_free(w);
}

/* Every one of the columns is wanted. */
static gboolean
whole(const struct table *t, guint row, const char *const *columns, GError **err)
{
	for (int k = 0; columns[k]; k++)
		if (!table_cell(t, row, k))
			return err_set(err, ERR_INPUT, "%s is missing", columns[k]);
	return TRUE;
}

enum { INCH, METRIC, METRIC_ON_INCH, INCH_ON_METRIC, VERDICT, STANDING, SOURCE };
static const char *const pair_columns[] = { "inch",    "metric-mm", "metric-on-inch", "inch-on-metric",
					    "verdict", "standing",  "source",	      NULL };
enum { THREAD, ISO, DIN, JIS, HEAD_STANDING, HEAD_SOURCE };
static const char *const head_columns[] = { "thread", "iso-mm", "din-mm", "jis-mm", "standing", "source", NULL };

/* Across flats. */
static gboolean
size_mm(const struct table *t, guint i, int column, const char *const *columns, double *mm, GError **err)
{
	if (!number_parse(table_cell(t, i, column), mm, err))
		return err_prefix(err, "%s: ", columns[column]);
	return (*mm > 0 && *mm <= LARGEST)
	    || err_set(err, ERR_INPUT, "%s: a size is more than 0 and at most %d mm", columns[column], LARGEST);
}

/* "M10": as a size asked for is looked up. */
static gboolean
is_thread(const char *text)
{
	return text[0] == 'M' && text[1] && !text[1 + strspn(text + 1, "0123456789")];
}

/* What the table says of a wrench is what the limits of heads and openings give. */
static gboolean
says_so(const struct table *t, guint i, int column, const struct wrench_play *play, GError **err)
{
	const char *said = table_cell(t, i, column), *is = wrench_fit_word(play->fit);

	return !strcmp(said, is)
	    || err_set(err, ERR_INPUT, "%s: \"%.40s\" stands there, and \"%s\" is worked out", pair_columns[column], said, is);
}

static gboolean
read_pair(const struct table *t, guint i, struct wrench_row *row, GError **err)
{
	g_autofree char *inch = NULL;
	double in, mm;

	*row = (struct wrench_row){ .inch = table_cell(t, i, INCH), .metric = table_cell(t, i, METRIC),
				    .verdict = table_cell(t, i, VERDICT), .source = table_cell(t, i, SOURCE) };
	inch = g_strdup_printf("%s in", row->inch);
	return length_parse(inch, &in, err) && size_mm(t, i, METRIC, pair_columns, &mm, err)
	    && word_parse(&words_standing, table_cell(t, i, STANDING), &row->standing, err)
	    && (wrench_judge(in, mm, &row->pair)
		|| err_set(err, ERR_INPUT, "%s in is no size of a hexagon that is known here", row->inch))
	    && says_so(t, i, METRIC_ON_INCH, &row->pair.metric_on_inch, err)
	    && says_so(t, i, INCH_ON_METRIC, &row->pair.inch_on_metric, err);
}

static gboolean
read_head(const struct table *t, guint i, struct head_row *row, GError **err)
{
	double mm;

	*row = (struct head_row){ table_cell(t, i, THREAD), table_cell(t, i, ISO), table_cell(t, i, DIN), table_cell(t, i, JIS),
				  table_cell(t, i, HEAD_SOURCE), NONE };
	for (int k = ISO; k <= JIS; k++)
		if (!size_mm(t, i, k, head_columns, &mm, err))
			return FALSE;
	return (is_thread(row->thread)
		|| err_set(err, ERR_INPUT, "thread: \"%.40s\" is none: write M and its size, such as M10", row->thread))
	    && word_parse(&words_standing, table_cell(t, i, HEAD_STANDING), &row->standing, err);
}

static gboolean
read_all(struct wrench_book *w, const char *catalogue, GError **err)
{
	g_autofree char *pairs = g_build_filename(catalogue, "wrenches.csv", NULL),
			*heads = g_build_filename(catalogue, "heads.csv", NULL);
	struct wrench_row row;
	struct head_row head;

	w->pairs = table_read(pairs, pair_columns, err);
	w->heads = w->pairs ? table_read(heads, head_columns, err) : NULL;
	for (guint i = 0; w->heads && i < table_rows(w->pairs); i++) {
		if (!whole(w->pairs, i, pair_columns, err) || !read_pair(w->pairs, i, &row, err))
			return table_prefix(w->pairs, i, err);
		g_array_append_val(w->row, row);
	}
	for (guint i = 0; w->heads && i < table_rows(w->heads); i++) {
		if (!whole(w->heads, i, head_columns, err) || !read_head(w->heads, i, &head, err))
			return table_prefix(w->heads, i, err);
		g_array_append_val(w->head, head);
	}
	return w->heads != NULL;
}

struct wrench_book *
wrench_book_read(const char *catalogue, GError **err)
{
	struct wrench_book *w = g_new0(struct wrench_book, 1);

	w->row = g_array_new(FALSE, FALSE, sizeof(struct wrench_row));
	w->head = g_array_new(FALSE, FALSE, sizeof(struct head_row));
	if (!read_all(w, catalogue, err))
		g_clear_pointer(&w, wrench_book_free);
	return w;
}

const GArray *
wrench_rows(const struct wrench_book *w)
{
	return w->row;
}

const GArray *
wrench_heads(const struct wrench_book *w)
{
	return w->head;
}

static gboolean
thread_parse(const struct wrench_book *w, const char *text, struct wrench_size *size, GError **err)
{
	const struct head_row *h = (const void *)w->head->data;
	g_autofree char *shown = text_quoted(text);
	gsize length = 1 + strspn(text + 1, "0123456789");

	for (guint i = 0; i < w->head->len; i++)
		if (strlen(h[i].thread) == length && !g_ascii_strncasecmp(h[i].thread, text, length)) {
			*size = (struct wrench_size){ NAN, TRUE, &h[i] };
			return TRUE;
		}
	return err_set(err, ERR_NOT_FOUND,
		       "%s: of that thread no heads are listed; measure across the flats and ask for that size in mm", shown);
}

gboolean
wrench_size_parse(const struct wrench_book *w, const char *text, struct wrench_size *size, GError **err)
{
	g_autofree char *plain = g_strstrip(g_strdup(text)), *inches = g_strdup_printf("%s in", plain),
			*shown = text_quoted(text);
	struct quantity q;

	if (g_ascii_tolower(plain[0]) == 'm' && g_ascii_isdigit(plain[1]))
		return thread_parse(w, plain, size, err);
	/* A fraction alone is of an inch; 16 can be 16 mm or a 16th. */
	if (strchr(plain, '/') && g_ascii_isdigit(plain[strlen(plain) - 1]) && quantity_parse(inches, DIMENSION_LENGTH, &q, NULL))
		;
	else if (!quantity_parse(plain, DIMENSION_LENGTH, &q, err))
		return FALSE;
	if (q.low != q.high || !(q.high > 0))
		return err_set(err, ERR_INPUT, "%s is no size of a wrench: write 5/8, 16 mm or M10", shown);
	*size = (struct wrench_size){ q.high, q.unit->system == UNITS_METRIC, NULL };
	return TRUE;
}

gboolean
wrench_is_of(const struct wrench_row *row, const struct wrench_size *size)
{
	return !size->thread && fabs((size->metric ? row->pair.metric : row->pair.inch) - size->mm) < 1e-6;
}

const char *
wrench_fit_word(enum wrench_fit fit)
{
	switch (fit) {
	case WRENCH_FITS:
		return "fits";
	case WRENCH_BINDS:
		return "binds";
	case WRENCH_LOOSE:
		return "loose";
	case WRENCH_REFUSES:
		break;
	}
	return "no";
}

char *
wrench_play_words(const struct wrench_play *play)
{
	if (play->fit == WRENCH_REFUSES)
		return g_strdup("no");
	return g_strdup_printf("%s, %.0f deg", wrench_fit_word(play->fit), play->degrees);
}

/* For other programs. */

static void
csv_pair(struct csv_out *csv, const struct wrench_row *r)
{
	char number[NUMBER_TEXT];
	const struct wrench_play *play[] = { &r->pair.metric_on_inch, &r->pair.inch_on_metric };

	csvout_text(csv, r->inch);
	csvout_number(csv, r->metric);
	g_snprintf(number, sizeof number, "%.2f", r->pair.difference);
	csvout_number(csv, number);
	for (guint i = 0; i < G_N_ELEMENTS(play); i++) {
		csvout_word(csv, wrench_fit_word(play[i]->fit));
		g_snprintf(number, sizeof number, "%.1f", play[i]->degrees);
		csvout_number(csv, play[i]->fit == WRENCH_REFUSES ? "" : number);
	}
	csvout_text(csv, r->verdict);
	csvout_word(csv, word_of(&words_standing, r->standing));
	csvout_text(csv, r->source);
	csvout_row(csv);
}

static struct csv_out *
csv_begin(GString *text, const char *const *header, guint n)
{
	struct sink sink = sink_string(text);
	struct csv_out *csv = csvout_new(&sink, NULL);

	csvout_names(csv, header, (int)n);
	return csv;
}

char *
wrench_csv(const struct wrench_book *w, const struct wrench_size *size)
{
	static const char *const header[] = { "inch", "metric-mm", "difference-mm", "metric-on-inch", "metric-degrees",
					      "inch-on-metric", "inch-degrees", "verdict", "standing", "source" };
	const struct wrench_row *row = (const void *)w->row->data;
	GString *text = g_string_new(NULL);
	struct csv_out *csv = csv_begin(text, header, G_N_ELEMENTS(header));

	for (guint i = 0; i < w->row->len; i++)
		if (!size || wrench_is_of(&row[i], size))
			csv_pair(csv, &row[i]);
	csvout_close(csv, NULL);
	return g_string_free(text, FALSE);
}

char *
heads_csv(const struct wrench_book *w, const struct head_row *only)
{
	static const char *const header[] = { "thread", "iso-mm", "din-mm", "jis-mm", "standing", "source" };
	const struct head_row *h = (const void *)w->head->data;
	GString *text = g_string_new(NULL);
	struct csv_out *csv = csv_begin(text, header, G_N_ELEMENTS(header));

	for (guint i = 0; i < w->head->len; i++) {
		if (only && only != &h[i])
			continue;
		csvout_text(csv, h[i].thread);
		csvout_number(csv, h[i].iso);
		csvout_number(csv, h[i].din);
		csvout_number(csv, h[i].jis);
		csvout_word(csv, word_of(&words_standing, h[i].standing));
		csvout_text(csv, h[i].source);
		csvout_row(csv);
	}
	csvout_close(csv, NULL);
	return g_string_free(text, FALSE);
}

static char *
json_end(struct json_out *j)
{
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);

	jsonout_write(j, &sink, TRUE, NULL);
	jsonout_free(j);
	return g_string_free(text, FALSE);
}

static void
json_play(struct json_out *j, const char *name, const struct wrench_play *play)
{
	jsonout_open_object(j, name);
	jsonout_text(j, "fit", wrench_fit_word(play->fit));
	jsonout_real(j, "degrees", play->fit == WRENCH_REFUSES ? (double)NAN : play->degrees);
	jsonout_close(j);
}

char *
wrench_json(const struct wrench_book *w, const struct wrench_size *size)
{
	const struct wrench_row *row = (const void *)w->row->data;
	struct json_out *j = jsonout_new();

	for (guint i = 0; i < w->row->len; i++) {
		const struct wrench_row *r = &row[i];

		if (size && !wrench_is_of(r, size))
			continue;
		jsonout_next(j);
		jsonout_text(j, "inch", r->inch);
		jsonout_real(j, "metric-mm", r->pair.metric);
		jsonout_real(j, "difference-mm", r->pair.difference);
		json_play(j, "metric-on-inch", &r->pair.metric_on_inch);
		json_play(j, "inch-on-metric", &r->pair.inch_on_metric);
		jsonout_text(j, "verdict", r->verdict);
		jsonout_text(j, "standing", word_of(&words_standing, r->standing));
		jsonout_text(j, "source", r->source);
	}
	return json_end(j);
}

char *
heads_json(const struct wrench_book *w, const struct head_row *only)
{
	const struct head_row *h = (const void *)w->head->data;
	struct json_out *j = jsonout_new();

	for (guint i = 0; i < w->head->len; i++) {
		if (only && only != &h[i])
			continue;
		jsonout_next(j);
		jsonout_text(j, "thread", h[i].thread);
		jsonout_real(j, "iso-mm", g_ascii_strtod(h[i].iso, NULL));
		jsonout_real(j, "din-mm", g_ascii_strtod(h[i].din, NULL));
		jsonout_real(j, "jis-mm", g_ascii_strtod(h[i].jis, NULL));
		jsonout_text(j, "standing", word_of(&words_standing, h[i].standing));
		jsonout_text(j, "source", h[i].source);
	}
	return json_end(j);
}
