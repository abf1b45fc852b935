#include "base/key.h"

#include <string.h>

static const char letters[] = "bcdfghjklmnpqrst";

const char *
key_letters(gint64 key, char buf[KEY_TEXT])
{
	guint64 bits = (guint64)key;

	buf[key == NONE ? 0 : KEY_TEXT - 1] = '\0';
	for (int i = KEY_TEXT - 2; i >= 0 && key != NONE; i--, bits >>= 4)
		buf[i] = letters[bits & 15];
	return buf;
}

gboolean
key_from_letters(const char *text, gint64 *key)
{
	guint64 bits = 0;
	int i;

	for (i = 0; i < KEY_TEXT - 1 && text[i]; i++) {
		const char *at = strchr(letters, g_ascii_tolower(text[i]));

		if (!at)
			return FALSE;
		bits = bits << 4 | (guint64)(at - letters);
	}
	*key = (gint64)bits;
	return i == KEY_TEXT - 1 && !text[i] && *key != NONE;
}
