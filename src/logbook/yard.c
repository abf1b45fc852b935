/* A sheet for the yard: which lines stand on it, in which order, and where it goes. */
#include "logbook/yard_inside.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "base/text.h"
#include "logbook/due_list.h"
#include "logbook/finding.h"
#include "logbook/out_file.h"
#include "logbook/outing.h"
#include "logbook/paper_pdf.h"

#include <string.h>

static void
clear_item(gpointer p)
{
	struct yard_item *item = p;

	record_clear(RECORD_SHEETLINE, &item->line);
	yard_line_clear(&item->cells);
	g_free(item->asks);
	g_free(item->cautions);
}

void
yard_list_free(struct yard_list *y)
{
	if (!y)
		return;
	due_list_free(y->due);
	record_clear(RECORD_SHEET, &y->sheet);
	g_array_unref(y->items);
	g_free(y->engine_hours);
	g_free(y);
}

struct yard_item *
yard_item(const struct yard_list *y, guint i)
{
	return &((struct yard_item *)(void *)y->items->data)[i];
}

/* What is handed over without being named: what is wanted by a day, else before the launch; and what can sink, burn
 * or hurt and nobody knows of. */
static gboolean
wanted(const struct yard_form *form, const struct due_line *d)
{
	if (d->out.when == OPP_NO_RECORD)
		return d->in.consequence <= COST_HURTS;
	return form->ask.until != NONE || d->out.when == OPP_NOW || d->out.when == OPP_BEFORE_LAUNCH ||
	       d->out.when == OPP_FIRST_DAY || d->out.when == OPP_MID_SEASON;
}

static gboolean
has_key(const GArray *keys, gint64 key)
{
	for (guint i = 0; i < keys->len; i++)
		if (g_array_index(keys, gint64, i) == key)
			return TRUE;
	return FALSE;
}

/* A task of the due list by its name, or an open finding by its key. */
static gboolean
find_named(const struct yard_list *y, const GArray *findings, const char *text, gint64 *key, GError **err)
{
	g_autofree char *shown = NULL;
	struct finding f;
	gboolean ok;

	for (int i = 0; i < due_count(y->due); i++)
		if (!strcmp(due_at(y->due, i)->name, text)) {
			*key = due_at(y->due, i)->id;
			return TRUE;
		}
	ok = book_find_finding(y->b, y->boat->id, text, &f, NULL);
	*key = f.id;
	record_clear(RECORD_FINDING, &f);
	for (guint i = 0; ok && i < findings->len; i++)
		if (((const struct finding *)(const void *)findings->data)[i].id == *key)
			return TRUE;
	shown = text_quoted(text);
	return err_set(err, ERR_NOT_FOUND,
		       "no task and no open finding is called %s: splitpin plan and splitpin found --list show them", shown);
}

static GArray *
find_all_named(const struct yard_list *y, const GArray *findings, char **names, GError **err)
{
	GArray *keys = g_array_new(FALSE, FALSE, sizeof(gint64));
	gint64 key;

	for (int i = 0; names && names[i]; i++) {
		if (!find_named(y, findings, names[i], &key, err)) {
			g_array_unref(keys);
			return NULL;
		}
		g_array_append_val(keys, key);
	}
	return keys;
}

/* A line, when it is wanted by whoever does it. */
static struct yard_item *
add_item(struct yard_list *y, const GArray *mine, gint64 key, int due)
{
	struct yard_item item = { .opening = -1, .due = due, .order = (int)y->items->len };

	record_init(RECORD_SHEETLINE, &item.line);
	item.line.whose = has_key(mine, key) ? LINE_OWNER : LINE_YARD;
	if (item.line.whose == LINE_OWNER ? !y->form->for_owner : !y->form->for_yard)
		return NULL;
	g_array_append_val(y->items, item);
	return yard_item(y, y->items->len - 1);
}

/* What must be open for a line of the due list. */
static void
place_opening(const struct yard_list *y, struct yard_item *item, const struct due_line *d)
{
	const struct access *access = (const void *)y->due->access->data;

	due_area(d, &item->place);
	for (int a = d->access; a >= 0; a = access[a].outer) {
		item->opening = a;
		item->depth++;
	}
}

static void
add_tasks(struct yard_list *y, const GArray *named, const GArray *mine)
{
	for (int i = 0; i < due_count(y->due); i++) {
		const struct due_line *d = due_at(y->due, i);
		struct yard_item *item;

		if (!has_key(mine, d->id) && (y->form->what ? !has_key(named, d->id) : !wanted(y->form, d)))
			continue;
		item = add_item(y, mine, d->id, i);
		if (!item)
			continue;
		item->line.task = d->id;
		yard_say_task(y, item);
		place_opening(y, item, d);
	}
}

static gboolean
add_findings(struct yard_list *y, const GArray *findings, const GArray *named, const GArray *mine, GError **err)
{
	for (guint i = 0; i < findings->len; i++) {
		const struct finding *f = &((const struct finding *)(const void *)findings->data)[i];
		gboolean on = !y->form->what || has_key(named, f->id) || has_key(mine, f->id);
		struct yard_item *item = on ? add_item(y, mine, f->id, -1) : NULL;

		if (!item)
			continue;
		item->line.finding = f->id;
		item->asks = g_strdup(f->makes_due);
		if (!yard_say_finding(y, item, f, err))
			return FALSE;
		for (int k = 0; f->fitting != NONE && k < due_count(y->due); k++)
			if (due_at(y->due, k)->fitting_id == f->fitting) {
				place_opening(y, item, due_at(y->due, k));
				break;
			}
	}
	return TRUE;
}

/* What opens together counts as its worst. */
static void
weigh(const struct yard_list *y)
{
	for (guint i = 0; i < y->items->len; i++) {
		struct yard_item *a = yard_item(y, i);

		a->with = a->severity;
		for (guint k = 0; a->opening >= 0 && k < y->items->len; k++) {
			const struct yard_item *b = yard_item(y, k);

			if (b->opening == a->opening && b->line.whose == a->line.whose)
				a->with = MIN(a->with, (int)b->severity);
		}
	}
}

static gint
in_order(gconstpointer x, gconstpointer y)
{
	const struct yard_item *a = x, *b = y;
	const int by[][2] = {
		{ a->line.whose == LINE_OWNER, b->line.whose == LINE_OWNER },
		{ a->with, b->with },
		{ a->opening >= 0, b->opening >= 0 },
		{ a->opening, b->opening },
		{ a->opening < 0 ? 0 : a->depth, b->opening < 0 ? 0 : b->depth },
		{ (int)a->severity, (int)b->severity },
		{ a->place, b->place },
		{ a->order, b->order },
	};

	for (guint i = 0; i < G_N_ELEMENTS(by); i++)
		if (by[i][0] != by[i][1])
			return by[i][0] < by[i][1] ? -1 : 1;
	return 0;
}

/* The line that must be done before: for a finding the work that it asks for, else what opens the same. */
static const struct yard_item *
depends(const struct yard_list *y, guint i)
{
	const struct yard_item *item = yard_item(y, i);
	g_auto(GStrv) asks = g_strsplit(item->asks ? item->asks : "", " ", -1);

	for (guint k = 0; k < y->items->len; k++) {
		const struct yard_item *other = yard_item(y, k);

		if (other->due >= 0 && g_strv_contains((const char *const *)asks, due_at(y->due, other->due)->name))
			return other;
	}
	for (guint k = 0; item->opening >= 0 && k < i; k++)
		if (yard_item(y, k)->opening == item->opening && yard_item(y, k)->line.whose == item->line.whose)
			return yard_item(y, k);
	return NULL;
}

static void
number(struct yard_list *y)
{
	weigh(y);
	g_array_sort(y->items, in_order);
	for (guint i = 0; i < y->items->len; i++)
		yard_item(y, i)->line.no = (gint64)i + 1;
	for (guint i = 0; i < y->items->len; i++) {
		struct yard_item *item = yard_item(y, i);
		const struct yard_item *before = depends(y, i);

		item->cells.cell[YARD_LINE_NO] = g_strdup_printf("%u", i + 1);
		if (before)
			item->cells.cell[YARD_DEPENDS_ON_LINE] = g_strdup_printf("%d", (int)before->line.no);
	}
}

static gboolean
read_hours(struct yard_list *y, GError **err)
{
	g_autoptr(GArray) engines = book_records(y->b, RECORD_ENGINE, y->boat->id, err);
	const struct engine *e = engines ? (const void *)engines->data : NULL;
	struct engine_hours hours;
	char buf[HOURS_TEXT];

	y->basis = "unknown";
	y->seconds = NONE;
	y->one_engine = engines && engines->len == 1;
	if (!y->one_engine)
		return engines != NULL;
	if (!book_engine_hours(y->b, e, due_year(y->due)->at, &hours, err))
		return FALSE;
	if (hours.total != NONE) {
		y->seconds = hours.total;
		y->engine_hours = g_strdup(hours_words(hours.total, buf));
		y->basis = hours.estimated ? "estimated" : "meter";
	}
	return TRUE;
}

static gboolean
gather(struct yard_list *y, GError **err)
{
	g_autoptr(GArray) findings = book_findings(y->b, y->boat->id, FALSE, err);
	g_autoptr(GArray) named = findings ? find_all_named(y, findings, y->form->what, err) : NULL;
	g_autoptr(GArray) mine = named ? find_all_named(y, findings, y->form->mine, err) : NULL;

	if (!mine)
		return FALSE;
	add_tasks(y, named, mine);
	if (!add_findings(y, findings, named, mine, err))
		return FALSE;
	number(y);
	return TRUE;
}

struct yard_list *
yard_list_new(struct book *b, const struct boat *boat, const struct yard_form *form, GError **err)
{
	struct yard_list *y = g_new0(struct yard_list, 1);

	y->b = b;
	y->boat = boat;
	y->form = form;
	y->due = due_list_new();
	y->items = g_array_new(FALSE, FALSE, sizeof(struct yard_item));
	g_array_set_clear_func(y->items, clear_item);
	record_init(RECORD_SHEET, &y->sheet);
	y->sheet.boat = boat->id;
	y->sheet.date = b->who.today;
	if (book_due(b, boat, &form->ask, y->due, err) && read_hours(y, err) && gather(y, err))
		return y;
	yard_list_free(y);
	return NULL;
}

gboolean
book_yard_count(struct book *b, const struct boat *boat, const struct yard_form *form, int lines[2], GError **err)
{
	struct yard_list *y = yard_list_new(b, boat, form, err);

	lines[LINE_OWNER] = lines[LINE_YARD] = 0;
	for (guint i = 0; y && i < y->items->len; i++)
		lines[yard_item(y, i)->line.whose]++;
	yard_list_free(y);
	return y != NULL;
}

/* On record, unless nothing stands on it; the lines' keys become the sheet's. */
static gboolean
keep(struct yard_list *y, GError **err)
{
	if (y->items->len && !book_put(y->b, RECORD_SHEET, &y->sheet, err))
		return FALSE;
	for (guint i = 0; i < y->items->len; i++) {
		struct yard_item *item = yard_item(y, i);

		item->line.sheet = y->sheet.id;
		if (!book_put(y->b, RECORD_SHEETLINE, &item->line, err))
			return FALSE;
		g_free(item->cells.cell[YARD_ID]);
		item->cells.cell[YARD_ID] = book_key_text(item->line.id);
	}
	return TRUE;
}

static gboolean
write_csv(const struct yard_list *y, const struct yard_out *out, FILE *stream, GError **err)
{
	struct sink sink = sink_file(stream);
	struct csv_out_how how = { 0, FALSE, out->for_spreadsheet };
	struct csv_out *csv = csvout_new(&sink, &how);
	gboolean ok = TRUE;

	yard_csv_header(csv);
	for (guint i = 0; ok && i < y->items->len; i++)
		ok = yard_csv_line(csv, &yard_item(y, i)->cells);
	return csvout_close(csv, err) && ok;
}

/* The files of one sheet: all of them are opened before anything is written. */
struct files {
	struct out_file csv, text, pdf;
};

static gboolean
open_files(const struct yard_out *out, struct files *f, GError **err)
{
	*f = (struct files){ { NULL, NULL }, { NULL, NULL }, { NULL, NULL } };
	return (!out->csv || out_file_open(&f->csv, out->csv, out->stream, err))
	    && (!out->text || out_file_open(&f->text, out->text, out->stream, err))
	    && (!out->pdf || out_file_open(&f->pdf, out->pdf, out->stream, err));
}

static gboolean
close_files(struct files *f, gboolean ok, GError **err)
{
	ok = out_file_close(&f->csv, ok, err);
	ok = out_file_close(&f->text, ok, err);
	return out_file_close(&f->pdf, ok, err);
}

static gboolean
write_files(const struct yard_list *y, const struct yard_out *out, const struct files *f, GError **err)
{
	struct paper *paper = out->text || out->pdf ? yard_paper(y, out->paper) : NULL;
	g_autofree char *text = out->text ? paper_text(paper) : NULL;
	gboolean ok = !f->csv.stream || write_csv(y, out, f->csv.stream, err);

	if (ok && text && fputs(text, f->text.stream) < 0)
		ok = err_set(err, ERR_SYSTEM, "can't write the sheet");
	ok = ok && (!f->pdf.stream || paper_pdf(paper, out->modules, f->pdf.stream, err));
	paper_free(paper);
	/* A full disk shows here, before the sheet is on record as handed out. */
	return ok && out_file_flush(&f->csv, err) && out_file_flush(&f->text, err) && out_file_flush(&f->pdf, err);
}

gboolean
book_yard(struct book *b, const struct boat *boat, const struct yard_form *form, const struct yard_out *out, int *lines,
	  GError **err)
{
	struct yard_list *y = yard_list_new(b, boat, form, err);
	struct files files;
	gboolean ok = y != NULL;

	*lines = y ? (int)y->items->len : 0;
	if (ok) {
		ok = open_files(out, &files, err);
		if (ok && book_begin(b, err))
			ok = book_end(b, keep(y, err) && write_files(y, out, &files, err), err, "yard sheet of %d %s", *lines,
				      *lines == 1 ? "line" : "lines");
		else
			ok = FALSE;
		ok = close_files(&files, ok, err);
	}
	yard_list_free(y);
	return ok;
}
