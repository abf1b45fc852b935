/* A boat that is sold goes with her log: every record as CSV files in a folder, with or without the names in it, and a
 * new logbook made of such a folder.
 *
 * Without names: who did, found or let something pass is left out; places become "place 1", "place 2", so that what is
 * known of their water still holds; of photo files the folders are left out.  The boat's own name and remarks stay as they
 * were written.  Services that restart a clock become claimed: the new owner has not seen them. */
#ifndef LOGBOOK_HANDOVER_H
#define LOGBOOK_HANDOVER_H

#include "logbook/transfer.h"

struct handover;
/* What stripping needs to know of a logbook; NULL and *err. */
struct handover *handover_new(struct book *b, GError **err);
void handover_free(struct handover *h);
/* Take the names out of a record as it was read. */
void handover_strip(const struct handover *h, enum record r, void *record);

/* What a place is called without its name; NULL when the logbook has none of that name. */
const char *handover_place(const struct handover *h, const char *name);

/* A file a kind of record, in a folder that this makes: form->path.  On failure what was written is there no more. */
gboolean book_export_all(struct book *b, const struct export_form *form, gint64 *rows, GError **err);
/* A new logbook at path from such a folder; files may be missing but for the boats'. */
gboolean book_make_from(const char *path, const struct book_who *who, const char *folder, gint64 *rows, GError **err);

#endif
