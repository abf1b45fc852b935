#include "logbook/dossier_inside.h"

#include "base/date.h"
#include "base/err.h"
#include "base/text.h"
#include "logbook/out_file.h"
#include "logbook/page.h"
#include "logbook/paper_pdf.h"

#include <stdarg.h>
#include <string.h>

/* TOGETHER: lines that are not parted by the end of a page. */
enum { COLUMNS = 80, MOST_PROBLEMS = 12, HANG = 2, TOGETHER = 6 };

/* A line that no blank divides is divided all the same: nothing stands beside the page. */
static void
add_line(GString *out, const char *line)
{
	int at = 0;

	for (const char *p = line; *p; p = g_utf8_next_char(p)) {
		g_autofree char *one = g_strndup(p, (gsize)(g_utf8_next_char(p) - p));
		int w = text_width(one);

		if (at + w > COLUMNS) {
			g_string_append_c(out, '\n');
			at = 0;
		}
		g_string_append(out, one);
		at += w;
	}
	g_string_append_c(out, '\n');
}

static void
add_paragraph(GString *out, int indent, int hang, const char *text)
{
	g_autofree char *safe = text_harmless(text, FALSE);
	g_autoptr(GString) wrapped = g_string_new(NULL);
	g_auto(GStrv) line = NULL;

	for (int i = 0; i < indent; i++)
		g_string_append_c(wrapped, ' ');
	text_wrap(wrapped, safe, COLUMNS, indent + hang);
	line = g_strsplit(wrapped->str, "\n", -1);
	for (int i = 0; line[i]; i++)
		add_line(out, line[i]);
}

/* A long paragraph goes over to the next page, but its beginning stays with what stands above it. */
void
dossier_flush(struct dossier *d)
{
	g_auto(GStrv) line = g_strsplit(d->head->str, "\n", -1);
	g_autoptr(GString) first = g_string_new(NULL);
	int n = (int)g_strv_length(line), i = 0;

	for (int told = 0; i < n && told < TOGETHER; i++) {
		g_string_append_printf(first, "%s\n", line[i]);
		told = line[i][strspn(line[i], " ")] ? told + 1 : 0;
	}
	if (i < n)
		paper_add(d->paper, first->str);
	else if (d->head->len)
		paper_add(d->paper, d->head->str);
	for (; i < n; i++)
		if (*line[i])
			paper_add(d->paper, line[i]);
	g_string_truncate(d->head, 0);
}

void
dossier_head(struct dossier *d, const char *heading)
{
	g_autofree char *loud = g_utf8_strup(heading, -1);

	dossier_flush(d);
	g_string_append_c(d->head, '\n');
	add_paragraph(d->head, 0, HANG, loud);
}

static void G_GNUC_PRINTF(4, 0)
say(struct dossier *d, int indent, int hang, const char *format, va_list ap)
{
	g_autofree char *text = g_strdup_vprintf(format, ap);

	add_paragraph(d->head, indent, hang, text);
}

void
dossier_title(struct dossier *d, const char *format, ...)
{
	va_list ap;

	va_start(ap, format);
	say(d, 0, HANG, format, ap);
	va_end(ap);
}

void
dossier_say(struct dossier *d, int indent, const char *format, ...)
{
	va_list ap;

	va_start(ap, format);
	say(d, indent, HANG, format, ap);
	va_end(ap);
	dossier_flush(d);
}

void
dossier_prose(struct dossier *d, const char *format, ...)
{
	va_list ap;

	va_start(ap, format);
	say(d, 0, 0, format, ap);
	va_end(ap);
	dossier_flush(d);
}

void
dossier_space(struct dossier *d)
{
	dossier_flush(d);
	g_string_append_c(d->head, '\n');
}

void
dossier_list(struct dossier *d, int indent, const char *label, const GPtrArray *items)
{
	g_autoptr(GString) all = g_string_new(NULL);

	for (guint i = 0; i < items->len; i++)
		g_string_append_printf(all, "%s%s", i ? "; " : "", (const char *)items->pdata[i]);
	if (items->len)
		dossier_say(d, indent, "%s%s.", label, all->str);
}

char *
dossier_text(const struct dossier *d, const char *text)
{
	return names_in(d->names, text);
}

char *
dossier_remark(const struct dossier *d, const char *remark)
{
	return d->form->without_remarks ? NULL : names_in(d->names, remark);
}

gboolean
dossier_wants(const struct dossier *d, gint64 day)
{
	return day == NONE || d->form->since == NONE || day >= d->form->since;
}

const struct fitting *
dossier_fitting(const struct dossier *d, gint64 key)
{
	for (EACH(struct fitting, f, d->fittings))
		if (f->id == key)
			return f;
	return NULL;
}

static void
note_problem(void *user, const char *line)
{
	struct dossier *d = user;

	if (d->problems->len < MOST_PROBLEMS)
		g_ptr_array_add(d->problems, g_strdup(line));
}

/* Verified, and from there on held as it is: what follows is told of the very same state. */
static gboolean
verify_and_hold(struct dossier *d, GError **err)
{
	gint64 version = book_version(d->b);

	if (!book_verify(d->b, note_problem, d, &d->n_problems, err) || !book_hold(d->b, err))
		return FALSE;
	if (book_version(d->b) != version) {
		book_release(d->b);
		return err_set(err, ERR_STORE, "another program wrote to the logbook meanwhile: try again");
	}
	return TRUE;
}

static gboolean
read_all(struct dossier *d, GError **err)
{
	const struct fitting_history_ask ask = { d->boat->id, NONE, d->names, TRUE };
	const struct due_ask now = { d->b->who.today, NONE };

	d->last = NONE;
	return book_entry_hash(d->b, &d->last, &d->last_at, &d->hash, err)
	    && (d->engines = book_records(d->b, RECORD_ENGINE, d->boat->id, err))
	    && (d->seasons_on_record = book_records(d->b, RECORD_SEASON, d->boat->id, err))
	    && (d->fittings = book_records(d->b, RECORD_FITTING, d->boat->id, err))
	    && (d->services = book_records(d->b, RECORD_SERVICE, d->boat->id, err))
	    && (d->events = book_fitting_history(d->b, &ask, err)) && dossier_read_seasons(d, err)
	    && book_due(d->b, d->boat, &now, d->due, err);
}

/* Of a logbook that does not verify as much is told as can be read. */
static gboolean
write_sections(struct dossier *d, GError **err)
{
	static gboolean (*const section[])(struct dossier *, GError **) = {
		dossier_boat,  dossier_engines, dossier_seasons, dossier_findings, dossier_due,	       dossier_unknown,
		dossier_parts, dossier_jobs,	dossier_sheets,	 dossier_costs,	   dossier_corrections,
	};
	GError *wrong = NULL;
	gboolean ok = read_all(d, &wrong) && dossier_first_page(d, &wrong);

	for (guint i = 0; ok && i < G_N_ELEMENTS(section); i++)
		ok = section[i](d, &wrong);
	if (!ok && d->n_problems) {
		dossier_prose(d, "From here on it can't be read: %s.", wrong->message);
		g_clear_error(&wrong);
		return TRUE;
	}
	return ok || (g_propagate_error(err, wrong), FALSE);
}

static void
say_problems(struct dossier *d)
{
	if (!d->n_problems)
		return;
	dossier_prose(d, "THIS LOGBOOK DOES NOT VERIFY. Something was changed in it that its journal does not tell of, or it is "
			  "damaged: nothing that follows can be relied on. %d %s found:", d->n_problems,
		    d->n_problems == 1 ? "problem was" : "problems were");
	for (guint i = 0; i < d->problems->len; i++) {
		g_autofree char *text = dossier_text(d, d->problems->pdata[i]);

		/* A row is told with what stands in it: without names, only that it differs. */
		dossier_say(d, 2, "%.*s", d->names ? (int)strcspn(text, ":") : G_MAXINT, text);
	}
	if (d->n_problems > (int)d->problems->len)
		dossier_say(d, 2, "and %d more: splitpin verify names them all", d->n_problems - (int)d->problems->len);
	dossier_space(d);
}

static gboolean
compose(struct dossier *d, enum paper_size size, GError **err)
{
	g_autofree char *name = names_boat(d->names, d->boat->name), *safe = NULL, *title = NULL;
	gboolean ok;

	safe = text_harmless(name, FALSE);
	title = g_strdup_printf("%s: dossier", d->names ? "A boat" : safe);
	d->paper = paper_new(size, COLUMNS, title);
	say_problems(d);
	ok = write_sections(d, err);
	dossier_flush(d);
	if (ok)
		paper_end(d->paper);
	return ok;
}

static gboolean
write_out(const struct paper *p, const struct dossier_out *out, GError **err)
{
	struct out_file text = { NULL, NULL }, pdf = { NULL, NULL };
	g_autofree char *pages = paper_text(p);
	gboolean ok = (!out->text || out_file_open(&text, out->text, out->stream, err))
		   && (!out->pdf || out_file_open(&pdf, out->pdf, out->stream, err));

	if (ok && out->text && fputs(pages, text.stream) < 0)
		ok = err_set(err, ERR_SYSTEM, "can't write the dossier");
	ok = ok && (!out->pdf || paper_pdf(p, out->modules, pdf.stream, err));
	ok = out_file_close(&text, ok, err);
	return out_file_close(&pdf, ok, err);
}

static void
clear(struct dossier *d)
{
	GArray **all[] = { &d->engines, &d->seasons_on_record, &d->fittings, &d->services, &d->events, &d->seasons };

	for (guint i = 0; i < G_N_ELEMENTS(all); i++)
		g_clear_pointer(all[i], g_array_unref);
	names_free(d->names);
	paper_free(d->paper);
	g_string_free(d->head, TRUE);
	g_ptr_array_unref(d->problems);
	due_list_free(d->due);
	g_free(d->engine);
	g_free(d->hash);
}

gboolean
book_dossier(struct book *b, const struct boat *boat, const struct dossier_form *form, const struct dossier_out *out,
	     gboolean *sound, GError **err)
{
	struct dossier d = { .b = b, .boat = boat, .form = form, .tell = { form->without_costs, form->without_remarks } };
	gboolean ok;

	d.head = g_string_new(NULL);
	d.problems = g_ptr_array_new_with_free_func(g_free);
	d.due = due_list_new();
	ok = verify_and_hold(&d, err);
	if (ok) {
		ok = (!form->without_names || (d.names = names_new(b, err))) && compose(&d, out->paper, err);
		book_release(b);
		ok = ok && write_out(d.paper, out, err);
	}
	*sound = !d.n_problems;
	clear(&d);
	return ok;
}
