/* Which design a fitting has: it decides which of its tasks there are. */
#ifndef LOGBOOK_VARIANT_H
#define LOGBOOK_VARIANT_H

#include "logbook/book.h"

/* Whether a task for these designs, separated by blanks (NULL: for all), exists on a fitting of that one; while nobody
 * knows it (NULL), the tasks of all exist. */
gboolean variant_has_task(const char *variants, const char *variant);
/* The one path that must come off or be open first: needs-off is a path, and after it DESIGN=PATH for designs that are reached
 * another way.  Of a design not known the first.  NULL for none; else interned. */
const char *variant_first_off(const char *needs_off, const char *variant);
const char *fitting_first_off(const struct fitting *f);
/* "port" of port/engine/belts, where no fitting of the boat is called that, so that the tree has no row for it; NULL: there is
 * one, or nothing is above.  The caller's. */
char *fitting_side(const struct fitting *f, const GArray *fittings);
/* "greasable, sealed"; the caller's. */
char *variant_words(const char *variants);

/* What another design brings and takes away: "Comes: TITLE; TITLE. Goes: TITLE", "" for nothing; the caller's.  NULL and
 * *err when the logbook can't be read. */
char *book_variant_changes(struct book *b, const struct fitting *f, const char *variant, GError **err);

/* A design that the fitting can have; one without a list of designs takes any word. */
gboolean book_check_variant(const struct fitting *f, const char *variant, GError **err);
/* Which design a fitting has, or (with retired) that the boat has none. */
gboolean book_set_variant(struct book *b, struct fitting *f, const char *variant, GError **err);
gboolean book_retire_fitting(struct book *b, struct fitting *f, gboolean retired, GError **err);
/* The same within a command that is under way. */
gboolean book_put_variant(struct book *b, struct fitting *f, const char *variant, GError **err);

#endif
