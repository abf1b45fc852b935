/* Texts for a reader who is not to learn names.  Names are what the logbook itself knows for one: of boats; of whoever did, found,
 * let pass or entered something; of places; of suppliers.
 *
 * The boat becomes "the boat", with several "boat 1", "boat 2"; the others "person 1", "place 1", the same name always the same.
 * "owner" and "yard" are no names.  In free text every such name that stands there as a whole word, in upper or lower case,
 * is put otherwise, too; what is nowhere on record as a name stays as it was typed.
 *
 * With NULL for the names every function gives the text as it is.  What is returned is the caller's; NULL for NULL. */
#ifndef LOGBOOK_NAMES_H
#define LOGBOOK_NAMES_H

#include "logbook/book.h"

struct names;
/* Of all boats of the logbook; NULL and *err. */
struct names *names_new(struct book *b, GError **err);
void names_free(struct names *n); /* NULL: nothing */

char *names_boat(const struct names *n, const char *name);
char *names_person(const struct names *n, const char *who);
char *names_place(const struct names *n, const char *place);
char *names_in(const struct names *n, const char *text);

#endif
