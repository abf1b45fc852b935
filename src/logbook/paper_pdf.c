/* Loads the module when a PDF is asked for, so that no other command pays for it. */
#include "logbook/paper_pdf.h"

#include "base/err.h"

#ifdef SPLITPIN_PDF
#include <gmodule.h>

static gboolean
write_with(GModule *module, const struct paper *p, FILE *out, GError **err)
{
	g_autofree char *why = NULL;
	gpointer symbol = NULL;
	paper_pdf_write *write_pages;

	if (!g_module_symbol(module, PAPER_PDF_SYMBOL, &symbol) || !symbol)
		return err_set(err, ERR_SYSTEM, "%s is not of this program: %s", g_module_name(module), g_module_error());
	write_pages = (paper_pdf_write *)symbol;
	return write_pages(p, out, &why) || err_set(err, ERR_SYSTEM, "can't write the PDF: %s", why ? why : "no reason given");
}

gboolean
paper_pdf(const struct paper *p, const char *modules, FILE *out, GError **err)
{
	g_autofree char *path = g_build_filename(modules ? modules : ".", PAPER_PDF_MODULE, NULL);
	/* Libraries that it brings leave threads' data behind: it stays until the program ends. */
	GModule *module = g_file_test(path, G_FILE_TEST_EXISTS) ? g_module_open(path, G_MODULE_BIND_LOCAL) : NULL;

	if (module) {
		g_module_make_resident(module);
		return write_with(module, p, out, err);
	}
	if (!g_file_test(path, G_FILE_TEST_EXISTS))
		return err_set(err, ERR_SYSTEM, "no PDF can be made: %s is not there; the sheet as text can be printed, too", path);
	return err_set(err, ERR_SYSTEM, "no PDF can be made: %s; the sheet as text can be printed, too", g_module_error());
}
#else
gboolean
paper_pdf(const struct paper *p G_GNUC_UNUSED, const char *modules G_GNUC_UNUSED, FILE *out G_GNUC_UNUSED, GError **err)
{
	return err_set(err, ERR_SYSTEM, "this splitpin was built without PDF; the sheet as text can be printed, too");
}
#endif
