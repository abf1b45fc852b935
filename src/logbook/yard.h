/* The yard sheet: the work list handed to a yard. */
#ifndef LOGBOOK_YARD_H
#define LOGBOOK_YARD_H

#include "logbook/due.h"

#include <stdio.h>

struct yard_form {
	struct due_ask ask;
	char **tasks; /* names of the tasks wanted; NULL: what is to be done by ask.until, else before launch */
	const char *path; /* an existing file is not written over; NULL: to the stream */
	FILE *stream;
	gboolean for_spreadsheet;
	gboolean without_names; /* leave out the boat's name */
};

gboolean book_yard(struct book *b, const struct boat *boat, const struct yard_form *form, int *lines, GError **err);

#endif
