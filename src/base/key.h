/* Keys of records as people see them. */
#ifndef BASE_KEY_H
#define BASE_KEY_H

#include "base/value.h"

/* A key as sixteen letters of "bcdfghjklmnpqrst", 4 bits a letter, most significant first: no vowel, so no word, and
 * no digit, so no spreadsheet rounds it or shows it as 4.6E+18.  "" for NONE. */
#define KEY_TEXT 17
const char *key_letters(gint64 key, char buf[KEY_TEXT]);
/* FALSE when text is not sixteen such letters (either case). */
gboolean key_from_letters(const char *text, gint64 *key);

#endif
