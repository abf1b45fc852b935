/* The whole boat's story on pages, for a buyer, an insurer or oneself: what the boat is, its engines' hours and how sure they are,
 * where it lay and how much it was out, what was done to each part, what is open and due, what nobody knows, jobs, yard sheets,
 * costs, what was corrected, and whether the journal verifies. */
#ifndef LOGBOOK_DOSSIER_H
#define LOGBOOK_DOSSIER_H

#include "base/paper.h"
#include "logbook/book.h"

#include <stdio.h>

struct dossier_form {
	gint64 since; /* leave out what was before that day; NONE: nothing.  How things stand is told whatever its day */
	/* Names as logbook/names.h has it; costs of services; remarks, and names of photo files.  What was seen, and the words of
	 * findings and jobs, are told in any case, as they were typed. */
	gboolean without_names, without_costs, without_remarks;
};

/* Where it goes, one or both; a file that exists is not written over, "-" is the stream. */
struct dossier_out {
	const char *text, *pdf; /* NULL: not wanted */
	FILE *stream;
	enum paper_size paper;
	const char *modules; /* folder of the program's modules */
};

/* The logbook is verified first, as book_verify() does.  *sound FALSE: it does not verify, and page one begins with that; what can
 * be read is told all the same.  ERR_STORE when another program wrote to it meanwhile. */
gboolean book_dossier(struct book *b, const struct boat *boat, const struct dossier_form *form, const struct dossier_out *out,
		      gboolean *sound, GError **err);

#endif
