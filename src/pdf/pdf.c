/* The module that makes a PDF of pages of text, with Pango and Cairo: the one home of their headers. */
#include "logbook/paper_pdf.h"

#include <cairo-pdf.h>
#include <pango/pangocairo.h>
#include <string.h>

/* In points, a 72nd of an inch. */
enum { MARGIN = 42, A4_WIDE = 595, A4_HIGH = 842, LETTER_WIDE = 612, LETTER_HIGH = 792 };

struct sheet {
	const struct paper *paper;
	cairo_t *cr;
	PangoLayout *layout;
	double wide, high; /* of the paper */
	double row; /* from line to line */
};

static cairo_status_t
put_bytes(void *stream, const unsigned char *bytes, unsigned int n)
{
	return fwrite(bytes, 1, n, stream) == n ? CAIRO_STATUS_SUCCESS : CAIRO_STATUS_WRITE_ERROR;
}

/* The letter as large as the columns and rows of the paper let it be. */
static void
choose_size(struct sheet *s)
{
	PangoFontDescription *font = pango_font_description_from_string("DejaVu Sans Mono, monospace");
	int wide, high;
	double size = 10;

	s->row = (s->high - 2 * MARGIN) / s->paper->rows;
	pango_font_description_set_absolute_size(font, size * PANGO_SCALE);
	pango_layout_set_font_description(s->layout, font);
	pango_layout_set_text(s->layout, "MMMMMMMMMM", -1);
	pango_layout_get_size(s->layout, &wide, &high);
	size *= MIN((s->wide - 2 * MARGIN) / (s->paper->columns * (double)wide / PANGO_SCALE / 10),
		    s->row / ((double)high / PANGO_SCALE));
	pango_font_description_set_absolute_size(font, size * PANGO_SCALE);
	pango_layout_set_font_description(s->layout, font);
	pango_font_description_free(font);
}

/* A letter that no font has would be a box with a number on the paper: nobody could read what it says. */
static const char *
unreadable(const struct sheet *s, const GPtrArray *line)
{
	for (guint i = 0; i < line->len; i++) {
		pango_layout_set_text(s->layout, line->pdata[i], -1);
		if (pango_layout_get_unknown_glyphs_count(s->layout))
			return line->pdata[i];
	}
	return NULL;
}

static void
draw_page(const struct sheet *s, const GPtrArray *line)
{
	for (guint i = 0; i < line->len; i++) {
		pango_layout_set_text(s->layout, line->pdata[i], -1);
		cairo_move_to(s->cr, MARGIN, MARGIN + i * s->row);
		pango_cairo_show_layout(s->cr, s->layout);
	}
	cairo_show_page(s->cr);
}

paper_pdf_write splitpin_pdf;

gboolean
splitpin_pdf(const struct paper *p, FILE *out, char **why)
{
	gboolean a4 = p->size == PAPER_A4;
	struct sheet s = { .paper = p, .wide = a4 ? A4_WIDE : LETTER_WIDE, .high = a4 ? A4_HIGH : LETTER_HIGH };
	cairo_surface_t *surface = cairo_pdf_surface_create_for_stream(put_bytes, out, s.wide, s.high);
	cairo_status_t status;
	const char *boxes = NULL;

	s.cr = cairo_create(surface);
	s.layout = pango_cairo_create_layout(s.cr);
	cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, p->title);
	choose_size(&s);
	for (guint i = 0; i < p->pages->len && !boxes; i++)
		boxes = unreadable(&s, p->pages->pdata[i]);
	for (guint i = 0; i < p->pages->len && !boxes; i++)
		draw_page(&s, p->pages->pdata[i]);
	g_object_unref(s.layout);
	cairo_destroy(s.cr);
	cairo_surface_finish(surface);
	status = cairo_surface_status(surface);
	cairo_surface_destroy(surface);
	if (boxes)
		*why = g_strdup_printf("no font of this computer has all letters of \"%s\"; the sheet as text can be printed, too",
				       boxes + strspn(boxes, " "));
	else if (status != CAIRO_STATUS_SUCCESS)
		*why = g_strdup(cairo_status_to_string(status));
	return !*why;
}
