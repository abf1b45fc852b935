/* Pages as a PDF file, by a module of the program's that may be there or not. */
#ifndef LOGBOOK_PAPER_PDF_H
#define LOGBOOK_PAPER_PDF_H

#include "base/paper.h"

#include <stdio.h>

/* What the module holds under the name "splitpin_pdf": FALSE and a message of its own, the caller's.  *why must be NULL
 * before the call: the module tells by it whether something went wrong. */
typedef gboolean paper_pdf_write(const struct paper *p, FILE *out, char **why);
#define PAPER_PDF_MODULE "splitpin-pdf.so"
#define PAPER_PDF_SYMBOL "splitpin_pdf"

/* ERR_SYSTEM when the folder of modules has none: the text is what there is then. */
gboolean paper_pdf(const struct paper *p, const char *modules, FILE *out, GError **err);

#endif
