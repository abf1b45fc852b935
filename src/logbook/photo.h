/* Photo files of findings, and files of any kind that show or tell how something came off: the logbook keeps where a file lies
 * and what its bytes were, never the picture. */
#ifndef LOGBOOK_PHOTO_H
#define LOGBOOK_PHOTO_H

#include "logbook/book.h"

/* SHA-256 of a file's bytes, in hexadecimal; the caller's.  NULL and *err when it is not there or can't be read. */
char *photo_digest(const char *path, GError **err);

enum photo_state { PHOTO_AS_IT_WAS, PHOTO_CHANGED, PHOTO_GONE };
enum photo_state photo_state(const struct photo *p);
/* "the file has changed since", "the file is gone"; "" as it was. */
const char *photo_state_words(enum photo_state state);

/* Files as they are to be written, with the boat, the path, the digest and today: an array of struct photo that clears itself.
 * paths ends with NULL, or is NULL.  NULL and *err when one can't be read. */
GArray *photos_read(struct book *b, gint64 boat, const char *const *paths, GError **err);

/* Those of a finding, in the order in which they were put on record: an array of struct photo that clears itself. */
GArray *book_photos(struct book *b, gint64 finding, GError **err);

#endif
